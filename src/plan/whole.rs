//! What a depth of cut on one surface asks for, and what it costs.

use super::chance::JobPrices;
use super::clamping::Place;
use super::common::Common;
use super::datum::Datum;
use super::lengths::RUN_IN;
use super::passes::PlannedCut;
use super::quickest::paced;
use super::sheet::StepKind;
use crate::advice::depth::{self, Cut, DepthLimit, Effort};
use crate::advice::feed::FeedChoice;
use crate::advice::force::ManyCuts;
use crate::advice::spindle::SpindleChoice;
use crate::advice::stops::CutAhead;
use crate::advice::support::Held;
use crate::error::{Error, ErrorKind};
use crate::physics::section::Section;
use crate::physics::speed;
use crate::provenance::Provenance;
use crate::quantity::dial::Divisions;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Duration, Feed, PassiveForce, SpindleSpeed, WorkLength,
    round_size,
};
use crate::shop::holding::HoldingKind;
use crate::shop::tool::Tool;

/// What is the same for every depth looked at on one surface with one tool.
#[derive(Clone, Copy)]
pub(super) struct Whole<'a> {
    pub(super) common: &'a Common<'a>,
    pub(super) held: &'a Held,
    pub(super) tool: &'a Tool,
    /// The field of the job that it is.
    pub(super) path: &'static str,
    pub(super) law: &'a ManyCuts,
    /// No cut of it is planned lighter.
    pub(super) least: DepthOfCut,
    /// What is thinner already between this surface and the face.
    pub(super) outer: &'a [Section],
    pub(super) place: &'a Place<'a>,
    /// The diameter before its first cut.
    pub(super) start: Diameter,
}

/// What a planned cut asks for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Load {
    pub(super) before: Diameter,
    pub(super) depth: DepthOfCut,
    pub(super) pace: (Feed, SpindleSpeed),
    pub(super) effort: Effort,
}

