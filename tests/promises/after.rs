//! After a measurement: as expected changes nothing, off by so many marks moves the readings by as many,
//! a lost part is called lost, and the new sheet keeps the promises of every sheet.

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use serde_json::{Value, json};
use turnwright::advice::diagnosis::{Cause, CauseFit, SizeAt};
use turnwright::document;
use turnwright::plan::{Job, Sheet, Step, StepKind};
use turnwright::shop::dial::DialReads;
use turnwright::{Diameter, Units};

/// Random sheets with the place of a measurement in them: any cut, stop or inspection.
fn on_measured(check: impl Fn(&Job, &Sheet, usize) -> Result<(), TestCaseError>) {
    let mut runner = TestRunner::new(crate::jobs::config(400));
    let tried = std::cell::Cell::new(0);
    let jobs = prop_oneof![crate::jobs::job(), crate::parts::job()];
    runner
        .run(&(jobs, 0.0..1.0_f64), |(job, place)| {
            let Ok(sheet) = job.plan(Units::Metric) else {
                return Ok(());
            };
            let places: Vec<usize> = (0..sheet.steps.len())
                .filter(|at| {
                    let step = &sheet.steps[*at];
                    step.depth_of_cut.is_some() || step.kind == StepKind::Measure
                })
                .collect();
            let at = places[(place * places.len() as f64) as usize];
            tried.set(tried.get() + 1);
            check(&job, &sheet, at)
        })
        .unwrap();
    assert!(tried.get() > 80, "only {} were tried", tried.get());
}

/// What one mark takes off the diameter.
fn per_mark(job: &Job) -> f64 {
    let dial = job.lathe().cross_slide().unwrap();
    match dial.reads() {
        DialReads::Diameter => dial.division().mm(),
        _ => 2.0 * dial.division().mm(),
    }
}

/// The readings of the cuts of one surface after a place.
fn ahead<'a>(sheet: &'a Sheet, of: &Step, after: usize) -> Vec<&'a Step> {
    sheet.steps[after..]
        .iter()
        .filter(|s| s.depth_of_cut.is_some() && s.surface == of.surface)
        .collect()
}

fn marks(steps: &[&Step]) -> Vec<i64> {
    steps
        .iter()
        .map(|s| s.reading.unwrap().divisions().count())
        .collect()
}

fn size(mm: f64) -> Diameter {
    Diameter::from_mm(mm).unwrap()
}

#[test]
fn a_size_as_expected_leaves_every_reading_as_it_was() {
    on_measured(|_, sheet, at| {
        let step = &sheet.steps[at];
        let before = marks(&ahead(sheet, step, at + 1));
        let answer = sheet
            .after(at, &[SizeAt::anywhere(step.diameter)], None)
            .unwrap();
        prop_assert_eq!(answer.causes[0].cause, Cause::AsExpected);
        prop_assert_eq!(answer.shift, 0);
        prop_assert!(!answer.lost);
        let Some(plan) = &answer.plan else {
            // The last cut of a surface: it is good already, or too near to a limit to tell.
            prop_assert!(before.is_empty(), "{:?}", answer.why_no_plan);
            return Ok(());
        };
        let adjust = plan
            .steps
            .iter()
            .position(|s| s.kind == StepKind::Adjust)
            .unwrap();
        prop_assert_eq!(marks(&ahead(plan, step, adjust)), before);
        prop_assert!(plan.steps[..adjust].iter().all(|s| s.done));
        prop_assert!(plan.steps[adjust..].iter().all(|s| !s.done));
        Ok(())
    });
}

/// The sizes that stand at these words of a sheet, if they are there.
fn sizes_at(text: &str, words: &str) -> Option<Diameter> {
    let (_, rest) = text.split_once(words)?;
    let mut parts = rest.split(' ');
    let size = format!("{} {}", parts.next()?, parts.next()?);
    size.trim_end_matches(['.', ':', ',', ';']).parse().ok()
}

#[test]
fn a_size_that_a_sheet_prints_as_good_is_good() {
    let (seen, none) = (std::cell::Cell::new(0), std::cell::Cell::new(0));
    on_measured(|job, _, _| {
        for units in [Units::Metric, Units::Inch] {
            let Ok(sheet) = job.plan(units) else {
                continue;
            };
            for (at, step) in sheet.steps.iter().enumerate() {
                if step.kind != StepKind::Inspect {
                    continue;
                }
                if step.text.contains("proves no size good") {
                    none.set(none.get() + 1);
                    continue;
                }
                let from = sizes_at(&step.text, "Good where all are from ");
                let bounds = match from {
                    Some(least) => {
                        let (_, rest) = step.text.split_once("Good where all are from ").unwrap();
                        [Some(least), sizes_at(rest, " to ")]
                    }
                    None => [sizes_at(&step.text, "Good where all are "); 2],
                };
                for bound in bounds {
                    let bound = bound.unwrap();
                    let answer = sheet.after(at, &[SizeAt::anywhere(bound)], None).unwrap();
                    // A part that may be warm is measured again, however good.
                    prop_assert!(
                        answer.text.contains("is good: do not cut")
                            || answer.text.starts_with("Wait"),
                        "{} {}\n{}",
                        bound,
                        answer.text,
                        step.text
                    );
                    seen.set(seen.get() + 1);
                }
            }
        }
        Ok(())
    });
    println!("{} limits, {} zones without a size", seen.get(), none.get());
    assert!(seen.get() > 200, "{}", seen.get());
}

