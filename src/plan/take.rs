//! What a measurement changes in the figures: marks moved or the ring set, a cut dropped or added.

use super::clamping::Clamping;
use super::common::Common;
use super::heading::Figures;
use super::passes::PlannedCut;
use super::sheet::{Step, StepKind};
use super::turning::Turning;
use super::whole::Whole;
use crate::error::{Error, ErrorKind};
use crate::physics::spread;
use crate::provenance::Provenance;
use crate::quantity::dial::Divisions;
use crate::quantity::{DepthOfCut, Diameter, round_size};
use crate::shop::dial::{Dial, Ring};
use crate::standards::limits::Feature;

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
    pub(super) clamping: usize,
    pub(super) turning: usize,
    pub(super) cuts: usize,
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
            .filter(|s| s.surface == Some(at) && s.kind.is_cut())
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
    pub(super) fn mark_of(&self, cuts: usize) -> i64 {
        self.cuts[cuts - 1].mark
    }

    /// What is or was expected after the cut at this place among the cuts.
    pub(super) fn expected_after(&self, at: usize, cross: &Dial) -> Result<Diameter, Error> {
        let then = self.done.as_ref().and_then(|done| done.sizes.get(at));
        match then {
            Some(size) => Ok(*size),
            None => self.diameter_at(cross, self.cuts[at].mark),
        }
    }

    /// The size on which the dial was last set before so many cuts were made.
    pub(super) fn zeroed_before(&self, cuts: usize, cross: &Dial) -> Result<Diameter, Error> {
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
