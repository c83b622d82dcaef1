//! After which cuts to measure, and how many measurements are worth their time.
//!
//! The last measurement decides how well the final size is known; an early one shows a dial that
//! counts otherwise than was thought, while there is still metal to save the part.

use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, Prices};
use crate::physics::spread::Outcome;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, Price, PriceStop, Probability, Quantity, ThermalExpansion, round_size,
};
use crate::shop::dial::Dial;
use crate::shop::gauge::Gauge;
use crate::standards::limits::{Feature, Limits};

use super::reach::on_the_limit;
use super::size_budget::{Reached, SizeAsk, SizeBudget};

/// Chance that somebody who learns takes a dial for what it is not, so that a cut removes twice as
/// much as was meant.
pub const SLIP: Sourced<Probability> = Sourced::new(
    Probability::computed_trade(0.1),
    "judgement, no source: one job in ten of somebody who learns",
    Standing::Estimate,
);

/// Chance that somebody who learns brings one cut to a wrong mark or a wrong turn.
pub const MISCOUNT: Sourced<Probability> = Sourced::new(
    Probability::computed_trade(0.03),
    "judgement, no source: three cuts in a hundred of somebody who learns",
    Standing::Estimate,
);

/// A cut that is planned: the size after it and how far the bar springs in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CutAhead {
    /// The size after it.
    pub after: Diameter,
    /// Spring of the bar, on the diameter.
    pub spring: DiameterError,
}

/// What a job comes to when it is measured after certain cuts only.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct StopsPriced {
    /// After which cuts, counted from 0.
    pub after: Vec<usize>,
    /// What scrap, rework and the stops are expected to cost.
    pub expected_price: Price,
}

/// After which cuts to measure.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct StopsChoice {
    /// The stops advised, or as many as were asked for, where they serve best.
    pub chosen: StopsPriced,
    /// Without any stop.
    pub none: StopsPriced,
    /// Each possible stop alone, in the order of the cuts.
    pub alone: Vec<StopsPriced>,
    /// With one stop more than chosen, where one more is possible.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub one_more: Option<StopsPriced>,
    /// What a person must be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub cautions: Vec<Caution>,
}

/// Asks after which cuts to measure.
///
/// E = p_s c_s + (1 - p_s) \[p_m (c_s + c_r)/2 + (1 - p_m) (c_s P(scrap) + c_r P(rework))\] + c_stop n
///
/// with p_s = P(slip) where no stop shows it in time, else 0; p_m = 1 - (1 - P(miscount))^m the
/// chance of at least one miscount that no stop can put right. A part is lost once at most: what a
/// slip has spoilt no miscount spoils again, and a part that was miscounted is not counted again for
/// the spread. So E without its stops is never more than the dearer of scrap and rework.
///
/// P(scrap) and P(rework) are those of the cheapest aim in the zone for the spread that the last stop
/// leaves. A slip, a dial taken for what it is not, is seen in time where a cut that removed twice as
/// much still left the part above its limits. A miscount, of which one in two leaves too little metal,
/// is put right by a stop after it; m counts the cuts after the last stop but the very last, which no
/// stop can put right.
///
/// # Units
/// Prices all in one currency, or all in minutes of work.
/// # Source
/// Expected price of a decision; the spread after JCGM 100. The chances of a slip and of a
/// miscount are judgement.
/// # Example
/// An invented job of four cuts.
/// ```
/// use turnwright::{
///     advice::stops::{CutAhead, StopsAsk}, physics::aim::Prices, standards::instrument::Instrument, Dial, DialReads,
///     Diameter, Division, DivisionsPerTurn, Limits, PriceRework, PriceScrap, PriceStop, Provenance,
/// };
/// let cross = Dial::new(DialReads::Radius, Division::from_mm(0.02)?, DivisionsPerTurn::new(100)?);
/// let zone = Limits::new(Diameter::from_mm(29.967)?, Diameter::from_mm(30.0)?)?;
/// let spring = "0.003 mm".parse()?;
/// let cuts = [33.2, 31.2, 30.38, 29.98].map(|d| Diameter::from_mm(d).map(|after| CutAhead { after, spring }));
/// let cuts = cuts.into_iter().collect::<Result<Vec<_>, _>>()?;
/// let prices = Prices::new(PriceScrap::from_value(25.0)?, PriceRework::from_value(3.0)?);
/// let stop = PriceStop::from_value(0.5)?;
/// let choice = StopsAsk::new(zone, "34 mm".parse()?, &cuts, &cross, Instrument::Micrometer, prices, stop)
///     .choose(&mut Provenance::default())?;
/// assert_eq!(choice.chosen.after, [0, 2]);
/// assert!(choice.chosen.expected_price < choice.none.expected_price);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct StopsAsk<'a> {
    limits: Limits,
    start: Diameter,
    cuts: &'a [CutAhead],
    dial: &'a Dial,
    gauge: Gauge,
    prices: Prices,
    stop: PriceStop,
    zero_was_measured: bool,
    spring_corrected: bool,
    dial_is_proved: bool,
    zero_is_touched: bool,
    along: Option<DiameterError>,
    expansion: Option<ThermalExpansion>,
    slip: Option<Probability>,
    miscount: Option<Probability>,
    count: Option<usize>,
    ends: Option<[Diameter; 2]>,
    least_cut: DiameterError,
    units: Units,
}

