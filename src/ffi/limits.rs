//! Limits and fits: the limits of a class, deviations, clearances.

use std::ffi::c_char;

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{Failure, tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::Error;
use crate::quantity::{Clearance, Diameter, LowerDeviation, Quantity, UpperDeviation};
use crate::standards::fit::{Fit, HoleLimits, ShaftLimits};
use crate::standards::limit_deviations::LimitDeviations;
use crate::standards::limits::Limits;
use crate::standards::tolerance_class::ToleranceClass;

/// Longer text is no class; a byte beyond it is not looked at.
const LONGEST_CLASS: usize = 15;

fn class_of(class_name: *const c_char) -> Result<ToleranceClass, Failure> {
    if class_name.is_null() {
        return Err(Failure::null("class_name"));
    }
    let mut bytes = [0_u8; LONGEST_CLASS];
    let mut length = 0;
    loop {
        // SAFETY: NUL-ended text (contract of the header), read up to its NUL and no farther.
        let byte = unsafe { class_name.add(length).read() } as u8;
        if byte == 0 {
            break;
        }
        if length == LONGEST_CLASS {
            return Err(Failure::misuse(
                tw_status::TW_MISUSE,
                "class_name",
                format!("more than {LONGEST_CLASS} bytes"),
                "a class such as \"h7\"",
                "pass the class alone, NUL-ended",
            ));
        }
        bytes[length] = byte;
        length += 1;
    }
    let text = std::str::from_utf8(&bytes[..length]).map_err(|trouble| {
        Failure::misuse(
            tw_status::TW_BAD_UTF8,
            "class_name",
            format!(
                "bytes that are not UTF-8 from byte {}",
                trouble.valid_up_to()
            ),
            "UTF-8",
            "convert the text before the call",
        )
    })?;
    Ok(text
        .parse::<ToleranceClass>()
        .map_err(|error| error.at("class_name"))?)
}

fn deviations_of(nominal: tw_diameter, class: ToleranceClass) -> Result<LimitDeviations, Error> {
    Ok(class.deviations(nominal.named("nominal")?)?.value)
}

/// The upper and the lower limit deviation of a tolerance class at a nominal size (ISO 286-2, from
/// memory): largest and smallest size less nominal size. class_name is NUL-ended text such as "h7"
/// or "H7": small letters are shafts, capitals holes.
///
/// Nominal sizes over 0 up to 500 mm. Text that is no class is refused with the class it is nearest
/// to, where there is one. An output may be NULL unless both are. detail may be NULL. After a
/// failure the outputs are NaN.
///
/// Source: ISO 286-1:2010 and ISO 286-2:2010, from memory.
/// Example: tw_deviations_of_class(tw_diameter_millimeter(30), "g6", &upper_deviation,
///     &lower_deviation, NULL); tw_upper_deviation_as_micrometer(upper_deviation) is -7.000 and
///     tw_lower_deviation_as_micrometer(lower_deviation) is -20.00.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_deviations_of_class(
    nominal: tw_diameter,
    class_name: *const c_char,
    upper_deviation: *mut tw_upper_deviation,
    lower_deviation: *mut tw_lower_deviation,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(upper_deviation.is_null() && lower_deviation.is_null()),
        || {
            let found = deviations_of(nominal, class_of(class_name)?)?;
            Ok((
                tw_upper_deviation::from(found.upper()),
                tw_lower_deviation::from(found.lower()),
            ))
        },
        |(upper_is, lower_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(upper_deviation, upper_is);
                put(lower_deviation, lower_is);
            }
        },
    )
}

/// tw_deviations_of_class for every row.
///
/// Columns, see the first page: nominal is read, upper_deviation and lower_deviation are written;
/// one of them may be NULL. class_name is one class for all rows; one that is refused fails the
/// whole call. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_deviations_of_class_column(
    nominal: *const tw_column,
    class_name: *const c_char,
    upper_deviation: *const tw_out_column,
    lower_deviation: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("nominal", nominal),),
        outputs: [
            Output::of::<UpperDeviation>("upper_deviation", upper_deviation),
            Output::of::<LowerDeviation>("lower_deviation", lower_deviation),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| class_of(class_name)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(class) => job.run_checked(detail, |[nominal]| {
            let found = deviations_of(tw_diameter { mm: nominal }, class)?;
            Ok(([found.upper().trade(), found.lower().trade()], 0))
        }),
    }
}

fn limits_of(nominal: tw_diameter, class: ToleranceClass) -> Result<Limits, Error> {
    Ok(class.limits(nominal.named("nominal")?)?.value)
}

