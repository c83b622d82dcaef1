//! Column calls of bars on a support against their scalar calls, bit for bit: an infinite spring is
//! rigid in both.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_critical_speed_of_bar, tw_critical_speed_of_bar_column, tw_deflection, tw_deflection_at,
    tw_deflection_at_column, tw_density, tw_diameter, tw_first_critical_speed, tw_length,
    tw_overhang, tw_passive_force, tw_rotational_stiffness, tw_status, tw_stiffness,
    tw_youngs_modulus,
};
use turnwright::{
    CriticalSpeed, Deflection, Density, Diameter, Overhang, PassiveForce, Quantity,
    RotationalStiffness, Stiffness, WorkLength, YoungsModulus,
};

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

const ROWS: usize = 2_000;

pub fn trials() -> Vec<Trial> {
    let mut trials = Vec::new();
    // 4 is no support: every row is refused, and both doors say so.
    for support in 1..=4 {
        trials.push(trial(
            &format!("bars/deflection_at_{support}"),
            &[],
            move || deflection(support),
        ));
        trials.push(trial(
            &format!("bars/critical_speed_{support}"),
            &[],
            move || critical_speed(support),
        ));
    }
    trials
}

/// Modulus, diameter, overhang and the three springs of every row.
struct Bars {
    modulus: Vec<f64>,
    diameter: Vec<f64>,
    overhang: Vec<f64>,
    chuck: Vec<f64>,
    tilt: Vec<f64>,
    centre: Vec<f64>,
}

impl Bars {
    fn new(numbers: &mut Numbers) -> Self {
        Self {
            modulus: numbers.column(60.0, 1400.0, ROWS),
            diameter: numbers.column(2.0, 80.0, ROWS),
            overhang: numbers.column(10.0, 900.0, ROWS),
            chuck: numbers.column(0.5, 200.0, ROWS),
            tilt: numbers.column(5.0, 800.0, ROWS),
            centre: numbers.column(0.5, 90.0, ROWS),
        }
    }
}

fn of<Q: Quantity>(values: &[f64]) -> turnwright::ffi::tw_column {
    input::<Q>(values, &Q::ROW.kind().units()[0])
}

fn deflection(support: i32) -> Result<(), Failed> {
    let mut numbers = Numbers(5);
    let bars = Bars::new(&mut numbers);
    let force = numbers.column(1.0, 2000.0, ROWS);
    let at = numbers.column(1.0, 400.0, ROWS);
    let (mut bent, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_deflection_at_column(
            &of::<YoungsModulus>(&bars.modulus),
            &of::<Diameter>(&bars.diameter),
            &of::<Overhang>(&bars.overhang),
            support,
            &of::<Stiffness>(&bars.chuck),
            &of::<RotationalStiffness>(&bars.tilt),
            &of::<Stiffness>(&bars.centre),
            &of::<PassiveForce>(&force),
            &of::<WorkLength>(&at),
            &output::<Deflection>(&mut bent),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    compare(support, &bent, &statuses, |row| {
        let mut alone = tw_deflection { mm: 0.0 };
        let status = unsafe {
            tw_deflection_at(
                tw_youngs_modulus {
                    gpa: bars.modulus[row],
                },
                tw_diameter {
                    mm: bars.diameter[row],
                },
                tw_overhang {
                    mm: bars.overhang[row],
                },
                support,
                tw_stiffness {
                    kn_per_mm: bars.chuck[row],
                },
                tw_rotational_stiffness {
                    knm_per_rad: bars.tilt[row],
                },
                tw_stiffness {
                    kn_per_mm: bars.centre[row],
                },
                tw_passive_force { n: force[row] },
                tw_length { mm: at[row] },
                &mut alone,
                null_mut(),
            )
        };
        (alone.mm, status)
    })
}

fn critical_speed(support: i32) -> Result<(), Failed> {
    let mut numbers = Numbers(6);
    let bars = Bars::new(&mut numbers);
    let density = numbers.column(1000.0, 20000.0, ROWS);
    let (mut speeds, mut statuses) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let status = unsafe {
        tw_critical_speed_of_bar_column(
            &of::<YoungsModulus>(&bars.modulus),
            &of::<Density>(&density),
            &of::<Diameter>(&bars.diameter),
            &of::<Overhang>(&bars.overhang),
            support,
            &of::<Stiffness>(&bars.chuck),
            &of::<RotationalStiffness>(&bars.tilt),
            &of::<Stiffness>(&bars.centre),
            &output::<CriticalSpeed>(&mut speeds),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    compare(support, &speeds, &statuses, |row| {
        let mut alone = tw_first_critical_speed { rpm: 0.0 };
        let status = unsafe {
            tw_critical_speed_of_bar(
                tw_youngs_modulus {
                    gpa: bars.modulus[row],
                },
                tw_density {
                    kg_per_m3: density[row],
                },
                tw_diameter {
                    mm: bars.diameter[row],
                },
                tw_overhang {
                    mm: bars.overhang[row],
                },
                support,
                tw_stiffness {
                    kn_per_mm: bars.chuck[row],
                },
                tw_rotational_stiffness {
                    knm_per_rad: bars.tilt[row],
                },
                tw_stiffness {
                    kn_per_mm: bars.centre[row],
                },
                &mut alone,
                null_mut(),
            )
        };
        (alone.rpm, status)
    })
}

fn compare(
    support: i32,
    values: &[f64],
    statuses: &[i32],
    scalar: impl Fn(usize) -> (f64, tw_status),
) -> Result<(), Failed> {
    let mut good = 0;
    for (row, (value, status)) in values.iter().zip(statuses).enumerate() {
        let (alone, told) = scalar(row);
        // Where values are bad and the support is none, the column looks at the values first.
        let agreed = *status == told as i32 || (support == 4 && *status != 0 && told as i32 != 0);
        check(agreed && same(*value, alone), || {
            format!("row {row}: {value} {status}, alone {alone} {told:?}")
        })?;
        good += usize::from(*status == 0);
    }
    let wanted = if support == 4 { 0..1 } else { ROWS / 4..ROWS };
    check(wanted.contains(&good), || format!("{good} good rows"))
}
