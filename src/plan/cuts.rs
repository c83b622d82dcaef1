//! The steps of one surface: the zero of the cross dial, its cuts, its measurements, its shoulder.

use std::fmt;

use super::clamping::Place;
use super::job::LengthBy;
use super::lengths::Along;
use super::passes::PlannedCut;
use super::sheet::{Step, StepKind};
use super::take::{Act, Done, Slip, half_of_the_last_over, nearly_uncut};
use super::turning::{cross_reading, good_sizes, plain, read_as, tenth_of_a_mark};
use super::words::{CutsOf, SurfaceWriter, add, ring_mark, words};
use crate::error::Error;
use crate::physics::{engagement, measured_force};
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Duration, Feed, Position, Quantity, SpindleSpeed,
    round_size,
};
use crate::shop::dial::{DialReads, Ring};
use crate::shop::holding::HoldingKind;
use crate::standards::limits::Limits;

/// What the last two cuts have in common.
type Alike = (Option<DepthOfCut>, Option<Feed>, Option<SpindleSpeed>);

/// What a cut is made in the middle of.
struct Around<'a> {
    /// The size before it.
    before: Diameter,
    /// How far the cross slide goes, in words.
    farther: &'a dyn fmt::Display,
    /// The speed that is set.
    set: SpindleSpeed,
    /// What the cut before was like.
    alike: Option<Alike>,
    /// True where the spindle stands still.
    at_rest: bool,
    /// True where it is measured.
    measured: bool,
    /// True where it was made already.
    over: bool,
}

/// What a cut that is made once more and takes nothing says.
pub(super) const SAME_AGAIN: &str = "; the same again: the zero is off, go on by that size";

/// Room for the text of a cut: most are no longer.
const TEXT: usize = 320;

