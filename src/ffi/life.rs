//! Tool life: v T^n = C.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::wear::{self, LifeLaw};
use crate::quantity::{
    CuttingSpeed, Duration, LifeConstant, LifeExponent, Price, PricePerHour, Quantity, ToolLife,
};

fn life_at_of(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    cutting_speed: tw_cutting_speed,
) -> Result<ToolLife, Error> {
    let law = LifeLaw::new(constant.named("constant")?, exponent.named("exponent")?);
    wear::life_at(law, cutting_speed.read()?)
}

/// How long an edge lasts at a cutting speed: one minute times (constant/speed)^(1/exponent). constant
/// is the cutting speed at which it lasts one minute.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Taylor 1907, from memory.
/// Example: tw_life_at(tw_life_constant_foot_per_minute(900), tw_life_exponent_one(0.25),
///     tw_cutting_speed_foot_per_minute(500), &life, NULL); tw_life_as_minute(life) is 10.4976.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_life_at(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    cutting_speed: tw_cutting_speed,
    life: *mut tw_life,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !life.is_null(),
        || {
            Ok(tw_life::from(life_at_of(
                constant,
                exponent,
                cutting_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(life, answer) },
    )
}

/// tw_life_at for every row.
///
/// Columns, see the first page: constant, exponent and cutting_speed are read, life is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_life_at_column(
    constant: *const tw_column,
    exponent: *const tw_column,
    cutting_speed: *const tw_column,
    life: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<LifeConstant>("constant", constant),
            Input::of::<LifeExponent>("exponent", exponent),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ),
        outputs: [Output::of::<ToolLife>("life", life)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[constant, exponent, cutting_speed]| {
        let found = life_at_of(
            tw_life_constant {
                m_per_min: constant,
            },
            tw_life_exponent { ratio: exponent },
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn speed_for_life_of(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    life: tw_life,
) -> Result<CuttingSpeed, Error> {
    let law = LifeLaw::new(constant.named("constant")?, exponent.named("exponent")?);
    Ok(wear::speed_for(law, life.read()?))
}

/// The cutting speed at which an edge lasts so long: constant / (life over one minute)^exponent. The
/// struct of the life holds seconds all the same.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Taylor 1907, from memory.
/// Example: tw_speed_for_life(tw_life_constant_meter_per_minute(60), tw_life_exponent_one(0.125),
///     tw_life_minute(60), &cutting_speed, NULL); cutting_speed.m_per_min is 35.9652.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_speed_for_life(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    life: tw_life,
    cutting_speed: *mut tw_cutting_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !cutting_speed.is_null(),
        || {
            Ok(tw_cutting_speed::from(speed_for_life_of(
                constant, exponent, life,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(cutting_speed, answer) },
    )
}

/// tw_speed_for_life for every row.
///
/// Columns, see the first page: constant, exponent and life are read, cutting_speed is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_speed_for_life_column(
    constant: *const tw_column,
    exponent: *const tw_column,
    life: *const tw_column,
    cutting_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<LifeConstant>("constant", constant),
            Input::of::<LifeExponent>("exponent", exponent),
            Input::of::<ToolLife>("life", life),
        ),
        outputs: [Output::of::<CuttingSpeed>("cutting_speed", cutting_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[constant, exponent, life]| {
        let found = speed_for_life_of(
            tw_life_constant {
                m_per_min: constant,
            },
            tw_life_exponent { ratio: exponent },
            tw_life { s: life },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn life_after_change_of(
    life: tw_life,
    exponent: tw_life_exponent,
    from: tw_cutting_speed,
    to: tw_cutting_speed,
) -> Result<ToolLife, Error> {
    wear::life_after_change(
        life.read()?,
        exponent.named("exponent")?,
        from.named("from")?,
        to.named("to")?,
    )
}

/// What becomes of a life when the cutting speed is changed: life times (from/to)^(1/exponent).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Taylor 1907, from memory.
/// Example: tw_life_after_change(tw_life_minute(60), tw_life_exponent_one(0.125),
///     tw_cutting_speed_meter_per_minute(30), tw_cutting_speed_meter_per_minute(33), &changed_life,
///     NULL); tw_life_as_minute(changed_life) is 27.9904.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_life_after_change(
    life: tw_life,
    exponent: tw_life_exponent,
    from: tw_cutting_speed,
    to: tw_cutting_speed,
    changed_life: *mut tw_life,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !changed_life.is_null(),
        || {
            Ok(tw_life::from(life_after_change_of(
                life, exponent, from, to,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(changed_life, answer) },
    )
}

/// tw_life_after_change for every row.
///
/// Columns, see the first page: life, exponent, from and to are read, changed_life is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_life_after_change_column(
    life: *const tw_column,
    exponent: *const tw_column,
    from: *const tw_column,
    to: *const tw_column,
    changed_life: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<ToolLife>("life", life),
            Input::of::<LifeExponent>("exponent", exponent),
            Input::of::<CuttingSpeed>("from", from),
            Input::of::<CuttingSpeed>("to", to),
        ),
        outputs: [Output::of::<ToolLife>("changed_life", changed_life)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[life, exponent, from, to]| {
        let found = life_after_change_of(
            tw_life { s: life },
            tw_life_exponent { ratio: exponent },
            tw_cutting_speed { m_per_min: from },
            tw_cutting_speed { m_per_min: to },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn cheapest_life_of(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    change_time: tw_time,
    edge_price: tw_price,
    machine_per_hour: tw_price_per_hour,
) -> Result<(ToolLife, CuttingSpeed), Error> {
    let law = LifeLaw::new(constant.named("constant")?, exponent.named("exponent")?);
    let best = wear::cheapest_life(
        law,
        change_time.named("change_time")?,
        edge_price.named("edge_price")?,
        machine_per_hour.named("machine_per_hour")?,
    )?;
    Ok((best.life, best.cutting_speed))
}

/// The life and cutting speed at which a part is cheapest: (1/exponent - 1)(change_time +
/// edge_price/machine_per_hour). Both prices in one currency; a price of 0 gives the life at which
/// most parts are made. Refused (TW_IMPOSSIBLE) with an exponent of 1 or more.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: the least cost of a part with Taylor's law, derived; text books (from memory).
/// Example: tw_cheapest_life(tw_life_constant_meter_per_minute(300), tw_life_exponent_one(0.25),
///     tw_time_minute(1), tw_price_one(3), tw_price_per_hour_one(60), &life, &cutting_speed, NULL);
///     tw_life_as_minute(life) is 12.000 and cutting_speed.m_per_min is 161.185.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_cheapest_life(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    change_time: tw_time,
    edge_price: tw_price,
    machine_per_hour: tw_price_per_hour,
    life: *mut tw_life,
    cutting_speed: *mut tw_cutting_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(life.is_null() && cutting_speed.is_null()),
        || {
            let (life_found, cutting_speed_found) = cheapest_life_of(
                constant,
                exponent,
                change_time,
                edge_price,
                machine_per_hour,
            )?;
            Ok((
                tw_life::from(life_found),
                tw_cutting_speed::from(cutting_speed_found),
            ))
        },
        |(life_found, cutting_speed_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(life, life_found);
                put(cutting_speed, cutting_speed_found);
            }
        },
    )
}

/// tw_cheapest_life for every row.
///
/// Columns, see the first page: constant, exponent, change_time, edge_price and machine_per_hour
/// are read, life and cutting_speed are written, each may be NULL unless all are. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_cheapest_life_column(
    constant: *const tw_column,
    exponent: *const tw_column,
    change_time: *const tw_column,
    edge_price: *const tw_column,
    machine_per_hour: *const tw_column,
    life: *const tw_out_column,
    cutting_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<LifeConstant>("constant", constant),
            Input::of::<LifeExponent>("exponent", exponent),
            Input::of::<Duration>("change_time", change_time),
            Input::of::<Price>("edge_price", edge_price),
            Input::of::<PricePerHour>("machine_per_hour", machine_per_hour),
        ),
        outputs: [
            Output::of::<ToolLife>("life", life),
            Output::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            constant,
            exponent,
            change_time,
            edge_price,
            machine_per_hour,
        ]| {
            let (life, cutting_speed) = cheapest_life_of(
                tw_life_constant {
                    m_per_min: constant,
                },
                tw_life_exponent { ratio: exponent },
                tw_time { s: change_time },
                tw_price { ratio: edge_price },
                tw_price_per_hour {
                    ratio: machine_per_hour,
                },
            )?;
            Ok(([life.trade(), cutting_speed.trade()], 0))
        },
    )
}

fn fastest_life_of(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    change_time: tw_time,
) -> Result<(ToolLife, CuttingSpeed), Error> {
    let constant = constant.named("constant")?;
    let exponent = exponent.named("exponent")?;
    let change_time = change_time.named("change_time")?;

    let found = wear::fastest_life(LifeLaw::new(constant, exponent), change_time)?;
    Ok((found.life, found.cutting_speed))
}

/// The life at which most parts are made, and the cutting speed for it: (1/exponent - 1)
/// change_time, by Taylor's law. As tw_cheapest_life with edges that cost nothing. Refused
/// (TW_IMPOSSIBLE): an exponent of one or more, and a time of change for which no life is
/// plausible.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: the least time of a part with Taylor's law, derived; text books (from memory).
/// Example: tw_fastest_life(tw_life_constant_meter_per_minute(60), tw_life_exponent_one(0.125),
///     tw_time_minute(2.5), &life, &cutting_speed, NULL); tw_life_as_minute(life) is 17.500 and
///     cutting_speed.m_per_min is 41.9538.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_fastest_life(
    constant: tw_life_constant,
    exponent: tw_life_exponent,
    change_time: tw_time,
    life: *mut tw_life,
    cutting_speed: *mut tw_cutting_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(life.is_null() && cutting_speed.is_null()),
        || {
            let (life_is, cutting_speed_is) = fastest_life_of(constant, exponent, change_time)?;
            Ok((
                tw_life::from(life_is),
                tw_cutting_speed::from(cutting_speed_is),
            ))
        },
        |(life_is, cutting_speed_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(life, life_is);
                put(cutting_speed, cutting_speed_is);
            }
        },
    )
}

/// tw_fastest_life for every row.
///
/// Columns, see the first page: constant, exponent and change_time are read, life and
/// cutting_speed are written, each may be NULL unless both are. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_fastest_life_column(
    constant: *const tw_column,
    exponent: *const tw_column,
    change_time: *const tw_column,
    life: *const tw_out_column,
    cutting_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<LifeConstant>("constant", constant),
            Input::of::<LifeExponent>("exponent", exponent),
            Input::of::<Duration>("change_time", change_time),
        ),
        outputs: [
            Output::of::<ToolLife>("life", life),
            Output::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[constant, exponent, change_time]| {
        let (life, cutting_speed) = fastest_life_of(
            tw_life_constant {
                m_per_min: constant,
            },
            tw_life_exponent { ratio: exponent },
            tw_time { s: change_time },
        )?;
        Ok(([life.trade(), cutting_speed.trade()], 0))
    })
}

