//! Speeds, feeds and times: definitions of ISO 3002 (from memory).

use turnwright::physics::speed::{
    cutting_speed, feed_rate, handwheel_rate, removal_rate, spindle_speed, time_of_cut,
};
use turnwright::physics::speed_series;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("ratio_exponent") {
        series(case)
    } else if case.asks("spindle_speed") {
        let n = spindle_speed(case.get("cutting_speed")?, case.get("diameter")?);
        case.expect("spindle_speed", n)
    } else if case.asks("cutting_speed") {
        let v_c = cutting_speed(case.get("spindle_speed")?, case.get("diameter")?);
        case.expect("cutting_speed", v_c)
    } else if case.asks("time") {
        let mut length = case.get::<WorkLength>("length")?.mm();
        for more in ["run_in", "run_out"] {
            length += case.get::<Travel>(more)?.mm();
        }
        let length = WorkLength::from_mm(length).map_err(|e| e.to_string())?;
        let t = time_of_cut(length, case.get("feed")?, case.get("spindle_speed")?);
        case.expect("time", t)
    } else if case.asks("feed_rate") {
        let v_f = feed_rate(case.get("feed")?, case.get("spindle_speed")?);
        case.expect("feed_rate", v_f)
    } else if case.asks("handwheel") {
        let rate = handwheel_rate(case.get("feed")?, case.get("spindle_speed")?, travel(case)?);
        case.expect("handwheel", rate.map_err(|e| e.to_string())?)
    } else {
        removal(case)
    }
}

/// What the slide travels in a turn of its wheel.
fn travel(case: &Case) -> Result<Travel, String> {
    if case.has("travel_per_turn") {
        let text = case.word("travel_per_turn")?.trim_end_matches("/turn");
        return text.parse().map_err(|e: Error| e.to_string());
    }
    let dial: Travel = case.get("dial_per_turn")?;
    let over = match case.word("dial_reads")? {
        "diameter" => 2.0,
        _ => 1.0,
    };
    Travel::from_mm(dial.mm() / over).map_err(|e| e.to_string())
}

fn removal(case: &Case) -> Result<(), String> {
    let (d, a_p): (Diameter, DepthOfCut) = (case.get("diameter")?, case.get("depth_of_cut")?);
    let (f, n): (Feed, SpindleSpeed) = (case.get("feed")?, case.get("spindle_speed")?);
    let exact = removal_rate(d, a_p, f, n).map_err(|e| e.to_string())?;
    case.expect("removal_rate", exact)?;
    // The trade's short form a_p f v_c, and by how much it overstates.
    let short = a_p.length() * f.length_per_revolution() * cutting_speed(n, d).velocity();
    let short = RemovalRate::from_volume_rate(short).map_err(|e| e.to_string())?;
    case.expect("short_form", short)?;
    case.expect_number("ratio", short.cm3_per_min() / exact.cm3_per_min())
}

/// A gearbox of exact steps: every third value of R20 where the exponent is 0.15.
fn series(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    let exponent: LifeExponent = case.get("ratio_exponent")?;
    let step = (20.0 * exponent.value()).round() as u8;
    let count = u8::try_from(case.count("steps")?).map_err(|e| e.to_string())?;
    let all = speed_series::speeds(case.get("first")?, step, count).map_err(told)?;
    case.expect("last", *all.last().ok_or("no speeds")?)?;
    let ratio = speed_series::step_ratio(step).map_err(told)?;
    case.expect_number("ratio", ratio)?;
    case.expect_number("largest_speed_loss", 1.0 - 1.0 / ratio)
}
