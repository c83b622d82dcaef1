//! The law by which a size scatters whose budget is known: its components convolved, each by its own law.
//!
//! Symbols: u standard uncertainty of the normal part, a >= b half widths of the two widest uniform parts, w
//! half width of an arcsine part, nu degrees of freedom of what is known from few readings, Phi the standard
//! normal law. Lengths in millimetres. The same last digit on every machine.
//!
//! | part | how |
//! |---|---|
//! | normal, two uniform (a triangular one is two of half its width) | closed form, from the second integral of Phi |
//! | arcsine | mean over its angle (Gauss and Chebyshev) |
//! | Student's | mean over the scale of a normal law, sigma = u_t sqrt(nu)/y, y^2 of the chi-squared law (trapezoids in ln y) |
//! | narrower uniform and arcsine parts | as normal ones: three or more are nearly that |

use std::f64::consts::PI;

use super::maths::{portable, sqrt};
use super::normal;
use super::spread::SizeSpread;
use super::student;
use crate::quantity::{HalfWidth, StandardUncertainty};

/// The parts that a law is put together from.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub(super) struct Parts {
    /// Variance of the normal part.
    normal: f64,
    /// Variance of what is known from few readings, and the sum of its squares over their degrees.
    few: (f64, f64),
    /// Half widths of uniform parts, the widest first.
    ends: [f64; 2],
    /// Half width of the widest arcsine part.
    swing: f64,
}

impl Parts {
    pub(super) fn add_normal(&mut self, variance: f64) {
        self.normal += variance;
    }

    /// What is known from few readings only: Welch and Satterthwaite's rule puts several together.
    pub(super) fn add_few(&mut self, variance: f64, nu: f64) {
        self.few.0 += variance;
        self.few.1 += variance * variance / nu;
    }

    pub(super) fn add_uniform(&mut self, half_width: f64) {
        let [wide, narrow] = self.ends;
        let (kept, over) = match half_width {
            a if a > wide => ([a, wide], narrow),
            a if a > narrow => ([wide, a], narrow),
            a => (self.ends, a),
        };
        self.ends = kept;
        self.normal += over * over / 3.0;
    }

    pub(super) fn add_arcsine(&mut self, half_width: f64) {
        let over = half_width.min(self.swing);
        self.swing = self.swing.max(half_width);
        self.normal += 0.5 * over * over;
    }

    /// With what is too small a part to shape the whole taken as normal.
    pub(super) fn law(mut self) -> SizeLaw {
        // Less than that of the variance moves no share by a ten thousandth.
        const SHAPELESS: f64 = 1e-3;
        let whole = |parts: &Self| {
            let of_ends: f64 = parts.ends.iter().map(|a| a * a / 3.0).sum();
            parts.normal + parts.few.0 + of_ends + 0.5 * parts.swing * parts.swing
        };
        let least = SHAPELESS * whole(&self);
        for end in self.ends.iter_mut().rev() {
            let variance = *end * *end / 3.0;
            if variance < least {
                self.normal += variance;
                *end = 0.0;
            }
        }
        if 0.5 * self.swing * self.swing < least {
            self.normal += 0.5 * self.swing * self.swing;
            self.swing = 0.0;
        }
        let few = (self.few.0 > 0.0).then(|| Few {
            scale: sqrt(self.few.0),
            nu: self.few.0 * self.few.0 / self.few.1,
        });
        SizeLaw {
            normal: sqrt(self.normal),
            few,
            ends: self.ends,
            swing: self.swing,
        }
    }
}

/// Student's law of nu degrees of freedom, scaled.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Few {
    scale: f64,
    nu: f64,
}

/// How a size scatters about its mean; all parts are symmetric.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct SizeLaw {
    normal: f64,
    few: Option<Few>,
    ends: [f64; 2],
    swing: f64,
}

