//! The finish that geometry leaves, and the feed that leaves it.
//!
//! Every turn of the work the corner of the tool leaves one more groove; the ridges between them
//! are the roughness. Symbols: f feed, r = r_eps corner radius, kappa_r and kappa_r' the angles of
//! the major and the minor edge. phi is the local edge angle at which the ridge stands on the arc.
//!
//! A real surface is never better than this, and often worse: built-up edge, a feed below the least
//! chip, chatter. A wiper edge is another outline and not computed here.

use std::f64::consts::{FRAC_PI_2, PI};

use uom::si::f64::Length;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Feed, MinorCuttingEdgeAngle, Quantity, Ra, Rq, Rt, Rz,
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
    fn edges(&self) -> Edges {
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
    let (f, r) = (feed.length_per_revolution(), corner_radius.length());
    let quarter = f * f / 4.0;
    let below = r * r - quarter;
    if below.get::<uom::si::area::square_meter>() <= 0.0 {
        return Err(too_coarse(feed, corner_radius));
    }
    Ok(Rt::computed(quarter / (r + below.sqrt())))
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
        "take a smaller feed, or give the minor cutting edge angle of the tool",
    )
}

/// The feed that leaves a total height R_t, exactly.
///
/// Arc: f = 2 sqrt(2 r R_t - R_t^2); arc and minor edge: f = r (1 - cos(phi + kappa_r')) /
/// sin kappa_r' with phi = acos(1 - R_t / r); edges:
/// f = (R_t - r)(cot kappa_r + cot kappa_r') + r (1/sin kappa_r + 1/sin kappa_r').
///
/// # Units
/// The types carry them.
/// # Range
/// The inverse of [`theoretical_roughness`]: the largest feed that keeps the height.
/// # Errors
/// `rt`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`].
/// # Example
/// ```
/// use turnwright::physics::finish::{feed_for_rt, ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
/// let feed = feed_for_rt("6.3 um".parse()?, &tool)?;
/// assert!((feed.mm_per_rev() - 0.2004).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_rt(rt: Rt, outline: &ToolOutline) -> Result<Feed, Error> {
    plausible(feed_for_height(rt.length(), outline), "rt", &rt)
}

/// The feed that leaves a maximum height R_z, exactly.
///
/// As [`feed_for_rt`]: all ridges are equal, so that R_z = R_t.
///
/// # Units
/// The types carry them.
/// # Range
/// The inverse of [`theoretical_roughness`].
/// # Errors
/// `rz`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`].
/// # Example
/// ```
/// use turnwright::physics::finish::{feed_for_rz, ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
/// let feed = feed_for_rz("6.3 um".parse()?, &tool)?;
/// assert!((feed.mm_per_rev() - 0.2004).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_rz(rz: Rz, outline: &ToolOutline) -> Result<Feed, Error> {
    plausible(feed_for_height(rz.length(), outline), "rz", &rz)
}

/// The feed that leaves a maximum height R_z, when the arc alone makes the finish.
///
/// f = 2 sqrt(2 r R_z - R_z^2), about sqrt(8 r R_z)
///
/// # Units
/// The types carry them.
/// # Range
/// For a tool whose minor cutting edge angle is not known: [`least_minor_angle_for_arc`].
/// # Errors
/// `rz`, when the arc cannot leave it (R_z not below r), or no plausible feed does.
/// # Source
/// Derived, as [`arc_height`].
/// # Example
/// ```
/// use turnwright::{physics::finish::feed_for_rz_arc, CornerRadius, Rz};
/// let feed = feed_for_rz_arc(Rz::from_um(6.3)?, CornerRadius::from_mm(0.8)?)?;
/// assert!((feed.mm_per_rev() - 0.2004).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_rz_arc(rz: Rz, corner_radius: CornerRadius) -> Result<Feed, Error> {
    let (height, r) = (rz.length(), corner_radius.length());
    if height >= r {
        return Err(too_rough("rz", &rz, corner_radius));
    }
    plausible(feed_for_arc_height(height, r), "rz", &rz)
}

