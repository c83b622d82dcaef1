//! Whether a size is within reach and where to measure, as documents ask for it.

use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::answer;

use crate::documents::ask;

fn refused(question: &str, fields: Value) -> turnwright::Error {
    answer(&json!({ question: fields }).to_string()).expect_err("an answer where none was due")
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
        "limits": ["39.977 mm", "40 mm"], "dial": dial(),
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
        ("of", json!("hole"), NotOffered),
        ("limits", json!("30 H7 mm"), NotOffered),
    ] {
        let mut bad = asked.clone();
        bad[field] = value;
        let error = refused("measuring_stops", bad);
        assert_eq!((error.kind(), error.field()), (kind, field), "{error}");
    }
}

#[test]
fn the_last_cut_ends_in_the_zone() {
    let asked = json!({
        "limits": ["29.967 mm", "30 mm"], "start": "34 mm", "cuts": [],
        "dial": dial(), "instrument": "micrometer", "price_scrap": 40, "price_rework": 3, "price_stop": 1,
    });
    for (last, within) in [
        ("20 mm", false),
        ("29.5 mm", false),
        ("30.5 mm", false),
        ("29.967 mm", true),
        ("30 mm", true),
    ] {
        let mut given = asked.clone();
        given["cuts"] = json!([{ "after": "31 mm" }, { "after": last }]);
        if within {
            ask("measuring_stops", given);
        } else {
            let error = refused("measuring_stops", given);
            assert_eq!(error.field(), "cuts[1].after", "{error}");
            assert!(error.remedy().contains("finished size"), "{error}");
        }
    }
    let mut sprung = asked.clone();
    sprung["cuts"] = json!([{ "after": "31 mm", "spring": "-0.01 mm" }, { "after": "30 mm" }]);
    assert_eq!(refused("measuring_stops", sprung).field(), "cuts[0].spring");
    // A free stop is not a price of nothing: the remedy says what to write.
    let mut free = asked;
    free["cuts"] = json!([{ "after": "31 mm" }, { "after": "30 mm" }]);
    free["price_stop"] = json!(0);
    let error = refused("measuring_stops", free);
    assert!(
        error.remedy().contains("0.01") && !error.remedy().contains("metres"),
        "{error}"
    );
}

/// A dial that reads diameters, of an invented lathe.
fn direct() -> Value {
    json!({ "reads": "diameter", "division": "0.02 mm", "divisions_per_turn": 250 })
}

/// A shaft of 35 h7, measured with a calliper of some largest error.
fn h7(largest_error: f64) -> Value {
    json!({
        "limits": ["34.975 mm", "35 mm"], "dial": direct(),
        "instrument": { "kind": "calliper", "largest_error": format!("{largest_error} mm"), "repeatability": "0.003 mm" },
    })
}

fn reach(asked: &Value) -> Value {
    ask("within_reach", asked.clone())["within_reach"].clone()
}

fn size(text: &Value) -> f64 {
    text.as_str()
        .unwrap()
        .split(' ')
        .next()
        .unwrap()
        .parse()
        .unwrap()
}

#[test]
fn a_worse_instrument_is_never_cheaper() {
    let (scrap, rework) = (20.0, 1.0);
    let mut before = 0.0;
    for step in 0..30 {
        let mut asked = h7(0.004 + 0.001 * f64::from(step));
        (asked["price_scrap"], asked["price_rework"]) = (json!(scrap), json!(rework));
        let found = reach(&asked);
        let price =
            scrap * found["scrap"].as_f64().unwrap() + rework * found["rework"].as_f64().unwrap();
        // The uniform part and the normal one change places once: a hundredth of the price.
        assert!(price > 0.99 * before, "{step}: {price} after {before}");
        before = price;
        let corner = found["cautions"]
            .as_array()
            .unwrap()
            .iter()
            .any(|c| c["code"] == "aim_on_the_limit");
        assert_eq!(corner, found["aim"] == "35 mm", "{found}");
        assert!(step < 20 || corner);
        assert!(size(&found["aim"]) <= 35.0);
    }
}

