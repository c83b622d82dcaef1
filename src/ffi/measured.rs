//! Power and torque of a cut, and the specific force that a measured one shows.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::engagement::ChipSection;
use crate::physics::{drive, engagement, measured_force};
use crate::quantity::{
    ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter,
    Efficiency, Feed, ForceExponent, MainForce, Power, Quantity, RemovalRate, SpecificCuttingForce,
    SpecificForceAtChip, Torque,
};

fn cutting_power_of(
    main_force: tw_main_force,
    cutting_speed: tw_cutting_speed,
) -> Result<Power, Error> {
    Ok(drive::cutting_power(
        main_force.read()?,
        cutting_speed.read()?,
    ))
}

/// The power that a cut takes at the spindle: main force times cutting speed, that of the mean
/// diameter.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of power.
/// Example: tw_cutting_power(tw_main_force_pound_force(300), tw_cutting_speed_foot_per_minute(330),
///     &power, NULL); tw_power_as_horsepower(power) is 3.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_power(
    main_force: tw_main_force,
    cutting_speed: tw_cutting_speed,
    power: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !power.is_null(),
        || Ok(tw_power::from(cutting_power_of(main_force, cutting_speed)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(power, answer) },
    )
}

/// tw_cutting_power for every row.
///
/// Columns, see the first page: main_force and cutting_speed are read, power is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_power_column(
    main_force: *const tw_column,
    cutting_speed: *const tw_column,
    power: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ),
        outputs: [Output::of::<Power>("power", power)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[main_force, cutting_speed]| {
        let power = cutting_power_of(
            tw_main_force { n: main_force },
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
        )?;
        Ok(([power.trade()], 0))
    })
}

fn cutting_torque_of(
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
) -> Result<Torque, Error> {
    Ok(drive::torque(
        main_force.read()?,
        mean_diameter.named("mean_diameter")?,
    ))
}

/// The torque that a cut takes at the spindle: main force times half the mean diameter.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of torque.
/// Example: tw_cutting_torque(tw_main_force_pound_force(250), tw_diameter_inch(3), &torque, NULL);
///     tw_torque_as_pound_force_foot(torque) is 31.25.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_torque(
    main_force: tw_main_force,
    mean_diameter: tw_diameter,
    torque: *mut tw_torque,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !torque.is_null(),
        || {
            Ok(tw_torque::from(cutting_torque_of(
                main_force,
                mean_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(torque, answer) },
    )
}

/// tw_cutting_torque for every row.
///
/// Columns, see the first page: main_force and mean_diameter are read, torque is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_torque_column(
    main_force: *const tw_column,
    mean_diameter: *const tw_column,
    torque: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<Diameter>("mean_diameter", mean_diameter),
        ),
        outputs: [Output::of::<Torque>("torque", torque)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[main_force, mean_diameter]| {
        let torque = cutting_torque_of(
            tw_main_force { n: main_force },
            tw_diameter { mm: mean_diameter },
        )?;
        Ok(([torque.trade()], 0))
    })
}

fn power_above_idle_of(
    motor_power: tw_power,
    idle_power: tw_power,
    efficiency: tw_efficiency,
) -> Result<Power, Error> {
    measured_force::power_above_idle(
        motor_power.named("motor_power")?,
        idle_power.named("idle_power")?,
        efficiency.read()?,
    )
}

/// The power of a cut at the spindle, from that of the motor in the cut and without it, at the
/// same spindle speed: efficiency times their difference.
///
/// An idle power that is not below the other is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the efficiency.
/// Example: tw_power_above_idle(tw_power_kilowatt(2.7), tw_power_kilowatt(0.3),
///     tw_efficiency_one(0.8), &power, NULL); power.kw is 1.920.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_power_above_idle(
    motor_power: tw_power,
    idle_power: tw_power,
    efficiency: tw_efficiency,
    power: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !power.is_null(),
        || {
            Ok(tw_power::from(power_above_idle_of(
                motor_power,
                idle_power,
                efficiency,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(power, answer) },
    )
}

/// tw_power_above_idle for every row.
///
/// Columns, see the first page: motor_power, idle_power and efficiency are read, power is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_power_above_idle_column(
    motor_power: *const tw_column,
    idle_power: *const tw_column,
    efficiency: *const tw_column,
    power: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("motor_power", motor_power),
            Input::of::<Power>("idle_power", idle_power),
            Input::of::<Efficiency>("efficiency", efficiency),
        ),
        outputs: [Output::of::<Power>("power", power)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[motor_power, idle_power, efficiency]| {
        let power = power_above_idle_of(
            tw_power { kw: motor_power },
            tw_power { kw: idle_power },
            tw_efficiency { ratio: efficiency },
        )?;
        Ok(([power.trade()], 0))
    })
}

