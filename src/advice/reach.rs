//! Whether a tolerance is within reach of a lathe and an instrument, and what would bring it there.

use std::fmt;

use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::aim::{self, Prices};
use crate::physics::spread::{self, Outcome, SizeSpread};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{
    Confidence, Diameter, DiameterError, Probability, Quantity, SizeUncertainty,
    StandardUncertainty, WorkLength,
};
use crate::shop::gauge::{Gauge, InstrumentError};
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

    /// The size aimed at, and what comes out there.
    fn aimed(&self, budget: &SizeBudget, at_the_middle: bool) -> (Diameter, Outcome) {
        let spread = budget.budget().spread();
        match self.prices.filter(|_| !at_the_middle) {
            Some(prices) => {
                let best = aim::best_aim_in_zone(self.limits, spread, prices, self.feature);
                (best.aim, best.outcome)
            }
            None => {
                let middle = self.limits.middle();
                (
                    middle,
                    spread::outcome(self.limits, middle, spread, self.feature),
                )
            }
        }
    }

    fn cautions(&self, budget: &SizeBudget) -> Vec<Caution> {
        let spread = budget.budget().spread();
        let on_the_limit = self
            .prices
            .and_then(|prices| on_the_limit(self.limits, spread, prices, self.feature, self.units));
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

    /// The remedies that can be tried here.
    fn candidates(&self, aim: Diameter) -> Vec<Remedy> {
        let mut candidates = Vec::with_capacity(5);
        if self.size.gauge().instrument() != Instrument::Micrometer {
            candidates.push(Remedy::Micrometer);
        }
        candidates.push(Remedy::CompoundSetOver);
        let spring = self.size.spring();
        match self.size.reached() {
            Reached::FromTouch { .. } | Reached::FromMeasured { spring: None, .. } => {
                candidates.push(Remedy::MeasureBeforeTheLastCut);
            }
            Reached::FromMeasured {
                spring: Some(before),
                ..
            } if spring.is_some_and(|spring| spring != before) => {
                candidates.push(Remedy::MeasureBeforeTheLastCut);
            }
            Reached::FromMeasured { taken, .. } if taken > LEFT_TO_TAKE.value => {
                candidates.push(Remedy::MeasureNearer);
            }
            Reached::FromMeasured { .. } => {}
        }
        if self.with_centre.is_some() {
            candidates.push(Remedy::Centre);
        }
        if aim != self.limits.middle() {
            candidates.push(Remedy::AimAtTheMiddle);
        }
        candidates
    }

    /// What remedies bring together; none where they cannot be had so.
    fn with_all(
        &self,
        remedies: &[Remedy],
        task: &Task,
        provenance: &mut Provenance,
    ) -> Option<(Probability, bool)> {
        let finer = self.size.dial().finer_by_ten();
        let mut ask = self.size.clone();
        if remedies.contains(&Remedy::Micrometer) {
            ask = ask.with_gauge(Gauge::new(Instrument::Micrometer));
        }
        if let Some(centre) = self
            .with_centre
            .filter(|_| remedies.contains(&Remedy::Centre))
        {
            ask = ask
                .with_spring(centre.spring)
                .with_spring_along(centre.along);
            if let Reached::FromMeasured {
                taken,
                spring: Some(_),
            } = ask.reached()
            {
                ask = ask.with_reached(Reached::FromMeasured {
                    taken,
                    spring: Some(centre.spring),
                });
            }
        }
        let again = [Remedy::MeasureBeforeTheLastCut, Remedy::MeasureNearer];
        if again.iter().any(|remedy| remedies.contains(remedy)) {
            let left = provenance.open("left on the diameter when measured again", &LEFT_TO_TAKE);
            let (Reached::FromTouch { taken } | Reached::FromMeasured { taken, .. }) =
                ask.reached();
            let spring = ask.spring();
            ask = ask.with_reached(Reached::FromMeasured {
                taken: if taken < left { taken } else { left },
                spring,
            });
        }
        if remedies.contains(&Remedy::CompoundSetOver) {
            let (Reached::FromTouch { taken } | Reached::FromMeasured { taken, .. }) =
                ask.reached();
            let travel = provenance.open("travel of a compound slide", &COMPOUND_TRAVEL);
            // Ten of its marks feed what one did: half the diameter, ten times over.
            if 5.0 * taken.trade() > travel.trade() {
                return None;
            }
            ask = ask.with_dial(&finer);
        }
        let mut unrecorded = Provenance::default();
        // An instrument whose error is not known at this size is no remedy.
        let budget = ask.budget(&mut unrecorded).ok()?;
        let measuring = ask.measuring_budget(&mut unrecorded).ok()?;
        let at_the_middle = remedies.contains(&Remedy::AimAtTheMiddle);
        let good = self.aimed(&budget, at_the_middle).1.good;
        let provable = self.limits.inside(guard(Some(&measuring))).is_some();
        Some((good, provable && good >= task.least_good))
    }

    fn remedies(
        &self,
        candidates: &[Remedy],
        good_now: Probability,
        task: &Task,
        provenance: &mut Provenance,
    ) -> Vec<RemedyTried> {
        let worth = provenance.open("gain from which a remedy is told of", &WORTH_TELLING);
        let mut tried: Vec<RemedyTried> = candidates
            .iter()
            .filter_map(|remedy| {
                let (good, enough) = self.with_all(&[*remedy], task, provenance)?;
                (enough || good.trade() - good_now.trade() >= worth.trade()).then_some(
                    RemedyTried {
                        remedy: *remedy,
                        good,
                        enough,
                    },
                )
            })
            .collect();
        tried.sort_by_key(|tried| std::cmp::Reverse(tried.good));
        tried
    }

    /// The first two remedies that together are enough, or all of them.
    fn together(
        &self,
        candidates: &[Remedy],
        task: &Task,
        provenance: &mut Provenance,
    ) -> Option<RemediesTogether> {
        let pairs = candidates.iter().enumerate().flat_map(|(at, first)| {
            let others = candidates[at + 1..].iter();
            others.map(move |second| vec![*first, *second])
        });
        let mut found = None;
        for remedies in pairs.chain([candidates.to_vec()]) {
            if let Some((good, enough)) = self.with_all(&remedies, task, provenance) {
                let all = remedies.len() == candidates.len();
                if enough || all {
                    found = Some(RemediesTogether {
                        remedies,
                        good,
                        enough,
                    });
                }
                if enough {
                    break;
                }
            }
        }
        found.filter(|found| found.remedies.len() > 1)
    }

    /// How small each means would have to make its causes, the others being as they are.
    fn least(&self, task: &Task) -> Vec<LeastNeeded> {
        [Means::Instrument, Means::Dial, Means::SupportAndTool]
            .into_iter()
            .filter(|means| {
                let of = |budget: &SizeBudget| {
                    let mut causes = means.causes().iter();
                    causes.any(|cause| budget.figure(*cause).is_some())
                };
                // After a touch the instrument is no cause of the size; it must prove it all the same.
                of(&task.budget) || (of(&task.measuring) && !self.provable(task))
            })
            .map(|means| {
                // A better instrument in the same hand, before a better hand as well.
                let ways: &[&[SizeCause]] = match means {
                    Means::Instrument => &[&[SizeCause::Instrument], means.causes()],
                    Means::Dial | Means::SupportAndTool => &[means.causes()],
                };
                let enough = |causes: &[SizeCause], times: f64| {
                    let (budget, measuring) = task.with(causes, times);
                    self.enough(budget.as_ref(), measuring.as_ref(), task.least_good)
                };
                let way = ways.iter().find(|causes| enough(causes, 0.0));
                let found = way.map(|causes| (*causes, largest(|times| enough(causes, times))));
                let (figures, text) = match found {
                    Some((causes, times)) => self.least_figures(task, means, causes, times),
                    None => (Vec::new(), String::from(none_would_do(means))),
                };
                LeastNeeded {
                    means,
                    times: found.map(|(_, times)| times),
                    figures,
                    text,
                }
            })
            .collect()
    }

    fn provable(&self, task: &Task) -> bool {
        self.limits.inside(guard(Some(&task.measuring))).is_some()
    }

    /// The figures of a means made `times` as large, as fields of the question and in words.
    fn least_figures(
        &self,
        task: &Task,
        means: Means,
        causes: &[SizeCause],
        times: f64,
    ) -> (Vec<FieldAtMost>, String) {
        let mut figures = Vec::with_capacity(3);
        let mut most = |field: &'static str, now: f64| {
            let at_most = SizeUncertainty::computed_trade(now * times);
            figures.push(FieldAtMost { field, at_most });
            rounded_down(now * times, self.units)
        };
        let text = match means {
            Means::Instrument => {
                let error = self
                    .size
                    .gauge()
                    .error_at(self.size.size(), &mut Provenance::default());
                let mut text = match error {
                    Ok(InstrumentError::Certified(expanded, k)) => format!(
                        "an instrument whose certificate says U = {} with k = {k} at most",
                        most("instrument.expanded", expanded.mm())
                    ),
                    Ok(InstrumentError::Within(error)) => format!(
                        "an instrument that is off by {} at most",
                        most("instrument.largest_error", error.mm())
                    ),
                    Err(_) => String::from("a better instrument"),
                };
                let resolution = self.size.gauge().resolution();
                if let Some(resolution) =
                    resolution.filter(|_| causes.contains(&SizeCause::Resolution))
                {
                    text.push_str(&format!(
                        ", that shows steps of {} at most",
                        most("instrument.resolution", resolution.mm())
                    ));
                }
                if let Some(hand) = task.measuring.figure(SizeCause::Repeatability) {
                    if causes.contains(&SizeCause::Repeatability) {
                        text.push_str(&format!(
                            ", in a hand whose readings scatter by {} at most",
                            most("instrument.repeatability", hand)
                        ));
                    } else {
                        text.push_str(&format!(
                            ", in a hand whose readings scatter by {} as now",
                            rounded_down(hand, self.units)
                        ));
                    }
                }
                text
            }
            Means::Dial => {
                most("dial.division", self.size.dial().division().mm());
                format!(
                    "a dial whose mark takes {} off the diameter at most",
                    rounded_down(
                        self.size.dial().diameter_per_division().mm() * times,
                        self.units
                    )
                )
            }
            Means::SupportAndTool => {
                let spring = self.size.spring();
                let mut text = spring.map_or_else(
                    || String::from("a bar that springs less"),
                    |spring| {
                        format!(
                            "a bar that springs by {} on the diameter at most",
                            most("spring", spring.mm().abs())
                        )
                    },
                );
                if let Reached::FromMeasured {
                    spring: Some(before),
                    ..
                } = self.size.reached()
                    && spring.is_some_and(|spring| spring != before)
                {
                    text.push_str(&format!(
                        ", by {} in the cut that is measured",
                        most("spring_of_measured_cut", before.mm().abs())
                    ));
                }
                if let Some(along) = self.size.along() {
                    text.push_str(&format!(
                        ", and differs along the part by {}",
                        most("spring_along", along.mm().abs())
                    ));
                }
                text.push_str(
                    ": more support, or a tool that presses less (a smaller corner radius, a lighter last cut)",
                );
                text
            }
        };
        (figures, text)
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
    aim::best_aim(limits, spread, prices, feature).err()?;
    let best = aim::best_aim_in_zone(limits, spread, prices, feature);
    Some(Caution::new(
        Severity::Warning,
        "aim_on_the_limit",
        format!(
            "At these prices the cheapest aim would lie outside of the zone: aimed at is its limit of {}, where about \
             every second part has metal left. Measure or set closer, or aim at the middle of the zone.",
            best.aim.people(units)
        ),
    ))
}

fn none_would_do(means: Means) -> &'static str {
    match means {
        Means::Instrument => "no instrument alone would do",
        Means::Dial => "no dial alone would do",
        Means::SupportAndTool => "no support and no tool alone would do",
    }
}

/// A size as people read it, to four figures and never larger than it is: what is to be at most so
/// much still is when it is read from the text.
fn rounded_down(mm: f64, units: Units) -> String {
    let (value, unit) = match units {
        Units::Metric => (mm, "mm"),
        Units::Inch => (mm / 25.4, "in"),
    };
    // The last digits of a product are not worth a figure less: 0.003 stays 0.003.
    let written = format!("{:.12e}", value);
    let (figures, power) = written.split_once('e').unwrap_or((&written, "0"));
    let kept: String = figures.chars().take(5).collect();
    let number: f64 = format!("{kept}e{power}").parse().unwrap_or(value);
    format!("{number} {unit}")
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
