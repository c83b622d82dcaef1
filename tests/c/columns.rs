//! Columns against scalar calls, bit for bit.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_arc_height, tw_arc_height_column, tw_column, tw_corner_radius, tw_cutting_edge_angle,
    tw_cutting_speed, tw_diameter, tw_error, tw_feed, tw_minor_cutting_edge_angle, tw_out_column,
    tw_ra, tw_rq, tw_rt, tw_rz, tw_spindle_speed, tw_spindle_speed_for,
    tw_spindle_speed_for_column, tw_status, tw_theoretical_roughness,
    tw_theoretical_roughness_column,
};
use turnwright::unit::{self, Unit};
use turnwright::{
    CornerRadius, CuttingEdgeAngle, CuttingSpeed, Diameter, Feed, MinorCuttingEdgeAngle, Quantity,
    Ra, Rq, Rt, Rz, SpindleSpeed,
};

use crate::{check, trial};

pub fn trials() -> Vec<Trial> {
    vec![
        trial("columns/roughness_is_that_of_the_scalar_call", &[], || {
            roughness("mm/rev", "mm")
        }),
        trial("columns/roughness_with_mm_and_inch_mixed", &[], || {
            roughness("in/rev", "in")
        }),
        trial(
            "columns/arc_height_is_that_of_the_scalar_call",
            &[],
            arc_height,
        ),
        trial("columns/constants_are_columns_of_one", &[], constants),
        trial("columns/any_layout_is_the_scalar_call", &[], layouts),
        trial("columns/an_inch_column_is_refused_in_inch", &[], in_inch),
    ]
}

fn unit(kind: &str, text: &str) -> &'static Unit {
    unit::find(kind, text).unwrap()
}

pub fn input<Q: Quantity>(values: &[f64], unit: &Unit) -> tw_column {
    tw_column {
        data: values.as_ptr().cast(),
        stride_bytes: 8,
        count: values.len(),
        quantity: Q::ROW.code(),
        unit: unit.code(),
    }
}

pub fn output<Q: Quantity>(values: &mut [f64]) -> tw_out_column {
    tw_out_column {
        data: values.as_mut_ptr().cast(),
        stride_bytes: 8,
        count: values.len(),
        quantity: Q::ROW.code(),
        unit: Q::ROW.kind().units()[0].code(),
    }
}

/// Numbers that go through the whole range and beyond, the same every time.
pub struct Numbers(pub u64);

