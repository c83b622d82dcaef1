//! The operation sheet: what a plan says, as a value and as text.

use std::borrow::Cow;
use std::fmt::{self, Write};

use super::after::Measurement;
use super::batch::Batch;
use super::job::Job;
use super::words::words;
use crate::advice::size_budget::{CauseShare, SizeCause};
use crate::advice::stops::StopsChoice;
use crate::advice::support::SupportChoice;
use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::finish::TheoreticalRoughness;
use crate::physics::spread::Outcome;
use crate::provenance::{Provenance, Source};
use crate::quantity::dial::Reading;
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, Duration, Feed, Position, Probability, Quantity, SizeUncertainty,
    SpindleSpeed,
};
use crate::shop::part::Part;
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
    /// Let the bar out and bring up the centre, or put it between two centres.
    Reclamp,
    /// Set the carriage dial.
    ZeroZ,
    /// Set the cross dial.
    ZeroX,
    /// The first cut, which is measured.
    FirstCut,
    /// Stop and measure.
    Measure,
    /// What follows from a size that was measured.
    Adjust,
    /// A roughing cut.
    RoughCut,
    /// One of the last two cuts.
    FinishCut,
    /// Bring the shoulder to length.
    Shoulder,
    /// Turn the groove at a shoulder.
    Undercut,
    /// Turn a cone with the compound slide.
    Taper,
    /// Break the edges.
    Edges,
    /// Measure the finished part.
    Inspect,
    /// Part it off.
    PartOff,
    /// Turn the part round in the chuck, or end for end between two centres.
    TurnRound,
    /// Leave the machine clear.
    Clear,
}

impl StepKind {
    /// Whether metal is cut along the bar.
    pub(super) fn is_cut(self) -> bool {
        matches!(self, Self::FirstCut | Self::RoughCut | Self::FinishCut)
    }
}

/// Which surface of the part: the list it stands in, and its place there from 0.
///
/// ```
/// use turnwright::plan::SurfaceAt;
/// assert_eq!(SurfaceAt::new(false, 1).to_string(), "surfaces[1]");
/// assert_eq!(SurfaceAt::new(true, 0).to_string(), "other_end[0]");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct SurfaceAt {
    other_end: bool,
    index: usize,
}

impl SurfaceAt {
    /// The surface at `index` from the face of this end.
    #[must_use]
    pub fn new(other_end: bool, index: usize) -> Self {
        Self { other_end, index }
    }

    /// Whether it is turned from the other end.
    #[must_use]
    pub fn other_end(self) -> bool {
        self.other_end
    }

    /// Its place from the face of its end, from 0.
    #[must_use]
    pub fn index(self) -> usize {
        self.index
    }

    /// The field of the job that says `what` of it.
    pub(super) fn path(self, part: &Part, what: &str) -> String {
        part.path_of(self.other_end, self.index, what)
    }
}

impl fmt::Display for SurfaceAt {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let list = if self.other_end {
            "other_end"
        } else {
            "surfaces"
        };
        write!(f, "{list}[{}]", self.index)
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for SurfaceAt {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

/// One step of the sheet.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Step {
    /// What kind of step it is.
    pub kind: StepKind,
    /// Which surface of the part it works on, if it is one's.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub surface: Option<SurfaceAt>,
    /// True for a step that lies before a measurement that was handed in.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "core::ops::Not::not"))]
    pub done: bool,
    /// What to do, in words.
    pub text: String,
    /// Why, with the figures put in.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub because: Option<String>,
    /// The mark to go to.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub reading: Option<Reading>,
    /// Tenths of a mark beyond `reading`, by eye: where a ring is fixed and no whole mark brings the size, or where
    /// no mark of the carriage keeps a shoulder well within the limits of its length.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tenths: Option<u8>,
    /// What the ring of the cross dial is turned to there, in marks within one turn, where the size measured is as
    /// expected; the text says what else it is turned to.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub ring_to: Option<f64>,
    /// The diameter to expect after the step; of a cut or a stop that is done the one it is known, or taken, to have
    /// left.
    pub diameter: Diameter,
    /// How far along the tool goes: zero on the finished face, negative towards the headstock.
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
            surface: None,
            done: false,
            text: text.into(),
            because: None,
            reading: None,
            tenths: None,
            ring_to: None,
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

/// A way of dividing the metal into cuts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Way {
    /// Equal roughing cuts whose readings lie on main marks, as a person counts them.
    #[default]
    Readable,
    /// The least time over whole marks, the lathe's feeds and its spindle steps.
    LeastTime,
}

/// What a way of dividing the metal costs.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct WayCost {
    /// The way.
    pub way: Way,
    /// How many cuts.
    pub cuts: u32,
    /// The time of the cuts, of withdrawing and returning between them, and of changes of the spindle
    /// step.
    pub time: Duration,
}

