//! The steps after the cuts of one clamping: undercuts, cones, edges, parting off; and the end of all.

use super::clamping::Clamping;
use super::job::Job;
use super::lengths::{Along, KEPT_FROM_LIMITS, shoulder_at};
use super::sheet::{Step, StepKind};
use super::turning::{Turning, read_as, tenth_of_a_mark};
use super::words::{FINISHING_TOOL_BACK, TURNING_TOOL_BACK, Writer, words};
use crate::advice::parting::PARTING_FEED;
use crate::advice::reach::COMPOUND_TRAVEL;
use crate::advice::spindle::{SpindleAsk, SpindleChoice};
use crate::error::Error;
use crate::physics::taper::Taper;
use crate::provenance::{Sourced, Standing};
use crate::quantity::dial::Divisions;
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{
    BladeWidth, CuttingSpeed, DepthOfCut, Diameter, Position, Quantity, SpindleSpeed, WorkLength,
    round_size,
};
use crate::shop::dial::Ring;
use crate::shop::figure::ToolMaterial;
use crate::shop::surface::Undercut;

/// Cutting speed of a grooving or parting tool over that of turning.
pub(super) const GROOVING_SPEED: Sourced<f64> = Sourced::new(
    0.5,
    "common practice, no source: half the speed of turning, with a blade of high-speed steel",
    Standing::CommonPractice,
);

