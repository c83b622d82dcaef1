//! The steps in order, in words for the person at the lathe.

use super::job::Job;
use super::setup::{Setup, cross_reading, plain, tenth_of_a_mark};
use super::sheet::{Expected, Sheet, Step, StepKind};
use crate::advice::feed::FeedChoice;
use crate::advice::spindle::SpindleChoice;
use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::speed;
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, Duration, Position, Quantity, WorkLength, round_size,
};
use crate::shop::dial::{Dial, DialReads, Ring};
use crate::shop::holding::HoldingKind;

/// Measured sizes beside which the sheet prints what to do, in marks from the expected one.
const MARKS_BESIDE: [i64; 5] = [-2, -1, 0, 1, 2];

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

struct Writer<'a> {
    job: &'a Job,
    setup: &'a Setup,
    cross: &'a Dial,
    carriage: &'a Dial,
    u: Units,
}

impl Writer<'_> {
    fn heading(&self) -> Result<Vec<String>, Error> {
        let (job, u) = (self.job, self.u);
        let limits = job.part.limits();
        let mut lines = vec![
            format!(
                "Turn {} of {} to {} ({} to {}) over a length of {} ({} to {}).",
                job.stock.diameter().people(u),
                short_name(job),
                job.part.diameter().people(u),
                limits.smallest().people(u),
                limits.largest().people(u),
                job.part.length().people(u),
                self.setup.length_limits.shortest().people(u),
                self.setup.length_limits.longest().people(u),
            ),
            format!(
                "Stock: diameter {}, length {}. Aim at {}; the error of the {}, {}, is kept from both limits. Tool: corner radius {}, edge angle {}.",
                job.stock.diameter().people(u),
                job.stock.length().people(u),
                self.setup
                    .diameter_at(self.cross, self.setup.datum.last.count())?
                    .people(u),
                self.setup.instrument.name(),
                self.setup.guard.people(u),
                job.tool.corner_radius().people(u),
                job.tool.cutting_edge_angle().people(u),
            ),
            String::from(
                "The manual of the machine, local rules and a qualified instructor go before anything on this sheet.",
            ),
        ];
        if self.setup.held.kind == HoldingKind::ChuckAndCentre {
            lines.insert(
                1,
                String::from("Held in the chuck with a live centre at the free end."),
            );
        } else {
            lines.insert(1, String::from("Held in the chuck alone."));
        }
        Ok(lines)
    }

    fn kit(&self) -> Vec<String> {
        let mut kit = vec![
            String::from(
                "the tool of this sheet, sharp, set on centre height, short in its holder",
            ),
            String::from("a chamfer tool or a fine file with a handle"),
            self.setup.instrument.name().to_owned(),
            String::from("a hook for the chips and a brush"),
            String::from("goggles"),
        ];
        if let Some(hole) = &self.setup.centre {
            kit.push(format!(
                "a centre drill, form A, pilot {}",
                hole.pilot.people(self.u)
            ));
            kit.push(String::from("a live centre"));
        }
        kit
    }

    fn dials(&self) -> Vec<String> {
        let (cross, u) = (self.cross, self.u);
        let n = cross.divisions_per_turn().count();
        let counts = match cross.reads() {
            DialReads::Diameter => "the DIAMETER",
            _ => "the RADIUS",
        };
        let per_mark = cross.diameter_per_division();
        let per_turn = DiameterError::computed_trade(round_size(per_mark.mm() * f64::from(n)));
        let mut lines = vec![
            format!(
                "Cross slide: its dial counts {counts}. 1 mark says {} and takes {} off the diameter; 1 turn is {n} marks and takes {}.",
                cross.division().people(u),
                per_mark.people(u),
                per_turn.people(u),
            ),
            format!(
                "Size = {} - {} x marks.{}",
                plain(self.setup.datum.zero, u),
                self.mark_size(),
                match &self.setup.datum.missed {
                    Some((above, below)) => format!(
                        " A dial zeroed on the bar has no mark inside the zone: its marks give {} and {}. So the ring is \
                         set between marks once, and every reading below lies on a mark.",
                        above.people(u),
                        below.people(u)
                    ),
                    None => String::new(),
                }
            ),
            format!(
                "Always come in to a mark from outside. Withdraw by exactly one turn, so that the same mark returns. \
                 Gone too far: back half a turn, {}then in again.",
                match cross.backlash() {
                    Some(backlash) =>
                        format!("and more than the backlash of {}, ", backlash.people(u)),
                    None => String::from("more than the backlash, "),
                }
            ),
        ];
        let n = self.carriage.divisions_per_turn().count();
        lines.push(format!(
            "Carriage: 1 mark is {}, 1 turn is {n} marks, {}. It counts from the finished face towards the chuck. The \
             compound slide stays locked.",
            self.carriage.division().people(u),
            self.carriage.travel_per_turn().people(u),
        ));
        lines
    }

    /// The size of one mark on the diameter, as a plain number that loses nothing.
    fn mark_size(&self) -> String {
        let text = self.cross.diameter_per_division().text(self.u);
        text.split(' ').next().unwrap_or_default().to_owned()
    }

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
                    "Grip the bar with only {} standing out, to face and drill it. Tighten the jaws. KEY OUT of the chuck.",
                    short.people(u)
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
            .because(self.addends())
        };
        steps.push(clamp);
        steps.push(Step::new(
            StepKind::FirstStart,
            stock,
            format!(
                "First start. Guard shut, goggles on, nothing loose near the chuck. Turn the chuck by hand one whole \
                 turn: nothing touches. Start on the lowest speed and watch. Stop. Set {}{}{}.",
                step.spindle_speed.people(u),
                step.lever.as_ref().map_or_else(String::new, |lever| format!(" (lever {lever})")),
                step.range.as_ref().map_or_else(String::new, |range| format!(" (range {range})")),
            ),
        )
        .because(self.speed_words(step)));
        let rough = &setup.rough_feed;
        let mut face = Step::new(
            StepKind::Face,
            stock,
            format!(
                "Face the end: take {} off, carriage locked, {}, from outside to the middle. No pip may stay. Stop the spindle.",
                setup.facing.people(u),
                self.feed_words(&setup.finish_feed, step),
            ),
        );
        face.spindle_speed = Some(step.spindle_speed);
        face.feed = Some(setup.finish_feed.feed);
        face.z = Some(Position::computed_trade(0.0));
        let face_cuts = (setup.facing.mm() / FACE_DEPTH).ceil().max(1.0);
        let one = speed::facing_time(stock, setup.finish_feed.feed, step.spindle_speed);
        face.time = Duration::computed_trade(one.seconds() * face_cuts);
        if face_cuts > 1.0 {
            face.text.push_str(&format!(" In {face_cuts:.0} cuts."));
        }
        steps.push(face);
        let _ = rough;
        if let Some(hole) = &setup.centre {
            let mut drill = Step::new(
                StepKind::CentreDrill,
                stock,
                format!(
                    "Centre drill form A, pilot {}: at {}, oil, gently at first, {} deep from the face, until the \
                     countersink measures {}. Spindle at rest, chips off with a hook.",
                    hole.pilot.people(u),
                    hole.spindle_speed.people(u),
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
                         the end of the bar without touching the centre or the tailstock.",
                        WorkLength::computed_trade(setup.held.overhang.mm()).people(u)
                    ),
                )
                .because(format!(
                    "{}; the bar grows warm and long: feel the centre after each cut, ease it when it gets hot",
                    self.addends()
                )),
            );
        }
        Ok(())
    }

    fn addends(&self) -> String {
        let (setup, u) = (self.setup, self.u);
        let length = self.job.part.length();
        let room =
            WorkLength::computed_trade(setup.overhang.mm() - setup.facing.mm() - length.mm());
        format!(
            "{} for the part, {} to face, {} for the tool holder before the jaws; overhang over diameter {:.1}",
            length.people(u),
            setup.facing.people(u),
            room.people(u),
            setup.support.length_over_diameter.value(),
        )
    }

    fn speed_words(&self, step: &SpindleChoice) -> String {
        let u = self.u;
        let mut words = format!(
            "{} on {}; {} would be ideal for {}; governed by {}",
            step.cutting_speed.people(u),
            self.job
                .zero_at
                .unwrap_or(self.job.stock.diameter())
                .people(u),
            step.ideal.people(u),
            self.setup.speed_source,
            step.governed_by,
        );
        if let Some(above) = &step.neighbour_above {
            words.push_str(&format!(
                "; next above {}: {}",
                above.spindle_speed.people(u),
                above.because
            ));
        }
        if let Some(below) = &step.neighbour_below {
            words.push_str(&format!(
                "; next below {}: {}",
                below.spindle_speed.people(u),
                below.because
            ));
        }
        words
    }

    fn feed_words(&self, feed: &FeedChoice, step: &SpindleChoice) -> String {
        let u = self.u;
        if !feed.by_hand {
            let lever = feed
                .lever
                .as_ref()
                .map_or_else(String::new, |lever| format!(" (lever {lever})"));
            return format!("feed {}{lever}", feed.feed.people(u));
        }
        let rate = speed::handwheel_rate(
            feed.feed,
            step.spindle_speed,
            self.carriage.travel_per_turn(),
        );
        let turns = rate.map_or_else(
            |_| String::new(),
            |rate| format!(", {} of the carriage wheel", rate.people(u)),
        );
        format!("by hand at {}{turns}", feed.feed.people(u))
    }

    fn zero(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (job, setup, u) = (self.job, self.setup, self.u);
        let stock = job.stock.diameter();
        let mut zero_z = Step::new(
            StepKind::ZeroZ,
            stock,
            format!(
                "Zero Z: with the spindle turning, touch the finished face lightly with the tip; turn the ring of the \
                 carriage dial to 0. Z is negative towards the chuck. Never past Z {}: stop there, whatever happens \
                 (jaws at Z {}).",
                Position::computed_trade(-setup.never_past).people(u),
                Position::computed_trade(-setup.held.overhang.mm()).people(u),
            ),
        );
        zero_z.reading = Some(self.z_reading(Divisions::ZERO));
        zero_z.z = Some(Position::computed_trade(0.0));
        zero_z.spindle_speed = Some(setup.rough_step.spindle_speed);
        steps.push(zero_z);

        let start = tenth_of_a_mark(setup.datum.start);
        let set_to = if setup.datum.start == 0.0 {
            String::from("0")
        } else {
            format!("{start} marks past 0")
        };
        let text = match (job.zero_at, self.cross.ring()) {
            (Some(zero), _) if setup.datum.start == 0.0 => {
                format!(
                    "Zero X: the cross dial must read 0 where the bar measures {}. Prove it.",
                    zero.people(u)
                )
            }
            (Some(zero), _) => format!(
                "Zero X: come in to where the bar measures {}, hold the handle, and turn the ring only, to {set_to}.",
                zero.people(u)
            ),
            (None, Ring::Fixed) => String::from(
                "Zero X: set the cross dial to 0, coming in. Bring the tool to the bar with the compound slide until \
                 it just touches; lock the compound slide. Then carriage to the right, clear of the face.",
            ),
            (None, _) => format!(
                "Zero X: with the spindle turning, come in until the tip just touches the bar near its end; hold the \
                 handle, and turn the ring only, to {set_to}. Carriage to the right, clear of the face.",
            ),
        };
        let mut zero_x = Step::new(StepKind::ZeroX, job.zero_at.unwrap_or(stock), text);
        if setup.datum.start == 0.0 {
            zero_x.reading = Some(cross_reading(self.cross, 0)?);
        }
        if job.zero_at.is_none() {
            zero_x.spindle_speed = Some(setup.rough_step.spindle_speed);
            zero_x.because = Some(String::from(
                "a touch is good to a few hundredths; the first cut is measured to set it right",
            ));
        }
        steps.push(zero_x);
        Ok(())
    }

    fn z_reading(&self, divisions: Divisions) -> Reading {
        self.carriage.reading(Slide::Carriage, divisions)
    }

    fn z_words(&self, divisions: Divisions) -> String {
        let z = Position::computed_trade(-self.carriage.travel_at(divisions));
        format!("Z {} ({})", z.people(self.u), self.z_reading(divisions))
    }

    /// How far every cut goes, in words.
    fn travel_words(&self, last: bool) -> String {
        let plan = self.setup.carriage;
        let after = if last {
            "; leave the cross slide where it is."
        } else {
            ", withdraw one turn, back to the right."
        };
        match plan.feed_off {
            Some(off) => format!(
                "Feed off at {}, by hand to {}{after}",
                self.z_words(off),
                self.z_words(plan.stop)
            ),
            None => format!("By hand to {}{after}", self.z_words(plan.stop)),
        }
    }

    fn cuts(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let setup = self.setup;
        let mut before = self.job.zero_at.unwrap_or(self.job.stock.diameter());
        let mut number = 0;
        let mut cut = |kind, mark, steps: &mut Vec<Step>| -> Result<(), Error> {
            number += 1;
            let step = self.cut(kind, number, mark, before)?;
            before = step.diameter;
            steps.push(step);
            Ok(())
        };
        if let Some(first) = setup.passes.first {
            cut(StepKind::FirstCut, first, steps)?;
            steps.push(self.measure_first(first)?);
        }
        for mark in &setup.passes.rough {
            cut(StepKind::RoughCut, *mark, steps)?;
        }
        cut(StepKind::FinishCut, setup.passes.finish[0], steps)?;
        steps.push(self.measure_last(setup.passes.finish[0], setup.passes.finish[1])?);
        cut(StepKind::FinishCut, setup.passes.finish[1], steps)
    }

    fn cut(
        &self,
        kind: StepKind,
        number: usize,
        mark: i64,
        before: Diameter,
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
            StepKind::FirstCut => "first cut, to be measured",
            StepKind::RoughCut => "roughing",
            _ if last => "last cut, same depth, feed and speed as the one before",
            _ => "first of the two finishing cuts",
        };
        let changes_step =
            finishing && !last && setup.finish_step.spindle_speed != setup.rough_step.spindle_speed;
        let change = if changes_step {
            format!(
                "Spindle at rest: set {}{}. ",
                step.spindle_speed.people(u),
                step.lever
                    .as_ref()
                    .map_or_else(String::new, |lever| format!(" (lever {lever})"))
            )
        } else {
            String::new()
        };
        let mut out = Step::new(
            kind,
            diameter,
            format!(
                "Cut {number}, {what}. {change}Cross dial to {reading} (shows {}), {}. {}",
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
            out.because = out
                .because
                .map(|b| format!("{b}; depth limited by {}", setup.rough_limit));
        }
        if kind == StepKind::FinishCut && !last {
            out.because = out.because.map(|b| {
                format!(
                    "{b}; not lighter than {}: less would rub",
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

    fn stop_words(&self) -> &'static str {
        "STOP. Feed off, tool clear, spindle at rest, chips off with a hook, let the part cool."
    }

    /// `measured size: reading`, for sizes beside the expected one.
    fn table(&self, mark: i64) -> Result<String, Error> {
        let mut rows = Vec::with_capacity(MARKS_BESIDE.len());
        for beside in MARKS_BESIDE {
            let at = mark - beside;
            let size = self.setup.diameter_at(self.cross, at)?;
            rows.push(format!("{}: {at}", plain(size, self.u)));
        }
        Ok(rows.join(", "))
    }

    fn rule(&self, measured: &str) -> String {
        format!(
            "({} - {measured}) / {}",
            plain(self.setup.datum.zero, self.u),
            self.mark_size()
        )
    }

    fn measure_first(&self, mark: i64) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let reading = cross_reading(self.cross, mark)?;
        let expected = setup.diameter_at(self.cross, mark)?;
        let touched = self.job.stock.diameter();
        let taken = round_size(touched.mm() - expected.mm());
        let (half, twice) = (
            Diameter::computed_trade(round_size(touched.mm() - taken / 2.0)),
            Diameter::computed_trade(round_size(touched.mm() - taken * 2.0)),
        );
        let act = match self.cross.ring() {
            Ring::Settable => format!(
                "Come in again to {reading}, hold the handle, and turn the ring only, to {} marks: {}.",
                self.rule("M1"),
                self.table(mark)?
            ),
            Ring::Fixed => format!(
                "Every reading below moves by (M1 - {}) / {} marks, farther in where M1 is larger.",
                plain(expected, u),
                self.mark_size()
            ),
        };
        let wrong = match self.cross.reads() {
            DialReads::Diameter => format!(
                "Near {}: the dial counts the radius after all. Stop and prove it.",
                twice.people(u)
            ),
            _ => format!(
                "Near {}: the dial counts the diameter after all. Stop and prove it.",
                half.people(u)
            ),
        };
        let mut step = Step::new(
            StepKind::Measure,
            expected,
            format!(
                "{} Measure M1 ________ (expect {}). {act} {wrong}",
                self.stop_words(),
                expected.people(u)
            ),
        )
        .because("from here on the dial tells sizes that were measured, not touched");
        step.reading = Some(reading);
        Ok(step)
    }

    fn measure_last(&self, mark: i64, last: i64) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let reading = cross_reading(self.cross, mark)?;
        let expected = setup.diameter_at(self.cross, mark)?;
        let target = setup.diameter_at(self.cross, last)?;
        let next = cross_reading(self.cross, last)?;
        let act = match self.cross.ring() {
            Ring::Settable => format!(
                "Come in again to {reading}, hold the handle, and turn the ring only, to {} marks: {}.",
                self.rule("mean of M2"),
                self.table(mark)?
            ),
            Ring::Fixed => format!(
                "The last cut goes to {next} and (mean of M2 - {}) / {} marks farther in, rounded towards less.",
                plain(expected, u),
                self.mark_size()
            ),
        };
        // A correcting cut may be lighter than a planned one, but not so light that it rubs.
        let least_left =
            Diameter::computed_trade(round_size(target.mm() + 2.0 * setup.correcting_depth.mm()));
        let spread = Diameter::computed_trade(self.job.part.limits().tolerance().mm() / 3.0);
        let mut step = Step::new(
            StepKind::Measure,
            expected,
            format!(
                "{} Measure M2 at three places ________ ________ ________ (expect {}). {act} Below {}: a last \
                 cut might rub; below {}: the part is good already, or lost. In both cases do not cut, go and see. Places that differ by \
                 more than {}: stop and find out why (blunt tool, loose bar, centre).",
                self.stop_words(),
                expected.people(u),
                least_left.people(u),
                self.job.part.limits().largest().people(u),
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
                 slide until the tip is clear of the bar. Stop the spindle. The length is {} to {} from the face.",
                self.z_words(shoulder),
                setup.length_limits.shortest().people(u),
                setup.length_limits.longest().people(u),
            ),
        );
        step.reading = Some(self.z_reading(shoulder));
        step.z = Some(Position::computed_trade(-self.carriage.travel_at(shoulder)));
        step.spindle_speed = Some(setup.finish_step.spindle_speed);
        steps.push(step);

        let mut edges = Step::new(
            StepKind::Edges,
            diameter,
            "Break the outer edge by about half a millimetre (0.02 in) with the chamfer tool, so that no burr is measured \
             and nobody is cut.",
        );
        edges.spindle_speed = Some(setup.finish_step.spindle_speed);
        steps.push(edges);

        let q = self.cross.diameter_per_division().mm();
        let guarded = setup.guarded;
        let next = Diameter::computed_trade(round_size(limits.largest().mm() + setup.guard.mm()));
        let lost = Diameter::computed_trade(round_size(limits.smallest().mm() - setup.guard.mm()));
        steps.push(
            Step::new(
                StepKind::Inspect,
                diameter,
                format!(
                    "{} Measure at 20 degC, at three places ________ ________ ________. Good from {} to {}. Within {} of \
                     a limit this instrument cannot tell: measure with a finer one. Above {}: one more cut of \
                     (size - {}) / {} marks, if that is {} marks or more; less would rub. Below {}: LOST, whatever is tried.",
                    self.stop_words(),
                    guarded.smallest().people(u),
                    guarded.largest().people(u),
                    setup.guard.people(u),
                    next.people(u),
                    plain(diameter, u),
                    self.mark_size(),
                    (setup.correcting_depth.mm() * 2.0 / q).ceil(),
                    lost.people(u),
                ),
            )
            .because("a warm part measures large and shrinks"),
        );
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

/// The first designation of the material, for words.
fn short_name(job: &Job) -> &str {
    let names = job.material.names();
    let first = names.split([',', '(']).next().unwrap_or_default().trim();
    if first.is_empty() {
        "a material of the asker's own"
    } else {
        first
    }
}

/// Most that one facing cut takes, in mm: judgement, no source.
const FACE_DEPTH: f64 = 1.0;

/// Words that keep people whole, the serious ones first: common practice, no source.
fn safety(job: &Job, kind: HoldingKind) -> Vec<Caution> {
    let danger = |code, text: &str| Caution::new(Severity::Danger, code, text);
    let mut cautions = vec![
        danger(
            "chuck_key",
            "The chuck key leaves the chuck before the hand leaves the key.",
        ),
        danger(
            "eyes_and_clothing",
            "Guard shut, eyes protected. No gloves, loose sleeves, rings or long hair near a turning spindle; nobody reaches over the work.",
        ),
        danger(
            "spindle_at_rest",
            "Measure, clear chips and change steps only with the spindle at rest. Chips are taken with a hook, never by hand. Never slow a chuck by hand.",
        ),
        danger(
            "know_the_stop",
            "Know where the stop is before starting. After a power failure the machine must not start by itself. Never leave it running.",
        ),
    ];
    if job.stock.length().mm() > STICKS_OUT {
        cautions.push(danger(
            "bar_behind_spindle",
            "A bar that sticks out of the rear of the spindle whips: nothing out there without a guarded tube.",
        ));
    }
    if kind == HoldingKind::ChuckAndCentre {
        cautions.push(Caution::new(
            Severity::Warning,
            "locks",
            "Tailstock and barrel locked before every start; a centre that comes loose throws the bar.",
        ));
    }
    let notes = job.material.notes();
    if !notes.is_empty() {
        let lower = notes.to_lowercase();
        let severe = ["fire", "burn", "toxic", "explo"]
            .iter()
            .any(|word| lower.contains(word));
        let severity = if severe {
            Severity::Danger
        } else {
            Severity::Note
        };
        cautions.push(Caution::new(
            severity,
            "material",
            format!("{}: {notes}", short_name(job)),
        ));
    }
    cautions
}

/// A bar longer than this may reach through the spindle, in mm: judgement, no source.
const STICKS_OUT: f64 = 400.0;

fn limits_of_the_answer() -> [Caution; 2] {
    [
        Caution::new(
            Severity::Note,
            "forces_scatter",
            "Forces, powers and springs are good to about 30 %: bars of one name differ, and the constants are from memory. \
             Chatter, hardness and hidden stresses of this bar are not known.",
        ),
        Caution::new(
            Severity::Note,
            "time_of_cutting_only",
            "Times are of cutting; handling, measuring and setting come on top.",
        ),
    ]
}
