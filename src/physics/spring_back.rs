//! What a bar that springs leaves standing: spring passes, equal infeeds, a light cut after a heavy
//! one, and how deep a cut may be for an allowed error.
//!
//! Symbols: a_set the depth the dial was turned in by, a the true depth, delta the deflection at the
//! tool, mu = k_cut/k_sys the stiffness of the cut over that of bar and supports, q = mu/(1 + mu).
//!
//! The bar moves away from the tool while it cuts, so the true depth is smaller than the set one,
//! and the diameter comes out 2 delta too large there.

use uom::si::f64::{Force, Length};
use uom::si::force::newton;
use uom::si::length::meter;

use super::bar::Compliance;
use super::force::{ForceLaw, cutting_forces};
use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Deflection, DepthOfCut, Diameter, DiameterError, Feed,
    NormalRatio, PassiveForce, Quantity, SpringShare, Stiffness, TangentialDeflection,
};

/// A cut as its passive force depends on it: all but the depth.
///
/// ```
/// use turnwright::physics::{force::ForceLaw, spring_back::Edge};
/// let edge = Edge::new(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.1 mm/rev".parse()?,
///     "95 deg".parse()?,
///     "0.4 mm".parse()?,
///     "0.5".parse()?,
/// );
/// assert!(edge.passive_force("0.3 mm".parse()?).newton() > 20.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Edge {
    law: ForceLaw,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
    corner_radius: CornerRadius,
    normal_ratio: NormalRatio,
}

impl Edge {
    /// A law of force, a feed, and the shape of the edge.
    #[must_use]
    pub const fn new(
        law: ForceLaw,
        feed: Feed,
        cutting_edge_angle: CuttingEdgeAngle,
        corner_radius: CornerRadius,
        normal_ratio: NormalRatio,
    ) -> Self {
        Self {
            law,
            feed,
            cutting_edge_angle,
            corner_radius,
            normal_ratio,
        }
    }

    /// The passive force at a depth.
    #[must_use]
    pub fn passive_force(&self, depth: DepthOfCut) -> PassiveForce {
        cutting_forces(
            self.law,
            depth,
            self.feed,
            self.cutting_edge_angle,
            self.corner_radius,
            self.normal_ratio,
        )
        .passive
    }

    /// The depth from which the passive force grows no more: with an edge of 90 deg and beyond, the
    /// end of the corner arc.
    fn peak(&self) -> Option<DepthOfCut> {
        let angle = self.cutting_edge_angle.degrees();
        (angle >= 90.0).then(|| {
            let end = 1.0 - maths::cos(maths::radians(self.cutting_edge_angle.angle()));
            // The force is largest where the arc is square to the work, at one corner radius.
            DepthOfCut::computed(self.corner_radius.length() * end.min(1.0))
        })
    }
}

/// What one pass really takes, and what it leaves.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct Pass {
    /// The true depth.
    pub true_depth: DepthOfCut,
    /// What is left standing: the deflection under the true depth.
    pub left: Deflection,
}

