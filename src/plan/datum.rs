//! Across the axis: the zone inside its guards, the zero of the cross dial, and the final mark.

use super::chance::{self, Aim};
use super::job::Job;
use super::passes::{First, Metal, Passes};
use super::readout::is_readout;
use super::sheet::SurfaceAt;
use super::turning::{beyond, cross_reading, printed, skin_or_run_out};
use crate::error::{Error, ErrorKind};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::dial::{Divisions, Reading};
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Quantity, SizeUncertainty, ThermalExpansion, round_size,
};
use crate::shop::dial::{Dial, Ring};
use crate::shop::gauge::Gauge;
use crate::shop::surface::Surface;
use crate::standards::instrument::{Instrument, largest_error};
use crate::standards::limits::Limits;

/// A tolerance this many times an instrument's error may be measured with it.
const TEN_TO_ONE: Sourced<f64> = Sourced::new(
    10.0,
    "common practice, no source: a tenth of the tolerance",
    Standing::CommonPractice,
);

/// The zero of the cross dial and the marks that lead from it to the final size.
#[derive(Debug, Clone)]
pub(super) struct Datum {
    /// The diameter at which the dial reads zero.
    pub(super) zero: Diameter,
    /// What the dial reads where the tool touches the bar, less the tenths of `between`; a fraction where no
    /// mark of a dial zeroed there would be safe inside the zone.
    pub(super) start: f64,
    /// Tenths of a mark by which the readings of the cuts planned lie beyond their marks: on a surface that
    /// a fixed ring comes to from another, where no whole mark brings the size. `zero` is then where a dial
    /// would read zero that read the same sizes without them.
    pub(super) between: u8,
    /// The final mark.
    pub(super) last: Divisions,
    /// The nearest marks of a dial zeroed on the bar, where none of them is safe
    /// inside the zone.
    pub(super) missed: Option<(Diameter, Diameter)>,
    /// The part of the zero that is spring to expect, beyond what the zero before it held.
    pub(super) correction: DiameterError,
}

/// How the diameter before the cuts of a surface is known, and what the dial reads there.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Before {
    /// The diameter before the first cut.
    pub(super) start: Diameter,
    /// The diameter at which the dial reads zero.
    pub(super) zero: Diameter,
    /// What the dial reads where the tool touches the bar.
    pub(super) mark: f64,
    /// True where that diameter was measured, not only touched.
    pub(super) measured: bool,
    /// True where this plan turned it: a surface before this one.
    pub(super) turned: bool,
    /// The spring of the bar that sizes read from this zero hold already.
    pub(super) spring: DiameterError,
    /// True where something that was measured has brought it here: the cuts are divided anew.
    pub(super) anew: bool,
}

impl Before {
    /// The bar as it comes, or the diameter that the asker measured.
    pub(super) fn of(job: &Job, touched: Diameter) -> Self {
        let start = job.zero_at.unwrap_or(touched);
        Self {
            measured: job.zero_at.is_some(),
            ..Self::touched(start)
        }
    }

    /// What the dial reads where the tool touches the bar: a reading, and tenths of a mark beyond it.
    pub(super) fn reading(&self, cross: &Dial) -> Result<(Reading, u8), Error> {
        let tenths = (10.0 * self.mark).round() as i64;
        let reading = cross_reading(cross, tenths.div_euclid(10))?;
        Ok((reading, tenths.rem_euclid(10) as u8))
    }

    /// The bar as it is touched.
    pub(super) fn touched(start: Diameter) -> Self {
        Self {
            start,
            zero: start,
            mark: 0.0,
            measured: false,
            turned: false,
            spring: DiameterError::computed_trade(0.0),
            anew: false,
        }
    }
}

