//! The size that is the cheapest to aim for.

use serde::Serialize;

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::aim::{
    Prices, best_aim, best_aim_by, best_aim_in_zone, expected_price, largest_standard_uncertainty,
};
use crate::physics::spread::{Outcome, SizeSpread, outcome};
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, HalfWidth, Price, PriceRework, PriceScrap, Probability, Quantity, StandardUncertainty,
};
use crate::standards::limits::{Feature, Limits};
use crate::standards::stated_limits::Stated;

const FIELDS: &[&str] = &[
    "limits",
    "standard_uncertainty",
    "half_width",
    "price_scrap",
    "price_rework",
    "of",
];

/// Limits, a spread, and what lost parts and rework cost.
///
/// ```
/// use turnwright::document::aim::Question;
/// use turnwright::physics::{aim::Prices, spread::SizeSpread};
/// use turnwright::{Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let answer = Question::new(limits, spread, Prices::new("10".parse()?, "1".parse()?))
///     .with_feature(Feature::Shaft)
///     .answer()?;
/// assert!(answer.aim > answer.middle.aim && answer.expected_price < answer.middle.expected_price);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
    units: Units,
}

/// A size aimed for, and what comes of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Aimed {
    /// The size.
    pub aim: Diameter,
    /// Share of good parts.
    pub good: Probability,
    /// Share of parts with metal left.
    pub rework: Probability,
    /// Share of lost parts.
    pub scrap: Probability,
    /// What a part costs on average by not coming out good.
    pub expected_price: Price,
}

/// The size to aim for, beside two others.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The size that costs least.
    pub aim: Diameter,
    /// Share of good parts there.
    pub good: Probability,
    /// Share of parts with metal left.
    pub rework: Probability,
    /// Share of lost parts.
    pub scrap: Probability,
    /// What a part costs on average by not coming out good.
    pub expected_price: Price,
    /// The same in the middle of the zone.
    pub middle: Aimed,
    /// The same at the limit of most metal (ISO 2692, maximum material size).
    pub max_material_limit: Aimed,
    /// The largest standard uncertainty of the whole spread, both its parts made wider alike, with
    /// which the cheapest aim still lies in the zone; none where any will do.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub largest_standard_uncertainty: Option<StandardUncertainty>,
    /// A table for people.
    pub text: String,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
}

impl Aimed {
    fn of(aim: Diameter, come_out: Outcome, expected_price: Price) -> Self {
        Self {
            aim,
            good: come_out.good,
            rework: come_out.rework,
            scrap: come_out.scrap,
            expected_price,
        }
    }

    /// The cheapest aim.
    pub(super) fn best(
        limits: Limits,
        spread: SizeSpread,
        prices: Prices,
        feature: Feature,
    ) -> Result<Self, Error> {
        let best = best_aim(limits, spread, prices, feature)?;
        Ok(Self::of(best.aim, best.outcome, best.expected_price))
    }

    /// The cheapest aim in the zone: its limit, where the cheapest of all lies outside.
    pub(super) fn best_in_zone(
        limits: Limits,
        spread: SizeSpread,
        prices: Prices,
        feature: Feature,
    ) -> Self {
        let best = best_aim_in_zone(limits, spread, prices, feature);
        Self::of(best.aim, best.outcome, best.expected_price)
    }

    /// The cheapest aim in the zone where parts come out so.
    pub(super) fn best_by(
        limits: Limits,
        prices: Prices,
        come_out: impl Fn(Diameter) -> Outcome,
    ) -> Self {
        let best = best_aim_by(limits, prices, come_out);
        Self::of(best.aim, best.outcome, best.expected_price)
    }

    /// Any aim.
    fn at(
        aim: Diameter,
        limits: Limits,
        spread: SizeSpread,
        prices: Prices,
        feature: Feature,
    ) -> Self {
        Self::of(
            aim,
            outcome(limits, aim, spread, feature),
            expected_price(limits, aim, spread, prices, feature),
        )
    }

    /// A line of the table for people.
    pub(super) fn line(&self, name: &str, units: Units) -> String {
        let come_out = Outcome {
            good: self.good,
            rework: self.rework,
            scrap: self.scrap,
        };
        format!(
            "{name}: {}, {come_out}, price {}",
            fine(self.aim, units),
            price(self.expected_price)
        )
    }
}

/// A small size, or a size known finely, as people read it: two digits of it at least, and to a tenth
/// of a micrometre, or to ten millionths of an inch.
pub(super) fn fine<Q: Quantity>(size: Q, units: Units) -> String {
    let (value, unit, places) = match units {
        Units::Metric => (size.trade(), "mm", 4),
        Units::Inch => (size.trade() / 25.4, "in", 5),
    };
    let mut needed = places;
    while needed < 12 && value != 0.0 && value.abs() * 10_f64.powi(needed) < 10.0 {
        needed += 1;
    }
    format!("{value:.*} {unit}", needed as usize)
}

