//! What a picture shows of one clamping, in millimetres: the bar, the part, the cuts, the spring.
//!
//! Places along the bar are depths: zero on the finished face, positive towards the chuck.

use super::clamping::{Clamping, Grip};
use super::ends::parted_at;
use super::heading::Figures;
use super::lengths::RUN_IN;
use super::sheet::StepKind;
use super::turning::Turning;
use crate::error::Error;
use crate::quantity::{Diameter, DiameterError, Tolerance, WorkLength, round_size};
use crate::shop::surface::Surface;

/// A place on an outline: how deep from the finished face, and the diameter there.
pub(super) type Point = (f64, f64);

/// So many places of each surface at which the spring is looked at.
const STATIONS: usize = 21;

/// One cut, from the free end to where its feed ends.
pub(super) struct CutLine {
    pub(super) number: usize,
    pub(super) roughing: bool,
    pub(super) diameter: Diameter,
    pub(super) depth: f64,
}

/// The spring of the last cut along one surface.
pub(super) struct SpringLine {
    pub(super) nominal: Diameter,
    pub(super) zone: Tolerance,
    /// Depth and spring on the diameter.
    pub(super) at: Vec<(f64, DiameterError)>,
}

impl SpringLine {
    /// The least and the largest spring along it.
    pub(super) fn range(&self) -> (DiameterError, DiameterError) {
        let all = self.at.iter().map(|(_, spring)| spring.mm());
        let (low, high) = all.fold((f64::INFINITY, 0.0_f64), |(low, high), mm| {
            (low.min(mm), high.max(mm))
        });
        (
            DiameterError::computed_trade(low.min(high)),
            DiameterError::computed_trade(high),
        )
    }
}

/// What is seen of one clamping.
pub(super) struct Outline<'a> {
    pub(super) clamp: &'a Clamping<'a>,
    /// The bar before its cuts, from the end inwards; of a part turned round what is still bar.
    pub(super) bar: Vec<Point>,
    /// What it has become after them, from the face to the jaws.
    pub(super) part: Vec<Point>,
    /// How deep the jaws are, or the other face between two centres; how long the jaws or the dog grip, and on which
    /// diameter.
    pub(super) jaws: f64,
    pub(super) grip: f64,
    pub(super) gripped: Diameter,
    /// How far the line of a cut begins before the face.
    pub(super) run_in: f64,
    pub(super) cuts: Vec<CutLine>,
    /// The diameters at which the cross dial reads zero.
    pub(super) zeros: Vec<Diameter>,
    /// The surfaces, in the order in which they are turned, each with the depths it lies between.
    pub(super) surfaces: Vec<(&'a Surface, f64, f64)>,
    pub(super) springs: Vec<SpringLine>,
    /// The depths between which a blade parts the part off, where one does.
    pub(super) parting: Option<(f64, f64)>,
}

impl<'a> Outline<'a> {
    /// The clamping at this place of the list, its cuts numbered after those before it.
    pub(super) fn of(figures: &'a Figures<'a>, at: usize) -> Result<Self, Error> {
        let (Some(clamp), Some(turnings)) = (figures.clampings.get(at), figures.turnings.get(at))
        else {
            return Err(Error::internal("a clamping that is not there"));
        };
        let job = figures.common.job;
        let stock = job.stock.diameter().mm();
        let jaws = clamp.held.overhang.mm();
        // Between two centres both faces are finished already.
        let faced = match clamp.driven {
            Some(_) => 0.0,
            None => clamp.facing.mm(),
        };
        let mut bar = vec![(-faced, stock), (jaws, stock)];
        let mut part;
        match clamp.overall {
            None => {
                part = profile(job.part.surfaces());
                part.push((end_of(&part), stock));
            }
            Some((overall, _)) => {
                part = profile(job.part.other_end());
                let mut first = profile(job.part.surfaces());
                let collar = round_size(overall.mm() - end_of(&first));
                if collar > end_of(&part) {
                    part.push((end_of(&part), stock));
                    part.push((collar, stock));
                }
                first.reverse();
                part.extend(first.iter().map(|(depth, d)| (overall.mm() - depth, *d)));
                bar[1].0 = collar.min(jaws);
            }
        }
        let (grip, gripped) = match clamp.grip {
            Grip::Stock { length } => (length, job.stock.diameter()),
            Grip::Turned {
                diameter, length, ..
            } => (length, diameter),
        };
        let mut outline = Self {
            clamp,
            bar,
            part: up_to(&part, jaws),
            jaws,
            grip: grip.mm(),
            gripped,
            run_in: RUN_IN,
            cuts: Vec::new(),
            zeros: Vec::new(),
            surfaces: clamp
                .places
                .iter()
                .map(|place| (place.surface, place.outer, place.reach.mm()))
                .collect(),
            springs: Vec::new(),
            parting: parted_at(job, clamp)
                .map(|(at, blade)| (at.mm(), round_size(at.mm() + blade.mm()))),
        };
        let before = figures.turnings[..at].iter().flatten();
        let mut number = before.map(|turning| turning.cuts.len()).sum();
        for turning in turnings {
            outline.take(figures, turning, &mut number)?;
        }
        Ok(outline)
    }

