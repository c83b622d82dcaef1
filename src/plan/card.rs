//! Around the job: a card to prove the dials of an unknown lathe, what to prove again after a break.

use super::common::Common;
use super::dog::is_driven;
use super::readout::is_readout;
use crate::quantity::unit::Units;
use crate::quantity::{DiameterError, Quantity, round_size};
use crate::shop::dial::DialReads;

/// What to prove before an unknown lathe is trusted, and after a break; common practice, no source.
pub(super) fn card(common: &Common<'_>) -> Vec<String> {
    let (cross, carriage, u) = (common.cross, common.carriage, common.units);
    let n = f64::from(cross.divisions_per_turn().count());
    let turn = DiameterError::computed_trade(round_size(cross.diameter_per_division().mm() * n));
    let travel = DiameterError::computed_trade(round_size(0.5 * turn.mm()));
    let counts = match cross.reads() {
        DialReads::Diameter => "DIAMETER",
        _ => "RADIUS",
    };
    let cross_slide = match is_readout(cross) {
        true => format!(
            "Cross readout: spindle at rest, an indicator against the tool post, square to the bed. Move the slide in by {} by \
             the indicator: the readout must change by {}, so that it shows the {counts} as this sheet takes it: else stop.",
            travel.people(u),
            match cross.reads() {
                DialReads::Diameter => turn.people(u),
                _ => travel.people(u),
            }
        ),
        false => format!(
            "Cross dial: spindle at rest, an indicator against the tool post, square to the bed. Turn the dial one whole turn \
             in: the slide must travel {}, so that the dial counts the {counts} as this sheet takes it; half or twice as much: it does not: stop.",
            travel.people(u)
        ),
    };
    vec![
        cross_slide,
        String::from(match is_readout(cross) {
            // A scale sits on the slide itself: the play of the screw does not show on it.
            true => {
                "Play of the slides: come in, lock nothing, push and pull the slide by hand: what the readout then changes by \
                 is how far a cut may draw the tool in."
            }
            false => {
                "Backlash of each slide: come in to a mark, indicator to 0, turn back until the indicator moves: what the dial \
                 went by is the backlash."
            }
        }),
        match is_readout(carriage) {
            true => format!(
                "Carriage readout: move the carriage by {} against a rule or an indicator: the readout must change by as much.",
                match u {
                    Units::Metric => "10 mm",
                    Units::Inch => "half an inch",
                }
            ),
            false => format!(
                "Carriage dial: one turn against a rule or an indicator: {}.",
                carriage.travel_per_turn().people(u)
            ),
        },
        format!(
            "After a break, a knock or a change of tool: touch the last finished diameter with {} before \
             anything is cut; the carriage's {} on the finished face; {}.",
            match is_readout(cross) {
                true => "the readout at its size",
                false => "the ring at its mark",
            },
            match is_readout(carriage) {
                true => "readout",
                false => "dial",
            },
            match is_driven(common.job) {
                true => "dog, tailstock and both centres tight, the guard over the dog",
                false => "jaws, tailstock and centre tight; chuck key out",
            }
        ),
    ]
}
