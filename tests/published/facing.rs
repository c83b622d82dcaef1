//! Facing and the height of the tool, derived.

use turnwright::physics::facing::{self, FacingPace};
use turnwright::physics::tool_height;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    if case.asks("pip_diameter") {
        let pip = facing::pip_diameter(case.get("height_error")?);
        return case.expect("pip_diameter", pip.ok_or("no pip")?);
    }
    let outside: Diameter = case.get("diameter")?;
    let pace = if case.has("spindle_speed") {
        FacingPace::SpindleSpeed(case.get("spindle_speed")?)
    } else {
        FacingPace::SurfaceSpeed {
            cutting_speed: case.get("cutting_speed")?,
            highest: case.maybe("highest_speed")?,
        }
    };
    let time = facing::time(pace, outside, case.maybe("bore")?, case.get("feed")?);
    case.expect("time", time.map_err(told)?)?;
    if let Some(below) = facing::full_speed_below(pace) {
        case.expect("clamp_diameter", below)?;
    }
    case.expect("speed_at_start", facing::spindle_speed_at(pace, outside))?;
    let at = |diameter| facing::cutting_speed_at(pace, diameter);
    case.expect("cutting_speed_outside", at(outside))?;
    let ten = Diameter::from_mm(10.0).map_err(told)?;
    case.expect("cutting_speed_at_10_mm", at(ten))
}

pub fn tool_height(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    let height: ToolHeight = case.get("height_error")?;
    if case.asks("rake_change") {
        let change = tool_height::rake_change(case.get("diameter")?, height);
        return case.expect("rake_change", change.map_err(told)?);
    }
    let (zeroed_at, moved_in) = (case.get("zeroed_at_diameter")?, case.get("moved_in")?);
    let turned = tool_height::turned_diameter(zeroed_at, moved_in, height);
    case.expect("diameter", turned.map_err(told)?)?;
    let error = tool_height::diameter_error(zeroed_at, moved_in, height);
    case.expect("diameter_error", error.map_err(told)?)
}
