//! How uncertain a size is, what makes it so, and how many parts come out good.

use serde::Serialize;

use super::aim::{Aimed, feature, fine, only_as_good, prices};
use crate::advice::reach::aim_on_the_limit;
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind, any_of};
use crate::physics::aim::Prices;
use crate::physics::budget::{Budget, Component, Distribution};
use crate::physics::monte_carlo::{Simulated, simulate};
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::unit::Units;
use crate::quantity::{
    Confidence, Correlation, CoverageFactor, DegreesOfFreedom, Diameter, HalfWidth, Probability,
    Resolution, Sensitivity, SizeUncertainty, StandardUncertainty,
};
use crate::standards::decision::acceptance;
use crate::standards::limits::{Feature, Limits};
use crate::standards::stated_limits::Stated;

const FIELDS: &[&str] = &[
    "components",
    "correlations",
    "confidence",
    "limits",
    "aim",
    "of",
    "price_scrap",
    "price_rework",
    "simulate",
];

/// The share of the normal law within two standard deviations: the usual coverage factor of 2, that
/// "about 95 %" of JCGM 100, 6.3.3 (from memory).
const TWO_DEVIATIONS: Confidence = Confidence::computed_trade(0.954_499_736_103_641_6);
/// Draws and seed where the asker names none: judgement, no source.
const DRAWS: u32 = 100_000;
const SEED: u32 = 1;

/// A budget, and what is asked of it.
///
/// ```
/// use turnwright::document::budget::Question;
/// use turnwright::physics::budget::{Budget, Component};
/// use turnwright::Limits;
/// let budget = Budget::new(vec![
///     Component::uniform("setting the mark", "0.005 mm".parse()?).with_sensitivity("2".parse()?),
///     Component::standard("repeatability", "0.003 mm".parse()?),
/// ])?;
/// let limits = Limits::new("39.961 mm".parse()?, "40 mm".parse()?)?;
/// let answer = Question::new(budget).with_limits(limits).answer()?;
/// assert_eq!(answer.dominant, "setting the mark");
/// assert!(answer.good.is_some_and(|good| good.value() > 0.999));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    budget: Budget,
    confidence: Confidence,
    limits: Option<Limits>,
    aim: Option<Diameter>,
    feature: Feature,
    prices: Option<Prices>,
    simulate: Option<(u32, u32)>,
    units: Units,
}

/// A component and its share.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Share {
    /// Its name.
    pub name: String,
    /// The law it follows.
    pub distribution: Distribution,
    /// By how much the size changes for a change of it.
    pub sensitivity: Sensitivity,
    /// Its degrees of freedom; none where they are infinitely many.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub degrees_of_freedom: Option<DegreesOfFreedom>,
    /// What it contributes; none where its sensitivity is 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub contribution: Option<StandardUncertainty>,
    /// Its share of the variance: all make one; negative where a correlated one takes off more than
    /// it adds.
    pub share: f64,
}

/// What a budget comes to.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// Combined standard uncertainty.
    pub combined: StandardUncertainty,
    /// Effective degrees of freedom; none where they are infinitely many.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub degrees_of_freedom: Option<DegreesOfFreedom>,
    /// The level of confidence of the expanded uncertainty.
    pub confidence: Confidence,
    /// Coverage factor.
    pub coverage_factor: CoverageFactor,
    /// Expanded uncertainty.
    pub expanded: SizeUncertainty,
    /// The component of the largest share.
    pub dominant: String,
    /// All components, the largest share first.
    pub shares: Vec<Share>,
    /// The size aimed for, where limits were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub aim: Option<Diameter>,
    /// Share of good parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub good: Option<Probability>,
    /// Share of parts with metal left.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rework: Option<Probability>,
    /// Share of lost parts.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scrap: Option<Probability>,
    /// The smallest size that, measured with this uncertainty, proves a part good.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accept_from: Option<Diameter>,
    /// The largest size that does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub accept_to: Option<Diameter>,
    /// The cheapest aim, where prices were given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub best_aim: Option<Aimed>,
    /// The same drawn at random, where that was asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub simulated: Option<Simulated>,
    /// A table for people.
    pub text: String,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
}

impl Question {
    /// A budget, at about 95 % (k = 2 for infinitely many degrees of freedom).
    #[must_use]
    pub fn new(budget: Budget) -> Self {
        Self {
            budget,
            confidence: TWO_DEVIATIONS,
            limits: None,
            aim: None,
            feature: Feature::Shaft,
            prices: None,
            simulate: None,
            units: Units::Metric,
        }
    }