#[test]
fn a_ring_is_set_on_no_size_that_its_stop_forbids() {
    let rows_seen = std::cell::Cell::new(0);
    on_measured(|_, sheet, _| {
        for step in sheet.steps.iter().filter(|s| s.kind == StepKind::Measure) {
            let text = &step.text;
            let Some((_, table)) = text.split_once(", tenths between marks") else {
                continue;
            };
            let Some((_, table)) = table
                .split_once(": ")
                .filter(|(head, _)| !head.contains('.') || head.starts_with(" ("))
            else {
                continue;
            };
            let rows: Vec<f64> = table
                .split("; ")
                .map_while(|row| row.split_once(": ")?.0.parse().ok())
                .collect();
            let untouched = sizes_at(text, "rom ").filter(|_| text.contains("midway"));
            let near = sizes_at(text, "Near ").filter(|_| text.contains("after all"));
            let (above, below) = (sizes_at(text, "Above "), sizes_at(text, "Below "));
            for row in rows {
                rows_seen.set(rows_seen.get() + 1);
                let forbidden = untouched.is_some_and(|from| row >= from.mm() + 6e-4)
                    || near.is_some_and(|near| (row - near.mm()).abs() < 1e-3)
                    || above.is_some_and(|above| row > above.mm() + 6e-4)
                    || below.is_some_and(|below| row < below.mm() - 6e-4);
                prop_assert!(!forbidden, "{}: {}", row, text);
            }
        }
        Ok(())
    });
    assert!(rows_seen.get() > 500, "{}", rows_seen.get());
}

#[test]
fn a_size_off_by_whole_marks_moves_the_readings_by_as_many() {
    on_measured(|job, sheet, at| {
        let q = per_mark(job);
        let step = &sheet.steps[at];
        let old = ahead(sheet, step, at + 1);
        for off in [-3, -1, 1, 2] {
            let measured = [SizeAt::anywhere(size(step.diameter.mm() + off as f64 * q))];
            let mut answer = sheet.after(at, &measured, None).unwrap();
            if answer.repeat {
                // What a slip may have left on is cut once more at its mark; it was none: the size stays.
                prop_assert!(off > 0 && answer.shift == 0, "{}", answer.text);
                let plan = answer.plan.unwrap();
                let measure = plan.steps.iter().position(|s| {
                    !s.done && matches!(s.kind, StepKind::Measure | StepKind::Inspect)
                });
                answer = plan.after(measure.unwrap(), &measured, None).unwrap();
                prop_assert!(!answer.repeat, "{}", answer.text);
            }
            let Some(plan) = &answer.plan else {
                prop_assert!(answer.why_no_plan.is_some());
                continue;
            };
            let adjust = plan
                .steps
                .iter()
                .rposition(|s| s.kind == StepKind::Adjust)
                .unwrap();
            let new = ahead(plan, step, adjust);
            if old.is_empty() || answer.ring_to.is_some() {
                continue;
            }
            if answer.shift == 0 {
                // More likely left on by a slip, and too little for a cut of its own: the readings stay.
                let slip = |c: &&CauseFit| matches!(c.cause, Cause::Backlash | Cause::MissedTurn);
                let fit: f64 = answer
                    .causes
                    .iter()
                    .filter(slip)
                    .map(|c| c.fit.value())
                    .sum();
                prop_assert!(off > 0 && fit > 0.05, "{}", answer.text);
                prop_assert_eq!(marks(&new).last().copied(), marks(&old).last().copied());
                continue;
            }
            prop_assert_eq!(answer.shift, off, "{}", answer.text);
            // Sizes stay what they were: the last cut ends where it was to end.
            let (a, b) = (old[old.len() - 1], new[new.len() - 1]);
            prop_assert_eq!(marks(&[b])[0], marks(&[a])[0] + off);
            prop_assert!((a.diameter.mm() - b.diameter.mm()).abs() < 1e-8);
            if new.len() == old.len() {
                let moved: Vec<i64> = marks(&old).iter().map(|mark| mark + off).collect();
                prop_assert_eq!(marks(&new), moved);
            }
        }
        Ok(())
    });
}

#[test]
fn the_new_sheet_ends_in_the_zone_and_never_goes_backwards() {
    on_measured(|job, sheet, at| {
        let step = &sheet.steps[at];
        for off in [-0.31, -0.07, -0.013, 0.009, 0.06, 0.4, 1.7] {
            let Ok(measured) = Diameter::from_mm(step.diameter.mm() + off) else {
                continue;
            };
            let answer = sheet
                .after(at, &[SizeAt::anywhere(measured)], None)
                .unwrap();
            prop_assert_eq!(answer.plan.is_none(), answer.why_no_plan.is_some());
            prop_assert!(!answer.text.is_empty());
            let of = step.surface.unwrap();
            let surface = match of.other_end() {
                false => &job.part().surfaces()[of.index()],
                true => &job.part().other_end()[of.index()],
            };
            let limits = surface.limits();
            if answer.lost {
                prop_assert!(measured < limits.smallest());
            }
            let Some(plan) = &answer.plan else { continue };
            let adjust = plan
                .steps
                .iter()
                .position(|s| s.kind == StepKind::Adjust)
                .unwrap();
            let new = ahead(plan, step, adjust);
            let mut stands = measured.mm();
            for cut in &new {
                prop_assert!(cut.diameter.mm() < stands, "{off} {stands}");
                stands = cut.diameter.mm();
            }
            prop_assert!(limits.contains(size(stands)), "{off}: {stands}");
            prop_assert!(
                plan.to_string()
                    .lines()
                    .all(|line| line.chars().count() <= 100)
            );
        }
        Ok(())
    });
}

/// The invented shaft of the README, as a question.
fn shaft() -> Value {
    json!({
        "material": "11SMn30",
        "stock": { "diameter": "34 mm", "length": "140 mm" },
        "part": { "diameter": "30 mm", "class": "h8", "length": "70 mm" },
        "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" },
        "lathe": {
            "spindle_steps": ["250 rpm", "500 rpm"], "feeds": ["0.1 mm/rev", "0.2 mm/rev"],
            "cross_slide": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100, "backlash": "0.1 mm" },
            "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 }
        }
    })
}

