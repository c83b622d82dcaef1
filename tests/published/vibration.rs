//! Critical speeds: Blevins, Formulas for Natural Frequency and Mode Shape, from memory; Kirchhoff
//! 1879, from memory; transfer matrices and Bessel functions at 50 digits.

use std::f64::consts::PI;

use turnwright::physics::bar::{Bar, Springs, Support};
use turnwright::physics::section::Section;
use turnwright::physics::stepped::HeldBar;
use turnwright::physics::whirl::{critical_speed_with_end_mass, whip};
use turnwright::shop::holding::Steady;
use turnwright::*;

use crate::bar::{held, parse, said};
use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("case") {
        return lambda(case);
    }
    if case.asks("whip") {
        let thrown = said(whip(
            case.get("eccentricity")?,
            case.get("spindle_speed")?,
            case.get("first_critical_speed")?,
        ))?;
        return case.expect("whip", thrown);
    }
    let bar = held(case)?;
    let density = case.get("density")?;
    let speed = match case.maybe("end_mass")? {
        Some(mass) => {
            let row = &case.raw("sections")?[0];
            let text = |name: &str| row[name].as_str().unwrap_or_default();
            let (diameter, overhang) = (parse(text("diameter"))?, parse(text("length"))?);
            let bar = Bar::new(case.get("youngs_modulus")?, diameter, overhang);
            critical_speed_with_end_mass(&bar, density, mass)
        }
        None => said(bar.first_critical_speed(density))?,
    };
    case.expect("first_critical_speed", speed)?;
    case.expect_in("first_frequency", "Hz", speed.rpm() / 60.0)
}

/// lambda of lambda^2/L^2 sqrt(E I/(rho A)), from a bar of some size.
fn lambda(case: &Case) -> Result<(), String> {
    let section = Section::cylinder(parse("20 mm")?, parse("500 mm")?);
    let (support, steadies) = match case.word("case")? {
        "cantilever" => (Support::Chuck, vec![]),
        "chuck and centre" => (Support::ChuckAndCentre, vec![]),
        "between centres" => (Support::BetweenCentres, vec![]),
        // No holding clamps both ends; a steady so near to the centre does, all but 1e-4 of it.
        "fixed and fixed" => (
            Support::ChuckAndCentre,
            vec![Steady::rigid(parse("499.95 mm")?)],
        ),
        other => return Err(format!("no such case here: {other}")),
    };
    let e: YoungsModulus = parse("210 GPa")?;
    let density: Density = parse("7850 kg/m3")?;
    let rigid = Springs::default();
    let bar = said(HeldBar::new(e, &[section], support, &rigid, &steadies))?;
    let over = |speed: CriticalSpeed| {
        let radius_of_gyration = 0.020 / 4.0;
        let wave = (210e9 / 7850.0_f64).sqrt();
        speed.rpm() / 60.0 * 2.0 * PI * 0.25 / (wave * radius_of_gyration)
    };
    let exact = over(said(bar.first_critical_speed(density))?);
    if case.asks("over_exact") || !case.asks("lambda") {
        let bound = over(said(bar.critical_speed_bound(density))?);
        case.expect_number("over_exact", bound / exact)?;
        return case.expect_number("lambda_squared", bound);
    }
    if case.word("case")? == "fixed and fixed" {
        let off = (exact / case.number("lambda_squared")? - 1.0).abs();
        case.number("lambda")?;
        return if off < 1e-3 {
            Ok(())
        } else {
            Err(format!("lambda^2 is {exact}"))
        };
    }
    case.expect_number("lambda_squared", exact)?;
    case.expect_number("lambda", exact.sqrt())
}
