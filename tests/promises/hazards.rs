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

/// The invented shaft, its limits 0.6 mm apart, its cross slide counting so.
fn read_as(reads: &str, ring: &str) -> Value {
    let mut job = shaft();
    job["part"] =
        json!({ "diameter": "30 mm", "limits": ["29.6 mm", "30.2 mm"], "length": "40 mm" });
    let cross = &mut job["lathe"]["cross_slide"];
    cross["reads"] = reads.into();
    cross["ring"] = ring.into();
    job
}

/// What is taken off the diameter up to the first stop, and the sheet carried on where this share of it was.
fn taken_by_share(job: &Value, share: f64) -> (f64, AfterMeasurement) {
    let sheet = plan(job).unwrap();
    let stop = stops(&sheet)[0];
    let taken = 34.0 - sheet.steps[stop].diameter.mm();
    let answer = report(&sheet, stop, 34.0 - share * taken);
    (taken, answer)
}

#[test]
fn a_dial_that_counts_otherwise_is_planned_anew_from_where_it_reads_zero() {
    for (reads, share, other, really) in [
        ("radius", 0.5, "diameter", 0.02),
        ("diameter", 2.0, "radius", 0.04),
    ] {
        for ring in ["settable", "fixed", "readout"] {
            let mut job = read_as(reads, ring);
            let (taken, answer) = taken_by_share(&job, share);
            let size = 34.0 - share * taken;
            let text = &answer.text;
            assert!(
                answer.plan.is_none() && text.starts_with("Stop: "),
                "{text}"
            );
            let told = format!("lathe.cross_slide.reads {other} and zero_at ");
            let zero = number_after(text, &told);
            // The ring that is turned reads 0 at the size measured; the one that is not, where it did.
            let expected = if ring == "fixed" { 34.0 } else { size };
            assert!((zero - expected).abs() < 6e-4, "{ring} {zero} {expected}");
            assert_eq!(
                text.contains("turn the ring only, to 0,"),
                ring == "settable"
            );
            job["lathe"]["cross_slide"]["reads"] = other.into();
            job["zero_at"] = format!("{zero} mm").into();
            let anew = plan(&job).unwrap();
            let zero_x = words(&anew, StepKind::ZeroX);
            assert_eq!(
                zero_x.contains("must read 0"),
                ring != "readout",
                "{zero_x}"
            );
            for cut in anew.cuts() {
                let Some(reading) = cut.reading else {
                    continue;
                };
                let there = zero - really * reading.divisions().count() as f64;
                assert!((cut.diameter.mm() - there).abs() < 1e-6, "{}", cut.text);
            }
        }
    }
}

#[test]
fn a_size_that_no_way_of_reading_explains_leaves_it_as_it_is() {
    for (reads, share) in [("diameter", 0.5), ("radius", 2.0)] {
        for ring in ["settable", "fixed", "readout"] {
            let job = read_as(reads, ring);
            let (_, answer) = taken_by_share(&job, share);
            let text = &answer.text;
            assert!(
                text.contains("Leave lathe.cross_slide.reads as it is"),
                "{reads} {ring} {text}"
            );
            assert!(!text.contains("reads radius") && !text.contains("reads diameter"));
            assert!(
                text.contains("lathe.cross_slide.division as it proves"),
                "{text}"
            );
        }
    }
}

#[test]
fn a_good_size_is_good_whatever_the_dial_does() {
    let sheet = plan(&read_as("radius", "settable")).unwrap();
    let inspect = (0..sheet.steps.len())
        .find(|at| sheet.steps[*at].kind == StepKind::Inspect)
        .unwrap();
    let end = sheet.steps[inspect].diameter.mm();
    let before = sheet.steps[*stops(&sheet).last().unwrap()].diameter.mm();
    // Half of the last cut left on is within these limits.
    let answer = report(&sheet, inspect, 0.5 * (before + end));
    assert_eq!(
        answer.causes[0].cause,
        turnwright::advice::diagnosis::Cause::DialCountsOtherwise
    );
    assert!(
        answer
            .text
            .contains("is good: do not cut this diameter again"),
        "{}",
        answer.text
    );
    assert!(answer.text.contains("prove it with an indicator"));
}