fn specific_force_from_power_of(
    power: tw_power,
    cutting_speed: tw_cutting_speed,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
) -> Result<(SpecificCuttingForce, SpecificForceAtChip), Error> {
    let main = measured_force::force_of_power(power.read()?, cutting_speed.read()?);
    let exponent = exponent.read()?;
    let (depth, feed) = (depth_of_cut.read()?, feed.read()?);
    let angle = cutting_edge_angle.read()?;
    let corner = corner_radius.read()?;
    let law = measured_force::law_of_cut(main, exponent, depth, feed, angle, corner);
    let chip = engagement::chip_section(depth, feed, angle);
    Ok((
        law.specific_force,
        measured_force::specific_force_of_chip(main, chip),
    ))
}

/// The specific force that a measured cut shows, for a chip of 1 mm by 1 mm, its exponent kept;
/// and that of the cut itself, main force over depth times feed. power is that of the cut at the
/// spindle (tw_power_above_idle), cutting_speed that of the mean diameter. A power of nothing
/// gives nothing.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: definitions of power and specific force; the law of the cut derived.
/// Example: tw_specific_force_from_power(tw_power_kilowatt(1.92),
///     tw_cutting_speed_meter_per_minute(110), tw_exponent_one(0.26),
///     tw_depth_of_cut_millimeter(2), tw_feed_millimeter_per_revolution(0.25),
///     tw_cutting_edge_angle_degree(90), tw_corner_radius_millimeter(0), &specific_force,
///     &specific_force_at_chip, NULL); specific_force.mpa is 1460.68 and
///     specific_force_at_chip.mpa is 2094.55.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_specific_force_from_power(
    power: tw_power,
    cutting_speed: tw_cutting_speed,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    specific_force: *mut tw_specific_force,
    specific_force_at_chip: *mut tw_specific_force_at_chip,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(specific_force.is_null() && specific_force_at_chip.is_null()),
        || {
            let (specific_force_found, specific_force_at_chip_found) =
                specific_force_from_power_of(
                    power,
                    cutting_speed,
                    exponent,
                    depth_of_cut,
                    feed,
                    cutting_edge_angle,
                    corner_radius,
                )?;
            Ok((
                tw_specific_force::from(specific_force_found),
                tw_specific_force_at_chip::from(specific_force_at_chip_found),
            ))
        },
        |(specific_force_found, specific_force_at_chip_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(specific_force, specific_force_found);
                put(specific_force_at_chip, specific_force_at_chip_found);
            }
        },
    )
}

/// tw_specific_force_from_power for every row.
///
/// Columns, see the first page: power, cutting_speed, exponent, depth_of_cut, feed,
/// cutting_edge_angle and corner_radius are read, specific_force and specific_force_at_chip are
/// written, each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_specific_force_from_power_column(
    power: *const tw_column,
    cutting_speed: *const tw_column,
    exponent: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    specific_force: *const tw_out_column,
    specific_force_at_chip: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [
            Output::of::<SpecificCuttingForce>("specific_force", specific_force),
            Output::of::<SpecificForceAtChip>("specific_force_at_chip", specific_force_at_chip),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            power,
            cutting_speed,
            exponent,
            depth_of_cut,
            feed,
            cutting_edge_angle,
            corner_radius,
        ]| {
            let (specific_force, specific_force_at_chip) = specific_force_from_power_of(
                tw_power { kw: power },
                tw_cutting_speed {
                    m_per_min: cutting_speed,
                },
                tw_exponent { ratio: exponent },
                tw_depth_of_cut { mm: depth_of_cut },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
            )?;
            Ok(([specific_force.trade(), specific_force_at_chip.trade()], 0))
        },
    )
}

fn power_of_removal_of(
    specific_force_at_chip: tw_specific_force_at_chip,
    removal_rate: tw_removal_rate,
) -> Result<Power, Error> {
    Ok(measured_force::power_of_removal(
        specific_force_at_chip.read()?,
        removal_rate.read()?,
    ))
}

