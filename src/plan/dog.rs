//! A bar between two centres, driven by a dog: how long it has to be, and what the dog goes over.

use super::clamping::{
    Clamping, Grip, Off, Shape, deepest, hold, no_centre_hole, places, reach_of,
};
use super::common::Common;
use super::job::Job;
use super::lengths::{self, Room};
use super::set_up::short_end_of_bar;
use super::turned_round::{Overall, cut_off, overall};
use crate::advice::centre_hole::{self, CentreHoleChoice};
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{ChamferLeg, Diameter, Overhang, RunOut, WorkLength, round_size};
use crate::shop::holding::HoldingKind;
use crate::shop::surface::Surface;
use crate::standards::limits::LengthLimits;

/// Width of a driving dog along the bar.
const WIDTH: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(20.0),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// The same in a shop that reads inches: 0.8 in.
const WIDTH_INCH: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(20.32),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// Clearance kept between holder and dog: more than before jaws, for it is not as round as they are.
const CLEARANCE: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(5.0),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// How far a dog with its screw stands out beyond the bar, for the swing.
const STANDS_OUT: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(25.0),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// How much of the part may lie behind the dog: its tail has to reach over it into the driver plate.
const TAIL: Sourced<WorkLength> = Sourced::new(
    WorkLength::computed_trade(30.0),
    "judgement, no source: measure yours",
    Standing::Estimate,
);

/// Most that the cone of the centre in the spindle may run out by.
const CENTRE_RUNS_OUT: Sourced<RunOut> = Sourced::new(
    RunOut::computed_trade(0.01),
    "judgement, no source: an end that is turned on it runs out as far",
    Standing::Estimate,
);

/// The same in a shop that reads inches: 0.0005 in.
const CENTRE_RUNS_OUT_INCH: Sourced<RunOut> = Sourced::new(
    RunOut::computed_trade(0.0127),
    "judgement, no source: an end that is turned on it runs out as far",
    Standing::Estimate,
);

/// What there is more of a clamping between two centres.
#[derive(Debug, Clone)]
pub(super) struct Driven {
    /// From the finished face to the dog, in mm.
    pub(super) to_dog: f64,
    /// How much of the bar lies behind the dog, in mm.
    pub(super) behind: f64,
    /// The centre hole at the end that the dog drives.
    pub(super) hole: CentreHoleChoice,
    /// What the other face takes off in the chuck, before anything goes between the centres.
    pub(super) facing: WorkLength,
    /// What the length from face to face has to come to, where that is asked for.
    pub(super) overall: Option<(WorkLength, LengthLimits)>,
    /// How the bar is brought to that length beforehand.
    pub(super) off: Off,
    pub(super) runs_out: RunOut,
}

/// Whether a job is to be turned between two centres: only where the asker says so.
pub(super) fn is_driven(job: &Job) -> bool {
    let asked = job.holding.as_ref();
    asked.is_some_and(|holding| holding.kind() == HoldingKind::BetweenCentres)
}

/// A dog along the bar, and its room.
struct Dog {
    width: f64,
    /// From the shoulder to it, in mm.
    before: f64,
}

/// The clampings between two centres: one, or one for each end.
pub(super) fn clampings<'a>(
    common: &Common<'a>,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<Vec<Clamping<'a>>, Error> {
    let job = common.job;
    never_parted(job)?;
    let facing = lengths::facing(job, common.units, provenance);
    let found = overall(common, facing, provenance)?;
    cautions.extend(
        found
            .as_ref()
            .and_then(|of| cut_off(common, of, None, None)),
    );
    let ends = Ends::of(job, facing, found)?;
    ends.fit(job, provenance)?;
    let (first, other) = (job.part.surfaces(), job.part.other_end());
    let runs_out = match common.units {
        Units::Metric => &CENTRE_RUNS_OUT,
        Units::Inch => &CENTRE_RUNS_OUT_INCH,
    };
    let runs_out = provenance.open("most run-out of the centre in the spindle", runs_out);
    let width = match common.units {
        Units::Metric => &WIDTH,
        Units::Inch => &WIDTH_INCH,
    };
    let width = provenance.open("width of a dog", width).mm();

    let room = lengths::room_before_a_dog(job, deepest(common, first), &CLEARANCE, provenance);
    let (length, reach) = (ends.length.mm(), reach_of(first));
    let dog = Dog {
        width,
        before: room.to_jaws,
    };
    dog.fits_on_the_bar(job, &ends, reach)?;
    let bar = Section::cylinder(
        job.stock.diameter(),
        WorkLength::computed_trade(round_size(length - reach)),
    );
    let shape = |turned_round, facing: WorkLength, reach, room: Room, grip, driven| Shape {
        turned_round,
        facing,
        overall: match turned_round {
            true => ends.overall,
            false => None,
        },
        parted: None,
        core: None,
        off: Off::Whole,
        overhang: Overhang::computed_trade(round_size(length + facing.mm())),
        clear: 0.0,
        reach,
        room,
        grip,
        driven: Some(driven),
    };
    let driven = |to_dog: f64, hole, facing| Driven {
        to_dog: round_size(to_dog),
        behind: round_size(length - to_dog - width),
        hole,
        facing,
        overall: ends.overall,
        off: ends.off,
        runs_out,
    };
    let hole = centre_hole_of(common, end_of(job, other), provenance)?;
    let grip = Grip::Stock {
        length: WorkLength::computed_trade(width),
    };
    let of_first = places(common, first, false, &[bar], provenance)?;
    let mut found = vec![hold(
        common,
        shape(
            false,
            facing,
            reach,
            room,
            grip,
            driven(length - width, hole, ends.other_facing),
        ),
        of_first,
        provenance,
        cautions,
    )?];
    if other.is_empty() {
        return Ok(found);
    }
    let room = lengths::room_before_a_dog(job, deepest(common, other), &CLEARANCE, provenance);
    let reach = reach_of(other);
    let dog = Dog {
        width,
        before: room.to_jaws,
    };
    let (grip, to_dog) = dog.over_the_finished_end(first, length, reach, provenance)?;
    let hole = centre_hole_of(common, end_of(job, first), provenance)?;
    let root = turned_end_for_end(job, length);
    let of_other = places(common, other, true, &root, provenance)?;
    found.push(hold(
        common,
        shape(
            true,
            ends.other_facing,
            reach,
            room,
            grip,
            driven(to_dog, hole, facing),
        ),
        of_other,
        provenance,
        cautions,
    )?);
    Ok(found)
}

