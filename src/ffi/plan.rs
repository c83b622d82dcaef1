//! Plans as handles: opened from text, read step by step, written as text, JSON or picture, closed.

use std::ffi::{CString, c_char};
use std::mem::{offset_of, size_of};
use std::ptr;

use super::document::{bytes_of, bytes_of_n, hand_text, utf8};
use super::quantity::*;
use super::status::{Detail, Failure, LARGEST_SIZE, fail, succeed, tw_error, tw_status};
use super::{guarded, put};
use crate::advice::diagnosis::SizeAt;
use crate::document;
use crate::error::Error;
use crate::plan::{Sheet, Step, StepKind, SurfaceAt};
use crate::quantity::dial::Slide;

/// The operation sheet of a job. Opened with tw_plan_open, closed with tw_plan_free; in between it
/// never changes, so that any number of threads may read it at once.
#[derive(Debug)]
pub struct tw_plan {
    sheet: Sheet,
    /// Words of the steps, and why: text that C can read as long as the plan is open.
    words: Vec<(CString, Option<CString>)>,
}

/// What kind of step it is. Returned as int32_t; a later version may know more of them.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_step_kind {
    /// Put the bar into the chuck.
    TW_STEP_CLAMP = 1,
    /// Before the spindle turns for the first time.
    TW_STEP_FIRST_START = 2,
    /// Turn the end face.
    TW_STEP_FACE = 3,
    /// Drill the centre hole.
    TW_STEP_CENTRE_DRILL = 4,
    /// Let the bar out and bring up the centre, or put it between two centres.
    TW_STEP_RECLAMP = 5,
    /// Set the carriage dial.
    TW_STEP_ZERO_Z = 6,
    /// Set the cross dial.
    TW_STEP_ZERO_X = 7,
    /// The first cut.
    TW_STEP_FIRST_CUT = 8,
    /// Stop and measure.
    TW_STEP_MEASURE = 9,
    /// What follows from a size that was measured.
    TW_STEP_ADJUST = 10,
    /// A roughing cut.
    TW_STEP_ROUGH_CUT = 11,
    /// One of the last two cuts.
    TW_STEP_FINISH_CUT = 12,
    /// Bring the shoulder to length.
    TW_STEP_SHOULDER = 13,
    /// Turn the groove at a shoulder.
    TW_STEP_UNDERCUT = 14,
    /// Turn a cone with the compound slide.
    TW_STEP_TAPER = 15,
    /// Break the edges.
    TW_STEP_EDGES = 16,
    /// Measure the finished part.
    TW_STEP_INSPECT = 17,
    /// Part it off.
    TW_STEP_PART_OFF = 18,
    /// Turn the part round in the chuck, or end for end between two centres.
    TW_STEP_TURN_ROUND = 19,
    /// Leave the machine clear.
    TW_STEP_CLEAR = 20,
}

/// A slide of the lathe. Returned as int32_t.
#[repr(i32)]
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum tw_slide {
    /// Across the bed: sets the diameter.
    TW_SLIDE_CROSS = 1,
    /// Along the bed: sets the length.
    TW_SLIDE_CARRIAGE = 2,
    /// The small upper slide.
    TW_SLIDE_COMPOUND = 3,
}

