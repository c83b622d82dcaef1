//! The section of a chip and the edge that cuts it.

use turnwright::ffi::{
    tw_chip_area, tw_chip_section, tw_chip_section_column, tw_chip_thickness, tw_chip_width,
    tw_corner_radius, tw_cutting_edge_angle, tw_depth_of_cut, tw_edge_lead, tw_edge_lead_column,
    tw_engaged_edge, tw_engaged_edge_column, tw_feed, tw_largest_edge_angle,
    tw_largest_edge_angle_column, tw_least_depth, tw_least_depth_column, tw_length,
    tw_minor_cutting_edge_angle, tw_thickest_chip, tw_thickest_chip_column,
};
use turnwright::physics::edge_in_cut;
use turnwright::physics::engagement;
use turnwright::{
    ChipArea, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, DepthOfCut, Feed,
    MinorCuttingEdgeAngle, Quantity, WorkLength,
};

kernels! {
    "chip_section" tw_chip_section tw_chip_section_column
        [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0]
        [chip_thickness tw_chip_thickness mm ChipThickness, chip_width tw_chip_width mm ChipWidth]
        {

let found = engagement::chip_section(depth_of_cut, feed, cutting_edge_angle);
Some([found.thickness.trade(), found.width.trade()])
        };
    "largest_edge_angle" tw_largest_edge_angle tw_largest_edge_angle_column
        [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [largest_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle]
        {

let found = engagement::largest_edge_angle(depth_of_cut, cutting_edge_angle, corner_radius);
Some([found.trade()])
        };
    "thickest_chip" tw_thickest_chip tw_thickest_chip_column
        [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.2 3.0]
        [chip_thickness tw_chip_thickness mm ChipThickness]
        {

let found = engagement::thickest_chip(depth_of_cut, feed, corner_radius).ok()?;
Some([found.trade()])
        };
    "least_depth" tw_least_depth tw_least_depth_column
        [least_chip_thickness tw_chip_thickness mm ChipThickness 0.001 0.05, feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [depth_of_cut tw_depth_of_cut mm DepthOfCut]
        {

let found = engagement::least_depth(least_chip_thickness, feed, corner_radius).ok()?;
Some([found.trade()])
        };
    "edge_lead" tw_edge_lead tw_edge_lead_column
        [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0]
        [lead tw_length mm WorkLength]
        {
let found = engagement::edge_lead(depth_of_cut, cutting_edge_angle);
Some([found.map_or(0.0, WorkLength::mm)])
        };
    "engaged_edge" tw_engaged_edge tw_engaged_edge_column
        [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 2.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle 2.0 60.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [arc_start tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle, arc_end tw_cutting_edge_angle deg CuttingEdgeAngle, ridge_area tw_chip_area mm2 ChipArea, chord_angle tw_cutting_edge_angle deg CuttingEdgeAngle]
        {

let found = edge_in_cut::engaged_edge(depth_of_cut, feed, cutting_edge_angle, minor_cutting_edge_angle, corner_radius).ok()?;
Some([found.arc_start.trade(), found.arc_end.trade(), found.ridge_area.trade(), found.chord_angle.trade()])
        };
}
