//! Centres and jaws.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_axial_force, tw_centre_hole, tw_centre_hole_column, tw_cone_depth, tw_cone_depth_column,
    tw_cone_pressure, tw_cone_pressure_column, tw_diameter, tw_feed_force, tw_force_factor,
    tw_friction, tw_grip_at_speed, tw_grip_at_speed_column, tw_grip_force, tw_grip_needed,
    tw_grip_needed_column, tw_highest_speed_of_grip, tw_highest_speed_of_grip_column, tw_length,
    tw_main_force, tw_mass, tw_mean_pressure, tw_passive_force, tw_radius, tw_side_pressure,
    tw_side_pressure_column, tw_spindle_speed, tw_status,
};
use turnwright::physics::centre;
use turnwright::physics::grip::{self, Jaws};
use turnwright::standards::centre_hole::{self, Form};
use turnwright::{
    AxialForce, Diameter, FeedForce, ForceFactor, Friction, GripForce, MainForce, Mass,
    MeanPressure, PassiveForce, Quantity, Radius, SpindleSpeed, WorkLength,
};

use crate::columns::{input, output, same};
use crate::{check, trial};

kernels! {
    "cone_pressure" tw_cone_pressure tw_cone_pressure_column
        [axial_force tw_axial_force n AxialForce 10.0 5000.0, countersink_diameter tw_diameter mm Diameter 2.0 30.0, pilot_diameter tw_diameter mm Diameter 1.0 10.0]
        [mean_pressure tw_mean_pressure mpa MeanPressure]
        {

let found = centre::cone_pressure(axial_force, countersink_diameter, pilot_diameter).ok()?;
Some([found.trade()])
        };
    "side_pressure" tw_side_pressure tw_side_pressure_column
        [radial_force tw_passive_force n PassiveForce 10.0 3000.0, countersink_diameter tw_diameter mm Diameter 2.0 30.0, pilot_diameter tw_diameter mm Diameter 1.0 10.0]
        [mean_pressure tw_mean_pressure mpa MeanPressure]
        {

let found = centre::side_pressure(radial_force, countersink_diameter, pilot_diameter).ok()?;
Some([found.trade()])
        };
    "cone_depth" tw_cone_depth tw_cone_depth_column
        [countersink_diameter tw_diameter mm Diameter 2.0 30.0, pilot_diameter tw_diameter mm Diameter 1.0 10.0]
        [depth tw_length mm WorkLength]
        {

let found = centre_hole::cone_depth(countersink_diameter, pilot_diameter).ok()?;
Some([found.trade()])
        };
    "grip_needed" tw_grip_needed tw_grip_needed_column
        [main_force tw_main_force n MainForce 10.0 3000.0, feed_force tw_feed_force n FeedForce 5.0 500.0, cut_at tw_diameter mm Diameter 5.0 300.0, gripped_at tw_diameter mm Diameter 5.0 300.0, friction tw_friction ratio Friction 0.01 1.4, safety tw_force_factor ratio ForceFactor 1.0 4.0]
        [grip_force tw_grip_force n GripForce]
        {

let found = grip::grip_needed(main_force, feed_force, cut_at, gripped_at, friction, safety).ok()?;
Some([found.trade()])
        };
    "grip_at_speed" tw_grip_at_speed tw_grip_at_speed_column
        [grip_at_rest tw_grip_force n GripForce 1000.0 60000.0, jaw_mass tw_mass kg Mass 0.1 5.0, jaw_radius tw_radius mm Radius 20.0 150.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] (3)
        [grip_force tw_grip_force n GripForce]
        {
let jaws = 3_u8;
let jaws = Jaws::new(jaws, jaw_mass, jaw_radius).ok()?;
let found = grip::grip_at_speed(grip_at_rest, &jaws, spindle_speed).ok()?;
Some([found.trade()])
        };
    "highest_speed_of_grip" tw_highest_speed_of_grip tw_highest_speed_of_grip_column
        [grip_at_rest tw_grip_force n GripForce 1000.0 60000.0, jaw_mass tw_mass kg Mass 0.1 5.0, jaw_radius tw_radius mm Radius 20.0 150.0] (3)
        [spindle_speed tw_spindle_speed rpm SpindleSpeed]
        {
let jaws = 3_u8;
let jaws = Jaws::new(jaws, jaw_mass, jaw_radius).ok()?;
let found = grip::highest_speed(grip_at_rest, &jaws);
Some([found.trade()])
        };
}

pub fn by_hand() -> Vec<Trial> {
    vec![trial("kernels/centre_hole", &[], centre_holes)]
}

fn centre_holes() -> Result<(), Failed> {
    for (number, form, holes) in [
        (1, Form::A, centre_hole::form_a()),
        (2, Form::B, centre_hole::form_b()),
    ] {
        let pilots: Vec<f64> = holes
            .iter()
            .map(|hole| hole.pilot().mm())
            .chain([2.6, f64::NAN])
            .collect();
        let rows = pilots.len();
        let mut out = vec![vec![0.0; rows]; 4];
        let mut statuses = vec![-1; rows];
        let [a, b, c, d] = &mut out[..] else {
            return Err(Failed::from("four columns"));
        };
        let status = unsafe {
            tw_centre_hole_column(
                &input::<Diameter>(&pilots, &Diameter::ROW.kind().units()[0]),
                number,
                &output::<Diameter>(a),
                &output::<Diameter>(b),
                &output::<WorkLength>(c),
                &output::<WorkLength>(d),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
        for (row, pilot) in pilots.iter().enumerate() {
            let (mut countersink, mut largest) = (tw_diameter { mm: 0.0 }, tw_diameter { mm: 0.0 });
            let (mut cone, mut drilling) = (tw_length { mm: 0.0 }, tw_length { mm: 0.0 });
            let alone = unsafe {
                tw_centre_hole(
                    tw_diameter { mm: *pilot },
                    number,
                    &mut countersink,
                    &mut largest,
                    &mut cone,
                    &mut drilling,
                    null_mut(),
                )
            };
            let expected = holes.get(row).map_or([f64::NAN; 4], |hole| {
                let (cone, drilling) = (hole.cone_depth().mm(), hole.drilling_depth().mm());
                [hole.countersink().mm(), hole.largest().mm(), cone, drilling]
            });
            let scalar = [countersink.mm, largest.mm, cone.mm, drilling.mm];
            let holds = statuses[row] == alone as i32
                && (alone == tw_status::TW_OK) == (row < holes.len())
                && scalar.iter().zip(expected).all(|(a, b)| same(*a, b))
                && out.iter().zip(expected).all(|(a, b)| same(a[row], b));
            check(holds, || {
                format!("{form} {pilot}: {alone:?} {scalar:?} {expected:?}")
            })?;
        }
    }
    Ok(())
}
