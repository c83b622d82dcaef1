//! The two ways of dividing the metal: the quick one is never slower, and keeps every limit of the other.

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use turnwright::plan::{Preferences, StepKind, Way};
use turnwright::shop::lathe::Spindle;
use turnwright::{ErrorKind, Units};

#[test]
fn the_least_time_is_never_more_than_that_of_the_readable_way_and_keeps_its_limits() {
    let mut runner = TestRunner::new(crate::jobs::config(2000));
    let tried = std::cell::Cell::new(0);
    let jobs = prop_oneof![crate::jobs::job(), crate::parts::job()];
    runner
        .run(&jobs, |job| {
            let quick = Preferences::default()
                .with_way(Way::LeastTime)
                .with_both_ways_compared();
            let readable = job.plan(Units::Metric);
            let quick = job.clone().with_preferences(quick).plan(Units::Metric);
            let sheet = match (&readable, quick) {
                (_, Ok(sheet)) => sheet,
                (_, Err(error)) if error.kind() == ErrorKind::NotOffered => return Ok(()),
                (Ok(_), Err(error)) => {
                    // What the readable way can do, the other can.
                    return Err(TestCaseError::fail(error.to_string()));
                }
                (Err(_), Err(_)) => return Ok(()),
            };
            tried.set(tried.get() + 1);
            let [plain, least] = sheet.expected.ways.as_slice() else {
                return Err(TestCaseError::fail("two ways were to be compared"));
            };
            prop_assert_eq!((plain.way, least.way), (Way::Readable, Way::LeastTime));
            // Sums of the same terms in another order.
            prop_assert!(
                least.time.seconds() <= plain.time.seconds() * (1.0 + 1e-9),
                "{} {}",
                least.time,
                plain.time
            );
            prop_assert_eq!(sheet.cuts().count(), least.cuts as usize);
            let Spindle::Steps(steps) = job.lathe().spindle() else {
                return Err(TestCaseError::fail("steps"));
            };
            let cuts: Vec<_> = sheet.cuts().collect();
            for cut in &cuts {
                prop_assert!(steps.contains(&cut.spindle_speed.unwrap()));
                prop_assert!(job.lathe().feeds().contains(&cut.feed.unwrap()));
                prop_assert!(
                    job.lathe()
                        .speed_cap()
                        .is_none_or(|cap| cut.spindle_speed.unwrap() <= cap)
                );
            }
            for surface in sheet.steps.iter().filter(|s| s.kind == StepKind::Shoulder) {
                let of: Vec<_> = cuts
                    .iter()
                    .filter(|c| c.surface == surface.surface)
                    .collect();
                let [.., before, last] = of.as_slice() else {
                    return Err(TestCaseError::fail("fewer than two cuts"));
                };
                prop_assert_eq!(before.feed, last.feed);
                prop_assert_eq!(before.spindle_speed, last.spindle_speed);
                prop_assert!(
                    (before.depth_of_cut.unwrap().mm() - last.depth_of_cut.unwrap().mm()).abs()
                        < 1e-8
                );
            }
            prop_assert!(sheet.expected.limits.contains(sheet.expected.diameter));
            prop_assert!(
                sheet
                    .to_string()
                    .lines()
                    .all(|line| line.chars().count() <= 100)
            );
            Ok(())
        })
        .unwrap();
    assert!(tried.get() > 60, "only {} were tried", tried.get());
}

/// An invented job with roughing cuts of this depth.
fn of_depth(depth: &str) -> serde_json::Value {
    serde_json::json!({
        "lathe": {
            "spindle_steps": ["125 rpm", "250 rpm", "500 rpm", "1000 rpm"], "feeds": ["0.1 mm/rev", "0.2 mm/rev"],
            "cross_slide": { "reads": "diameter", "division": "0.05 mm", "divisions_per_turn": 100 },
            "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 },
        },
        "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" },
        "material": "11SMn30",
        "stock": { "diameter": "40 mm", "length": "120 mm" },
        "part": { "diameter": "30 mm", "limits": ["29.95 mm", "30 mm"], "length": "40 mm" },
        "preferences": { "depth": depth },
    })
}

#[test]
fn roughing_cuts_have_the_depth_that_was_asked_for() {
    for (depth, units) in [
        ("1 mm", Units::Metric),
        ("0.75 mm", Units::Metric),
        // Thirty-two marks of 0.025 mm.
        ("0.0314960629921259843 in", Units::Inch),
    ] {
        let job: turnwright::plan::Job = serde_json::from_value(of_depth(depth)).unwrap();
        let wanted = depth.parse::<turnwright::DepthOfCut>().unwrap();
        let sheet = job.plan(units).unwrap_or_else(|error| panic!("{error}"));
        let rough: Vec<_> = sheet
            .cuts()
            .filter(|cut| cut.kind == StepKind::RoughCut)
            .collect();
        assert!(rough.len() >= 3, "{sheet}");
        for cut in rough {
            // Sizes are rounded to 1e-9 mm.
            assert!((cut.depth_of_cut.unwrap().mm() - wanted.mm()).abs() < 1e-7);
        }
        // The metal that they leave over is in the first cut, which is no deeper.
        let first = sheet.cuts().next().unwrap();
        assert_eq!(first.kind, StepKind::FirstCut);
        assert!(first.depth_of_cut.unwrap().mm() <= wanted.mm() + 1e-7);
        let all: f64 = sheet.cuts().map(|cut| cut.depth_of_cut.unwrap().mm()).sum();
        assert!((2.0 * all - (40.0 - sheet.expected.diameter.mm())).abs() < 1e-6);
    }
}

#[test]
fn a_depth_that_cannot_be_is_refused_with_what_can() {
    let refused = |depth: &str, more: &dyn Fn(&mut serde_json::Value)| {
        let mut job = of_depth(depth);
        more(&mut job["preferences"]);
        let job: turnwright::plan::Job = serde_json::from_value(job).unwrap();
        let error = job.plan(Units::Metric).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::Contradiction, "{error}");
        assert_eq!(error.field(), "preferences.depth");
        error
    };
    let nothing = |_: &mut serde_json::Value| {};
    // Between two marks, too deep for its chip, too light for its corner; each with the depth that is taken.
    for (depth, taken) in [
        ("0.81 mm", "0.8 mm"),
        ("0.81 mm", "0.825 mm"),
        ("5 mm", "2 mm"),
        ("0.025 mm", "mm, a mark more"),
    ] {
        let error = refused(depth, &nothing);
        assert!(error.expected().contains(taken), "{error}");
        let told = error.expected().split(" mm").next().unwrap();
        let told = told.rsplit(' ').next().unwrap();
        let followed: turnwright::plan::Job =
            serde_json::from_value(of_depth(&format!("{told} mm"))).unwrap();
        assert!(followed.plan(Units::Metric).is_ok(), "{told} of {error}");
    }
    refused("1 mm", &|p| p["way"] = serde_json::json!("least_time"));
    refused("1 mm", &|p| {
        p["largest_depth"] = serde_json::json!("0.5 mm")
    });
}