/// What comes of a job that was last measured after one of its cuts, or never.
#[derive(Debug, Clone)]
struct Ending {
    budget: SizeBudget,
    outcome: Outcome,
    price: Price,
}

impl<'a> StopsAsk<'a> {
    /// Cuts from a start to a zone, dial and instrument, and what scrap, rework and a stop cost.
    #[must_use]
    pub fn new(
        limits: Limits,
        start: Diameter,
        cuts: &'a [CutAhead],
        dial: &'a Dial,
        gauge: impl Into<Gauge>,
        prices: Prices,
        stop: PriceStop,
    ) -> Self {
        Self {
            limits,
            start,
            cuts,
            dial,
            gauge: gauge.into(),
            prices,
            stop,
            zero_was_measured: false,
            spring_corrected: false,
            dial_is_proved: false,
            zero_is_touched: false,
            along: None,
            expansion: None,
            slip: None,
            miscount: None,
            count: None,
            ends: None,
            least_cut: DiameterError::computed_trade(0.0),
            units: Units::Metric,
        }
    }

    crate::shop::setters! {
        /// With the difference of the spring along the part, on the diameter.
        with_spring_along along: DiameterError;
        /// With the expansion of the material.
        with_expansion expansion: ThermalExpansion;
        /// With this chance that the dial is taken for what it is not.
        with_slip slip: Probability;
        /// With this chance, for each cut, that it is brought to a wrong mark.
        with_miscount miscount: Probability;
        /// With this number of stops, whatever they are worth.
        with_count count: usize;
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    /// With a dial that was zeroed on a measured size, not on a touched one.
    #[must_use]
    pub fn with_measured_zero(mut self) -> Self {
        self.zero_was_measured = true;
        self
    }

    /// With the sizes that are aimed at, without a stop and with one, in place of the cheapest ones.
    pub(crate) fn with_ends(mut self, without: Diameter, measured: Diameter) -> Self {
        self.ends = Some([without, measured]);
        self
    }

    /// Where a part that is too large by less than this over its aim cannot be cut again, and is lost.
    pub(crate) fn with_least_cut(mut self, least: DiameterError) -> Self {
        self.least_cut = least;
        self
    }

    /// With a dial that an earlier surface proved: it is not misread any more.
    pub(crate) fn with_proved_dial(mut self) -> Self {
        self.dial_is_proved = true;
        self
    }

    /// With a zero touched anew, whatever proved the dial: no cut before it holds the spring of the bar.
    pub(crate) fn with_touched_zero(mut self) -> Self {
        self.zero_is_touched = true;
        self
    }

    /// With readings that are corrected for the spring to expect in the last cut.
    #[must_use]
    pub fn with_spring_corrected(mut self) -> Self {
        self.spring_corrected = true;
        self
    }

    /// The budget of the final size when the last measurement is made after cut `last`, or none is.
    ///
    /// # Errors
    /// `diameter`, beyond the sizes for which the instrument's error is known.
    pub fn budget_after(
        &self,
        last: Option<usize>,
        provenance: &mut Provenance,
    ) -> Result<SizeBudget, Error> {
        let (size, spring) = match self.cuts.last() {
            Some(cut) => (cut.after, cut.spring),
            None => (self.start, DiameterError::computed_trade(0.0)),
        };
        let from = |d: Diameter| DiameterError::computed_trade(round_size(d.mm() - size.mm()));
        let reached = match last.and_then(|at| self.cuts.get(at)) {
            Some(cut) => Reached::FromMeasured {
                taken: from(cut.after),
                spring: Some(cut.spring),
            },
            None if self.zero_was_measured => Reached::FromMeasured {
                taken: from(self.start),
                spring: None,
            },
            None => Reached::FromTouch {
                taken: from(self.start),
            },
        };
        let mut ask = SizeAsk::new(size, self.dial, self.gauge, reached).with_spring(spring);
        if self.spring_corrected {
            ask = ask.with_spring_corrected();
        }
        if let Some(along) = self.along {
            ask = ask.with_spring_along(along);
        }
        if let Some(expansion) = self.expansion {
            ask = ask.with_expansion(expansion);
        }
        ask.budget(provenance)
    }

    /// The stops.
    ///
    /// # Errors
    /// `cuts`, when there is none or one leaves more than the one before, the last one a size outside of
    /// the zone, or a spring is negative; `measuring_stops`, when more stops are asked for than there
    /// are cuts to measure after; as [`budget_after`](Self::budget_after).
    pub fn choose(&self, provenance: &mut Provenance) -> Result<StopsChoice, Error> {
        Ok(self.choose_with_budget(provenance)?.0)
    }

    /// The stops, and the budget of the final size with them.
    ///
    /// # Errors
    /// As [`choose`](Self::choose).
    pub(crate) fn choose_with_budget(
        &self,
        provenance: &mut Provenance,
    ) -> Result<(StopsChoice, SizeBudget, Outcome), Error> {
        self.check()?;
        let places = self.cuts.len() - 1;
        let ended =
            |last: Option<usize>, provenance: &mut Provenance| self.ending(last, provenance);
        let without = ended(None, provenance)?;
        let mut ending = Vec::with_capacity(places);
        // After whichever cut it is measured, the constants are the same.
        let mut again = Provenance::deaf();
        for at in 0..places {
            let provenance = if at == 0 {
                &mut *provenance
            } else {
                &mut again
            };
            ending.push(ended(Some(at), provenance)?);
        }
        let end_of = |after: &[usize]| after.last().map_or(&without, |last| &ending[*last]);
        let mut chance =
            |what: &'static str, given: Option<Probability>, usual: &Sourced<Probability>| {
                let chance = match given {
                    Some(own) => &Sourced::new(own, "given by the asker", Standing::Given),
                    None => usual,
                };
                provenance.open(what, chance).trade()
            };
        let slip = match self.dial_is_proved {
            true => 0.0,
            false => chance("chance that a dial is misread", self.slip, &SLIP),
        };
        let miscount = chance("chance that a cut is miscounted", self.miscount, &MISCOUNT);
        let (scrap, rework) = (self.prices.scrap().trade(), self.prices.rework().trade());
        let priced = |after: Vec<usize>| {
            let end = end_of(&after).price.trade();
            let in_time = after.iter().any(|at| self.shows_a_slip(*at));
            let unseen = places - after.last().map_or(0, |last| last + 1);
            let slipped = if in_time { 0.0 } else { slip };
            let miscounted = 1.0 - (0..unseen).fold(1.0, |none, _| none * (1.0 - miscount));
            let counted = miscounted * 0.5 * (scrap + rework) + (1.0 - miscounted) * end;
            let price = slipped * scrap
                + (1.0 - slipped) * counted
                + self.stop.trade() * after.len() as f64;
            StopsPriced {
                after,
                expected_price: Price::computed_trade(price),
            }
        };
        // With one stop more a plan is cheapest with the cheapest place for it beside those it has.
        let add = |have: &StopsPriced| {
            let covered = have.after.iter().any(|at| self.shows_a_slip(*at));
            (0..places)
                .filter(|at| !have.after.contains(at))
                .map(|at| {
                    let mut after = have.after.clone();
                    after.push(at);
                    after.sort_unstable();
                    priced(after)
                })
                .min_by(|a, b| {
                    let by_price = a.expected_price.cmp(&b.expected_price);
                    // Of equal ones the first that shows a slip; else the nearest to the end.
                    by_price.then_with(|| match covered {
                        true => b.after.cmp(&a.after),
                        false => a.after.cmp(&b.after),
                    })
                })
        };
        let none = priced(Vec::new());
        let mut chosen = none.clone();
        let mut one_more = add(&chosen);
        match self.count {
            Some(count) => {
                while chosen.after.len() < count {
                    let Some(more) = one_more else { break };
                    one_more = add(&more);
                    chosen = more;
                }
            }
            None => {
                // Two stops may pay where one alone does not, and a third never does: it neither ends
                // the job nor shows a slip that the other two do not.
                let pair = one_more.as_ref().and_then(add);
                for candidate in [one_more.clone(), pair].into_iter().flatten() {
                    if candidate.expected_price < chosen.expected_price {
                        chosen = candidate;
                    }
                }
                one_more = add(&chosen);
            }
        }
        let Ending {
            budget, outcome, ..
        } = end_of(&chosen.after).clone();
        let caution = match self.ends {
            // Who says where the cuts end knows where they were aimed.
            Some(_) => None,
            None => {
                let spread = budget.budget().spread();
                on_the_limit(self.limits, spread, self.prices, Feature::Shaft, self.units)
            }
        };
        let choice = StopsChoice {
            cautions: caution.into_iter().collect(),
            chosen,
            none,
            alone: (0..places).map(|at| priced(vec![at])).collect(),
            one_more,
        };
        Ok((choice, budget, outcome))
    }

