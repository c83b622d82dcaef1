//! The edge in its cut: what it takes off, and what its rake and speed change in the force.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::force::{self, ForceLaw};
use crate::physics::{edge_in_cut, force_factors};
use crate::quantity::{
    ChipArea, ChipThickness, CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, EdgeLength,
    Feed, ForceExponent, ForceFactor, ForceScatter, MinorCuttingEdgeAngle, NormalRatio, Quantity,
    RakeAngle, SpecificCuttingForce,
};

fn rake_factor_of(
    rake_angle: tw_rake_angle,
    reference_rake_angle: tw_rake_angle,
) -> Result<ForceFactor, Error> {
    force_factors::rake_factor(
        rake_angle.read()?,
        reference_rake_angle.named("reference_rake_angle")?,
    )
}

/// The factor of the force for the rake of the tool: 1 - 0.015 for each degree above the rake
/// that the specific force holds for, 6 deg for the tables of steel, 2 deg for those of cast iron
/// (from memory of machining text books; some have 0.010).
///
/// Both rakes lie from -10 to 25 deg (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: from memory of text books: 1.09 - 0.015 rake for steel, 1.03 - 0.015 rake for cast iron.
/// Example: tw_rake_factor(tw_rake_angle_degree(0), tw_rake_angle_degree(6), &force_factor, NULL);
///     force_factor.ratio is 1.0900.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rake_factor(
    rake_angle: tw_rake_angle,
    reference_rake_angle: tw_rake_angle,
    force_factor: *mut tw_force_factor,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !force_factor.is_null(),
        || {
            Ok(tw_force_factor::from(rake_factor_of(
                rake_angle,
                reference_rake_angle,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(force_factor, answer) },
    )
}

/// tw_rake_factor for every row.
///
/// Columns, see the first page: rake_angle and reference_rake_angle are read, force_factor is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rake_factor_column(
    rake_angle: *const tw_column,
    reference_rake_angle: *const tw_column,
    force_factor: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<RakeAngle>("rake_angle", rake_angle),
            Input::of::<RakeAngle>("reference_rake_angle", reference_rake_angle),
        ),
        outputs: [Output::of::<ForceFactor>("force_factor", force_factor)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[rake_angle, reference_rake_angle]| {
        let force_factor = rake_factor_of(
            tw_rake_angle { deg: rake_angle },
            tw_rake_angle {
                deg: reference_rake_angle,
            },
        )?;
        Ok(([force_factor.trade()], 0))
    })
}

fn carbide_speed_factor_of(cutting_speed: tw_cutting_speed) -> Result<ForceFactor, Error> {
    force_factors::carbide_speed_factor(cutting_speed.read()?)
}

/// The factor of the force for the cutting speed of carbide, 1 at 100 m/min (from memory of
/// machining text books). For high-speed steel there is none.
///
/// Speeds below 20 m/min are refused (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: from memory of German machining text books, unverified page.
/// Example: tw_carbide_speed_factor(tw_cutting_speed_meter_per_minute(50), &force_factor, NULL);
///     force_factor.ratio is 1.11187.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_carbide_speed_factor(
    cutting_speed: tw_cutting_speed,
    force_factor: *mut tw_force_factor,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !force_factor.is_null(),
        || {
            Ok(tw_force_factor::from(carbide_speed_factor_of(
                cutting_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(force_factor, answer) },
    )
}

/// tw_carbide_speed_factor for every row.
///
/// Columns, see the first page: cutting_speed is read, force_factor is written. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_carbide_speed_factor_column(
    cutting_speed: *const tw_column,
    force_factor: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),),
        outputs: [Output::of::<ForceFactor>("force_factor", force_factor)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cutting_speed]| {
        let force_factor = carbide_speed_factor_of(tw_cutting_speed {
            m_per_min: cutting_speed,
        })?;
        Ok(([force_factor.trade()], 0))
    })
}

fn equivalent_chip_thickness_of(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    corner_radius: tw_corner_radius,
) -> Result<(EdgeLength, ChipArea, ChipThickness), Error> {
    let edge = edge_in_cut::engaged_edge(
        depth_of_cut.read()?,
        feed.read()?,
        cutting_edge_angle.read()?,
        minor_cutting_edge_angle.read()?,
        corner_radius.read()?,
    )?;
    Ok((
        edge.edge_length,
        edge.chip_area,
        edge.equivalent_chip_thickness,
    ))
}

