//! The steps before any cut along a bar between two centres: both ends faced and drilled in the chuck, the chuck off,
//! the bar between the centres; and what is done with it at the end of all.

use super::clamping::{Grip, Off};
use super::dog::Driven;
use super::set_up::{NOTHING_BEHIND, facing_cuts_words};
use super::sheet::{Step, StepKind};
use super::words::{Writer, words};
use crate::quantity::text::fixed;
use crate::quantity::{Diameter, Quantity, WorkLength, round_size};

/// What is said of every centre hole in which a dog's bar turns.
const CENTRE_UP: &str = "bring the live centre up, no play and no more than a light push, barrel out as little as can be, lock \
     tailstock and barrel";

/// What is proved before every start with a dog.
const BY_HAND: &str = "Guard over dog and driver plate. Turn by hand one whole turn: the live centre turns with the bar; dog, \
     tail and screw clear of bed, slides and tool";

impl Writer<'_> {
    /// Everything before the zero of the carriage.
    pub(super) fn between_centres(&self, driven: &Driven, steps: &mut Vec<Step>) {
        let length = match self.clamp.grip {
            Grip::Stock { length } => length,
            Grip::Turned {
                nominal, length, ..
            } => {
                steps.push(self.end_for_end(driven, nominal, length));
                return;
            }
        };
        steps.push(self.clamp_stock(length));
        steps.push(self.first_start());
        steps.push(self.face());
        let hole = self.clamp.centre.as_ref();
        steps.extend(hole.map(|hole| self.centre(hole, true)));
        steps.push(self.other_end_out(driven));
        steps.push(self.other_face(driven));
        steps.push(self.centre(&driven.hole, driven.overall.is_some()));
        steps.push(self.centres_in(driven));
        steps.push(self.dog_on(length));
        steps.push(self.in_line());
    }

    /// From face to face, as it is between the centres.
    fn between(&self) -> WorkLength {
        WorkLength::computed_trade(self.clamp.held.overhang.mm())
    }

    fn other_end_out(&self, driven: &Driven) -> Step {
        let (u, step) = (self.u, self.face_step);
        let out = words(|f| {
            match driven.off {
                Off::Sawn(length) => write!(
                    f,
                    "Bar out, saw it to {} from its finished face, burr off",
                    length.people(u)
                )?,
                Off::Whole | Off::Parted => f.write_str("Bar out, burr off")?,
            }
            match driven.overall {
                Some(_) => f.write_str(
                    ": measure its length L over all, at the highest place of the end still to face, ________; the other \
                     end out",
                ),
                None => f.write_str("; the other end out"),
            }
        });
        let mut clamp = Step::new(
            StepKind::Clamp,
            self.job.stock.diameter(),
            format!(
                "Spindle at rest, tailstock back. {out}: grip the bar again with only {} standing out, without soft sheet, for it \
                 is bar as it comes.{NOTHING_BEHIND} Tighten the jaws. KEY OUT of the chuck. Turn by hand one whole turn: \
                 nothing touches. {}",
                self.short_end().people(u),
                self.set_words(step.spindle_speed, step),
            ),
        )
        .because("how truly the jaws hold it does not matter yet: it is turned on its two centre holes");
        self.true_bar(&mut clamp);
        clamp
    }

    fn other_face(&self, driven: &Driven) -> Step {
        let u = self.u;
        let takes = words(|f| match driven.overall {
            Some((overall, _)) => write!(
                f,
                "Face the other end to length. Spindle on; touch the end at its highest place, cross slide out beyond the bar, \
                 carriage in by L - {}, about {} in all",
                overall.people(u),
                driven.facing.people(u),
            ),
            None => write!(
                f,
                "Face the other end, no more than to clean it. Spindle on; touch the end with the tip, cross slide out beyond \
                 the bar, carriage in by {}",
                driven.facing.people(u),
            ),
        });
        self.faced(
            driven.facing,
            format!(
                "{takes}{}, lock the carriage; {}, from outside to the middle.{} No pip may stay. Stop the spindle; cross slide \
                 out, unlock the carriage, move it to the right, clear of the tailstock.",
                facing_cuts_words(driven.facing),
                self.face_words(self.face_step),
                self.face_under_the_skin(driven.off),
            ),
        )
    }

    fn centres_in(&self, driven: &Driven) -> Step {
        let u = self.u;
        let measured = words(|f| match driven.overall {
            Some((_, limits)) => write!(
                f,
                "Length over all ________: good from {} to {}; longer: back into the chuck, face by what is over, drill as \
                 deep again; shorter: stop, this bar is too short.",
                limits.shortest().people(u),
                limits.longest().people(u),
            ),
            None => write!(
                f,
                "Length over all ________ (expect about {}).",
                self.between().people(u)
            ),
        });
        Step::new(
            StepKind::Reclamp,
            self.job.stock.diameter(),
            format!(
                "Spindle at rest, tailstock back, bar out of the chuck, burrs off. {measured} Main switch off. Chuck off the \
                 spindle as the manual of the machine has it, a board on the bed below, two people or a hoist for a heavy one. \
                 Nose, taper, sleeve and centre wiped clean, no chip and no burr on them; the centre into the spindle, the \
                 driver plate on and locked. An indicator against the cone of that centre, the spindle turned by hand: it \
                 runs out by {} at the most; more: out, wiped and in again. The live centre into the tailstock.",
                driven.runs_out.people(u),
            ),
        )
        .because("the bar turns about the line between its two centres: what the one in the spindle runs out by, that end does too")
    }

    fn dog_on(&self, under: WorkLength) -> Step {
        let (clamp, u, step) = (self.clamp, self.u, self.face_step);
        let reach = clamp.places.first().map_or(0.0, |place| place.reach.mm());
        let (into, at) = clamp.never_into();
        Step::new(
            StepKind::Reclamp,
            self.job.stock.diameter(),
            format!(
                "Both centre holes wiped clean. The dog over the end that was faced last, {} of the bar as it comes under it, \
                 level with the end; its screw tight, and no longer than it has to be. The bar between the centres, {} from \
                 face to face, the tail of the dog free in the slot of the driver plate, not down on its ground; {CENTRE_UP}. \
                 A dead centre in place of the live one wants oil in its hole, before the start and all the time, and a low \
                 speed. {BY_HAND}, the carriage in by {} from the free end. Check that slide and tool reach that end without \
                 touching the centre or the tailstock. Main switch on. {}",
                under.people(u),
                self.between().people(u),
                WorkLength::computed_trade(round_size(clamp.never_past)).people(u),
                self.set_words(step.spindle_speed, step),
            ),
        )
        .because(format!(
            "{} for the part, {} for the tool holder before the {into}, {} under it; length over diameter {}; the bar grows warm \
             and long: feel the centre after each cut, ease it when it gets hot",
            WorkLength::computed_trade(reach).people(u),
            WorkLength::computed_trade(round_size(at - reach)).people(u),
            under.people(u),
            fixed(clamp.support.length_over_diameter.value(), 1),
        ))
    }

    fn in_line(&self) -> Step {
        Step::new(
            StepKind::Reclamp,
            self.job.stock.diameter(),
            format!(
                "Prove that the tailstock is in line before anything comes to size: a test bar between the centres, the spindle at \
                 rest, an indicator on the cross slide moved along its side. Without a test bar the first cut is the trial: \
                 measure it at both its ends. Where it is larger at the tailstock by D, the two places A apart, move the \
                 tailstock towards the tool by D x {} / (2 A); smaller: away from it; then touch anew, cut and measure again. \
                 Both sizes handed in, each with its place from the headstock, the answer after a measurement reckons it.",
                self.between().people(self.u)
            ),
        )
        .because("between centres a tailstock out of line turns a straight taper all along the bar")
    }

    fn end_for_end(&self, driven: &Driven, finished: Diameter, under: WorkLength) -> Step {
        let (u, step) = (self.u, self.face_step);
        let behind = words(|f| match driven.behind > 0.0 {
            true => write!(
                f,
                ", {} of the part behind it",
                WorkLength::computed_trade(driven.behind).people(u)
            ),
            false => f.write_str(", level with the end"),
        });
        Step::new(
            StepKind::TurnRound,
            finished,
            format!(
                "Spindle at rest. Centre back, part out, dog off, burrs off, both centre holes wiped clean. Turn it end for end: \
                 the dog over its finished {}, {} of it under the dog{behind}, soft sheet (copper, aluminium) between, above all \
                 under the screw; the screw tight. Between the same two centres, the one in the spindle not touched, {} from face \
                 to face, the tail of the dog free in the slot of the driver plate; {CENTRE_UP}. {BY_HAND}, the carriage in \
                 by {} from the free end. {}{} {}",
                finished.people(u),
                under.people(u),
                self.between().people(u),
                WorkLength::computed_trade(round_size(self.clamp.never_past)).people(u),
                self.compound_square(),
                self.set_words(step.spindle_speed, step),
                self.tool_back(),
            ),
        )
        .because(
            "both ends are turned on the same two centre holes, so they come out on one axis, as truly as the centres run and the \
             holes are clean; jaws never put a part back so",
        )
    }

    /// Leaving the machine clear, and what is left of the bar.
    pub(super) fn leave_the_centres(&self, driven: &Driven) -> Step {
        let (clamp, u) = (self.clamp, self.u);
        let left = clamp.places.first().map_or(0.0, |place| {
            round_size(self.between().mm() - place.shoulder.travel(self.carriage))
        });
        let rest = words(|f| match (driven.overall, clamp.turned_round) {
            (None, _) => write!(
                f,
                " What stays of the bar beyond the last shoulder, {} with the centre hole in it, is sawn off in the vice, the part \
                 in soft sheet; its sawn end is faced in a clamping of its own.",
                WorkLength::computed_trade(left).people(u)
            ),
            (Some(_), false) => f.write_str(
                " Break the edge of the end that was under the dog with a file, in the vice.",
            ),
            (Some(_), true) => Ok(()),
        });
        Step::new(
            StepKind::Clear,
            self.job.stock.diameter(),
            format!(
                "Spindle at rest, centre back, part out, dog off, chips off with hook and brush, never by hand.{rest} Driver plate \
                 and centre out of the spindle before a chuck goes on again. Leave the machine clean."
            ),
        )
    }
}
