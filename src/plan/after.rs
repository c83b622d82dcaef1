//! After a measurement: what it says went wrong, whether the part is lost, and the sheet that follows.
//!
//! Nothing is kept anywhere: the new sheet is computed from the job and from what was measured, which
//! the sheet carries.

use super::clamping::Clamping;
use super::common::Common;
use super::heading::Figures;
use super::job::Job;
use super::readout::{is_readout, shown};
use super::sheet::{Sheet, StepKind};
use super::steps;
use super::take::{Act, Made, Slip, Suspicion};
use super::turning::{Turning, cross_reading, good_sizes, printed, read_as};
use super::words::words;
use crate::advice::diagnosis::{Cause, CauseFit, Diagnosis, DiagnosisAsk, SizeAt, reads_instead};
use crate::advice::size_budget::{Reached, SizeAsk};
use crate::error::{Error, ErrorKind};
use crate::provenance::Provenance;
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, Probability, Quantity, SetOver, SizeUncertainty, StandardUncertainty,
    round_size,
};
use crate::shop::dial::{Dial, DialReads, Ring};
use crate::shop::stock::Stock;
use crate::standards::decision::DecisionRule;
use crate::standards::limits::Limits;

/// A measurement that was handed in: with which step, and the sizes.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Measurement {
    /// The step of the sheet, from 0.
    pub step: usize,
    /// The sizes, one or several along the bar.
    pub measured: Vec<SizeAt>,
    /// The uncertainty of one of them, k = 2, where it was stated.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub expanded_uncertainty: Option<SizeUncertainty>,
}

#[cfg(feature = "json")]
impl Measurement {
    pub(super) fn read(tree: &crate::quantity::fields::Tree, path: &str) -> Result<Self, Error> {
        let f = crate::quantity::fields::Fields::of(tree, path, "a measurement")?;
        let step = f.count("step")?;
        let step = step.ok_or_else(|| f.missing("step", "the step of the sheet, from 0"))?;
        let measured = f.need_item("measured", "what was measured", SizeAt::read_all)?;
        let expanded_uncertainty = f.quantity("expanded_uncertainty")?;
        f.finish()?;
        Ok(Self {
            step: step as usize,
            measured,
            expanded_uncertainty,
        })
    }
}

impl Measurement {
    /// The mean of the sizes.
    pub(super) fn mean(&self) -> Diameter {
        let n = self.measured.len().max(1) as f64;
        let sum: f64 = self.measured.iter().map(|m| m.size().mm()).sum();
        Diameter::computed_trade(round_size(sum / n))
    }

    fn smallest(&self) -> Diameter {
        let sizes = self.measured.iter().map(|m| m.size());
        sizes.min().unwrap_or_else(|| self.mean())
    }

    fn largest(&self) -> Diameter {
        let sizes = self.measured.iter().map(|m| m.size());
        sizes.max().unwrap_or_else(|| self.mean())
    }
}

/// What the measurement says and what follows.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct AfterMeasurement {
    /// The mean of the measured sizes.
    pub mean: Diameter,
    /// The size that was expected.
    pub expected: Diameter,
    /// Mean less expected; positive where metal was left.
    pub difference: DiameterError,
    /// What may have happened, the best fit first.
    pub causes: Vec<CauseFit>,
    /// True where no cut can bring the part into its limits.
    pub lost: bool,
    /// By how many marks the readings that follow are moved, farther in where positive.
    pub shift: i64,
    /// Tenths of a mark beyond `shift`, where a ring is fixed and no whole mark brings the last cut to its
    /// size.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "is_zero"))]
    pub shift_tenths: i64,
    /// To which mark the ring is set instead, at the mark of the cut that was measured. It counts whole turns
    /// too, and may lie below zero: the ring shows what is left of them.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ring_to: Option<f64>,
    /// To which size a digital readout is set instead, at the place of the cut that was measured.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub readout_to: Option<Diameter>,
    /// True where the cut is made once more at its mark, because a slip left metal on.
    pub repeat: bool,
    /// By how much to move the tailstock, towards the tool where positive.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tailstock_correction: Option<SetOver>,
    /// What to do, in words.
    pub text: String,
    /// The sheet that follows.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub plan: Option<Sheet>,
    /// Why no sheet follows, where none does.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub why_no_plan: Option<String>,
    /// Where the constants of the causes come from; those of the sheet stand in the sheet.
    pub provenance: Provenance,
}

