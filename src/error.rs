//! What was wrong, with which value, what was expected and how to put it right.

use std::fmt;

/// The kind of trouble an [`Error`] reports.
///
/// Kinds are for programs; a person reads the four parts of the error.
///
/// ```
/// use turnwright::{Diameter, ErrorKind};
/// let error = "40".parse::<Diameter>().unwrap_err();
/// assert_eq!(error.kind(), ErrorKind::MissingUnit);
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[non_exhaustive]
pub enum ErrorKind {
    /// A number outside the range of its quantity.
    OutOfRange,
    /// A number that is not finite: NaN or infinite.
    NotFinite,
    /// Text that cannot be read as what it should be.
    Unreadable,
    /// A number without its unit.
    MissingUnit,
    /// A unit of another kind of quantity, or an unknown one.
    WrongUnit,
    /// A field that is needed and absent.
    MissingField,
    /// A field that does not exist there.
    UnknownField,
    /// A field given twice.
    DuplicateField,
    /// A name (of a material, a question, a member of a closed set) that is not known.
    UnknownName,
    /// Values that are each sound but contradict one another.
    Contradiction,
    /// A sound question that this machine, tool or part cannot meet.
    Impossible,
    /// Something this version does not offer, refused by name.
    NotOffered,
    /// A mistake of the caller of the C interface: a null pointer, a bad structure.
    Misuse,
    /// A mistake of this library.
    Internal,
}

/// One error: the field, the value given, what was expected, and the remedy.
///
/// `Display` is one sentence that ends with the remedy. The same four parts reach a C caller in
/// `tw_error`.
///
/// ```
/// use turnwright::Diameter;
/// let error = Diameter::from_mm(-3.0).unwrap_err();
/// assert_eq!(error.field(), "diameter");
/// assert_eq!(error.given(), "-3 mm");
/// assert!(error.expected().contains("0.1 mm to 5000 mm"));
/// assert!(!error.remedy().is_empty());
/// ```
#[derive(Clone, PartialEq, Eq, thiserror::Error)]
#[error("{}", .parts)]
pub struct Error {
    kind: ErrorKind,
    parts: Box<Parts>,
}

#[derive(Debug, Clone, PartialEq, Eq)]
struct Parts {
    field: String,
    given: String,
    expected: String,
    remedy: String,
}

impl fmt::Display for Parts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if !self.field.is_empty() {
            write!(f, "{}: ", self.field)?;
        }
        if !self.given.is_empty() {
            write!(f, "{} given; ", self.given)?;
        }
        let end = if self.remedy.ends_with('?') { "" } else { "." };
        write!(f, "expected {}; {}{end}", self.expected, self.remedy)
    }
}

impl fmt::Debug for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}: {}", self.kind, self.parts)
    }
}

impl Error {
    /// Takes all four parts, so that none can be forgotten.
    #[cold]
    #[inline(never)]
    pub(crate) fn new(
        kind: ErrorKind,
        field: impl Into<String>,
        given: impl Into<String>,
        expected: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Self {
        Self {
            kind,
            parts: Box::new(Parts {
                field: field.into(),
                given: given.into(),
                expected: expected.into(),
                remedy: remedy.into(),
            }),
        }
    }

    /// A refusal by name of what this version does not offer.
    #[cold]
    pub(crate) fn not_offered(field: &str, what: &str, remedy: &str) -> Self {
        Self::new(
            ErrorKind::NotOffered,
            field,
            what,
            "what this version offers",
            remedy,
        )
    }

    /// A mistake of this library, told as one.
    #[cold]
    pub(crate) fn internal(what: &str) -> Self {
        Self::new(
            ErrorKind::Internal,
            "",
            what,
            "this never to happen",
            "this is a mistake of the library: please report it with the input",
        )
    }

    /// The same error, told of the field at `path` in place of the one it named.
    #[cold]
    pub(crate) fn at(mut self, path: &str) -> Self {
        self.parts.field = path.to_owned();
        self
    }

    /// The same error with another remedy.
    #[cold]
    pub(crate) fn with_remedy(mut self, remedy: String) -> Self {
        self.parts.remedy = remedy;
        self
    }

    /// The same error with the path of the enclosing item put before its field (`corner_radius`
    /// read inside `tool` becomes `tool.corner_radius`).
    #[cold]
    pub(crate) fn inside(mut self, path: &str) -> Self {
        self.parts.field = match (path.is_empty(), self.parts.field.is_empty()) {
            (true, _) => self.parts.field,
            (false, true) => path.to_owned(),
            (false, false) => format!("{path}.{}", self.parts.field),
        };
        self
    }

    /// The same error in other words for what was given, expected and would help.
    #[cold]
    pub(crate) fn retold(mut self, told: impl Fn(&str) -> String) -> Self {
        let Parts {
            given,
            expected,
            remedy,
            ..
        } = &mut *self.parts;
        for words in [given, expected, remedy] {
            *words = told(words);
        }
        self
    }

    /// The kind of trouble.
    #[must_use]
    pub fn kind(&self) -> ErrorKind {
        self.kind
    }

    /// Which field or quantity, as its path in a document (`tool.corner_radius`).
    #[must_use]
    pub fn field(&self) -> &str {
        &self.parts.field
    }

    /// The value that was given, as text.
    #[must_use]
    pub fn given(&self) -> &str {
        &self.parts.given
    }

    /// What was expected instead.
    #[must_use]
    pub fn expected(&self) -> &str {
        &self.parts.expected
    }

    /// How to put it right.
    #[must_use]
    pub fn remedy(&self) -> &str {
        &self.parts.remedy
    }

    /// True when the job itself cannot be done as asked (by this lathe, tool, bar), though every
    /// value was sound.
    #[must_use]
    pub fn is_impossible(&self) -> bool {
        self.kind == ErrorKind::Impossible
    }
}

/// Of `known`, the name nearest to `given`, if one is near enough to be a slip of the pen.
pub(crate) fn nearest<'a>(
    given: &str,
    known: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let wanted = given.to_lowercase();
    known
        .into_iter()
        .map(|name| (distance(&wanted, &name.to_lowercase()), name))
        .min_by_key(|(distance, _)| *distance)
        .filter(|(distance, name)| *distance <= 1 + name.chars().count().min(12) / 4)
        .map(|(_, name)| name)
}

/// Number of single-letter changes between two texts (Levenshtein).
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, from) in a.chars().take(64).enumerate() {
        let mut diagonal = row[0];
        row[0] = i + 1;
        for (j, to) in b.iter().enumerate() {
            let replaced = diagonal + usize::from(from != *to);
            diagonal = row[j + 1];
            row[j + 1] = replaced.min(row[j] + 1).min(diagonal + 1);
        }
    }
    row[b.len()]
}

/// `a, b or c`.
pub(crate) fn any_of<'a>(names: impl IntoIterator<Item = &'a str>) -> String {
    let names: Vec<&str> = names.into_iter().collect();
    match names.as_slice() {
        [] => String::from("nothing"),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} or {last}", first.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_near_miss_is_found_and_a_far_one_is_not() {
        assert_eq!(nearest("diametre", ["diameter", "depth"]), Some("diameter"));
        assert_eq!(nearest("zzz", ["diameter", "depth"]), None);
    }

    #[test]
    fn a_path_is_joined_from_the_outside_in() {
        let error = Error::new(
            ErrorKind::OutOfRange,
            "corner_radius",
            "9 m",
            "less",
            "mend it",
        );
        assert_eq!(error.inside("tool").field(), "tool.corner_radius");
    }
}
