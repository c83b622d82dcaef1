//! Which size is the cheapest to aim for, where a lost part costs more than one with metal left.
//!
//! Symbols: mu the mean that is aimed for, L and U the limits, u the standard uncertainty of the
//! normal part, f the density of the sizes, c_s and c_r the prices of scrap and of rework.

use super::maths::{portable, sqrt};
use super::spread::{LogDensity, Outcome, SizeSpread, outcome};
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Diameter, DiameterError, Price, PriceRework, PriceScrap, StandardUncertainty, round_size,
};
use crate::standards::limits::{Feature, Limits};

/// What a part costs that does not come out good.
///
/// ```
/// use turnwright::physics::aim::Prices;
/// let prices = Prices::new("20".parse()?, "2".parse()?);
/// assert_eq!(prices.scrap().value() / prices.rework().value(), 10.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Prices {
    scrap: PriceScrap,
    rework: PriceRework,
}

impl Prices {
    /// The price of a lost part, and of one that needs another cut.
    #[must_use]
    pub fn new(scrap: PriceScrap, rework: PriceRework) -> Self {
        Self { scrap, rework }
    }

    /// Of a lost part.
    #[must_use]
    pub fn scrap(self) -> PriceScrap {
        self.scrap
    }

    /// Of one that needs another cut.
    #[must_use]
    pub fn rework(self) -> PriceRework {
        self.rework
    }

    /// What a part costs on average that comes out so.
    pub(crate) fn of(self, come_out: Outcome) -> Price {
        Price::computed_trade(
            self.scrap.value() * come_out.scrap.value()
                + self.rework.value() * come_out.rework.value(),
        )
    }
}

/// What a part costs on average by not coming out good.
///
/// c_s P(scrap) + c_r P(rework)
///
/// # Units
/// The currency of the prices.
/// # Range
/// A part to rework costs c_r whatever becomes of it afterwards.
/// # Source
/// Expected value (derived).
/// # Example
/// ```
/// use turnwright::physics::{aim::{expected_price, Prices}, spread::SizeSpread};
/// use turnwright::{Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let prices = Prices::new("10".parse()?, "1".parse()?);
/// let middle = expected_price(limits, limits.middle(), spread, prices, Feature::Shaft);
/// assert!((middle.value() - 0.25025).abs() < 1e-5);
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
    prices.of(outcome(limits, mean, spread, feature))
}

/// The size to aim for, and what comes of it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BestAim {
    /// The mean to aim for.
    pub aim: Diameter,
    /// What comes out then.
    pub outcome: Outcome,
    /// What a part costs on average by not coming out good.
    pub expected_price: Price,
}

impl BestAim {
    fn at(
        limits: Limits,
        aim: Diameter,
        spread: SizeSpread,
        prices: Prices,
        feature: Feature,
    ) -> Self {
        let come_out = outcome(limits, aim, spread, feature);
        Self {
            aim,
            outcome: come_out,
            expected_price: prices.of(come_out),
        }
    }
}

/// The size to aim for that costs least.
///
/// c_s f(L - mu) = c_r f(U - mu) for a shaft; of a hole the prices change places. For a normal spread
/// mu = (L + U)/2 + u^2/(U - L) ln(c_s/c_r); with a uniform part by root finding: the density of the
/// sum is log-concave, so there is one root. For a uniform spread alone any mean between L + a and
/// U - a costs nothing: the middle is taken; where it is wider than the zone, the mean that just
/// keeps it from the dearer limit, the middle for equal prices.
///
/// # Units
/// The types carry them.
/// # Range
/// One try a part: one to rework costs its price whatever becomes of it.
/// # Errors
/// `standard_uncertainty`, or `half_width` where that part is the wider one, when the cheapest aim
/// lies outside of the zone: the spread is too wide for prices so far apart.
/// # Source
/// The stationary point of the expected price (derived).
/// # Example
/// ```
/// use turnwright::physics::{aim::{best_aim, Prices}, spread::SizeSpread};
/// use turnwright::{Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let prices = Prices::new("10".parse()?, "1".parse()?);
/// let best = best_aim(limits, spread, prices, Feature::Shaft)?;
/// // Nearer to the upper limit, from where a part can still be saved.
/// assert!((best.aim.mm() - 39.994_303).abs() < 1e-6);
/// assert!((best.expected_price.value() - 0.1272).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn best_aim(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> Result<BestAim, Error> {
    best_aim_inside(limits, spread, prices, feature).ok_or_else(|| too_wide(limits, spread, prices))
}

