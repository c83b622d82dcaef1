//! Forces, power and torque of a cut.
//!
//! | field | what |
//! |---|---|
//! | `material` | a key, a designation, or an object of one's own figures |
//! | `operation?` | `"turning"` (left out), `"facing"` or `"parting"` |
//! | `diameter` | before the cut; in facing and parting the one where the edge stands |
//! | `depth_of_cut` | radial in turning, along the axis in facing; not in parting |
//! | `width` | of the blade, in parting |
//! | `feed`, `cutting_speed` or `spindle_speed` | how the tool moves |
//! | `tool` | `corner_radius`, `cutting_edge_angle`, `minor_cutting_edge_angle?`, `rake_angle?`, `edge?`: `"sharp"`, `"ordinary"`, `"worn_out"`; may be left out in parting |
//! | `lathe?` | whose power and highest speed are compared |

use serde::Serialize;

use crate::advice;
use crate::advice::feed::FEED_OVER_CORNER;
use crate::advice::force::ForceRanges;
use crate::advice::hazard;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::edge_in_cut::engaged_edge;
use crate::physics::engagement::{ChipSection, chip_section};
use crate::physics::force::{CuttingForces, EdgeInCut, effective_edge_angle};
use crate::physics::parting::blade_chip;
use crate::physics::torque_curve::TorqueCurve;
use crate::physics::{drive, finish, speed};
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{
    BladeWidth, ChipThickness, ChipWidth, CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut,
    Diameter, Feed, FeedForce, MainForce, MinorCuttingEdgeAngle, PassiveForce, Power, Quantity,
    RemovalRate, SpindleSpeed, Torque,
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

impl Pace {
    /// The speed of the spindle when the edge starts at a diameter.
    pub(super) fn at(self, diameter: Diameter) -> SpindleSpeed {
        match self {
            Self::SpindleSpeed(n) => n,
            Self::CuttingSpeed(v) => speed::spindle_speed(v, diameter),
        }
    }

    pub(super) fn read(f: &Fields<'_>) -> Result<Self, Error> {
        match (f.quantity("cutting_speed")?, f.quantity("spindle_speed")?) {
            (Some(v), None) => Ok(Self::CuttingSpeed(v)),
            (None, Some(n)) => Ok(Self::SpindleSpeed(n)),
            (None, None) => {
                Err(f.missing("cutting_speed", "a speed: cutting_speed or spindle_speed"))
            }
            (Some(_), Some(_)) => Err(Error::new(
                ErrorKind::Contradiction,
                f.path("spindle_speed"),
                "both cutting_speed and spindle_speed",
                "one of the two",
                "keep the one that is set; the other follows from the diameter",
            )),
        }
    }
}

/// What is done, and how much of the work lies in front of the edge.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Operation {
    /// Along the axis; the depth is radial.
    Turning(DepthOfCut),
    /// Towards the axis; the depth is along it, the diameter the one where the edge stands.
    Facing(DepthOfCut),
    /// Towards the axis with a square blade of this width.
    Parting(BladeWidth),
}

/// A cut along a bar, on its face, or through it.
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
    operation: Operation,
    feed: Feed,
    pace: Pace,
    lathe: Option<Lathe>,
    units: Units,
}