/// One step of a plan. Make it ready with tw_step_init, once. What a step has not is NaN, NULL, -1
/// or 0, as its field says.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_step {
    /// Size of this struct in the caller's program; tw_step_init sets it.
    pub struct_size: u32,
    /// A number of enum tw_step_kind.
    pub kind: i32,
    /// Which surface it works on, from 0, counted from the face of its end; -1 where it is none's.
    pub surface: i32,
    /// 1 where that surface is turned from the other end, else 0.
    pub other_end: i32,
    /// 1 for a step that lies before a measurement that was handed in, else 0.
    pub done: i32,
    /// Whose dial is read, a number of enum tw_slide; 0 where none is, and what follows is 0.
    pub slide: i32,
    /// Whole divisions from the zero of that dial, positive into the metal.
    pub divisions: i64,
    /// Whole turns of the handle from zero.
    pub turns: i64,
    /// The mark under the index line, 0 to one less than there are.
    pub mark: i32,
    /// Tenths of a mark beyond it, by eye: on a ring that cannot be set, where no whole mark will do, and at a shoulder
    /// no mark keeps well within its limits.
    pub tenths: i32,
    /// What is engraved at that mark; NaN where no dial is read.
    pub shows: tw_shows,
    /// The diameter to expect after the step; of a cut or a stop that is done the one it is known, or taken,
    /// to have left.
    pub diameter: tw_diameter,
    /// How far along the tool goes: 0 on the finished face, negative towards the headstock; or NaN.
    pub z: tw_z,
    /// Spindle speed; NaN where the spindle is at rest.
    pub spindle_speed: tw_spindle_speed,
    /// Feed; NaN where nothing is fed.
    pub feed: tw_feed,
    /// Depth of cut, radial; NaN where nothing is cut.
    pub depth_of_cut: tw_depth_of_cut,
    /// Cutting time; 0 where nothing is cut.
    pub time: tw_time,
    /// What to do, in words. It belongs to the plan and may be read until the plan is closed.
    pub text: *const c_char,
    /// Why, with the figures put in, or NULL. As text.
    pub because: *const c_char,
    /// The mark that the ring of the cross dial is turned to there, 0 to less than a turn has, tenths behind the point,
    /// where the size measured is as expected: the text says what else. NaN where no ring is turned.
    pub ring_to: f64,
}

/// What to expect of the part of a plan. Make it ready with tw_expected_init, once.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_expected {
    /// Size of this struct in the caller's program; tw_expected_init sets it.
    pub struct_size: u32,
    /// How many surfaces the part has; the sizes below are of the one least likely to come out good.
    pub surfaces: u32,
    /// Its finished diameter.
    pub diameter: tw_diameter,
    /// The smallest diameter that its limits allow.
    pub smallest: tw_diameter,
    /// The largest one.
    pub largest: tw_diameter,
    /// The expanded uncertainty of the finished diameter, about 95 %.
    pub uncertainty: tw_instrument_uncertainty,
    /// The chance that the part comes out good, all surfaces together.
    pub good: tw_probability,
    /// The chance that another cut is needed somewhere, and nothing is lost.
    pub rework: tw_probability,
    /// The chance that some diameter comes out too small: lost.
    pub scrap: tw_probability,
    /// Cutting time of all steps; handling, measuring and setting come on top.
    pub time: tw_time,
}

/// What to expect of one surface of the part. Make it ready with tw_surface_init, once.
#[repr(C)]
#[derive(Debug, Clone, Copy)]
pub struct tw_surface {
    /// Size of this struct in the caller's program; tw_surface_init sets it.
    pub struct_size: u32,
    /// Which surface, from 0, counted from the face of its end, as in tw_step.
    pub surface: i32,
    /// 1 where it is turned from the other end, else 0.
    pub other_end: i32,
    /// Its finished diameter.
    pub diameter: tw_diameter,
    /// The smallest diameter that its limits allow.
    pub smallest: tw_diameter,
    /// The largest one.
    pub largest: tw_diameter,
    /// The expanded uncertainty of the finished diameter, about 95 %.
    pub uncertainty: tw_instrument_uncertainty,
    /// The chance that it comes out good.
    pub good: tw_probability,
    /// The chance that it comes out too large, so that another cut is needed.
    pub rework: tw_probability,
    /// The chance that it comes out too small: lost.
    pub scrap: tw_probability,
    /// The roughness that the shape of the tool leaves, arithmetic mean height; a real surface is rougher.
    pub ra: tw_ra,
    /// The same, maximum height.
    pub rz: tw_rz,
}

