//! The figures of one surface, before any word: speed, feeds, zone and datum, passes, chance.

use std::borrow::Cow;
use std::fmt;

use super::chance::{Aim, Chance, JobPrices, Rests, Roughed};
use super::clamping::{Clamping, Place};
use super::common::Common;
use super::datum::{Before, Datum, datum, readable, zone};
use super::job::Job;
use super::lengths::{CarriagePlan, RUN_IN, carriage_plan};
use super::passes::{First, Metal, PlannedCut};
use super::quickest::{Pace, paced, ways};
use super::readout::is_readout;
use super::sheet::{StepKind, Way, WayCost};
use super::take::Done;
use super::whole::{Load, Whole};
use crate::advice::depth::{self, DepthLimit, Effort, SpringLeft};
use crate::advice::feed::{self, FeedChoice};
use crate::advice::reach::LEAST_GOOD;
use crate::advice::size_budget::SizeBudget;
use crate::advice::spindle::SpindleChoice;
use crate::advice::support::SPRING_SHARE;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::engagement::edge_lead;
use crate::physics::finish::{self, TheoreticalRoughness};
use crate::physics::speed;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::quantity::text;
use crate::quantity::unit::Units;
use crate::quantity::{
    DepthOfCut, Diameter, DiameterError, Duration, Feed, Quantity, SizeUncertainty, Travel,
    WorkLength, round_size,
};
use crate::shop::dial::{Dial, Ring};
use crate::shop::gauge::Gauge;
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::{CHANGE_TIME, EFFICIENCY};
use crate::standards::instrument::Instrument;
use crate::standards::limits::Limits;

/// All figures of one surface.
pub(super) struct Turning<'a> {
    pub(super) place: Place<'a>,
    pub(super) before: Before,
    pub(super) finish_feed: FeedChoice,
    pub(super) rough_step: SpindleChoice,
    pub(super) finish_step: SpindleChoice,
    pub(super) gauge: Gauge,
    pub(super) chance: Chance,
    pub(super) costs: JobPrices,
    pub(super) guard: SizeUncertainty,
    pub(super) guarded: Limits,
    pub(super) datum: Datum,
    pub(super) aim: Aim,
    pub(super) cuts: Vec<PlannedCut>,
    /// What the cuts ask for as they were planned.
    loads: Vec<Load>,
    /// Whether both finishing cuts go over the bar once more at their marks.
    pub(super) spring_passes: bool,
    /// What the spring leaves on the diameter in the last cut.
    pub(super) spring_left: SpringLeft,
    /// What both ways of dividing would cost, where that was asked.
    pub(super) ways: Vec<WayCost>,
    /// What was measured of it already, if anything was.
    pub(super) done: Option<Done>,
    /// Of a fixed ring: what is unsure once its marks are counted from a measured size.
    pub(super) counted: Option<SizeBudget>,
    pub(super) rough_most: DepthOfCut,
    pub(super) rough_limit: DepthLimit,
    /// Most that a cut of a cone may take, by the tool that is in the holder when the diameters are done.
    pub(super) cone_most: DepthOfCut,
    pub(super) roughness: TheoreticalRoughness,
    pub(super) carriage: CarriagePlan,
}

