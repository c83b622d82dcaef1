//! Force, torque and power: Kienzle 1952 (from memory), and the definitions of power and torque.

use turnwright::physics::drive::{
    cutting_power, drive_power, largest_depth_for_power, motor_power, torque, torque_at,
};
use turnwright::physics::engagement::chip_section;
use turnwright::physics::force::{ForceLaw, cutting_forces, main_force, specific_force_at};
use turnwright::physics::speed::{cutting_speed, mean_diameter};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    match case.topic() {
        "force" if case.has("against") => edge_angles(case),
        "force" => kienzle(case),
        "force-components" => components(case),
        _ if case.has("rated_power") => drive(case),
        _ if case.asks("depth_of_cut") => deepest(case),
        _ => power(case),
    }
}

fn law(case: &Case) -> Result<ForceLaw, String> {
    Ok(ForceLaw::new(
        case.get("specific_force")?,
        case.get("exponent")?,
    ))
}

fn parse<Q: Quantity>(text: &str) -> Result<Q, String> {
    text.parse::<Q>().map_err(|e| e.to_string())
}

fn kienzle(case: &Case) -> Result<(), String> {
    let law = law(case)?;
    let (a_p, f) = (case.get("depth_of_cut")?, case.get("feed")?);
    let kappa = case.get("cutting_edge_angle")?;
    let chip = chip_section(a_p, f, kappa);
    case.expect("chip_thickness", chip.thickness)?;
    case.expect("chip_width", chip.width)?;
    case.expect(
        "specific_force_at_h",
        specific_force_at(law, chip.thickness),
    )?;
    case.expect("main_force", main_force(law, chip))?;
    let sharp = case.get("corner_radius")?;
    let forces = cutting_forces(law, a_p, f, kappa, sharp, parse("0.5")?);
    case.expect("main_force", forces.main)
}

/// The same depth and feed at two cutting edge angles.
fn edge_angles(case: &Case) -> Result<(), String> {
    let law = ForceLaw::new(parse("2000 MPa")?, case.get("exponent")?);
    let force = |angle| -> Result<f64, String> {
        let chip = chip_section(parse("2 mm")?, parse("0.2 mm/rev")?, case.get(angle)?);
        Ok(main_force(law, chip).newton())
    };
    case.expect_number("ratio", force("cutting_edge_angle")? / force("against")?)
}

/// A main force is given: 1 mm2 of chip and that many MPa without an exponent make it.
fn components(case: &Case) -> Result<(), String> {
    let f_c: MainForce = case.get("main_force")?;
    let k_c = SpecificCuttingForce::from_mpa(f_c.newton()).map_err(|e| e.to_string())?;
    let forces = cutting_forces(
        ForceLaw::new(k_c, parse("0")?),
        parse("1 mm")?,
        parse("1 mm/rev")?,
        case.get("cutting_edge_angle")?,
        case.get("corner_radius")?,
        case.get("normal_ratio")?,
    );
    case.expect("feed_force", forces.feed)?;
    case.expect("passive_force", forces.passive)
}

fn power(case: &Case) -> Result<(), String> {
    let f_c = case.get("main_force")?;
    if case.has("cutting_speed") {
        return case.expect("power", cutting_power(f_c, case.get("cutting_speed")?));
    }
    let d: Diameter = case.get("diameter")?;
    // No depth: the diameter given is the mean one.
    let d_m = match case.converted::<DepthOfCut>("depth_of_cut")? {
        0.0 => d,
        _ => mean_diameter(d, case.get("depth_of_cut")?).map_err(|e| e.to_string())?,
    };
    case.expect("torque", torque(f_c, d_m))?;
    if let Some(n) = case.maybe("spindle_speed")? {
        let p = cutting_power(f_c, cutting_speed(n, d_m));
        case.expect("power", p)?;
        case.expect("torque", torque_at(p, n))?;
        case.expect("motor_power", motor_power(p, case.get("efficiency")?))?;
    }
    Ok(())
}

fn drive(case: &Case) -> Result<(), String> {
    let n = case.get("spindle_speed")?;
    let p = drive_power(case.get("rated_power")?, case.get("base_speed")?, n);
    case.expect("power", p)?;
    case.expect("torque", torque_at(p, n))
}

fn deepest(case: &Case) -> Result<(), String> {
    let a_p = largest_depth_for_power(
        law(case)?,
        case.get("feed")?,
        case.get("cutting_edge_angle")?,
        case.get("cutting_speed")?,
        case.get("power")?,
    );
    case.expect("depth_of_cut", a_p)
}
