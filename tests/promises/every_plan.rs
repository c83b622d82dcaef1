//! Random jobs, metric and inch, on lathes of every kind: each is refused by its field, or its sheet keeps
//! every promise of a sheet; and so does the sheet after a measurement. Twenty thousand sheets in the
//! ordinary run.
//!
//! `TW_PLANS=10` takes ten times as many.

#[path = "every_plan/spring.rs"]
mod spring;

use std::collections::BTreeMap;

use serde_json::{Value, json};
use turnwright::advice::diagnosis::SizeAt;
use turnwright::plan::{Job, Sheet, Step, StepKind, SurfaceAt, Way};
use turnwright::shop::dial::{DialReads, Ring};
use turnwright::standards::general_tolerance::{GeneralClass, linear};
use turnwright::{Diameter, ErrorKind, Quantity, Spindle, Surface, Units};

use crate::simulated_lathe::{dial::Chance, trial::printed};

/// Jobs of one thread, and how many threads.
const JOBS: usize = 8000;
const SEEDS: [u64; 4] = [11, 12, 13, 14];

fn times() -> usize {
    let more = std::env::var("TW_PLANS").ok();
    more.map_or(1, |text| text.parse().unwrap())
}

/// Lengths of one job, all metric or all inch; what is given in mm is rounded as people of each would.
struct Made<'a> {
    chance: &'a mut Chance,
    inch: bool,
}

