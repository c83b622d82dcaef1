//! Student's law: how far out a share of it lies, for any number of degrees of freedom.
//!
//! Symbols: nu degrees of freedom, t the quantile, f the density, alpha the share beyond +-t. The
//! start is Hill's (Algorithm 396, Communications of the ACM 13, 1970, from memory); Halley's rule
//! makes it exact. Same last digit on every machine.

use std::f64::consts::PI;

use super::maths::{portable, sqrt};
use super::random::upper_quantile;

/// The t within which, to both sides, a share `p` of Student's law lies; 0.5 <= p < 1, nu >= 1.
pub(super) fn two_sided(p: f64, nu: f64) -> f64 {
    // Exact, as p is at least a half.
    let alpha = 1.0 - p;
    let c = gamma_ratio(0.5 * nu) / sqrt(PI * nu);
    let mut t = start(alpha, nu);
    // Each turn cubes the relative error; the start has a few percent at worst.
    for _ in 0..6 {
        let (beyond, density) = beyond(t, nu, c);
        let newton = (beyond - alpha) / (2.0 * density);
        let bend = (nu + 1.0) * t / (nu + t * t);
        let step = newton / (1.0 - (0.5 * bend * newton).clamp(-1.0, 0.5));
        t += step;
        if step.abs() < 1e-5 * t {
            break;
        }
    }
    t
}

/// The t beyond which, to both sides, a share `1 - p` of the normal law lies: Student's at infinity.
pub(super) fn two_sided_normal(p: f64) -> f64 {
    upper_quantile(0.5 * (1.0 - p))
}

/// The share of Student's law below `-t`, of t >= 0; nu >= 1.
pub(super) fn share_below(t: f64, nu: f64) -> f64 {
    let c = gamma_ratio(0.5 * nu) / sqrt(PI * nu);
    0.5 * beyond(t, nu, c).0
}

/// The share beyond +-t, and the density at t.
fn beyond(t: f64, nu: f64, c: f64) -> (f64, f64) {
    let square = t * t;
    let density = c * portable::exp(-0.5 * (nu + 1.0) * portable::ln_1p(square / nu));
    let (x, y) = (nu / (nu + square), square / (nu + square));
    if square < 9.0 {
        // The incomplete beta function as a series of positive terms (DLMF 8.17.8, from memory).
        let (mut term, mut sum, mut n) = (1.0, 1.0, 0.0);
        let a = 0.5 * (nu + 1.0);
        while term > 1e-17 * sum {
            term *= y * ((a + n) / (n + 1.5));
            sum += term;
            n += 1.0;
        }
        return (1.0 - 2.0 * t * density * sum, density);
    }
    // Its continued fraction in the form of Didonato and Morris (ACM Transactions on Mathematical
    // Software 18, 1992, Algorithm 708, from memory), which does not cancel for a large nu.
    let (a, b) = (0.5 * nu, 0.5);
    let lambda = (a + b) * y - b;
    let mut below = 0.0;
    for n in (1..TERMS).rev() {
        let n = f64::from(n);
        let odd = 1.0 / (a + 2.0 * n - 1.0);
        let above = (a + n - 1.0) * odd * ((a + b + n - 1.0) * odd) * (n * (b - n) * x * x);
        let here = n
            + n * (b - n) * x * odd
            + (a + n) / (a + 2.0 * n + 1.0) * (lambda + 1.0 + n * (1.0 + y));
        below = above / (here + below);
    }
    let first = a / (a + 1.0) * (lambda + 1.0);
    (t * density / (first + below), density)
}

/// Enough for the last digit from t = 3 on.
const TERMS: u32 = 14;

/// Gamma(x + 1/2)/Gamma(x), for x >= 1/2.
///
/// From 10 on an asymptotic series in (x - 1/4)^-2 (Tricomi and Erdelyi 1951, from memory; its
/// coefficients derived); below, Gamma(x + 1) = x Gamma(x) leads there.
fn gamma_ratio(mut x: f64) -> f64 {
    let (mut above, mut below) = (1.0, 1.0);
    while x < 10.0 {
        above *= x;
        below *= x + 0.5;
        x += 1.0;
    }
    let w = x - 0.25;
    let z = 1.0 / (w * w);
    let series = SERIES.iter().rev().fold(0.0, |sum, c| sum * z + c);
    sqrt(w) * series * above / below
}

const SERIES: [f64; 7] = [
    1.0,
    1.0 / 64.0,
    -19.0 / 8_192.0,
    631.0 / 524_288.0,
    -174_317.0 / 134_217_728.0,
    20_491_783.0 / 8_589_934_592.0,
    -7_334_801_895.0 / 1_099_511_627_776.0,
];