/// The same; none, without a reason, where the cheapest aim lies outside of the zone.
pub(crate) fn best_aim_inside(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> Option<BestAim> {
    let aim = inner_aim(limits, spread, pull(prices, feature))?;
    Some(BestAim::at(limits, aim, spread, prices, feature))
}

/// The size to aim for that costs least of all sizes in the zone.
///
/// That of [`best_aim`] where it lies in the zone. Where it does not, the price falls all the way to
/// the limit on the side of the cheaper price, and that limit is the answer: the largest size of a
/// shaft whose scrap is dearer than its rework.
///
/// # Units
/// The types carry them.
/// # Range
/// As of [`best_aim`].
/// # Source
/// The expected price over the zone (derived): the logarithm of the ratio of both densities rises
/// with the aim, so the price has one lowest place.
/// # Example
/// ```
/// use turnwright::physics::{aim::{best_aim_in_zone, Prices}, spread::SizeSpread};
/// use turnwright::{Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let wide = SizeSpread::normal("0.01 mm".parse()?);
/// let prices = Prices::new("10".parse()?, "1".parse()?);
/// assert_eq!(best_aim_in_zone(limits, wide, prices, Feature::Shaft).aim, limits.largest());
/// assert_eq!(best_aim_in_zone(limits, wide, prices, Feature::Hole).aim, limits.smallest());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn best_aim_in_zone(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> BestAim {
    let pull = pull(prices, feature);
    let aim = inner_aim(limits, spread, pull).unwrap_or(if pull < 0.0 {
        limits.smallest()
    } else {
        limits.largest()
    });
    BestAim::at(limits, aim, spread, prices, feature)
}

/// The same of a shaft, where a part that is too large by less than another cut can take is lost too.
///
/// A cut back to the aim mu takes what is over mu + t, `least` t. While that is no more than U nothing is lost so,
/// and the price is as without. Beyond, the price is c_s (P(X < L) + P(X > U)) less what does not depend on mu: it
/// rises from the middle of the zone on. So the aim is min(mu_0, max((L + U)/2, U - t)), mu_0 the cheapest without.
///
/// # Source
/// Derived, as [`best_aim_in_zone`].
pub(crate) fn best_aim_to_cut_again(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    least: DiameterError,
) -> BestAim {
    let without = best_aim_in_zone(limits, spread, prices, Feature::Shaft);
    let farthest = Diameter::computed_trade(round_size(limits.largest().mm() - least.mm()));
    let farthest = farthest.max(limits.middle());
    match without.aim > farthest && prices.scrap().value() > prices.rework().value() {
        true => BestAim {
            aim: farthest,
            outcome: outcome(limits, farthest, spread, Feature::Shaft),
            expected_price: price_to_cut_again(limits, farthest, spread, prices, least).1,
        },
        false => without,
    }
}

/// What comes of a shaft aimed at `mean`, and its price where one that is too large by less than `least` over the
/// mean cannot be cut again, and is lost.
pub(crate) fn price_to_cut_again(
    limits: Limits,
    mean: Diameter,
    spread: SizeSpread,
    prices: Prices,
    least: DiameterError,
) -> (Outcome, Price) {
    let come_out = outcome(limits, mean, spread, Feature::Shaft);
    let price = prices.of(come_out);
    let cuttable = Diameter::computed_trade(mean.mm() + least.mm());
    let (true, Ok(wider)) = (
        cuttable > limits.largest(),
        Limits::new(limits.smallest(), cuttable),
    ) else {
        return (come_out, price);
    };
    let again = outcome(wider, mean, spread, Feature::Shaft).rework;
    let left = (come_out.rework.value() - again.value()).max(0.0);
    let dearer = left * (prices.scrap().value() - prices.rework().value());
    (come_out, Price::computed_trade(price.value() + dearer))
}