/// What to expect of one surface.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ExpectedSurface {
    /// Which surface.
    pub surface: SurfaceAt,
    /// Its finished diameter.
    pub diameter: Diameter,
    /// The limits it has to meet.
    pub limits: Limits,
    /// The expanded uncertainty of the finished diameter, about 95 %.
    pub uncertainty: SizeUncertainty,
    /// The chance that it comes out good.
    pub good: Probability,
    /// The chance that it comes out too large, so that another cut is needed.
    pub rework: Probability,
    /// The chance that it comes out too small: lost.
    pub scrap: Probability,
    /// The cause with the largest share of the uncertainty.
    pub dominant: SizeCause,
    /// What the uncertainty is made of, the largest share first.
    pub shares: Vec<CauseShare>,
    /// After which of its cuts to measure, and what other stops would come to.
    pub measuring_stops: StopsChoice,
    /// The roughness that the shape of the tool leaves; a real surface is rougher.
    pub finish: TheoreticalRoughness,
}

/// What to expect when all is done.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Expected {
    /// Of the surface that is the least likely to come out good: its finished diameter.
    pub diameter: Diameter,
    /// The limits it has to meet.
    pub limits: Limits,
    /// The expanded uncertainty of the finished diameter, about 95 %.
    pub uncertainty: SizeUncertainty,
    /// The chance that the part comes out good, all surfaces together.
    pub good: Probability,
    /// The chance that another cut is needed somewhere, and nothing is lost.
    pub rework: Probability,
    /// The chance that some diameter comes out too small: lost.
    pub scrap: Probability,
    /// The cause with the largest share of the uncertainty.
    pub dominant: SizeCause,
    /// What the uncertainty is made of, the largest share first.
    pub shares: Vec<CauseShare>,
    /// After which cuts to measure, and what other stops would come to.
    pub measuring_stops: StopsChoice,
    /// How sure the sizes are, in words.
    pub how_sure: Vec<String>,
    /// The roughness that the shape of the tool leaves; a real surface is rougher.
    pub finish: TheoreticalRoughness,
    /// What both ways of dividing the metal cost, all surfaces together, where that was asked.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub ways: Vec<WayCost>,
    /// Every surface, where there are several, in the order in which they are turned.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub surfaces: Vec<ExpectedSurface>,
    /// Cutting time of all steps; handling, measuring and setting come on top.
    pub time: Duration,
}

/// The chances of all surfaces together, each on its own.
pub(super) fn together(surfaces: &[ExpectedSurface]) -> Outcome {
    surfaces.iter().fold(Outcome::sure(), |all, surface| {
        all.and(Outcome {
            good: surface.good,
            rework: surface.rework,
            scrap: surface.scrap,
        })
    })
}

