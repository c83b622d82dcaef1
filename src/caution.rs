//! What a person must be told beside a figure.

use std::fmt;

use crate::error::readable;

/// How serious a [`Caution`] is. Serious words are few, so that they stand out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Severity {
    /// Worth knowing: the answer's limits.
    Note,
    /// The part, the tool or the result is at risk.
    Warning,
    /// A person can be hurt.
    Danger,
}

/// One caution: a code for programs, a severity, and words for a person.
///
/// ```
/// use turnwright::{Caution, Severity};
/// let c = Caution::new(Severity::Danger, "chuck_key", "Key out of the chuck.");
/// assert_eq!(c.code(), "chuck_key");
/// assert_eq!(c.to_string(), "DANGER: Key out of the chuck.");
/// ```
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Caution {
    code: &'static str,
    severity: Severity,
    text: String,
}

impl Caution {
    /// A caution of `severity`; `code` is a stable snake_case name.
    #[must_use]
    pub fn new(severity: Severity, code: &'static str, text: impl Into<String>) -> Self {
        Self {
            code,
            severity,
            text: readable(text.into()),
        }
    }

    /// The stable name of this caution.
    #[must_use]
    pub fn code(&self) -> &'static str {
        self.code
    }

    /// How serious it is.
    #[must_use]
    pub fn severity(&self) -> Severity {
        self.severity
    }

    /// The words for a person.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let word = match self.severity {
            Severity::Note => "note",
            Severity::Warning => "Warning",
            Severity::Danger => "DANGER",
        };
        write!(f, "{word}: {}", self.text)
    }
}
