//! The figures of a plan, before any word: speed, feeds, support, overhang, zone and datum, passes.

use super::chance::{self, Chance, JobPrices, Rests};
use super::datum::{Datum, datum, readable, sizes_fit, zone};
use super::job::Job;
use super::lengths::{CarriagePlan, RUN_IN, carriage_plan, facing, length_limits, overhang};
use super::passes::{Metal, Passes};
use crate::advice;
use crate::advice::centre_hole::{self, CentreHoleChoice};
use crate::advice::depth::{self, Cut, DepthLimit, Effort};
use crate::advice::feed::{self, FeedChoice};
use crate::advice::force::ToolLaw;
use crate::advice::spindle::{SpindleAsk, SpindleChoice};
use crate::advice::stops::CutAhead;
use crate::advice::support::{self, Held, SupportAdvice, SupportAsk, SupportChoice, SupportWay};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::finish::{self, TheoreticalRoughness};
use crate::physics::section::Section;
use crate::physics::speed;
use crate::physics::stepped::HeldBar;
use crate::provenance::{Provenance, Standing};
use crate::quantity::dial::{Divisions, Reading, Slide};
use crate::quantity::unit::Units;
use crate::quantity::{
    CuttingSpeed, DepthOfCut, Diameter, DiameterError, Duration, Feed, Overhang, Quantity,
    SizeUncertainty, Travel, WorkLength, round_size,
};
use crate::shop::dial::Dial;
use crate::shop::figure::SpeedBand;
use crate::shop::gauge::Gauge;
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::{CHANGE_TIME, EFFICIENCY};
use crate::standards::limits::{LengthLimits, Limits};

/// All figures of a plan.
pub(super) struct Setup {
    pub(super) band: Option<SpeedBand>,
    pub(super) rough_feed: FeedChoice,
    pub(super) finish_feed: FeedChoice,
    pub(super) rough_step: SpindleChoice,
    pub(super) finish_step: SpindleChoice,
    pub(super) support: SupportChoice,
    pub(super) held: Held,
    pub(super) law: ToolLaw,
    pub(super) centre: Option<CentreHoleChoice>,
    pub(super) overhang: Overhang,
    pub(super) facing: WorkLength,
    pub(super) never_past: f64,
    pub(super) gauge: Gauge,
    pub(super) chance: Chance,
    pub(super) costs: JobPrices,
    pub(super) guard: SizeUncertainty,
    pub(super) guarded: Limits,
    pub(super) length_limits: LengthLimits,
    pub(super) datum: Datum,
    pub(super) passes: Passes,
    pub(super) rough_most: DepthOfCut,
    pub(super) rough_limit: DepthLimit,
    pub(super) least_depth: DepthOfCut,
    pub(super) correcting_depth: DepthOfCut,
    pub(super) roughness: TheoreticalRoughness,
    pub(super) carriage: CarriagePlan,
    pub(super) cautions: Vec<Caution>,
    pub(super) provenance: Provenance,
}

