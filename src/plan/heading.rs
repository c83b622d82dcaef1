//! What stands above the steps: the job, the kit, the dials; and how sure the sizes are.

use std::fmt;

use super::clamping::{Clamping, Grip, Off};
use super::common::Common;
use super::dog::Driven;
use super::job::LengthBy;
use super::readout::is_readout;
use super::safety::short_name;
use super::sheet::WayCost;
use super::turning::{Turning, mark_size, plain};
use super::words::{add, pilot_words, words};
use crate::advice::stops::StopsPriced;
use crate::error::Error;
use crate::physics::spread::Outcome;
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, DiameterError, Duration, Probability, Quantity, round_size};
use crate::shop::dial::{DialReads, Ring};
use crate::shop::holding::HoldingKind;
use crate::shop::surface::WantedFinish;
use crate::shop::tool::Tool;

/// A share of parts of which nothing is said.
const SELDOM: f64 = 0.005;

/// Room for a line about a surface: most are no longer.
const LINE: usize = 256;

/// All figures of a job, to be put into words.
pub(super) struct Figures<'a> {
    pub(super) common: Common<'a>,
    pub(super) clampings: Vec<Clamping<'a>>,
    /// The surfaces of each clamping, in the order in which they are turned.
    pub(super) turnings: Vec<Vec<Turning<'a>>>,
}

