//! Along the axis: overhang, the length's limits, and where the carriage goes.

use super::job::Job;
use crate::advice::feed::FeedChoice;
use crate::advice::spindle::SpindleChoice;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::engagement::edge_lead;
use crate::physics::speed;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::dial::Divisions;
use crate::quantity::unit::Units;
use crate::quantity::{DepthOfCut, Diameter, Overhang, Quantity, WorkLength, round_size};
use crate::shop::dial::{Dial, Ring};
use crate::standards::general_tolerance::{self, GeneralClass};
use crate::standards::limits::LengthLimits;

/// How much is taken off the face where nothing else is asked.
const FACING: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(1.0),
    "judgement, no source",
    Standing::Estimate,
);

/// The same in a shop that reads inches: 0.04 in.
const FACING_INCH: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(1.016),
    "judgement, no source",
    Standing::Estimate,
);

/// How much is taken off the face.
pub(super) fn facing(job: &Job, units: Units, provenance: &mut Provenance) -> WorkLength {
    job.preference(|p| p.facing()).unwrap_or_else(|| {
        let usual = match units {
            Units::Metric => &FACING,
            Units::Inch => &FACING_INCH,
        };
        provenance.open("taken off the face", usual)
    })
}

/// The next length that a person sets with a rule: whole millimetres, or twentieths of an inch.
pub(super) fn settable(mm: f64, units: Units) -> f64 {
    let step = match units {
        Units::Metric => 1.0,
        Units::Inch => 1.27,
    };
    round_size((mm / step - 1e-9).ceil() * step)
}

/// Width of the tool holder to the left of the tip.
const HOLDER_WIDTH: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(10.0),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// How far beyond the shoulder the tool may ever go.
const OVERRUN: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(2.0),
    "judgement, no source",
    Standing::Estimate,
);

/// Clearance kept between holder and jaws.
const JAW_CLEARANCE: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(2.0),
    "judgement, no source",
    Standing::Estimate,
);

/// Run-in before the face, in mm: judgement, no source.
pub(super) const RUN_IN: f64 = 2.0;

/// What is left before the shoulder until the last, turned by hand and faced outwards, in mm:
/// judgement, no source.
const LEFT_AT_SHOULDER: f64 = 0.2;

/// Least grip in the jaws over the bar's diameter.
const GRIP_OVER_DIAMETER: Sourced<f64> = Sourced::new(
    0.35,
    "judgement, no source; the trade grips about one diameter",
    Standing::Estimate,
);

/// The feed is taken off this far before the shoulder, or so many seconds, whichever is more:
/// judgement, no source.
const FEED_OFF_MM: f64 = 2.0;
const FEED_OFF_SECONDS: f64 = 1.5;

/// Where the carriage goes, in whole divisions from the face.
#[derive(Debug, Clone, Copy)]
pub(super) struct CarriagePlan {
    /// Where the feed is taken off; none where the whole length is too short to feed.
    pub(super) feed_off: Option<Divisions>,
    /// How far each cut goes.
    pub(super) stop: Divisions,
    /// How far a tool goes whose edge runs ahead of its tip: what is left before the shoulder a knife tool takes.
    pub(super) slanted: Option<(Divisions, WorkLength)>,
}

/// A place along the axis by the carriage's dial: a mark, or by eye a tenth beyond it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Along {
    pub(super) mark: Divisions,
    pub(super) tenths: u8,
}

impl Along {
    pub(super) const FACE: Self = Self {
        mark: Divisions::ZERO,
        tenths: 0,
    };

    /// From the face, in mm.
    pub(super) fn travel(self, dial: &Dial) -> f64 {
        let beyond = f64::from(self.tenths) / 10.0 * dial.travel_per_division();
        round_size(dial.travel_at(self.mark) + beyond)
    }
}

/// A mark is good enough for a shoulder that keeps this share of the zone from both limits: judgement, no source.
pub(super) const KEPT_FROM_LIMITS: f64 = 0.25;

