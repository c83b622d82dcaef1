//! The texture of a turned surface: heights, shape, uneven feeds, grades.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::finish::{self, ToolOutline};
use crate::physics::uneven_feed;
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Feed, FeedUnevenness, MinorCuttingEdgeAngle, Quantity, Ra, Rku,
    Rq, Rsk, Rt, Rz, WorkLength,
};
use crate::standards::texture;

#[cold]
fn no_grade(ra: Ra) -> Error {
    Error::new(
        ErrorKind::OutOfRange,
        "ra",
        ra.to_string(),
        "at most 50 um, the Ra of N12",
        "give the Ra itself; a surface so rough has no grade",
    )
}

fn arc_roughness_of(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
) -> Result<(Rt, Rz, Ra, Rq), Error> {
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;

    let found = finish::arc_roughness(feed, corner_radius)?;
    Ok((found.rt, found.rz, found.ra, found.rq))
}

/// Total height, maximum height, arithmetic mean height and root mean square height that a feed
/// and a corner radius leave when the corner arc alone makes the finish, exactly. For a tool
/// whose minor cutting edge angle is not known; true when it is at least
/// tw_least_minor_angle_for_arc. A feed of twice the corner radius or more is refused
/// (TW_CONTRADICTION).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: Shaw, Metal Cutting Principles, chapter on surface finish (from memory); derived again.
/// Example: tw_arc_roughness(tw_feed_inch_per_revolution(0.008),
///     tw_corner_radius_inch_fraction(1, 64), &rt, &rz, &ra, &rq, NULL);
///     tw_rt_as_microinch(rt) is 520.675, tw_rz_as_microinch(rz) is 520.675,
///     tw_ra_as_microinch(ra) is 133.147 and tw_rq_as_microinch(rq) is 154.855.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_roughness(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    rt: *mut tw_rt,
    rz: *mut tw_rz,
    ra: *mut tw_ra,
    rq: *mut tw_rq,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(rt.is_null() && rz.is_null() && ra.is_null() && rq.is_null()),
        || {
            let (rt_is, rz_is, ra_is, rq_is) = arc_roughness_of(feed, corner_radius)?;
            Ok((
                tw_rt::from(rt_is),
                tw_rz::from(rz_is),
                tw_ra::from(ra_is),
                tw_rq::from(rq_is),
            ))
        },
        |(rt_is, rz_is, ra_is, rq_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(rt, rt_is);
                put(rz, rz_is);
                put(ra, ra_is);
                put(rq, rq_is);
            }
        },
    )
}

/// tw_arc_roughness for every row.
///
/// Columns, see the first page: feed and corner_radius are read, rt, rz, ra and rq are written,
/// each may be NULL unless all are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_arc_roughness_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    rt: *const tw_out_column,
    rz: *const tw_out_column,
    ra: *const tw_out_column,
    rq: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [
            Output::of::<Rt>("rt", rt),
            Output::of::<Rz>("rz", rz),
            Output::of::<Ra>("ra", ra),
            Output::of::<Rq>("rq", rq),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, corner_radius]| {
        let (rt, rz, ra, rq) = arc_roughness_of(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: corner_radius },
        )?;
        Ok(([rt.trade(), rz.trade(), ra.trade(), rq.trade()], 0))
    })
}

fn least_minor_angle_for_arc_of(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
) -> Result<MinorCuttingEdgeAngle, Error> {
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;

    finish::least_minor_angle_for_arc(feed, corner_radius)
}

/// The least minor cutting edge angle with which the corner arc alone makes the finish: asin(feed
/// / (2 corner_radius)). A feed of twice the corner radius or more is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: the ridge stands where the arc passes into the minor edge.
/// Example: tw_least_minor_angle_for_arc(tw_feed_millimeter_per_revolution(0.2),
///     tw_corner_radius_millimeter(0.8), &minor_cutting_edge_angle, NULL);
///     minor_cutting_edge_angle.deg is 7.18076.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_minor_angle_for_arc(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    minor_cutting_edge_angle: *mut tw_minor_cutting_edge_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !minor_cutting_edge_angle.is_null(),
        || {
            Ok(tw_minor_cutting_edge_angle::from(
                least_minor_angle_for_arc_of(feed, corner_radius)?,
            ))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(minor_cutting_edge_angle, answer) },
    )
}

