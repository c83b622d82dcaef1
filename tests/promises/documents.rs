//! Documents: units follow the question, metric and inch give the same plan, catalogue and refusals.

use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::{QUESTIONS, answer};
use turnwright::quantity::rows;

pub fn ask(question: &str, fields: Value) -> Value {
    let document = json!({ question: fields });
    let text = answer(&document.to_string()).unwrap_or_else(|e| panic!("{e}"));
    crate::schemas::accepts(question, &document);
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

pub fn millimetres(text: &Value) -> f64 {
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
fn every_quantity_is_listed_with_ends_and_examples_that_its_units_write() {
    for units in ["metric", "inch"] {
        let all = ask("quantities", json!({ "units": units }));
        let all = all["quantities"]["quantities"].as_array().unwrap();
        assert_eq!(all.len(), rows().len());
        for (listed, row) in all.iter().zip(rows()) {
            assert_eq!(listed["name"], row.name());
            assert_eq!(listed["number"], row.code());
            let units = listed["units"].as_array().unwrap();
            // A text of one of the units, or a plain number where there is none, in the unit that is stored.
            let value = |field: &str| match &listed[field] {
                Value::Number(number) => number.as_f64().unwrap(),
                text => {
                    let (number, unit) = text.as_str().unwrap().split_once(' ').unwrap();
                    let unit = row.kind().spelled(unit).unwrap();
                    unit.to_trade(number.parse().unwrap(), 1.0)
                }
            };
            // In inch the nearest number that is written: a few last digits apart.
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-14 * b.abs();
            assert!(near(value("least"), row.least()), "{listed}");
            assert!(near(value("largest"), row.largest()), "{listed}");
            let vulgar = listed["example"]
                .as_str()
                .is_some_and(|text| text.contains('/') && text.ends_with(" in"));
            assert!(vulgar || row.accepts(value("example")), "{listed}");
            for unit in units {
                let found = row.kind().spelled(unit["unit"].as_str().unwrap()).unwrap();
                assert_eq!(unit["number"], found.code());
            }
        }
    }
    let zero = |name: &str| {
        ask("quantities", json!({ "like": name }))["quantities"]["quantities"][0]["or_zero"].clone()
    };
    assert_eq!(
        (zero("corner_radius"), zero("cutting_speed")),
        (json!(true), json!(false))
    );
    let none = ask("quantities", json!({ "like": "no such thing" }));
    assert_eq!(none["quantities"]["quantities"], json!([]));
}

#[test]
fn unknown_questions_and_later_versions_are_told_apart() {
    let refused = |text: &str| answer(text).unwrap_err();
    assert_eq!(refused(r#"{"finsh": {}}"#).kind(), ErrorKind::UnknownName);
    assert!(refused(r#"{"finsh": {}}"#).remedy().contains("finish"));
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
        if ["materials", "quantities"].contains(question) {
            continue;
        }
        let error = refused(&format!(r#"{{ "{question}": {{}} }}"#));
        assert_eq!(error.kind(), ErrorKind::MissingField, "{question}: {error}");
        let error = refused(&format!(r#"{{ "{question}": [] }}"#));
        assert_eq!(error.kind(), ErrorKind::Unreadable, "{question}: {error}");
    }
}

#[test]
fn text_that_is_no_json_is_told_by_its_place_and_its_field() {
    let refused = |text: &str| {
        let error = answer(text).unwrap_err();
        (
            error.kind(),
            error.field().to_owned(),
            error.given().to_owned(),
        )
    };
    for (text, field, place) in [
        ("", "", "line 1 column 0: "),
        ("[1, 2", "", "line 1 column 5: "),
        (
            "{\"finish\": {\n  \"feed\": 0.2mm }}",
            "",
            "line 2 column 14: ",
        ),
        (
            r#"{"finish": {"tool": {"corner_radius": 0,4 }}}"#,
            "tool",
            "line 1 column 41: ",
        ),
        (
            r#"{"cutting": {"lathe": {"feeds": ["0.1 mm/rev", 0.2.1]}}}"#,
            "lathe.feeds",
            "line 1 column 51: ",
        ),
        (
            r#"{"bar": {"sections": [{}, {"length": "1 mm"#,
            "sections[1].length",
            "line 1 column 42: ",
        ),
        (r#"{"finish": {}} more"#, "", "line 1 column 16: "),
    ] {
        let (kind, at, given) = refused(text);
        assert_eq!(
            (kind, at.as_str()),
            (ErrorKind::Unreadable, field),
            "{text}"
        );
        assert!(given.starts_with(place), "{text}: {given}");
    }
    // A number of JSON may have any exponent; one that no double holds is told as the field's.
    for (text, field) in [
        (r#"{"specific_force": {"efficiency": 1e999}}"#, "efficiency"),
        (
            r#"{"plan": {"preferences": {"price_scrap": -1E+400}}}"#,
            "preferences.price_scrap",
        ),
        (
            r#"{"budget": {"components": [{"name": "a", "k": 2}, {"k": 1e310}]}}"#,
            "components[1].k",
        ),
        (r#"{"version": 1e999}"#, "version"),
    ] {
        let error = answer(text).unwrap_err();
        // As the same number in quotes: it is no text of a number.
        assert_eq!(error.kind(), ErrorKind::Unreadable, "{text}: {error}");
        assert_eq!(error.field(), field, "{text}: {error}");
        assert!(error.expected().contains("double"), "{error}");
        assert!(!error.remedy().contains("quotes"), "{error}");
    }
}

#[test]
fn facing_by_a_gearbox_and_by_a_held_cutting_speed() {
    let fixed = ask(
        "facing",
        json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "spindle_speed": "500 rpm",
                "least_cutting_speed": "20 m/min", "tool_height": "-0.3 mm" }),
    );
    let fixed = &fixed["facing"];
    assert_eq!(fixed["time"], "48 s");
    assert_eq!(fixed["pip_diameter"], "0.6 mm");
    assert_eq!(fixed["cutting_speed_at_bore"], "0 m/min");
    assert!((millimetres(&fixed["slow_below"]) - 12.732).abs() < 1e-3);
    let slow = ask(
        "facing",
        json!({ "diameter": "20 mm", "feed": "0.1 mm/rev", "spindle_speed": "100 rpm",
                "least_cutting_speed": "20 m/min" }),
    );
    assert!(
        slow["facing"]["cautions"]
            .to_string()
            .contains("slow_everywhere")
    );
    let held = json!({ "diameter": "4 in", "bore": "1 in", "feed": "0.008 in/rev",
                       "cutting_speed": "400 ft/min", "max_spindle_speed": "1200 rpm" });
    let held = ask("facing", held);
    let held = &held["facing"];
    assert!(held["full_speed_below"].as_str().unwrap().ends_with(" in"));
    assert!(
        held["cautions"]
            .to_string()
            .contains("rising_spindle_speed")
    );
    let chosen = json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "90 m/min",
                         "lathe": { "spindle_steps": ["180 rpm", "355 rpm", "710 rpm"] } });
    assert_eq!(
        ask("facing", chosen)["facing"]["spindle_speed_outside"],
        "355 rpm"
    );
    for (fields, field) in [
        (
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "90 m/min" }),
            "max_spindle_speed",
        ),
        (
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "90 m/min",
                 "spindle_speed": "300 rpm" }),
            "spindle_speed",
        ),
        (
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "spindle_speed": "900 rpm",
                 "max_spindle_speed": "800 rpm" }),
            "spindle_speed",
        ),
        (
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "spindle_speed": "300 rpm",
                 "bore": "80 mm" }),
            "bore",
        ),
    ] {
        let error = answer(&json!({ "facing": fields }).to_string()).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
    }
}

