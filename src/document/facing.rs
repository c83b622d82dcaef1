//! How long facing takes, and how fast it cuts on the way.

use serde::Serialize;

use crate::advice::spindle::SpindleAsk;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::facing::{self, FacingPace, SlowBelow};
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{CuttingSpeed, Diameter, Duration, Feed, Quantity, SpindleSpeed, ToolHeight};
use crate::shop::lathe::Lathe;

/// A face, a feed, and how the spindle runs.
///
/// ```
/// use turnwright::{document::facing::Question, physics::facing::FacingPace};
/// let pace = FacingPace::SpindleSpeed("500 rpm".parse()?);
/// let answer = Question::new("80 mm".parse()?, "0.1 mm/rev".parse()?, pace)
///     .with_least_cutting_speed("20 m/min".parse()?)
///     .answer()?;
/// assert!((answer.time.seconds() - 48.0).abs() < 1e-9);
/// assert!(answer.slow_below.is_some_and(|d| (d.mm() - 12.73).abs() < 0.01));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    diameter: Diameter,
    feed: Feed,
    pace: FacingPace,
    bore: Option<Diameter>,
    least_cutting_speed: Option<CuttingSpeed>,
    tool_height: Option<ToolHeight>,
    lever: Option<String>,
    units: Option<Units>,
}

/// How a face is turned.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// From the outside to the bore, or to the middle.
    pub time: Duration,
    /// Spindle speed at the outside.
    pub spindle_speed_outside: SpindleSpeed,
    /// What the levers say for it, where a step was chosen.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub lever: Option<String>,
    /// Cutting speed at the outside.
    pub cutting_speed_outside: CuttingSpeed,
    /// Spindle speed at the bore, or in the middle; none where nothing limits it there.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spindle_speed_at_bore: Option<SpindleSpeed>,
    /// Cutting speed at the bore; nothing in the middle of a solid face.
    pub cutting_speed_at_bore: CuttingSpeed,
    /// Diameter below which the limit of the spindle holds, if it lies outside of the bore; beyond the
    /// outside it holds all the way.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_speed_below: Option<Diameter>,
    /// Diameter below which the least cutting speed is not reached, if it lies outside of the bore;
    /// beyond the outside it is reached nowhere.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub slow_below: Option<Diameter>,
    /// Diameter of the pip that a tool off centre height leaves.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub pip_diameter: Option<Diameter>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
}

impl Question {
    /// A face of an outside diameter.
    #[must_use]
    pub fn new(diameter: Diameter, feed: Feed, pace: FacingPace) -> Self {
        Self {
            diameter,
            feed,
            pace,
            bore: None,
            least_cutting_speed: None,
            tool_height: None,
            lever: None,
            units: None,
        }
    }

    crate::shop::setters! {
        /// With a bore, at which the tool ends.
        with_bore bore: Diameter;
        /// With the least cutting speed that the tool bears.
        with_least_cutting_speed least_cutting_speed: CuttingSpeed;
        /// With the height of the tip above the axis.
        with_tool_height tool_height: ToolHeight;
        /// With words in these units.
        with_units units: Units;
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let diameter = f.need_quantity("diameter")?;
        let feed = f.need_quantity("feed")?;
        let (pace, lever) = pace(&f, diameter)?;
        let question = Self {
            diameter,
            feed,
            pace,
            bore: f.quantity("bore")?,
            least_cutting_speed: f.quantity("least_cutting_speed")?,
            tool_height: f.quantity("tool_height")?,
            lever,
            units: Some(units),
        };
        f.finish()?;
        Ok(question)
    }

    /// Times and speeds.
    ///
    /// # Errors
    /// `bore`, when it is not smaller than the outside.
    pub fn answer(&self) -> Result<Answer, Error> {
        let time = facing::time(self.pace, self.diameter, self.bore, self.feed)?;
        // A face without a bore ends at the axis, which is below every diameter.
        let on_face = |d: &Diameter| self.bore.is_none_or(|bore| *d > bore);
        let full_speed_below = facing::full_speed_below(self.pace).filter(on_face);
        let slow = self
            .least_cutting_speed
            .map(|least| facing::slow_below(self.pace, least));
        let slow_below = match slow {
            Some(SlowBelow::Diameter(d)) => Some(d).filter(on_face),
            _ => None,
        };
        let in_middle = match self.pace {
            FacingPace::SpindleSpeed(n) => Some(n),
            FacingPace::SurfaceSpeed { highest, .. } => highest,
        };
        Ok(Answer {
            time,
            spindle_speed_outside: facing::spindle_speed_at(self.pace, self.diameter),
            lever: self.lever.clone(),
            cutting_speed_outside: facing::cutting_speed_at(self.pace, self.diameter),
            spindle_speed_at_bore: match self.bore {
                Some(bore) => Some(facing::spindle_speed_at(self.pace, bore)),
                None => in_middle,
            },
            cutting_speed_at_bore: match self.bore {
                Some(bore) => facing::cutting_speed_at(self.pace, bore),
                None => CuttingSpeed::computed_trade(0.0),
            },
            full_speed_below,
            slow_below,
            pip_diameter: match self.bore {
                Some(_) => None,
                None => self.tool_height.and_then(facing::pip_diameter),
            },
            cautions: self.cautions(slow, slow_below),
        })
    }

