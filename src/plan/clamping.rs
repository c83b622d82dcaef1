//! How the bar is held: one clamping for each end that is worked, its overhang, grip and support.

use super::common::Common;
use super::dog::{self, Driven};
use super::ends::GROOVING_SPEED;
use super::job::Job;
use super::lengths::{self, Along, Room, length_limits, room, shoulder_at};
use super::turned_round::{cut_off, overall, turned_round};
use crate::advice::centre_hole::{self, CentreHoleChoice};
use crate::advice::depth;
use crate::advice::feed::{self, FeedChoice};
use crate::advice::force::{ManyCuts, tool_law};
use crate::advice::parting::{self, PARTING_FEED};
use crate::advice::reach::COMPOUND_TRAVEL;
use crate::advice::support::{self, Held, SupportAdvice, SupportAsk, SupportChoice, SupportWay};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::physics::stepped::HeldBar;
use crate::provenance::Provenance;
use crate::quantity::dial::Divisions;
use crate::quantity::{
    BladeWidth, CriticalSpeed, DepthOfCut, Diameter, Overhang, WorkLength, round_size,
};
use crate::shop::dial::Dial;
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::surface::Surface;
use crate::shop::tool::Tool;
use crate::standards::centre_hole::Form;
use crate::standards::limits::LengthLimits;

use super::sheet::SurfaceAt;

/// What the jaws hold, or the dog goes over.
#[derive(Debug, Clone, Copy)]
pub(super) enum Grip {
    /// The bar as it comes.
    Stock { length: WorkLength },
    /// A finished diameter, after the part was turned round.
    Turned {
        nominal: Diameter,
        /// As the middle of its limits has it.
        #[cfg(feature = "picture")]
        diameter: Diameter,
        length: WorkLength,
    },
}

/// How the part came off the bar that it was turned on.
#[derive(Debug, Clone, Copy)]
pub(super) enum Off {
    /// It is all of the bar.
    Whole,
    /// Sawn to this length.
    Sawn(WorkLength),
    Parted,
}

/// One surface where it lies in its clamping.
#[derive(Debug, Clone)]
pub(super) struct Place<'a> {
    pub(super) at: SurfaceAt,
    pub(super) surface: &'a Surface,
    /// From the face to its shoulder.
    pub(super) reach: WorkLength,
    /// From the face to the shoulder before it, in mm; zero for the outermost.
    #[cfg(feature = "picture")]
    pub(super) outer: f64,
    /// Where its shoulder is turned to, by the carriage's dial.
    pub(super) shoulder: Along,
    /// Where the shoulder before it is turned to, from the face, in mm.
    pub(super) outer_turned: f64,
    /// What stays thicker between the jaws and its shoulder.
    pub(super) root: Vec<Section>,
    /// What is thinner already between it and the face when it is finished, where all is roughed before.
    pub(super) thinner: Vec<Section>,
    pub(super) length_limits: LengthLimits,
    pub(super) finish_feed: FeedChoice,
    /// What a finishing cut should rather take.
    pub(super) liked: DepthOfCut,
    /// No cut is planned lighter.
    pub(super) least: DepthOfCut,
    pub(super) correcting: DepthOfCut,
}

/// One end of the part as it is held and turned.
#[derive(Debug, Clone)]
pub(super) struct Clamping<'a> {
    pub(super) turned_round: bool,
    pub(super) facing: WorkLength,
    /// What the face has to come to, where it brings the part to its length.
    pub(super) overall: Option<(WorkLength, LengthLimits)>,
    /// How far from the finished face the part is parted off in this clamping, where it is.
    pub(super) parted: Option<WorkLength>,
    /// The core at which the parting groove ends, where the part is too long to be parted right through.
    pub(super) core: Option<Diameter>,
    /// How the part came off the bar before this clamping.
    pub(super) off: Off,
    pub(super) overhang: Overhang,
    /// From the jaws to the shoulder of the surface that they grip, in mm; zero of a bar.
    clear: f64,
    /// How far from the face the tool may ever go, in mm.
    pub(super) never_past: f64,
    pub(super) grip: Grip,
    /// What there is more of it between two centres.
    pub(super) driven: Option<Driven>,
    pub(super) held: Held,
    pub(super) support: SupportChoice,
    pub(super) holding: Holding,
    pub(super) centre: Option<CentreHoleChoice>,
    pub(super) whip: Option<CriticalSpeed>,
    pub(super) law: ManyCuts,
    /// Of the tool that roughs, where it is another one.
    pub(super) rough_law: Option<ManyCuts>,
    /// Its surfaces in the order in which they are turned: the largest first.
    pub(super) places: Vec<Place<'a>>,
}

