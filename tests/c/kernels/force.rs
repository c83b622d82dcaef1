//! Forces by the law of a material, and the law by measured ones.

use turnwright::ffi::{
    tw_chip_thickness, tw_chip_width, tw_corner_radius, tw_corrected_ratio,
    tw_corrected_ratio_column, tw_corrected_specific_force, tw_corrected_specific_force_column,
    tw_cutting_edge_angle, tw_cutting_speed, tw_depth_of_cut, tw_effective_edge_angle,
    tw_effective_edge_angle_column, tw_exponent, tw_feed, tw_feed_factor, tw_feed_factor_column,
    tw_feed_force, tw_force_factor, tw_force_of_power, tw_force_of_power_column, tw_force_scatter,
    tw_law_of_cut, tw_law_of_cut_column, tw_law_through, tw_law_through_column, tw_main_force,
    tw_measured_forces, tw_measured_forces_column, tw_normal_ratio, tw_parting_forces,
    tw_parting_forces_column, tw_passive_force, tw_power, tw_scattered, tw_scattered_column,
    tw_specific_force, tw_specific_force_at_chip, tw_specific_force_of_chip,
    tw_specific_force_of_chip_column, tw_width,
};
use turnwright::physics::engagement::ChipSection;
use turnwright::physics::force::{self, ForceLaw};
use turnwright::physics::three_forces::{self, ThreeLaws};
use turnwright::physics::{force_factors, measured_force, parting};
use turnwright::{
    BladeWidth, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut,
    Feed, FeedForce, ForceExponent, ForceFactor, ForceScatter, MainForce, NormalRatio,
    PassiveForce, Power, Quantity, SpecificCuttingForce, SpecificForceAtChip,
};

kernels! {
    "feed_factor" tw_feed_factor tw_feed_factor_column
        [exponent tw_exponent ratio ForceExponent 0.02 0.6, from tw_feed mm_per_rev Feed 0.02 1.0, to tw_feed mm_per_rev Feed 0.02 1.0]
        [force_factor tw_force_factor ratio ForceFactor]
        {
let law = ForceLaw::new(SpecificCuttingForce::from_trade(1800.0).unwrap(), exponent);
let found = force::feed_factor(law, from, to);
Some([found.trade()])
        };
    "effective_edge_angle" tw_effective_edge_angle tw_effective_edge_angle_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9]
        [edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle]
        {
let forces = force::cutting_forces(ForceLaw::new(specific_force, exponent), depth_of_cut, feed, cutting_edge_angle, corner_radius, normal_ratio);
let found = force::effective_edge_angle(&forces);
Some([found.trade()])
        };
    "corrected_specific_force" tw_corrected_specific_force tw_corrected_specific_force_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, force_factor tw_force_factor ratio ForceFactor 0.5 2.0]
        [corrected tw_specific_force mpa SpecificCuttingForce]
        {
let law = ForceLaw::new(specific_force, ForceExponent::from_trade(0.4).unwrap());
let found = force_factors::corrected(law, force_factor).specific_force;
Some([found.trade()])
        };
    "corrected_ratio" tw_corrected_ratio tw_corrected_ratio_column
        [normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9, main_factor tw_force_factor ratio ForceFactor 0.5 2.0, normal_factor tw_force_factor ratio ForceFactor 0.5 2.0]
        [corrected tw_normal_ratio ratio NormalRatio]
        {

let found = force_factors::corrected_ratio(normal_ratio, main_factor, normal_factor);
Some([found.trade()])
        };
    "scattered" tw_scattered tw_scattered_column
        [force_scatter tw_force_scatter ratio ForceScatter 0.05 0.9]
        [least tw_force_factor ratio ForceFactor, largest tw_force_factor ratio ForceFactor]
        {

let found = force_factors::scattered(force_scatter);
Some([found[0].trade(), found[1].trade()])
        };
    "parting_forces" tw_parting_forces tw_parting_forces_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, width tw_width mm BladeWidth 0.5 20.0, feed tw_feed mm_per_rev Feed 0.02 1.0, shape_factor tw_force_factor ratio ForceFactor 0.5 2.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9]
        [main_force tw_main_force n MainForce, feed_force tw_feed_force n FeedForce]
        {

let found = parting::parting_forces(ForceLaw::new(specific_force, exponent), width, feed, shape_factor, normal_ratio);
Some([found.main.trade(), found.feed.trade()])
        };
    "measured_forces" tw_measured_forces tw_measured_forces_column
        [main_specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, main_exponent tw_exponent ratio ForceExponent 0.02 0.6, feed_specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, feed_exponent tw_exponent ratio ForceExponent 0.02 0.6, passive_specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, passive_exponent tw_exponent ratio ForceExponent 0.02 0.6, chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0, chip_width tw_chip_width mm ChipWidth 0.1 5.0]
        [main_force tw_main_force n MainForce, feed_force tw_feed_force n FeedForce, passive_force tw_passive_force n PassiveForce]
        {
let laws = ThreeLaws::new(ForceLaw::new(main_specific_force, main_exponent), ForceLaw::new(feed_specific_force, feed_exponent), ForceLaw::new(passive_specific_force, passive_exponent));
let found = three_forces::measured_forces(laws, ChipSection::new(chip_thickness, chip_width));
Some([found.main.trade(), found.feed.trade(), found.passive.trade()])
        };
    "force_of_power" tw_force_of_power tw_force_of_power_column
        [power tw_power kw Power 0.1 10.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0]
        [main_force tw_main_force n MainForce]
        {

let found = measured_force::force_of_power(power, cutting_speed);
Some([found.trade()])
        };
    "specific_force_of_chip" tw_specific_force_of_chip tw_specific_force_of_chip_column
        [main_force tw_main_force n MainForce 10.0 3000.0, chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0, chip_width tw_chip_width mm ChipWidth 0.1 5.0]
        [specific_force_at_chip tw_specific_force_at_chip mpa SpecificForceAtChip]
        {

let found = measured_force::specific_force_of_chip(main_force, ChipSection::new(chip_thickness, chip_width));
Some([found.trade()])
        };
    "law_through" tw_law_through tw_law_through_column
        [specific_force_at_chip tw_specific_force_at_chip mpa SpecificForceAtChip 300.0 9000.0, chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0, exponent tw_exponent ratio ForceExponent 0.02 0.6]
        [specific_force tw_specific_force mpa SpecificCuttingForce]
        {

let found = measured_force::law_through(specific_force_at_chip, chip_thickness, exponent);
Some([found.specific_force.trade()])
        };
    "law_of_cut" tw_law_of_cut tw_law_of_cut_column
        [main_force tw_main_force n MainForce 10.0 3000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [specific_force tw_specific_force mpa SpecificCuttingForce]
        {

let found = measured_force::law_of_cut(main_force, exponent, depth_of_cut, feed, cutting_edge_angle, corner_radius);
Some([found.specific_force.trade()])
        };
}
