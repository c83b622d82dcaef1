//! The compound slide: the angle on its scale, how it moves, how far it travels for a taper.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::taper::{self, Taper};
use crate::quantity::{CompoundAngle, CrossSlideAngle, Quantity, TaperRatio, Travel, WorkLength};

fn compound_angle_for_of(infeed: tw_travel, travel: tw_travel) -> Result<CompoundAngle, Error> {
    taper::angle_for_infeed(infeed.named("infeed")?, travel.read()?)
}

/// The angle of the compound slide to the axis at which a travel moves the tool in by infeed, on
/// the radius: asin(infeed/travel). A tenth wants 5.739 deg; a scale that is zero along the cross
/// slide reads 90 deg less that.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_compound_angle_for(tw_travel_millimeter(0.01), tw_travel_millimeter(0.1),
///     &compound_angle, NULL); compound_angle.deg is 5.73917.
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
///
/// Source: geometry.
/// Example: tw_compound_motion(tw_compound_angle_degree(5.75), tw_travel_millimeter(0.05), &infeed,
///     &shift, NULL); tw_travel_as_micrometer(infeed) is 5.00940 and
///     tw_travel_as_micrometer(shift) is 49.7484.
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

fn taper_slide_travel_of(taper_ratio: tw_taper_ratio, length: tw_length) -> Result<Travel, Error> {
    let taper_ratio = taper_ratio.read()?;
    let length = length.read()?;

    Ok(Taper::of_ratio(taper_ratio).slide_travel(length))
}

/// The travel of the compound slide, set to the half angle, over a length of a taper 1:x along
/// the axis: length / cos(half angle).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; ratio and angle as in ISO 3040 (from memory).
/// Example: tw_taper_slide_travel(tw_taper_ratio_one(10), tw_length_millimeter(100), &travel,
///     NULL); travel.mm is 100.125.
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
///
/// Source: geometry.
/// Example: tw_from_cross_slide(tw_compound_angle_degree(30), &compound_angle_from_cross_slide,
///     NULL); compound_angle_from_cross_slide.deg is 60.000.
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
///
/// Source: geometry.
/// Example: tw_from_axis(tw_compound_angle_from_cross_slide_degree(60), &compound_angle, NULL);
///     compound_angle.deg is 30.000.
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
