//! Limits of size: the zone between the smallest and the largest size allowed.

use super::limit_deviations::LimitDeviations;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Diameter, HalfWidth, LowerDeviation, Quantity, SizeUncertainty, Tolerance, UpperDeviation,
    WorkLength, round_size,
};

/// Which side of a size has the metal: it decides which limit a further cut can still reach.
///
/// Of a shaft what is too large can be cut again, what is too small is lost; of a hole it is the
/// other way round.
///
/// # Source
/// ISO 286-1, feature of size: shaft (external) and hole (internal), from memory.
///
/// # Example
/// ```
/// use turnwright::Feature;
/// assert_eq!(Feature::default(), Feature::Shaft);
/// assert_eq!(Feature::Hole.name(), "hole");
/// ```
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
pub enum Feature {
    /// An outside diameter.
    #[default]
    Shaft,
    /// An inside diameter.
    Hole,
}

impl Feature {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Shaft => "shaft",
            Self::Hole => "hole",
        }
    }
}

impl std::fmt::Display for Feature {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.pad(self.name())
    }
}

/// The smallest and the largest diameter allowed; both belong to the zone.
///
/// Sizes compare after rounding to 1e-9 mm. As text, limits are read as a drawing writes them:
/// `40 +0.000 -0.016 mm`, `40 +/-0.02 mm`, `30 h7 mm`.
///
/// # Source
/// ISO 286-1, limits of size (from memory).
///
/// # Example
/// ```
/// use turnwright::{Diameter, Limits};
/// let zone = Limits::new(Diameter::from_inch(1.187)?, Diameter::from_inch(1.188)?)?;
/// assert!(zone.contains(Diameter::from_inch(1.187)?));
/// assert!(Limits::new(Diameter::from_mm(30.0)?, Diameter::from_mm(29.0)?).is_err());
/// assert_eq!("30 +0 -0.021 mm".parse::<Limits>()?, "30 h7 mm".parse()?);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Limits {
    smallest: Diameter,
    largest: Diameter,
}

impl Limits {
    /// A zone from the smallest to the largest size.
    ///
    /// # Errors
    /// `limits`, when they are equal or upside down.
    pub fn new(smallest: Diameter, largest: Diameter) -> Result<Self, Error> {
        if round_size(largest.mm() - smallest.mm()) <= 0.0 {
            return Err(upside_down(&smallest, &largest));
        }
        Ok(Self { smallest, largest })
    }

    /// A zone by its deviations from a nominal size.
    ///
    /// # Errors
    /// `nominal`, when a limit would be no size: a deviation is larger than the size itself.
    ///
    /// ```
    /// use turnwright::{LimitDeviations, Limits};
    /// let off = LimitDeviations::new("0 mm".parse()?, "-0.016 mm".parse()?)?;
    /// let zone = Limits::from_deviations("40 mm".parse()?, off)?;
    /// assert_eq!(zone.smallest(), "39.984 mm".parse()?);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn from_deviations(nominal: Diameter, deviations: LimitDeviations) -> Result<Self, Error> {
        let size = |off: f64| {
            Diameter::from_trade(round_size(nominal.mm() + off)).map_err(|error| {
                Error::new(
                    ErrorKind::Contradiction,
                    "nominal",
                    format!("{nominal} with the deviations {deviations}"),
                    format!("limits that are sizes, each {}", error.expected()),
                    "check the unit of the deviations; so small a size has no room for them",
                )
            })
        };
        Self::new(
            size(deviations.lower().mm())?,
            size(deviations.upper().mm())?,
        )
    }

    /// A zone as far above a nominal size as below it.
    ///
    /// # Errors
    /// As [`Self::from_deviations`].
    ///
    /// ```
    /// use turnwright::Limits;
    /// let zone = Limits::symmetric("40 mm".parse()?, "0.02 mm".parse()?)?;
    /// assert_eq!(zone.tolerance(), "0.04 mm".parse()?);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn symmetric(nominal: Diameter, half_width: HalfWidth) -> Result<Self, Error> {
        let deviations = LimitDeviations::new(
            UpperDeviation::from_trade(half_width.mm())?,
            LowerDeviation::from_trade(-half_width.mm())?,
        )?;
        Self::from_deviations(nominal, deviations)
    }

    /// How far these limits lie from a nominal size.
    ///
    /// # Errors
    /// `nominal`, when it is so far off that one of the two is a slip.
    ///
    /// ```
    /// use turnwright::Limits;
    /// let zone: Limits = "40 h7 mm".parse()?;
    /// assert_eq!(zone.deviations("40 mm".parse()?)?.to_string(), "0 -0.025 mm");
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn deviations(&self, nominal: Diameter) -> Result<LimitDeviations, Error> {
        let slip = |error: Error| {
            Error::new(
                ErrorKind::Contradiction,
                "nominal",
                format!(
                    "{nominal} for limits of {} to {}",
                    self.smallest, self.largest
                ),
                format!("a nominal size near the limits: {}", error.expected()),
                "limits are sizes, not deviations; check the nominal size and its unit",
            )
        };
        LimitDeviations::new(
            UpperDeviation::from_trade(round_size(self.largest.mm() - nominal.mm()))
                .map_err(slip)?,
            LowerDeviation::from_trade(round_size(self.smallest.mm() - nominal.mm()))
                .map_err(slip)?,
        )
    }

    /// The smallest size allowed.
    #[must_use]
    pub fn smallest(&self) -> Diameter {
        self.smallest
    }

    /// The largest size allowed.
    #[must_use]
    pub fn largest(&self) -> Diameter {
        self.largest
    }

    /// The width of the zone.
    #[must_use]
    pub fn tolerance(&self) -> Tolerance {
        Tolerance::computed_trade(round_size(self.largest.mm() - self.smallest.mm()))
    }

    /// The middle of the zone.
    #[must_use]
    pub fn middle(&self) -> Diameter {
        Diameter::computed_trade(round_size(0.5 * (self.smallest.mm() + self.largest.mm())))
    }

    /// True for a size in the zone, the limits included.
    #[must_use]
    pub fn contains(&self, size: Diameter) -> bool {
        let size = round_size(size.mm());
        round_size(self.smallest.mm()) <= size && size <= round_size(self.largest.mm())
    }

    /// The zone less a guard at both ends, if anything is left of it.
    #[must_use]
    pub fn inside(&self, guard: SizeUncertainty) -> Option<Self> {
        let smallest = round_size(self.smallest.mm() + guard.mm());
        let largest = round_size(self.largest.mm() - guard.mm());
        (smallest < largest).then(|| Self {
            smallest: Diameter::computed_trade(smallest),
            largest: Diameter::computed_trade(largest),
        })
    }
}

