//! What the size of the last cut rests on: the uncertainty budget of a turned diameter.
//!
//! Every cause is a component of its own, on the slide where it happens (a slide counts twice on the
//! diameter). What a measurement before the last cut has taken out does not appear: that is why the
//! last two cuts are alike and why every approach moves into the metal.

use std::fmt;

use crate::error::Error;
use crate::physics::budget::{Budget, Component};
use crate::physics::heat;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    Diameter, DiameterError, HalfWidth, Quantity, Sensitivity, StandardUncertainty,
    TemperatureRise, ThermalExpansion,
};
use crate::shop::dial::{Dial, Ring};
use crate::shop::gauge::{Gauge, InstrumentError};

use super::support::FORCE_SCATTER;

const JUDGEMENT: &str = "judgement, no source";

/// Half the width within which a hand sets the ring by tenths between marks, in marks.
pub const RING_BY_TENTHS: Sourced<f64> = Sourced::new(0.2, JUDGEMENT, Standing::Estimate);

/// Half the width within which a hand brings a mark to its line, in marks.
pub const LINE_TO_LINE: Sourced<f64> = Sourced::new(0.1, JUDGEMENT, Standing::Estimate);

/// Half the width of what is lost where only whole marks are counted, in marks.
pub const WHOLE_MARKS: Sourced<f64> =
    Sourced::new(0.5, "rounding to whole marks", Standing::Published);

/// Share of the backlash by which a slide stops off its place, though it came in from the same side.
pub const BACKLASH_LEFT: Sourced<f64> = Sourced::new(0.02, JUDGEMENT, Standing::Estimate);

/// Error of a cross screw over the travel since the size was measured.
pub const SCREW_ERROR: Sourced<f64> = Sourced::new(0.001, JUDGEMENT, Standing::Estimate);

/// Half the width within which a light touch finds the surface, on the slide.
pub const TOUCH: Sourced<HalfWidth> = Sourced::new(
    HalfWidth::computed_trade(0.01),
    JUDGEMENT,
    Standing::Estimate,
);

/// Scatter of the force from one cut to the next alike one, on the same bar.
pub const CUT_TO_CUT: Sourced<f64> = Sourced::new(0.05, JUDGEMENT, Standing::Estimate);

/// How far from 20 degC a part may be that was left to cool.
pub const HEAT_LEFT: Sourced<TemperatureRise> = Sourced::new(
    TemperatureRise::computed_trade(3.0),
    JUDGEMENT,
    Standing::Estimate,
);

/// One cause of a size that is not the one aimed at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum SizeCause {
    /// The error of the measuring instrument.
    Instrument,
    /// Its resolution.
    Resolution,
    /// The hand that measures.
    Repeatability,
    /// The part is not at 20 degC.
    Heat,
    /// The zero of the dial was found by touching.
    Touch,
    /// The ring of the dial was set by a measured size.
    Ring,
    /// Marks brought to their line.
    Mark,
    /// What the backlash leaves, coming in from the same side.
    Backlash,
    /// The cross screw between the measured size and the last one.
    Screw,
    /// Spring of the bar that no measurement has taken out.
    Spring,
    /// Spring that differs from one cut to the next alike one.
    CutToCut,
    /// Spring that differs along the bar.
    AlongTheBar,
}

