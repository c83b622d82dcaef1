//! The C doors: convert, call, convert back.
//!
//! For people who use the library from C, the contract is the first page of
//! `include/turnwright.h`. For people who change this room, the rules:
//!
//! 1. **No decision and no formula here.** A door turns its arguments into quantities, calls one
//!    function of another room, and turns the answer back. A scalar call and its column twin call
//!    the same one.
//! 2. **Types of the interface are written out**, `#[repr(C)]`, named as in C (`tw_diameter`), never
//!    made by a macro: the tool that writes the header does not look inside of macros. A struct
//!    `tw_x` belongs to the quantity whose row is named `x`; its one field is the trade's unit.
//! 3. **Enumerations arrive as `i32`** and are checked; they may leave as enums. Their numbers are
//!    pinned and never used twice.
//! 4. **Order of arguments**: inputs, outputs, `detail` last. What comes back is the status.
//! 5. **Outputs are always written**: the answer, or NaN, NULL, 0. A stale number is a wrong size on
//!    somebody's dial.
//! 6. **Every door goes through `call` or `guarded`**, so that no panic crosses into C.
//! 7. **Nothing is remembered**: no global, no thread-local, no lazy initialisation, no locale.
//! 8. **Pointers are read and written unaligned**, and never turned into references: C promises
//!    neither alignment nor that nobody else looks.
//! 9. **Doc comments are for C readers**: units, ownership, threads, NULL, what outputs hold after a
//!    failure; those of a scalar door end with the source of its formula and an example, in the
//!    shape of the others. They arrive in the header word for word. No Rust links.
//! 10. After a change: `TW_BLESS=1 cargo test --test c` writes the header and the snapshots anew.
//!     The difference is what the change does to the interface; commit it only on purpose.
#![allow(non_camel_case_types)]
// What a caller must keep to stands once, on the first page of the header.
#![allow(clippy::missing_safety_doc)]

pub mod aim;
pub mod bar;
pub mod centre;
pub mod chip;
pub mod columns;
pub mod compound_slide;
pub mod critical_speed;
pub mod cut_off;
pub mod dial;
pub mod document;
pub mod drive;
pub mod edge;
pub mod feed_for_finish;
pub mod filter;
pub mod force;
pub mod from_text;
pub mod grip;
pub mod heat;
pub mod instrument;
pub mod least_chip;
pub mod life;
pub mod limits;
pub mod measured;
pub mod outcome;
pub mod plan;
pub mod quantity;
mod rows;
pub mod scalar;
pub mod shape;
pub mod speed;
pub mod spring;
pub mod spring_passes;
pub mod status;
pub mod tailstock;
pub mod taper;
pub mod texture;
pub mod tolerance;
pub mod tool;
pub mod uncertainty;
pub mod verdict;