    /// At another level of confidence.
    #[must_use]
    pub fn with_confidence(mut self, confidence: Confidence) -> Self {
        self.confidence = confidence;
        self
    }

    /// Of a shaft or a hole: it decides which side is lost.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    /// Drawn at random as well, so many times, from a seed.
    #[must_use]
    pub fn with_simulation(mut self, draws: u32, seed: u32) -> Self {
        self.simulate = Some((draws, seed));
        self
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = units;
        self
    }

    crate::shop::setters! {
        /// With limits, for the shares of good parts, rework and scrap.
        with_limits limits: Limits;
        /// With the size aimed for, in place of the middle of the zone.
        with_aim aim: Diameter;
        /// With prices, for the cheapest aim.
        with_prices prices: Prices;
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let components = f.need_item(
            "components",
            "the components: [{ \"name\": \"instrument\", \"half_width\": \"0.004 mm\" }]",
            |tree, path| list(tree, path, component),
        )?;
        let names: Vec<String> = components.iter().map(|c| c.name().to_owned()).collect();
        let mut budget = Budget::new(components)?;
        let pairs = f.item("correlations", |tree, path| {
            list(tree, path, |tree, path| correlation(tree, path, &names))
        })?;
        if let Some(pairs) = pairs {
            budget = budget.with_correlations(&pairs)?;
        }
        let stated = f.item("limits", Stated::read)?;
        let question = Self {
            budget,
            confidence: f.quantity("confidence")?.unwrap_or(TWO_DEVIATIONS),
            limits: stated.map(|stated| stated.limits),
            aim: f.quantity("aim")?,
            feature: feature(&f, stated.as_ref())?,
            prices: prices(&f)?,
            simulate: f.item("simulate", |tree, path| {
                let f = Fields::of(tree, path, "a simulation")?;
                let asked = (
                    f.count("draws")?.unwrap_or(DRAWS),
                    f.count("seed")?.unwrap_or(SEED),
                );
                f.finish()?;
                Ok(asked)
            })?,
            units,
        };
        if question.limits.is_none() && (question.aim.is_some() || question.prices.is_some()) {
            return Err(f.missing(
                "limits",
                "the limits of the size, for an aim and its price: [\"39.984 mm\", \"40 mm\"]",
            ));
        }
        f.finish()?;
        Ok(question)
    }

    /// What the budget comes to.
    ///
    /// # Errors
    /// `aim` outside of the zone; `limits` missing for an aim or prices; `simulate.draws` out of range.
    pub fn answer(&self) -> Result<Answer, Error> {
        let budget = &self.budget;
        let combined = budget.combined();
        let expanded = budget.expanded(self.confidence);
        let mut cautions = Vec::new();
        let mut answer = Answer {
            combined,
            degrees_of_freedom: budget.degrees_of_freedom(),
            confidence: self.confidence,
            coverage_factor: budget.coverage_factor(self.confidence),
            expanded,
            dominant: budget.components()[budget.dominant()].name().to_owned(),
            shares: shares(budget),
            aim: None,
            good: None,
            rework: None,
            scrap: None,
            accept_from: None,
            accept_to: None,
            best_aim: None,
            simulated: None,
            text: String::new(),
            cautions: Vec::new(),
        };
        let mut task = None;
        if let Some(limits) = self.limits {
            let aim = self.aim.unwrap_or_else(|| limits.middle());
            if !limits.contains(aim) {
                return Err(outside(aim, limits));
            }
            let come_out = budget.outcome(limits, aim, self.feature);
            let accept = acceptance(limits, expanded);
            answer.aim = Some(aim);
            answer.good = Some(come_out.good);
            answer.rework = Some(come_out.rework);
            answer.scrap = Some(come_out.scrap);
            answer.accept_from = accept.map(|zone| zone.smallest());
            answer.accept_to = accept.map(|zone| zone.largest());
            if let Some(prices) = self.prices {
                let best = match budget.plain_spread() {
                    Some(spread) => Aimed::best_in_zone(limits, spread, prices, self.feature),
                    None => Aimed::best_by(limits, prices, |aim| {
                        budget.outcome(limits, aim, self.feature)
                    }),
                };
                let near = |limit: Diameter| {
                    (best.aim.mm() - limit.mm()).abs() <= 1e-9 * limits.tolerance().mm()
                };
                if near(limits.smallest()) || near(limits.largest()) {
                    cautions.push(aim_on_the_limit(best.aim, self.units));
                }
                answer.best_aim = Some(best);
            }
            if accept.is_none() {
                cautions.push(Caution::new(
                    Severity::Warning,
                    "no_size_proves_it_good",
                    "The expanded uncertainty takes the whole zone: no size measured with it can prove a part good.",
                ));
            }
            cautions.push(only_as_good());
            task = Some((limits, aim, self.feature));
        }
        if let Some((draws, seed)) = self.simulate {
            let drawn = simulate(budget, task, draws, seed.into(), self.confidence);
            answer.simulated = Some(drawn.map_err(|error| {
                if error.field() == "draws" {
                    error.inside("simulate")
                } else {
                    error
                }
            })?);
        }
        if budget.is_correlated() {
            cautions.push(Caution::new(
                Severity::Note,
                "correlated_taken_as_normal",
                "Components that are correlated are taken together as one of a normal law, with the fewest degrees of freedom of \
                 any of them: no formula holds there.",
            ));
        }
        answer.cautions = cautions;
        answer.text = self.words(&answer);
        Ok(answer)
    }

