//! Bars of any sections on any support: strength of materials texts (Roark; Timoshenko), from memory,
//! derived again by unit-load integrals and by beam elements at 50 digits.

use serde_json::Value;
use turnwright::physics::bar::{
    self, Bar, Springs, Support, deflection_chuck, deflection_chuck_and_centre, worst_station,
};
use turnwright::physics::loads::Load;
use turnwright::physics::measured_taper::{
    Measured, stiffness_from_taper, tailstock_correction, tailstock_error,
};
use turnwright::physics::section::Section;
use turnwright::physics::stepped::HeldBar;
use turnwright::shop::holding::Steady;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("coefficient") {
        coefficient(case)
    } else if case.asks("second_moment") {
        second_moment(case)
    } else if case.asks("chuck_stiffness") {
        from_taper(case)
    } else if case.asks("sag_at_end") {
        sag(case)
    } else if case.has("look_at") {
        looked_at(case)
    } else {
        bent(case)
    }
}

pub fn parse<Q: Quantity>(text: &str) -> Result<Q, String> {
    text.parse::<Q>().map_err(|e| e.to_string())
}

pub fn said<T>(result: Result<T, Error>) -> Result<T, String> {
    result.map_err(|e| e.to_string())
}

/// The table's coefficient c of c F L^3/(E I), or of c w L^4/(E I), from a bar of some size.
fn coefficient(case: &Case) -> Result<(), String> {
    let bar = Bar::new(parse("210 GPa")?, parse("20 mm")?, parse("300 mm")?);
    let (force, springs) = (parse("100 N")?, Springs::default());
    // In N and mm.
    let ei = 210e3 * std::f64::consts::PI * 20_f64.powi(4) / 64.0;
    let unit = 100.0 * 300_f64.powi(3) / ei;
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
        "simply-supported-middle" => {
            let at = parse("150 mm")?;
            let bent = bar::deflection(&bar, Support::BetweenCentres, &springs, force, at);
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
        "cantilever" | "simply supported" | "chuck and centre" => return weight(case, ei),
        other => return Err(format!("no such case here: {other}")),
    };
    case.expect_number("coefficient", bent.mm() / unit)?;
    case.expect_number("at_over_length", station.mm() / 300.0)
}

/// Sag under own weight, at its largest.
fn weight(case: &Case, ei: f64) -> Result<(), String> {
    let support = match case.word("case")? {
        "cantilever" => Support::Chuck,
        "simply supported" => Support::BetweenCentres,
        _ => Support::ChuckAndCentre,
    };
    let section = Section::cylinder(parse("20 mm")?, parse("300 mm")?);
    let bar = said(HeldBar::new(
        parse("210 GPa")?,
        &[section],
        support,
        &Springs::default(),
        &[],
    ))?;
    let density: Density = parse("7850 kg/m3")?;
    // N/mm: kg/m3 times mm2 times standard gravity.
    let per_length = 7850e-9 * 9.80665 * std::f64::consts::PI * 100.0;
    let unit = per_length * 300_f64.powi(4) / ei;
    let sag = |at: f64| -> Result<f64, String> {
        let at = said(WorkLength::from_mm(at))?;
        let bent = said(bar.bent_by(&[Load::OwnWeight { density }], &[at]))?;
        Ok(bent[0].mm())
    };
    // Golden section: a maximum, so its place is good to half of the digits only.
    let (mut low, mut high) = (1.0, 300.0);
    for _ in 0..80 {
        let (a, b) = (high - 0.618 * (high - low), low + 0.618 * (high - low));
        if sag(a)? < sag(b)? {
            low = a;
        } else {
            high = b;
        }
    }
    case.expect_number("coefficient", sag(high)? / unit)?;
    if case.asks("at_over_length") {
        // The place of the maximum by the sag beside it, which is flat there: a parabola through
        // three places a millimetre apart.
        let (left, middle, right) = (sag(high - 1.0)?, sag(high)?, sag(high + 1.0)?);
        let at = high - 0.5 * (right - left) / (right - 2.0 * middle + left);
        let off = (at / 300.0 - case.number("at_over_length")?).abs();
        if off > 1e-5 {
            return Err(format!("the place is off by {off} of the length"));
        }
    }
    Ok(())
}

