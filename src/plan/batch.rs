//! A batch of the same part: which of them to measure.

use super::common::Common;
use super::dog::is_driven;
use super::heading::Figures;
use super::set_up::short_end;
use super::sheet::SurfaceAt;
use super::turning::{Turning, cross_reading, mark_size, plain};
use super::words::{NEXT_TENTH, ROUGHING_TOOL_BACK, TURNING_TOOL_BACK, on_the_ring};
use crate::advice::batch::{BatchAsk, BatchChoice, drift_per_part};
use crate::advice::size_budget::{Reached, SizeAsk};
use crate::advice::tool_life::life_in_band;
use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, DiameterError, Duration, Quantity, ToolLife, round_size};
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
        // The fastest of its cuts wears the edge most; sizes are made by the edge that finishes.
        let fastest = match common.job.changes_tools() {
            false => turnings().map(|t| t.rough_step.cutting_speed).max(),
            true => turnings().map(|t| t.finish_step.cutting_speed).max(),
        };
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
        let each = why_each(figures, life, in_cut);
        let mut most_often: Option<(SurfaceAt, BatchChoice)> = None;
        for turning in turnings() {
            let choice = choice(common, turning, parts, drift, each.is_some(), provenance)
                .map_err(|error| error.inside("preferences"))?;
            if most_often
                .as_ref()
                .is_none_or(|(_, before)| choice.every < before.every)
            {
                most_often = Some((turning.place.at, choice));
            }
        }
        let Some((surface, choice)) = most_often else {
            return Ok(None);
        };
        let text = words(figures, &choice, each, life, in_cut)?;
        Ok(Some(Self {
            surface,
            choice,
            tool_life: life,
            text,
        }))
    }
}

fn choice(
    common: &Common<'_>,
    turning: &Turning<'_>,
    parts: u32,
    drift: DiameterError,
    every_part_is_a_first: bool,
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
    let ask = BatchAsk::new(
        parts,
        turning.place.surface.limits(),
        end,
        spread,
        drift,
        turning.costs.prices,
        turning.costs.stop,
    );
    match every_part_is_a_first {
        true => ask.with_every_part_a_first(),
        false => ask,
    }
    .choose()
}

/// Why the zero is lost from part to part.
#[derive(Debug, Clone, Copy)]
enum Each {
    /// The tool is changed while the part is held: at the latest for the blade.
    PartedOff,
    /// One tool roughs, and another one finishes.
    TwoTools,
    /// The edge lasts for no more than one part.
    ShortLife,
}

fn why_each(figures: &Figures<'_>, life: Option<ToolLife>, in_cut: Duration) -> Option<Each> {
    if figures.clampings.iter().any(|clamp| clamp.parted.is_some()) {
        return Some(Each::PartedOff);
    }
    if figures.common.job.changes_tools() {
        return Some(Each::TwoTools);
    }
    life.filter(|life| life.minutes() < 2.0 * in_cut.minutes())
        .map(|_| Each::ShortLife)
}

/// How the ring is brought back to where it stood for the first diameter of a clamping, where a later one turned it.
fn ring_back(figures: &Figures<'_>, turnings: &[Turning<'_>]) -> Result<Option<String>, Error> {
    let (cross, u) = (figures.common.cross, figures.common.units);
    let (Ring::Settable, Some(first), Some(last)) =
        (cross.ring(), turnings.first(), turnings.last())
    else {
        return Ok(None);
    };
    let mark = last.datum.last.count();
    let size = last.diameter_at(cross, mark)?;
    // The spring of one surface and of another does not move the tip.
    let spring = first.leaves_spring().mm() - last.leaves_spring().mm();
    let zero = Diameter::computed_trade(round_size(first.datum.zero.mm() - spring));
    let to = cross.divisions_between(zero, size);
    let turn = f64::from(cross.divisions_per_turn().count());
    let moved = (to - mark as f64).rem_euclid(turn);
    if moved.min(turn - moved) < NEXT_TENTH {
        return Ok(None);
    }
    Ok(Some(format!(
        "Before the next part bring the ring back: carriage to the right, cross slide in to the mark of the last cut made of \
         {}, by the sheet {}, hold the handle, and turn the ring only, to ({} - the size it measured) / {} marks, whole turns \
         of {turn} left out: {} where it is {}.",
        last.place.surface.diameter().people(u),
        cross_reading(cross, mark)?,
        plain(zero, u),
        mark_size(cross, u),
        on_the_ring(cross, to),
        size.people(u),
    )))
}

