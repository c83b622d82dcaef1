//! How sizes scatter, and how many of them come out good, with metal left, or lost.
//!
//! Symbols: mu mean, u standard uncertainty of the normal part, a half width of the uniform part, L
//! and U the limits, phi and Phi density and share of the standard normal law. All mathematics here
//! gives the same last digit on every machine.

use std::fmt;

use super::maths::{portable, sqrt};
use super::normal;
use super::student;
use crate::quantity::{
    Capability, CapabilityIndex, DegreesOfFreedom, Diameter, HalfWidth, Probability,
    StandardUncertainty,
};
use crate::standards::limits::{Feature, Limits};

/// How a size scatters about its mean: a normal part, a uniform part, or the sum of both.
///
/// # Units
/// The types carry them.
/// # Source
/// JCGM 100:2008, 4.3 and 4.4 (from memory).
/// # Example
/// ```
/// use turnwright::physics::spread::SizeSpread;
/// let spread = SizeSpread::normal_and_uniform("0.003 mm".parse()?, "0.005 mm".parse()?);
/// assert!((spread.standard().mm() - 0.004163).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeSpread {
    /// Millimetres; 0 without a normal part.
    normal: f64,
    /// Millimetres; 0 without a uniform part. One of the two is above 0.
    half_width: f64,
}

impl SizeSpread {
    /// A normal law.
    #[must_use]
    pub fn normal(u: StandardUncertainty) -> Self {
        Self {
            normal: u.mm(),
            half_width: 0.0,
        }
    }

    /// The sum of a normal law and an independent uniform one of +-a.
    #[must_use]
    pub fn normal_and_uniform(u: StandardUncertainty, a: HalfWidth) -> Self {
        Self {
            normal: u.mm(),
            half_width: a.mm(),
        }
    }

    /// A uniform law of +-a.
    #[must_use]
    pub fn uniform(a: HalfWidth) -> Self {
        Self {
            normal: 0.0,
            half_width: a.mm(),
        }
    }

    /// The standard uncertainty of both parts together: sqrt(u^2 + a^2/3).
    #[must_use]
    pub fn standard(self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(sqrt(
            self.normal * self.normal + self.half_width * self.half_width / 3.0,
        ))
    }

    /// Millimetres of the normal part, 0 without one.
    pub(crate) fn normal_part(self) -> f64 {
        self.normal
    }

    /// Millimetres of the uniform part, 0 without one.
    pub(crate) fn uniform_part(self) -> f64 {
        self.half_width
    }

    /// The share of sizes below the mean plus an offset in millimetres.
    ///
    /// F(x) = (u/2a) [G((x + a)/u) - G((x - a)/u)], G(z) = z Phi(z) + phi(z). Both tails keep their
    /// relative accuracy: take the share above as that below the negative offset.
    pub(crate) fn share_below(self, offset_mm: f64) -> f64 {
        if offset_mm > 0.0 {
            1.0 - self.tail(offset_mm)
        } else {
            self.tail(-offset_mm)
        }
    }

    /// The share beyond an offset of `away` >= 0 to one side.
    fn tail(self, away: f64) -> f64 {
        let (u, a) = (self.normal, self.half_width);
        if a == 0.0 {
            return normal::share_above(away / u);
        }
        if u == 0.0 {
            return ((a - away) / (2.0 * a)).max(0.0);
        }
        if let Some((y, sums)) = self.narrow(away) {
            return normal::share_above(y) + normal::density(y) * sums.odd;
        }
        // G(-y) is H(y), and G(y) = y + H(y).
        let (near, far) = ((away - a) / u, (away + a) / u);
        let of_near = if near < 0.0 {
            normal::tail_moment(-near) - near
        } else {
            normal::tail_moment(near)
        };
        (of_near - normal::tail_moment(far)) * (u / (2.0 * a))
    }

