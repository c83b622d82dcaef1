//! The edge of a rounded tool in its cut: how much of it is engaged, and what it takes off, exactly.
//!
//! Symbols: a_p depth of cut, f feed, kappa_r and kappa_r' major and minor cutting edge angle, r_eps
//! corner radius, L_e engaged length of edge, A cross section of the chip, h_e equivalent chip
//! thickness. A point of the corner arc is named by its local edge angle theta, zero at the lowest
//! point, below zero towards the minor edge.

use uom::si::f64::{Area, Length};

use super::engagement::{ChipSection, light_arc_end};
use super::force::EdgeInCut;
use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    ChipArea, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, DepthOfCut, EdgeLength,
    Feed, MinorCuttingEdgeAngle,
};

/// The engaged edge of a rounded tool.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct EngagedEdge {
    /// How far the arc is engaged on the side of the minor edge, -theta_1: there this turn's arc
    /// meets that of the last turn.
    pub arc_start: MinorCuttingEdgeAngle,
    /// Where the engaged arc ends, theta_2: at the old surface, or where the straight edge begins.
    pub arc_end: CuttingEdgeAngle,
    /// Engaged length of edge L_e.
    pub edge_length: EdgeLength,
    /// Cross section of the chip, A.
    pub chip_area: ChipArea,
    /// Cross section of the ridge that stays on the work between two turns.
    pub ridge_area: ChipArea,
    /// Equivalent chip thickness h_e = A / L_e.
    pub equivalent_chip_thickness: ChipThickness,
    /// Angle of the chord of the engaged edge to the feed; the chip leaves about square to it.
    pub chord_angle: CuttingEdgeAngle,
    /// Which part of the edge is in the cut.
    pub edge: EdgeInCut,
}

impl EngagedEdge {
    /// The chip as if it lay flat along the engaged edge: h_e thick and L_e wide.
    ///
    /// The force of this chip is an upper bound of the force along the edge: k_c falls with the
    /// thickness, so that spreading the same metal evenly costs most.
    #[must_use]
    pub fn flat_chip(&self) -> ChipSection {
        let width = ChipWidth::computed(self.edge_length.length());
        ChipSection::new(self.equivalent_chip_thickness, width)
    }
}

