//! General tolerances: how far a length may be off when the drawing names no limits.

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Recorded, Sourced, Standing};
use crate::quantity::{Tolerance, WorkLength, round_size};

/// Class of general tolerances; a drawing says for example "ISO 2768-m".
///
/// ```
/// use turnwright::standards::general_tolerance::GeneralClass;
/// assert_eq!(GeneralClass::Medium.letter(), 'm');
/// assert_eq!(GeneralClass::VeryCoarse.name(), "very_coarse");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
pub enum GeneralClass {
    /// f
    Fine,
    /// m
    Medium,
    /// c
    Coarse,
    /// v
    VeryCoarse,
}

impl GeneralClass {
    /// All classes, the finest first.
    pub const ALL: [Self; 4] = [Self::Fine, Self::Medium, Self::Coarse, Self::VeryCoarse];

    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Fine => "fine",
            Self::Medium => "medium",
            Self::Coarse => "coarse",
            Self::VeryCoarse => "very_coarse",
        }
    }

    /// The letter on a drawing.
    #[must_use]
    pub const fn letter(self) -> char {
        match self {
            Self::Fine => 'f',
            Self::Medium => 'm',
            Self::Coarse => 'c',
            Self::VeryCoarse => 'v',
        }
    }
}

impl fmt::Display for GeneralClass {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// So much more or less than the nominal size.
///
/// ```
/// use turnwright::standards::general_tolerance::{linear, GeneralClass};
/// let off = linear("20 mm".parse()?, GeneralClass::Medium)?.value;
/// assert_eq!(off.mm(), 0.2);
/// assert_eq!(off.width().mm(), 0.4);
/// assert_eq!(off.to_string(), "+/- 0.2 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct PlusMinus(Tolerance);

impl PlusMinus {
    /// How much to one side, in millimetres.
    #[must_use]
    pub fn mm(self) -> f64 {
        self.0.mm()
    }

    /// The width of the zone: twice as much.
    #[must_use]
    pub fn width(self) -> Tolerance {
        Tolerance::computed_trade(2.0 * self.0.mm())
    }
}

impl Recorded for PlusMinus {}

impl fmt::Display for PlusMinus {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "+/- {}", self.0)
    }
}

/// Lengths up to which a row holds (the upper end belongs to it), then f, m, c, v, in millimetres.
const ROWS: [(f64, [Option<f64>; 4]); 8] = [
    (3.0, [Some(0.05), Some(0.1), Some(0.2), None]),
    (6.0, [Some(0.05), Some(0.1), Some(0.3), Some(0.5)]),
    (30.0, [Some(0.1), Some(0.2), Some(0.5), Some(1.0)]),
    (120.0, [Some(0.15), Some(0.3), Some(0.8), Some(1.5)]),
    (400.0, [Some(0.2), Some(0.5), Some(1.2), Some(2.5)]),
    (1000.0, [Some(0.3), Some(0.8), Some(2.0), Some(4.0)]),
    (2000.0, [Some(0.5), Some(1.2), Some(3.0), Some(6.0)]),
    (4000.0, [None, Some(2.0), Some(4.0), Some(8.0)]),
];

/// How far a length may be off in a class of general tolerances.
///
/// # Units
/// Plus or minus; the zone is twice as wide.
/// # Range
/// Lengths, diameters and steps from 0.5 mm to 4000 mm; not broken edges, not angles.
/// # Errors
/// `length`, outside the table or where the class has no value (very coarse up to 3 mm, fine above
/// 2000 mm).
/// # Source
/// ISO 2768-1:1989 table 1, from memory.
/// # Example
/// ```
/// use turnwright::standards::general_tolerance::{linear, GeneralClass};
/// assert_eq!(linear("100 mm".parse()?, GeneralClass::Fine)?.value.mm(), 0.15);
/// assert!(linear("2 mm".parse()?, GeneralClass::VeryCoarse).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn linear(length: WorkLength, class: GeneralClass) -> Result<Sourced<PlusMinus>, Error> {
    let mm = round_size(length.mm());
    ROWS.iter()
        .find(|(up_to, _)| mm >= 0.5 && mm <= *up_to)
        .and_then(|(_, values)| values[class as usize])
        .map(|value| {
            Sourced::new(
                PlusMinus(Tolerance::computed_trade(value)),
                "from memory of ISO 2768-1:1989 table 1",
                Standing::FromMemory,
            )
        })
        .ok_or_else(|| {
            let (least, largest) = match class {
                GeneralClass::Fine => ("from 0.5 mm", "2000 mm"),
                GeneralClass::Medium | GeneralClass::Coarse => ("from 0.5 mm", "4000 mm"),
                GeneralClass::VeryCoarse => ("above 3 mm", "4000 mm"),
            };
            Error::new(
                ErrorKind::OutOfRange,
                "length",
                length.to_string(),
                format!("a length {least} to {largest}, for which class {class} has a value"),
                "take the limits from the drawing, or ask for another class",
            )
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::GeneralClass::{Coarse, Fine, Medium, VeryCoarse};
    use super::*;

    #[test]
    fn lengths_have_the_tolerances_of_the_table() {
        // ISO 2768-1:1989 table 1, from memory: plus or minus mm; the upper end belongs to the row.
        for (length, expected) in [
            (2.0, [Some(0.05), Some(0.1), Some(0.2), None]),
            (20.0, [Some(0.1), Some(0.2), Some(0.5), Some(1.0)]),
            (100.0, [Some(0.15), Some(0.3), Some(0.8), Some(1.5)]),
            (250.0, [Some(0.2), Some(0.5), Some(1.2), Some(2.5)]),
            (6.0, [Some(0.05), Some(0.1), Some(0.3), Some(0.5)]),
            (30.0, [Some(0.1), Some(0.2), Some(0.5), Some(1.0)]),
        ] {
            for (class, expected) in [Fine, Medium, Coarse, VeryCoarse].into_iter().zip(expected) {
                let found = linear(WorkLength::from_mm(length).unwrap(), class);
                assert_eq!(
                    found.ok().map(|t| t.value.mm()),
                    expected,
                    "{length} {class}"
                );
            }
        }
    }

    #[test]
    fn outside_the_table_is_an_error() {
        for (length, class) in [
            (0.49, Fine),
            (4001.0, Coarse),
            (2001.0, Fine),
            (3.0, VeryCoarse),
        ] {
            let error = linear(WorkLength::from_mm(length).unwrap(), class).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::OutOfRange);
        }
    }
}
