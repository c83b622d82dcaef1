//! Random jobs, metric and inch, on lathes of every kind: each is refused by its field, or its sheet keeps
//! every promise of a sheet; and so does the sheet after a measurement. Twenty thousand sheets in the
//! ordinary run.
//!
//! `TW_PLANS=10` takes ten times as many.

use std::collections::BTreeMap;

use turnwright::plan::{Job, Step, SurfaceAt};
use turnwright::shop::dial::DialReads;
use turnwright::{ErrorKind, Surface, Units};

use crate::simulated_lathe::dial::Chance;
use kept::kept;
use made::Made;
use measured::measured;
use within_limits::within_limits;

/// Says what was wrong with which job.
macro_rules! holds {
    ($held:expr, $($what:tt)+) => {
        let held: bool = $held;
        if !held {
            return Err(format!($($what)+));
        }
    };
}

// Below the macro, which they use.
mod force_and_power;
mod kept;
mod made;
mod measured;
mod spring;
mod within_limits;

/// Jobs of one thread, and how many threads.
const JOBS: usize = 8000;
const SEEDS: [u64; 4] = [11, 12, 13, 14];

fn times() -> usize {
    let more = std::env::var("TW_PLANS").ok();
    more.map_or(1, |text| text.parse().unwrap())
}

fn of(job: &Job, at: SurfaceAt) -> &Surface {
    match at.other_end() {
        false => &job.part().surfaces()[at.index()],
        true => &job.part().other_end()[at.index()],
    }
}

/// The mark of a cut in tenths, or ten times how many steps of a readout its size is short of none.
fn count(job: &Job, step: &Step) -> i64 {
    match step.reading {
        Some(reading) => 10 * reading.divisions().count() + i64::from(step.tenths.unwrap_or(0)),
        None => -10 * (step.diameter.mm() / per_mark(job)).round() as i64,
    }
}

/// What a mark takes off the diameter, from the dial's own figures.
fn per_mark(job: &Job) -> f64 {
    let dial = job.lathe().cross_slide().unwrap();
    match dial.reads() {
        DialReads::Diameter => dial.division().mm(),
        _ => 2.0 * dial.division().mm(),
    }
}

/// Whether a number is written with more decimals than sizes are rounded to, nine.
fn too_long(text: &str) -> bool {
    let mut decimals = text.split('.').skip(1);
    decimals.any(|rest| rest.bytes().take_while(u8::is_ascii_digit).count() > 9)
}

/// Plans the jobs of one seed; how many were planned, and what their measurements brought about.
fn run(seed: u64) -> (usize, usize, [usize; 3], BTreeMap<String, usize>) {
    let mut chance = Chance::new(seed);
    let mut followed = [0; 3];
    let (mut planned, mut asked) = (0, 0);
    let mut refused: BTreeMap<String, usize> = BTreeMap::new();
    while asked < JOBS * times() {
        let inch = chance.one_in(0.5);
        let mut made = Made {
            chance: &mut chance,
            inch,
        };
        let Some(question) = made.job() else {
            continue;
        };
        asked += 1;
        let units = if inch { Units::Inch } else { Units::Metric };
        let job: Result<Job, _> = serde_json::from_value(question.clone());
        let Ok(job) = job else {
            panic!("{} is no job: {:?}", question, job.err());
        };
        // It takes longer than to plan the job.
        if asked % 200 == 0 {
            let document = serde_json::json!({ "plan": &question });
            crate::schemas::accepts("plan", &document);
        }
        match job.plan(units) {
            Ok(sheet) => {
                planned += 1;
                let all = kept(&job, &question, &sheet)
                    .and_then(|()| within_limits(&job, &question, &sheet))
                    .and_then(|()| measured(&job, &sheet, &mut chance));
                match all {
                    Ok(what) => followed[what as usize] += 1,
                    Err(what) => panic!("{what}\n{question}\n{sheet}"),
                }
            }
            Err(error) => {
                assert!(error.kind() != ErrorKind::Internal, "{error}\n{question}");
                assert!(
                    !error.field().is_empty() && !error.remedy().is_empty(),
                    "{error}"
                );
                assert!(!too_long(&error.to_string()), "{error}\n{question}");
                *refused.entry(error.field().to_owned()).or_default() += 1;
            }
        }
    }
    (planned, asked, followed, refused)
}

#[test]
fn twenty_thousand_random_jobs_are_refused_by_their_field_or_keep_every_promise() {
    let threads: Vec<_> = SEEDS
        .map(|seed| std::thread::spawn(move || run(seed)))
        .into();
    let (mut planned, mut asked, mut followed) = (0, 0, [0; 3]);
    let mut refused: BTreeMap<String, usize> = BTreeMap::new();
    for thread in threads {
        let (p, a, f, r) = thread.join().unwrap();
        (planned, asked) = (planned + p, asked + a);
        for (all, of_one) in followed.iter_mut().zip(f) {
            *all += of_one;
        }
        for (field, count) in r {
            *refused.entry(field).or_default() += count;
        }
    }
    println!("{planned} of {asked} planned; refused by {refused:?}");
    let [no_stop, sheet, no_sheet] = followed;
    println!("measured off: {sheet} with a sheet, {no_sheet} without; {no_stop} have no stop");
    assert!(
        planned > 20_000 * times() && planned as f64 > 0.6 * asked as f64,
        "{planned} of {asked}: {refused:?}"
    );
    assert!(sheet > planned / 2, "{followed:?} of {planned}");
}