/// The feed that leaves an arithmetic mean height R_a, exactly.
///
/// About f = sqrt(18 sqrt(3) r R_a) while the arc makes the finish; then the root of the exact R_a.
///
/// # Units
/// The types carry them.
/// # Range
/// The inverse of [`theoretical_roughness`], to the last digits: R_a grows with the feed.
/// # Errors
/// `ra`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`].
/// # Example
/// ```
/// use turnwright::physics::finish::{feed_for_ra, ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "5 deg".parse()?)?;
/// let feed = feed_for_ra("3.2 um".parse()?, &tool)?;
/// assert!((feed.mm_per_rev() - 0.3058).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_ra(ra: Ra, outline: &ToolOutline) -> Result<Feed, Error> {
    let (height, r) = (ra.length(), outline.corner_radius.length());
    let edges = outline.edges();
    // A sharp corner has R_a = R_t / 4; with an arc it is a little less than that.
    let guess = feed_for_height(4.0 * height, outline);
    let root = feed_of_ra(height, guess, |f| {
        edges.profile(maths::number(r / f)).ra * f
    });
    root.ok_or_else(|| no_feed("ra", &ra))
}

/// The feed that leaves an arithmetic mean height R_a, when the arc alone makes the finish.
///
/// About f = sqrt(18 sqrt(3) r R_a), then the root of the exact R_a.
///
/// # Units
/// The types carry them.
/// # Range
/// For a tool whose minor cutting edge angle is not known: [`least_minor_angle_for_arc`].
/// # Errors
/// `ra`, when the arc cannot leave it (f would reach 2 r), or no plausible feed does.
/// # Source
/// Derived, as [`arc_roughness`].
/// # Example
/// ```
/// use turnwright::{physics::finish::feed_for_ra_arc, CornerRadius, Ra};
/// let feed = feed_for_ra_arc(Ra::from_um(1.6)?, CornerRadius::from_mm(0.8)?)?;
/// assert!((feed.mm_per_rev() - 0.1995).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_ra_arc(ra: Ra, corner_radius: CornerRadius) -> Result<Feed, Error> {
    let (height, r) = (ra.length(), corner_radius.length());
    let widest = 2.0 * r;
    // R_a of half circles side by side, the roughest that the arc alone can leave.
    if height >= arc_profile(0.5).ra * widest {
        return Err(too_rough("ra", &ra, corner_radius));
    }
    let guess = (18.0 * 3.0_f64.sqrt() * (r * height)).sqrt();
    let root = feed_of_ra(height, guess, |f| {
        arc_profile(maths::number(r / f.min(widest))).ra * f.min(widest)
    });
    root.ok_or_else(|| no_feed("ra", &ra))
}

#[cold]
fn too_rough(field: &str, given: &dyn std::fmt::Display, corner_radius: CornerRadius) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        field,
        given.to_string(),
        format!("what an arc with the corner radius {corner_radius} can leave"),
        "check the unit, or give the minor cutting edge angle of the tool",
    )
}

#[cold]
fn no_feed(field: &str, given: &dyn std::fmt::Display) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        field,
        given.to_string(),
        format!(
            "a roughness that a feed from {} to {} mm/rev leaves with this tool",
            Feed::ROW.least(),
            Feed::ROW.largest()
        ),
        "check the unit of the roughness, and the corner radius",
    )
}

fn plausible(feed: Length, field: &str, given: &dyn std::fmt::Display) -> Result<Feed, Error> {
    let feed = Feed::computed(feed);
    if Feed::ROW.accepts(feed.trade()) {
        Ok(feed)
    } else {
        Err(no_feed(field, given))
    }
}

fn feed_for_arc_height(height: Length, r: Length) -> Length {
    2.0 * (height * (2.0 * r - height)).sqrt()
}

