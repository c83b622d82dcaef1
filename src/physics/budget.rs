//! Uncertainty budgets after the GUM: components, their sum, and how far to trust it.

use std::borrow::Cow;

use super::spread::SizeSpread;
use super::student;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Confidence, Correlation, CoverageFactor, DegreesOfFreedom, HalfWidth, Resolution, Sensitivity,
    SizeUncertainty, StandardUncertainty,
};

/// How a component scatters between its ends, or about its value.
///
/// # Source
/// JCGM 100:2008 (GUM) 4.3, from memory.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Distribution {
    /// The normal law.
    Normal,
    /// All values between two ends alike: a / sqrt(3).
    Uniform,
    /// Values near the middle more often: a / sqrt(6).
    Triangular,
    /// Values near the ends more often, as of a swing: a / sqrt(2).
    Arcsine,
}

impl Distribution {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Normal => "normal",
            Self::Uniform => "uniform",
            Self::Triangular => "triangular",
            Self::Arcsine => "arcsine",
        }
    }
}

/// One component of a budget.
///
/// # Example
/// ```
/// use turnwright::physics::budget::Component;
/// let mark = Component::uniform("setting a mark", "0.005 mm".parse()?).with_sensitivity("2".parse()?);
/// assert!((mark.contribution().mm() - 0.01 / 3.0_f64.sqrt()).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Component {
    name: Cow<'static, str>,
    distribution: Distribution,
    /// Its standard uncertainty, in mm.
    u: f64,
    sensitivity: f64,
    degrees_of_freedom: Option<DegreesOfFreedom>,
}

impl Component {
    fn new(name: impl Into<Cow<'static, str>>, distribution: Distribution, u: f64) -> Self {
        Self {
            name: name.into(),
            distribution,
            u,
            sensitivity: 1.0,
            degrees_of_freedom: None,
        }
    }

    /// A normal component of this standard uncertainty (GUM type A, or a figure from elsewhere).
    #[must_use]
    pub fn standard(name: impl Into<Cow<'static, str>>, u: StandardUncertainty) -> Self {
        Self::new(name, Distribution::Normal, u.mm())
    }

    /// A normal component from a certificate: expanded uncertainty over coverage factor.
    #[must_use]
    pub fn expanded(
        name: impl Into<Cow<'static, str>>,
        expanded: SizeUncertainty,
        k: CoverageFactor,
    ) -> Self {
        Self::new(name, Distribution::Normal, expanded.mm() / k.value())
    }

    /// A component between two ends, all values alike.
    #[must_use]
    pub fn uniform(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::new(name, Distribution::Uniform, a.mm() / 3.0_f64.sqrt())
    }

    /// A component between two ends, values near the middle more often.
    #[must_use]
    pub fn triangular(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::new(name, Distribution::Triangular, a.mm() / 6.0_f64.sqrt())
    }

    /// A component between two ends, values near the ends more often.
    #[must_use]
    pub fn arcsine(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::new(name, Distribution::Arcsine, a.mm() / 2.0_f64.sqrt())
    }

    /// The resolution of an instrument: uniform, half of it either way.
    #[must_use]
    pub fn resolution(name: impl Into<Cow<'static, str>>, resolution: Resolution) -> Self {
        Self::new(
            name,
            Distribution::Uniform,
            resolution.mm() / 12.0_f64.sqrt(),
        )
    }

    /// With this sensitivity coefficient (GUM: c) instead of 1.
    #[must_use]
    pub fn with_sensitivity(mut self, sensitivity: Sensitivity) -> Self {
        self.sensitivity = sensitivity.value();
        self
    }

