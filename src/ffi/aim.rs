//! The size to aim for by prices, and the spread with which it lies in the zone.
//!
//! Figures are read before a number of an enumeration, as a column call looks at its columns first.

use super::columns::{tw_column, tw_out_column};
use super::outcome::feature_of;
use super::quantity::*;
use super::rows::{Input, Job, Numbers, Output};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, BestAim, Prices};
use crate::physics::spread::SizeSpread;
use crate::quantity::{Diameter, Price, PriceRework, PriceScrap, Quantity, StandardUncertainty};
use crate::standards::limits::{Feature, Limits};

/// What both calls for a best aim are asked: zone, spread, prices, feature.
fn aim_asked(
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
    Ok((super::zone(smallest, largest)?, spread, prices, feature))
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
///
/// Source: the stationary point of the expected price (derived).
/// Example: tw_best_aim(tw_diameter_inch(0.999), tw_diameter_inch(1),
///     tw_standard_uncertainty_inch(0.0002), tw_price_scrap_one(5), tw_price_rework_one(1),
///     TW_FEATURE_SHAFT, &aim, &expected_price, NULL); tw_diameter_as_inch(aim) is 0.999564 and
///     expected_price.ratio is 0.0266343.
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
    let limits = super::zone(smallest, largest)?;
    Ok(aim::expected_price(limits, mean, spread, prices, feature))
}

/// What a part costs on average by not coming out good, where sizes scatter by the normal law about
/// a mean. feature is a number of enum tw_feature.
///
/// detail may be NULL. After a failure the output is NaN.
///
/// Source: expected value (derived).
/// Example: tw_expected_price(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
///     tw_diameter_millimeter(39.992), tw_standard_uncertainty_micrometer(4),
///     tw_price_scrap_one(10), tw_price_rework_one(1), TW_FEATURE_SHAFT, &expected_price, NULL);
///     expected_price.ratio is 0.250251.
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
    let limits = super::zone(smallest, largest)?;
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
///
/// Source: the best aim on the limit (derived).
/// Example: tw_largest_standard_uncertainty(tw_diameter_millimeter(39.984),
///     tw_diameter_millimeter(40), tw_price_scrap_one(10), tw_price_rework_one(1),
///     &standard_uncertainty, NULL);
///     tw_standard_uncertainty_as_micrometer(standard_uncertainty) is 7.45585.
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
///
/// Source: the expected price over the zone (derived).
/// Example: tw_best_aim_in_zone(tw_diameter_millimeter(39.984), tw_diameter_millimeter(40),
///     tw_standard_uncertainty_millimeter(0.01), tw_price_scrap_one(10), tw_price_rework_one(1),
///     TW_FEATURE_SHAFT, &aim, &expected_price, NULL); aim.mm is 40.000 and
///     expected_price.ratio is 1.04799.
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