/// A struct of the caller that says its own size.
trait OfSize: Copy {
    /// The name of the argument.
    const NAME: &'static str;
    /// What of it was always there.
    const LEAST: usize;
    /// NaN, NULL, 0.
    const FAILED: Self;
}

impl OfSize for tw_step {
    const NAME: &'static str = "step";
    const LEAST: usize = offset_of!(tw_step, because) + size_of::<*const c_char>();
    const FAILED: Self = Self {
        struct_size: 0,
        kind: 0,
        surface: -1,
        other_end: 0,
        done: 0,
        slide: 0,
        divisions: 0,
        turns: 0,
        mark: 0,
        tenths: 0,
        shows: tw_shows { mm: f64::NAN },
        diameter: tw_diameter { mm: f64::NAN },
        z: tw_z { mm: f64::NAN },
        spindle_speed: tw_spindle_speed { rpm: f64::NAN },
        feed: tw_feed {
            mm_per_rev: f64::NAN,
        },
        depth_of_cut: tw_depth_of_cut { mm: f64::NAN },
        time: tw_time { s: f64::NAN },
        text: ptr::null(),
        because: ptr::null(),
        ring_to: f64::NAN,
    };
}

impl OfSize for tw_expected {
    const NAME: &'static str = "expected";
    const LEAST: usize = offset_of!(tw_expected, time) + size_of::<tw_time>();
    const FAILED: Self = Self {
        struct_size: 0,
        surfaces: 0,
        diameter: tw_diameter { mm: f64::NAN },
        smallest: tw_diameter { mm: f64::NAN },
        largest: tw_diameter { mm: f64::NAN },
        uncertainty: tw_instrument_uncertainty { mm: f64::NAN },
        good: tw_probability { ratio: f64::NAN },
        rework: tw_probability { ratio: f64::NAN },
        scrap: tw_probability { ratio: f64::NAN },
        time: tw_time { s: f64::NAN },
    };
}

impl OfSize for tw_surface {
    const NAME: &'static str = "surface";
    const LEAST: usize = size_of::<Self>();
    const FAILED: Self = Self {
        struct_size: 0,
        surface: -1,
        other_end: 0,
        diameter: tw_diameter { mm: f64::NAN },
        smallest: tw_diameter { mm: f64::NAN },
        largest: tw_diameter { mm: f64::NAN },
        uncertainty: tw_instrument_uncertainty { mm: f64::NAN },
        good: tw_probability { ratio: f64::NAN },
        rework: tw_probability { ratio: f64::NAN },
        scrap: tw_probability { ratio: f64::NAN },
        ra: tw_ra { um: f64::NAN },
        rz: tw_rz { um: f64::NAN },
    };
}

/// The size that a struct of the caller says it has.
fn size_at<T: OfSize>(place: *mut T) -> Result<usize, Failure> {
    if place.is_null() {
        return Err(Failure::null(T::NAME));
    }
    // SAFETY: it starts with its size (contract of the header).
    let size = unsafe { place.cast::<u32>().read_unaligned() } as usize;
    match (T::LEAST..=LARGEST_SIZE).contains(&size) {
        true => Ok(size),
        false => Err(Failure::misuse(
            tw_status::TW_BAD_STRUCT_SIZE,
            &format!("{}.struct_size", T::NAME),
            size.to_string(),
            format!("{} or more", T::LEAST),
            "call its init function once before the first use, with the header of this library or an older one",
        )),
    }
}

/// Fills a struct of the caller as far as it goes, but for its size.
fn fill<T: OfSize>(
    place: *mut T,
    detail: *mut tw_error,
    work: impl FnOnce() -> Result<T, Failure>,
) -> tw_status {
    let size = match Detail::check(detail).and_then(|()| size_at(place)) {
        Ok(size) => size,
        Err(failure) => return fail(detail, failure),
    };
    let done = guarded(work);
    let value = match &done {
        Ok(value) => *value,
        Err(_) => T::FAILED,
    };
    // What a newer program has beyond stays as its init function left it, zero: a size that was never set must not
    // have memory written that the struct does not own.
    let (from, known) = (size_of::<u32>(), size.min(size_of::<T>()));
    let bytes = ptr::from_ref(&value).cast::<u8>();
    // SAFETY: both are as large as `known` says: ours is, and the caller declared it.
    unsafe {
        let place = place.cast::<u8>();
        ptr::copy_nonoverlapping(bytes.add(from), place.add(from), known - from);
    }
    match done {
        Ok(_) => succeed(detail),
        Err(failure) => fail(detail, failure),
    }
}

