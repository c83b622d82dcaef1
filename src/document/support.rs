//! Chuck alone or a live centre.

use serde::Serialize;

use super::bar::sections;
use crate::advice;
use crate::advice::support::{SupportAdvice, SupportAsk, SupportOption};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::physics::speed;
use crate::physics::spring_back::Edge;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::{
    CuttingSpeed, Density, DepthOfCut, PassiveForce, Slenderness, SpindleSpeed, Tolerance,
    YoungsModulus,
};
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::Lathe;
use crate::shop::material::Material;
use crate::shop::tool::Tool;

/// A bar, the force that bends it, and the zone it has to keep.
///
/// ```
/// use turnwright::{
///     advice::support::SupportAdvice, document::support::Question, physics::section::Section, Diameter,
///     PassiveForce, Tolerance, WorkLength, YoungsModulus,
/// };
/// let sections = vec![Section::cylinder(Diameter::from_mm(16.0)?, WorkLength::from_mm(160.0)?)];
/// let e = YoungsModulus::from_gpa(210.0)?;
/// let answer = Question::new(e, sections, PassiveForce::from_newton(55.0)?, Tolerance::from_mm(0.04)?).answer()?;
/// assert_eq!(answer.advice, SupportAdvice::ChuckAndCentre);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    youngs_modulus: YoungsModulus,
    sections: Vec<Section>,
    force: PassiveForce,
    tolerance: Tolerance,
    holding: Holding,
    density: Option<Density>,
    edge: Option<Edge>,
    depth_of_cut: Option<DepthOfCut>,
    spindle_speed: Option<SpindleSpeed>,
    lathe: Option<Lathe>,
    centre_hole_allowed_to_stay: Option<bool>,
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
    pub fn new(
        youngs_modulus: YoungsModulus,
        sections: Vec<Section>,
        force: PassiveForce,
        tolerance: Tolerance,
    ) -> Self {
        Self {
            youngs_modulus,
            sections,
            force,
            tolerance,
            holding: Holding::new(HoldingKind::Chuck),
            density: None,
            edge: None,
            depth_of_cut: None,
            spindle_speed: None,
            lathe: None,
            centre_hole_allowed_to_stay: None,
            provenance: Provenance::default(),
        }
    }

    /// With known stiffnesses; held between centres, only that and a steady are weighed.
    #[must_use]
    pub fn with_holding(mut self, holding: Holding) -> Self {
        self.holding = holding;
        self
    }

    crate::shop::setters! {
        /// With the density, for the critical speeds.
        with_density density: Density;
        /// With the cut, for the greatest depth of each way.
        with_edge edge: Edge;
        /// With the depth of the cut, for the greatest feed at it.
        with_depth_of_cut depth_of_cut: DepthOfCut;
        /// With the spindle speed, to weigh against whip.
        with_spindle_speed spindle_speed: SpindleSpeed;
        /// With a lathe, for its length between centres and the speed of its levers.
        with_lathe lathe: Lathe;
        /// Whether a centre hole may stay in the finished part.
        with_centre_hole_allowed_to_stay centre_hole_allowed_to_stay: bool;
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let mut provenance = Provenance::default();
        let material = f.item("material", Material::read)?;
        let youngs_modulus = super::bar::modulus(&f, material.as_ref(), &mut provenance)?;
        let tool = f.item("tool", Tool::read)?;
        let cut = f.need_item(
            "cut",
            "the cut: { depth_of_cut, feed } with a tool, or { passive_force }",
            |tree, path| {
                let (material, tool) = (material.as_ref(), tool.as_ref());
                cut(tree, path, material, tool, &mut provenance)
            },
        )?;
        let lathe = f.item("lathe", Lathe::read)?;
        let sections = sections(&f)?;
        let density = f.quantity("density")?;
        let question = Self {
            youngs_modulus,
            force: cut.force,
            tolerance: f.need_quantity("tolerance")?,
            holding: f
                .item("holding", Holding::read)?
                .unwrap_or_else(|| Holding::new(HoldingKind::Chuck)),
            density: super::bar::density_of(density, material.as_ref(), &mut provenance),
            edge: cut.edge,
            depth_of_cut: cut.depth,
            spindle_speed: match (cut.spindle_speed, cut.cutting_speed) {
                (None, Some(v)) => sections
                    .iter()
                    .map(Section::diameter)
                    .max()
                    .map(|diameter| speed::spindle_speed(v, diameter)),
                (given, _) => given,
            },
            sections,
            lathe,
            centre_hole_allowed_to_stay: f.flag("centre_hole_allowed_to_stay")?,
            provenance,
        };
        f.finish()?;
        Ok(question)
    }

    /// What is advised.
    ///
    /// # Errors
    /// `sections`, when the bar is longer than the lathe takes; `holding.steadies`, when a steady stands
    /// off it.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = self.provenance.clone();
        let mut ask = SupportAsk::new(
            self.youngs_modulus,
            &self.sections,
            &self.holding,
            self.force,
            self.tolerance,
        );
        if let Some(density) = self.density {
            ask = ask.with_density(density);
        }
        if let Some(edge) = self.edge {
            ask = ask.with_edge(edge);
        }
        if let Some(depth) = self.depth_of_cut {
            ask = ask.with_depth_of_cut(depth);
        }
        if let Some(speed) = self.spindle_speed {
            ask = ask.with_spindle_speed(speed);
        }
        if let Some(most) = self.lathe.as_ref().and_then(Lathe::between_centres) {
            ask = ask.with_between_centres(most);
        }
        if let (Some(lathe), Some(thickest)) = (
            &self.lathe,
            self.sections
                .iter()
                .map(|s| s.diameter().max(s.end_diameter()))
                .max(),
        ) {
            advice::hazard::swings(lathe, thickest).map_err(|error| error.at("sections"))?;
        }
        let choice = ask.choose(&mut provenance)?;
        let mut cautions = choice.cautions;
        if self.centre_hole_allowed_to_stay == Some(false) && choice.advice != SupportAdvice::Chuck
        {
            cautions.push(Caution::new(
                Severity::Warning,
                "centre_hole_must_go",
                "The centre hole may not stay: leave a stub for it beyond the finished length, and part or face it off last, with \
                 the centre withdrawn.",
            ));
        }
        Ok(Answer {
            advice: choice.advice,
            options: choice.options,
            length_over_diameter: choice.length_over_diameter,
            cautions,
            provenance,
        })
    }
}

