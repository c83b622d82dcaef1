//! What is the same for every surface of a job: dials, speeds wanted, modulus, roughing feed.

use super::chance;
use super::job::Job;
use crate::advice::depth;
use crate::advice::feed::{self, FeedChoice};
use crate::advice::fluid;
use crate::advice::spindle::{SpindleAsk, SpindleChoice};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::provenance::{Provenance, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{
    CriticalSpeed, CuttingSpeed, DepthOfCut, Diameter, Feed, Quantity, ThermalExpansion,
    YoungsModulus, round_size,
};
use crate::shop::dial::Dial;
use crate::shop::figure::{SpeedBand, ToolMaterial};
use crate::shop::holding::Holding;
use crate::shop::tool::Tool;

/// What is the same for every surface.
pub(super) struct Common<'a> {
    pub(super) job: &'a Job,
    pub(super) units: Units,
    pub(super) cross: &'a Dial,
    pub(super) carriage: &'a Dial,
    /// Of the tool that turns, or of the one that finishes.
    pub(super) finishing: Speeds,
    /// Of the tool that roughs; the same where it is the same tool.
    pub(super) roughing: Speeds,
    pub(super) youngs_modulus: YoungsModulus,
    pub(super) expansion: Option<ThermalExpansion>,
    pub(super) rough_feed: FeedChoice,
    pub(super) rough_least: DepthOfCut,
    pub(super) fluid: Option<&'static str>,
}

impl<'a> Common<'a> {
    pub(super) fn of(
        job: &'a Job,
        units: Units,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) -> Result<Self, Error> {
        let cross = need_dial(
            job.lathe.cross_slide(),
            "lathe.cross_slide",
            "without it there is no reading to plan",
        )?;
        let carriage = need_dial(
            job.lathe.carriage(),
            "lathe.carriage",
            "or, where it has none, what its travel is read on: an indicator on the bed, or a rule (\"ring\": \"readout\", its \
             least step as division, 100 divisions_per_turn)",
        )?;
        less_than_a_turn(cross)?;
        fine_enough(cross)?;
        let expansion = chance::expansion(job, provenance);
        let [rough, finish] = job.tool_paths();
        let finishing = Speeds::of(job, &job.tool, finish, units, provenance, cautions)?;
        let roughing = match job.roughing_tool() {
            None => finishing,
            Some(tool) => Speeds::of(job, tool, rough, units, provenance, cautions)?,
        };
        let youngs_modulus = job
            .material
            .youngs_modulus()
            .ok_or_else(|| {
                Error::new(
                    ErrorKind::MissingField,
                    "material.youngs_modulus",
                    "a material without a Young's modulus",
                    "the modulus, for the spring of the bar",
                    "add the field \"youngs_modulus\" to the material",
                )
            })?
            .open("Young's modulus", provenance);
        let rough_feed = match job.preference(|p| p.feed()) {
            Some(feed) => asked_feed(job, feed, "preferences.feed")?,
            None => feed::rough_feed(&job.lathe, job.rougher(), provenance)
                .map_err(|error| job.names_the_tool(error, rough))?,
        };
        let rough_least = depth::least_planned(job.rougher(), rough_feed.feed, provenance)
            .map_err(|error| job.names_the_tool(error, rough))?;
        Ok(Self {
            job,
            units,
            cross,
            carriage,
            finishing,
            roughing,
            youngs_modulus,
            expansion,
            rough_feed,
            rough_least,
            fluid: fluid::of(&job.material, job.rougher().material(), provenance),
        })
    }

    /// The spindle step for a diameter, as it is held.
    pub(super) fn step_at(
        &self,
        speeds: &Speeds,
        diameter: Diameter,
        holding: &Holding,
        whip: Option<CriticalSpeed>,
    ) -> Result<SpindleChoice, Error> {
        let mut ask =
            SpindleAsk::new(&self.job.lathe, diameter, speeds.wanted).with_holding(holding);
        if let Some(whip) = whip {
            ask = ask.with_whip(whip);
        }
        if let Some(fastest) = speeds.fastest {
            ask = ask.with_fastest(fastest);
        }
        ask.choose()
    }

    /// A feed that the asker named, if the lathe has it.
    pub(super) fn asked_feed(&self, feed: Feed, field: &str) -> Result<FeedChoice, Error> {
        asked_feed(self.job, feed, field)
    }

    /// The diameter of the bar where a tool first touches it: its high side, where it runs out.
    pub(super) fn touched(&self) -> Diameter {
        let run_out = self.job.stock.run_out().map_or(0.0, |run_out| run_out.mm());
        Diameter::computed_trade(round_size(self.job.stock.diameter().mm() + run_out))
    }
}

fn need_dial<'a>(dial: Option<&'a Dial>, field: &str, without: &str) -> Result<&'a Dial, Error> {
    dial.ok_or_else(|| {
        Error::new(
            ErrorKind::MissingField,
            field,
            "no dial",
            "the dial: what it reads, its division, and the divisions of one turn",
            format!("add {field:?}; {without}"),
        )
    })
}

/// Most that a mark of a cross dial takes off the diameter, in mm: common practice, no source.
const COARSEST: f64 = 1.0;

/// A turn given for a mark would blame tool or bar for cuts that no mark allows.
fn fine_enough(cross: &Dial) -> Result<(), Error> {
    match cross.diameter_per_division() {
        coarse if coarse.mm() > COARSEST => Err(Error::new(
            ErrorKind::Contradiction,
            "lathe.cross_slide.division",
            format!(
                "{}, by which a mark takes {coarse} off the diameter",
                cross.division()
            ),
            format!("a mark that takes at most {COARSEST} mm off the diameter"),
            "division is what one mark says, not one turn; divisions_per_turn is how many marks a turn has",
        )),
        _ => Ok(()),
    }
}

