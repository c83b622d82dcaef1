//! Doors of uncertainty: shares of good parts, the cheapest aim, coverage factors, guard bands and
//! verdicts.
//!
//! Figures are read before a number of an enumeration, as a column call looks at its columns first.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{Failure, tw_error, tw_status};
use super::{call, guarded, put};
use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, BestAim, Prices};
use crate::physics::budget::{self, Budget, Component};
use crate::physics::spread::{self, Outcome, SizeSpread};
use crate::quantity::{
    Capability, CapabilityIndex, Confidence, CoverageFactor, DegreesOfFreedom, Diameter, HalfWidth,
    Price, PriceRework, PriceScrap, Probability, Quantity, Resolution, SizeUncertainty,
    StandardUncertainty,
};
use crate::standards::decision::{self, DecisionRule, Verdict};
use crate::standards::limits::{Feature, Limits};

/// Which side of a size has the metal. Passed as int32_t; another number is refused.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_feature {
    /// An outside diameter: too large can be cut again, too small is lost.
    TW_FEATURE_SHAFT = 1,
    /// An inside diameter: too small can be cut again, too large is lost.
    TW_FEATURE_HOLE = 2,
}

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
    let limits = Limits::new(smallest, largest)?;
    Ok(spread::outcome(limits, mean, spread, feature))
}

/// The shares of parts that come out good, with metal left, and lost, where sizes scatter by the
/// normal law about a mean. feature is a number of enum tw_feature.
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
/// unless all are. detail may be NULL. After a failure the outputs are NaN.
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

/// What both calls for a best aim are asked: zone, spread, prices, feature.
pub(super) fn aim_asked(
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    feature: i32,
) -> Result<(Limits, SizeSpread, Prices, Feature), Error> {
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let spread = SizeSpread::normal(standard_uncertainty.read()?);
    let prices = Prices::new(price_scrap.read()?, price_rework.read()?);
    let feature = feature_of(feature)?;
    Ok((Limits::new(smallest, largest)?, spread, prices, feature))
}

fn best_aim_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    feature: i32,
) -> Result<BestAim, Error> {
    let (limits, spread, prices, feature) = aim_asked(
        smallest,
        largest,
        standard_uncertainty,
        price_scrap,
        price_rework,
        feature,
    )?;
    aim::best_aim(limits, spread, prices, feature)
}

/// The size to aim for that costs least, and what a part costs there on average by not coming out
/// good. The prices are in any currency. feature is a number of enum tw_feature.
///
/// An aim outside of the zone is refused (TW_IMPOSSIBLE): the spread is too wide for the prices. An
/// output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_best_aim(
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    feature: i32,
    aim: *mut tw_diameter,
    expected_price: *mut tw_price,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !(aim.is_null() && expected_price.is_null()),
        || {
            let best = best_aim_of(
                smallest,
                largest,
                standard_uncertainty,
                price_scrap,
                price_rework,
                feature,
            )?;
            Ok((
                tw_diameter::from(best.aim),
                tw_price::from(best.expected_price),
            ))
        },
        |(aim_is, price_is)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(aim, aim_is);
                put(expected_price, price_is);
            }
        },
    )
}

/// tw_best_aim for every row.
///
/// Columns, see the first page: smallest, largest, standard_uncertainty, price_scrap and
/// price_rework are read; aim and expected_price are written, each may be NULL unless both are.
/// feature is one number for all rows. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_best_aim_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    standard_uncertainty: *const tw_column,
    price_scrap: *const tw_column,
    price_rework: *const tw_column,
    feature: i32,
    aim: *const tw_out_column,
    expected_price: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<StandardUncertainty>("standard_uncertainty", standard_uncertainty),
            Input::of::<PriceScrap>("price_scrap", price_scrap),
            Input::of::<PriceRework>("price_rework", price_rework),
        ),
        outputs: [
            Output::of::<Diameter>("aim", aim),
            Output::of::<Price>("expected_price", expected_price),
        ],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, u, scrap, rework]| {
        let best = best_aim_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_standard_uncertainty { mm: u },
            tw_price_scrap { ratio: scrap },
            tw_price_rework { ratio: rework },
            feature,
        )?;
        Ok(([best.aim.trade(), best.expected_price.trade()], 0))
    })
}

