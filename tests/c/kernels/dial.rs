//! Marks of a dial.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::advice::mark;
use turnwright::ffi::{
    tw_dial_diameter, tw_dial_diameter_column, tw_dial_mark_for, tw_dial_mark_for_column,
    tw_diameter, tw_division, tw_shows, tw_status, tw_travel, tw_travel_per_turn,
    tw_travel_per_turn_column,
};
use turnwright::{
    Dial, DialReads, Diameter, Division, Divisions, DivisionsPerTurn, Engraved, Quantity, Travel,
};

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

kernels! {
    "dial_mark_for" tw_dial_mark_for tw_dial_mark_for_column
        [zero_at tw_diameter mm Diameter 5.0 300.0, target tw_diameter mm Diameter 5.0 300.0, division tw_division mm Division 0.005 0.1] (2, 100)
        [size tw_diameter mm Diameter, shows tw_shows mm Engraved] <divisions>
        {
let reads = DialReads::Radius;
let divisions_per_turn = DivisionsPerTurn::new(100).ok()?;
let dial = Dial::new(reads, division, divisions_per_turn);
let found = mark::choose(&dial, zero_at, target, None).ok()?;
Some([found.mark.size.trade(), found.mark.reading.shows().trade(), f64::from(found.mark.reading.divisions().count() as i32)])
        };
    "travel_per_turn" tw_travel_per_turn tw_travel_per_turn_column
        [division tw_division mm Division 0.005 0.1] (1, 125)
        [travel tw_travel mm Travel]
        {
let reads = DialReads::Diameter;
let divisions_per_turn = DivisionsPerTurn::new(125).ok()?;
let dial = Dial::new(reads, division, divisions_per_turn);
let found = dial.travel_per_turn();
Some([found.trade()])
        };
}

pub fn by_hand() -> Vec<Trial> {
    vec![
        trial("kernels/dial_diameter", &[], dial_diameter),
        trial("kernels/a_mark_leads_back_to_its_size", &[], there_and_back),
    ]
}

