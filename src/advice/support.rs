//! Chuck alone, a live centre, between centres, or a steady.

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::bar::{Springs, Support};
use crate::physics::section::Section;
use crate::physics::spring_back::{self, Edge};
use crate::physics::stepped::HeldBar;
use crate::provenance::{Provenance, Recorded, Sourced, Standing};
use crate::quantity::text::fixed;
use crate::quantity::unit::Units;
use crate::quantity::{
    CriticalSpeed, Density, DepthOfCut, Diameter, DiameterError, Feed, Overhang, PassiveForce,
    Quantity, RotationalStiffness, Slenderness, SpindleSpeed, Stiffness, Tolerance, WorkLength,
    YoungsModulus,
};
use crate::shop::holding::{
    CENTRE_STIFFNESS, CHUCK_ROTATIONAL_STIFFNESS, CHUCK_STIFFNESS, Holding, HoldingKind,
    STEADY_STIFFNESS, Steady,
};

/// Share of the tolerance zone that the spring of the bar may use.
///
/// About a third leaves room for a force 30 % above the table, for the dial and for measuring.
pub const SPRING_SHARE: Sourced<f64> =
    Sourced::new(0.33, "judgement, no source", Standing::Estimate);

/// Scatter of the specific force from bar to bar, either way.
pub const FORCE_SCATTER: Sourced<f64> = Sourced::new(
    0.3,
    "20 to 30 % from bar to bar, from memory",
    Standing::FromMemory,
);

/// Share of the first critical speed that a bar may run at.
pub const WHIP_SHARE: Sourced<f64> = Sourced::new(
    0.7,
    "common practice, no source: stay below about 0.7 of the critical speed",
    Standing::CommonPractice,
);

/// Overhang over diameter up to which the trade leaves the end free.
pub const FREE_UP_TO: Sourced<f64> = Sourced::new(
    4.0,
    "common practice, no source: 3, light cuts 4",
    Standing::CommonPractice,
);

/// Overhang over diameter up to which the trade trusts a centre.
pub const CENTRE_UP_TO: Sourced<f64> = Sourced::new(
    12.0,
    "common practice, no source: about 10 or 12",
    Standing::CommonPractice,
);

/// A bar as it is held: modulus, overhang and the stiffness of what holds it.
#[derive(Debug, Clone)]
pub(crate) struct Held {
    pub(crate) kind: HoldingKind,
    pub(crate) youngs_modulus: YoungsModulus,
    pub(crate) overhang: Overhang,
    pub(crate) springs: Springs,
}

impl Held {
    pub(crate) fn support(&self) -> Support {
        support_of(self.kind)
    }
}

pub(crate) fn support_of(kind: HoldingKind) -> Support {
    match kind {
        HoldingKind::Chuck => Support::Chuck,
        HoldingKind::ChuckAndCentre => Support::ChuckAndCentre,
        HoldingKind::BetweenCentres => Support::BetweenCentres,
    }
}

/// The stiffnesses of a holding; what is not given is rigid.
#[cfg(feature = "json")]
pub(crate) fn as_given(holding: &Holding) -> Springs {
    Springs {
        chuck: holding.stiffness(),
        chuck_rotational: holding.rotational_stiffness(),
        centre: holding.centre_stiffness(),
    }
}

fn given(provenance: &mut Provenance, what: &'static str, value: &dyn Recorded) {
    provenance.record(what, value, "given by the asker", Standing::Given);
}

