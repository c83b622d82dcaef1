//! Which feeds and steps a pass may take, and for how many diameters that holds.

use super::LeastTimeAsk;
use super::limits::PassLimits;
use crate::advice::force::ManyCuts;
use crate::advice::support::size_of;
use crate::physics::force::{CuttingForces, feed_factor};
use crate::physics::{drive, speed};
use crate::quantity::{
    DepthOfCut, Diameter, Feed, MainForce, PassiveForce, Quantity, SpindleSpeed, round_size,
};

/// Inside this share of a limit the force kernel itself decides, not its value at another feed
/// scaled: the two differ in their last digits only.
const NEAR: f64 = 1e-9;

/// Figures of one job that no limit changes.
pub(super) struct Case<'a> {
    ask: &'a LeastTimeAsk<'a>,
    /// Coarsest first.
    pub(super) feeds: Vec<Feed>,
    /// Force at each feed over that at the coarsest, at any depth.
    shares: Vec<f64>,
    /// Slowest first, each with its place in the asker's list.
    pub(super) steps: Vec<(SpindleSpeed, usize)>,
    /// The diameter with so many divisions left.
    pub(super) sizes: Vec<Diameter>,
    /// The depth of so many divisions.
    pub(super) depths: Vec<DepthOfCut>,
    /// Main force and size of the passive force at the coarsest feed, of so many divisions.
    forces: Vec<[f64; 2]>,
}

/// A feed on a step.
#[derive(Debug, Clone, Copy)]
pub(super) struct Pair {
    /// Time of a pass in seconds, all that is lost with it included.
    pub(super) time: f64,
    pub(super) feed: u32,
    pub(super) step: u32,
}

/// The limits of one kind of pass, with what of them can be reckoned once for all depths.
pub(super) struct Rules<'a> {
    limits: &'a PassLimits,
    /// For each step, the most divisions left at which it is not too fast; 0 for never.
    last: Vec<u32>,
    /// For each step, the fewest divisions left at which it is not too slow.
    first: Vec<u32>,
    /// The largest torque on each step.
    torque: Vec<f64>,
    power: f64,
    main_force: f64,
    passive_force: f64,
    pub(super) least: usize,
    pub(super) largest: usize,
}

/// What the limits say of a feed on a step, for one depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Verdict {
    /// Forbidden here and at all greater diameters.
    Never,
    /// Forbidden here; a greater diameter may allow it.
    NotHere,
    /// Allowed, up to so many divisions left.
    Until(u32),
}

impl<'a> Case<'a> {
    /// The case of a checked question, with passes of at most `deepest` divisions.
    pub(super) fn new(ask: &'a LeastTimeAsk<'a>, deepest: usize) -> Self {
        let mut feeds = ask.feeds.to_vec();
        feeds.sort_unstable_by(|a, b| b.cmp(a));
        let mut steps: Vec<_> = ask.steps.iter().copied().zip(0..).collect();
        steps.sort_unstable();
        let shares = feeds
            .iter()
            .map(|feed| feed_factor(ask.law.law, feeds[0], *feed).value())
            .collect();
        let sizes = (0..=ask.metal.divisions)
            .map(|left| Diameter::computed_trade(ask.metal.size(left)))
            .collect();
        let depths: Vec<_> = (0..=deepest)
            .map(|count| {
                DepthOfCut::computed_trade(round_size(count as f64 * ask.metal.division.mm()))
            })
            .collect();
        let law = ManyCuts::new(ask.law, ask.tool);
        let forces = depths.iter().enumerate().map(|(count, depth)| {
            if count == 0 {
                return [0.0; 2];
            }
            let forces = law.forces(*depth, feeds[0]);
            [forces.main.newton(), size_of(forces.passive).newton()]
        });
        let forces = forces.collect();
        Self {
            ask,
            feeds,
            shares,
            steps,
            sizes,
            depths,
            forces,
        }
    }

