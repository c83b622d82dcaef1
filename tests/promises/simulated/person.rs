//! A person who works by a sheet at the simulated lathe, and what comes out.

use std::collections::HashMap;

use turnwright::advice::diagnosis::{Cause, SizeAt};
use turnwright::plan::{Sheet, Step, StepKind};
use turnwright::{Diameter, Units, WorkLength};

use super::beam::compliances;
use super::dial::{Chance, Slide};
use super::trial::{Piece, Trial, printed, set_up};

/// How a person takes what was measured into account.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Manner {
    /// By the rule printed at the stop.
    Rule,
    /// By asking what follows, and following the new sheet.
    Asks,
}

/// A slip on purpose, at the cut of this number.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Slip {
    /// The dial counts the other way than the job says.
    OtherDial,
    /// A turn too few, or too many.
    Turn { cut: usize, few: bool },
    /// The slide was not brought in from outside: this share of the backlash was left in.
    Backlash { cut: usize, share: f64 },
}

/// What came out of one part.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Came {
    Good,
    Rework,
    Scrap,
}

/// One part, and what was seen on the way.
#[derive(Debug, Clone)]
pub struct Made {
    pub came: Came,
    /// The true mean size of every surface.
    pub sizes: Vec<f64>,
    /// What was named first at the first stop at or after a slip.
    pub named: Option<Cause>,
    /// True where the part was lost already when it was measured then.
    pub lost_by_then: bool,
    /// Cuts that found no metal somewhere.
    pub without_metal: usize,
    /// Cuts planned as far as the jaws.
    pub into_jaws: usize,
    pub outwards: usize,
    /// Work was stopped before the last cut.
    pub stopped: bool,
    /// What follows could not be told: an error of the library.
    pub refused: Option<String>,
}

/// Places on each surface where its radius is followed, as shares of its length.
const PLACES: [f64; 5] = [0.04, 0.27, 0.5, 0.73, 0.96];
/// Those of them that are measured.
const MEASURED: [usize; 3] = [0, 2, 4];
/// A force is up to 30 % off from bar to bar, and 5 % from cut to cut, as a standard deviation.
const BAR: f64 = 0.3;
const CUT_TO_CUT: f64 = 0.05;
/// A part left to cool is up to 3 K from 20 degC.
const WARM: f64 = 3.0;
/// Share of the main force that is normal to the edge.
const NORMAL: f64 = 0.5;

/// What bends the bar in cuts of a job: kept from part to part, since bars of one job are alike.
#[derive(Debug, Default)]
pub struct Bends(HashMap<(bool, usize, i64, bool, bool), Vec<f64>>);

struct Bench<'a> {
    trial: Trial,
    bends: &'a mut Bends,
    chance: &'a mut Chance,
    slide: Slide,
    overhang: f64,
    centre: bool,
    bar_factor: f64,
    gauge_error: f64,
    /// The part was turned round: what is worked is its other end.
    round: bool,
    /// Radii at the places of every surface of each end.
    radii: [Vec<[f64; 5]>; 2],
    /// Where the tool stands on the dial.
    mark: f64,
    cuts: usize,
    made: Made,
}