impl Figures<'_> {
    fn all(&self) -> impl Iterator<Item = &Turning<'_>> {
        self.turnings.iter().flatten()
    }

    fn many(&self) -> bool {
        self.all().nth(1).is_some() || self.clampings.len() > 1
    }

    pub(super) fn heading(&self) -> Result<Vec<String>, Error> {
        let (job, u) = (self.common.job, self.common.units);
        let mut lines = Vec::new();
        if self.many() {
            let length = match job.part.overall_length() {
                Some(overall) => format!(", {} from face to face", overall.people(u)),
                None => String::new(),
            };
            lines.push(format!(
                "Turn a bar of {}, {}, in {}, to a part of several diameters{length}. Its diameters in the order in which they are turned:",
                short_name(job),
                job.stock.diameter().people(u),
                match self.clampings.len() {
                    1 => "one clamping",
                    _ => "two clampings",
                }
            ));
        }
        for (at, (clamp, turnings)) in self.clampings.iter().zip(&self.turnings).enumerate() {
            let held = match clamp.held.kind {
                HoldingKind::ChuckAndCentre => {
                    "Held in the chuck with a live centre at the free end."
                }
                HoldingKind::BetweenCentres => {
                    "Held between two centres, driven by a dog; the chuck only while its ends are faced and drilled."
                }
                HoldingKind::Chuck => "Held in the chuck alone.",
            };
            if self.many() {
                let end = if clamp.turned_round {
                    "from the other face"
                } else {
                    "from the first face"
                };
                lines.push(format!("Clamping {}, {end}. {held}", at + 1));
            }
            for turning in turnings {
                lines.push(self.of_surface(turning)?);
                if let Some(wanted) = turning.place.surface.finish() {
                    let wanted = match wanted {
                        WantedFinish::Ra(ra) => format!("Ra {}", ra.people(u)),
                        WantedFinish::Rz(rz) => format!("Rz {}", rz.people(u)),
                    };
                    lines.push(format!("Finish wanted: {wanted}."));
                }
            }
            if !self.many() {
                lines.insert(1, held.to_owned());
            }
        }
        let skin = match job.stock.skin() {
            Some(skin) => format!(", with a skin of {}", skin.people(u)),
            None => String::new(),
        };
        lines.push(format!(
            "Stock: diameter {}, length {}{skin}. {}",
            job.stock.diameter().people(u),
            job.stock.length().people(u),
            words(|f| match job.roughing_tool() {
                None => write!(f, "Tool: {}.", shape_of(&job.tool, u)),
                Some(rough) => write!(
                    f,
                    "Roughing tool: {}. Finishing tool: {}.",
                    shape_of(rough, u),
                    shape_of(&job.tool, u)
                ),
            })
        ));
        lines.push(String::from(
            "The manual of the machine, local rules and a qualified instructor go before anything on this sheet.",
        ));
        Ok(lines)
    }

    /// One surface: nominal size, limits, length, and the aim in the zone.
    fn of_surface(&self, turning: &Turning<'_>) -> Result<String, Error> {
        let (job, u) = (self.common.job, self.common.units);
        let place = &turning.place;
        let (surface, limits) = (place.surface, place.surface.limits());
        let what = if self.many() {
            format!("{} nominal", surface.diameter().people(u))
        } else {
            format!(
                "Turn a bar of {}, {}, to {} nominal",
                short_name(job),
                job.stock.diameter().people(u),
                surface.diameter().people(u),
            )
        };
        let cone = match surface.small_diameter() {
            Some(small) => format!(", then a cone down to {}", small.people(u)),
            None => String::new(),
        };
        let by_the_sheet = self.aim_of(turning)?;
        let (counted, _) = turning.counted_to(self.common.cross)?;
        let is_counted = counted != by_the_sheet
            && turning.done.is_none()
            && !turning.chance.stops.chosen.after.is_empty();
        let aim = match is_counted {
            true => format!(
                "{}, to which marks are counted after a measurement; by the sheet it is the mark of {}",
                counted.people(u),
                by_the_sheet.people(u)
            ),
            false => format!("{}{}", by_the_sheet.people(u), self.aim_words(turning)?),
        };
        Ok(format!(
            "{what}, that is {} to {}, over a length of {} ({} to {}){cone}. Aim at {aim}; what the {} cannot tell, {}, is kept from both limits.{}",
            limits.smallest().people(u),
            limits.largest().people(u),
            surface.length().people(u),
            place.length_limits.shortest().people(u),
            place.length_limits.longest().people(u),
            turning.gauge.instrument().words(),
            turning.guard.people(u),
            words(|f| match turning.chance.outcome.good.trade() {
                good if good < 0.5 => write!(
                    f,
                    " Most parts will NOT come out so: good in {:.0} of 100, see \"Mind\".",
                    (100.0 * good).floor()
                ),
                _ => Ok(()),
            })
        ))
    }

    fn aim_of(&self, turning: &Turning<'_>) -> Result<Diameter, Error> {
        turning.diameter_at(self.common.cross, turning.datum.last.count())
    }

    /// What both ways cost, all surfaces together.
    pub(super) fn ways(&self) -> Vec<WayCost> {
        let mut sums: Vec<WayCost> = Vec::new();
        for cost in self.all().flat_map(|turning| &turning.ways) {
            match sums.iter_mut().find(|sum| sum.way == cost.way) {
                Some(sum) => {
                    sum.cuts += cost.cuts;
                    let time = sum.time.seconds() + cost.time.seconds();
                    sum.time = Duration::computed_trade(time);
                }
                None => sums.push(*cost),
            }
        }
        sums
    }

    /// How sure each size is, what it rests on, and what the measuring stops are worth.
    pub(super) fn how_sure(&self, all: Outcome) -> Vec<String> {
        let mut lines = Vec::new();
        let mut cuts = 0;
        for turnings in &self.turnings {
            let roughed: usize = turnings.iter().filter_map(Turning::change_at).sum();
            let (mut roughing, mut finishing) = (cuts, cuts + roughed);
            for turning in turnings {
                let change = turning.change_at().unwrap_or(0);
                lines.extend(self.how_sure_of(turning, |at| match at < change {
                    true => roughing + at + 1,
                    false => finishing + at - change + 1,
                }));
                roughing += change;
                finishing += turning.cuts.len() - change;
            }
            cuts = finishing;
        }
        if self.many() {
            lines.push(format!(
                "All diameters together: good {}, one more cut somewhere {}, lost {}.",
                percent(all.good),
                percent(all.rework),
                percent(all.scrap)
            ));
        }
        lines
    }

    /// What is too large may be so by less than a cut can take.
    fn too_little_to_cut(&self, turning: &Turning<'_>, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let limits = turning.place.surface.limits();
        let last = turning.diameter_at(self.common.cross, turning.datum.last.count());
        let cuttable = last.map_or(0.0, |last| last.mm() + 2.0 * turning.place.correcting.mm());
        if round_size(cuttable) <= round_size(limits.largest().mm())
            || turning.chance.outcome.rework.trade() < SELDOM
        {
            return Ok(());
        }
        write!(
            f,
            " (from {} on; what is too large by less cannot be turned off)",
            Diameter::computed_trade(round_size(cuttable)).people(self.common.units)
        )
    }

    /// How sure the last size is, what it rests on, and what the measuring stops are worth.
    fn how_sure_of(&self, turning: &Turning<'_>, number: impl Fn(usize) -> usize) -> [String; 2] {
        let (chance, u) = (&turning.chance, self.common.units);
        let mut size = String::with_capacity(LINE);
        match self.many() {
            true => add(
                &mut size,
                format_args!("{} is", turning.place.surface.diameter().people(u)),
            ),
            false => size.push_str("The last diameter is"),
        }
        add(
            &mut size,
            format_args!(
                " sure to +/- {} (about 95 %): good {}, one more cut {}{}, lost {}. What makes it unsure:",
                chance.uncertainty.people(u),
                percent(chance.outcome.good),
                percent(chance.outcome.rework),
                words(|f| self.too_little_to_cut(turning, f)),
                percent(chance.outcome.scrap),
            ),
        );
        for (at, share) in chance.shares.iter().take(3).enumerate() {
            let (between, percent) = (if at == 0 { " " } else { ", " }, 100.0 * share.share);
            add(
                &mut size,
                format_args!("{between}{} {} %", share.cause.words(), fixed(percent, 0)),
            );
        }
        size.push('.');
        let stops = &chance.stops;
        let costs = |priced: &StopsPriced| {
            let price = priced.expected_price.trade();
            words(move |f| match turning.costs.in_minutes {
                true => write!(f, "{} min of work", fixed(price, 1)),
                false => write!(f, "{}", fixed(price, 2)),
            })
        };
        let mut line = String::with_capacity(LINE);
        line.push_str(match stops.chosen.after.as_slice() {
            [] => "No measuring stop before the last cut",
            [_] => "A measuring stop after cut ",
            _ => "Measuring stops after cuts ",
        });
        for (at, stop) in stops.chosen.after.iter().enumerate() {
            let between = if at == 0 { "" } else { " and " };
            add(&mut line, format_args!("{between}{}", number(*stop)));
        }
        add(
            &mut line,
            format_args!(
                ": slips, lost parts, cuts made anew and the stops themselves then cost {} on average",
                costs(&stops.chosen)
            ),
        );
        if !stops.chosen.after.is_empty() {
            add(
                &mut line,
                format_args!(", without any stop {}", costs(&stops.none)),
            );
        }
        if let Some(more) = &stops.one_more {
            add(&mut line, format_args!(", with one more {}", costs(more)));
        }
        line.push('.');
        [size, line]
    }

    /// Where in the zone the aim lies, and why.
    fn aim_words(&self, turning: &Turning<'_>) -> Result<String, Error> {
        let aim = self.aim_of(turning)?;
        let off = aim.mm() - turning.place.surface.limits().middle().mm();
        // A thousandth of a millimetre is as near to the middle as a size is read.
        if off.abs() < 1e-3 {
            return Ok(String::new());
        }
        let prices = turning.costs.prices;
        let (scrap, rework) = (prices.scrap().trade(), prices.rework().trade());
        let away = DiameterError::computed_trade(round_size(off.abs())).people(self.common.units);
        Ok(match (off > 0.0) == (scrap > rework) {
            true => format!(
                ", {away} {} the middle of the zone, because a lost part costs {} times as much as another cut",
                if off > 0.0 { "above" } else { "below" },
                fixed(scrap / rework, 1),
            ),
            false => format!(
                ", a mark {away} {} the middle of the zone",
                if off > 0.0 { "above" } else { "below" }
            ),
        })
    }

    pub(super) fn kit(&self) -> Vec<String> {
        let u = self.common.units;
        let mut kit = vec![
            String::from(match self.common.job.changes_tools() {
                false => "the tool of this sheet, sharp, set on centre height, short in its holder",
                true => {
                    "the roughing tool and the finishing tool of this sheet, sharp, each set on centre height, short in its holder"
                }
            }),
            String::from("a chamfer tool"),
        ];
        let mut more = |item: String| {
            if !kit.contains(&item) {
                kit.push(item);
            }
        };
        for turning in self.all() {
            more(turning.gauge.instrument().words().to_owned());
            if let Some(undercut) = turning.place.surface.undercut() {
                more(format!(
                    "a grooving tool, {} wide",
                    undercut.width().people(u)
                ));
            }
        }
        for clamp in &self.clampings {
            if let Some(hole) = &clamp.centre {
                more(format!(
                    "a centre drill, form A, pilot {}, in a drill chuck",
                    pilot_words(hole.pilot, u)
                ));
                more(String::from("a live centre"));
            }
            if let Some(driven) = &clamp.driven {
                let stock = self.common.job.stock.diameter();
                kit_between_centres(clamp, driven, (stock, u), &mut more);
            } else if clamp.turned_round {
                more(String::from("soft sheet for the jaws"));
            }
        }
        let runs_out = self.common.job.stock.run_out().is_some();
        let coned = self
            .all()
            .any(|turning| turning.place.surface.small_diameter().is_some());
        let indicated = |clamp: &Clamping<'_>| clamp.turned_round || clamp.driven.is_some();
        if runs_out || coned || self.clampings.iter().any(indicated) {
            more(String::from("a dial indicator on a stand"));
        }
        let parted = self.clampings.iter().any(|clamp| clamp.parted.is_some());
        if let Some(blade) = self
            .common
            .job
            .preference(|p| p.parting())
            .filter(|_| parted)
        {
            more(format!("a parting tool, {} wide", blade.people(u)));
        }
        let sawn = |clamp: &Clamping<'_>| {
            let driven = clamp.driven.as_ref();
            clamp.core.is_some()
                || matches!(clamp.off, Off::Sawn(_))
                || driven.is_some_and(|of| of.overall.is_none() || matches!(of.off, Off::Sawn(_)))
        };
        if self.clampings.iter().any(sawn) {
            more(String::from("a hacksaw, a vice and a flat file"));
        }
        let knife_to_come = self.common.job.tool.cutting_edge_angle().degrees() < 90.0;
        if knife_to_come && self.all().any(|turning| turning.carriage.slanted.is_some()) {
            more(String::from(
                "a knife tool of 90 deg or more, for the shoulders",
            ));
        }
        if let Some(fluid) = self.common.fluid {
            more(format!("cutting fluid: {fluid}"));
        }
        match self.common.job.preference(|p| p.length_by()) {
            Some(LengthBy::Stop) => more(String::from("a stop for the carriage on the bed")),
            Some(LengthBy::Indicator) => {
                more(String::from("a dial indicator with a stand for the bed"));
            }
            _ => {}
        }
        for always in [
            "a calliper or depth gauge for the length",
            "a hook for the chips and a brush",
            "goggles",
        ] {
            more(always.to_owned());
        }
        kit
    }

    pub(super) fn dials(&self) -> Vec<String> {
        let (cross, carriage, u) = (self.common.cross, self.common.carriage, self.common.units);
        let n = cross.divisions_per_turn().count();
        let counts = match cross.reads() {
            DialReads::Diameter => "the DIAMETER",
            _ => "the RADIUS",
        };
        let per_mark = cross.diameter_per_division();
        let per_turn = DiameterError::computed_trade(round_size(per_mark.mm() * f64::from(n)));
        let mut lines = vec![
            format!(
                "Cross slide: its dial counts {counts}. 1 mark says {} and takes {} off the diameter; 1 turn is {n} marks and takes {}.",
                cross.division().people(u),
                per_mark.people(u),
                per_turn.people(u),
            ),
            format!(
                "Always come in to a mark from outside. Withdraw by exactly one turn, so that the same mark returns. \
                 Gone too far: back half a turn, {}then in again.",
                match cross.backlash() {
                    Some(backlash) =>
                        format!("and more than the backlash of {}, ", backlash.people(u)),
                    None => String::from("more than the backlash, "),
                }
            ),
        ];
        if is_readout(cross) {
            lines = vec![
                format!(
                    "Cross slide: its digital readout shows {counts}, in steps of {}. Set as this sheet says, it shows {} \
                     that is turned.",
                    cross.division().people(u),
                    match cross.reads() {
                        DialReads::Diameter => "the size",
                        _ => "half of the size",
                    }
                ),
                String::from(
                    "Come in to a number from outside all the same: the slide has play. Prove that no other axis or tool is \
                     chosen, and that it shows what the line above says.",
                ),
            ];
        }
        let at = 1;
        let mut shown: Vec<String> = Vec::new();
        for turning in self.all().filter(|_| !is_readout(cross)) {
            let rule = self.rule_of(turning);
            if !shown.contains(&rule) {
                shown.push(rule);
            }
        }
        lines.splice(at..at, shown);
        let n = carriage.divisions_per_turn().count();
        let counts = match is_readout(carriage) {
            true => format!(
                "Carriage: its digital readout shows Z, in steps of {}",
                carriage.division().people(u)
            ),
            false => format!(
                "Carriage: 1 mark is {}, 1 turn is {n} marks, {}",
                carriage.division().people(u),
                carriage.travel_per_turn().people(u),
            ),
        };
        lines.push(format!(
            "{counts}. It counts from the finished face {}. The compound slide stays locked, but where a step moves it.",
            (self.clampings.first()).map_or("inwards", Clamping::inwards),
        ));
        lines
    }

    /// What the marks of the cross dial mean while one surface is turned.
    fn rule_of(&self, turning: &Turning<'_>) -> String {
        let (cross, u) = (self.common.cross, self.common.units);
        let on = if self.many() {
            format!(
                "Turning {}: size",
                turning.place.surface.diameter().people(u)
            )
        } else {
            String::from("Size")
        };
        let set = match &turning.datum.missed {
            Some((above, below)) if cross.ring() == Ring::Settable => format!(
                " A dial {} has no mark that is safe inside the zone: its marks give {} and {}. So the ring is set \
                 between marks once, and every reading below lies on a mark.",
                if turning.before.turned {
                    "left as it is"
                } else {
                    "zeroed on the bar"
                },
                above.people(u),
                below.people(u)
            ),
            Some((above, below)) if turning.between() > 0 => format!(
                " The dial as it stands has no mark that is safe inside the zone: its marks give {} and {}. So the readings lie \
                 between marks, tenths by eye.",
                above.people(u),
                below.people(u)
            ),
            _ => String::new(),
        };
        let mark = mark_size(cross, u);
        let spring = turning.leaves_spring();
        let held = match spring.mm() > 0.0 {
            true => format!(
                " In it are the {} by which the bar is expected to spring in the last cuts: the dial reads the size that comes \
                 out.",
                spring.people(u)
            ),
            false => String::new(),
        };
        format!(
            "{on} = {} - {mark} x marks.{held}{set}",
            plain(turning.reads_zero_at(self.common.cross), u)
        )
    }
}

