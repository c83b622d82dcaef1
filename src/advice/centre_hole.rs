//! Which centre hole for a live centre.

use crate::physics::speed;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{CuttingSpeed, Diameter, SpindleSpeed, WorkLength};
use crate::shop::lathe::{Lathe, Spindle};
use crate::standards::centre_hole::{CentreHole, PILOT_BY_PRACTICE, form_a};

/// Cutting speed of a centre drill of high-speed steel over that of turning.
pub const DRILL_OVER_TURNING: Sourced<f64> = Sourced::new(
    0.6,
    "common practice, no source: 0.5 to 0.7, counted at the countersink",
    Standing::CommonPractice,
);

/// Largest countersink over the finished diameter of the end.
pub const COUNTERSINK_OVER_END: Sourced<f64> =
    Sourced::new(0.5, "common practice, no source", Standing::CommonPractice);

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
    let share = provenance.open("countersink over finished end", &COUNTERSINK_OVER_END);
    let rule = &PILOT_BY_PRACTICE;
    let row = rule
        .value
        .iter()
        .find(|row| row.up_to().is_none_or(|up_to| end <= up_to))?;
    let usual = row.size().mm();
    provenance.record(
        "pilot for the work's diameter",
        &row.size(),
        rule.source,
        rule.standing,
    );
    let hole: &CentreHole = form_a()
        .iter()
        .rev()
        .find(|hole| hole.pilot().mm() <= usual && hole.countersink().mm() <= share * end.mm())?;
    provenance.record(
        "centre hole form A, least drilling depth",
        &hole.drilling_depth(),
        "ISO 866 / ISO 6411, from memory",
        Standing::FromMemory,
    );
    let factor = provenance.open(
        "centre drill over turning, cutting speed",
        &DRILL_OVER_TURNING,
    );
    let wanted = CuttingSpeed::computed_trade(turning_speed.m_per_min() * factor);
    let ideal = speed::spindle_speed(wanted, hole.countersink());
    let most = cap.map_or(ideal, |cap| cap.min(ideal));
    let spindle_speed = match lathe.spindle() {
        Spindle::Steps(steps) => *steps.iter().rev().find(|step| **step <= most)?,
        Spindle::Ranges(ranges) => ranges
            .iter()
            .filter(|r| r.low() <= most)
            .map(|r| r.high().min(most))
            .max()?,
    };
    Some(CentreHoleChoice {
        pilot: hole.pilot(),
        countersink: hole.countersink(),
        depth: hole.drilling_depth(),
        spindle_speed,
    })
}