/// How much of a rounded tool's edge is in the cut and what it takes off, exactly: length of the
/// engaged edge, cross section of the chip, and the equivalent chip thickness, which is the one
/// over the other.
///
/// A corner radius of zero, a feed at which two turns do not meet on the corner arc, and a depth
/// within the ridge between them are refused (TW_CONTRADICTION).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: geometry, derived; equivalent thickness: Woxen 1932 (from memory).
/// Example: tw_equivalent_chip_thickness(tw_depth_of_cut_millimeter(0.2),
///     tw_feed_millimeter_per_revolution(0.1), tw_cutting_edge_angle_degree(95),
///     tw_minor_cutting_edge_angle_degree(10), tw_corner_radius_millimeter(0.8), &edge_length,
///     &chip_area, &chip_thickness, NULL); edge_length.mm is 0.628220, chip_area.mm2 is 0.0199479
///     and chip_thickness.mm is 0.0317530.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_equivalent_chip_thickness(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    edge_length: *mut tw_edge_length,
    chip_area: *mut tw_chip_area,
    chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(edge_length.is_null() && chip_area.is_null() && chip_thickness.is_null()),
        || {
            let (edge_length_found, chip_area_found, chip_thickness_found) =
                equivalent_chip_thickness_of(
                    depth_of_cut,
                    feed,
                    cutting_edge_angle,
                    minor_cutting_edge_angle,
                    corner_radius,
                )?;
            Ok((
                tw_edge_length::from(edge_length_found),
                tw_chip_area::from(chip_area_found),
                tw_chip_thickness::from(chip_thickness_found),
            ))
        },
        |(edge_length_found, chip_area_found, chip_thickness_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(edge_length, edge_length_found);
                put(chip_area, chip_area_found);
                put(chip_thickness, chip_thickness_found);
            }
        },
    )
}

/// tw_equivalent_chip_thickness for every row.
///
/// Columns, see the first page: depth_of_cut, feed, cutting_edge_angle, minor_cutting_edge_angle
/// and corner_radius are read, edge_length, chip_area and chip_thickness are written, each may be
/// NULL unless all are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_equivalent_chip_thickness_column(
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    edge_length: *const tw_out_column,
    chip_area: *const tw_out_column,
    chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [
            Output::of::<EdgeLength>("edge_length", edge_length),
            Output::of::<ChipArea>("chip_area", chip_area),
            Output::of::<ChipThickness>("chip_thickness", chip_thickness),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            depth_of_cut,
            feed,
            cutting_edge_angle,
            minor_cutting_edge_angle,
            corner_radius,
        ]| {
            let (edge_length, chip_area, chip_thickness) = equivalent_chip_thickness_of(
                tw_depth_of_cut { mm: depth_of_cut },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_minor_cutting_edge_angle {
                    deg: minor_cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
            )?;
            Ok((
                [
                    edge_length.trade(),
                    chip_area.trade(),
                    chip_thickness.trade(),
                ],
                0,
            ))
        },
    )
}

fn feed_factor_of(exponent: tw_exponent, from: tw_feed, to: tw_feed) -> Result<ForceFactor, Error> {
    let exponent = exponent.read()?;
    let from = from.named("from")?;
    let to = to.named("to")?;
    // The factor does not depend on the specific force.
    let law = ForceLaw::new(SpecificCuttingForce::computed_trade(1000.0), exponent);
    Ok(force::feed_factor(law, from, to))
}

/// By what factor all three forces grow when only the feed changes: (to / from)^(1 - exponent). The
/// same depth and the same edge, straight or round; exponent is that of the specific force.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle's law along the edge (derived).
/// Example: tw_feed_factor(tw_exponent_one(0.14), tw_feed_inch_per_revolution(0.004),
///     tw_feed_inch_per_revolution(0.008), &force_factor, NULL); force_factor.ratio is 1.81504.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_factor(
    exponent: tw_exponent,
    from: tw_feed,
    to: tw_feed,
    force_factor: *mut tw_force_factor,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !force_factor.is_null(),
        || Ok(tw_force_factor::from(feed_factor_of(exponent, from, to)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(force_factor, answer) },
    )
}