impl Whole<'_> {
    /// What scrap, rework and a stop cost, by the time of about as many cuts as there will be.
    pub(super) fn costs(
        &self,
        (rough_feed, rough_step): (&FeedChoice, &SpindleChoice),
        finish_feed: &FeedChoice,
        rough_most: DepthOfCut,
        provenance: &mut Provenance,
    ) -> Result<JobPrices, Error> {
        let time = |feed: Feed| {
            speed::time_of_cut(
                WorkLength::computed_trade(self.place.reach.mm() + RUN_IN),
                feed,
                rough_step.spindle_speed,
            )
        };
        let metal = 0.5 * (self.start.mm() - self.place.surface.limits().largest().mm());
        let roughing = (metal / rough_most.mm()).ceil().max(1.0);
        let (rough, last) = (time(rough_feed.feed), time(finish_feed.feed));
        let cuts = Duration::computed_trade(roughing * rough.seconds() + 2.0 * last.seconds());
        JobPrices::of(self.common.job, cuts, last, provenance)
    }

    /// The cuts with their sizes and springs, and what each asks for; `roughing` is the same with the tool that roughs.
    pub(super) fn ahead(
        &self,
        roughing: &Self,
        datum: &Datum,
        cuts: &[PlannedCut],
        rough: (&FeedChoice, &SpindleChoice),
        finish: (&FeedChoice, &SpindleChoice),
    ) -> Result<(Vec<CutAhead>, Vec<Load>), Error> {
        let mut before = self.start;
        let pairs = cuts
            .iter()
            .map(|cut| {
                let (whole, (feed, step)) = match cut.kind {
                    StepKind::FinishCut => (self, finish),
                    _ => (roughing, rough),
                };
                let (feed, step) = paced(&self.common.job.lathe, cut.pace, feed, step);
                let after = self
                    .common
                    .cross
                    .diameter_at(datum.zero, Divisions::new(cut.mark)?)?;
                let depth = before
                    .depth_to(after)
                    .ok_or_else(|| Error::internal("a cut that takes nothing"))?;
                let effort = whole.cut(&feed, &step, before).effort(depth)?;
                let load = Load {
                    before,
                    depth,
                    pace: (feed.feed, step.spindle_speed),
                    effort,
                };
                before = after;
                let spring = effort.spring;
                Ok((CutAhead { after, spring }, load))
            })
            .collect::<Result<Vec<_>, Error>>()?;
        Ok(pairs.into_iter().unzip())
    }

    /// A cut on a bar of this diameter, from the free end to the shoulder.
    pub(super) fn cut(&self, feed: &FeedChoice, step: &SpindleChoice, before: Diameter) -> Cut<'_> {
        let overhang = self.held.overhang.mm();
        let outer: f64 = self.outer.iter().map(|section| section.length().mm()).sum();
        Cut {
            law: self.law,
            feed: feed.feed,
            spindle_speed: step.spindle_speed,
            before,
            held: self.held,
            root: &self.place.root,
            from: WorkLength::computed_trade(overhang - self.place.reach.mm()),
            to: WorkLength::computed_trade(round_size(overhang - outer)),
            outer: self.outer,
        }
    }

    /// The passive force under which a bar of this diameter springs by `spring`; none where no force
    /// in reach does.
    pub(super) fn largest_passive_force(
        &self,
        finished: Diameter,
        (feed, step): (&FeedChoice, &SpindleChoice),
        spring: DiameterError,
    ) -> Result<Option<PassiveForce>, Error> {
        let per_newton = self.cut(feed, step, finished).spring_per_newton(finished)?;
        Ok(PassiveForce::from_newton(spring.mm() / per_newton.mm()).ok())
    }

    /// The error for a bar that springs too far under the lightest cut of its tool, as it is held.
    #[cold]
    fn springs_too_far(&self) -> Error {
        let least = DepthOfCut::computed_trade(round_size(self.least.mm()));
        let (name, remedy) = match self.held.kind {
            HoldingKind::Chuck => (
                "chuck",
                "name \"chuck_and_centre\"; else a shorter part, or a tool with a smaller corner radius",
            ),
            kind => (
                kind.name(),
                "a steady, which the question \"support\" reckons; else a shorter or thicker part, a wider zone, or a tool \
                 with a smaller corner radius",
            ),
        };
        let (field, given) = match &self.common.job.holding {
            Some(_) => (
                "holding",
                format!("{name:?}, a bar that springs too far in it"),
            ),
            None => (self.path, format!("a tool that cuts from {least} of depth")),
        };
        let expected =
            format!("a holding in which the bar bears a cut of {least}, the lightest of this tool");
        Error::new(ErrorKind::Impossible, field, given, expected, remedy)
    }

    /// The largest depth, in whole divisions, that every limit allows, and the limit that stops it.
    pub(super) fn most(
        &self,
        feed: &FeedChoice,
        step: &SpindleChoice,
        finished: Diameter,
        spring: Option<DiameterError>,
    ) -> Result<(DepthOfCut, DepthLimit), Error> {
        let per_mark = self.common.cross.diameter_per_division().mm() / 2.0;
        let depth_of = |marks: i64| DepthOfCut::computed_trade(marks as f64 * per_mark);
        // The thinnest bar that a cut can meet: what it leaves is the finished size. The thickest is the
        // bar as it comes.
        let thin = |depth: DepthOfCut| {
            let before = Diameter::computed_trade(finished.mm() + 2.0 * depth.mm());
            self.cut(feed, step, before)
        };
        let most_asked = self.common.job.preference(|p| p.largest_depth());
        let beyond_asked = |depth: DepthOfCut| {
            most_asked.is_some_and(|most| round_size(depth.mm()) > round_size(most.mm()))
        };
        let forbids = |marks: i64| {
            let depth = depth_of(marks);
            if beyond_asked(depth) {
                return Ok(Some(DepthLimit::Asked));
            }
            thin(depth).forbids(depth, &self.common.job.lathe, spring, self.start)
        };
        let metal = (self.start.mm() - finished.mm()) / 2.0;
        let all = (metal / per_mark).ceil() as i64 + 1;
        let least = ((self.least.mm() / per_mark) - 1e-9).ceil() as i64;
        if let Some(limit) = forbids(least)? {
            return Err(match limit {
                DepthLimit::Deflection => self.springs_too_far(),
                _ => {
                    let error = depth::no_depth(limit, self.least);
                    self.common.job.names_the_tool(error, self.path)
                }
            });
        }
        // Mostly the chip alone forbids the next depth, which costs nothing to look at; then one look at the
        // other limits is enough. Beyond 90 deg the straight edge pulls, and the spring may fall again with
        // the depth: there every step of the search looks at all of them.
        let mut limit = None;
        let tightens = spring.is_none() || self.tool.cutting_edge_angle().degrees() <= 90.0;
        let mut too_many = all;
        if tightens {
            let by_chip = last_that_fits(least, all, |marks| {
                let depth = depth_of(marks);
                Ok(beyond_asked(depth) || thin(depth).ribbons(depth))
            })?;
            limit = forbids(by_chip)?;
            if limit.is_none() {
                if by_chip + 1 < all {
                    limit = forbids(by_chip + 1)?;
                }
                return Ok((depth_of(by_chip), limit.unwrap_or(DepthLimit::Metal)));
            }
            too_many = by_chip;
        }
        let fits = last_that_fits(least, too_many, |marks| {
            let found = forbids(marks)?;
            limit = found.or(limit);
            Ok(found.is_some())
        })?;
        Ok((depth_of(fits), limit.unwrap_or(DepthLimit::Metal)))
    }
}

/// By halving, the last number before `too_many` that is not forbidden; `fits` is not.
fn last_that_fits(
    mut fits: i64,
    mut too_many: i64,
    mut forbidden: impl FnMut(i64) -> Result<bool, Error>,
) -> Result<i64, Error> {
    while too_many - fits > 1 {
        let middle = fits + (too_many - fits) / 2;
        match forbidden(middle)? {
            true => too_many = middle,
            false => fits = middle,
        }
    }
    Ok(fits)
}