/// The stiffnesses of a holding; what is not given is the stated default of a workshop lathe.
pub(crate) fn springs(holding: &Holding, provenance: &mut Provenance) -> Springs {
    let chuck = match holding.kind() {
        HoldingKind::BetweenCentres => "stiffness of the centre in the spindle",
        HoldingKind::Chuck | HoldingKind::ChuckAndCentre => "stiffness of the chuck",
    };
    let chuck = match holding.stiffness() {
        Some(value) => {
            given(provenance, chuck, &value);
            value
        }
        None => provenance.open(chuck, &CHUCK_STIFFNESS),
    };
    let mut springs = Springs::default().with_chuck(chuck);
    // A centre does not hold against tilting.
    if holding.kind() != HoldingKind::BetweenCentres {
        springs = springs.with_chuck_rotational(rotational(holding, provenance));
    }
    let centre = match holding.centre_stiffness() {
        Some(value) => {
            given(provenance, "stiffness of the centre", &value);
            value
        }
        None => provenance.open("stiffness of the centre", &CENTRE_STIFFNESS),
    };
    springs.with_centre(centre)
}

fn rotational(holding: &Holding, provenance: &mut Provenance) -> RotationalStiffness {
    match holding.rotational_stiffness() {
        Some(value) => {
            given(provenance, "rotational stiffness of the chuck", &value);
            value
        }
        None => provenance.open(
            "rotational stiffness of the chuck",
            &CHUCK_ROTATIONAL_STIFFNESS,
        ),
    }
}

/// The size of a force: a bar that is pulled in is as wrong as one that is pushed away.
pub(crate) fn size_of(force: PassiveForce) -> PassiveForce {
    PassiveForce::computed_trade(force.newton().abs())
}

/// The ways of supporting a bar that are weighed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum SupportWay {
    /// The chuck alone.
    Chuck,
    /// The chuck and a live centre.
    ChuckAndCentre,
    /// A centre at each end.
    BetweenCentres,
    /// A steady beside the chuck and the centre, or beside the two centres.
    Steady,
}

impl SupportWay {
    /// The holding without its steady.
    fn kind(self, asked: HoldingKind) -> HoldingKind {
        match self {
            Self::Chuck => HoldingKind::Chuck,
            Self::ChuckAndCentre => HoldingKind::ChuckAndCentre,
            Self::BetweenCentres => HoldingKind::BetweenCentres,
            Self::Steady if asked == HoldingKind::BetweenCentres => HoldingKind::BetweenCentres,
            Self::Steady => HoldingKind::ChuckAndCentre,
        }
    }

    fn words(self) -> &'static str {
        match self {
            Self::Chuck => "chuck alone",
            Self::ChuckAndCentre => "chuck and live centre",
            Self::BetweenCentres => "between centres",
            Self::Steady => "with a steady",
        }
    }

    /// The way of a holding without a steady.
    #[must_use]
    pub const fn of(kind: HoldingKind) -> Self {
        match kind {
            HoldingKind::Chuck => Self::Chuck,
            HoldingKind::ChuckAndCentre => Self::ChuckAndCentre,
            HoldingKind::BetweenCentres => Self::BetweenCentres,
        }
    }

    fn advice(self) -> SupportAdvice {
        match self {
            Self::Chuck => SupportAdvice::Chuck,
            Self::ChuckAndCentre => SupportAdvice::ChuckAndCentre,
            Self::BetweenCentres => SupportAdvice::BetweenCentres,
            Self::Steady => SupportAdvice::Steady,
        }
    }
}

/// What is advised.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum SupportAdvice {
    /// The chuck alone is enough.
    Chuck,
    /// A live centre is needed, and enough.
    ChuckAndCentre,
    /// A centre at each end is enough.
    BetweenCentres,
    /// A steady is needed as well.
    Steady,
    /// Nothing that was weighed is enough.
    NoneEnough,
}

