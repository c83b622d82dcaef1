//! How a size scatters about its mean, and how often it then lies in its zone.
//!
//! A size is the sum of many small causes, so its scatter is taken as normal; one cause that has
//! ends (a dial read by whole marks, an instrument off by a fixed amount) may outweigh the others,
//! so one uniform part is kept as what it is.

use std::f64::consts::FRAC_1_SQRT_2;
use std::fmt;

use super::maths;
use crate::quantity::{
    Capability, CapabilityIndex, Diameter, HalfWidth, Probability, StandardUncertainty,
};
use crate::standards::limits::{Feature, Limits};

/// 1 over the square root of 2 pi.
const PEAK: f64 = 0.398_942_280_401_432_7;

/// Positive nodes and their weights of the Gauss-Legendre rule of eight points, over the sum of all
/// weights (Abramowitz and Stegun, table 25.4, from memory; a test integrates powers with them).
const NODES: [(f64, f64); 4] = [
    (0.183_434_642_495_649_8, 0.181_341_891_689_181),
    (0.525_532_409_916_329, 0.156_853_322_938_943_6),
    (0.796_666_477_413_626_7, 0.111_190_517_226_687_24),
    (0.960_289_856_497_536_2, 0.050_614_268_145_188_13),
];

/// A uniform part whose half width is this share of the normal part's sigma, or less, is narrow: the
/// closed form would be a small difference of large numbers.
const NARROW: f64 = 0.05;

/// How a size scatters about its mean: a normal part and at most one uniform part.
///
/// # Source
/// JCGM 100:2008 (GUM) 4.3 for the two laws, from memory; their sum in closed form, derived.
///
/// # Example
/// ```
/// use turnwright::physics::spread::SizeSpread;
/// let spread = SizeSpread::normal_and_uniform("0.003 mm".parse()?, "0.005 mm".parse()?);
/// assert!((spread.standard().mm() - (9e-6_f64 + 25e-6 / 3.0).sqrt()).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeSpread {
    /// Standard deviation of the normal part, in mm; 0 for none.
    sigma: f64,
    /// Half the width of the uniform part, in mm; 0 for none.
    half: f64,
}

impl SizeSpread {
    /// A normal spread.
    #[must_use]
    pub fn normal(u: StandardUncertainty) -> Self {
        Self {
            sigma: u.mm(),
            half: 0.0,
        }
    }

    /// A uniform spread.
    #[must_use]
    pub fn uniform(half_width: HalfWidth) -> Self {
        Self {
            sigma: 0.0,
            half: half_width.mm(),
        }
    }

    /// The sum of a normal and a uniform spread.
    #[must_use]
    pub fn normal_and_uniform(u: StandardUncertainty, half_width: HalfWidth) -> Self {
        Self {
            sigma: u.mm(),
            half: half_width.mm(),
        }
    }

    /// Of parts in mm, of which one at least is not 0.
    pub(super) fn of_parts(sigma: f64, half: f64) -> Self {
        Self { sigma, half }
    }

    /// The standard deviation of the whole: sqrt(u^2 + a^2 / 3).
    #[must_use]
    pub fn standard(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(
            (self.sigma * self.sigma + self.half * self.half / 3.0).sqrt(),
        )
    }

    /// True for a spread without a uniform part.
    pub(super) fn is_normal(&self) -> bool {
        self.half == 0.0
    }

    /// The share of sizes that lie less than `offset` mm above the mean.
    ///
    /// F(x) = sigma / (2 a) \[G((x + a) / sigma) - G((x - a) / sigma)\], G(z) = z Phi(z) + phi(z)
    pub(crate) fn share_below(&self, offset: f64) -> f64 {
        if offset > 0.0 {
            // In the lower tail nothing cancels.
            return 1.0 - self.share_below(-offset);
        }
        let Self { sigma, half } = *self;
        if half == 0.0 {
            below(offset / sigma)
        } else if sigma == 0.0 {
            (0.5 * (offset + half) / half).clamp(0.0, 1.0)
        } else if half < NARROW * sigma {
            self.mean_of(offset, below)
        } else {
            let z = |x: f64| x / sigma;
            0.5 * sigma / half * (first(z(offset + half)) - first(z(offset - half)))
        }
    }

