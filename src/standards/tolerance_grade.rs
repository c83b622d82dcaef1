//! Standard tolerances: how wide a zone is, by nominal size and grade.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, Tolerance, round_size};

/// A standard tolerance grade: IT1, the finest here, to IT16.
///
/// # Source
/// ISO 286-1:2010, standard tolerance grades, from memory. IT01, IT0, IT17 and IT18 of the standard
/// are not here.
///
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
    /// The finest grade of the table.
    pub const FINEST: Self = Self(1);
    /// The coarsest grade of the table.
    pub const COARSEST: Self = Self(16);

    /// A grade by its number.
    ///
    /// # Errors
    /// `grade`: 0, 17 and 18 stand in the standard but not here; all other numbers outside 1 to 16
    /// are no grades.
    pub fn new(number: u8) -> Result<Self, Error> {
        match number {
            1..=16 => Ok(Self(number)),
            0 | 17 | 18 => Err(Error::not_offered(
                "grade",
                &format!("IT{number}"),
                "take a grade from IT1 to IT16, or give the limits as two sizes",
            )),
            other => Err(Error::new(
                ErrorKind::OutOfRange,
                "grade",
                format!("IT{other}"),
                "a standard tolerance grade from IT1 to IT16",
                "take the number behind the letter from the drawing, such as 7 of h7",
            )),
        }
    }

    /// Its number.
    #[must_use]
    pub const fn number(self) -> u8 {
        self.0
    }

    /// All grades, the finest first.
    pub fn all() -> impl Iterator<Item = Self> {
        (1..=16).map(Self)
    }

    fn column(self) -> usize {
        usize::from(self.0) - 1
    }

    /// The next finer grade, if the table has it.
    pub(super) fn finer(self) -> Option<Self> {
        (self.0 > 1).then(|| Self(self.0 - 1))
    }
}

impl fmt::Display for ToleranceGrade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(&format!("IT{}", self.0))
    }
}

/// Upper ends of the ranges of nominal sizes, in millimetres; each end belongs to its range.
pub(super) const UP_TO: [f64; 13] = [
    3.0, 6.0, 10.0, 18.0, 30.0, 50.0, 80.0, 120.0, 180.0, 250.0, 315.0, 400.0, 500.0,
];

/// IT1 to IT16 for each range, in micrometres.
#[rustfmt::skip]
const TABLE: [[f64; 16]; 13] = [
    [0.8, 1.2, 2.0, 3.0, 4.0, 6.0, 10.0, 14.0, 25.0, 40.0, 60.0, 100.0, 140.0, 250.0, 400.0, 600.0],
    [1.0, 1.5, 2.5, 4.0, 5.0, 8.0, 12.0, 18.0, 30.0, 48.0, 75.0, 120.0, 180.0, 300.0, 480.0, 750.0],
    [1.0, 1.5, 2.5, 4.0, 6.0, 9.0, 15.0, 22.0, 36.0, 58.0, 90.0, 150.0, 220.0, 360.0, 580.0, 900.0],
    [1.2, 2.0, 3.0, 5.0, 8.0, 11.0, 18.0, 27.0, 43.0, 70.0, 110.0, 180.0, 270.0, 430.0, 700.0, 1100.0],
    [1.5, 2.5, 4.0, 6.0, 9.0, 13.0, 21.0, 33.0, 52.0, 84.0, 130.0, 210.0, 330.0, 520.0, 840.0, 1300.0],
    [1.5, 2.5, 4.0, 7.0, 11.0, 16.0, 25.0, 39.0, 62.0, 100.0, 160.0, 250.0, 390.0, 620.0, 1000.0, 1600.0],
    [2.0, 3.0, 5.0, 8.0, 13.0, 19.0, 30.0, 46.0, 74.0, 120.0, 190.0, 300.0, 460.0, 740.0, 1200.0, 1900.0],
    [2.5, 4.0, 6.0, 10.0, 15.0, 22.0, 35.0, 54.0, 87.0, 140.0, 220.0, 350.0, 540.0, 870.0, 1400.0, 2200.0],
    [3.5, 5.0, 8.0, 12.0, 18.0, 25.0, 40.0, 63.0, 100.0, 160.0, 250.0, 400.0, 630.0, 1000.0, 1600.0, 2500.0],
    [4.5, 7.0, 10.0, 14.0, 20.0, 29.0, 46.0, 72.0, 115.0, 185.0, 290.0, 460.0, 720.0, 1150.0, 1850.0, 2900.0],
    [6.0, 8.0, 12.0, 16.0, 23.0, 32.0, 52.0, 81.0, 130.0, 210.0, 320.0, 520.0, 810.0, 1300.0, 2100.0, 3200.0],
    [7.0, 9.0, 13.0, 18.0, 25.0, 36.0, 57.0, 89.0, 140.0, 230.0, 360.0, 570.0, 890.0, 1400.0, 2300.0, 3600.0],
    [8.0, 10.0, 15.0, 20.0, 27.0, 40.0, 63.0, 97.0, 155.0, 250.0, 400.0, 630.0, 970.0, 1550.0, 2500.0, 4000.0],
];

