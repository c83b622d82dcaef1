//! What an uneven feed does to the finish.
//!
//! A hand turns the wheel now faster, now slower: the feeds f_i of the single turns differ. Every
//! groove is an arc of the same corner radius r = r_eps with its bottom on one line; the ridge between
//! two bottoms stands half-way, so that each ridge belongs to one feed.

use super::maths;
use super::outline_integrals::{Moments, half_groove};
use super::random::{share_above, upper_quantile};
use crate::error::{Error, ErrorKind};
use crate::quantity::{CornerRadius, Feed, FeedUnevenness, Quantity, Ra, Rq, Rt, WorkLength};

/// The roughness of a list of feeds.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct UnevenRoughness {
    /// Total height R_t: of the ridge of the largest feed.
    pub rt: Rt,
    /// Arithmetic mean height R_a.
    pub ra: Ra,
    /// Root mean square height R_q.
    pub rq: Rq,
}

/// The roughness that turns of these feeds leave, one after the other, exactly.
///
/// R_t = r - sqrt(r^2 - f_max^2 / 4); R_a and R_q by integrating the arcs over the sum of the feeds,
/// from one mean line
///
/// # Units
/// The types carry them.
/// # Range
/// The corner arc alone makes the finish: a minor cutting edge angle of at least asin(f_max / (2 r)).
/// The list is the whole evaluation length, or repeats. No filter is applied.
/// # Errors
/// `feeds`, when there is none; `feeds[i]`, when one is not less than twice the corner radius.
/// # Source
/// Derived: the lower envelope of arcs.
/// # Example
/// ```
/// use turnwright::{physics::uneven_feed::uneven_roughness, Feed};
/// let feeds = [0.1, 0.2].map(Feed::from_mm_per_rev).into_iter().collect::<Result<Vec<_>, _>>()?;
/// let finish = uneven_roughness(&feeds, "0.8 mm".parse()?)?;
/// assert!((finish.rt.um() - 6.2746).abs() < 1e-4);
/// assert!((finish.ra.um() - 1.3930).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn uneven_roughness(
    feeds: &[Feed],
    corner_radius: CornerRadius,
) -> Result<UnevenRoughness, Error> {
    let r = corner_radius.length();
    let Some(largest) = feeds.iter().max() else {
        return Err(Error::new(
            ErrorKind::MissingField,
            "feeds",
            "no feed",
            "the feed of every turn, one at least",
            "list the feeds in the order of the turns",
        ));
    };
    let too_coarse = feeds
        .iter()
        .position(|feed| feed.length_per_revolution() >= 2.0 * r);
    if let Some(at) = too_coarse {
        return Err(Error::new(
            ErrorKind::Contradiction,
            format!("feeds[{at}]"),
            feeds[at].to_string(),
            format!("less than twice the corner radius {corner_radius}"),
            "take smaller feeds, or a larger corner radius",
        ));
    }
    let half = |feed: &Feed| {
        let f = maths::number(feed.length_per_revolution() / r);
        (f, half_groove(1.0, f))
    };
    // All lengths over the corner radius.
    let (mut length, mut first, mut second) = (0.0, 0.0, 0.0);
    for feed in feeds {
        let (f, side) = half(feed);
        length += f;
        first += 2.0 * side.first;
        second += 2.0 * side.second;
    }
    let mean = first / length;
    let below: f64 = feeds
        .iter()
        .map(|feed| 2.0 * half(feed).1.below(mean))
        .sum();
    let square = second / length - mean * mean;
    Ok(UnevenRoughness {
        rt: Rt::computed(r * half(largest).1.top),
        ra: Ra::computed(r * (2.0 * below / length)),
        rq: Rq::computed(r * square.max(0.0).sqrt()),
    })
}

/// The largest unevenness that the normal law of the feeds is used for: beyond it too much of the
/// law would stand for turns that go backwards.
pub const LARGEST_UNEVENNESS: f64 = 0.5;

/// How the roughness of an uneven feed is spread.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct UnevenSpread {
    /// The number of turns in the evaluation length, at the mean feed.
    pub turns: f64,
    /// The share of the normal law that is cut off: feeds below zero and above twice the mean.
    pub cut_off_share: f64,
    /// Expected R_a.
    pub ra: Ra,
    /// In 5 of 100 evaluation lengths R_a is lower.
    pub ra_5: Ra,
    /// In half of them.
    pub ra_50: Ra,
    /// In 95 of 100.
    pub ra_95: Ra,
    /// In 5 of 100 evaluation lengths R_t is lower.
    pub rt_5: Rt,
    /// In half of them.
    pub rt_50: Rt,
    /// In 95 of 100.
    pub rt_95: Rt,
}