impl SizeCause {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Instrument => "instrument",
            Self::Resolution => "resolution",
            Self::Repeatability => "repeatability",
            Self::Heat => "heat",
            Self::Touch => "touch",
            Self::Ring => "ring",
            Self::Mark => "mark",
            Self::Backlash => "backlash",
            Self::Screw => "screw",
            Self::Spring => "spring",
            Self::CutToCut => "cut_to_cut",
            Self::AlongTheBar => "along_the_bar",
        }
    }

    /// The cause as a person says it.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Instrument => "the measuring instrument",
            Self::Resolution => "the resolution of the instrument",
            Self::Repeatability => "the hand that measures",
            Self::Heat => "warmth left in the part",
            Self::Touch => "the zero found by touching",
            Self::Ring => "setting the dial",
            Self::Mark => "bringing the slide to its reading",
            Self::Backlash => "what the backlash leaves",
            Self::Screw => "the cross screw",
            Self::Spring => "spring of the bar that was not measured",
            Self::CutToCut => "spring from cut to cut",
            Self::AlongTheBar => "spring along the bar",
        }
    }

    /// True for a cause that lies in the measurement, not in the cut.
    #[must_use]
    pub const fn is_of_measuring(self) -> bool {
        matches!(
            self,
            Self::Instrument | Self::Resolution | Self::Repeatability | Self::Heat
        )
    }
}

impl fmt::Display for SizeCause {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.words())
    }
}

/// A cause with its share of the budget's variance.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CauseShare {
    /// The cause.
    pub cause: SizeCause,
    /// What it contributes, on the diameter.
    pub contribution: StandardUncertainty,
    /// Its share of the variance, from 0 to 1.
    pub share: f64,
}

/// From where the last size is reached.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Reached {
    /// From a zero found by touching the bar; nothing was measured since.
    FromTouch {
        /// What is taken off the diameter since.
        taken: DiameterError,
    },
    /// From a size that was measured, by which the dial was set or read.
    FromMeasured {
        /// What is taken off the diameter since.
        taken: DiameterError,
        /// By how much the bar sprang in the cut that was measured, on the diameter; none where a size
        /// was measured that no cut of this setting had made.
        spring: Option<DiameterError>,
    },
}

/// Asks what the last size rests on.
///
/// # Units
/// Causes of the cross slide count twice on the diameter (sensitivity 2, JCGM 100).
/// # Source
/// JCGM 100:2008 (GUM) for the budget, from memory; the figures of single causes are constants of
/// this file and of the instrument, each with its standing, and are recorded in the provenance.
/// # Example
/// An invented lathe and bar.
/// ```
/// use turnwright::{
///     advice::size_budget::{Reached, SizeAsk, SizeCause}, standards::instrument::Instrument, Dial, DialReads,
///     Division, DivisionsPerTurn, Provenance,
/// };
/// let cross = Dial::new(DialReads::Radius, Division::from_mm(0.02)?, DivisionsPerTurn::new(100)?);
/// let reached = Reached::FromMeasured { taken: "0.4 mm".parse()?, spring: Some("0.003 mm".parse()?) };
/// let budget = SizeAsk::new("30 mm".parse()?, &cross, Instrument::Micrometer, reached)
///     .with_spring("0.003 mm".parse()?)
///     .budget(&mut Provenance::default())?;
/// assert_eq!(budget.dominant(), SizeCause::Ring);
/// assert!(budget.combined().mm() > 0.004 && budget.combined().mm() < 0.008);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct SizeAsk<'a> {
    size: Diameter,
    dial: &'a Dial,
    gauge: Gauge,
    reached: Reached,
    spring: Option<DiameterError>,
    spring_corrected: bool,
    along: Option<DiameterError>,
    expansion: Option<ThermalExpansion>,
    counted: bool,
}

impl<'a> SizeAsk<'a> {
    /// A size to be reached by a cross dial and told by an instrument.
    #[must_use]
    pub fn new(size: Diameter, dial: &'a Dial, gauge: impl Into<Gauge>, reached: Reached) -> Self {
        Self {
            size,
            dial,
            gauge: gauge.into(),
            reached,
            spring: None,
            spring_corrected: false,
            along: None,
            counted: false,
            expansion: None,
        }
    }

    crate::shop::setters! {
        /// With the spring of the last cut, on the diameter.
        with_spring spring: DiameterError;
        /// With the difference of the spring along the part, on the diameter.
        with_spring_along along: DiameterError;
        /// With the expansion of the material, for the warmth that is left in the part.
        with_expansion expansion: ThermalExpansion;
    }

