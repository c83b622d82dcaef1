//! The mark of a dial for a size.

use serde::Serialize;

use crate::advice::mark::{self, MarkAndSize};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::quantity::Diameter;
use crate::quantity::dial::{Divisions, Reading};
use crate::quantity::fields::Tree;
use crate::shop::dial::{Dial, DialReads, Ring};
use crate::standards::limits::Limits;

/// A dial of the cross slide, its zero, and a size wanted.
///
/// ```
/// use turnwright::{document::dial::Question, Dial, DialReads, Diameter, Division, DivisionsPerTurn};
/// let cross = Dial::new(DialReads::Radius, Division::from_mm(0.05)?, DivisionsPerTurn::new(80)?);
/// let answer = Question::new(cross, Diameter::from_mm(40.0)?, Diameter::from_mm(27.6)?)?.answer()?;
/// assert_eq!((answer.divisions.count(), answer.turns, answer.mark), (124, 1, 44));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    dial: Dial,
    zero_at: Diameter,
    target: Diameter,
    limits: Option<Limits>,
}

/// The mark.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Whole divisions from zero, positive into the metal.
    pub divisions: Divisions,
    /// Whole turns of the handle.
    pub turns: i64,
    /// The mark under the index line.
    pub mark: u32,
    /// The whole reading.
    pub reading: Reading,
    /// The diameter at that mark.
    pub size_at_mark: Diameter,
    /// Whether it lies within the limits, where limits are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub in_zone: Option<bool>,
    /// The marks on both sides of the zone, where none lies in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub neighbours: Option<[MarkAndSize; 2]>,
    /// What can be done about it.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub remedies: Vec<String>,
    /// What a person must be told.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Caution>,
}

impl Question {
    /// A dial, the diameter at its zero, and the size wanted.
    ///
    /// # Errors
    /// `dial.reads`, when the dial counts travel and so cannot be one of the cross slide.
    pub fn new(dial: Dial, zero_at: Diameter, target: Diameter) -> Result<Self, Error> {
        if dial.reads() == DialReads::Travel {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "dial.reads",
                "\"travel\"",
                "\"radius\" or \"diameter\"",
                "give the dial of the cross slide",
            ));
        }
        Ok(Self {
            dial,
            zero_at,
            target,
            limits: None,
        })
    }

    /// With limits of the size.
    #[must_use]
    pub fn with_limits(mut self, limits: Limits) -> Self {
        self.limits = Some(limits);
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let dial = f.need_item(
            "dial",
            "the dial: reads, division, divisions_per_turn",
            Dial::read,
        )?;
        let mut question = Self::new(
            dial,
            f.need_quantity("zero_at")?,
            f.need_quantity("target")?,
        )?;
        question.limits = f.item("limits", Limits::read)?;
        f.finish()?;
        Ok(question)
    }

    /// The mark.
    ///
    /// # Errors
    /// When the mark would lie beyond the middle of the bar.
    pub fn answer(&self) -> Result<Answer, Error> {
        let choice = mark::choose(&self.dial, self.zero_at, self.target, self.limits)?;
        let mut cautions = Vec::new();
        let mut remedies = Vec::new();
        if choice.in_zone == Some(false) {
            cautions.push(Caution::new(
                Severity::Warning,
                "no_mark_in_zone",
                "No mark of this dial lies within the limits; the mark given leaves metal.",
            ));
            if self.dial.ring() != Ring::Fixed {
                remedies.push(String::from(
                    "measure before the last cut and set the ring so that the size wanted lies on a mark",
                ));
            }
            remedies.push(String::from(
                "set between two marks, and reckon with a fifth of a mark of error",
            ));
            remedies.push(String::from(
                "set the compound slide over, so that one of its marks takes a tenth",
            ));
        }
        let reading = choice.mark.reading;
        Ok(Answer {
            divisions: reading.divisions(),
            turns: reading.turns(),
            mark: reading.mark(),
            reading,
            size_at_mark: choice.mark.size,
            in_zone: choice.in_zone,
            neighbours: choice.neighbours,
            remedies,
            cautions,
        })
    }
}
