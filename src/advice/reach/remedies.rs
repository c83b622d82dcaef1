//! What would bring a task within reach: each remedy tried alone, then in pairs, then all.

use super::{
    COMPOUND_TRAVEL, LEFT_TO_TAKE, ReachAsk, RemediesTogether, Remedy, RemedyTried, Task,
    WORTH_TELLING, guard,
};
use crate::advice::size_budget::Reached;
use crate::provenance::Provenance;
use crate::quantity::{Diameter, Division, Probability, Quantity, Travel};
use crate::shop::dial::{Dial, DialReads, Ring};
use crate::shop::gauge::Gauge;
use crate::standards::instrument::{Instrument, largest_error};

impl ReachAsk<'_> {
    /// The remedies that can be tried here.
    pub(super) fn candidates(&self, aim: Diameter) -> Vec<Remedy> {
        let mut candidates = Vec::with_capacity(5);
        let known = largest_error(Instrument::Micrometer, self.size.size()).is_ok();
        match self.size.gauge().instrument() {
            Instrument::FineLeverIndicator => {}
            Instrument::Micrometer => candidates.push(Remedy::FineLeverIndicator),
            _ if known => candidates.push(Remedy::Micrometer),
            _ => candidates.push(Remedy::FineLeverIndicator),
        }
        if self.set_over().is_some() {
            candidates.push(Remedy::CompoundSetOver);
        }
        let spring = self.size.spring();
        match self.size.reached() {
            Reached::FromTouch { .. } | Reached::FromMeasured { spring: None, .. } => {
                if spring.is_some_and(|spring| spring.mm() > 0.0) {
                    candidates.push(Remedy::CorrectForSpring);
                }
                candidates.push(Remedy::MeasureBeforeTheLastCut);
            }
            Reached::FromMeasured {
                spring: Some(before),
                ..
            } if spring.is_some_and(|spring| spring != before) => {
                candidates.push(Remedy::MeasureBeforeTheLastCut);
            }
            Reached::FromMeasured { taken, .. } if taken > LEFT_TO_TAKE.value => {
                candidates.push(Remedy::MeasureNearer);
            }
            Reached::FromMeasured { .. } => {}
        }
        if self.with_centre.is_some() {
            candidates.push(Remedy::Centre);
        }
        if aim != self.limits.middle() {
            candidates.push(Remedy::AimAtTheMiddle);
        }
        candidates
    }

    /// The dial by which the compound slide feeds the diameter, set over to a tenth; none where it feeds no
    /// finer than the cross slide.
    fn set_over(&self) -> Option<Dial> {
        let cross = self.size.dial();
        let set_over = match self.compound {
            Some(compound) => {
                let a_tenth = Division::computed_trade(0.1 * compound.division().mm());
                let dial = Dial::new(DialReads::Radius, a_tenth, compound.divisions_per_turn());
                match compound.backlash() {
                    Some(backlash) => {
                        dial.with_backlash(Travel::computed_trade(0.1 * backlash.mm()))
                    }
                    None => dial,
                }
            }
            // It moves beside what a readout of the cross slide sees.
            None if cross.ring() == Ring::Readout => return None,
            None => cross.finer_by_ten(),
        };
        (set_over.diameter_per_division() < cross.diameter_per_division()).then_some(set_over)
    }

    /// What remedies bring together; none where they cannot be had so.
    fn with_all(
        &self,
        remedies: &[Remedy],
        task: &Task,
        provenance: &mut Provenance,
    ) -> Option<(Probability, bool)> {
        let set_over = self.set_over();
        let mut ask = self.size.clone();
        for (remedy, instrument) in [
            (Remedy::Micrometer, Instrument::Micrometer),
            (Remedy::FineLeverIndicator, Instrument::FineLeverIndicator),
        ] {
            if remedies.contains(&remedy) {
                ask = ask.with_gauge(Gauge::new(instrument));
            }
        }
        if remedies.contains(&Remedy::CorrectForSpring) {
            ask = ask.with_spring_corrected();
        }
        if let Some(centre) = self
            .with_centre
            .filter(|_| remedies.contains(&Remedy::Centre))
        {
            ask = ask
                .with_spring(centre.spring)
                .with_spring_along(centre.along);
            if let Reached::FromMeasured {
                taken,
                spring: Some(_),
            } = ask.reached()
            {
                ask = ask.with_reached(Reached::FromMeasured {
                    taken,
                    spring: Some(centre.spring),
                });
            }
        }
        let again = [Remedy::MeasureBeforeTheLastCut, Remedy::MeasureNearer];
        if again.iter().any(|remedy| remedies.contains(remedy)) {
            let left = provenance.open("left on the diameter when measured again", &LEFT_TO_TAKE);
            let (Reached::FromTouch { taken } | Reached::FromMeasured { taken, .. }) =
                ask.reached();
            let spring = ask.spring();
            ask = ask.with_reached(Reached::FromMeasured {
                taken: if taken < left { taken } else { left },
                spring,
            });
        }
        if remedies.contains(&Remedy::CompoundSetOver) {
            let (Reached::FromTouch { taken } | Reached::FromMeasured { taken, .. }) =
                ask.reached();
            let travel = provenance.open("travel of a compound slide", &COMPOUND_TRAVEL);
            // Ten of its marks feed what one did: half the diameter, ten times over.
            if 5.0 * taken.trade() > travel.trade() {
                return None;
            }
            ask = ask.with_dial(set_over.as_ref()?);
        }
        let mut unrecorded = Provenance::deaf();
        // An instrument whose error is not known at this size is no remedy.
        let budget = ask.budget(&mut unrecorded).ok()?;
        let measuring = ask.measuring_budget(&mut unrecorded).ok()?;
        let at_the_middle = remedies.contains(&Remedy::AimAtTheMiddle);
        let good = self.aimed(&budget, at_the_middle).1.good;
        let provable = self.limits.inside(guard(Some(&measuring))).is_some();
        Some((good, provable && good >= task.least_good))
    }

    pub(super) fn remedies(
        &self,
        candidates: &[Remedy],
        good_now: Probability,
        task: &Task,
        provenance: &mut Provenance,
    ) -> Vec<RemedyTried> {
        let worth = provenance.open("gain from which a remedy is told of", &WORTH_TELLING);
        let mut tried: Vec<RemedyTried> = candidates
            .iter()
            .filter_map(|remedy| {
                let (good, enough) = self.with_all(&[*remedy], task, provenance)?;
                (enough || good.trade() - good_now.trade() >= worth.trade()).then_some(
                    RemedyTried {
                        remedy: *remedy,
                        good,
                        enough,
                    },
                )
            })
            .collect();
        tried.sort_by_key(|tried| std::cmp::Reverse(tried.good));
        tried
    }

    /// The first two remedies that together are enough, or all of them.
    pub(super) fn together(
        &self,
        candidates: &[Remedy],
        task: &Task,
        provenance: &mut Provenance,
    ) -> Option<RemediesTogether> {
        let pairs = candidates.iter().enumerate().flat_map(|(at, first)| {
            let others = candidates[at + 1..].iter();
            others.map(move |second| vec![*first, *second])
        });
        let mut found = None;
        for remedies in pairs.chain([candidates.to_vec()]) {
            if let Some((good, enough)) = self.with_all(&remedies, task, provenance) {
                let all = remedies.len() == candidates.len();
                if enough || all {
                    found = Some(RemediesTogether {
                        remedies,
                        good,
                        enough,
                    });
                }
                if enough {
                    break;
                }
            }
        }
        found.filter(|found| found.remedies.len() > 1)
    }
}