/// tw_least_minor_angle_for_arc for every row.
///
/// Columns, see the first page: feed and corner_radius are read, minor_cutting_edge_angle is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_minor_angle_for_arc_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    minor_cutting_edge_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<MinorCuttingEdgeAngle>(
            "minor_cutting_edge_angle",
            minor_cutting_edge_angle,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, corner_radius]| {
        let found = least_minor_angle_for_arc_of(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: corner_radius },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn theoretical_shape_of(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
) -> Result<(Rsk, Rku), Error> {
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;
    let cutting_edge_angle = cutting_edge_angle.read()?;
    let minor_cutting_edge_angle = minor_cutting_edge_angle.read()?;
    let outline = ToolOutline::new(corner_radius, cutting_edge_angle, minor_cutting_edge_angle)?;
    let found = finish::theoretical_shape(feed, &outline);
    Ok((found.rsk, found.rku))
}

/// Skewness and kurtosis of the ridges that a feed and the outline of the tool leave, without a
/// filter; their spacing is the feed. The two edge angles must make less than 180 deg together
/// (TW_CONTRADICTION).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 21920-2 (from memory) for the definitions; derived.
/// Example: tw_theoretical_shape(tw_feed_millimeter_per_revolution(0.25),
///     tw_corner_radius_millimeter(0.8), tw_cutting_edge_angle_degree(90),
///     tw_minor_cutting_edge_angle_degree(20), &rsk, &rku, NULL); rsk.ratio is 0.642936 and
///     rku.ratio is 2.14949.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_theoretical_shape(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    cutting_edge_angle: tw_cutting_edge_angle,
    minor_cutting_edge_angle: tw_minor_cutting_edge_angle,
    rsk: *mut tw_rsk,
    rku: *mut tw_rku,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(rsk.is_null() && rku.is_null()),
        || {
            let (rsk_is, rku_is) = theoretical_shape_of(
                feed,
                corner_radius,
                cutting_edge_angle,
                minor_cutting_edge_angle,
            )?;
            Ok((tw_rsk::from(rsk_is), tw_rku::from(rku_is)))
        },
        |(rsk_is, rku_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(rsk, rsk_is);
                put(rku, rku_is);
            }
        },
    )
}

/// tw_theoretical_shape for every row.
///
/// Columns, see the first page: feed, corner_radius, cutting_edge_angle and
/// minor_cutting_edge_angle are read, rsk and rku are written, each may be NULL unless both are.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_theoretical_shape_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    cutting_edge_angle: *const tw_column,
    minor_cutting_edge_angle: *const tw_column,
    rsk: *const tw_out_column,
    rku: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<CuttingEdgeAngle>("cutting_edge_angle", cutting_edge_angle),
            Input::of::<MinorCuttingEdgeAngle>(
                "minor_cutting_edge_angle",
                minor_cutting_edge_angle,
            ),
        ),
        outputs: [Output::of::<Rsk>("rsk", rsk), Output::of::<Rku>("rku", rku)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            feed,
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle,
        ]| {
            let (rsk, rku) = theoretical_shape_of(
                tw_feed { mm_per_rev: feed },
                tw_corner_radius { mm: corner_radius },
                tw_cutting_edge_angle {
                    deg: cutting_edge_angle,
                },
                tw_minor_cutting_edge_angle {
                    deg: minor_cutting_edge_angle,
                },
            )?;
            Ok(([rsk.trade(), rku.trade()], 0))
        },
    )
}

fn arc_shape_of(feed: tw_feed, corner_radius: tw_corner_radius) -> Result<(Rsk, Rku), Error> {
    let feed = feed.read()?;
    let corner_radius = corner_radius.read()?;

    let found = finish::arc_shape(feed, corner_radius)?;
    Ok((found.rsk, found.rku))
}

/// Skewness and kurtosis of the ridges that a feed and a corner radius leave when the corner arc
/// alone makes the finish; their spacing is the feed. A feed of twice the corner radius or more
/// is refused (TW_CONTRADICTION).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 21920-2 (from memory) for the definitions; derived.
/// Example: tw_arc_shape(tw_feed_millimeter_per_revolution(0.25), tw_corner_radius_millimeter(0.8),
///     &rsk, &rku, NULL); rsk.ratio is 0.642936 and rku.ratio is 2.14949.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_shape(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    rsk: *mut tw_rsk,
    rku: *mut tw_rku,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(rsk.is_null() && rku.is_null()),
        || {
            let (rsk_is, rku_is) = arc_shape_of(feed, corner_radius)?;
            Ok((tw_rsk::from(rsk_is), tw_rku::from(rku_is)))
        },
        |(rsk_is, rku_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(rsk, rsk_is);
                put(rku, rku_is);
            }
        },
    )
}