impl tw_plan {
    fn of(sheet: Sheet) -> Result<Self, Error> {
        let c_text = |text: &str| {
            CString::new(text).map_err(|_| Error::internal("words of a step with a NUL in them"))
        };
        let words = sheet
            .steps
            .iter()
            .map(|step| {
                let because = step.because.as_deref().map(c_text).transpose()?;
                Ok((c_text(&step.text)?, because))
            })
            .collect::<Result<_, Error>>()?;
        Ok(Self { sheet, words })
    }

    fn step(&self, index: usize) -> Result<tw_step, Failure> {
        let (Some(step), Some((text, because))) =
            (self.sheet.steps.get(index), self.words.get(index))
        else {
            return Err(Failure::misuse(
                tw_status::TW_OUT_OF_RANGE,
                "index",
                index.to_string(),
                format!(
                    "a step from 0 to {}",
                    self.sheet.steps.len().saturating_sub(1)
                ),
                "ask tw_plan_step_count how many there are",
            ));
        };
        let nan = tw_step::FAILED;
        let reading = step.reading.as_ref();
        let surface = step.surface.and_then(|at| i32::try_from(at.index()).ok());
        Ok(tw_step {
            struct_size: 0,
            kind: kind_number(step.kind),
            surface: surface.unwrap_or(-1),
            other_end: i32::from(step.surface.is_some_and(|at| at.other_end())),
            done: i32::from(step.done),
            slide: reading.map_or(0, |reading| slide_number(reading.slide())),
            divisions: reading.map_or(0, |reading| reading.divisions().count()),
            turns: reading.map_or(0, |reading| reading.turns()),
            mark: reading.map_or(0, |reading| reading.mark() as i32),
            tenths: tenths_of(step),
            shows: reading.map_or(nan.shows, |reading| reading.shows().into()),
            diameter: step.diameter.into(),
            z: step.z.map_or(nan.z, Into::into),
            spindle_speed: step.spindle_speed.map_or(nan.spindle_speed, Into::into),
            feed: step.feed.map_or(nan.feed, Into::into),
            depth_of_cut: step.depth_of_cut.map_or(nan.depth_of_cut, Into::into),
            time: step.time.into(),
            text: text.as_ptr(),
            because: because.as_ref().map_or(ptr::null(), |text| text.as_ptr()),
            ring_to: step.ring_to.unwrap_or(nan.ring_to),
        })
    }

    fn expected(&self) -> tw_expected {
        let expected = &self.sheet.expected;
        tw_expected {
            struct_size: 0,
            surfaces: self.surfaces() as u32,
            diameter: expected.diameter.into(),
            smallest: expected.limits.smallest().into(),
            largest: expected.limits.largest().into(),
            uncertainty: expected.uncertainty.into(),
            good: expected.good.into(),
            rework: expected.rework.into(),
            scrap: expected.scrap.into(),
            time: expected.time.into(),
        }
    }

    fn surfaces(&self) -> usize {
        let part = self.sheet.job.part();
        part.surfaces().len() + part.other_end().len()
    }

