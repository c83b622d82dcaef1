//! A tool whose tip stands above or below the axis: what it does to sizes, tapers, rake and clearance.
//!
//! Symbols: e height of the tip above the axis, R_0 radius at which the dial was zeroed, Delta travel
//! inwards since, R true radius.

use uom::si::f64::Length;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, DiameterError, RakeAngle, ToolHeight, Travel};

/// The diameter that a tool off centre height really turns.
///
/// R = sqrt((sqrt(R_0^2 - e^2) - Delta)^2 + e^2)
///
/// # Units
/// The travel is that of the slide on the radius.
/// # Range
/// Above or below the axis alike. Zeroed by touching or by a measured cut at `zeroed_at`.
/// # Errors
/// `tool_height`, when the tip passes above or below the work; `moved_in`, when it goes past the axis.
/// # Source
/// Geometry: the tip moves level, at the distance e from the axis.
/// # Example
/// ```
/// use turnwright::physics::tool_height::turned_diameter;
/// let d = turned_diameter("40 mm".parse()?, "15 mm".parse()?, "1 mm".parse()?)?;
/// assert!((d.mm() - 10.14898).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn turned_diameter(
    zeroed_at: Diameter,
    moved_in: Travel,
    tool_height: ToolHeight,
) -> Result<Diameter, Error> {
    let (r_0, delta, e) = (
        zeroed_at.radius().length(),
        moved_in.length(),
        tool_height.length(),
    );
    if e.abs() >= r_0 {
        return Err(passes(tool_height, zeroed_at));
    }
    let level = ((r_0 - e) * (r_0 + e)).sqrt() - delta;
    // To the axis itself is allowed; the root may fall short of it by its rounding.
    if level < -1e-12 * r_0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "moved_in",
            moved_in.to_string(),
            format!(
                "at most {:.3} mm, which is to the axis",
                (moved_in.length() + level).get::<uom::si::length::millimeter>()
            ),
            "the travel is on the radius: the diameter falls by twice as much",
        ));
    }
    Ok(Diameter::computed(
        2.0 * level.max(Length::default()).hypot(e),
    ))
}

/// By how much the diameter comes out too large because of the height of the tool.
///
/// 2 (R - (R_0 - Delta)), about e^2 (1/R - 1/R_0)
///
/// # Units
/// As [`turned_diameter`].
/// # Range
/// As [`turned_diameter`]; never negative. Of a taper zeroed at its large end this is the error at
/// the small end, and what lies between is hollow: a hyperboloid, no cone.
/// # Errors
/// As [`turned_diameter`].
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::physics::tool_height::diameter_error;
/// let error = diameter_error("40 mm".parse()?, "15 mm".parse()?, "1 mm".parse()?)?;
/// assert!((error.mm() - 0.14898).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn diameter_error(
    zeroed_at: Diameter,
    moved_in: Travel,
    tool_height: ToolHeight,
) -> Result<DiameterError, Error> {
    let turned = turned_diameter(zeroed_at, moved_in, tool_height)?;
    let (r_0, delta, e) = (
        zeroed_at.radius().length(),
        moved_in.length(),
        tool_height.length(),
    );
    let wanted = r_0 - delta;
    // R^2 - wanted^2 = 2 Delta (R_0 - sqrt(R_0^2 - e^2)), without differences of nearly equal numbers.
    let level = ((r_0 - e) * (r_0 + e)).sqrt();
    let sunk = e * e / (r_0 + level);
    let sum = turned.radius().length() + wanted;
    if sum <= Length::default() {
        return Ok(DiameterError::computed(
            2.0 * (turned.radius().length() - wanted),
        ));
    }
    Ok(DiameterError::computed(
        4.0 * delta * maths::number(sunk / sum),
    ))
}

/// The error of the small end of a taper turned off centre height, its large end being right.
///
/// # Errors
/// `small`, when it is larger than the large end; else as [`turned_diameter`].
///
/// # Example
/// ```
/// use turnwright::physics::tool_height::taper_error;
/// let error = taper_error("40 mm".parse()?, "10 mm".parse()?, "1 mm".parse()?)?;
/// assert!((error.mm() - 0.14898).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn taper_error(
    large: Diameter,
    small: Diameter,
    tool_height: ToolHeight,
) -> Result<DiameterError, Error> {
    let down = large.radius().length() - small.radius().length();
    if down < Length::default() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "small",
            small.to_string(),
            format!("at most {large}"),
            "the small diameter is the one at the thin end",
        ));
    }
    // A tip that the small end does not reach has no error there: it leaves a core standing.
    if 2.0 * tool_height.length().abs() >= small.length() {
        return Err(passes(tool_height, small));
    }
    diameter_error(large, Travel::computed(down), tool_height)
}

