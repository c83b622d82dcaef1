//! Fundamental deviations: how far the zone of a letter lies from the nominal size.
//!
//! Shafts a to h hang their upper limit below the nominal size (es negative), k to zc stand their
//! lower limit above it (ei). A hole of the same letter is the mirror image, but for K to ZC of the
//! finer grades, which are drawn in so that hole and shaft of one letter fit alike.

use super::tolerance_grade::{GRADES, RANGES, ToleranceGrade, range_of};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, round_size};
use crate::standards::limits::Feature;

/// Upper ends of the finer ranges, for a to c and r to zc, in mm.
const FINE_RANGES: [f64; 25] = [
    3.0, 6.0, 10.0, 14.0, 18.0, 24.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 140.0, 160.0,
    180.0, 200.0, 225.0, 250.0, 280.0, 315.0, 355.0, 400.0, 450.0, 500.0,
];

/// No value: the standard has none there.
const NONE: f64 = f64::NAN;

/// By letter over the main ranges, in um: of d to g -es, of k to p ei.
const COARSE: [(&str, [f64; 13]); 8] = [
    (
        "d",
        [
            20.0, 30.0, 40.0, 50.0, 65.0, 80.0, 100.0, 120.0, 145.0, 170.0, 190.0, 210.0, 230.0,
        ],
    ),
    (
        "e",
        [
            14.0, 20.0, 25.0, 32.0, 40.0, 50.0, 60.0, 72.0, 85.0, 100.0, 110.0, 125.0, 135.0,
        ],
    ),
    (
        "f",
        [
            6.0, 10.0, 13.0, 16.0, 20.0, 25.0, 30.0, 36.0, 43.0, 50.0, 56.0, 62.0, 68.0,
        ],
    ),
    (
        "g",
        [
            2.0, 4.0, 5.0, 6.0, 7.0, 9.0, 10.0, 12.0, 14.0, 15.0, 17.0, 18.0, 20.0,
        ],
    ),
    (
        "k",
        [
            0.0, 1.0, 1.0, 1.0, 2.0, 2.0, 2.0, 3.0, 3.0, 4.0, 4.0, 4.0, 5.0,
        ],
    ),
    (
        "m",
        [
            2.0, 4.0, 6.0, 7.0, 8.0, 9.0, 11.0, 13.0, 15.0, 17.0, 20.0, 21.0, 23.0,
        ],
    ),
    (
        "n",
        [
            4.0, 8.0, 10.0, 12.0, 15.0, 17.0, 20.0, 23.0, 27.0, 31.0, 34.0, 37.0, 40.0,
        ],
    ),
    (
        "p",
        [
            6.0, 12.0, 15.0, 18.0, 22.0, 26.0, 32.0, 37.0, 43.0, 50.0, 56.0, 62.0, 68.0,
        ],
    ),
];

