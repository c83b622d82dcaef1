//! The forces of a cut.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::engagement::ChipSection;
use crate::physics::force::{self, CuttingForces, ForceLaw};
use crate::physics::three_forces::{self, ThreeLaws};
use crate::physics::{engagement, parting};
use crate::quantity::{
    BladeWidth, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, DepthOfCut, Feed,
    FeedForce, ForceExponent, ForceFactor, MainForce, NormalRatio, PassiveForce, Quantity,
    SpecificCuttingForce, SpecificForceAtChip,
};

fn cutting_forces_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
) -> Result<(MainForce, FeedForce, PassiveForce), Error> {
    let CuttingForces {
        main,
        feed,
        passive,
        ..
    } = force::cutting_forces(
        ForceLaw::new(specific_force.read()?, exponent.read()?),
        depth_of_cut.read()?,
        feed.read()?,
        cutting_edge_angle.read()?,
        corner_radius.read()?,
        normal_ratio.read()?,
    );
    Ok((main, feed, passive))
}

/// The three forces of a cut with a rounded corner, light cuts included, after the law of Kienzle
/// along the edge: specific_force is for a chip of 1 mm by 1 mm, exponent says how it falls with
/// the thickness; normal_ratio is the force normal to the edge over the main force (0.5 in common
/// practice, 0.3 to 0.8). Sharp tool, no correction for rake and wear.
///
/// The passive force can fall below zero with a long straight edge beyond 90 deg.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: Kienzle's law along the edge, derived; normal_ratio is common practice, no source.
/// Example: tw_cutting_forces(tw_specific_force_megapascal(700), tw_exponent_one(0.25),
///     tw_depth_of_cut_inch(0.01), tw_feed_inch_per_revolution(0.004),
///     tw_cutting_edge_angle_degree(93), tw_corner_radius_inch_fraction(1, 32),
///     tw_normal_ratio_one(0.5), &main_force, &feed_force, &passive_force, NULL);
///     main_force.n is 39.0493, feed_force.n is 9.48729 and passive_force.n is 16.5972.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_cutting_forces(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    normal_ratio: tw_normal_ratio,
    main_force: *mut tw_main_force,
    feed_force: *mut tw_feed_force,
    passive_force: *mut tw_passive_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(main_force.is_null() && feed_force.is_null() && passive_force.is_null()),
        || {
            let (main_force_found, feed_force_found, passive_force_found) = cutting_forces_of(
                specific_force,
                exponent,
                depth_of_cut,
                feed,
                cutting_edge_angle,
                corner_radius,
                normal_ratio,
            )?;
            Ok((
                tw_main_force::from(main_force_found),
                tw_feed_force::from(feed_force_found),
                tw_passive_force::from(passive_force_found),
            ))
        },
        |(main_force_found, feed_force_found, passive_force_found)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(main_force, main_force_found);
                put(feed_force, feed_force_found);
                put(passive_force, passive_force_found);
            }
        },
    )
}

/// tw_cutting_forces for every row.
///
/// Columns, see the first page: specific_force, exponent, depth_of_cut, feed, cutting_edge_angle,
/// corner_radius and normal_ratio are read, main_force, feed_force and passive_force are written,
/// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_cutting_forces_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    normal_ratio: *const tw_column,
    main_force: *const tw_out_column,
    feed_force: *const tw_out_column,
    passive_force: *const tw_out_column,
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
        outputs: [
            Output::of::<MainForce>("main_force", main_force),
            Output::of::<FeedForce>("feed_force", feed_force),
            Output::of::<PassiveForce>("passive_force", passive_force),
        ],
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
            let (main_force, feed_force, passive_force) = cutting_forces_of(
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
            Ok((
                [
                    main_force.trade(),
                    feed_force.trade(),
                    passive_force.trade(),
                ],
                0,
            ))
        },
    )
}

