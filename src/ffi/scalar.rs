//! Scalar doors: one function a kernel.

use super::quantity::*;
use super::status::{Unsaid, tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::bar::Support;
use crate::physics::finish::{self, FinishRegime, TheoreticalRoughness, ToolOutline};
use crate::physics::speed;
use crate::quantity::Rt;

/// What holds the bar. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_support {
    /// The chuck alone.
    TW_SUPPORT_CHUCK = 1,
    /// The chuck at one end and a centre at the other.
    TW_SUPPORT_CHUCK_AND_CENTRE = 2,
    /// A centre at each end.
    TW_SUPPORT_BETWEEN_CENTRES = 3,
}

/// Which part of the tool's outline the finish shows. Returned as int32_t; a later version may know
/// more of them.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_regime {
    /// The corner arc alone, as it should be.
    TW_REGIME_ARC = 1,
    /// The corner arc and the minor edge: the feed is large for the minor cutting edge angle.
    TW_REGIME_ARC_AND_MINOR_EDGE = 2,
    /// The corner arc and the major edge, which is the flatter one.
    TW_REGIME_ARC_AND_MAJOR_EDGE = 3,
    /// Both edges reach the ridge: a sharp corner, or a feed far too large for it.
    TW_REGIME_EDGES = 4,
}

/// The number of a regime.
pub(super) fn regime_number(regime: FinishRegime) -> i32 {
    (match regime {
        FinishRegime::Arc => tw_regime::TW_REGIME_ARC,
        FinishRegime::ArcAndMinorEdge => tw_regime::TW_REGIME_ARC_AND_MINOR_EDGE,
        FinishRegime::ArcAndMajorEdge => tw_regime::TW_REGIME_ARC_AND_MAJOR_EDGE,
        FinishRegime::Edges => tw_regime::TW_REGIME_EDGES,
    }) as i32
}

pub(super) fn support_of(number: i32) -> Result<Support, Error> {
    const CHUCK: i32 = tw_support::TW_SUPPORT_CHUCK as i32;
    const CHUCK_AND_CENTRE: i32 = tw_support::TW_SUPPORT_CHUCK_AND_CENTRE as i32;
    const BETWEEN_CENTRES: i32 = tw_support::TW_SUPPORT_BETWEEN_CENTRES as i32;
    match number {
        CHUCK => Ok(Support::Chuck),
        CHUCK_AND_CENTRE => Ok(Support::ChuckAndCentre),
        BETWEEN_CENTRES => Ok(Support::BetweenCentres),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "support",
            other.to_string(),
            "TW_SUPPORT_CHUCK (1), TW_SUPPORT_CHUCK_AND_CENTRE (2) or TW_SUPPORT_BETWEEN_CENTRES (3)",
            "pass one of the names of enum tw_support",
        )),
    }
}

/// The spindle speed at which a diameter passes the edge at a cutting speed: v / (pi d). Take the
/// diameter before the cut, where the edge is fastest.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the cutting speed, ISO 3002-1 (from memory).
/// Example: tw_spindle_speed_for(tw_cutting_speed_foot_per_minute(300), tw_diameter_inch(1.5),
///     &spindle_speed, NULL); spindle_speed.rpm is 763.944.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_spindle_speed_for(
    cutting_speed: tw_cutting_speed,
    diameter: tw_diameter,
    spindle_speed: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_speed.is_null(),
        || {
            let n = speed::spindle_speed(cutting_speed.read()?, diameter.read()?);
            Ok(tw_spindle_speed::from(n))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_speed, answer) },
    )
}

/// The kernel of tw_arc_height and its column twin, with words.
pub(super) fn arc_height(feed: f64, corner_radius: f64) -> Result<Rt, Error> {
    let feed = tw_feed { mm_per_rev: feed }.read()?;
    let corner_radius = tw_corner_radius { mm: corner_radius }.read()?;
    finish::arc_height(feed, corner_radius)
}

/// The kernel of tw_theoretical_roughness and its column twin.
pub(super) fn theoretical_roughness(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<TheoreticalRoughness, Error> {
    let feed = feed.read()?;
    let outline = ToolOutline::new(
        corner_radius.read()?,
        cutting_edge_angle.read()?,
        minor_cutting_edge_angle.read()?,
    )?;
    Ok(finish::theoretical_roughness(feed, &outline))
}

/// The roughness that a feed and the outline of the tool leave, exactly: which part of the outline
/// makes it (a number of enum tw_regime), total height, maximum height, arithmetic mean height and
/// root mean square height. A real surface is never better than this.
///
/// The two edge angles must make less than 180 deg together (TW_CONTRADICTION).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the regime is 0 and
/// the other outputs are NaN.
///
/// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
/// Example: tw_theoretical_roughness(tw_feed_millimeter_per_revolution(0.25),
///     tw_corner_radius_millimeter(0.8), tw_cutting_edge_angle_degree(95),
///     tw_minor_cutting_edge_angle_degree(5), &regime, &rt, &rz, &ra, &rq, NULL);
///     regime is TW_REGIME_ARC_AND_MINOR_EDGE, rt.um is 8.58821, rz.um is 8.58821, ra.um is 2.31940
///     and rq.um is 2.65544.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_theoretical_roughness(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    regime: *mut i32,
    rt: *mut tw_rt,
    rz: *mut tw_rz,
    ra: *mut tw_ra,
    rq: *mut tw_rq,
    detail: *mut tw_error,
) -> tw_status {
    let nowhere = regime.is_null() && rt.is_null() && rz.is_null() && ra.is_null() && rq.is_null();
    call(
        detail,
        !nowhere,
        || {
            let found = theoretical_roughness(
                feed,
                corner_radius,
                cutting_edge_angle,
                minor_cutting_edge_angle,
            )?;
            Ok((
                regime_number(found.regime),
                tw_rt::from(found.rt),
                tw_rz::from(found.rz),
                tw_ra::from(found.ra),
                tw_rq::from(found.rq),
            ))
        },
        |(regime_is, rt_is, rz_is, ra_is, rq_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(regime, regime_is);
                put(rt, rt_is);
                put(rz, rz_is);
                put(ra, ra_is);
                put(rq, rq_is);
            }
        },
    )
}

/// The total height that a feed and a corner radius leave when the corner arc alone makes the
/// finish: r - sqrt(r^2 - f^2/4).
///
/// A feed of twice the corner radius or more is refused (TW_CONTRADICTION). detail may be NULL.
/// After a failure the output is NaN.
///
/// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
/// Example: tw_arc_height(tw_feed_inch_per_revolution(0.004),
///     tw_corner_radius_inch_fraction(1, 32), &rt, NULL); tw_rt_as_microinch(rt) is 64.0657.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_height(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    rt: *mut tw_rt,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !rt.is_null(),
        || {
            let height = finish::arc_height_or_none(feed.read()?, corner_radius.read()?);
            // The words of the kernel, which looks again.
            let told = |feed, radius, _| match arc_height(feed, radius) {
                Err(error) => error,
                Ok(_) => Error::internal("a feed that is refused and is not"),
            };
            let refused = Unsaid::together([feed.mm_per_rev, corner_radius.mm], told);
            Ok(tw_rt::from(height.ok_or(refused)?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(rt, answer) },
    )
}
