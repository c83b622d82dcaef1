//! What lathe, tool and asker allow.

use serde_json::Value;
use turnwright::plan::{Job, Sheet, StepKind};

use super::force_and_power::{along_the_edge, at_this_speed, efficiency};
use super::spring;
use crate::simulated_lathe::trial::printed;

/// A tool holder reaches this far to the left of its tip, in mm: judgement, no source.
const HOLDER: f64 = 10.0;
/// Share of its zone that the spring of a bar may take: judgement, no source.
const SPRING: f64 = 0.33;
/// Depth over feed: common practice, no source, about 4 to 10.
const SLENDER: f64 = 10.0;

/// Whether a job asks for two centres.
pub fn between(asked: &Value) -> bool {
    asked["holding"] == "between_centres"
}

/// What lathe, tool and asker allow, and the stops that speak of what was planned.
pub fn within_limits(job: &Job, asked: &Value, sheet: &Sheet) -> Result<(), String> {
    let most = &asked["preferences"]["largest_depth"];
    let fixed = &asked["preferences"]["depth"];
    let fixed = fixed
        .as_str()
        .map(|text| text.parse::<turnwright::DepthOfCut>().unwrap());
    let most = most
        .as_str()
        .map(|text| text.parse::<turnwright::DepthOfCut>().unwrap());
    // By the spring that is reckoned in, a cut is deeper than the tip goes: hundredths.
    let corrected = asked["preferences"]["correct_for_spring"] == true;
    let reckoned = if corrected { 0.02 } else { 1e-9 };
    let (mut jaws, mut centre) = (f64::INFINITY, false);
    let mut before = job.stock().diameter().mm();
    for (at, step) in sheet.steps.iter().enumerate() {
        match step.kind {
            // A centre stands before the face from here on: nothing goes there, and the face is done.
            StepKind::Reclamp => centre = true,
            StepKind::Face => {
                holds!(!centre, "step {at} faces an end with a centre in it");
            }
            StepKind::ZeroZ => {
                let into = match between(asked) {
                    true => "dog at Z ",
                    false => "jaws at Z ",
                };
                jaws = -printed(&step.text, into, ")").unwrap();
            }
            StepKind::TurnRound => {
                before = job.stock().diameter().mm();
                // Between the same two centres it stays in the face.
                centre = between(asked);
            }
            StepKind::Measure if step.text.contains("at three places") => {
                let last = step.diameter.mm();
                let bound = printed(&step.text, "Below ", ": good already").unwrap();
                let again = printed(&step.text, "Above ", ": leave").unwrap();
                holds!(
                    bound <= last && last < again,
                    "{last} mm is expected, and its stop takes {bound} to {again}"
                );
            }
            _ => {}
        }
        // Positions are printed to hundredths of a millimetre or thousandths of an inch.
        if let Some(z) = step.z {
            holds!(
                -z.mm() + HOLDER <= jaws + 0.03,
                "step {at}: {z} with jaws at {jaws} mm"
            );
            holds!(
                !centre || z.mm() <= 0.0,
                "step {at}: {z} with a centre at the face"
            );
        }
        let (Some(depth), Some(n)) = (step.depth_of_cut, step.spindle_speed) else {
            continue;
        };
        holds!(
            most.is_none_or(|most| depth.mm() <= most.mm() + reckoned),
            "deeper than {most:?}: {depth}"
        );
        if let (Some(fixed), StepKind::RoughCut) = (fixed, step.kind) {
            holds!(
                (depth.mm() - fixed.mm()).abs() < 1e-6_f64.max(reckoned),
                "roughing by {depth}, not by {fixed}"
            );
        }
        let feed = step.feed.unwrap().mm_per_rev();
        holds!(
            depth.mm() <= SLENDER * feed + reckoned,
            "a chip of {depth} by {feed} mm"
        );
        if let Some(power) = job.lathe().power() {
            let speed = std::f64::consts::PI * (before - depth.mm()) * n.rpm() / 60_000.0;
            let needed = along_the_edge(
                asked,
                step.kind == StepKind::FinishCut,
                (depth.mm(), feed),
                |_| 1.0,
            ) * speed
                / 1000.0;
            let given = efficiency(asked) * power.kw() * at_this_speed(asked, n.rpm());
            // Four hundred slices are good to a thousandth.
            holds!(
                needed <= given * 1.001,
                "cut {at} needs {needed} kW of {given} kW at {n}"
            );
        }
        before = step.diameter.mm();
    }
    // The specific force of one bar is up to 30 % off that of another: common practice, no source.
    let said = |code: &str| sheet.cautions.iter().any(|c| c.code() == code);
    if let (Some(spring), false) = (
        spring::largest(job, asked, sheet),
        said("support_not_enough"),
    ) {
        holds!(
            spring <= 1.3 * SPRING,
            "the bar springs by {spring} of a zone, and nothing is said of it"
        );
    }
    Ok(())
}
