//! The uncertainty budget of a size.
//!
//! Symbols of JCGM 100 (the GUM): u standard uncertainty, c sensitivity coefficient, nu degrees of
//! freedom, r correlation coefficient, u_c combined standard uncertainty, k coverage factor, U
//! expanded uncertainty, p level of confidence, a half width of a distribution.

use std::borrow::Cow;
use std::fmt;

use super::correlation::Correlations;
use super::maths::sqrt;
use super::size_law::{Parts, SizeLaw};
use super::spread::{Outcome, SizeSpread, shares};
use super::student;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Confidence, Correlation, CoverageFactor, DegreesOfFreedom, Diameter, HalfWidth, Resolution,
    Sensitivity, SizeUncertainty, StandardUncertainty,
};
use crate::standards::limits::{Feature, Limits};

/// The law that a component follows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Distribution {
    /// The normal law.
    Normal,
    /// All values between two ends alike: u = a/sqrt 3.
    Uniform,
    /// The middle likeliest, the ends never: u = a/sqrt 6.
    Triangular,
    /// The ends likeliest, as of a swing between them: u = a/sqrt 2.
    Arcsine,
}

impl Distribution {
    /// All of them, in the order of this page.
    pub const ALL: [Self; 4] = [Self::Normal, Self::Uniform, Self::Triangular, Self::Arcsine];

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

    /// (a/u)^2, of a law that has ends.
    fn square_of_ends(self) -> Option<f64> {
        match self {
            Self::Normal => None,
            Self::Uniform => Some(3.0),
            Self::Triangular => Some(6.0),
            Self::Arcsine => Some(2.0),
        }
    }
}

impl fmt::Display for Distribution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// One part of what makes a size uncertain.
///
/// # Units
/// The types carry them.
/// # Source
/// JCGM 100:2008, 4.2 and 4.3 (from memory).
/// # Example
/// ```
/// use turnwright::physics::budget::Component;
/// // The slide's mark is set to half a tenth of a division; the diameter moves by twice that.
/// let mark = Component::uniform("setting the mark", "0.005 mm".parse()?)
///     .with_sensitivity("2".parse()?);
/// assert!((mark.contribution().map_or(0.0, |u| u.mm()) - 0.005774).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Component {
    name: Cow<'static, str>,
    distribution: Distribution,
    /// Millimetres of what the component itself is.
    standard: f64,
    sensitivity: f64,
    degrees_of_freedom: Option<DegreesOfFreedom>,
}

impl Component {
    fn new(
        name: impl Into<Cow<'static, str>>,
        distribution: Distribution,
        standard_mm: f64,
    ) -> Self {
        Self {
            name: name.into(),
            distribution,
            standard: standard_mm,
            sensitivity: 1.0,
            degrees_of_freedom: None,
        }
    }

    fn with_ends(
        name: impl Into<Cow<'static, str>>,
        distribution: Distribution,
        half_width_mm: f64,
    ) -> Self {
        let square = distribution.square_of_ends().unwrap_or(1.0);
        Self::new(name, distribution, half_width_mm / sqrt(square))
    }

    /// A normal law of standard uncertainty u, as a certificate or repeated measurements give it.
    #[must_use]
    pub fn standard(name: impl Into<Cow<'static, str>>, u: StandardUncertainty) -> Self {
        Self::new(name, Distribution::Normal, u.mm())
    }

    /// A normal law of which an expanded uncertainty is stated with its coverage factor: u = U/k.
    #[must_use]
    pub fn expanded(
        name: impl Into<Cow<'static, str>>,
        expanded: SizeUncertainty,
        k: CoverageFactor,
    ) -> Self {
        Self::new(name, Distribution::Normal, expanded.mm() / k.value())
    }

    /// Anywhere within +-a alike: u = a/sqrt 3.
    #[must_use]
    pub fn uniform(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::with_ends(name, Distribution::Uniform, a.mm())
    }

    /// Within +-a, the middle likeliest: u = a/sqrt 6.
    #[must_use]
    pub fn triangular(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::with_ends(name, Distribution::Triangular, a.mm())
    }

    /// Within +-a, the ends likeliest, as of a temperature that swings: u = a/sqrt 2.
    #[must_use]
    pub fn arcsine(name: impl Into<Cow<'static, str>>, a: HalfWidth) -> Self {
        Self::with_ends(name, Distribution::Arcsine, a.mm())
    }

