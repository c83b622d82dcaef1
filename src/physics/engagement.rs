//! The shape of the chip: what the edge has in front of it.
//!
//! Symbols: a_p depth of cut, f feed, kappa_r cutting edge angle, r_eps corner radius, h thickness
//! and b width of the cut. Along the corner arc a point is named by its local edge angle theta:
//! zero at the lowest point, theta_2 where the arc leaves the work through the old surface.

use uom::si::f64::Length;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, DepthOfCut, EdgeRadius, Feed,
    WorkLength,
};

/// The cross section of the chip, as if it lay flat: thickness and width.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ChipSection {
    /// Thickness h, across the edge.
    pub thickness: ChipThickness,
    /// Width b, along the edge.
    pub width: ChipWidth,
}

impl ChipSection {
    /// A cross section of that thickness and width.
    ///
    /// A parting blade has the feed as its thickness and its own width:
    /// ```
    /// use turnwright::{physics::engagement::ChipSection, ChipThickness, ChipWidth};
    /// let parting = ChipSection::new(ChipThickness::from_mm(0.08)?, ChipWidth::from_mm(3.0)?);
    /// assert_eq!(parting.width.mm(), 3.0);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub const fn new(thickness: ChipThickness, width: ChipWidth) -> Self {
        Self { thickness, width }
    }
}

/// How thick and how wide a chip the straight edge takes.
///
/// h = f sin kappa_r, b = a_p / sin kappa_r
///
/// # Units
/// The types carry them.
/// # Range
/// Exact for a sharp corner; with a corner radius good to a few per cent when a_p > 3 r_eps (common
/// practice, no source).
/// # Source
/// ISO 3002-3 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::engagement::chip_section, CuttingEdgeAngle, DepthOfCut, Feed};
/// let chip = chip_section(
///     DepthOfCut::from_mm(2.0)?,
///     Feed::from_mm_per_rev(0.2)?,
///     CuttingEdgeAngle::from_degrees(45.0)?,
/// );
/// assert!((chip.thickness.mm() - 0.1414).abs() < 1e-4);
/// assert!((chip.width.mm() - 2.8284).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn chip_section(
    depth_of_cut: DepthOfCut,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
) -> ChipSection {
    let (a_p, f) = (depth_of_cut.length(), feed.length_per_revolution());
    let sin_kappa = maths::sin(maths::radians(cutting_edge_angle.angle()));
    ChipSection {
        thickness: ChipThickness::computed(f * sin_kappa),
        width: ChipWidth::computed(a_p / sin_kappa),
    }
}

/// The largest local edge angle in the cut: where the edge leaves the work through the old surface.
///
/// theta_2 = acos(1 - a_p / r_eps), at most kappa_r
///
/// # Units
/// The types carry them.
/// # Range
/// Any. Below kappa_r the cut is a light one: only the corner arc cuts.
/// # Source
/// Geometry, in the stable form 2 asin(sqrt(a_p / (2 r_eps))).
/// # Example
/// ```
/// use turnwright::{physics::engagement::largest_edge_angle, CornerRadius, CuttingEdgeAngle};
/// let theta_2 = largest_edge_angle(
///     "0.2 mm".parse()?,
///     CuttingEdgeAngle::from_degrees(95.0)?,
///     CornerRadius::from_mm(0.8)?,
/// );
/// assert!((theta_2.degrees() - 41.41).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn largest_edge_angle(
    depth_of_cut: DepthOfCut,
    cutting_edge_angle: CuttingEdgeAngle,
    corner_radius: CornerRadius,
) -> CuttingEdgeAngle {
    let (a_p, r) = (depth_of_cut.length(), corner_radius.length());
    match light_arc_end(a_p, r, maths::radians(cutting_edge_angle.angle())) {
        Some(theta_2) => CuttingEdgeAngle::computed(maths::angle(theta_2)),
        None => cutting_edge_angle,
    }
}

/// theta_2 in radians when the arc alone cuts, a_p <= r (1 - cos kappa_r).
#[inline]
pub(super) fn light_arc_end(a_p: Length, r: Length, kappa: f64) -> Option<f64> {
    let half = maths::sin(kappa / 2.0);
    (a_p <= 2.0 * r * (half * half))
        .then(|| 2.0 * maths::asin(maths::number(a_p / (2.0 * r)).sqrt().min(1.0)))
}

