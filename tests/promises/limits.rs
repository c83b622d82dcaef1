//! Limits in every writing, classes and fits through the document door; metric and inch alike.

use serde_json::{Value, json};
use turnwright::document::answer;
use turnwright::{ErrorKind, Job, Limits};

use crate::documents::{ask, millimetres};

fn demo() -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    serde_json::to_value(job).unwrap()
}

fn by_class(class: &str) -> Value {
    let mut job = demo();
    let part = job["part"].as_object_mut().unwrap();
    part.remove("limits");
    part.insert("class".into(), json!(class));
    job
}

#[test]
fn limits_of_a_class_and_of_deviations() {
    // ISO 286-2, 25 h7: 0 -21 um; from memory.
    let found = ask("limits", json!({ "nominal": "25 mm", "class": "h7" }));
    let found = &found["limits"];
    assert_eq!(found["upper_deviation"], "0 mm");
    assert_eq!(found["lower_deviation"], "-0.021 mm");
    assert_eq!(
        (&found["largest"], &found["smallest"]),
        (&json!("25 mm"), &json!("24.979 mm"))
    );
    assert_eq!(
        (&found["tolerance"], &found["middle"]),
        (&json!("0.021 mm"), &json!("24.9895 mm"))
    );
    assert_eq!(
        (&found["class"], &found["of"]),
        (&json!("h7"), &json!("shaft"))
    );
    assert_eq!(found["provenance"][0]["standing"], "from_memory");
    let own = ask(
        "limits",
        json!({ "nominal": "25 mm", "upper_deviation": "-0.007 mm", "lower_deviation": "-20 um" }),
    );
    assert_eq!(own["limits"]["largest"], "24.993 mm");
    assert!(own["limits"].get("provenance").is_none());
    let off = ask(
        "limits",
        json!({ "nominal": "25 mm", "plus_minus": "0.05 mm" }),
    );
    assert_eq!(off["limits"]["smallest"], "24.95 mm");
    // ISO 2768-1, medium, over 6 up to 30 mm: 0.2 mm; from memory.
    let general = ask("limits", json!({ "nominal": "25 mm", "general": "medium" }));
    assert_eq!(general["limits"]["tolerance"], "0.4 mm");
    assert_eq!(general["limits"]["provenance"][0]["value"], "+/- 0.2 mm");
}

#[test]
fn an_inch_size_has_the_deviations_of_its_metric_range_and_is_answered_in_inch() {
    // ISO 286-2, 25.4 h6: 0 -13 um; from memory.
    let inch = ask("limits", json!({ "nominal": "1 in", "class": "h6" }));
    let inch = &inch["limits"];
    assert_eq!(inch["largest"], "1 in");
    assert!(
        (millimetres(&inch["smallest"]) - 25.387).abs() < 1e-9,
        "{inch}"
    );
    assert!(inch["lower_deviation"].as_str().unwrap().ends_with(" in"));
    let metric = ask(
        "limits",
        json!({ "units": "metric", "nominal": "1 in", "class": "h6" }),
    );
    assert_eq!(metric["limits"]["smallest"], "25.387 mm");
}

#[test]
fn a_fit_by_classes_by_limits_and_by_both() {
    let fit = |hole: Value, shaft: Value| {
        ask(
            "fit",
            json!({ "nominal": "30 mm", "hole": hole, "shaft": shaft }),
        )["fit"]
            .clone()
    };
    let classes = fit(json!("H7"), json!("g6"));
    assert_eq!(classes["kind"], "clearance");
    assert_eq!(classes["least_clearance"], "0.007 mm");
    assert_eq!(classes["largest_clearance"], "0.041 mm");
    assert_eq!(classes["hole"]["upper_deviation"], "0.021 mm");
    assert_eq!(classes["shaft"]["smallest"], "29.98 mm");
    assert_eq!(classes["provenance"].as_array().unwrap().len(), 2);
    for (hole, shaft) in [
        (json!(["30 mm", "30.021 mm"]), json!("30 g6 mm")),
        (json!("30 +0.021 0 mm"), json!({ "class": "g6" })),
        (
            json!({ "class": "H7", "nominal": "30 mm" }),
            json!({ "upper_deviation": "-7 um", "lower_deviation": "-20 um" }),
        ),
    ] {
        let other = fit(hole.clone(), shaft.clone());
        for same in ["kind", "least_clearance", "largest_clearance"] {
            assert_eq!(other[same], classes[same], "{hole} {shaft}");
        }
    }
    let pressed = fit(json!("H7"), json!("p6"));
    assert_eq!(
        (&pressed["kind"], &pressed["largest_clearance"]),
        (&json!("interference"), &json!("-0.001 mm"))
    );
}

