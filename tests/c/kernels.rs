//! Scalar calls and their column twins against the kernels of Rust, bit for bit.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::advice::mark;
use turnwright::ffi::{
    tw_acceptance, tw_acceptance_column, tw_arc_roughness, tw_arc_roughness_column, tw_arc_shape,
    tw_arc_shape_column, tw_axial_force, tw_boring_bar_deflection, tw_boring_bar_deflection_column,
    tw_capability, tw_capability_index, tw_capability_of, tw_capability_of_column, tw_centre_force,
    tw_centre_force_column, tw_centre_hole, tw_centre_hole_column, tw_chip_area, tw_chip_section,
    tw_chip_section_column, tw_chip_thickness, tw_chip_width, tw_column, tw_compound_angle,
    tw_compound_angle_from_cross_slide, tw_cone_depth, tw_cone_depth_column, tw_cone_pressure,
    tw_cone_pressure_column, tw_corner_radius, tw_corrected_ratio, tw_corrected_ratio_column,
    tw_corrected_specific_force, tw_corrected_specific_force_column, tw_coverage_factor,
    tw_cut_off, tw_cut_off_by_feed, tw_cut_off_by_feed_column, tw_cut_off_by_ra,
    tw_cut_off_by_ra_column, tw_cut_off_by_rz, tw_cut_off_by_rz_column, tw_cutting_edge_angle,
    tw_cutting_speed, tw_cutting_speed_of, tw_cutting_speed_of_column, tw_deflection, tw_density,
    tw_depth_of_cut, tw_deviations_from, tw_deviations_from_column, tw_dial_diameter,
    tw_dial_diameter_column, tw_dial_mark_for, tw_dial_mark_for_column, tw_diameter,
    tw_diameter_error, tw_division, tw_edge_lead, tw_edge_lead_column, tw_edge_radius,
    tw_effective_edge_angle, tw_effective_edge_angle_column, tw_efficiency, tw_engaged_edge,
    tw_engaged_edge_column, tw_expanded_uncertainty, tw_expanded_uncertainty_column, tw_expansion,
    tw_exponent, tw_fastest_life, tw_fastest_life_column, tw_feed, tw_feed_factor,
    tw_feed_factor_column, tw_feed_for_ra_arc, tw_feed_for_ra_arc_column, tw_feed_for_rz_arc,
    tw_feed_for_rz_arc_column, tw_feed_force, tw_feed_rate, tw_feed_rate_of,
    tw_feed_rate_of_column, tw_feed_unevenness, tw_force_factor, tw_force_of_power,
    tw_force_of_power_column, tw_force_scatter, tw_friction, tw_from_axis, tw_from_axis_column,
    tw_from_cross_slide, tw_from_cross_slide_column, tw_full_speed_below,
    tw_full_speed_below_column, tw_general_tolerance, tw_general_tolerance_column,
    tw_grip_at_speed, tw_grip_at_speed_column, tw_grip_force, tw_grip_needed,
    tw_grip_needed_column, tw_half_angle, tw_half_width, tw_highest_speed_of_grip,
    tw_highest_speed_of_grip_column, tw_included_angle, tw_instrument_error,
    tw_instrument_error_column, tw_instrument_uncertainty, tw_largest_depth_for_power,
    tw_largest_depth_for_power_column, tw_largest_edge_angle, tw_largest_edge_angle_column,
    tw_largest_feed_for, tw_largest_feed_for_column, tw_largest_standard_uncertainty,
    tw_largest_standard_uncertainty_column, tw_law_of_cut, tw_law_of_cut_column, tw_law_through,
    tw_law_through_column, tw_least_chip_by_model, tw_least_chip_by_model_column, tw_least_depth,
    tw_least_depth_column, tw_least_minor_angle_for_arc, tw_least_minor_angle_for_arc_column,
    tw_left_after_equal_infeeds, tw_left_after_equal_infeeds_column, tw_left_after_passes,
    tw_left_after_passes_column, tw_length, tw_length_at_20, tw_length_at_20_column, tw_life,
    tw_life_constant, tw_life_constant_through, tw_life_constant_through_column, tw_life_exponent,
    tw_limits_from_deviations, tw_limits_from_deviations_column, tw_lower_deviation,
    tw_lowest_speed_for_cut, tw_lowest_speed_for_cut_column, tw_main_force, tw_mass,
    tw_mass_of_bar, tw_mass_of_bar_column, tw_mean_diameter, tw_mean_diameter_column,
    tw_mean_pressure, tw_measured_forces, tw_measured_forces_column, tw_minor_cutting_edge_angle,
    tw_motor_power, tw_motor_power_column, tw_normal_ratio, tw_outcome_with_uniform,
    tw_outcome_with_uniform_column, tw_overhang, tw_parting_forces, tw_parting_forces_column,
    tw_passive_force, tw_pip_diameter, tw_pip_diameter_column, tw_power, tw_price_rework,
    tw_price_scrap, tw_probability, tw_ra, tw_radius, tw_rake_angle, tw_rake_change,
    tw_rake_change_column, tw_removal_rate, tw_removal_rate_at, tw_removal_rate_at_column,
    tw_removal_rate_of, tw_removal_rate_of_column, tw_resolution, tw_rise, tw_rku,
    tw_rotational_stiffness, tw_roughness_grade, tw_roughness_grade_column,
    tw_roughness_transmission, tw_roughness_transmission_column, tw_rq, tw_rsk, tw_rsm, tw_rt,
    tw_rz, tw_scattered, tw_scattered_column, tw_set_over, tw_shank_deflection,
    tw_shank_deflection_column, tw_shank_size, tw_short_cut_off, tw_short_cut_off_for,
    tw_short_cut_off_for_column, tw_short_wave_transmission, tw_short_wave_transmission_column,
    tw_shows, tw_side_pressure, tw_side_pressure_column, tw_slow_below, tw_slow_below_column,
    tw_specific_force, tw_specific_force_at_chip, tw_specific_force_of_chip,
    tw_specific_force_of_chip_column, tw_speed_in_facing, tw_speed_in_facing_column,
    tw_speed_of_step, tw_speed_of_step_column, tw_spindle_power, tw_spindle_power_column,
    tw_spindle_speed, tw_spring_passes, tw_spring_passes_column, tw_spring_share,
    tw_standard_uncertainty, tw_standard_uncertainty_of, tw_standard_uncertainty_of_column,
    tw_standard_uncertainty_of_resolution, tw_standard_uncertainty_of_resolution_column, tw_status,
    tw_step_ratio, tw_stiffness, tw_stiffness_from_taper, tw_stiffness_from_taper_column,
    tw_tailstock_error, tw_tailstock_error_column, tw_taper_change_over,
    tw_taper_change_over_column, tw_taper_error, tw_taper_error_column, tw_taper_large_for,
    tw_taper_large_for_column, tw_taper_length_between, tw_taper_length_between_column,
    tw_taper_of_half_angle, tw_taper_of_half_angle_column, tw_taper_of_included_angle,
    tw_taper_of_included_angle_column, tw_taper_of_ratio, tw_taper_of_ratio_column,
    tw_taper_of_set_over, tw_taper_of_set_over_column, tw_taper_ratio, tw_taper_slide_travel,
    tw_taper_slide_travel_column, tw_taper_small_for, tw_taper_small_for_column,
    tw_theoretical_shape, tw_theoretical_shape_column, tw_thickest_chip, tw_thickest_chip_column,
    tw_time, tw_time_of_cut, tw_time_of_cut_column, tw_tolerance, tw_tolerance_by_formula,
    tw_tolerance_by_formula_column, tw_tool_height, tw_torque, tw_torque_at, tw_torque_at_column,
    tw_transmission, tw_travel, tw_travel_per_turn, tw_travel_per_turn_column, tw_turned_diameter,
    tw_turned_diameter_column, tw_uneven_spread, tw_uneven_spread_column, tw_upper_deviation,
    tw_usual_set_over, tw_usual_set_over_column, tw_width, tw_worst_station,
    tw_worst_station_column, tw_youngs_modulus,
};
use turnwright::physics::aim::{self, Prices};
use turnwright::physics::bar::{self, Bar, Springs, Support};
use turnwright::physics::budget::{self, Component};
use turnwright::physics::engagement::{self, ChipSection};
use turnwright::physics::facing::{self, FacingPace};
use turnwright::physics::finish::{self, ToolOutline};
use turnwright::physics::force::{self, ForceLaw};
use turnwright::physics::grip::{self, Jaws};
use turnwright::physics::least_chip::{self, LeastChipModel};
use turnwright::physics::measured_taper::{self, Measured};
use turnwright::physics::section::Section;
use turnwright::physics::spread::{self, SizeSpread};
use turnwright::physics::spring_back::{self, Edge};
use turnwright::physics::taper::{self, Taper};
use turnwright::physics::three_forces::{self, ThreeLaws};
use turnwright::physics::torque_curve::TorqueCurve;
use turnwright::physics::wear::{self, LifeLaw};
use turnwright::physics::{
    centre, drive, edge_in_cut, feed_for_finish, force_factors, gaussian, heat, measured_force,
    parting, speed, speed_series, tool_height, tool_overhang, uneven_feed,
};
use turnwright::standards::centre_hole::{self, Form};
use turnwright::standards::decision;
use turnwright::standards::general_tolerance::{self, GeneralClass};
use turnwright::standards::instrument::{self, Instrument};
use turnwright::standards::limit_deviations::LimitDeviations;
use turnwright::standards::limits::{Feature, Limits};
use turnwright::standards::texture;
use turnwright::standards::tolerance_grade::{ToleranceGrade, tolerance_by_formula};
use turnwright::{
    AxialForce, BladeWidth, Capability, CapabilityIndex, ChipArea, ChipThickness, ChipWidth,
    CompoundAngle, CornerRadius, CoverageFactor, CrossSlideAngle, CutOff, CuttingEdgeAngle,
    CuttingSpeed, Deflection, Density, DepthOfCut, Diameter, DiameterError, Division, Duration,
    EdgeRadius, Efficiency, Engraved, Feed, FeedForce, FeedRate, FeedUnevenness, ForceExponent,
    ForceFactor, ForceScatter, Friction, GripForce, HalfAngle, HalfWidth, IncludedAngle,
    LifeConstant, LifeExponent, LowerDeviation, MainForce, Mass, MeanPressure,
    MinorCuttingEdgeAngle, NormalRatio, Overhang, PassiveForce, Power, PriceRework, PriceScrap,
    Probability, Quantity, Ra, Radius, RakeAngle, RemovalRate, Resolution, Rku,
    RotationalStiffness, Rq, Rsk, Rsm, Rt, Rz, SetOver, ShankSize, ShortCutOff, SizeUncertainty,
    SpecificCuttingForce, SpecificForceAtChip, SpindleSpeed, SpringShare, StandardUncertainty,
    Stiffness, TaperRatio, TemperatureRise, ThermalExpansion, Tolerance, ToolHeight, ToolLife,
    Torque, Transmission, Travel, UpperDeviation, WorkLength, YoungsModulus,
};
use turnwright::{Dial, DialReads, Divisions, DivisionsPerTurn};