impl<'a> Turning<'a> {
    pub(super) fn of(
        common: &Common<'a>,
        clamping: &Clamping<'a>,
        place: &Place<'a>,
        before: Before,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) -> Result<Self, Error> {
        let (job, cross, units) = (common.job, common.cross, common.units);
        let surface = place.surface;
        if let Some(class) = surface.class() {
            let found = class.deviations(surface.diameter())?;
            provenance.record("limits of the class", &class, found.source, found.standing);
        }
        let (gauge, guard, guarded) = zone(
            job,
            surface.limits(),
            &place.at.path(&job.part, "limits"),
            cross,
            common.expansion,
            provenance,
        )?;
        let (rough_feed, finish_feed) = (&common.rough_feed, &place.finish_feed);
        let (liked, least_depth) = (place.liked, place.least);
        let changes = job.changes_tools();
        let step_at = |diameter: Diameter| {
            common.step_at(
                &common.finishing,
                diameter,
                &clamping.holding,
                clamping.whip,
            )
        };
        let rough_step = common.step_at(
            &common.roughing,
            before.start,
            &clamping.holding,
            clamping.whip,
        )?;
        // Where the tool is changed, the step is what its own speed asks for.
        let slow_step = match changes {
            true => step_at(before.start)?,
            false => rough_step.clone(),
        };
        let [roughing, whole] = wholes(common, clamping, place, before.start);
        let finish_most = whole
            .most(finish_feed, &slow_step, guarded.middle(), None)?
            .0;
        let spring_share = provenance.open(
            "spring of a roughing cut over the finishing depth",
            &depth::ROUGH_SPRING,
        );
        let rough_spring = DiameterError::computed_trade(2.0 * spring_share * liked.mm());
        let (rough_most, rough_limit) = roughing.most(
            rough_feed,
            &rough_step,
            guarded.middle(),
            Some(rough_spring),
        )?;
        provenance.open("largest depth over feed", &depth::CHIP_WINDOW);
        if let Some(motor) = job.lathe.power() {
            provenance.record(
                "power of the motor",
                &motor,
                "given by the asker",
                Standing::Given,
            );
            if job.lathe.efficiency().is_none() {
                provenance.open("efficiency of the drive", &EFFICIENCY);
            }
        } else {
            push_once(
                cautions,
                Caution::new(
                    Severity::Note,
                    "power_unknown",
                    "The power of the lathe is not given: depths are not checked against it. Listen to the motor.",
                ),
            );
        }

        let q = cross.diameter_per_division().mm();
        let marks = |depth: DepthOfCut, up: bool| {
            let exact = round_size(2.0 * depth.mm()) / q;
            // A size compares after rounding, so that 0.1 mm on a dial of 0.02 mm is five marks, not four.
            let exact = if (exact - exact.round()).abs() < 1e-7 {
                exact.round()
            } else {
                exact
            };
            (if up { exact.ceil() } else { exact.floor() }) as i64
        };
        let rough_asked = match job.preference(|p| p.depth()) {
            Some(asked) => {
                let least = least_depth.max(roughing.least);
                depth_asked_fits(job, cross, asked, least, (rough_most, rough_limit))?;
                Some(marks(asked, false))
            }
            None => None,
        };
        let light = marks(DepthOfCut::computed_trade(2.0 * liked.mm()), false);
        let metal = Metal {
            start: before.mark,
            last: 0,
            rough_most: marks(rough_most, false),
            rough_asked,
            first_most: light.max(rough_asked.unwrap_or(0)).max(
                match marks(under_skin(job, &before), true) {
                    0 => 0,
                    // From between two marks it goes on to the next.
                    under => under + 1,
                },
            ),
            least: marks(least_depth, true),
            rough_least: marks(roughing.least, true),
            finish_most: marks(
                DepthOfCut::computed_trade((1.5 * liked.mm()).min(finish_most.mm())),
                false,
            )
            .max(marks(least_depth, true)),
            finish_liked: marks(liked, true),
            first_least: marks(under_skin(job, &before), true),
            skin: job.stock.skin().is_some(),
            first: First::Measured,
            changes,
        };
        if metal.first_least > metal.rough_most {
            return Err(under_skin_too_deep(job, &before, rough_most, rough_limit));
        }
        let rests = Rests {
            cross,
            gauge,
            expansion: common.expansion,
            start: before.start,
            measured: before.measured,
            proved: before.turned,
            anew: before.anew,
            asked: job
                .preference(|p| p.least_good())
                .unwrap_or(LEAST_GOOD.value),
            counted_to: None,
            correcting: place.correcting,
        };
        let costs = whole.costs(
            (rough_feed, &rough_step),
            finish_feed,
            rough_most,
            provenance,
        )?;
        let last_cut = whole.cut(
            finish_feed,
            &slow_step,
            Diameter::computed_trade(guarded.middle().mm() + 2.0 * liked.mm()),
        );
        let once = last_cut.spring_left(liked, false)?;
        let allowed = provenance.open("share of the zone that spring may use", &SPRING_SHARE);
        let spring_passes = once.along.mm() > allowed * surface.limits().tolerance().mm()
            && 0.5 * once.along.mm() >= place.correcting.mm();
        let left = match spring_passes {
            true => last_cut.spring_left(liked, true)?,
            false => once,
        };
        let size_ask = rests.measured(guarded.middle(), liked, left);
        // A readout that is kept shows what it showed before: the spring of the surface before is in it.
        let kept = before.turned && is_readout(cross);
        let spring = match job.corrects_for_spring() {
            true if kept => before.spring,
            true => left.most,
            false => DiameterError::computed_trade(0.0),
        };
        let correction =
            DiameterError::computed_trade(round_size(spring.mm() - before.spring.mm()));
        let mut aim = rests.aim(
            job,
            surface.limits(),
            guarded,
            &size_ask,
            costs.prices,
            provenance,
        )?;
        aim.size = readable(aim.size, guarded, units);
        let counted = match cross.ring() {
            Ring::Fixed => {
                let known = size_ask.clone().with_marks_counted();
                let known = known.budget(&mut Provenance::deaf())?;
                aim.within_marks(guarded, q, known.budget().spread(), units);
                Some(known)
            }
            Ring::Settable | Ring::Readout => None,
        };
        let rests = Rests {
            asked: aim.asked,
            counted_to: counted.is_some().then_some(aim.size),
            ..rests
        };
        let (datum, passes) = datum(
            &before,
            cross,
            surface.limits(),
            guarded,
            &aim,
            metal,
            correction,
        )?;
        let mut finish_feed = finish_feed.clone();

        let before_finish = cross.diameter_at(
            datum.zero,
            Divisions::new(2 * passes.finish[0] - passes.finish[1])?,
        )?;
        let finishing =
            DepthOfCut::computed_trade((passes.finish[1] - passes.finish[0]) as f64 * q / 2.0);
        let faster = step_at(before_finish)?;
        let bearable = whole
            .cut(&finish_feed, &faster, before_finish)
            .forbids(finishing, &job.lathe, None, before_finish)?
            .is_none();
        let finish_step = if bearable && changes {
            faster
        } else if bearable {
            finishing_step(
                common,
                (place.reach, before_finish),
                &rough_step,
                &faster,
                &finish_feed,
                provenance,
            )
        } else {
            slow_step
        };
        let mut cuts = passes.cuts(changes);
        let mut finish_step = finish_step;
        let ways = ways(
            &whole,
            &datum,
            &metal,
            &Pace {
                rough: (rough_feed, &rough_step),
                finish: (&finish_feed, &finish_step),
                spring: rough_spring,
                measured: before.measured,
            },
            &cuts,
            provenance,
            || Ok(step_at(guarded.middle())?.spindle_speed),
        )?;
        let mut before_finish = before_finish;
        let mut finishing = finishing;
        if let Some(caution) = ways.not_compared {
            push_once(cautions, caution);
        }
        if let Some(quick) = ways.chosen {
            cuts = quick;
            let end = cuts.len();
            let marks = cuts[end - 1].mark - cuts[end - 2].mark;
            finishing = DepthOfCut::computed_trade(marks as f64 * q / 2.0);
            before_finish =
                cross.diameter_at(datum.zero, Divisions::new(cuts[end - 2].mark - marks)?)?;
            let (feed, step) = paced(&job.lathe, cuts[end - 1].pace, &finish_feed, &finish_step);
            (finish_feed, finish_step) = (feed.into_owned(), step.into_owned());
        }
        for cut in &mut cuts {
            cut.between = datum.between;
        }
        let (mut ahead, loads) = whole.ahead(
            &roughing,
            &datum,
            &cuts,
            (rough_feed, &rough_step),
            (&finish_feed, &finish_step),
        )?;
        let left = whole
            .cut(&finish_feed, &finish_step, before_finish)
            .spring_left(finishing, spring_passes)?;
        if spring_passes {
            for cut in ahead.iter_mut().rev().take(2) {
                cut.spring = left.most;
            }
        }
        let roughed = match changes {
            true => Roughed::before(&cuts, before.measured),
            false => Roughed::default(),
        };
        let chance = Chance::of(
            job,
            surface.limits(),
            &rests,
            (&ahead, &roughed),
            left.along,
            &costs,
            provenance,
        )?;
        chance.cautions(surface.diameter(), &aim, &size_ask, units, cautions)?;
        let mut fed = vec![
            paced(&job.lathe, None, rough_feed, &rough_step),
            paced(&job.lathe, None, &finish_feed, &finish_step),
        ];
        for cut in cuts.iter().filter(|cut| cut.pace.is_some()) {
            fed.push(paced(&job.lathe, cut.pace, rough_feed, &rough_step));
        }
        let carriage = carriage_plan(
            place.shoulder.travel(common.carriage),
            place.outer_turned,
            common.carriage,
            before
                .start
                .depth_to(place.surface.limits().smallest())
                .and_then(|depth| edge_lead(depth, job.least_edge_angle())),
            &fed.iter()
                .map(|(f, s)| (f.as_ref(), s.as_ref()))
                .collect::<Vec<_>>(),
        )?;
        let roughness = roughness(job, finish_feed.feed, cautions)?;
        for caution in &rough_step.cautions {
            push_once(cautions, caution.clone());
        }
        room_to_measure(&gauge, place, units, cautions);
        tight_length(place, common.carriage, units, cautions);
        speed_limits_known(job, &clamping.holding, cautions);
        coarse_dial(&guarded, q, cautions);
        tool_cautions(job, cautions);
        hand_cautions(
            job,
            carriage.feed_off.is_some(),
            &[(&finish_feed, &finish_step), (rough_feed, &rough_step)],
            common.carriage,
            cautions,
            provenance,
        )?;
        Ok(Self {
            place: place.clone(),
            before,
            finish_feed,
            rough_step,
            finish_step,
            gauge,
            chance,
            costs,
            guard,
            guarded,
            datum,
            aim,
            cuts,
            loads,
            spring_passes,
            spring_left: left,
            ways: ways.costs,
            done: None,
            counted,
            rough_most,
            rough_limit,
            cone_most: if changes { finish_most } else { rough_most },
            roughness,
            carriage,
        })
    }