/// The place of the first step of a kind.
fn first(sheet: &Value, kind: &str) -> usize {
    let steps = sheet["steps"].as_array().unwrap();
    steps.iter().position(|s| s["kind"] == kind).unwrap()
}

fn ask(name: &str, fields: Value) -> Value {
    let text = document::answer(&json!({ name: fields }).to_string()).unwrap();
    let answer: Value = serde_json::from_str(&text).unwrap();
    answer[name].clone()
}

#[test]
fn a_sheet_handed_back_as_text_carries_what_was_measured() {
    let first = ask("plan", shaft());
    let stops: Vec<usize> = first["steps"]
        .as_array()
        .unwrap()
        .iter()
        .enumerate()
        .filter(|(_, s)| s["kind"] == "measure")
        .map(|(at, _)| at)
        .collect();
    let expected: Diameter = first["steps"][stops[0]]["diameter"]
        .as_str()
        .unwrap()
        .parse()
        .unwrap();
    let one = ask(
        "after_measurement",
        json!({ "plan": first, "step": stops[0], "measured": format!("{} mm", expected.mm() + 0.08) }),
    );
    assert_eq!(one["shift"], 2, "{one}");
    let second = &one["plan"];
    assert_eq!(second["measured"][0]["step"], stops[0]);
    // The later stop, in the sheet that followed: its first measurement still holds.
    let later = second["steps"]
        .as_array()
        .unwrap()
        .iter()
        .rposition(|s| s["kind"] == "measure")
        .unwrap();
    let two = ask(
        "after_measurement",
        json!({ "plan": second, "step": later, "measured": second["steps"][later]["diameter"] }),
    );
    assert_eq!(two["shift"], 0);
    assert_eq!(two["plan"]["measured"].as_array().unwrap().len(), 2);
    let last = |sheet: &Value| {
        let steps = sheet["steps"].as_array().unwrap();
        let cut = steps.iter().rfind(|s| s["kind"] == "finish_cut").unwrap();
        cut["reading"]["divisions"].as_i64().unwrap()
    };
    assert_eq!(last(&two["plan"]), last(&first) + 2);
}

#[test]
fn an_inch_sheet_stays_an_inch_sheet() {
    let mut job = shaft();
    job["units"] = json!("inch");
    let sheet = ask("plan", job);
    let stop = first(&sheet, "measure");
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": stop, "measured": sheet["steps"][stop]["diameter"] }),
    );
    assert!(
        answer["mean"].as_str().unwrap().ends_with(" in"),
        "{answer}"
    );
    assert_eq!(answer["plan"]["units"], "inch");
}

/// Three readings alike and large: the zero, as a turner would say; walked by hand.
#[test]
fn sizes_all_off_alike_are_the_zero_and_move_three_marks() {
    let mut job = shaft();
    job["lathe"]["cross_slide"] =
        json!({ "reads": "diameter", "division": "0.02 mm", "divisions_per_turn": 200 });
    job["part"] = json!({ "diameter": "30 mm", "limits": ["29.9 mm", "30 mm"], "length": "70 mm" });
    let sheet = ask("plan", job);
    let stop = first(&sheet, "measure");
    let expected: Diameter = sheet["steps"][stop]["diameter"]
        .as_str()
        .unwrap()
        .parse()
        .unwrap();
    let measured: Vec<String> = [0.06, 0.06, 0.05]
        .iter()
        .map(|off| format!("{} mm", expected.mm() + off))
        .collect();
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": stop, "measured": measured }),
    );
    assert_eq!(answer["shift"], 3, "{answer}");
    assert_eq!(
        answer["causes"][0]["cause"], "zero_off",
        "{}",
        answer["causes"]
    );
}

/// 28 h8 is 27.967 to 28.000 mm (ISO 286-2, from memory); 27.951 mm is 0.016 mm below it.
#[test]
fn a_lost_part_is_called_lost_and_gets_no_further_cut() {
    let mut job = shaft();
    job["part"] = json!({ "diameter": "28 mm", "class": "h8", "length": "70 mm" });
    let sheet = ask("plan", job);
    let inspect = first(&sheet, "inspect");
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": inspect, "measured": "27.951 mm", "expanded_uncertainty": "0.004 mm" }),
    );
    assert_eq!(answer["lost"], true, "{answer}");
    assert!(answer["plan"].is_null());
    let text = answer["text"].as_str().unwrap();
    assert!(text.contains("LOST") && text.contains("0.016 mm"), "{text}");
    // Six thousandths above the limit the other way: one more cut, or too little for one.
    let large = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": inspect, "measured": "28.3 mm" }),
    );
    assert_eq!(large["lost"], false);
    let steps = large["plan"]["steps"].as_array().unwrap();
    let cut = steps.iter().rfind(|s| s["kind"] == "finish_cut").unwrap();
    let end: Diameter = cut["diameter"].as_str().unwrap().parse().unwrap();
    assert!(end.mm() > 27.967 && end.mm() < 28.0, "{end}");
}

#[test]
fn half_the_metal_taken_is_a_dial_that_counts_otherwise() {
    let sheet = ask("plan", shaft());
    let stop = first(&sheet, "measure");
    let expected: Diameter = sheet["steps"][stop]["diameter"]
        .as_str()
        .unwrap()
        .parse()
        .unwrap();
    let half = format!("{} mm", 0.5 * (34.0 + expected.mm()));
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": stop, "measured": half }),
    );
    assert_eq!(
        answer["causes"][0]["cause"], "dial_counts_otherwise",
        "{}",
        answer["causes"]
    );
    assert!(
        answer["why_no_plan"].as_str().unwrap().contains("zero_at"),
        "{answer}"
    );
}

