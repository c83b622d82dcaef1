//! The profile that feed and corner leave, integrated in closed form; all lengths over the feed.
//!
//! One groove has two sides, each an arc and a piece of straight edge; R_a and R_q come from the
//! integrals of the height and of its square along both.

use std::f64::consts::{FRAC_PI_2, PI};

use super::finish::FinishRegime;
use super::maths;

/// 1 - cos x, without the difference of nearly equal numbers.
pub(super) fn versine(x: f64) -> f64 {
    let half = maths::sin(x / 2.0);
    2.0 * half * half
}

/// A profile's heights over the feed.
pub(super) struct Profile {
    pub(super) regime: FinishRegime,
    pub(super) rt: f64,
    pub(super) ra: f64,
    pub(super) rq: f64,
}

/// How the heights of a profile are spread about its mean line.
pub(super) struct Shape {
    pub(super) skewness: f64,
    pub(super) kurtosis: f64,
}

/// The two edges in radians, the steeper one leading.
pub(super) struct Edges {
    pub(super) steep: f64,
    pub(super) flat: f64,
    pub(super) included: f64,
    pub(super) mirrored: bool,
}

impl Edges {
    /// cot kappa_r + cot kappa_r' = sin(kappa_r + kappa_r') / (sin kappa_r sin kappa_r')
    pub(super) fn cotangents(&self) -> f64 {
        maths::sin(self.included) / (maths::sin(self.steep) * maths::sin(self.flat))
    }

    /// tan(kappa_r / 2) + tan(kappa_r' / 2): over r, what the rounding takes from the feed.
    pub(super) fn tangents(&self) -> f64 {
        maths::tan(self.steep / 2.0) + maths::tan(self.flat / 2.0)
    }

    /// The profile, all lengths over the feed; `r` is the corner radius over the feed.
    pub(super) fn profile(&self, r: f64) -> Profile {
        if self.arc_alone(r) {
            return arc_profile(r);
        }
        let (regime, rt, seen) = self.seen(r);
        match seen {
            Seen::Both(leading, trailing) => {
                let mean = leading.first + trailing.first;
                let square = leading.second + trailing.second - mean * mean;
                Profile {
                    regime,
                    rt,
                    ra: 2.0 * (leading.below(mean) + trailing.below(mean)),
                    rq: square.max(0.0).sqrt(),
                }
            }
            Seen::Saw(height) => Profile {
                regime,
                rt,
                ra: height / 4.0,
                rq: height / 12.0_f64.sqrt(),
            },
        }
    }

    /// Skewness and kurtosis of the same profile.
    pub(super) fn shape(&self, r: f64) -> Shape {
        if self.arc_alone(r) {
            return arc_shape(r);
        }
        match self.seen(r).2 {
            Seen::Both(leading, trailing) => shape(&[&leading, &trailing]),
            Seen::Saw(_) => Shape {
                skewness: 0.0,
                kurtosis: 9.0 / 5.0,
            },
        }
    }

    fn arc_alone(&self, r: f64) -> bool {
        1.0 <= 2.0 * r * maths::sin(self.flat)
    }

    /// Regime and height where an edge shows, and what a stylus sees.
    fn seen(&self, r: f64) -> (FinishRegime, f64, Seen) {
        let sin_flat = maths::sin(self.flat);
        let with_arc = 1.0 <= r * versine(self.steep + self.flat) / sin_flat;
        // The ridge: its height, and its distance from the groove that the steep edge made.
        let (rt, x_ridge, phi) = if with_arc {
            let phi = 2.0 * maths::asin((sin_flat / (2.0 * r)).sqrt().min(1.0)) - self.flat;
            (r * versine(phi), r * maths::sin(phi), phi)
        } else {
            let rt = (1.0 - r * self.tangents()) / self.cotangents();
            let above = (rt - r * versine(self.steep)).max(0.0);
            let (sin, cos) = (maths::sin(self.steep), maths::cos(self.steep));
            (rt, r * sin + above * cos / sin, self.steep)
        };
        let regime = match (with_arc, self.mirrored) {
            (false, _) => FinishRegime::Edges,
            (true, false) => FinishRegime::ArcAndMinorEdge,
            (true, true) => FinishRegime::ArcAndMajorEdge,
        };
        let steep = Side {
            r,
            edge: self.steep,
        };
        let flat = Side { r, edge: self.flat };
        let seen = if phi <= FRAC_PI_2 {
            Seen::Both(steep.up_to(x_ridge, rt), flat.up_to(1.0 - x_ridge, rt))
        } else {
            // The ridge overhangs: a stylus falls from its tip straight down.
            self.overhang(r, rt, x_ridge, phi, with_arc)
        };
        (regime, rt, seen)
    }

