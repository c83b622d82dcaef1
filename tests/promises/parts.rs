//! Parts of several diameters, both ends, bars with a skin: every surface in its zone, in a sound order.

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use turnwright::plan::{Job, Sheet, Step, StepKind, SurfaceAt};
use turnwright::{
    Diameter, Lathe, Limits, Part, RunOut, SkinThickness, Stock, Surface, Tool, Units, WorkLength,
};

fn surface(diameter: f64, zone: f64, length: f64) -> Option<Surface> {
    let largest = Diameter::from_mm(diameter).ok()?;
    let limits = Limits::new(Diameter::from_mm(diameter - zone).ok()?, largest).ok()?;
    Surface::new(largest, limits, WorkLength::from_mm(length).ok()?).ok()
}

/// Surfaces that rise from the face inwards, below `most`.
fn end(most: f64, steps: &[(f64, f64, f64)]) -> Option<Vec<Surface>> {
    let mut diameter = most;
    let mut surfaces: Vec<Surface> = Vec::new();
    for (metal, zone, length) in steps {
        diameter -= metal;
        if diameter < 5.0 {
            return None;
        }
        surfaces.push(surface(diameter, *zone, *length)?);
    }
    surfaces.reverse();
    Some(surfaces)
}

fn steps(n: std::ops::RangeInclusive<usize>) -> impl Strategy<Value = Vec<(f64, f64, f64)>> {
    prop::collection::vec((0.8..9.0_f64, 0.02..0.3_f64, 6.0..45.0_f64), n)
}

pub fn job() -> impl Strategy<Value = Job> {
    let bar = (
        14.0..90.0_f64,
        prop::option::of((0.0..0.8_f64, 0.0..0.5_f64)),
    );
    (
        any::<Lathe>(),
        any::<Tool>(),
        bar,
        steps(1..=4),
        prop::option::of(steps(0..=2)),
        0.5..40.0_f64,
    )
        .prop_filter_map(
            "a part that comes out of its bar",
            |(lathe, tool, (d, rough), first, other, spare)| {
                let (skin, run_out) = rough.unwrap_or((0.0, 0.0));
                let most = d - run_out - 2.0 * skin;
                let first = end(most, &first)?;
                let long =
                    |surfaces: &[Surface]| surfaces.iter().map(|s| s.length().mm()).sum::<f64>();
                let mut whole = long(&first) + 16.0 + 0.4 * d + spare;
                let mut part = Part::of_surfaces(first.clone()).ok()?;
                if let Some(other) = other {
                    let other = end(most, &other)?;
                    let overall = long(&first) + long(&other) + spare;
                    whole = (overall + 2.0).max(whole);
                    part = part
                        .with_other_end(other, WorkLength::from_mm(overall).ok()?)
                        .ok()?;
                }
                let mut stock =
                    Stock::new(Diameter::from_mm(d).ok()?, WorkLength::from_mm(whole).ok()?);
                if rough.is_some() {
                    stock = stock
                        .with_skin(SkinThickness::from_mm(skin).ok()?)
                        .with_run_out(RunOut::from_mm(run_out).ok()?);
                }
                let steel = turnwright::Material::named("11SMn30").ok()?;
                Some(Job::new(lathe, tool, steel, stock, part))
            },
        )
}

fn on_plans(check: impl Fn(&Job, &Sheet) -> Result<(), TestCaseError>) {
    let mut runner = TestRunner::new(crate::jobs::config(600));
    let (planned, both) = (std::cell::Cell::new(0), std::cell::Cell::new(0));
    runner
        .run(&job(), |job| match job.plan(Units::Metric) {
            Ok(sheet) => {
                planned.set(planned.get() + 1);
                if sheet.support.len() > 1 {
                    both.set(both.get() + 1);
                }
                check(&job, &sheet)
            }
            Err(error) => {
                prop_assert!(
                    !error.field().is_empty() && !error.remedy().is_empty(),
                    "{error}"
                );
                prop_assert_ne!(error.kind(), turnwright::ErrorKind::Internal, "{}", error);
                Ok(())
            }
        })
        .unwrap();
    assert!(planned.get() > 100, "only {} were planned", planned.get());
    assert!(both.get() > 15, "only {} at both ends", both.get());
}

