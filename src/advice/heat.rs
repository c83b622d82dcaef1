//! What must be said of warm work.

use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{AxialForce, Quantity, TemperatureRise};

/// Rise above 20 degC from which bare metal burns the skin that holds it.
pub const BURNS_SKIN: Sourced<TemperatureRise> = Sourced::new(
    TemperatureRise::computed_trade(35.0),
    "from memory of ISO 13732-1: bare metal of about 56 degC held for some seconds",
    Standing::FromMemory,
);

/// Share of the buckling force from which growth is a danger to the work.
pub const SHARE_OF_BUCKLING: Sourced<f64> = Sourced::new(
    1.0 / 3.0,
    "judgement, no source: cutting force and initial bend come on top",
    Standing::Estimate,
);

/// What of the work warms.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum WarmWork {
    /// A diameter.
    Diameter,
    /// A length, which may stand between chuck and centre.
    Length,
    /// A length between chuck and centre, whose force is known.
    OnCentre {
        /// By which the bar presses harder.
        added: AxialForce,
        /// At which it would buckle.
        buckling: AxialForce,
    },
}

/// Cautions of work that warms: by itself, and between chuck and centre.
///
/// # Example
/// ```
/// use turnwright::advice::heat::{cautions, WarmWork};
/// use turnwright::{Provenance, Units};
/// let all = cautions("12 K".parse()?, WarmWork::Length, Units::Metric, &mut Provenance::default());
/// assert!(all.iter().any(|caution| caution.code() == "growing_on_centre"));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cautions(
    rise: TemperatureRise,
    work: WarmWork,
    units: Units,
    provenance: &mut Provenance,
) -> Vec<Caution> {
    let mut cautions = Vec::new();
    let burns = provenance.open("rise of temperature that burns skin", &BURNS_SKIN);
    if rise >= burns {
        cautions.push(Caution::new(
            Severity::Danger,
            "hot_work",
            "Work this warm burns the skin: do not touch it to feel, nor measure it in the hand. Chips are hotter still.",
        ));
    }
    if rise.kelvin() != 0.0 {
        cautions.push(Caution::new(
            Severity::Note,
            "measure_at_20",
            "Sizes hold at 20 degC: let work and instrument come to the same temperature before the last cut, or reckon \
             with the size at 20 degC.",
        ));
    }
    if work != WarmWork::Diameter && rise.kelvin() > 0.0 {
        cautions.push(Caution::new(
            Severity::Warning,
            "growing_on_centre",
            "Between chuck and centre the bar cannot grow: a plain centre burns out and the bar bends. Slacken the \
             tailstock and set it anew as the work warms, or take a sprung live centre; stop the spindle first.",
        ));
    }
    if let WarmWork::OnCentre { added, buckling } = work {
        let share = provenance.open("share of the buckling force", &SHARE_OF_BUCKLING);
        if added.newton() >= share * buckling.newton() {
            cautions.push(Caution::new(
                Severity::Danger,
                "may_buckle",
                format!(
                    "The growth alone presses with {}, the bar buckles at about {}: it can bend and be thrown out. Slacken \
                     the centre while it warms; do not run it so.",
                    added.people(units),
                    buckling.people(units)
                ),
            ));
        }
    }
    cautions
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn codes(rise: &str, work: WarmWork) -> Vec<&'static str> {
        let rise = rise.parse().unwrap();
        let all = cautions(rise, work, Units::Metric, &mut Provenance::default());
        all.iter().map(Caution::code).collect()
    }

    fn pressed(added: &str) -> WarmWork {
        WarmWork::OnCentre {
            added: added.parse().unwrap(),
            buckling: "1000 N".parse().unwrap(),
        }
    }

    #[test]
    fn each_danger_is_told_where_it_is_one() {
        assert!(codes("0 K", WarmWork::Length).is_empty());
        assert_eq!(codes("-5 K", WarmWork::Length), ["measure_at_20"]);
        assert!(codes("40 K", WarmWork::Diameter).contains(&"hot_work"));
        assert!(codes("10 K", WarmWork::Length).contains(&"growing_on_centre"));
        assert!(!codes("10 K", pressed("300 N")).contains(&"may_buckle"));
        assert!(codes("10 K", pressed("400 N")).contains(&"may_buckle"));
    }
}