impl Clamping<'_> {
    /// Whether what a part leaves of its bar may be long enough for one more, gripped over a length that is no shorter
    /// than it must be.
    pub(super) fn bars_more(&self, job: &Job) -> bool {
        let (Some(parted), Some(blade)) = (self.parted, job.preference(|p| p.parting())) else {
            return false;
        };
        let left = job.stock.length().mm() - self.facing.mm() - parted.mm() - blade.mm();
        let least = lengths::least_grip(job.stock.diameter(), &mut Provenance::deaf());
        left >= self.overhang.mm() + least
    }

    /// What the carriage must never come to, in words, and how far from the face that is, in mm.
    pub(super) fn never_into(&self) -> (&'static str, f64) {
        match &self.driven {
            Some(driven) => ("dog", driven.to_dog),
            None => ("jaws", self.held.overhang.mm()),
        }
    }

    /// Where Z falls to.
    pub(super) fn inwards(&self) -> &'static str {
        match self.driven {
            Some(_) => "towards the headstock",
            None => "towards the chuck",
        }
    }

    /// From the face of a part that was turned round to the shoulder beside the jaws.
    pub(super) fn to_gripped_shoulder(&self) -> WorkLength {
        WorkLength::computed_trade(round_size(
            self.overhang.mm() - self.facing.mm() - self.clear,
        ))
    }
}

/// The clampings of a job, in order.
pub(super) fn clampings<'a>(
    common: &Common<'a>,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<Vec<Clamping<'a>>, Error> {
    let job = common.job;
    let surfaces = || job.part.surfaces().iter().chain(job.part.other_end());
    let blade = job.preference(|p| p.parting());
    if blade.is_some() || surfaces().any(|s| s.undercut().is_some()) {
        provenance.open("speed of grooving over that of turning", &GROOVING_SPEED);
    }
    if surfaces().any(|s| s.small_diameter().is_some()) {
        provenance.open("travel of the compound slide", &COMPOUND_TRAVEL);
    }
    if dog::is_driven(job) {
        return dog::clampings(common, provenance, cautions);
    }
    let facing = lengths::facing(job, common.units, provenance);
    let first = job.part.surfaces();
    let room_first = room(job, deepest(common, first), provenance);
    let reach = reach_of(first);
    let overall = overall(common, facing, provenance)?;
    let to_jaws = |blade: Option<BladeWidth>| room_first.to_jaws + blade.map_or(0.0, |b| b.mm());
    let parted = match (blade, &overall) {
        (None, _) => None,
        (Some(_), None) => Some(WorkLength::computed_trade(reach)),
        // Off the bar before it is turned round, if enough of the bar is left to grip meanwhile.
        (Some(_), Some(overall)) => overall.cut_to.filter(|cut_to| {
            let out = cut_to.mm() + facing.mm() + to_jaws(blade);
            job.stock.length().mm() - out >= lengths::least_grip(job.stock.diameter(), provenance)
        }),
    };
    let off = match (&overall, parted) {
        (Some(_), Some(_)) => Off::Parted,
        (Some(overall), None) => overall.cut_to.map_or(Off::Whole, Off::Sawn),
        (None, _) => Off::Whole,
    };
    if let Some(overall) = &overall {
        cautions.extend(cut_off(common, overall, blade, parted));
    }
    if parted.is_some() {
        let [slowest, fastest] = PARTING_FEED.value;
        provenance.record(
            "feed of parting blades",
            &format!("{slowest} to {fastest}"),
            PARTING_FEED.source,
            PARTING_FEED.standing,
        );
    }
    let core = parted.and_then(|length| parting::core_of(length, job.stock.diameter(), provenance));
    let to_jaws = to_jaws(blade.filter(|_| parted.is_some()));
    let far = parted.map_or(reach, |parted| parted.mm().max(reach));
    let overhang = lengths::overhang(job, far, to_jaws, facing, common.units, provenance)?;
    let grip = WorkLength::computed_trade(job.stock.length().mm() - overhang.mm());
    lengths::short_grip(grip, job.stock.diameter(), common.units, cautions);
    let stub = Section::cylinder(
        job.stock.diameter(),
        WorkLength::computed_trade(overhang.mm() - facing.mm() - reach),
    );
    let places = places(common, first, false, &[stub], provenance)?;
    let mut found = vec![hold(
        common,
        Shape {
            turned_round: false,
            facing,
            overall: None,
            parted,
            core,
            off: Off::Whole,
            overhang,
            clear: 0.0,
            reach,
            room: room_first,
            grip: Grip::Stock { length: grip },
            driven: None,
        },
        places,
        provenance,
        cautions,
    )?];
    if let Some(overall) = overall {
        let (shape, root) = turned_round(common, &overall, off, provenance, cautions)?;
        let places = places_or_none(common, &root, provenance)?;
        found.push(hold(common, shape, places, provenance, cautions)?);
    }
    Ok(found)
}

