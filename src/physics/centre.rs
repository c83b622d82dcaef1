//! The work on a centre of 60 deg: what pushes it off, and how hard it presses.
//!
//! Symbols: R radial force at the centre, F axial force, mu friction, D_2 countersink, d pilot.

use std::f64::consts::PI;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{AxialForce, Diameter, Friction, MeanPressure, PassiveForce, Quantity};

/// Mean pressure that a plain centre with grease bears: the least and the largest allowed.
pub const PLAIN_CENTRE_PRESSURE: Sourced<[MeanPressure; 2]> = Sourced::new(
    [
        MeanPressure::computed_trade(5.0),
        MeanPressure::computed_trade(10.0),
    ],
    "common practice, no source: 5 to 10 N/mm2; a live centre bears what its own data say",
    Standing::CommonPractice,
);

/// The axial force that holds the work on a centre of 60 deg against a radial force.
///
/// F = R tan(30 deg - rho), with tan rho = mu
///
/// # Units
/// The types carry them.
/// # Range
/// A cone of 60 deg included. Friction 0 is on the safe side: vibration undoes friction. Zero or
/// below: friction alone holds the work. The feed force that unloads the centre comes on top.
/// # Source
/// Statics of a wedge, derived.
/// # Example
/// ```
/// use turnwright::physics::centre::push_out;
/// let force = push_out("600 N".parse()?, "0".parse()?);
/// assert_eq!(force.newton().round(), 346.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn push_out(radial: PassiveForce, friction: Friction) -> AxialForce {
    let r = radial.force().abs();
    AxialForce::computed(r * maths::tan(PI / 6.0 - maths::atan2(friction.value(), 1.0)))
}

/// The mean pressure of an axial force on the cone of a centre hole.
///
/// p = F / (pi/4 (D_2^2 - d^2))
///
/// # Units
/// The types carry them.
/// # Range
/// On the ring that the cone shows along the axis; new edges bear unevenly. A force that pulls
/// presses nothing: its size is taken.
/// # Errors
/// `pilot_diameter`, when it is not smaller than the countersink.
/// # Source
/// Definition of a pressure; the projected ring, derived.
/// # Example
/// ```
/// use turnwright::physics::centre::cone_pressure;
/// let p = cone_pressure("800 N".parse()?, "8.5 mm".parse()?, "4 mm".parse()?)?;
/// assert!((p.mpa() - 18.11).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cone_pressure(
    axial: AxialForce,
    countersink: Diameter,
    pilot: Diameter,
) -> Result<MeanPressure, Error> {
    cone(countersink, pilot)?;
    let (f, outer, inner) = (axial.force().abs(), countersink.length(), pilot.length());
    let pressure = f / ((outer - inner) * (outer + inner) * (PI / 4.0));
    MeanPressure::from_pressure(pressure).map_err(|_| too_hard(axial, countersink))
}

/// The mean pressure of a radial force on the cone of a centre hole.
///
/// p = R / ((D_2 + d)/2 l), with the cone's depth l = (D_2 - d)/2 / tan 30 deg
///
/// # Units
/// The types carry them.
/// # Range
/// On the shadow that the cone throws to the side.
/// # Errors
/// `pilot_diameter`, when it is not smaller than the countersink.
/// # Source
/// Definition of a pressure; the projected trapezium, derived.
/// # Example
/// ```
/// use turnwright::physics::centre::side_pressure;
/// let p = side_pressure("200 N".parse()?, "8.5 mm".parse()?, "4 mm".parse()?)?;
/// assert!((p.mpa() - 8.21).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn side_pressure(
    radial: PassiveForce,
    countersink: Diameter,
    pilot: Diameter,
) -> Result<MeanPressure, Error> {
    cone(countersink, pilot)?;
    let (r, outer, inner) = (radial.force().abs(), countersink.length(), pilot.length());
    let depth = (outer - inner) / 2.0 / maths::tan(PI / 6.0);
    MeanPressure::from_pressure(r / ((outer + inner) / 2.0 * depth))
        .map_err(|_| too_hard(AxialForce::computed(r), countersink))
}

fn cone(countersink: Diameter, pilot: Diameter) -> Result<(), Error> {
    if pilot < countersink {
        return Ok(());
    }
    Err(Error::new(
        ErrorKind::Contradiction,
        "pilot_diameter",
        pilot.to_string(),
        format!("less than the countersink of {countersink}"),
        "the pilot is the narrow hole, the countersink the wide end of the cone",
    ))
}

#[cold]
fn too_hard(force: AxialForce, countersink: Diameter) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "countersink_diameter",
        countersink.to_string(),
        format!(
            "a cone that bears {force} at less than {} {}",
            MeanPressure::ROW.largest(),
            "MPa"
        ),
        "check the force and the two diameters of the centre hole",
    )
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    #[test]
    fn friction_of_the_cones_own_slope_holds_the_work_alone() {
        let slope = Friction::from_value((PI / 6.0).tan()).unwrap();
        // 1e-12 of the force: one tangent and one arc tangent of doubles.
        assert!(push_out(read("600 N"), slope).newton().abs() < 1e-9);
        assert!(push_out(read("600 N"), read("0.1")) < push_out(read("600 N"), read("0")));
        assert_eq!(
            push_out(read("-600 N"), read("0")),
            push_out(read("600 N"), read("0"))
        );
    }

    #[test]
    fn a_pilot_as_wide_as_the_countersink_is_refused() {
        for (d_2, d) in [("4 mm", "4 mm"), ("4 mm", "5 mm")] {
            let error = cone_pressure(read("100 N"), read(d_2), read(d)).unwrap_err();
            assert_eq!(error.field(), "pilot_diameter");
            let error = side_pressure(read("100 N"), read(d_2), read(d)).unwrap_err();
            assert_eq!(error.field(), "pilot_diameter");
        }
    }
}