impl Bench<'_> {
    /// The passive force at a depth, by Kienzle along the edge.
    fn passive(&self, depth: f64, feed: f64, finishing: bool) -> f64 {
        if depth <= 0.0 {
            return 0.0;
        }
        let (t, q) = (&self.trial, 1.0 - self.trial.exponent);
        let (kappa, r) = match t.rough {
            Some(rough) if !finishing => rough,
            _ => (t.edge_angle, t.corner),
        };
        let arc_depth = r * (1.0 - kappa.cos());
        let end = if depth < arc_depth {
            (1.0 - depth / r).acos()
        } else {
            kappa
        };
        let arc = r * feed.powf(q) * end.sin().powf(q + 1.0) / (q + 1.0);
        let straight =
            (depth - arc_depth).max(0.0) / kappa.sin() * (feed * kappa.sin()).powf(q) * kappa.cos();
        NORMAL * t.specific_force * (arc + straight)
    }

    /// The surfaces of the end that is worked.
    fn pieces(&self) -> &[Piece] {
        match self.round {
            false => &self.trial.pieces,
            true => &self.trial.other,
        }
    }

    /// From the face to the far end of a surface.
    fn reach(&self, surface: usize) -> f64 {
        self.pieces()[..=surface].iter().map(|p| p.length).sum()
    }

    /// Diameters and lengths from the jaws outwards up to the last shoulder of the end that is worked.
    fn root(&self) -> Vec<(f64, f64)> {
        let mut left = self.overhang - self.reach(self.pieces().len() - 1);
        if !self.round {
            return vec![(self.trial.bar, left)];
        }
        let finished = |p: &Piece| (0.5 * (p.low + p.high), p.length);
        let long: f64 = self
            .trial
            .pieces
            .iter()
            .chain(&self.trial.other)
            .map(|p| p.length)
            .sum();
        let mut inwards = vec![(self.trial.bar, self.trial.overall - long)];
        inwards.extend(self.trial.pieces.iter().rev().map(finished));
        let mut sections = Vec::new();
        for (diameter, length) in inwards {
            let length = length.min(left);
            left -= length;
            if length > 1e-9 {
                sections.push((diameter, length));
            }
        }
        sections.reverse();
        sections
    }

    fn distance_out(&self, surface: usize, place: usize) -> f64 {
        let piece = &self.pieces()[surface];
        self.overhang - self.reach(surface) + piece.length * (1.0 - PLACES[place])
    }

    /// Millimetres per newton at every place that a cut of this surface goes over.
    fn bends(&mut self, surface: usize, diameter: f64, finishing: bool) -> Vec<f64> {
        // What is roughed already is thinner than this surface, out to the face.
        let thinner = finishing && self.trial.rough.is_some();
        let key = (
            self.round,
            surface,
            (diameter * 50.0).round() as i64,
            self.centre,
            thinner,
        );
        if let Some(found) = self.bends.0.get(&key) {
            return found.clone();
        }
        let mut sections = self.root();
        for piece in self.pieces()[surface + 1..].iter().rev() {
            sections.push((0.5 * (piece.low + piece.high), piece.length));
        }
        let cylinder = |p: &Piece| (0.5 * (p.low + p.high), p.length);
        match thinner {
            false => sections.push((diameter, self.reach(surface))),
            true => {
                sections.push((diameter, self.pieces()[surface].length));
                sections.extend(self.pieces()[..surface].iter().rev().map(cylinder));
            }
        }
        let from = if thinner { surface } else { 0 };
        let places: Vec<f64> = (from..=surface)
            .flat_map(|s| (0..PLACES.len()).map(move |p| (s, p)))
            .map(|(s, p)| self.distance_out(s, p))
            .collect();
        let found = compliances(&self.trial.held(self.centre), &sections, &places);
        self.bends.0.insert(key, found.clone());
        found
    }

    fn cut(&mut self, step: &Step, mark: f64, slip: Option<Slip>) {
        let surface = step.surface.unwrap().index();
        let mut left = 0.0;
        match slip {
            Some(Slip::Turn { cut, few }) if cut == self.cuts => {
                self.slide.miscount(if few { -1.0 } else { 1.0 });
            }
            Some(Slip::Backlash { cut, share }) if cut == self.cuts => {
                left = share * self.slide.dial.backlash;
            }
            _ => {}
        }
        self.cuts += 1;
        self.slide.come_in(mark, self.chance);
        self.mark = mark;
        if step.z.is_none_or(|z| -z.mm() > self.overhang - 5.0) {
            self.made.into_jaws += 1;
        }
        let (tip, feed) = (self.slide.tip() + left, step.feed.unwrap().mm_per_rev());
        let factor = self.bar_factor * (1.0 + self.chance.normal(CUT_TO_CUT));
        let finishing = step.kind == StepKind::FinishCut;
        let bends = self.bends(surface, step.diameter.mm(), finishing);
        let mut bends = bends.iter();
        // What lies outside of it is out of the reach of the tool that finishes where that was roughed to less.
        let from = if finishing && self.trial.rough.is_some() {
            surface
        } else {
            0
        };
        for s in from..=surface {
            for p in 0..PLACES.len() {
                let metal = self.radii[usize::from(self.round)][s][p] - tip;
                let give = bends.next().unwrap() * factor;
                if metal <= 0.0 {
                    self.made.without_metal += 1;
                    continue;
                }
                // The bar gives by less than a tenth of what it is pressed: four rounds settle it.
                let mut spring = 0.0;
                for _ in 0..4 {
                    spring = give * self.passive(metal - spring, feed, finishing);
                }
                self.radii[usize::from(self.round)][s][p] = tip + spring;
            }
        }
    }

    /// Sizes at three places of a surface, as measured.
    fn measure(&mut self, surface: usize) -> [f64; 3] {
        let warm = 1.0 + self.trial.expansion * self.chance.within(WARM);
        let hand = self.trial.gauge.1;
        MEASURED.map(|p| {
            let true_size = 2.0 * self.radii[usize::from(self.round)][surface][p];
            true_size * warm + self.gauge_error + self.chance.normal(hand)
        })
    }

    fn true_mean(&self, surface: usize) -> f64 {
        mean_of(&self.radii[usize::from(self.round)][surface])
    }

    fn is_lost(&self, surface: usize) -> bool {
        self.true_mean(surface) < self.pieces()[surface].low
    }

    /// Sizes with their places, as they are handed in.
    fn sized(&self, surface: usize, sizes: &[f64; 3]) -> Vec<SizeAt> {
        MEASURED
            .iter()
            .zip(sizes)
            .map(|(p, size)| {
                let at = WorkLength::from_mm(self.distance_out(surface, *p)).unwrap();
                SizeAt::new(at, Diameter::from_mm(*size).unwrap())
            })
            .collect()
    }

    fn per_mark(&self) -> f64 {
        2.0 * self.trial.dial.per_mark
    }

    fn judge(mut self) -> Made {
        let mut came = Came::Good;
        let pieces = self.trial.pieces.iter().chain(&self.trial.other);
        for (radii, piece) in self.radii.iter().flatten().zip(pieces) {
            let size = mean_of(radii);
            self.made.sizes.push(size);
            if size < piece.low {
                came = Came::Scrap;
            } else if size > piece.high && came == Came::Good {
                came = Came::Rework;
            }
        }
        self.made.came = came;
        self.made.outwards = self.slide.outwards;
        self.made
    }
}

