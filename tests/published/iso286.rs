//! ISO 286: standard tolerances, limit deviations of classes, fits.

use turnwright::standards::fit::Fit;
use turnwright::standards::tolerance_class::ToleranceClass;
use turnwright::standards::tolerance_grade::{ToleranceGrade, standard_tolerance};
use turnwright::{Diameter, Error, LowerDeviation, UpperDeviation};

use crate::case::Case;

fn class(case: &Case, field: &str) -> Result<ToleranceClass, String> {
    case.word(field)?
        .parse()
        .map_err(|error: Error| error.to_string())
}

pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    if case.has("nominals") {
        let class = class(case, "class")?;
        let nominals: Vec<Diameter> = case.get_list("nominals")?;
        let found = nominals
            .into_iter()
            .map(|nominal| class.deviations(nominal).map(|found| found.value));
        let found = found.collect::<Result<Vec<_>, _>>().map_err(told)?;
        let upper: Vec<UpperDeviation> = found.iter().map(|both| both.upper()).collect();
        let lower: Vec<LowerDeviation> = found.iter().map(|both| both.lower()).collect();
        case.expect_list("upper_deviations", &upper)?;
        return case.expect_list("lower_deviations", &lower);
    }
    let nominal: Diameter = case.get("nominal")?;
    if case.has("grade") {
        let number = u32::try_from(case.count("grade")?).map_err(|e| e.to_string())?;
        let grade = ToleranceGrade::new(number).map_err(told)?;
        let tolerance = standard_tolerance(nominal, grade).map_err(told)?;
        return case.expect("tolerance", tolerance.value);
    }
    if case.has("hole") {
        let limits = |field: &str| class(case, field)?.limits(nominal).map_err(told);
        let fit = Fit::of(limits("hole")?.value, limits("shaft")?.value);
        case.expect("largest_clearance", fit.largest_clearance())?;
        return case.expect("smallest_clearance", fit.least_clearance());
    }
    let class = class(case, "class")?;
    let deviations = class.deviations(nominal).map_err(told)?.value;
    let limits = class.limits(nominal).map_err(told)?.value;
    case.expect("upper_deviation", deviations.upper())?;
    case.expect("lower_deviation", deviations.lower())?;
    case.expect("largest", limits.largest())?;
    case.expect("smallest", limits.smallest())?;
    if case.asks("tolerance") {
        case.expect("tolerance", limits.tolerance())?;
    }
    Ok(())
}
