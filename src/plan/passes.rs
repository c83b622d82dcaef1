//! How the metal is divided into cuts, in whole divisions of the dial.
//!
//! The readable way: a first light cut that is measured, roughing cuts of the same depth whose
//! readings lie on main marks, then two smaller finishing cuts, equal to each other.

use super::sheet::StepKind;
use crate::quantity::{Feed, SpindleSpeed};

/// The metal to take and what the cuts may be, in divisions of the cross dial.
#[derive(Debug, Clone, Copy)]
pub(super) struct Metal {
    /// Where the tool touches the bar; a fraction where the ring is set between marks.
    pub(super) start: f64,
    /// The final mark.
    pub(super) last: i64,
    /// Most that a roughing cut may take.
    pub(super) rough_most: i64,
    /// What every roughing cut takes, where that was asked for; no more than the most.
    pub(super) rough_asked: Option<i64>,
    /// Most that the first cut may take: it is measured, not meant to get far.
    pub(super) first_most: i64,
    /// Least that the first cut must take, to be under the skin of the bar.
    pub(super) first_least: i64,
    /// True where that is for a skin; else it is for a bar that runs out.
    pub(super) skin: bool,
    /// Least that any cut may take.
    pub(super) least: i64,
    /// Least that a cut of the tool that roughs may take.
    pub(super) rough_least: i64,
    /// Most that a finishing cut may take.
    pub(super) finish_most: i64,
    /// What a finishing cut should rather take.
    pub(super) finish_liked: i64,
    /// Which first cut there is.
    pub(super) first: First,
    /// True where another tool finishes: then there is a cut of the tool that roughs.
    pub(super) changes: bool,
}

/// The cut before the roughing cuts of equal depth.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum First {
    /// None: the dial tells measured sizes, and the roughing cuts take all.
    None,
    /// A light one that is measured, to set the ring by.
    Measured,
    /// One like the others, but as deep as it takes to come to main marks.
    Uneven,
}

/// The readings of the cuts, in order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Passes {
    /// The reading of the first cut, which is measured, if there is one.
    pub(super) first: Option<i64>,
    /// The readings of the roughing cuts.
    pub(super) rough: Vec<i64>,
    /// The readings of the two finishing cuts.
    pub(super) finish: [i64; 2],
}

/// One cut: its kind and the mark it goes to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct PlannedCut {
    pub(super) kind: StepKind,
    pub(super) mark: i64,
    /// Tenths of a mark beyond it, where a ring is fixed and no whole mark brings the size.
    pub(super) between: u8,
    /// Its feed and spindle speed, where they are its own; else those of its kind.
    pub(super) pace: Option<(Feed, SpindleSpeed)>,
    /// True of a cut after the change to a finishing tool of its own.
    pub(super) after_change: bool,
}

impl Passes {
    /// The cuts in order, the finishing ones by another tool where `changes` is true.
    pub(super) fn cuts(&self, changes: bool) -> Vec<PlannedCut> {
        let of = |kind: StepKind| {
            move |mark: &i64| PlannedCut {
                kind,
                mark: *mark,
                between: 0,
                pace: None,
                after_change: changes && kind == StepKind::FinishCut,
            }
        };
        let first = self.first.iter().map(of(StepKind::FirstCut));
        let rough = self.rough.iter().map(of(StepKind::RoughCut));
        let finish = self.finish.iter().map(of(StepKind::FinishCut));
        first.chain(rough).chain(finish).collect()
    }
}

/// Main marks, from the most readable: every tenth, every fifth, every second, every one.
const MAIN_MARKS: [i64; 4] = [10, 5, 2, 1];

/// How many finishing depths are looked at.
const FINISH_DEPTHS: i64 = 32;

/// How many roughing depths are looked at, from the least that the number of cuts needs.
const ROUGH_DEPTHS: i64 = 24;

impl Metal {
    /// The cuts, if the metal can be divided so.
    ///
    /// Of all divisions the one with the fewest cuts is looked for at each fineness of readings;
    /// one cut more than the fewest is a fair price for readings on main marks.
    pub(super) fn divide(&self) -> Option<Passes> {
        let mut choices: Vec<Choice> = Vec::with_capacity(MAIN_MARKS.len());
        for choice in MAIN_MARKS.iter().filter_map(|mark| self.with_mark(*mark)) {
            // It is taken whatever finer marks would come to, and no coarser one is.
            let sure = choice.cuts() <= self.least_cuts() + 1
                && choices
                    .iter()
                    .all(|coarser| coarser.cuts() > choice.cuts() + 1);
            choices.push(choice);
            if sure {
                break;
            }
        }
        let fewest = choices.iter().map(Choice::cuts).min()?;
        choices
            .iter()
            .find(|choice| choice.cuts() <= fewest + 1)
            .map(|choice| self.readings(choice))
    }

