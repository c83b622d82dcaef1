//! Surface texture: the N grades, and over which length a roughness is measured.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Recorded, Sourced, Standing};
use crate::quantity::{self, Feed, Quantity, Ra, Rz, ShortCutOff, WorkLength};

/// Roughness grade number, as older drawings write it.
///
/// # Source
/// ISO 1302, 1978 and 1992 editions, from memory; later editions no longer recommend them.
/// # Example
/// ```
/// use turnwright::standards::texture::Grade;
/// assert_eq!(Grade::of("1.5 um".parse()?), Some(Grade::N7));
/// assert_eq!(Grade::N7.ra().um(), 1.6);
/// assert_eq!(Grade::N7.ra_inch().to_string(), "1.6002 um");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
pub enum Grade {
    /// Ra 0.025 um.
    N1,
    /// Ra 0.05 um.
    N2,
    /// Ra 0.1 um.
    N3,
    /// Ra 0.2 um.
    N4,
    /// Ra 0.4 um.
    N5,
    /// Ra 0.8 um.
    N6,
    /// Ra 1.6 um.
    N7,
    /// Ra 3.2 um.
    N8,
    /// Ra 6.3 um.
    N9,
    /// Ra 12.5 um.
    N10,
    /// Ra 25 um.
    N11,
    /// Ra 50 um.
    N12,
}

/// Grade, its name, Ra in micrometres, and the rounded partner in microinches.
const GRADES: [(Grade, &str, f64, f64); 12] = [
    (Grade::N1, "N1", 0.025, 1.0),
    (Grade::N2, "N2", 0.05, 2.0),
    (Grade::N3, "N3", 0.1, 4.0),
    (Grade::N4, "N4", 0.2, 8.0),
    (Grade::N5, "N5", 0.4, 16.0),
    (Grade::N6, "N6", 0.8, 32.0),
    (Grade::N7, "N7", 1.6, 63.0),
    (Grade::N8, "N8", 3.2, 125.0),
    (Grade::N9, "N9", 6.3, 250.0),
    (Grade::N10, "N10", 12.5, 500.0),
    (Grade::N11, "N11", 25.0, 1000.0),
    (Grade::N12, "N12", 50.0, 2000.0),
];

impl Grade {
    /// All grades, the smoothest first.
    ///
    /// ```
    /// use turnwright::standards::texture::Grade;
    /// assert_eq!(Grade::all().count(), 12);
    /// ```
    pub fn all() -> impl ExactSizeIterator<Item = Self> {
        GRADES.iter().map(|row| row.0)
    }

    /// The smoothest grade that a surface of this Ra meets; none above 50 um.
    ///
    /// The value of a grade belongs to it. The inch partners are rounded: 63 uin is 1.6002 um and
    /// so, to the letter, no longer N7.
    ///
    /// ```
    /// use turnwright::standards::texture::Grade;
    /// assert_eq!(Grade::of("1.6 um".parse()?), Some(Grade::N7));
    /// assert_eq!(Grade::of("1.61 um".parse()?), Some(Grade::N8));
    /// assert_eq!(Grade::of("51 um".parse()?), None);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn of(ra: Ra) -> Option<Self> {
        GRADES.iter().find(|row| ra.um() <= row.2).map(|row| row.0)
    }

    /// The name on a drawing.
    #[must_use]
    pub const fn name(self) -> &'static str {
        GRADES[self as usize].1
    }

    /// The largest Ra of this grade.
    #[must_use]
    pub const fn ra(self) -> Ra {
        Ra::computed_trade(GRADES[self as usize].2)
    }

    /// The rounded partner of [`ra`](Self::ra) on inch drawings, within 2 % of it.
    #[must_use]
    pub const fn ra_inch(self) -> Ra {
        Ra::computed_trade(GRADES[self as usize].3 * 254.0 / 10000.0)
    }
}