    /// The density per millimetre at an offset from the mean in millimetres.
    #[allow(dead_code)]
    pub(crate) fn density(self, offset_mm: f64) -> f64 {
        let (u, a) = (self.normal, self.half_width);
        if u == 0.0 {
            return if offset_mm.abs() <= a { 0.5 / a } else { 0.0 };
        }
        portable::exp(LogDensity::of(self).at(offset_mm.abs()).0)
    }

    /// Where the uniform part is so narrow that the closed form is a difference of equals: the sums
    /// of a Taylor series of the normal law in h = a/u.
    ///
    /// The mean of a function over y - h to y + h is the sum of its even derivatives times
    /// h^2k/(2k + 1)!; those of the normal law are Hermite polynomials He times phi.
    fn narrow(self, away: f64) -> Option<(f64, Sums)> {
        let (y, h) = (away / self.normal, self.half_width / self.normal);
        if h > 0.25 || y * h > 1.0 {
            return None;
        }
        // He_(n+1) = y He_n - n He_(n-1), from He_0 = 1 and He_1 = y; `weight` is h^2k/(2k + 1)!.
        let (mut before, mut here, mut weight) = (1.0, y, 1.0);
        let mut sums = Sums {
            odd: 0.0,
            even: 0.0,
            next: y,
        };
        for k in 1..TERMS {
            let n = f64::from(2 * k);
            weight *= h * h / (n * (n + 1.0));
            // `here` is He_(2k - 1).
            sums.odd += weight * here;
            let even = y * here - (n - 1.0) * before;
            sums.even += weight * even;
            (before, here) = (even, y * even - n * here);
            sums.next += weight * here;
        }
        Some((y, sums))
    }
}

/// The logarithm of a density, with what is the same at every place of it.
///
/// With a normal part only: without one there is no logarithm beyond the ends.
#[derive(Debug, Clone, Copy)]
pub(crate) struct LogDensity {
    spread: SizeSpread,
    /// ln(u sqrt(2 pi)) without a uniform part; else ln(2a) and ln(2a sqrt(2 pi)).
    scale: [f64; 2],
}

impl LogDensity {
    pub(crate) fn of(spread: SizeSpread) -> Self {
        let root = sqrt(std::f64::consts::TAU);
        let (u, a) = (spread.normal, spread.half_width);
        let scale = match a == 0.0 {
            true => [portable::ln(u * root); 2],
            false => [portable::ln(2.0 * a), portable::ln(2.0 * a * root)],
        };
        Self { spread, scale }
    }

    /// The logarithm per millimetre at `away` >= 0 from the mean, and its slope.
    pub(crate) fn at(self, away: f64) -> (f64, f64) {
        // So small a share of a sum rounds away.
        const NOTHING: f64 = 0.125 * f64::EPSILON;
        // Its logarithm is -38.1.
        const FALLEN: f64 = -39.0;
        let Self { spread, scale } = self;
        let (u, a) = (spread.normal, spread.half_width);
        let root = sqrt(std::f64::consts::TAU);
        if a == 0.0 {
            let y = away / u;
            return (-0.5 * y * y - scale[0], -y / u);
        }
        if let Some((y, sums)) = spread.narrow(away) {
            return (
                -0.5 * y * y - portable::ln(u * root) + portable::ln_1p(sums.even),
                -sums.next / (u * (1.0 + sums.even)),
            );
        }
        let (near, far) = ((away - a) / u, (away + a) / u);
        // phi(far)/phi(near), and more than Q(far)/Q(|near|): where it is nothing, so is the far end.
        let exponent = -2.0 * (away / u) * (a / u);
        let fall = match exponent < FALLEN {
            true => 0.0,
            false => portable::exp(exponent),
        };
        let far_counts = fall >= NOTHING;
        if near < 0.0 {
            let mut inside = normal::share_above(-near);
            if far_counts {
                inside += normal::share_above(far);
            }
            return (
                portable::ln_1p(-inside) - scale[0],
                -normal::density(near) * (1.0 - fall) / (u * (1.0 - inside)),
            );
        }
        let mut part = normal::mills(near);
        if far_counts {
            part -= normal::mills(far) * fall;
        }
        (
            portable::ln(part) - 0.5 * near * near - scale[1],
            -(1.0 - fall) / (u * part),
        )
    }
}