#[allow(clippy::too_many_arguments)]
fn expected_price_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    feature: i32,
) -> Result<Price, Error> {
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let mean = mean.named("mean")?;
    let spread = SizeSpread::normal(standard_uncertainty.read()?);
    let prices = Prices::new(price_scrap.read()?, price_rework.read()?);
    let feature = feature_of(feature)?;
    let limits = Limits::new(smallest, largest)?;
    Ok(aim::expected_price(limits, mean, spread, prices, feature))
}

/// What a part costs on average by not coming out good, where sizes scatter by the normal law about
/// a mean. feature is a number of enum tw_feature.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_expected_price(
    smallest: tw_diameter,
    largest: tw_diameter,
    mean: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    feature: i32,
    expected_price: *mut tw_price,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !expected_price.is_null(),
        || {
            Ok(tw_price::from(expected_price_of(
                smallest,
                largest,
                mean,
                standard_uncertainty,
                price_scrap,
                price_rework,
                feature,
            )?))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(expected_price, answer) },
    )
}

/// tw_expected_price for every row.
///
/// Columns, see the first page: smallest, largest, mean, standard_uncertainty, price_scrap and
/// price_rework are read, expected_price is written. feature is one number for all rows. row_status
/// may be NULL; else one int32_t a row, row_status_stride_bytes apart (at least 4). detail may be
/// NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is what
/// is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_expected_price_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    mean: *const tw_column,
    standard_uncertainty: *const tw_column,
    price_scrap: *const tw_column,
    price_rework: *const tw_column,
    feature: i32,
    expected_price: *const tw_out_column,
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
            Input::of::<PriceScrap>("price_scrap", price_scrap),
            Input::of::<PriceRework>("price_rework", price_rework),
        ),
        outputs: [Output::of::<Price>("expected_price", expected_price)],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, mean, u, scrap, rework]| {
        let price = expected_price_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_diameter { mm: mean },
            tw_standard_uncertainty { mm: u },
            tw_price_scrap { ratio: scrap },
            tw_price_rework { ratio: rework },
            feature,
        )?;
        Ok(([price.trade()], 0))
    })
}

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

fn chance_that_good_of(
    measured: tw_diameter,
    smallest: tw_diameter,
    largest: tw_diameter,
    standard_uncertainty: tw_standard_uncertainty,
) -> Result<Probability, Error> {
    let measured = measured.named("measured")?;
    let (smallest, largest) = (smallest.named("smallest")?, largest.named("largest")?);
    let u = standard_uncertainty.read()?;
    let limits = Limits::new(smallest, largest)?;
    Ok(spread::chance_that_good(measured, limits, u))
}

/// The chance that a part measured so is good, from this measurement alone (JCGM 106).
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). detail may be NULL.
/// After a failure the output is NaN.
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
    let limits = Limits::new(smallest, largest)?;
    let found = decision::verdict(measured, limits, guard, feature);
    Ok((found, spread::chance_that_good(measured, limits, u)))
}

/// What a measured size proves (ISO 14253-1), as a number of enum tw_verdict_of, and the chance that
/// the part is good. rule is a number of enum tw_decision_rule, feature one of enum tw_feature.
///
/// An output may be NULL unless all are. detail may be NULL. After a failure the verdict is 0 and
/// the chance NaN.
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

