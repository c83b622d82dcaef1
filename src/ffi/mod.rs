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
//!    failure. They arrive in the header word for word. No Rust links.
//! 10. After a change: `TW_BLESS=1 cargo test --test c` writes the header and the snapshots anew.
//!     The difference is what the change does to the interface; commit it only on purpose.
#![allow(non_camel_case_types)]
// What a caller must keep to stands once, on the first page of the header.
#![allow(clippy::missing_safety_doc)]

pub mod bar;
pub mod centre;
pub mod columns;
pub mod document;
pub mod drive;
pub mod edge;
pub mod finish;
pub mod force;
pub mod heat;
pub mod life;
pub mod limits;
pub mod measured;
pub mod plan;
pub mod quantity;
mod rows;
pub mod scalar;
pub mod shape;
pub mod status;
pub mod taper;
pub mod uncertainty;
mod wide_spread;

pub use bar::{
    tw_critical_speed_of_bar, tw_critical_speed_of_bar_column, tw_critical_speed_with_end_mass,
    tw_critical_speed_with_end_mass_column, tw_deflection_at, tw_deflection_at_column,
    tw_diameter_error_with_sag, tw_diameter_error_with_sag_column, tw_feed_force_moment,
    tw_feed_force_moment_column, tw_largest_depth_for, tw_largest_depth_for_column,
    tw_left_in_the_end, tw_left_in_the_end_column, tw_light_after_heavy,
    tw_light_after_heavy_column, tw_share_left, tw_share_left_column, tw_tailstock_correction,
    tw_tailstock_correction_column, tw_true_depth, tw_true_depth_column, tw_whip, tw_whip_column,
};
pub use centre::{
    tw_buckling_load, tw_buckling_load_column, tw_growth_load, tw_growth_load_column, tw_push_out,
    tw_push_out_column,
};
pub use columns::{
    tw_arc_height_column, tw_column, tw_out_column, tw_spindle_speed_for_column,
    tw_theoretical_roughness_column,
};
pub use document::{
    tw_answer, tw_answer_n, tw_material_keys, tw_question_names, tw_question_schema, tw_text_free,
};
pub use drive::{
    tw_base_speed_in_range, tw_base_speed_in_range_column, tw_highest_speed_for_cut,
    tw_highest_speed_for_cut_column, tw_torque_available, tw_torque_available_column,
};
pub use edge::{
    tw_carbide_speed_factor, tw_carbide_speed_factor_column, tw_equivalent_chip_thickness,
    tw_equivalent_chip_thickness_column, tw_rake_factor, tw_rake_factor_column,
};
pub use finish::{
    tw_best_feed_with_least_chip, tw_best_feed_with_least_chip_column, tw_feed_for_ra,
    tw_feed_for_ra_column, tw_feed_for_rt, tw_feed_for_rt_column, tw_feed_for_rz,
    tw_feed_for_rz_column, tw_feed_with_least_chip, tw_feed_with_least_chip_column,
    tw_handwheel_rate, tw_handwheel_rate_column, tw_least_chip_by_friction,
    tw_least_chip_by_friction_column, tw_least_chip_regime, tw_least_chip_thickness,
    tw_least_chip_thickness_column, tw_mean_line_transmission, tw_mean_line_transmission_column,
    tw_rt_with_least_chip, tw_rt_with_least_chip_column,
};
pub use force::{
    tw_cutting_forces, tw_cutting_forces_column, tw_parting_force, tw_parting_force_column,
    tw_specific_force_at, tw_specific_force_at_column, tw_straight_edge_force,
    tw_straight_edge_force_column,
};
pub use heat::{
    tw_diameter_at_20, tw_diameter_at_20_column, tw_diameter_growth, tw_diameter_growth_column,
    tw_length_growth, tw_length_growth_column, tw_temperature_rise, tw_temperature_rise_column,
};
pub use life::{
    tw_cheapest_life, tw_cheapest_life_column, tw_life_after_change, tw_life_after_change_column,
    tw_life_at, tw_life_at_column, tw_speed_for_life, tw_speed_for_life_column,
};
pub use limits::{
    tw_clearance_of_fit, tw_clearance_of_fit_column, tw_deviations_of_class,
    tw_deviations_of_class_column, tw_limits_of_class, tw_limits_of_class_column,
    tw_standard_tolerance, tw_standard_tolerance_column,
};
pub use measured::{
    tw_cutting_power, tw_cutting_power_column, tw_cutting_torque, tw_cutting_torque_column,
    tw_power_above_idle, tw_power_above_idle_column, tw_power_of_removal,
    tw_power_of_removal_column, tw_specific_force_from_power, tw_specific_force_from_power_column,
};
pub use plan::{
    tw_expected, tw_plan, tw_plan_after, tw_plan_expected, tw_plan_free, tw_plan_json,
    tw_plan_open, tw_plan_open_n, tw_plan_page, tw_plan_picture, tw_plan_picture_count,
    tw_plan_short_text, tw_plan_step, tw_plan_step_count, tw_plan_text, tw_slide, tw_step,
    tw_step_kind,
};
pub use quantity::*;
pub use scalar::{
    tw_arc_height, tw_regime, tw_spindle_speed_for, tw_support, tw_theoretical_roughness,
};
pub use shape::{
    tw_facing_time, tw_facing_time_at_surface_speed, tw_facing_time_at_surface_speed_column,
    tw_facing_time_column, tw_facing_time_to_middle, tw_facing_time_to_middle_at_surface_speed,
    tw_facing_time_to_middle_at_surface_speed_column, tw_facing_time_to_middle_column,
    tw_tool_height_error, tw_tool_height_error_column,
};
pub use status::{tw_error, tw_status, tw_status_text, tw_version};
pub use taper::{
    tw_compound_angle_for, tw_compound_angle_for_column, tw_compound_motion,
    tw_compound_motion_column, tw_tailstock_set_over, tw_tailstock_set_over_column,
    tw_taper_half_angle, tw_taper_half_angle_column,
};
pub use uncertainty::{
    tw_best_aim, tw_best_aim_column, tw_chance_that_good, tw_chance_that_good_column,
    tw_combined_uncertainty, tw_coverage_factor_for, tw_coverage_factor_for_column,
    tw_decision_rule, tw_expected_price, tw_expected_price_column, tw_feature, tw_guard_band,
    tw_guard_band_column, tw_outcome, tw_outcome_column, tw_verdict, tw_verdict_column,
    tw_verdict_of,
};
pub use wide_spread::{
    tw_best_aim_in_zone, tw_best_aim_in_zone_column, tw_outcome_of_few, tw_outcome_of_few_column,
};

use std::panic::{AssertUnwindSafe, catch_unwind};

use status::{Detail, Failure};

/// Runs `work`; a panic becomes a failure.
#[inline]
fn guarded<T>(work: impl FnOnce() -> Result<T, Failure>) -> Result<T, Failure> {
    match catch_unwind(AssertUnwindSafe(work)) {
        Ok(result) => result,
        Err(_) => Err(Failure::panicked()),
    }
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
    let done = if !any_output {
        Err(Failure::no_output())
    } else {
        Detail::check(detail).and_then(|()| guarded(work))
    };
    match done {
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
