//! The centre hole for a work that a centre holds.
//!
//! | field | what |
//! |---|---|
//! | `diameter` | of the work |
//! | `end_diameter?` | of its finished end; left out: that of the work |
//! | `form?` | `"A"` (a plain cone) or `"B"` (with a guard chamfer); left out: B where the hole stays, else A |
//! | `mass?` | of the work, half of which lies on the centre |
//! | `force?` | of the cut, across, as far as this centre carries it |
//! | `may_stay?` | false where the finished part may show no hole: the answer then holds the stub to leave for it |
//! | `cutting_speed?` | of turning this material with high-speed steel, for the spindle speed |
//! | `lathe?` | whose steps and limits the spindle speed keeps |

use serde::Serialize;

use crate::advice::centre_hole::{self, HoleForWork};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::loads::load_on_centre;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{
    CuttingSpeed, Diameter, Mass, MeanPressure, PassiveForce, Quantity, SpindleSpeed, WorkLength,
    round_size,
};
use crate::shop::lathe::Lathe;
use crate::standards::centre_hole::Form;

/// A work that is to run on a centre.
///
/// ```
/// use turnwright::document::centre_hole::Question;
/// // A bar of 40 mm that weighs 12 kg.
/// let answer = Question::new("40 mm".parse()?).with_mass("12 kg".parse()?).answer()?;
/// assert_eq!(answer.pilot_diameter.to_string(), "3.15 mm");
/// assert_eq!(answer.countersink_diameter.to_string(), "6.7 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    diameter: Diameter,
    end_diameter: Option<Diameter>,
    form: Option<Form>,
    mass: Option<Mass>,
    force: Option<PassiveForce>,
    may_stay: Option<bool>,
    cutting_speed: Option<CuttingSpeed>,
    lathe: Option<Lathe>,
    units: Units,
}

/// The centre hole.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// A plain cone, or one with a guard.
    pub form: Form,
    /// Diameter of the pilot: the size by which the drill is called.
    pub pilot_diameter: Diameter,
    /// Largest diameter of the cone of 60 degrees.
    pub countersink_diameter: Diameter,
    /// Largest diameter of the guard chamfer, of form B.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub guard_diameter: Option<Diameter>,
    /// How deep to drill at least, from the face.
    pub depth: WorkLength,
    /// The spindle speed for drilling, where the cutting speed of turning is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spindle_speed: Option<SpindleSpeed>,
    /// What the levers say for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lever: Option<String>,
    /// How long a stub to leave beyond the finished face, to be cut off last with the hole in it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stub: Option<WorkLength>,
    /// Mean pressure of mass and force on the cone, where either is given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub mean_pressure: Option<MeanPressure>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    pub provenance: Provenance,
}

/// What a stub keeps of its face beyond the hole, to be cut off through full metal.
const BEYOND_THE_HOLE: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(2.0),
    "judgement, no source",
    Standing::Estimate,
);

const FIELDS: &[&str] = &[
    "diameter",
    "end_diameter",
    "form",
    "mass",
    "force",
    "may_stay",
    "cutting_speed",
    "lathe",
    "units",
];

impl Question {
    /// A work of this diameter.
    #[must_use]
    pub fn new(diameter: Diameter) -> Self {
        Self {
            diameter,
            end_diameter: None,
            form: None,
            mass: None,
            force: None,
            may_stay: None,
            cutting_speed: None,
            lathe: None,
            units: Units::Metric,
        }
    }

