//! Plans as handles: what C reads of them is what Rust has.

use std::ffi::{CStr, CString, c_char};
use std::mem::zeroed;
use std::ptr::{null, null_mut};

use libtest_mimic::{Failed, Trial};
use turnwright::Quantity;
use turnwright::advice::diagnosis::SizeAt;
use turnwright::document;
use turnwright::ffi::*;
use turnwright::plan::{Sheet, StepKind};

use crate::{check, trial};

/// Invented jobs: one diameter; both ends, with a cone and a skin; inch sizes and an inch dial.
const JOBS: [&str; 3] = [
    include_str!("../../examples/jobs/metric_radius_dial.toml"),
    include_str!("../../examples/jobs/both_ends.toml"),
    include_str!("../../examples/jobs/inch_diameter_dial.toml"),
];

pub fn trials() -> Vec<Trial> {
    vec![
        trial("plans/every_step_is_the_one_that_rust_has", &[], || {
            JOBS.iter().try_for_each(|job| steps(job))
        }),
        trial("plans/every_writing_is_the_one_that_rust_has", &[], || {
            JOBS.iter().try_for_each(|job| writings(job))
        }),
        trial(
            "plans/a_measurement_gives_the_plan_that_rust_gives",
            &[],
            || JOBS.iter().try_for_each(|job| measured(job)),
        ),
        trial("plans/menus_hold_every_question_and_material", &[], menus),
    ]
}

fn question(job: &str) -> Result<String, Failed> {
    let job: toml::Table = job.parse()?;
    Ok(serde_json::json!({ "plan": job }).to_string())
}

fn sheet(job: &str) -> Result<Sheet, Failed> {
    Ok(document::plan::Question::from_text(&question(job)?)?.answer()?)
}

/// A handle that is closed in the end.
pub struct Open(pub *mut tw_plan);

impl Open {
    pub fn of(text: &str) -> Result<Self, Failed> {
        let text = CString::new(text).unwrap();
        let mut plan = null_mut();
        let status = unsafe { tw_plan_open(text.as_ptr(), &mut plan, null_mut()) };
        check(status == tw_status::TW_OK, || format!("{status:?}"))?;
        Ok(Self(plan))
    }
}

impl Drop for Open {
    fn drop(&mut self) {
        unsafe { tw_plan_free(&mut self.0) }
    }
}

/// A text that is handed over.
pub fn text(hand: impl FnOnce(*mut *mut c_char) -> tw_status) -> Result<String, Failed> {
    let mut text = null_mut();
    let status = hand(&mut text);
    check(status == tw_status::TW_OK, || format!("{status:?}"))?;
    let words = unsafe { CStr::from_ptr(text) }.to_str()?.to_owned();
    unsafe { tw_text_free(text) };
    Ok(words)
}

fn same(c: f64, rust: Option<f64>) -> bool {
    rust.map_or(c.is_nan(), |rust| rust.to_bits() == c.to_bits())
}

fn words(text: *const c_char) -> Option<String> {
    (!text.is_null()).then(|| {
        unsafe { CStr::from_ptr(text) }
            .to_string_lossy()
            .into_owned()
    })
}