/// By how much the working rake grows because of the height of the tool; the clearance falls by as
/// much.
///
/// asin(e / R)
///
/// # Units
/// The types carry them.
/// # Range
/// Turning outside: above the axis more rake and less clearance. In a bore it is the other way round.
/// # Errors
/// `tool_height`, when the tip passes above or below the work.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::physics::tool_height::rake_change;
/// let change = rake_change("10 mm".parse()?, "0.5 mm".parse()?)?;
/// assert!((change.degrees() - 5.739).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn rake_change(diameter: Diameter, tool_height: ToolHeight) -> Result<RakeAngle, Error> {
    let (r, e) = (diameter.radius().length(), tool_height.length());
    if e.abs() >= r {
        return Err(passes(tool_height, diameter));
    }
    Ok(RakeAngle::computed(maths::angle(maths::asin(
        maths::number(e / r),
    ))))
}

#[cold]
fn passes(tool_height: ToolHeight, diameter: Diameter) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "tool_height",
        tool_height.to_string(),
        format!("a height smaller than half of the diameter {diameter}"),
        "the tip would pass the work: set the tool to centre height",
    )
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    proptest! {
        #[test]
        fn the_error_is_never_negative_and_alike_above_and_below(
            d in 5.0..200.0_f64, share in 0.0..0.9_f64, e in 0.0..0.2_f64,
        ) {
            let (zeroed_at, moved_in) = (
                Diameter::from_mm(d).unwrap(),
                Travel::from_mm(d / 2.0 * share).unwrap(),
            );
            let (above, below) = (
                ToolHeight::from_mm(e * d / 10.0).unwrap(),
                ToolHeight::from_mm(-e * d / 10.0).unwrap(),
            );
            let error = diameter_error(zeroed_at, moved_in, above).unwrap();
            prop_assert!(error.mm() >= 0.0);
            prop_assert_eq!(error, diameter_error(zeroed_at, moved_in, below).unwrap());
            let turned = turned_diameter(zeroed_at, moved_in, above).unwrap();
            let plain = turned.mm() - (d - 2.0 * moved_in.mm());
            prop_assert!((plain - error.mm()).abs() < 1e-12 * d);
        }

        #[test]
        fn a_small_height_errs_as_its_square_says(d in 20.0..200.0_f64, share in 0.1..0.8_f64) {
            let e = 1e-3 * d;
            let wanted = d * (1.0 - share);
            let error = diameter_error(
                Diameter::from_mm(d).unwrap(),
                Travel::from_mm(d * share / 2.0).unwrap(),
                ToolHeight::from_mm(e).unwrap(),
            ).unwrap();
            let square = e * e * (2.0 / wanted - 2.0 / d);
            // The next term is smaller by the square of e over the radius, at most 1e-4 here.
            prop_assert!((error.mm() / square - 1.0).abs() < 2e-4);
        }
    }

    #[test]
    fn at_centre_height_all_is_true() {
        let zero = read("0 mm");
        let turned = turned_diameter(read("40 mm"), read("15 mm"), zero).unwrap();
        // A square root and a sum of doubles.
        assert!((turned.mm() - 10.0).abs() < 1e-13);
        assert_eq!(
            diameter_error(read("40 mm"), read("15 mm"), zero)
                .unwrap()
                .mm(),
            0.0
        );
        assert_eq!(
            diameter_error(read("40 mm"), read("20 mm"), zero)
                .unwrap()
                .mm(),
            0.0
        );
        assert_eq!(rake_change(read("10 mm"), zero).unwrap().degrees(), 0.0);
    }

    #[test]
    fn a_tip_that_misses_the_work_is_refused() {
        let field = |result: Result<Diameter, Error>| result.unwrap_err().field().to_owned();
        assert_eq!(
            field(turned_diameter(read("2 mm"), read("0 mm"), read("1 mm"))),
            "tool_height"
        );
        assert_eq!(
            field(turned_diameter(
                read("40 mm"),
                read("20.5 mm"),
                read("1 mm")
            )),
            "moved_in"
        );
        assert!(rake_change(read("2 mm"), read("-1 mm")).is_err());
        assert_eq!(
            taper_error(read("10 mm"), read("40 mm"), read("1 mm"))
                .unwrap_err()
                .field(),
            "small"
        );
        assert_eq!(
            taper_error(read("40 mm"), read("2 mm"), read("1 mm"))
                .unwrap_err()
                .field(),
            "tool_height"
        );
    }
}
