//! What a hole and a shaft leave between them.

use serde::Serialize;

use super::verdict::FAR;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::unit::Units;
use crate::quantity::{Clearance, Diameter, LowerDeviation, Quantity, Tolerance, UpperDeviation};
use crate::standards::fit::{Fit, FitKind, HoleLimits, ShaftLimits};
use crate::standards::limits::Feature;
use crate::standards::stated_limits::Stated;
use crate::standards::tolerance_class::ToleranceClass;

const FIELDS: &[&str] = &["nominal", "hole", "shaft"];

/// A nominal size, a hole and a shaft.
///
/// ```
/// use turnwright::document::fit::Question;
/// let question = Question::of_classes("30 mm".parse()?, "H7".parse()?, "g6".parse()?)?;
/// let answer = question.answer()?;
/// assert_eq!(answer.least_clearance, "0.007 mm".parse()?);
/// assert_eq!(answer.kind.name(), "clearance");
/// // A shaft's class for the hole:
/// assert!(Question::of_classes("30 mm".parse()?, "h7".parse()?, "g6".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    nominal: Diameter,
    hole: Stated,
    shaft: Stated,
    units: Units,
}

/// One of the two, with its limits.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Member {
    /// The class, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<ToleranceClass>,
    /// Largest size less nominal size.
    pub upper_deviation: UpperDeviation,
    /// Smallest size less nominal size.
    pub lower_deviation: LowerDeviation,
    /// Largest size.
    pub largest: Diameter,
    /// Smallest size.
    pub smallest: Diameter,
    /// Width of the zone.
    pub tolerance: Tolerance,
}