/// The power of a cut from its removal rate and the specific force of its chip. Unit power in
/// hp/(in3/min) is a specific force.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: P = F_c v_c = k_c b h v_c.
/// Example: tw_power_of_removal(tw_specific_force_at_chip_horsepower_minute_per_cubic_inch(0.8),
///     tw_removal_rate_cubic_inch_per_minute(3), &power, NULL);
///     tw_power_as_horsepower(power) is 2.400.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_power_of_removal(
    specific_force_at_chip: tw_specific_force_at_chip,
    removal_rate: tw_removal_rate,
    power: *mut tw_power,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !power.is_null(),
        || {
            Ok(tw_power::from(power_of_removal_of(
                specific_force_at_chip,
                removal_rate,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(power, answer) },
    )
}

/// tw_power_of_removal for every row.
///
/// Columns, see the first page: specific_force_at_chip and removal_rate are read, power is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_power_of_removal_column(
    specific_force_at_chip: *const tw_column,
    removal_rate: *const tw_column,
    power: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificForceAtChip>("specific_force_at_chip", specific_force_at_chip),
            Input::of::<RemovalRate>("removal_rate", removal_rate),
        ),
        outputs: [Output::of::<Power>("power", power)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[specific_force_at_chip, removal_rate]| {
        let power = power_of_removal_of(
            tw_specific_force_at_chip {
                mpa: specific_force_at_chip,
            },
            tw_removal_rate {
                cm3_per_min: removal_rate,
            },
        )?;
        Ok(([power.trade()], 0))
    })
}

fn force_of_power_of(power: tw_power, cutting_speed: tw_cutting_speed) -> Result<MainForce, Error> {
    let power = power.read()?;
    let cutting_speed = cutting_speed.read()?;

    Ok(measured_force::force_of_power(power, cutting_speed))
}

