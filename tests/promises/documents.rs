//! Documents: units follow the question, metric and inch give the same plan, catalogue and refusals.

use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::{QUESTIONS, answer};

fn ask(question: &str, fields: Value) -> Value {
    let text = answer(&json!({ question: fields }).to_string()).unwrap_or_else(|e| panic!("{e}"));
    serde_json::from_str(&text).unwrap()
}

/// The same job in inch text, every length converted.
fn in_inch(value: &Value) -> Value {
    match value {
        Value::String(text) => {
            let mm = |suffix: &str| {
                text.strip_suffix(suffix)
                    .and_then(|n| n.trim().parse::<f64>().ok())
            };
            if let Some(mm) = mm("mm/rev") {
                json!(format!("{} in/rev", mm / 25.4))
            } else if let Some(um) = mm("um") {
                json!(format!("{} uin", um * 10000.0 / 254.0))
            } else if let Some(mm) = mm("mm") {
                json!(format!("{} in", mm / 25.4))
            } else {
                value.clone()
            }
        }
        Value::Array(items) => Value::Array(items.iter().map(in_inch).collect()),
        Value::Object(fields) => Value::Object(
            fields
                .iter()
                .map(|(k, v)| (k.clone(), in_inch(v)))
                .collect(),
        ),
        other => other.clone(),
    }
}

fn demo() -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    serde_json::to_value(job).unwrap()
}

fn millimetres(text: &Value) -> f64 {
    let (number, unit) = text.as_str().unwrap().split_once(' ').unwrap();
    number.parse::<f64>().unwrap() * if unit == "in" { 25.4 } else { 1.0 }
}

#[test]
fn metric_and_inch_versions_of_a_job_give_the_same_plan() {
    let metric = ask("plan", demo());
    let inch = ask("plan", in_inch(&demo()));
    let (metric, inch) = (&metric["plan"], &inch["plan"]);
    assert!(
        inch["expected"]["diameter"]
            .as_str()
            .unwrap()
            .ends_with(" in")
    );
    let (a, b) = (
        metric["steps"].as_array().unwrap(),
        inch["steps"].as_array().unwrap(),
    );
    assert_eq!(a.len(), b.len());
    for (a, b) in a.iter().zip(b) {
        for same in ["kind", "spindle_speed"] {
            assert_eq!(a[same], b[same]);
        }
        assert_eq!(
            a["reading"]["divisions"], b["reading"]["divisions"],
            "{} {}",
            a["text"], b["text"]
        );
        // The aim is rounded to what a person reads: 0.001 mm or 0.0001 in, so half of both apart at most.
        assert!(
            (millimetres(&a["diameter"]) - millimetres(&b["diameter"])).abs() < 0.0018,
            "{a} {b}"
        );
    }
}

#[test]
fn an_answer_is_in_inch_where_every_length_of_the_question_is() {
    let finish = |feed: &str, corner: &str| {
        ask(
            "finish",
            json!({ "feed": feed, "tool": { "corner_radius": corner, "cutting_edge_angle": "95 deg" } }),
        )
    };
    assert!(
        finish("0.004 in/rev", "1/32 in")["finish"]["ra"]
            .as_str()
            .unwrap()
            .ends_with(" uin")
    );
    assert!(
        finish("0.1 mm/rev", "1/32 in")["finish"]["ra"]
            .as_str()
            .unwrap()
            .ends_with(" um")
    );
    let asked = ask(
        "finish",
        json!({ "units": "inch", "feed": "0.1 mm/rev",
                "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } }),
    );
    assert!(asked["finish"]["ra"].as_str().unwrap().ends_with(" uin"));
    assert_eq!(asked["version"], 1);
}

#[test]
fn the_job_of_a_sheet_gives_the_same_sheet_again() {
    let first = ask("plan", demo());
    let again = ask("plan", first["plan"]["job"].clone());
    assert_eq!(first, again);
}

#[test]
fn a_material_of_the_askers_own_is_planned_and_comes_back() {
    let mut job = demo();
    job["material"] = json!({ "like": "c45", "specific_force": "1500 MPa", "name": "bar from the rack",
                              "cutting_speeds": { "high_speed_steel": ["20 m/min", "30 m/min"] } });
    let first = ask("plan", job);
    let provenance = first["plan"]["provenance"].to_string();
    assert!(
        provenance.contains("1500 MPa") && provenance.contains("given"),
        "{provenance}"
    );
    assert_eq!(first, ask("plan", first["plan"]["job"].clone()));
}

#[test]
fn the_catalogue_says_source_and_standing_of_every_figure() {
    let all = ask("materials", json!({}));
    let all = all["materials"]["materials"].as_array().unwrap();
    assert_eq!(all.len(), 63);
    for material in all {
        for (name, figure) in material.as_object().unwrap() {
            if ["key", "names", "condition", "iso513_group", "notes"].contains(&name.as_str()) {
                continue;
            }
            assert!(
                figure["source"].as_str().is_some_and(|s| !s.is_empty()),
                "{name} of {material}"
            );
            assert!(
                figure["standing"].as_str().is_some(),
                "{name} of {material}"
            );
        }
    }
    let some = ask("materials", json!({ "like": "AW" }));
    assert_eq!(some["materials"]["materials"].as_array().unwrap().len(), 5);
}

#[test]
fn unknown_questions_and_later_ones_are_told_apart() {
    let refused = |text: &str| answer(text).unwrap_err();
    assert_eq!(refused(r#"{"finsh": {}}"#).kind(), ErrorKind::UnknownName);
    assert!(refused(r#"{"finsh": {}}"#).remedy().contains("finish"));
    assert_eq!(
        refused(r#"{"tool_life": {}}"#).kind(),
        ErrorKind::NotOffered
    );
    assert_eq!(
        refused(r#"{"version": 2, "finish": {}}"#).kind(),
        ErrorKind::NotOffered
    );
    assert_eq!(
        refused(r#"{"finish": {}, "bar": {}}"#).kind(),
        ErrorKind::Contradiction
    );
    assert_eq!(refused("{}").kind(), ErrorKind::MissingField);
    assert_eq!(refused("[1, 2").kind(), ErrorKind::Unreadable);
    for question in QUESTIONS {
        if *question == "materials" {
            continue;
        }
        let error = refused(&format!(r#"{{ "{question}": {{}} }}"#));
        assert_eq!(error.kind(), ErrorKind::MissingField, "{question}: {error}");
        let error = refused(&format!(r#"{{ "{question}": [] }}"#));
        assert_eq!(error.kind(), ErrorKind::Unreadable, "{question}: {error}");
    }
}
