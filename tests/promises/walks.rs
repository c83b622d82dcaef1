//! What a person asks at the lathe, with figures worked out apart from the crate (derived, by hand).

use serde_json::{Value, json};

fn ask(question: &str, fields: Value) -> Value {
    let text = turnwright::document::answer(&json!({ question: fields }).to_string())
        .unwrap_or_else(|e| panic!("{e}"));
    let mut answer: Value = serde_json::from_str(&text).unwrap();
    answer[question].take()
}

fn number(value: &Value) -> f64 {
    let text = value
        .as_str()
        .unwrap_or_else(|| panic!("{value} is no text"));
    text.split(' ').next().unwrap().parse().unwrap()
}

/// True to the figures written down, half a unit of the last place.
fn near(value: &Value, expected: f64, half_unit: f64) {
    let found = number(value);
    assert!(
        (found - expected).abs() <= half_unit,
        "{value} instead of {expected}"
    );
}

#[test]
fn which_lever_for_steel_of_52_mm() {
    let steps = [
        "40 rpm", "63 rpm", "100 rpm", "160 rpm", "250 rpm", "400 rpm", "630 rpm", "1000 rpm",
        "1600 rpm",
    ];
    let answer = ask(
        "spindle_speed",
        json!({ "diameter": "52 mm", "cutting_speed": "25 m/min", "lathe": { "spindle_steps": steps } }),
    );
    near(&answer["ideal"], 153.0, 0.05);
    assert_eq!(answer["spindle_speed"], "100 rpm");
    near(&answer["cutting_speed"], 16.3, 0.05);
    let above = &answer["neighbour_above"];
    assert_eq!(above["spindle_speed"], "160 rpm");
    near(&above["cutting_speed"], 26.1, 0.05);
    assert!(
        above["because"].as_str().unwrap().contains("4.6 %"),
        "{above}"
    );
    assert_eq!(answer["governed_by"], "cutting_speed");
}

#[test]
fn an_inch_shop_gets_inches_and_an_old_chuck_governs() {
    let steps = [
        "60 rpm", "105 rpm", "190 rpm", "330 rpm", "580 rpm", "1000 rpm",
    ];
    let answer = ask(
        "spindle_speed",
        json!({ "diameter": "7/8 in", "cutting_speed": "80 ft/min", "lathe": { "spindle_steps": steps } }),
    );
    near(&answer["ideal"], 349.2, 0.05);
    assert_eq!(answer["spindle_speed"], "330 rpm");
    near(&answer["cutting_speed"], 75.6, 0.05);
    assert!(
        answer["cutting_speed"]
            .as_str()
            .unwrap()
            .ends_with("ft/min")
    );

    let answer = ask(
        "spindle_speed",
        json!({ "diameter": "18 mm", "cutting_speed": "150 m/min", "lathe": {
            "spindle_steps": ["250 rpm", "500 rpm", "1000 rpm", "2000 rpm"],
            "max_spindle_speed": "2000 rpm", "chuck_max_speed": "1200 rpm" } }),
    );
    near(&answer["ideal"], 2653.0, 0.5);
    assert_eq!(answer["spindle_speed"], "1000 rpm");
    assert_eq!(answer["governed_by"], "chuck");
    assert!(
        answer["neighbour_above"]["because"]
            .as_str()
            .unwrap()
            .contains("1200")
    );
}

#[test]
fn a_finish_by_hand_feed() {
    let answer = ask(
        "feed_for_finish",
        json!({ "ra": "3.2 um", "spindle_speed": "250 rpm", "travel_per_turn": "24 mm",
                "tool": { "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" } }),
    );
    near(&answer["feed"], 0.1985, 0.00005);
    near(&answer["feed_rate"], 49.6, 0.05);
    near(&answer["handwheel"], 2.07, 0.005);
    let cautions = answer["cautions"].to_string();
    assert!(cautions.contains("14.4 deg"), "{cautions}");
    assert!(cautions.contains("no hand is steady"), "{cautions}");
    assert!(cautions.contains("built-up edge"), "{cautions}");
}