/// Where a shoulder goes whose surface ends `outer` from the face, in mm by the carriage's marks: the mark nearest to
/// the length of the drawing; where that comes near a limit, what is farthest from both, halfway between marks where
/// no mark will do.
pub(super) fn shoulder_at(
    reach: WorkLength,
    outer: f64,
    dial: &Dial,
    limits: LengthLimits,
    field: &str,
) -> Result<Along, Error> {
    let (shortest, longest) = (limits.shortest().mm(), limits.longest().mm());
    // How far inside its limits the length then is.
    let inside = |at: Along| {
        let length = round_size(at.travel(dial) - outer);
        round_size((length - shortest).min(longest - length))
    };
    let wanted = round_size(KEPT_FROM_LIMITS * (longest - shortest));
    let whole = |marks: f64| {
        let mark = Divisions::from_rounded(marks.round())?;
        Ok::<_, Error>(Along { mark, tenths: 0 })
    };
    let nearest = whole(dial.divisions_of_travel(reach.mm()))?;
    if inside(nearest) >= wanted {
        return Ok(nearest);
    }
    let middle = dial.divisions_of_travel(outer + 0.5 * (shortest + longest));
    let nearest = whole(middle)?;
    let half = Along {
        mark: Divisions::from_rounded(middle.floor())?,
        tenths: 5,
    };
    // A readout has nothing between its steps.
    let by_eye = dial.ring() != Ring::Readout;
    let best = match by_eye && inside(nearest) < wanted && inside(half) > inside(nearest) {
        true => half,
        false => nearest,
    };
    if inside(best) >= 0.0 {
        return Ok(best);
    }
    let at = |marks: f64| Divisions::from_rounded(marks).map(|marks| dial.travel_at(marks));
    Err(Error::new(
        ErrorKind::Impossible,
        field,
        format!(
            "marks of the carriage dial at {} mm and {} mm",
            at(middle.floor())?,
            at(middle.floor() + 1.0)?
        ),
        format!(
            "a mark{} within {} to {}",
            match by_eye {
                true => ", or halfway between two,",
                false => "",
            },
            limits.shortest(),
            limits.longest()
        ),
        "wider limits of the length (length_limits), or a finer dial of the carriage",
    ))
}

/// Room that the tool needs between a shoulder and the jaws, or the dog.
#[derive(Debug, Clone, Copy)]
pub(super) struct Room {
    /// How far beyond the shoulder the tool may ever go, in mm.
    pub(super) overrun: f64,
    /// From the shoulder to the jaws, or to the dog, in mm.
    pub(super) to_jaws: f64,
}

/// The room between a shoulder and the jaws for cuts as deep as `deepest`.
pub(super) fn room(job: &Job, deepest: Option<DepthOfCut>, provenance: &mut Provenance) -> Room {
    let clearance = ("clearance between holder and jaws", &JAW_CLEARANCE);
    room_before(job, deepest, clearance, provenance)
}

/// The same before a dog, which wants another clearance.
pub(super) fn room_before_a_dog(
    job: &Job,
    deepest: Option<DepthOfCut>,
    clearance: &Sourced<WorkLength>,
    provenance: &mut Provenance,
) -> Room {
    let clearance = ("clearance between holder and dog", clearance);
    room_before(job, deepest, clearance, provenance)
}

fn room_before(
    job: &Job,
    deepest: Option<DepthOfCut>,
    (what, clearance): (&'static str, &Sourced<WorkLength>),
    provenance: &mut Provenance,
) -> Room {
    let holder = provenance
        .open("holder left of the tip", &HOLDER_WIDTH)
        .mm();
    let overrun = provenance
        .open("overrun beyond the shoulder", &OVERRUN)
        .mm();
    let clearance = provenance.open(what, clearance).mm();
    // The outer end of an edge below 90 degrees runs ahead of the tip, towards the jaws.
    let lead = deepest
        .and_then(|depth| edge_lead(depth, job.least_edge_angle()))
        .map_or(0.0, WorkLength::mm);
    Room {
        overrun,
        to_jaws: holder.max(lead) + overrun + clearance,
    }
}

/// The least length that is gripped of a bar of this diameter, in mm.
pub(super) fn least_grip(diameter: Diameter, provenance: &mut Provenance) -> f64 {
    provenance.open("least grip over diameter", &GRIP_OVER_DIAMETER) * diameter.mm()
}

/// How far the bar stands out before it is faced.
pub(super) fn overhang(
    job: &Job,
    reach: f64,
    to_jaws: f64,
    facing: WorkLength,
    units: Units,
    provenance: &mut Provenance,
) -> Result<Overhang, Error> {
    let needed = reach + facing.mm() + to_jaws;
    let stock = job.stock.length().mm();
    let least_grip = least_grip(job.stock.diameter(), provenance);
    // Rounded up to what a rule sets, where the bar is long enough for that.
    let readable = settable(needed, units);
    let out = if stock - readable >= least_grip {
        readable
    } else {
        needed
    };
    if stock - out < least_grip {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "part.length",
            format!(
                "{} on a bar of {}",
                WorkLength::computed_trade(round_size(reach)),
                job.stock.length()
            ),
            format!(
                "a bar of at least {:.1} mm: {reach:.1} mm for the part, {facing} to face, {to_jaws:.1} mm for the holder before \
                 the jaws, {least_grip:.1} mm to grip",
                out + least_grip,
            ),
            "saw a longer bar or turn a shorter length: the tool would go into the jaws, or the grip be too short",
        ));
    }
    within_the_lathe(job, out, "part.length")?;
    Overhang::from_mm(out)
}