    fn surface(&self, index: usize) -> Result<tw_surface, Failure> {
        let expected = &self.sheet.expected;
        let (at, diameter, limits, uncertainty, come_out, finish) =
            match (expected.surfaces.get(index), index) {
                (Some(one), _) => (
                    one.surface,
                    one.diameter,
                    one.limits,
                    one.uncertainty,
                    (one.good, one.rework, one.scrap),
                    one.finish,
                ),
                // The only one of its part is told by the part.
                (None, 0) => (
                    SurfaceAt::new(false, 0),
                    expected.diameter,
                    expected.limits,
                    expected.uncertainty,
                    (expected.good, expected.rework, expected.scrap),
                    expected.finish,
                ),
                (None, _) => {
                    return Err(Failure::misuse(
                        tw_status::TW_OUT_OF_RANGE,
                        "index",
                        index.to_string(),
                        format!("a surface from 0 to {}", self.surfaces().saturating_sub(1)),
                        "ask tw_plan_expected how many surfaces there are",
                    ));
                }
            };
        let (good, rework, scrap) = come_out;
        Ok(tw_surface {
            struct_size: 0,
            surface: i32::try_from(at.index()).unwrap_or(-1),
            other_end: i32::from(at.other_end()),
            diameter: diameter.into(),
            smallest: limits.smallest().into(),
            largest: limits.largest().into(),
            uncertainty: uncertainty.into(),
            good: good.into(),
            rework: rework.into(),
            scrap: scrap.into(),
            ra: finish.ra.into(),
            rz: finish.rz.into(),
        })
    }
}

fn tenths_of(step: &Step) -> i32 {
    step.tenths.map_or(0, i32::from)
}

fn kind_number(kind: StepKind) -> i32 {
    use tw_step_kind::*;
    (match kind {
        StepKind::Clamp => TW_STEP_CLAMP,
        StepKind::FirstStart => TW_STEP_FIRST_START,
        StepKind::Face => TW_STEP_FACE,
        StepKind::CentreDrill => TW_STEP_CENTRE_DRILL,
        StepKind::Reclamp => TW_STEP_RECLAMP,
        StepKind::ZeroZ => TW_STEP_ZERO_Z,
        StepKind::ZeroX => TW_STEP_ZERO_X,
        StepKind::FirstCut => TW_STEP_FIRST_CUT,
        StepKind::Measure => TW_STEP_MEASURE,
        StepKind::Adjust => TW_STEP_ADJUST,
        StepKind::RoughCut => TW_STEP_ROUGH_CUT,
        StepKind::FinishCut => TW_STEP_FINISH_CUT,
        StepKind::Shoulder => TW_STEP_SHOULDER,
        StepKind::Undercut => TW_STEP_UNDERCUT,
        StepKind::Taper => TW_STEP_TAPER,
        StepKind::Edges => TW_STEP_EDGES,
        StepKind::Inspect => TW_STEP_INSPECT,
        StepKind::PartOff => TW_STEP_PART_OFF,
        StepKind::TurnRound => TW_STEP_TURN_ROUND,
        StepKind::Clear => TW_STEP_CLEAR,
    }) as i32
}

fn slide_number(slide: Slide) -> i32 {
    (match slide {
        Slide::CrossSlide => tw_slide::TW_SLIDE_CROSS,
        Slide::Carriage => tw_slide::TW_SLIDE_CARRIAGE,
        Slide::Compound => tw_slide::TW_SLIDE_COMPOUND,
    }) as i32
}

/// The plan at a place, or that there is none.
///
/// # Safety
/// `plan` is NULL or an open plan.
unsafe fn open<'a>(plan: *const tw_plan) -> Result<&'a tw_plan, Failure> {
    // SAFETY: the caller's promise; an open plan never changes.
    unsafe { plan.as_ref() }.ok_or_else(|| {
        Failure::misuse(
            tw_status::TW_NULL_POINTER,
            "plan",
            "NULL",
            "an open plan",
            "open one with tw_plan_open; one that was closed is gone",
        )
    })
}

