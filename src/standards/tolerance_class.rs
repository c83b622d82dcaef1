//! Tolerance classes: `h7` of a shaft, `H7` of a hole, and the limits they stand for.

use std::fmt;
use std::hash::{Hash, Hasher};
use std::str::FromStr;

use super::fundamental_deviation::{LETTERS, Letter, Rule, shaft};
use super::hole_deviation::{self, hole};
use super::limit_deviations::LimitDeviations;
use super::limits::{Feature, Limits};
use super::tolerance_grade::ToleranceGrade;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Recorded, Sourced, Standing};
use crate::quantity::Diameter;

/// A tolerance class: letters for where the zone lies, a grade for how wide it is. Small letters
/// are shafts, capitals holes.
///
/// A letter goes with the grades that the tables of ISO 286-2 have for it, such as z6 to z11, P3 to P10;
/// h, H, js and JS with all. Of those, j8, K9 and K10 are not offered.
///
/// # Source
/// ISO 286-1:2010, tolerance class, from memory.
///
/// # Example
/// ```
/// use turnwright::{Feature, ToleranceClass};
/// let class: ToleranceClass = "h7".parse()?;
/// assert_eq!((class.feature(), class.grade().number()), (Feature::Shaft, 7));
/// let limits = class.limits("25 mm".parse()?)?.value;
/// assert_eq!(limits.smallest(), "24.979 mm".parse()?);
/// let error = "i7".parse::<ToleranceClass>().unwrap_err();
/// assert_eq!(error.field(), "class");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Clone, Copy)]
pub struct ToleranceClass {
    letter: &'static Letter,
    feature: Feature,
    grade: ToleranceGrade,
}

impl ToleranceClass {
    /// Shaft or hole.
    #[must_use]
    pub fn feature(self) -> Feature {
        self.feature
    }

    /// Its grade.
    #[must_use]
    pub fn grade(self) -> ToleranceGrade {
        self.grade
    }

    /// All classes offered, shafts first.
    pub fn all() -> impl Iterator<Item = Self> {
        let of = |feature| {
            LETTERS.iter().flat_map(move |letter| {
                ToleranceGrade::all()
                    .filter_map(move |grade| Self::new(letter, feature, grade).ok())
            })
        };
        of(Feature::Shaft).chain(of(Feature::Hole))
    }

    /// The class of the same letter and grade in the other case, if there is one.
    #[must_use]
    pub fn counterpart(self) -> Option<Self> {
        let feature = match self.feature {
            Feature::Shaft => Feature::Hole,
            Feature::Hole => Feature::Shaft,
        };
        Self::new(self.letter, feature, self.grade).ok()
    }

    /// The class, if it is one of `wanted`.
    ///
    /// # Errors
    /// `class`, naming the counterpart.
    pub fn of_feature(self, wanted: Feature) -> Result<Self, Error> {
        if self.feature == wanted {
            return Ok(self);
        }
        let (letters, other) = match wanted {
            Feature::Shaft => ("small", "capital letters are holes"),
            Feature::Hole => ("capital", "small letters are shafts"),
        };
        Err(Error::new(
            ErrorKind::Contradiction,
            "class",
            format!("\"{self}\", a class of a {}", self.feature),
            format!("a class of a {wanted}, which has {letters} letters"),
            match self.counterpart() {
                Some(meant) => format!("{other}: did you mean \"{meant}\"?"),
                None => format!("{other}: take the class from the drawing, or give two sizes"),
            },
        ))
    }

    fn new(
        letter: &'static Letter,
        feature: Feature,
        grade: ToleranceGrade,
    ) -> Result<Self, Error> {
        let (finest, coarsest) = match feature {
            Feature::Shaft => letter.grades(),
            Feature::Hole => hole_deviation::grades(letter),
        };
        let class = Self {
            letter,
            feature,
            grade,
        };
        if (finest..=coarsest).contains(&grade.number()) {
            return Ok(class);
        }
        let letters = class.letters();
        Err(Error::new(
            ErrorKind::OutOfRange,
            "class",
            format!("\"{class}\""),
            format!(
                "a grade from {letters}{finest} to {letters}{coarsest} with the letter {letters}"
            ),
            "take the class from the drawing, or give the limits as two sizes",
        ))
    }

