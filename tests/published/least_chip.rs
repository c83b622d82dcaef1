//! The finish with a least chip: Brammertz 1961 (from memory), and models of the least chip.

use turnwright::physics::least_chip::{
    LeastChipModel, LeastChipRegime, best_feed, feed_with_least_chip, least_chip,
    roughness_with_least_chip,
};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.has("edge_radius") {
        return model(case);
    }
    let corner: CornerRadius = case.get("corner_radius")?;
    // Some cases have it in microinches, as a height: the door of a length knows no such unit.
    let height: Rt = case.get("least_chip_thickness")?;
    let least = ChipThickness::from_length(height.length()).map_err(|e| e.to_string())?;
    if case.has("rt") {
        let feed = feed_with_least_chip(case.get("rt")?, corner, least);
        return case.expect("feed", feed.map_err(|e| e.to_string())?);
    }
    let best = best_feed(corner, least);
    let feed = if case.has("feed") {
        case.get("feed")?
    } else {
        best
    };
    let found = roughness_with_least_chip(feed, corner, least).map_err(|e| e.to_string())?;
    if (found.regime == LeastChipRegime::BelowBestFeed) != (feed < best) {
        return Err(format!("regime {:?} at {feed}", found.regime));
    }
    case.expect("feed", found.best_feed)?;
    case.expect("rt", found.rt)
}

fn model(case: &Case) -> Result<(), String> {
    let model = if case.has("friction_angle") {
        LeastChipModel::Friction(case.get("friction_angle")?)
    } else if case.source().contains("37.6 deg") {
        LeastChipModel::Neutral
    } else {
        LeastChipModel::Stagnation
    };
    case.expect(
        "least_chip_thickness",
        least_chip(case.get("edge_radius")?, model),
    )
}
