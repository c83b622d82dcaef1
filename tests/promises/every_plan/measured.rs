//! The promises of a sheet after a measurement.

use turnwright::Diameter;
use turnwright::advice::diagnosis::SizeAt;
use turnwright::plan::{Job, Sheet, StepKind};

use super::{count, per_mark};
use crate::simulated_lathe::dial::Chance;

/// What a measurement that was off brought about.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Followed {
    NoStop,
    Sheet,
    NoSheet,
}

/// What a sheet promises of a measurement at a stop chosen by chance.
pub fn measured(job: &Job, sheet: &Sheet, chance: &mut Chance) -> Result<Followed, String> {
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
    // The tool that finishes is zeroed on that size.
    let touched = step
        .text
        .contains("there the finishing tool will be zeroed on it");
    if moved.repeat || set || left_on || touched {
        holds!(last == end, "the readings were to stay: {}", moved.text);
    } else {
        // A fixed ring is counted to the aim, up to half a mark from where it was to end by the sheet, and another
        // mark next to that may serve better.
        let by = tenths as f64 / 10.0;
        holds!(
            (by - off).abs() < 1.5 + 1e-9,
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