impl Made<'_> {
    fn size(&self, mm: f64) -> String {
        match self.inch {
            true => format!("{:.4} in", mm / 25.4),
            false => format!("{mm:.3} mm"),
        }
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.chance.between(low, high)
    }

    fn maybe(
        &mut self,
        share: f64,
        field: &str,
        of: &mut Value,
        value: impl Fn(&mut Self) -> Value,
    ) {
        if self.chance.one_in(share) {
            of[field] = value(self);
        }
    }

    /// A spindle that is set without steps, in one range or two, with or without a speed below which its
    /// torque grows no more.
    fn without_steps(&mut self, lathe: &mut Value, steps: &[String]) {
        let (slow, middle, fast) = (&steps[0], &steps[steps.len() / 2], &steps[steps.len() - 1]);
        if self.chance.one_in(0.5) {
            lathe["spindle_range"] = json!([slow, fast]);
            self.maybe(0.5, "constant_torque_below", lathe, |_| json!(middle));
        } else {
            let between = &steps[steps.len() / 3];
            lathe["spindle_ranges"] = json!({
                "back gear": { "range": [slow, middle], "constant_torque_below": between },
                "direct": { "range": [between, fast], "constant_torque_below": middle },
            });
        }
    }

    fn lathe(&mut self) -> Value {
        let inch = self.inch;
        let mut lathe = json!({});
        let (ratio, slowest) = (self.between(1.25, 1.8), self.between(30.0, 90.0));
        let steps: Vec<String> = (0..self.chance.one_of(&[6, 9, 12]))
            .map(|step| format!("{:.0} rpm", slowest * ratio.powi(step)))
            .collect();
        if self.chance.one_in(0.8) {
            lathe["spindle_steps"] = json!(steps);
        } else {
            self.without_steps(&mut lathe, &steps);
        }
        if self.chance.one_in(0.85) {
            let base = self.chance.one_of(&[0.04, 0.05, 0.063]);
            lathe["feeds"] = (0..8)
                .map(|at| base * 1.26_f64.powi(at))
                .map(|feed| match inch {
                    true => json!(format!("{:.4} in/rev", feed / 25.4)),
                    false => json!(format!("{feed:.3} mm/rev")),
                })
                .collect();
        }
        let marks = self.chance.one_of(&[80, 100, 125, 200, 250]);
        let division = match inch {
            true => self.chance.one_of(&["0.001 in", "0.0005 in", "0.002 in"]),
            false => self
                .chance
                .one_of(&["0.01 mm", "0.02 mm", "0.025 mm", "0.05 mm"]),
        };
        lathe["cross_slide"] = json!({
            "reads": self.chance.one_of(&["radius", "diameter"]), "division": division, "divisions_per_turn": marks,
            "ring": self.chance.one_of(&["settable", "settable", "settable", "settable", "settable", "fixed", "readout"]),
        });
        if lathe["cross_slide"]["ring"] == "readout" {
            lathe["cross_slide"]["division"] = json!(if inch { "0.0005 in" } else { "0.005 mm" });
        }
        lathe["carriage"] = json!({
            "reads": "travel", "division": if inch { "0.005 in" } else { self.chance.one_of(&["0.1 mm", "0.05 mm", "0.2 mm"]) },
            "divisions_per_turn": self.chance.one_of(&[100, 160, 200]),
        });
        self.maybe(0.7, "backlash", &mut lathe["cross_slide"], |m| {
            let mm = m.between(0.02, 0.25);
            json!(m.size(mm))
        });
        self.maybe(0.7, "chuck_max_speed", &mut lathe, |m| {
            json!(format!("{:.0} rpm", m.between(900.0, 3000.0)))
        });
        self.maybe(0.8, "power", &mut lathe, |m| {
            json!(format!("{:.2} kW", m.between(0.4, 5.0)))
        });
        self.maybe(0.2, "efficiency", &mut lathe, |m| {
            json!(format!("{:.2}", m.between(0.6, 0.95)))
        });
        self.maybe(0.3, "max_spindle_speed", &mut lathe, |m| {
            json!(format!("{:.0} rpm", m.between(800.0, 2500.0)))
        });
        lathe
    }

    /// Surfaces that rise from the face inwards, below `most`.
    fn end(&mut self, most: f64, count: usize) -> Option<(Vec<Value>, f64)> {
        let (mut diameter, mut long) = (most, 0.0);
        let mut surfaces = Vec::new();
        for _ in 0..count {
            diameter -= self.between(1.2, 8.0);
            if diameter < 8.0 {
                return None;
            }
            let zone = self.chance.one_of(&[0.03, 0.05, 0.1, 0.2, 0.4]);
            let length = self.between(8.0, 0.9 * diameter + 12.0);
            long += length;
            let mut surface = json!({
                "diameter": self.size(diameter), "length": self.size(length),
                "limits": [self.size(diameter - zone), self.size(diameter)],
            });
            self.maybe(0.2, "chamfer", &mut surface, |m| json!(m.size(0.5)));
            if count > 1 {
                self.maybe(
                    0.15,
                    "undercut",
                    &mut surface,
                    |m| json!({ "width": m.size(2.0), "depth": m.size(0.3) }),
                );
            }
            self.maybe(0.1, "small_diameter", &mut surface, |m| {
                json!(m.size(diameter - 1.0))
            });
            self.maybe(
                0.3,
                "finish",
                &mut surface,
                |m| json!({ "ra": m.chance.one_of(&["1.6 um", "3.2 um", "6.3 um"]) }),
            );
            surfaces.push(surface);
        }
        surfaces.reverse();
        Some((surfaces, long))
    }

    fn preferences(&mut self) -> Value {
        let mut p = json!({});
        self.maybe(0.15, "way", &mut p, |_| json!("least_time"));
        self.maybe(0.2, "compare_ways", &mut p, |_| json!(true));
        self.maybe(0.2, "correct_for_spring", &mut p, |_| json!(true));
        self.maybe(0.1, "measuring_stops", &mut p, |m| {
            json!(m.chance.one_of(&[0, 1, 2]))
        });
        self.maybe(0.1, "batch", &mut p, |m| {
            json!(m.chance.one_of(&[2, 10, 50]))
        });
        self.maybe(0.1, "largest_depth", &mut p, |m| json!(m.size(1.0)));
        self.maybe(0.2, "length_by", &mut p, |m| {
            json!(m.chance.one_of(&["dial", "stop", "indicator"]))
        });
        self.maybe(0.1, "parting", &mut p, |m| json!(m.size(3.0)));
        p
    }

    fn job(&mut self) -> Option<Value> {
        let bar = self.between(14.0, 80.0);
        let (skin, run_out) = match self.chance.one_in(0.2) {
            true => (self.between(0.05, 0.4), self.between(0.0, 0.3)),
            false => (0.0, 0.0),
        };
        let most = bar - run_out - 2.0 * skin;
        let count = self.chance.one_of(&[1, 1, 1, 2, 3, 4]);
        let (surfaces, mut long) = self.end(most, count)?;
        let mut part = json!({ "surfaces": surfaces });
        if self.chance.one_in(0.2) {
            let count = self.chance.one_of(&[0, 1, 2]);
            let (other, more) = self.end(most, count)?;
            long += more + self.between(1.0, 20.0);
            part["other_end"] = json!(other);
            part["overall_length"] = json!(self.size(long));
        }
        let stock_length = long + 18.0 + 0.7 * bar + self.between(0.0, 20.0);
        let mut stock = json!({ "diameter": self.size(bar), "length": self.size(stock_length) });
        if skin > 0.0 {
            stock["skin"] = json!(self.size(skin));
            stock["run_out"] = json!(self.size(run_out));
        }
        let corner = self.chance.one_of(&[0.2, 0.4, 0.8]);
        let mut tool = json!({
            "material": self.chance.one_of(&["high_speed_steel", "high_speed_steel", "carbide"]),
            "corner_radius": self.size(corner),
            "cutting_edge_angle": format!("{:.0} deg", self.chance.one_of(&[60.0, 75.0, 90.0, 93.0])),
        });
        self.maybe(0.5, "minor_cutting_edge_angle", &mut tool, |_| {
            json!("15 deg")
        });
        let material = self.chance.one_of(&[
            "11SMn30",
            "C45",
            "S235JR",
            "EN-GJL-250",
            "AW-6082",
            "CuZn39Pb3",
            "X5CrNi18-10",
        ]);
        let mut job = json!({ "lathe": self.lathe(), "tool": tool, "material": material, "stock": stock, "part": part,
            "preferences": self.preferences() });
        self.maybe(0.15, "holding", &mut job, |m| {
            json!(m.chance.one_of(&["chuck", "chuck_and_centre"]))
        });
        if skin == 0.0 && run_out == 0.0 {
            self.maybe(0.1, "zero_at", &mut job, |m| json!(m.size(bar)));
        }
        Some(job)
    }
}