#[test]
fn bad_measurements_are_refused_by_their_field() {
    let sheet = ask("plan", shaft());
    let refused = |fields: Value| {
        document::answer(&json!({ "after_measurement": fields }).to_string())
            .unwrap_err()
            .field()
            .to_owned()
    };
    let stop = 6;
    let cases = [
        (
            json!({ "plan": sheet, "step": 99, "measured": "30 mm" }),
            "step",
        ),
        (
            json!({ "plan": sheet, "step": 0, "measured": "30 mm" }),
            "step",
        ),
        (json!({ "plan": sheet, "measured": "30 mm" }), "step"),
        (json!({ "plan": sheet, "step": stop }), "measured"),
        (
            json!({ "plan": sheet, "step": stop, "measured": [] }),
            "measured",
        ),
        (
            json!({ "plan": sheet, "step": stop, "measured": "-3 mm" }),
            "measured",
        ),
        (
            json!({ "plan": {}, "step": stop, "measured": "30 mm" }),
            "plan.job",
        ),
        (
            json!({ "plan": sheet, "step": stop, "measured": [{ "from_chuck": "900 mm", "diameter": "30 mm" }] }),
            "measured[0].from_chuck",
        ),
    ];
    for (fields, field) in cases {
        assert_eq!(refused(fields.clone()), field, "{fields}");
    }
}

#[test]
fn a_size_larger_than_the_bar_stops_the_plan_whatever_it_would_explain() {
    on_measured(|job, sheet, at| {
        let step = &sheet.steps[at];
        let bar = job.stock().diameter().mm();
        for thick in [1.06 * bar + 1.0, 3.0 * bar] {
            let answer = sheet
                .after(at, &[SizeAt::anywhere(size(thick))], None)
                .unwrap();
            prop_assert!(answer.plan.is_none() && !answer.lost, "{}", answer.text);
            prop_assert!(
                answer.text.contains("no cut makes it thicker"),
                "{}",
                answer.text
            );
        }
        let thin = step.diameter.mm() + 0.1;
        let answer = sheet
            .after(at, &[SizeAt::anywhere(size(thin))], None)
            .unwrap();
        prop_assert!(!answer.text.contains("no cut makes"), "{}", answer.text);
        Ok(())
    });
}

/// A lathe of the bench kind, and an invented part in its chuck.
fn lathe(cross: Value) -> Value {
    json!({
        "spindle_steps": ["60 rpm", "110 rpm", "200 rpm", "350 rpm", "600 rpm", "1000 rpm", "1800 rpm"],
        "chuck_max_speed": "2500 rpm", "power": "1.5 kW",
        "feeds": ["0.04 mm/rev", "0.06 mm/rev", "0.08 mm/rev", "0.1 mm/rev", "0.14 mm/rev", "0.2 mm/rev"],
        "cross_slide": cross,
        "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 250 }
    })
}

/// The steps that lie ahead after a size measured at a step of a kind, the last of that kind.
fn ahead_of(job: Value, kind: &str, measured: Value) -> (Value, Vec<(String, String)>) {
    let sheet = ask("plan", job);
    let steps = sheet["steps"].as_array().unwrap();
    let at = steps.iter().rposition(|s| s["kind"] == kind).unwrap();
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": at, "measured": measured }),
    );
    let steps = answer["plan"]["steps"].as_array().cloned();
    let ahead = steps.unwrap_or_default().into_iter();
    let ahead = ahead.filter(|s| s["done"] != json!(true));
    let words = |field: &Value| field.as_str().unwrap_or_default().to_owned();
    let ahead = ahead
        .map(|s| (words(&s["kind"]), words(&s["text"])))
        .collect();
    (answer, ahead)
}

/// The first cut among steps that lie ahead.
fn next_cut(ahead: &[(String, String)]) -> &str {
    let cut = ahead.iter().find(|(kind, _)| kind.ends_with("_cut"));
    &cut.unwrap().1
}

#[test]
fn a_cut_made_again_after_the_inspection_is_come_in_to_from_outside() {
    let fixed = json!({
        "material": "S235JR",
        "stock": { "diameter": "30 mm", "length": "90 mm" },
        "part": { "diameter": "26 mm", "limits": ["25.75 mm", "26 mm"], "length": "40 mm" },
        "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "75 deg" },
        "preferences": { "measuring_stops": 3, "instrument": "micrometer" },
        "lathe": lathe(json!({ "reads": "radius", "division": "0.05 mm", "divisions_per_turn": 60, "ring": "fixed" }))
    });
    let pin = json!({
        "material": "11SMn30",
        "stock": { "diameter": "8 mm", "length": "150 mm" },
        "part": { "diameter": "6 mm", "class": "m7", "length": "40 mm" },
        "tool": { "material": "high_speed_steel", "corner_radius": "0.2 mm", "cutting_edge_angle": "93 deg" },
        "lathe": lathe(json!({ "reads": "diameter", "division": "0.01 mm", "divisions_per_turn": 300, "backlash": "0.05 mm" }))
    });
    for (job, measured) in [(fixed, "26.2 mm"), (pin, "6.045 mm")] {
        let (answer, ahead) = ahead_of(job, "inspect", json!(measured));
        assert_eq!(answer["repeat"], true, "{}", answer["text"]);
        let cut = next_cut(&ahead);
        // The shoulder was faced outwards: how far out the slide stands, nobody counted.
        assert!(
            cut.contains("come in to it from outside, the turns counted from zero"),
            "{cut}"
        );
        assert!(!cut.contains("from where it stands"), "{cut}");
    }
}

