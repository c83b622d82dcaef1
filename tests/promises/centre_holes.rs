//! Centre holes: the size follows work, end and load; what cannot be drilled is refused by its field.

use proptest::prelude::*;
use serde_json::{Value, json};
use turnwright::ErrorKind;
use turnwright::document::answer;

use crate::documents::{ask, millimetres};

fn hole(fields: Value) -> Value {
    ask("centre_hole", fields)["centre_hole"].take()
}

fn refused(fields: Value) -> turnwright::Error {
    answer(&json!({ "centre_hole": fields }).to_string()).unwrap_err()
}

#[test]
fn a_heavier_work_has_a_larger_hole_until_the_end_is_too_small_for_it() {
    // ISO 866, form A, from memory: d 3.15 has D2 6.7, d 4 has 8.5, d 6.3 has 13.2.
    let light = hole(json!({ "diameter": "40 mm" }));
    assert_eq!(light["pilot_diameter"], "3.15 mm");
    assert_eq!(light["countersink_diameter"], "6.7 mm");
    assert!(light.get("mean_pressure").is_none() && light.get("spindle_speed").is_none());
    let heavy = hole(json!({ "diameter": "40 mm", "mass": "60 kg" }));
    assert!(millimetres(&heavy["pilot_diameter"]) > 3.15, "{heavy}");
    // Half of m g on the trapezium that the cone throws to the side, by hand: (D2 + d)/2 (D2 - d) sqrt(3)/2.
    let (outer, inner) = (
        millimetres(&heavy["countersink_diameter"]),
        millimetres(&heavy["pilot_diameter"]),
    );
    let trapezium = 0.5 * (outer + inner) * (outer - inner) * 3_f64.sqrt() / 2.0;
    let by_hand = 0.5 * 60.0 * 9.80665 / trapezium;
    let told = heavy["mean_pressure"].as_str().unwrap();
    let told: f64 = told.strip_suffix(" MPa").unwrap().parse().unwrap();
    // Both round a few times in their last digit.
    assert!((told - by_hand).abs() < 1e-12 * by_hand, "{told} {by_hand}");
    assert!(told <= 10.0, "{told}");
    let warned = |answer: &Value| {
        let cautions = answer["cautions"].as_array().unwrap();
        cautions.iter().any(|c| c["code"] == "centre_pressure")
    };
    assert!(!warned(&heavy));
    let thin = hole(json!({ "diameter": "40 mm", "end_diameter": "12 mm", "mass": "200 kg" }));
    assert!(
        millimetres(&thin["countersink_diameter"]) <= 6.0 && warned(&thin),
        "{thin}"
    );
}

#[test]
fn a_hole_that_stays_has_a_guard_and_one_that_may_not_a_stub() {
    let stays = hole(json!({ "diameter": "40 mm", "may_stay": true }));
    assert_eq!(stays["form"], "B");
    assert!(millimetres(&stays["guard_diameter"]) > millimetres(&stays["countersink_diameter"]));
    assert!(stays.get("stub").is_none());
    let goes = hole(json!({ "diameter": "40 mm", "may_stay": false }));
    assert_eq!(goes["form"], "A");
    assert!(millimetres(&goes["stub"]) > millimetres(&goes["depth"]));
    let asked = hole(json!({ "diameter": "40 mm", "may_stay": true, "form": "A" }));
    assert_eq!(asked["form"], "A");
}

#[test]
fn the_drill_runs_at_its_largest_diameter_on_a_step_of_the_lathe() {
    let free = hole(json!({ "diameter": "25 mm", "cutting_speed": "30 m/min" }));
    // v = 0.6 x 30 m/min at the countersink of 5.3 mm: n = 18 / (pi 0.0053) = 1081 rpm.
    let told = free["spindle_speed"].as_str().unwrap().to_owned();
    let rpm: f64 = told.strip_suffix(" rpm").unwrap().parse().unwrap();
    let by_hand = 18.0 / (std::f64::consts::PI * 0.0053);
    assert!((rpm - by_hand).abs() < 1e-12 * by_hand, "{rpm} {by_hand}");
    let lathe = json!({ "spindle_steps": ["500 rpm", "1000 rpm", "2000 rpm"], "step_names": ["A", "B", "C"] });
    let stepped = hole(json!({ "diameter": "25 mm", "cutting_speed": "30 m/min", "lathe": lathe }));
    assert_eq!(stepped["spindle_speed"], "1000 rpm");
    assert_eq!(stepped["lever"], "B");
    let fast = json!({ "spindle_steps": ["3000 rpm"] });
    let error = refused(json!({ "diameter": "25 mm", "cutting_speed": "30 m/min", "lathe": fast }));
    assert_eq!(
        (error.field(), error.kind()),
        ("lathe", ErrorKind::Impossible)
    );
    let error = refused(json!({ "diameter": "25 mm", "lathe": { "spindle_steps": ["3000 rpm"] } }));
    assert_eq!(
        (error.field(), error.kind()),
        ("cutting_speed", ErrorKind::MissingField)
    );
}

#[test]
fn what_has_no_centre_hole_is_refused_by_its_field() {
    let error = refused(json!({ "diameter": "20 mm", "end_diameter": "1.5 mm" }));
    assert_eq!(
        (error.field(), error.kind()),
        ("end_diameter", ErrorKind::Impossible)
    );
    let error = refused(json!({ "diameter": "1.5 mm" }));
    assert_eq!(
        (error.field(), error.kind()),
        ("diameter", ErrorKind::Impossible)
    );
    let error = refused(json!({ "diameter": "20 mm", "end_diameter": "21 mm" }));
    assert_eq!(
        (error.field(), error.kind()),
        ("end_diameter", ErrorKind::Contradiction)
    );
    let error = refused(json!({ "diameter": "20 mm", "form": "C" }));
    assert_eq!(
        (error.field(), error.kind()),
        ("form", ErrorKind::UnknownName)
    );
    let error = refused(json!({ "diameter": "20 mm", "weight": "3 kg" }));
    assert_eq!(
        (error.field(), error.kind()),
        ("weight", ErrorKind::UnknownField)
    );
}

proptest! {
    #![proptest_config(crate::jobs::config(512))]
    /// More load never asks for a smaller hole, more end never forbids a larger one, and no hole takes more
    /// than half of the end.
    #[test]
    fn holes_grow_with_load_and_end(end in 6.0..90.0_f64, more in 0.0..80.0_f64, force in 0.0..3000.0_f64) {
        let of = |end: f64, force: f64| {
            hole(json!({ "diameter": "90 mm", "end_diameter": format!("{end} mm"), "force": format!("{force} N") }))
        };
        let size = |hole: &Value| millimetres(&hole["pilot_diameter"]);
        let wider = (end + more).min(90.0);
        let (few, many) = (of(end, 0.0), of(end, force));
        prop_assert!(size(&few) <= size(&many));
        prop_assert!(size(&many) <= size(&of(wider, force)));
        prop_assert!(millimetres(&many["countersink_diameter"]) <= 0.5 * end);
        prop_assert!(size(&many) < millimetres(&many["countersink_diameter"]));
    }
}