/// The shortest and the longest length allowed; both belong to the zone.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LengthLimits {
    shortest: WorkLength,
    longest: WorkLength,
}

impl LengthLimits {
    /// A zone of length.
    ///
    /// # Errors
    /// `length_limits`, when they are equal or upside down.
    ///
    /// ```
    /// use turnwright::{LengthLimits, WorkLength};
    /// let zone = LengthLimits::new(WorkLength::from_mm(69.7)?, WorkLength::from_mm(70.3)?)?;
    /// assert!(zone.contains(WorkLength::from_mm(70.0)?));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn new(shortest: WorkLength, longest: WorkLength) -> Result<Self, Error> {
        if round_size(longest.mm() - shortest.mm()) <= 0.0 {
            return Err(upside_down(&shortest, &longest).at("length_limits"));
        }
        Ok(Self { shortest, longest })
    }

    /// The shortest length allowed.
    #[must_use]
    pub fn shortest(&self) -> WorkLength {
        self.shortest
    }

    /// The longest length allowed.
    #[must_use]
    pub fn longest(&self) -> WorkLength {
        self.longest
    }

    /// True for a length in the zone, the limits included.
    #[must_use]
    pub fn contains(&self, length: WorkLength) -> bool {
        let length = round_size(length.mm());
        round_size(self.shortest.mm()) <= length && length <= round_size(self.longest.mm())
    }
}

fn upside_down(least: &dyn std::fmt::Display, most: &dyn std::fmt::Display) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "limits",
        format!("{least} to {most}"),
        "two sizes, the smaller first, with room between them",
        "give the smallest size first, then the largest",
    )
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Tree, list, quantity};
    use crate::standards::stated_limits::Stated;
    use serde::ser::{Serialize, Serializer};

    fn pair<Q: Quantity>(tree: &Tree, path: &str) -> Result<(Q, Q), Error> {
        match list(tree, path, quantity::<Q>)?.as_slice() {
            [least, most] => Ok((*least, *most)),
            other => Err(Error::new(
                ErrorKind::Unreadable,
                path,
                format!("{} sizes", other.len()),
                "two sizes, the smallest and the largest",
                format!("write [\"{}\", \"..\"]", Q::ROW.example()),
            )),
        }
    }

    impl Limits {
        /// Limits in any writing: `[smallest, largest]`, text, a class or deviations of a nominal size.
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            Ok(Self::read_sourced(tree, path)?.limits)
        }

        /// The same, with the table they come from, if any.
        pub(crate) fn read_sourced(tree: &Tree, path: &str) -> Result<Stated, Error> {
            Stated::read(tree, path)
        }
    }

    impl LengthLimits {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let (shortest, longest) = pair(tree, path)?;
            Self::new(shortest, longest).map_err(|error| error.at(path))
        }
    }

    impl Serialize for Limits {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            [self.smallest, self.largest].serialize(s)
        }
    }

    impl Serialize for LengthLimits {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            [self.shortest, self.longest].serialize(s)
        }
    }
}
