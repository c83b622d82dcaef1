//! Budgets, verdicts and aims through the document door.

use serde_json::{Value, json};
use turnwright::ErrorKind::{self, *};
use turnwright::document::answer;

fn ask(question: &str, fields: &Value) -> Value {
    let text = answer(&json!({ question: fields }).to_string()).unwrap_or_else(|e| panic!("{e}"));
    let reply: Value = serde_json::from_str(&text).unwrap();
    reply[question].clone()
}

/// The number before the unit.
fn number(text: &Value) -> f64 {
    let text = text.as_str().unwrap_or_else(|| panic!("{text} is no text"));
    text.split(' ').next().unwrap().parse().unwrap()
}

fn turned() -> Value {
    json!({ "components": [
                { "name": "instrument", "half_width": "0.004 mm" },
                { "name": "mark", "width": "0.01 mm", "sensitivity": 2 },
                { "name": "heat", "half_width": "0.002 mm", "distribution": "arcsine" },
                { "name": "repeat", "standard": "0.003 mm", "degrees_of_freedom": 9 },
                { "name": "gauge", "expanded": "0.002 mm", "k": 2 },
                { "name": "display", "resolution": "0.001 mm" }],
            "limits": ["39.961 mm", "40 mm"] })
}

fn with(base: &Value, pointer: &str, value: Value) -> Value {
    let mut fields = base.clone();
    match fields.pointer_mut(pointer) {
        Some(place) => *place = value,
        None => {
            let (parent, name) = pointer.rsplit_once('/').unwrap();
            fields.pointer_mut(parent).unwrap()[name] = value;
        }
    }
    fields
}

#[test]
fn a_budget_names_what_dominates_and_what_comes_out() {
    let found = ask("budget", &turned());
    // By hand: (16 + 100)/3 + 2 + 9 + 1 + 1/12 square micrometres.
    let square = 116.0_f64 / 3.0 + 12.0 + 1.0 / 12.0;
    assert!((number(&found["combined"]) - square.sqrt() / 1000.0).abs() < 1e-12);
    assert_eq!(found["dominant"], "mark");
    let shares = found["shares"].as_array().unwrap();
    assert_eq!((shares.len(), &shares[0]["name"]), (6, &json!("mark")));
    let of = |share: &Value| share["share"].as_f64().unwrap();
    assert!((shares.iter().map(of).sum::<f64>() - 1.0).abs() < 1e-12);
    assert!(shares.windows(2).all(|pair| of(&pair[0]) >= of(&pair[1])));
    // Only repeat has degrees: u^4/(81/9).
    let nu = found["degrees_of_freedom"].as_f64().unwrap();
    assert!((nu / (square * square / 9.0) - 1.0).abs() < 1e-12);
    assert!(found["good"].as_f64().unwrap() > 0.98);
    assert_eq!(found["aim"], "39.9805 mm");
    assert!(
        found["text"]
            .as_str()
            .unwrap()
            .contains("mark: 0.0058 mm, ")
    );
    assert!(number(&found["accept_from"]) > 39.974);
}

#[test]
fn without_degrees_of_freedom_the_factor_is_two() {
    let found = ask(
        "budget",
        &json!({ "components": [{ "name": "a", "standard": "0.0001 in" }] }),
    );
    assert!((found["coverage_factor"].as_f64().unwrap() - 2.0).abs() < 1e-14);
    assert_eq!(found["degrees_of_freedom"], Value::Null);
    // Without limits nothing is said of good parts.
    assert_eq!(found["good"], Value::Null);
    assert!(found["combined"].as_str().unwrap().ends_with(" in"));
    assert!(found["text"].as_str().unwrap().contains("0.00010 in"));
}

#[test]
fn a_simulation_agrees_with_the_budget_and_says_how_far_it_may_be_off() {
    let fields = with(&turned(), "/simulate", json!({ "draws": 50000, "seed": 3 }));
    let found = ask("budget", &fields);
    let drawn = &found["simulated"];
    assert_eq!(drawn["draws"], 50000);
    let good = drawn["outcome"]["counted"]["good"].as_f64().unwrap();
    let error = drawn["outcome"]["good_error"].as_f64().unwrap();
    // Student's law of nine degrees scatters a little more: a tenth of a percent here.
    assert!((good - found["good"].as_f64().unwrap()).abs() < 4.5 * error + 0.001);
    assert_eq!(found, ask("budget", &fields));
}

