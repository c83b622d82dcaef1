//! Which spindle step.

use serde::Serialize;

use crate::advice;
use crate::advice::hazard;
use crate::advice::spindle::{GovernedBy, Neighbour, SpindleAsk};
use crate::advice::support::{self, WHIP_SHARE};
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::physics::speed;
use crate::physics::stepped::HeldBar;
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::{
    CriticalSpeed, CuttingSpeed, Density, DepthOfCut, Diameter, Feed, Overhang, SpindleSpeed,
    WorkLength, YoungsModulus,
};
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::{EFFICIENCY, Lathe};
use crate::shop::material::Material;
use crate::shop::tool::Tool;

/// A diameter, a lathe, and a cutting speed or what it follows from.
///
/// ```
/// use turnwright::{document::spindle_speed::Question, CuttingSpeed, Diameter, Lathe, SpindleSpeed};
/// let steps = [60.0, 105.0, 190.0, 330.0, 580.0, 1000.0].map(SpindleSpeed::from_rpm);
/// let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?;
/// let answer = Question::new(Diameter::from_inch(0.875)?, lathe)
///     .with_cutting_speed(CuttingSpeed::from_ft_per_min(80.0)?)
///     .answer()?;
/// assert_eq!(answer.spindle_speed.rpm(), 330.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    diameter: Diameter,
    lathe: Lathe,
    cutting_speed: Option<CuttingSpeed>,
    holding: Option<Holding>,
    depth_of_cut: Option<DepthOfCut>,
    feed: Option<Feed>,
    tool: Option<Tool>,
    material: Option<Material>,
    overhang: Option<Overhang>,
    youngs_modulus: Option<YoungsModulus>,
    density: Option<Density>,
}