    /// What is the same for every depth looked at on it with the tool that finishes.
    #[cfg(feature = "picture")]
    pub(super) fn whole<'b>(
        &'b self,
        common: &'b Common<'b>,
        clamping: &'b Clamping<'b>,
    ) -> Whole<'b> {
        let [_, finishing] = wholes(common, clamping, &self.place, self.before.start);
        finishing
    }

    /// The same with the tool of a cut.
    pub(super) fn whole_of<'b>(
        &'b self,
        cut: &PlannedCut,
        common: &'b Common<'b>,
        clamping: &'b Clamping<'b>,
    ) -> Whole<'b> {
        let [roughing, finishing] = wholes(common, clamping, &self.place, self.before.start);
        match cut.kind == StepKind::FinishCut || cut.after_change {
            true => finishing,
            false => roughing,
        }
    }

    /// How many cuts are made before the tool is changed; none where one tool does all.
    pub(super) fn change_at(&self) -> Option<usize> {
        self.cuts.iter().position(|cut| cut.after_change)
    }

    /// The size before the cut at this place: what was measured there, or what is expected.
    pub(super) fn size_before(&self, at: usize, cross: &Dial) -> Result<Diameter, Error> {
        match self.done.as_ref().filter(|done| done.cuts == at) {
            Some(done) => Ok(done.size),
            None => match at.checked_sub(1) {
                Some(before) => self.expected_after(before, cross),
                None => Ok(self.before.start),
            },
        }
    }

    /// The feed and the spindle step of a cut.
    pub(super) fn pace_of<'b>(
        &'b self,
        common: &'b Common<'_>,
        cut: &PlannedCut,
    ) -> (Cow<'b, FeedChoice>, Cow<'b, SpindleChoice>) {
        let (feed, step) = match cut.kind == StepKind::FinishCut || cut.after_change {
            true => (&self.finish_feed, &self.finish_step),
            false => (&common.rough_feed, &self.rough_step),
        };
        paced(&common.job.lathe, cut.pace, feed, step)
    }

    /// The shortest and the longest that the shoulder may lie from the face: until the one before it is turned, its
    /// length shows from there only.
    pub(super) fn lengths_from_the_face(&self) -> [WorkLength; 2] {
        let limits = self.place.length_limits;
        [limits.shortest(), limits.longest()].map(|length| {
            WorkLength::computed_trade(round_size(length.mm() + self.place.outer_turned))
        })
    }

    /// The size that marks are counted to from a measured size, and whether whole marks will do; else tenths of one.
    pub(super) fn counted_to(&self, cross: &Dial) -> Result<(Diameter, bool), Error> {
        let last = self.diameter_at(cross, self.datum.last.count())?;
        let mark = cross.diameter_per_division().mm();
        if cross.ring() != Ring::Fixed {
            return Ok((last, true));
        }
        let narrow = round_size(mark) > round_size(self.guarded.tolerance().mm());
        let (step, whole) = match narrow || self.between() != 0 {
            true => (0.1 * mark, false),
            false => (mark, true),
        };
        // By the sheet it is the mark of the last cut.
        let near = round_size((last.mm() - self.aim.size.mm()).abs()) <= round_size(0.5 * step);
        Ok((if near { self.aim.size } else { last }, whole))
    }

    /// The diameter at a mark of the cross dial.
    pub(super) fn diameter_at(&self, cross: &Dial, mark: i64) -> Result<Diameter, Error> {
        cross.diameter_at(self.datum.zero, Divisions::new(mark)?)
    }

    /// What a cut of the plan asks for, for the words beside it.
    pub(super) fn effort(
        &self,
        common: &Common<'_>,
        clamping: &Clamping<'_>,
        cut: &PlannedCut,
        before: Diameter,
        depth: DepthOfCut,
    ) -> Result<Effort, Error> {
        let (feed, step) = self.pace_of(common, cut);
        let pace = (feed.feed, step.spindle_speed);
        let planned = self
            .loads
            .iter()
            .find(|load| load.before == before && load.depth == depth && load.pace == pace);
        if let Some(load) = planned {
            return Ok(load.effort);
        }
        self.whole_of(cut, common, clamping)
            .cut(&feed, &step, before)
            .effort(depth)
    }

    /// Time of one cut up to the shoulder, run-in included.
    pub(super) fn time_of_cut(&self, feed: Feed, step: &SpindleChoice) -> Duration {
        speed::time_of_cut(
            WorkLength::computed_trade(self.place.reach.mm() + RUN_IN),
            feed,
            step.spindle_speed,
        )
    }

    /// Where its cuts end on the dial and in size, for the surface turned next from here: all of them, or those before
    /// the tool is changed.
    pub(super) fn leaves(&self, cross: &Dial) -> Result<Before, Error> {
        let change = self.change_at().and_then(|change| change.checked_sub(1));
        let (last, between) = match change.and_then(|last| self.cuts.get(last)) {
            Some(cut) => (cut.mark, cut.between),
            None => (self.datum.last.count(), self.between()),
        };
        Ok(Before {
            start: self.diameter_at(cross, last)?,
            zero: self.reads_zero_at(cross),
            mark: last as f64 + f64::from(between) / 10.0,
            measured: true,
            turned: true,
            spring: self.leaves_spring(),
            anew: self.before.anew || self.done.is_some(),
        })
    }

    /// No size measured after a cut of it is larger: what the bar was before, and what that is not known by.
    pub(super) fn thickest(&self, provenance: &mut Provenance) -> Diameter {
        let start = self.before.start.mm();
        let mut unsure = provenance
            .open("what a bar may be thicker than it was called", &THICKER)
            .mm();
        if !self.before.measured {
            let share =
                provenance.open("the same of one not measured, by its diameter", &THICKER_BY);
            unsure += share * start;
        }
        Diameter::computed_trade(round_size(start + unsure))
    }

    /// From a smaller size on the last cut to this target would rub.
    pub(super) fn rubs_below(&self, target: Diameter) -> Diameter {
        Diameter::computed_trade(round_size(target.mm() + 2.0 * self.place.correcting.mm()))
    }

    /// A smaller size before the last cut to this target is good already, or lost.
    pub(super) fn never_cut_below(&self, target: Diameter) -> Diameter {
        self.place
            .surface
            .limits()
            .largest()
            .min(self.rubs_below(target))
    }

    /// By how much sizes along the bar may differ before the last cut: a third of the zone, or what the instrument
    /// alone may make them differ by where that is more. Judgement, no source.
    pub(super) fn uneven(&self) -> DiameterError {
        let third = self.place.surface.limits().tolerance().mm() / 3.0;
        DiameterError::computed_trade(third.max(2.0 * self.guard.mm()))
    }

    /// Tenths of a mark by which the readings to come lie beyond their marks. The zero of `datum` is then
    /// where a dial would read zero that read the same sizes without them.
    pub(super) fn between(&self) -> u8 {
        self.cuts.last().map_or(0, |cut| cut.between)
    }

    /// The diameter at which the dial reads zero.
    pub(super) fn reads_zero_at(&self, cross: &Dial) -> Diameter {
        match self.between() {
            0 => self.datum.zero,
            tenths => beyond(self.datum.zero, cross, -i64::from(tenths)),
        }
    }

    /// The spring of the bar that sizes read from its zero hold.
    pub(super) fn leaves_spring(&self) -> DiameterError {
        DiameterError::computed_trade(round_size(
            self.before.spring.mm() + self.datum.correction.mm(),
        ))
    }
}

