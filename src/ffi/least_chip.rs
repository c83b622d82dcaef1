//! The least chip of an edge, the roughness that it leaves and the best feed with it.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::least_chip::{self, LeastChipModel, LeastChipRegime, LeastChipRoughness};
use crate::quantity::{ChipThickness, CornerRadius, EdgeRadius, Feed, FrictionAngle, Quantity, Rt};

/// On which side of its best feed a finish with a least chip lies. Returned as int32_t; a later
/// version may know more of them.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_least_chip_regime {
    /// At the best feed or above: the formula holds.
    TW_LEAST_CHIP_CUTTING = 1,
    /// Below the best feed: outside the formula's range, which grows without end there.
    TW_LEAST_CHIP_BELOW_BEST_FEED = 2,
}

fn regime_number(regime: LeastChipRegime) -> i32 {
    (match regime {
        LeastChipRegime::Cutting => tw_least_chip_regime::TW_LEAST_CHIP_CUTTING,
        LeastChipRegime::BelowBestFeed => tw_least_chip_regime::TW_LEAST_CHIP_BELOW_BEST_FEED,
    }) as i32
}

fn rt_with_least_chip(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<LeastChipRoughness, Error> {
    least_chip::roughness_with_least_chip(
        feed.read()?,
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    )
}

/// The total height that a feed leaves on a corner radius where chips below a least thickness do not
/// form (Brammertz): f^2/(8 r) + (h_min/2)(1 + r h_min/f^2). regime is a number of enum
/// tw_least_chip_regime: below the best feed the height is outside the formula's range.
///
/// A corner radius of zero is refused (TW_CONTRADICTION). An output may be NULL unless both are.
/// detail may be NULL. After a failure the height is NaN and the regime 0.
///
/// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); derived again.
/// Example: tw_rt_with_least_chip(tw_feed_millimeter_per_revolution(0.1),
///     tw_corner_radius_millimeter(0.8), tw_chip_thickness_micrometer(5), &rt, &regime, NULL);
///     rt.um is 5.0625 and regime is TW_LEAST_CHIP_CUTTING.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rt_with_least_chip(
    feed: tw_feed,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    rt: *mut tw_rt,
    regime: *mut i32,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(rt.is_null() && regime.is_null()),
        || {
            let found = rt_with_least_chip(feed, corner_radius, least_chip_thickness)?;
            Ok((tw_rt::from(found.rt), regime_number(found.regime)))
        },
        |(rt_is, regime_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(rt, rt_is);
                put(regime, regime_is);
            }
        },
    )
}

/// tw_rt_with_least_chip for every row.
///
/// Columns, see the first page: the first three are read, rt is written. regime may be NULL; else one
/// int32_t a row (0 for a bad row), regime_stride_bytes apart (at least 4). row_status likewise.
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_rt_with_least_chip_column(
    feed: *const tw_column,
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    rt: *const tw_out_column,
    regime: *mut i32,
    regime_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Rt>("rt", rt)],
        regime: Numbers::at("regime", regime, regime_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, radius, least]| {
        let found = rt_with_least_chip(
            tw_feed { mm_per_rev: feed },
            tw_corner_radius { mm: radius },
            tw_chip_thickness { mm: least },
        )?;
        Ok(([found.rt.trade()], regime_number(found.regime)))
    })
}

