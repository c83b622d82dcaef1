//! Heat: growth, sizes at 20 degC, the rise of temperature without loss.

use turnwright::physics::heat;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("growth") {
        let grown = heat::diameter_growth(
            case.get("diameter")?,
            case.get("expansion")?,
            case.get("temperature_rise")?,
        );
        return case.expect("growth", grown);
    }
    if case.has("measured") {
        let cold = heat::diameter_at_20(
            case.get("measured")?,
            case.get("expansion")?,
            case.get("temperature_rise")?,
        );
        return case.expect("diameter", cold);
    }
    let mass = heat::mass_of_bar(
        case.get("density")?,
        case.get("diameter")?,
        case.get("length")?,
    );
    case.expect("mass", mass)?;
    let rise = heat::temperature_rise(
        case.get("power")?,
        case.get("fraction")?,
        case.get("time")?,
        mass,
        case.get("specific_heat")?,
    );
    case.expect("temperature_rise", rise.map_err(|e| e.to_string())?)
}
