//! Doors of sizes that scatter widely, or by an uncertainty that few measurements tell.
//!
//! Figures are read before a number of an enumeration, as a column call looks at its columns first.

use super::columns::{tw_column, tw_out_column};
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::uncertainty::{aim_asked, feature_of};
use super::{call, put};
use crate::error::Error;
use crate::physics::aim::{self, BestAim};
use crate::physics::spread::{self, Outcome};
use crate::quantity::{
    DegreesOfFreedom, Diameter, Price, PriceRework, PriceScrap, Probability, Quantity,
    StandardUncertainty,
};
use crate::standards::limits::Limits;

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
    let limits = Limits::new(smallest, largest)?;
    Ok(spread::outcome_of_few(limits, mean, u, nu, feature))
}

/// The shares of parts that come out good, with metal left, and lost, where sizes scatter about a
/// mean and the standard uncertainty is known from few measurements only: Student's law of so many
/// degrees of freedom. feature is a number of enum tw_feature.
///
/// smallest and largest are the limits, the smaller first (TW_CONTRADICTION). An output may be NULL
/// unless all are. detail may be NULL. After a failure the outputs are NaN.
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

fn best_aim_in_zone_of(
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
    Ok(aim::best_aim_in_zone(limits, spread, prices, feature))
}

/// The size to aim for that costs least of all sizes in the zone, and what a part costs there on
/// average by not coming out good. The prices are in any currency. feature is a number of enum
/// tw_feature.
///
/// As tw_best_aim; where that refuses an aim outside of the zone, this one answers the limit on the
/// side of the cheaper price: the largest size of a shaft whose scrap is dearer than its rework. An
/// output may be NULL unless all are. detail may be NULL. After a failure the outputs are NaN.
#[unsafe(no_mangle)]
#[must_use]
#[allow(clippy::too_many_arguments)]
pub unsafe extern "C" fn tw_best_aim_in_zone(
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
            let best = best_aim_in_zone_of(
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

/// tw_best_aim_in_zone for every row.
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
pub unsafe extern "C" fn tw_best_aim_in_zone_column(
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
        let best = best_aim_in_zone_of(
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
