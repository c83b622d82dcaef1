//! The feed for a wanted roughness.

use serde::Serialize;

use super::finish::theory_only;
use crate::advice::feed::{by_hand, outline};
use crate::advice::finish::{known_least_chip, with_least_chip};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::least_chip::{best_feed, feed_with_least_chip};
use crate::physics::{feed_for_finish, finish, speed, uneven_feed};
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::unit::Units;
use crate::quantity::{
    ChipThickness, Feed, FeedRate, FeedUnevenness, HandwheelRate, Rt, SpindleSpeed, Travel,
};
use crate::shop::surface::WantedFinish;
use crate::shop::tool::Tool;
use crate::standards::texture::cut_off_by_feed;

/// A wanted roughness and a tool.
///
/// ```
/// use turnwright::document::feed_for_finish::Question;
/// use turnwright::{CornerRadius, CuttingEdgeAngle, Ra, SpindleSpeed, Tool, Travel, WantedFinish};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// let answer = Question::new(WantedFinish::Ra(Ra::from_um(3.2)?), tool)
///     .with_spindle_speed(SpindleSpeed::from_rpm(250.0)?)
///     .with_travel_per_turn(Travel::from_mm(24.0)?)
///     .answer()?;
/// assert_eq!(answer.feed.mm_per_rev(), 0.1985_f64.max(answer.feed.mm_per_rev()));
/// assert!((answer.handwheel.map_or(0.0, |h| h.turns_per_min()) - 2.07).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    wanted: WantedFinish,
    tool: Tool,
    spindle_speed: Option<SpindleSpeed>,
    travel_per_turn: Option<Travel>,
    least_chip_thickness: Option<ChipThickness>,
    feed_unevenness: Option<FeedUnevenness>,
    units: Units,
}

