//! Chuck alone or a live centre.

use std::fmt;

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::bar::{self, Bar, Springs, Support};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    DiameterError, Overhang, PassiveForce, Slenderness, Tolerance, WorkLength, YoungsModulus,
};
use crate::shop::holding::{
    CENTRE_STIFFNESS, CHUCK_ROTATIONAL_STIFFNESS, CHUCK_STIFFNESS, Holding, HoldingKind,
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

/// The stiffnesses of a holding; what is not given is the stated default of a workshop lathe.
pub(crate) fn springs(holding: &Holding, provenance: &mut Provenance) -> Springs {
    let given = |provenance: &mut Provenance, what: &str, value: &dyn fmt::Display| {
        provenance.record(what, value, "given by the asker", Standing::Given);
    };
    let chuck = match holding.stiffness() {
        Some(value) => {
            given(provenance, "stiffness of the chuck", &value);
            value
        }
        None => provenance.open("stiffness of the chuck", &CHUCK_STIFFNESS),
    };
    let rotational = match holding.rotational_stiffness() {
        Some(value) => {
            given(provenance, "rotational stiffness of the chuck", &value);
            value
        }
        None => provenance.open(
            "rotational stiffness of the chuck",
            &CHUCK_ROTATIONAL_STIFFNESS,
        ),
    };
    let centre = match holding.centre_stiffness() {
        Some(value) => {
            given(provenance, "stiffness of the centre", &value);
            value
        }
        None => provenance.open("stiffness of the centre", &CENTRE_STIFFNESS),
    };
    Springs::default()
        .with_chuck(chuck)
        .with_chuck_rotational(rotational)
        .with_centre(centre)
}

/// The size of a force: a bar that is pulled in is as wrong as one that is pushed away.
pub(crate) fn size_of(force: PassiveForce) -> PassiveForce {
    PassiveForce::computed_trade(force.newton().abs())
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
    /// Neither is enough.
    NoneEnough,
}

/// One way of holding, and what it would give.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SupportOption {
    /// The way of holding.
    pub holding: HoldingKind,
    /// The error of the diameter where the bar springs most.
    pub diameter_error: DiameterError,
    /// The same with a force as far above the table as bars scatter.
    pub diameter_error_at_most: DiameterError,
    /// Where that is, from the jaws.
    pub at: WorkLength,
    /// Whether it is enough for the zone.
    pub enough: bool,
    /// Why, with the figures put in.
    pub because: String,
}

/// Every way of holding that was looked at, and which is enough.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SupportChoice {
    /// What is advised.
    pub advice: SupportAdvice,
    /// All that was looked at.
    pub options: Vec<SupportOption>,
    /// Overhang over diameter, for the rule of thumb.
    pub length_over_diameter: Slenderness,
    /// What a person must be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub cautions: Vec<Caution>,
}

impl SupportChoice {
    /// What was found for one way of holding.
    #[must_use]
    pub fn option(&self, kind: HoldingKind) -> Option<&SupportOption> {
        self.options.iter().find(|option| option.holding == kind)
    }
}

/// Weighs the chuck alone against the chuck with a centre, for a tool that goes from the free end to
/// `reach` from it.
///
/// # Errors
/// `at`, when the tool would go beyond the jaws.
///
/// # Example
/// ```
/// use turnwright::advice::support::{choose, SupportAdvice};
/// use turnwright::physics::bar::Bar;
/// use turnwright::{Diameter, Holding, HoldingKind, Overhang, PassiveForce, Provenance, Tolerance, WorkLength, YoungsModulus};
/// let bar = Bar::new(YoungsModulus::from_gpa(210.0)?, Diameter::from_mm(16.0)?, Overhang::from_mm(160.0)?);
/// let choice = choose(
///     &bar,
///     &Holding::new(HoldingKind::Chuck),
///     PassiveForce::from_newton(55.0)?,
///     WorkLength::from_mm(150.0)?,
///     Tolerance::from_mm(0.04)?,
///     &mut Provenance::default(),
/// )?;
/// assert_eq!(choice.advice, SupportAdvice::ChuckAndCentre);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn choose(
    bar: &Bar,
    holding: &Holding,
    force: PassiveForce,
    reach: WorkLength,
    tolerance: Tolerance,
    provenance: &mut Provenance,
) -> Result<SupportChoice, Error> {
    let springs = springs(holding, provenance);
    let force = size_of(force);
    let share = provenance.open("share of the zone that spring may use", &SPRING_SHARE);
    let scatter = provenance.open("scatter of the specific force", &FORCE_SCATTER);
    let overhang = bar.overhang().mm();
    let from = overhang - reach.mm();
    if from <= 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "at",
            format!(
                "a tool that goes {reach} along a bar that stands out {}",
                bar.overhang()
            ),
            "a tool that stays clear of the jaws",
            "let the bar stand out farther, or turn a shorter length",
        ));
    }
    let allowed = share * tolerance.mm();
    let mut options = Vec::with_capacity(2);
    for kind in [HoldingKind::Chuck, HoldingKind::ChuckAndCentre] {
        let (at, deflection) = bar::worst_station(
            bar,
            &springs,
            support_of(kind),
            force,
            WorkLength::computed_trade(from),
            WorkLength::computed_trade(overhang),
        )?;
        let error = deflection.diameter_error();
        let enough = error.mm() <= allowed;
        let verdict = if enough { "enough" } else { "not enough" };
        options.push(SupportOption {
            holding: kind,
            diameter_error: error,
            diameter_error_at_most: DiameterError::computed_trade(error.mm() * (1.0 + scatter)),
            at,
            enough,
            because: format!(
                "{}: the spring takes {:.0} % of the zone, {:.0} % is allowed: {verdict}",
                kind.words(),
                100.0 * error.mm() / tolerance.mm(),
                100.0 * share,
            ),
        });
    }
    let advice = match options
        .iter()
        .find(|option| option.enough)
        .map(|option| option.holding)
    {
        Some(HoldingKind::Chuck) => SupportAdvice::Chuck,
        Some(HoldingKind::ChuckAndCentre) => SupportAdvice::ChuckAndCentre,
        None => SupportAdvice::NoneEnough,
    };
    let slenderness = Slenderness::computed_trade(overhang / bar.diameter().mm());
    let cautions = second_opinion(advice, slenderness, provenance);
    Ok(SupportChoice {
        advice,
        options,
        length_over_diameter: slenderness,
        cautions,
    })
}

/// The rule of thumb, where it disagrees with the figures.
fn second_opinion(
    advice: SupportAdvice,
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
            format!("The bar stands out {ratio:.1} diameters: beyond about {centred:.0} the trade sets a steady."),
        ));
    }
    if advice == SupportAdvice::NoneEnough {
        cautions.push(Caution::new(
            Severity::Warning,
            "no_support_enough",
            "Neither the chuck alone nor a centre keeps the spring within its share of the zone: a shorter overhang, \
             lighter last cuts, a smaller corner radius, or a steady.",
        ));
    }
    cautions
}
