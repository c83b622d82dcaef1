//! How wide a zone is: standard tolerances, by table and by formula, and general tolerances.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, Quantity, Tolerance, WorkLength};
use crate::standards::general_tolerance::{self, GeneralClass};
use crate::standards::tolerance_grade::tolerance_by_formula;
use crate::standards::tolerance_grade::{ToleranceGrade, standard_tolerance};

fn grade_of(number: i32) -> Result<ToleranceGrade, Error> {
    match u8::try_from(number) {
        Ok(number) => ToleranceGrade::new(number),
        Err(_) => Err(Error::new(
            ErrorKind::OutOfRange,
            "grade",
            number.to_string(),
            "a standard tolerance grade from 1 to 16",
            "pass the number behind the letter on the drawing, such as 7 of h7",
        )),
    }
}

fn tolerance_of(nominal: tw_diameter, grade: ToleranceGrade) -> Result<Tolerance, Error> {
    Ok(standard_tolerance(nominal.named("nominal")?, grade)?.value)
}

/// The standard tolerance of a grade at a nominal size (ISO 286-1, from memory): how wide the zone
/// is. grade is 1 for IT1 to 16 for IT16; another number is refused.
///
/// Nominal sizes over 0 up to 500 mm; the upper end of a range belongs to it. An inch size is
/// converted exactly and has the tolerance of its metric range. detail may be NULL. After a failure
/// the output is NaN.
///
/// Source: ISO 286-1:2010, from memory; IT1 to IT4 are not confirmed by a formula.
/// Example: tw_standard_tolerance(tw_diameter_millimeter(40), 9, &tolerance, NULL);
///     tolerance.mm is 0.06200.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_tolerance(
    nominal: tw_diameter,
    grade: i32,
    tolerance: *mut tw_tolerance,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !tolerance.is_null(),
        || Ok(tw_tolerance::from(tolerance_of(nominal, grade_of(grade)?)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(tolerance, answer) },
    )
}

/// tw_standard_tolerance for every row.
///
/// Columns, see the first page: nominal is read, tolerance is written. grade is one number for all
/// rows; one that is refused fails the whole call. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_tolerance_column(
    nominal: *const tw_column,
    grade: i32,
    tolerance: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("nominal", nominal),),
        outputs: [Output::of::<Tolerance>("tolerance", tolerance)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(grade_of(grade)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(grade) => job.run_checked(detail, |[nominal]| {
            let found = tolerance_of(tw_diameter { mm: nominal }, grade)?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn tolerance_by_formula_of(
    nominal: tw_diameter,
    grade: ToleranceGrade,
) -> Result<(Diameter, Tolerance, Tolerance), Error> {
    let nominal = nominal.named("nominal")?;

    let found = tolerance_by_formula(nominal, grade)?;
    Ok((found.mean_diameter, found.tolerance_unit, found.tolerance))
}

/// What the table of standard tolerances was made from (ISO 286-1:1988, from memory): the
/// geometric mean D of the ends of the range of sizes, the tolerance unit i = 0.45 D^(1/3) + 0.001
/// D in micrometres with D in millimetres, and the tolerance, a multiple of i, not rounded. A
/// check and an explanation: drawings mean the table, tw_standard_tolerance.
///
/// grade is 5 for IT5 to 16 for IT16. Refused (TW_OUT_OF_RANGE): nominal sizes above 500 mm and
/// grades finer than IT5.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: ISO 286-1:1988, formulas for standard tolerances, from memory.
/// Example: tw_tolerance_by_formula(tw_diameter_millimeter(400), 11, &mean_diameter,
///     &tolerance_unit, &tolerance, NULL); mean_diameter.mm is 354.965,
///     tw_tolerance_as_micrometer(tolerance_unit) is 3.54117 and
///     tw_tolerance_as_micrometer(tolerance) is 354.117.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tolerance_by_formula(
    nominal: tw_diameter,
    grade: i32,
    mean_diameter: *mut tw_diameter,
    tolerance_unit: *mut tw_tolerance,
    tolerance: *mut tw_tolerance,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(mean_diameter.is_null() && tolerance_unit.is_null() && tolerance.is_null()),
        || {
            let grade = grade_of(grade)?;
            let (mean_diameter_is, tolerance_unit_is, tolerance_is) =
                tolerance_by_formula_of(nominal, grade)?;
            Ok((
                tw_diameter::from(mean_diameter_is),
                tw_tolerance::from(tolerance_unit_is),
                tw_tolerance::from(tolerance_is),
            ))
        },
        |(mean_diameter_is, tolerance_unit_is, tolerance_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(mean_diameter, mean_diameter_is);
                put(tolerance_unit, tolerance_unit_is);
                put(tolerance, tolerance_is);
            }
        },
    )
}

/// tw_tolerance_by_formula for every row.
///
/// Columns, see the first page: nominal is read, mean_diameter, tolerance_unit and tolerance are
/// written, each may be NULL unless all are. grade is one number for all rows; one that is
/// refused fails the whole call. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tolerance_by_formula_column(
    nominal: *const tw_column,
    grade: i32,
    mean_diameter: *const tw_out_column,
    tolerance_unit: *const tw_out_column,
    tolerance: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("nominal", nominal),),
        outputs: [
            Output::of::<Diameter>("mean_diameter", mean_diameter),
            Output::of::<Tolerance>("tolerance_unit", tolerance_unit),
            Output::of::<Tolerance>("tolerance", tolerance),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(grade_of(grade)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(grade) => job.run_checked(detail, |[nominal]| {
            let (mean_diameter, tolerance_unit, tolerance) =
                tolerance_by_formula_of(tw_diameter { mm: nominal }, grade)?;
            Ok((
                [
                    mean_diameter.trade(),
                    tolerance_unit.trade(),
                    tolerance.trade(),
                ],
                0,
            ))
        }),
    }
}

