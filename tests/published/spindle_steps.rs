//! The spindle speed of a gearbox or a drive: the highest that nothing forbids (derived).

use turnwright::advice::spindle::SpindleAsk;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let lathe = lathe(case)?;
    let choice = SpindleAsk::new(&lathe, case.get("diameter")?, case.get("cutting_speed")?)
        .choose()
        .map_err(|e| e.to_string())?;
    case.expect("ideal", choice.ideal)?;
    case.expect("spindle_speed", choice.spindle_speed)?;
    case.expect("cutting_speed", choice.cutting_speed)?;
    let governed_by = choice.governed_by.to_string();
    case.expect_word("governed_by", governed_by.trim_start_matches("the "))?;
    if case.asks("next_step_cutting_speed") {
        let next = choice.neighbour_above.ok_or("no step above")?;
        case.expect("next_step_cutting_speed", next.cutting_speed)?;
    }
    Ok(())
}

/// A gearbox of the steps given; else a drive that runs at any speed, under the limit of its chuck.
fn lathe(case: &Case) -> Result<Lathe, String> {
    if case.has("steps") {
        return Lathe::with_steps(case.get_list("steps")?).map_err(|e| e.to_string());
    }
    let speed = |rpm| SpindleSpeed::from_rpm(rpm).map_err(|e| e.to_string());
    let range = SpeedRange::new("", speed(20.0)?, speed(6000.0)?).map_err(|e| e.to_string())?;
    let lathe = Lathe::with_ranges(vec![range]).map_err(|e| e.to_string())?;
    Ok(lathe.with_chuck_max_speed(case.get("chuck_speed_limit")?))
}
