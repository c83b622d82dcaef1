//! How sure the last size is: what a slip costs, the size to aim at, where to measure, what to expect.

use super::job::Job;
use super::passes::PlannedCut;
use super::sheet::StepKind;
use crate::advice::depth::SpringLeft;
use crate::advice::reach::{LEAST_GOOD, ReachAsk, TWO_SIGMA};
use crate::advice::size_budget::{CauseShare, Reached, SizeAsk, SizeBudget};
use crate::advice::stops::{CutAhead, StopsAsk, StopsChoice, StopsPriced};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, Prices};
use crate::physics::spread::{self, Outcome, SizeSpread};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Duration, Price, PriceRework, PriceScrap, PriceStop,
    Probability, Quantity, SizeUncertainty, ThermalExpansion, round_size,
};
use crate::shop::dial::{Dial, Ring};
use crate::shop::gauge::Gauge;
use crate::standards::decision::DecisionRule;
use crate::standards::limits::{Feature, Limits};

/// Time of a measuring stop: run out, clear, cool, measure, set.
pub(super) const STOP_TIME: Sourced<Duration> = Sourced::new(
    Duration::computed_trade(60.0),
    "judgement, no source",
    Standing::Estimate,
);

/// Time to set a job up anew after a part was lost, beside its cuts.
pub(super) const SET_UP_TIME: Sourced<Duration> = Sourced::new(
    Duration::computed_trade(1800.0),
    "judgement, no source",
    Standing::Estimate,
);

/// What a lost part, another cut and a measuring stop cost.
#[derive(Debug, Clone, Copy)]
pub(super) struct JobPrices {
    pub(super) prices: Prices,
    pub(super) stop: PriceStop,
    /// True where they are minutes of work, not the asker's currency.
    pub(super) in_minutes: bool,
}

impl JobPrices {
    /// As the asker prefers, else in minutes: `cuts` is the time of all cuts, `last` that of the last.
    pub(super) fn of(
        job: &Job,
        cuts: Duration,
        last: Duration,
        provenance: &mut Provenance,
    ) -> Result<Self, Error> {
        let asked = job.preference(|p| p.prices());
        if let Some((prices, stop)) = asked {
            return Ok(Self {
                prices,
                stop,
                in_minutes: false,
            });
        }
        let stop = provenance
            .open("time of a measuring stop", &STOP_TIME)
            .minutes();
        let set_up = provenance
            .open("time to set a job up anew", &SET_UP_TIME)
            .minutes();
        Ok(Self {
            prices: Prices::new(
                PriceScrap::from_trade(set_up + cuts.minutes())?,
                PriceRework::from_trade(stop + last.minutes())?,
            ),
            stop: PriceStop::from_trade(stop)?,
            in_minutes: true,
        })
    }
}

/// What the size of a job rests on, beside its cuts.
#[derive(Debug, Clone, Copy)]
pub(super) struct Rests<'a> {
    pub(super) cross: &'a Dial,
    pub(super) gauge: Gauge,
    pub(super) expansion: Option<ThermalExpansion>,
    /// The diameter before the first cut.
    pub(super) start: Diameter,
    /// True where the dial was zeroed on a measured size.
    pub(super) measured: bool,
    /// True where this job has proved the dial already, by a measured surface.
    pub(super) proved: bool,
    /// True where the cuts are divided anew after something was measured.
    pub(super) anew: bool,
    /// The chance of a good part that is asked for.
    pub(super) asked: Probability,
    /// The size to which the marks of a fixed ring are counted after a measurement.
    pub(super) counted_to: Option<Diameter>,
    /// No cut that corrects a size is lighter.
    pub(super) correcting: DepthOfCut,
}

/// A mark of a dial whose ring can be set may cost so much more than the best aim, on average, as a
/// share of the price of another cut: a round mark is easier to read, but no reason to lose a part.
const WORTH_OF_A_MARK: Sourced<f64> = Sourced::new(0.1, "judgement, no source", Standing::Estimate);