fn best_feed_with_least_chip(
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<Feed, Error> {
    Ok(least_chip::best_feed(
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    ))
}

/// The feed that leaves the least height where chips below a least thickness do not form:
/// sqrt(2 r h_min). That height is h_min; a finer feed makes the finish worse.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); the minimum over the feed, derived.
/// Example: tw_best_feed_with_least_chip(tw_corner_radius_millimeter(0.8),
///     tw_chip_thickness_micrometer(5), &feed, NULL); feed.mm_per_rev is 0.0894427.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_best_feed_with_least_chip(
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = best_feed_with_least_chip(corner_radius, least_chip_thickness)?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_best_feed_with_least_chip for every row.
///
/// Columns, see the first page: corner_radius, least_chip_thickness are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_best_feed_with_least_chip_column(
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[corner_radius, least_chip_thickness]| {
        let found = best_feed_with_least_chip(
            tw_corner_radius { mm: corner_radius },
            tw_chip_thickness {
                mm: least_chip_thickness,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn feed_with_least_chip(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
) -> Result<Feed, Error> {
    least_chip::feed_with_least_chip(
        rt.read()?,
        corner_radius.read()?,
        least_chip_thickness.named("least_chip_thickness")?,
    )
}

/// The feed that leaves a total height where chips below a least thickness do not form: the coarser
/// of the two, from the best feed on.
///
/// A height below the least chip thickness is refused (TW_IMPOSSIBLE), and a corner radius of zero
/// (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
///
/// Source: Brammertz 1961, Industrie-Anzeiger 83 (from memory); inverted.
/// Example: tw_feed_with_least_chip(tw_rt_micrometer(8), tw_corner_radius_millimeter(0.8),
///     tw_chip_thickness_micrometer(4), &feed, NULL); feed.mm_per_rev is 0.193137.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_with_least_chip(
    rt: tw_rt,
    corner_radius: tw_corner_radius,
    least_chip_thickness: tw_chip_thickness,
    feed: *mut tw_feed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed.is_null(),
        || {
            let found = feed_with_least_chip(rt, corner_radius, least_chip_thickness)?;
            Ok(tw_feed::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed, answer) },
    )
}

/// tw_feed_with_least_chip for every row.
///
/// Columns, see the first page: rt, corner_radius, least_chip_thickness are read,
/// feed is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_with_least_chip_column(
    rt: *const tw_column,
    corner_radius: *const tw_column,
    least_chip_thickness: *const tw_column,
    feed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Rt>("rt", rt),
            Input::of::<CornerRadius>("corner_radius", corner_radius),
            Input::of::<ChipThickness>("least_chip_thickness", least_chip_thickness),
        ),
        outputs: [Output::of::<Feed>("feed", feed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[rt, corner_radius, least_chip_thickness]| {
        let found = feed_with_least_chip(
            tw_rt { um: rt },
            tw_corner_radius { mm: corner_radius },
            tw_chip_thickness {
                mm: least_chip_thickness,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn least_chip_by_practice(edge_radius: tw_edge_radius) -> Result<ChipThickness, Error> {
    Ok(least_chip::least_chip(
        edge_radius.read()?,
        LeastChipModel::Practice,
    ))
}

/// The least thickness of chip that an edge of this radius cuts, by common practice: 0.3 times the
/// radius (0.2 to 0.4). With edges above 0.02 mm it overstates.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common practice, no source (0.2 to 0.4 of the edge radius).
/// Example: tw_least_chip_thickness(tw_edge_radius_micrometer(20), &least_chip_thickness, NULL);
///     tw_chip_thickness_as_micrometer(least_chip_thickness) is 6.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_thickness(
    edge_radius: tw_edge_radius,
    least_chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !least_chip_thickness.is_null(),
        || {
            let found = least_chip_by_practice(edge_radius)?;
            Ok(tw_chip_thickness::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(least_chip_thickness, answer) },
    )
}

/// tw_least_chip_thickness for every row.
///
/// Columns, see the first page: edge_radius is read,
/// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_thickness_column(
    edge_radius: *const tw_column,
    least_chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<EdgeRadius>("edge_radius", edge_radius),),
        outputs: [Output::of::<ChipThickness>(
            "least_chip_thickness",
            least_chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[edge_radius]| {
        let found = least_chip_by_practice(tw_edge_radius { mm: edge_radius })?;
        Ok(([found.trade()], 0))
    })
}

fn least_chip_by_friction(
    edge_radius: tw_edge_radius,
    friction_angle: tw_friction_angle,
) -> Result<ChipThickness, Error> {
    Ok(least_chip::least_chip(
        edge_radius.read()?,
        LeastChipModel::Friction(friction_angle.read()?),
    ))
}

/// The least thickness of chip that an edge of this radius cuts, from the angle of friction beta:
/// r_n (1 - cos(45 deg - beta/2)); without friction it is the model of a flow that parts at 45 deg.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: Son et al. 2005, Int. J. Machine Tools and Manufacture 45 (from memory).
/// Example: tw_least_chip_by_friction(tw_edge_radius_micrometer(20), tw_friction_angle_degree(30),
///     &least_chip_thickness, NULL);
///     tw_chip_thickness_as_micrometer(least_chip_thickness) is 2.67949.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_friction(
    edge_radius: tw_edge_radius,
    friction_angle: tw_friction_angle,
    least_chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !least_chip_thickness.is_null(),
        || {
            let found = least_chip_by_friction(edge_radius, friction_angle)?;
            Ok(tw_chip_thickness::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(least_chip_thickness, answer) },
    )
}

/// tw_least_chip_by_friction for every row.
///
/// Columns, see the first page: edge_radius, friction_angle are read,
/// least_chip_thickness is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_friction_column(
    edge_radius: *const tw_column,
    friction_angle: *const tw_column,
    least_chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<EdgeRadius>("edge_radius", edge_radius),
            Input::of::<FrictionAngle>("friction_angle", friction_angle),
        ),
        outputs: [Output::of::<ChipThickness>(
            "least_chip_thickness",
            least_chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[edge_radius, friction_angle]| {
        let found = least_chip_by_friction(
            tw_edge_radius { mm: edge_radius },
            tw_friction_angle {
                deg: friction_angle,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

/// How the least thickness of a chip goes with the radius of the edge. Passed as int32_t; another
/// number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_least_chip_model {
    /// 0.3 of the radius (common practice, no source).
    TW_LEAST_CHIP_MODEL_PRACTICE = 1,
    /// The flow parts half-way round the edge, at 45 deg.
    TW_LEAST_CHIP_MODEL_STAGNATION = 2,
    /// The neutral point of the rounded edge, at 37.6 deg.
    TW_LEAST_CHIP_MODEL_NEUTRAL = 3,
}

fn model_of(number: i32) -> Result<LeastChipModel, Error> {
    const PRACTICE: i32 = tw_least_chip_model::TW_LEAST_CHIP_MODEL_PRACTICE as i32;
    const STAGNATION: i32 = tw_least_chip_model::TW_LEAST_CHIP_MODEL_STAGNATION as i32;
    const NEUTRAL: i32 = tw_least_chip_model::TW_LEAST_CHIP_MODEL_NEUTRAL as i32;
    match number {
        PRACTICE => Ok(LeastChipModel::Practice),
        STAGNATION => Ok(LeastChipModel::Stagnation),
        NEUTRAL => Ok(LeastChipModel::Neutral),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "model",
            other.to_string(),
            "TW_LEAST_CHIP_MODEL_PRACTICE (1), TW_LEAST_CHIP_MODEL_STAGNATION (2) or TW_LEAST_CHIP_MODEL_NEUTRAL (3)",
            "pass one of the names of enum tw_least_chip_model",
        )),
    }
}

/// The least thickness of chip that an edge of a radius cuts, by one of three models: 0.3 r_n, or
/// r_n (1 - cos theta) with theta 45 deg or 37.6 deg. model is a number of enum
/// tw_least_chip_model; friction makes a fourth model, tw_least_chip_by_friction. A large honed
/// edge cuts thinner chips than these say.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: common practice, no source; L'vov; Basuray et al., Wear 43 (from memory, unverified).
/// Example: tw_least_chip_by_model(tw_edge_radius_micrometer(20), TW_LEAST_CHIP_MODEL_STAGNATION,
///     &chip_thickness, NULL); tw_chip_thickness_as_micrometer(chip_thickness) is 5.85786.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_model(
    edge_radius: tw_edge_radius,
    model: i32,
    chip_thickness: *mut tw_chip_thickness,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !chip_thickness.is_null(),
        || {
            let model = model_of(model)?;
            let edge_radius = edge_radius.read()?;
            Ok(tw_chip_thickness::from(least_chip::least_chip(
                edge_radius,
                model,
            )))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(chip_thickness, answer) },
    )
}

/// tw_least_chip_by_model for every row.
///
/// Columns, see the first page: edge_radius is read, chip_thickness is written. model is one
/// number for all rows; one that is refused fails the whole call. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_least_chip_by_model_column(
    edge_radius: *const tw_column,
    model: i32,
    chip_thickness: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<EdgeRadius>("edge_radius", edge_radius),),
        outputs: [Output::of::<ChipThickness>(
            "chip_thickness",
            chip_thickness,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(model_of(model)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(model) => {
            let share = least_chip::over_edge_radius(model);
            job.run_checked(detail, |[edge_radius]| {
                let edge_radius = tw_edge_radius { mm: edge_radius }.read()?;
                let found = least_chip::by_share(edge_radius, share);
                Ok(([found.trade()], 0))
            })
        }
    }
}