/// How much of a rounded tool's edge is engaged, and the chip that it takes, exactly.
///
/// theta_1 = -asin(f / (2 r_eps)),
/// theta_2 = acos(1 - a_p / r_eps), at most kappa_r,
/// s = (a_p - r_eps (1 - cos kappa_r)) / sin kappa_r beyond that, else none,
/// L_e = r_eps (theta_2 - theta_1) + s,
/// A = a_p f - A_ridge,
/// A_ridge = f r_eps - (f / 2) sqrt(r_eps^2 - f^2 / 4) - r_eps^2 asin(f / (2 r_eps)),
/// h_e = A / L_e
///
/// The chord has the angle (theta_1 + theta_2) / 2 on the arc alone, else
/// atan2(a_p - R_t, r_eps sin kappa_r + s cos kappa_r + f / 2).
///
/// # Units
/// The types carry them.
/// # Range
/// Feeds at which two turns meet on their corner arcs, f <= 2 r_eps sin kappa_r' and
/// <= 2 r_eps sin kappa_r; depths beyond the ridge that they leave. Exact there.
/// # Errors
/// `corner_radius`, when it is zero; `feed`, when the turns do not meet on the arcs; `depth_of_cut`,
/// when it is not beyond the ridge.
/// # Source
/// Geometry, derived: the edge's outline sweeps a_p f each turn, and the ridge stays. Equivalent
/// thickness: Woxen 1932; chord: Colwell 1954, Trans. ASME 76 (both from memory).
/// # Example
/// ```
/// use turnwright::physics::edge_in_cut::engaged_edge;
/// let edge = engaged_edge(
///     "0.2 mm".parse()?,
///     "0.1 mm/rev".parse()?,
///     "95 deg".parse()?,
///     "10 deg".parse()?,
///     "0.8 mm".parse()?,
/// )?;
/// assert!((edge.edge_length.mm() - 0.62822).abs() < 1e-5);
/// assert!((edge.equivalent_chip_thickness.mm() - 0.031753).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn engaged_edge(
    depth_of_cut: DepthOfCut,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
    minor_cutting_edge_angle: MinorCuttingEdgeAngle,
    corner_radius: CornerRadius,
) -> Result<EngagedEdge, Error> {
    let (a_p, f, r) = (
        depth_of_cut.length(),
        feed.length_per_revolution(),
        corner_radius.length(),
    );
    if r <= Length::default() {
        return Err(sharp(corner_radius));
    }
    let kappa = maths::radians(cutting_edge_angle.angle());
    let reach = widest_feed(cutting_edge_angle, minor_cutting_edge_angle, r);
    if f > reach {
        return Err(past_the_arc(feed, reach));
    }
    let half_feed = maths::number(f / (2.0 * r));
    let ridge_height = r * ridge_height_over_radius(half_feed);
    if a_p <= ridge_height {
        return Err(only_the_ridge(depth_of_cut, ridge_height));
    }
    let start = maths::asin(half_feed);
    let light = light_arc_end(a_p, r, kappa);
    let end = light.unwrap_or(kappa);
    let (sin_kappa, cos_kappa) = (maths::sin(kappa), maths::cos(kappa));
    let straight = match light {
        Some(_) => Length::default(),
        None => {
            let half = maths::sin(kappa / 2.0);
            (a_p - 2.0 * r * (half * half)) / sin_kappa
        }
    };
    let edge_length = r * (end + start) + straight;
    let ridge: Area = r * r * ridge_area_over_square(half_feed);
    let area: Area = a_p * f - ridge;
    let chord = match light {
        Some(_) => (end - start) / 2.0,
        None => {
            let along = r * sin_kappa + straight * cos_kappa + f / 2.0;
            maths::atan2(
                maths::number((a_p - ridge_height) / r),
                maths::number(along / r),
            )
        }
    };
    Ok(EngagedEdge {
        arc_start: MinorCuttingEdgeAngle::computed(maths::angle(start)),
        arc_end: match light {
            Some(theta_2) => CuttingEdgeAngle::computed(maths::angle(theta_2)),
            None => cutting_edge_angle,
        },
        edge_length: EdgeLength::computed(edge_length),
        chip_area: ChipArea::computed(area),
        ridge_area: ChipArea::computed(ridge),
        equivalent_chip_thickness: ChipThickness::computed(area / edge_length),
        chord_angle: CuttingEdgeAngle::computed(maths::angle(chord)),
        edge: match light {
            Some(_) => EdgeInCut::CornerArc,
            None => EdgeInCut::CornerArcAndStraightEdge,
        },
    })
}

/// The widest feed at which two turns still meet on their corner arcs.
///
/// An arc of more than a right angle reaches as far as one of a right angle: r_eps to its side.
fn widest_feed(major: CuttingEdgeAngle, minor: MinorCuttingEdgeAngle, r: Length) -> Length {
    let smaller = major.degrees().min(minor.degrees()).min(90.0);
    2.0 * r * maths::sin(smaller.to_radians())
}

/// R_t / r_eps = 1 - sqrt(1 - x^2), x = f / (2 r_eps), without a difference of nearly equal numbers.
fn ridge_height_over_radius(x: f64) -> f64 {
    let root = maths::sqrt(((1.0 - x) * (1.0 + x)).max(0.0));
    x * x / (1.0 + root)
}

/// A_ridge / r_eps^2 = 2 x - x sqrt(1 - x^2) - asin x, x = f / (2 r_eps).
///
/// For the small x of real feeds that is a difference of nearly equal numbers. Its derivative is
/// 2 (1 - sqrt(1 - x^2)), whose power series is integrated term by term.
fn ridge_area_over_square(x: f64) -> f64 {
    // At x = 1/2 the terms fall by 4 each: 28 of them leave 1e-18.
    const TERMS: u32 = 28;
    if x > 0.5 {
        let root = maths::sqrt(((1.0 - x) * (1.0 + x)).max(0.0));
        return 2.0 * x - x * root - maths::asin(x);
    }
    let square = x * x;
    // The terms of 1 - sqrt(1 - x^2), times x: x^3/2, x^5/8, x^7/16, ...
    let mut term = x * square / 2.0;
    let mut sum = 0.0;
    for k in 1..TERMS {
        let k = f64::from(k);
        sum += 2.0 * term / (2.0 * k + 1.0);
        term *= square * (2.0 * k - 1.0) / (2.0 * k + 2.0);
    }
    sum
}

