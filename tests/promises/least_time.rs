//! A division in the least time is the optimum, keeps its limits, and names the limit that forbids it.

use std::f64::consts::PI;

use proptest::prelude::*;
use turnwright::advice::force::{ToolLaw, tool_law};
use turnwright::advice::least_time::{
    Allowance, ChipWindow, Finishing, LeastTime, LeastTimeAsk, PassLimits,
};
use turnwright::physics::finish::arc_height;
use turnwright::physics::{drive, speed};
use turnwright::{
    CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Duration, Error, ErrorKind,
    Feed, ForceExponent, MainForce, Material, PassiveForce, Power, Provenance,
    SpecificCuttingForce, SpindleSpeed, Tool, Torque, WorkLength,
};

fn law_of(mpa: f64, exponent: f64, tool: &Tool) -> ToolLaw {
    let material = Material::named("c45")
        .unwrap()
        .with_specific_force(SpecificCuttingForce::from_mpa(mpa).unwrap())
        .with_exponent(ForceExponent::from_value(exponent).unwrap());
    tool_law(&material, tool, &mut Provenance::default()).unwrap()
}

/// The limits as bare numbers: mm, N, m/min, kW, N m.
#[derive(Debug, Clone)]
struct Bounds {
    speed: f64,
    least_speed: Option<f64>,
    main: Option<f64>,
    passive: Option<f64>,
    /// Largest passive force at the finished size, and by how much more for each mm of diameter.
    passive_by_size: Option<(f64, f64)>,
    power: Option<f64>,
    torque: Option<f64>,
    torques: Option<Vec<f64>>,
    feeds: (Option<f64>, Option<f64>),
    divisions: (Option<u32>, Option<u32>),
    chip: Option<(f64, f64)>,
}

impl Bounds {
    fn new(speed: f64) -> Self {
        Self {
            speed,
            least_speed: None,
            main: None,
            passive: None,
            passive_by_size: None,
            power: None,
            torque: None,
            torques: None,
            feeds: (None, None),
            divisions: (None, None),
            chip: None,
        }
    }
}

#[derive(Debug, Clone)]
struct Job {
    finished: f64,
    division: f64,
    divisions: u32,
    length: f64,
    feeds: Vec<f64>,
    steps: Vec<f64>,
    specific: f64,
    exponent: f64,
    kappa: f64,
    corner: f64,
    lost: f64,
    change: f64,
    rough: Bounds,
    finish: Option<(u32, Bounds)>,
}

impl Job {
    fn tool(&self) -> Tool {
        Tool::new(
            CornerRadius::from_mm(self.corner).unwrap(),
            CuttingEdgeAngle::from_degrees(self.kappa).unwrap(),
        )
    }

    /// What makes the force: looked up once.
    fn edge(&self) -> (Tool, ToolLaw) {
        let tool = self.tool();
        let law = law_of(self.specific, self.exponent, &tool);
        (tool, law)
    }

    fn size(&self, left: u32) -> f64 {
        self.finished + 2.0 * self.division * f64::from(left)
    }

    fn limits(&self, b: &Bounds) -> PassLimits {
        let mut limits = PassLimits::new(CuttingSpeed::from_m_per_min(b.speed).unwrap());
        if let Some(v) = b.least_speed {
            limits = limits.with_least_speed(CuttingSpeed::from_m_per_min(v).unwrap());
        }
        if let Some(n) = b.main {
            limits = limits.with_largest_main_force(MainForce::from_newton(n).unwrap());
        }
        if let Some(n) = b.passive {
            limits = limits.with_largest_passive_force(PassiveForce::from_newton(n).unwrap());
        }
        if let Some((n, more)) = b.passive_by_size {
            let table = (0..self.divisions)
                .map(|left| n + more * (self.size(left) - self.finished))
                .map(|n| PassiveForce::from_newton(n.max(0.0)).unwrap());
            limits = limits.with_passive_forces(table.collect());
        }
        if let Some(kw) = b.power {
            limits = limits.with_power(Power::from_kw(kw).unwrap());
        }
        if let Some(nm) = b.torque {
            limits = limits.with_torque(Torque::from_newton_meter(nm).unwrap());
        }
        if let Some(torques) = &b.torques {
            let torques = torques[..self.steps.len()].iter();
            let torques = torques.map(|nm| Torque::from_newton_meter(*nm).unwrap());
            limits = limits.with_torques(torques.collect());
        }
        if let Some(f) = b.feeds.0 {
            limits = limits.with_least_feed(Feed::from_mm_per_rev(f).unwrap());
        }
        if let Some(f) = b.feeds.1 {
            limits = limits.with_largest_feed(Feed::from_mm_per_rev(f).unwrap());
        }
        if let Some(a) = b.divisions.0 {
            limits = limits.with_least_divisions(a);
        }
        if let Some(a) = b.divisions.1 {
            limits = limits.with_largest_divisions(a);
        }
        if let Some((from, to)) = b.chip {
            limits = limits.with_chip_window(ChipWindow::new(from, to).unwrap());
        }
        limits
    }

