//! Across the axis: the zone inside its guards, the zero of the cross dial, and the final mark.

use super::chance::{self, Aim};
use super::job::Job;
use super::passes::{Metal, Passes};
use crate::error::{Error, ErrorKind};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::dial::Divisions;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, SizeUncertainty, ThermalExpansion, round_size};
use crate::shop::dial::{Dial, Ring};
use crate::shop::gauge::Gauge;
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
    /// What the dial reads where the tool touches the bar; a fraction where no mark of a dial zeroed
    /// there would be safe inside the zone.
    pub(super) start: f64,
    /// The final mark.
    pub(super) last: Divisions,
    /// The nearest marks of a dial zeroed on the bar, where none of them is safe
    /// inside the zone.
    pub(super) missed: Option<(Diameter, Diameter)>,
}

/// The part comes out of the bar, and the bar goes into the lathe.
pub(super) fn sizes_fit(job: &Job) -> Result<(), Error> {
    let (stock, part) = (&job.stock, &job.part);
    if round_size(part.limits().largest().mm()) >= round_size(stock.diameter().mm()) {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "part.limits",
            format!(
                "a largest size of {} from a bar of {}",
                part.limits().largest(),
                stock.diameter()
            ),
            "a part smaller than its bar",
            "check which of the two is right; a bar cannot grow",
        ));
    }
    if let Some(zero) = job.zero_at
        && (zero > stock.diameter() || zero <= part.limits().largest())
    {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "zero_at",
            zero.to_string(),
            format!(
                "a diameter from above {} up to the bar's {}",
                part.limits().largest(),
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

/// The instrument, the guard that it keeps from both limits, and the zone inside the guards.
pub(super) fn zone(
    job: &Job,
    cross: &Dial,
    expansion: Option<ThermalExpansion>,
    provenance: &mut Provenance,
) -> Result<(Gauge, SizeUncertainty, Limits), Error> {
    let limits = job.part.limits();
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
        .ok_or_else(|| chance::not_to_be_proved(limits, guard, &gauge))?;
    Ok((gauge, guard, guarded))
}

/// A size as a person reads it: to a thousandth of a millimetre or a ten-thousandth of an inch, where
/// one lies in the zone.
pub(super) fn readable(size: Diameter, guarded: Limits, units: Units) -> Diameter {
    let read = match units {
        Units::Metric => Diameter::from_mm((size.mm() * 1000.0).round() / 1000.0),
        Units::Inch => Diameter::from_inch((size.inch() * 10000.0).round() / 10000.0),
    };
    read.ok()
        .filter(|read| guarded.contains(*read))
        .unwrap_or(size)
}

/// The zero of the cross dial, the final mark and the passes that lead to it.
pub(super) fn datum(
    job: &Job,
    cross: &Dial,
    start: Diameter,
    guarded: Limits,
    aim: &Aim,
    metal: Metal,
) -> Result<(Datum, Passes), Error> {
    let q = cross.diameter_per_division().mm();
    let exact = cross.divisions_between(start, aim.size);
    let in_zone = |mark: i64| {
        let d = cross.diameter_at(start, Divisions::new(mark)?)?;
        Ok::<bool, Error>(guarded.contains(d) && aim.serves(d))
    };
    // A dial that is zeroed on a measured size needs no first cut to prove it, but may need one to
    // come to main marks.
    let divide = |metal: Metal| match job.zero_at {
        Some(_) => Metal {
            first_cut: false,
            ..metal
        }
        .divide()
        .or_else(|| metal.divide()),
        None => metal.divide(),
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
                zero: start,
                start: 0.0,
                last: Divisions::new(mark)?,
                missed: None,
            };
            return Ok((datum, passes));
        }
    }
    let missed = if any {
        None
    } else {
        Some(neighbours(cross, start, exact)?)
    };
    if cross.ring() == Ring::Fixed {
        return Err(match missed {
            Some((above, below)) => Error::new(
                ErrorKind::Impossible,
                "lathe.cross_slide",
                format!("marks that give {above} and {below} from {start}"),
                format!(
                    "a mark within {} to {} that gives a good part often enough",
                    guarded.smallest(),
                    guarded.largest()
                ),
                "a dial whose ring can be set, the compound slide set over for a finer feed, or a skim to another diameter for zero_at",
            ),
            None => too_little(job, start, metal, q),
        });
    }
    // The ring is set so that the aim lies on a mark, a main one where that serves.
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
                last: Divisions::new(last)?,
                missed,
            };
            return Ok((datum, passes));
        }
    }
    Err(too_little(job, start, metal, q))
}

/// The marks on both sides of the zone, the larger size first.
fn neighbours(cross: &Dial, start: Diameter, exact: f64) -> Result<(Diameter, Diameter), Error> {
    let above = cross.diameter_at(start, Divisions::from_rounded(exact.floor())?)?;
    let below = cross.diameter_at(start, Divisions::from_rounded(exact.floor() + 1.0)?)?;
    Ok((above, below))
}

#[cold]
fn too_little(job: &Job, start: Diameter, metal: Metal, q: f64) -> Error {
    let cuts = if metal.first_cut { 3.0 } else { 2.0 };
    let there = (start.mm() - job.part.limits().largest().mm()) / q;
    if there > cuts * metal.least as f64 + 2.0 {
        return Error::new(
            ErrorKind::Impossible,
            "part",
            format!(
                "cuts of {:.3} mm to {:.3} mm of depth, which is all that tool, drive, bar and preferences allow",
                metal.least as f64 * q / 2.0,
                metal.rough_most as f64 * q / 2.0
            ),
            format!(
                "cuts that divide {start} down to {} on whole marks",
                job.part.limits().largest()
            ),
            "allow deeper cuts: a live centre or a shorter overhang, a coarser feed, more power, a larger largest_depth; or a \
             tool with a smaller corner radius, which may cut lighter",
        );
    }
    Error::new(
        ErrorKind::Impossible,
        "stock.diameter",
        format!("{start} to come down to {}", job.part.limits().largest()),
        format!(
            "metal for {cuts:.0} cuts of at least {:.3} mm of depth each, that is about {:.2} mm on the diameter",
            metal.least as f64 * q / 2.0,
            metal.least as f64 * q * cuts
        ),
        "a thicker bar, or a sharper tool with a smaller corner radius: a lighter cut would rub",
    )
}