/// Says what was wrong with which job.
macro_rules! holds {
    ($held:expr, $($what:tt)+) => {
        let held: bool = $held;
        if !held {
            return Err(format!($($what)+));
        }
    };
}

fn of(job: &Job, at: SurfaceAt) -> &Surface {
    match at.other_end() {
        false => &job.part().surfaces()[at.index()],
        true => &job.part().other_end()[at.index()],
    }
}

/// The mark of a cut in tenths, or ten times how many steps of a readout its size is short of none.
fn count(job: &Job, step: &Step) -> i64 {
    match step.reading {
        Some(reading) => 10 * reading.divisions().count() + i64::from(step.tenths.unwrap_or(0)),
        None => -10 * (step.diameter.mm() / per_mark(job)).round() as i64,
    }
}

/// What a mark takes off the diameter, from the dial's own figures.
fn per_mark(job: &Job) -> f64 {
    let dial = job.lathe().cross_slide().unwrap();
    match dial.reads() {
        DialReads::Diameter => dial.division().mm(),
        _ => 2.0 * dial.division().mm(),
    }
}

/// The law of Kienzle summed over slices of the edge, in N: nothing of the crate's own integrals.
///
/// Kienzle 1952, from memory: k_c1.1 h^(1 - m_c) for each millimetre of edge at chip thickness h in mm. The
/// share is what is asked for of the force on a slice that stands at this angle to the axis.
fn along_the_edge(asked: &Value, depth: f64, feed: f64, share: fn(f64) -> f64) -> f64 {
    const SLICES: u32 = 400;
    let material: turnwright::Material = serde_json::from_value(asked["material"].clone()).unwrap();
    let (k, exponent) = (
        material.specific_force().value.mpa(),
        material.exponent().value.value(),
    );
    let of = |field: &str| asked["tool"][field].as_str().unwrap();
    let corner: turnwright::CornerRadius = of("corner_radius").parse().unwrap();
    let angle: turnwright::CuttingEdgeAngle = of("cutting_edge_angle").parse().unwrap();
    let (corner, angle) = (corner.mm(), angle.degrees().to_radians());
    let on_arc = corner * (1.0 - angle.cos());
    let end = if depth < on_arc {
        (1.0 - depth / corner).acos()
    } else {
        angle
    };
    let slice = end / f64::from(SLICES);
    let arc: f64 = (0..SLICES)
        .map(|at| (f64::from(at) + 0.5) * slice)
        .map(|turned| share(turned) * corner * slice * (feed * turned.sin()).powf(1.0 - exponent))
        .sum();
    let straight = (depth - on_arc).max(0.0) / angle.sin();
    k * (arc + share(angle) * straight * (feed * angle.sin()).powf(1.0 - exponent))
}

/// Efficiency of a drive for which none is given: common practice, no source, 0.7 to 0.85.
const EFFICIENCY: f64 = 0.75;

fn efficiency(asked: &Value) -> f64 {
    match asked["lathe"]["efficiency"].as_str() {
        Some(given) => given.parse().unwrap(),
        None => EFFICIENCY,
    }
}

