//! The questions about bars: supports, loads, whip, what a taper tells.

use serde_json::{Value, json};

use crate::documents::{ask, millimetres};

#[test]
fn a_stepped_bar_between_supports_answers_all_it_was_asked() {
    let asked = ask(
        "bar",
        json!({
            "material": "c45",
            "sections": [{ "diameter": "30 mm", "length": "50 mm" },
                         { "diameter": "30 mm", "end_diameter": "14 mm", "length": "120 mm" },
                         { "diameter": "14 mm", "length": "60 mm", "bore": "6 mm" }],
            "holding": { "kind": "chuck_and_centre", "stiffness": "40 kN/mm", "steadies": [{ "at": "100 mm" }] },
            "force": "120 N", "at": "200 mm", "stations": ["60 mm", "230 mm"], "feed_force": "80 N",
            "loads": [{ "at": "50 mm", "moment": "2 N m" }], "look_at": ["100 mm", "200 mm"],
            "depth_of_cut": "0.5 mm", "least_depth": "0.02 mm", "depth_before": "2 mm",
            "spindle_speed": "1200 rpm", "eccentricity": "0.05 mm", "scatter": 0.25,
        }),
    );
    let bar = &asked["bar"];
    let mm = |name: &str| millimetres(&bar[name]);
    let range = bar["deflection_range"].as_array().unwrap();
    // The range is the scatter that was given, on both sides.
    assert!((millimetres(&range[0]) / mm("deflection") - 0.75).abs() < 1e-12);
    assert!((millimetres(&range[1]) / mm("deflection") - 1.25).abs() < 1e-12);
    // The bar stands still on its rigid steady.
    assert!(millimetres(&bar["bent"][0]["deflection"]).abs() < 1e-12);
    assert!(millimetres(&bar["bent"][1]["deflection"]) > 0.0);
    assert_eq!(bar["steady_forces"].as_array().map(Vec::len), Some(1));
    let passes = &bar["passes"];
    assert!(
        (millimetres(&passes["true_depth"]) + millimetres(&passes["left"]) - 0.5).abs() < 1e-12
    );
    assert!(millimetres(&passes["true_depth_after_heavy"]) > 0.5);
    for name in [
        "first_critical_speed",
        "safe_from_whip_up_to",
        "whip",
        "sag",
        "taper",
        "barrel",
        "centre_force",
        "deflection_by_feed_force",
    ] {
        assert!(!bar[name].is_null(), "{name}");
    }
    let whipping = ask(
        "bar",
        json!({ "material": "c45", "sections": [{ "diameter": "10 mm", "length": "800 mm" }], "holding": "chuck",
                "force": "1 N", "spindle_speed": "600 rpm" }),
    );
    assert!(whipping["bar"]["cautions"].to_string().contains("\"whip\""));
}

#[test]
fn a_measured_taper_tells_of_the_chuck_or_of_the_tailstock() {
    let bar = |holding: &str, measured: Value| {
        ask(
            "bar",
            json!({ "youngs_modulus": "210 GPa", "sections": [{ "diameter": "30 mm", "length": "150 mm" }],
                    "holding": holding, "force": "120 N", "measured": measured }),
        )
    };
    let chuck = bar(
        "chuck",
        json!([{ "at": "50 mm", "diameter_error": "0.0151976 mm" }, { "at": "150 mm", "diameter_error": "0.0943362 mm" }]),
    );
    let stiffness = chuck["bar"]["chuck"]["stiffness"].as_str().unwrap();
    let stiffness: f64 = stiffness.trim_end_matches(" kN/mm").parse().unwrap();
    // The errors were given to a tenth of a micrometre in their seventh digit.
    assert!((stiffness - 30.0).abs() < 0.01, "{stiffness}");
    let centres = bar(
        "between_centres",
        json!([{ "at": "30 mm", "diameter_error": "0.01 mm" }, { "at": "130 mm", "diameter_error": "0.05 mm" }]),
    );
    assert!((millimetres(&centres["bar"]["tailstock_correction"]) - 0.03).abs() < 1e-12);
}

#[test]
fn support_weighs_every_way_and_says_what_each_would_allow() {
    let asked = ask(
        "support",
        json!({ "material": "c45", "tool": { "corner_radius": "0.4 mm", "cutting_edge_angle": "45 deg" },
                "sections": [{ "diameter": "16 mm", "length": "500 mm" }],
                "cut": { "depth_of_cut": "0.3 mm", "feed": "0.1 mm/rev", "spindle_speed": "1600 rpm" },
                "tolerance": "0.08 mm", "centre_hole_allowed_to_stay": false }),
    );
    let support = &asked["support"];
    let options = support["options"].as_array().unwrap();
    let names: Vec<&str> = options
        .iter()
        .filter_map(|option| option["holding"].as_str())
        .collect();
    assert_eq!(
        names,
        ["chuck", "chuck_and_centre", "between_centres", "steady"]
    );
    for option in options {
        assert!(
            option["largest_depth"].is_string() && option["first_critical_speed"].is_string(),
            "{option}"
        );
    }
    // 16 mm standing out 500 mm whip at about 3000 rpm: 1600 rpm is safe, but the bar springs.
    assert_eq!(support["advice"], "steady");
    assert!(
        support["cautions"]
            .to_string()
            .contains("centre_hole_must_go")
    );
    assert!(
        support["cautions"]
            .to_string()
            .contains("steady_needs_a_track")
    );
    let too_long = json!({ "support": {
        "youngs_modulus": "210 GPa", "sections": [{ "diameter": "16 mm", "length": "900 mm" }],
        "holding": "between_centres", "cut": { "passive_force": "20 N" }, "tolerance": "0.1 mm",
        "lathe": { "spindle_range": ["50 rpm", "2000 rpm"], "between_centres": "750 mm" } } });
    let error = turnwright::document::answer(&too_long.to_string()).unwrap_err();
    assert_eq!(error.field(), "sections", "{error}");
}

