//! What the steps say where a digital readout takes the place of the dial: it shows the
//! size itself, and is set to what was measured.

use super::words::{SurfaceWriter, Writer};
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, Quantity, round_size};
use crate::shop::dial::{Dial, DialReads, Ring};

/// Whether the cross slide is read on a digital readout.
pub(super) fn is_readout(cross: &Dial) -> bool {
    cross.ring() == Ring::Readout
}

/// What a readout of the cross slide shows at a size.
pub(super) fn shown(cross: &Dial, size: Diameter, units: Units) -> String {
    match cross.reads() {
        DialReads::Diameter => size.people(units).to_string(),
        _ => Diameter::computed_trade(round_size(0.5 * size.mm()))
            .people(units)
            .to_string(),
    }
}

impl Writer<'_> {
    /// What the readout shows where the tip stands at a size.
    pub(super) fn shown(&self, size: Diameter) -> String {
        shown(self.cross, size, self.u)
    }
}

impl SurfaceWriter<'_> {
    /// Whether the cross slide is read on a digital readout.
    pub(super) fn reads_out(&self) -> bool {
        is_readout(self.cross)
    }

    /// What is set on the readout for a measured size of this name.
    pub(super) fn set_to(&self, name: &str) -> String {
        match self.cross.reads() {
            DialReads::Diameter => name.to_owned(),
            _ => format!("half of {name}"),
        }
    }

    /// What is set on the readout for a size that may lie between its steps: the nearest it can show.
    pub(super) fn nearest_shown(&self, size: Diameter) -> String {
        let step = self.cross.diameter_per_division().mm();
        let nearest = Diameter::computed_trade(round_size((size.mm() / step).round() * step));
        let said = size.people(self.u).to_string();
        match nearest.people(self.u).to_string() {
            shown if shown == said => said,
            shown => format!("{shown}, which is the nearest it can show to {said}"),
        }
    }

    /// Its zero.
    pub(super) fn readout_zero(&self, given: Option<Diameter>) -> String {
        let before = &self.setup.before;
        let held = self.setup.leaves_spring();
        let touched = Diameter::computed_trade(round_size(before.start.mm() + held.mm()));
        if before.turned {
            let name = format!("F{}", self.number - 1);
            return format!(
                "Zero X is kept: carriage to the right, clear of the bar; the readout shows the size. If {name} was not {}, come \
                 in to {} once more, and set the readout to {}.",
                before.start.people(self.u),
                self.shown(before.start),
                self.set_to(&name)
            );
        }
        match given {
            Some(zero) => format!(
                "Zero X: come in to where the bar measures {}, and set the X readout to {}. Carriage to the right, clear of the \
                 bar. The bar must measure that all along: turn down what is thicker first.",
                zero.people(self.u),
                self.shown(touched)
            ),
            None => format!(
                "Zero X: spindle on, come in until the tip just touches the bar near its end; set the X readout \
                 to {}. Carriage to the right, clear of the face.",
                self.shown(touched)
            ),
        }
    }

    /// What is done with a measured size of this name.
    pub(super) fn readout_set(&self, expected: Diameter, name: &str) -> String {
        format!(
            "In again to {} on the readout, and set it to {}.",
            self.shown(expected),
            self.set_to(name)
        )
    }
}