/// One way of support, and what it would give.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SupportOption {
    /// The way.
    pub holding: SupportWay,
    /// The error of the diameter where the bar springs most.
    pub diameter_error: DiameterError,
    /// The same with a force as far below the table as bars scatter.
    pub diameter_error_at_least: DiameterError,
    /// The same with a force as far above the table as bars scatter.
    pub diameter_error_at_most: DiameterError,
    /// Where that is, from the jaws.
    pub at: WorkLength,
    /// Where the steady was put, from the jaws.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub steady_at: Option<WorkLength>,
    /// The first critical speed, where the density is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub first_critical_speed: Option<CriticalSpeed>,
    /// Up to where it is safe to run against whip: a share of the critical speed.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub safe_from_whip_up_to: Option<CriticalSpeed>,
    /// The greatest depth of cut whose spring stays inside the share of the zone, where the cut is
    /// known and its passive force can reach so far.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub largest_depth: Option<DepthOfCut>,
    /// The greatest feed whose spring at the depth given stays inside that share, where the cut is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub largest_feed: Option<Feed>,
    /// Whether it is enough for the zone, and safe from whip at the speed given.
    pub enough: bool,
    /// Why, with the figures put in.
    pub because: String,
}

/// Every way of support that was looked at, and which is enough.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SupportChoice {
    /// What is advised.
    pub advice: SupportAdvice,
    /// All that was looked at.
    pub options: Vec<SupportOption>,
    /// Overhang over diameter, for the rule of thumb; of a stepped bar, over the mean diameter.
    pub length_over_diameter: Slenderness,
    /// What a person must be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub cautions: Vec<Caution>,
}

impl SupportChoice {
    /// What was found for one way.
    #[must_use]
    pub fn option(&self, way: SupportWay) -> Option<&SupportOption> {
        self.options.iter().find(|option| option.holding == way)
    }
}

/// What is known when a support is asked for.
///
/// # Example
/// ```
/// use turnwright::advice::support::{SupportAdvice, SupportAsk};
/// use turnwright::physics::section::Section;
/// use turnwright::{Holding, HoldingKind, Provenance};
/// let sections = [Section::cylinder("16 mm".parse()?, "160 mm".parse()?)];
/// let holding = Holding::new(HoldingKind::Chuck);
/// let choice = SupportAsk::new("210 GPa".parse()?, &sections, &holding, "55 N".parse()?, "0.04 mm".parse()?)
///     .choose(&mut Provenance::default())?;
/// assert_eq!(choice.advice, SupportAdvice::ChuckAndCentre);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct SupportAsk<'a> {
    youngs_modulus: YoungsModulus,
    sections: &'a [Section],
    holding: &'a Holding,
    force: PassiveForce,
    tolerance: Tolerance,
    ways: Option<&'a [SupportWay]>,
    reach: Option<WorkLength>,
    density: Option<Density>,
    edge: Option<Edge>,
    depth_of_cut: Option<DepthOfCut>,
    spindle_speed: Option<SpindleSpeed>,
    between_centres: Option<WorkLength>,
    of: Option<(Diameter, Units)>,
}

impl<'a> SupportAsk<'a> {
    /// A bar, the stiffness of what could hold it, the passive force of the last cuts, and the zone.
    #[must_use]
    pub fn new(
        youngs_modulus: YoungsModulus,
        sections: &'a [Section],
        holding: &'a Holding,
        force: PassiveForce,
        tolerance: Tolerance,
    ) -> Self {
        Self {
            youngs_modulus,
            sections,
            holding,
            force,
            tolerance,
            ways: None,
            reach: None,
            density: None,
            edge: None,
            depth_of_cut: None,
            spindle_speed: None,
            between_centres: None,
            of: None,
        }
    }

    crate::shop::setters! {
        /// With these ways to weigh, the least effort first; without, all of them.
        with_ways ways: &'a [SupportWay];
        /// With how far from the free end the tool goes; without, to the jaws.
        with_reach reach: WorkLength;
        /// With the density, for the critical speed.
        with_density density: Density;
        /// With the cut, for the greatest depth.
        with_edge edge: Edge;
        /// With the depth of the cut, for the greatest feed at it.
        with_depth_of_cut depth_of_cut: DepthOfCut;
        /// With the spindle speed, to weigh against whip.
        with_spindle_speed spindle_speed: SpindleSpeed;
        /// With the distance that the lathe takes between its centres.
        with_between_centres between_centres: WorkLength;
    }