/// The true depth of a cut of a set depth, on a bar of that stiffness at the tool.
///
/// a + F_p(a)/k_sys = a_set
///
/// # Units
/// The types carry them. `stiffness` is that of bar and supports at the tool: force over deflection.
/// # Range
/// As the force; the bar keeps its diameter while it is cut. With an edge far beyond 90 deg the
/// passive force may be negative and the true depth greater than the set one; of several depths at
/// which the bar would come to rest, the least.
/// # Errors
/// `set_depth`, where the edge pulls the bar in farther than any depth balances.
/// # Source
/// Mayer, Phan and Cloutier 2000, Applied Mathematical Modelling 24, from memory; derived.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, spring_back::{true_depth, Edge}};
/// let edge = Edge::new(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.1 mm/rev".parse()?, "95 deg".parse()?, "0.4 mm".parse()?, "0.5".parse()?,
/// );
/// let pass = true_depth(&edge, "0.3 mm".parse()?, "2780 N/mm".parse()?)?;
/// assert!(pass.true_depth.mm() < 0.3);
/// assert!((pass.true_depth.mm() + pass.left.mm() - 0.3).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn true_depth(edge: &Edge, set_depth: DepthOfCut, stiffness: Stiffness) -> Result<Pass, Error> {
    let set = set_depth.length();
    let give = compliance(stiffness);
    let over = |share: f64| {
        let depth = set * share;
        let bent = edge.passive_force(DepthOfCut::computed(depth)).force() * give;
        maths::number((depth + bent) / set) - 1.0
    };
    // The force of an edge that never pulls grows with the depth: there is one such depth, and less than was set.
    // Of another edge the least is looked for, within the corner first, then at each doubling of the depth.
    const WITHIN: i32 = 64;
    let shares = (1..=WITHIN).map(|part| f64::from(part) / f64::from(WITHIN));
    let beyond = (1..=10).map(|doubled| f64::from(1 << doubled));
    let found = match edge.peak() {
        None => Some(1.0),
        Some(_) => shares.chain(beyond).find(|share| over(*share) >= 0.0),
    };
    let Some(high) = found else {
        return Err(Error::new(
            ErrorKind::Impossible,
            "set_depth",
            set_depth.to_string(),
            "a cut that the spring of the bar can balance: this edge pulls the bar in, the deeper the more",
            "take an edge nearer to 90 deg, a lighter cut, or hold the bar stiffer",
        ));
    };
    let low = match high <= 1.0 && edge.peak().is_some() {
        true => high - 1.0 / f64::from(WITHIN),
        false if high > 1.0 => 0.5 * high,
        false => 0.0,
    };
    let share = halved(low, high, |share| over(share) > 0.0);
    Ok(Pass {
        true_depth: DepthOfCut::computed(set * share),
        left: Deflection::computed(set * (1.0 - share)),
    })
}

/// The share of a set depth that is left standing, from the deflection that the whole depth would
/// cause.
///
/// q = mu/(1 + mu), mu = delta/a_set
///
/// # Units
/// The types carry them.
/// # Range
/// A force in proportion to the depth; light cuts inside the corner fall less than in proportion,
/// and leave more: [`true_depth`] follows them.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::spring_back::spring_share;
/// let share = spring_share("0.5 mm".parse()?, "0.125 mm".parse()?)?;
/// assert_eq!(share.value(), 0.2);
/// # Ok::<(), turnwright::Error>(())
/// ```
///
/// # Errors
/// `deflection`, when it is negative: a bar that is pulled in leaves nothing.
pub fn spring_share(set_depth: DepthOfCut, deflection: Deflection) -> Result<SpringShare, Error> {
    if deflection.mm() < 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "deflection",
            deflection.to_string(),
            "a deflection away from the tool",
            "a bar that is pulled in cuts too deep and leaves nothing for a spring pass",
        ));
    }
    let share = maths::number(deflection.length() / (set_depth.length() + deflection.length()));
    Ok(SpringShare::computed_trade(share))
}

/// What is left standing after passes at one and the same reading of the dial.
///
/// a_set q^j
///
/// # Units
/// The types carry them; `passes` counts the first cut too.
/// # Range
/// As [`spring_share`], and only while what is left is thicker than the least chip: see
/// [`spring_passes`].
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::spring_back::left_after_passes;
/// let left = left_after_passes("0.5 mm".parse()?, "0.2".parse()?, 3);
/// assert!((left.mm() - 0.004).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn left_after_passes(set_depth: DepthOfCut, share: SpringShare, passes: u32) -> Deflection {
    Deflection::computed(set_depth.length() * maths::pow(share.value(), f64::from(passes)))
}

