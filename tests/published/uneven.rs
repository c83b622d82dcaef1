//! Turns of different feeds, one after the other: derived.

use turnwright::physics::finish::{FinishRegime, ToolOutline, theoretical_roughness};
use turnwright::physics::uneven_feed::uneven_roughness;
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let feeds: Vec<Feed> = case.get_list("feeds")?;
    let corner: CornerRadius = case.get("corner_radius")?;
    let outline = ToolOutline::new(
        corner,
        case.get("cutting_edge_angle")?,
        case.get("minor_cutting_edge_angle")?,
    )
    .map_err(|e| e.to_string())?;
    // The edges of the case are there to be out of the way.
    for feed in &feeds {
        if theoretical_roughness(*feed, &outline).regime != FinishRegime::Arc {
            return Err(format!("an edge shows at {feed}"));
        }
    }
    let found = uneven_roughness(&feeds, corner).map_err(|e| e.to_string())?;
    case.expect("rt", found.rt)?;
    case.expect("ra", found.ra)?;
    case.expect("rq", found.rq)
}