/// By letter over the finer ranges, in um: of a to c -es, of r to zc ei.
const FINE: [(&str, [f64; 25]); 14] = [
    (
        "a",
        [
            270.0, 270.0, 280.0, 290.0, 290.0, 300.0, 300.0, 310.0, 320.0, 340.0, 360.0, 380.0,
            410.0, 460.0, 520.0, 580.0, 660.0, 740.0, 820.0, 920.0, 1050.0, 1200.0, 1350.0, 1500.0,
            1650.0,
        ],
    ),
    (
        "b",
        [
            140.0, 140.0, 150.0, 150.0, 150.0, 160.0, 160.0, 170.0, 180.0, 190.0, 200.0, 220.0,
            240.0, 260.0, 280.0, 310.0, 340.0, 380.0, 420.0, 480.0, 540.0, 600.0, 680.0, 760.0,
            840.0,
        ],
    ),
    (
        "c",
        [
            60.0, 70.0, 80.0, 95.0, 95.0, 110.0, 110.0, 120.0, 130.0, 140.0, 150.0, 170.0, 180.0,
            200.0, 210.0, 230.0, 240.0, 260.0, 280.0, 300.0, 330.0, 360.0, 400.0, 440.0, 480.0,
        ],
    ),
    (
        "r",
        [
            10.0, 15.0, 19.0, 23.0, 23.0, 28.0, 28.0, 34.0, 34.0, 41.0, 43.0, 51.0, 54.0, 63.0,
            65.0, 68.0, 77.0, 80.0, 84.0, 94.0, 98.0, 108.0, 114.0, 126.0, 132.0,
        ],
    ),
    (
        "s",
        [
            14.0, 19.0, 23.0, 28.0, 28.0, 35.0, 35.0, 43.0, 43.0, 53.0, 59.0, 71.0, 79.0, 92.0,
            100.0, 108.0, 122.0, 130.0, 140.0, 158.0, 170.0, 190.0, 208.0, 232.0, 252.0,
        ],
    ),
    (
        "t",
        [
            NONE, NONE, NONE, NONE, NONE, NONE, 41.0, 48.0, 54.0, 66.0, 75.0, 91.0, 104.0, 122.0,
            134.0, 146.0, 166.0, 180.0, 196.0, 218.0, 240.0, 268.0, 294.0, 330.0, 360.0,
        ],
    ),
    (
        "u",
        [
            18.0, 23.0, 28.0, 33.0, 33.0, 41.0, 48.0, 60.0, 70.0, 87.0, 102.0, 124.0, 144.0, 170.0,
            190.0, 210.0, 236.0, 258.0, 284.0, 315.0, 350.0, 390.0, 435.0, 490.0, 540.0,
        ],
    ),
    (
        "v",
        [
            NONE, NONE, NONE, NONE, 39.0, 47.0, 55.0, 68.0, 81.0, 102.0, 120.0, 146.0, 172.0,
            202.0, 228.0, 252.0, 284.0, 310.0, 340.0, 385.0, 425.0, 475.0, 530.0, 595.0, 660.0,
        ],
    ),
    (
        "x",
        [
            20.0, 28.0, 34.0, 40.0, 45.0, 54.0, 64.0, 80.0, 97.0, 122.0, 146.0, 178.0, 210.0,
            248.0, 280.0, 310.0, 350.0, 385.0, 425.0, 475.0, 525.0, 590.0, 660.0, 740.0, 820.0,
        ],
    ),
    (
        "y",
        [
            NONE, NONE, NONE, NONE, NONE, 63.0, 75.0, 94.0, 114.0, 144.0, 174.0, 214.0, 254.0,
            300.0, 340.0, 380.0, 425.0, 470.0, 520.0, 580.0, 650.0, 730.0, 820.0, 920.0, 1000.0,
        ],
    ),
    (
        "z",
        [
            26.0, 35.0, 42.0, 50.0, 60.0, 73.0, 88.0, 112.0, 136.0, 172.0, 210.0, 258.0, 310.0,
            365.0, 415.0, 465.0, 520.0, 575.0, 640.0, 710.0, 790.0, 900.0, 1000.0, 1100.0, 1250.0,
        ],
    ),
    (
        "za",
        [
            32.0, 42.0, 52.0, 64.0, 77.0, 98.0, 118.0, 148.0, 180.0, 226.0, 274.0, 335.0, 400.0,
            470.0, 535.0, 600.0, 670.0, 740.0, 820.0, 920.0, 1000.0, 1150.0, 1300.0, 1450.0,
            1600.0,
        ],
    ),
    (
        "zb",
        [
            40.0, 50.0, 67.0, 90.0, 108.0, 136.0, 160.0, 200.0, 242.0, 300.0, 360.0, 445.0, 525.0,
            620.0, 700.0, 780.0, 880.0, 960.0, 1050.0, 1200.0, 1300.0, 1500.0, 1650.0, 1850.0,
            2100.0,
        ],
    ),
    (
        "zc",
        [
            60.0, 80.0, 97.0, 130.0, 150.0, 188.0, 218.0, 274.0, 325.0, 405.0, 480.0, 585.0, 690.0,
            800.0, 900.0, 1000.0, 1150.0, 1250.0, 1350.0, 1550.0, 1700.0, 1900.0, 2100.0, 2400.0,
            2600.0,
        ],
    ),
];