/// The size to aim at, and from which chance on a mark is used.
#[derive(Debug, Clone, Copy)]
pub(super) struct Aim {
    pub(super) limits: Limits,
    pub(super) spread: SizeSpread,
    /// The size that serves best.
    pub(super) size: Diameter,
    /// The chance of a good part that was asked for.
    pub(super) asked: Probability,
    /// A mark must give at least this chance ...
    pub(super) least: Probability,
    /// ... and cost no more than this on average, scrap and rework together.
    most: f64,
    prices: Prices,
    /// What is over by less cannot be cut again.
    least_cut: DiameterError,
}

/// The expansion of the material, if it is known.
pub(super) fn expansion(job: &Job, provenance: &mut Provenance) -> Option<ThermalExpansion> {
    job.material
        .expansion()
        .map(|alpha| alpha.open("thermal expansion", provenance))
}

/// What a measured size must keep from a limit to be proved good.
pub(super) fn guard(
    gauge: Gauge,
    size: Diameter,
    cross: &Dial,
    expansion: Option<ThermalExpansion>,
    provenance: &mut Provenance,
) -> Result<SizeUncertainty, Error> {
    let reached = Reached::FromTouch {
        taken: DiameterError::computed_trade(0.0),
    };
    let mut ask = SizeAsk::new(size, cross, gauge, reached);
    if let Some(expansion) = expansion {
        ask = ask.with_expansion(expansion);
    }
    let u = ask.measuring_budget(provenance)?.combined();
    let guard = DecisionRule::Conformance95.guard_band(u);
    let guard = SizeUncertainty::computed_trade(round_size(guard.mm()));
    provenance.record(
        "guard kept from both limits, 1.645 standard uncertainties of measuring",
        &guard,
        "ISO 14253-1:2017, from memory",
        Standing::FromMemory,
    );
    Ok(guard)
}

impl<'a> Rests<'a> {
    fn ask(&self, size: Diameter, reached: Reached) -> SizeAsk<'a> {
        let mut ask = SizeAsk::new(size, self.cross, self.gauge, reached);
        if let Some(expansion) = self.expansion {
            ask = ask.with_expansion(expansion);
        }
        ask
    }

    /// What the size rests on when the last two cuts are alike and measured between.
    pub(super) fn measured(
        &self,
        size: Diameter,
        depth: DepthOfCut,
        left: SpringLeft,
    ) -> SizeAsk<'a> {
        let reached = Reached::FromMeasured {
            taken: DiameterError::computed_trade(2.0 * depth.mm()),
            spring: Some(left.most),
        };
        self.ask(size, reached)
            .with_spring(left.most)
            .with_spring_along(left.along)
    }

    /// The size to aim at within `guarded`.
    pub(super) fn aim(
        &self,
        job: &Job,
        limits: Limits,
        guarded: Limits,
        ask: &SizeAsk<'_>,
        prices: Prices,
        provenance: &mut Provenance,
    ) -> Result<Aim, Error> {
        let spread = ask.budget(provenance)?.budget().spread();
        let asked = match job.preference(|p| p.least_good()) {
            Some(asked) => asked,
            None => provenance.open("least chance of a good part", &LEAST_GOOD),
        };
        // A size that could not be proved good is no aim, however cheap: then the nearest to it that could.
        let least_cut = DiameterError::computed_trade(2.0 * self.correcting.mm());
        let best = aim::best_aim_to_cut_again(limits, spread, prices, least_cut).aim;
        let size = best.clamp(guarded.smallest(), guarded.largest());
        let size = often_enough(size, limits, spread, asked);
        let (come_out, price) = aim::price_to_cut_again(limits, size, spread, prices, least_cut);
        let worth = match self.cross.ring() {
            Ring::Settable => {
                provenance.open("what a mark may cost over another cut", &WORTH_OF_A_MARK)
            }
            // There is no other way than a mark, or a number that is shown.
            Ring::Fixed | Ring::Readout => f64::INFINITY,
        };
        let mut aim = Aim {
            prices,
            least_cut,
            most: price.trade() + worth * prices.rework().trade(),
            limits,
            spread,
            size,
            asked,
            least: asked,
        };
        aim.least = aim.least_of(come_out.good);
        Ok(aim)
    }
}

