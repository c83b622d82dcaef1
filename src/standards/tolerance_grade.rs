//! Standard tolerances: how wide the zone of a grade is at a size.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, Tolerance, round_size};

/// Upper ends of the main ranges of nominal sizes, in mm; an end belongs to its range.
pub(super) const RANGES: [f64; 13] = [
    3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0, 315.0, 400.0, 500.0,
];

/// IT1 to IT16 over the main ranges, in um.
pub(super) const GRADES: [[f64; 13]; 16] = [
    [
        0.8, 1.0, 1.0, 1.2, 1.5, 1.5, 2.0, 2.5, 3.5, 4.5, 6.0, 7.0, 8.0,
    ],
    [
        1.2, 1.5, 1.5, 2.0, 2.5, 2.5, 3.0, 4.0, 5.0, 7.0, 8.0, 9.0, 10.0,
    ],
    [
        2.0, 2.5, 2.5, 3.0, 4.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0, 13.0, 15.0,
    ],
    [
        3.0, 4.0, 4.0, 5.0, 6.0, 7.0, 8.0, 10.0, 12.0, 14.0, 16.0, 18.0, 20.0,
    ],
    [
        4.0, 5.0, 6.0, 8.0, 9.0, 11.0, 13.0, 15.0, 18.0, 20.0, 23.0, 25.0, 27.0,
    ],
    [
        6.0, 8.0, 9.0, 11.0, 13.0, 16.0, 19.0, 22.0, 25.0, 29.0, 32.0, 36.0, 40.0,
    ],
    [
        10.0, 12.0, 15.0, 18.0, 21.0, 25.0, 30.0, 35.0, 40.0, 46.0, 52.0, 57.0, 63.0,
    ],
    [
        14.0, 18.0, 22.0, 27.0, 33.0, 39.0, 46.0, 54.0, 63.0, 72.0, 81.0, 89.0, 97.0,
    ],
    [
        25.0, 30.0, 36.0, 43.0, 52.0, 62.0, 74.0, 87.0, 100.0, 115.0, 130.0, 140.0, 155.0,
    ],
    [
        40.0, 48.0, 58.0, 70.0, 84.0, 100.0, 120.0, 140.0, 160.0, 185.0, 210.0, 230.0, 250.0,
    ],
    [
        60.0, 75.0, 90.0, 110.0, 130.0, 160.0, 190.0, 220.0, 250.0, 290.0, 320.0, 360.0, 400.0,
    ],
    [
        100.0, 120.0, 150.0, 180.0, 210.0, 250.0, 300.0, 350.0, 400.0, 460.0, 520.0, 570.0, 630.0,
    ],
    [
        140.0, 180.0, 220.0, 270.0, 330.0, 390.0, 460.0, 540.0, 630.0, 720.0, 810.0, 890.0, 970.0,
    ],
    [
        250.0, 300.0, 360.0, 430.0, 520.0, 620.0, 740.0, 870.0, 1000.0, 1150.0, 1300.0, 1400.0,
        1550.0,
    ],
    [
        400.0, 480.0, 580.0, 700.0, 840.0, 1000.0, 1200.0, 1400.0, 1600.0, 1850.0, 2100.0, 2300.0,
        2500.0,
    ],
    [
        600.0, 750.0, 900.0, 1100.0, 1300.0, 1600.0, 1900.0, 2200.0, 2500.0, 2900.0, 3200.0,
        3600.0, 4000.0,
    ],
];

/// A standard tolerance grade, IT1 to IT16.
///
/// # Range
/// 1 to 16. The standard has IT01, IT0, IT17 and IT18 too; turning does not meet them.
/// # Source
/// ISO 286-1, from memory.
/// # Example
/// ```
/// use turnwright::standards::tolerance_grade::ToleranceGrade;
/// assert_eq!(ToleranceGrade::new(7)?.to_string(), "IT7");
/// assert!(ToleranceGrade::new(25).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct ToleranceGrade(u8);

impl ToleranceGrade {
    /// The grade of this number.
    ///
    /// # Errors
    /// `grade`, outside 1 to 16.
    pub fn new(number: u32) -> Result<Self, Error> {
        match u8::try_from(number) {
            Ok(small) if (1..=16).contains(&small) => Ok(Self(small)),
            _ => Err(Error::new(
                ErrorKind::OutOfRange,
                "grade",
                number.to_string(),
                "a standard tolerance grade from 1 to 16",
                "read the number behind the letter once more: most turned fits have 5 to 11",
            )),
        }
    }

    /// Its number.
    #[must_use]
    pub const fn number(self) -> u8 {
        self.0
    }

    /// The row of the table.
    pub(super) const fn row(self) -> usize {
        self.0 as usize - 1
    }
}

