//! A number that is none of an enumeration, or no plausible count.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_chip_thickness, tw_deflection, tw_depth_of_cut, tw_diameter, tw_diameter_error,
    tw_edge_radius, tw_general_tolerance, tw_general_tolerance_column, tw_grip_at_speed,
    tw_grip_at_speed_column, tw_grip_force, tw_half_width, tw_highest_speed_of_grip,
    tw_highest_speed_of_grip_column, tw_instrument_error, tw_instrument_error_column,
    tw_instrument_uncertainty, tw_least_chip_by_model, tw_least_chip_by_model_column,
    tw_left_after_equal_infeeds, tw_left_after_equal_infeeds_column, tw_left_after_passes,
    tw_left_after_passes_column, tw_length, tw_mass, tw_overhang, tw_radius, tw_set_over,
    tw_spindle_speed, tw_spring_share, tw_standard_uncertainty, tw_standard_uncertainty_of,
    tw_standard_uncertainty_of_column, tw_status, tw_tailstock_error, tw_tailstock_error_column,
    tw_tolerance,
};
use turnwright::{
    ChipThickness, Deflection, DepthOfCut, Diameter, DiameterError, EdgeRadius, GripForce,
    HalfWidth, Mass, Overhang, Quantity, Radius, SetOver, SizeUncertainty, SpindleSpeed,
    SpringShare, StandardUncertainty, Tolerance, WorkLength,
};

use crate::columns::{input, output};
use crate::{check, trial};

pub fn by_hand() -> Vec<Trial> {
    vec![trial(
        "kernels/whole_numbers_out_of_range_fail_the_whole_call",
        &[],
        refused_whole_numbers,
    )]
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
