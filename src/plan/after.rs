//! After a measurement: what it says went wrong, whether the part is lost, and the sheet that follows.
//!
//! Nothing is kept anywhere: the new sheet is computed from the job and from what was measured, which
//! the sheet carries.

use super::clamping::Clamping;
use super::common::Common;
use super::heading::Figures;
use super::passes::PlannedCut;
use super::sheet::{Sheet, Step, StepKind};
use super::steps;
use super::turning::Turning;
use super::whole::Whole;
use crate::advice::diagnosis::{Cause, CauseFit, Diagnosis, DiagnosisAsk, SizeAt};
use crate::advice::size_budget::{Reached, SizeAsk};
use crate::error::{Error, ErrorKind};
use crate::physics::spread;
use crate::provenance::Provenance;
use crate::quantity::dial::Divisions;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Quantity, SetOver, SizeUncertainty, StandardUncertainty,
    round_size,
};
use crate::shop::dial::Ring;
use crate::standards::limits::Feature;

/// A measurement that was handed in: with which step, and the sizes.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Measurement {
    /// The step of the sheet, from 0.
    pub step: usize,
    /// The sizes, one or several along the bar.
    pub measured: Vec<SizeAt>,
}

#[cfg(feature = "json")]
impl Measurement {
    pub(super) fn read(tree: &crate::quantity::fields::Tree, path: &str) -> Result<Self, Error> {
        let f = crate::quantity::fields::Fields::of(tree, path, "a measurement")?;
        let step = f.count("step")?;
        let step = step.ok_or_else(|| f.missing("step", "the step of the sheet, from 0"))?;
        let measured = f.need_item("measured", "what was measured", SizeAt::read_all)?;
        f.finish()?;
        Ok(Self {
            step: step as usize,
            measured,
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
}

/// What a measured size brings about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Act {
    /// Nothing.
    GoOn,
    /// Every reading that follows is moved.
    MoveMarks { marks: i64 },
    /// The ring is set, at the mark of the cut that was measured.
    TurnRing { to: f64 },
    /// A finished surface that is too large is cut once more.
    OnceMore,
}

/// What was measured of a surface after so many of its cuts.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Done {
    pub(super) cuts: usize,
    pub(super) size: Diameter,
    /// Measured less expected, in mm on the diameter.
    pub(super) off: f64,
    pub(super) act: Act,
    /// What was expected of the cuts made so far, when they were made.
    pub(super) sizes: Vec<Diameter>,
}

/// Which surface a step belongs to, and how many of its cuts are made by then.
pub(super) struct Made {
    clamping: usize,
    turning: usize,
    cuts: usize,
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
    /// To which mark the ring is set instead, at the mark of the cut that was measured.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ring_to: Option<f64>,
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
        let job = &self.job;
        let mut figures = steps::figures_after(
            job,
            self.units(),
            &self.measured,
            &mut Provenance::default(),
            &mut Vec::new(),
        )?;
        let steps = steps::steps(&figures)?.0;
        let made = figures.place(&steps, step)?;
        let now = Measurement {
            step,
            measured: measured.to_vec(),
        };
        let (turning, clamping) = (
            &figures.turnings[made.clamping][made.turning],
            &figures.clampings[made.clamping],
        );
        let diagnosis = diagnose(
            &figures.common,
            clamping,
            turning,
            &made,
            measured,
            expanded_uncertainty,
        )?;
        let guard = match expanded_uncertainty {
            // 1.645 of the 2 standard uncertainties in it.
            Some(given) => {
                SizeUncertainty::computed_trade(round_size(given.mm() * GUARD_OVER_EXPANDED))
            }
            None => turning.guard,
        };
        let expected = turning.expected_after(made.cuts - 1, figures.common.cross)?;
        let smallest = measured
            .iter()
            .map(|m| m.size())
            .fold(measured[0].size(), Diameter::min);
        let limits = turning.place.surface.limits();
        let lost = round_size(smallest.mm() + guard.mm()) < round_size(limits.smallest().mm());
        let mean = now.mean();
        let u = self.units();
        let mut answer = AfterMeasurement {
            mean,
            expected,
            difference: diagnosis.difference,
            causes: diagnosis.causes,
            lost,
            shift: 0,
            ring_to: None,
            tailstock_correction: diagnosis.tailstock_correction,
            text: String::new(),
            plan: None,
            why_no_plan: None,
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
        if let Some(why) = no_plan(&answer, measured, turning, &made, &guard, u) {
            answer.text.clone_from(&why);
            answer.why_no_plan = Some(why);
            return Ok(answer);
        }
        let taken = figures.take(&made, mean);
        match taken {
            Ok(act) => {
                match act {
                    Act::MoveMarks { marks } => answer.shift = marks,
                    Act::TurnRing { to } => answer.ring_to = Some(round_size(to)),
                    Act::GoOn | Act::OnceMore => {}
                }
                let mut history = self.measured.clone();
                history.push(now);
                let sheet = steps::sheet(job, u, &history)?;
                let adjust = sheet.steps.iter().rfind(|s| s.kind == StepKind::Adjust);
                answer.text = adjust.map_or_else(String::new, |step| step.text.clone());
                answer.plan = Some(sheet);
            }
            Err(error) if error.kind() == ErrorKind::Impossible => {
                let turning = &figures.turnings[made.clamping][made.turning];
                let why = near_its_size(mean, turning, &guard, u)
                    .unwrap_or_else(|| format!("{}; {}.", error.given(), error.remedy()));
                answer.text.clone_from(&why);
                answer.why_no_plan = Some(why);
            }
            Err(error) => return Err(error),
        }
        Ok(answer)
    }
}

/// The guard of a decision over the expanded uncertainty of k = 2: 1.645 / 2, ISO 14253-1:2017, from
/// memory.
const GUARD_OVER_EXPANDED: f64 = 1.645 / 2.0;

/// A share of what explains the measurement at which a cause is acted on.
const CERTAIN_ENOUGH: f64 = 0.5;

/// Why no cut should follow, where none should.
fn no_plan(
    answer: &AfterMeasurement,
    measured: &[SizeAt],
    turning: &Turning<'_>,
    made: &Made,
    guard: &SizeUncertainty,
    u: crate::quantity::unit::Units,
) -> Option<String> {
    let limits = turning.place.surface.limits();
    let first = answer.causes.first()?;
    let sure = first.fit.trade() >= CERTAIN_ENOUGH;
    match first.cause {
        Cause::DialCountsOtherwise if sure => {
            return Some(format!(
                "Stop: {}. Then plan anew with lathe.cross_slide.reads corrected and zero_at {}.",
                first.text,
                answer.mean.people(u)
            ));
        }
        Cause::WarmPart if sure => return Some(format!("Wait: {}.", first.text)),
        _ => {}
    }
    let sizes = measured.iter().map(|m| m.size().mm());
    let (low, high) = sizes.fold((f64::INFINITY, 0.0_f64), |(low, high), d| {
        (low.min(d), high.max(d))
    });
    if high - low > limits.tolerance().mm() {
        return Some(format!(
            "Stop: the sizes differ by {} along the bar, more than the zone of {}: no single cut brings all of it in. {}.",
            DiameterError::computed_trade(round_size(high - low)).people(u),
            limits.tolerance().people(u),
            first.text
        ));
    }
    if made.cuts == turning.cuts.len() {
        return near_its_size(answer.mean, turning, guard, u);
    }
    None
}

/// What is said of a size that needs no cut, or cannot be told to need one.
fn near_its_size(
    mean: Diameter,
    turning: &Turning<'_>,
    guard: &SizeUncertainty,
    u: crate::quantity::unit::Units,
) -> Option<String> {
    let limits = turning.place.surface.limits();
    if limits
        .inside(*guard)
        .is_some_and(|inside| inside.contains(mean))
    {
        return Some(format!(
            "{} is good: do not cut this diameter again; go on with what follows on the sheet.",
            mean.people(u)
        ));
    }
    let over = round_size(mean.mm() - limits.largest().mm());
    let under = round_size(limits.smallest().mm() - mean.mm());
    (over <= round_size(guard.mm()) && under <= round_size(guard.mm())).then(|| {
        format!(
            "{} is too near to a limit for this instrument to tell: measure with a finer one before anything is cut.",
            mean.people(u)
        )
    })
}

fn diagnose(
    common: &Common<'_>,
    clamping: &Clamping<'_>,
    turning: &Turning<'_>,
    made: &Made,
    measured: &[SizeAt],
    expanded_uncertainty: Option<SizeUncertainty>,
) -> Result<Diagnosis, Error> {
    let cross = common.cross;
    let expected = turning.expected_after(made.cuts - 1, cross)?;
    let zeroed = turning.zeroed_before(made.cuts, cross)?;
    let taken = DiameterError::computed_trade(round_size(zeroed.mm() - expected.mm()));
    let known = turning.before.measured || zeroed < turning.before.start;
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
    let mut provenance = Provenance::default();
    let sure = ask.budget(&mut provenance)?.combined();
    let measuring = match expanded_uncertainty {
        Some(given) => StandardUncertainty::computed_trade(0.5 * given.mm()),
        None => ask.measuring_budget(&mut provenance)?.combined(),
    };
    let whole = Whole {
        common,
        held: &clamping.held,
        law: clamping.law,
        place: &turning.place,
        start: turning.before.start,
    };
    let cut = turning.cuts[made.cuts - 1];
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
                format!("at most the {overhang} that stand out"),
                "places are measured from the jaws outwards",
            ));
        }
    }
    let mut ask = DiagnosisAsk::new(expected, zeroed, measured, cross, sure, measuring)
        .with_holding(clamping.held.support(), overhang);
    if let Some(expansion) = common.expansion {
        ask = ask.with_expansion(expansion);
    }
    if most.mm() > 0.0 {
        ask = ask.with_spring(most, &shares);
    }
    Ok(ask.answer(common.units, &mut provenance))
}

