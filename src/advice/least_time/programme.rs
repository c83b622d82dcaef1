//! The dynamic programme: the least time from every number of divisions left, on every step.
//!
//! From the finished size outwards: a pass of `a` divisions with `r` left adds its time to the best
//! that is known for `r - a`. Where a change of step costs nothing the step of the pass before does not
//! matter, and one lane serves for all steps; else each step has its own.
//!
//! Times are summed as whole counts of 2^-60 s, so that a sum does not depend on the order of its
//! terms: of equal plans the same one is found on every machine. The passes are counted in the lowest
//! bits, so that of plans of equal time one with fewer passes is the lesser.

use super::Finishing;
use super::case::{Case, Pair, Rules};
use super::lane::{AT_ONCE, Finish, Lane};

/// Bits for the number of passes; the divisions of a question fit in.
const COUNT_BITS: u32 = 14;

/// No plan. Sums of two stay within the type; a plan of the longest passes stays far below it.
pub(super) const NONE: u128 = 1 << 126;

/// A whole count of 2^-60 s. A time of 8 ms or more is exact: its last bit is one of these or greater.
pub(super) fn counted(seconds: f64) -> u128 {
    ((seconds * (1_u64 << 60) as f64) as u128) << COUNT_BITS
}

fn seconds(counted: u128) -> f64 {
    (counted >> COUNT_BITS) as f64 / (1_u64 << 60) as f64
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
    // The same in seconds, from the most divisions left to none, with room for a whole block of depths
    // beyond: then it runs along with them.
    let wide_seconds = wide + 2 * AT_ONCE;
    let mut going_on_seconds = vec![f64::INFINITY; lanes * wide_seconds];
    let mut choices = vec![Choice::default(); lanes * wide];
    if finishing.is_none() {
        for lane in 0..lanes {
            going_on[lane * wide] = 0;
            going_on_seconds[lane * wide_seconds + divisions] = 0.0;
        }
    }
    for left in 1..=divisions {
        let mut best_of_all = NONE;
        for lane in 0..lanes {
            let mut best = NONE;
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
            let rest_seconds = &going_on_seconds[lane * wide_seconds + divisions - left..];
            let own = &mut rough[lane];
            if let Some((time, depth)) = own.best(case, roughing, rest, rest_seconds)
                && time < best
            {
                best = time;
                choice = Choice {
                    divisions: depth as u32,
                    pair: own.chosen[depth],
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
                going_on_seconds[lane * wide_seconds + divisions - left] = seconds(going_on[at]);
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
