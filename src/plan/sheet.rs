//! The operation sheet: what a plan says, as a value and as text.

use std::fmt;

use super::job::Job;
use crate::advice::size_budget::{CauseShare, SizeCause};
use crate::advice::stops::StopsChoice;
use crate::advice::support::SupportChoice;
use crate::caution::{Caution, Severity};
use crate::physics::finish::TheoreticalRoughness;
use crate::provenance::Provenance;
use crate::quantity::dial::Reading;
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, Duration, Feed, Position, Probability, Quantity, SizeUncertainty,
    SpindleSpeed,
};
use crate::standards::limits::Limits;

/// What kind of step it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum StepKind {
    /// Put the bar into the chuck.
    Clamp,
    /// Before the spindle turns for the first time.
    FirstStart,
    /// Turn the end face.
    Face,
    /// Drill the centre hole.
    CentreDrill,
    /// Let the bar out and bring up the centre.
    Reclamp,
    /// Set the carriage dial.
    ZeroZ,
    /// Set the cross dial.
    ZeroX,
    /// The first cut, which is measured.
    FirstCut,
    /// Stop and measure.
    Measure,
    /// A roughing cut.
    RoughCut,
    /// One of the last two cuts.
    FinishCut,
    /// Bring the shoulder to length.
    Shoulder,
    /// Break the edges.
    Edges,
    /// Measure the finished part.
    Inspect,
    /// Leave the machine clear.
    Clear,
}

/// One step of the sheet.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Step {
    /// What kind of step it is.
    pub kind: StepKind,
    /// What to do, in words.
    pub text: String,
    /// Why, with the figures put in.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub because: Option<String>,
    /// The mark to go to.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reading: Option<Reading>,
    /// The diameter to expect after the step.
    pub diameter: Diameter,
    /// How far along the tool goes: zero on the finished face, negative towards the chuck.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub z: Option<Position>,
    /// Spindle speed; absent where the spindle is at rest.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub spindle_speed: Option<SpindleSpeed>,
    /// Feed; absent where nothing is fed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub feed: Option<Feed>,
    /// Depth of cut, radial.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub depth_of_cut: Option<DepthOfCut>,
    /// Cutting time; zero where nothing is cut.
    pub time: Duration,
}

impl Step {
    pub(super) fn new(kind: StepKind, diameter: Diameter, text: impl Into<String>) -> Self {
        Self {
            kind,
            text: text.into(),
            because: None,
            reading: None,
            diameter,
            z: None,
            spindle_speed: None,
            feed: None,
            depth_of_cut: None,
            time: Duration::computed_trade(0.0),
        }
    }

    pub(super) fn because(mut self, why: impl Into<String>) -> Self {
        self.because = Some(why.into());
        self
    }
}

/// What to expect when all is done.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Expected {
    /// The finished diameter.
    pub diameter: Diameter,
    /// The limits it has to meet.
    pub limits: Limits,
    /// The expanded uncertainty of the finished diameter, about 95 %.
    pub uncertainty: SizeUncertainty,
    /// The chance that the part comes out good.
    pub good: Probability,
    /// The chance that it comes out too large, so that another cut is needed.
    pub rework: Probability,
    /// The chance that it comes out too small: lost.
    pub scrap: Probability,
    /// The cause with the largest share of the uncertainty.
    pub dominant: SizeCause,
    /// What the uncertainty is made of, the largest share first.
    pub shares: Vec<CauseShare>,
    /// After which cuts to measure, and what other stops would come to.
    pub measuring_stops: StopsChoice,
    /// How sure the size is, in words.
    pub how_sure: Vec<String>,
    /// The roughness that the shape of the tool leaves; a real surface is rougher.
    pub finish: TheoreticalRoughness,
    /// Cutting time of all steps; handling, measuring and setting come on top.
    pub time: Duration,
}

/// The operation sheet.
///
/// `Display` is the sheet as plain text of at most 100 columns, in the units it was planned for.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Sheet {
    /// The question, as given.
    pub job: Job,
    /// What is made from what on which lathe, in words.
    pub heading: Vec<String>,
    /// What to lay ready.
    pub kit: Vec<String>,
    /// How the dials of this lathe count.
    pub dials: Vec<String>,
    /// Chuck or centre, with figures for both.
    pub support: SupportChoice,
    /// The steps, in order.
    pub steps: Vec<Step>,
    /// What to expect.
    pub expected: Expected,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    pub provenance: Provenance,
    /// The units of the words above.
    #[cfg_attr(feature = "serde", serde(skip))]
    pub(super) units: Units,
}

impl Sheet {
    /// The units in which its words are written.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units
    }

    /// The steps in which metal is cut along the bar.
    pub fn cuts(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|step| {
            matches!(
                step.kind,
                StepKind::FirstCut | StepKind::RoughCut | StepKind::FinishCut
            )
        })
    }
}

const WIDTH: usize = 98;

