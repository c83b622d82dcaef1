//! How the sizes of parts come out, where they scatter: shares of good parts, capability.
//!
//! Figures are read before the number of the feature, as a column call looks at its columns first; only
//! `tw_outcome_with_uniform` and its column twin look at the feature before.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::spread::{self, Outcome, SizeSpread};
use crate::quantity::{
    Capability, CapabilityIndex, DegreesOfFreedom, Diameter, HalfWidth, Probability, Quantity,
    StandardUncertainty,
};
use crate::standards::limits::Feature;

/// Which side of a size has the metal. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_feature {
    /// An outside diameter: too large can be cut again, too small is lost.
    TW_FEATURE_SHAFT = 1,
    /// An inside diameter: too small can be cut again, too large is lost.
    TW_FEATURE_HOLE = 2,
}

pub(super) fn feature_of(number: i32) -> Result<Feature, Error> {
    const SHAFT: i32 = tw_feature::TW_FEATURE_SHAFT as i32;
    const HOLE: i32 = tw_feature::TW_FEATURE_HOLE as i32;
    match number {
        SHAFT => Ok(Feature::Shaft),
        HOLE => Ok(Feature::Hole),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "feature",
            other.to_string(),
            "TW_FEATURE_SHAFT (1) or TW_FEATURE_HOLE (2)",
            "pass one of the names of enum tw_feature",
        )),
    }
}

fn outcome_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    feature: i32,
) -> Result<Outcome, Error> {
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let mean = mean.named("mean")?;
    let spread = SizeSpread::normal(standard_uncertainty.read()?);
    let feature = feature_of(feature)?;
    let limits = super::zone(smallest, largest)?;
    Ok(spread::outcome(limits, mean, spread, feature))
}

/// The shares of parts that come out good, with metal left, and lost, where sizes scatter by the
/// normal law about a mean. feature is a number of enum tw_feature.
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
/// unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: JCGM 106:2012, 7 (conformance probability, from memory).
/// Example: tw_outcome(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
///     tw_diameter_millimeter(39.995), tw_standard_uncertainty_micrometer(4), TW_FEATURE_SHAFT,
///     &good, &rework, &scrap, NULL); good.ratio is 0.891370, rework.ratio is 0.105650 and
///     scrap.ratio is 0.00297976.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    feature: i32,
    good: *mut tw_probability,
    rework: *mut tw_probability,
    scrap: *mut tw_probability,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(good.is_null() && rework.is_null() && scrap.is_null()),
        || {
            let found = outcome_of(smallest, largest, mean, standard_uncertainty, feature)?;
            Ok((
                tw_probability::from(found.good),
                tw_probability::from(found.rework),
                tw_probability::from(found.scrap),
            ))
        },
        |(good_is, rework_is, scrap_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(good, good_is);
                put(rework, rework_is);
                put(scrap, scrap_is);
            }
        },
    )
}

/// tw_outcome for every row.
///
/// Columns, see the first page: smallest, largest, mean and standard_uncertainty are read; good,
/// rework and scrap are written, each may be NULL unless all are. feature is one number for all
/// rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4).
/// detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    mean: *const tw_column,
    standard_uncertainty: *const tw_column,
    feature: i32,
    good: *const tw_out_column,
    rework: *const tw_out_column,
    scrap: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<Diameter>("mean", mean),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
        ),
        outputs: [
            Output::of::<Probability>("good", good),
            Output::of::<Probability>("rework", rework),
            Output::of::<Probability>("scrap", scrap),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, mean, u]| {
        let found = outcome_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_diameter { mm: mean },
            tw_standard_uncertainty { mm: u },
            feature,
        )?;
        let shares = [found.good, found.rework, found.scrap];
        Ok((shares.map(|share| share.trade()), 0))
    })
}

fn capability_of_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
) -> Result<(Capability, CapabilityIndex), Error> {
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let mean = mean.named("mean")?;
    let standard_uncertainty = standard_uncertainty.read()?;
    let limits = super::zone(smallest, largest)?;
    let found = spread::capability(limits, mean, standard_uncertainty);
    Ok((found.cp, found.cpk))
}

