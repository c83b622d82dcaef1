//! Bad input gets an error that names field, value, expectation and remedy; nothing panics.

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};
use turnwright::document::answer;
use turnwright::{DivisionsPerTurn, ErrorKind, Lathe, SpindleSpeed};

fn demo() -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    serde_json::to_value(job).unwrap()
}

/// The demo job with one field changed, at a path such as `/tool/corner_radius`.
fn with(pointer: &str, value: Value) -> Value {
    let mut job = demo();
    match job.pointer_mut(pointer) {
        Some(place) => *place = value,
        None => {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            job.pointer_mut(parent).unwrap()[name] = value;
        }
    }
    job
}

fn refused(job: &Value) -> turnwright::Error {
    let error = match answer(&json!({ "plan": job }).to_string()) {
        Ok(answer) => panic!("planned: {}", &answer[..200]),
        Err(error) => error,
    };
    assert!(
        !error.expected().is_empty() && !error.remedy().is_empty(),
        "{error:?}"
    );
    // A caller in C has room for so much.
    assert!(error.remedy().len() < 192, "{error}");
    error
}

#[test]
fn every_bad_value_names_its_field() {
    use ErrorKind::{
        Contradiction, DuplicateField, Impossible, MissingField, MissingUnit, NotFinite,
        NotOffered, OutOfRange, UnknownField, UnknownName, Unreadable, WrongUnit,
    };
    let cases = [
        // zero, negative, NaN, infinite
        (
            "/stock/diameter",
            json!("0 mm"),
            OutOfRange,
            "stock.diameter",
        ),
        (
            "/stock/diameter",
            json!("-34 mm"),
            OutOfRange,
            "stock.diameter",
        ),
        (
            "/stock/diameter",
            json!("NaN mm"),
            NotFinite,
            "stock.diameter",
        ),
        (
            "/stock/diameter",
            json!("inf mm"),
            NotFinite,
            "stock.diameter",
        ),
        ("/lathe/power", json!("-1 kW"), OutOfRange, "lathe.power"),
        // metres for millimetres
        (
            "/stock/diameter",
            json!("0.034 mm"),
            OutOfRange,
            "stock.diameter",
        ),
        (
            "/tool/corner_radius",
            json!("0.0004 mm"),
            OutOfRange,
            "tool.corner_radius",
        ),
        (
            "/lathe/feeds",
            json!(["0.0001 mm/rev"]),
            OutOfRange,
            "lathe.feeds[0]",
        ),
        // wrong unit, bare number, decimal comma
        ("/stock/length", json!("140 rpm"), WrongUnit, "stock.length"),
        (
            "/cutting_speed",
            json!("500 rpm"),
            WrongUnit,
            "cutting_speed",
        ),
        ("/stock/diameter", json!(34), MissingUnit, "stock.diameter"),
        (
            "/stock/diameter",
            json!("34"),
            MissingUnit,
            "stock.diameter",
        ),
        (
            "/stock/diameter",
            json!("34,5 mm"),
            Unreadable,
            "stock.diameter",
        ),
        (
            "/stock/diameter",
            json!(["34 mm"]),
            Unreadable,
            "stock.diameter",
        ),
        (
            "/lathe/spindle_steps",
            json!(["63 rpm", "500"]),
            MissingUnit,
            "lathe.spindle_steps[1]",
        ),
        // unknown fields and names
        (
            "/tool/corner_raduis",
            json!("0.4 mm"),
            UnknownField,
            "tool.corner_raduis",
        ),
        ("/colour", json!("blue"), UnknownField, "colour"),
        ("/material", json!("C45X"), UnknownName, "material"),
        ("/holding", json!("chuk"), UnknownName, "holding"),
        (
            "/lathe/cross_slide/reads",
            json!("radios"),
            UnknownName,
            "lathe.cross_slide.reads",
        ),
        // contradictions
        (
            "/part/limits",
            json!(["35 mm", "35.1 mm"]),
            Contradiction,
            "part.limits",
        ),
        (
            "/part/limits",
            json!(["30 mm", "29.967 mm"]),
            Contradiction,
            "part.limits",
        ),
        ("/part/limits", json!(["30 mm"]), Unreadable, "part.limits"),
        ("/part/limits", json!(30), Unreadable, "part.limits"),
        (
            "/part/limits",
            json!("30 -0.033 mm"),
            Unreadable,
            "part.limits",
        ),
        (
            "/part/limits",
            json!("30 +0 -0.033"),
            MissingUnit,
            "part.limits",
        ),
        (
            "/part/limits",
            json!("30 -0.033 +0 mm"),
            Contradiction,
            "part.limits",
        ),
        (
            "/part/limits",
            json!("30 i8 mm"),
            UnknownName,
            "part.limits",
        ),
        (
            "/part/limits",
            json!("30 H8 mm"),
            Contradiction,
            "part.limits",
        ),
        (
            "/part/limits",
            json!({ "class": "H8", "nominal": "30 mm" }),
            Contradiction,
            "part.limits",
        ),
        (
            "/part/limits",
            json!({ "nominal": "30 mm" }),
            MissingField,
            "part.limits.class",
        ),
        (
            "/part/limits",
            json!({ "class": "q8", "nominal": "30 mm" }),
            UnknownName,
            "part.limits.class",
        ),
        (
            "/part/limits",
            json!({ "class": "h8", "nominal": "30 mm", "plus_minus": "0.1 mm" }),
            Contradiction,
            "part.limits.plus_minus",
        ),
        (
            "/part/limits",
            json!({ "class": "h8", "nominal": "30 mm", "upper_deviation": "0 mm", "lower_deviation": "-0.033 mm" }),
            Contradiction,
            "part.limits.upper_deviation",
        ),
        (
            "/part/limits",
            json!({ "nominal": "30 mm", "upper_deviation": "0 mm" }),
            MissingField,
            "part.limits.lower_deviation",
        ),
        (
            "/part/limits",
            json!({ "nominal": "30 mm", "upper_deviation": "-0.033 mm", "lower_deviation": "0 mm" }),
            Contradiction,
            "part.limits.upper_deviation",
        ),
        (
            "/part/limits",
            json!({ "nominal": "30 mm", "general": "middling" }),
            UnknownName,
            "part.limits.general",
        ),
        (
            "/part/limits",
            json!({ "nominal": "30 mm", "class": "h8", "width": "1 mm" }),
            UnknownField,
            "part.limits.width",
        ),
        // a class beside limits
        ("/part/class", json!("h8"), Contradiction, "part.class"),
        (
            "/part/diameter",
            json!("31 mm"),
            Contradiction,
            "part.limits",
        ),
        (
            "/preferences",
            json!({ "largest_depth": "0.1 mm" }),
            Impossible,
            "part",
        ),
        (
            "/part/length",
            json!("130 mm"),
            Contradiction,
            "part.length",
        ),
        (
            "/lathe/spindle_steps",
            json!([]),
            Contradiction,
            "lathe.spindle_steps",
        ),
        (
            "/lathe/cross_slide/divisions_per_turn",
            json!(0),
            OutOfRange,
            "lathe.cross_slide.divisions_per_turn",
        ),
        (
            "/lathe/cross_slide/divisions_per_turn",
            json!(5e9),
            OutOfRange,
            "lathe.cross_slide.divisions_per_turn",
        ),
        (
            "/lathe/cross_slide/divisions_per_turn",
            json!(-100),
            OutOfRange,
            "lathe.cross_slide.divisions_per_turn",
        ),
        (
            "/lathe/cross_slide/divisions_per_turn",
            json!(1.5),
            Unreadable,
            "lathe.cross_slide.divisions_per_turn",
        ),
        (
            "/lathe/cross_slide/reads",
            json!("travel"),
            Contradiction,
            "lathe.cross_slide.reads",
        ),
        (
            "/lathe/carriage/reads",
            json!("radius"),
            Contradiction,
            "lathe.carriage.reads",
        ),
        ("/zero_at", json!("29 mm"), Contradiction, "zero_at"),
        ("/part/finish", json!("1.6 um"), Unreadable, "part.finish"),
        (
            "/tool/minor_cutting_edge_angle",
            json!("95 deg"),
            Contradiction,
            "tool.minor_cutting_edge_angle",
        ),
        (
            "/preferences",
            json!({ "feed": "0.3 mm/rev" }),
            Contradiction,
            "preferences.feed",
        ),
        // what no step, drive or dial of this lathe can do
        (
            "/lathe/spindle_steps",
            json!([
                "1600 rpm", "1700 rpm", "1800 rpm", "1900 rpm", "1950 rpm", "2000 rpm"
            ]),
            Impossible,
            "lathe.spindle_steps",
        ),
        (
            "/lathe/chuck_max_speed",
            json!("50 rpm"),
            Impossible,
            "lathe.spindle_steps",
        ),
        ("/lathe/power", json!("0.001 kW"), Impossible, "tool"),
        ("/lathe/swing", json!("30 mm"), Impossible, "stock.diameter"),
        (
            "/part/limits",
            json!(["29.993 mm", "30 mm"]),
            Impossible,
            "part.limits",
        ),
        (
            "/lathe/cross_slide/ring",
            json!("fixed"),
            Impossible,
            "lathe.cross_slide",
        ),
        (
            "/stock/diameter",
            json!("30.1 mm"),
            Impossible,
            "stock.diameter",
        ),
        // missing
        (
            "/lathe/cross_slide",
            json!(null),
            MissingField,
            "lathe.cross_slide",
        ),
        (
            "/stock/diameter",
            json!(null),
            MissingField,
            "stock.diameter",
        ),
        // of a later version, refused by name
        (
            "/preferences",
            json!({ "instrument": { "kind": "micrometer", "expanded": "0.002 mm" } }),
            MissingField,
            "preferences.instrument.k",
        ),
        (
            "/preferences",
            json!({ "instrument": "ruler" }),
            UnknownName,
            "preferences.instrument",
        ),
        (
            "/preferences",
            json!({ "measuring_stops": 40 }),
            OutOfRange,
            "preferences.measuring_stops",
        ),
        (
            "/preferences",
            json!({ "measuring_stops": -1 }),
            OutOfRange,
            "preferences.measuring_stops",
        ),
        (
            "/preferences",
            json!({ "least_good": 1.5 }),
            OutOfRange,
            "preferences.least_good",
        ),
        (
            "/preferences",
            json!({ "price_scrap": 20 }),
            MissingField,
            "preferences.price_rework",
        ),
        ("/part/surfaces", json!([]), MissingField, "part.surfaces"),
        (
            "/part/surfaces",
            json!([{ "diameter": "20 mm" }]),
            MissingField,
            "part.surfaces[0].limits",
        ),
        (
            "/part/other_end",
            json!([]),
            MissingField,
            "part.overall_length",
        ),
        (
            "/part/overall_length",
            json!("10 mm"),
            Contradiction,
            "part.overall_length",
        ),
        (
            "/part/overall_limits",
            json!(["69 mm", "71 mm"]),
            MissingField,
            "part.overall_length",
        ),
        (
            "/part/small_diameter",
            json!("30 mm"),
            Contradiction,
            "part.small_diameter",
        ),
        ("/part/chamfer", json!("-1 mm"), OutOfRange, "part.chamfer"),
        (
            "/part/undercut",
            json!({ "width": "2 mm" }),
            MissingField,
            "part.undercut.depth",
        ),
        (
            "/part/undercut",
            json!({ "width": "2 mm", "depth": "15 mm" }),
            Contradiction,
            "part.undercut.depth",
        ),
        (
            "/part/undercut",
            json!({ "width": "80 mm", "depth": "0.3 mm" }),
            Contradiction,
            "part.undercut.width",
        ),
        (
            "/part/chamfer",
            json!("15 mm"),
            Contradiction,
            "part.chamfer",
        ),
        ("/stock/skin", json!("1.9 mm"), Impossible, "stock.skin"),
        ("/stock/skin", json!("-1 mm"), OutOfRange, "stock.skin"),
        (
            "/lathe/cross_slide/division",
            json!("2 mm"),
            Contradiction,
            "lathe.cross_slide.division",
        ),
        (
            "/lathe/cross_slide/backlash",
            json!("2 mm"),
            Contradiction,
            "lathe.cross_slide.backlash",
        ),
        (
            "/stock/run_out",
            json!("5 mm"),
            Contradiction,
            "part.limits",
        ),
        ("/tools", json!({}), MissingField, "tools.rough"),
        (
            "/tools",
            json!({ "rough": { "corner_radius": "0.8 mm", "cutting_edge_angle": "90 deg" },
                    "finish": { "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" } }),
            Contradiction,
            "tools",
        ),
        (
            "/holding",
            json!({ "kind": "chuck", "steadies": [{ "at": "50 mm" }] }),
            NotOffered,
            "holding.steadies",
        ),
        (
            "/preferences",
            json!({ "way": "quickest" }),
            UnknownName,
            "preferences.way",
        ),
    ];
    for (pointer, value, kind, field) in cases {
        println!("{pointer} {value}");
        let error = refused(&with(pointer, value.clone()));
        assert_eq!(
            (error.kind(), error.field()),
            (kind, field),
            "{pointer} {value}: {error}"
        );
    }
    let twice = r#"{ "dial": { "target": "1 mm", "target": "2 mm" } }"#;
    let error = answer(twice).unwrap_err();
    assert_eq!((error.kind(), error.field()), (DuplicateField, "target"));
}