#[test]
fn a_hole_and_a_shaft_that_are_mixed_up_are_told_so() {
    for (hole, shaft, field, meant) in [
        (json!("h7"), json!("g6"), "hole", "\"H7\""),
        (json!("H7"), json!("G6"), "shaft", "\"g6\""),
        (json!("30 h7 mm"), json!("g6"), "hole", "\"H7\""),
        (json!("H7"), json!({ "class": "G6" }), "shaft", "\"g6\""),
    ] {
        let question = json!({ "fit": { "nominal": "30 mm", "hole": hole, "shaft": shaft } });
        let error = answer(&question.to_string()).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (ErrorKind::Contradiction, field)
        );
        assert!(error.remedy().contains(meant), "{error}");
    }
    let two = json!({ "fit": { "nominal": "30 mm", "hole": "40 H7 mm", "shaft": "g6" } });
    assert_eq!(answer(&two.to_string()).unwrap_err().field(), "hole");
}

#[test]
fn bad_limits_and_fits_name_their_field() {
    use ErrorKind::{
        Contradiction, MissingField, NotOffered, OutOfRange, UnknownField, UnknownName,
    };
    for (question, kind, field) in [
        (
            json!({ "limits": { "nominal": "30 mm", "class": "i7" } }),
            UnknownName,
            "class",
        ),
        (
            json!({ "limits": { "nominal": "30 mm", "class": "h25" } }),
            OutOfRange,
            "class",
        ),
        (
            json!({ "limits": { "nominal": "30 mm", "class": "cd7" } }),
            NotOffered,
            "class",
        ),
        (
            json!({ "limits": { "nominal": "501 mm", "class": "h7" } }),
            OutOfRange,
            "nominal",
        ),
        (
            json!({ "limits": { "nominal": "20 mm", "class": "t6" } }),
            OutOfRange,
            "nominal",
        ),
        (
            json!({ "limits": { "nominal": "0.4 mm", "class": "h16" } }),
            Contradiction,
            "nominal",
        ),
        (
            json!({ "limits": { "nominal": "0.4 mm", "general": "fine" } }),
            OutOfRange,
            "nominal",
        ),
        (
            json!({ "limits": { "nominal": "30 mm" } }),
            MissingField,
            "class",
        ),
        (
            json!({ "limits": { "nominal": "30 mm", "class": "h7", "text": "x" } }),
            UnknownField,
            "text",
        ),
        (
            json!({ "fit": { "nominal": "30 mm", "hole": "H7" } }),
            MissingField,
            "shaft",
        ),
        (
            json!({ "fit": { "nominal": "30 mm", "hole": "H7", "shaft": ["60 mm", "61 mm"] } }),
            Contradiction,
            "clearance",
        ),
    ] {
        let error = answer(&question.to_string()).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (kind, field),
            "{question}: {error}"
        );
        assert!(!error.remedy().is_empty());
    }
}

#[test]
fn every_writing_of_limits_is_one_zone_and_is_written_as_two_sizes() {
    let sizes = json!(["29.967 mm", "30 mm"]);
    for written in [
        sizes.clone(),
        json!({ "class": "h8", "nominal": "30 mm" }),
        json!({ "nominal": "30 mm", "upper_deviation": "0 mm", "lower_deviation": "-0.033 mm" }),
        json!({ "nominal": "29.9835 mm", "plus_minus": "0.0165 mm" }),
        json!("30 +0.000 -0.033 mm"),
        json!("30 0 -0.033 mm"),
        json!("29.9835 +/-0.0165 mm"),
        json!("30 h8 mm"),
        json!("30 mm h8"),
    ] {
        let limits: Limits = serde_json::from_value(written.clone()).unwrap();
        assert_eq!(serde_json::to_value(limits).unwrap(), sizes, "{written}");
    }
}

#[test]
fn a_dial_takes_limits_in_every_writing() {
    let dial = |limits: Value| {
        ask(
            "dial",
            json!({ "dial": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100 },
                    "zero_at": "34 mm", "target": "30 mm", "limits": limits }),
        )["dial"]
            .clone()
    };
    let sizes = dial(json!(["29.967 mm", "30 mm"]));
    assert_eq!(sizes["in_zone"], true);
    assert_eq!(dial(json!({ "class": "h8", "nominal": "30 mm" })), sizes);
    assert_eq!(dial(json!("30 h8 mm")), sizes);
    assert_eq!(dial(json!("30 -0.005 -0.010 mm"))["in_zone"], false);
}

