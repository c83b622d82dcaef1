//! What a feed below the least chip does to the finish.
//!
//! The edge is not infinitely sharp: a chip thinner than h_min is not cut but pressed down, and
//! stands up again as a ridge. Symbols: f feed, r = r_eps corner radius, h_min least chip thickness,
//! r_n radius of the rounded edge, beta angle of friction.

use std::f64::consts::FRAC_PI_4;

use uom::si::f64::Length;

use super::engagement;
use super::maths;
use super::outline_integrals::versine;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{ChipThickness, CornerRadius, EdgeRadius, Feed, FrictionAngle, Quantity, Rt};

/// Half of the right angle at which the work's flow is taken to part at the edge, in degrees.
pub const STAGNATION_ANGLE: Sourced<f64> = Sourced::new(
    45.0,
    "from memory of L'vov: stagnation at 45 deg, unverified page",
    Standing::FromMemory,
);

/// The angle at which the edge neither cuts nor presses, in degrees.
pub const NEUTRAL_ANGLE: Sourced<f64> = Sourced::new(
    37.6,
    "from memory of Basuray, Misra and Lal 1977, Wear 43, unverified page",
    Standing::FromMemory,
);

/// The largest edge radius for which a least chip in proportion to it is taken for true.
///
/// A coated insert with an edge of 40 um would by 0.3 r_n never turn better than Rt 12 um, and does.
pub const LARGEST_EDGE_IN_PROPORTION: Sourced<EdgeRadius> = Sourced::new(
    EdgeRadius::computed_trade(0.02),
    "judgement, no source: above it coated inserts turn finer than the proportion says",
    Standing::Estimate,
);

/// How the least chip thickness follows from the radius of the rounded edge.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum LeastChipModel {
    /// h_min = 0.3 r_n, between 0.2 and 0.4 (common practice, no source).
    Practice,
    /// h_min = r_n (1 - cos 45 deg): the flow parts half-way round the edge.
    Stagnation,
    /// h_min = r_n (1 - cos 37.6 deg): the neutral point of the rounded edge.
    Neutral,
    /// h_min = r_n (1 - cos(45 deg - beta/2)): friction lets a thinner chip flow.
    Friction(FrictionAngle),
}

impl LeastChipModel {
    /// The name of the model.
    ///
    /// ```
    /// use turnwright::physics::least_chip::LeastChipModel;
    /// assert_eq!(LeastChipModel::Practice.name(), "practice");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Practice => "practice",
            Self::Stagnation => "stagnation",
            Self::Neutral => "neutral",
            Self::Friction(_) => "friction",
        }
    }
}

/// The least thickness of chip that an edge of this radius cuts, by one of four models.
///
/// h_min = 0.3 r_n, or h_min = r_n (1 - cos theta) with theta 45 deg, 37.6 deg or 45 deg - beta/2
///
/// # Units
/// The types carry them.
/// # Range
/// Edges up to [`LARGEST_EDGE_IN_PROPORTION`]; a larger honed edge turns finer than this says, so
/// that a measured h_min is to be preferred there.
/// # Source
/// Practice: [`LEAST_CHIP_OVER_EDGE_RADIUS`](engagement::LEAST_CHIP_OVER_EDGE_RADIUS). 45 deg:
/// [`STAGNATION_ANGLE`]. 37.6 deg: [`NEUTRAL_ANGLE`]. Friction: Son et al. 2005, Int. J. Machine Tools
/// and Manufacture 45 (from memory).
/// # Example
/// ```
/// use turnwright::physics::least_chip::{least_chip, LeastChipModel};
/// let edge = "20 um".parse()?;
/// assert!((least_chip(edge, LeastChipModel::Practice).mm() - 0.006).abs() < 1e-12);
/// assert!((least_chip(edge, LeastChipModel::Stagnation).mm() - 0.005858).abs() < 1e-6);
/// let slippery = LeastChipModel::Friction("30 deg".parse()?);
/// assert!((least_chip(edge, slippery).mm() - 0.002679).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn least_chip(edge_radius: EdgeRadius, model: LeastChipModel) -> ChipThickness {
    by_share(edge_radius, over_edge_radius(model))
}

/// The same by its share of the edge radius, which of one model is the same for every edge.
pub(crate) fn by_share(edge_radius: EdgeRadius, share: f64) -> ChipThickness {
    ChipThickness::computed(edge_radius.length() * share)
}

/// The least thickness of chip over the edge radius.
pub(crate) fn over_edge_radius(model: LeastChipModel) -> f64 {
    match model {
        LeastChipModel::Practice => engagement::LEAST_CHIP_OVER_EDGE_RADIUS.value,
        LeastChipModel::Stagnation => versine(STAGNATION_ANGLE.value.to_radians()),
        LeastChipModel::Neutral => versine(NEUTRAL_ANGLE.value.to_radians()),
        LeastChipModel::Friction(beta) => versine(FRAC_PI_4 - maths::radians(beta.angle()) / 2.0),
    }
}

