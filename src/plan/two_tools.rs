//! The words where one tool roughs and another one finishes: the size that is roughed to, the change, the new zero.

use super::cuts::SAME_AGAIN;
use super::set_up::Before;
use super::sheet::{Step, StepKind};
use super::take::nearly_uncut;
use super::turning::{plain, read_as};
use super::words::{CutsOf, SurfaceWriter, Writer, add, ring_mark, words};
use crate::advice::spindle::SpindleChoice;
use crate::error::Error;
use crate::quantity::{Diameter, Quantity, SpindleSpeed, round_size};
use crate::shop::dial::{DialReads, Ring};

impl Writer<'_> {
    /// The tool that finishes in place of the one that roughs, and the zero of the carriage for it.
    pub(super) fn change_tools(&self, next: &SpindleChoice, set: SpindleSpeed) -> Step {
        let mut step = self.zero_z_after(Before::Change);
        let speed = words(|f| match next.spindle_speed == set {
            true => f.write_str("Spindle at rest, cross slide out"),
            false => {
                let told = self.set_words(next.spindle_speed, next);
                write!(f, "{told} Cross slide out")
            }
        });
        step.spindle_speed = Some(next.spindle_speed);
        step.text = format!(
            "{speed}, carriage to the right. Change to the finishing tool, on centre height, short in its \
             holder: it stands elsewhere, and no zero holds for it. {} Where the corner of the roughing tool is larger, metal is left beside the shoulders: by \
             hand, slowly, there.",
            step.text
        );
        step
    }
}