    fn letters(self) -> String {
        match self.feature {
            Feature::Shaft => self.letter.name.to_owned(),
            Feature::Hole => self.letter.name.to_ascii_uppercase(),
        }
    }

    /// Upper and lower limit deviation of the class at a nominal size.
    ///
    /// # Units
    /// An inch size is converted exactly, and has the deviations of its metric range.
    /// # Range
    /// Nominal sizes over 0 up to 500 mm. js and JS keep half micrometres, as the 2010 edition does
    /// (the 1988 edition rounds odd widths of IT7 to IT11 down to even ones first).
    /// # Errors
    /// `nominal`, above 500 mm, or so small that the standard has not this letter there.
    /// # Source
    /// ISO 286-1:2010 and ISO 286-2:2010, from memory.
    /// # Example
    /// ```
    /// use turnwright::ToleranceClass;
    /// let g6 = "g6".parse::<ToleranceClass>()?.deviations("30 mm".parse()?)?;
    /// assert_eq!(g6.value.to_string(), "-0.007 -0.02 mm");
    /// let of_inch = "h6".parse::<ToleranceClass>()?.deviations("1 in".parse()?)?;
    /// assert_eq!(of_inch.value.lower(), "-0.013 mm".parse()?);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn deviations(self, nominal: Diameter) -> Result<Sourced<LimitDeviations>, Error> {
        let (upper, lower) = match self.feature {
            Feature::Shaft => shaft(self.letter, self.grade, nominal)?,
            Feature::Hole => hole(self.letter, self.grade, nominal)?,
        };
        Ok(Sourced::new(
            LimitDeviations::of_micrometres(upper, lower),
            self.source(),
            Standing::FromMemory,
        ))
    }

    /// Smallest and largest size of the class at a nominal size.
    ///
    /// # Units
    /// As [`Self::deviations`].
    /// # Range
    /// As [`Self::deviations`].
    /// # Errors
    /// As [`Self::deviations`]; and `nominal`, where the zone would reach below every size.
    /// # Source
    /// As [`Self::deviations`].
    /// # Example
    /// ```
    /// use turnwright::ToleranceClass;
    /// let limits = "H7".parse::<ToleranceClass>()?.limits("30 mm".parse()?)?.value;
    /// assert_eq!(limits.largest(), "30.021 mm".parse()?);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn limits(self, nominal: Diameter) -> Result<Sourced<Limits>, Error> {
        let found = self.deviations(nominal)?;
        Ok(Sourced::new(
            Limits::from_deviations(nominal, found.value)?,
            found.source,
            found.standing,
        ))
    }

    fn source(self) -> &'static str {
        match self.letter.rule {
            Rule::Uneven => {
                "from memory of ISO 286-2:2010, limit deviations; no formula confirms those of j and J"
            }
            _ if self.grade.number() < 5 => {
                "from memory of ISO 286-2:2010, limit deviations; no formula confirms IT1 to IT4"
            }
            Rule::Symmetric => {
                "from memory of ISO 286-2:2010, limit deviations; js keeps half micrometres, as that edition does"
            }
            _ => {
                "from memory of ISO 286-2:2010, limit deviations; held against the formulas of ISO 286-1:1988"
            }
        }
    }
}

impl PartialEq for ToleranceClass {
    fn eq(&self, other: &Self) -> bool {
        (self.letter.name, self.feature, self.grade)
            == (other.letter.name, other.feature, other.grade)
    }
}

impl Eq for ToleranceClass {}

impl Hash for ToleranceClass {
    fn hash<H: Hasher>(&self, state: &mut H) {
        (self.letter.name, self.feature, self.grade).hash(state);
    }
}

impl Recorded for ToleranceClass {}

impl fmt::Display for ToleranceClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("{}{}", self.letters(), self.grade.number()))
    }
}

impl fmt::Debug for ToleranceClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "ToleranceClass({self})")
    }
}

/// True for text that begins as a class does: one or two letters and then a digit.
pub(super) fn looks_like_class(text: &str) -> bool {
    let letters = text.bytes().take_while(u8::is_ascii_alphabetic).count();
    (1..=2).contains(&letters) && text.as_bytes().get(letters).is_some_and(u8::is_ascii_digit)
}

