//! Tapers: half angle, ratio, included angle, diameters and length.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::taper::Taper;
use crate::quantity::{
    Diameter, DiameterError, HalfAngle, IncludedAngle, Quantity, TaperRatio, WorkLength,
};

fn taper_half_angle_of(
    large: tw_diameter,
    small: tw_diameter,
    length: tw_length,
) -> Result<(HalfAngle, TaperRatio), Error> {
    let taper = Taper::between(large.named("large")?, small.named("small")?, length.read()?)?;
    Ok((taper.half_angle(), taper.ratio()))
}

/// Half angle and ratio of a taper between two diameters: atan((large - small)/(2 length)), and the
/// x of 1:x. The half angle is also the setting of the compound slide on a scale that is zero along
/// the axis.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_half_angle(tw_diameter_inch(1.25), tw_diameter_inch(1), tw_length_inch(6),
///     &half_angle, &taper_ratio, NULL); half_angle.deg is 1.19349 and
///     taper_ratio.ratio is 24.0000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_half_angle(
    large: tw_diameter,
    small: tw_diameter,
    length: tw_length,
    half_angle: *mut tw_half_angle,
    taper_ratio: *mut tw_taper_ratio,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(half_angle.is_null() && taper_ratio.is_null()),
        || {
            let (half_angle_found, taper_ratio_found) = taper_half_angle_of(large, small, length)?;
            Ok((
                tw_half_angle::from(half_angle_found),
                tw_taper_ratio::from(taper_ratio_found),
            ))
        },
        |(half_angle_found, taper_ratio_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(half_angle, half_angle_found);
                put(taper_ratio, taper_ratio_found);
            }
        },
    )
}

/// tw_taper_half_angle for every row.
///
/// Columns, see the first page: large, small and length are read, half_angle and taper_ratio are
/// written, each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_taper_half_angle_column(
    large: *const tw_column,
    small: *const tw_column,
    length: *const tw_column,
    half_angle: *const tw_out_column,
    taper_ratio: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("large", large),
            Input::of::<Diameter>("small", small),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [
            Output::of::<HalfAngle>("half_angle", half_angle),
            Output::of::<TaperRatio>("taper_ratio", taper_ratio),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[large, small, length]| {
        let (half_angle, taper_ratio) = taper_half_angle_of(
            tw_diameter { mm: large },
            tw_diameter { mm: small },
            tw_length { mm: length },
        )?;
        Ok(([half_angle.trade(), taper_ratio.trade()], 0))
    })
}

fn taper_of_ratio_of(taper_ratio: tw_taper_ratio) -> Result<(HalfAngle, IncludedAngle), Error> {
    let taper_ratio = taper_ratio.read()?;

    let found = Taper::of_ratio(taper_ratio);
    Ok((found.half_angle(), found.included_angle()))
}

/// Half angle and included angle of a taper 1:x: atan(1/(2 x)), and twice that.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_of_ratio(tw_taper_ratio_one(19.922), &half_angle, &included_angle, NULL);
///     half_angle.deg is 1.43770 and included_angle.deg is 2.87540.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_ratio(
    taper_ratio: tw_taper_ratio,
    half_angle: *mut tw_half_angle,
    included_angle: *mut tw_included_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(half_angle.is_null() && included_angle.is_null()),
        || {
            let (half_angle_is, included_angle_is) = taper_of_ratio_of(taper_ratio)?;
            Ok((
                tw_half_angle::from(half_angle_is),
                tw_included_angle::from(included_angle_is),
            ))
        },
        |(half_angle_is, included_angle_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(half_angle, half_angle_is);
                put(included_angle, included_angle_is);
            }
        },
    )
}

/// tw_taper_of_ratio for every row.
///
/// Columns, see the first page: taper_ratio is read, half_angle and included_angle are written,
/// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_ratio_column(
    taper_ratio: *const tw_column,
    half_angle: *const tw_out_column,
    included_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<TaperRatio>("taper_ratio", taper_ratio),),
        outputs: [
            Output::of::<HalfAngle>("half_angle", half_angle),
            Output::of::<IncludedAngle>("included_angle", included_angle),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio]| {
        let (half_angle, included_angle) =
            taper_of_ratio_of(tw_taper_ratio { ratio: taper_ratio })?;
        Ok(([half_angle.trade(), included_angle.trade()], 0))
    })
}

fn taper_of_half_angle_of(half_angle: tw_half_angle) -> Result<(TaperRatio, IncludedAngle), Error> {
    let half_angle = half_angle.read()?;

    let found = Taper::of_half_angle(half_angle);
    Ok((found.ratio(), found.included_angle()))
}