/// The cuts of each surface, in the order in which they come.
fn by_surface(sheet: &Sheet) -> Vec<(SurfaceAt, Vec<&Step>)> {
    let mut found: Vec<(SurfaceAt, Vec<&Step>)> = Vec::new();
    for step in sheet.cuts() {
        let at = step.surface.unwrap();
        match found.last_mut() {
            Some((last, cuts)) if *last == at => cuts.push(step),
            _ => found.push((at, vec![step])),
        }
    }
    found
}

fn of(job: &Job, at: SurfaceAt) -> &Surface {
    match at.other_end() {
        false => &job.part().surfaces()[at.index()],
        true => &job.part().other_end()[at.index()],
    }
}

#[test]
fn every_surface_is_turned_once_the_largest_of_each_end_first() {
    on_plans(|job, sheet| {
        let order: Vec<SurfaceAt> = by_surface(sheet).iter().map(|(at, _)| *at).collect();
        let first = (0..job.part().surfaces().len()).rev();
        let other = (0..job.part().other_end().len()).rev();
        let wanted: Vec<SurfaceAt> = first
            .map(|index| SurfaceAt::new(false, index))
            .chain(other.map(|index| SurfaceAt::new(true, index)))
            .collect();
        prop_assert_eq!(order, wanted);
        Ok(())
    });
}

#[test]
fn diameters_never_grow_and_every_surface_ends_in_its_zone() {
    on_plans(|job, sheet| {
        for (at, cuts) in by_surface(sheet) {
            for pair in cuts.windows(2) {
                prop_assert!(pair[1].diameter < pair[0].diameter);
                let marks = |step: &Step| step.reading.unwrap().divisions().count();
                prop_assert!(marks(pair[1]) > marks(pair[0]), "every approach goes in");
            }
            let last = cuts[cuts.len() - 1];
            prop_assert!(of(job, at).limits().contains(last.diameter), "{at}");
            let [.., before, last] = cuts.as_slice() else {
                return Err(TestCaseError::fail("fewer than two cuts"));
            };
            prop_assert_eq!(before.kind, StepKind::FinishCut);
            prop_assert_eq!(before.spindle_speed, last.spindle_speed);
            prop_assert_eq!(before.feed, last.feed);
        }
        Ok(())
    });
}

#[test]
fn depths_of_all_surfaces_sum_to_the_metal_there_is() {
    on_plans(|job, sheet| {
        let touched = job.stock().diameter().mm() + job.stock().run_out().map_or(0.0, |r| r.mm());
        let mut stands = touched;
        let mut end = false;
        for (at, cuts) in by_surface(sheet) {
            if at.other_end() && !end {
                (stands, end) = (touched, true);
            }
            let taken: f64 = cuts
                .iter()
                .map(|s| 2.0 * s.depth_of_cut.unwrap().mm())
                .sum();
            let left = cuts[cuts.len() - 1].diameter.mm();
            // Each depth is rounded to 1e-9 mm.
            prop_assert!(
                (stands - taken - left).abs() < 1e-9 * 80.0,
                "{at}: {stands} {taken} {left}"
            );
            stands = left;
        }
        Ok(())
    });
}

#[test]
fn the_first_cut_goes_under_the_skin_all_round() {
    on_plans(|job, sheet| {
        let skin = job.stock().skin().map_or(0.0, |s| s.mm());
        let run_out = job.stock().run_out().map_or(0.0, |r| r.mm());
        for (at, cuts) in by_surface(sheet) {
            let innermost = match at.other_end() {
                false => job.part().surfaces().len() - 1,
                true => job.part().other_end().len() - 1,
            };
            if at.index() == innermost {
                let depth = cuts[0].depth_of_cut.unwrap().mm();
                prop_assert!(
                    depth >= skin + run_out - 1e-9,
                    "{depth} for {skin} and {run_out}"
                );
            }
        }
        Ok(())
    });
}

