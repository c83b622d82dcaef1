//! The set-over of a tailstock: for a taper, against one, and the error that it makes.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::scalar::support_of;
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::Error;
use crate::physics::bar::Support;
use crate::physics::measured_taper::{self, Measured};
use crate::physics::taper::{self, Taper};
use crate::quantity::{
    DiameterError, HalfAngle, Overhang, Quantity, SetOver, TaperRatio, WorkLength,
};

fn tailstock_set_over_of(
    taper_ratio: tw_taper_ratio,
    length_between_centres: tw_length,
) -> Result<SetOver, Error> {
    Ok(taper::set_over(
        Taper::of_ratio(taper_ratio.read()?),
        length_between_centres.named("length_between_centres")?,
    ))
}

/// How far the tailstock is set over towards the operator for a taper 1:x between centres:
/// length_between_centres times the sine of the half angle. Work between centres only.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: the axis of the work turns by half the angle about the headstock's centre.
/// Example: tw_tailstock_set_over(tw_taper_ratio_one(40), tw_length_inch(12), &set_over, NULL);
///     tw_set_over_as_inch(set_over) is 0.149988.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tailstock_set_over(
    taper_ratio: tw_taper_ratio,
    length_between_centres: tw_length,
    set_over: *mut tw_set_over,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !set_over.is_null(),
        || {
            Ok(tw_set_over::from(tailstock_set_over_of(
                taper_ratio,
                length_between_centres,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(set_over, answer) },
    )
}

/// tw_tailstock_set_over for every row.
///
/// Columns, see the first page: taper_ratio and length_between_centres are read, set_over is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tailstock_set_over_column(
    taper_ratio: *const tw_column,
    length_between_centres: *const tw_column,
    set_over: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ),
        outputs: [Output::of::<SetOver>("set_over", set_over)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, length_between_centres]| {
        let found = tailstock_set_over_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_length {
                mm: length_between_centres,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn usual_set_over_of(
    taper_ratio: tw_taper_ratio,
    length_between_centres: tw_length,
) -> Result<SetOver, Error> {
    let taper_ratio = taper_ratio.read()?;
    let length_between_centres = length_between_centres.named("length_between_centres")?;

    Ok(taper::usual_set_over(
        Taper::of_ratio(taper_ratio),
        length_between_centres,
    ))
}

/// The set-over of the tailstock in the usual form of the trade, with the tangent for the sine:
/// length_between_centres / (2 taper_ratio). Too large by 0.06 % at a half angle of 2 deg;
/// exactly: tw_tailstock_set_over. Work between centres only.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: usual form of the trade; common practice, no source.
/// Example: tw_usual_set_over(tw_taper_ratio_one(40), tw_length_inch(12), &set_over, NULL);
///     tw_set_over_as_inch(set_over) is 0.150000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_usual_set_over(
    taper_ratio: tw_taper_ratio,
    length_between_centres: tw_length,
    set_over: *mut tw_set_over,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !set_over.is_null(),
        || {
            Ok(tw_set_over::from(usual_set_over_of(
                taper_ratio,
                length_between_centres,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(set_over, answer) },
    )
}

/// tw_usual_set_over for every row.
///
/// Columns, see the first page: taper_ratio and length_between_centres are read, set_over is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_usual_set_over_column(
    taper_ratio: *const tw_column,
    length_between_centres: *const tw_column,
    set_over: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ),
        outputs: [Output::of::<SetOver>("set_over", set_over)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, length_between_centres]| {
        let found = usual_set_over_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_length {
                mm: length_between_centres,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn taper_of_set_over_of(
    set_over: tw_set_over,
    length_between_centres: tw_length,
) -> Result<(HalfAngle, TaperRatio), Error> {
    let set_over = set_over.read()?;
    let length_between_centres = length_between_centres.named("length_between_centres")?;

    let found = taper::taper_of_set_over(set_over, length_between_centres)?;
    Ok((found.half_angle(), found.ratio()))
}

/// Half angle and x of 1:x of the taper that a set-over of the tailstock turns: asin(set_over /
/// length_between_centres). A set-over that is nothing, towards the back, or as long as the work
/// is refused (TW_CONTRADICTION).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: geometry, as tw_tailstock_set_over.
/// Example: tw_taper_of_set_over(tw_set_over_millimeter(3.7497071), tw_length_millimeter(300),
///     &half_angle, &taper_ratio, NULL); half_angle.deg is 0.716160 and
///     taper_ratio.ratio is 40.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_set_over(
    set_over: tw_set_over,
    length_between_centres: tw_length,
    half_angle: *mut tw_half_angle,
    taper_ratio: *mut tw_taper_ratio,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(half_angle.is_null() && taper_ratio.is_null()),
        || {
            let (half_angle_is, taper_ratio_is) =
                taper_of_set_over_of(set_over, length_between_centres)?;
            Ok((
                tw_half_angle::from(half_angle_is),
                tw_taper_ratio::from(taper_ratio_is),
            ))
        },
        |(half_angle_is, taper_ratio_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(half_angle, half_angle_is);
                put(taper_ratio, taper_ratio_is);
            }
        },
    )
}

/// tw_taper_of_set_over for every row.
///
/// Columns, see the first page: set_over and length_between_centres are read, half_angle and
/// taper_ratio are written, each may be NULL unless both are. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_set_over_column(
    set_over: *const tw_column,
    length_between_centres: *const tw_column,
    half_angle: *const tw_out_column,
    taper_ratio: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SetOver>("set_over", set_over),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ),
        outputs: [
            Output::of::<HalfAngle>("half_angle", half_angle),
            Output::of::<TaperRatio>("taper_ratio", taper_ratio),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[set_over, length_between_centres]| {
        let (half_angle, taper_ratio) = taper_of_set_over_of(
            tw_set_over { mm: set_over },
            tw_length {
                mm: length_between_centres,
            },
        )?;
        Ok(([half_angle.trade(), taper_ratio.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn tailstock_correction_of(
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
    length_between_centres: tw_length,
) -> Result<SetOver, Error> {
    measured_taper::tailstock_correction(
        Measured::new(near_at.named("near_at")?, near_error.named("near_error")?),
        Measured::new(far_at.named("far_at")?, far_error.named("far_error")?),
        length_between_centres.named("length_between_centres")?,
    )
    .map_err(|error| error.at("far_at"))
}

/// How far to move the tailstock, towards the tool where positive, so that a bar between centres
/// comes out straight: errors of the diameter at two places, both measured from the headstock.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_tailstock_correction(tw_length_millimeter(100), tw_diameter_error_millimeter(0.01),
///     tw_length_millimeter(250), tw_diameter_error_millimeter(0.07), tw_length_millimeter(400),
///     &set_over, NULL); set_over.mm is 0.08000.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tailstock_correction(
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
    length_between_centres: tw_length,
    set_over: *mut tw_set_over,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !set_over.is_null(),
        || {
            Ok(tw_set_over::from(tailstock_correction_of(
                near_at,
                near_error,
                far_at,
                far_error,
                length_between_centres,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(set_over, answer) },
    )
}

/// tw_tailstock_correction for every row.
///
/// Columns, see the first page: near_at, near_error, far_at, far_error and length_between_centres
/// are read, set_over is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tailstock_correction_column(
    near_at: *const tw_column,
    near_error: *const tw_column,
    far_at: *const tw_column,
    far_error: *const tw_column,
    length_between_centres: *const tw_column,
    set_over: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<WorkLength>("near_at", near_at),
            Input::of::<DiameterError>("near_error", near_error),
            Input::of::<WorkLength>("far_at", far_at),
            Input::of::<DiameterError>("far_error", far_error),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ),
        outputs: [Output::of::<SetOver>("set_over", set_over)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            near_at,
            near_error,
            far_at,
            far_error,
            length_between_centres,
        ]| {
            let found = tailstock_correction_of(
                tw_length { mm: near_at },
                tw_diameter_error { mm: near_error },
                tw_length { mm: far_at },
                tw_diameter_error { mm: far_error },
                tw_length {
                    mm: length_between_centres,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn tailstock_error_of(
    set_over: tw_set_over,
    at: tw_length,
    overhang: tw_overhang,
    support: Support,
) -> Result<DiameterError, Error> {
    let set_over = set_over.read()?;
    let at = at.named("at")?;
    let overhang = overhang.read()?;

    measured_taper::tailstock_error(support, set_over, at, overhang)
}

/// The error of the diameter at a place when the tailstock stands off the axis. Between centres
/// -2 s a/L, a straight taper; in a rigid chuck with a centre the bar is bent: -s a^2 (3
/// L - a)/L^3; the chuck alone feels no tailstock: 0. set_over is positive towards the tool, at is
/// measured from the head, overhang is the length between the supports.
///
/// support is a number of enum tw_support. A place beyond the overhang is refused
/// (TW_CONTRADICTION). The reverse, between centres: tw_tailstock_correction.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived from the cantilever (Roark; Timoshenko, from memory).
/// Example: tw_tailstock_error(tw_set_over_millimeter(0.05), tw_length_millimeter(150),
///     tw_overhang_millimeter(300), TW_SUPPORT_BETWEEN_CENTRES, &diameter_error, NULL);
///     diameter_error.mm is -0.05000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tailstock_error(
    set_over: tw_set_over,
    at: tw_length,
    overhang: tw_overhang,
    support: i32,
    diameter_error: *mut tw_diameter_error,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter_error.is_null(),
        || {
            let support = support_of(support)?;
            Ok(tw_diameter_error::from(tailstock_error_of(
                set_over, at, overhang, support,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter_error, answer) },
    )
}

/// tw_tailstock_error for every row.
///
/// Columns, see the first page: set_over, at and overhang are read, diameter_error is written.
/// support is one number for all rows; one that is refused fails the whole call. row_status may
/// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tailstock_error_column(
    set_over: *const tw_column,
    at: *const tw_column,
    overhang: *const tw_column,
    support: i32,
    diameter_error: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SetOver>("set_over", set_over),
            Input::of::<WorkLength>("at", at),
            Input::of::<Overhang>("overhang", overhang),
        ),
        outputs: [Output::of::<DiameterError>(
            "diameter_error",
            diameter_error,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(support_of(support)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(support) => job.run_checked(detail, |[set_over, at, overhang]| {
            let found = tailstock_error_of(
                tw_set_over { mm: set_over },
                tw_length { mm: at },
                tw_overhang { mm: overhang },
                support,
            )?;
            Ok(([found.trade()], 0))
        }),
    }
}