#[cfg(feature = "serde")]
fn is_zero(tenths: &i64) -> bool {
    *tenths == 0
}

impl Sheet {
    /// What follows when these sizes are measured at a step: after a cut, at a measuring stop or at the
    /// inspection.
    ///
    /// `expanded_uncertainty` is that of one measured size, k = 2; without it, that of the instrument of
    /// the sheet. A size as expected leaves the readings as they are; one that is off moves them by as
    /// many marks.
    ///
    /// # Errors
    /// `step`, when it is none of the sheet or no cut was made by then; `measured`, when there is no size;
    /// and as [`Job::plan`](super::Job::plan).
    pub fn after(
        &self,
        step: usize,
        measured: &[SizeAt],
        expanded_uncertainty: Option<SizeUncertainty>,
    ) -> Result<AfterMeasurement, Error> {
        if measured.is_empty() {
            return Err(Error::new(
                ErrorKind::MissingField,
                "measured",
                "no size",
                "one size, or several along the bar",
                "give what was measured",
            ));
        }
        self.follow(step, measured, expanded_uncertainty)
            .map_err(|error| error.in_units(self.units()))
    }

    fn follow(
        &self,
        step: usize,
        measured: &[SizeAt],
        expanded_uncertainty: Option<SizeUncertainty>,
    ) -> Result<AfterMeasurement, Error> {
        let job = &self.job;
        let (mut provenance, mut cautions) = (Provenance::default(), Vec::new());
        let mut figures = steps::figures_after(
            job,
            self.units(),
            &self.measured,
            &mut provenance,
            &mut cautions,
        )?;
        let made = figures.place(&self.steps, step)?;
        let now = Measurement {
            step,
            measured: measured.to_vec(),
            expanded_uncertainty,
        };
        let mut opened = Provenance::default();
        let diagnosis = figures.diagnose(&made, &now, &mut opened)?;
        let slip = slip_in(&diagnosis);
        let turning = &figures.turnings[made.clamping][made.turning];
        let guard = guard_of(turning, expanded_uncertainty);
        let expected = turning.expected_after(made.cuts - 1, figures.common.cross)?;
        let (smallest, largest) = (now.smallest(), now.largest());
        let limits = turning.place.surface.limits();
        let lost = is_lost(limits, smallest, guard);
        let mean = now.mean();
        let u = self.units();
        let mut causes = diagnosis.causes;
        // What is said of a cause that cannot be is told of no lathe.
        let too_small = round_size(diagnosis.difference.mm()) < 0.0;
        causes
            .retain(|fit| fit.fit.trade() >= POSSIBLE && !(too_small && fit.cause.leaves_metal()));
        let mut answer = AfterMeasurement {
            mean,
            expected,
            difference: diagnosis.difference,
            causes,
            lost,
            shift: 0,
            shift_tenths: 0,
            ring_to: None,
            readout_to: None,
            repeat: false,
            tailstock_correction: diagnosis.tailstock_correction,
            text: String::new(),
            plan: None,
            why_no_plan: None,
            provenance: opened,
        };
        if lost {
            let below =
                DiameterError::computed_trade(round_size(limits.smallest().mm() - smallest.mm()));
            let why = format!(
                "LOST: {} is {} below the least allowed, {}, more than the measurement can be wrong. No cut brings metal back, \
                 and no measuring again turns it good. It can still become a part of less than {}; keep it as stock.",
                smallest.people(u),
                below.people(u),
                limits.smallest().people(u),
                smallest.people(u),
            );
            answer.text.clone_from(&why);
            answer.why_no_plan = Some(why);
            return Ok(answer);
        }
        let finished = made.cuts == turning.cuts.len();
        let judged = Judged {
            turning,
            made: made.cuts,
            cross: figures.common.cross,
            guard,
            by_the_sheet: expanded_uncertainty.is_none(),
            units: u,
        };
        // Whatever the dial does, a size within the limits, or too near to one to tell, is not cut again.
        let near = match finished || mean <= limits.largest() {
            true => judged.near_its_size(&now),
            false => None,
        };
        let stop = too_thick(measured, turning, made.cuts, &mut answer.provenance, u).or_else(
            || match near {
                Some(_) if is_the_dial(&answer).is_some() => None,
                _ => stop(&answer, &judged, job),
            },
        );
        if stop.is_some() {
            // Nobody is told to stop and to go on.
            answer.causes.retain(|fit| fit.cause != Cause::AsExpected);
        }
        let over = is_over(limits, largest, guard);
        // One cut has to bring all of it in.
        let cut_for_all = made.cuts + 1 == turning.cuts.len() || (finished && over);
        // What the bar sprang under heavy cuts, the tool that finishes evens out.
        let roughed = turning
            .change_at()
            .is_some_and(|change| made.cuts <= change);
        let stop = stop.or_else(|| {
            if roughed {
                return None;
            }
            let why = too_uneven(&now, &answer.causes, turning, cut_for_all, u)?;
            // Neither do those explain sizes that differ.
            let alike = |cause| matches!(cause, Cause::AsExpected | Cause::ZeroOff);
            answer.causes.retain(|fit| !alike(fit.cause));
            Some(why)
        });
        let stop = stop.or_else(|| {
            (finished && over && !is_over(limits, mean, guard)).then(|| {
                format!(
                    "Stop: {} is too large, and the mean of {} leaves too little for one more cut along all of it: find out why \
                     the sizes differ (blunt tool, loose bar, centre) before anything is cut.",
                    largest.people(u),
                    mean.people(u),
                )
            })
        });
        let why = stop.or_else(|| {
            let good_already = made.cuts + 1 == turning.cuts.len()
                && turning.never_cut_below(
                    turning
                        .diameter_at(figures.common.cross, turning.datum.last.count())
                        .ok()?,
                ) > mean;
            let dial = is_the_dial(&answer);
            match (near, dial) {
                (Some(near), Some(dial)) => Some(format!("{near} But note: {}.", dial.text)),
                _ if finished || good_already => judged.near_its_size(&now),
                _ => None,
            }
        });
        if let Some(why) = why {
            answer.text.clone_from(&why);
            answer.why_no_plan = Some(why);
            return Ok(answer);
        }
        let taken = figures.take(&made, mean, slip);
        match taken {
            Ok(act) => {
                match act {
                    Act::MoveReadings { tenths } => {
                        answer.shift = tenths.div_euclid(10);
                        answer.shift_tenths = tenths.rem_euclid(10);
                    }
                    Act::TurnRing { .. } if is_readout(figures.common.cross) => {
                        answer.readout_to = Some(mean);
                    }
                    Act::TurnRing { to } => answer.ring_to = Some(round_size(to)),
                    Act::Repeat { .. } => answer.repeat = true,
                    Act::GoOn | Act::OnceMore | Act::LeftOn => {}
                }
                let mut history = self.measured.clone();
                history.push(now);
                let sheet = steps::write(job, figures, &history, provenance, cautions)?;
                let adjust = sheet.steps.iter().rfind(|s| s.kind == StepKind::Adjust);
                answer.text = adjust.map_or_else(String::new, |step| step.text.clone());
                answer.plan = Some(sheet);
            }
            Err(error) if error.kind() == ErrorKind::Impossible => {
                let error = error.in_units(u);
                let judged = Judged {
                    turning: &figures.turnings[made.clamping][made.turning],
                    made: made.cuts,
                    cross: figures.common.cross,
                    guard,
                    by_the_sheet: expanded_uncertainty.is_none(),
                    units: u,
                };
                let why = judged
                    .near_its_size(&now)
                    .unwrap_or_else(|| format!("{}; {}.", error.given(), error.remedy()));
                answer.text.clone_from(&why);
                answer.why_no_plan = Some(why);
            }
            Err(error) => return Err(error),
        }
        Ok(answer)
    }
}

