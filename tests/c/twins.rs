//! Column calls against their scalar twins, bit for bit.

use std::ptr::null_mut;

use libtest_mimic::Trial;
use turnwright::ffi::{
    tw_axial_force, tw_axial_stiffness, tw_base_speed_in_range, tw_base_speed_in_range_column,
    tw_bending_moment, tw_buckling_load, tw_buckling_load_column, tw_carbide_speed_factor,
    tw_carbide_speed_factor_column, tw_cheapest_life, tw_cheapest_life_column, tw_chip_area,
    tw_chip_thickness, tw_compound_angle, tw_compound_angle_for, tw_compound_angle_for_column,
    tw_compound_motion, tw_compound_motion_column, tw_corner_radius,
    tw_critical_speed_with_end_mass, tw_critical_speed_with_end_mass_column, tw_cutting_edge_angle,
    tw_cutting_forces, tw_cutting_forces_column, tw_cutting_power, tw_cutting_power_column,
    tw_cutting_speed, tw_cutting_torque, tw_cutting_torque_column, tw_deflection, tw_density,
    tw_depth_of_cut, tw_diameter, tw_diameter_at_20, tw_diameter_at_20_column, tw_diameter_error,
    tw_diameter_error_with_sag, tw_diameter_error_with_sag_column, tw_diameter_growth,
    tw_diameter_growth_column, tw_eccentricity, tw_edge_length, tw_efficiency,
    tw_equivalent_chip_thickness, tw_equivalent_chip_thickness_column, tw_expansion, tw_exponent,
    tw_facing_time, tw_facing_time_at_surface_speed, tw_facing_time_at_surface_speed_column,
    tw_facing_time_column, tw_facing_time_to_middle, tw_facing_time_to_middle_at_surface_speed,
    tw_facing_time_to_middle_at_surface_speed_column, tw_facing_time_to_middle_column, tw_feed,
    tw_feed_force, tw_feed_force_moment, tw_feed_force_moment_column, tw_first_critical_speed,
    tw_force_factor, tw_friction, tw_growth, tw_growth_load, tw_growth_load_column, tw_half_angle,
    tw_heat_share, tw_highest_speed_for_cut, tw_highest_speed_for_cut_column, tw_largest_depth_for,
    tw_largest_depth_for_column, tw_left_in_the_end, tw_left_in_the_end_column, tw_length,
    tw_length_growth, tw_length_growth_column, tw_life, tw_life_after_change,
    tw_life_after_change_column, tw_life_at, tw_life_at_column, tw_life_constant, tw_life_exponent,
    tw_light_after_heavy, tw_light_after_heavy_column, tw_main_force, tw_mass,
    tw_minor_cutting_edge_angle, tw_normal_ratio, tw_overhang, tw_parting_force,
    tw_parting_force_column, tw_passive_force, tw_power, tw_power_above_idle,
    tw_power_above_idle_column, tw_power_of_removal, tw_power_of_removal_column, tw_price,
    tw_price_per_hour, tw_push_out, tw_push_out_column, tw_rake_angle, tw_rake_factor,
    tw_rake_factor_column, tw_removal_rate, tw_rise, tw_set_over, tw_share_left,
    tw_share_left_column, tw_specific_force, tw_specific_force_at, tw_specific_force_at_chip,
    tw_specific_force_at_column, tw_specific_force_from_power, tw_specific_force_from_power_column,
    tw_specific_heat, tw_speed_for_life, tw_speed_for_life_column, tw_spindle_speed,
    tw_spring_share, tw_status, tw_stiffness, tw_straight_edge_force,
    tw_straight_edge_force_column, tw_tailstock_correction, tw_tailstock_correction_column,
    tw_tailstock_set_over, tw_tailstock_set_over_column, tw_tangential_deflection,
    tw_taper_half_angle, tw_taper_half_angle_column, tw_taper_ratio, tw_temperature_rise,
    tw_temperature_rise_column, tw_time, tw_tool_height, tw_tool_height_error,
    tw_tool_height_error_column, tw_torque, tw_torque_available, tw_torque_available_column,
    tw_travel, tw_true_depth, tw_true_depth_column, tw_whip, tw_whip_column, tw_width,
    tw_youngs_modulus,
};
use turnwright::{
    AxialForce, AxialStiffness, BendingMoment, BladeWidth, ChipArea, ChipThickness, CompoundAngle,
    CornerRadius, CriticalSpeed, CuttingEdgeAngle, CuttingSpeed, Deflection, Density, DepthOfCut,
    Diameter, DiameterError, Duration, Eccentricity, EdgeLength, Efficiency, Feed, FeedForce,
    ForceExponent, ForceFactor, Friction, HalfAngle, HeatShare, LifeConstant, LifeExponent,
    MainForce, Mass, MinorCuttingEdgeAngle, NormalRatio, Overhang, PassiveForce, Power, Price,
    PricePerHour, Quantity, RakeAngle, RemovalRate, SetOver, SpecificCuttingForce,
    SpecificForceAtChip, SpecificHeat, SpindleSpeed, SpringShare, Stiffness, TangentialDeflection,
    TaperRatio, TemperatureRise, ThermalExpansion, ThermalGrowth, ToolHeight, ToolLife, Torque,
    Travel, WorkLength, YoungsModulus,
};

