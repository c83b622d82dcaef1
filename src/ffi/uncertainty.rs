//! Standard, combined and expanded uncertainty, and coverage factors (JCGM 100).

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{Failure, tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::budget::{self, Budget, Component};
use crate::quantity::{
    Confidence, CoverageFactor, DegreesOfFreedom, HalfWidth, Quantity, Resolution, SizeUncertainty,
    StandardUncertainty,
};

fn coverage_factor_of(
    degrees_of_freedom: tw_degrees_of_freedom,
    confidence: tw_confidence,
) -> Result<CoverageFactor, Error> {
    let nu = degrees_of_freedom.read()?;
    Ok(budget::coverage_factor(Some(nu), confidence.read()?))
}

/// The coverage factor for a level of confidence: Student's t for the degrees of freedom, which need
/// not be whole (JCGM 100, G.3). For infinitely many pass the largest number of them, 1e12.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: JCGM 100:2008, G.3 and table G.2 (from memory).
/// Example: tw_coverage_factor_for(tw_degrees_of_freedom_one(8.3), tw_confidence_one(0.9545),
///     &coverage_factor, NULL); coverage_factor.ratio is 2.35108.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_coverage_factor_for(
    degrees_of_freedom: tw_degrees_of_freedom,
    confidence: tw_confidence,
    coverage_factor: *mut tw_coverage_factor,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !coverage_factor.is_null(),
        || {
            let k = coverage_factor_of(degrees_of_freedom, confidence)?;
            Ok(tw_coverage_factor::from(k))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(coverage_factor, answer) },
    )
}

/// tw_coverage_factor_for for every row.
///
/// Columns, see the first page: degrees_of_freedom and confidence are read, coverage_factor is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least
/// 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_coverage_factor_for_column(
    degrees_of_freedom: *const tw_column,
    confidence: *const tw_column,
    coverage_factor: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<DegreesOfFreedom>("degrees_of_freedom", degrees_of_freedom),
            Input::of::<Confidence>("confidence", confidence),
        ),
        outputs: [Output::of::<CoverageFactor>(
            "coverage_factor",
            coverage_factor,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[nu, p]| {
        let k = coverage_factor_of(
            tw_degrees_of_freedom { ratio: nu },
            tw_confidence { ratio: p },
        )?;
        Ok(([k.trade()], 0))
    })
}

/// The combined standard uncertainty of count independent contributions, each with its sensitivity
/// in it already (JCGM 100, 5.1.2), and the effective degrees of freedom (G.4.1).
///
/// contributions points to count of them. degrees_of_freedom may be NULL: infinitely many for each;
/// else count numbers, of which an infinite one stands for infinitely many. effective is infinite
/// where all are. An output may be NULL unless all are. detail may be NULL. After a failure the
/// outputs are NaN.
///
/// Source: JCGM 100:2008, 5.1.2 and G.4.1, Welch and Satterthwaite (from memory).
/// Example: tw_combined_uncertainty((tw_standard_uncertainty[]){{0.0025}, {0.00097}, {0.00029},
///     {0.00166}}, (tw_degrees_of_freedom[]){{18}, {25.6}, {50}, {2}}, 4, &combined, &effective,
///     NULL); tw_standard_uncertainty_as_micrometer(combined) is 3.16711 and
///     effective.ratio is 16.7646.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_combined_uncertainty(
    contributions: *const tw_standard_uncertainty,
    degrees_of_freedom: *const tw_degrees_of_freedom,
    count: usize,
    combined: *mut tw_standard_uncertainty,
    effective: *mut tw_degrees_of_freedom,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(combined.is_null() && effective.is_null()),
        || {
            if contributions.is_null() && count > 0 {
                return Err(Failure::null("contributions"));
            }
            let mut components = Vec::new();
            for i in 0..count {
                // SAFETY: not NULL, and count of them may be read (contract of the header).
                let u = unsafe { contributions.add(i).read_unaligned() };
                let at = |unsaid| Error::from(unsaid).at(&format!("contributions[{i}]"));
                let mut component = Component::standard(i.to_string(), u.read().map_err(at)?);
                if !degrees_of_freedom.is_null() {
                    // SAFETY: the same.
                    let nu = unsafe { degrees_of_freedom.add(i).read_unaligned() };
                    if nu.ratio != f64::INFINITY {
                        let at =
                            |unsaid| Error::from(unsaid).at(&format!("degrees_of_freedom[{i}]"));
                        component = component.with_degrees_of_freedom(nu.read().map_err(at)?);
                    }
                }
                components.push(component);
            }
            let budget = Budget::new(components).map_err(|error| error.at("contributions"))?;
            let infinite = tw_degrees_of_freedom {
                ratio: f64::INFINITY,
            };
            Ok((
                tw_standard_uncertainty::from(budget.combined()),
                budget
                    .degrees_of_freedom()
                    .map_or(infinite, tw_degrees_of_freedom::from),
            ))
        },
        |(combined_is, effective_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(combined, combined_is);
                put(effective, effective_is);
            }
        },
    )
}

