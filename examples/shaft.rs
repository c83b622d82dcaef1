//! Plans a job and prints its operation sheet.
//!
//! `cargo run --release --example shaft` plans the embedded demo shaft (invented, on an invented
//! lathe); `-- FILE` plans a job from a TOML file with the fields of the question `plan` at its top
//! level; `--json` prints the answer of the document door instead of the sheet, `--page` a page of HTML
//! to print, `--svg` the picture of the first clamping and `--svg=2` that of the second.

use std::io::Write;
use std::process::ExitCode;

use turnwright::document::{self, plan::Question};

const DEMO: &str = include_str!("jobs/metric_radius_dial.toml");

/// What is printed.
#[derive(Clone, Copy, PartialEq)]
enum Form {
    Sheet,
    Json,
    Page,
    /// The picture of a clamping, counted from 1.
    Svg(usize),
}

fn main() -> ExitCode {
    let mut file = None;
    let mut form = Form::Sheet;
    for argument in std::env::args().skip(1) {
        match argument.as_str() {
            "--json" => form = Form::Json,
            "--page" => form = Form::Page,
            "--svg" => form = Form::Svg(1),
            "--svg=2" => form = Form::Svg(2),
            _ if argument.starts_with('-') || file.is_some() => {
                eprintln!("usage: shaft [--json | --page | --svg | --svg=2] [FILE]");
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
    match print(&text, form) {
        Ok(out) => {
            let note = if file.is_none() && form == Form::Sheet {
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

/// The sheet of a job in TOML, in one form or another.
fn print(job: &str, form: Form) -> Result<String, Box<dyn std::error::Error>> {
    let fields: toml::Table = job.parse()?;
    let question = serde_json::json!({ "plan": fields }).to_string();
    if form == Form::Json {
        return Ok(document::answer(&question)?);
    }
    let sheet = Question::from_text(&question)?.answer()?;
    match form {
        Form::Page => Ok(sheet.page()?),
        Form::Svg(clamping) => {
            let picture = sheet.pictures()?.into_iter().nth(clamping - 1);
            picture.ok_or_else(|| "this job has one clamping".into())
        }
        Form::Sheet | Form::Json => Ok(sheet.to_string()),
    }
}
