//! The steps in order, in words for the person at the lathe.

use super::job::Job;
use super::safety::{limits_of_the_answer, safety};
use super::setup::{Setup, cross_reading, plain, tenth_of_a_mark};
use super::sheet::{Expected, Sheet, Step, StepKind};
use crate::error::Error;
use crate::physics::speed;
use crate::quantity::DiameterError;
use crate::quantity::dial::Divisions;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, Duration, Position, Quantity, WorkLength, round_size};
use crate::shop::dial::{Dial, DialReads, Ring};

/// Writes the sheet of a job from its figures.
pub(super) fn write(job: &Job, setup: Setup, units: Units) -> Result<Sheet, Error> {
    let (Some(cross), Some(carriage)) = (job.lathe.cross_slide(), job.lathe.carriage()) else {
        return Err(Error::internal("a plan without dials"));
    };
    let writer = Writer {
        job,
        setup: &setup,
        cross,
        carriage,
        u: units,
    };
    let mut steps = Vec::with_capacity(24);
    writer.set_up(&mut steps)?;
    writer.zero(&mut steps)?;
    writer.cuts(&mut steps)?;
    writer.finish(&mut steps)?;
    let seconds: f64 = steps.iter().map(|step| step.time.seconds()).sum();
    let diameter = setup.diameter_at(cross, setup.datum.last.count())?;
    if !setup.guarded.contains(diameter) {
        return Err(Error::internal("a plan that ends outside the zone"));
    }
    let mut cautions = safety(job, setup.held.kind);
    cautions.extend(setup.cautions.iter().cloned());
    cautions.extend(limits_of_the_answer());
    Ok(Sheet {
        heading: writer.heading()?,
        kit: writer.kit(),
        dials: writer.dials(),
        steps,
        expected: Expected {
            diameter,
            limits: job.part.limits(),
            uncertainty: setup.chance.uncertainty,
            good: setup.chance.outcome.good,
            rework: setup.chance.outcome.rework,
            scrap: setup.chance.outcome.scrap,
            dominant: setup.chance.budget.dominant(),
            shares: setup.chance.shares.clone(),
            measuring_stops: setup.chance.stops.clone(),
            how_sure: writer.how_sure(),
            finish: setup.roughness,
            time: Duration::computed_trade(seconds),
        },
        cautions,
        job: job.clone(),
        support: setup.support,
        provenance: setup.provenance,
        units,
    })
}

/// A job and its figures, to be put into words.
pub(super) struct Writer<'a> {
    pub(super) job: &'a Job,
    pub(super) setup: &'a Setup,
    pub(super) cross: &'a Dial,
    pub(super) carriage: &'a Dial,
    pub(super) u: Units,
}