#[test]
fn a_depth_that_no_drive_has_the_power_for_is_told_with_its_unit() {
    let mut job = with("/tool/corner_radius", json!("0.0315 in"));
    job["lathe"]["power"] = json!("0.03 kW");
    // A quarter of the corner: 0.0315 in is 0.8001 mm.
    let error = refused(&job);
    assert_eq!(error.given(), "a tool that cuts from 0.200025 mm of depth");
}

#[test]
fn a_misspelt_needed_field_is_named_with_the_right_one() {
    let mut job = demo();
    let stock = job["stock"].as_object_mut().unwrap();
    let diameter = stock.remove("diameter").unwrap();
    stock.insert("diametre".into(), diameter);
    let error = refused(&job);
    assert_eq!(error.field(), "stock.diametre");
    assert!(error.remedy().contains("diameter"), "{error}");
}

#[test]
fn an_unknown_material_names_the_nearest() {
    let error = refused(&with("/material", json!("11SMn3")));
    assert!(error.remedy().to_lowercase().contains("11smn30"), "{error}");
}

#[test]
fn the_same_refusals_reach_rust() {
    assert_eq!(
        Lathe::with_steps(vec![]).unwrap_err().field(),
        "spindle_steps"
    );
    let n = SpindleSpeed::from_rpm(500.0).unwrap();
    assert_eq!(
        Lathe::with_steps(vec![n, n]).unwrap_err().kind(),
        ErrorKind::Contradiction
    );
    assert_eq!(
        DivisionsPerTurn::new(0).unwrap_err().kind(),
        ErrorKind::OutOfRange
    );
}

