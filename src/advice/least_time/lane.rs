//! One lane of the programme: the passes on one step, or on any where changes of step are free.

use super::case::{Case, Pair, Rules, Verdict};
use super::programme::{NONE, counted};

/// Depths that are looked at together, with no way out before the last: that goes several at a time.
pub(super) const AT_ONCE: usize = 8;

/// Sums in floating point that differ by less than this share are compared as exact counts.
const NEAR: f64 = 1e-12;

type Block = [f64; AT_ONCE];

/// The least of the sums of pairs, in floating point.
fn least_sum(costs: &[Block], rests: &[Block]) -> f64 {
    // A single chain of comparisons would wait for itself.
    let mut least = [f64::INFINITY; AT_ONCE];
    for (costs, rests) in costs.iter().zip(rests) {
        for at in 0..AT_ONCE {
            let sum = costs[at] + rests[at];
            least[at] = if sum < least[at] { sum } else { least[at] };
        }
    }
    least.into_iter().fold(f64::INFINITY, f64::min)
}

/// Whether any of the sums of pairs is within a limit.
#[inline]
fn any_within(costs: &Block, rests: &Block, limit: f64) -> bool {
    (0..AT_ONCE).fold(false, |any, at| any | (costs[at] + rests[at] <= limit))
}

/// The roughing passes of one lane: for each depth its quickest pair at the diameter reached.
pub(super) struct Lane {
    pub(super) pairs: Vec<Pair>,
    /// The first pair that is not forbidden for ever.
    first: Vec<usize>,
    /// Until how many divisions left the pair chosen holds; 0 before the first look.
    until: Vec<u32>,
    pub(super) chosen: Vec<u32>,
    cost: Vec<u128>,
    /// The same in seconds, without the count.
    seconds: Vec<f64>,
}

impl Lane {
    /// `depths` counts from no division.
    pub(super) fn new(pairs: Vec<Pair>, depths: usize) -> Self {
        // Whole blocks: what is beyond the last depth is never reached.
        let depths = depths.next_multiple_of(AT_ONCE);
        let mut until = vec![0; depths];
        until[0] = u32::MAX;
        Self {
            pairs,
            first: vec![0; depths],
            until,
            chosen: vec![0; depths],
            cost: vec![NONE; depths],
            seconds: vec![f64::INFINITY; depths],
        }
    }

    /// The best that begins with a roughing pass, with its depth; of equal ones the deeper pass.
    ///
    /// `rest` is the best from so many divisions left. `rest_seconds` is the same from `left` downwards, with
    /// nothing reachable below no division: it runs along with the depths.
    pub(super) fn best(
        &mut self,
        case: &Case<'_>,
        rules: &Rules<'_>,
        rest: &[u128],
        rest_seconds: &[f64],
    ) -> Option<(u128, usize)> {
        let left = rest.len();
        let top = rules.largest.min(left);
        if rules.least > top {
            return None;
        }
        let depths = |block: usize| {
            let from = block * AT_ONCE;
            from.max(rules.least)..(from + AT_ONCE).min(top + 1)
        };
        let blocks = top / AT_ONCE + 1;
        for block in 0..blocks {
            let untils = &self.until.as_chunks::<AT_ONCE>().0[block];
            if untils
                .iter()
                .fold(false, |any, until| any | (*until < left as u32))
            {
                for depth in depths(block) {
                    if self.until[depth] < left as u32 {
                        self.renew(case, rules, depth, left as u32);
                    }
                }
            }
        }
        let costs = &self.seconds.as_chunks::<AT_ONCE>().0[..blocks];
        let rests = &rest_seconds.as_chunks::<AT_ONCE>().0[..blocks];
        let near = least_sum(costs, rests) * (1.0 + NEAR);
        if near == f64::INFINITY {
            return None;
        }
        let mut best = (NONE - 1, 0);
        for (block, (costs, rests)) in costs.iter().zip(rests).enumerate() {
            if any_within(costs, rests, near) {
                for depth in depths(block) {
                    let time = self.cost[depth] + rest[left - depth];
                    if time <= best.0 {
                        best = (time, depth);
                    }
                }
            }
        }
        (best.1 > 0).then_some(best)
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
pub(super) struct Finish {
    pub(super) pairs: Vec<Pair>,
    /// The first pair that is not forbidden for ever.
    pub(super) first: usize,
}

impl Finish {
    /// The quickest pair for passes of `depth` divisions each down to the finished size.
    pub(super) fn quickest(
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
