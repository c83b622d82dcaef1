//! The filters of a profile: what they pass of a wave.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::gaussian;
use crate::quantity::{CutOff, Quantity, Rsm, ShortCutOff, Transmission};

fn mean_line_transmission(wavelength: tw_rsm, cut_off: tw_cut_off) -> Result<Transmission, Error> {
    Ok(gaussian::mean_line_transmission(
        wavelength.named("wavelength")?,
        cut_off.read()?,
    ))
}

/// How much of a wave the mean line of the Gaussian filter keeps (ISO 16610-21):
/// 2^(-(cut_off/wavelength)^2); the roughness profile keeps the rest. The wavelength is a mean width of
/// elements.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 16610-21 (from memory).
/// Example: tw_mean_line_transmission(tw_rsm_millimeter(2.5), tw_cut_off_millimeter(0.8),
///     &transmission, NULL); transmission.ratio is 0.931482.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_line_transmission(
    wavelength: tw_rsm,
    cut_off: tw_cut_off,
    transmission: *mut tw_transmission,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !transmission.is_null(),
        || {
            let found = mean_line_transmission(wavelength, cut_off)?;
            Ok(tw_transmission::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(transmission, answer) },
    )
}

/// tw_mean_line_transmission for every row.
///
/// Columns, see the first page: wavelength, cut_off are read,
/// transmission is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_line_transmission_column(
    wavelength: *const tw_column,
    cut_off: *const tw_column,
    transmission: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rsm>("wavelength", wavelength),
            Input::of::<CutOff>("cut_off", cut_off),
        ),
        outputs: [Output::of::<Transmission>("transmission", transmission)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[wavelength, cut_off]| {
        let found = mean_line_transmission(tw_rsm { mm: wavelength }, tw_cut_off { mm: cut_off })?;
        Ok(([found.trade()], 0))
    })
}

fn roughness_transmission_of(
    wavelength: tw_rsm,
    cut_off: tw_cut_off,
) -> Result<Transmission, Error> {
    let wavelength = wavelength.named("wavelength")?;
    let cut_off = cut_off.read()?;

    Ok(gaussian::roughness_transmission(wavelength, cut_off))
}

/// How much of a wave the roughness profile keeps (Gaussian filter, ISO 16610-21, from memory):
/// 1 - 2^(-(cut_off / wavelength)^2). The mean line keeps the rest: tw_mean_line_transmission.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 16610-21 (from memory).
/// Example: tw_roughness_transmission(tw_rsm_millimeter(2.5), tw_cut_off_millimeter(0.8),
///     &transmission, NULL); transmission.ratio is 0.0685179.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_roughness_transmission(
    wavelength: tw_rsm,
    cut_off: tw_cut_off,
    transmission: *mut tw_transmission,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !transmission.is_null(),
        || {
            Ok(tw_transmission::from(roughness_transmission_of(
                wavelength, cut_off,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(transmission, answer) },
    )
}

/// tw_roughness_transmission for every row.
///
/// Columns, see the first page: wavelength and cut_off are read, transmission is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_roughness_transmission_column(
    wavelength: *const tw_column,
    cut_off: *const tw_column,
    transmission: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rsm>("wavelength", wavelength),
            Input::of::<CutOff>("cut_off", cut_off),
        ),
        outputs: [Output::of::<Transmission>("transmission", transmission)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[wavelength, cut_off]| {
        let found =
            roughness_transmission_of(tw_rsm { mm: wavelength }, tw_cut_off { mm: cut_off })?;
        Ok(([found.trade()], 0))
    })
}

fn short_wave_transmission_of(
    wavelength: tw_rsm,
    short_cut_off: tw_short_cut_off,
) -> Result<Transmission, Error> {
    let wavelength = wavelength.named("wavelength")?;
    let short_cut_off = short_cut_off.read()?;

    Ok(gaussian::short_wave_transmission(wavelength, short_cut_off))
}

/// How much of a wave the short-wave filter keeps: 2^(-(short_cut_off / wavelength)^2).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 16610-21, ISO 21920-3 (from memory).
/// Example: tw_short_wave_transmission(tw_rsm_micrometer(8), tw_short_cut_off_micrometer(2.5),
///     &transmission, NULL); transmission.ratio is 0.934550.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_short_wave_transmission(
    wavelength: tw_rsm,
    short_cut_off: tw_short_cut_off,
    transmission: *mut tw_transmission,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !transmission.is_null(),
        || {
            Ok(tw_transmission::from(short_wave_transmission_of(
                wavelength,
                short_cut_off,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(transmission, answer) },
    )
}

/// tw_short_wave_transmission for every row.
///
/// Columns, see the first page: wavelength and short_cut_off are read, transmission is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_short_wave_transmission_column(
    wavelength: *const tw_column,
    short_cut_off: *const tw_column,
    transmission: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rsm>("wavelength", wavelength),
            Input::of::<ShortCutOff>("short_cut_off", short_cut_off),
        ),
        outputs: [Output::of::<Transmission>("transmission", transmission)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[wavelength, short_cut_off]| {
        let found = short_wave_transmission_of(
            tw_rsm { mm: wavelength },
            tw_short_cut_off { mm: short_cut_off },
        )?;
        Ok(([found.trade()], 0))
    })
}