/// The main force of a cut of known power at the spindle: power / cutting_speed, that of the mean
/// diameter.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of power.
/// Example: tw_force_of_power(tw_power_kilowatt(1), tw_cutting_speed_meter_per_minute(60),
///     &main_force, NULL); main_force.n is 1000.0.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_force_of_power(
    power: tw_power,
    cutting_speed: tw_cutting_speed,
    main_force: *mut tw_main_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !main_force.is_null(),
        || {
            Ok(tw_main_force::from(force_of_power_of(
                power,
                cutting_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(main_force, answer) },
    )
}

/// tw_force_of_power for every row.
///
/// Columns, see the first page: power and cutting_speed are read, main_force is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_force_of_power_column(
    power: *const tw_column,
    cutting_speed: *const tw_column,
    main_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ),
        outputs: [Output::of::<MainForce>("main_force", main_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[power, cutting_speed]| {
        let found = force_of_power_of(
            tw_power { kw: power },
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn specific_force_of_chip_of(
    main_force: tw_main_force,
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
) -> Result<SpecificForceAtChip, Error> {
    let main_force = main_force.read()?;
    let chip_thickness = chip_thickness.read()?;
    let chip_width = chip_width.read()?;

    Ok(measured_force::specific_force_of_chip(
        main_force,
        ChipSection::new(chip_thickness, chip_width),
    ))
}

/// What a square millimetre of chip has cost in force, by a measured main force: main_force /
/// (chip_thickness chip_width). It holds for this thickness of the chip; tw_law_through makes a
/// law of it.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the specific force.
/// Example: tw_specific_force_of_chip(tw_main_force_newton(936.0626),
///     tw_chip_thickness_millimeter(0.2), tw_chip_width_millimeter(2), &specific_force_at_chip,
///     NULL); specific_force_at_chip.mpa is 2340.16.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_specific_force_of_chip(
    main_force: tw_main_force,
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
    specific_force_at_chip: *mut tw_specific_force_at_chip,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !specific_force_at_chip.is_null(),
        || {
            Ok(tw_specific_force_at_chip::from(specific_force_of_chip_of(
                main_force,
                chip_thickness,
                chip_width,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(specific_force_at_chip, answer) },
    )
}

/// tw_specific_force_of_chip for every row.
///
/// Columns, see the first page: main_force, chip_thickness and chip_width are read,
/// specific_force_at_chip is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_specific_force_of_chip_column(
    main_force: *const tw_column,
    chip_thickness: *const tw_column,
    chip_width: *const tw_column,
    specific_force_at_chip: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<ChipThickness>("chip_thickness", chip_thickness),
            Input::of::<ChipWidth>("chip_width", chip_width),
        ),
        outputs: [Output::of::<SpecificForceAtChip>(
            "specific_force_at_chip",
            specific_force_at_chip,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[main_force, chip_thickness, chip_width]| {
        let found = specific_force_of_chip_of(
            tw_main_force { n: main_force },
            tw_chip_thickness { mm: chip_thickness },
            tw_chip_width { mm: chip_width },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn law_through_of(
    specific_force_at_chip: tw_specific_force_at_chip,
    chip_thickness: tw_chip_thickness,
    exponent: tw_exponent,
) -> Result<SpecificCuttingForce, Error> {
    let specific_force_at_chip = specific_force_at_chip.read()?;
    let chip_thickness = chip_thickness.read()?;
    let exponent = exponent.read()?;

    let found = measured_force::law_through(specific_force_at_chip, chip_thickness, exponent);
    Ok(found.specific_force)
}

/// The specific force, for a chip of 1 mm by 1 mm, of the law that passes through one at a chip
/// thickness: specific_force_at_chip (h / 1 mm)^exponent. The exponent comes from a table; near
/// the thickness that was measured it hardly counts.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle 1952, VDI-Z 94 (from memory), solved for k_c1.1.
/// Example: tw_law_through(tw_specific_force_at_chip_megapascal(2094.5455),
///     tw_chip_thickness_millimeter(0.25), tw_exponent_one(0.26), &specific_force, NULL);
///     specific_force.mpa is 1460.68.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_law_through(
    specific_force_at_chip: tw_specific_force_at_chip,
    chip_thickness: tw_chip_thickness,
    exponent: tw_exponent,
    specific_force: *mut tw_specific_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !specific_force.is_null(),
        || {
            Ok(tw_specific_force::from(law_through_of(
                specific_force_at_chip,
                chip_thickness,
                exponent,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(specific_force, answer) },
    )
}

/// tw_law_through for every row.
///
/// Columns, see the first page: specific_force_at_chip, chip_thickness and exponent are read,
/// specific_force is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_law_through_column(
    specific_force_at_chip: *const tw_column,
    chip_thickness: *const tw_column,
    exponent: *const tw_column,
    specific_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificForceAtChip>("specific_force_at_chip", specific_force_at_chip),
            Input::of::<ChipThickness>("chip_thickness", chip_thickness),
            Input::of::<ForceExponent>("exponent", exponent),
        ),
        outputs: [Output::of::<SpecificCuttingForce>(
            "specific_force",
            specific_force,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[specific_force_at_chip, chip_thickness, exponent]| {
            let found = law_through_of(
                tw_specific_force_at_chip {
                    mpa: specific_force_at_chip,
                },
                tw_chip_thickness { mm: chip_thickness },
                tw_exponent { ratio: exponent },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn law_of_cut_of(
    main_force: tw_main_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
) -> Result<SpecificCuttingForce, Error> {
    let main_force = main_force.read()?;
    let exponent = exponent.read()?;
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let corner_radius = corner_radius.read()?;

    let found = measured_force::law_of_cut(
        main_force,
        exponent,
        depth_of_cut,
        feed,
        cutting_edge_angle,
        corner_radius,
    );
    Ok(found.specific_force)
}

/// The specific force, for a chip of 1 mm by 1 mm, that the main force of one cut with a rounded
/// corner shows, light cuts included. Conditions of the cut (rake, wear, speed) stay in it.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_law_of_cut(tw_main_force_newton(69.48408), tw_exponent_one(0.14),
///     tw_depth_of_cut_millimeter(0.2), tw_feed_millimeter_per_revolution(0.1),
///     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8), &specific_force, NULL);
///     specific_force.mpa is 2220.0.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_law_of_cut(
    main_force: tw_main_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    specific_force: *mut tw_specific_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !specific_force.is_null(),
        || {
            Ok(tw_specific_force::from(law_of_cut_of(
                main_force,
                exponent,
                depth_of_cut,
                feed,
                cutting_edge_angle,
                corner_radius,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(specific_force, answer) },
    )
}

/// tw_law_of_cut for every row.
///
/// Columns, see the first page: main_force, exponent, depth_of_cut, feed, cutting_edge_angle and
/// corner_radius are read, specific_force is written. row_status may be NULL; else one int32_t a
/// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_law_of_cut_column(
    main_force: *const tw_column,
    exponent: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    specific_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<SpecificCuttingForce>(
            "specific_force",
            specific_force,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            main_force,
            exponent,
            depth_of_cut,
            feed,
            cutting_edge_angle,
            corner_radius,
        ]| {
            let found = law_of_cut_of(
                tw_main_force { n: main_force },
                tw_exponent { ratio: exponent },
                tw_depth_of_cut { mm: depth_of_cut },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