/// A share of what explains the measurement below which a cause is not named: judgement, no source.
const POSSIBLE: f64 = 1e-3;

/// A share of what explains the measurement at which a cause is acted on: judgement, no source.
const CERTAIN_ENOUGH: f64 = 0.5;

/// What a measured size of this surface keeps from its limits.
fn guard_of(turning: &Turning<'_>, expanded: Option<SizeUncertainty>) -> SizeUncertainty {
    match expanded {
        Some(given) => {
            let guard = DecisionRule::Conformance95.guard_band(half_of(given));
            SizeUncertainty::computed_trade(round_size(guard.mm()))
        }
        None => turning.guard,
    }
}

/// True of a size that is too small, by more than the measurement can be wrong.
fn is_lost(limits: Limits, smallest: Diameter, guard: SizeUncertainty) -> bool {
    round_size(smallest.mm() + guard.mm()) < round_size(limits.smallest().mm())
}

/// True of a size that is too large, by more than the measurement can be wrong.
fn is_over(limits: Limits, largest: Diameter, guard: SizeUncertainty) -> bool {
    round_size(largest.mm() - guard.mm()) > round_size(limits.largest().mm())
}

/// What is said of a size that is larger than the bar was.
fn too_thick(
    measured: &[SizeAt],
    turning: &Turning<'_>,
    made: usize,
    provenance: &mut Provenance,
    u: Units,
) -> Option<String> {
    let mut sizes = measured.iter().map(|m| m.size());
    // What was measured before is known better than the bar: what both measurements may be off by lies between.
    if let Some(before) = turning.done.as_ref().filter(|done| done.cuts < made) {
        let off = 2.0 * turning.guard.mm();
        let thick = sizes.find(|size| size.mm() - before.size.mm() > off)?;
        return Some(format!(
            "Stop: {} is more than there was: {} was measured before, and no cut makes it thicker. One of the two was misread: \
             measure anew, the whole turns of the instrument too.",
            thick.people(u),
            before.size.people(u)
        ));
    }
    // On record only where it stops the plan.
    let thickest = turning.thickest(&mut Provenance::deaf());
    let thick = sizes.find(|size| *size > thickest)?;
    turning.thickest(provenance);
    Some(format!(
        "Stop: {} is more than there was: the bar measured {} before these cuts, and no cut makes it thicker. Measure anew, \
         the whole turns of the instrument too; where the bar really is thicker, plan anew with its diameter.",
        thick.people(u),
        turning.before.start.people(u)
    ))
}

