//! The document door: a question as JSON text in, its answer as JSON text out.
//!
//! A question is `{ "version": 1, "<question>": { fields } }`; the version may be left out. The
//! answer is `{ "version": 1, "<question>": { fields } }`. Quantities are text with units; counts and
//! plain ratios are numbers. A field that is `null` is left out; fields that a question does not know are
//! refused by name. An answer is
//! in the units of the question: inch where every length in it is inch, else metric, or as its field
//! `units` says; and so is an error.
//!
//! Limits of a diameter, wherever a question takes them, are `[smallest, largest]`; or an object with
//! `nominal` and one of `class` (`"h7"`), `upper_deviation` with `lower_deviation`, `plus_minus`, or
//! `general` (`"fine"`, `"medium"`, `"coarse"`, `"very_coarse"`); or text as a drawing has it:
//! `"40 +0.000 -0.016 mm"`, `"1.25 +/-0.0005 in"`, `"30 h7 mm"`.
//!
//! [`schema`] gives the fields of a question as a JSON Schema, with words for each, and which stand only
//! together.
//!
//! | question | what |
//! |---|---|
//! | [`spindle_speed`] | which spindle step |
//! | [`cutting`] | forces, power, torque of a cut |
//! | [`specific_force`] | the specific force of a bar, from a measured cut |
//! | [`finish`] | the roughness that the tool's shape leaves, and what comes on top |
//! | [`feed_for_finish`] | the feed for a wanted roughness |
//! | [`bar`] | how far a bar of any sections bends, on any support, and where it whips |
//! | [`support`] | chuck alone, a centre, between centres, or a steady |
//! | [`centre_hole`] | form and size of a centre hole, how deep, how fast |
//! | [`limits`] | the limits of a class such as h7, or of deviations |
//! | [`fit`] | what a hole and a shaft leave between them |
//! | [`within_reach`] | whether a tolerance is within reach of a lathe and an instrument |
//! | [`measuring_stops`] | after which cuts to measure |
//! | [`dial`] | the mark for a size |
//! | [`facing`] | time and speeds of a face |
//! | [`taper`] | the setting of slides and tailstock for a taper |
//! | [`growth`] | how far warm work grows |
//! | [`tool_life`] | how long an edge lasts, which speed pays |
//! | [`budget`] | how uncertain a size is, and how many parts come out good |
//! | [`verdict`] | what a measured size proves |
//! | [`aim`] | the size that is the cheapest to aim for |
//! | [`plan`] | the operation sheet |
//! | [`after_measurement`] | what a measured size says, and the sheet that follows |
//! | [`materials`] | the catalogue |
//! | [`quantities`] | the quantities, their ranges and units |

pub mod after_measurement;
pub mod aim;
pub mod bar;
pub mod budget;
pub mod centre_hole;
pub mod cutting;
pub mod dial;
pub mod facing;
pub mod feed_for_finish;
pub mod finish;
pub mod fit;
pub mod growth;
pub mod limits;
pub mod materials;
pub mod measuring_stops;
mod names;
pub mod plan;
pub mod quantities;
mod schema;
pub mod simulated;
pub mod specific_force;
pub mod spindle_speed;
pub mod support;
pub mod taper;
pub mod tool_life;
pub mod verdict;
mod view;
mod with;
pub mod within_reach;

use std::borrow::Cow;

use serde::Serialize;

pub use schema::schema;

use crate::error::{Error, ErrorKind, any_of, nearest};
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::text::system_of_length;
use crate::quantity::unit::Units;

/// The version of the documents that this library reads and writes.
pub const VERSION: u32 = 1;

/// The names of the questions, in the order of this page.
///
/// ```
/// assert!(turnwright::document::QUESTIONS.contains(&"plan"));
/// ```
pub const QUESTIONS: &[&str] = &[
    "spindle_speed",
    "cutting",
    "specific_force",
    "finish",
    "feed_for_finish",
    "bar",
    "support",
    "centre_hole",
    "limits",
    "fit",
    "within_reach",
    "measuring_stops",
    "dial",
    "facing",
    "taper",
    "growth",
    "tool_life",
    "budget",
    "verdict",
    "aim",
    "plan",
    "after_measurement",
    "materials",
    "quantities",
];

/// Answers one question.
///
/// # Errors
/// When the text is not JSON, the question is not known, a field is unknown, missing, doubled or
/// bad, or the job cannot be done; the error names the field by its path inside the question.
///
/// # Example
/// ```
/// let answer = turnwright::document::answer(
///     r#"{ "finish": { "feed": "0.2 mm/rev",
///                      "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } } }"#,
/// )?;
/// assert!(answer.contains(r#""regime":"arc""#));
/// let error = turnwright::document::answer(r#"{ "finish": { "feed": 0.2 } }"#).unwrap_err();
/// assert_eq!(error.field(), "feed");
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn answer(question: &str) -> Result<String, Error> {
    let tree = parse(question)?;
    let (name, body) = question_of(&tree)?;
    let units = units(body)?;
    ask(name, body, units).map_err(|error| names::instead(name, body, error).in_units(units))
}

