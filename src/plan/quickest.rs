//! The least time over whole divisions, the lathe's feeds and its spindle steps; and what both ways
//! of dividing the metal cost.

use std::borrow::Cow;

use super::datum::Datum;
use super::lengths::RUN_IN;
use super::passes::{Metal, PlannedCut};
use super::sheet::{StepKind, Way, WayCost};
use super::whole::Whole;
use crate::advice::depth::CHIP_WINDOW;
use crate::advice::feed::{FEED_OVER_CORNER, FeedChoice};
use crate::advice::least_time::{
    Allowance, ChipWindow, Finishing, LeastTimeAsk, PassLimits, TimedPass,
};
use crate::advice::spindle::SpindleChoice;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::{drive, speed};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    CuttingSpeed, DepthOfCut, Diameter, DiameterError, Duration, Feed, SpindleSpeed, WorkLength,
};
use crate::shop::lathe::{CHANGE_TIME, EFFICIENCY, Lathe, Spindle};

/// Time to withdraw, return and set the dial after every cut.
const RETURN_TIME: Sourced<Duration> = Sourced::new(
    Duration::computed_trade(15.0),
    "judgement, no source",
    Standing::Estimate,
);

/// How the readable way cuts, whose limits the quick one keeps too.
pub(super) struct Pace<'a> {
    pub(super) rough: (&'a FeedChoice, &'a SpindleChoice),
    pub(super) finish: (&'a FeedChoice, &'a SpindleChoice),
    /// Most that the bar may spring under a roughing cut.
    pub(super) spring: DiameterError,
    /// True where the diameter before the first cut was measured.
    pub(super) measured: bool,
}

/// The quick cuts, where they were asked for, and what both ways cost, where that was asked.
pub(super) struct Ways {
    pub(super) chosen: Option<Vec<PlannedCut>>,
    pub(super) costs: Vec<WayCost>,
    /// Why nothing is compared, where that was asked for.
    pub(super) not_compared: Option<Caution>,
}

/// A feed and a step of their own, or those of the kind.
pub(super) fn paced<'a>(
    lathe: &Lathe,
    pace: Option<(Feed, SpindleSpeed)>,
    feed: &'a FeedChoice,
    step: &'a SpindleChoice,
) -> (Cow<'a, FeedChoice>, Cow<'a, SpindleChoice>) {
    let Some((own, spindle_speed)) = pace else {
        return (Cow::Borrowed(feed), Cow::Borrowed(step));
    };
    let feed = FeedChoice {
        feed: own,
        lever: lathe.feed_name(own).map(str::to_owned),
        by_hand: false,
    };
    let step = SpindleChoice {
        spindle_speed,
        ..step.clone()
    };
    (Cow::Owned(feed), Cow::Owned(step))
}

/// Both ways, as far as they are asked for; `top` is the highest step that no limit forbids, on the
/// finished diameter.
pub(super) fn ways(
    whole: &Whole<'_>,
    datum: &Datum,
    metal: &Metal,
    pace: &Pace<'_>,
    readable: &[PlannedCut],
    provenance: &mut Provenance,
    top: impl Fn() -> Result<SpindleSpeed, Error>,
) -> Result<Ways, Error> {
    let job = whole.common.job;
    let way = job.preference(|p| p.way()).unwrap_or_default();
    let compare = job.preference(|p| Some(p.compares_ways())) == Some(true);
    if way == Way::Readable && !compare {
        return Ok(Ways {
            chosen: None,
            costs: Vec::new(),
            not_compared: None,
        });
    }
    let pass = provenance.open("time to withdraw, return and set the dial", &RETURN_TIME);
    let change = match job.lathe.change_time() {
        Some(given) => given,
        None => provenance.open("time of a change of step", &CHANGE_TIME),
    };
    let quick = quickest(
        whole,
        datum,
        metal,
        pace,
        top()?,
        (pass, change),
        provenance,
    );
    let quick = match quick {
        // A comparison is no reason to plan nothing.
        Err(error) if error.kind() == ErrorKind::NotOffered && way == Way::Readable => {
            let error = error.in_units(whole.common.units);
            let words = format!(
                "What the least time would cost is not told: {} is not offered, it needs {}.",
                error.given(),
                error.expected()
            );
            return Ok(Ways {
                chosen: None,
                costs: Vec::new(),
                not_compared: Some(Caution::new(Severity::Note, "not_compared", words)),
            });
        }
        quick => quick?,
    };
    let mut costs = Vec::new();
    if compare {
        for (way, cuts) in [(Way::Readable, readable), (Way::LeastTime, &quick)] {
            costs.push(WayCost {
                way,
                cuts: cuts.len() as u32,
                time: time_of(whole, cuts, pace, (pass, change)),
            });
        }
    }
    Ok(Ways {
        chosen: (way == Way::LeastTime).then_some(quick),
        costs,
        not_compared: None,
    })
}