#[test]
fn no_cut_goes_past_its_shoulder_and_shoulders_keep_their_lengths() {
    on_plans(|job, sheet| {
        let mut reached = std::collections::HashMap::new();
        for step in &sheet.steps {
            let (Some(at), Some(z)) = (step.surface, step.z) else {
                continue;
            };
            let surfaces = match at.other_end() {
                false => job.part().surfaces(),
                true => job.part().other_end(),
            };
            let reach: f64 = surfaces[..=at.index()]
                .iter()
                .map(|s| s.length().mm())
                .sum();
            // Half a mark of the coarsest carriage dial among the lathes lies within their tolerances.
            let longest = of(job, at)
                .length_limits()
                .map_or(0.5, |l| l.longest().mm() - of(job, at).length().mm());
            prop_assert!(z.mm() >= -(reach + longest), "{at} {} {reach}", z.mm());
            // A knife tool leaves nothing over, and its edge does not run ahead.
            if step.text.starts_with("Square the shoulder of") {
                continue;
            }
            // An edge below 90 deg runs ahead of its tip, by as much as the metal beyond the shoulder is thicker.
            let beyond = surfaces.get(at.index() + 1);
            let beyond = beyond
                .map_or(job.stock().diameter(), Surface::diameter)
                .mm();
            let slope = job.tool().cutting_edge_angle().degrees().to_radians().tan();
            if slope > 0.0 && job.tool().cutting_edge_angle().degrees() < 90.0 {
                let ahead = 0.5 * (beyond - step.diameter.mm()) / slope;
                prop_assert!(
                    z.mm() - ahead >= -(reach + longest),
                    "{at} {} {ahead} {reach}",
                    z.mm()
                );
            }
            if step.kind == StepKind::Shoulder {
                reached.insert(at, -z.mm());
            }
        }
        prop_assert_eq!(
            reached.len(),
            job.part().surfaces().len() + job.part().other_end().len()
        );
        Ok(())
    });
}

#[test]
fn the_chances_of_all_surfaces_together_add_up() {
    on_plans(|_, sheet| {
        let e = &sheet.expected;
        // Three roundings a surface.
        let sum = e.good.value() + e.rework.value() + e.scrap.value();
        prop_assert!((sum - 1.0).abs() < 1e-14, "{sum}");
        if !e.surfaces.is_empty() {
            let product: f64 = e.surfaces.iter().map(|s| s.good.value()).product();
            prop_assert!((e.good.value() - product).abs() < 1e-14);
            prop_assert!(e.surfaces.iter().all(|s| s.good.value() >= e.good.value()));
            prop_assert_eq!(e.surfaces.len(), by_surface(sheet).len());
        }
        Ok(())
    });
}

#[test]
fn measuring_stops_have_names_of_their_own() {
    on_plans(|_, sheet| {
        let stops = sheet.steps.iter().filter(|s| s.kind == StepKind::Measure);
        for (at, stop) in stops.enumerate() {
            let name = format!("M{}", at + 1);
            prop_assert!(
                stop.text.contains(&format!("Measure {name} ")),
                "{name}: {}",
                stop.text
            );
        }
        Ok(())
    });
}

#[test]
fn a_sheet_fits_its_columns_and_its_job_plans_the_same_again() {
    on_plans(|_, sheet| {
        let text = sheet.to_string();
        prop_assert!(text.lines().all(|line| line.chars().count() <= 100));
        let again = sheet.job.plan(Units::Metric);
        prop_assert_eq!(again.map(|s| s.to_string()).ok(), Some(text));
        Ok(())
    });
}

#[test]
fn the_second_face_takes_no_more_than_a_saw_leaves() {
    on_plans(|_, sheet| {
        for step in sheet.steps.iter().filter(|s| s.kind == StepKind::Face) {
            let Some((_, rest)) = step.text.split_once("about ") else {
                continue;
            };
            let Some((taken, _)) = rest.split_once(" mm in all") else {
                continue;
            };
            // Five millimetres are worth a saw; a face takes two at the most.
            prop_assert!(
                taken.parse::<f64>().is_ok_and(|mm| mm <= 7.0),
                "{}",
                step.text
            );
        }
        Ok(())
    });
}

/// An invented pin with two ends, from a bar of this length, with a blade in the kit or without.
fn two_ends(bar: &str, blade: Option<&str>) -> Sheet {
    let mut job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    job["stock"]["length"] = bar.into();
    if let Some(blade) = blade {
        let mut preferences = toml::Table::new();
        preferences.insert(String::from("parting"), blade.into());
        job.insert(String::from("preferences"), preferences.into());
    }
    let question = serde_json::json!({ "plan": job }).to_string();
    let question = turnwright::document::plan::Question::from_text(&question).unwrap();
    question.answer().unwrap()
}