#[test]
fn centre_or_not() {
    let section = json!([{ "diameter": "16 mm", "length": "160 mm" }]);
    let bar = |holding: Value| {
        ask(
            "bar",
            json!({ "youngs_modulus": "206 GPa", "sections": section, "holding": holding, "force": "55 N" }),
        )
    };
    let springs = |kind: &str| json!({ "kind": kind, "stiffness": "50 kN/mm", "rotational_stiffness": "30 kN m/rad", "centre_stiffness": "15 kN/mm" });
    near(
        &bar(json!("chuck"))["worst"]["deflection"],
        0.227 / 2.0,
        0.0003,
    );
    near(
        &bar(springs("chuck"))["worst"]["deflection"],
        0.323 / 2.0,
        0.0003,
    );
    let centre = bar(json!("chuck_and_centre"));
    near(&centre["worst"]["deflection"], 0.0067 / 2.0, 0.00003);
    near(&centre["worst"]["at"], 94.0, 0.5);
    near(
        &bar(springs("chuck_and_centre"))["worst"]["deflection"],
        0.0108 / 2.0,
        0.00003,
    );
    let answer = ask(
        "support",
        json!({ "youngs_modulus": "206 GPa", "sections": section, "cut": { "passive_force": "55 N" },
                "tolerance": "0.04 mm", "holding": springs("chuck") }),
    );
    assert_eq!(answer["advice"], "chuck_and_centre");
    assert_eq!(answer["length_over_diameter"], 10.0);
    near(&answer["options"][0]["diameter_error"], 0.323, 0.0005);
    near(&answer["options"][1]["diameter_error"], 0.0108, 0.00005);
}

#[test]
fn a_dial_that_will_not_do() {
    let answer = ask(
        "dial",
        json!({ "dial": { "reads": "diameter", "division": "0.002 in", "divisions_per_turn": 100 },
                "zero_at": "1.375 in", "target": "1.1875 in", "limits": ["1.187 in", "1.188 in"] }),
    );
    // The lower limit itself is a mark: in the zone by geometry.
    assert_eq!(answer["size_at_mark"], "1.187 in");
    assert_eq!(answer["in_zone"], true);
    let answer = ask(
        "dial",
        json!({ "dial": { "reads": "diameter", "division": "0.002 in", "divisions_per_turn": 100 },
                "zero_at": "1.375 in", "target": "1.1875 in", "limits": ["1.1871 in", "1.188 in"] }),
    );
    assert_eq!(answer["in_zone"], false);
    assert_eq!(answer["neighbours"][0]["size"], "1.189 in");
    assert_eq!(answer["neighbours"][1]["size"], "1.187 in");
    assert!(answer["remedies"].to_string().contains("set the ring"));
}

#[test]
fn the_invented_pin_is_planned_as_a_person_would() {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let sheet = ask("plan", serde_json::to_value(job).unwrap());
    // 34 to 30 on a radius dial of 0.02 mm: marks of a dial zeroed on the bar give 30.00 and 29.96,
    // both outside a zone of 29.967 to 30.000 that keeps 0.004 from its ends (worked by hand).
    assert!(
        sheet["dials"].to_string().contains("30.00 mm and 29.96 mm"),
        "{}",
        sheet["dials"]
    );
    // By hand: another cut takes 0.018 mm at least, so that what is over is lost too where the aim lies above
    // 30 - 0.018 = 29.982 mm, below the middle: the aim is the middle of 29.9835, to the micrometre.
    assert_eq!(sheet["expected"]["diameter"], "29.984 mm");
    let speeds: Vec<_> = sheet["steps"]
        .as_array()
        .unwrap()
        .iter()
        .filter_map(|s| s["spindle_speed"].as_str())
        .collect();
    assert!(speeds.iter().all(|n| *n == "500 rpm"), "{speeds:?}");
    let text = sheet.to_string();
    for words in [
        "KEY OUT",
        "by hand one whole turn",
        "Never past Z -72",
        "hold the handle",
        "LOST",
        "RADIUS",
    ] {
        assert!(text.contains(words), "{words}");
    }
    // 3 turns of 200 marks of 0.1 mm and 100 marks are 70 mm.
    assert!(text.contains("Z -70.00 mm (3 turns + mark 100)"), "{text}");
}