#[test]
fn correlated_components_add_with_a_caution() {
    let fields = json!({
        "components": [{ "name": "one", "standard": "0.003 mm" }, { "name": "other", "standard": "0.004 mm" }],
        "correlations": [{ "first": "one", "second": "other", "coefficient": 0.6 }] });
    let found = ask("budget", &fields);
    assert!((number(&found["combined"]) - 39.4_f64.sqrt() / 1000.0).abs() < 1e-12);
    assert_eq!(found["cautions"][0]["code"], "correlated_taken_as_normal");
}

#[test]
fn prices_move_the_aim_to_where_a_part_can_be_saved() {
    let fields = json!({ "limits": ["39.984 mm", "40 mm"], "standard_uncertainty": "0.004 mm",
                         "price_scrap": 10, "price_rework": 1 });
    let shaft = ask("aim", &fields);
    let hole = ask("aim", &with(&fields, "/of", json!("hole")));
    assert!(number(&shaft["aim"]) > number(&shaft["middle"]["aim"]));
    assert!((number(&shaft["aim"]) + number(&hole["aim"]) - 79.984).abs() < 1e-12);
    assert_eq!(shaft["max_material_limit"]["aim"], "40 mm");
    assert_eq!(hole["max_material_limit"]["aim"], "39.984 mm");
    let prices = |which: &Value| which["expected_price"].as_f64().unwrap();
    assert!(prices(&shaft) < prices(&shaft["middle"]));
    assert!(prices(&shaft) < prices(&shaft["max_material_limit"]));
    let wider = ask("aim", &with(&fields, "/half_width", json!("0.003 mm")));
    assert!(prices(&wider) > prices(&shaft));
    let budget = with(
        &with(&turned(), "/price_scrap", json!(10)),
        "/price_rework",
        json!(1),
    );
    assert!(number(&ask("budget", &budget)["best_aim"]["aim"]) > 39.9805);
}

#[test]
fn a_verdict_says_what_is_proved_and_what_is_not() {
    let fields = json!({ "measured": "39.998 mm", "limits": ["39.984 mm", "40 mm"],
                         "expanded_uncertainty": "0.005 mm" });
    let found = ask("verdict", &fields);
    assert_eq!(found["verdict"], "cannot_tell");
    assert_eq!(
        (&found["accept_from"], &found["accept_to"]),
        (&json!("39.989 mm"), &json!("39.995 mm"))
    );
    // Phi(2/2.5) less what lies below the other limit.
    assert!((found["chance_good"].as_f64().unwrap() - 0.788_144_6).abs() < 1e-6);
    let of = |size: &str, feature: &str| {
        let fields = with(
            &with(&fields, "/measured", json!(size)),
            "/of",
            json!(feature),
        );
        ask("verdict", &fields)["verdict"].clone()
    };
    assert_eq!(
        (of("40.01 mm", "shaft"), of("40.01 mm", "hole")),
        (json!("rework"), json!("scrap"))
    );
    assert_eq!(
        (of("39.97 mm", "shaft"), of("39.97 mm", "hole")),
        (json!("scrap"), json!("rework"))
    );
    let newer = ask("verdict", &with(&fields, "/rule", json!("conformance95")));
    assert_eq!(newer["guard_band"], "0.0041125 mm");
    let wide = ask(
        "verdict",
        &with(&fields, "/expanded_uncertainty", json!("0.01 mm")),
    );
    let codes: Vec<&Value> = wide["cautions"]
        .as_array()
        .unwrap()
        .iter()
        .map(|c| &c["code"])
        .collect();
    assert!(codes.contains(&&json!("no_size_proves_it_good")));
    assert_eq!(wide["accept_from"], Value::Null);
}

