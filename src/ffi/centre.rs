//! Work on a centre: growth against it, buckling, push-out.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::centre;
use crate::physics::strut::{self, Strut};
use crate::quantity::{
    AxialForce, AxialStiffness, Diameter, Friction, MeanPressure, PassiveForce, Quantity,
    ThermalGrowth, WorkLength, YoungsModulus,
};
use crate::standards::centre_hole::{self, Form};

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
///
/// Source: derived: the bar and what stands behind it are springs in a row.
/// Example: tw_growth_load(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
///     tw_length_millimeter(400), tw_growth_millimeter(0.069),
///     tw_axial_stiffness_newton_per_micrometer(20), &axial_force, NULL); axial_force.n is 1309.43.
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
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<WorkLength>("length", length),
            Input::of::<ThermalGrowth>("growth", growth),
            Input::of::<AxialStiffness>("axial_stiffness", axial_stiffness),
        ),
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
///
/// Source: Euler's column; any strength of materials text (from memory).
/// Example: tw_buckling_load(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
///     tw_length_millimeter(400), &axial_force, NULL);
///     tw_axial_force_as_kilonewton(axial_force) is 515.055.
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
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<WorkLength>("length", length),
        ),
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
///
/// Source: statics of a wedge, derived.
/// Example: tw_push_out(tw_passive_force_newton(600), tw_friction_one(0.15), &axial_force, NULL);
///     axial_force.n is 235.974.
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
        inputs: (
            Input::of::<PassiveForce>("radial_force", radial_force),
            Input::of::<Friction>("friction", friction),
        ),
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

/// The form of a centre hole. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_centre_hole_form {
    /// A plain cone of 60 degrees.
    TW_CENTRE_HOLE_FORM_A = 1,
    /// A cone of 60 degrees and a guard chamfer of 120 degrees, which keeps knocks off the cone.
    TW_CENTRE_HOLE_FORM_B = 2,
}

fn form_of(number: i32) -> Result<Form, Error> {
    const A: i32 = tw_centre_hole_form::TW_CENTRE_HOLE_FORM_A as i32;
    const B: i32 = tw_centre_hole_form::TW_CENTRE_HOLE_FORM_B as i32;
    match number {
        A => Ok(Form::A),
        B => Ok(Form::B),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "form",
            other.to_string(),
            "TW_CENTRE_HOLE_FORM_A (1) or TW_CENTRE_HOLE_FORM_B (2)",
            "pass one of the names of enum tw_centre_hole_form",
        )),
    }
}

fn cone_pressure_of(
    axial_force: tw_axial_force,
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
) -> Result<MeanPressure, Error> {
    let axial_force = axial_force.read()?;
    let countersink_diameter = countersink_diameter.named("countersink_diameter")?;
    let pilot_diameter = pilot_diameter.named("pilot_diameter")?;

    centre::cone_pressure(axial_force, countersink_diameter, pilot_diameter)
}