pub use aim::{
    tw_best_aim, tw_best_aim_column, tw_best_aim_in_zone, tw_best_aim_in_zone_column,
    tw_expected_price, tw_expected_price_column, tw_largest_standard_uncertainty,
    tw_largest_standard_uncertainty_column,
};
pub use bar::{
    tw_centre_force, tw_centre_force_column, tw_deflection_at, tw_deflection_at_column,
    tw_feed_force_moment, tw_feed_force_moment_column, tw_stiffness_from_taper,
    tw_stiffness_from_taper_column, tw_worst_station, tw_worst_station_column,
};
pub use centre::{
    tw_buckling_load, tw_buckling_load_column, tw_centre_hole, tw_centre_hole_column,
    tw_centre_hole_form, tw_cone_depth, tw_cone_depth_column, tw_cone_pressure,
    tw_cone_pressure_column, tw_growth_load, tw_growth_load_column, tw_push_out,
    tw_push_out_column, tw_side_pressure, tw_side_pressure_column,
};
pub use chip::{
    tw_chip_section, tw_chip_section_column, tw_edge_lead, tw_edge_lead_column, tw_engaged_edge,
    tw_engaged_edge_column, tw_largest_edge_angle, tw_largest_edge_angle_column, tw_least_depth,
    tw_least_depth_column, tw_thickest_chip, tw_thickest_chip_column,
};
pub use columns::{
    tw_arc_height_column, tw_column, tw_out_column, tw_spindle_speed_for_column,
    tw_theoretical_roughness_column,
};
pub use compound_slide::{
    tw_compound_angle_for, tw_compound_angle_for_column, tw_compound_motion,
    tw_compound_motion_column, tw_from_axis, tw_from_axis_column, tw_from_cross_slide,
    tw_from_cross_slide_column, tw_taper_slide_travel, tw_taper_slide_travel_column,
};
pub use critical_speed::{
    tw_critical_speed_of_bar, tw_critical_speed_of_bar_column, tw_critical_speed_with_end_mass,
    tw_critical_speed_with_end_mass_column, tw_whip, tw_whip_column,
};
pub use cut_off::{
    tw_cut_off_by_feed, tw_cut_off_by_feed_column, tw_cut_off_by_ra, tw_cut_off_by_ra_column,
    tw_cut_off_by_rz, tw_cut_off_by_rz_column, tw_short_cut_off_for, tw_short_cut_off_for_column,
};
pub use dial::{
    tw_dial_diameter, tw_dial_diameter_column, tw_dial_mark_for, tw_dial_mark_for_column,
    tw_dial_reads, tw_travel_per_turn, tw_travel_per_turn_column,
};
pub use document::{
    tw_answer, tw_answer_n, tw_material_keys, tw_question_names, tw_question_schema, tw_text_free,
};
pub use drive::{
    tw_base_speed_in_range, tw_base_speed_in_range_column, tw_highest_speed_for_cut,
    tw_highest_speed_for_cut_column, tw_largest_depth_for_power, tw_largest_depth_for_power_column,
    tw_lowest_speed_for_cut, tw_lowest_speed_for_cut_column, tw_motor_power, tw_motor_power_column,
    tw_spindle_power, tw_spindle_power_column, tw_torque_at, tw_torque_at_column,
    tw_torque_available, tw_torque_available_column,
};
pub use edge::{
    tw_carbide_speed_factor, tw_carbide_speed_factor_column, tw_corrected_ratio,
    tw_corrected_ratio_column, tw_corrected_specific_force, tw_corrected_specific_force_column,
    tw_effective_edge_angle, tw_effective_edge_angle_column, tw_equivalent_chip_thickness,
    tw_equivalent_chip_thickness_column, tw_feed_factor, tw_feed_factor_column, tw_rake_factor,
    tw_rake_factor_column, tw_scattered, tw_scattered_column,
};
pub use feed_for_finish::{
    tw_feed_for_ra, tw_feed_for_ra_arc, tw_feed_for_ra_arc_column, tw_feed_for_ra_column,
    tw_feed_for_rt, tw_feed_for_rt_column, tw_feed_for_rz, tw_feed_for_rz_arc,
    tw_feed_for_rz_arc_column, tw_feed_for_rz_column,
};
pub use filter::{
    tw_mean_line_transmission, tw_mean_line_transmission_column, tw_roughness_transmission,
    tw_roughness_transmission_column, tw_short_wave_transmission,
    tw_short_wave_transmission_column,
};
pub use force::{
    tw_cutting_forces, tw_cutting_forces_column, tw_measured_forces, tw_measured_forces_column,
    tw_parting_force, tw_parting_force_column, tw_parting_forces, tw_parting_forces_column,
    tw_specific_force_at, tw_specific_force_at_column, tw_straight_edge_force,
    tw_straight_edge_force_column,
};
pub use from_text::tw_value_of_text;
pub use grip::{
    tw_grip_at_speed, tw_grip_at_speed_column, tw_grip_needed, tw_grip_needed_column,
    tw_highest_speed_of_grip, tw_highest_speed_of_grip_column,
};
pub use heat::{
    tw_diameter_at_20, tw_diameter_at_20_column, tw_diameter_growth, tw_diameter_growth_column,
    tw_length_at_20, tw_length_at_20_column, tw_length_growth, tw_length_growth_column,
    tw_mass_of_bar, tw_mass_of_bar_column, tw_temperature_rise, tw_temperature_rise_column,
};
pub use instrument::{tw_instrument, tw_instrument_error, tw_instrument_error_column};
pub use least_chip::{
    tw_best_feed_with_least_chip, tw_best_feed_with_least_chip_column, tw_feed_with_least_chip,
    tw_feed_with_least_chip_column, tw_least_chip_by_friction, tw_least_chip_by_friction_column,
    tw_least_chip_by_model, tw_least_chip_by_model_column, tw_least_chip_model,
    tw_least_chip_regime, tw_least_chip_thickness, tw_least_chip_thickness_column,
    tw_rt_with_least_chip, tw_rt_with_least_chip_column,
};
pub use life::{
    tw_cheapest_life, tw_cheapest_life_column, tw_fastest_life, tw_fastest_life_column,
    tw_life_after_change, tw_life_after_change_column, tw_life_at, tw_life_at_column,
    tw_life_constant_through, tw_life_constant_through_column, tw_speed_for_life,
    tw_speed_for_life_column,
};
pub use limits::{
    tw_clearance_of_fit, tw_clearance_of_fit_column, tw_deviations_from, tw_deviations_from_column,
    tw_deviations_of_class, tw_deviations_of_class_column, tw_limits_from_deviations,
    tw_limits_from_deviations_column, tw_limits_of_class, tw_limits_of_class_column,
};
pub use measured::{
    tw_cutting_power, tw_cutting_power_column, tw_cutting_torque, tw_cutting_torque_column,
    tw_force_of_power, tw_force_of_power_column, tw_law_of_cut, tw_law_of_cut_column,
    tw_law_through, tw_law_through_column, tw_power_above_idle, tw_power_above_idle_column,
    tw_power_of_removal, tw_power_of_removal_column, tw_specific_force_from_power,
    tw_specific_force_from_power_column, tw_specific_force_of_chip,
    tw_specific_force_of_chip_column,
};
pub use outcome::{
    tw_capability_of, tw_capability_of_column, tw_feature, tw_outcome, tw_outcome_column,
    tw_outcome_of_few, tw_outcome_of_few_column, tw_outcome_with_uniform,
    tw_outcome_with_uniform_column,
};
pub use plan::{
    tw_expected, tw_plan, tw_plan_after, tw_plan_expected, tw_plan_free, tw_plan_json,
    tw_plan_open, tw_plan_open_n, tw_plan_page, tw_plan_picture, tw_plan_picture_count,
    tw_plan_short_text, tw_plan_step, tw_plan_step_count, tw_plan_surface, tw_plan_text, tw_slide,
    tw_step, tw_step_kind, tw_surface,
};
pub use quantity::*;
pub use scalar::{
    tw_arc_height, tw_regime, tw_spindle_speed_for, tw_support, tw_theoretical_roughness,
};
pub use shape::{
    tw_facing_time, tw_facing_time_at_surface_speed, tw_facing_time_at_surface_speed_column,
    tw_facing_time_column, tw_facing_time_to_middle, tw_facing_time_to_middle_at_surface_speed,
    tw_facing_time_to_middle_at_surface_speed_column, tw_facing_time_to_middle_column,
    tw_full_speed_below, tw_full_speed_below_column, tw_slow_below, tw_slow_below_column,
    tw_speed_in_facing, tw_speed_in_facing_column, tw_tool_height_error,
    tw_tool_height_error_column,
};
pub use speed::{
    tw_cutting_speed_of, tw_cutting_speed_of_column, tw_feed_rate_of, tw_feed_rate_of_column,
    tw_handwheel_rate, tw_handwheel_rate_column, tw_mean_diameter, tw_mean_diameter_column,
    tw_removal_rate_at, tw_removal_rate_at_column, tw_removal_rate_of, tw_removal_rate_of_column,
    tw_speed_of_step, tw_speed_of_step_column, tw_step_ratio, tw_time_of_cut,
    tw_time_of_cut_column,
};
pub use spring::{
    tw_diameter_error_with_sag, tw_diameter_error_with_sag_column, tw_largest_depth_for,
    tw_largest_depth_for_column, tw_largest_feed_for, tw_largest_feed_for_column, tw_true_depth,
    tw_true_depth_column,
};
pub use spring_passes::{
    tw_left_after_equal_infeeds, tw_left_after_equal_infeeds_column, tw_left_after_passes,
    tw_left_after_passes_column, tw_left_in_the_end, tw_left_in_the_end_column,
    tw_light_after_heavy, tw_light_after_heavy_column, tw_share_left, tw_share_left_column,
    tw_spring_passes, tw_spring_passes_column,
};
pub use status::{tw_error, tw_status, tw_status_text, tw_version};
pub use tailstock::{
    tw_tailstock_correction, tw_tailstock_correction_column, tw_tailstock_error,
    tw_tailstock_error_column, tw_tailstock_set_over, tw_tailstock_set_over_column,
    tw_taper_of_set_over, tw_taper_of_set_over_column, tw_usual_set_over, tw_usual_set_over_column,
};
pub use taper::{
    tw_taper_change_over, tw_taper_change_over_column, tw_taper_half_angle,
    tw_taper_half_angle_column, tw_taper_large_for, tw_taper_large_for_column,
    tw_taper_length_between, tw_taper_length_between_column, tw_taper_of_half_angle,
    tw_taper_of_half_angle_column, tw_taper_of_included_angle, tw_taper_of_included_angle_column,
    tw_taper_of_ratio, tw_taper_of_ratio_column, tw_taper_small_for, tw_taper_small_for_column,
};
pub use texture::{
    tw_arc_roughness, tw_arc_roughness_column, tw_arc_shape, tw_arc_shape_column,
    tw_least_minor_angle_for_arc, tw_least_minor_angle_for_arc_column, tw_roughness_grade,
    tw_roughness_grade_column, tw_theoretical_shape, tw_theoretical_shape_column, tw_uneven_spread,
    tw_uneven_spread_column,
};
pub use tolerance::{
    tw_general_tolerance, tw_general_tolerance_column, tw_standard_tolerance,
    tw_standard_tolerance_column, tw_tolerance_by_formula, tw_tolerance_by_formula_column,
};
pub use tool::{
    tw_boring_bar_deflection, tw_boring_bar_deflection_column, tw_pip_diameter,
    tw_pip_diameter_column, tw_rake_change, tw_rake_change_column, tw_shank_deflection,
    tw_shank_deflection_column, tw_taper_error, tw_taper_error_column, tw_turned_diameter,
    tw_turned_diameter_column,
};
pub use uncertainty::{
    tw_combined_uncertainty, tw_coverage_factor_for, tw_coverage_factor_for_column,
    tw_distribution, tw_expanded_uncertainty, tw_expanded_uncertainty_column,
    tw_standard_uncertainty_of, tw_standard_uncertainty_of_column,
    tw_standard_uncertainty_of_resolution, tw_standard_uncertainty_of_resolution_column,
};
pub use verdict::{
    tw_acceptance, tw_acceptance_column, tw_chance_that_good, tw_chance_that_good_column,
    tw_decision_rule, tw_guard_band, tw_guard_band_column, tw_verdict, tw_verdict_column,
    tw_verdict_of,
};

