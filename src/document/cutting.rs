//! Forces, power and torque of a cut.

use serde::Serialize;

use crate::advice;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::{drive, engagement, speed};
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::{
    ChipThickness, ChipWidth, CuttingSpeed, DepthOfCut, Diameter, Feed, FeedForce, MainForce,
    PassiveForce, Power, RemovalRate, SpindleSpeed, Torque,
};
use crate::shop::lathe::{EFFICIENCY, Lathe};
use crate::shop::material::Material;
use crate::shop::tool::Tool;

/// How fast the cut runs: one of the two.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Pace {
    /// The speed of the edge over the work before the cut.
    CuttingSpeed(CuttingSpeed),
    /// The speed of the spindle.
    SpindleSpeed(SpindleSpeed),
}

/// A cut along a bar.
///
/// ```
/// use turnwright::document::cutting::{Pace, Question};
/// use turnwright::{CornerRadius, CuttingEdgeAngle, DepthOfCut, Diameter, Feed, Material, SpindleSpeed, Tool};
/// let answer = Question::new(
///     Material::named("c45")?,
///     Tool::new(CornerRadius::from_mm(0.8)?, CuttingEdgeAngle::from_degrees(95.0)?),
///     Diameter::from_mm(50.0)?,
///     DepthOfCut::from_mm(0.2)?,
///     Feed::from_mm_per_rev(0.1)?,
///     Pace::SpindleSpeed(SpindleSpeed::from_rpm(500.0)?),
/// )
/// .answer()?;
/// assert_eq!(answer.main_force.newton().round(), 69.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    material: Material,
    tool: Tool,
    diameter: Diameter,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    pace: Pace,
    lathe: Option<Lathe>,
}

/// What the cut asks for.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Along the cutting speed.
    pub main_force: MainForce,
    /// Against the feed.
    pub feed_force: FeedForce,
    /// Across the feed: it bends the bar.
    pub passive_force: PassiveForce,
    /// At the spindle.
    pub power: Power,
    /// At the spindle.
    pub torque: Torque,
    /// Nominal thickness of cut at the straight edge.
    pub chip_thickness: ChipThickness,
    /// Nominal width of cut at the straight edge.
    pub chip_width: ChipWidth,
    /// Metal removed per time.
    pub removal_rate: RemovalRate,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    pub provenance: Provenance,
}

/// The fits of the specific force begin here, in mm.
///
/// Source: from memory of Koenig and Essel 1973, unverified page.
const THINNEST_OF_THE_FITS: f64 = 0.05;

impl Question {
    /// A cut; the diameter is the one before it.
    #[must_use]
    pub fn new(
        material: Material,
        tool: Tool,
        diameter: Diameter,
        depth_of_cut: DepthOfCut,
        feed: Feed,
        pace: Pace,
    ) -> Self {
        Self {
            material,
            tool,
            diameter,
            depth_of_cut,
            feed,
            pace,
            lathe: None,
        }
    }