/// A blade that parts a bar between two centres is caught by both halves as they sag: common practice, no source.
fn never_parted(job: &Job) -> Result<(), Error> {
    match job.preference(|p| p.parting()) {
        Some(blade) => Err(Error::new(
            ErrorKind::Contradiction,
            "preferences.parting",
            format!("a blade of {blade}, to part a bar off between two centres"),
            "no parting off between centres: the bar closes on the blade, and both halves are thrown",
            "leave preferences.parting out and saw the part off afterwards, or name \"chuck_and_centre\"",
        )),
        None => Ok(()),
    }
}

/// Both ends of the bar, as the chuck holds them to be faced and drilled.
struct Ends {
    /// From face to face when both are faced.
    length: WorkLength,
    other_facing: WorkLength,
    overall: Option<(WorkLength, LengthLimits)>,
    off: Off,
}

impl Ends {
    fn of(job: &Job, facing: WorkLength, overall: Option<Overall>) -> Result<Self, Error> {
        if let Some(overall) = overall {
            return Ok(Self {
                length: overall.length,
                other_facing: overall.facing,
                overall: Some((overall.length, overall.limits)),
                off: overall.cut_to.map_or(Off::Whole, Off::Sawn),
            });
        }
        let left = round_size(job.stock.length().mm() - 2.0 * facing.mm());
        Ok(Self {
            length: WorkLength::from_mm(left).map_err(|error| error.at("stock.length"))?,
            other_facing: facing,
            overall: None,
            off: Off::Whole,
        })
    }

    /// Refuses a bar that the chuck cannot hold by one end, or that has no room on the lathe.
    fn fit(&self, job: &Job, provenance: &mut Provenance) -> Result<(), Error> {
        let stock = job.stock.diameter();
        let gripped = round_size(self.length.mm() + self.other_facing.mm());
        let out = short_end_of_bar(job);
        let least = lengths::least_grip(stock, provenance);
        if gripped - out.mm() < least {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "stock.length",
                format!("{gripped:.1} mm of the bar when its other end is faced"),
                format!(
                    "at least {:.1} mm: {out} standing out and {least:.1} mm to grip",
                    out.mm() + least
                ),
                "a longer bar, or name \"chuck\"",
            ));
        }
        if let Some(most) = job.lathe.between_centres()
            && self.length > most
        {
            return Err(Error::new(
                ErrorKind::Impossible,
                "holding",
                format!("a bar of {} between the centres", self.length),
                format!("at most the {most} that the lathe has between its centres"),
                "a shorter bar or a longer lathe; or name \"chuck_and_centre\", which takes what is longer through the spindle",
            ));
        }
        let Some(swing) = job.lathe.swing() else {
            return Ok(());
        };
        let dog = provenance.open("how far a dog stands out beyond the bar", &STANDS_OUT);
        let needed = Diameter::computed_trade(round_size(stock.mm() + 2.0 * dog.mm()));
        match needed > swing {
            true => Err(Error::new(
                ErrorKind::Impossible,
                "holding",
                format!("a dog on a bar of {stock}, which swings {needed}"),
                format!("at most the swing of {swing}"),
                "a thinner bar, a larger lathe, or name \"chuck_and_centre\"",
            )),
            false => Ok(()),
        }
    }
}

/// What the face of an end measures across when it is finished: the bar where nothing is turned of it.
fn end_of(job: &Job, surfaces: &[Surface]) -> Diameter {
    surfaces.first().map_or(job.stock.diameter(), |outer| {
        outer
            .small_diameter()
            .unwrap_or_else(|| outer.limits().middle())
    })
}