fn price(price: Price) -> String {
    let value = price.value();
    if value == 0.0 || value >= 0.001 {
        format!("{value:.3}")
    } else {
        format!("{value:.1e}")
    }
}

/// Both prices, if one is there.
pub(super) fn prices(f: &Fields<'_>) -> Result<Option<Prices>, Error> {
    let scrap = f.quantity::<PriceScrap>("price_scrap")?;
    let rework = f.quantity::<PriceRework>("price_rework")?;
    match (scrap, rework) {
        (Some(scrap), Some(rework)) => Ok(Some(Prices::new(scrap, rework))),
        (None, None) => Ok(None),
        (None, Some(_)) => Err(f.missing("price_scrap", "the price of a lost part")),
        (Some(_), None) => Err(f.missing(
            "price_rework",
            "the price of another cut on a part with metal left",
        )),
    }
}

/// Limits, and which side has the metal.
pub(super) fn limits_and_feature(f: &Fields<'_>) -> Result<(Limits, Feature), Error> {
    let stated = f.need_item(
        "limits",
        "the limits: [\"39.984 mm\", \"40 mm\"]",
        Stated::read,
    )?;
    Ok((stated.limits, feature(f, Some(&stated))?))
}

/// Which side has the metal: as the class of the limits says, else as the asker does, else a shaft.
pub(super) fn feature(f: &Fields<'_>, stated: Option<&Stated>) -> Result<Feature, Error> {
    let asked = f.choice(
        "of",
        &[Feature::Shaft, Feature::Hole].map(|feature| (feature.name(), feature)),
    )?;
    match (asked, stated.and_then(Stated::class)) {
        (Some(asked), Some(class)) if asked != class.feature() => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("of"),
            format!("\"{asked}\" beside limits of the class {class}"),
            format!("\"{}\": {class} is the class of one", class.feature()),
            "leave the field out where limits have a class: capital letters are holes, small ones shafts",
        )),
        (_, Some(class)) => Ok(class.feature()),
        (asked, None) => Ok(asked.unwrap_or_default()),
    }
}

/// What holds for every stated chance.
pub(super) fn only_as_good() -> Caution {
    Caution::new(
        Severity::Note,
        "only_as_good_as_the_spread",
        "These chances are only as good as the spread they come from: check them against parts that \
         were measured, and again after anything changed.",
    )
}

impl Question {
    /// Limits, a spread and prices, of a shaft.
    #[must_use]
    pub fn new(limits: Limits, spread: SizeSpread, prices: Prices) -> Self {
        Self {
            limits,
            spread,
            prices,
            feature: Feature::Shaft,
            units: Units::Metric,
        }
    }

    /// Of a shaft or a hole: it decides which side is lost.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let (limits, feature) = limits_and_feature(&f)?;
        let normal = f.quantity::<StandardUncertainty>("standard_uncertainty")?;
        let uniform = f.quantity::<HalfWidth>("half_width")?;
        let spread = match (normal, uniform) {
            (Some(u), None) => SizeSpread::normal(u),
            (Some(u), Some(a)) => SizeSpread::normal_and_uniform(u, a),
            (None, Some(a)) => SizeSpread::uniform(a),
            (None, None) => {
                return Err(f.missing(
                    "standard_uncertainty",
                    "the standard uncertainty of the size, half_width for a uniform spread, or both",
                ));
            }
        };
        let prices = prices(&f)?.ok_or_else(|| {
            f.missing(
                "price_scrap",
                "the prices: price_scrap and price_rework, in any currency",
            )
        })?;
        let question = Self {
            limits,
            spread,
            prices,
            feature,
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// The size to aim for.
    ///
    /// # Errors
    /// `standard_uncertainty` or `half_width`, when the cheapest aim lies outside of the zone.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (limits, spread, prices, feature) =
            (self.limits, self.spread, self.prices, self.feature);
        let best = Aimed::best(limits, spread, prices, feature)?;
        let most_metal = match feature {
            Feature::Shaft => limits.largest(),
            Feature::Hole => limits.smallest(),
        };
        let middle = Aimed::at(limits.middle(), limits, spread, prices, feature);
        let max_material_limit = Aimed::at(most_metal, limits, spread, prices, feature);
        let text = [
            best.line("Cheapest aim", self.units),
            middle.line("Middle of the zone", self.units),
            max_material_limit.line("Limit of most metal", self.units),
        ]
        .join("\n");
        Ok(Answer {
            aim: best.aim,
            good: best.good,
            rework: best.rework,
            scrap: best.scrap,
            expected_price: best.expected_price,
            middle,
            max_material_limit,
            largest_standard_uncertainty: largest_standard_uncertainty(limits, spread, prices),
            text,
            cautions: vec![
                only_as_good(),
                Caution::new(
                    Severity::Note,
                    "rework_once",
                    "A part to rework counts as costing its price, whatever becomes of the second try.",
                ),
            ],
        })
    }
}