#[test]
fn a_taper_by_its_ends_its_ratio_its_angle_and_its_name() {
    let by_ends = ask(
        "taper",
        json!({ "large": "40 mm", "small": "38 mm", "length": "80 mm", "length_between_centres": "300 mm" }),
    );
    let taper = &by_ends["taper"];
    assert_eq!(taper["ratio"], 40.0);
    assert!((millimetres(&taper["set_over"]) - 3.749707).abs() < 1e-6);
    assert!(taper["cautions"].to_string().contains("Guard the dog"));
    assert!(!taper["cautions"].to_string().contains("large_set_over"));
    let by_ratio = ask(
        "taper",
        json!({ "ratio": 40, "large": "40 mm", "length": "80 mm" }),
    );
    assert_eq!(by_ratio["taper"]["small"], "38 mm");
    assert_eq!(by_ratio["taper"]["half_angle"], taper["half_angle"]);
    let by_name = ask("taper", json!({ "taper": "Morse 2", "units": "inch" }));
    assert_eq!(by_name["taper"]["ratio"], 20.02);
    assert!(
        by_name["taper"]["taper_per_foot"]
            .as_str()
            .unwrap()
            .ends_with(" in")
    );
    assert!(
        by_name["taper"]["provenance"]
            .to_string()
            .contains("ISO 296")
    );
    let marked = ask(
        "taper",
        json!({ "ratio": 10, "compound": { "reads": "travel", "division": "0.05 mm", "divisions_per_turn": 80 } }),
    );
    let infeed = millimetres(&marked["taper"]["one_mark"]["infeed"]);
    assert!((infeed - 0.05 * (0.05_f64).atan().sin()).abs() < 1e-12);
    let high = ask(
        "taper",
        json!({ "large": "40 mm", "small": "10 mm", "length": "60 mm", "tool_height": "1 mm",
                "compound_travel": "50 mm", "attachment_length": "50 mm" }),
    );
    assert!((millimetres(&high["taper"]["small_end_error"]) - 0.148984).abs() < 1e-6);
    for code in [
        "tool_off_centre",
        "compound_too_short",
        "attachment_too_short",
    ] {
        assert!(
            high["taper"]["cautions"].to_string().contains(code),
            "{code}"
        );
    }
    for (fields, field) in [
        (json!({ "large": "40 mm", "small": "38 mm" }), "length"),
        (json!({ "ratio": 20, "half_angle": "2 deg" }), "half_angle"),
        (
            json!({ "ratio": 20, "large": "40 mm", "small": "38 mm", "length": "80 mm" }),
            "length",
        ),
        (
            json!({ "ratio": 5, "large": "20 mm", "length": "200 mm" }),
            "length",
        ),
        (json!({ "taper": "Morse 9" }), "taper"),
        (json!({ "ratio": 20, "tool_height": "1 mm" }), "small"),
    ] {
        let error = answer(&json!({ "taper": fields }).to_string()).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
    }
}