#[test]
fn springs_and_cuts_without_sense_are_refused() {
    let asked = h7(0.008);
    for (fields, field) in [
        (json!({ "spring": "-0.01 mm" }), "spring"),
        (json!({ "taken": "-1 mm" }), "taken"),
        (json!({ "taken": "36 mm" }), "taken"),
        (
            json!({ "spring": "0.02 mm", "spring_along": "0.03 mm" }),
            "spring_along",
        ),
        (
            json!({ "spring": "0.02 mm", "spring_along": "-0.01 mm" }),
            "spring_along",
        ),
        (
            json!({ "spring": "0.02 mm", "spring_of_measured_cut": "-0.01 mm" }),
            "spring_of_measured_cut",
        ),
    ] {
        let mut bad = asked.clone();
        for (name, value) in fields.as_object().unwrap() {
            bad[name] = value.clone();
        }
        let error = refused("within_reach", bad);
        assert_eq!(error.field(), field, "{error}");
        assert!(!error.remedy().is_empty());
    }
}

fn remedy<'a>(found: &'a Value, name: &str) -> Option<&'a Value> {
    found["remedies"]
        .as_array()
        .unwrap()
        .iter()
        .find(|tried| tried["remedy"] == name)
}

#[test]
fn the_middle_is_a_remedy_where_prices_move_the_aim() {
    let mut asked = json!({
        "limits": ["34.975 mm", "35 mm"], "dial": direct(),
        "instrument": { "kind": "micrometer", "largest_error": "0.008 mm", "repeatability": "0.003 mm" },
        "price_scrap": 6, "price_rework": 1,
    });
    let found = reach(&asked);
    assert_eq!(found["within_reach"], false);
    let middle = remedy(&found, "aim_at_the_middle").unwrap();
    assert_eq!(middle["enough"], true, "{found}");
    assert!(
        found["text"]
            .as_str()
            .unwrap()
            .contains("costs more on average")
    );
    for price in ["price_scrap", "price_rework"] {
        asked.as_object_mut().unwrap().remove(price);
    }
    let without = reach(&asked);
    assert_eq!(
        (&without["within_reach"], &without["good"]),
        (&json!(true), &middle["good"])
    );
}

#[test]
fn a_long_way_since_the_measurement_is_measured_anew() {
    let mut asked = json!({ "limits": ["34.975 mm", "35 mm"], "dial": direct(), "instrument": "micrometer", "taken": "20 mm" });
    let found = reach(&asked);
    assert_eq!(
        (&found["within_reach"], &found["dominant"]),
        (&json!(false), &json!("screw"))
    );
    assert_eq!(
        remedy(&found, "measure_nearer").unwrap()["enough"],
        true,
        "{found}"
    );
    // Ten times the way is more than any compound slide has.
    assert_eq!(remedy(&found, "compound_set_over"), None);
    // With little taken the slide is long enough.
    asked["taken"] = json!("0.4 mm");
    asked["dial"]["division"] = json!("0.04 mm");
    asked["limits"] = json!(["34.985 mm", "35 mm"]);
    let found = reach(&asked);
    assert_eq!(remedy(&found, "measure_nearer"), None);
    assert!(remedy(&found, "compound_set_over").is_some(), "{found}");
    // What changes nothing worth a word is left out.
    for tried in found["remedies"].as_array().unwrap() {
        assert!(
            tried["good"].as_f64().unwrap() - found["good"].as_f64().unwrap() >= 0.005
                || tried["enough"] == true
        );
    }
}

/// The least that was said of some means, written into its fields, `times` as large.
fn fed_back(asked: &Value, means: &str, times: f64) -> Option<Value> {
    let found = reach(asked);
    let least = found["least"]
        .as_array()
        .unwrap()
        .iter()
        .find(|least| least["means"] == means)?;
    least.get("times")?;
    let mut again = asked.clone();
    for figure in least["figures"].as_array().unwrap() {
        let place = format!("/{}", figure["field"].as_str().unwrap().replace('.', "/"));
        let value = json!(format!("{} mm", size(&figure["at_most"]) * times));
        let (parent, name) = place.rsplit_once('/').unwrap();
        again.pointer_mut(parent).unwrap()[name] = value;
    }
    Some(again)
}

