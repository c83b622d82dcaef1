//! Sentences told in the units of the person who reads them.
//!
//! Most words are made with their units. Those of an error or of the record of a constant are made
//! deep inside, where nobody knows who asks: they name quantities in the trade's metric units, each
//! as a number, a space and the unit, and are retold here.

use std::borrow::Cow;
use std::fmt::Write;

use super::text::{BareExact, Exact, fixed};
use super::unit::{Kind, Units, kinds};
use crate::error::{Error, MOST_DIGITS, shortened, significant_digits};
use crate::provenance::Source;

/// Digits of a number that a person still reads as it stands.
const READABLE: usize = 7;
/// Digits of one that had to be rounded, at least.
const ROUNDED: i32 = 3;
/// Digits before or behind the point beyond which a number is written with an exponent.
const MOST_PLACES: usize = 12;

impl Error {
    /// The same error, its quantities in the units of `system`: a person who works in inch is
    /// refused in inch.
    ///
    /// What stands between quotation marks is what was written, or is to be written, and stays. A
    /// number with a long tail of digits is rounded.
    ///
    /// # Example
    /// ```
    /// use turnwright::{Diameter, Units};
    /// let error = Diameter::from_mm(6000.0).unwrap_err();
    /// assert_eq!(error.given(), "6000 mm");
    /// let error = error.in_units(Units::Inch);
    /// assert_eq!(error.given(), "236.2205 in");
    /// assert!(error.expected().contains("0.00394 in to 196.8504 in"));
    /// ```
    #[cold]
    #[must_use]
    pub fn in_units(self, system: Units) -> Self {
        self.retold(|words| words_in(words, system))
    }
}

impl Source {
    /// What the constant is, sizes in the units of `system`.
    ///
    /// # Example
    /// ```
    /// use turnwright::{Provenance, Sourced, Standing, Units};
    /// let mut provenance = Provenance::default();
    /// let error = Sourced::new("0.004 mm", "an invented certificate", Standing::Given);
    /// provenance.open("largest error up to 25.4 mm", &error);
    /// assert_eq!(provenance.sources()[0].what_in(Units::Inch), "largest error up to 1 in");
    /// ```
    #[must_use]
    pub fn what_in(&self, system: Units) -> String {
        words_in(&self.what, system)
    }

    /// The value in the units of `system`; where it had to be rounded, as it is on record behind it.
    ///
    /// # Example
    /// ```
    /// use turnwright::{Material, Provenance, Units};
    /// let mut provenance = Provenance::default();
    /// let steel = Material::named("c45")?;
    /// steel.specific_force().open("specific cutting force", &mut provenance);
    /// let line = &provenance.sources()[0];
    /// assert!(line.value.ends_with(" MPa"));
    /// assert_eq!(line.value_in(Units::Metric), line.value);
    /// assert!(line.value_in(Units::Inch).ends_with(&format!(" psi ({})", line.value)));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn value_in(&self, system: Units) -> String {
        value_in(&self.value, system)
    }
}

/// A recorded value as [`Source::value_in`] tells it.
pub(crate) fn value_in(value: &str, system: Units) -> String {
    let told = retold(value, system);
    match system {
        Units::Inch if told.rounded => format!("{} ({value})", told.words),
        _ => told.words,
    }
}

/// The words, each metric quantity in them in the units of `system`.
pub(crate) fn words_in(words: &str, system: Units) -> String {
    retold(words, system).words
}

struct Retold {
    words: String,
    /// True where a number was rounded.
    rounded: bool,
}

fn retold(words: &str, system: Units) -> Retold {
    let mut told = Retold {
        words: String::with_capacity(words.len()),
        rounded: false,
    };
    let (mut rest, mut before, mut quoted) = (words, None, false);
    while let Some(first) = rest.chars().next() {
        let begins =
            !quoted && !before.is_some_and(|c: char| c.is_alphanumeric() || ".-+_/".contains(c));
        let at = words.len() - rest.len();
        let next = match Named::at(rest).filter(|_| begins && !goes_on(&words[..at])) {
            Some(named) => {
                told.named(&named, system);
                named.length
            }
            None => {
                quoted ^= first == '"';
                told.words.push(first);
                first.len_utf8()
            }
        };
        before = rest[..next].chars().next_back();
        rest = &rest[next..];
    }
    told
}

impl Retold {
    fn named(&mut self, named: &Named<'_>, system: Units) {
        let unit = named.kind.unit(system);
        for (gap, number, value) in &named.numbers {
            self.words.push_str(gap);
            if number.starts_with('+') {
                self.words.push('+');
            }
            self.number(number.trim_start_matches('+'), named.kind, *value, system);
        }
        self.words.push(' ');
        self.words.push_str(unit.text());
    }

    fn number(&mut self, metric: &str, kind: &'static Kind, value: f64, system: Units) {
        let exact = match system {
            Units::Metric => Cow::Borrowed(metric),
            Units::Inch => {
                let inch = BareExact(Exact {
                    kind,
                    value,
                    system,
                });
                Cow::Owned(inch.to_string())
            }
        };
        if significant_digits(&exact) <= READABLE {
            self.words.push_str(&exact);
            return;
        }
        let number = kind.unit(system).from_trade(value);
        // Of a number that was shortened in metric, what it was in inch comes back with a residue.
        if system == Units::Inch {
            let short = shortened(number);
            if significant_digits(&short) <= READABLE {
                self.words.push_str(&short);
                return;
            }
        }
        self.rounded = true;
        let leading = number.abs().log10().floor() as i32;
        let places = kind
            .places(system)
            .max(usize::try_from(ROUNDED - 1 - leading).unwrap_or(0))
            .min(usize::try_from(MOST_DIGITS as i32 - 1 - leading).unwrap_or(0));
        // Writing into a String does not fail.
        let _ = match places <= MOST_PLACES && leading <= MOST_PLACES as i32 {
            true => write!(self.words, "{}", fixed(number, places)),
            false => write!(self.words, "{number:.2e}"),
        };
    }
}