impl Figures<'_> {
    /// Which surface a step belongs to, and how many of its cuts are made by then.
    pub(super) fn place(&self, steps: &[Step], step: usize) -> Result<Made, Error> {
        let wrong = |given: String| {
            Error::new(
                ErrorKind::Contradiction,
                "step",
                given,
                "a step after a cut, counted from 0: a cut, a measuring stop or the inspection",
                "give the place in \"steps\" of the sheet at which it was measured",
            )
        };
        let Some(of) = steps.get(step) else {
            return Err(wrong(format!(
                "step {step} of a sheet of {} steps",
                steps.len()
            )));
        };
        let Some(at) = of.surface else {
            return Err(wrong(format!("step {step}, which works on no surface")));
        };
        let cuts = steps[..=step]
            .iter()
            .filter(|s| s.surface == Some(at) && s.depth_of_cut.is_some())
            .count();
        let found = self
            .turnings
            .iter()
            .enumerate()
            .find_map(|(clamping, turnings)| {
                let turning = turnings.iter().position(|turning| turning.place.at == at)?;
                Some((clamping, turning))
            });
        match found {
            Some((clamping, turning)) if cuts > 0 => Ok(Made {
                clamping,
                turning,
                cuts,
            }),
            _ => Err(wrong(format!("step {step}, before the first cut"))),
        }
    }

    /// Takes a measured size into the figures of its surface, and those of the surfaces after it.
    pub(super) fn take(&mut self, made: &Made, size: Diameter) -> Result<Act, Error> {
        let clamping = &self.clampings[made.clamping];
        let common = &self.common;
        let turnings = &mut self.turnings[made.clamping];
        let (ring_before, act) = {
            let turning = &mut turnings[made.turning];
            let before = turning.datum.zero;
            let act = turning.take(common, clamping, made.cuts, size)?;
            (before, act)
        };
        // A dial whose ring stays where it is reads the later surfaces by the new zero as well.
        let mut leaves = turnings[made.turning].leaves(common.cross)?;
        for next in turnings.iter_mut().skip(made.turning + 1) {
            if next.before.zero != ring_before && next.before.zero != leaves.zero {
                break;
            }
            let place = next.place.clone();
            *next = Turning::of(
                common,
                clamping,
                &place,
                leaves,
                &mut Provenance::default(),
                &mut Vec::new(),
            )?;
            leaves = next.leaves(common.cross)?;
        }
        Ok(act)
    }
}

