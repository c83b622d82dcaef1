//! Random jobs, and promises that are held of them.

use proptest::prelude::*;

use super::{Bounds, Job};

fn bounds(steps: usize) -> impl Strategy<Value = Bounds> {
    let some = |range: std::ops::Range<f64>| proptest::option::weighted(0.4, range);
    (
        (30.0..300.0, proptest::option::weighted(0.2, 5.0..40.0_f64)),
        (some(100.0..3000.0), some(20.0..1500.0)),
        proptest::option::weighted(0.3, (20.0..600.0, -30.0..100.0_f64)),
        (some(0.2..6.0), some(3.0..80.0)),
        proptest::option::weighted(0.3, proptest::collection::vec(3.0..80.0_f64, steps)),
        (
            proptest::option::weighted(0.2, 0.04..0.15_f64),
            proptest::option::weighted(0.3, 0.15..0.8_f64),
        ),
        (
            proptest::option::weighted(0.3, 1..3_u32),
            proptest::option::weighted(0.4, 3..9_u32),
        ),
        proptest::option::weighted(0.2, (0.0..3.0_f64, 3.0..25.0_f64)),
    )
        .prop_map(
            |(
                (speed, least_speed),
                (main, passive),
                by_size,
                (power, torque),
                torques,
                feeds,
                divisions,
                chip,
            )| {
                Bounds {
                    speed,
                    least_speed: least_speed.map(|v| v.min(speed)),
                    main,
                    passive,
                    passive_by_size: by_size,
                    power,
                    torque,
                    torques,
                    feeds,
                    divisions,
                    chip,
                }
            },
        )
}

fn distinct(range: std::ops::Range<f64>, most: usize) -> impl Strategy<Value = Vec<f64>> {
    proptest::collection::vec(range, 1..=most).prop_filter("each once", |values| {
        let mut sorted = values.clone();
        sorted.sort_by(f64::total_cmp);
        sorted.windows(2).all(|pair| pair[0] < pair[1])
    })
}

pub fn job() -> impl Strategy<Value = Job> {
    (
        (20.0..60.0, 0.05..0.6, 1..=11_u32, 20.0..300.0),
        (distinct(0.04..0.8, 4), distinct(40.0..1500.0, 3)),
        (
            500.0..3500.0,
            0.0..0.5,
            45.0..110.0,
            prop_oneof![Just(0.0), 0.2..1.6_f64],
        ),
        (
            prop_oneof![Just(0.0), 1.0..60.0_f64],
            prop_oneof![Just(0.0), 0.1..80.0_f64],
        ),
        bounds(3),
        proptest::option::weighted(0.7, (1..=2_u32, bounds(3))),
    )
        .prop_map(
            |(
                (finished, division, divisions, length),
                (feeds, steps),
                (specific, exponent, kappa, corner),
                (lost, change),
                rough,
                finish,
            )| Job {
                finished,
                division,
                divisions,
                length,
                feeds,
                steps,
                specific,
                exponent,
                kappa,
                corner,
                lost,
                change,
                rough,
                finish,
            },
        )
}

/// A job in which a sound plan is likely, for what is compared between plans.
pub fn easy_job() -> impl Strategy<Value = Job> {
    job().prop_map(|mut job| {
        for bounds in [Some(&mut job.rough), job.finish.as_mut().map(|f| &mut f.1)]
            .into_iter()
            .flatten()
        {
            bounds.main = bounds.main.map(|n| n + 500.0);
            bounds.divisions.0 = None;
            bounds.feeds.0 = None;
            bounds.least_speed = None;
            bounds.chip = None;
        }
        job
    })
}

pub fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// Holds `promise` of so many jobs, of which a third or more must have a plan, so that it says something.
pub fn for_jobs<S: Strategy>(cases: u32, jobs: &S, promise: impl Fn(S::Value) -> bool)
where
    S::Value: std::fmt::Debug,
{
    let planned = std::cell::Cell::new(0);
    let mut runner = proptest::test_runner::TestRunner::new(config(cases));
    let held = runner.run(jobs, |job| {
        planned.set(planned.get() + u32::from(promise(job)));
        Ok(())
    });
    assert!(held.is_ok(), "{}", held.unwrap_err());
    assert!(3 * planned.get() > cases, "{} of {cases}", planned.get());
}