impl Setup {
    pub(super) fn of(job: &Job, units: Units) -> Result<Self, Error> {
        let mut provenance = Provenance::default();
        let mut cautions = Vec::new();
        let cross = need_dial(job.lathe.cross_slide(), "lathe.cross_slide")?;
        let carriage_dial = need_dial(job.lathe.carriage(), "lathe.carriage")?;
        sizes_fit(job)?;
        if let Some(class) = job.part.class() {
            let found = class.deviations(job.part.diameter())?;
            provenance.record("limits of the class", &class, found.source, found.standing);
        }
        let expansion = chance::expansion(job, &mut provenance);
        let (gauge, guard, guarded) = zone(job, cross, expansion, &mut provenance)?;
        let start_diameter = job.zero_at.unwrap_or(job.stock.diameter());

        let facing = facing(job, units, &mut provenance);
        let (overhang, never_past) = overhang(job, facing, units, &mut provenance, &mut cautions)?;
        let (wanted, fastest, band) = cutting_speed(job, &mut provenance)?;
        let youngs_modulus = job
            .material
            .youngs_modulus()
            .ok_or_else(|| {
                Error::new(
                    ErrorKind::MissingField,
                    "material.youngs_modulus",
                    "a material without a Young's modulus",
                    "the modulus, for the spring of the bar",
                    "add the field \"youngs_modulus\" to the material",
                )
            })?
            .open("Young's modulus", &mut provenance);

        let rough_feed = match job.preference(|p| p.feed()) {
            Some(feed) => asked_feed(job, feed, "preferences.feed")?,
            None => feed::rough_feed(&job.lathe, &job.tool, &mut provenance)?,
        };
        let finish_feed = match job.preference(|p| p.finish_feed()) {
            Some(feed) => asked_feed(job, feed, "preferences.finish_feed")?,
            None => feed::finish_feed(&job.lathe, &job.tool, job.part.finish(), &mut provenance)?,
        };

        let least_depth = depth::least_planned(&job.tool, finish_feed.feed, &mut provenance)?;
        let rough_least = depth::least_planned(&job.tool, rough_feed.feed, &mut provenance)?;
        let least_depth = least_depth.max(rough_least);
        let correcting_depth =
            depth::least_correcting(&job.tool, finish_feed.feed, &mut provenance)?;
        let liked = provenance.open(
            "finishing depth over corner radius",
            &depth::FINISH_OVER_CORNER,
        ) * job.tool.corner_radius().mm();
        let liked = DepthOfCut::computed_trade(liked.max(least_depth.mm()));

        // The spring that decides between chuck and centre is that of the last cuts, at the finished
        // diameter: a bar as thin as it will ever be, over its whole overhang.
        let law = advice::force::tool_law(&job.material, &job.tool, &mut provenance)?;
        let finish_forces = law.forces(&job.tool, liked, finish_feed.feed);
        let asked = job
            .holding
            .clone()
            .unwrap_or_else(|| Holding::new(HoldingKind::Chuck));
        if asked.kind() == HoldingKind::BetweenCentres || !asked.steadies().is_empty() {
            return Err(Error::not_offered(
                "holding",
                "a plan between centres or with a steady",
                "name \"chuck\" or \"chuck_and_centre\"; the questions \"bar\" and \"support\" reckon the others",
            ));
        }
        let out_of_jaws = Overhang::computed_trade(overhang.mm() - facing.mm());
        let bar = [Section::cylinder(
            guarded.middle(),
            WorkLength::computed_trade(out_of_jaws.mm()),
        )];
        let support = SupportAsk::new(
            youngs_modulus,
            &bar,
            &asked,
            finish_forces.passive,
            job.part.limits().tolerance(),
        )
        .with_ways(&[SupportWay::Chuck, SupportWay::ChuckAndCentre])
        .with_reach(job.part.length())
        .choose(&mut provenance)?;
        let kind = holding_kind(job, &support, &mut cautions)?;
        let holding = asked.of_kind(kind);
        let held = Held {
            kind,
            youngs_modulus,
            overhang: out_of_jaws,
            springs: support::springs(&holding, &mut provenance),
        };

        let whip = match job.material.density() {
            Some(density) => {
                let density = density.open("density", &mut provenance);
                let bar = HeldBar::new(youngs_modulus, &bar, held.support(), &held.springs, &[])?;
                let share = provenance.open("share of the critical speed", &support::WHIP_SHARE);
                // The lower bound is near enough to refuse by, and costs nothing.
                Some(support::safe_from_whip(
                    bar.critical_speed_floor(density),
                    share,
                ))
            }
            None => None,
        };
        let step_at = |diameter: Diameter| {
            let mut ask = SpindleAsk::new(&job.lathe, diameter, wanted).with_holding(&holding);
            if let Some(whip) = whip {
                ask = ask.with_whip(whip);
            }
            if let Some(fastest) = fastest {
                ask = ask.with_fastest(fastest);
            }
            ask.choose()
        };
        let rough_step = step_at(start_diameter)?;

        let whole = Whole {
            job,
            cross,
            held: &held,
            law,
            least: least_depth,
            reach: job.part.length(),
        };
        let finish_most = whole
            .most(
                &finish_feed,
                &rough_step,
                guarded.middle(),
                DiameterError::computed_trade(1e6),
            )?
            .0;
        let spring_share = provenance.open(
            "spring of a roughing cut over the finishing depth",
            &depth::ROUGH_SPRING,
        );
        let rough_spring = DiameterError::computed_trade(2.0 * spring_share * liked.mm());
        let (rough_most, rough_limit) =
            whole.most(&rough_feed, &rough_step, guarded.middle(), rough_spring)?;
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
            cautions.push(Caution::new(
                Severity::Note,
                "power_unknown",
                "The power of the lathe is not given: depths are not checked against it. Listen to the motor.",
            ));
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
        let metal = Metal {
            start: 0.0,
            last: 0,
            rough_most: marks(rough_most, false),
            first_most: marks(DepthOfCut::computed_trade(2.0 * liked.mm()), false),
            least: marks(least_depth, true),
            finish_most: marks(
                DepthOfCut::computed_trade((1.5 * liked.mm()).min(finish_most.mm())),
                false,
            )
            .max(marks(least_depth, true)),
            finish_liked: marks(liked, true),
            first_cut: true,
        };
        let rests = Rests {
            cross,
            gauge,
            expansion,
            zero_at: job.zero_at,
        };
        let costs = whole.costs(
            start_diameter,
            (&rough_feed, &rough_step),
            &finish_feed,
            rough_most,
            &mut provenance,
        )?;
        let last_cut = whole.cut(
            &finish_feed,
            &rough_step,
            Diameter::computed_trade(guarded.middle().mm() + 2.0 * liked.mm()),
        );
        let size_ask = rests.measured(guarded.middle(), &last_cut, liked)?;
        let mut aim = rests.aim(job, guarded, &size_ask, costs.prices, &mut provenance)?;
        aim.size = readable(aim.size, guarded, units);
        let (datum, passes) = datum(job, cross, start_diameter, guarded, &aim, metal)?;

        let before_finish = cross.diameter_at(
            datum.zero,
            Divisions::new(2 * passes.finish[0] - passes.finish[1])?,
        )?;
        let finishing =
            DepthOfCut::computed_trade((passes.finish[1] - passes.finish[0]) as f64 * q / 2.0);
        let faster = step_at(before_finish)?;
        let bearable = whole
            .cut(&finish_feed, &faster, before_finish)
            .forbids(finishing, &job.lathe, DiameterError::computed_trade(1e6))?
            .is_none();
        let finish_step = if bearable {
            finishing_step(job, &rough_step, &faster, &finish_feed, &mut provenance)
        } else {
            rough_step.clone()
        };
        let ahead = whole.ahead(
            &datum,
            &passes,
            (&rough_feed, &rough_step),
            (&finish_feed, &finish_step),
        )?;
        let along = whole
            .cut(&finish_feed, &finish_step, before_finish)
            .spring_along(finishing)?;
        let chance = Chance::of(
            job,
            &rests,
            start_diameter,
            &ahead,
            along,
            &costs,
            &mut provenance,
        )?;
        chance.cautions(&aim, &size_ask, units, &mut cautions)?;
        let length_limits = length_limits(job, &mut provenance)?;
        let carriage = carriage_plan(
            job,
            carriage_dial,
            length_limits,
            &[(&rough_feed, &rough_step), (&finish_feed, &finish_step)],
        )?;
        let roughness = roughness(job, finish_feed.feed, &mut cautions)?;
        let centre = match kind {
            HoldingKind::Chuck | HoldingKind::BetweenCentres => None,
            HoldingKind::ChuckAndCentre => Some(
                centre_hole::choose(
                    &job.lathe,
                    guarded.middle(),
                    wanted,
                    job.lathe.speed_cap(),
                    &mut provenance,
                )
                .ok_or_else(|| no_centre_hole(job))?,
            ),
        };
        cautions.extend(rough_step.cautions.iter().cloned());
        speed_limits_known(job, &holding, &mut cautions);
        coarse_dial(&guarded, q, &mut cautions);
        cautions.extend(support.cautions.iter().cloned());
        tool_cautions(job, &mut cautions);
        hand_cautions(
            job,
            carriage.feed_off.is_some(),
            &[(&finish_feed, &finish_step), (&rough_feed, &rough_step)],
            carriage_dial,
            &mut cautions,
            &mut provenance,
        )?;
        Ok(Self {
            band,
            rough_feed,
            finish_feed,
            rough_step,
            finish_step,
            support,
            held,
            law,
            centre,
            overhang,
            facing,
            never_past,
            gauge,
            chance,
            costs,
            guard,
            guarded,
            length_limits,
            datum,
            passes,
            rough_most,
            rough_limit,
            least_depth,
            correcting_depth,
            roughness,
            carriage,
            cautions,
            provenance,
        })
    }