/// The part comes out of the bar, and the bar goes into the lathe.
pub(super) fn sizes_fit(job: &Job) -> Result<(), Error> {
    let (stock, part) = (&job.stock, &job.part);
    let largest = |surfaces: &[Surface]| surfaces.last().map(|s| s.limits().largest());
    // What is left of the bar when the skin is off all round.
    let skin = stock.skin().map_or(0.0, |skin| skin.mm());
    let clean = stock.diameter().mm() - stock.run_out().map_or(0.0, |r| r.mm()) - 2.0 * skin;
    let ends = [(false, part.surfaces()), (true, part.other_end())];
    for (other_end, surfaces) in ends {
        let Some(most) = largest(surfaces) else {
            continue;
        };
        let field = SurfaceAt::new(other_end, surfaces.len() - 1).path(part, "limits");
        if round_size(most.mm()) >= round_size(stock.diameter().mm()) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                field,
                format!(
                    "a largest size of {most} from a bar of {}",
                    stock.diameter()
                ),
                "a part smaller than its bar",
                "check which of the two is right; a bar cannot grow",
            ));
        }
        if job.zero_at.is_none() && round_size(most.mm()) >= round_size(clean) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                field,
                format!(
                    "a largest size of {most} from a bar of {}",
                    stock.diameter()
                ),
                format!(
                    "less than the {} that are left of the bar without its skin and run-out",
                    Diameter::computed_trade(round_size(clean))
                ),
                "a thicker bar, or one that runs truer",
            ));
        }
    }
    for (other_end, surfaces) in ends {
        for (index, surface) in surfaces.iter().enumerate() {
            let outer = index.checked_sub(1).map(|before| &surfaces[before]);
            details_fit(surface, outer, |what| {
                SurfaceAt::new(other_end, index).path(part, what)
            })?;
        }
    }
    let first_largest = largest(part.surfaces());
    if let Some(zero) = job.zero_at
        && let Some(most) = first_largest
        && (zero > stock.diameter() || zero <= most)
    {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "zero_at",
            zero.to_string(),
            format!(
                "a diameter from above {most} up to the bar's {}",
                stock.diameter()
            ),
            "give the diameter that was measured where the cross dial reads zero",
        ));
    }
    if let Some(swing) = job.lathe.swing()
        && stock.diameter() > swing
    {
        return Err(Error::new(
            ErrorKind::Impossible,
            "stock.diameter",
            stock.diameter().to_string(),
            format!("at most the swing of {swing}"),
            "a smaller bar or a larger lathe",
        ));
    }
    Ok(())
}

/// An undercut and a chamfer lie within their surface, and a chamfer within the step down to the outer one.
fn details_fit(
    surface: &Surface,
    outer: Option<&Surface>,
    path: impl Fn(&str) -> String,
) -> Result<(), Error> {
    let (length, radius) = (
        surface.length().mm(),
        0.5 * surface.limits().smallest().mm(),
    );
    let too_large = |what: &str, given: String, expected: String| {
        Err(Error::new(
            ErrorKind::Contradiction,
            path(what),
            given,
            expected,
            "check the drawing: it does not fit on its surface",
        ))
    };
    if let Some(undercut) = surface.undercut() {
        if undercut.depth().mm() >= radius {
            return too_large(
                "undercut.depth",
                undercut.depth().to_string(),
                format!("less than the radius of {}", surface.limits().smallest()),
            );
        }
        if undercut.width().mm() > length {
            return too_large(
                "undercut.width",
                undercut.width().to_string(),
                format!("at most the length {}", surface.length()),
            );
        }
    }
    match surface.chamfer() {
        Some(leg) if leg.mm() >= radius || leg.mm() > length => too_large(
            "chamfer",
            leg.to_string(),
            format!(
                "less than the radius of {} and at most the length {}",
                surface.limits().smallest(),
                surface.length()
            ),
        ),
        Some(leg) => match outer {
            Some(outer) if 2.0 * leg.mm() > step_down(surface, outer) => too_large(
                "chamfer",
                leg.to_string(),
                format!(
                    "no more than the step of {:.3} mm down to {}: a larger one cuts into that surface",
                    0.5 * step_down(surface, outer),
                    outer.diameter()
                ),
            ),
            _ => Ok(()),
        },
        None => Ok(()),
    }
}

/// By how much the free edge of a surface stands above the surface outside of it, on the diameter, in mm.
fn step_down(surface: &Surface, outer: &Surface) -> f64 {
    let edge = surface.small_diameter().unwrap_or(surface.diameter());
    round_size(edge.mm() - outer.diameter().mm())
}

/// The instrument, the guard that it keeps from both limits, and the zone inside the guards.
pub(super) fn zone(
    job: &Job,
    limits: Limits,
    field: &str,
    cross: &Dial,
    expansion: Option<ThermalExpansion>,
    provenance: &mut Provenance,
) -> Result<(Gauge, SizeUncertainty, Limits), Error> {
    let ten = TEN_TO_ONE.value;
    let gauge = match job.preference(|p| p.instrument()) {
        Some(gauge) => gauge,
        None => {
            provenance.open("tolerance over the error of the instrument", &TEN_TO_ONE);
            match largest_error(Instrument::Calliper, limits.largest()) {
                Ok(error) if limits.tolerance().mm() >= ten * error.value.mm() => {
                    Gauge::new(Instrument::Calliper)
                }
                _ => Gauge::new(Instrument::Micrometer),
            }
        }
    };
    let guard = chance::guard(gauge, limits.largest(), cross, expansion, provenance)?;
    let guarded = limits
        .inside(guard)
        .ok_or_else(|| chance::not_to_be_proved(limits, field, guard, &gauge))?;
    Ok((gauge, guard, guarded))
}

