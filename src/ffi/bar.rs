//! How far a held bar gives way, and how stiff it is held.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::scalar::support_of;
use super::status::{Unsaid, tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::Error;
use crate::physics::bar::{self, Bar, Springs, Support};
use crate::physics::loads;
use crate::physics::measured_taper::{self, Measured};
use crate::physics::section::Section;
use crate::quantity::{
    BendingMoment, Deflection, Diameter, DiameterError, FeedForce, Overhang, PassiveForce,
    Quantity, RotationalStiffness, Stiffness, WorkLength, YoungsModulus,
};

/// A spring, or none where it is rigid.
fn spring<T>(
    stiffness: f64,
    read: impl FnOnce() -> Result<T, Unsaid>,
) -> Result<Option<T>, Unsaid> {
    if stiffness == f64::INFINITY {
        Ok(None)
    } else {
        read().map(Some)
    }
}

pub(super) fn springs(
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
) -> Result<Springs, Error> {
    Ok(Springs {
        chuck: spring(chuck.kn_per_mm, || chuck.named("chuck"))?,
        chuck_rotational: spring(chuck_rotational.knm_per_rad, || {
            chuck_rotational.named("chuck_rotational")
        })?,
        centre: spring(centre.kn_per_mm, || centre.named("centre"))?,
    })
}

#[allow(clippy::too_many_arguments)]
fn deflection_at_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    support: i32,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    at: tw_length,
) -> Result<Deflection, Error> {
    let bar = Bar::new(youngs_modulus.read()?, diameter.read()?, overhang.read()?);
    let support = support_of(support)?;
    let springs = springs(chuck, chuck_rotational, centre)?;
    bar::deflection(
        &bar,
        support,
        &springs,
        passive_force.read()?,
        at.named("at")?,
    )
}

/// How far a round bar of one diameter gives way at the tool.
///
/// support is a number of enum tw_support. The three springs say how the chuck gives way across and
/// by tilting, and how the centre does; between centres chuck is the centre at the head. An
/// infinite one is rigid (tw_stiffness_rigid, tw_rotational_stiffness_rigid). at is measured from
/// the chuck and lies within the overhang (TW_CONTRADICTION). A spring that does not count for the
/// support is checked all the same.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// Example: tw_deflection_at(tw_youngs_modulus_kilopound_per_square_inch(30000),
///     tw_diameter_inch(1), tw_overhang_inch(6), TW_SUPPORT_CHUCK, tw_stiffness_rigid(),
///     tw_rotational_stiffness_rigid(), tw_stiffness_rigid(), tw_passive_force_pound_force(50),
///     tw_length_inch(6), &deflection, NULL); tw_deflection_as_inch(deflection) is 0.00244462.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_deflection_at(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    support: i32,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    at: tw_length,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            Ok(tw_deflection::from(deflection_at_of(
                youngs_modulus,
                diameter,
                overhang,
                support,
                chuck,
                chuck_rotational,
                centre,
                passive_force,
                at,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_deflection_at for every row.
///
/// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
/// centre, passive_force and at are read, deflection is written. support is one number for all
/// rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_deflection_at_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    support: i32,
    chuck: *const tw_column,
    chuck_rotational: *const tw_column,
    centre: *const tw_column,
    passive_force: *const tw_column,
    at: *const tw_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<WorkLength>("at", at),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    let kernel = |[
        youngs_modulus,
        diameter,
        overhang,
        chuck,
        chuck_rotational,
        centre,
        passive_force,
        at,
    ]: [f64; 8]|
     -> Result<([f64; 1], i32), Error> {
        let found = deflection_at_of(
            tw_youngs_modulus {
                gpa: youngs_modulus,
            },
            tw_diameter { mm: diameter },
            tw_overhang { mm: overhang },
            support,
            tw_stiffness { kn_per_mm: chuck },
            tw_rotational_stiffness {
                knm_per_rad: chuck_rotational,
            },
            tw_stiffness { kn_per_mm: centre },
            tw_passive_force { n: passive_force },
            tw_length { mm: at },
        )?;
        Ok(([found.trade()], 0))
    };
    let rigid = [false, false, false, true, true, true, false, false];
    job.run_checked_but_rigid(detail, rigid, kernel)
}

#[allow(clippy::too_many_arguments)]
fn feed_force_moment_of(
    feed_force: tw_feed_force,
    diameter: tw_diameter,
) -> Result<BendingMoment, Error> {
    Ok(loads::feed_force_moment(
        feed_force.read()?,
        diameter.read()?,
    ))
}

