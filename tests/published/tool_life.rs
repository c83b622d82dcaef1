//! Tool life: Taylor's law (from memory), its exponents, the lives that pay best.

use turnwright::physics::wear::{self, LifeLaw};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    if case.has("tool") {
        let usual = match case.word("tool")? {
            "high speed steel" => wear::HIGH_SPEED_STEEL,
            "carbide" => wear::CARBIDE,
            "ceramic" => wear::CERAMIC,
            other => return Err(format!("no exponent of {other}")),
        };
        return case.expect("exponent", usual.value.usual);
    }
    if case.has("lives") {
        let speeds = case.get_list::<CuttingSpeed>("speeds")?;
        let lives = case.get_list::<ToolLife>("lives")?;
        let lives: Vec<_> = speeds.into_iter().zip(lives).collect();
        let fit = wear::fit_lives(&lives).map_err(told)?;
        case.expect("exponent", fit.law.exponent())?;
        return case.expect("constant", fit.law.constant());
    }
    let exponent: LifeExponent = case.get("exponent")?;
    if case.has("speed_ratio") {
        // Any life and speed will do: the ratio is that of the law.
        let ratio: Slenderness = case.get("speed_ratio")?;
        let life = ToolLife::from_minutes(10.0).map_err(told)?;
        let speed = |v: f64| CuttingSpeed::from_m_per_min(v).map_err(told);
        let (from, to) = (speed(50.0)?, speed(50.0 * ratio.value())?);
        let after = wear::life_after_change(life, exponent, from, to).map_err(told)?;
        return case.expect_number("life_ratio", after.minutes() / life.minutes());
    }
    let law = LifeLaw::new(case.get("constant")?, exponent);
    if case.has("life") {
        return case.expect("cutting_speed", wear::speed_for(law, case.get("life")?));
    }
    if case.has("cutting_speed") {
        let life = wear::life_at(law, case.get("cutting_speed")?).map_err(told)?;
        return case.expect("life", life);
    }
    let change: Duration = case.get("change_time")?;
    let best = match case.maybe::<Duration>("tool_cost_over_machine_rate")? {
        // An edge at the price of so many minutes, where an hour costs sixty.
        Some(edge) => wear::cheapest_life(
            law,
            change,
            Price::from_value(edge.minutes()).map_err(told)?,
            PricePerHour::from_value(60.0).map_err(told)?,
        ),
        None => wear::fastest_life(law, change),
    }
    .map_err(told)?;
    case.expect("life", best.life)?;
    case.expect("cutting_speed", best.cutting_speed)
}
