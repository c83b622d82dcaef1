//! How far a measuring instrument may be off.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, SizeUncertainty, StandardUncertainty, round_size};

/// What a diameter is measured with.
///
/// ```
/// use turnwright::standards::instrument::Instrument;
/// assert_eq!(Instrument::Micrometer.name(), "micrometer");
/// assert_eq!(Instrument::Calliper.to_string(), "calliper");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Instrument {
    /// Outside micrometer.
    Micrometer,
    /// Vernier or digital calliper that reads to 0.02 or 0.01 mm.
    Calliper,
    /// Vernier calliper that reads to 0.05 mm.
    CoarseCalliper,
    /// Dial indicator of 0.01 mm, set on a gauge block or a ring.
    DialIndicator,
    /// Lever indicator of 0.01 mm, set on a gauge block or a ring.
    LeverIndicator,
    /// Lever indicator of 0.002 mm, set on a gauge block or a ring.
    FineLeverIndicator,
}

impl Instrument {
    /// All instruments, the finest first.
    pub const ALL: [Self; 6] = [
        Self::Micrometer,
        Self::FineLeverIndicator,
        Self::LeverIndicator,
        Self::DialIndicator,
        Self::Calliper,
        Self::CoarseCalliper,
    ];

    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Micrometer => "micrometer",
            Self::Calliper => "calliper",
            Self::CoarseCalliper => "coarse_calliper",
            Self::DialIndicator => "dial_indicator",
            Self::LeverIndicator => "lever_indicator",
            Self::FineLeverIndicator => "fine_lever_indicator",
        }
    }

    /// The name as a person says it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Micrometer => "micrometer",
            Self::Calliper => "calliper",
            Self::CoarseCalliper => "calliper of 0.05 mm",
            Self::DialIndicator => "dial indicator",
            Self::LeverIndicator => "lever indicator",
            Self::FineLeverIndicator => "lever indicator of 0.002 mm",
        }
    }

    /// How far a person's readings of one size scatter with it: a standard deviation.
    ///
    /// # Source
    /// Common practice, no source: readings repeat within 2 to 4 um with a micrometer, 10 to 20 um
    /// with a calliper; a third of that is taken. Indicators: the repeatability limit of 3 um of
    /// DIN 878, from memory, a third of it. The calliper of 0.05 mm: judgement.
    ///
    /// # Example
    /// ```
    /// use turnwright::standards::instrument::Instrument;
    /// assert_eq!(Instrument::Micrometer.repeatability().value.to_string(), "0.001 mm");
    /// ```
    #[must_use]
    pub const fn repeatability(self) -> Sourced<StandardUncertainty> {
        let (mm, source, standing) = match self {
            Self::Micrometer => (0.001, HAND, Standing::CommonPractice),
            Self::Calliper => (0.005, HAND, Standing::CommonPractice),
            Self::CoarseCalliper => (0.015, "judgement, no source", Standing::Estimate),
            Self::DialIndicator | Self::LeverIndicator | Self::FineLeverIndicator => (
                0.001,
                "from memory of DIN 878, a third of its limit of 3 um",
                Standing::FromMemory,
            ),
        };
        Sourced::new(StandardUncertainty::computed_trade(mm), source, standing)
    }

    /// Sizes up to which an error holds, both in millimetres; the upper end belongs to the row.
    const fn rows(self) -> &'static [(f64, f64)] {
        match self {
            Self::Micrometer => &[(50.0, 0.004), (100.0, 0.005), (150.0, 0.006)],
            Self::Calliper => &[(100.0, 0.02), (300.0, 0.03)],
            Self::CoarseCalliper => &[(300.0, 0.05)],
            // An indicator compares with a block or ring of nearly the same size.
            Self::DialIndicator => &[(500.0, 0.017)],
            Self::LeverIndicator => &[(500.0, 0.013)],
            Self::FineLeverIndicator => &[(500.0, 0.004)],
        }
    }
}

const HAND: &str =
    "common practice, no source: a third of the range in which a person's readings lie";

impl fmt::Display for Instrument {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// The largest error that a sound instrument may have at a size.
///
/// # Units
/// The error is one-sided: the reading is off by up to this much either way. In an uncertainty
/// budget it is the half-width of a uniform distribution, unless a certificate says better.
/// # Range
/// Micrometers up to 150 mm, callipers up to 300 mm, indicators up to 500 mm (over their whole travel;
/// the block or ring they are set on is not in it). A person's hand is not in it: that adds 2 to
/// 4 um with a micrometer, 10 to 20 um with a calliper (common practice).
/// # Errors
/// `diameter`, beyond the table.
/// # Source
/// From memory of DIN 862, DIN 863-1, DIN 878 and ISO 3611, ISO 13385-1, unverified.
/// # Example
/// ```
/// use turnwright::standards::instrument::{largest_error, Instrument};
/// let error = largest_error(Instrument::Micrometer, "30 mm".parse()?)?;
/// assert_eq!(error.value.to_string(), "0.004 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn largest_error(
    instrument: Instrument,
    diameter: Diameter,
) -> Result<Sourced<SizeUncertainty>, Error> {
    let rows = instrument.rows();
    rows.iter()
        .find(|(up_to, _)| round_size(diameter.mm()) <= *up_to)
        .map(|(_, error)| {
            Sourced::new(
                SizeUncertainty::computed_trade(*error),
                "from memory of DIN 862, DIN 863-1, DIN 878 and ISO 3611, ISO 13385-1, unverified",
                Standing::FromMemory,
            )
        })
        .ok_or_else(|| {
            let up_to = rows.last().map_or(0.0, |(up_to, _)| *up_to);
            Error::new(
                ErrorKind::OutOfRange,
                "diameter",
                diameter.to_string(),
                format!("a size up to {up_to} mm, where the error of a {instrument} is known"),
                "give the instrument's uncertainty from its certificate",
            )
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn an_error_holds_up_to_the_end_of_its_row() {
        // From memory of DIN 862, DIN 863-1, unverified: (instrument, size mm, error mm).
        for (instrument, size, expected) in [
            (Instrument::Micrometer, 25.0, 0.004),
            (Instrument::Micrometer, 50.0, 0.004),
            (Instrument::Micrometer, 50.01, 0.005),
            (Instrument::Micrometer, 100.0, 0.005),
            (Instrument::Micrometer, 150.0, 0.006),
            (Instrument::Calliper, 100.0, 0.02),
            (Instrument::Calliper, 200.0, 0.03),
            (Instrument::Calliper, 300.0, 0.03),
            (Instrument::CoarseCalliper, 100.0, 0.05),
            // DIN 878, from memory, unverified.
            (Instrument::DialIndicator, 400.0, 0.017),
            (Instrument::LeverIndicator, 20.0, 0.013),
            (Instrument::FineLeverIndicator, 20.0, 0.004),
        ] {
            let error = largest_error(instrument, Diameter::from_mm(size).unwrap()).unwrap();
            assert_eq!(error.value.mm(), expected, "{instrument} {size}");
        }
    }

    #[test]
    fn beyond_the_table_nothing_is_invented() {
        for (instrument, size) in [
            (Instrument::Micrometer, 150.1),
            (Instrument::Calliper, 301.0),
        ] {
            let error = largest_error(instrument, Diameter::from_mm(size).unwrap()).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::OutOfRange);
        }
    }
}
