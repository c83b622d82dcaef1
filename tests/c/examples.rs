//! Every scalar call of the header names the source of its formula, and shows a call with figures
//! that come of it.

use std::collections::BTreeMap;
use std::fmt::Write as _;

use libtest_mimic::{Failed, Trial};

use crate::tools::{Language, Tool, build, printed, root, run_of, write};
use crate::{check, header, trial};

pub fn trials() -> Vec<Trial> {
    let mut trials = vec![
        trial("examples/every_scalar_call_names_its_source", &[], || {
            without(|door| sources(door) != 1, "have no line \"Source: ...\"")
        }),
        trial("examples/every_scalar_call_shows_a_call", &[], || {
            without(
                |door| door.examples().is_empty(),
                "have no \"Example: ...\"",
            )
        }),
        trial("examples/half_a_unit_of_the_last_digit_counts", &[], digits),
    ];
    for language in [Language::C99, Language::C11] {
        trials.push(trial(
            &format!("examples/every_figure_is_what_the_call_answers_as_{language:?}"),
            &[Tool::Cc],
            move || figures(language),
        ));
    }
    trials
}

/// A function of the header, with the comment above it.
struct Door {
    name: String,
    comment: Vec<String>,
    /// Type and name, the type with its star.
    arguments: Vec<(String, String)>,
}

/// One call that a comment shows.
struct Example {
    /// Up to its semicolon, without it.
    call: String,
    said: Vec<Said>,
}

/// What is said of an output.
enum Said {
    /// An expression and its figure.
    Is(String, String),
    /// A text, and a piece of it as C writes it.
    Has(String, String),
}

impl Said {
    fn of(one: &str) -> Option<Self> {
        let owned = |(what, rest): (&str, &str)| (what.to_owned(), rest.to_owned());
        if let Some((what, piece)) = one.split_once(" has ").map(owned) {
            return piece.starts_with('"').then_some(Self::Has(what, piece));
        }
        let (what, figure) = one.split_once(" is ").map(owned)?;
        Some(Self::Is(what, figure))
    }

    fn what(&self) -> &str {
        match self {
            Self::Is(what, _) | Self::Has(what, _) => what,
        }
    }
}

impl Door {
    /// Figures in, figures out: neither a column nor a text nor a plan.
    fn is_scalar(&self) -> bool {
        let has = |what: &str| self.arguments.iter().any(|(of, _)| of.contains(what));
        has("tw_error *") && !self.name.ends_with("_column") && !has("char **") && !has("tw_plan")
    }

    fn outputs(&self) -> impl Iterator<Item = (&str, &str)> {
        self.arguments.iter().filter_map(|(of, name)| {
            let of = of.strip_suffix('*')?.trim_end();
            (!of.starts_with("const ") && of != "struct tw_error").then_some((of, name.as_str()))
        })
    }

    /// What its comment shows, each up to an empty line or the next one.
    fn examples(&self) -> Vec<String> {
        let mut found: Vec<String> = Vec::new();
        let mut inside = false;
        for line in &self.comment {
            if let Some(begun) = line.strip_prefix("Example: ") {
                found.push(begun.to_owned());
                inside = true;
            } else if line.is_empty() {
                inside = false;
            } else if inside && let Some(last) = found.last_mut() {
                let _ = write!(last, " {}", line.trim_start());
            }
        }
        found
    }

    /// `tw_x(...); out.mm is 1.50, other.n is 20.0 and third is TW_Y.`, `tw_y(...); text has "z".`
    fn example(&self, text: &str) -> Result<Example, Failed> {
        let wrong = |what: &str| Failed::from(format!("{}: {what}: {text}", self.name));
        let (call, said) = text.split_once("; ").ok_or_else(|| wrong("no statement"))?;
        let said = said.strip_suffix('.').ok_or_else(|| wrong("no end"))?;
        if !call.starts_with(&format!("{}(", self.name)) {
            return Err(wrong("another call"));
        }
        let said = said.replace(" and ", ", ");
        let said: Option<Vec<Said>> = said.split(", ").map(Said::of).collect();
        let said = said.ok_or_else(|| wrong("no figure"))?;
        for (_, name) in self.outputs() {
            let asked = call.contains(&format!("&{name}"));
            let told = said
                .iter()
                .any(|one| words(one.what()).any(|word| word == name));
            if asked != told {
                return Err(wrong(&format!("{name} is asked for or told of, not both")));
            }
        }
        let call = call.to_owned();
        Ok(Example { call, said })
    }
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|c: char| !c.is_ascii_alphanumeric() && c != '_')
}

