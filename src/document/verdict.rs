//! What a measured size proves.

use serde::Serialize;

use super::aim::{fine, limits_and_feature};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::spread::{Percent, chance_that_good};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::fields::Tree;
use crate::quantity::unit::Units;
use crate::quantity::{Diameter, Probability, SizeUncertainty, StandardUncertainty};
use crate::standards::decision::{DecisionRule, EXPANDED_FACTOR, Verdict, acceptance, verdict};
use crate::standards::limits::{Feature, Limits};

const FIELDS: &[&str] = &[
    "measured",
    "limits",
    "expanded_uncertainty",
    "standard_uncertainty",
    "of",
    "rule",
];

/// Sizes farther apart than this share of them are hardly of one part.
pub(super) const FAR: Sourced<f64> =
    Sourced::new(0.1, "judgement, no source: a tenth", Standing::Estimate);

/// A size farther from its zone than so many widths of it is hardly one of this part.
const FAR_IN_WIDTHS: Sourced<f64> =
    Sourced::new(10.0, "judgement, no source: ten", Standing::Estimate);

/// A measured size, its uncertainty, and the limits.
///
/// ```
/// use turnwright::document::verdict::Question;
/// use turnwright::{standards::decision::Verdict, Limits};
/// let limits = Limits::new("39.984 mm".parse()?, "40 mm".parse()?)?;
/// let answer = Question::new("39.997 mm".parse()?, limits, "0.0025 mm".parse()?).answer();
/// assert_eq!(answer.verdict, Verdict::CannotTell);
/// assert_eq!(answer.accept_to.map(|d| d.mm()), Some(39.995));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    measured: Diameter,
    limits: Limits,
    standard: StandardUncertainty,
    /// As it was given; its factor is then the rule's own business.
    expanded: Option<SizeUncertainty>,
    feature: Feature,
    rule: DecisionRule,
    units: Units,
}

/// What is proved.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Good, rework, scrap, or neither proved.
    pub verdict: Verdict,
    /// The guard band that was kept from the limits.
    pub guard_band: SizeUncertainty,
    /// The smallest size that proves a part good; none where no size does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accept_from: Option<Diameter>,
    /// The largest size that proves a part good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accept_to: Option<Diameter>,
    /// The chance that this part is good, from this measurement alone.
    pub chance_good: Probability,
    /// In words.
    pub text: String,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A size measured with a standard uncertainty, of a shaft, by the rule of the expanded
    /// uncertainty.
    #[must_use]
    pub fn new(measured: Diameter, limits: Limits, u: StandardUncertainty) -> Self {
        Self {
            measured,
            limits,
            standard: u,
            expanded: None,
            feature: Feature::Shaft,
            rule: DecisionRule::default(),
            units: Units::Metric,
        }
    }

    /// With an expanded uncertainty (k = 2) in place of the standard one.
    #[must_use]
    pub fn with_expanded_uncertainty(mut self, expanded: SizeUncertainty) -> Self {
        self.standard = standard_of(expanded);
        self.expanded = Some(expanded);
        self
    }

    /// Of a shaft or a hole: it decides which side is lost.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    /// By another rule.
    #[must_use]
    pub fn with_rule(mut self, rule: DecisionRule) -> Self {
        self.rule = rule;
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let measured = f.need_quantity("measured")?;
        let (limits, feature) = limits_and_feature(&f)?;
        let expanded = f.quantity::<SizeUncertainty>("expanded_uncertainty")?;
        let standard = f.quantity::<StandardUncertainty>("standard_uncertainty")?;
        let standard = match (expanded, standard) {
            (None, Some(u)) => u,
            (Some(expanded), None) => standard_of(expanded),
            (None, None) => {
                return Err(f.missing(
                    "expanded_uncertainty",
                    "the expanded uncertainty of the measurement (k = 2), or standard_uncertainty",
                ));
            }
            (Some(_), Some(_)) => {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path("standard_uncertainty"),
                    "both expanded_uncertainty and standard_uncertainty",
                    "one of the two",
                    "keep the one of the certificate or the budget",
                ));
            }
        };
        let question = Self {
            measured,
            limits,
            standard,
            expanded,
            feature,
            rule: f
                .choice("rule", &DecisionRule::ALL.map(|rule| (rule.name(), rule)))?
                .unwrap_or_default(),
            units,
        };
        f.finish()?;
        Ok(question)
    }

    /// What is proved.
    #[must_use]
    pub fn answer(&self) -> Answer {
        let mut provenance = Provenance::default();
        let _ = provenance.open("factor of the standard uncertainty", self.rule.factor());
        let guard = match (self.rule, self.expanded) {
            (DecisionRule::ExpandedUncertainty, Some(expanded)) => expanded,
            (rule, _) => rule.guard_band(self.standard),
        };
        let found = verdict(self.measured, self.limits, guard, self.feature);
        let accept = acceptance(self.limits, guard);
        let chance = chance_that_good(self.measured, self.limits, self.standard);
        let mut cautions = vec![Caution::new(
            Severity::Warning,
            "measure_at_rest",
            "Measure only with the spindle at rest and the tool clear, the part clean and cool; the machine's manual rules.",
        )];
        cautions.extend(self.far_off());
        if accept.is_none() {
            cautions.push(Caution::new(
                Severity::Warning,
                "no_size_proves_it_good",
                "The guard band takes the whole zone: no size measured so can prove a part good. Measure with a smaller \
                 uncertainty.",
            ));
        }
        Answer {
            verdict: found,
            guard_band: guard,
            accept_from: accept.map(|zone| zone.smallest()),
            accept_to: accept.map(|zone| zone.largest()),
            chance_good: chance,
            text: self.words(found, accept, chance),
            cautions,
            provenance,
        }
    }

    /// What is to be told of a size that is hardly one of this part.
    fn far_off(&self) -> Option<Caution> {
        let (smallest, largest) = (self.limits.smallest().mm(), self.limits.largest().mm());
        let size = self.measured.mm();
        let away = (smallest - size).max(size - largest);
        let far = away > FAR_IN_WIDTHS.value * self.limits.tolerance().mm()
            && away > FAR.value * smallest.min(size);
        far.then(|| {
            Caution::new(
                Severity::Warning,
                "another_part_or_unit",
                format!(
                    "{} is far from the zone of {} to {}: is this the right part, the right unit?",
                    fine(self.measured, self.units),
                    fine(self.limits.smallest(), self.units),
                    fine(self.limits.largest(), self.units)
                ),
            )
        })
    }

    fn words(&self, found: Verdict, accept: Option<Limits>, chance: Probability) -> String {
        let proved = match found {
            Verdict::Good => "is good",
            Verdict::Rework => "has metal left beyond the limit: rework",
            Verdict::Scrap => "is lost: too much metal is gone",
            Verdict::CannotTell => {
                "is too near to a limit to tell: neither good nor bad is proved, measure it better"
            }
        };
        let zone = accept.map_or_else(
            || String::from("no size proves a part good"),
            |zone| {
                format!(
                    "{} to {} prove a part good",
                    fine(zone.smallest(), self.units),
                    fine(zone.largest(), self.units)
                )
            },
        );
        format!(
            "The part of {} {proved}. With this uncertainty {zone}. The chance that this one is good: {}.",
            fine(self.measured, self.units),
            Percent(chance)
        )
    }
}

fn standard_of(expanded: SizeUncertainty) -> StandardUncertainty {
    StandardUncertainty::computed_trade(expanded.mm() / EXPANDED_FACTOR.value.value())
}