    /// The diameter at a mark of the cross dial.
    pub(super) fn diameter_at(&self, cross: &Dial, mark: i64) -> Result<Diameter, Error> {
        cross.diameter_at(self.datum.zero, Divisions::new(mark)?)
    }

    /// What a cut of the plan asks for, for the words beside it.
    pub(super) fn effort(
        &self,
        job: &Job,
        before: Diameter,
        depth: DepthOfCut,
        finishing: bool,
    ) -> Result<Effort, Error> {
        let (feed, step) = if finishing {
            (&self.finish_feed, &self.finish_step)
        } else {
            (&self.rough_feed, &self.rough_step)
        };
        let overhang = self.held.overhang.mm();
        Cut {
            law: self.law,
            tool: &job.tool,
            feed: feed.feed,
            spindle_speed: step.spindle_speed,
            before,
            held: &self.held,
            from: WorkLength::computed_trade(overhang - job.part.length().mm()),
            to: WorkLength::computed_trade(overhang),
        }
        .effort(depth)
    }

    /// Time of one cut along the part, run-in included.
    pub(super) fn time_of_cut(
        &self,
        job: &Job,
        feed: Feed,
        step: &SpindleChoice,
    ) -> crate::quantity::Duration {
        speed::time_of_cut(
            WorkLength::computed_trade(job.part.length().mm() + RUN_IN),
            feed,
            step.spindle_speed,
        )
    }
}

