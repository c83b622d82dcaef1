//! The whole sheet: every clamping, every surface, in order.

use super::after::Measurement;
use super::batch::Batch;
use super::card::card;

use super::clamping::clampings;
use super::common::Common;
use super::datum::{Before, sizes_fit};
use super::heading::Figures;
use super::job::Job;
use super::safety::{limits_of_the_answer, safety};
use super::sheet::{Expected, ExpectedSurface, Sheet, Step, StepKind, together};
use super::turning::Turning;
use super::words::{CutsOf, SurfaceWriter, Writer};
use crate::advice::reach::LEAST_GOOD;
use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::unit::Units;
use crate::quantity::{Duration, Probability, Quantity, round_size};
use crate::shop::holding::HoldingKind;

/// The sheet of a job, after what was measured already.
pub(super) fn sheet(job: &Job, units: Units, measured: &[Measurement]) -> Result<Sheet, Error> {
    let mut provenance = Provenance::roomy();
    let mut cautions = Vec::new();
    let figures = figures_after(job, units, measured, &mut provenance, &mut cautions)?;
    write(job, figures, measured, provenance, cautions)
}

/// All figures of a job, after what was measured already.
pub(super) fn figures_after<'a>(
    job: &'a Job,
    units: Units,
    measured: &[Measurement],
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<Figures<'a>, Error> {
    let mut figures = figures(job, units, provenance, cautions)?;
    for (at, measurement) in measured.iter().enumerate() {
        let steps = steps(&figures)?.0;
        let place = figures.place(&steps, measurement.step)?;
        figures
            .follow(&place, measurement)
            .map_err(|error| match error.field() {
                "measured" => error.at(&format!("measured[{at}].measured")),
                _ => error,
            })?;
    }
    Ok(figures)
}

/// All figures of a job.
fn figures<'a>(
    job: &'a Job,
    units: Units,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<Figures<'a>, Error> {
    sizes_fit(job)?;
    let common = Common::of(job, units, provenance, cautions)?;
    let clampings = clampings(&common, provenance, cautions)?;
    let mut turnings = Vec::with_capacity(clampings.len());
    for clamping in &clampings {
        let mut before = if clamping.turned_round {
            Before::touched(common.touched())
        } else {
            Before::of(job, common.touched())
        };
        let mut of_this = Vec::with_capacity(clamping.places.len());
        for place in &clamping.places {
            let turning = Turning::of(&common, clamping, place, before, provenance, cautions)?;
            before = turning.leaves(common.cross)?;
            of_this.push(turning);
        }
        turnings.push(of_this);
    }
    Ok(Figures {
        common,
        clampings,
        turnings,
    })
}

/// All steps in words, and what to expect of each surface.
pub(super) fn steps(figures: &Figures<'_>) -> Result<(Vec<Step>, Vec<ExpectedSurface>), Error> {
    let common = &figures.common;
    let job = common.job;
    let mut steps = Vec::with_capacity(24);
    let mut surfaces = Vec::new();
    let (mut number, mut cuts_before, mut stops_before) = (1, 0, 0);
    for (clamp, turnings) in figures.clampings.iter().zip(&figures.turnings) {
        let start = turnings
            .first()
            .map_or(common.touched(), |turning| turning.before.start);
        let face_step = match turnings.first() {
            Some(turning) => turning.rough_step.clone(),
            None => common.step_at(&common.roughing, start, &clamp.holding, clamp.whip)?,
        };
        let writer = Writer {
            common,
            job,
            cross: common.cross,
            carriage: common.carriage,
            u: common.units,
            clamp,
            start,
            face_step: &face_step,
            face_feed: turnings
                .first()
                .map_or(&common.rough_feed, |turning| &turning.finish_feed),
        };
        writer.set_up(&mut steps);
        let mut speed = face_step.spindle_speed;
        let mut surface_of = |at: usize, part: CutsOf, speed_before| {
            let surface = SurfaceWriter {
                writer: &writer,
                setup: &turnings[at],
                number: number + at,
                more_to_come: at + 1 < turnings.len(),
                cuts_before,
                stops_before,
                speed_before,
                part,
            };
            cuts_before += surface.range().len();
            stops_before += surface.stops_by(surface.range().end);
            (surface, stops_before)
        };
        let mut roughed_at = Vec::new();
        if let (true, Some(first)) = (job.changes_tools(), turnings.first()) {
            for (at, turning) in turnings.iter().enumerate() {
                let (surface, stops) = surface_of(at, CutsOf::Roughing, speed);
                surface.zero_x(&mut steps)?;
                surface.cuts(&mut steps)?;
                roughed_at.push(stops);
                speed = turning.rough_step.spindle_speed;
            }
            steps.push(writer.change_tools(&first.finish_step, speed));
            speed = first.finish_step.spindle_speed;
        }
        for (at, turning) in turnings.iter().enumerate() {
            let part = match roughed_at.get(at) {
                Some(stop) => CutsOf::Finishing { roughed_at: *stop },
                None => CutsOf::OneTool,
            };
            let (surface, _) = surface_of(at, part, speed);
            surface.zero_x(&mut steps)?;
            surface.cuts(&mut steps)?;
            surface.shoulder_and_size(&mut steps)?;
            surfaces.push(expected(common, turning)?);
            speed = turning.finish_step.spindle_speed;
        }
        number += turnings.len();
        writer.ends(turnings, speed, &mut steps)?;
        writer.part_off(&mut steps)?;
        let last = figures
            .clampings
            .last()
            .is_some_and(|last| last.turned_round == clamp.turned_round);
        if last {
            steps.push(writer.leave());
        }
    }
    // What lies before the last measurement is done.
    if let Some(last) = steps.iter().rposition(|step| step.kind == StepKind::Adjust) {
        for step in &mut steps[..last] {
            step.done = true;
        }
    }
    Ok((steps, surfaces))
}