/// Enough for the last digit at h = 1/4 and y h = 1.
const TERMS: u32 = 10;

struct Sums {
    /// Of He_(2k - 1), from k = 1 on.
    odd: f64,
    /// Of He_2k, from k = 1 on.
    even: f64,
    /// Of He_(2k + 1), from k = 0 on.
    next: f64,
}

/// What comes of the parts: shares of good ones, of those with metal left, of lost ones.
///
/// The three make one.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Outcome {
    /// Inside the limits.
    pub good: Probability,
    /// Metal left beyond a limit: another cut can save the part.
    pub rework: Probability,
    /// Too much metal gone.
    pub scrap: Probability,
}

impl Outcome {
    /// What comes out good for certain.
    #[must_use]
    pub fn sure() -> Self {
        Self {
            good: Probability::computed_trade(1.0),
            rework: Probability::computed_trade(0.0),
            scrap: Probability::computed_trade(0.0),
        }
    }

    /// What comes out for certain: good, or else too large or too small.
    pub(crate) fn certain(good: bool, large: bool, feature: Feature) -> Self {
        let one = |is: bool| Probability::computed_trade(f64::from(u8::from(is)));
        let saved = large == (feature == Feature::Shaft);
        Self {
            good: one(good),
            rework: one(!good && saved),
            scrap: one(!good && !saved),
        }
    }

    /// This outcome by a chance, else another one.
    pub(crate) fn or(self, chance: Probability, other: Self) -> Self {
        let p = chance.value();
        let mixed = |this: Probability, other: Probability| {
            Probability::computed_trade(p * this.value() + (1.0 - p) * other.value())
        };
        Self {
            good: mixed(self.good, other.good),
            rework: mixed(self.rework, other.rework),
            scrap: mixed(self.scrap, other.scrap),
        }
    }

    /// Of two sizes on one part, each on its own: good where both are, lost where either is, to rework
    /// where neither is lost and not both are good.
    ///
    /// # Source
    /// Product of independent probabilities.
    /// # Example
    /// ```
    /// use turnwright::{physics::spread::{outcome, Outcome, SizeSpread}, Feature, Limits};
    /// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
    /// let one = outcome(limits, "39.995 mm".parse()?, SizeSpread::normal("0.004 mm".parse()?), Feature::Shaft);
    /// let both = one.and(one);
    /// assert!((both.good.value() - one.good.value().powi(2)).abs() < 1e-15);
    /// assert_eq!(one.and(Outcome::sure()), one);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn and(self, other: Self) -> Self {
        let (a, b) = (self, other);
        let p = Probability::value;
        Self {
            good: Probability::computed_trade(p(a.good) * p(b.good)),
            // Summed from what is small, so that a small chance is not lost against one.
            rework: Probability::computed_trade(
                p(a.rework) * (p(b.good) + p(b.rework)) + p(a.good) * p(b.rework),
            ),
            scrap: Probability::computed_trade(p(a.scrap) + (p(a.good) + p(a.rework)) * p(b.scrap)),
        }
    }
}

impl fmt::Display for Outcome {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "good {}, rework {}, scrap {}",
            Percent(self.good),
            Percent(self.rework),
            Percent(self.scrap)
        )
    }
}

/// A probability as people read it.
pub(crate) struct Percent(pub(crate) Probability);

impl fmt::Display for Percent {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let percent = 100.0 * self.0.value();
        if percent == 0.0 || (0.01..=99.99).contains(&percent) || percent == 100.0 {
            write!(f, "{percent:.2} %")
        } else if percent > 50.0 {
            f.write_str("over 99.99 %")
        } else {
            write!(f, "{percent:.1e} %")
        }
    }
}

