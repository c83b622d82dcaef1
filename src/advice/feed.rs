//! Which feed for roughing, which for the last cuts.

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::{feed_for_finish, finish, speed};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{CornerRadius, Feed, HandwheelRate, SpindleSpeed, Travel};
use crate::shop::lathe::Lathe;
use crate::shop::surface::WantedFinish;
use crate::shop::tool::Tool;

/// Largest roughing feed, as a share of the corner radius.
pub const ROUGH_FEED_OVER_CORNER: Sourced<f64> = Sourced::new(
    0.5,
    "common practice, no source: about r/2, at most 0.8 r",
    Standing::CommonPractice,
);

/// Feed over corner radius that no cut should pass.
pub const FEED_OVER_CORNER: Sourced<f64> = Sourced::new(
    0.8,
    "common practice, no source: at most 0.8 r",
    Standing::CommonPractice,
);

/// Largest feed of the last cuts, as a share of the corner radius, where no finish is asked for.
pub const FINISH_FEED_OVER_CORNER: Sourced<f64> = Sourced::new(
    0.25,
    "common practice, no source: at most r/3 to r/2; a quarter is smoother",
    Standing::CommonPractice,
);

/// Share of the wanted roughness that theory may use up; a real surface is rougher than theory.
pub const THEORY_SHARE: Sourced<f64> = Sourced::new(
    0.6,
    "judgement, no source: a real surface is rougher than the shape of the tool",
    Standing::Estimate,
);

/// Below this rate no hand turns a wheel steadily.
pub const STEADY_HAND: Sourced<HandwheelRate> = Sourced::new(
    HandwheelRate::computed_trade(6.0),
    "judgement, no source",
    Standing::Estimate,
);

/// Above this rate no hand stops a wheel at a mark.
pub const FAST_HAND: Sourced<HandwheelRate> = Sourced::new(
    HandwheelRate::computed_trade(20.0),
    "judgement, no source",
    Standing::Estimate,
);

/// A feed, and whether it comes from the feed box or the hand.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct FeedChoice {
    /// The feed.
    pub feed: Feed,
    /// What the levers say for it, if that is known.
    pub lever: Option<String>,
    /// True where the tool is fed by hand.
    pub by_hand: bool,
}

/// The feed for roughing: the coarsest that the corner bears.
///
/// # Errors
/// `lathe.feeds`, when every power feed is too coarse for this corner.
///
/// # Example
/// ```
/// use turnwright::{advice::feed, CornerRadius, CuttingEdgeAngle, Feed, Lathe, Provenance, SpindleSpeed, Tool};
/// let feeds = [0.05, 0.1, 0.2, 0.4].map(Feed::from_mm_per_rev).into_iter().collect::<Result<Vec<_>, _>>()?;
/// let lathe = Lathe::with_steps(vec![SpindleSpeed::from_rpm(500.0)?])?.with_feeds(feeds)?;
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// let rough = feed::rough_feed(&lathe, &tool, &mut Provenance::default())?;
/// assert_eq!(rough.feed.mm_per_rev(), 0.2);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn rough_feed(
    lathe: &Lathe,
    tool: &Tool,
    provenance: &mut Provenance,
) -> Result<FeedChoice, Error> {
    let share = provenance.open("roughing feed over corner radius", &ROUGH_FEED_OVER_CORNER);
    let most = of_corner(share, tool.corner_radius())?;
    choose(lathe, most, "the corner radius allows", OF_CORNER)
}

/// The feed for the last cuts: the coarsest whose theoretical roughness leaves room for the truth.
///
/// # Errors
/// `lathe.feeds`, when every power feed is too coarse.
///
/// # Example
/// ```
/// use turnwright::{advice::feed, CornerRadius, CuttingEdgeAngle, Lathe, Provenance, Ra, SpindleSpeed, Tool, WantedFinish};
/// let by_hand = Lathe::with_steps(vec![SpindleSpeed::from_rpm(500.0)?])?;
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// let wanted = WantedFinish::Ra(Ra::from_um(1.6)?);
/// let feed = feed::finish_feed(&by_hand, &tool, Some(wanted), &mut Provenance::default())?;
/// assert!(feed.by_hand && feed.feed.mm_per_rev() < 0.12);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn finish_feed(
    lathe: &Lathe,
    tool: &Tool,
    wanted: Option<WantedFinish>,
    provenance: &mut Provenance,
) -> Result<FeedChoice, Error> {
    let share = provenance.open(
        "finishing feed over corner radius",
        &FINISH_FEED_OVER_CORNER,
    );
    let corner = of_corner(share, tool.corner_radius())?;
    let Some(wanted) = wanted else {
        return choose(lathe, corner, "the corner radius allows", OF_CORNER);
    };
    let share = provenance.open(
        "share of the wanted roughness that theory may use",
        &THEORY_SHARE,
    );
    let by_finish = match wanted {
        WantedFinish::Ra(ra) => {
            let ra = crate::quantity::Ra::computed_trade(ra.um() * share);
            outline(tool)?.map_or_else(
                || feed_for_finish::feed_for_ra_arc(ra, tool.corner_radius()),
                |outline| feed_for_finish::feed_for_ra(ra, &outline),
            )
        }
        WantedFinish::Rz(rz) => {
            let rz = crate::quantity::Rz::computed_trade(rz.um() * share);
            outline(tool)?.map_or_else(
                || feed_for_finish::feed_for_rz_arc(rz, tool.corner_radius()),
                |outline| feed_for_finish::feed_for_rz(rz, &outline),
            )
        }
    }?;
    // A coarser feed than a half of the corner is never a finishing feed, whatever the drawing allows.
    let coarsest = of_corner(ROUGH_FEED_OVER_CORNER.value, tool.corner_radius())?;
    choose(
        lathe,
        by_finish.min(coarsest),
        "the wanted finish allows",
        OF_FINISH,
    )
}

