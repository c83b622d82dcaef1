//! What follows from a size that was measured on the way.
//!
//! | field | what |
//! |---|---|
//! | `plan` | the sheet, all that stands under `plan` in its answer, or in the last answer to this question |
//! | `step` | the place in its `steps`, from 0: a cut, a measuring stop or an inspection |
//! | `measured` | a size, or `[{ from_chuck, diameter }, ..]` or sizes, several along the bar |
//! | `with?` | as in [`plan`](super::plan), for the sheet that follows |
//! | `expanded_uncertainty?` | of one measured size, k = 2; left out: that of the sheet's instrument |

use super::with::With;
use crate::advice::diagnosis::SizeAt;
use crate::error::Error;
use crate::plan::{AfterMeasurement, Sheet};
use crate::quantity::SizeUncertainty;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;

/// A sheet, a step and what was measured there.
///
/// ```
/// use turnwright::document::{after_measurement::Question, plan};
/// use turnwright::{advice::diagnosis::SizeAt, plan::StepKind};
/// # let job = r#"{ "plan": { "material": "11SMn30", "stock": { "diameter": "34 mm", "length": "140 mm" },
/// #   "part": { "diameter": "30 mm", "class": "h8", "length": "70 mm" },
/// #   "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" },
/// #   "lathe": { "spindle_steps": ["250 rpm", "500 rpm"], "feeds": ["0.1 mm/rev", "0.2 mm/rev"],
/// #     "cross_slide": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100 },
/// #     "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 } } } }"#;
/// // An invented job, its text left out here.
/// let sheet = plan::Question::from_text(job)?.answer()?;
/// let stop = sheet.steps.iter().position(|step| step.kind == StepKind::Measure).unwrap_or(0);
/// let expected = sheet.steps[stop].diameter;
/// let answer = Question::new(sheet, stop, vec![SizeAt::anywhere(expected)]).answer()?;
/// assert_eq!(answer.shift, 0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    plan: Sheet,
    step: usize,
    measured: Vec<SizeAt>,
    expanded_uncertainty: Option<SizeUncertainty>,
    with: With,
}

/// What the measurement says, and the sheet that follows.
pub type Answer = AfterMeasurement;

impl Question {
    /// These sizes at this step of this sheet.
    #[must_use]
    pub fn new(plan: Sheet, step: usize, measured: Vec<SizeAt>) -> Self {
        Self {
            plan,
            step,
            measured,
            expanded_uncertainty: None,
            with: With::default(),
        }
    }

    crate::shop::setters! {
        /// With the expanded uncertainty of one measured size, k = 2.
        with_expanded_uncertainty expanded_uncertainty: SizeUncertainty;
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = Fields::of(body, "", "a measurement")?;
        let step = f.count("step")?;
        let question = Self {
            plan: f.need_item("plan", "the sheet that was followed", Sheet::read)?,
            step: step.ok_or_else(|| f.missing("step", "the step of the sheet, from 0"))? as usize,
            measured: f.need_item(
                "measured",
                "the size, or sizes along the bar",
                SizeAt::read_all,
            )?,
            expanded_uncertainty: f.quantity("expanded_uncertainty")?,
            with: With::take(&f)?,
        };
        // Read by the door itself.
        let _ = f.tree("units");
        f.finish()?;
        Ok(question)
    }

    /// The units in which the sheet was written.
    pub(super) fn units(&self) -> Units {
        self.plan.units()
    }

    /// What the measurement says, and the sheet that follows.
    ///
    /// # Errors
    /// As [`Sheet::after`].
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut answer = self
            .plan
            .after(self.step, &self.measured, self.expanded_uncertainty)?;
        answer.plan = answer.plan.map(|sheet| self.with.on(sheet)).transpose()?;
        Ok(answer)
    }
}

/// What a measurement says, as the answer that it is.
#[cfg(feature = "capi")]
pub(crate) fn written(told: &AfterMeasurement, units: Units) -> Result<String, Error> {
    super::reply("after_measurement", units, told)
}