/// Runs `work` and hands its plan over.
fn hand_plan(
    place: *mut *mut tw_plan,
    detail: *mut tw_error,
    work: impl FnOnce() -> Result<Sheet, Failure>,
) -> tw_status {
    let done = match Detail::check(detail) {
        Err(failure) => Err(failure),
        Ok(()) if place.is_null() => Err(Failure::null("plan")),
        Ok(()) => guarded(|| Ok(tw_plan::of(work()?)?)),
    };
    let (plan, status) = match done {
        Ok(plan) => (Box::into_raw(Box::new(plan)), succeed(detail)),
        Err(failure) => (ptr::null_mut(), fail(detail, failure)),
    };
    // SAFETY: NULL or may be written (contract of the header).
    unsafe { put(place, plan) };
    status
}

/// Opens a plan: from a job, { "plan": { .. } } as tw_answer takes it, or from a sheet that was
/// written as JSON before (tw_plan_json, or the answer of tw_answer), which is worked out anew with
/// all that was measured on the way. The fields of the one are those of the question plan
/// (tw_question_schema), of the other those of plan in the question after_measurement.
///
/// The plan belongs to the caller, who closes it with tw_plan_free. After a failure it is NULL;
/// detail (may be NULL) names the field by its path inside the question.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_open(
    text: *const c_char,
    plan: *mut *mut tw_plan,
    detail: *mut tw_error,
) -> tw_status {
    hand_plan(plan, detail, || {
        // SAFETY: NULL or NUL-ended text (contract of the header).
        let bytes = unsafe { bytes_of(text, "text") }?;
        Ok(document::plan::sheet_of(utf8(bytes, "text")?)?)
    })
}

/// As tw_plan_open, for text of a given length in bytes that need not be NUL-ended. A NUL inside is
/// refused (TW_NUL_IN_TEXT). text may be NULL when length is 0.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_open_n(
    text: *const c_char,
    length: usize,
    plan: *mut *mut tw_plan,
    detail: *mut tw_error,
) -> tw_status {
    hand_plan(plan, detail, || {
        // SAFETY: that many bytes may be read (contract of the header).
        let bytes = unsafe { bytes_of_n(text, length, "text") }?;
        Ok(document::plan::sheet_of(utf8(bytes, "text")?)?)
    })
}

/// Closes a plan and sets the caller's pointer to NULL, so that closing it twice is harmless. NULL,
/// and a pointer to NULL, are allowed. To use a copy of the pointer afterwards, or texts of its
/// steps, is undefined behaviour.
#[unsafe(no_mangle)]
pub unsafe extern "C" fn tw_plan_free(plan: *mut *mut tw_plan) {
    if plan.is_null() {
        return;
    }
    // SAFETY: may be read and written; what it points to is NULL or was made in `hand_plan` (contract of
    // the header).
    unsafe {
        let open = plan.read_unaligned();
        plan.write_unaligned(ptr::null_mut());
        if !open.is_null() {
            drop(Box::from_raw(open));
        }
    }
}

/// How many steps a plan has; 0 where plan is NULL.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_step_count(plan: *const tw_plan) -> usize {
    // SAFETY: NULL or an open plan (contract of the header).
    unsafe { open(plan) }.map_or(0, |plan| plan.sheet.steps.len())
}

/// One step of a plan, index from 0.
///
/// step is made ready with tw_step_init; a smaller one of an older header is filled as far as it
/// goes. Its texts belong to the plan. detail may be NULL. After a failure its numbers are NaN or 0
/// and its texts NULL.
///
/// Example: tw_plan_step(plan, 0, &step, NULL); step.kind is TW_STEP_CLAMP and
///     step.diameter.mm is 34.000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_step(
    plan: *const tw_plan,
    index: usize,
    step: *mut tw_step,
    detail: *mut tw_error,
) -> tw_status {
    // SAFETY: NULL or an open plan (contract of the header).
    fill(step, detail, || unsafe { open(plan) }?.step(index))
}

/// What to expect of the part: size, uncertainty, chances, time.
///
/// expected is made ready with tw_expected_init; a smaller one of an older header is filled as far
/// as it goes. detail may be NULL. After a failure its numbers are NaN.
///
/// Example: tw_plan_expected(plan, &expected, NULL); expected.smallest.mm is 29.967 and
///     expected.diameter.mm is 29.984.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_expected(
    plan: *const tw_plan,
    expected: *mut tw_expected,
    detail: *mut tw_error,
) -> tw_status {
    fill(expected, detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        Ok(unsafe { open(plan) }?.expected())
    })
}