impl Turning<'_> {
    /// The mark of the last of so many cuts.
    fn mark_of(&self, cuts: usize) -> i64 {
        self.cuts[cuts - 1].mark
    }

    /// What is or was expected after the cut at this place among the cuts.
    pub(super) fn expected_after(
        &self,
        at: usize,
        cross: &crate::shop::dial::Dial,
    ) -> Result<Diameter, Error> {
        let then = self.done.as_ref().and_then(|done| done.sizes.get(at));
        match then {
            Some(size) => Ok(*size),
            None => self.diameter_at(cross, self.cuts[at].mark),
        }
    }

    /// The size on which the dial was last set before so many cuts were made.
    fn zeroed_before(
        &self,
        cuts: usize,
        cross: &crate::shop::dial::Dial,
    ) -> Result<Diameter, Error> {
        if let Some(done) = self.done.as_ref().filter(|done| done.cuts < cuts) {
            return Ok(done.size);
        }
        let stops = &self.chance.stops.chosen.after;
        match stops.iter().rfind(|stop| **stop + 1 < cuts) {
            Some(stop) => self.expected_after(*stop, cross),
            None => Ok(self.before.start),
        }
    }

    /// Takes the size measured after so many cuts: moves the marks that follow, or sets the ring, and
    /// adds a cut where the next would be too deep.
    fn take(
        &mut self,
        common: &Common<'_>,
        clamping: &Clamping<'_>,
        made: usize,
        size: Diameter,
    ) -> Result<Act, Error> {
        let cross = common.cross;
        let q = cross.diameter_per_division().mm();
        let mark = self.mark_of(made);
        let expected = self.diameter_at(cross, mark)?;
        let off = round_size(size.mm() - expected.mm());
        let exact = off / q;
        let last = self.mark_of(self.cuts.len());
        let mut sizes = (0..made)
            .map(|at| self.expected_after(at, cross))
            .collect::<Result<Vec<_>, _>>()?;
        // What was measured before is known better than what was expected there.
        if let Some(before) = self.done.as_ref().filter(|before| before.cuts < made) {
            sizes[before.cuts - 1] = before.size;
        }
        let corrected = Diameter::computed_trade(round_size(self.datum.zero.mm() + off));
        if made == self.cuts.len() {
            return self.once_more(common, size, corrected, off, sizes);
        }
        // As deep as it was planned, the next cut may always be.
        let planned = 0.5 * q * (self.mark_of(made + 1) - mark) as f64;
        let ends_well = |marks: i64| -> Result<bool, Error> {
            let end = cross.diameter_at(corrected, Divisions::new(last + marks)?)?;
            Ok(self.guarded.contains(end) && self.aim.serves(end))
        };
        let near = exact.round() as i64;
        let act = if off == 0.0 {
            Act::GoOn
        } else if ends_well(near)? {
            Act::MoveMarks { marks: near }
        } else {
            match cross.ring() {
                Ring::Settable => Act::TurnRing {
                    to: mark as f64 - exact,
                },
                Ring::Fixed => {
                    let other = if exact > near as f64 {
                        near + 1
                    } else {
                        near - 1
                    };
                    if !ends_well(other)? {
                        return Err(Error::new(
                            ErrorKind::Impossible,
                            "lathe.cross_slide",
                            format!("No mark of this dial brings {size} into the zone"),
                            "a mark that ends in the zone",
                            "take a light cut that is measured, or set the compound slide over for a finer feed",
                        ));
                    }
                    Act::MoveMarks { marks: other }
                }
            }
        };
        let moved = match act {
            Act::MoveMarks { marks } => {
                self.datum.zero = corrected;
                marks
            }
            _ => 0,
        };
        for cut in &mut self.cuts[made..] {
            cut.mark += moved;
        }
        if moved != 0 {
            self.datum.last = Divisions::new(last + moved)?;
        }
        self.fit_the_next_cut(common, clamping, made, size, planned)?;
        let end = self.diameter_at(cross, self.datum.last.count())?;
        self.chance.outcome = spread::outcome(
            self.place.surface.limits(),
            end,
            self.aim.spread,
            Feature::Shaft,
        );
        self.done = Some(Done {
            cuts: made,
            size,
            off,
            act,
            sizes,
        });
        Ok(act)
    }

    /// Drops a cut that the measured size leaves too little metal for, adds one where it would be too
    /// deep.
    fn fit_the_next_cut(
        &mut self,
        common: &Common<'_>,
        clamping: &Clamping<'_>,
        made: usize,
        size: Diameter,
        planned: f64,
    ) -> Result<(), Error> {
        let cross = common.cross;
        let depth_to = |mark: i64, this: &Self| -> Result<f64, Error> {
            let target = this.diameter_at(cross, mark)?;
            Ok(round_size(0.5 * (size.mm() - target.mm())))
        };
        // What is too little for the next cut may do for the one after it.
        while made + 1 < self.cuts.len()
            && depth_to(self.cuts[made].mark, self)? < self.place.correcting.mm()
        {
            self.cuts.remove(made);
            self.move_stops(made, -1);
        }
        let next = self.cuts[made];
        let depth = depth_to(next.mark, self)?;
        if depth < self.place.correcting.mm() {
            return Err(Error::new(
                ErrorKind::Impossible,
                "measured",
                format!(
                    "{} is left for the last cut, which would rub: it needs {} at least",
                    DepthOfCut::computed_trade(depth.max(0.0)),
                    self.place.correcting
                ),
                "metal for a cut",
                "polish or file nothing to size; where the limits allow it, leave it, else use a sharper tool with a smaller corner radius",
            ));
        }
        let most = match next.kind {
            StepKind::FinishCut => {
                let whole = Whole {
                    common,
                    held: &clamping.held,
                    law: clamping.law,
                    place: &self.place,
                    start: self.before.start,
                };
                let (most, _) = whole.most(
                    &self.finish_feed,
                    &self.finish_step,
                    self.guarded.middle(),
                    None,
                )?;
                most.mm()
                    .min(1.5 * self.place.liked.mm())
                    .max(self.place.least.mm())
            }
            _ => self.rough_most.mm(),
        };
        // A depth compares after rounding; a planned cut may be as deep as its limit.
        let most = most.max(if next.kind == StepKind::FinishCut {
            1.5 * planned
        } else {
            planned
        });
        let cuts = (depth / most - 1e-6).ceil().max(1.0) as i64;
        let from = cross.divisions_between(self.datum.zero, size);
        let cuts = cuts.min((next.mark as f64 - from).floor() as i64).max(1);
        for extra in 1..cuts {
            let share = extra as f64 / cuts as f64;
            let mark = Divisions::from_rounded((from + (next.mark as f64 - from) * share).round())?;
            self.cuts.insert(
                made + extra as usize - 1,
                PlannedCut {
                    kind: StepKind::RoughCut,
                    mark: mark.count(),
                    pace: next.pace,
                },
            );
            self.move_stops(made, 1);
        }
        Ok(())
    }

    /// Stops after later cuts, where a cut came or went before them.
    fn move_stops(&mut self, from: usize, by: isize) {
        let stops = &mut self.chance.stops.chosen.after;
        if by < 0 {
            stops.retain(|stop| *stop != from);
        }
        for stop in stops.iter_mut().filter(|stop| **stop >= from) {
            *stop = stop.saturating_add_signed(by);
        }
    }

    /// Another cut on a finished surface that came out too large.
    fn once_more(
        &mut self,
        common: &Common<'_>,
        size: Diameter,
        corrected: Diameter,
        off: f64,
        sizes: Vec<Diameter>,
    ) -> Result<Act, Error> {
        let cross = common.cross;
        let made = self.cuts.len();
        let exact = cross.divisions_between(corrected, self.aim.size);
        let mark = Divisions::from_rounded(exact.round())?;
        let target = cross.diameter_at(corrected, mark)?;
        let depth = round_size(0.5 * (size.mm() - target.mm()));
        if depth < self.place.correcting.mm() || !self.guarded.contains(target) {
            return Err(Error::new(
                ErrorKind::Impossible,
                "measured",
                format!(
                    "{} is over by too little for another cut: {} of depth would rub, or no mark ends in the zone",
                    size,
                    DepthOfCut::computed_trade(depth.max(0.0))
                ),
                "metal for a cut that ends on a mark",
                "where the limits allow it, leave it; else a sharper tool with a smaller corner radius, the ring set on the measured size",
            ));
        }
        self.datum.zero = corrected;
        self.datum.last = mark;
        self.cuts.push(PlannedCut {
            kind: StepKind::FinishCut,
            mark: mark.count(),
            pace: self.cuts[made - 1].pace,
        });
        self.chance.outcome = spread::outcome(
            self.place.surface.limits(),
            target,
            self.aim.spread,
            Feature::Shaft,
        );
        let act = Act::OnceMore;
        self.done = Some(Done {
            cuts: made,
            size,
            off,
            act,
            sizes,
        });
        Ok(act)
    }
}
