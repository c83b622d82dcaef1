//! The C interface: its header, its layout, and C programs that use it.
//!
//! `TW_BLESS=1 cargo test --test c` writes `include/turnwright.h` and the snapshots of this folder
//! anew; the difference is what a change does to the interface.
//!
//! A tool that is missing makes its trials ignored, by name; with CI=true they fail instead.
#![allow(clippy::unwrap_used, clippy::panic)]

mod allocations;
mod bars;
mod columns;
mod examples;
mod finish;
mod header;
mod kernels;
mod layout;
mod limits;
mod makers;
mod plans;
mod programs;
mod swapped;
mod symbols;
mod threads;
mod tools;
mod twins;
mod uncertainty;

use libtest_mimic::{Arguments, Failed, Trial};

use tools::Tool;

/// What a trial returns.
type Outcome = Result<(), Failed>;

/// A trial that needs tools.
fn trial(name: &str, needs: &[Tool], run: impl FnOnce() -> Outcome + Send + 'static) -> Trial {
    let missing: Vec<&str> = needs
        .iter()
        .filter(|tool| !tool.is_here())
        .map(|tool| tool.name())
        .collect();
    if missing.is_empty() {
        return Trial::test(name, run);
    }
    let missing = missing.join(", ");
    let in_ci = std::env::var("CI").is_ok_and(|ci| ci == "true");
    let words = format!("{missing} is not here");
    Trial::test(format!("{name} [needs {missing}]"), move || {
        Err(Failed::from(words))
    })
    .with_ignored_flag(!in_ci)
}

/// `Err` with words where a condition does not hold.
fn check(holds: bool, words: impl FnOnce() -> String) -> Outcome {
    if holds {
        Ok(())
    } else {
        Err(Failed::from(words()))
    }
}

/// Compares with a committed file, or writes it when `TW_BLESS=1`.
fn snapshot(file: &str, now: &str) -> Outcome {
    let path = tools::root().join(file);
    let then = std::fs::read_to_string(&path).unwrap_or_default();
    if then == now {
        return Ok(());
    }
    if std::env::var("TW_BLESS").is_ok_and(|bless| bless == "1") {
        return std::fs::write(&path, now).map_err(Failed::from);
    }
    let place = then
        .lines()
        .zip(now.lines())
        .position(|(then, now)| then != now)
        .unwrap_or_else(|| then.lines().count().min(now.lines().count()));
    let line = |text: &str| text.lines().nth(place).unwrap_or("(the end)").to_owned();
    Err(Failed::from(format!(
        "{file} is not what the source gives; first at line {}:\n  committed: {}\n  source:    {}\n\
         If the change is meant, run TW_BLESS=1 cargo test --test c and commit the file.",
        place + 1,
        line(&then),
        line(now),
    )))
}

fn main() {
    // Trials run side by side; the header must be written before any of them compiles against it.
    if std::env::var("TW_BLESS").is_ok_and(|bless| bless == "1")
        && let Err(trouble) = snapshot(header::FILE, &header::generated())
    {
        eprintln!("{}: {:?}", header::FILE, trouble.message());
        std::process::exit(1);
    }
    let trials = [
        header::trials(),
        layout::trials(),
        symbols::trials(),
        makers::trials(),
        swapped::trials(),
        programs::trials(),
        columns::trials(),
        examples::trials(),
        twins::trials(),
        kernels::trials(),
        bars::trials(),
        finish::trials(),
        limits::trials(),
        uncertainty::trials(),
        plans::trials(),
        threads::trials(),
    ];
    let conclusion = libtest_mimic::run(
        &Arguments::from_args(),
        trials.into_iter().flatten().collect(),
    );
    if !conclusion.has_failed() {
        // Programs of a failed run stay, to be looked at.
        let _ = std::fs::remove_dir_all(tools::folder());
    }
    conclusion.exit();
}