fn need_dial<'a>(dial: Option<&'a Dial>, field: &str) -> Result<&'a Dial, Error> {
    dial.ok_or_else(|| {
        Error::new(
            ErrorKind::MissingField,
            field,
            "no dial",
            "the dial: what it reads, its division, and the divisions of one turn",
            format!("add {field:?}; without it there is no reading to plan"),
        )
    })
}

/// The cutting speed wanted, the fastest allowed, and the band it is the middle of, if it is one's.
fn cutting_speed(
    job: &Job,
    provenance: &mut Provenance,
) -> Result<(CuttingSpeed, Option<CuttingSpeed>, Option<SpeedBand>), Error> {
    let band = job
        .tool
        .material()
        .and_then(|tool| job.material.speed_band(tool));
    if let Some(given) = job.cutting_speed {
        provenance.record(
            "cutting speed",
            &given,
            "given by the asker",
            Standing::Given,
        );
        return Ok((given, band.map(|b| b.value.high().max(given)), None));
    }
    let Some(band) = band else {
        return Err(Error::new(
            ErrorKind::MissingField,
            "cutting_speed",
            "no cutting speed, and no band for this material and tool",
            "a cutting speed, or a material and a tool material whose band is known",
            "add \"cutting_speed\", or give tool.material as \"high_speed_steel\" or \"carbide\"",
        ));
    };
    let band = band.open("band of cutting speeds", provenance);
    Ok((band.middle(), Some(band.high()), Some(band)))
}

