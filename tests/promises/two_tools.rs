//! One tool roughs and another one finishes: invented jobs on invented lathes.

use serde_json::{Value, json};
use turnwright::advice::diagnosis::SizeAt;
use turnwright::document::answer;
use turnwright::document::plan::Question;
use turnwright::plan::{Job, Sheet, Step, StepKind};
use turnwright::shop::material;
use turnwright::{Diameter, Error, ErrorKind, ToolMaterial, Units};

/// An invented shaft of two diameters, roughed with carbide and finished with high-speed steel.
fn shaft() -> Value {
    json!({
        "lathe": {
            "spindle_steps": ["63 rpm", "125 rpm", "250 rpm", "500 rpm", "1000 rpm"],
            "feeds": ["0.05 mm/rev", "0.1 mm/rev", "0.2 mm/rev", "0.3 mm/rev"],
            "cross_slide": { "reads": "diameter", "division": "0.05 mm", "divisions_per_turn": 100 },
            "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 },
        },
        "tools": {
            "rough": { "material": "carbide", "corner_radius": "0.8 mm", "cutting_edge_angle": "90 deg" },
            "finish": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "93 deg",
                        "minor_cutting_edge_angle": "15 deg" },
        },
        "material": "C45",
        "stock": { "diameter": "50 mm", "length": "180 mm" },
        "part": { "surfaces": [
            { "diameter": "30 mm", "limits": ["29.95 mm", "30 mm"], "length": "30 mm" },
            { "diameter": "40 mm", "class": "h8", "length": "40 mm", "finish": { "ra": "1.6 um" } },
        ] },
    })
}

/// The same in inches, on a dial that counts the radius.
fn inch_shaft() -> Value {
    let mut job = shaft();
    job["lathe"]["cross_slide"] =
        json!({ "reads": "radius", "division": "0.001 in", "divisions_per_turn": 100 });
    job["lathe"]["carriage"] =
        json!({ "reads": "travel", "division": "0.005 in", "divisions_per_turn": 200 });
    job["lathe"]["feeds"] = json!([
        "0.002 in/rev",
        "0.004 in/rev",
        "0.008 in/rev",
        "0.012 in/rev"
    ]);
    job["stock"] = json!({ "diameter": "2 in", "length": "7 in" });
    job["part"] = json!({ "surfaces": [
        { "diameter": "1 1/4 in", "limits": ["1.248 in", "1.25 in"], "length": "1 in" },
        { "diameter": "1 5/8 in", "limits": ["1.623 in", "1.625 in"], "length": "1 1/2 in" },
    ] });
    job["units"] = json!("inch");
    job
}

fn plan(job: &Value) -> Result<Sheet, Error> {
    Question::from_text(&json!({ "plan": job }).to_string())?.answer()
}

fn planned(job: &Value) -> Sheet {
    plan(job).unwrap_or_else(|error| panic!("{error}\n{job}"))
}

fn with_ring(mut job: Value, ring: &str) -> Value {
    job["lathe"]["cross_slide"]["ring"] = json!(ring);
    if ring == "readout" {
        job["lathe"]["cross_slide"]["division"] = json!("0.005 mm");
    }
    job
}

/// The step at which the tool is changed.
fn change(sheet: &Sheet) -> usize {
    let changes: Vec<usize> = (0..sheet.steps.len())
        .filter(|at| {
            sheet.steps[*at]
                .text
                .contains("Change to the finishing tool")
        })
        .collect();
    assert_eq!(changes.len(), 1, "{sheet}");
    changes[0]
}

/// The touch of a surface with the finishing tool.
fn touches(sheet: &Sheet) -> Vec<&Step> {
    sheet.steps[change(sheet)..]
        .iter()
        .filter(|step| step.kind == StepKind::ZeroX)
        .collect()
}