fn second_moment(case: &Case) -> Result<(), String> {
    // By the bend of a short thick tube: delta = F L^3/(3 E I).
    let bore = case.get("bore")?;
    let section = said(Section::cylinder(case.get("diameter")?, parse("100 mm")?).with_bore(bore))?;
    let e = parse("200 GPa")?;
    let rigid = Springs::default();
    let bar = said(HeldBar::new(e, &[section], Support::Chuck, &rigid, &[]))?;
    let bent = said(bar.deflection(parse("300 N")?, parse("100 mm")?))?;
    let found = 300.0 * 100_f64.powi(3) / (3.0 * 200e3 * bent.mm());
    case.expect_in("second_moment", "mm^4", found)
}

fn from_taper(case: &Case) -> Result<(), String> {
    let (at, errors) = (case.get_list("at")?, case.get_list("diameter_error")?);
    if case.word("holding")? != "chuck" {
        return Err(String::from("a taper tells of the chuck alone"));
    }
    let measured: Vec<Measured> = at
        .into_iter()
        .zip(errors)
        .map(|(at, error)| Measured::new(at, error))
        .collect();
    let springs = said(stiffness_from_taper(
        case.get("youngs_modulus")?,
        &sections(case)?,
        case.get("force")?,
        &measured,
    ))?;
    let found = |k: Option<Stiffness>| k.ok_or_else(|| String::from("a rigid chuck"));
    case.expect("chuck_stiffness", found(springs.chuck)?)?;
    let tilt = springs
        .chuck_rotational
        .ok_or_else(|| String::from("a chuck that does not tilt"))?;
    case.expect("chuck_rotational_stiffness", tilt)
}

fn sag(case: &Case) -> Result<(), String> {
    let bar = held(case)?;
    let density = case.get("density")?;
    let bent = said(bar.bent_by(&[Load::OwnWeight { density }], &[bar.length()]))?;
    case.expect("sag_at_end", bent[0])
}

fn looked_at(case: &Case) -> Result<(), String> {
    let bar = held(case)?;
    let mut loads = Vec::new();
    if case.has("loads") {
        for load in case.raw("loads")?.as_array().into_iter().flatten() {
            let text = |name: &str| load.get(name).and_then(Value::as_str);
            let at = parse(text("at").unwrap_or_default())?;
            loads.push(match (text("force"), text("moment")) {
                (Some(force), None) => Load::Force {
                    at,
                    force: parse(force)?,
                },
                (None, Some(moment)) => Load::Moment {
                    at,
                    moment: parse(moment)?,
                },
                _ => return Err(String::from("a load is a force or a moment")),
            });
        }
    } else {
        loads.push(Load::Force {
            at: case.get("at")?,
            force: case.get("force")?,
        });
    }
    if let Some(density) = case.maybe("density")? {
        loads.push(Load::OwnWeight { density });
    }
    if case.raw("look_at")?.is_array() {
        let bent = said(bar.bent_by(&loads, &case.get_list("look_at")?))?;
        return case.expect_list("deflection", &bent);
    }
    let bent = said(bar.bent_by(&loads, &[case.get("look_at")?]))?;
    case.expect("deflection", bent[0])
}

fn bent(case: &Case) -> Result<(), String> {
    let bar = held(case)?;
    let force = case.get("force")?;
    if case.raw("at")?.is_array() {
        let stations: Vec<WorkLength> = case.get_list("at")?;
        let mut bent = vec![said(Deflection::from_mm(0.0))?; stations.len()];
        said(bar.deflections(force, &stations, &mut bent))?;
        return case.expect_list("deflection", &bent);
    }
    let at = case.get("at")?;
    let bent = said(bar.deflection(force, at))?;
    case.expect("deflection", bent)?;
    case.expect("diameter_error", bent.diameter_error())?;
    case.expect("centre_force", said(bar.centre_force(force, at))?)?;
    if case.asks("steady_force") {
        let forces = said(bar.steady_forces(force, at))?;
        case.expect("steady_force", forces[0])?;
    }
    uniform(case, force, at)
}

