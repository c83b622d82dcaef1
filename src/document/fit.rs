//! The fit of a hole and a shaft.
//!
//! | field | what |
//! |---|---|
//! | `nominal` | the nominal size of both |
//! | `hole` | a class such as `"H7"`, or `[smallest, largest]` |
//! | `shaft` | a class such as `"g6"`, or `[smallest, largest]` |

use serde::Serialize;

use super::limits::record;
use crate::error::{Error, ErrorKind};
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::{Clearance, Diameter, LowerDeviation, UpperDeviation};
use crate::standards::fit::{Fit, FitKind};
use crate::standards::limits::{Feature, Limits};
use crate::standards::tolerance_class::ToleranceClass;

/// A hole and a shaft of one nominal size.
///
/// ```
/// use turnwright::{document::fit::Question, standards::fit::FitKind};
/// let answer = Question::of_classes("30 mm".parse()?, "H7".parse()?, "g6".parse()?)?.answer()?;
/// assert_eq!((answer.kind, answer.least_clearance.mm()), (FitKind::Clearance, 0.007));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    nominal: Diameter,
    hole: Limits,
    shaft: Limits,
    provenance: Provenance,
}

/// One part of a fit.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Part {
    /// Largest size less nominal size.
    pub upper_deviation: UpperDeviation,
    /// Smallest size less nominal size.
    pub lower_deviation: LowerDeviation,
    /// The largest size.
    pub largest: Diameter,
    /// The smallest size.
    pub smallest: Diameter,
}

/// What the two make.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The hole.
    pub hole: Part,
    /// The shaft.
    pub shaft: Part,
    /// The least clearance; negative, the largest interference.
    pub least_clearance: Clearance,
    /// The largest clearance; negative, the least interference.
    pub largest_clearance: Clearance,
    /// Clearance, transition or interference.
    pub kind: FitKind,
    /// Where the tables come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A hole and a shaft by their limits.
    #[must_use]
    pub fn new(nominal: Diameter, hole: Limits, shaft: Limits) -> Self {
        Self {
            nominal,
            hole,
            shaft,
            provenance: Provenance::default(),
        }
    }

    /// A hole and a shaft by their classes.
    ///
    /// # Errors
    /// `hole` or `shaft`, when it is a class of the other; `nominal`, where the standard has no such
    /// class.
    pub fn of_classes(
        nominal: Diameter,
        hole: ToleranceClass,
        shaft: ToleranceClass,
    ) -> Result<Self, Error> {
        let hole = kind_of(hole, Feature::Hole).map_err(|error| error.at("hole"))?;
        let shaft = kind_of(shaft, Feature::Shaft).map_err(|error| error.at("shaft"))?;
        let (in_hole, of_shaft) = (hole.limits(nominal)?, shaft.limits(nominal)?);
        let mut question = Self::new(nominal, in_hole.value, of_shaft.value);
        record(&mut question.provenance, hole, nominal, &in_hole);
        record(&mut question.provenance, shaft, nominal, &of_shaft);
        Ok(question)
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let nominal = f.need_quantity("nominal")?;
        let mut provenance = Provenance::default();
        let mut part = |name: &'static str, feature: Feature| {
            f.need_item(
                name,
                "a class, or the smallest and the largest size",
                |tree, path| {
                    let Tree::Text(text) = tree else {
                        return Limits::read(tree, path);
                    };
                    // A class alone, as fits are written; everything else is limits written out.
                    if text.trim().contains(char::is_whitespace) {
                        return Limits::read(tree, path);
                    }
                    let class = text
                        .parse::<ToleranceClass>()
                        .and_then(|class| kind_of(class, feature))
                        .map_err(|error| error.at(path))?;
                    let found = class.limits(nominal)?;
                    record(&mut provenance, class, nominal, &found);
                    Ok(found.value)
                },
            )
        };
        let (hole, shaft) = (part("hole", Feature::Hole)?, part("shaft", Feature::Shaft)?);
        f.finish()?;
        Ok(Self {
            nominal,
            hole,
            shaft,
            provenance,
        })
    }

    /// What the two make.
    ///
    /// # Errors
    /// `nominal`, farther from the limits than any deviation is.
    pub fn answer(&self) -> Result<Answer, Error> {
        let fit = Fit::of(self.hole, self.shaft);
        let part = |limits: Limits| {
            let deviations = limits.deviations_from(self.nominal)?;
            Ok::<_, Error>(Part {
                upper_deviation: deviations.upper(),
                lower_deviation: deviations.lower(),
                largest: limits.largest(),
                smallest: limits.smallest(),
            })
        };
        Ok(Answer {
            hole: part(self.hole)?,
            shaft: part(self.shaft)?,
            least_clearance: fit.least_clearance(),
            largest_clearance: fit.largest_clearance(),
            kind: fit.kind(),
            provenance: self.provenance.clone(),
        })
    }
}

/// The class, if it is one of a hole or a shaft as asked.
fn kind_of(class: ToleranceClass, feature: Feature) -> Result<ToleranceClass, Error> {
    if class.feature() == feature {
        return Ok(class);
    }
    let meant = class.mirrored().map_or_else(
        || String::from("small letters are shafts, capitals holes"),
        |meant| format!("small letters are shafts, capitals holes: did you mean \"{meant}\"?"),
    );
    Err(Error::new(
        ErrorKind::Contradiction,
        "class",
        format!("the class {class} of a {}", class.feature()),
        format!("a class of a {feature}"),
        meant,
    ))
}