fn asked_feed(job: &Job, feed: Feed, field: &str) -> Result<FeedChoice, Error> {
    if job.lathe.feeds().is_empty() {
        return Ok(FeedChoice {
            feed,
            lever: None,
            by_hand: true,
        });
    }
    if job.lathe.feeds().contains(&feed) {
        return Ok(FeedChoice {
            feed,
            lever: job.lathe.feed_name(feed).map(str::to_owned),
            by_hand: false,
        });
    }
    let near = job.lathe.feeds().iter().min_by(|a, b| {
        (a.mm_per_rev() - feed.mm_per_rev())
            .abs()
            .total_cmp(&(b.mm_per_rev() - feed.mm_per_rev()).abs())
    });
    Err(Error::new(
        ErrorKind::Contradiction,
        field,
        feed.to_string(),
        "one of the lathe's feeds",
        near.map_or_else(
            || String::from("add it to the lathe's feeds"),
            |near| format!("the nearest is {near}"),
        ),
    ))
}

/// What the person asked for, or else what the figures advise.
fn holding_kind(
    job: &Job,
    support: &SupportChoice,
    cautions: &mut Vec<Caution>,
) -> Result<HoldingKind, Error> {
    let advised = match support.advice {
        SupportAdvice::Chuck => Some(HoldingKind::Chuck),
        SupportAdvice::ChuckAndCentre => Some(HoldingKind::ChuckAndCentre),
        _ => None,
    };
    match (&job.holding, advised) {
        (None, Some(kind)) => Ok(kind),
        (None, None) => Err(Error::new(
            ErrorKind::Impossible,
            "part",
            support
                .options
                .last()
                .map_or_else(String::new, |option| option.because.clone()),
            "a holding that keeps the spring of the bar within its share of the zone",
            "a shorter length, a wider zone, a smaller corner radius or finer feed; or name a holding to plan with it all the same",
        )),
        (Some(asked), advised) => {
            let option = support.option(SupportWay::of(asked.kind()));
            if let Some(option) = option.filter(|option| !option.enough) {
                cautions.push(Caution::new(
                    Severity::Warning,
                    "support_not_enough",
                    format!(
                        "Planned as asked, against the figures: {}.{}",
                        option.because,
                        match advised {
                            Some(HoldingKind::ChuckAndCentre) => " A live centre would be enough.",
                            Some(HoldingKind::Chuck) => " The chuck alone would be enough.",
                            _ => "",
                        }
                    ),
                ));
            }
            Ok(asked.kind())
        }
    }
}

/// What is the same for every depth looked at.
struct Whole<'a> {
    job: &'a Job,
    cross: &'a Dial,
    held: &'a Held,
    law: ToolLaw,
    least: DepthOfCut,
    reach: WorkLength,
}

