//! A tool off centre height, and one that gives way.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::Error;
use crate::physics::{facing, tool_height, tool_overhang};
use crate::quantity::{
    Deflection, Diameter, DiameterError, MainForce, Overhang, PassiveForce, Quantity, RakeAngle,
    ShankSize, ToolHeight, Travel, YoungsModulus,
};

/// At centre height no pip is left.
const NO_PIP: Diameter = Diameter::computed_trade(0.0);

fn turned_diameter_of(
    zeroed_at: tw_diameter,
    moved_in: tw_travel,
    tool_height: tw_tool_height,
) -> Result<Diameter, Error> {
    let zeroed_at = zeroed_at.named("zeroed_at")?;
    let moved_in = moved_in.named("moved_in")?;
    let tool_height = tool_height.read()?;

    tool_height::turned_diameter(zeroed_at, moved_in, tool_height)
}

/// The diameter that a tool off centre height really turns, zeroed at one diameter and moved in
/// on the radius: twice the root of (sqrt(R_0^2 - e^2) - moved_in)^2 + e^2, R_0 the radius there and e
/// the height. Above or below the axis alike. Refused (TW_CONTRADICTION): a tip that passes above
/// or below the work, and a move past the axis. For the error alone see tw_tool_height_error.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: the tip moves level, at its height from the axis.
/// Example: tw_turned_diameter(tw_diameter_millimeter(40), tw_travel_millimeter(15),
///     tw_tool_height_millimeter(1), &diameter, NULL); diameter.mm is 10.1490.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_turned_diameter(
    zeroed_at: tw_diameter,
    moved_in: tw_travel,
    tool_height: tw_tool_height,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || {
            Ok(tw_diameter::from(turned_diameter_of(
                zeroed_at,
                moved_in,
                tool_height,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_turned_diameter for every row.
///
/// Columns, see the first page: zeroed_at, moved_in and tool_height are read, diameter is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_turned_diameter_column(
    zeroed_at: *const tw_column,
    moved_in: *const tw_column,
    tool_height: *const tw_column,
    diameter: *const tw_out_column,
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
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[zeroed_at, moved_in, tool_height]| {
        let found = turned_diameter_of(
            tw_diameter { mm: zeroed_at },
            tw_travel { mm: moved_in },
            tw_tool_height { mm: tool_height },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn taper_error_of(
    large: tw_diameter,
    small: tw_diameter,
    tool_height: tw_tool_height,
) -> Result<DiameterError, Error> {
    let large = large.named("large")?;
    let small = small.named("small")?;
    let tool_height = tool_height.read()?;

    tool_height::taper_error(large, small, tool_height)
}

/// The error of the small end of a taper turned off centre height, its large end being right.
/// What lies between is hollow. Refused (TW_CONTRADICTION): a small end larger than the large
/// one, and a tip that passes above or below the work.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry, as tw_turned_diameter.
/// Example: tw_taper_error(tw_diameter_millimeter(40), tw_diameter_millimeter(10),
///     tw_tool_height_millimeter(1), &diameter_error, NULL); diameter_error.mm is 0.148984.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_error(
    large: tw_diameter,
    small: tw_diameter,
    tool_height: tw_tool_height,
    diameter_error: *mut tw_diameter_error,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter_error.is_null(),
        || {
            Ok(tw_diameter_error::from(taper_error_of(
                large,
                small,
                tool_height,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter_error, answer) },
    )
}

/// tw_taper_error for every row.
///
/// Columns, see the first page: large, small and tool_height are read, diameter_error is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_taper_error_column(
    large: *const tw_column,
    small: *const tw_column,
    tool_height: *const tw_column,
    diameter_error: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("large", large),
            Input::of::<Diameter>("small", small),
            Input::of::<ToolHeight>("tool_height", tool_height),
        ),
        outputs: [Output::of::<DiameterError>(
            "diameter_error",
            diameter_error,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[large, small, tool_height]| {
        let found = taper_error_of(
            tw_diameter { mm: large },
            tw_diameter { mm: small },
            tw_tool_height { mm: tool_height },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn rake_change_of(diameter: tw_diameter, tool_height: tw_tool_height) -> Result<RakeAngle, Error> {
    let diameter = diameter.read()?;
    let tool_height = tool_height.read()?;

    tool_height::rake_change(diameter, tool_height)
}

/// By how much the working rake grows because of the height of the tool, and the clearance falls:
/// asin(tool_height / radius). Turning outside; in a bore it is the other way round. A tip that
/// passes above or below the work is refused (TW_CONTRADICTION).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry.
/// Example: tw_rake_change(tw_diameter_millimeter(10), tw_tool_height_millimeter(0.5), &rake_angle,
///     NULL); rake_angle.deg is 5.73917.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rake_change(
    diameter: tw_diameter,
    tool_height: tw_tool_height,
    rake_angle: *mut tw_rake_angle,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !rake_angle.is_null(),
        || Ok(tw_rake_angle::from(rake_change_of(diameter, tool_height)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(rake_angle, answer) },
    )
}

/// tw_rake_change for every row.
///
/// Columns, see the first page: diameter and tool_height are read, rake_angle is written.
/// row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_rake_change_column(
    diameter: *const tw_column,
    tool_height: *const tw_column,
    rake_angle: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("diameter", diameter),
            Input::of::<ToolHeight>("tool_height", tool_height),
        ),
        outputs: [Output::of::<RakeAngle>("rake_angle", rake_angle)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[diameter, tool_height]| {
        let found = rake_change_of(
            tw_diameter { mm: diameter },
            tw_tool_height { mm: tool_height },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn pip_diameter_of(tool_height: tw_tool_height) -> Result<Diameter, Error> {
    let tool_height = tool_height.read()?;

    let found = facing::pip_diameter(tool_height);
    Ok(found.unwrap_or(NO_PIP))
}

/// The diameter of the pip that a tool off centre height leaves in the middle of a face: twice
/// the height, 0 at centre height. Below the axis the pip stands as a stub; above, the flank rubs
/// it and the edge may chip.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: geometry: the tip passes the axis at that distance.
/// Example: tw_pip_diameter(tw_tool_height_millimeter(-0.3), &diameter, NULL);
///     diameter.mm is 0.6000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_pip_diameter(
    tool_height: tw_tool_height,
    diameter: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !diameter.is_null(),
        || Ok(tw_diameter::from(pip_diameter_of(tool_height)?)),
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(diameter, answer) },
    )
}

/// tw_pip_diameter for every row.
///
/// Columns, see the first page: tool_height is read, diameter is written. row_status may be NULL;
/// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_pip_diameter_column(
    tool_height: *const tw_column,
    diameter: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<ToolHeight>("tool_height", tool_height),),
        outputs: [Output::of::<Diameter>("diameter", diameter)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[tool_height]| {
        let found = pip_diameter_of(tw_tool_height { mm: tool_height })?;
        Ok(([found.trade()], 0))
    })
}

fn shank_deflection_of(
    main_force: tw_main_force,
    overhang: tw_overhang,
    shank_width: tw_shank_size,
    shank_height: tw_shank_size,
    youngs_modulus: tw_youngs_modulus,
) -> Result<Deflection, Error> {
    let main_force = main_force.read()?;
    let overhang = overhang.read()?;
    let shank_width = shank_width.named("shank_width")?;
    let shank_height = shank_height.named("shank_height")?;
    let youngs_modulus = youngs_modulus.read()?;

    Ok(tool_overhang::shank_deflection(
        main_force,
        overhang,
        shank_width,
        shank_height,
        youngs_modulus,
    ))
}

/// How far the tip of a tool with a rectangular shank sinks under the main force: 4 F l^3 / (E b
/// h^3), l the overhang, b and h width and height of the shank. Clamped rigidly: the clamping and
/// the slides give way besides, often more.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: cantilever, any strength of materials text (from memory).
/// Example: tw_shank_deflection(tw_main_force_newton(800), tw_overhang_millimeter(30),
///     tw_shank_size_millimeter(16), tw_shank_size_millimeter(16),
///     tw_youngs_modulus_gigapascal(210), &deflection, NULL);
///     tw_deflection_as_micrometer(deflection) is 6.27790.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_shank_deflection(
    main_force: tw_main_force,
    overhang: tw_overhang,
    shank_width: tw_shank_size,
    shank_height: tw_shank_size,
    youngs_modulus: tw_youngs_modulus,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            Ok(tw_deflection::from(shank_deflection_of(
                main_force,
                overhang,
                shank_width,
                shank_height,
                youngs_modulus,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_shank_deflection for every row.
///
/// Columns, see the first page: main_force, overhang, shank_width, shank_height and
/// youngs_modulus are read, deflection is written. row_status may be NULL; else one int32_t a
/// row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_shank_deflection_column(
    main_force: *const tw_column,
    overhang: *const tw_column,
    shank_width: *const tw_column,
    shank_height: *const tw_column,
    youngs_modulus: *const tw_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<MainForce>("main_force", main_force),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<ShankSize>("shank_width", shank_width),
            Input::of::<ShankSize>("shank_height", shank_height),
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[
            main_force,
            overhang,
            shank_width,
            shank_height,
            youngs_modulus,
        ]| {
            let found = shank_deflection_of(
                tw_main_force { n: main_force },
                tw_overhang { mm: overhang },
                tw_shank_size { mm: shank_width },
                tw_shank_size { mm: shank_height },
                tw_youngs_modulus {
                    gpa: youngs_modulus,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}

fn boring_bar_deflection_of(
    passive_force: tw_passive_force,
    overhang: tw_overhang,
    bar_diameter: tw_diameter,
    youngs_modulus: tw_youngs_modulus,
) -> Result<Deflection, Error> {
    let passive_force = passive_force.read()?;
    let overhang = overhang.read()?;
    let bar_diameter = bar_diameter.named("bar_diameter")?;
    let youngs_modulus = youngs_modulus.read()?;

    Ok(tool_overhang::boring_bar_deflection(
        passive_force,
        overhang,
        bar_diameter,
        youngs_modulus,
    ))
}

/// How far the tip of a solid round boring bar is pushed away: 64 F l^3 / (3 pi E d^4).
/// youngs_modulus is that of the bar: about 210 GPa for steel. Clamped rigidly over enough of its
/// length.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: cantilever, any strength of materials text (from memory).
/// Example: tw_boring_bar_deflection(tw_passive_force_newton(200), tw_overhang_millimeter(80),
///     tw_diameter_millimeter(16), tw_youngs_modulus_gigapascal(210), &deflection, NULL);
///     tw_deflection_as_micrometer(deflection) is 50.5254.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_boring_bar_deflection(
    passive_force: tw_passive_force,
    overhang: tw_overhang,
    bar_diameter: tw_diameter,
    youngs_modulus: tw_youngs_modulus,
    deflection: *mut tw_deflection,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !deflection.is_null(),
        || {
            Ok(tw_deflection::from(boring_bar_deflection_of(
                passive_force,
                overhang,
                bar_diameter,
                youngs_modulus,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(deflection, answer) },
    )
}

/// tw_boring_bar_deflection for every row.
///
/// Columns, see the first page: passive_force, overhang, bar_diameter and youngs_modulus are
/// read, deflection is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_boring_bar_deflection_column(
    passive_force: *const tw_column,
    overhang: *const tw_column,
    bar_diameter: *const tw_column,
    youngs_modulus: *const tw_column,
    deflection: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<PassiveForce>("passive_force", passive_force),
            Input::of::<Overhang>("overhang", overhang),
            Input::of::<Diameter>("bar_diameter", bar_diameter),
            Input::of::<YoungsModulus>("youngs_modulus", youngs_modulus),
        ),
        outputs: [Output::of::<Deflection>("deflection", deflection)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(
        detail,
        |[passive_force, overhang, bar_diameter, youngs_modulus]| {
            let found = boring_bar_deflection_of(
                tw_passive_force { n: passive_force },
                tw_overhang { mm: overhang },
                tw_diameter { mm: bar_diameter },
                tw_youngs_modulus {
                    gpa: youngs_modulus,
                },
            )?;
            Ok(([found.trade()], 0))
        },
    )
}