fn centre_hole_of(
    common: &Common<'_>,
    end: Diameter,
    provenance: &mut Provenance,
) -> Result<CentreHoleChoice, Error> {
    let lathe = &common.job.lathe;
    centre_hole::choose(
        lathe,
        end,
        common.finishing.wanted,
        lathe.speed_cap(),
        provenance,
    )
    .ok_or_else(|| no_centre_hole(common.job, end))
}

/// What lies between the centre in the spindle and the other end's last shoulder.
fn turned_end_for_end(job: &Job, length: f64) -> Vec<Section> {
    let (first, other) = (job.part.surfaces(), job.part.other_end());
    let mut root: Vec<Section> = first
        .iter()
        .map(|surface| Section::cylinder(surface.limits().middle(), surface.length()))
        .collect();
    let collar = round_size(length - reach_of(first) - reach_of(other));
    if collar > 1e-6 {
        root.push(Section::cylinder(
            job.stock.diameter(),
            WorkLength::computed_trade(collar),
        ));
    }
    root
}

impl Dog {
    /// Refuses a bar that is too short for the part, the holder and the dog.
    fn fits_on_the_bar(&self, job: &Job, ends: &Ends, reach: f64) -> Result<(), Error> {
        let (length, Self { width, before }) = (ends.length.mm(), self);
        let needed = round_size(reach + before + width);
        if length >= needed {
            return Ok(());
        }
        let figures = format!(
            "{reach:.1} mm for what is turned, {before:.1} mm for the holder before the dog, {width:.1} mm under the dog"
        );
        Err(match ends.overall {
            Some((overall, _)) => Error::new(
                ErrorKind::Impossible,
                "part.overall_length",
                format!(
                    "{:.1} mm of the bar beyond the last shoulder of the first end, of {overall}",
                    length - reach
                ),
                format!("{needed:.1} mm from face to face: {figures}"),
                "turn the other end first, or hold it in the chuck: name \"chuck_and_centre\"",
            ),
            None => Error::new(
                ErrorKind::Contradiction,
                "part.length",
                format!(
                    "{} on a bar of {}",
                    WorkLength::computed_trade(round_size(reach)),
                    job.stock.length()
                ),
                format!(
                    "a bar of at least {:.1} mm: {figures}, and what both its ends are faced by",
                    needed + 2.0 * ends.other_facing.mm()
                ),
                "saw a longer bar or turn a shorter length: the tool would go into the dog",
            ),
        })
    }

    /// The cylinder of the finished end that the dog goes over, and how far from the other face it then begins: the
    /// outermost that is long enough, for the tail has to reach the driver plate.
    fn over_the_finished_end(
        &self,
        first: &[Surface],
        length: f64,
        reach: f64,
        provenance: &mut Provenance,
    ) -> Result<(Grip, f64), Error> {
        let tail = provenance
            .open("part that may lie behind a dog", &TAIL)
            .mm();
        let (mut outer, mut longest) = (0.0, None::<(f64, Diameter)>);
        for surface in first {
            let behind = round_size(outer + surface.chamfer().map_or(0.0, ChamferLeg::mm));
            let groove = surface.undercut().map_or(0.0, |u| u.width().mm());
            outer = round_size(outer + surface.length().mm());
            if surface.small_diameter().is_some() || behind > tail {
                continue;
            }
            let free = round_size(outer - groove - behind);
            if free < self.width {
                longest = longest
                    .filter(|(most, _)| *most >= free)
                    .or(Some((free.max(0.0), surface.diameter())));
                continue;
            }
            let to_dog = round_size(length - behind - self.width);
            if to_dog - reach < self.before {
                return Err(Error::new(
                    ErrorKind::Impossible,
                    "part.other_end",
                    format!(
                        "{:.1} mm between its last shoulder and a dog on the diameter of {}",
                        to_dog - reach,
                        surface.diameter()
                    ),
                    format!(
                        "at least {:.1} mm for the holder before the dog",
                        self.before
                    ),
                    "turn the longer end first, or hold it in the chuck: name \"chuck_and_centre\"",
                ));
            }
            let grip = Grip::Turned {
                nominal: surface.diameter(),
                #[cfg(feature = "picture")]
                diameter: surface.limits().middle(),
                length: WorkLength::computed_trade(self.width),
            };
            return Ok((grip, to_dog));
        }
        Err(Error::new(
            ErrorKind::Impossible,
            "part.other_end",
            match longest {
                Some((free, diameter)) => {
                    format!("{free:.1} mm of the diameter of {diameter} for the dog")
                }
                None => String::from("no cylinder at the first end that the dog could go over"),
            },
            format!(
                "a cylinder of at least {:.1} mm at the first end, with no more than {tail:.1} mm behind it",
                self.width
            ),
            "turn the other end first, or hold it in the chuck: name \"chuck_and_centre\"",
        ))
    }
}
