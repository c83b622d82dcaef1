//! The materials of the catalogue.

use serde::ser::{Serialize, SerializeMap, Serializer};

use crate::error::Error;
use crate::quantity::fields::Tree;
use crate::shop::figure::ToolMaterial;
use crate::shop::material::Material;

/// Which materials are asked for.
///
/// ```
/// use turnwright::document::materials::Question;
/// let steels = Question::new().with_like("11SMn").answer();
/// assert_eq!(steels.materials.len(), 2);
/// ```
#[derive(Debug, Clone, Default)]
pub struct Question {
    like: Option<String>,
}

/// The materials found.
#[derive(Debug, Clone, serde::Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Each with its figures, their sources and standing.
    pub materials: Vec<Entry>,
}

/// A material as the catalogue lists it: every figure with its source and standing.
#[derive(Debug, Clone)]
pub struct Entry(pub Material);

impl Serialize for Entry {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let m = &self.0;
        let mut out = s.serialize_map(None)?;
        out.serialize_entry("key", m.key())?;
        out.serialize_entry("names", m.names())?;
        out.serialize_entry("condition", m.condition())?;
        out.serialize_entry("specific_force", m.specific_force())?;
        out.serialize_entry("exponent", m.exponent())?;
        macro_rules! figures {
            ($($name:literal $figure:expr;)*) => { $(
                if let Some(figure) = $figure {
                    out.serialize_entry($name, figure)?;
                }
            )* };
        }
        figures! {
            "iso513_group" &m.group();
            "hardness_hb" m.hardness();
            "youngs_modulus" m.youngs_modulus();
            "density" m.density();
            "expansion" m.expansion();
            "specific_heat" m.specific_heat();
            "cutting_speed_high_speed_steel" m.speed_band(ToolMaterial::HighSpeedSteel);
            "cutting_speed_carbide" m.speed_band(ToolMaterial::Carbide);
            "built_up_edge" m.built_up_edge();
        }
        if !m.notes().is_empty() {
            out.serialize_entry("notes", m.notes())?;
        }
        out.end()
    }
}

impl Question {
    /// All materials.
    #[must_use]
    pub fn new() -> Self {
        Self::default()
    }

    /// Those with this text in their key or name.
    #[must_use]
    pub fn with_like(mut self, like: impl Into<String>) -> Self {
        self.like = Some(like.into());
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            like: f.text("like")?.map(str::to_owned),
        };
        f.finish()?;
        Ok(question)
    }

    /// The materials found; none when no name holds the text.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let found = Material::search(self.like.as_deref().unwrap_or_default());
        Answer {
            materials: found.into_iter().map(Entry).collect(),
        }
    }
}
