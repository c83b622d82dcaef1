//! The largest depth that every limit allows, and the least that is planned.

use std::fmt;

use super::force::ManyCuts;
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::physics::stepped::HeldBar;
use crate::physics::torque_curve::TorqueCurve;
use crate::physics::{drive, engagement, force, speed};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    ChipThickness, DepthOfCut, Diameter, DiameterError, EdgeRadius, Feed, MainForce, PassiveForce,
    Power, Quantity, SpindleSpeed, WorkLength, round_size,
};
use crate::shop::figure::ToolMaterial;
use crate::shop::lathe::{EFFICIENCY, Lathe};
use crate::shop::tool::Tool;

/// Largest depth over feed of a roughing cut; beyond it the chip is a ribbon.
pub const CHIP_WINDOW: Sourced<f64> = Sourced::new(
    10.0,
    "common practice, no source: depth over feed about 4 to 10, extremes 3 to 15",
    Standing::CommonPractice,
);

/// Least planned depth, as a share of the corner radius.
pub const PLANNED_OVER_CORNER: Sourced<f64> = Sourced::new(
    0.25,
    "common practice, no source: a planned cut at about r/4 or more",
    Standing::CommonPractice,
);

/// Preferred depth of a finishing cut, as a share of the corner radius.
pub const FINISH_OVER_CORNER: Sourced<f64> = Sourced::new(
    0.5,
    "common practice, no source: at least r/2 or so",
    Standing::CommonPractice,
);

/// Least depth over the least chip thickness.
pub const DEPTH_OVER_LEAST_CHIP: Sourced<f64> = Sourced::new(
    3.0,
    "common practice, no source: 2 to 3 times the least chip thickness",
    Standing::CommonPractice,
);

/// Edge radius of a high-speed steel tool where none is given.
pub const EDGE_OF_HIGH_SPEED_STEEL: Sourced<EdgeRadius> = Sourced::new(
    EdgeRadius::computed_trade(0.010),
    "common practice, no source: well honed 3 to 10 um",
    Standing::CommonPractice,
);

/// Edge radius of a carbide tool where none is given.
pub const EDGE_OF_CARBIDE: Sourced<EdgeRadius> = Sourced::new(
    EdgeRadius::computed_trade(0.030),
    "common practice, no source: ground sharp 5 to 15 um, honed or coated 20 to 60 um",
    Standing::CommonPractice,
);

/// Largest share of the finishing depth that the spring of a roughing cut may be, on the radius.
pub const ROUGH_SPRING: Sourced<f64> = Sourced::new(
    0.5,
    "judgement, no source: the finishing cut must find metal all along",
    Standing::Estimate,
);

/// What limits a depth of cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum DepthLimit {
    /// The chip: depth over feed.
    Chip,
    /// The power of the drive.
    Power,
    /// The torque of the drive.
    Torque,
    /// The bar springs away.
    Deflection,
    /// The asker's own limit.
    Asked,
    /// The metal there is to take.
    Metal,
}

impl fmt::Display for DepthLimit {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Chip => "the chip (depth over feed)",
            Self::Power => "the power of the drive",
            Self::Torque => "the torque of the drive",
            Self::Deflection => "the spring of the bar",
            Self::Asked => "the largest depth asked for",
            Self::Metal => "the metal there is to take",
        })
    }
}

/// What the spring of the bar leaves on the diameter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct SpringLeft {
    /// Where it gives most.
    pub(crate) most: DiameterError,
    /// By how much it differs along the cut.
    pub(crate) along: DiameterError,
}