/// On which side of its best feed a finish with a least chip lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum LeastChipRegime {
    /// At the best feed or above: the formula holds.
    Cutting,
    /// Below the best feed: outside the formula's range. A finer feed makes the finish worse, but by
    /// less than the formula says, which grows without end there.
    BelowBestFeed,
}

impl LeastChipRegime {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Cutting => "cutting",
            Self::BelowBestFeed => "below_best_feed",
        }
    }
}

/// The height that a feed leaves where the chip has a least thickness.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LeastChipRoughness {
    /// Whether the formula holds at this feed.
    pub regime: LeastChipRegime,
    /// Total height R_t by the formula, in either regime.
    pub rt: Rt,
    /// The feed f* that leaves the least height.
    pub best_feed: Feed,
}

/// The total height that a feed leaves on a corner radius when chips thinner than h_min do not form.
///
/// R_t = f^2 / (8 r) + (h_min / 2) (1 + r h_min / f^2)
///
/// # Units
/// The types carry them.
/// # Range
/// Feeds from f* = sqrt(2 r h_min) on, where the corner arc makes the finish (small f against r: the
/// arc is taken as a parabola). Below f* the formula diverges; its value is returned with the regime
/// [`BelowBestFeed`](LeastChipRegime::BelowBestFeed).
/// # Errors
/// `corner_radius`, when it is zero.
/// # Source
/// Brammertz 1961, Industrie-Anzeiger 83 (from memory); derived again: the local thickness reaches h_min at
/// x = r h_min / f - f/2, where the last turn's surface stands at the height above.
/// # Example
/// ```
/// use turnwright::physics::least_chip::{roughness_with_least_chip, LeastChipRegime};
/// let (corner, least) = ("0.8 mm".parse()?, "5 um".parse()?);
/// let finish = roughness_with_least_chip("0.1 mm/rev".parse()?, corner, least)?;
/// assert_eq!(finish.rt.to_string(), "5.0625 um");
/// let finer = roughness_with_least_chip("0.03 mm/rev".parse()?, corner, least)?;
/// assert!(finer.rt > finish.rt);
/// assert_eq!(finer.regime, LeastChipRegime::BelowBestFeed);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[inline]
pub fn roughness_with_least_chip(
    feed: Feed,
    corner_radius: CornerRadius,
    least: ChipThickness,
) -> Result<LeastChipRoughness, Error> {
    let (f, r, h_min) = (
        feed.length_per_revolution(),
        corner_radius.length(),
        least.length(),
    );
    if r <= Length::default() {
        return Err(sharp(corner_radius));
    }
    let best_feed = best_feed(corner_radius, least);
    let rubbed = maths::number(r / f) * maths::number(h_min / f);
    let rt = f * maths::number(f / (8.0 * r)) + h_min / 2.0 * (1.0 + rubbed);
    Ok(LeastChipRoughness {
        regime: if feed < best_feed {
            LeastChipRegime::BelowBestFeed
        } else {
            LeastChipRegime::Cutting
        },
        rt: Rt::computed(rt),
        best_feed,
    })
}

#[cold]
#[inline(never)]
fn sharp(corner_radius: CornerRadius) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "corner_radius",
        corner_radius.to_string(),
        "a corner radius above zero",
        "give the corner radius of the tool; every real corner has one",
    )
}

/// The feed that leaves the least height where the chip has a least thickness; that height is h_min.
///
/// f* = sqrt(2 r h_min)
///
/// # Units
/// The types carry them.
/// # Range
/// As [`roughness_with_least_chip`].
/// # Source
/// Brammertz 1961, Industrie-Anzeiger 83 (from memory); the minimum over the feed, derived.
/// # Example
/// ```
/// use turnwright::physics::least_chip::best_feed;
/// let feed = best_feed("0.8 mm".parse()?, "5 um".parse()?);
/// assert!((feed.mm_per_rev() - 0.08944).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn best_feed(corner_radius: CornerRadius, least: ChipThickness) -> Feed {
    let (r, h_min) = (corner_radius.length(), least.length());
    Feed::computed((2.0 * r * h_min).sqrt())
}