impl fmt::Display for Grade {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// Over which lengths a roughness is measured.
///
/// ```
/// use turnwright::standards::texture::cut_off_by_ra;
/// let measured = cut_off_by_ra("0.8 um".parse()?)?.value;
/// assert_eq!(measured.to_string(), "cut-off 0.8 mm, evaluation length 4 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CutOff {
    /// The cut-off wavelength, which is the sampling length: longer waves are not roughness.
    pub cut_off: WorkLength,
    /// Five sampling lengths: how much straight surface the instrument needs, and more to run up.
    pub evaluation_length: WorkLength,
}

impl CutOff {
    /// The cut-off as the filter of a profile takes it.
    ///
    /// ```
    /// use turnwright::standards::texture::cut_off_by_ra;
    /// assert_eq!(cut_off_by_ra("0.8 um".parse()?)?.value.long_wave().mm(), 0.8);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn long_wave(self) -> quantity::CutOff {
        quantity::CutOff::computed_trade(self.cut_off.mm())
    }
}

impl Recorded for CutOff {}

impl fmt::Display for CutOff {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "cut-off {}, evaluation length {}",
            self.cut_off, self.evaluation_length
        )
    }
}

/// One column of the table: above the first value, then the upper end of each row, which belongs
/// to it.
struct Column {
    above: f64,
    up_to: [f64; 5],
    source: &'static str,
}

/// Cut-off and evaluation length of each row, in millimetres.
const LENGTHS: [(f64, f64); 5] = [
    (0.08, 0.4),
    (0.25, 1.25),
    (0.8, 4.0),
    (2.5, 12.5),
    (8.0, 40.0),
];

fn row_of<Q: Quantity>(column: &Column, value: Q) -> Result<Sourced<CutOff>, Error> {
    column
        .up_to
        .iter()
        .zip(LENGTHS)
        .find(|(up_to, _)| value.trade() > column.above && value.trade() <= **up_to)
        .map(|(_, (cut_off, evaluation))| {
            Sourced::new(
                CutOff {
                    cut_off: WorkLength::computed_trade(cut_off),
                    evaluation_length: WorkLength::computed_trade(evaluation),
                },
                column.source,
                Standing::FromMemory,
            )
        })
        .ok_or_else(|| {
            let unit = Q::ROW.kind().units()[0].text();
            Error::new(
                ErrorKind::OutOfRange,
                Q::ROW.name(),
                value.to_string(),
                format!(
                    "{} above {} {unit} and up to {} {unit}, where the standard has a cut-off",
                    Q::ROW.what(),
                    column.above,
                    column.up_to[4]
                ),
                "choose the cut-off yourself, and write it beside the measured value",
            )
        })
}

/// The cut-off with which a surface without a pattern is measured, from its Ra.
///
/// # Units
/// The types carry them.
/// # Range
/// Ra above 0.006 um and up to 80 um; the upper end of a row belongs to it. A turned surface has a
/// pattern, the feed marks: see [`cut_off_by_feed`].
/// # Errors
/// `ra`, outside the table.
/// # Source
/// ISO 4288:1996 table 1, from memory. ISO 21920-3:2021 keeps the lengths as setting classes (from
/// memory, unverified page).
/// # Example
/// ```
/// use turnwright::standards::texture::cut_off_by_ra;
/// assert_eq!(cut_off_by_ra("2 um".parse()?)?.value.cut_off.mm(), 0.8);
/// assert_eq!(cut_off_by_ra("125 uin".parse()?)?.value.cut_off.mm(), 2.5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cut_off_by_ra(ra: Ra) -> Result<Sourced<CutOff>, Error> {
    row_of(
        &Column {
            above: 0.006,
            up_to: [0.02, 0.1, 2.0, 10.0, 80.0],
            source: "from memory of ISO 4288:1996 table 1",
        },
        ra,
    )
}