impl Expected {
    /// Of all surfaces together: the first figures are those of the surface least likely to be good.
    pub(super) fn of(
        surfaces: Vec<ExpectedSurface>,
        all: Outcome,
        how_sure: Vec<String>,
        ways: Vec<WayCost>,
        time: Duration,
    ) -> Result<Self, Error> {
        let Some(hardest) = surfaces
            .iter()
            .min_by(|a, b| a.good.trade().total_cmp(&b.good.trade()))
        else {
            return Err(Error::internal("a plan without a surface"));
        };
        Ok(Self {
            diameter: hardest.diameter,
            limits: hardest.limits,
            uncertainty: hardest.uncertainty,
            good: all.good,
            rework: all.rework,
            scrap: all.scrap,
            dominant: hardest.dominant,
            shares: hardest.shares.clone(),
            measuring_stops: hardest.measuring_stops.clone(),
            how_sure,
            finish: hardest.finish,
            ways,
            surfaces: if surfaces.len() > 1 {
                surfaces
            } else {
                Vec::new()
            },
            time,
        })
    }
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
    /// What was measured on the way, each with the step of the sheet it was handed in with.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub measured: Vec<Measurement>,
    /// What is made from what on which lathe, in words.
    pub heading: Vec<String>,
    /// What to lay ready.
    pub kit: Vec<String>,
    /// How the dials of this lathe count.
    pub dials: Vec<String>,
    /// A card to prove the dials of a lathe that is not known, and what to prove after a break.
    pub prove: Vec<String>,
    /// Chuck or centre for each clamping, with figures for both, by the surface that needs it most.
    pub support: Vec<SupportChoice>,
    /// The steps, in order.
    pub steps: Vec<Step>,
    /// What to expect.
    pub expected: Expected,
    /// Which parts to measure, where several are made one after the other.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub batch: Option<Batch>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    pub provenance: Provenance,
    /// Its pictures and its page, where a document asks for them.
    #[cfg(feature = "picture")]
    #[cfg_attr(feature = "serde", serde(rename = "pictures"))]
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub(super) carried_pictures: Vec<String>,
    #[cfg(feature = "picture")]
    #[cfg_attr(feature = "serde", serde(rename = "page"))]
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub(super) carried_page: Option<String>,
    /// The units of the words above.
    pub(super) units: Units,
}

#[cfg(feature = "json")]
impl Sheet {
    /// A sheet that was handed back: computed anew from its job and what was measured on the way; its
    /// other fields are not read.
    pub(crate) fn read(tree: &crate::quantity::fields::Tree, path: &str) -> Result<Self, Error> {
        use crate::quantity::fields::{Fields, list};
        let f = Fields::of(tree, path, "the sheet")?;
        let what = "the job, which every sheet carries: hand over all that stands under \"plan\"";
        let job = f.need_item("job", what, Job::read)?;
        let units = f.choice("units", &[("metric", Units::Metric), ("inch", Units::Inch)])?;
        let units = units.unwrap_or_default();
        let measured = f.item("measured", |tree, path| list(tree, path, Measurement::read))?;
        // What is passed over may be a slip, and a measurement lost.
        f.passed_over("job", &Job::FIELDS)?;
        super::steps::sheet(&job, units, &measured.unwrap_or_default())
            .map_err(|error| error.inside(path).in_units(units))
    }
}

#[cfg(all(feature = "json", feature = "picture"))]
impl Sheet {
    /// With its pictures and its page among its fields.
    pub(crate) fn carrying(mut self, pictures: bool, page: bool) -> Result<Self, Error> {
        if pictures {
            self.carried_pictures = self.pictures()?;
        }
        if page {
            self.carried_page = Some(self.page()?);
        }
        Ok(self)
    }
}

impl Sheet {
    /// The units in which its words are written.
    #[must_use]
    pub fn units(&self) -> Units {
        self.units
    }

    /// The steps in which metal is cut along the bar.
    pub fn cuts(&self) -> impl Iterator<Item = &Step> {
        self.steps.iter().filter(|step| step.kind.is_cut())
    }
}

const WIDTH: usize = 98;

impl fmt::Display for Sheet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Line by line into one text of about the size that it gets to, then on in one go.
        let mut text = String::with_capacity(4096 + 512 * self.steps.len());
        self.write(&mut text)?;
        f.write_str(&text)
    }
}

