//! The roughness that the shape of the tool leaves.

use serde::Serialize;

use crate::advice::feed::outline;
use crate::advice::finish::{built_up_edge, known_least_chip, with_least_chip};
use crate::advice::hazard;
use crate::caution::{Caution, Severity};
use crate::document::simulated::{Profile, ProfileAsked};
use crate::error::Error;
use crate::physics::finish::{self, FinishRegime};
use crate::physics::least_chip::LeastChipRegime;
use crate::physics::uneven_feed::{self, UnevenSpread};
use crate::provenance::Provenance;
use crate::quantity::fields::Tree;
use crate::quantity::unit::Units;
use crate::quantity::{
    ChipThickness, CuttingSpeed, Feed, FeedUnevenness, Ra, Rku, Rq, Rsk, Rsm, Rt, Rz, WorkLength,
};
use crate::shop::material::Material;
use crate::shop::tool::Tool;
use crate::standards::texture::{CutOff, Grade, cut_off_by_feed};

/// A feed and a tool.
///
/// ```
/// use turnwright::{document::finish::Question, CornerRadius, CuttingEdgeAngle, Feed, Tool};
/// let tool = Tool::new(CornerRadius::from_mm(0.8)?, CuttingEdgeAngle::from_degrees(95.0)?);
/// let answer = Question::new(Feed::from_mm_per_rev(0.2)?, tool).answer()?;
/// assert_eq!((answer.ra.um() * 10.0).round(), 16.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    feed: Feed,
    tool: Tool,
    cutting_speed: Option<CuttingSpeed>,
    material: Option<Material>,
    least_chip_thickness: Option<ChipThickness>,
    feed_unevenness: Option<FeedUnevenness>,
    profile: Option<ProfileAsked>,
    units: Units,
}