/// What is the same for every depth looked at on a surface: with the tool that roughs, and with the one that finishes.
fn wholes<'a>(
    common: &'a Common<'a>,
    clamping: &'a Clamping<'a>,
    place: &'a Place<'a>,
    start: Diameter,
) -> [Whole<'a>; 2] {
    let job = common.job;
    let [rough_path, path] = job.tool_paths();
    let finishing = Whole {
        common,
        held: &clamping.held,
        tool: &job.tool,
        path,
        law: &clamping.law,
        least: place.least,
        outer: &place.thinner,
        place,
        start,
    };
    let roughing = match &clamping.rough_law {
        None => finishing,
        Some(law) => Whole {
            tool: job.rougher(),
            path: rough_path,
            law,
            least: common.rough_least,
            outer: &[],
            ..finishing
        },
    };
    [roughing, finishing]
}

/// The smallest and the largest size that a sheet calls good: as many figures as it prints, and both still keep the
/// guard; none where no such size does.
pub(super) fn good_sizes(
    limits: Limits,
    guard: SizeUncertainty,
    units: Units,
) -> Option<[Diameter; 2]> {
    let inside = limits.inside(guard)?;
    let least = printed(inside.smallest(), units, f64::ceil);
    let most = printed(inside.largest(), units, f64::floor);
    (least <= most).then_some([least, most])
}

