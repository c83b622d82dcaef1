//! The tool itself gives way: shanks and boring bars.
//!
//! Symbols: F force across, l overhang, E Young's modulus of the shank, b width, h height, d
//! diameter of the bar.

use std::f64::consts::PI;

use uom::si::f64::{Force, Length};

use crate::quantity::{
    Deflection, Diameter, MainForce, Overhang, PassiveForce, ShankSize, YoungsModulus,
};

/// How far the tip of a shank sinks under the main force.
///
/// 4 F l^3 / (E b h^3)
///
/// # Units
/// The types carry them.
/// # Range
/// A rectangular shank clamped rigidly; the clamping and the slides give way besides, often more.
/// # Source
/// Cantilever, any strength of materials text (from memory).
/// # Example
/// ```
/// use turnwright::physics::tool_overhang::shank_deflection;
/// let sunk = shank_deflection(
///     "800 N".parse()?, "30 mm".parse()?, "16 mm".parse()?, "16 mm".parse()?, "210 GPa".parse()?,
/// );
/// assert!((sunk.mm() - 0.00628).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn shank_deflection(
    force: MainForce,
    overhang: Overhang,
    width: ShankSize,
    height: ShankSize,
    youngs_modulus: YoungsModulus,
) -> Deflection {
    let (b, h) = (width.length(), height.length());
    Deflection::computed(cantilever(
        force.force(),
        overhang.length(),
        youngs_modulus,
        // 3 I = b h^3 / 4
        (b * h, h * h * 0.25),
    ))
}

/// How far the tip of a round boring bar is pushed away.
///
/// 64 F l^3 / (3 pi E d^4)
///
/// # Units
/// The types carry them.
/// # Range
/// A solid bar clamped rigidly over enough of its length.
/// # Source
/// Cantilever, any strength of materials text (from memory).
/// # Example
/// ```
/// use turnwright::physics::tool_overhang::boring_bar_deflection;
/// let bent = boring_bar_deflection(
///     "200 N".parse()?, "80 mm".parse()?, "16 mm".parse()?, "210 GPa".parse()?,
/// );
/// assert!((bent.mm() - 0.0505).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn boring_bar_deflection(
    force: PassiveForce,
    overhang: Overhang,
    bar_diameter: Diameter,
    youngs_modulus: YoungsModulus,
) -> Deflection {
    let d = bar_diameter.length();
    Deflection::computed(cantilever(
        force.force(),
        overhang.length(),
        youngs_modulus,
        // 3 I = 3 pi d^4 / 64
        (d * d, d * d * (3.0 * PI / 64.0)),
    ))
}

/// F l^3 / (3 E I), with 3 I as a product of two areas.
fn cantilever(
    force: Force,
    overhang: Length,
    modulus: YoungsModulus,
    (area, other): (uom::si::f64::Area, uom::si::f64::Area),
) -> Length {
    let (slim, stout) = (overhang * overhang / area, overhang * overhang / other);
    slim * stout * force / (modulus.pressure() * overhang)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn half_the_overhang_bends_an_eighth(l in 10.0..200.0_f64, b in 5.0..40.0_f64) {
            let (e, b) = ("210 GPa".parse().unwrap(), ShankSize::from_mm(b).unwrap());
            let of = |l: f64| {
                let l = Overhang::from_mm(l).unwrap();
                shank_deflection("500 N".parse().unwrap(), l, b, b, e).mm()
            };
            prop_assert!((of(l / 2.0) / of(l) * 8.0 - 1.0).abs() < 1e-13);
            let bar = |l: f64| {
                let (l, d) = (Overhang::from_mm(l).unwrap(), Diameter::from_mm(b.mm()).unwrap());
                boring_bar_deflection("500 N".parse().unwrap(), l, d, e).mm()
            };
            // A square bar is stiffer than the round one inside it: 16/(3 pi) as stiff.
            prop_assert!((bar(l) / of(l) - 16.0 / (3.0 * PI)).abs() < 1e-12);
        }
    }
}