/// How thick the chip of a light cut becomes at its thickest.
///
/// h_max = r_eps - sqrt(r_eps^2 + f^2 - 2 f r_eps sin theta_2),
/// with r_eps sin theta_2 = sqrt(2 r_eps a_p - a_p^2)
///
/// # Units
/// The types carry them.
/// # Range
/// Light cuts, in which only the corner arc cuts: a_p <= r_eps (1 - cos kappa_r), and at most
/// r_eps; feeds up to r_eps sin theta_2.
/// # Errors
/// `depth_of_cut`, when it is greater than the corner radius; `feed`, when it is greater than
/// r_eps sin theta_2.
/// # Source
/// The form of Blake and Scattergood 1990 (from memory); derived again: the distance from the arc to
/// the point where the last turn's arc meets the old surface.
/// # Example
/// ```
/// use turnwright::{physics::engagement::thickest_chip, CornerRadius, DepthOfCut, Feed};
/// let h = thickest_chip(
///     DepthOfCut::from_mm(0.2)?,
///     Feed::from_mm_per_rev(0.1)?,
///     CornerRadius::from_mm(0.8)?,
/// )?;
/// assert!((h.mm() - 0.0623).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn thickest_chip(
    depth_of_cut: DepthOfCut,
    feed: Feed,
    corner_radius: CornerRadius,
) -> Result<ChipThickness, Error> {
    let (a_p, f, r) = (
        depth_of_cut.length(),
        feed.length_per_revolution(),
        corner_radius.length(),
    );
    if a_p > r {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "depth_of_cut",
            depth_of_cut.to_string(),
            format!("at most the corner radius {corner_radius}"),
            "this is for light cuts; a deeper one has its thickest chip on the straight edge",
        ));
    }
    // Half the chord of the old surface in the arc: r sin theta_2.
    let c = (a_p * (2.0 * r - a_p)).sqrt();
    if f > c {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "feed",
            feed.to_string(),
            format!(
                "at most {} at this depth and corner radius",
                Feed::computed(c)
            ),
            "take a smaller feed or a deeper cut",
        ));
    }
    // From the arc's centre to the point where the last turn's arc meets the old surface.
    let distance = ((c - f) * (c - f) + (r - a_p) * (r - a_p)).sqrt();
    Ok(ChipThickness::computed(f * (2.0 * c - f) / (r + distance)))
}

/// The depth below which the corner only rubs: its thickest chip is the least one that forms.
///
/// a_p = r_eps (1 - sqrt(1 - (h_min / f)^2))
///
/// # Units
/// The types carry them.
/// # Range
/// The depth at which a chip forms at all. A practical floor is several times as much: 2 to 3 h_min
/// and about a quarter of r_eps (common practice, no source).
/// # Errors
/// `feed`, when it is not greater than the least chip thickness; `corner_radius`, when it is zero.
/// # Source
/// Derived: f sin theta_2 = h_min.
/// # Example
/// ```
/// use turnwright::{physics::engagement::least_depth, ChipThickness, CornerRadius, Feed};
/// let a_p = least_depth(
///     ChipThickness::from_mm(0.008)?,
///     Feed::from_mm_per_rev(0.1)?,
///     CornerRadius::from_mm(0.8)?,
/// )?;
/// assert!((a_p.mm() - 0.002564).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn least_depth(
    least: ChipThickness,
    feed: Feed,
    corner_radius: CornerRadius,
) -> Result<DepthOfCut, Error> {
    let (h_min, f, r) = (
        least.length(),
        feed.length_per_revolution(),
        corner_radius.length(),
    );
    if f <= h_min {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "feed",
            feed.to_string(),
            format!("more than the least chip thickness {least}"),
            "take a larger feed: at this one the edge rubs at any depth",
        ));
    }
    if r <= Length::default() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "corner_radius",
            corner_radius.to_string(),
            "a corner radius above zero",
            "give the corner radius of the tool; every real corner has one",
        ));
    }
    // 1 - sqrt(1 - q^2) without the difference of nearly equal numbers.
    let q = maths::number(h_min / f);
    let root = ((1.0 - q) * (1.0 + q)).sqrt();
    Ok(DepthOfCut::computed(r * (q * q / (1.0 + root))))
}

/// The least chip thickness over the radius of the rounded edge, h_min / r_n: 0.3, and 0.2 to 0.4
/// in common practice.
///
/// With a large honed edge it overstates: coated inserts reach better than that.
pub const LEAST_CHIP_OVER_EDGE_RADIUS: Sourced<f64> = Sourced::new(
    0.3,
    "common practice, no source (0.2 to 0.4)",
    Standing::CommonPractice,
);