impl Sheet {
    fn write(&self, f: &mut String) -> fmt::Result {
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
        for line in self.support_lines() {
            paragraph(f, "", &line)?;
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
        let done = self.steps.iter().filter(|step| step.done).count();
        if done > 0 {
            paragraph(f, "", &format!("Steps 1 to {done} are done."))?;
        }
        // One text for all lines that are put together.
        let mut line = String::new();
        for (at, step) in self.steps.iter().enumerate().skip(done) {
            line.clear();
            write!(line, "{:>2}  ", at + 1)?;
            paragraph(f, &line, &step.text)?;
            line.clear();
            self.figures(step, &mut line)?;
            paragraph(f, "      ", &line)?;
            if let Some(because) = &step.because {
                line.clear();
                write!(line, "({because})")?;
                paragraph(f, "      ", &line)?;
            }
        }
        rule(f, "Expect")?;
        for line in self.expect_lines() {
            paragraph(f, "", &line)?;
        }
        for line in &self.expected.how_sure {
            paragraph(f, "", line)?;
        }
        if let Some(batch) = &self.batch {
            rule(f, "Batch")?;
            for line in &batch.text {
                paragraph(f, "", line)?;
            }
        }
        rule(
            f,
            "To prove on a lathe that you do not know, and after a break",
        )?;
        for line in &self.prove {
            paragraph(f, "- ", line)?;
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
            line.clear();
            self.write_source(&mut line, source);
            paragraph(f, "- ", &line)?;
        }
        Ok(())
    }
}

impl Sheet {
    /// One line of where the constants come from.
    pub(super) fn write_source(&self, line: &mut String, source: &Source) {
        let (what, value) = match self.units {
            Units::Metric => (
                Cow::Borrowed(&*source.what),
                Cow::Borrowed(source.value.as_str()),
            ),
            Units::Inch => (
                Cow::Owned(source.what_in(self.units)),
                Cow::Owned(source.value_in(self.units)),
            ),
        };
        let _ = write!(
            line,
            "{what}: {value} [{}; {}]",
            source.standing, source.source
        );
    }

    /// What each way of holding comes to, in words.
    pub(super) fn support_lines(&self) -> Vec<String> {
        let choices = self.support.iter().enumerate();
        choices
            .flat_map(|(at, choice)| choice.options.iter().map(move |option| (at, option)))
            .map(|(at, option)| {
                let clamping = match self.support.len() {
                    1 => String::new(),
                    _ => format!("Clamping {}: ", at + 1),
                };
                format!(
                    "{clamping}{} ({} on the diameter, {} where the bar cuts hard).",
                    option.because,
                    option.diameter_error.people(self.units),
                    option.diameter_error_at_most.people(self.units)
                )
            })
            .collect()
    }

    /// Sizes, limits, roughness and time to expect, in words.
    pub(super) fn expect_lines(&self) -> Vec<String> {
        let (e, u) = (&self.expected, self.units);
        let ways = e.ways.iter().map(|cost| {
            let what = match cost.way {
                Way::Readable => "Readable way (equal cuts on main marks)",
                Way::LeastTime => "Way of least time",
            };
            format!(
                "{what}: {} cuts, {} with withdrawing, returning and changes of step.",
                cost.cuts,
                minutes(cost.time)
            )
        });
        if e.surfaces.is_empty() {
            let mut lines = vec![format!(
                "Diameter {} within {} to {}. Cutting time {}. {}",
                e.diameter.people(u),
                e.limits.smallest().people(u),
                e.limits.largest().people(u),
                minutes(e.time),
                roughness(&e.finish, u),
            )];
            lines.extend(ways);
            return lines;
        }
        let of_surface = |surface: &ExpectedSurface| {
            format!(
                "Diameter {} within {} to {}, sure to +/- {}. {}",
                surface.diameter.people(u),
                surface.limits.smallest().people(u),
                surface.limits.largest().people(u),
                surface.uncertainty.people(u),
                roughness(&surface.finish, u),
            )
        };
        let mut lines: Vec<String> = e.surfaces.iter().map(of_surface).collect();
        lines.push(format!("Cutting time of all {}.", minutes(e.time)));
        lines.extend(ways);
        lines
    }