/// The share of its power that a drive gives at a speed: below its base speed the torque grows no more, and
/// P = M omega. Of two ranges the one that gives more.
fn at_this_speed(asked: &Value, n: f64) -> f64 {
    let rpm = |value: &Value| -> f64 {
        let text = value.as_str().unwrap();
        text.trim_end_matches(" rpm").parse().unwrap()
    };
    let lathe = &asked["lathe"];
    let share = |base: &Value| match base {
        Value::Null => 1.0,
        base => (n / rpm(base)).min(1.0),
    };
    match lathe["spindle_ranges"].as_object() {
        Some(ranges) => ranges
            .values()
            .filter(|of| rpm(&of["range"][0]) <= n && n <= rpm(&of["range"][1]))
            .map(|of| share(&of["constant_torque_below"]))
            .fold(0.0, f64::max),
        None => share(&lathe["constant_torque_below"]),
    }
}

/// A tool holder reaches this far to the left of its tip, in mm: judgement, no source.
const HOLDER: f64 = 10.0;
/// Share of its zone that the spring of a bar may take: judgement, no source.
const SPRING: f64 = 0.33;
/// Depth over feed: common practice, no source, about 4 to 10.
const SLENDER: f64 = 10.0;

/// What lathe, tool and asker allow, and the stops that speak of what was planned.
fn within_limits(job: &Job, asked: &Value, sheet: &Sheet) -> Result<(), String> {
    let most = &asked["preferences"]["largest_depth"];
    let most = most
        .as_str()
        .map(|text| text.parse::<turnwright::DepthOfCut>().unwrap());
    // By the spring that is reckoned in, a cut is deeper than the tip goes: hundredths.
    let corrected = asked["preferences"]["correct_for_spring"] == true;
    let reckoned = if corrected { 0.02 } else { 1e-9 };
    let (mut jaws, mut centre) = (f64::INFINITY, false);
    let mut before = job.stock().diameter().mm();
    for (at, step) in sheet.steps.iter().enumerate() {
        match step.kind {
            // A centre stands before the face from here on: nothing goes there, and the face is done.
            StepKind::Reclamp => centre = true,
            StepKind::Face => {
                holds!(!centre, "step {at} faces an end with a centre in it");
            }
            StepKind::ZeroZ => jaws = -printed(&step.text, "jaws at Z ", ")").unwrap(),
            StepKind::TurnRound => {
                before = job.stock().diameter().mm();
                centre = false;
            }
            StepKind::Measure if step.text.contains("at three places") => {
                let last = step.diameter.mm();
                let bound = printed(&step.text, "Below ", ": good already").unwrap();
                let again = printed(&step.text, "Above ", ": take").unwrap();
                holds!(
                    bound <= last && last < again,
                    "{last} mm is expected, and its stop takes {bound} to {again}"
                );
            }
            _ => {}
        }
        // Positions are printed to hundredths of a millimetre or thousandths of an inch.
        if let Some(z) = step.z {
            holds!(
                -z.mm() + HOLDER <= jaws + 0.03,
                "step {at}: {z} with jaws at {jaws} mm"
            );
            holds!(
                !centre || z.mm() <= 0.0,
                "step {at}: {z} with a centre at the face"
            );
        }
        let (Some(depth), Some(n)) = (step.depth_of_cut, step.spindle_speed) else {
            continue;
        };
        holds!(
            most.is_none_or(|most| depth.mm() <= most.mm() + reckoned),
            "deeper than {most:?}: {depth}"
        );
        let feed = step.feed.unwrap().mm_per_rev();
        holds!(
            depth.mm() <= SLENDER * feed + reckoned,
            "a chip of {depth} by {feed} mm"
        );
        if let Some(power) = job.lathe().power() {
            let speed = std::f64::consts::PI * (before - depth.mm()) * n.rpm() / 60_000.0;
            let needed = along_the_edge(asked, depth.mm(), feed, |_| 1.0) * speed / 1000.0;
            let given = efficiency(asked) * power.kw() * at_this_speed(asked, n.rpm());
            // Four hundred slices are good to a thousandth.
            holds!(
                needed <= given * 1.001,
                "cut {at} needs {needed} kW of {given} kW at {n}"
            );
        }
        before = step.diameter.mm();
    }
    // The specific force of one bar is up to 30 % off that of another: common practice, no source.
    let said = |code: &str| sheet.cautions.iter().any(|c| c.code() == code);
    if let (Some(spring), false) = (
        spring::largest(job, asked, sheet),
        said("support_not_enough"),
    ) {
        holds!(
            spring <= 1.3 * SPRING,
            "the bar springs by {spring} of a zone, and nothing is said of it"
        );
    }
    Ok(())
}

