//! Limits of size: the zone between the smallest and the largest size allowed.

use std::str::FromStr;

use super::tolerance_class::ToleranceClass;
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

/// The deviations of both limits from a nominal size.
///
/// # Source
/// ISO 286-1, limit deviations (es, ei of a shaft, ES, EI of a hole), from memory.
/// # Example
/// ```
/// use turnwright::{standards::limits::LimitDeviations, Limits};
/// let drawn = LimitDeviations::new("0 mm".parse()?, "-0.016 mm".parse()?)?;
/// let limits = Limits::from_deviations("40 mm".parse()?, drawn)?;
/// assert_eq!(limits.smallest().mm(), 39.984);
/// assert!(LimitDeviations::new("-0.016 mm".parse()?, "0 mm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LimitDeviations {
    upper: UpperDeviation,
    lower: LowerDeviation,
}

impl LimitDeviations {
    /// An upper and a lower deviation.
    ///
    /// # Errors
    /// `upper_deviation`, when it does not lie above the lower one.
    pub fn new(upper: UpperDeviation, lower: LowerDeviation) -> Result<Self, Error> {
        if round_size(upper.mm() - lower.mm()) <= 0.0 {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "upper_deviation",
                format!("{upper} above a lower deviation of {lower}"),
                "an upper deviation larger than the lower one, signs included",
                "give the larger one as the upper: of -0.02 and -0.041 that is -0.02",
            ));
        }
        Ok(Self { upper, lower })
    }

    /// The upper deviation (ISO 286: es, ES).
    #[must_use]
    pub fn upper(&self) -> UpperDeviation {
        self.upper
    }

    /// The lower deviation (ISO 286: ei, EI).
    #[must_use]
    pub fn lower(&self) -> LowerDeviation {
        self.lower
    }
}

impl Limits {
    /// The limits that deviations leave of a nominal size.
    ///
    /// # Errors
    /// `limits`, when a limit would be no diameter.
    pub fn from_deviations(nominal: Diameter, deviations: LimitDeviations) -> Result<Self, Error> {
        let limit = |deviation: f64| {
            Diameter::from_trade(round_size(nominal.mm() + deviation))
                .map_err(|error| error.at("limits"))
        };
        Self::new(limit(deviations.lower.mm())?, limit(deviations.upper.mm())?)
    }

    /// The limits that a tolerance to both sides leaves of a nominal size.
    ///
    /// # Errors
    /// `limits`, when a limit would be no diameter.
    ///
    /// ```
    /// use turnwright::Limits;
    /// let limits = Limits::symmetric("40 mm".parse()?, "0.02 mm".parse()?)?;
    /// assert_eq!((limits.smallest().mm(), limits.largest().mm()), (39.98, 40.02));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn symmetric(nominal: Diameter, plus_minus: HalfWidth) -> Result<Self, Error> {
        let (upper, lower) = (plus_minus.mm(), -plus_minus.mm());
        Self::from_deviations(
            nominal,
            LimitDeviations::new(
                UpperDeviation::computed_trade(upper),
                LowerDeviation::computed_trade(lower),
            )?,
        )
    }

    /// How far the limits lie from a nominal size.
    ///
    /// # Errors
    /// `nominal`, farther from the limits than any deviation is.
    pub fn deviations_from(&self, nominal: Diameter) -> Result<LimitDeviations, Error> {
        let away = |limit: Diameter| round_size(limit.mm() - nominal.mm());
        let far = |error: Error| error.at("nominal");
        LimitDeviations::new(
            UpperDeviation::from_trade(away(self.largest)).map_err(far)?,
            LowerDeviation::from_trade(away(self.smallest)).map_err(far)?,
        )
    }

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

