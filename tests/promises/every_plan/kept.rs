//! The promises of a sheet.

use serde_json::Value;
use turnwright::plan::{Job, Sheet, Step, StepKind, SurfaceAt, Way};
use turnwright::shop::dial::Ring;
use turnwright::standards::general_tolerance::{GeneralClass, linear};
use turnwright::{Quantity, Spindle, Surface, Units};

use super::{count, of, per_mark, too_long};

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
pub fn kept(job: &Job, asked: &Value, sheet: &Sheet) -> Result<(), String> {
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
            Some((last, cuts)) if *last == at => {
                cuts.push(step);
                continue;
            }
            _ => {}
        }
        // Where the tool is changed, every surface of an end is roughed before one is finished.
        match by_surface.iter_mut().find(|(of, _)| *of == at) {
            Some((_, cuts)) => {
                holds!(
                    job.roughing_tool().is_some() && step.kind == StepKind::FinishCut,
                    "{at} is cut twice"
                );
                cuts.push(step);
            }
            None => by_surface.push((at, vec![step])),
        }
    }
    let finishing = job.tool().corner_radius();
    let corner_of = |step: &Step| match (job.roughing_tool(), step.kind) {
        (Some(tool), StepKind::FirstCut | StepKind::RoughCut) => tool.corner_radius(),
        _ => finishing,
    };
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
                depth(cut) >= 0.25 * corner_of(cut).mm() - reckoned,
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
        let left = match job.roughing_tool() {
            None => last,
            Some(_) => cuts[cuts.len() - 3],
        };
        before_mark = Some(count(job, left));
        stands = left.diameter.mm();
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
    let short = e.good.value() < 0.95;
    let wanted = match e.surfaces.is_empty() {
        true => "out_of_reach",
        false => "seldom_together",
    };
    let said = sheet.cautions.iter().any(|c| c.code() == wanted);
    holds!(short == said, "good in {}, and {wanted}: {said}", e.good);
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
    // Where the edge runs ahead of the tip, a knife tool makes the shoulders, and they are measured then.
    let slanted = [Some(job.tool()), job.roughing_tool()]
        .iter()
        .flatten()
        .any(|tool| tool.cutting_edge_angle().degrees() < 90.0);
    for step in &sheet.steps {
        let Some(at) = step.surface else {
            continue;
        };
        let measured = match slanted {
            true => step.text.starts_with("Square the shoulder of"),
            false => step.kind == StepKind::Inspect,
        };
        if !measured {
            continue;
        }
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