/// The fit.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Nominal size.
    pub nominal: Diameter,
    /// The hole.
    pub hole: Member,
    /// The shaft.
    pub shaft: Member,
    /// Between the smallest hole and the largest shaft; negative is interference.
    pub least_clearance: Clearance,
    /// Between the largest hole and the smallest shaft; negative is interference.
    pub largest_clearance: Clearance,
    /// Its kind.
    pub kind: FitKind,
    /// What a person must be told.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub cautions: Vec<Caution>,
    /// The tables it comes from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A hole and a shaft by their classes.
    ///
    /// # Errors
    /// `hole` and `shaft`, when the class is one of the other; else as [`ToleranceClass::limits`].
    pub fn of_classes(
        nominal: Diameter,
        hole: ToleranceClass,
        shaft: ToleranceClass,
    ) -> Result<Self, Error> {
        let of = |class: ToleranceClass, wanted: Feature| {
            let class = class.of_feature(wanted);
            class.map_err(|error| error.at(wanted.name()))
        };
        Ok(Self {
            nominal,
            hole: Stated::of_class(nominal, of(hole, Feature::Hole)?)?,
            shaft: Stated::of_class(nominal, of(shaft, Feature::Shaft)?)?,
            units: Units::Metric,
        })
    }

    /// A hole and a shaft by their limits.
    #[must_use]
    pub fn of_limits(nominal: Diameter, hole: HoleLimits, shaft: ShaftLimits) -> Self {
        Self {
            nominal,
            hole: Stated::of_sizes(hole.limits()),
            shaft: Stated::of_sizes(shaft.limits()),
            units: Units::Metric,
        }
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let nominal: Diameter = f.need_quantity("nominal")?;
        let member = |wanted: Feature| {
            f.need_item(
                wanted.name(),
                match wanted {
                    Feature::Hole => "the class of the hole such as \"H7\", or its limits",
                    Feature::Shaft => "the class of the shaft such as \"g6\", or its limits",
                },
                |tree, path| member(tree, path, nominal, wanted),
            )
        };
        let question = Self {
            nominal,
            hole: member(Feature::Hole)?,
            shaft: member(Feature::Shaft)?,
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// What is to be told where hole and shaft are hardly of one fit.
    fn far_apart(&self) -> Option<Caution> {
        let (hole, shaft) = (self.hole.limits.middle(), self.shaft.limits.middle());
        let apart = (hole.mm() - shaft.mm()).abs();
        (apart > FAR.value * hole.mm().max(shaft.mm())).then(|| {
            Caution::new(
                Severity::Warning,
                "another_part_or_unit",
                format!(
                    "The hole of {} and the shaft of {} differ by more than a tenth: are these the right parts, the \
                     right units?",
                    hole.people(self.units),
                    shaft.people(self.units)
                ),
            )
        })
    }

    /// The fit.
    ///
    /// # Errors
    /// When hole, shaft and nominal size are too far apart for one fit.
    pub fn answer(&self) -> Result<Answer, Error> {
        let fit = Fit::of(
            HoleLimits::new(self.hole.limits),
            ShaftLimits::new(self.shaft.limits),
        )?;
        let shown = |stated: &Stated, wanted: Feature| {
            let deviations = stated.limits.deviations(self.nominal);
            let deviations = deviations.map_err(|error| error.at(wanted.name()))?;
            Ok::<Member, Error>(Member {
                class: stated.class(),
                upper_deviation: deviations.upper(),
                lower_deviation: deviations.lower(),
                largest: stated.limits.largest(),
                smallest: stated.limits.smallest(),
                tolerance: stated.limits.tolerance(),
            })
        };
        let mut provenance = Provenance::default();
        self.hole.record(&mut provenance);
        self.shaft.record(&mut provenance);
        Ok(Answer {
            nominal: self.nominal,
            hole: shown(&self.hole, Feature::Hole)?,
            shaft: shown(&self.shaft, Feature::Shaft)?,
            least_clearance: fit.least_clearance(),
            largest_clearance: fit.largest_clearance(),
            kind: fit.kind(),
            cautions: self.far_apart().into_iter().collect(),
            provenance,
        })
    }
}

/// Two classes, as a drawing writes a fit.
fn pair(first: &str, second: &str) -> Result<[ToleranceClass; 2], Error> {
    Ok([first.parse()?, second.parse()?])
}

/// Hole or shaft: a class as text, or limits in any writing.
fn member(tree: &Tree, path: &str, nominal: Diameter, wanted: Feature) -> Result<Stated, Error> {
    if let Tree::Text(text) = tree
        && let Some((first, second)) = text.split_once('/')
        && let Ok(classes) = pair(first, second)
    {
        let of = |wanted: Feature| classes.into_iter().find(|class| class.feature() == wanted);
        return Err(Error::new(
            ErrorKind::Contradiction,
            path,
            format!("the two classes {text:?}"),
            format!("the class of the {wanted} alone"),
            match (of(Feature::Hole), of(Feature::Shaft)) {
                (Some(hole), Some(shaft)) => {
                    format!("write \"hole\": \"{hole}\" and \"shaft\": \"{shaft}\"")
                }
                _ => String::from(
                    "write the class of the hole, in capitals, and that of the shaft, each in its own field",
                ),
            },
        ));
    }
    let stated = match tree {
        Tree::Text(text) if text.trim_start().starts_with(char::is_alphabetic) => {
            let class = ToleranceClass::read(tree, path)?;
            // Before the table is asked: the wrong case is the first thing to be told.
            class.of_feature(wanted).map_err(|error| error.at(path))?;
            Stated::of_class(nominal, class)?
        }
        other => Stated::read_with(other, path, Some(nominal))?,
    };
    if let Some(class) = stated.class() {
        class.of_feature(wanted).map_err(|error| error.at(path))?;
    }
    if let Some(own) = stated.nominal.filter(|own| *own != nominal) {
        return Err(Error::new(
            ErrorKind::Contradiction,
            path,
            format!("{own} beside a nominal size of {nominal}"),
            "hole and shaft of one nominal size",
            "give one nominal size for both",
        ));
    }
    Ok(stated)
}