    crate::shop::setters! {
        /// With an end that is finished to another diameter.
        with_end_diameter end_diameter: Diameter;
        /// With this form of the hole.
        with_form form: Form;
        /// With the mass of the work, half of which lies on the centre.
        with_mass mass: Mass;
        /// With a force across that this centre carries.
        with_force force: PassiveForce;
        /// With the hole allowed to stay in the finished part, or not.
        with_may_stay may_stay: bool;
        /// With the cutting speed of turning with high-speed steel.
        with_cutting_speed cutting_speed: CuttingSpeed;
        /// With the lathe it is drilled on.
        with_lathe lathe: Lathe;
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f: Fields<'_> = super::fields_of(body, FIELDS)?;
        let question = Self {
            diameter: f.need_quantity("diameter")?,
            end_diameter: f.quantity("end_diameter")?,
            form: f.choice("form", &[("A", Form::A), ("B", Form::B)])?,
            mass: f.quantity("mass")?,
            force: f.quantity("force")?,
            may_stay: f.flag("may_stay")?,
            cutting_speed: f.quantity("cutting_speed")?,
            lathe: f.item("lathe", Lathe::read)?,
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// The centre hole.
    ///
    /// # Errors
    /// `end_diameter`, when it is larger than the work, or too small for any centre hole; `lathe`, when
    /// its slowest speed is too fast for the drill; `cutting_speed`, when a lathe is given without it.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = Provenance::default();
        let end = self.end_diameter.unwrap_or(self.diameter);
        if end > self.diameter {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "end_diameter",
                end.to_string(),
                format!("at most the diameter of the work, {}", self.diameter),
                "give the diameter of the end as it is finished",
            ));
        }
        let form = self.form.unwrap_or(match self.may_stay {
            Some(true) => Form::B,
            _ => Form::A,
        });
        let nothing = PassiveForce::computed_trade(0.0);
        let force = self.force.unwrap_or(nothing);
        let load = match (self.force, self.mass) {
            (None, None) => None,
            (_, Some(mass)) => Some(load_on_centre(force, mass)),
            (Some(force), None) => Some(force),
        };
        let found = centre_hole::for_work(form, self.diameter, end, load, &mut provenance)
            .ok_or_else(|| too_small(self.end_diameter, end))?;
        let hole = found.hole;
        let (spindle_speed, lever) = self.speed(&found, &mut provenance)?;
        let stub = (self.may_stay == Some(false)).then(|| {
            let beyond =
                provenance.open("what a stub keeps beyond its centre hole", &BEYOND_THE_HOLE);
            WorkLength::computed_trade(round_size(hole.drilling_depth().mm() + beyond.mm()))
        });
        Ok(Answer {
            form,
            pilot_diameter: hole.pilot(),
            countersink_diameter: hole.countersink(),
            guard_diameter: hole.guard(),
            depth: hole.drilling_depth(),
            spindle_speed,
            lever,
            stub,
            mean_pressure: found.pressure,
            cautions: self.cautions(&found, stub),
            provenance,
        })
    }

    /// The spindle speed for drilling, and its lever.
    fn speed(
        &self,
        found: &HoleForWork,
        provenance: &mut Provenance,
    ) -> Result<(Option<SpindleSpeed>, Option<String>), Error> {
        let Some(turning) = self.cutting_speed else {
            return match &self.lathe {
                None => Ok((None, None)),
                Some(_) => Err(Error::new(
                    ErrorKind::MissingField,
                    "cutting_speed",
                    "nothing, beside a lathe",
                    "the cutting speed of turning this material with high-speed steel",
                    "add \"cutting_speed\", or leave the lathe out",
                )),
            };
        };
        let ideal = centre_hole::drilling_speed(turning, found.hole.largest(), provenance);
        let Some(lathe) = &self.lathe else {
            return Ok((Some(ideal), None));
        };
        let most = lathe.speed_cap().map_or(ideal, |cap| cap.min(ideal));
        match centre_hole::step_up_to(lathe, most) {
            Some(step) => {
                let lever = lathe.step_name(step).map(str::to_owned);
                Ok((Some(step), lever))
            }
            None => Err(Error::new(
                ErrorKind::Impossible,
                "lathe",
                format!("no speed of {} or less", ideal.people(self.units)),
                "a speed slow enough for the centre drill",
                "drill it on a slower machine, or with a smaller drill",
            )),
        }
    }

    fn cautions(&self, found: &HoleForWork, stub: Option<WorkLength>) -> Vec<Caution> {
        let u = self.units;
        let mut cautions = vec![Caution::new(
            Severity::Note,
            "pilot_breaks",
            "The pilot is thin and breaks first: tailstock on the axis, barrel hardly out and locked, feed gently, oil, back \
             often, chips out.",
        )];
        if let (Some(pressure), false) = (found.pressure, found.bears) {
            cautions.push(Caution::new(
                Severity::Warning,
                "centre_pressure",
                format!(
                    "{} on the cone is more than a centre in grease bears, {}, and no larger centre hole goes into this end: a \
                     lighter cut, a steady, or a live centre that its maker rates for the load.",
                    pressure.people(u),
                    centre_hole::CONE_BEARS.value.people(u)
                ),
            ));
        }
        if let Some(stub) = stub {
            cautions.push(Caution::new(
                Severity::Note,
                "leave_a_stub",
                format!(
                    "Leave {} beyond the finished face for the hole, and cut it off last, with the work held where it is turned.",
                    stub.people(u)
                ),
            ));
        }
        cautions
    }
}

#[cold]
fn too_small(given: Option<Diameter>, end: Diameter) -> Error {
    Error::new(
        ErrorKind::Impossible,
        match given {
            Some(_) => "end_diameter",
            None => "diameter",
        },
        end.to_string(),
        "an end at least twice as wide as the smallest centre hole",
        "leave the end thicker while the centre holds it, or hold the work without a centre",
    )
}