    /// The share of sizes that lie more than `offset` mm above the mean.
    pub(crate) fn share_above(&self, offset: f64) -> f64 {
        self.share_below(-offset)
    }

    /// The density at `offset` mm from the mean, per mm.
    pub(crate) fn density(&self, offset: f64) -> f64 {
        let Self { sigma, half } = *self;
        let x = offset.abs();
        if half == 0.0 {
            bell(x / sigma) / sigma
        } else if sigma == 0.0 {
            if x <= half { 0.5 / half } else { 0.0 }
        } else if half < NARROW * sigma {
            self.mean_of(x, bell) / sigma
        } else {
            // Both shares are those of the nearer tail.
            0.5 / half * (below((half - x) / sigma) - below((-half - x) / sigma))
        }
    }

    /// By which share the density changes for each mm farther from the mean.
    pub(super) fn slope(&self, offset: f64) -> f64 {
        let Self { sigma, half } = *self;
        let x = offset.abs();
        let size = if half == 0.0 {
            return -offset / (sigma * sigma);
        } else if half < NARROW * sigma {
            self.mean_of(x, |z| -z * bell(z)) / (sigma * sigma)
        } else {
            0.5 / (half * sigma) * (bell((x + half) / sigma) - bell((x - half) / sigma))
        };
        size.copysign(-offset) / self.density(offset)
    }

    /// The mean of a function of the normal part over the width of a narrow uniform one.
    fn mean_of(&self, offset: f64, function: impl Fn(f64) -> f64) -> f64 {
        NODES
            .iter()
            .map(|(node, weight)| {
                let step = node * self.half;
                weight
                    * (function((offset - step) / self.sigma)
                        + function((offset + step) / self.sigma))
            })
            .sum()
    }
}

/// Phi(z) of the standard normal law.
pub(super) fn below(z: f64) -> f64 {
    0.5 * maths::erfc(-z * FRAC_1_SQRT_2)
}

/// phi(z) of the standard normal law.
pub(super) fn bell(z: f64) -> f64 {
    PEAK * maths::steady_exp(-0.5 * z * z)
}

/// The integral of Phi up to z.
fn first(z: f64) -> f64 {
    z * below(z) + bell(z)
}

/// How often a size comes out good, how often it can be cut again, how often it is lost.
///
/// # Range
/// The three are from 0 to 1 and sum to 1.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Outcome {
    /// Within the limits.
    pub good: Probability,
    /// Metal is left: a shaft too large, a hole too small.
    pub rework: Probability,
    /// Metal is gone: a shaft too small, a hole too large.
    pub scrap: Probability,
}

impl fmt::Display for Outcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "good {:.2} %, rework {:.2} %, scrap {:.2} %",
            100.0 * self.good.value(),
            100.0 * self.rework.value(),
            100.0 * self.scrap.value()
        )
    }
}