/// A cause that is acted on.
fn surely(answer: &AfterMeasurement) -> Option<&CauseFit> {
    let first = answer.causes.first()?;
    (first.fit.trade() >= CERTAIN_ENOUGH).then_some(first)
}

/// A dial that surely does not count as it was thought to.
fn is_the_dial(answer: &AfterMeasurement) -> Option<&CauseFit> {
    surely(answer).filter(|first| first.cause == Cause::DialCountsOtherwise)
}

/// What is surely wrong that no cut should follow on.
fn stop(answer: &AfterMeasurement, judged: &Judged<'_>, job: &Job) -> Option<String> {
    let first = surely(answer)?;
    match first.cause {
        Cause::DialCountsOtherwise => Some(format!(
            "Stop: {}. {}",
            first.text,
            judged.dial_mended(job, answer.mean, answer.difference)
        )),
        Cause::WarmPart => Some(format!("Wait: {}.", first.text)),
        _ => None,
    }
}

/// A surface that was measured after so many of its cuts, and by what its sizes are judged.
struct Judged<'a> {
    turning: &'a Turning<'a>,
    made: usize,
    cross: &'a Dial,
    guard: SizeUncertainty,
    /// True where no other uncertainty was stated than that of the sheet, whose limits then hold as printed.
    by_the_sheet: bool,
    units: Units,
}