/// A size as a person reads it: to a thousandth of a millimetre or a ten-thousandth of an inch, where
/// one lies in the zone.
pub(super) fn readable(size: Diameter, guarded: Limits, units: Units) -> Diameter {
    [f64::round, f64::floor, f64::ceil]
        .into_iter()
        .map(|round| printed(size, units, round))
        .find(|read| guarded.contains(*read))
        .unwrap_or(size)
}

/// The zero of the cross dial, the final mark and the passes that lead to it.
pub(super) fn datum(
    before: &Before,
    cross: &Dial,
    limits: Limits,
    guarded: Limits,
    aim: &Aim,
    metal: Metal,
    correction: DiameterError,
) -> Result<(Datum, Passes), Error> {
    let q = cross.diameter_per_division().mm();
    let start = before.start;
    let zero = Diameter::computed_trade(round_size(before.zero.mm() + correction.mm()));
    let (zero, stands) = match is_readout(cross) && !before.turned {
        true => shown_from(cross, zero),
        false => (zero, before.mark),
    };
    let metal = Metal {
        start: stands,
        ..metal
    };
    let exact = cross.divisions_between(zero, aim.size);
    let in_zone = |mark: i64| {
        let d = cross.diameter_at(zero, Divisions::new(mark)?)?;
        // A fixed ring leads to its marks, and after a measurement to the one that is nearest to the aim.
        let serves = cross.ring() == Ring::Fixed || aim.serves(d);
        Ok::<bool, Error>(guarded.contains(d) && serves)
    };
    // A dial that is zeroed on a measured size needs no first cut to prove it, but may need one to
    // come to main marks: as deep as any, for it is not measured.
    let divide = |metal: Metal| match before.measured {
        true => Metal {
            first: First::None,
            ..metal
        }
        .divide()
        .or_else(|| {
            let uneven = Metal {
                first: First::Uneven,
                first_most: metal.rough_asked.unwrap_or(metal.rough_most),
                ..metal
            };
            uneven.divide()
        }),
        false => metal.divide(),
    };
    // Marks of a dial zeroed on the bar, the nearest to the aim first.
    let reach = (guarded.tolerance().mm() / q).ceil() as i64 + 1;
    let mut near: Vec<i64> = (exact.round() as i64 - reach..=exact.round() as i64 + reach)
        .filter(|mark| *mark > 0)
        .collect();
    near.sort_by(|a, b| {
        (*a as f64 - exact)
            .abs()
            .total_cmp(&(*b as f64 - exact).abs())
    });
    let mut any = false;
    for mark in near.into_iter().take(64) {
        if !in_zone(mark)? {
            continue;
        }
        any = true;
        let metal = Metal {
            last: mark,
            ..metal
        };
        if let Some(passes) = divide(metal) {
            let datum = Datum {
                zero,
                start: stands,
                between: 0,
                last: Divisions::new(mark)?,
                missed: None,
                correction,
            };
            return Ok((datum, passes));
        }
    }
    let missed = if any {
        None
    } else {
        Some(neighbours(cross, zero, exact)?)
    };
    // What another tool finishes is zeroed by eye between marks.
    let by_eye = before.turned || (metal.changes && !before.measured);
    if cross.ring() == Ring::Fixed && by_eye {
        let moved = Moved::by((10.0 * exact).round() as i64, zero, cross);
        let last = Divisions::new(moved.marks)?;
        let metal = Metal {
            start: before.mark - f64::from(moved.between) / 10.0,
            last: last.count(),
            ..metal
        };
        if guarded.contains(cross.diameter_at(moved.zero, last)?)
            && let Some(passes) = divide(metal)
        {
            let datum = Datum {
                zero: moved.zero,
                start: metal.start,
                between: moved.between,
                last,
                missed,
                correction,
            };
            return Ok((datum, passes));
        }
    }
    if cross.ring() != Ring::Settable {
        return Err(match missed {
            Some((above, below)) => Error::new(
                ErrorKind::Impossible,
                "lathe.cross_slide",
                format!(
                    "marks that give {above} ({}) and {below} ({}) from {start}",
                    aim.good_words(above),
                    aim.good_words(below)
                ),
                format!(
                    "a mark within {} to {} that gives a good part often enough, {} of 100",
                    guarded.smallest(),
                    guarded.largest(),
                    round_size(100.0 * aim.asked.trade())
                ),
                match is_readout(cross) {
                    true => {
                        "a readout with a finer step, or the compound slide set over for a finer feed"
                    }
                    false => {
                        "a dial whose ring can be set, the compound slide set over for a finer feed, or a skim to another diameter for zero_at"
                    }
                },
            ),
            None => too_little(limits, start, metal, q),
        });
    }
    // The ring is set so that the aim lies on a mark, a main one where that serves.
    let exact = exact - before.mark;
    for round in [10, 5, 2, 1] {
        let last = ((exact / round as f64) - 1e-9).ceil() as i64 * round;
        let metal = Metal {
            start: last as f64 - exact,
            last,
            ..metal
        };
        if let Some(passes) = divide(metal) {
            let zero = Diameter::computed_trade(round_size(aim.size.mm() + last as f64 * q));
            let datum = Datum {
                zero,
                start: metal.start,
                between: 0,
                last: Divisions::new(last)?,
                missed,
                correction,
            };
            return Ok((datum, passes));
        }
    }
    Err(too_little(limits, start, metal, q))
}