fn dial_diameter() -> Result<(), Failed> {
    const ROWS: usize = 3_000;
    let mut numbers = Numbers(29);
    let zero_at = numbers.column(5.0, 300.0, ROWS);
    let division = numbers.column(0.005, 0.1, ROWS);
    // Every second int32_t only: the stride counts.
    let divisions: Vec<i32> = numbers
        .column(1.0, 3_000.0, 2 * ROWS)
        .into_iter()
        .enumerate()
        .map(|(at, value)| match at % 20 {
            2 => i32::MIN,
            4 => 10_000_001,
            _ => value as i32,
        })
        .collect();
    for (reads, rust_reads) in [(1, DialReads::Diameter), (2, DialReads::Radius)] {
        let mut diameter = vec![0.0; ROWS];
        let mut statuses = vec![-1; ROWS];
        let status = unsafe {
            tw_dial_diameter_column(
                &input::<Diameter>(&zero_at, &Diameter::ROW.kind().units()[0]),
                &input::<Division>(&division, &Division::ROW.kind().units()[0]),
                divisions.as_ptr(),
                8,
                reads,
                100,
                &output::<Diameter>(&mut diameter),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
        let mut good = 0;
        for row in 0..ROWS {
            let mut alone = tw_diameter { mm: 0.0 };
            let count = divisions[2 * row];
            let scalar = unsafe {
                tw_dial_diameter(
                    tw_diameter { mm: zero_at[row] },
                    tw_division { mm: division[row] },
                    count,
                    reads,
                    100,
                    &mut alone,
                    null_mut(),
                )
            };
            let rust = || {
                let per_turn = DivisionsPerTurn::new(100).ok()?;
                let dial = Dial::new(
                    rust_reads,
                    Division::from_trade(division[row]).ok()?,
                    per_turn,
                );
                let divisions = Divisions::new(i64::from(count)).ok()?;
                dial.diameter_at(Diameter::from_trade(zero_at[row]).ok()?, divisions)
                    .ok()
            };
            let expected = rust().map_or(f64::NAN, Diameter::trade);
            good += usize::from(!expected.is_nan());
            let holds = statuses[row] == scalar as i32
                && (scalar == tw_status::TW_OK) != expected.is_nan()
                && same(alone.mm, expected)
                && same(diameter[row], expected);
            check(holds, || {
                format!("row {row}: {scalar:?} {} {expected}", alone.mm)
            })?;
        }
        check(good > ROWS / 4 && good < ROWS, || {
            format!("{good} good rows")
        })?;
    }
    for (reads, per_turn, expected) in [
        (0, 100, tw_status::TW_UNKNOWN_NAME),
        (3, 100, tw_status::TW_UNKNOWN_NAME),
        (1, 1, tw_status::TW_OUT_OF_RANGE),
        (1, -100, tw_status::TW_OUT_OF_RANGE),
    ] {
        let mut one = tw_diameter { mm: 1.0 };
        let mut all = [1.0];
        let (alone, whole) = unsafe {
            (
                tw_dial_diameter(
                    tw_diameter { mm: 40.0 },
                    tw_division { mm: 0.05 },
                    3,
                    reads,
                    per_turn,
                    &mut one,
                    null_mut(),
                ),
                tw_dial_diameter_column(
                    &input::<Diameter>(&[40.0], &Diameter::ROW.kind().units()[0]),
                    &input::<Division>(&[0.05], &Division::ROW.kind().units()[0]),
                    &3,
                    4,
                    reads,
                    per_turn,
                    &output::<Diameter>(&mut all),
                    null_mut(),
                    0,
                    null_mut(),
                ),
            )
        };
        check(
            alone == expected && whole == expected && one.mm.is_nan() && all[0].is_nan(),
            || format!("{reads} {per_turn}: {alone:?} {whole:?}"),
        )?;
    }
    let mut all = [1.0];
    for (divisions, stride, expected) in [
        (
            null_mut::<i32>().cast_const(),
            4,
            tw_status::TW_NULL_POINTER,
        ),
        (&raw const NO_DIVISIONS, 3, tw_status::TW_BAD_COLUMN),
    ] {
        let status = unsafe {
            tw_dial_diameter_column(
                &input::<Diameter>(&[40.0], &Diameter::ROW.kind().units()[0]),
                &input::<Division>(&[0.05], &Division::ROW.kind().units()[0]),
                divisions,
                stride,
                1,
                100,
                &output::<Diameter>(&mut all),
                null_mut(),
                0,
                null_mut(),
            )
        };
        check(status == expected && all == [1.0], || {
            format!("{status:?} {all:?}")
        })?;
    }
    Ok(())
}

static NO_DIVISIONS: i32 = 0;

/// From every size on a mark its own mark is found.
fn there_and_back() -> Result<(), Failed> {
    let (zero_at, division) = (tw_diameter { mm: 40.0 }, tw_division { mm: 0.05 });
    for count in -20..780 {
        let mut target = tw_diameter { mm: 0.0 };
        let (mut size, mut shows) = (target, tw_shows { mm: 0.0 });
        let mut divisions = -1;
        let statuses = unsafe {
            (
                tw_dial_diameter(zero_at, division, count, 1, 100, &mut target, null_mut()),
                tw_dial_mark_for(
                    zero_at,
                    target,
                    division,
                    1,
                    100,
                    &mut size,
                    &mut shows,
                    &mut divisions,
                    null_mut(),
                ),
            )
        };
        let mark = f64::from(count.rem_euclid(100));
        check(
            statuses == (tw_status::TW_OK, tw_status::TW_OK)
                && divisions == count
                && same(size.mm, target.mm)
                // Sizes are whole billionths of a millimetre, so that half of one tells two apart.
                && (shows.mm - 0.05 * mark).abs() < 5e-10,
            || format!("{count}: {statuses:?} {divisions} {} {}", size.mm, shows.mm),
        )?;
    }
    Ok(())
}