/// The size to aim for that costs least of all sizes in the zone, whatever law the sizes follow: looked for
/// on a grid, then between the neighbours of its best place. The tails of other laws than the normal one
/// may have more than one lowest place.
#[cfg(feature = "json")]
pub(crate) fn best_aim_by(
    limits: Limits,
    prices: Prices,
    come_out: impl Fn(Diameter) -> Outcome,
) -> BestAim {
    const GRID: u32 = 400;
    let (low, zone) = (limits.smallest().mm(), limits.tolerance().mm());
    let size = |share: f64| Diameter::computed_trade(low + zone * share);
    let price = |share: f64| prices.of(come_out(size(share))).value();
    let grid = (0..=GRID).map(|at| f64::from(at) / f64::from(GRID));
    let best = grid
        .min_by(|a, b| price(*a).total_cmp(&price(*b)))
        .unwrap_or(0.5);
    let step = 1.0 / f64::from(GRID);
    let (mut from, mut to) = ((best - step).max(0.0), (best + step).min(1.0));
    // By thirds, to a thousand millionth of the zone.
    for _ in 0..40 {
        let third = (to - from) / 3.0;
        match price(from + third) <= price(to - third) {
            true => to -= third,
            false => from += third,
        }
    }
    let between = 0.5 * (from + to);
    let share = match price(between) < price(best) {
        true => between,
        false => best,
    };
    let outcome = come_out(size(share));
    BestAim {
        aim: size(share),
        outcome,
        expected_price: prices.of(outcome),
    }
}

/// Whether the cheapest aim lies in the zone.
pub(crate) fn aim_is_inside(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
) -> bool {
    let zone = limits.largest().mm() - limits.smallest().mm();
    is_inside(spread, zone, pull(prices, feature))
}

/// The largest standard uncertainty with which the cheapest aim still lies in the zone, on its
/// limit, of a spread of this shape: its normal and its uniform part made wider alike. None where
/// any will do (equal prices).
///
/// Of a normal spread (U - L)/sqrt(2 |ln(c_s/c_r)|), of a uniform one (U - L)/sqrt 3.
///
/// # Units
/// The types carry them.
/// # Source
/// The best aim on the limit (derived).
/// # Example
/// ```
/// use turnwright::physics::{aim::{largest_standard_uncertainty, Prices}, spread::SizeSpread};
/// use turnwright::Limits;
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let prices = Prices::new("10".parse()?, "1".parse()?);
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let most = largest_standard_uncertainty(limits, spread, prices).map(|u| u.mm());
/// assert!((most.unwrap_or(0.0) - 0.007456).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn largest_standard_uncertainty(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
) -> Option<StandardUncertainty> {
    let times = widest(limits, spread, prices)?;
    // Handed back, it lies inside in spite of its last digits.
    const INSIDE: f64 = 1.0 - 1e-12;
    Some(StandardUncertainty::computed_trade(
        spread.standard().mm() * times * INSIDE,
    ))
}

/// How many times as wide a spread may be with the cheapest aim still in the zone.
fn widest(limits: Limits, spread: SizeSpread, prices: Prices) -> Option<f64> {
    let zone = limits.largest().mm() - limits.smallest().mm();
    let pull = pull(prices, Feature::Shaft).abs();
    if pull == 0.0 {
        return None;
    }
    let (u, a) = (spread.normal_part(), spread.uniform_part());
    if a == 0.0 {
        return Some(zone / (u * sqrt(2.0 * pull)));
    }
    if u == 0.0 {
        return Some(zone / a);
    }
    // A spread t times as wide has at the far limit the density that this one has at zone/t, but for
    // a factor. That distance is sought from a side where the densities are far enough apart.
    let density = LogDensity::of(spread);
    let apart = |away: f64| log_ratio(density, 0.0, away).0;
    let mut beyond = a + u * sqrt(2.0 * pull);
    while apart(beyond) < pull {
        beyond *= 2.0;
    }
    let mut within = 0.0;
    // Halved until nothing is left between the two.
    loop {
        let away = 0.5 * (within + beyond);
        if away <= within || away >= beyond {
            break;
        }
        if apart(away) < pull {
            within = away;
        } else {
            beyond = away;
        }
    }
    Some(zone / beyond)
}

/// The logarithm of the price at the smallest size over that at the largest: how hard, and which
/// way, the aim is pulled.
fn pull(prices: Prices, feature: Feature) -> f64 {
    let pull = portable::ln(prices.scrap.value() / prices.rework.value());
    match feature {
        Feature::Shaft => pull,
        Feature::Hole => -pull,
    }
}

/// ln f(near) - ln f(far), with the slopes of both logarithms.
fn log_ratio(density: LogDensity, near: f64, far: f64) -> (f64, f64, f64) {
    let ((near, slope), (far, other)) = (density.at(near), density.at(far));
    (near - far, slope, other)
}

/// The cheapest aim, if inside the zone.
fn inner_aim(limits: Limits, spread: SizeSpread, pull: f64) -> Option<Diameter> {
    let zone = limits.largest().mm() - limits.smallest().mm();
    let shift = shift(spread, zone, pull)?;
    let middle = 0.5 * (limits.smallest().mm() + limits.largest().mm());
    Some(Diameter::computed_trade(if pull < 0.0 {
        middle - shift
    } else {
        middle + shift
    }))
}

