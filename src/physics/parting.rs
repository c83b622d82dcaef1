//! Grooving and parting: a blade that cuts on its whole width.
//!
//! Symbols: w blade width, f feed towards the axis, k_c1.1 and m_c of the Kienzle law, K_shape the
//! factor of the kind of cut.

use uom::si::f64::{Force, Length};

use super::engagement::ChipSection;
use super::force::{CuttingForces, EdgeInCut, ForceLaw};
use crate::quantity::{
    BladeWidth, ChipThickness, ChipWidth, Feed, FeedForce, ForceFactor, MainForce, NormalRatio,
    PassiveForce,
};

/// The cross section that a blade takes: as thick as the feed, as wide as the blade.
///
/// h = f, b = w
///
/// # Units
/// The types carry them.
/// # Range
/// Square blades, fed towards the axis: a straight edge with kappa_r of 90 deg.
/// # Source
/// ISO 3002-3 (from memory).
/// # Example
/// ```
/// use turnwright::physics::parting::blade_chip;
/// let chip = blade_chip("3 mm".parse()?, "0.08 mm/rev".parse()?);
/// assert_eq!((chip.thickness.mm(), chip.width.mm()), (0.08, 3.0));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn blade_chip(width: BladeWidth, feed: Feed) -> ChipSection {
    ChipSection::new(
        ChipThickness::computed_trade(feed.mm_per_rev()),
        ChipWidth::computed_trade(width.mm()),
    )
}

/// The main force on a blade.
///
/// F_c = k_c1.1 w f^(1 - m_c) K_shape
///
/// Its power is largest at the outside, where the work is fastest
/// ([`cutting_power`](super::drive::cutting_power) with the speed there), and so is its torque
/// ([`torque`](super::drive::torque) with the diameter there); both fall towards the middle, the force
/// does not.
///
/// # Units
/// The types carry them.
/// # Range
/// Square blades. K_shape is 1.3 for grooving and parting: the chip is held on both sides
/// ([`cut_kind_factor`](super::force_factors::cut_kind_factor)). Feeds of 0.03 to 0.1 mm/rev with
/// high-speed steel (common practice, no source).
/// # Source
/// Kienzle 1952, VDI-Z 94 (from memory), for a straight edge with kappa_r of 90 deg.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, parting::parting_force};
/// let law = ForceLaw::new("2500 MPa".parse()?, "0.26".parse()?);
/// let f_c = parting_force(law, "3 mm".parse()?, "0.08 mm/rev".parse()?, "1".parse()?);
/// assert_eq!(f_c.newton().round(), 1157.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn parting_force(
    law: ForceLaw,
    width: BladeWidth,
    feed: Feed,
    shape: ForceFactor,
) -> MainForce {
    let (w, f): (Length, Length) = (width.length(), feed.length_per_revolution());
    let f_c: Force = law.at(f) * w * f * shape.value();
    MainForce::computed(f_c)
}

/// The three forces on a square blade.
///
/// F_f = K_n F_c, towards the axis: it bends the bar; F_p = 0
///
/// # Units
/// The types carry them.
/// # Range
/// Square blades; those with an oblique front edge are pushed aside as well.
/// # Source
/// [`parting_force`]; the force normal to the edge over the main force, K_n, as on every other edge.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, parting::parting_forces};
/// let law = ForceLaw::new("2500 MPa".parse()?, "0.26".parse()?);
/// let forces =
///     parting_forces(law, "3 mm".parse()?, "0.08 mm/rev".parse()?, "1.3".parse()?, "0.5".parse()?);
/// assert_eq!(forces.main.newton().round(), 1504.0);
/// assert_eq!(forces.feed.newton().round(), 752.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn parting_forces(
    law: ForceLaw,
    width: BladeWidth,
    feed: Feed,
    shape: ForceFactor,
    normal_ratio: NormalRatio,
) -> CuttingForces {
    let main = parting_force(law, width, feed, shape);
    CuttingForces {
        main,
        feed: FeedForce::computed(main.force() * normal_ratio.value()),
        passive: PassiveForce::computed_trade(0.0),
        edge: EdgeInCut::StraightEdge,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::force::{NORMAL_RATIO, cutting_forces};
    use crate::quantity::{
        CornerRadius, CuttingEdgeAngle, DepthOfCut, ForceExponent, SpecificCuttingForce,
    };
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn a_blade_is_a_straight_edge_at_90_deg(w in 0.5..20.0_f64, f in 0.01..1.0_f64, m in 0.0..0.6_f64) {
            let law = ForceLaw::new(
                SpecificCuttingForce::from_mpa(2000.0).unwrap(),
                ForceExponent::from_value(m).unwrap(),
            );
            let feed = Feed::from_mm_per_rev(f).unwrap();
            let blade = parting_force(
                law,
                BladeWidth::from_mm(w).unwrap(),
                feed,
                ForceFactor::from_value(1.0).unwrap(),
            );
            let edge = cutting_forces(
                law,
                DepthOfCut::from_mm(w).unwrap(),
                feed,
                CuttingEdgeAngle::from_degrees(90.0).unwrap(),
                CornerRadius::from_mm(0.0).unwrap(),
                NORMAL_RATIO.value,
            );
            let apart = (blade.newton() - edge.main.newton()).abs();
            // The sine of 90 deg is 1; only the order of multiplying differs.
            prop_assert!(apart <= 1e-14 * edge.main.newton());
        }
    }
}
