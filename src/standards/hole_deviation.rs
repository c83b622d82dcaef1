//! Limit deviations of holes, from those of shafts by the standard's rules.

use super::fundamental_deviation::{Letter, Rule};
use super::tolerance_grade::{ToleranceGrade, UP_TO, micrometres, range};
use crate::error::Error;
use crate::quantity::{Diameter, round_size};

/// Upper deviations of J6, J7 and J8; no formula confirms them.
///
/// Source: ISO 286-2:2010, from memory.
const J: [[u16; 13]; 3] = [
    [2, 5, 5, 6, 8, 10, 13, 16, 18, 22, 25, 29, 33],
    [4, 6, 8, 10, 12, 14, 18, 22, 26, 30, 36, 39, 43],
    [6, 10, 12, 15, 20, 24, 28, 34, 41, 47, 55, 60, 66],
];

/// The grades with which a hole may have this letter: those of the tables.
///
/// Source: ISO 286-2:2010, tables of holes, from memory; K without its grades 9 and 10.
pub(super) fn grades(letter: &Letter) -> (u8, u8) {
    match letter.name {
        "a" => (9, 13),
        "b" | "c" => (8, 13),
        "d" => (6, 13),
        "e" => (5, 10),
        "f" | "g" => (3, 10),
        "j" => (6, 8),
        "k" => (3, 8),
        "m" => (3, 10),
        "n" => (3, 11),
        "p" | "r" | "s" => (3, 10),
        "t" | "v" => (5, 8),
        "u" | "x" => (5, 10),
        "y" => (6, 10),
        "z" => (6, 11),
        "za" => (7, 11),
        "zb" | "zc" => (8, 11),
        // H and JS.
        _ => (1, 16),
    }
}

/// Upper and lower deviation of a hole, in micrometres; its grade is one of the letter's.
///
/// EI = -es of the shaft of the same letter for A to H. For K, M and N up to IT8 and for P to ZC up
/// to IT7, above 3 mm, ES = -ei + Delta with Delta = IT_n - IT_(n-1), so that a hole of one grade
/// makes with the shaft h of the next finer one the same fit as H with the shaft; coarser ones
/// ES = -ei. Exceptions: M6 over 250 up to 315 mm, -9; N9 and coarser above 3 mm, 0.
///
/// Source: ISO 286-1:2010, fundamental deviations of holes, from memory.
pub(super) fn hole(
    letter: &Letter,
    grade: ToleranceGrade,
    nominal: Diameter,
) -> Result<(f64, f64), Error> {
    let width = micrometres(nominal, grade)?;
    let value = letter.value(nominal)?;
    let number = grade.number();
    let mm = round_size(nominal.mm());
    let upper = match letter.rule {
        Rule::Below(_) | Rule::AtZero => return Ok((value + width, value)),
        Rule::Symmetric => return Ok((0.5 * width, -0.5 * width)),
        Rule::Uneven => f64::from(J[usize::from(number.clamp(6, 8) - 6)][range(nominal, &UP_TO)?]),
        Rule::Above(_) if letter.name == "m" && number == 6 && mm > 250.0 && mm <= 315.0 => -9.0,
        Rule::Above(_) if letter.name == "n" && number >= 9 && mm > 3.0 => 0.0,
        Rule::Above(_) => {
            let finest_part = if matches!(letter.name, "k" | "m" | "n") {
                8
            } else {
                7
            };
            match grade.finer() {
                Some(finer) if number <= finest_part && mm > 3.0 => {
                    width - micrometres(nominal, finer)? - value
                }
                _ => -value,
            }
        }
    };
    Ok((upper, upper - width))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::fundamental_deviation::LETTERS;

    #[test]
    fn holes_by_rule_have_the_upper_deviations_of_the_standards_tables() {
        // ISO 286-2, upper deviations in micrometres, from memory, apart from the rule.
        #[rustfmt::skip]
        let tables: [(&str, u8, [i16; 13]); 13] = [
            ("k", 6, [0, 2, 2, 2, 2, 3, 4, 4, 4, 5, 5, 7, 8]),
            ("k", 7, [0, 3, 5, 6, 6, 7, 9, 10, 12, 13, 16, 17, 18]),
            ("k", 8, [0, 5, 6, 8, 10, 12, 14, 16, 20, 22, 25, 28, 29]),
            ("m", 6, [-2, -1, -3, -4, -4, -4, -5, -6, -8, -8, -9, -10, -10]),
            ("m", 7, [-2, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
            ("m", 8, [-2, 2, 1, 2, 4, 5, 5, 6, 8, 9, 9, 11, 11]),
            ("n", 6, [-4, -5, -7, -9, -11, -12, -14, -16, -20, -22, -25, -26, -27]),
            ("n", 7, [-4, -4, -4, -5, -7, -8, -9, -10, -12, -14, -14, -16, -17]),
            ("n", 8, [-4, -2, -3, -3, -3, -3, -4, -4, -4, -5, -5, -5, -6]),
            ("n", 9, [-4, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]),
            ("p", 6, [-6, -9, -12, -15, -18, -21, -26, -30, -36, -41, -47, -51, -55]),
            ("p", 7, [-6, -8, -9, -11, -14, -17, -21, -24, -28, -33, -36, -41, -45]),
            ("p", 9, [-6, -12, -15, -18, -22, -26, -32, -37, -43, -50, -56, -62, -68]),
        ];
        for (name, grade, expected) in tables {
            let letter = LETTERS.iter().find(|letter| letter.name == name).unwrap();
            let grade = ToleranceGrade::new(grade).unwrap();
            let found = UP_TO.map(|mm| {
                let nominal = Diameter::from_mm(mm).unwrap();
                hole(letter, grade, nominal).unwrap().0
            });
            assert_eq!(found, expected.map(f64::from), "{name} {grade}");
        }
    }
}