#[inline]
fn straight_edge_force_of(
    law: ForceLaw,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
) -> MainForce {
    let chip = engagement::chip_section(depth_of_cut, feed, cutting_edge_angle);
    force::main_force(law, chip)
}

/// The main force on a straight edge after the law of Kienzle: specific_force times width times
/// thickness^(1 - exponent) of the cut. With a corner radius see tw_cutting_forces.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle 1952, VDI-Z 94 (from memory).
/// Example: tw_straight_edge_force(tw_specific_force_megapascal(2350), tw_exponent_one(0.21),
///     tw_depth_of_cut_inch(0.08), tw_feed_inch_per_revolution(0.01),
///     tw_cutting_edge_angle_degree(93), &main_force, NULL);
///     tw_main_force_as_pound_force(main_force) is 363.705.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_straight_edge_force(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    main_force: *mut tw_main_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !main_force.is_null(),
        || {
            let law = ForceLaw::new(specific_force.read()?, exponent.read()?);
            Ok(tw_main_force::from(straight_edge_force_of(
                law,
                depth_of_cut.read()?,
                feed.read()?,
                cutting_edge_angle.read()?,
            )))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(main_force, answer) },
    )
}

/// tw_straight_edge_force for every row.
///
/// Columns, see the first page: specific_force, exponent, depth_of_cut, feed and
/// cutting_edge_angle are read, main_force is written. row_status may be NULL; else one int32_t a
/// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_straight_edge_force_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    main_force: *const tw_out_column,
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
        ),
        outputs: [Output::of::<MainForce>("main_force", main_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_typed(
        detail,
        |(specific_force, exponent, depth_of_cut, feed, cutting_edge_angle)| {
            let main_force = straight_edge_force_of(
                ForceLaw::new(specific_force, exponent),
                depth_of_cut,
                feed,
                cutting_edge_angle,
            );
            Ok(([main_force.trade()], 0))
        },
    )
}

fn specific_force_at_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    chip_thickness: tw_chip_thickness,
) -> Result<SpecificForceAtChip, Error> {
    let law = ForceLaw::new(specific_force.read()?, exponent.read()?);
    Ok(force::specific_force_at(law, chip_thickness.read()?))
}

/// What a square millimetre of chip costs in force at a thickness of cut: specific_force (for a
/// chip of 1 mm by 1 mm) times thickness^-exponent. Fits hold from about 0.05 mm on.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle 1952, VDI-Z 94 (from memory).
/// Example: tw_specific_force_at(tw_specific_force_megapascal(1780), tw_exponent_one(0.17),
///     tw_chip_thickness_millimeter(0.2), &specific_force_at_chip, NULL);
///     specific_force_at_chip.mpa is 2340.16.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_specific_force_at(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    chip_thickness: tw_chip_thickness,
    specific_force_at_chip: *mut tw_specific_force_at_chip,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !specific_force_at_chip.is_null(),
        || {
            Ok(tw_specific_force_at_chip::from(specific_force_at_of(
                specific_force,
                exponent,
                chip_thickness,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(specific_force_at_chip, answer) },
    )
}

/// tw_specific_force_at for every row.
///
/// Columns, see the first page: specific_force, exponent and chip_thickness are read,
/// specific_force_at_chip is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_specific_force_at_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    chip_thickness: *const tw_column,
    specific_force_at_chip: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<ChipThickness>("chip_thickness", chip_thickness),
        ),
        outputs: [Output::of::<SpecificForceAtChip>(
            "specific_force_at_chip",
            specific_force_at_chip,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[specific_force, exponent, chip_thickness]| {
        let specific_force_at_chip = specific_force_at_of(
            tw_specific_force {
                mpa: specific_force,
            },
            tw_exponent { ratio: exponent },
            tw_chip_thickness { mm: chip_thickness },
        )?;
        Ok(([specific_force_at_chip.trade()], 0))
    })
}