impl Numbers {
    fn next(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub fn column(&mut self, least: f64, largest: f64, rows: usize) -> Vec<f64> {
        (0..rows)
            .map(|_| match (self.next() * 40.0) as u32 {
                0 => f64::NAN,
                1 => -least,
                2 => largest * 1.5,
                3 => f64::INFINITY,
                _ => least * (largest / least).powf(self.next()),
            })
            .collect()
    }
}

pub fn same(a: f64, b: f64) -> bool {
    a.to_bits() == b.to_bits() || (a.is_nan() && b.is_nan())
}

fn roughness(feed_unit: &str, radius_unit: &str) -> Result<(), Failed> {
    const ROWS: usize = 20_000;
    let (feed_unit, radius_unit) = (
        unit("feed per revolution", feed_unit),
        unit("length", radius_unit),
    );
    let degree = unit("angle", "deg");
    let mut numbers = Numbers(1);
    let feeds = numbers.column(0.0005, 0.6, ROWS);
    let radii = numbers.column(0.005, 3.0, ROWS);
    let majors = numbers.column(20.0, 120.0, ROWS);
    let minors = numbers.column(0.5, 90.0, ROWS);
    let mut out = vec![vec![0.0; ROWS]; 4];
    let (mut regimes, mut statuses) = (vec![-1; ROWS], vec![-1; ROWS]);
    let mut outputs = out.iter_mut();
    let (rt, rz, ra, rq) = (
        output::<Rt>(outputs.next().unwrap()),
        output::<Rz>(outputs.next().unwrap()),
        output::<Ra>(outputs.next().unwrap()),
        output::<Rq>(outputs.next().unwrap()),
    );
    let status = unsafe {
        tw_theoretical_roughness_column(
            &input::<Feed>(&feeds, feed_unit),
            &input::<CornerRadius>(&radii, radius_unit),
            &input::<CuttingEdgeAngle>(&majors, degree),
            &input::<MinorCuttingEdgeAngle>(&minors, degree),
            &rt,
            &rz,
            &ra,
            &rq,
            regimes.as_mut_ptr(),
            4,
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    let mut good = 0;
    for row in 0..ROWS {
        let (mut regime, mut rt, mut rz, mut ra, mut rq) = (
            -1,
            tw_rt { um: 0.0 },
            tw_rz { um: 0.0 },
            tw_ra { um: 0.0 },
            tw_rq { um: 0.0 },
        );
        let alone = unsafe {
            tw_theoretical_roughness(
                tw_feed {
                    mm_per_rev: feed_unit.to_trade(feeds[row], 1.0),
                },
                tw_corner_radius {
                    mm: radius_unit.to_trade(radii[row], 1.0),
                },
                tw_cutting_edge_angle { deg: majors[row] },
                tw_minor_cutting_edge_angle { deg: minors[row] },
                &mut regime,
                &mut rt,
                &mut rz,
                &mut ra,
                &mut rq,
                null_mut(),
            )
        };
        good += usize::from(alone == tw_status::TW_OK);
        check(
            statuses[row] == alone as i32
                && regimes[row] == regime
                && same(out[0][row], rt.um)
                && same(out[1][row], rz.um)
                && same(out[2][row], ra.um)
                && same(out[3][row], rq.um),
            || format!("row {row}: {} and {alone:?}", statuses[row]),
        )?;
    }
    check(good > ROWS / 3 && good < ROWS, || {
        format!("{good} good rows")
    })
}

fn arc_height() -> Result<(), Failed> {
    const ROWS: usize = 20_000;
    let mut numbers = Numbers(2);
    let feeds = numbers.column(0.001, 3.0, ROWS);
    let mut radii = numbers.column(0.005, 3.0, ROWS);
    // On the edge of what is refused, and one step to either side of it.
    let feeds: Vec<f64> = feeds
        .iter()
        .zip(&mut radii)
        .enumerate()
        .map(|(row, (feed, radius))| match row % 10 {
            0 => 2.0 * *radius,
            1 => (2.0 * *radius).next_down(),
            2 => (2.0 * *radius).next_up(),
            3 => {
                *radius = 0.0;
                *feed
            }
            _ => *feed,
        })
        .collect();
    let (mut heights, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let mut detail: tw_error = unsafe { std::mem::zeroed() };
    detail.struct_size = size_of::<tw_error>() as u32;
    let status = unsafe {
        tw_arc_height_column(
            &input::<Feed>(&feeds, unit("feed per revolution", "mm/rev")),
            &input::<CornerRadius>(&radii, unit("length", "mm")),
            &output::<Rt>(&mut heights),
            statuses.as_mut_ptr(),
            4,
            &mut detail,
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    let mut bad = Vec::new();
    for row in 0..ROWS {
        let mut rt = tw_rt { um: 0.0 };
        let alone = unsafe {
            tw_arc_height(
                tw_feed {
                    mm_per_rev: feeds[row],
                },
                tw_corner_radius { mm: radii[row] },
                &mut rt,
                null_mut(),
            )
        };
        if alone != tw_status::TW_OK {
            bad.push(row);
        }
        check(
            statuses[row] == alone as i32 && same(heights[row], rt.um),
            || format!("row {row}: {} and {alone:?}", statuses[row]),
        )?;
    }
    check(
        detail.row == bad[0] as u64
            && detail.rows_bad == bad.len() as u64
            && detail.row_status == statuses[bad[0]],
        || format!("{} bad rows, first {}", detail.rows_bad, detail.row),
    )
}

fn constants() -> Result<(), Failed> {
    let feeds = [0.1, 0.2, 0.3];
    let (mut alone, mut spread) = ([0.0; 3], [0.0; 3]);
    let feed = input::<Feed>(&feeds, unit("feed per revolution", "mm/rev"));
    let mm = unit("length", "mm");
    for (radii, heights) in [(&[0.8][..], &mut alone), (&[0.8; 3][..], &mut spread)] {
        let status = unsafe {
            tw_arc_height_column(
                &feed,
                &input::<CornerRadius>(radii, mm),
                &output::<Rt>(heights),
                null_mut(),
                0,
                null_mut(),
            )
        };
        check(status == tw_status::TW_OK, || format!("{status:?}"))?;
    }
    check(alone == spread && alone[0] > 0.0, || {
        format!("{alone:?} {spread:?}")
    })
}

/// The words about a bad value are in the units of its column.
fn in_inch() -> Result<(), Failed> {
    let (speeds, diameters, mut speeds_out) = ([25.0], [-1.0], [0.0]);
    for (unit_text, words) in [("in", "-1 in"), ("mm", "-1 mm")] {
        let diameter = input::<Diameter>(&diameters, unit("length", unit_text));
        // SAFETY: all bytes zero is a tw_error.
        let mut detail: tw_error = unsafe { std::mem::zeroed() };
        detail.struct_size = size_of::<tw_error>() as u32;
        // SAFETY: the columns are as long as they say.
        let status = unsafe {
            tw_spindle_speed_for_column(
                &input::<CuttingSpeed>(&speeds, unit("cutting speed", "m/min")),
                &diameter,
                &output::<SpindleSpeed>(&mut speeds_out),
                null_mut(),
                0,
                &mut detail,
            )
        };
        let said = |bytes: &[std::ffi::c_char]| {
            let bytes = bytes.iter().take_while(|c| **c != 0);
            bytes.map(|c| *c as u8 as char).collect::<String>()
        };
        let (given, expected) = (said(&detail.given), said(&detail.expected));
        check(
            status == tw_status::TW_ROWS_BAD && given == words && expected.contains(unit_text),
            || format!("{status:?} {given} {expected}"),
        )?;
    }
    Ok(())
}

/// Rows long enough for some that are read together to be all good and others not, whatever lies
/// between them in memory and whatever their units: values, statuses, and nothing written besides.
fn layouts() -> Result<(), Failed> {
    const BAD: [usize; 5] = [0, 700, 701, 1279, 1280];
    for rows in [1, 3, 255, 256, 257, 512, 2_000_usize] {
        for stride in [8, 12, 24] {
            for (speed_text, diameter_text) in [("m/min", "mm"), ("ft/min", "in")] {
                for (constant, told, with_bad) in [
                    (false, false, false),
                    (false, true, false),
                    (false, true, true),
                    (true, true, true),
                    (true, false, false),
                ] {
                    let units = [
                        unit("cutting speed", speed_text),
                        unit("length", diameter_text),
                    ];
                    // One byte off, so that no row is aligned.
                    let mut memory = [0, 1].map(|_| vec![0_u8; 1 + rows * stride]);
                    let mut out = vec![0xA5_u8; 1 + rows * stride];
                    let value = |column: usize, row: usize| {
                        let row = if column == 1 && constant { 0 } else { row };
                        match (column, with_bad && BAD.contains(&row)) {
                            (0, true) => f64::NAN,
                            (0, false) => 5.0 + row as f64 * 0.01,
                            _ => 1.0 + row as f64 * 0.003,
                        }
                    };
                    for (column, bytes) in memory.iter_mut().enumerate() {
                        for row in 0..rows {
                            let at = 1 + row * stride;
                            bytes[at..at + 8].copy_from_slice(&value(column, row).to_ne_bytes());
                        }
                    }
                    let place = |column: usize, count: usize, code: i32| tw_column {
                        data: memory[column][1..].as_ptr().cast(),
                        stride_bytes: stride,
                        count,
                        quantity: code,
                        unit: units[column].code(),
                    };
                    let given = [
                        place(0, rows, CuttingSpeed::ROW.code()),
                        place(1, if constant { 1 } else { rows }, Diameter::ROW.code()),
                    ];
                    let written = tw_out_column {
                        data: out[1..].as_mut_ptr().cast(),
                        stride_bytes: stride,
                        count: rows,
                        quantity: SpindleSpeed::ROW.code(),
                        unit: unit("spindle speed", "1/s").code(),
                    };
                    let mut statuses = vec![-1; rows];
                    let status = unsafe {
                        tw_spindle_speed_for_column(
                            &given[0],
                            &given[1],
                            &written,
                            if told {
                                statuses.as_mut_ptr()
                            } else {
                                null_mut()
                            },
                            4,
                            null_mut(),
                        )
                    };
                    let expected = if with_bad {
                        tw_status::TW_ROWS_BAD
                    } else {
                        tw_status::TW_OK
                    };
                    check(status == expected, || format!("{rows} rows: {status:?}"))?;
                    for (row, its_status) in statuses.iter().enumerate() {
                        let mut n = tw_spindle_speed { rpm: 0.0 };
                        let [v, d] = [0, 1].map(|at| units[at].to_trade(value(at, row), 1.0));
                        let alone = unsafe {
                            tw_spindle_speed_for(
                                tw_cutting_speed { m_per_min: v },
                                tw_diameter { mm: d },
                                &mut n,
                                null_mut(),
                            )
                        };
                        let at = 1 + row * stride;
                        let (bytes, rest) = out[at..at + stride].split_at(8);
                        let found = f64::from_ne_bytes(bytes.try_into()?);
                        let wanted = unit("spindle speed", "1/s").from_trade(n.rpm);
                        check(
                            same(found, wanted)
                                && (!told || *its_status == alone as i32)
                                && rest.iter().all(|byte| *byte == 0xA5),
                            || {
                                format!(
                                    "{rows} rows, stride {stride}, row {row}: {found}, {wanted}"
                                )
                            },
                        )?;
                    }
                }
            }
        }
    }
    Ok(())
}
