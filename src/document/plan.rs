//! The operation sheet.
//!
//! The fields of the question, and of a job in a TOML file; `?` marks what may be left out.
//!
//! | field | what |
//! |---|---|
//! | `lathe` | `spindle_steps: [..]`, or `spindle_range: [low, high]`, or `spindle_ranges: { name: [low, high], .. }` (a range with a base speed of its own as `{ range: [low, high], constant_torque_below }`); `cross_slide`, `carriage` (dials); `feeds? [..]` (none: by hand); `max_spindle_speed?`, `chuck_max_speed?`, `power?`, `efficiency?`, `constant_torque_below?`, `compound?`, `step_names?`, `feed_names?`, `change_time?`, `swing?`, `between_centres?` |
//! | a dial | `reads`: `"diameter"`, `"radius"` or, for the carriage, `"travel"`; `division` (what one mark says), `divisions_per_turn`, `backlash?` (slide travel), `ring?`: `"settable"`, `"fixed"`, or `"readout"` for a digital readout in place of the dial (`division` is then the least step that it shows, `divisions_per_turn` such steps in a turn of the handle) |
//! | `tool` | `material?`: `"high_speed_steel"` or `"carbide"`; `corner_radius`, `cutting_edge_angle`, `minor_cutting_edge_angle?`, `rake_angle?`, `edge_radius?`, `least_depth?`, `edge?`: `"sharp"`, `"ordinary"` or `"worn_out"` |
//! | `tools` | in place of `tool`: `{ rough, finish }`; every diameter of a clamping is roughed and measured, then the tool is changed once, and touched on each roughed size before it is finished |
//! | `material` | a key or designation of the catalogue, or `{ like?, name?, specific_force, exponent, youngs_modulus?, density?, expansion?, specific_heat?, hardness_hb?, cutting_speeds?: { high_speed_steel?: [low, high], carbide?: [low, high] } }` |
//! | `stock` | `diameter`, `length`, `skin?` (thickness of a rolled skin, which the first cut goes under), `run_out?` (whole travel of an indicator over one turn) |
//! | `part` | one surface, its fields as below; or `surfaces: [..]`, from the face inwards, the smallest first; `other_end?: [..]`, from the other face inwards, turned after the part is turned round; `overall_length?` (face to face), `overall_limits?` |
//! | a surface | `diameter` (nominal), `limits: [smallest, largest]` (or in another writing, see [`document`](super)) or `class` of a shaft such as `"h8"`, `length` (up to its shoulder), `length_limits?: [shortest, longest]`, `finish?: { ra }` or `{ rz }`, `chamfer?` (leg of 45 degrees at its free edge), `undercut?: { width, depth }` (groove at its shoulder), `small_diameter?` (a cone, narrowing to this at its free end) |
//! | `holding?` | `"chuck"`, `"chuck_and_centre"`, `"between_centres"` (only where it is named; never with `preferences.parting`), or `{ kind, stiffness?, rotational_stiffness?, centre_stiffness?, centre_max_speed? }`; left out: what the figures advise |
//! | `cutting_speed?` | instead of the middle of the material's band |
//! | `zero_at?` | the diameter, measured all along, at which the cross dial reads zero |
//! | `preferences?` | `largest_depth?`, `depth?` (of every roughing cut, a whole number of marks), `feed?`, `finish_feed?`, `facing?`, `parting?` (width of the parting tool, where the part is parted off); `instrument?`: a name such as `"micrometer"` or `{ kind, .. }` (see [`within_reach`](super::within_reach)); `measuring_stops?` (their number; left out: as many as pay); `length_by?`: `"dial"` (default), `"stop"` or `"indicator"` on the bed, set once for each surface; `batch?` (how many parts are made one after the other: the answer then says which of them to measure); `least_good?` (the least chance of a good part, 0.95: a stop is added and the aim moved towards the middle of the zone where that reaches it; else a caution says so); `price_scrap?`, `price_rework?`, `price_stop?` (all in one currency; left out: minutes of work); `way?`: `"readable"` (default) or `"least_time"`; `compare_ways?`: true for what both would cost; `correct_for_spring?`: true for readings in which the spring to expect in the last cuts is taken into account |
//! | `with?` | a list of `"picture"` and `"page"`: the answer then holds `pictures`, an SVG for each clamping, and `page`, the sheet as HTML to print (feature `picture`; without it this is refused) |
//! | `units?` | `"metric"` or `"inch"`, for the words of the sheet |