fn mean_of(radii: &[f64; 5]) -> f64 {
    2.0 * radii.iter().sum::<f64>() / PLACES.len() as f64
}

fn mean(sizes: &[f64; 3]) -> f64 {
    sizes.iter().sum::<f64>() / 3.0
}

/// The cut that comes next on a sheet.
fn next_cut(sheet: &Sheet, at: usize) -> &Step {
    let mut ahead = sheet.steps[at..].iter();
    ahead.find(|s| s.depth_of_cut.is_some()).unwrap()
}

/// The mark of a step, tenths beyond it included.
fn count(step: &Step) -> f64 {
    step.reading.unwrap().divisions().count() as f64 + f64::from(step.tenths.unwrap_or(0)) / 10.0
}

/// The mark of the last cut before this place, by the sheet.
fn last_count(sheet: &Sheet, at: usize) -> f64 {
    let mut before = sheet.steps[..at].iter();
    count(before.rfind(|s| s.depth_of_cut.is_some()).unwrap())
}

/// Marks by the rule that is printed behind these words, `(34.387 - M1) / 0.04` or `(M1 - 30) / 0.04`.
fn by_rule(step: &Step, behind: &str, size: f64, units: Units) -> f64 {
    let size = match units {
        Units::Inch => size / 25.4,
        _ => size,
    };
    let rule = step.text.split_once(behind).map(|(_, rule)| rule);
    let (difference, rest) = rule.and_then(|rule| rule.split_once(") / ")).unwrap();
    let mark = rest.split([' ', ',']).next().unwrap();
    let mark = mark.parse::<f64>().unwrap();
    let (left, right) = difference.split_once(" - ").unwrap();
    match left.parse::<f64>() {
        Ok(from) => (from - size) / mark,
        Err(_) => (size - right.parse::<f64>().unwrap()) / mark,
    }
}

