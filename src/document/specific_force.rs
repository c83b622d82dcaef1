//! The specific force of the bar at hand, from a measured cut.
//!
//! | field | what |
//! |---|---|
//! | `cutting_power` | the power at the spindle, above idle; or |
//! | `motor_power`, `idle_power?`, `efficiency` | that of the motor in the cut and without it, at the same speed |
//! | `diameter`, `depth_of_cut`, `feed`, `tool` | the cut, along a bar |
//! | `cutting_speed` or `spindle_speed` | its speed |
//! | `material` or `exponent` | whose exponent is kept |

use serde::Serialize;

use super::cutting::Pace;
use crate::advice;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::engagement::chip_section;
use crate::physics::measured_force::{
    force_of_power, law_of_cut, power_above_idle, specific_force_of_chip,
};
use crate::physics::speed;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::{
    ChipThickness, DepthOfCut, Diameter, Efficiency, Feed, ForceExponent, ForceFactor, MainForce,
    Power, Quantity, SpecificCuttingForce, SpecificForceAtChip,
};
use crate::shop::material::Material;
use crate::shop::tool::Tool;

/// What was measured.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Measured {
    /// The power of the cut at the spindle, without idle power and losses.
    CuttingPower(Power),
    /// The power that the motor takes.
    MotorPower {
        /// In the cut.
        motor_power: Power,
        /// Without the cut, at the same spindle speed.
        idle_power: Option<Power>,
        /// From motor to spindle.
        efficiency: Efficiency,
    },
}

/// Whose exponent is kept.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Kept {
    /// That of a material, with whose specific force the measured one is compared.
    Material(Box<Material>),
    /// One that is given.
    Exponent(ForceExponent),
}

/// A measured cut along a bar.
///
/// ```
/// use turnwright::document::{cutting::Pace, specific_force::{Kept, Measured, Question}};
/// use turnwright::Tool;
/// let answer = Question::new(
///     Measured::CuttingPower("1.92 kW".parse()?),
///     Tool::new("0 mm".parse()?, "90 deg".parse()?),
///     "50 mm".parse()?,
///     "2 mm".parse()?,
///     "0.25 mm/rev".parse()?,
///     Pace::SpindleSpeed("729 rpm".parse()?),
///     Kept::Exponent("0.26".parse()?),
/// )
/// .answer()?;
/// assert!((answer.specific_force.mpa() - 1461.0).abs() < 1.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    measured: Measured,
    tool: Tool,
    diameter: Diameter,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    pace: Pace,
    kept: Kept,
}