#[cold]
fn sharp(corner_radius: CornerRadius) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "corner_radius",
        corner_radius.to_string(),
        "a corner radius above zero",
        "give the corner radius of the tool; every real corner has one",
    )
}

#[cold]
fn past_the_arc(feed: Feed, reach: Length) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "feed",
        feed.to_string(),
        format!(
            "at most {}, where two turns still meet on the corner arc",
            Feed::computed(reach)
        ),
        "take a smaller feed, a larger corner radius or larger cutting edge angles",
    )
}

#[cold]
fn only_the_ridge(depth_of_cut: DepthOfCut, ridge: Length) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "depth_of_cut",
        depth_of_cut.to_string(),
        format!(
            "more than the ridge of {} that this feed leaves",
            DepthOfCut::computed(ridge)
        ),
        "take a deeper cut or a smaller feed: here the turns do not meet, and a thread is left",
    )
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::engagement::largest_edge_angle;
    use crate::physics::force::{ForceLaw, NORMAL_RATIO, cutting_forces, main_force};
    use crate::quantity::{ForceExponent, SpecificCuttingForce};
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    fn of(a_p: f64, f: f64, kappa: f64, minor: f64, r: f64) -> Result<EngagedEdge, Error> {
        engaged_edge(
            DepthOfCut::from_mm(a_p).unwrap(),
            Feed::from_mm_per_rev(f).unwrap(),
            CuttingEdgeAngle::from_degrees(kappa).unwrap(),
            MinorCuttingEdgeAngle::from_degrees(minor).unwrap(),
            CornerRadius::from_mm(r).unwrap(),
        )
    }

    /// The height of the tool's outline above its lowest point, at x along the feed.
    fn outline(x: f64, r: f64, kappa: f64) -> f64 {
        let end = r * kappa.sin();
        if x <= end {
            r - (r * r - x * x).sqrt()
        } else {
            r * (1.0 - kappa.cos()) + (x - end) * kappa.tan()
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn the_area_is_what_lies_between_the_two_outlines(
            depth in 0.05..4.0_f64, feed in 0.02..0.3_f64, kappa in 30.0..85.0_f64, r in 0.4..2.0_f64,
        ) {
            // Simpson between this turn's outline below, the last turn's and the old surface above.
            let Ok(edge) = of(depth, feed, kappa, 20.0, r) else { return Ok(()) };
            let k = kappa.to_radians();
            let join = r * (1.0 - k.cos());
            let reach = if depth <= join {
                (depth * (2.0 * r - depth)).sqrt()
            } else {
                r * k.sin() + (depth - join) / k.tan()
            };
            // The pieces end where an outline has a corner, so that the rule stays exact.
            let mut ends = vec![-feed / 2.0, reach];
            for corner in [reach - feed, r * k.sin(), r * k.sin() - feed] {
                if corner > -feed / 2.0 && corner < reach {
                    ends.push(corner);
                }
            }
            ends.sort_by(f64::total_cmp);
            let height = |x: f64| outline(x + feed, r, k).min(depth) - outline(x, r, k);
            let mut area = 0.0;
            for piece in ends.windows(2) {
                let h = (piece[1] - piece[0]) / 2000.0;
                let sum: f64 = (0..=2000)
                    .map(|i| {
                        let weight = match i {
                            0 | 2000 => 1.0,
                            i if i % 2 == 1 => 4.0,
                            _ => 2.0,
                        };
                        weight * height(piece[0] + f64::from(i) * h)
                    })
                    .sum();
                area += sum * h / 3.0;
            }
            // The rule's own error at 2000 steps, where the arc is steep.
            prop_assert!(near(edge.chip_area.mm2(), area, 1e-6), "{} {area}", edge.chip_area.mm2());
        }

        #[test]
        fn the_flat_chip_bounds_the_force_along_the_edge(
            depth in 0.01..5.0_f64, kappa in 20.0..140.0_f64, r in 0.05..3.0_f64, m in 0.05..0.6_f64,
        ) {
            // The same area along the same edge: arc and straight piece with h = f sin theta, whose
            // area is a_p f exactly.
            let law = ForceLaw::new(
                SpecificCuttingForce::from_mpa(2000.0).unwrap(),
                ForceExponent::from_value(m).unwrap(),
            );
            let (a_p, f, angle, corner) = (
                DepthOfCut::from_mm(depth).unwrap(),
                Feed::from_mm_per_rev(0.1).unwrap(),
                CuttingEdgeAngle::from_degrees(kappa).unwrap(),
                CornerRadius::from_mm(r).unwrap(),
            );
            let k = kappa.to_radians();
            let end = largest_edge_angle(a_p, angle, corner).degrees().to_radians();
            let straight = ((depth - r * (1.0 - k.cos())) / k.sin()).max(0.0);
            let length = r * end + straight;
            let flat = ChipSection::new(
                ChipThickness::from_mm(depth * 0.1 / length).unwrap(),
                ChipWidth::from_mm(length).unwrap(),
            );
            let along = cutting_forces(law, a_p, f, angle, corner, NORMAL_RATIO.value).main;
            prop_assert!(main_force(law, flat).newton() >= along.newton() * (1.0 - 1e-12));
        }

        #[test]
        fn chip_and_ridge_make_up_what_the_edge_sweeps(
            depth in 0.05..5.0_f64, feed in 0.01..0.5_f64, kappa in 20.0..140.0_f64, r in 0.1..3.0_f64,
        ) {
            let Ok(edge) = of(depth, feed, kappa, 15.0, r) else { return Ok(()) };
            let swept = edge.chip_area.mm2() + edge.ridge_area.mm2();
            prop_assert!(near(swept, depth * feed, 1e-13));
            let flat = edge.flat_chip();
            prop_assert!(near(flat.thickness.mm() * flat.width.mm(), edge.chip_area.mm2(), 1e-13));
        }
    }

    #[test]
    fn the_ridge_is_exact_for_tiny_and_for_wide_feeds() {
        // (x, 2 x - x sqrt(1 - x^2) - asin x): with 40 digits, derived.
        for (x, wanted) in [
            (1e-4, 3.333_333_338_333_333_4e-13),
            (0.05, 4.168_230_563_453_805e-5),
            (0.499, 0.043_121_150_154_375_96),
            (0.501, 0.043_657_049_565_639_23),
            (1.0, 0.429_203_673_205_103_4),
        ] {
            let got = ridge_area_over_square(x);
            // Beyond 1/2 the closed form loses a digit to its difference.
            assert!(near(got, wanted, 2e-14), "{x}: {got} {wanted}");
        }
    }

    #[test]
    fn a_light_cut_passes_smoothly_into_a_deep_one() {
        for kappa in [30.0, 75.0, 90.0, 95.0_f64] {
            let join = 0.8 * (1.0 - kappa.to_radians().cos());
            let (light, deep) = (
                of(join * (1.0 - 1e-9), 0.1, kappa, 10.0, 0.8).unwrap(),
                of(join * (1.0 + 1e-9), 0.1, kappa, 10.0, 0.8).unwrap(),
            );
            assert_eq!(light.edge, EdgeInCut::CornerArc);
            assert_eq!(deep.edge, EdgeInCut::CornerArcAndStraightEdge);
            assert!(near(light.edge_length.mm(), deep.edge_length.mm(), 1e-7));
            assert!(near(
                light.chord_angle.degrees(),
                deep.chord_angle.degrees(),
                1e-7
            ));
        }
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        let field = |edge: Result<EngagedEdge, Error>| edge.unwrap_err().field().to_owned();
        assert_eq!(field(of(0.5, 0.1, 95.0, 10.0, 0.0)), "corner_radius");
        // 2 r sin 10 deg = 0.139 mm; of the major edge 2 r sin 5 deg = 0.070 mm.
        assert_eq!(field(of(0.5, 0.14, 95.0, 10.0, 0.4)), "feed");
        assert!(of(0.5, 0.138, 95.0, 10.0, 0.4).is_ok());
        assert_eq!(field(of(0.5, 0.08, 5.0, 90.0, 0.4)), "feed");
        // The ridge of 0.1 mm at 0.4 mm is 0.00314 mm high.
        assert_eq!(field(of(0.003, 0.1, 95.0, 10.0, 0.4)), "depth_of_cut");
        // An edge beyond square reaches to its side by one corner radius.
        assert!(of(0.5, 0.79, 95.0, 120.0, 0.4).is_ok());
    }
}
