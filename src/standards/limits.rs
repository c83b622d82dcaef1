//! Limits of size: the zone between the smallest and the largest size allowed.

use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, SizeUncertainty, Tolerance, WorkLength, round_size};

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
/// Sizes compare after rounding to 1e-9 mm.
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
    use crate::quantity::Quantity;
    use crate::quantity::fields::{Fields, Tree, list, quantity};
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
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if let Tree::Group(_) = tree {
                let f = Fields::of(tree, path, "limits")?;
                if f.has("class") {
                    return Err(Error::not_offered(
                        &f.path("class"),
                        "a tolerance class",
                        "give limits as two sizes: [\"29.967 mm\", \"30 mm\"]",
                    ));
                }
            }
            let (smallest, largest) = pair(tree, path)?;
            Self::new(smallest, largest).map_err(|error| error.at(path))
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