/// The functions of the header.
fn doors() -> Vec<Door> {
    let text = std::fs::read_to_string(root().join(header::FILE)).unwrap();
    let mut doors = Vec::new();
    let mut comment: Vec<String> = Vec::new();
    let mut prototype = String::new();
    for line in text.lines() {
        if !prototype.is_empty() || line.starts_with("TW_CHECK") || line.starts_with("void tw_") {
            let _ = write!(prototype, "{} ", line.trim());
            if line.ends_with(';') {
                doors.extend(door(&prototype, std::mem::take(&mut comment)));
                prototype.clear();
            }
        } else if let Some(said) = line.strip_prefix("//") {
            comment.push(said.strip_prefix(' ').unwrap_or(said).to_owned());
        } else {
            comment.clear();
        }
    }
    doors
}

fn door(prototype: &str, comment: Vec<String>) -> Option<Door> {
    let (front, arguments) = prototype.split_once('(')?;
    let (arguments, _) = arguments.rsplit_once(')')?;
    let name = front.rsplit([' ', '*']).next()?.to_owned();
    let arguments = arguments
        .split(',')
        .filter_map(|one| {
            let one = one.trim();
            let at = one.rfind([' ', '*'])? + 1;
            Some((one[..at].trim_end().to_owned(), one[at..].to_owned()))
        })
        .collect();
    Some(Door {
        name,
        comment,
        arguments,
    })
}

/// How many lines of a comment name a source; one that goes on in the next line is none.
fn sources(door: &Door) -> usize {
    let lines = door.comment.iter();
    lines
        .clone()
        .zip(lines.skip(1))
        .filter(|(line, next)| line.starts_with("Source: ") && next.starts_with("Example: "))
        .count()
}

fn without(lacks: impl Fn(&Door) -> bool, words: &str) -> Result<(), Failed> {
    let doors = doors();
    let scalar: Vec<&Door> = doors.iter().filter(|door| door.is_scalar()).collect();
    check(scalar.len() > 150, || {
        format!("only {} scalar calls were found", scalar.len())
    })?;
    let found: Vec<&str> = scalar
        .iter()
        .filter(|door| lacks(door))
        .map(|door| door.name.as_str())
        .collect();
    check(found.is_empty(), || format!("{} {words}", found.join(", ")))
}

