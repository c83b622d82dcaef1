//! Speeds, rates and times of a cut.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status, tw_status::*};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::engagement::ChipSection;
use crate::physics::{speed, speed_series};
use crate::quantity::{
    ChipThickness, ChipWidth, CuttingSpeed, DepthOfCut, Diameter, Duration, Feed, FeedRate,
    HandwheelRate, Quantity, RemovalRate, SpindleSpeed, Travel, WorkLength,
};

fn step_of(number: i32) -> Result<u8, Error> {
    u8::try_from(number).map_err(|_| {
        Error::new(
            ErrorKind::OutOfRange,
            "step",
            number.to_string(),
            "1 to 6: every value of the series R20 up to every sixth",
            "a ratio of 1.12 is 1, of 1.26 is 2, of 1.41 is 3, of 1.58 is 4, of 2 is 6",
        )
    })
}

fn place_of(number: i32) -> Result<u8, Error> {
    u8::try_from(number).map_err(|_| {
        Error::new(
            ErrorKind::OutOfRange,
            "place",
            number.to_string(),
            "a whole number from 0 to 255",
            "count the steps from the first speed, which is 0",
        )
    })
}

/// The exact ratio of neighbouring spindle speeds where a gearbox takes every step-th value of the
/// series R20: 10^(step/20), a plain number. The largest loss of cutting speed by stepping is 1 - 1/ratio.
/// step is 1 to 6 (TW_OUT_OF_RANGE). For a speed of the series see tw_speed_of_step.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 3 with ISO 229, from memory.
/// Example: tw_step_ratio(3, &ratio, NULL); ratio is 1.41254.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_step_ratio(
    step: i32,
    ratio: *mut f64,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !ratio.is_null(),
        || Ok(speed_series::step_ratio(step_of(step)?)?),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(ratio, answer) },
    )
}

fn cutting_speed_of_of(
    spindle_speed: tw_spindle_speed,
    diameter: tw_diameter,
) -> Result<CuttingSpeed, Error> {
    let spindle_speed = spindle_speed.read()?;
    let diameter = diameter.read()?;

    Ok(speed::cutting_speed(spindle_speed, diameter))
}