/// `size`, or where a good part is not as likely there as was asked for, the nearest to it on the way to the middle of
/// the zone where it is: the chance that was asked for goes before the price.
fn often_enough(
    size: Diameter,
    limits: Limits,
    spread: SizeSpread,
    asked: Probability,
) -> Diameter {
    let middle = limits.middle();
    let serves = |size| spread::outcome(limits, size, spread, Feature::Shaft).good >= asked;
    if serves(size) || !serves(middle) {
        return size;
    }
    const HALVINGS: usize = 20;
    let (mut near, mut far) = (middle.mm(), size.mm());
    for _ in 0..HALVINGS {
        let between = 0.5 * (near + far);
        match serves(Diameter::computed_trade(between)) {
            true => near = between,
            false => far = between,
        }
    }
    Diameter::computed_trade(round_size(near))
}

impl Aim {
    /// The aim, where the marks of a fixed ring are counted from a measured size: so far from the guards that the
    /// nearest mark lies between them.
    ///
    /// `known` is the spread once they are counted.
    pub(super) fn within_marks(
        &mut self,
        guarded: Limits,
        mark: f64,
        known: SizeSpread,
        units: Units,
    ) {
        let (low, high) = (
            guarded.smallest().mm() + 0.5 * mark,
            guarded.largest().mm() - 0.5 * mark,
        );
        if low <= high {
            let size = Diameter::computed_trade(round_size(self.size.mm().clamp(low, high)));
            let read = super::datum::readable(size, guarded, units);
            self.size = match (low..=high).contains(&read.mm()) {
                true => read,
                false => size,
            };
        }
        self.spread = known;
        let good = spread::outcome(self.limits, self.size, known, Feature::Shaft).good;
        self.least = self.least_of(good);
    }

    /// The chance that a mark must give: out of reach no mark is good enough; the sheet says so, and the marks
    /// in the zone are used.
    fn least_of(&self, best: Probability) -> Probability {
        match best >= self.asked {
            true => self.asked,
            false => Probability::computed_trade(0.0),
        }
    }

    /// The chance of a good part of a last cut aimed at `size`, in words.
    pub(super) fn good_words(&self, size: Diameter) -> String {
        let come_out = spread::outcome(self.limits, size, self.spread, Feature::Shaft);
        format!(
            "good in {} of 100",
            fixed((100.0 * come_out.good.trade()).floor(), 0)
        )
    }

    /// Whether a last cut aimed at `size` gives a good part often enough, and cheaply enough.
    pub(super) fn serves(&self, size: Diameter) -> bool {
        let (come_out, price) =
            aim::price_to_cut_again(self.limits, size, self.spread, self.prices, self.least_cut);
        come_out.good >= self.least && price.trade() <= self.most
    }
}

/// Where to measure, and what to expect of the last cut.
#[derive(Debug, Clone)]
pub(super) struct Chance {
    pub(super) stops: StopsChoice,
    pub(super) budget: SizeBudget,
    pub(super) outcome: Outcome,
    pub(super) uncertainty: SizeUncertainty,
    pub(super) shares: Vec<CauseShare>,
}

/// The cuts before a change of the tool, and those of them that are measured whatever it costs.
#[derive(Debug, Clone, Default)]
pub(super) struct Roughed {
    cuts: usize,
    stops: Vec<usize>,
}