fn words(
    figures: &Figures<'_>,
    choice: &BatchChoice,
    each: Option<Each>,
    life: Option<ToolLife>,
    in_cut: Duration,
) -> Result<Vec<String>, Error> {
    let mut lines = match each {
        Some(why) => made_one_by_one(figures, choice, why),
        None => made_alike(figures, choice)?,
    };
    lines.push(wear_words(figures, choice, each, life, in_cut));
    Ok(lines)
}

/// Parts each of which is touched and measured as the first is.
fn made_one_by_one(figures: &Figures<'_>, choice: &BatchChoice, why: Each) -> Vec<String> {
    let u = figures.common.units;
    let mut lines = vec![format!(
        "{} parts. {} So every part is a first one: made by every step of this sheet, touched and zeroed anew, with all its \
         stops and measurements.",
        choice.parts,
        match why {
            Each::PartedOff => {
                "Edges and parting off change the tool while the part is held, and the zero of the cross dial is lost by it."
            }
            Each::TwoTools => {
                "Two tools change places while the part is held, and the zero of the cross dial is lost by it."
            }
            Each::ShortLife => {
                "The edge lasts for no more than one part: take a fresh one for each, and its zero with it."
            }
        },
    )];
    match why {
        Each::PartedOff => {
            let job = figures.common.job;
            let Some(clamp) = figures.clampings.first() else {
                return lines;
            };
            let out = match clamp.centre {
                None => format!(
                    "{} standing out again, as in step 1",
                    clamp.overhang.people(u)
                ),
                Some(_) => format!(
                    "only {} standing out, as in step 1, to be faced and drilled, and let out for the centre in the step for it",
                    short_end(job, clamp).people(u)
                ),
            };
            let whole = match figures.clampings.len() {
                1 => "",
                _ => "The soft sheet out of the jaws. ",
            };
            let next = match clamp.bars_more(job) {
                false => {
                    format!(
                        "What is left of the bar is too short for another part: the next bar into the jaws, {out}"
                    )
                }
                true => format!(
                    "The bar into the jaws, {out}, the next bar where this one can no longer be gripped as there"
                ),
            };
            let back = match job.changes_tools() {
                true => ROUGHING_TOOL_BACK,
                false => TURNING_TOOL_BACK,
            };
            lines.push(format!(
                "For the next part, spindle at rest. {back} {whole}{next}; tighten, key out. Where each tool has a \
                 holder that brings it back to its place, the stops may be left out once the second part has proved it.",
            ));
        }
        Each::TwoTools | Each::ShortLife => {
            if figures.clampings.len() > 1 {
                lines.push(String::from(
                    "First the first ends of all parts, then the other ends.",
                ));
            }
        }
    }
    lines
}