#[test]
fn every_bad_value_names_its_field_and_a_remedy() {
    let budget = turned();
    let aim = json!({ "limits": ["39.984 mm", "40 mm"], "standard_uncertainty": "0.004 mm",
                      "price_scrap": 10, "price_rework": 1 });
    let verdict = json!({ "measured": "39.998 mm", "limits": ["39.984 mm", "40 mm"],
                          "expanded_uncertainty": "0.005 mm" });
    let pair =
        |first: &str, r: f64| json!([{ "first": first, "second": "heat", "coefficient": r }]);
    let cases: Vec<(&str, &Value, &str, Value, ErrorKind, &str)> = vec![
        (
            "budget",
            &budget,
            "/components",
            json!([]),
            MissingField,
            "components",
        ),
        (
            "budget",
            &budget,
            "/components/0/half_width",
            json!("0 mm"),
            OutOfRange,
            "components[0].half_width",
        ),
        (
            "budget",
            &budget,
            "/components/3/standard",
            json!("-0.003 mm"),
            OutOfRange,
            "components[3].standard",
        ),
        (
            "budget",
            &budget,
            "/components/1/width",
            json!("-1 mm"),
            OutOfRange,
            "components[1].width",
        ),
        (
            "budget",
            &budget,
            "/components/0/standard",
            json!("0.001 mm"),
            Contradiction,
            "components[0].half_width",
        ),
        (
            "budget",
            &budget,
            "/components/0/k",
            json!(2),
            Contradiction,
            "components[0].k",
        ),
        (
            "budget",
            &budget,
            "/components/4/k",
            Value::Null,
            MissingField,
            "components[4].k",
        ),
        (
            "budget",
            &budget,
            "/components/3/standard",
            Value::Null,
            MissingField,
            "components[3].standard",
        ),
        (
            "budget",
            &budget,
            "/components/3/distribution",
            json!("uniform"),
            Contradiction,
            "components[3].distribution",
        ),
        (
            "budget",
            &budget,
            "/components/0/distribution",
            json!("normal"),
            Contradiction,
            "components[0].distribution",
        ),
        (
            "budget",
            &budget,
            "/components/0/distribution",
            json!("round"),
            UnknownName,
            "components[0].distribution",
        ),
        (
            "budget",
            &budget,
            "/components/0/name",
            json!("heat"),
            Contradiction,
            "components",
        ),
        (
            "budget",
            &budget,
            "/components/0/colour",
            json!("red"),
            UnknownField,
            "components[0].colour",
        ),
        (
            "budget",
            &budget,
            "/limits",
            json!(["40 mm", "39.9 mm"]),
            Contradiction,
            "limits",
        ),
        (
            "budget",
            &budget,
            "/aim",
            json!("40.1 mm"),
            Contradiction,
            "aim",
        ),
        (
            "budget",
            &budget,
            "/confidence",
            json!(1),
            OutOfRange,
            "confidence",
        ),
        (
            "budget",
            &budget,
            "/price_scrap",
            json!(5),
            MissingField,
            "price_rework",
        ),
        (
            "budget",
            &budget,
            "/correlations",
            pair("cold", 0.5),
            UnknownName,
            "correlations[0].first",
        ),
        (
            "budget",
            &budget,
            "/correlations",
            pair("mark", 1.5),
            OutOfRange,
            "correlations[0].coefficient",
        ),
        (
            "budget",
            &budget,
            "/correlations",
            pair("heat", 0.5),
            Contradiction,
            "correlations",
        ),
        (
            "budget",
            &budget,
            "/simulate",
            json!({ "draws": 10 }),
            OutOfRange,
            "simulate.draws",
        ),
        (
            "budget",
            &budget,
            "/simulate",
            json!({ "draws": 20_000_000 }),
            OutOfRange,
            "simulate.draws",
        ),
        (
            "budget",
            &budget,
            "/simulate",
            json!({ "seeds": 1 }),
            UnknownField,
            "simulate.seeds",
        ),
        (
            "aim",
            &aim,
            "/standard_uncertainty",
            json!("0.02 mm"),
            Impossible,
            "standard_uncertainty",
        ),
        (
            "aim",
            &aim,
            "/standard_uncertainty",
            Value::Null,
            MissingField,
            "standard_uncertainty",
        ),
        (
            "aim",
            &aim,
            "/price_scrap",
            json!(-1),
            OutOfRange,
            "price_scrap",
        ),
        ("aim", &aim, "/of", json!("plate"), UnknownName, "of"),
        (
            "verdict",
            &verdict,
            "/standard_uncertainty",
            json!("0.002 mm"),
            Contradiction,
            "standard_uncertainty",
        ),
        (
            "verdict",
            &verdict,
            "/measured",
            json!("0 mm"),
            OutOfRange,
            "measured",
        ),
        (
            "verdict",
            &verdict,
            "/rule",
            json!("coin"),
            UnknownName,
            "rule",
        ),
    ];
    for (question, base, pointer, value, kind, field) in cases {
        let fields = with(base, pointer, value);
        let error = answer(&json!({ question: fields }).to_string()).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (kind, field),
            "{pointer}: {error}"
        );
        assert!(
            !error.expected().is_empty() && !error.remedy().is_empty(),
            "{error}"
        );
    }
}

