//! What makes the force of a cut larger or smaller than the table's: rake, wear, the tool's
//! material, cutting speed, kind of cut, coolant.
//!
//! F_c = k_c1.1 b h^(1 - m_c) K, K the product of the factors. All of them are from memory of text
//! books on machining, unverified page; books differ. A specific force that was measured in the shop
//! holds its own conditions already: no factor belongs on it but for what has changed since.

use super::force::ForceLaw;
use super::maths;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    CuttingSpeed, ForceFactor, ForceScatter, NormalRatio, RakeAngle, SpecificCuttingForce,
};
use crate::shop::material::ToolMaterial;
use crate::shop::tool::EdgeState;

const BOOKS: &str = "from memory of German machining text books, unverified page";

const fn from_books(value: f64) -> Sourced<ForceFactor> {
    Sourced::new(
        ForceFactor::computed_trade(value),
        BOOKS,
        Standing::FromMemory,
    )
}

/// By how much the force falls with each degree of rake more.
pub const RAKE_SLOPE: Sourced<f64> = Sourced::new(
    0.015,
    "from memory of German machining text books, unverified page; some have 0.010",
    Standing::FromMemory,
);

/// The rake that the tables of steel hold for; taken for every material but cast iron.
pub const REFERENCE_RAKE: Sourced<RakeAngle> =
    Sourced::new(RakeAngle::computed_trade(6.0), BOOKS, Standing::FromMemory);

/// The rake that the tables of cast iron hold for.
pub const REFERENCE_RAKE_CAST_IRON: Sourced<RakeAngle> =
    Sourced::new(RakeAngle::computed_trade(2.0), BOOKS, Standing::FromMemory);

/// The least and the largest rake that the factor is good for.
pub const RAKE_RANGE: Sourced<[RakeAngle; 2]> = Sourced::new(
    [
        RakeAngle::computed_trade(-10.0),
        RakeAngle::computed_trade(25.0),
    ],
    BOOKS,
    Standing::FromMemory,
);

/// The factor of the force for the rake of the tool.
///
/// K_gamma = 1 - 0.015 (gamma_o - gamma_ref) / deg
///
/// # Units
/// The types carry them.
/// # Range
/// Rakes from about -10 to +25 deg. `reference` is the rake that the specific force holds for:
/// [`REFERENCE_RAKE`] or [`REFERENCE_RAKE_CAST_IRON`] for tables, the tool's own for a measured one.
/// # Errors
/// `rake_angle` or `reference_rake_angle`, outside of -10 to +25 deg.
/// # Source
/// [`RAKE_SLOPE`], from memory of text books: (109 - 1.5 gamma)/100 for steel, (103 - 1.5 gamma)/100
/// for cast iron.
/// # Example
/// ```
/// use turnwright::physics::force_factors::{rake_factor, REFERENCE_RAKE};
/// let flat = rake_factor("0 deg".parse()?, REFERENCE_RAKE.value)?;
/// assert!((flat.value() - 1.09).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn rake_factor(rake_angle: RakeAngle, reference: RakeAngle) -> Result<ForceFactor, Error> {
    let [least, largest] = RAKE_RANGE.value;
    for (field, angle) in [
        ("rake_angle", rake_angle),
        ("reference_rake_angle", reference),
    ] {
        if angle < least || angle > largest {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                field,
                angle.to_string(),
                format!("a rake from {least} to {largest}: the factor is known there"),
                "leave it out, or give a specific force that was measured with this tool",
            ));
        }
    }
    let beyond = rake_angle.degrees() - reference.degrees();
    Ok(ForceFactor::computed_trade(1.0 - RAKE_SLOPE.value * beyond))
}

/// The factor of the main force for wear of the edge: 1 for a sharp one, 1.3, 1.5.
///
/// # Example
/// ```
/// use turnwright::{physics::force_factors::wear_factor, shop::tool::EdgeState, Sourced};
/// let Sourced { value, .. } = wear_factor(EdgeState::WornOut);
/// assert_eq!(value.value(), 1.5);
/// ```
#[must_use]
pub const fn wear_factor(edge: EdgeState) -> Sourced<ForceFactor> {
    match edge {
        EdgeState::Sharp => from_books(1.0),
        EdgeState::Ordinary => from_books(1.3),
        EdgeState::WornOut => from_books(1.5),
    }
}