    /// Writes speed, feed, depth, time and size of a step, as far as it has them.
    pub(super) fn figures(&self, step: &Step, out: &mut String) -> fmt::Result {
        let (u, start) = (self.units, out.len());
        let mut say = |what: fmt::Arguments<'_>| {
            if out.len() > start {
                out.push_str(", ");
            }
            out.write_fmt(what)
        };
        if let Some(n) = step.spindle_speed {
            say(format_args!("{}", n.people(u)))?;
        }
        if let Some(feed) = step.feed {
            say(format_args!("{}", feed.people(u)))?;
        }
        if let Some(depth) = step.depth_of_cut {
            say(format_args!("depth {}", depth.people(u)))?;
        }
        if step.time.seconds() > 0.0 {
            say(format_args!("{}", minutes(step.time)))?;
        }
        if step.depth_of_cut.is_some() && step.z.is_some() {
            say(format_args!("expect {}", step.diameter.people(u)))?;
        }
        Ok(())
    }
}

pub(super) fn roughness(finish: &TheoreticalRoughness, units: Units) -> impl fmt::Display {
    words(move |f| {
        write!(
            f,
            "Roughness by theory: Ra {}, Rz {}; a real surface is rougher.",
            finish.ra.people(units),
            finish.rz.people(units)
        )
    })
}

/// A duration as a person says it.
pub(super) fn minutes(time: Duration) -> impl fmt::Display {
    words(move |f| {
        let seconds = time.seconds().round();
        if seconds < 100.0 {
            write!(f, "{} s", fixed(seconds, 0))
        } else {
            write!(f, "{} min", fixed(time.minutes(), 1))
        }
    })
}

fn rule(f: &mut impl fmt::Write, title: &str) -> fmt::Result {
    writeln!(f, "\n{title}\n{}", "-".repeat(title.len()))
}

/// `text` wrapped to the width of the sheet, its first line led by `lead`, the rest indented alike.
pub(super) fn paragraph(f: &mut impl fmt::Write, lead: &str, text: &str) -> fmt::Result {
    if text.is_empty() {
        return Ok(());
    }
    // Most texts are one line. Looked at to the end, many bytes go at a time.
    if !(text.bytes()).fold(false, |found, byte| found | (byte == b'\n')) {
        return wrapped(f, lead, text, true);
    }
    for (at, line) in text.lines().enumerate() {
        wrapped(f, lead, line, at == 0)?;
    }
    Ok(())
}

/// One line of a text, wrapped; `lead` stands before the first of them.
fn wrapped(f: &mut impl fmt::Write, lead: &str, line: &str, mut first: bool) -> fmt::Result {
    let indent = lead.chars().count();
    let mut rest = line.trim_ascii();
    loop {
        let (head, tail) = fitting(rest, WIDTH.saturating_sub(indent));
        match (first, head) {
            (true, "") => f.write_str(lead.trim_end())?,
            (true, _) => f.write_str(lead)?,
            (false, "") => {}
            (false, _) => blanks(f, indent)?,
        }
        first = false;
        f.write_str(head)?;
        f.write_char('\n')?;
        rest = tail;
        if rest.is_empty() {
            return Ok(());
        }
    }
}

fn blanks(f: &mut impl fmt::Write, count: usize) -> fmt::Result {
    const SOME: &str = "        ";
    let mut left = count;
    while left > 0 {
        let now = left.min(SOME.len());
        f.write_str(&SOME[..now])?;
        left -= now;
    }
    Ok(())
}

/// The words of `text` that fit into `width` characters, at least one, and those after them.
fn fitting(text: &str, width: usize) -> (&str, &str) {
    // No text has more characters than bytes.
    if text.len() <= width {
        return (text, "");
    }
    let end = match text.as_bytes()[..width].is_ascii() {
        true => width,
        false => match text.char_indices().nth(width) {
            Some((end, _)) => end,
            None => return (text, ""),
        },
    };
    let at = match text[end..].starts_with(' ') {
        true => Some(end),
        // A word is short: from its end back to the space before it is no way.
        false => (text.as_bytes()[..end].iter())
            .rposition(|byte| *byte == b' ')
            .or_else(|| text.find(' ')),
    };
    match at {
        Some(at) => (text[..at].trim_ascii_end(), text[at..].trim_ascii_start()),
        None => (text, ""),
    }
}