impl Judged<'_> {
    /// How the job is planned anew whose dial took half or twice as much off as it was thought to.
    fn dial_mended(&self, job: &Job, size: Diameter, off: DiameterError) -> String {
        let reads = reads_instead(self.cross, off);
        let dial = match is_readout(self.cross) {
            true => "readout",
            false => "dial",
        };
        let begin = words(|f| match reads {
            Some(_) => f.write_str("If so:"),
            None => write!(
                f,
                "Leave lathe.cross_slide.reads as it is: no other value of it explains this size. Once the {dial} is proved:"
            ),
        });
        let with = match reads {
            Some(DialReads::Diameter) => "lathe.cross_slide.reads diameter",
            Some(_) => "lathe.cross_slide.reads radius",
            None => "lathe.cross_slide.division as it proves",
        };
        let anew = self.anew(job, size, reads, with).unwrap_or_else(|error| {
            let error = error.in_units(self.units);
            format!(
                "no sheet goes on from zero_at {} with {with}: {}; {}.",
                size.people(self.units),
                error.given(),
                error.remedy()
            )
        });
        let then = words(|f| match reads {
            None => Ok(()),
            Some(_) if off.mm() > 0.0 => write!(
                f,
                " If the {dial} proves right: leave its zero, come in to the same mark from outside, repeat the cut, and \
                 measure anew."
            ),
            Some(_) => {
                write!(f, " If the {dial} proves right, it was read wrong: ")?;
                match self.anew(job, size, None, "lathe.cross_slide.reads as it is") {
                    Ok(anew) => f.write_str(&anew),
                    Err(_) => f.write_str("too little is left to plan anew from, stop and ask."),
                }
            }
        });
        format!("{begin} {anew}{then}")
    }

    /// From which zero such a job is planned anew, in words.
    ///
    /// # Errors
    /// As that plan.
    fn anew(
        &self,
        job: &Job,
        size: Diameter,
        reads: Option<DialReads>,
        with: &str,
    ) -> Result<String, Error> {
        let u = self.units;
        // As it is read from the words.
        let size = printed(size, u, f64::round);
        let stood = where_it_stood(self.turning, self.made, self.cross, u);
        let from = |zero: Diameter| {
            self.planned(job.clone(), reads, |job| job.zero_at = Some(zero))?;
            Ok::<_, Error>(format!(
                "plan anew with {with} and zero_at {}",
                zero.people(u)
            ))
        };
        match self.cross.ring() {
            Ring::Settable => from(size).map(|anew| {
                format!(
                    "in again to {stood} from outside, hold the handle, turn the ring only, to 0, and {anew}, where it then \
                     reads 0."
                )
            }),
            Ring::Readout => {
                from(size).map(|anew| format!("{anew}; the new sheet sets the readout there."))
            }
            Ring::Fixed => match reads.and_then(|reads| self.fixed_zero(job, size, reads)) {
                Some(zero) => from(zero)
                    .map(|anew| format!("{anew}, where it reads 0."))
                    .or_else(|_| self.touched_anew(job, size, reads, with)),
                None => self.touched_anew(job, size, reads, with),
            },
        }
    }

    /// The same with a fixed ring whose zero is not known any more.
    fn touched_anew(
        &self,
        job: &Job,
        size: Diameter,
        reads: Option<DialReads>,
        with: &str,
    ) -> Result<String, Error> {
        let without = [
            ("stock.run_out", job.stock.run_out().is_some()),
            ("stock.skin", job.stock.skin().is_some()),
        ];
        let without: String = without
            .iter()
            .filter(|(_, given)| *given)
            .map(|(name, _)| format!(", no {name}"))
            .collect();
        let stock = Stock::new(size, job.stock.length());
        self.planned(job.clone(), reads, |job| {
            job.stock = stock;
            job.zero_at = None;
        })?;
        Ok(format!(
            "plan anew with {with} and stock.diameter {}, no zero_at{without}; the new sheet touches the bar anew.",
            size.people(self.units)
        ))
    }

    /// The sheet of a job whose dial counts so, and changed like this: nobody is sent to plan what has none.
    fn planned(
        &self,
        mut job: Job,
        reads: Option<DialReads>,
        change: impl FnOnce(&mut Job),
    ) -> Result<Sheet, Error> {
        if let Some(reads) = reads {
            let cross = self.cross.clone().with_reads(reads);
            job.lathe = job.lathe.clone().with_cross_slide(cross)?;
        }
        change(&mut job);
        job.plan(self.units)
    }

    /// Where a fixed ring reads zero that counts otherwise than was thought, if the job can be planned from there:
    /// its zero stays where it was set, and the marks from there to the size measured take something else off.
    fn fixed_zero(&self, job: &Job, size: Diameter, reads: DialReads) -> Option<Diameter> {
        let turning = self.turning;
        // After a stop before this one the marks are those of the sheet and a shift that was found by hand.
        let stops = &turning.chance.stops.chosen.after;
        let shifted = stops.iter().any(|stop| stop + 1 < self.made);
        let runs_out = job.stock.run_out().is_some_and(|r| r.mm() > 0.0);
        if shifted || runs_out {
            return None;
        }
        let per_mark = self
            .cross
            .clone()
            .with_reads(reads)
            .diameter_per_division()
            .mm();
        let between = turning.cuts.get(self.made.checked_sub(1)?)?.between;
        let marks = turning.mark_of(self.made) as f64 + f64::from(between) / 10.0;
        let zero = Diameter::computed_trade(round_size(size.mm() + marks * per_mark));
        (zero <= job.stock.diameter()).then_some(zero)
    }

    /// Whether all sizes keep clear of both limits, as the sheet prints them.
    fn is_good(&self, now: &Measurement) -> bool {
        let limits = self.turning.place.surface.limits();
        let inside = match self.by_the_sheet {
            true => good_sizes(limits, self.guard, self.units),
            false => limits
                .inside(self.guard)
                .map(|inside| [inside.smallest(), inside.largest()]),
        };
        // A size that was read in inches is off by the rounding of a computer.
        let (smallest, largest) = (
            round_size(now.smallest().mm()),
            round_size(now.largest().mm()),
        );
        inside.is_some_and(|[least, most]| least.mm() <= smallest && largest <= most.mm())
    }
}