/// The factor of the feed and the passive force for wear of the edge: 1 for a sharp one, 1.6, 2.
///
/// # Source
/// That these two grow faster with wear than the main force, up to double, is from memory of text
/// books; that they gain twice as much as it gains is judgement, no source.
///
/// # Example
/// ```
/// use turnwright::{physics::force_factors::normal_wear_factor, shop::tool::EdgeState, Sourced};
/// let Sourced { value, .. } = normal_wear_factor(EdgeState::WornOut);
/// assert_eq!(value.value(), 2.0);
/// ```
#[must_use]
pub const fn normal_wear_factor(edge: EdgeState) -> Sourced<ForceFactor> {
    let value = match edge {
        EdgeState::Sharp => 1.0,
        EdgeState::Ordinary => 1.6,
        EdgeState::WornOut => 2.0,
    };
    Sourced::new(
        ForceFactor::computed_trade(value),
        "judgement, no source: twice the gain of the main force; that it is faster, up to double, from memory of \
         machining text books",
        Standing::Estimate,
    )
}

/// The factor of the force for the tool's material: carbide 1, high-speed steel 1.2.
///
/// The tables hold for carbide at its speed; the 1.2 of high-speed steel has its lower speed in it.
///
/// # Example
/// ```
/// use turnwright::{physics::force_factors::tool_material_factor, Sourced, ToolMaterial};
/// let Sourced { value, .. } = tool_material_factor(ToolMaterial::HighSpeedSteel);
/// assert_eq!(value.value(), 1.2);
/// ```
#[must_use]
pub const fn tool_material_factor(material: ToolMaterial) -> Sourced<ForceFactor> {
    match material {
        ToolMaterial::HighSpeedSteel => from_books(1.2),
        ToolMaterial::Carbide => from_books(1.0),
    }
}

/// The factor of the force for an edge of cutting ceramic.
pub const CERAMIC_FACTOR: Sourced<ForceFactor> = from_books(0.9);

/// Below this cutting speed the factor for the speed of carbide is not known.
pub const SLOWEST_OF_THE_SPEED_FACTOR: Sourced<CuttingSpeed> = Sourced::new(
    CuttingSpeed::computed_trade(20.0),
    BOOKS,
    Standing::FromMemory,
);

/// The factor of the force for the cutting speed of carbide.
///
/// K_v = 2.023 v_c^-0.153 up to 100 m/min, 1.380 v_c^-0.07 above (v_c in m/min)
///
/// # Units
/// The types carry them.
/// # Range
/// Carbide from 20 m/min; the two pieces meet at 100 m/min to 0.1 %. For high-speed steel there is
/// none: [`tool_material_factor`] holds its lower speed already.
/// # Errors
/// `cutting_speed`, below 20 m/min.
/// # Source
/// From memory of German machining text books, unverified page.
/// # Example
/// ```
/// use turnwright::physics::force_factors::carbide_speed_factor;
/// assert!((carbide_speed_factor("50 m/min".parse()?)?.value() - 1.1119).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn carbide_speed_factor(cutting_speed: CuttingSpeed) -> Result<ForceFactor, Error> {
    let slowest = SLOWEST_OF_THE_SPEED_FACTOR.value;
    if cutting_speed < slowest {
        return Err(Error::new(
            ErrorKind::OutOfRange,
            "cutting_speed",
            cutting_speed.to_string(),
            format!("at least {slowest}: the factor is known there"),
            "leave the factor out: below it built-up edge and rubbing decide, not this curve",
        ));
    }
    let v = cutting_speed.m_per_min();
    Ok(ForceFactor::computed_trade(if v <= 100.0 {
        2.023 * maths::pow(v, -0.153)
    } else {
        1.380 * maths::pow(v, -0.07)
    }))
}

/// The kind of cut, as far as the force knows it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum CutKind {
    /// Turning and facing from outside.
    OutsideTurning,
    /// Boring: the chip is bent the other way.
    Boring,
    /// Grooving and parting: the chip is held on both sides.
    GroovingAndParting,
}

/// The factor of the force for the kind of cut: outside turning 1, boring 1.2, grooving and parting
/// 1.3.
///
/// # Example
/// ```
/// use turnwright::{physics::force_factors::{cut_kind_factor, CutKind}, Sourced};
/// let Sourced { value, .. } = cut_kind_factor(CutKind::GroovingAndParting);
/// assert_eq!(value.value(), 1.3);
/// ```
#[must_use]
pub const fn cut_kind_factor(kind: CutKind) -> Sourced<ForceFactor> {
    match kind {
        CutKind::OutsideTurning => from_books(1.0),
        CutKind::Boring => from_books(1.2),
        CutKind::GroovingAndParting => from_books(1.3),
    }
}

/// What runs over the cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Coolant {
    /// Nothing.
    Dry,
    /// Soluble oil in water.
    Emulsion,
    /// Cutting oil.
    Oil,
}

