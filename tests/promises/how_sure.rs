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
