//! A surface profile, point by point: measured, or simulated from the tool.
//!
//! Heights are in micrometres, at equal distances, in buffers of the caller.

use std::collections::VecDeque;
use std::f64::consts::FRAC_PI_2;

use super::finish::ToolOutline;
use super::maths;
use super::outline_integrals::versine;
use super::random::Draws;
use super::uneven_feed::LARGEST_UNEVENNESS;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Feed, FeedUnevenness, PointSpacing, Quantity, Rq};

/// No lathe leaves heights beyond 100 mm; what says so is another quantity or a broken file.
const HIGHEST_UM: f64 = 1e5;

/// Heights of a profile at equal distances, checked.
#[derive(Debug, Clone, Copy)]
pub struct Profile<'a> {
    spacing: PointSpacing,
    heights: &'a [f64],
}

impl<'a> Profile<'a> {
    /// Heights in micrometres, `spacing` apart.
    ///
    /// # Errors
    /// `heights_um`, when there is none; `heights_um[i]`, when one is not finite or beyond 100 mm.
    ///
    /// # Example
    /// ```
    /// use turnwright::physics::profile::Profile;
    /// let profile = Profile::from_um("0.0005 mm".parse()?, &[0.0, 0.5, 0.2])?;
    /// assert_eq!(profile.heights_um().len(), 3);
    /// assert!(Profile::from_um("0.0005 mm".parse()?, &[0.0, f64::NAN]).is_err());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn from_um(spacing: PointSpacing, heights_um: &'a [f64]) -> Result<Self, Error> {
        let refused = |field: String, given: String, expected: &str| {
            Error::new(
                ErrorKind::OutOfRange,
                field,
                given,
                expected,
                "check the file and its unit: heights are in micrometres",
            )
        };
        if heights_um.is_empty() {
            return Err(refused(
                String::from("heights_um"),
                String::from("no height"),
                "one height at least",
            ));
        }
        // A sum of what lies outside, without a branch a point; then only, which it was.
        let outside = |z: &&f64| z.abs() > HIGHEST_UM || z.is_nan();
        if heights_um.iter().filter(outside).count() > 0
            && let Some(at) = heights_um.iter().position(|z| outside(&z))
        {
            return Err(refused(
                format!("heights_um[{at}]"),
                heights_um[at].to_string(),
                "a finite height within 100000 um either way",
            ));
        }
        Ok(Self {
            spacing,
            heights: heights_um,
        })
    }

    /// The distance between neighbouring points.
    #[must_use]
    pub fn spacing(&self) -> PointSpacing {
        self.spacing
    }

    /// The heights, in micrometres.
    #[must_use]
    pub fn heights_um(&self) -> &'a [f64] {
        self.heights
    }
}

/// A turned surface to be simulated: an outline, a feed, how uneven it is, how much noise lies on it.
///
/// ```
/// use turnwright::physics::{finish::ToolOutline, profile::TurnedProfile};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
/// let surface = TurnedProfile::new("0.2 mm/rev".parse()?, tool)
///     .with_feed_unevenness("0.1".parse()?)
///     .with_noise("0.05 um".parse()?)
///     .with_seed(7);
/// let mut heights = vec![0.0; 8000];
/// surface.write_um("0.0005 mm".parse()?, &mut heights)?;
/// let again = heights.clone();
/// surface.write_um("0.0005 mm".parse()?, &mut heights)?;
/// assert_eq!(heights, again);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TurnedProfile {
    feed: Feed,
    outline: ToolOutline,
    feed_unevenness: Option<FeedUnevenness>,
    noise: Option<Rq>,
    seed: u64,
}

impl TurnedProfile {
    /// A surface turned with this feed and this outline, even and without noise.
    #[must_use]
    pub fn new(feed: Feed, outline: ToolOutline) -> Self {
        Self {
            feed,
            outline,
            feed_unevenness: None,
            noise: None,
            seed: 0,
        }
    }

    /// With feeds of the single turns that scatter.
    #[must_use]
    pub fn with_feed_unevenness(mut self, feed_unevenness: FeedUnevenness) -> Self {
        self.feed_unevenness = Some(feed_unevenness);
        self
    }

    /// With normal noise of this root mean square height on every point.
    #[must_use]
    pub fn with_noise(mut self, noise: Rq) -> Self {
        self.noise = Some(noise);
        self
    }

    /// With another seed than 0.
    #[must_use]
    pub fn with_seed(mut self, seed: u64) -> Self {
        self.seed = seed;
        self
    }

