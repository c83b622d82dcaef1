//! The operation sheet.

use crate::error::Error;
use crate::plan::{Job, Sheet};
use crate::quantity::fields::Tree;
use crate::quantity::unit::Units;

/// A job to plan.
#[derive(Debug, Clone)]
pub struct Question {
    job: Job,
    units: Units,
}

/// The sheet.
pub type Answer = Sheet;

impl Question {
    /// This job, its words in these units.
    #[must_use]
    pub fn new(job: Job, units: Units) -> Self {
        Self { job, units }
    }

    /// A job from the text of a document, `{ "plan": { .. } }`.
    ///
    /// # Errors
    /// As [`document::answer`](super::answer), and when the question is another one.
    pub fn from_text(document: &str) -> Result<Self, Error> {
        let tree = super::parse(document)?;
        match super::question_of(&tree)? {
            ("plan", body) => Self::read(body, super::units(body)?),
            (other, _) => Err(super::unknown(other)),
        }
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        Ok(Self {
            job: Job::read(body, "")?,
            units,
        })
    }

    /// The sheet.
    ///
    /// # Errors
    /// As [`Job::plan`].
    pub fn answer(&self) -> Result<Answer, Error> {
        self.job.plan(self.units)
    }
}