#[test]
fn a_turn_that_was_missed_is_not_counted_from_where_the_slide_was_withdrawn_to() {
    // 34 to 30 mm: a turn takes 4 mm off, and the first cut, a turn short, took nothing.
    let mut job = shaft();
    job["stock"]["diameter"] = json!("40 mm");
    let sheet = ask("plan", job.clone());
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps.iter().rposition(|s| s["kind"] == "measure").unwrap();
    let expected: Diameter = steps[stop]["diameter"].as_str().unwrap().parse().unwrap();
    let measured = json!(format!("{} mm", expected.mm() + 4.0));
    let (answer, ahead) = ahead_of(job, "measure", measured);
    assert_eq!(answer["repeat"], true, "{}", answer["text"]);
    assert!(
        answer["text"].as_str().unwrap().contains("a turn short"),
        "{}",
        answer["text"]
    );
    let cut = next_cut(&ahead);
    assert!(cut.contains("the turns counted from zero"), "{cut}");
}

/// An invented shaft in inch with three diameters, its lengths by a stop on the bed.
fn stepped_by(length_by: &str) -> Value {
    json!({
        "units": "inch",
        "material": "AISI 12L14",
        "stock": { "diameter": "1 in", "length": "6 in", "skin": "0.005 in" },
        "part": { "surfaces": [
            { "diameter": "1/2 in", "limits": ["0.4990 in", "0.5000 in"], "length": "1 1/4 in" },
            { "diameter": "3/4 in", "limits": ["0.747 in", "0.750 in"], "length": "1 3/8 in" },
            { "diameter": "15/16 in", "limits": ["0.930 in", "0.940 in"], "length": "1/2 in" }
        ] },
        "tool": { "material": "high_speed_steel", "corner_radius": "1/32 in", "cutting_edge_angle": "90 deg" },
        "preferences": { "length_by": length_by },
        "lathe": {
            "spindle_steps": ["130 rpm", "200 rpm", "340 rpm", "550 rpm", "900 rpm", "1400 rpm"], "power": "0.75 hp",
            "feeds": ["0.0025 in/rev", "0.004 in/rev", "0.006 in/rev", "0.009 in/rev"],
            "cross_slide": { "reads": "radius", "division": "0.001 in", "divisions_per_turn": 100, "backlash": "0.006 in" },
            "carriage": { "reads": "travel", "division": "0.01 in", "divisions_per_turn": 100 }
        }
    })
}

#[test]
fn a_stop_moved_out_of_the_way_is_set_again_before_it_is_met_again() {
    let sheet = ask("plan", stepped_by("stop"));
    let steps = sheet["steps"].as_array().unwrap();
    let inspections = steps
        .iter()
        .enumerate()
        .filter(|(_, s)| s["kind"] == "inspect");
    let mut followed = 0;
    for (at, inspect) in inspections {
        let expected: Diameter = inspect["diameter"].as_str().unwrap().parse().unwrap();
        for off in [0.0017, 0.0058, 0.02] {
            let answer = ask(
                "after_measurement",
                json!({ "plan": sheet, "step": at, "measured": format!("{} in", expected.inch() + off) }),
            );
            let Some(steps) = answer["plan"]["steps"].as_array() else {
                continue;
            };
            followed += 1;
            // Walked from the start: the stop is where a cut meets it.
            let mut set = None;
            for step in steps {
                let text = step["text"].as_str().unwrap();
                if let Some((_, after)) = text.split_once("clear of the bar; carriage to Z -") {
                    set = after.split(' ').next();
                    assert!(
                        text.contains("bring the stop against it and lock it"),
                        "{text}"
                    );
                }
                if let Some((_, after)) = text.split_once("against the stop (Z -") {
                    assert_eq!(set, after.split(' ').next(), "{text}");
                }
                if text.contains("loosen the stop and move it out of the way") {
                    set = None;
                }
            }
        }
    }
    assert!(followed >= 6, "{followed}");
    for other in ["dial", "indicator"] {
        let (answer, ahead) = ahead_of(stepped_by(other), "inspect", json!("0.52 in"));
        assert!(!answer["plan"].is_null(), "{answer}");
        assert!(
            ahead.iter().all(|(_, text)| !text.contains("the stop")),
            "{ahead:?}"
        );
    }
}

#[test]
fn two_figures_that_read_alike_are_said_once() {
    for job in [stepped_by("dial"), shaft()] {
        let sheet = ask("plan", job);
        let steps = sheet["steps"].as_array().unwrap().iter();
        for step in steps.filter(|step| step["kind"] == "inspect") {
            let text = step["text"].as_str().unwrap();
            let Some((_, above)) = text.split_once(" Above ") else {
                continue;
            };
            let (next, rest) = above.split_once(": ").unwrap();
            if let Some((_, from)) = rest.split_once(" From ") {
                let (from, _) = from.split_once(" to there").unwrap();
                assert_ne!(from, next, "{text}");
            }
        }
    }
    // 0.5000 in, the guard of the instrument and the lightest cut all end at 0.5002 in, as it is printed.
    let mut job = stepped_by("dial");
    // As dear either way, so that the middle is aimed at.
    job["preferences"] = json!({ "price_scrap": 5, "price_rework": 5, "price_stop": 1 });
    let sheet = ask("plan", job);
    let steps = sheet["steps"].as_array().unwrap();
    let inspect = steps.iter().rfind(|s| s["kind"] == "inspect").unwrap();
    let text = inspect["text"].as_str().unwrap();
    assert!(text.contains("Above 0.5002 in: one more cut"), "{text}");
    assert!(!text.contains("a cut would rub"), "{text}");
}

