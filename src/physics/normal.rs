//! The standard normal law far into its tails, the same on every machine.
//!
//! phi its density, Q(y) the share above y, H(y) the integral of Q from y on (the tail's first
//! moment, phi(y) - y Q(y)).

use std::f64::consts::{FRAC_1_SQRT_2, PI};

use super::maths::{portable, sqrt};

/// From here on the continued fractions below are exact with the terms they have.
const FAR: f64 = 5.0;

/// The density phi(z) = exp(-z^2/2)/sqrt(2 pi).
pub(super) fn density(z: f64) -> f64 {
    // z^2 is rounded; its last bit would be a relative error of z^2 times that in the tail. The
    // square of the upper half of z is exact.
    let upper = f64::from_bits(z.to_bits() & 0xffff_ffff_f800_0000);
    let rest = (z - upper) * (z + upper);
    portable::exp(-0.5 * upper * upper) * portable::exp(-0.5 * rest) / sqrt(2.0 * PI)
}

/// Q(y)/phi(y), for y >= 0.
pub(super) fn mills(y: f64) -> f64 {
    if y < FAR {
        0.5 * portable::erfc(y * FRAC_1_SQRT_2) / density(y)
    } else {
        1.0 / (y + fraction(y))
    }
}

/// 1/(y + 2/(y + 3/(y + ..))), for y >= FAR.
fn fraction(y: f64) -> f64 {
    // Found by trying: the last digit at the lower end of either range.
    let terms = if y < 7.0 { 30 } else { 20 };
    let below = (2..terms)
        .rev()
        .fold(0.0, |below, k| f64::from(k) / (y + below));
    1.0 / (y + below)
}

/// The share above y.
pub(super) fn share_above(y: f64) -> f64 {
    if y < FAR {
        0.5 * portable::erfc(y * FRAC_1_SQRT_2)
    } else {
        density(y) / (y + fraction(y))
    }
}

/// H(y), for y >= 0.
pub(super) fn tail_moment(y: f64) -> f64 {
    let density = density(y);
    if y < FAR {
        density - y * (0.5 * portable::erfc(y * FRAC_1_SQRT_2))
    } else {
        // H/Q is the fraction from its second term on.
        let fraction = fraction(y);
        density * fraction / (y + fraction)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tails_are_those_of_fifty_digits() {
        // mpmath at 50 digits: erfc(y/sqrt 2)/2 and phi(y) - y Q(y).
        for (y, above, moment) in TAILS {
            // Below 5 the difference phi - y Q costs up to a factor of y^2 + 3 of the last digit.
            assert!((share_above(y) / above - 1.0).abs() < 2e-15, "{y}");
            assert!((tail_moment(y) / moment - 1.0).abs() < 5e-14, "{y}");
            assert!((mills(y) * density(y) / above - 1.0).abs() < 2e-15, "{y}");
        }
    }

    const TAILS: [(f64, f64, f64); 13] = [
        (0.0, 0.5, 0.3989422804014327),
        (0.25, 0.4012936743170763, 0.28634469822358016),
        (1.0, 0.15865525393145705, 0.08331547058768629),
        (2.0, 0.02275013194817921, 0.008490702616829637),
        (2.9, 0.001865813300384038, 0.0005416738486621437),
        (3.0, 0.0013498980316300946, 0.0003821543170477236),
        (3.5, 0.00023262907903552504, 5.848091842142244e-5),
        (4.9, 4.791832765903198e-7, 9.096269060079109e-8),
        (5.0, 2.866515718791939e-7, 5.346165533832815e-8),
        (7.0, 1.279812543885835e-12, 1.760326011637483e-13),
        (12.0, 1.776482112077679e-33, 1.4605201169845548e-34),
        (25.0, 3.056696706382561e-138, 1.218797046299037e-139),
        (37.5, 4.605353009581955e-308, 1.226353690872154e-309),
    ];

    #[test]
    fn both_sides_make_one() {
        for k in 0..400 {
            let y = f64::from(k) / 100.0;
            assert!((share_above(y) + share_above(-y) - 1.0).abs() < 4.5e-16);
        }
    }

    #[test]
    fn nothing_is_lost_where_the_forms_meet() {
        let (below, above) = (FAR - 1e-12, FAR);
        // Slopes: -phi/Q is -5.2 and -Q/H is -5.4 there, times 1e-12.
        assert!((share_above(below) / share_above(above) - 1.0).abs() < 1e-11);
        assert!((tail_moment(below) / tail_moment(above) - 1.0).abs() < 1e-11);
    }
}