#[test]
fn limits_in_inch_make_an_inch_question() {
    let dial = |limits: &str| {
        let asked = ask(
            "dial",
            json!({ "dial": { "reads": "diameter", "division": "0.001 in", "divisions_per_turn": 100 },
                    "zero_at": "1.5 in", "target": "1.25 in", "limits": limits }),
        );
        asked["dial"]["size_at_mark"].as_str().unwrap().to_owned()
    };
    for inch in [
        "1.25 +0.0005 -0.0010 in",
        "1.25 +/-0.001 in",
        "1.25 in h9",
        "1.25 h9 in",
        "1 1/4 in +0.5 -1 thou",
    ] {
        assert!(dial(inch).ends_with(" in"), "{inch}");
    }
    for metric in ["31.75 h9 mm", "31.75 mm h9", "1.25 in +0.02 -0.02 mm"] {
        assert!(dial(metric).ends_with(" mm"), "{metric}");
    }
}

#[test]
fn a_part_by_its_class_is_planned_as_by_its_limits_and_comes_back() {
    let (class, limits) = (ask("plan", by_class("h8")), ask("plan", demo()));
    for same in ["steps", "expected"] {
        assert_eq!(class["plan"][same], limits["plan"][same], "{same}");
    }
    let part = &class["plan"]["job"]["part"];
    assert_eq!(part["class"], "h8");
    assert!(part.get("limits").is_none());
    assert_eq!(ask("plan", class["plan"]["job"].clone()), class);
    let job: Job = serde_json::from_value(by_class("h8")).unwrap();
    let written = serde_json::to_value(&job).unwrap();
    assert_eq!(serde_json::from_value::<Job>(written).unwrap(), job);
}

#[test]
fn a_part_has_a_class_of_a_shaft_or_limits() {
    let refused = |job: &Value| answer(&json!({ "plan": job }).to_string()).unwrap_err();
    let hole = refused(&by_class("H8"));
    assert_eq!(
        (hole.kind(), hole.field()),
        (ErrorKind::Contradiction, "part.class")
    );
    assert!(hole.remedy().contains("\"h8\""), "{hole}");
    let mut neither = by_class("h8");
    neither["part"].as_object_mut().unwrap().remove("class");
    let neither = refused(&neither);
    assert_eq!(
        (neither.kind(), neither.field()),
        (ErrorKind::MissingField, "part.limits")
    );
    assert!(neither.expected().contains("class"), "{neither}");
}

#[test]
fn a_unit_that_is_missing_stands_behind_the_class() {
    let asked = json!({ "verdict": { "measured": "35 mm", "limits": "35 H7", "expanded_uncertainty": "4 um" } });
    let error = answer(&asked.to_string()).unwrap_err();
    assert_eq!(
        (error.kind(), error.field()),
        (ErrorKind::MissingUnit, "limits")
    );
    assert!(error.remedy().contains("\"35 H7 mm\""), "{error}");
}

#[test]
fn a_fit_in_one_word_is_parted() {
    for (hole, shaft, field) in [
        ("H7/g6", "g6", "hole"),
        ("g6/H7", "g6", "hole"),
        ("H7", "H7/g6", "shaft"),
    ] {
        let asked = json!({ "fit": { "nominal": "35 mm", "hole": hole, "shaft": shaft } });
        let error = answer(&asked.to_string()).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (ErrorKind::Contradiction, field),
            "{error}"
        );
        assert_eq!(
            error.remedy(),
            "write \"hole\": \"H7\" and \"shaft\": \"g6\""
        );
    }
}

#[test]
fn another_part_or_unit_is_asked_after() {
    let codes = |question: &Value| {
        let (name, _) = question.as_object().unwrap().iter().next().unwrap();
        let found: Value = serde_json::from_str(&answer(&question.to_string()).unwrap()).unwrap();
        let cautions = found[name]["cautions"]
            .as_array()
            .cloned()
            .unwrap_or_default();
        cautions
            .iter()
            .any(|caution| caution["code"] == "another_part_or_unit")
    };
    // An inch taken for a millimetre, another part, a part that is merely bad.
    for (measured, wanted) in [
        ("35 in", true),
        ("30 mm", true),
        ("39 mm", true),
        ("33 mm", false),
        ("35.03 mm", false),
    ] {
        let asked = json!({ "verdict": { "measured": measured, "limits": "35 H7 mm", "expanded_uncertainty": "4 um" } });
        assert_eq!(codes(&asked), wanted, "{measured}");
    }
    for (shaft, wanted) in [
        (["30 mm", "30.02 mm"], true),
        (["34 mm", "34.02 mm"], false),
    ] {
        let asked = json!({ "fit": { "nominal": "35 mm", "hole": "H7", "shaft": shaft } });
        assert_eq!(codes(&asked), wanted, "{shaft:?}");
    }
}