/// How a value lies within its ends. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_distribution {
    /// Anywhere alike.
    TW_DISTRIBUTION_UNIFORM = 1,
    /// The middle likeliest.
    TW_DISTRIBUTION_TRIANGULAR = 2,
    /// The ends likeliest, as of a temperature that swings.
    TW_DISTRIBUTION_ARCSINE = 3,
}

fn shape_of(number: i32) -> Result<tw_distribution, Error> {
    use tw_distribution::{
        TW_DISTRIBUTION_ARCSINE, TW_DISTRIBUTION_TRIANGULAR, TW_DISTRIBUTION_UNIFORM,
    };
    [TW_DISTRIBUTION_UNIFORM, TW_DISTRIBUTION_TRIANGULAR, TW_DISTRIBUTION_ARCSINE]
        .into_iter()
        .find(|known| *known as i32 == number)
        .ok_or_else(|| {
            Error::new(
                ErrorKind::UnknownName,
                "distribution",
                number.to_string(),
                "TW_DISTRIBUTION_UNIFORM (1), TW_DISTRIBUTION_TRIANGULAR (2) or TW_DISTRIBUTION_ARCSINE (3)",
                "pass one of the names of enum tw_distribution",
            )
        })
}

fn component(half_width: HalfWidth, distribution: tw_distribution) -> Component {
    match distribution {
        tw_distribution::TW_DISTRIBUTION_UNIFORM => Component::uniform("half_width", half_width),
        tw_distribution::TW_DISTRIBUTION_TRIANGULAR => {
            Component::triangular("half_width", half_width)
        }
        tw_distribution::TW_DISTRIBUTION_ARCSINE => Component::arcsine("half_width", half_width),
    }
}

fn expanded_uncertainty_of(
    standard_uncertainty: tw_standard_uncertainty,
    coverage_factor: tw_coverage_factor,
) -> Result<SizeUncertainty, Error> {
    let standard_uncertainty = standard_uncertainty.read()?;
    let coverage_factor = coverage_factor.read()?;

    Ok(budget::expanded(standard_uncertainty, coverage_factor))
}

