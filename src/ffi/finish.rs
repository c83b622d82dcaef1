//! Doors of the finish: the least chip, the feed for a roughness, the filter of a profile; each with
//! its column twin.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::finish::ToolOutline;
use crate::physics::least_chip::{self, LeastChipModel, LeastChipRegime, LeastChipRoughness};
use crate::physics::{feed_for_finish, gaussian, speed};
use crate::quantity::{
    ChipThickness, CornerRadius, CutOff, CuttingEdgeAngle, EdgeRadius, Feed, FrictionAngle,
    HandwheelRate, MinorCuttingEdgeAngle, Quantity, Ra, Rsm, Rt, Rz, SpindleSpeed, Transmission,
    Travel,
};

/// On which side of its best feed a finish with a least chip lies. Returned as int32_t; a later
/// version may know more of them.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_least_chip_regime {
    /// At the best feed or above: the formula holds.
    TW_LEAST_CHIP_CUTTING = 1,
    /// Below the best feed: outside the formula's range, which grows without end there.
    TW_LEAST_CHIP_BELOW_BEST_FEED = 2,
}

fn regime_number(regime: LeastChipRegime) -> i32 {
    (match regime {
        LeastChipRegime::Cutting => tw_least_chip_regime::TW_LEAST_CHIP_CUTTING,
        LeastChipRegime::BelowBestFeed => tw_least_chip_regime::TW_LEAST_CHIP_BELOW_BEST_FEED,
    }) as i32
}

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

fn rt_with_least_chip(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<LeastChipRoughness, Error> {
    least_chip::roughness_with_least_chip(
        feed.read()?,
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    )
}

/// The total height that a feed leaves on a corner radius where chips below a least thickness do not
/// form (Brammertz): f^2/(8 r) + (h_min/2)(1 + r h_min/f^2). regime is a number of enum
/// tw_least_chip_regime: below the best feed the height is outside the formula's range.
///
/// A corner radius of zero is refused (TW_CONTRADICTION). An output may be NULL unless both are.
/// detail may be NULL. After a failure the height is NaN and the regime 0.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rt_with_least_chip(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    rt: *mut tw_rt,
    regime: *mut i32,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(rt.is_null() && regime.is_null()),
        || {
            let found = rt_with_least_chip(feed, corner_radius, least_chip_thickness)?;
            Ok((tw_rt::from(found.rt), regime_number(found.regime)))
        },
        |(rt_is, regime_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(rt, rt_is);
                put(regime, regime_is);
            }
        },
    )
}

/// tw_rt_with_least_chip for every row.
///
/// Columns, see the first page: the first three are read, rt is written. regime may be NULL; else one
/// int32_t a row (0 for a bad row), regime_stride_bytes apart (at least 4). row_status likewise.
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_rt_with_least_chip_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    rt: *const tw_out_column,
    regime: *mut i32,
    regime_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Rt>("rt", rt)],
        regime: Numbers::at("regime", regime, regime_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, radius, least]| {
        let found = rt_with_least_chip(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: radius },
            tw_chip_thickness { mm: least },
        )?;
        Ok(([found.rt.trade()], regime_number(found.regime)))
    })
}

