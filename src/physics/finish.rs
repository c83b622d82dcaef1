//! The finish that geometry leaves.
//!
//! Every turn of the work the corner of the tool leaves one more groove; the ridges between them
//! are the roughness. Symbols: f feed, r = r_eps corner radius, kappa_r and kappa_r' the angles of
//! the major and the minor edge. phi is the local edge angle at which the ridge stands on the arc.
//!
//! A real surface is never better than this, and often worse: built-up edge, a feed below the least
//! chip, chatter. A wiper edge is another outline and not computed here.

use std::f64::consts::PI;

use uom::si::f64::{Area, Length};

use super::maths;
use super::outline_integrals::{self, Edges, Profile, arc_profile};
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Feed, MinorCuttingEdgeAngle, Ra, Rku, Rq, Rsk, Rsm, Rt, Rz,
};

/// The outline of the tool's corner, seen from above: a rounded corner between two edges.
///
/// ```
/// use turnwright::physics::finish::ToolOutline;
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "5 deg".parse()?)?;
/// assert_eq!(tool.corner_radius().mm(), 0.8);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ToolOutline {
    corner_radius: CornerRadius,
    cutting_edge_angle: CuttingEdgeAngle,
    minor_cutting_edge_angle: MinorCuttingEdgeAngle,
}

impl ToolOutline {
    /// An outline of that corner and those edges.
    ///
    /// # Errors
    /// `minor_cutting_edge_angle`, when kappa_r and kappa_r' leave no tool between the edges: they
    /// must make less than 180 deg together.
    pub fn new(
        corner_radius: CornerRadius,
        cutting_edge_angle: CuttingEdgeAngle,
        minor_cutting_edge_angle: MinorCuttingEdgeAngle,
    ) -> Result<Self, Error> {
        let outline = Self {
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle,
        };
        if outline.included() <= 0.0 {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle.to_string(),
                format!(
                    "less than 180 deg together with the cutting edge angle {cutting_edge_angle}"
                ),
                "check both angles: each is measured from the feed direction to its edge",
            ));
        }
        Ok(outline)
    }

    /// The angle of the tool between its edges, in degrees.
    fn included(&self) -> f64 {
        180.0 - self.cutting_edge_angle.degrees() - self.minor_cutting_edge_angle.degrees()
    }

    /// Corner radius r_eps.
    #[must_use]
    pub fn corner_radius(&self) -> CornerRadius {
        self.corner_radius
    }

    /// Cutting edge angle kappa_r.
    #[must_use]
    pub fn cutting_edge_angle(&self) -> CuttingEdgeAngle {
        self.cutting_edge_angle
    }

    /// Minor cutting edge angle kappa_r'.
    #[must_use]
    pub fn minor_cutting_edge_angle(&self) -> MinorCuttingEdgeAngle {
        self.minor_cutting_edge_angle
    }

    /// The outline with the steeper edge leading: its mirror image leaves the same finish.
    pub(super) fn edges(&self) -> Edges {
        let major = maths::radians(self.cutting_edge_angle.angle());
        let minor = maths::radians(self.minor_cutting_edge_angle.angle());
        Edges {
            steep: major.max(minor),
            flat: major.min(minor),
            included: self.included() * (PI / 180.0),
            mirrored: minor > major,
        }
    }
}

/// Which part of the tool's outline the finish shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum FinishRegime {
    /// The corner arc alone, as it should be.
    Arc,
    /// The corner arc and the minor edge: the feed is large for the minor cutting edge angle.
    ArcAndMinorEdge,
    /// The corner arc and the major edge, which is the flatter one.
    ArcAndMajorEdge,
    /// Both edges reach the ridge: a sharp corner, or a feed far too large for it.
    Edges,
}

impl FinishRegime {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Arc => "arc",
            Self::ArcAndMinorEdge => "arc_and_minor_edge",
            Self::ArcAndMajorEdge => "arc_and_major_edge",
            Self::Edges => "edges",
        }
    }
}

/// The roughness that geometry leaves, and which part of the outline made it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TheoreticalRoughness {
    /// Which part of the outline the finish shows.
    pub regime: FinishRegime,
    /// Total height R_t.
    pub rt: Rt,
    /// Maximum height R_z; equal to R_t, since all ridges are.
    pub rz: Rz,
    /// Arithmetic mean height R_a.
    pub ra: Ra,
    /// Root mean square height R_q.
    pub rq: Rq,
}

