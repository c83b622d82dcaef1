//! Words about lathe, dials and figures that the steps are made of.

use std::fmt::{self, Write as _};
use std::ops::{Deref, Range};

use super::clamping::Clamping;
use super::common::Common;
use super::job::{Job, LengthBy};
use super::lengths::Along;
use super::sheet::{Step, StepKind};
use super::turning::{Turning, cross_reading, mark_size, plain, read_as, tenth_of_a_mark};
use crate::advice::feed::{FAST_HAND, FeedChoice};
use crate::advice::fluid;
use crate::advice::spindle::SpindleChoice;
use crate::error::Error;
use crate::physics::speed;
use crate::provenance::Provenance;
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, Feed, Position, Quantity, SpindleSpeed, WorkLength, round_size,
};
use crate::shop::dial::{Dial, Ring};
use crate::shop::figure::{Iso513Group, ToolMaterial};

/// Measured sizes beside which the sheet prints what to do, in marks from the expected one.
const MARKS_BESIDE: [i64; 5] = [-2, -1, 0, 1, 2];

/// Marks are said to a tenth: so near below one it is that one.
pub(super) const NEXT_TENTH: f64 = 0.05;

/// After other tools were used.
pub(super) const TURNING_TOOL_BACK: &str =
    "The turning tool of this sheet back in its holder, on centre height.";

/// The same where one tool roughs ...
pub(super) const ROUGHING_TOOL_BACK: &str =
    "The roughing tool of this sheet back in its holder, on centre height.";

/// ... and another one finishes.
pub(super) const FINISHING_TOOL_BACK: &str =
    "The finishing tool of this sheet back in its holder, on centre height.";

/// What every measurement begins with.
pub(super) const STOP_WORDS: &str =
    "STOP. Feed off, tool clear, spindle at rest, chips off with a hook, let the part cool.";

/// How a cut begins that is too short for power feed.
pub(super) const NO_POWER_FEED: &str = "No power feed on so short a way:";

/// What a cut is called that is made again at its mark.
pub(super) const SPRING_PASS: &str = "(a spring pass:";

/// Words that are written where they stand, without a text of their own.
pub(super) fn words(write: impl Fn(&mut fmt::Formatter<'_>) -> fmt::Result) -> impl fmt::Display {
    Words(write)
}

/// The size by which a centre drill is called, in inches too where the sheet is: its table is metric.
pub(super) fn pilot_words(pilot: Diameter, units: Units) -> impl fmt::Display {
    words(move |f| match units {
        Units::Metric => write!(f, "{}", pilot.text(units)),
        Units::Inch => write!(f, "{} ({})", pilot.text(Units::Metric), pilot.people(units)),
    })
}

/// How a step of spindle or feed is set, by the name that it has on the machine.
pub(super) fn set_by(name: &str) -> impl fmt::Display {
    let lower = name.to_lowercase();
    let named = ["lever", "belt", "pulley"].map(|what| lower.contains(what));
    words(move |f| match named {
        [true, false, false] => f.write_str(name),
        [false, false, false] => write!(f, "lever {name}"),
        _ => write!(f, "{name}; the motor isolated before a belt is touched"),
    })
}

/// Adds words to a text.
pub(super) fn add(text: &mut String, more: fmt::Arguments<'_>) {
    // A text takes whatever is written.
    let _ = text.write_fmt(more);
}

struct Words<W>(W);

impl<W: Fn(&mut fmt::Formatter<'_>) -> fmt::Result> fmt::Display for Words<W> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0(f)
    }
}

/// One clamping of a job, to be put into words.
pub(super) struct Writer<'a> {
    pub(super) common: &'a Common<'a>,
    pub(super) job: &'a Job,
    pub(super) cross: &'a Dial,
    pub(super) carriage: &'a Dial,
    pub(super) u: Units,
    pub(super) clamp: &'a Clamping<'a>,
    /// The diameter that is turned first, before any cut.
    pub(super) start: Diameter,
    /// The spindle step at which the end is faced.
    pub(super) face_step: &'a SpindleChoice,
    pub(super) face_feed: &'a FeedChoice,
}

/// One surface of it.
pub(super) struct SurfaceWriter<'a> {
    pub(super) writer: &'a Writer<'a>,
    pub(super) setup: &'a Turning<'a>,
    /// Its number in the order in which the surfaces are turned, from 1.
    pub(super) number: usize,
    /// True where another surface of this clamping is turned after it.
    pub(super) more_to_come: bool,
    /// Cuts and measuring stops of the surfaces before it.
    pub(super) cuts_before: usize,
    pub(super) stops_before: usize,
    /// The spindle speed that is set when its turn comes.
    pub(super) speed_before: SpindleSpeed,
    /// Which of its cuts.
    pub(super) part: CutsOf,
}