/// A size printed between two words.
fn size_between(step: &Step, before: &str, after: &str) -> f64 {
    printed(&step.text, before, after).unwrap()
}

/// Whole marks, or tenths of one where the sheet asks for them.
fn to_the_nearest(step: &Step, marks: f64) -> f64 {
    match step.text.contains("to the nearest tenth of one, by eye") {
        true => (10.0 * marks).round() / 10.0,
        false => marks.round(),
    }
}

/// What the ring is set to or a fixed one is brought to, as printed, with the whole turns that it counts.
fn ring_shows(step: &Step, marks: i64) -> f64 {
    let mut behind = ["the ring only, to ", "until its dial reads "].into_iter();
    let told = behind
        .find_map(|behind| step.text.split_once(behind))
        .unwrap()
        .1;
    let number: String = told
        .chars()
        .take_while(|c| c.is_ascii_digit() || *c == '.')
        .collect();
    let shown: f64 = number.trim_end_matches('.').parse().unwrap();
    let turns = match told.split_once("which counts as ") {
        None => 0.0,
        Some((_, counts)) => {
            let turns: f64 = counts.split(' ').next().unwrap().parse().unwrap();
            match counts.contains("less than it shows") {
                true => -turns,
                false => turns,
            }
        }
    };
    shown + turns * marks as f64
}

/// What the dial is to read where the tip touches, as printed.
fn touch_reads(step: &Step) -> f64 {
    match step.reading {
        Some(reading) => reading.divisions().count() as f64,
        None => {
            let (_, after) = step.text.split_once("until it reads ").unwrap();
            after.split_once(" marks").unwrap().0.parse().unwrap()
        }
    }
}

/// Where the cuts of this surface are over.
fn end_of_cuts(sheet: &Sheet, at: usize) -> usize {
    let ahead = sheet.steps[at..].iter();
    at + ahead.take_while(|s| s.kind != StepKind::Shoulder).count()
}