impl Whole<'_> {
    /// What scrap, rework and a stop cost, by the time of about as many cuts as there will be.
    fn costs(
        &self,
        start: Diameter,
        (rough_feed, rough_step): (&FeedChoice, &SpindleChoice),
        finish_feed: &FeedChoice,
        rough_most: DepthOfCut,
        provenance: &mut Provenance,
    ) -> Result<JobPrices, Error> {
        let time = |feed: Feed| {
            speed::time_of_cut(
                WorkLength::computed_trade(self.reach.mm() + RUN_IN),
                feed,
                rough_step.spindle_speed,
            )
        };
        let metal = 0.5 * (start.mm() - self.job.part.limits().largest().mm());
        let roughing = (metal / rough_most.mm()).ceil().max(1.0);
        let (rough, last) = (time(rough_feed.feed), time(finish_feed.feed));
        let cuts = Duration::computed_trade(roughing * rough.seconds() + 2.0 * last.seconds());
        JobPrices::of(self.job, cuts, last, provenance)
    }

    /// The cuts with their sizes and springs.
    fn ahead(
        &self,
        datum: &Datum,
        passes: &Passes,
        rough: (&FeedChoice, &SpindleChoice),
        finish: (&FeedChoice, &SpindleChoice),
    ) -> Result<Vec<CutAhead>, Error> {
        let mut before = self.job.zero_at.unwrap_or(self.job.stock.diameter());
        let roughing = passes
            .first
            .iter()
            .chain(&passes.rough)
            .map(|m| (*m, rough));
        let finishing = passes.finish.iter().map(|mark| (*mark, finish));
        roughing
            .chain(finishing)
            .map(|(mark, (feed, step))| {
                let after = self.cross.diameter_at(datum.zero, Divisions::new(mark)?)?;
                let depth = before
                    .depth_to(after)
                    .ok_or_else(|| Error::internal("a cut that takes nothing"))?;
                let spring = self.cut(feed, step, before).effort(depth)?.spring;
                before = after;
                Ok(CutAhead { after, spring })
            })
            .collect()
    }

    /// A cut on a bar of this diameter, from the free end to the shoulder.
    fn cut(&self, feed: &FeedChoice, step: &SpindleChoice, before: Diameter) -> Cut<'_> {
        let overhang = self.held.overhang.mm();
        Cut {
            law: self.law,
            tool: &self.job.tool,
            feed: feed.feed,
            spindle_speed: step.spindle_speed,
            before,
            held: self.held,
            from: WorkLength::computed_trade(overhang - self.reach.mm()),
            to: WorkLength::computed_trade(overhang),
        }
    }

    /// The largest depth, in whole divisions, that every limit allows, and the limit that stops it.
    fn most(
        &self,
        feed: &FeedChoice,
        step: &SpindleChoice,
        finished: Diameter,
        spring: DiameterError,
    ) -> Result<(DepthOfCut, DepthLimit), Error> {
        let per_mark = self.cross.diameter_per_division().mm() / 2.0;
        let forbids = |marks: i64| {
            let depth = DepthOfCut::computed_trade(marks as f64 * per_mark);
            if self
                .job
                .preference(|p| p.largest_depth())
                .is_some_and(|most| round_size(depth.mm()) > round_size(most.mm()))
            {
                return Ok(Some(DepthLimit::Asked));
            }
            // The thinnest bar that this cut can meet: what it leaves is the finished size. Power and
            // torque grow with the diameter, so they are looked at on the bar as it comes.
            let before = Diameter::computed_trade(finished.mm() + 2.0 * depth.mm());
            let thin = self.cut(feed, step, before);
            if let Some(limit) = thin.forbids(depth, &self.job.lathe, spring)? {
                return Ok(Some(limit));
            }
            let thick = Cut {
                before: self.job.stock.diameter(),
                ..thin
            };
            thick.forbids(depth, &self.job.lathe, spring)
        };
        let metal = (self.job.stock.diameter().mm() - finished.mm()) / 2.0;
        let mut too_many = (metal / per_mark).ceil() as i64 + 1;
        let least = ((self.least.mm() / per_mark) - 1e-9).ceil() as i64;
        if let Some(limit) = forbids(least)? {
            return Err(depth::no_depth(limit, self.least));
        }
        let mut fits = least;
        let mut limit = DepthLimit::Metal;
        // Every limit tightens with the depth, so halving finds the last depth that fits.
        while too_many - fits > 1 {
            let middle = fits + (too_many - fits) / 2;
            match forbids(middle)? {
                None => fits = middle,
                Some(found) => {
                    limit = found;
                    too_many = middle;
                }
            }
        }
        Ok((DepthOfCut::computed_trade(fits as f64 * per_mark), limit))
    }
}