/// The lengths of a clamping.
pub(super) struct Shape {
    pub(super) turned_round: bool,
    pub(super) facing: WorkLength,
    pub(super) overall: Option<(WorkLength, LengthLimits)>,
    pub(super) parted: Option<WorkLength>,
    pub(super) core: Option<Diameter>,
    pub(super) off: Off,
    pub(super) overhang: Overhang,
    /// From the jaws to the shoulder of the surface that they grip, in mm; zero of a bar.
    pub(super) clear: f64,
    pub(super) reach: f64,
    pub(super) room: Room,
    pub(super) grip: Grip,
    pub(super) driven: Option<Driven>,
}

pub(super) fn reach_of(surfaces: &[Surface]) -> f64 {
    round_size(surfaces.iter().map(|s| s.length().mm()).sum())
}

/// The deepest that is cut from the bar, for the lead of a slanting edge.
pub(super) fn deepest(common: &Common<'_>, surfaces: &[Surface]) -> Option<DepthOfCut> {
    let smallest = surfaces.last()?.limits().smallest();
    common.job.stock.diameter().depth_to(smallest)
}

/// The surfaces of the other end; with none, only its face is turned.
fn places_or_none<'a>(
    common: &Common<'a>,
    root: &[Section],
    provenance: &mut Provenance,
) -> Result<Vec<Place<'a>>, Error> {
    let other = common.job.part.other_end();
    if other.is_empty() {
        return Ok(Vec::new());
    }
    places(common, other, true, root, provenance)
}

/// The finished cylinders of these surfaces, from the chuck outwards.
fn thinner(surfaces: &[Surface]) -> Vec<Section> {
    let cylinder = |s: &Surface| Section::cylinder(s.limits().middle(), s.length());
    surfaces.iter().rev().map(cylinder).collect()
}