/// The least chip thickness of a tool; of an unknown tool that of honed carbide, which promises least.
///
/// # Example
/// ```
/// use turnwright::{advice::depth::least_chip, CornerRadius, CuttingEdgeAngle, Provenance, Tool, ToolMaterial};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// let unknown = least_chip(&tool, &mut Provenance::default());
/// let steel = tool.with_material(ToolMaterial::HighSpeedSteel);
/// assert!(least_chip(&steel, &mut Provenance::default()) < unknown);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn least_chip(tool: &Tool, provenance: &mut Provenance) -> ChipThickness {
    let edge = match (tool.edge_radius(), tool.material()) {
        (Some(edge), _) => {
            provenance.record(
                "edge radius of the tool",
                &edge,
                "given by the asker",
                Standing::Given,
            );
            edge
        }
        (None, Some(ToolMaterial::Carbide)) => {
            provenance.open("edge radius of carbide", &EDGE_OF_CARBIDE)
        }
        // Where the material is not known either, the sharper edge would promise too much.
        (None, Some(ToolMaterial::HighSpeedSteel)) => {
            provenance.open("edge radius of high-speed steel", &EDGE_OF_HIGH_SPEED_STEEL)
        }
        (None, None) => provenance.open("edge radius of carbide", &EDGE_OF_CARBIDE),
    };
    provenance.open(
        "least chip thickness over edge radius",
        &engagement::LEAST_CHIP_OVER_EDGE_RADIUS,
    );
    engagement::least_chip_thickness(edge)
}

/// The least depth at which a cut is planned: it cuts for certain, and does not rub.
///
/// The largest of what the tool is known for, three times its least chip thickness, a quarter of its
/// corner radius, and the depth at which the thickest chip reaches the least chip thickness.
///
/// # Errors
/// `feed`, when it is so fine that no depth makes a chip.
///
/// # Example
/// ```
/// use turnwright::{advice::depth, CornerRadius, CuttingEdgeAngle, Feed, Provenance, Tool, ToolMaterial};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?)
///     .with_material(ToolMaterial::HighSpeedSteel);
/// let floor = depth::least_planned(&tool, Feed::from_mm_per_rev(0.1)?, &mut Provenance::default())?;
/// assert_eq!(floor.mm(), 0.1);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn least_planned(
    tool: &Tool,
    feed: Feed,
    provenance: &mut Provenance,
) -> Result<DepthOfCut, Error> {
    let h_min = least_chip(tool, provenance);
    let geometric =
        engagement::least_depth(h_min, feed, tool.corner_radius()).map_err(of_the_tool)?;
    let several = provenance.open(
        "least depth over least chip thickness",
        &DEPTH_OVER_LEAST_CHIP,
    ) * h_min.mm();
    let corner = provenance.open(
        "least planned depth over corner radius",
        &PLANNED_OVER_CORNER,
    ) * tool.corner_radius().mm();
    let known = tool.least_depth().map_or(0.0, DepthOfCut::mm);
    Ok(DepthOfCut::computed_trade(
        geometric.mm().max(several).max(corner).max(known),
    ))
}

/// An error about the corner of the tool, told of its field.
#[cold]
fn of_the_tool(error: Error) -> Error {
    match error.field() {
        "corner_radius" => error.inside("tool"),
        _ => error,
    }
}

/// The least depth at which a cut may correct a size: it cuts, though not at its best.
///
/// A part that can be saved is not given up because a planned cut would be deeper.
///
/// # Errors
/// `feed`, when it is so fine that no depth makes a chip.
///
/// # Example
/// ```
/// use turnwright::{advice::depth, CornerRadius, CuttingEdgeAngle, Feed, Provenance, Tool, ToolMaterial};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?)
///     .with_material(ToolMaterial::HighSpeedSteel);
/// let (feed, mut p) = (Feed::from_mm_per_rev(0.1)?, Provenance::default());
/// assert!(depth::least_correcting(&tool, feed, &mut p)? < depth::least_planned(&tool, feed, &mut p)?);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn least_correcting(
    tool: &Tool,
    feed: Feed,
    provenance: &mut Provenance,
) -> Result<DepthOfCut, Error> {
    let h_min = least_chip(tool, provenance);
    let geometric =
        engagement::least_depth(h_min, feed, tool.corner_radius()).map_err(of_the_tool)?;
    let several = provenance.open(
        "least depth over least chip thickness",
        &DEPTH_OVER_LEAST_CHIP,
    ) * h_min.mm();
    Ok(DepthOfCut::computed_trade(geometric.mm().max(several)))
}

