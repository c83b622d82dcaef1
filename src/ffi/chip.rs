//! The chip that an edge takes, and how light a cut may be.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::{edge_in_cut, engagement};
use crate::quantity::{
    ChipArea, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, DepthOfCut, Feed,
    MinorCuttingEdgeAngle, Quantity, WorkLength,
};

/// From 90 deg on the corner leads, and the edge reaches no farther.
const NO_LEAD: WorkLength = WorkLength::computed_trade(0.0);

fn chip_section_of(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
) -> Result<(ChipThickness, ChipWidth), Error> {
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;

    let found = engagement::chip_section(depth_of_cut, feed, cutting_edge_angle);
    Ok((found.thickness, found.width))
}

/// How thick and how wide a chip the straight edge takes: thickness feed sin(cutting_edge_angle),
/// width depth_of_cut / sin(cutting_edge_angle). Exact for a sharp corner; with a corner radius
/// good to a few per cent when the depth is more than three times the radius (common practice, no
/// source).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 3002-3 (from memory).
/// Example: tw_chip_section(tw_depth_of_cut_millimeter(3), tw_feed_millimeter_per_revolution(0.3),
///     tw_cutting_edge_angle_degree(75), &chip_thickness, &chip_width, NULL);
///     chip_thickness.mm is 0.289778 and chip_width.mm is 3.10583.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_chip_section(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    chip_thickness: *mut tw_chip_thickness,
    chip_width: *mut tw_chip_width,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(chip_thickness.is_null() && chip_width.is_null()),
        || {
            let (chip_thickness_is, chip_width_is) =
                chip_section_of(depth_of_cut, feed, cutting_edge_angle)?;
            Ok((
                tw_chip_thickness::from(chip_thickness_is),
                tw_chip_width::from(chip_width_is),
            ))
        },
        |(chip_thickness_is, chip_width_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(chip_thickness, chip_thickness_is);
                put(chip_width, chip_width_is);
            }
        },
    )
}

/// tw_chip_section for every row.
///
/// Columns, see the first page: depth_of_cut, feed and cutting_edge_angle are read,
/// chip_thickness and chip_width are written, each may be NULL unless both are. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_chip_section_column(
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    chip_thickness: *const tw_out_column,
    chip_width: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
        ),
        outputs: [
            Output::of::<ChipThickness>("chip_thickness", chip_thickness),
            Output::of::<ChipWidth>("chip_width", chip_width),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[depth_of_cut, feed, cutting_edge_angle]| {
        let (chip_thickness, chip_width) = chip_section_of(
            tw_depth_of_cut { mm: depth_of_cut },
            tw_feed { mm_per_rev: feed },
            tw_cutting_edge_angle {
                deg: cutting_edge_angle,
            },
        )?;
        Ok(([chip_thickness.trade(), chip_width.trade()], 0))
    })
}

fn largest_edge_angle_of(
    depth_of_cut: tw_depth_of_cut,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
) -> Result<CuttingEdgeAngle, Error> {
    let depth_of_cut = depth_of_cut.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let corner_radius = corner_radius.read()?;

    Ok(engagement::largest_edge_angle(
        depth_of_cut,
        cutting_edge_angle,
        corner_radius,
    ))
}

