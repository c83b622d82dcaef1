//! Tolerance classes such as `h7` and `H7`: a letter for where the zone lies, a grade for its width.

use std::fmt;
use std::str::FromStr;

use super::fundamental_deviation::{deviations, grades_of, letters};
use super::limits::{Feature, LimitDeviations, Limits};
use super::tolerance_grade::ToleranceGrade;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, LowerDeviation, UpperDeviation, round_size};

const SOURCE: &str = "from memory of ISO 286-2:2010; held against the formulas of ISO 286-1:1988";
const SOURCE_OF_J: &str = "from memory of ISO 286-2:2010, unchecked: j has no formula";

/// A tolerance class: small letters are shafts, capitals holes.
///
/// # Source
/// ISO 286-1:2010, from memory. js and JS keep half a micrometre of odd tolerances, as the tables of
/// 2010 do.
/// # Example
/// ```
/// use turnwright::{standards::tolerance_class::ToleranceClass, Diameter, Feature};
/// let class: ToleranceClass = "h7".parse()?;
/// assert_eq!((class.feature(), class.to_string().as_str()), (Feature::Shaft, "h7"));
/// let limits = class.limits("25 mm".parse()?)?.value;
/// assert_eq!((limits.smallest().mm(), limits.largest().mm()), (24.979, 25.0));
/// assert!("h25".parse::<ToleranceClass>().is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct ToleranceClass {
    letter: &'static str,
    feature: Feature,
    grade: ToleranceGrade,
}

impl ToleranceClass {
    /// Shaft or hole.
    #[must_use]
    pub const fn feature(self) -> Feature {
        self.feature
    }

    /// Its grade.
    #[must_use]
    pub const fn grade(self) -> ToleranceGrade {
        self.grade
    }

    /// The class of the other kind with the same letter and grade, where the standard has it.
    #[must_use]
    pub fn mirrored(self) -> Option<Self> {
        let feature = match self.feature {
            Feature::Shaft => Feature::Hole,
            Feature::Hole => Feature::Shaft,
        };
        let (least, most) = grades_of(self.letter, feature)?;
        (least..=most)
            .contains(&self.grade.number())
            .then_some(Self { feature, ..self })
    }

    /// Both limit deviations at a nominal size.
    ///
    /// # Errors
    /// `nominal`, above 500 mm, or where the standard has no such letter.
    /// # Example
    /// ```
    /// use turnwright::standards::tolerance_class::ToleranceClass;
    /// let g6 = "g6".parse::<ToleranceClass>()?.deviations("30 mm".parse()?)?.value;
    /// assert_eq!((g6.upper().mm(), g6.lower().mm()), (-0.007, -0.020));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn deviations(self, nominal: Diameter) -> Result<Sourced<LimitDeviations>, Error> {
        let (upper, lower) = deviations(self.letter, self.feature, self.grade, nominal)
            .map_err(|error| error.at("nominal"))?;
        let mm = |um: f64| round_size(um * 1e-3);
        let deviations = LimitDeviations::new(
            UpperDeviation::computed_trade(mm(upper)),
            LowerDeviation::computed_trade(mm(lower)),
        )?;
        let source = if self.letter == "j" {
            SOURCE_OF_J
        } else {
            SOURCE
        };
        Ok(Sourced::new(deviations, source, Standing::FromMemory))
    }

    /// The limits of size at a nominal size.
    ///
    /// # Errors
    /// As [`deviations`](Self::deviations).
    pub fn limits(self, nominal: Diameter) -> Result<Sourced<Limits>, Error> {
        let deviations = self.deviations(nominal)?;
        Ok(Sourced::new(
            Limits::from_deviations(nominal, deviations.value)?,
            deviations.source,
            deviations.standing,
        ))
    }
}

impl fmt::Display for ToleranceClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let letter = match self.feature {
            Feature::Shaft => self.letter.to_owned(),
            Feature::Hole => self.letter.to_uppercase(),
        };
        f.pad(&format!("{letter}{}", self.grade.number()))
    }
}

impl FromStr for ToleranceClass {
    type Err = Error;

    fn from_str(text: &str) -> Result<Self, Error> {
        let trimmed = text.trim();
        let digits = trimmed.trim_start_matches(|c: char| c.is_ascii_alphabetic());
        let name = &trimmed[..trimmed.len() - digits.len()];
        let unreadable = |remedy: String| {
            Error::new(
                ErrorKind::Unreadable,
                "class",
                format!("{text:?}"),
                "a tolerance class: a letter and a grade, such as \"h7\" for a shaft or \"H7\" for a hole",
                remedy,
            )
        };
        if name.is_empty() || digits.is_empty() || !digits.bytes().all(|c| c.is_ascii_digit()) {
            return Err(unreadable(String::from(
                "write the letter first and its grade behind it, without a blank",
            )));
        }
        let small = name.to_ascii_lowercase();
        let feature = if name == small {
            Feature::Shaft
        } else if *name == small.to_ascii_uppercase() {
            Feature::Hole
        } else {
            return Err(unreadable(format!(
                "small letters are shafts, capitals holes: write \"{small}{digits}\" or \"{}{digits}\"",
                small.to_ascii_uppercase()
            )));
        };
        let spelled = |letter: &str| match feature {
            Feature::Shaft => letter.to_owned(),
            Feature::Hole => letter.to_uppercase(),
        };
        let Some(letter) = letters().find(|letter| *letter == small) else {
            let remedy = match small.as_str() {
                "i" | "l" | "o" | "q" | "w" => {
                    "the standard leaves this letter out, so that it is not taken for a figure or another letter"
                }
                "cd" | "ef" | "fg" => {
                    "this letter, of fine mechanics, is not carried: give the limits as two sizes"
                }
                _ => "read the letter once more, or give the limits as two sizes",
            };
            let known: Vec<String> = letters().map(spelled).collect();
            return Err(Error::new(
                ErrorKind::UnknownName,
                "class",
                format!("{text:?}"),
                format!(
                    "a class of a {feature} with one of the letters {}",
                    known.join(", ")
                ),
                remedy,
            ));
        };
        let (least, most) = grades_of(letter, feature).unwrap_or((1, 16));
        let number = digits.parse::<u32>().unwrap_or(u32::MAX);
        let grade = ToleranceGrade::new(number).ok();
        match grade.filter(|grade| (least..=most).contains(&grade.number())) {
            Some(grade) => Ok(Self {
                letter,
                feature,
                grade,
            }),
            None => Err(Error::new(
                ErrorKind::UnknownName,
                "class",
                format!("{text:?}"),
                format!(
                    "{letter} with a grade from {least} to {most}: {letter}{least} to {letter}{most}",
                    letter = spelled(letter)
                ),
                "read the grade once more, or give the limits as two sizes",
            )),
        }
    }
}