/// Values that a careless program sends.
fn odd() -> impl Strategy<Value = Value> {
    prop_oneof![
        Just(Value::Null),
        any::<bool>().prop_map(Value::from),
        any::<f64>().prop_map(|x| json!(x)),
        any::<i64>().prop_map(Value::from),
        ".{0,12}".prop_map(Value::from),
        (
            any::<f64>(),
            proptest::sample::select(vec![
                "mm", "in", "rpm", "m/min", "mm/rev", "N", "kW", "deg", "um", ""
            ])
        )
            .prop_map(|(x, unit)| json!(format!("{x} {unit}"))),
        (
            1e-6..1e6_f64,
            proptest::sample::select(vec![
                "mm", "in", "rpm", "m/min", "mm/rev", "N", "kW", "deg", "um"
            ])
        )
            .prop_map(|(x, unit)| json!(format!("{x} {unit}"))),
        Just(json!([])),
        Just(json!({})),
    ]
}

/// Every place of a document.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_owned());
    match value {
        Value::Object(fields) => fields
            .iter()
            .for_each(|(name, v)| places(v, &format!("{at}/{name}"), found)),
        Value::Array(items) => items
            .iter()
            .enumerate()
            .for_each(|(i, v)| places(v, &format!("{at}/{i}"), found)),
        _ => {}
    }
}

