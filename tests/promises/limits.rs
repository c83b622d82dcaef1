//! Limits, fits, and whether a size is within reach, as documents ask for them.

use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::answer;

use crate::documents::ask;

fn refused(question: &str, fields: Value) -> turnwright::Error {
    answer(&json!({ question: fields }).to_string()).expect_err("an answer where none was due")
}

#[test]
fn one_zone_in_every_usual_writing() {
    // ISO 286-2, from memory: 40 h6 is 0 to -16 um. ISO 2768-m: 40 +/- 0.3 mm.
    for limits in [
        json!({ "nominal": "40 mm", "class": "h6" }),
        json!({ "nominal": "40 mm", "upper_deviation": "0 mm", "lower_deviation": "-16 um" }),
    ] {
        let found = &ask("limits", limits)["limits"];
        assert_eq!(found["largest"], "40 mm");
        assert_eq!(found["smallest"], "39.984 mm");
        assert_eq!(found["middle"], "39.992 mm");
        assert_eq!(found["lower_deviation"], "-0.016 mm");
        assert_eq!(found["tolerance"], "0.016 mm");
    }
    let general = &ask("limits", json!({ "nominal": "40 mm", "general": "medium" }))["limits"];
    assert_eq!(
        (&general["smallest"], &general["largest"]),
        (&json!("39.7 mm"), &json!("40.3 mm"))
    );
    let both = &ask(
        "limits",
        json!({ "nominal": "1 1/4 in", "plus_minus": "0.001 in" }),
    )["limits"];
    assert_eq!(
        (&both["smallest"], &both["largest"]),
        (&json!("1.249 in"), &json!("1.251 in"))
    );
}

#[test]
fn every_question_takes_limits_in_every_writing() {
    let dial = json!({ "reads": "diameter", "division": "0.01 mm", "divisions_per_turn": 200 });
    for limits in [
        json!(["39.984 mm", "40 mm"]),
        json!({ "class": "h6", "nominal": "40 mm" }),
        json!("40 +0.000 -0.016 mm"),
        json!("40 h6 mm"),
    ] {
        let found = ask(
            "dial",
            json!({ "dial": dial, "zero_at": "44 mm", "target": "39.99 mm", "limits": limits }),
        );
        assert_eq!(found["dial"]["in_zone"], true, "{limits}");
        assert_eq!(found["dial"]["divisions"], 401, "{limits}");
    }
}

#[test]
fn a_part_may_be_given_by_its_class() {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let given = serde_json::to_value(job).unwrap();
    let mut by_class = given.clone();
    by_class["part"].as_object_mut().unwrap().remove("limits");
    by_class["part"]["class"] = json!("h8");
    let (one, two) = (ask("plan", given), ask("plan", by_class));
    // 30 h8 is 29.967 to 30.000 (ISO 286-2, from memory): the same plan, but for what was given.
    assert_eq!(one["plan"]["steps"], two["plan"]["steps"]);
    assert_eq!(two["plan"]["job"]["part"]["class"], "h8");
    assert_eq!(two["plan"]["job"]["part"].get("limits"), None);
    assert_eq!(
        ask("plan", two["plan"]["job"].clone())["plan"]["steps"],
        two["plan"]["steps"]
    );
    assert!(two["plan"]["provenance"].to_string().contains("ISO 286"));
}

#[test]
fn fits_say_what_the_pair_makes() {
    // ISO 286-2, from memory: 30 H7/g6 +7 to +41 um, 30 H7/k6 -15 to +19, 30 H7/p6 -35 to -1.
    for (shaft, kind, least, largest) in [
        ("g6", "clearance", "0.007 mm", "0.041 mm"),
        ("k6", "transition", "-0.015 mm", "0.019 mm"),
        ("p6", "interference", "-0.035 mm", "-0.001 mm"),
    ] {
        let fit = &ask(
            "fit",
            json!({ "nominal": "30 mm", "hole": "H7", "shaft": shaft }),
        )["fit"];
        assert_eq!(fit["kind"], kind);
        assert_eq!(
            (&fit["least_clearance"], &fit["largest_clearance"]),
            (&json!(least), &json!(largest))
        );
        assert_eq!(fit["hole"]["largest"], "30.021 mm");
    }
}