#[test]
fn the_least_fed_back_just_does() {
    let mut tried = 0;
    let mut both = |asked: Value, means: &str| {
        assert_eq!(reach(&asked)["within_reach"], false, "{asked}");
        if let Some(again) = fed_back(&asked, means, 1.0) {
            assert_eq!(reach(&again)["within_reach"], true, "{asked} {again}");
            let worse = fed_back(&asked, means, 1.02).unwrap();
            assert_eq!(reach(&worse)["within_reach"], false, "{asked} {worse}");
            tried += 1;
        }
    };
    for error in [0.014, 0.02, 0.03, 0.05] {
        both(h7(error), "instrument");
        // A hand that no instrument saves: both figures are told.
        let mut shaky = h7(error);
        shaky["instrument"]["repeatability"] = json!("0.02 mm");
        both(shaky, "instrument");
        let mut certified = h7(error);
        certified["instrument"] = json!({ "kind": "calliper", "expanded": format!("{error} mm"), "k": 2, "repeatability": "0.002 mm" });
        both(certified, "instrument");
        // Touched only, so that the instrument but proves.
        let mut touched = h7(error);
        touched["measured_before_last_cut"] = json!(false);
        touched["dial"]["division"] = json!("0.2 mm");
        touched["limits"] = json!(["34.95 mm", "35 mm"]);
        both(touched, "dial");
    }
    for spring in [0.05, 0.1] {
        let sprung = json!({
            "limits": ["34.975 mm", "35 mm"], "dial": direct(), "instrument": "micrometer",
            "spring": format!("{spring} mm"), "spring_along": format!("{} mm", 0.8 * spring),
        });
        let text = reach(&sprung)["text"].as_str().unwrap().to_owned();
        assert!(text.contains("and differs along the part by"), "{text}");
        both(sprung, "support_and_tool");
    }
    assert!(tried >= 8, "{tried}");
}

#[test]
fn two_remedies_together_where_one_is_not_enough() {
    // A calliper on a coarse dial.
    let asked = json!({
        "limits": ["34.984 mm", "35 mm"], "dial": { "reads": "diameter", "division": "0.05 mm", "divisions_per_turn": 100 },
        "instrument": "calliper", "taken": "0.4 mm",
    });
    let found = reach(&asked);
    assert!(
        found["remedies"]
            .as_array()
            .unwrap()
            .iter()
            .all(|tried| tried["enough"] == false),
        "{found}"
    );
    assert_eq!(
        found["together"]["remedies"],
        json!(["micrometer", "compound_set_over"]),
        "{found}"
    );
    assert_eq!(found["together"]["enough"], true, "{found}");
    let text = found["text"].as_str().unwrap();
    assert!(
        text.contains("Together, with a micrometer; and with the compound slide"),
        "{text}"
    );
    assert!(
        !text.contains("Least that would do, all else as it is: no "),
        "{text}"
    );
}

#[test]
fn an_instrument_that_proves_nothing_decides() {
    // The dial is fine, the calliper can prove no size: known perfectly, it would turn the answer.
    let asked = json!({
        "limits": ["34.975 mm", "35 mm"], "dial": { "reads": "diameter", "division": "0.005 mm", "divisions_per_turn": 400 },
        "instrument": { "kind": "calliper", "largest_error": "0.05 mm", "repeatability": "0.002 mm" },
    });
    let found = reach(&asked);
    assert_eq!(found.get("accept_from"), None);
    assert_eq!(found["deciding"][0]["cause"], "instrument", "{found}");
}

#[test]
fn the_chance_asked_for_is_printed_as_it_was_asked() {
    let mut asked = h7(0.008);
    for (least, text) in [
        (json!(0.999), "99.9 asked for"),
        (json!(0.95), "95 asked for"),
        (json!(0.9999), "99.99 asked for"),
    ] {
        asked["least_good"] = least;
        let found = reach(&asked);
        assert!(found["text"].as_str().unwrap().contains(text), "{found}");
    }
}

#[test]
fn a_spring_goes_to_one_side() {
    // A dial and an instrument that add next to nothing: what comes out is the spring, 30 % more or less.
    let asked = |half: f64, spring: &str, measured: Option<&str>| {
        let mut fields = json!({
            "limits": [format!("{} mm", 30.0 - half), format!("{} mm", 30.0 + half)],
            "dial": { "reads": "diameter", "division": "0.001 mm", "divisions_per_turn": 1000 },
            "instrument": { "kind": "micrometer", "largest_error": "0.1 um", "repeatability": "0.1 um" },
            "spring": spring,
        });
        match measured {
            Some(cut) => fields["spring_of_measured_cut"] = cut.into(),
            None => fields["measured_before_last_cut"] = false.into(),
        }
        fields
    };
    let chance = |found: &Value, what: &str| found[what].as_f64().unwrap();
    // Only touched: all of the spring stays on the part, so that about half lies above the zone, none below.
    let found = reach(&asked(0.02, "0.02 mm", None));
    assert!((chance(&found, "good") - 0.5).abs() < 0.01, "{found}");
    assert!(chance(&found, "scrap") < 1e-6, "{found}");
    // Taken out beforehand, most are good.
    let corrected = remedy(&found, "correct_for_spring").unwrap();
    assert!(chance(corrected, "good") > 0.9, "{found}");
    // The measured cut sprang by as much more: the last goes as far too deep.
    let found = reach(&asked(0.02, "0.02 mm", Some("0.04 mm")));
    assert!((chance(&found, "scrap") - 0.5).abs() < 0.01, "{found}");
    assert!(chance(&found, "rework") < 1e-6, "{found}");
    // Alike, nothing is left of it but what differs from cut to cut.
    let found = reach(&asked(0.02, "0.02 mm", Some("0.02 mm")));
    assert!(chance(&found, "good") > 0.99, "{found}");
}