#[test]
fn the_class_of_the_limits_says_whether_a_hole_is_asked_about() {
    // A hole 5 um beyond its largest size is lost; the same part as a shaft has metal left.
    let verdict = |fields: &Value| ask("verdict", fields)["verdict"].clone();
    let hole =
        json!({ "measured": "35.03 mm", "limits": "35 mm H7", "expanded_uncertainty": "4 um" });
    assert_eq!(verdict(&hole), "scrap");
    let object = with(
        &hole,
        "/limits",
        json!({ "nominal": "35 mm", "class": "H7" }),
    );
    assert_eq!(verdict(&object), "scrap");
    let bare = with(&hole, "/limits", json!(["35 mm", "35.025 mm"]));
    assert_eq!(verdict(&bare), "rework");
    assert_eq!(verdict(&with(&bare, "/of", json!("hole"))), "scrap");
    assert_eq!(verdict(&with(&hole, "/of", json!("hole"))), "scrap");

    let dial = json!({ "reads": "diameter", "division": "0.02 mm", "divisions_per_turn": 250 });
    let prices = json!({ "price_scrap": 10, "price_rework": 1 });
    let mut questions = [
        ("verdict", hole),
        (
            "aim",
            json!({ "limits": "35 mm H7", "standard_uncertainty": "6 um" }),
        ),
        (
            "budget",
            json!({ "limits": "35 mm H7", "components": [{ "name": "a", "standard": "6 um" }] }),
        ),
        (
            "within_reach",
            json!({ "limits": "35 mm H7", "dial": dial, "instrument": "micrometer" }),
        ),
    ];
    for (question, fields) in &mut questions {
        if *question != "verdict" {
            for (name, price) in prices.as_object().unwrap() {
                fields[name] = price.clone();
            }
            let found = ask(question, fields);
            let aim = found.pointer("/best_aim/aim").unwrap_or(&found["aim"]);
            // Metal is left in a hole that is too small: the cheap side is below the middle.
            assert!(number(aim) < 35.0125, "{question}: {aim}");
        }
        let text = json!({ *question: with(fields, "/of", json!("shaft")) }).to_string();
        let error = answer(&text).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (Contradiction, "of"),
            "{error}"
        );
    }
}

#[test]
fn a_spread_known_from_few_readings_promises_less() {
    // scipy 1.17, stats.t(2).cdf(12.5/6) twice less one, and the normal law's.
    let known = json!({ "components": [{ "name": "a", "standard": "6 um" }], "limits": ["34.975 mm", "35 mm"] });
    let few = with(&known, "/components/0/degrees_of_freedom", json!(2));
    let good = |fields: &Value| ask("budget", fields)["good"].as_f64().unwrap();
    assert!((good(&known) - 0.962_779).abs() < 1e-6);
    assert!((good(&few) - 0.827_379).abs() < 1e-6);
    let told = ask("budget", &few)["text"].as_str().unwrap().to_owned();
    assert!(told.contains("Student's law of 2.0 degrees"), "{told}");
    // Beside a wider uniform part both laws count: what is drawn agrees.
    let wide = json!([{ "name": "a", "standard": "6 um", "degrees_of_freedom": 2 },
                      { "name": "b", "half_width": "12 um" }]);
    let fields = with(&known, "/components", wide);
    let found = ask("budget", &with(&fields, "/simulate", json!({})));
    let drawn = &found["simulated"]["outcome"];
    let drawn = drawn["counted"]["good"].as_f64().unwrap();
    // Four standard errors of 100 000 draws.
    assert!((good(&fields) - drawn).abs() < 0.006, "{found}");
    let told = found["text"].as_str().unwrap();
    for line in [
        "42.9 % (normal, 2 degrees of freedom)",
        "(uniform)",
        "Of those: good",
    ] {
        assert!(told.contains(line), "{told}");
    }
}

#[test]
fn the_largest_uncertainty_is_that_of_the_whole_spread() {
    let fields =
        json!({ "limits": "35 h7 mm", "half_width": "20 um", "price_scrap": 6, "price_rework": 1 });
    let found = ask("aim", &fields);
    // A uniform spread stays clear of the dear limit until it is as wide as the zone to each side.
    assert!((number(&found["aim"]) - 34.995).abs() < 1e-9);
    assert!((number(&found["largest_standard_uncertainty"]) - 0.025 / 3.0_f64.sqrt()).abs() < 1e-9);
    let text = json!({ "aim": with(&fields, "/half_width", json!("26 um")) }).to_string();
    let error = answer(&text).unwrap_err();
    assert_eq!(
        (error.kind(), error.field()),
        (Impossible, "half_width"),
        "{error}"
    );
}