/// What to expect of one surface of the part, index from 0, in the order in which they are turned:
/// size, uncertainty, chances, roughness. tw_plan_expected says how many there are, and tells of all
/// together.
///
/// surface is made ready with tw_surface_init; a smaller one of an older header is filled as far as
/// it goes. detail may be NULL. After a failure its numbers are NaN, 0 or -1.
///
/// Example: tw_plan_surface(plan, 0, &surface, NULL); surface.largest.mm is 30.000 and
///     surface.ra.um is 1.259.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_surface(
    plan: *const tw_plan,
    index: usize,
    surface: *mut tw_surface,
    detail: *mut tw_error,
) -> tw_status {
    // SAFETY: NULL or an open plan (contract of the header).
    fill(surface, detail, || unsafe { open(plan) }?.surface(index))
}

/// The sheet as plain text of at most 100 columns, in the units of the job.
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_plan_text(plan, &text, NULL); text has "KEY OUT of the chuck".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_text(
    plan: *const tw_plan,
    text: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(text, "text", detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        Ok(unsafe { open(plan) }?.sheet.to_string())
    })
}

/// As tw_plan_text, in short: a line or two for each step, for somebody who knows the rest.
///
/// Example: tw_plan_short_text(plan, &text, NULL); text has "STOP".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_short_text(
    plan: *const tw_plan,
    text: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(text, "text", detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        Ok(unsafe { open(plan) }?.sheet.short())
    })
}

/// The sheet as JSON, { "version": 1, "plan": { .. } }: the same as tw_answer gives for its job. It
/// holds all that the plan is, so that tw_plan_open opens it again.
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_plan_json(plan, &json, NULL); json has "\"version\":1".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_json(
    plan: *const tw_plan,
    json: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(json, "json", detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        Ok(document::plan::written(&unsafe { open(plan) }?.sheet)?)
    })
}

/// How many pictures a plan has, one for each clamping; 0 where plan is NULL.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_picture_count(plan: *const tw_plan) -> usize {
    // SAFETY: NULL or an open plan (contract of the header).
    unsafe { open(plan) }.map_or(0, |plan| {
        let turned_round = !plan.sheet.job.part().other_end().is_empty()
            || plan
                .sheet
                .steps
                .iter()
                .any(|step| step.kind == StepKind::TurnRound);
        1 + usize::from(turned_round)
    })
}

/// The picture of a clamping, index from 0, as SVG. A library that was built without the feature
/// "picture" refuses it (TW_NOT_OFFERED).
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_plan_picture(plan, 0, &svg, NULL); svg has "<svg".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_picture(
    plan: *const tw_plan,
    index: usize,
    svg: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(svg, "svg", detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        let mut pictures = document::plan::pictures(&unsafe { open(plan) }?.sheet)?;
        match index < pictures.len() {
            true => Ok(pictures.swap_remove(index)),
            false => Err(Failure::misuse(
                tw_status::TW_OUT_OF_RANGE,
                "index",
                index.to_string(),
                format!("a picture from 0 to {}", pictures.len().saturating_sub(1)),
                "ask tw_plan_picture_count how many there are",
            )),
        }
    })
}

/// The sheet as one HTML page to print on A4 or Letter, with boxes to tick. A library that was built
/// without the feature "picture" refuses it (TW_NOT_OFFERED).
///
/// The text belongs to the caller, who gives it back with tw_text_free. detail may be NULL. After a
/// failure the text is NULL.
///
/// Example: tw_plan_page(plan, &html, NULL); html has "<html".
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_page(
    plan: *const tw_plan,
    html: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    hand_text(html, "html", detail, || {
        // SAFETY: NULL or an open plan (contract of the header).
        Ok(document::plan::page(&unsafe { open(plan) }?.sheet)?)
    })
}

