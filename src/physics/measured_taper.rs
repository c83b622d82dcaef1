//! What a measured taper tells: the stiffness of the chuck, a tailstock out of line.
//!
//! Diameters are measured in two or more places along a bar that was turned at one reading of the
//! dial; the force is that of the cut.

use uom::si::f64::Length;
use uom::si::length::meter;

use super::bar::{Springs, Support};
use super::maths;
use super::section::Section;
use super::stepped::HeldBar;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    DiameterError, Overhang, PassiveForce, RotationalStiffness, SetOver, Stiffness, WorkLength,
    YoungsModulus,
};

/// An error of the diameter, and where it was measured.
///
/// ```
/// use turnwright::physics::measured_taper::Measured;
/// let end = Measured::new("150 mm".parse()?, "0.094 mm".parse()?);
/// assert_eq!(end.at.mm(), 150.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Measured {
    /// Where, from the chuck.
    pub at: WorkLength,
    /// Measured less wanted.
    pub error: DiameterError,
}

impl Measured {
    /// An error and its place.
    #[must_use]
    pub const fn new(at: WorkLength, error: DiameterError) -> Self {
        Self { at, error }
    }
}

/// How stiff the chuck must be for the errors that were measured on a bar in the chuck alone.
///
/// delta_i/F_p - c(a_i) = 1/k_c + a_i^2/k_th, c the flexibility of the bar in a rigid chuck; with
/// more than two places by least squares. A spring that comes out rigid is None.
///
/// # Units
/// The types carry them.
/// # Range
/// Errors that come from the spring alone: a tool that wears or a headstock out of line is told as a
/// softer chuck.
/// # Errors
/// `measured`, when there are fewer than two different places, one lies beyond the bar, or the
/// errors are smaller than the bar alone would spring; `force`, when it is not above zero.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::{measured_taper::{stiffness_from_taper, Measured}, section::Section};
/// let springs = stiffness_from_taper(
///     "210 GPa".parse()?,
///     &[Section::cylinder("30 mm".parse()?, "150 mm".parse()?)],
///     "120 N".parse()?,
///     &[
///         Measured::new("50 mm".parse()?, "0.0151976 mm".parse()?),
///         Measured::new("150 mm".parse()?, "0.0943362 mm".parse()?),
///     ],
/// )?;
/// assert!(springs.chuck.is_some_and(|k| (k.kn_per_mm() - 30.0).abs() < 0.01));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn stiffness_from_taper(
    youngs_modulus: YoungsModulus,
    sections: &[Section],
    force: PassiveForce,
    measured: &[Measured],
) -> Result<Springs, Error> {
    if force.newton() <= 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "force",
            force.to_string(),
            "a force above zero",
            "give the passive force of the cut that left the taper",
        ));
    }
    let rigid = HeldBar::new(
        youngs_modulus,
        sections,
        Support::Chuck,
        &Springs::default(),
        &[],
    )?;
    // Compliances in m/N and places in m: a straight line in a^2.
    let metre = Length::new::<meter>(1.0);
    let mut points = Vec::with_capacity(measured.len());
    for (number, one) in measured.iter().enumerate() {
        let bar = rigid
            .deflection(force, one.at)
            .map_err(|error| error.at(&format!("measured[{number}].at")))?;
        let rest = (one.error.length() / 2.0 - bar.length()) / metre / force.newton();
        let a = maths::number(one.at.length() / metre);
        points.push((a * a, maths::number(rest)));
    }
    let count = points.len() as f64;
    let mean = |of: fn(&(f64, f64)) -> f64| points.iter().map(of).sum::<f64>() / count;
    let (x, y) = (mean(|p| p.0), mean(|p| p.1));
    let spread: f64 = points.iter().map(|p| (p.0 - x) * (p.0 - x)).sum();
    if points.len() < 2 || spread <= 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "measured",
            format!("{} measurements", measured.len()),
            "errors at two different places or more",
            "measure near the jaws and near the free end",
        ));
    }
    let slope = points.iter().map(|p| (p.0 - x) * (p.1 - y)).sum::<f64>() / spread;
    let level = y - slope * x;
    // What the rounding of the errors leaves is no spring.
    let noise = 1e-12 * points.iter().map(|p| p.1.abs()).fold(0.0, f64::max);
    if level < -noise || slope < -noise {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "measured",
            "a taper that no spring of the chuck explains",
            "errors that grow towards the free end, and more than the bar alone would spring",
            "check the force and the order of the places; a straight taper points to the headstock or the bed",
        ));
    }
    let mut springs = Springs::default();
    if level > noise {
        springs = springs.with_chuck(Stiffness::computed_trade(1e-6 / level));
    }
    if slope > noise {
        springs = springs.with_chuck_rotational(RotationalStiffness::computed_trade(1e-3 / slope));
    }
    Ok(springs)
}

