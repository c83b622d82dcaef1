//! Uniform bars on chuck, and on chuck and centre: strength of materials texts (Roark; Timoshenko),
//! from memory, derived again.

use serde_json::Value;
use turnwright::physics::bar::{
    Bar, Springs, Support, centre_force, deflection, deflection_chuck, deflection_chuck_and_centre,
    worst_station,
};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("coefficient") {
        coefficient(case)
    } else {
        bent(case)
    }
}

fn parse<Q: Quantity>(text: &str) -> Result<Q, String> {
    text.parse::<Q>().map_err(|e| e.to_string())
}

fn said<T>(result: Result<T, Error>) -> Result<T, String> {
    result.map_err(|e| e.to_string())
}

/// The table's coefficient c of c F L^3 / (E I), from a bar of some size.
fn coefficient(case: &Case) -> Result<(), String> {
    let bar = Bar::new(parse("210 GPa")?, parse("20 mm")?, parse("300 mm")?);
    let (force, springs) = (parse("100 N")?, Springs::default());
    let (station, bent) = match case.word("case")? {
        "cantilever-end" => {
            let at = parse("300 mm")?;
            (at, said(deflection_chuck(&bar, &springs, force, at))?)
        }
        "propped-middle" => {
            let at = parse("150 mm")?;
            let bent = deflection_chuck_and_centre(&bar, &springs, force, at);
            (at, said(bent)?)
        }
        "chuck and centre, load moving" => said(worst_station(
            &bar,
            &springs,
            Support::ChuckAndCentre,
            force,
            parse("1 mm")?,
            parse("300 mm")?,
        ))?,
        other => return Err(format!("no such case here: {other}")),
    };
    // In N and mm.
    let second_moment = std::f64::consts::PI * 20_f64.powi(4) / 64.0;
    let unit = 100.0 * 300_f64.powi(3) / (210e3 * second_moment);
    case.expect_number("coefficient", bent.mm() / unit)?;
    case.expect_number("at_over_length", station.mm() / 300.0)
}

fn bent(case: &Case) -> Result<(), String> {
    let bar = bar(case)?;
    let support = match case.word("holding")? {
        "chuck" => Support::Chuck,
        "chuck and centre" => Support::ChuckAndCentre,
        other => return Err(format!("no such holding here: {other}")),
    };
    let mut springs = Springs::default();
    springs.chuck = case.maybe("chuck_stiffness")?;
    springs.chuck_rotational = case.maybe("chuck_rotational_stiffness")?;
    springs.centre = case.maybe("centre_stiffness")?;
    let force = case.get("force")?;
    if let Some(stations) = case.raw("at")?.as_array() {
        let bent: Vec<Deflection> = stations
            .iter()
            .map(|at| {
                let at = parse(at.as_str().unwrap_or_default())?;
                said(deflection(&bar, support, &springs, force, at))
            })
            .collect::<Result<_, String>>()?;
        return case.expect_list("deflection", &bent);
    }
    let at = case.get("at")?;
    let bent = said(deflection(&bar, support, &springs, force, at))?;
    case.expect("deflection", bent)?;
    case.expect("diameter_error", bent.diameter_error())?;
    if support == Support::ChuckAndCentre {
        let force = said(centre_force(&bar, &springs, force, at))?;
        case.expect("centre_force", force)?;
    }
    Ok(())
}

/// The one section of a uniform bar.
fn bar(case: &Case) -> Result<Bar, String> {
    let [section] = case
        .raw("sections")?
        .as_array()
        .map(Vec::as_slice)
        .unwrap_or_default()
    else {
        return Err(String::from("not a bar of one section"));
    };
    let size = |name: &str| {
        section
            .get(name)
            .and_then(Value::as_str)
            .unwrap_or_default()
    };
    let bar = Bar::new(
        case.get("youngs_modulus")?,
        parse(size("diameter"))?,
        parse(size("length"))?,
    );
    match size("bore") {
        "" => Ok(bar),
        bore => said(bar.with_bore(parse(bore)?)),
    }
}