    /// With a lathe, whose power is compared.
    #[must_use]
    pub fn with_lathe(mut self, lathe: Lathe) -> Self {
        self.lathe = Some(lathe);
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let pace = match (f.quantity("cutting_speed")?, f.quantity("spindle_speed")?) {
            (Some(v), None) => Pace::CuttingSpeed(v),
            (None, Some(n)) => Pace::SpindleSpeed(n),
            (None, None) => {
                return Err(f.missing("cutting_speed", "a speed: cutting_speed or spindle_speed"));
            }
            (Some(_), Some(_)) => {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path("spindle_speed"),
                    "both cutting_speed and spindle_speed",
                    "one of the two",
                    "keep the one that is set; the other follows from the diameter",
                ));
            }
        };
        if f.text("operation")?
            .is_some_and(|operation| operation != "turning")
        {
            return Err(Error::not_offered(
                "operation",
                "an operation other than \"turning\"",
                "leave the field out or write \"turning\"",
            ));
        }
        f.later(
            "width",
            "the width of a parting tool",
            "leave it out: this version reckons turning",
        )?;
        let question = Self {
            material: f.need_item(
                "material",
                "a material: its key, a designation, or an object",
                Material::read,
            )?,
            tool: f.need_item(
                "tool",
                "the tool: corner_radius and cutting_edge_angle",
                Tool::read,
            )?,
            diameter: f.need_quantity("diameter")?,
            depth_of_cut: f.need_quantity("depth_of_cut")?,
            feed: f.need_quantity("feed")?,
            pace,
            lathe: f.item("lathe", Lathe::read)?,
        };
        f.finish()?;
        Ok(question)
    }

    /// Forces, power, torque.
    ///
    /// # Errors
    /// When the cut goes to the middle of the bar.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (mut provenance, mut cautions) = (Provenance::default(), Vec::new());
        let forces = advice::force::forces(
            &self.material,
            &self.tool,
            self.depth_of_cut,
            self.feed,
            &mut provenance,
        )?;
        let mean = speed::mean_diameter(self.diameter, self.depth_of_cut)?;
        let spindle_speed = match self.pace {
            Pace::SpindleSpeed(n) => n,
            Pace::CuttingSpeed(v) => speed::spindle_speed(v, self.diameter),
        };
        let power = drive::cutting_power(forces.main, speed::cutting_speed(spindle_speed, mean));
        let chip =
            engagement::chip_section(self.depth_of_cut, self.feed, self.tool.cutting_edge_angle());
        if chip.thickness.mm() < THINNEST_OF_THE_FITS {
            cautions.push(Caution::new(
                Severity::Note,
                "thin_chip",
                format!("A chip of {} lies below the fits of the specific force: the true force is larger.", chip.thickness),
            ));
        }
        if self.depth_of_cut.mm() <= self.tool.corner_radius().mm() {
            cautions.push(Caution::new(
                Severity::Note,
                "corner_only",
                "Only the corner cuts: most of the normal force pushes the bar away.",
            ));
        }
        self.drive(
            power,
            drive::torque(forces.main, mean),
            spindle_speed,
            &mut provenance,
            &mut cautions,
        );
        cautions.push(Caution::new(
            Severity::Note,
            "forces_scatter",
            "Good to about 30 %: bars of one name differ, and the constants are from memory.",
        ));
        Ok(Answer {
            main_force: forces.main,
            feed_force: forces.feed,
            passive_force: forces.passive,
            power,
            torque: drive::torque(forces.main, mean),
            chip_thickness: chip.thickness,
            chip_width: chip.width,
            removal_rate: speed::removal_rate(
                self.diameter,
                self.depth_of_cut,
                self.feed,
                spindle_speed,
            )?,
            cautions,
            provenance,
        })
    }

    /// Compares with what the drive gives at this speed.
    fn drive(
        &self,
        power: Power,
        torque: Torque,
        spindle_speed: SpindleSpeed,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) {
        let Some(lathe) = &self.lathe else { return };
        let Some(motor) = lathe.power() else { return };
        let efficiency = lathe
            .efficiency()
            .unwrap_or_else(|| provenance.open("efficiency of the drive", &EFFICIENCY));
        let rated = drive::spindle_power(motor, efficiency);
        let given = lathe
            .constant_torque_below()
            .map_or(rated, |base| drive::drive_power(rated, base, spindle_speed));
        let share = power.kw() / given.kw().max(f64::MIN_POSITIVE);
        if power > given {
            cautions.push(Caution::new(
                Severity::Warning,
                "drive_overloaded",
                format!(
                    "The cut asks for {:.2} kW ({:.1} N m), the drive gives {:.2} kW at this speed: it would stall. Less depth or feed.",
                    power.kw(),
                    torque.newton_meter(),
                    given.kw()
                ),
            ));
        } else if share > 0.8 {
            cautions.push(Caution::new(
                Severity::Note,
                "drive_nearly_full",
                format!(
                    "The cut takes {:.0} % of what the drive gives at this speed.",
                    100.0 * share
                ),
            ));
        }
    }
}
