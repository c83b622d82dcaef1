//! Power and torque of a drive.

use turnwright::ffi::{
    tw_cutting_edge_angle, tw_cutting_speed, tw_depth_of_cut, tw_diameter, tw_efficiency,
    tw_exponent, tw_feed, tw_largest_depth_for_power, tw_largest_depth_for_power_column,
    tw_lowest_speed_for_cut, tw_lowest_speed_for_cut_column, tw_main_force, tw_motor_power,
    tw_motor_power_column, tw_power, tw_specific_force, tw_spindle_power, tw_spindle_power_column,
    tw_spindle_speed, tw_torque, tw_torque_at, tw_torque_at_column,
};
use turnwright::physics::drive;
use turnwright::physics::force::ForceLaw;
use turnwright::physics::torque_curve::TorqueCurve;
use turnwright::{
    CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Efficiency, Feed, ForceExponent,
    MainForce, Power, Quantity, SpecificCuttingForce, SpindleSpeed, Torque,
};

kernels! {
    "motor_power" tw_motor_power tw_motor_power_column
        [spindle_power tw_power kw Power 0.1 10.0, efficiency tw_efficiency ratio Efficiency 0.3 0.95]
        [motor_power tw_power kw Power]
        {

let found = drive::motor_power(spindle_power, efficiency);
Some([found.trade()])
        };
    "spindle_power" tw_spindle_power tw_spindle_power_column
        [motor_power tw_power kw Power 0.1 10.0, efficiency tw_efficiency ratio Efficiency 0.3 0.95]
        [spindle_power tw_power kw Power]
        {

let found = drive::spindle_power(motor_power, efficiency);
Some([found.trade()])
        };
    "torque_at" tw_torque_at tw_torque_at_column
        [power tw_power kw Power 0.1 10.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [torque tw_torque nm Torque]
        {

let found = drive::torque_at(power, spindle_speed);
Some([found.trade()])
        };
    "largest_depth_for_power" tw_largest_depth_for_power tw_largest_depth_for_power_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, power tw_power kw Power 0.1 10.0]
        [depth_of_cut tw_depth_of_cut mm DepthOfCut]
        {

let found = drive::largest_depth_for_power(ForceLaw::new(specific_force, exponent), feed, cutting_edge_angle, cutting_speed, power);
Some([found.trade()])
        };
    "lowest_speed_for_cut" tw_lowest_speed_for_cut tw_lowest_speed_for_cut_column
        [power tw_power kw Power 0.1 10.0, base_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, full_torque_from tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, main_force tw_main_force n MainForce 10.0 3000.0, mean_diameter tw_diameter mm Diameter 5.0 300.0]
        [spindle_speed tw_spindle_speed rpm SpindleSpeed]
        {
let drive = TorqueCurve::new(power).with_base_speed(base_speed).with_full_torque_from(full_torque_from).ok()?;
let runs = drive.speeds_that_run(main_force, mean_diameter).ok()?;
Some([runs.lowest?.trade()])
        };
}
