//! Column calls of uncertainty against their scalar calls, bit for bit, good rows and bad.

use std::ptr::{null, null_mut};

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_best_aim, tw_best_aim_column, tw_best_aim_in_zone, tw_best_aim_in_zone_column,
    tw_chance_that_good, tw_chance_that_good_column, tw_column, tw_combined_uncertainty,
    tw_confidence, tw_coverage_factor, tw_coverage_factor_for, tw_coverage_factor_for_column,
    tw_degrees_of_freedom, tw_diameter, tw_expected_price, tw_expected_price_column, tw_guard_band,
    tw_guard_band_column, tw_instrument_uncertainty, tw_outcome, tw_outcome_column,
    tw_outcome_of_few, tw_outcome_of_few_column, tw_price, tw_price_rework, tw_price_scrap,
    tw_probability, tw_standard_uncertainty, tw_status, tw_verdict, tw_verdict_column,
};
use turnwright::{
    Confidence, CoverageFactor, DegreesOfFreedom, Diameter, Price, PriceRework, PriceScrap,
    Probability, Quantity, SizeUncertainty, StandardUncertainty,
};

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

const ROWS: usize = 2_000;

pub fn trials() -> Vec<Trial> {
    let mut trials = vec![
        trial("uncertainty/coverage_factor", &[], coverage),
        trial("uncertainty/chance_that_good", &[], chance),
        trial("uncertainty/combined", &[], combined),
    ];
    // 3 is neither shaft nor hole, and no rule: every row is refused, and both doors say so.
    for number in 1..=3 {
        let named = |what: &str| format!("uncertainty/{what}_{number}");
        trials.extend([
            trial(&named("outcome"), &[], move || outcome(number)),
            trial(&named("best_aim"), &[], move || best_aim(number)),
            trial(&named("outcome_of_few"), &[], move || {
                outcome_of_few(number)
            }),
            trial(&named("best_aim_in_zone"), &[], move || {
                best_aim_in_zone(number)
            }),
            trial(&named("expected_price"), &[], move || price(number)),
            trial(&named("guard_band"), &[], move || guard(number)),
            trial(&named("verdict"), &[], move || verdict(number)),
        ]);
    }
    trials
}

fn of<Q: Quantity>(values: &[f64]) -> tw_column {
    input::<Q>(values, &Q::ROW.kind().units()[0])
}

fn mm(value: f64) -> tw_diameter {
    tw_diameter { mm: value }
}

fn u(value: f64) -> tw_standard_uncertainty {
    tw_standard_uncertainty { mm: value }
}

/// Limits, a size near them, an uncertainty and two prices of every row.
struct Parts {
    smallest: Vec<f64>,
    largest: Vec<f64>,
    size: Vec<f64>,
    u: Vec<f64>,
    scrap: Vec<f64>,
    rework: Vec<f64>,
}

impl Parts {
    fn new() -> Self {
        let mut numbers = Numbers(11);
        Self {
            smallest: numbers.column(39.9, 40.0, ROWS),
            largest: numbers.column(39.99, 40.05, ROWS),
            size: numbers.column(39.9, 40.05, ROWS),
            u: numbers.column(0.0005, 0.05, ROWS),
            scrap: numbers.column(1.0, 50.0, ROWS),
            rework: numbers.column(0.5, 2.0, ROWS),
        }
    }
}

/// Statuses and values of all rows, against the scalar call of each.
fn compare<const N: usize>(
    status: tw_status,
    statuses: &[i32],
    columns: [&[f64]; N],
    scalar: impl Fn(usize) -> ([f64; N], tw_status),
) -> Result<(), Failed> {
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    for (row, found) in statuses.iter().enumerate() {
        let (values, alone) = scalar(row);
        check(
            *found == alone as i32 && (0..N).all(|i| same(columns[i][row], values[i])),
            || format!("row {row}: {found} and {alone:?}, {values:?}"),
        )?;
    }
    let good = statuses.iter().filter(|status| **status == 0).count();
    check(good == 0 || good > ROWS / 10, || {
        format!("{good} good rows")
    })
}

fn outcome(feature: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let mut out = [vec![0.0; ROWS], vec![0.0; ROWS], vec![0.0; ROWS]];
    let mut statuses = vec![-1; ROWS];
    let [good, rework, scrap] = &mut out;
    let status = unsafe {
        tw_outcome_column(
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<Diameter>(&parts.size),
            &of::<StandardUncertainty>(&parts.u),
            feature,
            &output::<Probability>(good),
            &output::<Probability>(rework),
            &output::<Probability>(scrap),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&out[0], &out[1], &out[2]], |row| {
        let mut shares = [tw_probability { ratio: 0.0 }; 3];
        let [good, rework, scrap] = &mut shares;
        let status = unsafe {
            tw_outcome(
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                mm(parts.size[row]),
                u(parts.u[row]),
                feature,
                good,
                rework,
                scrap,
                null_mut(),
            )
        };
        (shares.map(|share| share.ratio), status)
    })
}

