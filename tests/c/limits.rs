//! The doors of limits and fits: every column against its scalar call, bit for bit, bad rows and all.

use std::ffi::c_char;
use std::ptr::{null, null_mut};

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::*;
use turnwright::*;

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

const ROWS: usize = 5000;

pub fn trials() -> Vec<Trial> {
    vec![
        trial("limits/standard_tolerance", &[], standard_tolerance),
        trial("limits/deviations_of_class", &[], deviations),
        trial("limits/limits_of_class", &[], limits),
        trial("limits/clearance_of_fit", &[], clearance),
        trial("limits/a_bad_class_is_refused", &[], bad_class),
    ]
}

fn mm() -> &'static unit::Unit {
    &Diameter::ROW.kind().units()[0]
}

/// Sizes on both sides of the table's end, and the ends of ranges, with bad ones among them.
fn sizes() -> Vec<f64> {
    let mut sizes = Numbers(7).column(0.2, 800.0, ROWS);
    for (row, end) in [3.0, 18.0, 30.0, 250.0, 315.0, 500.0]
        .into_iter()
        .enumerate()
    {
        sizes[2 * row] = end;
        sizes[2 * row + 1] = end + 1e-6;
    }
    sizes
}

fn good(count: usize) -> Result<(), Failed> {
    check(count > ROWS / 3 && count < ROWS, || {
        format!("{count} good rows")
    })
}

