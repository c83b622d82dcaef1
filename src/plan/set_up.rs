//! The steps before any cut along the bar: clamping, first start, face, centre hole, zero of the
//! carriage.

use super::clamping::{Clamping, Grip, Off};
use super::job::Job;
use super::sheet::{Step, StepKind};
use super::words::{Writer, pilot_words, words};
use crate::advice::centre_hole::CentreHoleChoice;
use crate::physics::speed;
use crate::quantity::dial::Divisions;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, Duration, Position, Quantity, WorkLength, round_size};
use crate::shop::dial::Ring;

/// Jaws are hardly longer, in mm: judgement, no source.
const JAWS: f64 = 60.0;

/// What is said of a bar in the spindle (common practice, no source).
pub(super) const NOTHING_BEHIND: &str =
    " Nothing may stand out behind the spindle without a guarded tube: saw a longer bar off.";

/// What a zero of the carriage follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Before {
    Facing,
    Change,
}

/// How a fixed ring comes to be zeroed with the compound slide.
const SQUARE_TO_THE_BED: &str = "Set the compound slide square to the bed, so that it moves across as the cross slide does, and \
     the tool straight to the bar again; leave both so. ";

/// Most that one facing cut takes, in mm: judgement, no source.
const FACE_DEPTH: f64 = 1.05;

/// How much stands out while an end is faced and drilled for a centre.
pub(super) fn short_end(job: &Job, clamp: &Clamping<'_>) -> WorkLength {
    WorkLength::computed_trade(clamp.overhang.mm().min(short_end_of_bar(job).mm()))
}

/// The same of a bar that is longer than that.
pub(super) fn short_end_of_bar(job: &Job) -> WorkLength {
    WorkLength::computed_trade(job.stock.diameter().mm().max(10.0))
}

fn facing_cuts(facing: WorkLength) -> f64 {
    (facing.mm() / FACE_DEPTH).ceil().max(1.0)
}

/// In how many cuts so much is faced off, where it is more than one.
pub(super) fn facing_cuts_words(facing: WorkLength) -> String {
    match facing_cuts(facing) {
        cuts if cuts > 1.0 => format!(", in {cuts:.0} cuts"),
        _ => String::new(),
    }
}

