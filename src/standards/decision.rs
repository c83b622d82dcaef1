//! What a measured size proves: decision rules with guard bands.
//!
//! Symbols: g guard band, u standard uncertainty of the measurement, U = k u its expanded
//! uncertainty.

use std::fmt;

use super::limits::{Feature, Limits};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{CoverageFactor, Diameter, SizeUncertainty, StandardUncertainty, round_size};

/// How wide the guard band is that an uncertain measurement keeps from a limit.
///
/// # Source
/// ISO 14253-1 (from memory): editions 1998 and 2013 g = U with k = 2; 2017 by default 95 %
/// probability of conformance, g = 1.645 u to one side.
/// # Example
/// ```
/// use turnwright::standards::decision::DecisionRule;
/// let u = "0.002 mm".parse()?;
/// assert_eq!(DecisionRule::ExpandedUncertainty.guard_band(u).mm(), 0.004);
/// assert_eq!(DecisionRule::Conformance95.guard_band(u).mm(), 0.00329);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum DecisionRule {
    /// The whole expanded uncertainty, k = 2.
    #[default]
    ExpandedUncertainty,
    /// What a part on the edge of acceptance needs to be good with a probability of 95 %.
    Conformance95,
}

/// The factor of the standard uncertainty of a rule.
const fn factor(k: f64, source: &'static str) -> Sourced<CoverageFactor> {
    Sourced::new(
        CoverageFactor::computed_trade(k),
        source,
        Standing::FromMemory,
    )
}

/// k of [`DecisionRule::ExpandedUncertainty`].
pub static EXPANDED_FACTOR: Sourced<CoverageFactor> =
    factor(2.0, "from memory of ISO 14253-1:1998 and 2013");

/// k of [`DecisionRule::Conformance95`]: the one-sided 95 % point of the normal law.
pub static CONFORMANCE_FACTOR: Sourced<CoverageFactor> =
    factor(1.645, "from memory of ISO 14253-1:2017");

impl DecisionRule {
    /// All of them.
    pub const ALL: [Self; 2] = [Self::ExpandedUncertainty, Self::Conformance95];

    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::ExpandedUncertainty => "expanded_uncertainty",
            Self::Conformance95 => "conformance95",
        }
    }

    /// The factor of the standard uncertainty, with its source.
    #[must_use]
    pub fn factor(self) -> &'static Sourced<CoverageFactor> {
        match self {
            Self::ExpandedUncertainty => &EXPANDED_FACTOR,
            Self::Conformance95 => &CONFORMANCE_FACTOR,
        }
    }

    /// The guard band of a measurement.
    #[must_use]
    pub fn guard_band(self, u: StandardUncertainty) -> SizeUncertainty {
        SizeUncertainty::computed_trade(self.factor().value.value() * u.mm())
    }
}

impl fmt::Display for DecisionRule {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// The sizes that prove a part good: the zone less the guard band at both ends; none where the
/// guard band takes the whole zone.
///
/// # Source
/// ISO 14253-1 (from memory).
/// # Example
/// ```
/// use turnwright::{standards::decision::acceptance, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let accept = acceptance(limits, "0.005 mm".parse()?);
/// assert_eq!(accept.map(|zone| zone.largest().mm()), Some(39.995));
/// assert_eq!(acceptance(limits, "0.008 mm".parse()?), None);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn acceptance(limits: Limits, guard: SizeUncertainty) -> Option<Limits> {
    limits.inside(guard)
}

/// What a measurement proves of a part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Verdict {
    /// Inside the limits by the guard band and more.
    Good,
    /// Metal left beyond a limit by more than the guard band: another cut can save it.
    Rework,
    /// Too much metal gone, by more than the guard band.
    Scrap,
    /// Nearer to a limit than the guard band: neither is proved.
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
        f.pad(self.name())
    }
}

/// What a measured size proves: good at L + g to U - g, not good beyond L - g or U + g, nothing
/// between.
///
/// Sizes compare after rounding to 1e-9 mm.
///
/// # Source
/// ISO 14253-1 (from memory).
/// # Example
/// ```
/// use turnwright::standards::decision::{verdict, Verdict};
/// use turnwright::{Feature, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let guard = "0.005 mm".parse()?;
/// let say = |size: &str| Ok::<_, turnwright::Error>(verdict(size.parse()?, limits, guard, Feature::Shaft));
/// assert_eq!(say("39.995 mm")?, Verdict::Good);
/// assert_eq!(say("39.998 mm")?, Verdict::CannotTell);
/// assert_eq!(say("40.006 mm")?, Verdict::Rework);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn verdict(
    measured: Diameter,
    limits: Limits,
    guard: SizeUncertainty,
    feature: Feature,
) -> Verdict {
    if acceptance(limits, guard).is_some_and(|zone| zone.contains(measured)) {
        return Verdict::Good;
    }
    let (size, guard) = (measured.mm(), guard.mm());
    let too_small = round_size(size - (limits.smallest().mm() - guard)) < 0.0;
    let too_large = round_size(size - (limits.largest().mm() + guard)) > 0.0;
    match (too_small, too_large, feature) {
        (true, _, Feature::Shaft) | (_, true, Feature::Hole) => Verdict::Scrap,
        (true, _, Feature::Hole) | (_, true, Feature::Shaft) => Verdict::Rework,
        (false, false, _) => Verdict::CannotTell,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn size(mm: f64) -> Diameter {
        Diameter::from_mm(mm).unwrap()
    }

    #[test]
    fn every_edge_of_the_guard_bands() {
        // By hand from the rule: the edges of good belong to it, those of not good do not.
        let limits = Limits::new(size(39.984), size(40.0)).unwrap();
        let guard = SizeUncertainty::from_mm(0.005).unwrap();
        for (mm, of_shaft, of_hole) in [
            (39.978, Verdict::Scrap, Verdict::Rework),
            (39.979, Verdict::CannotTell, Verdict::CannotTell),
            (39.988, Verdict::CannotTell, Verdict::CannotTell),
            (39.989, Verdict::Good, Verdict::Good),
            (39.995, Verdict::Good, Verdict::Good),
            (39.996, Verdict::CannotTell, Verdict::CannotTell),
            (40.005, Verdict::CannotTell, Verdict::CannotTell),
            (40.006, Verdict::Rework, Verdict::Scrap),
        ] {
            assert_eq!(
                verdict(size(mm), limits, guard, Feature::Shaft),
                of_shaft,
                "{mm}"
            );
            assert_eq!(
                verdict(size(mm), limits, guard, Feature::Hole),
                of_hole,
                "{mm}"
            );
        }
        let wide = SizeUncertainty::from_mm(0.008).unwrap();
        assert_eq!(acceptance(limits, wide), None);
        assert_eq!(
            verdict(size(39.992), limits, wide, Feature::Shaft),
            Verdict::CannotTell
        );
    }
}