/// The smallest and the largest size of a tolerance class at a nominal size. class_name as for
/// tw_deviations_of_class.
///
/// A class so coarse for its size that the smallest size would be none is refused
/// (TW_CONTRADICTION). An output may be NULL unless both are. detail may be NULL. After a failure
/// the outputs are NaN.
///
/// Source: ISO 286-1:2010 and ISO 286-2:2010, from memory.
/// Example: tw_limits_of_class(tw_diameter_millimeter(40), "h6", &smallest, &largest, NULL);
///     smallest.mm is 39.984 and largest.mm is 40.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_limits_of_class(
    nominal: tw_diameter,
    class_name: *const c_char,
    smallest: *mut tw_diameter,
    largest: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(smallest.is_null() && largest.is_null()),
        || {
            let found = limits_of(nominal, class_of(class_name)?)?;
            Ok((
                tw_diameter::from(found.smallest()),
                tw_diameter::from(found.largest()),
            ))
        },
        |(smallest_is, largest_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(smallest, smallest_is);
                put(largest, largest_is);
            }
        },
    )
}

/// tw_limits_of_class for every row.
///
/// Columns, see the first page: nominal is read, smallest and largest are written; one of them may
/// be NULL. class_name is one class for all rows; one that is refused fails the whole call.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_limits_of_class_column(
    nominal: *const tw_column,
    class_name: *const c_char,
    smallest: *const tw_out_column,
    largest: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("nominal", nominal),),
        outputs: [
            Output::of::<Diameter>("smallest", smallest),
            Output::of::<Diameter>("largest", largest),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| class_of(class_name)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(class) => job.run_checked(detail, |[nominal]| {
            let found = limits_of(tw_diameter { mm: nominal }, class)?;
            Ok(([found.smallest().trade(), found.largest().trade()], 0))
        }),
    }
}

fn clearance_of(
    smallest_hole: tw_diameter,
    largest_hole: tw_diameter,
    smallest_shaft: tw_diameter,
    largest_shaft: tw_diameter,
) -> Result<Fit, Error> {
    // In the order of the arguments, so that of several bad values the first is told.
    let smallest_hole = smallest_hole.named("smallest_hole")?;
    let largest_hole = largest_hole.named("largest_hole")?;
    let smallest_shaft = smallest_shaft.named("smallest_shaft")?;
    let largest_shaft = largest_shaft.named("largest_shaft")?;
    let hole =
        Limits::new(smallest_hole, largest_hole).map_err(|error| error.at("smallest_hole"))?;
    let shaft =
        Limits::new(smallest_shaft, largest_shaft).map_err(|error| error.at("smallest_shaft"))?;
    Fit::of(HoleLimits::new(hole), ShaftLimits::new(shaft))
}

/// The least and the largest clearance of a fit: smallest hole less largest shaft, largest hole less
/// smallest shaft. Negative is interference.
///
/// Limits upside down, and a hole and a shaft farther apart than 20 mm, are refused
/// (TW_CONTRADICTION). An output may be NULL unless both are. detail may be NULL. After a failure
/// the outputs are NaN.
///
/// Source: ISO 286-1:2010, clearance and interference, from memory.
/// Example: tw_clearance_of_fit(tw_diameter_millimeter(30), tw_diameter_millimeter(30.021),
///     tw_diameter_millimeter(29.98), tw_diameter_millimeter(29.993), &least_clearance,
///     &largest_clearance, NULL); least_clearance.mm is 0.007000 and
///     largest_clearance.mm is 0.04100.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_clearance_of_fit(
    smallest_hole: tw_diameter,
    largest_hole: tw_diameter,
    smallest_shaft: tw_diameter,
    largest_shaft: tw_diameter,
    least_clearance: *mut tw_clearance,
    largest_clearance: *mut tw_clearance,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(least_clearance.is_null() && largest_clearance.is_null()),
        || {
            let found = clearance_of(smallest_hole, largest_hole, smallest_shaft, largest_shaft)?;
            Ok((
                tw_clearance::from(found.least_clearance()),
                tw_clearance::from(found.largest_clearance()),
            ))
        },
        |(least_is, largest_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(least_clearance, least_is);
                put(largest_clearance, largest_is);
            }
        },
    )
}

/// tw_clearance_of_fit for every row.
///
/// Columns, see the first page: smallest_hole, largest_hole, smallest_shaft and largest_shaft are
/// read, least_clearance and largest_clearance are written; one of them may be NULL. row_status may
/// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_clearance_of_fit_column(
    smallest_hole: *const tw_column,
    largest_hole: *const tw_column,
    smallest_shaft: *const tw_column,
    largest_shaft: *const tw_column,
    least_clearance: *const tw_out_column,
    largest_clearance: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest_hole", smallest_hole),
            Input::of::<Diameter>("largest_hole", largest_hole),
            Input::of::<Diameter>("smallest_shaft", smallest_shaft),
            Input::of::<Diameter>("largest_shaft", largest_shaft),
        ),
        outputs: [
            Output::of::<Clearance>("least_clearance", least_clearance),
            Output::of::<Clearance>("largest_clearance", largest_clearance),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[hole_from, hole_to, shaft_from, shaft_to]| {
        let found = clearance_of(
            tw_diameter { mm: hole_from },
            tw_diameter { mm: hole_to },
            tw_diameter { mm: shaft_from },
            tw_diameter { mm: shaft_to },
        )?;
        Ok((
            [
                found.least_clearance().trade(),
                found.largest_clearance().trade(),
            ],
            0,
        ))
    })
}