#[test]
fn all_is_roughed_and_measured_before_the_tool_is_changed_once() {
    for job in [shaft(), inch_shaft()] {
        let sheet = planned(&job);
        let (before, after) = sheet.steps.split_at(change(&sheet));
        let cuts = |steps: &[Step], finishing: bool| {
            steps
                .iter()
                .filter(|s| s.depth_of_cut.is_some())
                .filter(|s| (s.kind == StepKind::FinishCut) == finishing)
                .count()
        };
        assert_eq!((cuts(before, true), cuts(after, false)), (0, 0), "{sheet}");
        assert_eq!(cuts(after, true), 4);
        // The largest diameter first, in both.
        for steps in [before, after] {
            let order: Vec<usize> = steps
                .iter()
                .filter(|s| s.depth_of_cut.is_some())
                .map(|s| s.surface.unwrap().index())
                .collect();
            assert!(order.is_sorted_by(|a, b| a >= b), "{order:?}");
            assert!(order.contains(&0) && order.contains(&1));
        }
        // What is touched was measured just before, and the size is told.
        for touch in touches(&sheet) {
            let measured = before
                .iter()
                .rfind(|s| s.kind == StepKind::Measure && s.surface == touch.surface);
            assert_eq!(measured.unwrap().diameter, touch.diameter);
            assert!(touch.text.contains("just touches the roughed diameter"));
        }
        // Both zeros belong to the tool that is gone.
        let change = &sheet.steps[change(&sheet)];
        assert_eq!(change.kind, StepKind::ZeroZ);
        assert!(change.text.contains("no zero holds for it"));
        let kit = sheet.kit.join("; ");
        assert!(kit.contains("the roughing tool and the finishing tool"));
    }
}

#[test]
fn cuts_are_numbered_as_they_are_made_and_stops_are_told_by_those_numbers() {
    let sheet = planned(&shaft());
    let numbers: Vec<usize> = sheet
        .cuts()
        .map(|cut| {
            let (number, _) = cut.text["Cut ".len()..].split_once(',').unwrap();
            number.parse().unwrap()
        })
        .collect();
    assert_eq!(numbers, (1..=numbers.len()).collect::<Vec<_>>());
    let mut last = 0;
    let mut measured = Vec::new();
    for step in &sheet.steps {
        match step.kind {
            StepKind::Measure => measured.push(last),
            _ if step.depth_of_cut.is_some() => last += 1,
            _ => {}
        }
    }
    let told: Vec<usize> = sheet
        .expected
        .how_sure
        .iter()
        .filter_map(|line| line.strip_prefix("Measuring stops after cuts "))
        .flat_map(|line| {
            let (numbers, _) = line.split_once(':').unwrap();
            numbers
                .split(" and ")
                .map(|n| n.parse::<usize>().unwrap())
                .collect::<Vec<_>>()
        })
        .collect();
    let mut sorted = told.clone();
    sorted.sort_unstable();
    assert_eq!(sorted, measured, "{told:?}\n{sheet}");
}

/// What the dial reads where the finishing tool touches, and what a mark takes off, give every size of the plan:
/// counted here anew.
#[test]
fn from_the_touch_on_the_marks_lead_to_the_sizes() {
    for (job, per_mark, marks) in [(shaft(), 0.05, 100.0), (inch_shaft(), 0.0508, 100.0)] {
        for off in [0.0, 0.04, -0.06] {
            let mut sheet = planned(&job);
            let surface = touches(&sheet)[0].surface;
            if off != 0.0 {
                let stop = sheet.steps[..change(&sheet)]
                    .iter()
                    .rposition(|s| s.kind == StepKind::Measure && s.surface == surface)
                    .unwrap();
                let size = Diameter::from_mm(sheet.steps[stop].diameter.mm() + off).unwrap();
                let answer = sheet.after(stop, &[SizeAt::anywhere(size)], None).unwrap();
                assert_eq!((answer.shift, answer.ring_to), (0, None));
                sheet = answer.plan.unwrap();
            }
            let touch = touches(&sheet)[0];
            let at = touch.ring_to.unwrap();
            for cut in sheet
                .cuts()
                .filter(|cut| cut.kind == StepKind::FinishCut && cut.surface == surface)
            {
                let mark = f64::from(cut.reading.unwrap().mark());
                // The ring shows no turns; it is set to a tenth of a mark.
                let from = (mark - at).rem_euclid(marks);
                let size = touch.diameter.mm() - per_mark * from;
                assert!(
                    (size - cut.diameter.mm()).abs() <= 0.05 * per_mark + 1e-6,
                    "{size} for {} at {mark} from {at}",
                    cut.diameter
                );
            }
        }
    }
}

