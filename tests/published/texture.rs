//! Grades of roughness and cut-offs: ISO 1302 and ISO 4288 (from memory).

use turnwright::standards::texture::{Grade, cut_off_by_feed, cut_off_by_ra, cut_off_by_rz};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("grade") {
        let name = case.word("grade")?;
        let grade = Grade::all().find(|grade| grade.name() == name);
        let grade = grade.ok_or_else(|| format!("no grade {name}"))?;
        case.expect("ra", grade.ra())?;
        return case.expect("ra_inch", grade.ra_inch());
    }
    if case.asks("grade") {
        let grade = Grade::of(case.get("ra")?).ok_or("no grade")?;
        return case.expect_word("grade", grade.name());
    }
    let found = if case.has("ra") {
        cut_off_by_ra(case.get("ra")?)
    } else if case.has("rz") {
        cut_off_by_rz(case.get("rz")?)
    } else {
        // The mean spacing of a turned profile is the feed of one revolution.
        let spacing: Travel = case.get("rsm")?;
        cut_off_by_feed(Feed::from_mm_per_rev(spacing.mm()).map_err(|e| e.to_string())?)
    };
    let measured = found.map_err(|e| e.to_string())?.value;
    case.expect("cutoff", measured.cut_off)?;
    case.expect("evaluation_length", measured.evaluation_length)
}