#[test]
fn a_bar_too_long_is_parted_or_sawn_off_before_the_part_is_turned_round() {
    let at = |sheet: &Sheet, kind: StepKind| sheet.steps.iter().position(|s| s.kind == kind);
    let long = two_ends("400 mm", Some("3 mm"));
    let (parted, turned) = (at(&long, StepKind::PartOff), at(&long, StepKind::TurnRound));
    assert!(parted.is_some() && parted < turned);
    let overall = long.job.part().overall_length().unwrap().mm();
    let text = &long.steps[parted.unwrap()].text;
    let (_, rest) = text.split_once("which leaves ").unwrap();
    let left: f64 = rest.split_once(" mm").unwrap().0.parse().unwrap();
    assert!(left > overall && left <= overall + 2.0, "{text}");
    assert!(
        long.kit
            .iter()
            .any(|tool| tool.contains("a parting tool, 3.00 mm wide"))
    );

    let sawn = two_ends("400 mm", None);
    assert_eq!(at(&sawn, StepKind::PartOff), None);
    let turn = &sawn.steps[at(&sawn, StepKind::TurnRound).unwrap()].text;
    assert!(turn.contains(&format!("saw it to {left:.2} mm")), "{turn}");
    assert!(sawn.cautions.iter().any(|c| c.code() == "sawn_off"));

    // With nothing to part off the blade stays away, and the sheet says so.
    let enough = format!("{} mm", overall + 3.0);
    let whole = two_ends(&enough, Some("3 mm"));
    assert_eq!(at(&whole, StepKind::PartOff), None);
    assert!(!whole.kit.iter().any(|tool| tool.contains("parting")));
    assert!(
        whole
            .cautions
            .iter()
            .any(|c| c.code() == "nothing_to_part_off")
    );
}

#[test]
fn a_blade_is_brought_to_its_place_by_the_dial_and_runs_at_half_the_speed_of_steel() {
    let job = two_ends("400 mm", Some("3 mm")).job;
    let sheet = job.plan(Units::Metric).unwrap();
    let part = sheet
        .steps
        .iter()
        .find(|s| s.kind == StepKind::PartOff)
        .unwrap();
    let d = job.stock().diameter().mm();
    let band = job
        .material()
        .speed_band(turnwright::ToolMaterial::HighSpeedSteel)
        .unwrap()
        .value;
    let speed = part.spindle_speed.unwrap().rpm() * std::f64::consts::PI * d / 1000.0;
    // Half the middle of the band for high-speed steel, common practice, no source.
    assert!(
        speed <= 0.5 * band.middle().m_per_min() * (1.0 + 1e-9),
        "{speed}"
    );
    // The left side touches the face: the way is the part and the blade.
    let (_, rest) = part.text.split_once("which leaves ").unwrap();
    let left: f64 = rest.split_once(" mm").unwrap().0.parse().unwrap();
    let (_, rest) = part.text.split_once("to Z -").unwrap();
    let along: f64 = rest.split_once(" mm").unwrap().0.parse().unwrap();
    // To the nearest mark of the carriage.
    let mark = job.lathe().carriage().unwrap().division().mm();
    assert!(
        (along - left - 3.0).abs() <= 0.5 * mark + 0.005,
        "{}",
        part.text
    );
}

#[test]
fn a_chamfer_is_no_larger_than_its_step() {
    let mut job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    let surfaces = |leg: &str| {
        toml::Value::Array(
            [("24 mm", "1 mm"), ("26 mm", leg)]
                .map(|(diameter, leg)| {
                    let mut surface = toml::Table::new();
                    surface.insert(String::from("diameter"), diameter.into());
                    surface.insert(String::from("class"), "h9".into());
                    surface.insert(String::from("length"), "20 mm".into());
                    surface.insert(String::from("chamfer"), leg.into());
                    toml::Value::Table(surface)
                })
                .to_vec(),
        )
    };
    let mut ask = |leg: &str| {
        let mut part = toml::Table::new();
        part.insert(String::from("surfaces"), surfaces(leg));
        job.insert(String::from("part"), part.into());
        let question = serde_json::json!({ "plan": job }).to_string();
        turnwright::document::plan::Question::from_text(&question)
            .unwrap()
            .answer()
    };
    assert!(ask("1 mm").is_ok());
    let error = ask("1.2 mm").unwrap_err();
    assert_eq!(error.field(), "part.surfaces[1].chamfer");
    assert!(
        error.expected().contains("1.000 mm down to 24 mm"),
        "{error}"
    );
}

