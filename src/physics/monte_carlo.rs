//! Does a budget hold when every part of it is drawn at random, by the law it was given?
//!
//! Each component is drawn, all are summed, many times over; no formula of the budget is used. One
//! thread, and the same answer for a seed on every machine. Every sum is kept until the end, eight
//! bytes a draw, because the interval is read from the sorted sums.

use super::budget::{Budget, Distribution};
use super::maths::sqrt;
use super::spread::Outcome;
use super::ziggurat::Ziggurat;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Confidence, Diameter, DiameterError, Probability, StandardUncertainty};
use crate::standards::limits::{Feature, Limits};

/// The fewest draws.
pub const FEWEST_DRAWS: u32 = 1_000;
/// The most draws: eighty megabytes.
pub const MOST_DRAWS: u32 = 10_000_000;
/// So many draws lie beyond either end of an interval at least: judgement, no source.
const BEYOND: f64 = 10.0;
/// So many sums are made at a time, to stay near the processor.
const BLOCK: usize = 1024;

/// A budget drawn at random.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Simulated {
    /// How many draws were made.
    pub draws: u32,
    /// The mean of the draws, from the size aimed for.
    pub mean: DiameterError,
    /// Standard error of the mean.
    pub mean_error: StandardUncertainty,
    /// Their standard deviation.
    pub standard_deviation: StandardUncertainty,
    /// Standard error of the standard deviation.
    pub standard_deviation_error: StandardUncertainty,
    /// The lower end of the interval, from the size aimed for: as many draws lie below it as above
    /// the upper end.
    pub from: DiameterError,
    /// The upper end of the interval.
    pub to: DiameterError,
    /// What came out, where limits were given.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub outcome: Option<CountedOutcome>,
}

/// Shares that were counted, each with its standard error.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CountedOutcome {
    /// The shares.
    pub counted: Outcome,
    /// Standard error of the share of good parts.
    pub good_error: Probability,
    /// Standard error of the share of parts to rework.
    pub rework_error: Probability,
    /// Standard error of the share of lost parts.
    pub scrap_error: Probability,
}

/// Draws a budget `draws` times from a seed.
///
/// A normal component with degrees of freedom is drawn from Student's law scaled by its standard
/// uncertainty, which scatters more than the budget's u by sqrt(nu/(nu - 2)); with two degrees of
/// freedom or fewer it has no standard deviation at all, and what is told of one means little.
///
/// The standard error of a share is that of its estimate (x + 1)/(n + 2) from x of n draws, so that
/// nothing counted is not taken as nothing possible.
///
/// # Units
/// The types carry them.
/// # Range
/// 1000 to 10 million draws. The generator is one of sixty-four bits.
/// # Errors
/// `draws`: out of range, or too few for the confidence, so that fewer than ten lie beyond an end of
/// the interval; more than memory holds. `correlations`: between components that are not normal, or
/// have degrees of freedom, as no joint law follows from a coefficient alone.
/// # Source
/// JCGM 101:2008, 5 to 7; 6.4.9 for Student's law (from memory).
/// # Example
/// ```
/// use turnwright::physics::{budget::{Budget, Component}, monte_carlo::simulate};
/// let budget = Budget::new(vec![
///     Component::uniform("setting the mark", "0.01 mm".parse()?),
///     Component::standard("repeatability", "0.003 mm".parse()?),
/// ])?;
/// let drawn = simulate(&budget, None, 100_000, 1, "0.95".parse()?)?;
/// let off = drawn.standard_deviation.mm() - budget.combined().mm();
/// assert!(off.abs() < 4.5 * drawn.standard_deviation_error.mm());
/// // The law is not normal: 95 % lie within less than two standard deviations.
/// assert!(drawn.to.mm() < 1.96 * budget.combined().mm());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn simulate(
    budget: &Budget,
    task: Option<(Limits, Diameter, Feature)>,
    draws: u32,
    seed: u64,
    confidence: Confidence,
) -> Result<Simulated, Error> {
    check(draws, confidence)?;
    let laws = laws(budget)?;
    let mut sums = Vec::new();
    sums.try_reserve_exact(draws as usize)
        .map_err(|_| no_memory(draws))?;
    sums.resize(draws as usize, 0.0);
    let mut source = Ziggurat::new(seed);
    for block in sums.chunks_mut(BLOCK) {
        for law in &laws {
            law.add(&mut source, block);
        }
    }
    let n = f64::from(draws);
    let outcome = task.map(|(limits, mean, feature)| {
        let (low, high) = (
            limits.smallest().mm() - mean.mm(),
            limits.largest().mm() - mean.mm(),
        );
        let below = sums.iter().filter(|sum| **sum < low).count() as f64;
        let above = sums.iter().filter(|sum| **sum > high).count() as f64;
        counted(below, above, n, feature)
    });
    let mean = sums.iter().sum::<f64>() / n;
    let (second, fourth) = sums.iter().fold((0.0, 0.0), |(second, fourth), sum| {
        let square = (sum - mean) * (sum - mean);
        (second + square, fourth + square * square)
    });
    let variance = second / (n - 1.0);
    let deviation = sqrt(variance);
    // Of the variance sqrt((m4 - s^4)/n); of its root that over 2 s.
    let of_variance = sqrt((fourth / n - variance * variance).max(0.0) / n);
    let (from, to) = interval(&mut sums, confidence);
    let u = StandardUncertainty::computed_trade;
    Ok(Simulated {
        draws,
        mean: DiameterError::computed_trade(mean),
        mean_error: u(deviation / sqrt(n)),
        standard_deviation: u(deviation),
        standard_deviation_error: u(of_variance / (2.0 * deviation)),
        from: DiameterError::computed_trade(from),
        to: DiameterError::computed_trade(to),
        outcome,
    })
}

