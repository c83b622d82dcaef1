//! Fits: what a hole and a shaft leave between them.

use std::fmt;

use super::limits::{Feature, Limits};
use super::tolerance_class::ToleranceClass;
use crate::error::{Error, ErrorKind};
use crate::provenance::Sourced;
use crate::quantity::{Clearance, Diameter, Quantity, round_size};

/// Limits of a hole, so that they cannot pass for those of its shaft.
///
/// See [`Fit`] for an example.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct HoleLimits(Limits);

/// Limits of a shaft, so that they cannot pass for those of its hole.
///
/// See [`Fit`] for an example.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ShaftLimits(Limits);

impl HoleLimits {
    /// Of these limits.
    #[must_use]
    pub fn new(limits: Limits) -> Self {
        Self(limits)
    }

    /// Of a class at a nominal size.
    ///
    /// # Errors
    /// `class`, when it is a shaft's; `nominal`, as [`ToleranceClass::limits`].
    pub fn of_class(nominal: Diameter, class: ToleranceClass) -> Result<Sourced<Self>, Error> {
        let found = class.of_feature(Feature::Hole)?.limits(nominal)?;
        Ok(Sourced::new(
            Self(found.value),
            found.source,
            found.standing,
        ))
    }

    /// The limits.
    #[must_use]
    pub fn limits(self) -> Limits {
        self.0
    }
}

impl ShaftLimits {
    /// Of these limits.
    #[must_use]
    pub fn new(limits: Limits) -> Self {
        Self(limits)
    }

    /// Of a class at a nominal size.
    ///
    /// # Errors
    /// `class`, when it is a hole's; `nominal`, as [`ToleranceClass::limits`].
    pub fn of_class(nominal: Diameter, class: ToleranceClass) -> Result<Sourced<Self>, Error> {
        let found = class.of_feature(Feature::Shaft)?.limits(nominal)?;
        Ok(Sourced::new(
            Self(found.value),
            found.source,
            found.standing,
        ))
    }

    /// The limits.
    #[must_use]
    pub fn limits(self) -> Limits {
        self.0
    }
}

/// Which kind a fit is.
///
/// # Source
/// ISO 286-1:2010, clearance fit, interference fit, transition fit, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum FitKind {
    /// The hole is never smaller than the shaft.
    Clearance,
    /// Either may come out.
    Transition,
    /// The hole is never larger than the shaft.
    Interference,
}

impl FitKind {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Clearance => "clearance",
            Self::Transition => "transition",
            Self::Interference => "interference",
        }
    }
}

impl fmt::Display for FitKind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// A hole and a shaft that belong together.
///
/// # Example
/// ```
/// use turnwright::standards::fit::{Fit, FitKind, HoleLimits, ShaftLimits};
/// let nominal = "30 mm".parse()?;
/// let hole = HoleLimits::of_class(nominal, "H7".parse()?)?.value;
/// let shaft = ShaftLimits::of_class(nominal, "g6".parse()?)?.value;
/// let fit = Fit::of(hole, shaft)?;
/// assert_eq!(fit.kind(), FitKind::Clearance);
/// assert_eq!(fit.to_string(), "a clearance fit: 0.007 mm to 0.041 mm of clearance");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fit {
    least: Clearance,
    largest: Clearance,
}

impl Fit {
    /// What the limits leave: hole less shaft, negative where the shaft is the larger one.
    ///
    /// least = smallest hole - largest shaft (EI - es); largest = largest hole - smallest shaft
    /// (ES - ei).
    ///
    /// # Units
    /// Any; sizes are given to 1e-9 mm.
    /// # Range
    /// Clearance and interference up to 20 mm.
    /// # Errors
    /// `clearance`, when hole and shaft are farther apart than those of any fit: one is a slip.
    /// # Source
    /// ISO 286-1:2010, clearance and interference, from memory.
    pub fn of(hole: HoleLimits, shaft: ShaftLimits) -> Result<Self, Error> {
        let (hole, shaft) = (hole.0, shaft.0);
        let between = |hole: Diameter, shaft: Diameter| {
            Clearance::from_trade(round_size(hole.mm() - shaft.mm())).map_err(|error| {
                Error::new(
                    ErrorKind::Contradiction,
                    "clearance",
                    format!("a hole of {hole} with a shaft of {shaft}"),
                    error.expected().to_owned(),
                    "give hole and shaft of one nominal size, and check their units",
                )
            })
        };
        Ok(Self {
            least: between(hole.smallest(), shaft.largest())?,
            largest: between(hole.largest(), shaft.smallest())?,
        })
    }