    /// With the marks of a fixed ring counted already: what the nearest one left over is known.
    pub(crate) fn with_marks_counted(mut self) -> Self {
        self.counted = true;
        self
    }

    /// With readings that are corrected for the spring to expect: only its scatter is left.
    #[must_use]
    pub fn with_spring_corrected(mut self) -> Self {
        self.spring_corrected = true;
        self
    }

    /// With another instrument.
    #[must_use]
    pub fn with_gauge(mut self, gauge: impl Into<Gauge>) -> Self {
        self.gauge = gauge.into();
        self
    }

    /// With another dial.
    #[must_use]
    pub fn with_dial<'b>(self, dial: &'b Dial) -> SizeAsk<'b> {
        SizeAsk { dial, ..self }
    }

    /// With another way to the last size.
    #[must_use]
    pub fn with_reached(mut self, reached: Reached) -> Self {
        self.reached = reached;
        self
    }

    pub(crate) fn gauge(&self) -> &Gauge {
        &self.gauge
    }

    pub(crate) fn dial(&self) -> &Dial {
        self.dial
    }

    pub(crate) fn reached(&self) -> Reached {
        self.reached
    }

    pub(crate) fn size(&self) -> Diameter {
        self.size
    }

    pub(crate) fn along(&self) -> Option<DiameterError> {
        self.along
    }

    pub(crate) fn spring(&self) -> Option<DiameterError> {
        self.spring
    }

    /// The budget.
    ///
    /// # Errors
    /// `diameter`, beyond the sizes for which the instrument's error is known.
    pub fn budget(&self, provenance: &mut Provenance) -> Result<SizeBudget, Error> {
        let mut causes = Causes(Vec::with_capacity(12));
        let measured = matches!(self.reached, Reached::FromMeasured { .. });
        if measured {
            self.measuring(&mut causes, provenance)?;
        }
        self.slide(&mut causes, provenance);
        self.bar(&mut causes, provenance);
        SizeBudget::of(causes.0)
    }

    /// What a measurement alone is uncertain by: instrument, hand and warmth.
    ///
    /// # Errors
    /// As [`budget`](Self::budget).
    pub fn measuring_budget(&self, provenance: &mut Provenance) -> Result<SizeBudget, Error> {
        let mut causes = Causes(Vec::with_capacity(4));
        self.measuring(&mut causes, provenance)?;
        SizeBudget::of(causes.0)
    }

    fn measuring(&self, causes: &mut Causes, provenance: &mut Provenance) -> Result<(), Error> {
        match self.gauge.error_at(self.size, provenance)? {
            InstrumentError::Within(error) => {
                causes.uniform(SizeCause::Instrument, error.mm(), 1.0);
            }
            InstrumentError::Certified(expanded, k) => {
                causes.normal(SizeCause::Instrument, expanded.mm() / k.trade());
            }
        }
        if let Some(resolution) = self.gauge.resolution() {
            causes.uniform(SizeCause::Resolution, 0.5 * resolution.mm(), 1.0);
        }
        causes.normal(
            SizeCause::Repeatability,
            self.gauge.scatter(provenance).mm(),
        );
        if let Some(expansion) = self.expansion {
            let left = provenance.open("warmth left in a part that has cooled", &HEAT_LEFT);
            let growth = heat::diameter_growth(self.size, expansion, left);
            causes.uniform(SizeCause::Heat, growth.mm().abs(), 1.0);
        }
        Ok(())
    }

    /// Ring, marks, backlash and screw.
    fn slide(&self, causes: &mut Causes, provenance: &mut Provenance) {
        let mark = 0.5 * self.dial.diameter_per_division().mm();
        let readout = self.dial.ring() == Ring::Readout;
        let line = match readout {
            true => provenance.open("a number on a readout, in its steps", &WHOLE_MARKS),
            false => provenance.open("a mark brought to its line, in marks", &LINE_TO_LINE),
        };
        let (taken, arrivals) = match self.reached {
            Reached::FromTouch { taken } => {
                let touch = provenance.open("a light touch finds the surface", &TOUCH);
                causes.uniform(SizeCause::Touch, touch.mm(), 2.0);
                (taken, 1.0)
            }
            Reached::FromMeasured { taken, .. } => {
                let ring = match self.dial.ring() {
                    Ring::Settable => {
                        provenance.open("the ring set by tenths, in marks", &RING_BY_TENTHS)
                    }
                    Ring::Fixed => provenance.open("whole marks counted, in marks", &WHOLE_MARKS),
                    Ring::Readout => {
                        provenance.open("a size set on a readout, in its steps", &WHOLE_MARKS)
                    }
                };
                if !self.counted {
                    causes.uniform(SizeCause::Ring, ring * mark, 2.0);
                }
                // The measured cut's mark and the last one, each brought to its line; and before a ring is set
                // the measured one once more.
                let arrivals: f64 = match self.dial.ring() {
                    Ring::Settable | Ring::Readout => 3.0,
                    Ring::Fixed => 2.0,
                };
                (taken, arrivals.sqrt())
            }
        };
        causes.uniform(SizeCause::Mark, line * mark * arrivals, 2.0);
        if readout {
            // The scale stands on the slide: neither play nor pitch of the screw is in what it shows.
            return;
        }
        if let Some(backlash) = self.dial.backlash() {
            let left = provenance.open("share of the backlash that is left", &BACKLASH_LEFT);
            causes.uniform(SizeCause::Backlash, left * backlash.mm() * arrivals, 2.0);
        }
        let screw = provenance.open("error of the cross screw over its travel", &SCREW_ERROR);
        causes.uniform(SizeCause::Screw, screw * 0.5 * taken.mm().abs(), 2.0);
    }

    /// Spring of the bar.
    fn bar(&self, causes: &mut Causes, provenance: &mut Provenance) {
        let Some(spring) = self.spring else {
            return;
        };
        let spring = spring.mm().abs();
        let scatter = provenance.open("scatter of the specific force", &FORCE_SCATTER);
        let repeat = provenance.open("force from cut to cut on one bar", &CUT_TO_CUT);
        let (known, left, cuts) = match self.reached {
            // The dial tells nothing of the spring; the bar measures too large by all of it.
            Reached::FromTouch { .. } | Reached::FromMeasured { spring: None, .. } => {
                let known = if self.spring_corrected { 0.0 } else { spring };
                (known, spring * scatter, spring)
            }
            Reached::FromMeasured {
                spring: Some(before),
                ..
            } => {
                let before = before.mm().abs();
                let known = spring - before;
                (known, known.abs() * scatter, spring.hypot(before))
            }
        };
        causes.known(SizeCause::Spring, known, left);
        causes.normal(SizeCause::CutToCut, repeat * cuts);
        if let Some(along) = self.along {
            causes.uniform(SizeCause::AlongTheBar, 0.5 * along.mm().abs(), 1.0);
        }
    }
}

