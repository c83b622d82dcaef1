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
