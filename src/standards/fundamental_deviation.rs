//! Fundamental deviations of shafts: how far the near end of a zone lies from the nominal size.
//!
//! Tables as data, one letter a row; the holes follow from them by the rules of the file beside this
//! one. The standard's letters cd, ef and fg (fine mechanics)
//! are not here.

use super::tolerance_grade::{ToleranceGrade, UP_TO, micrometres, range};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, round_size};

/// Upper ends of the finer ranges, in millimetres; each end belongs to its range.
pub(super) const FINE_UP_TO: [f64; 25] = [
    3.0, 6.0, 10.0, 14.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0,
    180.0, 200.0, 225.0, 250.0, 280.0, 315.0, 355.0, 400.0, 450.0, 500.0,
];

/// Micrometres by range of nominal sizes.
#[derive(Debug)]
pub(super) enum Values {
    Main([u16; 13]),
    /// By the finer ranges, without those at the small end in which the letter is not used.
    Fine(&'static [u16]),
}

/// Where a shaft's zone lies.
#[derive(Debug)]
pub(super) enum Rule {
    /// Below the nominal size: the upper deviation is less the value.
    Below(Values),
    /// h: the upper deviation is nothing.
    AtZero,
    /// js: half of the tolerance to either side.
    Symmetric,
    /// j: to both sides, by a table of its own for each grade.
    Uneven,
    /// Above the nominal size: the lower deviation is the value.
    Above(Values),
}

/// A letter of the standard, as shafts write it.
#[derive(Debug)]
pub(super) struct Letter {
    pub(super) name: &'static str,
    pub(super) rule: Rule,
}

/// Source: ISO 286-1:2010 and ISO 286-2:2010, fundamental deviations of shafts, from memory.
#[rustfmt::skip]
pub(super) const LETTERS: [Letter; 25] = [
    Letter { name: "a", rule: Rule::Below(Values::Fine(&[270, 270, 280, 290, 290, 300, 300, 310, 320, 340, 360, 380, 410, 460, 520, 580, 660, 740, 820, 920, 1050, 1200, 1350, 1500, 1650])) },
    Letter { name: "b", rule: Rule::Below(Values::Fine(&[140, 140, 150, 150, 150, 160, 160, 170, 180, 190, 200, 220, 240, 260, 280, 310, 340, 380, 420, 480, 540, 600, 680, 760, 840])) },
    Letter { name: "c", rule: Rule::Below(Values::Fine(&[60, 70, 80, 95, 95, 110, 110, 120, 130, 140, 150, 170, 180, 200, 210, 230, 240, 260, 280, 300, 330, 360, 400, 440, 480])) },
    Letter { name: "d", rule: Rule::Below(Values::Main([20, 30, 40, 50, 65, 80, 100, 120, 145, 170, 190, 210, 230])) },
    Letter { name: "e", rule: Rule::Below(Values::Main([14, 20, 25, 32, 40, 50, 60, 72, 85, 100, 110, 125, 135])) },
    Letter { name: "f", rule: Rule::Below(Values::Main([6, 10, 13, 16, 20, 25, 30, 36, 43, 50, 56, 62, 68])) },
    Letter { name: "g", rule: Rule::Below(Values::Main([2, 4, 5, 6, 7, 9, 10, 12, 14, 15, 17, 18, 20])) },
    Letter { name: "h", rule: Rule::AtZero },
    Letter { name: "js", rule: Rule::Symmetric },
    Letter { name: "j", rule: Rule::Uneven },
    Letter { name: "k", rule: Rule::Above(Values::Main([0, 1, 1, 1, 2, 2, 2, 3, 3, 4, 4, 4, 5])) },
    Letter { name: "m", rule: Rule::Above(Values::Main([2, 4, 6, 7, 8, 9, 11, 13, 15, 17, 20, 21, 23])) },
    Letter { name: "n", rule: Rule::Above(Values::Main([4, 8, 10, 12, 15, 17, 20, 23, 27, 31, 34, 37, 40])) },
    Letter { name: "p", rule: Rule::Above(Values::Main([6, 12, 15, 18, 22, 26, 32, 37, 43, 50, 56, 62, 68])) },
    Letter { name: "r", rule: Rule::Above(Values::Fine(&[10, 15, 19, 23, 23, 28, 28, 34, 34, 41, 43, 51, 54, 63, 65, 68, 77, 80, 84, 94, 98, 108, 114, 126, 132])) },
    Letter { name: "s", rule: Rule::Above(Values::Fine(&[14, 19, 23, 28, 28, 35, 35, 43, 43, 53, 59, 71, 79, 92, 100, 108, 122, 130, 140, 158, 170, 190, 208, 232, 252])) },
    Letter { name: "t", rule: Rule::Above(Values::Fine(&[41, 48, 54, 66, 75, 91, 104, 122, 134, 146, 166, 180, 196, 218, 240, 268, 294, 330, 360])) },
    Letter { name: "u", rule: Rule::Above(Values::Fine(&[18, 23, 28, 33, 33, 41, 48, 60, 70, 87, 102, 124, 144, 170, 190, 210, 236, 258, 284, 315, 350, 390, 435, 490, 540])) },
    Letter { name: "v", rule: Rule::Above(Values::Fine(&[39, 47, 55, 68, 81, 102, 120, 146, 172, 202, 228, 252, 284, 310, 340, 385, 425, 475, 530, 595, 660])) },
    Letter { name: "x", rule: Rule::Above(Values::Fine(&[20, 28, 34, 40, 45, 54, 64, 80, 97, 122, 146, 178, 210, 248, 280, 310, 350, 385, 425, 475, 525, 590, 660, 740, 820])) },
    Letter { name: "y", rule: Rule::Above(Values::Fine(&[63, 75, 94, 114, 144, 174, 214, 254, 300, 340, 380, 425, 470, 520, 580, 650, 730, 820, 920, 1000])) },
    Letter { name: "z", rule: Rule::Above(Values::Fine(&[26, 35, 42, 50, 60, 73, 88, 112, 136, 172, 210, 258, 310, 365, 415, 465, 520, 575, 640, 710, 790, 900, 1000, 1100, 1250])) },
    Letter { name: "za", rule: Rule::Above(Values::Fine(&[32, 42, 52, 64, 77, 98, 118, 148, 180, 226, 274, 335, 400, 470, 535, 600, 670, 740, 820, 920, 1000, 1150, 1300, 1450, 1600])) },
    Letter { name: "zb", rule: Rule::Above(Values::Fine(&[40, 50, 67, 90, 108, 136, 160, 200, 242, 300, 360, 445, 525, 620, 700, 780, 880, 960, 1050, 1200, 1300, 1500, 1650, 1850, 2100])) },
    Letter { name: "zc", rule: Rule::Above(Values::Fine(&[60, 80, 97, 130, 150, 188, 218, 274, 325, 405, 480, 585, 690, 800, 900, 1000, 1150, 1250, 1350, 1550, 1700, 1900, 2100, 2400, 2600])) },
];

/// Lower deviations of j5 and j6, and of j7; no formula confirms them.
const J: [[i16; 13]; 2] = [
    [-2, -2, -2, -3, -4, -5, -7, -9, -11, -13, -16, -18, -20],
    [-4, -4, -5, -6, -8, -10, -12, -15, -18, -21, -26, -28, -32],
];

impl Values {
    /// The value at a nominal size; none where the letter is not used.
    fn at(&self, nominal: Diameter) -> Result<Option<f64>, Error> {
        match self {
            Self::Main(values) => Ok(Some(f64::from(values[range(nominal, &UP_TO)?]))),
            Self::Fine(values) => Ok(range(nominal, &FINE_UP_TO)?
                .checked_sub(FINE_UP_TO.len() - values.len())
                .map(|at| f64::from(values[at]))),
        }
    }

