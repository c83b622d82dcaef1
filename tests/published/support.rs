//! The rule of thumb for support, by overhang over diameter: common practice, no source.

use turnwright::advice::support::{SupportAdvice, SupportAsk};
use turnwright::physics::section::Section;
use turnwright::*;

use crate::case::Case;

/// A force so small that the figures are content with the chuck: what is said beyond that is the
/// rule of thumb.
pub fn answer(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    let ratio: Slenderness = case.get("overhang_over_diameter")?;
    let bar = [Section::cylinder(
        Diameter::from_mm(20.0).map_err(told)?,
        WorkLength::from_mm(20.0 * ratio.value()).map_err(told)?,
    )];
    let choice = SupportAsk::new(
        YoungsModulus::from_gpa(210.0).map_err(told)?,
        &bar,
        &Holding::new(HoldingKind::Chuck),
        PassiveForce::from_newton(1.0).map_err(told)?,
        Tolerance::from_mm(1.0).map_err(told)?,
    )
    .with_reach(WorkLength::from_mm(10.0).map_err(told)?)
    .choose(&mut Provenance::default())
    .map_err(told)?;
    if choice.advice != SupportAdvice::Chuck {
        return Err(format!("the figures already ask for {:?}", choice.advice));
    }
    let says = |code: &str| choice.cautions.iter().any(|caution| caution.code() == code);
    let centre = says("rule_of_thumb_asks_for_a_centre");
    let steady = says("rule_of_thumb_asks_for_a_steady");
    let advice = match (centre, steady) {
        (false, false) => "chuck",
        (true, false) => "chuck and centre",
        (true, true) => "chuck, centre and steady",
        (false, true) => "a steady without a centre",
    };
    case.expect_word("advice", advice)
}