fn general_class_of(letter: i32) -> Result<GeneralClass, Error> {
    GeneralClass::ALL
        .into_iter()
        .find(|class| letter == class.letter() as i32)
        .ok_or_else(|| {
            Error::new(
                ErrorKind::UnknownName,
                "class_letter",
                letter.to_string(),
                "the character 'f', 'm', 'c' or 'v'",
                "pass the letter that stands on the drawing after ISO 2768",
            )
        })
}

fn general_tolerance_of(length: tw_length, class_letter: GeneralClass) -> Result<Tolerance, Error> {
    let length = length.read()?;

    let found = general_tolerance::linear(length, class_letter)?;
    Ok(found.value.width())
}

/// The width of the zone that a length without a tolerance of its own has by a class of general
/// tolerances; half of it lies above and half below (ISO 2768-1:1989 table 1, from memory).
/// class_letter is the letter on the drawing as a character: 'f', 'm', 'c' or 'v'; another one is
/// refused (TW_UNKNOWN_NAME). Lengths, diameters and steps, not broken edges. A length beyond the
/// table, or for which the class has no value, is refused (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 2768-1:1989 table 1, from memory.
/// Example: tw_general_tolerance(tw_length_millimeter(100), 'f', &tolerance, NULL);
///     tolerance.mm is 0.3000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_general_tolerance(
    length: tw_length,
    class_letter: i32,
    tolerance: *mut tw_tolerance,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !tolerance.is_null(),
        || {
            let class_letter = general_class_of(class_letter)?;
            Ok(tw_tolerance::from(general_tolerance_of(
                length,
                class_letter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(tolerance, answer) },
    )
}

/// tw_general_tolerance for every row.
///
/// Columns, see the first page: length is read, tolerance is written. class_letter is one number
/// for all rows; one that is refused fails the whole call. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_general_tolerance_column(
    length: *const tw_column,
    class_letter: i32,
    tolerance: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<WorkLength>("length", length),),
        outputs: [Output::of::<Tolerance>("tolerance", tolerance)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(general_class_of(class_letter)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(class_letter) => job.run_checked(detail, |[length]| {
            let found = general_tolerance_of(tw_length { mm: length }, class_letter)?;
            Ok(([found.trade()], 0))
        }),
    }
}
