//! A simulated lathe works from the sheets cut by cut: what it counts is what the sheets promised.
//!
//! Nothing of the crate's physics is used: the bar bends by finite elements, the force, the dial, the
//! touch, the instrument and the warmth are written anew. A sheet is read as a person reads it.

#[path = "simulated/beam.rs"]
pub mod beam;
#[path = "simulated/dial.rs"]
pub mod dial;
#[path = "simulated/person.rs"]
mod person;
#[path = "simulated/trial.rs"]
pub mod trial;

use dial::Chance;
use person::{Bends, Came, Made, Manner, Slip, turn};
use turnwright::advice::diagnosis::Cause;
use turnwright::plan::{Preferences, Sheet, Step, StepKind};
use turnwright::{Holding, HoldingKind, Units};

use trial::{Group, Trial};

/// So many times the jobs of an ordinary run.
fn times() -> usize {
    let more = std::env::var("TW_SIMULATED").ok();
    more.map_or(1, |text| text.parse().unwrap())
}

/// Sheets that say of themselves that the part comes out good nineteen times in twenty.
fn feasible(count: usize, seed: u64) -> Vec<(Trial, Sheet)> {
    feasible_of(Group::default(), count, seed)
}

fn feasible_of(group: Group, count: usize, seed: u64) -> Vec<(Trial, Sheet)> {
    let mut chance = Chance::new(seed);
    let mut found = Vec::with_capacity(count);
    while found.len() < count {
        let Some((trial, sheet)) = Trial::of(group, &mut chance) else {
            continue;
        };
        if sheet.expected.good.value() >= 0.95 {
            found.push((trial, sheet));
        }
    }
    found
}

#[derive(Debug, Clone, Copy, Default)]
struct Count {
    jobs: usize,
    parts: usize,
    good: usize,
    rework: usize,
    scrap: usize,
    stated_good: f64,
    stated_scrap: f64,
    stopped: usize,
    no_metal: usize,
}

impl Count {
    fn add(&mut self, made: &Made) {
        self.parts += 1;
        match made.came {
            Came::Good => self.good += 1,
            Came::Rework => self.rework += 1,
            Came::Scrap => self.scrap += 1,
        }
        self.stopped += usize::from(made.stopped);
    }

    fn of(&self, count: usize) -> f64 {
        count as f64 / self.parts as f64
    }

    fn show(&self, what: &str) {
        let jobs = self.jobs as f64;
        println!(
            "{what:32} jobs {:4} parts {:6} good {:.4} (stated {:.4}) rework {:.4} scrap {:.4} (stated {:.4}) stopped {}",
            self.jobs,
            self.parts,
            self.of(self.good),
            self.stated_good / jobs,
            self.of(self.rework),
            self.of(self.scrap),
            self.stated_scrap / jobs,
            self.stopped,
        );
    }
}

const PARTS: usize = 200;
/// Asking what follows costs milliseconds: fewer jobs and parts tell enough.
const ASKING: (usize, usize) = (3, 60);

/// Counts by the stated chance, `[all, 0.95.., 0.97.., 0.99..]`, of the jobs that `which` takes.
fn counted(
    jobs: &[(Trial, Sheet)],
    parts: usize,
    manner: Manner,
    which: impl Fn(&Trial) -> bool,
) -> [Count; 4] {
    let mut chance = Chance::new(2);
    let mut counts = [Count::default(); 4];
    for (trial, sheet) in jobs.iter().filter(|(trial, _)| which(trial)) {
        let expected = &sheet.expected;
        let (good, scrap) = (expected.good.value(), expected.scrap.value());
        let bin = match good {
            low if low < 0.97 => 1,
            middle if middle < 0.99 => 2,
            _ => 3,
        };
        for at in [0, bin] {
            counts[at].jobs += 1;
            counts[at].stated_good += good;
            counts[at].stated_scrap += scrap;
        }
        let mut bends = Bends::default();
        for _ in 0..parts {
            let made = turn(trial, sheet, manner, None, &mut bends, &mut chance);
            assert_eq!(made.into_jaws, 0, "a cut as far as the jaws:\n{sheet}");
            assert_eq!(
                made.outwards, 0,
                "a mark not come in to from outside:\n{sheet}"
            );
            assert!(made.refused.is_none(), "{:?}:\n{sheet}", made.refused);
            for at in [0, bin] {
                counts[at].add(&made);
                counts[at].no_metal += usize::from(made.without_metal > 0);
            }
        }
    }
    counts
}

/// What a sheet states and what is counted may part by two in a hundred.
const PART: f64 = 0.02;

