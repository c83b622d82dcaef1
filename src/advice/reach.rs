//! Whether a tolerance is within reach of a lathe and an instrument, and what would bring it there.

use std::fmt;

use crate::error::Error;
use crate::physics::aim::{self, Prices};
use crate::physics::spread::{self, Outcome};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    Confidence, Diameter, DiameterError, Probability, SizeUncertainty, StandardUncertainty,
};
use crate::shop::gauge::Gauge;
use crate::standards::decision::DecisionRule;
use crate::standards::instrument::Instrument;
use crate::standards::limits::{Feature, Limits};

use super::size_budget::{CauseShare, Reached, SizeAsk, SizeBudget, SizeCause};

/// Chance of a good part from which a task counts as within reach.
pub const LEAST_GOOD: Sourced<Probability> = Sourced::new(
    Probability::computed_trade(0.95),
    "judgement, no source: nineteen good parts of twenty",
    Standing::Estimate,
);

/// Level of confidence of the uncertainty that is said beside a size: two standard uncertainties of
/// a normal law.
pub const TWO_SIGMA: Sourced<Confidence> = Sourced::new(
    Confidence::computed_trade(0.954_499_736_103_641_6),
    "JCGM 100, from memory: k = 2",
    Standing::FromMemory,
);

/// What would help.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Remedy {
    /// A micrometer instead of the instrument at hand.
    Micrometer,
    /// The compound slide set over so that it feeds a tenth of its dial.
    CompoundSetOver,
    /// A measuring stop before the last cut, the last two cuts being alike.
    MeasureBeforeTheLastCut,
    /// A live centre.
    Centre,
}

impl fmt::Display for Remedy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Micrometer => "a micrometer",
            Self::CompoundSetOver => {
                "the compound slide set over to 5.74 degrees from the axis, so that one mark of its dial feeds a tenth"
            }
            Self::MeasureBeforeTheLastCut => {
                "a measuring stop before the last cut, with the last two cuts alike"
            }
            Self::Centre => "a live centre",
        })
    }
}

/// What a person can make better.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Means {
    /// The measuring instrument.
    Instrument,
    /// The dial of the cross slide and how it is set.
    Dial,
    /// How the bar is supported, and how hard the tool presses it away.
    SupportAndTool,
}

impl Means {
    /// The causes that it makes smaller.
    const fn causes(self) -> &'static [SizeCause] {
        match self {
            Self::Instrument => &[
                SizeCause::Instrument,
                SizeCause::Resolution,
                SizeCause::Repeatability,
            ],
            Self::Dial => &[SizeCause::Ring, SizeCause::Mark],
            Self::SupportAndTool => &[
                SizeCause::Spring,
                SizeCause::CutToCut,
                SizeCause::AlongTheBar,
            ],
        }
    }
}

/// What one remedy alone would bring.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct RemedyTried {
    /// The remedy.
    pub remedy: Remedy,
    /// The chance of a good part with it.
    pub good: Probability,
    /// Whether the task is within reach with it.
    pub enough: bool,
}

/// A cause that decides: were it known perfectly, the answer would be another.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Deciding {
    /// The cause.
    pub cause: SizeCause,
    /// The chance of a good part without it.
    pub good: Probability,
}

/// The least that would have to be true of one means, all else being as it is.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LeastNeeded {
    /// The means.
    pub means: Means,
    /// So many times what it is now, from 0 to 1; none where not even perfection would do.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub times: Option<f64>,
    /// The same in words, with figures.
    pub text: String,
}

/// Whether a task is within reach.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Reach {
    /// The cause with the largest share.
    pub dominant: SizeCause,
    /// Yes or no.
    pub within_reach: bool,
    /// The chances, at the best aim.
    pub outcome: Outcome,
    /// The size to aim at; the middle of the zone where no aim lies in it.
    pub aim: Diameter,
    /// The chance of a good part that was asked for.
    pub least_good: Probability,
    /// The combined standard uncertainty of the size.
    pub combined: StandardUncertainty,
    /// The expanded uncertainty of the size, about 95 %.
    pub expanded: SizeUncertainty,
    /// The causes, the largest share first.
    pub shares: Vec<CauseShare>,
    /// Sizes that this instrument can prove good; none where its uncertainty takes the whole zone.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub proved_good: Option<Limits>,
    /// Causes that, known perfectly, would turn the answer, the strongest first.
    pub deciding: Vec<Deciding>,
    /// What would help, each alone, where the answer is no.
    pub remedies: Vec<RemedyTried>,
    /// The least that would have to be true, where the answer is no.
    pub least: Vec<LeastNeeded>,
}

