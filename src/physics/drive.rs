//! Torque and power: what a cut takes, and what the drive can give.
//!
//! Symbols: F_c main force, v_c cutting speed, d_m mean diameter of the cut, n spindle speed, eta
//! efficiency from motor to spindle.

use std::f64::consts::PI;

use super::force::ForceLaw;
use super::maths;
use crate::quantity::{
    CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Efficiency, Feed, MainForce, Power,
    SpindleSpeed, Torque,
};

/// The power that the cut takes at the spindle.
///
/// P_c = F_c v_c
///
/// # Units
/// The types carry them.
/// # Range
/// The cutting speed is that of the mean diameter. The feed's power, below 1 %, is left out.
/// # Source
/// Definition of power.
/// # Example
/// ```
/// use turnwright::{physics::drive::cutting_power, CuttingSpeed, MainForce};
/// let p = cutting_power(MainForce::from_newton(1000.0)?, CuttingSpeed::from_m_per_min(60.0)?);
/// assert!((p.kw() - 1.0).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn cutting_power(main_force: MainForce, cutting_speed: CuttingSpeed) -> Power {
    let (f_c, v_c) = (main_force.force(), cutting_speed.velocity());
    Power::computed(f_c * v_c)
}

/// The torque that the cut takes at the spindle.
///
/// T = F_c d_m / 2
///
/// # Units
/// The types carry them.
/// # Range
/// d_m is the mean diameter of the cut.
/// # Source
/// Definition of torque.
/// # Example
/// ```
/// use turnwright::{physics::drive::torque, Diameter, MainForce};
/// let t = torque(MainForce::from_newton(1200.0)?, Diameter::from_mm(48.0)?);
/// assert!((t.newton_meter() - 28.8).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn torque(main_force: MainForce, mean_diameter: Diameter) -> Torque {
    let (f_c, d_m) = (main_force.force(), mean_diameter.length());
    Torque::computed((f_c * d_m / 2.0).into())
}

/// The power that the motor gives for a power at the spindle.
///
/// P_motor = P / eta
///
/// # Units
/// The types carry them.
/// # Range
/// Without the idle power of the machine. eta is 0.7 to 0.85 for belt and gear lathes (common
/// practice, no source).
/// # Source
/// Definition of the efficiency.
/// # Example
/// ```
/// use turnwright::{physics::drive::motor_power, Efficiency, Power};
/// let p = motor_power(Power::from_kw(1.2)?, Efficiency::from_value(0.8)?);
/// assert!((p.kw() - 1.5).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn motor_power(spindle: Power, efficiency: Efficiency) -> Power {
    Power::computed(spindle.power() / efficiency.value())
}

/// The power that reaches the spindle from a motor.
///
/// P = eta P_motor
///
/// # Units
/// The types carry them.
/// # Range
/// Without the idle power of the machine.
/// # Source
/// Definition of the efficiency.
/// # Example
/// ```
/// use turnwright::{physics::drive::spindle_power, Efficiency, Power};
/// let p = spindle_power(Power::from_kw(1.5)?, Efficiency::from_value(0.8)?);
/// assert!((p.kw() - 1.2).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn spindle_power(motor: Power, efficiency: Efficiency) -> Power {
    Power::computed(motor.power() * efficiency.value())
}

/// The torque of a power at a spindle speed.
///
/// T = P / (2 pi n)
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Definition of power.
/// # Example
/// ```
/// use turnwright::{physics::drive::torque_at, Power, SpindleSpeed};
/// let t = torque_at(Power::from_kw(1.5)?, SpindleSpeed::from_rpm(1400.0)?);
/// assert!((t.newton_meter() - 10.23).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn torque_at(power: Power, spindle_speed: SpindleSpeed) -> Torque {
    let (p, n) = (power.power(), spindle_speed.frequency());
    Torque::computed((p / (2.0 * PI * n)).into())
}

