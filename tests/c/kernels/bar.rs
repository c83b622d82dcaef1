//! How far a bar gives way, and what a cut leaves standing.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_centre_force, tw_centre_force_column, tw_column, tw_corner_radius, tw_cutting_edge_angle,
    tw_deflection, tw_depth_of_cut, tw_diameter, tw_diameter_error, tw_exponent, tw_feed,
    tw_largest_feed_for, tw_largest_feed_for_column, tw_left_after_equal_infeeds,
    tw_left_after_equal_infeeds_column, tw_left_after_passes, tw_left_after_passes_column,
    tw_length, tw_normal_ratio, tw_overhang, tw_passive_force, tw_rotational_stiffness,
    tw_set_over, tw_specific_force, tw_spring_passes, tw_spring_passes_column, tw_spring_share,
    tw_status, tw_stiffness, tw_stiffness_from_taper, tw_stiffness_from_taper_column,
    tw_tailstock_error, tw_tailstock_error_column, tw_worst_station, tw_worst_station_column,
    tw_youngs_modulus,
};
use turnwright::physics::bar::{self, Bar, Springs, Support};
use turnwright::physics::force::ForceLaw;
use turnwright::physics::measured_taper::{self, Measured};
use turnwright::physics::section::Section;
use turnwright::physics::spring_back::{self, Edge};
use turnwright::{
    CornerRadius, CuttingEdgeAngle, Deflection, DepthOfCut, Diameter, DiameterError, Feed,
    ForceExponent, NormalRatio, Overhang, PassiveForce, Quantity, RotationalStiffness, SetOver,
    SpecificCuttingForce, SpringShare, Stiffness, WorkLength, YoungsModulus,
};

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

kernels! {
    "left_after_passes" tw_left_after_passes tw_left_after_passes_column
        [set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, share tw_spring_share ratio SpringShare 0.01 1.05] (3)
        [deflection tw_deflection mm Deflection]
        {
let passes = 3_u32;

let found = spring_back::left_after_passes(set_depth, share, passes);
Some([found.trade()])
        };
    "left_after_equal_infeeds" tw_left_after_equal_infeeds tw_left_after_equal_infeeds_column
        [set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, share tw_spring_share ratio SpringShare 0.01 1.05] (4)
        [deflection tw_deflection mm Deflection]
        {
let passes = 4_u32;

let found = spring_back::left_after_equal_infeeds(set_depth, share, passes).ok()?;
Some([found.trade()])
        };
    "spring_passes" tw_spring_passes tw_spring_passes_column
        [set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, share tw_spring_share ratio SpringShare 0.01 1.05, least_depth tw_depth_of_cut mm DepthOfCut 0.002 0.1]
        [left tw_deflection mm Deflection] <passes>
        {
let (passes, left) = spring_back::spring_passes(set_depth, share, least_depth);
Some([left.trade(), f64::from(passes)])
        };
    "largest_feed_for" tw_largest_feed_for tw_largest_feed_for_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 110.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, stiffness tw_stiffness kn_per_mm Stiffness 0.5 100.0, allowed tw_diameter_error mm DiameterError 0.002 0.3]
        [feed tw_feed mm_per_rev Feed]
        {
let edge = Edge::new(ForceLaw::new(specific_force, exponent), Feed::from_trade(0.1).unwrap(), cutting_edge_angle, corner_radius, normal_ratio);
Some([spring_back::largest_feed(&edge, depth_of_cut, stiffness, allowed).ok()??.trade()])
        };
    "tailstock_error" tw_tailstock_error tw_tailstock_error_column
        [set_over tw_set_over mm SetOver 0.01 50.0, at tw_length mm WorkLength 10.0 2000.0, overhang tw_overhang mm Overhang 1.0 900.0] (3)
        [diameter_error tw_diameter_error mm DiameterError]
        {
let support = Support::BetweenCentres;

let found = measured_taper::tailstock_error(support, set_over, at, overhang).ok()?;
Some([found.trade()])
        };
    "stiffness_from_taper" tw_stiffness_from_taper tw_stiffness_from_taper_column
        [youngs_modulus tw_youngs_modulus gpa YoungsModulus 60.0 400.0, diameter tw_diameter mm Diameter 20.0 80.0, overhang tw_overhang mm Overhang 100.0 400.0, passive_force tw_passive_force n PassiveForce 50.0 1000.0, near_at tw_length mm WorkLength 5.0 60.0, near_error tw_diameter_error mm DiameterError 0.002 0.1, far_at tw_length mm WorkLength 60.0 200.0, far_error tw_diameter_error mm DiameterError 0.02 0.6]
        [chuck tw_stiffness kn_per_mm Stiffness, chuck_rotational tw_rotational_stiffness knm_per_rad RotationalStiffness]
        {
let length = WorkLength::from_trade(overhang.trade()).ok()?;
let found = measured_taper::stiffness_from_taper(youngs_modulus, &[Section::cylinder(diameter, length)], passive_force, &[Measured::new(near_at, near_error), Measured::new(far_at, far_error)]).ok()?;
Some([found.chuck.map_or(f64::INFINITY, Stiffness::trade), found.chuck_rotational.map_or(f64::INFINITY, RotationalStiffness::trade)])
        };
}

