//! Where a constant comes from and how far to trust it.

use std::fmt;

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

/// One line of an answer's provenance: which constant entered it, and whence.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Source {
    /// What the constant is.
    pub what: String,
    /// Its value, as text.
    pub value: String,
    /// Where it comes from.
    pub source: String,
    /// How far to trust it.
    pub standing: Standing,
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
    /// True of one that keeps nothing.
    #[cfg_attr(feature = "serde", serde(skip))]
    deaf: bool,
}

/// Compares what is written with a text, without writing it down.
struct Reads<'a> {
    left: &'a str,
}

impl Reads<'_> {
    fn the_same(value: &dyn fmt::Display, text: &str) -> bool {
        let mut reads = Reads { left: text };
        fmt::write(&mut reads, format_args!("{value}")).is_ok() && reads.left.is_empty()
    }
}

impl fmt::Write for Reads<'_> {
    fn write_str(&mut self, part: &str) -> fmt::Result {
        self.left = self.left.strip_prefix(part).ok_or(fmt::Error)?;
        Ok(())
    }
}

impl Provenance {
    /// One that keeps nothing: for figures whose constants are on record already, or whose constants
    /// nobody asks for.
    pub(crate) fn deaf() -> Self {
        Self {
            sources: Vec::new(),
            deaf: true,
        }
    }

    /// Records that `constant` is used as `what`, and hands out its value.
    pub fn open<T: Copy + fmt::Display>(&mut self, what: &str, constant: &Sourced<T>) -> T {
        self.record(what, &constant.value, constant.source, constant.standing);
        constant.value
    }

    /// Records a value whose source is known only in words.
    pub fn record(
        &mut self,
        what: &str,
        value: &dyn fmt::Display,
        source: &str,
        standing: Standing,
    ) {
        if self.deaf {
            return;
        }
        // Most constants are opened again and again: what stands there already is not written anew.
        let known = self.sources.iter().any(|line| {
            line.what == what
                && line.standing == standing
                && line.source == source
                && Reads::the_same(value, &line.value)
        });
        if !known {
            self.sources.push(Source {
                what: what.to_owned(),
                value: value.to_string(),
                source: source.to_owned(),
                standing,
            });
        }
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
