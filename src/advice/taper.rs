//! What must be said of each way to turn a taper.

use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{DiameterError, Quantity, SetOver, Travel, WorkLength};

/// Largest set-over of the tailstock over the length between centres, with ordinary centres.
pub const LARGEST_SET_OVER: Sourced<f64> = Sourced::new(
    0.02,
    "common practice, no source: about a fiftieth of the length with ordinary centres",
    Standing::CommonPractice,
);

/// What is known of the ways to turn a taper; nothing by default.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
#[non_exhaustive]
pub struct Ways {
    /// Length of the taper.
    pub length: Option<WorkLength>,
    /// Travel of the compound slide that the taper asks for.
    pub slide_travel: Option<Travel>,
    /// Travel that the compound slide has.
    pub compound_travel: Option<Travel>,
    /// Longest taper that the attachment turns.
    pub attachment_length: Option<WorkLength>,
    /// Set-over of the tailstock, and the length between centres.
    pub set_over: Option<(SetOver, WorkLength)>,
    /// How much too large the small end comes out for the height of the tool.
    pub small_end_error: Option<DiameterError>,
}

/// The cautions of the ways that are asked about.
///
/// # Example
/// ```
/// use turnwright::advice::taper::{cautions, Ways};
/// use turnwright::{Provenance, Units};
/// let mut ways = Ways::default();
/// ways.set_over = Some(("3.75 mm".parse()?, "300 mm".parse()?));
/// let all = cautions(&ways, Units::Metric, &mut Provenance::default());
/// assert!(all.iter().any(|caution| caution.code() == "between_centres"));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cautions(ways: &Ways, units: Units, provenance: &mut Provenance) -> Vec<Caution> {
    let mut cautions = vec![Caution::new(
        Severity::Note,
        "scales_differ",
        "Some compound slides read zero along the axis, others along the cross slide: both angles are given. A scale is \
         good to some tenths of a degree: prove the setting with an indicator along a known taper or a test bar.",
    )];
    if let (Some(asked), Some(there)) = (ways.slide_travel, ways.compound_travel)
        && asked > there
    {
        cautions.push(Caution::new(
            Severity::Warning,
            "compound_too_short",
            format!(
                "The taper asks for {} of travel, the compound slide has {}: turn it by the tailstock or an attachment.",
                asked.people(units),
                there.people(units)
            ),
        ));
    }
    if let Some(longest) = ways.attachment_length {
        let too_long = ways.length.filter(|length| *length > longest);
        cautions.push(match too_long {
            Some(length) => Caution::new(
                Severity::Warning,
                "attachment_too_short",
                format!(
                    "The taper is {} long, the attachment turns {} in one setting.",
                    length.people(units),
                    longest.people(units)
                ),
            ),
            None => Caution::new(
                Severity::Note,
                "attachment_setting",
                "Set the bar of the attachment to half_angle where its scale has degrees, to taper_per_foot where it has \
                 taper per foot. Take up its backlash before every cut by starting well clear of the work.",
            ),
        });
    }
    if let Some((set_over, centres)) = ways.set_over {
        set_over_cautions(set_over, centres, units, provenance, &mut cautions);
    }
    cautions.push(match ways.small_end_error {
        Some(error) if error.mm() != 0.0 => Caution::new(
            Severity::Warning,
            "tool_off_centre",
            format!(
                "With this height of the tool the small end comes out {} too large and the side hollow: set the tip to \
                 centre height.",
                error.people(units)
            ),
        ),
        _ => Caution::new(
            Severity::Note,
            "centre_height",
            "The tip must stand at centre height: above or below, the side comes out hollow and the angle wrong.",
        ),
    });
    cautions
}

fn set_over_cautions(
    set_over: SetOver,
    centres: WorkLength,
    units: Units,
    provenance: &mut Provenance,
    cautions: &mut Vec<Caution>,
) {
    cautions.push(Caution::new(
        Severity::Danger,
        "between_centres",
        "The set-over holds for work between centres alone, driven by a dog. Guard the dog and its tail, nothing loose near \
         them; grease a plain centre, and look at it often: it bears unevenly, wears and can let go of the work. In a \
         chuck the same set-over bends the bar at every turn.",
    ));
    let most = provenance.open(
        "largest set-over over length between centres",
        &LARGEST_SET_OVER,
    );
    if set_over.mm() > most * centres.mm() {
        cautions.push(Caution::new(
            Severity::Warning,
            "large_set_over",
            format!(
                "A set-over of {} is more than about a fiftieth of the {} between centres: ordinary centres bear on their \
                 edges only. Take ball centres, the compound slide or an attachment.",
                set_over.people(units),
                centres.people(units)
            ),
        ));
    }
    cautions.push(Caution::new(
        Severity::Note,
        "same_length",
        "Every piece of a lot needs the same length and the same depth of its centre holes, or its taper differs. Set the \
         tailstock back and prove it with a test bar before other work.",
    ));
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_large_set_over_is_warned_of_and_a_usual_one_is_not() {
        let codes = |set_over: &str| {
            let ways = Ways {
                set_over: Some((set_over.parse().unwrap(), "300 mm".parse().unwrap())),
                ..Ways::default()
            };
            let all = cautions(&ways, Units::Metric, &mut Provenance::default());
            all.iter().map(Caution::code).collect::<Vec<_>>()
        };
        assert!(codes("5.9 mm").contains(&"between_centres"));
        assert!(!codes("5.9 mm").contains(&"large_set_over"));
        assert!(codes("6.1 mm").contains(&"large_set_over"));
    }
}
