//! Cuts through the document door: rake and wear, operations, what a drive cannot turn, and the
//! specific force from a measured cut.

use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::answer;

fn ask(question: &str, fields: &Value) -> Value {
    let text = answer(&json!({ question: fields }).to_string()).unwrap_or_else(|e| panic!("{e}"));
    let reply: Value = serde_json::from_str(&text).unwrap();
    reply[question].clone()
}

fn refused(question: &str, fields: &Value) -> turnwright::Error {
    answer(&json!({ question: fields }).to_string()).unwrap_err()
}

/// The number before the unit.
fn number(text: &Value) -> f64 {
    let text = text.as_str().unwrap_or_else(|| panic!("{text} is no text"));
    text.split(' ').next().unwrap().parse().unwrap()
}

fn cut() -> Value {
    json!({ "material": "c45", "diameter": "50 mm", "depth_of_cut": "2 mm", "feed": "0.25 mm/rev",
            "spindle_speed": "500 rpm",
            "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg",
                      "minor_cutting_edge_angle": "10 deg" } })
}

fn with(mut fields: Value, changes: Value) -> Value {
    for (name, value) in changes.as_object().unwrap() {
        match value {
            Value::Object(inner) if fields[name].is_object() => {
                for (field, value) in inner {
                    fields[name][field] = value.clone();
                }
            }
            Value::Null => {
                fields.as_object_mut().unwrap().remove(name);
            }
            other => fields[name] = other.clone(),
        }
    }
    fields
}

fn codes(answer: &Value) -> Vec<&str> {
    let cautions = answer["cautions"].as_array().unwrap();
    cautions
        .iter()
        .map(|c| c["code"].as_str().unwrap())
        .collect()
}

#[test]
fn rake_and_wear_correct_the_forces_and_stand_in_the_provenance() {
    let plain = ask("cutting", &cut());
    assert!(!plain["provenance"].to_string().contains("rake"));
    let told = with(
        cut(),
        json!({ "tool": { "rake_angle": "-4 deg", "edge": "ordinary" } }),
    );
    let worn = ask("cutting", &told);
    let ratio = |name: &str| number(&worn[name]) / number(&plain[name]);
    // 1.15 for ten degrees less rake, 1.3 for wear: from memory of German machining text books,
    // unverified page; 1.6 for feed and passive force: judgement.
    assert!((ratio("main_force") - 1.15 * 1.3).abs() < 1e-9);
    assert!((ratio("feed_force") - 1.15 * 1.6).abs() < 1e-9);
    assert!((ratio("passive_force") - 1.15 * 1.6).abs() < 1e-9);
    let provenance = worn["provenance"].to_string();
    for what in [
        "rake that the specific force holds for",
        "factor of the forces for rake",
        "factor of the main force for wear",
        "factor of the feed and passive force for wear",
    ] {
        assert!(provenance.contains(what), "{what}");
    }
    let error = refused(
        "cutting",
        &with(cut(), json!({ "tool": { "rake_angle": "26 deg" } })),
    );
    assert_eq!(
        (error.kind(), error.field()),
        (ErrorKind::OutOfRange, "tool.rake_angle")
    );
    let error = refused(
        "cutting",
        &with(cut(), json!({ "tool": { "edge": "worn" } })),
    );
    assert_eq!(error.field(), "tool.edge");
}

#[test]
fn a_plan_takes_rake_and_wear_into_its_forces_and_comes_back() {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let job = serde_json::to_value(job).unwrap();
    let worn = with(
        job,
        json!({ "tool": { "rake_angle": "0 deg", "edge": "worn_out" } }),
    );
    let sheet = ask("plan", &worn);
    assert_eq!(sheet["job"]["tool"]["edge"], "worn_out");
    let provenance = sheet["provenance"].to_string();
    assert!(provenance.contains("factor of the forces for rake"));
    assert!(provenance.contains("factor of the main force for wear"));
    assert_eq!(sheet, ask("plan", &sheet["job"]));
}