/// How many passes without new infeed still cut, and what the last leaves.
///
/// # Units
/// The types carry them. `least_depth` is the least that the edge can cut.
/// # Range
/// As [`spring_share`].
/// # Source
/// Derived: the last pass is the one after which less is left than the edge can cut.
/// # Example
/// ```
/// use turnwright::physics::spring_back::spring_passes;
/// // 0.1 mm and 0.02 mm are left by the cut and the first spring pass; the next could not cut 0.004.
/// let (passes, left) = spring_passes("0.5 mm".parse()?, "0.2".parse()?, "0.01 mm".parse()?);
/// assert_eq!(passes, 2);
/// assert!((left.mm() - 0.004).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn spring_passes(
    set_depth: DepthOfCut,
    share: SpringShare,
    least_depth: DepthOfCut,
) -> (u32, Deflection) {
    let mut passes = 0;
    let mut left = left_after_passes(set_depth, share, 1);
    // A share of one leaves all forever; no one makes a hundred spring passes.
    while left.mm() >= least_depth.mm() && passes < 100 {
        passes += 1;
        left = left_after_passes(set_depth, share, passes + 1);
    }
    (passes, left)
}

/// What is left standing after passes with the same infeed each.
///
/// a_set q (1 - q^j)/(1 - q), which tends to a_set mu: equal last cuts repeat the same spring, so
/// that the correction of one serves the next.
///
/// # Units
/// The types carry them.
/// # Range
/// As [`spring_share`].
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::spring_back::left_after_equal_infeeds;
/// let after = |passes| left_after_equal_infeeds("0.2 mm".parse()?, "0.15".parse()?, passes);
/// assert!((after(1)?.mm() - 0.03).abs() < 1e-15);
/// assert!(after(2)? > after(1)?);
/// # Ok::<(), turnwright::Error>(())
/// ```
/// # Errors
/// `share`, when it is one: then nothing is cut at all.
pub fn left_after_equal_infeeds(
    set_depth: DepthOfCut,
    share: SpringShare,
    passes: u32,
) -> Result<Deflection, Error> {
    let q = below_one(share)?;
    let sum = q * (1.0 - maths::pow(q, f64::from(passes))) / (1.0 - q);
    Ok(Deflection::computed(set_depth.length() * sum))
}

/// What is left in the end by passes with the same infeed each: a_set mu.
///
/// # Units
/// The types carry them.
/// # Range
/// As [`spring_share`].
/// # Errors
/// `share`, when it is one: then nothing is cut at all.
/// # Source
/// Derived: the limit of [`left_after_equal_infeeds`].
/// # Example
/// ```
/// use turnwright::physics::spring_back::left_in_the_end;
/// let left = left_in_the_end("0.2 mm".parse()?, "0.2".parse()?)?;
/// assert!((left.mm() - 0.05).abs() < 1e-15);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn left_in_the_end(set_depth: DepthOfCut, share: SpringShare) -> Result<Deflection, Error> {
    let q = below_one(share)?;
    Ok(Deflection::computed(set_depth.length() * (q / (1.0 - q))))
}

fn below_one(share: SpringShare) -> Result<f64, Error> {
    let q = share.value();
    if q < 1.0 {
        return Ok(q);
    }
    Err(Error::new(
        ErrorKind::Contradiction,
        "share",
        share.to_string(),
        "less than 1",
        "a bar that leaves all standing is not cut at all: check the stiffness",
    ))
}

/// What a light cut takes after a heavy one: the bar springs back, so it cuts deeper than dialled.
///
/// a = (a_set + delta_before)(1 - q)
///
/// # Units
/// The types carry them. `left_before` is what the cut before left standing.
/// # Range
/// As [`spring_share`]; `share` is that of the light cut.
/// # Source
/// Derived.
/// # Example
/// A heavy cut left 0.13 mm; a cut of 0.1 mm on the dial takes twice as much:
/// ```
/// use turnwright::physics::spring_back::light_after_heavy;
/// let depth = light_after_heavy("0.13 mm".parse()?, "0.1 mm".parse()?, "0.13".parse()?);
/// assert!((depth.mm() - 0.2001).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn light_after_heavy(
    left_before: Deflection,
    set_depth: DepthOfCut,
    share: SpringShare,
) -> DepthOfCut {
    let sum = set_depth.length() + left_before.length();
    DepthOfCut::computed(sum * (1.0 - share.value()))
}

