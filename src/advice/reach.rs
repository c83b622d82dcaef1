//! Whether a tolerance is within reach of a lathe and an instrument, and what would bring it there.

mod least;
mod remedies;

use std::fmt;

use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::aim::{self, Prices};
use crate::physics::spread::{Outcome, SizeSpread};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{
    Confidence, Diameter, DiameterError, Probability, Quantity, SizeUncertainty,
    StandardUncertainty, WorkLength,
};
use crate::shop::dial::Dial;
use crate::standards::decision::DecisionRule;
use crate::standards::limits::{Feature, Limits};

use super::size_budget::{CauseShare, SizeAsk, SizeBudget, SizeCause};

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

/// A remedy that changes the chance of a good part by less than this is none.
pub const WORTH_TELLING: Sourced<Probability> = Sourced::new(
    Probability::computed_trade(0.005),
    "judgement, no source: one part in two hundred",
    Standing::Estimate,
);

/// What is left on the diameter where a size is measured again before the last cut.
pub const LEFT_TO_TAKE: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.5),
    "judgement, no source: two finishing cuts of an eighth of a millimetre",
    Standing::Estimate,
);

/// How far a compound slide is fed at most.
pub const COMPOUND_TRAVEL: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(80.0),
    "judgement, no source: the compound slide of a small lathe",
    Standing::Estimate,
);

/// What would help.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Remedy {
    /// A micrometer instead of the instrument at hand.
    Micrometer,
    /// A fine lever indicator, set on a gauge of the size, where no micrometer helps.
    FineLeverIndicator,
    /// The readings corrected for the spring that is to be expected.
    CorrectForSpring,
    /// The compound slide set over so that it feeds a tenth of its dial.
    CompoundSetOver,
    /// A measuring stop before the last cut, the last two cuts being alike.
    MeasureBeforeTheLastCut,
    /// A live centre.
    Centre,
    /// The size measured again when less is left on it.
    MeasureNearer,
    /// The middle of the zone aimed at instead of the cheapest size.
    AimAtTheMiddle,
}