/// How many parts come out good, to rework, and lost, where sizes scatter about a mean.
///
/// Of a shaft: scrap F(L - mu), rework 1 - F(U - mu), good what is left; of a hole the first two
/// change places. With a normal spread F(x) = Phi(x/u).
///
/// # Units
/// The types carry them.
/// # Range
/// A share keeps its relative accuracy down to the smallest numbers; whether a real process follows
/// the law so far out is another question.
/// # Source
/// JCGM 106:2012, 7 (conformance probability, from memory); the sum of a normal and a uniform law in
/// closed form (derived).
/// # Example
/// ```
/// use turnwright::{physics::spread::{outcome, SizeSpread}, Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let spread = SizeSpread::normal("0.004 mm".parse()?);
/// let come_out = outcome(limits, "39.995 mm".parse()?, spread, Feature::Shaft);
/// assert!((come_out.good.value() - 0.8914).abs() < 1e-4);
/// assert_eq!(come_out.to_string(), "good 89.14 %, rework 10.56 %, scrap 0.30 %");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn outcome(limits: Limits, mean: Diameter, spread: SizeSpread, feature: Feature) -> Outcome {
    shares(limits, mean, feature, |offset| spread.share_below(offset))
}

/// How many parts come out good, to rework, and lost, where the spread itself is known from few
/// measurements only.
///
/// As [`outcome`], with F(x) = T(x/u), T Student's law of nu degrees of freedom.
///
/// # Units
/// The types carry them.
/// # Range
/// nu from 1 on; from some hundred on nothing is left of the difference to the normal law.
/// # Source
/// JCGM 101:2008, 6.4.9, the scaled and shifted t-distribution, and JCGM 100:2008, G.3 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::spread::outcome_of_few, Feature, Limits};
/// let limits = Limits::new("34.975 mm".parse()?, "35 mm".parse()?)?;
/// let (u, nu) = ("0.006 mm".parse()?, "2".parse()?);
/// let come_out = outcome_of_few(limits, limits.middle(), u, nu, Feature::Shaft);
/// // A normal law would promise 0.9628.
/// assert!((come_out.good.value() - 0.8274).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn outcome_of_few(
    limits: Limits,
    mean: Diameter,
    u: StandardUncertainty,
    nu: DegreesOfFreedom,
    feature: Feature,
) -> Outcome {
    let (u, nu) = (u.mm(), nu.value());
    shares(limits, mean, feature, |offset| {
        let tail = student::share_below(offset.abs() / u, nu);
        if offset > 0.0 { 1.0 - tail } else { tail }
    })
}

/// The three shares, by the share of sizes below the mean plus an offset in millimetres.
pub(super) fn shares(
    limits: Limits,
    mean: Diameter,
    feature: Feature,
    share_below: impl Fn(f64) -> f64,
) -> Outcome {
    let to_smallest = limits.smallest().mm() - mean.mm();
    let to_largest = limits.largest().mm() - mean.mm();
    let (below, above) = (share_below(to_smallest), share_below(-to_largest));
    // With the mean outside of the zone good is the small difference of two tails.
    let good = if to_smallest > 0.0 {
        share_below(-to_smallest) - above
    } else if to_largest < 0.0 {
        share_below(to_largest) - below
    } else {
        1.0 - below - above
    };
    let (rework, scrap) = match feature {
        Feature::Shaft => (above, below),
        Feature::Hole => (below, above),
    };
    Outcome {
        good: Probability::computed_trade(good),
        rework: Probability::computed_trade(rework),
        scrap: Probability::computed_trade(scrap),
    }
}

/// What a process can do beside what is asked.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ProcessCapability {
    /// C_p: the width of the zone over that of the spread.
    pub cp: Capability,
    /// C_pk: the same with the mean where it is; negative with the mean outside of the zone.
    pub cpk: CapabilityIndex,
}

