//! What a springing bar leaves standing, and how deep a cut may be.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::force::ForceLaw;
use crate::physics::spring_back::{self, Edge};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Deflection, DepthOfCut, Diameter, DiameterError, Feed,
    ForceExponent, NormalRatio, Quantity, SpecificCuttingForce, SpringShare, Stiffness,
    TangentialDeflection,
};

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
        inputs: (
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<Deflection>("deflection", deflection),
        ),
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
        inputs: (
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ),
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
        inputs: (
            Input::of::<Deflection>("left_before", left_before),
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ),
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
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<Stiffness>("stiffness", stiffness),
        ),
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
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<Stiffness>("stiffness", stiffness),
            Input::of::<DiameterError>("allowed", allowed),
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
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Deflection>("passive", passive),
            Input::of::<TangentialDeflection>("tangential", tangential),
        ),
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

fn passes_of(number: i32) -> Result<u32, Error> {
    u32::try_from(number).map_err(|_| {
        Error::new(
            ErrorKind::OutOfRange,
            "passes",
            number.to_string(),
            "a whole number from 0",
            "count the passes, the first cut too",
        )
    })
}

#[cold]
fn no_feed() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "allowed",
        "an error that the spring of this cut never reaches",
        "a cut whose passive force pushes the bar away",
        "look at another limit: finish, power, torque, or the chip",
    )
}

fn left_after_passes_of(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    passes: u32,
) -> Result<Deflection, Error> {
    let set_depth = set_depth.named("set_depth")?;
    let share = share.named("share")?;

    Ok(spring_back::left_after_passes(set_depth, share, passes))
}

