//! Column doors: the kernels of the scalar doors, over many rows at once.
//!
//! Nothing is allocated for good rows, nor for values out of their range: those are known before
//! the kernel is asked. Only the first bad row is asked again at the end, for its words.

use std::ffi::c_void;

use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::scalar::{regime_number, theoretical_roughness};
use super::status::tw_error;
use super::tw_status::{self, *};
use crate::physics::{finish, speed};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, CuttingSpeed, Diameter, Feed, MinorCuttingEdgeAngle, Quantity,
    Ra, Rq, Rt, Rz, SpindleSpeed,
};

/// A column of doubles to be read: where they lie, how far apart, how many, and what they are.
///
/// Row i is the double at data + i * stride_bytes; it need not be aligned, so that a column can be
/// a field of an array of the caller's own structs. stride_bytes is at least 8, also where count is
/// 1. count 1 is a constant for all rows.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_column {
    /// The first double; may be NULL where count is 0.
    pub data: *const c_void,
    /// Bytes from one row to the next.
    pub stride_bytes: usize,
    /// Number of rows, or 1 for a constant.
    pub count: usize,
    /// What the doubles are: a number of enum tw_quantity.
    pub quantity: i32,
    /// Their unit: a number of enum tw_unit.
    pub unit: i32,
}

/// A column of doubles to be written; laid out as tw_column. Its count is the number of rows.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_out_column {
    /// The first double; may be NULL where count is 0.
    pub data: *mut c_void,
    /// Bytes from one row to the next.
    pub stride_bytes: usize,
    /// Number of rows.
    pub count: usize,
    /// What the doubles are: a number of enum tw_quantity.
    pub quantity: i32,
    /// Their unit: a number of enum tw_unit.
    pub unit: i32,
}

/// tw_spindle_speed_for for every row.
///
/// Columns, see the first page: cutting_speed and diameter are read, spindle_speed is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_spindle_speed_for_column(
    cutting_speed: *const tw_column,
    diameter: *const tw_column,
    spindle_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<Diameter>("diameter", diameter),
        ),
        outputs: [Output::of::<SpindleSpeed>("spindle_speed", spindle_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cutting_speed, diameter]| {
        let n = speed::spindle_speed(
            CuttingSpeed::from_trade(cutting_speed)?,
            Diameter::from_trade(diameter)?,
        );
        Ok(([n.trade()], 0))
    })
}

/// tw_arc_height for every row.
///
/// Columns, see the first page: feed and corner_radius are read, rt is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_height_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    rt: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<Rt>("rt", rt)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |[feed, radius]| {
            let (Some(feed), Some(radius)) = (Feed::accepted(feed), CornerRadius::accepted(radius))
            else {
                return Err(TW_INTERNAL);
            };
            let rt = finish::arc_height_or_none(feed, radius).ok_or(TW_CONTRADICTION)?;
            Ok(([rt.trade()], 0))
        },
        |[feed, radius]| super::scalar::arc_height(feed, radius).err(),
    )
}

/// tw_theoretical_roughness for every row.
///
/// Columns, see the first page: the first four are read; rt, rz, ra and rq are written, each may be
/// NULL unless all are. regime may be NULL; else one int32_t a row (a number of enum tw_regime, 0
/// for a bad row), regime_stride_bytes apart (at least 4). row_status likewise. detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_theoretical_roughness_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    rt: *const tw_out_column,
    rz: *const tw_out_column,
    ra: *const tw_out_column,
    rq: *const tw_out_column,
    regime: *mut i32,
    regime_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let scalar = |[feed, radius, major, minor]: [f64; 4]| {
        theoretical_roughness(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: radius },
            tw_cutting_edge_angle { deg: major },
            tw_minor_cutting_edge_angle { deg: minor },
        )
    };
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ),
        outputs: [
            Output::of::<Rt>("rt", rt),
            Output::of::<Rz>("rz", rz),
            Output::of::<Ra>("ra", ra),
            Output::of::<Rq>("rq", rq),
        ],
        regime: Numbers::at("regime", regime, regime_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |row| {
            let [_, _, major, minor] = row;
            if 180.0 - major - minor <= 0.0 {
                return Err(TW_CONTRADICTION);
            }
            let found = scalar(row).map_err(|error| tw_status::from(error.kind()))?;
            Ok((
                [
                    found.rt.trade(),
                    found.rz.trade(),
                    found.ra.trade(),
                    found.rq.trade(),
                ],
                regime_number(found.regime),
            ))
        },
        |row| scalar(row).err(),
    )
}