/// A size of as many figures as a sheet prints, rounded in this way.
pub(super) fn printed(size: Diameter, units: Units, round: impl Fn(f64) -> f64) -> Diameter {
    let kind = Diameter::ROW.kind();
    let unit = kind.unit(units);
    let scale = 10.0_f64.powi(kind.places(units) as i32);
    let exact = scale * unit.from_trade(size.mm());
    // What is a printed size but for the rounding of a computer is that size.
    let near = (exact - exact.round()).abs() < 1e-5;
    let figures = if near { exact.round() } else { round(exact) };
    Diameter::computed_trade(round_size(unit.to_trade(figures, scale)))
}

/// A bar may be thicker than it was called by so much, ...
const THICKER: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.5),
    "judgement, no source",
    Standing::Estimate,
);

/// ... and where nobody measured it by this share of its diameter too.
const THICKER_BY: Sourced<f64> = Sourced::new(
    0.02,
    "judgement, no source: a hot-rolled bar is known to about a millimetre",
    Standing::Estimate,
);

/// Width of a micrometer's anvils and a little room, in mm: DIN 863-1, 6.5 mm, from memory.
const ANVILS: f64 = 7.5;

/// Warns where the anvils of a micrometer do not fit beside the shoulder.
fn room_to_measure(gauge: &Gauge, place: &Place<'_>, units: Units, cautions: &mut Vec<Caution>) {
    let length = place.surface.length();
    if gauge.instrument() == Instrument::Micrometer && length.mm() < ANVILS {
        push_once(
            cautions,
            Caution::new(
                Severity::Warning,
                "no_room_for_anvils",
                format!(
                    "{} is only {} long: the anvils of a micrometer, about 6.5 mm (1/4 in) across, touch the shoulder. Use \
                     a micrometer with narrow anvils, and mind the corner that the tool leaves.",
                    place.surface.diameter().people(units),
                    length.people(units)
                ),
            ),
        );
    }
}

