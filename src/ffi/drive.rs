//! What a drive gives and when a cut stalls it.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::torque_curve::{self, TorqueCurve};
use crate::quantity::{Diameter, MainForce, Power, Quantity, SpindleSpeed, Torque};

fn torque_available_of(
    power: tw_power,
    base_speed: tw_spindle_speed,
    spindle_speed: tw_spindle_speed,
) -> Result<(Torque, Power), Error> {
    let drive = TorqueCurve::new(power.read()?).with_base_speed(base_speed.named("base_speed")?);
    let n = spindle_speed.read()?;
    Ok((drive.torque(n), drive.power(n)))
}

/// Torque and power that a drive with a motor of variable speed gives at a spindle speed: constant
/// torque below the base speed, constant power above. power is that at the spindle, losses off;
/// base_speed is that of the range of gears engaged (tw_base_speed_in_range).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_torque_available(
    power: tw_power,
    base_speed: tw_spindle_speed,
    spindle_speed: tw_spindle_speed,
    torque: *mut tw_torque,
    power_there: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(torque.is_null() && power_there.is_null()),
        || {
            let (torque_found, power_there_found) =
                torque_available_of(power, base_speed, spindle_speed)?;
            Ok((
                tw_torque::from(torque_found),
                tw_power::from(power_there_found),
            ))
        },
        |(torque_found, power_there_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(torque, torque_found);
                put(power_there, power_there_found);
            }
        },
    )
}

/// tw_torque_available for every row.
///
/// Columns, see the first page: power, base_speed and spindle_speed are read, torque and
/// power_there are written, each may be NULL unless all are. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_torque_available_column(
    power: *const tw_column,
    base_speed: *const tw_column,
    spindle_speed: *const tw_column,
    torque: *const tw_out_column,
    power_there: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ],
        outputs: [
            Output::of::<Torque>("torque", torque),
            Output::of::<Power>("power_there", power_there),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[power, base_speed, spindle_speed]| {
        let (torque, power_there) = torque_available_of(
            tw_power { kw: power },
            tw_spindle_speed { rpm: base_speed },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([torque.trade(), power_there.trade()], 0))
    })
}

fn base_speed_in_range_of(
    base_speed: tw_spindle_speed,
    here: tw_spindle_speed,
    there: tw_spindle_speed,
) -> Result<SpindleSpeed, Error> {
    Ok(torque_curve::base_speed_in_range(
        base_speed.named("base_speed")?,
        here.named("here")?,
        there.named("there")?,
    ))
}

/// The base speed of a drive in another range of gears: the spindle speed here becomes the speed
/// there at the same speed of the motor, such as the tops of the two ranges.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_base_speed_in_range(
    base_speed: tw_spindle_speed,
    here: tw_spindle_speed,
    there: tw_spindle_speed,
    base_speed_there: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !base_speed_there.is_null(),
        || {
            Ok(tw_spindle_speed::from(base_speed_in_range_of(
                base_speed, here, there,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(base_speed_there, answer) },
    )
}

/// tw_base_speed_in_range for every row.
///
/// Columns, see the first page: base_speed, here and there are read, base_speed_there is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_base_speed_in_range_column(
    base_speed: *const tw_column,
    here: *const tw_column,
    there: *const tw_column,
    base_speed_there: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<SpindleSpeed>("here", here),
            Input::of::<SpindleSpeed>("there", there),
        ],
        outputs: [Output::of::<SpindleSpeed>(
            "base_speed_there",
            base_speed_there,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[base_speed, here, there]| {
        let found = base_speed_in_range_of(
            tw_spindle_speed { rpm: base_speed },
            tw_spindle_speed { rpm: here },
            tw_spindle_speed { rpm: there },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn highest_speed_for_cut_of(
    power: tw_power,
    base_speed: tw_spindle_speed,
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
) -> Result<SpindleSpeed, Error> {
    let drive = TorqueCurve::new(power.read()?).with_base_speed(base_speed.named("base_speed")?);
    let runs = drive.speeds_that_run(main_force.read()?, mean_diameter.named("mean_diameter")?)?;
    runs.highest.ok_or_else(|| {
        Error::new(
            ErrorKind::Impossible,
            "main_force",
            "a cut without force",
            "a cut that asks for some torque",
            "no speed stalls the drive under such a cut",
        )
    })
}

/// The highest spindle speed at which a drive turns a cut without stalling: power / (2 pi torque).
/// Refused (TW_IMPOSSIBLE) where the cut asks for more torque than the drive gives at any speed,
/// and where it asks for none, so that no speed stalls it. power is that at the spindle.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_highest_speed_for_cut(
    power: tw_power,
    base_speed: tw_spindle_speed,
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
    spindle_speed: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_speed.is_null(),
        || {
            Ok(tw_spindle_speed::from(highest_speed_for_cut_of(
                power,
                base_speed,
                main_force,
                mean_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_speed, answer) },
    )
}

/// tw_highest_speed_for_cut for every row.
///
/// Columns, see the first page: power, base_speed, main_force and mean_diameter are read,
/// spindle_speed is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_highest_speed_for_cut_column(
    power: *const tw_column,
    base_speed: *const tw_column,
    main_force: *const tw_column,
    mean_diameter: *const tw_column,
    spindle_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<Diameter>("mean_diameter", mean_diameter),
        ],
        outputs: [Output::of::<SpindleSpeed>("spindle_speed", spindle_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[power, base_speed, main_force, mean_diameter]| {
        let found = highest_speed_for_cut_of(
            tw_power { kw: power },
            tw_spindle_speed { rpm: base_speed },
            tw_main_force { n: main_force },
            tw_diameter { mm: mean_diameter },
        )?;
        Ok(([found.trade()], 0))
    })
}