    /// The pairs that any of `rules` may take, the quickest first; of equal ones the slower step.
    pub(super) fn pairs(&self, rules: [&Rules<'_>; 2], lost: f64) -> Vec<Pair> {
        // In the order of whole numbers: a time that is not below zero has its bits in its order.
        let mut keys = Vec::with_capacity(self.feeds.len() * self.steps.len());
        for (step, (spindle_speed, _)) in self.steps.iter().enumerate() {
            if rules.iter().all(|rules| rules.last[step] == 0) {
                continue;
            }
            keys.extend(self.feeds.iter().enumerate().map(|(feed, f)| {
                let cut = speed::time_of_cut(self.ask.metal.length, *f, *spindle_speed);
                let time = (cut.seconds() + lost).to_bits();
                u128::from(time) << 64 | (step as u128) << 32 | feed as u128
            }));
        }
        keys.sort_unstable();
        let pairs = keys.into_iter().map(|key| Pair {
            time: f64::from_bits((key >> 64) as u64),
            feed: key as u32,
            step: (key >> 32) as u32,
        });
        pairs.collect()
    }

    fn forces_at(&self, depth: usize, feed: usize) -> CuttingForces {
        self.ask
            .law
            .forces(self.ask.tool, self.depths[depth], self.feeds[feed])
    }

    /// Whether all that is forbidden for ever to one division less is forbidden to `depth` too.
    ///
    /// Speed does not ask for the depth. Main force, power and torque grow with it, the passive force
    /// does not always, and a least depth over feed works the other way.
    pub(super) fn inherits(&self, rules: &Rules<'_>, depth: usize) -> bool {
        let grows = |which: usize| {
            self.forces[depth][which] > (1.0 + 4.0 * NEAR) * self.forces[depth - 1][which]
        };
        let window = rules.limits.chip_window;
        depth > 1
            && grows(0)
            && (rules.passive_force == f64::INFINITY || grows(1))
            && window.is_none_or(|window| window.from() == 0.0)
    }

    /// What the limits say of a pass of `depth` divisions that begins with `left` divisions left.
    ///
    /// The last diameter that an answer names is exact: speed, power and torque of one feed on one
    /// step only grow with the diameter. What may fall with it (a least speed, a spring that a
    /// thicker bar allows) is asked anew at each.
    pub(super) fn judge(&self, rules: &Rules<'_>, depth: usize, left: u32, pair: &Pair) -> Verdict {
        let (feed, step) = (pair.feed as usize, pair.step as usize);
        if rules.last[step] < left {
            return Verdict::Never;
        }
        let [main, passive] = self.forces[depth].map(|force| force * self.shares[feed]);
        let main_exact = || self.forces_at(depth, feed).main.newton();
        if !settle(main, rules.main_force, main_exact) {
            return Verdict::Never;
        }
        if let Some(window) = rules.limits.chip_window {
            let (a, f) = (self.depths[depth].mm(), self.feeds[feed].mm_per_rev());
            if a > window.to() * f || a < window.from() * f {
                return Verdict::Never;
            }
        }
        let passive_exact = || size_of(self.forces_at(depth, feed).passive).newton();
        if !settle(passive, rules.passive_force, passive_exact) {
            return Verdict::Never;
        }
        let Some(last) = self.driven_until(rules, depth, left, pair, main) else {
            return Verdict::Never;
        };
        if left < rules.first[step] {
            return Verdict::NotHere;
        }
        let Some(table) = &rules.limits.passive_forces else {
            return Verdict::Until(last);
        };
        let most: PassiveForce = table[left as usize - depth];
        if settle(passive, most.newton(), passive_exact) {
            Verdict::Until(left)
        } else {
            Verdict::NotHere
        }
    }

    /// The most divisions left at which speed, power and torque allow the pair, if they do at `left`.
    fn driven_until(
        &self,
        rules: &Rules<'_>,
        depth: usize,
        left: u32,
        pair: &Pair,
        main: f64,
    ) -> Option<u32> {
        let step = pair.step as usize;
        let (last, power, torque) = (rules.last[step], rules.power, rules.torque[step]);
        if power == f64::INFINITY && torque == f64::INFINITY {
            return Some(last);
        }
        let n = self.steps[step].0;
        let takes = |force: f64, left: u32| {
            let (force, d) = (MainForce::computed_trade(force), self.sizes[left as usize]);
            let kw = drive::cutting_power(force, speed::cutting_speed(n, d)).kw();
            (kw, drive::torque(force, d).newton_meter())
        };
        let main_exact = || self.forces_at(depth, pair.feed as usize).main.newton();
        let allowed = |left: u32| {
            let (kw, nm) = takes(main, left);
            settle(kw, power, || takes(main_exact(), left).0)
                && settle(nm, torque, || takes(main_exact(), left).1)
        };
        if !allowed(left) {
            return None;
        }
        // Both grow in proportion to the diameter: a guess, and then the limits themselves.
        let (kw, nm) = takes(main, left);
        let room = (power / kw).min(torque / nm);
        let largest = self.sizes[left as usize].mm() * room;
        let guess = (largest - self.sizes[0].mm()) / (2.0 * self.ask.metal.division.mm());
        // A cast of a number out of range, or of no number, goes to the nearest end and to zero.
        let mut until = (guess as u32).clamp(left, last);
        while until > left && !allowed(until) {
            until -= 1;
        }
        while until < last && allowed(until + 1) {
            until += 1;
        }
        Some(until)
    }
}

/// Whether a value is within a limit; near to it, whether the exact one is.
#[inline]
fn settle(value: f64, limit: f64, exact: impl FnOnce() -> f64) -> bool {
    if value <= limit * (1.0 - NEAR) {
        true
    } else if value > limit * (1.0 + NEAR) {
        false
    } else {
        exact() <= limit
    }
}

impl<'a> Rules<'a> {
    /// The limits of a kind of pass in one case.
    pub(super) fn new(case: &Case<'_>, limits: &'a PassLimits) -> Self {
        let sizes = &case.sizes[1..];
        let counted = |allows: &dyn Fn(SpindleSpeed, Diameter) -> bool| -> Vec<u32> {
            let steps = case.steps.iter();
            steps
                .map(|(n, _)| sizes.partition_point(|d| allows(*n, *d)) as u32)
                .collect()
        };
        let last = match limits.largest_speed {
            Some(most) => counted(&|n, d| speed::cutting_speed(n, d) <= most),
            None => vec![sizes.len() as u32; case.steps.len()],
        };
        let first = match limits.least_speed {
            Some(least) => {
                let mut too_slow = counted(&|n, d| speed::cutting_speed(n, d) < least);
                too_slow.iter_mut().for_each(|count| *count += 1);
                too_slow
            }
            None => vec![1; case.steps.len()],
        };
        let any =
            |torque: Option<crate::quantity::Torque>| torque.map_or(f64::INFINITY, Quantity::trade);
        let torque = case.steps.iter().map(|(_, given)| {
            let own = limits.torques.as_ref().map(|torques| torques[*given]);
            any(own).min(any(limits.torque))
        });
        let deepest = case.depths.len() - 1;
        Self {
            limits,
            last,
            first,
            torque: torque.collect(),
            power: limits.power.map_or(f64::INFINITY, Quantity::trade),
            main_force: limits
                .largest_main_force
                .map_or(f64::INFINITY, Quantity::trade),
            passive_force: limits
                .largest_passive_force
                .map_or(f64::INFINITY, Quantity::trade),
            least: limits.least() as usize,
            largest: limits
                .largest_divisions
                .map_or(deepest, |most| deepest.min(most as usize)),
        }
    }

    /// Whether the pair may be taken at all, at some depth and diameter.
    pub(super) fn lists(&self, case: &Case<'_>, pair: &Pair) -> bool {
        let feed = case.feeds[pair.feed as usize];
        self.last[pair.step as usize] > 0
            && self.limits.least_feed.is_none_or(|least| feed >= least)
            && self.limits.largest_feed.is_none_or(|most| feed <= most)
    }
}
