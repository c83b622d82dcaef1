//! Measuring instruments: how far a sound one may be off.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, Quantity, SizeUncertainty};
use crate::standards::instrument::{self, Instrument};

/// What a diameter is measured with. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_instrument {
    /// Outside micrometer.
    TW_INSTRUMENT_MICROMETER = 1,
    /// Vernier or digital calliper that reads to 0.02 or 0.01 mm.
    TW_INSTRUMENT_CALLIPER = 2,
    /// Vernier calliper that reads to 0.05 mm.
    TW_INSTRUMENT_COARSE_CALLIPER = 3,
    /// Dial indicator of 0.01 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_DIAL_INDICATOR = 4,
    /// Lever indicator of 0.01 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_LEVER_INDICATOR = 5,
    /// Lever indicator of 0.002 mm, set on a gauge block or a ring.
    TW_INSTRUMENT_FINE_LEVER_INDICATOR = 6,
}

fn instrument_of(number: i32) -> Result<Instrument, Error> {
    [
        (
            tw_instrument::TW_INSTRUMENT_MICROMETER,
            Instrument::Micrometer,
        ),
        (tw_instrument::TW_INSTRUMENT_CALLIPER, Instrument::Calliper),
        (
            tw_instrument::TW_INSTRUMENT_COARSE_CALLIPER,
            Instrument::CoarseCalliper,
        ),
        (
            tw_instrument::TW_INSTRUMENT_DIAL_INDICATOR,
            Instrument::DialIndicator,
        ),
        (
            tw_instrument::TW_INSTRUMENT_LEVER_INDICATOR,
            Instrument::LeverIndicator,
        ),
        (
            tw_instrument::TW_INSTRUMENT_FINE_LEVER_INDICATOR,
            Instrument::FineLeverIndicator,
        ),
    ]
    .into_iter()
    .find(|(known, _)| *known as i32 == number)
    .map(|(_, instrument)| instrument)
    .ok_or_else(|| {
        Error::new(
            ErrorKind::UnknownName,
            "instrument",
            number.to_string(),
            "TW_INSTRUMENT_MICROMETER (1) to TW_INSTRUMENT_FINE_LEVER_INDICATOR (6)",
            "pass one of the names of enum tw_instrument",
        )
    })
}

fn instrument_error_of(
    diameter: tw_diameter,
    instrument: Instrument,
) -> Result<SizeUncertainty, Error> {
    let diameter = diameter.read()?;

    let found = instrument::largest_error(instrument, diameter)?;
    Ok(found.value)
}

/// The largest error that a sound measuring instrument may have at a size, to either side (DIN
/// 862, DIN 863-1, DIN 878, ISO 3611 and ISO 13385-1, from memory, unverified). In an uncertainty
/// budget it is half the width of a uniform distribution, unless a certificate says better. A
/// person's hand is not in it.
///
/// instrument is a number of enum tw_instrument. A diameter beyond the table is refused
/// (TW_OUT_OF_RANGE): micrometers up to 150 mm, callipers up to 300 mm, indicators up to 500 mm.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: from memory of DIN 862, DIN 863-1, DIN 878 and ISO 3611, ISO 13385-1, unverified.
/// Example: tw_instrument_error(tw_diameter_millimeter(30), TW_INSTRUMENT_MICROMETER, &error,
///     NULL); error.mm is 0.004000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_instrument_error(
    diameter: tw_diameter,
    instrument: i32,
    error: *mut tw_instrument_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !error.is_null(),
        || {
            let instrument = instrument_of(instrument)?;
            Ok(tw_instrument_uncertainty::from(instrument_error_of(
                diameter, instrument,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(error, answer) },
    )
}

/// tw_instrument_error for every row.
///
/// Columns, see the first page: diameter is read, error is written. instrument is one number for
/// all rows; one that is refused fails the whole call. row_status may be NULL; else one int32_t a
/// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_instrument_error_column(
    diameter: *const tw_column,
    instrument: i32,
    error: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("diameter", diameter),),
        outputs: [Output::of::<SizeUncertainty>("error", error)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(instrument_of(instrument)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(instrument) => job.run_checked(detail, |[diameter]| {
            let found = instrument_error_of(tw_diameter { mm: diameter }, instrument)?;
            Ok(([found.trade()], 0))
        }),
    }
}
