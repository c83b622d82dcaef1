//! The Gaussian filter of a surface profile.
//!
//! The mean line is the profile weighed with s(x) = exp(-pi (x / (alpha L_c))^2) / (alpha L_c),
//! alpha = sqrt(ln 2 / pi): a wave of the cut-off's length is halved by it.
//!
//! How it is fast: a Gaussian weighed with a Gaussian is one, their squared cut-offs add up. A long
//! cut-off is taken in three: points to a coarse grid, along the grid, grid to points. A wave too
//! short for the grid is gone before it could be taken for a long one.

use std::f64::consts::{LN_2, PI};

use super::maths;
use super::profile::Profile;
use crate::error::{Error, ErrorKind};
use crate::quantity::{CutOff, PointSpacing, Quantity, Rsm, ShortCutOff, Transmission};

/// How a profile goes on beyond its ends.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum Ends {
    /// It repeats: the last point is followed by the first.
    Periodic,
    /// It stops. Near an end only the weights inside count, in proportion; half a cut-off at each
    /// end is left out of an evaluation.
    Open,
}

/// alpha = sqrt(ln 2 / pi) = 0.4697, the constant of the Gaussian filter.
///
/// # Units
/// None.
/// # Range
/// A constant.
/// # Source
/// ISO 16610-21 (from memory): half of a wave of the cut-off's length passes.
/// # Example
/// ```
/// assert_eq!((turnwright::physics::gaussian::alpha() * 1e4).round(), 4697.0);
/// ```
#[must_use]
pub fn alpha() -> f64 {
    (LN_2 / PI).sqrt()
}

/// How much of a wave the mean line keeps.
///
/// exp(-pi (alpha lambda_c / lambda)^2) = 2^(-(lambda_c / lambda)^2)
///
/// # Units
/// A share. The wave is given as the mean width of a profile's elements, RSm.
/// # Range
/// Any; the roughness profile keeps the rest: [`roughness_transmission`].
/// # Source
/// ISO 16610-21 (from memory).
/// # Example
/// ```
/// use turnwright::physics::gaussian::mean_line_transmission;
/// let kept = mean_line_transmission("0.8 mm".parse()?, "0.8 mm".parse()?);
/// assert_eq!(kept.value(), 0.5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn mean_line_transmission(wavelength: Rsm, cut_off: CutOff) -> Transmission {
    let waves = maths::number(cut_off.length() / wavelength.length());
    Transmission::computed_trade(maths::exp(-LN_2 * waves * waves))
}

/// How much of a wave the roughness profile keeps.
///
/// 1 - 2^(-(lambda_c / lambda)^2)
///
/// # Units
/// A share.
/// # Range
/// Any.
/// # Source
/// ISO 16610-21 (from memory).
/// # Example
/// ```
/// use turnwright::physics::gaussian::roughness_transmission;
/// assert!(roughness_transmission("0.2 mm".parse()?, "0.8 mm".parse()?).value() > 0.9999);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn roughness_transmission(wavelength: Rsm, cut_off: CutOff) -> Transmission {
    let waves = maths::number(cut_off.length() / wavelength.length());
    let log = LN_2 * waves * waves;
    // 1 - e^-log by its series where they are nearly equal: a long wave is all but lost, with all its
    // digits.
    let kept = if log > 0.01 {
        1.0 - maths::exp(-log)
    } else {
        (1..9)
            .rev()
            .fold(0.0, |sum, k| (1.0 + sum) * -log / f64::from(k))
            .abs()
    };
    Transmission::computed_trade(kept)
}

/// How much of a wave the short-wave filter keeps.
///
/// 2^(-(lambda_s / lambda)^2)
///
/// # Units
/// A share.
/// # Range
/// Any.
/// # Source
/// ISO 16610-21, ISO 21920-3 (from memory).
/// # Example
/// ```
/// use turnwright::physics::gaussian::short_wave_transmission;
/// let kept = short_wave_transmission("8 um".parse()?, "2.5 um".parse()?);
/// assert!((kept.value() - 0.93455).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn short_wave_transmission(wavelength: Rsm, short_cut_off: ShortCutOff) -> Transmission {
    let waves = maths::number(short_cut_off.length() / wavelength.length());
    Transmission::computed_trade(maths::exp(-LN_2 * waves * waves))
}

