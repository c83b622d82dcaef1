//! The doors of the finish: every column against its scalar call, bit for bit, bad rows and all.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::*;
use turnwright::*;

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

const ROWS: usize = 5000;

/// One comparison: columns of numbers through the whole range and beyond, with bad ones among them.
macro_rules! twin {
    ($scalar:ident $column:ident ($($arg:ident: $t:ident.$field:ident as $q:ident, $low:literal to $high:literal),+) -> $out:ident.$unit:ident as $answer:ident) => {
        || -> Result<(), Failed> {
            let mut numbers = Numbers(3);
            $( let $arg = numbers.column($low, $high, ROWS); )+
            let (mut found, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
            let status = unsafe {
                $column(
                    $( &input::<$q>(&$arg, &$q::ROW.kind().units()[0]), )+
                    &output::<$answer>(&mut found),
                    statuses.as_mut_ptr(),
                    4,
                    null_mut(),
                )
            };
            check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
            let mut good = 0;
            for row in 0..ROWS {
                let mut alone = $out { $unit: 0.0 };
                let said = unsafe {
                    $scalar($( $t { $field: $arg[row] }, )+ &mut alone, null_mut())
                };
                good += usize::from(said == tw_status::TW_OK);
                check(
                    statuses[row] == said as i32 && same(found[row], alone.$unit),
                    || format!("row {row}: {} and {said:?}", statuses[row]),
                )?;
            }
            check(good > ROWS / 10 && good < ROWS, || format!("{good} good rows"))
        }
    };
}

pub fn trials() -> Vec<Trial> {
    vec![
        trial(
            "finish/best_feed",
            &[],
            twin! {
                tw_best_feed_with_least_chip tw_best_feed_with_least_chip_column
                (r: tw_corner_radius.mm as CornerRadius, 0.05 to 3.0, h: tw_chip_thickness.mm as ChipThickness, 0.001 to 0.02)
                -> tw_feed.mm_per_rev as Feed
            },
        ),
        trial(
            "finish/feed_with_least_chip",
            &[],
            twin! {
                tw_feed_with_least_chip tw_feed_with_least_chip_column
                (rt: tw_rt.um as Rt, 1.0 to 50.0, r: tw_corner_radius.mm as CornerRadius, 0.05 to 3.0, h: tw_chip_thickness.mm as ChipThickness, 0.001 to 0.02)
                -> tw_feed.mm_per_rev as Feed
            },
        ),
        trial(
            "finish/feed_for_ra",
            &[],
            twin! {
                tw_feed_for_ra tw_feed_for_ra_column
                (ra: tw_ra.um as Ra, 0.1 to 20.0, r: tw_corner_radius.mm as CornerRadius, 0.05 to 3.0, k: tw_cutting_edge_angle.deg as CuttingEdgeAngle, 20.0 to 120.0, m: tw_minor_cutting_edge_angle.deg as MinorCuttingEdgeAngle, 1.0 to 90.0)
                -> tw_feed.mm_per_rev as Feed
            },
        ),
        trial(
            "finish/feed_for_rz",
            &[],
            twin! {
                tw_feed_for_rz tw_feed_for_rz_column
                (rz: tw_rz.um as Rz, 0.1 to 80.0, r: tw_corner_radius.mm as CornerRadius, 0.05 to 3.0, k: tw_cutting_edge_angle.deg as CuttingEdgeAngle, 20.0 to 120.0, m: tw_minor_cutting_edge_angle.deg as MinorCuttingEdgeAngle, 1.0 to 90.0)
                -> tw_feed.mm_per_rev as Feed
            },
        ),
        trial(
            "finish/feed_for_rt",
            &[],
            twin! {
                tw_feed_for_rt tw_feed_for_rt_column
                (rt: tw_rt.um as Rt, 0.1 to 80.0, r: tw_corner_radius.mm as CornerRadius, 0.05 to 3.0, k: tw_cutting_edge_angle.deg as CuttingEdgeAngle, 20.0 to 120.0, m: tw_minor_cutting_edge_angle.deg as MinorCuttingEdgeAngle, 1.0 to 90.0)
                -> tw_feed.mm_per_rev as Feed
            },
        ),
        trial(
            "finish/handwheel_rate",
            &[],
            twin! {
                tw_handwheel_rate tw_handwheel_rate_column
                (f: tw_feed.mm_per_rev as Feed, 0.01 to 1.0, n: tw_spindle_speed.rpm as SpindleSpeed, 20.0 to 3000.0, l: tw_travel.mm as Travel, 1.0 to 40.0)
                -> tw_handwheel.turns_per_min as HandwheelRate
            },
        ),
        trial(
            "finish/mean_line_transmission",
            &[],
            twin! {
                tw_mean_line_transmission tw_mean_line_transmission_column
                (l: tw_rsm.mm as Rsm, 0.01 to 10.0, c: tw_cut_off.mm as CutOff, 0.08 to 8.0)
                -> tw_transmission.ratio as Transmission
            },
        ),
        trial(
            "finish/least_chip_thickness",
            &[],
            twin! {
                tw_least_chip_thickness tw_least_chip_thickness_column
                (r: tw_edge_radius.mm as EdgeRadius, 0.001 to 0.1)
                -> tw_chip_thickness.mm as ChipThickness
            },
        ),
        trial(
            "finish/least_chip_by_friction",
            &[],
            twin! {
                tw_least_chip_by_friction tw_least_chip_by_friction_column
                (r: tw_edge_radius.mm as EdgeRadius, 0.001 to 0.1, b: tw_friction_angle.deg as FrictionAngle, 5.0 to 60.0)
                -> tw_chip_thickness.mm as ChipThickness
            },
        ),
        trial("finish/rt_with_least_chip", &[], rt_with_least_chip),
    ]
}

fn rt_with_least_chip() -> Result<(), Failed> {
    let mut numbers = Numbers(4);
    let feeds = numbers.column(0.01, 1.0, ROWS);
    let radii = numbers.column(0.05, 3.0, ROWS);
    let least = numbers.column(0.001, 0.02, ROWS);
    let (mut found, mut regimes, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_rt_with_least_chip_column(
            &input::<Feed>(&feeds, &Feed::ROW.kind().units()[0]),
            &input::<CornerRadius>(&radii, &CornerRadius::ROW.kind().units()[0]),
            &input::<ChipThickness>(&least, &ChipThickness::ROW.kind().units()[0]),
            &output::<Rt>(&mut found),
            regimes.as_mut_ptr(),
            4,
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    let mut seen = [0; 3];
    for row in 0..ROWS {
        let (mut rt, mut regime) = (tw_rt { um: 0.0 }, -1);
        let alone = unsafe {
            tw_rt_with_least_chip(
                tw_feed {
                    mm_per_rev: feeds[row],
                },
                tw_corner_radius { mm: radii[row] },
                tw_chip_thickness { mm: least[row] },
                &mut rt,
                &mut regime,
                null_mut(),
            )
        };
        check(
            statuses[row] == alone as i32 && regimes[row] == regime && same(found[row], rt.um),
            || format!("row {row}: {} and {alone:?}", statuses[row]),
        )?;
        seen[regime as usize] += 1;
    }
    check(seen.iter().all(|rows| *rows > ROWS / 50), || {
        format!("{seen:?}")
    })
}