use crate::columns::{Numbers, input, output, same};
use crate::{check, trial};

/// One trial a pair: rows through the range and beyond; statuses and answers of the column, of the
/// scalar call and of the kernel of Rust are the same. Whole numbers stand behind the figures that
/// are read; one that is answered stands in angle brackets.
macro_rules! kernels {
    ($($name:literal $scalar:ident $column:ident
       [$($a:ident $c:ident $field:ident $q:ident $low:literal $high:literal),+]
       $(($($whole:expr),+))?
       [$($o:ident $oc:ident $of:ident $oq:ident),+]
       $(<$number:ident>)?
       $rust:block;)*) => {
        pub fn trials() -> Vec<Trial> {
            vec![$(
                trial(concat!("kernels/", $name), &[], || {
                    const ROWS: usize = 3_000;
                    let mut numbers = Numbers(23);
                    $( let $a = numbers.column($low, $high, ROWS); )+
                    $( let mut $o = vec![0.0; ROWS]; )+
                    $( let mut $number = vec![-1; ROWS]; )?
                    let mut statuses = vec![-1; ROWS];
                    let status = unsafe {
                        $column(
                            $( &input::<$q>(&$a, &$q::ROW.kind().units()[0]), )+
                            $( $($whole,)+ )?
                            $( &output::<$oq>(&mut $o), )+
                            $( $number.as_mut_ptr(), 4, )?
                            statuses.as_mut_ptr(),
                            4,
                            null_mut(),
                        )
                    };
                    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
                    let columns: Vec<Vec<f64>> = vec![
                        $( $o, )+
                        $( $number.into_iter().map(f64::from).collect(), )?
                    ];
                    let mut good = 0;
                    for row in 0..ROWS {
                        $( let mut $o = $oc { $of: 0.0 }; )+
                        $( let mut $number = -1; )?
                        let alone = unsafe {
                            $scalar(
                                $( $c { $field: $a[row] }, )+
                                $( $($whole,)+ )?
                                $( &mut $o, )+
                                $( &mut $number, )?
                                null_mut(),
                            )
                        };
                        let scalar = vec![$( $o.$of, )+ $( f64::from($number), )?];
                        let rust = || {
                            $( let $a = $q::from_trade($a[row]).ok()?; )+
                            $rust
                        };
                        let words = || {
                            let column: Vec<f64> = columns.iter().map(|one| one[row]).collect();
                            let given = [$( $a[row] ),+];
                            format!("row {row}: {given:?} {column:?} {scalar:?} {:?} {alone:?}", rust())
                        };
                        check(statuses[row] == alone as i32, words)?;
                        check(columns.iter().zip(&scalar).all(|(a, b)| same(a[row], *b)), words)?;
                        let kernel = rust();
                        check((alone == tw_status::TW_OK) == kernel.is_some(), words)?;
                        if let Some(kernel) = kernel {
                            good += 1;
                            check(kernel.len() == scalar.len(), words)?;
                            check(kernel.iter().zip(&scalar).all(|(a, b)| same(*a, *b)), words)?;
                        }
                    }
                    check(good > ROWS / 20 && good < ROWS, || format!("{good} good rows"))
                }),
            )*]
            .into_iter()
            .chain(by_hand())
            .collect()
        }
    };
}

