//! Faces, and the height of the tool.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::facing::{self, FacingPace, SlowBelow};
use crate::physics::tool_height;
use crate::quantity::{
    CuttingSpeed, Diameter, DiameterError, Duration, Feed, Quantity, SpindleSpeed, ToolHeight,
    Travel,
};

fn facing_time_of(
    diameter: tw_diameter,
    bore: tw_diameter,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
) -> Result<Duration, Error> {
    // In the order of the arguments, so that of two bad values the first is told, as in a column.
    let (outside, bore, feed) = (diameter.read()?, bore.named("bore")?, feed.read()?);
    let pace = FacingPace::SpindleSpeed(spindle_speed.read()?);
    facing::time(pace, outside, Some(bore), feed)
}

/// How long facing takes from the outside to a bore at one spindle speed: (diameter - bore)/2 /
/// (feed times speed). For a solid face see tw_facing_time_to_middle.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived: the radius falls by feed times spindle speed.
/// Example: tw_facing_time(tw_diameter_millimeter(80), tw_diameter_millimeter(20),
///     tw_feed_millimeter_per_revolution(0.1), tw_spindle_speed_revolution_per_minute(500), &time,
///     NULL); time.s is 36.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_facing_time(
    diameter: tw_diameter,
    bore: tw_diameter,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    time: *mut tw_time,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !time.is_null(),
        || {
            Ok(tw_time::from(facing_time_of(
                diameter,
                bore,
                feed,
                spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(time, answer) },
    )
}

/// tw_facing_time for every row.
///
/// Columns, see the first page: diameter, bore, feed and spindle_speed are read, time is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_facing_time_column(
    diameter: *const tw_column,
    bore: *const tw_column,
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    time: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Diameter>("bore", bore),
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<Duration>("time", time)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[diameter, bore, feed, spindle_speed]| {
        let found = facing_time_of(
            tw_diameter { mm: diameter },
            tw_diameter { mm: bore },
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn facing_time_to_middle_of(
    diameter: tw_diameter,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
) -> Result<Duration, Error> {
    let (outside, feed) = (diameter.read()?, feed.read()?);
    let pace = FacingPace::SpindleSpeed(spindle_speed.read()?);
    facing::time(pace, outside, None, feed)
}

/// How long facing takes from the outside to the middle at one spindle speed.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived: the radius falls by feed times spindle speed.
/// Example: tw_facing_time_to_middle(tw_diameter_millimeter(80),
///     tw_feed_millimeter_per_revolution(0.1), tw_spindle_speed_revolution_per_minute(500), &time,
///     NULL); time.s is 48.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_facing_time_to_middle(
    diameter: tw_diameter,
    feed: tw_feed,
    spindle_speed: tw_spindle_speed,
    time: *mut tw_time,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !time.is_null(),
        || {
            Ok(tw_time::from(facing_time_to_middle_of(
                diameter,
                feed,
                spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(time, answer) },
    )
}

/// tw_facing_time_to_middle for every row.
///
/// Columns, see the first page: diameter, feed and spindle_speed are read, time is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_facing_time_to_middle_column(
    diameter: *const tw_column,
    feed: *const tw_column,
    spindle_speed: *const tw_column,
    time: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Feed>("feed", feed),
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
        ),
        outputs: [Output::of::<Duration>("time", time)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[diameter, feed, spindle_speed]| {
        let found = facing_time_to_middle_of(
            tw_diameter { mm: diameter },
            tw_feed { mm_per_rev: feed },
            tw_spindle_speed { rpm: spindle_speed },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn facing_time_at_surface_speed_of(
    diameter: tw_diameter,
    bore: tw_diameter,
    feed: tw_feed,
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
) -> Result<Duration, Error> {
    let (outside, bore, feed) = (diameter.read()?, bore.named("bore")?, feed.read()?);
    let pace = FacingPace::SurfaceSpeed {
        cutting_speed: cutting_speed.read()?,
        highest: Some(max_spindle_speed.named("max_spindle_speed")?),
    };
    facing::time(pace, outside, Some(bore), feed)
}

/// How long facing takes from the outside to a bore at one cutting speed, the spindle speeding up
/// as the tool moves in until it reaches max_spindle_speed. That limit must not be above the speed
/// marked on the chuck.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived: the radius falls by feed times spindle speed.
/// Example: tw_facing_time_at_surface_speed(tw_diameter_inch(4), tw_diameter_inch(1),
///     tw_feed_inch_per_revolution(0.008), tw_cutting_speed_foot_per_minute(400),
///     tw_spindle_speed_revolution_per_minute(2000), &time, NULL); time.s is 18.4078.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_facing_time_at_surface_speed(
    diameter: tw_diameter,
    bore: tw_diameter,
    feed: tw_feed,
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
    time: *mut tw_time,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !time.is_null(),
        || {
            Ok(tw_time::from(facing_time_at_surface_speed_of(
                diameter,
                bore,
                feed,
                cutting_speed,
                max_spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(time, answer) },
    )
}

/// tw_facing_time_at_surface_speed for every row.
///
/// Columns, see the first page: diameter, bore, feed, cutting_speed and max_spindle_speed are read,
/// time is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart
/// (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_facing_time_at_surface_speed_column(
    diameter: *const tw_column,
    bore: *const tw_column,
    feed: *const tw_column,
    cutting_speed: *const tw_column,
    max_spindle_speed: *const tw_column,
    time: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Diameter>("bore", bore),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<SpindleSpeed>("max_spindle_speed", max_spindle_speed),
        ),
        outputs: [Output::of::<Duration>("time", time)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[diameter, bore, feed, cutting_speed, max_spindle_speed]| {
            let found = facing_time_at_surface_speed_of(
                tw_diameter { mm: diameter },
                tw_diameter { mm: bore },
                tw_feed { mm_per_rev: feed },
                tw_cutting_speed {
                    m_per_min: cutting_speed,
                },
                tw_spindle_speed {
                    rpm: max_spindle_speed,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn facing_time_to_middle_at_surface_speed_of(
    diameter: tw_diameter,
    feed: tw_feed,
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
) -> Result<Duration, Error> {
    let (outside, feed) = (diameter.read()?, feed.read()?);
    let pace = FacingPace::SurfaceSpeed {
        cutting_speed: cutting_speed.read()?,
        highest: Some(max_spindle_speed.named("max_spindle_speed")?),
    };
    facing::time(pace, outside, None, feed)
}

/// How long facing takes from the outside to the middle at one cutting speed; see
/// tw_facing_time_at_surface_speed.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: derived: the radius falls by feed times spindle speed.
/// Example: tw_facing_time_to_middle_at_surface_speed(tw_diameter_millimeter(120),
///     tw_feed_millimeter_per_revolution(0.2), tw_cutting_speed_meter_per_minute(150),
///     tw_spindle_speed_revolution_per_minute(2000), &time, NULL); time.s is 23.5147.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_facing_time_to_middle_at_surface_speed(
    diameter: tw_diameter,
    feed: tw_feed,
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
    time: *mut tw_time,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !time.is_null(),
        || {
            Ok(tw_time::from(facing_time_to_middle_at_surface_speed_of(
                diameter,
                feed,
                cutting_speed,
                max_spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(time, answer) },
    )
}

/// tw_facing_time_to_middle_at_surface_speed for every row.
///
/// Columns, see the first page: diameter, feed, cutting_speed and max_spindle_speed are read, time
/// is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_facing_time_to_middle_at_surface_speed_column(
    diameter: *const tw_column,
    feed: *const tw_column,
    cutting_speed: *const tw_column,
    max_spindle_speed: *const tw_column,
    time: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<Feed>("feed", feed),
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<SpindleSpeed>("max_spindle_speed", max_spindle_speed),
        ),
        outputs: [Output::of::<Duration>("time", time)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[diameter, feed, cutting_speed, max_spindle_speed]| {
            let found = facing_time_to_middle_at_surface_speed_of(
                tw_diameter { mm: diameter },
                tw_feed { mm_per_rev: feed },
                tw_cutting_speed {
                    m_per_min: cutting_speed,
                },
                tw_spindle_speed {
                    rpm: max_spindle_speed,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn tool_height_error_of(
    zeroed_at: tw_diameter,
    moved_in: tw_travel,
    tool_height: tw_tool_height,
) -> Result<DiameterError, Error> {
    tool_height::diameter_error(
        zeroed_at.named("zeroed_at")?,
        moved_in.named("moved_in")?,
        tool_height.read()?,
    )
}

/// By how much a diameter comes out too large because the tip stands tool_height above or below the
/// axis: the dial was zeroed at zeroed_at, and the slide moved in since by moved_in, on the radius.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_tool_height_error(tw_diameter_millimeter(40), tw_travel_millimeter(15),
///     tw_tool_height_millimeter(1), &diameter_error, NULL); diameter_error.mm is 0.148984.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tool_height_error(
    zeroed_at: tw_diameter,
    moved_in: tw_travel,
    tool_height: tw_tool_height,
    diameter_error: *mut tw_diameter_error,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter_error.is_null(),
        || {
            Ok(tw_diameter_error::from(tool_height_error_of(
                zeroed_at,
                moved_in,
                tool_height,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter_error, answer) },
    )
}

/// tw_tool_height_error for every row.
///
/// Columns, see the first page: zeroed_at, moved_in and tool_height are read, diameter_error is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_tool_height_error_column(
    zeroed_at: *const tw_column,
    moved_in: *const tw_column,
    tool_height: *const tw_column,
    diameter_error: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("zeroed_at", zeroed_at),
            Input::of::<Travel>("moved_in", moved_in),
            Input::of::<ToolHeight>("tool_height", tool_height),
        ),
        outputs: [Output::of::<DiameterError>(
            "diameter_error",
            diameter_error,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[zeroed_at, moved_in, tool_height]| {
        let found = tool_height_error_of(
            tw_diameter { mm: zeroed_at },
            tw_travel { mm: moved_in },
            tw_tool_height { mm: tool_height },
        )?;
        Ok(([found.trade()], 0))
    })
}

#[cold]
fn no_limit() -> Error {
    Error::internal("a limit of the spindle that was given and is not there")
}

fn speed_in_facing_of(
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
    diameter: tw_diameter,
) -> Result<(SpindleSpeed, CuttingSpeed), Error> {
    let cutting_speed = cutting_speed.read()?;
    let max_spindle_speed = max_spindle_speed.named("max_spindle_speed")?;
    let diameter = diameter.read()?;
    let pace = FacingPace::SurfaceSpeed {
        cutting_speed,
        highest: Some(max_spindle_speed),
    };
    let found = facing::spindle_speed_at(pace, diameter);
    Ok((found, facing::cutting_speed_at(pace, diameter)))
}

/// Spindle speed and cutting speed while a tool that faces at one cutting speed stands at a
/// diameter: the spindle runs faster as the tool moves in, up to max_spindle_speed; from there
/// the cutting speed falls.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: definition of the cutting speed, ISO 3002-1 (from memory).
/// Example: tw_speed_in_facing(tw_cutting_speed_meter_per_minute(150),
///     tw_spindle_speed_revolution_per_minute(2000), tw_diameter_millimeter(120), &spindle_speed,
///     &speed_there, NULL); spindle_speed.rpm is 397.887 and speed_there.m_per_min is 150.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_speed_in_facing(
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
    diameter: tw_diameter,
    spindle_speed: *mut tw_spindle_speed,
    speed_there: *mut tw_cutting_speed,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(spindle_speed.is_null() && speed_there.is_null()),
        || {
            let (spindle_speed_is, speed_there_is) =
                speed_in_facing_of(cutting_speed, max_spindle_speed, diameter)?;
            Ok((
                tw_spindle_speed::from(spindle_speed_is),
                tw_cutting_speed::from(speed_there_is),
            ))
        },
        |(spindle_speed_is, speed_there_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(spindle_speed, spindle_speed_is);
                put(speed_there, speed_there_is);
            }
        },
    )
}

/// tw_speed_in_facing for every row.
///
/// Columns, see the first page: cutting_speed, max_spindle_speed and diameter are read,
/// spindle_speed and speed_there are written, each may be NULL unless both are. row_status may be
/// NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_speed_in_facing_column(
    cutting_speed: *const tw_column,
    max_spindle_speed: *const tw_column,
    diameter: *const tw_column,
    spindle_speed: *const tw_out_column,
    speed_there: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<SpindleSpeed>("max_spindle_speed", max_spindle_speed),
            Input::of::<Diameter>("diameter", diameter),
        ),
        outputs: [
            Output::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Output::of::<CuttingSpeed>("speed_there", speed_there),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cutting_speed, max_spindle_speed, diameter]| {
        let (spindle_speed, speed_there) = speed_in_facing_of(
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
            tw_spindle_speed {
                rpm: max_spindle_speed,
            },
            tw_diameter { mm: diameter },
        )?;
        Ok(([spindle_speed.trade(), speed_there.trade()], 0))
    })
}

fn full_speed_below_of(
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
) -> Result<Diameter, Error> {
    let cutting_speed = cutting_speed.read()?;
    let max_spindle_speed = max_spindle_speed.named("max_spindle_speed")?;
    let pace = FacingPace::SurfaceSpeed {
        cutting_speed,
        highest: Some(max_spindle_speed),
    };
    facing::full_speed_below(pace).ok_or_else(no_limit)
}

/// The diameter below which the limit of the spindle holds while facing at one cutting speed:
/// cutting_speed / (pi max_spindle_speed). From there to the middle the cutting speed falls.
/// Where it lies outside of the work, the limit holds all the way.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the cutting speed.
/// Example: tw_full_speed_below(tw_cutting_speed_meter_per_minute(150),
///     tw_spindle_speed_revolution_per_minute(2000), &diameter, NULL); diameter.mm is 23.8732.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_full_speed_below(
    cutting_speed: tw_cutting_speed,
    max_spindle_speed: tw_spindle_speed,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || {
            Ok(tw_diameter::from(full_speed_below_of(
                cutting_speed,
                max_spindle_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_full_speed_below for every row.
///
/// Columns, see the first page: cutting_speed and max_spindle_speed are read, diameter is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_full_speed_below_column(
    cutting_speed: *const tw_column,
    max_spindle_speed: *const tw_column,
    diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<CuttingSpeed>("cutting_speed", cutting_speed),
            Input::of::<SpindleSpeed>("max_spindle_speed", max_spindle_speed),
        ),
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[cutting_speed, max_spindle_speed]| {
        let found = full_speed_below_of(
            tw_cutting_speed {
                m_per_min: cutting_speed,
            },
            tw_spindle_speed {
                rpm: max_spindle_speed,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn slow_below_of(
    spindle_speed: tw_spindle_speed,
    least_cutting_speed: tw_cutting_speed,
) -> Result<Diameter, Error> {
    let spindle_speed = spindle_speed.read()?;
    let least_cutting_speed = least_cutting_speed.named("least_cutting_speed")?;

    match facing::slow_below(FacingPace::SpindleSpeed(spindle_speed), least_cutting_speed) {
        SlowBelow::Diameter(diameter) => Ok(diameter),
        _ => Err(no_limit()),
    }
}

/// The diameter below which a face turned at one spindle speed falls short of a least cutting
/// speed: least_cutting_speed / (pi spindle_speed). At one cutting speed, held above the least up
/// to the limit of the spindle, pass that limit.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: definition of the cutting speed.
/// Example: tw_slow_below(tw_spindle_speed_revolution_per_minute(500),
///     tw_cutting_speed_meter_per_minute(20), &diameter, NULL); diameter.mm is 12.7324.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_slow_below(
    spindle_speed: tw_spindle_speed,
    least_cutting_speed: tw_cutting_speed,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || {
            Ok(tw_diameter::from(slow_below_of(
                spindle_speed,
                least_cutting_speed,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_slow_below for every row.
///
/// Columns, see the first page: spindle_speed and least_cutting_speed are read, diameter is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_slow_below_column(
    spindle_speed: *const tw_column,
    least_cutting_speed: *const tw_column,
    diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<SpindleSpeed>("spindle_speed", spindle_speed),
            Input::of::<CuttingSpeed>("least_cutting_speed", least_cutting_speed),
        ),
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[spindle_speed, least_cutting_speed]| {
        let found = slow_below_of(
            tw_spindle_speed { rpm: spindle_speed },
            tw_cutting_speed {
                m_per_min: least_cutting_speed,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}