impl SurfaceWriter<'_> {
    /// The zero of the tool that roughs, at a surface after the first: nothing has moved it, but the ring may be set
    /// for other marks.
    pub(super) fn zero_kept(&self) -> Result<Step, Error> {
        let setup = self.setup;
        let before = &setup.before;
        let mut step = match self.ring_is_kept() {
            true => self.step(
                StepKind::ZeroX,
                before.start,
                format!(
                    "Zero X is kept for the next diameter: carriage to the right, clear of the bar; {} stays as it is.",
                    match self.cross.ring() {
                        Ring::Readout => "the readout",
                        Ring::Settable => "the ring",
                        Ring::Fixed => "the shift S found last",
                    }
                ),
            ),
            false => {
                let (reading, tenths) = before.reading(self.cross)?;
                // The spring that is new in the zero does not move the tip.
                let zero = setup.datum.zero.mm() - setup.datum.correction.mm();
                let zero = Diameter::computed_trade(round_size(zero));
                let mark = self.cross.divisions_between(zero, before.start);
                let mut step = self.step(
                    StepKind::ZeroX,
                    before.start,
                    format!(
                        "Zero X for the next diameter: carriage to the right, clear of the bar; come in to the mark of the last cut \
                         that was made, by the sheet {}, hold the handle, and turn the ring only, to {} marks{}.",
                        read_as(&reading, tenths),
                        self.on_the_ring(mark),
                        self.counted_as(mark)
                    ),
                );
                step.reading = Some(reading);
                step.tenths = (tenths > 0).then_some(tenths);
                step.ring_to = Some(ring_mark(self.cross, mark));
                step
            }
        };
        if setup.rough_step.spindle_speed != self.speed_before {
            let set = self.set_words(setup.rough_step.spindle_speed, &setup.rough_step);
            add(&mut step.text, format_args!(" {set}"));
        }
        step.text.push_str(&self.set_the_stop());
        Ok(step)
    }

    /// The zero of the tool that finishes: it touches where the roughed size was measured.
    pub(super) fn zero_on_the_roughed(&self, roughed_at: usize) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let at = self.range().start;
        let size = setup.size_before(at, self.cross)?;
        let name = format!("M{roughed_at}");
        // It touches without a cut: no spring is in where its tip stands.
        let spring = setup.leaves_spring();
        let zero = Diameter::computed_trade(round_size(setup.datum.zero.mm() - spring.mm()));
        let mark = self.cross.divisions_between(zero, size);
        let known = setup.done.as_ref().is_some_and(|done| done.cuts == at);
        let to = words(|f| match known {
            true => write!(f, "{}", self.on_the_ring(mark)),
            false => write!(
                f,
                "({} - {name}) / {} marks{}: {} where {name} is {}",
                plain(zero, u),
                self.mark_size(),
                self.turns_left_out(mark.ceil() as i64),
                self.on_the_ring(mark),
                size.people(u)
            ),
        });
        let touched = words(|f| match known {
            true => write!(f, "the roughed diameter that measured {}", size.people(u)),
            false => write!(f, "the roughed diameter, where it measured {name}"),
        });
        let text = match self.cross.ring() {
            Ring::Readout => format!(
                "Zero X with the finishing tool: spindle on, come in until the tip just touches {touched}; set the X readout to \
                 {}{}. Carriage to the right, clear of the face.",
                match known {
                    true => self.nearest_shown(size),
                    false => self.set_to(&name),
                },
                words(|f| match spring.mm() > 0.0 {
                    true => write!(
                        f,
                        " and {} more, by which the bar will spring",
                        spring.people(u)
                    ),
                    false => Ok(()),
                })
            ),
            Ring::Settable => format!(
                "Zero X with the finishing tool: spindle on, come in until the tip just touches {touched}; hold the handle, and \
                 turn the ring only, to {to}{}. Carriage to the right, clear of the face.",
                self.counted_as(mark)
            ),
            Ring::Fixed => format!(
                "Zero X with the finishing tool: cross slide in until its dial reads {to}{}, by eye between marks, the tip still \
                 clear of the bar. Spindle on; bring the tip to the bar with the compound slide, which moves across, until it just \
                 touches {touched}; lock the compound slide. Then carriage to the right, clear of the face. No shift found before \
                 holds for this tool.",
                self.counted_as(mark)
            ),
        };
        let mut step = self
            .step(StepKind::ZeroX, size, text)
            .because("another tip stands elsewhere; a touch is only roughly right, a measurement between the last two cuts sets it right");
        if self.cross.ring() == Ring::Settable {
            step.ring_to = Some(ring_mark(self.cross, mark));
        }
        if setup
            .chance
            .stops
            .chosen
            .after
            .iter()
            .all(|stop| *stop < at)
        {
            step.because = Some(String::from(
                "another tip stands elsewhere; a touch is only roughly right, but near enough for this zone",
            ));
        }
        step.spindle_speed = Some(setup.finish_step.spindle_speed);
        if setup.finish_step.spindle_speed != self.speed_before {
            let set = self.set_words(setup.finish_step.spindle_speed, &setup.finish_step);
            step.text = format!("{set} {}", step.text);
        }
        step.text.push_str(&self.set_the_stop());
        Ok(step)
    }

    /// Where the dial stands before the first of these cuts, and the size there.
    pub(super) fn begins(&self) -> Result<(Diameter, f64), Error> {
        let setup = self.setup;
        let start = setup.datum.start + f64::from(setup.datum.between) / 10.0;
        match self.part {
            CutsOf::OneTool | CutsOf::Roughing => Ok((setup.before.start, start)),
            CutsOf::Finishing { .. } => {
                let size = setup.size_before(self.range().start, self.cross)?;
                let zero = setup.reads_zero_at(self.cross).mm() - setup.leaves_spring().mm();
                let zero = Diameter::computed_trade(round_size(zero));
                Ok((size, self.cross.divisions_between(zero, size)))
            }
        }
    }

    /// The measurement before the tool is changed: the other one is zeroed on this size, so the ring is left alone.
    pub(super) fn measure_roughed(&self, name: &str, place: usize) -> Result<Step, Error> {
        let (setup, u) = (self.setup, self.u);
        let cut = setup.cuts[place];
        let expected = setup.diameter_at(self.cross, cut.mark)?;
        let untouched = nearly_uncut(setup.uncut_at(place, self.common)?, expected);
        let other_dial = setup.size_of_other_dial(place, self.cross)?;
        let other = match self.cross.reads() {
            DialReads::Diameter => "radius",
            _ => "diameter",
        };
        let wrong = words(|f| match other_dial {
            Some(size) => write!(
                f,
                " Near {}: {} the {other} after all. Stop and prove it.",
                size.people(u),
                match self.reads_out() {
                    true => "the readout shows",
                    false => "the dial counts",
                }
            ),
            None => Ok(()),
        });
        let again = words(|f| match setup.size_before_repeat(place) {
            Some(size) => write!(
                f,
                "Near {} again: the zero is off, not the cut; go on.",
                size.people(u)
            ),
            None => write!(
                f,
                "From {} on nothing was cut: touch what was there, take this cut again, and measure anew{SAME_AGAIN}.",
                untouched.people(u)
            ),
        });
        let first = setup.diameter_at(self.cross, setup.mark_of(place + 2))?;
        let leave_out =
            Diameter::computed_trade(round_size(first.mm() + 2.0 * setup.place.correcting.mm()));
        let last = setup.diameter_at(self.cross, setup.datum.last.count())?;
        let mut step = self
            .step(
                StepKind::Measure,
                expected,
                format!(
                    "{} Measure {name} near the free end of what was cut ________ (expect {}): there the finishing tool will \
                     be zeroed on it, the {} stays. {again}{wrong} Below {}: leave out the first finishing cut of this diameter. Below {}: stop \
                     and ask.",
                    self.stop_words(),
                    expected.people(u),
                    match self.reads_out() {
                        true => "readout",
                        false => "ring",
                    },
                    leave_out.people(u),
                    setup.never_cut_below(last).people(u),
                ),
            )
            .because("the tool that finishes has another tip: it is touched on a size that is known");
        self.read(&mut step, cut)?;
        Ok(step)
    }
}