/// The surfaces of one end in the order in which they are turned, each with the bar behind it.
pub(super) fn places<'a>(
    common: &Common<'a>,
    surfaces: &'a [Surface],
    other_end: bool,
    root: &[Section],
    provenance: &mut Provenance,
) -> Result<Vec<Place<'a>>, Error> {
    let job = common.job;
    let mut root = root.to_vec();
    let mut reach = reach_of(surfaces);
    let mut places = Vec::with_capacity(surfaces.len());
    for (index, surface) in surfaces.iter().enumerate().rev() {
        let at = SurfaceAt::new(other_end, index);
        let [_, path] = job.tool_paths();
        let of_the_tool = |error| job.names_the_tool(error, path);
        let finish_feed = match job.preference(|p| p.finish_feed()) {
            Some(feed) => common.asked_feed(feed, "preferences.finish_feed")?,
            None => feed::finish_feed(&job.lathe, &job.tool, surface.finish(), provenance)
                .map_err(of_the_tool)?,
        };
        let least =
            depth::least_planned(&job.tool, finish_feed.feed, provenance).map_err(of_the_tool)?;
        // One tool for both: no finishing cut is lighter than it may rough.
        let least = match job.changes_tools() {
            true => least,
            false => least.max(common.rough_least),
        };
        let correcting = depth::least_correcting(&job.tool, finish_feed.feed, provenance)
            .map_err(of_the_tool)?;
        let liked = provenance.open(
            "finishing depth over corner radius",
            &depth::FINISH_OVER_CORNER,
        ) * job.tool.corner_radius().mm();
        let outer = round_size(reach - surface.length().mm());
        places.push(Place {
            at,
            surface,
            reach: WorkLength::computed_trade(reach),
            #[cfg(feature = "picture")]
            outer,
            shoulder: Along::FACE,
            outer_turned: 0.0,
            root: root.clone(),
            thinner: match job.changes_tools() {
                true => thinner(&surfaces[..index]),
                false => Vec::new(),
            },
            length_limits: length_limits(
                surface.length(),
                surface.length_limits(),
                &at.path(&job.part, "length"),
                provenance,
            )?,
            finish_feed,
            liked: DepthOfCut::computed_trade(liked.max(least.mm())),
            least,
            correcting,
        });
        root.push(Section::cylinder(
            surface.limits().middle(),
            surface.length(),
        ));
        reach = outer;
    }
    // From the face on: a length is held against its limits between two places of the dial.
    let mut outer = 0.0;
    for place in places.iter_mut().rev() {
        let path = place.at.path(&job.part, "length");
        let limits = place.length_limits;
        place.outer_turned = outer;
        place.shoulder = shoulder_at(place.reach, outer, common.carriage, limits, &path)?;
        outer = place.shoulder.travel(common.carriage);
    }
    Ok(places)
}

