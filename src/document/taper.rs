//! How a taper is set: compound slide, tailstock, attachment.

use serde::Serialize;

use crate::advice::taper::{self as advice, Ways};
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::taper::{self, Taper};
use crate::physics::tool_height;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{
    CompoundAngle, CrossSlideAngle, Diameter, DiameterError, HalfAngle, IncludedAngle, SetOver,
    TaperRatio, ToolHeight, Travel, WorkLength,
};
use crate::shop::dial::Dial;
use crate::standards;

/// A taper, and what is known of its size and of the lathe.
///
/// ```
/// use turnwright::{document::taper::Question, physics::taper::Taper};
/// let taper = Taper::between("1.25 in".parse()?, "1 in".parse()?, "6 in".parse()?)?;
/// let answer = Question::new(taper).with_length_between_centres("12 in".parse()?).answer()?;
/// assert_eq!(answer.ratio.value().round(), 24.0);
/// assert!(answer.set_over.is_some_and(|s| (s.inch() - 0.25).abs() < 1e-3));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    taper: Taper,
    large: Option<Diameter>,
    small: Option<Diameter>,
    length: Option<WorkLength>,
    length_between_centres: Option<WorkLength>,
    compound_travel: Option<Travel>,
    compound: Option<Dial>,
    attachment_length: Option<WorkLength>,
    tool_height: Option<ToolHeight>,
    units: Option<Units>,
    provenance: Provenance,
}

/// A setting of the compound slide, on both scales that lathes have.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct CompoundSetting {
    /// On a scale that is zero along the axis.
    pub compound_angle: CompoundAngle,
    /// On a scale that is zero along the cross slide.
    pub compound_angle_from_cross_slide: CrossSlideAngle,
}

/// Settings at which a travel of the compound slide takes a tenth of it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct FineInfeed {
    /// A tenth of the travel off the radius.
    pub tenth_on_radius: CompoundSetting,
    /// A tenth of the travel off the diameter.
    pub tenth_on_diameter: CompoundSetting,
}

/// What one mark of the compound slide does, set to the taper.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct OneMark {
    /// Of the slide.
    pub travel: Travel,
    /// Of the tool towards the axis.
    pub infeed: Travel,
    /// Of the tool along the axis.
    pub shift: Travel,
}

