//! The dynamic programme: the least time from every number of divisions left, on every step.
//!
//! From the finished size outwards: a pass of `a` divisions with `r` left adds its time to the best
//! that is known for `r - a`. Where a change of step costs nothing the step of the pass before does not
//! matter, and one lane serves for all steps; else each step has its own.
//!
//! Times are summed as whole counts of 2^-60 s, so that a sum does not depend on the order of its
//! terms: of equal plans the same one is found on every machine. The passes are counted in the lowest
//! bits, so that of plans of equal time one with fewer passes is the lesser.

use std::ops::RangeInclusive;

use super::Finishing;
use super::case::{Case, Pair, Rules, Verdict};

/// Bits for the number of passes; the divisions of a question fit in.
const COUNT_BITS: u32 = 14;

/// No plan. Sums of two stay within the type; a plan of the longest passes stays far below it.
const NONE: u128 = 1 << 126;

/// A whole count of 2^-60 s. A time of 8 ms or more is exact: its last bit is one of these or greater.
fn counted(seconds: f64) -> u128 {
    ((seconds * (1_u64 << 60) as f64) as u128) << COUNT_BITS
}

fn seconds(counted: u128) -> f64 {
    (counted >> COUNT_BITS) as f64 / (1_u64 << 60) as f64
}

/// Depths that are looked at together, with no way out before the last: that goes several at a time.
const AT_ONCE: usize = 8;

/// Sums in floating point that differ by less than this share are compared as exact counts.
const NEAR: f64 = 1e-12;

/// The least of the sums of pairs, in floating point: what lies near it is then compared exactly.
fn least_sum(costs: &[f64], rests: &[f64]) -> f64 {
    // A single chain of comparisons would wait for itself.
    let mut least = [f64::INFINITY; AT_ONCE];
    let lower = |least: &mut f64, cost: &f64, rest: &f64| {
        let sum = cost + rest;
        *least = if sum < *least { sum } else { *least };
    };
    let (costs, last_costs) = costs.as_chunks::<AT_ONCE>();
    let (rests, last_rests) = rests.as_chunks::<AT_ONCE>();
    for (costs, rests) in costs.iter().zip(rests) {
        for lane in 0..AT_ONCE {
            lower(&mut least[lane], &costs[lane], &rests[lane]);
        }
    }
    for ((least, cost), rest) in least.iter_mut().zip(last_costs).zip(last_rests) {
        lower(least, cost, rest);
    }
    least.into_iter().fold(f64::INFINITY, f64::min)
}

/// Whether any of the sums of pairs is within a limit.
#[inline]
fn any_within(costs: &[f64], rests: &[f64], limit: f64) -> bool {
    let sums = costs.iter().zip(rests);
    sums.fold(false, |any, (cost, rest)| any | (cost + rest <= limit))
}

/// What one pass does.
#[derive(Debug, Clone, Copy)]
pub(super) struct Cut {
    pub(super) divisions: usize,
    pub(super) pair: Pair,
}

/// How the best plan goes on from a number of divisions left.
#[derive(Debug, Clone, Copy, Default)]
struct Choice {
    divisions: u32,
    pair: u32,
    finishes: bool,
}

/// The roughing passes of one lane: for each depth its quickest pair at the diameter reached.
struct Lane {
    pairs: Vec<Pair>,
    /// The first pair that is not forbidden for ever.
    first: Vec<usize>,
    /// Until how many divisions left the pair chosen holds; 0 before the first look.
    until: Vec<u32>,
    chosen: Vec<u32>,
    cost: Vec<u128>,
    /// The same in seconds, without the count.
    seconds: Vec<f64>,
}

impl Lane {
    fn new(pairs: Vec<Pair>, depths: usize) -> Self {
        Self {
            pairs,
            first: vec![0; depths],
            until: vec![0; depths],
            chosen: vec![0; depths],
            cost: vec![NONE; depths],
            seconds: vec![f64::INFINITY; depths],
        }
    }

    /// Whether the pair of any of some depths no longer holds.
    #[inline]
    fn any_old(&self, depths: RangeInclusive<usize>, left: u32) -> bool {
        let untils = self.until[depths].iter();
        untils.fold(false, |any, until| any | (*until < left))
    }

    fn renew_all(
        &mut self,
        case: &Case<'_>,
        rules: &Rules<'_>,
        depths: RangeInclusive<usize>,
        left: u32,
    ) {
        for depth in depths {
            if self.until[depth] < left {
                self.renew(case, rules, depth, left);
            }
        }
    }