fn check(draws: u32, confidence: Confidence) -> Result<(), Error> {
    if !(FEWEST_DRAWS..=MOST_DRAWS).contains(&draws) {
        return Err(Error::new(
            ErrorKind::OutOfRange,
            "draws",
            draws.to_string(),
            format!("{FEWEST_DRAWS} to {MOST_DRAWS} draws"),
            "a hundred thousand give three digits in a blink, a million a little more",
        ));
    }
    let beyond = 0.5 * (1.0 - confidence.value());
    if beyond * f64::from(draws) < BEYOND {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "draws",
            draws.to_string(),
            format!(
                "at least {} draws for a confidence of {confidence}, so that ten lie beyond either end",
                (BEYOND / beyond).ceil()
            ),
            "draw more, or ask for a lower confidence",
        ));
    }
    Ok(())
}

#[cold]
fn no_memory(draws: u32) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "draws",
        draws.to_string(),
        "as many draws as memory holds, at eight bytes each",
        "draw fewer",
    )
}

/// A component as it is drawn, in millimetres of the size.
enum Law {
    Normal(f64),
    Student(f64, f64),
    Uniform(f64),
    Triangular(f64),
    Arcsine(f64),
}

impl Law {
    /// Adds a draw to every sum.
    fn add(&self, source: &mut Ziggurat, sums: &mut [f64]) {
        match *self {
            Self::Normal(u) => each(sums, || u * source.normal()),
            Self::Student(u, nu) => each(sums, || u * source.student(nu)),
            Self::Uniform(a) => each(sums, || a * source.both_ways()),
            // The sum of two of half the width.
            Self::Triangular(a) => {
                each(sums, || 0.5 * a * (source.both_ways() + source.both_ways()));
            }
            Self::Arcsine(a) => each(sums, || a * source.arcsine()),
        }
    }
}

#[inline]
fn each(sums: &mut [f64], mut draw: impl FnMut() -> f64) {
    for sum in sums {
        *sum += draw();
    }
}