impl fmt::Display for ToleranceGrade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "IT{}", self.0)
    }
}

/// The main range that holds a nominal size.
pub(super) fn range_of(nominal: Diameter, ends: &[f64]) -> Result<usize, Error> {
    let mm = round_size(nominal.mm());
    ends.iter().position(|end| mm <= *end).ok_or_else(|| {
        Error::new(
            ErrorKind::OutOfRange,
            "nominal",
            nominal.to_string(),
            "a nominal size up to 500 mm, as far as the table goes",
            "give the limits from the drawing as two sizes",
        )
    })
}

/// The standard tolerance of a grade at a nominal size: the width of its zone.
///
/// # Units
/// An inch size is converted exactly and falls into the metric ranges of the standard.
/// # Range
/// Sizes up to 500 mm; the upper end belongs to a range (18 mm lies in 10 to 18).
/// # Errors
/// `nominal`, above 500 mm.
/// # Source
/// ISO 286-1 table 1 (2010), from memory. IT5 to IT16 are held against the formulas of the 1988
/// edition by a test, which names where they differ; there the table wins. IT1 to IT4 have no exact
/// formula and are unchecked.
/// # Example
/// ```
/// use turnwright::standards::tolerance_grade::{standard_tolerance, ToleranceGrade};
/// let it7 = standard_tolerance("18 mm".parse()?, ToleranceGrade::new(7)?)?;
/// assert_eq!(it7.value.to_string(), "0.018 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn standard_tolerance(
    nominal: Diameter,
    grade: ToleranceGrade,
) -> Result<Sourced<Tolerance>, Error> {
    let um = GRADES[grade.row()][range_of(nominal, &RANGES)?];
    Ok(Sourced::new(
        Tolerance::computed_trade(round_size(um * 1e-3)),
        "from memory of ISO 286-1:2010 table 1",
        Standing::FromMemory,
    ))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
pub(super) mod tests {
    use super::*;

    /// Geometric mean of the ends of a range; of the first, of 1 and 3 mm.
    pub(in crate::standards) fn mean(ends: &[f64], at: usize) -> f64 {
        let low = if at == 0 { 1.0 } else { ends[at - 1] };
        (low * ends[at]).sqrt()
    }

    /// i = 0.45 D^(1/3) + 0.001 D, in um.
    fn unit(d: f64) -> f64 {
        0.45 * d.cbrt() + 0.001 * d
    }

    /// Where the table is farther from the formula than a micrometre and than 3 %.
    const MISFITS: &[(u8, usize)] = &[
        (7, 0),
        (9, 0),
        (10, 0),
        (11, 0),
        (12, 0),
        (12, 2),
        (12, 3),
        (13, 0),
        (14, 0),
        (15, 0),
        (16, 0),
    ];

    #[test]
    fn the_table_follows_the_formulas_but_for_the_entries_named() {
        // ISO 286-1:1988, from memory: IT5 7 i, IT6 10 i, and so on.
        let times = [
            7.0, 10.0, 16.0, 25.0, 40.0, 64.0, 100.0, 160.0, 250.0, 400.0, 640.0, 1000.0,
        ];
        let mut misfits = Vec::new();
        for (grade, times) in (5_u8..=16).zip(times) {
            for (at, table) in GRADES[usize::from(grade) - 1].iter().enumerate() {
                let formula = times * unit(mean(&RANGES, at));
                // The standard rounds to a micrometre, and coarser above 100 um.
                let off = (table - formula).abs();
                if off >= 1.0 && off > 0.03 * table {
                    misfits.push((grade, at));
                }
            }
        }
        assert_eq!(misfits, MISFITS);
    }

    #[test]
    fn a_grade_is_wider_than_the_one_before_and_at_larger_sizes() {
        for pair in GRADES.windows(2) {
            assert!(pair[0].iter().zip(&pair[1]).all(|(a, b)| a < b), "{pair:?}");
        }
        for row in GRADES {
            assert!(row.windows(2).all(|pair| pair[0] <= pair[1]), "{row:?}");
        }
    }

    #[test]
    fn from_it7_on_five_grades_are_ten_times_as_wide() {
        // ISO 286-1:1988, from memory: IT(n + 5) = 10 IT(n).
        for n in 7..=11 {
            let ten_times = GRADES[n - 1].map(|um| 10.0 * um);
            assert_eq!(GRADES[n + 4], ten_times, "IT{n}");
        }
    }

    #[test]
    fn an_end_belongs_to_its_range() {
        let at = |mm: f64| range_of(Diameter::from_mm(mm).unwrap(), &RANGES).unwrap();
        assert_eq!((at(18.0), at(18.001), at(0.5)), (3, 4, 0));
        assert!(range_of(Diameter::from_mm(500.1).unwrap(), &RANGES).is_err());
    }
}