/// What is said of sizes that differ by more than may stay: before a cut that has to bring all of them in by what the
/// sheet says, else by their zone.
fn too_uneven(
    now: &Measurement,
    causes: &[CauseFit],
    turning: &Turning<'_>,
    cut_for_all: bool,
    u: Units,
) -> Option<String> {
    let measured = now.measured.as_slice();
    let zone = turning.place.surface.limits().tolerance();
    let allowed = match cut_for_all {
        true => turning.uneven().mm(),
        false => zone.mm(),
    };
    let (low, high) = (now.smallest().mm(), now.largest().mm());
    if round_size(high - low) <= round_size(allowed) {
        return None;
    }
    let why = match causes.first() {
        Some(first) if first.cause.differs_along() => first.text.as_str(),
        _ if measured.iter().any(|one| one.at().is_none()) => {
            "find out why before anything is cut (larger in the middle: the bar springs; else blunt tool, loose \
             bar, centre), and measure anew, each size with its place \
             from the chuck"
        }
        _ => {
            "find out why before anything is cut (larger in the middle: the bar springs; else blunt tool, loose \
             bar, centre), and measure anew"
        }
    };
    let differ = DiameterError::computed_trade(round_size(high - low));
    Some(match high - low > zone.mm() {
        true => format!(
            "Stop: the sizes differ by {} along the bar, more than the zone of {}: no single cut brings all of it in; {why}.",
            differ.people(u),
            zone.people(u),
        ),
        false => format!(
            "Stop: the sizes differ by {} along the bar, and before the last cut no more than {} may stay, of a zone of {}: \
             {why}.",
            differ.people(u),
            turning.uneven().people(u),
            zone.people(u),
        ),
    })
}