#[test]
fn what_cannot_be_turned_is_refused_by_its_field() {
    let seat = |d: f64, l: f64| surface(d, 0.1, l).unwrap();
    let mm = |value: f64| WorkLength::from_mm(value).unwrap();
    let falls = Part::of_surfaces(vec![seat(30.0, 20.0), seat(20.0, 20.0)]).unwrap_err();
    assert_eq!(falls.field(), "surfaces[1].diameter");
    let short = Part::of_surfaces(vec![seat(30.0, 20.0)])
        .and_then(|part| part.with_other_end(vec![seat(20.0, 20.0)], mm(30.0)))
        .unwrap_err();
    assert_eq!(short.field(), "overall_length");
    let cone = seat(30.0, 20.0).with_taper_to(Diameter::from_mm(30.0).unwrap());
    assert_eq!(cone.unwrap_err().field(), "small_diameter");
}

/// An invented shaft of three diameters on the invented lathe of an example, its lengths with these limits, in marks of
/// the carriage dial from a whole number of them.
fn shaft_with_lengths(
    job: &str,
    mark: f64,
    lengths: &[(f64, f64, f64)],
) -> Result<Sheet, turnwright::Error> {
    let mut job: toml::Table = job.parse().unwrap();
    let size = |mm: f64| format!("{mm:.6} mm");
    let surfaces: toml::value::Array = lengths
        .iter()
        .enumerate()
        .map(|(at, (nominal, below, above))| {
            let mut surface = toml::Table::new();
            surface.insert("diameter".into(), size(8.0 + 2.0 * at as f64).into());
            surface.insert("class".into(), "h11".into());
            surface.insert("length".into(), size(nominal * mark).into());
            let limits = [nominal - below, nominal + above].map(|marks| size(marks * mark));
            let limits: toml::value::Array = limits.into_iter().map(Into::into).collect();
            surface.insert("length_limits".into(), limits.into());
            surface.into()
        })
        .collect();
    let part = toml::Table::from_iter([(String::from("surfaces"), surfaces.into())]);
    job.insert(String::from("part"), part.into());
    let stock = [("diameter", 20.0), ("length", 140.0)]
        .map(|(name, mm)| (String::from(name), size(mm).into()));
    job.insert(String::from("stock"), toml::Table::from_iter(stock).into());
    let question = serde_json::json!({ "plan": job }).to_string();
    turnwright::document::plan::Question::from_text(&question)?.answer()
}

const INCH: (&str, f64) = (
    include_str!("../../examples/jobs/inch_diameter_dial.toml"),
    0.127,
);
const METRIC: (&str, f64) = (
    include_str!("../../examples/jobs/metric_radius_dial.toml"),
    0.1,
);

fn shoulders(sheet: &Sheet) -> Vec<&Step> {
    let steps = sheet.steps.iter();
    steps
        .filter(|step| step.kind == StepKind::Shoulder)
        .collect()
}