/// One program makes every call and prints what came of it beside what was said.
fn figures(language: Language) -> Result<(), Failed> {
    let mut program = String::from(
        "#include <stdio.h>
#include <turnwright.h>

static void print(int which, double is, double said)
{
    printf(\"%d %.17g %.17g\\n\", which, is, said);
}

int main(void)
{
    tw_status status;
    tw_plan *plan;
",
    );
    let job = std::fs::read_to_string(root().join("examples/c/job.json"))?;
    let _ = writeln!(
        program,
        "    if (tw_plan_open({job:?}, &plan, NULL) != TW_OK)\n        return 1;"
    );
    let doors = doors();
    let mut told: BTreeMap<usize, (String, String, bool)> = BTreeMap::new();
    let mut examples = 0;
    let mut refused = Vec::new();
    for door in &doors {
        for text in door.examples() {
            let example = match door.example(&text) {
                Ok(example) => example,
                Err(trouble) => {
                    refused.push(trouble.message().unwrap_or_default().to_owned());
                    continue;
                }
            };
            examples += 1;
            program.push_str("    {\n");
            let mut after = String::new();
            for (of, name) in door.outputs() {
                if !example.call.contains(&format!("&{name}")) {
                    continue;
                }
                let _ = writeln!(program, "        {of} {name};");
                match of {
                    "struct tw_step" => {
                        let _ = writeln!(program, "        tw_step_init(&{name});");
                    }
                    "struct tw_expected" => {
                        let _ = writeln!(program, "        tw_expected_init(&{name});");
                    }
                    "struct tw_surface" => {
                        let _ = writeln!(program, "        tw_surface_init(&{name});");
                    }
                    "struct tw_plan *" => {
                        let _ = writeln!(after, "        tw_plan_free(&{name});");
                    }
                    "char *" => {
                        let _ = writeln!(after, "        tw_text_free({name});");
                    }
                    _ => {}
                }
            }
            let _ = writeln!(program, "        status = {};", example.call);
            for said in example.said {
                let which = told.len();
                let (expression, figure, exact) = match &said {
                    Said::Is(what, figure) => {
                        let whole = |(of, name)| of == "int32_t" && name == what;
                        let counted = what.contains("_count(");
                        let exact =
                            counted || figure.starts_with("TW_") || door.outputs().any(whole);
                        (format!("(double)({what})"), figure.as_str(), exact)
                    }
                    Said::Has(what, piece) => {
                        (format!("strstr({what}, {piece}) != NULL"), "1", true)
                    }
                };
                let _ = writeln!(
                    program,
                    "        print({which}, status == TW_OK ? {expression} : NAN, {figure});"
                );
                let what = format!("{}: {expression}", door.name);
                told.insert(which, (what, figure.to_owned(), exact));
            }
            program.push_str(&after);
            program.push_str("    }\n");
        }
    }
    program.push_str("    tw_plan_free(&plan);\n    return 0;\n}\n");
    check(refused.is_empty(), || refused.join("\n"))?;
    check(examples > 150, || format!("only {examples} examples"))?;
    let seen = printed(&mut run_of(build(
        &write("examples.c", &program),
        language,
        &[],
    )?))?;
    let mut wrong = Vec::new();
    for line in seen.lines() {
        let mut parts = line.split(' ');
        let mut next = || parts.next().ok_or("a short line");
        let (what, figure, exact) = told.remove(&next()?.parse()?).ok_or("a strange line")?;
        let (is, said): (f64, f64) = (next()?.parse()?, next()?.parse()?);
        if !(if exact {
            is == said
        } else {
            agrees(is, &figure)
        }) {
            wrong.push(format!("{what} is {is}, not {figure}"));
        }
    }
    check(told.is_empty(), || format!("nothing came of {told:?}"))?;
    check(wrong.is_empty(), || wrong.join("\n"))
}

/// To half a unit of the last digit that is written. Fewer than three digits would hold for almost
/// any answer.
fn agrees(is: f64, figure: &str) -> bool {
    let Ok(said) = figure.parse::<f64>() else {
        return false;
    };
    let digits = figure.trim_start_matches(['-', '0', '.']);
    if digits.chars().filter(char::is_ascii_digit).count() < 3 || figure.contains('e') {
        return false;
    }
    let behind = figure.split_once('.').map_or(0, |(_, rest)| rest.len());
    let half = 0.5 / 10f64.powi(i32::try_from(behind).unwrap_or(i32::MAX));
    // Where the answer lies on the half itself, either rounding is right.
    (is - said).abs() <= half * (1.0 + 1e-9)
}

fn digits() -> Result<(), Failed> {
    for (is, figure, expected) in [
        (716.197, "716.2", true),
        (716.249, "716.2", true),
        (716.251, "716.2", false),
        (-0.0204, "-0.0200", false),
        (-0.02004, "-0.0200", true),
        (0.0204, "-0.0204", false),
        (40.0, "40", false),
        (2600.4, "2600", true),
        (f64::NAN, "2600", false),
        (0.00012, "1.20e-4", false),
    ] {
        check(agrees(is, figure) == expected, || {
            format!("{is} agrees with {figure}: {}", !expected)
        })?;
    }
    Ok(())
}