    fn cautions(&self, slow: Option<SlowBelow>, slow_below: Option<Diameter>) -> Vec<Caution> {
        let units = self.units.unwrap_or_default();
        let mut cautions = Vec::new();
        let rises = match self.bore {
            Some(bore) => facing::spindle_speed_at(self.pace, bore),
            None => {
                facing::spindle_speed_at(self.pace, Diameter::computed_trade(Diameter::ROW.least()))
            }
        } > facing::spindle_speed_at(self.pace, self.diameter);
        if !rises {
            cautions.push(Caution::new(
                Severity::Warning,
                "chuck_speed",
                "Whatever this says, never above the speed marked on the chuck, nor above what the work and its holding bear.",
            ));
        }
        if let (FacingPace::SurfaceSpeed { .. }, false) = (self.pace, rises) {
            cautions.push(Caution::new(
                Severity::Note,
                "limit_holds_throughout",
                "The highest spindle speed holds over the whole face: the cutting speed asked for is reached nowhere on it.",
            ));
        }
        if let (FacingPace::SurfaceSpeed { highest, .. }, true) = (self.pace, rises) {
            let limit =
                highest.map_or_else(String::new, |n| format!(", up to {}", n.people(units)));
            cautions.push(Caution::new(
                Severity::Danger,
                "rising_spindle_speed",
                format!(
                    "The spindle speeds up as the tool moves in{limit}. Set that limit at the machine before starting; it \
                     must not be above the speed marked on the chuck, nor above what this work and its holding bear. \
                     Guard closed, stand out of the plane of the chuck; the machine's manual rules."
                ),
            ));
        }
        let everywhere = slow == Some(SlowBelow::Everywhere)
            || slow_below.is_some_and(|below| below >= self.diameter);
        if everywhere {
            cautions.push(Caution::new(
                Severity::Warning,
                "slow_everywhere",
                "The cutting speed is below the least one everywhere on the face.",
            ));
        } else if let Some(d) = slow_below {
            cautions.push(Caution::new(
                Severity::Note,
                "slow_inside",
                format!(
                    "Below a diameter of {} the cutting speed is under the least one: expect a poorer finish there, and a \
                     built-up edge in steel.",
                    d.people(units)
                ),
            ));
        }
        match (self.bore, self.tool_height) {
            (Some(_), _) => {}
            (None, Some(height)) if height.mm() != 0.0 => cautions.push(Caution::new(
                Severity::Warning,
                "tool_off_centre",
                if height.mm() < 0.0 {
                    "The tip is below the axis: a pip stays in the middle. Set the tool to centre height."
                } else {
                    "The tip is above the axis: its flank rubs the pip in the middle and the edge can break. Set the tool to \
                     centre height."
                },
            )),
            (None, _) => cautions.push(Caution::new(
                Severity::Note,
                "nothing_cuts_in_the_middle",
                "In the middle the cutting speed is nothing at any spindle speed: have the tip at centre height, and \
                 feed gently over the last bit.",
            )),
        }
        cautions.push(Caution::new(
            Severity::Note,
            "lock_carriage",
            "Lock the carriage, or the face comes out hollow or full.",
        ));
        cautions
    }
}

/// How the spindle runs, and what the lever of a chosen step says.
fn pace(f: &Fields<'_>, diameter: Diameter) -> Result<(FacingPace, Option<String>), Error> {
    let fixed = f.quantity::<SpindleSpeed>("spindle_speed")?;
    let held = f.quantity::<CuttingSpeed>("cutting_speed")?;
    let limit = f.quantity::<SpindleSpeed>("max_spindle_speed")?;
    let lathe = f.item("lathe", Lathe::read)?;
    let cap = [limit, lathe.as_ref().and_then(Lathe::speed_cap)]
        .into_iter()
        .flatten()
        .min();
    match (fixed, held, limit, &lathe) {
        (Some(_), Some(_), _, _) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("spindle_speed"),
            "both cutting_speed and spindle_speed",
            "one of the two",
            "keep spindle_speed for a gearbox, cutting_speed for a drive that speeds up as the tool moves in",
        )),
        (None, None, _, _) => Err(f.missing(
            "spindle_speed",
            "a speed: spindle_speed, or cutting_speed with max_spindle_speed or a lathe",
        )),
        (Some(fixed), None, _, _) => match cap {
            Some(cap) if fixed > cap => Err(Error::new(
                ErrorKind::Impossible,
                f.path("spindle_speed"),
                fixed.to_string(),
                format!("at most {cap}, the highest speed of machine and chuck"),
                "run slower: this limit is not to be passed",
            )),
            _ => Ok((FacingPace::SpindleSpeed(fixed), None)),
        },
        (None, Some(cutting_speed), Some(_), _) => Ok((
            FacingPace::SurfaceSpeed {
                cutting_speed,
                highest: cap,
            },
            None,
        )),
        (None, Some(cutting_speed), None, Some(lathe)) => {
            let choice = SpindleAsk::new(lathe, diameter, cutting_speed).choose()?;
            Ok((FacingPace::SpindleSpeed(choice.spindle_speed), choice.lever))
        }
        (None, Some(_), None, None) => Err(f.missing(
            "max_spindle_speed",
            "the highest spindle speed, not above the one marked on the chuck; or a lathe whose step is to be chosen",
        )),
    }
}
