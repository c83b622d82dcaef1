//! A batch of the same part: which of them to measure.

use super::common::Common;
use super::heading::Figures;
use super::sheet::SurfaceAt;
use super::turning::Turning;
use crate::advice::batch::{BatchAsk, BatchChoice, drift_per_part};
use crate::advice::size_budget::{Reached, SizeAsk};
use crate::advice::tool_life::life_in_band;
use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::{DiameterError, Duration, Quantity, ToolLife};
use crate::shop::dial::Ring;

/// Which parts of a batch to measure.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Batch {
    /// The surface that wants it most often.
    pub surface: SurfaceAt,
    /// The parts to measure by it, and what that costs.
    pub choice: BatchChoice,
    /// How long the edge lasts in cut at these speeds, where a band of speeds is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tool_life: Option<ToolLife>,
    /// The same in words.
    pub text: Vec<String>,
}

impl Batch {
    /// For a job of so many parts, of this time in cut each.
    pub(super) fn of(
        figures: &Figures<'_>,
        parts: u32,
        in_cut: Duration,
        provenance: &mut Provenance,
    ) -> Result<Option<Self>, Error> {
        let common = &figures.common;
        let turnings = || figures.turnings.iter().flatten();
        // The fastest of its cuts wears the edge most.
        let fastest = turnings().map(|t| t.rough_step.cutting_speed).max();
        let tool = common.job.tool.material();
        let life = match (tool, tool.and_then(|t| common.job.material.speed_band(t))) {
            (Some(tool), Some(band)) => {
                let speed = fastest.unwrap_or(band.value.middle());
                Some(life_in_band(tool, &band.value, speed, provenance)?)
            }
            _ => None,
        };
        let drift = match life {
            Some(life) => drift_per_part(in_cut, life, provenance),
            None => DiameterError::computed_trade(0.0),
        };
        let mut most_often: Option<(SurfaceAt, BatchChoice)> = None;
        for turning in turnings() {
            let choice = choice(common, turning, parts, drift, provenance)
                .map_err(|error| error.inside("preferences"))?;
            if most_often
                .as_ref()
                .is_none_or(|(_, before)| choice.every < before.every)
            {
                most_often = Some((turning.place.at, choice));
            }
        }
        Ok(most_often.map(|(surface, choice)| {
            let text = words(figures, &choice, life, in_cut);
            Self {
                surface,
                choice,
                tool_life: life,
                text,
            }
        }))
    }
}

fn choice(
    common: &Common<'_>,
    turning: &Turning<'_>,
    parts: u32,
    drift: DiameterError,
    provenance: &mut Provenance,
) -> Result<BatchChoice, Error> {
    let end = turning.diameter_at(common.cross, turning.datum.last.count())?;
    // The dial was set on the part measured last; the spring differs from bar to bar.
    let set = Reached::FromMeasured {
        taken: DiameterError::computed_trade(0.0),
        spring: None,
    };
    let mut ask = SizeAsk::new(end, common.cross, turning.gauge, set)
        .with_spring(turning.spring_left.most)
        .with_spring_along(turning.spring_left.along)
        .with_spring_corrected();
    if let Some(expansion) = common.expansion {
        ask = ask.with_expansion(expansion);
    }
    let spread = ask.budget(provenance)?.budget().spread();
    BatchAsk::new(
        parts,
        turning.place.surface.limits(),
        end,
        spread,
        drift,
        turning.costs.prices,
        turning.costs.stop,
    )
    .choose()
}

fn words(
    figures: &Figures<'_>,
    choice: &BatchChoice,
    life: Option<ToolLife>,
    in_cut: Duration,
) -> Vec<String> {
    let u = figures.common.units;
    let some: Vec<String> = choice
        .measured
        .iter()
        .take(6)
        .map(ToString::to_string)
        .collect();
    let more = if choice.measured.len() > some.len() {
        " and so on"
    } else {
        ""
    };
    let mut lines = vec![format!(
        "{} parts. Make the first by every step of this sheet, with all its measurements. Tool, ring and compound slide then \
         stay as they are, and every bar stands out alike: the marks of the cross dial hold for the next part too, without \
         touching and without stops before the last cut. Those of the carriage do not: face every bar, and zero Z on its own \
         face. Where a step sets the ring on a finished size, take the size expected.",
        choice.parts
    )];
    let later = figures.turnings.iter().flatten().any(|turning| {
        let surface = turning.place.surface;
        surface.undercut().is_some() || surface.small_diameter().is_some()
    });
    let parted = figures.clampings.iter().any(|clamp| clamp.parted.is_some());
    lines.push(format!(
        "Changing the tool or moving the compound slide costs the zero: {}.{}",
        match (parted, later) {
            (true, _) =>
                "with edges and parting off in the same clamping every part is touched and zeroed anew, unless each tool has \
                 a holder that brings it back to its place, proved on the second part",
            (false, true) => "edges, undercuts and cones are done afterwards, for all parts",
            (false, false) => "edges are done afterwards, for all parts",
        },
        match figures.clampings.len() {
            1 => "",
            _ => " So is the other end: first the first ends of all parts, then the other ends.",
        }
    ));
    lines.push(format!(
        "Measure the finished parts {}{more}, at 20 degC, every diameter of them; {} before the next part. The second proves that the zero came back with a fresh bar in the jaws.",
        some.join(", "),
        match figures.common.cross.ring() {
            Ring::Settable => "set the ring by what each is off, at its last mark,",
            Ring::Readout => "set the readout to what each measured, at the last place of that part,",
            Ring::Fixed => "move the marks by what each is off, in whole marks,",
        }
    ));
    match life {
        Some(life) => {
            let edges = (life.minutes() / in_cut.minutes()).floor().max(1.0);
            lines.push(format!(
                "The edge wears: sizes grow by about {} {}. Look at the \
                 edge with a glass after every measured part; it lasts about {:.0} min in cut, {edges:.0} parts. After it was \
                 honed or changed its zero is lost: the next part is a first one.",
                choice.drift_between.people(u),
                match choice.measured.len() {
                    0..=2 => "from the second part to the last",
                    _ => "from one measured part to the next",
                },
                life.minutes(),
            ));
        }
        None => lines.push(String::from(
            "How fast the edge wears is not known for this material and tool: sizes are taken to stay. Measure more often \
             where two parts measured one after the other differ.",
        )),
    }
    lines
}