/// The largest feed that theory allows.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The feed.
    pub feed: Feed,
    /// The feed below which a finer one makes the finish worse, where the least chip is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_feed: Option<Feed>,
    /// How fast the tool travels at the spindle speed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub feed_rate: Option<FeedRate>,
    /// How fast the hand turns the wheel.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub handwheel: Option<HandwheelRate>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A wanted roughness and a tool.
    #[must_use]
    pub fn new(wanted: WantedFinish, tool: Tool) -> Self {
        Self {
            wanted,
            tool,
            spindle_speed: None,
            travel_per_turn: None,
            least_chip_thickness: None,
            feed_unevenness: None,
            units: Units::Metric,
        }
    }

    /// With the least chip thickness: a caution where the feed is below its best.
    #[must_use]
    pub fn with_least_chip_thickness(mut self, least_chip_thickness: ChipThickness) -> Self {
        self.least_chip_thickness = Some(least_chip_thickness);
        self
    }

    /// With the unevenness of the feed: a caution where the roughness is passed in one place of twenty.
    #[must_use]
    pub fn with_feed_unevenness(mut self, feed_unevenness: FeedUnevenness) -> Self {
        self.feed_unevenness = Some(feed_unevenness);
        self
    }

    /// With the spindle speed, for the feed rate.
    #[must_use]
    pub fn with_spindle_speed(mut self, spindle_speed: SpindleSpeed) -> Self {
        self.spindle_speed = Some(spindle_speed);
        self
    }

    /// With the travel of the slide per turn of its wheel, for the hand.
    #[must_use]
    pub fn with_travel_per_turn(mut self, travel_per_turn: Travel) -> Self {
        self.travel_per_turn = Some(travel_per_turn);
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let wanted = match (f.quantity("ra")?, f.quantity("rz")?) {
            (Some(ra), None) => WantedFinish::Ra(ra),
            (None, Some(rz)) => WantedFinish::Rz(rz),
            (None, None) => return Err(f.missing("ra", "a wanted roughness: ra or rz")),
            (Some(_), Some(_)) => {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path("rz"),
                    "both ra and rz",
                    "one of the two",
                    "keep the one that stands on the drawing",
                ));
            }
        };
        let question = Self {
            wanted,
            tool: f.need_item(
                "tool",
                "the tool: corner_radius and cutting_edge_angle",
                Tool::read,
            )?,
            spindle_speed: f.quantity("spindle_speed")?,
            travel_per_turn: f.quantity("travel_per_turn")?,
            least_chip_thickness: f.quantity("least_chip_thickness")?,
            feed_unevenness: f.quantity("feed_unevenness")?,
            units,
        };
        if question.travel_per_turn.is_some() && question.spindle_speed.is_none() {
            return Err(f.missing(
                "spindle_speed",
                "the spindle speed, for the rate of the handwheel",
            ));
        }
        f.finish()?;
        Ok(question)
    }

    /// The feed.
    ///
    /// # Errors
    /// When no feed gives this roughness with this tool.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (mut cautions, mut provenance) = (Vec::new(), Provenance::default());
        let corner = self.tool.corner_radius();
        let feed = match (outline(&self.tool)?, self.wanted) {
            (Some(outline), WantedFinish::Ra(ra)) => feed_for_finish::feed_for_ra(ra, &outline)?,
            (Some(outline), WantedFinish::Rz(rz)) => feed_for_finish::feed_for_rz(rz, &outline)?,
            (None, wanted) => {
                let feed = match wanted {
                    WantedFinish::Ra(ra) => feed_for_finish::feed_for_ra_arc(ra, corner)?,
                    WantedFinish::Rz(rz) => feed_for_finish::feed_for_rz_arc(rz, corner)?,
                };
                let angle = finish::least_minor_angle_for_arc(feed, corner)?;
                cautions.push(Caution::new(
                    Severity::Note,
                    "minor_edge_unknown",
                    format!(
                        "Holds for a minor cutting edge angle of at least {:.1} deg.",
                        angle.degrees()
                    ),
                ));
                feed
            }
        };
        let least = known_least_chip(
            &self.tool,
            self.least_chip_thickness,
            self.units,
            &mut cautions,
            &mut provenance,
        );
        let feed = match (least, self.wanted) {
            (Some(least), WantedFinish::Rz(rz)) => {
                // All tops of the arc are equal: Rz is Rt.
                let with_chip = feed_with_least_chip(Rt::computed_trade(rz.um()), corner, least)
                    .map_err(|error| error.at("rz"))?;
                feed.min(with_chip)
            }
            (Some(least), WantedFinish::Ra(_)) if feed < best_feed(corner, least) => {
                return Err(rubs(feed, best_feed(corner, least)));
            }
            _ => feed,
        };
        let handwheel = match (self.spindle_speed, self.travel_per_turn) {
            (Some(n), Some(travel)) => {
                let (rate, caution) = by_hand(feed, n, travel, &mut provenance)?;
                cautions.extend(caution);
                Some(rate)
            }
            _ => None,
        };
        let mut best = None;
        if let Some(least) = least {
            let (finish, caution) = with_least_chip(feed, corner, least, self.units)?;
            cautions.extend(caution);
            best = Some(finish.best_feed);
        }
        if let Some(unevenness) = self.feed_unevenness {
            let measured = cut_off_by_feed(feed)?;
            let length = provenance
                .open("cut-off and evaluation length by the feed", &measured)
                .evaluation_length;
            let spread = uneven_feed::uneven_spread(feed, unevenness, corner, length)?;
            cautions.push(Caution::new(
                Severity::Note,
                "uneven_feed",
                format!(
                    "An uneven feed leaves more: Ra {:.2} um and Rt {:.1} um in half of the places measured, Ra {:.2} um and \
                     Rt {:.1} um in one of twenty. Take a finer feed for that.",
                    spread.ra_50.um(),
                    spread.rt_50.um(),
                    spread.ra_95.um(),
                    spread.rt_95.um()
                ),
            ));
        }
        cautions.push(theory_only());
        Ok(Answer {
            feed,
            best_feed: best,
            feed_rate: self.spindle_speed.map(|n| speed::feed_rate(feed, n)),
            handwheel,
            cautions,
            provenance,
        })
    }
}

/// The feed for the shape of the tool lies where a finer feed only rubs more.
fn rubs(feed: Feed, best: Feed) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "ra",
        format!("a finish that asks for a feed of {feed}"),
        format!("a finish that this edge can cut: its best feed is {best}, below it rubs"),
        "take a sharper edge, a smaller corner radius, or another process",
    )
}