    /// With these degrees of freedom (GUM: nu) instead of unlimited ones.
    #[must_use]
    pub fn with_degrees_of_freedom(mut self, degrees_of_freedom: DegreesOfFreedom) -> Self {
        self.degrees_of_freedom = Some(degrees_of_freedom);
        self
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// Its law.
    #[must_use]
    pub fn distribution(&self) -> Distribution {
        self.distribution
    }

    /// Its standard uncertainty (GUM: u), where it happens.
    #[must_use]
    pub fn standard_uncertainty(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(self.u)
    }

    /// What it contributes to the size: |c| u. It may be 0, where the sensitivity is.
    #[must_use]
    pub fn contribution(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade((self.sensitivity * self.u).abs())
    }

    /// Its degrees of freedom; none where they are unlimited.
    #[must_use]
    pub fn degrees_of_freedom(&self) -> Option<DegreesOfFreedom> {
        self.degrees_of_freedom
    }

    /// c u, with its sign.
    pub(super) fn signed(&self) -> f64 {
        self.sensitivity * self.u
    }
}

/// An uncertainty budget.
///
/// u_c^2 = sum (c_i u_i)^2 + 2 sum c_i c_j u_i u_j r_ij
///
/// # Units
/// Components in millimetres where they happen; the sensitivity brings them to the size.
/// # Source
/// JCGM 100:2008 (GUM) 5.1.2, 5.2.2, G.4, from memory.
/// # Example
/// The end gauge of the GUM, example H.1 (from memory): 32 nm, 16 degrees of freedom, U99 = 93 nm.
/// ```
/// use turnwright::physics::budget::{Budget, Component};
/// let part = |name: &'static str, u: &str, nu: &str| -> Result<_, turnwright::Error> {
///     Ok(Component::standard(name, u.parse()?).with_degrees_of_freedom(nu.parse()?))
/// };
/// let budget = Budget::new(vec![
///     part("standard", "0.000025 mm", "18")?,
///     part("comparator", "0.0000097 mm", "25.6")?,
///     part("expansion", "0.0000029 mm", "50")?,
///     part("temperature", "0.0000166 mm", "2")?,
/// ])?;
/// assert_eq!((budget.combined().mm() * 1e6).round(), 32.0);
/// assert_eq!(budget.degrees_of_freedom().map(|nu| nu.value().floor()), Some(16.0));
/// assert_eq!(budget.components()[budget.dominant()].name(), "standard");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Budget {
    components: Vec<Component>,
    correlations: Vec<(usize, usize, f64)>,
}