impl SizeLaw {
    /// The same as a normal and a uniform part, where it is no more than that.
    pub(super) fn plain(self) -> Option<SizeSpread> {
        if self.few.is_some() || self.swing > 0.0 || self.ends[1] > 0.0 {
            return None;
        }
        let u = StandardUncertainty::computed_trade(self.normal);
        let a = HalfWidth::computed_trade(self.ends[0]);
        Some(match (self.normal > 0.0, self.ends[0] > 0.0) {
            (_, false) => SizeSpread::normal(u),
            (true, true) => SizeSpread::normal_and_uniform(u, a),
            (false, true) => SizeSpread::uniform(a),
        })
    }

    /// The degrees of freedom of what is known from few readings.
    pub(super) fn few_degrees(self) -> Option<f64> {
        self.few.map(|few| few.nu)
    }

    /// The share of sizes below the mean plus an offset in millimetres.
    pub(super) fn share_below(self, offset: f64) -> f64 {
        if let Some(spread) = self.plain() {
            return spread.share_below(offset);
        }
        let tail = self.beyond(offset.abs()).clamp(0.0, 1.0);
        if offset > 0.0 { 1.0 - tail } else { tail }
    }

    /// The share farther than `away` >= 0 to one side.
    fn beyond(self, away: f64) -> f64 {
        let Some(few) = self.few else {
            return self.swung(self.normal, away);
        };
        if self.normal == 0.0 && self.ends == [0.0; 2] && self.swing == 0.0 {
            return student::share_below(away / few.scale, few.nu);
        }
        // y = sqrt(nu) exp(s t): about t = 0 its law is a normal one of deviation 1, and that of ln y falls
        // slowest to the left, as exp(s nu t).
        const NOTHING: f64 = -24.0;
        let s = 1.0 / sqrt(2.0 * few.nu);
        // A quarter of how far off the real axis the integrand stays smooth, or less.
        let step = if few.nu < 4.0 { 0.25 } else { 0.5 };
        let (mut sum, mut weights) = (0.0, 0.0);
        for side in [-1.0, 1.0] {
            let mut at = if side < 0.0 { 1 } else { 0 };
            loop {
                let x = s * side * step * f64::from(at);
                let y = portable::exp(x);
                let exponent = few.nu * (x - 0.5 * (y * y - 1.0));
                if exponent < NOTHING {
                    break;
                }
                let weight = portable::exp(exponent);
                let of_few = few.scale / y;
                let u = sqrt(self.normal * self.normal + of_few * of_few);
                sum += weight * self.swung(u, away);
                weights += weight;
                at += 1;
            }
        }
        sum / weights
    }

    /// The same with a normal part `u`, none known from few readings.
    fn swung(self, u: f64, away: f64) -> f64 {
        let w = self.swing;
        if w == 0.0 {
            return self.between_ends(u, away);
        }
        if u == 0.0 && self.ends[0] == 0.0 {
            // x = w cos(theta), all angles alike.
            return portable::acos((away / w).min(1.0)) / PI;
        }
        const FEWEST: f64 = 16.0;
        const MOST: f64 = 512.0;
        let count = match u > 0.0 {
            true => (8.0 * w / u).clamp(FEWEST, MOST).ceil(),
            false => MOST,
        };
        // Both halves of the swing are alike: the angle goes from 0 to pi.
        let place = |k: u32| w * portable::cos((f64::from(k) + 0.5) * PI / count);
        let sum: f64 = (0..count as u32)
            .map(|k| self.between_ends(u, away - place(k)))
            .sum();
        sum / count
    }