/// Common practice, no source: a mark is halved by eye where no mark will do, and a length is turned to the middle of
/// one-sided limits.
#[test]
fn a_shoulder_between_two_marks_is_halved_by_eye() {
    for (job, mark) in [INCH, METRIC] {
        let sheet = shaft_with_lengths(job, mark, &[(120.5, 0.5, 0.5)]).unwrap();
        let [shoulder] = shoulders(&sheet)[..] else {
            panic!()
        };
        assert_eq!(shoulder.reading.as_ref().unwrap().mark(), 120);
        assert_eq!(shoulder.tenths, Some(5));
        assert!(shoulder.text.contains("(mark 120.5)"), "{}", shoulder.text);
        assert!((shoulder.z.unwrap().mm() + 120.5 * mark).abs() < 1e-9);
        // A whole mark where it keeps a quarter of the zone from both limits.
        let sheet = shaft_with_lengths(job, mark, &[(120.5, 1.0, 1.0)]).unwrap();
        assert_eq!(shoulders(&sheet)[0].tenths, None);
        // The middle of limits that lie on one side.
        let sheet = shaft_with_lengths(job, mark, &[(120.0, 4.0, 0.0)]).unwrap();
        let at = shoulders(&sheet)[0].reading.as_ref().unwrap();
        assert_eq!(at.mark(), 118);
        let error = shaft_with_lengths(job, mark, &[(120.2, 0.1, 0.1)]).unwrap_err();
        assert_eq!(error.field(), "part.surfaces[0].length");
        assert!(error.expected().contains("halfway"), "{error}");
    }
    // A readout has nothing between its steps.
    let (job, mark) = METRIC;
    let readout = job.replace("[lathe.carriage]", "[lathe.carriage]\nring = \"readout\"");
    let error = shaft_with_lengths(&readout, mark, &[(120.5, 0.4, 0.4)]).unwrap_err();
    assert!(!error.expected().contains("halfway"), "{error}");
}

#[test]
fn shoulders_keep_from_the_limits_of_their_lengths_as_far_as_half_marks_allow() {
    let length = (60.0..200.0_f64, 0.0..3.0_f64, 0.0..3.0_f64);
    let lengths = prop::collection::vec(length, 1..=3);
    let planned = std::cell::Cell::new(0);
    let mut runner = TestRunner::new(crate::jobs::config(200));
    let outcome = runner.run(&(lengths, any::<bool>()), |(lengths, inch)| {
        let (job, mark) = if inch { INCH } else { METRIC };
        let tenth = |marks: f64| (10.0 * marks).round() / 10.0;
        let lengths: Vec<_> = lengths
            .iter()
            .map(|(l, b, a)| (tenth(*l), tenth(*b), tenth(*a)))
            .collect();
        let sheet = match shaft_with_lengths(job, mark, &lengths) {
            Ok(sheet) => sheet,
            Err(error) => {
                // Half marks are no nearer to one another than half of a mark.
                let narrow = lengths.iter().any(|(_, b, a)| b + a < 0.5 + 1e-9);
                prop_assert!(narrow, "{} {:?}", error, lengths);
                return Ok(());
            }
        };
        planned.set(planned.get() + 1);
        let mut at: Vec<_> = shoulders(&sheet)
            .iter()
            .map(|s| -s.z.unwrap().mm())
            .collect();
        at.sort_by(f64::total_cmp);
        let mut outer = 0.0;
        for (z, (nominal, below, above)) in at.iter().zip(&lengths) {
            let length = (z - outer) / mark;
            let zone = below + above;
            let inside = (length - nominal + below).min(nominal + above - length);
            // The nearest half mark lies within a quarter of a mark of the middle.
            let promised = (0.25 * zone).min(0.5 * zone - 0.25);
            // Sizes are kept to a tenth of a nanometre.
            prop_assert!(
                inside >= promised - 1e-5,
                "{length} {nominal} {below} {above}"
            );
            outer = *z;
        }
        Ok(())
    });
    outcome.unwrap();
    assert!(planned.get() > 100, "{}", planned.get());
}

#[test]
fn the_mark_a_ring_is_turned_to_is_a_field_of_the_step() {
    let turned = std::cell::Cell::new(0);
    on_plans(|job, sheet| {
        let marks = f64::from(
            job.lathe()
                .cross_slide()
                .unwrap()
                .divisions_per_turn()
                .count(),
        );
        for step in &sheet.steps {
            let Some(to) = step.ring_to else {
                let ring = job.lathe().cross_slide().unwrap().ring();
                let settable = ring == turnwright::shop::dial::Ring::Settable;
                prop_assert!(
                    !settable || !step.text.contains("turn the ring only"),
                    "{}",
                    step.text
                );
                continue;
            };
            turned.set(turned.get() + 1);
            prop_assert!((0.0..marks).contains(&to), "{to}");
            match step.kind {
                // Where the size is as expected, nothing is turned.
                StepKind::Measure => {
                    prop_assert_eq!(to, f64::from(step.reading.unwrap().mark()));
                }
                _ => {
                    let tenths = (10.0 * to).round();
                    let said = match tenths % 10.0 == 0.0 {
                        true => format!("{:.0}", tenths / 10.0),
                        false => format!("{:.1}", tenths / 10.0),
                    };
                    prop_assert!(step.text.contains(&said), "{said}: {}", step.text);
                }
            }
        }
        Ok(())
    });
    assert!(turned.get() > 100, "{}", turned.get());
}