#[test]
fn ranges_enclose_the_forces_by_the_scatter() {
    let found = ask("cutting", &cut());
    for name in ["main_force", "feed_force", "passive_force"] {
        let force = number(&found[name]);
        let ends = &found["ranges"][name];
        // 30 % either way: 20 to 30 % from bar to bar, from memory.
        assert!((number(&ends[0]) - 0.7 * force).abs() < 1e-9 * force);
        assert!((number(&ends[1]) - 1.3 * force).abs() < 1e-9 * force);
    }
    assert_eq!(found["edge_in_cut"], "corner_arc_and_straight_edge");
    // The engaged edge of this cut: check value light-geometry-2.
    let h_e = number(&found["equivalent_chip_thickness"]);
    assert!((h_e - 0.192_991_344_747_032_4).abs() < 1e-12);
    let angle = number(&found["effective_edge_angle"]);
    assert!(angle > 60.0 && angle < 95.0, "{angle}");
}

#[test]
fn parting_takes_a_width_and_says_what_can_hurt() {
    let parting = with(
        cut(),
        json!({ "operation": "parting", "width": "3 mm", "feed": "0.08 mm/rev", "depth_of_cut": null,
                "tool": null,
                "material": { "specific_force": "2500 MPa", "exponent": 0.26 } }),
    );
    let found = ask("cutting", &parting);
    // Check value force-parting, times 1.3 for the kind of cut.
    assert!((number(&found["main_force"]) - 1.3 * 1_157.038_616_147_220_8).abs() < 1e-9);
    assert_eq!(found["passive_force"], "0 N");
    assert_eq!(found["chip_width"], "3 mm");
    // Power at the outside diameter: F v by its definition.
    let speed = std::f64::consts::PI * 50.0 * 500.0 / 60_000.0;
    let power = number(&found["main_force"]) * speed / 1000.0;
    assert!((number(&found["power"]) - power).abs() < 1e-12 * power);
    let told = codes(&found);
    for code in [
        "nobody_catches",
        "centre_withdrawn",
        "near_the_jaws",
        "lock_carriage",
        "slower_to_the_middle",
    ] {
        assert!(told.contains(&code), "{code}");
    }
    for (changes, field) in [
        (json!({ "width": null }), "width"),
        (json!({ "depth_of_cut": "2 mm" }), "depth_of_cut"),
        (json!({ "operation": "turning" }), "depth_of_cut"),
        (
            json!({ "tool": { "corner_radius": "0 mm", "cutting_edge_angle": "85 deg" } }),
            "tool.cutting_edge_angle",
        ),
    ] {
        let error = refused("cutting", &with(parting.clone(), changes));
        assert_eq!(error.field(), field, "{error}");
    }
    let error = refused("cutting", &with(cut(), json!({ "width": "3 mm" })));
    assert_eq!(error.field(), "width");
}

#[test]
fn facing_takes_its_power_at_the_outside() {
    let turning = ask("cutting", &cut());
    let facing = ask("cutting", &with(cut(), json!({ "operation": "facing" })));
    assert_eq!(turning["main_force"], facing["main_force"]);
    let ratio = number(&facing["power"]) / number(&turning["power"]);
    assert!((ratio - 50.0 / 48.0).abs() < 1e-12);
    let ratio = number(&facing["removal_rate"]) / number(&turning["removal_rate"]);
    assert!((ratio - 50.0 / 48.0).abs() < 1e-12);
    assert!(codes(&facing).contains(&"lock_carriage"));
}

#[test]
fn a_cut_that_stalls_one_gear_runs_in_another() {
    let lathe = json!({ "lathe": { "spindle_ranges": { "low": ["40 rpm", "500 rpm"],
                                                       "high": ["160 rpm", "2000 rpm"] },
                                   "power": "3 kW", "constant_torque_below": "1000 rpm" } });
    // The base speed of the low range is a quarter of 1000 rpm, and its torque four times as much.
    let at = |speed: &str, lathe: &Value| {
        let asked = with(cut(), json!({ "spindle_speed": speed }));
        let found = ask("cutting", &with(asked, lathe.clone()));
        codes(&found).contains(&"drive_overloaded")
    };
    assert!(!at("150 rpm", &lathe));
    let mut high = lathe.clone();
    let ranges = high["lathe"]["spindle_ranges"].as_object_mut().unwrap();
    ranges.remove("low");
    assert!(at("165 rpm", &high));
    let mut capped = lathe;
    capped["lathe"]["chuck_max_speed"] = json!("1500 rpm");
    let fast = with(cut(), json!({ "spindle_speed": "1600 rpm" }));
    let error = refused("cutting", &with(fast, capped));
    assert_eq!(
        (error.kind(), error.field()),
        (ErrorKind::Impossible, "spindle_speed")
    );
}