    /// Weighs the ways of support.
    ///
    /// # Errors
    /// `at`, when the tool would go beyond the jaws; `sections`, when the bar is longer than any lathe,
    /// or than this one; `holding.steadies`, when a steady stands off the bar.
    pub fn choose(&self, provenance: &mut Provenance) -> Result<SupportChoice, Error> {
        let asked = self.holding.kind();
        let weigh = self.weigh(provenance);
        let ways = self.ways();
        let mut options = Vec::with_capacity(ways.len());
        for way in ways {
            options.push(weigh.option(*way, provenance)?);
        }
        let advice = options
            .iter()
            .find(|option| option.enough)
            .map_or(SupportAdvice::NoneEnough, |option| option.holding.advice());
        let length: f64 = self.sections.iter().map(|s| s.length().mm()).sum();
        let area: f64 = self
            .sections
            .iter()
            .map(|s| s.length().mm() * 0.5 * (s.diameter().mm() + s.end_diameter().mm()))
            .sum();
        let slenderness = Slenderness::computed_trade(length * length / area);
        let mut cautions = second_opinion(advice, asked, slenderness, provenance);
        if advice == SupportAdvice::Steady {
            cautions.push(Caution::new(
                Severity::Warning,
                "steady_needs_a_track",
                "A steady runs only on a turned, oiled track that is true to the axis, below its own highest speed; set its \
                 jaws with the spindle at rest, and stop the tool before it. Without a centre the bar can walk out of the \
                 chuck: the manuals of lathe and steady rule.",
            ));
        }
        if advice == SupportAdvice::BetweenCentres || asked == HoldingKind::BetweenCentres {
            cautions.push(Caution::new(
                Severity::Warning,
                "dog_turns_with_the_work",
                "Between centres a dog turns with the work: guard it, keep sleeves away, and keep the tool clear of it.",
            ));
        }
        Ok(SupportChoice {
            advice,
            options,
            length_over_diameter: slenderness,
            cautions,
        })
    }

    /// With the diameter that the zone is of, where the words should name it.
    pub(crate) fn with_zone_of(mut self, diameter: Diameter, units: Units) -> Self {
        self.of = Some((diameter, units));
        self
    }

    /// The advice alone, and the share of the zone that the spring then takes: no way is weighed beyond the first that
    /// is enough, and nothing is recorded.
    ///
    /// # Errors
    /// As [`choose`](Self::choose).
    pub(crate) fn advice(&self) -> Result<(SupportAdvice, f64), Error> {
        let mut unrecorded = Provenance::deaf();
        let weigh = self.weigh(&mut unrecorded);
        let mut share = 0.0;
        for way in self.ways() {
            let option = weigh.option(*way, &mut unrecorded)?;
            share = option.diameter_error.mm() / self.tolerance.mm();
            if option.enough {
                return Ok((option.holding.advice(), share));
            }
        }
        Ok((SupportAdvice::NoneEnough, share))
    }

    fn ways(&self) -> &'a [SupportWay] {
        self.ways.unwrap_or(match self.holding.kind() {
            HoldingKind::BetweenCentres => &[SupportWay::BetweenCentres, SupportWay::Steady],
            _ => &[
                SupportWay::Chuck,
                SupportWay::ChuckAndCentre,
                SupportWay::BetweenCentres,
                SupportWay::Steady,
            ],
        })
    }

    fn weigh(&self, provenance: &mut Provenance) -> Weigh<'_> {
        let springs = springs(self.holding, provenance);
        let share = provenance.open("share of the zone that spring may use", &SPRING_SHARE);
        let scatter = provenance.open("scatter of the specific force", &FORCE_SCATTER);
        Weigh {
            ask: self,
            springs,
            scatter,
            allowed: DiameterError::computed_trade(share * self.tolerance.mm()),
            share,
        }
    }
}