/// The spindle speed chosen.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// What the cutting speed alone would ask for.
    pub ideal: SpindleSpeed,
    /// What to set.
    pub spindle_speed: SpindleSpeed,
    /// What the levers say for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lever: Option<String>,
    /// The range of a continuous drive to set it in.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub range: Option<String>,
    /// The cutting speed it gives.
    pub cutting_speed: CuttingSpeed,
    /// What kept it from being faster.
    pub governed_by: GovernedBy,
    /// The next step below.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub neighbour_below: Option<Neighbour>,
    /// The next step above.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub neighbour_above: Option<Neighbour>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A diameter before the cut, and a lathe; the cutting speed has to be added.
    #[must_use]
    pub fn new(diameter: Diameter, lathe: Lathe) -> Self {
        Self {
            diameter,
            lathe,
            cutting_speed: None,
            holding: None,
            depth_of_cut: None,
            feed: None,
            tool: None,
            material: None,
            overhang: None,
            youngs_modulus: None,
            density: None,
        }
    }

    crate::shop::setters! {
        /// With this cutting speed.
        with_cutting_speed cutting_speed: CuttingSpeed;
        /// With this way of holding, whose centre may have a highest speed.
        with_holding holding: Holding;
        /// With a depth of cut, for power and torque; feed, tool and material go with it.
        with_depth_of_cut depth_of_cut: DepthOfCut;
        /// With a feed, for power and torque.
        with_feed feed: Feed;
        /// With a tool, for the cutting speed of its material and for the force.
        with_tool tool: Tool;
        /// With a material, for its cutting speed and its force.
        with_material material: Material;
        /// With how far the bar stands out, for its whip; modulus and density go with it, or a material.
        with_overhang overhang: Overhang;
        /// With Young's modulus, for the whip.
        with_youngs_modulus youngs_modulus: YoungsModulus;
        /// With the density, for the whip.
        with_density density: Density;
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            diameter: f.need_quantity("diameter")?,
            lathe: f.need_item(
                "lathe",
                "the lathe: at least spindle_steps or spindle_range",
                Lathe::read,
            )?,
            cutting_speed: f.quantity("cutting_speed")?,
            holding: f.item("holding", Holding::read)?,
            depth_of_cut: f.quantity("depth_of_cut")?,
            feed: f.quantity("feed")?,
            tool: f.item("tool", Tool::read)?,
            material: f.item("material", Material::read)?,
            overhang: f.quantity("overhang")?,
            youngs_modulus: f.quantity("youngs_modulus")?,
            density: f.quantity("density")?,
        };
        f.finish()?;
        Ok(question)
    }

    /// The spindle speed.
    ///
    /// # Errors
    /// When no step of the lathe can do it, or the cutting speed is not known.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = Provenance::default();
        let band = self
            .tool
            .as_ref()
            .and_then(Tool::material)
            .and_then(|tool| {
                self.material
                    .as_ref()
                    .and_then(|material| material.speed_band(tool))
            });
        let (wanted, fastest) = match (self.cutting_speed, band) {
            (Some(given), band) => (given, band.map(|band| band.value.high().max(given))),
            (None, Some(band)) => {
                let band = band.open("band of cutting speeds", &mut provenance);
                (band.middle(), Some(band.high()))
            }
            (None, None) => {
                return Err(Error::new(
                    ErrorKind::MissingField,
                    "cutting_speed",
                    "nothing",
                    "a cutting speed, or a material and a tool whose material is named",
                    "add \"cutting_speed\", or \"material\" and \"tool\" with its \"material\"",
                ));
            }
        };
        hazard::swings(&self.lathe, self.diameter)?;
        let mut ask = SpindleAsk::new(&self.lathe, self.diameter, wanted);
        if let Some(fastest) = fastest {
            ask = ask.with_fastest(fastest);
        }
        if let Some(holding) = &self.holding {
            ask = ask.with_holding(holding);
        }
        if let Some((force, mean)) = self.cut(&mut provenance)? {
            ask = ask.with_cut(force, mean);
        }
        if let Some(safe) = self.whip(&mut provenance)? {
            ask = ask.with_whip(safe);
        }
        let choice = ask.choose()?;
        Ok(Answer {
            ideal: choice.ideal,
            spindle_speed: choice.spindle_speed,
            lever: choice.lever,
            range: choice.range,
            cutting_speed: choice.cutting_speed,
            governed_by: choice.governed_by,
            neighbour_below: choice.neighbour_below,
            neighbour_above: choice.neighbour_above,
            cautions: choice.cautions,
            provenance,
        })
    }

    /// Up to where the bar is safe from whip, where its overhang is given.
    fn whip(&self, provenance: &mut Provenance) -> Result<Option<CriticalSpeed>, Error> {
        let Some(overhang) = self.overhang else {
            return match (self.youngs_modulus, self.density) {
                (None, None) => Ok(None),
                _ => Err(Error::new(
                    ErrorKind::MissingField,
                    "overhang",
                    "nothing, beside a modulus or a density",
                    "how far the bar stands out of the jaws, for its whip",
                    "add \"overhang\", or leave modulus and density out",
                )),
            };
        };
        let missing = |field: &str, what: &str| {
            Error::new(
                ErrorKind::MissingField,
                field,
                "nothing, beside an overhang",
                what,
                format!("for the whip add \"{field}\", or a material that has it"),
            )
        };
        let material = self.material.as_ref();
        let modulus = self
            .youngs_modulus
            .or_else(|| {
                material
                    .and_then(Material::youngs_modulus)
                    .map(|e| e.open("Young's modulus", provenance))
            })
            .ok_or_else(|| missing("youngs_modulus", "Young's modulus"))?;
        let density = super::bar::density_of(self.density, material, provenance)
            .ok_or_else(|| missing("density", "the density"))?;
        let holding = self
            .holding
            .clone()
            .unwrap_or_else(|| Holding::new(HoldingKind::Chuck));
        let section = Section::cylinder(self.diameter, WorkLength::computed_trade(overhang.mm()));
        let bar = HeldBar::new(
            modulus,
            &[section],
            support::support_of(holding.kind()),
            &support::springs(&holding, provenance),
            holding.steadies(),
        )
        .map_err(|error| error.inside("holding"))?;
        let share = provenance.open("share of the critical speed", &WHIP_SHARE);
        let critical = bar.first_critical_speed(density)?;
        Ok(Some(support::safe_from_whip(critical, share)))
    }

    /// The main force of the cut and its mean diameter, where a cut is given: all of it, or nothing.
    fn cut(
        &self,
        provenance: &mut Provenance,
    ) -> Result<Option<(crate::quantity::MainForce, Diameter)>, Error> {
        let missing = |field: &str, what: &str| {
            Error::new(
                ErrorKind::MissingField,
                field,
                "nothing, beside another part of a cut",
                what,
                "for power and torque give depth_of_cut, feed, tool, material and the power of the lathe; else none of the cut",
            )
        };
        let (depth, feed) = match (self.depth_of_cut, self.feed) {
            (None, None) => return Ok(None),
            (Some(depth), Some(feed)) => (depth, feed),
            (None, Some(_)) => return Err(missing("depth_of_cut", "the depth of cut")),
            (Some(_), None) => return Err(missing("feed", "the feed")),
        };
        let tool = self
            .tool
            .as_ref()
            .ok_or_else(|| missing("tool", "the tool"))?;
        let material = self
            .material
            .as_ref()
            .ok_or_else(|| missing("material", "the material"))?;
        if self.lathe.power().is_none() {
            return Err(missing("lathe.power", "the power of the motor"));
        }
        if self.lathe.efficiency().is_none() {
            provenance.open("efficiency of the drive", &EFFICIENCY);
        }
        let forces = advice::force::forces(material, tool, depth, feed, provenance)?;
        Ok(Some((
            forces.main,
            speed::mean_diameter(self.diameter, depth)?,
        )))
    }
}