    /// Looks again for the quickest pair of a depth, from the first that is not forbidden for ever.
    fn renew(&mut self, case: &Case<'_>, rules: &Rules<'_>, depth: usize, left: u32) {
        if self.until[depth] == 0 && depth > rules.least && case.inherits(rules, depth) {
            self.first[depth] = self.first[depth - 1];
        }
        let mut at = self.first[depth];
        while let Some(pair) = self.pairs.get(at) {
            match case.judge(rules, depth, left, pair) {
                Verdict::Never => {
                    if self.first[depth] == at {
                        self.first[depth] += 1;
                    }
                }
                Verdict::NotHere => {}
                Verdict::Until(until) => {
                    // Where a quicker pair may come back with the next diameter, look again there.
                    self.until[depth] = if self.first[depth] == at { until } else { left };
                    self.chosen[depth] = at as u32;
                    self.cost[depth] = counted(pair.time) + 1;
                    self.seconds[depth] = pair.time;
                    return;
                }
            }
            at += 1;
        }
        self.cost[depth] = NONE;
        self.seconds[depth] = f64::INFINITY;
        let never = self.first[depth] == self.pairs.len();
        self.until[depth] = if never { u32::MAX } else { left };
    }
}

/// The finishing passes of one lane.
struct Finish {
    pairs: Vec<Pair>,
    /// The first pair that is not forbidden for ever.
    first: usize,
}

impl Finish {
    /// The quickest pair for passes of `depth` divisions each down to the finished size.
    fn quickest(
        &mut self,
        case: &Case<'_>,
        rules: &Rules<'_>,
        depth: usize,
        passes: usize,
    ) -> Option<usize> {
        if !case.inherits(rules, depth) {
            self.first = 0;
        }
        for at in self.first..self.pairs.len() {
            let judged = |pass: usize| {
                let left = (depth * (pass + 1)) as u32;
                case.judge(rules, depth, left, &self.pairs[at])
            };
            let outer = judged(passes - 1);
            if outer == Verdict::Never {
                if self.first == at {
                    self.first += 1;
                }
            } else if matches!(outer, Verdict::Until(_))
                && (0..passes - 1).all(|pass| matches!(judged(pass), Verdict::Until(_)))
            {
                return Some(at);
            }
        }
        None
    }
}

/// All that the programme found.
pub(super) struct Solution {
    /// First to last.
    pub(super) cuts: Vec<Cut>,
    /// Changes of step included.
    pub(super) seconds: f64,
}