fn steps(job: &str) -> Result<(), Failed> {
    let (sheet, plan) = (sheet(job)?, Open::of(&question(job)?)?);
    let count = unsafe { tw_plan_step_count(plan.0) };
    check(count == sheet.steps.len(), || format!("{count} steps"))?;
    for (at, rust) in sheet.steps.iter().enumerate() {
        let mut step: tw_step = unsafe { zeroed() };
        step.struct_size = size_of::<tw_step>() as u32;
        let status = unsafe { tw_plan_step(plan.0, at, &mut step, null_mut()) };
        check(status == tw_status::TW_OK, || format!("{status:?}"))?;
        let reading = rust.reading.as_ref();
        let slide = reading.map_or(0, |r| match r.slide() {
            turnwright::Slide::CrossSlide => 1,
            turnwright::Slide::Carriage => 2,
            _ => 3,
        });
        let figures = [
            same(step.diameter.mm, Some(rust.diameter.trade())),
            same(step.z.mm, rust.z.map(|z| z.trade())),
            same(
                step.spindle_speed.rpm,
                rust.spindle_speed.map(|n| n.trade()),
            ),
            same(step.feed.mm_per_rev, rust.feed.map(|f| f.trade())),
            same(step.depth_of_cut.mm, rust.depth_of_cut.map(|d| d.trade())),
            same(step.time.s, Some(rust.time.trade())),
            same(step.shows.mm, reading.map(|r| r.shows().trade())),
            same(step.ring_to, rust.ring_to),
            step.slide == slide,
            step.divisions == reading.map_or(0, |r| r.divisions().count()),
            step.turns == reading.map_or(0, |r| r.turns()),
            step.mark == reading.map_or(0, |r| r.mark() as i32),
            step.tenths == rust.tenths.map_or(0, i32::from),
            step.surface == rust.surface.map_or(-1, |s| s.index() as i32),
            (step.other_end == 1) == rust.surface.is_some_and(|s| s.other_end()),
            (step.done == 1) == rust.done,
            words(step.text).as_deref() == Some(rust.text.as_str()),
            words(step.because) == rust.because,
        ];
        check(figures.iter().all(|held| *held), || {
            format!("step {at}: {figures:?}\n{step:?}\n{rust:?}")
        })?;
        // The names stand in the order of their numbers, as the words of documents do.
        let name = serde_json::to_value(rust.kind)?;
        let kinds = [
            "clamp",
            "first_start",
            "face",
            "centre_drill",
            "reclamp",
            "zero_z",
            "zero_x",
            "first_cut",
            "measure",
            "adjust",
            "rough_cut",
            "finish_cut",
            "shoulder",
            "undercut",
            "taper",
            "edges",
            "inspect",
            "part_off",
            "turn_round",
            "clear",
        ];
        let kind = kinds.get(step.kind as usize - 1);
        check(kind.copied() == name.as_str(), || {
            format!("{} is {name}", step.kind)
        })?;
    }
    let mut expected: tw_expected = unsafe { zeroed() };
    expected.struct_size = size_of::<tw_expected>() as u32;
    let status = unsafe { tw_plan_expected(plan.0, &mut expected, null_mut()) };
    check(status == tw_status::TW_OK, || format!("{status:?}"))?;
    let rust = &sheet.expected;
    let figures = [
        (expected.diameter.mm, rust.diameter.trade()),
        (expected.smallest.mm, rust.limits.smallest().trade()),
        (expected.largest.mm, rust.limits.largest().trade()),
        (expected.uncertainty.mm, rust.uncertainty.trade()),
        (expected.good.ratio, rust.good.trade()),
        (expected.rework.ratio, rust.rework.trade()),
        (expected.scrap.ratio, rust.scrap.trade()),
        (expected.time.s, rust.time.trade()),
    ];
    check(
        figures.iter().all(|(c, rust)| same(*c, Some(*rust))),
        || format!("{figures:?}"),
    )?;
    surfaces(&sheet, &plan, expected.surfaces as usize)
}

/// Each surface is that of the sheet, and together they are as likely to be good as the part.
fn surfaces(sheet: &Sheet, plan: &Open, count: usize) -> Result<(), Failed> {
    let mut good = 1.0;
    for at in 0..count {
        let mut surface: tw_surface = unsafe { zeroed() };
        surface.struct_size = size_of::<tw_surface>() as u32;
        let status = unsafe { tw_plan_surface(plan.0, at, &mut surface, null_mut()) };
        check(status == tw_status::TW_OK, || format!("{status:?}"))?;
        good *= surface.good.ratio;
        let last = sheet.steps.iter().rfind(|step| {
            step.kind == StepKind::FinishCut
                && step.surface.is_some_and(|of| {
                    (of.index() as i32, i32::from(of.other_end()))
                        == (surface.surface, surface.other_end)
                })
        });
        check(
            last.map(|step| step.diameter.trade()) == Some(surface.diameter.mm),
            || format!("{surface:?}\n{last:?}"),
        )?;
        let Some(rust) = sheet.expected.surfaces.get(at) else {
            check(count == 1, || format!("{count} surfaces"))?;
            continue;
        };
        let figures = [
            (surface.smallest.mm, rust.limits.smallest().trade()),
            (surface.largest.mm, rust.limits.largest().trade()),
            (surface.uncertainty.mm, rust.uncertainty.trade()),
            (surface.good.ratio, rust.good.trade()),
            (surface.rework.ratio, rust.rework.trade()),
            (surface.scrap.ratio, rust.scrap.trade()),
            (surface.ra.um, rust.finish.ra.trade()),
            (surface.rz.um, rust.finish.rz.trade()),
        ];
        check(
            figures.iter().all(|(c, rust)| same(*c, Some(*rust))),
            || format!("{figures:?}"),
        )?;
    }
    // A product of a few factors in another order: a few last digits.
    check((good - sheet.expected.good.trade()).abs() < 1e-12, || {
        format!("{good} for {}", sheet.expected.good)
    })?;
    let mut surface: tw_surface = unsafe { zeroed() };
    surface.struct_size = size_of::<tw_surface>() as u32;
    let status = unsafe { tw_plan_surface(plan.0, count, &mut surface, null_mut()) };
    check(
        status == tw_status::TW_OUT_OF_RANGE && surface.surface == -1 && surface.ra.um.is_nan(),
        || format!("{status:?} {surface:?}"),
    )
}