fn limits_from_deviations_of(
    nominal: tw_diameter,
    upper_deviation: tw_upper_deviation,
    lower_deviation: tw_lower_deviation,
) -> Result<(Diameter, Diameter), Error> {
    let nominal = nominal.named("nominal")?;
    let upper_deviation = upper_deviation.read()?;
    let lower_deviation = lower_deviation.read()?;
    let deviations = LimitDeviations::new(upper_deviation, lower_deviation)?;
    let found = Limits::from_deviations(nominal, deviations)?;
    Ok((found.smallest(), found.largest()))
}

/// The limits of a size, smallest and largest, from its upper and lower limit deviation. Refused
/// (TW_CONTRADICTION): an upper deviation that is not above the lower one, and a deviation larger
/// than the size itself.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 286-1, limits of size (from memory).
/// Example: tw_limits_from_deviations(tw_diameter_millimeter(30),
///     tw_upper_deviation_micrometer(-7), tw_lower_deviation_micrometer(-20), &smallest, &largest,
///     NULL); smallest.mm is 29.980 and largest.mm is 29.993.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_limits_from_deviations(
    nominal: tw_diameter,
    upper_deviation: tw_upper_deviation,
    lower_deviation: tw_lower_deviation,
    smallest: *mut tw_diameter,
    largest: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(smallest.is_null() && largest.is_null()),
        || {
            let (smallest_is, largest_is) =
                limits_from_deviations_of(nominal, upper_deviation, lower_deviation)?;
            Ok((
                tw_diameter::from(smallest_is),
                tw_diameter::from(largest_is),
            ))
        },
        |(smallest_is, largest_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(smallest, smallest_is);
                put(largest, largest_is);
            }
        },
    )
}

/// tw_limits_from_deviations for every row.
///
/// Columns, see the first page: nominal, upper_deviation and lower_deviation are read, smallest
/// and largest are written, each may be NULL unless both are. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_limits_from_deviations_column(
    nominal: *const tw_column,
    upper_deviation: *const tw_column,
    lower_deviation: *const tw_column,
    smallest: *const tw_out_column,
    largest: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("nominal", nominal),
            Input::of::<UpperDeviation>("upper_deviation", upper_deviation),
            Input::of::<LowerDeviation>("lower_deviation", lower_deviation),
        ),
        outputs: [
            Output::of::<Diameter>("smallest", smallest),
            Output::of::<Diameter>("largest", largest),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[nominal, upper_deviation, lower_deviation]| {
        let (smallest, largest) = limits_from_deviations_of(
            tw_diameter { mm: nominal },
            tw_upper_deviation {
                mm: upper_deviation,
            },
            tw_lower_deviation {
                mm: lower_deviation,
            },
        )?;
        Ok(([smallest.trade(), largest.trade()], 0))
    })
}

fn deviations_from_of(
    nominal: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
) -> Result<(UpperDeviation, LowerDeviation), Error> {
    let nominal = nominal.named("nominal")?;
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let limits = super::zone(smallest, largest)?;
    let found = limits.deviations(nominal)?;
    Ok((found.upper(), found.lower()))
}

/// Upper and lower limit deviation of limits from a nominal size. Refused (TW_CONTRADICTION):
/// limits that are equal or upside down, and a nominal size so far off that one of the figures is
/// a slip.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 286-1: upper and lower limit deviation, from memory.
/// Example: tw_deviations_from(tw_diameter_millimeter(30), tw_diameter_millimeter(29.98),
///     tw_diameter_millimeter(29.993), &upper_deviation, &lower_deviation, NULL);
///     upper_deviation.mm is -0.007000 and lower_deviation.mm is -0.02000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_deviations_from(
    nominal: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    upper_deviation: *mut tw_upper_deviation,
    lower_deviation: *mut tw_lower_deviation,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(upper_deviation.is_null() && lower_deviation.is_null()),
        || {
            let (upper_deviation_is, lower_deviation_is) =
                deviations_from_of(nominal, smallest, largest)?;
            Ok((
                tw_upper_deviation::from(upper_deviation_is),
                tw_lower_deviation::from(lower_deviation_is),
            ))
        },
        |(upper_deviation_is, lower_deviation_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(upper_deviation, upper_deviation_is);
                put(lower_deviation, lower_deviation_is);
            }
        },
    )
}

/// tw_deviations_from for every row.
///
/// Columns, see the first page: nominal, smallest and largest are read, upper_deviation and
/// lower_deviation are written, each may be NULL unless both are. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_deviations_from_column(
    nominal: *const tw_column,
    smallest: *const tw_column,
    largest: *const tw_column,
    upper_deviation: *const tw_out_column,
    lower_deviation: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("nominal", nominal),
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
        ),
        outputs: [
            Output::of::<UpperDeviation>("upper_deviation", upper_deviation),
            Output::of::<LowerDeviation>("lower_deviation", lower_deviation),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[nominal, smallest, largest]| {
        let (upper_deviation, lower_deviation) = deviations_from_of(
            tw_diameter { mm: nominal },
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
        )?;
        Ok(([upper_deviation.trade(), lower_deviation.trade()], 0))
    })
}