    fn take(
        &mut self,
        figures: &Figures<'_>,
        turning: &Turning<'_>,
        number: &mut usize,
    ) -> Result<(), Error> {
        let common = &figures.common;
        let depth = common.carriage.travel_at(turning.carriage.stop);
        for (at, cut) in turning.cuts.iter().enumerate() {
            *number += 1;
            self.cuts.push(CutLine {
                number: *number,
                roughing: cut.kind == StepKind::RoughCut,
                diameter: turning.expected_after(at, common.cross)?,
                depth,
            });
        }
        let zero = turning.reads_zero_at(figures.common.cross);
        if !self.zeros.contains(&zero) {
            self.zeros.push(zero);
        }
        self.springs.push(self.spring(figures, turning)?);
        Ok(())
    }

    /// The spring of the last cut of a surface.
    fn spring(&self, figures: &Figures<'_>, turning: &Turning<'_>) -> Result<SpringLine, Error> {
        let (common, place) = (&figures.common, &turning.place);
        let n = turning.cuts.len();
        let before = match n {
            0 => return Err(Error::internal("a surface without a cut")),
            1 => turning.before.start,
            _ => turning.expected_after(n - 2, common.cross)?,
        };
        let after = turning.expected_after(n - 1, common.cross)?;
        let depth = before
            .depth_to(after)
            .ok_or_else(|| Error::internal("a cut that takes nothing"))?;
        let whole = turning.whole(common, self.clamp);
        let cut = whole.cut(&turning.finish_feed, &turning.finish_step, before);
        let mut at = Vec::with_capacity(STATIONS);
        for station in 0..STATIONS {
            let share = station as f64 / (STATIONS - 1) as f64;
            let along = place.outer + share * (place.reach.mm() - place.outer);
            let from_chuck = WorkLength::computed_trade(round_size(self.jaws - along));
            at.push((along, cut.spring_at(depth, from_chuck)?));
        }
        Ok(SpringLine {
            nominal: place.surface.diameter(),
            zone: place.surface.limits().tolerance(),
            at,
        })
    }

    /// The largest diameter that is shown.
    pub(super) fn largest(&self) -> f64 {
        let bar = self.bar.iter().chain(&self.part).map(|(_, d)| *d);
        let zeros = self.zeros.iter().map(|zero| zero.mm());
        bar.chain(zeros).fold(self.gripped.mm(), f64::max)
    }
}

/// The outline of the surfaces of one end, from its face inwards.
fn profile(surfaces: &[Surface]) -> Vec<Point> {
    let mut points = Vec::with_capacity(4 * surfaces.len());
    let mut outer = 0.0;
    for surface in surfaces {
        let (length, large) = (surface.length().mm(), surface.limits().middle().mm());
        let small = surface.small_diameter().map_or(large, Diameter::mm);
        let at = |along: f64| small + (large - small) * along / length;
        match surface.chamfer() {
            // A leg longer than the radius or the surface ends where they do.
            Some(leg) => {
                let leg = leg.mm().min(0.5 * small).min(length);
                points.push((outer, at(leg) - 2.0 * leg));
                points.push((outer + leg, at(leg)));
            }
            None => points.push((outer, small)),
        }
        match surface.undercut() {
            Some(groove) => {
                let from = length - groove.width().mm().min(length);
                let bottom = (large - 2.0 * groove.depth().mm()).max(0.0);
                points.push((outer + from, at(from)));
                points.push((outer + from, bottom));
                points.push((outer + length, bottom));
            }
            None => points.push((outer + length, large)),
        }
        outer = round_size(outer + length);
    }
    points
}

fn end_of(points: &[Point]) -> f64 {
    points.last().map_or(0.0, |(depth, _)| *depth)
}

/// An outline as far as this depth; it goes straight on where it ends before.
fn up_to(points: &[Point], depth: f64) -> Vec<Point> {
    let mut seen: Vec<Point> = Vec::with_capacity(points.len() + 1);
    for (z, d) in points {
        if *z > depth {
            let (from, before) = seen.last().copied().unwrap_or((0.0, *d));
            let share = (depth - from) / (z - from);
            seen.push((depth, before + share * (d - before)));
            return seen;
        }
        seen.push((*z, *d));
    }
    if let Some((z, d)) = seen.last().copied()
        && z < depth
    {
        seen.push((depth, d));
    }
    seen
}