impl Roughed {
    /// Of cuts of which the last ones are made by another tool: a first cut proves the dial where nothing measured has,
    /// and the last one leaves the size that the other tool is zeroed on.
    pub(super) fn before(cuts: &[PlannedCut], measured: bool) -> Self {
        let roughed = cuts.iter().take_while(|cut| !cut.after_change);
        let count = roughed.count();
        let first = cuts
            .first()
            .is_some_and(|cut| cut.kind == StepKind::FirstCut && !measured);
        let stops = match (first, count) {
            (_, 0) => Vec::new(),
            (true, 2..) => vec![0, count - 1],
            _ => vec![count - 1],
        };
        Self { cuts: count, stops }
    }

    /// How many stops are left for the cuts after the change, of so many that were asked for.
    fn stops_left(&self, asked: u32, places: usize) -> Result<usize, Error> {
        let made = self.stops.len();
        let left = (asked as usize).checked_sub(made);
        left.filter(|left| *left <= places).ok_or_else(|| {
            Error::new(
                ErrorKind::Contradiction,
                "preferences.measuring_stops",
                asked.to_string(),
                format!(
                    "from {made} to {}, of cuts by two tools",
                    made.saturating_add(places)
                ),
                "the second tool is zeroed on a measured size, and a first cut proves the dial: those stops stay",
            )
        })
    }

    /// The stops of the cuts after the change, with those before it.
    fn with(&self, mut priced: StopsPriced, stop: PriceStop) -> StopsPriced {
        let later = priced.after.iter().map(|at| at + self.cuts);
        priced.after = self.stops.iter().copied().chain(later).collect();
        let price = priced.expected_price.trade() + stop.trade() * self.stops.len() as f64;
        priced.expected_price = Price::computed_trade(price);
        priced
    }
}

impl Chance {
    /// For cuts that are planned, some of them by a tool of their own for roughing.
    pub(super) fn of(
        job: &Job,
        limits: Limits,
        rests: &Rests<'_>,
        (cuts, roughed): (&[CutAhead], &Roughed),
        along: DiameterError,
        costs: &JobPrices,
        provenance: &mut Provenance,
    ) -> Result<Self, Error> {
        let last = cuts
            .last()
            .ok_or_else(|| Error::internal("a plan without cuts"))?;
        // What another tool finishes is touched where the roughed size was measured.
        let roughed_to = roughed.cuts.checked_sub(1).and_then(|at| cuts.get(at));
        let start = roughed_to.map_or(rests.start, |cut| cut.after);
        let cuts = cuts.get(roughed.cuts..).unwrap_or(cuts);
        let mut ask = StopsAsk::new(
            limits,
            start,
            cuts,
            rests.cross,
            rests.gauge,
            costs.prices,
            costs.stop,
        )
        .with_spring_along(along)
        .with_ends(last.after, rests.counted_to.unwrap_or(last.after))
        .with_least_cut(DiameterError::computed_trade(2.0 * rests.correcting.mm()));
        if let Some(expansion) = rests.expansion {
            ask = ask.with_expansion(expansion);
        }
        if rests.measured && roughed_to.is_none() {
            ask = ask.with_measured_zero();
        }
        if roughed_to.is_some() {
            ask = ask.with_proved_dial().with_touched_zero();
        }
        if job.corrects_for_spring() {
            ask = ask.with_spring_corrected();
        }
        if rests.proved {
            ask = ask.with_proved_dial();
        }
        if let Some(count) = job.preference(|p| p.measuring_stops()) {
            // Divided anew it may have fewer cuts than stops were asked for: then after each that it has.
            let places = match rests.anew {
                true => cuts.len().saturating_sub(1),
                false => usize::MAX,
            };
            let count = match roughed_to {
                Some(_) => {
                    let most = match rests.anew {
                        true => usize::MAX,
                        false => cuts.len().saturating_sub(1),
                    };
                    roughed.stops_left(count, most)?
                }
                None => count as usize,
            };
            ask = ask.with_count(count.min(places));
        }
        let stops_asked = job.preference(|p| p.measuring_stops()).is_some();
        let chosen = ask
            .choose_with_budget(provenance)
            .map_err(|error| match error.field() {
                "measuring_stops" => error.inside("preferences"),
                _ => error,
            })?;
        // The chance that was asked for goes before the price: a stop more, where that reaches it.
        let mut reached = None;
        if !stops_asked && chosen.2.good < rests.asked {
            let made = chosen.0.chosen.after.len();
            for count in (made + 1..cuts.len()).take(2) {
                let more = ask.clone().with_count(count);
                let more = more.choose_with_budget(&mut Provenance::deaf())?;
                if more.2.good >= rests.asked {
                    reached = Some(more);
                    break;
                }
            }
        }
        let (mut stops, budget, outcome) = reached.unwrap_or(chosen);
        if roughed_to.is_some() {
            stops.chosen = roughed.with(stops.chosen, costs.stop);
            stops.none = roughed.with(stops.none, costs.stop);
            stops.one_more = stops.one_more.map(|more| roughed.with(more, costs.stop));
            let alone = stops.alone.into_iter();
            stops.alone = alone.map(|one| roughed.with(one, costs.stop)).collect();
        }
        let confidence = provenance.open("level of confidence of the uncertainty", &TWO_SIGMA);
        Ok(Self {
            outcome,
            uncertainty: budget.budget().expanded(confidence),
            shares: budget.shares(),
            budget,
            stops,
        })
    }
}

