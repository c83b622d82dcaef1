//! Tapers: their angle, the tailstock, the compound slide.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::taper::{self, Taper};
use crate::quantity::{
    CompoundAngle, CrossSlideAngle, Diameter, DiameterError, HalfAngle, IncludedAngle, Quantity,
    SetOver, TaperRatio, Travel, WorkLength,
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

fn compound_angle_for_of(infeed: tw_travel, travel: tw_travel) -> Result<CompoundAngle, Error> {
    taper::angle_for_infeed(infeed.named("infeed")?, travel.read()?)
}

/// The angle of the compound slide to the axis at which a travel moves the tool in by infeed, on
/// the radius: asin(infeed/travel). A tenth wants 5.739 deg; a scale that is zero along the cross
/// slide reads 90 deg less that.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_compound_angle_for(
    infeed: tw_travel,
    travel: tw_travel,
    compound_angle: *mut tw_compound_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !compound_angle.is_null(),
        || {
            Ok(tw_compound_angle::from(compound_angle_for_of(
                infeed, travel,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(compound_angle, answer) },
    )
}

/// tw_compound_angle_for for every row.
///
/// Columns, see the first page: infeed and travel are read, compound_angle is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_compound_angle_for_column(
    infeed: *const tw_column,
    travel: *const tw_column,
    compound_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Travel>("infeed", infeed),
            Input::of::<Travel>("travel", travel),
        ),
        outputs: [Output::of::<CompoundAngle>(
            "compound_angle",
            compound_angle,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[infeed, travel]| {
        let found = compound_angle_for_of(tw_travel { mm: infeed }, tw_travel { mm: travel })?;
        Ok(([found.trade()], 0))
    })
}

fn compound_motion_of(
    compound_angle: tw_compound_angle,
    travel: tw_travel,
) -> Result<(Travel, Travel), Error> {
    let moved = taper::compound_motion(compound_angle.read()?, travel.read()?);
    Ok((moved.infeed, moved.shift))
}

/// How far a travel of the compound slide moves the tool in (on the radius) and along the axis:
/// travel times the sine and the cosine of the angle to the axis.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_compound_motion(
    compound_angle: tw_compound_angle,
    travel: tw_travel,
    infeed: *mut tw_travel,
    shift: *mut tw_travel,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(infeed.is_null() && shift.is_null()),
        || {
            let (infeed_found, shift_found) = compound_motion_of(compound_angle, travel)?;
            Ok((tw_travel::from(infeed_found), tw_travel::from(shift_found)))
        },
        |(infeed_found, shift_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(infeed, infeed_found);
                put(shift, shift_found);
            }
        },
    )
}

/// tw_compound_motion for every row.
///
/// Columns, see the first page: compound_angle and travel are read, infeed and shift are written,
/// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_compound_motion_column(
    compound_angle: *const tw_column,
    travel: *const tw_column,
    infeed: *const tw_out_column,
    shift: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CompoundAngle>("compound_angle", compound_angle),
            Input::of::<Travel>("travel", travel),
        ),
        outputs: [
            Output::of::<Travel>("infeed", infeed),
            Output::of::<Travel>("shift", shift),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[compound_angle, travel]| {
        let (infeed, shift) = compound_motion_of(
            tw_compound_angle {
                deg: compound_angle,
            },
            tw_travel { mm: travel },
        )?;
        Ok(([infeed.trade(), shift.trade()], 0))
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

fn taper_slide_travel_of(taper_ratio: tw_taper_ratio, length: tw_length) -> Result<Travel, Error> {
    let taper_ratio = taper_ratio.read()?;
    let length = length.read()?;

    Ok(Taper::of_ratio(taper_ratio).slide_travel(length))
}

/// The travel of the compound slide, set to the half angle, over a length of a taper 1:x along
/// the axis: length / cos(half angle).
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_slide_travel(
    taper_ratio: tw_taper_ratio,
    length: tw_length,
    travel: *mut tw_travel,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !travel.is_null(),
        || Ok(tw_travel::from(taper_slide_travel_of(taper_ratio, length)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(travel, answer) },
    )
}

/// tw_taper_slide_travel for every row.
///
/// Columns, see the first page: taper_ratio and length are read, travel is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_slide_travel_column(
    taper_ratio: *const tw_column,
    length: *const tw_column,
    travel: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [Output::of::<Travel>("travel", travel)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[taper_ratio, length]| {
        let found = taper_slide_travel_of(
            tw_taper_ratio { ratio: taper_ratio },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn from_cross_slide_of(compound_angle: tw_compound_angle) -> Result<CrossSlideAngle, Error> {
    let compound_angle = compound_angle.read()?;

    Ok(taper::from_cross_slide(compound_angle))
}

/// The angle of the compound slide as a scale reads it that is zero along the cross slide: 90 deg
/// less that to the axis. Scales differ from lathe to lathe: prove the setting with an indicator.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_from_cross_slide(
    compound_angle: tw_compound_angle,
    compound_angle_from_cross_slide: *mut tw_compound_angle_from_cross_slide,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !compound_angle_from_cross_slide.is_null(),
        || {
            Ok(tw_compound_angle_from_cross_slide::from(
                from_cross_slide_of(compound_angle)?,
            ))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(compound_angle_from_cross_slide, answer) },
    )
}

/// tw_from_cross_slide for every row.
///
/// Columns, see the first page: compound_angle is read, compound_angle_from_cross_slide is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_from_cross_slide_column(
    compound_angle: *const tw_column,
    compound_angle_from_cross_slide: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<CompoundAngle>("compound_angle", compound_angle),),
        outputs: [Output::of::<CrossSlideAngle>(
            "compound_angle_from_cross_slide",
            compound_angle_from_cross_slide,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[compound_angle]| {
        let found = from_cross_slide_of(tw_compound_angle {
            deg: compound_angle,
        })?;
        Ok(([found.trade()], 0))
    })
}

fn from_axis_of(
    compound_angle_from_cross_slide: tw_compound_angle_from_cross_slide,
) -> Result<CompoundAngle, Error> {
    let compound_angle_from_cross_slide = compound_angle_from_cross_slide.read()?;

    taper::from_axis(compound_angle_from_cross_slide)
}

/// The angle of the compound slide to the axis, from a reading of a scale that is zero along the
/// cross slide: 90 deg less that. A slide that stands square to the axis is refused
/// (TW_OUT_OF_RANGE): it would not move along it.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_from_axis(
    compound_angle_from_cross_slide: tw_compound_angle_from_cross_slide,
    compound_angle: *mut tw_compound_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !compound_angle.is_null(),
        || {
            Ok(tw_compound_angle::from(from_axis_of(
                compound_angle_from_cross_slide,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(compound_angle, answer) },
    )
}

/// tw_from_axis for every row.
///
/// Columns, see the first page: compound_angle_from_cross_slide is read, compound_angle is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_from_axis_column(
    compound_angle_from_cross_slide: *const tw_column,
    compound_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<CrossSlideAngle>(
            "compound_angle_from_cross_slide",
            compound_angle_from_cross_slide,
        ),),
        outputs: [Output::of::<CompoundAngle>(
            "compound_angle",
            compound_angle,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[compound_angle_from_cross_slide]| {
        let found = from_axis_of(tw_compound_angle_from_cross_slide {
            deg: compound_angle_from_cross_slide,
        })?;
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