/// Which cuts of a surface are put into words.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum CutsOf {
    /// All of them, by one tool.
    OneTool,
    /// Those of the tool that roughs; the other one comes when all surfaces are roughed.
    Roughing,
    /// Those of the tool that finishes, zeroed on what this stop measured, counted from 1.
    Finishing { roughed_at: usize },
}

impl<'a> Deref for SurfaceWriter<'a> {
    type Target = Writer<'a>;

    fn deref(&self) -> &Writer<'a> {
        self.writer
    }
}

impl Writer<'_> {
    /// The size of one mark on the diameter, as a plain number that loses nothing.
    pub(super) fn mark_size(&self) -> impl fmt::Display {
        mark_size(self.cross, self.u)
    }

    /// What a tenth of a mark takes off the diameter, as exact as it is.
    pub(super) fn tenth(&self) -> String {
        let tenth = self.cross.diameter_per_division().mm() / 10.0;
        crate::error::readable(DiameterError::computed_trade(round_size(tenth)).text(self.u))
    }

    /// True of a material that tools of high-speed steel do not cut.
    pub(super) fn is_hard(&self) -> bool {
        self.job.material.group() == Some(Iso513Group::H)
    }

    /// The tool that the next clamping begins with, back in its holder.
    pub(super) fn tool_back(&self) -> &'static str {
        match self.job.changes_tools() {
            true => ROUGHING_TOOL_BACK,
            false => TURNING_TOOL_BACK,
        }
    }

    /// True of a material that the trade cuts dry with blades and drills of high-speed steel.
    pub(super) fn is_dry(&self) -> bool {
        let steel = Some(ToolMaterial::HighSpeedSteel);
        fluid::of(&self.job.material, steel, &mut Provenance::deaf())
            .is_some_and(|fluid| fluid.starts_with("dry"))
    }

    pub(super) fn addends(&self, with_face: bool) -> String {
        let (clamp, u) = (self.clamp, self.u);
        let length = clamp
            .places
            .iter()
            .map(|p| p.reach.mm())
            .fold(0.0, f64::max);
        let length = WorkLength::computed_trade(length);
        let room = WorkLength::computed_trade(round_size(
            clamp.overhang.mm() - clamp.facing.mm() - length.mm(),
        ));
        let face = if with_face {
            format!("{} to face, ", clamp.facing.people(u))
        } else {
            String::new()
        };
        format!(
            "{} for the part, {face}{} for the tool holder{} before the jaws; overhang over diameter {}",
            length.people(u),
            room.people(u),
            match clamp.parted {
                Some(_) => " and the parting tool",
                None => "",
            },
            fixed(clamp.support.length_over_diameter.value(), 1),
        )
    }

    pub(super) fn speed_words(&self, step: &SpindleChoice, on: Diameter) -> String {
        let u = self.u;
        let slow = self
            .common
            .roughing
            .band
            .is_some_and(|band| step.cutting_speed < band.low());
        let mut words = format!(
            "{} on {}{}; ideal for {} would be n = v / (pi d) = {} / (pi x {}) = {}; governed by {}",
            step.cutting_speed.people(u),
            on.people(u),
            if slow { ", below the band" } else { "" },
            self.band_words(),
            self.common.roughing.wanted.people(u),
            on.people(u),
            step.ideal.people(u),
            step.governed_by,
        );
        if let Some(above) = &step.neighbour_above {
            words.push_str(&format!(
                "; next above {}: {}",
                above.spindle_speed.people(u),
                above.because
            ));
        }
        if let Some(below) = &step.neighbour_below {
            words.push_str(&format!(
                "; next below {}: {}",
                below.spindle_speed.people(u),
                below.because
            ));
        }
        words
    }

    pub(super) fn band_words(&self) -> String {
        match self.common.roughing.band {
            Some(band) => format!(
                "the middle of the band {} to {}",
                band.low().people(self.u),
                band.high().people(self.u)
            ),
            None => String::from("the cutting speed asked for"),
        }
    }

    pub(super) fn feed_words(&self, feed: &FeedChoice, step: &SpindleChoice) -> impl fmt::Display {
        let u = self.u;
        words(move |f| {
            if !feed.by_hand {
                write!(f, "feed {}", feed.feed.people(u))?;
                return match &feed.lever {
                    Some(lever) => write!(f, " ({})", set_by(lever)),
                    None => Ok(()),
                };
            }
            write!(f, "by hand at {}", feed.feed.people(u))?;
            let travel = self.carriage.travel_per_turn();
            match speed::handwheel_rate(feed.feed, step.spindle_speed, travel) {
                Ok(rate) => write!(f, ", {} of the carriage wheel", rate.people(u)),
                Err(_) => Ok(()),
            }
        })
    }

    pub(super) fn z_reading(&self, divisions: Divisions) -> Reading {
        self.carriage.reading(Slide::Carriage, divisions)
    }

    pub(super) fn z_words(&self, divisions: Divisions) -> impl fmt::Display {
        words(move |f| {
            write!(f, "Z {}", self.z_people(divisions))?;
            match self.carriage.ring() {
                // It shows Z itself: there is no mark.
                Ring::Readout => Ok(()),
                Ring::Settable | Ring::Fixed => write!(f, " ({})", self.z_reading(divisions)),
            }
        })
    }

    /// The same, where a tenth of a mark may be read by eye.
    pub(super) fn along_words(&self, at: Along) -> impl fmt::Display {
        words(move |f| match at.tenths {
            0 => write!(f, "{}", self.z_words(at.mark)),
            tenths => write!(
                f,
                "Z {} ({})",
                Position::computed_trade(-at.travel(self.carriage)).people(self.u),
                read_as(&self.z_reading(at.mark), tenths)
            ),
        })
    }

    fn z_people(&self, divisions: Divisions) -> impl fmt::Display {
        Position::computed_trade(-self.carriage.travel_at(divisions)).people(self.u)
    }

    pub(super) fn stop_words(&self) -> &'static str {
        STOP_WORDS
    }

    /// How far in the handle is turned from where it stands, withdrawn by a turn or not.
    pub(super) fn farther(&self, marks: f64, withdrawn: bool) -> impl fmt::Display {
        let n = f64::from(self.cross.divisions_per_turn().count());
        let marks = if withdrawn { marks + n } else { marks };
        let turns = (marks / n + 1e-9).floor();
        let rest = (marks - turns * n).max(0.0);
        // Less than half a tenth is said as none.
        let whole = turns > 0.0 && rest < 0.05;
        let rest = tenth_of_a_mark(rest);
        words(move |f| {
            match turns as i64 {
                0 => {}
                1 => f.write_str("1 turn")?,
                turns => write!(f, "{turns} turns")?,
            }
            match (whole, turns > 0.0) {
                (true, _) => Ok(()),
                (false, true) => write!(f, " + {rest} marks"),
                (false, false) => write!(f, "{rest} marks"),
            }
        })
    }

    /// The order to set a speed, at standstill.
    pub(super) fn set_words(
        &self,
        speed: SpindleSpeed,
        chosen: &SpindleChoice,
    ) -> impl fmt::Display {
        words(move |f| {
            write!(f, "Spindle at rest: set {}", speed.people(self.u))?;
            if let Some(lever) = self.job.lathe.step_name(speed) {
                write!(f, " ({})", set_by(lever))?;
            }
            if let Some(range) = &chosen.range {
                write!(f, " (range {range})")?;
            }
            f.write_str(".")
        })
    }

    /// How the cross slide is fed in facing.
    pub(super) fn face_words(&self, step: &SpindleChoice) -> String {
        let feed = self.face_feed;
        if !feed.by_hand {
            return format!(
                "cross feed about {} (read the plate for the lever), or by hand",
                feed.feed.people(self.u)
            );
        }
        let fed = self.face_fed(step);
        match speed::handwheel_rate(fed, step.spindle_speed, self.cross.travel_per_turn()) {
            Ok(rate) => format!(
                "by hand, steadily, about {} of the cross handle",
                rate.people(self.u)
            ),
            Err(_) => String::from("by hand with the cross handle, steadily"),
        }
    }

    /// The feed of facing: no faster than a hand turns.
    pub(super) fn face_fed(&self, step: &SpindleChoice) -> Feed {
        let feed = self.face_feed;
        let rate =
            speed::handwheel_rate(feed.feed, step.spindle_speed, self.cross.travel_per_turn());
        match rate {
            Ok(rate) if feed.by_hand && rate > FAST_HAND.value => {
                let share = FAST_HAND.value.turns_per_min() / rate.turns_per_min();
                Feed::computed_trade(share * feed.feed.trade())
            }
            _ => feed.feed,
        }
    }
}