    fn solve(&self) -> Result<LeastTime, Error> {
        let (tool, law) = self.edge();
        let feeds: Vec<_> = self
            .feeds
            .iter()
            .map(|f| Feed::from_mm_per_rev(*f).unwrap())
            .collect();
        let steps: Vec<_> = self
            .steps
            .iter()
            .map(|n| SpindleSpeed::from_rpm(*n).unwrap())
            .collect();
        let metal = Allowance::new(
            Diameter::from_mm(self.finished)?,
            DepthOfCut::from_mm(self.division)?,
            self.divisions,
            WorkLength::from_mm(self.length)?,
        )?;
        let mut ask =
            LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, self.limits(&self.rough))
                .with_time_per_pass(Duration::from_seconds(self.lost)?)
                .with_change_time(Duration::from_seconds(self.change)?);
        if let Some((passes, bounds)) = &self.finish {
            let kind = if *passes == 1 {
                Finishing::One
            } else {
                Finishing::TwoEqual
            };
            ask = ask.with_finishing(kind, self.limits(bounds));
        }
        ask.divide()
    }

    /// Whether a pass keeps its limits, symbol for symbol; the force alone is the crate's.
    fn keeps(
        &self,
        (tool, law): &(Tool, ToolLaw),
        b: &Bounds,
        (left, a): (u32, u32),
        feed: usize,
        step: usize,
    ) -> bool {
        let (f, n, d) = (self.feeds[feed], self.steps[step], self.size(left));
        let depth = self.division * f64::from(a);
        let forces = law.forces(
            tool,
            DepthOfCut::from_mm(depth).unwrap(),
            Feed::from_mm_per_rev(f).unwrap(),
        );
        let (main, passive) = (forces.main.newton(), forces.passive.newton().abs());
        let speed = PI * d * n / 1000.0;
        let torque = main * d / 2000.0;
        let within = |value: f64, most: Option<f64>| most.is_none_or(|most| value <= most);
        let by_size = b
            .passive_by_size
            .map(|(n, more)| (n + more * (self.size(left - a) - self.finished)).max(0.0));
        speed <= b.speed
            && b.least_speed.is_none_or(|least| speed >= least)
            && within(main, b.main)
            && within(passive, b.passive)
            && within(passive, by_size)
            && within(main * speed / 60_000.0, b.power)
            && within(torque, b.torque)
            && within(torque, b.torques.as_ref().map(|torques| torques[step]))
            && b.feeds.0.is_none_or(|least| f >= least)
            && within(f, b.feeds.1)
            && b.divisions.0.is_none_or(|least| a >= least)
            && b.divisions.1.is_none_or(|most| a <= most)
            && b.chip
                .is_none_or(|(from, to)| depth / f >= from && depth / f <= to)
    }

    fn time(&self, feed: usize, step: usize) -> f64 {
        self.length / (self.feeds[feed] * self.steps[step]) * 60.0 + self.lost
    }
}

/// A pass: divisions, feed, step.
type Pass = (u32, usize, usize);

/// All ways to divide, each pass on each step; of the feeds of one step the quickest that is allowed,
/// for the others can only lose.
struct Enumeration<'a> {
    job: &'a Job,
    edge: (Tool, ToolLaw),
    /// By divisions left, divisions taken and step.
    rough: Vec<Vec<Vec<Option<usize>>>>,
    best: f64,
    passes: Vec<Pass>,
}

