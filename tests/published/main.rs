//! Every published or derived check value of this stage, one trial a case.
//!
//! `checks.json` holds the cases, each with its source; README.md says what is in it and what is
//! not. A case fails when a value is off, and also when a field of it is left unanswered.

mod bar;
mod case;
mod centre_hole;
mod chip;
mod dial;
mod diameter_error;
mod engagement;
mod facing;
mod finish;
mod force;
mod general_tolerance;
mod grip;
mod heat;
mod iso286;
mod least_chip;
mod preferred;
mod profiles;
mod speed;
mod spindle_steps;
mod support;
mod taper;
mod texture;
mod tool_life;
mod uncertainty;
mod uneven;
mod units;
mod vibration;

use std::collections::BTreeMap;
use std::process::ExitCode;
use std::sync::{Arc, Mutex};

use case::Case;
use libtest_mimic::{Arguments, Trial};

type Answer = fn(&Case) -> Result<(), String>;

/// Which module answers a topic.
const TOPICS: &[(&str, Answer)] = &[
    ("units", units::answer),
    ("speed", speed::answer),
    ("spindle-step", spindle_steps::answer),
    ("time", speed::answer),
    ("force", force::answer),
    ("force-components", force::answer),
    ("light-cut", engagement::answer),
    ("power", force::answer),
    ("finish-arc", finish::answer),
    ("finish-edge", finish::answer),
    ("finish-inverse", finish::answer),
    ("least-chip", least_chip::answer),
    ("finish-uneven", uneven::answer),
    ("beam", bar::answer),
    ("diameter-error", diameter_error::answer),
    ("vibration", vibration::answer),
    ("chip", chip::answer),
    ("support", support::answer),
    ("dial", dial::answer),
    ("texture", texture::answer),
    ("preferred", preferred::answer),
    ("iso2768", general_tolerance::answer),
    ("iso286", iso286::answer),
    ("centre", centre_hole::answer),
    ("heat", heat::answer),
    ("tool-life", tool_life::answer),
    ("taper", taper::answer),
    ("facing", facing::answer),
    ("tool-height", facing::tool_height),
    ("grip", grip::answer),
    ("tool", grip::tool),
    ("uncertainty", uncertainty::answer),
    ("probability", uncertainty::probability),
    ("aim", uncertainty::aim),
];

fn answer(case: &Case) -> Result<(), String> {
    let (_, answer) = TOPICS
        .iter()
        .find(|(topic, _)| *topic == case.topic())
        .ok_or_else(|| format!("no module answers the topic {}", case.topic()))?;
    answer(case)?;
    case.nothing_left()
}

fn main() -> ExitCode {
    let arguments = Arguments::from_args();
    let cases = match case::read(include_str!("checks.json")) {
        Ok(cases) => cases,
        Err(trouble) => {
            eprintln!("checks.json: {trouble}");
            return ExitCode::FAILURE;
        }
    };
    let stored = match profiles::stored() {
        Ok(stored) => stored,
        Err(trouble) => {
            eprintln!("profile_data.json: {trouble}");
            return ExitCode::FAILURE;
        }
    };
    // Topic: cases passed, cases run.
    let tally = Arc::new(Mutex::new(BTreeMap::<String, (usize, usize)>::new()));
    let trials = cases
        .into_iter()
        .map(|case| {
            let tally = Arc::clone(&tally);
            let (id, topic) = (case.id().to_owned(), case.topic().to_owned());
            Trial::test(id, move || {
                let result = answer(&case);
                if let Ok(mut tally) = tally.lock() {
                    let (passed, run) = tally.entry(topic).or_default();
                    *passed += usize::from(result.is_ok());
                    *run += 1;
                }
                result.map_err(|trouble| {
                    format!("{trouble}\n  source: {} ({})", case.source(), case.kind()).into()
                })
            })
        })
        .chain(stored.into_iter().map(|stored| {
            Trial::test(format!("profile/{}", stored.name()), move || {
                stored.answer().map_err(Into::into)
            })
        }))
        .collect();
    let conclusion = libtest_mimic::run(&arguments, trials);
    if let Ok(tally) = tally.lock()
        && !tally.is_empty()
    {
        println!("{:<20}{:>8}{:>8}", "topic", "passed", "run");
        for (topic, _) in TOPICS {
            if let Some((passed, run)) = tally.get(*topic) {
                println!("{topic:<20}{passed:>8}{run:>8}");
            }
        }
    }
    conclusion.exit_code()
}