fn parting_force_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    width: tw_width,
    feed: tw_feed,
    shape_factor: tw_force_factor,
) -> Result<MainForce, Error> {
    let law = ForceLaw::new(specific_force.read()?, exponent.read()?);
    Ok(parting::parting_force(
        law,
        width.read()?,
        feed.read()?,
        shape_factor.named("shape_factor")?,
    ))
}

/// The main force on a grooving or parting blade: specific_force times width times feed^(1 -
/// exponent) times shape_factor, 1.3 for grooving and parting (from memory of machining text
/// books), since the chip is held on both sides.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Kienzle 1952, VDI-Z 94 (from memory), for a straight edge with an edge angle of 90 deg.
/// Example: tw_parting_force(tw_specific_force_megapascal(2500), tw_exponent_one(0.26),
///     tw_width_millimeter(3), tw_feed_millimeter_per_revolution(0.08), tw_force_factor_one(1),
///     &main_force, NULL); main_force.n is 1157.04.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_parting_force(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    width: tw_width,
    feed: tw_feed,
    shape_factor: tw_force_factor,
    main_force: *mut tw_main_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !main_force.is_null(),
        || {
            Ok(tw_main_force::from(parting_force_of(
                specific_force,
                exponent,
                width,
                feed,
                shape_factor,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(main_force, answer) },
    )
}

/// tw_parting_force for every row.
///
/// Columns, see the first page: specific_force, exponent, width, feed and shape_factor are read,
/// main_force is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_parting_force_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    width: *const tw_column,
    feed: *const tw_column,
    shape_factor: *const tw_column,
    main_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<BladeWidth>("width", width),
            Input::of::<Feed>("feed", feed),
            Input::of::<ForceFactor>("shape_factor", shape_factor),
        ),
        outputs: [Output::of::<MainForce>("main_force", main_force)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[specific_force, exponent, width, feed, shape_factor]| {
            let main_force = parting_force_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_width { mm: width },
                tw_feed { mm_per_rev: feed },
                tw_force_factor {
                    ratio: shape_factor,
                },
            )?;
            Ok(([main_force.trade()], 0))
        },
    )
}

fn parting_forces_of(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    width: tw_width,
    feed: tw_feed,
    shape_factor: tw_force_factor,
    normal_ratio: tw_normal_ratio,
) -> Result<(MainForce, FeedForce), Error> {
    let specific_force = specific_force.read()?;
    let exponent = exponent.read()?;
    let width = width.read()?;
    let feed = feed.read()?;
    let shape_factor = shape_factor.named("shape_factor")?;
    let normal_ratio = normal_ratio.read()?;

    let found = parting::parting_forces(
        ForceLaw::new(specific_force, exponent),
        width,
        feed,
        shape_factor,
        normal_ratio,
    );
    Ok((found.main, found.feed))
}

/// Main and feed force on a square blade. The main force is tw_parting_force, with the same
/// arguments; the feed force, towards the axis, is normal_ratio times as much and bends the bar.
/// A square blade has no passive force; one with an oblique front edge is pushed aside as well.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: Kienzle 1952, VDI-Z 94 (from memory), with the normal ratio of every other edge.
/// Example: tw_parting_forces(tw_specific_force_megapascal(2500), tw_exponent_one(0.26),
///     tw_width_millimeter(3), tw_feed_millimeter_per_revolution(0.08), tw_force_factor_one(1.3),
///     tw_normal_ratio_one(0.5), &main_force, &feed_force, NULL); main_force.n is 1504.15 and
///     feed_force.n is 752.075.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_parting_forces(
    specific_force: tw_specific_force,
    exponent: tw_exponent,
    width: tw_width,
    feed: tw_feed,
    shape_factor: tw_force_factor,
    normal_ratio: tw_normal_ratio,
    main_force: *mut tw_main_force,
    feed_force: *mut tw_feed_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(main_force.is_null() && feed_force.is_null()),
        || {
            let (main_force_is, feed_force_is) = parting_forces_of(
                specific_force,
                exponent,
                width,
                feed,
                shape_factor,
                normal_ratio,
            )?;
            Ok((
                tw_main_force::from(main_force_is),
                tw_feed_force::from(feed_force_is),
            ))
        },
        |(main_force_is, feed_force_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(main_force, main_force_is);
                put(feed_force, feed_force_is);
            }
        },
    )
}