fn feed_for_height(height: Length, outline: &ToolOutline) -> Length {
    let r = outline.corner_radius.length();
    let edges = outline.edges();
    if height <= r * versine(edges.flat) {
        feed_for_arc_height(height, r)
    } else if height <= r * versine(edges.steep) {
        let phi = 2.0 * maths::asin(maths::number(height / (2.0 * r)).sqrt().min(1.0));
        r * versine(phi + edges.flat) / maths::sin(edges.flat)
    } else {
        height * edges.cotangents() + r * edges.tangents()
    }
}

/// The plausible feed at which `ra_at` is `height`: the root of a growing function, near `guess`.
///
/// In logarithms R_a is a nearly straight line over the feed, with a slope between 1 (edges) and 2
/// (arc), so that secants converge at once; the bracket, halved where they leave it, makes sure.
fn feed_of_ra(height: Length, guess: Length, ra_at: impl Fn(Length) -> Length) -> Option<Feed> {
    let mut low = Feed::computed_trade(Feed::ROW.least()).length_per_revolution();
    let mut high = Feed::computed_trade(Feed::ROW.largest()).length_per_revolution();
    let excess = |f: Length| maths::ln(maths::number(ra_at(f) / height));
    if excess(low) > 0.0 || excess(high) < 0.0 {
        return None;
    }
    let mut f = guess.max(low).min(high);
    let mut before: Option<(Length, f64)> = None;
    let mut slope = 2.0;
    // The bracket alone is down to the last digit after some 60 halvings.
    for _ in 0..200 {
        let e = excess(f);
        if e < 0.0 {
            low = f;
        } else {
            high = f;
        }
        if let Some((f_before, e_before)) = before {
            let step = maths::ln(maths::number(f / f_before));
            let secant = (e - e_before) / step;
            // Differences of the last digits say nothing of the slope.
            if step.abs() > 1e-7 && secant.is_finite() {
                slope = secant.clamp(0.7, 3.0);
            }
        }
        let mut next = f * maths::exp(-e / slope);
        if next < low || next > high {
            next = (low * high).sqrt();
        }
        if maths::number((next - f) / f).abs() <= 2e-16 {
            f = next;
            break;
        }
        before = Some((f, e));
        f = next;
    }
    Some(Feed::computed(f))
}