/// The standard uncertainty of an expanded one, k = 2.
fn half_of(expanded: SizeUncertainty) -> StandardUncertainty {
    StandardUncertainty::computed_trade(0.5 * expanded.mm())
}

impl Judged<'_> {
    /// What is said of sizes that need no cut, or cannot be told to need one: of every place, for a part is as good as
    /// its worst.
    fn near_its_size(&self, now: &Measurement) -> Option<String> {
        let (turning, made, u) = (self.turning, self.made, self.units);
        let limits = turning.place.surface.limits();
        let (smallest, largest) = (now.smallest(), now.largest());
        if self.is_good(now) {
            let good = format!(
                "{} is good: do not cut this diameter again",
                now.mean().people(u)
            );
            // The tool was withdrawn before the measurement, and its shoulder is still to be faced.
            return Some(match made < turning.cuts.len() {
                true => format!(
                    "{good}. In again to {}, where the last cut was made, and go on with its shoulder and what follows on the sheet.",
                    where_it_stood(turning, made, self.cross, u)
                ),
                false => format!("{good}; go on with what follows on the sheet."),
            });
        }
        if is_over(limits, largest, self.guard) || is_lost(limits, smallest, self.guard) {
            return None;
        }
        let over = largest.mm() - limits.largest().mm();
        let under = limits.smallest().mm() - smallest.mm();
        Some(format!(
            "{} is too near to a limit for this instrument to tell: measure with a finer one before anything is cut.",
            if over > under { largest } else { smallest }.people(u)
        ))
    }
}

/// What dial or readout said at the last cut that was made.
fn where_it_stood(turning: &Turning<'_>, made: usize, cross: &Dial, u: Units) -> String {
    let mark = turning.mark_of(made);
    let between = made.checked_sub(1).and_then(|at| turning.cuts.get(at));
    match (cross.ring(), turning.diameter_at(cross, mark)) {
        (Ring::Readout, Ok(size)) => format!("{} on the readout", shown(cross, size, u)),
        _ => match cross_reading(cross, mark) {
            Ok(reading) => read_as(&reading, between.map_or(0, |cut| cut.between)),
            Err(_) => String::from("its mark"),
        },
    }
}

/// The slip of the hand that a measured size is best taken for, and the chance of any that left metal on.
fn slip_in(diagnosis: &Diagnosis) -> Suspicion {
    if diagnosis.difference.mm() <= 0.0 {
        return None;
    }
    let fit = |cause: Cause| {
        let of = diagnosis.causes.iter().find(|fit| fit.cause == cause);
        of.map_or(0.0, |fit| fit.fit.trade())
    };
    let (backlash, turn) = (fit(Cause::Backlash), fit(Cause::MissedTurn));
    let slip = match turn > backlash {
        true => Slip::TurnTooFew,
        false => Slip::Backlash,
    };
    Some((
        slip,
        Probability::computed_trade((backlash + turn).min(1.0)),
    ))
}

impl Figures<'_> {
    /// Takes a measurement into the figures, as it was taken when it was made.
    pub(super) fn follow(&mut self, made: &Made, measurement: &Measurement) -> Result<(), Error> {
        let turning = &self.turnings[made.clamping][made.turning];
        let (limits, smallest) = (turning.place.surface.limits(), measurement.smallest());
        if is_lost(
            limits,
            smallest,
            guard_of(turning, measurement.expanded_uncertainty),
        ) {
            return Err(Error::new(
                ErrorKind::Impossible,
                "measured",
                smallest.to_string(),
                format!("a size from {} on", limits.smallest()),
                "such a part is lost, no cut brings metal back: plan a new one, without this measurement",
            ));
        }
        let diagnosis = self.diagnose(made, measurement, &mut Provenance::deaf())?;
        self.take(made, measurement.mean(), slip_in(&diagnosis))?;
        Ok(())
    }

    fn diagnose(
        &self,
        made: &Made,
        measurement: &Measurement,
        provenance: &mut Provenance,
    ) -> Result<Diagnosis, Error> {
        diagnose(
            &self.common,
            &self.clampings[made.clamping],
            &self.turnings[made.clamping][made.turning],
            made,
            measurement,
            provenance,
        )
    }
}