impl SurfaceWriter<'_> {
    /// The zero of the cross dial, set or kept.
    pub(super) fn zero_x(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let before = &setup.before;
        match self.part {
            CutsOf::Finishing { roughed_at } => {
                steps.push(self.zero_on_the_roughed(roughed_at)?);
                return Ok(());
            }
            CutsOf::Roughing if before.turned => {
                steps.push(self.zero_kept()?);
                return Ok(());
            }
            CutsOf::Roughing | CutsOf::OneTool => {}
        }
        let set_to = words(|f| match setup.datum.start {
            0.0 => f.write_str("0"),
            start => write!(f, "{} marks (between two marks)", tenth_of_a_mark(start)),
        });
        let given = job.zero_at.filter(|_| before.measured);
        let text = match (given, self.cross.ring()) {
            (given, Ring::Readout) => self.readout_zero(given),
            _ if before.turned => self.zero_from_the_surface_before()?,
            (Some(zero), _) if setup.datum.start == 0.0 => {
                format!(
                    "Zero X: the cross dial must read 0 where the bar measures {}. Prove it: spindle on, come in until the tip just \
                     touches the bar there; it reads another mark: stop, the zero is lost. Carriage to the right, clear of the \
                     bar. The bar must measure that all along: turn down what is thicker first.",
                    zero.people(u)
                )
            }
            (Some(zero), _) => format!(
                "Zero X: come in to where the bar measures {}, hold the handle, and turn the ring only, until it reads {set_to}. \
                 Carriage to the right, clear of the bar. The bar must measure that all along: turn down what is thicker first.",
                zero.people(u)
            ),
            (None, Ring::Fixed) => String::from(
                "Zero X: cross slide in until its dial reads 0, the tip still clear of the bar. Spindle on; bring the tip to \
                 the bar with the compound slide, which moves across, until it just touches near its end; lock the compound \
                 slide. Then carriage to the right, clear of the face.",
            ),
            (None, _) => format!(
                "Zero X: spindle on, come in until the tip just touches the bar near its end; hold the \
                 handle, and turn the ring only, until it reads {set_to}. Carriage to the right, clear of the face.",
            ),
        };
        let mut zero_x = self.step(StepKind::ZeroX, before.start, text);
        if self.reads_out() {
            // It shows the size: there is no mark.
        } else if setup.datum.start == 0.0 {
            zero_x.reading = Some(cross_reading(self.cross, 0)?);
        } else if before.turned || self.cross.ring() == Ring::Fixed {
            let (reading, tenths) = before.reading(self.cross)?;
            zero_x.reading = Some(reading);
            zero_x.tenths = (tenths > 0).then_some(tenths);
        }
        if self.cross.ring() == Ring::Settable && !(given.is_some() && setup.datum.start == 0.0) {
            zero_x.ring_to = Some(ring_mark(self.cross, setup.datum.start));
        }
        if !before.measured {
            zero_x.spindle_speed = Some(setup.rough_step.spindle_speed);
            zero_x.because = Some(String::from(
                match self.setup.chance.stops.chosen.after.first() {
                    Some(0) => {
                        "a touch is only roughly right; the first cut is measured to set it right"
                    }
                    Some(_) => {
                        "a touch is only roughly right; a later cut is measured to set it right"
                    }
                    None => "a touch is only roughly right, but near enough for this zone",
                },
            ));
        }
        if let Some(run_out) = job
            .stock
            .run_out()
            .filter(|r| r.mm() > 0.0 && !before.measured)
        {
            add(
                &mut zero_x.text,
                format_args!(
                    " It touches the high side of the bar, taken as {}: the bar may run out by {}.",
                    before.start.people(u),
                    run_out.people(u)
                ),
            );
        }
        if before.turned && setup.rough_step.spindle_speed != self.speed_before {
            let set = self.set_words(setup.rough_step.spindle_speed, &setup.rough_step);
            add(&mut zero_x.text, format_args!(" {set}"));
        }
        zero_x.text.push_str(&self.set_the_stop());
        steps.push(zero_x);
        Ok(())
    }

    /// The cross dial after a finished surface: it was measured, so the dial is known there.
    fn zero_from_the_surface_before(&self) -> Result<String, Error> {
        let (setup, u) = (self.setup, self.u);
        let before = &setup.before;
        let name = format!("F{}", self.number - 1);
        let (at, tenths) = before.reading(self.cross)?;
        let at = read_as(&at, tenths);
        let kept = setup.datum.start == before.mark;
        Ok(match self.cross.ring() {
            Ring::Readout => self.readout_zero(None),
            // The last cut may have been left out, or have gone farther in than planned.
            Ring::Fixed => format!(
                "Zero X is kept: carriage to the right, clear of the bar. By the sheet the dial reads {at} where the surface just finished measures {}. The shift from \
                 here on, in place of any before it: S = marks by which the last cut that was made went farther in than {at} \
                 (less far: minus) + ({name} - {}) / {}, to the nearest whole one; add S to every mark of the next diameter.{}",
                before.start.people(u),
                plain(before.start, u),
                self.mark_size(),
                self.a_turn_wrong()
            ),
            Ring::Settable => format!(
                "Zero X: carriage to the right, clear of the bar; come in to the mark of the last cut that was made, by \
                 the sheet {at}, hold the handle, and turn the ring only, to ({} - {name}) / {} marks{}: {} where {name} is \
                 {}{}.{}",
                // The spring that is new in the zero does not move the tip.
                plain(
                    Diameter::computed_trade(round_size(
                        setup.datum.zero.mm() - setup.datum.correction.mm()
                    )),
                    u
                ),
                self.mark_size(),
                self.turns_left_out(setup.datum.start.ceil() as i64),
                self.on_the_ring(setup.datum.start),
                before.start.people(u),
                if kept { ", that is: it stays" } else { "" },
                self.a_turn_wrong()
            ),
        })
    }

    /// What a turn of the cross dial takes off the diameter.
    fn turn_of_the_dial(&self) -> Diameter {
        Diameter::computed_trade(round_size(
            f64::from(self.cross.divisions_per_turn().count())
                * self.cross.diameter_per_division().mm(),
        ))
    }

    /// What tells the turns of the cross dial apart at a surface just finished.
    fn a_turn_wrong(&self) -> impl fmt::Display {
        let turn = self.turn_of_the_dial();
        words(move |f| {
            write!(
                f,
                " The tip then stands level with the surface just finished: a turn wrong would be {}.",
                turn.people(self.u)
            )
        })
    }

    /// The cuts and the measurements between them.
    pub(super) fn cuts(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let setup = self.setup;
        let cuts = &setup.cuts;
        let stops = &setup.chance.stops.chosen.after;
        let range = self.range();
        let (mut before, mut stands) = self.begins()?;
        let mut set = match self.part {
            CutsOf::OneTool | CutsOf::Roughing => setup.rough_step.spindle_speed,
            CutsOf::Finishing { .. } => setup.finish_step.spindle_speed,
        };
        let mut alike = None;
        for (at, cut) in cuts.iter().copied().enumerate() {
            if !range.contains(&at) {
                continue;
            }
            let mark = cut.mark as f64 + f64::from(cut.between) / 10.0;
            // After a cut the tool stands one turn out; after a measurement it was brought in again.
            let ring_turned = setup
                .done
                .as_ref()
                .is_some_and(|done| matches!(done.act, Act::TurnRing { .. }));
            let stop_set = at == range.start && self.length_by() != LengthBy::Dial;
            let withdrawn = stop_set
                || steps.last().is_some_and(|step| {
                    step.kind.is_cut() || (step.kind == StepKind::Adjust && !ring_turned)
                });
            let farther = self.farther(mark - stands, withdrawn);
            let stops_made = self.stops_before + self.stops_by(at);
            let just_measured = steps
                .last()
                .is_some_and(|step| step.kind == StepKind::Measure);
            let anew = setup
                .done
                .as_ref()
                .is_some_and(|done| done.cuts == at && self.comes_in_anew(done));
            let stands_out = anew || (at == range.start && self.stands_out());
            let farther = words(|f| match (stands_out, just_measured) {
                (true, _) => write!(f, "come in to it from outside, the turns counted from zero"),
                (false, true) => write!(
                    f,
                    "that is {farther} in from where it stands, if M{stops_made} was as expected"
                ),
                (false, false) => write!(f, "that is {farther} in from where it stands"),
            });
            let measured = stops.contains(&at);
            let around = Around {
                before,
                farther: &farther,
                set,
                alike,
                at_rest: steps.last().is_some_and(|step| self.leaves_at_rest(step)),
                measured,
                over: setup.done.as_ref().is_some_and(|done| at < done.cuts),
            };
            let step = self.cut(
                cut,
                self.cuts_before + (at - range.start) + 1,
                setup.expected_after(at, self.cross)?,
                &around,
            )?;
            set = step.spindle_speed.unwrap_or(set);
            alike = Some((step.depth_of_cut, step.feed, step.spindle_speed));
            (before, stands) = (step.diameter, mark);
            steps.push(step);
            let done = setup.done.as_ref().filter(|done| done.cuts == at + 1);
            if !measured && done.is_none() {
                continue;
            }
            if let Some(done) = done {
                before = done.size;
                let step = self.adjust(done, cut)?;
                if let Act::TurnRing { to } = done.act {
                    stands = to;
                }
                steps.push(step);
                continue;
            }
            let name = format!("M{}", stops_made + 1);
            let mut step = match cuts.get(at + 1) {
                Some(next) if next.after_change && self.part == CutsOf::Roughing => {
                    self.measure_roughed(&name, at)?
                }
                Some(last) if at + 2 == cuts.len() => self.measure_last(&name, at, *last)?,
                _ => self.measure_between(&name, at)?,
            };
            // A stop that lies behind later ones: what it found is known, and its readings were moved since.
            if around.over {
                let (expected, known) = (step.diameter, setup.expected_after(at, self.cross)?);
                step.text = step.text.replacen(
                    &format!("(expect {})", expected.people(self.u)),
                    &format!("(taken to be {})", known.people(self.u)),
                    1,
                );
                step.diameter = known;
            }
            steps.push(step);
        }
        Ok(())
    }

    /// True where the cut after a measurement is come in to from outside, wherever the cross slide stands.
    fn comes_in_anew(&self, done: &Done) -> bool {
        match done.act {
            // A turn short, the place withdrawn to from there is a turn short too.
            Act::Repeat {
                slip: Slip::TurnTooFew,
                ..
            } => true,
            _ => self.was_faced(done),
        }
    }

    /// True where the shoulder was faced outwards before the measurement: the last cut was made by then.
    fn was_faced(&self, done: &Done) -> bool {
        match done.act {
            Act::OnceMore => true,
            Act::Repeat { cuts, .. } => done.cuts + cuts == self.setup.cuts.len(),
            _ => false,
        }
    }

    /// True where the spindle stands still when a step is done.
    fn leaves_at_rest(&self, step: &Step) -> bool {
        match step.kind {
            StepKind::Measure | StepKind::Adjust | StepKind::Inspect => true,
            // Nothing was touched, or a stop was set.
            StepKind::ZeroX => step.spindle_speed.is_none() || self.length_by() != LengthBy::Dial,
            _ => false,
        }
    }

    fn cut(
        &self,
        cut: PlannedCut,
        number: usize,
        diameter: Diameter,
        around: &Around<'_>,
    ) -> Result<Step, Error> {
        let Around {
            before,
            farther,
            set,
            alike,
            at_rest,
            measured,
            over,
        } = *around;
        let (setup, u) = (self.setup, self.u);
        let PlannedCut { kind, mark, .. } = cut;
        let (feed, step) = setup.pace_of(self.common, &cut);
        let finishing = kind == StepKind::FinishCut;
        let (feed, step) = (&feed, &step);
        let (reading, at) = (cross_reading(self.cross, mark)?, self.at_mark(cut)?);
        let Some(depth) = before.depth_to(diameter) else {
            if over {
                // It was measured larger than the size before it: nothing is planned from it any more.
                let mut step = self.step(kind, diameter, format!("Cut {number}."));
                self.read(&mut step, cut)?;
                return Ok(step);
            }
            return Err(Error::internal("a cut that takes nothing"));
        };
        let last = finishing && mark == setup.datum.last.count();
        let this = (Some(depth), Some(feed.feed), Some(step.spindle_speed));
        let what = match kind {
            StepKind::FirstCut if measured => "first cut, to be measured",
            StepKind::FirstCut => "first cut",
            StepKind::RoughCut if measured => "roughing, to be measured",
            StepKind::RoughCut => "roughing",
            _ if last && alike == Some(this) => {
                "last cut, same depth, feed and speed as the one before"
            }
            _ if last => "last cut",
            _ => "first of the two finishing cuts",
        };
        let mut text = String::with_capacity(TEXT);
        add(&mut text, format_args!("Cut {number}, {what}. "));
        if step.spindle_speed != set {
            let set = self.set_words(step.spindle_speed, step);
            add(&mut text, format_args!("{set} "));
        }
        if at_rest || step.spindle_speed != set {
            text.push_str("Spindle on. ");
        }
        match self.reads_out() {
            true => add(
                &mut text,
                format_args!("Cross slide to {} on the readout", self.shown(diameter)),
            ),
            false => add(
                &mut text,
                format_args!(
                    "Cross dial to {at} ({} {}), {farther}",
                    match cut.between {
                        0 => "shows",
                        _ => "by eye, beyond",
                    },
                    reading.shows().people(u)
                ),
            ),
        }
        add(
            &mut text,
            format_args!(
                "; {}. {}",
                self.feed_words(feed, step),
                self.travel_words(last, finishing && setup.spring_passes)
            ),
        );
        let mut out = self.step(kind, diameter, text);
        let effort = setup.effort(self.common, self.clamp, &cut, before, depth)?;
        let tool = setup.whole_of(&cut, self.common, self.clamp).tool;
        let chip = engagement::chip_section(depth, feed.feed, tool.cutting_edge_angle());
        let mut because = String::with_capacity(TEXT);
        add(
            &mut because,
            format_args!(
                "main force F = k_c a f = {} x {} x {} = {}, {} at the spindle, bar springs about {} on the diameter at most",
                measured_force::specific_force_of_chip(effort.forces.main, chip).people(u),
                depth.people(u),
                feed.feed.people(u),
                effort.forces.main.people(u),
                effort.power.people(u),
                effort.spring.people(u),
            ),
        );
        // That is the deepest at the roughing feed and step; a plan for the least time may take others.
        let as_roughed = feed.feed == self.common.rough_feed.feed
            && step.spindle_speed == setup.rough_step.spindle_speed;
        let of_least_time = setup.cuts.iter().any(|cut| cut.pace.is_some());
        if kind == StepKind::RoughCut
            && self.first_rough() == Some(mark)
            && as_roughed
            && !of_least_time
        {
            add(
                &mut because,
                format_args!(
                    "; the deepest cut allowed is {}, by {}",
                    setup.rough_most.people(u),
                    setup.rough_limit
                ),
            );
        }
        if kind == StepKind::FinishCut && !last {
            add(
                &mut because,
                format_args!(
                    "; no cut is planned lighter than {}{}",
                    setup.place.least.people(u),
                    words(|f| match depth < setup.place.least {
                        true => write!(
                            f,
                            ", and this one, which mends a size, not lighter than {}",
                            setup.place.correcting.people(u)
                        ),
                        false => Ok(()),
                    })
                ),
            );
        }
        out.because = Some(because);
        self.read(&mut out, cut)?;
        out.z = Some(Position::computed_trade(
            -self.carriage.travel_at(setup.carriage.stop),
        ));
        out.spindle_speed = Some(step.spindle_speed);
        out.feed = Some(feed.feed);
        out.depth_of_cut = Some(depth);
        let once = setup.time_of_cut(feed.feed, step);
        out.time = match finishing && setup.spring_passes {
            true => Duration::computed_trade(2.0 * once.seconds()),
            false => once,
        };
        Ok(out)
    }

    /// A measurement before cuts that are not the last; after the first cut it also shows a dial that
    /// counts otherwise than was thought.
    fn measure_between(&self, name: &str, place: usize) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let cut = setup.cuts[place];
        let (mark, at) = (cut.mark, self.at_mark(cut)?);
        let expected = setup.diameter_at(self.cross, mark)?;
        // So that the last cut ends nearest to the aim, not to where it would end by the sheet.
        let (aim, whole) = setup.counted_to(self.cross)?;
        let end = setup.diameter_at(self.cross, setup.datum.last.count())?;
        let counted_from =
            Diameter::computed_trade(round_size(expected.mm() + aim.mm() - end.mm()));
        let act = match self.cross.ring() {
            Ring::Readout => self.readout_set(expected, name),
            Ring::Settable => format!(
                "In again by one whole turn to {at}, hold the handle, and turn the ring only, to {} marks{}, tenths \
                 between marks{}.",
                self.rule(name),
                self.turns_left_out(mark),
                self.table(place)?
            ),
            Ring::Fixed => format!(
                "In again by one whole turn to {at}. Shift S = ({name} - {}) / {} = ______ marks, to the nearest {}; add S \
                 to every mark below (the distances from where the dial stands: to the next one only).",
                plain(counted_from, u),
                self.mark_size(),
                to_the_nearest(whole)
            ),
        };
        let counts = match self.reads_out() {
            true => "the readout shows",
            false => "the dial counts",
        };
        let untouched = nearly_uncut(setup.uncut_at(place, self.common)?, expected);
        let other_dial = setup.size_of_other_dial(place, self.cross)?;
        // One size cannot be two things: the proof of the dial costs no metal.
        let either = other_dial.filter(|size| *size >= untouched);
        let other = match self.cross.reads() {
            DialReads::Diameter => "radius",
            _ => "diameter",
        };
        let nothing_cut = words(|f| {
            if let Some(size) = setup.size_before_repeat(place) {
                write!(f, "{}", self.repeated(size))?;
                // Deeper by what was left on than the next cut was planned.
                let next = setup.cuts.get(place + 1).map(|cut| cut.mark);
                let target = next.and_then(|mark| setup.diameter_at(self.cross, mark).ok());
                let depth = target.and_then(|target| size.depth_to(target));
                return match depth.is_some_and(|depth| depth > setup.rough_most) {
                    true => f.write_str(" Then the next cut in two."),
                    false => Ok(()),
                };
            }
            if let Some(size) = either {
                write!(
                    f,
                    "Near {}: {counts} the {other} after all, or nothing was cut. Stop and prove it before this cut is \
                     repeated. Otherwise, from {} on nothing was cut:",
                    size.people(u),
                    untouched.people(u)
                )?;
            } else {
                write!(f, "From {} on nothing was cut:", untouched.people(u))?;
            }
            write!(
                f,
                " {} take this cut again, and measure anew{SAME_AGAIN}.",
                match self.cross.ring() {
                    Ring::Readout => "leave the readout, find out why,",
                    Ring::Settable =>
                        "leave the ring, touch what was there, count the turns from it,",
                    Ring::Fixed => "no shift; touch what was there, count the turns from it,",
                }
            )
        });
        let wrong = words(|f| match other_dial {
            Some(size) if either.is_none() => write!(
                f,
                " Near {}: {counts} the {other} after all. Stop and prove it.",
                size.people(u)
            ),
            _ => Ok(()),
        });
        let mut step = self
            .step(
                StepKind::Measure,
                expected,
                format!(
                    "{} Measure {name} midway along what was cut ________ (expect {}). {nothing_cut} {act}{wrong}",
                    self.stop_words(),
                    expected.people(u)
                ),
            )
            .because(match self.reads_out() {
                true => "from here on the readout shows sizes that were measured, not touched",
                false => "from here on the dial tells sizes that were measured, not touched",
            });
        self.read(&mut step, cut)?;
        self.turned_at(&mut step, mark);
        Ok(step)
    }

    /// What is said first at a stop after a cut that was made once more for a size: no slip left that on twice.
    fn repeated(&self, before: Diameter) -> impl fmt::Display {
        words(move |f| {
            write!(
                f,
                "Near {} again: the zero is off, not the cut; {} by what is measured now.",
                before.people(self.u),
                match self.cross.ring() {
                    Ring::Readout => "set the readout",
                    Ring::Settable => "set the ring",
                    Ring::Fixed => "go on",
                }
            )
        })
    }

    fn measure_last(&self, name: &str, place: usize, last: PlannedCut) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let cut = setup.cuts[place];
        let uncut = setup.uncut_at(place, self.common)?;
        let (mark, at) = (cut.mark, self.at_mark(cut)?);
        let expected = setup.diameter_at(self.cross, mark)?;
        let (last, next) = (last.mark, self.at_mark(last)?);
        let target = setup.diameter_at(self.cross, last)?;
        let (aim, whole) = setup.counted_to(self.cross)?;
        let act = match self.cross.ring() {
            Ring::Readout => self.readout_set(expected, &format!("the mean of {name}")),
            Ring::Settable => format!(
                "In again by one whole turn to {at}, hold the handle, and turn the ring only, to {} marks{}, tenths \
                 between marks (a tenth is {}){}.",
                self.rule(format_args!("mean of {name}")),
                self.turns_left_out(mark),
                self.tenth(),
                self.table(place)?
            ),
            Ring::Fixed => format!(
                "In again by one whole turn to the mark of the cut before. The last cut goes (mean of {name} - {}) / {} = \
                 ______ marks farther in, to the nearest {} (by the sheet {}, to {next}).{}",
                plain(aim, u),
                self.mark_size(),
                to_the_nearest(whole),
                last - mark,
                self.never_fewer_marks(whole)
            ),
        };
        // A correcting cut may be lighter than a planned one, but not so light that it rubs.
        let largest = self.limits().largest();
        let rubs = setup.rubs_below(target);
        // In a wide zone the last cut may start from a size that is good already: the plan reckons with it.
        let again = half_of_the_last_over(expected, target);
        let no_cut = words(|f| {
            write!(
                f,
                "Below {}: good already, or lost: do not cut, go and see.",
                setup.never_cut_below(target).people(u)
            )?;
            let shown = |size: Diameter| size.people(u).to_string();
            let counted = self.cross.ring() == Ring::Fixed && whole;
            if rubs > largest && shown(rubs) != shown(largest) && !counted {
                write!(
                    f,
                    " From there to {} a last cut would rub: stop and ask.",
                    rubs.people(u)
                )?;
            }
            Ok(())
        });
        // Said before anything is set: what is set on such a size would hide where it comes from.
        let once_more = words(
            |f| match (setup.size_before_repeat(place), self.reads_out()) {
                (Some(size), _) => write!(
                    f,
                    "{} Above {}: leave half of the last cut for one more, and measure between the two.",
                    self.repeated(size),
                    again.people(u),
                ),
                (None, true) => write!(
                    f,
                    "Above {}: leave the readout, take this cut once more at its number, and measure anew{SAME_AGAIN}.",
                    again.people(u),
                ),
                (None, false) => {
                    write!(
                        f,
                        "Above {}: leave the ring, take this cut once more at its mark, and measure anew{SAME_AGAIN}.",
                        again.people(u),
                    )?;
                    let turn = self.turn_of_the_dial();
                    let short =
                        Diameter::computed_trade(round_size(expected.mm() + 0.5 * turn.mm()));
                    let short = short.min(nearly_uncut(uncut, expected));
                    match short > again {
                        true => write!(
                            f,
                            " From {} on the dial is a turn short, or nothing was cut: touch what was there, count the turns from it.",
                            short.people(u)
                        ),
                        false => Ok(()),
                    }
                }
            },
        );
        let spread = setup.uneven();
        let mut step = self.step(
            StepKind::Measure,
            expected,
            format!(
                "{} Measure {name} at three places ________ ________ ________ (expect {}). {once_more} {act} {no_cut} Places that differ by more than {}: stop and find out why ({}).",
                self.stop_words(),
                expected.people(u),
                spread.people(u),
                match self.clamp.held.kind {
                    HoldingKind::BetweenCentres => {
                        "larger at the tailstock: move it towards the tool, smaller: away from it, as the step before the zero of Z \
                         has it; in the middle: the bar springs, lighter cuts; else blunt tool, loose dog, centre"
                    }
                    HoldingKind::ChuckAndCentre => {
                        "larger at the tailstock: move it towards the tool by about half of that, smaller: away from it; in the \
                         middle: the bar springs, lighter cuts; else blunt tool, loose bar, centre"
                    }
                    HoldingKind::Chuck => "blunt tool, loose bar; larger at the free end: the bar springs away",
                }
            ),
        )
        .because("the last two cuts are alike, so the bar springs alike, and this measurement takes the spring out of the last");
        self.read(&mut step, cut)?;
        self.turned_at(&mut step, mark);
        Ok(step)
    }

    /// The ring of a stop is turned at the mark of the cut: to that mark, where the size is as expected.
    fn turned_at(&self, step: &mut Step, mark: i64) {
        if self.cross.ring() == Ring::Settable {
            step.ring_to = Some(ring_mark(self.cross, mark as f64));
        }
    }

    /// What the dial reads at a cut, in words.
    fn at_mark(&self, cut: PlannedCut) -> Result<String, Error> {
        Ok(read_as(&cross_reading(self.cross, cut.mark)?, cut.between))
    }

    /// Puts what the dial reads at a cut into a step.
    pub(super) fn read(&self, step: &mut Step, cut: PlannedCut) -> Result<(), Error> {
        if !self.reads_out() {
            step.reading = Some(cross_reading(self.cross, cut.mark)?);
            step.tenths = (cut.between > 0).then_some(cut.between);
        }
        Ok(())
    }

    /// How many whole marks of a fixed ring a last cut needs, so that it does not rub.
    fn never_fewer_marks(&self, whole: bool) -> impl fmt::Display {
        words(move |f| {
            let mark = self.cross.diameter_per_division().mm();
            let fewest = (round_size(2.0 * self.setup.place.correcting.mm()) / mark).ceil();
            match whole && fewest > 1.0 {
                true => write!(
                    f,
                    " Fewer than {fewest} would rub: then {fewest}, where that ends above {}; else stop and ask.",
                    self.setup.guarded.smallest().people(self.u)
                ),
                false => Ok(()),
            }
        })
    }

    fn first_rough(&self) -> Option<i64> {
        let mut cuts = self.setup.cuts.iter();
        let first = cuts.find(|cut| cut.kind == StepKind::RoughCut)?;
        Some(first.mark)
    }

    /// What follows from a measured size.
    fn adjust(&self, done: &Done, cut: PlannedCut) -> Result<Step, Error> {
        let mut step = self.step(StepKind::Adjust, done.size, self.adjust_words(done, cut)?);
        if self.was_faced(done) {
            // It was moved out of the way of the shoulder, where the tool still stands.
            let again = self.set_the_stop_again();
            step.text.push_str(match (again.as_str(), done.act) {
                ("", Act::OnceMore) => "",
                ("", _) => " Carriage to the right, clear of the bar.",
                (again, _) => again,
            });
        }
        self.read(&mut step, cut)?;
        if let Act::TurnRing { to } = done.act
            && self.cross.ring() == Ring::Settable
        {
            step.ring_to = Some(ring_mark(self.cross, to));
        }
        Ok(step)
    }

    fn adjust_words(&self, done: &Done, cut: PlannedCut) -> Result<String, Error> {
        let u = self.u;
        let off = DiameterError::computed_trade(done.off.abs());
        let found = words(|f| {
            write!(f, "Measured {}, ", done.size.people(u))?;
            match done.off {
                0.0 => f.write_str("as expected."),
                more => write!(
                    f,
                    "that is {} {} than expected.",
                    off.people(u),
                    if more > 0.0 { "larger" } else { "smaller" }
                ),
            }
        });
        // The readings of the sheet do not hold what was added to them by hand.
        let on_top = match self.cross.ring() {
            Ring::Fixed if self.number > 1 => ", a shift S found before added to them as before",
            _ => "",
        };
        let roughed = self.setup.change_at() == Some(done.cuts);
        Ok(match done.act {
            Act::GoOn if roughed => format!(
                "{found} The finishing tool will be zeroed on it there: the readings below stay as they were."
            ),
            Act::GoOn => format!("{found} Go on: the readings below stay as they were{on_top}."),
            Act::MoveReadings { tenths: 0 } => format!(
                "{found} The ring stays, and so does every reading below{on_top}: the last cut still ends where it may."
            ),
            Act::MoveReadings { tenths } => {
                let by = tenth_of_a_mark(tenths.abs() as f64 / 10.0);
                let between = match self.setup.between() {
                    0 => String::new(),
                    _ => format!(
                        " No whole number of marks brings the last cut to its size: tenths between marks, by eye; a tenth is {}.",
                        self.tenth()
                    ),
                };
                format!(
                    "{found} The ring stays. Every reading of this diameter below stands moved already by {by} {}, {}: go to it \
                     as it is{on_top}.{between}",
                    if tenths.abs() == 10 { "mark" } else { "marks" },
                    if tenths > 0 {
                        "farther in"
                    } else {
                        "less far in"
                    }
                )
            }
            Act::Repeat { slip, .. } => format!(
                "{found} The readings stay as they were; the {} is not touched. {} and measure anew.",
                if self.reads_out() { "readout" } else { "ring" },
                match slip {
                    Slip::Unknown => format!(
                        "That is too far off to go on from: spindle on, the tip over what was cut, in until it just \
                         touches, and see what the {} says there. Cut to that mark again,",
                        if self.reads_out() { "readout" } else { "dial" }
                    ),
                    Slip::Backlash => String::from(
                        "It may well be that the slide was not come in to its mark from outside, and to find out costs a \
                         cut, not the part: back off by more than the \
                         backlash, and come in again. Cut to that mark again,",
                    ),
                    Slip::TurnTooFew => format!(
                        "It may well be that the dial stood a turn short and the tool met no metal, or not all of it: spindle on, \
                         the tip over what was cut, come in until it just touches; there the dial is at {}, or near it, whatever \
                         was counted: count the turns anew from there. Then by the cuts below to that mark,",
                        cross_reading(
                            self.cross,
                            self.cross
                                .divisions_between(self.setup.reads_zero_at(self.cross), done.size)
                                .round() as i64
                        )?
                    ),
                }
            ),
            Act::LeftOn => format!(
                "{found} It may well be that the slide was not come in to its mark from outside, and too little is left on for a cut \
                 of its own. The readings stay as they were; the ring is not touched. Come in to the next mark from outside."
            ),
            Act::OnceMore => {
                let set = match self.reads_out() {
                    true => format!(
                        " {}",
                        self.readout_set(
                            Diameter::computed_trade(round_size(done.size.mm() - done.off)),
                            &self.nearest_shown(done.size)
                        )
                    ),
                    false => String::new(),
                };
                format!(
                    "{found} Too large: one more cut, then the shoulder and the size once more. Carriage to the right, clear of the \
                     bar.{set}"
                )
            }
            Act::TurnRing { .. } if self.reads_out() => format!(
                "{found} {} The numbers below stay as they were.",
                self.readout_set(
                    self.setup.diameter_at(self.cross, cut.mark)?,
                    &self.nearest_shown(done.size)
                )
            ),
            Act::TurnRing { to } => format!(
                "{found} No whole number of marks brings the last cut to its size. In again to {}, hold the handle, and \
                 turn the ring only, to {} marks, tenths between marks{}; the readings below stay as they were.",
                self.at_mark(cut)?,
                self.on_the_ring(to),
                self.counted_as(to)
            ),
        })
    }

    /// The shoulder, and the measurement of what is finished.
    pub(super) fn shoulder_and_size(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (setup, u) = (self.setup, self.u);
        let last = setup.datum.last.count();
        let diameter = setup.diameter_at(self.cross, last)?;
        let limits = self.limits();
        let shoulder = setup.place.shoulder;
        let at = match setup.carriage.slanted {
            Some((mark, _)) => Along { mark, tenths: 0 },
            None => shoulder,
        };
        let mut step = self.step(
            StepKind::Shoulder,
            diameter,
            format!(
                "The cross slide still {}: {}by hand to {}, then {} the cross slide until the tip is clear of the bar. Stop \
                 the spindle.{}",
                match self.reads_out() {
                    true => "where the last cut left it",
                    false => "at its last mark",
                },
                match self.length_by() {
                    LengthBy::Stop =>
                        "carriage a little to the right, stop the spindle, loosen the stop and move it out of the way; spindle on, ",
                    LengthBy::Dial | LengthBy::Indicator => "",
                },
                words(|f| {
                    write!(f, "{}", self.along_words(at))?;
                    match self.length_by() {
                        LengthBy::Dial | LengthBy::Stop => Ok(()),
                        LengthBy::Indicator => f.write_str(", past the 0 of the indicator"),
                    }
                }),
                match setup.carriage.slanted {
                    Some(_) => "withdraw",
                    None => "face the shoulder outwards with",
                },
                words(|f| match setup.carriage.slanted {
                    Some((_, lead)) if self.finishes_with_a_knife() => write!(
                        f,
                        " No farther yet: the outer end of the roughing tool's edge ran {} ahead of its tip, and left a slant. This \
                         tool squares the shoulder, to {}, when all diameters are done; its length is measured then.",
                        lead.people(u),
                        self.along_words(shoulder)
                    ),
                    Some((_, lead)) => write!(
                        f,
                        " No farther with this tool: the outer end of its edge runs {} ahead of its tip. What is left of the \
                         shoulder, to {}, a knife tool of 90 deg or more takes when all diameters are done; its length is \
                         measured then.",
                        lead.people(u),
                        self.along_words(shoulder)
                    ),
                    None => Ok(()),
                })
            ),
        );
        if at.tenths > 0 {
            step.tenths = Some(at.tenths);
            step = step.because(
                "halfway between two marks: neither keeps well within the limits of the length",
            );
        }
        step.reading = Some(self.z_reading(at.mark));
        step.z = Some(Position::computed_trade(-at.travel(self.carriage)));
        step.spindle_speed = Some(setup.finish_step.spindle_speed);
        steps.push(step);

        let [shortest, longest] = setup.lengths_from_the_face();
        // The length that this shoulder ends at its free side is that of the diameter turned before.
        let ended = words(|f| {
            let Some(before) = self.place_before() else {
                return Ok(());
            };
            let (name, limits) = (before.surface.diameter(), before.length_limits);
            write!(
                f,
                " Length of {0}, from its shoulder to this one ________: good from {1} to {2}; shorter: face the shoulder \
                 of {0} farther in by what is missing; longer: face this shoulder farther in by what is over, if the \
                 length from the face bears it.",
                name.people(u),
                limits.shortest().people(u),
                limits.longest().people(u),
            )
        });
        let centre_in_the_way = self.clamp.held.kind != HoldingKind::Chuck;
        let by_the_face = match (centre_in_the_way, self.clamp.overall) {
            (false, Some(_)) => "face the end by what is over, if the length over all bears it",
            (false, None) => "face the end by what is over",
            (true, Some(_)) => {
                "at the very last, gripped short and without the centre, face the end by what is over, if the length over \
                 all bears it"
            }
            (true, None) => {
                "at the very last, gripped short and without the centre, face the end by what is over"
            }
        };
        // Another face is another zero of all shoulders that are still to come.
        let from_then_on = match (self.more_to_come, centre_in_the_way) {
            (false, _) => "",
            (true, false) => ", and zero Z on it anew",
            (true, true) => ", and go farther by as much at every shoulder below",
        };
        let along = words(|f| match setup.carriage.slanted {
            // Its shoulder is not there yet.
            Some(_) => Ok(()),
            None => write!(
                f,
                " Length from the face to the shoulder ________: good from {} to {}; shorter: face the shoulder farther in by \
                 what is missing; longer: {by_the_face}{from_then_on}.{ended}",
                shortest.people(u),
                longest.people(u),
            ),
        });
        let good = good_sizes(limits, setup.guard, u);
        let good = words(|f| match good {
            Some([least, most]) if least < most => write!(
                f,
                "Good where all are from {} to {}.",
                least.people(u),
                most.people(u)
            ),
            Some([size, _]) => write!(f, "Good where all are {}.", size.people(u)),
            None => write!(
                f,
                "No whole {} keeps clear of both limits: this instrument proves no size good, a finer one may.",
                match u {
                    Units::Metric => "thousandth of a millimetre",
                    Units::Inch => "ten-thousandth of an inch",
                }
            ),
        });
        let next = Diameter::computed_trade(round_size(limits.largest().mm() + setup.guard.mm()));
        let lost = Diameter::computed_trade(round_size(limits.smallest().mm() - setup.guard.mm()));
        let cuttable = Diameter::computed_trade(round_size(
            diameter.mm() + 2.0 * setup.place.correcting.mm(),
        ));
        let same = match self.length_by() {
            LengthBy::Stop => "to the same Z by the carriage dial, for the stop is out of the way",
            LengthBy::Dial | LengthBy::Indicator => "to the same Z",
        };
        let oversize = words(|f| match self.reads_out() {
            true => write!(
                f,
                "carriage to the right, clear of the bar, in again to {0}, the readout set to {1} there, and one more cut to {0}, \
                 {same}",
                self.shown(diameter),
                self.set_to("the mean"),
            ),
            false => write!(
                f,
                "one more cut, from the right, (mean - {}) / {} marks farther in than the last mark, {same}",
                plain(diameter, u),
                self.mark_size()
            ),
        });
        // As they are printed: two figures that read alike leave no sizes between them.
        let rubs = cuttable > next && cuttable.people(u).to_string() != next.people(u).to_string();
        let above = words(|f| match rubs {
            true => write!(
                f,
                "Above {}: {oversize}. From {} to there a cut would rub: what is over cannot be turned off.",
                cuttable.people(u),
                next.people(u)
            ),
            false => write!(f, "Above {}: {oversize}.", next.people(u)),
        });
        // One cut takes as much off everywhere.
        let in_part = words(|f| {
            write!(
                f,
                "Above at some places only, or more than {} apart: no cut, find out why.",
                setup.uneven().people(u)
            )
        });
        steps.push(
            self.step(
                StepKind::Inspect,
                diameter,
                format!(
                    "{} The tool stays in its holder. Measure {}at {}, at three places, clear of the burr ________ \
                     ________ ________. {good} Within {} of a limit this instrument cannot \
                     tell: measure with a finer one. {above} {in_part} Below {}: LOST, whatever is tried.{along}",
                    self.stop_words(),
                    self.finished_name(),
                    match u {
                        Units::Metric => "20 degC",
                        Units::Inch => "68 degF (20 degC)",
                    },
                    setup.guard.people(u),
                    lost.people(u),
                ),
            )
            .because("a warm part measures large and shrinks"),
        );
        Ok(())
    }

    /// The surface of this clamping that was turned before this one.
    fn place_before(&self) -> Option<&Place<'_>> {
        let places = &self.clamp.places;
        let this = places
            .iter()
            .position(|place| place.at == self.setup.place.at)?;
        places.get(this.checked_sub(1)?)
    }

    /// The name of the finished size, where a later surface is zeroed on it.
    fn finished_name(&self) -> impl fmt::Display {
        words(
            |f| match self.more_to_come && self.part == CutsOf::OneTool {
                true => write!(f, "F{} ", self.number),
                false => Ok(()),
            },
        )
    }

    fn limits(&self) -> Limits {
        self.setup.place.surface.limits()
    }
}

fn to_the_nearest(whole: bool) -> &'static str {
    match whole {
        true => "whole one",
        false => "tenth of one, by eye",
    }
}
