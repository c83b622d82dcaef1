//! The spindle speeds at which a bar whips, and how far it bows before.

use super::bar::springs;
use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::scalar::support_of;
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::bar::Bar;
use crate::physics::section::Section;
use crate::physics::stepped::HeldBar;
use crate::physics::whirl;
use crate::quantity::{
    CriticalSpeed, Deflection, Density, Diameter, Eccentricity, Mass, Overhang, Quantity,
    RotationalStiffness, SpindleSpeed, Stiffness, WorkLength, YoungsModulus,
};

#[allow(clippy::too_many_arguments)]
fn critical_speed_of_bar_of(
    youngs_modulus: tw_youngs_modulus,
    density: tw_density,
    diameter: tw_diameter,
    overhang: tw_overhang,
    support: i32,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
) -> Result<CriticalSpeed, Error> {
    let (modulus, density, diameter) = (youngs_modulus.read()?, density.read()?, diameter.read()?);
    let length =
        WorkLength::from_trade(overhang.read()?.trade()).map_err(|error| error.at("overhang"))?;
    let support = support_of(support)?;
    let springs = springs(chuck, chuck_rotational, centre)?;
    let section = Section::cylinder(diameter, length);
    HeldBar::new(modulus, &[section], support, &springs, &[])?.first_critical_speed(density)
}

/// The spindle speed at which a round bar of one diameter whips.
///
/// support and the springs as for tw_deflection_at. Run well below: about 0.7 of it is common
/// practice.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Blevins, Formulas for Natural Frequency and Mode Shape, from memory; derived.
/// Example: tw_critical_speed_of_bar(tw_youngs_modulus_gigapascal(210),
///     tw_density_kilogram_per_cubic_meter(7850), tw_diameter_inch(0.75), tw_overhang_inch(30),
///     TW_SUPPORT_CHUCK_AND_CENTRE, tw_stiffness_rigid(), tw_rotational_stiffness_rigid(),
///     tw_stiffness_rigid(), &first_critical_speed, NULL); first_critical_speed.rpm is 6246.04.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_critical_speed_of_bar(
    youngs_modulus: tw_youngs_modulus,
    density: tw_density,
    diameter: tw_diameter,
    overhang: tw_overhang,
    support: i32,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    first_critical_speed: *mut tw_first_critical_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !first_critical_speed.is_null(),
        || {
            Ok(tw_first_critical_speed::from(critical_speed_of_bar_of(
                youngs_modulus,
                density,
                diameter,
                overhang,
                support,
                chuck,
                chuck_rotational,
                centre,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(first_critical_speed, answer) },
    )
}

/// tw_critical_speed_of_bar for every row.
///
/// Columns, see the first page: youngs_modulus, density, diameter, overhang, chuck,
/// chuck_rotational and centre are read, first_critical_speed is written. support is one number for
/// all rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_critical_speed_of_bar_column(
    youngs_modulus: *const tw_column,
    density: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    support: i32,
    chuck: *const tw_column,
    chuck_rotational: *const tw_column,
    centre: *const tw_column,
    first_critical_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Density>("density", density),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
        ),
        outputs: [Output::of::<CriticalSpeed>(
            "first_critical_speed",
            first_critical_speed,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    let kernel = |[
        youngs_modulus,
        density,
        diameter,
        overhang,
        chuck,
        chuck_rotational,
        centre,
    ]: [f64; 7]|
     -> Result<([f64; 1], i32), Error> {
        let found = critical_speed_of_bar_of(
            tw_youngs_modulus {
                gpa: youngs_modulus,
            },
            tw_density { kg_per_m3: density },
            tw_diameter { mm: diameter },
            tw_overhang { mm: overhang },
            support,
            tw_stiffness { kn_per_mm: chuck },
            tw_rotational_stiffness {
                knm_per_rad: chuck_rotational,
            },
            tw_stiffness { kn_per_mm: centre },
        )?;
        Ok(([found.trade()], 0))
    };
    let rigid = [false, false, false, false, true, true, true];
    job.run_checked_but_rigid(detail, rigid, kernel)
}

#[allow(clippy::too_many_arguments)]
fn critical_speed_with_end_mass_of(
    youngs_modulus: tw_youngs_modulus,
    density: tw_density,
    diameter: tw_diameter,
    overhang: tw_overhang,
    end_mass: tw_mass,
) -> Result<CriticalSpeed, Error> {
    let (modulus, density) = (youngs_modulus.read()?, density.read()?);
    let bar = Bar::new(modulus, diameter.read()?, overhang.read()?);
    Ok(whirl::critical_speed_with_end_mass(
        &bar,
        density,
        end_mass.named("end_mass")?,
    ))
}

/// The spindle speed at which a round bar in a rigid chuck whips, with a mass at its free end; an
/// upper bound, at most 1.5 % high.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Blevins, Formulas for Natural Frequency and Mode Shape, from memory; derived.
/// Example: tw_critical_speed_with_end_mass(tw_youngs_modulus_gigapascal(210),
///     tw_density_kilogram_per_cubic_meter(7850), tw_diameter_millimeter(20),
///     tw_overhang_millimeter(200), tw_mass_kilogram(2), &first_critical_speed, NULL);
///     first_critical_speed.rpm is 5162.46.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_critical_speed_with_end_mass(
    youngs_modulus: tw_youngs_modulus,
    density: tw_density,
    diameter: tw_diameter,
    overhang: tw_overhang,
    end_mass: tw_mass,
    first_critical_speed: *mut tw_first_critical_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !first_critical_speed.is_null(),
        || {
            Ok(tw_first_critical_speed::from(
                critical_speed_with_end_mass_of(
                    youngs_modulus,
                    density,
                    diameter,
                    overhang,
                    end_mass,
                )?,
            ))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(first_critical_speed, answer) },
    )
}

