//! Quantiles of Student's t law, for coverage factors.

use std::f64::consts::{FRAC_1_PI, PI};

use super::{maths, random};
use crate::quantity::{Confidence, CoverageFactor, DegreesOfFreedom};

/// From here on the first five terms of the expansion in 1 / nu give the last digits.
const MANY: f64 = 3000.0;

/// The coverage factor of a level of confidence: the two-sided quantile of Student's t law; of the
/// normal law where the degrees of freedom are not limited.
///
/// P(|t| <= k) = p
///
/// # Range
/// Any real number of degrees of freedom from 1; relative error below 1e-11.
/// # Source
/// JCGM 100:2008 (GUM) G.3 and table G.2, from memory. Computed from the incomplete beta function by
/// its continued fraction (Abramowitz and Stegun 26.5.8, from memory) and Newton's rule; for many
/// degrees of freedom by Fisher's expansion (the same, 26.7.5).
/// # Example
/// ```
/// use turnwright::physics::student::coverage_factor;
/// let k = coverage_factor(Some("5".parse()?), "0.95".parse()?);
/// assert!((k.value() - 2.57).abs() < 0.005);
/// let k = coverage_factor(None, "0.95".parse()?);
/// assert!((k.value() - 1.96).abs() < 0.005);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn coverage_factor(
    degrees_of_freedom: Option<DegreesOfFreedom>,
    confidence: Confidence,
) -> CoverageFactor {
    let tail = 0.5 * (1.0 - confidence.value());
    let z = -random::quantile(tail);
    CoverageFactor::computed_trade(match degrees_of_freedom {
        None => z,
        Some(nu) => upper_quantile(nu.value(), tail, z),
    })
}

/// The t above which a share `tail` < 1/2 lies; `z` is that of the normal law.
fn upper_quantile(nu: f64, tail: f64, z: f64) -> f64 {
    if nu >= MANY {
        return fisher(nu, z);
    }
    let mut t = start(nu, tail, z);
    for _ in 0..60 {
        let share = share_above(nu, t);
        // Newton's rule for ln(share) over ln(t), which is concave: it converges from any side.
        let step = maths::steady_ln(share / tail) * share / (t * density(nu, t));
        t *= maths::steady_exp(step.clamp(-3.0, 3.0));
        // What is left after a step is about its square.
        if step.abs() < 1e-7 {
            break;
        }
    }
    t
}

/// A first value: exact for one and two degrees of freedom.
fn start(nu: f64, tail: f64, z: f64) -> f64 {
    if nu < 1.5 {
        return 1.0 / (PI * tail).tan();
    }
    if nu < 3.0 {
        let p = 1.0 - 2.0 * tail;
        return p * (2.0 / (1.0 - p * p)).sqrt();
    }
    fisher(nu, z)
}

/// Fisher's expansion of the quantile in 1 / nu.
fn fisher(nu: f64, z: f64) -> f64 {
    let y = z * z;
    let terms = [
        (y + 1.0) / 4.0,
        ((5.0 * y + 16.0) * y + 3.0) / 96.0,
        (((3.0 * y + 19.0) * y + 17.0) * y - 15.0) / 384.0,
        ((((79.0 * y + 776.0) * y + 1482.0) * y - 1920.0) * y - 945.0) / 92160.0,
    ];
    let sum = terms.iter().rev().fold(0.0, |sum, term| (sum + term) / nu);
    z * (1.0 + sum)
}

/// The density of the t law.
fn density(nu: f64, t: f64) -> f64 {
    let log = -0.5 * (nu + 1.0) * libm::log1p(t * t / nu);
    gamma_ratio(nu) / (nu * PI).sqrt() * maths::steady_exp(log)
}

/// Gamma((nu + 1) / 2) / Gamma(nu / 2).
fn gamma_ratio(nu: f64) -> f64 {
    // Gamma(a + 1/2) / Gamma(a) of a large a by its asymptotic series; of a small one after steps up.
    let (mut a, mut factor) = (0.5 * nu, 1.0);
    while a < 20.0 {
        factor *= a / (a + 0.5);
        a += 1.0;
    }
    let r = 1.0 / a;
    let series = 1.0
        + r * (-1.0 / 8.0
            + r * (1.0 / 128.0
                + r * (5.0 / 1024.0
                    + r * (-21.0 / 32768.0
                        + r * (-399.0 / 262_144.0
                            + r * (869.0 / 4_194_304.0 + r * (39325.0 / 33_554_432.0)))))));
    factor * a.sqrt() * series
}

/// The share of the t law above t > 0: half the regularised incomplete beta function.
fn share_above(nu: f64, t: f64) -> f64 {
    let (a, b) = (0.5 * nu, 0.5);
    let x = nu / (nu + t * t);
    let y = t * t / (nu + t * t);
    // x^a y^b / B(a, b); B(a, 1/2) = Gamma(a) sqrt(pi) / Gamma(a + 1/2).
    let front = maths::steady_exp(-a * libm::log1p(t * t / nu))
        * y.sqrt()
        * gamma_ratio(nu)
        * FRAC_1_PI.sqrt();
    if x < (a + 1.0) / (a + b + 2.0) {
        0.5 * front * fraction(a, b, x) / a
    } else {
        0.5 * (1.0 - front * fraction(b, a, y) / b)
    }
}

/// The continued fraction of the incomplete beta function, by Lentz's rule.
fn fraction(a: f64, b: f64, x: f64) -> f64 {
    const TINY: f64 = 1e-300;
    let guard = |v: f64| if v.abs() < TINY { TINY } else { v };
    let mut c = 1.0;
    let mut d = 1.0 / guard(1.0 - (a + b) * x / (a + 1.0));
    let mut sum = d;
    for m in 1..10_000 {
        let m = f64::from(m);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        d = 1.0 / guard(1.0 + even * d);
        c = guard(1.0 + even / c);
        sum *= d * c;
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        d = 1.0 / guard(1.0 + odd * d);
        c = guard(1.0 + odd / c);
        let change = d * c;
        sum *= change;
        if (change - 1.0).abs() < 2e-16 {
            break;
        }
    }
    sum
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_share_above_a_quantile_is_the_tail_it_was_asked_for() {
        for nu in [1.0, 1.4, 2.0, 2.9, 3.0, 7.5, 30.0, 250.0, 2999.0] {
            for tail in [0.25, 0.1, 0.025, 1e-4, 1e-9] {
                let t = upper_quantile(nu, tail, -random::quantile(tail));
                let back = share_above(nu, t);
                // Newton stops when what is left is the square of 1e-7; the rest is rounding.
                assert!((back / tail - 1.0).abs() < 1e-12, "{nu} {tail} {back}");
            }
        }
    }

    #[test]
    fn expansion_and_fraction_meet_where_one_takes_over() {
        for tail in [0.25, 0.025, 1e-6, 1e-9] {
            let z = -random::quantile(tail);
            let (below, above) = (upper_quantile(MANY - 1e-6, tail, z), fisher(MANY, z));
            // The first term left out is about z^11 / nu^5, far below 1e-10 here.
            assert!(
                (below / above - 1.0).abs() < 1e-10,
                "{tail} {below} {above}"
            );
        }
    }
}