/// The roughness that a feed and the outline of the tool leave, exactly.
///
/// Arc, for f <= 2 r sin kappa_r': R_t = r - sqrt(r^2 - f^2/4), about f^2 / (8 r);
/// arc and minor edge, up to f = r (1 - cos(kappa_r + kappa_r')) / sin kappa_r':
/// R_t = r (1 - cos phi), phi = acos(1 - f sin kappa_r' / r) - kappa_r';
/// edges: R_t = r + (f - r (1/sin kappa_r + 1/sin kappa_r')) / (cot kappa_r + cot kappa_r').
///
/// R_a and R_q by integrating the profile piece by piece, each piece in closed form.
///
/// # Units
/// The types carry them.
/// # Range
/// Any. With kappa_r' > kappa_r the mirror image is taken. Where the ridge overhangs (kappa_r above
/// 90 deg and a feed far too large for the corner), R_t goes from the tip of the ridge to the bottom
/// of the groove, R_a and R_q are of the profile that a stylus can see. With a depth of cut below
/// R_t, ridges of the old surface stay.
/// # Source
/// Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
/// # Example
/// ```
/// use turnwright::physics::finish::{theoretical_roughness, FinishRegime, ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
/// let finish = theoretical_roughness("0.2 mm/rev".parse()?, &tool);
/// assert_eq!(finish.regime, FinishRegime::Arc);
/// assert!((finish.rt.um() - 6.275).abs() < 1e-3);
/// assert!((finish.ra.um() - 1.609).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn theoretical_roughness(feed: Feed, outline: &ToolOutline) -> TheoreticalRoughness {
    let (f, r) = (feed.length_per_revolution(), outline.corner_radius.length());
    let edges = outline.edges();
    let profile = edges.profile(maths::number(r / f));
    roughness(f, profile)
}

/// The roughness that a feed and a corner radius leave, when the arc alone makes it.
///
/// R_t = r - sqrt(r^2 - f^2/4), about f^2 / (8 r); R_a about f^2 / (31.2 r)
///
/// # Units
/// The types carry them.
/// # Range
/// For a tool whose minor cutting edge angle is not known; true when it is at least asin(f / (2 r)):
/// [`least_minor_angle_for_arc`].
/// # Errors
/// `feed`, when it is not less than twice the corner radius.
/// # Source
/// Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
/// # Example
/// ```
/// use turnwright::{physics::finish::arc_roughness, CornerRadius, Feed};
/// let finish = arc_roughness(Feed::from_mm_per_rev(0.1)?, CornerRadius::from_mm(0.8)?)?;
/// assert!((finish.rt.um() - 1.564).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn arc_roughness(
    feed: Feed,
    corner_radius: CornerRadius,
) -> Result<TheoreticalRoughness, Error> {
    let (f, r) = (feed.length_per_revolution(), corner_radius.length());
    if f >= 2.0 * r {
        return Err(too_coarse(feed, corner_radius));
    }
    Ok(roughness(f, arc_profile(maths::number(r / f))))
}

/// How the ridges that geometry leaves are formed and spaced.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TheoreticalShape {
    /// Skewness R_sk.
    pub rsk: Rsk,
    /// Kurtosis R_ku.
    pub rku: Rku,
    /// Mean width R_Sm of the profile elements: the feed.
    pub rsm: Rsm,
}

/// How the ridges are formed and spaced that a feed and the outline of the tool leave.
///
/// R_sk = mean z^3 / R_q^3, R_ku = mean z^4 / R_q^4, z from the mean line; R_Sm = f
///
/// # Units
/// The types carry them.
/// # Range
/// As [`theoretical_roughness`]. A small feed on an arc has R_sk = 2 sqrt(5)/7 and R_ku = 15/7, a sharp
/// corner 0 and 9/5. A new groove counts as a whole: no filter is applied.
/// # Source
/// ISO 21920-2 (from memory) for the definitions; derived. By quadrature of heights above the mean
/// line, to about 1e-13.
/// # Example
/// ```
/// use turnwright::physics::finish::{theoretical_shape, ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
/// let shape = theoretical_shape("0.1 mm/rev".parse()?, &tool);
/// assert!((shape.rsk.value() - 0.639).abs() < 1e-3);
/// assert_eq!(shape.rsm.mm(), 0.1);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn theoretical_shape(feed: Feed, outline: &ToolOutline) -> TheoreticalShape {
    let (f, r) = (
        feed.length_per_revolution(),
        outline.corner_radius().length(),
    );
    shape(feed, outline.edges().shape(maths::number(r / f)))
}