    fn words(&self, answer: &Answer) -> String {
        let units = self.units;
        let mut lines: Vec<String> = answer
            .shares
            .iter()
            .map(|share| {
                let size = share
                    .contribution
                    .map_or_else(|| String::from("nothing"), |u| fine(u, units));
                let mut line = format!(
                    "{}: {size}, {:.1} % ({}",
                    share.name,
                    100.0 * share.share,
                    share.distribution
                );
                if share.sensitivity.value() != 1.0 {
                    line.push_str(&format!(", sensitivity {}", share.sensitivity.value()));
                }
                if let Some(nu) = share.degrees_of_freedom {
                    line.push_str(&format!(", {} degrees of freedom", nu.value()));
                }
                line + ")"
            })
            .collect();
        lines.push(format!("Together: {}", fine(answer.combined, units)));
        let freedom = answer.degrees_of_freedom.map_or_else(String::new, |nu| {
            format!(", {:.1} degrees of freedom", nu.value())
        });
        lines.push(format!(
            "Expanded: {} (k = {:.2}, {:.2} %{freedom})",
            fine(answer.expanded, units),
            answer.coverage_factor.value(),
            100.0 * answer.confidence.value()
        ));
        if let (Some(limits), Some(aim)) = (self.limits, answer.aim) {
            let come_out = self.budget.outcome(limits, aim, self.feature);
            let law = match self.budget.few_degrees_of_freedom() {
                Some(nu) => format!(" (Student's law of {:.1} degrees of freedom", nu.value()),
                None => String::from(" (normal law"),
            };
            let shaped = |c: &Component| c.distribution() != Distribution::Normal;
            let law = match self.budget.components().iter().any(shaped) {
                true => law + ", with components that have ends as they are)",
                false => law + ")",
            };
            lines.push(format!("Aim {}: {come_out}{law}", fine(aim, units)));
        }
        if let Some(best) = &answer.best_aim {
            lines.push(best.line("Cheapest aim", units));
        }
        if let (Some(from), Some(to)) = (answer.accept_from, answer.accept_to) {
            lines.push(format!(
                "Measured with this uncertainty, {} to {} prove a part good",
                fine(from, units),
                fine(to, units)
            ));
        }
        if let Some(drawn) = &answer.simulated {
            lines.push(format!(
                "Drawn {} times: standard deviation {}, interval {} to {}",
                drawn.draws,
                fine(drawn.standard_deviation, units),
                fine(drawn.from, units),
                fine(drawn.to, units)
            ));
            if let Some(outcome) = &drawn.outcome {
                lines.push(format!("Of those: {}", outcome.counted));
            }
        }
        lines.join("\n")
    }
}

fn shares(budget: &Budget) -> Vec<Share> {
    let mut shares: Vec<Share> = budget
        .components()
        .iter()
        .enumerate()
        .map(|(i, component)| Share {
            name: component.name().to_owned(),
            distribution: component.distribution(),
            sensitivity: component.sensitivity(),
            degrees_of_freedom: component.degrees_of_freedom(),
            contribution: component.contribution(),
            share: budget.share(i).unwrap_or(0.0),
        })
        .collect();
    shares.sort_by(|a, b| b.share.total_cmp(&a.share));
    shares
}

#[cold]
fn outside(aim: Diameter, limits: Limits) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "aim",
        aim.to_string(),
        format!(
            "a size in the zone, from {} to {}",
            limits.smallest(),
            limits.largest()
        ),
        "aim inside the zone, or leave the aim out for its middle",
    )
}

