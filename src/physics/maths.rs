//! Powers, logarithms and trigonometry of all kernels, in one place.
//!
//! A faster or portable form replaces them here, and scalar and column doors keep agreeing to the
//! last digit. Angles are in radians. Square roots are exact everywhere and need no place here.

use uom::si::angle::radian;
use uom::si::f64::Angle;

/// The number of radians in an angle.
#[inline]
pub(super) fn radians(angle: Angle) -> f64 {
    angle.get::<radian>()
}

/// The angle of a number of radians.
#[inline]
pub(super) fn angle(radians: f64) -> Angle {
    Angle::new::<radian>(radians)
}

#[inline]
pub(super) fn sin(x: f64) -> f64 {
    x.sin()
}

#[inline]
pub(super) fn cos(x: f64) -> f64 {
    x.cos()
}

#[inline]
pub(super) fn tan(x: f64) -> f64 {
    x.tan()
}

#[inline]
pub(super) fn asin(x: f64) -> f64 {
    x.asin()
}

#[inline]
pub(super) fn atan2(y: f64, x: f64) -> f64 {
    y.atan2(x)
}

#[inline]
pub(super) fn pow(base: f64, exponent: f64) -> f64 {
    base.powf(exponent)
}

#[inline]
pub(super) fn exp(x: f64) -> f64 {
    x.exp()
}

#[inline]
pub(super) fn ln(x: f64) -> f64 {
    x.ln()
}

#[inline]
pub(super) fn sqrt(x: f64) -> f64 {
    x.sqrt()
}

/// The same last digit on every machine: for what is compared across machines, such as
/// probabilities and simulated draws.
pub(super) mod portable {
    #[inline]
    pub(in crate::physics) fn exp(x: f64) -> f64 {
        libm::exp(x)
    }

    #[inline]
    pub(in crate::physics) fn ln(x: f64) -> f64 {
        libm::log(x)
    }

    /// ln(1 + x), exact for a small x.
    #[inline]
    pub(in crate::physics) fn ln_1p(x: f64) -> f64 {
        libm::log1p(x)
    }

    /// exp(x) - 1, exact for a small x.
    #[inline]
    pub(in crate::physics) fn exp_m1(x: f64) -> f64 {
        libm::expm1(x)
    }

    #[inline]
    pub(in crate::physics) fn erfc(x: f64) -> f64 {
        libm::erfc(x)
    }

    #[inline]
    pub(in crate::physics) fn pow(base: f64, exponent: f64) -> f64 {
        libm::pow(base, exponent)
    }

    #[inline]
    pub(in crate::physics) fn cos(x: f64) -> f64 {
        libm::cos(x)
    }

    #[inline]
    pub(in crate::physics) fn acos(x: f64) -> f64 {
        libm::acos(x)
    }
}

/// A ratio of two quantities of one kind as the number it is.
#[inline]
pub(super) fn number(ratio: uom::si::f64::Ratio) -> f64 {
    ratio.get::<uom::si::ratio::ratio>()
}