/// The mean line of a profile: its waves longer than the cut-off.
///
/// w(x) = sum z(x') s(x - x') / sum s(x - x')
///
/// # Units
/// Heights in micrometres, in the profile's own buffer and in `mean_line_um`.
/// # Range
/// Weights reach 1.25 cut-offs either way; the rest, 3e-11, is left out. With twelve points or more in
/// a cut-off a periodic profile gets the exact transmission to 1e-9 of its largest height. At an open end: [`Ends::Open`].
/// # Errors
/// `cut_off`, when fewer than four points of the profile lie in it; `mean_line_um`, when its length is
/// not the profile's.
/// # Source
/// ISO 16610-21 (from memory); at open ends the weights are taken in proportion (a decision of ours,
/// judgement, no source).
/// # Example
/// ```
/// use turnwright::physics::gaussian::{mean_line, Ends};
/// use turnwright::physics::profile::Profile;
/// let heights: Vec<f64> = (0..4000).map(|i| f64::sin(f64::from(i) * std::f64::consts::TAU / 1600.0)).collect();
/// let profile = Profile::from_um("0.0005 mm".parse()?, &heights)?;
/// let mut mean = vec![0.0; heights.len()];
/// mean_line(&profile, "0.8 mm".parse()?, Ends::Open, &mut mean)?;
/// assert!((mean[2000] - heights[2000] / 2.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn mean_line(
    profile: &Profile<'_>,
    cut_off: CutOff,
    ends: Ends,
    mean_line_um: &mut [f64],
) -> Result<(), Error> {
    let width = points_in(
        CutOff::ROW.name(),
        &cut_off,
        cut_off.mm(),
        profile.spacing(),
    )?;
    as_long_as("mean_line_um", profile, mean_line_um)?;
    smooth(profile.heights_um(), width, ends, mean_line_um);
    Ok(())
}

/// The roughness profile: the profile without its waves longer than the cut-off.
///
/// r(x) = z(x) - w(x)
///
/// # Units
/// As [`mean_line`].
/// # Range
/// As [`mean_line`].
/// # Errors
/// As [`mean_line`], with `roughness_um` for the buffer.
/// # Source
/// ISO 21920-2 (from memory).
/// # Example
/// ```
/// use turnwright::physics::gaussian::{roughness_profile, Ends};
/// use turnwright::physics::profile::Profile;
/// let profile = Profile::from_um("0.001 mm".parse()?, &[5.0; 1000])?;
/// let mut roughness = [1.0; 1000];
/// roughness_profile(&profile, "0.8 mm".parse()?, Ends::Open, &mut roughness)?;
/// assert!(roughness.iter().all(|z| z.abs() < 1e-12));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn roughness_profile(
    profile: &Profile<'_>,
    cut_off: CutOff,
    ends: Ends,
    roughness_um: &mut [f64],
) -> Result<(), Error> {
    let width = points_in(
        CutOff::ROW.name(),
        &cut_off,
        cut_off.mm(),
        profile.spacing(),
    )?;
    as_long_as("roughness_um", profile, roughness_um)?;
    smooth(profile.heights_um(), width, ends, roughness_um);
    for (line, z) in roughness_um.iter_mut().zip(profile.heights_um()) {
        *line = z - *line;
    }
    Ok(())
}

/// The profile without the waves shorter than lambda_s: what the tip of a stylus no longer follows.
///
/// As [`mean_line`], with lambda_s for the cut-off
///
/// # Units
/// As [`mean_line`].
/// # Range
/// With fewer than twelve points in lambda_s the shortest waves pass a little better than the
/// transmission says: the weights are samples of the standard's.
/// # Errors
/// As [`mean_line`], with `short_cut_off` for the cut-off and `primary_um` for the buffer.
/// # Source
/// ISO 16610-21, ISO 21920-3 (from memory).
/// # Example
/// ```
/// use turnwright::physics::gaussian::{without_short_waves, Ends};
/// use turnwright::physics::profile::Profile;
/// let profile = Profile::from_um("0.0005 mm".parse()?, &[5.0; 1000])?;
/// let mut primary = [0.0; 1000];
/// without_short_waves(&profile, "2.5 um".parse()?, Ends::Periodic, &mut primary)?;
/// assert!(primary.iter().all(|z| (z - 5.0).abs() < 1e-12));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn without_short_waves(
    profile: &Profile<'_>,
    short_cut_off: ShortCutOff,
    ends: Ends,
    primary_um: &mut [f64],
) -> Result<(), Error> {
    let width = points_in(
        ShortCutOff::ROW.name(),
        &short_cut_off,
        short_cut_off.mm(),
        profile.spacing(),
    )?;
    as_long_as("primary_um", profile, primary_um)?;
    smooth(profile.heights_um(), width, ends, primary_um);
    Ok(())
}