/// Parts that are made by the marks of the first.
fn made_alike(figures: &Figures<'_>, choice: &BatchChoice) -> Result<Vec<String>, Error> {
    let ring = figures.common.cross.ring();
    let (kept, marks, set) = match ring {
        Ring::Settable => (
            "Tool, ring and compound slide",
            "marks of the cross dial",
            "a step sets the ring on",
        ),
        Ring::Fixed => (
            "Tool, compound slide and shifts",
            "marks of the cross dial, each with its shift,",
            "a step finds a shift from",
        ),
        Ring::Readout => (
            "Tool, readout and compound slide",
            "numbers of the readout",
            "a step sets the readout on",
        ),
    };
    let along = match figures.common.carriage.ring() {
        Ring::Readout => "Z does",
        Ring::Settable | Ring::Fixed => "Those of the carriage do",
    };
    let (alike, face) = match is_driven(figures.common.job) {
        true => (
            "every bar is as long from face to face, all of them faced and drilled before the chuck comes off",
            "of every bar ",
        ),
        false => ("every bar stands out alike", "face every bar, and "),
    };
    let mut lines = vec![format!(
        "{} parts. Make the first by every step of this sheet as far as its diameters are measured, with all its stops. {kept} \
         then stay as they are, and {alike}: the {marks} hold for the next part too, without touching and \
         without stops before the last cut. {along} not: {face}zero Z on its own face. Where {set} a finished \
         size, take the size expected.",
        choice.parts
    )];
    let mut brought_back = false;
    for turnings in &figures.turnings {
        if let Some(back) = ring_back(figures, turnings)? {
            lines.push(back);
            brought_back = true;
        }
    }
    let several = figures.turnings.iter().any(|turnings| turnings.len() > 1);
    lines.push(format!(
        "Changing the tool or moving the compound slide costs the zero: edges, undercuts and cones are done when the diameters \
         of all parts are.{}",
        match figures.clampings.len() {
            1 => "",
            _ => " So is the other end: first the first ends of all parts, then the other ends, the first of them again by every \
                  step.",
        }
    ));
    let mut some: Vec<String> = choice
        .measured
        .iter()
        .take(6)
        .map(ToString::to_string)
        .collect();
    if choice.measured.len() > some.len() {
        some.push(String::from("and so on"));
    }
    let (before_it_goes, held) = match is_driven(figures.common.job) {
        true => ("it comes off the centres", "between the centres"),
        false => ("the jaws are opened", "in the jaws"),
    };
    lines.push(format!(
        "Measure {}, at {}, every diameter of them, before {}; {}. The second proves that the zero came back with a fresh bar \
         {}.",
        match choice.measured.len() == choice.parts as usize {
            true => String::from("every part"),
            false => format!("parts {}", some.join(", ")),
        },
        match figures.common.units {
            Units::Metric => "20 degC",
            Units::Inch => "68 degF (20 degC)",
        },
        before_it_goes,
        match ring {
            // Set on what was measured, a ring holds what was off: to move it by that as well would be twice.
            Ring::Settable if brought_back => {
                "wherever the ring is then set on a finished size, in a step or as above, take the size measured in place of the \
                 one expected, and correct nothing else"
            }
            Ring::Settable if several => {
                "wherever a step sets the ring on a finished size, take the size measured in place of the one expected, and \
                 before the next part set the ring by what the last diameter is off, at its last mark"
            }
            Ring::Settable => "set the ring by what it is off, at its last mark, before the next part",
            Ring::Readout => {
                "set the readout to what each diameter measured, at the last place of that diameter, before the next is cut"
            }
            Ring::Fixed => {
                "move the marks of each diameter by what it is off, in whole marks, before the next part"
            }
        },
        held,
    ));
    Ok(lines)
}

fn wear_words(
    figures: &Figures<'_>,
    choice: &BatchChoice,
    each: Option<Each>,
    life: Option<ToolLife>,
    in_cut: Duration,
) -> String {
    let Some(life) = life else {
        return String::from(
            "How fast the edge wears is not known for this material and tool: sizes are taken to stay. Measure more often where \
             two parts measured one after the other differ.",
        );
    };
    let u = figures.common.units;
    let lasts = match (life.minutes() / in_cut.minutes()).floor().max(1.0) {
        1.0 => String::from("1 part"),
        parts => format!("{parts} parts"),
    };
    // Less than the last digit of a size is not said as nothing.
    let drift = |drift: DiameterError| {
        let least = match u {
            Units::Metric => DiameterError::computed_trade(0.001),
            Units::Inch => DiameterError::computed_trade(0.00254),
        };
        match drift < least {
            true => format!("less than {}", least.people(u)),
            false => format!("about {}", drift.people(u)),
        }
    };
    let life = format!("it lasts about {:.0} min in cut, {lasts}", life.minutes());
    match each {
        Some(_) => format!(
            "The edge wears: sizes would grow by {} from part to part; {life}.",
            drift(choice.drift_per_part)
        ),
        None => format!(
            "The edge wears: sizes grow by {} {}. Look at the edge with a glass after every measured part; {life}. After it was \
             honed or changed its zero is lost: the next part is a first one.",
            drift(choice.drift_between),
            match choice.measured.len() {
                0..=2 => "from the second part to the last",
                _ => "from one measured part to the next",
            }
        ),
    }
}