/// An invented slender bar on a live centre.
fn slender() -> Value {
    json!({
        "material": "C45",
        "holding": "chuck_and_centre",
        "stock": { "diameter": "14 mm", "length": "175 mm" },
        "part": { "diameter": "12 mm", "class": "h8", "length": "144 mm", "finish": { "ra": "1.6 um" } },
        "tool": {
            "material": "high_speed_steel", "corner_radius": "0.2 mm", "cutting_edge_angle": "93 deg",
            "minor_cutting_edge_angle": "8 deg"
        },
        "preferences": { "correct_for_spring": true },
        "lathe": lathe(json!({ "reads": "radius", "division": "0.025 mm", "divisions_per_turn": 80, "backlash": "0.1 mm" }))
    })
}

/// What is said of three sizes of it at the last stop, which expects 12.243 mm; with their places or without.
fn said_of(sizes: [f64; 3], places: bool) -> Value {
    let at = [20.0, 85.0, 150.0];
    let size = |(at, size): (f64, f64)| match places {
        true => json!({ "from_chuck": format!("{at} mm"), "diameter": format!("{size} mm") }),
        false => json!(format!("{size} mm")),
    };
    let measured: Vec<Value> = at.into_iter().zip(sizes).map(size).collect();
    ahead_of(slender(), "measure", json!(measured)).0
}

#[test]
fn a_level_of_all_sizes_does_not_move_the_tailstock() {
    let sizes = [12.213, 12.243, 12.273];
    let corrections = [0.0, 0.03, -0.02].map(|level| {
        let answer = said_of(sizes.map(|size| size + level), true);
        assert_eq!(answer["causes"][0]["cause"], "tailstock_off", "{answer}");
        let text = answer["text"].as_str().unwrap();
        assert!(
            text.starts_with("Stop: the sizes differ by 0.06 mm"),
            "{text}"
        );
        answer["tailstock_correction"].as_str().unwrap().to_owned()
    });
    assert_eq!(corrections[0], corrections[1]);
    assert_eq!(corrections[0], corrections[2]);
}

#[test]
fn no_report_says_stop_and_go_on() {
    let cases = [
        [12.21, 12.235, 12.26],
        [12.26, 12.235, 12.21],
        [12.213, 12.243, 12.273],
        [12.24, 12.20, 12.243],
        [12.25, 12.30, 12.25],
    ];
    for sizes in cases {
        for places in [true, false] {
            let answer = said_of(sizes, places);
            let text = answer["text"].as_str().unwrap();
            assert!(
                text.starts_with("Stop: the sizes differ by"),
                "{sizes:?} {text}"
            );
            let all = format!("{text} {}", answer["causes"]);
            assert!(!all.contains("go on"), "{sizes:?} {places} {all}");
            assert!(!all.contains("off alike"), "{sizes:?} {places} {all}");
            if !places {
                assert!(
                    text.contains("each size with its place from the chuck"),
                    "{text}"
                );
            }
        }
    }
}

#[test]
fn sizes_that_differ_by_more_than_the_stop_allows_stop_the_plan() {
    let sheet = ask("plan", slender());
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps.iter().rfind(|s| s["kind"] == "measure").unwrap();
    let text = stop["text"].as_str().unwrap();
    // A zone of 0.027 mm: a third of it, and more than a micrometer makes three sizes differ by.
    assert!(
        text.contains("Places that differ by more than 0.009 mm"),
        "{text}"
    );
    for places in [true, false] {
        let answer = said_of([12.238, 12.243, 12.248], places);
        assert_eq!(answer["plan"], Value::Null, "{answer}");
        let text = answer["text"].as_str().unwrap();
        assert!(
            text.starts_with("Stop: the sizes differ by 0.01 mm along the bar, and before the last cut no more than 0.009 mm may stay"),
            "{text}"
        );
        // What a third of the zone bears goes on.
        let answer = said_of([12.239, 12.243, 12.247], places);
        assert!(answer["plan"].is_object(), "{answer}");
    }
}

/// An invented pin of two diameters on a lathe whose cross slide is read in this way.
fn two_diameters(ring: &str) -> Value {
    let seat =
        |d: &str, zone: [&str; 2], l: &str| json!({ "diameter": d, "limits": zone, "length": l });
    json!({
        "material": "11SMn30",
        "stock": { "diameter": "30 mm", "length": "120 mm" },
        "part": { "surfaces": [seat("20 mm", ["19.9 mm", "20 mm"], "20 mm"), seat("26 mm", ["25.9 mm", "26 mm"], "20 mm")] },
        "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "93 deg" },
        "lathe": lathe(json!({ "reads": "diameter", "division": "0.02 mm", "divisions_per_turn": 200, "ring": ring }))
    })
}

#[test]
fn the_tool_leaves_the_shoulder_before_it_comes_in_again() {
    for ring in ["settable", "fixed", "readout"] {
        let sheet = ask("plan", two_diameters(ring));
        let steps = sheet["steps"].as_array().unwrap();
        let mut at_a_shoulder = false;
        let mut seen = 0;
        for step in steps {
            let (kind, text) = (
                step["kind"].as_str().unwrap(),
                step["text"].as_str().unwrap(),
            );
            // The place comes before the slide is moved in.
            let leaves = text.find("arriage to the right").unwrap_or(usize::MAX);
            let comes = text.find("come in to").unwrap_or(usize::MAX);
            if at_a_shoulder && kind == "zero_x" {
                assert!(leaves < usize::MAX && leaves < comes, "{ring} {text}");
                at_a_shoulder = false;
                seen += 1;
            }
            assert!(!(at_a_shoulder && kind.ends_with("_cut")), "{ring} {text}");
            at_a_shoulder |= kind == "shoulder";
        }
        assert_eq!(seen, 1, "{ring}");
        // One more cut after the inspection.
        let (answer, ahead) = ahead_of(two_diameters(ring), "inspect", json!("20.3 mm"));
        let adjust = answer["plan"]["steps"].as_array().unwrap();
        let adjust = adjust.iter().rfind(|s| s["kind"] == "adjust").unwrap();
        let text = adjust["text"].as_str().unwrap();
        assert!(text.contains("arriage to the right"), "{ring} {text}");
        if ring == "readout" && answer["repeat"] != json!(true) {
            assert!(
                text.contains("on the readout, and set it to 20.30 mm"),
                "{text}"
            );
        }
        assert!(!next_cut(&ahead).is_empty());
    }
    let mut zeroed = two_diameters("settable");
    zeroed["zero_at"] = json!("29.93 mm");
    let sheet = ask("plan", zeroed);
    let steps = sheet["steps"].as_array().unwrap();
    let zero = steps.iter().find(|s| s["kind"] == "zero_x").unwrap();
    let text = zero["text"].as_str().unwrap();
    assert!(
        text.contains("Carriage to the right, clear of the bar"),
        "{text}"
    );
}