/// What follows when these sizes, one or several along the bar, were measured at a step: a cut, a
/// measuring stop or the inspection, index from 0. The plan itself stays as it is. No size at all,
/// count 0, is refused (TW_MISSING_FIELD), wherever measured points.
///
/// Hand the sizes in before anything is done that the stop says of ring or marks: the next plan takes
/// its place, and reckons with the slide one turn out and the ring as it was.
///
/// answer is JSON, as tw_answer gives for { "after_measurement": { .. } }, without the sheet: likely
/// causes, whether the part is lost, by how much the readings move. next is the plan that follows;
/// where none does it is NULL with TW_OK, and the answer says why under "why_no_plan".
///
/// Both belong to the caller (tw_text_free, tw_plan_free); one of them may be NULL. detail may be
/// NULL. After a failure both are NULL.
///
/// Example: tw_plan_after(plan, 6, &(tw_diameter){ 33.628 }, 1, &next, &answer, NULL); answer has
///     "zero_off" and tw_plan_step_count(next) is 15.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_plan_after(
    plan: *const tw_plan,
    step: usize,
    measured: *const tw_diameter,
    count: usize,
    next: *mut *mut tw_plan,
    answer: *mut *mut c_char,
    detail: *mut tw_error,
) -> tw_status {
    let any_output = !next.is_null() || !answer.is_null();
    let done = match Detail::check(detail) {
        Err(failure) => Err(failure),
        Ok(()) if !any_output => Err(Failure::no_output()),
        Ok(()) => guarded(|| {
            // SAFETY: NULL or an open plan; that many diameters may be read (contract of the header).
            let (plan, sizes) = unsafe { (open(plan)?, sizes(measured, count)?) };
            let mut told = plan.sheet.after(step, &sizes, None)?;
            let next = told.plan.take().map(tw_plan::of).transpose()?;
            let words = document::after_measurement::written(&told, plan.sheet.units())?;
            let words =
                CString::new(words).map_err(|_| Error::internal("an answer with a NUL in it"))?;
            Ok((next, words))
        }),
    };
    let (follows, words, status) = match done {
        Ok((follows, words)) => (follows, Some(words), succeed(detail)),
        Err(failure) => (None, None, fail(detail, failure)),
    };
    // What nobody takes is not handed over.
    if !next.is_null() {
        let follows = follows.map_or(ptr::null_mut(), |plan| Box::into_raw(Box::new(plan)));
        // SAFETY: may be written (contract of the header).
        unsafe { put(next, follows) };
    }
    if !answer.is_null() {
        // SAFETY: may be written (contract of the header).
        unsafe { put(answer, words.map_or(ptr::null_mut(), CString::into_raw)) };
    }
    status
}

/// The sizes at a place.
///
/// # Safety
/// `measured` is NULL or that many diameters may be read there.
unsafe fn sizes(measured: *const tw_diameter, count: usize) -> Result<Vec<SizeAt>, Failure> {
    // No size has no place either; what there is to say about it the sheet says.
    if measured.is_null() && count > 0 {
        return Err(Failure::null("measured"));
    }
    // More than this nobody measures on one bar; it is a negative number in a size_t.
    const MOST: usize = 1000;
    if count > MOST {
        return Err(Failure::misuse(
            tw_status::TW_MISUSE,
            "count",
            count.to_string(),
            format!("at most {MOST} sizes"),
            "hand in the sizes of one cut on one bar; or check for a negative number that was turned into size_t",
        ));
    }
    (0..count)
        .map(|at| {
            // SAFETY: the caller's promise; alignment is not needed.
            let size = unsafe { measured.add(at).read_unaligned() };
            let named = |unsaid| Error::from(unsaid).at(&format!("measured[{at}]"));
            Ok(SizeAt::anywhere(size.read().map_err(named)?))
        })
        .collect()
}