kernels! {
    "cutting_speed_of" tw_cutting_speed_of tw_cutting_speed_of_column
        [spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, diameter tw_diameter mm Diameter 5.0 300.0]
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed]
        {

let found = speed::cutting_speed(spindle_speed, diameter);
Some([found.trade()])
        };
    "feed_rate_of" tw_feed_rate_of tw_feed_rate_of_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [feed_rate tw_feed_rate mm_per_min FeedRate]
        {

let found = speed::feed_rate(feed, spindle_speed);
Some([found.trade()])
        };
    "time_of_cut" tw_time_of_cut tw_time_of_cut_column
        [length tw_length mm WorkLength 10.0 2000.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [time tw_time s Duration]
        {

let found = speed::time_of_cut(length, feed, spindle_speed);
Some([found.trade()])
        };
    "removal_rate_of" tw_removal_rate_of tw_removal_rate_of_column
        [diameter tw_diameter mm Diameter 5.0 300.0, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 20.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [removal_rate tw_removal_rate cm3_per_min RemovalRate]
        {

let found = speed::removal_rate(diameter, depth_of_cut, feed, spindle_speed).ok()?;
Some([found.trade()])
        };
    "removal_rate_at" tw_removal_rate_at tw_removal_rate_at_column
        [chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0, chip_width tw_chip_width mm ChipWidth 0.1 5.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0]
        [removal_rate tw_removal_rate cm3_per_min RemovalRate]
        {

let found = speed::removal_rate_at(ChipSection::new(chip_thickness, chip_width), cutting_speed);
Some([found.trade()])
        };
    "mean_diameter" tw_mean_diameter tw_mean_diameter_column
        [diameter tw_diameter mm Diameter 5.0 300.0, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 20.0]
        [mean_diameter tw_diameter mm Diameter]
        {

let found = speed::mean_diameter(diameter, depth_of_cut).ok()?;
Some([found.trade()])
        };
    "speed_of_step" tw_speed_of_step tw_speed_of_step_column
        [first tw_spindle_speed rpm SpindleSpeed 20.0 20000.0] (3, 7)
        [spindle_speed tw_spindle_speed rpm SpindleSpeed]
        {
let step = 3;
let place = 7;

let found = speed_series::speed_of_step(first, step, place).ok()?;
Some([found.trade()])
        };
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
    "length_at_20" tw_length_at_20 tw_length_at_20_column
        [measured tw_length mm WorkLength 10.0 2000.0, expansion tw_expansion um_per_mk ThermalExpansion 1.0 30.0, rise tw_rise k TemperatureRise 1.0 200.0]
        [length tw_length mm WorkLength]
        {

let found = heat::length_at_20(measured, expansion, rise);
Some([found.trade()])
        };
    "mass_of_bar" tw_mass_of_bar tw_mass_of_bar_column
        [density tw_density kg_per_m3 Density 1000.0 20000.0, diameter tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [mass tw_mass kg Mass]
        {

let found = heat::mass_of_bar(density, diameter, length);
Some([found.trade()])
        };
    "fastest_life" tw_fastest_life tw_fastest_life_column
        [constant tw_life_constant m_per_min LifeConstant 20.0 1000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, change_time tw_time s Duration 1.0 600.0]
        [life tw_life s ToolLife, cutting_speed tw_cutting_speed m_per_min CuttingSpeed]
        {

let found = wear::fastest_life(LifeLaw::new(constant, exponent), change_time).ok()?;
Some([found.life.trade(), found.cutting_speed.trade()])
        };
    "life_constant_through" tw_life_constant_through tw_life_constant_through_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, life tw_life s ToolLife 30.0 20000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2]
        [constant tw_life_constant m_per_min LifeConstant]
        {

let found = LifeLaw::through(cutting_speed, life, exponent).ok()?;
Some([found.constant().trade()])
        };
    "taper_of_ratio" tw_taper_of_ratio tw_taper_of_ratio_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0]
        [half_angle tw_half_angle deg HalfAngle, included_angle tw_included_angle deg IncludedAngle]
        {

let found = Taper::of_ratio(taper_ratio);
Some([found.half_angle().trade(), found.included_angle().trade()])
        };
    "taper_of_half_angle" tw_taper_of_half_angle tw_taper_of_half_angle_column
        [half_angle tw_half_angle deg HalfAngle 0.05 60.0]
        [taper_ratio tw_taper_ratio ratio TaperRatio, included_angle tw_included_angle deg IncludedAngle]
        {

let found = Taper::of_half_angle(half_angle);
Some([found.ratio().trade(), found.included_angle().trade()])
        };
    "taper_of_included_angle" tw_taper_of_included_angle tw_taper_of_included_angle_column
        [included_angle tw_included_angle deg IncludedAngle 0.1 120.0]
        [taper_ratio tw_taper_ratio ratio TaperRatio, half_angle tw_half_angle deg HalfAngle]
        {

let found = Taper::of_included_angle(included_angle);
Some([found.ratio().trade(), found.half_angle().trade()])
        };
    "taper_change_over" tw_taper_change_over tw_taper_change_over_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length tw_length mm WorkLength 10.0 2000.0]
        [change tw_diameter_error mm DiameterError]
        {

let found = Taper::of_ratio(taper_ratio).change_over(length);
Some([found.trade()])
        };
    "taper_small_for" tw_taper_small_for tw_taper_small_for_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, large tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [small tw_diameter mm Diameter]
        {

let found = Taper::of_ratio(taper_ratio).small_for(large, length).ok()?;
Some([found.trade()])
        };
    "taper_large_for" tw_taper_large_for tw_taper_large_for_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, small tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [large tw_diameter mm Diameter]
        {

let found = Taper::of_ratio(taper_ratio).large_for(small, length);
Some([found.trade()])
        };
    "taper_length_between" tw_taper_length_between tw_taper_length_between_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, large tw_diameter mm Diameter 5.0 300.0, small tw_diameter mm Diameter 5.0 300.0]
        [length tw_length mm WorkLength]
        {

let found = Taper::of_ratio(taper_ratio).length_between(large, small).ok()?;
Some([found.trade()])
        };
    "taper_slide_travel" tw_taper_slide_travel tw_taper_slide_travel_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length tw_length mm WorkLength 10.0 2000.0]
        [travel tw_travel mm Travel]
        {

let found = Taper::of_ratio(taper_ratio).slide_travel(length);
Some([found.trade()])
        };
    "from_cross_slide" tw_from_cross_slide tw_from_cross_slide_column
        [compound_angle tw_compound_angle deg CompoundAngle 0.1 80.0]
        [compound_angle_from_cross_slide tw_compound_angle_from_cross_slide deg CrossSlideAngle]
        {

let found = taper::from_cross_slide(compound_angle);
Some([found.trade()])
        };
    "from_axis" tw_from_axis tw_from_axis_column
        [compound_angle_from_cross_slide tw_compound_angle_from_cross_slide deg CrossSlideAngle 1.0 89.9]
        [compound_angle tw_compound_angle deg CompoundAngle]
        {

let found = taper::from_axis(compound_angle_from_cross_slide).ok()?;
Some([found.trade()])
        };
    "usual_set_over" tw_usual_set_over tw_usual_set_over_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length_between_centres tw_length mm WorkLength 10.0 2000.0]
        [set_over tw_set_over mm SetOver]
        {

let found = taper::usual_set_over(Taper::of_ratio(taper_ratio), length_between_centres);
Some([found.trade()])
        };
    "taper_of_set_over" tw_taper_of_set_over tw_taper_of_set_over_column
        [set_over tw_set_over mm SetOver 0.01 50.0, length_between_centres tw_length mm WorkLength 10.0 2000.0]
        [half_angle tw_half_angle deg HalfAngle, taper_ratio tw_taper_ratio ratio TaperRatio]
        {

let found = taper::taper_of_set_over(set_over, length_between_centres).ok()?;
Some([found.half_angle().trade(), found.ratio().trade()])
        };
    "speed_in_facing" tw_speed_in_facing tw_speed_in_facing_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, diameter tw_diameter mm Diameter 5.0 300.0]
        [spindle_speed tw_spindle_speed rpm SpindleSpeed, speed_there tw_cutting_speed m_per_min CuttingSpeed]
        {
let found = speed::spindle_speed(cutting_speed, diameter).min(max_spindle_speed);
Some([found.trade(), speed::cutting_speed(found, diameter).trade()])
        };
    "full_speed_below" tw_full_speed_below tw_full_speed_below_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [diameter tw_diameter mm Diameter]
        {
let pace = FacingPace::SpindleSpeed(max_spindle_speed);
let facing::SlowBelow::Diameter(found) = facing::slow_below(pace, cutting_speed) else { return None };
Some([found.trade()])
        };
    "turned_diameter" tw_turned_diameter tw_turned_diameter_column
        [zeroed_at tw_diameter mm Diameter 5.0 300.0, moved_in tw_travel mm Travel 0.01 50.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter tw_diameter mm Diameter]
        {

let found = tool_height::turned_diameter(zeroed_at, moved_in, tool_height).ok()?;
Some([found.trade()])
        };
    "taper_error" tw_taper_error tw_taper_error_column
        [large tw_diameter mm Diameter 5.0 300.0, small tw_diameter mm Diameter 5.0 300.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter_error tw_diameter_error mm DiameterError]
        {

let found = tool_height::taper_error(large, small, tool_height).ok()?;
Some([found.trade()])
        };
    "rake_change" tw_rake_change tw_rake_change_column
        [diameter tw_diameter mm Diameter 5.0 300.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [rake_angle tw_rake_angle deg RakeAngle]
        {

let found = tool_height::rake_change(diameter, tool_height).ok()?;
Some([found.trade()])
        };
    "pip_diameter" tw_pip_diameter tw_pip_diameter_column
        [tool_height tw_tool_height mm ToolHeight 0.01 5.0]
        [diameter tw_diameter mm Diameter]
        {
let found = facing::pip_diameter(tool_height);
Some([found.map_or(0.0, Diameter::mm)])
        };
    "shank_deflection" tw_shank_deflection tw_shank_deflection_column
        [main_force tw_main_force n MainForce 10.0 3000.0, overhang tw_overhang mm Overhang 1.0 900.0, shank_width tw_shank_size mm ShankSize 5.0 50.0, shank_height tw_shank_size mm ShankSize 5.0 50.0, youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0]
        [deflection tw_deflection mm Deflection]
        {

let found = tool_overhang::shank_deflection(main_force, overhang, shank_width, shank_height, youngs_modulus);
Some([found.trade()])
        };
    "boring_bar_deflection" tw_boring_bar_deflection tw_boring_bar_deflection_column
        [passive_force tw_passive_force n PassiveForce 10.0 3000.0, overhang tw_overhang mm Overhang 1.0 900.0, bar_diameter tw_diameter mm Diameter 5.0 300.0, youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0]
        [deflection tw_deflection mm Deflection]
        {

let found = tool_overhang::boring_bar_deflection(passive_force, overhang, bar_diameter, youngs_modulus);
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
    "roughness_transmission" tw_roughness_transmission tw_roughness_transmission_column
        [wavelength tw_rsm mm Rsm 0.01 2.0, cut_off tw_cut_off mm CutOff 0.08 8.0]
        [transmission tw_transmission ratio Transmission]
        {

let found = gaussian::roughness_transmission(wavelength, cut_off);
Some([found.trade()])
        };
    "short_wave_transmission" tw_short_wave_transmission tw_short_wave_transmission_column
        [wavelength tw_rsm mm Rsm 0.01 2.0, short_cut_off tw_short_cut_off mm ShortCutOff 0.0025 0.025]
        [transmission tw_transmission ratio Transmission]
        {

let found = gaussian::short_wave_transmission(wavelength, short_cut_off);
Some([found.trade()])
        };
    "arc_roughness" tw_arc_roughness tw_arc_roughness_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [rt tw_rt um Rt, rz tw_rz um Rz, ra tw_ra um Ra, rq tw_rq um Rq]
        {

let found = finish::arc_roughness(feed, corner_radius).ok()?;
Some([found.rt.trade(), found.rz.trade(), found.ra.trade(), found.rq.trade()])
        };
    "least_minor_angle_for_arc" tw_least_minor_angle_for_arc tw_least_minor_angle_for_arc_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle]
        {

let found = finish::least_minor_angle_for_arc(feed, corner_radius).ok()?;
Some([found.trade()])
        };
    "theoretical_shape" tw_theoretical_shape tw_theoretical_shape_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 140.0, minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle 2.0 80.0]
        [rsk tw_rsk ratio Rsk, rku tw_rku ratio Rku]
        {
let outline = ToolOutline::new(corner_radius, cutting_edge_angle, minor_cutting_edge_angle).ok()?;
let found = finish::theoretical_shape(feed, &outline);
Some([found.rsk.trade(), found.rku.trade()])
        };
    "arc_shape" tw_arc_shape tw_arc_shape_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [rsk tw_rsk ratio Rsk, rku tw_rku ratio Rku]
        {

let found = finish::arc_shape(feed, corner_radius).ok()?;
Some([found.rsk.trade(), found.rku.trade()])
        };
    "feed_for_rz_arc" tw_feed_for_rz_arc tw_feed_for_rz_arc_column
        [rz tw_rz um Rz 0.05 150.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [feed tw_feed mm_per_rev Feed]
        {

let found = feed_for_finish::feed_for_rz_arc(rz, corner_radius).ok()?;
Some([found.trade()])
        };
    "feed_for_ra_arc" tw_feed_for_ra_arc tw_feed_for_ra_arc_column
        [ra tw_ra um Ra 0.01 60.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [feed tw_feed mm_per_rev Feed]
        {

let found = feed_for_finish::feed_for_ra_arc(ra, corner_radius).ok()?;
Some([found.trade()])
        };
    "uneven_spread" tw_uneven_spread tw_uneven_spread_column
        [feed tw_feed mm_per_rev Feed 0.02 0.5, feed_unevenness tw_feed_unevenness ratio FeedUnevenness 0.01 0.3, corner_radius tw_corner_radius mm CornerRadius 0.2 3.0, evaluation_length tw_length mm WorkLength 1.0 50.0]
        [ra tw_ra um Ra, ra_5 tw_ra um Ra, ra_50 tw_ra um Ra, ra_95 tw_ra um Ra, rt_5 tw_rt um Rt, rt_50 tw_rt um Rt, rt_95 tw_rt um Rt]
        {

let found = uneven_feed::uneven_spread(feed, feed_unevenness, corner_radius, evaluation_length).ok()?;
Some([found.ra.trade(), found.ra_5.trade(), found.ra_50.trade(), found.ra_95.trade(), found.rt_5.trade(), found.rt_50.trade(), found.rt_95.trade()])
        };
    "cut_off_by_feed" tw_cut_off_by_feed tw_cut_off_by_feed_column
        [feed tw_feed mm_per_rev Feed 0.008 6.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_feed(feed).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "cut_off_by_ra" tw_cut_off_by_ra tw_cut_off_by_ra_column
        [ra tw_ra um Ra 0.004 90.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_ra(ra).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "cut_off_by_rz" tw_cut_off_by_rz tw_cut_off_by_rz_column
        [rz tw_rz um Rz 0.02 240.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_rz(rz).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "least_chip_by_model" tw_least_chip_by_model tw_least_chip_by_model_column
        [edge_radius tw_edge_radius mm EdgeRadius 0.001 0.05] (2)
        [chip_thickness tw_chip_thickness mm ChipThickness]
        {
let model = LeastChipModel::Stagnation;

let found = least_chip::least_chip(edge_radius, model);
Some([found.trade()])
        };
    "limits_from_deviations" tw_limits_from_deviations tw_limits_from_deviations_column
        [nominal tw_diameter mm Diameter 5.0 300.0, upper_deviation tw_upper_deviation mm UpperDeviation 0.001 0.2, lower_deviation tw_lower_deviation mm LowerDeviation 0.001 0.1]
        [smallest tw_diameter mm Diameter, largest tw_diameter mm Diameter]
        {
let deviations = LimitDeviations::new(upper_deviation, lower_deviation).ok()?;
let found = Limits::from_deviations(nominal, deviations).ok()?;
Some([found.smallest().trade(), found.largest().trade()])
        };
    "deviations_from" tw_deviations_from tw_deviations_from_column
        [nominal tw_diameter mm Diameter 19.0 21.0, smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0]
        [upper_deviation tw_upper_deviation mm UpperDeviation, lower_deviation tw_lower_deviation mm LowerDeviation]
        {
let limits = Limits::new(smallest, largest).ok()?;
let found = limits.deviations(nominal).ok()?;
Some([found.upper().trade(), found.lower().trade()])
        };
    "tolerance_by_formula" tw_tolerance_by_formula tw_tolerance_by_formula_column
        [nominal tw_diameter mm Diameter 1.0 900.0] (7)
        [mean_diameter tw_diameter mm Diameter, tolerance_unit tw_tolerance mm Tolerance, tolerance tw_tolerance mm Tolerance]
        {
let grade = ToleranceGrade::new(7).ok()?;

let found = tolerance_by_formula(nominal, grade).ok()?;
Some([found.mean_diameter.trade(), found.tolerance_unit.trade(), found.tolerance.trade()])
        };
    "general_tolerance" tw_general_tolerance tw_general_tolerance_column
        [length tw_length mm WorkLength 0.3 6000.0] (i32::from(b'm'))
        [tolerance tw_tolerance mm Tolerance]
        {
let class_letter = GeneralClass::Medium;

let found = general_tolerance::linear(length, class_letter).ok()?;
Some([found.value.width().trade()])
        };
    "capability_of" tw_capability_of tw_capability_of_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, mean tw_diameter mm Diameter 5.0 300.0, standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05]
        [capability tw_capability ratio Capability, capability_index tw_capability_index ratio CapabilityIndex]
        {
let limits = Limits::new(smallest, largest).ok()?;
let found = spread::capability(limits, mean, standard_uncertainty);
Some([found.cp.trade(), found.cpk.trade()])
        };
    "expanded_uncertainty" tw_expanded_uncertainty tw_expanded_uncertainty_column
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05, coverage_factor tw_coverage_factor ratio CoverageFactor 1.0 3.0]
        [expanded tw_instrument_uncertainty mm SizeUncertainty]
        {

let found = budget::expanded(standard_uncertainty, coverage_factor);
Some([found.trade()])
        };
    "standard_uncertainty_of" tw_standard_uncertainty_of tw_standard_uncertainty_of_column
        [half_width tw_half_width mm HalfWidth 0.001 0.05] (2)
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {
Some([Component::triangular("a", half_width).standard_uncertainty().trade()])
        };
    "standard_uncertainty_of_resolution" tw_standard_uncertainty_of_resolution tw_standard_uncertainty_of_resolution_column
        [resolution tw_resolution mm Resolution 0.001 0.1]
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {

let found = Component::resolution("resolution", resolution).standard_uncertainty();
Some([found.trade()])
        };
    "largest_standard_uncertainty" tw_largest_standard_uncertainty tw_largest_standard_uncertainty_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, price_scrap tw_price_scrap ratio PriceScrap 1.0 100.0, price_rework tw_price_rework ratio PriceRework 1.0 100.0]
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {
let limits = Limits::new(smallest, largest).ok()?;
let spread = SizeSpread::normal(StandardUncertainty::from_trade(1.0).unwrap());
let prices = Prices::new(price_scrap, price_rework);
Some([aim::largest_standard_uncertainty(limits, spread, prices)?.trade()])
        };
    "acceptance" tw_acceptance tw_acceptance_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, guard_band tw_instrument_uncertainty mm SizeUncertainty 0.001 0.5]
        [smallest_accepted tw_diameter mm Diameter, largest_accepted tw_diameter mm Diameter]
        {
let limits = Limits::new(smallest, largest).ok()?;
let found = decision::acceptance(limits, guard_band)?;
Some([found.smallest().trade(), found.largest().trade()])
        };
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
    "slow_below" tw_slow_below tw_slow_below_column
        [spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, least_cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0]
        [diameter tw_diameter mm Diameter]
        {
let pace = FacingPace::SurfaceSpeed { cutting_speed: least_cutting_speed, highest: Some(spindle_speed) };
Some([facing::full_speed_below(pace)?.trade()])
        };
    "roughness_grade" tw_roughness_grade tw_roughness_grade_column
        [ra tw_ra um Ra 0.01 60.0]
        [largest_ra tw_ra um Ra] <grade>
        {
let found = texture::Grade::of(ra)?;
let number = 1 + texture::Grade::all().position(|grade| grade == found)?;
Some([found.ra().trade(), number as f64])
        };
    "instrument_error" tw_instrument_error tw_instrument_error_column
        [diameter tw_diameter mm Diameter 5.0 500.0] (2)
        [error tw_instrument_uncertainty mm SizeUncertainty]
        {
let instrument = Instrument::Calliper;

let found = instrument::largest_error(instrument, diameter).ok()?;
Some([found.value.trade()])
        };
    "outcome_with_uniform" tw_outcome_with_uniform tw_outcome_with_uniform_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, mean tw_diameter mm Diameter 18.5 21.0, standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05, half_width tw_half_width mm HalfWidth 0.001 0.05] (1)
        [good tw_probability ratio Probability, rework tw_probability ratio Probability, scrap tw_probability ratio Probability]
        {
let feature = Feature::Shaft;
let limits = Limits::new(smallest, largest).ok()?;
let spread = SizeSpread::normal_and_uniform(standard_uncertainty, half_width);
let found = spread::outcome(limits, mean, spread, feature);
Some([found.good.trade(), found.rework.trade(), found.scrap.trade()])
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

/// A number that is none of an enumeration or no plausible count.
fn by_hand() -> Vec<Trial> {
    vec![
        trial(
            "kernels/whole_numbers_out_of_range_fail_the_whole_call",
            &[],
            refused_whole_numbers,
        ),
        trial("kernels/step_ratio_is_that_of_rust", &[], step_ratio),
        trial("kernels/centre_force_and_worst_station", &[], on_springs),
        trial("kernels/short_cut_off_for", &[], short_cut_offs),
        trial("kernels/centre_hole", &[], centre_holes),
        trial("kernels/dial_diameter", &[], dial_diameter),
        trial("kernels/a_mark_leads_back_to_its_size", &[], there_and_back),
    ]
}

/// Scalar and column call refuse such a number, and leave NaN behind.
macro_rules! refuses {
    ($scalar:ident $column:ident [$($c:ident $field:ident $q:ident $value:literal),+] $whole:expr,
     $oc:ident $of:ident $oq:ident $expected:ident) => {{
        let mut one = $oc { $of: 1.0 };
        let alone = unsafe { $scalar($( $c { $field: $value }, )+ $whole, &mut one, null_mut()) };
        let mut all = [1.0, 1.0];
        let mut statuses = [-1, -1];
        let status = unsafe {
            $column(
                $( &input::<$q>(&[$value], &$q::ROW.kind().units()[0]), )+
                $whole,
                &output::<$oq>(&mut all),
                statuses.as_mut_ptr(),
                4,
                null_mut(),
            )
        };
        let expected = tw_status::$expected;
        check(
            alone == expected && status == expected && statuses == [expected as i32; 2],
            || format!("{} {}: {alone:?} {status:?} {statuses:?}", stringify!($scalar), $whole),
        )?;
        check(one.$of.is_nan() && all.iter().all(|value| value.is_nan()), || {
            format!("{} {}: {} {all:?}", stringify!($scalar), $whole, one.$of)
        })?;
    }};
}

fn refused_whole_numbers() -> Result<(), Failed> {
    for passes in [-1, i32::MIN] {
        refuses!(tw_left_after_passes tw_left_after_passes_column
            [tw_depth_of_cut mm DepthOfCut 0.5, tw_spring_share ratio SpringShare 0.2]
            passes, tw_deflection mm Deflection TW_OUT_OF_RANGE);
        refuses!(tw_left_after_equal_infeeds tw_left_after_equal_infeeds_column
            [tw_depth_of_cut mm DepthOfCut 0.5, tw_spring_share ratio SpringShare 0.2]
            passes, tw_deflection mm Deflection TW_OUT_OF_RANGE);
    }
    for support in [-1, 0, 4] {
        refuses!(tw_tailstock_error tw_tailstock_error_column
            [tw_set_over mm SetOver 0.2, tw_length mm WorkLength 50.0, tw_overhang mm Overhang 100.0]
            support, tw_diameter_error mm DiameterError TW_UNKNOWN_NAME);
    }
    for jaws in [-1, 256] {
        refuses!(tw_grip_at_speed tw_grip_at_speed_column
            [tw_grip_force n GripForce 20000.0, tw_mass kg Mass 1.0, tw_radius mm Radius 60.0,
             tw_spindle_speed rpm SpindleSpeed 500.0]
            jaws, tw_grip_force n GripForce TW_OUT_OF_RANGE);
        refuses!(tw_highest_speed_of_grip tw_highest_speed_of_grip_column
            [tw_grip_force n GripForce 20000.0, tw_mass kg Mass 1.0, tw_radius mm Radius 60.0]
            jaws, tw_spindle_speed rpm SpindleSpeed TW_OUT_OF_RANGE);
    }
    for model in [-1, 0, 4] {
        refuses!(tw_least_chip_by_model tw_least_chip_by_model_column
            [tw_edge_radius mm EdgeRadius 0.02] model,
            tw_chip_thickness mm ChipThickness TW_UNKNOWN_NAME);
    }
    for letter in [0, 1, i32::from(b'F'), -109] {
        refuses!(tw_general_tolerance tw_general_tolerance_column
            [tw_length mm WorkLength 50.0] letter,
            tw_tolerance mm Tolerance TW_UNKNOWN_NAME);
    }
    for distribution in [-1, 0, 4] {
        refuses!(tw_standard_uncertainty_of tw_standard_uncertainty_of_column
            [tw_half_width mm HalfWidth 0.01] distribution,
            tw_standard_uncertainty mm StandardUncertainty TW_UNKNOWN_NAME);
    }
    for instrument in [-1, 0, 7] {
        refuses!(tw_instrument_error tw_instrument_error_column
            [tw_diameter mm Diameter 50.0] instrument,
            tw_instrument_uncertainty mm SizeUncertainty TW_UNKNOWN_NAME);
    }
    Ok(())
}

fn step_ratio() -> Result<(), Failed> {
    for step in -1..=8 {
        let mut ratio = 1.0;
        let status = unsafe { tw_step_ratio(step, &mut ratio, null_mut()) };
        let rust = u8::try_from(step)
            .ok()
            .and_then(|step| speed_series::step_ratio(step).ok());
        let holds = match rust {
            Some(rust) => status == tw_status::TW_OK && same(rust, ratio),
            None => status == tw_status::TW_OUT_OF_RANGE && ratio.is_nan(),
        };
        check(holds, || format!("{step}: {status:?} {ratio}"))?;
    }
    Ok(())
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

fn short_cut_offs() -> Result<(), Failed> {
    let cut_offs = [0.08, 0.25, 0.8, 2.5, 8.0, 0.81, f64::NAN, 0.0];
    let mut found = [0.0; 8];
    let mut statuses = [-1; 8];
    let status = unsafe {
        tw_short_cut_off_for_column(
            &input::<CutOff>(&cut_offs, &CutOff::ROW.kind().units()[0]),
            &output::<ShortCutOff>(&mut found),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    for (row, mm) in cut_offs.into_iter().enumerate() {
        let mut alone = tw_short_cut_off { mm: 0.0 };
        let status = unsafe { tw_short_cut_off_for(tw_cut_off { mm }, &mut alone, null_mut()) };
        let rust = CutOff::from_trade(mm)
            .ok()
            .and_then(|mm| texture::short_cut_off(mm).ok());
        let expected = rust.map_or(f64::NAN, |found| found.value.mm());
        let holds = statuses[row] == status as i32
            && (row < 5) == (status == tw_status::TW_OK)
            && same(alone.mm, expected)
            && same(found[row], expected);
        check(holds, || {
            format!("{mm}: {status:?} {} {expected}", alone.mm)
        })?;
    }
    Ok(())
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
