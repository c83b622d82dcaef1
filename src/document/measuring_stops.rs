//! After which cuts to measure, and how many measurements are worth their time.
//!
//! | field | what |
//! |---|---|
//! | `limits` | the zone |
//! | `start` | the diameter that was touched or measured |
//! | `cuts` | `[{ after, spring? }]`: the size after each cut in order, and how far the bar springs in it, on the diameter |
//! | `dial` or `lathe` | the dial of the cross slide, or a lathe with its `cross_slide` |
//! | `instrument` | as in `within_reach` |
//! | `price_scrap`, `price_rework`, `price_stop` | of a lost part, another cut, a measuring stop; all in one currency, or in minutes |
//! | `zero_was_measured?` | true where the dial was zeroed on a measured size |
//! | `slip?`, `miscount?` | the chance that the dial is taken for what it is not; for each cut, that it is brought to a wrong mark |
//! | `spring_along?`, `expansion?` | as in `within_reach` |
//! | `of?` | `"shaft"`; a hole is refused |
//! | `measuring_stops?` | this number of stops, whatever they are worth |

use serde::Serialize;

use super::aim::limits_and_feature;
use super::within_reach::cross_dial;
use crate::advice::stops::{CutAhead, StopsAsk, StopsChoice, StopsPriced};
use crate::caution::Caution;
use crate::error::Error;
use crate::physics::aim::Prices;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, PriceStop, Probability, Quantity, ThermalExpansion,
};
use crate::shop::dial::Dial;
use crate::shop::gauge::Gauge;
use crate::standards::limits::{Feature, Limits};

const FIELDS: &[&str] = &[
    "limits",
    "start",
    "cuts",
    "dial",
    "lathe",
    "instrument",
    "price_scrap",
    "price_rework",
    "price_stop",
    "zero_was_measured",
    "slip",
    "miscount",
    "spring_along",
    "expansion",
    "measuring_stops",
    "of",
];

/// A zone, cuts, a dial, an instrument and prices.
///
/// ```
/// use turnwright::document::measuring_stops::Question;
/// # use turnwright::{advice::stops::CutAhead, physics::aim::Prices, standards::instrument::Instrument,
/// #     Dial, DialReads, Diameter, Division, DivisionsPerTurn, Limits, PriceRework, PriceScrap, PriceStop};
/// let cross = Dial::new(DialReads::Diameter, Division::from_inch(0.001)?, DivisionsPerTurn::new(100)?);
/// let zone = Limits::new(Diameter::from_inch(1.187)?, Diameter::from_inch(1.188)?)?;
/// let spring = "0.0002 in".parse()?;
/// let cuts = [1.35, 1.25, 1.21875, 1.1875].map(|d| Diameter::from_inch(d).map(|after| CutAhead { after, spring }));
/// let cuts = cuts.into_iter().collect::<Result<Vec<_>, _>>()?;
/// let prices = Prices::new(PriceScrap::from_value(30.0)?, PriceRework::from_value(4.0)?);
/// let stop = PriceStop::from_value(0.5)?;
/// let answer = Question::new(zone, "1.375 in".parse()?, cuts, cross, Instrument::Micrometer, prices, stop).answer()?;
/// assert_eq!(answer.chosen.after, [0, 2]);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    limits: Limits,
    start: Diameter,
    cuts: Vec<CutAhead>,
    dial: Dial,
    gauge: Gauge,
    prices: Prices,
    stop: PriceStop,
    zero_was_measured: bool,
    slip: Option<Probability>,
    miscount: Option<Probability>,
    spring_along: Option<DiameterError>,
    expansion: Option<ThermalExpansion>,
    count: Option<usize>,
    units: Units,
}

/// The stops.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The stops advised, or as many as were asked for; cuts are counted from 0.
    pub chosen: StopsPriced,
    /// Without any stop.
    pub none: StopsPriced,
    /// Each possible stop alone.
    pub alone: Vec<StopsPriced>,
    /// With one stop more than chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub one_more: Option<StopsPriced>,
    /// What a person must be told.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Caution>,
    /// The same for a person, cuts counted from 1.
    pub text: String,
    /// Where the constants come from.
    pub provenance: Provenance,
}

