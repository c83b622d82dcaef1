//! Words that keep people whole, and the limits of what the sheet knows.

use super::job::Job;
use crate::advice::hazard;
use crate::caution::{Caution, Severity};
use crate::shop::holding::HoldingKind;

/// The first designation of the material, for words.
pub(super) fn short_name(job: &Job) -> &str {
    hazard::short_name(&job.material)
}

/// Words that keep people whole, the serious ones first: common practice, no source.
pub(super) fn safety(job: &Job, kind: HoldingKind) -> Vec<Caution> {
    let danger = |code, text: &str| Caution::new(Severity::Danger, code, text);
    let mut cautions = vec![
        danger(
            "chuck_key",
            "The chuck key leaves the chuck before the hand leaves the key.",
        ),
        danger(
            "eyes_and_clothing",
            "Guard shut, eyes protected. No gloves, loose sleeves, rings or long hair near a turning spindle; nobody reaches over the work.",
        ),
        danger(
            "spindle_at_rest",
            "Measure, clear chips and change steps only with the spindle at rest. Chips are taken with a hook, never by hand. Never slow a chuck by hand.",
        ),
        danger(
            "know_the_stop",
            "Know where the stop is before starting. After a power failure the machine must not start by itself. Never leave it running.",
        ),
    ];
    if job.stock.length().mm() > STICKS_OUT {
        cautions.push(danger(
            "bar_behind_spindle",
            "A bar that sticks out of the rear of the spindle whips: nothing out there without a guarded tube.",
        ));
    }
    if kind == HoldingKind::BetweenCentres {
        cautions.push(danger(
            "dog_flies_round",
            "Dog, tail and screw fly round with the work and catch whatever comes near: a guard over dog and driver plate, no long \
             screw, no hand, sleeve or rag beside them, the carriage never up to them. Nothing is parted off between centres.",
        ));
    }
    if kind != HoldingKind::Chuck {
        cautions.push(Caution::new(
            Severity::Warning,
            "locks",
            "Tailstock and barrel locked before every start; a centre that comes loose throws the bar.",
        ));
    }
    cautions.extend(hazard::of_material(&job.material, short_name(job)));
    cautions
}

/// A bar longer than this may reach through the spindle, in mm: judgement, no source.
const STICKS_OUT: f64 = 400.0;

pub(super) fn limits_of_the_answer() -> [Caution; 2] {
    [
        Caution::new(
            Severity::Note,
            "forces_scatter",
            "Forces, powers and springs are good to about 30 %: bars of one name differ, and the constants are from memory. \
             Chatter, hardness and hidden stresses of this bar are not known.",
        ),
        Caution::new(
            Severity::Note,
            "time_of_cutting_only",
            "Times are of cutting; handling, measuring and setting come on top.",
        ),
    ]
}