fn best_aim(feature: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut aims, mut prices) = (vec![0.0; ROWS], vec![0.0; ROWS]);
    let mut statuses = vec![-1; ROWS];
    let status = unsafe {
        tw_best_aim_column(
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<StandardUncertainty>(&parts.u),
            &of::<PriceScrap>(&parts.scrap),
            &of::<PriceRework>(&parts.rework),
            feature,
            &output::<Diameter>(&mut aims),
            &output::<Price>(&mut prices),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&aims, &prices], |row| {
        let (mut aim, mut price) = (mm(0.0), tw_price { ratio: 0.0 });
        let status = unsafe {
            tw_best_aim(
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                u(parts.u[row]),
                tw_price_scrap {
                    ratio: parts.scrap[row],
                },
                tw_price_rework {
                    ratio: parts.rework[row],
                },
                feature,
                &mut aim,
                &mut price,
                null_mut(),
            )
        };
        ([aim.mm, price.ratio], status)
    })
}

fn outcome_of_few(feature: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    // From one degree on; every hundredth row has fewer and is refused.
    let degrees: Vec<f64> = (0..ROWS)
        .map(|row| 0.05 * (row % 100) as f64 + if row % 100 == 0 { 0.0 } else { 1.0 })
        .collect();
    let mut out = [vec![0.0; ROWS], vec![0.0; ROWS], vec![0.0; ROWS]];
    let mut statuses = vec![-1; ROWS];
    let [good, rework, scrap] = &mut out;
    let status = unsafe {
        tw_outcome_of_few_column(
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<Diameter>(&parts.size),
            &of::<StandardUncertainty>(&parts.u),
            &of::<DegreesOfFreedom>(&degrees),
            feature,
            &output::<Probability>(good),
            &output::<Probability>(rework),
            &output::<Probability>(scrap),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&out[0], &out[1], &out[2]], |row| {
        let mut shares = [tw_probability { ratio: 0.0 }; 3];
        let [good, rework, scrap] = &mut shares;
        let status = unsafe {
            tw_outcome_of_few(
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                mm(parts.size[row]),
                u(parts.u[row]),
                tw_degrees_of_freedom {
                    ratio: degrees[row],
                },
                feature,
                good,
                rework,
                scrap,
                null_mut(),
            )
        };
        (shares.map(|share| share.ratio), status)
    })
}

fn best_aim_in_zone(feature: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut aims, mut prices) = (vec![0.0; ROWS], vec![0.0; ROWS]);
    let mut statuses = vec![-1; ROWS];
    let status = unsafe {
        tw_best_aim_in_zone_column(
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<StandardUncertainty>(&parts.u),
            &of::<PriceScrap>(&parts.scrap),
            &of::<PriceRework>(&parts.rework),
            feature,
            &output::<Diameter>(&mut aims),
            &output::<Price>(&mut prices),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&aims, &prices], |row| {
        let (mut aim, mut price) = (mm(0.0), tw_price { ratio: 0.0 });
        let status = unsafe {
            tw_best_aim_in_zone(
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                u(parts.u[row]),
                tw_price_scrap {
                    ratio: parts.scrap[row],
                },
                tw_price_rework {
                    ratio: parts.rework[row],
                },
                feature,
                &mut aim,
                &mut price,
                null_mut(),
            )
        };
        ([aim.mm, price.ratio], status)
    })
}

fn price(feature: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut prices, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_expected_price_column(
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<Diameter>(&parts.size),
            &of::<StandardUncertainty>(&parts.u),
            &of::<PriceScrap>(&parts.scrap),
            &of::<PriceRework>(&parts.rework),
            feature,
            &output::<Price>(&mut prices),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&prices], |row| {
        let mut price = tw_price { ratio: 0.0 };
        let status = unsafe {
            tw_expected_price(
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                mm(parts.size[row]),
                u(parts.u[row]),
                tw_price_scrap {
                    ratio: parts.scrap[row],
                },
                tw_price_rework {
                    ratio: parts.rework[row],
                },
                feature,
                &mut price,
                null_mut(),
            )
        };
        ([price.ratio], status)
    })
}