impl Question {
    /// Cuts from a start to a zone, dial and instrument, and what scrap, rework and a stop cost.
    #[must_use]
    pub fn new(
        limits: Limits,
        start: Diameter,
        cuts: Vec<CutAhead>,
        dial: Dial,
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
            slip: None,
            miscount: None,
            spring_along: None,
            expansion: None,
            count: None,
            units: Units::Metric,
        }
    }

    crate::shop::setters! {
        /// With this chance that the dial is taken for what it is not.
        with_slip slip: Probability;
        /// With this chance, for each cut, that it is brought to a wrong mark.
        with_miscount miscount: Probability;
        /// With the difference of the spring along the part, on the diameter.
        with_spring_along spring_along: DiameterError;
        /// With the expansion of the material.
        with_expansion expansion: ThermalExpansion;
        /// With this number of stops.
        with_count count: usize;
    }

    /// With a dial that was zeroed on a measured size.
    #[must_use]
    pub fn with_measured_zero(mut self) -> Self {
        self.zero_was_measured = true;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let cuts = f.need_item(
            "cuts",
            "the cuts: [{ \"after\": \"31 mm\" }, ..]",
            |tree, path| {
                list(tree, path, |tree, path| {
                    let f = Fields::of(tree, path, "a cut")?.knowing(&["after", "spring"]);
                    let cut = CutAhead {
                        after: f.need_quantity("after")?,
                        spring: f
                            .quantity("spring")?
                            .unwrap_or(DiameterError::computed_trade(0.0)),
                    };
                    f.finish()?;
                    Ok(cut)
                })
            },
        )?;
        let (limits, feature) = limits_and_feature(&f)?;
        if feature == Feature::Hole {
            let field = if f.has("of") { "of" } else { "limits" };
            return Err(Error::not_offered(
                &f.path(field),
                "measuring stops in a hole: this question is of outside diameters, whose sizes fall from cut to cut",
                "ask about a shaft; for one size in a hole ask within_reach",
            ));
        }
        let mut question = Self::new(
            limits,
            f.need_quantity("start")?,
            cuts,
            cross_dial(&f)?,
            f.need_item("instrument", "what it is measured with", Gauge::read)?,
            Prices::new(
                f.need_quantity("price_scrap")?,
                f.need_quantity("price_rework")?,
            ),
            f.need_quantity("price_stop")?,
        );
        question.units = units;
        question.zero_was_measured = f.flag("zero_was_measured")?.unwrap_or(false);
        question.slip = f.quantity("slip")?;
        question.miscount = f.quantity("miscount")?;
        question.spring_along = f.quantity("spring_along")?;
        question.expansion = f.quantity("expansion")?;
        question.count = f.count("measuring_stops")?.map(|count| count as usize);
        f.finish()?;
        Ok(question)
    }

    /// The stops.
    ///
    /// # Errors
    /// As [`StopsAsk::choose`].
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = Provenance::default();
        let mut ask = StopsAsk::new(
            self.limits,
            self.start,
            &self.cuts,
            &self.dial,
            self.gauge,
            self.prices,
            self.stop,
        )
        .with_units(self.units);
        if self.zero_was_measured {
            ask = ask.with_measured_zero();
        }
        if let Some(slip) = self.slip {
            ask = ask.with_slip(slip);
        }
        if let Some(miscount) = self.miscount {
            ask = ask.with_miscount(miscount);
        }
        if let Some(along) = self.spring_along {
            ask = ask.with_spring_along(along);
        }
        if let Some(expansion) = self.expansion {
            ask = ask.with_expansion(expansion);
        }
        if let Some(count) = self.count {
            ask = ask.with_count(count);
        }
        let stops = (ask.choose(&mut provenance)).map_err(|error| match error.field() {
            "diameter" => error.at("instrument"),
            _ => error,
        })?;
        Ok(Answer {
            text: words(&stops),
            chosen: stops.chosen,
            none: stops.none,
            alone: stops.alone,
            one_more: stops.one_more,
            cautions: stops.cautions,
            provenance,
        })
    }
}

fn words(stops: &StopsChoice) -> String {
    let cuts = |after: &[usize]| {
        let cuts: Vec<String> = after.iter().map(|at| (at + 1).to_string()).collect();
        cuts.join(" and ")
    };
    let mut text = match stops.chosen.after.as_slice() {
        [] => String::from("No measuring stop before the last cut"),
        after => format!("Measure after cut {}", cuts(after)),
    };
    text.push_str(&format!(
        ": {:.2} expected, stops included; without any stop {:.2}",
        stops.chosen.expected_price.trade(),
        stops.none.expected_price.trade()
    ));
    let best = stops.alone.iter().min_by_key(|alone| alone.expected_price);
    if let Some(best) = best {
        text.push_str(&format!(
            "; of one stop alone the best is after cut {}, {:.2}",
            cuts(&best.after),
            best.expected_price.trade()
        ));
    }
    if let Some(more) = &stops.one_more {
        text.push_str(&format!(
            "; one more comes to {:.2}",
            more.expected_price.trade()
        ));
    }
    text.push('.');
    text
}
