//! After which cuts to measure, and how many measurements are worth their time.
//!
//! The last measurement decides how well the final size is known; an early one shows a dial that
//! counts otherwise than was thought, while there is still metal to save the part.

use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, Prices};
use crate::physics::spread::SizeSpread;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    Diameter, DiameterError, Price, PriceStop, Probability, Quantity, ThermalExpansion, round_size,
};
use crate::shop::dial::Dial;
use crate::shop::gauge::Gauge;
use crate::standards::limits::{Feature, Limits};

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
}

/// Asks after which cuts to measure.
///
/// E = c_s P(scrap) + c_r P(rework) + c_s P(slip) \[no stop in time\] + m (c_s + c_r) / 2 P(miscount)
/// + c_stop n
///
/// with the best aim for the spread that the last stop leaves (the middle of the zone where the
/// spread is too wide for an aim). A slip, a dial taken for what it is not, is seen in time where a
/// cut that removed twice as much still left the part above its limits. A miscount, of which one in
/// two leaves too little metal, is put right by a stop after it; m counts the cuts after the last
/// stop but the very last, which no stop can put right.
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
    along: Option<DiameterError>,
    expansion: Option<ThermalExpansion>,
    slip: Option<Probability>,
    miscount: Option<Probability>,
    count: Option<usize>,
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
            along: None,
            expansion: None,
            slip: None,
            miscount: None,
            count: None,
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

    /// With a dial that was zeroed on a measured size, not on a touched one.
    #[must_use]
    pub fn with_measured_zero(mut self) -> Self {
        self.zero_was_measured = true;
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
    /// `cuts`, when there is none or one leaves more than the one before; `measuring_stops`, when more
    /// stops are asked for than there are cuts to measure after; as [`budget_after`](Self::budget_after).
    pub fn choose(&self, provenance: &mut Provenance) -> Result<StopsChoice, Error> {
        self.check()?;
        let places = self.cuts.len() - 1;
        let final_price = |last: Option<usize>, provenance: &mut Provenance| {
            let spread = self.budget_after(last, provenance)?.budget().spread();
            Ok::<f64, Error>(expected(self.limits, spread, self.prices).trade())
        };
        let without = final_price(None, provenance)?;
        let mut ending = Vec::with_capacity(places);
        for at in 0..places {
            ending.push(final_price(Some(at), provenance)?);
        }
        let mut chance = |what: &str, given: Option<Probability>, usual: &Sourced<Probability>| {
            let chance = match given {
                Some(own) => &Sourced::new(own, "given by the asker", Standing::Given),
                None => usual,
            };
            provenance.open(what, chance).trade()
        };
        let slip = chance("chance that a dial is misread", self.slip, &SLIP);
        let miscount = chance("chance that a cut is miscounted", self.miscount, &MISCOUNT);
        let (scrap, rework) = (self.prices.scrap().trade(), self.prices.rework().trade());
        let lost = slip * scrap;
        let each_miscount = 0.5 * miscount * (scrap + rework);
        let priced = |after: Vec<usize>| {
            let end = after.last().map_or(without, |last| ending[*last]);
            let in_time = after.iter().any(|at| self.shows_a_slip(*at));
            let unseen = places - after.last().map_or(0, |last| last + 1);
            let price = end
                + each_miscount * unseen as f64
                + if in_time { 0.0 } else { lost }
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
        Ok(StopsChoice {
            chosen,
            none,
            alone: (0..places).map(|at| priced(vec![at])).collect(),
            one_more,
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

/// What scrap and rework are expected to cost at the best aim, at the middle where there is none.
fn expected(limits: Limits, spread: SizeSpread, prices: Prices) -> Price {
    match aim::best_aim(limits, spread, prices, Feature::Shaft) {
        Ok(best) => best.expected_price,
        Err(_) => aim::expected_price(limits, limits.middle(), spread, prices, Feature::Shaft),
    }
}
