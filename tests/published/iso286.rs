//! Limits and fits: ISO 286-1 and ISO 286-2 (from memory).

use turnwright::standards::fit::{Fit, HoleLimits, ShaftLimits};
use turnwright::standards::tolerance_grade::{
    ToleranceGrade, standard_tolerance, tolerance_by_formula,
};
use turnwright::{Diameter, ToleranceClass};

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    answered(case).map_err(|trouble| trouble.to_string())
}

fn answered(case: &Case) -> Result<(), Box<dyn std::error::Error>> {
    if case.has("nominals") {
        let class: ToleranceClass = case.word("class")?.parse()?;
        let (mut upper, mut lower) = (Vec::new(), Vec::new());
        for nominal in case.get_list::<Diameter>("nominals")? {
            let deviations = class.deviations(nominal)?.value;
            upper.push(deviations.upper());
            lower.push(deviations.lower());
        }
        case.expect_list("upper_deviations", &upper)?;
        case.expect_list("lower_deviations", &lower)?;
        return Ok(());
    }
    let nominal: Diameter = case.get("nominal")?;
    if case.has("hole") {
        let hole = HoleLimits::of_class(nominal, case.word("hole")?.parse()?)?;
        let shaft = ShaftLimits::of_class(nominal, case.word("shaft")?.parse()?)?;
        let fit = Fit::of(hole.value, shaft.value)?;
        case.expect("smallest_clearance", fit.least_clearance())?;
        case.expect("largest_clearance", fit.largest_clearance())?;
    } else if case.has("class") {
        let class: ToleranceClass = case.word("class")?.parse()?;
        let deviations = class.deviations(nominal)?.value;
        let limits = class.limits(nominal)?.value;
        case.expect("upper_deviation", deviations.upper())?;
        case.expect("lower_deviation", deviations.lower())?;
        case.expect("largest", limits.largest())?;
        case.expect("smallest", limits.smallest())?;
        case.expect("tolerance", limits.tolerance())?;
    } else {
        let grade = ToleranceGrade::new(u8::try_from(case.count("grade")?)?)?;
        if case.asks("tolerance") {
            case.expect("tolerance", standard_tolerance(nominal, grade)?.value)?;
        } else {
            let found = tolerance_by_formula(nominal, grade)?;
            case.expect("mean_diameter", found.mean_diameter)?;
            case.expect("tolerance_unit", found.tolerance_unit)?;
            case.expect("unrounded_tolerance", found.tolerance)?;
        }
    }
    Ok(())
}