/// The factor of the force for the coolant: dry 1, emulsion 0.9, oil 0.85.
///
/// # Example
/// ```
/// use turnwright::{physics::force_factors::{coolant_factor, Coolant}, Sourced};
/// let Sourced { value, .. } = coolant_factor(Coolant::Oil);
/// assert_eq!(value.value(), 0.85);
/// ```
#[must_use]
pub const fn coolant_factor(coolant: Coolant) -> Sourced<ForceFactor> {
    match coolant {
        Coolant::Dry => from_books(1.0),
        Coolant::Emulsion => from_books(0.9),
        Coolant::Oil => from_books(0.85),
    }
}

/// The law of a material with a factor on its force.
///
/// k_c1.1 K; the exponent stays
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Definition of the factors.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, force_factors::corrected};
/// let steel = ForceLaw::new("2000 MPa".parse()?, "0.2".parse()?);
/// assert_eq!(corrected(steel, "1.3".parse()?).specific_force.mpa(), 2600.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn corrected(law: ForceLaw, factor: ForceFactor) -> ForceLaw {
    let k = law.specific_force.pressure() * factor.value();
    ForceLaw::new(SpecificCuttingForce::computed(k), law.exponent)
}

/// The normal ratio when the force normal to the edge has another factor than the main force.
///
/// K_n K_normal / K_main
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Definition of the normal ratio.
/// # Example
/// ```
/// use turnwright::physics::force_factors::corrected_ratio;
/// let worn = corrected_ratio("0.5".parse()?, "1.5".parse()?, "2".parse()?);
/// assert!((worn.value() - 2.0 / 3.0).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn corrected_ratio(
    ratio: NormalRatio,
    main_factor: ForceFactor,
    normal_factor: ForceFactor,
) -> NormalRatio {
    NormalRatio::computed_trade(ratio.value() * normal_factor.value() / main_factor.value())
}

/// The least and the largest factor of a force that scatters.
///
/// 1 - s, 1 + s
///
/// # Units
/// The types carry them.
/// # Range
/// Scatters below 1.
/// # Source
/// Definition of the scatter.
/// # Example
/// ```
/// use turnwright::physics::force_factors::scattered;
/// let [least, most] = scattered("0.3".parse()?).map(|factor| factor.value());
/// assert_eq!((least, most), (0.7, 1.3));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn scattered(scatter: ForceScatter) -> [ForceFactor; 2] {
    [-scatter.value(), scatter.value()].map(|s| ForceFactor::computed_trade(1.0 + s))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn rake(degrees: f64) -> RakeAngle {
        RakeAngle::from_degrees(degrees).unwrap()
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn at_the_reference_rake_the_factor_is_one(gamma in -10.0..25.0_f64) {
            prop_assert_eq!(rake_factor(rake(gamma), rake(gamma)).unwrap().value(), 1.0);
        }

        #[test]
        fn more_rake_is_less_force(gamma in -10.0..24.0_f64, more in 0.01..1.0_f64) {
            let at = |gamma| rake_factor(rake(gamma), REFERENCE_RAKE.value).unwrap();
            prop_assert!(at(gamma + more) < at(gamma));
        }

        #[test]
        fn faster_carbide_is_less_force(v in 20.0..1000.0_f64) {
            let at = |v| carbide_speed_factor(CuttingSpeed::from_m_per_min(v).unwrap()).unwrap();
            // The two pieces meet to 0.1 % only.
            prop_assert!(at(v * 1.02) < at(v));
        }
    }

    #[test]
    fn outside_of_what_is_known_the_field_is_named() {
        for bad in [-10.1, 25.1, 60.0, -45.0] {
            let error = rake_factor(rake(bad), REFERENCE_RAKE.value).unwrap_err();
            assert_eq!(error.field(), "rake_angle");
            let error = rake_factor(rake(6.0), rake(bad)).unwrap_err();
            assert_eq!(error.field(), "reference_rake_angle");
        }
        let slow = CuttingSpeed::from_m_per_min(19.9).unwrap();
        let error = carbide_speed_factor(slow).unwrap_err();
        assert_eq!(error.field(), "cutting_speed");
    }

    #[test]
    fn wear_grows_the_forces_normal_to_the_edge_faster_up_to_double() {
        for edge in EdgeState::ALL {
            let (main, normal) = (wear_factor(edge).value, normal_wear_factor(edge).value);
            assert!(normal >= main && normal.value() <= 2.0);
            assert_eq!(normal == main, edge == EdgeState::Sharp);
        }
    }
}