/// The quickest plan, if there is any.
pub(super) fn solve(
    case: &Case<'_>,
    roughing: &Rules<'_>,
    finishing: Option<(Finishing, &Rules<'_>)>,
    lost: f64,
    change: f64,
) -> Option<Solution> {
    let divisions = case.sizes.len() - 1;
    let change = counted(change);
    let pairs = case.pairs(
        [roughing, finishing.map_or(roughing, |(_, rules)| rules)],
        lost,
    );
    // One lane for each step that may be taken, the slowest first; one for all where changes are free.
    let lane_of: Vec<usize> = if change == 0 {
        vec![0; case.steps.len()]
    } else {
        let mut used = vec![false; case.steps.len()];
        pairs.iter().for_each(|p| used[p.step as usize] = true);
        let mut next = 0;
        used.iter()
            .map(|used| {
                next += usize::from(*used);
                next.max(1) - 1
            })
            .collect()
    };
    let lanes = lane_of.last().map_or(1, |last| last + 1);
    let listed = |rules: &Rules<'_>, lane: usize| -> Vec<Pair> {
        let own = |p: &&Pair| lane_of[p.step as usize] == lane && rules.lists(case, p);
        pairs.iter().filter(own).copied().collect()
    };
    let depths = case.depths.len();
    let mut rough: Vec<Lane> = (0..lanes)
        .map(|lane| Lane::new(listed(roughing, lane), depths))
        .collect();
    let mut finish: Vec<Finish> = match finishing {
        None => Vec::new(),
        Some((_, rules)) => (0..lanes)
            .map(|lane| Finish {
                pairs: listed(rules, lane),
                first: 0,
            })
            .collect(),
    };

    let wide = divisions + 1;
    // From so many divisions left: the best that begins on the lane's step, and the best that may
    // change to another step first.
    let mut begun = vec![NONE; lanes * wide];
    let mut going_on = vec![NONE; lanes * wide];
    // The same in seconds, from the most divisions left to none: then it runs along with the depths.
    let mut going_on_seconds = vec![f64::INFINITY; lanes * wide];
    let mut choices = vec![Choice::default(); lanes * wide];
    if finishing.is_none() {
        for lane in 0..lanes {
            going_on[lane * wide] = 0;
            going_on_seconds[lane * wide + divisions] = 0.0;
        }
    }
    for left in 1..=divisions {
        let mut best_of_all = NONE;
        for lane in 0..lanes {
            let mut best = NONE - 1;
            let mut choice = Choice::default();
            if let Some((kind, rules)) = finishing {
                let (depth, passes) = (left / kind.passes(), kind.passes());
                let whole =
                    depth * passes == left && (rules.least..=rules.largest).contains(&depth);
                let found = whole
                    .then(|| finish[lane].quickest(case, rules, depth, passes))
                    .flatten();
                if let Some(at) = found {
                    best = passes as u128 * (counted(finish[lane].pairs[at].time) + 1);
                    choice = Choice {
                        divisions: depth as u32,
                        pair: at as u32,
                        finishes: true,
                    };
                }
            }
            let rest = &going_on[lane * wide..][..left];
            let own = &mut rough[lane];
            let mut deepest = 0;
            let top = roughing.largest.min(left);
            if roughing.least <= top {
                let depths = roughing.least..=top;
                for from in depths.clone().step_by(AT_ONCE) {
                    let to = top.min(from + AT_ONCE - 1);
                    if own.any_old(from..=to, left as u32) {
                        own.renew_all(case, roughing, from..=to, left as u32);
                    }
                }
                let costs = &own.seconds[depths.clone()];
                let rests = &going_on_seconds[lane * wide + divisions - left..][depths.clone()];
                let near = least_sum(costs, rests) * (1.0 + NEAR);
                let chunks = costs.chunks(AT_ONCE).zip(rests.chunks(AT_ONCE));
                for (from, (costs, rests)) in depths.step_by(AT_ONCE).zip(chunks) {
                    if !any_within(costs, rests, near) {
                        continue;
                    }
                    for depth in from..from + costs.len() {
                        let time = own.cost[depth] + rest[left - depth];
                        // Of equal ones the deeper pass.
                        if time <= best {
                            best = time;
                            deepest = depth;
                        }
                    }
                }
            }
            if deepest > 0 {
                choice = Choice {
                    divisions: deepest as u32,
                    pair: own.chosen[deepest],
                    finishes: false,
                };
            }
            if choice.divisions > 0 {
                begun[lane * wide + left] = best;
                best_of_all = best_of_all.min(best);
                choices[lane * wide + left] = choice;
            }
        }
        for lane in 0..lanes {
            let at = lane * wide + left;
            going_on[at] = begun[at].min(best_of_all + change);
            if going_on[at] < NONE {
                going_on_seconds[lane * wide + divisions - left] = seconds(going_on[at]);
            }
        }
    }

    // From the bar inwards: in each pass the deepest of the best, of equals the slowest step.
    let mut cuts = Vec::new();
    let mut left = divisions;
    let mut before: Option<usize> = None;
    let mut total = None;
    loop {
        let after_change = |lane: usize| {
            let changed = before.is_some_and(|before| before != lane);
            begun[lane * wide + left] + if changed { change } else { 0 }
        };
        let best = (0..lanes).map(after_change).min()?;
        if best >= NONE {
            return None;
        }
        let total = *total.get_or_insert(best);
        let lane = (0..lanes)
            .filter(|lane| after_change(*lane) == best)
            .min_by_key(|lane| u32::MAX - choices[lane * wide + left].divisions)?;
        let choice = choices[lane * wide + left];
        let (divisions, pair) = (choice.divisions as usize, choice.pair as usize);
        if let (true, Some((kind, _))) = (choice.finishes, finishing) {
            let pair = finish[lane].pairs[pair];
            cuts.extend((0..kind.passes()).map(|_| Cut { divisions, pair }));
            left = 0;
        } else {
            let pair = rough[lane].pairs[pair];
            cuts.push(Cut { divisions, pair });
            left -= divisions;
        }
        if left == 0 {
            return Some(Solution {
                cuts,
                seconds: seconds(total),
            });
        }
        before = Some(lane);
    }
}