/// What a drive with a motor of variable speed can give at a spindle speed.
///
/// P(n) = P_N n / n_b below n_b, P_N above
///
/// # Units
/// The types carry them.
/// # Range
/// Drives that hold the torque below their base speed n_b and the power above it; with gears, the
/// base speed of the gear engaged.
/// # Source
/// Common property of field-weakened drives, no source.
/// # Example
/// ```
/// use turnwright::{physics::drive::drive_power, Power, SpindleSpeed};
/// let p = drive_power(
///     Power::from_kw(1.5)?,
///     SpindleSpeed::from_rpm(1400.0)?,
///     SpindleSpeed::from_rpm(350.0)?,
/// );
/// assert!((p.kw() - 0.375).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn drive_power(
    rated: Power,
    constant_torque_below: SpindleSpeed,
    spindle_speed: SpindleSpeed,
) -> Power {
    let (p_n, n_b, n) = (
        rated.power(),
        constant_torque_below.frequency(),
        spindle_speed.frequency(),
    );
    Power::computed(p_n * maths::number(n / n_b).min(1.0))
}

/// The deepest cut for which a power at the spindle is enough.
///
/// a_p = P / (k_c f v_c), with k_c at h = f sin kappa_r
///
/// # Units
/// The types carry them.
/// # Range
/// Straight edge; the cutting speed taken at the outer diameter is on the safe side.
/// # Source
/// Kienzle's law and P = F_c v_c, solved for the depth.
/// # Example
/// ```
/// use turnwright::physics::{drive::largest_depth_for_power, force::ForceLaw};
/// let a_p = largest_depth_for_power(
///     ForceLaw::new("1780 MPa".parse()?, "0.17".parse()?),
///     "0.2 mm/rev".parse()?,
///     "90 deg".parse()?,
///     "100 m/min".parse()?,
///     "1.2 kW".parse()?,
/// );
/// assert!((a_p.mm() - 1.538).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn largest_depth_for_power(
    law: ForceLaw,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
    cutting_speed: CuttingSpeed,
    power: Power,
) -> DepthOfCut {
    let (f, v_c, p) = (
        feed.length_per_revolution(),
        cutting_speed.velocity(),
        power.power(),
    );
    let sin_kappa = maths::sin(maths::radians(cutting_edge_angle.angle()));
    DepthOfCut::computed(p / (law.at(f * sin_kappa) * f * v_c))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::force::main_force;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    fn read<T: std::str::FromStr<Err = crate::error::Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    fn steel() -> ForceLaw {
        ForceLaw::new(read("2220 MPa"), read("0.14"))
    }

    #[test]
    fn power_torque_and_depth_agree_with_one_another() {
        let p = cutting_power(read("1200 N"), read("100 m/min"));
        let n = crate::physics::speed::spindle_speed(read("100 m/min"), read("48 mm"));
        let (a, b) = (torque_at(p, n), torque(read("1200 N"), read("48 mm")));
        assert!(near(a.newton_meter(), b.newton_meter(), 1e-14));
        let eta = read("0.75");
        assert!(near(
            spindle_power(motor_power(p, eta), eta).kw(),
            p.kw(),
            1e-14
        ));
        let (f, kappa, v_c) = (read("0.2 mm/rev"), read("75 deg"), read("100 m/min"));
        let a_p = largest_depth_for_power(steel(), f, kappa, v_c, p);
        let chip = crate::physics::engagement::chip_section(a_p, f, kappa);
        assert!(near(
            cutting_power(main_force(steel(), chip), v_c).kw(),
            p.kw(),
            1e-14
        ));
    }

    #[test]
    fn a_drive_holds_its_power_above_the_base_speed_and_its_torque_below() {
        let at = |n: &str| drive_power(read("1.5 kW"), read("1400 rpm"), read(n));
        assert!(near(at("2800 rpm").kw(), 1.5, 1e-14));
        let torque = |n: &str| torque_at(at(n), read(n)).newton_meter();
        assert!(near(torque("100 rpm"), torque("1400 rpm"), 1e-14));
    }
}