fn points_in(
    field: &str,
    given: &dyn std::fmt::Display,
    mm: f64,
    spacing: PointSpacing,
) -> Result<f64, Error> {
    let width = mm / spacing.mm();
    if width >= 4.0 {
        return Ok(width);
    }
    Err(Error::new(
        ErrorKind::Contradiction,
        field,
        given.to_string(),
        format!("at least four times the spacing {spacing} of the points"),
        "measure the profile at a smaller spacing, or take a longer cut-off",
    ))
}

fn as_long_as(field: &str, profile: &Profile<'_>, buffer: &[f64]) -> Result<(), Error> {
    let points = profile.heights_um().len();
    if buffer.len() == points {
        return Ok(());
    }
    Err(Error::new(
        ErrorKind::Contradiction,
        field,
        format!("{} heights", buffer.len()),
        format!("as many as the profile has points: {points}"),
        "make the buffer as long as the profile",
    ))
}

/// Cut-offs that the weights reach either way: 3e-11 of them lies beyond.
const REACH: f64 = 1.25;
/// First cut-off over the step of the grid.
const STEPS: f64 = 6.3;
/// Steps of the grid in the whole cut-off, at least. A wave of f' steps^-1 and one of 1 - f' cannot be
/// told apart on the grid; what is left of the wrong one, 2^-(a^2 ((1 - f')^2 + f'^2) + b^2 f'^2) with a the
/// first cut-off and b the one along the grid, is 2^-(a^2 - a^4 / (2 a^2 + b^2)) = 1.4e-10 at its worst.
const LEAST_STEPS: f64 = 15.0;
/// Nodes either way that a point is given to: 1.27 first cut-offs.
const EITHER: usize = 8;
const NODES: usize = 2 * EITHER;
/// Points that are worked on side by side.
const LANE: usize = 4;
/// More points in a cell would not stay in the first cache.
const LARGEST_CELL: usize = 128;

/// exp(-pi (x / (alpha L))^2), x over L.
fn weight(x: f64) -> f64 {
    maths::exp(-(PI * PI / LN_2) * x * x)
}

/// Smooths with a cut-off of `width` points.
fn smooth(heights: &[f64], width: f64, ends: Ends, out: &mut [f64]) {
    let Some(&level) = heights.first() else {
        return;
    };
    let lanes = (width / LEAST_STEPS / LANE as f64).floor() as usize;
    let cell = (lanes * LANE).min(LARGEST_CELL);
    if cell == 0 {
        directly(heights, level, width, ends, out);
    } else {
        Grid::new(width, cell).smooth(heights, level, ends, out);
    }
    match ends {
        Ends::Periodic => out.iter_mut().for_each(|line| *line += level),
        Ends::Open => in_proportion(level, width, out),
    }
}

/// The height above the level at a place that may lie beyond the ends.
fn beyond(heights: &[f64], level: f64, at: isize, ends: Ends) -> f64 {
    let count = heights.len() as isize;
    match ends {
        Ends::Periodic => heights[at.rem_euclid(count) as usize] - level,
        Ends::Open if (0..count).contains(&at) => heights[at as usize] - level,
        Ends::Open => 0.0,
    }
}

/// One side of the weights of a cut-off, sum over both sides one.
fn weights(width: f64) -> Vec<f64> {
    let reach = (REACH * width).ceil() as u32;
    let mut weights: Vec<f64> = (0..=reach).map(|x| weight(f64::from(x) / width)).collect();
    let whole = 2.0 * weights.iter().sum::<f64>() - weights[0];
    weights.iter_mut().for_each(|weight| *weight /= whole);
    weights
}

/// Weighs every point with its neighbours: for short cut-offs.
fn directly(heights: &[f64], level: f64, width: f64, ends: Ends, out: &mut [f64]) {
    let weights = weights(width);
    let reach = weights.len() - 1;
    let padded: Vec<f64> = (0..heights.len() + 2 * reach)
        .map(|at| beyond(heights, level, at as isize - reach as isize, ends))
        .collect();
    for (at, line) in out.iter_mut().enumerate() {
        *line = weights[0] * padded[at + reach];
    }
    for (x, weight) in weights.iter().enumerate().skip(1) {
        let (before, after) = (&padded[reach - x..], &padded[reach + x..]);
        for ((line, before), after) in out.iter_mut().zip(before).zip(after) {
            *line += weight * (before + after);
        }
    }
}