#[test]
fn growth_of_a_diameter_and_of_a_bar_on_its_centre() {
    let warm = ask(
        "growth",
        json!({ "diameter": "60 mm", "rise": "20 K", "expansion": "23.4 um/(m K)" }),
    );
    let grown = millimetres(&warm["growth"]["growth"]);
    assert!((grown - 0.02808).abs() < 1e-12);
    assert!((millimetres(&warm["growth"]["size_at_20"]) - 60.0 / 1.000468).abs() < 1e-9);
    let held = ask(
        "growth",
        json!({ "length": "400 mm", "diameter": "30 mm", "rise": "15 K", "expansion": "11.5 um/(m K)",
                "youngs_modulus": "210 GPa", "axial_stiffness": "20 kN/mm" }),
    );
    let force = held["growth"]["added_axial_force"].as_str().unwrap();
    assert!(force.starts_with("1309.4"), "{force}");
    assert!(
        held["growth"]["cautions"]
            .to_string()
            .contains("growing_on_centre")
    );
    let stepped = ask(
        "growth",
        json!({ "sections": [{ "diameter": "30 mm", "length": "150 mm" }, { "diameter": "30 mm", "length": "250 mm" }],
                "rise": "15 K", "expansion": "11.5 um/(m K)", "youngs_modulus": "210 GPa",
                "axial_stiffness": "20 kN/mm" }),
    );
    let same = stepped["growth"]["added_axial_force"].as_str().unwrap();
    assert!(same.starts_with("1309.4"), "{same}");
    let thin = ask(
        "growth",
        json!({ "length": "900 mm", "diameter": "8 mm", "rise": "40 K", "material": "c45",
                "axial_stiffness": "20 kN/mm" }),
    );
    for code in ["may_buckle", "hot_work"] {
        assert!(
            thin["growth"]["cautions"].to_string().contains(code),
            "{code}"
        );
    }
    assert!(
        thin["growth"]["provenance"]
            .to_string()
            .contains("thermal expansion")
    );
    for (fields, field) in [
        (json!({ "diameter": "60 mm", "rise": "20 K" }), "expansion"),
        (
            json!({ "length": "60 mm", "rise": "20 K", "material": "c45", "axial_stiffness": "20 kN/mm" }),
            "diameter",
        ),
        (
            json!({ "diameter": "60 mm", "rise": "20 K", "material": "c45", "axial_stiffness": "20 kN/mm" }),
            "length",
        ),
        (
            json!({ "diameter": "60 mm", "length": "60 mm", "rise": "20 K", "material": "c45" }),
            "diameter",
        ),
        (
            json!({ "diameter": "60 mm", "rise": "20 K", "material": "c45", "bore": "10 mm" }),
            "bore",
        ),
    ] {
        let error = answer(&json!({ "growth": fields }).to_string()).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
    }
}