/// Whether a number is written with more decimals than sizes are rounded to, nine.
fn too_long(text: &str) -> bool {
    let mut decimals = text.split('.').skip(1);
    decimals.any(|rest| rest.bytes().take_while(u8::is_ascii_digit).count() > 9)
}

/// From where to where the length of the surface turned before is good, in mm, as a step says it.
fn said_of_the_length_before(text: &str, units: Units) -> Result<[f64; 2], String> {
    let wanting = || format!("no length of the surface before in: {text}");
    let (_, clause) = text.split_once("Length of ").ok_or_else(wanting)?;
    let (_, limits) = clause.split_once("good from ").ok_or_else(wanting)?;
    let (low, high) = limits.split_once(" to ").ok_or_else(wanting)?;
    let mm = |text: &str| {
        let number: Option<f64> = text.split(' ').next().and_then(|n| n.parse().ok());
        let one = match units {
            Units::Metric => 1.0,
            Units::Inch => 25.4,
        };
        number.map(|n| n * one).ok_or_else(wanting)
    };
    Ok([mm(low)?, mm(high)?])
}

/// Every promise of a sheet.
fn kept(job: &Job, asked: &Value, sheet: &Sheet) -> Result<(), String> {
    let lathe = job.lathe();
    let marks_per_turn = i64::from(lathe.cross_slide().unwrap().divisions_per_turn().count());
    for step in &sheet.steps {
        if let Some(n) = step.spindle_speed {
            let there = match lathe.spindle() {
                Spindle::Steps(steps) => steps.contains(&n),
                Spindle::Ranges(ranges) => ranges.iter().any(|r| n >= r.low() && n <= r.high()),
                _ => false,
            };
            holds!(there, "{n} is not to be set");
            holds!(
                lathe.speed_cap().is_none_or(|cap| n <= cap),
                "{n} is above the cap"
            );
        }
        if let Some(feed) = step.feed {
            let there = lathe.feeds().is_empty() || lathe.feeds().contains(&feed);
            holds!(there, "{feed} is no feed of the lathe");
        }
        if let Some(reading) = step.reading {
            let n = i64::from(match reading.slide() {
                turnwright::Slide::CrossSlide => marks_per_turn as u32,
                _ => lathe.carriage().unwrap().divisions_per_turn().count(),
            });
            let marks = reading.turns() * n + i64::from(reading.mark());
            holds!(
                marks == reading.divisions().count() && i64::from(reading.mark()) < n,
                "{reading} is no reading"
            );
        }
    }
    let mut by_surface: Vec<(SurfaceAt, Vec<&Step>)> = Vec::new();
    for step in sheet.cuts() {
        let at = step.surface.unwrap();
        match by_surface.last_mut() {
            Some((last, cuts)) if *last == at => cuts.push(step),
            _ => by_surface.push((at, vec![step])),
        }
    }
    let corner = serde_json::to_value(job).unwrap()["tool"]["corner_radius"]
        .as_str()
        .unwrap()
        .parse::<turnwright::CornerRadius>()
        .unwrap();
    let touched = job.stock().diameter().mm() + job.stock().run_out().map_or(0.0, |r| r.mm());
    // By the spring that is reckoned in, a first cut is less deep than the tip goes: hundredths.
    let corrected = asked["preferences"]["correct_for_spring"] == true;
    let reckoned = if corrected { 0.05 } else { 1e-9 };
    let (mut stands, mut other_end) = (touched, false);
    let mut before_mark = None;
    for (at, cuts) in &by_surface {
        if at.other_end() && !other_end {
            (stands, other_end, before_mark) = (touched, true, None);
        }
        let surface = of(job, *at);
        let [.., first, last] = cuts.as_slice() else {
            return Err(format!("{at} in fewer than two cuts"));
        };
        holds!(
            first.kind == StepKind::FinishCut && last.kind == StepKind::FinishCut,
            "{at} is not finished in two cuts"
        );
        let alike = first.spindle_speed == last.spindle_speed && first.feed == last.feed;
        holds!(alike, "the last two cuts of {at} differ");
        let depth = |step: &Step| step.depth_of_cut.unwrap().mm();
        // The first cut of all may be the first finishing one, and less deep by the spring that is reckoned in.
        let only_two = cuts.len() == 2 && corrected;
        holds!(
            only_two || (depth(first) - depth(last)).abs() < 1e-8,
            "{at}: {} and {}",
            depth(first),
            depth(last)
        );
        holds!(
            surface.limits().contains(last.diameter),
            "{at} ends at {}",
            last.diameter
        );
        let mut diameter = stands;
        for cut in cuts {
            holds!(cut.diameter.mm() < diameter, "{at}: a diameter grows");
            // common practice, no source: a planned cut at about a quarter of the corner radius or more.
            holds!(
                depth(cut) >= 0.25 * corner.mm() - reckoned,
                "{at}: a cut of {}",
                depth(cut)
            );
            let taken = 2.0 * depth(cut);
            holds!(
                (diameter - taken - cut.diameter.mm()).abs() < 1e-8,
                "{at}: depths do not add up"
            );
            diameter = cut.diameter.mm();
        }
        if lathe.cross_slide().unwrap().ring() == Ring::Readout {
            for cut in cuts {
                let steps = cut.diameter.mm() / per_mark(job);
                holds!(cut.reading.is_none(), "{at}: a mark on a readout");
                // Sizes are rounded to 1e-9 mm.
                holds!(
                    (steps - steps.round()).abs() < 1e-5,
                    "{at}: {} is never shown",
                    cut.diameter
                );
            }
        }
        for pair in cuts.windows(2) {
            holds!(
                count(job, pair[1]) > count(job, pair[0]),
                "{at}: a mark not come in to from outside"
            );
            let by_marks =
                (count(job, pair[1]) - count(job, pair[0])) as f64 * per_mark(job) / 10.0;
            let by_size = pair[0].diameter.mm() - pair[1].diameter.mm();
            holds!(
                (by_marks - by_size).abs() < 1e-8,
                "{at}: marks and sizes part"
            );
        }
        if lathe.cross_slide().unwrap().ring() == Ring::Fixed
            && let Some(before) = before_mark
        {
            holds!(
                count(job, cuts[0]) > before,
                "{at}: a fixed ring that goes back"
            );
        }
        before_mark = Some(count(job, last));
        stands = last.diameter.mm();
        let surfaces = match at.other_end() {
            false => job.part().surfaces(),
            true => job.part().other_end(),
        };
        let reach: f64 = surfaces[..=at.index()]
            .iter()
            .map(|s| s.length().mm())
            .sum();
        for cut in cuts {
            // Half a mark of the coarsest carriage dial lies within the lengths' tolerances.
            holds!(
                cut.z.is_none_or(|z| z.mm() >= -(reach + 0.5)),
                "{at}: a cut to {:?} past {reach}",
                cut.z
            );
        }
        let skin = job.stock().skin().map_or(0.0, |s| s.mm())
            + job.stock().run_out().map_or(0.0, |r| r.mm());
        if at.index() + 1 == surfaces.len() {
            holds!(
                depth(cuts[0]) >= skin - reckoned,
                "the first cut stays in the skin"
            );
        }
    }
    let all = job.part().surfaces().len() + job.part().other_end().len();
    holds!(
        by_surface.len() == all,
        "{} of {all} surfaces are turned",
        by_surface.len()
    );
    let e = &sheet.expected;
    let sum = e.good.value() + e.rework.value() + e.scrap.value();
    holds!((sum - 1.0).abs() < 1e-12, "chances sum to {sum}");
    let short = e.good.value() < 0.95 && e.surfaces.is_empty();
    let said = sheet.cautions.iter().any(|c| c.code() == "out_of_reach");
    holds!(!short || said, "out of reach in silence");
    if let [plain, quick] = e.ways.as_slice() {
        holds!(
            (plain.way, quick.way) == (Way::Readable, Way::LeastTime),
            "ways in another order"
        );
        // Sums of the same terms in another order.
        holds!(
            quick.time.seconds() <= plain.time.seconds() * (1.0 + 1e-9),
            "{} is not the least time",
            quick.time
        );
    }
    for step in &sheet.steps {
        let because = step.because.as_deref().unwrap_or_default();
        holds!(
            !too_long(&step.text) && !too_long(because),
            "{}\n{because}",
            step.text
        );
    }
    // Nobody cuts at a speed that no step has told to set.
    let (mut set, mut said) = (None, String::new());
    for step in &sheet.steps {
        said.push_str(&step.text);
        let Some(n) = step.spindle_speed else {
            continue;
        };
        let told = said.contains(&format!(": set {}", n.people(sheet.units())));
        holds!(set == Some(n) || told, "{n} is not set: {said}");
        set = Some(n);
        said.clear();
    }
    // A length between two shoulders shows when the second of them is turned.
    let mut before: Option<(SurfaceAt, &Surface)> = None;
    // Half of the last digit said, a thousandth of a millimetre or a ten-thousandth of an inch, and
    // what sums and the change of units round.
    let half_a_digit = match sheet.units() {
        Units::Metric => 0.0005 + 1e-9,
        Units::Inch => 0.00127 + 1e-9,
    };
    for step in &sheet.steps {
        let (StepKind::Inspect, Some(at)) = (step.kind, step.surface) else {
            continue;
        };
        if let Some((_, ended)) = before.filter(|(of, _)| of.other_end() == at.other_end()) {
            let said = said_of_the_length_before(&step.text, sheet.units())?;
            let (nominal, medium) = (ended.length().mm(), GeneralClass::Medium);
            let allowed = linear(ended.length(), medium).map_err(|e| e.to_string())?;
            for (said, sign) in said.into_iter().zip([-1.0, 1.0]) {
                let limit = nominal + sign * allowed.value.mm();
                holds!(
                    (said - limit).abs() <= half_a_digit,
                    "{said} for {limit}: {}",
                    step.text
                );
            }
        }
        before = Some((at, of(job, at)));
    }
    // Words run on by single spaces: what is printed is broken anew, so only the parts show it.
    let parts = [&sheet.heading, &sheet.kit, &sheet.dials, &sheet.prove];
    let steps = sheet
        .steps
        .iter()
        .flat_map(|s| s.because.iter().chain([&s.text]));
    for text in parts.into_iter().flatten().chain(steps) {
        holds!(!text.contains("  "), "two spaces in {text:?}");
    }
    for text in [sheet.to_string(), sheet.short()] {
        for line in text.lines() {
            holds!(
                line.chars().count() <= 100,
                "a line of {}: {line}",
                line.chars().count()
            );
            holds!(!line.contains("NaN") && !line.contains("inf "), "{line}");
        }
    }
    let units = if asked["stock"]["diameter"].as_str().unwrap().ends_with("in") {
        " mm"
    } else {
        " in."
    };
    let heading = sheet.heading.join(" ");
    holds!(!heading.contains(units), "another unit in {heading}");
    Ok(())
}