/// tw_parting_forces for every row.
///
/// Columns, see the first page: specific_force, exponent, width, feed, shape_factor and
/// normal_ratio are read, main_force and feed_force are written, each may be NULL unless both
/// are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_parting_forces_column(
    specific_force: *const tw_column,
    exponent: *const tw_column,
    width: *const tw_column,
    feed: *const tw_column,
    shape_factor: *const tw_column,
    normal_ratio: *const tw_column,
    main_force: *const tw_out_column,
    feed_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("specific_force", specific_force),
            Input::of::<ForceExponent>("exponent", exponent),
            Input::of::<BladeWidth>("width", width),
            Input::of::<Feed>("feed", feed),
            Input::of::<ForceFactor>("shape_factor", shape_factor),
            Input::of::<NormalRatio>("normal_ratio", normal_ratio),
        ),
        outputs: [
            Output::of::<MainForce>("main_force", main_force),
            Output::of::<FeedForce>("feed_force", feed_force),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            specific_force,
            exponent,
            width,
            feed,
            shape_factor,
            normal_ratio,
        ]| {
            let (main_force, feed_force) = parting_forces_of(
                tw_specific_force {
                    mpa: specific_force,
                },
                tw_exponent { ratio: exponent },
                tw_width { mm: width },
                tw_feed { mm_per_rev: feed },
                tw_force_factor {
                    ratio: shape_factor,
                },
                tw_normal_ratio {
                    ratio: normal_ratio,
                },
            )?;
            Ok(([main_force.trade(), feed_force.trade()], 0))
        },
    )
}

#[allow(clippy::too_many_arguments)]
fn measured_forces_of(
    main_specific_force: tw_specific_force,
    main_exponent: tw_exponent,
    feed_specific_force: tw_specific_force,
    feed_exponent: tw_exponent,
    passive_specific_force: tw_specific_force,
    passive_exponent: tw_exponent,
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
) -> Result<(MainForce, FeedForce, PassiveForce), Error> {
    let main_specific_force = main_specific_force.named("main_specific_force")?;
    let main_exponent = main_exponent.named("main_exponent")?;
    let feed_specific_force = feed_specific_force.named("feed_specific_force")?;
    let feed_exponent = feed_exponent.named("feed_exponent")?;
    let passive_specific_force = passive_specific_force.named("passive_specific_force")?;
    let passive_exponent = passive_exponent.named("passive_exponent")?;
    let chip_thickness = chip_thickness.read()?;
    let chip_width = chip_width.read()?;
    let laws = ThreeLaws::new(
        ForceLaw::new(main_specific_force, main_exponent),
        ForceLaw::new(feed_specific_force, feed_exponent),
        ForceLaw::new(passive_specific_force, passive_exponent),
    );
    let found = three_forces::measured_forces(laws, ChipSection::new(chip_thickness, chip_width));
    Ok((found.main, found.feed, found.passive))
}