/// Adds a caution that nothing said before.
fn push_once(cautions: &mut Vec<Caution>, caution: Caution) {
    if !cautions.contains(&caution) {
        cautions.push(caution);
    }
}

/// How deep the first cut must go from where the bar was touched, to be under its skin all round.
///
/// The bar is touched at its high side; on the low side, as far away as the run-out, the cut must
/// still be under the skin.
fn under_skin(job: &Job, before: &Before) -> DepthOfCut {
    let Some(skin) = job.stock.skin().filter(|_| !before.measured) else {
        return DepthOfCut::computed_trade(
            job.stock
                .run_out()
                .filter(|_| !before.measured)
                .map_or(0.0, |r| r.mm()),
        );
    };
    let run_out = job.stock.run_out().map_or(0.0, |run_out| run_out.mm());
    DepthOfCut::computed_trade(round_size(skin.mm() + run_out))
}

/// What asks for a deep first cut, and what that cut is for.
pub(super) fn skin_or_run_out(skin: bool) -> (&'static str, &'static str) {
    match skin {
        true => ("stock.skin", "be under the skin all round"),
        false => ("stock.run_out", "cut all round the bar, which runs out"),
    }
}

/// A depth asked for is one that the ring shows, the tool cuts, and lathe and bar bear; and no other way of dividing is
/// asked for beside it.
fn depth_asked_fits(
    job: &Job,
    cross: &Dial,
    asked: DepthOfCut,
    least: DepthOfCut,
    (most, limit): (DepthOfCut, DepthLimit),
) -> Result<(), Error> {
    let per_mark = cross.diameter_per_division().mm() / 2.0;
    let marks = round_size(asked.mm()) / per_mark;
    let depth = |marks: f64| DepthOfCut::computed_trade(round_size(marks * per_mark));
    let wrong = |expected: String, remedy: &str| {
        Err(Error::new(
            ErrorKind::Contradiction,
            "preferences.depth",
            asked.to_string(),
            expected,
            remedy,
        ))
    };
    if job.preference(|p| p.way()) == Some(Way::LeastTime) {
        return wrong(
            String::from("no depth beside the way of the least time, which finds its own"),
            "leave out one of preferences.depth and preferences.way",
        );
    }
    // A size compares after rounding.
    if (marks - marks.round()).abs() > 1e-7 * marks.max(1.0) {
        return wrong(
            format!(
                "a whole number of marks of the cross dial, such as {} or {}",
                depth(marks.floor().max(1.0)),
                depth(marks.floor() + 1.0)
            ),
            "give one of these, or largest_depth, below which the cuts are divided evenly",
        );
    }
    if round_size(asked.mm()) > round_size(most.mm()) {
        return wrong(
            format!(
                "at most {}, which {limit} allows",
                depth((most.mm() / per_mark + 1e-7).floor())
            ),
            "a lighter cut, or leave it out: the sheet then says how deep it may be",
        );
    }
    // Roughing cuts are deeper than the two that finish.
    let lightest = (least.mm() / per_mark - 1e-7).ceil() + 1.0;
    if marks < lightest - 1e-7 {
        return wrong(
            format!(
                "at least {}, a mark more than the lightest cut of this tool",
                depth(lightest)
            ),
            "a deeper cut, or a tool with a smaller corner radius",
        );
    }
    Ok(())
}

