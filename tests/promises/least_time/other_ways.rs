//! The least time by other ways: all divisions enumerated, and the plainest programme.

use turnwright::Tool;
use turnwright::advice::force::ToolLaw;

use super::{Job, Pass};

/// All ways to divide, each pass on each step; of the feeds of one step the quickest that is allowed,
/// for the others can only lose.
pub struct Enumeration<'a> {
    job: &'a Job,
    edge: (Tool, ToolLaw),
    /// By divisions left, divisions taken and step.
    rough: Vec<Vec<Vec<Option<usize>>>>,
    pub best: f64,
    pub passes: Vec<Pass>,
}

impl<'a> Enumeration<'a> {
    pub fn of(job: &'a Job) -> Self {
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
pub fn plain(job: &Job) -> f64 {
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
