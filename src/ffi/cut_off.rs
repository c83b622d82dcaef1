//! The cut-offs of the filters of a profile, by feed, Ra and Rz.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::quantity::{CutOff, Feed, Quantity, Ra, Rz, ShortCutOff, WorkLength};
use crate::standards::texture;

fn cut_off_by_feed_of(feed: tw_feed) -> Result<(CutOff, WorkLength), Error> {
    let feed = feed.read()?;

    let found = texture::cut_off_by_feed(feed)?;
    Ok((found.value.long_wave(), found.value.evaluation_length))
}

/// Cut-off and evaluation length (five cut-offs) with which a turned surface is measured, from
/// the feed it was turned with: its feed marks are a pattern (ISO 4288:1996 table 3, from
/// memory). The upper end of a row of the table belongs to it. Beyond the table is refused
/// (TW_OUT_OF_RANGE).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 4288:1996 table 3, from memory.
/// Example: tw_cut_off_by_feed(tw_feed_millimeter_per_revolution(0.2), &cut_off,
///     &evaluation_length, NULL); cut_off.mm is 0.8000 and evaluation_length.mm is 4.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_feed(
    feed: tw_feed,
    cut_off: *mut tw_cut_off,
    evaluation_length: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(cut_off.is_null() && evaluation_length.is_null()),
        || {
            let (cut_off_is, evaluation_length_is) = cut_off_by_feed_of(feed)?;
            Ok((
                tw_cut_off::from(cut_off_is),
                tw_length::from(evaluation_length_is),
            ))
        },
        |(cut_off_is, evaluation_length_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(cut_off, cut_off_is);
                put(evaluation_length, evaluation_length_is);
            }
        },
    )
}

/// tw_cut_off_by_feed for every row.
///
/// Columns, see the first page: feed is read, cut_off and evaluation_length are written, each may
/// be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_feed_column(
    feed: *const tw_column,
    cut_off: *const tw_out_column,
    evaluation_length: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Feed>("feed", feed),),
        outputs: [
            Output::of::<CutOff>("cut_off", cut_off),
            Output::of::<WorkLength>("evaluation_length", evaluation_length),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed]| {
        let (cut_off, evaluation_length) = cut_off_by_feed_of(tw_feed { mm_per_rev: feed })?;
        Ok(([cut_off.trade(), evaluation_length.trade()], 0))
    })
}

fn cut_off_by_ra_of(ra: tw_ra) -> Result<(CutOff, WorkLength), Error> {
    let ra = ra.read()?;

    let found = texture::cut_off_by_ra(ra)?;
    Ok((found.value.long_wave(), found.value.evaluation_length))
}

/// Cut-off and evaluation length (five cut-offs) with which a surface without a pattern is
/// measured, from its Ra. A turned surface has one, its feed marks: tw_cut_off_by_feed (ISO
/// 4288:1996 table 1, from memory). The upper end of a row of the table belongs to it. Beyond the
/// table is refused (TW_OUT_OF_RANGE).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 4288:1996 table 1, from memory.
/// Example: tw_cut_off_by_ra(tw_ra_microinch(125), &cut_off, &evaluation_length, NULL);
///     cut_off.mm is 2.500 and evaluation_length.mm is 12.50.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_ra(
    ra: tw_ra,
    cut_off: *mut tw_cut_off,
    evaluation_length: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(cut_off.is_null() && evaluation_length.is_null()),
        || {
            let (cut_off_is, evaluation_length_is) = cut_off_by_ra_of(ra)?;
            Ok((
                tw_cut_off::from(cut_off_is),
                tw_length::from(evaluation_length_is),
            ))
        },
        |(cut_off_is, evaluation_length_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(cut_off, cut_off_is);
                put(evaluation_length, evaluation_length_is);
            }
        },
    )
}

