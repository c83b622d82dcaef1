//! The specific force from a measured cut, and power from unit power.
//!
//! Symbols: P power at the spindle, P_idle power of the motor without a cut, eta efficiency from
//! motor to spindle, v_c cutting speed at the mean diameter, Q removal rate, k_c specific force at
//! the thickness of the cut, k_c1.1 and m_c of the Kienzle law.

use uom::si::f64::{Area, Force};
use uom::si::length::millimeter;

use super::engagement::ChipSection;
use super::force::{ForceLaw, cutting_forces};
use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    ChipThickness, CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Efficiency, Feed,
    ForceExponent, MainForce, NormalRatio, Power, RemovalRate, SpecificCuttingForce,
    SpecificForceAtChip,
};

/// The power of a cut, from that of the motor with and without it.
///
/// P = eta (P_motor - P_idle)
///
/// # Units
/// The types carry them.
/// # Range
/// The motor measured at the same spindle speed, idling and cutting. A cut that takes a small share
/// of it is a difference of nearly equal numbers.
/// # Errors
/// `idle_power`, when it is not below the motor's power under the cut.
/// # Source
/// Definition of the efficiency.
/// # Example
/// ```
/// use turnwright::physics::measured_force::power_above_idle;
/// let p = power_above_idle("2.7 kW".parse()?, "0.3 kW".parse()?, "0.8".parse()?)?;
/// assert!((p.kw() - 1.92).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn power_above_idle(
    motor_power: Power,
    idle_power: Power,
    efficiency: Efficiency,
) -> Result<Power, Error> {
    if idle_power >= motor_power {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "idle_power",
            idle_power.to_string(),
            format!("less than the {motor_power} of the motor under the cut"),
            "measure both at the same spindle speed, first without the cut, then in it",
        ));
    }
    let p = (motor_power.power() - idle_power.power()) * efficiency.value();
    Ok(Power::computed(p))
}

/// The main force of a cut of known power.
///
/// F_c = P / v_c
///
/// # Units
/// The types carry them.
/// # Range
/// v_c at the mean diameter of the cut.
/// # Source
/// Definition of power.
/// # Example
/// ```
/// use turnwright::physics::measured_force::force_of_power;
/// let f_c = force_of_power("1 kW".parse()?, "60 m/min".parse()?);
/// assert!((f_c.newton() - 1000.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn force_of_power(cutting_power: Power, cutting_speed: CuttingSpeed) -> MainForce {
    let (p, v_c) = (cutting_power.power(), cutting_speed.velocity());
    MainForce::computed(p / v_c)
}

/// What a square millimetre of chip has cost in force, by a measured main force.
///
/// k_c = F_c / (b h)
///
/// # Units
/// The types carry them.
/// # Range
/// The chip of the cut: straight edge, or the flat chip of a rounded one. It holds for this
/// thickness.
/// # Source
/// Definition of the specific force.
/// # Example
/// ```
/// use turnwright::physics::{
///     engagement::chip_section,
///     measured_force::{force_of_power, specific_force_of_chip},
/// };
/// let chip = chip_section("2 mm".parse()?, "0.25 mm/rev".parse()?, "90 deg".parse()?);
/// let f_c = force_of_power("1.92 kW".parse()?, "110 m/min".parse()?);
/// assert!((specific_force_of_chip(f_c, chip).mpa() - 2094.5).abs() < 0.1);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn specific_force_of_chip(main_force: MainForce, chip: ChipSection) -> SpecificForceAtChip {
    let (f_c, section): (Force, Area) = (
        main_force.force(),
        chip.thickness.length() * chip.width.length(),
    );
    SpecificForceAtChip::computed(f_c / section)
}

/// The law that passes through a specific force at one thickness, its exponent kept.
///
/// k_c1.1 = k_c (h / 1 mm)^(m_c)
///
/// # Units
/// The types carry them; h is measured in mm, as the law is written.
/// # Range
/// The exponent comes from a table; near the thickness that was measured it hardly counts.
/// # Source
/// Kienzle 1952, VDI-Z 94 (from memory), solved for k_c1.1.
/// # Example
/// ```
/// use turnwright::physics::measured_force::law_through;
/// let law = law_through("2094.5454545 MPa".parse()?, "0.25 mm".parse()?, "0.26".parse()?);
/// assert!((law.specific_force.mpa() - 1460.677).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn law_through(
    specific_force_at_chip: SpecificForceAtChip,
    thickness: ChipThickness,
    exponent: ForceExponent,
) -> ForceLaw {
    let h_0 = uom::si::f64::Length::new::<millimeter>(1.0);
    let scale = maths::pow(maths::number(thickness.length() / h_0), exponent.value());
    let k = specific_force_at_chip.pressure() * scale;
    ForceLaw::new(SpecificCuttingForce::computed(k), exponent)
}

