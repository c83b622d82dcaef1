//! Limit deviations: how far the limits of a size lie from its nominal size.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::Recorded;
use crate::quantity::{LowerDeviation, Tolerance, UpperDeviation, round_size};

/// Upper and lower limit deviation of a size; both may lie on one side of the nominal size.
///
/// # Source
/// ISO 286-1: upper limit deviation (es, ES) and lower limit deviation (ei, EI), from memory.
///
/// # Example
/// ```
/// use turnwright::LimitDeviations;
/// let g6 = LimitDeviations::new("-0.007 mm".parse()?, "-0.020 mm".parse()?)?;
/// assert_eq!(g6.tolerance(), "0.013 mm".parse()?);
/// assert!(LimitDeviations::new("-0.020 mm".parse()?, "-0.007 mm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct LimitDeviations {
    #[cfg_attr(feature = "serde", serde(rename = "upper_deviation"))]
    upper: UpperDeviation,
    #[cfg_attr(feature = "serde", serde(rename = "lower_deviation"))]
    lower: LowerDeviation,
}

impl LimitDeviations {
    /// Two deviations, the upper one first.
    ///
    /// # Errors
    /// `upper_deviation`, when it is not above the lower one.
    pub fn new(upper: UpperDeviation, lower: LowerDeviation) -> Result<Self, Error> {
        if round_size(upper.mm() - lower.mm()) <= 0.0 {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "upper_deviation",
                format!("{upper} above {lower}"),
                "an upper deviation above the lower one",
                "give the upper deviation first, and mind the signs: +0 -0.016, or -0.007 -0.020",
            ));
        }
        Ok(Self { upper, lower })
    }

    /// Of a class, in micrometres: its upper one is above its lower one by the width of the zone.
    pub(super) fn of_micrometres(upper: f64, lower: f64) -> Self {
        Self {
            upper: UpperDeviation::computed_trade(round_size(upper / 1000.0)),
            lower: LowerDeviation::computed_trade(round_size(lower / 1000.0)),
        }
    }

    /// Largest size less nominal size.
    #[must_use]
    pub fn upper(self) -> UpperDeviation {
        self.upper
    }

    /// Smallest size less nominal size.
    #[must_use]
    pub fn lower(self) -> LowerDeviation {
        self.lower
    }

    /// The width of the zone.
    #[must_use]
    pub fn tolerance(self) -> Tolerance {
        Tolerance::computed_trade(round_size(self.upper.mm() - self.lower.mm()))
    }
}

impl Recorded for LimitDeviations {}

impl fmt::Display for LimitDeviations {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let signed = |mm: f64| {
            if mm > 0.0 {
                format!("+{mm}")
            } else {
                mm.to_string()
            }
        };
        let (upper, lower) = (signed(self.upper.mm()), signed(self.lower.mm()));
        f.pad(&format!("{upper} {lower} mm"))
    }
}
