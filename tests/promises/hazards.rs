//! What would scrap a part, break a tool or throw the work out of the jaws: invented jobs on the invented lathes of
//! the examples, changed in one thing.

use serde_json::{Value, json};
use turnwright::advice::diagnosis::SizeAt;
use turnwright::document::plan::Question;
use turnwright::plan::{AfterMeasurement, Sheet, StepKind};
use turnwright::{Diameter, Error, Units};

/// The invented spindle of an example, of other stock and another part.
fn both_ends(stock: [&str; 2], first: &[(f64, f64)], other: &[(f64, f64)], overall: f64) -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    let mut job = serde_json::to_value(job).unwrap();
    let surfaces = |of: &[(f64, f64)]| -> Vec<Value> {
        of.iter()
            .map(|(diameter, length)| {
                let diameter = format!("{diameter} mm");
                json!({
                    "diameter": diameter,
                    "limits": { "nominal": diameter, "general": "medium" },
                    "length": format!("{length} mm"),
                })
            })
            .collect()
    };
    job["stock"] = json!({ "diameter": stock[0], "length": stock[1] });
    job["part"] = json!({
        "surfaces": surfaces(first),
        "other_end": surfaces(other),
        "overall_length": format!("{overall} mm"),
    });
    job
}

/// The invented shaft of an example.
fn shaft() -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    serde_json::to_value(job).unwrap()
}

fn plan(job: &Value) -> Result<Sheet, Error> {
    Question::from_text(&json!({ "plan": job }).to_string())?.answer()
}

fn words(sheet: &Sheet, kind: StepKind) -> &str {
    let step = sheet.steps.iter().find(|step| step.kind == kind);
    &step.unwrap_or_else(|| panic!("no step {kind:?}")).text
}

/// The places of the measuring stops.
fn stops(sheet: &Sheet) -> Vec<usize> {
    (0..sheet.steps.len())
        .filter(|at| sheet.steps[*at].kind == StepKind::Measure)
        .collect()
}

/// A sheet carried on after one size measured anywhere.
fn report(sheet: &Sheet, step: usize, mm: f64) -> AfterMeasurement {
    let size = Diameter::from_mm(mm).unwrap();
    sheet.after(step, &[SizeAt::anywhere(size)], None).unwrap()
}

/// The first number behind some words.
fn number_after(text: &str, words: &str) -> f64 {
    let (_, rest) = text
        .split_once(words)
        .unwrap_or_else(|| panic!("no {words:?} in {text}"));
    let end = rest
        .find(|c: char| !c.is_ascii_digit() && c != '.' && c != '-')
        .unwrap_or(rest.len());
    rest[..end].parse().unwrap()
}

#[test]
fn a_part_turned_round_is_gripped_where_it_is_held() {
    // Beside a short neck there is a long cylinder: the jaws go on along it until the tool has room.
    let job = both_ends(
        ["30 mm", "100 mm"],
        &[(10.0, 10.0), (25.0, 60.0)],
        &[(20.0, 20.0)],
        90.0,
    );
    let sheet = plan(&job).unwrap();
    let turn = words(&sheet, StepKind::TurnRound);
    assert!(turn.contains("on its finished 25.00 mm"), "{turn}");
    let (grip, out) = (
        number_after(turn, "25.00 mm over "),
        number_after(turn, "(copper, aluminium), "),
    );
    assert!(grip >= out / 3.0 && out - 20.0 > 10.0, "{turn}");

    // A part of two cylinders, the longer one first.
    let long = both_ends(
        ["34 mm", "200 mm"],
        &[(30.0, 150.0)],
        &[(25.0, 30.0)],
        180.0,
    );
    assert!(plan(&long).is_ok());

    // Nothing but a neck to hold: the cut would lever the part out of the jaws.
    let neck = both_ends(["60 mm", "70 mm"], &[(16.0, 12.0)], &[(50.0, 40.0)], 60.0);
    let error = plan(&neck).unwrap_err();
    assert_eq!(error.field(), "part.other_end");
    assert!(
        error.expected().contains("the jaws hold at least"),
        "{error}"
    );
}

#[test]
fn a_blade_leaves_no_part_too_short() {
    for (blade, mark, settable) in [(2.2, 0.5, true), (2.3, 0.5, true), (3.1, 0.2, false)] {
        let mut job = shaft();
        job["stock"]["length"] = "160 mm".into();
        job["part"] = json!({
            "diameter": "30 mm", "class": "h9", "length": "40 mm",
            "length_limits": ["39.9 mm", "40.3 mm"],
        });
        job["preferences"] = json!({ "parting": format!("{blade} mm") });
        job["lathe"]["carriage"]["division"] = format!("{mark} mm").into();
        if !settable {
            job["lathe"]["carriage"]["ring"] = "fixed".into();
        }
        let sheet = match plan(&job) {
            Ok(sheet) => sheet,
            Err(error) => panic!("{error}"),
        };
        let part = words(&sheet, StepKind::PartOff);
        let left = number_after(part, "which leaves ");
        assert!((39.9..=40.3).contains(&left), "{part}");
        let along = match settable {
            true => -number_after(part, "carriage to Z "),
            false => number_after(part, "cross slide out, carriage "),
        };
        // Both are printed to the hundredth.
        assert!((along - blade - left).abs() < 0.011, "{part}");
    }
}

