//! An invented case, of which the least time is known.

use turnwright::Feed;
use turnwright::physics::finish::arc_height;

use super::{Bounds, Job, passes_of};

/// The invented case: 55 mm, a division of 0.05 mm, 30 feeds, 18 steps, 200 mm.
pub fn invented(divisions: u32) -> Job {
    let feeds: Vec<f64> = (0..30)
        .map(|i| 0.04 * 20_f64.powf(f64::from(i) / 29.0))
        .collect();
    let steps = (0..18)
        .map(|j| 16.0 * 125_f64.powf(f64::from(j) / 17.0))
        .collect();
    let fine = |f: &&f64| {
        let rt = arc_height(
            Feed::from_mm_per_rev(**f).unwrap(),
            "0.8 mm".parse().unwrap(),
        );
        rt.unwrap().um() <= 8.0
    };
    let largest = feeds.iter().filter(fine).copied().fold(0.0, f64::max);
    Job {
        finished: 55.0,
        division: 0.05,
        divisions,
        length: 200.0,
        steps,
        specific: 2100.0,
        exponent: 0.26,
        kappa: 90.0,
        corner: 0.0,
        lost: 25.0,
        change: 0.0,
        rough: Bounds {
            main: Some(1800.0),
            power: Some(3.0),
            divisions: (Some(1), Some(100)),
            ..Bounds::new(120.0)
        },
        finish: Some((
            1,
            Bounds {
                main: Some(350.0),
                power: Some(3.0),
                feeds: (None, Some(largest)),
                divisions: (Some(2), Some(100)),
                ..Bounds::new(168.0)
            },
        )),
        feeds,
    }
}

// Invented case; optimum by a dynamic programme in numpy and by enumeration.
const OPTIMA: [(u32, f64); 8] = [
    (2, 92.34797619977577),
    (3, 92.34797619977577),
    (5, 92.34797619977577),
    (8, 92.34797619977577),
    (11, 99.67713589854533),
    (40, 170.725285924),
    (100, 326.345229360),
    (200, 605.326781794),
];

#[test]
fn the_invented_case_takes_its_least_time() {
    for (divisions, time) in OPTIMA {
        let job = invented(divisions);
        let plan = job.solve().unwrap();
        passes_of(&job, &plan);
        let off = plan.time.seconds() / time - 1.0;
        assert!(off.abs() < 1e-9, "{divisions}: {off:e}");
    }
}

#[test]
fn the_same_plan_is_found_for_any_order_of_the_lists() {
    let job = invented(100);
    let mut turned = job.clone();
    turned.feeds.reverse();
    turned.steps.swap(3, 15);
    assert_eq!(job.solve().unwrap(), turned.solve().unwrap());
}

#[test]
fn dearer_changes_of_step_are_never_more_often_made() {
    let mut changes = Vec::new();
    for change in [0.0, 1.0, 30.0, 600.0] {
        let job = Job {
            change,
            ..invented(200)
        };
        let plan = job.solve().unwrap();
        passes_of(&job, &plan);
        let pairs = plan.passes.windows(2);
        let count = pairs.filter(|p| p[0].spindle_speed != p[1].spindle_speed);
        changes.push((count.count(), plan.time.seconds()));
    }
    assert!(
        changes
            .windows(2)
            .all(|c| c[0].0 >= c[1].0 && c[0].1 <= c[1].1),
        "{changes:?}"
    );
    assert!(changes[0].0 > 0 && changes[3].0 == 0, "{changes:?}");
}

#[test]
fn two_finishing_passes_are_equal_and_need_two_divisions() {
    let mut job = invented(41);
    job.finish.as_mut().unwrap().0 = 2;
    let plan = job.solve().unwrap();
    passes_of(&job, &plan);
    let [.., a, b] = plan.passes.as_slice() else {
        panic!("{plan:?}");
    };
    assert_eq!(
        (a.divisions, a.feed, a.spindle_speed),
        (b.divisions, b.feed, b.spindle_speed)
    );
    job.divisions = 1;
    let error = job.solve().unwrap_err();
    assert!(error.is_impossible() && error.field() == "divisions");
}