/// The expanded uncertainty: coverage_factor times standard_uncertainty. For the factor see
/// tw_coverage_factor_for.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: JCGM 100:2008, 6.2.1 (from memory).
/// Example: tw_expanded_uncertainty(tw_standard_uncertainty_micrometer(7.81025),
///     tw_coverage_factor_one(2), &expanded, NULL);
///     tw_instrument_uncertainty_as_micrometer(expanded) is 15.6205.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_expanded_uncertainty(
    standard_uncertainty: tw_standard_uncertainty,
    coverage_factor: tw_coverage_factor,
    expanded: *mut tw_instrument_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !expanded.is_null(),
        || {
            Ok(tw_instrument_uncertainty::from(expanded_uncertainty_of(
                standard_uncertainty,
                coverage_factor,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(expanded, answer) },
    )
}

/// tw_expanded_uncertainty for every row.
///
/// Columns, see the first page: standard_uncertainty and coverage_factor are read, expanded is
/// written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at
/// least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_expanded_uncertainty_column(
    standard_uncertainty: *const tw_column,
    coverage_factor: *const tw_column,
    expanded: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
            Input::of::<CoverageFactor>("coverage_factor", coverage_factor),
        ),
        outputs: [Output::of::<SizeUncertainty>("expanded", expanded)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[standard_uncertainty, coverage_factor]| {
        let found = expanded_uncertainty_of(
            tw_standard_uncertainty {
                mm: standard_uncertainty,
            },
            tw_coverage_factor {
                ratio: coverage_factor,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn standard_uncertainty_of_of(
    half_width: tw_half_width,
    distribution: tw_distribution,
) -> Result<StandardUncertainty, Error> {
    let half_width = half_width.read()?;

    Ok(component(half_width, distribution).standard_uncertainty())
}

/// The standard uncertainty of a distribution that has ends, from half its width: a/sqrt(3)
/// anywhere alike, a/sqrt(6) with the middle likeliest, a/sqrt(2) with the ends likeliest.
/// distribution is a number of enum tw_distribution.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: JCGM 100:2008, 4.2 and 4.3 (from memory).
/// Example: tw_standard_uncertainty_of(tw_half_width_micrometer(10), TW_DISTRIBUTION_UNIFORM,
///     &standard_uncertainty, NULL);
///     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 5.77350.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_uncertainty_of(
    half_width: tw_half_width,
    distribution: i32,
    standard_uncertainty: *mut tw_standard_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !standard_uncertainty.is_null(),
        || {
            let distribution = shape_of(distribution)?;
            Ok(tw_standard_uncertainty::from(standard_uncertainty_of_of(
                half_width,
                distribution,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(standard_uncertainty, answer) },
    )
}

/// tw_standard_uncertainty_of for every row.
///
/// Columns, see the first page: half_width is read, standard_uncertainty is written. distribution
/// is one number for all rows; one that is refused fails the whole call. row_status may be NULL;
/// else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_uncertainty_of_column(
    half_width: *const tw_column,
    distribution: i32,
    standard_uncertainty: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<HalfWidth>("half_width", half_width),),
        outputs: [Output::of::<StandardUncertainty>(
            "standard_uncertainty",
            standard_uncertainty,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(shape_of(distribution)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(distribution) => job.run_checked(detail, |[half_width]| {
            let found = standard_uncertainty_of_of(tw_half_width { mm: half_width }, distribution)?;
            Ok(([found.trade()], 0))
        }),
    }
}

fn standard_uncertainty_of_resolution_of(
    resolution: tw_resolution,
) -> Result<StandardUncertainty, Error> {
    let resolution = resolution.read()?;

    Ok(Component::resolution("resolution", resolution).standard_uncertainty())
}

/// The standard uncertainty of the step that a scale or a display shows: resolution/sqrt(12).
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: JCGM 100:2008, 4.2 and 4.3 (from memory).
/// Example: tw_standard_uncertainty_of_resolution(tw_resolution_micrometer(10),
///     &standard_uncertainty, NULL);
///     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 2.88675.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_uncertainty_of_resolution(
    resolution: tw_resolution,
    standard_uncertainty: *mut tw_standard_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !standard_uncertainty.is_null(),
        || {
            Ok(tw_standard_uncertainty::from(
                standard_uncertainty_of_resolution_of(resolution)?,
            ))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(standard_uncertainty, answer) },
    )
}

/// tw_standard_uncertainty_of_resolution for every row.
///
/// Columns, see the first page: resolution is read, standard_uncertainty is written. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_standard_uncertainty_of_resolution_column(
    resolution: *const tw_column,
    standard_uncertainty: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<Resolution>("resolution", resolution),),
        outputs: [Output::of::<StandardUncertainty>(
            "standard_uncertainty",
            standard_uncertainty,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[resolution]| {
        let found = standard_uncertainty_of_resolution_of(tw_resolution { mm: resolution })?;
        Ok(([found.trade()], 0))
    })
}