/// tw_critical_speed_with_end_mass for every row.
///
/// Columns, see the first page: youngs_modulus, density, diameter, overhang and end_mass are read,
/// first_critical_speed is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_critical_speed_with_end_mass_column(
    youngs_modulus: *const tw_column,
    density: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    end_mass: *const tw_column,
    first_critical_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Density>("density", density),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Mass>("end_mass", end_mass),
        ),
        outputs: [Output::of::<CriticalSpeed>(
            "first_critical_speed",
            first_critical_speed,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[youngs_modulus, density, diameter, overhang, end_mass]| {
            let found = critical_speed_with_end_mass_of(
                tw_youngs_modulus {
                    gpa: youngs_modulus,
                },
                tw_density { kg_per_m3: density },
                tw_diameter { mm: diameter },
                tw_overhang { mm: overhang },
                tw_mass { kg: end_mass },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

#[allow(clippy::too_many_arguments)]
fn whip_of(
    eccentricity: tw_eccentricity,
    spindle_speed: tw_spindle_speed,
    first_critical_speed: tw_first_critical_speed,
) -> Result<Deflection, Error> {
    whirl::whip(
        eccentricity.read()?,
        spindle_speed.read()?,
        first_critical_speed.read()?,
    )
}

/// How far a bar throws itself out of the axis when its mass lies off it: e r^2/(1 - r^2), r the
/// spindle speed over the critical one. At the critical speed and above it is refused
/// (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: the rotor of Jeffcott (Laval), any text on vibration, from memory; derived.
/// Example: tw_whip(tw_eccentricity_millimeter(0.05), tw_spindle_speed_revolution_per_minute(900),
///     tw_first_critical_speed_revolution_per_minute(1500), &deflection, NULL);
///     deflection.mm is 0.028125.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_whip(
    eccentricity: tw_eccentricity,
    spindle_speed: tw_spindle_speed,
    first_critical_speed: tw_first_critical_speed,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            Ok(tw_deflection::from(whip_of(
                eccentricity,
                spindle_speed,
                first_critical_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_whip for every row.
///
/// Columns, see the first page: eccentricity, spindle_speed and first_critical_speed are read,
/// deflection is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_whip_column(
    eccentricity: *const tw_column,
    spindle_speed: *const tw_column,
    first_critical_speed: *const tw_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Eccentricity>("eccentricity", eccentricity),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<CriticalSpeed>("first_critical_speed", first_critical_speed),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[eccentricity, spindle_speed, first_critical_speed]| {
            let found = whip_of(
                tw_eccentricity { mm: eccentricity },
                tw_spindle_speed { rpm: spindle_speed },
                tw_first_critical_speed {
                    rpm: first_critical_speed,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
