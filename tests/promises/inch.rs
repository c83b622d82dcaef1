//! Who asks in inch is answered and refused in inch: words, cautions, sources and errors.

use serde_json::Value;
use turnwright::document::answer;
use turnwright::unit::{Kind, kinds};
use turnwright::{Error, Units};

use crate::schemas::questions;

/// The kinds of quantity that inch has another unit for.
fn kinds_in_inch() -> impl Iterator<Item = &'static &'static Kind> {
    kinds()
        .iter()
        .filter(|kind| kind.unit(Units::Inch) != kind.unit(Units::Metric))
}

/// A quantity's text with another unit of its kind: `to_inch` of the number that its unit gives.
pub fn other_number(text: &str, other: impl Fn(f64) -> f64) -> Option<String> {
    let (number, unit) = text.split_once(' ')?;
    let number: f64 = number.parse().ok()?;
    let (kind, given) = kinds_in_inch().find_map(|kind| Some((kind, kind.spelled(unit)?)))?;
    let inch = kind.unit(Units::Inch);
    let number = inch.from_trade(given.to_trade(other(number), 1.0));
    // What a person would write, and no class of a size that falls between two letters.
    Some(format!(
        "{} {}",
        format!("{number:.5e}").parse::<f64>().unwrap(),
        inch.text()
    ))
}

/// Every text of a document, by its path.
pub fn texts<'a>(path: &str, value: &'a mut Value, each: &mut dyn FnMut(&str, &mut String)) {
    match value {
        Value::String(text) => each(path, text),
        Value::Array(items) => {
            for item in items {
                texts(path, item, each);
            }
        }
        Value::Object(fields) => {
            for (name, item) in fields {
                texts(&format!("{path}.{name}"), item, each);
            }
        }
        _ => {}
    }
}

/// The question with every size of it in inch.
fn in_inch(question: &Value) -> Value {
    let mut question = question.clone();
    texts("", &mut question, &mut |_, text| {
        if let Some(inch) = other_number(text, |number| number) {
            *text = inch;
        }
    });
    question["units"] = Value::from("inch");
    question
}

/// The metric quantity in some words, if there is one.
fn metric_in(words: &str) -> Option<String> {
    let mut unquoted = words
        .split('"')
        .step_by(2)
        .flat_map(str::split_whitespace)
        .peekable();
    while let Some(word) = unquoted.next() {
        let number = word.trim_start_matches(['(', '[', '~']);
        let unit = unquoted
            .peek()
            .map(|unit| unit.trim_end_matches([',', ';', '.', ':', ')', ']']));
        if let (Ok(_), Some(unit)) = (number.parse::<f64>(), unit)
            && kinds_in_inch().any(|kind| kind.unit(Units::Metric).text() == unit)
        {
            return Some(format!("{number} {unit}"));
        }
    }
    None
}

fn document(name: &str, question: &Value) -> String {
    serde_json::json!({ name: question }).to_string()
}

#[test]
fn a_question_in_inch_is_answered_in_inch() {
    let mut answered = 0;
    for (name, question) in questions() {
        let question = in_inch(&question);
        let Ok(text) = answer(&document(name, &question)) else {
            continue;
        };
        answered += 1;
        let mut reply: Value = serde_json::from_str(&text).unwrap();
        texts("", &mut reply, &mut |path, text| {
            // A source says what it says, and the notes on a fit speak of it as it was made.
            if path.ends_with(".source") || path.ends_with(".notes") {
                return;
            }
            // As it is on record, behind what it is in inch.
            let words = match path.ends_with(".provenance.value") {
                true => text.split(" (").next().unwrap(),
                false => text.as_str(),
            };
            if let Some(metric) = metric_in(words) {
                // Centre drills have their pilot in their name (ISO 866).
                assert!(
                    words.contains(&format!("pilot {metric}")),
                    "{name}{path}: {text}"
                );
            }
        });
    }
    assert!(answered > 20, "{answered}");
}

#[test]
fn a_question_in_inch_is_refused_in_inch() {
    let mut refused = 0;
    for (name, question) in questions() {
        let question = in_inch(&question);
        let mut sizes = 0;
        texts("", &mut question.clone(), &mut |_, text| {
            sizes += usize::from(other_number(text, |number| number).is_some());
        });
        // One size after the other, much too large, much too small, a little off.
        for (at, factor) in
            (0..sizes).flat_map(|at| [1e4, 1e-4, 3.0, 0.3].map(|factor| (at, factor)))
        {
            let mut wrong = question.clone();
            let mut place = 0;
            texts("", &mut wrong, &mut |_, text| {
                if let Some(other) = other_number(text, |number| number * factor) {
                    if place == at {
                        *text = other;
                    }
                    place += 1;
                }
            });
            if let Err(error) = answer(&document(name, &wrong)) {
                refused += 1;
                in_inch_alone(&error, &wrong);
            }
        }
    }
    assert!(refused > 500, "{refused}");
}

fn in_inch_alone(error: &Error, asked: &Value) {
    let words = error.to_string();
    assert!(metric_in(&words).is_none(), "{words}");
    // What is told as it was written has the digits that were written.
    let words = match asked.to_string().contains(error.given()) {
        true => words.replace(error.given(), ""),
        false => words,
    };
    let numbers = words.split(|c: char| !c.is_ascii_digit() && c != '.');
    let digits = numbers.map(|number| number.trim_start_matches(['0', '.']).len());
    assert!(digits.max() < Some(12), "{words}");
}