/// The capability of a process with a normal spread.
///
/// C_p = (U - L)/(6 u), C_pk = min(U - mu, mu - L)/(3 u)
///
/// # Units
/// The types carry them.
/// # Range
/// A normal spread, known well: from few parts the indices scatter themselves.
/// # Source
/// ISO 22514-2 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::spread::capability, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let found = capability(limits, "39.994 mm".parse()?, "0.002 mm".parse()?);
/// assert!((found.cp.value() - 4.0 / 3.0).abs() < 1e-9 && (found.cpk.value() - 1.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn capability(limits: Limits, mean: Diameter, u: StandardUncertainty) -> ProcessCapability {
    let (smallest, largest) = (limits.smallest().length(), limits.largest().length());
    let (mean, u) = (mean.length(), u.length());
    let near = (largest - mean).min(mean - smallest);
    ProcessCapability {
        cp: Capability::computed_trade(super::maths::number((largest - smallest) / (6.0 * u))),
        cpk: CapabilityIndex::computed_trade(super::maths::number(near / (3.0 * u))),
    }
}

/// The chance that a part measured so is good: conformance probability.
///
/// Phi((U - m)/u) - Phi((L - m)/u), m the size measured.
///
/// # Units
/// The types carry them.
/// # Range
/// Nothing is known of the part beside the measurement. Where the process scatters less than the
/// measurement, the part is better than this says.
/// # Source
/// JCGM 106:2012, 7.2 to 7.4 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::spread::chance_that_good, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let on_the_limit = chance_that_good("40 mm".parse()?, limits, "0.002 mm".parse()?);
/// assert!((on_the_limit.value() - 0.5).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn chance_that_good(measured: Diameter, limits: Limits, u: StandardUncertainty) -> Probability {
    outcome(limits, measured, SizeSpread::normal(u), Feature::Shaft).good
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn spread(u: f64, a: f64) -> SizeSpread {
        SizeSpread {
            normal: u,
            half_width: a,
        }
    }

    #[test]
    fn the_sum_of_both_laws_is_its_closed_form() {
        // mpmath, the closed form with 700 digits: offset, u, a, share below, density.
        for (x, u, a, share, density) in [
            (-0.006, 0.003, 0.005, 0.07626190612319701, 36.93184737917985),
            (0.0, 0.003, 0.005, 0.5, 90.44192954543706),
            (
                -0.001,
                0.003,
                0.0001,
                0.36946463170446264,
                125.77370536774383,
            ),
            (
                -0.03,
                0.003,
                0.0001,
                7.76311535848639e-24,
                2.612137475144179e-20,
            ),
            (
                -0.03,
                0.003,
                0.00001,
                7.621278026621732e-24,
                2.565336459186561e-20,
            ),
            (
                -0.06,
                0.003,
                0.001,
                1.5793313823935825e-87,
                1.0406522823864116e-83,
            ),
            (
                -0.06,
                0.003,
                0.0007,
                3.1094480114218244e-88,
                2.059184744104319e-84,
            ),
            (
                -0.02,
                0.003,
                0.00074,
                1.9909886635322772e-11,
                4.4439320010752476e-8,
            ),
            (
                -0.02,
                0.003,
                0.00076,
                2.033282168262919e-11,
                4.534714274239385e-8,
            ),
            (
                -0.0001,
                0.003,
                0.00074,
                0.48683794286460275,
                131.57281061702548,
            ),
            (
                -0.0001,
                0.003,
                0.00076,
                0.48684518969585977,
                131.50042182172712,
            ),
            (
                -0.1,
                0.003,
                0.02,
                1.6084028444661497e-159,
                1.4336956255006254e-155,
            ),
            (-0.01, 0.000001, 0.01, 1.9947114020071634e-5, 25.0),
            (
                -0.010005,
                0.000001,
                0.01,
                2.673082766919324e-12,
                1.4332578593974823e-5,
            ),
            (-0.005, 0.0000001, 0.01, 0.25, 50.0),
            (
                -0.004,
                0.003,
                0.000000001,
                0.09121121972587191,
                54.67002489199866,
            ),
            (
                -0.1,
                0.003,
                0.000000001,
                6.352273120332472e-244,
                7.064422134955956e-240,
            ),
        ] {
            let both = spread(u, a);
            // y^2 times the last bit of y = x/u, for y up to 33.
            assert!(
                (both.share_below(x) / share - 1.0).abs() < 1e-12,
                "{x} {u} {a}"
            );
            assert!(
                (both.density(x) / density - 1.0).abs() < 1e-12,
                "{x} {u} {a}"
            );
        }
    }

    fn limits(smallest: f64, largest: f64) -> Limits {
        Limits::new(
            Diameter::from_mm(smallest).unwrap(),
            Diameter::from_mm(largest).unwrap(),
        )
        .unwrap()
    }

    #[test]
    fn a_tail_of_a_billionth_is_not_zero() {
        // mpmath: Q(7) = 1.2798e-12 and Q(7 + 16/..): a mean 7 u above the smallest size.
        let u = StandardUncertainty::from_mm(0.002).unwrap();
        let come_out = outcome(
            limits(39.984, 40.1),
            Diameter::from_mm(39.998).unwrap(),
            SizeSpread::normal(u),
            Feature::Shaft,
        );
        // The offset of 0.014 mm is a difference of sizes of 40 mm: 1e-15 of these is 5e-13 of it.
        assert!((come_out.scrap.value() / 1.279_812_543_885_835e-12 - 1.0).abs() < 1e-9);
    }

    #[test]
    fn people_read_percent() {
        for (share, text) in [
            (0.0, "0.00 %"),
            (0.954_499_7, "95.45 %"),
            (1.3e-12, "1.3e-10 %"),
            (0.999_999_9, "over 99.99 %"),
            (1.0, "100.00 %"),
        ] {
            assert_eq!(
                Percent(Probability::computed_trade(share)).to_string(),
                text
            );
        }
    }

    proptest! {
        #[test]
        fn shares_make_one_and_a_hole_mirrors_a_shaft(
            mean in 19.9_f64..20.1, width in 1e-4_f64..0.1, u in 1e-9_f64..0.1, a in 0.0_f64..0.1,
        ) {
            let zone = limits(20.0, 20.0 + width);
            let mean = Diameter::from_mm(mean).unwrap();
            let shaft = outcome(zone, mean, spread(u, a), Feature::Shaft);
            let hole = outcome(zone, mean, spread(u, a), Feature::Hole);
            let sum = shaft.good.value() + shaft.rework.value() + shaft.scrap.value();
            prop_assert!((sum - 1.0).abs() < 4e-16, "{}", sum);
            prop_assert!(shaft.good.value() >= 0.0);
            prop_assert_eq!((shaft.rework, shaft.scrap), (hole.scrap, hole.rework));
            prop_assert_eq!(shaft.good, hole.good);
        }

        #[test]
        fn shares_grow_with_the_offset_and_their_slope_is_the_density(
            y in -6.0_f64..6.0, h in 0.01_f64..5.0,
        ) {
            let both = spread(1.0, h);
            let step = 1e-4;
            let slope = (both.share_below(y + step) - both.share_below(y - step)) / (2.0 * step);
            prop_assert!(slope >= 0.0);
            // The next term of the difference is step^2/6 times the second derivative, below 1.
            prop_assert!((slope - both.density(y)).abs() < 1e-8);
            let (log, bend) = LogDensity::of(both).at(y.abs());
            let next = LogDensity::of(both).at(y.abs() + step).0;
            // Half a step times the second derivative, below 1.1 in units of u.
            prop_assert!(((next - log) / step - bend).abs() < 1e-4, "{} {}", (next - log) / step, bend);
        }

        #[test]
        fn a_vanishing_part_leaves_the_other_alone(y in 0.0_f64..8.0) {
            let (normal, nearly) = (spread(1.0, 0.0), spread(1.0, 1e-9));
            prop_assert!((normal.share_below(-y) / nearly.share_below(-y) - 1.0).abs() < 1e-13);
            let (flat, nearly) = (spread(0.0, 9.0), spread(1e-9, 9.0));
            prop_assert!((flat.share_below(-y) - nearly.share_below(-y)).abs() < 1e-10);
        }
    }
}