/// The largest local edge angle in the cut, where the edge leaves the work through the old
/// surface: acos(1 - depth_of_cut / corner_radius), at most cutting_edge_angle. Below
/// cutting_edge_angle the cut is a light one: only the corner arc cuts.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_largest_edge_angle(tw_depth_of_cut_millimeter(0.2),
///     tw_cutting_edge_angle_degree(95), tw_corner_radius_millimeter(0.8), &largest_edge_angle,
///     NULL); largest_edge_angle.deg is 41.4096.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_largest_edge_angle(
    depth_of_cut: tw_depth_of_cut,
    cutting_edge_angle: tw_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    largest_edge_angle: *mut tw_cutting_edge_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !largest_edge_angle.is_null(),
        || {
            Ok(tw_cutting_edge_angle::from(largest_edge_angle_of(
                depth_of_cut,
                cutting_edge_angle,
                corner_radius,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(largest_edge_angle, answer) },
    )
}

/// tw_largest_edge_angle for every row.
///
/// Columns, see the first page: depth_of_cut, cutting_edge_angle and corner_radius are read,
/// largest_edge_angle is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_largest_edge_angle_column(
    depth_of_cut: *const tw_column,
    cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    largest_edge_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<CuttingEdgeAngle>(
            "largest_edge_angle",
            largest_edge_angle,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[depth_of_cut, cutting_edge_angle, corner_radius]| {
            let found = largest_edge_angle_of(
                tw_depth_of_cut { mm: depth_of_cut },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_corner_radius { mm: corner_radius },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn thickest_chip_of(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    corner_radius: tw_corner_radius,
) -> Result<ChipThickness, Error> {
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;

    engagement::thickest_chip(depth_of_cut, feed, corner_radius)
}

/// How thick the chip of a light cut becomes at its thickest, where only the corner arc cuts:
/// r - sqrt(r^2 + f^2 - 2 f sqrt(2 r a - a^2)). Refused (TW_CONTRADICTION): a depth beyond the corner
/// radius, and a feed beyond sqrt(2 r a - a^2).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: the form of Blake and Scattergood 1990 (from memory); derived again.
/// Example: tw_thickest_chip(tw_depth_of_cut_inch(0.005), tw_feed_inch_per_revolution(0.003),
///     tw_corner_radius_inch_fraction(1, 64), &chip_thickness, NULL);
///     tw_chip_thickness_as_micrometer(chip_thickness) is 51.9565.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_thickest_chip(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !chip_thickness.is_null(),
        || {
            Ok(tw_chip_thickness::from(thickest_chip_of(
                depth_of_cut,
                feed,
                corner_radius,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(chip_thickness, answer) },
    )
}

/// tw_thickest_chip for every row.
///
/// Columns, see the first page: depth_of_cut, feed and corner_radius are read, chip_thickness is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_thickest_chip_column(
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    corner_radius: *const tw_column,
    chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<ChipThickness>(
            "chip_thickness",
            chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[depth_of_cut, feed, corner_radius]| {
        let found = thickest_chip_of(
            tw_depth_of_cut { mm: depth_of_cut },
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: corner_radius },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn least_depth_of(
    least_chip_thickness: tw_chip_thickness,
    feed: tw_feed,
    corner_radius: tw_corner_radius,
) -> Result<DepthOfCut, Error> {
    let least_chip_thickness = least_chip_thickness.named("least_chip_thickness")?;
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;

    engagement::least_depth(least_chip_thickness, feed, corner_radius)
}

/// The depth below which the corner only rubs, because its thickest chip is the least one that
/// forms: r (1 - sqrt(1 - (h_min / f)^2)). It is the depth at which a chip forms at all; a practical
/// floor is several times as much (common practice, no source). Refused (TW_CONTRADICTION): a
/// feed that is not greater than the least chip thickness, and a sharp corner.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived.
/// Example: tw_least_depth(tw_chip_thickness_micrometer(8), tw_feed_millimeter_per_revolution(0.1),
///     tw_corner_radius_millimeter(0.8), &depth_of_cut, NULL);
///     tw_depth_of_cut_as_micrometer(depth_of_cut) is 2.56411.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_depth(
    least_chip_thickness: tw_chip_thickness,
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    depth_of_cut: *mut tw_depth_of_cut,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !depth_of_cut.is_null(),
        || {
            Ok(tw_depth_of_cut::from(least_depth_of(
                least_chip_thickness,
                feed,
                corner_radius,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(depth_of_cut, answer) },
    )
}

/// tw_least_depth for every row.
///
/// Columns, see the first page: least_chip_thickness, feed and corner_radius are read,
/// depth_of_cut is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_depth_column(
    least_chip_thickness: *const tw_column,
    feed: *const tw_column,
    corner_radius: *const tw_column,
    depth_of_cut: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<DepthOfCut>("depth_of_cut", depth_of_cut)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[least_chip_thickness, feed, corner_radius]| {
        let found = least_depth_of(
            tw_chip_thickness {
                mm: least_chip_thickness,
            },
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: corner_radius },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn edge_lead_of(
    depth_of_cut: tw_depth_of_cut,
    cutting_edge_angle: tw_cutting_edge_angle,
) -> Result<WorkLength, Error> {
    let depth_of_cut = depth_of_cut.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;

    let found = engagement::edge_lead(depth_of_cut, cutting_edge_angle);
    Ok(found.unwrap_or(NO_LEAD))
}

/// How far the major edge reaches ahead of the corner, in the direction of the feed: depth_of_cut
/// / tan(cutting_edge_angle), 0 from 90 deg on, where the corner leads. A straight edge.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_edge_lead(tw_depth_of_cut_millimeter(2), tw_cutting_edge_angle_degree(45), &lead,
///     NULL); lead.mm is 2.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_edge_lead(
    depth_of_cut: tw_depth_of_cut,
    cutting_edge_angle: tw_cutting_edge_angle,
    lead: *mut tw_length,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !lead.is_null(),
        || {
            Ok(tw_length::from(edge_lead_of(
                depth_of_cut,
                cutting_edge_angle,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(lead, answer) },
    )
}

/// tw_edge_lead for every row.
///
/// Columns, see the first page: depth_of_cut and cutting_edge_angle are read, lead is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_edge_lead_column(
    depth_of_cut: *const tw_column,
    cutting_edge_angle: *const tw_column,
    lead: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
        ),
        outputs: [Output::of::<WorkLength>("lead", lead)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[depth_of_cut, cutting_edge_angle]| {
        let found = edge_lead_of(
            tw_depth_of_cut { mm: depth_of_cut },
            tw_cutting_edge_angle {
                deg: cutting_edge_angle,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn engaged_edge_of(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    corner_radius: tw_corner_radius,
) -> Result<
    (
        MinorCuttingEdgeAngle,
        CuttingEdgeAngle,
        ChipArea,
        CuttingEdgeAngle,
    ),
    Error,
> {
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let minor_cutting_edge_angle = minor_cutting_edge_angle.read()?;
    let corner_radius = corner_radius.read()?;

    let found = edge_in_cut::engaged_edge(
        depth_of_cut,
        feed,
        cutting_edge_angle,
        minor_cutting_edge_angle,
        corner_radius,
    )?;
    Ok((
        found.arc_start,
        found.arc_end,
        found.ridge_area,
        found.chord_angle,
    ))
}

/// How far a rounded tool's edge is engaged, exactly: how far its corner arc is in the cut on the
/// side of the minor edge and on that of the major edge, the cross section of the ridge that
/// stays on the work between two turns, and the angle of the chord of the engaged edge to the
/// feed, about square to which the chip leaves. Length of edge, cross section and equivalent
/// thickness of the chip: tw_equivalent_chip_thickness, with the same arguments. Both ends of the
/// arc are counted from its deepest point, positive to either side.
///
/// Refused (TW_CONTRADICTION): a sharp corner, a feed at which two turns do not meet on their
/// corner arcs, and a depth that is not beyond the ridge.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: geometry, derived; chord: Colwell 1954, Trans. ASME 76 (from memory).
/// Example: tw_engaged_edge(tw_depth_of_cut_inch(0.02), tw_feed_inch_per_revolution(0.006),
///     tw_cutting_edge_angle_degree(90), tw_minor_cutting_edge_angle_degree(10),
///     tw_corner_radius_inch_fraction(1, 32), &arc_start, &arc_end, &ridge_area, &chord_angle,
///     NULL); arc_start.deg is 5.50888, arc_end.deg is 68.8998, ridge_area.mm2 is 0.000186064 and
///     chord_angle.deg is 31.6955.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_engaged_edge(
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    corner_radius: tw_corner_radius,
    arc_start: *mut tw_minor_cutting_edge_angle,
    arc_end: *mut tw_cutting_edge_angle,
    ridge_area: *mut tw_chip_area,
    chord_angle: *mut tw_cutting_edge_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(arc_start.is_null()
            && arc_end.is_null()
            && ridge_area.is_null()
            && chord_angle.is_null()),
        || {
            let (arc_start_is, arc_end_is, ridge_area_is, chord_angle_is) = engaged_edge_of(
                depth_of_cut,
                feed,
                cutting_edge_angle,
                minor_cutting_edge_angle,
                corner_radius,
            )?;
            Ok((
                tw_minor_cutting_edge_angle::from(arc_start_is),
                tw_cutting_edge_angle::from(arc_end_is),
                tw_chip_area::from(ridge_area_is),
                tw_cutting_edge_angle::from(chord_angle_is),
            ))
        },
        |(arc_start_is, arc_end_is, ridge_area_is, chord_angle_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(arc_start, arc_start_is);
                put(arc_end, arc_end_is);
                put(ridge_area, ridge_area_is);
                put(chord_angle, chord_angle_is);
            }
        },
    )
}

/// tw_engaged_edge for every row.
///
/// Columns, see the first page: depth_of_cut, feed, cutting_edge_angle, minor_cutting_edge_angle
/// and corner_radius are read, arc_start, arc_end, ridge_area and chord_angle are written, each
/// may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_engaged_edge_column(
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    corner_radius: *const tw_column,
    arc_start: *const tw_out_column,
    arc_end: *const tw_out_column,
    ridge_area: *const tw_out_column,
    chord_angle: *const tw_out_column,
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
            Output::of::<MinorCuttingEdgeAngle>("arc_start", arc_start),
            Output::of::<CuttingEdgeAngle>("arc_end", arc_end),
            Output::of::<ChipArea>("ridge_area", ridge_area),
            Output::of::<CuttingEdgeAngle>("chord_angle", chord_angle),
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
            let (arc_start, arc_end, ridge_area, chord_angle) = engaged_edge_of(
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
                    arc_start.trade(),
                    arc_end.trade(),
                    ridge_area.trade(),
                    chord_angle.trade(),
                ],
                0,
            ))
        },
    )
}