fn life_constant_through_of(
    cutting_speed: tw_cutting_speed,
    life: tw_life,
    exponent: tw_life_exponent,
) -> Result<LifeConstant, Error> {
    let cutting_speed = cutting_speed.read()?;
    let life = life.read()?;
    let exponent = exponent.named("exponent")?;

    let found = LifeLaw::through(cutting_speed, life, exponent)?;
    Ok(found.constant())
}

/// The constant of Taylor's law, v T^n = C, through one measured life at a cutting speed, its
/// exponent known. A life so far from a minute that no constant is plausible is refused
/// (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Taylor 1907, from memory.
/// Example: tw_life_constant_through(tw_cutting_speed_meter_per_minute(180),
///     tw_life_minute(7.71605), tw_life_exponent_one(0.25), &constant, NULL);
///     constant.m_per_min is 300.00.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_life_constant_through(
    cutting_speed: tw_cutting_speed,
    life: tw_life,
    exponent: tw_life_exponent,
    constant: *mut tw_life_constant,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !constant.is_null(),
        || {
            Ok(tw_life_constant::from(life_constant_through_of(
                cutting_speed,
                life,
                exponent,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(constant, answer) },
    )
}

/// tw_life_constant_through for every row.
///
/// Columns, see the first page: cutting_speed, life and exponent are read, constant is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_life_constant_through_column(
    cutting_speed: *const tw_column,
    life: *const tw_column,
    exponent: *const tw_column,
    constant: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<ToolLife>("life", life),
            Input::of::<LifeExponent>("exponent", exponent),
        ),
        outputs: [Output::of::<LifeConstant>("constant", constant)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cutting_speed, life, exponent]| {
        let found = life_constant_through_of(
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
            tw_life { s: life },
            tw_life_exponent { ratio: exponent },
        )?;
        Ok(([found.trade()], 0))
    })
}