/// The feed that leaves a total height where the chip has a least thickness: the coarser of the two.
///
/// f^2 = s + sqrt(s^2 - 4 r^2 h_min^2), s = 4 r (R_t - h_min / 2)
///
/// # Units
/// The types carry them.
/// # Range
/// The branch from the best feed on, where the formula holds.
/// # Errors
/// `rt`, when it is below h_min, which no feed can leave, or when no plausible feed leaves it;
/// `corner_radius`, when it is zero.
/// # Source
/// Brammertz 1961, Industrie-Anzeiger 83 (from memory); inverted.
/// # Example
/// ```
/// use turnwright::physics::least_chip::feed_with_least_chip;
/// let feed = feed_with_least_chip("8 um".parse()?, "0.8 mm".parse()?, "4 um".parse()?)?;
/// assert!((feed.mm_per_rev() - 0.19314).abs() < 1e-5);
/// assert!(feed_with_least_chip("3 um".parse()?, "0.8 mm".parse()?, "4 um".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_with_least_chip(
    rt: Rt,
    corner_radius: CornerRadius,
    least: ChipThickness,
) -> Result<Feed, Error> {
    let (height, r, h_min) = (rt.length(), corner_radius.length(), least.length());
    if r <= Length::default() {
        return Err(sharp(corner_radius));
    }
    if height < h_min {
        return Err(Error::new(
            ErrorKind::Impossible,
            "rt",
            rt.to_string(),
            format!("at least the least chip thickness {least}, the best that any feed leaves"),
            "take a sharper edge, or polish",
        ));
    }
    let s = 4.0 * r * (height - h_min / 2.0);
    // s - 2 r h_min = 4 r (R_t - h_min), which keeps its digits near the best feed.
    let root = ((4.0 * r * (height - h_min)) * (s + 2.0 * r * h_min)).sqrt();
    let feed = Feed::computed((s + root).sqrt());
    if Feed::ROW.accepts(feed.trade()) {
        Ok(feed)
    } else {
        Err(Error::new(
            ErrorKind::Contradiction,
            "rt",
            rt.to_string(),
            format!(
                "a height that a feed from {} to {} mm/rev leaves with this corner",
                Feed::ROW.least(),
                Feed::ROW.largest()
            ),
            "check the unit of the roughness, and the corner radius",
        ))
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::finish::arc_height;
    use crate::physics::finish::tests::{feed, near};
    use proptest::prelude::*;

    fn corner(mm: f64) -> CornerRadius {
        CornerRadius::from_mm(mm).unwrap()
    }

    fn least(mm: f64) -> ChipThickness {
        ChipThickness::from_mm(mm).unwrap()
    }

    #[test]
    fn models_keep_to_what_practice_says() {
        // Common practice, no source: 0.2 to 0.4 of the edge radius.
        let edge = EdgeRadius::from_mm(0.01).unwrap();
        for model in [
            LeastChipModel::Practice,
            LeastChipModel::Stagnation,
            LeastChipModel::Neutral,
        ] {
            let share = least_chip(edge, model).mm() / 0.01;
            assert!((0.2..0.4).contains(&share), "{}: {share}", model.name());
        }
        let rough = LeastChipModel::Friction(FrictionAngle::from_degrees(0.0).unwrap());
        let same = least_chip(edge, LeastChipModel::Stagnation).mm();
        assert!(near(least_chip(edge, rough).mm(), same, 1e-14));
    }

    #[test]
    fn what_no_feed_leaves_is_refused() {
        let refused = feed_with_least_chip(Rt::from_um(4.9).unwrap(), corner(0.8), least(0.005));
        assert_eq!(refused.unwrap_err().field(), "rt");
        let refused = feed_with_least_chip(Rt::from_um(6.0).unwrap(), corner(0.0), least(0.005));
        assert_eq!(refused.unwrap_err().field(), "corner_radius");
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn the_best_feed_leaves_the_least_height(r in 0.05..3.0_f64, h in 0.0005..0.02_f64, off in 0.2..5.0_f64) {
            let best = best_feed(corner(r), least(h));
            let at_best = roughness_with_least_chip(best, corner(r), least(h)).unwrap();
            prop_assert!(near(at_best.rt.um(), h * 1e3, 1e-12));
            prop_assert_eq!(at_best.regime, LeastChipRegime::Cutting);
            let f = Feed::computed_trade(best.mm_per_rev() * off);
            let beside = roughness_with_least_chip(f, corner(r), least(h)).unwrap();
            prop_assert!(beside.rt.um() >= h * 1e3 * (1.0 - 1e-14));
            prop_assert_eq!(beside.regime == LeastChipRegime::BelowBestFeed, off < 1.0);
        }

        #[test]
        fn the_inverse_gives_the_feed_back(r in 0.05..3.0_f64, h in 0.0005..0.02_f64, over in 1.001..8.0_f64) {
            let f = best_feed(corner(r), least(h)).mm_per_rev() * over;
            let finish = roughness_with_least_chip(feed(f), corner(r), least(h)).unwrap();
            let back = feed_with_least_chip(finish.rt, corner(r), least(h)).unwrap();
            // Near the best feed the height hardly depends on the feed: digits are lost there.
            prop_assert!(near(back.mm_per_rev(), f, 1e-12 / (over - 1.0)));
        }

        #[test]
        fn a_sharp_edge_leaves_the_arc(r in 0.4..3.0_f64, f in 0.05..0.2_f64) {
            let finish = roughness_with_least_chip(feed(f), corner(r), least(0.0001)).unwrap();
            let arc = arc_height(feed(f), corner(r)).unwrap();
            // h_min/2 = 0.05 um and its rubbed part, and the arc against the parabola.
            let rubbed = 0.05 * (1.0 + r * 1e-4 / (f * f));
            let parabola = arc.um() * f * f / (12.0 * r * r);
            prop_assert!((finish.rt.um() - arc.um() - rubbed).abs() < parabola + 1e-9);
        }
    }
}