/// The cut-off with which a surface without a pattern is measured, from its Rz.
///
/// # Units
/// The types carry them.
/// # Range
/// Rz above 0.025 um and up to 200 um; the upper end of a row belongs to it.
/// # Errors
/// `rz`, outside the table.
/// # Source
/// ISO 4288:1996 table 2, from memory.
/// # Example
/// ```
/// use turnwright::standards::texture::cut_off_by_rz;
/// assert_eq!(cut_off_by_rz("6.3 um".parse()?)?.value.cut_off.mm(), 0.8);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cut_off_by_rz(rz: Rz) -> Result<Sourced<CutOff>, Error> {
    row_of(
        &Column {
            above: 0.025,
            up_to: [0.1, 0.5, 10.0, 50.0, 200.0],
            source: "from memory of ISO 4288:1996 table 2",
        },
        rz,
    )
}

/// The cut-off with which a turned surface is measured, from the feed it was turned with.
///
/// RSm = f: the mean spacing of a turned profile is the feed per revolution.
///
/// # Units
/// The types carry them.
/// # Range
/// Feed above 0.013 mm/rev and up to 4 mm/rev; the upper end of a row belongs to it.
/// # Errors
/// `feed`, outside the table.
/// # Source
/// ISO 4288:1996 table 3, from memory.
/// # Example
/// ```
/// use turnwright::standards::texture::cut_off_by_feed;
/// let measured = cut_off_by_feed("0.2 mm/rev".parse()?)?.value;
/// assert_eq!(measured.cut_off.mm(), 0.8);
/// assert_eq!(measured.evaluation_length.mm(), 4.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cut_off_by_feed(feed: Feed) -> Result<Sourced<CutOff>, Error> {
    row_of(
        &Column {
            above: 0.013,
            up_to: [0.04, 0.13, 0.4, 1.3, 4.0],
            source: "from memory of ISO 4288:1996 table 3",
        },
        feed,
    )
}

/// Long-wave cut-off in millimetres, and the short-wave one in micrometres.
const SHORT_CUT_OFFS: [(f64, f64); 5] = [
    (0.08, 2.5),
    (0.25, 2.5),
    (0.8, 2.5),
    (2.5, 8.0),
    (8.0, 25.0),
];