/// The combined standard uncertainty of count independent contributions, each with its sensitivity
/// in it already (JCGM 100, 5.1.2), and the effective degrees of freedom (G.4.1).
///
/// contributions points to count of them. degrees_of_freedom may be NULL: infinitely many for each;
/// else count numbers, of which an infinite one stands for infinitely many. effective is infinite
/// where all are. An output may be NULL unless all are. detail may be NULL. After a failure the
/// outputs are NaN.
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
                let at = |error: Error| error.at(&format!("contributions[{i}]"));
                let mut component = Component::standard(i.to_string(), u.read().map_err(at)?);
                if !degrees_of_freedom.is_null() {
                    // SAFETY: the same.
                    let nu = unsafe { degrees_of_freedom.add(i).read_unaligned() };
                    if nu.ratio != f64::INFINITY {
                        let at = |error: Error| error.at(&format!("degrees_of_freedom[{i}]"));
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

#[cold]
fn any_spread() -> Error {
    Error::new(
        ErrorKind::Impossible,
        "price_rework",
        "the price of scrap",
        "another price than that of scrap",
        "with equal prices the cheapest aim is the middle of the zone, whatever the spread",
    )
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
    let limits = Limits::new(smallest, largest)?;
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

fn largest_standard_uncertainty_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
) -> Result<StandardUncertainty, Error> {
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let price_scrap = price_scrap.read()?;
    let price_rework = price_rework.read()?;
    let limits = Limits::new(smallest, largest)?;
    // The answer does not depend on how wide the spread is, only on its shape.
    let spread = SizeSpread::normal(StandardUncertainty::computed_trade(1.0));
    let prices = Prices::new(price_scrap, price_rework);
    aim::largest_standard_uncertainty(limits, spread, prices).ok_or_else(any_spread)
}

/// The largest standard uncertainty of a normal spread with which the cheapest aim (tw_best_aim)
/// still lies in the zone, on its limit: (largest - smallest)/sqrt(2
/// |ln(price_scrap/price_rework)|). Refused: limits that are equal or upside down
/// (TW_CONTRADICTION), and equal prices (TW_IMPOSSIBLE): then any spread will do.
///
/// detail may be NULL. After a failure the output is NaN.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_largest_standard_uncertainty(
    smallest: tw_diameter,
    largest: tw_diameter,
    price_scrap: tw_price_scrap,
    price_rework: tw_price_rework,
    standard_uncertainty: *mut tw_standard_uncertainty,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !standard_uncertainty.is_null(),
        || {
            Ok(tw_standard_uncertainty::from(
                largest_standard_uncertainty_of(smallest, largest, price_scrap, price_rework)?,
            ))
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(standard_uncertainty, answer) },
    )
}

/// tw_largest_standard_uncertainty for every row.
///
/// Columns, see the first page: smallest, largest, price_scrap and price_rework are read,
/// standard_uncertainty is written. row_status may be NULL; else one int32_t a row,
/// row_status_stride_bytes apart (at least 4). detail may be NULL.
///
/// TW_ROWS_BAD: rows of a bad value hold NaN and their status, the others their answer; detail
/// tells of the first. Any other failure: all rows hold NaN, unless the memory of a column is
/// what is refused (NULL, stride, overlap): then nothing is written.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_largest_standard_uncertainty_column(
    smallest: *const tw_column,
    largest: *const tw_column,
    price_scrap: *const tw_column,
    price_rework: *const tw_column,
    standard_uncertainty: *const tw_out_column,
    row_status: *mut i32,
    row_status_stride_bytes: usize,
    detail: *mut tw_error,
) -> tw_status {
    let job = Job {
        inputs: (
            Input::of::<Diameter>("smallest", smallest),
            Input::of::<Diameter>("largest", largest),
            Input::of::<PriceScrap>("price_scrap", price_scrap),
            Input::of::<PriceRework>("price_rework", price_rework),
        ),
        outputs: [Output::of::<StandardUncertainty>(
            "standard_uncertainty",
            standard_uncertainty,
        )],
        regime: Numbers::NONE,
        row_status: Numbers::at("row_status", row_status, row_status_stride_bytes),
    };
    job.run_checked(detail, |[smallest, largest, price_scrap, price_rework]| {
        let found = largest_standard_uncertainty_of(
            tw_diameter { mm: smallest },
            tw_diameter { mm: largest },
            tw_price_scrap { ratio: price_scrap },
            tw_price_rework {
                ratio: price_rework,
            },
        )?;
        Ok(([found.trade()], 0))
    })
}

fn acceptance_of(
    smallest: tw_diameter,
    largest: tw_diameter,
    guard_band: tw_instrument_uncertainty,
) -> Result<(Diameter, Diameter), Error> {
    let smallest = smallest.named("smallest")?;
    let largest = largest.named("largest")?;
    let guard_band = guard_band.named("guard_band")?;
    let limits = Limits::new(smallest, largest)?;
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
    let limits = Limits::new(smallest, largest)?;
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
