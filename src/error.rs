//! What was wrong, with which value, what was expected and how to put it right.

use std::fmt;
use std::fmt::Write;

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
                given: readable(given.into()),
                expected: readable(expected.into()),
                remedy: readable(remedy.into()),
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

    /// The same error of a value out of range, told as the value was written.
    #[cold]
    pub(crate) fn told_as(mut self, text: &str) -> Self {
        if self.kind == ErrorKind::OutOfRange {
            self.parts.given = text.trim().chars().take(60).collect();
            // A number of millimetres may have been one of metres, one of another unit was not.
            if !text.contains("mm") {
                self.parts.remedy = self.parts.remedy.replace("in metres", "in another one");
            }
        }
        self
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

/// The most digits of a number in words for a person: the rest are residue of a conversion, or beyond all
/// measuring.
pub(crate) const MOST_DIGITS: usize = 9;

/// The words, each number with a point in them to so many digits as a person reads.
///
/// What stands between quotation marks is what was written, or is to be written, and stays.
pub(crate) fn readable(words: String) -> String {
    if !has_long_number(&words) {
        return words;
    }
    let mut told = String::with_capacity(words.len());
    let (mut rest, mut before, mut quoted) = (words.as_str(), None, false);
    while let Some(first) = rest.chars().next() {
        let begins = !quoted
            && first.is_ascii_digit()
            && !before.is_some_and(|c: char| c.is_alphanumeric() || "._".contains(c));
        let (number, after) = rest.split_at(match begins {
            true => number_end(rest),
            false => first.len_utf8(),
        });
        quoted ^= first == '"';
        let value = Some(number)
            .filter(|number| {
                begins && number.contains('.') && significant_digits(mantissa(number)) > MOST_DIGITS
            })
            .and_then(|number| number.parse().ok());
        match value {
            Some(value) if number.contains(['e', 'E']) => {
                let _ = write!(told, "{:e}", rounded(value));
            }
            Some(value) => told.push_str(&shortened(value)),
            None => told.push_str(number),
        }
        before = number.chars().next_back();
        rest = after;
    }
    told
}

/// Whether there is a run of so many digits at all: most words have none.
fn has_long_number(words: &str) -> bool {
    let mut run = 0;
    words.bytes().any(|byte| {
        match byte {
            b'0'..=b'9' => run += 1,
            b'.' => {}
            _ => run = 0,
        }
        run > MOST_DIGITS
    })
}

fn mantissa(number: &str) -> &str {
    number.split(['e', 'E']).next().unwrap_or(number)
}

/// The number to the digits that a person reads at most.
fn rounded(number: f64) -> f64 {
    let digits = MOST_DIGITS - 1;
    format!("{number:.digits$e}").parse().unwrap_or(number)
}

/// The same, written without zeros at its end.
pub(crate) fn shortened(number: f64) -> String {
    rounded(number).to_string()
}

/// Digits of a number, without the zeros that it begins with.
pub(crate) fn significant_digits(number: &str) -> usize {
    let from = number.find(|c: char| ('1'..='9').contains(&c));
    let digits = from.map_or("", |from| &number[from..]).bytes();
    digits.filter(u8::is_ascii_digit).count()
}

/// Where the number that a text begins with ends, its sign left out.
pub(crate) fn number_end(text: &str) -> usize {
    let bytes = text.as_bytes();
    let run = |from: usize| {
        bytes[from..]
            .iter()
            .take_while(|b| b.is_ascii_digit())
            .count()
    };
    let mut at = run(0);
    if bytes.get(at) == Some(&b'.') {
        at += 1 + run(at + 1);
    }
    if matches!(bytes.get(at), Some(b'e' | b'E')) {
        let sign = usize::from(matches!(bytes.get(at + 1), Some(b'+' | b'-')));
        let exponent = run((at + 1 + sign).min(bytes.len()));
        if exponent > 0 {
            at += 1 + sign + exponent;
        }
    }
    at
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
    fn words_have_nine_digits_at_most_and_what_is_quoted_stays() {
        for (words, told) in [
            ("30.480000000000004 mm given", "30.48 mm given"),
            ("(0.013333323599999999)", "(0.0133333236)"),
            ("-0.00020000010799999996 mm", "-0.000200000108 mm"),
            ("1.23456789012e-7 m", "1.23456789e-7 m"),
            (
                "as \"30.480000000000004 mm\"",
                "as \"30.480000000000004 mm\"",
            ),
            ("0 to 4294967295", "0 to 4294967295"),
            ("299792458.123 m", "299792458 m"),
            ("29.967 to 30.125 mm", "29.967 to 30.125 mm"),
            ("\u{b1}25.400000000000002 \u{b5}m", "\u{b1}25.4 \u{b5}m"),
        ] {
            assert_eq!(super::readable(words.to_owned()), told);
        }
    }

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