fn ask(name: &str, body: &Tree, units: Units) -> Result<String, Error> {
    match name {
        "spindle_speed" => reply(name, units, &spindle_speed::Question::read(body)?.answer()?),
        "cutting" => reply(
            name,
            units,
            &cutting::Question::read(body, units)?.answer()?,
        ),
        "specific_force" => reply(
            name,
            units,
            &specific_force::Question::read(body)?.answer()?,
        ),
        "finish" => reply(name, units, &finish::Question::read(body, units)?.answer()?),
        "feed_for_finish" => reply(
            name,
            units,
            &feed_for_finish::Question::read(body, units)?.answer()?,
        ),
        "bar" => reply(name, units, &bar::Question::read(body)?.answer()?),
        "support" => reply(name, units, &support::Question::read(body)?.answer()?),
        "centre_hole" => reply(
            name,
            units,
            &centre_hole::Question::read(body, units)?.answer()?,
        ),
        "limits" => reply(name, units, &limits::Question::read(body)?.answer()?),
        "fit" => reply(name, units, &fit::Question::read(body, units)?.answer()?),
        "within_reach" => reply(
            name,
            units,
            &within_reach::Question::read(body, units)?.answer()?,
        ),
        "measuring_stops" => reply(
            name,
            units,
            &measuring_stops::Question::read(body, units)?.answer()?,
        ),
        "dial" => reply(name, units, &dial::Question::read(body)?.answer()?),
        "facing" => reply(name, units, &facing::Question::read(body, units)?.answer()?),
        "taper" => reply(name, units, &taper::Question::read(body, units)?.answer()?),
        "growth" => reply(name, units, &growth::Question::read(body, units)?.answer()?),
        "tool_life" => reply(name, units, &tool_life::Question::read(body)?.answer()?),
        "budget" => reply(name, units, &budget::Question::read(body, units)?.answer()?),
        "verdict" => reply(name, units, &verdict::Question::read(body, units)?.answer()),
        "aim" => reply(name, units, &aim::Question::read(body, units)?.answer()?),
        "plan" => reply(name, units, &plan::Question::read(body, units)?.answer()?),
        "after_measurement" => {
            let question = after_measurement::Question::read(body)?;
            // In the units of the sheet, whatever else is inch or metric.
            let units = question.units();
            let answer = question.answer().map_err(|error| error.in_units(units))?;
            reply(name, units, &answer)
        }
        "materials" => reply(name, units, &materials::Question::read(body)?.answer()),
        "quantities" => reply(
            name,
            units,
            &quantities::Question::read(body, units)?.answer(),
        ),
        other => Err(unknown(other)),
    }
}

fn parse(question: &str) -> Result<Tree<'_>, Error> {
    if question.starts_with('\u{feff}') {
        return Err(Error::new(
            ErrorKind::Unreadable,
            "",
            "a byte order mark before the text",
            "one JSON object",
            "save the text as UTF-8 without a byte order mark, or pass what follows its three bytes",
        ));
    }
    serde_json::from_str(question).map_err(|error| not_json(&error))
}

/// The one question of a document: its name and its fields.
fn question_of<'a>(tree: &'a Tree<'a>) -> Result<(&'a str, &'a Tree<'a>), Error> {
    let fields = Fields::of(tree, "", "a question")?;
    version(&fields)?;
    let Tree::Group(entries) = tree else {
        return Err(Error::internal("a question that is no object"));
    };
    let named: Vec<&(Cow<'_, str>, Tree<'_>)> = entries
        .iter()
        .filter(|(name, _)| name != "version")
        .collect();
    let job = ["lathe", "part"].map(|field| fields.has(field));
    match named.as_slice() {
        [(name, body)] => Ok((name, body)),
        _ if job == [true, true] => Err(Error::new(
            ErrorKind::MissingField,
            "",
            "a job without its question",
            "{ \"plan\": { the job } }",
            "put the job into an object under \"plan\"",
        )),
        _ => Err(Error::new(
            if named.is_empty() {
                ErrorKind::MissingField
            } else {
                ErrorKind::Contradiction
            },
            "",
            format!("{} questions", named.len()),
            format!("one question of {}", any_of(QUESTIONS.iter().copied())),
            "write { \"<question>\": { fields } }",
        )),
    }
}