/// j by grade, ei, and J by grade, ES, over the main ranges, in um; no formula gives them.
const J: [(&str, u8, [f64; 13]); 6] = [
    (
        "j",
        5,
        [
            -2.0, -2.0, -2.0, -3.0, -4.0, -5.0, -7.0, -9.0, -11.0, -13.0, -16.0, -18.0, -20.0,
        ],
    ),
    (
        "j",
        6,
        [
            -2.0, -2.0, -2.0, -3.0, -4.0, -5.0, -7.0, -9.0, -11.0, -13.0, -16.0, -18.0, -20.0,
        ],
    ),
    (
        "j",
        7,
        [
            -4.0, -4.0, -5.0, -6.0, -8.0, -10.0, -12.0, -15.0, -18.0, -21.0, -26.0, -28.0, -32.0,
        ],
    ),
    (
        "J",
        6,
        [
            2.0, 5.0, 5.0, 6.0, 8.0, 10.0, 13.0, 16.0, 18.0, 22.0, 25.0, 29.0, 33.0,
        ],
    ),
    (
        "J",
        7,
        [
            4.0, 6.0, 8.0, 10.0, 12.0, 14.0, 18.0, 22.0, 26.0, 30.0, 36.0, 39.0, 43.0,
        ],
    ),
    (
        "J",
        8,
        [
            6.0, 10.0, 12.0, 15.0, 20.0, 24.0, 28.0, 34.0, 41.0, 47.0, 55.0, 60.0, 66.0,
        ],
    ),
];

/// The least and the largest grade.
type Grades = (u8, u8);

/// The grades in which the standard has a letter: of shafts, of holes.
///
/// ISO 286-2:2010, from memory; K coarser than IT8 exists only up to 3 mm and is left out.
const GRADES_OF: [(&str, Grades, Grades); 25] = [
    ("a", (9, 13), (9, 13)),
    ("b", (8, 13), (8, 13)),
    ("c", (8, 12), (8, 13)),
    ("d", (5, 13), (6, 13)),
    ("e", (5, 10), (5, 10)),
    ("f", (3, 10), (3, 10)),
    ("g", (3, 10), (3, 10)),
    ("h", (1, 16), (1, 16)),
    ("j", (5, 7), (6, 8)),
    ("js", (1, 16), (1, 16)),
    ("k", (3, 13), (3, 8)),
    ("m", (3, 9), (3, 10)),
    ("n", (3, 9), (3, 11)),
    ("p", (3, 10), (3, 10)),
    ("r", (3, 10), (3, 10)),
    ("s", (3, 10), (3, 10)),
    ("t", (5, 8), (5, 8)),
    ("u", (5, 9), (5, 10)),
    ("v", (5, 8), (5, 8)),
    ("x", (5, 10), (5, 10)),
    ("y", (6, 10), (6, 10)),
    ("z", (6, 11), (6, 11)),
    ("za", (7, 11), (7, 11)),
    ("zb", (8, 11), (7, 11)),
    ("zc", (8, 11), (7, 11)),
];

/// The letters, small, in the order of the standard.
pub(super) fn letters() -> impl Iterator<Item = &'static str> {
    GRADES_OF.iter().map(|(letter, ..)| *letter)
}

/// The least and the largest grade in which the standard has a (small) letter.
pub(super) fn grades_of(letter: &str, feature: Feature) -> Option<Grades> {
    let (_, shaft, hole) = GRADES_OF.iter().find(|(name, ..)| *name == letter)?;
    Some(match feature {
        Feature::Shaft => *shaft,
        Feature::Hole => *hole,
    })
}

