//! Uncertainty, probability, aim: laws, budgets, coverage factors, shares of good parts, guard bands,
//! the cheapest aim.

use serde_json::Value;
use turnwright::physics::aim::{Prices, best_aim, expected_price};
use turnwright::physics::budget::{Budget, Component, coverage_factor, expanded};
use turnwright::physics::spread::{SizeSpread, capability, outcome, outcome_of_few};
use turnwright::standards::decision::{DecisionRule, acceptance};
use turnwright::{
    Confidence, Correlation, CoverageFactor, DegreesOfFreedom, Diameter, Feature, HalfWidth,
    Limits, Sensitivity, SizeUncertainty, StandardUncertainty,
};

use crate::case::Case;

fn words<T>(result: Result<T, turnwright::Error>) -> Result<T, String> {
    result.map_err(|error| error.to_string())
}

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("distribution") {
        let a = case.get::<HalfWidth>("half_width")?;
        let component = match case.word("distribution")? {
            "uniform" => Component::uniform("one", a),
            "triangular" => Component::triangular("one", a),
            "arcsine" => Component::arcsine("one", a),
            other => return Err(format!("no distribution {other}")),
        };
        return case.expect("standard_uncertainty", component.standard_uncertainty());
    }
    if case.has("resolution") {
        let component = Component::resolution("one", case.get("resolution")?);
        return case.expect("standard_uncertainty", component.standard_uncertainty());
    }
    if case.has("components") {
        return budget(case);
    }
    let k = |nu: DegreesOfFreedom, p: &str| -> Result<CoverageFactor, String> {
        Ok(coverage_factor(Some(nu), words(p.parse::<Confidence>())?))
    };
    if case.has("confidences") {
        let nu = case.get("degrees_of_freedom")?;
        let found = case
            .get_list::<Confidence>("confidences")?
            .into_iter()
            .map(|p| coverage_factor(Some(nu), p))
            .collect::<Vec<_>>();
        return case.expect_list("coverage_factors", &found);
    }
    let nu = words(DegreesOfFreedom::from_value(
        case.count("degrees_of_freedom")? as f64,
    ))?;
    case.expect("t_95", k(nu, "0.95")?)?;
    case.expect("t_95_45", k(nu, "0.9545")?)
}

fn components(case: &Case) -> Result<Vec<Component>, String> {
    let list = case.raw("components")?.as_array().cloned();
    let list = list.ok_or("components are no list")?;
    let freedom = case.has("degrees_of_freedom");
    let freedom = freedom.then(|| case.get_list::<DegreesOfFreedom>("degrees_of_freedom"));
    let freedom = freedom.transpose()?.unwrap_or_default();
    let sensitivities = case.has("sensitivities");
    let sensitivities = sensitivities.then(|| case.get_list::<Sensitivity>("sensitivities"));
    let sensitivities = sensitivities.transpose()?.unwrap_or_default();
    let mut components = Vec::new();
    for (i, item) in list.iter().enumerate() {
        let text = |field: &str| item[field].as_str().unwrap_or_default().to_owned();
        let mut component = match item {
            Value::String(u) => {
                Component::standard(i.to_string(), words(u.parse::<StandardUncertainty>())?)
            }
            _ => {
                let size = text("half_width_or_sd");
                let component = match text("distribution").as_str() {
                    "uniform" => Component::uniform(text("name"), words(size.parse())?),
                    "normal" => Component::standard(text("name"), words(size.parse())?),
                    other => return Err(format!("no distribution {other}")),
                };
                let c = item["sensitivity"].as_f64().unwrap_or_default();
                component.with_sensitivity(words(Sensitivity::from_value(c))?)
            }
        };
        if let Some(nu) = freedom.get(i) {
            component = component.with_degrees_of_freedom(*nu);
        }
        if let Some(c) = sensitivities.get(i) {
            component = component.with_sensitivity(*c);
        }
        components.push(component);
    }
    Ok(components)
}