/// The error of the diameter when the bar is also pressed down by the main force.
///
/// e_d = 2 (sqrt((R + delta)^2 + v^2) - R) = 2 delta + v^2/R + ...
///
/// The tangential deflection v counts in the second order only: on a bar of 10 mm, 0.06 mm down add
/// 0.0007 mm to the diameter.
///
/// # Units
/// The types carry them; `diameter` is the one wanted.
/// # Range
/// Deflections small beside the radius.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::spring_back::diameter_error_with_sag;
/// let error = diameter_error_with_sag("10 mm".parse()?, "0.02 mm".parse()?, "0.06 mm".parse()?);
/// assert!((error.mm() - 0.0407171).abs() < 1e-7);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn diameter_error_with_sag(
    diameter: Diameter,
    passive: Deflection,
    tangential: TangentialDeflection,
) -> DiameterError {
    let r = diameter.length() / 2.0;
    let (delta, v) = (passive.length(), tangential.length());
    let metre = Length::new::<meter>(1.0);
    let number = |x: Length| maths::number(x / metre);
    let (r, delta, v) = (number(r), number(delta), number(v));
    // The difference of the two radii, without subtracting them.
    let grown = maths::sqrt((r + delta) * (r + delta) + v * v);
    let difference = (delta * (2.0 * r + delta) + v * v) / (grown + r);
    DiameterError::computed(metre * (2.0 * difference))
}

/// The greatest depth whose spring stays within an allowed error of the diameter.
///
/// 2 |F_p(a)|/k_sys = allowed. None: the passive force of this edge never grows so far, away from the tool or
/// towards it; another limit decides.
///
/// # Units
/// The types carry them. `stiffness` is that of bar and supports at the tool.
/// # Range
/// As the force. With an edge of 90 deg and beyond the passive force grows no more once the corner
/// is in the cut, and beyond 90 deg it falls and turns: the depth is then limited inside the corner,
/// or where the bar is pulled in by as much, or not at all.
/// # Errors
/// `allowed`, when it is not above zero.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, spring_back::{largest_depth, Edge}};
/// let edge = |angle: &str| Ok::<_, turnwright::Error>(Edge::new(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.1 mm/rev".parse()?, angle.parse()?, "0.4 mm".parse()?, "0.5".parse()?,
/// ));
/// let stiffness = "5 kN/mm".parse()?;
/// assert!(largest_depth(&edge("90 deg")?, stiffness, "0.05 mm".parse()?)?.is_none());
/// let depth = largest_depth(&edge("45 deg")?, stiffness, "0.05 mm".parse()?)?;
/// assert!(depth.is_some_and(|depth| depth.mm() < 2.0));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn largest_depth(
    edge: &Edge,
    stiffness: Stiffness,
    allowed: DiameterError,
) -> Result<Option<DepthOfCut>, Error> {
    let force = allowed_force(stiffness, allowed)?;
    let deepest = edge
        .peak()
        .unwrap_or(DepthOfCut::computed_trade(DepthOfCut::ROW.largest()));
    let pushed = |depth: DepthOfCut| edge.passive_force(depth).force() > force;
    if deepest.mm() > 0.0 && pushed(deepest) {
        let share = halved(0.0, 1.0, |share| {
            pushed(DepthOfCut::computed(deepest.length() * share))
        });
        return Ok(Some(DepthOfCut::computed(deepest.length() * share)));
    }
    let all = DepthOfCut::ROW.largest();
    let pulled = |mm: f64| edge.passive_force(DepthOfCut::computed_trade(mm)).force() < -force;
    Ok(pulled(all).then(|| DepthOfCut::computed_trade(halved(deepest.mm().max(0.0), all, pulled))))
}

