//! What a measurement changes in the figures: marks moved or the ring set, a cut dropped or added.

use super::clamping::Clamping;
use super::common::Common;
use super::datum::{Before, Moved};
use super::heading::Figures;
use super::job::Job;
use super::passes::PlannedCut;
use super::readout::is_readout;
use super::sheet::{Step, StepKind};
use super::turning::Turning;
use crate::advice::reach::TWO_SIGMA;
use crate::error::{Error, ErrorKind};
use crate::physics::aim;
use crate::physics::spread;
use crate::provenance::Provenance;
use crate::quantity::dial::Divisions;
use crate::quantity::{DepthOfCut, Diameter, Probability, Quantity, round_size};
use crate::shop::dial::{Dial, DialReads, Ring};
use crate::standards::limits::Feature;

/// What a measured size brings about.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Act {
    /// Nothing.
    GoOn,
    /// Every reading that follows is moved: by tenths of a mark, whole marks where they will do.
    MoveReadings { tenths: i64 },
    /// The ring is set, at the mark of the cut that was measured.
    TurnRing { to: f64 },
    /// A finished surface that is too large is cut once more.
    OnceMore,
    /// A slip left metal on: what the cut missed is cut at its own mark, by so many cuts, and measured.
    Repeat { slip: Slip, cuts: usize },
    /// A slip left too little on for a cut of its own: the next one takes it along.
    LeftOn,
}

/// A slip of the hand that leaves metal on and the zero of the dial where it was.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Slip {
    Backlash,
    TurnTooFew,
    /// What it was is not known: so much is over that nobody goes on from there.
    Unknown,
}

/// The slip that a measured size is taken for, and how well it explains the size.
pub(super) type Suspicion = Option<(Slip, Probability)>;

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
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "step",
                step.to_string(),
                format!("a step from 0 to {}", steps.len().saturating_sub(1)),
                "give the place in \"steps\" of the sheet at which it was measured, counted from 0",
            ));
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
            Some((clamping, turning))
                if (1..=self.turnings[clamping][turning].cuts.len()).contains(&cuts) =>
            {
                Ok(Made {
                    clamping,
                    turning,
                    cuts,
                })
            }
            _ => Err(wrong(format!("step {step}, before the first cut"))),
        }
    }

    /// Takes a measured size into the figures of its surface, and those of the surfaces after it.
    pub(super) fn take(
        &mut self,
        made: &Made,
        size: Diameter,
        slip: Suspicion,
    ) -> Result<Act, Error> {
        let clamping = &self.clampings[made.clamping];
        let common = &self.common;
        let turnings = &mut self.turnings[made.clamping];
        let (ring_before, act) = {
            let turning = &mut turnings[made.turning];
            let before = turning.reads_zero_at(common.cross);
            let act = turning.take(common, clamping, made.cuts, size, slip)?;
            (before, act)
        };
        // What another tool finishes was zeroed on its own roughed size, and the later surfaces are on theirs.
        if turnings[made.turning]
            .change_at()
            .is_some_and(|change| made.cuts >= change)
        {
            return Ok(act);
        }
        // A dial whose ring stays where it is reads the later surfaces by the new zero as well.
        let mut leaves = turnings[made.turning].leaves(common.cross)?;
        for next in turnings.iter_mut().skip(made.turning + 1) {
            let as_before = next.before == leaves;
            // What is roughed by the marks of the surface before is, whatever its ring was set to.
            let of_its_own = !common.job.changes_tools()
                && next.before.zero != ring_before
                && next.before.zero != leaves.zero;
            if as_before || of_its_own {
                break;
            }
            if next.is_divided_alike(&leaves, common.job) {
                next.before = leaves;
            } else {
                let place = next.place.clone();
                *next = Turning::of(
                    common,
                    clamping,
                    &place,
                    leaves,
                    &mut Provenance::deaf(),
                    &mut Vec::new(),
                )?;
            }
            leaves = next.leaves(common.cross)?;
        }
        Ok(act)
    }
}

