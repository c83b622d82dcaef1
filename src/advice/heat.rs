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

/// Cautions of work that warms: by itself, and between chuck and centre.
pub(crate) fn cautions(
    rise: TemperatureRise,
    is_length: bool,
    added_and_buckling: Option<(AxialForce, AxialForce)>,
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
    if is_length && rise.kelvin() > 0.0 {
        cautions.push(Caution::new(
            Severity::Warning,
            "growing_on_centre",
            "Between chuck and centre the bar cannot grow: a plain centre burns out and the bar bends. Slacken the \
             tailstock and set it anew as the work warms, or take a sprung live centre; stop the spindle first.",
        ));
    }
    if let Some((added, buckling)) = added_and_buckling {
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

    fn codes(rise: &str, is_length: bool, forces: Option<(&str, &str)>) -> Vec<&'static str> {
        let forces = forces.map(|(a, b)| (a.parse().unwrap(), b.parse().unwrap()));
        let rise = rise.parse().unwrap();
        cautions(
            rise,
            is_length,
            forces,
            Units::Metric,
            &mut Provenance::default(),
        )
        .iter()
        .map(Caution::code)
        .collect()
    }

    #[test]
    fn each_danger_is_told_where_it_is_one() {
        assert!(codes("0 K", true, None).is_empty());
        assert_eq!(codes("-5 K", true, None), ["measure_at_20"]);
        assert!(codes("40 K", false, None).contains(&"hot_work"));
        assert!(codes("10 K", true, None).contains(&"growing_on_centre"));
        assert!(!codes("10 K", true, Some(("300 N", "1000 N"))).contains(&"may_buckle"));
        assert!(codes("10 K", true, Some(("400 N", "1000 N"))).contains(&"may_buckle"));
    }
}
