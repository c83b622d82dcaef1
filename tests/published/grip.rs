//! Gripping, shaped after VDI 3106 (from memory), and the overhang of the tool.

use turnwright::advice::overhang;
use turnwright::physics::grip::{self, Jaws};
use turnwright::physics::tool_overhang;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    if case.has("main_force") {
        let none = FeedForce::from_newton(0.0).map_err(told)?;
        let needed = grip::grip_needed(
            case.get("main_force")?,
            none,
            case.get("cut_diameter")?,
            case.get("grip_diameter")?,
            case.get("friction")?,
            case.get("safety")?,
        );
        return case.expect("grip_force", needed.map_err(told)?);
    }
    let count = u8::try_from(case.count("jaws")?).map_err(|e| e.to_string())?;
    let jaws = Jaws::new(count, case.get("jaw_mass")?, case.get("jaw_mass_radius")?);
    let (jaws, at_rest) = (jaws.map_err(told)?, case.get("grip_at_rest")?);
    if case.has("spindle_speed") {
        let left = grip::grip_at_speed(at_rest, &jaws, case.get("spindle_speed")?);
        return case.expect("grip_force", left.map_err(told)?);
    }
    case.expect("spindle_speed", grip::highest_speed(at_rest, &jaws))
}

pub fn tool(case: &Case) -> Result<(), String> {
    if case.has("shank_width") {
        let sunk = tool_overhang::shank_deflection(
            case.get("force")?,
            case.get("overhang")?,
            case.get("shank_width")?,
            case.get("shank_height")?,
            case.get("youngs_modulus")?,
        );
        return case.expect("deflection", sunk);
    }
    if case.has("bar_diameter") {
        let bent = tool_overhang::boring_bar_deflection(
            case.get("force")?,
            case.get("overhang")?,
            case.get("bar_diameter")?,
            case.get("youngs_modulus")?,
        );
        return case.expect("deflection", bent);
    }
    let told = |error: Error| error.to_string();
    let (ten, size) = (
        Diameter::from_mm(10.0).map_err(told)?,
        ShankSize::from_mm(10.0).map_err(told)?,
    );
    let (limit, tool) = match case.word("kind")? {
        "shank" => (overhang::SHANK, overhang::Standout::Shank(size)),
        "boring-steel" => (
            overhang::STEEL_BORING_BAR,
            overhang::Standout::SteelBoringBar(ten),
        ),
        other => return Err(format!("no guideline for {other}")),
    };
    case.expect("largest_overhang_over_height_or_diameter", limit.value)?;
    // The note of the case: a larger overhang raises a caution.
    let longer = Overhang::from_mm(10.0 * limit.value.value() * 1.3).map_err(told)?;
    match overhang::caution(tool, longer, &mut Provenance::default()) {
        Some(_) => Ok(()),
        None => Err(String::from("a larger overhang raises no caution")),
    }
}