    /// Writes the heights in micrometres, `spacing` apart.
    ///
    /// z(x) = min_i y(x - x_i), y the outline of the tool (r - sqrt(r^2 - u^2) on the arc, then the
    /// edges), x_i the sum of the feeds so far
    ///
    /// # Units
    /// Micrometres above the bottoms of the grooves. The first bottom lies at the first point.
    /// # Range
    /// What a stylus sees: it falls straight from an overhanging ridge. The steeper edge leads, so that
    /// with kappa_r' > kappa_r the mirror image comes out. Feeds are normal within 0 < f_i < 2 f
    /// (those beyond are drawn again), as in
    /// [`uneven_spread`](super::uneven_feed::uneven_spread). The numbers drawn are the same on every
    /// machine, to the bit; the edges' slopes go through its sine, so that heights on an edge agree to
    /// the last digits.
    /// # Errors
    /// `feed_unevenness`, above [`LARGEST_UNEVENNESS`].
    /// # Source
    /// Derived: the lower envelope of outlines. Generator: SplitMix64 (Steele, Lea and Flood 2014, from
    /// memory), one stream for the feeds and one for the noise.
    /// # Example
    /// See [`TurnedProfile`].
    pub fn write_um(&self, spacing: PointSpacing, heights_um: &mut [f64]) -> Result<(), Error> {
        let unevenness = self.feed_unevenness.map_or(0.0, FeedUnevenness::value);
        if unevenness > LARGEST_UNEVENNESS {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                FeedUnevenness::ROW.name(),
                unevenness.to_string(),
                format!("at most {LARGEST_UNEVENNESS}, where the feeds follow a normal law"),
                "take a smaller unevenness",
            ));
        }
        let sides = Sides::of(&self.outline);
        let mut feeds = Draws::new(self.seed);
        let mut next_feed = || {
            let f = self.feed.mm_per_rev();
            if unevenness > 0.0 {
                f * (1.0 + unevenness * feeds.normal_within(1.0 / unevenness))
            } else {
                f
            }
        };
        // The bottoms on both sides of the point, each counted in feeds where they are even: sums of
        // many feeds lose digits.
        let even = unevenness == 0.0;
        let mut turn = 0.0;
        let mut bottoms = VecDeque::from([0.0]);
        for (point, height) in heights_um.iter_mut().enumerate() {
            let x = point as f64 * spacing.mm();
            while bottoms.len() < 2 || bottoms[1] <= x {
                let last = bottoms.back().copied().unwrap_or(0.0);
                turn += 1.0;
                bottoms.push_back(if even {
                    turn * self.feed.mm_per_rev()
                } else {
                    last + next_feed()
                });
                if bottoms.len() > 2 {
                    bottoms.pop_front();
                }
            }
            *height = sides.height(x - bottoms[0], bottoms[1] - x) * 1e3;
        }
        if let Some(noise) = self.noise {
            // Another stream, so that noise changes no feed.
            let mut draws = Draws::new(self.seed ^ 0x5bd1_e995_9d1b_58a3);
            for height in heights_um {
                *height += noise.um() * draws.normal();
            }
        }
        Ok(())
    }
}

/// Both sides of the tool, in millimetres, the steeper one leading.
struct Sides {
    r: f64,
    leading: Edge,
    trailing: Edge,
    /// Beyond 90 deg: the tangent of the angle by which the leading edge leans over.
    overhang: Option<f64>,
}

/// Where the arc ends, how high, and how steep the edge goes on.
struct Edge {
    end: f64,
    low: f64,
    slope: f64,
}

impl Sides {
    fn of(outline: &ToolOutline) -> Self {
        let r = outline.corner_radius().mm();
        let edges = outline.edges();
        let edge = |angle: f64| Edge {
            end: r * maths::sin(angle),
            low: r * versine(angle),
            slope: maths::tan(angle),
        };
        Self {
            r,
            leading: edge(edges.steep),
            trailing: edge(edges.flat),
            overhang: (edges.steep > FRAC_PI_2)
                .then(|| maths::tan(std::f64::consts::PI - edges.steep)),
        }
    }

    fn arc(&self, u: f64) -> f64 {
        u * u / (self.r + (self.r * self.r - u * u).max(0.0).sqrt())
    }

