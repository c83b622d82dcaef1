//! The feed for a roughness that is wanted.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::feed_for_finish;
use crate::physics::finish::ToolOutline;
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Feed, MinorCuttingEdgeAngle, Quantity, Ra, Rt, Rz,
};

fn outline(
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<ToolOutline, Error> {
    ToolOutline::new(
        corner_radius.read()?,
        cutting_edge_angle.read()?,
        minor_cutting_edge_angle.read()?,
    )
}

fn feed_for_ra(
    ra: tw_ra,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<Feed, Error> {
    feed_for_finish::feed_for_ra(
        ra.read()?,
        &outline(corner_radius, cutting_edge_angle, minor_cutting_edge_angle)?,
    )
}

/// The feed that leaves an arithmetic mean height with the outline of a tool, exactly.
///
/// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
/// leaves. detail may be NULL. After a failure the output is NaN.
///
/// Source: derived, as tw_theoretical_roughness.
/// Example: tw_feed_for_ra(tw_ra_microinch(63), tw_corner_radius_inch_fraction(1, 32),
///     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(30), &feed, NULL);
///     tw_feed_as_inch_per_revolution(feed) is 0.00782219.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_ra(
    ra: tw_ra,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = feed_for_ra(
                ra,
                corner_radius,
                cutting_edge_angle,
                minor_cutting_edge_angle,
            )?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_for_ra for every row.
///
/// Columns, see the first page: ra, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_feed_for_ra_column(
    ra: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Ra>("ra", ra),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            ra,
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle,
        ]| {
            let found = feed_for_ra(
                tw_ra { um: ra },
                tw_corner_radius { mm: corner_radius },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_minor_cutting_edge_angle {
                    deg: minor_cutting_edge_angle,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn feed_for_rz(
    rz: tw_rz,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<Feed, Error> {
    feed_for_finish::feed_for_rz(
        rz.read()?,
        &outline(corner_radius, cutting_edge_angle, minor_cutting_edge_angle)?,
    )
}

/// The feed that leaves a maximum height with the outline of a tool, exactly.
///
/// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
/// leaves. detail may be NULL. After a failure the output is NaN.
///
/// Source: derived, as tw_theoretical_roughness.
/// Example: tw_feed_for_rz(tw_rz_micrometer(6.3), tw_corner_radius_millimeter(0.8),
///     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(10), &feed, NULL);
///     feed.mm_per_rev is 0.200403.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_rz(
    rz: tw_rz,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = feed_for_rz(
                rz,
                corner_radius,
                cutting_edge_angle,
                minor_cutting_edge_angle,
            )?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_for_rz for every row.
///
/// Columns, see the first page: rz, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_feed_for_rz_column(
    rz: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rz>("rz", rz),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            rz,
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle,
        ]| {
            let found = feed_for_rz(
                tw_rz { um: rz },
                tw_corner_radius { mm: corner_radius },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_minor_cutting_edge_angle {
                    deg: minor_cutting_edge_angle,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn feed_for_rt(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<Feed, Error> {
    feed_for_finish::feed_for_rt(
        rt.read()?,
        &outline(corner_radius, cutting_edge_angle, minor_cutting_edge_angle)?,
    )
}

/// The feed that leaves a total height with the outline of a tool, exactly.
///
/// Refused (TW_CONTRADICTION): edge angles of 180 deg together, and a height that no plausible feed
/// leaves. detail may be NULL. After a failure the output is NaN.
///
/// Source: derived, as tw_theoretical_roughness.
/// Example: tw_feed_for_rt(tw_rt_micrometer(10), tw_corner_radius_millimeter(0.4),
///     tw_cutting_edge_angle_degree(95), tw_minor_cutting_edge_angle_degree(5), &feed, NULL);
///     feed.mm_per_rev is 0.220647.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_rt(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = feed_for_rt(
                rt,
                corner_radius,
                cutting_edge_angle,
                minor_cutting_edge_angle,
            )?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_for_rt for every row.
///
/// Columns, see the first page: rt, corner_radius, cutting_edge_angle, minor_cutting_edge_angle are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_feed_for_rt_column(
    rt: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rt>("rt", rt),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            rt,
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle,
        ]| {
            let found = feed_for_rt(
                tw_rt { um: rt },
                tw_corner_radius { mm: corner_radius },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_minor_cutting_edge_angle {
                    deg: minor_cutting_edge_angle,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn feed_for_rz_arc_of(rz: tw_rz, corner_radius: tw_corner_radius) -> Result<Feed, Error> {
    let rz = rz.read()?;
    let corner_radius = corner_radius.read()?;

    feed_for_finish::feed_for_rz_arc(rz, corner_radius)
}

/// The feed that leaves a maximum height Rz when the corner arc alone makes the finish: 2 sqrt(2
/// r Rz - Rz^2). For a tool whose minor cutting edge angle is not known; with it see
/// tw_feed_for_rz. A height that the arc cannot leave, or no plausible feed does, is refused
/// (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived, as tw_arc_height.
/// Example: tw_feed_for_rz_arc(tw_rz_micrometer(6.3), tw_corner_radius_millimeter(0.8), &feed,
///     NULL); feed.mm_per_rev is 0.200403.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_rz_arc(
    rz: tw_rz,
    corner_radius: tw_corner_radius,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || Ok(tw_feed::from(feed_for_rz_arc_of(rz, corner_radius)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_for_rz_arc for every row.
///
/// Columns, see the first page: rz and corner_radius are read, feed is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_rz_arc_column(
    rz: *const tw_column,
    corner_radius: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rz>("rz", rz),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[rz, corner_radius]| {
        let found = feed_for_rz_arc_of(tw_rz { um: rz }, tw_corner_radius { mm: corner_radius })?;
        Ok(([found.trade()], 0))
    })
}

fn feed_for_ra_arc_of(ra: tw_ra, corner_radius: tw_corner_radius) -> Result<Feed, Error> {
    let ra = ra.read()?;
    let corner_radius = corner_radius.read()?;

    feed_for_finish::feed_for_ra_arc(ra, corner_radius)
}

/// The feed that leaves an arithmetic mean height Ra when the corner arc alone makes the finish:
/// about sqrt(18 sqrt(3) r Ra), then exactly. For a tool whose minor cutting edge angle is not
/// known; with it see tw_feed_for_ra. A height that the arc cannot leave, or no plausible feed
/// does, is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived, as tw_arc_roughness.
/// Example: tw_feed_for_ra_arc(tw_ra_microinch(32), tw_corner_radius_inch_fraction(1, 64), &feed,
///     NULL); tw_feed_as_inch_per_revolution(feed) is 0.00394192.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_ra_arc(
    ra: tw_ra,
    corner_radius: tw_corner_radius,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || Ok(tw_feed::from(feed_for_ra_arc_of(ra, corner_radius)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_for_ra_arc for every row.
///
/// Columns, see the first page: ra and corner_radius are read, feed is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_for_ra_arc_column(
    ra: *const tw_column,
    corner_radius: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Ra>("ra", ra),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[ra, corner_radius]| {
        let found = feed_for_ra_arc_of(tw_ra { um: ra }, tw_corner_radius { mm: corner_radius })?;
        Ok(([found.trade()], 0))
    })
}
