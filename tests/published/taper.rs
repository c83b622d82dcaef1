//! Tapers: named ones (ISO 296, ISO 7388, from memory), their angles, and the setting of slides.

use turnwright::physics::taper::{self, Taper};
use turnwright::standards::taper::named;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    if case.has("taper") {
        let listed = named(case.word("taper")?).map_err(told)?.value;
        if let Some(ratio) = case.maybe::<TaperRatio>("ratio")?
            && ratio != listed.ratio()
        {
            return Err(format!("{} is 1:{}", listed.name(), listed.ratio()));
        }
        return case.expect("half_angle", Taper::of_ratio(listed.ratio()).half_angle());
    }
    if case.has("travel_over_radial_infeed") {
        let over: Slenderness = case.get("travel_over_radial_infeed")?;
        let travel = |mm| Travel::from_mm(mm).map_err(told);
        let angle = taper::angle_for_infeed(travel(0.1)?, travel(0.1 * over.value())?);
        return case.expect("angle", angle.map_err(told)?);
    }
    if case.has("travel") {
        let moved = taper::compound_motion(case.get("angle")?, case.get("travel")?);
        case.expect("radial_infeed", moved.infeed)?;
        return case.expect("axial_shift", moved.shift);
    }
    let taper = Taper::between(
        case.get("large_diameter")?,
        case.get("small_diameter")?,
        case.get("length")?,
    )
    .map_err(told)?;
    case.expect("half_angle", taper.half_angle())?;
    case.expect("ratio", taper.ratio())?;
    case.expect("taper_per_foot", taper.per_foot())?;
    if let Some(centres) = case.maybe("length_between_centres")? {
        case.expect("setover", taper::set_over(taper, centres))?;
        case.expect("usual_form", taper::usual_set_over(taper, centres))?;
    }
    Ok(())
}