/// The moment with which the feed force bends the bar, for it acts at the surface: -F_f d/2,
/// negative because it turns the free end towards the tool when the tool cuts towards the chuck.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: statics; derived.
/// Example: tw_feed_force_moment(tw_feed_force_newton(200), tw_diameter_millimeter(40),
///     &bending_moment, NULL); bending_moment.nm is -4.000.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_feed_force_moment(
    feed_force: tw_feed_force,
    diameter: tw_diameter,
    bending_moment: *mut tw_bending_moment,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !bending_moment.is_null(),
        || {
            Ok(tw_bending_moment::from(feed_force_moment_of(
                feed_force, diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(bending_moment, answer) },
    )
}

/// tw_feed_force_moment for every row.
///
/// Columns, see the first page: feed_force and diameter are read, bending_moment is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_feed_force_moment_column(
    feed_force: *const tw_column,
    diameter: *const tw_column,
    bending_moment: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<FeedForce>("feed_force", feed_force),
            Input::of::<Diameter>("diameter", diameter),
        ),
        outputs: [Output::of::<BendingMoment>(
            "bending_moment",
            bending_moment,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed_force, diameter]| {
        let found = feed_force_moment_of(
            tw_feed_force { n: feed_force },
            tw_diameter { mm: diameter },
        )?;
        Ok(([found.trade()], 0))
    })
}

/// The kernel's words about a measurement, at the arguments of the call.
fn of_the_measurement(error: Error) -> Error {
    match error.field() {
        "force" => error.at("passive_force"),
        "measured[0].at" => error.at("near_at"),
        "measured[1].at" => error.at("far_at"),
        "measured" => error.at("far_error"),
        _ => error,
    }
}

#[allow(clippy::too_many_arguments)]
fn centre_force_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    at: tw_length,
) -> Result<PassiveForce, Error> {
    let youngs_modulus = youngs_modulus.read()?;
    let diameter = diameter.read()?;
    let overhang = overhang.read()?;
    let chuck = spring(chuck.kn_per_mm, || chuck.named("chuck"))?;
    let chuck_rotational = spring(chuck_rotational.knm_per_rad, || {
        chuck_rotational.named("chuck_rotational")
    })?;
    let centre = spring(centre.kn_per_mm, || centre.named("centre"))?;
    let passive_force = passive_force.read()?;
    let at = at.named("at")?;
    let bar = Bar::new(youngs_modulus, diameter, overhang);
    let springs = Springs {
        chuck,
        chuck_rotational,
        centre,
    };
    bar::centre_force(&bar, &springs, passive_force, at)
}

/// The force with which the centre at the end of a bar holds against the tool, the chuck holding
/// the other end. Rigid: passive_force a^2 (3 L - a)/(2 L^3), a the place and L the overhang.
///
/// The three springs say how the chuck gives way across and by tilting, and how the centre does;
/// an infinite one is rigid (tw_stiffness_rigid, tw_rotational_stiffness_rigid). at is measured
/// from the chuck and lies within the overhang (TW_CONTRADICTION). The weight of the work is not
/// in it.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// Example: tw_centre_force(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(32),
///     tw_overhang_millimeter(500), tw_stiffness_newton_per_micrometer(50),
///     tw_rotational_stiffness_kilonewton_meter_per_radian(200),
///     tw_stiffness_newton_per_micrometer(15), tw_passive_force_newton(300),
///     tw_length_millimeter(420), &centre_force, NULL); centre_force.n is 231.584.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_centre_force(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    at: tw_length,
    centre_force: *mut tw_passive_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !centre_force.is_null(),
        || {
            Ok(tw_passive_force::from(centre_force_of(
                youngs_modulus,
                diameter,
                overhang,
                chuck,
                chuck_rotational,
                centre,
                passive_force,
                at,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(centre_force, answer) },
    )
}

/// tw_centre_force for every row.
///
/// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
/// centre, passive_force and at are read, centre_force is written. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_centre_force_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    chuck: *const tw_column,
    chuck_rotational: *const tw_column,
    centre: *const tw_column,
    passive_force: *const tw_column,
    at: *const tw_column,
    centre_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<WorkLength>("at", at),
        ),
        outputs: [Output::of::<PassiveForce>("centre_force", centre_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    let kernel = |[
        youngs_modulus,
        diameter,
        overhang,
        chuck,
        chuck_rotational,
        centre,
        passive_force,
        at,
    ]: [f64; 8]|
     -> Result<([f64; 1], i32), Error> {
        let found = centre_force_of(
            tw_youngs_modulus {
                gpa: youngs_modulus,
            },
            tw_diameter { mm: diameter },
            tw_overhang { mm: overhang },
            tw_stiffness { kn_per_mm: chuck },
            tw_rotational_stiffness {
                knm_per_rad: chuck_rotational,
            },
            tw_stiffness { kn_per_mm: centre },
            tw_passive_force { n: passive_force },
            tw_length { mm: at },
        )?;
        Ok(([found.trade()], 0))
    };
    let rigid = [false, false, false, true, true, true, false, false];
    job.run_checked_but_rigid(detail, rigid, kernel)
}

#[allow(clippy::too_many_arguments)]
fn worst_station_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    from: tw_length,
    to: tw_length,
    support: Support,
) -> Result<(WorkLength, Deflection), Error> {
    let youngs_modulus = youngs_modulus.read()?;
    let diameter = diameter.read()?;
    let overhang = overhang.read()?;
    let chuck = spring(chuck.kn_per_mm, || chuck.named("chuck"))?;
    let chuck_rotational = spring(chuck_rotational.knm_per_rad, || {
        chuck_rotational.named("chuck_rotational")
    })?;
    let centre = spring(centre.kn_per_mm, || centre.named("centre"))?;
    let passive_force = passive_force.read()?;
    let from = from.named("from")?;
    let to = to.named("to")?;
    let bar = Bar::new(youngs_modulus, diameter, overhang);
    let springs = Springs {
        chuck,
        chuck_rotational,
        centre,
    };
    let found = bar::worst_station(&bar, &springs, support, passive_force, from, to)?;
    Ok((found.0, found.1))
}