/// How R_t and R_a are spread when the feeds of the turns scatter about their mean.
///
/// f_i normal with mean f and standard deviation v f, within 0 < f_i < 2 f, n = l / f turns:
/// R_t is that of the largest feed, P(f_max < x) = F(x)^n;
/// R_a = 2 E(A) / f with A the area of a groove below the mean line, its variance over n turns
/// 4/(n f^2) Var(A - (R_a/2) f_i + w (I - m f_i)), I the area of the groove, m the mean line, w the
/// share of the surface below it
///
/// # Units
/// The types carry them.
/// # Range
/// Turns that do not depend on each other; unevenness up to [`LARGEST_UNEVENNESS`]. The law is cut
/// off alike on both sides, so that the mean feed stays what it was told; `cut_off_share` says how
/// much (0.1 % at v = 0.3). Quantiles of R_t are exact; those of R_a hold for many turns (within a few
/// per cent of R_a from ten turns on, tested against drawn profiles).
/// # Errors
/// `feed_unevenness`, above its range; `feed`, when it is not less than the corner radius (twice of it
/// would be no arc any more), or not a whole turn fits into the evaluation length.
/// # Source
/// Derived: order statistics, and the central limit theorem of a ratio of means.
/// # Example
/// ```
/// use turnwright::physics::uneven_feed::uneven_spread;
/// let spread = uneven_spread(
///     "0.2 mm/rev".parse()?,
///     "0.2".parse()?,
///     "0.8 mm".parse()?,
///     "4 mm".parse()?,
/// )?;
/// assert_eq!(spread.turns, 20.0);
/// assert!(spread.rt_5 < spread.rt_50 && spread.rt_50 < spread.rt_95);
/// assert!((spread.rt_50.um() - 11.728).abs() < 5e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn uneven_spread(
    feed: Feed,
    unevenness: FeedUnevenness,
    corner_radius: CornerRadius,
    evaluation_length: WorkLength,
) -> Result<UnevenSpread, Error> {
    let (f, r, v) = (
        feed.length_per_revolution(),
        corner_radius.length(),
        unevenness.value(),
    );
    if v > LARGEST_UNEVENNESS {
        return Err(Error::new(
            ErrorKind::OutOfRange,
            FeedUnevenness::ROW.name(),
            unevenness.to_string(),
            format!("at most {LARGEST_UNEVENNESS}, where the feeds follow a normal law"),
            "feed by power, or measure the feeds of the single turns and give them as a list",
        ));
    }
    let refused = |expected: String, remedy: &str| {
        Error::new(
            ErrorKind::Contradiction,
            Feed::ROW.name(),
            feed.to_string(),
            expected,
            remedy,
        )
    };
    if f >= r {
        return Err(refused(
            format!("less than the corner radius {corner_radius}"),
            "take a smaller feed, or a larger corner radius",
        ));
    }
    let turns = maths::number(evaluation_length.length() / f);
    if turns < 1.0 {
        return Err(refused(
            format!("at most the evaluation length {evaluation_length}"),
            "take a longer evaluation length",
        ));
    }
    let tail = if v > 0.0 { share_above(1.0 / v) } else { 0.0 };
    let mean = maths::number(f / r);
    let rt = |share: f64| {
        // What of the cut-off law lies above the largest feed: 1 - share^(1/n), all digits kept.
        let log = maths::ln(share) / turns;
        let above = one_minus_exp(log);
        let z = upper_quantile(tail + above * (1.0 - 2.0 * tail));
        let largest = mean * (1.0 + v * z);
        Rt::computed(r * half_groove(1.0, largest).top)
    };
    let (ra, deviation) = mean_and_deviation(mean, v, turns);
    let ra_at = |z: f64| Ra::computed(r * (ra + z * deviation).max(0.0));
    let five = upper_quantile(0.05);
    Ok(UnevenSpread {
        turns,
        cut_off_share: 2.0 * tail,
        ra: ra_at(0.0),
        ra_5: ra_at(-five),
        ra_50: ra_at(0.0),
        ra_95: ra_at(five),
        rt_5: rt(0.05),
        rt_50: rt(0.5),
        rt_95: rt(0.95),
    })
}

