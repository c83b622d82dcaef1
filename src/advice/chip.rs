//! Whether a roughing chip has a shape that breaks and clears.

use std::fmt;

use super::depth::CHIP_WINDOW;
use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{DepthOfCut, Feed};

/// Least depth over feed of a roughing cut; below it the chip is short, thick and heavy on the corner.
pub const LEAST_DEPTH_OVER_FEED: Sourced<f64> = Sourced::new(
    4.0,
    "common practice, no source: depth over feed about 4 to 10, extremes 3 to 15",
    Standing::CommonPractice,
);

/// The extremes of depth over feed; beyond them trouble is sure.
pub const EXTREMES: Sourced<[f64; 2]> = Sourced::new(
    [3.0, 15.0],
    "common practice, no source: depth over feed about 4 to 10, extremes 3 to 15",
    Standing::CommonPractice,
);

/// The shape of a chip, by depth over feed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum ChipShape {
    /// Inside the window: about 4 to 10.
    Inside,
    /// Too wide for its thickness: strings and ribbons that wind about work and tool.
    StringLike,
    /// Too thick for its width: the corner carries all of the load.
    TooThick,
}

impl fmt::Display for ChipShape {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Inside => "inside the window",
            Self::StringLike => "string-like",
            Self::TooThick => "too thick",
        })
    }
}

/// The shape of a roughing chip, and a caution where it is a bad one.
///
/// Short-chipping metals (cast iron, free-cutting steel and brass) break at any ratio; a finishing
/// cut lives with its string.
///
/// # Example
/// ```
/// use turnwright::advice::chip::{shape, ChipShape};
/// use turnwright::Provenance;
/// let of = |depth: &str, feed: &str| {
///     Ok::<_, turnwright::Error>(shape(depth.parse()?, feed.parse()?, &mut Provenance::default()))
/// };
/// assert_eq!(of("2 mm", "0.25 mm/rev")?.0, ChipShape::Inside);
/// assert_eq!(of("2 mm", "0.05 mm/rev")?.0, ChipShape::StringLike);
/// assert_eq!(of("0.5 mm", "0.3 mm/rev")?.0, ChipShape::TooThick);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn shape(
    depth_of_cut: DepthOfCut,
    feed: Feed,
    provenance: &mut Provenance,
) -> (ChipShape, Option<Caution>) {
    let ratio = depth_of_cut.mm() / feed.mm_per_rev();
    let least = provenance.open("least depth over feed", &LEAST_DEPTH_OVER_FEED);
    let largest = provenance.open("largest depth over feed", &CHIP_WINDOW);
    let [too_little, too_much] = EXTREMES.value;
    if ratio > largest {
        let severity = if ratio > too_much {
            Severity::Warning
        } else {
            Severity::Note
        };
        let caution = Caution::new(
            severity,
            "string_like_chip",
            format!(
                "Depth over feed is {ratio:.1}, about {least:.0} to {largest:.0} breaks well: expect long strings. They \
                 are sharp and catch: stop the spindle and take them away with a hook, never by hand. More feed or \
                 less depth breaks them."
            ),
        );
        (ChipShape::StringLike, Some(caution))
    } else if ratio < least {
        let severity = if ratio < too_little {
            Severity::Warning
        } else {
            Severity::Note
        };
        let caution = Caution::new(
            severity,
            "thick_chip",
            format!(
                "Depth over feed is {ratio:.1}, about {least:.0} to {largest:.0} breaks well: the chip is thick for its \
                 width and loads the corner of the tool. Less feed or more depth."
            ),
        );
        (ChipShape::TooThick, Some(caution))
    } else {
        (ChipShape::Inside, None)
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn of(depth: f64) -> (ChipShape, Option<Severity>) {
        let (shape, caution) = shape(
            DepthOfCut::from_mm(depth).unwrap(),
            "0.1 mm/rev".parse().unwrap(),
            &mut Provenance::default(),
        );
        (shape, caution.map(|caution| caution.severity()))
    }

    #[test]
    fn the_window_ends_in_a_note_and_its_extremes_in_a_warning() {
        assert_eq!(of(0.2), (ChipShape::TooThick, Some(Severity::Warning)));
        assert_eq!(of(0.35), (ChipShape::TooThick, Some(Severity::Note)));
        assert_eq!(of(0.7), (ChipShape::Inside, None));
        assert_eq!(of(1.2), (ChipShape::StringLike, Some(Severity::Note)));
        assert_eq!(of(1.6), (ChipShape::StringLike, Some(Severity::Warning)));
    }
}