#[test]
fn what_is_no_limit_or_fit_is_refused_with_its_remedy() {
    use ErrorKind::*;
    for (question, fields, kind, field, remedy) in [
        (
            "limits",
            json!({ "nominal": "30 mm", "class": "h25" }),
            UnknownName,
            "class",
            "grade",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "class": "z3" }),
            UnknownName,
            "class",
            "grade",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "class": "jS7" }),
            Unreadable,
            "class",
            "\"js7\" or \"JS7\"",
        ),
        (
            "limits",
            json!({ "nominal": "600 mm", "class": "h7" }),
            OutOfRange,
            "nominal",
            "two sizes",
        ),
        (
            "limits",
            json!({ "nominal": "20 mm", "class": "t6" }),
            OutOfRange,
            "nominal",
            "next letter",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm" }),
            MissingField,
            "class",
            "add",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "upper_deviation": "0.02 mm" }),
            MissingField,
            "lower_deviation",
            "add",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "upper_deviation": "-0.041 mm", "lower_deviation": "-0.02 mm" }),
            Contradiction,
            "upper_deviation",
            "larger one as the upper",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "class": "h7", "plus_minus": "0.1 mm" }),
            Contradiction,
            "plus_minus",
            "drawing",
        ),
        (
            "limits",
            json!({ "nominal": "30 mm", "plus_minus": "0 mm" }),
            OutOfRange,
            "plus_minus",
            "unit",
        ),
        (
            "fit",
            json!({ "nominal": "30 mm", "hole": "h7", "shaft": "g6" }),
            Contradiction,
            "hole",
            "\"H7\"",
        ),
        (
            "fit",
            json!({ "nominal": "30 mm", "hole": "H7", "shaft": "G6" }),
            Contradiction,
            "shaft",
            "\"g6\"",
        ),
        (
            "fit",
            json!({ "nominal": "30 mm", "hole": "H7" }),
            MissingField,
            "shaft",
            "add",
        ),
    ] {
        let error = refused(question, fields.clone());
        assert_eq!(
            (error.kind(), error.field()),
            (kind, field),
            "{fields}: {error}"
        );
        assert!(error.remedy().contains(remedy), "{fields}: {error}");
    }
}