    /// The step q of a scale or a display: uniform within +-q/2, u = q/sqrt 12.
    #[must_use]
    pub fn resolution(name: impl Into<Cow<'static, str>>, q: Resolution) -> Self {
        Self::with_ends(name, Distribution::Uniform, 0.5 * q.mm())
    }

    /// With c: by how much the size changes for a change of this component. 2 for a slide that moves
    /// along the radius, where the size is a diameter.
    #[must_use]
    pub fn with_sensitivity(mut self, c: Sensitivity) -> Self {
        self.sensitivity = c.value();
        self
    }

    /// With the degrees of freedom of u; infinitely many, unless told.
    #[must_use]
    pub fn with_degrees_of_freedom(mut self, nu: DegreesOfFreedom) -> Self {
        self.degrees_of_freedom = Some(nu);
        self
    }

    /// Its name.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The law it follows.
    #[must_use]
    pub fn distribution(&self) -> Distribution {
        self.distribution
    }

    /// Its own standard uncertainty u.
    #[must_use]
    pub fn standard_uncertainty(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(self.standard)
    }

    /// Its degrees of freedom; none where they are infinitely many.
    #[must_use]
    pub fn degrees_of_freedom(&self) -> Option<DegreesOfFreedom> {
        self.degrees_of_freedom
    }

    /// Its sensitivity coefficient c.
    #[must_use]
    pub fn sensitivity(&self) -> Sensitivity {
        Sensitivity::computed_trade(self.sensitivity)
    }

    /// Its contribution |c| u to the uncertainty of the size; none where the sensitivity is zero.
    #[must_use]
    pub fn contribution(&self) -> Option<StandardUncertainty> {
        (self.sensitivity != 0.0).then(|| StandardUncertainty::computed_trade(self.signed().abs()))
    }

    /// c u in millimetres.
    pub(super) fn signed(&self) -> f64 {
        self.sensitivity * self.standard
    }

    /// |c| a in millimetres, of a law that has ends.
    pub(super) fn half_width(&self) -> Option<f64> {
        let square = self.distribution.square_of_ends()?;
        Some(self.signed().abs() * sqrt(square))
    }
}

/// Components that are correlated with each other, or one alone.
#[derive(Debug)]
struct Group {
    members: Vec<usize>,
    variance: f64,
    /// The fewest degrees of freedom of any of them.
    fewest: Option<f64>,
}

/// The components of a size's uncertainty, and what they make together.
///
/// u_c^2 = sum (c_i u_i)^2, with correlations + 2 sum c_i c_j u_i u_j r_ij.
///
/// # Units
/// The types carry them.
/// # Range
/// A size that depends on its components nearly linearly over their spread.
/// # Source
/// JCGM 100:2008, 5.1.2, 5.2.2, 6.2 and annex G (from memory).
/// # Example
/// ```
/// use turnwright::{physics::budget::{Budget, Component}, Confidence};
/// let budget = Budget::new(vec![
///     Component::uniform("instrument", "0.004 mm".parse()?),
///     Component::uniform("setting the mark", "0.005 mm".parse()?).with_sensitivity("2".parse()?),
///     Component::standard("repeatability", "0.003 mm".parse()?)
///         .with_degrees_of_freedom("9".parse()?),
/// ])?;
/// assert!((budget.combined().mm() - 0.006904).abs() < 1e-6);
/// assert_eq!(budget.components()[budget.dominant()].name(), "setting the mark");
/// let expanded = budget.expanded("0.95".parse::<Confidence>()?);
/// assert!(expanded.mm() < 2.0 * budget.combined().mm());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Budget {
    components: Vec<Component>,
    correlations: Correlations,
    /// Millimetres squared, above 0.
    variance: f64,
}