/// The greatest feed whose spring at a depth stays within an allowed error of the diameter.
///
/// |F_p| grows with f^(1 - m_c): f = f_0 (F_allowed/|F_p(f_0)|)^(1/(1 - m_c)). None: at this depth the
/// edge neither pushes the bar away nor pulls it in.
///
/// # Units
/// The types carry them; the feed of the edge does not count.
/// # Range
/// As the force: the small share of the arc beyond the lowest point is not in it.
/// # Errors
/// `allowed`, when it is not above zero.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::{force::ForceLaw, spring_back::{largest_feed, Edge}};
/// let edge = Edge::new(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.1 mm/rev".parse()?, "95 deg".parse()?, "0.4 mm".parse()?, "0.5".parse()?,
/// );
/// let feed = largest_feed(&edge, "0.3 mm".parse()?, "5 kN/mm".parse()?, "0.05 mm".parse()?)?;
/// assert!(feed.is_some_and(|feed| feed.mm_per_rev() > 0.1));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn largest_feed(
    edge: &Edge,
    depth: DepthOfCut,
    stiffness: Stiffness,
    allowed: DiameterError,
) -> Result<Option<Feed>, Error> {
    let force = allowed_force(stiffness, allowed)?;
    let now = edge.passive_force(depth).force().abs();
    if now == Force::default() {
        return Ok(None);
    }
    let power = 1.0 / (1.0 - edge.law.exponent.value());
    let share = maths::pow(maths::number(force / now), power);
    Ok(Some(Feed::computed(
        edge.feed.length_per_revolution() * share,
    )))
}

fn allowed_force(stiffness: Stiffness, allowed: DiameterError) -> Result<Force, Error> {
    if allowed.mm() <= 0.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "allowed",
            allowed.to_string(),
            "an error of the diameter above zero",
            "no bar is rigid: allow the spring some of the zone",
        ));
    }
    Ok(allowed.length() / 2.0 / compliance(stiffness))
}

fn compliance(stiffness: Stiffness) -> Compliance {
    // 1 kN/mm is 1e6 N/m.
    Length::new::<meter>(1.0) / Force::new::<newton>(stiffness.kn_per_mm() * 1e6)
}