/// Refuses what is longer than the lathe has between its centres.
pub(super) fn within_the_lathe(job: &Job, out: f64, field: &str) -> Result<(), Error> {
    match job.lathe.between_centres() {
        Some(between) if out > between.mm() => Err(Error::new(
            ErrorKind::Impossible,
            field,
            format!("an overhang of {out:.1} mm"),
            format!("at most the {between} between the centres"),
            "a shorter part or a longer lathe",
        )),
        _ => Ok(()),
    }
}

/// Warns of a grip shorter than one diameter.
pub(super) fn short_grip(
    grip: WorkLength,
    diameter: Diameter,
    units: Units,
    cautions: &mut Vec<Caution>,
) {
    if grip.mm() < diameter.mm() {
        cautions.push(Caution::new(
            Severity::Warning,
            "short_grip",
            format!(
                "Only {} of the diameter of {} are in the jaws, less than one diameter: a live centre or a longer grip would be surer. Without, go to \
                 each roughing mark in two cuts, half of the way first, and nothing pushes hard from the side.",
                grip.people(units),
                diameter.people(units)
            ),
        ));
    }
}

/// The limits of a length: those of the drawing, or the general tolerances, class medium.
pub(super) fn length_limits(
    length: WorkLength,
    given: Option<LengthLimits>,
    field: &str,
    provenance: &mut Provenance,
) -> Result<LengthLimits, Error> {
    if let Some(limits) = given {
        return Ok(limits);
    }
    let allowed =
        general_tolerance::linear(length, GeneralClass::Medium).map_err(|error| error.at(field))?;
    let allowed = provenance.open("limits of the length, class medium", &allowed);
    LengthLimits::new(
        WorkLength::from_mm(round_size(length.mm() - allowed.mm()))
            .map_err(|error| error.at(field))?,
        WorkLength::from_mm(round_size(length.mm() + allowed.mm()))?,
    )
}

/// Where the carriage goes for a shoulder at `length` from the face, the next one towards the face at `outer`, both in
/// mm by its marks.
pub(super) fn carriage_plan(
    length: f64,
    outer: f64,
    dial: &Dial,
    lead: Option<WorkLength>,
    feeds: &[(&FeedChoice, &SpindleChoice)],
) -> Result<CarriagePlan, Error> {
    let ahead = lead.map_or(0.0, WorkLength::mm);
    let tip = length - ahead;
    if lead.is_some() && tip - LEFT_AT_SHOULDER <= outer {
        return Err(Error::new(
            ErrorKind::Impossible,
            "tool.cutting_edge_angle",
            format!("an edge whose outer end runs {ahead:.2} mm ahead of its tip"),
            format!(
                "one that leaves some of the length of {:.2} mm to the tip",
                length - outer
            ),
            "a tool with a cutting edge angle of 90 deg or more, a knife tool",
        ));
    }
    let slanted = match lead {
        Some(lead) => Some((
            Divisions::from_rounded(dial.divisions_of_travel(tip).floor())?,
            lead,
        )),
        None => None,
    };
    let stop = Divisions::from_rounded(
        dial.divisions_of_travel((tip - LEFT_AT_SHOULDER).max(0.0))
            .floor(),
    )?;
    // One place for all cuts, by the fastest of them.
    let rate = feeds
        .iter()
        .map(|(feed, step)| speed::feed_rate(feed.feed, step.spindle_speed).mm_per_min())
        .fold(0.0, f64::max);
    let by_hand = feeds.iter().any(|(feed, _)| feed.by_hand);
    let before = FEED_OFF_MM.max(FEED_OFF_SECONDS / 60.0 * rate);
    let off = tip - LEFT_AT_SHOULDER - before;
    let feed_off = if off > 0.0 && !by_hand {
        Some(Divisions::from_rounded(
            dial.divisions_of_travel(off).floor(),
        )?)
    } else {
        None
    };
    Ok(CarriagePlan {
        feed_off,
        stop,
        slanted,
    })
}