/// What comes of sizes that scatter about `mean`.
///
/// P(good) = F(U - mu) - F(L - mu); of a shaft what lies below L is scrap, above U rework; of a hole
/// the other way round.
///
/// # Units
/// Probabilities are plain numbers from 0 to 1.
/// # Source
/// The definition of a distribution; derived.
/// # Example
/// ```
/// use turnwright::{physics::spread::{outcome, SizeSpread}, Diameter, Feature, Limits};
/// let zone = Limits::new(Diameter::from_mm(39.984)?, Diameter::from_mm(40.0)?)?;
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let shaft = outcome(zone, Diameter::from_mm(39.992)?, spread, Feature::Shaft);
/// assert_eq!(shaft.to_string(), "good 95.45 %, rework 2.28 %, scrap 2.28 %");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn outcome(limits: Limits, mean: Diameter, spread: SizeSpread, feature: Feature) -> Outcome {
    let (low, high) = (
        limits.smallest().mm() - mean.mm(),
        limits.largest().mm() - mean.mm(),
    );
    let (under, over) = (spread.share_below(low), spread.share_above(high));
    let good = if low > 0.0 {
        // The zone lies wholly in a tail: the difference there, not of two shares near 1.
        spread.share_above(low) - over
    } else if high < 0.0 {
        spread.share_below(high) - under
    } else {
        1.0 - under - over
    };
    let chance = |p: f64| Probability::computed_trade(p.clamp(0.0, 1.0));
    let (rework, scrap) = match feature {
        Feature::Shaft => (over, under),
        Feature::Hole => (under, over),
    };
    Outcome {
        good: chance(good),
        rework: chance(rework),
        scrap: chance(scrap),
    }
}

/// How well a process fits a zone.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ProcessCapability {
    /// Cp: the width of the zone over six standard deviations.
    pub cp: Capability,
    /// Cpk: the distance of the mean from the nearer limit over three standard deviations.
    pub cpk: CapabilityIndex,
}

/// The capability of a process.
///
/// Cp = (U - L) / (6 sigma), Cpk = min(U - mu, mu - L) / (3 sigma)
///
/// # Source
/// Statistical process control, common definitions; derived.
/// # Example
/// ```
/// use turnwright::{physics::spread::capability, Diameter, Limits};
/// let zone = Limits::new(Diameter::from_mm(39.984)?, Diameter::from_mm(40.0)?)?;
/// let process = capability(zone, Diameter::from_mm(39.994)?, "0.002 mm".parse()?);
/// assert_eq!(process.cpk.to_string().parse::<f64>().map(|c| (c * 1e6).round()), Ok(1e6));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn capability(limits: Limits, mean: Diameter, u: StandardUncertainty) -> ProcessCapability {
    let (low, high, mu) = (limits.smallest().mm(), limits.largest().mm(), mean.mm());
    ProcessCapability {
        cp: Capability::computed_trade((high - low) / (6.0 * u.mm())),
        cpk: CapabilityIndex::computed_trade((high - mu).min(mu - low) / (3.0 * u.mm())),
    }
}

