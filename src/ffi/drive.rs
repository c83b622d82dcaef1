//! What a drive gives and when a cut stalls it.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::drive;
use crate::physics::force::ForceLaw;
use crate::physics::torque_curve::{self, TorqueCurve};
use crate::quantity::{
    CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Efficiency, Feed, ForceExponent,
    MainForce, Power, Quantity, SpecificCuttingForce, SpindleSpeed, Torque,
};

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
///
/// Source: common property of field-weakened drives, no source.
/// Example: tw_torque_available(tw_power_kilowatt(1.5),
///     tw_spindle_speed_revolution_per_minute(1400), tw_spindle_speed_revolution_per_minute(350),
///     &torque, &power_there, NULL); torque.nm is 10.2314 and power_there.kw is 0.3750.
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
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
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
///
/// Source: definition of the ratio of a gear.
/// Example: tw_base_speed_in_range(tw_spindle_speed_revolution_per_minute(1000),
///     tw_spindle_speed_revolution_per_minute(2000), tw_spindle_speed_revolution_per_minute(400),
///     &base_speed_there, NULL); base_speed_there.rpm is 200.0.
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
        inputs: (
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<SpindleSpeed>("here", here),
            Input::of::<SpindleSpeed>("there", there),
        ),
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
///
/// Source: common property of field-weakened drives, no source.
/// Example: tw_highest_speed_for_cut(tw_power_kilowatt(1.5),
///     tw_spindle_speed_revolution_per_minute(1400), tw_main_force_newton(400),
///     tw_diameter_millimeter(30), &spindle_speed, NULL); spindle_speed.rpm is 2387.32.
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
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<Diameter>("mean_diameter", mean_diameter),
        ),
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

#[cold]
fn no_torque() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "main_force",
        "a cut without force",
        "a cut that asks for some torque",
        "no speed stalls the drive under such a cut",
    )
}

fn motor_power_of(spindle_power: tw_power, efficiency: tw_efficiency) -> Result<Power, Error> {
    let spindle_power = spindle_power.named("spindle_power")?;
    let efficiency = efficiency.read()?;

    Ok(drive::motor_power(spindle_power, efficiency))
}

/// The power that the motor gives for a power at the spindle: spindle_power / efficiency. Without
/// the idle power of the machine. The efficiency is 0.7 to 0.85 for belt and gear lathes (common
/// practice, no source).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the efficiency.
/// Example: tw_motor_power(tw_power_kilowatt(1.2), tw_efficiency_one(0.8), &motor_power, NULL);
///     motor_power.kw is 1.500.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_motor_power(
    spindle_power: tw_power,
    efficiency: tw_efficiency,
    motor_power: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !motor_power.is_null(),
        || Ok(tw_power::from(motor_power_of(spindle_power, efficiency)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(motor_power, answer) },
    )
}