    /// The share above `x`, of the normal and the uniform parts.
    ///
    /// F(x) = u^2/(4ab) [K((x + a + b)/u) - K((x + a - b)/u) - K((x - a + b)/u) + K((x - a - b)/u)], with
    /// K(z) = ((z^2 + 1) Phi(z) + z phi(z))/2, the second integral of Phi (derived).
    fn between_ends(self, u: f64, x: f64) -> f64 {
        let [a, b] = self.ends;
        if b == 0.0 {
            let normal = StandardUncertainty::computed_trade(u);
            let half = HalfWidth::computed_trade(a);
            return match (u > 0.0, a > 0.0) {
                (true, true) => SizeSpread::normal_and_uniform(normal, half).share_below(-x),
                (true, false) => SizeSpread::normal(normal).share_below(-x),
                (false, true) => SizeSpread::uniform(half).share_below(-x),
                (false, false) => f64::from(u8::from(x < 0.0)),
            };
        }
        let second = |z: f64| match u > 0.0 {
            true => u * u * second_integral(z / u),
            false => 0.5 * z.max(0.0) * z.max(0.0),
        };
        (second(a + b - x) - second(a - b - x) - second(b - a - x) + second(-a - b - x))
            / (4.0 * a * b)
    }
}

/// ((z^2 + 1) Phi(z) + z phi(z))/2.
fn second_integral(z: f64) -> f64 {
    let above = normal::share_above(z.abs());
    let below = if z > 0.0 { 1.0 - above } else { above };
    0.5 * ((z * z + 1.0) * below + z * normal::density(z))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn law(normal: f64, few: Option<(f64, f64)>, uniform: &[f64], arcsine: &[f64]) -> SizeLaw {
        let mut parts = Parts::default();
        parts.add_normal(normal * normal);
        if let Some((u, nu)) = few {
            parts.add_few(u * u, nu);
        }
        for a in uniform {
            parts.add_uniform(*a);
        }
        for w in arcsine {
            parts.add_arcsine(*w);
        }
        parts.law()
    }

    #[test]
    fn shares_are_those_of_quadrature() {
        // mpmath.quad at 25 digits over the densities of all parts, one within the other: the share above x of
        // normal, few (u, nu), uniform and arcsine parts. What is not smooth has fewer digits there and here.
        type Given = (f64, Option<(f64, f64)>, &'static [f64], &'static [f64]);
        let cases: [(Given, f64, f64); 12] = [
            ((0.0, None, &[4.0, 3.0], &[]), 5.0, 0.0416666666666667),
            ((0.0, None, &[4.0, 3.0], &[]), 0.5, 0.4375),
            ((1.0, None, &[4.0, 3.0], &[]), 5.0, 0.0520232102398847),
            ((1.0, None, &[4.0, 1.5], &[]), 2.0, 0.254366896675872),
            ((0.2, None, &[5.0, 5.0], &[]), 9.0, 0.00519999999613134),
            ((1.0, None, &[], &[9.0]), 10.0, 0.0157366050186169),
            ((0.0, None, &[], &[9.0]), 8.0, (8.0_f64 / 9.0).acos() / PI),
            ((3.0, None, &[], &[4.0]), 2.0, 0.32505754580933),
            ((1.0, Some((3.0, 4.5)), &[], &[]), 7.0, 0.0395476355345957),
            ((3.0, Some((3.0, 1.0)), &[], &[]), 6.0, 0.179040932777876),
            (
                (0.0, Some((0.5, 4.0)), &[], &[9.0]),
                9.5,
                0.0166757474395183,
            ),
            (
                (2.0, Some((3.0, 4.5)), &[4.0], &[]),
                10.0,
                0.0233271706179359,
            ),
        ];
        for ((normal, few, uniform, arcsine), away, share) in cases {
            let law = law(normal, few, uniform, arcsine);
            let found = law.beyond(away);
            assert!(
                (found - share).abs() < 1e-8,
                "{law:?} {away}: {found} {share}"
            );
        }
    }

    #[test]
    fn a_mean_over_the_scale_is_students_law() {
        // Beside next to nothing the mean over the scale must give the closed form.
        for nu in [1.0, 1.5, 2.0, 3.9, 4.0, 7.0, 30.0, 400.0] {
            for away in [0.1, 0.7, 2.0, 5.0, 20.0] {
                let mixed = law(1e-9, Some((1.0, nu)), &[], &[]).beyond(away);
                let exact = student::share_below(away, nu);
                assert!((mixed - exact).abs() < 1e-9, "{nu} {away}: {mixed} {exact}");
            }
        }
    }
}
