//! The operation sheet: every pass down to the dial reading.
//!
//! | file | what |
//! |---|---|
//! | `job` | what is asked |
//! | `common` | what is the same for every surface: dials, speeds, roughing feed |
//! | `clamping` | how each end is held: overhang, grip, support, its surfaces in order |
//! | `turned_round` | the second clamping: cut to length, gripped on a finished diameter |
//! | `dog` | between two centres: how long the bar has to be, what the dog goes over |
//! | `turning` | the figures of one surface: speed, zone, datum, passes |
//! | `whole` | what a depth of cut asks for, and the largest that every limit allows |
//! | `chance` | how sure a size is: the aim, where to measure, what to expect |
//! | `datum` | across the axis: zone, zero of the cross dial, final mark |
//! | `lengths` | along the axis: overhang, shoulders, where the feed is taken off |
//! | `passes` | how the metal is divided into cuts, in whole divisions |
//! | `quickest` | the same by the least time, and what both ways cost |
//! | `steps` | the sheet put together, clamping by clamping, surface by surface |
//! | `heading`, `set_up`, `cuts`, `ends` | its words: above the steps, before, at and after the cuts |
//! | `centres` | the words before the cuts of a bar between two centres |
//! | `two_tools` | its words where one tool roughs and another one finishes |
//! | `card` | to prove an unknown lathe, and after a break |
//! | `words`, `safety` | the words that steps are made of, and those that keep people whole |
//! | `after`, `take` | what a measurement says and the sheet that follows; what it changes in the figures |
//! | `sheet`, `short` | the sheet as a value and as text, and its short form |
//! | `outline`, `paper`, `picture` | what is seen of a clamping, paper to draw on, the drawing (feature `picture`) |
//! | `page` | the sheet as a page to print (feature `picture`) |
//!
//! A plan is a value: it is computed from the job and whole divisions of the dial, never from
//! printed sizes.

#[cfg(feature = "serde")]
crate::quantity::fields::deserialize_through_tree!(job::Job, job::Preferences);

mod after;
mod batch;
mod card;
mod centres;
mod chance;
mod clamping;
mod common;
mod cuts;
mod datum;
mod dog;
mod ends;
mod heading;
mod job;
mod lengths;
#[cfg(feature = "picture")]
mod outline;
#[cfg(feature = "picture")]
mod page;
#[cfg(feature = "picture")]
mod paper;
mod passes;
#[cfg(feature = "picture")]
mod picture;
mod quickest;
mod readout;
mod safety;
mod set_up;
mod sheet;
mod short;
mod steps;
#[cfg(feature = "picture")]
mod strip;
mod take;
mod turned_round;
mod turning;
mod two_tools;
mod whole;
mod words;

pub use after::{AfterMeasurement, Measurement};
pub use batch::Batch;
pub use job::{Job, LengthBy, Preferences};
pub use sheet::{Expected, ExpectedSurface, Sheet, Step, StepKind, SurfaceAt, Way, WayCost};

use crate::error::Error;
use crate::quantity::unit::Units;

impl Job {
    /// The operation sheet of this job, its words in `units`.
    ///
    /// # Errors
    /// When the job contradicts itself (a part larger than the bar, a length that reaches into the
    /// jaws), when something it needs is missing (the dials, a cutting speed), or when the lathe, the
    /// tool or the bar cannot do it; the field and the remedy are named, sizes in `units`.
    pub fn plan(&self, units: Units) -> Result<Sheet, Error> {
        steps::sheet(self, units, &[]).map_err(|error| error.in_units(units))
    }
}