fn best_feed_with_least_chip(
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<Feed, Error> {
    Ok(least_chip::best_feed(
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    ))
}

/// The feed that leaves the least height where chips below a least thickness do not form:
/// sqrt(2 r h_min). That height is h_min; a finer feed makes the finish worse.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_best_feed_with_least_chip(
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = best_feed_with_least_chip(corner_radius, least_chip_thickness)?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_best_feed_with_least_chip for every row.
///
/// Columns, see the first page: corner_radius, least_chip_thickness are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_best_feed_with_least_chip_column(
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[corner_radius, least_chip_thickness]| {
        let found = best_feed_with_least_chip(
            tw_corner_radius { mm: corner_radius },
            tw_chip_thickness {
                mm: least_chip_thickness,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn feed_with_least_chip(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<Feed, Error> {
    least_chip::feed_with_least_chip(
        rt.read()?,
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    )
}

/// The feed that leaves a total height where chips below a least thickness do not form: the coarser
/// of the two, from the best feed on.
///
/// A height below the least chip thickness is refused (TW_IMPOSSIBLE), and a corner radius of zero
/// (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_with_least_chip(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = feed_with_least_chip(rt, corner_radius, least_chip_thickness)?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_with_least_chip for every row.
///
/// Columns, see the first page: rt, corner_radius, least_chip_thickness are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_with_least_chip_column(
    rt: *const tw_column,
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rt>("rt", rt),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[rt, corner_radius, least_chip_thickness]| {
        let found = feed_with_least_chip(
            tw_rt { um: rt },
            tw_corner_radius { mm: corner_radius },
            tw_chip_thickness {
                mm: least_chip_thickness,
            },
        )?;
        Ok(([found.trade()], 0))
    })
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

fn handwheel_rate(
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    travel_per_turn: tw_travel,
) -> Result<HandwheelRate, Error> {
    speed::handwheel_rate(
        feed.read()?,
        spindle_speed.read()?,
        travel_per_turn.named("travel_per_turn")?,
    )
}

/// How fast a hand turns the wheel of a slide for a feed: feed times spindle speed over the travel of
/// one turn. Below about 6 turns a minute no hand is steady.
///
/// A travel of zero is refused (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_handwheel_rate(
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    travel_per_turn: tw_travel,
    handwheel: *mut tw_handwheel,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !handwheel.is_null(),
        || {
            let found = handwheel_rate(feed, spindle_speed, travel_per_turn)?;
            Ok(tw_handwheel::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(handwheel, answer) },
    )
}

/// tw_handwheel_rate for every row.
///
/// Columns, see the first page: feed, spindle_speed, travel_per_turn are read,
/// handwheel is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_handwheel_rate_column(
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    travel_per_turn: *const tw_column,
    handwheel: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<Travel>("travel_per_turn", travel_per_turn),
        ),
        outputs: [Output::of::<HandwheelRate>("handwheel", handwheel)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, spindle_speed, travel_per_turn]| {
        let found = handwheel_rate(
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
            tw_travel {
                mm: travel_per_turn,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn mean_line_transmission(wavelength: tw_rsm, cut_off: tw_cut_off) -> Result<Transmission, Error> {
    Ok(gaussian::mean_line_transmission(
        wavelength.named("wavelength")?,
        cut_off.read()?,
    ))
}

/// How much of a wave the mean line of the Gaussian filter keeps (ISO 16610-21):
/// 2^(-(cut_off/wavelength)^2); the roughness profile keeps the rest. The wavelength is a mean width of
/// elements.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_line_transmission(
    wavelength: tw_rsm,
    cut_off: tw_cut_off,
    transmission: *mut tw_transmission,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !transmission.is_null(),
        || {
            let found = mean_line_transmission(wavelength, cut_off)?;
            Ok(tw_transmission::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(transmission, answer) },
    )
}

/// tw_mean_line_transmission for every row.
///
/// Columns, see the first page: wavelength, cut_off are read,
/// transmission is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_line_transmission_column(
    wavelength: *const tw_column,
    cut_off: *const tw_column,
    transmission: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rsm>("wavelength", wavelength),
            Input::of::<CutOff>("cut_off", cut_off),
        ),
        outputs: [Output::of::<Transmission>("transmission", transmission)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[wavelength, cut_off]| {
        let found = mean_line_transmission(tw_rsm { mm: wavelength }, tw_cut_off { mm: cut_off })?;
        Ok(([found.trade()], 0))
    })
}

fn least_chip_by_practice(edge_radius: tw_edge_radius) -> Result<ChipThickness, Error> {
    Ok(least_chip::least_chip(
        edge_radius.read()?,
        LeastChipModel::Practice,
    ))
}

/// The least thickness of chip that an edge of this radius cuts, by common practice: 0.3 times the
/// radius (0.2 to 0.4). With edges above 0.02 mm it overstates.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_thickness(
    edge_radius: tw_edge_radius,
    least_chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !least_chip_thickness.is_null(),
        || {
            let found = least_chip_by_practice(edge_radius)?;
            Ok(tw_chip_thickness::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(least_chip_thickness, answer) },
    )
}

/// tw_least_chip_thickness for every row.
///
/// Columns, see the first page: edge_radius is read,
/// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_thickness_column(
    edge_radius: *const tw_column,
    least_chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<EdgeRadius>("edge_radius", edge_radius),),
        outputs: [Output::of::<ChipThickness>(
            "least_chip_thickness",
            least_chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[edge_radius]| {
        let found = least_chip_by_practice(tw_edge_radius { mm: edge_radius })?;
        Ok(([found.trade()], 0))
    })
}

fn least_chip_by_friction(
    edge_radius: tw_edge_radius,
    friction_angle: tw_friction_angle,
) -> Result<ChipThickness, Error> {
    Ok(least_chip::least_chip(
        edge_radius.read()?,
        LeastChipModel::Friction(friction_angle.read()?),
    ))
}

/// The least thickness of chip that an edge of this radius cuts, from the angle of friction beta:
/// r_n (1 - cos(45 deg - beta/2)); without friction it is the model of a flow that parts at 45 deg.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_friction(
    edge_radius: tw_edge_radius,
    friction_angle: tw_friction_angle,
    least_chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !least_chip_thickness.is_null(),
        || {
            let found = least_chip_by_friction(edge_radius, friction_angle)?;
            Ok(tw_chip_thickness::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(least_chip_thickness, answer) },
    )
}

/// tw_least_chip_by_friction for every row.
///
/// Columns, see the first page: edge_radius, friction_angle are read,
/// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_friction_column(
    edge_radius: *const tw_column,
    friction_angle: *const tw_column,
    least_chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<EdgeRadius>("edge_radius", edge_radius),
            Input::of::<FrictionAngle>("friction_angle", friction_angle),
        ),
        outputs: [Output::of::<ChipThickness>(
            "least_chip_thickness",
            least_chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[edge_radius, friction_angle]| {
        let found = least_chip_by_friction(
            tw_edge_radius { mm: edge_radius },
            tw_friction_angle {
                deg: friction_angle,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}
