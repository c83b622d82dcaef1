//! Where a constant comes from and how far to trust it.

use std::borrow::Cow;
use std::fmt;

use crate::error::readable;

/// How far a constant can be trusted.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Standing {
    /// Read in the source named.
    Published,
    /// Remembered from the source named; its page was not opened.
    FromMemory,
    /// A rule of the trade without a source.
    CommonPractice,
    /// A guess, by analogy or judgement.
    Estimate,
    /// Measured in this shop.
    Measured,
    /// Given by the asker.
    Given,
}

impl Standing {
    /// The standing as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Published => "published",
            Self::FromMemory => "from_memory",
            Self::CommonPractice => "common_practice",
            Self::Estimate => "estimate",
            Self::Measured => "measured",
            Self::Given => "given",
        }
    }
}

impl fmt::Display for Standing {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.name())
    }
}

/// A value with its source and standing.
///
/// ```
/// use turnwright::{Sourced, Standing};
/// let ratio = Sourced::new(0.5, "common practice, no source", Standing::CommonPractice);
/// assert_eq!(ratio.value, 0.5);
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Sourced<T> {
    /// The constant.
    pub value: T,
    /// Where it comes from, in words.
    pub source: &'static str,
    /// How far to trust it.
    pub standing: Standing,
}

impl<T> Sourced<T> {
    /// A constant with its source.
    #[must_use]
    pub const fn new(value: T, source: &'static str, standing: Standing) -> Self {
        Self {
            value,
            source,
            standing,
        }
    }
}

/// A value that can be put on record: its text, and what tells it from others without writing them out.
///
/// ```
/// use turnwright::{provenance::Recorded, Diameter, Quantity};
/// let size: Diameter = "40 mm".parse()?;
/// assert_eq!(size.figure(), Some((Diameter::ROW.code(), 40.0)));
/// assert_eq!("1/3".figure(), None);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub trait Recorded: fmt::Display {
    /// The code of its quantity (0 for a plain number) and the number: where both are the same, so is the
    /// text. None of a value that only its text tells.
    fn figure(&self) -> Option<(i32, f64)> {
        None
    }
}

impl Recorded for f64 {
    fn figure(&self) -> Option<(i32, f64)> {
        Some((0, *self))
    }
}

impl Recorded for str {}

impl Recorded for String {}

impl<T: Recorded + ?Sized> Recorded for &T {
    fn figure(&self) -> Option<(i32, f64)> {
        (**self).figure()
    }
}

/// One line of an answer's provenance: which constant entered it, and whence.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Source {
    /// What the constant is.
    #[cfg_attr(feature = "serde", serde(serialize_with = "write_what"))]
    pub what: Cow<'static, str>,
    /// Its value, as text of nine digits at most.
    #[cfg_attr(feature = "serde", serde(serialize_with = "write_value"))]
    pub value: String,
    /// Where it comes from.
    pub source: Cow<'static, str>,
    /// How far to trust it.
    pub standing: Standing,
}

/// The name under which a recorded value is written as a newtype, so that a document can tell it in
/// another system of units ...
#[cfg(feature = "serde")]
pub(crate) const RECORDED: &str = "turnwright::Recorded";
/// ... and that of what it is.
#[cfg(feature = "serde")]
pub(crate) const RECORDED_AS: &str = "turnwright::RecordedAs";

#[cfg(feature = "serde")]
fn write_what<S: serde::Serializer>(what: &str, s: S) -> Result<S::Ok, S::Error> {
    s.serialize_newtype_struct(RECORDED_AS, what)
}

#[cfg(feature = "serde")]
fn write_value<S: serde::Serializer>(value: &str, s: S) -> Result<S::Ok, S::Error> {
    s.serialize_newtype_struct(RECORDED, value)
}