#[cold]
fn under_skin_too_deep(job: &Job, before: &Before, most: DepthOfCut, limit: DepthLimit) -> Error {
    let (field, what) = skin_or_run_out(job.stock.skin().is_some());
    Error::new(
        ErrorKind::Impossible,
        field,
        format!("a first cut of {} to {what}", under_skin(job, before)),
        format!(
            "at most {} of depth, which {limit} allows",
            DepthOfCut::computed_trade(round_size(most.mm()))
        ),
        format!(
            "{}, a bar that runs truer; or turn it true beforehand and give the measured diameter as zero_at",
            match limit {
                DepthLimit::Power => "a finer feed, a lower cutting speed (cutting_speed)",
                DepthLimit::Deflection => "a finer feed, a live centre",
                DepthLimit::Asked => "a larger largest_depth",
                DepthLimit::Torque => "a finer feed",
                DepthLimit::Chip => "a coarser feed",
                DepthLimit::Metal => "a thicker bar",
            }
        ),
    )
}

/// The step of the last two cuts: a faster one only where it saves more than the change costs, or where
/// the edge would else cut too slowly for its band.
fn finishing_step(
    common: &Common<'_>,
    (reach, before): (WorkLength, Diameter),
    rough: &SpindleChoice,
    faster: &SpindleChoice,
    feed: &FeedChoice,
    provenance: &mut Provenance,
) -> SpindleChoice {
    if faster.spindle_speed <= rough.spindle_speed {
        return rough.clone();
    }
    let kept = speed::cutting_speed(rough.spindle_speed, before);
    if common.finishing.band.is_some_and(|band| kept < band.low()) {
        return faster.clone();
    }
    let change = match common.job.lathe.change_time() {
        Some(given) => given,
        None => provenance.open("time of a change of step", &CHANGE_TIME),
    };
    let time = |step: &SpindleChoice| {
        2.0 * speed::time_of_cut(reach, feed.feed, step.spindle_speed).seconds()
    };
    if time(rough) - time(faster) > change.seconds() {
        faster.clone()
    } else {
        rough.clone()
    }
}

fn roughness(
    job: &Job,
    feed: Feed,
    cautions: &mut Vec<Caution>,
) -> Result<TheoreticalRoughness, Error> {
    match feed::outline(&job.tool)? {
        Some(outline) => Ok(finish::theoretical_roughness(feed, &outline)),
        None => {
            let angle = finish::least_minor_angle_for_arc(feed, job.tool.corner_radius())?;
            push_once(
                cautions,
                Caution::new(
                    Severity::Note,
                    "minor_edge_unknown",
                    format!(
                        "The roughness holds for a minor cutting edge angle of at least {} deg; a smaller one leaves it rougher.",
                        text::fixed(angle.degrees(), 1)
                    ),
                ),
            );
            finish::arc_roughness(feed, job.tool.corner_radius())
        }
    }
}

fn tool_cautions(job: &Job, cautions: &mut Vec<Caution>) {
    if job.tool.cutting_edge_angle().degrees() < 90.0 {
        push_once(
            cautions,
            Caution::new(
                Severity::Warning,
                "no_square_shoulder",
                format!(
                    "A cutting edge angle of {} deg leaves no square shoulder: finish the shoulder with a knife tool of 90 deg or more.",
                    text::fixed(job.tool.cutting_edge_angle().degrees(), 0)
                ),
            ),
        );
    }
}