/// The theoretical roughness, and what is known to come on top.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Which part of the tool shapes the surface.
    pub regime: FinishRegime,
    /// Total height.
    pub rt: Rt,
    /// Maximum height.
    pub rz: Rz,
    /// Arithmetic mean height.
    pub ra: Ra,
    /// Root mean square height.
    pub rq: Rq,
    /// The finest roughness grade that holds it, if one does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub grade: Option<&'static str>,
    /// Skewness of the ideal profile.
    pub rsk: Rsk,
    /// Kurtosis of the ideal profile.
    pub rku: Rku,
    /// Mean width of its elements: the feed.
    pub rsm: Rsm,
    /// The cut-off with which it is measured, where the standard has one for this feed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cut_off: Option<WorkLength>,
    /// The evaluation length that goes with it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub evaluation_length: Option<WorkLength>,
    /// The least chip thickness that was reckoned with.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_chip_thickness: Option<ChipThickness>,
    /// Total height with that least chip, where the arc makes the finish.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rt_with_least_chip: Option<Rt>,
    /// The feed that leaves the least height with that least chip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_feed: Option<Feed>,
    /// Whether the feed is in the range of the height with a least chip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub least_chip_regime: Option<LeastChipRegime>,
    /// How the roughness is spread by an uneven feed.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub uneven: Option<UnevenSpread>,
    /// The parameters of a simulated profile, filtered as an instrument does it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub profile: Option<Profile>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A feed and a tool.
    #[must_use]
    pub fn new(feed: Feed, tool: Tool) -> Self {
        Self {
            feed,
            tool,
            cutting_speed: None,
            material: None,
            least_chip_thickness: None,
            feed_unevenness: None,
            profile: None,
            units: Units::Metric,
        }
    }

    /// With the cutting speed and the material, for the built-up edge.
    #[must_use]
    pub fn with_cut(mut self, cutting_speed: CuttingSpeed, material: Material) -> Self {
        self.cutting_speed = Some(cutting_speed);
        self.material = Some(material);
        self
    }

    /// With the least chip thickness, for a feed that only rubs.
    #[must_use]
    pub fn with_least_chip_thickness(mut self, least_chip_thickness: ChipThickness) -> Self {
        self.least_chip_thickness = Some(least_chip_thickness);
        self
    }

    /// With the unevenness of the feed, for the hand.
    #[must_use]
    pub fn with_feed_unevenness(mut self, feed_unevenness: FeedUnevenness) -> Self {
        self.feed_unevenness = Some(feed_unevenness);
        self
    }

    /// With a simulated profile.
    #[must_use]
    pub fn with_profile(mut self, profile: ProfileAsked) -> Self {
        self.profile = Some(profile);
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
        let question = Self {
            feed: f.need_quantity("feed")?,
            tool: f.need_item(
                "tool",
                "the tool: corner_radius and cutting_edge_angle",
                Tool::read,
            )?,
            cutting_speed: f.quantity("cutting_speed")?,
            material: f.item("material", Material::read)?,
            least_chip_thickness: f.quantity("least_chip_thickness")?,
            feed_unevenness: f.quantity("feed_unevenness")?,
            profile: f.item("profile", ProfileAsked::read)?,
            units,
        };
        for (given, other) in [
            (question.cutting_speed.is_some(), "material"),
            (question.material.is_some(), "cutting_speed"),
        ] {
            if given && !f.has(other) {
                return Err(f.missing(
                    other,
                    "cutting_speed and material together, for the built-up edge",
                ));
            }
        }
        f.finish()?;
        Ok(question)
    }

    /// The roughness.
    ///
    /// # Errors
    /// When the edges of the tool do not meet in a corner, the feed is wider than an arc can reach, or
    /// what was asked beside the roughness has no answer for this feed and corner.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (mut cautions, mut provenance) = (Vec::new(), Provenance::default());
        let (feed, corner) = (self.feed, self.tool.corner_radius());
        let outline = outline(&self.tool)?;
        let (found, shape) = match &outline {
            Some(outline) => (
                finish::theoretical_roughness(feed, outline),
                finish::theoretical_shape(feed, outline),
            ),
            None => {
                let found = finish::arc_roughness(feed, corner)?;
                let angle = finish::least_minor_angle_for_arc(feed, corner)?;
                cautions.push(Caution::new(
                    Severity::Note,
                    "minor_edge_unknown",
                    format!(
                        "Holds for a minor cutting edge angle of at least {:.1} deg; give minor_cutting_edge_angle to be sure.",
                        angle.degrees()
                    ),
                ));
                (found, finish::arc_shape(feed, corner)?)
            }
        };
        cautions.extend(self.material.as_ref().and_then(hazard::danger_of));
        let measured = cut_off_by_feed(feed);
        if let Ok(measured) = &measured {
            provenance.open("cut-off and evaluation length by the feed", measured);
        }
        if let (Some(v), Some(material)) = (self.cutting_speed, &self.material) {
            cautions.extend(built_up_edge(material, v, self.units, &mut provenance));
        }
        let least = known_least_chip(
            &self.tool,
            self.least_chip_thickness,
            self.units,
            &mut cautions,
            &mut provenance,
        );
        let mut chip = None;
        if let Some(least) = least {
            if found.regime == FinishRegime::Arc {
                let (finish, caution) = with_least_chip(feed, corner, least, self.units)?;
                cautions.extend(caution);
                chip = Some(finish);
            } else {
                cautions.push(Caution::new(
                    Severity::Note,
                    "least_chip_on_an_edge",
                    "An edge of the tool shows in the finish: what a least chip adds is known for the corner arc alone.",
                ));
            }
        }
        let uneven = match self.feed_unevenness {
            Some(unevenness) => {
                let CutOff {
                    evaluation_length, ..
                } = measured.clone()?.value;
                if found.regime != FinishRegime::Arc {
                    cautions.push(Caution::new(
                        Severity::Note,
                        "uneven_on_an_edge",
                        "An edge of the tool shows in the finish: the spread by an uneven feed is that of the corner arc alone.",
                    ));
                }
                Some(uneven_feed::uneven_spread(
                    feed,
                    unevenness,
                    corner,
                    evaluation_length,
                )?)
            }
            None => None,
        };
        let profile = match &self.profile {
            Some(asked) => Some(asked.answer(
                feed,
                outline,
                self.feed_unevenness,
                measured.clone()?.value,
                &mut cautions,
                &mut provenance,
            )?),
            None => None,
        };
        cautions.push(theory_only());
        let measured = measured.ok().map(|measured| measured.value);
        Ok(Answer {
            regime: found.regime,
            rt: found.rt,
            rz: found.rz,
            ra: found.ra,
            rq: found.rq,
            // Where the edge rubs more than it cuts no grade of theory means anything.
            grade: match chip {
                Some(chip) if chip.regime == LeastChipRegime::BelowBestFeed => None,
                _ => Grade::of(found.ra).map(Grade::name),
            },
            rsk: shape.rsk,
            rku: shape.rku,
            rsm: shape.rsm,
            cut_off: measured.map(|measured| measured.cut_off),
            evaluation_length: measured.map(|measured| measured.evaluation_length),
            least_chip_thickness: least,
            rt_with_least_chip: chip.map(|chip| chip.rt),
            best_feed: chip.map(|chip| chip.best_feed),
            least_chip_regime: chip.map(|chip| chip.regime),
            uneven,
            profile,
            cautions,
            provenance,
        })
    }
}

/// What theory leaves out.
pub(super) fn theory_only() -> Caution {
    Caution::new(
        Severity::Note,
        "theory_only",
        "Theory of the tool's shape alone: built-up edge, least chip thickness, wear, chatter and an uneven hand come on top.",
    )
}