fn agree(counts: &[Count]) {
    for (count, what) in counts
        .iter()
        .zip(["all", "0.95 to 0.97", "0.97 to 0.99", "above 0.99"])
    {
        if count.jobs == 0 {
            continue;
        }
        count.show(what);
        let stated = (
            count.stated_good / count.jobs as f64,
            count.stated_scrap / count.jobs as f64,
        );
        let found = (count.of(count.good), count.of(count.scrap));
        // Three standard errors of a count, of use where the parts are few.
        let error = 3.0 * (stated.0 * (1.0 - stated.0) / count.parts as f64).sqrt();
        assert!(
            (found.0 - stated.0).abs() < PART + error,
            "{what}: {count:?}"
        );
        assert!((found.1 - stated.1).abs() < PART, "{what}: {count:?}");
        // No cut without metal, but for a few in ten thousand whose touch was far off.
        assert!(count.of(count.no_metal) < 0.002, "{what}: {count:?}");
    }
}

/// What README says of it.
fn words(count: &Count) -> String {
    let percent = |share: f64| format!("{:.1} %", 100.0 * share);
    format!(
        "{} invented jobs, {} parts each: good {}, one more cut {}, lost {}; the sheets say good {}, lost {}",
        count.jobs,
        count.parts / count.jobs,
        percent(count.of(count.good)),
        percent(count.of(count.rework)),
        percent(count.of(count.scrap)),
        percent(count.stated_good / count.jobs as f64),
        percent(count.stated_scrap / count.jobs as f64),
    )
}

#[test]
fn simulated_parts_come_out_as_their_sheets_say() {
    let jobs = feasible(300 * times(), 1);
    let counts = counted(&jobs, PARTS, Manner::Rule, |_| true);
    agree(&counts);
    assert!(counts[0].of(counts[0].good) > 0.99, "{:?}", counts[0]);
    if times() == 1 {
        let readme = include_str!("../../README.md");
        let words = words(&counts[0]);
        let plain = readme.split_whitespace().collect::<Vec<_>>().join(" ");
        assert!(plain.contains(&words), "README should say: {words}");
    }
}

/// Parts of each job of a group.
const GROUP_PARTS: usize = 100;

/// Metric and inch, several diameters, both ends, least time: each by itself and all together.
#[test]
fn every_group_of_simulated_parts_comes_out_as_its_sheets_say() {
    let of = |inch, round, least_time| Group {
        inch,
        round,
        least_time,
        ..Group::default()
    };
    let groups = [
        ("metric", of(false, false, false), 21),
        ("inch", of(true, false, false), 22),
        ("turned round", of(false, true, false), 23),
        ("least time", of(false, false, true), 24),
        ("inch, turned round", of(true, true, false), 25),
        ("inch, turned round, least time", of(true, true, true), 26),
    ];
    let threads = groups.map(|(name, group, seed)| {
        std::thread::spawn(move || {
            let jobs = feasible_of(group, 100 * times(), seed);
            let several = |t: &Trial| t.pieces.len() + t.other.len() > 1;
            let count =
                |which: &dyn Fn(&Trial) -> bool| counted(&jobs, GROUP_PARTS, Manner::Rule, which);
            let (every, parts) = ASKING;
            let some: Vec<_> = jobs.iter().step_by(every).cloned().collect();
            [
                (format!("{name}: all"), count(&|_| true)),
                (format!("{name}: one diameter"), count(&|t| !several(t))),
                (format!("{name}: several"), count(&several)),
                (format!("{name}: settable"), count(&|t| t.dial.settable)),
                (format!("{name}: fixed"), count(&|t| !t.dial.settable)),
                (
                    format!("{name}: asks, settable"),
                    counted(&some, parts, Manner::Asks, |t| t.dial.settable),
                ),
                (
                    format!("{name}: asks, fixed"),
                    counted(&some, parts, Manner::Asks, |t| !t.dial.settable),
                ),
            ]
        })
    });
    for (what, counts) in threads.into_iter().flat_map(|one| one.join().unwrap()) {
        let [all, ..] = counts;
        if all.jobs == 0 {
            continue;
        }
        print!("{what}: ");
        agree(&[all]);
        // With four diameters and more, each with its chance, 99.1 % is what the sheets state.
        assert!(all.of(all.good) > 0.985, "{what}: {all:?}");
    }
}

/// Metric, inch and both ends of such a group, by the rules on paper and by asking what follows.
fn comes_out(what: &str, group: Group, seed: u64) {
    for (name, inch, round, seed) in [
        ("metric", false, false, seed),
        ("inch", true, false, seed + 1),
        ("both ends", false, true, seed + 2),
    ] {
        let group = Group {
            inch,
            round,
            ..group
        };
        let jobs = feasible_of(group, 60 * times(), seed);
        let (every, parts) = ASKING;
        let some: Vec<_> = jobs.iter().step_by(every).cloned().collect();
        for all in [
            counted(&jobs, GROUP_PARTS, Manner::Rule, |_| true)[0],
            counted(&some, parts, Manner::Asks, |_| true)[0],
        ] {
            print!("{what}, {name}: ");
            agree(&[all]);
        }
    }
}