/// [`theoretical_shape`] when the arc alone makes the finish.
///
/// R_sk, R_ku, R_Sm as there
///
/// # Units
/// The types carry them.
/// # Range
/// For a tool whose minor cutting edge angle is not known: [`least_minor_angle_for_arc`].
/// # Errors
/// `feed`, when it is not less than twice the corner radius.
/// # Source
/// As [`theoretical_shape`].
/// # Example
/// ```
/// use turnwright::physics::finish::arc_shape;
/// let shape = arc_shape("0.1 mm/rev".parse()?, "0.8 mm".parse()?)?;
/// assert!((shape.rku.value() - 15.0 / 7.0).abs() < 1e-2);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn arc_shape(feed: Feed, corner_radius: CornerRadius) -> Result<TheoreticalShape, Error> {
    let (f, r) = (feed.length_per_revolution(), corner_radius.length());
    if f >= 2.0 * r {
        return Err(too_coarse(feed, corner_radius));
    }
    Ok(shape(
        feed,
        outline_integrals::arc_shape(maths::number(r / f)),
    ))
}

fn shape(feed: Feed, shape: outline_integrals::Shape) -> TheoreticalShape {
    TheoreticalShape {
        rsk: Rsk::computed_trade(shape.skewness),
        rku: Rku::computed_trade(shape.kurtosis),
        rsm: Rsm::computed(feed.length_per_revolution()),
    }
}

/// The height of the ridges that a feed and a corner radius leave, when the arc alone makes them.
///
/// R_t = r - sqrt(r^2 - f^2/4), about f^2 / (8 r)
///
/// # Units
/// The types carry them.
/// # Range
/// The cheapest of the finish: R_t alone, for a minor cutting edge angle of at least asin(f / (2 r)).
/// # Errors
/// `feed`, when it is not less than twice the corner radius.
/// # Source
/// Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again. Computed
/// as (f^2/4) / (r + sqrt(r^2 - f^2/4)), which loses no digits at small feeds.
/// # Example
/// ```
/// use turnwright::{physics::finish::arc_height, CornerRadius, Feed};
/// let rt = arc_height(Feed::from_mm_per_rev(0.2)?, CornerRadius::from_mm(0.8)?)?;
/// assert!((rt.um() - 6.275).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[inline]
pub fn arc_height(feed: Feed, corner_radius: CornerRadius) -> Result<Rt, Error> {
    arc_height_or_none(feed, corner_radius).ok_or_else(|| too_coarse(feed, corner_radius))
}

/// [`arc_height`] without the words of a refusal: for loops over many rows.
///
/// R_t = (f^2/4) / (r_eps + sqrt(r_eps^2 - f^2/4))
///
/// # Units
/// The types carry them.
/// # Range
/// None from a feed of twice the corner radius on.
/// # Source
/// As [`arc_height`].
/// # Example
/// ```
/// use turnwright::{physics::finish::arc_height_or_none, CornerRadius, Feed};
/// let corner = CornerRadius::from_mm(0.1)?;
/// assert!(arc_height_or_none(Feed::from_mm_per_rev(0.1)?, corner).is_some());
/// assert!(arc_height_or_none(Feed::from_mm_per_rev(0.3)?, corner).is_none());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn arc_height_or_none(feed: Feed, corner_radius: CornerRadius) -> Option<Rt> {
    let (f, r) = (feed.length_per_revolution(), corner_radius.length());
    let quarter = f * f / 4.0;
    let below = r * r - quarter;
    Rt::computed_where(below > Area::default(), quarter / (r + below.sqrt()))
}

/// The least minor cutting edge angle with which the arc alone makes the finish.
///
/// kappa_r' = asin(f / (2 r))
///
/// # Units
/// The types carry them.
/// # Range
/// Feeds below twice the corner radius.
/// # Errors
/// `feed`, when it is not less than twice the corner radius.
/// # Source
/// Geometry: the ridge stands where the arc passes into the minor edge.
/// # Example
/// ```
/// use turnwright::{physics::finish::least_minor_angle_for_arc, CornerRadius, Feed};
/// let angle =
///     least_minor_angle_for_arc(Feed::from_mm_per_rev(0.2)?, CornerRadius::from_mm(0.8)?)?;
/// assert!((angle.degrees() - 7.18).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn least_minor_angle_for_arc(
    feed: Feed,
    corner_radius: CornerRadius,
) -> Result<MinorCuttingEdgeAngle, Error> {
    let (f, r) = (feed.length_per_revolution(), corner_radius.length());
    if f >= 2.0 * r {
        return Err(too_coarse(feed, corner_radius));
    }
    let angle = maths::asin(maths::number(f / (2.0 * r)));
    Ok(MinorCuttingEdgeAngle::computed(maths::angle(angle)))
}

