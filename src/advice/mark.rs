//! Which mark of a dial for a size.

use crate::error::Error;
use crate::quantity::Diameter;
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::shop::dial::Dial;
use crate::standards::limits::Limits;

/// A mark and the size it gives.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct MarkAndSize {
    /// The reading there.
    pub reading: Reading,
    /// The diameter there.
    pub size: Diameter,
}

/// The mark chosen for a size.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct MarkChoice {
    /// The mark and its size.
    pub mark: MarkAndSize,
    /// Whether the size lies within the limits, where limits are given.
    pub in_zone: Option<bool>,
    /// The marks on both sides of the zone, the larger size first, where none lies in it.
    pub neighbours: Option<[MarkAndSize; 2]>,
}

/// The mark for `target` on a cross slide whose dial is zero at `zero_at`.
///
/// Of the marks within the limits the one nearest to the target; without limits, or where no mark
/// lies within them, the last mark that leaves metal.
///
/// # Errors
/// When a mark would lie beyond the middle of the bar.
///
/// # Example
/// ```
/// use turnwright::{advice::mark::choose, Dial, DialReads, Diameter, Division, DivisionsPerTurn, Limits};
/// let cross = Dial::new(DialReads::Diameter, Division::from_inch(0.002)?, DivisionsPerTurn::new(100)?);
/// let limits = Limits::new(Diameter::from_inch(1.1872)?, Diameter::from_inch(1.188)?)?;
/// let choice = choose(&cross, Diameter::from_inch(1.375)?, Diameter::from_inch(1.1875)?, Some(limits))?;
/// assert_eq!(choice.in_zone, Some(false));
/// assert_eq!(choice.neighbours.map(|n| n.map(|m| m.size.inch())), Some([1.189, 1.187]));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn choose(
    dial: &Dial,
    zero_at: Diameter,
    target: Diameter,
    limits: Option<Limits>,
) -> Result<MarkChoice, Error> {
    let exact = dial.divisions_between(zero_at, target);
    let at = |marks: f64| {
        let divisions = Divisions::from_rounded(marks)?;
        Ok::<_, Error>(MarkAndSize {
            reading: dial.reading(Slide::CrossSlide, divisions),
            size: dial.diameter_at(zero_at, divisions)?,
        })
    };
    let leaves_metal = at(exact.floor())?;
    let Some(limits) = limits else {
        return Ok(MarkChoice {
            mark: leaves_metal,
            in_zone: None,
            neighbours: None,
        });
    };
    let mut best: Option<MarkAndSize> = None;
    let away = |mark: &MarkAndSize| (mark.size.mm() - target.mm()).abs();
    // The zone's own ends, so that a target outside of it finds the marks inside all the same.
    let places = [
        exact,
        dial.divisions_between(zero_at, limits.smallest()),
        dial.divisions_between(zero_at, limits.largest()),
    ];
    for marks in places
        .into_iter()
        .flat_map(|place| [place.floor(), place.ceil()])
    {
        if let Ok(mark) = at(marks)
            && limits.contains(mark.size)
            && best.as_ref().is_none_or(|found| away(&mark) < away(found))
        {
            best = Some(mark);
        }
    }
    if let Some(mark) = best {
        return Ok(MarkChoice {
            mark,
            in_zone: Some(true),
            neighbours: None,
        });
    }
    let above = dial.divisions_between(zero_at, limits.largest()).floor();
    Ok(MarkChoice {
        mark: leaves_metal,
        in_zone: Some(false),
        neighbours: Some([at(above)?, at(above + 1.0)?]),
    })
}