use crate::columns::{Numbers, input, output, same};
use crate::{allocations, check, trial};

/// One trial a pair: rows through the range and beyond, the column's answers and statuses those of
/// the scalar call, some rows good and some bad.
macro_rules! twins {
    ($($name:literal $scalar:ident $column:ident
       [$($a:ident $c:ident $field:ident $q:ident $low:literal $high:literal),+]
       [$($o:ident $oc:ident $of:ident $oq:ident),+];)*) => {
        pub fn trials() -> Vec<Trial> {
            vec![$(
                trial(concat!("twins/", $name), &[], || {
                    const ROWS: usize = 3_000;
                    let mut numbers = Numbers(11);
                    $( let $a = numbers.column($low, $high, ROWS); )+
                    $( let mut $o = vec![0.0; ROWS]; )+
                    let mut statuses = vec![-1; ROWS];
                    let status = unsafe {
                        $column(
                            $( &input::<$q>(&$a, &$q::ROW.kind().units()[0]), )+
                            $( &output::<$oq>(&mut $o), )+
                            statuses.as_mut_ptr(),
                            4,
                            null_mut(),
                        )
                    };
                    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
                    let columns = [$( $o ),+];
                    let mut good = 0;
                    for row in 0..ROWS {
                        $( let mut $o = $oc { $of: 0.0 }; )+
                        let alone = unsafe {
                            $scalar($( $c { $field: $a[row] }, )+ $( &mut $o, )+ null_mut())
                        };
                        good += usize::from(alone == tw_status::TW_OK);
                        let twin = [$( $o.$of ),+];
                        check(
                            statuses[row] == alone as i32
                                && twin.iter().zip(&columns).all(|(a, b)| same(*a, b[row])),
                            || format!("row {row}: {} and {alone:?}", statuses[row]),
                        )?;
                    }
                    check(good > ROWS / 20 && good < ROWS, || format!("{good} good rows"))?;
                    // The good rows alone: nothing is allocated for them.
                    let is_good = |row: &usize| statuses[*row] == 0;
                    $( let $a: Vec<f64> = (0..ROWS).filter(is_good).map(|row| $a[row]).collect(); )+
                    $( let mut $o = vec![0.0; good]; )+
                    let (status, allocated) = allocations::of(|| unsafe {
                        $column(
                            $( &input::<$q>(&$a, &$q::ROW.kind().units()[0]), )+
                            $( &output::<$oq>(&mut $o), )+
                            null_mut(),
                            0,
                            null_mut(),
                        )
                    });
                    check(status == tw_status::TW_OK && allocated == 0, || {
                        format!("{status:?}, {allocated} allocations for {good} good rows")
                    })?;
                    // Nor do they have another answer than among bad ones.
                    for (now, before) in [$( $o ),+].iter().zip(&columns) {
                        for (row, value) in (0..ROWS).filter(is_good).zip(now) {
                            check(same(*value, before[row]), || format!("row {row}: {value}"))?;
                        }
                    }
                    Ok(())
                }),
            )*]
        }
    };
}