/// Chuck or centre, by the surface that needs it most, at the stage at which it is turned.
pub(super) fn hold<'a>(
    common: &Common<'a>,
    shape: Shape,
    places: Vec<Place<'a>>,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<Clamping<'a>, Error> {
    let job = common.job;
    let [rough, finish] = job.tool_paths();
    let law_of = |tool: &Tool, path: &str, provenance: &mut Provenance| {
        let law = tool_law(&job.material, tool, provenance);
        law.map(|law| ManyCuts::new(law, tool))
            .map_err(|error| job.names_the_tool(error, path))
    };
    let law = law_of(&job.tool, finish, provenance)?;
    let rough_law = match job.roughing_tool() {
        Some(tool) => Some(law_of(tool, rough, provenance)?),
        None => None,
    };
    let asked = job
        .holding
        .clone()
        .unwrap_or_else(|| Holding::new(HoldingKind::Chuck));
    if !asked.steadies().is_empty() {
        return Err(Error::not_offered(
            "holding.steadies",
            "a plan with a steady",
            "leave holding.steadies out; the questions \"bar\" and \"support\" reckon steadies",
        ));
    }
    let out_of_jaws = Overhang::computed_trade(round_size(shape.overhang.mm() - shape.facing.mm()));
    // The surface that needs a support most; only there all ways are weighed.
    let mut hardest: Option<((u8, f64), usize)> = None;
    let mut bars = Vec::with_capacity(places.len());
    for (at, place) in places.iter().enumerate() {
        let mut sections = place.root.clone();
        // The spring that decides is that of the last cuts, at the finished diameter.
        let outer: f64 = place.thinner.iter().map(|s| s.length().mm()).sum();
        sections.push(Section::cylinder(
            place.surface.limits().middle(),
            WorkLength::computed_trade(round_size(place.reach.mm() - outer)),
        ));
        sections.extend_from_slice(&place.thinner);
        let (advice, share) = last_cuts(common, &law, &asked, place, &sections).advice()?;
        let asks_for = (effort_of(advice), share);
        if hardest.is_none_or(|(before, _)| asks_for > before) {
            hardest = Some((asks_for, at));
        }
        bars.push(sections);
    }
    let support = match hardest {
        Some((_, at)) => {
            let ask = last_cuts(common, &law, &asked, &places[at], &bars[at]);
            let ask = match places.len() {
                1 => ask,
                _ => ask.with_zone_of(places[at].surface.diameter(), common.units),
            };
            Some(ask.choose(provenance)?)
        }
        None => None,
    };
    let thinnest = bars.last();
    let support = match support {
        Some(support) => support,
        None => face_only(common, &shape, &asked, provenance)?,
    };
    let smallest = places
        .last()
        .map(|place| match place.surface.small_diameter() {
            Some(small) => small,
            None => place.surface.limits().middle(),
        });
    let kind = if places.is_empty() {
        HoldingKind::Chuck
    } else {
        holding_kind(job.holding.as_ref(), &support, smallest, cautions)?
    };
    let holding = asked.of_kind(kind);
    let held = Held {
        kind,
        youngs_modulus: common.youngs_modulus,
        overhang: out_of_jaws,
        springs: support::springs(&holding, provenance),
    };
    let whip = match (job.material.density(), thinnest) {
        (Some(density), Some(sections)) => {
            let density = density.open("density", provenance);
            let bar = HeldBar::new(
                common.youngs_modulus,
                sections,
                held.support(),
                &held.springs,
                &[],
            )?;
            let share = provenance.open("share of the critical speed", &support::WHIP_SHARE);
            // The lower bound is near enough to refuse by, and costs nothing.
            Some(support::safe_from_whip(
                bar.critical_speed_floor(density),
                share,
            ))
        }
        _ => None,
    };
    let centre = match (kind, smallest) {
        (HoldingKind::ChuckAndCentre | HoldingKind::BetweenCentres, Some(smallest)) => Some(
            centre_hole::choose(
                &job.lathe,
                smallest,
                common.finishing.wanted,
                job.lathe.speed_cap(),
                provenance,
            )
            .ok_or_else(|| no_centre_hole(job, smallest))?,
        ),
        _ => None,
    };
    for caution in &support.cautions {
        if !cautions.contains(caution) {
            cautions.push(caution.clone());
        }
    }
    Ok(Clamping {
        turned_round: shape.turned_round,
        facing: shape.facing,
        overall: shape.overall,
        parted: shape.parted,
        core: shape.core,
        off: shape.off,
        overhang: shape.overhang,
        clear: shape.clear,
        never_past: never_past(common.carriage, shape.reach, shape.room.overrun),
        grip: shape.grip,
        driven: shape.driven,
        held,
        support,
        holding,
        centre,
        whip,
        law,
        rough_law,
        places,
    })
}

/// How far from the face the tool may ever go, in mm: the last whole mark of the carriage within the overrun, as
/// long as one lies beyond the shoulder.
fn never_past(carriage: &Dial, reach: f64, overrun: f64) -> f64 {
    let last = Divisions::from_rounded(carriage.divisions_of_travel(reach + overrun).floor());
    match last.map(|last| carriage.travel_at(last)) {
        Ok(mark) if mark > reach => mark,
        _ => reach + overrun,
    }
}

/// The support of an end of which only the face is turned.
fn face_only(
    common: &Common<'_>,
    shape: &Shape,
    asked: &Holding,
    provenance: &mut Provenance,
) -> Result<SupportChoice, Error> {
    let job = common.job;
    let out = WorkLength::computed_trade(shape.overhang.mm());
    let bar = [Section::cylinder(job.stock.diameter(), out)];
    let tool = job.rougher();
    let law = ManyCuts::new(tool_law(&job.material, tool, provenance)?, tool);
    let forces = law.forces(common.rough_least, common.rough_feed.feed);
    SupportAsk::new(
        common.youngs_modulus,
        &bar,
        asked,
        forces.passive,
        job.part.surfaces()[0].limits().tolerance(),
    )
    .with_ways(&[SupportWay::Chuck])
    .choose(provenance)
}