impl Chance {
    /// What must be said where a good part is not as likely as was asked for.
    pub(super) fn cautions(
        &self,
        nominal: Diameter,
        aim: &Aim,
        ask: &SizeAsk<'_>,
        units: Units,
        cautions: &mut Vec<Caution>,
    ) -> Result<(), Error> {
        if self.outcome.good >= aim.asked {
            return Ok(());
        }
        let reach = ReachAsk::new(aim.limits, ask)
            .with_least_good(aim.asked)
            .answer(&mut Provenance::deaf())?;
        let in_hundred = |chance: Probability| (100.0 * chance.trade()).floor();
        let mut text = format!(
            "{}: good in {:.0} of 100 only, where {} are asked for: most of the uncertainty of {} comes from {}.",
            nominal.people(units),
            in_hundred(self.outcome.good),
            crate::quantity::round_size(100.0 * aim.asked.trade()),
            self.uncertainty.people(units),
            self.budget.dominant().words(),
        );
        let enough: Vec<String> = reach
            .remedies
            .iter()
            .filter(|tried| tried.enough)
            .map(|tried| format!("{} ({:.0} of 100)", tried.remedy, in_hundred(tried.good)))
            .collect();
        if !enough.is_empty() {
            text.push_str(&format!(
                " It would come within reach by {}.",
                enough.join(", or by ")
            ));
        }
        let least: Vec<&str> = reach
            .least
            .iter()
            .filter(|least| least.times.is_some())
            .map(|least| least.text.as_str())
            .collect();
        if enough.is_empty() && !least.is_empty() {
            text.push_str(&format!(
                " The least that one means alone would have to be: {}.",
                least.join("; ")
            ));
        }
        cautions.push(Caution::new(Severity::Warning, "out_of_reach", text));
        Ok(())
    }
}

/// The error of a zone in which the instrument can prove no size good.
#[cold]
pub(super) fn not_to_be_proved(
    limits: Limits,
    field: &str,
    guard: SizeUncertainty,
    gauge: &Gauge,
) -> Error {
    let half = SizeUncertainty::computed_trade(round_size(0.5 * limits.tolerance().mm()));
    Error::new(
        ErrorKind::Impossible,
        field,
        format!("a zone of {}", limits.tolerance()),
        format!(
            "more than twice the {guard} that a size measured with this {} keeps from a limit",
            gauge.instrument().words()
        ),
        format!(
            "an instrument whose guard is less than {half} (preferences.instrument, with its certificate where there \
             is one), or a wider zone: in this one no size can be proved good"
        ),
    )
}