/// tw_cut_off_by_ra for every row.
///
/// Columns, see the first page: ra is read, cut_off and evaluation_length are written, each may
/// be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_ra_column(
    ra: *const tw_column,
    cut_off: *const tw_out_column,
    evaluation_length: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Ra>("ra", ra),),
        outputs: [
            Output::of::<CutOff>("cut_off", cut_off),
            Output::of::<WorkLength>("evaluation_length", evaluation_length),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[ra]| {
        let (cut_off, evaluation_length) = cut_off_by_ra_of(tw_ra { um: ra })?;
        Ok(([cut_off.trade(), evaluation_length.trade()], 0))
    })
}

fn cut_off_by_rz_of(rz: tw_rz) -> Result<(CutOff, WorkLength), Error> {
    let rz = rz.read()?;

    let found = texture::cut_off_by_rz(rz)?;
    Ok((found.value.long_wave(), found.value.evaluation_length))
}

/// Cut-off and evaluation length (five cut-offs) with which a surface without a pattern is
/// measured, from its Rz. A turned surface has one, its feed marks: tw_cut_off_by_feed (ISO
/// 4288:1996 table 2, from memory). The upper end of a row of the table belongs to it. Beyond the
/// table is refused (TW_OUT_OF_RANGE).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 4288:1996 table 2, from memory.
/// Example: tw_cut_off_by_rz(tw_rz_micrometer(6.3), &cut_off, &evaluation_length, NULL);
///     cut_off.mm is 0.8000 and evaluation_length.mm is 4.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_rz(
    rz: tw_rz,
    cut_off: *mut tw_cut_off,
    evaluation_length: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(cut_off.is_null() && evaluation_length.is_null()),
        || {
            let (cut_off_is, evaluation_length_is) = cut_off_by_rz_of(rz)?;
            Ok((
                tw_cut_off::from(cut_off_is),
                tw_length::from(evaluation_length_is),
            ))
        },
        |(cut_off_is, evaluation_length_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(cut_off, cut_off_is);
                put(evaluation_length, evaluation_length_is);
            }
        },
    )
}

/// tw_cut_off_by_rz for every row.
///
/// Columns, see the first page: rz is read, cut_off and evaluation_length are written, each may
/// be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cut_off_by_rz_column(
    rz: *const tw_column,
    cut_off: *const tw_out_column,
    evaluation_length: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Rz>("rz", rz),),
        outputs: [
            Output::of::<CutOff>("cut_off", cut_off),
            Output::of::<WorkLength>("evaluation_length", evaluation_length),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[rz]| {
        let (cut_off, evaluation_length) = cut_off_by_rz_of(tw_rz { um: rz })?;
        Ok(([cut_off.trade(), evaluation_length.trade()], 0))
    })
}

fn short_cut_off_for_of(cut_off: tw_cut_off) -> Result<ShortCutOff, Error> {
    let cut_off = cut_off.read()?;

    let found = texture::short_cut_off(cut_off)?;
    Ok(found.value)
}

/// The short-wave cut-off that goes with a cut-off of 0.08, 0.25, 0.8, 2.5 or 8 mm (ISO
/// 3274:1996, from memory). Another one is refused (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 3274:1996, from memory.
/// Example: tw_short_cut_off_for(tw_cut_off_millimeter(0.8), &short_cut_off, NULL);
///     short_cut_off.mm is 0.002500.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_short_cut_off_for(
    cut_off: tw_cut_off,
    short_cut_off: *mut tw_short_cut_off,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !short_cut_off.is_null(),
        || Ok(tw_short_cut_off::from(short_cut_off_for_of(cut_off)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(short_cut_off, answer) },
    )
}

/// tw_short_cut_off_for for every row.
///
/// Columns, see the first page: cut_off is read, short_cut_off is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_short_cut_off_for_column(
    cut_off: *const tw_column,
    short_cut_off: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<CutOff>("cut_off", cut_off),),
        outputs: [Output::of::<ShortCutOff>("short_cut_off", short_cut_off)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cut_off]| {
        let found = short_cut_off_for_of(tw_cut_off { mm: cut_off })?;
        Ok(([found.trade()], 0))
    })
}