/// What the metal resists.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// For a chip of 1 mm by 1 mm; where the tool tells of its rake or its wear, what they add is
    /// taken off, so that it is a material's `specific_force` again.
    pub specific_force: SpecificCuttingForce,
    /// The exponent that was kept.
    pub exponent: ForceExponent,
    /// In this cut: the main force over depth times feed.
    pub specific_force_at_chip: SpecificForceAtChip,
    /// Nominal thickness of cut at the straight edge.
    pub chip_thickness: ChipThickness,
    /// The main force that was measured.
    pub main_force: MainForce,
    /// The power of the cut at the spindle.
    pub cutting_power: Power,
    /// The main force over that of the material's own figures; 1 is as the table has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub against_the_table: Option<ForceFactor>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A measured cut; the diameter is the one before it.
    #[must_use]
    pub fn new(
        measured: Measured,
        tool: Tool,
        diameter: Diameter,
        depth_of_cut: DepthOfCut,
        feed: Feed,
        pace: Pace,
        kept: Kept,
    ) -> Self {
        Self {
            measured,
            tool,
            diameter,
            depth_of_cut,
            feed,
            pace,
            kept,
        }
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            measured: measured(&f)?,
            tool: f.need_item(
                "tool",
                "the tool: corner_radius and cutting_edge_angle",
                Tool::read,
            )?,
            diameter: f.need_quantity("diameter")?,
            depth_of_cut: f.need_quantity("depth_of_cut")?,
            feed: f.need_quantity("feed")?,
            pace: Pace::read(&f)?,
            kept: kept(&f)?,
        };
        f.finish()?;
        Ok(question)
    }

    /// The specific force.
    ///
    /// # Errors
    /// `idle_power`, when it is not below the motor's; the power, when no metal resists like that;
    /// `depth_of_cut`, when it goes to the middle of the bar; `tool.rake_angle`, where the force is
    /// not known for it.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (mut provenance, mut cautions) = (Provenance::default(), Vec::new());
        let power = self.cutting_power(&mut provenance, &mut cautions)?;
        let mean = speed::mean_diameter(self.diameter, self.depth_of_cut)?;
        let spindle_speed = self.pace.at(self.diameter);
        let main = force_of_power(power, speed::cutting_speed(spindle_speed, mean));
        let angle = self.tool.cutting_edge_angle();
        let chip = chip_section(self.depth_of_cut, self.feed, angle);
        // Without a material the force of 1000 MPa stands in: it falls out again.
        let stand_in;
        let (material, compared) = match &self.kept {
            Kept::Material(material) => (material.as_ref(), true),
            Kept::Exponent(exponent) => {
                stand_in = Material::own(SpecificCuttingForce::computed_trade(1000.0), *exponent);
                (&stand_in, false)
            }
        };
        let mut entered = Provenance::default();
        let law = advice::force::tool_law(material, &self.tool, &mut entered)?;
        // What stood in is no source, and the normal ratio does not enter the main force.
        for line in entered.sources() {
            if (compared || line.what != "specific cutting force")
                && line.what != "normal force over main force"
            {
                provenance.record(
                    line.what.clone(),
                    &line.value,
                    line.source.clone(),
                    line.standing,
                );
            }
        }
        let exponent = law.law.exponent;
        let measured = law_of_cut(
            main,
            exponent,
            self.depth_of_cut,
            self.feed,
            angle,
            self.tool.corner_radius(),
        );
        let ratio = measured.specific_force.mpa() / law.law.specific_force.mpa();
        let specific_force =
            SpecificCuttingForce::from_trade(material.specific_force().value.mpa() * ratio)
                .map_err(|error| self.implausible(power, &error))?;
        if compared {
            cautions.extend(advice::measured_force::against_the_table(
                ratio,
                &mut provenance,
            ));
        }
        cautions.push(Caution::new(
            Severity::Note,
            "one_cut_one_bar",
            "It holds for this bar, this tool and about this thickness of chip; measure several cuts and take the mean.",
        ));
        Ok(Answer {
            specific_force,
            exponent,
            specific_force_at_chip: specific_force_of_chip(main, chip),
            chip_thickness: chip.thickness,
            main_force: main,
            cutting_power: power,
            against_the_table: compared.then(|| ForceFactor::computed_trade(ratio)),
            cautions,
            provenance,
        })
    }

    fn cutting_power(
        &self,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) -> Result<Power, Error> {
        let (motor, idle, efficiency) = match self.measured {
            Measured::CuttingPower(power) => return Ok(power),
            Measured::MotorPower {
                motor_power,
                idle_power,
                efficiency,
            } => (motor_power, idle_power, efficiency),
        };
        let none = Power::computed_trade(0.0);
        let power = power_above_idle(motor, idle.unwrap_or(none), efficiency)
            .map_err(|error| if idle.is_some() { error } else { no_power() })?;
        let share = idle.map(|idle| 1.0 - idle.kw() / motor.kw());
        cautions.extend(advice::measured_force::share(share, provenance));
        Ok(power)
    }

    #[cold]
    fn implausible(&self, power: Power, error: &Error) -> Error {
        let field = match self.measured {
            Measured::CuttingPower(_) => "cutting_power",
            Measured::MotorPower { .. } => "motor_power",
        };
        Error::new(
            ErrorKind::OutOfRange,
            field,
            format!(
                "{power} at the cut, which makes a specific force of {}",
                error.given()
            ),
            error.expected(),
            "check the reading and its unit, and depth, feed and speed of the cut",
        )
    }
}

#[cold]
fn no_power() -> Error {
    Error::new(
        ErrorKind::OutOfRange,
        "motor_power",
        "no power",
        "the power of the motor in the cut, above zero",
        "measure it while the tool cuts",
    )
}

fn measured(f: &Fields<'_>) -> Result<Measured, Error> {
    let at_cut = f.quantity("cutting_power")?;
    let motor = f.quantity("motor_power")?;
    let idle = f.quantity("idle_power")?;
    let efficiency = f.quantity::<Efficiency>("efficiency")?;
    match (at_cut, motor) {
        (Some(power), None) => {
            for (name, given) in [
                ("idle_power", idle.is_some()),
                ("efficiency", efficiency.is_some()),
            ] {
                if given {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path(name),
                        format!("{name} beside cutting_power"),
                        "cutting_power alone: idle power and losses are off already",
                        "strike the field, or give motor_power instead",
                    ));
                }
            }
            Ok(Measured::CuttingPower(power))
        }
        (None, Some(motor_power)) => Ok(Measured::MotorPower {
            motor_power,
            idle_power: idle,
            efficiency: efficiency.ok_or_else(|| {
                f.missing(
                    "efficiency",
                    "the efficiency from motor to spindle, such as 0.75: the answer goes with it",
                )
            })?,
        }),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("motor_power"),
            "both cutting_power and motor_power",
            "one of the two",
            "keep the one that was measured",
        )),
        (None, None) => Err(f.missing(
            "cutting_power",
            "a measured power: cutting_power, or motor_power with idle_power and efficiency",
        )),
    }
}

fn kept(f: &Fields<'_>) -> Result<Kept, Error> {
    match (
        f.item("material", Material::read)?,
        f.quantity::<ForceExponent>("exponent")?,
    ) {
        (Some(material), None) => Ok(Kept::Material(Box::new(material))),
        (None, Some(exponent)) => Ok(Kept::Exponent(exponent)),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("exponent"),
            "both material and exponent",
            "one of the two",
            "write the exponent into the material: { \"like\": .., \"exponent\": .. }",
        )),
        (None, None) => Err(f.missing(
            "material",
            "the material, for its exponent and to compare; or an exponent",
        )),
    }
}