impl SurfaceWriter<'_> {
    /// A step on this surface.
    pub(super) fn step(&self, kind: StepKind, diameter: Diameter, text: impl Into<String>) -> Step {
        let mut step = Step::new(kind, diameter, text);
        step.surface = Some(self.setup.place.at);
        step
    }

    /// How far every cut goes, in words.
    pub(super) fn travel_words(&self, last: bool, twice: bool) -> impl fmt::Display {
        let plan = self.setup.carriage;
        let (withdraw, same) = match self.reads_out() {
            true => ("withdraw clear of the bar", "number"),
            false => ("withdraw one turn", "mark"),
        };
        words(move |f| {
            match plan.feed_off {
                Some(off) => write!(f, "Feed off at {}, by hand ", self.z_words(off))?,
                None if self.setup.finish_feed.by_hand => f.write_str("By hand ")?,
                None => write!(f, "{NO_POWER_FEED} by hand, at about the feed given, ")?,
            }
            match self.length_by() {
                LengthBy::Dial => write!(f, "to {}", self.z_words(plan.stop))?,
                LengthBy::Stop => {
                    write!(
                        f,
                        "gently against the stop (Z {})",
                        self.z_people(plan.stop)
                    )?;
                }
                LengthBy::Indicator => {
                    write!(
                        f,
                        "until the indicator reads 0 (Z {})",
                        self.z_people(plan.stop)
                    )?;
                }
            }
            if twice {
                write!(
                    f,
                    ", {withdraw}, back to the right; in again to the same {same}, and the same way once more {SPRING_PASS} \
                     it takes what the bar sprang away from)"
                )?;
            }
            match last {
                true => f.write_str("; leave the cross slide where it is."),
                false => write!(f, ", {withdraw}, back to the right."),
            }
        })
    }

    /// What tells where the carriage has to stop.
    pub(super) fn length_by(&self) -> LengthBy {
        self.job.preference(|p| p.length_by()).unwrap_or_default()
    }

    /// How the stop or the indicator is set for this surface, where one is used.
    pub(super) fn set_the_stop(&self) -> String {
        let at = self.z_words(self.setup.carriage.stop);
        let clear = match (self.reads_out(), self.stands_out()) {
            (true, _) => "withdraw clear of the bar",
            (false, true) => "the tip clear of the bar",
            (false, false) => "withdraw one turn, clear of the bar",
        };
        match self.length_by() {
            LengthBy::Dial => String::new(),
            LengthBy::Stop => format!(
                " Stop the spindle; {clear}; carriage to {at}; bring the stop against it and lock it; carriage to the right. Never \
                 drive power feed into the stop."
            ),
            LengthBy::Indicator => format!(
                " Stop the spindle; {clear}; carriage to {at}; an indicator on the bed against the carriage, pressed in by half a turn \
                 and set to 0; carriage to the right. It must have room to move back."
            ),
        }
    }

    /// How a stop that was moved out of the way of the shoulder is set again for one more cut.
    pub(super) fn set_the_stop_again(&self) -> String {
        match self.length_by() {
            // An indicator was passed by, and still shows its 0 at the same place.
            LengthBy::Dial | LengthBy::Indicator => String::new(),
            LengthBy::Stop => format!(
                " Set the stop again: the tip clear of the bar; carriage to {}; bring the stop against it and lock it; carriage \
                 to the right. Never drive power feed into the stop.",
                self.z_words(self.setup.carriage.stop)
            ),
        }
    }

    /// True where the cross slide stands somewhere beyond the bar when the first cut of this surface comes: the
    /// shoulder before was faced outwards, or the surface before was measured, and the zero is not come in to anew.
    pub(super) fn stands_out(&self) -> bool {
        match self.part {
            CutsOf::OneTool => self.setup.before.turned && self.cross.ring() == Ring::Fixed,
            CutsOf::Roughing => self.setup.before.turned && self.ring_is_kept(),
            CutsOf::Finishing { .. } => false,
        }
    }

    /// True where this surface is roughed by the marks of the one before.
    pub(super) fn ring_is_kept(&self) -> bool {
        self.cross.ring() != Ring::Settable || self.setup.datum.start == self.setup.before.mark
    }

    /// The places of its cuts among all of the surface.
    pub(super) fn range(&self) -> Range<usize> {
        let all = self.setup.cuts.len();
        let change = self.setup.change_at().unwrap_or(all);
        match self.part {
            CutsOf::OneTool => 0..all,
            CutsOf::Roughing => 0..change,
            CutsOf::Finishing { .. } => change..all,
        }
    }

    /// How many of its stops are made by then.
    pub(super) fn stops_by(&self, at: usize) -> usize {
        let from = self.range().start;
        let stops = self.setup.chance.stops.chosen.after.iter();
        stops.filter(|stop| (from..at).contains(stop)).count()
    }

    /// What a mark of the cross dial beyond one turn wants said: its ring shows no more than a turn.
    pub(super) fn turns_left_out(&self, mark: i64) -> impl fmt::Display {
        let turn = i64::from(self.cross.divisions_per_turn().count());
        words(move |f| match mark + MARKS_BESIDE[4] < turn {
            true => Ok(()),
            false => write!(f, ", whole turns of {turn} left out"),
        })
    }

    /// How the turns are counted from a mark that the ring cannot show.
    pub(super) fn counted_as(&self, marks: f64) -> impl fmt::Display {
        let turn = f64::from(self.cross.divisions_per_turn().count());
        let turns = (round_size(marks + NEXT_TENTH) / turn).floor() as i64;
        words(move |f| match turns {
            0 => Ok(()),
            1 => f.write_str(", which counts as 1 turn more than it shows"),
            more if more > 0 => write!(f, ", which counts as {more} turns more than it shows"),
            -1 => f.write_str(", which counts as 1 turn less than it shows"),
            less => write!(f, ", which counts as {} turns less than it shows", -less),
        })
    }

    /// What the ring shows of so many marks.
    pub(super) fn on_the_ring(&self, marks: f64) -> impl fmt::Display {
        on_the_ring(self.cross, marks)
    }

    /// `measured size: mark of the ring`, for sizes beside the expected one; with the marks that are
    /// then left to the last one.
    pub(super) fn table(&self, at: usize) -> Result<String, Error> {
        let rows = ring_rows(self.setup, self.common, at)?;
        Ok(match rows.as_slice() {
            [] => String::new(),
            rows => format!(": {}", ring_words(rows, self.u)),
        })
    }

    pub(super) fn rule(&self, measured: impl fmt::Display) -> impl fmt::Display {
        words(move |f| {
            write!(
                f,
                "({} - {measured}) / {}",
                plain(self.setup.datum.zero, self.u),
                self.mark_size()
            )
        })
    }
}

