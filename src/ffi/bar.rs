//! How bars spring, what that leaves, and where they whip.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output, inside};
use super::scalar::support_of;
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::bar::{self, Bar, Springs};
use crate::physics::force::ForceLaw;
use crate::physics::measured_taper::{self, Measured};
use crate::physics::section::Section;
use crate::physics::spring_back::{self, Edge};
use crate::physics::stepped::HeldBar;
use crate::physics::{loads, whirl};
use crate::quantity::{
    BendingMoment, CornerRadius, CriticalSpeed, CuttingEdgeAngle, Deflection, Density, DepthOfCut,
    Diameter, DiameterError, Eccentricity, Feed, FeedForce, ForceExponent, Mass, NormalRatio,
    Overhang, PassiveForce, Quantity, RotationalStiffness, SetOver, SpecificCuttingForce,
    SpindleSpeed, SpringShare, Stiffness, TangentialDeflection, WorkLength, YoungsModulus,
};

/// A spring, or none where it is rigid.
fn spring<T>(stiffness: f64, read: impl FnOnce() -> Result<T, Error>) -> Result<Option<T>, Error> {
    if stiffness == f64::INFINITY {
        Ok(None)
    } else {
        read().map(Some)
    }
}

fn springs(
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

fn edge(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
) -> Result<Edge, Error> {
    Ok(Edge::new(
        ForceLaw::new(specific_force.read()?, exponent.read()?),
        feed.read()?,
        cutting_edge_angle.read()?,
        corner_radius.read()?,
        normal_ratio.read()?,
    ))
}

#[cold]
fn no_depth() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "allowed",
        "an error that the spring of this cut never reaches",
        "a cut whose passive force grows with its depth",
        "look at another limit: power, torque, or the chip",
    )
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
        inputs: [
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<WorkLength>("at", at),
        ],
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
    // An infinite spring is rigid, so the ranges are looked at here.
    let ranges = [
        YoungsModulus::ROW,
        Diameter::ROW,
        Overhang::ROW,
        Stiffness::ROW,
        RotationalStiffness::ROW,
        Stiffness::ROW,
        PassiveForce::ROW,
        WorkLength::ROW,
    ];
    let rigid = [false, false, false, true, true, true, false, false];
    job.run(
        detail,
        |row| {
            for ((range, rigid), value) in ranges.iter().zip(rigid).zip(row) {
                if !(rigid && value == f64::INFINITY) {
                    inside(range, value)?;
                }
            }
            kernel(row).map_err(|error| tw_status::from(error.kind()))
        },
        |row| kernel(row).err(),
    )
}

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
        inputs: [
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Density>("density", density),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Stiffness>("chuck", chuck),
            Input::of::<RotationalStiffness>("chuck_rotational", chuck_rotational),
            Input::of::<Stiffness>("centre", centre),
        ],
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
    // An infinite spring is rigid, so the ranges are looked at here.
    let ranges = [
        YoungsModulus::ROW,
        Density::ROW,
        Diameter::ROW,
        Overhang::ROW,
        Stiffness::ROW,
        RotationalStiffness::ROW,
        Stiffness::ROW,
    ];
    let rigid = [false, false, false, false, true, true, true];
    job.run(
        detail,
        |row| {
            for ((range, rigid), value) in ranges.iter().zip(rigid).zip(row) {
                if !(rigid && value == f64::INFINITY) {
                    inside(range, value)?;
                }
            }
            kernel(row).map_err(|error| tw_status::from(error.kind()))
        },
        |row| kernel(row).err(),
    )
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
        end_mass.read()?,
    ))
}

/// The spindle speed at which a round bar in a rigid chuck whips, with a mass at its free end; an
/// upper bound, at most 1.5 % high.
///
/// detail may be NULL. After a failure the output is NaN.
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
        inputs: [
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
            Input::of::<Density>("density", density),
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Mass>("end_mass", end_mass),
        ],
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
        inputs: [
            Input::of::<Eccentricity>("eccentricity", eccentricity),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<CriticalSpeed>("first_critical_speed", first_critical_speed),
        ],
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
        inputs: [
            Input::of::<FeedForce>("feed_force", feed_force),
            Input::of::<Diameter>("diameter", diameter),
        ],
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