fn standard_tolerance() -> Result<(), Failed> {
    let nominals = sizes();
    for grade in 1..=16 {
        let (mut found, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
        let status = unsafe {
            tw_standard_tolerance_column(
                &input::<Diameter>(&nominals, mm()),
                grade,
                &output::<Tolerance>(&mut found),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
        let mut count = 0;
        for row in 0..ROWS {
            let mut alone = tw_tolerance { mm: 0.0 };
            let nominal = tw_diameter { mm: nominals[row] };
            let said = unsafe { tw_standard_tolerance(nominal, grade, &mut alone, null_mut()) };
            count += usize::from(said == tw_status::TW_OK);
            check(
                statuses[row] == said as i32 && same(found[row], alone.mm),
                || format!("row {row}: {} and {said:?}", statuses[row]),
            )?;
        }
        good(count)?;
    }
    for grade in [0, 17, -1, 256 + 7, i32::MIN] {
        let (mut found, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
        let status = unsafe {
            tw_standard_tolerance_column(
                &input::<Diameter>(&nominals, mm()),
                grade,
                &output::<Tolerance>(&mut found),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(
            status != tw_status::TW_OK
                && found.iter().all(|value| value.is_nan())
                && statuses.iter().all(|said| *said == status as i32),
            || format!("grade {grade}: {status:?}"),
        )?;
    }
    Ok(())
}

fn deviations() -> Result<(), Failed> {
    let nominals = sizes();
    for class in [
        c"h7", c"g6", c"js7", c"t6", c"H7", c"M6", c"N9", c"P7", c"J8",
    ] {
        let (mut upper, mut lower, mut statuses) =
            (vec![0.0; ROWS], vec![0.0; ROWS], vec![-1; ROWS]);
        let status = unsafe {
            tw_deviations_of_class_column(
                &input::<Diameter>(&nominals, mm()),
                class.as_ptr(),
                &output::<UpperDeviation>(&mut upper),
                &output::<LowerDeviation>(&mut lower),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
        let mut count = 0;
        for row in 0..ROWS {
            let mut alone = (
                tw_upper_deviation { mm: 0.0 },
                tw_lower_deviation { mm: 0.0 },
            );
            let nominal = tw_diameter { mm: nominals[row] };
            let said = unsafe {
                tw_deviations_of_class(
                    nominal,
                    class.as_ptr(),
                    &mut alone.0,
                    &mut alone.1,
                    null_mut(),
                )
            };
            count += usize::from(said == tw_status::TW_OK);
            check(
                statuses[row] == said as i32
                    && same(upper[row], alone.0.mm)
                    && same(lower[row], alone.1.mm),
                || format!("{class:?} row {row}: {} and {said:?}", statuses[row]),
            )?;
        }
        good(count)?;
    }
    Ok(())
}

fn limits() -> Result<(), Failed> {
    let nominals = sizes();
    for class in [c"h7", c"h16", c"js6", c"zc8", c"H7", c"D10", c"K7"] {
        let (mut smallest, mut largest, mut statuses) =
            (vec![0.0; ROWS], vec![0.0; ROWS], vec![-1; ROWS]);
        let status = unsafe {
            tw_limits_of_class_column(
                &input::<Diameter>(&nominals, mm()),
                class.as_ptr(),
                &output::<Diameter>(&mut smallest),
                &output::<Diameter>(&mut largest),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
        let mut count = 0;
        for row in 0..ROWS {
            let mut alone = (tw_diameter { mm: 0.0 }, tw_diameter { mm: 0.0 });
            let nominal = tw_diameter { mm: nominals[row] };
            let said = unsafe {
                tw_limits_of_class(
                    nominal,
                    class.as_ptr(),
                    &mut alone.0,
                    &mut alone.1,
                    null_mut(),
                )
            };
            count += usize::from(said == tw_status::TW_OK);
            check(
                statuses[row] == said as i32
                    && same(smallest[row], alone.0.mm)
                    && same(largest[row], alone.1.mm),
                || format!("{class:?} row {row}: {} and {said:?}", statuses[row]),
            )?;
        }
        good(count)?;
    }
    Ok(())
}

fn clearance() -> Result<(), Failed> {
    let from = Numbers(11).column(0.2, 4000.0, ROWS);
    // Steps beside the first column: some upside down, some farther apart than any fit.
    let beside = |seed: u64, scale: f64| -> Vec<f64> {
        let steps = Numbers(seed).column(0.001, 1.0, ROWS);
        from.iter()
            .zip(steps)
            .enumerate()
            .map(|(row, (d, step))| match row % 7 {
                0 => d - scale * step,
                1 => d + 100.0 * step,
                _ => d + scale * step,
            })
            .collect()
    };
    let (hole_to, shaft_from, shaft_to) = (beside(12, 0.1), beside(13, 0.1), beside(14, 3.0));
    let (mut least, mut largest, mut statuses) = (vec![0.0; ROWS], vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_clearance_of_fit_column(
            &input::<Diameter>(&from, mm()),
            &input::<Diameter>(&hole_to, mm()),
            &input::<Diameter>(&shaft_from, mm()),
            &input::<Diameter>(&shaft_to, mm()),
            &output::<Clearance>(&mut least),
            &output::<Clearance>(&mut largest),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    let mut count = 0;
    for row in 0..ROWS {
        let mut alone = (tw_clearance { mm: 0.0 }, tw_clearance { mm: 0.0 });
        let d = |mm: f64| tw_diameter { mm };
        let said = unsafe {
            tw_clearance_of_fit(
                d(from[row]),
                d(hole_to[row]),
                d(shaft_from[row]),
                d(shaft_to[row]),
                &mut alone.0,
                &mut alone.1,
                null_mut(),
            )
        };
        count += usize::from(said == tw_status::TW_OK);
        check(
            statuses[row] == said as i32
                && same(least[row], alone.0.mm)
                && same(largest[row], alone.1.mm),
            || format!("row {row}: {} and {said:?}", statuses[row]),
        )?;
    }
    good(count)
}

fn bad_class() -> Result<(), Failed> {
    use tw_status::{TW_BAD_UTF8, TW_MISUSE, TW_NULL_POINTER, TW_UNKNOWN_NAME, TW_UNREADABLE};
    let nominals = [30.0, 40.0];
    let cases: [(*const c_char, tw_status); 7] = [
        (null(), TW_NULL_POINTER),
        (c"i7".as_ptr(), TW_UNKNOWN_NAME),
        (c"".as_ptr(), TW_UNREADABLE),
        (c"h".as_ptr(), TW_UNREADABLE),
        (c"\xff7".as_ptr(), TW_BAD_UTF8),
        (c"h7h7h7h7h7h7h7h7".as_ptr(), TW_MISUSE),
        (c"h7h7h7h7h7h7h7h".as_ptr(), TW_UNREADABLE),
    ];
    for (at, (class, expected)) in cases.into_iter().enumerate() {
        let mut alone = (tw_diameter { mm: 0.0 }, tw_diameter { mm: 0.0 });
        let nominal = tw_diameter { mm: 30.0 };
        let said =
            unsafe { tw_limits_of_class(nominal, class, &mut alone.0, &mut alone.1, null_mut()) };
        let (mut found, mut statuses) = ([0.0; 2], [-1; 2]);
        let column = unsafe {
            tw_limits_of_class_column(
                &input::<Diameter>(&nominals, mm()),
                class,
                &output::<Diameter>(&mut found),
                null(),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(
            said == expected
                && column == expected
                && alone.0.mm.is_nan()
                && alone.1.mm.is_nan()
                && found.iter().all(|value| value.is_nan())
                && statuses == [expected as i32; 2],
            || format!("case {at}: {said:?} {column:?} {found:?} {statuses:?}"),
        )?;
    }
    Ok(())
}