#[test]
fn tool_life_from_lives_from_a_law_and_by_prices() {
    let lives = json!([{ "cutting_speed": "40 m/min", "life": "20 min" },
                       { "cutting_speed": "30 m/min", "life": "120 min" }]);
    let measured = ask("tool_life", json!({ "lives": lives, "life": "60 min" }));
    let exponent = measured["tool_life"]["exponent"].as_f64().unwrap();
    assert!((exponent - 0.160558).abs() < 1e-6);
    let cheapest = ask(
        "tool_life",
        json!({ "constant": "300 m/min", "exponent": 0.25,
                "prices": { "machine_per_hour": 60, "edge_price": 3, "change_time": "1 min" } }),
    );
    assert_eq!(cheapest["tool_life"]["life"], "720 s");
    assert_eq!(cheapest["tool_life"]["fastest"]["life"], "180 s");
    let one = ask(
        "tool_life",
        json!({ "lives": [{ "cutting_speed": "100 ft/min", "life": "60 min" }],
                "tool_material": "high_speed_steel", "cutting_speed": "110 ft/min", "units": "inch" }),
    );
    let one = &one["tool_life"];
    assert!(one["constant"].as_str().unwrap().ends_with(" ft/min"));
    // Ten per cent more speed: 1.1^-8 of the hour.
    let life = one["life"].as_str().unwrap().strip_suffix(" s").unwrap();
    assert!((life.parse::<f64>().unwrap() - 3600.0 * 1.1_f64.powi(-8)).abs() < 1e-6);
    assert!(one["cautions"].to_string().contains("usual_exponent"));
    for (fields, field) in [
        (json!({ "lives": lives }), "life"),
        (
            json!({ "lives": lives, "life": "20 min", "cutting_speed": "30 m/min" }),
            "life",
        ),
        (
            json!({ "lives": lives, "exponent": 0.2, "life": "20 min" }),
            "exponent",
        ),
        (
            json!({ "constant": "300 m/min", "life": "20 min" }),
            "exponent",
        ),
        (
            json!({ "constant": "300 m/min", "exponent": 1.0,
                 "prices": { "machine_per_hour": 60, "edge_price": 3, "change_time": "1 min" } }),
            "exponent",
        ),
        (
            json!({ "lives": [{ "cutting_speed": "40 m/min", "life": "20 min" }], "life": "20 min" }),
            "lives",
        ),
    ] {
        let error = answer(&json!({ "tool_life": fields }).to_string()).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
    }
}