impl Writer<'_> {
    fn set_up(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let stock = job.stock.diameter();
        let step = &setup.rough_step;
        let short = WorkLength::computed_trade(setup.overhang.mm().min(stock.mm().max(10.0)));
        let with_centre = setup.centre.is_some();
        let grip = WorkLength::computed_trade(job.stock.length().mm() - setup.overhang.mm());
        let clamp = if with_centre {
            Step::new(
                StepKind::Clamp,
                stock,
                format!(
                    "Grip the bar with only {} standing out, to face and drill it; the other {} go into the spindle, whose \
                     bore they must pass. Tighten the jaws. KEY OUT of the chuck.",
                    short.people(u),
                    WorkLength::computed_trade(job.stock.length().mm() - short.mm()).people(u)
                ),
            )
            .because("a short end does not spring; it is let out afterwards")
        } else {
            Step::new(
                StepKind::Clamp,
                stock,
                format!(
                    "Grip {} in the jaws, let {} stand out. Tighten. KEY OUT of the chuck.",
                    grip.people(u),
                    setup.overhang.people(u)
                ),
            )
            .because(self.addends(true))
        };
        steps.push(clamp);
        steps.push(Step::new(
            StepKind::FirstStart,
            stock,
            format!(
                "First start. Guard shut, goggles on, nothing loose near the chuck. Turn the chuck by hand one whole \
                 turn: nothing touches. Start on the lowest speed and watch. {}",
                self.set_words(step.spindle_speed, step),
            ),
        )
        .because(self.speed_words(step)));
        let then = if with_centre {
            "Stop the spindle; cross slide out, unlock the carriage, move it to the right, clear of the tailstock."
        } else {
            "Stop the spindle; leave the carriage where it is."
        };
        let mut face = Step::new(
            StepKind::Face,
            stock,
            format!(
                "Face the end: touch it, move the carriage in by {}, lock the carriage; {}, from outside to the middle. \
                 No pip may stay. {then}",
                setup.facing.people(u),
                self.face_words(step),
            ),
        );
        face.spindle_speed = Some(step.spindle_speed);
        face.feed = Some(setup.finish_feed.feed);
        face.z = Some(Position::computed_trade(0.0));
        let face_cuts = (setup.facing.mm() / FACE_DEPTH).ceil().max(1.0);
        let one = speed::facing_time(stock, setup.finish_feed.feed, step.spindle_speed);
        face.time = Duration::computed_trade(one.seconds() * face_cuts);
        if face_cuts > 1.0 {
            face.text
                .push_str(&format!(" Take it in {face_cuts:.0} cuts."));
        }
        steps.push(face);
        if let Some(hole) = &setup.centre {
            let mut drill = Step::new(
                StepKind::CentreDrill,
                stock,
                format!(
                    "{} Centre drill form A, pilot {}: oil, gently at first, {} deep from the face, until the \
                     countersink measures {}. Stop the spindle. Chips off with a hook.",
                    self.set_words(hole.spindle_speed, step),
                    hole.pilot.text(Units::Metric),
                    hole.depth.people(u),
                    hole.countersink.people(u),
                ),
            )
            .because("the thin pilot breaks first; its speed follows from the countersink, not from the bar");
            drill.spindle_speed = Some(hole.spindle_speed);
            steps.push(drill);
            steps.push(
                Step::new(
                    StepKind::Reclamp,
                    stock,
                    format!(
                        "Spindle at rest. Loosen the jaws, let {} stand out, nip the jaws. Bring up the live centre, \
                         lock tailstock and barrel, barrel out as little as can be. Now tighten the jaws. KEY OUT. \
                         Turn by hand one turn: the centre must turn with the bar. Check that slide and tool reach \
                         the end of the bar without touching the centre or the tailstock. {}",
                        WorkLength::computed_trade(setup.held.overhang.mm()).people(u),
                        self.set_words(step.spindle_speed, step),
                    ),
                )
                .because(format!(
                    "{}; the bar grows warm and long: feel the centre after each cut, ease it when it gets hot",
                    self.addends(false)
                )),
            );
        }
        Ok(())
    }

    fn zero(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let stock = job.stock.diameter();
        let where_to_zero = if setup.centre.is_none() {
            "the tip still at the finished face and the carriage not moved since: turn the ring of the carriage dial to 0. \
             Cross slide out beyond the bar, then unlock the carriage."
        } else {
            "with the spindle turning, touch the finished face lightly with the tip, beside the centre; turn the ring of \
             the carriage dial to 0."
        };
        let mut zero_z = Step::new(
            StepKind::ZeroZ,
            stock,
            format!(
                "Zero Z: {where_to_zero} Z is negative towards the chuck. Never past Z {}: stop there, whatever happens \
                 (jaws at Z {}).",
                Position::computed_trade(-setup.never_past).people(u),
                Position::computed_trade(-setup.held.overhang.mm()).people(u),
            ),
        );
        zero_z.reading = Some(self.z_reading(Divisions::ZERO));
        zero_z.z = Some(Position::computed_trade(0.0));
        if setup.centre.is_some() {
            zero_z.spindle_speed = Some(setup.rough_step.spindle_speed);
        }
        steps.push(zero_z);

        let start = tenth_of_a_mark(setup.datum.start);
        let set_to = if setup.datum.start == 0.0 {
            String::from("0")
        } else {
            format!("{start} marks (between two marks)")
        };
        let text = match (job.zero_at, self.cross.ring()) {
            (Some(zero), _) if setup.datum.start == 0.0 => {
                format!(
                    "Zero X: the cross dial must read 0 where the bar measures {}. Prove it. The bar must measure that all along: \
                     turn down what is thicker first.",
                    zero.people(u)
                )
            }
            (Some(zero), _) => format!(
                "Zero X: come in to where the bar measures {}, hold the handle, and turn the ring only, until it reads {set_to}. \
                 The bar must measure that all along: turn down what is thicker first.",
                zero.people(u)
            ),
            (None, Ring::Fixed) => String::from(
                "Zero X: compound slide square to the bed. Set the cross dial to 0, coming in. With the spindle turning, \
                 bring the tip to the bar with the compound slide until it just touches near its end; lock the compound \
                 slide. Then carriage to the right, clear of the face.",
            ),
            (None, _) => format!(
                "Zero X: with the spindle turning, come in until the tip just touches the bar near its end; hold the \
                 handle, and turn the ring only, until it reads {set_to}. Carriage to the right, clear of the face.",
            ),
        };
        let mut zero_x = Step::new(StepKind::ZeroX, job.zero_at.unwrap_or(stock), text);
        if setup.datum.start == 0.0 {
            zero_x.reading = Some(cross_reading(self.cross, 0)?);
        }
        if job.zero_at.is_none() {
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
        steps.push(zero_x);
        Ok(())
    }

    fn cuts(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let setup = self.setup;
        let passes = &setup.passes;
        let first = passes.first.iter().map(|mark| (StepKind::FirstCut, *mark));
        let rough = passes.rough.iter().map(|mark| (StepKind::RoughCut, *mark));
        let finish = passes
            .finish
            .iter()
            .map(|mark| (StepKind::FinishCut, *mark));
        let cuts: Vec<(StepKind, i64)> = first.chain(rough).chain(finish).collect();
        let stops = &setup.chance.stops.chosen.after;
        let mut before = self.job.zero_at.unwrap_or(self.job.stock.diameter());
        let mut stands = setup.datum.start;
        for (at, (kind, mark)) in cuts.iter().copied().enumerate() {
            // After a cut the tool stands one turn out; after a measurement it was brought in again.
            let withdrawn = steps.last().is_some_and(|step| step.depth_of_cut.is_some());
            let mut farther = self.farther(mark as f64 - stands, withdrawn);
            farther.push_str(" in from where it stands");
            if steps
                .last()
                .is_some_and(|step| step.kind == StepKind::Measure)
            {
                let measured = stops.iter().filter(|stop| **stop < at).count();
                farther.push_str(&format!(", if M{measured} was as expected"));
            }
            let measured = stops.contains(&at);
            let step = self.cut(kind, at + 1, mark, before, &farther, measured)?;
            (before, stands) = (step.diameter, mark as f64);
            steps.push(step);
            if !measured {
                continue;
            }
            let name = format!("M{}", 1 + stops.iter().filter(|stop| **stop < at).count());
            steps.push(match cuts.get(at + 1) {
                Some((_, last)) if at + 2 == cuts.len() => self.measure_last(&name, mark, *last)?,
                _ => self.measure_between(&name, mark, at == 0)?,
            });
        }
        Ok(())
    }

    fn cut(
        &self,
        kind: StepKind,
        number: usize,
        mark: i64,
        before: Diameter,
        farther: &str,
        measured: bool,
    ) -> Result<Step, Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let finishing = kind == StepKind::FinishCut;
        let (feed, step) = if finishing {
            (&setup.finish_feed, &setup.finish_step)
        } else {
            (&setup.rough_feed, &setup.rough_step)
        };
        let reading = cross_reading(self.cross, mark)?;
        let diameter = setup.diameter_at(self.cross, mark)?;
        let Some(depth) = before.depth_to(diameter) else {
            return Err(Error::internal("a cut that takes nothing"));
        };
        let last = finishing && mark == setup.datum.last.count();
        let what = match kind {
            StepKind::FirstCut if measured => "first cut, to be measured",
            StepKind::FirstCut => "first cut",
            StepKind::RoughCut if measured => "roughing, to be measured",
            StepKind::RoughCut => "roughing",
            _ if last => "last cut, same depth, feed and speed as the one before",
            _ => "first of the two finishing cuts",
        };
        let changes_step =
            finishing && !last && setup.finish_step.spindle_speed != setup.rough_step.spindle_speed;
        let change = if changes_step {
            format!("{} ", self.set_words(step.spindle_speed, step))
        } else {
            String::new()
        };
        let mut out = Step::new(
            kind,
            diameter,
            format!(
                "Cut {number}, {what}. {change}Cross dial to {reading} (shows {}), that is {farther}; {}. {}",
                reading.shows().people(u),
                self.feed_words(feed, step),
                self.travel_words(last)
            ),
        );
        let effort = setup.effort(job, before, depth, finishing)?;
        out.because = Some(format!(
            "main force {}, {} at the spindle, bar springs about {} on the diameter at most",
            effort.forces.main.people(u),
            effort.power.people(u),
            effort.spring.people(u),
        ));
        if kind == StepKind::RoughCut && setup.passes.rough.first() == Some(&mark) {
            out.because = out.because.map(|b| {
                format!(
                    "{b}; the deepest cut allowed is {}, by {}",
                    setup.rough_most.people(u),
                    setup.rough_limit
                )
            });
        }
        if kind == StepKind::FinishCut && !last {
            out.because = out.because.map(|b| {
                format!(
                    "{b}; no cut is planned lighter than {}",
                    setup.least_depth.people(u)
                )
            });
        }
        out.reading = Some(reading);
        out.z = Some(Position::computed_trade(
            -self.carriage.travel_at(setup.carriage.stop),
        ));
        out.spindle_speed = Some(step.spindle_speed);
        out.feed = Some(feed.feed);
        out.depth_of_cut = Some(depth);
        out.time = setup.time_of_cut(job, feed.feed, step);
        Ok(out)
    }

    /// A measurement before cuts that are not the last; after the first cut it also shows a dial that
    /// counts otherwise than was thought.
    fn measure_between(&self, name: &str, mark: i64, first: bool) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let reading = cross_reading(self.cross, mark)?;
        let expected = setup.diameter_at(self.cross, mark)?;
        let touched = self.job.zero_at.unwrap_or(self.job.stock.diameter());
        let taken = round_size(touched.mm() - expected.mm());
        let (half, twice) = (
            Diameter::computed_trade(round_size(touched.mm() - taken / 2.0)),
            Diameter::computed_trade(round_size(touched.mm() - taken * 2.0)),
        );
        let act = match self.cross.ring() {
            Ring::Settable => format!(
                "In again by one whole turn to {reading}, hold the handle, and turn the ring only, to {} marks, tenths \
                 between marks: {}.",
                self.rule(name),
                self.table(mark, None)?
            ),
            Ring::Fixed => format!(
                "In again by one whole turn to {reading}. Shift S = ({name} - {}) / {} = ______ marks, to the nearest whole \
                 one; add S to every mark below (the distances from where the dial stands: to the next one only).",
                plain(expected, u),
                self.mark_size()
            ),
        };
        let wrong = match self.cross.reads() {
            _ if !first => String::new(),
            DialReads::Diameter => format!(
                " Near {}: the dial counts the radius after all. Stop and prove it.",
                twice.people(u)
            ),
            _ => format!(
                " Near {}: the dial counts the diameter after all. Stop and prove it.",
                half.people(u)
            ),
        };
        let mut step = Step::new(
            StepKind::Measure,
            expected,
            format!(
                "{} Measure {name} ________ (expect {}). {act}{wrong}",
                self.stop_words(),
                expected.people(u)
            ),
        )
        .because("from here on the dial tells sizes that were measured, not touched");
        step.reading = Some(reading);
        Ok(step)
    }

    fn measure_last(&self, name: &str, mark: i64, last: i64) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let reading = cross_reading(self.cross, mark)?;
        let expected = setup.diameter_at(self.cross, mark)?;
        let target = setup.diameter_at(self.cross, last)?;
        let next = cross_reading(self.cross, last)?;
        let act = match self.cross.ring() {
            Ring::Settable => format!(
                "In again by one whole turn to {reading}, hold the handle, and turn the ring only, to {} marks, tenths \
                 between marks (a tenth is {}): {}.",
                self.rule(&format!("mean of {name}")),
                DiameterError::computed_trade(self.cross.diameter_per_division().mm() / 10.0)
                    .people(u),
                self.table(mark, Some(last))?
            ),
            Ring::Fixed => format!(
                "In again by one whole turn to the mark of the cut before. The last cut goes (mean of {name} - {}) / {} = \
                 ______ marks farther in, to the nearest whole one (by the sheet {}, to {next}).",
                plain(target, u),
                self.mark_size(),
                last - mark,
            ),
        };
        // A correcting cut may be lighter than a planned one, but not so light that it rubs.
        let largest = self.job.part.limits().largest();
        let rubs =
            Diameter::computed_trade(round_size(target.mm() + 2.0 * setup.correcting_depth.mm()));
        let mut no_cut = format!(
            "Below {}: good already, or lost: do not cut, go and see.",
            largest.people(u)
        );
        if rubs > largest {
            no_cut.push_str(&format!(
                " From there to {} a last cut would rub: stop and ask.",
                rubs.people(u)
            ));
        }
        let again = Diameter::computed_trade(round_size(1.5 * expected.mm() - 0.5 * target.mm()));
        no_cut.push_str(&format!(
            " Above {}: take this cut once more at its mark, and measure anew.",
            again.people(u)
        ));
        let spread = Diameter::computed_trade(self.job.part.limits().tolerance().mm() / 3.0);
        let mut step = Step::new(
            StepKind::Measure,
            expected,
            format!(
                "{} Measure {name} at three places ________ ________ ________ (expect {}). {act} {no_cut} Places that differ by more than {}: stop and find out why (blunt tool, loose bar, centre).",
                self.stop_words(),
                expected.people(u),
                spread.people(u),
            ),
        )
        .because("the last two cuts are alike, so the bar springs alike, and this measurement takes the spring out of the last");
        step.reading = Some(reading);
        Ok(step)
    }

    fn finish(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let last = setup.datum.last.count();
        let diameter = setup.diameter_at(self.cross, last)?;
        let limits = job.part.limits();
        let shoulder = setup.carriage.shoulder;
        let mut step = Step::new(
            StepKind::Shoulder,
            diameter,
            format!(
                "The cross slide still at its last mark: by hand to {}, then face the shoulder outwards with the cross \
                 slide until the tip is clear of the bar. Stop the spindle.{}",
                self.z_words(shoulder),
                if job.tool.cutting_edge_angle().degrees() < 90.0 {
                    " This tool leaves a shoulder of its own angle; a square one wants a knife tool."
                } else {
                    ""
                }
            ),
        );
        step.reading = Some(self.z_reading(shoulder));
        step.z = Some(Position::computed_trade(-self.carriage.travel_at(shoulder)));
        step.spindle_speed = Some(setup.finish_step.spindle_speed);
        steps.push(step);

        let guarded = setup.guarded;
        let next = Diameter::computed_trade(round_size(limits.largest().mm() + setup.guard.mm()));
        let lost = Diameter::computed_trade(round_size(limits.smallest().mm() - setup.guard.mm()));
        let cuttable = Diameter::computed_trade(round_size(
            diameter.mm() + 2.0 * setup.correcting_depth.mm(),
        ));
        let oversize = format!(
            "one more cut, (size - {}) / {} marks farther in than the last mark, to the same Z",
            plain(diameter, u),
            self.mark_size()
        );
        let above = if cuttable > next {
            format!(
                "Above {}: {oversize}. From {} to there a cut would rub: what is over cannot be turned off.",
                cuttable.people(u),
                next.people(u)
            )
        } else {
            format!("Above {}: {oversize}.", next.people(u))
        };
        steps.push(
            Step::new(
                StepKind::Inspect,
                diameter,
                format!(
                    "{} The tool stays in its holder. Measure at 20 degC, at three places, clear of the burr ________ \
                     ________ ________. Good from {} to {}. Within {} of a limit this instrument cannot tell: measure \
                     with a finer one. {above} Below {}: LOST, whatever is tried. Length from the face to the shoulder \
                     ________: good from {} to {}; shorter: face the shoulder farther in by what is missing; longer: face \
                     the end by what is over.",
                    self.stop_words(),
                    guarded.smallest().people(u),
                    guarded.largest().people(u),
                    setup.guard.people(u),
                    lost.people(u),
                    setup.length_limits.shortest().people(u),
                    setup.length_limits.longest().people(u),
                ),
            )
            .because("a warm part measures large and shrinks"),
        );

        let mut edges = Step::new(
            StepKind::Edges,
            diameter,
            "Spindle at rest: change to the chamfer tool; the zero of the cross dial is lost from here on. Spindle on, \
             break the outer edge by about half a millimetre (0.02 in), so that nobody is cut. Stop the spindle.",
        );
        edges.spindle_speed = Some(setup.finish_step.spindle_speed);
        steps.push(edges);

        steps.push(Step::new(
            StepKind::Clear,
            diameter,
            format!(
                "Spindle at rest, {}part out, chips off with hook and brush, never by hand. Key out of the chuck. Leave \
                 the machine clean.",
                if setup.centre.is_some() { "centre back, " } else { "" }
            ),
        ));
        Ok(())
    }
}

/// Most that one facing cut takes, in mm: judgement, no source.
const FACE_DEPTH: f64 = 1.05;