/// What a measurement that was off brought about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Followed {
    NoStop,
    Sheet,
    NoSheet,
}

/// What a sheet promises of a measurement at a stop chosen by chance.
fn measured(job: &Job, sheet: &Sheet, chance: &mut Chance) -> Result<Followed, String> {
    let stops: Vec<usize> = (0..sheet.steps.len())
        .filter(|at| sheet.steps[*at].kind == StepKind::Measure)
        .collect();
    if stops.is_empty() {
        return Ok(Followed::NoStop);
    }
    let at = chance.one_of(&stops);
    let step = &sheet.steps[at];
    let ahead = |sheet: &Sheet| -> Vec<(i64, f64)> {
        let last = sheet
            .steps
            .iter()
            .rposition(|s| s.kind == StepKind::Adjust)
            .unwrap_or(at);
        let of = sheet.steps[last..]
            .iter()
            .filter(|s| s.depth_of_cut.is_some() && s.surface == step.surface);
        of.map(|s| (count(job, s), s.diameter.mm())).collect()
    };
    let old = ahead(sheet);
    let tell = |mm: f64| {
        sheet
            .after(
                at,
                &[SizeAt::anywhere(Diameter::from_mm(mm).unwrap())],
                None,
            )
            .map_err(|e| format!("step {at}, {mm} mm measured: {e}"))
    };
    let same = tell(step.diameter.mm())?;
    let plan = same
        .plan
        .as_ref()
        .ok_or_else(|| format!("as expected, and no plan: {:?}", same.why_no_plan))?;
    holds!(
        (same.shift, same.shift_tenths) == (0, 0) && ahead(plan) == old,
        "as expected, and other readings"
    );
    // Whole marks and tenths between them.
    let off = match chance.one_in(0.5) {
        true => chance.one_of(&[-2.0, -1.0, 1.0, 2.0]),
        false => chance.between(-20.0, 20.0).round() / 10.0,
    };
    let moved = tell(step.diameter.mm() + off * per_mark(job))?;
    let Some(plan) = &moved.plan else {
        holds!(
            moved.why_no_plan.is_some_and(|why| !why.is_empty()),
            "no plan and no reason"
        );
        return Ok(Followed::NoSheet);
    };
    let new = ahead(plan);
    let (last, end) = (old[old.len() - 1], new[new.len() - 1]);
    if let Some(ring) = moved.ring_to {
        let stood = sheet.steps[..at].iter().rfind(|s| s.depth_of_cut.is_some());
        let wanted = count(job, stood.unwrap()) as f64 / 10.0 - off;
        holds!(
            (ring - wanted).abs() < 1e-6,
            "{off} marks off, the ring to {ring}"
        );
    }
    // Metal that a slip left on is taken along by the next cut, to the size that was planned.
    let tenths = 10 * moved.shift + moved.shift_tenths;
    let left_on = tenths == 0 && off > 0.0 && last == end;
    let set = moved.ring_to.is_some() || moved.readout_to.is_some();
    if moved.repeat || set || left_on {
        holds!(last == end, "the readings were to stay: {}", moved.text);
    } else {
        // Another mark next to it may serve a fixed ring better.
        let by = tenths as f64 / 10.0;
        holds!(
            (by - off).abs() < 1.0 + 1e-9,
            "{off} marks off moved by {by}"
        );
        holds!(
            end.0 - last.0 == tenths,
            "the last mark moved by {} tenths",
            end.0 - last.0
        );
        let size = (off - by) * per_mark(job);
        holds!(
            (end.1 - last.1 - size).abs() < 1e-8,
            "a size of {} for {}",
            end.1,
            last.1
        );
    }
    holds!(
        new.windows(2)
            .all(|two| two[1].0 > two[0].0 && two[1].1 < two[0].1),
        "readings that go back"
    );
    Ok(Followed::Sheet)
}

