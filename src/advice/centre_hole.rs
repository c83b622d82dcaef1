//! Which centre hole for a live centre.

use crate::physics::{centre, speed};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    CuttingSpeed, Diameter, MeanPressure, PassiveForce, SpindleSpeed, WorkLength,
};
use crate::shop::lathe::{Lathe, Spindle};
use crate::standards::centre_hole::{CentreHole, Form, PILOT_BY_PRACTICE, form_a, form_b};

/// Cutting speed of a centre drill of high-speed steel over that of turning.
pub const DRILL_OVER_TURNING: Sourced<f64> = Sourced::new(
    0.6,
    "common practice, no source: 0.5 to 0.7, counted at the countersink",
    Standing::CommonPractice,
);

/// Largest countersink over the finished diameter of the end.
pub const COUNTERSINK_OVER_END: Sourced<f64> =
    Sourced::new(0.5, "common practice, no source", Standing::CommonPractice);

/// Mean pressure that the cone of a centre in grease bears.
pub const CONE_BEARS: Sourced<MeanPressure> = Sourced::new(
    MeanPressure::computed_trade(10.0),
    "common practice, no source: 5 to 10 N/mm2 for plain centres; a live centre has a limit of its own",
    Standing::CommonPractice,
);

/// The centre hole chosen.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct CentreHoleChoice {
    /// Diameter of the pilot.
    pub pilot: Diameter,
    /// Diameter of the countersink at the face.
    pub countersink: Diameter,
    /// How deep to drill from the face.
    pub depth: WorkLength,
    /// The spindle speed, from the countersink's diameter.
    pub spindle_speed: SpindleSpeed,
}

/// The centre hole of form A for a bar of this diameter whose end is finished to `end`.
///
/// The size follows the work's diameter by the rule of the trade, and steps down until the
/// countersink is at most half of the finished end; none when no size is that small.
///
/// # Example
/// ```
/// use turnwright::{advice::centre_hole, CuttingSpeed, Diameter, Lathe, Provenance, SpindleSpeed};
/// let steps = [250.0, 500.0, 1000.0, 2000.0].map(SpindleSpeed::from_rpm);
/// let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?;
/// let hole = centre_hole::choose(
///     &lathe,
///     Diameter::from_mm(25.0)?,
///     CuttingSpeed::from_m_per_min(30.0)?,
///     None,
///     &mut Provenance::default(),
/// );
/// assert_eq!(hole.map(|h| (h.pilot.mm(), h.spindle_speed.rpm())), Some((2.5, 1000.0)));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn choose(
    lathe: &Lathe,
    end: Diameter,
    turning_speed: CuttingSpeed,
    cap: Option<SpindleSpeed>,
    provenance: &mut Provenance,
) -> Option<CentreHoleChoice> {
    let hole = for_work(Form::A, end, end, None, provenance)?.hole;
    let ideal = drilling_speed(turning_speed, hole.countersink(), provenance);
    Some(CentreHoleChoice {
        pilot: hole.pilot(),
        countersink: hole.countersink(),
        depth: hole.drilling_depth(),
        spindle_speed: step_up_to(lathe, cap.map_or(ideal, |cap| cap.min(ideal)))?,
    })
}

/// A centre hole for a work, and how hard the centre presses in it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct HoleForWork {
    pub(crate) hole: CentreHole,
    /// The mean pressure of the load, where one is known.
    pub(crate) pressure: Option<MeanPressure>,
    /// Whether a cone in grease bears it.
    pub(crate) bears: bool,
}

/// The centre hole for a work of this diameter whose end is finished to `end`, none where even the
/// smallest is too large for it.
///
/// By the rule of the trade for the work's diameter; larger where the load across asks for it; never
/// with more than half of the finished end at the face.
pub(crate) fn for_work(
    form: Form,
    work: Diameter,
    end: Diameter,
    load: Option<PassiveForce>,
    provenance: &mut Provenance,
) -> Option<HoleForWork> {
    let share = provenance.open("countersink over finished end", &COUNTERSINK_OVER_END);
    let rule = &PILOT_BY_PRACTICE;
    let row = rule
        .value
        .iter()
        .find(|row| row.up_to().is_none_or(|up_to| work <= up_to))?;
    let usual = row.size().mm();
    provenance.record(
        "pilot for the work's diameter",
        &row.size(),
        rule.source,
        rule.standing,
    );
    let sizes = match form {
        Form::A => form_a(),
        Form::B => form_b(),
    };
    let fits = |hole: &&CentreHole| hole.largest().mm() <= share * end.mm();
    let usual_at = sizes
        .iter()
        .rposition(|hole| hole.pilot().mm() <= usual && fits(&hole))?;
    let mut found = None;
    if let Some(load) = load {
        let most = provenance.open("mean pressure on a cone in grease", &CONE_BEARS);
        // From the usual one up, the first that bears the load; else the largest that fits.
        for hole in sizes[usual_at..].iter().filter(fits) {
            let pressure = centre::side_pressure(load, hole.countersink(), hole.pilot()).ok();
            let bears = pressure.is_some_and(|pressure| pressure <= most);
            found = Some(HoleForWork {
                hole: *hole,
                pressure,
                bears,
            });
            if bears {
                break;
            }
        }
    }
    let found = found.unwrap_or(HoleForWork {
        hole: sizes[usual_at],
        pressure: None,
        bears: true,
    });
    provenance.record(
        match form {
            Form::A => "centre hole form A, least drilling depth",
            Form::B => "centre hole form B, least drilling depth",
        },
        &found.hole.drilling_depth(),
        match form {
            Form::A => "ISO 866 / ISO 6411, from memory",
            Form::B => "ISO 2540 / ISO 6411, from memory",
        },
        Standing::FromMemory,
    );
    Some(found)
}

/// The spindle speed for a centre drill, from the largest diameter at which it cuts.
pub(crate) fn drilling_speed(
    turning_speed: CuttingSpeed,
    largest: Diameter,
    provenance: &mut Provenance,
) -> SpindleSpeed {
    let factor = provenance.open(
        "centre drill over turning, cutting speed",
        &DRILL_OVER_TURNING,
    );
    let wanted = CuttingSpeed::computed_trade(turning_speed.m_per_min() * factor);
    speed::spindle_speed(wanted, largest)
}

/// The fastest speed of a lathe up to this one; none where its slowest is faster.
pub(crate) fn step_up_to(lathe: &Lathe, most: SpindleSpeed) -> Option<SpindleSpeed> {
    match lathe.spindle() {
        Spindle::Steps(steps) => steps.iter().rev().find(|step| **step <= most).copied(),
        Spindle::Ranges(ranges) => ranges
            .iter()
            .filter(|r| r.low() <= most)
            .map(|r| r.high().min(most))
            .max(),
    }
}