/// The number behind the words, as it is written there.
fn number_after(text: &str, words: &str) -> f64 {
    let rest = text
        .split_once(words)
        .unwrap_or_else(|| panic!("no {words:?} in {text}"))
        .1;
    let end = rest
        .find(|c: char| !c.is_ascii_digit() && c != '.')
        .unwrap_or(rest.len());
    rest[..end].trim_end_matches('.').parse().unwrap()
}

#[test]
fn a_ring_that_a_later_diameter_turned_is_brought_back_for_the_next_part() {
    // An invented pin whose two diameters want two zeros of the ring.
    let job = include_str!("../../examples/jobs/metric_radius_dial.toml");
    let mut job: toml::Table = job.parse().unwrap();
    let seat = |d: &str, class: &str| {
        toml::Table::from_iter(
            [("diameter", d), ("class", class), ("length", "15 mm")]
                .map(|(k, v)| (k.to_owned(), v.into())),
        )
    };
    let surfaces: toml::value::Array =
        vec![seat("20 mm", "h8").into(), seat("30 mm", "h12").into()];
    job.insert(
        "part".into(),
        toml::Table::from_iter([("surfaces".to_owned(), surfaces.into())]).into(),
    );
    let preferences = toml::Table::from_iter([("batch".to_owned(), 5.into())]);
    job.insert("preferences".into(), preferences.into());
    let ask = |job: &toml::Table| {
        let question = serde_json::json!({ "plan": job }).to_string();
        turnwright::document::plan::Question::from_text(&question)
            .unwrap()
            .answer()
            .unwrap()
    };
    let sheet = ask(&job);
    let batch = sheet.batch.as_ref().unwrap();
    let back = batch
        .text
        .iter()
        .find(|line| line.contains("bring the ring back"))
        .unwrap();
    let said = sheet.to_string();
    let zero = |size: &str| number_after(&said, &format!("Turning {size}: size = "));
    let (first, last) = (zero("30.00 mm"), zero("20.00 mm"));
    assert!(
        (first - last).abs() > 0.001,
        "the ring was not turned: {first} {last}"
    );
    // One mark of the invented lathe takes 0.04 mm, a turn 4 mm.
    let size = number_after(back, "where it is ");
    let to = number_after(back, "whole turns of 100 left out: ");
    let expected = ((first - size) / 0.04).rem_euclid(100.0);
    // Marks are said to a tenth, sizes to a thousandth: a fortieth of a mark.
    assert!((to - expected).abs() < 0.05 + 0.026, "{back}: {expected}");
    assert!(!batch.choice.measured.is_empty() && batch.choice.every >= 1);

    // Parted off, every part is a first one.
    let parting = toml::Table::from_iter([
        ("batch".to_owned(), 5.into()),
        ("parting".to_owned(), "3 mm".into()),
    ]);
    job.insert("preferences".into(), parting.into());
    let batch = ask(&job).batch.unwrap();
    assert_eq!(batch.choice.measured, [1, 2, 3, 4, 5]);
    assert!(
        batch.text[0].contains("every part is a first one"),
        "{:?}",
        batch.text
    );
    assert!(batch.text[1].contains("the next bar"), "{:?}", batch.text);
    assert!(
        !batch
            .text
            .iter()
            .any(|line| line.contains("without touching")),
        "{:?}",
        batch.text
    );
}