/// Upper and lower deviation of a class, in um; the letter is small, and offered in this grade.
pub(super) fn deviations(
    letter: &'static str,
    feature: Feature,
    grade: ToleranceGrade,
    nominal: Diameter,
) -> Result<(f64, f64), Error> {
    let range = range_of(nominal, &RANGES)?;
    let tolerance = GRADES[grade.row()][range];
    let above = |lower: f64| (lower + tolerance, lower);
    let below = |upper: f64| (upper, upper - tolerance);
    if letter == "js" {
        return Ok((0.5 * tolerance, -0.5 * tolerance));
    }
    if letter == "j" {
        let row = J.iter().find(|(_, number, _)| *number == grade.number());
        let name = match feature {
            Feature::Shaft => "j",
            Feature::Hole => "J",
        };
        let row = J
            .iter()
            .find(|(j, number, _)| *j == name && *number == grade.number())
            .or(row);
        let value = row.map_or(NONE, |(.., row)| row[range]);
        return Ok(match feature {
            Feature::Shaft => above(value),
            Feature::Hole => below(value),
        });
    }
    let magnitude = magnitude(letter, range, nominal)?;
    if letter <= "h" {
        return Ok(match feature {
            Feature::Shaft => below(-magnitude),
            Feature::Hole => above(magnitude),
        });
    }
    if feature == Feature::Hole {
        return Ok(below(hole_upper(letter, magnitude, grade, range, nominal)));
    }
    // The shaft k stands off the nominal size in IT4 to IT7 only.
    let off = letter != "k" || (4..=7).contains(&grade.number());
    Ok(above(if off { magnitude } else { 0.0 }))
}

/// ES of a hole of the letters k to zc.
fn hole_upper(
    letter: &str,
    ei: f64,
    grade: ToleranceGrade,
    range: usize,
    nominal: Diameter,
) -> f64 {
    let number = grade.number();
    let small = round_size(nominal.mm()) <= 3.0;
    if letter == "m" && number == 6 && RANGES[range] == 315.0 {
        return -9.0;
    }
    if letter == "n" && number >= 9 && !small {
        return 0.0;
    }
    let finer = match letter {
        "k" | "m" | "n" => number <= 8,
        _ => number <= 7,
    };
    if !finer || small {
        return -ei;
    }
    GRADES[grade.row()][range] - GRADES[grade.row() - 1][range] - ei
}