/// The outline of a tool whose minor edge is known.
///
/// # Errors
/// `minor_cutting_edge_angle`, when the two edges do not meet in a corner.
///
/// # Example
/// ```
/// use turnwright::{advice::feed::outline, CornerRadius, CuttingEdgeAngle, Tool};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// assert!(outline(&tool)?.is_none());
/// let known = tool.with_minor_cutting_edge_angle("10 deg".parse()?);
/// assert!(outline(&known)?.is_some());
/// let crossed = known.with_minor_cutting_edge_angle("95 deg".parse()?);
/// assert_eq!(outline(&crossed).unwrap_err().field(), "tool.minor_cutting_edge_angle");
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn outline(tool: &Tool) -> Result<Option<finish::ToolOutline>, Error> {
    tool.minor_cutting_edge_angle()
        .map(|minor| {
            finish::ToolOutline::new(tool.corner_radius(), tool.cutting_edge_angle(), minor)
        })
        .transpose()
        .map_err(|error| error.inside("tool"))
}

fn of_corner(share: f64, corner: CornerRadius) -> Result<Feed, Error> {
    Feed::from_mm_per_rev(share * corner.mm()).map_err(|_| {
        Error::new(
            ErrorKind::Impossible,
            "tool.corner_radius",
            corner.to_string(),
            "a corner that bears a feed",
            "a sharp corner leaves a thread and breaks: give the true corner radius, at least 0.005 mm",
        )
    })
}

/// What helps where every power feed is too coarse for the corner.
const OF_CORNER: &str =
    "a tool with a larger corner radius, or feed by hand: leave the list of feeds out";

/// What helps where every power feed is too coarse for the finish: a hand is not as even as that.
const OF_FINISH: &str = "a tool with a larger corner radius, or a rougher finish; what is to be finer is ground, lapped or polished after turning";

fn choose(lathe: &Lathe, most: Feed, why: &str, remedy: &str) -> Result<FeedChoice, Error> {
    if lathe.feeds().is_empty() {
        return Ok(FeedChoice {
            feed: most,
            lever: None,
            by_hand: true,
        });
    }
    let listed = lathe.feeds().iter().rev().find(|feed| **feed <= most);
    let feed = listed.copied().ok_or_else(|| {
        Error::new(
            ErrorKind::Impossible,
            "lathe.feeds",
            lathe
                .feeds()
                .first()
                .map_or_else(String::new, |finest| format!("{finest} as the finest feed")),
            format!(
                "a feed of at most {:.4} mm/rev, which {why}",
                most.mm_per_rev()
            ),
            remedy,
        )
    })?;
    Ok(FeedChoice {
        feed,
        lever: lathe.feed_name(feed).map(str::to_owned),
        by_hand: false,
    })
}

/// How fast the hand has to turn the wheel, and a caution when no hand is steady at that.
///
/// # Errors
/// `travel_per_turn`, when it is zero.
///
/// # Example
/// ```
/// use turnwright::{advice::feed::by_hand, Feed, Provenance, SpindleSpeed, Travel};
/// let (rate, caution) = by_hand(
///     Feed::from_mm_per_rev(0.1)?,
///     SpindleSpeed::from_rpm(500.0)?,
///     Travel::from_mm(20.0)?,
///     &mut Provenance::default(),
/// )?;
/// assert_eq!(rate.turns_per_min().round(), 3.0);
/// assert!(caution.is_some());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn by_hand(
    feed: Feed,
    spindle_speed: SpindleSpeed,
    travel_per_turn: Travel,
    provenance: &mut Provenance,
) -> Result<(HandwheelRate, Option<Caution>), Error> {
    let rate = speed::handwheel_rate(feed, spindle_speed, travel_per_turn)?;
    let steady = provenance.open("slowest steady turning of a handwheel", &STEADY_HAND);
    let fast = provenance.open(
        "fastest turning of a handwheel that stops at a mark",
        &FAST_HAND,
    );
    let caution = if rate < steady {
        Some(Caution::new(
            Severity::Warning,
            "unsteady_hand",
            format!(
                "One turn of the wheel in {:.0} s: below about {:.0} turns a minute no hand is steady, and the finish \
                 is as uneven as the feed. Use power feed where there is one.",
                60.0 / rate.turns_per_min().max(1e-3),
                steady.turns_per_min()
            ),
        ))
    } else if rate > fast {
        Some(Caution::new(
            Severity::Warning,
            "fast_hand",
            format!(
                "{:.0} turns of the wheel a minute: no hand stops at a mark at that rate. Take a slower step or a finer feed \
                 near the shoulder.",
                rate.turns_per_min()
            ),
        ))
    } else {
        None
    };
    Ok((rate, caution))
}