#[test]
fn a_misspelt_field_is_told_of_before_one_that_is_missing() {
    let refused = |question: &str, fields: Value| {
        answer(&json!({ question: fields }).to_string()).unwrap_err()
    };
    for (question, fields, field, meant) in [
        (
            "verdict",
            json!({ "measured": "35 mm", "limts": "35 h7 mm" }),
            "limts",
            "limits",
        ),
        (
            "verdict",
            json!({ "measured": "35 mm", "limits": "35 h7 mm", "rul": "x" }),
            "rul",
            "rule",
        ),
        (
            "aim",
            json!({ "limits": "35 h7 mm", "half_widht": "4 um" }),
            "half_widht",
            "half_width",
        ),
        (
            "budget",
            json!({ "component": [] }),
            "component",
            "components",
        ),
        (
            "budget",
            json!({ "components": [{ "name": "a", "sensitivty": 2 }] }),
            "components[0].sensitivty",
            "sensitivity",
        ),
        (
            "measuring_stops",
            json!({ "limits": "35 h7 mm", "mis_count": 0.1 }),
            "mis_count",
            "miscount",
        ),
        (
            "within_reach",
            json!({ "limits": "35 h7 mm", "spring_alng": "4 um" }),
            "spring_alng",
            "spring_along",
        ),
        (
            "fit",
            json!({ "nominal": "35 mm", "hole": "H7", "shft": "g6" }),
            "shft",
            "shaft",
        ),
        (
            "limits",
            json!({ "nominl": "35 mm", "class": "g6" }),
            "nominl",
            "nominal",
        ),
    ] {
        let error = refused(question, fields);
        assert_eq!(
            (error.kind(), error.field()),
            (UnknownField, field),
            "{error}"
        );
        assert!(error.remedy().contains(&format!("{meant:?}")), "{error}");
    }
    let error = refused("verdict", json!({ "measured": "35 mm", "colour": "blue" }));
    assert_eq!(
        (error.kind(), error.field()),
        (UnknownField, "colour"),
        "{error}"
    );
}

#[test]
fn remedies_of_plain_numbers_speak_of_numbers() {
    let one = json!({ "components": [{ "name": "a", "expanded": "6 um", "k": 2, "degrees_of_freedom": 5 }],
                      "limits": "35 h7 mm", "price_scrap": 2, "price_rework": 1, "confidence": 0.95 });
    for (place, value, remedy) in [
        (
            "/components/0/degrees_of_freedom",
            json!(0),
            "write a number from 1",
        ),
        ("/components/0/k", json!(0), "write a number from"),
        ("/price_scrap", json!(-1), "write a number from"),
        (
            "/price_rework",
            json!(0),
            "write a small price such as 0.01",
        ),
        ("/confidence", json!(95), "write 0.95 for 95 %"),
    ] {
        let text = json!({ "budget": with(&one, place, value) }).to_string();
        let error = answer(&text).unwrap_err();
        assert_eq!(error.kind(), OutOfRange, "{error}");
        assert!(
            error.remedy().starts_with(remedy) && !error.remedy().contains("metre"),
            "{error}"
        );
    }
    let pair = json!({ "components": [{ "name": "a", "standard": "1 um" }, { "name": "b", "standard": "1 um" }],
                       "correlations": [{ "first": "a", "second": "b", "coefficient": 1.2 }] });
    let error = answer(&json!({ "budget": pair }).to_string()).unwrap_err();
    assert_eq!(
        error.remedy(),
        "write a number from -1 to 1, without a unit"
    );
    // No number is printed with three hundred figures.
    let far = json!({ "verdict": { "measured": "1e300 mm", "limits": "35 h7 mm", "expanded_uncertainty": "4 um" } });
    let error = answer(&far.to_string()).unwrap_err();
    assert_eq!(error.given(), "1e300 mm");
    let unnamed = with(&one, "/components/0/name", json!(" "));
    let error = answer(&json!({ "budget": unnamed }).to_string()).unwrap_err();
    assert_eq!(error.field(), "components[0].name", "{error}");
}
