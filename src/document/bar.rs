//! How far the bar bends.

use serde::Serialize;

use crate::advice::support;
use crate::error::{Error, ErrorKind};
use crate::physics::bar::{self, Bar};
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::{
    Deflection, Diameter, DiameterError, Overhang, PassiveForce, WorkLength, YoungsModulus,
};
use crate::shop::holding::Holding;
use crate::shop::material::Material;

/// A bar in its holding, and the force that pushes it away from the tool.
///
/// A stiffness that is left out is rigid.
///
/// ```
/// use turnwright::{
///     document::bar::Question, physics::bar::Bar, Diameter, Holding, HoldingKind, Overhang, PassiveForce,
///     WorkLength, YoungsModulus,
/// };
/// let bar = Bar::new(YoungsModulus::from_gpa(210.0)?, Diameter::from_mm(20.0)?, Overhang::from_mm(100.0)?);
/// let answer = Question::new(bar, Holding::new(HoldingKind::Chuck), PassiveForce::from_newton(100.0)?)
///     .with_at(WorkLength::from_mm(100.0)?)
///     .answer()?;
/// assert!((answer.deflection.map_or(0.0, |d| d.mm()) - 0.0202).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    bar: Bar,
    holding: Holding,
    force: PassiveForce,
    at: Option<WorkLength>,
    stations: Vec<WorkLength>,
    provenance: Provenance,
}

/// The deflection at one station of a tool that stands there.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct Station {
    /// From the jaws.
    pub at: WorkLength,
    /// Of the bar, away from the tool.
    pub deflection: Deflection,
    /// Twice as much.
    pub diameter_error: DiameterError,
}

/// The station where the bar bends most.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct Worst {
    /// From the jaws.
    pub at: WorkLength,
    /// Of the bar, away from the tool.
    pub deflection: Deflection,
}

/// How far the bar bends.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// At the place asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection: Option<Deflection>,
    /// At each station asked for, the tool standing there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stations: Vec<Station>,
    /// Where it bends most, wherever the tool stands.
    pub worst: Worst,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A bar, its holding and the force.
    #[must_use]
    pub fn new(bar: Bar, holding: Holding, force: PassiveForce) -> Self {
        Self {
            bar,
            holding,
            force,
            at: None,
            stations: Vec::new(),
            provenance: Provenance::default(),
        }
    }

    /// With a place to look at, from the jaws.
    #[must_use]
    pub fn with_at(mut self, at: WorkLength) -> Self {
        self.at = Some(at);
        self
    }

    /// With stations to look at, from the jaws.
    #[must_use]
    pub fn with_stations(mut self, stations: Vec<WorkLength>) -> Self {
        self.stations = stations;
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let mut provenance = Provenance::default();
        let modulus = modulus(&f, &mut provenance)?;
        let question = Self {
            bar: section(&f, modulus)?,
            holding: f.need_item(
                "holding",
                "the holding: \"chuck\" or \"chuck_and_centre\"",
                Holding::read,
            )?,
            force: f.need_quantity("force")?,
            at: f.quantity("at")?,
            stations: f.quantities("stations")?.unwrap_or_default(),
            provenance,
        };
        f.later(
            "density",
            "the critical speed of the bar",
            "leave it out: this version reckons deflection",
        )?;
        f.finish()?;
        Ok(question)
    }

    /// The deflections.
    ///
    /// # Errors
    /// `at` or `stations`, when a place lies beyond the bar.
    pub fn answer(&self) -> Result<Answer, Error> {
        let support = support::support_of(self.holding.kind());
        let springs = support::as_given(&self.holding);
        let at = |place: WorkLength, field: &str| {
            bar::deflection(&self.bar, support, &springs, self.force, place)
                .map_err(|error| error.at(field))
        };
        let stations = self
            .stations
            .iter()
            .enumerate()
            .map(|(number, place)| {
                let deflection = at(*place, &format!("stations[{number}]"))?;
                Ok(Station {
                    at: *place,
                    deflection,
                    diameter_error: deflection.diameter_error(),
                })
            })
            .collect::<Result<Vec<_>, Error>>()?;
        let end = WorkLength::computed_trade(self.bar.overhang().mm());
        let first = WorkLength::computed_trade(end.mm() * 1e-6);
        let (place, deflection) =
            bar::worst_station(&self.bar, &springs, support, self.force, first, end)?;
        Ok(Answer {
            deflection: self.at.map(|place| at(place, "at")).transpose()?,
            stations,
            worst: Worst {
                at: place,
                deflection,
            },
            provenance: self.provenance.clone(),
        })
    }
}

/// Young's modulus, given or of a material.
pub(super) fn modulus(f: &Fields<'_>, provenance: &mut Provenance) -> Result<YoungsModulus, Error> {
    match (
        f.quantity("youngs_modulus")?,
        f.item("material", Material::read)?,
    ) {
        (Some(given), None) => Ok(given),
        (None, Some(material)) => material
            .youngs_modulus()
            .map(|e| e.open("Young's modulus", provenance))
            .ok_or_else(|| {
                Error::new(
                    ErrorKind::MissingField,
                    f.path("youngs_modulus"),
                    "a material without a Young's modulus",
                    "a Young's modulus",
                    "add \"youngs_modulus\" to the material",
                )
            }),
        (None, None) => Err(f.missing("youngs_modulus", "a Young's modulus, or a material")),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("youngs_modulus"),
            "both youngs_modulus and material",
            "one of the two",
            "to correct a material's modulus write { \"like\": \"<key>\", \"youngs_modulus\": .. }",
        )),
    }
}

/// The one section that this version takes.
pub(super) fn section(f: &Fields<'_>, modulus: YoungsModulus) -> Result<Bar, Error> {
    struct Section {
        diameter: Diameter,
        length: Overhang,
        bore: Option<Diameter>,
    }
    let sections = f.need_item(
        "sections",
        "the sections of the bar: [{ diameter, length }]",
        |tree, path| {
            let sections = list(tree, path, |tree, path| {
                let f = Fields::of(tree, path, "a section")?;
                let section = Section {
                    diameter: f.need_quantity("diameter")?,
                    length: f.need_quantity("length")?,
                    bore: f.quantity("bore")?,
                };
                f.later(
                    "end_diameter",
                    "a conical section",
                    "give the thinner diameter for the whole section",
                )?;
                f.finish()?;
                Ok(section)
            })?;
            Ok(sections)
        },
    )?;
    match sections.as_slice() {
        [one] => {
            let bar = Bar::new(modulus, one.diameter, one.length);
            match one.bore {
                None => Ok(bar),
                Some(bore) => bar
                    .with_bore(bore)
                    .map_err(|error| error.at(&format!("{}[0].bore", f.path("sections")))),
            }
        }
        [] => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("sections"),
            "no section",
            "the section of the bar that stands out of the jaws",
            "write [{ \"diameter\": \"20 mm\", \"length\": \"100 mm\" }]",
        )),
        _ => Err(Error::not_offered(
            &f.path("sections"),
            "a stepped bar",
            "give one section: the thinnest diameter over the whole length is on the safe side",
        )),
    }
}