impl Budget {
    /// A budget of components that are independent of each other.
    ///
    /// # Errors
    /// `components`: none, two of one name, or none with a sensitivity other than zero.
    pub fn new(components: Vec<Component>) -> Result<Self, Error> {
        if components.is_empty() {
            return Err(Error::new(
                ErrorKind::MissingField,
                "components",
                "none",
                "at least one component of the uncertainty",
                "give what makes the size uncertain: instrument, dial, backlash, heat, repeatability",
            ));
        }
        for (i, component) in components.iter().enumerate() {
            if components[..i]
                .iter()
                .any(|other| other.name == component.name)
            {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    "components",
                    format!("two components named \"{}\"", component.name),
                    "a name of its own for each component",
                    "give the second one another name, or take it out if it is the same effect",
                ));
            }
        }
        let variance = components.iter().map(|c| c.signed() * c.signed()).sum();
        if variance <= 0.0 {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "components",
                "a sensitivity of 0 for every component",
                "at least one component that changes the size",
                "give the sensitivity of the components that count: 1 for the diameter itself, 2 for a slide along the radius",
            ));
        }
        Ok(Self {
            components,
            correlations: Correlations::default(),
            variance,
        })
    }

    /// With a correlation between two components, counted from 0. For several that only make sense
    /// together, see [`with_correlations`](Self::with_correlations).
    ///
    /// # Errors
    /// `correlations`: no such component, one component twice, a pair given before, coefficients
    /// that cannot hold together, or components that cancel each other entirely.
    pub fn with_correlation(
        self,
        first: usize,
        second: usize,
        coefficient: Correlation,
    ) -> Result<Self, Error> {
        self.with_correlations(&[(first, second, coefficient)])
    }

    /// With several correlations at once: they are judged together.
    ///
    /// # Errors
    /// As of [`with_correlation`](Self::with_correlation).
    pub fn with_correlations(
        mut self,
        correlations: &[(usize, usize, Correlation)],
    ) -> Result<Self, Error> {
        let names: Vec<&str> = self.components.iter().map(Component::name).collect();
        self.correlations.add(&names, correlations)?;
        if self.correlations.is_empty() {
            return Ok(self);
        }
        let independent: f64 = self
            .components
            .iter()
            .map(|c| c.signed() * c.signed())
            .sum();
        let variance = (0..self.components.len()).map(|i| self.part(i)).sum();
        // What is left of terms that cancel is their rounding.
        if variance <= 1e-14 * independent {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "correlations",
                "components that cancel each other entirely",
                "correlations that leave some uncertainty",
                "leave out both components, or check the signs of sensitivities and coefficients",
            ));
        }
        self.variance = variance;
        Ok(self)
    }

    /// The combined standard uncertainty u_c.
    #[must_use]
    pub fn combined(&self) -> StandardUncertainty {
        StandardUncertainty::computed_trade(sqrt(self.variance))
    }

    /// The effective degrees of freedom; none where they are infinitely many.
    ///
    /// nu_eff = u_c^4 / sum ((c_i u_i)^4/nu_i)
    ///
    /// # Range
    /// The formula holds for independent components (JCGM 100, G.4.1). Those that are correlated with each
    /// other count as one, of the fewest degrees of freedom that any of them has: judgement, no source.
    /// # Source
    /// Welch and Satterthwaite, JCGM 100:2008, G.4.1 (from memory). Not cut to a whole number.
    #[must_use]
    pub fn degrees_of_freedom(&self) -> Option<DegreesOfFreedom> {
        let sum: f64 = match self.correlations.is_empty() {
            true => (self.components.iter())
                .filter_map(|component| {
                    let nu = component.degrees_of_freedom?.value();
                    let share = component.signed() * component.signed() / self.variance;
                    Some(share * share / nu)
                })
                .sum(),
            false => (self.groups().iter())
                .filter_map(|group| {
                    let share = group.variance / self.variance;
                    Some(share * share / group.fewest?)
                })
                .sum(),
        };
        let nu = 1.0 / sum;
        nu.is_finite().then(|| DegreesOfFreedom::computed_trade(nu))
    }

    /// Components that are correlated with each other, each other one alone.
    fn groups(&self) -> Vec<Group> {
        let count = self.components.len();
        let mut group_of: Vec<usize> = (0..count).collect();
        for i in 0..count {
            for (partner, _) in self.correlations.of(i) {
                let (kept, gone) = (group_of[i], group_of[partner]);
                for group in &mut group_of {
                    if *group == gone {
                        *group = kept;
                    }
                }
            }
        }
        (0..count)
            .map(|group| {
                (0..count)
                    .filter(|i| group_of[*i] == group)
                    .collect::<Vec<_>>()
            })
            .filter(|members| !members.is_empty())
            .map(|members| Group {
                variance: members.iter().map(|i| self.part(*i)).sum::<f64>().max(0.0),
                fewest: (members.iter())
                    .filter_map(|i| Some(self.components[*i].degrees_of_freedom?.value()))
                    .reduce(f64::min),
                members,
            })
            .collect()
    }

    /// The coverage factor for a level of confidence: Student's t for the effective degrees of
    /// freedom, of the normal law where they are infinitely many.
    #[must_use]
    pub fn coverage_factor(&self, confidence: Confidence) -> CoverageFactor {
        coverage_factor(self.degrees_of_freedom(), confidence)
    }

    /// The expanded uncertainty U = k u_c.
    #[must_use]
    pub fn expanded(&self, confidence: Confidence) -> SizeUncertainty {
        expanded(self.combined(), self.coverage_factor(confidence))
    }

    /// The share that a component has in the variance, a plain ratio; all make one.
    ///
    /// (c_i u_i)^2/u_c^2; with correlations c_i u_i sum_j r_ij c_j u_j/u_c^2, which is negative for
    /// a component that takes off more than it adds. None where there is no such component.
    #[must_use]
    pub fn share(&self, component: usize) -> Option<f64> {
        (component < self.components.len()).then(|| self.part(component) / self.variance)
    }

    /// The component of the largest share; the first of several.
    #[must_use]
    pub fn dominant(&self) -> usize {
        (0..self.components.len()).fold(0, |most, i| {
            if self.part(i) > self.part(most) {
                i
            } else {
                most
            }
        })
    }

    /// The components, as given.
    #[must_use]
    pub fn components(&self) -> &[Component] {
        &self.components
    }

    /// How the size scatters: the widest uniform component as it is, all others together as a normal
    /// law; with correlations all of them as a normal law.
    ///
    /// Degrees of freedom are not in it: see [`outcome`](Self::outcome).
    #[must_use]
    pub fn spread(&self) -> SizeSpread {
        let widest = self
            .components
            .iter()
            .enumerate()
            .filter(|(_, c)| c.distribution == Distribution::Uniform && c.sensitivity != 0.0)
            .fold(None::<(usize, f64)>, |widest, (i, component)| {
                let here = component.signed().abs();
                match widest {
                    Some((_, most)) if most >= here => widest,
                    _ => Some((i, here)),
                }
            });
        let Some((widest, standard)) = widest.filter(|_| self.correlations.is_empty()) else {
            return SizeSpread::normal(self.combined());
        };
        let others: f64 = self
            .components
            .iter()
            .enumerate()
            .filter(|(i, _)| *i != widest)
            .map(|(_, c)| c.signed() * c.signed())
            .sum();
        let a = HalfWidth::computed_trade(standard * sqrt(3.0));
        if others > 0.0 {
            SizeSpread::normal_and_uniform(StandardUncertainty::computed_trade(sqrt(others)), a)
        } else {
            SizeSpread::uniform(a)
        }
    }

    /// The law of the whole: each component by its own, those with degrees of freedom by Student's.
    fn law(&self) -> SizeLaw {
        let mut parts = Parts::default();
        let mut add = |group: &[usize], variance: f64, fewest: Option<f64>| {
            let alone = match group {
                [one] => Some(&self.components[*one]),
                _ => None,
            };
            let ends = alone.and_then(|c| Some((c.distribution, c.half_width()?)));
            match (ends, fewest) {
                (Some((Distribution::Arcsine, a)), _) => parts.add_arcsine(a),
                (Some((Distribution::Triangular, a)), _) => {
                    // The sum of two of half the width.
                    parts.add_uniform(0.5 * a);
                    parts.add_uniform(0.5 * a);
                }
                (Some((_, a)), _) => parts.add_uniform(a),
                (None, Some(nu)) if variance > 0.0 => parts.add_few(variance, nu),
                (None, _) => parts.add_normal(variance),
            }
        };
        if self.correlations.is_empty() {
            for (i, c) in self.components.iter().enumerate() {
                let nu = c.degrees_of_freedom.map(DegreesOfFreedom::value);
                add(&[i], c.signed() * c.signed(), nu);
            }
        } else {
            for group in self.groups() {
                add(&group.members, group.variance, group.fewest);
            }
        }
        parts.law()
    }

    /// The degrees of freedom of what is known from few readings, by which Student's law enters the
    /// [`outcome`](Self::outcome); none where nothing is.
    #[must_use]
    pub fn few_degrees_of_freedom(&self) -> Option<DegreesOfFreedom> {
        self.law()
            .few_degrees()
            .map(DegreesOfFreedom::computed_trade)
    }

    /// The normal and the uniform part of the whole, where it is no more than these: as
    /// [`spread`](Self::spread), and exact.
    #[cfg(feature = "json")]
    pub(crate) fn plain_spread(&self) -> Option<SizeSpread> {
        self.law().plain()
    }

    /// How many parts come out good, to rework, and lost.
    ///
    /// The components are convolved, each by its own law: normal ones, the two widest with ends, an
    /// arcsine one, and Student's law of those with degrees of freedom, several of them as one by Welch
    /// and Satterthwaite. What is left has little shape, and counts as normal, as correlated ones do.
    ///
    /// # Units
    /// The types carry them.
    /// # Source
    /// JCGM 101:2008, 5.2, propagation of distributions (from memory), in closed form and by quadrature
    /// (derived).
    /// # Example
    /// ```
    /// use turnwright::{physics::budget::{Budget, Component}, Feature, Limits};
    /// let read = Component::standard("read", "0.006 mm".parse()?);
    /// let limits = Limits::new("34.975 mm".parse()?, "35 mm".parse()?)?;
    /// let good = |read| Ok::<f64, turnwright::Error>(
    ///     Budget::new(vec![read])?.outcome(limits, limits.middle(), Feature::Shaft).good.value(),
    /// );
    /// assert!((good(read.clone())? - 0.9628).abs() < 1e-4);
    /// // Known from three readings only.
    /// assert!((good(read.with_degrees_of_freedom("2".parse()?))? - 0.8274).abs() < 1e-4);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn outcome(&self, limits: Limits, mean: Diameter, feature: Feature) -> Outcome {
        let law = self.law();
        shares(limits, mean, feature, |offset| law.share_below(offset))
    }

    /// True where components are correlated.
    #[must_use]
    pub fn is_correlated(&self) -> bool {
        !self.correlations.is_empty()
    }

    /// The correlations, if there are any.
    pub(super) fn correlations(&self) -> &Correlations {
        &self.correlations
    }

    /// What a component adds to the variance.
    fn part(&self, i: usize) -> f64 {
        let here = self.components[i].signed();
        let others = self
            .correlations
            .of(i)
            .map(|(j, r)| r * self.components[j].signed());
        here * (here + others.sum::<f64>())
    }
}

