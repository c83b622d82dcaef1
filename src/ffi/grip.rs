//! How hard the jaws must grip, and what is left at speed.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::grip::{self, Jaws};
use crate::quantity::{
    Diameter, FeedForce, ForceFactor, Friction, GripForce, MainForce, Mass, Quantity, Radius,
    SpindleSpeed,
};

fn jaws_of(number: i32) -> Result<u8, Error> {
    u8::try_from(number).map_err(|_| {
        Error::new(
            ErrorKind::OutOfRange,
            "jaws",
            number.to_string(),
            "a whole number from 1 to 255",
            "count the jaws of the chuck",
        )
    })
}

fn grip_needed_of(
    main_force: tw_main_force,
    feed_force: tw_feed_force,
    cut_at: tw_diameter,
    gripped_at: tw_diameter,
    friction: tw_friction,
    safety: tw_force_factor,
) -> Result<GripForce, Error> {
    let main_force = main_force.read()?;
    let feed_force = feed_force.read()?;
    let cut_at = cut_at.named("cut_at")?;
    let gripped_at = gripped_at.named("gripped_at")?;
    let friction = friction.read()?;
    let safety = safety.named("safety")?;

    grip::grip_needed(main_force, feed_force, cut_at, gripped_at, friction, safety)
}

/// The grip force, of all jaws together and at the speed of the cut, that holds short work
/// against a cut: safety sqrt((main_force cut_at/gripped_at)^2 + feed_force^2) / friction. Gripped
/// on the outside; a long overhang tilts the work out of the jaws and wants more. Friction of
/// nothing, or so little that no chuck grips so hard, is refused (TW_IMPOSSIBLE).
///
/// It replaces neither the manual of the chuck nor qualified instruction.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common practice shaped after VDI 3106, from memory.
/// Example: tw_grip_needed(tw_main_force_newton(1500), tw_feed_force_newton(0),
///     tw_diameter_millimeter(60), tw_diameter_millimeter(50), tw_friction_one(0.15),
///     tw_force_factor_one(2), &grip_force, NULL); grip_force.n is 24000.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_grip_needed(
    main_force: tw_main_force,
    feed_force: tw_feed_force,
    cut_at: tw_diameter,
    gripped_at: tw_diameter,
    friction: tw_friction,
    safety: tw_force_factor,
    grip_force: *mut tw_grip_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !grip_force.is_null(),
        || {
            Ok(tw_grip_force::from(grip_needed_of(
                main_force, feed_force, cut_at, gripped_at, friction, safety,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(grip_force, answer) },
    )
}

/// tw_grip_needed for every row.
///
/// Columns, see the first page: main_force, feed_force, cut_at, gripped_at, friction and safety
/// are read, grip_force is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_grip_needed_column(
    main_force: *const tw_column,
    feed_force: *const tw_column,
    cut_at: *const tw_column,
    gripped_at: *const tw_column,
    friction: *const tw_column,
    safety: *const tw_column,
    grip_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<FeedForce>("feed_force", feed_force),
            Input::of::<Diameter>("cut_at", cut_at),
            Input::of::<Diameter>("gripped_at", gripped_at),
            Input::of::<Friction>("friction", friction),
            Input::of::<ForceFactor>("safety", safety),
        ),
        outputs: [Output::of::<GripForce>("grip_force", grip_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[main_force, feed_force, cut_at, gripped_at, friction, safety]| {
            let found = grip_needed_of(
                tw_main_force { n: main_force },
                tw_feed_force { n: feed_force },
                tw_diameter { mm: cut_at },
                tw_diameter { mm: gripped_at },
                tw_friction { ratio: friction },
                tw_force_factor { ratio: safety },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn grip_at_speed_of(
    grip_at_rest: tw_grip_force,
    jaw_mass: tw_mass,
    jaw_radius: tw_radius,
    spindle_speed: tw_spindle_speed,
    jaws: u8,
) -> Result<GripForce, Error> {
    let grip_at_rest = grip_at_rest.named("grip_at_rest")?;
    let jaw_mass = jaw_mass.named("jaw_mass")?;
    let jaw_radius = jaw_radius.named("jaw_radius")?;
    let spindle_speed = spindle_speed.read()?;
    let jaws = Jaws::new(jaws, jaw_mass, jaw_radius)?;
    grip::grip_at_speed(grip_at_rest, &jaws, spindle_speed)
}

/// The grip, of all jaws together, that is left at a spindle speed, gripped on the outside:
/// grip_at_rest - jaws m r omega^2. jaw_mass is that of one jaw with its base, jaw_radius where its
/// centre stands. A chuck without weights against centrifugal force; gripped from inside the grip
/// grows instead. A speed at which nothing of the grip is left is refused (TW_IMPOSSIBLE), jaws
/// outside of 1 to 255 too (TW_OUT_OF_RANGE).
///
/// It replaces neither the manual of the chuck nor qualified instruction.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common practice shaped after VDI 3106, from memory; centrifugal force.
/// Example: tw_grip_at_speed(tw_grip_force_kilonewton(30), tw_mass_kilogram(0.6),
///     tw_radius_millimeter(60), tw_spindle_speed_revolution_per_minute(1200), 3, &grip_force,
///     NULL); tw_grip_force_as_kilonewton(grip_force) is 28.2945.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_grip_at_speed(
    grip_at_rest: tw_grip_force,
    jaw_mass: tw_mass,
    jaw_radius: tw_radius,
    spindle_speed: tw_spindle_speed,
    jaws: i32,
    grip_force: *mut tw_grip_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !grip_force.is_null(),
        || {
            let jaws = jaws_of(jaws)?;
            Ok(tw_grip_force::from(grip_at_speed_of(
                grip_at_rest,
                jaw_mass,
                jaw_radius,
                spindle_speed,
                jaws,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(grip_force, answer) },
    )
}

/// tw_grip_at_speed for every row.
///
/// Columns, see the first page: grip_at_rest, jaw_mass, jaw_radius and spindle_speed are read,
/// grip_force is written. jaws is one number for all rows; one that is refused fails the whole
/// call. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_grip_at_speed_column(
    grip_at_rest: *const tw_column,
    jaw_mass: *const tw_column,
    jaw_radius: *const tw_column,
    spindle_speed: *const tw_column,
    jaws: i32,
    grip_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<GripForce>("grip_at_rest", grip_at_rest),
            Input::of::<Mass>("jaw_mass", jaw_mass),
            Input::of::<Radius>("jaw_radius", jaw_radius),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<GripForce>("grip_force", grip_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(jaws_of(jaws)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(jaws) => job.run_checked(
            detail,
            |[grip_at_rest, jaw_mass, jaw_radius, spindle_speed]| {
                let found = grip_at_speed_of(
                    tw_grip_force { n: grip_at_rest },
                    tw_mass { kg: jaw_mass },
                    tw_radius { mm: jaw_radius },
                    tw_spindle_speed { rpm: spindle_speed },
                    jaws,
                )?;
                Ok(([found.trade()], 0))
            },
        ),
    }
}

fn highest_speed_of_grip_of(
    grip_at_rest: tw_grip_force,
    jaw_mass: tw_mass,
    jaw_radius: tw_radius,
    jaws: u8,
) -> Result<SpindleSpeed, Error> {
    let grip_at_rest = grip_at_rest.named("grip_at_rest")?;
    let jaw_mass = jaw_mass.named("jaw_mass")?;
    let jaw_radius = jaw_radius.named("jaw_radius")?;
    let jaws = Jaws::new(jaws, jaw_mass, jaw_radius)?;
    Ok(grip::highest_speed(grip_at_rest, &jaws))
}

/// The spindle speed at which the jaws lose the largest share of their grip that is allowed, two
/// thirds: sqrt(2/3 grip_at_rest / (jaws m r)) / (2 pi). Arguments as of tw_grip_at_speed. The
/// speed marked on the chuck holds where it is lower; where no speed is marked, ask the maker,
/// not this formula.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common practice shaped after VDI 3106, from memory.
/// Example: tw_highest_speed_of_grip(tw_grip_force_kilonewton(30), tw_mass_kilogram(0.6),
///     tw_radius_millimeter(60), 3, &spindle_speed, NULL); spindle_speed.rpm is 4109.36.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_highest_speed_of_grip(
    grip_at_rest: tw_grip_force,
    jaw_mass: tw_mass,
    jaw_radius: tw_radius,
    jaws: i32,
    spindle_speed: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_speed.is_null(),
        || {
            let jaws = jaws_of(jaws)?;
            Ok(tw_spindle_speed::from(highest_speed_of_grip_of(
                grip_at_rest,
                jaw_mass,
                jaw_radius,
                jaws,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_speed, answer) },
    )
}

/// tw_highest_speed_of_grip for every row.
///
/// Columns, see the first page: grip_at_rest, jaw_mass and jaw_radius are read, spindle_speed is
/// written. jaws is one number for all rows; one that is refused fails the whole call. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_highest_speed_of_grip_column(
    grip_at_rest: *const tw_column,
    jaw_mass: *const tw_column,
    jaw_radius: *const tw_column,
    jaws: i32,
    spindle_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<GripForce>("grip_at_rest", grip_at_rest),
            Input::of::<Mass>("jaw_mass", jaw_mass),
            Input::of::<Radius>("jaw_radius", jaw_radius),
        ),
        outputs: [Output::of::<SpindleSpeed>("spindle_speed", spindle_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(jaws_of(jaws)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(jaws) => job.run_checked(detail, |[grip_at_rest, jaw_mass, jaw_radius]| {
            let found = highest_speed_of_grip_of(
                tw_grip_force { n: grip_at_rest },
                tw_mass { kg: jaw_mass },
                tw_radius { mm: jaw_radius },
                jaws,
            )?;
            Ok(([found.trade()], 0))
        }),
    }
}