/// 1 - e^x for x below zero, also where e^x is nearly one.
fn one_minus_exp(x: f64) -> f64 {
    if x < -0.01 {
        return 1.0 - maths::exp(x);
    }
    // Eight terms of the series: the next is below 1e-22.
    -(1..9)
        .rev()
        .fold(0.0, |sum, k| (sum + 1.0) * x / f64::from(k))
}

/// Expected R_a and its standard deviation over so many turns; lengths over the corner radius.
fn mean_and_deviation(mean_feed: f64, v: f64, turns: f64) -> (f64, f64) {
    // The normal law within 1/v by Simpson's rule; six deviations hold all of it that a double sees.
    const STEPS: u32 = 240;
    let most = if v > 0.0 { f64::min(1.0 / v, 6.0) } else { 0.0 };
    let grooves: Vec<(f64, f64, Moments)> = (0..=STEPS)
        .map(|step| {
            let z = most * (2.0 * f64::from(step) / f64::from(STEPS) - 1.0);
            let simpson = match step {
                0 | STEPS => 1.0,
                odd if odd % 2 == 1 => 4.0,
                _ => 2.0,
            };
            // A feed of nothing leaves no groove; a millionth of the mean stands for it.
            let f = mean_feed * f64::max(1.0 + v * z, 1e-6);
            (simpson * maths::exp(-z * z / 2.0), f, half_groove(1.0, f))
        })
        .collect();
    let whole: f64 = grooves.iter().map(|(weight, ..)| weight).sum();
    let expected = |of: &dyn Fn(f64, &Moments) -> f64| {
        grooves
            .iter()
            .map(|(weight, f, side)| weight * of(*f, side))
            .sum::<f64>()
            / whole
    };
    let length = expected(&|f, _| f);
    let mean = expected(&|_, side| 2.0 * side.first) / length;
    let ra = 2.0 * expected(&|_, side| 2.0 * side.below(mean)) / length;
    let share_below = expected(&|_, side| 2.0 * side.width_below(mean)) / length;
    let variance = expected(&|f, side| {
        let excess =
            2.0 * side.below(mean) - ra / 2.0 * f + share_below * (2.0 * side.first - mean * f);
        excess * excess
    });
    (ra, 2.0 * (variance / turns).sqrt() / length)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::finish::arc_roughness;
    use crate::physics::finish::tests::{feed, near};
    use crate::physics::random::Draws;
    use proptest::prelude::*;

    fn corner(mm: f64) -> CornerRadius {
        CornerRadius::from_mm(mm).unwrap()
    }

    fn spread(f: f64, v: f64, r: f64, l: f64) -> UnevenSpread {
        let v = FeedUnevenness::from_value(v).unwrap();
        uneven_spread(feed(f), v, corner(r), WorkLength::from_mm(l).unwrap()).unwrap()
    }

    /// R_t and R_a of drawn evaluation lengths, each sorted.
    fn drawn(f: f64, v: f64, r: f64, turns: usize, times: usize) -> [Vec<f64>; 2] {
        let mut draws = Draws::new(20);
        let (mut rt, mut ra): (Vec<f64>, Vec<f64>) = (0..times)
            .map(|_| {
                let feeds: Vec<Feed> = (0..turns)
                    .map(|_| Feed::computed_trade(f * (1.0 + v * draws.normal_within(1.0 / v))))
                    .collect();
                let finish = uneven_roughness(&feeds, corner(r)).unwrap();
                (finish.rt.um(), finish.ra.um())
            })
            .unzip();
        rt.sort_by(f64::total_cmp);
        ra.sort_by(f64::total_cmp);
        [rt, ra]
    }

    #[test]
    fn drawn_profiles_are_spread_as_reckoned() {
        for (f, v, turns) in [
            (0.2, 0.2, 20),
            (0.1, 0.3, 40),
            (0.15, 0.1, 10),
            (0.2, 0.45, 30),
        ] {
            let times = 4000;
            let [rt, ra] = drawn(f, v, 0.8, turns, times);
            let found = spread(f, v, 0.8, f * turns as f64);
            let case = format!("{f} {v} {turns}: {found:?}");
            // 4000 draws: a 5 % quantile lies within 1.4 % of its share, four deviations.
            let share = |list: &[f64], value: f64| {
                list.partition_point(|x| *x < value) as f64 / times as f64
            };
            for (value, wanted) in [(found.rt_5, 0.05), (found.rt_50, 0.5), (found.rt_95, 0.95)] {
                let off: f64 = share(&rt, value.um()) - wanted;
                let four = 4.0 * f64::sqrt(wanted * (1.0 - wanted) / times as f64);
                assert!(off.abs() < four, "rt {wanted} off by {off}: {case}");
            }
            let mean = ra.iter().sum::<f64>() / times as f64;
            // Of the order 1/n of the spread is not in the limit for many turns.
            assert!(near(found.ra.um(), mean, 0.02), "{mean}: {case}");
            for (value, at) in [(found.ra_5, 0.05), (found.ra_50, 0.5), (found.ra_95, 0.95)] {
                let wanted = ra[(at * times as f64) as usize];
                assert!(near(value.um(), wanted, 0.05), "ra {at} {wanted}: {case}");
            }
        }
    }

    #[test]
    fn an_even_feed_leaves_the_even_finish() {
        let even = arc_roughness(feed(0.2), corner(0.8)).unwrap();
        let found = spread(0.2, 0.0, 0.8, 4.0);
        for rt in [found.rt_5, found.rt_50, found.rt_95] {
            assert!(near(rt.um(), even.rt.um(), 1e-12));
        }
        for ra in [found.ra, found.ra_5, found.ra_95] {
            // R_a is a difference of areas: its variance comes out as a rounding rest.
            assert!(near(ra.um(), even.ra.um(), 1e-12), "{ra} {}", even.ra);
        }
        let list = uneven_roughness(&[feed(0.2); 7], corner(0.8)).unwrap();
        assert!(near(list.ra.um(), even.ra.um(), 1e-12));
        assert!(near(list.rq.um(), even.rq.um(), 1e-11));
    }

    #[test]
    fn a_little_unevenness_adds_its_square() {
        // E(ybar) ~ (f^2/24 r)(1 + 3 v^2) to the first order, derived; R_a follows it about.
        let (even, uneven) = (spread(0.1, 0.0, 3.2, 4.0), spread(0.1, 0.1, 3.2, 4.0));
        let more = uneven.ra.um() / even.ra.um() - 1.0;
        assert!((0.02..0.05).contains(&more), "{more}");
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        assert_eq!(
            uneven_roughness(&[], corner(0.8)).unwrap_err().field(),
            "feeds"
        );
        let list = uneven_roughness(&[feed(0.1), feed(0.5)], corner(0.2));
        assert_eq!(list.unwrap_err().field(), "feeds[1]");
        for (f, v, r, l, field) in [
            (0.2, 0.6, 0.8, 4.0, "feed_unevenness"),
            (0.2, 0.2, 0.2, 4.0, "feed"),
            (0.5, 0.2, 0.8, 0.4, "feed"),
        ] {
            let v = FeedUnevenness::from_value(v).unwrap();
            let l = WorkLength::from_mm(l).unwrap();
            let refused = uneven_spread(feed(f), v, corner(r), l);
            assert_eq!(refused.unwrap_err().field(), field);
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn the_order_of_the_turns_does_not_matter(mut feeds in prop::collection::vec(0.01..0.5_f64, 1..20)) {
            let list = |feeds: &[f64]| feeds.iter().map(|f| feed(*f)).collect::<Vec<_>>();
            let there = uneven_roughness(&list(&feeds), corner(0.8)).unwrap();
            feeds.reverse();
            let back = uneven_roughness(&list(&feeds), corner(0.8)).unwrap();
            prop_assert!(near(there.ra.um(), back.ra.um(), 1e-12));
            prop_assert!(near(there.rq.um(), back.rq.um(), 1e-9));
            prop_assert!(there.rt == back.rt);
            prop_assert!(there.ra.um() <= there.rq.um() && there.rq.um() <= there.rt.um());
        }

        #[test]
        fn more_unevenness_is_rougher(v in 0.01..0.4_f64, l in 2.0..40.0_f64) {
            let (less, more) = (spread(0.2, v, 0.8, l), spread(0.2, v + 0.05, 0.8, l));
            prop_assert!(less.rt_50 < more.rt_50 && less.ra < more.ra);
            prop_assert!(spread(0.2, v, 0.8, 2.0 * l).rt_50 > less.rt_50);
        }
    }
}