#[test]
fn the_specific_force_of_a_reckoned_power_is_the_material_again() {
    for tool in [
        json!({}),
        json!({ "tool": { "rake_angle": "-5 deg", "edge": "worn_out" } }),
    ] {
        for depth in ["2 mm", "0.3 mm"] {
            let asked = with(with(cut(), tool.clone()), json!({ "depth_of_cut": depth }));
            let reckoned = ask("cutting", &asked);
            let measured = with(asked, json!({ "cutting_power": reckoned["power"] }));
            let found = ask("specific_force", &measured);
            assert!((found["against_the_table"].as_f64().unwrap() - 1.0).abs() < 1e-12);
            // The catalogue's figure for this steel.
            assert!((number(&found["specific_force"]) - 2220.0).abs() < 1e-8);
            assert_eq!(found["exponent"], 0.14);
            let by_exponent = with(measured, json!({ "material": null, "exponent": 0.14 }));
            let found = ask("specific_force", &by_exponent);
            assert!((number(&found["specific_force"]) - 2220.0).abs() < 1e-8);
            assert!(found.get("against_the_table").is_none());
        }
    }
}

#[test]
fn the_motor_tells_the_specific_force_less_its_idle_power() {
    let asked = with(
        cut(),
        json!({ "motor_power": "2.7 kW", "idle_power": "0.3 kW", "efficiency": 0.8,
                "material": null, "exponent": 0.26, "diameter": "52 mm",
                // 110 m/min at the mean diameter of 50 mm.
                "spindle_speed": format!("{} rpm", 110_000.0 / (std::f64::consts::PI * 50.0)),
                "tool": { "corner_radius": "0 mm", "cutting_edge_angle": "90 deg" } }),
    );
    let found = ask("specific_force", &asked);
    // Check value force-from-power.
    assert!((number(&found["specific_force"]) - 1_460.677_003_305_151_9).abs() < 1e-8);
    assert!((number(&found["specific_force_at_chip"]) - 2_094.545_454_545_454_5).abs() < 1e-8);
    assert!(!codes(&found).contains(&"small_share"));
    let light = with(asked.clone(), json!({ "motor_power": "0.35 kW" }));
    assert!(codes(&ask("specific_force", &light)).contains(&"small_share"));
    let blind = with(asked.clone(), json!({ "idle_power": null }));
    assert!(codes(&ask("specific_force", &blind)).contains(&"idle_power_unknown"));
    for (changes, field) in [
        (json!({ "idle_power": "2.7 kW" }), "idle_power"),
        (json!({ "efficiency": null }), "efficiency"),
        (json!({ "cutting_power": "1 kW" }), "motor_power"),
        (json!({ "motor_power": null }), "cutting_power"),
        (json!({ "exponent": null }), "material"),
        (json!({ "material": "c45" }), "exponent"),
        (json!({ "motor_power": "200 kW" }), "motor_power"),
        (json!({ "depth_of_cut": "26 mm" }), "depth_of_cut"),
    ] {
        let error = refused("specific_force", &with(asked.clone(), changes.clone()));
        assert_eq!(error.field(), field, "{changes}: {error}");
    }
}

#[test]
fn a_far_ratio_is_spoken_of() {
    let asked = with(cut(), json!({ "cutting_power": "9 kW" }));
    let found = ask("specific_force", &asked);
    assert!(codes(&found).contains(&"far_from_the_table"));
}

