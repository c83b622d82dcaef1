//! Rules of the trade for depth over feed and for the roughing feed: common practice, no source.

use turnwright::advice::chip::{self, ChipShape};
use turnwright::advice::feed;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    if case.asks("largest_feed") {
        return rough_feed(case);
    }
    let (a_p, f): (DepthOfCut, Feed) = (case.get("depth_of_cut")?, case.get("feed")?);
    let ratio = a_p.mm() / f.mm_per_rev();
    case.expect_number("ratio", ratio)?;
    let (shape, caution) = chip::shape(a_p, f, &mut Provenance::default());
    let inside = shape == ChipShape::Inside;
    if inside == caution.is_some() {
        return Err(format!("{shape}, with the caution {caution:?}"));
    }
    case.expect_flag("inside_window", inside)
}

/// Only the direction: the feed advised stays below the largest that the rule allows.
fn rough_feed(case: &Case) -> Result<(), String> {
    let told = |error: Error| error.to_string();
    let by_hand = Lathe::with_steps(vec![SpindleSpeed::from_rpm(500.0).map_err(told)?]);
    let tool = Tool::new(
        case.get("corner_radius")?,
        CuttingEdgeAngle::from_degrees(90.0).map_err(told)?,
    );
    let choice = feed::rough_feed(&by_hand.map_err(told)?, &tool, &mut Provenance::default());
    case.expect_at_most("largest_feed", choice.map_err(told)?.feed)
}
