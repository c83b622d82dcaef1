//! The quantities that questions and calls take: from where to where, in which units, and by which numbers
//! C knows them.

use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::error::Error;
use crate::quantity::fields::Tree;
use crate::quantity::serial::Written;
use crate::quantity::unit::{Unit, Units};
use crate::quantity::{Row, rows};

/// Which quantities are asked for.
///
/// ```
/// use turnwright::document::quantities::Question;
/// let found = Question::new().with_like("corner radius").answer();
/// assert_eq!(found.quantities[0].row().name(), "corner_radius");
/// ```
#[derive(Debug, Clone, Default)]
pub struct Question {
    like: Option<String>,
    units: Units,
}

/// The quantities found.
#[derive(Debug, Clone, serde::Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Each with its range and its units.
    pub quantities: Vec<Entry>,
}

/// A quantity as a program needs it that asks a person for one: its name, what it is, from where to where
/// it is plausible, an example, and its units, the one that it is stored in first.
#[derive(Debug, Clone)]
pub struct Entry {
    row: &'static Row,
    units: Units,
}

impl Entry {
    /// All that is written about the quantity.
    #[must_use]
    pub fn row(&self) -> &'static Row {
        self.row
    }
}

impl Serialize for Entry {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let row = self.row;
        let end = |value| Written { row, value };
        let example = match self.units {
            Units::Metric => row.example(),
            Units::Inch => row.inch_example(),
        };
        let mut out = s.serialize_map(None)?;
        out.serialize_entry("name", row.name())?;
        out.serialize_entry("number", &row.code())?;
        out.serialize_entry("what", row.what())?;
        out.serialize_entry("least", &end(row.least()))?;
        out.serialize_entry("largest", &end(row.largest()))?;
        out.serialize_entry("or_zero", &(row.allows_zero() && row.least() > 0.0))?;
        match example.parse::<f64>() {
            Ok(number) => out.serialize_entry("example", &number)?,
            Err(_) => out.serialize_entry("example", example)?,
        }
        out.serialize_entry("units", &Listed(row.kind().units()))?;
        out.end()
    }
}

struct Listed(&'static [Unit]);

impl Serialize for Listed {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        #[derive(serde::Serialize)]
        struct Listing {
            unit: &'static str,
            number: i32,
        }
        s.collect_seq(self.0.iter().map(|unit| Listing {
            unit: unit.text(),
            number: unit.code(),
        }))
    }
}

impl Question {
    /// All quantities.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Those with this text in their name or in what they are.
    #[must_use]
    pub fn with_like(mut self, like: impl Into<String>) -> Self {
        self.like = Some(like.into());
        self
    }

    /// With examples in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            like: f.text("like")?.map(str::to_owned),
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// The quantities found; none when no name holds the text.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let like = self.like.as_deref().unwrap_or_default().to_lowercase();
        let holds = |row: &Row| {
            row.name().contains(&like)
                || row.name().replace('_', " ").contains(&like)
                || row.what().to_lowercase().contains(&like)
        };
        let found = rows().iter().filter(|row| holds(row));
        Answer {
            quantities: found
                .map(|row| Entry {
                    row,
                    units: self.units,
                })
                .collect(),
        }
    }
}