#[test]
fn a_long_part_is_never_parted_right_through() {
    // The dial of that job counts the radius, 0.02 mm a mark, 100 marks a turn. A third of 30 mm stays.
    for (length, centre, through) in [(60, false, true), (120, true, false), (120, false, false)] {
        let mut job = shaft();
        job["stock"] = json!({ "diameter": "30 mm", "length": "250 mm" });
        job["part"] = json!({
            "diameter": "27 mm", "limits": ["26 mm", "27.2 mm"], "length": format!("{length} mm"),
        });
        job["holding"] = if centre { "chuck_and_centre" } else { "chuck" }.into();
        job["preferences"] = json!({ "parting": "3 mm", "batch": 3 });
        let sheet = match plan(&job) {
            Ok(sheet) => sheet,
            Err(error) => panic!("{error}"),
        };
        let part = words(&sheet, StepKind::PartOff);
        assert_eq!(part.contains("let it fall into a tray"), through, "{part}");
        let sawn = "by hand 5 turns in, to 10.00 mm and no deeper";
        assert_eq!(part.contains(sawn), !through, "{part}");
        assert_eq!(part.contains("saw it through in the vice"), !through);
        assert_eq!(part.contains("The centre stays in."), centre);
        let saw = sheet.kit.iter().any(|item| item.contains("hacksaw"));
        assert_eq!(saw, !through);
        // What is left of a bar is no longer than it is.
        let batch = &sheet.batch.as_ref().unwrap().text[1];
        assert_eq!(
            batch.contains("too short for another part"),
            !through,
            "{batch}"
        );
    }
}

#[test]
fn tools_for_hardened_steel_are_of_carbide() {
    let mut job = shaft();
    job["material"] = "100cr6_h".into();
    job["tool"]["material"] = "carbide".into();
    job["lathe"]["spindle_steps"] = json!(["80 rpm", "160 rpm", "315 rpm", "630 rpm", "1250 rpm"]);
    job["holding"] = "chuck_and_centre".into();
    job["preferences"] = json!({ "parting": "3 mm" });
    let fields = job["lathe"].as_object_mut().unwrap();
    fields.remove("step_names");
    let sheet = match plan(&job) {
        Ok(sheet) => sheet,
        Err(error) => panic!("{error}"),
    };
    for kind in [StepKind::CentreDrill, StepKind::Edges, StepKind::PartOff] {
        let text = words(&sheet, kind);
        assert!(
            text.contains("of carbide") && !text.contains("high-speed"),
            "{text}"
        );
    }
}

#[test]
fn no_power_feed_is_named_on_a_way_too_short_for_it() {
    let mut job = shaft();
    job["part"]["length"] = "2 mm".into();
    let sheet = plan(&job).unwrap();
    let cut = words(&sheet, StepKind::FinishCut);
    assert!(
        cut.contains("No power feed on so short a way: by hand"),
        "{cut}"
    );
    assert!(sheet.short().contains(", by hand"), "{}", sheet.short());
    let long = plan(&shaft()).unwrap();
    assert!(words(&long, StepKind::FinishCut).contains("Feed off at"));
    assert!(!long.short().contains(", by hand"));
}

#[test]
fn the_short_sheet_names_spring_passes() {
    let mut job = both_ends(["14 mm", "260 mm"], &[], &[], 0.0);
    job["part"] = json!({ "diameter": "12 mm", "class": "h8", "length": "200 mm" });
    job["holding"] = "chuck_and_centre".into();
    let sheet = plan(&job).unwrap();
    let passes = sheet
        .steps
        .iter()
        .filter(|s| s.text.contains("(a spring pass:"))
        .count();
    assert!(passes > 0, "{sheet}");
    assert_eq!(sheet.short().matches("twice at that mark").count(), passes);
}