/// What must be said where every diameter alone may be good often enough, and all of one part seldom are.
fn seldom_together(
    job: &Job,
    surfaces: &[ExpectedSurface],
    good: Probability,
    units: Units,
) -> Option<Caution> {
    let asked = job
        .preference(|p| p.least_good())
        .unwrap_or(LEAST_GOOD.value);
    if surfaces.len() < 2 || good >= asked {
        return None;
    }
    let hardest = surfaces
        .iter()
        .min_by(|a, b| a.good.trade().total_cmp(&b.good.trade()))?;
    let end = match hardest.surface.other_end() {
        false => job.part.surfaces(),
        true => job.part.other_end(),
    };
    let nominal = end.get(hardest.surface.index())?.diameter();
    let in_hundred = |chance: Probability| (100.0 * chance.trade()).floor();
    Some(Caution::new(
        Severity::Warning,
        "seldom_together",
        format!(
            "All {} diameters of one part come out good in {:.0} of 100 parts, where {} are asked for; the least sure of \
             them is {}, good in {:.0} of 100.",
            surfaces.len(),
            in_hundred(good),
            round_size(100.0 * asked.trade()),
            nominal.people(units),
            in_hundred(hardest.good),
        ),
    ))
}

/// The sheet of all figures.
pub(super) fn write(
    job: &Job,
    figures: Figures<'_>,
    measured: &[Measurement],
    mut provenance: Provenance,
    mut said: Vec<Caution>,
) -> Result<Sheet, Error> {
    let (steps, surfaces) = steps(&figures)?;
    let common = &figures.common;
    let ahead = steps.iter().filter(|step| !step.done);
    let seconds: f64 = ahead.map(|step| step.time.seconds()).sum();
    let batch = match job.preference(|p| p.batch()) {
        Some(parts) => {
            let all: f64 = steps.iter().map(|step| step.time.seconds()).sum();
            let in_cut = Duration::computed_trade(all);
            Batch::of(&figures, parts, in_cut, &mut provenance)?
        }
        None => None,
    };
    let mut kinds = figures.clampings.iter().map(|clamp| clamp.held.kind);
    // Where one end is held in the chuck alone, the other may have a centre all the same.
    let kind = kinds
        .find(|kind| *kind != HoldingKind::Chuck)
        .unwrap_or(HoldingKind::Chuck);
    let mut cautions = safety(job, kind);
    if figures.clampings.len() > 1 && kind != HoldingKind::BetweenCentres {
        said.push(two_axes(common.units));
    }
    cautions.extend(said);
    cautions.extend(limits_of_the_answer());
    let all = together(&surfaces);
    cautions.extend(seldom_together(job, &surfaces, all.good, common.units));
    Ok(Sheet {
        heading: figures.heading()?,
        kit: figures.kit(),
        dials: figures.dials(),
        prove: card(common),
        steps,
        expected: Expected::of(
            surfaces,
            all,
            figures.how_sure(all),
            figures.ways(),
            Duration::computed_trade(seconds),
        )?,
        batch,
        cautions,
        job: job.clone(),
        measured: measured.to_vec(),
        #[cfg(feature = "picture")]
        carried_pictures: Vec::new(),
        #[cfg(feature = "picture")]
        carried_page: None,
        units: common.units,
        support: figures
            .clampings
            .into_iter()
            .map(|clamp| clamp.support)
            .collect(),
        provenance,
    })
}

fn expected(common: &Common<'_>, turning: &Turning<'_>) -> Result<ExpectedSurface, Error> {
    let diameter = turning.diameter_at(common.cross, turning.datum.last.count())?;
    if !turning.guarded.contains(diameter) {
        return Err(Error::internal("a plan that ends outside the zone"));
    }
    let chance = &turning.chance;
    Ok(ExpectedSurface {
        surface: turning.place.at,
        diameter,
        limits: turning.place.surface.limits(),
        uncertainty: chance.uncertainty,
        good: chance.outcome.good,
        rework: chance.outcome.rework,
        scrap: chance.outcome.scrap,
        dominant: chance.budget.dominant(),
        shares: chance.shares.clone(),
        measuring_stops: chance.stops.clone(),
        finish: turning.roughness,
    })
}

/// What must be said of a part that is turned round.
fn two_axes(units: Units) -> Caution {
    Caution::new(
        Severity::Warning,
        "two_axes",
        format!(
            "The part is turned round: its two ends are on one axis only as well as it was clamped anew. Where the drawing \
             asks for a run-out of {}, use soft jaws bored in place, or turn both ends between centres.",
            match units {
                Units::Metric => "a few hundredths of a millimetre",
                Units::Inch => "a thousandth of an inch or two",
            }
        ),
    )
}