/// Asks whether a tolerance is within reach.
///
/// Within reach is a task whose chance of a good part, at the best aim, is at least the figure asked
/// for, and whose instrument can prove some size good (ISO 14253-1).
///
/// # Source
/// JCGM 100 for the spread, ISO 14253-1:2017 for the proof, both from memory; the figure of 95 % is
/// judgement.
/// # Example
/// A calliper for 16 um is out of reach; a micrometer would do.
/// ```
/// use turnwright::{
///     advice::{reach::{ReachAsk, Remedy}, size_budget::{Reached, SizeAsk}}, standards::instrument::Instrument,
///     Dial, DialReads, Diameter, Division, DivisionsPerTurn, Limits, Provenance,
/// };
/// let cross = Dial::new(DialReads::Diameter, Division::from_mm(0.01)?, DivisionsPerTurn::new(200)?);
/// let zone = Limits::new(Diameter::from_mm(39.975)?, Diameter::from_mm(40.0)?)?;
/// let spring = "0.002 mm".parse()?;
/// let reached = Reached::FromMeasured { taken: "0.4 mm".parse()?, spring: Some(spring) };
/// let ask = SizeAsk::new(zone.middle(), &cross, Instrument::Calliper, reached).with_spring(spring);
/// let reach = ReachAsk::new(zone, &ask).answer(&mut Provenance::default())?;
/// assert!(!reach.within_reach);
/// assert_eq!(reach.dominant.name(), "instrument");
/// assert!(reach.remedies.iter().any(|tried| tried.remedy == Remedy::Micrometer && tried.enough));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct ReachAsk<'a> {
    limits: Limits,
    size: &'a SizeAsk<'a>,
    feature: Feature,
    prices: Option<Prices>,
    least_good: Option<Probability>,
    with_centre: Option<SpringWithCentre>,
}

/// What the bar would spring by on a live centre, on the diameter.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SpringWithCentre {
    /// In the last cut.
    pub spring: DiameterError,
    /// Its difference along the part.
    pub along: DiameterError,
}

impl<'a> ReachAsk<'a> {
    /// A zone, and what its size rests on.
    #[must_use]
    pub fn new(limits: Limits, size: &'a SizeAsk<'a>) -> Self {
        Self {
            limits,
            size,
            feature: Feature::Shaft,
            prices: None,
            least_good: None,
            with_centre: None,
        }
    }

    crate::shop::setters! {
        /// With the prices of scrap and rework, for the aim; without, the middle of the zone is aimed at.
        with_prices prices: Prices;
        /// With this least chance of a good part.
        with_least_good least_good: Probability;
        /// With what a live centre would make of the spring.
        with_centre with_centre: SpringWithCentre;
    }

    /// With a hole instead of a shaft.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    /// Yes or no, with figures.
    ///
    /// # Errors
    /// `diameter`, beyond the sizes for which the instrument's error is known.
    pub fn answer(&self, provenance: &mut Provenance) -> Result<Reach, Error> {
        let budget = self.size.budget(provenance)?;
        let guard = self.guard(self.size, provenance)?;
        let least_good = match self.least_good {
            Some(asked) => asked,
            None => provenance.open("least chance of a good part", &LEAST_GOOD),
        };
        let (aim, outcome) = self.aimed(&budget);
        let proved_good = self.limits.inside(guard);
        let within_reach = proved_good.is_some() && outcome.good >= least_good;
        let confidence = provenance.open("level of confidence of the uncertainty", &TWO_SIGMA);
        let mut reach = Reach {
            dominant: budget.dominant(),
            within_reach,
            outcome,
            aim,
            least_good,
            combined: budget.combined(),
            expanded: budget.budget().expanded(confidence),
            shares: budget.shares(),
            proved_good,
            deciding: self.deciding(&budget, proved_good.is_some(), within_reach, least_good),
            remedies: Vec::new(),
            least: Vec::new(),
        };
        if !within_reach {
            reach.remedies = self.remedies(least_good)?;
            reach.least = self.least(&budget, guard, least_good);
        }
        Ok(reach)
    }

    /// The guard band at each limit: what a measured size must keep from it to be proved good.
    fn guard(
        &self,
        size: &SizeAsk<'_>,
        provenance: &mut Provenance,
    ) -> Result<SizeUncertainty, Error> {
        let u = size.measuring_budget(provenance)?.combined();
        Ok(DecisionRule::Conformance95.guard_band(u))
    }

    fn aimed(&self, budget: &SizeBudget) -> (Diameter, Outcome) {
        let spread = budget.budget().spread();
        let best = self
            .prices
            .and_then(|prices| aim::best_aim(self.limits, spread, prices, self.feature).ok());
        match best {
            Some(best) => (best.aim, best.outcome),
            None => {
                let middle = self.limits.middle();
                (
                    middle,
                    spread::outcome(self.limits, middle, spread, self.feature),
                )
            }
        }
    }

    fn good(&self, budget: Option<SizeBudget>) -> Probability {
        budget.map_or(Probability::computed_trade(1.0), |budget| {
            self.aimed(&budget).1.good
        })
    }

    fn deciding(
        &self,
        budget: &SizeBudget,
        provable: bool,
        within: bool,
        least_good: Probability,
    ) -> Vec<Deciding> {
        // Where the answer is yes, less of a cause keeps it yes; where no size can be proved, only the
        // instrument decides, and `least` says by how much.
        if within || !provable {
            return Vec::new();
        }
        let mut deciding: Vec<Deciding> = budget
            .shares()
            .iter()
            .map(|share| Deciding {
                cause: share.cause,
                good: self.good(budget.with(&[share.cause], 0.0)),
            })
            .filter(|without| without.good >= least_good)
            .collect();
        deciding.sort_by_key(|without| std::cmp::Reverse(without.good));
        deciding
    }