fn laws(budget: &Budget) -> Result<Vec<Law>, Error> {
    let components = budget.components();
    let correlations = budget.correlations();
    let count = components.len();
    let factor = correlations
        .factor(count)
        .ok_or_else(|| Error::internal("correlations that were found sound and are not"))?;
    let mut laws = Vec::with_capacity(count);
    for (i, component) in components.iter().enumerate() {
        let (u, nu) = (component.signed(), component.degrees_of_freedom());
        let ends = component.half_width();
        let alone = correlations.of(i).next().is_none();
        laws.push(match (component.distribution(), nu, ends) {
            (Distribution::Normal, None, _) => {
                // Draw i enters every component whose row of the triangle has it.
                let weight = (i..count)
                    .map(|row| components[row].signed() * factor[row * count + i])
                    .sum::<f64>();
                Law::Normal(if alone { u } else { weight })
            }
            _ if !alone => return Err(no_joint_law(component.name())),
            (Distribution::Normal, Some(nu), _) => Law::Student(u, nu.value()),
            (Distribution::Uniform, _, Some(a)) => Law::Uniform(a),
            (Distribution::Triangular, _, Some(a)) => Law::Triangular(a),
            (Distribution::Arcsine, _, Some(a)) => Law::Arcsine(a),
            (_, _, None) => return Err(Error::internal("a law without ends that is not normal")),
        });
    }
    Ok(laws)
}

#[cold]
fn no_joint_law(name: &str) -> Error {
    Error::new(
        ErrorKind::NotOffered,
        "correlations",
        format!("a correlation of \"{name}\", which is not drawn from the normal law"),
        "correlations between normal components without degrees of freedom",
        "leave the simulation out, or give the component as a standard uncertainty",
    )
}

fn counted(below: f64, above: f64, n: f64, feature: Feature) -> CountedOutcome {
    let (rework, scrap) = match feature {
        Feature::Shaft => (above, below),
        Feature::Hole => (below, above),
    };
    let good = n - below - above;
    let share = |x: f64| Probability::computed_trade(x / n);
    let error = |x: f64| {
        let p = (x + 1.0) / (n + 2.0);
        Probability::computed_trade(sqrt(p * (1.0 - p) / n))
    };
    CountedOutcome {
        counted: Outcome {
            good: share(good),
            rework: share(rework),
            scrap: share(scrap),
        },
        good_error: error(good),
        rework_error: error(rework),
        scrap_error: error(scrap),
    }
}