/// How far to move the tailstock so that a bar between centres comes out straight.
///
/// s = (d_2 - d_1)/2 L/l, l the distance of the two places; positive towards the tool, where the tail
/// end is the thicker.
///
/// # Units
/// The types carry them. `near` is measured near the head, `far` near the tailstock.
/// # Range
/// Between centres, where the taper is straight. In a chuck that holds rigidly the bar is bent
/// instead, see [`tailstock_error`].
/// # Errors
/// `far`, when it is not farther from the head than `near`, or beyond the length.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::measured_taper::{tailstock_correction, Measured};
/// let near = Measured::new("100 mm".parse()?, "0.01 mm".parse()?);
/// let far = Measured::new("250 mm".parse()?, "0.07 mm".parse()?);
/// let move_by = tailstock_correction(near, far, "400 mm".parse()?)?;
/// assert!((move_by.mm() - 0.08).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn tailstock_correction(
    near: Measured,
    far: Measured,
    length_between_centres: WorkLength,
) -> Result<SetOver, Error> {
    if far.at <= near.at || far.at > length_between_centres {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "far",
            far.at.to_string(),
            format!(
                "farther from the head than {}, and on the bar of {length_between_centres}",
                near.at
            ),
            "measure near the headstock and near the tailstock, each place from the headstock",
        ));
    }
    let difference = far.error.length() - near.error.length();
    let distance = far.at.length() - near.at.length();
    let share = length_between_centres.length() / distance;
    Ok(SetOver::computed(difference / 2.0 * share))
}

/// The error of the diameter at a place when the tailstock stands off the axis.
///
/// Between centres -2 s a/L, a straight taper. Held in a rigid chuck with a centre the bar is a
/// cantilever whose end is forced aside by s and flexes at every turn: -s a^2 (3 L - a)/L^3.
///
/// # Units
/// The types carry them. `set_over` is positive towards the tool; `overhang` is the length from the
/// chuck, or from the centre at the head, to that at the tail.
/// # Range
/// A uniform bar; the chuck alone feels no tailstock: zero.
/// # Errors
/// `at`, when it is beyond the length.
/// # Source
/// Derived from the cantilever (Roark; Timoshenko, from memory).
/// # Example
/// ```
/// use turnwright::physics::{bar::Support, measured_taper::tailstock_error};
/// let error = tailstock_error(Support::BetweenCentres, "0.05 mm".parse()?, "150 mm".parse()?, "300 mm".parse()?)?;
/// assert!((error.mm() + 0.05).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn tailstock_error(
    support: Support,
    set_over: SetOver,
    at: WorkLength,
    overhang: Overhang,
) -> Result<DiameterError, Error> {
    if at.mm() > overhang.mm() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "at",
            at.to_string(),
            format!("at most the length {overhang}"),
            "places are measured from the chuck",
        ));
    }
    let x = maths::number(at.length() / overhang.length());
    let share = match support {
        Support::Chuck => 0.0,
        Support::ChuckAndCentre => x * x * (3.0 - x),
        Support::BetweenCentres => 2.0 * x,
    };
    Ok(DiameterError::computed(-set_over.length() * share))
}