/// An invented cross slide.
fn dial() -> Value {
    json!({ "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100, "backlash": "0.1 mm" })
}

#[test]
fn within_reach_says_first_what_dominates_and_what_would_help() {
    let asked = json!({
        "limits": { "class": "h6", "nominal": "40 mm" }, "dial": dial(), "instrument": "calliper",
    });
    let no = &ask("within_reach", asked.clone())["within_reach"];
    assert_eq!(no["within_reach"], false);
    assert_eq!(no["dominant"], "instrument");
    let text = no["text"].as_str().unwrap();
    assert!(
        text.starts_with("Most of it comes from the measuring instrument"),
        "{text}"
    );
    assert!(no["remedies"][0]["good"].as_f64() > no["good"].as_f64());
    // Not even a perfect dial saves it, so the dial's least is not there, and the words say so.
    let dial_alone = no["least"]
        .as_array()
        .unwrap()
        .iter()
        .find(|l| l["means"] == "dial")
        .unwrap();
    assert_eq!(dial_alone.get("times"), None);
    // A micrometer with a certificate, a fine dial, measured before the last cut: yes.
    let mut fine = asked;
    fine["dial"]["division"] = json!("0.005 mm");
    fine["dial"]["backlash"] = json!("0.02 mm");
    fine["instrument"] = json!({ "kind": "micrometer", "expanded": "0.002 mm", "k": 2 });
    let yes = &ask("within_reach", fine)["within_reach"];
    assert_eq!(yes["within_reach"], true, "{yes}");
    assert!(yes["remedies"].as_array().unwrap().is_empty());
}

#[test]
fn the_least_that_would_do_does() {
    // A zone that this dial just misses: with a dial as fine as the answer says, it is within reach.
    let mut asked = json!({
        "limits": ["39.980 mm", "40 mm"], "dial": dial(),
        "instrument": { "kind": "micrometer", "expanded": "0.002 mm", "k": 2 },
    });
    let no = ask("within_reach", asked.clone());
    let no = &no["within_reach"];
    assert_eq!(no["within_reach"], false);
    let least = no["least"]
        .as_array()
        .unwrap()
        .iter()
        .find(|l| l["means"] == "dial")
        .unwrap();
    let times = least["times"].as_f64().unwrap();
    // What the backlash leaves is no matter of the division; ring and marks are.
    for (factor, expected) in [(times * 0.999, true), (times * 1.01, false)] {
        asked["dial"]["division"] = json!(format!("{} mm", 0.02 * factor));
        let found = ask("within_reach", asked.clone());
        assert_eq!(found["within_reach"]["within_reach"], expected, "{factor}");
    }
    assert_eq!(no["deciding"][0]["cause"], "ring");
}

#[test]
fn a_bar_that_springs_wants_a_centre() {
    let asked = json!({
        "limits": ["15.97 mm", "16 mm"], "dial": { "reads": "diameter", "division": "0.01 mm", "divisions_per_turn": 200 },
        "instrument": "micrometer", "material": "11SMn30", "sections": [{ "diameter": "16 mm", "length": "160 mm" }],
        "cut": { "passive_force": "30 N" },
    });
    let no = ask("within_reach", asked);
    let no = &no["within_reach"];
    assert_eq!(
        (&no["within_reach"], &no["dominant"]),
        (&json!(false), &json!("along_the_bar"))
    );
    let centre = no["remedies"]
        .as_array()
        .unwrap()
        .iter()
        .find(|r| r["remedy"] == "centre")
        .unwrap();
    assert_eq!(centre["enough"], true, "{no}");
    let support = no["least"]
        .as_array()
        .unwrap()
        .iter()
        .find(|l| l["means"] == "support_and_tool")
        .unwrap();
    assert!(
        support["text"]
            .as_str()
            .unwrap()
            .contains("smaller corner radius"),
        "{support}"
    );
}

#[test]
fn measuring_stops_pay_or_do_not() {
    let asked = json!({
        "limits": ["29.967 mm", "30 mm"], "start": "34 mm",
        "cuts": [{ "after": "33.2 mm", "spring": "0.005 mm" }, { "after": "31.2 mm", "spring": "0.007 mm" },
                 { "after": "30.38 mm", "spring": "0.003 mm" }, { "after": "29.98 mm", "spring": "0.003 mm" }],
        "dial": dial(), "instrument": "micrometer", "price_scrap": 40, "price_rework": 3, "price_stop": 1,
    });
    let found = ask("measuring_stops", asked.clone());
    assert_eq!(found["measuring_stops"]["chosen"]["after"], json!([0, 2]));
    // Dear enough, no stop pays; a person can have them all the same.
    let mut dear = asked.clone();
    dear["price_stop"] = json!(1000);
    assert_eq!(
        ask("measuring_stops", dear.clone())["measuring_stops"]["chosen"]["after"],
        json!([])
    );
    dear["measuring_stops"] = json!(3);
    assert_eq!(
        ask("measuring_stops", dear)["measuring_stops"]["chosen"]["after"],
        json!([0, 1, 2])
    );
    use ErrorKind::*;
    for (field, value, kind) in [
        ("cuts", json!([]), MissingField),
        (
            "cuts",
            json!([{ "after": "31 mm" }, { "after": "32 mm" }]),
            Contradiction,
        ),
        ("measuring_stops", json!(4), OutOfRange),
        ("price_stop", json!(0), OutOfRange),
        ("slip", json!(2), OutOfRange),
    ] {
        let mut bad = asked.clone();
        bad[field] = value;
        let error = refused("measuring_stops", bad);
        assert_eq!((error.kind(), error.field()), (kind, field), "{error}");
    }
}