/// What is left standing after passes at one and the same reading of the dial: set_depth times
/// share to the power passes. passes counts the first cut too, from 0 (TW_OUT_OF_RANGE). A force
/// in proportion to the depth, and only while what is left is thicker than the least chip:
/// tw_spring_passes.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_left_after_passes(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    passes: i32,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            let passes = passes_of(passes)?;
            Ok(tw_deflection::from(left_after_passes_of(
                set_depth, share, passes,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_left_after_passes for every row.
///
/// Columns, see the first page: set_depth and share are read, deflection is written. passes is
/// one number for all rows; one that is refused fails the whole call. row_status may be NULL;
/// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_left_after_passes_column(
    set_depth: *const tw_column,
    share: *const tw_column,
    passes: i32,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(passes_of(passes)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(passes) => job.run_checked(detail, |[set_depth, share]| {
            let found = left_after_passes_of(
                tw_depth_of_cut { mm: set_depth },
                tw_spring_share { ratio: share },
                passes,
            )?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn left_after_equal_infeeds_of(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    passes: u32,
) -> Result<Deflection, Error> {
    let set_depth = set_depth.named("set_depth")?;
    let share = share.named("share")?;

    spring_back::left_after_equal_infeeds(set_depth, share, passes)
}

/// What is left standing after passes with the same infeed each: set_depth q (1 - q^passes)/(1 - q),
/// q the share. It tends to tw_left_in_the_end: equal last cuts repeat the same spring, so that
/// the correction of one serves the next. passes from 0 (TW_OUT_OF_RANGE). A share of one is
/// refused (TW_CONTRADICTION): then nothing is cut at all.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_left_after_equal_infeeds(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    passes: i32,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            let passes = passes_of(passes)?;
            Ok(tw_deflection::from(left_after_equal_infeeds_of(
                set_depth, share, passes,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_left_after_equal_infeeds for every row.
///
/// Columns, see the first page: set_depth and share are read, deflection is written. passes is
/// one number for all rows; one that is refused fails the whole call. row_status may be NULL;
/// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_left_after_equal_infeeds_column(
    set_depth: *const tw_column,
    share: *const tw_column,
    passes: i32,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(passes_of(passes)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(passes) => job.run_checked(detail, |[set_depth, share]| {
            let found = left_after_equal_infeeds_of(
                tw_depth_of_cut { mm: set_depth },
                tw_spring_share { ratio: share },
                passes,
            )?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn spring_passes_of(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    least_depth: tw_depth_of_cut,
) -> Result<(Deflection, i32), Error> {
    let set_depth = set_depth.named("set_depth")?;
    let share = share.named("share")?;
    let least_depth = least_depth.named("least_depth")?;

    let found = spring_back::spring_passes(set_depth, share, least_depth);
    Ok((found.1, found.0 as i32))
}

/// How many passes without new infeed still cut, and what the last of them leaves standing.
/// least_depth is the least that the edge can cut (tw_least_depth). A force in proportion to the
/// depth.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure left is NaN and
/// passes 0.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_spring_passes(
    set_depth: tw_depth_of_cut,
    share: tw_spring_share,
    least_depth: tw_depth_of_cut,
    left: *mut tw_deflection,
    passes: *mut i32,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(left.is_null() && passes.is_null()),
        || {
            let (left_is, passes_is) = spring_passes_of(set_depth, share, least_depth)?;
            Ok((tw_deflection::from(left_is), passes_is))
        },
        |(left_is, passes_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(left, left_is);
                put(passes, passes_is);
            }
        },
    )
}

/// tw_spring_passes for every row.
///
/// Columns, see the first page: set_depth, share and least_depth are read, left is written.
/// passes may be NULL; else one int32_t a row (0 for a bad row), passes_stride_bytes apart (at
/// least 4). row_status likewise. detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_spring_passes_column(
    set_depth: *const tw_column,
    share: *const tw_column,
    least_depth: *const tw_column,
    left: *const tw_out_column,
    passes: *mut i32,
    passes_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("set_depth", set_depth),
            Input::of::<SpringShare>("share", share),
            Input::of::<DepthOfCut>("least_depth", least_depth),
        ),
        outputs: [Output::of::<Deflection>("left", left)],
        regime: Numbers::at("passes", passes, passes_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[set_depth, share, least_depth]| {
        let (left, passes) = spring_passes_of(
            tw_depth_of_cut { mm: set_depth },
            tw_spring_share { ratio: share },
            tw_depth_of_cut { mm: least_depth },
        )?;
        Ok(([left.trade()], passes))
    })
}

#[allow(clippy::too_many_arguments)]
fn largest_feed_for_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    depth_of_cut: tw_depth_of_cut,
    stiffness: tw_stiffness,
    allowed: tw_diameter_error,
) -> Result<Feed, Error> {
    let specific_force = specific_force.read()?;
    let exponent = exponent.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let corner_radius = corner_radius.read()?;
    let normal_ratio = normal_ratio.read()?;
    let depth_of_cut = depth_of_cut.read()?;
    let stiffness = stiffness.read()?;
    let allowed = allowed.named("allowed")?;
    // The feed of the edge does not count.
    let edge = Edge::new(
        ForceLaw::new(specific_force, exponent),
        Feed::computed_trade(0.1),
        cutting_edge_angle,
        corner_radius,
        normal_ratio,
    );
    spring_back::largest_feed(&edge, depth_of_cut, stiffness, allowed)?.ok_or_else(no_feed)
}

/// The greatest feed whose spring at a depth stays within an allowed error of the diameter: the
/// passive force grows with the feed to the power 1 - exponent, and 2 F_p / stiffness = allowed.
/// stiffness is that of bar and supports at the tool. Another limit, such as the finish, mostly
/// decides before.
///
/// An error that is not above zero is refused (TW_CONTRADICTION); so is a cut that does not push
/// the bar away (TW_IMPOSSIBLE): no feed is too large for its spring.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_feed_for(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    depth_of_cut: tw_depth_of_cut,
    stiffness: tw_stiffness,
    allowed: tw_diameter_error,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            Ok(tw_feed::from(largest_feed_for_of(
                specific_force,
                exponent,
                cutting_edge_angle,
                corner_radius,
                normal_ratio,
                depth_of_cut,
                stiffness,
                allowed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_largest_feed_for for every row.
///
/// Columns, see the first page: specific_force, exponent, cutting_edge_angle, corner_radius,
/// normal_ratio, depth_of_cut, stiffness and allowed are read, feed is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_feed_for_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    normal_ratio: *const tw_column,
    depth_of_cut: *const tw_column,
    stiffness: *const tw_column,
    allowed: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Stiffness>("stiffness", stiffness),
            Input::of::<DiameterError>("allowed", allowed),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            specific_force,
            exponent,
            cutting_edge_angle,
            corner_radius,
            normal_ratio,
            depth_of_cut,
            stiffness,
            allowed,
        ]| {
            let found = largest_feed_for_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
                tw_normal_ratio {
                    ratio: normal_ratio,
                },
                tw_depth_of_cut { mm: depth_of_cut },
                tw_stiffness {
                    kn_per_mm: stiffness,
                },
                tw_diameter_error { mm: allowed },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