/// A cut and all that limits it.
#[derive(Debug, Clone)]
pub(crate) struct Cut<'a> {
    pub(crate) law: &'a ManyCuts,
    pub(crate) feed: Feed,
    pub(crate) spindle_speed: SpindleSpeed,
    pub(crate) before: Diameter,
    pub(crate) held: &'a super::support::Held,
    /// What stays thicker between the jaws and the shoulder.
    pub(crate) root: &'a [Section],
    /// From the shoulder, measured from the jaws ...
    pub(crate) from: WorkLength,
    /// ... to the free end, or to what is thinner already.
    pub(crate) to: WorkLength,
    /// What was roughed to less before, on to the free end.
    pub(crate) outer: &'a [Section],
}

/// What a cut of one depth asks for.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Effort {
    pub(crate) forces: force::CuttingForces,
    pub(crate) power: Power,
    pub(crate) spring: DiameterError,
}

impl Cut<'_> {
    /// Forces, power and the spring of the bar at `depth`.
    pub(crate) fn effort(&self, depth: DepthOfCut) -> Result<Effort, Error> {
        let forces = self.law.forces(depth, self.feed);
        let mean = speed::mean_diameter(self.before, depth)?;
        let passive = super::support::size_of(forces.passive);
        let bar = self.bar_of(self.before.after_cut(depth)?)?;
        let (from, to) = self.stretch(&bar);
        let (_, spring) = bar.worst(passive, from, to)?;
        Ok(Effort {
            forces,
            power: drive::cutting_power(
                forces.main,
                speed::cutting_speed(self.spindle_speed, mean),
            ),
            spring: spring.diameter_error(),
        })
    }

    /// The spring of a bar that this cut leaves at `after`, on the diameter, where it gives most, under
    /// one newton.
    pub(crate) fn spring_per_newton(&self, after: Diameter) -> Result<DiameterError, Error> {
        let bar = self.bar_of(after)?;
        let (from, to) = self.stretch(&bar);
        let one = PassiveForce::computed_trade(1.0);
        Ok(bar.worst(one, from, to)?.1.diameter_error())
    }

    /// The spring of the bar at a place from the jaws, on the diameter.
    pub(crate) fn spring_at(
        &self,
        depth: DepthOfCut,
        at: WorkLength,
    ) -> Result<DiameterError, Error> {
        let passive = super::support::size_of(self.law.forces(depth, self.feed).passive);
        let bar = self.bar_of(self.before.after_cut(depth)?)?;
        let at = at.min(bar.length());
        Ok(bar.deflection(passive, at)?.diameter_error())
    }

    /// What the spring leaves on the diameter, after the cut or after it and a spring pass at its mark.
    ///
    /// What the first pass left standing is the depth of the second.
    pub(crate) fn spring_left(
        &self,
        depth: DepthOfCut,
        spring_pass: bool,
    ) -> Result<SpringLeft, Error> {
        let once = self.sprung(depth)?;
        if !spring_pass {
            return Ok(once);
        }
        let standing = |error: DiameterError| DepthOfCut::computed_trade(0.5 * error.mm());
        Ok(SpringLeft {
            most: self.sprung(standing(once.most))?.most,
            along: self.sprung(standing(once.along))?.along,
        })
    }

    /// The spring of the bar under a cut of `depth`, on the diameter.
    fn sprung(&self, depth: DepthOfCut) -> Result<SpringLeft, Error> {
        let passive = super::support::size_of(self.law.forces(depth, self.feed).passive);
        let bar = self.bar_of(self.before.after_cut(depth)?)?;
        let (from, to) = self.stretch(&bar);
        let most = bar.worst(passive, from, to)?.1.diameter_error();
        // Between its ends the line rises to one crest and falls; it is least at an end.
        let least = bar
            .deflection(passive, from)?
            .min(bar.deflection(passive, to)?);
        Ok(SpringLeft {
            most,
            along: DiameterError::computed_trade(most.mm() - least.diameter_error().mm()),
        })
    }

    /// Where the cut goes, no farther than the lengths of the sections add up to.
    fn stretch(&self, bar: &HeldBar) -> (WorkLength, WorkLength) {
        let end = bar.length();
        (self.from.min(end), self.to.min(end))
    }

    /// The bar as this cut leaves it.
    fn bar_of(&self, after: Diameter) -> Result<HeldBar, Error> {
        let length = WorkLength::computed_trade(self.to.mm() - self.from.mm());
        let mut sections = Vec::with_capacity(self.root.len() + 1 + self.outer.len());
        sections.extend_from_slice(self.root);
        sections.push(Section::cylinder(after, length));
        sections.extend_from_slice(self.outer);
        let held = self.held;
        HeldBar::new(
            held.youngs_modulus,
            &sections,
            held.support(),
            &held.springs,
            &[],
        )
    }

    /// Whether the chip of `depth` is a ribbon.
    pub(crate) fn ribbons(&self, depth: DepthOfCut) -> bool {
        depth.mm() > CHIP_WINDOW.value * self.feed.mm_per_rev()
    }

    /// What forbids `depth`, if anything does; the spring of the bar costs the most to look at, and is
    /// not looked at where none is given. Power and torque grow with the diameter: they are looked at on
    /// the bar that is cut and on the `thickest` that the same depth is taken from.
    pub(crate) fn forbids(
        &self,
        depth: DepthOfCut,
        lathe: &Lathe,
        most_spring: Option<DiameterError>,
        thickest: Diameter,
    ) -> Result<Option<DepthLimit>, Error> {
        let Ok(after) = self.before.after_cut(depth) else {
            return Ok(Some(DepthLimit::Metal));
        };
        if self.ribbons(depth) {
            return Ok(Some(DepthLimit::Chip));
        }
        let forces = self.law.forces(depth, self.feed);
        let driven = |before| self.drive_forbids(before, depth, forces.main, lathe);
        if let Some(limit) = driven(self.before) {
            return Ok(Some(limit));
        }
        if let Some(most_spring) = most_spring {
            let bar = self.bar_of(after)?;
            let (from, to) = self.stretch(&bar);
            let passive = super::support::size_of(forces.passive);
            let spring = bar.worst(passive, from, to)?.1.diameter_error();
            if spring > most_spring {
                return Ok(Some(DepthLimit::Deflection));
            }
        }
        Ok(driven(thickest))
    }

    /// What of the drive forbids a main force on a bar of the diameter `before`, if anything does.
    fn drive_forbids(
        &self,
        before: Diameter,
        depth: DepthOfCut,
        main: MainForce,
        lathe: &Lathe,
    ) -> Option<DepthLimit> {
        let Ok(mean) = speed::mean_diameter(before, depth) else {
            return Some(DepthLimit::Metal);
        };
        let motor = lathe.power()?;
        let efficiency = lathe.efficiency().unwrap_or(EFFICIENCY.value);
        let at_spindle = drive::spindle_power(motor, efficiency);
        let mut drive = TorqueCurve::new(at_spindle);
        if let Some(base) = lathe.base_speed_at(self.spindle_speed) {
            drive = drive.with_base_speed(base);
        }
        // Reckoned at the diameter before the cut, where both are largest.
        let at_rim = before.mm() / mean.mm();
        let torque = drive::torque(main, mean).trade() * at_rim;
        if drive
            .largest_torque()
            .is_some_and(|most| torque > most.trade())
        {
            return Some(DepthLimit::Torque);
        }
        let speed = speed::cutting_speed(self.spindle_speed, mean);
        let power = drive::cutting_power(main, speed).trade() * at_rim;
        (power > drive.power(self.spindle_speed).trade()).then_some(DepthLimit::Power)
    }
}

/// The error for a job in which not even the least depth is allowed.
#[cold]
pub(crate) fn no_depth(limit: DepthLimit, floor: DepthOfCut) -> Error {
    let remedy = match limit {
        DepthLimit::Power | DepthLimit::Torque => {
            "a finer feed, a slower spindle step or another lathe"
        }
        DepthLimit::Deflection => {
            "a live centre, a shorter overhang, or a tool with a smaller corner radius"
        }
        DepthLimit::Chip => "a coarser feed, or a tool with a smaller corner radius",
        DepthLimit::Asked => {
            "raise preferences.largest_depth, or use a tool with a smaller corner radius"
        }
        DepthLimit::Metal => "a larger bar, or a tool with a smaller corner radius",
    };
    Error::new(
        ErrorKind::Impossible,
        "tool",
        format!(
            "a tool that cuts from {} of depth",
            DepthOfCut::computed_trade(round_size(floor.mm()))
        ),
        format!("a depth that {limit} allows"),
        remedy,
    )
}