/// Asks for the support of one surface under its last cuts.
fn last_cuts<'a>(
    common: &Common<'_>,
    law: &ManyCuts,
    held: &'a Holding,
    place: &Place<'_>,
    sections: &'a [Section],
) -> SupportAsk<'a> {
    let forces = law.forces(place.liked, place.finish_feed.feed);
    SupportAsk::new(
        common.youngs_modulus,
        sections,
        held,
        forces.passive,
        place.surface.limits().tolerance(),
    )
    .with_ways(match held.kind() {
        HoldingKind::BetweenCentres => &[SupportWay::BetweenCentres],
        _ => &[SupportWay::Chuck, SupportWay::ChuckAndCentre],
    })
    .with_reach(place.reach)
}

/// How much a support asks for, so that the surface that needs most decides.
fn effort_of(advice: SupportAdvice) -> u8 {
    match advice {
        SupportAdvice::Chuck => 0,
        SupportAdvice::ChuckAndCentre => 1,
        SupportAdvice::BetweenCentres => 2,
        SupportAdvice::Steady => 3,
        SupportAdvice::NoneEnough => 4,
    }
}

/// What the person asked for, or else what the figures advise.
fn holding_kind(
    asked: Option<&Holding>,
    support: &SupportChoice,
    end: Option<Diameter>,
    cautions: &mut Vec<Caution>,
) -> Result<HoldingKind, Error> {
    let advised = match support.advice {
        SupportAdvice::Chuck => Some(HoldingKind::Chuck),
        SupportAdvice::ChuckAndCentre => Some(HoldingKind::ChuckAndCentre),
        _ => None,
    };
    match (asked, advised) {
        (None, Some(kind)) => Ok(kind),
        (None, None) => Err(Error::new(
            ErrorKind::Impossible,
            "part",
            support
                .options
                .last()
                .map_or_else(String::new, |option| option.because.clone()),
            "a holding that keeps the spring of the bar within its share of the zone",
            "a shorter length, a wider zone, a smaller corner radius or finer feed; a named holding is planned with all the same, where the bar bears the lightest cut of the tool in it",
        )),
        (Some(asked), advised) => {
            let option = support.option(SupportWay::of(asked.kind()));
            if let Some(option) = option.filter(|option| !option.enough) {
                cautions.push(Caution::new(
                    Severity::Warning,
                    "support_not_enough",
                    format!(
                        "Planned as asked, against the figures: {}.{}",
                        option.because,
                        match advised {
                            Some(HoldingKind::ChuckAndCentre)
                                if end.is_some_and(holds_a_centre_hole) =>
                            {
                                " A live centre would be enough."
                            }
                            Some(HoldingKind::Chuck) => " The chuck alone would be enough.",
                            _ => "",
                        }
                    ),
                ));
            }
            Ok(asked.kind())
        }
    }
}

/// True of an end in which the smallest centre hole has room.
fn holds_a_centre_hole(end: Diameter) -> bool {
    centre_hole::for_work(Form::A, end, end, None, &mut Provenance::deaf()).is_some()
}

#[cold]
pub(super) fn no_centre_hole(job: &Job, end: Diameter) -> Error {
    if holds_a_centre_hole(end)
        && let Some(slowest) = job.lathe.slowest()
    {
        return Error::new(
            ErrorKind::Impossible,
            "lathe.spindle_steps",
            format!("a slowest speed of {slowest}"),
            match job.lathe.speed_cap() {
                Some(cap) => format!(
                    "a speed for the centre drill that chuck and machine allow, {cap} at most"
                ),
                None => String::from("a speed that is slow enough for the centre drill"),
            },
            "another chuck, or another lathe: this limit is not to be passed",
        );
    }
    Error::new(
        ErrorKind::Impossible,
        "part.diameter",
        end.to_string(),
        "an end that holds the smallest centre hole, turned at a speed the lathe has",
        "turn it in the chuck alone, with a shorter overhang",
    )
}