#[test]
fn no_change_of_any_field_makes_the_door_panic_or_answer_outside_the_zone() {
    let mut found = Vec::new();
    places(&demo(), "", &mut found);
    let mut runner = TestRunner::new(crate::jobs::config(4000));
    runner
        .run(
            &(proptest::sample::select(found), odd()),
            |(place, value)| {
                let mut job = demo();
                *job.pointer_mut(&place).unwrap() = value;
                match answer(&json!({ "plan": job }).to_string()) {
                    Ok(answer) => {
                        let answer: Value = serde_json::from_str(&answer).unwrap();
                        let expected = &answer["plan"]["expected"];
                        let size = |v: &Value| {
                            v.as_str()
                                .unwrap()
                                .split(' ')
                                .next()
                                .unwrap()
                                .parse::<f64>()
                                .unwrap()
                        };
                        let d = size(&expected["diameter"]);
                        prop_assert!(
                            size(&expected["limits"][0]) < d && d < size(&expected["limits"][1])
                        );
                    }
                    Err(error) => prop_assert_ne!(error.kind(), ErrorKind::Internal, "{}", error),
                }
                Ok(())
            },
        )
        .unwrap();
}

#[test]
fn no_text_makes_the_door_panic() {
    let mut runner = TestRunner::new(crate::jobs::config(3000));
    runner
        .run(&".{0,120}", |text| {
            let _ = answer(&text);
            let _ = answer(&format!(r#"{{ "finish": {text} }}"#));
            let _ = text.parse::<turnwright::Diameter>();
            let _ = text.parse::<turnwright::Stiffness>();
            let _ = text.parse::<turnwright::ToleranceClass>();
            let _ = text.parse::<turnwright::Limits>();
            let _ = format!("40 {text} mm").parse::<turnwright::Limits>();
            Ok(())
        })
        .unwrap();
}

#[test]
fn a_remedy_fits_what_was_given() {
    let told = |pointer: &str, value: Value| {
        let error = refused(&with(pointer, value));
        (error.expected().to_owned(), error.remedy().to_owned())
    };
    // What lies below a range is zero, of the wrong sign, or in another unit: metres only of a length.
    let speed = |text: &str| told("/lathe/spindle_steps", json!([text])).1;
    assert!(speed("0 rpm").contains("above zero"), "{}", speed("0 rpm"));
    assert!(speed("-3 rpm").contains("sign"), "{}", speed("-3 rpm"));
    assert!(speed("0.01 rpm").contains("unit"), "{}", speed("0.01 rpm"));
    for text in ["0 rpm", "-3 rpm", "0.01 rpm"] {
        assert!(!speed(text).contains("metres"), "{}", speed(text));
    }
    let diameter = |text: &str| told("/stock/diameter", json!(text)).1;
    assert!(diameter("0.034 mm").contains("metres"));
    assert!(diameter("0 in").contains("above zero") && !diameter("0 in").contains("metres"));
    assert!(diameter("-34 mm").contains("sign") && !diameter("-34 mm").contains("metres"));
    assert!(diameter("1e9 mm").contains("unit"));
    // A count: how many, and no quotes where none were.
    let marks = |value: Value| told("/lathe/cross_slide/divisions_per_turn", value);
    for value in [json!(5e9), json!(-100), json!(0), json!(10_001)] {
        let (expected, remedy) = marks(value.clone());
        assert!(
            expected.contains("2 to 10000") && remedy.contains("count the marks"),
            "{value}: {expected}; {remedy}"
        );
    }
    assert!(marks(json!("100")).1.contains("quotes"));
    assert!(!marks(json!(1.5)).1.contains("quotes"));
    let stops = |value: Value| told("/preferences", json!({ "measuring_stops": value }));
    assert!(stops(json!(-1)).0.contains("0 to 4294967295"));
    assert!(
        stops(json!(4_294_967_296_u64))
            .0
            .contains("0 to 4294967295")
    );
}

#[test]
fn a_comma_is_asked_about_with_its_unit() {
    let told = |text: &str| {
        let error = refused(&with("/stock/length", json!(text)));
        error.remedy().to_owned()
    };
    let thousands = told("1,400 mm");
    assert!(
        thousands.contains("\"1400 mm\"") && thousands.contains("\"1.400 mm\""),
        "{thousands}"
    );
    assert!(told("140,5 mm").contains("\"140.5 mm\""));
    // A power of ten is no slip of the pen.
    assert!(!told("140 km").contains("did you mean"));
}

#[test]
fn a_speed_over_the_band_is_told_and_nothing_is_colder_than_absolute_zero() {
    let ask = |job: &Value| {
        let answer = answer(&json!({ "plan": job }).to_string()).unwrap();
        let answer: Value = serde_json::from_str(&answer).unwrap();
        let cautions = answer["plan"]["cautions"].as_array().unwrap().clone();
        cautions.iter().any(|c| c["code"] == "over_the_band")
    };
    assert!(ask(&with("/cutting_speed", json!("500 m/min"))));
    assert!(!ask(&with("/cutting_speed", json!("50 m/min"))));
    let growth = |rise: &str| {
        let asked = json!({ "growth": { "diameter": "40 mm", "rise": rise, "material": "C45" } });
        answer(&asked.to_string())
    };
    assert!(growth("-293.15 K").is_ok());
    let error = growth("-293.2 K").unwrap_err();
    assert_eq!(
        (error.field(), error.kind()),
        ("rise", ErrorKind::OutOfRange)
    );
}

#[test]
fn a_sheet_with_a_lost_size_is_refused_as_lost_when_it_comes_back() {
    let ask = |question: Value| {
        let answer = answer(&question.to_string())?;
        Ok::<Value, turnwright::Error>(serde_json::from_str(&answer).unwrap())
    };
    let mut sheet = ask(json!({ "plan": demo() })).unwrap()["plan"].clone();
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps.iter().position(|s| s["kind"] == "measure").unwrap();
    let measured = json!({ "step": stop, "measured": "20 mm" });
    sheet["measured"] = json!([measured]);
    let after =
        json!({ "after_measurement": { "plan": sheet, "step": stop, "measured": "33 mm" } });
    let error = ask(after).unwrap_err();
    assert!(error.remedy().contains("lost"), "{error}");
    assert_eq!(error.field(), "plan.measured[0].measured");
}

/// The demo job on a plain lathe with the usual feeds, another part and bar, and one of the tools of high-speed steel.
fn plain(stock: Value, part: Value) -> Value {
    let mut job = demo();
    job["stock"] = stock;
    job["part"] = part;
    job["material"] = json!("C45");
    job["tool"] = json!({
        "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "93 deg"
    });
    job["lathe"] = json!({
        "spindle_steps": ["60 rpm", "110 rpm", "200 rpm", "350 rpm", "600 rpm", "1000 rpm", "1800 rpm"],
        "chuck_max_speed": "2500 rpm", "power": "1.5 kW",
        "feeds": ["0.04 mm/rev", "0.06 mm/rev", "0.1 mm/rev", "0.14 mm/rev", "0.2 mm/rev"],
        "cross_slide": { "reads": "diameter", "division": "0.02 mm", "divisions_per_turn": 200 },
        "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 250 }
    });
    for name in [
        "holding",
        "preferences",
        "zero_at",
        "cutting_speed",
        "units",
    ] {
        job.as_object_mut().unwrap().remove(name);
    }
    job
}

fn planned(job: &Value) -> String {
    answer(&json!({ "plan": job }).to_string()).unwrap()
}

#[test]
fn a_bar_too_slender_for_its_holding_is_told_of_the_holding() {
    let short = |class: &str| json!({ "diameter": "10 mm", "class": class, "length": "120 mm" });
    let mut job = plain(
        json!({ "diameter": "12 mm", "length": "200 mm" }),
        short("h7"),
    );
    job["holding"] = json!("chuck");
    let error = refused(&job);
    assert_eq!(error.field(), "holding", "{error}");
    assert!(error.remedy().contains("\"chuck_and_centre\""), "{error}");
    // What it names is a way.
    job["holding"] = json!("chuck_and_centre");
    planned(&job);

    let mut job = plain(
        json!({ "diameter": "8 mm", "length": "400 mm" }),
        json!({ "diameter": "6 mm", "class": "h7", "length": "300 mm" }),
    );
    let error = refused(&job);
    assert!(error.remedy().contains("where the bar bears"), "{error}");
    job["holding"] = json!("chuck_and_centre");
    let error = refused(&job);
    assert_eq!(error.field(), "holding", "{error}");
    assert!(error.given().contains("chuck_and_centre"), "{error}");
    assert!(!error.remedy().contains("live centre"), "{error}");
    assert!(error.remedy().contains("a steady"), "{error}");
}

#[test]
fn ways_that_cannot_be_compared_name_what_stands_in_the_way() {
    let part = json!({ "diameter": "25 mm", "class": "h9", "length": "30 mm" });
    let bar = json!({ "diameter": "30 mm", "length": "120 mm" });
    let mut job = plain(bar, part);
    for (field, value, other) in [("run_out", "0.1 mm", "skin"), ("skin", "0.3 mm", "run_out")] {
        job["stock"] = json!({ "diameter": "30 mm", "length": "120 mm" });
        job["stock"][field] = json!(value);
        job["preferences"] = json!({ "compare_ways": true });
        // To compare is no reason to plan nothing.
        let said = planned(&job).to_string();
        let (_, note) = said
            .split_once("the least time would cost is not told")
            .unwrap();
        let note = note.split_once("not offered").unwrap().0;
        assert!(note.contains(&format!("stock.{field}")), "{note}");
        assert!(note.contains(value) && !note.contains(other), "{note}");
        job["preferences"] = json!({ "way": "least_time" });
        let error = refused(&job);
        assert_eq!(error.field(), "preferences.way", "{error}");
        assert!(error.given().contains(&format!("stock.{field}")), "{error}");
        // As the error says: skimmed, measured, and no more asked.
        job["zero_at"] = json!("29 mm");
        job["preferences"] = json!({ "compare_ways": true });
        planned(&job);
        job.as_object_mut().unwrap().remove("zero_at");
        job["preferences"] = json!({});
        planned(&job);
    }
}

#[test]
fn a_finish_beyond_turning_is_not_sent_to_a_feed_by_hand() {
    let part = json!({ "diameter": "25 mm", "class": "h9", "length": "30 mm", "finish": { "ra": "0.05 um" } });
    let error = refused(&plain(
        json!({ "diameter": "30 mm", "length": "120 mm" }),
        part,
    ));
    assert_eq!(error.field(), "lathe.feeds");
    assert!(!error.remedy().contains("by hand"), "{error}");
    for words in ["ground", "lapped", "polished", "rougher finish"] {
        assert!(error.remedy().contains(words), "{error}");
    }
}

#[test]
fn a_carriage_without_a_dial_is_told_what_to_give_in_its_place() {
    let part = json!({ "diameter": "25 mm", "class": "h9", "length": "30 mm" });
    let mut job = plain(json!({ "diameter": "30 mm", "length": "120 mm" }), part);
    job["preferences"] = json!({ "length_by": "stop" });
    job["lathe"].as_object_mut().unwrap().remove("carriage");
    let error = refused(&job);
    assert_eq!(error.field(), "lathe.carriage");
    for words in ["an indicator", "a rule", "readout"] {
        assert!(error.remedy().contains(words), "{error}");
    }
    let rule = json!({ "reads": "travel", "division": "0.5 mm", "divisions_per_turn": 100, "ring": "readout" });
    let indicator = json!({ "reads": "travel", "division": "0.01 mm", "divisions_per_turn": 100 });
    for instead in [rule, indicator] {
        job["lathe"]["carriage"] = instead;
        assert!(planned(&job).contains("against the stop"));
    }
}

#[test]
fn a_material_without_cutting_speeds_is_asked_for_them() {
    let part = json!({ "diameter": "20 mm", "class": "h8", "length": "45 mm" });
    let mut job = plain(json!({ "diameter": "29.6 mm", "length": "120 mm" }), part);
    job["material"] =
        json!({ "specific_force": "2000 MPa", "exponent": "0.2", "youngs_modulus": "210 GPa" });
    let error = refused(&job);
    assert_eq!(error.field(), "material.cutting_speeds", "{error}");
    assert!(!error.remedy().contains("tool.material"), "{error}");
    job["material"]["cutting_speeds"] = json!({ "high_speed_steel": ["20 m/min", "30 m/min"] });
    planned(&job);
    job["tool"]["material"] = json!("carbide");
    assert_eq!(refused(&job).field(), "tool.material");
    job["tool"].as_object_mut().unwrap().remove("material");
    let error = refused(&job);
    assert_eq!(error.field(), "cutting_speed");
    assert!(error.remedy().contains("tool.material"), "{error}");
}

#[test]
fn a_surface_that_falls_is_told_by_the_size_that_was_given() {
    let surfaces = json!([
        { "diameter": "25 mm", "class": "h9", "length": "30 mm" },
        { "diameter": "20 mm", "class": "h9", "length": "30 mm" }
    ]);
    let error = refused(&plain(
        json!({ "diameter": "30 mm", "length": "120 mm" }),
        json!({ "surfaces": surfaces }),
    ));
    assert_eq!(error.field(), "part.surfaces[1].diameter");
    // 20 h9 is 19.948 to 20.000 mm (ISO 286-2, from memory).
    assert_eq!(error.given(), "20 mm, at its smallest 19.948 mm");
}

/// What is worked out and too small to be plausible is not called less than nothing.
#[test]
fn a_diameter_that_is_left_but_too_small_is_told_of_as_such() {
    use turnwright::{Dial, DialReads, Diameter, Division, Divisions, DivisionsPerTurn};
    let cross = Dial::new(
        DialReads::Diameter,
        Division::from_mm(0.05).unwrap(),
        DivisionsPerTurn::new(100).unwrap(),
    );
    let bar = Diameter::from_mm(198.343).unwrap();
    let expected = |marks: i64| {
        let error = cross
            .diameter_at(bar, Divisions::new(marks).unwrap())
            .unwrap_err();
        assert_eq!(error.field(), "divisions");
        error.expected().to_owned()
    };
    assert!(expected(3965).starts_with("so few that at least 0.1 mm of diameter are left"));
    assert!(expected(3970).starts_with("fewer than reach the middle"));
}
