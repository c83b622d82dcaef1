//! What a measured size proves: guard bands, acceptance, verdicts (ISO 14253-1, JCGM 106).
//!
//! Figures are read before a number of an enumeration, as a column call looks at its columns first.

use super::columns::{tw_column, tw_out_column};
use super::outcome::feature_of;
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::spread;
use crate::quantity::{Diameter, Probability, Quantity, SizeUncertainty, StandardUncertainty};
use crate::standards::decision::{self, DecisionRule, Verdict};

/// How wide the guard band is. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_decision_rule {
    /// Twice the standard uncertainty (ISO 14253-1:1998 and 2013, from memory).
    TW_DECISION_RULE_EXPANDED_UNCERTAINTY = 1,
    /// 1.645 times the standard uncertainty: 95 % probability of conformance (ISO 14253-1:2017, from
    /// memory).
    TW_DECISION_RULE_CONFORMANCE95 = 2,
}

/// What a measured size proves. Returned as int32_t; a later version may know more of them.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_verdict_of {
    /// Inside the limits.
    TW_VERDICT_GOOD = 1,
    /// Metal left beyond a limit.
    TW_VERDICT_REWORK = 2,
    /// Too much metal gone.
    TW_VERDICT_SCRAP = 3,
    /// Too near to a limit: neither is proved.
    TW_VERDICT_CANNOT_TELL = 4,
}

fn rule_of(number: i32) -> Result<DecisionRule, Error> {
    const EXPANDED: i32 = tw_decision_rule::TW_DECISION_RULE_EXPANDED_UNCERTAINTY as i32;
    const CONFORMANCE: i32 = tw_decision_rule::TW_DECISION_RULE_CONFORMANCE95 as i32;
    match number {
        EXPANDED => Ok(DecisionRule::ExpandedUncertainty),
        CONFORMANCE => Ok(DecisionRule::Conformance95),
        other => Err(Error::new(
            ErrorKind::UnknownName,
            "rule",
            other.to_string(),
            "TW_DECISION_RULE_EXPANDED_UNCERTAINTY (1) or TW_DECISION_RULE_CONFORMANCE95 (2)",
            "pass one of the names of enum tw_decision_rule",
        )),
    }
}

fn verdict_number(verdict: Verdict) -> i32 {
    (match verdict {
        Verdict::Good => tw_verdict_of::TW_VERDICT_GOOD,
        Verdict::Rework => tw_verdict_of::TW_VERDICT_REWORK,
        Verdict::Scrap => tw_verdict_of::TW_VERDICT_SCRAP,
        Verdict::CannotTell => tw_verdict_of::TW_VERDICT_CANNOT_TELL,
    }) as i32
}

fn chance_that_good_of(
    measured: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
) -> Result<Probability, Error> {
    let measured = measured.named("measured")?;
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let u = standard_uncertainty.read()?;
    let limits = super::zone(smallest, largest)?;
    Ok(spread::chance_that_good(measured, limits, u))
}

/// The chance that a part measured so is good, from this measurement alone (JCGM 106).
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). detail may be NULL.
/// After a failure the output is NaN.
///
/// Source: JCGM 106:2012, 7.2 to 7.4 (from memory).
/// Example: tw_chance_that_good(tw_diameter_millimeter(39.998), tw_diameter_millimeter(39.984),
///     tw_diameter_millimeter(40), tw_standard_uncertainty_micrometer(2), &chance, NULL);
///     chance.ratio is 0.841345.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_chance_that_good(
    measured: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    chance: *mut tw_probability,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !chance.is_null(),
        || {
            let found = chance_that_good_of(measured, smallest, largest, standard_uncertainty)?;
            Ok(tw_probability::from(found))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(chance, answer) },
    )
}