/// Nothing holds such a bar against tilting; its whole length bends.
#[test]
fn simulated_parts_between_two_centres_come_out_as_their_sheets_say() {
    let between = Group {
        between: true,
        ..Group::default()
    };
    comes_out("between two centres", between, 31);
}

/// What was roughed with one tool is touched with another one, and is thinner than it was.
#[test]
fn simulated_parts_of_two_tools_come_out_as_their_sheets_say() {
    let two_tools = Group {
        two_tools: true,
        ..Group::default()
    };
    comes_out("two tools", two_tools, 41);
}

#[test]
fn simulated_parts_come_out_as_well_for_who_asks_what_follows() {
    let jobs = feasible(300 * times(), 1);
    let (every, parts) = ASKING;
    let some: Vec<_> = jobs.into_iter().step_by(every).collect();
    agree(&counted(&some, parts, Manner::Asks, |trial| {
        trial.dial.settable
    }));
    // Too few of them have a fixed ring to be told apart by the chance stated.
    let [fixed, ..] = counted(&some, parts, Manner::Asks, |trial| !trial.dial.settable);
    agree(&[fixed]);
}

/// How slips on purpose came out.
#[derive(Debug, Default)]
struct Slips {
    tried: usize,
    named: usize,
    lost_by_then: usize,
    lost_after: usize,
    good: usize,
    refused: usize,
}

fn slipped(
    jobs: &[(Trial, Sheet)],
    pick: impl Fn(&Trial, &Sheet, &mut Chance) -> Option<Slip>,
    right: Cause,
) -> Slips {
    let mut chance = Chance::new(4);
    let mut found = Slips::default();
    for (trial, sheet) in jobs {
        let mut bends = Bends::default();
        for _ in 0..4 {
            let Some(slip) = pick(trial, sheet, &mut chance) else {
                continue;
            };
            let made = turn(
                trial,
                sheet,
                Manner::Asks,
                Some(slip),
                &mut bends,
                &mut chance,
            );
            found.refused += usize::from(made.refused.is_some());
            let Some(named) = made.named else { continue };
            found.tried += 1;
            found.named += usize::from(named == right);
            found.lost_by_then += usize::from(made.lost_by_then);
            found.lost_after += usize::from(!made.lost_by_then && made.came == Came::Scrap);
            found.good += usize::from(made.came == Came::Good);
        }
    }
    println!("{right:?}: {found:?}");
    found
}

/// The cuts that are measured, counted from 0.
fn measured_cuts(sheet: &Sheet) -> Vec<usize> {
    let mut cuts = 0;
    let mut found = Vec::new();
    for step in &sheet.steps {
        if step.depth_of_cut.is_some() {
            cuts += 1;
        }
        if step.kind == StepKind::Measure {
            found.push(cuts - 1);
        }
    }
    found
}

fn slips(pick: impl Fn(&Trial, &Sheet, &mut Chance) -> Option<Slip>, right: Cause) -> Slips {
    slipped(&feasible(100, 3), pick, right)
}

impl Slips {
    fn of(&self, count: usize) -> f64 {
        count as f64 / self.tried as f64
    }
}

// The floors below were measured with this seed, and left with a margin: they tell when it gets worse.

#[test]
fn a_simulated_dial_that_counts_otherwise_is_named_and_loses_few_parts() {
    let found = slips(
        |_, sheet, _| (!measured_cuts(sheet).is_empty()).then_some(Slip::OtherDial),
        Cause::DialCountsOtherwise,
    );
    assert!(found.of(found.named) > 0.95, "{found:?}");
    assert!(found.of(found.lost_after) < 0.04, "{found:?}");
    assert_eq!(found.refused, 0, "{found:?}");
}

/// A turn of any cut up to the last that is measured.
fn turned(few: bool) -> Slips {
    slips(
        |_, sheet, chance| {
            let last = *measured_cuts(sheet).last()?;
            let cut = (chance.share() * (last + 1) as f64) as usize;
            Some(Slip::Turn { cut, few })
        },
        Cause::MissedTurn,
    )
}

#[test]
fn a_simulated_turn_too_many_is_named() {
    let found = turned(false);
    assert!(found.of(found.named) > 0.88, "{found:?}");
    // Most such parts are lost by the slip itself.
    assert!(found.of(found.lost_after) < 0.08, "{found:?}");
    assert_eq!(found.refused, 0, "{found:?}");
}

