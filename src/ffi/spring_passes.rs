//! What a springing bar leaves standing, cut after cut.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::spring_back;
use crate::quantity::{Deflection, DepthOfCut, Quantity, SpringShare};

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
///
/// Source: derived.
/// Example: tw_share_left(tw_depth_of_cut_millimeter(0.5), tw_deflection_millimeter(0.125), &share,
///     NULL); share.ratio is 0.2000.
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
///
/// Source: derived: the limit of tw_left_after_equal_infeeds.
/// Example: tw_left_in_the_end(tw_depth_of_cut_millimeter(0.2), tw_spring_share_one(0.130434783),
///     &deflection, NULL); tw_deflection_as_micrometer(deflection) is 30.0000.
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
///
/// Source: derived.
/// Example: tw_light_after_heavy(tw_deflection_millimeter(0.130434783),
///     tw_depth_of_cut_millimeter(0.1), tw_spring_share_one(0.130434783), &depth_of_cut, NULL);
///     depth_of_cut.mm is 0.200378.
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
///
/// Source: derived.
/// Example: tw_left_after_passes(tw_depth_of_cut_millimeter(0.5), tw_spring_share_one(0.2), 3,
///     &deflection, NULL); tw_deflection_as_micrometer(deflection) is 4.000.
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
///
/// Source: derived.
/// Example: tw_left_after_equal_infeeds(tw_depth_of_cut_millimeter(0.2),
///     tw_spring_share_one(0.130434783), 3, &deflection, NULL);
///     tw_deflection_as_micrometer(deflection) is 29.9334.
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
///
/// Source: derived: the last pass is the one after which less is left than the edge can cut.
/// Example: tw_spring_passes(tw_depth_of_cut_millimeter(0.5), tw_spring_share_one(0.2),
///     tw_depth_of_cut_millimeter(0.01), &left, &passes, NULL);
///     tw_deflection_as_micrometer(left) is 4.000 and passes is 2.
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