/// tw_arc_shape for every row.
///
/// Columns, see the first page: feed and corner_radius are read, rsk and rku are written, each
/// may be NULL unless both are. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_arc_shape_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    rsk: *const tw_out_column,
    rku: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
        ),
        outputs: [Output::of::<Rsk>("rsk", rsk), Output::of::<Rku>("rku", rku)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, corner_radius]| {
        let (rsk, rku) = arc_shape_of(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: corner_radius },
        )?;
        Ok(([rsk.trade(), rku.trade()], 0))
    })
}

#[allow(clippy::type_complexity)]
fn uneven_spread_of(
    feed: tw_feed,
    feed_unevenness: tw_feed_unevenness,
    corner_radius: tw_corner_radius,
    evaluation_length: tw_length,
) -> Result<(Ra, Ra, Ra, Ra, Rt, Rt, Rt), Error> {
    let feed = feed.read()?;
    let feed_unevenness = feed_unevenness.read()?;
    let corner_radius = corner_radius.read()?;
    let evaluation_length = evaluation_length.named("evaluation_length")?;

    let found =
        uneven_feed::uneven_spread(feed, feed_unevenness, corner_radius, evaluation_length)?;
    Ok((
        found.ra,
        found.ra_5,
        found.ra_50,
        found.ra_95,
        found.rt_5,
        found.rt_50,
        found.rt_95,
    ))
}

/// What an uneven hand on the feed leaves: the expected Ra over an evaluation length, the Ra
/// below which 5, 50 and 95 of 100 such lengths lie, and the same of Rt. The feeds of the single
/// turns scatter by the normal law, feed_unevenness being its standard deviation over its mean, cut
/// off at nothing and at twice the mean: with much of it the roughest turns of a hand that jerks
/// more than that are not in it. The corner arc alone makes the finish.
///
/// Refused: an unevenness above 0.5 (TW_OUT_OF_RANGE), a feed that is not less than the corner
/// radius, and an evaluation length shorter than one turn (TW_CONTRADICTION).
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: derived: order statistics, and the central limit theorem of a ratio of means.
/// Example: tw_uneven_spread(tw_feed_millimeter_per_revolution(0.2), tw_feed_unevenness_one(0.2),
///     tw_corner_radius_millimeter(0.8), tw_length_millimeter(4), &ra, &ra_5, &ra_50, &ra_95,
///     &rt_5, &rt_50, &rt_95, NULL); ra.um is 1.9068, ra_5.um is 1.6215, ra_50.um is 1.9068,
///     ra_95.um is 2.1921, rt_5.um is 9.3089, rt_50.um is 11.7283 and rt_95.um is 15.3541.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_uneven_spread(
    feed: tw_feed,
    feed_unevenness: tw_feed_unevenness,
    corner_radius: tw_corner_radius,
    evaluation_length: tw_length,
    ra: *mut tw_ra,
    ra_5: *mut tw_ra,
    ra_50: *mut tw_ra,
    ra_95: *mut tw_ra,
    rt_5: *mut tw_rt,
    rt_50: *mut tw_rt,
    rt_95: *mut tw_rt,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(ra.is_null()
            && ra_5.is_null()
            && ra_50.is_null()
            && ra_95.is_null()
            && rt_5.is_null()
            && rt_50.is_null()
            && rt_95.is_null()),
        || {
            let (ra_is, ra_5_is, ra_50_is, ra_95_is, rt_5_is, rt_50_is, rt_95_is) =
                uneven_spread_of(feed, feed_unevenness, corner_radius, evaluation_length)?;
            Ok((
                tw_ra::from(ra_is),
                tw_ra::from(ra_5_is),
                tw_ra::from(ra_50_is),
                tw_ra::from(ra_95_is),
                tw_rt::from(rt_5_is),
                tw_rt::from(rt_50_is),
                tw_rt::from(rt_95_is),
            ))
        },
        |(ra_is, ra_5_is, ra_50_is, ra_95_is, rt_5_is, rt_50_is, rt_95_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(ra, ra_is);
                put(ra_5, ra_5_is);
                put(ra_50, ra_50_is);
                put(ra_95, ra_95_is);
                put(rt_5, rt_5_is);
                put(rt_50, rt_50_is);
                put(rt_95, rt_95_is);
            }
        },
    )
}