/// The chance that a part is good whose size was measured with a standard uncertainty.
///
/// P = Phi((U - m) / u) - Phi((L - m) / u)
///
/// # Source
/// JCGM 106:2012, conformance probability of a normal law, nothing being known before the
/// measurement; from memory.
/// # Example
/// ```
/// use turnwright::{physics::spread::chance_that_good, Diameter, Limits};
/// let zone = Limits::new(Diameter::from_mm(39.984)?, Diameter::from_mm(40.0)?)?;
/// let on_the_limit = chance_that_good(Diameter::from_mm(40.0)?, zone, "0.001 mm".parse()?);
/// assert!((on_the_limit.value() - 0.5).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn chance_that_good(measured: Diameter, limits: Limits, u: StandardUncertainty) -> Probability {
    outcome(limits, measured, SizeSpread::normal(u), Feature::Shaft).good
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn mixed(sigma: f64, half: f64) -> SizeSpread {
        SizeSpread::of_parts(sigma, half)
    }

    #[test]
    fn the_nodes_integrate_powers() {
        // A rule of eight points is exact for powers up to 15; the odd ones vanish by symmetry.
        for power in [0, 2, 4, 6, 8, 10, 12, 14] {
            let sum: f64 = NODES.iter().map(|(x, w)| 2.0 * w * x.powi(power)).sum();
            let exact = 1.0 / f64::from(power + 1);
            assert!((sum - exact).abs() < 4e-16, "{power} {sum}");
        }
    }

    #[test]
    fn a_narrow_uniform_part_hardly_matters_and_a_narrow_normal_one_neither() {
        for x in [-8.0, -3.0, -0.5, 0.0, 0.7, 5.0] {
            let (normal, thin) = (mixed(1.0, 0.0), mixed(1.0, 1e-7));
            // The difference is a^2 / 6 times the curvature: far below the rounding of a share.
            let rel = thin.share_below(x) / normal.share_below(x) - 1.0;
            assert!(rel.abs() < 1e-12, "{x} {rel}");
            let (uniform, sharp) = (mixed(0.0, 1.0), mixed(1e-9, 1.0));
            assert!(
                (sharp.share_below(x) - uniform.share_below(x)).abs() < 1e-9,
                "{x}"
            );
        }
    }

    #[test]
    fn both_forms_of_the_share_meet_where_one_takes_over() {
        for x in [-20.0, -9.0, -2.0, -0.3, 0.0, 1.5] {
            let (narrow, wide) = (mixed(1.0, NARROW * (1.0 - 1e-14)), mixed(1.0, NARROW));
            let (a, b) = (narrow.share_below(x), wide.share_below(x));
            // Rounding, times x^2 in the far tail, times 20 where the closed form takes a difference: 400
            // times 20 times 1e-15 at most.
            assert!((a / b - 1.0).abs() < 1e-11, "{x} {a:e} {b:e}");
            let (a, b) = (narrow.density(x), wide.density(x));
            assert!((a / b - 1.0).abs() < 1e-12, "{x} {a:e} {b:e}");
        }
    }

    proptest! {
        #[test]
        fn the_share_is_the_integral_of_the_density(sigma in 0.1..5.0_f64, half in 0.0..8.0_f64, x in -9.0..9.0_f64) {
            let spread = mixed(sigma, half);
            let h = 1e-4 * sigma;
            let slope = (spread.share_below(x + h) - spread.share_below(x - h)) / (2.0 * h);
            // A central difference is off by h^2 / 6 of the third derivative, and by 1e-16 / h of rounding.
            prop_assert!((slope - spread.density(x)).abs() < 1e-7 / sigma, "{} {}", slope, spread.density(x));
        }

        #[test]
        fn the_slope_is_that_of_the_logarithm_of_the_density(sigma in 0.1..5.0_f64, half in 0.0..8.0_f64, x in -6.0..6.0_f64) {
            let spread = mixed(sigma, half);
            let h = 1e-5 * sigma;
            let (above, below) = (spread.density(x + h), spread.density(x - h));
            prop_assume!(below > 1e-12 && above > 1e-12);
            let slope = (above.ln() - below.ln()) / (2.0 * h);
            // As above; where the density is the difference of two shares, rounding weighs most.
            prop_assert!((slope - spread.slope(x)).abs() < 1e-4 / sigma, "{} {}", slope, spread.slope(x));
        }

        #[test]
        fn outcomes_sum_to_one_and_mirror(low in 10.0..50.0_f64, width in 0.001..0.5_f64, at in -1.0..2.0_f64, sigma in 1e-4..0.2_f64, half in 0.0..0.2_f64) {
            let zone = Limits::new(Diameter::from_mm(low).unwrap(), Diameter::from_mm(low + width).unwrap()).unwrap();
            let mean = Diameter::from_mm(low + at * width).unwrap();
            let mirror = Diameter::from_mm(low + (1.0 - at) * width).unwrap();
            let spread = mixed(sigma, half);
            let shaft = outcome(zone, mean, spread, Feature::Shaft);
            let hole = outcome(zone, mirror, spread, Feature::Hole);
            let sum = shaft.good.value() + shaft.rework.value() + shaft.scrap.value();
            prop_assert!((sum - 1.0).abs() < 1e-14);
            // Sizes of 50 mm carry their last digit at 7e-15 mm: that far the mirror image may be off.
            prop_assert!((shaft.scrap.value() - hole.scrap.value()).abs() < 1e-10);
        }
    }
}