/// The magnitude of the fundamental deviation of a letter other than j and js, in um.
fn magnitude(letter: &'static str, range: usize, nominal: Diameter) -> Result<f64, Error> {
    if letter == "h" {
        return Ok(0.0);
    }
    let coarse = COARSE.iter().find(|(name, _)| *name == letter);
    let value = match coarse {
        Some((_, row)) => row[range],
        None => {
            let fine = FINE.iter().find(|(name, _)| *name == letter);
            fine.map_or(NONE, |(_, row)| {
                range_of(nominal, &FINE_RANGES).map_or(NONE, |range| row[range])
            })
        }
    };
    // a and b are not for sizes up to 1 mm; a size in a gap of the table has none either.
    let too_small = matches!(letter, "a" | "b") && round_size(nominal.mm()) <= 1.0;
    if value.is_nan() || too_small {
        let from = match letter {
            "a" | "b" => 1.0,
            "t" => 24.0,
            "v" => 14.0,
            _ => 18.0,
        };
        return Err(Error::new(
            ErrorKind::OutOfRange,
            "nominal",
            nominal.to_string(),
            format!("a nominal size above {from} mm, where the standard has the letter {letter}"),
            "take the next letter, or give the limits as two sizes",
        ));
    }
    Ok(value)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::standards::tolerance_grade::tests::mean;

    /// Where the table is farther from the formula than a micrometre and than 3 %: letter and the
    /// upper end of its range.
    const MISFITS: &[(&str, f64)] = &[
        ("g", 3.0),
        ("m", 3.0),
        ("n", 3.0),
        ("p", 3.0),
        ("a", 14.0),
        ("b", 140.0),
        ("b", 160.0),
        ("c", 3.0),
        ("c", 14.0),
        ("c", 18.0),
        ("c", 24.0),
        ("c", 30.0),
        ("c", 40.0),
        ("s", 3.0),
        ("t", 30.0),
        ("u", 3.0),
        ("u", 6.0),
        ("u", 10.0),
        ("u", 14.0),
        ("x", 3.0),
        ("x", 6.0),
        ("x", 10.0),
        ("x", 14.0),
        ("x", 18.0),
        ("z", 3.0),
        ("z", 6.0),
        ("z", 10.0),
        ("z", 14.0),
        ("z", 18.0),
        ("za", 3.0),
        ("za", 6.0),
        ("za", 10.0),
        ("zb", 3.0),
        ("zb", 6.0),
        ("zc", 3.0),
        ("zc", 6.0),
    ];

    /// The formulas of ISO 286-1:1988, from memory, in um, D in mm: a span where the standard leaves one.
    fn formula(letter: &str, ends: &[f64], at: usize) -> (f64, f64) {
        let d = mean(ends, at);
        let main = RANGES.iter().position(|end| ends[at] <= *end).unwrap();
        let it = |n: usize| GRADES[n - 1][main];
        let one = |value: f64| (value, value);
        let row = |name: &str| COARSE.iter().find(|(l, _)| *l == name).unwrap().1[main];
        match letter {
            "a" if ends[at] <= 120.0 => one(265.0 + 1.3 * d),
            "a" => one(3.5 * d),
            "b" if ends[at] <= 160.0 => one(140.0 + 0.85 * d),
            "b" => one(1.8 * d),
            "c" if ends[at] <= 40.0 => one(52.0 * d.powf(0.2)),
            "c" => one(95.0 + 0.8 * d),
            "d" => one(16.0 * d.powf(0.44)),
            "e" => one(11.0 * d.powf(0.41)),
            "f" => one(5.5 * d.powf(0.41)),
            "g" => one(2.5 * d.powf(0.34)),
            "k" => one(0.6 * d.cbrt()),
            "m" => one(it(7) - it(6)),
            "n" => one(5.0 * d.powf(0.34)),
            "p" => (it(7), it(7) + 5.0),
            "r" => {
                let s = FINE.iter().find(|(l, _)| *l == "s").unwrap().1[at];
                one((row("p") * s).sqrt())
            }
            "s" if ends[at] <= 50.0 => (it(8) + 1.0, it(8) + 4.0),
            "s" => one(it(7) + 0.4 * d),
            "t" => one(it(7) + 0.63 * d),
            "u" => one(it(7) + d),
            "v" => one(it(7) + 1.25 * d),
            "x" => one(it(7) + 1.6 * d),
            "y" => one(it(7) + 2.0 * d),
            "z" => one(it(7) + 2.5 * d),
            "za" => one(it(8) + 3.15 * d),
            "zb" => one(it(9) + 4.0 * d),
            "zc" => one(it(10) + 5.0 * d),
            other => panic!("no formula for {other}"),
        }
    }

    #[test]
    fn the_tables_follow_the_formulas_but_for_the_entries_named() {
        let mut misfits = Vec::new();
        let mut look = |letter: &'static str, ends: &[f64], row: &[f64]| {
            for (at, table) in row.iter().enumerate().filter(|(_, v)| !v.is_nan()) {
                let (low, high) = formula(letter, ends, at);
                // Within a micrometre of the formula or its span, or of the coarser rounding of 3 %.
                let off = (low - table).max(table - high).max(0.0);
                if off >= 1.0 && off > 0.03 * table {
                    misfits.push((letter, ends[at]));
                }
            }
        };
        for (letter, row) in &COARSE {
            look(letter, &RANGES, row);
        }
        for (letter, row) in &FINE {
            look(letter, &FINE_RANGES, row);
        }
        assert_eq!(misfits, MISFITS);
    }

    #[test]
    fn transition_and_interference_holes_have_the_values_remembered_for_them() {
        // ISO 286-2:2010, ES in um, from memory apart from the rule that computes them.
        let remembered: [(&str, [f64; 13]); 13] = [
            (
                "K6",
                [
                    0.0, 2.0, 2.0, 2.0, 2.0, 3.0, 4.0, 4.0, 4.0, 5.0, 5.0, 7.0, 8.0,
                ],
            ),
            (
                "K7",
                [
                    0.0, 3.0, 5.0, 6.0, 6.0, 7.0, 9.0, 10.0, 12.0, 13.0, 16.0, 17.0, 18.0,
                ],
            ),
            (
                "K8",
                [
                    0.0, 5.0, 6.0, 8.0, 10.0, 12.0, 14.0, 16.0, 20.0, 22.0, 25.0, 28.0, 29.0,
                ],
            ),
            (
                "M6",
                [
                    -2.0, -1.0, -3.0, -4.0, -4.0, -4.0, -5.0, -6.0, -8.0, -8.0, -9.0, -10.0, -10.0,
                ],
            ),
            (
                "M7",
                [
                    -2.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0,
                ],
            ),
            (
                "M8",
                [
                    -2.0, 2.0, 1.0, 2.0, 4.0, 5.0, 5.0, 6.0, 8.0, 9.0, 9.0, 11.0, 11.0,
                ],
            ),
            (
                "N6",
                [
                    -4.0, -5.0, -7.0, -9.0, -11.0, -12.0, -14.0, -16.0, -20.0, -22.0, -25.0, -26.0,
                    -27.0,
                ],
            ),
            (
                "N7",
                [
                    -4.0, -4.0, -4.0, -5.0, -7.0, -8.0, -9.0, -10.0, -12.0, -14.0, -14.0, -16.0,
                    -17.0,
                ],
            ),
            (
                "N8",
                [
                    -4.0, -2.0, -3.0, -3.0, -3.0, -3.0, -4.0, -4.0, -4.0, -5.0, -5.0, -5.0, -6.0,
                ],
            ),
            (
                "N9",
                [
                    -4.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0,
                ],
            ),
            (
                "P6",
                [
                    -6.0, -9.0, -12.0, -15.0, -18.0, -21.0, -26.0, -30.0, -36.0, -41.0, -47.0,
                    -51.0, -55.0,
                ],
            ),
            (
                "P7",
                [
                    -6.0, -8.0, -9.0, -11.0, -14.0, -17.0, -21.0, -24.0, -28.0, -33.0, -36.0,
                    -41.0, -45.0,
                ],
            ),
            (
                "P9",
                [
                    -6.0, -12.0, -15.0, -18.0, -22.0, -26.0, -32.0, -37.0, -43.0, -50.0, -56.0,
                    -62.0, -68.0,
                ],
            ),
        ];
        for (class, row) in remembered {
            let (letter, number) = class.split_at(1);
            let small = letters().find(|l| *l == letter.to_lowercase()).unwrap();
            let grade = ToleranceGrade::new(number.parse().unwrap()).unwrap();
            for (end, expected) in RANGES.iter().zip(row) {
                let nominal = Diameter::from_mm(*end).unwrap();
                let (upper, _) = deviations(small, Feature::Hole, grade, nominal).unwrap();
                assert_eq!(upper, expected, "{class} {end}");
            }
        }
    }

    #[test]
    fn zones_of_later_letters_lie_higher() {
        // Of one grade: each letter's zone lies above the one before it, or on it.
        for end in FINE_RANGES {
            let nominal = Diameter::from_mm(end).unwrap();
            for number in 1..=16 {
                let grade = ToleranceGrade::new(number).unwrap();
                let mut last = f64::NEG_INFINITY;
                // js, centred, lies between j and k by its width only.
                for letter in letters().filter(|l| !matches!(*l, "js" | "j")) {
                    let (least, most) = grades_of(letter, Feature::Shaft).unwrap();
                    if !(u32::from(least)..=u32::from(most)).contains(&number) {
                        continue;
                    }
                    if let Ok((_, lower)) = deviations(letter, Feature::Shaft, grade, nominal) {
                        assert!(lower >= last, "{letter}{number} {end}");
                        last = lower;
                    }
                }
            }
        }
    }

    #[test]
    fn there_is_no_deviation_where_the_standard_has_none() {
        let grade = |n| ToleranceGrade::new(n).unwrap();
        for (letter, mm, n) in [
            ("t", 24.0, 7),
            ("v", 14.0, 7),
            ("y", 18.0, 7),
            ("a", 1.0, 11),
            ("b", 0.5, 11),
        ] {
            let nominal = Diameter::from_mm(mm).unwrap();
            let error = deviations(letter, Feature::Shaft, grade(n), nominal).unwrap_err();
            assert_eq!(error.field(), "nominal", "{letter} {mm}");
            let above = Diameter::from_mm(mm + 0.01).unwrap();
            assert_eq!(
                deviations(letter, Feature::Shaft, grade(n), above).is_ok(),
                letter != "b" || mm >= 1.0,
                "{letter} {mm}"
            );
        }
    }
}