/// The share of a critical speed that a bar may run at.
pub(crate) fn safe_from_whip(critical: CriticalSpeed, share: f64) -> CriticalSpeed {
    CriticalSpeed::computed_trade(critical.rpm() * share)
}

/// The way in words, what holds beside a steady named.
fn words(way: SupportWay, kind: HoldingKind) -> String {
    match way {
        SupportWay::Steady => format!("{} and a steady", kind.words()),
        _ => way.words().to_owned(),
    }
}

/// What is the same for all ways.
struct Weigh<'a> {
    ask: &'a SupportAsk<'a>,
    springs: Springs,
    share: f64,
    scatter: f64,
    allowed: DiameterError,
}

impl Weigh<'_> {
    fn option(&self, way: SupportWay, provenance: &mut Provenance) -> Result<SupportOption, Error> {
        let ask = self.ask;
        let kind = way.kind(ask.holding.kind());
        let steadies = match way {
            SupportWay::Steady => self.steadies(kind, provenance)?,
            _ => Vec::new(),
        };
        let bar = self.held(kind, &steadies)?;
        if let (HoldingKind::BetweenCentres, Some(most)) = (kind, ask.between_centres)
            && bar.length() > most
        {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "sections",
                format!("a bar of {}", bar.length()),
                format!("at most the {most} that the lathe takes between its centres"),
                "hold it in the chuck and through the spindle, or take a longer lathe",
            ));
        }
        let force = size_of(ask.force);
        let (at, deflection) = bar.worst(force, self.from(&bar)?, bar.length())?;
        let error = deflection.diameter_error();
        let fits = error.mm() <= self.allowed.mm();
        let critical = ask
            .density
            .map(|density| bar.first_critical_speed(density))
            .transpose()?;
        let share_of_whip = match critical {
            Some(_) => provenance.open("share of the critical speed", &WHIP_SHARE),
            None => WHIP_SHARE.value,
        };
        let safe = critical.map(|n| safe_from_whip(n, share_of_whip));
        let calm = match (safe, ask.spindle_speed) {
            (Some(safe), Some(n)) => n.rpm() <= safe.rpm(),
            _ => true,
        };
        let (mut largest_depth, mut largest_feed) = (None, None);
        if let (Some(edge), true) = (ask.edge, deflection.mm() > 0.0) {
            let stiffness = Stiffness::computed_trade(force.newton() * 1e-3 / deflection.mm());
            largest_depth = spring_back::largest_depth(&edge, stiffness, self.allowed)?;
            if let Some(depth) = ask.depth_of_cut {
                largest_feed = spring_back::largest_feed(&edge, depth, stiffness, self.allowed)?;
            }
        }
        let whips = match (calm, safe, ask.spindle_speed) {
            (false, Some(safe), Some(n)) => format!(
                "; it whips: {n} is above {:.0} rpm, {:.0} % of its critical speed",
                safe.rpm(),
                100.0 * share_of_whip
            ),
            _ => String::new(),
        };
        Ok(SupportOption {
            holding: way,
            diameter_error: error,
            diameter_error_at_least: DiameterError::computed_trade(
                error.mm() * (1.0 - self.scatter),
            ),
            diameter_error_at_most: DiameterError::computed_trade(
                error.mm() * (1.0 + self.scatter),
            ),
            at,
            steady_at: steadies.first().map(Steady::at),
            first_critical_speed: critical,
            safe_from_whip_up_to: safe,
            largest_depth,
            largest_feed,
            enough: fits && calm,
            because: format!(
                "{}: the spring takes {} % of the zone{}, {} % is allowed: {}{whips}",
                words(way, kind),
                fixed(100.0 * error.mm() / ask.tolerance.mm(), 0),
                match ask.of {
                    Some((diameter, units)) => format!(" of {}", diameter.people(units)),
                    None => String::new(),
                },
                fixed(100.0 * self.share, 0),
                if fits { "enough" } else { "not enough" },
            ),
        })
    }

    fn held(&self, kind: HoldingKind, steadies: &[Steady]) -> Result<HeldBar, Error> {
        let ask = self.ask;
        HeldBar::new(
            ask.youngs_modulus,
            ask.sections,
            support_of(kind),
            &self.springs,
            steadies,
        )
    }

    /// The station nearest to the jaws that the tool reaches.
    fn from(&self, bar: &HeldBar) -> Result<WorkLength, Error> {
        let length = bar.length().mm();
        let reach = self.ask.reach.map_or(length * (1.0 - 1e-6), WorkLength::mm);
        let from = length - reach;
        if from > 0.0 {
            return Ok(WorkLength::computed_trade(from));
        }
        Err(Error::new(
            ErrorKind::Contradiction,
            "at",
            format!(
                "a tool that goes {} along a bar that stands out {}",
                WorkLength::computed_trade(reach),
                bar.length()
            ),
            "a tool that stays clear of the jaws",
            "let the bar stand out farther, or turn a shorter length",
        ))
    }

    /// The steadies of the asker, or one where the bar gives way most without it.
    fn steadies(
        &self,
        kind: HoldingKind,
        provenance: &mut Provenance,
    ) -> Result<Vec<Steady>, Error> {
        let given = self.ask.holding.steadies();
        let stiffness = |steady: &Steady, provenance: &mut Provenance| match steady.stiffness() {
            Some(_) => *steady,
            None => {
                steady.with_stiffness(provenance.open("stiffness of the steady", &STEADY_STIFFNESS))
            }
        };
        if !given.is_empty() {
            return Ok(given.iter().map(|s| stiffness(s, provenance)).collect());
        }
        let free = self.held(kind, &[])?;
        let (at, _) = free.worst(size_of(self.ask.force), self.from(&free)?, free.length())?;
        // With soft centres the worst place is an end; a steady stands between.
        let (least, most) = (0.2 * free.length().mm(), 0.8 * free.length().mm());
        let at = WorkLength::computed_trade(at.mm().clamp(least, most));
        Ok(vec![stiffness(&Steady::rigid(at), provenance)])
    }
}