/// Hill's approximation.
fn start(alpha: f64, nu: f64) -> f64 {
    let a = 1.0 / (nu - 0.5);
    let b = 48.0 / (a * a);
    let mut c = ((20_700.0 * a / b - 98.0) * a - 16.0) * a + 96.36;
    let d = ((94.5 / (b + c) - 3.0) / b + 1.0) * sqrt(a * PI / 2.0) * nu;
    let mut y = portable::pow(d * alpha, 2.0 / nu);
    if y > 0.05 + a {
        let x = -upper_quantile(0.5 * alpha);
        y = x * x;
        if nu < 5.0 {
            c += 0.3 * (nu - 4.5) * (x + 0.6);
        }
        c += (((0.05 * d * x - 5.0) * x - 7.0) * x - 2.0) * x + b;
        y = (((((0.4 * y + 6.3) * y + 36.0) * y + 94.5) / c - y - 3.0) / b + 1.0) * x;
        y = portable::exp_m1(a * y * y);
    } else {
        let in_front = (nu + 6.0) / (nu * y) - 0.089 * d - 0.822;
        y = ((1.0 / (in_front * (nu + 2.0) * 3.0) + 0.5 / (nu + 4.0)) * y - 1.0) * (nu + 1.0)
            / (nu + 2.0)
            + 1.0 / y;
    }
    sqrt(nu * y)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_are_those_of_closed_forms_and_of_the_quantiles() {
        for t in [0.0_f64, 0.5, 2.0, 2.999, 3.001, 9.0, 300.0] {
            // One degree: 1/2 - arctan(t)/pi; two: (1 - t/sqrt(2 + t^2))/2. For the tail written so
            // that nothing cancels.
            let one = (1.0 / t).atan() / PI;
            assert!((share_below(t, 1.0) / one - 1.0).abs() < 1e-12, "{t}");
            let root = (2.0 + t * t).sqrt();
            let two = 1.0 / (root * (root + t));
            assert!((share_below(t, 2.0) / two - 1.0).abs() < 1e-12, "{t}");
        }
        for (nu, p, t) in QUANTILES {
            // The quantile's last digits times t f/(1 - p), below nu.
            let off = share_below(t, nu) / (0.5 * (1.0 - p)) - 1.0;
            assert!(off.abs() < 1e-10, "{nu} {p} {off}");
        }
    }

    #[test]
    fn quantiles_are_those_of_fifty_digits() {
        // mpmath at 50 digits: the root of the regularised incomplete beta function.
        for (nu, p, t) in QUANTILES {
            let found = two_sided(p, nu);
            assert!((found / t - 1.0).abs() < 1e-13, "{nu} {p} {found} {t}");
        }
    }

    const QUANTILES: [(f64, f64, f64); 91] = [
        (1.5, 0.5, 0.8725946625415706),
        (1.5, 0.75, 1.8230590896111645),
        (1.5, 0.95, 6.016663104427928),
        (1.5, 0.9545, 6.41821500249525),
        (1.5, 0.99, 17.820310514462797),
        (1.5, 0.9999, 384.5724025215815),
        (1.5, 0.999999, 8285.391194866204),
        (2.7, 0.5, 0.7759862837452695),
        (2.7, 0.75, 1.4598809233490635),
        (2.7, 0.95, 3.392148383173751),
        (2.7, 0.9545, 3.533872861639198),
        (2.7, 0.99, 6.533128433408453),
        (2.7, 0.9999, 36.81524766032609),
        (2.7, 0.999999, 202.81378403080532),
        (3.0, 0.5, 0.7648923284043453),
        (3.0, 0.75, 1.4226252814618092),
        (3.0, 0.95, 3.182446305283708),
        (3.0, 0.9545, 3.306829920720112),
        (3.0, 0.99, 5.840909309733355),
        (3.0, 0.9999, 28.000130010950006),
        (3.0, 0.999999, 130.1545895571102),
        (4.0, 0.5, 0.7406970841126826),
        (4.0, 0.75, 1.3443975555090915),
        (4.0, 0.95, 2.7764451051977934),
        (4.0, 0.9545, 2.869315169696385),
        (4.0, 0.99, 4.604094871349992),
        (4.0, 0.9999, 15.544100581546113),
        (4.0, 0.999999, 49.4586367565786),
        (5.0, 0.5, 0.7266868438004227),
        (5.0, 0.75, 1.3009490369230305),
        (5.0, 0.95, 2.5705818356363146),
        (5.0, 0.9545, 2.6486542542831195),
        (5.0, 0.99, 4.032142983555227),
        (5.0, 0.9999, 11.177710070278868),
        (5.0, 0.999999, 28.47847346281956),
        (8.3, 0.5, 0.705191287667788),
        (8.3, 0.75, 1.2368318879214752),
        (8.3, 0.95, 2.29157626759502),
        (8.3, 0.9545, 2.3510770278791098),
        (8.3, 0.99, 3.320443599044948),
        (8.3, 0.9999, 6.942611468745045),
        (8.3, 0.999999, 12.700966274457725),
        (16.76455398091716, 0.5, 0.6894054825563156),
        (16.76455398091716, 0.75, 1.1916389658987487),
        (16.76455398091716, 0.95, 2.112075001804882),
        (16.76455398091716, 0.9545, 2.1606546657706187),
        (16.76455398091716, 0.99, 2.903271296456451),
        (16.76455398091716, 0.9999, 5.06380200139376),
        (16.76455398091716, 0.999999, 7.469518534557717),
        (30.0, 0.5, 0.6827556933212926),
        (30.0, 0.75, 1.1730648709194749),
        (30.0, 0.95, 2.0422724563012378),
        (30.0, 0.9545, 2.086847053536652),
        (30.0, 0.99, 2.749995653567225),
        (30.0, 0.9999, 4.482417175409786),
        (30.0, 0.999999, 6.119075620373899),
        (50.0, 0.5, 0.679428200326346),
        (50.0, 0.75, 1.1638714117562556),
        (50.0, 0.95, 2.0085591121007607),
        (50.0, 0.9545, 2.0512507818518824),
        (50.0, 0.99, 2.677793270940844),
        (50.0, 0.9999, 4.228309866845844),
        (50.0, 0.999999, 5.5732172421135875),
        (120.0, 0.5, 0.6765397249125202),
        (120.0, 0.75, 1.155944803810124),
        (120.0, 0.95, 1.9799304050824404),
        (120.0, 0.9545, 2.0210501817554904),
        (120.0, 0.99, 2.617421145106866),
        (120.0, 0.9999, 4.025389950058417),
        (120.0, 0.999999, 5.157569972898529),
        (999.5, 0.5, 0.6747352874153787),
        (999.5, 0.75, 1.1510182624757022),
        (999.5, 0.95, 1.9623402703838455),
        (999.5, 0.9545, 2.00250677091707),
        (999.5, 0.99, 2.5807571664291533),
        (999.5, 0.9999, 3.90635164492951),
        (999.5, 0.999999, 4.922304940134243),
        (10000.0, 0.5, 0.6745142844835924),
        (10000.0, 0.75, 1.1504161995961169),
        (10000.0, 0.95, 1.960201239890626),
        (10000.0, 0.9545, 2.0002524753218833),
        (10000.0, 0.99, 2.5763210466685287),
        (10000.0, 0.9999, 3.892161983569862),
        (10000.0, 0.999999, 4.894688616309937),
        (1000000.0, 0.5, 0.6744899955310873),
        (1000000.0, 0.75, 1.150350048529145),
        (1000000.0, 0.95, 1.9599663568141068),
        (1000000.0, 0.9545, 2.0000049439106093),
        (1000000.0, 0.99, 2.575834220105334),
        (1000000.0, 0.9999, 3.8906075818030925),
        (1000000.0, 0.999999, 4.891668960704727),
    ];

    #[test]
    fn one_and_two_degrees_have_closed_forms() {
        // t = tan(pi p/2) and t = p sqrt(2/(1 - p^2)).
        for p in [
            0.5,
            0.6,
            0.9,
            0.95,
            0.9545,
            0.99,
            0.9999,
            0.999_999,
            0.999_999_999,
        ] {
            let one = 1.0 / (0.5 * PI * (1.0 - p)).tan();
            assert!((two_sided(p, 1.0) / one - 1.0).abs() < 1e-14, "{p}");
            let two = p * (2.0 / ((1.0 - p) * (1.0 + p))).sqrt();
            assert!((two_sided(p, 2.0) / two - 1.0).abs() < 1e-14, "{p}");
        }
    }

    #[test]
    fn many_degrees_are_the_normal_law() {
        for p in [0.5, 0.9, 0.954_5, 0.999_999_999] {
            let (t, z) = (two_sided(p, 1e12), two_sided_normal(p));
            // t - z is (z^3 + z)/(4 nu).
            assert!((t / z - 1.0).abs() < 1e-11, "{p} {t} {z}");
        }
        // Two standard deviations, the usual coverage factor.
        assert!((two_sided_normal(0.954_499_736_103_641_6) - 2.0).abs() < 1e-15);
    }

    #[test]
    fn fewer_degrees_reach_further() {
        for p in [0.5, 0.8, 0.9545, 0.9999] {
            let mut before = f64::INFINITY;
            for k in 0..240 {
                let t = two_sided(p, 10_f64.powf(f64::from(k) / 40.0));
                assert!(t < before, "{p} {k}");
                before = t;
            }
        }
    }
}