/// Corner and edge of a tool, in words.
fn shape_of(tool: &Tool, u: Units) -> impl fmt::Display {
    words(move |f| {
        write!(
            f,
            "corner radius {}, edge angle {}",
            tool.corner_radius().people(u),
            tool.cutting_edge_angle().people(u)
        )
    })
}

/// What a bar between two centres wants beside its centre drills and the live centre.
fn kit_between_centres(
    clamp: &Clamping<'_>,
    driven: &Driven,
    (stock, u): (Diameter, Units),
    mut more: impl FnMut(String),
) {
    more(format!(
        "a centre drill, form A, pilot {}, in a drill chuck",
        pilot_words(driven.hole.pilot, u)
    ));
    for item in [
        "a centre for the spindle, with its sleeve where the taper of the spindle is larger",
        "a driver plate (catch plate) for the nose of the spindle, and a guard over it and the dog",
    ] {
        more(item.to_owned());
    }
    let (over, finished) = match clamp.grip {
        Grip::Stock { .. } => (stock, false),
        Grip::Turned { nominal, .. } => (nominal, true),
    };
    more(format!(
        "a driving dog (lathe carrier) for {}, its screw and tail as short as they can be",
        over.people(u)
    ));
    if finished {
        more(String::from("soft sheet for the dog"));
    }
}

/// A chance as a person reads it; what is nearly sure is not printed as sure.
fn percent(chance: Probability) -> impl fmt::Display {
    let hundred = 100.0 * chance.trade();
    words(move |f| {
        if hundred > 0.0 && hundred < 0.1 {
            f.write_str("under 0.1 %")
        } else if hundred < 100.0 && hundred > 99.9 {
            f.write_str("over 99.9 %")
        } else {
            write!(f, "{} %", fixed(hundred, 1))
        }
    })
}
