//! How far a bar springs under a cut, and the depth and feed with which it springs no further.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::force::ForceLaw;
use crate::physics::spring_back::{self, Edge};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Deflection, DepthOfCut, Diameter, DiameterError, Feed,
    ForceExponent, NormalRatio, Quantity, SpecificCuttingForce, Stiffness, TangentialDeflection,
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
    )?;
    Ok((pass.true_depth, pass.left))
}

/// The true depth of a cut of a set depth on a bar that springs, and what is left standing: a +
/// F_p(a)/stiffness = set_depth, F_p the passive force of tw_cutting_forces. stiffness is that of
/// bar and supports at the tool. TW_IMPOSSIBLE for an edge beyond 90 deg that pulls the bar in
/// farther than any depth balances.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: Mayer, Phan and Cloutier 2000, Applied Mathematical Modelling 24, from memory; derived.
/// Example: tw_true_depth(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
///     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
///     tw_corner_radius_millimeter(0.4), tw_normal_ratio_one(0.5), tw_depth_of_cut_millimeter(0.3),
///     tw_stiffness_newton_per_millimeter(2780.115), &depth_of_cut, &left, NULL);
///     depth_of_cut.mm is 0.288999 and tw_deflection_as_micrometer(left) is 11.0012.
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

/// The greatest depth of cut whose spring stays within an allowed error of the diameter, away from
/// the tool or, with an edge beyond 90 deg, towards it. TW_IMPOSSIBLE where the passive force of
/// this edge never grows so far (an edge of 90 deg, once the corner is in the cut): then another
/// limit decides, not the spring.
/// TW_CONTRADICTION for an allowed error that is not above zero.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_largest_depth_for(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
///     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
///     tw_corner_radius_millimeter(0.4), tw_normal_ratio_one(0.5),
///     tw_stiffness_newton_per_millimeter(2780.115), tw_diameter_error_micrometer(22.00246),
///     &depth_of_cut, NULL); depth_of_cut.mm is 0.28900.
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
///
/// Source: derived.
/// Example: tw_diameter_error_with_sag(tw_diameter_millimeter(10), tw_deflection_micrometer(20),
///     tw_tangential_deflection_micrometer(60), &diameter_error, NULL);
///     tw_diameter_error_as_micrometer(diameter_error) is 40.7171.
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

#[cold]
fn no_feed() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "allowed",
        "an error that the spring of this cut never reaches",
        "a cut whose passive force bends the bar",
        "look at another limit: finish, power, torque, or the chip",
    )
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
/// An error that is not above zero is refused (TW_CONTRADICTION); so is a cut that neither pushes
/// the bar away nor pulls it in (TW_IMPOSSIBLE): no feed is too large for its spring.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_largest_feed_for(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
///     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.4),
///     tw_normal_ratio_one(0.5), tw_depth_of_cut_millimeter(0.2889988),
///     tw_stiffness_newton_per_millimeter(2780.115), tw_diameter_error_micrometer(22.00246), &feed,
///     NULL); feed.mm_per_rev is 0.10000.
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