/// tw_motor_power for every row.
///
/// Columns, see the first page: spindle_power and efficiency are read, motor_power is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_motor_power_column(
    spindle_power: *const tw_column,
    efficiency: *const tw_column,
    motor_power: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("spindle_power", spindle_power),
            Input::of::<Efficiency>("efficiency", efficiency),
        ),
        outputs: [Output::of::<Power>("motor_power", motor_power)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[spindle_power, efficiency]| {
        let found = motor_power_of(
            tw_power { kw: spindle_power },
            tw_efficiency { ratio: efficiency },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn spindle_power_of(motor_power: tw_power, efficiency: tw_efficiency) -> Result<Power, Error> {
    let motor_power = motor_power.named("motor_power")?;
    let efficiency = efficiency.read()?;

    Ok(drive::spindle_power(motor_power, efficiency))
}

/// The power that reaches the spindle from a motor: efficiency times motor_power. Without the
/// idle power of the machine.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the efficiency.
/// Example: tw_spindle_power(tw_power_kilowatt(1.5), tw_efficiency_one(0.8), &spindle_power, NULL);
///     spindle_power.kw is 1.200.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_spindle_power(
    motor_power: tw_power,
    efficiency: tw_efficiency,
    spindle_power: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_power.is_null(),
        || Ok(tw_power::from(spindle_power_of(motor_power, efficiency)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_power, answer) },
    )
}

/// tw_spindle_power for every row.
///
/// Columns, see the first page: motor_power and efficiency are read, spindle_power is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_spindle_power_column(
    motor_power: *const tw_column,
    efficiency: *const tw_column,
    spindle_power: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("motor_power", motor_power),
            Input::of::<Efficiency>("efficiency", efficiency),
        ),
        outputs: [Output::of::<Power>("spindle_power", spindle_power)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[motor_power, efficiency]| {
        let found = spindle_power_of(
            tw_power { kw: motor_power },
            tw_efficiency { ratio: efficiency },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn torque_at_of(power: tw_power, spindle_speed: tw_spindle_speed) -> Result<Torque, Error> {
    let power = power.read()?;
    let spindle_speed = spindle_speed.read()?;

    Ok(drive::torque_at(power, spindle_speed))
}

/// The torque of a power at a spindle speed: power / (2 pi n). The power is that at the spindle;
/// for the torque that a cut takes see tw_cutting_torque.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of power.
/// Example: tw_torque_at(tw_power_kilowatt(1.5), tw_spindle_speed_revolution_per_minute(1400),
///     &torque, NULL); torque.nm is 10.2314.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_torque_at(
    power: tw_power,
    spindle_speed: tw_spindle_speed,
    torque: *mut tw_torque,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !torque.is_null(),
        || Ok(tw_torque::from(torque_at_of(power, spindle_speed)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(torque, answer) },
    )
}

/// tw_torque_at for every row.
///
/// Columns, see the first page: power and spindle_speed are read, torque is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_torque_at_column(
    power: *const tw_column,
    spindle_speed: *const tw_column,
    torque: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<Torque>("torque", torque)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[power, spindle_speed]| {
        let found = torque_at_of(
            tw_power { kw: power },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn largest_depth_for_power_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    cutting_speed: tw_cutting_speed,
    power: tw_power,
) -> Result<DepthOfCut, Error> {
    let specific_force = specific_force.read()?;
    let exponent = exponent.read()?;
    let feed = feed.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let cutting_speed = cutting_speed.read()?;
    let power = power.read()?;

    Ok(drive::largest_depth_for_power(
        ForceLaw::new(specific_force, exponent),
        feed,
        cutting_edge_angle,
        cutting_speed,
        power,
    ))
}

/// The deepest cut for which a power at the spindle is enough: power / (k_c feed cutting_speed),
/// with k_c at the thickness feed sin(cutting_edge_angle). Straight edge; the cutting speed of
/// the diameter before the cut is on the safe side.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle's law and P = F_c v_c, solved for the depth.
/// Example: tw_largest_depth_for_power(tw_specific_force_megapascal(1780), tw_exponent_one(0.17),
///     tw_feed_millimeter_per_revolution(0.2), tw_cutting_edge_angle_degree(90),
///     tw_cutting_speed_meter_per_minute(100), tw_power_kilowatt(1.2), &depth_of_cut, NULL);
///     depth_of_cut.mm is 1.53836.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_depth_for_power(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    cutting_speed: tw_cutting_speed,
    power: tw_power,
    depth_of_cut: *mut tw_depth_of_cut,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !depth_of_cut.is_null(),
        || {
            Ok(tw_depth_of_cut::from(largest_depth_for_power_of(
                specific_force,
                exponent,
                feed,
                cutting_edge_angle,
                cutting_speed,
                power,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(depth_of_cut, answer) },
    )
}

/// tw_largest_depth_for_power for every row.
///
/// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, cutting_speed
/// and power are read, depth_of_cut is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_depth_for_power_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    cutting_speed: *const tw_column,
    power: *const tw_column,
    depth_of_cut: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<Power>("power", power),
        ),
        outputs: [Output::of::<DepthOfCut>("depth_of_cut", depth_of_cut)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            specific_force,
            exponent,
            feed,
            cutting_edge_angle,
            cutting_speed,
            power,
        ]| {
            let found = largest_depth_for_power_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_cutting_speed {
                    m_per_min: cutting_speed,
                },
                tw_power { kw: power },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn lowest_speed_for_cut_of(
    power: tw_power,
    base_speed: tw_spindle_speed,
    full_torque_from: tw_spindle_speed,
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
) -> Result<SpindleSpeed, Error> {
    let power = power.read()?;
    let base_speed = base_speed.named("base_speed")?;
    let full_torque_from = full_torque_from.named("full_torque_from")?;
    let main_force = main_force.read()?;
    let mean_diameter = mean_diameter.named("mean_diameter")?;
    let drive = TorqueCurve::new(power)
        .with_base_speed(base_speed)
        .with_full_torque_from(full_torque_from)?;
    let runs = drive.speeds_that_run(main_force, mean_diameter)?;
    runs.lowest.ok_or_else(no_torque)
}

/// The lowest spindle speed at which a drive turns a cut without stalling, where its torque falls
/// towards standstill: full_torque_from times the torque of the cut over the full one.
/// full_torque_from is the slowest speed at which the drive still gives its full torque, at most
/// base_speed (TW_CONTRADICTION). Refused (TW_IMPOSSIBLE) where the cut asks for more torque than
/// the drive gives at any speed, and where it asks for none. power is that at the spindle.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common property of field-weakened drives, no source; the fall below: judgement.
/// Example: tw_lowest_speed_for_cut(tw_power_kilowatt(1.5),
///     tw_spindle_speed_revolution_per_minute(1400), tw_spindle_speed_revolution_per_minute(140),
///     tw_main_force_newton(400), tw_diameter_millimeter(30), &spindle_speed, NULL);
///     spindle_speed.rpm is 82.1003.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_lowest_speed_for_cut(
    power: tw_power,
    base_speed: tw_spindle_speed,
    full_torque_from: tw_spindle_speed,
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
    spindle_speed: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_speed.is_null(),
        || {
            Ok(tw_spindle_speed::from(lowest_speed_for_cut_of(
                power,
                base_speed,
                full_torque_from,
                main_force,
                mean_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_speed, answer) },
    )
}

/// tw_lowest_speed_for_cut for every row.
///
/// Columns, see the first page: power, base_speed, full_torque_from, main_force and mean_diameter
/// are read, spindle_speed is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_lowest_speed_for_cut_column(
    power: *const tw_column,
    base_speed: *const tw_column,
    full_torque_from: *const tw_column,
    main_force: *const tw_column,
    mean_diameter: *const tw_column,
    spindle_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<SpindleSpeed>("base_speed", base_speed),
            Input::of::<SpindleSpeed>("full_torque_from", full_torque_from),
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<Diameter>("mean_diameter", mean_diameter),
        ),
        outputs: [Output::of::<SpindleSpeed>("spindle_speed", spindle_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            power,
            base_speed,
            full_torque_from,
            main_force,
            mean_diameter,
        ]| {
            let found = lowest_speed_for_cut_of(
                tw_power { kw: power },
                tw_spindle_speed { rpm: base_speed },
                tw_spindle_speed {
                    rpm: full_torque_from,
                },
                tw_main_force { n: main_force },
                tw_diameter { mm: mean_diameter },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