use std::panic::{AssertUnwindSafe, catch_unwind};

use crate::error::Error;
use crate::quantity::Diameter;
use crate::standards::limits::Limits;
use status::{Detail, Failure};

/// Runs `work`; a panic becomes a failure.
#[inline]
fn guarded<T>(work: impl FnOnce() -> Result<T, Failure>) -> Result<T, Failure> {
    match catch_unwind(AssertUnwindSafe(work)) {
        Ok(result) => result,
        Err(_) => Err(Failure::panicked()),
    }
}

/// The zone between two sizes, which are arguments of their own.
fn zone(smallest: Diameter, largest: Diameter) -> Result<Limits, Error> {
    Limits::new(smallest, largest).map_err(|error| error.at("smallest"))
}

/// What a door writes; and what it writes after a failure.
trait Answer: Copy {
    /// NaN, NULL, 0.
    const FAILED: Self;
}

/// A door: looks at `detail` and the outputs, runs `work`, and has its answer or the mark of failure
/// written.
#[inline]
fn call<T: Answer>(
    detail: *mut tw_error,
    any_output: bool,
    work: impl FnOnce() -> Result<T, Failure>,
    write: impl FnOnce(T),
) -> tw_status {
    // Each failure ends in a call of its own, with nothing left to do behind it: a door of few
    // numbers then needs no stack.
    if !any_output {
        write(T::FAILED);
        return status::fail_without_output(detail);
    }
    if !Detail::at(detail).is_sound() {
        write(T::FAILED);
        return status::fail_by_size();
    }
    match guarded(work) {
        Ok(answer) => {
            write(answer);
            status::succeed(detail)
        }
        Err(failure) => {
            write(T::FAILED);
            status::fail(detail, failure)
        }
    }
}

/// Writes where there is a place to write to.
///
/// # Safety
/// `place` is NULL or may be written.
#[inline]
unsafe fn put<T>(place: *mut T, value: T) {
    if !place.is_null() {
        // SAFETY: the caller's promise; alignment is not needed.
        unsafe { place.write_unaligned(value) }
    }
}