/// The law of a material from the main force of one cut with a rounded corner, light cuts included.
///
/// The force goes with k_c1.1: the law is that of a trial with k_c1.1 of 1000 MPa, times
/// F_c / F_c,trial.
///
/// # Units
/// The types carry them.
/// # Range
/// As [`cutting_forces`]: conditions of the cut (rake, wear, speed) stay in the law.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::measured_force::law_of_cut;
/// let law = law_of_cut(
///     "69.5 N".parse()?,
///     "0.14".parse()?,
///     "0.2 mm".parse()?,
///     "0.1 mm/rev".parse()?,
///     "95 deg".parse()?,
///     "0.8 mm".parse()?,
/// );
/// assert!((law.specific_force.mpa() - 2220.0).abs() < 2.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn law_of_cut(
    main_force: MainForce,
    exponent: ForceExponent,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
    corner_radius: CornerRadius,
) -> ForceLaw {
    let trial = ForceLaw::new(SpecificCuttingForce::computed_trade(1000.0), exponent);
    let predicted = cutting_forces(
        trial,
        depth_of_cut,
        feed,
        cutting_edge_angle,
        corner_radius,
        // The main force does not depend on the normal ratio.
        NormalRatio::computed_trade(1.0),
    );
    let ratio = maths::number(main_force.force() / predicted.main.force());
    let k = trial.specific_force.pressure() * ratio;
    ForceLaw::new(SpecificCuttingForce::computed(k), exponent)
}

/// The power of a cut from its removal rate and the specific force of its chip (unit power).
///
/// P = k_c Q
///
/// # Units
/// The types carry them. Unit power in hp/(in3/min) is a specific force: 1 hp/(in3/min) is
/// 2730.32 MPa.
/// # Range
/// The thickness of cut that the specific force holds for.
/// # Source
/// P = F_c v_c = k_c b h v_c.
/// # Example
/// ```
/// use turnwright::physics::measured_force::power_of_removal;
/// let p = power_of_removal("0.8 hp/(in3/min)".parse()?, "3 in3/min".parse()?);
/// assert!((p.hp() - 2.4).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn power_of_removal(
    specific_force_at_chip: SpecificForceAtChip,
    removal_rate: RemovalRate,
) -> Power {
    let (k_c, q) = (
        specific_force_at_chip.pressure(),
        removal_rate.volume_rate(),
    );
    Power::computed(k_c * q)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::drive::cutting_power;
    use crate::physics::engagement::chip_section;
    use crate::physics::force::{main_force, specific_force_at};
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn a_force_predicted_and_measured_again_gives_the_law_back(
            k in 200.0..5000.0_f64, m in 0.0..0.6_f64, depth in 0.01..5.0_f64, f in 0.02..0.5_f64,
            kappa in 20.0..120.0_f64, r in 0.0..2.0_f64, v in 10.0..300.0_f64,
        ) {
            let r = if r < 0.005 { 0.0 } else { r };
            let law = ForceLaw::new(
                SpecificCuttingForce::from_mpa(k).unwrap(),
                ForceExponent::from_value(m).unwrap(),
            );
            let (a_p, f, kappa, r, v) = (
                DepthOfCut::from_mm(depth).unwrap(),
                Feed::from_mm_per_rev(f).unwrap(),
                CuttingEdgeAngle::from_degrees(kappa).unwrap(),
                CornerRadius::from_mm(r).unwrap(),
                CuttingSpeed::from_m_per_min(v).unwrap(),
            );
            let ratio = NormalRatio::from_value(0.5).unwrap();
            let forces = cutting_forces(law, a_p, f, kappa, r, ratio);
            let power = cutting_power(forces.main, v);
            let again = law_of_cut(force_of_power(power, v), law.exponent, a_p, f, kappa, r);
            prop_assert!(near(again.specific_force.mpa(), k, 1e-13));
            // Straight edge: the same through the chip.
            let chip = chip_section(a_p, f, kappa);
            let k_c = specific_force_of_chip(main_force(law, chip), chip);
            prop_assert!(near(k_c.mpa(), specific_force_at(law, chip.thickness).mpa(), 1e-13));
            let through = law_through(k_c, chip.thickness, law.exponent);
            prop_assert!(near(through.specific_force.mpa(), k, 1e-13));
        }
    }

    #[test]
    fn a_motor_that_idles_harder_than_it_cuts_names_the_idle_power() {
        let (motor, idle) = ("0.3 kW".parse().unwrap(), "0.3 kW".parse().unwrap());
        let error = power_above_idle(motor, idle, "0.8".parse().unwrap()).unwrap_err();
        assert_eq!(error.field(), "idle_power");
    }
}
