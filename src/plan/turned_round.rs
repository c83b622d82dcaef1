//! The second clamping: a part that is turned round, cut to length, gripped on a finished diameter.

use super::clamping::{Grip, Off, Shape, deepest, reach_of};
use super::common::Common;
use super::lengths::{self, length_limits, room};
use crate::advice::support::FREE_UP_TO;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{BladeWidth, ChamferLeg, Overhang, Quantity, WorkLength, round_size};
use crate::shop::holding::HoldingKind;
use crate::standards::limits::LengthLimits;

/// The jaws are kept this far from the shoulder of the surface that is gripped, in mm: judgement, no source.
const SHOULDER_CLEARANCE: f64 = 2.0;

/// The same in a shop that reads inches: 0.08 in.
const SHOULDER_CLEARANCE_INCH: f64 = 2.032;

fn shoulder_clearance(units: Units) -> f64 {
    match units {
        Units::Metric => SHOULDER_CLEARANCE,
        Units::Inch => SHOULDER_CLEARANCE_INCH,
    }
}

/// More than this over the length of the part is cut off, not turned off, in mm: judgement, no source.
const WORTH_SAWING: f64 = 5.0;

/// Least that is left to face on an end that was cut off, in mm: judgement, no source.
const LEFT_BY_A_SAW: f64 = 1.0;

/// The length from face to face.
pub(super) struct Overall {
    pub(super) length: WorkLength,
    pub(super) limits: LengthLimits,
    /// What the second face takes off.
    pub(super) facing: WorkLength,
    /// To what length the part is cut off before it is turned round, where the bar is so much longer.
    pub(super) cut_to: Option<WorkLength>,
}

pub(super) fn overall(
    common: &Common<'_>,
    facing: WorkLength,
    provenance: &mut Provenance,
) -> Result<Option<Overall>, Error> {
    let job = common.job;
    let Some(overall) = job.part.overall_length() else {
        return Ok(None);
    };
    let limits = length_limits(
        overall,
        job.part.overall_limits(),
        "part.overall_length",
        provenance,
    )?;
    let over = round_size(job.stock.length().mm() - facing.mm() - overall.mm());
    if over < LEAST_FACING {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "part.overall_length",
            format!("{overall} from a bar of {}", job.stock.length()),
            format!(
                "a bar of at least {:.1} mm: {facing} and {LEAST_FACING} mm are faced off its ends",
                overall.mm() + facing.mm() + LEAST_FACING
            ),
            "saw a longer bar, or face less (preferences.facing)",
        ));
    }
    let left = facing.mm().max(LEFT_BY_A_SAW);
    let cut_off = over > left + WORTH_SAWING;
    let (facing, cut_to) = match cut_off {
        true => (
            left,
            Some(WorkLength::from_mm(round_size(overall.mm() + left))?),
        ),
        false => (over, None),
    };
    Ok(Some(Overall {
        length: overall,
        limits,
        facing: WorkLength::from_mm(facing)?,
        cut_to,
    }))
}

/// What is said of a bar that is longer than the part, and of a blade that has nothing to part off.
pub(super) fn cut_off(
    common: &Common<'_>,
    overall: &Overall,
    blade: Option<BladeWidth>,
    parted: Option<WorkLength>,
) -> Option<Caution> {
    let note = |code, words: String| Some(Caution::new(Severity::Note, code, words));
    match (overall.cut_to, blade, parted) {
        (Some(_), _, Some(_)) | (None, None, _) => None,
        (Some(cut_to), blade, None) => note(
            "sawn_off",
            format!(
                "The bar is longer than the part and its two faces need: it is sawn off to {} before it is turned round{}.",
                cut_to.people(common.units),
                match blade {
                    Some(_) => "; for the parting tool too little of it would be left in the jaws",
                    None => "",
                }
            ),
        ),
        (None, Some(_), _) => note(
            "nothing_to_part_off",
            String::from(
                "Nothing is parted off: the bar is hardly longer than the part and its two faces need, and the second \
                 face takes the rest.",
            ),
        ),
    }
}

/// Least that is faced off the second end, in mm: judgement, no source.
const LEAST_FACING: f64 = 0.2;