pub fn by_hand() -> Vec<Trial> {
    vec![trial(
        "kernels/centre_force_and_worst_station",
        &[],
        on_springs,
    )]
}

/// A spring as Rust has it: an infinite one is none.
fn spring<Q: Quantity>(value: f64) -> Option<Option<Q>> {
    if value == f64::INFINITY {
        Some(None)
    } else {
        Q::from_trade(value).ok().map(Some)
    }
}

fn on_springs() -> Result<(), Failed> {
    const ROWS: usize = 3_000;
    let mut numbers = Numbers(31);
    let modulus = numbers.column(60.0, 400.0, ROWS);
    let diameter = numbers.column(5.0, 100.0, ROWS);
    let overhang = numbers.column(20.0, 500.0, ROWS);
    let chuck = numbers.column(5.0, 200.0, ROWS);
    let tilt = numbers.column(10.0, 1000.0, ROWS);
    let centre = numbers.column(5.0, 200.0, ROWS);
    let force = numbers.column(10.0, 1000.0, ROWS);
    let from = numbers.column(1.0, 100.0, ROWS);
    let to = numbers.column(10.0, 300.0, ROWS);
    fn of<Q: Quantity>(values: &[f64]) -> tw_column {
        input::<Q>(values, &Q::ROW.kind().units()[0])
    }
    let (mut held, mut held_status) = (vec![0.0; ROWS], vec![-1; ROWS]);
    let (mut at, mut most) = (vec![0.0; ROWS], vec![0.0; ROWS]);
    let mut worst_status = vec![-1; ROWS];
    let statuses = unsafe {
        [
            tw_centre_force_column(
                &of::<YoungsModulus>(&modulus),
                &of::<Diameter>(&diameter),
                &of::<Overhang>(&overhang),
                &of::<Stiffness>(&chuck),
                &of::<RotationalStiffness>(&tilt),
                &of::<Stiffness>(&centre),
                &of::<PassiveForce>(&force),
                &of::<WorkLength>(&from),
                &output::<PassiveForce>(&mut held),
                held_status.as_mut_ptr(),
                4,
                null_mut(),
            ),
            tw_worst_station_column(
                &of::<YoungsModulus>(&modulus),
                &of::<Diameter>(&diameter),
                &of::<Overhang>(&overhang),
                &of::<Stiffness>(&chuck),
                &of::<RotationalStiffness>(&tilt),
                &of::<Stiffness>(&centre),
                &of::<PassiveForce>(&force),
                &of::<WorkLength>(&from),
                &of::<WorkLength>(&to),
                2,
                &output::<WorkLength>(&mut at),
                &output::<Deflection>(&mut most),
                worst_status.as_mut_ptr(),
                4,
                null_mut(),
            ),
        ]
    };
    check(statuses == [tw_status::TW_ROWS_BAD; 2], || {
        format!("{statuses:?}")
    })?;
    let (mut good, mut rigid) = (0, 0);
    for row in 0..ROWS {
        let springs = (
            tw_stiffness {
                kn_per_mm: chuck[row],
            },
            tw_rotational_stiffness {
                knm_per_rad: tilt[row],
            },
            tw_stiffness {
                kn_per_mm: centre[row],
            },
        );
        let bar_of = (
            tw_youngs_modulus { gpa: modulus[row] },
            tw_diameter { mm: diameter[row] },
            tw_overhang { mm: overhang[row] },
        );
        let (force_of, from_of) = (
            tw_passive_force { n: force[row] },
            tw_length { mm: from[row] },
        );
        let mut centre_force = tw_passive_force { n: 0.0 };
        let (mut there, mut deflection) = (tw_length { mm: 0.0 }, tw_deflection { mm: 0.0 });
        let (held_alone, worst_alone) = unsafe {
            (
                tw_centre_force(
                    bar_of.0,
                    bar_of.1,
                    bar_of.2,
                    springs.0,
                    springs.1,
                    springs.2,
                    force_of,
                    from_of,
                    &mut centre_force,
                    null_mut(),
                ),
                tw_worst_station(
                    bar_of.0,
                    bar_of.1,
                    bar_of.2,
                    springs.0,
                    springs.1,
                    springs.2,
                    force_of,
                    from_of,
                    tw_length { mm: to[row] },
                    2,
                    &mut there,
                    &mut deflection,
                    null_mut(),
                ),
            )
        };
        let asked = || {
            let bar = Bar::new(
                YoungsModulus::from_trade(modulus[row]).ok()?,
                Diameter::from_trade(diameter[row]).ok()?,
                Overhang::from_trade(overhang[row]).ok()?,
            );
            let mut springs = Springs::default();
            springs.chuck = spring(chuck[row])?;
            springs.chuck_rotational = spring(tilt[row])?;
            springs.centre = spring(centre[row])?;
            let force = PassiveForce::from_trade(force[row]).ok()?;
            Some((bar, springs, force, WorkLength::from_trade(from[row]).ok()?))
        };
        let force = asked().and_then(|(bar, springs, force, from)| {
            bar::centre_force(&bar, &springs, force, from).ok()
        });
        let worst = asked().and_then(|(bar, springs, force, from)| {
            let to = WorkLength::from_trade(to[row]).ok()?;
            bar::worst_station(&bar, &springs, Support::ChuckAndCentre, force, from, to).ok()
        });
        good += usize::from(worst.is_some());
        rigid += usize::from(worst.is_some() && chuck[row] == f64::INFINITY);
        let number = |force: Option<PassiveForce>| force.map_or(f64::NAN, PassiveForce::trade);
        let holds = held_status[row] == held_alone as i32
            && worst_status[row] == worst_alone as i32
            && (held_alone == tw_status::TW_OK) == force.is_some()
            && (worst_alone == tw_status::TW_OK) == worst.is_some()
            && same(centre_force.n, number(force))
            && same(held[row], number(force))
            && same(there.mm, worst.map_or(f64::NAN, |(at, _)| at.mm()))
            && same(at[row], there.mm)
            && same(deflection.mm, worst.map_or(f64::NAN, |(_, most)| most.mm()))
            && same(most[row], deflection.mm);
        check(holds, || {
            format!("row {row}: {held_alone:?} {worst_alone:?} {force:?} {worst:?}")
        })?;
    }
    check(good > ROWS / 20 && good < ROWS && rigid > 0, || {
        format!("{good} good rows, {rigid} with a rigid chuck")
    })
}