/// Where between two stations a moving tool bends a round bar most, and how far. In the chuck
/// alone that is the far station; with a centre it lies between (rigid: 0.586 of the overhang
/// from the chuck) or at one of the two.
///
/// support is a number of enum tw_support, springs as of tw_deflection_at. from and to are
/// measured from the chuck; refused (TW_CONTRADICTION): one beyond the overhang, and to before
/// from.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: derived: the zeros of the derivative of the deflection.
/// Example: tw_worst_station(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(20),
///     tw_overhang_millimeter(300), tw_stiffness_rigid(), tw_rotational_stiffness_rigid(),
///     tw_stiffness_rigid(), tw_passive_force_newton(100), tw_length_millimeter(10),
///     tw_length_millimeter(290), TW_SUPPORT_CHUCK_AND_CENTRE, &at, &deflection, NULL);
///     at.mm is 175.736 and tw_deflection_as_micrometer(deflection) is 16.0631.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_worst_station(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    chuck: tw_stiffness,
    chuck_rotational: tw_rotational_stiffness,
    centre: tw_stiffness,
    passive_force: tw_passive_force,
    from: tw_length,
    to: tw_length,
    support: i32,
    at: *mut tw_length,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(at.is_null() && deflection.is_null()),
        || {
            let support = support_of(support)?;
            let (at_is, deflection_is) = worst_station_of(
                youngs_modulus,
                diameter,
                overhang,
                chuck,
                chuck_rotational,
                centre,
                passive_force,
                from,
                to,
                support,
            )?;
            Ok((tw_length::from(at_is), tw_deflection::from(deflection_is)))
        },
        |(at_is, deflection_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(at, at_is);
                put(deflection, deflection_is);
            }
        },
    )
}

/// tw_worst_station for every row.
///
/// Columns, see the first page: youngs_modulus, diameter, overhang, chuck, chuck_rotational,
/// centre, passive_force, from and to are read, at and deflection are written, each may be NULL
/// unless both are. support is one number for all rows; one that is refused fails the whole call.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_worst_station_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    chuck: *const tw_column,
    chuck_rotational: *const tw_column,
    centre: *const tw_column,
    passive_force: *const tw_column,
    from: *const tw_column,
    to: *const tw_column,
    support: i32,
    at: *const tw_out_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<WorkLength>("from", from),
            Input::of::<WorkLength>("to", to),
        ),
        outputs: [
            Output::of::<WorkLength>("at", at),
            Output::of::<Deflection>("deflection", deflection),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(support_of(support)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(support) => {
            let kernel = |[
                youngs_modulus,
                diameter,
                overhang,
                chuck,
                chuck_rotational,
                centre,
                passive_force,
                from,
                to,
            ]: [f64; 9]|
             -> Result<([f64; 2], i32), Error> {
                let (at, deflection) = worst_station_of(
                    tw_youngs_modulus {
                        gpa: youngs_modulus,
                    },
                    tw_diameter { mm: diameter },
                    tw_overhang { mm: overhang },
                    tw_stiffness { kn_per_mm: chuck },
                    tw_rotational_stiffness {
                        knm_per_rad: chuck_rotational,
                    },
                    tw_stiffness { kn_per_mm: centre },
                    tw_passive_force { n: passive_force },
                    tw_length { mm: from },
                    tw_length { mm: to },
                    support,
                )?;
                Ok(([at.trade(), deflection.trade()], 0))
            };
            let rigid = [false, false, false, true, true, true, false, false, false];
            job.run_checked_but_rigid(detail, rigid, kernel)
        }
    }
}