/// The coverage factor for a level of confidence: Student's t, of the normal law without degrees of
/// freedom, as for infinitely many.
///
/// # Units
/// Plain numbers.
/// # Source
/// JCGM 100:2008, G.3 and table G.2 (from memory).
/// # Example
/// ```
/// use turnwright::physics::budget::coverage_factor;
/// let k = coverage_factor(Some("5".parse()?), "0.95".parse()?);
/// assert!((k.value() - 2.5706).abs() < 1e-4);
/// assert!((coverage_factor(None, "0.95".parse()?).value() - 1.96).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn coverage_factor(
    degrees_of_freedom: Option<DegreesOfFreedom>,
    confidence: Confidence,
) -> CoverageFactor {
    let p = confidence.value();
    CoverageFactor::computed_trade(match degrees_of_freedom {
        Some(nu) => student::two_sided(p, nu.value()),
        None => student::two_sided_normal(p),
    })
}

/// The expanded uncertainty U = k u.
///
/// # Units
/// The types carry them.
/// # Source
/// JCGM 100:2008, 6.2.1 (from memory).
/// # Example
/// ```
/// use turnwright::physics::budget::expanded;
/// assert_eq!(expanded("0.002 mm".parse()?, "2".parse()?).mm(), 0.004);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn expanded(u: StandardUncertainty, k: CoverageFactor) -> SizeUncertainty {
    SizeUncertainty::computed_trade(u.mm() * k.value())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn um(u: f64) -> StandardUncertainty {
        StandardUncertainty::from_mm(u / 1000.0).unwrap()
    }

    fn half(a: f64) -> HalfWidth {
        HalfWidth::from_mm(a / 1000.0).unwrap()
    }

    fn times(c: f64) -> Sensitivity {
        Sensitivity::from_value(c).unwrap()
    }

    fn r(coefficient: f64) -> Correlation {
        Correlation::from_value(coefficient).unwrap()
    }

    fn workshop() -> Vec<Component> {
        vec![
            Component::uniform("instrument", half(4.0)),
            Component::uniform("setting a mark", half(5.0)).with_sensitivity(times(2.0)),
            Component::uniform("backlash left", half(3.0)).with_sensitivity(times(2.0)),
            Component::uniform("heat", half(2.0)),
            Component::standard("repeatability", um(3.0)),
        ]
    }

    #[test]
    fn the_budget_of_a_turned_diameter() {
        // By hand: 16/3 + 100/3 + 12 + 4/3 + 9 = 61 square micrometres.
        let budget = Budget::new(workshop()).unwrap();
        assert!(
            (budget.combined().mm() - 0.061_f64.sqrt() * 1e-3 * 1000.0_f64.sqrt()).abs() < 1e-15
        );
        assert_eq!(budget.dominant(), 1);
        assert!((budget.share(1).unwrap() - 100.0 / 183.0).abs() < 1e-15);
        assert_eq!((budget.share(5), budget.degrees_of_freedom()), (None, None));
        // The mark stays uniform, +-10 um; the others make sqrt(61 - 100/3).
        let spread = budget.spread();
        assert!((spread.uniform_part() - 0.01).abs() < 1e-15);
        assert!((spread.normal_part() - (61.0_f64 - 100.0 / 3.0).sqrt() / 1000.0).abs() < 1e-15);
        assert!((spread.standard().mm() / budget.combined().mm() - 1.0).abs() < 1e-15);
    }

    #[test]
    fn correlated_components() {
        // 9 + 16 + 2 * 3 * 4 r.
        let pair = || {
            Budget::new(vec![
                Component::standard("one", um(3.0)),
                Component::standard("other", um(4.0)),
            ])
            .unwrap()
        };
        for (coefficient, square) in [(0.6, 39.4), (1.0, 49.0), (-1.0, 1.0), (0.0, 25.0)] {
            let budget = pair().with_correlation(0, 1, r(coefficient)).unwrap();
            assert!((budget.combined().mm() * 1000.0 - f64::sqrt(square)).abs() < 1e-12);
            let shares = budget.share(0).unwrap() + budget.share(1).unwrap();
            assert!((shares - 1.0).abs() < 1e-15);
        }
        // The smaller one takes off more than it adds: (9 - 12)/1.
        let against = pair().with_correlation(1, 0, r(-1.0)).unwrap();
        assert!((against.share(0).unwrap() + 3.0).abs() < 1e-12);
    }

    #[test]
    fn correlations_that_cannot_hold_together_are_refused() {
        let three = || {
            Budget::new(vec![
                Component::standard("a", um(3.0)),
                Component::standard("b", um(3.0)),
                Component::standard("c", um(3.0)),
            ])
            .unwrap()
        };
        let field = |result: Result<Budget, Error>| result.unwrap_err().field().to_owned();
        // Two that follow a third closely follow each other: alone the two are no matrix.
        let closely = [(0, 1, r(0.9)), (0, 2, r(0.9))];
        assert_eq!(field(three().with_correlations(&closely)), "correlations");
        let all = [closely[0], closely[1], (2, 1, r(0.9))];
        let budget = three().with_correlations(&all).unwrap();
        assert!((budget.combined().mm() - 0.003 * 8.4_f64.sqrt()).abs() < 1e-15);
        assert!(
            three()
                .with_correlations(&[(0, 1, r(1.0)), (1, 2, r(1.0)), (0, 2, r(1.0))])
                .is_ok()
        );
        for wrong in [(0, 3, r(0.1)), (1, 1, r(0.1))] {
            assert_eq!(field(three().with_correlations(&[wrong])), "correlations");
        }
        let twice = three().with_correlation(0, 1, r(0.2)).unwrap();
        assert_eq!(field(twice.with_correlation(1, 0, r(0.2))), "correlations");
        let equal = Budget::new(vec![
            Component::standard("a", um(3.0)),
            Component::uniform("b", half(3.0 * 3.0_f64.sqrt())),
        ]);
        assert_eq!(
            field(equal.unwrap().with_correlation(0, 1, r(-1.0))),
            "correlations"
        );
    }

    #[test]
    fn a_correlation_of_nothing_changes_nothing_and_one_of_others_keeps_the_degrees() {
        let components = || {
            let few = Component::standard("b", um(3.0))
                .with_degrees_of_freedom(DegreesOfFreedom::from_value(1.0).unwrap());
            let one = |name: &'static str| Component::standard(name, um(1.0));
            Budget::new(vec![few, one("c"), one("d")]).unwrap()
        };
        let alone = components();
        let r = |r: f64| Correlation::from_value(r).unwrap();
        let nothing = components().with_correlation(1, 2, r(0.0)).unwrap();
        assert!(!nothing.is_correlated());
        assert_eq!(alone.degrees_of_freedom(), nothing.degrees_of_freedom());
        // u_c^2 = 9 + 1 + 1 + 1, by hand: nu = 12^2/(9^2/1).
        let others = components().with_correlation(1, 2, r(0.5)).unwrap();
        let nu = others.degrees_of_freedom().unwrap().value();
        assert!((nu - 144.0 / 81.0).abs() < 1e-12, "{nu}");
        let zone = Limits::new(
            Diameter::from_mm(29.99).unwrap(),
            Diameter::from_mm(30.01).unwrap(),
        )
        .unwrap();
        let good = |budget: &Budget| {
            budget
                .outcome(zone, zone.middle(), Feature::Shaft)
                .good
                .value()
        };
        // Student's law of one degree (Cauchy's) alone lets one part in five miss a zone of three and a third u.
        assert!(good(&alone) < 0.83 && good(&others) < good(&alone));
        assert_eq!(good(&alone), good(&nothing));
    }

    #[test]
    fn what_is_no_budget_is_refused() {
        for components in [
            vec![],
            vec![
                Component::standard("one", um(1.0)),
                Component::standard("one", um(2.0)),
            ],
            vec![Component::standard("one", um(1.0)).with_sensitivity(times(0.0))],
        ] {
            let error = Budget::new(components).unwrap_err();
            assert_eq!(error.field(), "components");
            assert!(!error.remedy().is_empty());
        }
    }

    #[test]
    fn a_component_of_no_effect_takes_no_part() {
        let mut components = workshop();
        components.push(Component::uniform("paint", half(900.0)).with_sensitivity(times(0.0)));
        let budget = Budget::new(components).unwrap();
        assert_eq!(budget.components()[5].contribution(), None);
        assert_eq!(budget.spread(), Budget::new(workshop()).unwrap().spread());
        assert_eq!(budget.share(5), Some(0.0));
    }

    proptest! {
        #[test]
        fn shares_make_one_and_effective_degrees_lie_between(
            parts in proptest::collection::vec((0.001_f64..100.0, -3.0_f64..3.0, 1.0_f64..200.0), 1..12),
        ) {
            let components = parts.iter().enumerate().map(|(i, &(u, c, nu))| {
                Component::standard(i.to_string(), um(u))
                    .with_sensitivity(times(c))
                    .with_degrees_of_freedom(DegreesOfFreedom::from_value(nu).unwrap())
            });
            if let Ok(budget) = Budget::new(components.collect()) {
                let shares: Vec<f64> = (0..parts.len()).filter_map(|i| budget.share(i)).collect();
                prop_assert!((shares.iter().sum::<f64>() - 1.0).abs() < 1e-14);
                prop_assert!(shares.iter().all(|share| *share <= shares[budget.dominant()]));
                let nu = budget.degrees_of_freedom().unwrap().value();
                let least = parts.iter().map(|part| part.2).fold(f64::INFINITY, f64::min);
                let sum: f64 = parts.iter().map(|part| part.2).sum();
                // Rounding only: the formula lies between the least and the sum of all.
                prop_assert!(nu >= least * (1.0 - 1e-12) && nu <= sum * (1.0 + 1e-12));
            }
        }
    }
}