impl Writer<'_> {
    /// Everything up to the zero of the carriage.
    pub(super) fn set_up(&self, steps: &mut Vec<Step>) {
        if let Some(driven) = &self.clamp.driven {
            self.between_centres(driven, steps);
            steps.push(self.zero_z());
            return;
        }
        match self.clamp.grip {
            Grip::Stock { length } => steps.push(self.clamp_stock(length)),
            Grip::Turned {
                nominal, length, ..
            } => steps.push(self.turn_round(nominal, length)),
        }
        if !self.clamp.turned_round {
            steps.push(self.first_start());
        }
        steps.push(self.face());
        if let Some(hole) = &self.clamp.centre {
            steps.push(self.centre(hole, true));
            steps.push(self.let_out());
        }
        if self.clamp.places.is_empty() {
            return;
        }
        steps.push(self.zero_z());
    }

    pub(super) fn clamp_stock(&self, grip: WorkLength) -> Step {
        let (job, clamp, u) = (self.job, self.clamp, self.u);
        let stock = job.stock.diameter();
        if clamp.centre.is_none() {
            let mut step = Step::new(
                StepKind::Clamp,
                stock,
                match grip.mm() > JAWS {
                    true => format!(
                        "Grip the bar over the whole length of the jaws, let {} stand out; of the {} behind, what is longer \
                         than the jaws goes into the spindle, whose bore it must pass.{NOTHING_BEHIND} Tighten. KEY OUT of \
                         the chuck.",
                        clamp.overhang.people(u),
                        grip.people(u),
                    ),
                    false => format!(
                        "Grip {} in the jaws, let {} stand out. Tighten. KEY OUT of the chuck.",
                        grip.people(u),
                        clamp.overhang.people(u)
                    ),
                },
            )
            .because(self.addends(true));
            self.true_bar(&mut step);
            return step;
        }
        let short = self.short_end();
        let mut step = Step::new(
            StepKind::Clamp,
            stock,
            format!(
                "Grip the bar with only {} standing out, to face and drill it; the other {} go into the spindle, whose \
                 bore they must pass.{NOTHING_BEHIND} Tighten the jaws. KEY OUT of the chuck.",
                short.people(u),
                WorkLength::computed_trade(job.stock.length().mm() - short.mm()).people(u)
            ),
        )
        .because(match clamp.driven {
            Some(_) => "a short end does not spring; the bar goes between the centres when both its ends are faced and drilled",
            None => "a short end does not spring; it is let out afterwards",
        });
        self.true_bar(&mut step);
        step
    }

    /// How much stands out while the end is faced and drilled for a centre.
    pub(super) fn short_end(&self) -> WorkLength {
        short_end(self.job, self.clamp)
    }

    /// What a bar that runs out wants beside its clamping.
    pub(super) fn true_bar(&self, step: &mut Step) {
        if let Some(run_out) = self.job.stock.run_out().filter(|r| r.mm() > 0.0) {
            step.text.push_str(&format!(
                " Turn it by hand against an indicator or the tip: it may run out by {} at the most; more: turn it in \
                 the jaws and clamp anew.",
                run_out.people(self.u)
            ));
        }
    }

    fn turn_round(&self, diameter: Diameter, length: WorkLength) -> Step {
        let (clamp, u) = (self.clamp, self.u);
        let overhang = WorkLength::computed_trade(clamp.overhang.mm());
        Step::new(
            StepKind::TurnRound,
            diameter,
            format!(
                "Spindle at rest. {}, turn it round, and grip it on its finished {} over {}{}, the jaws lined with \
                 soft sheet (copper, aluminium), {} standing out. Turn it by hand against an indicator on a finished \
                 diameter near the middle of the part, beside the jaws where none is free there: shift it until it runs out \
                 by no more than the drawing allows. \
                 Tighten. KEY OUT of the chuck. Turn by hand one whole turn: nothing touches.",
                // In the chuck one of its faces cannot be reached.
                words(|f| {
                    match clamp.off {
                        Off::Whole => f.write_str("Part out")?,
                        Off::Sawn(length) => write!(
                            f,
                            "Part out, saw it to {} from its finished face, burr off",
                            length.people(u)
                        )?,
                        Off::Parted => f.write_str("What is left of the bar out of the chuck; the part cold, burr off")?,
                    }
                    match clamp.overall {
                        Some(_) => f.write_str(
                            ": measure its length L over all, at the highest place of the end still to face, ________",
                        ),
                        None => Ok(()),
                    }
                }),
                diameter.people(u),
                length.people(u),
                match length.mm() > JAWS {
                    true => ", or the whole length of the jaws where they are shorter",
                    false => "",
                },
                overhang.people(u),
            ),
        )
        .because(
            match u {
                Units::Metric => "three jaws put a turned-round part back on its axis to a few hundredths of a millimetre at best; no cut mends that",
                Units::Inch => "three jaws put a turned-round part back on its axis to a thousandth of an inch or two at best; no cut mends that",
            },
        )
    }

    pub(super) fn first_start(&self) -> Step {
        let step = self.face_step;
        Step::new(
            StepKind::FirstStart,
            self.job.stock.diameter(),
            format!(
                "First start. Guard shut, goggles on, nothing loose near the chuck. Turn the chuck by hand one whole \
                 turn: nothing touches. Start on the lowest speed and watch. {}",
                self.set_words(step.spindle_speed, step),
            ),
        )
        .because(self.speed_words(step, self.start))
    }

    pub(super) fn face(&self) -> Step {
        let (clamp, u) = (self.clamp, self.u);
        let step = self.face_step;
        let change = if clamp.turned_round {
            // Edges were broken, or the part was parted off, since it was used.
            format!(
                "{} {} ",
                self.set_words(step.spindle_speed, step),
                self.tool_back()
            )
        } else if self.job.changes_tools() {
            String::from("The roughing tool in its holder, on centre height. ")
        } else {
            String::new()
        };
        let then = match (clamp.overall, &clamp.centre) {
            (None, Some(_)) => {
                "Stop the spindle; cross slide out, unlock the carriage, move it to the right, clear of the tailstock."
            }
            (None, None) => "Stop the spindle; leave the carriage where it is.",
            (Some(_), Some(_)) => {
                "Unlock the carriage, move it to the right, clear of the tailstock."
            }
            (Some(_), None) => "Leave the carriage where it is.",
        };
        let in_cuts = facing_cuts_words(clamp.facing);
        let under_the_skin = self.face_under_the_skin(clamp.off);
        let text = match clamp.overall {
            None => format!(
                "{change}Face the end. Spindle on; touch the end with the tip, cross slide out beyond the bar, carriage in by {}{in_cuts}, \
                 lock the carriage; {}, from outside to the middle.{under_the_skin} No pip may stay. {then}",
                clamp.facing.people(u),
                self.face_words(step),
            ),
            Some((overall, limits)) => format!(
                "{change}Face the end to length. Spindle on; touch the end at its highest place, cross slide out beyond the bar, \
                 carriage in by L - {}, about {} in all{in_cuts}, lock the carriage; {}, from outside to the middle.\
                 {under_the_skin} No pip may stay. Stop the spindle, cross slide out beyond the bar, the carriage as it is; \
                 measure from the new face to the shoulder beside the jaws ________ (expect {}), and add the length from the other face to that shoulder, as \
                 it was measured: together good from {} to {}; never the other end again, it is finished. {then}",
                overall.people(u),
                clamp.facing.people(u),
                self.face_words(step),
                clamp.to_gripped_shoulder().people(u),
                limits.shortest().people(u),
                limits.longest().people(u),
            ),
        };
        let compound = self.compound_square();
        self.faced(clamp.facing, format!("{compound}{text}"))
    }

    /// What is done to the compound slide before a face: swung later, it would take the tip with it, and the zero of Z.
    pub(super) fn compound_square(&self) -> &'static str {
        match (self.cross.ring(), self.job.zero_at, self.clamp.turned_round) {
            // The first end was zeroed on a measured size, without it; another tool is not.
            (Ring::Fixed, None, false) | (Ring::Fixed, Some(_), true) => SQUARE_TO_THE_BED,
            (Ring::Fixed, Some(_), false) if self.job.changes_tools() => SQUARE_TO_THE_BED,
            _ => "",
        }
    }

    /// What a face says of the skin of the bar: an end that was cut off has none.
    pub(super) fn face_under_the_skin(&self, off: Off) -> String {
        match (self.job.stock.skin(), off) {
            (Some(skin), Off::Whole) => format!(
                " Its first cut goes under the skin, {} at least.",
                skin.people(self.u)
            ),
            _ => String::new(),
        }
    }

    /// The step of a face that takes so much off.
    pub(super) fn faced(&self, facing: WorkLength, text: String) -> Step {
        let (stock, step) = (self.job.stock.diameter(), self.face_step);
        let mut face = Step::new(StepKind::Face, stock, text);
        face.spindle_speed = Some(step.spindle_speed);
        let fed = self.face_fed(step);
        face.feed = Some(fed);
        face.z = Some(Position::computed_trade(0.0));
        let one = speed::facing_time(stock, fed, step.spindle_speed);
        face.time = Duration::computed_trade(one.seconds() * facing_cuts(facing));
        face
    }

    /// The centre hole, which stays in the part or goes with what is sawn off.
    pub(super) fn centre(&self, hole: &CentreHoleChoice, stays: bool) -> Step {
        let (u, step) = (self.u, self.face_step);
        let stock = self.job.stock.diameter();
        let mut drill = Step::new(
            StepKind::CentreDrill,
            stock,
            format!(
                "{} Drill chuck into the tailstock, a centre drill form A{}, pilot {}, in it; bring it up to the face, lock the \
                 tailstock. Spindle on. {}ently at first, {} deep from the face, until the countersink measures {}: it \
                 {}. Stop the spindle. Chips off with a hook.",
                self.set_words(hole.spindle_speed, step),
                match self.is_hard() {
                    true => " of carbide",
                    false => "",
                },
                pilot_words(hole.pilot, u),
                match self.is_dry() {
                    true => "G",
                    false => "Oil, g",
                },
                hole.depth.people(u),
                hole.countersink.people(u),
                match stays {
                    true => "stays in the finished end, if the drawing allows it",
                    false => "goes with what is sawn off when all is turned",
                },
            ),
        )
        .because(
            "the thin pilot breaks first; its speed follows from the countersink, not from the bar",
        );
        drill.spindle_speed = Some(hole.spindle_speed);
        drill
    }

    /// The centre brought up, the bar let out for it.
    fn let_out(&self) -> Step {
        let (clamp, u) = (self.clamp, self.u);
        let (stock, step) = (self.job.stock.diameter(), self.face_step);
        let let_out = if clamp.turned_round {
            String::from("Spindle at rest.")
        } else {
            format!(
                "Spindle at rest. Loosen the jaws, let {} stand out, nip the jaws.",
                WorkLength::computed_trade(clamp.held.overhang.mm()).people(u)
            )
        };
        let tighten = if clamp.turned_round {
            "KEY OUT."
        } else {
            "Now tighten the jaws. KEY OUT."
        };
        Step::new(
            StepKind::Reclamp,
            stock,
            format!(
                "{let_out} The live centre in place of the drill chuck; bring it up, lock tailstock and barrel, barrel \
                 out as little as can be. {tighten} Turn by hand one turn: the centre must turn with the bar. Check that slide and tool reach \
                 the end of the bar without touching the centre or the tailstock. {}",
                self.set_words(step.spindle_speed, step),
            ),
        )
        .because(format!(
            "{}; the bar grows warm and long: feel the centre after each cut, ease it when it gets hot",
            self.addends(false)
        ))
    }

    fn zero_z(&self) -> Step {
        self.zero_z_after(Before::Facing)
    }

    pub(super) fn zero_z_after(&self, what: Before) -> Step {
        let (clamp, u) = (self.clamp, self.u);
        let where_to_zero = match (what, clamp.centre.is_some()) {
            (Before::Facing, false) => "the carriage not moved since the face was cut",
            (Before::Change, false) => "spindle on, touch the finished face lightly with the tip",
            (_, true) => {
                "spindle on, touch the finished face lightly with the tip, beside the centre"
            }
        };
        let set = match self.carriage.ring() {
            Ring::Settable => "turn the ring of the carriage dial to 0.",
            Ring::Fixed => match what {
                Before::Facing => {
                    "read the carriage dial, Z0 = ______ marks, and add Z0 to every mark of the carriage below."
                }
                Before::Change => {
                    "read the carriage dial, Z0 = ______ marks, and add it, in place of the Z0 before, to every mark of the \
                     carriage below."
                }
            },
            Ring::Readout => "set the Z readout to 0.",
        };
        let then = match (clamp.centre.is_some(), what) {
            (true, _) => "",
            (false, Before::Change) => " Cross slide out beyond the bar.",
            (false, Before::Facing) => " Cross slide out beyond the bar, then unlock the carriage.",
        };
        let (into, at) = clamp.never_into();
        let mut step = Step::new(
            StepKind::ZeroZ,
            self.job.stock.diameter(),
            format!(
                "Zero Z: {where_to_zero}; {set}{then} Z is negative {}. Never past Z {}: stop there, whatever happens \
                 ({into} at Z {}).{}",
                clamp.inwards(),
                Position::computed_trade(-round_size(clamp.never_past)).people(u),
                Position::computed_trade(-at).people(u),
                match clamp.parted {
                    Some(_) => " Only the parting tool goes farther, at the end.",
                    None => "",
                },
            ),
        );
        step.reading = Some(self.z_reading(Divisions::ZERO));
        step.z = Some(Position::computed_trade(0.0));
        if clamp.centre.is_some() {
            step.spindle_speed = Some(self.face_step.spindle_speed);
        }
        step
    }
}