    /// Between the smallest hole and the largest shaft; negative is interference.
    #[must_use]
    pub fn least_clearance(self) -> Clearance {
        self.least
    }

    /// Between the largest hole and the smallest shaft; negative is interference.
    #[must_use]
    pub fn largest_clearance(self) -> Clearance {
        self.largest
    }

    /// Its kind; limits that meet belong to the clearance or the interference fit.
    #[must_use]
    pub fn kind(self) -> FitKind {
        if self.least.mm() >= 0.0 {
            FitKind::Clearance
        } else if self.largest.mm() <= 0.0 {
            FitKind::Interference
        } else {
            FitKind::Transition
        }
    }
}

impl fmt::Display for Fit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let turned = |clearance: Clearance| Clearance::computed_trade(-clearance.mm());
        match self.kind() {
            FitKind::Clearance => write!(
                f,
                "a clearance fit: {} to {} of clearance",
                self.least, self.largest
            ),
            FitKind::Interference => write!(
                f,
                "an interference fit: {} to {} of interference",
                turned(self.largest),
                turned(self.least)
            ),
            FitKind::Transition => write!(
                f,
                "a transition fit: up to {} of interference, up to {} of clearance",
                turned(self.least),
                self.largest
            ),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn fit(nominal: &str, hole: &str, shaft: &str) -> Fit {
        let nominal = nominal.parse().unwrap();
        let hole = HoleLimits::of_class(nominal, hole.parse().unwrap()).unwrap();
        let shaft = ShaftLimits::of_class(nominal, shaft.parse().unwrap()).unwrap();
        Fit::of(hole.value, shaft.value).unwrap()
    }

    #[test]
    fn fits_are_of_the_kind_that_their_clearances_say() {
        // ISO 286 deviations, from memory: um least and largest clearance.
        for (nominal, hole, shaft, least, largest, kind) in [
            ("30 mm", "H7", "g6", 7.0, 41.0, FitKind::Clearance),
            ("30 mm", "H7", "h6", 0.0, 34.0, FitKind::Clearance),
            ("50 mm", "H7", "k6", -18.0, 23.0, FitKind::Transition),
            ("30 mm", "H7", "p6", -35.0, -1.0, FitKind::Interference),
            ("1 in", "H7", "h6", 0.0, 34.0, FitKind::Clearance),
        ] {
            let found = fit(nominal, hole, shaft);
            assert_eq!(
                (
                    found.least_clearance().mm(),
                    found.largest_clearance().mm(),
                    found.kind()
                ),
                (least / 1000.0, largest / 1000.0, kind),
                "{nominal} {hole}/{shaft}"
            );
        }
    }

    #[test]
    fn limits_that_meet_from_the_other_side_are_an_interference_fit() {
        let zone = |a: &str, b: &str| Limits::new(a.parse().unwrap(), b.parse().unwrap()).unwrap();
        let found = Fit::of(
            HoleLimits::new(zone("29.98 mm", "30 mm")),
            ShaftLimits::new(zone("30 mm", "30.02 mm")),
        )
        .unwrap();
        assert_eq!(found.kind(), FitKind::Interference);
        assert_eq!(
            found.to_string(),
            "an interference fit: 0 mm to 0.04 mm of interference"
        );
    }

    #[test]
    fn hole_and_shaft_of_different_sizes_are_no_fit() {
        let zone = |a: &str, b: &str| Limits::new(a.parse().unwrap(), b.parse().unwrap()).unwrap();
        let hole = HoleLimits::new(zone("1 in", "1.001 in"));
        let error = Fit::of(hole, ShaftLimits::new(zone("60 mm", "60.02 mm"))).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::Contradiction);
    }
}