impl Budget {
    /// A budget of these components, none correlated.
    ///
    /// # Errors
    /// `components`: none at all, two of one name, or nothing that contributes.
    pub fn new(components: Vec<Component>) -> Result<Self, Error> {
        if components.is_empty() {
            return Err(Error::new(
                ErrorKind::MissingField,
                "components",
                "a budget without components",
                "at least one component with its uncertainty",
                "add what the size rests on: the instrument, the dial, the spring of the bar",
            ));
        }
        for (at, component) in components.iter().enumerate() {
            if components[..at]
                .iter()
                .any(|other| other.name == component.name)
            {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    "components",
                    format!("two components named {:?}", component.name()),
                    "each component once, with a name of its own",
                    "strike the second, or name it for what it is",
                ));
            }
        }
        let budget = Self {
            components,
            correlations: Vec::new(),
        };
        budget.check()?;
        Ok(budget)
    }

    /// With two components, counted from 0, correlated.
    ///
    /// # Errors
    /// `correlations`: a component that is not there, one with itself, a pair named twice, or
    /// coefficients that cannot be true together.
    pub fn with_correlation(
        mut self,
        first: usize,
        second: usize,
        correlation: Correlation,
    ) -> Result<Self, Error> {
        let pair = (first.min(second), first.max(second));
        let known = |at: usize| at < self.components.len();
        let twice = self.correlations.iter().any(|(a, b, _)| (*a, *b) == pair);
        if first == second || !known(first) || !known(second) || twice {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "correlations",
                format!("components {first} and {second}"),
                "two different components of the budget, each pair once",
                "count the components from 0",
            ));
        }
        self.correlations
            .push((pair.0, pair.1, correlation.value()));
        self.check()?;
        Ok(self)
    }

    fn check(&self) -> Result<(), Error> {
        let variance = self.variance();
        if variance > 0.0 {
            return Ok(());
        }
        Err(if self.correlations.is_empty() {
            Error::new(
                ErrorKind::Contradiction,
                "components",
                "components that contribute nothing",
                "at least one whose sensitivity is not 0",
                "check the sensitivities",
            )
        } else {
            Error::new(
                ErrorKind::Contradiction,
                "correlations",
                "coefficients that leave no uncertainty, or less than none",
                "coefficients that can be true together",
                "check their signs: 1 says that two components always move alike",
            )
        })
    }

    fn variance(&self) -> f64 {
        let own: f64 = self.components.iter().map(|c| c.signed().powi(2)).sum();
        own + self
            .correlations
            .iter()
            .map(|pair| self.covariance(pair))
            .sum::<f64>()
    }

    /// 2 c_i c_j u_i u_j r_ij
    fn covariance(&self, &(first, second, r): &(usize, usize, f64)) -> f64 {
        2.0 * self.components[first].signed() * self.components[second].signed() * r
    }

    /// The components, in the order given.
    #[must_use]
    pub fn components(&self) -> &[Component] {
        &self.components
    }

    /// The combined standard uncertainty (GUM: u_c).
    #[must_use]
    pub fn combined(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(self.variance().sqrt())
    }

    /// The effective degrees of freedom (GUM: nu_eff); none where they are unlimited, or where
    /// components are correlated, for which the formula does not hold.
    ///
    /// nu_eff = u_c^4 / sum ((c_i u_i)^4 / nu_i) (Welch and Satterthwaite)
    #[must_use]
    pub fn degrees_of_freedom(&self) -> Option<DegreesOfFreedom> {
        if !self.correlations.is_empty() {
            return None;
        }
        let limited: f64 = self
            .components
            .iter()
            .filter_map(|c| {
                c.degrees_of_freedom
                    .map(|nu| c.signed().powi(4) / nu.value())
            })
            .sum();
        (limited > 0.0).then(|| DegreesOfFreedom::computed_trade(self.variance().powi(2) / limited))
    }

    /// The coverage factor (GUM: k) for a level of confidence: of Student's t law.
    #[must_use]
    pub fn coverage_factor(&self, confidence: Confidence) -> CoverageFactor {
        student::coverage_factor(self.degrees_of_freedom(), confidence)
    }

    /// The expanded uncertainty (GUM: U = k u_c) for a level of confidence.
    #[must_use]
    pub fn expanded(&self, confidence: Confidence) -> SizeUncertainty {
        SizeUncertainty::computed_trade(
            self.coverage_factor(confidence).value() * self.combined().mm(),
        )
    }

    /// The share of a component, counted from 0, in the variance; the shares sum to 1, and a
    /// correlated one may be negative. A component that is not there has none.
    #[must_use]
    pub fn share(&self, component: usize) -> f64 {
        let Some(own) = self.components.get(component) else {
            return 0.0;
        };
        let with_others: f64 = self
            .correlations
            .iter()
            .filter(|(a, b, _)| *a == component || *b == component)
            .map(|pair| 0.5 * self.covariance(pair))
            .sum();
        (own.signed().powi(2) + with_others) / self.variance()
    }

    /// The component with the largest share, counted from 0; of equal ones the first.
    #[must_use]
    pub fn dominant(&self) -> usize {
        let mut best = 0;
        for at in 1..self.components.len() {
            if self.share(at) > self.share(best) {
                best = at;
            }
        }
        best
    }

    /// The spread of the size: the largest uniform contribution as what it is, all the rest normal.
    /// Where components are correlated, all of it is taken as normal.
    #[must_use]
    pub fn spread(&self) -> SizeSpread {
        if !self.correlations.is_empty() {
            return SizeSpread::of_parts(self.variance().sqrt(), 0.0);
        }
        let uniform = |c: &Component| c.distribution == Distribution::Uniform;
        let mut largest = None;
        for (at, component) in self.components.iter().enumerate() {
            let u = component.signed().abs();
            if uniform(component) && u > largest.map_or(0.0, |(_, most)| most) {
                largest = Some((at, u));
            }
        }
        let rest = |without: Option<usize>| {
            let others = self.components.iter().enumerate();
            others
                .filter(|(at, _)| Some(*at) != without)
                .map(|(_, c)| c.signed().powi(2))
                .sum::<f64>()
                .sqrt()
        };
        match largest {
            Some((at, u)) => SizeSpread::of_parts(rest(Some(at)), 3.0_f64.sqrt() * u),
            None => SizeSpread::of_parts(rest(None), 0.0),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn standard(name: &'static str, um: f64) -> Component {
        Component::standard(name, StandardUncertainty::from_mm(um * 1e-3).unwrap())
    }

    #[test]
    fn a_budget_that_says_nothing_is_refused() {
        let none = Budget::new(Vec::new()).unwrap_err();
        assert_eq!(
            (none.field(), none.kind()),
            ("components", ErrorKind::MissingField)
        );
        let twice = Budget::new(vec![standard("dial", 3.0), standard("dial", 4.0)]).unwrap_err();
        assert_eq!(twice.field(), "components");
        let nothing = standard("dial", 3.0).with_sensitivity(Sensitivity::from_value(0.0).unwrap());
        assert_eq!(
            Budget::new(vec![nothing]).unwrap_err().field(),
            "components"
        );
    }

    #[test]
    fn correlations_that_cannot_be_are_refused() {
        let pair = || Budget::new(vec![standard("a", 3.0), standard("b", 3.0)]).unwrap();
        let r = |value| Correlation::from_value(value).unwrap();
        for (first, second, value) in [(0, 0, 0.5), (0, 2, 0.5), (0, 1, -1.0)] {
            let error = pair()
                .with_correlation(first, second, r(value))
                .unwrap_err();
            assert_eq!(error.field(), "correlations", "{first} {second} {value}");
        }
        let named = pair().with_correlation(0, 1, r(0.5)).unwrap();
        assert!(named.with_correlation(1, 0, r(0.5)).is_err());
    }

    #[test]
    fn the_largest_uniform_contribution_stays_uniform() {
        let a = |mm| HalfWidth::from_mm(mm).unwrap();
        let two = Sensitivity::from_value(2.0).unwrap();
        let budget = Budget::new(vec![
            Component::uniform("small", a(0.002)),
            Component::uniform("mark", a(0.005)).with_sensitivity(two),
            standard("hand", 3.0),
        ])
        .unwrap();
        let rest = (0.002_f64.powi(2) / 3.0 + 0.003_f64.powi(2)).sqrt();
        let expected = SizeSpread::of_parts(rest, 0.01);
        let near = |a: f64, b: f64| assert!((a / b - 1.0).abs() < 1e-14, "{a} {b}");
        near(budget.spread().standard().mm(), expected.standard().mm());
        // The same law, not only the same variance: alike in the tail.
        near(
            budget.spread().share_below(-0.012),
            expected.share_below(-0.012),
        );
    }

    proptest! {
        #[test]
        fn shares_sum_to_one(us in prop::collection::vec(0.1..20.0_f64, 3..8), r in -0.9..0.9_f64) {
            const NAMES: [&str; 8] = ["a", "b", "c", "d", "e", "f", "g", "h"];
            let components = us.iter().zip(NAMES).map(|(u, name)| standard(name, *u)).collect();
            let budget = Budget::new(components).unwrap();
            let budget = budget.with_correlation(0, 1, Correlation::from_value(r).unwrap()).unwrap();
            let sum: f64 = (0..us.len()).map(|at| budget.share(at)).sum();
            // Eight roundings.
            prop_assert!((sum - 1.0).abs() < 1e-14);
            prop_assert!((0..us.len()).all(|at| budget.share(at) <= budget.share(budget.dominant())));
        }

        #[test]
        fn degrees_of_freedom_lie_between_the_least_and_their_sum(us in prop::collection::vec((0.1..20.0_f64, 1.0..60.0_f64), 1..8)) {
            const NAMES: [&str; 8] = ["a", "b", "c", "d", "e", "f", "g", "h"];
            let components = us.iter().zip(NAMES).map(|((u, nu), name)| {
                standard(name, *u).with_degrees_of_freedom(DegreesOfFreedom::from_value(*nu).unwrap())
            });
            let budget = Budget::new(components.collect()).unwrap();
            let nu = budget.degrees_of_freedom().unwrap().value();
            let least = us.iter().map(|(_, nu)| *nu).fold(f64::INFINITY, f64::min);
            let sum: f64 = us.iter().map(|(_, nu)| *nu).sum();
            // JCGM 100, G.4.1, from memory: the effective number lies between these two.
            prop_assert!(nu >= least * (1.0 - 1e-12) && nu <= sum * (1.0 + 1e-12));
        }
    }
}