impl fmt::Display for Remedy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(match self {
            Self::Micrometer => "a micrometer",
            Self::FineLeverIndicator => {
                "a lever indicator of 0.002 mm (0.0001 in), set on gauge blocks of the size"
            }
            Self::CorrectForSpring => {
                "the readings corrected for the spring to expect, so that the tool goes in by as much more"
            }
            Self::CompoundSetOver => {
                "the compound slide set over to 5.74 degrees from the axis, so that one mark of its dial feeds a tenth"
            }
            Self::MeasureBeforeTheLastCut => {
                "a measuring stop before the last cut, with the last two cuts alike"
            }
            Self::Centre => "a live centre",
            Self::MeasureNearer => {
                "the size measured again nearer to the last cut, with 0.5 mm (0.02 in) left on the diameter"
            }
            Self::AimAtTheMiddle => {
                "the middle of the zone as the aim, which costs more on average at these prices"
            }
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
    /// All of them at once, where none is enough alone.
    AllTogether,
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
            Self::AllTogether => &[
                SizeCause::Instrument,
                SizeCause::Resolution,
                SizeCause::Repeatability,
                SizeCause::Ring,
                SizeCause::Mark,
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

/// What several remedies bring together.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct RemediesTogether {
    /// The remedies.
    pub remedies: Vec<Remedy>,
    /// The chance of a good part with all of them.
    pub good: Probability,
    /// Whether the task is within reach with them.
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
    /// The figures: written into these fields of the question, all else as it is, they just do.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub figures: Vec<FieldAtMost>,
    /// The same in words, with figures.
    pub text: String,
}

/// The most that a field of the question may be.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct FieldAtMost {
    /// The field, as the question `within_reach` names it.
    pub field: &'static str,
    /// The most that it may be.
    pub at_most: SizeUncertainty,
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
    /// The size to aim at: the cheapest of the zone, without prices its middle.
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
    /// What would help, each alone, where the answer is no; the most helpful first.
    pub remedies: Vec<RemedyTried>,
    /// Where no remedy alone is enough: the first two that are, or all of them.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub together: Option<RemediesTogether>,
    /// The least that would have to be true, where the answer is no.
    pub least: Vec<LeastNeeded>,
    /// What a person must be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub cautions: Vec<Caution>,
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
    compound: Option<&'a Dial>,
    units: Units,
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
            compound: None,
            units: Units::Metric,
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

    /// With the dial of the compound slide; without, one like that of the cross slide is reckoned with.
    #[must_use]
    pub fn with_compound(mut self, compound: &'a Dial) -> Self {
        self.compound = Some(compound);
        self
    }

    /// With a hole instead of a shaft.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    /// Yes or no, with figures.
    ///
    /// # Errors
    /// `diameter`, beyond the sizes for which the instrument's error is known.
    pub fn answer(&self, provenance: &mut Provenance) -> Result<Reach, Error> {
        let task = Task {
            least_good: match self.least_good {
                Some(asked) => asked,
                None => provenance.open("least chance of a good part", &LEAST_GOOD),
            },
            budget: self.size.budget(provenance)?,
            measuring: self.size.measuring_budget(provenance)?,
        };
        let budget = &task.budget;
        let (aim, outcome) = self.aimed(budget, false);
        let proved_good = self.limits.inside(guard(Some(&task.measuring)));
        let within_reach = proved_good.is_some() && outcome.good >= task.least_good;
        let confidence = provenance.open("level of confidence of the uncertainty", &TWO_SIGMA);
        let mut reach = Reach {
            dominant: budget.dominant(),
            within_reach,
            outcome,
            aim,
            least_good: task.least_good,
            combined: budget.combined(),
            expanded: budget.budget().expanded(confidence),
            shares: budget.shares(),
            proved_good,
            deciding: Vec::new(),
            remedies: Vec::new(),
            together: None,
            least: Vec::new(),
            cautions: self.cautions(budget),
        };
        if !within_reach {
            reach.deciding = self.deciding(&task);
            let candidates = self.candidates(aim);
            reach.remedies = self.remedies(&candidates, outcome.good, &task, provenance);
            if !reach.remedies.iter().any(|tried| tried.enough) {
                reach.together = self.together(&candidates, &task, provenance);
            }
            reach.least = self.least(&task);
        }
        Ok(reach)
    }

    /// The size aimed at, and what comes out there: beside it, where the bar springs and nothing takes that
    /// out.
    fn aimed(&self, budget: &SizeBudget, at_the_middle: bool) -> (Diameter, Outcome) {
        let middle = self.limits.middle();
        let known = budget.known().mm();
        let beside = |aim: Diameter| Diameter::computed_trade(aim.mm() + known);
        let Some(about) = budget.about_known() else {
            let good = self.limits.contains(beside(middle));
            return (middle, Outcome::certain(good, known > 0.0, self.feature));
        };
        let aim = match self.prices.filter(|_| !at_the_middle) {
            Some(prices) => {
                aim::best_aim_in_zone(self.limits, about.spread(), prices, self.feature).aim
            }
            None => middle,
        };
        (aim, about.outcome(self.limits, beside(aim), self.feature))
    }

    fn cautions(&self, budget: &SizeBudget) -> Vec<Caution> {
        let on_the_limit = (self.prices.zip(budget.about_known())).and_then(|(prices, about)| {
            on_the_limit(
                self.limits,
                about.spread(),
                prices,
                self.feature,
                self.units,
            )
        });
        on_the_limit.into_iter().collect()
    }

    /// Whether the task is within reach of a budget and a measurement; none is one known perfectly.
    fn enough(
        &self,
        budget: Option<&SizeBudget>,
        measuring: Option<&SizeBudget>,
        least_good: Probability,
    ) -> bool {
        self.limits.inside(guard(measuring)).is_some() && self.good(budget) >= least_good
    }

    fn good(&self, budget: Option<&SizeBudget>) -> Probability {
        budget.map_or(Probability::computed_trade(1.0), |budget| {
            self.aimed(budget, false).1.good
        })
    }

    fn deciding(&self, task: &Task) -> Vec<Deciding> {
        let mut causes: Vec<SizeCause> = Vec::with_capacity(12);
        for share in task.budget.shares().iter().chain(&task.measuring.shares()) {
            if !causes.contains(&share.cause) {
                causes.push(share.cause);
            }
        }
        let mut deciding: Vec<Deciding> = causes
            .into_iter()
            .filter_map(|cause| {
                let (budget, measuring) = task.with(&[cause], 0.0);
                self.enough(budget.as_ref(), measuring.as_ref(), task.least_good)
                    .then(|| Deciding {
                        cause,
                        good: self.good(budget.as_ref()),
                    })
            })
            .collect();
        deciding.sort_by_key(|without| std::cmp::Reverse(without.good));
        deciding
    }
}

/// What a task within reach is judged by.
struct Task {
    budget: SizeBudget,
    measuring: SizeBudget,
    least_good: Probability,
}

impl Task {
    /// Both budgets with some causes made `times` as large.
    fn with(&self, causes: &[SizeCause], times: f64) -> (Option<SizeBudget>, Option<SizeBudget>) {
        (
            self.budget.with(causes, times),
            self.measuring.with(causes, times),
        )
    }
}

/// The guard band at each limit: what a measured size must keep from it to be proved good.
fn guard(measuring: Option<&SizeBudget>) -> SizeUncertainty {
    measuring.map_or(SizeUncertainty::computed_trade(0.0), |measuring| {
        DecisionRule::Conformance95.guard_band(measuring.combined())
    })
}

/// What is to be told where the cheapest aim would lie outside of the zone.
pub(super) fn on_the_limit(
    limits: Limits,
    spread: SizeSpread,
    prices: Prices,
    feature: Feature,
    units: Units,
) -> Option<Caution> {
    if aim::aim_is_inside(limits, spread, prices, feature) {
        return None;
    }
    let best = aim::best_aim_in_zone(limits, spread, prices, feature);
    Some(aim_on_the_limit(best.aim, units))
}

/// What is to be told of an aim that is a limit of its zone.
pub(crate) fn aim_on_the_limit(aim: Diameter, units: Units) -> Caution {
    Caution::new(
        Severity::Warning,
        "aim_on_the_limit",
        format!(
            "At these prices the cheapest aim would lie outside of the zone: aimed at is its limit of {}, where about \
             every second part is not good. Measure or set closer, or aim at the middle of the zone.",
            aim.people(units)
        ),
    )
}
