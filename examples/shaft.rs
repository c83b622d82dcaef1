//! Plans a job and prints its operation sheet.
//!
//! `cargo run --release --example shaft` plans the embedded demo shaft (invented, on an invented
//! lathe); `-- FILE` plans a job from a TOML file with the fields of the question `plan` at its top
//! level; `--json` prints the answer of the document door instead of the sheet.

use std::io::Write;
use std::process::ExitCode;

use turnwright::document::{self, plan::Question};

const DEMO: &str = include_str!("jobs/metric_radius_dial.toml");

fn main() -> ExitCode {
    let mut file = None;
    let mut json = false;
    for argument in std::env::args().skip(1) {
        match argument.as_str() {
            "--json" => json = true,
            _ if argument.starts_with('-') || file.is_some() => {
                eprintln!("usage: shaft [--json] [FILE]");
                return ExitCode::FAILURE;
            }
            _ => file = Some(argument),
        }
    }
    let text = match &file {
        None => DEMO.to_owned(),
        Some(path) => match std::fs::read_to_string(path) {
            Ok(text) => text,
            Err(trouble) => {
                eprintln!("{path}: {trouble}");
                return ExitCode::FAILURE;
            }
        },
    };
    match print(&text, json) {
        Ok(out) => {
            let note = if file.is_none() && !json {
                "An invented job on an invented lathe, to show the sheet.\n"
            } else {
                ""
            };
            // A reader that stops reading, such as `head`, is no failure.
            let _ = writeln!(std::io::stdout(), "{note}{out}");
            ExitCode::SUCCESS
        }
        Err(trouble) => {
            eprintln!("{}: {trouble}", file.as_deref().unwrap_or("the demo job"));
            ExitCode::FAILURE
        }
    }
}

/// The sheet of a job in TOML, or the answer of the document door.
fn print(job: &str, json: bool) -> Result<String, Box<dyn std::error::Error>> {
    let fields: toml::Table = job.parse()?;
    let question = serde_json::json!({ "plan": fields }).to_string();
    if json {
        return Ok(document::answer(&question)?);
    }
    Ok(Question::from_text(&question)?.answer()?.to_string())
}
