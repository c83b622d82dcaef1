//! What a springing bar leaves standing: derived; one case by root finding at 50 digits.

use turnwright::physics::force::ForceLaw;
use turnwright::physics::spring_back::{
    Edge, diameter_error_with_sag, left_after_equal_infeeds, left_after_passes, left_in_the_end,
    light_after_heavy, spring_share, true_depth,
};
use turnwright::*;

use crate::bar::{held, said, tailstock};
use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("larger_at_tail") {
        return tailstock(case);
    }
    if case.has("tangential_deflection") {
        let error = diameter_error_with_sag(
            case.get("diameter")?,
            case.get("passive_deflection")?,
            case.get("tangential_deflection")?,
        );
        return case.expect("diameter_error", error);
    }
    if case.has("specific_force") {
        return light_cut(case);
    }
    let set: DepthOfCut = case.get("set_depth")?;
    let share = said(spring_share(set, at_full_depth(case, set)?))?;
    if case.has("previous_set_depth") {
        let heavy: DepthOfCut = case.get("previous_set_depth")?;
        let before = left_after_passes(heavy, share, 1);
        case.expect("left_before", before)?;
        return case.expect("true_depth", light_after_heavy(before, set, share));
    }
    let passes = case.whole("passes")?;
    if case.asks("limit") {
        let left: Vec<Deflection> = [1, 2, 3, passes]
            .into_iter()
            .map(|j| said(left_after_equal_infeeds(set, share, j)))
            .collect::<Result<_, _>>()?;
        case.expect_list("left_after", &left)?;
        return case.expect("limit", said(left_in_the_end(set, share))?);
    }
    let left: Vec<Deflection> = (1..=passes)
        .map(|j| left_after_passes(set, share, j))
        .collect();
    case.expect_number("ratio", share.value())?;
    case.expect_list("left_after", &left)?;
    let first = DepthOfCut::from_mm(set.mm() - left[0].mm());
    case.expect("true_depth_of_first", said(first)?)
}

/// The deflection under the whole set depth: k_cut a/k_sys.
fn at_full_depth(case: &Case, set: DepthOfCut) -> Result<Deflection, String> {
    let cut: Stiffness = case.get("cutting_stiffness")?;
    let system: Stiffness = case.get("system_stiffness")?;
    said(Deflection::from_mm(
        set.mm() * cut.kn_per_mm() / system.kn_per_mm(),
    ))
}

fn light_cut(case: &Case) -> Result<(), String> {
    let edge = Edge::new(
        ForceLaw::new(case.get("specific_force")?, case.get("exponent")?),
        case.get("feed")?,
        case.get("cutting_edge_angle")?,
        case.get("corner_radius")?,
        case.get("normal_ratio")?,
    );
    let bent =
        said(held(case)?.deflection(said(PassiveForce::from_newton(1000.0))?, case.get("at")?))?;
    let stiffness = said(Stiffness::from_kn_per_mm(1.0 / bent.mm()))?;
    let first = said(true_depth(&edge, case.get("set_depth")?, stiffness))?;
    case.expect("true_depth", first.true_depth)?;
    case.expect("left_after_first", first.left)?;
    let again = said(DepthOfCut::from_mm(first.left.mm()))?;
    let second = said(true_depth(&edge, again, stiffness))?;
    case.expect("left_after_spring_pass", second.left)?;
    case.expect("diameter_error", first.left.diameter_error())
}
