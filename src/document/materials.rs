//! The materials of the catalogue.

use serde::Serialize;

use crate::error::Error;
use crate::quantity::fields::Tree;
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
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Each with its figures, their sources and standing.
    pub materials: Vec<Material>,
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
        Answer {
            materials: Material::search(self.like.as_deref().unwrap_or_default()),
        }
    }
}