/// True where a bare number stands before, with a comma, "and" or "or": "3, 4 or 8 mm" keeps its unit.
fn goes_on(before: &str) -> bool {
    let mut words = before
        .rsplit(' ')
        .map(|word| word.trim_end_matches(','))
        .filter(|word| !word.is_empty());
    let last = match words.next() {
        Some("and" | "or") => words.next(),
        last => last,
    };
    last.is_some_and(|word| word.parse::<f64>().is_ok())
}

/// A metric quantity as words name it: one number with its unit, or several before one unit, as in
/// `0.1 to 3 mm` and `0 -0.016 mm`.
struct Named<'a> {
    /// Each with what stands before it, as written, and its value.
    numbers: Vec<(&'static str, &'a str, f64)>,
    kind: &'static Kind,
    /// In bytes.
    length: usize,
}

impl<'a> Named<'a> {
    /// The quantity that the text begins with.
    fn at(text: &'a str) -> Option<Self> {
        let (mut numbers, mut length, mut gap) = (Vec::new(), 0, "");
        loop {
            let (number, rest) = text[length..].split_once(' ')?;
            let value: f64 = begins_number(number).then(|| number.parse().ok())??;
            numbers.push((gap, number, value));
            length += number.len();
            if let Some(kind) = kind_of(rest) {
                let length = length + 1 + kind.units()[0].text().len();
                return Some(Self {
                    numbers,
                    kind,
                    length,
                });
            }
            gap = if rest.starts_with("to ") {
                " to "
            } else if rest.starts_with(['+', '-']) || rest.starts_with("0 ") {
                " "
            } else {
                return None;
            };
            length += gap.len();
        }
    }
}

fn begins_number(text: &str) -> bool {
    let unsigned = text.strip_prefix(['+', '-']).unwrap_or(text);
    unsigned.starts_with(|c: char| c.is_ascii_digit())
}

/// The kind whose trade unit the text begins with: of the longest unit, so that "N m" is not taken for "N".
fn kind_of(text: &str) -> Option<&'static Kind> {
    let begins = |kind: &&&'static Kind| {
        let unit = kind.units()[0].text();
        let after = text.strip_prefix(unit).filter(|_| !unit.is_empty());
        after.is_some_and(|after| {
            !after.starts_with(|c: char| c.is_alphanumeric() || "/^".contains(c))
        })
    };
    let longest = |kind: &&&'static Kind| kind.units()[0].text().len();
    kinds().iter().filter(begins).max_by_key(longest).copied()
}

#[cfg(test)]
mod tests {
    use super::{Units, value_in, words_in};

    fn inch(words: &str) -> String {
        words_in(words, Units::Inch)
    }

    /// One inch is 25.4 mm exactly; 1 lbf = 4.4482216152605 N (ISO 80000-4, both by definition).
    #[test]
    fn quantities_in_a_sentence_are_told_in_inch() {
        for (metric, told) in [
            (
                "45.44568 mm down to 40.51046 mm",
                "1.7892 in down to 1.5949 in",
            ),
            (
                "at most 0.05 mm/rev, which",
                "at most 0.00197 in/rev, which",
            ),
            ("14.0 mm from the jaws", "0.5512 in from the jaws"),
            ("12 N m, not 44.482216152605 N", "8.85 lbf ft, not 10 lbf"),
            ("-3 mm given", "-0.1181 in given"),
            ("(30 m/min)", "(98.4 ft/min)"),
            ("of 40 +0.016 0 mm", "of 1.5748 +0.000630 0 in"),
            ("0.1 to 2.54 mm wide", "0.00394 to 0.1 in wide"),
            ("as \"20 mm\" or 25.4 mm", "as \"20 mm\" or 1 in"),
        ] {
            assert_eq!(inch(metric), told);
        }
    }

    #[test]
    fn other_words_stay_as_they_are() {
        for words in [
            "",
            "310 rpm",
            "A 2/4.25 mm",
            "M12x1 mm-thread",
            "2 mmm",
            "3 mm/revolution",
            "no number mm",
            "3, 4 or 8 mm",
            "14.0  mm",
            "NaN mm inf mm",
        ] {
            assert_eq!(inch(words), words);
        }
    }

    #[test]
    fn a_tail_of_digits_is_cut_in_either_system() {
        let metric = words_in("26.078179999999996 mm", Units::Metric);
        assert_eq!(metric, "26.078 mm");
        // What was shortened in metric is in inch what it was before.
        let power = crate::error::readable(String::from("1.1185498073734055 kW"));
        assert_eq!(inch(&power), "1.5 hp");
        let tiny = words_in("0.00000000000000000012345678 mm", Units::Metric);
        assert_eq!(tiny, "1.23e-19 mm");
        assert_eq!(inch("2.54e301 mm"), "1.00e300 in");
        assert_eq!(value_in("1.1185498073734055 kW", Units::Inch), "1.5 hp");
        assert_eq!(value_in("0.01 mm", Units::Inch), "0.000394 in (0.01 mm)");
    }
}
