//! Fits: how much clearance or interference a hole and a shaft have.

use std::fmt;

use super::limits::Limits;
use crate::quantity::{Clearance, round_size};

/// What a pair of limits makes of its parts.
///
/// # Source
/// ISO 286-1:2010, terms, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
pub enum FitKind {
    /// Clearance in every case, the extreme one being none.
    Clearance,
    /// Clearance or interference, as the parts come out.
    Transition,
    /// Interference in every case, the extreme one being none.
    Interference,
}

impl fmt::Display for FitKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Clearance => "clearance fit",
            Self::Transition => "transition fit",
            Self::Interference => "interference fit",
        })
    }
}

/// A hole and a shaft, with the clearances that their limits allow.
///
/// # Source
/// ISO 286-1:2010: largest clearance ES - ei, least EI - es; from memory.
/// # Example
/// ```
/// use turnwright::standards::{fit::{Fit, FitKind}, tolerance_class::ToleranceClass};
/// let nominal = "30 mm".parse()?;
/// let limits = |name: &str| name.parse::<ToleranceClass>()?.limits(nominal).map(|found| found.value);
/// let sliding = Fit::of(limits("H7")?, limits("g6")?);
/// assert_eq!((sliding.least_clearance().mm(), sliding.largest_clearance().mm()), (0.007, 0.041));
/// assert_eq!(sliding.kind(), FitKind::Clearance);
/// assert_eq!(Fit::of(limits("H7")?, limits("p6")?).kind(), FitKind::Interference);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    least: Clearance,
    largest: Clearance,
}

impl Fit {
    /// The fit of a hole (first) and a shaft (second).
    #[must_use]
    pub fn of(hole: Limits, shaft: Limits) -> Self {
        let clearance = |hole: f64, shaft: f64| Clearance::computed_trade(round_size(hole - shaft));
        Self {
            least: clearance(hole.smallest().mm(), shaft.largest().mm()),
            largest: clearance(hole.largest().mm(), shaft.smallest().mm()),
        }
    }

    /// The least clearance; negative, the largest interference.
    #[must_use]
    pub fn least_clearance(&self) -> Clearance {
        self.least
    }

    /// The largest clearance; negative, the least interference.
    #[must_use]
    pub fn largest_clearance(&self) -> Clearance {
        self.largest
    }

    /// Clearance, transition or interference fit.
    #[must_use]
    pub fn kind(&self) -> FitKind {
        if self.least.mm() >= 0.0 {
            FitKind::Clearance
        } else if self.largest.mm() <= 0.0 {
            FitKind::Interference
        } else {
            FitKind::Transition
        }
    }
}