fn writings(job: &str) -> Result<(), Failed> {
    let (sheet, plan) = (sheet(job)?, Open::of(&question(job)?)?);
    let plan = plan.0;
    let none = null_mut;
    let pairs = unsafe {
        [
            (
                text(|out| tw_plan_text(plan, out, none()))?,
                sheet.to_string(),
            ),
            (
                text(|out| tw_plan_short_text(plan, out, none()))?,
                sheet.short(),
            ),
            (text(|out| tw_plan_page(plan, out, none()))?, sheet.page()?),
            (
                text(|out| tw_plan_json(plan, out, none()))?,
                document::answer(&question(job)?)?,
            ),
        ]
    };
    for (c, rust) in pairs {
        check(c == rust, || format!("C:\n{c}\nRust:\n{rust}"))?;
    }
    let pictures = sheet.pictures()?;
    let count = unsafe { tw_plan_picture_count(plan) };
    check(count == pictures.len(), || format!("{count} pictures"))?;
    for (at, rust) in pictures.iter().enumerate() {
        let c = text(|out| unsafe { tw_plan_picture(plan, at, out, none()) })?;
        check(c == *rust, || format!("picture {at} differs"))?;
    }
    Ok(())
}

fn measured(job: &str) -> Result<(), Failed> {
    let (sheet, plan) = (sheet(job)?, Open::of(&question(job)?)?);
    let stop = sheet.steps.iter().position(|s| s.kind == StepKind::Measure);
    let stop = stop.ok_or("no stop")?;
    // Some way off, so that readings move.
    let size = tw_diameter {
        mm: sheet.steps[stop].diameter.mm() + 0.013,
    };
    let rust = sheet.after(
        stop,
        &[SizeAt::anywhere(turnwright::Diameter::from_mm(size.mm)?)],
        None,
    )?;
    let mut next = null_mut();
    let answer =
        text(|out| unsafe { tw_plan_after(plan.0, stop, &size, 1, &mut next, out, null_mut()) })?;
    let next = Open(next);
    let answer: serde_json::Value = serde_json::from_str(&answer)?;
    let told = &answer["after_measurement"];
    check(
        told["shift"] == rust.shift && told["plan"].is_null(),
        || answer.to_string(),
    )?;
    let c = text(|out| unsafe { tw_plan_text(next.0, out, null_mut()) })?;
    let rust = rust.plan.map(|sheet| sheet.to_string()).unwrap_or_default();
    check(c == rust, || format!("C:\n{c}\nRust:\n{rust}"))?;
    // The next plan, written and opened again, is the same plan.
    let json = text(|out| unsafe { tw_plan_json(next.0, out, null_mut()) })?;
    let again = Open::of(&json)?;
    let c = text(|out| unsafe { tw_plan_text(again.0, out, null_mut()) })?;
    check(c == rust, || format!("opened again:\n{c}\nRust:\n{rust}"))
}

fn menus() -> Result<(), Failed> {
    let names = text(|out| unsafe { tw_question_names(out, null_mut()) })?;
    let names: Vec<&str> = names.lines().collect();
    check(names == document::QUESTIONS, || format!("{names:?}"))?;
    for name in names {
        let c_name = CString::new(name)?;
        let c = text(|out| unsafe { tw_question_schema(c_name.as_ptr(), out, null_mut()) })?;
        check(c == document::schema(name)?, || {
            format!("the schema of {name}")
        })?;
    }
    let keys = text(|out| unsafe { tw_material_keys(out, null_mut()) })?;
    let rust: Vec<String> = turnwright::shop::material::catalogue()
        .map(|material| material.key().to_owned())
        .collect();
    check(keys.lines().eq(rust.iter()) && rust.len() > 10, || {
        keys.clone()
    })?;
    check(unsafe { tw_plan_step_count(null()) } == 0, || {
        String::from("steps of no plan")
    })
}
