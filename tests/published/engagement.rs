//! Light cuts, in which the corner arc cuts alone, and the engaged edge: derived; the thickest chip
//! in the form of Blake and Scattergood 1990, the chord after Colwell 1954 (both from memory).

use turnwright::physics::edge_in_cut::engaged_edge;
use turnwright::physics::engagement::{
    chip_section, largest_edge_angle, least_depth, thickest_chip,
};
use turnwright::physics::force::{ForceLaw, cutting_forces, effective_edge_angle};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("main_force") {
        forces(case)
    } else if case.asks("largest_chip_thickness") {
        thickest(case)
    } else if case.asks("least_depth") {
        let a_p = least_depth(
            case.get("least_chip_thickness")?,
            case.get("feed")?,
            case.get("corner_radius")?,
        );
        case.expect("least_depth", a_p.map_err(|e| e.to_string())?)
    } else if case.asks("edge_length") {
        engaged(case)
    } else if case.asks("arc_end") {
        direction(case)
    } else {
        lightest(case)
    }
}

fn parse<Q: Quantity>(text: &str) -> Result<Q, String> {
    text.parse::<Q>().map_err(|e| e.to_string())
}

fn forces(case: &Case) -> Result<(), String> {
    let forces = cutting_forces(
        ForceLaw::new(case.get("specific_force")?, case.get("exponent")?),
        case.get("depth_of_cut")?,
        case.get("feed")?,
        case.get("cutting_edge_angle")?,
        case.get("corner_radius")?,
        case.get("normal_ratio")?,
    );
    case.expect("main_force", forces.main)?;
    case.expect("feed_force", forces.feed)?;
    case.expect("passive_force", forces.passive)?;
    case.expect("effective_angle", effective_edge_angle(&forces))
}

fn engaged(case: &Case) -> Result<(), String> {
    let edge = engaged_edge(
        case.get("depth_of_cut")?,
        case.get("feed")?,
        case.get("cutting_edge_angle")?,
        case.get("minor_cutting_edge_angle")?,
        case.get("corner_radius")?,
    );
    let edge = edge.map_err(|e| e.to_string())?;
    // The local edge angle is below zero on the side of the minor edge.
    case.expect_trade::<MinorCuttingEdgeAngle>("arc_start", -edge.arc_start.degrees())?;
    case.expect("arc_end", edge.arc_end)?;
    case.expect("edge_length", edge.edge_length)?;
    case.expect("chip_area", edge.chip_area)?;
    case.expect("ridge_area", edge.ridge_area)?;
    case.expect("equivalent_chip_thickness", edge.equivalent_chip_thickness)?;
    case.expect("chord_angle", edge.chord_angle)
}

fn thickest(case: &Case) -> Result<(), String> {
    let (a_p, f) = (case.get("depth_of_cut")?, case.get("feed")?);
    let r = case.get("corner_radius")?;
    let h = thickest_chip(a_p, f, r).map_err(|e| e.to_string())?;
    case.expect("largest_chip_thickness", h)?;
    // f sin theta_2: what a straight edge at the angle of the arc's end would take.
    let theta_2 = largest_edge_angle(a_p, parse("90 deg")?, r);
    case.expect("approximation", chip_section(a_p, f, theta_2).thickness)
}

/// The direction does not depend on the force, the feed and the normal ratio.
fn direction(case: &Case) -> Result<(), String> {
    let (a_p, r) = (case.get("depth_of_cut")?, case.get("corner_radius")?);
    let kappa = case.get("cutting_edge_angle")?;
    case.expect("arc_end", largest_edge_angle(a_p, kappa, r))?;
    let law = ForceLaw::new(parse("2000 MPa")?, case.get("exponent")?);
    let forces = cutting_forces(law, a_p, parse("0.1 mm/rev")?, kappa, r, parse("0.5")?);
    case.expect("effective_angle", effective_edge_angle(&forces))
}

/// The limit of a cut that gets lighter and lighter: the ratio falls short of it in proportion to
/// the depth, so that two depths tell the limit.
fn lightest(case: &Case) -> Result<(), String> {
    let law = ForceLaw::new(parse("2000 MPa")?, case.get("exponent")?);
    let ratio = |depth: &str| -> Result<f64, String> {
        let (a_p, r) = (parse(depth)?, parse("50 mm")?);
        let kappa = parse("90 deg")?;
        let forces = cutting_forces(law, a_p, parse("0.1 mm/rev")?, kappa, r, parse("0.5")?);
        let theta_2 = largest_edge_angle(a_p, kappa, r);
        Ok(effective_edge_angle(&forces).degrees() / theta_2.degrees())
    };
    let limit = 2.0 * ratio("0.001 mm")? - ratio("0.002 mm")?;
    case.expect_number("ratio_angle_to_arc_end", limit)
}