/// A turn too few mostly cuts air: what is left is the metal that was there.
#[test]
fn a_simulated_turn_too_few_is_named_and_loses_no_part() {
    let found = turned(true);
    assert!(found.of(found.named) > 0.88, "{found:?}");
    assert!(found.of(found.lost_after) < 0.01, "{found:?}");
    assert!(found.of(found.good) > 0.95, "{found:?}");
    assert_eq!(found.refused, 0, "{found:?}");
}

/// A zero that was knocked leaves as much as a backlash: which of both it was, the size cannot tell. What
/// counts is that the cut is made once more where going on would cost more.
#[test]
fn a_simulated_backlash_that_was_left_in_loses_few_parts() {
    let found = slips(
        |trial, sheet, chance| {
            let cuts = measured_cuts(sheet);
            if trial.dial.backlash == 0.0 || cuts.is_empty() {
                return None;
            }
            let cut = chance.one_of(&cuts);
            let share = chance.between(0.5, 1.0);
            Some(Slip::Backlash { cut, share })
        },
        Cause::Backlash,
    );
    assert!(found.of(found.named) > 0.45, "{found:?}");
    assert!(found.of(found.lost_after) < 0.02, "{found:?}");
    assert!(found.of(found.good) > 0.95, "{found:?}");
    assert_eq!(found.refused, 0, "{found:?}");
}

/// Without a measuring stop a bar comes out too large by its spring; corrected for it, it does not.
#[test]
fn readings_corrected_for_the_spring_bring_the_simulated_bar_to_its_size() {
    let mut chance = Chance::new(6);
    let (mut left, mut corrected, mut bars) = (0.0, 0.0, 0);
    for (trial, _) in feasible(60, 5) {
        let no_stop = trial.preferences.clone().with_measuring_stops(0);
        let mean_off = |preferences: Preferences, chance: &mut Chance| {
            let job = trial.job.clone().with_preferences(preferences);
            let sheet = job.plan(Units::Metric).ok()?;
            let first = |s: &&Step| s.surface.is_some_and(|of| of.index() == 0);
            let last = sheet.cuts().filter(first).last()?.diameter;
            let (trial, mut bends) = (
                Trial {
                    job,
                    ..trial.clone()
                },
                Bends::default(),
            );
            let mut sum = 0.0;
            for _ in 0..PARTS {
                let made = turn(&trial, &sheet, Manner::Rule, None, &mut bends, chance);
                sum += made.sizes[0] - last.mm();
            }
            Some(sum / PARTS as f64)
        };
        let without = mean_off(no_stop.clone(), &mut chance);
        let with = mean_off(no_stop.with_correction_for_spring(), &mut chance);
        if let (Some(without), Some(with)) = (without, with) {
            (left, corrected, bars) = (left + without, corrected + with, bars + 1);
        }
    }
    let (left, corrected) = (left / bars as f64, corrected / bars as f64);
    println!("{bars} bars: {left:.5} mm too large, corrected {corrected:.5} mm off");
    assert!(bars > 30, "{bars}");
    // The force of a simulated bar is that of no formula of the crate: half is what can be asked for.
    assert!(
        left > 0.002 && corrected.abs() < 0.5 * left,
        "{left} {corrected}"
    );
}

/// A bar that springs too much for its zone is gone over twice at each of the last two marks.
#[test]
fn spring_passes_bring_the_simulated_bar_to_the_chance_stated() {
    let mut chance = Chance::new(7);
    let mut jobs = Vec::new();
    for _ in 0..4000 {
        let Some((trial, _)) = Trial::random(&mut chance) else {
            continue;
        };
        let job = trial
            .job
            .clone()
            .with_holding(Holding::new(HoldingKind::Chuck));
        let Ok(sheet) = job.plan(Units::Metric) else {
            continue;
        };
        if sheet.cuts().any(|cut| cut.text.contains("spring pass")) {
            jobs.push((Trial { job, ..trial }, sheet));
        }
    }
    assert!(jobs.len() > 20, "{}", jobs.len());
    let count = counted(&jobs, 60, Manner::Rule, |_| true)[0];
    count.show("spring passes");
    let stated = count.stated_good / count.jobs as f64;
    let found = count.of(count.good);
    // Many of these jobs are out of reach and aim at the guard of the larger limit, where half of what the spring may
    // come to, more than it mostly is, is stated as one more cut.
    let better = found - stated;
    assert!(better > -2.0 * PART && better < 3.0 * PART, "{count:?}");
    let stated_scrap = count.stated_scrap / count.jobs as f64;
    assert!(
        (count.of(count.scrap) - stated_scrap).abs() < PART,
        "{count:?}"
    );
}