/// Whether the cheapest aim lies inside the zone.
fn is_inside(spread: SizeSpread, zone: f64, pull: f64) -> bool {
    if pull == 0.0 {
        return true;
    }
    match (spread.normal_part(), spread.uniform_part()) {
        (u, 0.0) => u * u / zone * pull.abs() <= 0.5 * zone,
        (0.0, a) => a - 0.5 * zone <= 0.5 * zone,
        _ => log_ratio(LogDensity::of(spread), 0.0, zone).0 >= pull.abs(),
    }
}

/// How far from the middle the cheapest aim lies; none where it lies outside of the zone.
fn shift(spread: SizeSpread, zone: f64, pull: f64) -> Option<f64> {
    match (spread.normal_part(), spread.uniform_part()) {
        (u, a) if pull != 0.0 && u != 0.0 && a != 0.0 => balance(spread, zone, pull.abs()),
        _ if !is_inside(spread, zone, pull) => None,
        _ if pull == 0.0 => Some(0.0),
        (u, 0.0) => Some(u * u / zone * pull.abs()),
        (_, a) => Some((a - 0.5 * zone).max(0.0)),
    }
}

/// How far from the middle the densities at both limits stand as the prices; none where they do nowhere
/// in the zone.
///
/// Newton's rule, kept between bounds: ln f is concave, so the difference rises with the shift.
fn balance(spread: SizeSpread, zone: f64, pull: f64) -> Option<f64> {
    // Of the zone.
    const CLOSE: f64 = 1e-8;
    let half = 0.5 * zone;
    let density = LogDensity::of(spread);
    let apart = |shift: f64| log_ratio(density, half - shift, half + shift);
    let (mut low, mut high) = (0.0, half);
    let u = spread.standard().mm();
    let mut shift = (u * u / zone * pull).min(half);
    for round in 0..200 {
        let (ratio, near, far) = apart(shift);
        // It rises with the shift: enough at the first one, it is enough at the limit, which is then not
        // looked at.
        if round == 0 && ratio < pull && apart(half).0 < pull {
            return None;
        }
        if ratio < pull {
            low = shift;
        } else {
            high = shift;
        }
        let rise = -near - far;
        let newton = shift + (pull - ratio) / rise;
        // The rule doubles the digits that are right: after so small a step all are. The bounds are not
        // asked then, which the last digit of the ratio may have put to the wrong side.
        if (newton - shift).abs() <= CLOSE * zone {
            return Some(newton.clamp(0.0, half));
        }
        let next = if newton > low && newton < high {
            newton
        } else {
            0.5 * (low + high)
        };
        if next == shift {
            break;
        }
        shift = next;
    }
    Some(shift)
}

#[cold]
fn too_wide(limits: Limits, spread: SizeSpread, prices: Prices) -> Error {
    let times = widest(limits, spread, prices).unwrap_or(1.0);
    let (u, a) = (spread.normal_part(), spread.uniform_part());
    let (field, given, most) = if u == 0.0 {
        (
            "half_width",
            brief(a),
            format!("a half width of {}", brief_down(a * times)),
        )
    } else if a == 0.0 {
        (
            "standard_uncertainty",
            brief(u),
            format!("a standard uncertainty of {}", brief_down(u * times)),
        )
    } else {
        // Named is the part that widens the whole the most.
        let field = if a > u * sqrt(3.0) {
            "half_width"
        } else {
            "standard_uncertainty"
        };
        let both = |u: String, a: String| {
            format!("a standard uncertainty of {u} beside a half width of {a}")
        };
        (
            field,
            both(brief(u), brief(a)),
            both(brief_down(u * times), brief_down(a * times)),
        )
    };
    Error::new(
        ErrorKind::Impossible,
        field,
        given,
        "a spread narrow enough for these prices: the cheapest aim lies outside of the zone",
        format!(
            "up to {most} the cheapest aim lies in the zone: measure or set closer, take nearer prices, or aim for \
             the limit"
        ),
    )
}

/// The same, never more than it is: what may be so much is taken when it is read from the text.
fn brief_down(mm: f64) -> String {
    let told = brief(mm);
    let read = told.trim_end_matches(" mm").parse().unwrap_or(mm);
    // The last digits of a product are not worth a figure less.
    if read <= mm * (1.0 + 1e-12) {
        return told;
    }
    // A unit of the sixth figure is at most that part of the whole.
    brief(mm * (1.0 - 1e-5))
}