/// The x of 1:x of a taper whose side stands at a half angle to the axis, 1/(2 tan(half_angle)),
/// and its included angle.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_of_half_angle(tw_half_angle_degree(2.8624052), &taper_ratio, &included_angle,
///     NULL); taper_ratio.ratio is 10.0000 and included_angle.deg is 5.72481.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_half_angle(
    half_angle: tw_half_angle,
    taper_ratio: *mut tw_taper_ratio,
    included_angle: *mut tw_included_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(taper_ratio.is_null() && included_angle.is_null()),
        || {
            let (taper_ratio_is, included_angle_is) = taper_of_half_angle_of(half_angle)?;
            Ok((
                tw_taper_ratio::from(taper_ratio_is),
                tw_included_angle::from(included_angle_is),
            ))
        },
        |(taper_ratio_is, included_angle_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(taper_ratio, taper_ratio_is);
                put(included_angle, included_angle_is);
            }
        },
    )
}

/// tw_taper_of_half_angle for every row.
///
/// Columns, see the first page: half_angle is read, taper_ratio and included_angle are written,
/// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_half_angle_column(
    half_angle: *const tw_column,
    taper_ratio: *const tw_out_column,
    included_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<HalfAngle>("half_angle", half_angle),),
        outputs: [
            Output::of::<TaperRatio>("taper_ratio", taper_ratio),
            Output::of::<IncludedAngle>("included_angle", included_angle),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[half_angle]| {
        let (taper_ratio, included_angle) =
            taper_of_half_angle_of(tw_half_angle { deg: half_angle })?;
        Ok(([taper_ratio.trade(), included_angle.trade()], 0))
    })
}

fn taper_of_included_angle_of(
    included_angle: tw_included_angle,
) -> Result<(TaperRatio, HalfAngle), Error> {
    let included_angle = included_angle.read()?;

    let found = Taper::of_included_angle(included_angle);
    Ok((found.ratio(), found.half_angle()))
}

/// The x of 1:x and the half angle of a taper of an included angle.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_of_included_angle(tw_included_angle_degree(5.7248105), &taper_ratio,
///     &half_angle, NULL); taper_ratio.ratio is 10.0000 and half_angle.deg is 2.86241.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_included_angle(
    included_angle: tw_included_angle,
    taper_ratio: *mut tw_taper_ratio,
    half_angle: *mut tw_half_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(taper_ratio.is_null() && half_angle.is_null()),
        || {
            let (taper_ratio_is, half_angle_is) = taper_of_included_angle_of(included_angle)?;
            Ok((
                tw_taper_ratio::from(taper_ratio_is),
                tw_half_angle::from(half_angle_is),
            ))
        },
        |(taper_ratio_is, half_angle_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(taper_ratio, taper_ratio_is);
                put(half_angle, half_angle_is);
            }
        },
    )
}

/// tw_taper_of_included_angle for every row.
///
/// Columns, see the first page: included_angle is read, taper_ratio and half_angle are written,
/// each may be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_of_included_angle_column(
    included_angle: *const tw_column,
    taper_ratio: *const tw_out_column,
    half_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<IncludedAngle>("included_angle", included_angle),),
        outputs: [
            Output::of::<TaperRatio>("taper_ratio", taper_ratio),
            Output::of::<HalfAngle>("half_angle", half_angle),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[included_angle]| {
        let (taper_ratio, half_angle) = taper_of_included_angle_of(tw_included_angle {
            deg: included_angle,
        })?;
        Ok(([taper_ratio.trade(), half_angle.trade()], 0))
    })
}

fn taper_change_over_of(
    taper_ratio: tw_taper_ratio,
    length: tw_length,
) -> Result<DiameterError, Error> {
    let taper_ratio = taper_ratio.read()?;
    let length = length.read()?;

    Ok(Taper::of_ratio(taper_ratio).change_over(length))
}