    fn ending(&self, last: Option<usize>, provenance: &mut Provenance) -> Result<Ending, Error> {
        let budget = self.budget_after(last, provenance)?;
        let spread = budget.budget().spread();
        let come_out = |size, spread| {
            aim::price_to_cut_again(self.limits, size, spread, self.prices, self.least_cut)
        };
        let (outcome, price) = match (self.ends, last, self.cuts.last()) {
            // Where no cut is measured and nothing is corrected, a bar comes out too large by its spring, not
            // too large or too small by up to as much. A surface before it was measured with a spring of its own.
            (Some([end, _]), None, Some(cut))
                if (!self.dial_is_proved || self.zero_is_touched) && !self.spring_corrected =>
            {
                let end = Diameter::computed_trade(end.mm() + cut.spring.mm());
                let ask = self.clone().with_spring_corrected();
                let spread = ask
                    .budget_after(None, &mut Provenance::deaf())?
                    .budget()
                    .spread();
                come_out(end, spread)
            }
            (Some([end, _]), None, _) | (Some([_, end]), Some(_), _) => come_out(end, spread),
            (None, ..) => {
                let best = aim::best_aim_in_zone(self.limits, spread, self.prices, Feature::Shaft);
                (best.outcome, best.expected_price)
            }
        };
        Ok(Ending {
            budget,
            outcome,
            price,
        })
    }

