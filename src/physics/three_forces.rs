//! The three forces of a cut, each after its own measured law.

use super::engagement::ChipSection;
use super::force::{CuttingForces, EdgeInCut, ForceLaw};
use crate::quantity::{FeedForce, MainForce, PassiveForce};

/// The laws of the three forces, where each was measured: k_c1.1 and m_c, k_f1.1 and m_f, k_p1.1 and
/// m_p.
///
/// ```
/// use turnwright::physics::{force::ForceLaw, three_forces::ThreeLaws};
/// let ck45 = ThreeLaws::new(
///     ForceLaw::new("1659 MPa".parse()?, "0.21".parse()?),
///     ForceLaw::new("521 MPa".parse()?, "0.49".parse()?),
///     ForceLaw::new("309 MPa".parse()?, "0.4".parse()?),
/// );
/// assert_eq!(ck45.feed.specific_force.mpa(), 521.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ThreeLaws {
    /// Of the main force.
    pub main: ForceLaw,
    /// Of the feed force.
    pub feed: ForceLaw,
    /// Of the passive force.
    pub passive: ForceLaw,
}

impl ThreeLaws {
    /// The laws of main, feed and passive force.
    #[must_use]
    pub const fn new(main: ForceLaw, feed: ForceLaw, passive: ForceLaw) -> Self {
        Self {
            main,
            feed,
            passive,
        }
    }
}

/// The three forces of a chip, each after its own law.
///
/// F_i = k_i1.1 b h^(1 - m_i), i = c, f, p
///
/// # Units
/// The types carry them.
/// # Range
/// The tool, the edge angle and the speeds at which the laws were measured. Feed and passive force
/// have the larger exponents: as the chip gets thinner they fall more slowly than the main force.
/// # Source
/// Koenig and Essel 1973 (from memory, unverified page).
/// # Example
/// ```
/// use turnwright::physics::{
///     engagement::chip_section,
///     force::ForceLaw,
///     three_forces::{measured_forces, ThreeLaws},
/// };
/// let ck45 = ThreeLaws::new(
///     ForceLaw::new("1659 MPa".parse()?, "0.21".parse()?),
///     ForceLaw::new("521 MPa".parse()?, "0.49".parse()?),
///     ForceLaw::new("309 MPa".parse()?, "0.4".parse()?),
/// );
/// let chip = chip_section("2.5 mm".parse()?, "0.3 mm/rev".parse()?, "90 deg".parse()?);
/// let forces = measured_forces(ck45, chip);
/// assert_eq!(forces.main.newton().round(), 1602.0);
/// assert_eq!(forces.feed.newton().round(), 705.0);
/// assert_eq!(forces.passive.newton().round(), 375.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn measured_forces(laws: ThreeLaws, chip: ChipSection) -> CuttingForces {
    let (h, b) = (chip.thickness.length(), chip.width.length());
    CuttingForces {
        main: MainForce::computed(laws.main.at(h) * b * h),
        feed: FeedForce::computed(laws.feed.at(h) * b * h),
        passive: PassiveForce::computed(laws.passive.at(h) * b * h),
        edge: EdgeInCut::StraightEdge,
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::quantity::{ChipThickness, ChipWidth};

    #[test]
    fn a_thinner_chip_has_more_of_feed_and_passive_force() {
        // Ck45N, from memory of Koenig and Essel 1973 as reprinted in Klocke, unverified page.
        let law = |k: &str, m: &str| ForceLaw::new(k.parse().unwrap(), m.parse().unwrap());
        let laws = ThreeLaws::new(
            law("1659 MPa", "0.21"),
            law("521 MPa", "0.49"),
            law("309 MPa", "0.4"),
        );
        let shares = |h: f64| {
            let chip = ChipSection::new(
                ChipThickness::from_mm(h).unwrap(),
                ChipWidth::from_mm(2.0).unwrap(),
            );
            let forces = measured_forces(laws, chip);
            let main = forces.main.newton();
            (forces.feed.newton() / main, forces.passive.newton() / main)
        };
        let (thick, thin) = (shares(0.4), shares(0.1));
        assert!(thin.0 > thick.0 && thin.1 > thick.1);
    }
}