#[cfg(feature = "serde")]
impl serde::Serialize for ToleranceClass {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        s.collect_str(self)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::tolerance_grade::{RANGES, standard_tolerance};

    /// Every class offered, in both kinds.
    fn all() -> Vec<ToleranceClass> {
        let mut classes = Vec::new();
        for letter in letters() {
            for feature in [Feature::Shaft, Feature::Hole] {
                let (least, most) = grades_of(letter, feature).unwrap();
                classes.extend((least..=most).map(|number| ToleranceClass {
                    letter,
                    feature,
                    grade: ToleranceGrade::new(u32::from(number)).unwrap(),
                }));
            }
        }
        classes
    }

    #[test]
    fn every_class_offered_gives_limits_as_wide_as_its_grade() {
        let mut seen = 0;
        for class in all() {
            assert_eq!(class.to_string().parse::<ToleranceClass>().unwrap(), class);
            let ends = RANGES.iter().flat_map(|end| [*end, end - 0.01, end * 0.9]);
            for mm in ends {
                let nominal = Diameter::from_mm(mm).unwrap();
                let Ok(limits) = class.limits(nominal) else {
                    // The few gaps of the tables: t, v, y of small sizes.
                    assert!(matches!(class.letter, "t" | "v" | "y"), "{class} {mm}");
                    continue;
                };
                let width = standard_tolerance(nominal, class.grade).unwrap().value;
                // Sizes compare after rounding to 1e-9 mm.
                assert_eq!(limits.value.tolerance(), width, "{class} {mm}");
                seen += 1;
            }
        }
        assert!(seen > 9000, "{seen}");
    }

    #[test]
    fn shaft_and_hole_of_a_letter_up_to_h_mirror_each_other() {
        for class in all().into_iter().filter(|class| class.letter <= "h") {
            let Some(mirror) = class.mirrored() else {
                continue;
            };
            for end in RANGES {
                let nominal = Diameter::from_mm(end).unwrap();
                let one = class.deviations(nominal).unwrap().value;
                let two = mirror.deviations(nominal).unwrap().value;
                assert_eq!(one.upper().mm(), -two.lower().mm(), "{class} {end}");
            }
        }
    }

    #[test]
    fn h_touches_the_nominal_size_and_js_lies_about_it() {
        for number in 1..=16 {
            let of = |name: &str| {
                let class: ToleranceClass = format!("{name}{number}").parse().unwrap();
                class
                    .deviations(Diameter::from_mm(65.0).unwrap())
                    .unwrap()
                    .value
            };
            assert_eq!(of("h").upper().mm(), 0.0);
            assert_eq!(of("H").lower().mm(), 0.0);
            assert_eq!(of("js").upper().mm(), -of("js").lower().mm());
            assert_eq!(of("JS"), of("js"));
        }
    }

    #[test]
    fn what_is_no_class_is_refused_with_what_would_be_one() {
        for (text, kind, words) in [
            ("h25", ErrorKind::UnknownName, "h1 to h16"),
            ("z3", ErrorKind::UnknownName, "z6 to z11"),
            ("i7", ErrorKind::UnknownName, "leaves this letter out"),
            ("cd7", ErrorKind::UnknownName, "fine mechanics"),
            ("Js7", ErrorKind::Unreadable, "\"js7\" or \"JS7\""),
            ("zA8", ErrorKind::Unreadable, "\"za8\" or \"ZA8\""),
            ("7h", ErrorKind::Unreadable, "letter first"),
            ("H 7", ErrorKind::Unreadable, "without a blank"),
            ("h", ErrorKind::Unreadable, "its grade behind it"),
            ("", ErrorKind::Unreadable, "letter first"),
            ("h-7", ErrorKind::Unreadable, "letter first"),
            ("h99999999999", ErrorKind::UnknownName, "h1 to h16"),
            ("\u{e4}7", ErrorKind::Unreadable, "letter first"),
            ("K9", ErrorKind::UnknownName, "K3 to K8"),
        ] {
            let error = text.parse::<ToleranceClass>().unwrap_err();
            assert_eq!(error.kind(), kind, "{text}: {error}");
            assert!(error.to_string().contains(words), "{text}: {error}");
        }
    }
}