    fn overhang(&self, r: f64, rt: f64, x_ridge: f64, phi: f64, with_arc: bool) -> Seen {
        let flat = Side { r, edge: self.flat };
        let trailing = flat.up_to(1.0 - x_ridge, rt);
        if x_ridge >= 0.0 {
            // Below the tip, on the leading side, only the lower part of the arc is seen.
            let low = if with_arc {
                PI - phi
            } else {
                maths::asin((x_ridge / r).min(1.0))
            };
            let lower = Side { r, edge: low };
            return Seen::Both(lower.up_to(x_ridge, r * versine(low)), trailing);
        }
        // The tip hangs over the groove's bottom: the flat edge alone is seen, from below the tip
        // to the next tip.
        let hidden = -x_ridge;
        if hidden >= r * maths::sin(self.flat) {
            return Seen::Saw(maths::tan(self.flat));
        }
        let low = maths::asin((hidden / r).min(1.0));
        let covered = Side { r, edge: low }.up_to(hidden, r * versine(low));
        Seen::Both(covered.taken_away(), trailing)
    }
}

/// What a stylus sees where the ridge overhangs.
enum Seen {
    /// Two sides.
    Both(Moments, Moments),
    /// A saw of straight lines of that height.
    Saw(f64),
}

/// The arc alone: `r` is the corner radius over the feed, at least a half.
pub(super) fn arc_profile(r: f64) -> Profile {
    let half = 0.5 / r;
    let phi = maths::asin(half.min(1.0));
    let side = Side { r, edge: phi };
    let rt = r * versine(phi);
    let moments = side.up_to(0.5, rt);
    let mean = 2.0 * moments.first;
    let square = 2.0 * moments.second - mean * mean;
    Profile {
        regime: FinishRegime::Arc,
        // (f^2/4) / (r + sqrt(r^2 - f^2/4)), as arc_height has it.
        rt: 0.25 / (r + (r * r - 0.25).max(0.0).sqrt()),
        ra: 4.0 * moments.below(mean),
        rq: square.max(0.0).sqrt(),
    }
}

/// Skewness and kurtosis of the arc alone.
pub(super) fn arc_shape(r: f64) -> Shape {
    let half = half_groove(r, 1.0);
    shape(&[&half, &half])
}

/// Half of a groove of the arc alone, from its bottom to the ridge at half the feed.
pub(super) fn half_groove(r: f64, feed: f64) -> Moments {
    let phi = maths::asin((0.5 * feed / r).min(1.0));
    Side { r, edge: phi }.up_to(0.5 * feed, r * versine(phi))
}

/// The third and fourth moments about the mean line, over the powers of R_q.
fn shape(sides: &[&Moments; 2]) -> Shape {
    let width = sides[0].seen_width() + sides[1].seen_width();
    let mean = (sides[0].first + sides[1].first) / width;
    let moment = |power| {
        sides
            .iter()
            .map(|side| side.central(mean, power))
            .sum::<f64>()
            / width
    };
    let square: f64 = moment(2);
    Shape {
        skewness: moment(3) / (square * square.sqrt()),
        kurtosis: moment(4) / (square * square),
    }
}

/// Half of the abscissae of Gauss and Legendre with ten points, and their weights: Abramowitz and
/// Stegun, Handbook of Mathematical Functions, table 25.4, from memory; `weights_integrate` holds them.
const GAUSS_LEGENDRE: [(f64, f64); 5] = [
    (0.148_874_338_981_631_21, 0.295_524_224_714_752_87),
    (0.433_395_394_129_247_2, 0.269_266_719_309_996_35),
    (0.679_409_568_299_024_4, 0.219_086_362_515_982_04),
    (0.865_063_366_688_984_5, 0.149_451_349_150_580_6),
    (0.973_906_528_517_171_7, 0.066_671_344_308_688_14),
];

fn integral(from: f64, to: f64, f: impl Fn(f64) -> f64) -> f64 {
    let (middle, half) = ((from + to) / 2.0, (to - from) / 2.0);
    let sum: f64 = GAUSS_LEGENDRE
        .iter()
        .map(|(x, w)| w * (f(middle - half * x) + f(middle + half * x)))
        .sum();
    half * sum
}

/// One side of a groove: the arc up to the angle of the edge, then the edge.
#[derive(Clone, Copy)]
struct Side {
    r: f64,
    edge: f64,
}

impl Side {
    /// The integrals of the height and of its square from the bottom to the ridge.
    fn up_to(self, x_ridge: f64, height: f64) -> Moments {
        let Self { r, edge } = self;
        let low = r * versine(edge);
        let (first, second) = if height <= low {
            // The ridge stands on the arc. Its angle comes from the height, which keeps all digits.
            let phi = 2.0 * maths::asin((height / (2.0 * r)).sqrt().min(1.0));
            (r * r * arc_first(phi), r * r * r * arc_second(phi))
        } else {
            let w = x_ridge - r * maths::sin(edge);
            let (mean, square) = (
                (low + height) / 2.0,
                (low * low + low * height + height * height) / 3.0,
            );
            (
                r * r * arc_first(edge) + w * mean,
                r * r * r * arc_second(edge) + w * square,
            )
        };
        Moments {
            side: self,
            sign: 1.0,
            top: height,
            width: x_ridge,
            first,
            second,
        }
    }
}

