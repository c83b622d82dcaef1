//! Which feed leaves a wanted roughness: the inverses of [`finish`](super::finish).
//!
//! Symbols as there: f feed, r = r_eps corner radius, kappa_r and kappa_r' the angles of the major
//! and the minor edge.

use uom::si::f64::Length;

use super::finish::ToolOutline;
use super::maths;
use super::outline_integrals::{arc_profile, versine};
use crate::error::{Error, ErrorKind};
use crate::quantity::{CornerRadius, Feed, Quantity, Ra, Rt, Rz};

/// The feed that leaves a total height R_t, exactly.
///
/// Arc: f = 2 sqrt(2 r R_t - R_t^2); arc and minor edge: f = r (1 - cos(phi + kappa_r')) /
/// sin kappa_r' with phi = acos(1 - R_t / r); edges:
/// f = (R_t - r)(cot kappa_r + cot kappa_r') + r (1/sin kappa_r + 1/sin kappa_r').
///
/// # Units
/// The types carry them.
/// # Range
/// The inverse of [`theoretical_roughness`](super::finish::theoretical_roughness): the largest feed that keeps the height.
/// # Errors
/// `rt`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`](super::finish::theoretical_roughness).
/// # Example
/// ```
/// use turnwright::physics::{feed_for_finish::feed_for_rt, finish::ToolOutline};
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
/// The inverse of [`theoretical_roughness`](super::finish::theoretical_roughness).
/// # Errors
/// `rz`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`](super::finish::theoretical_roughness).
/// # Example
/// ```
/// use turnwright::physics::{feed_for_finish::feed_for_rz, finish::ToolOutline};
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
/// For a tool whose minor cutting edge angle is not known: [`least_minor_angle_for_arc`](super::finish::least_minor_angle_for_arc).
/// # Errors
/// `rz`, when the arc cannot leave it (R_z not below r), or no plausible feed does.
/// # Source
/// Derived, as [`arc_height`](super::finish::arc_height).
/// # Example
/// ```
/// use turnwright::{physics::feed_for_finish::feed_for_rz_arc, CornerRadius, Rz};
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
/// The inverse of [`theoretical_roughness`](super::finish::theoretical_roughness), to the last digits: R_a grows with the feed.
/// # Errors
/// `ra`, when no plausible feed leaves it.
/// # Source
/// Derived, as [`theoretical_roughness`](super::finish::theoretical_roughness).
/// # Example
/// ```
/// use turnwright::physics::{feed_for_finish::feed_for_ra, finish::ToolOutline};
/// let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "5 deg".parse()?)?;
/// let feed = feed_for_ra("3.2 um".parse()?, &tool)?;
/// assert!((feed.mm_per_rev() - 0.3058).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn feed_for_ra(ra: Ra, outline: &ToolOutline) -> Result<Feed, Error> {
    let (height, r) = (ra.length(), outline.corner_radius().length());
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
/// For a tool whose minor cutting edge angle is not known: [`least_minor_angle_for_arc`](super::finish::least_minor_angle_for_arc).
/// # Errors
/// `ra`, when the arc cannot leave it (f would reach 2 r), or no plausible feed does.
/// # Source
/// Derived, as [`arc_roughness`](super::finish::arc_roughness).
/// # Example
/// ```
/// use turnwright::{physics::feed_for_finish::feed_for_ra_arc, CornerRadius, Ra};
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
    let r = outline.corner_radius().length();
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

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::finish::tests::{any_tool, feed, near, tool};
    use crate::physics::finish::{arc_roughness, theoretical_roughness};
    use proptest::prelude::*;

    #[test]
    fn what_has_no_answer_names_its_field() {
        let r = CornerRadius::from_mm(0.1).unwrap();
        let (ra, rz) = (Ra::from_um(19.0).unwrap(), Rz::from_um(101.0).unwrap());
        assert_eq!(feed_for_ra_arc(ra, r).unwrap_err().field(), "ra");
        assert_eq!(feed_for_rz_arc(rz, r).unwrap_err().field(), "rz");
        let (ra, rt) = (Ra::from_um(1000.0).unwrap(), Rt::from_um(5000.0).unwrap());
        let slim = tool(0.8, 95.0, 0.1);
        assert_eq!(feed_for_ra(ra, &slim).unwrap_err().field(), "ra");
        assert_eq!(feed_for_rt(rt, &slim).unwrap_err().field(), "rt");
        let rz = Rz::from_um(5000.0).unwrap();
        assert_eq!(feed_for_rz(rz, &slim).unwrap_err().field(), "rz");
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

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
        fn the_inverse_of_the_arc_gives_the_feed_back(r in 0.005..50.0_f64, share in 0.0..1.0_f64) {
            let f = 0.0011 + share * (f64::min(9.9, 1.999 * r) - 0.0011);
            let r = CornerRadius::from_mm(r).unwrap();
            let finish = arc_roughness(feed(f), r).unwrap();
            let back = feed_for_ra_arc(finish.ra, r).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-12));
            let back = feed_for_rz_arc(finish.rz, r).unwrap();
            prop_assert!(near(back.mm_per_rev(), f, 1e-10));
        }
    }
}