    /// The height between the bottom of a groove and that of the next one.
    fn height(&self, after: f64, before: f64) -> f64 {
        let up = |edge: &Edge, u: f64| {
            if u <= 0.0 {
                0.0
            } else if u <= edge.end {
                self.arc(u)
            } else {
                edge.low + (u - edge.end) * edge.slope
            }
        };
        let trailing = up(&self.trailing, before);
        let Some(lean) = self.overhang else {
            return trailing.min(up(&self.leading, after));
        };
        // Beyond 90 deg the tool fills only what lies between its arc and the leaning edge.
        if after > self.r {
            return trailing;
        }
        let (low, rise) = (
            self.arc(after),
            (self.r * self.r - after * after).max(0.0).sqrt(),
        );
        let top = if after >= self.leading.end {
            self.r + rise
        } else {
            self.leading.low + (self.leading.end - after) * lean
        };
        if low <= trailing && trailing <= top {
            low
        } else {
            trailing
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::finish::tests::{feed, tool};
    use crate::physics::finish::{theoretical_roughness, theoretical_shape};

    fn spacing(mm: f64) -> PointSpacing {
        PointSpacing::from_mm(mm).unwrap()
    }

    #[test]
    fn whole_feeds_have_the_theoretical_finish() {
        for (f, r, kappa, minor) in [
            (0.2, 0.8, 95.0, 10.0),
            (0.25, 0.8, 95.0, 5.0),
            (0.5, 0.4, 45.0, 20.0),
            (0.35, 0.4, 20.0, 75.0),
            (0.5, 0.05, 60.0, 30.0),
            (0.2, 0.0, 45.0, 15.0),
            (0.97, 0.2, 120.0, 25.0),
            (0.5, 0.05, 120.0, 25.0),
        ] {
            let points = 20_000;
            let mut heights = vec![0.0; points];
            TurnedProfile::new(feed(f), tool(r, kappa, minor))
                .write_um(spacing(5.0 * f / points as f64), &mut heights)
                .unwrap();
            let count = points as f64;
            let mean = heights.iter().sum::<f64>() / count;
            let moment = |n| heights.iter().map(|z| (z - mean).powi(n)).sum::<f64>() / count;
            let ra = heights.iter().map(|z| (z - mean).abs()).sum::<f64>() / count;
            let rq = f64::sqrt(moment(2));
            let finish = theoretical_roughness(feed(f), &tool(r, kappa, minor));
            let shape = theoretical_shape(feed(f), &tool(r, kappa, minor));
            let case = format!("{f} {r} {kappa} {minor}: {finish:?} {ra} {rq}");
            // 4000 points a groove: where it has a vertical side one of them, up to five R_a high, is
            // uncertain.
            assert!((ra / finish.ra.um() - 1.0).abs() < 2.5e-3, "{case}");
            assert!((rq / finish.rq.um() - 1.0).abs() < 2.5e-3, "{case}");
            assert!(
                (moment(3) / rq.powi(3) - shape.rsk.value()).abs() < 1e-2,
                "{case}"
            );
        }
    }

    #[test]
    fn noise_changes_no_feed_and_has_its_height() {
        let even = TurnedProfile::new(feed(0.1), tool(0.8, 95.0, 10.0))
            .with_feed_unevenness(FeedUnevenness::from_value(0.2).unwrap())
            .with_seed(11);
        let (mut clean, mut noisy) = (vec![0.0; 50_000], vec![0.0; 50_000]);
        even.write_um(spacing(0.001), &mut clean).unwrap();
        let rq = Rq::from_um(0.1).unwrap();
        even.with_noise(rq)
            .write_um(spacing(0.001), &mut noisy)
            .unwrap();
        let square = clean
            .iter()
            .zip(&noisy)
            .map(|(a, b)| (a - b) * (a - b))
            .sum::<f64>()
            / 5e4;
        // Four standard deviations of a mean square of 50000 draws: 4 sqrt(2/n).
        assert!((square / 0.01 - 1.0).abs() < 0.0253, "{square}");
        let mut other = vec![0.0; 50_000];
        even.with_seed(12)
            .write_um(spacing(0.001), &mut other)
            .unwrap();
        assert_ne!(clean, other);
    }

    #[test]
    fn what_is_no_height_is_refused_by_its_place() {
        for bad in [f64::NAN, f64::INFINITY, -1e6] {
            let error = Profile::from_um(spacing(0.001), &[0.0, 1.0, bad]).unwrap_err();
            assert_eq!(error.field(), "heights_um[2]");
        }
        assert!(Profile::from_um(spacing(0.001), &[]).is_err());
    }
}