fn diagnose(
    common: &Common<'_>,
    clamping: &Clamping<'_>,
    turning: &Turning<'_>,
    made: &Made,
    measurement: &Measurement,
    provenance: &mut Provenance,
) -> Result<Diagnosis, Error> {
    let cross = common.cross;
    let measured = measurement.measured.as_slice();
    let expected = turning.expected_after(made.cuts - 1, cross)?;
    let zeroed = turning.zeroed_before(made.cuts, cross)?;
    let taken = DiameterError::computed_trade(round_size(zeroed.mm() - expected.mm()));
    // Another tool is touched on the roughed size, until a cut of it is measured.
    let touched_anew = match turning.change_at().filter(|change| *change < made.cuts) {
        Some(change) => zeroed == turning.size_before(change, cross)?,
        None => false,
    };
    let known = !touched_anew && (turning.before.measured || zeroed < turning.before.start);
    let reached = if known {
        Reached::FromMeasured {
            taken,
            spring: None,
        }
    } else {
        Reached::FromTouch { taken }
    };
    let mut ask = SizeAsk::new(expected, cross, turning.gauge, reached);
    if let Some(expansion) = common.expansion {
        ask = ask.with_expansion(expansion);
    }
    let sure = ask.budget(provenance)?.combined();
    let measuring = match measurement.expanded_uncertainty {
        Some(given) => half_of(given),
        None => ask.measuring_budget(provenance)?.combined(),
    };
    let cut = turning.cuts[made.cuts - 1];
    let whole = turning.whole_of(&cut, common, clamping);
    let (feed, step) = turning.pace_of(common, &cut);
    let before = match made.cuts {
        1 => turning.before.start,
        n => turning.expected_after(n - 2, cross)?,
    };
    let mut shares = Vec::with_capacity(measured.len());
    let mut most = DiameterError::computed_trade(0.0);
    if let Some(depth) = before.depth_to(expected) {
        let cut = whole.cut(&feed, &step, before);
        most = cut.effort(depth)?.spring;
        for one in measured {
            let share = match one.at() {
                Some(at) if most.mm() > 0.0 => cut.spring_at(depth, at)?.mm() / most.mm(),
                _ => 1.0,
            };
            shares.push(share);
        }
    }
    let overhang = clamping.held.overhang;
    for (index, one) in measured.iter().enumerate() {
        if let Some(at) = one.at()
            && at.mm() > overhang.mm()
        {
            return Err(Error::new(
                ErrorKind::Contradiction,
                format!("measured[{index}].from_chuck"),
                at.to_string(),
                match clamping.driven {
                    Some(_) => format!("at most the {overhang} from face to face"),
                    None => format!("at most the {overhang} that stand out"),
                },
                match clamping.driven {
                    Some(_) => "places are measured from the centre in the spindle outwards",
                    None => "places are measured from the jaws outwards",
                },
            ));
        }
    }
    let mut ask = DiagnosisAsk::new(expected, zeroed, measured, cross, sure, measuring)
        .with_holding(clamping.held.support(), overhang);
    if turning.dial_is_proved(made.cuts) {
        ask = ask.with_proved_dial();
    }
    let missed = turning.sizes_missed(made.cuts, common)?;
    ask = ask.with_missed(&missed);
    if turning.is_repeated(made.cuts) {
        ask = ask.with_care();
    }
    if let Some(expansion) = common.expansion {
        ask = ask.with_expansion(expansion);
    }
    if most.mm() > 0.0 {
        ask = ask
            .with_spring(most, &shares)
            .with_spring_expected(turning.leaves_spring());
    }
    Ok(ask.answer(common.units, provenance))
}