    /// No division has fewer cuts, whatever its marks.
    fn least_cuts(&self) -> i64 {
        let first = match self.first {
            First::None => 0,
            First::Measured | First::Uneven => self.first_most.min(self.rough_most),
        };
        let least_room = self.room(self.finish_most) - first as f64;
        let roughing = least_room / self.deepest().max(1) as f64 - 1e-9;
        roughing.ceil().max(0.0) as i64 + 2
    }

    /// The best division whose roughing readings are multiples of `mark`.
    fn with_mark(&self, mark: i64) -> Option<Choice> {
        // On a very fine dial a few dozen finishing depths are choice enough.
        let step = ((self.finish_most - self.least) / FINISH_DEPTHS).max(1);
        let mut best = Best::default();
        for finish in (self.least..=self.finish_most).step_by(step as usize) {
            if self.room(finish) > -1e-9 {
                self.with_finish(finish, mark, &mut best);
            }
        }
        best.found.map(|(_, choice)| choice)
    }

    /// What no roughing cut of the plan is deeper than.
    fn deepest(&self) -> i64 {
        self.rough_asked.unwrap_or(self.rough_most)
    }

    /// What lies between the touch and the finishing cuts.
    fn room(&self, finish: i64) -> f64 {
        (self.last - 2 * finish) as f64 - self.start
    }

    fn with_finish(&self, finish: i64, mark: i64, best: &mut Best) {
        let (room, end) = (self.room(finish), self.last - 2 * finish);
        if room.abs() < 1e-9 && self.first_least == 0 && !self.changes {
            let choice = Choice {
                first: None,
                rough: 0,
                count: 0,
                end,
                finish,
            };
            return best.offer(self.price(&choice), choice);
        }
        if end % mark != 0 {
            return;
        }
        let most = (self.deepest() / mark) * mark;
        // A roughing cut is at least one division deeper than a finishing cut.
        let least = ((finish / mark) + 1) * mark;
        let least = least.max((self.rough_least + mark - 1) / mark * mark);
        let (first_least, first_most) = match self.first {
            First::None => (0.0, 0.0),
            First::Measured | First::Uneven => (
                self.rough_least.max(self.first_least) as f64,
                self.first_most.min(self.rough_most) as f64,
            ),
        };
        let fewest = ((room - first_most) / most.max(1) as f64).ceil().max(0.0) as i64;
        for count in fewest..=fewest + 2 {
            if best.is_better_than(self.least_price(finish, count)) {
                return;
            }
            let rough = match (count, self.rough_asked) {
                (0, _) => 0,
                (_, Some(asked)) if asked % mark == 0 && asked >= least => asked,
                (_, Some(_)) => continue,
                (_, None) => {
                    let low = ((room - first_most) / count as f64).max(least as f64);
                    let from = (low / mark as f64 - 1e-9).ceil() as i64 * mark;
                    // The deeper the roughing cuts, the lighter the first one, and the better, unless it is to
                    // be like them. Of a plan without a first cut they are all of the metal.
                    let high = (room - first_least + 1e-9) / (count * mark) as f64;
                    let alike = match self.first {
                        First::Uneven => {
                            let share = room / ((count + 1) * mark) as f64;
                            (share - 1e-9).ceil() as i64 * mark
                        }
                        First::None | First::Measured => most,
                    };
                    let deepest = most
                        .min(from + (ROUGH_DEPTHS - 1) * mark)
                        .min(high.floor() as i64 * mark)
                        .min(alike.max(from));
                    if deepest < from {
                        continue;
                    }
                    deepest
                }
            };
            if let Some(choice) = self.choice(end, finish, mark, count, rough) {
                best.offer(self.price(&choice), choice);
            }
        }
    }

    fn choice(&self, end: i64, finish: i64, mark: i64, count: i64, rough: i64) -> Option<Choice> {
        let first_end = end - count * rough;
        let first = first_end as f64 - self.start;
        if self.first != First::None {
            let most = self.first_most.min(self.rough_most) as f64;
            let least = self.rough_least.max(self.first_least) as f64;
            let sound = first >= least - 1e-9 && first <= most + 1e-9;
            (sound && first_end % mark == 0).then_some(Choice {
                first: Some(first_end),
                rough,
                count,
                end,
                finish,
            })
        } else {
            (first.abs() < 1e-9 && count > 0).then_some(Choice {
                first: None,
                rough,
                count,
                end,
                finish,
            })
        }
    }

    /// What is disliked about a choice: more cuts first, then a finishing depth far from the liked
    /// one and a first cut out of proportion, then plain depth of the first cut, or how far it is from
    /// those that it should be like.
    fn price(&self, choice: &Choice) -> Price {
        let first = choice.first.map_or(0.0, |end| end as f64 - self.start);
        let out_of_proportion = if choice.count > 0 {
            first - choice.rough as f64
        } else {
            choice.finish as f64 - first
        };
        let far = (choice.finish - self.finish_liked).abs();
        (
            choice.cuts(),
            far + 2 * out_of_proportion.max(0.0).ceil() as i64,
            match self.first {
                First::Uneven => (choice.rough as f64 - first).abs().ceil() as i64,
                First::None | First::Measured => first.ceil() as i64,
            },
        )
    }

