//! Positions of a dial: whole divisions, turns and mark. Never a floating-point number.

use std::fmt;
use std::ops::RangeInclusive;

use super::{Division, Engraved};
use crate::error::{Error, ErrorKind};

/// Most divisions that a position may lie from its zero; far beyond any slide, and small enough
/// that every product with a division is exact enough to round.
const MOST: i64 = 10_000_000;

/// A position or a distance in whole divisions of a dial; positive into the metal.
///
/// ```
/// use turnwright::Divisions;
/// let to_cut = Divisions::new(147)?;
/// assert_eq!(to_cut.count(), 147);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(transparent))]
pub struct Divisions(i64);

impl Divisions {
    /// Where the dial was zeroed.
    pub const ZERO: Self = Self(0);

    /// `count` whole divisions.
    ///
    /// # Errors
    /// `divisions` beyond ten millions either way.
    pub fn new(count: i64) -> Result<Self, Error> {
        if count.abs() <= MOST {
            Ok(Self(count))
        } else {
            Err(Error::new(
                ErrorKind::OutOfRange,
                "divisions",
                count.to_string(),
                format!("whole divisions from -{MOST} to {MOST}"),
                "check the division of the dial and the distance",
            ))
        }
    }

    /// From a kernel's count, which its inputs keep small.
    pub(crate) fn from_rounded(count: f64) -> Result<Self, Error> {
        if count.abs() <= MOST as f64 {
            Ok(Self(count as i64))
        } else {
            Self::new(i64::MAX)
        }
    }

    /// How many divisions.
    #[must_use]
    pub const fn count(self) -> i64 {
        self.0
    }

    /// This position and `more` divisions into the metal.
    ///
    /// # Errors
    /// As [`Divisions::new`].
    pub fn plus(self, more: Self) -> Result<Self, Error> {
        Self::new(self.0 + more.0)
    }
}

impl fmt::Display for Divisions {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

/// How many divisions a dial has in one turn of its handle.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(transparent))]
pub struct DivisionsPerTurn(u32);

impl DivisionsPerTurn {
    pub(crate) const RANGE: RangeInclusive<u32> = 2..=10_000;
    pub(crate) const REMEDY: &'static str = "count the marks once round the dial";

    /// `count` divisions a turn.
    ///
    /// # Errors
    /// `divisions_per_turn` outside 2 to 10000.
    ///
    /// ```
    /// use turnwright::DivisionsPerTurn;
    /// assert!(DivisionsPerTurn::new(100).is_ok());
    /// assert!(DivisionsPerTurn::new(0).is_err());
    /// ```
    pub fn new(count: u32) -> Result<Self, Error> {
        match Self::RANGE.contains(&count) {
            true => Ok(Self(count)),
            false => Err(Self::out_of_range(i64::from(count))),
        }
    }

    /// The same of a number that may be negative.
    #[cfg(feature = "capi")]
    pub(crate) fn of(count: i32) -> Result<Self, Error> {
        match u32::try_from(count) {
            Ok(count) => Self::new(count),
            Err(_) => Err(Self::out_of_range(i64::from(count))),
        }
    }

    fn out_of_range(count: i64) -> Error {
        let (least, largest) = (Self::RANGE.start(), Self::RANGE.end());
        Error::new(
            ErrorKind::OutOfRange,
            "divisions_per_turn",
            count.to_string(),
            format!("a whole number from {least} to {largest}"),
            Self::REMEDY,
        )
    }

    /// How many.
    #[must_use]
    pub const fn count(self) -> u32 {
        self.0
    }
}

/// Which slide a dial belongs to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Slide {
    /// Across the bed: sets the diameter.
    CrossSlide,
    /// Along the bed: sets the length.
    Carriage,
    /// The small upper slide.
    Compound,
}

/// What a dial reads at a position: whole turns of the handle, the mark, and what is engraved there.
///
/// ```
/// use turnwright::{Division, Divisions, DivisionsPerTurn, Reading, Slide};
/// let reading = Reading::at(
///     Slide::CrossSlide,
///     Divisions::new(147)?,
///     DivisionsPerTurn::new(100)?,
///     Division::from_mm(0.05)?,
/// );
/// assert_eq!((reading.turns(), reading.mark()), (1, 47));
/// assert_eq!(reading.shows().to_string(), "2.35 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Reading {
    slide: Slide,
    divisions: Divisions,
    turns: i64,
    mark: u32,
    shows: Engraved,
}

impl Reading {
    /// The reading at `divisions` from zero: turns is the floor, the mark 0 to N - 1.
    #[must_use]
    pub fn at(
        slide: Slide,
        divisions: Divisions,
        per_turn: DivisionsPerTurn,
        division: Division,
    ) -> Self {
        let n = i64::from(per_turn.0);
        let mark = divisions.0.rem_euclid(n);
        Self {
            slide,
            divisions,
            turns: divisions.0.div_euclid(n),
            mark: mark as u32,
            // Rounded like every size, so that 47 marks of 0.05 show 2.35 and not its neighbour.
            shows: Engraved::computed_trade(super::round_size(mark as f64 * division.mm())),
        }
    }

    /// The same on a readout, which shows all of the travel.
    pub(crate) fn shown_in_full(mut self, division: Division) -> Self {
        let all = super::round_size(self.divisions.0 as f64 * division.mm());
        self.shows = Engraved::computed_trade(all);
        self
    }

    /// The slide whose dial is read.
    #[must_use]
    pub fn slide(&self) -> Slide {
        self.slide
    }

    /// Whole divisions from zero, positive into the metal.
    #[must_use]
    pub fn divisions(&self) -> Divisions {
        self.divisions
    }

    /// Whole turns of the handle from zero.
    #[must_use]
    pub fn turns(&self) -> i64 {
        self.turns
    }

    /// The mark under the index line, 0 to N - 1.
    #[must_use]
    pub fn mark(&self) -> u32 {
        self.mark
    }

    /// What is engraved at that mark.
    #[must_use]
    pub fn shows(&self) -> Engraved {
        self.shows
    }
}

impl fmt::Display for Reading {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.turns {
            0 => write!(f, "mark {}", self.mark),
            1 => write!(f, "1 turn + mark {}", self.mark),
            turns => write!(f, "{turns} turns + mark {}", self.mark),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn turns_and_mark_give_the_divisions_back_for_every_small_dial() {
        for n in 2..=125_u32 {
            for k in -400..=400_i64 {
                let reading = Reading::at(
                    Slide::CrossSlide,
                    Divisions(k),
                    DivisionsPerTurn(n),
                    Division::computed_trade(0.02),
                );
                assert!(reading.mark < n);
                assert_eq!(reading.turns * i64::from(n) + i64::from(reading.mark), k);
            }
        }
    }

    #[test]
    fn below_zero_the_mark_counts_up_to_the_turn() {
        // formulas: floor division, the mark under the line of -30 with 100 a turn is 70 (derived).
        let reading = Reading::at(
            Slide::CrossSlide,
            Divisions(-30),
            DivisionsPerTurn(100),
            Division::computed_trade(0.02),
        );
        assert_eq!((reading.turns, reading.mark), (-1, 70));
    }
}
