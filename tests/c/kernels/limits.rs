//! Limits, tolerances and the errors of instruments.

use turnwright::ffi::{
    tw_deviations_from, tw_deviations_from_column, tw_diameter, tw_general_tolerance,
    tw_general_tolerance_column, tw_instrument_error, tw_instrument_error_column,
    tw_instrument_uncertainty, tw_length, tw_limits_from_deviations,
    tw_limits_from_deviations_column, tw_lower_deviation, tw_tolerance, tw_tolerance_by_formula,
    tw_tolerance_by_formula_column, tw_upper_deviation,
};
use turnwright::standards::general_tolerance::{self, GeneralClass};
use turnwright::standards::instrument::{self, Instrument};
use turnwright::standards::limit_deviations::LimitDeviations;
use turnwright::standards::limits::Limits;
use turnwright::standards::tolerance_grade::{ToleranceGrade, tolerance_by_formula};
use turnwright::{
    Diameter, LowerDeviation, Quantity, SizeUncertainty, Tolerance, UpperDeviation, WorkLength,
};

kernels! {
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
    "instrument_error" tw_instrument_error tw_instrument_error_column
        [diameter tw_diameter mm Diameter 5.0 500.0] (2)
        [error tw_instrument_uncertainty mm SizeUncertainty]
        {
let instrument = Instrument::Calliper;

let found = instrument::largest_error(instrument, diameter).ok()?;
Some([found.value.trade()])
        };
}
