//! The decision at the bench: is a measured part good, to be cut again, lost, or not to be told?

use std::fmt;

use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, SizeUncertainty, StandardUncertainty, round_size};

use super::limits::{Feature, Limits};

/// Guard band over the expanded uncertainty's standard uncertainty: k = 2.
pub const GUARD_BY_EXPANDED: Sourced<f64> = Sourced::new(
    2.0,
    "ISO 14253-1:1998 and 2013, from memory: the guard band is U with k = 2",
    Standing::FromMemory,
);

/// Guard band over the standard uncertainty for 95 % conformance probability, one-sided.
pub const GUARD_BY_CONFORMANCE: Sourced<f64> = Sourced::new(
    1.645,
    "ISO 14253-1:2017, from memory: 95 % conformance probability",
    Standing::FromMemory,
);

/// How wide a guard band is kept from each limit.
///
/// ```
/// use turnwright::standards::decision::DecisionRule;
/// assert_eq!(DecisionRule::default().name(), "conformance_95");
/// ```
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum DecisionRule {
    /// The expanded uncertainty with k = 2 (ISO 14253-1:1998 and 2013).
    ExpandedUncertainty,
    /// 1.645 standard uncertainties: a conformance probability of 95 % (ISO 14253-1:2017, its default).
    #[default]
    #[cfg_attr(feature = "serde", serde(rename = "conformance_95"))]
    Conformance95,
}

impl DecisionRule {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ExpandedUncertainty => "expanded_uncertainty",
            Self::Conformance95 => "conformance_95",
        }
    }

    /// The factor by which it multiplies the standard uncertainty, with its source.
    #[must_use]
    pub const fn factor(self) -> Sourced<f64> {
        match self {
            Self::ExpandedUncertainty => GUARD_BY_EXPANDED,
            Self::Conformance95 => GUARD_BY_CONFORMANCE,
        }
    }
}

/// The guard band of a rule for a standard uncertainty of measuring.
///
/// g = 2 u, or g = 1.645 u
///
/// # Source
/// ISO 14253-1, from memory.
/// # Example
/// ```
/// use turnwright::standards::decision::{guard_band, DecisionRule};
/// let g = guard_band(DecisionRule::ExpandedUncertainty, "0.003 mm".parse()?);
/// assert_eq!(g.to_string(), "0.006 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn guard_band(rule: DecisionRule, u: StandardUncertainty) -> SizeUncertainty {
    SizeUncertainty::computed_trade(rule.factor().value * u.mm())
}

/// What a measured size tells.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Verdict {
    /// Proved to conform.
    Good,
    /// Proved not to conform, with metal left to cut.
    Rework,
    /// Proved not to conform, with metal gone.
    Scrap,
    /// Neither is proved.
    CannotTell,
}

impl Verdict {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Good => "good",
            Self::Rework => "rework",
            Self::Scrap => "scrap",
            Self::CannotTell => "cannot_tell",
        }
    }
}

impl fmt::Display for Verdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Good => "good",
            Self::Rework => "another cut",
            Self::Scrap => "lost",
            Self::CannotTell => "cannot be told",
        })
    }
}

/// The decision about a measured size.
///
/// Conforming is proved from L + g to U - g, not conforming beyond a limit by more than g; between
/// the two nothing is proved.
///
/// # Source
/// ISO 14253-1, from memory.
/// # Example
/// ```
/// use turnwright::{standards::decision::{verdict, Verdict}, Diameter, Feature, Limits};
/// let zone = Limits::new(Diameter::from_mm(27.967)?, Diameter::from_mm(28.0)?)?;
/// let guard = "0.004 mm".parse()?;
/// assert_eq!(verdict(Diameter::from_mm(27.951)?, zone, guard, Feature::Shaft), Verdict::Scrap);
/// assert_eq!(verdict(Diameter::from_mm(27.969)?, zone, guard, Feature::Shaft), Verdict::CannotTell);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn verdict(
    measured: Diameter,
    limits: Limits,
    guard: SizeUncertainty,
    feature: Feature,
) -> Verdict {
    let (size, g) = (measured.mm(), guard.mm());
    let (low, high) = (limits.smallest().mm(), limits.largest().mm());
    if round_size(size - (high + g)) > 0.0 {
        return match feature {
            Feature::Shaft => Verdict::Rework,
            Feature::Hole => Verdict::Scrap,
        };
    }
    if round_size((low - g) - size) > 0.0 {
        return match feature {
            Feature::Shaft => Verdict::Scrap,
            Feature::Hole => Verdict::Rework,
        };
    }
    match limits.inside(guard) {
        Some(proved) if proved.contains(measured) => Verdict::Good,
        // A zone with exactly one size between its guards.
        None if round_size(size - (low + g)) == 0.0 && round_size(high - g - size) == 0.0 => {
            Verdict::Good
        }
        _ => Verdict::CannotTell,
    }
}