/// The second clamping: on a finished diameter, jaws towards the middle of the part.
pub(super) fn turned_round(
    common: &Common<'_>,
    overall: &Overall,
    off: Off,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<(Shape, Vec<Section>), Error> {
    let job = common.job;
    let &Overall {
        length: overall,
        limits,
        facing,
        ..
    } = overall;
    let (first, other) = (job.part.surfaces(), job.part.other_end());
    let room = room(job, deepest(common, other), provenance);
    let reach = reach_of(other);
    let mut end = reach_of(first);
    let centred = (job.holding.as_ref()).is_some_and(|h| h.kind() == HoldingKind::ChuckAndCentre);
    // The innermost surface that is long enough leaves the least standing out.
    let mut inner: Vec<Section> = Vec::new();
    let mut refused = None;
    for surface in first.iter().rev() {
        let diameter = surface.limits().middle();
        let beyond = overall.mm() - end;
        let groove = surface.undercut().map_or(0.0, |u| u.width().mm());
        let beside = beyond + shoulder_clearance(common.units) + groove;
        // Where the tool needs more room than that, the jaws go farther on.
        let out = match beside - reach >= room.to_jaws {
            true => beside,
            false => lengths::settable(reach + room.to_jaws, common.units),
        };
        let clear = round_size(out - beyond);
        let edge = surface.chamfer().map_or(0.0, ChamferLeg::mm);
        let length = round_size(surface.length().mm() - clear - edge);
        let least = lengths::least_grip(diameter, provenance);
        let (share, far) = (
            provenance.open(
                "grip of a turned-round part over its overhang",
                &GRIP_OVER_OVERHANG,
            ),
            provenance.open("overhang over diameter for the chuck alone", &FREE_UP_TO),
        );
        let (least, farthest) = match centred {
            true => (least, f64::INFINITY),
            false => (least.max(share * out), far * diameter.mm()),
        };
        if surface.small_diameter().is_none() && length >= least && out <= farthest {
            lengths::within_the_lathe(job, out + facing.mm(), "part.overall_length")?;
            let length = WorkLength::computed_trade(length);
            lengths::short_grip(length, diameter, common.units, cautions);
            let mut root = vec![Section::cylinder(diameter, WorkLength::from_mm(clear)?)];
            root.extend(inner.into_iter().rev());
            let collar = overall.mm() - reach_of(first) - reach;
            if collar > 1e-6 {
                root.push(Section::cylinder(
                    job.stock.diameter(),
                    WorkLength::computed_trade(collar),
                ));
            }
            let grip = Grip::Turned {
                nominal: surface.diameter(),
                #[cfg(feature = "picture")]
                diameter,
                length,
            };
            let shape = Shape {
                turned_round: true,
                facing,
                overall: Some((overall, limits)),
                parted: None,
                core: None,
                off,
                overhang: Overhang::from_mm(round_size(out + facing.mm()))?,
                clear,
                reach,
                room,
                grip,
                driven: None,
            };
            return Ok((shape, root));
        }
        if surface.small_diameter().is_none() && refused.is_none() {
            refused = Some((surface.diameter(), length.max(0.0), out, least, farthest));
        }
        inner.push(Section::cylinder(diameter, surface.length()));
        end = round_size(end - surface.length().mm());
    }
    Err(Error::new(
        ErrorKind::Impossible,
        "part.other_end",
        match refused {
            Some((diameter, length, out, ..)) => format!(
                "{length:.1} mm of the diameter of {diameter} for the jaws, {out:.1} mm standing out of them"
            ),
            None => String::from("no cylinder at the first end that the jaws could hold"),
        },
        match refused {
            Some((_, length, out, least, farthest)) if length >= least && out > farthest => {
                format!("no more than {farthest:.1} mm standing out of the chuck alone")
            }
            Some((_, _, _, least, _)) => {
                format!("a cylinder of which the jaws hold at least {least:.1} mm")
            }
            None => String::from("a cylinder at the first end"),
        },
        "turn the other end first, name \"chuck_and_centre\", or turn all of it in one clamping from a longer bar",
    ))
}

/// Least grip of a part that is turned round over what stands out of the jaws, without a centre.
const GRIP_OVER_OVERHANG: Sourced<f64> = Sourced::new(
    1.0 / 3.0,
    "judgement, no source: a shorter grip lets the cut lever the part out of the jaws",
    Standing::Estimate,
);