/// 1 - cos x, without the difference of nearly equal numbers.
fn versine(x: f64) -> f64 {
    let half = maths::sin(x / 2.0);
    2.0 * half * half
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

/// A profile's heights over the feed.
struct Profile {
    regime: FinishRegime,
    rt: f64,
    ra: f64,
    rq: f64,
}

/// The two edges in radians, the steeper one leading.
struct Edges {
    steep: f64,
    flat: f64,
    included: f64,
    mirrored: bool,
}

impl Edges {
    /// cot kappa_r + cot kappa_r' = sin(kappa_r + kappa_r') / (sin kappa_r sin kappa_r')
    fn cotangents(&self) -> f64 {
        maths::sin(self.included) / (maths::sin(self.steep) * maths::sin(self.flat))
    }

    /// tan(kappa_r / 2) + tan(kappa_r' / 2): over r, what the rounding takes from the feed.
    fn tangents(&self) -> f64 {
        maths::tan(self.steep / 2.0) + maths::tan(self.flat / 2.0)
    }

    /// The profile, all lengths over the feed; `r` is the corner radius over the feed.
    fn profile(&self, r: f64) -> Profile {
        let sin_flat = maths::sin(self.flat);
        if 1.0 <= 2.0 * r * sin_flat {
            return arc_profile(r);
        }
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
        let (leading, trailing) = if phi <= FRAC_PI_2 {
            (steep.up_to(x_ridge, rt), flat.up_to(1.0 - x_ridge, rt))
        } else {
            // The ridge overhangs: a stylus falls from its tip straight down.
            match self.overhang(r, rt, x_ridge, phi, with_arc) {
                Seen::Both(leading, trailing) => (leading, trailing),
                Seen::Saw(height) => {
                    return Profile {
                        regime,
                        rt,
                        ra: height / 4.0,
                        rq: height / 12.0_f64.sqrt(),
                    };
                }
            }
        };
        let mean = leading.first + trailing.first;
        let square = leading.second + trailing.second - mean * mean;
        Profile {
            regime,
            rt,
            ra: 2.0 * (leading.below(mean) + trailing.below(mean)),
            rq: square.max(0.0).sqrt(),
        }
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
fn arc_profile(r: f64) -> Profile {
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
struct Moments {
    side: Side,
    sign: f64,
    top: f64,
    width: f64,
    first: f64,
    second: f64,
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

    /// The area between the profile and a mean line above it.
    fn below(&self, mean: f64) -> f64 {
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
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    fn tool(r: f64, kappa: f64, minor: f64) -> ToolOutline {
        ToolOutline::new(
            CornerRadius::from_mm(r).unwrap(),
            CuttingEdgeAngle::from_degrees(kappa).unwrap(),
            MinorCuttingEdgeAngle::from_degrees(minor).unwrap(),
        )
        .unwrap()
    }

    fn feed(mm_per_rev: f64) -> Feed {
        Feed::from_mm_per_rev(mm_per_rev).unwrap()
    }

    /// Any outline whose edges leave at least a degree of tool between them.
    fn any_tool() -> impl Strategy<Value = ToolOutline> {
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

    /// R_t, R_a, R_q in mm, by looking at the surface from above, point by point.
    ///
    /// A tool fills, at a distance u from its lowest point, all heights from its outline up to the
    /// overhanging major edge. Looking down from far above, one falls through every tool.
    fn by_looking(f: f64, r: f64, kappa: f64, minor: f64) -> (f64, f64) {
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
        let square = heights.iter().map(|y| (y - mean) * (y - mean)).sum::<f64>() / count;
        (ra, square.sqrt())
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
            let (ra, rq) = by_looking(f, r, kappa, minor);
            let case = format!("{f} {r} {kappa} {minor}: {finish:?}, {ra} {rq}");
            assert!(near(finish.ra.um() / 1e3, ra, 5e-4), "{case}");
            assert!(near(finish.rq.um() / 1e3, rq, 5e-4), "{case}");
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
        let (ra, rz) = (Ra::from_um(19.0).unwrap(), Rz::from_um(101.0).unwrap());
        assert_eq!(feed_for_ra_arc(ra, r).unwrap_err().field(), "ra");
        assert_eq!(feed_for_rz_arc(rz, r).unwrap_err().field(), "rz");
        let (ra, rt) = (Ra::from_um(1000.0).unwrap(), Rt::from_um(5000.0).unwrap());
        let slim = tool(0.8, 95.0, 0.1);
        assert_eq!(feed_for_ra(ra, &slim).unwrap_err().field(), "ra");
        assert_eq!(feed_for_rt(rt, &slim).unwrap_err().field(), "rt");
        let rz = Rz::from_um(5000.0).unwrap();
        assert_eq!(feed_for_rz(rz, &slim).unwrap_err().field(), "rz");
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
        fn the_inverse_gives_the_feed_back(f in 0.0011..9.9_f64, tool in any_tool()) {
            let finish = theoretical_roughness(feed(f), &tool);
            let back = feed_for_rt(finish.rt, &tool).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-11), "rt: {back}");
            let back = feed_for_rz(finish.rz, &tool).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-11), "rz: {back}");
            let back = feed_for_ra(finish.ra, &tool).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-11), "ra: {back}");
        }

        #[test]
        fn an_arc_is_an_arc_through_every_door(r in 0.005..50.0_f64, share in 0.0..1.0_f64) {
            let f = 0.0011 + share * (f64::min(9.9, 1.999 * r) - 0.0011);
            let r = CornerRadius::from_mm(r).unwrap();
            let finish = arc_roughness(feed(f), r).unwrap();
            prop_assert!(near(arc_height(feed(f), r).unwrap().um(), finish.rt.um(), 1e-13));
            let back = feed_for_ra_arc(finish.ra, r).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-12));
            let back = feed_for_rz_arc(finish.rz, r).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-10));
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
