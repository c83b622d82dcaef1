//! Warm work: growth, size at 20 degC, the force on a centre, and how warm a cut makes it.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::heat as kernel;
use crate::quantity::{
    Density, Diameter, Duration, HeatShare, Mass, Power, Quantity, SpecificHeat, TemperatureRise,
    ThermalExpansion, ThermalGrowth, WorkLength,
};

fn diameter_growth_of(
    diameter: tw_diameter,
    expansion: tw_expansion,
    rise: tw_rise,
) -> Result<ThermalGrowth, Error> {
    Ok(kernel::diameter_growth(
        diameter.read()?,
        expansion.read()?,
        rise.read()?,
    ))
}

/// How far a diameter grows by a rise of temperature: expansion times diameter times rise.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the thermal expansion.
/// Example: tw_diameter_growth(tw_diameter_inch(2), tw_expansion_micrometer_per_meter_kelvin(11.5),
///     tw_rise_kelvin(10), &growth, NULL); tw_growth_as_inch(growth) is 0.00023000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_diameter_growth(
    diameter: tw_diameter,
    expansion: tw_expansion,
    rise: tw_rise,
    growth: *mut tw_growth,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !growth.is_null(),
        || {
            Ok(tw_growth::from(diameter_growth_of(
                diameter, expansion, rise,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(growth, answer) },
    )
}

/// tw_diameter_growth for every row.
///
/// Columns, see the first page: diameter, expansion and rise are read, growth is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_diameter_growth_column(
    diameter: *const tw_column,
    expansion: *const tw_column,
    rise: *const tw_column,
    growth: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<ThermalExpansion>("expansion", expansion),
            Input::of::<TemperatureRise>("rise", rise),
        ),
        outputs: [Output::of::<ThermalGrowth>("growth", growth)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[diameter, expansion, rise]| {
        let found = diameter_growth_of(
            tw_diameter { mm: diameter },
            tw_expansion {
                um_per_mk: expansion,
            },
            tw_rise { k: rise },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn length_growth_of(
    length: tw_length,
    expansion: tw_expansion,
    rise: tw_rise,
) -> Result<ThermalGrowth, Error> {
    Ok(kernel::length_growth(
        length.read()?,
        expansion.read()?,
        rise.read()?,
    ))
}

/// How far a length grows by a rise of temperature, where nothing holds its ends.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the thermal expansion.
/// Example: tw_length_growth(tw_length_millimeter(400),
///     tw_expansion_micrometer_per_meter_kelvin(11.5), tw_rise_kelvin(15), &growth, NULL);
///     growth.mm is 0.069000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_length_growth(
    length: tw_length,
    expansion: tw_expansion,
    rise: tw_rise,
    growth: *mut tw_growth,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !growth.is_null(),
        || Ok(tw_growth::from(length_growth_of(length, expansion, rise)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(growth, answer) },
    )
}

/// tw_length_growth for every row.
///
/// Columns, see the first page: length, expansion and rise are read, growth is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_length_growth_column(
    length: *const tw_column,
    expansion: *const tw_column,
    rise: *const tw_column,
    growth: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<WorkLength>("length", length),
            Input::of::<ThermalExpansion>("expansion", expansion),
            Input::of::<TemperatureRise>("rise", rise),
        ),
        outputs: [Output::of::<ThermalGrowth>("growth", growth)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[length, expansion, rise]| {
        let found = length_growth_of(
            tw_length { mm: length },
            tw_expansion {
                um_per_mk: expansion,
            },
            tw_rise { k: rise },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn diameter_at_20_of(
    measured: tw_diameter,
    expansion: tw_expansion,
    rise: tw_rise,
) -> Result<Diameter, Error> {
    Ok(kernel::diameter_at_20(
        measured.named("measured")?,
        expansion.read()?,
        rise.read()?,
    ))
}

/// What a diameter measured warm will be at 20 degC: measured / (1 + expansion times rise). rise is
/// how much warmer than 20 degC the work is; the instrument is at 20 degC.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the thermal expansion; 20 degC is that of ISO 1 (from memory).
/// Example: tw_diameter_at_20(tw_diameter_millimeter(60.028),
///     tw_expansion_micrometer_per_meter_kelvin(23.4), tw_rise_kelvin(20), &diameter, NULL);
///     diameter.mm is 59.99992.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_diameter_at_20(
    measured: tw_diameter,
    expansion: tw_expansion,
    rise: tw_rise,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || {
            Ok(tw_diameter::from(diameter_at_20_of(
                measured, expansion, rise,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_diameter_at_20 for every row.
///
/// Columns, see the first page: measured, expansion and rise are read, diameter is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_diameter_at_20_column(
    measured: *const tw_column,
    expansion: *const tw_column,
    rise: *const tw_column,
    diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("measured", measured),
            Input::of::<ThermalExpansion>("expansion", expansion),
            Input::of::<TemperatureRise>("rise", rise),
        ),
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[measured, expansion, rise]| {
        let found = diameter_at_20_of(
            tw_diameter { mm: measured },
            tw_expansion {
                um_per_mk: expansion,
            },
            tw_rise { k: rise },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn temperature_rise_of(
    power: tw_power,
    heat_share: tw_heat_share,
    time: tw_time,
    mass: tw_mass,
    specific_heat: tw_specific_heat,
) -> Result<TemperatureRise, Error> {
    kernel::temperature_rise(
        power.read()?,
        heat_share.read()?,
        time.read()?,
        mass.read()?,
        specific_heat.read()?,
    )
}

/// How much warmer a cut makes the work without any loss, an upper bound: share of the power that
/// stays in the work (0.05 to 0.2, from memory of text books) times power times time over mass
/// times specific heat.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the specific heat; the share from memory of the text books.
/// Example: tw_temperature_rise(tw_power_kilowatt(1.2), tw_heat_share_one(0.1), tw_time_second(60),
///     tw_mass_kilogram(0.98646), tw_specific_heat_joule_per_kilogram_kelvin(470), &rise, NULL);
///     rise.k is 15.5294.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_temperature_rise(
    power: tw_power,
    heat_share: tw_heat_share,
    time: tw_time,
    mass: tw_mass,
    specific_heat: tw_specific_heat,
    rise: *mut tw_rise,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !rise.is_null(),
        || {
            Ok(tw_rise::from(temperature_rise_of(
                power,
                heat_share,
                time,
                mass,
                specific_heat,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(rise, answer) },
    )
}

/// tw_temperature_rise for every row.
///
/// Columns, see the first page: power, heat_share, time, mass and specific_heat are read, rise is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_temperature_rise_column(
    power: *const tw_column,
    heat_share: *const tw_column,
    time: *const tw_column,
    mass: *const tw_column,
    specific_heat: *const tw_column,
    rise: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Power>("power", power),
            Input::of::<HeatShare>("heat_share", heat_share),
            Input::of::<Duration>("time", time),
            Input::of::<Mass>("mass", mass),
            Input::of::<SpecificHeat>("specific_heat", specific_heat),
        ),
        outputs: [Output::of::<TemperatureRise>("rise", rise)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[power, heat_share, time, mass, specific_heat]| {
        let found = temperature_rise_of(
            tw_power { kw: power },
            tw_heat_share { ratio: heat_share },
            tw_time { s: time },
            tw_mass { kg: mass },
            tw_specific_heat {
                j_per_kgk: specific_heat,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn length_at_20_of(
    measured: tw_length,
    expansion: tw_expansion,
    rise: tw_rise,
) -> Result<WorkLength, Error> {
    let measured = measured.named("measured")?;
    let expansion = expansion.read()?;
    let rise = rise.read()?;

    Ok(kernel::length_at_20(measured, expansion, rise))
}

/// What a length measured warm will be at 20 degC: measured / (1 + expansion rise). The instrument
/// is itself at 20 degC; one as warm as the work errs by its own growth.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the thermal expansion; 20 degC is that of ISO 1 (from memory).
/// Example: tw_length_at_20(tw_length_millimeter(100.0115),
///     tw_expansion_micrometer_per_meter_kelvin(11.5), tw_rise_kelvin(10), &length, NULL);
///     length.mm is 100.0000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_length_at_20(
    measured: tw_length,
    expansion: tw_expansion,
    rise: tw_rise,
    length: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !length.is_null(),
        || Ok(tw_length::from(length_at_20_of(measured, expansion, rise)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(length, answer) },
    )
}

/// tw_length_at_20 for every row.
///
/// Columns, see the first page: measured, expansion and rise are read, length is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_length_at_20_column(
    measured: *const tw_column,
    expansion: *const tw_column,
    rise: *const tw_column,
    length: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<WorkLength>("measured", measured),
            Input::of::<ThermalExpansion>("expansion", expansion),
            Input::of::<TemperatureRise>("rise", rise),
        ),
        outputs: [Output::of::<WorkLength>("length", length)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[measured, expansion, rise]| {
        let found = length_at_20_of(
            tw_length { mm: measured },
            tw_expansion {
                um_per_mk: expansion,
            },
            tw_rise { k: rise },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn mass_of_bar_of(
    density: tw_density,
    diameter: tw_diameter,
    length: tw_length,
) -> Result<Mass, Error> {
    let density = density.read()?;
    let diameter = diameter.read()?;
    let length = length.read()?;

    Ok(kernel::mass_of_bar(density, diameter, length))
}

/// The mass of a solid round bar: density pi diameter^2 length / 4.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_mass_of_bar(tw_density_kilogram_per_cubic_meter(7850), tw_diameter_millimeter(40),
///     tw_length_millimeter(100), &mass, NULL); mass.kg is 0.986460.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mass_of_bar(
    density: tw_density,
    diameter: tw_diameter,
    length: tw_length,
    mass: *mut tw_mass,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !mass.is_null(),
        || Ok(tw_mass::from(mass_of_bar_of(density, diameter, length)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(mass, answer) },
    )
}

/// tw_mass_of_bar for every row.
///
/// Columns, see the first page: density, diameter and length are read, mass is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mass_of_bar_column(
    density: *const tw_column,
    diameter: *const tw_column,
    length: *const tw_column,
    mass: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Density>("density", density),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<WorkLength>("length", length),
        ),
        outputs: [Output::of::<Mass>("mass", mass)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[density, diameter, length]| {
        let found = mass_of_bar_of(
            tw_density { kg_per_m3: density },
            tw_diameter { mm: diameter },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}