const CHECKED: &str = "from memory of ISO 286-1:2010, standard tolerances; IT5 and coarser held against the formulas of the 1988 edition";
const UNCHECKED: &str =
    "from memory of ISO 286-1:2010, standard tolerances; IT1 to IT4 are not confirmed by a formula";

/// The first of `ends` that a nominal size does not exceed.
pub(super) fn range(nominal: Diameter, ends: &[f64]) -> Result<usize, Error> {
    let mm = round_size(nominal.mm());
    ends.iter().position(|end| mm <= *end).ok_or_else(|| {
        Error::new(
            ErrorKind::OutOfRange,
            "nominal",
            nominal.to_string(),
            "a nominal size over 0 up to 500 mm, for which the table has a row",
            "give the limits as two sizes, from the drawing",
        )
    })
}

/// The standard tolerance in micrometres.
pub(super) fn micrometres(nominal: Diameter, grade: ToleranceGrade) -> Result<f64, Error> {
    Ok(TABLE[range(nominal, &UP_TO)?][grade.column()])
}

/// The source of a standard tolerance.
pub(super) fn source(grade: ToleranceGrade) -> &'static str {
    if grade.number() < 5 {
        UNCHECKED
    } else {
        CHECKED
    }
}

/// The standard tolerance: the width of the zone of a grade at a nominal size.
///
/// IT1 to IT16 of the standard, from its table; for where the table comes from see
/// [`tolerance_by_formula`].
///
/// # Units
/// An inch size is converted exactly, and has the tolerance of its metric range.
/// # Range
/// Nominal sizes over 0 up to 500 mm; the upper end of a range belongs to it.
/// # Errors
/// `nominal`, above 500 mm.
/// # Source
/// ISO 286-1:2010, table of standard tolerances, from memory; IT5 and coarser are held against the
/// formulas of the 1988 edition, IT1 to IT4 are not confirmed.
/// # Example
/// ```
/// use turnwright::standards::tolerance_grade::{standard_tolerance, ToleranceGrade};
/// let it7 = ToleranceGrade::new(7)?;
/// assert_eq!(standard_tolerance("30 mm".parse()?, it7)?.value, "21 um".parse()?);
/// assert_eq!(standard_tolerance("1 in".parse()?, it7)?.value, "0.021 mm".parse()?);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn standard_tolerance(
    nominal: Diameter,
    grade: ToleranceGrade,
) -> Result<Sourced<Tolerance>, Error> {
    let um = micrometres(nominal, grade)?;
    Ok(Sourced::new(
        Tolerance::computed_trade(um / 1000.0),
        source(grade),
        Standing::FromMemory,
    ))
}

/// A standard tolerance as the formula has it, before the standard's rounding.
///
/// # Example
/// See [`tolerance_by_formula`].
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct FormulaTolerance {
    /// Geometric mean D of the ends of the range.
    pub mean_diameter: Diameter,
    /// Standard tolerance factor i.
    pub tolerance_unit: Tolerance,
    /// The tolerance, not rounded.
    pub tolerance: Tolerance,
}

/// Multiples of i that IT5 to IT16 are.
const MULTIPLES: [f64; 12] = [
    7.0, 10.0, 16.0, 25.0, 40.0, 64.0, 100.0, 160.0, 250.0, 400.0, 640.0, 1000.0,
];

/// Geometric mean of a range's ends, in millimetres; the first range counts from 1 mm.
pub(super) fn mean_of(ends: &[f64], at: usize) -> f64 {
    let from = if at == 0 { 1.0 } else { ends[at - 1] };
    (from * ends[at]).sqrt()
}