impl<'a> Enumeration<'a> {
    fn of(job: &'a Job) -> Self {
        let edge = job.edge();
        let quickest = |left: u32, a: u32, step: usize| {
            let allowed =
                (0..job.feeds.len()).filter(|f| job.keeps(&edge, &job.rough, (left, a), *f, step));
            allowed.min_by(|a, b| job.time(*a, step).total_cmp(&job.time(*b, step)))
        };
        let rough = (0..=job.divisions).map(|left| {
            let depths = (1..=left).map(|a| {
                let steps = 0..job.steps.len();
                steps.map(|step| quickest(left, a, step)).collect()
            });
            depths.collect()
        });
        let mut all = Self {
            job,
            rough: rough.collect(),
            edge: job.edge(),
            best: f64::INFINITY,
            passes: Vec::new(),
        };
        all.go_on(job.divisions, None, 0.0, &mut Vec::new());
        all
    }

    fn go_on(&mut self, left: u32, before: Option<usize>, time: f64, passes: &mut Vec<Pass>) {
        let job = self.job;
        let change = |step: usize| match before {
            Some(before) if before != step => job.change,
            _ => 0.0,
        };
        match &job.finish {
            None if left == 0 => self.arrive(time, passes),
            Some((count, bounds)) if left.is_multiple_of(*count) && left > 0 => {
                let a = left / count;
                for step in 0..job.steps.len() {
                    for feed in 0..job.feeds.len() {
                        let all = (1..=*count)
                            .all(|pass| job.keeps(&self.edge, bounds, (a * pass, a), feed, step));
                        if all {
                            let more = f64::from(*count) * job.time(feed, step) + change(step);
                            passes.extend((0..*count).map(|_| (a, feed, step)));
                            self.arrive(time + more, passes);
                            passes.truncate(passes.len() - *count as usize);
                        }
                    }
                }
            }
            _ => {}
        }
        for a in 1..=left {
            for step in 0..job.steps.len() {
                if let Some(feed) = self.rough[left as usize][a as usize - 1][step] {
                    passes.push((a, feed, step));
                    let more = job.time(feed, step) + change(step);
                    self.go_on(left - a, Some(step), time + more, passes);
                    passes.pop();
                }
            }
        }
    }

    fn arrive(&mut self, time: f64, passes: &[Pass]) {
        // Sums of the same terms in another order differ by less than this.
        const SAME: f64 = 1e-12;
        let rank = |passes: &[Pass]| -> Vec<(u32, f64)> {
            let steps = &self.job.steps;
            passes.iter().map(|(a, _, n)| (*a, -steps[*n])).collect()
        };
        let better = if time < self.best * (1.0 - SAME) {
            true
        } else if time <= self.best * (1.0 + SAME) && !self.passes.is_empty() {
            passes.len() < self.passes.len()
                || passes.len() == self.passes.len() && rank(passes) > rank(&self.passes)
        } else {
            self.passes.is_empty() && time.is_finite()
        };
        if better {
            self.best = time;
            self.passes = passes.to_vec();
        }
    }
}

/// The least time by the plainest programme: every depth, feed and step at every size.
fn plain(job: &Job) -> f64 {
    let edge = job.edge();
    let (steps, feeds) = (0..job.steps.len(), 0..job.feeds.len());
    // By divisions left and the step of the next pass; none left is no pass.
    let mut best: Vec<Vec<f64>> = vec![Vec::new()];
    for left in 1..=job.divisions {
        let after = |rest: u32, step: usize| {
            if rest == 0 {
                return if job.finish.is_none() {
                    0.0
                } else {
                    f64::INFINITY
                };
            }
            let next = best[rest as usize].iter().enumerate();
            let next = next.map(|(n, time)| time + if n == step { 0.0 } else { job.change });
            next.fold(f64::INFINITY, f64::min)
        };
        let here = steps.clone().map(|step| {
            let mut least = f64::INFINITY;
            for feed in feeds.clone() {
                for a in 1..=left {
                    if job.keeps(&edge, &job.rough, (left, a), feed, step) {
                        least = least.min(job.time(feed, step) + after(left - a, step));
                    }
                }
                if let Some((count, bounds)) = &job.finish {
                    let a = left / count;
                    let keeps = |pass| job.keeps(&edge, bounds, (a * pass, a), feed, step);
                    if a * count == left && (1..=*count).all(keeps) {
                        least = least.min(f64::from(*count) * job.time(feed, step));
                    }
                }
            }
            least
        });
        let here = here.collect();
        best.push(here);
    }
    let all = &best[job.divisions as usize];
    all.iter().copied().fold(f64::INFINITY, f64::min)
}