/// The integrals of a side of the groove, up to its ridge.
pub(super) struct Moments {
    side: Side,
    sign: f64,
    pub(super) top: f64,
    width: f64,
    pub(super) first: f64,
    pub(super) second: f64,
}

impl Moments {
    /// The same, to be taken away from the other side: what hides below an overhanging tip.
    fn taken_away(self) -> Self {
        Self {
            sign: -1.0,
            first: -self.first,
            second: -self.second,
            ..self
        }
    }

    fn seen_width(&self) -> f64 {
        self.sign * self.width
    }

    /// How far from the bottom the profile stays below a line.
    pub(super) fn width_below(&self, line: f64) -> f64 {
        let Side { r, edge } = self.side;
        if line >= self.top {
            return self.width;
        }
        let theta = 2.0 * maths::asin((line / (2.0 * r)).sqrt().min(1.0));
        r * maths::sin(theta.min(edge))
    }

    /// The integral of a power of the height above the mean line, by Gauss and Legendre along the
    /// angle of the arc: the heights themselves lose no digits in it, as those of a difference of
    /// higher moments would.
    fn central(&self, mean: f64, power: i32) -> f64 {
        let Side { r, edge } = self.side;
        let low = r * versine(edge);
        let phi = if self.top <= low {
            2.0 * maths::asin((self.top / (2.0 * r)).sqrt().min(1.0))
        } else {
            edge
        };
        // Two pieces of arc: the integrand is smooth, and ten points on each give all digits.
        let arc = |from, to| {
            integral(from, to, |theta| {
                (r * versine(theta) - mean).powi(power) * r * maths::cos(theta)
            })
        };
        let mut sum = arc(0.0, phi / 2.0) + arc(phi / 2.0, phi);
        if self.top > low {
            let w = self.width - r * maths::sin(edge);
            sum += integral(0.0, 1.0, |share| {
                (low + share * (self.top - low) - mean).powi(power)
            }) * w;
        }
        self.sign * sum
    }

    /// The area between the profile and a mean line above it.
    pub(super) fn below(&self, mean: f64) -> f64 {
        let Side { r, edge } = self.side;
        let area = if mean >= self.top {
            mean * self.width - self.sign * self.first
        } else if mean <= r * versine(edge) {
            let theta = 2.0 * maths::asin((mean / (2.0 * r)).sqrt().min(1.0));
            mean * r * maths::sin(theta) - r * r * arc_first(theta)
        } else {
            let low = r * versine(edge);
            let sin = maths::sin(edge);
            let w = (mean - low) * (maths::cos(edge) / sin);
            mean * (r * sin + w) - r * r * arc_first(edge) - w * (low + mean) / 2.0
        };
        self.sign * area
    }
}

/// The integral of (1 - cos t) cos t from 0 to theta: sin theta - theta/2 - sin(2 theta)/4.
fn arc_first(theta: f64) -> f64 {
    if theta > 1.0 {
        return maths::sin(theta) - theta / 2.0 - maths::sin(2.0 * theta) / 4.0;
    }
    // (-1)^(k+1) (2^(2k-1) - 1) theta^(2k+1) / (2k+1)!
    let square = theta * theta;
    let (mut term, mut four, mut sum) = (theta, 0.5, 0.0);
    for k in 1..14 {
        let n = 2.0 * f64::from(k);
        term *= -square / (n * (n + 1.0));
        four *= 4.0;
        sum -= term * (four - 1.0);
        if term.abs() * four < 1e-18 * sum {
            break;
        }
    }
    sum
}

/// The integral of (1 - cos t)^2 cos t from 0 to theta:
/// 7/4 sin theta - theta - sin(2 theta)/2 + sin(3 theta)/12.
fn arc_second(theta: f64) -> f64 {
    if theta > 1.0 {
        return 1.75 * maths::sin(theta) - theta - maths::sin(2.0 * theta) / 2.0
            + maths::sin(3.0 * theta) / 12.0;
    }
    // (-1)^k (7/4 - 4^k + 9^k/4) theta^(2k+1) / (2k+1)!, zero for k = 0 (with -theta) and k = 1.
    let square = theta * theta;
    let (mut term, mut four, mut nine, mut sum) = (theta * square / -6.0, 4.0, 2.25, 0.0);
    for k in 2..18 {
        let n = 2.0 * f64::from(k);
        term *= -square / (n * (n + 1.0));
        four *= 4.0;
        nine *= 9.0;
        sum += term * (1.75 - four + nine);
        if term.abs() * nine < 1e-18 * sum {
            break;
        }
    }
    sum
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_integrate() {
        // The integral of x^n from 0 to 1 is 1/(n + 1), exactly up to n = 19, derived.
        for n in 0..20 {
            let got = integral(0.0, 1.0, |x| x.powi(n));
            assert!((got * f64::from(n + 1) - 1.0).abs() < 1e-14, "{n}: {got}");
        }
    }
}