/// Readings moved by whole marks and tenths of one.
#[derive(Debug, Clone, Copy)]
pub(super) struct Moved {
    pub(super) marks: i64,
    /// Tenths of a mark beyond, 0 to 9.
    pub(super) between: u8,
    /// Where a dial would read zero that read the same sizes without these tenths.
    pub(super) zero: Diameter,
}

impl Moved {
    /// The whole marks and the tenths beyond them, on a dial that reads zero at `zero`.
    pub(super) fn by(tenths: i64, zero: Diameter, cross: &Dial) -> Self {
        let between = tenths.rem_euclid(10);
        Self {
            marks: tenths.div_euclid(10),
            between: between as u8,
            zero: match between {
                0 => zero,
                between => beyond(zero, cross, between),
            },
        }
    }
}

/// A zero from which a readout shows whole steps, tens of them first, and how far from it a size stands.
fn shown_from(cross: &Dial, size: Diameter) -> (Diameter, f64) {
    let ten = 10.0 * cross.diameter_per_division().mm();
    let zero = Diameter::computed_trade(round_size((size.mm() / ten - 1e-9).ceil() * ten));
    (zero, cross.divisions_between(zero, size))
}

/// The marks on both sides of the zone, the larger size first.
fn neighbours(cross: &Dial, start: Diameter, exact: f64) -> Result<(Diameter, Diameter), Error> {
    let above = cross.diameter_at(start, Divisions::from_rounded(exact.floor())?)?;
    let below = cross.diameter_at(start, Divisions::from_rounded(exact.floor() + 1.0)?)?;
    Ok((above, below))
}

#[cold]
fn too_little(limits: Limits, start: Diameter, metal: Metal, q: f64) -> Error {
    let cuts = match metal.first {
        First::None => 2.0,
        First::Measured | First::Uneven => 3.0,
    };
    let there = (start.mm() - limits.largest().mm()) / q;
    let depth = |marks: f64| DepthOfCut::computed_trade(round_size(marks * q / 2.0));
    if metal.first_least > 0 && there < (metal.first_least + 2 * metal.least) as f64 {
        let (field, what) = skin_or_run_out(metal.skin);
        return Error::new(
            ErrorKind::Impossible,
            field,
            format!(
                "{} of metal on the radius, of which the first cut takes {} to {what}",
                depth(there),
                depth(metal.first_least as f64)
            ),
            format!(
                "metal for two finishing cuts of at least {} after it",
                depth(metal.least as f64)
            ),
            "a thicker bar, one that runs truer, or a sharper tool with a smaller corner radius",
        );
    }
    if there > cuts * metal.least as f64 + 2.0 {
        return Error::new(
            ErrorKind::Impossible,
            "part",
            format!(
                "cuts of {} to {} of depth, which is all that tool, drive, bar and preferences allow",
                depth(metal.least as f64),
                depth(metal.rough_most as f64)
            ),
            format!(
                "cuts that divide {start} down to {} on whole marks",
                limits.largest()
            ),
            "allow deeper cuts (a centre, less overhang, coarser feed, more power, larger largest_depth), lighter ones (a \
             smaller corner radius), finer marks, or take another bar",
        );
    }
    Error::new(
        ErrorKind::Impossible,
        "stock.diameter",
        format!("{start} to come down to {}", limits.largest()),
        format!(
            "metal for {cuts:.0} cuts of at least {} of depth each, that is about {} on the diameter",
            depth(metal.least as f64),
            Diameter::computed_trade(round_size(metal.least as f64 * q * cuts))
        ),
        "a thicker bar, or a sharper tool with a smaller corner radius: a lighter cut would rub",
    )
}
