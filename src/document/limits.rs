//! The limits of a class, of deviations or of a general tolerance.

use serde::Serialize;

use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::{Diameter, LowerDeviation, Tolerance, UpperDeviation};
use crate::standards::general_tolerance::GeneralClass;
use crate::standards::limit_deviations::LimitDeviations;
use crate::standards::limits::Feature;
use crate::standards::stated_limits::Stated;
use crate::standards::tolerance_class::ToleranceClass;

const FIELDS: &[&str] = &[
    "nominal",
    "class",
    "upper_deviation",
    "lower_deviation",
    "plus_minus",
    "general",
];

/// A nominal size, and how far off it may be.
///
/// ```
/// use turnwright::document::limits::Question;
/// let answer = Question::of_class("40 mm".parse()?, "h6".parse()?)?.answer()?;
/// assert_eq!(answer.smallest, "39.984 mm".parse()?);
/// assert_eq!(answer.middle, "39.992 mm".parse()?);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    nominal: Diameter,
    stated: Stated,
}

/// The limits.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Nominal size.
    pub nominal: Diameter,
    /// The class, where one was asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub class: Option<ToleranceClass>,
    /// Shaft or hole, where a class says so.
    #[serde(rename = "of", skip_serializing_if = "Option::is_none")]
    pub feature: Option<Feature>,
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
    /// Middle of the zone.
    pub middle: Diameter,
    /// The table it comes from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A class such as h7 or H7.
    ///
    /// # Errors
    /// As [`ToleranceClass::limits`].
    pub fn of_class(nominal: Diameter, class: ToleranceClass) -> Result<Self, Error> {
        let stated = Stated::of_class(nominal, class)?;
        Ok(Self { nominal, stated })
    }

    /// Deviations of the asker's own.
    ///
    /// # Errors
    /// `nominal`, when a limit would be no size.
    pub fn of_deviations(nominal: Diameter, deviations: LimitDeviations) -> Result<Self, Error> {
        let stated = Stated::of_deviations(nominal, deviations)?;
        Ok(Self { nominal, stated })
    }

    /// A class of general tolerances.
    ///
    /// # Errors
    /// `nominal`, outside of the table.
    pub fn of_general(nominal: Diameter, class: GeneralClass) -> Result<Self, Error> {
        let stated = Stated::general(nominal, class)?;
        Ok(Self { nominal, stated })
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let nominal = f.need_quantity("nominal")?;
        let stated = Stated::take(&f, Some(nominal))?;
        f.finish()?;
        Ok(Self { nominal, stated })
    }

    /// Deviations, sizes, width and middle.
    ///
    /// # Errors
    /// None for what [`Self::of_class`] and its like accepted.
    pub fn answer(&self) -> Result<Answer, Error> {
        let limits = self.stated.limits;
        let deviations = limits.deviations(self.nominal)?;
        let mut provenance = Provenance::default();
        self.stated.record(&mut provenance);
        let class = self.stated.class();
        Ok(Answer {
            nominal: self.nominal,
            class,
            feature: class.map(ToleranceClass::feature),
            upper_deviation: deviations.upper(),
            lower_deviation: deviations.lower(),
            largest: limits.largest(),
            smallest: limits.smallest(),
            tolerance: limits.tolerance(),
            middle: limits.middle(),
            provenance,
        })
    }
}
