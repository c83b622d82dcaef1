//! The limits of a size: of a tolerance class, of deviations, of general tolerances.
//!
//! | field | what |
//! |---|---|
//! | `nominal` | the nominal size |
//! | `class` | such as `"h7"` (shaft) or `"H7"` (hole); or instead |
//! | `upper_deviation`, `lower_deviation` | both, with their signs; or instead |
//! | `plus_minus` | the tolerance to each side; or instead |
//! | `general` | `"fine"`, `"medium"`, `"coarse"` or `"very_coarse"` |

use serde::Serialize;

use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::{Diameter, LowerDeviation, Tolerance, UpperDeviation};
use crate::standards::limits::Limits;
use crate::standards::tolerance_class::ToleranceClass;

/// A nominal size and its limits.
///
/// ```
/// use turnwright::document::limits::Question;
/// let answer = Question::of_class("30 mm".parse()?, "h8".parse()?)?.answer()?;
/// assert_eq!(answer.smallest.mm(), 29.967);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    nominal: Diameter,
    limits: Limits,
    provenance: Provenance,
}

/// The limits.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Largest size less nominal size (ISO 286: es, ES).
    pub upper_deviation: UpperDeviation,
    /// Smallest size less nominal size (ISO 286: ei, EI).
    pub lower_deviation: LowerDeviation,
    /// The largest size.
    pub largest: Diameter,
    /// The smallest size.
    pub smallest: Diameter,
    /// The middle of the zone.
    pub middle: Diameter,
    /// The width of the zone.
    pub tolerance: Tolerance,
    /// Where the table comes from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// Limits about a nominal size.
    #[must_use]
    pub fn new(nominal: Diameter, limits: Limits) -> Self {
        Self {
            nominal,
            limits,
            provenance: Provenance::default(),
        }
    }

    /// The limits of a tolerance class.
    ///
    /// # Errors
    /// `nominal`, where the standard has no such class.
    pub fn of_class(nominal: Diameter, class: ToleranceClass) -> Result<Self, Error> {
        let found = class.limits(nominal)?;
        let mut question = Self::new(nominal, found.value);
        record(&mut question.provenance, class, nominal, &found);
        Ok(question)
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let nominal = f.need_quantity("nominal")?;
        let (limits, class) = Limits::read_named(&f, nominal)?;
        f.finish()?;
        let mut question = Self::new(nominal, limits);
        if let Some((class, found)) = class {
            record(&mut question.provenance, class, nominal, &found);
        }
        Ok(question)
    }

    /// The limits, with their deviations.
    ///
    /// # Errors
    /// `nominal`, farther from the limits than any deviation is.
    pub fn answer(&self) -> Result<Answer, Error> {
        let deviations = self.limits.deviations_from(self.nominal)?;
        Ok(Answer {
            upper_deviation: deviations.upper(),
            lower_deviation: deviations.lower(),
            largest: self.limits.largest(),
            smallest: self.limits.smallest(),
            middle: self.limits.middle(),
            tolerance: self.limits.tolerance(),
            provenance: self.provenance.clone(),
        })
    }
}

/// Notes whence a class has its limits.
pub(super) fn record(
    provenance: &mut Provenance,
    class: ToleranceClass,
    nominal: Diameter,
    found: &crate::provenance::Sourced<Limits>,
) {
    let limits = format!("{} to {}", found.value.smallest(), found.value.largest());
    provenance.record(
        &format!("limits of {class} at {nominal}"),
        &limits,
        found.source,
        found.standing,
    );
}
