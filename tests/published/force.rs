//! Force, torque and power: Kienzle 1952 (from memory), factors of the force and three measured
//! components (from memory of text books), and the definitions of power and torque.

use turnwright::physics::drive::{
    cutting_power, drive_power, largest_depth_for_power, motor_power, torque, torque_at,
};
use turnwright::physics::engagement::chip_section;
use turnwright::physics::force::{ForceLaw, cutting_forces, main_force, specific_force_at};
use turnwright::physics::force_factors::{carbide_speed_factor, rake_factor};
use turnwright::physics::measured_force::{
    force_of_power, law_of_cut, law_through, power_above_idle, power_of_removal,
    specific_force_of_chip,
};
use turnwright::physics::parting::parting_force;
use turnwright::physics::speed::{cutting_speed, mean_diameter};
use turnwright::physics::three_forces::{ThreeLaws, measured_forces};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    match case.topic() {
        "force" if case.has("against") => edge_angles(case),
        "force" if case.has("rake") => rake(case),
        "force" if case.asks("factor") => speed_factor(case),
        "force" if case.has("main") => three(case),
        "force" if case.has("idle_power") => from_power(case),
        "force" if case.has("width") => parting(case),
        "force" => kienzle(case),
        "force-components" => components(case),
        _ if case.has("unit_power") => unit_power(case),
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

fn rake(case: &Case) -> Result<(), String> {
    let factor = rake_factor(case.get("rake")?, case.get("reference_rake")?);
    case.expect_number("factor", factor.map_err(|e| e.to_string())?.value())
}

fn speed_factor(case: &Case) -> Result<(), String> {
    let factor = carbide_speed_factor(case.get("cutting_speed")?);
    case.expect_number("factor", factor.map_err(|e| e.to_string())?.value())
}

/// A set is k_1.1 and 1 - m.
fn three(case: &Case) -> Result<(), String> {
    let set = |field: &str| -> Result<ForceLaw, String> {
        let [k, p] = case.words(field)?[..] else {
            return Err(format!("{field} is not a pair"));
        };
        let p: f64 = p.parse().map_err(|_| format!("{field}: no number"))?;
        let m = ForceExponent::from_value(1.0 - p).map_err(|e| e.to_string())?;
        Ok(ForceLaw::new(parse(k)?, m))
    };
    let laws = ThreeLaws::new(set("main")?, set("feed_set")?, set("passive_set")?);
    let chip = chip_section(
        case.get("depth_of_cut")?,
        case.get("feed")?,
        case.get("cutting_edge_angle")?,
    );
    let forces = measured_forces(laws, chip);
    case.expect("main_force", forces.main)?;
    case.expect("feed_force", forces.feed)?;
    case.expect("passive_force", forces.passive)
}

fn from_power(case: &Case) -> Result<(), String> {
    let power = power_above_idle(
        case.get("power")?,
        case.get("idle_power")?,
        case.get("efficiency")?,
    );
    let main = force_of_power(
        power.map_err(|e| e.to_string())?,
        case.get("mean_cutting_speed")?,
    );
    let (a_p, f) = (case.get("depth_of_cut")?, case.get("feed")?);
    let (kappa, m) = (case.get("cutting_edge_angle")?, case.get("exponent")?);
    let chip = chip_section(a_p, f, kappa);
    let k_c = specific_force_of_chip(main, chip);
    case.expect("specific_force_at_h", k_c)?;
    let through = law_through(k_c, chip.thickness, m);
    case.expect("specific_force", through.specific_force)?;
    let of_cut = law_of_cut(main, m, a_p, f, kappa, parse("0 mm")?);
    case.expect("specific_force", of_cut.specific_force)
}

fn parting(case: &Case) -> Result<(), String> {
    let f_c = parting_force(
        law(case)?,
        case.get("width")?,
        case.get("feed")?,
        parse("1")?,
    );
    case.expect("main_force", f_c)
}

fn unit_power(case: &Case) -> Result<(), String> {
    let k_c: SpecificForceAtChip = case.get("unit_power")?;
    case.expect("specific_force", k_c)?;
    case.expect("power", power_of_removal(k_c, case.get("removal_rate")?))
}
