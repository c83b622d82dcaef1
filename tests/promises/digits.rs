//! Words for a person have no tail of digits, whatever was converted on the way to them.

use std::sync::OnceLock;

use proptest::prelude::*;
use serde_json::{Value, json};
use turnwright::document::answer;
use turnwright::plan::Job;
use turnwright::unit::kinds;
use turnwright::{Quantity, Units};

use crate::inch::{other_number, texts};
use crate::schemas::questions;

/// The most significant digits of a number in words: a micrometre of a metre has seven.
const MOST: usize = 9;

/// The first number with a point and more digits than that, outside of quotation marks.
fn tail(words: &str) -> Option<String> {
    let unquoted: String = words.split('"').step_by(2).collect::<Vec<_>>().join(" ");
    let numbers = unquoted.split(|c: char| !c.is_ascii_digit() && c != '.');
    let long = |number: &&str| {
        let number = number.trim_matches('.');
        let digits: String = number.chars().filter(char::is_ascii_digit).collect();
        number.contains('.') && digits.trim_start_matches('0').len() > MOST
    };
    numbers
        .map(str::to_owned)
        .find(|number| long(&number.as_str()))
}

/// True of a quantity alone, which is a figure for a program and exact.
fn is_figure(text: &str) -> bool {
    let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
    number.parse::<f64>().is_ok() && kinds().iter().any(|kind| kind.spelled(unit).is_some())
}

fn invented() -> &'static [(&'static str, Value)] {
    static ALL: OnceLock<Vec<(&'static str, Value)>> = OnceLock::new();
    ALL.get_or_init(questions)
}

/// A size of a question: as it stands or another, in inch or in metric.
fn size() -> impl Strategy<Value = (f64, bool)> {
    let factor = prop_oneof![12 => Just(1.0), 2 => 0.9..1.1_f64, 1 => 1e-4..1e4_f64];
    (factor, prop::bool::weighted(0.7))
}

proptest! {
    #![proptest_config(crate::jobs::config(3000))]
    #[test]
    fn no_answer_and_no_error_has_a_tail_of_digits_in_its_words(
        which in any::<prop::sample::Index>(),
        sizes in prop::collection::vec(size(), 80),
        inch in prop::bool::weighted(0.8),
    ) {
        let (name, question) = which.get(invented());
        let mut question = question.clone();
        let mut sizes = sizes.into_iter().cycle();
        texts("", &mut question, &mut |_, text| {
            let Some((factor, true)) = sizes.next() else { return };
            if let Some(other) = other_number(text, |number| number * factor) {
                *text = other;
            }
        });
        question["units"] = json!(if inch { "inch" } else { "metric" });
        match answer(&json!({ *name: question }).to_string()) {
            Err(error) => {
                let words = error.to_string();
                prop_assert!(tail(&words).is_none(), "{}: {}", name, words);
            }
            Ok(reply) => {
                let mut reply: Value = serde_json::from_str(&reply).unwrap();
                let mut wrong = None;
                texts("", &mut reply, &mut |path, text| {
                    // Pictures and pages are drawn to a hundredth of a millimetre.
                    if !is_figure(text) && tail(text).is_some() {
                        wrong = Some(format!("{path}: {text}"));
                    }
                });
                prop_assert!(wrong.is_none(), "{}{}", name, wrong.unwrap_or_default());
            }
        }
        if *name == "plan" {
            let units = if inch { Units::Inch } else { Units::Metric };
            let words = match serde_json::from_value::<Job>(question) {
                Err(error) => error.to_string(),
                Ok(job) => match job.plan(units) {
                    Err(error) => error.to_string(),
                    Ok(sheet) => sheet.to_string(),
                },
            };
            prop_assert!(tail(&words).is_none(), "{:?} in {}", tail(&words), words);
        }
    }

}

proptest! {
    #![proptest_config(crate::jobs::config(100))]
    #[test]
    fn no_quantity_is_refused_with_a_tail_of_digits(share in 0.0..1.0_f64) {
        macro_rules! holds {
            ($t:ident) => {
                let row = turnwright::$t::ROW;
                for beyond in [row.largest() * (1.0 + share), row.least() - row.least().abs() * share] {
                    if let Err(error) = turnwright::$t::from_trade(beyond) {
                        let words = error.to_string();
                        prop_assert!(tail(&words).is_none(), "{}", words);
                        let words = error.in_units(Units::Inch).to_string();
                        prop_assert!(tail(&words).is_none(), "{}", words);
                    }
                }
            };
        }
        turnwright::for_each_quantity!(holds);
    }
}

#[test]
fn a_size_a_hair_beyond_its_range_is_not_told_as_the_end_of_the_range() {
    let error = turnwright::Diameter::from_mm(5000.0_f64.next_up()).unwrap_err();
    assert_eq!(error.given(), "a hair more than 5000 mm");
    let error = error.in_units(Units::Inch);
    assert_eq!(error.given(), "a hair more than 196.8504 in");
    let error = turnwright::Diameter::from_mm(0.1_f64.next_down()).unwrap_err();
    assert_eq!(error.given(), "a hair less than 0.1 mm");
    let error = turnwright::Efficiency::from_trade(1.0_f64.next_up()).unwrap_err();
    assert_eq!(error.given(), "a hair more than 1");
}

#[test]
fn a_mark_of_a_metric_dial_is_told_in_inch_without_a_tail() {
    let plan = invented().iter().find(|(name, _)| *name == "plan").unwrap();
    let mut question = plan.1.clone();
    question["units"] = json!("inch");
    let reply = answer(&json!({ "plan": question }).to_string()).unwrap();
    let reply: Value = serde_json::from_str(&reply).unwrap();
    let dials = reply["plan"]["dials"].to_string();
    // 0.04 mm, by 25.4 mm an inch.
    assert!(dials.contains("0.00157480315 x marks"), "{dials}");
}