/// What the standard's table was made from: IT = a multiple of i.
///
/// i = 0.45 D^(1/3) + 0.001 D, in micrometres with D in millimetres; D is the geometric mean of the
/// range's ends (of 1 and 3 mm in the first). IT5 7 i, IT6 10 i, IT7 16 i, and so on. A check and
/// an explanation: drawings mean the table, [`standard_tolerance`].
///
/// # Units
/// An inch size has the figures of its metric range.
/// # Range
/// Nominal sizes over 0 up to 500 mm, IT5 to IT16. Above 10 mm it is within 4 % of the table; in
/// the first range, up to 3 mm, up to 18 % below.
/// # Errors
/// `nominal`, above 500 mm; `grade`, finer than IT5, whose formula is only a guide.
/// # Source
/// ISO 286-1:1988, formulas for standard tolerances, from memory.
/// # Example
/// ```
/// use turnwright::standards::tolerance_grade::{tolerance_by_formula, ToleranceGrade};
/// let found = tolerance_by_formula("25 mm".parse()?, ToleranceGrade::new(7)?)?;
/// assert_eq!(format!("{:.3}", found.mean_diameter.mm()), "23.238");
/// assert_eq!(format!("{:.1}", 1000.0 * found.tolerance.mm()), "20.9");
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn tolerance_by_formula(
    nominal: Diameter,
    grade: ToleranceGrade,
) -> Result<FormulaTolerance, Error> {
    let mean = mean_of(&UP_TO, range(nominal, &UP_TO)?);
    let multiple = grade
        .column()
        .checked_sub(4)
        .map(|at| MULTIPLES[at])
        .ok_or_else(|| {
            Error::new(
                ErrorKind::OutOfRange,
                "grade",
                grade.to_string(),
                "a grade from IT5 to IT16, for which the formula is the table's",
                "take the standard tolerance from the table",
            )
        })?;
    let unit = 0.45 * mean.cbrt() + 0.001 * mean;
    Ok(FormulaTolerance {
        mean_diameter: Diameter::computed_trade(mean),
        tolerance_unit: Tolerance::computed_trade(unit / 1000.0),
        tolerance: Tolerance::computed_trade(multiple * unit / 1000.0),
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
pub(super) mod tests {
    use super::*;

    /// Within a micrometre of the formula, or within 3 %: the standard rounds coarser than to 1 um.
    pub(in crate::standards) fn fits(table: f64, low: f64, high: f64) -> bool {
        (low - 1.0 < table && table < high + 1.0)
            || (table - low).abs().min((table - high).abs()) <= 0.03 * table
    }

    #[test]
    fn the_table_is_that_of_the_formula_but_for_the_entries_named() {
        // ISO 286-1:1988, IT5 7 i to IT16 1000 i, from memory. The table wins where it differs.
        let misfits: Vec<(u8, f64)> = (0..13)
            .flat_map(|row| ToleranceGrade::all().map(move |grade| (row, grade)))
            .filter(|(_, grade)| grade.number() >= 5)
            .filter(|(row, grade)| {
                let nominal = Diameter::from_mm(UP_TO[*row]).unwrap();
                let formula = tolerance_by_formula(nominal, *grade).unwrap();
                let formula = formula.tolerance.mm() * 1000.0;
                !fits(TABLE[*row][grade.column()], formula, formula)
            })
            .map(|(row, grade)| (grade.number(), UP_TO[row]))
            .collect();
        assert_eq!(
            misfits,
            [
                (7, 3.0),
                (9, 3.0),
                (10, 3.0),
                (11, 3.0),
                (12, 3.0),
                (13, 3.0),
                (14, 3.0),
                (15, 3.0),
                (16, 3.0),
                (12, 10.0),
                (12, 18.0),
            ]
        );
    }

    #[test]
    fn tolerances_grow_with_grade_and_never_fall_with_size() {
        for row in 0..13 {
            assert!(TABLE[row].is_sorted_by(|a, b| a < b), "{}", UP_TO[row]);
            if row > 0 {
                assert!((0..16).all(|g| TABLE[row - 1][g] <= TABLE[row][g]));
            }
        }
    }

    #[test]
    fn from_it7_five_grades_on_is_ten_times() {
        // ISO 286-1: IT(n+5) = 10 IT(n), from memory; holds exactly in the table from IT7 on.
        for row in &TABLE {
            for grade in 7..=11 {
                assert_eq!(row[grade + 4], 10.0 * row[grade - 1]);
            }
        }
    }

    #[test]
    fn the_upper_end_belongs_to_the_range_and_a_hair_more_does_not() {
        let it6 = ToleranceGrade::new(6).unwrap();
        let at = |mm: f64| {
            standard_tolerance(Diameter::from_mm(mm).unwrap(), it6)
                .unwrap()
                .value
                .mm()
        };
        assert_eq!((at(30.0), at(30.000_001)), (0.013, 0.016));
        // Less than sizes are told apart by: still the end of the range.
        assert_eq!(at(30.0 + 1e-11), 0.013);
        let error = standard_tolerance(Diameter::from_mm(500.001).unwrap(), it6).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (ErrorKind::OutOfRange, "nominal")
        );
    }

    #[test]
    fn numbers_that_are_no_grade_here_are_refused() {
        for (number, kind) in [
            (0, ErrorKind::NotOffered),
            (17, ErrorKind::NotOffered),
            (25, ErrorKind::OutOfRange),
        ] {
            assert_eq!(ToleranceGrade::new(number).unwrap_err().kind(), kind);
        }
    }
}
