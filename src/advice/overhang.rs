//! How far a tool may stand out.

use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{Diameter, Overhang, ShankSize, Slenderness};

const fn guideline(ratio: f64) -> Sourced<Slenderness> {
    Sourced::new(
        Slenderness::computed_trade(ratio),
        "common practice, no source: shanks 1 to 1.5 heights, steel boring bars 3 to 4 diameters, carbide ones 6",
        Standing::CommonPractice,
    )
}

/// Largest overhang of a shank over its height.
pub const SHANK: Sourced<Slenderness> = guideline(1.5);

/// Largest overhang of a steel boring bar over its diameter.
pub const STEEL_BORING_BAR: Sourced<Slenderness> = guideline(4.0);

/// Largest overhang of a boring bar of cemented carbide over its diameter.
pub const CARBIDE_BORING_BAR: Sourced<Slenderness> = guideline(6.0);

/// A tool that stands out of its holder.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Standout {
    /// A shank of a height.
    Shank(ShankSize),
    /// A boring bar of steel, of a diameter.
    SteelBoringBar(Diameter),
    /// A boring bar of cemented carbide, of a diameter.
    CarbideBoringBar(Diameter),
}

/// A caution where a tool stands out further than is usual.
///
/// # Example
/// ```
/// use turnwright::advice::overhang::{caution, Standout};
/// use turnwright::Provenance;
/// let shank = Standout::Shank("16 mm".parse()?);
/// assert!(caution(shank, "20 mm".parse()?, &mut Provenance::default()).is_none());
/// assert!(caution(shank, "40 mm".parse()?, &mut Provenance::default()).is_some());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn caution(tool: Standout, overhang: Overhang, provenance: &mut Provenance) -> Option<Caution> {
    let (limit, across, what) = match tool {
        Standout::Shank(height) => (&SHANK, height.mm(), "heights of the shank"),
        Standout::SteelBoringBar(d) => (&STEEL_BORING_BAR, d.mm(), "diameters of a steel bar"),
        Standout::CarbideBoringBar(d) => {
            (&CARBIDE_BORING_BAR, d.mm(), "diameters of a carbide bar")
        }
    };
    let most = provenance
        .open("largest overhang of the tool", limit)
        .value();
    (overhang.mm() > most * across).then(|| {
        Caution::new(
            Severity::Warning,
            "long_tool",
            format!(
                "The tool stands out by {:.1} {what}; more than about {most} chatters and may dig in. Shorten the \
                 overhang, or take a stouter tool.",
                overhang.mm() / across
            ),
        )
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn the_guideline_itself_raises_no_caution_and_a_little_more_does() {
        let d = Diameter::from_mm(10.0).unwrap();
        for (tool, most) in [
            (Standout::Shank(ShankSize::from_mm(10.0).unwrap()), 15.0),
            (Standout::SteelBoringBar(d), 40.0),
            (Standout::CarbideBoringBar(d), 60.0),
        ] {
            let of = |mm: f64| {
                caution(
                    tool,
                    Overhang::from_mm(mm).unwrap(),
                    &mut Provenance::default(),
                )
            };
            assert!(of(most).is_none());
            assert!(of(most * 1.01).is_some());
        }
    }
}