#[cold]
fn too_coarse(feed: Feed, corner_radius: CornerRadius) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "feed",
        feed.to_string(),
        format!("less than twice the corner radius {corner_radius}"),
        "take a smaller feed; beyond the arc the minor cutting edge angle counts: ask for the theoretical roughness with it",
    )
}

fn roughness(f: Length, profile: Profile) -> TheoreticalRoughness {
    TheoreticalRoughness {
        regime: profile.regime,
        rt: Rt::computed(f * profile.rt),
        rz: Rz::computed(f * profile.rt),
        ra: Ra::computed(f * profile.ra),
        rq: Rq::computed(f * profile.rq),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
pub(in crate::physics) mod tests {
    use super::*;
    use crate::physics::outline_integrals::versine;
    use proptest::prelude::*;
    use std::f64::consts::FRAC_PI_2;

    pub(in crate::physics) fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    pub(in crate::physics) fn tool(r: f64, kappa: f64, minor: f64) -> ToolOutline {
        ToolOutline::new(
            CornerRadius::from_mm(r).unwrap(),
            CuttingEdgeAngle::from_degrees(kappa).unwrap(),
            MinorCuttingEdgeAngle::from_degrees(minor).unwrap(),
        )
        .unwrap()
    }

    pub(in crate::physics) fn feed(mm_per_rev: f64) -> Feed {
        Feed::from_mm_per_rev(mm_per_rev).unwrap()
    }

    /// Any outline whose edges leave at least a degree of tool between them.
    pub(in crate::physics) fn any_tool() -> impl Strategy<Value = ToolOutline> {
        let parts = (
            any::<CornerRadius>(),
            any::<CuttingEdgeAngle>(),
            any::<MinorCuttingEdgeAngle>(),
        );
        parts.prop_filter_map("a tool", |(r, kappa, minor)| {
            let outline = ToolOutline::new(r, kappa, minor).ok()?;
            (outline.included() >= 1.0).then_some(outline)
        })
    }

    /// R_a and R_q in mm, R_sk and R_ku, by looking at the surface from above, point by point.
    ///
    /// A tool fills, at a distance u from its lowest point, all heights from its outline up to the
    /// overhanging major edge. Looking down from far above, one falls through every tool.
    fn by_looking(f: f64, r: f64, kappa: f64, minor: f64) -> [f64; 4] {
        let (kappa, minor) = (kappa.to_radians(), minor.to_radians());
        let rise = |edge: f64, u: f64| {
            let end = r * edge
                .sin()
                .min(if edge > FRAC_PI_2 { 1.0 } else { edge.sin() });
            if u <= end || edge > FRAC_PI_2 {
                r - (r * r - u * u).max(0.0).sqrt()
            } else {
                r * versine(edge) + (u - end) * edge.tan()
            }
        };
        let filled = |u: f64| -> Option<(f64, f64)> {
            if u <= 0.0 {
                let top = if kappa > FRAC_PI_2 {
                    r * versine(kappa) + (r * kappa.sin() - u) * (PI - kappa).tan()
                } else {
                    f64::INFINITY
                };
                let low = rise(minor, -u);
                return (low <= top).then_some((low, top));
            }
            if kappa <= FRAC_PI_2 {
                return Some((rise(kappa, u), f64::INFINITY));
            }
            if u > r {
                return None;
            }
            let top = if u >= r * kappa.sin() {
                r + (r * r - u * u).sqrt()
            } else {
                r * versine(kappa) + (r * kappa.sin() - u) * (PI - kappa).tan()
            };
            Some((rise(kappa, u), top))
        };
        let points = 20_000;
        let heights: Vec<f64> = (0..points)
            .map(|i| {
                let x = (f64::from(i) + 0.5) / f64::from(points) * f;
                let tools: Vec<_> = (-6..=6)
                    .filter_map(|k| filled(x - f64::from(k) * f))
                    .collect();
                let mut y = tools.iter().fold(0.0, |high, tool| f64::max(high, tool.0));
                while let Some(tool) = tools.iter().find(|tool| tool.0 < y && y <= tool.1) {
                    y = tool.0;
                }
                y
            })
            .collect();
        let count = f64::from(points);
        let mean = heights.iter().sum::<f64>() / count;
        let ra = heights.iter().map(|y| (y - mean).abs()).sum::<f64>() / count;
        let moment = |n| heights.iter().map(|y| (y - mean).powi(n)).sum::<f64>() / count;
        let rq = f64::sqrt(moment(2));
        [ra, rq, moment(3) / rq.powi(3), moment(4) / rq.powi(4)]
    }

    #[test]
    fn a_surface_looked_at_point_by_point_says_the_same() {
        for (f, r, kappa, minor) in [
            (0.2, 0.8, 95.0, 10.0),
            (0.25, 0.8, 95.0, 5.0),
            (0.5, 0.4, 45.0, 20.0),
            (0.35, 0.4, 20.0, 75.0),
            (0.5, 0.05, 60.0, 30.0),
            (0.3, 0.02, 90.0, 12.0),
            (0.2, 0.0, 45.0, 15.0),
            // Overhanging ridges: on the arc, on the edge, over the groove's bottom.
            (0.97, 0.2, 120.0, 25.0),
            (0.5, 0.05, 95.0, 10.0),
            (0.5, 0.05, 120.0, 25.0),
            (0.5, 0.02, 120.0, 40.0),
            (0.2, 0.0, 95.0, 10.0),
        ] {
            let finish = theoretical_roughness(feed(f), &tool(r, kappa, minor));
            let [ra, rq, rsk, rku] = by_looking(f, r, kappa, minor);
            let shape = theoretical_shape(feed(f), &tool(r, kappa, minor));
            let case = format!("{f} {r} {kappa} {minor}: {finish:?}, {ra} {rq}");
            assert!(near(finish.ra.um() / 1e3, ra, 5e-4), "{case}");
            assert!(near(finish.rq.um() / 1e3, rq, 5e-4), "{case}");
            // The points beside a vertical fall tell.
            assert!(
                (shape.rsk.value() - rsk).abs() < 5e-3,
                "{case} {shape:?} {rsk}"
            );
            assert!(near(shape.rku.value(), rku, 3e-3), "{case} {shape:?} {rku}");
        }
    }

    #[test]
    fn the_regimes_join() {
        // The regimes meet at 2 r sin kappa_r' and r (1 - cos(kappa_r + kappa_r'))/sin kappa_r'.
        for (r, kappa, minor) in [(0.4, 75.0, 15.0), (0.4, 95.0, 5.0), (1.2, 45.0, 30.0)] {
            let (k, m) = (f64::to_radians(kappa), f64::to_radians(minor));
            for f in [2.0 * r * m.sin(), r * (1.0 - (k + m).cos()) / m.sin()] {
                let [below, above] = [1.0 - 1e-9, 1.0 + 1e-9]
                    .map(|t| theoretical_roughness(feed(f * t), &tool(r, kappa, minor)));
                assert_ne!(below.regime, above.regime);
                assert!(near(below.rt.um(), above.rt.um(), 1e-7));
                assert!(near(below.ra.um(), above.ra.um(), 1e-7));
                assert!(near(below.rq.um(), above.rq.um(), 1e-7));
            }
        }
    }

    #[test]
    fn a_small_feed_leaves_a_parabola() {
        // f^2/(8 r), f^2/(18 sqrt 3 r), f^2/(12 sqrt 5 r): the limits, derived.
        let finish = arc_roughness(feed(0.001), CornerRadius::from_mm(3.2).unwrap()).unwrap();
        let unit = 1e-6 / 3.2 * 1e3;
        assert!(near(finish.rt.um(), unit / 8.0, 1e-7));
        assert!(near(finish.ra.um(), unit / (18.0 * 3.0_f64.sqrt()), 1e-7));
        assert!(near(finish.rq.um(), unit / (12.0 * 5.0_f64.sqrt()), 1e-7));
    }

    #[test]
    fn a_sharp_corner_leaves_a_triangle() {
        // R_t = f/(cot kappa + cot kappa'), R_a = R_t/4, R_q = R_t/(2 sqrt 3), derived.
        let finish = theoretical_roughness(feed(0.2), &tool(0.0, 60.0, 30.0));
        let rt = 200.0 / (3.0_f64.sqrt() + 1.0 / 3.0_f64.sqrt());
        assert_eq!(finish.regime, FinishRegime::Edges);
        assert!(near(finish.rt.um(), rt, 1e-14));
        assert!(near(finish.ra.um(), rt / 4.0, 1e-14));
        assert!(near(finish.rq.um(), rt / 12.0_f64.sqrt(), 1e-14));
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        let r = CornerRadius::from_mm(0.1).unwrap();
        let sharp = CornerRadius::from_mm(0.0).unwrap();
        for (f, r) in [(0.2, r), (0.3, r), (0.001, sharp)] {
            assert_eq!(arc_roughness(feed(f), r).unwrap_err().field(), "feed");
            assert_eq!(arc_height(feed(f), r).unwrap_err().field(), "feed");
            let angle = least_minor_angle_for_arc(feed(f), r);
            assert_eq!(angle.unwrap_err().field(), "feed");
        }
        let wide = ToolOutline::new(
            r,
            CuttingEdgeAngle::from_degrees(95.0).unwrap(),
            MinorCuttingEdgeAngle::from_degrees(85.0).unwrap(),
        );
        assert_eq!(wide.unwrap_err().field(), "minor_cutting_edge_angle");
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn heights_are_in_their_order(f: Feed, tool in any_tool()) {
            let finish = theoretical_roughness(f, &tool);
            prop_assert!(finish.ra.um() > 0.0);
            // Where a ridge is a saw of straight lines all three are in fixed ratios.
            prop_assert!(finish.ra.um() < finish.rq.um());
            prop_assert!(finish.rq.um() < finish.rt.um());
            prop_assert!(finish.rz.um() == finish.rt.um());
        }

        #[test]
        fn the_mirror_image_leaves_the_same(
            f: Feed, r: CornerRadius, k in 1.0..150.0_f64, share in 0.0..1.0_f64,
        ) {
            let m = 1.0 + share * (f64::min(150.0, 179.0 - k) - 1.0);
            let (a, b) = (tool(r.mm(), k, m), tool(r.mm(), m, k));
            let (a, b) = (theoretical_roughness(f, &a), theoretical_roughness(f, &b));
            prop_assert!(near(a.rt.um(), b.rt.um(), 1e-12));
            prop_assert!(near(a.ra.um(), b.ra.um(), 1e-12));
            prop_assert!(near(a.rq.um(), b.rq.um(), 1e-12));
        }

        #[test]
        fn a_larger_feed_is_rougher(f in 0.001..9.0_f64, more in 1.001..1.1_f64, tool in any_tool()) {
            let (a, b) = (
                theoretical_roughness(feed(f), &tool),
                theoretical_roughness(feed(f * more), &tool),
            );
            prop_assert!(a.rt.um() < b.rt.um());
            prop_assert!(a.ra.um() < b.ra.um());
            prop_assert!(a.rq.um() < b.rq.um());
        }

        #[test]
        fn an_arc_is_an_arc_through_every_door(r in 0.005..50.0_f64, share in 0.0..1.0_f64) {
            let f = 0.0011 + share * (f64::min(9.9, 1.999 * r) - 0.0011);
            let r = CornerRadius::from_mm(r).unwrap();
            let finish = arc_roughness(feed(f), r).unwrap();
            prop_assert!(near(arc_height(feed(f), r).unwrap().um(), finish.rt.um(), 1e-13));
            let least = least_minor_angle_for_arc(feed(f), r).unwrap();
            if least.degrees() < 0.1 || least.degrees() > 80.0 {
                return Ok(());
            }
            let just = ToolOutline::new(
                r,
                CuttingEdgeAngle::from_degrees(95.0).unwrap(),
                MinorCuttingEdgeAngle::from_degrees(least.degrees() * (1.0 + 1e-12)).unwrap(),
            );
            let same = theoretical_roughness(feed(f), &just.unwrap());
            prop_assert_eq!(same, finish);
        }

        #[test]
        fn the_closed_form_of_the_arc_agrees(a in 0.2..0.999_f64) {
            // R_a = (r/a)(asin c - m c), R_q = r sqrt(1 - a^2/3 - m^2); a = f/(2r), derived.
            let finish = arc_roughness(feed(2.0 * a), CornerRadius::from_mm(1.0).unwrap()).unwrap();
            let m = ((1.0 - a * a).sqrt() + a.asin() / a) / 2.0;
            let c = (1.0 - m * m).sqrt();
            prop_assert!(near(finish.ra.um() / 1e3, (c.asin() - m * c) / a, 1e-11));
            prop_assert!(near(finish.rq.um() / 1e3, (1.0 - a * a / 3.0 - m * m).sqrt(), 1e-10));
        }
    }
}