/// The least thickness of chip that an edge of this sharpness still cuts.
///
/// h_min = 0.3 r_n
///
/// # Units
/// The types carry them.
/// # Range
/// 0.2 to 0.4 r_n is what practice says; with a large honed edge (r_n above about 20 um) it
/// overstates the floor.
/// # Source
/// Common practice, no source: [`LEAST_CHIP_OVER_EDGE_RADIUS`].
/// # Example
/// ```
/// use turnwright::{physics::engagement::least_chip_thickness, EdgeRadius};
/// let h_min = least_chip_thickness(EdgeRadius::from_mm(0.02)?);
/// assert!((h_min.mm() - 0.006).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn least_chip_thickness(edge_radius: EdgeRadius) -> ChipThickness {
    let r_n = edge_radius.length();
    ChipThickness::computed(r_n * LEAST_CHIP_OVER_EDGE_RADIUS.value)
}

/// How far the major edge reaches ahead of the corner, in the direction of the feed.
///
/// a_p / tan kappa_r, below 90 degrees; from there on the corner leads
///
/// # Units
/// The types carry them.
/// # Range
/// A straight edge.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::{physics::engagement::edge_lead, CuttingEdgeAngle, DepthOfCut};
/// let lead = |degrees| Some(edge_lead(DepthOfCut::from_mm(2.0).ok()?, CuttingEdgeAngle::from_degrees(degrees).ok()?)?.mm());
/// assert!((lead(45.0).unwrap() - 2.0).abs() < 1e-12);
/// assert_eq!(lead(95.0), None);
/// ```
#[must_use]
pub fn edge_lead(
    depth_of_cut: DepthOfCut,
    cutting_edge_angle: CuttingEdgeAngle,
) -> Option<WorkLength> {
    let (a_p, kappa) = (
        depth_of_cut.length(),
        cutting_edge_angle.degrees().to_radians(),
    );
    let (sine, cosine) = (maths::sin(kappa), maths::cos(kappa));
    (cutting_edge_angle.degrees() < 90.0).then(|| WorkLength::computed(a_p * (cosine / sine)))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn the_chip_section_has_the_area_of_depth_times_feed(
            a_p: DepthOfCut, f: Feed, kappa: CuttingEdgeAngle,
        ) {
            let chip = chip_section(a_p, f, kappa);
            prop_assert!(near(chip.thickness.mm() * chip.width.mm(), a_p.mm() * f.mm_per_rev(), 1e-14));
        }

        #[test]
        fn a_chip_is_never_thicker_than_the_feed(a_p: DepthOfCut, f: Feed, r: CornerRadius) {
            if let Ok(h) = thickest_chip(a_p, f, r) {
                prop_assert!(h.mm() > 0.0 && h.mm() <= f.mm_per_rev() * (1.0 + 1e-12));
            }
        }

        #[test]
        fn at_the_least_depth_the_thickest_chip_is_the_least_one(
            h_min: ChipThickness, f: Feed, r: CornerRadius,
        ) {
            if let Ok(a_p) = least_depth(h_min, f, r) {
                let kappa = CuttingEdgeAngle::from_degrees(90.0).unwrap();
                let theta_2 = largest_edge_angle(a_p, kappa, r);
                let h = chip_section(a_p, f, theta_2).thickness;
                // Near h_min = f the angle is near 90 deg, where the sine forgives and the depth
                // does not: the comparison stays good either way.
                prop_assert!(near(h.mm(), h_min.mm(), 1e-9));
            } else {
                prop_assert!(f.mm_per_rev() <= h_min.mm() || r.mm() == 0.0);
            }
        }
    }

    #[test]
    fn a_cut_of_one_corner_radius_has_its_thickest_chip_at_the_feed() {
        // Derived: theta_2 = 90 deg, where the thickness is the feed itself.
        let h = thickest_chip(
            DepthOfCut::from_mm(0.8).unwrap(),
            Feed::from_mm_per_rev(0.1).unwrap(),
            CornerRadius::from_mm(0.8).unwrap(),
        );
        assert!(near(h.unwrap().mm(), 0.1, 1e-13));
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        let (a, f, r) = (
            DepthOfCut::from_mm(0.01).unwrap(),
            Feed::from_mm_per_rev(0.2).unwrap(),
            CornerRadius::from_mm(0.4).unwrap(),
        );
        let sharp = CornerRadius::from_mm(0.0).unwrap();
        let thick = ChipThickness::from_mm(0.2).unwrap();
        let thin = ChipThickness::from_mm(0.01).unwrap();
        assert_eq!(thickest_chip(a, f, r).unwrap_err().field(), "feed");
        assert_eq!(
            thickest_chip(a, f, sharp).unwrap_err().field(),
            "depth_of_cut"
        );
        assert_eq!(least_depth(thick, f, r).unwrap_err().field(), "feed");
        assert_eq!(
            least_depth(thin, f, sharp).unwrap_err().field(),
            "corner_radius"
        );
    }
}