/// The rule of thumb, where it disagrees with the figures.
fn second_opinion(
    advice: SupportAdvice,
    asked: HoldingKind,
    slenderness: Slenderness,
    provenance: &mut Provenance,
) -> Vec<Caution> {
    let free = provenance.open("overhang over diameter for the chuck alone", &FREE_UP_TO);
    let centred = provenance.open("overhang over diameter with a centre", &CENTRE_UP_TO);
    let ratio = slenderness.value();
    let mut cautions = Vec::new();
    if advice == SupportAdvice::Chuck && ratio > free {
        cautions.push(Caution::new(
            Severity::Warning,
            "rule_of_thumb_asks_for_a_centre",
            format!(
                "The bar stands out {ratio:.1} diameters: the figures allow the chuck alone, but the trade puts a \
                 centre beyond {free:.0}. A roughing cut, a worn edge or chatter bends it more: take the centre when in doubt."
            ),
        ));
    }
    if ratio > centred {
        cautions.push(Caution::new(
            Severity::Warning,
            "rule_of_thumb_asks_for_a_steady",
            format!(
                "The bar {} {ratio:.1} diameters: beyond about {centred:.0} the trade sets a steady.",
                match asked {
                    HoldingKind::BetweenCentres => "is as long between its centres as",
                    HoldingKind::Chuck | HoldingKind::ChuckAndCentre => "stands out",
                }
            ),
        ));
    }
    if advice == SupportAdvice::NoneEnough {
        cautions.push(Caution::new(
            Severity::Warning,
            "no_support_enough",
            "Nothing that was weighed keeps the spring within its share of the zone: a shorter overhang, lighter last cuts, \
             a smaller corner radius, or more steadies.",
        ));
    }
    cautions
}