/// At open ends: divides by the weights that lie inside.
fn in_proportion(level: f64, width: f64, out: &mut [f64]) {
    let weights = weights(width);
    let count = out.len();
    // What lies up to so many points away on one side.
    let one_side: Vec<f64> = weights
        .iter()
        .skip(1)
        .scan(0.0, |sum, weight| {
            *sum += weight;
            Some(*sum)
        })
        .collect();
    let side = |points: usize| match points.min(one_side.len()) {
        0 => 0.0,
        some => one_side[some - 1],
    };
    for (at, line) in out.iter_mut().enumerate() {
        let (before, after) = (at, count - 1 - at);
        if before < one_side.len() || after < one_side.len() {
            *line /= weights[0] + side(before) + side(after);
        }
        *line += level;
    }
}

/// The tables of one cut-off: a grid with a node at the first point of every cell.
struct Grid {
    cell: usize,
    /// For each point of a cell the shares of its nodes.
    spread: Vec<[f64; NODES]>,
    /// For each lane of points and each node the shares of the points.
    gather: Vec<[[f64; LANE]; NODES]>,
    /// Along the grid, one side.
    along: Vec<f64>,
}

impl Grid {
    fn new(width: f64, cell: usize) -> Self {
        let step = cell as f64;
        // The place of node k of a point: EITHER - 1 nodes lie before its cell's first point.
        let first = (EITHER - 1) as f64;
        let mut spread: Vec<[f64; NODES]> = (0..cell)
            .map(|point| {
                std::array::from_fn(|k| weight((k as f64 - first - point as f64 / step) / STEPS))
            })
            .collect();
        let mut gather = vec![[[0.0; LANE]; NODES]; cell / LANE];
        for (point, shares) in spread.iter().enumerate() {
            let whole: f64 = shares.iter().sum();
            for (node, share) in gather[point / LANE].iter_mut().zip(shares) {
                node[point % LANE] = share / whole;
            }
        }
        // What one node gets from all points: sum over cells and points.
        let whole: f64 = spread.iter().flatten().sum();
        for share in spread.iter_mut().flatten() {
            *share /= whole;
        }
        let rest = (width / step) * (width / step) - 2.0 * STEPS * STEPS;
        Self {
            cell,
            spread,
            gather,
            along: weights(rest.sqrt()),
        }
    }

    fn smooth(&self, heights: &[f64], level: f64, ends: Ends, out: &mut [f64]) {
        let reach = self.along.len() - 1;
        let cells = out.len().div_ceil(self.cell);
        // Smoothed nodes are wanted from EITHER - 1 before the first cell to EITHER after the last.
        let wanted = cells + NODES - 1;
        let nodes = self.nodes(heights, level, ends, wanted + 2 * reach, reach + EITHER - 1);
        let smoothed: Vec<f64> = (0..wanted)
            .map(|at| {
                let around = &nodes[at..=at + 2 * reach];
                let one_side = self.along.iter().enumerate().skip(1);
                one_side.fold(self.along[0] * around[reach], |sum, (x, weight)| {
                    sum + weight * (around[reach - x] + around[reach + x])
                })
            })
            .collect();
        for (lines, nodes) in out.chunks_mut(self.cell).zip(smoothed.windows(NODES)) {
            for (lines, shares) in lines.chunks_mut(LANE).zip(&self.gather) {
                let mut sums = [0.0; LANE];
                for (node, shares) in nodes.iter().zip(shares) {
                    for (sum, share) in sums.iter_mut().zip(shares) {
                        *sum += share * node;
                    }
                }
                for (line, sum) in lines.iter_mut().zip(sums) {
                    *line = sum;
                }
            }
        }
    }