#[test]
fn a_fixed_ring_has_its_compound_slide_set_before_z_is_zeroed() {
    let steps = ask("plan", two_diameters("fixed"))["steps"]
        .as_array()
        .unwrap()
        .clone();
    let at = |words: &str| {
        let with = |step: &Value| step["text"].as_str().unwrap().contains(words);
        steps
            .iter()
            .position(with)
            .unwrap_or_else(|| panic!("no {words:?}"))
    };
    assert!(at("Set the compound slide square to the bed") < at("Zero Z"));
    assert!(at("Zero Z") < at("Zero X"));
    let settable = ask("plan", two_diameters("settable"));
    assert!(!settable.to_string().contains("square to the bed, so that"));
}

#[test]
fn a_length_closer_than_a_mark_is_warned_of() {
    let mut job = two_diameters("settable");
    job["part"]["surfaces"][0]["length_limits"] = json!(["19.97 mm", "20.03 mm"]);
    let sheet = ask("plan", job);
    let said = sheet["cautions"].to_string();
    assert!(
        said.contains("must lie within 0.06 mm, less than one mark of the carriage, 0.10 mm"),
        "{said}"
    );
    assert!(
        !ask("plan", two_diameters("settable"))["cautions"]
            .to_string()
            .contains("tight_length")
    );
}

#[test]
fn a_size_that_is_good_before_the_last_cut_is_not_cut_and_the_slide_is_brought_back() {
    let mut seen = 0;
    for (ring, place) in [
        ("settable", "In again to "),
        ("fixed", "In again to "),
        ("readout", " mm on the readout, where the last cut was made"),
    ] {
        let sheet = ask("plan", two_diameters(ring));
        let steps = sheet["steps"].as_array().unwrap();
        let Some(stop) = steps.iter().rposition(|s| {
            s["kind"] == "measure" && s["text"].as_str().unwrap().contains("at three places")
        }) else {
            continue;
        };
        seen += 1;
        let answer = ask(
            "after_measurement",
            json!({ "plan": sheet, "step": stop, "measured": "19.94 mm" }),
        );
        let text = answer["text"].as_str().unwrap();
        assert!(
            text.contains("is good: do not cut this diameter again."),
            "{ring} {text}"
        );
        assert!(text.contains(place), "{ring} {text}");
        assert!(text.contains("go on with its shoulder"), "{ring} {text}");
    }
    assert_eq!(seen, 3);
}

#[test]
fn a_dial_a_turn_short_is_told_where_it_stands_and_not_cut_at_once() {
    // Four millimetres a turn.
    let sheet = ask("plan", two_diameters("settable"));
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps
        .iter()
        .position(|s| {
            s["kind"] == "measure" && s["text"].as_str().unwrap().contains("at three places")
        })
        .unwrap();
    let step = &steps[stop];
    let expected: f64 = step["diameter"]
        .as_str()
        .unwrap()
        .trim_end_matches(" mm")
        .parse()
        .unwrap();
    let text = step["text"].as_str().unwrap();
    // Three quarters of what the cut was to take are still there: half a turn is more than that.
    let before = steps[..stop]
        .iter()
        .rev()
        .filter_map(|step| step["diameter"].as_str());
    let before: f64 = before
        .clone()
        .nth(1)
        .unwrap()
        .trim_end_matches(" mm")
        .parse()
        .unwrap();
    let bound = format!(
        "From {:.3} mm on the dial is a turn short",
        0.75 * before + 0.25 * expected
    );
    let bound = bound.replace("0 mm on", " mm on");
    assert!(text.contains(&bound), "{bound}: {text}");
    let short = format!("{} mm", expected + 4.0);
    let answer = ask(
        "after_measurement",
        json!({ "plan": sheet, "step": stop, "measured": short }),
    );
    let text = answer["text"].as_str().unwrap();
    assert_eq!(answer["repeat"], true, "{answer}");
    // The same mark of the ring, a turn less than the sheet has.
    let reading = &step["reading"];
    let there = match reading["turns"].as_i64().unwrap() - 1 {
        0 => format!("there the dial is at mark {}", reading["mark"]),
        1 => format!("there the dial is at 1 turn + mark {}", reading["mark"]),
        more => format!(
            "there the dial is at {more} turns + mark {}",
            reading["mark"]
        ),
    };
    assert!(text.contains(&there), "{there}: {text}");
    assert!(text.contains("spindle on"), "{text}");
}

#[test]
fn a_readout_shows_all_of_its_travel() {
    let mut job = two_diameters("readout");
    job["lathe"]["carriage"]["ring"] = json!("readout");
    for step in ask("plan", job)["steps"].as_array().unwrap() {
        let (Some(z), Some(shows)) = (step["z"].as_str(), step["reading"]["shows"].as_str()) else {
            continue;
        };
        if step["reading"]["slide"] == "carriage" {
            assert_eq!(z.trim_start_matches('-'), shows, "{step}");
        }
    }
}