/// The short-wave cut-off lambda_s that goes with a cut-off.
///
/// # Units
/// The types carry them.
/// # Range
/// The cut-offs 0.08, 0.25, 0.8, 2.5 and 8 mm.
/// # Errors
/// `cut_off`, when it is none of these.
/// # Source
/// ISO 3274:1996, from memory.
/// # Example
/// ```
/// use turnwright::standards::texture::short_cut_off;
/// assert_eq!(short_cut_off("0.8 mm".parse()?)?.value.mm(), 0.0025);
/// assert!(short_cut_off("0.03 in".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn short_cut_off(cut_off: quantity::CutOff) -> Result<Sourced<ShortCutOff>, Error> {
    SHORT_CUT_OFFS
        .iter()
        .find(|(long, _)| *long == cut_off.mm())
        .map(|(_, short)| {
            Sourced::new(
                ShortCutOff::computed_trade(short / 1e3),
                "from memory of ISO 3274:1996",
                Standing::FromMemory,
            )
        })
        .ok_or_else(|| {
            Error::new(
                ErrorKind::OutOfRange,
                quantity::CutOff::ROW.name(),
                cut_off.to_string(),
                "a cut-off of the standard: 0.08, 0.25, 0.8, 2.5 or 8 mm",
                "choose the short-wave cut-off yourself, and write it beside the measured value",
            )
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn grades_have_their_ra_in_both_systems() {
        // ISO 1302 (1978 and 1992 editions), from memory: um and uin of N1 to N12.
        let um = [
            0.025, 0.05, 0.1, 0.2, 0.4, 0.8, 1.6, 3.2, 6.3, 12.5, 25.0, 50.0,
        ];
        let uin = [
            1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0,
        ];
        for ((i, grade), (um, uin)) in Grade::all().enumerate().zip(um.into_iter().zip(uin)) {
            assert_eq!(grade.name(), format!("N{}", i + 1));
            assert_eq!(grade.ra().um(), um);
            assert!((grade.ra_inch().microinch() / uin - 1.0).abs() < 1e-12);
            assert!((grade.ra_inch().um() / um - 1.0).abs() < 0.02);
        }
    }

    #[test]
    fn a_surface_has_the_smallest_grade_not_below_its_ra() {
        // Derived: smallest grade whose R_a is not below the value.
        for (ra, grade) in [
            ("1.5 um", Some("N7")),
            ("1.6 um", Some("N7")),
            ("1.61 um", Some("N8")),
            ("0.02 um", Some("N1")),
            ("50 uin", Some("N7")),
            ("50 um", Some("N12")),
            ("50.1 um", None),
        ] {
            let found = Grade::of(ra.parse().unwrap());
            assert_eq!(found.map(Grade::name), grade, "{ra}");
        }
    }

    #[test]
    fn a_cut_off_follows_from_ra() {
        // ISO 4288:1996 table 1 (R_a, non-periodic), from memory: um, cut-off and evaluation mm.
        for (ra, cut_off, evaluation) in [
            (0.015, 0.08, 0.4),
            (0.05, 0.25, 1.25),
            (0.8, 0.8, 4.0),
            (2.0, 0.8, 4.0),
            (3.2, 2.5, 12.5),
            (12.5, 8.0, 40.0),
        ] {
            let found = cut_off_by_ra(Ra::from_um(ra).unwrap()).unwrap().value;
            assert_eq!(found.cut_off.mm(), cut_off, "{ra}");
            assert_eq!(found.evaluation_length.mm(), evaluation, "{ra}");
        }
    }

    #[test]
    fn a_cut_off_follows_from_rz() {
        // ISO 4288:1996 table 2 (R_z, non-periodic), from memory: um, cut-off mm.
        for (rz, cut_off) in [(0.3, 0.25), (6.3, 0.8), (25.0, 2.5), (100.0, 8.0)] {
            let found = cut_off_by_rz(Rz::from_um(rz).unwrap()).unwrap().value;
            assert_eq!(found.cut_off.mm(), cut_off, "{rz}");
        }
    }

    #[test]
    fn a_cut_off_follows_from_the_feed() {
        // ISO 4288:1996 table 3 (R_Sm, periodic), from memory: R_Sm = feed in mm, cut-off mm.
        for (feed, cut_off) in [
            (0.03, 0.08),
            (0.1, 0.25),
            (0.2, 0.8),
            (0.5, 2.5),
            (0.13, 0.25),
        ] {
            let found = cut_off_by_feed(Feed::from_mm_per_rev(feed).unwrap()).unwrap();
            assert_eq!(found.value.cut_off.mm(), cut_off, "{feed}");
        }
    }

    #[test]
    fn a_short_cut_off_goes_with_every_cut_off() {
        // ISO 3274:1996, from memory: cut-off in mm, short-wave cut-off in um.
        for (long, short) in [
            (0.08, 2.5),
            (0.25, 2.5),
            (0.8, 2.5),
            (2.5, 8.0),
            (8.0, 25.0),
        ] {
            let found = short_cut_off(quantity::CutOff::from_mm(long).unwrap());
            assert_eq!(found.unwrap().value.mm(), short / 1e3);
        }
        for (long, _) in LENGTHS {
            assert!(short_cut_off(quantity::CutOff::from_mm(long).unwrap()).is_ok());
        }
    }

    #[test]
    fn outside_the_tables_is_an_error() {
        assert!(cut_off_by_ra(Ra::from_um(0.006).unwrap()).is_err());
        assert!(cut_off_by_rz(Rz::from_um(200.1).unwrap()).is_err());
        let error = cut_off_by_feed(Feed::from_mm_per_rev(5.0).unwrap()).unwrap_err();
        assert_eq!(error.field(), "feed");
        assert!(error.expected().contains("4 mm/rev"), "{error}");
    }
}
