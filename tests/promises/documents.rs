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

#[test]
fn a_finish_says_what_comes_on_top() {
    let asked = ask(
        "finish",
        json!({ "feed": "0.05 mm/rev", "material": "c45", "cutting_speed": "25 m/min",
                "least_chip_thickness": "5 um", "feed_unevenness": 0.2,
                "profile": { "seed": 7, "noise": "0.1 um" },
                "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg",
                          "minor_cutting_edge_angle": "10 deg" } }),
    );
    let finish = &asked["finish"];
    let codes: Vec<&str> = finish["cautions"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(|caution| caution["code"].as_str())
        .collect();
    assert_eq!(codes, ["built_up_edge", "below_best_feed", "theory_only"]);
    assert_eq!(finish["least_chip_regime"], "below_best_feed");
    let um = |value: &serde_json::Value| -> f64 {
        let text = value.as_str().unwrap().strip_suffix(" um").unwrap();
        text.parse().unwrap()
    };
    // f^2/(8r) + h/2 (1 + r h/f^2), derived: 0.390625 + 2.5 (1 + 1.6).
    assert!((um(&finish["rt_with_least_chip"]) - 6.890_625).abs() < 1e-9);
    assert_eq!(finish["cut_off"], "0.25 mm");
    assert_eq!(finish["evaluation_length"], "1.25 mm");
    assert!(um(&finish["uneven"]["rt_95"]) > um(&finish["uneven"]["rt_50"]));
    assert!(um(&finish["profile"]["parameters"]["rt"]) > um(&finish["rt"]));
    assert_eq!(finish["profile"]["parameters"]["sampling_lengths"], 5);
    for (field, value, at) in [
        (
            "profile",
            json!({ "seed": 1, "points": 2_000_000 }),
            "profile.points",
        ),
        ("profile", json!({}), "profile.seed"),
        ("feed_unevenness", json!(0.6), "feed_unevenness"),
        ("material", json!("c45"), "cutting_speed"),
    ] {
        let mut fields = json!({ "feed": "0.1 mm/rev",
            "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg",
                      "minor_cutting_edge_angle": "10 deg" } });
        fields[field] = value;
        let error = answer(&json!({ "finish": fields }).to_string()).unwrap_err();
        assert_eq!(error.field(), at, "{error}");
    }
}

#[test]
fn a_feed_for_a_finish_says_where_the_edge_rubs() {
    let asked = ask(
        "feed_for_finish",
        json!({ "ra": "0.4 um", "spindle_speed": "500 rpm", "travel_per_turn": "20 mm",
                "least_chip_thickness": "10 um", "feed_unevenness": 0.2,
                "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } }),
    );
    let text = asked["feed_for_finish"].to_string();
    for code in [
        "below_best_feed",
        "unsteady_hand",
        "uneven_feed",
        "theory_only",
    ] {
        assert!(text.contains(code), "{code}: {text}");
    }
    assert!(asked["feed_for_finish"]["best_feed"].is_string());
}