/// The mean pressure of an axial force on the cone of a centre hole: force over the ring that the
/// cone shows along the axis. New edges bear unevenly. A force that pulls presses nothing: its
/// size is taken. A pilot that is not smaller than the countersink is refused (TW_CONTRADICTION),
/// so is a ring too small for any plausible pressure (TW_IMPOSSIBLE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of a pressure; the projected ring, derived.
/// Example: tw_cone_pressure(tw_axial_force_newton(800), tw_diameter_millimeter(8.5),
///     tw_diameter_millimeter(4), &mean_pressure, NULL); mean_pressure.mpa is 18.1083.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cone_pressure(
    axial_force: tw_axial_force,
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
    mean_pressure: *mut tw_mean_pressure,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !mean_pressure.is_null(),
        || {
            Ok(tw_mean_pressure::from(cone_pressure_of(
                axial_force,
                countersink_diameter,
                pilot_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(mean_pressure, answer) },
    )
}

/// tw_cone_pressure for every row.
///
/// Columns, see the first page: axial_force, countersink_diameter and pilot_diameter are read,
/// mean_pressure is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cone_pressure_column(
    axial_force: *const tw_column,
    countersink_diameter: *const tw_column,
    pilot_diameter: *const tw_column,
    mean_pressure: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<AxialForce>("axial_force", axial_force),
            Input::of::<Diameter>("countersink_diameter", countersink_diameter),
            Input::of::<Diameter>("pilot_diameter", pilot_diameter),
        ),
        outputs: [Output::of::<MeanPressure>("mean_pressure", mean_pressure)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[axial_force, countersink_diameter, pilot_diameter]| {
            let found = cone_pressure_of(
                tw_axial_force { n: axial_force },
                tw_diameter {
                    mm: countersink_diameter,
                },
                tw_diameter { mm: pilot_diameter },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn side_pressure_of(
    radial_force: tw_passive_force,
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
) -> Result<MeanPressure, Error> {
    let radial_force = radial_force.named("radial_force")?;
    let countersink_diameter = countersink_diameter.named("countersink_diameter")?;
    let pilot_diameter = pilot_diameter.named("pilot_diameter")?;

    centre::side_pressure(radial_force, countersink_diameter, pilot_diameter)
}

/// The mean pressure of a radial force on the cone of 60 deg of a centre hole: force over the
/// shadow that the cone throws to the side. A pilot that is not smaller than the countersink is
/// refused (TW_CONTRADICTION), so is a shadow too small for any plausible pressure
/// (TW_IMPOSSIBLE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of a pressure; the projected trapezium, derived.
/// Example: tw_side_pressure(tw_passive_force_newton(200), tw_diameter_millimeter(8.5),
///     tw_diameter_millimeter(4), &mean_pressure, NULL); mean_pressure.mpa is 8.21120.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_side_pressure(
    radial_force: tw_passive_force,
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
    mean_pressure: *mut tw_mean_pressure,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !mean_pressure.is_null(),
        || {
            Ok(tw_mean_pressure::from(side_pressure_of(
                radial_force,
                countersink_diameter,
                pilot_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(mean_pressure, answer) },
    )
}

/// tw_side_pressure for every row.
///
/// Columns, see the first page: radial_force, countersink_diameter and pilot_diameter are read,
/// mean_pressure is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_side_pressure_column(
    radial_force: *const tw_column,
    countersink_diameter: *const tw_column,
    pilot_diameter: *const tw_column,
    mean_pressure: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<PassiveForce>("radial_force", radial_force),
            Input::of::<Diameter>("countersink_diameter", countersink_diameter),
            Input::of::<Diameter>("pilot_diameter", pilot_diameter),
        ),
        outputs: [Output::of::<MeanPressure>("mean_pressure", mean_pressure)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[radial_force, countersink_diameter, pilot_diameter]| {
            let found = side_pressure_of(
                tw_passive_force { n: radial_force },
                tw_diameter {
                    mm: countersink_diameter,
                },
                tw_diameter { mm: pilot_diameter },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn cone_depth_of(
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
) -> Result<WorkLength, Error> {
    let countersink_diameter = countersink_diameter.named("countersink_diameter")?;
    let pilot_diameter = pilot_diameter.named("pilot_diameter")?;

    centre_hole::cone_depth(countersink_diameter, pilot_diameter)
}

/// How deep the cone of 60 deg of a centre hole is, from its largest diameter to the pilot:
/// (countersink_diameter - pilot_diameter) sqrt(3)/2. Without a guard chamfer. A pilot that is not
/// smaller than the countersink is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry; the table of ISO 6411 obeys it.
/// Example: tw_cone_depth(tw_diameter_millimeter(5.3), tw_diameter_millimeter(2.5), &depth, NULL);
///     depth.mm is 2.42487.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cone_depth(
    countersink_diameter: tw_diameter,
    pilot_diameter: tw_diameter,
    depth: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !depth.is_null(),
        || {
            Ok(tw_length::from(cone_depth_of(
                countersink_diameter,
                pilot_diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(depth, answer) },
    )
}

/// tw_cone_depth for every row.
///
/// Columns, see the first page: countersink_diameter and pilot_diameter are read, depth is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cone_depth_column(
    countersink_diameter: *const tw_column,
    pilot_diameter: *const tw_column,
    depth: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("countersink_diameter", countersink_diameter),
            Input::of::<Diameter>("pilot_diameter", pilot_diameter),
        ),
        outputs: [Output::of::<WorkLength>("depth", depth)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[countersink_diameter, pilot_diameter]| {
        let found = cone_depth_of(
            tw_diameter {
                mm: countersink_diameter,
            },
            tw_diameter { mm: pilot_diameter },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn centre_hole_of(
    pilot_diameter: tw_diameter,
    form: Form,
) -> Result<(Diameter, Diameter, WorkLength, WorkLength), Error> {
    let pilot_diameter = pilot_diameter.named("pilot_diameter")?;

    let found = centre_hole::of_pilot(form, pilot_diameter)?;
    Ok((
        found.value.countersink(),
        found.value.largest(),
        found.value.cone_depth(),
        found.value.drilling_depth(),
    ))
}

/// A centre hole of the standard by the diameter of its pilot, by which its drill is called: the
/// largest diameter of the cone of 60 deg, the largest diameter at the face (of the guard chamfer
/// where there is one), how deep cone and chamfer are, and how deep to drill at least, from the
/// face to the end of the pilot. All from memory of ISO 6411, ISO 866 and ISO 2540; drilling
/// depths of form B are derived.
///
/// form is a number of enum tw_centre_hole_form. A pilot of which the form has no centre hole is
/// refused (TW_OUT_OF_RANGE).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: form A: ISO 866 and ISO 6411, form B: ISO 2540 and ISO 6411; from memory.
/// Example: tw_centre_hole(tw_diameter_millimeter(2.5), TW_CENTRE_HOLE_FORM_A,
///     &countersink_diameter, &largest_diameter, &cone_depth, &drilling_depth, NULL);
///     countersink_diameter.mm is 5.300, largest_diameter.mm is 5.300, cone_depth.mm is 2.420 and
///     drilling_depth.mm is 4.600.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_centre_hole(
    pilot_diameter: tw_diameter,
    form: i32,
    countersink_diameter: *mut tw_diameter,
    largest_diameter: *mut tw_diameter,
    cone_depth: *mut tw_length,
    drilling_depth: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(countersink_diameter.is_null()
            && largest_diameter.is_null()
            && cone_depth.is_null()
            && drilling_depth.is_null()),
        || {
            let form = form_of(form)?;
            let (countersink_diameter_is, largest_diameter_is, cone_depth_is, drilling_depth_is) =
                centre_hole_of(pilot_diameter, form)?;
            Ok((
                tw_diameter::from(countersink_diameter_is),
                tw_diameter::from(largest_diameter_is),
                tw_length::from(cone_depth_is),
                tw_length::from(drilling_depth_is),
            ))
        },
        |(countersink_diameter_is, largest_diameter_is, cone_depth_is, drilling_depth_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(countersink_diameter, countersink_diameter_is);
                put(largest_diameter, largest_diameter_is);
                put(cone_depth, cone_depth_is);
                put(drilling_depth, drilling_depth_is);
            }
        },
    )
}

/// tw_centre_hole for every row.
///
/// Columns, see the first page: pilot_diameter is read, countersink_diameter, largest_diameter,
/// cone_depth and drilling_depth are written, each may be NULL unless all are. form is one number
/// for all rows; one that is refused fails the whole call. row_status may be NULL; else one
/// int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_centre_hole_column(
    pilot_diameter: *const tw_column,
    form: i32,
    countersink_diameter: *const tw_out_column,
    largest_diameter: *const tw_out_column,
    cone_depth: *const tw_out_column,
    drilling_depth: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Diameter>("pilot_diameter", pilot_diameter),),
        outputs: [
            Output::of::<Diameter>("countersink_diameter", countersink_diameter),
            Output::of::<Diameter>("largest_diameter", largest_diameter),
            Output::of::<WorkLength>("cone_depth", cone_depth),
            Output::of::<WorkLength>("drilling_depth", drilling_depth),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(form_of(form)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(form) => job.run_checked(detail, |[pilot_diameter]| {
            let (countersink_diameter, largest_diameter, cone_depth, drilling_depth) =
                centre_hole_of(tw_diameter { mm: pilot_diameter }, form)?;
            Ok((
                [
                    countersink_diameter.trade(),
                    largest_diameter.trade(),
                    cone_depth.trade(),
                    drilling_depth.trade(),
                ],
                0,
            ))
        }),
    }
}