/// A uniform bar without a steady goes through the closed forms as well.
fn uniform(case: &Case, force: PassiveForce, at: WorkLength) -> Result<(), String> {
    let sections = sections(case)?;
    let [section] = sections.as_slice() else {
        return Ok(());
    };
    if case.has("steady_at") || section.end_diameter() != section.diameter() {
        return Ok(());
    }
    let overhang = said(Overhang::from_mm(section.length().mm()))?;
    let mut bar = Bar::new(case.get("youngs_modulus")?, section.diameter(), overhang);
    if let Some(bore) = section.bore() {
        bar = said(bar.with_bore(bore))?;
    }
    let (support, springs) = (support(case)?, springs(case)?);
    let bent = said(bar::deflection(&bar, support, &springs, force, at))?;
    case.expect("deflection", bent)?;
    if support == Support::ChuckAndCentre {
        let force = said(bar::centre_force(&bar, &springs, force, at))?;
        case.expect("centre_force", force)?;
    }
    Ok(())
}

/// The tailstock's case of the errors of diameter.
pub fn tailstock(case: &Case) -> Result<(), String> {
    let length: WorkLength = case.get("length_between_centres")?;
    let distance: WorkLength = case.get("distance_measured")?;
    let difference: DiameterError = case.get("larger_at_tail")?;
    let near = Measured::new(
        said(WorkLength::from_mm(10.0))?,
        said(DiameterError::from_mm(0.0))?,
    );
    let far = Measured::new(said(WorkLength::from_mm(10.0 + distance.mm()))?, difference);
    let moved = said(tailstock_correction(near, far, length))?;
    case.expect("move_tailstock_towards_tool", moved)?;
    // Moved so, it takes away what was measured.
    let overhang = said(Overhang::from_mm(length.mm()))?;
    let taken = |place| {
        said(tailstock_error(
            Support::BetweenCentres,
            moved,
            place,
            overhang,
        ))
    };
    let left = taken(far.at)?.mm() - taken(near.at)?.mm() + difference.mm();
    if left.abs() > 1e-12 {
        return Err(format!("the correction leaves {left} mm"));
    }
    Ok(())
}

pub fn held(case: &Case) -> Result<HeldBar, String> {
    let mut steadies = Vec::new();
    if let Some(at) = case.maybe("steady_at")? {
        let steady = Steady::rigid(at);
        steadies.push(match case.maybe("steady_stiffness")? {
            Some(stiffness) => steady.with_stiffness(stiffness),
            None => steady,
        });
    }
    if case.has("steadies") {
        for steady in case.raw("steadies")?.as_array().into_iter().flatten() {
            let text = |name: &str| steady.get(name).and_then(Value::as_str);
            let rigid = Steady::rigid(parse(text("at").unwrap_or_default())?);
            steadies.push(match text("stiffness") {
                Some(k) => rigid.with_stiffness(parse(k)?),
                None => rigid,
            });
        }
    }
    said(HeldBar::new(
        case.get("youngs_modulus")?,
        &sections(case)?,
        support(case)?,
        &springs(case)?,
        &steadies,
    ))
}

fn support(case: &Case) -> Result<Support, String> {
    if case.has("diameter_at_chuck") {
        return Ok(Support::Chuck);
    }
    match case.word("holding")? {
        "chuck" => Ok(Support::Chuck),
        "chuck and centre" => Ok(Support::ChuckAndCentre),
        "between centres" => Ok(Support::BetweenCentres),
        other => Err(format!("no such holding here: {other}")),
    }
}

fn springs(case: &Case) -> Result<Springs, String> {
    let mut springs = Springs::default();
    springs.chuck = match case.maybe("head_stiffness")? {
        Some(head) => Some(head),
        None => case.maybe("chuck_stiffness")?,
    };
    springs.chuck_rotational = case.maybe("chuck_rotational_stiffness")?;
    springs.centre = case.maybe("centre_stiffness")?;
    Ok(springs)
}

fn sections(case: &Case) -> Result<Vec<Section>, String> {
    if case.has("diameter_at_chuck") {
        let (near, far) = (case.get("diameter_at_chuck")?, case.get("diameter_at_end")?);
        return Ok(vec![Section::cone(near, far, case.get("length")?)]);
    }
    let rows = case.raw("sections")?.as_array();
    rows.into_iter()
        .flatten()
        .map(|row| {
            let text = |name: &str| row.get(name).and_then(Value::as_str);
            let near = parse(text("diameter").unwrap_or_default())?;
            let length = parse(text("length").unwrap_or_default())?;
            let section = match text("end_diameter") {
                Some(far) => Section::cone(near, parse(far)?, length),
                None => Section::cylinder(near, length),
            };
            match text("bore") {
                Some(bore) => said(section.with_bore(parse(bore)?)),
                None => Ok(section),
            }
        })
        .collect()
}