/// The capability of a process with a normal spread: (largest - smallest)/(6 u), and the same with
/// the mean where it is, its distance to the nearer limit over 3 u; negative with the mean
/// outside of the zone. The spread known well: from few parts the indices scatter themselves.
/// Limits that are equal or upside down are refused (TW_CONTRADICTION).
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 22514-2 (from memory).
/// Example: tw_capability_of(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
///     tw_diameter_millimeter(39.994), tw_standard_uncertainty_micrometer(2), &capability,
///     &capability_index, NULL); capability.ratio is 1.33333 and capability_index.ratio is 1.00000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_capability_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    capability: *mut tw_capability,
    capability_index: *mut tw_capability_index,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(capability.is_null() && capability_index.is_null()),
        || {
            let (capability_is, capability_index_is) =
                capability_of_of(smallest, largest, mean, standard_uncertainty)?;
            Ok((
                tw_capability::from(capability_is),
                tw_capability_index::from(capability_index_is),
            ))
        },
        |(capability_is, capability_index_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(capability, capability_is);
                put(capability_index, capability_index_is);
            }
        },
    )
}

/// tw_capability_of for every row.
///
/// Columns, see the first page: smallest, largest, mean and standard_uncertainty are read,
/// capability and capability_index are written, each may be NULL unless both are. row_status may
/// be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_capability_of_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    mean: *const tw_column,
    standard_uncertainty: *const tw_column,
    capability: *const tw_out_column,
    capability_index: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<Diameter>("mean", mean),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
        ),
        outputs: [
            Output::of::<Capability>("capability", capability),
            Output::of::<CapabilityIndex>("capability_index", capability_index),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, mean, standard_uncertainty]| {
        let (capability, capability_index) = capability_of_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_diameter { mm: mean },
            tw_standard_uncertainty {
                mm: standard_uncertainty,
            },
        )?;
        Ok(([capability.trade(), capability_index.trade()], 0))
    })
}

fn outcome_with_uniform_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    half_width: tw_half_width,
    feature: Feature,
) -> Result<(Probability, Probability, Probability), Error> {
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let mean = mean.named("mean")?;
    let standard_uncertainty = standard_uncertainty.read()?;
    let half_width = half_width.read()?;
    let limits = super::zone(smallest, largest)?;
    let spread = SizeSpread::normal_and_uniform(standard_uncertainty, half_width);
    let found = spread::outcome(limits, mean, spread, feature);
    Ok((found.good, found.rework, found.scrap))
}

/// The shares of parts that come out good, with metal left, and lost, where sizes scatter about a
/// mean by the sum of a normal law and of one that lies anywhere within half_width to either side
/// alike, such as the division of a dial or the drift of a batch. feature is a number of enum
/// tw_feature. As tw_outcome else.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: JCGM 106:2012, 7 (from memory); the sum of both laws in closed form, derived.
/// Example: tw_outcome_with_uniform(tw_diameter_millimeter(1), tw_diameter_millimeter(1.02),
///     tw_diameter_millimeter(1.009), tw_standard_uncertainty_micrometer(3),
///     tw_half_width_micrometer(5), TW_FEATURE_SHAFT, &good, &rework, &scrap, NULL);
///     good.ratio is 0.984734, rework.ratio is 0.00254721 and scrap.ratio is 0.0127184.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome_with_uniform(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    half_width: tw_half_width,
    feature: i32,
    good: *mut tw_probability,
    rework: *mut tw_probability,
    scrap: *mut tw_probability,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(good.is_null() && rework.is_null() && scrap.is_null()),
        || {
            let feature = feature_of(feature)?;
            let (good_is, rework_is, scrap_is) = outcome_with_uniform_of(
                smallest,
                largest,
                mean,
                standard_uncertainty,
                half_width,
                feature,
            )?;
            Ok((
                tw_probability::from(good_is),
                tw_probability::from(rework_is),
                tw_probability::from(scrap_is),
            ))
        },
        |(good_is, rework_is, scrap_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(good, good_is);
                put(rework, rework_is);
                put(scrap, scrap_is);
            }
        },
    )
}

