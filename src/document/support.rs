//! Chuck alone or a live centre.

use serde::Serialize;

use super::bar::section;
use crate::advice;
use crate::advice::support::{self, SupportAdvice, SupportOption};
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::bar::Bar;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::{PassiveForce, Slenderness, Tolerance, WorkLength};
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::material::Material;
use crate::shop::tool::Tool;

/// A bar, the force that bends it, and the zone it has to keep.
///
/// ```
/// use turnwright::{
///     document::support::Question, physics::bar::Bar, advice::support::SupportAdvice, Diameter, Overhang,
///     PassiveForce, Tolerance, YoungsModulus,
/// };
/// let bar = Bar::new(YoungsModulus::from_gpa(210.0)?, Diameter::from_mm(16.0)?, Overhang::from_mm(160.0)?);
/// let answer = Question::new(bar, PassiveForce::from_newton(55.0)?, Tolerance::from_mm(0.04)?).answer()?;
/// assert_eq!(answer.advice, SupportAdvice::ChuckAndCentre);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    bar: Bar,
    force: PassiveForce,
    tolerance: Tolerance,
    holding: Holding,
    provenance: Provenance,
}

/// What is advised, and why.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// What is advised.
    pub advice: SupportAdvice,
    /// All that was looked at.
    pub options: Vec<SupportOption>,
    /// Overhang over diameter.
    pub length_over_diameter: Slenderness,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    pub provenance: Provenance,
}

impl Question {
    /// A bar, the passive force of the last cuts, and the width of the zone.
    #[must_use]
    pub fn new(bar: Bar, force: PassiveForce, tolerance: Tolerance) -> Self {
        Self {
            bar,
            force,
            tolerance,
            holding: Holding::new(HoldingKind::Chuck),
            provenance: Provenance::default(),
        }
    }

    /// With known stiffnesses of chuck and centre.
    #[must_use]
    pub fn with_holding(mut self, holding: Holding) -> Self {
        self.holding = holding;
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let mut provenance = Provenance::default();
        let material = f.item("material", Material::read)?;
        let modulus = super::bar::modulus(&f, &mut provenance)?;
        let tool = f.item("tool", Tool::read)?;
        let force = f.need_item(
            "cut",
            "the cut: { depth_of_cut, feed } with a tool, or { passive_force }",
            |tree, path| {
                passive_force(
                    tree,
                    path,
                    material.as_ref(),
                    tool.as_ref(),
                    &mut provenance,
                )
            },
        )?;
        let question = Self {
            bar: section(&f, modulus)?,
            force,
            tolerance: f.need_quantity("tolerance")?,
            holding: f
                .item("holding", Holding::read)?
                .unwrap_or_else(|| Holding::new(HoldingKind::Chuck)),
            provenance,
        };
        f.later(
            "lathe",
            "the limits of a lathe",
            "leave it out: this version weighs the spring of the bar alone",
        )?;
        f.later(
            "centre_hole_allowed_to_stay",
            "the fate of the centre hole",
            "leave it out: whether the hole may stay is for the drawing",
        )?;
        f.finish()?;
        Ok(question)
    }

    /// What is advised.
    ///
    /// # Errors
    /// None of its own; those of the kernels cannot occur for a bar that stands out.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = self.provenance.clone();
        // The whole bar is looked at, but for the last bit before the jaws.
        let reach = WorkLength::computed_trade(self.bar.overhang().mm() * (1.0 - 1e-6));
        let choice = support::choose(
            &self.bar,
            &self.holding,
            self.force,
            reach,
            self.tolerance,
            &mut provenance,
        )?;
        Ok(Answer {
            advice: choice.advice,
            options: choice.options,
            length_over_diameter: choice.length_over_diameter,
            cautions: choice.cautions,
            provenance,
        })
    }
}

fn passive_force(
    tree: &Tree,
    path: &str,
    material: Option<&Material>,
    tool: Option<&Tool>,
    provenance: &mut Provenance,
) -> Result<PassiveForce, Error> {
    let f = Fields::of(tree, path, "a cut")?;
    for later in ["cutting_speed", "spindle_speed", "width"] {
        f.later(
            later,
            "a speed or a width in the cut",
            "leave it out: the passive force follows from depth and feed",
        )?;
    }
    if let Some(force) = f.quantity("passive_force")? {
        f.finish()?;
        return Ok(force);
    }
    let (depth, feed) = (f.need_quantity("depth_of_cut")?, f.need_quantity("feed")?);
    f.finish()?;
    let missing = |field: &str, what: &str| {
        Error::new(
            ErrorKind::MissingField,
            field,
            "nothing",
            what,
            "add it, or give the cut as { \"passive_force\": .. }",
        )
    };
    let tool = tool.ok_or_else(|| missing("tool", "the tool, for the force of the cut"))?;
    let material =
        material.ok_or_else(|| missing("material", "the material, for the force of the cut"))?;
    Ok(advice::force::forces(material, tool, depth, feed, provenance)?.passive)
}
