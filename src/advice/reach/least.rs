//! The least that would have to be true of instrument, dial or support for a task within reach.

use super::{FieldAtMost, LeastNeeded, Means, ReachAsk, Task, guard};
use crate::advice::size_budget::{Reached, SizeBudget, SizeCause};
use crate::provenance::Provenance;
use crate::quantity::SizeUncertainty;
use crate::quantity::unit::Units;
use crate::shop::gauge::InstrumentError;

impl ReachAsk<'_> {
    /// How small each means would have to make its causes, the others being as they are.
    pub(super) fn least(&self, task: &Task) -> Vec<LeastNeeded> {
        let alone: Vec<LeastNeeded> = [Means::Instrument, Means::Dial, Means::SupportAndTool]
            .into_iter()
            .filter(|means| {
                let of = |budget: &SizeBudget| {
                    let mut causes = means.causes().iter();
                    causes.any(|cause| budget.figure(*cause).is_some())
                };
                // After a touch the instrument is no cause of the size; it must prove it all the same.
                of(&task.budget) || (of(&task.measuring) && !self.provable(task))
            })
            .map(|means| self.least_of(task, means))
            .collect();
        if alone.iter().any(|least| least.times.is_some()) {
            return alone;
        }
        // Where nothing does alone, all of them together, each by as much.
        let together = self.least_of(task, Means::AllTogether);
        alone.into_iter().chain([together]).collect()
    }

    fn least_of(&self, task: &Task, means: Means) -> LeastNeeded {
        // A better instrument in the same hand, before a better hand as well.
        let ways: &[&[SizeCause]] = match means {
            Means::Instrument => &[&[SizeCause::Instrument], means.causes()],
            Means::Dial | Means::SupportAndTool | Means::AllTogether => &[means.causes()],
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
            Means::AllTogether => {
                let each = [Means::Instrument, Means::Dial, Means::SupportAndTool];
                let has = |means: &Means| {
                    let mut causes = means.causes().iter();
                    causes.any(|cause| {
                        let of = |budget: &SizeBudget| budget.figure(*cause).is_some();
                        of(&task.budget) || of(&task.measuring)
                    })
                };
                let (figures, words): (Vec<_>, Vec<_>) = (each.into_iter().filter(has))
                    .map(|means| self.least_figures(task, means, causes, times))
                    .unzip();
                return (
                    figures.concat(),
                    format!("all at once: {}", words.join("; and ")),
                );
            }
            Means::Instrument => {
                let error = self
                    .size
                    .gauge()
                    .error_at(self.size.size(), &mut Provenance::deaf());
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

fn none_would_do(means: Means) -> &'static str {
    match means {
        Means::Instrument => "no instrument alone would do",
        Means::Dial => "no dial alone would do",
        Means::SupportAndTool => "no support and no tool alone would do",
        Means::AllTogether => "nor would all of these at once",
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