/// The cut of the question, as far as it is given.
pub(super) struct Cut {
    pub(super) force: PassiveForce,
    edge: Option<Edge>,
    depth: Option<DepthOfCut>,
    spindle_speed: Option<SpindleSpeed>,
    cutting_speed: Option<CuttingSpeed>,
}

pub(super) fn cut(
    tree: &Tree,
    path: &str,
    material: Option<&Material>,
    tool: Option<&Tool>,
    provenance: &mut Provenance,
) -> Result<Cut, Error> {
    let f = Fields::of(tree, path, "a cut")?;
    let (spindle_speed, cutting_speed) =
        (f.quantity("spindle_speed")?, f.quantity("cutting_speed")?);
    if spindle_speed.is_some() && cutting_speed.is_some() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            f.path("spindle_speed"),
            "both cutting_speed and spindle_speed",
            "one of the two",
            "keep the one that is set; the other follows from the diameter",
        ));
    }
    f.later(
        "width",
        "the width of a parting tool",
        "leave it out: a parting tool pushes along its blade, not across the bar",
    )?;
    if let Some(force) = f.quantity("passive_force")? {
        f.finish()?;
        return Ok(Cut {
            force,
            edge: None,
            depth: None,
            spindle_speed,
            cutting_speed,
        });
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
    let tool_law = advice::force::tool_law(material, tool, provenance)?;
    let edge = Edge::new(
        tool_law.law,
        feed,
        tool.cutting_edge_angle(),
        tool.corner_radius(),
        tool_law.normal_ratio,
    );
    Ok(Cut {
        force: edge.passive_force(depth),
        edge: Some(edge),
        depth: Some(depth),
        spindle_speed,
        cutting_speed,
    })
}