fn coverage() -> Result<(), Failed> {
    let mut numbers = Numbers(12);
    let freedom = numbers.column(1.0, 1e6, ROWS);
    let confidence = numbers.column(0.5, 0.9999, ROWS);
    let (mut factors, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_coverage_factor_for_column(
            &of::<DegreesOfFreedom>(&freedom),
            &of::<Confidence>(&confidence),
            &output::<CoverageFactor>(&mut factors),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&factors], |row| {
        let mut k = tw_coverage_factor { ratio: 0.0 };
        let status = unsafe {
            tw_coverage_factor_for(
                tw_degrees_of_freedom {
                    ratio: freedom[row],
                },
                tw_confidence {
                    ratio: confidence[row],
                },
                &mut k,
                null_mut(),
            )
        };
        ([k.ratio], status)
    })
}

fn chance() -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut chances, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_chance_that_good_column(
            &of::<Diameter>(&parts.size),
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<StandardUncertainty>(&parts.u),
            &output::<Probability>(&mut chances),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&chances], |row| {
        let mut chance = tw_probability { ratio: 0.0 };
        let status = unsafe {
            tw_chance_that_good(
                mm(parts.size[row]),
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                u(parts.u[row]),
                &mut chance,
                null_mut(),
            )
        };
        ([chance.ratio], status)
    })
}

fn guard(rule: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut guards, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_guard_band_column(
            &of::<StandardUncertainty>(&parts.u),
            rule,
            &output::<SizeUncertainty>(&mut guards),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    compare(status, &statuses, [&guards], |row| {
        let mut guard = tw_instrument_uncertainty { mm: 0.0 };
        let status = unsafe { tw_guard_band(u(parts.u[row]), rule, &mut guard, null_mut()) };
        ([guard.mm], status)
    })
}

fn verdict(rule: i32) -> Result<(), Failed> {
    let parts = Parts::new();
    let (mut chances, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let mut verdicts = vec![-1; ROWS];
    let feature = 3 - rule.min(2);
    let status = unsafe {
        tw_verdict_column(
            &of::<Diameter>(&parts.size),
            &of::<Diameter>(&parts.smallest),
            &of::<Diameter>(&parts.largest),
            &of::<StandardUncertainty>(&parts.u),
            rule,
            feature,
            &output::<Probability>(&mut chances),
            verdicts.as_mut_ptr(),
            4,
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    let numbers: Vec<f64> = verdicts.iter().map(|verdict| f64::from(*verdict)).collect();
    compare(status, &statuses, [&chances, &numbers], |row| {
        let (mut found, mut chance) = (-1, tw_probability { ratio: 0.0 });
        let status = unsafe {
            tw_verdict(
                mm(parts.size[row]),
                mm(parts.smallest[row]),
                mm(parts.largest[row]),
                u(parts.u[row]),
                rule,
                feature,
                &mut found,
                &mut chance,
                null_mut(),
            )
        };
        ([chance.ratio, f64::from(found)], status)
    })?;
    if rule < 3 {
        for wanted in 1..=4 {
            check(verdicts.contains(&wanted), || format!("never {wanted}"))?;
        }
    }
    Ok(())
}

fn combined() -> Result<(), Failed> {
    // The end gauge of JCGM 100, example H.1 (from memory): 32 nm, 16 degrees when cut to a whole.
    let parts = [25e-6, 9.7e-6, 2.9e-6, 16.6e-6].map(u);
    let freedom = [18.0, 25.6, 50.0, 2.0].map(|ratio| tw_degrees_of_freedom { ratio });
    let (mut all, mut nu) = (u(0.0), tw_degrees_of_freedom { ratio: 0.0 });
    let mut ask = |parts: *const _, freedom: *const _, count| {
        let status = unsafe {
            tw_combined_uncertainty(parts, freedom, count, &mut all, &mut nu, null_mut())
        };
        (status, all.mm, nu.ratio)
    };
    let (status, u_c, effective) = ask(parts.as_ptr(), freedom.as_ptr(), 4);
    check(
        status == tw_status::TW_OK && (u_c - 32e-6).abs() < 0.5e-6 && effective.floor() == 16.0,
        || format!("{status:?} {u_c} {effective}"),
    )?;
    let (status, same_u, effective) = ask(parts.as_ptr(), null(), 4);
    check(
        status == tw_status::TW_OK && same(same_u, u_c) && effective == f64::INFINITY,
        || format!("{status:?} {same_u} {effective}"),
    )?;
    for (parts, count, expected) in [
        (parts.as_ptr(), 0, tw_status::TW_MISSING_FIELD),
        (null(), 4, tw_status::TW_NULL_POINTER),
    ] {
        let (status, u_c, effective) = ask(parts, null(), count);
        check(
            status == expected && u_c.is_nan() && effective.is_nan(),
            || format!("{status:?} for {count}"),
        )?;
    }
    Ok(())
}