#[test]
fn the_compound_slide_that_is_there_is_the_one_set_over() {
    let asked = |compound: Option<&str>| {
        let mut lathe = json!({
            "spindle_steps": ["500 rpm"],
            "cross_slide": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100 },
        });
        if let Some(division) = compound {
            lathe["compound"] =
                json!({ "reads": "travel", "division": division, "divisions_per_turn": 50 });
        }
        json!({ "limits": ["29.979 mm", "30 mm"], "lathe": lathe, "instrument": "micrometer" })
    };
    let set_over = |compound: Option<&str>| {
        let found = reach(&asked(compound));
        remedy(&found, "compound_set_over").map(|tried| tried["good"].as_f64().unwrap())
    };
    // A tenth of 0.2 mm is no finer than the mark of the cross slide.
    assert_eq!(set_over(Some("0.2 mm")), None);
    let (coarse, fine) = (
        set_over(Some("0.1 mm")).unwrap(),
        set_over(Some("0.01 mm")).unwrap(),
    );
    assert!(coarse < fine, "{coarse} {fine}");
    // One that nobody named is taken to be like the cross slide's.
    assert_eq!(set_over(None), set_over(Some("0.02 mm")));
}

#[test]
fn a_way_is_told_where_the_usual_ones_end() {
    // Beyond the sizes of micrometers an indicator is set on gauge blocks.
    let fields = json!({
        "limits": ["199.98 mm", "200 mm"],
        "dial": { "reads": "radius", "division": "0.005 mm", "divisions_per_turn": 100 },
        "instrument": "calliper",
    });
    let found = reach(&fields);
    let indicator = remedy(&found, "fine_lever_indicator").unwrap();
    assert_eq!(indicator["enough"], true, "{found}");
    let mut followed = fields;
    followed["instrument"] = "fine_lever_indicator".into();
    assert_eq!(reach(&followed)["within_reach"], true);
    // Where no means is enough alone, how far all of them together must come.
    let hard = json!({
        "limits": ["0.9992 in", "1 in"],
        "dial": { "reads": "radius", "division": "0.001 in", "divisions_per_turn": 100 },
        "instrument": "coarse_calliper",
    });
    let found = reach(&hard);
    let least = found["least"].as_array().unwrap();
    let all = least
        .iter()
        .find(|least| least["means"] == "all_together")
        .unwrap();
    assert!(all["times"].as_f64().unwrap() > 0.0, "{found}");
    let mut followed = hard;
    followed["instrument"] = json!({ "kind": "coarse_calliper" });
    for figure in all["figures"].as_array().unwrap() {
        let at = format!("/{}", figure["field"].as_str().unwrap().replace('.', "/"));
        let (parent, name) = at.rsplit_once('/').unwrap();
        followed.pointer_mut(parent).unwrap()[name] = figure["at_most"].clone();
    }
    assert_eq!(reach(&followed)["within_reach"], true, "{followed}");
}

#[test]
fn a_null_is_a_field_left_out() {
    let fields = h7(0.004);
    let mut with_nulls = fields.clone();
    for name in [
        "sections",
        "cut",
        "tool",
        "holding",
        "youngs_modulus",
        "material",
        "spring",
    ] {
        with_nulls[name] = Value::Null;
    }
    // No schema takes them: what builds a document by one leaves the field out itself.
    let asked = json!({ "within_reach": with_nulls }).to_string();
    let found: Value =
        serde_json::from_str(&turnwright::document::answer(&asked).unwrap()).unwrap();
    assert_eq!(reach(&fields), found["within_reach"]);
}