/// The sums between which the share lies, as many below as above (JCGM 101, 7.7).
fn interval(sums: &mut [f64], confidence: Confidence) -> (f64, f64) {
    let n = sums.len();
    let inside = (confidence.value() * n as f64).round() as usize;
    // Counted from one there, from zero here.
    let low = (n - inside).div_ceil(2) - 1;
    let (left, high, _) = sums.select_nth_unstable_by(low + inside, f64::total_cmp);
    let high = *high;
    let (_, low, _) = left.select_nth_unstable_by(low, f64::total_cmp);
    (*low, high)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::budget::Component;
    use crate::physics::spread::outcome;
    use crate::quantity::{DegreesOfFreedom, HalfWidth, Sensitivity};

    fn um(u: f64) -> StandardUncertainty {
        StandardUncertainty::from_mm(u / 1000.0).unwrap()
    }

    fn half(a: f64) -> HalfWidth {
        HalfWidth::from_mm(a / 1000.0).unwrap()
    }

    fn p95() -> Confidence {
        Confidence::from_value(0.95).unwrap()
    }

    fn task() -> (Limits, Diameter, Feature) {
        let size = |mm| Diameter::from_mm(mm).unwrap();
        let limits = Limits::new(size(39.984), size(40.0)).unwrap();
        (limits, size(39.9935), Feature::Shaft)
    }

    #[test]
    fn counts_of_few_degrees_are_those_of_the_budget() {
        let (limits, mean, feature) = task();
        for nu in 1..=30_u32 {
            let degrees = DegreesOfFreedom::from_value(nu.into()).unwrap();
            let read = Component::standard("read", um(4.0)).with_degrees_of_freedom(degrees);
            let budget = Budget::new(vec![read]).unwrap();
            let exact = budget.outcome(limits, mean, feature);
            let drawn = simulate(&budget, Some(task()), 200_000, nu.into(), p95()).unwrap();
            let found = drawn.outcome.unwrap();
            for (found, exact, error) in [
                (found.counted.good, exact.good, found.good_error),
                (found.counted.rework, exact.rework, found.rework_error),
                (found.counted.scrap, exact.scrap, found.scrap_error),
            ] {
                let off = (found.value() - exact.value()).abs();
                // Fixed seeds; of ninety shares one in two hundred such tables would be beyond.
                assert!(off < 4.0 * error.value(), "{nu}: {found} {exact}");
            }
        }
    }

    #[test]
    fn counts_are_those_of_the_closed_form() {
        // The closed forms of the budget and of its outcome, on budgets of one uniform and up to
        // three normal components.
        for seed in 0..20_u32 {
            let spread = f64::from(seed % 5);
            let mut components = vec![
                Component::uniform("mark", half(1.0 + 2.0 * spread)),
                Component::standard("repeat", um(1.0 + f64::from(seed % 3))),
            ];
            if seed % 2 == 0 {
                components.push(
                    Component::standard("slide", um(0.7))
                        .with_sensitivity(Sensitivity::from_value(-2.0).unwrap()),
                );
            }
            let budget = Budget::new(components).unwrap();
            let drawn = simulate(&budget, Some(task()), 200_000, seed.into(), p95()).unwrap();
            let near = |found: f64, exact: f64, error: f64| {
                assert!(
                    (found - exact).abs() < 4.5 * error,
                    "{seed}: {found} {exact} {error}"
                );
            };
            near(drawn.mean.mm(), 0.0, drawn.mean_error.mm());
            near(
                drawn.standard_deviation.mm(),
                budget.combined().mm(),
                drawn.standard_deviation_error.mm(),
            );
            let (limits, mean, feature) = task();
            let exact = outcome(limits, mean, budget.spread(), feature);
            let found = drawn.outcome.unwrap();
            for (found, exact, error) in [
                (found.counted.good, exact.good, found.good_error),
                (found.counted.rework, exact.rework, found.rework_error),
                (found.counted.scrap, exact.scrap, found.scrap_error),
            ] {
                // From a handful counted the error itself is uncertain: that of the exact share then.
                let of_exact = (exact.value() * (1.0 - exact.value()) / 2e5).sqrt();
                near(found.value(), exact.value(), error.value().max(of_exact));
            }
            // The share below either end is 2.5 %, within its standard error in the share.
            let spread = budget.spread();
            for end in [drawn.from.mm(), -drawn.to.mm()] {
                near(
                    spread.share_below(end),
                    0.025,
                    (0.025_f64 * 0.975 / 2e5).sqrt(),
                );
            }
        }
    }

    #[test]
    fn counts_are_those_of_the_budget_whatever_its_laws() {
        // Of what follows 4 degrees of freedom, of swings, of two wide uniform parts, of triangles: what is drawn is
        // what the budget tells, within what so many draws are sure to.
        let of = |nu: f64| DegreesOfFreedom::from_value(nu).unwrap();
        let few =
            |u: f64, nu: f64| Component::standard("few", um(u)).with_degrees_of_freedom(of(nu));
        let budgets = [
            vec![Component::arcsine("warmth", half(9.0))],
            vec![
                Component::arcsine("warmth", half(9.0)),
                Component::standard("read", um(0.5)).with_degrees_of_freedom(of(4.0)),
            ],
            vec![
                Component::uniform("mark", half(4.0)),
                Component::standard("read", um(3.0)),
                few(3.0, 4.5),
            ],
            vec![
                Component::uniform("mark", half(5.0)),
                Component::uniform("ring", half(5.0)),
            ],
            vec![
                Component::triangular("mark", half(12.0)),
                Component::standard("read", um(1.0)),
            ],
            vec![
                Component::triangular("mark", half(6.0)),
                Component::uniform("ring", half(5.0)),
                few(2.0, 2.5),
            ],
            vec![few(4.0, 1.0), Component::standard("read", um(2.0))],
        ];
        for (seed, components) in (0..).zip(budgets) {
            let budget = Budget::new(components).unwrap();
            let (limits, mean, feature) = task();
            let drawn = simulate(&budget, Some(task()), 400_000, seed, p95()).unwrap();
            let exact = budget.outcome(limits, mean, feature);
            let found = drawn.outcome.unwrap();
            for (found, exact) in [
                (found.counted.good, exact.good),
                (found.counted.rework, exact.rework),
                (found.counted.scrap, exact.scrap),
            ] {
                let (found, exact) = (found.value(), exact.value());
                let error = (exact * (1.0 - exact) / 4e5).sqrt();
                // Three parts of a budget with ends have one of them taken as normal: a thousandth at most.
                assert!(
                    (found - exact).abs() < 4.5 * error + 1e-3,
                    "{seed}: {found} {exact}"
                );
            }
        }
    }

    #[test]
    fn laws_with_ends_and_with_few_degrees_have_their_deviation() {
        let nu = DegreesOfFreedom::from_value(10.0).unwrap();
        for (component, factor) in [
            (Component::triangular("a", half(5.0)), 1.0),
            (Component::arcsine("a", half(5.0)), 1.0),
            (
                Component::resolution("a", crate::quantity::Resolution::from_mm(0.01).unwrap()),
                1.0,
            ),
            // The scaled law of JCGM 101, 6.4.9: nu/(nu - 2).
            (
                Component::standard("a", um(3.0)).with_degrees_of_freedom(nu),
                1.25_f64.sqrt(),
            ),
        ] {
            let budget = Budget::new(vec![component]).unwrap();
            let drawn = simulate(&budget, None, 200_000, 9, p95()).unwrap();
            let off = drawn.standard_deviation.mm() - factor * budget.combined().mm();
            assert!(
                off.abs() < 4.5 * drawn.standard_deviation_error.mm(),
                "{budget:?}"
            );
        }
    }

    #[test]
    fn correlated_draws_have_the_deviation_of_the_budget() {
        let r = |coefficient| crate::quantity::Correlation::from_value(coefficient).unwrap();
        let three = || {
            vec![
                Component::standard("a", um(3.0)),
                Component::standard("b", um(4.0))
                    .with_sensitivity(Sensitivity::from_value(-1.0).unwrap()),
                Component::standard("c", um(2.0)),
                Component::uniform("d", half(2.0)),
            ]
        };
        for pairs in [
            vec![(0, 1, r(0.6))],
            vec![(0, 1, r(-1.0))],
            vec![(2, 0, r(0.5)), (1, 2, r(-0.4))],
        ] {
            let budget = Budget::new(three())
                .unwrap()
                .with_correlations(&pairs)
                .unwrap();
            let drawn = simulate(&budget, None, 200_000, 4, p95()).unwrap();
            let off = drawn.standard_deviation.mm() - budget.combined().mm();
            assert!(
                off.abs() < 4.5 * drawn.standard_deviation_error.mm(),
                "{pairs:?}"
            );
        }
        let no_law = Budget::new(three())
            .unwrap()
            .with_correlation(0, 3, r(0.2))
            .unwrap();
        let error = simulate(&no_law, None, 1000, 4, p95()).unwrap_err();
        assert_eq!(error.field(), "correlations");
    }

    #[test]
    fn draws_out_of_range_are_refused() {
        let budget = Budget::new(vec![Component::standard("a", um(3.0))]).unwrap();
        let high = Confidence::from_value(0.999).unwrap();
        for (draws, confidence) in [(999, p95()), (10_000_001, p95()), (5_000, high)] {
            let error = simulate(&budget, None, draws, 1, confidence).unwrap_err();
            assert_eq!(
                (error.field(), error.given()),
                ("draws", draws.to_string().as_str())
            );
        }
    }

    #[test]
    fn a_seed_has_one_answer() {
        let budget = Budget::new(vec![Component::standard("a", um(3.0))]).unwrap();
        let draw = |seed| simulate(&budget, Some(task()), 5_000, seed, p95()).unwrap();
        assert_eq!(draw(3), draw(3));
        assert_ne!(draw(3).mean, draw(4).mean);
    }
}