/// The three forces of a chip, each after a law of its own that was measured: k b h^(1 - m), with
/// specific force k and exponent m of main, feed and passive force. Holds for the tool, the edge
/// angle and the speeds at which the laws were measured. For a chip from depth, feed and edge
/// angle see tw_chip_section.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: Koenig and Essel 1973 (from memory, unverified page).
/// Example: tw_measured_forces(tw_specific_force_megapascal(1659), tw_exponent_one(0.21),
///     tw_specific_force_megapascal(521), tw_exponent_one(0.49), tw_specific_force_megapascal(309),
///     tw_exponent_one(0.4), tw_chip_thickness_millimeter(0.3), tw_chip_width_millimeter(2.5),
///     &main_force, &feed_force, &passive_force, NULL); main_force.n is 1602.18,
///     feed_force.n is 704.871 and passive_force.n is 375.121.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_measured_forces(
    main_specific_force: tw_specific_force,
    main_exponent: tw_exponent,
    feed_specific_force: tw_specific_force,
    feed_exponent: tw_exponent,
    passive_specific_force: tw_specific_force,
    passive_exponent: tw_exponent,
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
    main_force: *mut tw_main_force,
    feed_force: *mut tw_feed_force,
    passive_force: *mut tw_passive_force,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(main_force.is_null() && feed_force.is_null() && passive_force.is_null()),
        || {
            let (main_force_is, feed_force_is, passive_force_is) = measured_forces_of(
                main_specific_force,
                main_exponent,
                feed_specific_force,
                feed_exponent,
                passive_specific_force,
                passive_exponent,
                chip_thickness,
                chip_width,
            )?;
            Ok((
                tw_main_force::from(main_force_is),
                tw_feed_force::from(feed_force_is),
                tw_passive_force::from(passive_force_is),
            ))
        },
        |(main_force_is, feed_force_is, passive_force_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(main_force, main_force_is);
                put(feed_force, feed_force_is);
                put(passive_force, passive_force_is);
            }
        },
    )
}

/// tw_measured_forces for every row.
///
/// Columns, see the first page: main_specific_force, main_exponent, feed_specific_force,
/// feed_exponent, passive_specific_force, passive_exponent, chip_thickness and chip_width are
/// read, main_force, feed_force and passive_force are written, each may be NULL unless all are.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_measured_forces_column(
    main_specific_force: *const tw_column,
    main_exponent: *const tw_column,
    feed_specific_force: *const tw_column,
    feed_exponent: *const tw_column,
    passive_specific_force: *const tw_column,
    passive_exponent: *const tw_column,
    chip_thickness: *const tw_column,
    chip_width: *const tw_column,
    main_force: *const tw_out_column,
    feed_force: *const tw_out_column,
    passive_force: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpecificCuttingForce>("main_specific_force", main_specific_force),
            Input::of::<ForceExponent>("main_exponent", main_exponent),
            Input::of::<SpecificCuttingForce>("feed_specific_force", feed_specific_force),
            Input::of::<ForceExponent>("feed_exponent", feed_exponent),
            Input::of::<SpecificCuttingForce>("passive_specific_force", passive_specific_force),
            Input::of::<ForceExponent>("passive_exponent", passive_exponent),
            Input::of::<ChipThickness>("chip_thickness", chip_thickness),
            Input::of::<ChipWidth>("chip_width", chip_width),
        ),
        outputs: [
            Output::of::<MainForce>("main_force", main_force),
            Output::of::<FeedForce>("feed_force", feed_force),
            Output::of::<PassiveForce>("passive_force", passive_force),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            main_specific_force,
            main_exponent,
            feed_specific_force,
            feed_exponent,
            passive_specific_force,
            passive_exponent,
            chip_thickness,
            chip_width,
        ]| {
            let (main_force, feed_force, passive_force) = measured_forces_of(
                tw_specific_force {
                    mpa: main_specific_force,
                },
                tw_exponent {
                    ratio: main_exponent,
                },
                tw_specific_force {
                    mpa: feed_specific_force,
                },
                tw_exponent {
                    ratio: feed_exponent,
                },
                tw_specific_force {
                    mpa: passive_specific_force,
                },
                tw_exponent {
                    ratio: passive_exponent,
                },
                tw_chip_thickness { mm: chip_thickness },
                tw_chip_width { mm: chip_width },
            )?;
            Ok((
                [
                    main_force.trade(),
                    feed_force.trade(),
                    passive_force.trade(),
                ],
                0,
            ))
        },
    )
}