#[test]
fn the_usual_slips_of_a_name_are_understood() {
    let slipped = with(cut(), json!({ "tool": null }));
    let slipped = with(
        slipped,
        json!({ "tool": { "nose_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } }),
    );
    let error = refused("cutting", &slipped);
    assert_eq!(error.field(), "tool.nose_radius");
    assert!(error.remedy().contains("corner_radius"), "{error}");
    for (metal, key) in [("steel", "c45"), ("brass", "cuzn39pb3")] {
        let error = refused("cutting", &with(cut(), json!({ "material": metal })));
        assert_eq!(error.field(), "material");
        assert!(error.remedy().contains(key), "{error}");
    }
}

#[test]
fn an_inch_cut_is_answered_in_inch_with_the_same_forces() {
    let metric = ask("cutting", &cut());
    let inch = ask("cutting", &with(cut(), json!({ "units": "inch" })));
    for name in ["main_force", "feed_force", "passive_force"] {
        let lbf = |text: &Value| {
            assert!(text.as_str().unwrap().ends_with(" lbf"), "{text}");
            number(text)
        };
        // 4.4482216152605 N: NIST SP 811, appendix B, from memory.
        let newton = lbf(&inch[name]) * 4.448_221_615_260_5;
        assert!((newton - number(&metric[name])).abs() < 1e-9 * newton);
        let most = lbf(&inch["ranges"][name][1]) * 4.448_221_615_260_5;
        assert!((most - number(&metric["ranges"][name][1])).abs() < 1e-9 * most);
    }
    assert!(
        inch["equivalent_chip_thickness"]
            .as_str()
            .unwrap()
            .ends_with(" in")
    );
}

#[test]
fn no_odd_value_of_a_field_makes_the_door_panic() {
    let lathe = json!({ "spindle_range": ["40 rpm", "2000 rpm"], "power": "0 kW",
                        "constant_torque_below": "1000 rpm" });
    let turning = with(cut(), json!({ "lathe": lathe }));
    let facing = with(turning.clone(), json!({ "operation": "facing" }));
    let parting = with(
        turning.clone(),
        json!({ "operation": "parting", "width": "3 mm", "depth_of_cut": null, "tool": null }),
    );
    let measured = with(
        cut(),
        json!({ "motor_power": "2 kW", "idle_power": "0.5 kW", "efficiency": 0.8 }),
    );
    let at_cut = with(cut(), json!({ "cutting_power": "2 kW" }));
    let odd = [
        json!(null),
        json!(0),
        json!(-1e300),
        json!([]),
        json!({}),
        json!(""),
        json!("0 mm"),
        json!("0.001 mm"),
        json!("100 mm"),
        json!("5000 mm"),
        json!("0.001 mm/rev"),
        json!("10 mm/rev"),
        json!("0.1 rpm"),
        json!("100000 rpm"),
        json!("1 deg"),
        json!("150 deg"),
        json!("-45 deg"),
        json!("0 kW"),
        json!("1000 kW"),
        json!(0.05),
        json!("facing"),
        json!("worn_out"),
    ];
    let (mut answered, mut said_no) = (0, 0);
    for (question, base) in [
        ("cutting", turning),
        ("cutting", facing),
        ("cutting", parting),
        ("specific_force", measured),
        ("specific_force", at_cut),
    ] {
        ask(question, &base);
        let names: Vec<String> = base.as_object().unwrap().keys().cloned().collect();
        let tool = [
            "corner_radius",
            "cutting_edge_angle",
            "minor_cutting_edge_angle",
            "rake_angle",
            "edge",
        ];
        for value in &odd {
            let mut asked: Vec<Value> = Vec::new();
            for name in &names {
                let mut fields = base.clone();
                fields[name.as_str()] = value.clone();
                asked.push(fields);
            }
            for name in tool.iter().filter(|_| base["tool"].is_object()) {
                let mut fields = base.clone();
                fields["tool"][*name] = value.clone();
                asked.push(fields);
            }
            for fields in asked {
                match answer(&json!({ question: fields }).to_string()) {
                    Ok(text) => {
                        answered += 1;
                        assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
                    }
                    Err(error) => {
                        said_no += 1;
                        let parts = [error.given(), error.expected(), error.remedy()];
                        assert!(parts.iter().all(|part| !part.is_empty()), "{error}");
                    }
                }
            }
        }
    }
    // Most odd values are of another kind than their field; enough of them are answered.
    assert!(answered > 50 && said_no > 500, "{answered} {said_no}");
}