    /// Less than it no choice with that finishing depth and that number of roughing cuts costs.
    fn least_price(&self, finish: i64, count: i64) -> Price {
        let cuts = count + i64::from(self.first != First::None) + 2;
        (cuts, (finish - self.finish_liked).abs(), 0)
    }

    fn readings(&self, choice: &Choice) -> Passes {
        let from = choice.end - choice.count * choice.rough;
        Passes {
            first: choice.first,
            rough: (1..=choice.count)
                .map(|cut| from + cut * choice.rough)
                .collect(),
            finish: [choice.end + choice.finish, choice.end + 2 * choice.finish],
        }
    }
}

/// What is disliked, the most important first.
type Price = (i64, i64, i64);

/// The cheapest choice so far, the first of equal ones.
#[derive(Debug, Default)]
struct Best {
    found: Option<(Price, Choice)>,
}

impl Best {
    fn offer(&mut self, price: Price, choice: Choice) {
        if self.found.as_ref().is_none_or(|(least, _)| price < *least) {
            self.found = Some((price, choice));
        }
    }

    fn is_better_than(&self, price: Price) -> bool {
        self.found.as_ref().is_some_and(|(least, _)| *least < price)
    }
}

#[derive(Debug, Clone)]
struct Choice {
    first: Option<i64>,
    rough: i64,
    count: i64,
    end: i64,
    finish: i64,
}

impl Choice {
    fn cuts(&self) -> i64 {
        self.count + i64::from(self.first.is_some()) + 2
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn metal(last: i64) -> Metal {
        Metal {
            start: 0.0,
            last,
            rough_most: 40,
            rough_asked: None,
            first_most: 20,
            first_least: 0,
            skin: false,
            least: 5,
            rough_least: 5,
            finish_most: 15,
            finish_liked: 10,
            first: First::Measured,
            changes: false,
        }
    }

    #[test]
    fn readings_lie_on_main_marks_where_they_can() {
        let passes = metal(100).divide().unwrap();
        assert!(
            passes
                .first
                .iter()
                .chain(&passes.rough)
                .all(|mark| mark % 10 == 0),
            "{passes:?}"
        );
        assert_eq!(passes.finish, [90, 100]);
    }

    #[test]
    fn every_division_keeps_its_promises() {
        let mut planned = 0;
        for last in 10..400 {
            for start in [0.0, 3.375, 9.9] {
                let metal = Metal {
                    start,
                    ..metal(last)
                };
                let Some(passes) = metal.divide() else {
                    continue;
                };
                planned += 1;
                let Passes {
                    first,
                    rough,
                    finish,
                } = &passes;
                let mut at = start;
                for reading in first.iter().chain(rough).chain(finish) {
                    let depth = *reading as f64 - at;
                    assert!(
                        (5.0 - 1e-9..=40.0 + 1e-9).contains(&depth),
                        "{last} {start} {passes:?}"
                    );
                    at = *reading as f64;
                }
                assert_eq!(finish[1], last);
                let finishing = finish[1] - finish[0];
                let before = rough
                    .last()
                    .or(first.as_ref())
                    .copied()
                    .map_or(start, |r| r as f64);
                assert!(
                    (finish[0] as f64 - before - finishing as f64).abs() < 1e-9,
                    "{passes:?}"
                );
                let depths: Vec<i64> = rough.windows(2).map(|pair| pair[1] - pair[0]).collect();
                assert!(
                    depths.windows(2).all(|pair| pair[0] == pair[1]),
                    "{passes:?}"
                );
                assert!(depths.iter().all(|depth| *depth > finishing), "{passes:?}");
            }
        }
        assert!(planned > 1000, "{planned}");
    }

    #[test]
    fn roughing_cuts_are_as_deep_as_they_were_asked_to_be() {
        for last in 200..400 {
            let asked = Metal {
                rough_asked: Some(33),
                first_most: 33,
                ..metal(last)
            };
            let passes = asked.divide().unwrap();
            let first = passes.first.unwrap();
            let all: Vec<i64> = [first].into_iter().chain(passes.rough.clone()).collect();
            assert!(passes.rough.len() > 3, "{last} {passes:?}");
            assert!(
                all.windows(2).all(|pair| pair[1] - pair[0] == 33),
                "{passes:?}"
            );
            assert!((5..=33).contains(&first), "{passes:?}");
            assert_eq!(passes.finish[1], last);
        }
    }

    #[test]
    fn too_little_metal_is_not_divided() {
        assert_eq!(metal(9).divide(), None);
    }
}