impl fmt::Display for Sheet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        rule(f, "OPERATION SHEET")?;
        for line in &self.heading {
            paragraph(f, "", line)?;
        }
        rule(f, "Lay ready")?;
        paragraph(f, "", &self.kit.join("; "))?;
        rule(f, "Dials of this lathe")?;
        for line in &self.dials {
            paragraph(f, "", line)?;
        }
        rule(f, "Support")?;
        for option in &self.support.options {
            let figures = format!(
                "{} ({} on the diameter, {} where the bar cuts hard).",
                option.because,
                option.diameter_error.people(self.units),
                option.diameter_error_at_most.people(self.units)
            );
            paragraph(f, "", &figures)?;
        }
        let dangers: Vec<_> = self
            .cautions
            .iter()
            .filter(|c| c.severity() == Severity::Danger)
            .collect();
        if !dangers.is_empty() {
            rule(f, "Before the spindle turns")?;
            for caution in dangers {
                paragraph(f, "! ", caution.text())?;
            }
        }
        rule(f, "Steps")?;
        for (at, step) in self.steps.iter().enumerate() {
            paragraph(f, &format!("{:>2}  ", at + 1), &step.text)?;
            let figures = self.figures(step);
            if !figures.is_empty() {
                paragraph(f, "      ", &figures)?;
            }
            if let Some(because) = &step.because {
                paragraph(f, "      ", &format!("({because})"))?;
            }
        }
        rule(f, "Expect")?;
        let (e, u) = (&self.expected, self.units);
        paragraph(
            f,
            "",
            &format!(
                "Diameter {} within {} to {}. Cutting time {}. {}",
                e.diameter.people(u),
                e.limits.smallest().people(u),
                e.limits.largest().people(u),
                minutes(e.time),
                roughness(&e.finish, u),
            ),
        )?;
        for line in &e.how_sure {
            paragraph(f, "", line)?;
        }
        let rest: Vec<_> = self
            .cautions
            .iter()
            .filter(|c| c.severity() != Severity::Danger)
            .collect();
        if !rest.is_empty() {
            rule(f, "Mind")?;
            for caution in rest {
                let mark = if caution.severity() == Severity::Warning {
                    "* "
                } else {
                    "- "
                };
                paragraph(f, mark, caution.text())?;
            }
        }
        rule(f, "Where the constants come from")?;
        for source in self.provenance.sources() {
            paragraph(
                f,
                "- ",
                &format!(
                    "{}: {} [{}; {}]",
                    source.what, source.value, source.standing, source.source
                ),
            )?;
        }
        Ok(())
    }
}

impl Sheet {
    fn figures(&self, step: &Step) -> String {
        let u = self.units;
        let mut parts = Vec::new();
        if let Some(n) = step.spindle_speed {
            parts.push(n.people(u));
        }
        if let Some(feed) = step.feed {
            parts.push(feed.people(u));
        }
        if let Some(depth) = step.depth_of_cut {
            parts.push(format!("depth {}", depth.people(u)));
        }
        if step.time.seconds() > 0.0 {
            parts.push(minutes(step.time));
        }
        if step.depth_of_cut.is_some() && step.z.is_some() {
            parts.push(format!("expect {}", step.diameter.people(u)));
        }
        parts.join(", ")
    }
}

pub(super) fn roughness(finish: &TheoreticalRoughness, units: Units) -> String {
    format!(
        "Roughness by theory: Ra {}, Rz {}; a real surface is rougher.",
        finish.ra.people(units),
        finish.rz.people(units)
    )
}

/// A duration as a person says it.
pub(super) fn minutes(time: Duration) -> String {
    let seconds = time.seconds().round();
    if seconds < 100.0 {
        format!("{seconds:.0} s")
    } else {
        format!("{:.1} min", time.minutes())
    }
}

fn rule(f: &mut fmt::Formatter<'_>, title: &str) -> fmt::Result {
    writeln!(f, "\n{title}\n{}", "-".repeat(title.len()))
}

/// `text` wrapped to the width of the sheet, its first line led by `lead`, the rest indented alike.
fn paragraph(f: &mut fmt::Formatter<'_>, lead: &str, text: &str) -> fmt::Result {
    let indent = " ".repeat(lead.chars().count());
    for (part, line) in text.lines().enumerate() {
        let mut out = if part == 0 {
            lead.to_owned()
        } else {
            indent.clone()
        };
        let mut used = indent.len();
        let mut fresh = true;
        for word in line.split_whitespace() {
            let width = word.chars().count();
            if !fresh && used + 1 + width > WIDTH {
                writeln!(f, "{}", out.trim_end())?;
                out.clone_from(&indent);
                used = indent.len();
                fresh = true;
            }
            if !fresh {
                out.push(' ');
                used += 1;
            }
            out.push_str(word);
            used += width;
            fresh = false;
        }
        writeln!(f, "{}", out.trim_end())?;
    }
    Ok(())
}