/// The time of the cuts, of what lies between them, and of changes of the spindle step.
fn time_of(
    whole: &Whole<'_>,
    cuts: &[PlannedCut],
    pace: &Pace<'_>,
    (pass, change): (Duration, Duration),
) -> Duration {
    let length = along(whole);
    let mut seconds = 0.0;
    let mut before: Option<SpindleSpeed> = None;
    for cut in cuts {
        let (feed, step) = match (cut.pace, cut.kind) {
            (Some(own), _) => own,
            (None, StepKind::FinishCut) => (pace.finish.0.feed, pace.finish.1.spindle_speed),
            (None, _) => (pace.rough.0.feed, pace.rough.1.spindle_speed),
        };
        seconds += speed::time_of_cut(length, feed, step).seconds() + pass.seconds();
        if before.is_some_and(|before| before != step) {
            seconds += change.seconds();
        }
        before = Some(step);
    }
    Duration::computed_trade(seconds)
}

fn along(whole: &Whole<'_>) -> WorkLength {
    WorkLength::computed_trade(whole.place.reach.mm() + RUN_IN)
}

/// The cuts of the least time, under the limits of the readable ones.
fn quickest(
    whole: &Whole<'_>,
    datum: &Datum,
    metal: &Metal,
    pace: &Pace<'_>,
    top: SpindleSpeed,
    (pass, change): (Duration, Duration),
    provenance: &mut Provenance,
) -> Result<Vec<PlannedCut>, Error> {
    let (common, job) = (whole.common, whole.common.job);
    let cross = common.cross;
    let Spindle::Steps(steps) = job.lathe.spindle() else {
        return Err(not_offered("a lathe without spindle steps"));
    };
    if job.lathe.feeds().is_empty() {
        return Err(not_offered("a lathe fed by hand"));
    }
    if job.changes_tools() {
        return Err(not_offered(
            "separate tools for roughing and finishing (tools)",
        ));
    }
    if metal.first_least > 0 {
        let (skin, run_out) = (job.stock.skin(), job.stock.run_out());
        let bar = match (skin, run_out) {
            (None, Some(run_out)) => format!("a bar that runs out by {run_out} (stock.run_out)"),
            (Some(skin), _) => format!("a bar with a skin of {skin} (stock.skin)"),
            (None, None) => return Err(Error::internal("a skin that nobody gave")),
        };
        return Err(not_offered(&bar));
    }
    let (rough, finish) = (pace.rough, pace.finish);
    let top = top.max(rough.1.spindle_speed).max(finish.1.spindle_speed);
    let allowed: Vec<SpindleSpeed> = steps.iter().copied().filter(|step| *step <= top).collect();
    let q = cross.diameter_per_division().mm();
    let last = datum.last.count();
    // A fraction of a mark is counted as a whole one: the first pass is that much lighter than reckoned.
    let divisions = (last as f64 - datum.start - 1e-9).ceil().max(1.0) as u32;
    let finished = cross.diameter_at(datum.zero, datum.last)?;
    let division = DepthOfCut::computed_trade(q / 2.0);
    let allowance = Allowance::new(finished, division, divisions, along(whole))?;
    let largest = provenance.open("largest feed over corner radius", &FEED_OVER_CORNER)
        * job.tool.corner_radius().mm();
    let largest = Feed::computed_trade(largest.max(rough.0.feed.mm_per_rev()));
    let fastest = |step: &SpindleChoice, at: Diameter| {
        let set = speed::cutting_speed(step.spindle_speed, at);
        common.finishing.wanted.max(set)
    };
    let stock = allowance.stock()?;
    let chip = ChipWindow::new(0.0, CHIP_WINDOW.value)?;
    let limited = |speed: CuttingSpeed, least: i64, most: i64, feed: Feed| {
        let mut limits = PassLimits::new(speed)
            .with_largest_feed(feed)
            .with_least_divisions(least.max(1) as u32)
            .with_largest_divisions(most.max(1) as u32)
            .with_chip_window(chip);
        if let Some(motor) = job.lathe.power() {
            let efficiency = job.lathe.efficiency().unwrap_or(EFFICIENCY.value);
            let power = drive::spindle_power(motor, efficiency);
            limits = limits.with_power(power);
            let torques: Option<Vec<_>> = allowed
                .iter()
                .map(|step| {
                    let base = job.lathe.base_speed_at(*step)?;
                    Some(drive::torque_at(power, base))
                })
                .collect();
            if let Some(torques) = torques {
                limits = limits.with_torques(torques);
            }
        }
        limits
    };
    let most = match job.preference(|p| p.largest_depth()) {
        Some(most) => (2.0 * most.mm() / q + 1e-7).floor() as i64,
        None => i64::from(divisions),
    };
    let mut roughing = limited(fastest(rough.1, stock), metal.least, most, largest);
    if let Some(force) = whole.largest_passive_force(finished, rough, pace.spring)? {
        roughing = roughing.with_largest_passive_force(force);
    }
    // A first cut that takes a fraction of a mark less cannot be one of two alike: metal is left for a
    // roughing cut before them.
    let finish_most = if datum.start.fract() == 0.0 {
        metal.finish_most
    } else {
        metal
            .finish_most
            .min((i64::from(divisions) - metal.least) / 2)
    };
    let finishing = limited(
        fastest(finish.1, stock),
        metal.least,
        finish_most,
        finish.0.feed,
    );
    let found = LeastTimeAsk::new(
        allowance,
        job.lathe.feeds(),
        &allowed,
        whole.law.law,
        &job.tool,
        roughing,
    )
    .with_finishing(Finishing::TwoEqual, finishing)
    .with_time_per_pass(pass)
    .with_change_time(change)
    .divide()
    .map_err(|error| error.inside("preferences.way"))?;
    let mut left = i64::from(divisions);
    let end = found.passes.len();
    let planned = |(at, pass): (usize, &TimedPass)| {
        left -= i64::from(pass.divisions);
        PlannedCut {
            kind: if at + 2 >= end {
                StepKind::FinishCut
            } else if at == 0 && !pace.measured {
                StepKind::FirstCut
            } else {
                StepKind::RoughCut
            },
            mark: last - left,
            between: 0,
            pace: Some((pass.feed, pass.spindle_speed)),
            after_change: false,
        }
    };
    Ok(found.passes.iter().enumerate().map(planned).collect())
}

#[cold]
fn not_offered(what: &str) -> Error {
    Error::new(
        ErrorKind::NotOffered,
        "preferences.way",
        format!("the least time on {what}"),
        "a lathe with spindle steps and feeds, one tool, and a bar that has been skimmed and measured (zero_at)",
        "write \"readable\" or leave the field out",
    )
}