#[allow(clippy::too_many_arguments)]
fn stiffness_from_taper_of(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    passive_force: tw_passive_force,
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
) -> Result<(f64, f64), Error> {
    let youngs_modulus = youngs_modulus.read()?;
    let diameter = diameter.read()?;
    let overhang = overhang.read()?;
    let passive_force = passive_force.read()?;
    let near_at = near_at.named("near_at")?;
    let near_error = near_error.named("near_error")?;
    let far_at = far_at.named("far_at")?;
    let far_error = far_error.named("far_error")?;
    let length = WorkLength::from_trade(overhang.trade()).map_err(|error| error.at("overhang"))?;
    let found = measured_taper::stiffness_from_taper(
        youngs_modulus,
        &[Section::cylinder(diameter, length)],
        passive_force,
        &[
            Measured::new(near_at, near_error),
            Measured::new(far_at, far_error),
        ],
    )
    .map_err(of_the_measurement)?;
    Ok((
        found.chuck.map_or(f64::INFINITY, Stiffness::trade),
        found
            .chuck_rotational
            .map_or(f64::INFINITY, RotationalStiffness::trade),
    ))
}

/// How stiff the chuck is, across and against tilting, by the errors of the diameter that were
/// measured at two places of a round bar turned in the chuck alone, both measured from the chuck:
/// error/2 / passive_force less what the bar itself gives way in a rigid chuck is
/// 1/chuck + at^2/chuck_rotational. A spring that comes out rigid is infinite, as tw_deflection_at
/// takes it.
///
/// The errors come from the spring alone: a tool that wears or a headstock out of line is told as
/// a softer chuck. Refused (TW_CONTRADICTION): two places that are one, a place beyond the
/// overhang, errors smaller than the bar alone would spring, and a force that is not above zero.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: derived.
/// Example: tw_stiffness_from_taper(tw_youngs_modulus_gigapascal(210), tw_diameter_millimeter(30),
///     tw_overhang_millimeter(150), tw_passive_force_newton(120), tw_length_millimeter(50),
///     tw_diameter_error_micrometer(15.1976386), tw_length_millimeter(150),
///     tw_diameter_error_micrometer(94.3362424), &chuck, &chuck_rotational, NULL);
///     chuck.kn_per_mm is 30.000 and chuck_rotational.knm_per_rad is 100.00.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_stiffness_from_taper(
    youngs_modulus: tw_youngs_modulus,
    diameter: tw_diameter,
    overhang: tw_overhang,
    passive_force: tw_passive_force,
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
    chuck: *mut tw_stiffness,
    chuck_rotational: *mut tw_rotational_stiffness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(chuck.is_null() && chuck_rotational.is_null()),
        || {
            let (chuck_is, chuck_rotational_is) = stiffness_from_taper_of(
                youngs_modulus,
                diameter,
                overhang,
                passive_force,
                near_at,
                near_error,
                far_at,
                far_error,
            )?;
            Ok((
                tw_stiffness {
                    kn_per_mm: chuck_is,
                },
                tw_rotational_stiffness {
                    knm_per_rad: chuck_rotational_is,
                },
            ))
        },
        |(chuck_is, chuck_rotational_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(chuck, chuck_is);
                put(chuck_rotational, chuck_rotational_is);
            }
        },
    )
}

/// tw_stiffness_from_taper for every row.
///
/// Columns, see the first page: youngs_modulus, diameter, overhang, passive_force, near_at,
/// near_error, far_at and far_error are read, chuck and chuck_rotational are written, each may be
/// NULL unless both are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_stiffness_from_taper_column(
    youngs_modulus: *const tw_column,
    diameter: *const tw_column,
    overhang: *const tw_column,
    passive_force: *const tw_column,
    near_at: *const tw_column,
    near_error: *const tw_column,
    far_at: *const tw_column,
    far_error: *const tw_column,
    chuck: *const tw_out_column,
    chuck_rotational: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<WorkLength>("near_at", near_at),
            Input::of::<DiameterError>("near_error", near_error),
            Input::of::<WorkLength>("far_at", far_at),
            Input::of::<DiameterError>("far_error", far_error),
        ),
        outputs: [
            Output::of::<Stiffness>("chuck", chuck),
            Output::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            youngs_modulus,
            diameter,
            overhang,
            passive_force,
            near_at,
            near_error,
            far_at,
            far_error,
        ]| {
            let (chuck, chuck_rotational) = stiffness_from_taper_of(
                tw_youngs_modulus {
                    gpa: youngs_modulus,
                },
                tw_diameter { mm: diameter },
                tw_overhang { mm: overhang },
                tw_passive_force { n: passive_force },
                tw_length { mm: near_at },
                tw_diameter_error { mm: near_error },
                tw_length { mm: far_at },
                tw_diameter_error { mm: far_error },
            )?;
            Ok(([chuck, chuck_rotational], 0))
        },
    )
}