/// The plan of an answer in the terms of the enumeration, checked against the answer's own figures.
fn passes_of(job: &Job, plan: &LeastTime) -> Vec<Pass> {
    let edge = job.edge();
    let mut left = job.divisions;
    let mut passes = Vec::new();
    let (mut time, mut before) = (0.0, None);
    for pass in &plan.passes {
        let feed = job.feeds.iter().position(|f| *f == pass.feed.mm_per_rev());
        let step = job
            .steps
            .iter()
            .position(|n| *n == pass.spindle_speed.rpm());
        let (feed, step) = (feed.unwrap(), step.unwrap());
        let in_finish = plan.passes.len() - passes.len();
        let bounds = match &job.finish {
            Some((count, bounds)) if in_finish <= *count as usize => bounds,
            _ => &job.rough,
        };
        assert!(
            job.keeps(&edge, bounds, (left, pass.divisions), feed, step),
            "{pass:?} of {job:?}"
        );
        left -= pass.divisions;
        // Sizes are rounded to 1e-9 mm.
        assert!((pass.after.mm() - job.size(left)).abs() <= 1e-9);
        let depth = f64::from(pass.divisions) * job.division;
        assert!((pass.depth.mm() - depth).abs() <= 1e-9);
        // A product and a quotient in another order.
        assert!((pass.time.seconds() / job.time(feed, step) - 1.0).abs() < 1e-13);
        time += pass.time.seconds();
        if before.is_some_and(|before| before != step) {
            time += job.change;
        }
        before = Some(step);
        passes.push((pass.divisions, feed, step));
    }
    assert_eq!(left, 0);
    // A handful of terms.
    assert!((plan.time.seconds() / time - 1.0).abs() < 1e-13);
    passes
}

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