impl FromStr for ToleranceClass {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        let text = text.trim();
        let letters_end = text.bytes().take_while(u8::is_ascii_alphabetic).count();
        let (letters, number) = text.split_at(letters_end);
        if letters.is_empty() || !number.bytes().all(|b| b.is_ascii_digit()) {
            return Err(unreadable(text));
        }
        let (letter, feature) = letter(letters, number)?;
        let names = |feature| match feature {
            Feature::Shaft => letter.name.to_owned(),
            Feature::Hole => letter.name.to_ascii_uppercase(),
        };
        if number.is_empty() {
            return Err(Error::new(
                ErrorKind::Unreadable,
                "class",
                shown(text),
                "letters and a grade, such as \"h7\"",
                format!(
                    "write the grade behind the letter, such as \"{}7\"",
                    names(feature)
                ),
            ));
        }
        // h0 and h01 are grades of the standard, h07 is not.
        let grade = match (number.parse::<u8>(), number.starts_with('0')) {
            (Ok(grade @ 0..=1), true) if number.len() <= 2 && (grade == 1 || number == "0") => {
                return Err(Error::not_offered(
                    "class",
                    &format!("\"{text}\" of the grade IT{number}"),
                    "take a grade from 1 to 16, or give the limits as two sizes",
                ));
            }
            (Ok(grade), false) => ToleranceGrade::new(grade).map_err(|error| error.at("class"))?,
            _ => {
                return Err(Error::new(
                    ErrorKind::OutOfRange,
                    "class",
                    shown(text),
                    "a standard tolerance grade from 1 to 16 behind the letters",
                    "take the class from the drawing, such as \"h7\"",
                ));
            }
        };
        Self::new(letter, feature, grade)
    }
}

/// The letter and its side, by the letters as written.
fn letter(letters: &str, number: &str) -> Result<(&'static Letter, Feature), Error> {
    let small = letters.to_ascii_lowercase();
    let feature = if letters == small {
        Some(Feature::Shaft)
    } else if letters == letters.to_ascii_uppercase() {
        Some(Feature::Hole)
    } else {
        None
    };
    let known = LETTERS.iter().find(|letter| letter.name == small);
    match (known, feature) {
        (Some(letter), Some(feature)) => Ok((letter, feature)),
        (Some(_), None) => Err(Error::new(
            ErrorKind::Unreadable,
            "class",
            shown(&format!("{letters}{number}")),
            "small letters for a shaft, or capitals for a hole",
            format!(
                "did you mean \"{small}{number}\" (shaft) or \"{}{number}\" (hole)?",
                small.to_ascii_uppercase()
            ),
        )),
        (None, _) if matches!(small.as_str(), "cd" | "ef" | "fg") => Err(Error::not_offered(
            "class",
            &format!("the letters {letters}"),
            "cd, ef and fg are for fine mechanics: give their limits as two sizes",
        )),
        (None, _) => Err(Error::new(
            ErrorKind::UnknownName,
            "class",
            shown(&format!("{letters}{number}")),
            "a letter from a to h, j, js, k, m, n, p, r to v, x to z, za, zb or zc; capitals for a hole",
            if matches!(small.as_str(), "i" | "l" | "o" | "q" | "w") {
                "the standard leaves i, l, o, q and w out: was it read for another letter?"
            } else {
                "take the class from the drawing, such as \"h7\" of a shaft or \"H7\" of a hole"
            },
        )),
    }
}

fn shown(text: &str) -> String {
    format!("{:?}", text.chars().take(20).collect::<String>())
}