impl Turning<'_> {
    /// True where its figures stay as they are when it is come to like this: nothing was measured of it, and
    /// only that something was measured before it is new, by which asked measuring stops alone are told.
    fn is_divided_alike(&self, before: &Before, job: &Job) -> bool {
        let as_planned = Before {
            anew: self.before.anew,
            ..*before
        };
        let stops_asked = job.preference(|p| p.measuring_stops()).is_some();
        self.done.is_none() && !stops_asked && self.before == as_planned
    }

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
        // What another tool turns is counted from the roughed size that it was zeroed on.
        let from = self
            .change_at()
            .filter(|change| *change < cuts)
            .unwrap_or(0);
        let known = |done: &&Done| (from..cuts).contains(&done.cuts);
        if let Some(done) = self.done.as_ref().filter(known) {
            return Ok(done.size);
        }
        let stops = &self.chance.stops.chosen.after;
        match stops.iter().rfind(|stop| **stop + 1 < cuts) {
            Some(stop) => self.expected_after(*stop, cross),
            None => Ok(self.before.start),
        }
    }

    /// True where the dial was seen to take off what it says: at the other end or on a surface before, or
    /// at a cut before.
    pub(super) fn dial_is_proved(&self, cuts: usize) -> bool {
        self.place.at.other_end()
            || self.before.turned
            || self.done.as_ref().is_some_and(|done| done.cuts < cuts)
            || self.change_at().is_some_and(|change| change < cuts)
    }

    /// True where the last cut was itself made once more, with all the care asked for.
    pub(super) fn is_repeated(&self, cuts: usize) -> bool {
        self.done.as_ref().is_some_and(
            |done| matches!(done.act, Act::Repeat { cuts: again, .. } if cuts <= done.cuts + again),
        )
    }

    /// The sizes that are found where the last cuts before a measurement took nothing, one cut of them,
    /// two, and so on back to the last size that was measured.
    pub(super) fn sizes_missed(
        &self,
        cuts: usize,
        common: &Common<'_>,
    ) -> Result<Vec<Diameter>, Error> {
        let cross = common.cross;
        let before = self.done.as_ref().filter(|done| done.cuts < cuts);
        let (from, start) = before.map_or((0, self.measures_uncut(common)), |done| {
            (done.cuts, done.size)
        });
        let mut sizes = Vec::with_capacity(cuts - from);
        for at in (from..cuts - 1).rev() {
            sizes.push(self.expected_after(at, cross)?);
        }
        sizes.push(start);
        Ok(sizes)
    }

    /// What an instrument finds before the first cut: where the bar runs out it was touched at its high side, and
    /// the circle of that is larger.
    pub(super) fn measures_uncut(&self, common: &Common<'_>) -> Diameter {
        let stock = &common.job.stock;
        let touched_high = !self.before.measured && stock.run_out().is_some_and(|r| r.mm() > 0.0);
        match touched_high && !self.before.turned {
            true => stock.diameter().min(self.before.start),
            false => self.before.start,
        }
    }

    /// The size that was measured before the cut at this place was made once more for it, with all the care asked for.
    pub(super) fn size_before_repeat(&self, at: usize) -> Option<Diameter> {
        let done = self.done.as_ref().filter(|done| done.cuts <= at)?;
        self.is_repeated(at + 1).then_some(done.size)
    }

    /// What an instrument finds where the cut at this place took nothing.
    pub(super) fn uncut_at(&self, at: usize, common: &Common<'_>) -> Result<Diameter, Error> {
        let Some(before) = at.checked_sub(1) else {
            return Ok(self.measures_uncut(common));
        };
        match self.done.as_ref().filter(|done| done.cuts == at) {
            Some(done) => Ok(done.size),
            None => self.expected_after(before, common.cross),
        }
    }

    /// What the stop after the cut at this place finds where the dial counts otherwise than was thought, if that
    /// stop is the one that shows it and there is such a size.
    pub(super) fn size_of_other_dial(
        &self,
        at: usize,
        cross: &Dial,
    ) -> Result<Option<Diameter>, Error> {
        if self.chance.stops.chosen.after.first() != Some(&at) || self.before.turned {
            return Ok(None);
        }
        let expected = self.diameter_at(cross, self.cuts[at].mark)?.mm();
        let touched = self.before.start.mm();
        let share = match cross.reads() {
            DialReads::Diameter => 2.0,
            _ => 0.5,
        };
        let found = round_size(touched - share * round_size(touched - expected));
        Ok((found > 0.0).then(|| Diameter::computed_trade(found)))
    }

    /// True of a size on which the stop after the cut at this place has the ring set, not the cut repeated, the
    /// dial proved or nothing cut at all.
    pub(super) fn sets_the_ring_on(
        &self,
        size: Diameter,
        at: usize,
        common: &Common<'_>,
    ) -> Result<bool, Error> {
        let cross = common.cross;
        let expected = self.diameter_at(cross, self.cuts[at].mark)?;
        let repeated = self.size_before_repeat(at).is_some();
        if at + 2 == self.cuts.len() {
            let target = self.diameter_at(cross, self.mark_of(at + 2))?;
            let again = half_of_the_last_over(expected, target);
            return Ok(size >= self.rubs_below(target) && (repeated || size <= again));
        }
        let half_a_mark = 0.5 * cross.diameter_per_division().mm();
        let near = |other: Diameter| round_size((size.mm() - other.mm()).abs()) < half_a_mark;
        let other_dial = self.size_of_other_dial(at, cross)?.is_some_and(near);
        let uncut = size >= nearly_uncut(self.uncut_at(at, common)?, expected);
        Ok(!other_dial && (repeated || !uncut))
    }

    /// Takes the size measured after so many cuts: moves the marks that follow, or sets the ring, and
    /// adds a cut where the next would be too deep.
    fn take(
        &mut self,
        common: &Common<'_>,
        clamping: &Clamping<'_>,
        made: usize,
        size: Diameter,
        slip: Suspicion,
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
        let zero = self.reads_zero_at(cross).mm();
        let corrected = Diameter::computed_trade(round_size(zero + off));
        let slip = match slip {
            Some(slip) if self.is_worth_minding(&slip, cross, made, off)? => Some(slip),
            // As the stop has it on paper.
            _ if made < self.cuts.len()
                && !self.is_repeated(made)
                && size > self.cut_again_above(common, made, &sizes)? =>
            {
                let turn = f64::from(cross.divisions_per_turn().count()) * q;
                let slip = match off >= 0.5 * turn && !is_readout(cross) {
                    true => Slip::TurnTooFew,
                    false => Slip::Unknown,
                };
                Some((slip, Probability::computed_trade(1.0)))
            }
            _ => None,
        };
        if let Some((slip, _)) = slip
            && 0.5 * off >= self.place.correcting.mm()
        {
            // Where nothing was cut of a bar that runs out, its high side stands as far out as before.
            let uncut = self.measures_uncut(common);
            let beyond = match size >= nearly_uncut(uncut, expected) {
                true => 0.5 * (self.before.start.mm() - uncut.mm()),
                false => 0.0,
            };
            let end = Target {
                mark,
                beyond,
                ..self.target(made - 1)
            };
            let cuts = self.cut_down_to(common, clamping, made, size, end)?;
            self.move_stops(made, cuts as isize);
            if made + cuts < self.cuts.len() {
                self.measure_after(made + cuts - 1);
            }
            return self.taken(made, size, off, Act::Repeat { slip, cuts }, sizes);
        }
        if made == self.cuts.len() {
            return self.once_more(common, clamping, size, corrected, off, sizes);
        }
        if self.change_at() == Some(made) {
            // The other tool is zeroed on this size: its readings hold whatever it is.
            let planned = 0.5 * q * (self.mark_of(made + 1) - mark) as f64;
            self.fit_the_next_cut(common, clamping, made, size, planned)?;
            return self.taken(made, size, off, Act::GoOn, sizes);
        }
        // As deep as it was planned, the next cut may always be.
        let planned = 0.5 * q * (self.mark_of(made + 1) - mark) as f64;
        // What the readings of whole marks would have to be moved by.
        let exact = match cross.ring() {
            Ring::Fixed => {
                cross.divisions_between(corrected, self.counted_to(cross)?.0) - last as f64
            }
            Ring::Settable | Ring::Readout => exact + f64::from(self.between()) / 10.0,
        };
        let near = exact.round() as i64;
        let away = if exact > near as f64 { 1 } else { -1 };
        let planned_end = self.diameter_at(cross, last)?;
        let move_by = |tenths: i64| -> Result<Option<Moved>, Error> {
            let moved = Moved::by(tenths, corrected, cross);
            let end = cross.diameter_at(moved.zero, Divisions::new(last + moved.marks)?)?;
            // Where it was to end by the sheet, it may.
            let planned = round_size(end.mm() - planned_end.mm()) == 0.0;
            // A whole mark of a fixed ring is to be as good as all of them are on average.
            let as_good = tenths % 10 != 0 || self.counted.is_none() || {
                let limits = self.place.surface.limits();
                let come_out = spread::outcome(limits, end, self.aim.spread, Feature::Shaft);
                come_out.good >= self.chance.outcome.good
            };
            let serves = planned || (as_good && self.aim.serves(end));
            // The cut that ends there must not rub.
            let left = round_size(0.5 * (size.mm() - end.mm()));
            let serves = serves && left >= self.place.correcting.mm();
            let well = self.guarded.contains(end) && serves;
            Ok(well.then_some(moved))
        };
        let moved = match cross.ring() {
            _ if off == 0.0 || slip.is_some() => None,
            Ring::Readout => None,
            Ring::Settable => move_by(10 * near)?,
            Ring::Fixed => {
                // A whole mark where one will do, else tenths of one by eye, the nearest first.
                let tenth = (10.0 * exact).round() as i64;
                let beside = (1..=5).flat_map(|by| [tenth + by, tenth - by]);
                let mut found = None;
                for tenths in [10 * near, 10 * (near + away), tenth]
                    .into_iter()
                    .chain(beside)
                {
                    found = match found {
                        Some(_) => break,
                        None => move_by(tenths)?,
                    };
                }
                if found.is_none() {
                    return Err(Error::new(
                        ErrorKind::Impossible,
                        "lathe.cross_slide",
                        format!(
                            "No mark of this dial, and no tenth of one, brings {size} into the zone"
                        ),
                        "a mark that ends in the zone",
                        "take a light cut that is measured, or set the compound slide over for a finer feed",
                    ));
                }
                found
            }
        };
        let act = match moved {
            _ if off == 0.0 => Act::GoOn,
            _ if slip.is_some() => Act::LeftOn,
            Some(moved) => Act::MoveReadings {
                tenths: 10 * moved.marks + i64::from(moved.between) - i64::from(self.between()),
            },
            None => Act::TurnRing {
                to: mark as f64 - off / q,
            },
        };
        if let Some(moved) = moved {
            self.datum.zero = moved.zero;
            for cut in &mut self.cuts[made..] {
                cut.mark += moved.marks;
                cut.between = moved.between;
            }
            self.datum.last = Divisions::new(last + moved.marks)?;
        }
        self.fit_the_next_cut(common, clamping, made, size, planned)?;
        let end = self.diameter_at(cross, self.datum.last.count())?;
        // No mark is counted any more, and what the nearest one leaves over is in where the last cut ends.
        let to_be_counted = self
            .chance
            .stops
            .chosen
            .after
            .iter()
            .any(|stop| *stop >= made);
        let counted = self.counted.as_ref().filter(|_| !to_be_counted);
        if let Some(counted) = counted {
            let confidence = TWO_SIGMA.value;
            self.chance.uncertainty = counted.budget().expanded(confidence);
            self.chance.shares = counted.shares();
            self.chance.budget = counted.clone();
        }
        let outcome = |end: Diameter| {
            let limits = self.place.surface.limits();
            spread::outcome(limits, end, self.aim.spread, Feature::Shaft)
        };
        self.chance.outcome = match slip {
            // Where it was no slip after all, the last size is off by as much as this one.
            Some((_, fit)) => outcome(end).or(
                fit,
                outcome(Diameter::computed_trade(round_size(end.mm() + off))),
            ),
            None if self.counted.is_some() && to_be_counted => self.chance.outcome,
            None => outcome(end),
        };
        self.taken(made, size, off, act, sizes)
    }

    /// Above this size a cut that is measured is taken once more, whatever left so much over: three quarters of it, or
    /// before the last cut half of that one (judgement, no source).
    fn cut_again_above(
        &self,
        common: &Common<'_>,
        made: usize,
        sizes: &[Diameter],
    ) -> Result<Diameter, Error> {
        let cross = common.cross;
        let expected = self.diameter_at(cross, self.mark_of(made))?;
        let before = match made {
            1 => self.measures_uncut(common),
            _ => sizes[made - 2],
        };
        let uncut = nearly_uncut(before, expected);
        if made + 1 < self.cuts.len() {
            return Ok(uncut);
        }
        let target = self.diameter_at(cross, self.mark_of(made + 1))?;
        Ok(half_of_the_last_over(expected, target).min(uncut))
    }

    /// True where the chance of a slip makes it dearer to move the readings than to leave them.
    ///
    /// Moved by what only a slip left on, the last cut goes too deep by as much; left alone where it was
    /// no slip, or cut once more at the mark, it costs another cut. A later stop shows it in time where it
    /// still finds metal.
    fn is_worth_minding(
        &self,
        (_, fit): &(Slip, Probability),
        cross: &Dial,
        made: usize,
        off: f64,
    ) -> Result<bool, Error> {
        if let Some(stop) = self
            .chance
            .stops
            .chosen
            .after
            .iter()
            .find(|stop| **stop >= made)
        {
            let then = self.expected_after(*stop, cross)?.mm() - off;
            if round_size(then) > round_size(self.place.surface.limits().largest().mm()) {
                return Ok(false);
            }
        }
        let prices = self.costs.prices;
        let price = |off: f64| {
            let end = Diameter::computed_trade(self.aim.size.mm() + off);
            let limits = self.place.surface.limits();
            aim::expected_price(limits, end, self.aim.spread, prices, Feature::Shaft).trade()
        };
        let moved = fit.trade() * (price(-off) - price(0.0));
        Ok(moved > (1.0 - fit.trade()) * prices.rework().trade())
    }

    fn taken(
        &mut self,
        cuts: usize,
        size: Diameter,
        off: f64,
        act: Act,
        sizes: Vec<Diameter>,
    ) -> Result<Act, Error> {
        self.done = Some(Done {
            cuts,
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
        let cuts = self.cut_down_to(
            common,
            clamping,
            made,
            size,
            Target {
                planned,
                ..self.target(made)
            },
        )?;
        // The cut that was planned is the last of them.
        self.cuts.remove(made + cuts);
        self.move_stops(made, cuts as isize - 1);
        // Of several cuts to the last size the last two are alike too, and measured between.
        if cuts > 1 && made + cuts == self.cuts.len() && next.kind == StepKind::FinishCut {
            self.cuts[made + cuts - 2].kind = StepKind::FinishCut;
            self.measure_after(made + cuts - 2);
        }
        Ok(())
    }

    /// The mark of a planned cut, and how it gets there.
    fn target(&self, at: usize) -> Target {
        Target {
            cut: self.cuts[at],
            mark: self.cuts[at].mark,
            planned: 0.0,
            beyond: 0.0,
        }
    }

    /// Puts as many cuts at this place as it takes to come from a measured size to a mark; how many.
    fn cut_down_to(
        &mut self,
        common: &Common<'_>,
        clamping: &Clamping<'_>,
        at: usize,
        size: Diameter,
        target: Target,
    ) -> Result<usize, Error> {
        let Target {
            cut,
            mark,
            planned,
            beyond,
        } = target;
        let most = match cut.kind {
            _ if cut.kind == StepKind::FinishCut || cut.after_change => {
                let found = self.whole_of(&cut, common, clamping).most(
                    &self.finish_feed,
                    &self.finish_step,
                    self.guarded.middle(),
                    None,
                );
                // Where not even the lightest cut may be planned as a rule, the one that was may be made.
                let most = match found {
                    Ok((most, _)) => most.mm(),
                    Err(error) if error.kind() == ErrorKind::Impossible => 0.0,
                    Err(error) => return Err(error),
                };
                most.min(1.5 * self.place.liked.mm())
                    .max(self.place.least.mm())
                    .max(1.5 * planned)
            }
            _ => self.rough_most.mm().max(planned),
        };
        let cross = common.cross;
        let depth = round_size(0.5 * (size.mm() - self.diameter_at(cross, mark)?.mm()));
        // A depth compares after rounding; a planned cut may be as deep as its limit.
        let cuts = ((depth + beyond) / most - 1e-6).ceil().max(1.0) as i64;
        let from = cross.divisions_between(self.datum.zero, size);
        let cuts = cuts.min((mark as f64 - from).floor() as i64).max(1);
        for one in 1..cuts {
            let share = one as f64 / cuts as f64;
            let mark = Divisions::from_rounded((from + (mark as f64 - from) * share).round())?;
            self.cuts.insert(
                at + one as usize - 1,
                PlannedCut {
                    mark: mark.count(),
                    kind: StepKind::RoughCut,
                    ..cut
                },
            );
        }
        let cuts = cuts as usize;
        self.cuts.insert(at + cuts - 1, PlannedCut { mark, ..cut });
        Ok(cuts)
    }

    /// Has the cut at this place measured.
    fn measure_after(&mut self, at: usize) {
        let stops = &mut self.chance.stops.chosen.after;
        if let Err(place) = stops.binary_search(&at) {
            stops.insert(place, at);
        }
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
        clamping: &Clamping<'_>,
        size: Diameter,
        corrected: Diameter,
        off: f64,
        sizes: Vec<Diameter>,
    ) -> Result<Act, Error> {
        let cross = common.cross;
        let made = self.cuts.len();
        // A readout is set to the nearest size it can show.
        let corrected = match is_readout(cross) {
            true => {
                let step = cross.diameter_per_division().mm();
                let zero = self.reads_zero_at(cross).mm();
                Diameter::computed_trade(round_size(zero + (off / step).round() * step))
            }
            false => corrected,
        };
        let exact = cross.divisions_between(corrected, self.aim.size);
        let whole = 10 * exact.round() as i64;
        let ends = |tenths: i64| -> Result<(Moved, Diameter), Error> {
            let moved = Moved::by(tenths, corrected, cross);
            let target = cross.diameter_at(moved.zero, Divisions::new(moved.marks)?)?;
            Ok((moved, target))
        };
        let (moved, target) = match ends(whole)? {
            // By eye between two marks, where no whole one will do; a readout shows nothing between.
            (_, off) if !self.guarded.contains(off) && !is_readout(cross) => {
                ends((10.0 * exact).round() as i64)?
            }
            whole => whole,
        };
        let mark = Divisions::new(moved.marks)?;
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
        self.datum.zero = moved.zero;
        self.datum.last = mark;
        let made_last = self.target(made - 1);
        let end = Target {
            mark: mark.count(),
            cut: PlannedCut {
                between: moved.between,
                ..made_last.cut
            },
            ..made_last
        };
        self.cut_down_to(common, clamping, made, size, end)?;
        self.chance.outcome = spread::outcome(
            self.place.surface.limits(),
            target,
            self.aim.spread,
            Feature::Shaft,
        );
        self.taken(made, size, off, Act::OnceMore, sizes)
    }
}

/// From which size on a cut is taken to have cut nothing: three quarters of what it was to take are still there
/// (judgement, no source).
pub(super) fn nearly_uncut(uncut: Diameter, expected: Diameter) -> Diameter {
    Diameter::computed_trade(round_size(0.75 * uncut.mm() + 0.25 * expected.mm()))
}

/// From which size on, before the last cut, the cut before it is taken once more.
pub(super) fn half_of_the_last_over(expected: Diameter, target: Diameter) -> Diameter {
    Diameter::computed_trade(round_size(1.5 * expected.mm() - 0.5 * target.mm()))
}

/// Where cuts end, and how.
#[derive(Debug, Clone, Copy)]
struct Target {
    /// The kind and pace of the last of them.
    cut: PlannedCut,
    mark: i64,
    /// As deep as it was planned, a cut may always be, in mm.
    planned: f64,
    /// How much farther out than the size a bar that runs out stands at its high side, in mm.
    beyond: f64,
}
