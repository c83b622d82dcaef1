//! Words about lathe, dials and figures that the steps are made of.

use super::safety::short_name;
use super::setup::{cross_reading, plain, tenth_of_a_mark};
use super::steps::Writer;
use crate::advice::feed::{FAST_HAND, FeedChoice};
use crate::advice::spindle::SpindleChoice;
use crate::advice::stops::StopsPriced;
use crate::error::Error;
use crate::physics::speed;
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::quantity::unit::Units;
use crate::quantity::{
    DiameterError, Position, Probability, Quantity, SpindleSpeed, WorkLength, round_size,
};
use crate::shop::dial::DialReads;
use crate::shop::holding::HoldingKind;
use crate::shop::part::WantedFinish;

/// Measured sizes beside which the sheet prints what to do, in marks from the expected one.
const MARKS_BESIDE: [i64; 5] = [-2, -1, 0, 1, 2];

impl Writer<'_> {
    pub(super) fn heading(&self) -> Result<Vec<String>, Error> {
        let (job, u) = (self.job, self.u);
        let limits = job.part.limits();
        let mut lines = vec![
            format!(
                "Turn a bar of {}, {}, to {} nominal, that is {} to {}, over a length of {} ({} to {}).",
                short_name(job),
                job.stock.diameter().people(u),
                job.part.diameter().people(u),
                limits.smallest().people(u),
                limits.largest().people(u),
                job.part.length().people(u),
                self.setup.length_limits.shortest().people(u),
                self.setup.length_limits.longest().people(u),
            ),
            format!(
                "Stock: diameter {}, length {}. Aim at {}{}; what the {} cannot tell, {}, is kept from both limits. Tool: corner radius {}, edge angle {}.",
                job.stock.diameter().people(u),
                job.stock.length().people(u),
                self.setup
                    .diameter_at(self.cross, self.setup.datum.last.count())?
                    .people(u),
                self.aim_words()?,
                self.setup.gauge.instrument().words(),
                self.setup.guard.people(u),
                job.tool.corner_radius().people(u),
                job.tool.cutting_edge_angle().people(u),
            ),
            String::from(
                "The manual of the machine, local rules and a qualified instructor go before anything on this sheet.",
            ),
        ];
        if let Some(wanted) = job.part.finish() {
            let wanted = match wanted {
                WantedFinish::Ra(ra) => format!("Ra {}", ra.people(u)),
                WantedFinish::Rz(rz) => format!("Rz {}", rz.people(u)),
            };
            lines.insert(1, format!("Finish wanted: {wanted}."));
        }
        if self.setup.held.kind == HoldingKind::ChuckAndCentre {
            lines.insert(
                1,
                String::from("Held in the chuck with a live centre at the free end."),
            );
        } else {
            lines.insert(1, String::from("Held in the chuck alone."));
        }
        Ok(lines)
    }

    /// How sure the last size is, what it rests on, and what the measuring stops are worth.
    pub(super) fn how_sure(&self) -> Vec<String> {
        let (chance, u) = (&self.setup.chance, self.u);
        let most: Vec<String> = chance
            .shares
            .iter()
            .take(3)
            .map(|share| format!("{} {:.0} %", share.cause.words(), 100.0 * share.share))
            .collect();
        let mut lines = vec![format!(
            "The last diameter is sure to +/- {} (about 95 %): good {}, one more cut {}, lost {}. What makes it unsure: {}.",
            chance.uncertainty.people(u),
            percent(chance.outcome.good),
            percent(chance.outcome.rework),
            percent(chance.outcome.scrap),
            most.join(", "),
        )];
        let stops = &chance.stops;
        let costs = |priced: &StopsPriced| match self.setup.costs.in_minutes {
            true => format!("{:.1} min of work", priced.expected_price.trade()),
            false => format!("{:.2}", priced.expected_price.trade()),
        };
        let mut line = match stops.chosen.after.as_slice() {
            [] => String::from("No measuring stop before the last cut"),
            after => {
                let cuts: Vec<String> = after.iter().map(|at| (at + 1).to_string()).collect();
                format!("Measuring stops after cut {}", cuts.join(" and "))
            }
        };
        line.push_str(&format!(
            ": slips, lost parts, cuts made anew and the stops themselves then cost {} on average",
            costs(&stops.chosen)
        ));
        if !stops.chosen.after.is_empty() {
            line.push_str(&format!(", without any stop {}", costs(&stops.none)));
        }
        if let Some(more) = &stops.one_more {
            line.push_str(&format!(", with one more {}", costs(more)));
        }
        line.push('.');
        lines.push(line);
        lines
    }

    /// Where in the zone the aim lies, and why.
    fn aim_words(&self) -> Result<String, Error> {
        let aim = self
            .setup
            .diameter_at(self.cross, self.setup.datum.last.count())?;
        let off = aim.mm() - self.job.part.limits().middle().mm();
        // A thousandth of a millimetre is as near to the middle as a size is read.
        if off.abs() < 1e-3 {
            return Ok(String::new());
        }
        let prices = self.setup.costs.prices;
        let (scrap, rework) = (prices.scrap().trade(), prices.rework().trade());
        let away = DiameterError::computed_trade(round_size(off.abs())).people(self.u);
        Ok(match (off > 0.0) == (scrap > rework) {
            true => format!(
                ", {away} {} the middle of the zone, because a lost part costs {:.1} times as much as another cut",
                if off > 0.0 { "above" } else { "below" },
                scrap / rework,
            ),
            false => format!(
                ", a mark {away} {} the middle of the zone",
                if off > 0.0 { "above" } else { "below" }
            ),
        })
    }

    pub(super) fn kit(&self) -> Vec<String> {
        let mut kit = vec![
            String::from(
                "the tool of this sheet, sharp, set on centre height, short in its holder",
            ),
            String::from("a chamfer tool"),
            self.setup.gauge.instrument().words().to_owned(),
            String::from("a calliper or depth gauge for the length"),
            String::from("a hook for the chips and a brush"),
            String::from("goggles"),
        ];
        if let Some(hole) = &self.setup.centre {
            kit.push(format!(
                "a centre drill, form A, pilot {}",
                hole.pilot.text(Units::Metric)
            ));
            kit.push(String::from("a live centre"));
        }
        kit
    }

    pub(super) fn dials(&self) -> Vec<String> {
        let (cross, u) = (self.cross, self.u);
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
                "Size = {} - {} x marks.{}",
                plain(self.setup.datum.zero, u),
                self.mark_size(),
                match &self.setup.datum.missed {
                    Some((above, below)) => format!(
                        " A dial zeroed on the bar has no mark that is safe inside the zone: its marks give {} and {}. So the ring is \
                         set between marks once, and every reading below lies on a mark.",
                        above.people(u),
                        below.people(u)
                    ),
                    None => String::new(),
                }
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
        let n = self.carriage.divisions_per_turn().count();
        lines.push(format!(
            "Carriage: 1 mark is {}, 1 turn is {n} marks, {}. It counts from the finished face towards the chuck. The \
             compound slide stays locked, but where a step moves it.",
            self.carriage.division().people(u),
            self.carriage.travel_per_turn().people(u),
        ));
        lines
    }

    /// The size of one mark on the diameter, as a plain number that loses nothing.
    pub(super) fn mark_size(&self) -> String {
        let text = self.cross.diameter_per_division().text(self.u);
        text.split(' ').next().unwrap_or_default().to_owned()
    }

    pub(super) fn addends(&self, with_face: bool) -> String {
        let (setup, u) = (self.setup, self.u);
        let length = self.job.part.length();
        let room =
            WorkLength::computed_trade(setup.overhang.mm() - setup.facing.mm() - length.mm());
        let face = if with_face {
            format!("{} to face, ", setup.facing.people(u))
        } else {
            String::new()
        };
        format!(
            "{} for the part, {face}{} for the tool holder before the jaws; overhang over diameter {:.1}",
            length.people(u),
            room.people(u),
            setup.support.length_over_diameter.value(),
        )
    }

    pub(super) fn speed_words(&self, step: &SpindleChoice) -> String {
        let u = self.u;
        let mut words = format!(
            "{} on {}; {} would be ideal for {}; governed by {}",
            step.cutting_speed.people(u),
            self.job
                .zero_at
                .unwrap_or(self.job.stock.diameter())
                .people(u),
            step.ideal.people(u),
            self.band_words(),
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
        match self.setup.band {
            Some(band) => format!(
                "the middle of the band {} to {}",
                band.low().people(self.u),
                band.high().people(self.u)
            ),
            None => String::from("the cutting speed asked for"),
        }
    }

    pub(super) fn feed_words(&self, feed: &FeedChoice, step: &SpindleChoice) -> String {
        let u = self.u;
        if !feed.by_hand {
            let lever = feed
                .lever
                .as_ref()
                .map_or_else(String::new, |lever| format!(" (lever {lever})"));
            return format!("feed {}{lever}", feed.feed.people(u));
        }
        let rate = speed::handwheel_rate(
            feed.feed,
            step.spindle_speed,
            self.carriage.travel_per_turn(),
        );
        let turns = rate.map_or_else(
            |_| String::new(),
            |rate| format!(", {} of the carriage wheel", rate.people(u)),
        );
        format!("by hand at {}{turns}", feed.feed.people(u))
    }

    pub(super) fn z_reading(&self, divisions: Divisions) -> Reading {
        self.carriage.reading(Slide::Carriage, divisions)
    }

    pub(super) fn z_words(&self, divisions: Divisions) -> String {
        let z = Position::computed_trade(-self.carriage.travel_at(divisions));
        format!("Z {} ({})", z.people(self.u), self.z_reading(divisions))
    }

    /// How far every cut goes, in words.
    pub(super) fn travel_words(&self, last: bool) -> String {
        let plan = self.setup.carriage;
        let after = if last {
            "; leave the cross slide where it is."
        } else {
            ", withdraw one turn, back to the right."
        };
        match plan.feed_off {
            Some(off) => format!(
                "Feed off at {}, by hand to {}{after}",
                self.z_words(off),
                self.z_words(plan.stop)
            ),
            None => format!("By hand to {}{after}", self.z_words(plan.stop)),
        }
    }

    pub(super) fn stop_words(&self) -> &'static str {
        "STOP. Feed off, tool clear, spindle at rest, chips off with a hook, let the part cool."
    }

    /// `measured size: mark of the ring`, for sizes beside the expected one; with the marks that are
    /// then left to the last one.
    pub(super) fn table(&self, mark: i64, last: Option<i64>) -> Result<String, Error> {
        let mut rows = Vec::with_capacity(MARKS_BESIDE.len());
        for beside in MARKS_BESIDE {
            let at = mark - beside;
            let size = plain(self.setup.diameter_at(self.cross, at)?, self.u);
            let ring = cross_reading(self.cross, at)?.mark();
            rows.push(match last {
                Some(last) => format!("{size}: {ring}, then {} farther", last - at),
                None => format!("{size}: {ring}"),
            });
        }
        Ok(rows.join("; "))
    }

    /// How far in the handle is turned from where it stands, withdrawn by a turn or not.
    pub(super) fn farther(&self, marks: f64, withdrawn: bool) -> String {
        let n = f64::from(self.cross.divisions_per_turn().count());
        let marks = if withdrawn { marks + n } else { marks };
        let turns = (marks / n + 1e-9).floor();
        let rest = tenth_of_a_mark((marks - turns * n).max(0.0));
        match turns as i64 {
            0 => format!("{rest} marks"),
            1 => format!("1 turn + {rest} marks"),
            turns => format!("{turns} turns + {rest} marks"),
        }
    }

    /// The order to set a speed, at standstill.
    pub(super) fn set_words(&self, speed: SpindleSpeed, chosen: &SpindleChoice) -> String {
        let lever = self
            .job
            .lathe
            .step_name(speed)
            .map_or_else(String::new, |lever| format!(" (lever {lever})"));
        let range = chosen
            .range
            .as_ref()
            .map_or_else(String::new, |range| format!(" (range {range})"));
        format!(
            "Spindle at rest: set {}{lever}{range}.",
            speed.people(self.u)
        )
    }

    /// How the cross slide is fed in facing.
    pub(super) fn face_words(&self, step: &SpindleChoice) -> String {
        let feed = &self.setup.finish_feed;
        if !feed.by_hand {
            return format!(
                "cross feed about {} (read the plate for the lever), or by hand",
                feed.feed.people(self.u)
            );
        }
        let rate =
            speed::handwheel_rate(feed.feed, step.spindle_speed, self.cross.travel_per_turn());
        match rate {
            Ok(rate) if rate <= FAST_HAND.value => {
                format!("by hand, {} of the cross handle", rate.people(self.u))
            }
            _ => String::from("by hand with the cross handle, steadily"),
        }
    }

    pub(super) fn rule(&self, measured: &str) -> String {
        format!(
            "({} - {measured}) / {}",
            plain(self.setup.datum.zero, self.u),
            self.mark_size()
        )
    }
}

/// A chance as a person reads it; what is nearly sure is not printed as sure.
fn percent(chance: Probability) -> String {
    let hundred = 100.0 * chance.trade();
    if hundred > 0.0 && hundred < 0.1 {
        String::from("under 0.1 %")
    } else if hundred < 100.0 && hundred > 99.9 {
        String::from("over 99.9 %")
    } else {
        format!("{hundred:.1} %")
    }
}