/// One component, from its fields.
fn component(tree: &Tree, path: &str) -> Result<Component, Error> {
    let f = Fields::of(tree, path, "a component")?.knowing(&[
        "name",
        "standard",
        "expanded",
        "k",
        "half_width",
        "width",
        "resolution",
        "distribution",
        "sensitivity",
        "degrees_of_freedom",
    ]);
    let name = f
        .name("name")?
        .ok_or_else(|| f.missing("name", "the name of the component, such as \"instrument\""))?
        .to_owned();
    let standard = f.quantity::<StandardUncertainty>("standard")?;
    let expanded = f.quantity::<SizeUncertainty>("expanded")?;
    let k = f.quantity::<CoverageFactor>("k")?;
    let half_width = f.quantity::<HalfWidth>("half_width")?;
    let width = f.item("width", full_width)?;
    let resolution = f.quantity::<Resolution>("resolution")?;
    let law = f.choice(
        "distribution",
        &Distribution::ALL.map(|law| (law.name(), law)),
    )?;
    const WAYS: [&str; 5] = ["standard", "expanded", "half_width", "width", "resolution"];
    let given: Vec<&str> = WAYS.into_iter().filter(|way| f.has(way)).collect();
    if given.len() > 1 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            f.path(given[1]),
            given.join(" and "),
            format!("one of {}", any_of(WAYS)),
            "keep the one that was stated or found, leave the others out",
        ));
    }
    if k.is_some() && expanded.is_none() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            f.path("k"),
            "a coverage factor without an expanded uncertainty",
            "k beside expanded only",
            "give the expanded uncertainty that k belongs to, or leave k out",
        ));
    }
    let ends = half_width.or(width);
    let component = match (standard, expanded, ends, resolution) {
        (Some(u), ..) => Component::standard(name, u),
        (_, Some(expanded), ..) => {
            let k = k.ok_or_else(|| {
                f.missing(
                    "k",
                    "the coverage factor of the expanded uncertainty, often 2",
                )
            })?;
            Component::expanded(name, expanded, k)
        }
        (_, _, Some(a), _) => match law.unwrap_or(Distribution::Uniform) {
            Distribution::Uniform => Component::uniform(name, a),
            Distribution::Triangular => Component::triangular(name, a),
            Distribution::Arcsine => Component::arcsine(name, a),
            Distribution::Normal => return Err(wrong_law(&f, Distribution::Normal)),
        },
        (_, _, _, Some(q)) => Component::resolution(name, q),
        _ => return Err(f.missing("standard", &format!("one of {}", any_of(WAYS)))),
    };
    if let Some(law) = law
        && law != component.distribution()
    {
        return Err(wrong_law(&f, law));
    }
    let component = match f.quantity("sensitivity")? {
        Some(c) => component.with_sensitivity(c),
        None => component,
    };
    let component = match f.quantity("degrees_of_freedom")? {
        Some(nu) => component.with_degrees_of_freedom(nu),
        None => component,
    };
    f.finish()?;
    Ok(component)
}

#[cold]
fn wrong_law(f: &Fields<'_>, law: Distribution) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        f.path("distribution"),
        format!("\"{law}\" with this way of stating it"),
        "\"normal\" with standard or expanded, the others with half_width or width",
        "leave the distribution out, or state the component the other way",
    )
}

/// Half of a full width.
fn full_width(tree: &Tree, path: &str) -> Result<HalfWidth, Error> {
    // A resolution is the one quantity that is a full width; its words are not.
    let width: Resolution = crate::quantity::fields::quantity(tree, path).map_err(|error| {
        Error::new(
            error.kind(),
            error.field(),
            error.given(),
            error.expected().replace("a resolution", "a full width"),
            error.remedy(),
        )
    })?;
    Ok(HalfWidth::computed_trade(0.5 * width.mm()))
}

/// A pair of components by their names.
fn correlation(
    tree: &Tree,
    path: &str,
    names: &[String],
) -> Result<(usize, usize, Correlation), Error> {
    let f = Fields::of(tree, path, "a correlation")?;
    let place = |field: &'static str| {
        let name = f
            .text(field)?
            .ok_or_else(|| f.missing(field, "the name of a component"))?;
        names.iter().position(|known| known == name).ok_or_else(|| {
            Error::new(
                ErrorKind::UnknownName,
                f.path(field),
                format!("\"{name}\""),
                any_of(names.iter().map(String::as_str)),
                "write the name of a component as it stands in the list",
            )
        })
    };
    let pair = (
        place("first")?,
        place("second")?,
        f.need_quantity("coefficient")?,
    );
    f.finish()?;
    Ok(pair)
}