/// The invented job of README, with other limits, prices and ring.
fn demo(limits: [&str; 2], price_scrap: f64, fixed: Option<&str>) -> Value {
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let mut job = serde_json::to_value(&job).unwrap();
    job["part"]["limits"] = json!(limits);
    job["preferences"] = json!({ "price_scrap": price_scrap, "price_rework": 5, "price_stop": 2 });
    if let Some(division) = fixed {
        job["lathe"]["cross_slide"]["ring"] = json!("fixed");
        job["lathe"]["cross_slide"]["division"] = json!(division);
    }
    job
}

fn place_of(sheet: &Value, kind: &str) -> usize {
    let steps = sheet["steps"].as_array().unwrap();
    steps.iter().rposition(|step| step["kind"] == kind).unwrap()
}

#[test]
fn a_part_is_as_good_as_its_worst_place() {
    let sheet = ask("plan", demo(["29.967 mm", "30 mm"], 100.0, None));
    let step = place_of(&sheet, "inspect");
    let said = |measured: [&str; 3]| {
        let fields = json!({ "plan": sheet, "step": step, "measured": measured });
        let answer = ask("after_measurement", fields);
        answer["text"].as_str().unwrap().to_owned()
    };
    // The guard of the micrometer is 0.004 mm.
    assert!(said(["29.988 mm", "29.985 mm", "29.980 mm"]).contains("is good"));
    assert!(
        said(["29.998 mm", "29.985 mm", "29.980 mm"])
            .starts_with("29.998 mm is too near to a limit")
    );
    for apart in [
        ["30.010 mm", "29.985 mm", "29.980 mm"],
        ["29.988 mm", "29.988 mm", "30.006 mm"],
    ] {
        assert!(
            said(apart).starts_with("Stop: the sizes differ"),
            "{}",
            said(apart)
        );
    }
    let in_part = said(["30.005 mm", "29.998 mm", "29.997 mm"]);
    assert!(
        in_part.starts_with("Stop: 30.005 mm is too large, and the mean of"),
        "{in_part}"
    );
    assert!(said(["30.060 mm", "30.058 mm", "30.059 mm"]).starts_with("Measured 30.059 mm"));
}

#[test]
fn dearer_scrap_never_moves_the_aim_towards_scrap() {
    for limits in [["29.974 mm", "29.994 mm"], ["29.967 mm", "30 mm"]] {
        let mut before = (0.0, 1.0);
        for price in [5.0, 20.0, 100.0, 200.0, 1e3, 1e5] {
            let sheet = ask("plan", demo(limits, price, None));
            let expected = &sheet["expected"];
            let (aim, _) = expected["diameter"]
                .as_str()
                .unwrap()
                .split_once(' ')
                .unwrap();
            let aim: f64 = aim.parse().unwrap();
            let chance = |what: &str| expected[what].as_f64().unwrap();
            // An aim is rounded to a mark or to what a person reads.
            assert!(aim >= before.0 - 0.002, "{price}: {aim} after {}", before.0);
            before = (aim, chance("scrap"));
            // What a job costs is never less than what its own chances cost.
            let own = price * chance("scrap") + 5.0 * chance("rework");
            let chosen = &expected["measuring_stops"]["chosen"];
            let stops = 2.0 * chosen["after"].as_array().unwrap().len() as f64;
            let stated = chosen["expected_price"].as_f64().unwrap();
            assert!(
                stated >= (own + stops) * 0.97,
                "{price}: {stated} for {own} and {stops}"
            );
        }
    }
}

#[test]
fn a_fixed_ring_is_counted_to_the_aim_and_its_remainder_is_known_then() {
    let limits = ["29.89 mm", "30 mm"];
    for price in [5.0, 20.0, 100.0, 1e3] {
        let sheet = ask("plan", demo(limits, price, Some("0.05 mm")));
        let expected = &sheet["expected"];
        assert!(
            expected["good"].as_f64().unwrap() > 0.95,
            "{price}: {expected}"
        );
        let step = place_of(&sheet, "measure");
        let text = sheet["steps"][step]["text"].as_str().unwrap();
        assert!(text.contains("to the nearest whole one"), "{text}");
        let (size, _) = sheet["steps"][step]["diameter"]
            .as_str()
            .unwrap()
            .split_once(' ')
            .unwrap();
        let more = size.parse::<f64>().unwrap() + 0.04;
        let fields = json!({ "plan": sheet, "step": step, "measured": format!("{more:.3} mm") });
        let answer = ask("after_measurement", fields);
        let after = &answer["plan"]["expected"];
        assert!(after["good"].as_f64().unwrap() > 0.999, "{price}: {after}");
        assert!(after["dominant"] != "ring", "{after}");
    }
}

#[test]
fn a_bar_that_runs_out_and_was_not_cut_is_not_taken_for_a_zero_that_is_off() {
    let job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    let sheet = ask("plan", serde_json::to_value(&job).unwrap());
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps
        .iter()
        .position(|step| step["kind"] == "measure")
        .unwrap();
    let text = steps[stop]["text"].as_str().unwrap();
    assert!(text.contains(" on nothing was cut: "), "{text}");
    let fields = json!({ "plan": sheet, "step": stop, "measured": job["stock"]["diameter"].as_str().unwrap() });
    let answer = ask("after_measurement", fields);
    assert_eq!(
        (&answer["repeat"], &answer["shift"]),
        (&json!(true), &json!(0)),
        "{answer}"
    );
    assert_eq!(answer["causes"][0]["cause"], "missed_turn");
}
