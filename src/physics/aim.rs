//! The size to aim at, when a lost part and another cut do not cost the same.

use super::maths;
use super::spread::{self, Outcome, SizeSpread};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, Price, PriceRework, PriceScrap, StandardUncertainty, round_size};
use crate::standards::limits::{Feature, Limits};

/// What a lost part and another cut cost, in one currency.
///
/// # Example
/// ```
/// use turnwright::{physics::aim::Prices, PriceRework, PriceScrap};
/// let prices = Prices::new(PriceScrap::from_value(20.0)?, PriceRework::from_value(2.0)?);
/// assert_eq!(prices.scrap().value(), 20.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Prices {
    scrap: PriceScrap,
    rework: PriceRework,
}

impl Prices {
    /// The price of a lost part and that of another cut.
    #[must_use]
    pub fn new(scrap: PriceScrap, rework: PriceRework) -> Self {
        Self { scrap, rework }
    }

    /// The price of a lost part.
    #[must_use]
    pub fn scrap(&self) -> PriceScrap {
        self.scrap
    }

    /// The price of another cut.
    #[must_use]
    pub fn rework(&self) -> PriceRework {
        self.rework
    }
}

/// The size to aim at, and what to expect there.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BestAim {
    /// The size to aim at.
    pub aim: Diameter,
    /// What comes of it.
    pub outcome: Outcome,
    /// What scrap and rework are expected to cost there.
    pub expected_price: Price,
}

/// What scrap and rework are expected to cost of parts that scatter about `mean`.
///
/// E = c_s P(scrap) + c_r P(rework); a part cut again counts as costing c_r, whatever becomes of it.
///
/// # Units
/// In the currency of the prices.
/// # Source
/// The definition of an expected value; derived.
/// # Example
/// ```
/// use turnwright::{
///     physics::{aim::{expected_price, Prices}, spread::SizeSpread}, Diameter, Feature, Limits, PriceRework, PriceScrap,
/// };
/// let zone = Limits::new(Diameter::from_mm(39.984)?, Diameter::from_mm(40.0)?)?;
/// let prices = Prices::new(PriceScrap::from_value(10.0)?, PriceRework::from_value(1.0)?);
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let price = expected_price(zone, Diameter::from_mm(39.992)?, spread, prices, Feature::Shaft);
/// assert!((price.value() - 0.25025).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn expected_price(
    limits: Limits,
    mean: Diameter,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> Price {
    price_of(spread::outcome(limits, mean, spread, feature), prices)
}

fn price_of(outcome: Outcome, prices: Prices) -> Price {
    Price::computed_trade(
        prices.scrap.value() * outcome.scrap.value()
            + prices.rework.value() * outcome.rework.value(),
    )
}

/// The size at which scrap and rework are expected to cost least.
///
/// Of a normal spread: mu = (L + U) / 2 + sigma^2 / (U - L) ln(c_s / c_r) for a shaft, with minus for
/// a hole; else where c_s f(mu - L) = c_r f(U - mu). The density of a normal with a uniform part is
/// log-concave, so there is one such size. Where the price is least along a stretch (a purely uniform
/// spread, or tails too thin for a number), the middle of the stretch.
///
/// # Errors
/// `standard_uncertainty`, when that size lies outside the zone: the spread is too wide for these
/// prices.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::{
///     physics::{aim::{best_aim, Prices}, spread::SizeSpread}, Diameter, Feature, Limits, PriceRework, PriceScrap,
/// };
/// let zone = Limits::new(Diameter::from_mm(39.984)?, Diameter::from_mm(40.0)?)?;
/// let prices = Prices::new(PriceScrap::from_value(10.0)?, PriceRework::from_value(1.0)?);
/// let best = best_aim(zone, SizeSpread::normal("0.004 mm".parse()?), prices, Feature::Shaft)?;
/// assert_eq!((best.aim.mm() * 1e4).round() / 1e4, 39.9943);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn best_aim(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> Result<BestAim, Error> {
    let width = limits.largest().mm() - limits.smallest().mm();
    let ratio = prices.scrap.value() / prices.rework.value();
    // How far above the middle, of a shaft; a hole is its mirror image.
    let up = offset(width, spread, maths::steady_ln(ratio));
    let Some(up) = up else {
        return Err(too_wide(limits, spread, prices));
    };
    let middle = 0.5 * (limits.smallest().mm() + limits.largest().mm());
    let aim = Diameter::computed_trade(match feature {
        Feature::Shaft => middle + up,
        Feature::Hole => middle - up,
    });
    let outcome = spread::outcome(limits, aim, spread, feature);
    Ok(BestAim {
        aim,
        outcome,
        expected_price: price_of(outcome, prices),
    })
}

/// How far from the middle of a zone towards the side of rework; none outside the zone.
fn offset(width: f64, spread: SizeSpread, log_ratio: f64) -> Option<f64> {
    if log_ratio == 0.0 {
        return Some(0.0);
    }
    let half = 0.5 * width;
    if spread.is_normal() {
        let up = spread.standard().mm().powi(2) / width * log_ratio;
        return (up.abs() <= half).then_some(up);
    }
    // The dearer side lies below; what holds for it holds mirrored for the other.
    let dear = log_ratio.abs();
    let up = edge_of_less(half, spread, dear)?;
    Some(up.copysign(log_ratio))
}