#[test]
fn every_ring_is_zeroed_on_the_roughed_size() {
    for (ring, words) in [
        ("settable", "turn the ring only, to ("),
        ("fixed", "with the compound slide"),
        ("readout", "set the X readout to M"),
    ] {
        for spring in [false, true] {
            let mut job = with_ring(shaft(), ring);
            job["preferences"] = json!({ "correct_for_spring": spring });
            let sheet = planned(&job);
            for touch in touches(&sheet) {
                assert!(touch.text.contains(words), "{ring}: {}", touch.text);
            }
            if ring == "fixed" {
                let touch = &touches(&sheet)[0].text;
                assert!(touch.contains("No shift found before holds"), "{touch}");
                let face = sheet.steps.iter().find(|s| s.kind == StepKind::Face);
                assert!(face.unwrap().text.contains("square to the bed"));
            }
            for surface in &sheet.expected.surfaces {
                assert!(surface.limits.contains(surface.diameter));
            }
        }
    }
}

#[test]
fn each_tool_cuts_at_its_own_speed() {
    let sheet = planned(&shaft());
    let steel = material::Material::named("C45").unwrap();
    for cut in sheet.cuts() {
        let tool = match cut.kind {
            StepKind::FinishCut => ToolMaterial::HighSpeedSteel,
            _ => ToolMaterial::Carbide,
        };
        let band = steel.speed_band(tool).unwrap().value;
        let before = cut.diameter.mm() + 2.0 * cut.depth_of_cut.unwrap().mm();
        let speed = std::f64::consts::PI * before * cut.spindle_speed.unwrap().rpm() / 1000.0;
        assert!(
            speed <= band.high().m_per_min(),
            "{speed} m/min with {}: {}",
            tool.name(),
            cut.text
        );
    }
}

#[test]
fn a_slant_that_the_roughing_tool_leaves_is_squared_by_the_knife_tool_that_finishes() {
    let mut job = shaft();
    job["tools"]["rough"]["cutting_edge_angle"] = json!("75 deg");
    let sheet = planned(&job);
    let squared: Vec<&Step> = sheet
        .steps
        .iter()
        .filter(|s| s.text.starts_with("Square the shoulder of"))
        .collect();
    assert_eq!(squared.len(), 2);
    for step in squared {
        assert!(
            !step.text.contains("Change to the knife tool"),
            "{}",
            step.text
        );
    }
    assert!(!sheet.kit.iter().any(|item| item.contains("a knife tool")));
}

#[test]
fn a_job_of_two_tools_comes_back_from_its_document() {
    let job: Job = serde_json::from_value(shaft()).unwrap();
    let text = serde_json::to_value(&job).unwrap();
    assert!(text["tools"]["rough"].is_object() && text.get("tool").is_none());
    assert_eq!(serde_json::from_value::<Job>(text).unwrap(), job);
    // The sheet carries it, and goes on from it.
    let sheet: Value =
        serde_json::from_str(&answer(&json!({ "plan": shaft() }).to_string()).unwrap()).unwrap();
    let steps = sheet["plan"]["steps"].as_array().unwrap();
    let stop = steps.iter().position(|s| s["kind"] == "measure").unwrap();
    let asked = json!({ "after_measurement": {
        "plan": sheet["plan"], "step": stop, "measured": steps[stop]["diameter"] } });
    let follows: Value = serde_json::from_str(&answer(&asked.to_string()).unwrap()).unwrap();
    let sizes = |sheet: &Value| -> Vec<Value> {
        let surfaces = sheet["expected"]["surfaces"].as_array().unwrap();
        surfaces.iter().map(|s| s["diameter"].clone()).collect()
    };
    let plan = &follows["after_measurement"]["plan"];
    assert_eq!(sizes(plan), sizes(&sheet["plan"]));
    assert_eq!(plan["job"], sheet["plan"]["job"]);
}

