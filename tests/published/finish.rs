//! Theoretical finish and its inverses: Shaw, Metal Cutting Principles (from memory), derived again.

use turnwright::physics::feed_for_finish::{
    feed_for_ra, feed_for_ra_arc, feed_for_rt, feed_for_rz, feed_for_rz_arc,
};
use turnwright::physics::finish::{
    FinishRegime, ToolOutline, arc_height, arc_roughness, arc_shape, theoretical_roughness,
    theoretical_shape,
};
use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    match case.topic() {
        "finish-inverse" => inverse(case),
        _ if case.asks("skewness") => shape(case),
        _ if case.asks("arc_up_to_feed") => limits(case),
        _ if case.asks("rt_with_90_deg") => overhang(case),
        _ => roughness(case),
    }
}

fn said<T>(result: Result<T, Error>) -> Result<T, String> {
    result.map_err(|e| e.to_string())
}

fn outline(case: &Case) -> Result<ToolOutline, String> {
    said(ToolOutline::new(
        case.get("corner_radius")?,
        case.get("cutting_edge_angle")?,
        case.get("minor_cutting_edge_angle")?,
    ))
}

/// The regime in the words of the cases.
fn words(regime: FinishRegime) -> String {
    match regime.name() {
        "edges" => String::from("edges only"),
        name => name.replace('_', " "),
    }
}

fn roughness(case: &Case) -> Result<(), String> {
    let f: Feed = case.get("feed")?;
    let r: CornerRadius = case.get("corner_radius")?;
    let finish = if case.has("minor_cutting_edge_angle") {
        theoretical_roughness(f, &outline(case)?)
    } else {
        said(arc_roughness(f, r))?
    };
    case.expect_word("regime", &words(finish.regime))?;
    case.expect("rt", finish.rt)?;
    case.expect("rz", finish.rz)?;
    case.expect("ra", finish.ra)?;
    case.expect("rq", finish.rq)?;
    if finish.regime == FinishRegime::Arc {
        // The doors without a minor edge say the same.
        case.expect("rt", said(arc_height(f, r))?)?;
        case.expect("ra", said(arc_roughness(f, r))?.ra)?;
    }
    Ok(())
}

fn inverse(case: &Case) -> Result<(), String> {
    let tool = outline(case)?;
    let r = tool.corner_radius();
    let (feed, arc) = if case.has("ra") {
        let ra = case.get("ra")?;
        (said(feed_for_ra(ra, &tool))?, feed_for_ra_arc(ra, r))
    } else {
        let rt: Rt = case.get("rt")?;
        let rz = said(Rz::from_um(rt.um()))?;
        case.expect("feed", said(feed_for_rz(rz, &tool))?)?;
        (said(feed_for_rt(rt, &tool))?, feed_for_rz_arc(rz, r))
    };
    case.expect("feed", feed)?;
    let regime = theoretical_roughness(feed, &tool).regime;
    if regime == FinishRegime::Arc {
        case.expect("feed", said(arc)?)?;
    }
    case.expect_word("regime", &words(regime))
}

/// Where the regimes meet, found by asking for the regime alone.
fn limits(case: &Case) -> Result<(), String> {
    let tool = outline(case)?;
    for (feed, rt, from) in [
        ("arc_up_to_feed", "rt_at_first", FinishRegime::Arc),
        (
            "edges_from_feed",
            "rt_at_second",
            FinishRegime::ArcAndMinorEdge,
        ),
    ] {
        let mut low = if from == FinishRegime::Arc { 0.01 } else { 0.5 };
        let mut high = 10.0;
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            let f = said(Feed::from_mm_per_rev(middle))?;
            if theoretical_roughness(f, &tool).regime == from {
                low = middle;
            } else {
                high = middle;
            }
        }
        let f = said(Feed::from_mm_per_rev(low))?;
        case.expect(feed, f)?;
        case.expect(rt, theoretical_roughness(f, &tool).rt)?;
    }
    Ok(())
}

fn overhang(case: &Case) -> Result<(), String> {
    let f = case.get("feed")?;
    let tool = outline(case)?;
    case.expect("rt", theoretical_roughness(f, &tool).rt)?;
    let upright = said(ToolOutline::new(
        tool.corner_radius(),
        said("90 deg".parse())?,
        tool.minor_cutting_edge_angle(),
    ))?;
    case.expect("rt_with_90_deg", theoretical_roughness(f, &upright).rt)
}

/// Skewness and kurtosis; without an outline those of a small feed, as the note of the case has it.
fn shape(case: &Case) -> Result<(), String> {
    let (finish, shape) = if case.has("feed") {
        let (feed, tool) = (case.get("feed")?, outline(case)?);
        let shape = theoretical_shape(feed, &tool);
        let arc = said(arc_shape(feed, tool.corner_radius()))?;
        case.expect_number("skewness", arc.rsk.value())?;
        (theoretical_roughness(feed, &tool), shape)
    } else {
        let (feed, corner) = (said("0.04 mm/rev".parse())?, said("0.8 mm".parse())?);
        (
            said(arc_roughness(feed, corner))?,
            said(arc_shape(feed, corner))?,
        )
    };
    case.expect_number("rt_over_ra", finish.rt.um() / finish.ra.um())?;
    case.expect_number("rq_over_ra", finish.rq.um() / finish.ra.um())?;
    case.expect_number("skewness", shape.rsk.value())?;
    case.expect_number("kurtosis", shape.rku.value())
}
