//! How far the bar springs, by finite elements and slices of the edge: nothing of the crate's own.

use serde_json::Value;
use turnwright::plan::{Job, Sheet, Step, StepKind};
use turnwright::{Material, Surface};

use super::force_and_power::along_the_edge;
use super::within_limits::between;
use crate::simulated_lathe::beam::{Held, compliances};
use crate::simulated_lathe::trial::printed;

/// Of the main force, what pushes the bar off normal to the edge: common practice, no source, 0.3 to 0.6.
const NORMAL: f64 = 0.5;
/// Places on a surface at which its spring is looked at.
const PLACES: u32 = 4;

/// What is between the jaws and the last shoulder, and what is turned of the surfaces, from the jaws outwards.
fn sections(
    bar: f64,
    out: f64,
    surfaces: &[Surface],
    at: usize,
    all_roughed: bool,
) -> Vec<(f64, f64)> {
    let long = |surfaces: &[Surface]| surfaces.iter().map(|s| s.length().mm()).sum::<f64>();
    let mut sections = vec![(bar, out - long(surfaces))];
    let turned = if all_roughed { 0 } else { at + 1 };
    for done in surfaces[turned..].iter().rev() {
        sections.push((done.limits().middle().mm(), done.length().mm()));
    }
    if all_roughed {
        return sections;
    }
    sections.push((surfaces[at].limits().middle().mm(), long(&surfaces[..=at])));
    sections
}

/// The largest spring of the finishing cuts of the first clamping, on the diameter and as a share of its zone.
pub fn largest(job: &Job, asked: &Value, sheet: &Sheet) -> Option<f64> {
    let text = |kind: StepKind| {
        sheet
            .steps
            .iter()
            .find(|s| s.kind == kind)
            .map(|s| s.text.as_str())
    };
    let before_turning: Vec<&Step> = sheet
        .steps
        .iter()
        .take_while(|s| s.kind != StepKind::TurnRound)
        .collect();
    let facing = if asked["stock"]["diameter"].as_str()?.ends_with("in") {
        1.016
    } else {
        1.0
    };
    let centres = before_turning.iter().find_map(|s| {
        printed(
            &s.text,
            "The bar between the centres, ",
            " from face to face",
        )
    });
    let again = before_turning.iter().find(|s| s.kind == StepKind::Reclamp);
    let out = match again {
        _ if between(asked) => centres?,
        Some(again) => printed(&again.text, "let ", " stand out")?,
        None => printed(text(StepKind::Clamp)?, "let ", " stand out")? - facing,
    };
    let material: Material = serde_json::from_value(asked["material"].clone()).ok()?;
    // The springs of a workshop lathe, as the plan supposes where none are given.
    let held = Held {
        modulus: 1000.0 * material.youngs_modulus()?.value.gpa(),
        chuck: 40_000.0,
        chuck_rotational: match between(asked) {
            true => 0.0,
            false => 150e6,
        },
        centre: again.map(|_| 15_000.0),
    };
    let surfaces = job.part().surfaces();
    let mut largest: f64 = 0.0;
    for (at, surface) in surfaces.iter().enumerate() {
        let last = before_turning.iter().rfind(|s| {
            s.kind == StepKind::FinishCut
                && s.surface
                    .is_some_and(|of| !of.other_end() && of.index() == at)
        })?;
        let reach: f64 = surfaces[..=at].iter().map(|s| s.length().mm()).sum();
        let places: Vec<f64> = (0..=PLACES)
            .map(|place| out - reach + surface.length().mm() * f64::from(place) / f64::from(PLACES))
            .collect();
        let give = compliances(
            &held,
            &sections(
                job.stock().diameter().mm(),
                out,
                surfaces,
                at,
                job.roughing_tool().is_some(),
            ),
            &places,
        );
        let give = give.into_iter().fold(0.0, f64::max);
        let (depth, feed) = (last.depth_of_cut?.mm(), last.feed?.mm_per_rev());
        let force = NORMAL * along_the_edge(asked, true, (depth, feed), f64::cos);
        largest = largest.max(2.0 * give * force / surface.limits().tolerance().mm());
    }
    Some(largest)
}