/// Limits as a drawing writes them: `40 +0.000 -0.016 mm`, `1.25 +0.0005 -0.001 in`, `40 +/-0.02 mm`,
/// `30 h7 mm`.
///
/// # Errors
/// `limits`: no unit, no nominal size, deviations upside down, an unknown class.
///
/// ```
/// use turnwright::Limits;
/// let limits: Limits = "40 +0.000 -0.016 mm".parse()?;
/// assert_eq!((limits.smallest().mm(), limits.largest().mm()), (39.984, 40.0));
/// let limits: Limits = "1.25 +/-0.001 in".parse()?;
/// assert_eq!(limits.largest().inch(), 1.251);
/// assert_eq!("1 3/8 +0 -0.001 in".parse::<Limits>()?.smallest().inch(), 1.374);
/// assert_eq!("30 h7 mm".parse::<Limits>()?.smallest().mm(), 29.979);
/// assert!("40 -0.016 +0.000 mm".parse::<Limits>().is_ok());
/// assert!("40 +0.000 -0.016".parse::<Limits>().is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
impl FromStr for Limits {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        let wrong = |given: String, remedy: &str| {
            Error::new(
                ErrorKind::Unreadable,
                "limits",
                given,
                "limits as a drawing writes them: \"40 +0.000 -0.016 mm\", \"40 +/-0.02 mm\" or \"30 h7 mm\"",
                remedy,
            )
        };
        let shown: String = text.chars().take(60).collect();
        let plain = text.replace('\u{b1}', "+/-").replace('\u{2212}', "-");
        let end = plain.trim_end();
        let number_end = end
            .trim_end_matches(|c: char| c.is_ascii_alphabetic() || c == '"')
            .len();
        let (body, unit) = (end[..number_end].trim(), &end[number_end..]);
        if unit.is_empty() || body.ends_with(|c: char| c.is_ascii_alphabetic()) {
            return Err(wrong(
                format!("{shown:?}"),
                "add the unit once, at the end: mm or in",
            ));
        }
        let quantity = |number: &str| format!("{number} {unit}");
        // The nominal size may hold a fraction (1 3/8): what follows it has a sign, is a class, or is 0.
        let words: Vec<(usize, &str)> = body
            .split_whitespace()
            .map(|word| (word.as_ptr() as usize - body.as_ptr() as usize, word))
            .collect();
        let starts = |word: &str| {
            word.starts_with(['+', '-'])
                || word.starts_with(|c: char| c.is_ascii_alphabetic())
                || word.trim_matches(['0', '.']).is_empty()
        };
        let Some((at, _)) = words.iter().skip(1).find(|(_, word)| starts(word)) else {
            return Err(wrong(
                format!("{shown:?}"),
                "add what may be off: two deviations, a tolerance to both sides, or a class",
            ));
        };
        let (nominal, rest) = body.split_at(*at);
        let nominal = nominal.trim();
        let at_limits = |error: Error| error.at("limits");
        let nominal: Diameter = quantity(nominal).parse().map_err(at_limits)?;
        let rest = rest.trim();
        if let Some(half) = rest.strip_prefix("+/-") {
            let half: HalfWidth = quantity(half.trim()).parse().map_err(at_limits)?;
            return Self::symmetric(nominal, half);
        }
        if rest.starts_with(|c: char| c.is_ascii_alphabetic()) {
            let class: ToleranceClass = rest.parse().map_err(at_limits)?;
            return class
                .limits(nominal)
                .map(|found| found.value)
                .map_err(at_limits);
        }
        let parts: Vec<&str> = rest.split_whitespace().collect();
        let [first, second] = parts.as_slice() else {
            return Err(wrong(
                format!("{shown:?}"),
                "write both deviations, each with its sign; 0 needs none",
            ));
        };
        let read = |part: &str| quantity(part).parse::<UpperDeviation>().map_err(at_limits);
        // A drawing writes the upper deviation first; the larger one is the upper, whichever comes first.
        let (first, second) = (read(first)?.mm(), read(second)?.mm());
        let deviations = LimitDeviations::new(
            UpperDeviation::computed_trade(first.max(second)),
            LowerDeviation::computed_trade(first.min(second)),
        )
        .map_err(at_limits)?;
        Self::from_deviations(nominal, deviations)
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
    use crate::provenance::Sourced;
    use crate::quantity::fields::{Fields, Tree, list, quantity};
    use crate::standards::general_tolerance::{self, GeneralClass};
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

    /// The class that limits follow from, and whence it has them.
    type FromClass = (ToleranceClass, Sourced<Limits>);

    impl Limits {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            match tree {
                Tree::Text(text) => text.parse::<Self>().map_err(|error| error.at(path)),
                Tree::Group(_) => {
                    let f = Fields::of(tree, path, "limits")?;
                    let (limits, _) = Self::read_named(&f, f.need_quantity("nominal")?)?;
                    f.finish()?;
                    Ok(limits)
                }
                _ => {
                    let (smallest, largest) = pair(tree, path)?;
                    Self::new(smallest, largest).map_err(|error| error.at(path))
                }
            }
        }

        /// Limits from a nominal size and what stands beside it.
        pub(crate) fn read_named(
            f: &Fields<'_>,
            nominal: Diameter,
        ) -> Result<(Self, Option<FromClass>), Error> {
            const WAYS: [&str; 4] = ["class", "upper_deviation", "plus_minus", "general"];
            let given: Vec<&str> = WAYS.into_iter().filter(|way| f.has(way)).collect();
            if let [first, second, ..] = given.as_slice() {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path(second),
                    format!("both {first} and {second}"),
                    "one way to give the limits",
                    "keep what stands on the drawing",
                ));
            }
            let class = f.text("class")?;
            let deviations = (
                f.quantity("upper_deviation")?,
                f.quantity("lower_deviation")?,
            );
            let plus_minus = f.quantity("plus_minus")?;
            let general = f.choice(
                "general",
                &GeneralClass::ALL.map(|class| (class.name(), class)),
            )?;
            if let Some(text) = class {
                let class: ToleranceClass = text
                    .parse()
                    .map_err(|error: Error| error.at(&f.path("class")))?;
                let found = class
                    .limits(nominal)
                    .map_err(|error| error.at(&f.path("nominal")))?;
                return Ok((found.value, Some((class, found))));
            }
            let limits = match (deviations, plus_minus, general) {
                ((Some(upper), Some(lower)), ..) => LimitDeviations::new(upper, lower)
                    .map_err(|error| error.at(&f.path("upper_deviation")))
                    .and_then(|deviations| Self::from_deviations(nominal, deviations))?,
                ((Some(_), None), ..) => {
                    return Err(
                        f.missing("lower_deviation", "the lower deviation beside the upper")
                    );
                }
                ((None, Some(_)), ..) => {
                    return Err(
                        f.missing("upper_deviation", "the upper deviation beside the lower")
                    );
                }
                (_, Some(plus_minus), _) => Self::symmetric(nominal, plus_minus)?,
                (.., Some(class)) => {
                    let length = WorkLength::from_trade(nominal.mm())?;
                    let half = general_tolerance::linear(length, class)
                        .map_err(|error| error.at(&f.path("nominal")))?;
                    Self::symmetric(nominal, HalfWidth::from_trade(half.value.mm())?)?
                }
                _ => {
                    return Err(f.missing(
                        "class",
                        "a class such as \"h7\", upper_deviation and lower_deviation, plus_minus, or general",
                    ));
                }
            };
            Ok((limits, None))
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