/// tw_chance_that_good for every row.
///
/// Columns, see the first page: measured, smallest, largest and standard_uncertainty are read,
/// chance is written. row_status may be NULL; else one int32_t a row, row_status_stride_bytes apart
/// (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_chance_that_good_column(
    measured: *const tw_column,
    smallest: *const tw_column,
    largest: *const tw_column,
    standard_uncertainty: *const tw_column,
    chance: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("measured", measured),
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
        ),
        outputs: [Output::of::<Probability>("chance", chance)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[measured, smallest, largest, u]| {
        let found = chance_that_good_of(
            tw_diameter { mm: measured },
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_standard_uncertainty { mm: u },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn guard_band_of(
    standard_uncertainty: tw_standard_uncertainty,
    rule: i32,
) -> Result<SizeUncertainty, Error> {
    let u = standard_uncertainty.read()?;
    Ok(rule_of(rule)?.guard_band(u))
}

/// The guard band that a measurement keeps from a limit (ISO 14253-1). rule is a number of enum
/// tw_decision_rule.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: ISO 14253-1 (from memory).
/// Example: tw_guard_band(tw_standard_uncertainty_micrometer(3), TW_DECISION_RULE_CONFORMANCE95,
///     &guard_band, NULL); tw_instrument_uncertainty_as_micrometer(guard_band) is 4.935.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_guard_band(
    standard_uncertainty: tw_standard_uncertainty,
    rule: i32,
    guard_band: *mut tw_instrument_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !guard_band.is_null(),
        || {
            let guard = guard_band_of(standard_uncertainty, rule)?;
            Ok(tw_instrument_uncertainty::from(guard))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(guard_band, answer) },
    )
}

/// tw_guard_band for every row.
///
/// Columns, see the first page: standard_uncertainty is read, guard_band is written. rule is one
/// number for all rows. row_status may be NULL; else one int32_t a row, row_status_stride_bytes
/// apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_guard_band_column(
    standard_uncertainty: *const tw_column,
    rule: i32,
    guard_band: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (Input::of::<StandardUncertainty>(
            "standard_uncertainty",
            standard_uncertainty,
        ),),
        outputs: [Output::of::<SizeUncertainty>("guard_band", guard_band)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[u]| {
        let guard = guard_band_of(tw_standard_uncertainty { mm: u }, rule)?;
        Ok(([guard.trade()], 0))
    })
}

fn verdict_of(
    measured: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    rule: i32,
    feature: i32,
) -> Result<(Verdict, Probability), Error> {
    let measured = measured.named("measured")?;
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let u = standard_uncertainty.read()?;
    let guard = rule_of(rule)?.guard_band(u);
    let feature = feature_of(feature)?;
    let limits = super::zone(smallest, largest)?;
    let found = decision::verdict(measured, limits, guard, feature);
    Ok((found, spread::chance_that_good(measured, limits, u)))
}

/// What a measured size proves (ISO 14253-1), as a number of enum tw_verdict_of, and the chance that
/// the part is good. rule is a number of enum tw_decision_rule, feature one of enum tw_feature.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the verdict is 0 and
/// the chance NaN.
///
/// Source: ISO 14253-1; the chance: JCGM 106:2012, 7.2 to 7.4 (both from memory).
/// Example: tw_verdict(tw_diameter_millimeter(39.998), tw_diameter_millimeter(39.984),
///     tw_diameter_millimeter(40), tw_standard_uncertainty_micrometer(2),
///     TW_DECISION_RULE_EXPANDED_UNCERTAINTY, TW_FEATURE_SHAFT, &verdict, &chance, NULL);
///     verdict is TW_VERDICT_CANNOT_TELL and chance.ratio is 0.841345.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_verdict(
    measured: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    rule: i32,
    feature: i32,
    verdict: *mut i32,
    chance: *mut tw_probability,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(verdict.is_null() && chance.is_null()),
        || {
            let (found, chance) = verdict_of(
                measured,
                smallest,
                largest,
                standard_uncertainty,
                rule,
                feature,
            )?;
            Ok((verdict_number(found), tw_probability::from(chance)))
        },
        |(verdict_is, chance_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(verdict, verdict_is);
                put(chance, chance_is);
            }
        },
    )
}

