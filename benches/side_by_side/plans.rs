//! Plans: their times, and their memory.

use std::hint::black_box;

use turnwright::Diameter;
use turnwright::advice::diagnosis::SizeAt;
use turnwright::document::{self, plan::Question};
use turnwright::plan::StepKind;

use crate::tools::{Outcome, duel, memory};

pub fn documents() -> Outcome<()> {
    const TIMES: usize = 20;
    let fields: toml::Table =
        include_str!("../../examples/jobs/metric_radius_dial.toml").parse()?;
    let text = serde_json::json!({ "plan": fields }).to_string();
    let question = Question::from_text(&text)?;
    let sheet = question.answer()?;
    let (printed, answer) = (sheet.to_string(), document::answer(&text)?);
    let tree = serde_json::to_value(&sheet)?;
    let asked: serde_json::Value = serde_json::from_str(&text)?;
    let tree_text = tree.to_string();

    let [whole, plan] = duel(
        60,
        TIMES,
        || {
            for _ in 0..TIMES {
                let sheet = Question::from_text(black_box(&text)).and_then(|asked| asked.answer());
                assert!(sheet.is_ok_and(|sheet| sheet.to_string() == printed));
            }
        },
        || {
            for _ in 0..TIMES {
                assert!(
                    black_box(&question)
                        .answer()
                        .is_ok_and(|found| found == sheet)
                );
            }
        },
    );
    let [door, alone] = duel(
        60,
        TIMES,
        || {
            for _ in 0..TIMES {
                assert!(document::answer(black_box(&text)).is_ok_and(|found| found == answer));
            }
        },
        || {
            for _ in 0..TIMES {
                let read = serde_json::from_str::<serde_json::Value>(black_box(&text));
                assert!(read.is_ok_and(|read| read == asked));
                let written = serde_json::to_string(black_box(&tree));
                assert!(written.is_ok_and(|written| written == tree_text));
            }
        },
    );
    let us = 1e-3;
    println!(
        "plan/sheet/from job text to printed text {:>9.1} us    goal 100 us",
        whole * us
    );
    println!(
        "plan/sheet/the plan alone                {:>9.1} us",
        plan * us
    );
    println!(
        "document/plan/door                       {:>9.1} us",
        door * us
    );
    println!(
        "document/plan/serde_json alone           {:>9.1} us    (door - plan) / serde_json {:.2}, goal 1.5",
        alone * us,
        (door - plan) / alone
    );
    Ok(())
}

/// A shaft of five diameters, from job to printed text, with the price of the other way, and after a
/// measurement.
pub fn five_steps() -> Outcome<()> {
    const TIMES: usize = 10;
    let seat = |d: u32, length: u32| serde_json::json!({ "diameter": format!("{d} mm"), "class": "h9", "length": format!("{length} mm") });
    // An invented shaft on the invented lathe of the other plan.
    let mut fields: toml::Table =
        include_str!("../../examples/jobs/metric_radius_dial.toml").parse()?;
    fields.remove("part");
    let mut job = serde_json::to_value(&fields)?;
    job["stock"] = serde_json::json!({ "diameter": "40 mm", "length": "160 mm" });
    job["part"] = serde_json::json!({
        "surfaces": [seat(20, 15), seat(24, 15), seat(28, 20), seat(32, 15), seat(36, 20)]
    });
    let mut compared = job.clone();
    compared["preferences"] = serde_json::json!({ "compare_ways": true });
    let ask = |job: &serde_json::Value| {
        Question::from_text(&serde_json::json!({ "plan": job }).to_string())
    };
    let text = serde_json::json!({ "plan": job }).to_string();
    let (plain, both) = (ask(&job)?, ask(&compared)?);
    let sheet = plain.answer()?;
    let printed = sheet.to_string();
    let [whole, alone] = duel(
        40,
        TIMES,
        || {
            for _ in 0..TIMES {
                let sheet = Question::from_text(black_box(&text)).and_then(|asked| asked.answer());
                assert!(sheet.is_ok_and(|sheet| sheet.to_string() == printed));
            }
        },
        || {
            for _ in 0..TIMES {
                assert!(black_box(&plain).answer().is_ok_and(|found| found == sheet));
            }
        },
    );
    let stop = sheet
        .steps
        .iter()
        .position(|step| step.kind == StepKind::Measure);
    let stop = stop.ok_or("a sheet without a measuring stop")?;
    let size = Diameter::from_mm(sheet.steps[stop].diameter.mm() + 0.04)?;
    let [other_way, after] = duel(
        20,
        TIMES,
        || {
            for _ in 0..TIMES {
                assert!(black_box(&both).answer().is_ok());
            }
        },
        || {
            for _ in 0..TIMES {
                assert!(
                    sheet
                        .after(black_box(stop), &[SizeAt::anywhere(size)], None)
                        .is_ok()
                );
            }
        },
    );
    let us = 1e-3;
    for (what, ns, goal) in [
        ("from job text to printed text", whole, "100 us"),
        ("the plan alone", alone, ""),
        ("with the price of the other way", other_way, "1000 us"),
        ("after a measurement", after, "200 us"),
    ] {
        println!(
            "plan/five diameters/{what:<32} {:>9.1} us    goal {goal}",
            ns * us
        );
    }
    Ok(())
}

/// The memory of a plan grows with its steps: each surface more takes as much as the one before.
pub fn memory_of_plans() -> Outcome<()> {
    // Invented shafts on the invented lathe of the other plans, 2 mm from shoulder to shoulder.
    let mut fields: toml::Table =
        include_str!("../../examples/jobs/metric_radius_dial.toml").parse()?;
    fields.remove("part");
    let mut job = serde_json::to_value(&fields)?;
    job["stock"] = serde_json::json!({ "diameter": "40 mm", "length": "160 mm" });
    let mut found = Vec::new();
    for count in [1, 2, 4, 8_u32] {
        let seat = |at: u32| serde_json::json!({ "diameter": format!("{} mm", 40 - 2 * (count - at)), "class": "h9", "length": "8 mm" });
        job["part"] = serde_json::json!({ "surfaces": (0..count).map(seat).collect::<Vec<_>>() });
        let asked = Question::from_text(&serde_json::json!({ "plan": job }).to_string())?;
        let (sheet, held, most) = memory(|| asked.answer());
        let steps = sheet?.steps.len();
        println!(
            "plan/memory/{count} surfaces, {steps:>3} steps {held:>9} bytes held, {most} while planning"
        );
        found.push([steps, held, most].map(|of| of as f64));
    }
    let more = |from: usize, to: usize, what: usize| {
        (found[to][what] - found[from][what]) / (found[to][0] - found[from][0])
    };
    for (what, name) in [(1, "held"), (2, "while planning")] {
        let (first, last) = (more(0, 1, what), more(2, 3, what));
        println!(
            "plan/memory/{name:<15} {first:>6.0} bytes for each step of the second surface, {last:.0} of the fifth to eighth"
        );
        // A vector that doubles its room holds up to twice what lies in it.
        assert!(last < 2.0 * first, "{name}: {found:?}");
    }
    Ok(())
}