/// Millimetres to six figures.
fn brief(mm: f64) -> String {
    let rounded = format!("{mm:.5e}").parse().unwrap_or(mm);
    format!("{rounded} mm")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::HalfWidth;
    use proptest::prelude::*;

    fn limits(smallest: f64, largest: f64) -> Limits {
        Limits::new(
            Diameter::from_mm(smallest).unwrap(),
            Diameter::from_mm(largest).unwrap(),
        )
        .unwrap()
    }

    fn prices(scrap: f64, rework: f64) -> Prices {
        Prices::new(
            PriceScrap::from_value(scrap).unwrap(),
            PriceRework::from_value(rework).unwrap(),
        )
    }

    fn both(u: f64, a: f64) -> SizeSpread {
        SizeSpread::normal_and_uniform(
            StandardUncertainty::from_mm(u).unwrap(),
            HalfWidth::from_mm(a).unwrap(),
        )
    }

    #[test]
    fn the_aim_of_a_uniform_spread_stays_clear_of_the_dear_limit() {
        let zone = limits(40.0, 40.02);
        let uniform = |a| SizeSpread::uniform(HalfWidth::from_mm(a).unwrap());
        let aim = |a, scrap, feature| {
            best_aim(zone, uniform(a), prices(scrap, 1.0), feature).map(|best| best.aim.mm())
        };
        // Inside the zone nothing costs anything: the middle. Derived by hand from the piecewise
        // linear price.
        assert!((aim(0.004, 10.0, Feature::Shaft).unwrap() - 40.01).abs() < 1e-12);
        assert!((aim(0.013, 10.0, Feature::Shaft).unwrap() - 40.013).abs() < 1e-12);
        assert!((aim(0.013, 10.0, Feature::Hole).unwrap() - 40.007).abs() < 1e-12);
        assert!((aim(0.013, 1.0, Feature::Shaft).unwrap() - 40.01).abs() < 1e-12);
        assert_eq!(
            aim(0.021, 10.0, Feature::Shaft).unwrap_err().field(),
            "half_width"
        );
    }

    #[test]
    fn a_spread_too_wide_for_the_prices_is_refused_with_the_widest() {
        let zone = limits(40.0, 40.016);
        let wide = StandardUncertainty::from_mm(0.008).unwrap();
        let dear = prices(10.0, 1.0);
        let error = best_aim(zone, SizeSpread::normal(wide), dear, Feature::Shaft).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::Impossible);
        assert!(error.remedy().contains("0.00745"), "{error}");
        let most = largest_standard_uncertainty(zone, SizeSpread::normal(wide), dear);
        // (U - L)/sqrt(2 ln 10), by hand.
        assert!((most.unwrap().mm() - 0.016 / 4.605_170_186_f64.sqrt()).abs() < 1e-12);
        // Twenty micrometres to each side of a zone of twenty-five: inside, up to the zone's width.
        let h7 = limits(34.975, 35.0);
        let six = prices(6.0, 1.0);
        let flat = SizeSpread::uniform(HalfWidth::from_mm(0.02).unwrap());
        assert!((best_aim(h7, flat, six, Feature::Shaft).unwrap().aim.mm() - 34.995).abs() < 1e-12);
        let most = largest_standard_uncertainty(h7, flat, six).unwrap().mm();
        assert!((most - 0.025 / 3.0_f64.sqrt()).abs() < 1e-12, "{most}");
        let wide = SizeSpread::uniform(HalfWidth::from_mm(0.026).unwrap());
        let error = best_aim(h7, wide, six, Feature::Shaft).unwrap_err();
        assert_eq!((error.field(), error.given()), ("half_width", "0.026 mm"));
        assert!(error.remedy().contains("0.025 mm"), "{error}");
    }

    fn scaled(u: f64, a: f64, times: f64) -> SizeSpread {
        let normal = StandardUncertainty::computed_trade(u * times);
        let half = HalfWidth::computed_trade(a * times);
        match (u > 0.0, a > 0.0) {
            (true, true) => SizeSpread::normal_and_uniform(normal, half),
            (true, false) => SizeSpread::normal(normal),
            _ => SizeSpread::uniform(half),
        }
    }

    proptest! {
        /// No size of a fine grid over the zone is cheaper than the aim in closed form; both prices are sums of the
        /// same few numbers below the price of a lost part, rounded in their last digits.
        #[test]
        fn no_size_is_cheaper_where_little_too_large_is_lost(
            u in 0.001_f64..0.05, a in 0.0_f64..0.05, zone in 0.005_f64..0.1, scrap in 1.0_f64..50.0, least in 0.0_f64..0.15,
        ) {
            let (limits, spread, prices) = (limits(30.0, 30.0 + zone), both(u, a), prices(scrap, 1.0));
            let least = DiameterError::from_mm(least).unwrap();
            let best = best_aim_to_cut_again(limits, spread, prices, least);
            prop_assert!(limits.contains(best.aim));
            for step in 0..=200 {
                let size = Diameter::from_mm(30.0 + zone * f64::from(step) / 200.0).unwrap();
                let (_, price) = price_to_cut_again(limits, size, spread, prices, least);
                prop_assert!(
                    best.expected_price.value() <= price.value() + 1e-9 * scrap,
                    "{} at {}, {} at {}", best.expected_price, best.aim, price, size
                );
            }
        }

        #[test]
        fn the_largest_uncertainty_is_where_the_aim_leaves_the_zone(
            u in 0.0005_f64..0.02, a in 0.0005_f64..0.02, kind in 0..3, scrap in 1.01_f64..500.0,
            dearer_rework in any::<bool>(),
        ) {
            let (u, a) = match kind { 0 => (u, 0.0), 1 => (0.0, a), _ => (u, a) };
            let zone = limits(40.0, 40.02);
            let dear = if dearer_rework { prices(1.0, scrap) } else { prices(scrap, 1.0) };
            let spread = scaled(u, a, 1.0);
            let most = largest_standard_uncertainty(zone, spread, dear).unwrap().mm();
            let times = most / spread.standard().mm();
            for feature in [Feature::Shaft, Feature::Hole] {
                // The zone of 0.02 mm at 40 mm is known to 1e-12 of itself.
                prop_assert!(best_aim(zone, scaled(u, a, times * (1.0 - 1e-9)), dear, feature).is_ok());
                let wider = scaled(u, a, times * (1.0 + 1e-9));
                prop_assert!(best_aim(zone, wider, dear, feature).is_err());
                let corner = best_aim_in_zone(zone, wider, dear, feature);
                let large = (feature == Feature::Shaft) != dearer_rework;
                prop_assert_eq!(corner.aim, if large { zone.largest() } else { zone.smallest() });
                for away in [0.0, 0.3, 0.7, 0.999] {
                    let other = zone.smallest().mm() + away * 0.02;
                    let other = Diameter::from_mm(if large { other } else { 80.02 - other }).unwrap();
                    let price = expected_price(zone, other, wider, dear, feature);
                    prop_assert!(price.value() >= corner.expected_price.value() * (1.0 - 1e-12));
                }
            }
        }

        #[test]
        fn no_other_aim_is_cheaper(
            u in 0.0005_f64..0.006, a in 0.0001_f64..0.012, scrap in 0.1_f64..50.0,
            away in -0.5_f64..0.5, of_hole in any::<bool>(),
        ) {
            let (zone, spread, dear) = (limits(40.0, 40.02), both(u, a), prices(scrap, 1.0));
            let feature = if of_hole { Feature::Hole } else { Feature::Shaft };
            if let Ok(best) = best_aim(zone, spread, dear, feature) {
                prop_assert!(zone.contains(best.aim));
                let other = Diameter::from_mm(best.aim.mm() + away * 0.02).unwrap();
                let price = expected_price(zone, other, spread, dear, feature);
                prop_assert!(price.value() >= best.expected_price.value() * (1.0 - 1e-12));
            }
        }

        #[test]
        fn a_hole_mirrors_a_shaft_and_a_vanishing_part_the_closed_form(
            u in 0.001_f64..0.005, scrap in 0.2_f64..20.0,
        ) {
            let (zone, dear) = (limits(40.0, 40.02), prices(scrap, 1.0));
            let normal = SizeSpread::normal(StandardUncertainty::from_mm(u).unwrap());
            let aim = |spread, feature| best_aim(zone, spread, dear, feature).unwrap().aim.mm();
            let shaft = aim(normal, Feature::Shaft);
            // Sizes of 40 mm: their last bit is 7e-15 mm.
            prop_assert!((shaft + aim(normal, Feature::Hole) - 80.02).abs() < 1e-13);
            prop_assert!((shaft - aim(both(u, 1e-8), Feature::Shaft)).abs() < 1e-12);
        }
    }
}