/// One cause with its figure, before it becomes a component.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Cause {
    cause: SizeCause,
    /// Half the width of a uniform law, or the standard deviation of a normal one, in mm.
    mm: f64,
    uniform: bool,
    sensitivity: f64,
    /// What of it is known with its sign, on the diameter, in mm: larger where positive.
    known: f64,
}

struct Causes(Vec<Cause>);

impl Causes {
    fn uniform(&mut self, cause: SizeCause, mm: f64, sensitivity: f64) {
        self.push(cause, mm, true, sensitivity);
    }

    fn normal(&mut self, cause: SizeCause, mm: f64) {
        self.push(cause, mm, false, 1.0);
    }

    fn push(&mut self, cause: SizeCause, mm: f64, uniform: bool, sensitivity: f64) {
        // A part of a millionth of a micrometre is none.
        if mm > 1e-9 {
            self.0.push(Cause {
                cause,
                mm,
                uniform,
                sensitivity,
                known: 0.0,
            });
        }
    }

    /// What is known with its sign, and how far it scatters about that: as an uncertainty, all of it.
    fn known(&mut self, cause: SizeCause, known: f64, scatter: f64) {
        let before = self.0.len();
        self.uniform(cause, known.abs() + scatter, 1.0);
        if let Some(added) = self.0.get_mut(before) {
            added.known = known;
        }
    }
}

