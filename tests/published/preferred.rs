//! Preferred numbers and corner radii: ISO 3, ISO 1832, ANSI B212.4 (from memory).

use turnwright::CornerRadius;
use turnwright::standards::preferred::{CORNER_RADII, CORNER_RADII_INCH, R5, R10, R20, R40};

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("series") {
        let values = match case.word("series")? {
            "R5" => R5.value.as_slice(),
            "R10" => R10.value.as_slice(),
            "R20" => R20.value.as_slice(),
            "R40" => R40.value.as_slice(),
            other => return Err(format!("no series {other}")),
        };
        return case.expect_numbers("values", values);
    }
    // The codes of metric inserts have two figures, those of inch inserts one.
    let codes = case.words("codes")?;
    let inserts = match codes.first() {
        Some(code) if code.len() == 2 => CORNER_RADII.value.as_slice(),
        _ => CORNER_RADII_INCH.value.as_slice(),
    };
    let radius = |code: &str| {
        let found = inserts.iter().find(|(name, _)| *name == code);
        found.map(|(_, radius)| *radius)
    };
    let radii: Option<Vec<CornerRadius>> = codes.into_iter().map(radius).collect();
    case.expect_list("corner_radii", &radii.ok_or("a code is not listed")?)
}