    /// Up to which size the letter is not used, where there is one.
    fn starts_above(&self) -> Option<f64> {
        match self {
            Self::Main(_) => None,
            Self::Fine(values) => (FINE_UP_TO.len() - values.len())
                .checked_sub(1)
                .map(|at| FINE_UP_TO[at]),
        }
    }
}

impl Letter {
    /// The deviation of its table, in micrometres without sign; nothing for h, js and j.
    pub(super) fn value(&self, nominal: Diameter) -> Result<f64, Error> {
        // a and b are not for the smallest sizes, though their row has a value for them.
        if matches!(self.name, "a" | "b") && round_size(nominal.mm()) <= 1.0 {
            return Err(self.too_small(nominal, 1.0));
        }
        match &self.rule {
            Rule::Below(values) | Rule::Above(values) => values
                .at(nominal)?
                .ok_or_else(|| self.too_small(nominal, values.starts_above().unwrap_or_default())),
            Rule::AtZero | Rule::Symmetric | Rule::Uneven => Ok(0.0),
        }
    }

    #[cold]
    fn too_small(&self, nominal: Diameter, up_to: f64) -> Error {
        Error::new(
            ErrorKind::OutOfRange,
            "nominal",
            format!("{nominal} with the letter {}", self.name),
            format!("a nominal size above {up_to} mm, from which the standard has this letter"),
            "take another class, or give the limits as two sizes",
        )
    }