    /// True when a dial that takes twice as much off is found out after cut `at` with the part still
    /// to be saved.
    fn shows_a_slip(&self, at: usize) -> bool {
        let twice = 2.0 * self.cuts[at].after.mm() - self.start.mm();
        round_size(twice) > round_size(self.limits.largest().mm())
    }

    fn check(&self) -> Result<(), Error> {
        if self.cuts.is_empty() {
            return Err(Error::new(
                ErrorKind::MissingField,
                "cuts",
                "no cut",
                "the cuts that are planned, in order",
                "give the size after each cut",
            ));
        }
        let sizes = || std::iter::once(self.start).chain(self.cuts.iter().map(|cut| cut.after));
        if let Some((before, after)) = sizes().zip(sizes().skip(1)).find(|(a, b)| b >= a) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "cuts",
                format!("{after} after {before}"),
                "sizes that fall from cut to cut",
                "give the sizes in the order of the cuts; a bar cannot grow",
            ));
        }
        let places = self.cuts.len() - 1;
        let last = self.cuts[places].after;
        if !self.limits.contains(last) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                format!("cuts[{places}].after"),
                last.to_string(),
                format!(
                    "a size in the zone after the last cut, from {} to {}",
                    self.limits.smallest(),
                    self.limits.largest()
                ),
                "give all cuts down to the finished size, or the limits of the size that they end at",
            ));
        }
        let pushed_in = |cut: &CutAhead| cut.spring.trade() < 0.0;
        if let Some(at) = self.cuts.iter().position(pushed_in) {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                format!("cuts[{at}].spring"),
                self.cuts[at].spring.to_string(),
                "a spring of 0 or more: a bar springs away from the tool",
                "give by how much the diameter comes out too large, without a sign",
            ));
        }
        if let Some(count) = self.count
            && count > places
        {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "measuring_stops",
                count.to_string(),
                format!("at most {places}: one after each cut but the last"),
                "ask for fewer, or leave the number to the figures",
            ));
        }
        Ok(())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::dial::DivisionsPerTurn;
    use crate::quantity::{Division, PriceRework, PriceScrap};
    use crate::shop::dial::DialReads;
    use crate::standards::instrument::Instrument;
    use proptest::prelude::*;

    fn mm(size: f64) -> Diameter {
        Diameter::from_mm(size).unwrap()
    }

    fn chance(share: f64) -> Probability {
        Probability::from_value(share).unwrap()
    }

    /// Four cuts of an invented shaft, with chances of a slip and of a miscount.
    fn choose(prices: Prices, stop: f64, slip: f64, miscount: f64) -> StopsChoice {
        let dial = Dial::new(
            DialReads::Diameter,
            Division::from_mm(0.02).unwrap(),
            DivisionsPerTurn::new(250).unwrap(),
        );
        let spring = |mm| DiameterError::from_mm(mm).unwrap();
        let cuts = [(33.0, 0.02), (31.5, 0.02), (30.4, 0.02), (29.984, 0.01)];
        let cuts = cuts.map(|(d, s)| CutAhead {
            after: mm(d),
            spring: spring(s),
        });
        let limits = Limits::new(mm(29.967), mm(30.0)).unwrap();
        let stop = PriceStop::from_value(stop).unwrap();
        StopsAsk::new(
            limits,
            mm(34.0),
            &cuts,
            &dial,
            Instrument::Micrometer,
            prices,
            stop,
        )
        .with_slip(chance(slip))
        .with_miscount(chance(miscount))
        .choose(&mut Provenance::default())
        .unwrap()
    }

    fn prices(scrap: f64, rework: f64) -> Prices {
        Prices::new(
            PriceScrap::from_value(scrap).unwrap(),
            PriceRework::from_value(rework).unwrap(),
        )
    }

    /// What all the sets of stops that are told of cost without the stops themselves.
    fn losses(found: &StopsChoice, stop: f64) -> Vec<f64> {
        let told = [&found.none, &found.chosen]
            .into_iter()
            .chain(&found.alone)
            .chain(&found.one_more);
        told.map(|priced| priced.expected_price.trade() - stop * priced.after.len() as f64)
            .collect()
    }

    #[test]
    fn a_certain_slip_costs_the_part_and_nothing_else() {
        let dear = prices(30.0, 4.0);
        let none = |slip, miscount| {
            choose(dear, 0.5, slip, miscount)
                .none
                .expected_price
                .trade()
        };
        assert!((none(1.0, 0.0) - 30.0).abs() < 1e-12);
        assert!((none(1.0, 1.0) - 30.0).abs() < 1e-12);
        // One of two miscounted parts is lost, the other has metal left.
        assert!((none(0.0, 1.0) - 17.0).abs() < 1e-12);
    }

    proptest! {
        #[test]
        fn a_part_is_lost_once_at_most(
            slip in 0.0_f64..=1.0, miscount in 0.0_f64..=1.0, more in 0.0_f64..=1.0,
            scrap in 0.1_f64..100.0, share in 0.01_f64..=1.0,
        ) {
            // A lost part is the dearer one: then both mistakes only ever cost.
            let (rework, stop) = (scrap * share, 0.01);
            let price = |slip, miscount| choose(prices(scrap, rework), stop, slip, miscount);
            let (slip_more, miscount_more) = (slip + (1.0 - slip) * more, miscount + (1.0 - miscount) * more);
            let found = price(slip, miscount);
            // The sum of two products of shares that make one: its rounding.
            let dearest = scrap * (1.0 + 1e-12);
            prop_assert!(losses(&found, stop).iter().all(|loss| *loss <= dearest));
            for worse in [price(slip_more, miscount), price(slip, miscount_more)] {
                for (before, after) in found.alone.iter().zip(&worse.alone) {
                    let (before, after) = (before.expected_price.trade(), after.expected_price.trade());
                    prop_assert!(after >= before * (1.0 - 1e-12));
                }
                prop_assert!(worse.none.expected_price.trade() >= found.none.expected_price.trade() * (1.0 - 1e-12));
            }
            // Dearer rework than scrap: still never more than the dearer one.
            let other = choose(prices(rework, scrap), stop, slip, miscount);
            prop_assert!(losses(&other, stop).iter().all(|loss| *loss <= dearest));
        }
    }

    #[test]
    fn without_mistakes_only_the_spread_costs() {
        let (dear, limits) = (
            prices(30.0, 4.0),
            Limits::new(mm(29.967), mm(30.0)).unwrap(),
        );
        let found = choose(dear, 0.5, 0.0, 0.0);
        let dial = Dial::new(
            DialReads::Diameter,
            Division::from_mm(0.02).unwrap(),
            DivisionsPerTurn::new(250).unwrap(),
        );
        let spring = |mm| DiameterError::from_mm(mm).unwrap();
        // The last stop alone: measured at 30.4 mm with a spring of 20 um, the last cut springs 10 um.
        let reached = Reached::FromMeasured {
            taken: spring(0.416),
            spring: Some(spring(0.02)),
        };
        let budget = SizeAsk::new(mm(29.984), &dial, Instrument::Micrometer, reached)
            .with_spring(spring(0.01))
            .budget(&mut Provenance::default())
            .unwrap();
        let spread = budget.budget().spread();
        let best = aim::best_aim_in_zone(limits, spread, dear, Feature::Shaft);
        let told = found.alone[2].expected_price.trade() - 0.5;
        assert!((told - best.expected_price.trade()).abs() < 1e-12);
    }
}