/// Turns one part.
pub fn turn(
    trial: &Trial,
    sheet: &Sheet,
    manner: Manner,
    slip: Option<Slip>,
    bends: &mut Bends,
    chance: &mut Chance,
) -> Made {
    let (overhang, centre) = set_up(trial, sheet, false);
    let really = match slip {
        Some(Slip::OtherDial) => trial.other_per_mark,
        _ => trial.dial.per_mark,
    };
    let slide = Slide::new(trial.dial, really, chance);
    let mut bench = Bench {
        slide,
        overhang,
        centre,
        bar_factor: 1.0 + chance.within(BAR),
        gauge_error: chance.within(trial.gauge.0),
        round: false,
        radii: [&trial.pieces, &trial.other].map(|pieces| vec![[0.5 * trial.bar; 5]; pieces.len()]),
        mark: 0.0,
        cuts: 0,
        made: Made {
            came: Came::Good,
            sizes: Vec::new(),
            named: None,
            lost_by_then: false,
            without_metal: 0,
            into_jaws: 0,
            outwards: 0,
            stopped: false,
            refused: None,
        },
        trial: trial.clone(),
        bends,
        chance,
    };
    let slipped_at = match slip {
        None => usize::MAX,
        Some(Slip::OtherDial) => 0,
        Some(Slip::Turn { cut, .. } | Slip::Backlash { cut, .. }) => cut,
    };
    let mut sheet = sheet.clone();
    let units = trial.units;
    // What a fixed ring adds to every mark below, by the rules printed on the sheet.
    let mut shift = 0.0;
    // What the last cut goes farther in than the mark before, by the same.
    let mut farther = None;
    let mut finished: Option<f64> = None;
    // What was roughed, as measured near its free end.
    let mut roughed: HashMap<(bool, usize), f64> = HashMap::new();
    // A diameter on which the dial is set anew.
    let mut known: Option<f64> = None;
    let mut repeated = 0;
    let mut at = 0;
    while let Some(step) = sheet.steps.get(at).cloned() {
        let surface = step.surface.map_or(0, |s| s.index());
        match step.kind {
            StepKind::TurnRound => {
                bench.round = true;
                (bench.overhang, bench.centre) = set_up(&bench.trial, &sheet, true);
                (shift, farther, finished, known) = (0.0, None, None, None);
            }
            StepKind::ZeroX if step.text.contains("kept for the next diameter") => {}
            StepKind::ZeroX if step.text.contains("Zero X for the next diameter") => {
                let mark = bench.mark;
                bench.slide.come_in(mark, bench.chance);
                bench
                    .slide
                    .set_ring(ring_shows(&step, bench.trial.dial.marks), bench.chance);
                bench.slide.withdraw();
            }
            StepKind::ZeroX if step.text.contains("with the finishing tool") => {
                let radius = bench.radii[usize::from(bench.round)][surface][MEASURED[0]];
                let size = roughed[&(bench.round, surface)];
                let rule = ["the ring only, to (", "until its dial reads ("]
                    .into_iter()
                    .find(|behind| step.text.contains(behind));
                let reads = match rule {
                    Some(behind) => by_rule(&step, behind, size, units),
                    // The size is known to the sheet, and so is the mark.
                    None => ring_shows(&step, bench.trial.dial.marks),
                };
                bench
                    .slide
                    .touch(radius, (10.0 * reads).round() / 10.0, bench.chance);
                (shift, farther) = (0.0, None);
                bench.slide.withdraw();
            }
            StepKind::ZeroX => {
                let next = next_cut(&sheet, at);
                let q = bench.per_mark();
                let reads = |size: f64| count(next) - (size - next.diameter.mm()) / q;
                match (finished, known.take()) {
                    (_, Some(size)) => {
                        let mark = bench.mark;
                        bench.slide.come_in(mark, bench.chance);
                        bench.slide.set_ring(reads(size), bench.chance);
                    }
                    (Some(size), _) if bench.trial.dial.settable => {
                        let mark = bench.mark;
                        bench.slide.come_in(mark, bench.chance);
                        let reads = by_rule(&step, "the ring only, to (", size, units);
                        bench.slide.set_ring_by_tenths(reads, bench.chance);
                    }
                    (Some(size), _) => {
                        let off = by_rule(&step, "(less far: minus) + (", size, units);
                        shift = (bench.mark - last_count(&sheet, at) + off).round();
                    }
                    _ => {
                        bench
                            .slide
                            .touch(0.5 * trial.bar, touch_reads(&step), bench.chance);
                    }
                }
                bench.slide.withdraw();
            }
            StepKind::FirstCut | StepKind::RoughCut | StepKind::FinishCut => {
                let mark = match farther.take() {
                    Some(farther) => bench.mark + farther,
                    None => count(&step) + shift,
                };
                bench.cut(&step, mark, slip);
                bench.slide.withdraw();
                if step.text.contains("spring pass") {
                    // No slip of its own, and no cut of its own number.
                    bench.cut(&step, mark, None);
                    bench.slide.withdraw();
                    bench.cuts -= 1;
                }
            }
            StepKind::Measure => {
                let sizes = bench.measure(surface);
                if step
                    .text
                    .contains("there the finishing tool will be zeroed on it")
                {
                    roughed.insert((bench.round, surface), sizes[0]);
                    if manner == Manner::Asks {
                        let place = bench.sized(surface, &sizes)[0];
                        match sheet.after(at, &[place], None).map(|answer| answer.plan) {
                            Ok(Some(plan)) => {
                                let mut adjusts = plan.steps.iter();
                                let adjust = adjusts.rposition(|s| s.kind == StepKind::Adjust);
                                (at, sheet) = (adjust.unwrap() + 1, plan);
                                continue;
                            }
                            Ok(None) => {}
                            Err(error) => {
                                bench.made.refused = Some(error.to_string());
                                break;
                            }
                        }
                    }
                    at += 1;
                    continue;
                }
                let seen = bench.cuts > slipped_at && bench.made.named.is_none();
                if seen {
                    bench.made.lost_by_then = bench.is_lost(surface);
                }
                if manner == Manner::Rule {
                    let last = step.text.contains("at three places");
                    let size = if last { mean(&sizes) } else { sizes[1] };
                    if last && repeated < 3 && size > size_between(&step, "Above ", ": leave") {
                        repeated += 1;
                        at -= 1;
                        continue;
                    }
                    if last && size < size_between(&step, "Below ", ": good already") {
                        at = end_of_cuts(&sheet, at);
                        continue;
                    }
                    if bench.trial.dial.settable {
                        let mark = bench.mark;
                        bench.slide.come_in(mark, bench.chance);
                        let reads = by_rule(&step, "the ring only, to (", size, units);
                        bench.slide.set_ring_by_tenths(reads, bench.chance);
                        bench.slide.withdraw();
                    } else if last {
                        let marks = to_the_nearest(
                            &step,
                            by_rule(&step, "The last cut goes (", size, units),
                        );
                        farther = Some(match printed(&step.text, "Fewer than ", " would rub") {
                            Some(fewest) => marks.max(fewest),
                            None => marks,
                        });
                    } else {
                        shift += to_the_nearest(&step, by_rule(&step, "Shift S = (", size, units));
                    }
                } else {
                    let answer = match sheet.after(at, &bench.sized(surface, &sizes), None) {
                        Ok(answer) => answer,
                        Err(error) => {
                            bench.made.refused = Some(error.to_string());
                            break;
                        }
                    };
                    if seen {
                        bench.made.named = Some(answer.causes[0].cause);
                    }
                    if answer.repeat && answer.causes[0].cause == Cause::MissedTurn {
                        bench.slide.count_anew();
                    }
                    if let Some(plan) = answer.plan {
                        if let Some(to) = answer.ring_to {
                            let mark = bench.mark;
                            bench.slide.come_in(mark, bench.chance);
                            bench.slide.set_ring(to, bench.chance);
                            bench.slide.withdraw();
                        }
                        let adjust = plan.steps.iter().rposition(|s| s.kind == StepKind::Adjust);
                        (at, sheet) = (adjust.unwrap() + 1, plan);
                        continue;
                    }
                    let why = answer.why_no_plan.unwrap();
                    if answer.lost {
                        break;
                    } else if why.starts_with("Wait") && repeated < 3 {
                        repeated += 1;
                        continue;
                    } else if why.contains("zero_at")
                        && really == bench.trial.dial.per_mark
                        && repeated < 3
                    {
                        // An indicator shows that the dial is right: the cut is repeated.
                        repeated += 1;
                        at -= 1;
                        continue;
                    } else if why.contains("zero_at") {
                        // A job is planned anew from its first end only.
                        let again = match bench.round {
                            false => bench.trial.anew(answer.mean),
                            true => None,
                        };
                        let Some((trial, plan)) = again else {
                            bench.made.stopped = true;
                            break;
                        };
                        known = Some(answer.mean.mm());
                        bench.trial = trial;
                        (sheet, at) = (plan, 0);
                        (bench.overhang, bench.centre) = set_up(&bench.trial, &sheet, bench.round);
                        bench.slide.dial = bench.trial.dial;
                        continue;
                    } else if why.starts_with("Stop") {
                        bench.made.stopped = true;
                        break;
                    }
                    // Good already, or nothing that a cut could mend.
                    at = end_of_cuts(&sheet, at);
                    continue;
                }
            }
            StepKind::Inspect => {
                let sizes = bench.measure(surface);
                if slip.is_some() && manner == Manner::Asks {
                    let answer = match sheet.after(at, &bench.sized(surface, &sizes), None) {
                        Ok(answer) => answer,
                        Err(error) => {
                            bench.made.refused = Some(error.to_string());
                            break;
                        }
                    };
                    if let Some(plan) = answer.plan {
                        let adjust = plan.steps.iter().rposition(|s| s.kind == StepKind::Adjust);
                        (at, sheet) = (adjust.unwrap() + 1, plan);
                        continue;
                    }
                }
                finished = Some(mean(&sizes));
            }
            _ => {}
        }
        at += 1;
    }
    bench.judge()
}