#[allow(clippy::too_many_arguments)]
fn share_left_of(
    set_depth: tw_depth_of_cut,
    deflection: tw_deflection,
) -> Result<SpringShare, Error> {
    spring_back::spring_share(set_depth.named("set_depth")?, deflection.read()?)
}

/// The share of a set depth that a springing bar leaves standing, from the deflection that the
/// whole depth would cause: mu/(1 + mu), mu = deflection/set_depth. A negative deflection is
/// refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_share_left(
    set_depth: tw_depth_of_cut,
    deflection: tw_deflection,
    share: *mut tw_spring_share,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !share.is_null(),
        || Ok(tw_spring_share::from(share_left_of(set_depth, deflection)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(share, answer) },
    )
}

/// tw_share_left for every row.
///
/// Columns, see the first page: set_depth and deflection are read, share is written. row_status may
/// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_share_left_column(
    set_depth: *const tw_column,
    deflection: *const tw_column,
    share: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<Deflection>("deflection", deflection),
        ],
        outputs: [Output::of::<SpringShare>("share", share)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[set_depth, deflection]| {
        let found = share_left_of(
            tw_depth_of_cut { mm: set_depth },
            tw_deflection { mm: deflection },
        )?;
        Ok(([found.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn left_in_the_end_of(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
) -> Result<Deflection, Error> {
    spring_back::left_in_the_end(set_depth.named("set_depth")?, share.named("share")?)
}

/// What equal cuts, one after the other, leave standing in the end: set_depth share/(1 - share). A
/// share of one is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_left_in_the_end(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || Ok(tw_deflection::from(left_in_the_end_of(set_depth, share)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_left_in_the_end for every row.
///
/// Columns, see the first page: set_depth and share are read, deflection is written. row_status may
/// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_left_in_the_end_column(
    set_depth: *const tw_column,
    share: *const tw_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ],
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[set_depth, share]| {
        let found = left_in_the_end_of(
            tw_depth_of_cut { mm: set_depth },
            tw_spring_share { ratio: share },
        )?;
        Ok(([found.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn light_after_heavy_of(
    left_before: tw_deflection,
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
) -> Result<DepthOfCut, Error> {
    Ok(spring_back::light_after_heavy(
        left_before.named("left_before")?,
        set_depth.named("set_depth")?,
        share.named("share")?,
    ))
}

/// What a light cut takes after a heavy one that left some metal standing: (set_depth +
/// left_before)(1 - share), more than was dialled.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_light_after_heavy(
    left_before: tw_deflection,
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    depth_of_cut: *mut tw_depth_of_cut,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !depth_of_cut.is_null(),
        || {
            Ok(tw_depth_of_cut::from(light_after_heavy_of(
                left_before,
                set_depth,
                share,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(depth_of_cut, answer) },
    )
}

/// tw_light_after_heavy for every row.
///
/// Columns, see the first page: left_before, set_depth and share are read, depth_of_cut is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_light_after_heavy_column(
    left_before: *const tw_column,
    set_depth: *const tw_column,
    share: *const tw_column,
    depth_of_cut: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<Deflection>("left_before", left_before),
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ],
        outputs: [Output::of::<DepthOfCut>("depth_of_cut", depth_of_cut)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[left_before, set_depth, share]| {
        let found = light_after_heavy_of(
            tw_deflection { mm: left_before },
            tw_depth_of_cut { mm: set_depth },
            tw_spring_share { ratio: share },
        )?;
        Ok(([found.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn true_depth_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    set_depth: tw_depth_of_cut,
    stiffness: tw_stiffness,
) -> Result<(DepthOfCut, Deflection), Error> {
    let pass = spring_back::true_depth(
        &edge(
            specific_force,
            exponent,
            feed,
            cutting_edge_angle,
            corner_radius,
            normal_ratio,
        )?,
        set_depth.named("set_depth")?,
        stiffness.read()?,
    );
    Ok((pass.true_depth, pass.left))
}

/// The true depth of a cut of a set depth on a bar that springs, and what is left standing: a +
/// F_p(a)/stiffness = set_depth, F_p the passive force of tw_cutting_forces. stiffness is that of
/// bar and supports at the tool.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_true_depth(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    set_depth: tw_depth_of_cut,
    stiffness: tw_stiffness,
    depth_of_cut: *mut tw_depth_of_cut,
    left: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(depth_of_cut.is_null() && left.is_null()),
        || {
            let (depth_of_cut_is, left_is) = true_depth_of(
                specific_force,
                exponent,
                feed,
                cutting_edge_angle,
                corner_radius,
                normal_ratio,
                set_depth,
                stiffness,
            )?;
            Ok((
                tw_depth_of_cut::from(depth_of_cut_is),
                tw_deflection::from(left_is),
            ))
        },
        |(depth_of_cut_is, left_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(depth_of_cut, depth_of_cut_is);
                put(left, left_is);
            }
        },
    )
}

/// tw_true_depth for every row.
///
/// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, corner_radius,
/// normal_ratio, set_depth and stiffness are read, depth_of_cut and left are written, and each may
/// be NULL unless all are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_true_depth_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    normal_ratio: *const tw_column,
    set_depth: *const tw_column,
    stiffness: *const tw_column,
    depth_of_cut: *const tw_out_column,
    left: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<Stiffness>("stiffness", stiffness),
        ],
        outputs: [
            Output::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Output::of::<Deflection>("left", left),
        ],
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
            corner_radius,
            normal_ratio,
            set_depth,
            stiffness,
        ]| {
            let (depth_of_cut, left) = true_depth_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
                tw_normal_ratio {
                    ratio: normal_ratio,
                },
                tw_depth_of_cut { mm: set_depth },
                tw_stiffness {
                    kn_per_mm: stiffness,
                },
            )?;
            Ok(([depth_of_cut.trade(), left.trade()], 0))
        },
    )
}

#[allow(clippy::too_many_arguments)]
fn largest_depth_for_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    stiffness: tw_stiffness,
    allowed: tw_diameter_error,
) -> Result<DepthOfCut, Error> {
    let edge = edge(
        specific_force,
        exponent,
        feed,
        cutting_edge_angle,
        corner_radius,
        normal_ratio,
    )?;
    spring_back::largest_depth(&edge, stiffness.read()?, allowed.named("allowed")?)?
        .ok_or_else(no_depth)
}

/// The greatest depth of cut whose spring stays within an allowed error of the diameter.
/// TW_IMPOSSIBLE where the passive force of this edge never grows so far (an edge of 90 deg and
/// beyond, once the corner is in the cut): then another limit decides, not the spring.
/// TW_CONTRADICTION for an allowed error that is not above zero.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_depth_for(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    stiffness: tw_stiffness,
    allowed: tw_diameter_error,
    depth_of_cut: *mut tw_depth_of_cut,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !depth_of_cut.is_null(),
        || {
            Ok(tw_depth_of_cut::from(largest_depth_for_of(
                specific_force,
                exponent,
                feed,
                cutting_edge_angle,
                corner_radius,
                normal_ratio,
                stiffness,
                allowed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(depth_of_cut, answer) },
    )
}

/// tw_largest_depth_for for every row.
///
/// Columns, see the first page: specific_force, exponent, feed, cutting_edge_angle, corner_radius,
/// normal_ratio, stiffness and allowed are read, depth_of_cut is written. row_status may be NULL;
/// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_depth_for_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    normal_ratio: *const tw_column,
    stiffness: *const tw_column,
    allowed: *const tw_column,
    depth_of_cut: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<Stiffness>("stiffness", stiffness),
            Input::of::<DiameterError>("allowed", allowed),
        ],
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
            corner_radius,
            normal_ratio,
            stiffness,
            allowed,
        ]| {
            let found = largest_depth_for_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
                tw_normal_ratio {
                    ratio: normal_ratio,
                },
                tw_stiffness {
                    kn_per_mm: stiffness,
                },
                tw_diameter_error { mm: allowed },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

#[allow(clippy::too_many_arguments)]
fn diameter_error_with_sag_of(
    diameter: tw_diameter,
    passive: tw_deflection,
    tangential: tw_tangential_deflection,
) -> Result<DiameterError, Error> {
    Ok(spring_back::diameter_error_with_sag(
        diameter.read()?,
        passive.named("passive")?,
        tangential.named("tangential")?,
    ))
}

/// The error of the diameter when the bar gives way both across and along the cutting speed: 2
/// (sqrt((R + delta)^2 + v^2) - R).
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_diameter_error_with_sag(
    diameter: tw_diameter,
    passive: tw_deflection,
    tangential: tw_tangential_deflection,
    diameter_error: *mut tw_diameter_error,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter_error.is_null(),
        || {
            Ok(tw_diameter_error::from(diameter_error_with_sag_of(
                diameter, passive, tangential,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter_error, answer) },
    )
}

/// tw_diameter_error_with_sag for every row.
///
/// Columns, see the first page: diameter, passive and tangential are read, diameter_error is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_diameter_error_with_sag_column(
    diameter: *const tw_column,
    passive: *const tw_column,
    tangential: *const tw_column,
    diameter_error: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Deflection>("passive", passive),
            Input::of::<TangentialDeflection>("tangential", tangential),
        ],
        outputs: [Output::of::<DiameterError>(
            "diameter_error",
            diameter_error,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[diameter, passive, tangential]| {
        let found = diameter_error_with_sag_of(
            tw_diameter { mm: diameter },
            tw_deflection { mm: passive },
            tw_tangential_deflection { mm: tangential },
        )?;
        Ok(([found.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn tailstock_correction_of(
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
    length_between_centres: tw_length,
) -> Result<SetOver, Error> {
    measured_taper::tailstock_correction(
        Measured::new(near_at.named("near_at")?, near_error.named("near_error")?),
        Measured::new(far_at.named("far_at")?, far_error.named("far_error")?),
        length_between_centres.named("length_between_centres")?,
    )
    .map_err(|error| error.at("far_at"))
}

/// How far to move the tailstock, towards the tool where positive, so that a bar between centres
/// comes out straight: errors of the diameter at two places, both measured from the headstock.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tailstock_correction(
    near_at: tw_length,
    near_error: tw_diameter_error,
    far_at: tw_length,
    far_error: tw_diameter_error,
    length_between_centres: tw_length,
    set_over: *mut tw_set_over,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !set_over.is_null(),
        || {
            Ok(tw_set_over::from(tailstock_correction_of(
                near_at,
                near_error,
                far_at,
                far_error,
                length_between_centres,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(set_over, answer) },
    )
}

/// tw_tailstock_correction for every row.
///
/// Columns, see the first page: near_at, near_error, far_at, far_error and length_between_centres
/// are read, set_over is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_tailstock_correction_column(
    near_at: *const tw_column,
    near_error: *const tw_column,
    far_at: *const tw_column,
    far_error: *const tw_column,
    length_between_centres: *const tw_column,
    set_over: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: [
            Input::of::<WorkLength>("near_at", near_at),
            Input::of::<DiameterError>("near_error", near_error),
            Input::of::<WorkLength>("far_at", far_at),
            Input::of::<DiameterError>("far_error", far_error),
            Input::of::<WorkLength>("length_between_centres", length_between_centres),
        ],
        outputs: [Output::of::<SetOver>("set_over", set_over)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            near_at,
            near_error,
            far_at,
            far_error,
            length_between_centres,
        ]| {
            let found = tailstock_correction_of(
                tw_length { mm: near_at },
                tw_diameter_error { mm: near_error },
                tw_length { mm: far_at },
                tw_diameter_error { mm: far_error },
                tw_length {
                    mm: length_between_centres,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