fn budget(case: &Case) -> Result<(), String> {
    let mut budget = words(Budget::new(components(case)?))?;
    if case.has("correlation") {
        budget = words(budget.with_correlation(0, 1, case.get("correlation")?))?;
    }
    if case.has("correlations") {
        let list = case.raw("correlations")?.as_array().cloned();
        let mut pairs = Vec::new();
        for pair in list.unwrap_or_default() {
            let at = |i: usize| pair[i].as_u64().unwrap_or(99) as usize;
            let r = pair[2].as_str().unwrap_or_default();
            pairs.push((at(0), at(1), words(r.parse::<Correlation>())?));
        }
        budget = words(budget.with_correlations(&pairs))?;
    }
    case.expect("combined", budget.combined())?;
    if case.asks("effective_degrees_of_freedom") {
        let nu = budget.degrees_of_freedom().ok_or("no degrees of freedom")?;
        case.expect("effective_degrees_of_freedom", nu)?;
    }
    if case.has("t99") {
        // The example cuts the degrees of freedom to 16 and reads t from the table.
        let t99 = case.get::<CoverageFactor>("t99")?;
        let k = coverage_factor(Some(words("16".parse())?), words("0.99".parse())?);
        if (k.value() - t99.value()).abs() > 0.005 {
            return Err(format!("t99: expected {t99}, got {k}"));
        }
        case.expect("expanded", expanded(budget.combined(), t99))?;
    }
    case.expect(
        "expanded_k2",
        expanded(budget.combined(), words("2".parse())?),
    )?;
    if case.asks("largest_share") {
        let most = budget.dominant();
        case.expect_word("largest_share", budget.components()[most].name())?;
        let share = budget.share(most).unwrap_or_default();
        case.expect_in("largest_share_of_variance", "percent", 100.0 * share)?;
    }
    Ok(())
}

fn limits(case: &Case) -> Result<Limits, String> {
    words(Limits::new(case.get("lower")?, case.get("upper")?))
}

fn spread(case: &Case) -> Result<SizeSpread, String> {
    let u = case.get::<StandardUncertainty>("standard_deviation")?;
    Ok(match case.maybe::<HalfWidth>("half_width")? {
        None => SizeSpread::normal(u),
        Some(a) => SizeSpread::normal_and_uniform(u, a),
    })
}

pub fn probability(case: &Case) -> Result<(), String> {
    // Offsets about a size of 1 mm.
    let around = |low: f64, high: f64, spread: SizeSpread| -> Result<f64, String> {
        let size = |mm| words(Diameter::from_mm(1.0 + mm));
        let limits = words(Limits::new(size(low)?, size(high)?))?;
        Ok(outcome(limits, size(0.0)?, spread, Feature::Shaft)
            .good
            .value())
    };
    if case.has("k") {
        let k = case.get::<CoverageFactor>("k")?.value() / 100.0;
        let u = words(StandardUncertainty::from_mm(0.01))?;
        return case.expect_number("inside", around(-k, k, SizeSpread::normal(u))?);
    }
    if case.has("limits") {
        let ends = case.get_list::<turnwright::Position>("limits")?;
        return case.expect_number("inside", around(ends[0].mm(), ends[1].mm(), spread(case)?)?);
    }
    if case.asks("guard_band") {
        let guard = match case.maybe::<SizeUncertainty>("expanded_uncertainty")? {
            Some(guard) => guard,
            None => DecisionRule::Conformance95.guard_band(case.get("standard_uncertainty")?),
        };
        case.expect("guard_band", guard)?;
        let accept = acceptance(limits(case)?, guard).ok_or("nothing left to accept")?;
        case.expect("accept_from", accept.smallest())?;
        return case.expect("accept_to", accept.largest());
    }
    let mean = case.get("mean")?;
    if case.asks("cp") {
        let found = capability(limits(case)?, mean, case.get("standard_deviation")?);
        case.expect("cp", found.cp)?;
        return case.expect("cpk", found.cpk);
    }
    let come_out = match case.maybe::<DegreesOfFreedom>("degrees_of_freedom")? {
        Some(nu) => {
            let u = case.get("standard_deviation")?;
            outcome_of_few(limits(case)?, mean, u, nu, Feature::Shaft)
        }
        None => outcome(limits(case)?, mean, spread(case)?, Feature::Shaft),
    };
    case.expect("good", come_out.good)?;
    case.expect("rework", come_out.rework)?;
    case.expect("scrap", come_out.scrap)
}

pub fn aim(case: &Case) -> Result<(), String> {
    let prices = Prices::new(case.get("scrap_price")?, case.get("rework_price")?);
    let (limits, spread) = (limits(case)?, spread(case)?);
    let best = words(best_aim(limits, spread, prices, Feature::Shaft))?;
    case.expect("aim", best.aim)?;
    case.expect("expected_price", best.expected_price)?;
    let middle = expected_price(limits, limits.middle(), spread, prices, Feature::Shaft);
    case.expect("price_at_middle", middle)
}