/// tw_uneven_spread for every row.
///
/// Columns, see the first page: feed, feed_unevenness, corner_radius and evaluation_length are
/// read, ra, ra_5, ra_50, ra_95, rt_5, rt_50 and rt_95 are written, each may be NULL unless all
/// are. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_uneven_spread_column(
    feed: *const tw_column,
    feed_unevenness: *const tw_column,
    corner_radius: *const tw_column,
    evaluation_length: *const tw_column,
    ra: *const tw_out_column,
    ra_5: *const tw_out_column,
    ra_50: *const tw_out_column,
    ra_95: *const tw_out_column,
    rt_5: *const tw_out_column,
    rt_50: *const tw_out_column,
    rt_95: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<FeedUnevenness>("feed_unevenness", feed_unevenness),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<WorkLength>("evaluation_length", evaluation_length),
        ),
        outputs: [
            Output::of::<Ra>("ra", ra),
            Output::of::<Ra>("ra_5", ra_5),
            Output::of::<Ra>("ra_50", ra_50),
            Output::of::<Ra>("ra_95", ra_95),
            Output::of::<Rt>("rt_5", rt_5),
            Output::of::<Rt>("rt_50", rt_50),
            Output::of::<Rt>("rt_95", rt_95),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[feed, feed_unevenness, corner_radius, evaluation_length]| {
            let (ra, ra_5, ra_50, ra_95, rt_5, rt_50, rt_95) = uneven_spread_of(
                tw_feed { mm_per_rev: feed },
                tw_feed_unevenness {
                    ratio: feed_unevenness,
                },
                tw_corner_radius { mm: corner_radius },
                tw_length {
                    mm: evaluation_length,
                },
            )?;
            Ok((
                [
                    ra.trade(),
                    ra_5.trade(),
                    ra_50.trade(),
                    ra_95.trade(),
                    rt_5.trade(),
                    rt_50.trade(),
                    rt_95.trade(),
                ],
                0,
            ))
        },
    )
}

fn roughness_grade_of(ra: tw_ra) -> Result<(Ra, i32), Error> {
    let ra = ra.read()?;

    let found = texture::Grade::of(ra).ok_or_else(|| no_grade(ra))?;
    Ok((found.ra(), found as i32 + 1))
}

/// The smoothest roughness grade that a surface of an arithmetic mean height meets, N1 to N12 as
/// 1 to 12, and the largest Ra of that grade, which belongs to it. An Ra above 50 um is refused
/// (TW_OUT_OF_RANGE). The inch partners of the grades are rounded: 63 uin is 1.6002 um and so, to
/// the letter, no longer N7.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure largest_ra is NaN
/// and grade 0.
///
/// Source: ISO 1302, 1978 and 1992 editions, from memory; later editions no longer recommend them.
/// Example: tw_roughness_grade(tw_ra_microinch(50), &largest_ra, &grade, NULL);
///     largest_ra.um is 1.600 and grade is 7.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_roughness_grade(
    ra: tw_ra,
    largest_ra: *mut tw_ra,
    grade: *mut i32,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(largest_ra.is_null() && grade.is_null()),
        || {
            let (largest_ra_is, grade_is) = roughness_grade_of(ra)?;
            Ok((tw_ra::from(largest_ra_is), grade_is))
        },
        |(largest_ra_is, grade_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(largest_ra, largest_ra_is);
                put(grade, grade_is);
            }
        },
    )
}

/// tw_roughness_grade for every row.
///
/// Columns, see the first page: ra is read, largest_ra is written. grade may be NULL; else one
/// int32_t a row (0 for a bad row), grade_stride_bytes apart (at least 4). row_status likewise.
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_roughness_grade_column(
    ra: *const tw_column,
    largest_ra: *const tw_out_column,
    grade: *mut i32,
    grade_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Ra>("ra", ra),),
        outputs: [Output::of::<Ra>("largest_ra", largest_ra)],
        regime: Numbers::at("grade", grade, grade_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[ra]| {
        let (largest_ra, grade) = roughness_grade_of(tw_ra { um: ra })?;
        Ok(([largest_ra.trade()], grade))
    })
}
