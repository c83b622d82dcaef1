//! The operation sheet: every pass down to the dial reading.
//!
//! | file | what |
//! |---|---|
//! | `job` | what is asked |
//! | `setup` | the figures: speed, feeds, support, largest depths |
//! | `chance` | how sure the last size is: the aim, where to measure, what to expect |
//! | `datum` | across the axis: zone, zero of the cross dial, final mark |
//! | `lengths` | along the axis: overhang, shoulder, where the feed is taken off |
//! | `passes` | how the metal is divided into cuts, in whole divisions |
//! | `steps` | the steps in order |
//! | `words` | the words that steps are made of |
//! | `safety` | the words that keep people whole |
//! | `sheet` | the sheet as a value and as text |
//!
//! A plan is a value: it is computed from the job and whole divisions of the dial, never from
//! printed sizes.

#[cfg(feature = "serde")]
crate::quantity::fields::deserialize_through_tree!(job::Job, job::Preferences);

mod chance;
mod datum;
mod job;
mod lengths;
mod passes;
mod safety;
mod setup;
mod sheet;
mod steps;
mod words;

pub use job::{Job, Preferences};
pub use sheet::{Expected, Sheet, Step, StepKind};

use crate::error::Error;
use crate::quantity::unit::Units;

impl Job {
    /// The operation sheet of this job, its words in `units`.
    ///
    /// # Errors
    /// When the job contradicts itself (a part larger than the bar, a length that reaches into the
    /// jaws), when something it needs is missing (the dials, a cutting speed), or when the lathe, the
    /// tool or the bar cannot do it; the field and the remedy are named.
    pub fn plan(&self, units: Units) -> Result<Sheet, Error> {
        let setup = setup::Setup::of(self, units)?;
        steps::write(self, setup, units)
    }
}
