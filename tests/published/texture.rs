//! Grades of roughness and cut-offs: ISO 1302 and ISO 4288 (from memory).

use turnwright::physics::gaussian::{
    Ends, alpha, mean_line_transmission, roughness_profile, roughness_transmission,
    short_wave_transmission, without_short_waves,
};
use turnwright::physics::profile::Profile;
use turnwright::standards::texture::{Grade, cut_off_by_feed, cut_off_by_ra, cut_off_by_rz};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("alpha") {
        return case.expect_number("alpha", alpha());
    }
    if case.has("wavelength") {
        return transmission(case);
    }
    if case.has("profile") {
        return filtered(case);
    }
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

fn transmission(case: &Case) -> Result<(), String> {
    let wavelength = case.get("wavelength")?;
    let cut_off = case.get::<CutOff>("cutoff")?;
    let kept = mean_line_transmission(wavelength, cut_off).value();
    let short = ShortCutOff::from_mm(cut_off.mm()).map_err(|e| e.to_string())?;
    if (short_wave_transmission(wavelength, short).value() - kept).abs() > 1e-15 {
        return Err(String::from("the two filters differ"));
    }
    case.expect_number("mean_line_transmission", kept)?;
    case.expect_number(
        "roughness_transmission",
        roughness_transmission(wavelength, cut_off).value(),
    )
}

/// The parabola, point by point, through both filters.
fn filtered(case: &Case) -> Result<(), String> {
    let said = |e: Error| e.to_string();
    if case.word("profile")? != "parabola" {
        return Err(String::from("another profile than the parabola"));
    }
    let feed = case.get::<Feed>("feed")?.mm_per_rev();
    let corner = case.get::<CornerRadius>("corner_radius")?.mm();
    // So many points that the ridge's kink, sampled, is right to 1e-9: its error falls as 1/n^2. And so
    // many feeds that the weights reach over whole ones.
    let (points, feeds) = (180_000, 4);
    let spacing = feed / f64::from(points);
    let heights: Vec<f64> = (0..points * feeds)
        .map(|i| {
            let x = (f64::from(i % points) - f64::from(points / 2)) * spacing;
            x * x / (2.0 * corner) * 1e3
        })
        .collect();
    let spacing = PointSpacing::from_mm(spacing).map_err(said)?;
    let (mut primary, mut roughness) = (heights.clone(), heights.clone());
    without_short_waves(
        &Profile::from_um(spacing, &heights).map_err(said)?,
        case.get("short_cutoff")?,
        Ends::Periodic,
        &mut primary,
    )
    .map_err(said)?;
    roughness_profile(
        &Profile::from_um(spacing, &primary).map_err(said)?,
        case.get("cutoff")?,
        Ends::Periodic,
        &mut roughness,
    )
    .map_err(said)?;
    let square = roughness.iter().map(|z| z * z).sum::<f64>() / roughness.len() as f64;
    // An Rq of 1.8 um: the door of the quantity takes it.
    case.expect("rq", Rq::from_um(square.sqrt()).map_err(said)?)
}