#[test]
fn what_two_tools_cannot_do_is_refused_with_its_field() {
    let refused = |change: &dyn Fn(&mut Value)| {
        let mut job = shaft();
        change(&mut job);
        plan(&job).unwrap_err()
    };
    let least_time = refused(&|job| job["preferences"] = json!({ "way": "least_time" }));
    assert_eq!(least_time.kind(), ErrorKind::NotOffered);
    assert_eq!(least_time.field(), "preferences.way");
    for (stops, kind) in [(0, ErrorKind::Contradiction), (9, ErrorKind::Contradiction)] {
        let error = refused(&|job| job["preferences"] = json!({ "measuring_stops": stops }));
        assert_eq!(
            (error.kind(), error.field()),
            (kind, "preferences.measuring_stops")
        );
    }
    for tool in ["rough", "finish"] {
        let error = refused(&|job| {
            job["tools"][tool]
                .as_object_mut()
                .unwrap()
                .remove("material");
        });
        assert_eq!(error.field(), "cutting_speed");
        let remedy = format!("tools.{tool}.material");
        assert!(error.remedy().contains(&remedy), "{error}");
        let error = refused(&|job| job["tools"][tool]["corner_radius"] = json!("-1 mm"));
        assert_eq!(error.field(), format!("tools.{tool}.corner_radius"));
    }
    let missing = refused(&|job| {
        job["tools"].as_object_mut().unwrap().remove("finish");
    });
    assert_eq!(missing.field(), "tools.finish");
}

#[test]
fn a_batch_of_two_tools_makes_every_part_as_the_first() {
    let mut job = shaft();
    job["preferences"] = json!({ "batch": 5 });
    let sheet = planned(&job);
    let words = sheet.batch.unwrap().text.join(" ");
    assert!(words.contains("Two tools change places"), "{words}");
}

#[test]
fn a_comparison_of_ways_says_why_there_is_none() {
    let mut job = shaft();
    job["preferences"] = json!({ "compare_ways": true });
    let sheet = planned(&job);
    assert!(sheet.expected.ways.is_empty());
    assert!(sheet.cautions.iter().any(|c| c.code() == "not_compared"));
    assert_eq!(sheet.units(), Units::Metric);
}

#[test]
fn between_two_centres_the_tool_is_changed_for_each_end() {
    let mut job = shaft();
    job["holding"] = json!("between_centres");
    job["stock"] = json!({ "diameter": "50 mm", "length": "190 mm" });
    job["part"]["other_end"] = json!([{ "diameter": "35 mm", "class": "h9", "length": "40 mm" }]);
    job["part"]["overall_length"] = json!("180 mm");
    let sheet = planned(&job);
    let changes = sheet
        .steps
        .iter()
        .filter(|s| s.text.contains("Change to the finishing tool"));
    assert_eq!(changes.count(), 2, "{sheet}");
    let round = sheet
        .steps
        .iter()
        .find(|s| s.kind == StepKind::TurnRound)
        .unwrap();
    assert!(round.text.contains("The roughing tool of this sheet back"));
}

#[test]
fn stops_that_were_asked_for_stand_in_the_way_of_no_measurement() {
    for stops in 2..=3 {
        let mut job = shaft();
        job["part"] = json!({ "diameter": "40 mm", "class": "h8", "length": "40 mm" });
        job["preferences"] = json!({ "measuring_stops": stops });
        let sheet = planned(&job);
        let places = |sheet: &Sheet| -> Vec<usize> {
            (0..sheet.steps.len())
                .filter(|at| sheet.steps[*at].kind == StepKind::Measure)
                .collect()
        };
        assert_eq!(places(&sheet).len(), stops);
        for at in places(&sheet) {
            for off in [-0.1, -0.02, 0.02, 0.1] {
                let size = Diameter::from_mm(sheet.steps[at].diameter.mm() + off).unwrap();
                let answer = sheet.after(at, &[SizeAt::anywhere(size)], None);
                let answer = answer.unwrap_or_else(|error| panic!("{at} {off}: {error}"));
                assert!(answer.plan.is_some() || answer.why_no_plan.is_some());
            }
        }
    }
}
