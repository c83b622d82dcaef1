//! Work on a centre: growth against it, buckling, push-out.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::centre;
use crate::physics::strut::{self, Strut};
use crate::quantity::{
    AxialForce, AxialStiffness, Diameter, Friction, PassiveForce, Quantity, ThermalGrowth,
    WorkLength, YoungsModulus,
};

fn growth_load_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    length: tw_length,
    growth: tw_growth,
    axial_stiffness: tw_axial_stiffness,
) -> Result<AxialForce, Error> {
    let bar = Strut::new(youngs_modulus.read()?, diameter.read()?, length.read()?);
    Ok(strut::growth_load(
        &bar,
        growth.read()?,
        Some(axial_stiffness.read()?),
    ))
}

/// The force with which a solid round bar that grows between chuck and centre presses harder on the
/// centre: growth / (length/(E A) + 1/axial_stiffness). axial_stiffness is that of centre, quill
/// and tailstock along the axis. Negative where the bar shrinks.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_growth_load(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    length: tw_length,
    growth: tw_growth,
    axial_stiffness: tw_axial_stiffness,
    axial_force: *mut tw_axial_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !axial_force.is_null(),
        || {
            Ok(tw_axial_force::from(growth_load_of(
                youngs_modulus,
                diameter,
                length,
                growth,
                axial_stiffness,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(axial_force, answer) },
    )
}

/// tw_growth_load for every row.
///
/// Columns, see the first page: youngs_modulus, diameter, length, growth and axial_stiffness are
/// read, axial_force is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_growth_load_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    length: *const tw_column,
    growth: *const tw_column,
    axial_stiffness: *const tw_column,
    axial_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<WorkLength>("length", length),
            Input::of::<ThermalGrowth>("growth", growth),
            Input::of::<AxialStiffness>("axial_stiffness", axial_stiffness),
        ],
        outputs: [Output::of::<AxialForce>("axial_force", axial_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[youngs_modulus, diameter, length, growth, axial_stiffness]| {
            let found = growth_load_of(
                tw_youngs_modulus {
                    gpa: youngs_modulus,
                },
                tw_diameter { mm: diameter },
                tw_length { mm: length },
                tw_growth { mm: growth },
                tw_axial_stiffness {
                    kn_per_mm: axial_stiffness,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn buckling_load_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    length: tw_length,
) -> Result<AxialForce, Error> {
    let bar = Strut::new(youngs_modulus.read()?, diameter.read()?, length.read()?);
    Ok(strut::buckling_load(&bar))
}

/// The axial force at which a solid round bar hinged at both ends buckles: pi^2 E I / length^2. A
/// bar that the chuck holds bears about twice as much.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_buckling_load(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    length: tw_length,
    axial_force: *mut tw_axial_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !axial_force.is_null(),
        || {
            Ok(tw_axial_force::from(buckling_load_of(
                youngs_modulus,
                diameter,
                length,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(axial_force, answer) },
    )
}

/// tw_buckling_load for every row.
///
/// Columns, see the first page: youngs_modulus, diameter and length are read, axial_force is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_buckling_load_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    length: *const tw_column,
    axial_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<WorkLength>("length", length),
        ],
        outputs: [Output::of::<AxialForce>("axial_force", axial_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[youngs_modulus, diameter, length]| {
        let found = buckling_load_of(
            tw_youngs_modulus {
                gpa: youngs_modulus,
            },
            tw_diameter { mm: diameter },
            tw_length { mm: length },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn push_out_of(radial_force: tw_passive_force, friction: tw_friction) -> Result<AxialForce, Error> {
    Ok(centre::push_out(
        radial_force.named("radial_force")?,
        friction.read()?,
    ))
}

/// The axial force that holds the work on a centre of 60 deg against a radial force: radial_force
/// tan(30 deg - atan friction). Friction 0 is on the safe side. Zero or below: friction alone holds
/// it.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_push_out(
    radial_force: tw_passive_force,
    friction: tw_friction,
    axial_force: *mut tw_axial_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !axial_force.is_null(),
        || Ok(tw_axial_force::from(push_out_of(radial_force, friction)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(axial_force, answer) },
    )
}

/// tw_push_out for every row.
///
/// Columns, see the first page: radial_force and friction are read, axial_force is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_push_out_column(
    radial_force: *const tw_column,
    friction: *const tw_column,
    axial_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<PassiveForce>("radial_force", radial_force),
            Input::of::<Friction>("friction", friction),
        ],
        outputs: [Output::of::<AxialForce>("axial_force", axial_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[radial_force, friction]| {
        let found = push_out_of(
            tw_passive_force { n: radial_force },
            tw_friction { ratio: friction },
        )?;
        Ok(([found.trade()], 0))
    })
}