/// Plans the jobs of one seed; how many were planned, and what their measurements brought about.
fn run(seed: u64) -> (usize, usize, [usize; 3], BTreeMap<String, usize>) {
    let mut chance = Chance::new(seed);
    let mut followed = [0; 3];
    let (mut planned, mut asked) = (0, 0);
    let mut refused: BTreeMap<String, usize> = BTreeMap::new();
    while asked < JOBS * times() {
        let inch = chance.one_in(0.5);
        let mut made = Made {
            chance: &mut chance,
            inch,
        };
        let Some(question) = made.job() else {
            continue;
        };
        asked += 1;
        let units = if inch { Units::Inch } else { Units::Metric };
        let job: Result<Job, _> = serde_json::from_value(question.clone());
        let Ok(job) = job else {
            panic!("{} is no job: {:?}", question, job.err());
        };
        // It takes longer than to plan the job.
        if asked % 200 == 0 {
            let document = serde_json::json!({ "plan": &question });
            crate::schemas::accepts("plan", &document);
        }
        match job.plan(units) {
            Ok(sheet) => {
                planned += 1;
                let all = kept(&job, &question, &sheet)
                    .and_then(|()| within_limits(&job, &question, &sheet))
                    .and_then(|()| measured(&job, &sheet, &mut chance));
                match all {
                    Ok(what) => followed[what as usize] += 1,
                    Err(what) => panic!("{what}\n{question}\n{sheet}"),
                }
            }
            Err(error) => {
                assert!(error.kind() != ErrorKind::Internal, "{error}\n{question}");
                assert!(
                    !error.field().is_empty() && !error.remedy().is_empty(),
                    "{error}"
                );
                // What is refused of an inch job still speaks of millimetres, digits and all.
                assert!(inch || !too_long(&error.to_string()), "{error}\n{question}");
                *refused.entry(error.field().to_owned()).or_default() += 1;
            }
        }
    }
    (planned, asked, followed, refused)
}

#[test]
fn twenty_thousand_random_jobs_are_refused_by_their_field_or_keep_every_promise() {
    let threads: Vec<_> = SEEDS
        .map(|seed| std::thread::spawn(move || run(seed)))
        .into();
    let (mut planned, mut asked, mut followed) = (0, 0, [0; 3]);
    let mut refused: BTreeMap<String, usize> = BTreeMap::new();
    for thread in threads {
        let (p, a, f, r) = thread.join().unwrap();
        (planned, asked) = (planned + p, asked + a);
        for (all, of_one) in followed.iter_mut().zip(f) {
            *all += of_one;
        }
        for (field, count) in r {
            *refused.entry(field).or_default() += count;
        }
    }
    println!("{planned} of {asked} planned; refused by {refused:?}");
    let [no_stop, sheet, no_sheet] = followed;
    println!("measured off: {sheet} with a sheet, {no_sheet} without; {no_stop} have no stop");
    assert!(
        planned > 20_000 * times() && planned as f64 > 0.6 * asked as f64,
        "{planned} of {asked}: {refused:?}"
    );
    assert!(sheet > planned / 2, "{followed:?} of {planned}");
}