#[test]
fn nothing_measured_is_thicker_than_what_was_measured_before() {
    let sheet = plan(&shaft()).unwrap();
    let stops = stops(&sheet);
    let [first, last] = stops[..] else {
        panic!("{} stops", stops.len());
    };
    let expected = sheet.steps[first].diameter.mm();
    let then = report(&sheet, first, expected).plan.unwrap();
    // Misread by one turn of the thimble, 0.5 mm, from a size between both.
    let told = report(&then, last, expected + 0.1);
    assert!(told.plan.is_none());
    let why = told.why_no_plan.unwrap();
    assert!(
        why.starts_with("Stop: ") && why.contains("was measured before"),
        "{why}"
    );

    // So much over that nobody goes on from there: the readings stay, as the stop has it on paper.
    let stop = &then.steps[last].text;
    let above = number_after(stop, "Above ");
    let told = report(&then, last, above + 0.02);
    assert!(told.repeat, "{}", told.text);
    assert!(
        told.text.contains("the ring is not touched"),
        "{}",
        told.text
    );
    assert_eq!(told.ring_to, None);
}

#[test]
fn no_aim_leans_on_a_cut_that_cannot_be_made() {
    // Lost parts 30 times as dear as another cut: before, the aim went up to where what is over cannot be cut.
    let mut job = shaft();
    job["preferences"] = json!({ "price_scrap": 30, "price_rework": 1, "price_stop": 0.2 });
    let sheet = plan(&job).unwrap();
    let limits = sheet.job.part().surfaces()[0].limits();
    let end = sheet
        .steps
        .iter()
        .rfind(|step| step.kind == StepKind::FinishCut)
        .unwrap()
        .diameter;
    // The ring is set to the middle of the zone; sizes are read to the micrometre.
    assert!((end.mm() - limits.middle().mm()).abs() <= 0.0011, "{end}");
    assert!(
        sheet.expected.good.value() > 0.95,
        "{}",
        sheet.expected.good
    );
    assert_eq!(sheet.units(), Units::Metric);
}

#[test]
fn no_centre_is_advised_for_an_end_without_room_for_its_hole() {
    let said = |job: &Value| {
        let sheet = plan(job).unwrap();
        let mut cautions = sheet.cautions.iter();
        let caution = cautions.find(|c| c.code() == "support_not_enough");
        caution
            .unwrap_or_else(|| panic!("{sheet}"))
            .text()
            .to_owned()
    };
    let mut job = shaft();
    job["holding"] = "chuck".into();
    job["stock"] = json!({ "diameter": "12 mm", "length": "160 mm" });
    job["part"] = json!({ "diameter": "10 mm", "class": "h8", "length": "70 mm" });
    job["preferences"] = json!({ "largest_depth": "0.3 mm", "finish_feed": "0.05 mm/rev" });
    assert!(said(&job).contains("A live centre would be enough"));

    // An invented pin for an invented clock.
    job["material"] = "cuzn39pb3".into();
    job["stock"] = json!({ "diameter": "4 mm", "length": "100 mm" });
    job["part"] = json!({ "surfaces": [
        { "diameter": "1.5 mm", "limits": ["1.48 mm", "1.5 mm"], "length": "4 mm" },
        { "diameter": "3 mm", "limits": ["2.98 mm", "3 mm"], "length": "6 mm" },
    ] });
    job["tool"]["corner_radius"] = "0.1 mm".into();
    job["lathe"]["cross_slide"]["division"] = "0.01 mm".into();
    job["preferences"] = json!({});
    job["lathe"].as_object_mut().unwrap().remove("feeds");
    let pin = said(&job);
    assert!(!pin.contains("live centre would"), "{pin}");
}

#[test]
fn a_field_that_is_null_counts_as_left_out() {
    let mut job = shaft();
    let without = plan(&job).unwrap().to_string();
    job["preferences"] = Value::Null;
    job["stock"]["skin"] = Value::Null;
    assert_eq!(plan(&job).unwrap().to_string(), without);
}

#[test]
fn what_was_measured_stays_on_record_whatever_is_measured_after_it() {
    let sheet = plan(&shaft()).unwrap();
    let stops = stops(&sheet);
    let measured = |sheet: &Sheet, step: usize, off: f64| {
        let mm = sheet.steps[step].diameter.mm() + off;
        (
            Diameter::from_mm(mm).unwrap(),
            report(sheet, step, mm).plan.unwrap(),
        )
    };
    let (first, then) = measured(&sheet, stops[0], -0.03);
    let next = (stops[0] + 1..then.steps.len())
        .find(|at| then.steps[*at].kind == StepKind::Measure)
        .unwrap();
    let (_, after) = measured(&then, next, 0.02);
    let (cut, stop) = (&after.steps[stops[0] - 1], &after.steps[stops[0]]);
    assert!(
        cut.done && stop.done && stop.kind == StepKind::Measure,
        "{after}"
    );
    assert_eq!([cut.diameter, stop.diameter], [first, first]);
    let said = format!("(taken to be {:.3} mm)", first.mm());
    assert!(
        stop.text.contains(&said) && !stop.text.contains("(expect "),
        "{}",
        stop.text
    );
}