#[test]
fn a_skin_on_a_ring_set_between_marks_leaves_room_for_the_first_cut() {
    // An invented hot-rolled bar: the least first cut is a whole number of marks, the aim lies between two.
    let job = include_str!("../../examples/jobs/metric_radius_dial.toml");
    let mut job: toml::Table = job.replace("0.02 mm", "0.05 mm").parse().unwrap();
    let table = |entries: &[(&str, &str)]| -> toml::Value {
        toml::Table::from_iter(entries.iter().map(|(k, v)| ((*k).to_owned(), (*v).into()))).into()
    };
    job.insert(
        "stock".into(),
        table(&[
            ("diameter", "50 mm"),
            ("length", "180 mm"),
            ("skin", "0.8 mm"),
            ("run_out", "0.8 mm"),
        ]),
    );
    job.insert(
        "part".into(),
        table(&[("diameter", "44 mm"), ("class", "h8"), ("length", "60 mm")]),
    );
    job["lathe"]["power"] = "4 kW".into();
    let question = serde_json::json!({ "plan": job }).to_string();
    let sheet = turnwright::document::plan::Question::from_text(&question)
        .unwrap()
        .answer()
        .unwrap();
    let first = sheet
        .steps
        .iter()
        .find(|step| step.depth_of_cut.is_some())
        .unwrap();
    let depth = first.depth_of_cut.unwrap().mm();
    assert!((1.6..1.65).contains(&depth), "{depth}");
    // Bars that only run out are refused by that field.
    job.insert(
        "stock".into(),
        table(&[
            ("diameter", "50 mm"),
            ("length", "180 mm"),
            ("run_out", "8 mm"),
        ]),
    );
    let question = serde_json::json!({ "plan": job }).to_string();
    let error = turnwright::document::plan::Question::from_text(&question)
        .unwrap()
        .answer()
        .unwrap_err();
    assert!(!error.field().contains("skin"), "{error}");
}

#[test]
fn a_step_that_is_set_by_a_belt_is_not_called_a_lever() {
    let job = include_str!("../../examples/jobs/metric_radius_dial.toml");
    let mut job: toml::Table = job.parse().unwrap();
    let steps = job["lathe"]["spindle_steps"].as_array().unwrap().len();
    let names: toml::value::Array = (1..=steps).map(|at| format!("belt {at}").into()).collect();
    job["lathe"]
        .as_table_mut()
        .unwrap()
        .insert("step_names".into(), names.into());
    let question = serde_json::json!({ "plan": job }).to_string();
    let sheet = turnwright::document::plan::Question::from_text(&question)
        .unwrap()
        .answer()
        .unwrap();
    let said = sheet
        .to_string()
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ");
    assert!(
        said.contains("; the motor isolated before a belt is touched)"),
        "{said}"
    );
    assert!(!said.contains("lever belt"), "{said}");
}

#[test]
fn the_turning_tool_comes_back_before_it_turns_again() {
    let job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    let sheet = &crate::documents::ask("plan", serde_json::to_value(&job).unwrap())["plan"];
    let mut away = false;
    for step in sheet["steps"].as_array().unwrap() {
        let text = step["text"].as_str().unwrap();
        away &= !text.contains("The turning tool of this sheet back in its holder");
        let turns = ["face", "taper", "first_cut", "rough_cut", "finish_cut"];
        let turns = turns.iter().any(|kind| step["kind"] == *kind);
        assert!(!(away && turns), "{text}");
        away |= ["undercut", "edges", "part_off"]
            .iter()
            .any(|kind| step["kind"] == *kind);
    }
    assert!(away);
}

#[test]
fn a_slanted_shoulder_is_squared_by_a_knife_tool_before_anything_is_cut_at_it() {
    let mut job: toml::Table = include_str!("../../examples/jobs/both_ends.toml")
        .parse()
        .unwrap();
    job["tool"]["cutting_edge_angle"] = "75 deg".into();
    let sheet = &crate::documents::ask("plan", serde_json::to_value(&job).unwrap())["plan"];
    let steps = sheet["steps"].as_array().unwrap();
    let (mut left, mut squared) = (0, 0);
    for step in steps {
        let text = step["text"].as_str().unwrap();
        left += usize::from(text.contains("No farther with this tool"));
        if step["kind"] == "inspect" {
            // Where the tip stopped there is no shoulder to measure to.
            assert!(!text.contains("Length from the face"), "{text}");
        }
        if text.starts_with("Square the shoulder of") {
            assert!(text.contains("Length from the face to the shoulder ________: good from"));
            squared += 1;
        }
        if ["undercut", "taper", "edges", "turn_round"]
            .iter()
            .any(|kind| step["kind"] == *kind)
        {
            assert_eq!(squared, left, "{text}");
        }
    }
    assert!(left > 1 && squared == left, "{left} {squared}");
}