/// The sheet withdraws by one turn: more backlash than that, and the tool would stay where it was.
fn less_than_a_turn(cross: &Dial) -> Result<(), Error> {
    let turn = cross.travel_per_turn();
    match cross.backlash() {
        Some(backlash) if backlash.mm() >= turn.mm() => Err(Error::new(
            ErrorKind::Contradiction,
            "lathe.cross_slide.backlash",
            backlash.to_string(),
            format!("less than one turn of the handle, which moves the slide {turn}"),
            "measure it anew with an indicator; a slide that loose wants its nut set or renewed before anything is turned to size",
        )),
        _ => Ok(()),
    }
}

/// The cutting speeds of one tool.
#[derive(Debug, Clone, Copy)]
pub(super) struct Speeds {
    pub(super) wanted: CuttingSpeed,
    /// The fastest allowed.
    pub(super) fastest: Option<CuttingSpeed>,
    /// The band that the wanted one is the middle of, if it is one's.
    pub(super) band: Option<SpeedBand>,
}

impl Speeds {
    fn of(
        job: &Job,
        tool: &Tool,
        path: &str,
        units: Units,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) -> Result<Self, Error> {
        let (wanted, fastest, band) =
            cutting_speed(job, (tool, path), units, provenance, cautions)?;
        Ok(Self {
            wanted,
            fastest,
            band,
        })
    }
}

/// The cutting speed wanted, the fastest allowed, and the band it is the middle of, if it is one's.
fn cutting_speed(
    job: &Job,
    (tool, path): (&Tool, &str),
    units: Units,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) -> Result<(CuttingSpeed, Option<CuttingSpeed>, Option<SpeedBand>), Error> {
    let band = tool
        .material()
        .and_then(|tool| job.material.speed_band(tool));
    if let Some(given) = job.cutting_speed {
        provenance.record(
            "cutting speed",
            &given,
            "given by the asker",
            Standing::Given,
        );
        if let Some(band) = band.as_ref().filter(|band| given > band.value.high()) {
            let (low, high) = (band.value.low(), band.value.high());
            cautions.push(Caution::new(
                Severity::Warning,
                "over_the_band",
                format!(
                    "The cutting speed asked for, {}, is above what this material and tool are known to bear, {} to {}: the \
                     edge would not last, and hot chips fly. The sheet follows what was asked; a slower one is safer.",
                    given.people(units),
                    low.people(units),
                    high.people(units)
                ),
            ));
        }
        return Ok((given, band.map(|b| b.value.high().max(given)), None));
    }
    let Some(band) = band else {
        return Err(no_band(job, tool, path));
    };
    let band = band.open("band of cutting speeds", provenance);
    Ok((band.middle(), Some(band.high()), Some(band)))
}

/// The error for a job that says nowhere how fast to cut.
#[cold]
fn no_band(job: &Job, tool: &Tool, path: &str) -> Error {
    let missing = |field: &str, given: String, expected: &str, remedy: String| {
        Error::new(ErrorKind::MissingField, field, given, expected, remedy)
    };
    let Some(tool) = tool.material() else {
        return missing(
            "cutting_speed",
            String::from("no cutting speed, and no material of the tool"),
            "a cutting speed, or a tool material whose band is known",
            String::from(
                "add \"cutting_speed\", or give tool.material as \"high_speed_steel\" or \"carbide\"",
            )
            .replace("tool.material", &format!("{path}.material")),
        );
    };
    let others = [ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide];
    match others
        .into_iter()
        .find(|other| job.material.speed_band(*other).is_some())
    {
        Some(other) => missing(
            &format!("{path}.material"),
            format!(
                "{:?}, for which this material has no band of cutting speeds",
                tool.name()
            ),
            "a tool material whose band is known, or a cutting speed",
            format!(
                "add \"cutting_speed\", or give {path}.material as {:?}",
                other.name()
            ),
        ),
        None => missing(
            "material.cutting_speeds",
            format!(
                "no cutting speeds of this material with {:?}, and no cutting speed",
                tool.name()
            ),
            "the slowest and the fastest speed for the material of the tool, or a cutting speed",
            format!(
                "add to the material cutting_speeds.{} as [\"20 m/min\", \"30 m/min\"], with its own figures, or add \
                 \"cutting_speed\" to the job",
                tool.name()
            ),
        ),
    }
}

fn asked_feed(job: &Job, feed: Feed, field: &str) -> Result<FeedChoice, Error> {
    if job.lathe.feeds().is_empty() {
        return Ok(FeedChoice {
            feed,
            lever: None,
            by_hand: true,
        });
    }
    if job.lathe.feeds().contains(&feed) {
        return Ok(FeedChoice {
            feed,
            lever: job.lathe.feed_name(feed).map(str::to_owned),
            by_hand: false,
        });
    }
    let near = job.lathe.feeds().iter().min_by(|a, b| {
        (a.mm_per_rev() - feed.mm_per_rev())
            .abs()
            .total_cmp(&(b.mm_per_rev() - feed.mm_per_rev()).abs())
    });
    Err(Error::new(
        ErrorKind::Contradiction,
        field,
        feed.to_string(),
        "one of the lathe's feeds",
        near.map_or_else(
            || String::from("add it to the lathe's feeds"),
            |near| format!("the nearest is {near}"),
        ),
    ))
}