/// What is no letters and a number; where turning it round or closing it up makes a class, that is
/// the remedy.
#[cold]
fn unreadable(text: &str) -> Error {
    let short: String = text.chars().take(20).collect();
    let digits: String = short.chars().take_while(char::is_ascii_digit).collect();
    let turned = format!("{}{digits}", &short[digits.len()..]);
    let closed: String = short.chars().filter(|c| !c.is_whitespace()).collect();
    let meant = [closed, turned]
        .into_iter()
        .filter(|meant| *meant != short && looks_like_class(meant))
        .find(|meant| meant.parse::<ToleranceClass>().is_ok());
    Error::new(
        ErrorKind::Unreadable,
        "class",
        shown(text),
        "letters and a grade without a blank, such as \"h7\" of a shaft or \"H7\" of a hole",
        match meant {
            Some(meant) => format!("did you mean \"{meant}\"?"),
            None => String::from("take the class from the drawing"),
        },
    )
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Tree, text};

    impl ToleranceClass {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            text(tree, path)?
                .parse()
                .map_err(|error: Error| error.at(path))
        }
    }

    impl serde::Serialize for ToleranceClass {
        fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            s.collect_str(self)
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::fundamental_deviation::FINE_UP_TO;
    use crate::standards::tolerance_grade::standard_tolerance;

    fn mm(value: f64) -> Diameter {
        Diameter::from_mm(value).unwrap()
    }

    /// Both ends of every range, the lower one a hair inside.
    fn sizes() -> Vec<Diameter> {
        let starts = [1.0].into_iter().chain(FINE_UP_TO).take(FINE_UP_TO.len());
        starts
            .map(|start| mm(start + 1e-6))
            .chain(FINE_UP_TO.map(mm))
            .collect()
    }

    #[test]
    fn every_class_at_every_size_has_the_zone_its_name_says() {
        let (mut zones, mut refused) = (0, 0);
        for class in ToleranceClass::all() {
            for nominal in sizes() {
                let Ok(found) = class.deviations(nominal) else {
                    // t, v and y have no value for small sizes: told in a test of their own.
                    assert!(
                        matches!(class.letter.name, "t" | "v" | "y"),
                        "{class} {nominal}"
                    );
                    refused += 1;
                    continue;
                };
                let deviations = found.value;
                let width = standard_tolerance(nominal, class.grade()).unwrap().value;
                assert_eq!(deviations.tolerance(), width, "{class} {nominal}");
                let limits = class.limits(nominal).unwrap().value;
                assert!(limits.smallest() < limits.largest(), "{class} {nominal}");
                assert_eq!(limits.tolerance(), width, "{class} {nominal}");
                let (upper, lower) = (deviations.upper().mm(), deviations.lower().mm());
                match (class.letter.name, class.feature()) {
                    ("h", Feature::Shaft) => assert_eq!(upper, 0.0),
                    ("h", Feature::Hole) => assert_eq!(lower, 0.0),
                    ("js", _) => assert_eq!(upper, -lower, "{class} {nominal}"),
                    _ => {}
                }
                zones += 1;
            }
        }
        // 347 classes at 50 sizes; t at 12 and v at 8 of them in 4 grades, y at 10 in 5, of a shaft and of a
        // hole each, are not used.
        let not_used = 2 * (4 * (12 + 8) + 5 * 10);
        assert_eq!((zones, refused), (347 * 50 - not_used, not_used));
    }

    #[test]
    fn from_a_to_h_hole_and_shaft_mirror_each_other() {
        let mut looked_at = 0;
        for class in ToleranceClass::all().filter(|class| class.feature() == Feature::Shaft) {
            if !matches!(class.letter.rule, Rule::Below(_) | Rule::AtZero) {
                continue;
            }
            // A few have no hole of their grade, such as d5.
            let Some(hole) = class.counterpart() else {
                continue;
            };
            looked_at += 1;
            for nominal in sizes() {
                let shaft = class.deviations(nominal).unwrap().value;
                let hole = hole.deviations(nominal).unwrap().value;
                assert_eq!(hole.lower().mm(), -shaft.upper().mm(), "{class} {nominal}");
                assert_eq!(hole.upper().mm(), -shaft.lower().mm(), "{class} {nominal}");
            }
        }
        assert_eq!(looked_at, 62);
    }

    #[test]
    fn holes_by_delta_fit_the_next_finer_shaft_as_the_basic_hole_fits_theirs() {
        // ISO 286-1, from memory: H7 with p6 and P7 with h6 are one fit, above 3 mm.
        for class in ToleranceClass::all().filter(|class| class.feature() == Feature::Shaft) {
            let number = class.grade().number();
            let coarsest = if matches!(class.letter.name, "k" | "m" | "n") {
                7
            } else {
                6
            };
            if !matches!(class.letter.rule, Rule::Above(_)) || !(4..=coarsest).contains(&number) {
                continue;
            }
            let coarser = ToleranceGrade::new(number + 1).unwrap();
            let hole = ToleranceClass::new(class.letter, Feature::Hole, coarser).unwrap();
            // The exception of the standard.
            let exception =
                |d: Diameter| hole.to_string() == "M6" && d.mm() > 250.0 && d.mm() <= 315.0;
            for nominal in sizes()
                .into_iter()
                .filter(|d| d.mm() > 3.0 && !exception(*d))
            {
                let (Ok(shaft), Ok(hole)) = (class.deviations(nominal), hole.deviations(nominal))
                else {
                    continue;
                };
                let basic_hole = standard_tolerance(nominal, coarser).unwrap().value.mm();
                let basic_shaft = -standard_tolerance(nominal, class.grade())
                    .unwrap()
                    .value
                    .mm();
                // Sums of sizes given to 1e-9 mm.
                let off = (basic_hole - shaft.value.lower().mm())
                    - (hole.value.upper().mm() - basic_shaft);
                assert!(off.abs() < 1e-9, "{class} {nominal}: {off}");
            }
        }
    }

    #[test]
    fn a_zone_that_would_reach_below_every_size_is_refused() {
        let error = "h16"
            .parse::<ToleranceClass>()
            .unwrap()
            .limits(mm(0.5))
            .unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (ErrorKind::Contradiction, "nominal")
        );
    }

    #[test]
    fn text_comes_back() {
        for class in ToleranceClass::all() {
            assert_eq!(class.to_string().parse::<ToleranceClass>(), Ok(class));
        }
        for text in ["h7", "H7", "js6", "JS7", "za8", "ZC9", "k9"] {
            assert_eq!(text.parse::<ToleranceClass>().unwrap().to_string(), text);
        }
    }

    #[test]
    fn what_is_no_class_is_refused_with_a_remedy() {
        use ErrorKind::{NotOffered, OutOfRange, UnknownName, Unreadable};
        for (text, kind, words) in [
            ("i7", UnknownName, "another letter"),
            ("l6", UnknownName, "another letter"),
            ("O6", UnknownName, "another letter"),
            ("q7", UnknownName, "another letter"),
            ("w7", UnknownName, "another letter"),
            ("xx7", UnknownName, "drawing"),
            ("h", Unreadable, "h7"),
            ("H", Unreadable, "H7"),
            ("h25", OutOfRange, "7 of h7"),
            ("h300", OutOfRange, "drawing"),
            ("h07", OutOfRange, "drawing"),
            ("h17", NotOffered, "IT16"),
            ("h0", NotOffered, "1 to 16"),
            ("h01", NotOffered, "1 to 16"),
            ("Js7", Unreadable, "\"js7\" (shaft) or \"JS7\" (hole)"),
            ("zA8", Unreadable, "\"za8\""),
            ("7h", Unreadable, "\"h7\""),
            ("H 7", Unreadable, "\"H7\""),
            ("h7/", Unreadable, "drawing"),
            ("h-7", Unreadable, "drawing"),
            ("h7.5", Unreadable, "drawing"),
            ("", Unreadable, "drawing"),
            ("7", Unreadable, "drawing"),
            ("\u{fc}7", Unreadable, "drawing"),
            ("7\u{fc}", Unreadable, "drawing"),
            ("cd6", NotOffered, "two sizes"),
            ("FG6", NotOffered, "two sizes"),
            ("j8", OutOfRange, "drawing"),
            ("J5", OutOfRange, "drawing"),
            ("K9", OutOfRange, "drawing"),
            ("P2", OutOfRange, "drawing"),
        ] {
            let error = text.parse::<ToleranceClass>().unwrap_err();
            assert_eq!(
                (error.kind(), error.field()),
                (kind, "class"),
                "{text}: {error}"
            );
            assert!(error.remedy().contains(words), "{text}: {error}");
        }
        let error = "J9".parse::<ToleranceClass>().unwrap_err();
        assert!(error.expected().contains("J6 to J8"), "{error}");
    }

    #[test]
    fn the_other_case_is_named_where_a_feature_is_asked() {
        let class: ToleranceClass = "h7".parse().unwrap();
        let error = class.of_feature(Feature::Hole).unwrap_err();
        assert_eq!(
            error.remedy(),
            "small letters are shafts: did you mean \"H7\"?"
        );
        assert_eq!(class.of_feature(Feature::Shaft), Ok(class));
        // k9 is a shaft's, K9 is not used: no class is made up.
        let error = "k9"
            .parse::<ToleranceClass>()
            .unwrap()
            .of_feature(Feature::Hole)
            .unwrap_err();
        assert!(!error.remedy().contains("K9"), "{error}");
    }
}