fn version(fields: &Fields<'_>) -> Result<(), Error> {
    match fields.count("version")? {
        None | Some(VERSION) => Ok(()),
        Some(other) => Err(Error::new(
            ErrorKind::NotOffered,
            "version",
            other.to_string(),
            format!("version {VERSION}"),
            "write the question as this version has it, or leave the field out",
        )),
    }
}

#[cold]
fn not_json(error: &serde_json::Error) -> Error {
    let words = error.to_string();
    let (path, words) = crate::quantity::fields::fault(&words);
    // The path inside of the question, as of any error; the version stands beside it.
    let field = match path.find(['.', '[']) {
        Some(end) if end > 0 => path[end..].trim_start_matches('.'),
        None if path != "version" => "",
        _ => path,
    };
    // First, so that it is not what is cut where a caller has room for the beginning alone.
    let place = format!("line {} column {}", error.line(), error.column());
    let what = words.trim_end_matches(&format!(" at {place}"));
    let (given, expected, remedy) = match what {
        "number out of range" => (
            String::from("a number too large for a double"),
            "a number that a double can hold, below 1.8e308",
            "write a smaller number",
        ),
        "recursion limit exceeded" => (
            String::from("objects and lists in one another, too deep"),
            "at most 127 of them in one another",
            "no question nests so deep: check the braces at that place",
        ),
        surrogate if surrogate.contains("surrogate") => (
            String::from("half of a surrogate pair"),
            "characters in UTF-8, or both halves as \\u escapes",
            "write the character itself",
        ),
        _ => (
            format!("not JSON ({what})"),
            "one JSON object",
            "check quotes, commas and braces at that place",
        ),
    };
    let given = format!("{place}: {given}");
    Error::new(ErrorKind::Unreadable, field, given, expected, remedy)
}

/// The questions that most are looking for.
const FIRST: [&str; 2] = ["plan", "cutting"];

#[cold]
fn unknown(name: &str) -> Error {
    Error::new(
        ErrorKind::UnknownName,
        name,
        format!("the question {name:?}"),
        // The commonest first, should there be no room for all.
        any_of(
            FIRST.into_iter().chain(
                QUESTIONS
                    .iter()
                    .copied()
                    .filter(|name| !FIRST.contains(name)),
            ),
        ),
        match nearest(name, QUESTIONS.iter().copied()) {
            Some(near) => format!("did you mean {near:?}?"),
            None => String::from("ask one of these questions"),
        },
    )
}

/// The units of the answer: as asked, else inch where every length of the question is inch.
fn units(body: &Tree) -> Result<Units, Error> {
    if let Tree::Group(_) = body
        && let Some(units) = Fields::of(body, "", "a question")?
            .choice("units", &[("metric", Units::Metric), ("inch", Units::Inch)])?
    {
        return Ok(units);
    }
    let mut inch = false;
    Ok(match (holds_a_metric_length(body, &mut inch), inch) {
        (false, true) => Units::Inch,
        _ => Units::Metric,
    })
}

/// True where a length is metric, and then no other is looked at; whether one before it is inch.
fn holds_a_metric_length(tree: &Tree, inch: &mut bool) -> bool {
    match tree {
        Tree::Text(text) => {
            let units = system_of_length(text);
            *inch |= units == Some(Units::Inch);
            units == Some(Units::Metric)
        }
        Tree::List(items) => items.iter().any(|item| holds_a_metric_length(item, inch)),
        Tree::Group(entries) => entries
            .iter()
            .any(|(_, item)| holds_a_metric_length(item, inch)),
        _ => false,
    }
}

/// The fields of a question, with `units` taken.
fn fields<'a>(body: &'a Tree<'a>) -> Result<Fields<'a>, Error> {
    let fields = Fields::of(body, "", "a question")?;
    let _ = fields.tree("units");
    Ok(fields)
}

/// The same, with the names of all fields told beforehand.
fn fields_of<'a>(body: &'a Tree<'a>, all: &'static [&'static str]) -> Result<Fields<'a>, Error> {
    Ok(fields(body)?.knowing(all))
}

fn reply<A: Serialize>(name: &str, units: Units, answer: &A) -> Result<String, Error> {
    struct Reply<'a, A> {
        name: &'a str,
        answer: &'a A,
    }
    impl<A: Serialize> Serialize for Reply<'_, A> {
        fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            use serde::ser::SerializeMap;
            let mut map = s.serialize_map(Some(2))?;
            map.serialize_entry("version", &VERSION)?;
            map.serialize_entry(self.name, self.answer)?;
            map.end()
        }
    }
    let reply = Reply { name, answer };
    let written = match units {
        Units::Metric => serde_json::to_string(&reply),
        Units::Inch => serde_json::to_string(&view::Inch(&reply)),
    };
    written.map_err(|_| Error::internal("an answer that cannot be written"))
}