/// tw_feed_factor for every row.
///
/// Columns, see the first page: exponent, from and to are read, force_factor is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_factor_column(
    exponent: *const tw_column,
    from: *const tw_column,
    to: *const tw_column,
    force_factor: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<Feed>("from", from),
            Input::of::<Feed>("to", to),
        ),
        outputs: [Output::of::<ForceFactor>("force_factor", force_factor)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[exponent, from, to]| {
        let found = feed_factor_of(
            tw_exponent { ratio: exponent },
            tw_feed { mm_per_rev: from },
            tw_feed { mm_per_rev: to },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn effective_edge_angle_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
) -> Result<CuttingEdgeAngle, Error> {
    let specific_force = specific_force.read()?;
    let exponent = exponent.read()?;
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let corner_radius = corner_radius.read()?;
    let normal_ratio = normal_ratio.read()?;
    let forces = force::cutting_forces(
        ForceLaw::new(specific_force, exponent),
        depth_of_cut,
        feed,
        cutting_edge_angle,
        corner_radius,
        normal_ratio,
    );
    Ok(force::effective_edge_angle(&forces))
}

/// The edge angle that a straight edge with the same direction of force would have: atan2(feed
/// force, passive force) of tw_cutting_forces, with the same arguments. As the cut gets lighter
/// it falls to zero: all of the force normal to the edge bends the bar then.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_effective_edge_angle(tw_specific_force_megapascal(2220), tw_exponent_one(0.14),
///     tw_depth_of_cut_millimeter(0.2), tw_feed_millimeter_per_revolution(0.1),
///     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8),
///     tw_normal_ratio_one(0.5), &edge_angle, NULL); edge_angle.deg is 26.7374.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_effective_edge_angle(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    edge_angle: *mut tw_cutting_edge_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !edge_angle.is_null(),
        || {
            Ok(tw_cutting_edge_angle::from(effective_edge_angle_of(
                specific_force,
                exponent,
                depth_of_cut,
                feed,
                cutting_edge_angle,
                corner_radius,
                normal_ratio,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(edge_angle, answer) },
    )
}

/// tw_effective_edge_angle for every row.
///
/// Columns, see the first page: specific_force, exponent, depth_of_cut, feed, cutting_edge_angle,
/// corner_radius and normal_ratio are read, edge_angle is written. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_effective_edge_angle_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    normal_ratio: *const tw_column,
    edge_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
        ),
        outputs: [Output::of::<CuttingEdgeAngle>("edge_angle", edge_angle)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            specific_force,
            exponent,
            depth_of_cut,
            feed,
            cutting_edge_angle,
            corner_radius,
            normal_ratio,
        ]| {
            let found = effective_edge_angle_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_depth_of_cut { mm: depth_of_cut },
                tw_feed { mm_per_rev: feed },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
                tw_normal_ratio {
                    ratio: normal_ratio,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn corrected_specific_force_of(
    specific_force: tw_specific_force,
    force_factor: tw_force_factor,
) -> Result<SpecificCuttingForce, Error> {
    let specific_force = specific_force.read()?;
    let force_factor = force_factor.read()?;
    // The exponent stays as it is.
    let law = ForceLaw::new(specific_force, ForceExponent::computed_trade(0.25));
    Ok(force_factors::corrected(law, force_factor).specific_force)
}

/// The specific force of a material with a factor on its force, such as tw_rake_factor times
/// tw_carbide_speed_factor: their product. The exponent stays.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the factors.
/// Example: tw_corrected_specific_force(tw_specific_force_megapascal(2000),
///     tw_force_factor_one(1.3), &corrected, NULL); corrected.mpa is 2600.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_corrected_specific_force(
    specific_force: tw_specific_force,
    force_factor: tw_force_factor,
    corrected: *mut tw_specific_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !corrected.is_null(),
        || {
            Ok(tw_specific_force::from(corrected_specific_force_of(
                specific_force,
                force_factor,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(corrected, answer) },
    )
}

/// tw_corrected_specific_force for every row.
///
/// Columns, see the first page: specific_force and force_factor are read, corrected is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_corrected_specific_force_column(
    specific_force: *const tw_column,
    force_factor: *const tw_column,
    corrected: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceFactor>("force_factor", force_factor),
        ),
        outputs: [Output::of::<SpecificCuttingForce>("corrected", corrected)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[specific_force, force_factor]| {
        let found = corrected_specific_force_of(
            tw_specific_force {
                mpa: specific_force,
            },
            tw_force_factor {
                ratio: force_factor,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn corrected_ratio_of(
    normal_ratio: tw_normal_ratio,
    main_factor: tw_force_factor,
    normal_factor: tw_force_factor,
) -> Result<NormalRatio, Error> {
    let normal_ratio = normal_ratio.read()?;
    let main_factor = main_factor.named("main_factor")?;
    let normal_factor = normal_factor.named("normal_factor")?;

    Ok(force_factors::corrected_ratio(
        normal_ratio,
        main_factor,
        normal_factor,
    ))
}

/// The normal ratio when the force normal to the edge has another factor than the main force, as
/// at a worn edge: normal_ratio normal_factor / main_factor.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the normal ratio.
/// Example: tw_corrected_ratio(tw_normal_ratio_one(0.5), tw_force_factor_one(1.5),
///     tw_force_factor_one(2), &corrected, NULL); corrected.ratio is 0.666667.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_corrected_ratio(
    normal_ratio: tw_normal_ratio,
    main_factor: tw_force_factor,
    normal_factor: tw_force_factor,
    corrected: *mut tw_normal_ratio,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !corrected.is_null(),
        || {
            Ok(tw_normal_ratio::from(corrected_ratio_of(
                normal_ratio,
                main_factor,
                normal_factor,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(corrected, answer) },
    )
}

/// tw_corrected_ratio for every row.
///
/// Columns, see the first page: normal_ratio, main_factor and normal_factor are read, corrected
/// is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_corrected_ratio_column(
    normal_ratio: *const tw_column,
    main_factor: *const tw_column,
    normal_factor: *const tw_column,
    corrected: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
            Input::of::<ForceFactor>("main_factor", main_factor),
            Input::of::<ForceFactor>("normal_factor", normal_factor),
        ),
        outputs: [Output::of::<NormalRatio>("corrected", corrected)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[normal_ratio, main_factor, normal_factor]| {
        let found = corrected_ratio_of(
            tw_normal_ratio {
                ratio: normal_ratio,
            },
            tw_force_factor { ratio: main_factor },
            tw_force_factor {
                ratio: normal_factor,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn scattered_of(force_scatter: tw_force_scatter) -> Result<(ForceFactor, ForceFactor), Error> {
    let force_scatter = force_scatter.read()?;

    let found = force_factors::scattered(force_scatter);
    Ok((found[0], found[1]))
}

/// The least and the largest factor of a force that scatters by a share either way:
/// 1 - force_scatter, 1 + force_scatter.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: definition of the scatter.
/// Example: tw_scattered(tw_force_scatter_one(0.3), &least, &largest, NULL); least.ratio is 0.7000
///     and largest.ratio is 1.300.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_scattered(
    force_scatter: tw_force_scatter,
    least: *mut tw_force_factor,
    largest: *mut tw_force_factor,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(least.is_null() && largest.is_null()),
        || {
            let (least_is, largest_is) = scattered_of(force_scatter)?;
            Ok((
                tw_force_factor::from(least_is),
                tw_force_factor::from(largest_is),
            ))
        },
        |(least_is, largest_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(least, least_is);
                put(largest, largest_is);
            }
        },
    )
}

/// tw_scattered for every row.
///
/// Columns, see the first page: force_scatter is read, least and largest are written, each may be
/// NULL unless both are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_scattered_column(
    force_scatter: *const tw_column,
    least: *const tw_out_column,
    largest: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<ForceScatter>("force_scatter", force_scatter),),
        outputs: [
            Output::of::<ForceFactor>("least", least),
            Output::of::<ForceFactor>("largest", largest),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[force_scatter]| {
        let (least, largest) = scattered_of(tw_force_scatter {
            ratio: force_scatter,
        })?;
        Ok(([least.trade(), largest.trade()], 0))
    })
}