use super::with::With;
use crate::error::Error;
use crate::plan::{Job, Sheet};
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;

/// A job to plan.
#[derive(Debug, Clone)]
pub struct Question {
    job: Job,
    units: Units,
    with: With,
}

/// The sheet.
pub type Answer = Sheet;

impl Question {
    /// This job, its words in these units.
    #[must_use]
    pub fn new(job: Job, units: Units) -> Self {
        Self {
            job,
            units,
            with: With::default(),
        }
    }

    /// A job from the text of a document, `{ "plan": { .. } }`.
    ///
    /// # Errors
    /// As [`document::answer`](super::answer), and when the question is another one.
    pub fn from_text(document: &str) -> Result<Self, Error> {
        let tree = super::parse(document)?;
        match super::question_of(&tree)? {
            ("plan", body) => Self::read(body, super::units(body)?)
                .map_err(|error| super::names::instead("plan", body, error)),
            (other, _) => Err(super::unknown(other)),
        }
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let read = || {
            Ok(Self {
                job: Job::read(body, "")?,
                units,
                with: With::take(&Fields::of(body, "", "a job")?)?,
            })
        };
        read().map_err(|error: Error| error.in_units(units))
    }

    /// The sheet.
    ///
    /// # Errors
    /// As [`Job::plan`].
    pub fn answer(&self) -> Result<Answer, Error> {
        self.with.on(self.job.plan(self.units)?)
    }
}

/// The sheet of a text: a job, or a sheet that was written before, which is worked out anew.
#[cfg(feature = "capi")]
pub(crate) fn sheet_of(document: &str) -> Result<Sheet, Error> {
    let tree = super::parse(document)?;
    let body = match super::question_of(&tree)? {
        ("plan", body) => body,
        (other, _) => return Err(not_a_plan(other)),
    };
    // A job has no field of this name; a sheet always has.
    let written = match body {
        Tree::Group(entries) => entries.iter().any(|(name, _)| name == "job"),
        _ => false,
    };
    match written {
        true => Sheet::read(body, ""),
        false => Question::read(body, super::units(body)?)
            .map_err(|error| super::names::instead("plan", body, error))?
            .answer(),
    }
}

/// A sheet as the answer that it is.
#[cfg(feature = "capi")]
pub(crate) fn written(sheet: &Sheet) -> Result<String, Error> {
    super::reply("plan", sheet.units(), sheet)
}

/// A picture for each clamping of a sheet.
#[cfg(all(feature = "capi", feature = "picture"))]
pub(crate) fn pictures(sheet: &Sheet) -> Result<Vec<String>, Error> {
    sheet.pictures()
}

#[cfg(all(feature = "capi", not(feature = "picture")))]
pub(crate) fn pictures(_: &Sheet) -> Result<Vec<String>, Error> {
    Err(super::with::no_pictures(""))
}

/// A sheet as a page to print.
#[cfg(all(feature = "capi", feature = "picture"))]
pub(crate) fn page(sheet: &Sheet) -> Result<String, Error> {
    sheet.page()
}

#[cfg(all(feature = "capi", not(feature = "picture")))]
pub(crate) fn page(_: &Sheet) -> Result<String, Error> {
    Err(super::with::no_pictures(""))
}

#[cold]
#[cfg(feature = "capi")]
fn not_a_plan(name: &str) -> Error {
    use crate::error::ErrorKind;
    Error::new(
        ErrorKind::UnknownName,
        name,
        format!("the question {name:?}"),
        "a job or a sheet under the name \"plan\"",
        "open plans only; ask other questions as documents",
    )
}