/// tw_verdict for every row.
///
/// Columns, see the first page: measured, smallest, largest and standard_uncertainty are read,
/// chance is written. rule and feature are one number each for all rows. verdict may be NULL; else
/// one int32_t a row (a number of enum tw_verdict_of, 0 for a bad row), verdict_stride_bytes apart
/// (at least 4). row_status likewise. detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_verdict_column(
    measured: *const tw_column,
    smallest: *const tw_column,
    largest: *const tw_column,
    standard_uncertainty: *const tw_column,
    rule: i32,
    feature: i32,
    chance: *const tw_out_column,
    verdict: *mut i32,
    verdict_stride_bytes: usize,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("measured", measured),
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
        ),
        outputs: [Output::of::<Probability>("chance", chance)],
        regime: Numbers::at("verdict", verdict, verdict_stride_bytes),
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[measured, smallest, largest, u]| {
        let (found, chance) = verdict_of(
            tw_diameter { mm: measured },
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_standard_uncertainty { mm: u },
            rule,
            feature,
        )?;
        Ok(([chance.trade()], verdict_number(found)))
    })
}

#[cold]
fn no_zone_left() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "guard_band",
        "a guard band that takes the whole zone",
        "less than half of the tolerance",
        "measure with a smaller uncertainty",
    )
}

fn acceptance_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    guard_band: tw_instrument_uncertainty,
) -> Result<(Diameter, Diameter), Error> {
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let guard_band = guard_band.named("guard_band")?;
    let limits = super::zone(smallest, largest)?;
    let found = decision::acceptance(limits, guard_band).ok_or_else(no_zone_left)?;
    Ok((found.smallest(), found.largest()))
}

/// The sizes that prove a part good: the limits less the guard band at both ends (ISO 14253-1,
/// from memory). For the band see tw_guard_band. Refused: limits that are equal or upside down
/// (TW_CONTRADICTION), and a band that takes the whole zone (TW_IMPOSSIBLE): then no measurement
/// proves a part good.
///
/// An output may be NULL unless both are. detail may be NULL. After a failure the outputs are
/// NaN.
///
/// Source: ISO 14253-1 (from memory).
/// Example: tw_acceptance(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
///     tw_instrument_uncertainty_micrometer(5), &smallest_accepted, &largest_accepted, NULL);
///     smallest_accepted.mm is 39.989 and largest_accepted.mm is 39.995.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_acceptance(
    smallest: tw_diameter,
    largest: tw_diameter,
    guard_band: tw_instrument_uncertainty,
    smallest_accepted: *mut tw_diameter,
    largest_accepted: *mut tw_diameter,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(smallest_accepted.is_null() && largest_accepted.is_null()),
        || {
            let (smallest_accepted_is, largest_accepted_is) =
                acceptance_of(smallest, largest, guard_band)?;
            Ok((
                tw_diameter::from(smallest_accepted_is),
                tw_diameter::from(largest_accepted_is),
            ))
        },
        |(smallest_accepted_is, largest_accepted_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(smallest_accepted, smallest_accepted_is);
                put(largest_accepted, largest_accepted_is);
            }
        },
    )
}

/// tw_acceptance for every row.
///
/// Columns, see the first page: smallest, largest and guard_band are read, smallest_accepted and
/// largest_accepted are written, each may be NULL unless both are. row_status may be NULL; else
/// one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_acceptance_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    guard_band: *const tw_column,
    smallest_accepted: *const tw_out_column,
    largest_accepted: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<SizeUncertainty>("guard_band", guard_band),
        ),
        outputs: [
            Output::of::<Diameter>("smallest_accepted", smallest_accepted),
            Output::of::<Diameter>("largest_accepted", largest_accepted),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, guard_band]| {
        let (smallest_accepted, largest_accepted) = acceptance_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_instrument_uncertainty { mm: guard_band },
        )?;
        Ok(([smallest_accepted.trade(), largest_accepted.trade()], 0))
    })
}