twins! {
    "torque_available" tw_torque_available tw_torque_available_column [power tw_power kw Power 0.1 10.0, base_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [torque tw_torque nm Torque, power_there tw_power kw Power];
    "base_speed_in_range" tw_base_speed_in_range tw_base_speed_in_range_column [base_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, here tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, there tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [base_speed_there tw_spindle_speed rpm SpindleSpeed];
    "highest_speed_for_cut" tw_highest_speed_for_cut tw_highest_speed_for_cut_column [power tw_power kw Power 0.1 10.0, base_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, main_force tw_main_force n MainForce 10.0 3000.0, mean_diameter tw_diameter mm Diameter 5.0 300.0] [spindle_speed tw_spindle_speed rpm SpindleSpeed];
    "diameter_growth" tw_diameter_growth tw_diameter_growth_column [diameter tw_diameter mm Diameter 5.0 300.0, expansion tw_expansion um_per_mk ThermalExpansion 1.0 30.0, rise tw_rise k TemperatureRise 1.0 200.0] [growth tw_growth mm ThermalGrowth];
    "length_growth" tw_length_growth tw_length_growth_column [length tw_length mm WorkLength 10.0 2000.0, expansion tw_expansion um_per_mk ThermalExpansion 1.0 30.0, rise tw_rise k TemperatureRise 1.0 200.0] [growth tw_growth mm ThermalGrowth];
    "diameter_at_20" tw_diameter_at_20 tw_diameter_at_20_column [measured tw_diameter mm Diameter 5.0 300.0, expansion tw_expansion um_per_mk ThermalExpansion 1.0 30.0, rise tw_rise k TemperatureRise 1.0 200.0] [diameter tw_diameter mm Diameter];
    "temperature_rise" tw_temperature_rise tw_temperature_rise_column [power tw_power kw Power 0.1 10.0, heat_share tw_heat_share ratio HeatShare 0.01 0.9, time tw_time s Duration 1.0 600.0, mass tw_mass kg Mass 0.1 50.0, specific_heat tw_specific_heat j_per_kgk SpecificHeat 100.0 2000.0] [rise tw_rise k TemperatureRise];
    "growth_load" tw_growth_load tw_growth_load_column [youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0, diameter tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0, growth tw_growth mm ThermalGrowth 0.001 1.0, axial_stiffness tw_axial_stiffness kn_per_mm AxialStiffness 0.1 500.0] [axial_force tw_axial_force n AxialForce];
    "buckling_load" tw_buckling_load tw_buckling_load_column [youngs_modulus tw_youngs_modulus gpa YoungsModulus 3.0 400.0, diameter tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0] [axial_force tw_axial_force n AxialForce];
    "push_out" tw_push_out tw_push_out_column [radial_force tw_passive_force n PassiveForce 10.0 3000.0, friction tw_friction ratio Friction 0.01 1.4] [axial_force tw_axial_force n AxialForce];
    "life_at" tw_life_at tw_life_at_column [constant tw_life_constant m_per_min LifeConstant 20.0 1000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0] [life tw_life s ToolLife];
    "speed_for_life" tw_speed_for_life tw_speed_for_life_column [constant tw_life_constant m_per_min LifeConstant 20.0 1000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, life tw_life s ToolLife 30.0 20000.0] [cutting_speed tw_cutting_speed m_per_min CuttingSpeed];
    "life_after_change" tw_life_after_change tw_life_after_change_column [life tw_life s ToolLife 30.0 20000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, from tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, to tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0] [changed_life tw_life s ToolLife];
    "cheapest_life" tw_cheapest_life tw_cheapest_life_column [constant tw_life_constant m_per_min LifeConstant 20.0 1000.0, exponent tw_life_exponent ratio LifeExponent 0.1 1.2, change_time tw_time s Duration 1.0 600.0, edge_price tw_price ratio Price 0.1 50.0, machine_per_hour tw_price_per_hour ratio PricePerHour 5.0 200.0] [life tw_life s ToolLife, cutting_speed tw_cutting_speed m_per_min CuttingSpeed];
    "facing_time" tw_facing_time tw_facing_time_column [diameter tw_diameter mm Diameter 5.0 300.0, bore tw_diameter mm Diameter 5.0 300.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [time tw_time s Duration];
    "facing_time_to_middle" tw_facing_time_to_middle tw_facing_time_to_middle_column [diameter tw_diameter mm Diameter 5.0 300.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [time tw_time s Duration];
    "facing_time_at_surface_speed" tw_facing_time_at_surface_speed tw_facing_time_at_surface_speed_column [diameter tw_diameter mm Diameter 5.0 300.0, bore tw_diameter mm Diameter 5.0 300.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [time tw_time s Duration];
    "facing_time_to_middle_at_surface_speed" tw_facing_time_to_middle_at_surface_speed tw_facing_time_to_middle_at_surface_speed_column [diameter tw_diameter mm Diameter 5.0 300.0, feed tw_feed mm_per_rev Feed 0.02 1.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0] [time tw_time s Duration];
    "tool_height_error" tw_tool_height_error tw_tool_height_error_column [zeroed_at tw_diameter mm Diameter 5.0 300.0, moved_in tw_travel mm Travel 0.01 50.0, tool_height tw_tool_height mm ToolHeight 0.01 5.0] [diameter_error tw_diameter_error mm DiameterError];
    "taper_half_angle" tw_taper_half_angle tw_taper_half_angle_column [large tw_diameter mm Diameter 5.0 300.0, small tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0] [half_angle tw_half_angle deg HalfAngle, taper_ratio tw_taper_ratio ratio TaperRatio];
    "tailstock_set_over" tw_tailstock_set_over tw_tailstock_set_over_column [taper_ratio tw_taper_ratio ratio TaperRatio 0.5 200.0, length_between_centres tw_length mm WorkLength 10.0 2000.0] [set_over tw_set_over mm SetOver];
    "compound_angle_for" tw_compound_angle_for tw_compound_angle_for_column [infeed tw_travel mm Travel 0.01 50.0, travel tw_travel mm Travel 0.01 50.0] [compound_angle tw_compound_angle deg CompoundAngle];
    "compound_motion" tw_compound_motion tw_compound_motion_column [compound_angle tw_compound_angle deg CompoundAngle 0.1 80.0, travel tw_travel mm Travel 0.01 50.0] [infeed tw_travel mm Travel, shift tw_travel mm Travel];
    "critical_speed_with_end_mass" tw_critical_speed_with_end_mass tw_critical_speed_with_end_mass_column
        [youngs_modulus tw_youngs_modulus gpa YoungsModulus 60.0 1400.0, density tw_density kg_per_m3 Density 1000.0 20000.0, diameter tw_diameter mm Diameter 1.0 80.0, overhang tw_overhang mm Overhang 1.0 900.0, end_mass tw_mass kg Mass 0.01 10.0]
        [first_critical_speed tw_first_critical_speed rpm CriticalSpeed];
    "whip" tw_whip tw_whip_column
        [eccentricity tw_eccentricity mm Eccentricity 0.001 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 10.0 3000.0, first_critical_speed tw_first_critical_speed rpm CriticalSpeed 100.0 5000.0]
        [deflection tw_deflection mm Deflection];
    "feed_force_moment" tw_feed_force_moment tw_feed_force_moment_column
        [feed_force tw_feed_force n FeedForce 5.0 500.0, diameter tw_diameter mm Diameter 1.0 80.0]
        [bending_moment tw_bending_moment nm BendingMoment];
    "share_left" tw_share_left tw_share_left_column
        [set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, deflection tw_deflection mm Deflection 0.001 0.4]
        [share tw_spring_share ratio SpringShare];
    "left_in_the_end" tw_left_in_the_end tw_left_in_the_end_column
        [set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, share tw_spring_share ratio SpringShare 0.01 1.05]
        [deflection tw_deflection mm Deflection];
    "light_after_heavy" tw_light_after_heavy tw_light_after_heavy_column
        [left_before tw_deflection mm Deflection 0.001 0.4, set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, share tw_spring_share ratio SpringShare 0.01 1.05]
        [depth_of_cut tw_depth_of_cut mm DepthOfCut];
    "true_depth" tw_true_depth tw_true_depth_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, feed tw_feed mm_per_rev Feed 0.02 0.6, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9, set_depth tw_depth_of_cut mm DepthOfCut 0.01 2.0, stiffness tw_stiffness kn_per_mm Stiffness 0.5 100.0]
        [depth_of_cut tw_depth_of_cut mm DepthOfCut, left tw_deflection mm Deflection];
    "largest_depth_for" tw_largest_depth_for tw_largest_depth_for_column
        [specific_force tw_specific_force mpa SpecificCuttingForce 500.0 4000.0, exponent tw_exponent ratio ForceExponent 0.02 0.6, feed tw_feed mm_per_rev Feed 0.02 0.6, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 30.0 100.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 0.9, stiffness tw_stiffness kn_per_mm Stiffness 0.5 100.0, allowed tw_diameter_error mm DiameterError 0.002 0.3]
        [depth_of_cut tw_depth_of_cut mm DepthOfCut];
    "diameter_error_with_sag" tw_diameter_error_with_sag tw_diameter_error_with_sag_column
        [diameter tw_diameter mm Diameter 1.0 80.0, passive tw_deflection mm Deflection 0.001 0.4, tangential tw_tangential_deflection mm TangentialDeflection 0.002 0.3]
        [diameter_error tw_diameter_error mm DiameterError];
    "tailstock_correction" tw_tailstock_correction tw_tailstock_correction_column
        [near_at tw_length mm WorkLength 5.0 500.0, near_error tw_diameter_error mm DiameterError 0.002 0.3, far_at tw_length mm WorkLength 5.0 500.0, far_error tw_diameter_error mm DiameterError 0.002 0.3, length_between_centres tw_length mm WorkLength 5.0 500.0]
        [set_over tw_set_over mm SetOver];
    "cutting_forces" tw_cutting_forces tw_cutting_forces_column [specific_force tw_specific_force mpa SpecificCuttingForce 300.0 4000.0, exponent tw_exponent ratio ForceExponent 0.05 0.6, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 5.0, feed tw_feed mm_per_rev Feed 0.02 0.5, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 120.0, corner_radius tw_corner_radius mm CornerRadius 0.05 3.0, normal_ratio tw_normal_ratio ratio NormalRatio 0.2 2.0] [main_force tw_main_force n MainForce, feed_force tw_feed_force n FeedForce, passive_force tw_passive_force n PassiveForce];
    "straight_edge_force" tw_straight_edge_force tw_straight_edge_force_column [specific_force tw_specific_force mpa SpecificCuttingForce 300.0 4000.0, exponent tw_exponent ratio ForceExponent 0.05 0.6, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 5.0, feed tw_feed mm_per_rev Feed 0.02 0.5, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 120.0] [main_force tw_main_force n MainForce];
    "specific_force_at" tw_specific_force_at tw_specific_force_at_column [specific_force tw_specific_force mpa SpecificCuttingForce 300.0 4000.0, exponent tw_exponent ratio ForceExponent 0.05 0.6, chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0] [specific_force_at_chip tw_specific_force_at_chip mpa SpecificForceAtChip];
    "rake_factor" tw_rake_factor tw_rake_factor_column [rake_angle tw_rake_angle deg RakeAngle 1.0 30.0, reference_rake_angle tw_rake_angle deg RakeAngle 1.0 30.0] [force_factor tw_force_factor ratio ForceFactor];
    "carbide_speed_factor" tw_carbide_speed_factor tw_carbide_speed_factor_column [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0] [force_factor tw_force_factor ratio ForceFactor];
    "parting_force" tw_parting_force tw_parting_force_column [specific_force tw_specific_force mpa SpecificCuttingForce 300.0 4000.0, exponent tw_exponent ratio ForceExponent 0.05 0.6, width tw_width mm BladeWidth 0.5 20.0, feed tw_feed mm_per_rev Feed 0.02 0.5, shape_factor tw_force_factor ratio ForceFactor 0.5 2.0] [main_force tw_main_force n MainForce];
    "equivalent_chip_thickness" tw_equivalent_chip_thickness tw_equivalent_chip_thickness_column [depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 5.0, feed tw_feed mm_per_rev Feed 0.02 0.5, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 120.0, minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle 2.0 40.0, corner_radius tw_corner_radius mm CornerRadius 0.05 3.0] [edge_length tw_edge_length mm EdgeLength, chip_area tw_chip_area mm2 ChipArea, chip_thickness tw_chip_thickness mm ChipThickness];
    "cutting_power" tw_cutting_power tw_cutting_power_column [main_force tw_main_force n MainForce 10.0 3000.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0] [power tw_power kw Power];
    "cutting_torque" tw_cutting_torque tw_cutting_torque_column [main_force tw_main_force n MainForce 10.0 3000.0, mean_diameter tw_diameter mm Diameter 5.0 300.0] [torque tw_torque nm Torque];
    "power_above_idle" tw_power_above_idle tw_power_above_idle_column [motor_power tw_power kw Power 0.1 10.0, idle_power tw_power kw Power 0.1 10.0, efficiency tw_efficiency ratio Efficiency 0.3 0.95] [power tw_power kw Power];
    "specific_force_from_power" tw_specific_force_from_power tw_specific_force_from_power_column [power tw_power kw Power 0.1 10.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, exponent tw_exponent ratio ForceExponent 0.05 0.6, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 5.0, feed tw_feed mm_per_rev Feed 0.02 0.5, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 120.0, corner_radius tw_corner_radius mm CornerRadius 0.05 3.0] [specific_force tw_specific_force mpa SpecificCuttingForce, specific_force_at_chip tw_specific_force_at_chip mpa SpecificForceAtChip];
    "power_of_removal" tw_power_of_removal tw_power_of_removal_column [specific_force_at_chip tw_specific_force_at_chip mpa SpecificForceAtChip 300.0 9000.0, removal_rate tw_removal_rate cm3_per_min RemovalRate 1.0 500.0] [power tw_power kw Power];
}