/// The step of the last two cuts: a faster one only where it saves more than the change costs.
fn finishing_step(
    job: &Job,
    rough: &SpindleChoice,
    faster: &SpindleChoice,
    feed: &FeedChoice,
    provenance: &mut Provenance,
) -> SpindleChoice {
    if faster.spindle_speed <= rough.spindle_speed {
        return rough.clone();
    }
    let change = match job.lathe.change_time() {
        Some(given) => given,
        None => provenance.open("time of a change of step", &CHANGE_TIME),
    };
    let time = |step: &SpindleChoice| {
        2.0 * speed::time_of_cut(job.part.length(), feed.feed, step.spindle_speed).seconds()
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
            cautions.push(Caution::new(
                Severity::Note,
                "minor_edge_unknown",
                format!(
                    "The roughness holds for a minor cutting edge angle of at least {:.1} deg; a smaller one leaves it rougher.",
                    angle.degrees()
                ),
            ));
            finish::arc_roughness(feed, job.tool.corner_radius())
        }
    }
}

#[cold]
fn no_centre_hole(job: &Job) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "part.diameter",
        job.part.diameter().to_string(),
        "an end that holds the smallest centre hole, turned at a speed the lathe has",
        "turn it in the chuck alone, with a shorter overhang",
    )
}

fn tool_cautions(job: &Job, cautions: &mut Vec<Caution>) {
    if job.tool.cutting_edge_angle().degrees() < 90.0 {
        cautions.push(Caution::new(
            Severity::Warning,
            "no_square_shoulder",
            format!(
                "A cutting edge angle of {:.0} deg leaves no square shoulder: finish the shoulder with a knife tool of 90 deg or more.",
                job.tool.cutting_edge_angle().degrees()
            ),
        ));
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

/// The reading of the cross dial at a mark.
pub(super) fn cross_reading(cross: &Dial, mark: i64) -> Result<Reading, Error> {
    Ok(cross.reading(Slide::CrossSlide, Divisions::new(mark)?))
}

/// Six decimals of a millimetre at most, for words about a fraction of a mark.
pub(super) fn tenth_of_a_mark(marks: f64) -> String {
    let text = format!("{marks:.1}");
    text.strip_suffix(".0").map_or(text.clone(), str::to_owned)
}

/// The size of `q` as a plain number in its unit, without the unit.
pub(super) fn plain<Q: Quantity>(q: Q, units: Units) -> String {
    let text = q.people(units);
    text.split(' ').next().unwrap_or_default().to_owned()
}

/// Warns where nobody said how fast the chuck or the centre may run.
fn speed_limits_known(job: &Job, holding: &Holding, cautions: &mut Vec<Caution>) {
    if job.lathe.chuck_max_speed().is_none() {
        cautions.push(Caution::new(
            Severity::Warning,
            "chuck_speed_unknown",
            "The highest speed of the chuck is not given: read it on the chuck, and set nothing above it.",
        ));
    }
    if holding.kind() == HoldingKind::ChuckAndCentre && holding.centre_max_speed().is_none() {
        cautions.push(Caution::new(
            Severity::Warning,
            "centre_speed_unknown",
            "The highest speed of the live centre is not given: look it up, and set nothing above it.",
        ));
    }
}

/// Warns where the ring has to be set finer than a hand sets it surely.
fn coarse_dial(guarded: &Limits, per_mark: f64, cautions: &mut Vec<Caution>) {
    if guarded.tolerance().mm() < per_mark / 2.0 {
        cautions.push(Caution::new(
            Severity::Warning,
            "coarse_dial",
            format!(
                "The zone inside its guards is {:.0} % of one mark: the ring has to be set to a tenth of a mark. A finer dial, \
                 or the compound slide set over, would make it surer.",
                100.0 * guarded.tolerance().mm() / per_mark
            ),
        ));
    }
}