/// The cutting speed of a diameter at a spindle speed: pi d n. At the diameter before the cut it
/// is the speed that wears the edge; at the mean diameter (tw_mean_diameter) it is the one that
/// power is reckoned with.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition, ISO 3002-1 (from memory).
/// Example: tw_cutting_speed_of(tw_spindle_speed_revolution_per_minute(1200), tw_diameter_inch(1),
///     &cutting_speed, NULL); tw_cutting_speed_as_foot_per_minute(cutting_speed) is 314.159.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_speed_of(
    spindle_speed: tw_spindle_speed,
    diameter: tw_diameter,
    cutting_speed: *mut tw_cutting_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !cutting_speed.is_null(),
        || {
            Ok(tw_cutting_speed::from(cutting_speed_of_of(
                spindle_speed,
                diameter,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(cutting_speed, answer) },
    )
}

/// tw_cutting_speed_of for every row.
///
/// Columns, see the first page: spindle_speed and diameter are read, cutting_speed is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_cutting_speed_of_column(
    spindle_speed: *const tw_column,
    diameter: *const tw_column,
    cutting_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<Diameter>("diameter", diameter),
        ),
        outputs: [Output::of::<CuttingSpeed>("cutting_speed", cutting_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[spindle_speed, diameter]| {
        let found = cutting_speed_of_of(
            tw_spindle_speed { rpm: spindle_speed },
            tw_diameter { mm: diameter },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn feed_rate_of_of(feed: tw_feed, spindle_speed: tw_spindle_speed) -> Result<FeedRate, Error> {
    let feed = feed.read()?;
    let spindle_speed = spindle_speed.read()?;

    Ok(speed::feed_rate(feed, spindle_speed))
}

/// How fast the tool travels along: feed times spindle speed.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition, ISO 3002-1 (from memory).
/// Example: tw_feed_rate_of(tw_feed_millimeter_per_revolution(0.15),
///     tw_spindle_speed_revolution_per_minute(710), &feed_rate, NULL);
///     feed_rate.mm_per_min is 106.5.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_rate_of(
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    feed_rate: *mut tw_feed_rate,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !feed_rate.is_null(),
        || Ok(tw_feed_rate::from(feed_rate_of_of(feed, spindle_speed)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(feed_rate, answer) },
    )
}

/// tw_feed_rate_of for every row.
///
/// Columns, see the first page: feed and spindle_speed are read, feed_rate is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_feed_rate_of_column(
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    feed_rate: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<FeedRate>("feed_rate", feed_rate)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, spindle_speed]| {
        let found = feed_rate_of_of(
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn time_of_cut_of(
    length: tw_length,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
) -> Result<Duration, Error> {
    let length = length.read()?;
    let feed = feed.read()?;
    let spindle_speed = spindle_speed.read()?;

    Ok(speed::time_of_cut(length, feed, spindle_speed))
}

/// How long the tool takes along a length: length / (feed times spindle speed). The length
/// includes the run-in and the run-out.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the feed.
/// Example: tw_time_of_cut(tw_length_inch(6.6), tw_feed_inch_per_revolution(0.008),
///     tw_spindle_speed_revolution_per_minute(355), &time, NULL); time.s is 139.437.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_time_of_cut(
    length: tw_length,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    time: *mut tw_time,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !time.is_null(),
        || Ok(tw_time::from(time_of_cut_of(length, feed, spindle_speed)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(time, answer) },
    )
}

/// tw_time_of_cut for every row.
///
/// Columns, see the first page: length, feed and spindle_speed are read, time is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_time_of_cut_column(
    length: *const tw_column,
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    time: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<WorkLength>("length", length),
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<Duration>("time", time)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[length, feed, spindle_speed]| {
        let found = time_of_cut_of(
            tw_length { mm: length },
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn removal_rate_of_of(
    diameter: tw_diameter,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
) -> Result<RemovalRate, Error> {
    let diameter = diameter.read()?;
    let depth_of_cut = depth_of_cut.read()?;
    let feed = feed.read()?;
    let spindle_speed = spindle_speed.read()?;

    speed::removal_rate(diameter, depth_of_cut, feed, spindle_speed)
}

/// The metal that a cut along the bar removes per time, exactly: pi (diameter - depth_of_cut)
/// depth_of_cut feed spindle_speed. diameter is the one before the cut. A depth to the middle of
/// the bar or beyond is refused (TW_CONTRADICTION). For facing and parting see
/// tw_removal_rate_at.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived: the ring pi (d_o^2 - d_i^2)/4 times the feed rate.
/// Example: tw_removal_rate_of(tw_diameter_millimeter(40), tw_depth_of_cut_millimeter(2),
///     tw_feed_millimeter_per_revolution(0.25), tw_spindle_speed_revolution_per_minute(500),
///     &removal_rate, NULL); removal_rate.cm3_per_min is 29.8451.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_removal_rate_of(
    diameter: tw_diameter,
    depth_of_cut: tw_depth_of_cut,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    removal_rate: *mut tw_removal_rate,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !removal_rate.is_null(),
        || {
            Ok(tw_removal_rate::from(removal_rate_of_of(
                diameter,
                depth_of_cut,
                feed,
                spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(removal_rate, answer) },
    )
}

/// tw_removal_rate_of for every row.
///
/// Columns, see the first page: diameter, depth_of_cut, feed and spindle_speed are read,
/// removal_rate is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_removal_rate_of_column(
    diameter: *const tw_column,
    depth_of_cut: *const tw_column,
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    removal_rate: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<RemovalRate>("removal_rate", removal_rate)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |[diameter, depth_of_cut, feed, spindle_speed]| {
            let (Ok(diameter), Ok(depth_of_cut), Ok(feed), Ok(spindle_speed)) = (
                Diameter::from_trade(diameter),
                DepthOfCut::from_trade(depth_of_cut),
                Feed::from_trade(feed),
                SpindleSpeed::from_trade(spindle_speed),
            ) else {
                return Err(TW_INTERNAL);
            };
            speed::removal_rate_or_none(diameter, depth_of_cut, feed, spindle_speed)
                .map(|found| ([found.trade()], 0))
                .ok_or(TW_CONTRADICTION)
        },
        |[diameter, depth_of_cut, feed, spindle_speed]| {
            removal_rate_of_of(
                tw_diameter { mm: diameter },
                tw_depth_of_cut { mm: depth_of_cut },
                tw_feed { mm_per_rev: feed },
                tw_spindle_speed { rpm: spindle_speed },
            )
            .err()
        },
    )
}

fn removal_rate_at_of(
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
    cutting_speed: tw_cutting_speed,
) -> Result<RemovalRate, Error> {
    let chip_thickness = chip_thickness.read()?;
    let chip_width = chip_width.read()?;
    let cutting_speed = cutting_speed.read()?;

    Ok(speed::removal_rate_at(
        ChipSection::new(chip_thickness, chip_width),
        cutting_speed,
    ))
}

/// The metal that a cut towards or across the axis removes per time where it stands: thickness
/// times width of the chip times cutting speed. For facing and parting, at the diameter to which
/// the cutting speed belongs; along a bar see tw_removal_rate_of.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: the section of the chip times the way that passes the edge.
/// Example: tw_removal_rate_at(tw_chip_thickness_millimeter(0.08), tw_chip_width_millimeter(3),
///     tw_cutting_speed_meter_per_minute(50), &removal_rate, NULL);
///     removal_rate.cm3_per_min is 12.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_removal_rate_at(
    chip_thickness: tw_chip_thickness,
    chip_width: tw_chip_width,
    cutting_speed: tw_cutting_speed,
    removal_rate: *mut tw_removal_rate,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !removal_rate.is_null(),
        || {
            Ok(tw_removal_rate::from(removal_rate_at_of(
                chip_thickness,
                chip_width,
                cutting_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(removal_rate, answer) },
    )
}

/// tw_removal_rate_at for every row.
///
/// Columns, see the first page: chip_thickness, chip_width and cutting_speed are read,
/// removal_rate is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_removal_rate_at_column(
    chip_thickness: *const tw_column,
    chip_width: *const tw_column,
    cutting_speed: *const tw_column,
    removal_rate: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<ChipThickness>("chip_thickness", chip_thickness),
            Input::of::<ChipWidth>("chip_width", chip_width),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
        ),
        outputs: [Output::of::<RemovalRate>("removal_rate", removal_rate)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[chip_thickness, chip_width, cutting_speed]| {
        let found = removal_rate_at_of(
            tw_chip_thickness { mm: chip_thickness },
            tw_chip_width { mm: chip_width },
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn mean_diameter_of(
    diameter: tw_diameter,
    depth_of_cut: tw_depth_of_cut,
) -> Result<Diameter, Error> {
    let diameter = diameter.read()?;
    let depth_of_cut = depth_of_cut.read()?;

    speed::mean_diameter(diameter, depth_of_cut)
}

/// The diameter half-way through the depth of a cut: diameter - depth_of_cut, the diameter being
/// the one before the cut. A depth to the middle of the bar or beyond is refused
/// (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_mean_diameter(tw_diameter_inch(1.5), tw_depth_of_cut_inch(0.1), &mean_diameter,
///     NULL); tw_diameter_as_inch(mean_diameter) is 1.400.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_diameter(
    diameter: tw_diameter,
    depth_of_cut: tw_depth_of_cut,
    mean_diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !mean_diameter.is_null(),
        || Ok(tw_diameter::from(mean_diameter_of(diameter, depth_of_cut)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(mean_diameter, answer) },
    )
}

/// tw_mean_diameter for every row.
///
/// Columns, see the first page: diameter and depth_of_cut are read, mean_diameter is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_mean_diameter_column(
    diameter: *const tw_column,
    depth_of_cut: *const tw_column,
    mean_diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<DepthOfCut>("depth_of_cut", depth_of_cut),
        ),
        outputs: [Output::of::<Diameter>("mean_diameter", mean_diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run(
        detail,
        |[diameter, depth_of_cut]| {
            let (Ok(diameter), Ok(depth_of_cut)) = (
                Diameter::from_trade(diameter),
                DepthOfCut::from_trade(depth_of_cut),
            ) else {
                return Err(TW_INTERNAL);
            };
            speed::mean_diameter_or_none(diameter, depth_of_cut)
                .map(|found| ([found.trade()], 0))
                .ok_or(TW_CONTRADICTION)
        },
        |[diameter, depth_of_cut]| {
            mean_diameter_of(
                tw_diameter { mm: diameter },
                tw_depth_of_cut { mm: depth_of_cut },
            )
            .err()
        },
    )
}

fn speed_of_step_of(first: tw_spindle_speed, step: u8, place: u8) -> Result<SpindleSpeed, Error> {
    let first = first.named("first")?;

    speed_series::speed_of_step(first, step, place)
}

/// A spindle speed of a geometric series: first times tw_step_ratio to the power place, so that
/// place 0 is the first speed itself. Exact values; the plate of a machine carries rounded ones.
///
/// step is 1 for the series R20 to 6 for R20/6, place 0 to 255 (TW_OUT_OF_RANGE). A speed beyond
/// the range of tw_spindle_speed is refused (TW_OUT_OF_RANGE).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 3 with ISO 229, from memory.
/// Example: tw_speed_of_step(tw_spindle_speed_revolution_per_minute(45), 3, 11, &spindle_speed,
///     NULL); spindle_speed.rpm is 2010.08.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_speed_of_step(
    first: tw_spindle_speed,
    step: i32,
    place: i32,
    spindle_speed: *mut tw_spindle_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !spindle_speed.is_null(),
        || {
            let step = step_of(step)?;
            let place = place_of(place)?;
            Ok(tw_spindle_speed::from(speed_of_step_of(
                first, step, place,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(spindle_speed, answer) },
    )
}

/// tw_speed_of_step for every row.
///
/// Columns, see the first page: first is read, spindle_speed is written. step is one number for
/// all rows; one that is refused fails the whole call. place is one number for all rows; one that
/// is refused fails the whole call. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_speed_of_step_column(
    first: *const tw_column,
    step: i32,
    place: i32,
    spindle_speed: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<SpindleSpeed>("first", first),),
        outputs: [Output::of::<SpindleSpeed>("spindle_speed", spindle_speed)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok((step_of(step)?, place_of(place)?))) {
        Err(failure) => job.refuse(detail, failure),
        Ok((step, place)) => job.run_checked(detail, |[first]| {
            let found = speed_of_step_of(tw_spindle_speed { rpm: first }, step, place)?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn handwheel_rate(
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    travel_per_turn: tw_travel,
) -> Result<HandwheelRate, Error> {
    speed::handwheel_rate(
        feed.read()?,
        spindle_speed.read()?,
        travel_per_turn.named("travel_per_turn")?,
    )
}

/// How fast a hand turns the wheel of a slide for a feed: feed times spindle speed over the travel of
/// one turn. Below about 6 turns a minute no hand is steady.
///
/// A travel of zero is refused (TW_CONTRADICTION). detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_handwheel_rate(tw_feed_millimeter_per_revolution(0.08),
///     tw_spindle_speed_revolution_per_minute(500), tw_travel_millimeter(16), &handwheel, NULL);
///     handwheel.turns_per_min is 2.500.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_handwheel_rate(
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    travel_per_turn: tw_travel,
    handwheel: *mut tw_handwheel,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !handwheel.is_null(),
        || {
            let found = handwheel_rate(feed, spindle_speed, travel_per_turn)?;
            Ok(tw_handwheel::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(handwheel, answer) },
    )
}

/// tw_handwheel_rate for every row.
///
/// Columns, see the first page: feed, spindle_speed, travel_per_turn are read,
/// handwheel is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_handwheel_rate_column(
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    travel_per_turn: *const tw_column,
    handwheel: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<Travel>("travel_per_turn", travel_per_turn),
        ),
        outputs: [Output::of::<HandwheelRate>("handwheel", handwheel)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[feed, spindle_speed, travel_per_turn]| {
        let found = handwheel_rate(
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
            tw_travel {
                mm: travel_per_turn,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}