    /// The grades with which a shaft may have this letter: those of the tables.
    ///
    /// Source: ISO 286-2:2010, tables of shafts, from memory; j without its grade 8.
    pub(super) fn grades(&self) -> (u8, u8) {
        match self.name {
            "a" => (9, 13),
            "b" => (8, 13),
            "c" => (8, 12),
            "d" => (5, 13),
            "e" => (5, 10),
            "f" | "g" => (3, 10),
            "j" => (5, 7),
            "k" => (3, 13),
            "m" | "n" => (3, 9),
            "p" | "r" | "s" => (3, 10),
            "t" | "v" => (5, 8),
            "u" => (5, 9),
            "x" => (5, 10),
            "y" => (6, 10),
            "z" => (6, 11),
            "za" => (7, 11),
            "zb" | "zc" => (8, 11),
            // h and js.
            _ => (1, 16),
        }
    }
}

/// Upper and lower deviation of a shaft, in micrometres; its grade is one of the letter's.
pub(super) fn shaft(
    letter: &Letter,
    grade: ToleranceGrade,
    nominal: Diameter,
) -> Result<(f64, f64), Error> {
    let width = micrometres(nominal, grade)?;
    let value = letter.value(nominal)?;
    Ok(match letter.rule {
        Rule::Below(_) | Rule::AtZero => (-value, -value - width),
        Rule::Symmetric => (0.5 * width, -0.5 * width),
        Rule::Uneven => {
            let table = J[usize::from(grade.number() == 7)];
            let lower = f64::from(table[range(nominal, &UP_TO)?]);
            (lower + width, lower)
        }
        // The table of k is for IT4 to IT7; finer and coarser grades start at the nominal size.
        Rule::Above(_) if letter.name == "k" && !(4..=7).contains(&grade.number()) => (width, 0.0),
        Rule::Above(_) => (value + width, value),
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::tolerance_grade::mean_of;
    use crate::standards::tolerance_grade::tests::fits;

    fn it(grade: u8, up_to: f64) -> f64 {
        let nominal = Diameter::from_mm(up_to).unwrap();
        micrometres(nominal, ToleranceGrade::new(grade).unwrap()).unwrap()
    }

    fn value(name: &str, up_to: f64) -> f64 {
        let letter = LETTERS.iter().find(|letter| letter.name == name).unwrap();
        letter.value(Diameter::from_mm(up_to).unwrap()).unwrap()
    }

    /// Formulas of ISO 286-1:1988 (from memory), in micrometres; p and s leave a span.
    fn formula(name: &str, d: f64, up_to: f64) -> (f64, f64) {
        let it = |grade| it(grade, up_to);
        let one = match name {
            "a" if up_to <= 120.0 => 265.0 + 1.3 * d,
            "a" => 3.5 * d,
            "b" if up_to <= 160.0 => 140.0 + 0.85 * d,
            "b" => 1.8 * d,
            "c" if up_to <= 40.0 => 52.0 * d.powf(0.2),
            "c" => 95.0 + 0.8 * d,
            "d" => 16.0 * d.powf(0.44),
            "e" => 11.0 * d.powf(0.41),
            "f" => 5.5 * d.powf(0.41),
            "g" => 2.5 * d.powf(0.34),
            "k" => 0.6 * d.cbrt(),
            "m" => it(7) - it(6),
            "n" => 5.0 * d.powf(0.34),
            "p" => return (it(7), it(7) + 5.0),
            "r" => (value("p", up_to) * value("s", up_to)).sqrt(),
            "s" if up_to <= 50.0 => return (it(8) + 1.0, it(8) + 4.0),
            "s" => it(7) + 0.4 * d,
            "t" => it(7) + 0.63 * d,
            "u" => it(7) + d,
            "v" => it(7) + 1.25 * d,
            "x" => it(7) + 1.6 * d,
            "y" => it(7) + 2.0 * d,
            "z" => it(7) + 2.5 * d,
            "za" => it(8) + 3.15 * d,
            "zb" => it(9) + 4.0 * d,
            "zc" => it(10) + 5.0 * d,
            other => panic!("no formula for {other}"),
        };
        (one, one)
    }

    #[test]
    fn every_entry_is_that_of_its_formula_but_for_those_named() {
        let mut misfits = Vec::new();
        let mut looked_at = 0;
        for letter in &LETTERS {
            let (ends, first): (&[f64], usize) = match &letter.rule {
                Rule::Below(Values::Main(_)) | Rule::Above(Values::Main(_)) => (&UP_TO, 0),
                Rule::Below(Values::Fine(values)) | Rule::Above(Values::Fine(values)) => {
                    (&FINE_UP_TO, FINE_UP_TO.len() - values.len())
                }
                Rule::AtZero | Rule::Symmetric | Rule::Uneven => continue,
            };
            for at in first..ends.len() {
                looked_at += 1;
                let (low, high) = formula(letter.name, mean_of(ends, at), ends[at]);
                if !fits(value(letter.name, ends[at]), low, high) {
                    misfits.push((letter.name, ends[at]));
                }
            }
        }
        // 8 letters by 13 ranges, 14 by 25, less 6 of t, 4 of v and 5 of y.
        assert_eq!(looked_at, 8 * 13 + 14 * 25 - 15);
        let named = [
            ("a", &[14.0][..]),
            ("b", &[140.0, 160.0]),
            ("c", &[3.0, 14.0, 18.0, 24.0, 30.0, 40.0]),
            ("g", &[3.0]),
            ("m", &[3.0]),
            ("n", &[3.0]),
            ("p", &[3.0]),
            ("s", &[3.0]),
            ("t", &[30.0]),
            ("u", &[3.0, 6.0, 10.0, 14.0]),
            ("x", &[3.0, 6.0, 10.0, 14.0, 18.0]),
            ("z", &[3.0, 6.0, 10.0, 14.0, 18.0]),
            ("za", &[3.0, 6.0, 10.0]),
            ("zb", &[3.0, 6.0]),
            ("zc", &[3.0, 6.0]),
        ];
        let named: Vec<(&str, f64)> = named
            .iter()
            .flat_map(|(name, ends)| ends.iter().map(move |end| (*name, *end)))
            .collect();
        assert_eq!(misfits, named);
    }

    #[test]
    fn letters_lie_in_the_order_of_the_alphabet() {
        for mm in FINE_UP_TO {
            let nominal = Diameter::from_mm(mm).unwrap();
            let near: Vec<f64> = LETTERS
                .iter()
                .filter_map(|letter| {
                    let value = letter.value(nominal).ok()?;
                    match letter.rule {
                        Rule::Below(_) => Some(-value),
                        Rule::Above(_) => Some(value),
                        _ => None,
                    }
                })
                .collect();
            assert!(near.is_sorted(), "{mm}: {near:?}");
        }
    }

    #[test]
    fn a_letter_is_refused_below_its_smallest_size_and_taken_above() {
        // ISO 286-1, from memory: a and b not up to 1 mm, t not up to 24, v not up to 14, y not up to 18.
        for (name, up_to) in [
            ("a", 1.0),
            ("b", 1.0),
            ("t", 24.0),
            ("v", 14.0),
            ("y", 18.0),
        ] {
            let letter = LETTERS.iter().find(|letter| letter.name == name).unwrap();
            let error = letter.value(Diameter::from_mm(up_to).unwrap()).unwrap_err();
            assert_eq!(error.field(), "nominal");
            assert!(
                error.expected().contains(&format!("above {up_to} mm")),
                "{error}"
            );
            assert!(
                letter
                    .value(Diameter::from_mm(up_to + 0.001).unwrap())
                    .is_ok()
            );
        }
    }
}
