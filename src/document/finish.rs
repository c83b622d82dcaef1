//! The roughness that the shape of the tool leaves.

use serde::Serialize;

use crate::advice::feed::outline;
use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::finish::{self, FinishRegime, TheoreticalRoughness};
use crate::quantity::fields::Tree;
use crate::quantity::{Feed, Ra, Rq, Rt, Rz};
use crate::shop::tool::Tool;
use crate::standards::texture::Grade;

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
}

/// The theoretical roughness.
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
    /// What a person must be told.
    pub cautions: Vec<Caution>,
}

impl Question {
    /// A feed and a tool.
    #[must_use]
    pub fn new(feed: Feed, tool: Tool) -> Self {
        Self { feed, tool }
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            feed: f.need_quantity("feed")?,
            tool: f.need_item(
                "tool",
                "the tool: corner_radius and cutting_edge_angle",
                Tool::read,
            )?,
        };
        for later in [
            "cutting_speed",
            "material",
            "least_chip_thickness",
            "feed_unevenness",
        ] {
            f.later(
                later,
                "what makes a real surface rougher than theory",
                "leave it out: this version gives the theory",
            )?;
        }
        f.finish()?;
        Ok(question)
    }

    /// The roughness.
    ///
    /// # Errors
    /// When the edges of the tool do not meet in a corner, or the feed is wider than an arc can reach.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut cautions = Vec::new();
        let found: TheoreticalRoughness = match outline(&self.tool)? {
            Some(outline) => finish::theoretical_roughness(self.feed, &outline),
            None => {
                let found = finish::arc_roughness(self.feed, self.tool.corner_radius())?;
                let angle =
                    finish::least_minor_angle_for_arc(self.feed, self.tool.corner_radius())?;
                cautions.push(Caution::new(
                    Severity::Note,
                    "minor_edge_unknown",
                    format!(
                        "Holds for a minor cutting edge angle of at least {:.1} deg; give minor_cutting_edge_angle to be sure.",
                        angle.degrees()
                    ),
                ));
                found
            }
        };
        cautions.push(theory_only());
        Ok(Answer {
            regime: found.regime,
            rt: found.rt,
            rz: found.rz,
            ra: found.ra,
            rq: found.rq,
            grade: Grade::of(found.ra).map(Grade::name),
            cautions,
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