    fn remedies(&self, least_good: Probability) -> Result<Vec<RemedyTried>, Error> {
        let mut tried = Vec::with_capacity(4);
        let mut attempt = |remedy: Remedy, ask: SizeAsk<'_>| {
            let mut unrecorded = Provenance::default();
            // An instrument whose error is not known at this size is no remedy.
            let Ok(budget) = ask.budget(&mut unrecorded) else {
                return Ok(());
            };
            let guard = self.guard(&ask, &mut unrecorded)?;
            let good = self.aimed(&budget).1.good;
            tried.push(RemedyTried {
                remedy,
                good,
                enough: good >= least_good && self.limits.inside(guard).is_some(),
            });
            Ok::<(), Error>(())
        };
        if self.size.gauge().instrument() != Instrument::Micrometer {
            let ask = self
                .size
                .clone()
                .with_gauge(Gauge::new(Instrument::Micrometer));
            attempt(Remedy::Micrometer, ask)?;
        }
        let finer = self.size.dial().finer_by_ten();
        attempt(Remedy::CompoundSetOver, self.size.clone().with_dial(&finer))?;
        let spring = self.size.spring();
        let ask = match self.size.reached() {
            Reached::FromTouch { .. } | Reached::FromMeasured { spring: None, .. } => {
                Some(self.size.clone().with_reached(Reached::FromMeasured {
                    taken: DiameterError::computed_trade(0.0),
                    spring,
                }))
            }
            Reached::FromMeasured {
                spring: Some(before),
                ..
            } if spring.is_some_and(|spring| spring != before) => {
                Some(self.size.clone().with_reached(Reached::FromMeasured {
                    taken: DiameterError::computed_trade(0.0),
                    spring,
                }))
            }
            Reached::FromMeasured { .. } => None,
        };
        if let Some(ask) = ask {
            attempt(Remedy::MeasureBeforeTheLastCut, ask)?;
        }
        if let Some(centre) = self.with_centre {
            let mut ask = self
                .size
                .clone()
                .with_spring(centre.spring)
                .with_spring_along(centre.along);
            if let Reached::FromMeasured {
                taken,
                spring: Some(_),
            } = self.size.reached()
            {
                ask = ask.with_reached(Reached::FromMeasured {
                    taken,
                    spring: Some(centre.spring),
                });
            }
            attempt(Remedy::Centre, ask)?;
        }
        tried.sort_by_key(|tried| std::cmp::Reverse(tried.good));
        Ok(tried)
    }

    /// How small each means would have to make its causes, the others being as they are.
    fn least(
        &self,
        budget: &SizeBudget,
        guard: SizeUncertainty,
        least_good: Probability,
    ) -> Vec<LeastNeeded> {
        let width = self.limits.tolerance().mm();
        [Means::Instrument, Means::Dial, Means::SupportAndTool]
            .into_iter()
            .filter(|means| {
                means
                    .causes()
                    .iter()
                    .any(|cause| budget.figure(*cause).is_some())
            })
            .map(|means| {
                let enough = |times: f64| {
                    // The proof of a size hangs on the instrument; its guard shrinks with it.
                    let guard = match means {
                        Means::Instrument => guard.mm() * times,
                        _ => guard.mm(),
                    };
                    2.0 * guard < width
                        && self.good(budget.with(means.causes(), times)) >= least_good
                };
                let times = enough(0.0).then(|| largest(enough));
                LeastNeeded {
                    means,
                    times,
                    text: self.words_of_least(budget, means, times),
                }
            })
            .collect()
    }

    fn words_of_least(&self, budget: &SizeBudget, means: Means, times: Option<f64>) -> String {
        let Some(times) = times else {
            return String::from(match means {
                Means::Instrument => "no instrument alone would do",
                Means::Dial => "no dial alone would do",
                Means::SupportAndTool => "no support and no tool alone would do",
            });
        };
        let mm = |value: f64| SizeUncertainty::computed_trade(value);
        match means {
            Means::Instrument => {
                let now = budget.figure(SizeCause::Instrument).unwrap_or_default();
                format!(
                    "an instrument that is off by {} at most, and a hand as much steadier",
                    mm(now * times)
                )
            }
            Means::Dial => format!(
                "a dial whose mark takes {} off the diameter at most",
                mm(self.size.dial().diameter_per_division().mm() * times)
            ),
            Means::SupportAndTool => {
                let now = self.size.spring().map_or(0.0, |spring| spring.mm().abs());
                format!(
                    "a bar that springs by {} on the diameter at most: more support, or a tool that presses less \
                     (a smaller corner radius, a lighter last cut)",
                    mm(now * times)
                )
            }
        }
    }
}

/// The largest share from 0 to 1 that still is enough, where less always is.
fn largest(enough: impl Fn(f64) -> bool) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    if enough(high) {
        return high;
    }
    // Three figures are more than any dial needs; the last step is rounded down to what is enough.
    for _ in 0..20 {
        let middle = 0.5 * (low + high);
        if enough(middle) {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}
