//! Which limit forbids a job that no plan can do.

use super::LeastTimeAsk;
use super::limits::{PassLimit, PassLimits};
use crate::error::{Error, ErrorKind};

/// A limit of one of the two kinds of passes.
#[derive(Debug, Clone, Copy)]
struct Suspect {
    finishing: bool,
    limit: PassLimit,
}

/// The error for a checked question without a plan.
///
/// A limit is to blame when there is a plan without it. Where none is alone to blame, as few are named
/// as can be: from all of them, each that a plan can bear is put back.
#[cold]
pub(super) fn impossible(ask: &LeastTimeAsk<'_>) -> Error {
    let all_of = |finishing| PassLimit::ALL.map(|limit| Suspect { finishing, limit });
    // Where free roughing passes would do, the finishing passes are not to blame: else a finishing limit
    // would be named because without it one deep finishing pass could take all the metal.
    let kinds: &[bool] = match &ask.finishing {
        None => &[false],
        Some(_) if is_done_without(ask, &all_of(false)) => &[false, true],
        Some(_) => &[true, false],
    };
    let suspects: Vec<Suspect> = kinds.iter().flat_map(|kind| all_of(*kind)).collect();
    let alone = suspects
        .iter()
        .find(|suspect| is_done_without(ask, &[**suspect]));
    let blamed = match alone {
        Some(suspect) => vec![*suspect],
        None => {
            let mut without = suspects.clone();
            for suspect in &suspects {
                let fewer: Vec<Suspect> = without
                    .iter()
                    .filter(|s| s.finishing != suspect.finishing || s.limit != suspect.limit)
                    .copied()
                    .collect();
                if is_done_without(ask, &fewer) {
                    without = fewer;
                }
            }
            without
        }
    };
    let Some(first) = blamed.first() else {
        return Error::internal("a division into passes with nothing that forbids it");
    };
    let words = |suspect: &Suspect| {
        let [_, limit, _] = suspect.limit.words();
        let kind = if suspect.finishing {
            "finishing"
        } else {
            "roughing"
        };
        format!("{limit} ({kind})")
    };
    let names: Vec<String> = blamed.iter().map(words).collect();
    let mut remedies: Vec<&str> = Vec::new();
    for suspect in &blamed {
        let [_, _, remedy] = suspect.limit.words();
        if !remedies.contains(&remedy) {
            remedies.push(remedy);
        }
    }
    let [field, ..] = first.limit.words();
    let kind = if first.finishing {
        "finishing"
    } else {
        "roughing"
    };
    Error::new(
        ErrorKind::Impossible,
        format!("{kind}.{field}"),
        format!(
            "{} divisions of {:.10} down to {}",
            ask.metal.divisions, ask.metal.division, ask.metal.finished
        ),
        format!("passes that {} allows", names.join(" together with ")),
        remedies.join("; and "),
    )
}

fn is_done_without(ask: &LeastTimeAsk<'_>, suspects: &[Suspect]) -> bool {
    let reduced = |limits: &PassLimits, finishing: bool| {
        suspects
            .iter()
            .filter(|suspect| suspect.finishing == finishing)
            .fold(limits.clone(), |limits, suspect| {
                limits.without(suspect.limit)
            })
    };
    let mut relaxed = ask.clone();
    relaxed.roughing = reduced(&ask.roughing, false);
    relaxed.finishing = ask
        .finishing
        .as_ref()
        .map(|(kind, limits)| (*kind, reduced(limits, true)));
    // Whether there is a plan does not depend on what a change costs, and one lane is quicker.
    relaxed.change_time = None;
    relaxed.solve().is_some()
}