#[test]
fn whip_holds_the_spindle_back() {
    let asked = ask(
        "spindle_speed",
        json!({ "diameter": "12 mm", "cutting_speed": "200 m/min", "overhang": "500 mm", "material": "c45",
                "lathe": { "spindle_range": ["50 rpm", "6000 rpm"] } }),
    );
    assert_eq!(asked["spindle_speed"]["governed_by"], "whip");
    let alone = json!({ "spindle_speed": { "diameter": "12 mm", "cutting_speed": "200 m/min", "density": "7850 kg/m3",
                        "lathe": { "spindle_range": ["50 rpm", "6000 rpm"] } } });
    let error = turnwright::document::answer(&alone.to_string()).unwrap_err();
    assert_eq!(error.field(), "overhang", "{error}");
}

#[test]
fn places_off_the_bar_are_named_by_their_path() {
    let refused = |more: Value| {
        let mut bar = json!({ "youngs_modulus": "210 GPa", "sections": [{ "diameter": "20 mm", "length": "100 mm" }],
                              "holding": "chuck", "force": "100 N" });
        for (name, value) in more.as_object().unwrap() {
            bar[name.as_str()] = value.clone();
        }
        let error = turnwright::document::answer(&json!({ "bar": bar }).to_string()).unwrap_err();
        error.field().to_owned()
    };
    assert_eq!(refused(json!({ "at": "101 mm" })), "at");
    assert_eq!(
        refused(json!({ "stations": ["50 mm", "101 mm"] })),
        "stations[1]"
    );
    assert_eq!(
        refused(json!({ "loads": [{ "at": "101 mm", "force": "1 N" }], "look_at": ["50 mm"] })),
        "loads[0].at"
    );
    assert_eq!(refused(json!({ "look_at": ["101 mm"] })), "look_at[0]");
    assert_eq!(
        refused(json!({ "measured": [{ "at": "101 mm", "diameter_error": "0.1 mm" }] })),
        "measured[0].at"
    );
    assert_eq!(
        refused(json!({ "holding": { "kind": "chuck", "steadies": [{ "at": "120 mm" }] } })),
        "holding.steadies[0].at"
    );
    assert_eq!(
        refused(
            json!({ "sections": [{ "diameter": "20 mm", "length": "100 mm", "bore": "20 mm" }] })
        ),
        "sections[0].bore"
    );
    assert_eq!(refused(json!({ "sections": [] })), "sections");
    assert_eq!(refused(json!({ "least_depth": "0.01 mm" })), "depth_of_cut");
    assert_eq!(
        refused(json!({ "holding": { "kind": "chuck", "stiffness": "0 kN/mm" } })),
        "holding.stiffness"
    );
    assert_eq!(
        refused(
            json!({ "density": "7850 kg/m3", "eccentricity": "0.1 mm", "spindle_speed": "100000 rpm" })
        ),
        "spindle_speed"
    );
}

#[test]
fn a_cut_warms_the_work_and_a_tailstock_off_the_axis_makes_it_taper() {
    let warmed = ask(
        "growth",
        json!({ "diameter": "60 mm", "material": "c45",
                "heated_by": { "cutting_power": "1.2 kW", "time": "60 s", "mass": "0.986 kg", "heat_share": 0.1,
                               "specific_heat": "470 J/(kg K)" } }),
    );
    // 0.1 * 1200 W * 60 s / (0.986 kg * 470 J/(kg K)) = 15.54 K.
    let rise = warmed["growth"]["rise"].as_str().unwrap();
    assert!(
        rise.starts_with("15.53") || rise.starts_with("15.54"),
        "{rise}"
    );
    let both = json!({ "growth": { "diameter": "60 mm", "material": "c45", "rise": "5 K",
                       "heated_by": { "cutting_power": "1 kW", "time": "60 s", "mass": "1 kg" } } });
    let error = turnwright::document::answer(&both.to_string()).unwrap_err();
    assert_eq!(error.field(), "rise", "{error}");

    let bar = |holding: &str, more: Value| {
        let mut bar = json!({ "youngs_modulus": "210 GPa", "density": "7850 kg/m3", "force": "100 N", "holding": holding,
                              "sections": [{ "diameter": "20 mm", "length": "200 mm" }] });
        for (name, value) in more.as_object().unwrap() {
            bar[name.as_str()] = value.clone();
        }
        turnwright::document::answer(&json!({ "bar": bar }).to_string())
    };
    let off = bar(
        "between_centres",
        json!({ "set_over": "0.05 mm", "at": "100 mm" }),
    )
    .unwrap();
    assert!(off.contains(r#""tailstock_error":"-0.05 mm""#), "{off}");
    let loaded = bar("chuck", json!({ "end_mass": "2 kg" })).unwrap();
    assert!(
        loaded.contains(r#""first_critical_speed":"5162.46"#),
        "{loaded}"
    );
    let error = bar("chuck_and_centre", json!({ "end_mass": "2 kg" })).unwrap_err();
    assert_eq!(error.field(), "end_mass", "{error}");
}