/// The constants that entered an answer, each once.
///
/// ```
/// use turnwright::{Provenance, Sourced, Standing};
/// let mut p = Provenance::default();
/// let third = Sourced::new("1/3", "judgement", Standing::Estimate);
/// assert_eq!(p.open("share of the zone", &third), "1/3");
/// p.open("share of the zone", &third);
/// assert_eq!(p.sources().len(), 1);
/// ```
#[derive(Debug, Clone, Default, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(transparent))]
pub struct Provenance {
    sources: Vec<Source>,
    /// The figure of each line: the code of its quantity and the bits of its number; none of a line that only
    /// its text tells.
    #[cfg_attr(feature = "serde", serde(skip))]
    figures: Vec<Option<Figure>>,
    /// For each hash of what a constant is the number of the last line that has it, from 1; 0 for none.
    #[cfg_attr(feature = "serde", serde(skip))]
    slots: Vec<usize>,
    /// For each line the number of the one before it with the same hash; 0 for none.
    #[cfg_attr(feature = "serde", serde(skip))]
    before: Vec<usize>,
    /// True of one that keeps nothing.
    #[cfg_attr(feature = "serde", serde(skip))]
    deaf: bool,
}

/// The code of a quantity and the bits of a number.
type Figure = (i32, u64);

const SLOTS: usize = 128;

/// Where a line of that name is noted.
fn slot_of(what: &str) -> usize {
    // Names differ in their length or where they end.
    let spread = |hash: usize, byte: &u8| hash.wrapping_mul(31) ^ usize::from(*byte);
    let end = what.as_bytes().iter().rev().take(6);
    end.fold(what.len(), spread) % SLOTS
}

impl Provenance {
    /// One that keeps nothing: for figures whose constants are on record already, or whose constants
    /// nobody asks for.
    pub(crate) fn deaf() -> Self {
        Self {
            deaf: true,
            ..Self::default()
        }
    }

    /// One with room for the lines of a long answer.
    pub(crate) fn roomy() -> Self {
        const LINES: usize = 64;
        Self {
            sources: Vec::with_capacity(LINES),
            figures: Vec::with_capacity(LINES),
            slots: vec![0; SLOTS],
            before: Vec::with_capacity(LINES),
            ..Self::default()
        }
    }

    /// Records that `constant` is used as `what`, and hands out its value.
    pub fn open<T: Copy + Recorded>(
        &mut self,
        what: impl Into<Cow<'static, str>>,
        constant: &Sourced<T>,
    ) -> T {
        self.record(what, &constant.value, constant.source, constant.standing);
        constant.value
    }

    /// Records a value whose source is known only in words.
    pub fn record(
        &mut self,
        what: impl Into<Cow<'static, str>>,
        value: &dyn Recorded,
        source: impl Into<Cow<'static, str>>,
        standing: Standing,
    ) {
        if !self.deaf {
            self.put(what.into(), value, source.into(), standing);
        }
    }

    fn put(
        &mut self,
        what: Cow<'static, str>,
        value: &dyn Recorded,
        source: Cow<'static, str>,
        standing: Standing,
    ) {
        // What is written out here holds no residue of a conversion.
        let what = match what {
            Cow::Owned(words) => Cow::Owned(readable(words)),
            fixed => fixed,
        };
        let stands =
            |line: &Source| line.standing == standing && line.what == what && line.source == source;
        // Most constants are opened again and again. A number that stands there already is told by its bits:
        // to write it out costs more than all the rest.
        let figure: Option<Figure> = value
            .figure()
            .map(|(code, number)| (code, number.to_bits()));
        let slot = slot_of(&what);
        self.slots.resize(SLOTS, 0);
        let last = self.slots[slot];
        let alike =
            || std::iter::successors(last.checked_sub(1), |at| self.before[*at].checked_sub(1));
        let same = |at: usize| self.figures[at] == figure && stands(&self.sources[at]);
        if figure.is_some() && alike().any(same) {
            return;
        }
        let value = readable(value.to_string());
        let same = |at: usize| self.sources[at].value == value && stands(&self.sources[at]);
        if alike().any(same) {
            return;
        }
        self.before.push(last);
        self.figures.push(figure);
        self.sources.push(Source {
            what,
            value,
            source,
            standing,
        });
        self.slots[slot] = self.sources.len();
    }

    /// The lines, in the order in which the constants were opened.
    #[must_use]
    pub fn sources(&self) -> &[Source] {
        &self.sources
    }

    /// True when nothing was recorded.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.sources.is_empty()
    }
}
