//! Tapers: their angle, the tailstock, the compound slide.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::taper::{self, Taper};
use crate::quantity::{
    CompoundAngle, Diameter, HalfAngle, Quantity, SetOver, TaperRatio, Travel, WorkLength,
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
        inputs: [
            Input::of::<Diameter>("large", large),
            Input::of::<Diameter>("small", small),
            Input::of::<WorkLength>("length", length),
        ],
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
        inputs: [
            Input::of::<TaperRatio>("taper_ratio", taper_ratio),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ],
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
        inputs: [
            Input::of::<Travel>("infeed", infeed),
            Input::of::<Travel>("travel", travel),
        ],
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
        inputs: [
            Input::of::<CompoundAngle>("compound_angle", compound_angle),
            Input::of::<Travel>("travel", travel),
        ],
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
