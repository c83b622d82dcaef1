//! A division in the least time is the optimum, keeps its limits, and names the limit that forbids it.

mod invented;
mod limits;
mod other_ways;
mod random;

use std::f64::consts::PI;

use proptest::prelude::*;
use turnwright::advice::force::{ToolLaw, tool_law};
use turnwright::advice::least_time::{
    Allowance, ChipWindow, Finishing, LeastTime, LeastTimeAsk, PassLimits,
};
use turnwright::{
    CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Duration, Error, Feed,
    ForceExponent, MainForce, Material, PassiveForce, Power, Provenance, SpecificCuttingForce,
    SpindleSpeed, Tool, Torque, WorkLength,
};

use other_ways::{Enumeration, plain};
use random::{config, easy_job, for_jobs, job};

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