/// The place between two where a condition begins to hold, to the last digit.
fn halved(mut low: f64, mut high: f64, holds: impl Fn(f64) -> bool) -> f64 {
    for _ in 0..100 {
        let middle = 0.5 * (low + high);
        if middle <= low || middle >= high {
            break;
        }
        if holds(middle) {
            high = middle;
        } else {
            low = middle;
        }
    }
    0.5 * (low + high)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    prop_compose! {
        fn any_edge()(
            k in 500.0..4000.0_f64, m in 0.0..0.5_f64, f in 0.02..0.5_f64, angle in 30.0..100.0_f64,
            r in 0.1..2.0_f64, n in 0.3..0.8_f64,
        ) -> Edge {
            Edge::new(
                ForceLaw::new(
                    crate::quantity::SpecificCuttingForce::from_mpa(k).unwrap(),
                    crate::quantity::ForceExponent::from_value(m).unwrap(),
                ),
                Feed::from_mm_per_rev(f).unwrap(),
                CuttingEdgeAngle::from_degrees(angle).unwrap(),
                CornerRadius::from_mm(r).unwrap(),
                NormalRatio::from_value(n).unwrap(),
            )
        }
    }

    /// An edge far beyond 90 deg pushes inside its corner and pulls when it is deeper in.
    fn pulling() -> Edge {
        Edge::new(
            ForceLaw::new("1780 MPa".parse().unwrap(), "0.17".parse().unwrap()),
            "0.3 mm/rev".parse().unwrap(),
            "117.5 deg".parse().unwrap(),
            "0.4 mm".parse().unwrap(),
            "0.5".parse().unwrap(),
        )
    }

    #[test]
    fn a_bar_that_is_pulled_in_comes_to_rest_at_the_least_depth_or_is_told_of() {
        let set = "1 mm".parse().unwrap();
        let pass = true_depth(&pulling(), set, "0.12 kN/mm".parse().unwrap()).unwrap();
        // Forces along the edge integrated and halved independently: 0.403236 mm.
        assert!((pass.true_depth.mm() - 0.403_236).abs() < 1e-5, "{pass:?}");
        let none = true_depth(&pulling(), set, "0.15 kN/mm".parse().unwrap()).unwrap_err();
        assert_eq!(
            (none.kind(), none.field()),
            (ErrorKind::Impossible, "set_depth")
        );
    }

    #[test]
    fn a_cut_that_pulls_is_limited_by_what_it_pulls() {
        let (depth, stiffness) = ("3 mm".parse().unwrap(), "2 kN/mm".parse().unwrap());
        let allowed: DiameterError = "0.02 mm".parse().unwrap();
        let feed = largest_feed(&pulling(), depth, stiffness, allowed)
            .unwrap()
            .unwrap();
        let edge = Edge { feed, ..pulling() };
        let error = 2.0 * edge.passive_force(depth).newton() / 2000.0;
        // A power and its inverse: a few last digits.
        assert!((error + 0.02).abs() < 1e-12, "{error}");
        let allowed: DiameterError = "0.1 mm".parse().unwrap();
        let deepest = largest_depth(&pulling(), stiffness, allowed)
            .unwrap()
            .unwrap();
        let error = 2.0 * pulling().passive_force(deepest).newton() / 2000.0;
        assert!((error + 0.1).abs() < 1e-9, "{error} at {deepest}");
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn the_true_depth_and_its_spring_make_the_set_depth(
            edge in any_edge(), set in 0.01..3.0_f64, k in 0.1..100.0_f64,
        ) {
            let stiffness = Stiffness::from_kn_per_mm(k).unwrap();
            let Ok(pass) = true_depth(&edge, DepthOfCut::from_mm(set).unwrap(), stiffness) else {
                prop_assert!(edge.cutting_edge_angle.degrees() > 90.0);
                return Ok(());
            };
            let bent = edge.passive_force(pass.true_depth).newton() / (k * 1e3);
            // Halving ends within a digit of the set depth.
            prop_assert!((pass.true_depth.mm() + bent - set).abs() <= 1e-10 * set.max(bent.abs()));
        }

        #[test]
        fn the_largest_depth_has_the_allowed_error(
            edge in any_edge(), k in 0.1..100.0_f64, allowed in 0.001..0.2_f64,
        ) {
            let stiffness = Stiffness::from_kn_per_mm(k).unwrap();
            let error = DiameterError::from_mm(allowed).unwrap();
            match largest_depth(&edge, stiffness, error).unwrap() {
                Some(depth) => {
                    let found = 2.0 * edge.passive_force(depth).newton() / (k * 1e3);
                    prop_assert!((found.abs() - allowed).abs() <= 1e-9 * allowed, "{found} {allowed}");
                }
                None => for tenth in 1..200 {
                    let depth = DepthOfCut::from_mm(f64::from(tenth) * 0.1).unwrap();
                    let found = 2.0 * edge.passive_force(depth).newton() / (k * 1e3);
                    prop_assert!(found.abs() <= allowed * (1.0 + 1e-9));
                },
            }
        }

        #[test]
        fn the_largest_feed_has_the_allowed_error(
            edge in any_edge(), k in 0.1..100.0_f64, allowed in 0.001..0.2_f64, depth in 0.05..2.0_f64,
        ) {
            let (stiffness, depth) = (Stiffness::from_kn_per_mm(k).unwrap(), DepthOfCut::from_mm(depth).unwrap());
            let error = DiameterError::from_mm(allowed).unwrap();
            if let Some(feed) = largest_feed(&edge, depth, stiffness, error).unwrap() {
                let found = Edge { feed, ..edge }.passive_force(depth).newton() * 2.0 / (k * 1e3);
                prop_assert!((found.abs() - allowed).abs() <= 1e-9 * allowed, "{found} {allowed}");
            }
        }

        #[test]
        fn equal_infeeds_tend_to_their_limit_and_a_light_cut_takes_what_they_left(
            set in 0.01..2.0_f64, q in 0.0..0.9_f64,
        ) {
            let (set, share) = (DepthOfCut::from_mm(set).unwrap(), SpringShare::from_value(q).unwrap());
            let limit = left_in_the_end(set, share).unwrap();
            let late = left_after_equal_infeeds(set, share, 2000).unwrap();
            prop_assert!((late.mm() - limit.mm()).abs() <= 1e-12 * limit.mm().max(1e-12));
            // In the end each pass takes just what the dial says.
            let depth = light_after_heavy(limit, set, share);
            prop_assert!((depth.mm() - set.mm()).abs() <= 1e-12 * set.mm());
        }
    }
}