/// Where c f(h + x) no longer exceeds f(h - x), for x from 0 to h, ln c = `dear`.
fn edge_of_less(half: f64, spread: SizeSpread, dear: f64) -> Option<f64> {
    let (mut low, mut high) = (0.0, half);
    // ln(c f(h + x) / f(h - x)); infinite where only one of the two is nothing.
    let excess = |x: f64| {
        let (far, near) = (spread.density(half + x), spread.density(half - x));
        if far == 0.0 && near == 0.0 {
            // Nothing is lost here, either way.
            0.0
        } else {
            dear + maths::steady_ln(far) - maths::steady_ln(near)
        }
    };
    if excess(low) <= 0.0 {
        // From the very middle on: a spread that does not reach the limits.
        return Some(0.0);
    }
    if excess(high) > 0.0 {
        return None;
    }
    // As if the spread were normal, for a beginning.
    let mut x = (spread.standard().mm().powi(2) / (2.0 * half) * dear).min(half);
    for _ in 0..200 {
        let e = excess(x);
        if e > 0.0 {
            low = x;
        } else {
            high = x;
        }
        let slope = spread.slope(half + x) + spread.slope(half - x);
        let next = x - e / slope;
        let before = x;
        x = if next > low && next < high {
            next
        } else {
            0.5 * (low + high)
        };
        // Beyond 1e-12 of the zone no price and no dial tells a difference.
        if (x - before).abs() <= 1e-13 * half || high - low <= 1e-13 * half {
            break;
        }
    }
    Some(x)
}

#[cold]
fn too_wide(limits: Limits, spread: SizeSpread, prices: Prices) -> Error {
    let ratio = prices.scrap.value() / prices.rework.value();
    let width = limits.tolerance().mm();
    let most = width / (2.0 * maths::steady_ln(ratio).abs()).sqrt();
    Error::new(
        ErrorKind::Impossible,
        "standard_uncertainty",
        spread.standard().to_string(),
        format!(
            "a spread for which some size between {} and {} costs least at these prices",
            limits.smallest(),
            limits.largest()
        ),
        format!(
            "bring the standard uncertainty below about {} (a finer instrument or dial, a measuring stop), or widen the zone: \
             as it is, aiming at the limit would still be too near to the dearer side",
            StandardUncertainty::computed_trade(round_size(most))
        ),
    )
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn prices(scrap: f64, rework: f64) -> Prices {
        Prices::new(
            PriceScrap::from_value(scrap).unwrap(),
            PriceRework::from_value(rework).unwrap(),
        )
    }

    fn zone(width: f64) -> Limits {
        Limits::new(
            Diameter::from_mm(30.0 - width).unwrap(),
            Diameter::from_mm(30.0).unwrap(),
        )
        .unwrap()
    }

    #[test]
    fn a_spread_that_does_not_reach_the_limits_is_aimed_at_the_middle() {
        let spread = SizeSpread::of_parts(0.0, 0.004);
        let best = best_aim(zone(0.02), spread, prices(20.0, 1.0), Feature::Shaft).unwrap();
        assert!((best.aim.mm() - 29.99).abs() < 1e-9);
        assert_eq!(best.expected_price.value(), 0.0);
    }

    #[test]
    fn a_spread_too_wide_for_its_prices_is_refused_with_the_one_that_would_do() {
        let spread = SizeSpread::of_parts(0.02, 0.0);
        let error = best_aim(zone(0.02), spread, prices(20.0, 1.0), Feature::Shaft).unwrap_err();
        assert_eq!(error.field(), "standard_uncertainty");
        // 0.02 / sqrt(2 ln 20) mm
        assert!(error.remedy().contains("0.0081"), "{error}");
        let just = SizeSpread::of_parts(0.008_17, 0.0);
        assert!(best_aim(zone(0.02), just, prices(20.0, 1.0), Feature::Shaft).is_ok());
    }

    proptest! {
        #[test]
        fn nothing_near_the_best_aim_is_cheaper(
            width in 0.005..0.2_f64, sigma in 0.05..0.4_f64, half in 0.0..0.6_f64, scrap in 1.0..60.0_f64, hole in any::<bool>(),
        ) {
            let limits = zone(width);
            let spread = SizeSpread::of_parts(sigma * width, half * width);
            let feature = if hole { Feature::Hole } else { Feature::Shaft };
            let p = prices(scrap, 1.0);
            let Ok(best) = best_aim(limits, spread, p, feature) else { return Ok(()) };
            prop_assert!(limits.contains(best.aim));
            for step in [-0.05, -0.01, -0.001, 0.001, 0.01, 0.05] {
                let beside = Diameter::from_mm(best.aim.mm() + step * width).unwrap();
                let price = expected_price(limits, beside, spread, p, feature).value();
                // Rounding of a sum of two shares.
                prop_assert!(price >= best.expected_price.value() - 1e-13, "{step}");
            }
            // A shaft is aimed larger where scrap is dearer, a hole smaller.
            let up = best.aim.mm() - limits.middle().mm();
            let towards_rework = if hole { -up } else { up };
            prop_assert!(towards_rework >= -1e-9);
        }

        #[test]
        fn a_hole_is_the_mirror_image_of_a_shaft(sigma in 0.05..0.3_f64, half in 0.0..0.4_f64, scrap in 0.05..20.0_f64) {
            let limits = zone(0.05);
            let spread = SizeSpread::of_parts(0.05 * sigma, 0.05 * half);
            let p = prices(scrap, 1.0);
            match (best_aim(limits, spread, p, Feature::Shaft), best_aim(limits, spread, p, Feature::Hole)) {
                (Ok(shaft), Ok(hole)) => {
                    let sum = shaft.aim.mm() + hole.aim.mm() - 2.0 * 29.975;
                    // Twice the last digit of sizes of 30 mm.
                    prop_assert!(sum.abs() < 2e-14, "{sum}");
                }
                (shaft, hole) => prop_assert!(shaft.is_err() && hole.is_err()),
            }
        }
    }
}