#[test]
fn a_cut_made_once_more_is_not_asked_for_a_third_time() {
    for ring in ["settable", "fixed", "readout"] {
        let sheet = plan(&read_as("radius", ring)).unwrap();
        let mut seen = 0;
        for stop in stops(&sheet) {
            // From three quarters of what the cut was to take on, nothing was cut.
            let size = match sheet.steps[stop].text.contains(" on nothing was cut") {
                true => 33.95,
                false => number_after(&sheet.steps[stop].text, "Above ") + 0.02,
            };
            let answer = report(&sheet, stop, size);
            let Some(anew) = answer.plan.filter(|_| answer.repeat) else {
                continue;
            };
            seen += 1;
            let next = stops(&anew)
                .into_iter()
                .find(|at| !anew.steps[*at].done)
                .unwrap();
            let text = &anew.steps[next].text;
            assert!(
                text.contains("again: the zero is off, not the cut"),
                "{text}"
            );
            for loops in [
                "take this cut",
                "measure anew",
                "leave the ring",
                "no shift",
            ] {
                assert!(!text.contains(loops), "{loops}: {text}");
            }
            // The same size again is what the readings go by.
            let again = report(&anew, next, size);
            assert!(!again.repeat, "{}", again.text);
        }
        assert!(seen > 0, "{ring}");
    }
}

#[test]
fn a_bar_that_runs_out_has_its_dial_proved_before_a_cut_is_repeated() {
    // What a dial of diameter leaves of a first cut from the high side is what the bar measures.
    let mut job = read_as("radius", "settable");
    job["stock"]["run_out"] = "0.4 mm".into();
    let sheet = plan(&job).unwrap();
    let text = &sheet.steps[stops(&sheet)[0]].text;
    let (near, from) = (
        number_after(text, "Near "),
        number_after(text, "Otherwise, from "),
    );
    assert!(near >= from, "{text}");
    assert!(text.find("Near ") < text.find(" on nothing was cut:"));
    assert!(
        text.contains("prove it before this cut is repeated"),
        "{text}"
    );
}

#[test]
fn a_cone_leaves_a_fixed_ring_its_compound_slide_square() {
    for (ring, square) in [("fixed", true), ("settable", false)] {
        let mut job = read_as("radius", ring);
        job["part"]["small_diameter"] = "24 mm".into();
        let sheet = plan(&job).unwrap();
        let text = words(&sheet, StepKind::Taper);
        let set = text.find("straight to the bar again").unwrap();
        assert!(set < text.find("Touch the free edge").unwrap(), "{text}");
        assert_eq!(
            text.contains("compound slide square to the bed again"),
            square
        );
        assert!(
            text.ends_with("Both zeros are lost when it is turned."),
            "{text}"
        );
        assert!(text.contains("the tool straight to the bar."), "{text}");
    }
}

#[test]
fn no_disc_of_the_bar_stays_on_a_part_unsaid() {
    // Marks of 0.5 mm of the carriage. Halfway between two is no disc, or too short by what the limits allow.
    for (blade, limits, left, thick) in [
        (2.25, ["39.7 mm", "40.3 mm"], 40.0, None),
        (2.3, ["39.7 mm", "40.3 mm"], 39.95, None),
        (2.1, ["39.95 mm", "40.1 mm"], 40.4, Some(0.4)),
    ] {
        let mut job = shaft();
        job["stock"]["length"] = "160 mm".into();
        job["part"] = json!({
            "diameter": "30 mm", "class": "h9", "length": "40 mm", "length_limits": limits,
        });
        job["preferences"] = json!({ "parting": format!("{blade} mm") });
        job["lathe"]["carriage"]["division"] = "0.5 mm".into();
        let sheet = match plan(&job) {
            Ok(sheet) => sheet,
            Err(error) => panic!("{error}"),
        };
        let part = words(&sheet, StepKind::PartOff);
        assert!(
            (number_after(part, "which leaves ") - left).abs() < 0.006,
            "{part}"
        );
        match thick {
            None => assert!(!part.contains("A collar"), "{part}"),
            Some(thick) => {
                assert_eq!(number_after(part, "A collar of the bar, "), thick, "{part}");
                assert!(part.contains("its edge sharp: take it off"), "{part}");
            }
        }
    }
}