    /// The heights given to `count` nodes, the first of which stands `before` nodes before the first
    /// point.
    fn nodes(
        &self,
        heights: &[f64],
        level: f64,
        ends: Ends,
        count: usize,
        before: usize,
    ) -> Vec<f64> {
        // Cells whose points reach a node: EITHER before and behind.
        let cells = count + NODES;
        let offset = (before + EITHER) as isize;
        let mut nodes = vec![0.0; cells + NODES];
        let mut edge = vec![0.0; self.cell];
        for at in 0..cells {
            let start = (at as isize - offset) * self.cell as isize;
            let inside = usize::try_from(start)
                .ok()
                .and_then(|start| heights.get(start..start + self.cell));
            let points = match inside {
                Some(points) => points,
                None => {
                    for (point, height) in (start..).zip(edge.iter_mut()) {
                        *height = beyond(heights, level, point, ends) + level;
                    }
                    &edge
                }
            };
            let mut sums = [0.0; NODES];
            for (height, shares) in points.iter().zip(&self.spread) {
                let height = height - level;
                for (sum, share) in sums.iter_mut().zip(shares) {
                    *sum += share * height;
                }
            }
            // This cell's first node is EITHER - 1 before its first point.
            for (node, sum) in nodes[at..].iter_mut().zip(sums) {
                *node += sum;
            }
        }
        // nodes[j] stands at node j - (EITHER - 1) of cell 0, which is at -offset.
        let skip = EITHER + EITHER - 1;
        nodes.drain(..skip);
        nodes.truncate(count);
        nodes
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::random::Draws;

    fn heights(points: usize) -> Vec<f64> {
        let mut draws = Draws::new(5);
        (0..points)
            .map(|i| 3.0 + draws.normal() + (i as f64 * 0.01).sin())
            .collect()
    }

    #[test]
    fn the_grid_says_what_the_weights_say() {
        for (points, width) in [
            (5000, 61.0),
            (20_000, 1600.0),
            (20_001, 333.37),
            (700, 1600.0),
            (60_000, 20_000.0),
        ] {
            let heights = heights(points);
            let peak = heights.iter().fold(0.0, |peak, z| f64::max(peak, z.abs()));
            for ends in [Ends::Periodic, Ends::Open] {
                let (mut fast, mut direct) = (vec![0.0; points], vec![0.0; points]);
                smooth(&heights, width, ends, &mut fast);
                directly(&heights, heights[0], width, ends, &mut direct);
                match ends {
                    Ends::Periodic => direct.iter_mut().for_each(|line| *line += heights[0]),
                    Ends::Open => in_proportion(heights[0], width, &mut direct),
                }
                for (fast, direct) in fast.iter().zip(&direct) {
                    // Half of the 1e-9 that is promised against the exact transmission.
                    assert!((fast - direct).abs() < 5e-10 * peak, "{points} {width}");
                }
            }
        }
    }

    #[test]
    fn a_wave_keeps_its_transmission() {
        // 2^-(L_c/lambda)^2, ISO 16610-21, from memory. 8000 points hold whole waves of each.
        for (width, wave) in [
            (1600.0, 1600.0),
            (1600.0, 4000.0),
            (400.0, 250.0),
            (40.0, 50.0),
        ] {
            let heights: Vec<f64> = (0..8000)
                .map(|i| f64::cos(2.0 * PI * f64::from(i) / wave))
                .collect();
            let mut line = vec![0.0; 8000];
            smooth(&heights, width, Ends::Periodic, &mut line);
            let kept = f64::exp2(-(width / wave) * (width / wave));
            for (line, z) in line.iter().zip(&heights) {
                assert!(
                    (line - kept * z).abs() < 1e-9,
                    "{width} {wave}: {line} {kept}"
                );
            }
        }
    }

    #[test]
    fn a_constant_stays_to_its_ends() {
        let level = [1234.5; 3000];
        for width in [10.0, 1000.0] {
            for ends in [Ends::Periodic, Ends::Open] {
                let mut line = [0.0; 3000];
                smooth(&level, width, ends, &mut line);
                assert!(line.iter().all(|z| *z == 1234.5));
            }
        }
    }

    #[test]
    fn what_cannot_be_filtered_names_its_field() {
        let heights = [0.0; 100];
        let profile = Profile::from_um("0.01 mm".parse().unwrap(), &heights).unwrap();
        let cut_off = CutOff::from_mm(0.03).unwrap();
        let refused = mean_line(&profile, cut_off, Ends::Open, &mut [0.0; 100]);
        assert_eq!(refused.unwrap_err().field(), "cut_off");
        let cut_off = CutOff::from_mm(0.3).unwrap();
        let refused = mean_line(&profile, cut_off, Ends::Open, &mut [0.0; 99]);
        assert_eq!(refused.unwrap_err().field(), "mean_line_um");
        let short = "2.5 um".parse().unwrap();
        let refused = without_short_waves(&profile, short, Ends::Open, &mut [0.0; 100]);
        assert_eq!(refused.unwrap_err().field(), "short_cut_off");
    }
}