/// How the taper is set.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Between side and axis.
    pub half_angle: HalfAngle,
    /// Between the two sides.
    pub included_angle: IncludedAngle,
    /// The x of 1:x.
    pub ratio: TaperRatio,
    /// Change of the diameter over 12 inches.
    pub taper_per_foot: DiameterError,
    /// The large diameter, where it is known or follows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub large: Option<Diameter>,
    /// The small diameter, where it is known or follows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub small: Option<Diameter>,
    /// The length, where it is known or follows.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length: Option<WorkLength>,
    /// The compound slide, on a scale that is zero along the axis.
    pub compound_angle: CompoundAngle,
    /// The compound slide, on a scale that is zero along the cross slide.
    pub compound_angle_from_cross_slide: CrossSlideAngle,
    /// Travel of the compound slide over the length.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slide_travel: Option<Travel>,
    /// What one mark of its dial does at this setting.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub one_mark: Option<OneMark>,
    /// The tailstock towards the operator, for work between centres.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub set_over: Option<SetOver>,
    /// The same by the usual form, which has the tangent for the sine.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub usual_set_over: Option<SetOver>,
    /// How much too large the small end comes out with a tool off centre height.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub small_end_error: Option<DiameterError>,
    /// Settings for fine infeed, which have nothing to do with the taper.
    pub fine_infeed: FineInfeed,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A taper.
    #[must_use]
    pub fn new(taper: Taper) -> Self {
        Self {
            taper,
            large: None,
            small: None,
            length: None,
            length_between_centres: None,
            compound_travel: None,
            compound: None,
            attachment_length: None,
            tool_height: None,
            units: None,
            provenance: Provenance::default(),
        }
    }

    crate::shop::setters! {
        /// With its large diameter; of two of large, small and length the third follows.
        with_large large: Diameter;
        /// With its small diameter.
        with_small small: Diameter;
        /// With its length.
        with_length length: WorkLength;
        /// With the length between the points of the centres, for the set-over.
        with_length_between_centres length_between_centres: WorkLength;
        /// With the travel that the compound slide has.
        with_compound_travel compound_travel: Travel;
        /// With the dial of the compound slide, for what one of its marks does at this taper.
        with_compound compound: Dial;
        /// With the longest taper that an attachment turns.
        with_attachment_length attachment_length: WorkLength;
        /// With the height of the tip above the axis.
        with_tool_height tool_height: ToolHeight;
        /// With words in these units.
        with_units units: Units;
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let (large, small, length) = (
            f.quantity("large")?,
            f.quantity("small")?,
            f.quantity("length")?,
        );
        let mut provenance = Provenance::default();
        let taper = taper(&f, large, small, length, &mut provenance)?;
        let question = Self {
            taper,
            large,
            small,
            length,
            length_between_centres: f.quantity("length_between_centres")?,
            compound_travel: f.quantity("compound_travel")?,
            compound: f.item("compound", Dial::read)?,
            attachment_length: f.quantity("attachment_length")?,
            tool_height: f.quantity("tool_height")?,
            units: Some(units),
            provenance,
        };
        f.finish()?;
        Ok(question)
    }

    /// The settings.
    ///
    /// # Errors
    /// When sizes do not make this taper; `tool_height`, without the two diameters or when the tip passes
    /// the small end.
    pub fn answer(&self) -> Result<Answer, Error> {
        let taper = self.taper;
        let (large, small, length) = self.sizes()?;
        let setting = |compound_angle| CompoundSetting {
            compound_angle,
            compound_angle_from_cross_slide: taper::from_cross_slide(compound_angle),
        };
        let fine = |share: f64| {
            let travel = |mm| Travel::computed_trade(mm);
            taper::angle_for_infeed(travel(share), travel(1.0)).map(setting)
        };
        let small_end_error = match (self.tool_height, large, small) {
            (None, _, _) => None,
            (Some(height), Some(large), Some(small)) => {
                Some(tool_height::taper_error(large, small, height)?)
            }
            (Some(_), _, _) => {
                return Err(Error::new(
                    ErrorKind::MissingField,
                    "small",
                    "a tool height without the ends of the taper",
                    "two of large, small and length",
                    "add them, or leave tool_height out",
                ));
            }
        };
        let compound = setting(taper.compound_angle());
        let centres = self.length_between_centres;
        if let (Some(length), Some(centres)) = (length, centres)
            && length > centres
        {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "length_between_centres",
                centres.to_string(),
                format!("at least the length of the taper, {length}"),
                "give the length of the whole work between the points of the centres",
            ));
        }
        let slide_travel = length.map(|length| taper.slide_travel(length));
        let set_over = centres.map(|centres| taper::set_over(taper, centres));
        let mut provenance = self.provenance.clone();
        let cautions = advice::cautions(
            &Ways {
                length,
                slide_travel,
                compound_travel: self.compound_travel,
                attachment_length: self.attachment_length,
                set_over: set_over.zip(centres),
                small_end_error,
            },
            self.units.unwrap_or_default(),
            &mut provenance,
        );
        Ok(Answer {
            half_angle: taper.half_angle(),
            included_angle: taper.included_angle(),
            ratio: taper.ratio(),
            taper_per_foot: taper.per_foot(),
            large,
            small,
            length,
            compound_angle: compound.compound_angle,
            compound_angle_from_cross_slide: compound.compound_angle_from_cross_slide,
            slide_travel,
            one_mark: self.compound.as_ref().map(|dial| {
                // Half of what a mark would take off the diameter, were the slide square to the axis.
                let travel = Travel::computed_trade(dial.diameter_per_division().mm() / 2.0);
                let moved = taper::compound_motion(compound.compound_angle, travel);
                OneMark {
                    travel,
                    infeed: moved.infeed,
                    shift: moved.shift,
                }
            }),
            set_over,
            usual_set_over: centres.map(|centres| taper::usual_set_over(taper, centres)),
            small_end_error,
            fine_infeed: FineInfeed {
                tenth_on_radius: fine(0.1)?,
                tenth_on_diameter: fine(0.05)?,
            },
            cautions,
            provenance,
        })
    }

    /// The two diameters and the length, as far as they are known or follow.
    #[allow(clippy::type_complexity)]
    fn sizes(&self) -> Result<(Option<Diameter>, Option<Diameter>, Option<WorkLength>), Error> {
        Ok(match (self.large, self.small, self.length) {
            (Some(large), None, Some(length)) => {
                let small = self.taper.small_for(large, length)?;
                (Some(large), Some(small), Some(length))
            }
            (None, Some(small), Some(length)) => {
                let large = self.taper.large_for(small, length);
                (Some(large), Some(small), Some(length))
            }
            (Some(large), Some(small), None) => {
                let length = self.taper.length_between(large, small)?;
                (Some(large), Some(small), Some(length))
            }
            known => known,
        })
    }
}

/// The taper, by the one way in which it is given.
fn taper(
    f: &Fields<'_>,
    large: Option<Diameter>,
    small: Option<Diameter>,
    length: Option<WorkLength>,
    provenance: &mut Provenance,
) -> Result<Taper, Error> {
    let named = f.item("taper", |tree, path| {
        let name = crate::quantity::fields::text(tree, path)?;
        standards::taper::named(name).map_err(|error| error.at(path))
    })?;
    let mut ways = Vec::new();
    if let Some(ratio) = f.quantity::<TaperRatio>("ratio")? {
        ways.push(("ratio", Taper::of_ratio(ratio)));
    }
    if let Some(half) = f.quantity::<HalfAngle>("half_angle")? {
        ways.push(("half_angle", Taper::of_half_angle(half)));
    }
    if let Some(whole) = f.quantity::<IncludedAngle>("included_angle")? {
        ways.push(("included_angle", Taper::of_included_angle(whole)));
    }
    if let Some(named) = named {
        let ratio = named.value.ratio();
        provenance.record(
            format!("ratio of the taper {}", named.value.name()),
            &ratio,
            named.source,
            named.standing,
        );
        ways.push(("taper", Taper::of_ratio(ratio)));
    }
    if let (Some(large), Some(small), Some(length)) = (large, small, length) {
        ways.push((
            "large, small and length",
            Taper::between(large, small, length)?,
        ));
    }
    match ways.as_slice() {
        [(_, taper)] => Ok(*taper),
        [] => Err(f.missing(
            if large.is_some() && small.is_some() {
                "length"
            } else {
                "ratio"
            },
            "a taper: large, small and length; or ratio, half_angle, included_angle or the name of a taper",
        )),
        [(first, _), (second, _), ..] => Err(Error::new(
            ErrorKind::Contradiction,
            f.path(if second.contains(' ') { "length" } else { second }),
            format!("both {first} and {second}"),
            "the taper once",
            "keep one of them; beside a ratio or an angle give two of large, small and length at most",
        )),
    }
}