/// The budget of a size, its causes named.
#[derive(Debug, Clone)]
pub struct SizeBudget {
    causes: Vec<Cause>,
    budget: Budget,
}

impl SizeBudget {
    fn of(causes: Vec<Cause>) -> Result<Self, Error> {
        let components = causes.iter().map(Cause::component).collect();
        Ok(Self {
            budget: Budget::new(components)?,
            causes,
        })
    }

    /// The budget as the GUM has it: components, sensitivities, combined and expanded uncertainty.
    #[must_use]
    pub fn budget(&self) -> &Budget {
        &self.budget
    }

    /// The combined standard uncertainty of the size.
    #[must_use]
    pub fn combined(&self) -> StandardUncertainty {
        self.budget.combined()
    }

    /// The cause with the largest share.
    #[must_use]
    pub fn dominant(&self) -> SizeCause {
        self.causes[self.budget.dominant()].cause
    }

    /// All causes with their shares, the largest first.
    #[must_use]
    pub fn shares(&self) -> Vec<CauseShare> {
        let mut shares: Vec<CauseShare> = self
            .causes
            .iter()
            .zip(self.budget.components())
            .enumerate()
            .filter_map(|(at, (cause, component))| {
                Some(CauseShare {
                    cause: cause.cause,
                    contribution: component.contribution()?,
                    share: self.budget.share(at)?,
                })
            })
            .collect();
        shares.sort_by(|a, b| b.share.total_cmp(&a.share));
        shares
    }

    /// The same budget with some causes made `factor` times as large; 0 is a cause known perfectly.
    /// None where nothing would be left.
    pub(crate) fn with(&self, causes: &[SizeCause], factor: f64) -> Option<Self> {
        let causes: Vec<Cause> = self
            .causes
            .iter()
            .map(|c| Cause {
                mm: if causes.contains(&c.cause) {
                    c.mm * factor
                } else {
                    c.mm
                },
                known: if causes.contains(&c.cause) {
                    c.known * factor
                } else {
                    c.known
                },
                ..*c
            })
            .filter(|c| c.mm > 1e-9)
            .collect();
        Self::of(causes).ok()
    }

    /// By how much sizes are known to come out larger than what is aimed at, smaller where negative.
    pub(crate) fn known(&self) -> DiameterError {
        DiameterError::computed_trade(self.causes.iter().map(|c| c.known).sum())
    }

    /// How sizes scatter about that; none where nothing is left of it.
    pub(crate) fn about_known(&self) -> Option<Budget> {
        if self.causes.iter().all(|c| c.known == 0.0) {
            return Some(self.budget.clone());
        }
        let scatter = self.causes.iter().map(|c| Cause {
            mm: c.mm - c.known.abs(),
            ..*c
        });
        let left = scatter.filter(|c| c.mm > 1e-9);
        Budget::new(left.map(|c| c.component()).collect()).ok()
    }

    /// The figure of a cause where it happens: half a width, or a standard deviation, in mm.
    pub(crate) fn figure(&self, cause: SizeCause) -> Option<f64> {
        self.causes.iter().find(|c| c.cause == cause).map(|c| c.mm)
    }
}

impl Cause {
    fn component(&self) -> Component {
        let component = if self.uniform {
            Component::uniform(self.cause.name(), HalfWidth::computed_trade(self.mm))
        } else {
            Component::standard(
                self.cause.name(),
                StandardUncertainty::computed_trade(self.mm),
            )
        };
        component.with_sensitivity(Sensitivity::computed_trade(self.sensitivity))
    }
}
