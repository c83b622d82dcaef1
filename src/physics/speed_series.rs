//! Geometric series of spindle speeds: how gearboxes are stepped.
//!
//! Symbols: phi ratio of a step, q how many steps of the series R20 one step of the gearbox makes.

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Quantity, SpindleSpeed};

/// The exact ratio of a series in which every q-th value of R20 is taken (R20/q).
///
/// phi = 10^(q/20)
///
/// # Units
/// None.
/// # Range
/// q from 1 to 6, as gearboxes have: R20 to R20/6. The largest loss of cutting speed by stepping is
/// 1 - 1/phi.
/// # Errors
/// `step`, outside of 1 to 6.
/// # Source
/// ISO 3 with ISO 229, from memory.
/// # Example
/// ```
/// use turnwright::physics::speed_series::step_ratio;
/// assert!((step_ratio(3)? - 1.41254).abs() < 1e-5);
/// assert!(step_ratio(0).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn step_ratio(step: u8) -> Result<f64, Error> {
    if (1..=6).contains(&step) {
        return Ok(maths::pow(10.0, f64::from(step) / 20.0));
    }
    Err(Error::new(
        ErrorKind::OutOfRange,
        "step",
        step.to_string(),
        "1 to 6: every value of the series R20 up to every sixth",
        "a ratio of 1.12 is 1, of 1.26 is 2, of 1.41 is 3, of 1.58 is 4, of 2 is 6",
    ))
}

/// Spindle speeds in a geometric series, the slowest first.
///
/// n_j = n_1 phi^(j-1)
///
/// # Units
/// The types carry them.
/// # Range
/// Exact values; the plate of a machine carries rounded ones, of the series R20 or of its gears.
/// # Errors
/// `step`, outside of 1 to 6; `count`, when the last one is no plausible spindle speed.
/// # Source
/// ISO 3 with ISO 229, from memory.
/// # Example
/// ```
/// use turnwright::physics::speed_series::speeds;
/// let all = speeds("45 rpm".parse()?, 3, 12)?;
/// assert_eq!(all.len(), 12);
/// assert_eq!(all[11].rpm().round(), 2010.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn speeds(first: SpindleSpeed, step: u8, count: u8) -> Result<Vec<SpindleSpeed>, Error> {
    step_ratio(step)?;
    (0..count)
        .map(|place| {
            speed_of_step(first, step, place).map_err(|error| {
                Error::new(
                    ErrorKind::OutOfRange,
                    "count",
                    count.to_string(),
                    error.expected(),
                    "fewer steps, a smaller step, or a slower first speed",
                )
            })
        })
        .collect()
}

/// One spindle speed of a geometric series, so many steps above its first.
///
/// n = n_1 phi^place
///
/// # Units
/// The types carry them.
/// # Range
/// As [`speeds`]; place 0 is the first speed itself.
/// # Errors
/// `step`, outside of 1 to 6; `place`, when the speed there is no plausible spindle speed.
/// # Source
/// ISO 3 with ISO 229, from memory.
/// # Example
/// ```
/// use turnwright::physics::speed_series::speed_of_step;
/// assert_eq!(speed_of_step("45 rpm".parse()?, 3, 11)?.rpm().round(), 2010.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn speed_of_step(first: SpindleSpeed, step: u8, place: u8) -> Result<SpindleSpeed, Error> {
    step_ratio(step)?;
    let times = maths::pow(10.0, f64::from(step) * f64::from(place) / 20.0);
    SpindleSpeed::from_trade(first.rpm() * times).map_err(|error| {
        Error::new(
            ErrorKind::OutOfRange,
            "place",
            place.to_string(),
            format!("a last speed within {}", error.expected()),
            "a lower place, a smaller step, or a slower first speed",
        )
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::preferred::R20;

    #[test]
    fn a_series_from_one_hundred_is_near_the_preferred_numbers() {
        let all = speeds("100 rpm".parse().unwrap(), 1, 20).unwrap();
        for (speed, preferred) in all.iter().zip(R20.value) {
            // ISO 3, from memory: each within 1.3 %.
            assert!((speed.rpm() / preferred / 100.0 - 1.0).abs() < 0.013);
        }
    }

    #[test]
    fn a_series_that_runs_away_is_refused() {
        let error = speeds("1000 rpm".parse().unwrap(), 6, 200).unwrap_err();
        assert_eq!(error.field(), "count");
    }
}