impl Writer<'_> {
    /// Grooves, cones and edges of the surfaces of this clamping.
    pub(super) fn ends(
        &self,
        turnings: &[Turning<'_>],
        last_speed: SpindleSpeed,
        steps: &mut Vec<Step>,
    ) -> Result<(), Error> {
        let mut set = last_speed;
        let mut changed = false;
        // A knife tool that finished the diameters makes their shoulders too.
        let knife = self.finishes_with_a_knife();
        for (at, turning) in turnings.iter().enumerate() {
            if turning.carriage.slanted.is_none() {
                continue;
            }
            let before = at.checked_sub(1).map(|before| &turnings[before]);
            let step = self.square_shoulder(turning, before, !changed && !knife);
            changed = !knife;
            set = step.spindle_speed.unwrap_or(set);
            steps.push(step);
        }
        for turning in turnings {
            if let Some(undercut) = turning.place.surface.undercut() {
                changed = true;
                let step = self.undercut(turning, undercut)?;
                set = step.spindle_speed.unwrap_or(set);
                steps.push(step);
            }
        }
        // Setting the compound slide over moves the tip, so that both zeros are lost: cones come last.
        for turning in turnings {
            if let Some(small) = turning.place.surface.small_diameter() {
                let mut step = self.cone(turning, small)?;
                if changed {
                    let back = match self.job.changes_tools() {
                        true => FINISHING_TOOL_BACK,
                        false => TURNING_TOOL_BACK,
                    };
                    step.text = format!("{back} {}", step.text);
                    changed = false;
                }
                set = step.spindle_speed.unwrap_or(set);
                steps.push(step);
            }
        }
        steps.push(self.edges(turnings, set));
        Ok(())
    }

    /// True where only the tool that roughed has an edge that runs ahead of its tip.
    pub(super) fn finishes_with_a_knife(&self) -> bool {
        self.job.changes_tools() && self.job.tool.cutting_edge_angle().degrees() >= 90.0
    }

    /// The spindle step for a grooving or parting tool at this diameter; on a lathe without so slow a
    /// step, the one at which the end was faced.
    fn grooving_step(&self, diameter: Diameter) -> SpindleChoice {
        self.steel_step(diameter, GROOVING_SPEED.value)
    }

    /// The spindle step at this share of the speed of turning with high-speed steel, of which blades and form tools
    /// mostly are, whatever the turning tool is.
    fn steel_step(&self, diameter: Diameter, share: f64) -> SpindleChoice {
        let wanted = self.common.finishing.wanted;
        let steel = self.job.material.speed_band(ToolMaterial::HighSpeedSteel);
        let turning = steel.map_or(wanted, |band| band.value.middle().min(wanted));
        let speed = CuttingSpeed::computed_trade(turning.trade() * share);
        SpindleAsk::new(&self.job.lathe, diameter, speed)
            .with_holding(&self.clamp.holding)
            .choose()
            .unwrap_or_else(|_| self.face_step.clone())
    }

    /// What a tool whose edge runs ahead of its tip left of a shoulder, taken by a knife tool.
    fn square_shoulder(
        &self,
        turning: &Turning<'_>,
        before: Option<&Turning<'_>>,
        change: bool,
    ) -> Step {
        let u = self.u;
        let (at, finished) = (turning.place.shoulder, turning.place.surface.diameter());
        let there = self.along_words(at);
        let slow = &turning.finish_step;
        let begin = words(|f| match (change, self.carriage.ring()) {
            (false, _) => Ok(()),
            (true, ring) => write!(
                f,
                " Change to the knife tool, on centre height, its edge square to the bar: both zeros are lost. Spindle on: touch \
                 the finished face lightly with its tip{}, {}; stop the spindle.",
                match self.clamp.centre {
                    Some(_) => ", beside the centre",
                    None => "",
                },
                match ring {
                    Ring::Settable => "turn the ring of the carriage dial to 0",
                    Ring::Fixed =>
                        "note what the carriage dial reads, and add it to the marks of the carriage in place of Z0",
                    Ring::Readout => "set the Z readout to 0",
                },
            ),
        });
        let [shortest, longest] = turning.lengths_from_the_face();
        let ended = words(|f| {
            let Some(before) = before else {
                return Ok(());
            };
            let limits = before.place.length_limits;
            write!(
                f,
                " Length of {}, from its shoulder to this one ________: good from {} to {}.",
                before.place.surface.diameter().people(u),
                limits.shortest().people(u),
                limits.longest().people(u),
            )
        });
        let mut step = Step::new(
            StepKind::Shoulder,
            finished,
            format!(
                "Square the shoulder of {}. {}{begin} Spindle on: come in until the tip just touches the finished diameter \
                 beside the shoulder, then by hand to {there}, and face the shoulder outwards with the cross slide until the \
                 tip is clear of the bar; in light cuts. Stop the spindle. Length from the face to the shoulder ________: good \
                 from {} to {}; shorter: farther in by what is missing.{ended}",
                finished.people(u),
                self.set_words(slow.spindle_speed, slow),
                shortest.people(u),
                longest.people(u),
            ),
        )
        .because(match self.job.changes_tools() {
            false => "the edge of the turning tool runs ahead of its tip: it leaves a slanted shoulder",
            true => "an edge below 90 deg runs ahead of its tip: it leaves a slanted shoulder",
        });
        step.surface = Some(turning.place.at);
        step.tenths = (at.tenths > 0).then_some(at.tenths);
        step.reading = Some(self.z_reading(at.mark));
        step.z = Some(Position::computed_trade(-at.travel(self.carriage)));
        step.spindle_speed = Some(slow.spindle_speed);
        step
    }

    fn undercut(&self, turning: &Turning<'_>, groove: Undercut) -> Result<Step, Error> {
        let u = self.u;
        let finished = turning.diameter_at(self.cross, turning.datum.last.count())?;
        let bottom =
            Diameter::computed_trade(round_size(finished.mm() - 2.0 * groove.depth().mm()));
        let feed_in = self.fed_in(finished, bottom);
        let shoulder = turning.place.shoulder.travel(self.carriage);
        let slow = self.grooving_step(finished);
        let mut step = Step::new(
            StepKind::Undercut,
            bottom,
            format!(
                "Undercut at the shoulder of {}. {} Change to the grooving tool{}, {} wide, square to the bar, on centre \
                 height: both zeros are lost, its corner is elsewhere. By eye and hand its left corner to the shoulder, \
                 {} from the face, lock the carriage. Spindle on. Touch the finished diameter lightly, {feed_in}{}. \
                 Withdraw, stop the spindle.",
                finished.people(u),
                self.set_words(slow.spindle_speed, &slow),
                match self.is_hard() {
                    true => ", of carbide",
                    false => "",
                },
                groove.width().people(u),
                WorkLength::computed_trade(shoulder).people(u),
                match self.is_dry() {
                    true => "",
                    false => "; oil",
                }
            ),
        )
        .because(
            "a mating part or a grinding wheel must reach the shoulder; a grooving tool runs at about half the speed of turning with high-speed steel",
        );
        step.surface = Some(turning.place.at);
        step.spindle_speed = Some(slow.spindle_speed);
        step.z = Some(Position::computed_trade(-shoulder));
        Ok(step)
    }

    /// How far a tool with other zeros is to be fed in by hand that touches one diameter, to a smaller one.
    fn fed_in(&self, from: Diameter, to: Diameter) -> String {
        let marks = (from.mm() - to.mm()) / self.cross.diameter_per_division().mm();
        let (far, people) = (self.farther(marks, false), to.people(self.u));
        match self.cross.ring() {
            Ring::Settable => format!("ring to 0; by hand {far} in, to {people}"),
            Ring::Fixed => {
                format!("note what the dial reads; by hand {far} in from there, to {people}")
            }
            Ring::Readout => format!(
                "set the readout to {}; by hand in until it shows {}",
                self.shown(from),
                self.shown(to)
            ),
        }
    }

    fn cone(&self, turning: &Turning<'_>, small: Diameter) -> Result<Step, Error> {
        let u = self.u;
        let large = turning.diameter_at(self.cross, turning.datum.last.count())?;
        let length = turning.place.surface.length();
        let cone = Taper::between(large, small, length)?;
        let half = cone.half_angle();
        let metal = DepthOfCut::computed_trade(round_size(0.5 * (large.mm() - small.mm())));
        let cuts = (metal.mm() / turning.cone_most.mm()).ceil().max(1.0);
        let each = DepthOfCut::computed_trade(metal.mm() / cuts);
        let slant = cone.slide_travel(length);
        let cuts_of = words(|f| {
            match cuts > 1.0 {
                true => write!(f, "{cuts:.0} cuts")?,
                false => f.write_str("one cut, or two lighter ones,")?,
            }
            write!(f, " of {} depth", each.people(u))?;
            match self.cross.ring() {
                Ring::Readout => Ok(()),
                Ring::Settable | Ring::Fixed => write!(
                    f,
                    " ({} marks of the cross dial)",
                    tenth_of_a_mark(2.0 * each.mm() / self.cross.diameter_per_division().mm())
                ),
            }
        });
        let before_the_last = words(|f| match cuts > 1.0 {
            true => write!(
                f,
                "{} at the free end before the last cut, ",
                Diameter::computed_trade(round_size(small.mm() + 2.0 * each.mm())).people(u)
            ),
            false => Ok(()),
        });
        let by_its_dial = words(|f| match self.job.lathe.compound() {
            Some(compound) => {
                let marks = slant.mm() / compound.division().mm();
                let turn = f64::from(compound.divisions_per_turn().count());
                write!(
                    f,
                    " ({:.0} turns + {} marks of its dial)",
                    (marks / turn).floor(),
                    tenth_of_a_mark(marks % turn)
                )
            }
            None => Ok(()),
        });
        let mut text = format!(
            "Cone from {} at its shoulder to {} at its free end. {} Set the compound slide over by {} deg from the axis, so \
             that it runs out towards the shoulder; prove the angle with an indicator; the tool, which went with it, straight to \
             the bar again. By hand, the tip clear of the bar: \
             carriage so that the compound slide, coming from the free end, has the tip at the shoulder after {}{by_its_dial}; \
             mark that place of its handle, and lock the carriage. Spindle on. Touch the free edge, then feed by the compound \
             handle to that place and no farther, in {cuts_of}; expect {before_the_last}{} after it.",
            large.people(u),
            small.people(u),
            self.set_words(turning.finish_step.spindle_speed, &turning.finish_step),
            fixed(half.degrees(), 2),
            slant.people(u),
            small.people(u),
        );
        if slant.mm() > COMPOUND_TRAVEL.value.mm() {
            text.push_str(&format!(
                " The compound slide has to travel {}: see that yours does; else a taper attachment, or the tailstock set \
                 over between centres.",
                slant.people(u)
            ));
        }
        text.push_str(match (self.cross.ring(), self.job.zero_at) {
            // The bar is touched with it once more at the other end.
            (Ring::Fixed, zero_at) if zero_at.is_none() || self.job.changes_tools() => {
                " Stop the spindle, compound slide square to the bed again, so that it moves across, and the tool straight to the \
                 bar. Both zeros are lost when it is turned."
            }
            _ => {
                " Stop the spindle, compound slide back to its place, and the tool straight to the bar. Both zeros are lost when \
                 it is turned."
            }
        });
        let mut step = Step::new(StepKind::Taper, small, text).because(format!(
            "tan of the half angle is ({} - {}) / 2 / {}",
            large.people(u),
            small.people(u),
            length.people(u)
        ));
        step.surface = Some(turning.place.at);
        step.spindle_speed = Some(turning.finish_step.spindle_speed);
        Ok(step)
    }

    fn edges(&self, turnings: &[Turning<'_>], set: SpindleSpeed) -> Step {
        let u = self.u;
        let chamfers: Vec<String> = turnings
            .iter()
            .filter_map(|turning| {
                let surface = turning.place.surface;
                let leg = surface.chamfer()?;
                // Of a cone, its free end is what there is to chamfer.
                let edge = surface.small_diameter().unwrap_or(surface.diameter());
                let marks = words(|f| match self.carriage.ring() {
                    Ring::Readout => Ok(()),
                    Ring::Settable | Ring::Fixed => write!(
                        f,
                        " ({} marks of the carriage)",
                        tenth_of_a_mark(leg.mm() / self.carriage.division().mm())
                    ),
                });
                Some(format!(
                    "{} x 45 deg on {}{marks}",
                    leg.people(u),
                    edge.people(u)
                ))
            })
            .collect();
        let what = match chamfers.as_slice() {
            [] => format!(
                "break the outer {} by about {}",
                if turnings.len() > 1 { "edges" } else { "edge" },
                match u {
                    Units::Metric => "half a millimetre",
                    Units::Inch => "0.02 in",
                }
            ),
            some => format!(
                "chamfer {}, counted along the bar from where the edge is touched; break the other edges",
                some.join(", ")
            ),
        };
        let diameter = turnings
            .last()
            .map_or(self.job.stock.diameter(), |t| t.place.surface.diameter());
        // The largest of the edges passes the tool fastest.
        let largest = turnings
            .first()
            .map_or(self.job.stock.diameter(), |t| t.place.surface.diameter());
        let step = self.steel_step(largest, 1.0);
        let speed = step.spindle_speed.min(set);
        let change = match speed == set {
            true => String::from("Spindle at rest: change"),
            false => format!("{} Change", self.set_words(speed, &step)),
        };
        let steel = match (self.is_hard(), self.job.tool.material()) {
            (true, _) => ", of carbide",
            (false, Some(ToolMaterial::HighSpeedSteel)) => "",
            (false, _) => ", of high-speed steel at this speed",
        };
        let mut edges = Step::new(
            StepKind::Edges,
            diameter,
            format!(
                "{change} to the chamfer tool{steel}; the zero of the cross dial is lost from here on. Spindle on, {what}, so \
                 that nobody is cut. Stop the spindle.",
            ),
        );
        edges.spindle_speed = Some(speed);
        edges
    }

    /// Parting off, where it is asked for.
    pub(super) fn part_off(&self, steps: &mut Vec<Step>) -> Result<(), Error> {
        let (clamp, u) = (self.clamp, self.u);
        let stock = self.job.stock.diameter();
        let Some((length, blade)) = parted_at(self.job, clamp) else {
            return Ok(());
        };
        let slow = self.grooving_step(stock);
        let [slowest, fastest] = PARTING_FEED.value;
        // The side of the blade that touches the face is the one nearer the chuck.
        let at = self.parted_along(length, blade)?;
        let along = WorkLength::computed_trade(at.travel(self.carriage));
        let left = WorkLength::computed_trade(round_size(along.mm() - blade.mm()));
        let there = words(|f| match self.carriage.ring() {
            Ring::Settable => write!(
                f,
                "ring of the carriage dial to 0; cross slide out, carriage to {}",
                self.along_words(at)
            ),
            Ring::Fixed => write!(
                f,
                "note what the carriage dial reads; cross slide out, carriage {} on towards the chuck ({} counted from there)",
                along.people(u),
                read_as(&self.z_reading(at.mark), at.tenths)
            ),
            Ring::Readout => write!(
                f,
                "set the Z readout to 0; cross slide out, carriage to {}",
                self.along_words(at)
            ),
        });
        let collar = self.collar(left.mm());
        let collar = words(|f| match collar {
            Some(thick) => write!(
                f,
                " A collar of the bar, {} thick, stays at the parted end, its edge sharp: take it off with a file, or face it off.",
                thick.people(u)
            ),
            None => Ok(()),
        });
        let length_told = match self.job.part.overall_length().is_some() {
            true => "",
            false => {
                " Length of the part ________; what is over is faced off in a clamping of its own."
            }
        };
        let (what, centre, beside) = match (clamp.core, &clamp.centre) {
            (None, Some(_)) => ("", "Centre withdrawn. ", ""),
            (Some(_), Some(_)) => (
                " but for a core",
                "The centre stays in. ",
                ", beside the centre",
            ),
            (None, None) => ("", "", ""),
            (Some(_), None) => (" but for a core", "", ""),
        };
        let oil = match self.is_dry() {
            true => "",
            false => "oil; ",
        };
        let fed = format!(
            "{oil}feed steadily by hand, {} to {}",
            slowest.people(u),
            fastest.people(u)
        );
        let off = words(|f| match clamp.core {
            None => {
                write!(
                    f,
                    "; {fed}. Nobody catches the part: let it fall into a tray. Stop the spindle."
                )?;
                match length_told {
                    "" => Ok(()),
                    _ => f.write_str(" Pip and burr off the cold part with a file."),
                }
            }
            Some(core) => write!(
                f,
                ". Touch the bar with its edge, {} and no deeper; {fed}. So long a part would sag on a thin neck, climb on the \
                 blade or be thrown: that core is sawn. Withdraw, stop the spindle{}. Bar out of the chuck with the part on it: \
                 saw it through in the vice, file the stub flat, burrs off.",
                self.fed_in(stock, core),
                match clamp.centre {
                    Some(_) => ", centre back",
                    None => "",
                },
            ),
        });
        let mut part = Step::new(
            StepKind::PartOff,
            stock,
            format!(
                "Part off{what}. {} {centre}Parting tool {} wide, measured, {}, square, on centre height, \
                 no farther out than it must. Spindle on: touch the finished face lightly with its left side{beside}, {there}, \
                 which leaves {} of part. Lock the carriage{off}{collar}{length_told}",
                self.set_words(slow.spindle_speed, &slow),
                blade.people(u),
                match self.is_hard() {
                    true => "of carbide for hardened steel",
                    false => "of high-speed steel at this speed",
                },
                left.people(u),
            ),
        );
        part.spindle_speed = Some(slow.spindle_speed);
        steps.push(part);
        Ok(())
    }

    /// How thick a disc of the bar stays on the part beyond its last shoulder, where that is to be its end.
    fn collar(&self, left: f64) -> Option<WorkLength> {
        if self.job.part.overall_length().is_some() {
            return None;
        }
        let shoulder = self.clamp.places.last()?.shoulder;
        let thick = round_size(left - shoulder.travel(self.carriage));
        (thick > 0.0).then(|| WorkLength::computed_trade(thick))
    }

    /// Where the side of the blade nearer the chuck goes: as `parted_on_marks` has it, but level with the last
    /// shoulder or a little before it where a disc of the bar would stay and the limits of the length allow it.
    fn parted_along(&self, length: WorkLength, blade: BladeWidth) -> Result<Along, Error> {
        let on_marks = self.parted_on_marks(length, blade)?;
        let left = round_size(on_marks.travel(self.carriage) - blade.mm());
        let (Some(_), Some(place)) = (self.collar(left), self.clamp.places.last()) else {
            return Ok(on_marks);
        };
        let level = place.shoulder.travel(self.carriage) + blade.mm();
        // A readout has nothing between its steps.
        let parts = match self.carriage.ring() {
            Ring::Readout => 1.0,
            Ring::Settable | Ring::Fixed => 2.0,
        };
        let halves = (parts * self.carriage.divisions_of_travel(round_size(level)) + 1e-6).floor();
        let at = Along {
            mark: Divisions::from_rounded((halves / parts).floor())?,
            tenths: match halves % parts > 0.0 {
                true => 5,
                false => 0,
            },
        };
        let limits = place.length_limits;
        let (shortest, longest) = (limits.shortest().mm(), limits.longest().mm());
        let end = round_size(at.travel(self.carriage) - blade.mm() - place.outer_turned);
        let inside = round_size((end - shortest).min(longest - end));
        Ok(
            match inside >= round_size(KEPT_FROM_LIMITS * (longest - shortest)) {
                true => at,
                false => on_marks,
            },
        )
    }

    /// Within the limits of the part's length where it is one diameter long, else to the next mark farther on, for a
    /// part too short cannot be mended.
    fn parted_on_marks(&self, length: WorkLength, blade: BladeWidth) -> Result<Along, Error> {
        let along = WorkLength::computed_trade(round_size(length.mm() + blade.mm()));
        if let ([place], None) = (self.clamp.places.as_slice(), self.job.part.overall_length()) {
            let limits = place.length_limits;
            let within = shoulder_at(along, blade.mm(), self.carriage, limits, "part.length");
            if let Ok(at) = within {
                return Ok(at);
            }
        }
        let marks = round_size(self.carriage.divisions_of_travel(along.mm())).ceil();
        Ok(Along {
            mark: Divisions::from_rounded(marks)?,
            tenths: 0,
        })
    }

    /// Leaving the machine clear.
    pub(super) fn leave(&self) -> Step {
        let clamp = self.clamp;
        if let Some(driven) = &clamp.driven {
            return self.leave_the_centres(driven);
        }
        Step::new(
            StepKind::Clear,
            self.job.stock.diameter(),
            format!(
                "Spindle at rest, {}{} out, chips off with hook and brush, never by hand. Key out of the chuck. Leave \
                 the machine clean.",
                match clamp.centre {
                    Some(_) => "centre back, ",
                    None => "",
                },
                match clamp.parted {
                    Some(_) => "what is left of the bar",
                    None => "part",
                }
            ),
        )
    }
}

/// How far from the finished face the part is parted off, and by how wide a blade; none where it is not, in
/// this clamping.
pub(super) fn parted_at(job: &Job, clamp: &Clamping<'_>) -> Option<(WorkLength, BladeWidth)> {
    Some((clamp.parted?, job.preference(|p| p.parting())?))
}