#[test]
fn a_range_with_a_base_speed_of_its_own_comes_back() {
    let mut job = demo();
    let lathe = job["lathe"].as_object_mut().unwrap();
    for field in ["spindle_steps", "step_names"] {
        lathe.remove(field);
    }
    lathe.insert(
        String::from("spindle_ranges"),
        json!({ "low": { "range": ["40 rpm", "500 rpm"], "constant_torque_below": "220 rpm" },
                "high": ["160 rpm", "2000 rpm"] }),
    );
    lathe.insert(String::from("power"), json!("1.5 kW"));
    lathe.insert(String::from("constant_torque_below"), json!("1000 rpm"));
    let first = ask("plan", job);
    let ranges = &first["plan"]["job"]["lathe"]["spindle_ranges"];
    assert_eq!(ranges["low"]["constant_torque_below"], "220 rpm");
    assert_eq!(ranges["high"][1], "2000 rpm");
    assert_eq!(first, ask("plan", first["plan"]["job"].clone()));
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
fn a_feed_for_a_finish_reckons_with_what_the_edge_can_cut() {
    let tool = json!({ "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" });
    let asked = ask(
        "feed_for_finish",
        json!({ "ra": "0.8 um", "spindle_speed": "500 rpm", "travel_per_turn": "20 mm",
                "least_chip_thickness": "10 um", "feed_unevenness": 0.2, "tool": tool }),
    );
    let text = asked["feed_for_finish"].to_string();
    for code in ["unsteady_hand", "uneven_feed", "theory_only"] {
        assert!(text.contains(code), "{code}: {text}");
    }
    assert!(asked["feed_for_finish"]["best_feed"].is_string());
    // A finer finish asks for a feed at which this edge rubs: refused, not answered with a feed.
    let refused = |wanted: Value| {
        let mut question = json!({ "least_chip_thickness": "10 um", "tool": tool });
        for (name, value) in wanted.as_object().unwrap() {
            question[name.as_str()] = value.clone();
        }
        let error =
            turnwright::document::answer(&json!({ "feed_for_finish": question }).to_string());
        error.unwrap_err().field().to_owned()
    };
    assert_eq!(refused(json!({ "ra": "0.4 um" })), "ra");
    assert_eq!(refused(json!({ "rz": "9 um" })), "rz");
    // The feed for a height comes back as that height, the least chip in it.
    let feed = ask(
        "feed_for_finish",
        json!({ "rz": "12 um", "least_chip_thickness": "10 um", "tool": tool }),
    );
    let back = ask(
        "finish",
        json!({ "feed": feed["feed_for_finish"]["feed"], "least_chip_thickness": "10 um", "tool": tool }),
    );
    let rt = back["finish"]["rt_with_least_chip"].as_str().unwrap();
    let rt: f64 = rt.trim_end_matches(" um").parse().unwrap();
    assert!((rt - 12.0).abs() < 1e-9, "{rt}");
}

#[test]
fn what_can_hurt_is_said_beside_the_figures() {
    let severe = |question: &str, fields: Value| -> Vec<String> {
        let asked = ask(question, fields);
        let cautions = asked[question]["cautions"].as_array().unwrap().clone();
        cautions
            .iter()
            .filter(|caution| caution["severity"] != "note")
            .filter_map(|caution| caution["code"].as_str().map(str::to_owned))
            .collect()
    };
    let tool = json!({ "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "95 deg" });
    let burning = severe(
        "cutting",
        json!({ "material": "AZ31", "tool": tool, "diameter": "40 mm", "depth_of_cut": "0.5 mm",
                "feed": "0.05 mm/rev", "cutting_speed": "60 m/min" }),
    );
    assert!(burning.contains(&"material".to_owned()), "{burning:?}");
    let absurd = severe(
        "cutting",
        json!({ "material": "c45", "tool": tool, "diameter": "40 mm", "depth_of_cut": "2 mm",
                "feed": "1.5 mm/rev", "cutting_speed": "300 m/min" }),
    );
    for code in ["feed_against_corner", "above_the_speed_band"] {
        assert!(absurd.contains(&code.to_owned()), "{code}: {absurd:?}");
    }
    let bent = severe(
        "bar",
        json!({ "material": "c45", "sections": [{ "diameter": "20 mm", "length": "1200 mm" }],
                "holding": "chuck", "force": "200 N" }),
    );
    for code in ["bends_for_good", "slender", "taken_as_rigid"] {
        assert!(bent.contains(&code.to_owned()), "{code}: {bent:?}");
    }
    let calm = severe(
        "bar",
        json!({ "material": "c45", "sections": [{ "diameter": "40 mm", "length": "100 mm" }], "force": "100 N",
                "holding": { "kind": "chuck", "stiffness": "40 kN/mm", "rotational_stiffness": "150 kN m/rad" } }),
    );
    assert!(calm.is_empty(), "{calm:?}");
    // The spindle speeds up only where the limit lets it.
    let face = |limit: &str| {
        severe(
            "facing",
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "100 m/min", "max_spindle_speed": limit }),
        )
    };
    assert_eq!(face("100 rpm"), ["chuck_speed"]);
    assert_eq!(face("1500 rpm"), ["rising_spindle_speed"]);
    let swing = json!({ "cutting": { "material": "c45", "tool": tool, "diameter": "200 mm", "depth_of_cut": "1 mm",
                        "feed": "0.1 mm/rev", "spindle_speed": "60 rpm",
                        "lathe": { "spindle_range": ["50 rpm", "2000 rpm"], "swing": "180 mm" } } });
    let error = turnwright::document::answer(&swing.to_string()).unwrap_err();
    assert_eq!(error.field(), "diameter", "{error}");
}

#[test]
fn the_cheapest_aim_of_a_spread_known_from_few_measurements_is_the_cheapest() {
    let priced = |freedom: u32, scrap: u32, aim: Option<f64>| {
        let mut fields = json!({
            "components": [{ "name": "scatter", "standard": "0.004 mm", "degrees_of_freedom": freedom }],
            "limits": ["29.98 mm", "30 mm"], "price_scrap": scrap, "price_rework": 1,
        });
        if let Some(aim) = aim {
            fields["aim"] = json!(format!("{aim:.6} mm"));
        }
        ask("budget", fields)["budget"].clone()
    };
    // By a grid over Student's law, computed elsewhere in forty digits.
    for (freedom, scrap, price) in [(3, 100, 1.270), (5, 100, 0.638), (2, 10, 0.490)] {
        let best = &priced(freedom, scrap, None)["best_aim"];
        let found = best["expected_price"].as_f64().unwrap();
        // The prices were noted to three decimals.
        assert!((found - price).abs() < 6e-4, "{freedom} {scrap}: {best}");
        for aim in (0..=40).map(|at| 29.98 + 0.0005 * f64::from(at)) {
            let there = priced(freedom, scrap, Some(aim));
            let chance = |what: &str| there[what].as_f64().unwrap();
            let price = f64::from(scrap) * chance("scrap") + chance("rework");
            assert!(found <= price + 1e-9, "{aim}: {price} for {found}");
        }
    }
}

#[test]
fn limits_of_a_surface_are_those_of_its_diameter_where_they_name_no_other() {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let mut job = serde_json::to_value(job).unwrap();
    let mut planned = |limits: serde_json::Value| {
        job["part"]["limits"] = limits;
        let question = serde_json::json!({ "plan": job }).to_string();
        let question = turnwright::document::plan::Question::from_text(&question).unwrap();
        question.answer().unwrap().to_string()
    };
    for [short, long] in [
        [
            serde_json::json!({ "class": "h8" }),
            serde_json::json!({ "nominal": "30 mm", "class": "h8" }),
        ],
        [
            serde_json::json!({ "plus_minus": "0.02 mm" }),
            serde_json::json!("30 +/-0.02 mm"),
        ],
        [
            serde_json::json!({ "general": "fine" }),
            serde_json::json!({ "nominal": "30 mm", "general": "fine" }),
        ],
    ] {
        assert_eq!(planned(short), planned(long));
    }
}
