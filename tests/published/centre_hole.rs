//! Centre holes: ISO 866, ISO 2540, ISO 6411 and ASME B94.11M (from memory), and their geometry.

use turnwright::advice::centre_hole::{DRILL_OVER_TURNING, choose};
use turnwright::physics::centre::{cone_pressure, push_out, side_pressure};
use turnwright::physics::heat::length_growth;
use turnwright::physics::strut::{Strut, buckling_load, growth_load};
use turnwright::standards::centre_hole::{INCH_DRILLS, cone_depth, form_a, form_b};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("form") {
        sizes(case)
    } else if case.has("size") {
        inch_sizes(case)
    } else if case.asks("spindle_speed") {
        spindle_speed(case)
    } else if case.has("temperature_rise") {
        growth(case)
    } else if case.asks("axial_force") {
        let none = Friction::from_value(0.0).map_err(|e| e.to_string())?;
        let friction = case.maybe("friction")?.unwrap_or(none);
        case.expect("axial_force", push_out(case.get("radial_force")?, friction))
    } else if case.asks("mean_pressure") {
        let (wide, narrow) = (
            case.get("countersink_diameter")?,
            case.get("pilot_diameter")?,
        );
        let pressure = match case.maybe("axial_force")? {
            Some(force) => cone_pressure(force, wide, narrow),
            None => side_pressure(case.get("radial_force")?, wide, narrow),
        };
        case.expect("mean_pressure", pressure.map_err(|e| e.to_string())?)
    } else {
        let depth = cone_depth(
            case.get("countersink_diameter")?,
            case.get("pilot_diameter")?,
        );
        case.expect("cone_depth", depth.map_err(|e| e.to_string())?)
    }
}

fn sizes(case: &Case) -> Result<(), String> {
    let listed = match case.word("form")? {
        "A" => form_a(),
        _ => form_b(),
    };
    let pilot: Diameter = case.get("pilot_diameter")?;
    let size = listed.iter().find(|size| size.pilot() == pilot);
    let size = size.ok_or_else(|| format!("no pilot of {pilot}"))?;
    case.expect("countersink_diameter", size.countersink())?;
    case.expect("cone_depth", size.cone_depth())?;
    case.expect("depth_to_cone_end", size.cone_depth())?;
    match size.guard() {
        Some(guard) => case.expect("guard_diameter", guard),
        None => Ok(()),
    }
}

fn inch_sizes(case: &Case) -> Result<(), String> {
    let name = case.word("size")?;
    let drill = INCH_DRILLS.value.iter().find(|drill| drill.size() == name);
    let drill = drill.ok_or_else(|| format!("no size {name}"))?;
    case.expect("body_diameter", drill.body())?;
    case.expect("pilot_diameter", drill.pilot())
}

/// The speed advised for drilling the hole of a bar of 40 mm, which has the countersink given.
fn spindle_speed(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    let speed = |rpm| SpindleSpeed::from_rpm(rpm).map_err(told);
    let range = SpeedRange::new("", speed(20.0)?, speed(6000.0)?).map_err(told)?;
    let lathe = Lathe::with_ranges(vec![range]).map_err(told)?;
    let drilling: CuttingSpeed = case.get("cutting_speed")?;
    let turning = drilling.m_per_min() / DRILL_OVER_TURNING.value;
    let turning = CuttingSpeed::from_m_per_min(turning).map_err(told)?;
    let end = Diameter::from_mm(40.0).map_err(told)?;
    let choice = choose(&lathe, end, turning, None, &mut Provenance::default());
    let choice = choice.ok_or("no centre hole")?;
    let countersink: Diameter = case.get("countersink_diameter")?;
    if choice.countersink != countersink {
        return Err(format!("a countersink of {}", choice.countersink));
    }
    case.expect("spindle_speed", choice.spindle_speed)
}

/// A bar that grows between the chuck and a centre that gives way.
fn growth(case: &Case) -> Result<(), String> {
    let length: WorkLength = case.get("length")?;
    let grown = length_growth(
        length,
        case.get("expansion")?,
        case.get("temperature_rise")?,
    );
    case.expect("growth", grown)?;
    let mut bar = Strut::new(case.get("youngs_modulus")?, case.get("diameter")?, length);
    if let Some(bore) = case.maybe("bore")? {
        bar = bar.with_bore(bore).map_err(|e| e.to_string())?;
    }
    let load = growth_load(&bar, grown, case.maybe("centre_axial_stiffness")?);
    case.expect("load_rise", load)?;
    case.expect("buckling_load", buckling_load(&bar))
}