/// How much the diameter of a taper 1:x changes over a length along the axis: length /
/// taper_ratio. Over 12 in it is the taper per foot.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_change_over(tw_taper_ratio_one(24), tw_length_inch(12), &change, NULL);
///     tw_diameter_error_as_inch(change) is 0.50000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_change_over(
    taper_ratio: tw_taper_ratio,
    length: tw_length,
    change: *mut tw_diameter_error,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !change.is_null(),
        || {
            Ok(tw_diameter_error::from(taper_change_over_of(
                taper_ratio,
                length,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(change, answer) },
    )
}

/// tw_taper_change_over for every row.
///
/// Columns, see the first page: taper_ratio and length are read, change is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_change_over_column(
    taper_ratio: *const tw_column,
    length: *const tw_column,
    change: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [Output::of::<DiameterError>("change", change)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, length]| {
        let found = taper_change_over_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn taper_small_for_of(
    taper_ratio: tw_taper_ratio,
    large: tw_diameter,
    length: tw_length,
) -> Result<Diameter, Error> {
    let taper_ratio = taper_ratio.read()?;
    let large = large.named("large")?;
    let length = length.read()?;

    Taper::of_ratio(taper_ratio).small_for(large, length)
}

/// The small diameter of a taper 1:x of a length: large - length / taper_ratio. A length at which
/// the taper has come to a point is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_small_for(tw_taper_ratio_one(10), tw_diameter_millimeter(40),
///     tw_length_millimeter(100), &small, NULL); small.mm is 30.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_small_for(
    taper_ratio: tw_taper_ratio,
    large: tw_diameter,
    length: tw_length,
    small: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !small.is_null(),
        || {
            Ok(tw_diameter::from(taper_small_for_of(
                taper_ratio,
                large,
                length,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(small, answer) },
    )
}

/// tw_taper_small_for for every row.
///
/// Columns, see the first page: taper_ratio, large and length are read, small is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_small_for_column(
    taper_ratio: *const tw_column,
    large: *const tw_column,
    length: *const tw_column,
    small: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<Diameter>("large", large),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [Output::of::<Diameter>("small", small)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, large, length]| {
        let found = taper_small_for_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_diameter { mm: large },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn taper_large_for_of(
    taper_ratio: tw_taper_ratio,
    small: tw_diameter,
    length: tw_length,
) -> Result<Diameter, Error> {
    let taper_ratio = taper_ratio.read()?;
    let small = small.named("small")?;
    let length = length.read()?;

    Ok(Taper::of_ratio(taper_ratio).large_for(small, length))
}

/// The large diameter of a taper 1:x of a length: small + length / taper_ratio.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_large_for(tw_taper_ratio_one(24), tw_diameter_inch(1), tw_length_inch(6),
///     &large, NULL); tw_diameter_as_inch(large) is 1.25000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_large_for(
    taper_ratio: tw_taper_ratio,
    small: tw_diameter,
    length: tw_length,
    large: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !large.is_null(),
        || {
            Ok(tw_diameter::from(taper_large_for_of(
                taper_ratio,
                small,
                length,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(large, answer) },
    )
}

/// tw_taper_large_for for every row.
///
/// Columns, see the first page: taper_ratio, small and length are read, large is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_large_for_column(
    taper_ratio: *const tw_column,
    small: *const tw_column,
    length: *const tw_column,
    large: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<Diameter>("small", small),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [Output::of::<Diameter>("large", large)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, small, length]| {
        let found = taper_large_for_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_diameter { mm: small },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn taper_length_between_of(
    taper_ratio: tw_taper_ratio,
    large: tw_diameter,
    small: tw_diameter,
) -> Result<WorkLength, Error> {
    let taper_ratio = taper_ratio.read()?;
    let large = large.named("large")?;
    let small = small.named("small")?;

    Taper::of_ratio(taper_ratio).length_between(large, small)
}

/// The length of a taper 1:x between two diameters: (large - small) taper_ratio. A small diameter
/// that is not smaller is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_length_between(tw_taper_ratio_one(24), tw_diameter_inch(1.25),
///     tw_diameter_inch(1), &length, NULL); tw_length_as_inch(length) is 6.0000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_length_between(
    taper_ratio: tw_taper_ratio,
    large: tw_diameter,
    small: tw_diameter,
    length: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !length.is_null(),
        || {
            Ok(tw_length::from(taper_length_between_of(
                taper_ratio,
                large,
                small,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(length, answer) },
    )
}

/// tw_taper_length_between for every row.
///
/// Columns, see the first page: taper_ratio, large and small are read, length is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_length_between_column(
    taper_ratio: *const tw_column,
    large: *const tw_column,
    small: *const tw_column,
    length: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<Diameter>("large", large),
            Input::of::<Diameter>("small", small),
        ),
        outputs: [Output::of::<WorkLength>("length", length)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, large, small]| {
        let found = taper_length_between_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_diameter { mm: large },
            tw_diameter { mm: small },
        )?;
        Ok(([found.trade()], 0))
    })
}