fn hand_cautions(
    job: &Job,
    fed: bool,
    feeds: &[(&FeedChoice, &SpindleChoice)],
    carriage: &Dial,
    cautions: &mut Vec<Caution>,
    provenance: &mut Provenance,
) -> Result<(), Error> {
    if !job.lathe.feeds().is_empty() && fed {
        return Ok(());
    }
    let travel: Travel = carriage.travel_per_turn();
    for (feed, step) in feeds {
        if let (_, Some(caution)) =
            feed::by_hand(feed.feed, step.spindle_speed, travel, provenance)?
            && !cautions.iter().any(|c| c.code() == caution.code())
        {
            cautions.push(caution);
        }
    }
    Ok(())
}

/// The size so many tenths of a mark farther in.
pub(super) fn beyond(size: Diameter, cross: &Dial, tenths: i64) -> Diameter {
    let mark = cross.diameter_per_division().mm();
    Diameter::computed_trade(round_size(size.mm() - mark * tenths as f64 / 10.0))
}

/// The reading of the cross dial at a mark.
pub(super) fn cross_reading(cross: &Dial, mark: i64) -> Result<Reading, Error> {
    Ok(cross.reading(Slide::CrossSlide, Divisions::new(mark)?))
}

/// A reading in words, with tenths of a mark beyond it.
pub(super) fn read_as(reading: &Reading, tenths: u8) -> String {
    match tenths {
        0 => reading.to_string(),
        tenths => format!("{reading}.{tenths}"),
    }
}

/// Marks to a tenth, for words about a fraction of a mark.
pub(super) fn tenth_of_a_mark(marks: f64) -> impl fmt::Display {
    // Adding zero makes of -0 the one zero.
    text::trimmed(marks + 0.0, 1)
}

/// The size of one mark on the diameter, as a plain number that loses nothing in all turns of a dial.
pub(super) fn mark_size(cross: &Dial, units: Units) -> impl fmt::Display {
    let exact = text::BareExact(text::Exact {
        kind: DiameterError::ROW.kind(),
        value: cross.diameter_per_division().mm(),
        system: units,
    });
    crate::error::readable(exact.to_string())
}

/// The size of `q` as a plain number in its unit, without the unit.
pub(super) fn plain<Q: Quantity>(q: Q, units: Units) -> impl fmt::Display {
    text::Bare(text::People {
        kind: Q::ROW.kind(),
        value: q.trade(),
        system: units,
    })
}

/// Warns of a length whose limits are closer than the marks that it is turned to by.
fn tight_length(place: &Place<'_>, carriage: &Dial, units: Units, cautions: &mut Vec<Caution>) {
    let limits = place.length_limits;
    let zone =
        WorkLength::computed_trade(round_size(limits.longest().mm() - limits.shortest().mm()));
    if round_size(zone.mm()) >= round_size(carriage.travel_per_division()) {
        return;
    }
    push_once(
        cautions,
        Caution::new(
            Severity::Warning,
            "tight_length",
            format!(
                "The shoulder of {} must lie within {}, less than one mark of the carriage, {}: stop short of it, measure, and take \
                 the rest by a dial indicator on the bed or with the compound slide set along it.",
                place.surface.diameter().people(units),
                zone.people(units),
                WorkLength::computed_trade(carriage.travel_per_division()).people(units),
            ),
        ),
    );
}

/// Warns where nobody said how fast the chuck or the centre may run.
fn speed_limits_known(job: &Job, holding: &Holding, cautions: &mut Vec<Caution>) {
    if job.lathe.chuck_max_speed().is_none() {
        push_once(
            cautions,
            Caution::new(
                Severity::Warning,
                "chuck_speed_unknown",
                "The highest speed of the chuck is not given: read it on the chuck, and set nothing above it.",
            ),
        );
    }
    if holding.kind() != HoldingKind::Chuck && holding.centre_max_speed().is_none() {
        push_once(
            cautions,
            Caution::new(
                Severity::Warning,
                "centre_speed_unknown",
                "The highest speed of the live centre is not given: look it up, and set nothing above it.",
            ),
        );
    }
}

/// Warns where the ring has to be set finer than a hand sets it surely.
fn coarse_dial(guarded: &Limits, per_mark: f64, cautions: &mut Vec<Caution>) {
    if guarded.tolerance().mm() < per_mark / 2.0 {
        push_once(
            cautions,
            Caution::new(
                Severity::Warning,
                "coarse_dial",
                format!(
                    "The zone inside its guards is {} % of one mark: the ring has to be set to a tenth of a mark. A finer dial, \
                 or the compound slide set over, would make it surer.",
                    text::fixed(100.0 * guarded.tolerance().mm() / per_mark, 0)
                ),
            ),
        );
    }
}