fn job() -> impl Strategy<Value = Job> {
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
fn easy_job() -> impl Strategy<Value = Job> {
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

/// The time of a plan, or more than any where there is none.
fn seconds(job: &Job) -> f64 {
    match job.solve() {
        Ok(plan) => plan.time.seconds(),
        Err(error) => {
            assert!(error.is_impossible(), "{error}");
            f64::INFINITY
        }
    }
}

fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

/// Holds `promise` of so many jobs, of which a third or more must have a plan, so that it says something.
fn for_jobs<S: Strategy>(cases: u32, jobs: &S, promise: impl Fn(S::Value) -> bool)
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

#[test]
fn the_plan_is_the_best_of_all_that_can_be_enumerated() {
    for_jobs(400, &job(), |job| {
        let all = Enumeration::of(&job);
        match job.solve() {
            Ok(plan) => {
                let passes = passes_of(&job, &plan);
                // The same sum in another order.
                let off = (plan.time.seconds() / all.best - 1.0).abs();
                assert!(off < 1e-12, "{plan:?}, enumerated {:?}", all.passes);
                assert_eq!(passes, all.passes);
                true
            }
            Err(error) => {
                assert!(error.is_impossible(), "{error}");
                assert!(all.passes.is_empty(), "{error}: {:?}", all.passes);
                false
            }
        }
    });
}

#[test]
fn many_divisions_take_the_time_of_the_plainest_programme() {
    let jobs = (easy_job(), 12..60_u32, 0.02..0.15_f64);
    for_jobs(60, &jobs, |(job, divisions, division)| {
        let job = Job {
            divisions,
            division,
            ..job
        };
        let (found, wanted) = (seconds(&job), plain(&job));
        // The same sum in another order.
        let same = found == wanted || (found / wanted - 1.0).abs() < 1e-12;
        assert!(same, "{found} {wanted} {job:?}");
        found.is_finite()
    });
}

proptest! {
    #![proptest_config(config(200))]

    #[test]
    fn a_limit_widened_never_makes_it_slower(job in easy_job(), which in 0..8_usize, by in 1.0..3.0_f64) {
        let mut wider = job.clone();
        let b = &mut wider.rough;
        let more = |limit: &mut Option<f64>| *limit = limit.map(|value| value * by);
        match which {
            0 => b.speed *= by,
            1 => more(&mut b.main),
            2 => more(&mut b.passive),
            3 => more(&mut b.power),
            4 => more(&mut b.torque),
            5 => more(&mut b.feeds.1),
            6 => b.divisions.1 = b.divisions.1.map(|most| most + 2),
            _ => b.torques = b.torques.clone().map(|all| all.iter().map(|nm| nm * by).collect()),
        }
        // A sum of at most eleven passes, both exact to its last bits.
        prop_assert!(seconds(&wider) <= seconds(&job) * (1.0 + 1e-14));
    }

    #[test]
    fn one_more_feed_or_step_never_makes_it_slower(job in easy_job(), feed in 0.04..0.8_f64, step in 40.0..1500.0_f64) {
        let known = seconds(&job);
        let mut more = job.clone();
        more.feeds.insert(0, feed);
        prop_assert!(seconds(&more) <= known * (1.0 + 1e-14));
        let mut more = job.clone();
        more.steps.push(step);
        for b in [Some(&mut more.rough), more.finish.as_mut().map(|f| &mut f.1)].into_iter().flatten() {
            b.torques = b.torques.as_ref().map(|torques| [torques.as_slice(), &[30.0]].concat());
        }
        let mut same = job.clone();
        // The table of torques goes by the step's place: the old steps keep theirs.
        same.rough.torques = more.rough.torques.clone().map(|t| t[..job.steps.len()].to_vec());
        prop_assert!(seconds(&more) <= seconds(&same) * (1.0 + 1e-14));
    }
}

/// The invented case: 55 mm, a division of 0.05 mm, 30 feeds, 18 steps, 200 mm.
fn invented(divisions: u32) -> Job {
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

/// One pass of all divisions on one feed and step, under one limit.
fn one_pass(limits: impl Fn(PassLimits) -> PassLimits) -> Result<LeastTime, Error> {
    let tool = Tool::new("0.8 mm".parse()?, "75 deg".parse()?);
    let law = law_of(2100.0, 0.26, &tool);
    let metal = Allowance::new("50 mm".parse()?, "0.1 mm".parse()?, 7, "100 mm".parse()?)?;
    let (feeds, steps) = (
        ["0.3 mm/rev".parse()?, "0.2 mm/rev".parse()?],
        ["300 rpm".parse()?],
    );
    let limits =
        limits(PassLimits::new("200 m/min".parse()?).with_least_feed("0.2 mm/rev".parse()?));
    let limits = limits
        .with_least_divisions(7)
        .with_largest_feed("0.2 mm/rev".parse()?);
    LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, limits).divide()
}

#[test]
fn a_limit_holds_to_its_last_bit() {
    let tool = Tool::new("0.8 mm".parse().unwrap(), "75 deg".parse().unwrap());
    let forces = law_of(2100.0, 0.26, &tool).forces(
        &tool,
        DepthOfCut::from_mm(0.7).unwrap(),
        "0.2 mm/rev".parse().unwrap(),
    );
    let (n, d) = ("300 rpm".parse().unwrap(), "51.4 mm".parse().unwrap());
    let v = speed::cutting_speed(n, d);
    let kw = drive::cutting_power(forces.main, v).kw();
    let nm = drive::torque(forces.main, d).newton_meter();
    let passive = forces.passive.newton();
    type Limit = Box<dyn Fn(PassLimits, f64) -> PassLimits>;
    let limits: [(f64, Limit); 5] = [
        (
            forces.main.newton(),
            Box::new(|l, x| l.with_largest_main_force(MainForce::from_newton(x).unwrap())),
        ),
        (
            passive,
            Box::new(|l, x| l.with_largest_passive_force(PassiveForce::from_newton(x).unwrap())),
        ),
        (
            passive,
            Box::new(|l, x| l.with_passive_forces(vec![PassiveForce::from_newton(x).unwrap(); 7])),
        ),
        (
            kw,
            Box::new(|l, x| l.with_power(Power::from_kw(x).unwrap())),
        ),
        (
            nm,
            Box::new(|l, x| l.with_torques(vec![Torque::from_newton_meter(x).unwrap()])),
        ),
    ];
    for (number, (value, limit)) in limits.iter().enumerate() {
        assert!(one_pass(|l| limit(l, *value)).is_ok(), "{number}");
        let error = one_pass(|l| limit(l, value.next_down())).unwrap_err();
        assert!(error.is_impossible(), "{number}: {error}");
    }
    let fastest = |v: f64| one_pass(|_| PassLimits::new(CuttingSpeed::from_m_per_min(v).unwrap()));
    assert!(fastest(v.m_per_min()).is_ok());
    assert!(fastest(v.m_per_min().next_down()).is_err());
}

#[test]
fn the_limit_to_blame_is_named() {
    let blamed = |change: &dyn Fn(&mut Job)| {
        let mut job = invented(40);
        change(&mut job);
        let error = job.solve().unwrap_err();
        assert!(error.is_impossible() && !error.remedy().is_empty());
        error.field().to_owned()
    };
    assert_eq!(
        blamed(&|job| job.divisions = 1),
        "finishing.least_divisions"
    );
    assert_eq!(
        blamed(&|job| job.rough.main = Some(1.0)),
        "roughing.largest_main_force"
    );
    assert_eq!(blamed(&|job| job.rough.power = Some(0.0)), "roughing.power");
    assert_eq!(
        blamed(&|job| job.rough.torque = Some(0.01)),
        "roughing.torque"
    );
    assert_eq!(
        blamed(&|job| job.finish.as_mut().unwrap().1.speed = 1.0),
        "finishing.largest_speed"
    );
    assert_eq!(
        blamed(&|job| job.finish.as_mut().unwrap().1.feeds.1 = Some(0.01)),
        "finishing.largest_feed"
    );
    assert_eq!(
        blamed(&|job| job.rough.chip = Some((1e4, 1e5))),
        "roughing.chip_window"
    );
    // Two limits that only together forbid it: neither alone is enough to blame.
    let mut job = invented(40);
    job.rough.main = Some(1.0);
    job.rough.chip = Some((1e4, 1e5));
    job.finish.as_mut().unwrap().1.divisions.1 = Some(20);
    let error = job.solve().unwrap_err();
    assert!(error.expected().contains("together with"), "{error}");
}

#[test]
fn bad_input_is_refused_by_its_field() {
    let metal = |divisions| {
        Allowance::new(
            "55 mm".parse().unwrap(),
            "0.05 mm".parse().unwrap(),
            divisions,
            "200 mm".parse().unwrap(),
        )
    };
    assert_eq!(metal(0).unwrap_err().kind(), ErrorKind::OutOfRange);
    assert_eq!(metal(10_001).unwrap_err().field(), "divisions");
    let huge = Allowance::new(
        "4900 mm".parse().unwrap(),
        "1 mm".parse().unwrap(),
        51,
        "200 mm".parse().unwrap(),
    );
    assert_eq!(huge.unwrap_err().field(), "divisions");

    let refused = |change: &dyn Fn(&mut Job)| {
        let mut job = invented(20);
        change(&mut job);
        let error = job.solve().unwrap_err();
        assert!(!error.is_impossible(), "{error}");
        error.field().to_owned()
    };
    assert_eq!(refused(&|job| job.feeds.clear()), "feeds");
    assert_eq!(refused(&|job| job.steps.push(16.0)), "steps");
    assert_eq!(
        refused(&|job| job.rough.divisions = (Some(9), Some(3))),
        "roughing.least_divisions"
    );
    assert_eq!(
        refused(&|job| job.rough.least_speed = Some(121.0)),
        "roughing.least_speed"
    );
    let finish = |job: &mut Job, change: &dyn Fn(&mut Bounds)| {
        change(&mut job.finish.as_mut().unwrap().1);
    };
    assert_eq!(
        refused(&|job| finish(job, &|b| b.feeds.0 = Some(1.0))),
        "finishing.least_feed"
    );
    assert_eq!(
        refused(&|job| finish(job, &|b| b.passive = Some(-1.0))),
        "finishing.largest_passive_force"
    );
    assert_eq!(
        refused(&|job| finish(job, &|b| b.divisions = (Some(0), None))),
        "finishing.divisions"
    );
    let error = one_pass(|l| l.with_torques(Vec::new())).unwrap_err();
    assert_eq!(error.field(), "roughing.torques");
    let error = one_pass(|l| l.with_passive_forces(Vec::new())).unwrap_err();
    assert_eq!(error.field(), "roughing.passive_forces");
    for (from, to) in [
        (f64::NAN, 1.0),
        (1.0, f64::INFINITY),
        (-1.0, 1.0),
        (3.0, 2.0),
    ] {
        assert_eq!(
            ChipWindow::new(from, to).unwrap_err().field(),
            "chip_window"
        );
    }
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