/// What the ring of the cross dial shows of so many marks.
pub(super) fn on_the_ring(cross: &Dial, marks: f64) -> impl fmt::Display {
    tenth_of_a_mark(ring_mark(cross, marks))
}

/// The same as a number of marks within one turn.
pub(super) fn ring_mark(cross: &Dial, marks: f64) -> f64 {
    let turn = f64::from(cross.divisions_per_turn().count());
    // As it is said, to a tenth.
    let marks = ((10.0 * marks).round() / 10.0).rem_euclid(turn);
    // What would be said as a whole turn is the next zero.
    match marks >= turn - NEXT_TENTH {
        true => 0.0,
        false => marks,
    }
}

/// To which mark the ring is set on a measured size.
pub(super) struct RingRow {
    pub(super) size: Diameter,
    pub(super) ring: i64,
    /// The marks that are then left to the last one.
    pub(super) farther: Option<i64>,
}

/// What to do at sizes beside the one that is expected of the cut at this place, where its stop has the ring set on
/// them.
pub(super) fn ring_rows(
    turning: &Turning<'_>,
    common: &Common<'_>,
    cut: usize,
) -> Result<Vec<RingRow>, Error> {
    let cross = common.cross;
    let mark = turning.mark_of(cut + 1);
    let last = (cut + 2 == turning.cuts.len()).then(|| turning.mark_of(cut + 2));
    let mut rows = Vec::with_capacity(MARKS_BESIDE.len());
    for beside in MARKS_BESIDE {
        let at = mark - beside;
        let size = turning.diameter_at(cross, at)?;
        if turning.sets_the_ring_on(size, cut, common)? {
            rows.push(RingRow {
                size,
                ring: i64::from(cross_reading(cross, at)?.mark()),
                farther: last.map(|last| last - at),
            });
        }
    }
    Ok(rows)
}

/// The same in one line.
pub(super) fn ring_words(rows: &[RingRow], units: Units) -> String {
    let mut words = String::new();
    for (at, row) in rows.iter().enumerate() {
        let (between, size) = (if at == 0 { "" } else { "; " }, plain(row.size, units));
        // A text takes whatever is written.
        let _ = match row.farther {
            Some(farther) => write!(
                words,
                "{between}{size}: {}, then {farther} farther",
                row.ring
            ),
            None => write!(words, "{between}{size}: {}", row.ring),
        };
    }
    words
}