/// tw_outcome_with_uniform for every row.
///
/// Columns, see the first page: smallest, largest, mean, standard_uncertainty and half_width are
/// read, good, rework and scrap are written, each may be NULL unless all are. feature is one
/// number for all rows; one that is refused fails the whole call. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome_with_uniform_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    mean: *const tw_column,
    standard_uncertainty: *const tw_column,
    half_width: *const tw_column,
    feature: i32,
    good: *const tw_out_column,
    rework: *const tw_out_column,
    scrap: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<Diameter>("mean", mean),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
            Input::of::<HalfWidth>("half_width", half_width),
        ),
        outputs: [
            Output::of::<Probability>("good", good),
            Output::of::<Probability>("rework", rework),
            Output::of::<Probability>("scrap", scrap),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    match guarded(|| Ok(feature_of(feature)?)) {
        Err(failure) => job.refuse(detail, failure),
        Ok(feature) => job.run_checked(
            detail,
            |[smallest, largest, mean, standard_uncertainty, half_width]| {
                let (good, rework, scrap) = outcome_with_uniform_of(
                    tw_diameter { mm: smallest },
                    tw_diameter { mm: largest },
                    tw_diameter { mm: mean },
                    tw_standard_uncertainty {
                        mm: standard_uncertainty,
                    },
                    tw_half_width { mm: half_width },
                    feature,
                )?;
                Ok(([good.trade(), rework.trade(), scrap.trade()], 0))
            },
        ),
    }
}

fn outcome_of_few_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    degrees_of_freedom: tw_degrees_of_freedom,
    feature: i32,
) -> Result<Outcome, Error> {
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let mean = mean.named("mean")?;
    let (u, nu) = (standard_uncertainty.read()?, degrees_of_freedom.read()?);
    let feature = feature_of(feature)?;
    let limits = super::zone(smallest, largest)?;
    Ok(spread::outcome_of_few(limits, mean, u, nu, feature))
}

/// The shares of parts that come out good, with metal left, and lost, where sizes scatter about a
/// mean and the standard uncertainty is known from few measurements only: Student's law of so many
/// degrees of freedom. feature is a number of enum tw_feature.
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
/// unless all are. detail may be NULL. After a failure the outputs are NaN.
///
/// Source: JCGM 101:2008, 6.4.9, and JCGM 100:2008, G.3 (from memory).
/// Example: tw_outcome_of_few(tw_diameter_inch(1.25), tw_diameter_inch(1.251),
///     tw_diameter_inch(1.2506), tw_standard_uncertainty_inch(0.0002),
///     tw_degrees_of_freedom_one(6), TW_FEATURE_SHAFT, &good, &rework, &scrap, NULL);
///     good.ratio is 0.941783, rework.ratio is 0.0462132 and scrap.ratio is 0.0120041.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome_of_few(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    degrees_of_freedom: tw_degrees_of_freedom,
    feature: i32,
    good: *mut tw_probability,
    rework: *mut tw_probability,
    scrap: *mut tw_probability,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(good.is_null() && rework.is_null() && scrap.is_null()),
        || {
            let found = outcome_of_few_of(
                smallest,
                largest,
                mean,
                standard_uncertainty,
                degrees_of_freedom,
                feature,
            )?;
            Ok((
                tw_probability::from(found.good),
                tw_probability::from(found.rework),
                tw_probability::from(found.scrap),
            ))
        },
        |(good_is, rework_is, scrap_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(good, good_is);
                put(rework, rework_is);
                put(scrap, scrap_is);
            }
        },
    )
}

/// tw_outcome_of_few for every row.
///
/// Columns, see the first page: smallest, largest, mean, standard_uncertainty and
/// degrees_of_freedom are read; good, rework and scrap are written, each may be NULL unless all
/// are. feature is one number for all rows. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_outcome_of_few_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    mean: *const tw_column,
    standard_uncertainty: *const tw_column,
    degrees_of_freedom: *const tw_column,
    feature: i32,
    good: *const tw_out_column,
    rework: *const tw_out_column,
    scrap: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<Diameter>("mean", mean),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
            Input::of::<DegreesOfFreedom>("degrees_of_freedom", degrees_of_freedom),
        ),
        outputs: [
            Output::of::<Probability>("good", good),
            Output::of::<Probability>("rework", rework),
            Output::of::<Probability>("scrap", scrap),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, mean, u, nu]| {
        let found = outcome_of_few_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_diameter { mm: mean },
            tw_standard_uncertainty { mm: u },
            tw_degrees_of_freedom { ratio: nu },
            feature,
        )?;
        let shares = [found.good, found.rework, found.scrap];
        Ok((shares.map(|share| share.trade()), 0))
    })
}