/// What the cut asks for.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Along the cutting speed.
    pub main_force: MainForce,
    /// Against the feed. In facing and parting it bends the bar.
    pub feed_force: FeedForce,
    /// Across the feed. In turning it bends the bar; in facing it lies along the axis.
    pub passive_force: PassiveForce,
    /// Least and most of the three, by the scatter from bar to bar.
    pub ranges: ForceRanges,
    /// At the spindle, at the mean diameter of a turning cut, at the outside of the others.
    pub power: Power,
    /// At the spindle.
    pub torque: Torque,
    /// Nominal thickness of cut at the straight edge.
    pub chip_thickness: ChipThickness,
    /// Nominal width of cut at the straight edge.
    pub chip_width: ChipWidth,
    /// Cross section of the cut over the engaged edge, exactly; none where the turns do not meet on
    /// the corner arc.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub equivalent_chip_thickness: Option<ChipThickness>,
    /// Angle of a straight edge whose force has the same direction.
    pub effective_edge_angle: CuttingEdgeAngle,
    /// Which part of the edge cuts.
    pub edge_in_cut: EdgeInCut,
    /// Metal removed per time; in facing and parting where the edge stands.
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
    /// A cut along a bar; the diameter is the one before it.
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
            operation: Operation::Turning(depth_of_cut),
            feed,
            pace,
            lathe: None,
            units: Units::default(),
        }
    }

    /// Another operation than turning.
    ///
    /// ```
    /// use turnwright::document::cutting::{Operation, Pace, Question};
    /// use turnwright::{Material, Tool};
    /// let blade = Tool::new("0 mm".parse()?, "90 deg".parse()?);
    /// let question = Question::new(
    ///     Material::named("c45")?,
    ///     blade,
    ///     "30 mm".parse()?,
    ///     "3 mm".parse()?,
    ///     "0.06 mm/rev".parse()?,
    ///     Pace::SpindleSpeed("300 rpm".parse()?),
    /// )
    /// .with_operation(Operation::Parting("3 mm".parse()?));
    /// let answer = question.answer()?;
    /// assert_eq!(answer.chip_width.mm(), 3.0);
    /// assert!(answer.cautions.iter().any(|caution| caution.code() == "nobody_catches"));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn with_operation(mut self, operation: Operation) -> Self {
        self.operation = operation;
        self
    }

    /// With a lathe, whose power and highest speed are compared.
    #[must_use]
    pub fn with_lathe(mut self, lathe: Lathe) -> Self {
        self.lathe = Some(lathe);
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let pace = Pace::read(&f)?;
        let kind = f.choice(
            "operation",
            &[
                ("turning", Kind::Turning),
                ("facing", Kind::Facing),
                ("parting", Kind::Parting),
            ],
        )?;
        let kind = kind.unwrap_or(Kind::Turning);
        let operation = match kind {
            Kind::Turning | Kind::Facing => {
                let depth = f.need_quantity("depth_of_cut")?;
                no_part_of(&f, "width", "a cut without a blade")?;
                match kind {
                    Kind::Facing => Operation::Facing(depth),
                    _ => Operation::Turning(depth),
                }
            }
            Kind::Parting => {
                let width = f.need_quantity("width")?;
                no_part_of(&f, "depth_of_cut", "a blade that cuts on its whole width")?;
                Operation::Parting(width)
            }
        };
        let tool = f.item("tool", Tool::read)?;
        let question = Self {
            material: f.need_item(
                "material",
                "a material: its key, a designation, or an object",
                Material::read,
            )?,
            tool: match (tool, kind) {
                (Some(tool), _) => tool,
                // Nothing of a square blade enters the forces but its width.
                (None, Kind::Parting) => Tool::new(
                    CornerRadius::computed_trade(0.0),
                    CuttingEdgeAngle::computed_trade(90.0),
                ),
                (None, _) => {
                    return Err(f.missing("tool", "the tool: corner_radius and cutting_edge_angle"));
                }
            },
            diameter: f.need_quantity("diameter")?,
            operation,
            feed: f.need_quantity("feed")?,
            pace,
            lathe: f.item("lathe", Lathe::read)?,
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// Forces, power, torque.
    ///
    /// # Errors
    /// When the cut goes to the middle of the bar; when the rake of the tool is outside of what the
    /// force is known for; when the speed is above the highest of the lathe or its chuck.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (mut provenance, mut cautions) = (Provenance::default(), Vec::new());
        let spindle_speed = self.pace.at(self.diameter);
        self.within_the_speed_limit(spindle_speed)?;
        if let Some(lathe) = &self.lathe {
            hazard::swings(lathe, self.diameter)?;
        }
        cautions.extend(hazard::danger_of(&self.material));
        let law = advice::force::tool_law(&self.material, &self.tool, &mut provenance)?;
        let forces = match self.operation {
            Operation::Turning(depth) | Operation::Facing(depth) => {
                law.forces(&self.tool, depth, self.feed)
            }
            Operation::Parting(width) => {
                self.square_blade()?;
                law.parting_forces(width, self.feed, &mut provenance)
            }
        };
        // Where the power is that of the cut: half-way through a turning cut, else at the outside.
        let (chip, across) = match self.operation {
            Operation::Turning(depth) => (
                chip_section(depth, self.feed, self.tool.cutting_edge_angle()),
                speed::mean_diameter(self.diameter, depth)?,
            ),
            Operation::Facing(depth) => (
                chip_section(depth, self.feed, self.tool.cutting_edge_angle()),
                self.diameter,
            ),
            Operation::Parting(width) => (blade_chip(width, self.feed), self.diameter),
        };
        let cutting_speed = speed::cutting_speed(spindle_speed, across);
        let removal_rate = match self.operation {
            Operation::Turning(depth) => {
                speed::removal_rate(self.diameter, depth, self.feed, spindle_speed)?
            }
            _ => speed::removal_rate_at(chip, cutting_speed),
        };
        let equivalent_chip_thickness = self.equivalent_thickness(chip, &mut cautions);
        let thickness = equivalent_chip_thickness.unwrap_or(chip.thickness);
        self.about_the_chip(thickness, &forces, &mut provenance, &mut cautions);
        cautions.extend(self.too_much(cutting_speed, &mut provenance));
        self.drive(
            &forces,
            across,
            spindle_speed,
            &mut provenance,
            &mut cautions,
        );
        match self.operation {
            Operation::Turning(_) => {}
            Operation::Facing(_) => cautions.push(Caution::new(
                Severity::Note,
                "lock_carriage",
                "Lock the carriage, or the face comes out hollow or full. The cutting speed falls towards the middle.",
            )),
            Operation::Parting(width) => cautions.extend(advice::parting::cautions(
                self.diameter,
                width,
                self.feed,
                &mut provenance,
            )),
        }
        cautions.push(Caution::new(
            Severity::Note,
            "forces_scatter",
            "Good to about 30 %: bars of one name differ, and the constants are from memory. Not in it: the tool's material \
             (high-speed steel about 1.2 times as much), the cutting speed, the fluid.",
        ));
        Ok(Answer {
            main_force: forces.main,
            feed_force: forces.feed,
            passive_force: forces.passive,
            ranges: advice::force::ranges(&forces, &mut provenance),
            power: drive::cutting_power(forces.main, cutting_speed),
            torque: drive::torque(forces.main, across),
            chip_thickness: chip.thickness,
            chip_width: chip.width,
            equivalent_chip_thickness,
            effective_edge_angle: effective_edge_angle(&forces),
            edge_in_cut: forces.edge,
            removal_rate,
            cautions,
            provenance,
        })
    }

    /// What no manual lathe or no such tool can do.
    fn too_much(&self, v: CuttingSpeed, provenance: &mut Provenance) -> Vec<Caution> {
        let mut told = Vec::new();
        let corner = self.tool.corner_radius().mm();
        let turning = !matches!(self.operation, Operation::Parting(_));
        if turning && corner > 0.0 {
            let most = provenance.open("largest feed over corner radius", &FEED_OVER_CORNER);
            if self.feed.mm_per_rev() > most * corner {
                told.push(Caution::new(
                    Severity::Warning,
                    "feed_against_corner",
                    format!(
                        "The feed is {:.1} corner radii, {most} at most is usual: the corner breaks, or the work is torn out of \
                         the chuck. Less feed, or a larger corner radius.",
                        self.feed.mm_per_rev() / corner
                    ),
                ));
            }
        }
        if let Some(band) = self
            .tool
            .material()
            .and_then(|tool| self.material.speed_band(tool))
        {
            let band = band.open("band of cutting speeds", provenance);
            if v > band.high() {
                told.push(Caution::new(
                    Severity::Warning,
                    "above_the_speed_band",
                    format!(
                        "{} is above the {} of this tool in this material: the edge will not last.",
                        v.people(self.units),
                        band.high().people(self.units)
                    ),
                ));
            }
        }
        told
    }

    fn within_the_speed_limit(&self, spindle_speed: SpindleSpeed) -> Result<(), Error> {
        match self.lathe.as_ref().and_then(Lathe::speed_cap) {
            Some(cap) if spindle_speed > cap => Err(Error::new(
                ErrorKind::Impossible,
                match self.pace {
                    Pace::SpindleSpeed(_) => "spindle_speed",
                    Pace::CuttingSpeed(_) => "cutting_speed",
                },
                spindle_speed.people(self.units).to_string(),
                format!(
                    "at most {}, the highest speed of machine and chuck",
                    cap.people(self.units)
                ),
                "run slower: this limit is not to be passed",
            )),
            _ => Ok(()),
        }
    }

    fn square_blade(&self) -> Result<(), Error> {
        if self.tool.cutting_edge_angle().degrees() == 90.0 {
            return Ok(());
        }
        Err(Error::not_offered(
            "tool.cutting_edge_angle",
            "a blade whose front edge is not square",
            "write \"90 deg\": a few degrees change the force by less than bars of one name differ",
        ))
    }

    fn about_the_chip(
        &self,
        thickness: ChipThickness,
        forces: &CuttingForces,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) {
        if thickness.mm() < THINNEST_OF_THE_FITS {
            cautions.push(Caution::new(
                Severity::Note,
                "thin_chip",
                format!(
                    "A chip of {} lies below the fits of the specific force: the true force is larger.",
                    thickness.people(self.units)
                ),
            ));
        }
        let (Operation::Turning(depth) | Operation::Facing(depth)) = self.operation else {
            return;
        };
        if depth.mm() <= self.tool.corner_radius().mm() {
            cautions.push(Caution::new(
                Severity::Note,
                "corner_only",
                match self.operation {
                    Operation::Facing(_) => {
                        "Only the corner cuts: most of the normal force pushes along the axis."
                    }
                    _ => "Only the corner cuts: most of the normal force pushes the bar away.",
                },
            ));
        }
        // A finishing cut lives with its string; the window is for roughing.
        if forces.edge != EdgeInCut::CornerArc {
            let (_, caution) = advice::chip::shape(depth, self.feed, provenance);
            cautions.extend(caution);
        }
    }

    /// Cross section over engaged edge; it does not depend on the minor edge where the turns meet on
    /// the arc.
    fn equivalent_thickness(
        &self,
        chip: ChipSection,
        cautions: &mut Vec<Caution>,
    ) -> Option<ChipThickness> {
        let (Operation::Turning(depth) | Operation::Facing(depth)) = self.operation else {
            return Some(chip.thickness);
        };
        let corner = self.tool.corner_radius();
        if corner.mm() == 0.0 {
            return Some(chip.thickness);
        }
        let minor = self
            .tool
            .minor_cutting_edge_angle()
            .unwrap_or(MinorCuttingEdgeAngle::computed_trade(90.0));
        let angle = self.tool.cutting_edge_angle();
        match engaged_edge(depth, self.feed, angle, minor, corner) {
            Ok(edge) => {
                if self.tool.minor_cutting_edge_angle().is_none()
                    && let Ok(least) = finish::least_minor_angle_for_arc(self.feed, corner)
                {
                    cautions.push(Caution::new(
                        Severity::Note,
                        "minor_edge_unknown",
                        format!(
                            "The equivalent chip thickness holds for a minor cutting edge angle of at least {:.1} deg; \
                             give minor_cutting_edge_angle to be sure.",
                            least.degrees()
                        ),
                    ));
                }
                Some(edge.equivalent_chip_thickness)
            }
            Err(error) => {
                cautions.push(Caution::new(
                    Severity::Warning,
                    "turns_do_not_meet",
                    match error.field() {
                        "depth_of_cut" => {
                            "The cut is no deeper than the ridges between its turns: it leaves a thread. Less feed."
                        }
                        _ => {
                            "The turns of this feed do not meet on the corner arc: the straight edges finish, and \
                             coarsely. Less feed."
                        }
                    },
                ));
                None
            }
        }
    }

    /// Compares with what the drive gives at this speed.
    fn drive(
        &self,
        forces: &CuttingForces,
        diameter: Diameter,
        spindle_speed: SpindleSpeed,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) {
        let Some(lathe) = &self.lathe else { return };
        let Some(motor) = lathe.power() else { return };
        let efficiency = lathe
            .efficiency()
            .unwrap_or_else(|| provenance.open("efficiency of the drive", &EFFICIENCY));
        let mut curve = TorqueCurve::new(drive::spindle_power(motor, efficiency));
        if let Some(base) = lathe.base_speed_at(spindle_speed) {
            curve = curve.with_base_speed(base);
        }
        let torque = drive::torque(forces.main, diameter);
        let given = curve.torque(spindle_speed);
        if curve.stalls(forces.main, diameter, spindle_speed) {
            let smaller = match self.operation {
                Operation::Parting(_) => "less feed, a narrower blade",
                _ => "less depth, less feed",
            };
            let way_out = match curve.speeds_that_run(forces.main, diameter) {
                Ok(runs) => runs.highest.map_or_else(
                    || String::from(smaller),
                    |n| format!("{smaller}, or not above {}", n.people(self.units)),
                ),
                Err(_) => format!("{smaller}, or a lower gear; no speed of this one turns it"),
            };
            cautions.push(Caution::new(
                Severity::Warning,
                "drive_overloaded",
                format!(
                    "The cut asks for {}, the drive gives {} at this speed: it would stall. Remedy: {way_out}.",
                    torque.people(self.units),
                    given.people(self.units),
                ),
            ));
        } else if torque.newton_meter() > 0.8 * given.newton_meter() {
            cautions.push(Caution::new(
                Severity::Note,
                "drive_nearly_full",
                format!(
                    "The cut takes {:.0} % of what the drive gives at this speed.",
                    100.0 * torque.newton_meter() / given.newton_meter()
                ),
            ));
        }
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Turning,
    Facing,
    Parting,
}

/// Refuses a field that the operation has no use for.
fn no_part_of(f: &Fields<'_>, name: &'static str, cut: &str) -> Result<(), Error> {
    match f.tree(name) {
        None => Ok(()),
        Some(_) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path(name),
            format!("{name} for {cut}"),
            "fields of this operation only",
            "strike the field, or name the operation: \"turning\", \"facing\" or \"parting\"",
        )),
    }
}
