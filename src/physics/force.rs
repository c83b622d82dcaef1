//! The forces of a cut.
//!
//! Symbols: k_c1.1 and m_c of the Kienzle law, h thickness and b width of the cut, F_c main, F_f
//! feed and F_p passive force, K_n the force normal to the edge over the main force.
//!
//! A fit of k_c1.1 and m_c holds for h from about 0.05 mm (often 0.1) to 1.4 or 2.5 mm (from memory
//! of Koenig and Essel 1973, unverified page). Below it is an extrapolation, and the true force is
//! greater.

use std::f64::consts::{FRAC_PI_2, PI};

use uom::si::f64::{Force, Length, Pressure};
use uom::si::length::millimeter;

use super::engagement::{ChipSection, light_arc_end};
use super::maths;
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    ChipThickness, CornerRadius, CuttingEdgeAngle, DepthOfCut, Feed, FeedForce, ForceExponent,
    ForceFactor, MainForce, NormalRatio, PassiveForce, SpecificCuttingForce, SpecificForceAtChip,
};

/// How the force of a material depends on the chip's thickness (Kienzle): k_c1.1 and m_c.
///
/// ```
/// use turnwright::{physics::force::ForceLaw, ForceExponent, SpecificCuttingForce};
/// let steel = ForceLaw::new(
///     SpecificCuttingForce::from_mpa(2220.0)?,
///     ForceExponent::from_value(0.14)?,
/// );
/// assert_eq!(steel.specific_force.mpa(), 2220.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ForceLaw {
    /// Specific cutting force k_c1.1, for a chip of 1 mm by 1 mm.
    pub specific_force: SpecificCuttingForce,
    /// Its exponent m_c.
    pub exponent: ForceExponent,
}

impl ForceLaw {
    /// The law of a material.
    #[must_use]
    pub const fn new(specific_force: SpecificCuttingForce, exponent: ForceExponent) -> Self {
        Self {
            specific_force,
            exponent,
        }
    }

    /// k_c = k_c1.1 (h / 1 mm)^(-m_c)
    #[inline]
    pub(super) fn at(self, h: Length) -> Pressure {
        let h_0 = Length::new::<millimeter>(1.0);
        self.specific_force.pressure() * maths::pow(maths::number(h / h_0), -self.exponent.value())
    }
}

/// What a square millimetre of chip costs in force, at that thickness.
///
/// k_c = k_c1.1 (h / 1 mm)^(-m_c)
///
/// # Units
/// The types carry them; h is measured in mm, as the law is written.
/// # Range
/// h from about 0.05 mm to 2.5 mm; beyond it is an extrapolation.
/// # Source
/// Kienzle 1952, VDI-Z 94 (from memory).
/// # Example
/// ```
/// use turnwright::physics::force::{specific_force_at, ForceLaw};
/// let steel = ForceLaw::new("1780 MPa".parse()?, "0.17".parse()?);
/// let k_c = specific_force_at(steel, "0.2 mm".parse()?);
/// assert_eq!(k_c.mpa().round(), 2340.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn specific_force_at(law: ForceLaw, thickness: ChipThickness) -> SpecificForceAtChip {
    let h = thickness.length();
    SpecificForceAtChip::computed(law.at(h))
}

/// The main force on a straight edge: it loads the spindle and presses the tool down.
///
/// F_c = k_c1.1 b h^(1 - m_c)
///
/// # Units
/// The types carry them.
/// # Range
/// Straight edges, sharp, without corrections for rake, wear and speed.
/// # Source
/// Kienzle 1952, VDI-Z 94 (from memory).
/// # Example
/// ```
/// use turnwright::physics::{engagement::chip_section, force::{main_force, ForceLaw}};
/// let steel = ForceLaw::new("1780 MPa".parse()?, "0.17".parse()?);
/// let chip = chip_section("2 mm".parse()?, "0.2 mm/rev".parse()?, "90 deg".parse()?);
/// assert_eq!(main_force(steel, chip).newton().round(), 936.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn main_force(law: ForceLaw, chip: ChipSection) -> MainForce {
    let (h, b) = (chip.thickness.length(), chip.width.length());
    MainForce::computed(law.at(h) * b * h)
}

/// Which part of the edge is in the cut.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum EdgeInCut {
    /// A light cut: the corner arc alone.
    CornerArc,
    /// The whole corner arc and a piece of the straight edge.
    CornerArcAndStraightEdge,
    /// The straight edge of a tool with a sharp corner.
    StraightEdge,
}

impl EdgeInCut {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::CornerArc => "corner_arc",
            Self::CornerArcAndStraightEdge => "corner_arc_and_straight_edge",
            Self::StraightEdge => "straight_edge",
        }
    }
}

/// The three forces of a cut, and which part of the edge they come from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct CuttingForces {
    /// Main force F_c, along the cutting speed.
    pub main: MainForce,
    /// Feed force F_f, against the feed.
    pub feed: FeedForce,
    /// Passive force F_p, across the feed: it bends the bar. Below zero, with a long straight edge
    /// beyond 90 deg, it draws the work towards the tool.
    pub passive: PassiveForce,
    /// Which part of the edge is in the cut.
    pub edge: EdgeInCut,
}

/// The force normal to the edge over the main force, K_n: 0.5 for sharp tools in steel at 0.1 to
/// 0.4 mm of thickness, 0.3 (thick chips, high rake) to 0.8 (thin chips, worn, negative rake).
pub const NORMAL_RATIO: Sourced<NormalRatio> = Sourced::new(
    NormalRatio::computed_trade(0.5),
    "common practice, no source (0.3 to 0.8)",
    Standing::CommonPractice,
);

/// The three forces of a cut with a rounded corner, light cuts included.
///
/// Along the corner arc the thickness is h = f sin theta, from theta = 0 to theta_2:
///
/// F_c = k_c1.1 r_eps f^(1-m) integral of (sin theta)^(1-m),
/// F_f = K_n k_c1.1 r_eps f^(1-m) integral of (sin theta)^(2-m),
/// F_p = K_n k_c1.1 r_eps f^(1-m) (sin theta_2)^(2-m) / (2-m);
///
/// a straight piece s = (a_p - r_eps (1 - cos kappa_r)) / sin kappa_r adds
/// k_c1.1 s (f sin kappa_r)^(1-m) to F_c, K_n times it times sin kappa_r to F_f and cos kappa_r to
/// F_p.
///
/// # Units
/// The types carry them.
/// # Range
/// Sharp tools without corrections for rake, wear and speed. The thickness along the arc is good to
/// the order of f / r_eps, below the scatter of k_c1.1. A corner radius of zero gives the straight
/// edge. Beyond 90 deg the straight piece pulls: with a long one F_p can fall below zero.
/// # Source
/// Kienzle's law along the edge; the force of each piece normal to the edge (derived). K_n is common
/// practice, no source.
/// # Example
/// A light last cut bends the bar nearly as much as it loads the spindle:
/// ```
/// use turnwright::physics::force::{cutting_forces, EdgeInCut, ForceLaw};
/// let forces = cutting_forces(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.2 mm".parse()?,
///     "0.1 mm/rev".parse()?,
///     "95 deg".parse()?,
///     "0.8 mm".parse()?,
///     "0.5".parse()?,
/// );
/// assert_eq!(forces.edge, EdgeInCut::CornerArc);
/// assert!((forces.main.newton() - 69.5).abs() < 0.1);
/// assert!((forces.passive.newton() - 30.5).abs() < 0.1);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cutting_forces(
    law: ForceLaw,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    cutting_edge_angle: CuttingEdgeAngle,
    corner_radius: CornerRadius,
    normal_ratio: NormalRatio,
) -> CuttingForces {
    let kappa = maths::radians(cutting_edge_angle.angle());
    forces_along_edge(
        law,
        depth_of_cut,
        feed,
        kappa,
        corner_radius,
        normal_ratio,
        |light| arc_integrals(law, light.unwrap_or(kappa), sine_power_integral),
    )
}

/// Of (sin t)^(1 - m) and (sin t)^(2 - m) from 0 to theta, and of (sin t)^(1 - m) cos t.
fn arc_integrals(law: ForceLaw, theta: f64, integral: impl Fn(f64, f64) -> f64) -> [f64; 3] {
    let p = 1.0 - law.exponent.value();
    [
        integral(p, theta),
        integral(p + 1.0, theta),
        maths::pow(maths::sin(theta), p + 1.0) / (p + 1.0),
    ]
}

/// As [`cutting_forces`], for many cuts of one law with one edge: what they share is reckoned once.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct ArcIntegrals {
    law: ForceLaw,
    kappa: f64,
    corner_radius: CornerRadius,
    normal_ratio: NormalRatio,
    /// For the exponents 1 - m and 2 - m.
    of: [SinePower; 2],
    /// Along the whole arc, up to kappa.
    whole: [f64; 3],
}

impl ArcIntegrals {
    pub(crate) fn new(
        law: ForceLaw,
        cutting_edge_angle: CuttingEdgeAngle,
        corner_radius: CornerRadius,
        normal_ratio: NormalRatio,
    ) -> Self {
        let p = 1.0 - law.exponent.value();
        let mut made = Self {
            law,
            kappa: maths::radians(cutting_edge_angle.angle()),
            corner_radius,
            normal_ratio,
            of: [p, p + 1.0].map(|q| SinePower::new(q, SinePower::TERMS)),
            whole: [0.0; 3],
        };
        made.whole = made.up_to(made.kappa);
        made
    }

    fn up_to(&self, theta: f64) -> [f64; 3] {
        arc_integrals(self.law, theta, |q, theta| {
            self.of[usize::from(q > 1.0)].integral(theta)
        })
    }

    /// The forces of a cut.
    pub(crate) fn forces(&self, depth_of_cut: DepthOfCut, feed: Feed) -> CuttingForces {
        forces_along_edge(
            self.law,
            depth_of_cut,
            feed,
            self.kappa,
            self.corner_radius,
            self.normal_ratio,
            |light| light.map_or(self.whole, |theta| self.up_to(theta)),
        )
    }
}

/// `arc` gives the [`arc_integrals`] up to the end of a light cut's arc, or along the whole of it.
fn forces_along_edge(
    law: ForceLaw,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    kappa: f64,
    corner_radius: CornerRadius,
    normal_ratio: NormalRatio,
    arc: impl Fn(Option<f64>) -> [f64; 3],
) -> CuttingForces {
    let (a_p, f, r) = (
        depth_of_cut.length(),
        feed.length_per_revolution(),
        corner_radius.length(),
    );
    let k_n = normal_ratio.value();
    let (sin_kappa, cos_kappa) = (maths::sin(kappa), maths::cos(kappa));
    // The straight piece: F_c for a length s of edge.
    let straight = |s: Length| -> Force {
        let h = f * sin_kappa;
        law.at(h) * s * h
    };
    let (main, along, across, edge) = if r <= Length::default() {
        let f_c = straight(a_p / sin_kappa);
        (
            f_c,
            f_c * sin_kappa,
            f_c * cos_kappa,
            EdgeInCut::StraightEdge,
        )
    } else {
        // k_c1.1 r f^(1-m)
        let scale: Force = law.at(f) * r * f;
        let light = light_arc_end(a_p, r, kappa);
        let [f_c, f_n_along, f_n_across] = arc(light).map(|integral| scale * integral);
        if light.is_some() {
            (f_c, f_n_along, f_n_across, EdgeInCut::CornerArc)
        } else {
            let half = maths::sin(kappa / 2.0);
            let s = (a_p - 2.0 * r * (half * half)) / sin_kappa;
            let piece = straight(s);
            (
                f_c + piece,
                f_n_along + piece * sin_kappa,
                f_n_across + piece * cos_kappa,
                EdgeInCut::CornerArcAndStraightEdge,
            )
        }
    };
    CuttingForces {
        main: MainForce::computed(main),
        feed: FeedForce::computed(k_n * along),
        passive: PassiveForce::computed(k_n * across),
        edge,
    }
}

/// The integral of (sin t)^q from 0 to theta, for 0 < q <= 2 and theta up to pi.
fn sine_power_integral(q: f64, theta: f64) -> f64 {
    let widest = theta.min(FRAC_PI_2);
    let square = widest * widest / (PI * PI);
    // The terms fall by this each: so many leave 1e-17.
    let mut terms = 1;
    let mut rest = 1.0;
    while rest >= 1e-17 && terms < SinePower::TERMS {
        rest *= square;
        terms += 1;
    }
    SinePower::new(q, terms).integral(theta)
}

/// (sin t)^q = t^q (sin t / t)^q; the second factor is a power series in t^2 that converges up to
/// pi, and each term is integrated. Beyond pi/2 the sine's symmetry brings the angle back.
#[derive(Debug, Clone, PartialEq)]
struct SinePower {
    q: f64,
    /// Of theta^(2n + q + 1).
    terms: [f64; Self::TERMS],
    used: usize,
}

impl SinePower {
    /// At pi/2 the terms fall by 4 each: 30 of them leave 1e-18.
    const TERMS: usize = 30;

    fn new(q: f64, used: usize) -> Self {
        // sin t / t = sum of sinc[k] t^(2k); beyond the tenth they are below 1e-17 at pi/2.
        const SINC_TERMS: usize = 11;
        let mut sinc = [1.0; SINC_TERMS];
        for k in 1..SINC_TERMS {
            let n = 2.0 * k as f64;
            sinc[k] = -sinc[k - 1] / (n * (n + 1.0));
        }
        // power[n]: the terms of (sin t / t)^q, by the recurrence for a power of a series:
        // n power[n] = sum over k of (k q - n + k) sinc[k] power[n - k].
        let mut power = [1.0; Self::TERMS];
        let mut terms = [0.0; Self::TERMS];
        terms[0] = 1.0 / (q + 1.0);
        for n in 1..used {
            let mut term = 0.0;
            for k in 1..SINC_TERMS.min(n + 1) {
                term += ((k as f64) * (q + 1.0) - n as f64) * sinc[k] * power[n - k];
            }
            power[n] = term / n as f64;
            terms[n] = power[n] / (2.0 * n as f64 + q + 1.0);
        }
        Self { q, terms, used }
    }

    fn integral(&self, theta: f64) -> f64 {
        if theta > FRAC_PI_2 {
            2.0 * self.up_to_right_angle(FRAC_PI_2) - self.up_to_right_angle(PI - theta)
        } else {
            self.up_to_right_angle(theta)
        }
    }

    fn up_to_right_angle(&self, theta: f64) -> f64 {
        let square = theta * theta;
        let sum = self.terms[..self.used]
            .iter()
            .rev()
            .fold(0.0, |sum, term| sum * square + term);
        maths::pow(theta, self.q + 1.0) * sum
    }
}

/// By what factor all three forces grow when only the feed changes.
///
/// F(f) / F(f_0) = (f / f_0)^(1 - m_c)
///
/// # Units
/// The types carry them.
/// # Range
/// The same depth and the same edge: then every piece of the edge, straight or round, has a thickness
/// in proportion to the feed.
/// # Source
/// Kienzle's law along the edge, as in [`cutting_forces`] (derived).
/// # Example
/// ```
/// use turnwright::physics::force::{feed_factor, ForceLaw};
/// let steel = ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?);
/// let twice = feed_factor(steel, "0.1 mm/rev".parse()?, "0.2 mm/rev".parse()?);
/// assert!((twice.value() - 1.815).abs() < 1e-3);
/// let inch = feed_factor(steel, "0.004 in/rev".parse()?, "0.008 in/rev".parse()?);
/// assert!((inch.value() - twice.value()).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn feed_factor(law: ForceLaw, from: Feed, to: Feed) -> ForceFactor {
    let (f_0, f) = (from.length_per_revolution(), to.length_per_revolution());
    ForceFactor::computed_trade(maths::pow(
        maths::number(f / f_0),
        1.0 - law.exponent.value(),
    ))
}

/// The edge angle that a straight edge with the same direction of force would have.
///
/// kappa_e = atan2(F_f, F_p)
///
/// # Units
/// The types carry them.
/// # Range
/// As the cut gets lighter it falls to zero: all of the normal force bends the bar then.
/// # Source
/// Derived.
/// # Example
/// ```
/// use turnwright::physics::force::{cutting_forces, effective_edge_angle, ForceLaw};
/// let forces = cutting_forces(
///     ForceLaw::new("2220 MPa".parse()?, "0.14".parse()?),
///     "0.2 mm".parse()?,
///     "0.1 mm/rev".parse()?,
///     "95 deg".parse()?,
///     "0.8 mm".parse()?,
///     "0.5".parse()?,
/// );
/// assert!((effective_edge_angle(&forces).degrees() - 26.74).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn effective_edge_angle(forces: &CuttingForces) -> CuttingEdgeAngle {
    let ratio = maths::atan2(forces.feed.newton(), forces.passive.newton());
    CuttingEdgeAngle::computed(maths::angle(ratio))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    fn read<T: std::str::FromStr<Err = crate::error::Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    fn steel() -> ForceLaw {
        ForceLaw::new(read("2220 MPa"), read("0.14"))
    }

    /// The three forces of a tool with 0.1 mm/rev and a normal ratio of 0.5.
    fn forces(a_p: f64, kappa: f64, r: f64) -> CuttingForces {
        cutting_forces(
            steel(),
            DepthOfCut::from_mm(a_p).unwrap(),
            read("0.1 mm/rev"),
            CuttingEdgeAngle::from_degrees(kappa).unwrap(),
            CornerRadius::from_mm(r).unwrap(),
            NORMAL_RATIO.value,
        )
    }

    #[test]
    fn the_integral_along_the_arc_is_exact() {
        // (exponent, angle, integral): by quadrature with 40 digits, derived.
        for (q, theta, wanted) in [
            (0.1, 0.01, 0.005_735_972_466_661_905),
            (0.1, 0.7, 0.612_273_121_543_451_6),
            (0.1, 1.5, 1.400_443_864_181_985_2),
            (0.1, 2.0, 1.899_098_814_192_971_6),
            (0.1, 2.617_993_877_991_494_4, 2.497_019_426_018_208_7),
            (0.5, 0.01, 0.000_666_664_285_715_548_3),
            (0.5, 0.7, 0.383_625_988_676_373_2),
            (0.5, 1.5, 1.127_373_481_623_231_8),
            (0.5, 2.0, 1.620_723_408_319_966_5),
            (0.5, 2.617_993_877_991_494_4, 2.146_165_554_166_415),
            (0.83, 0.7, 0.275_388_833_649_562_5),
            (0.83, 1.5, 0.985_691_401_090_94),
            (0.83, 2.617_993_877_991_494_4, 1.948_657_318_732_159_5),
            (1.26, 0.01, 1.336_246_936_173_391_3e-5),
            (1.26, 1.5, 0.857_668_140_414_481_1),
            (1.26, 2.0, 1.341_260_671_740_362_4),
            (1.9, 0.01, 5.465_046_515_360_023e-7),
            (1.9, 0.7, 0.111_792_021_637_286_86),
            (1.9, 1.5, 0.730_328_753_212_250_7),
            (1.9, 2.617_993_877_991_494_4, 1.551_866_044_059_643_5),
        ] {
            let got = sine_power_integral(q, theta);
            assert!(near(got, wanted, 3e-15), "{q} {theta}: {got} {wanted}");
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn all_three_forces_grow_with_the_feed_by_its_factor(
            a_p in 0.01..8.0_f64, kappa in 20.0..120.0_f64, r in prop_oneof![Just(0.0), 0.1..4.0_f64],
            (f_0, f) in (0.01..1.0_f64, 0.01..1.0_f64), m in 0.0..0.6_f64,
        ) {
            let law = ForceLaw::new(read("2220 MPa"), ForceExponent::from_value(m).unwrap());
            let at = |f| cutting_forces(
                law, DepthOfCut::from_mm(a_p).unwrap(), Feed::from_mm_per_rev(f).unwrap(),
                CuttingEdgeAngle::from_degrees(kappa).unwrap(), CornerRadius::from_mm(r).unwrap(), NORMAL_RATIO.value,
            );
            let by = feed_factor(law, Feed::from_mm_per_rev(f_0).unwrap(), Feed::from_mm_per_rev(f).unwrap()).value();
            let (from, to) = (at(f_0), at(f));
            // Two powers in place of one, each to its last digits; the passive force is a difference beyond 90 deg.
            prop_assert!(near(to.main.newton(), by * from.main.newton(), 1e-13));
            prop_assert!(near(to.feed.newton(), by * from.feed.newton(), 1e-13));
            let off = to.passive.newton() - by * from.passive.newton();
            prop_assert!(off.abs() <= 1e-13 * to.main.newton());
        }

        #[test]
        fn the_integral_along_the_arc_agrees_with_a_fine_quadrature(
            q in 0.1..2.0_f64, theta in 0.001..2.618_f64,
        ) {
            // Simpson, after t = theta u^8, which makes the start smooth.
            let steps = 20_000;
            let h = 1.0 / f64::from(steps);
            let at = |i: i32| {
                let u = f64::from(i) * h;
                (theta * u.powi(8)).sin().powf(q) * 8.0 * theta * u.powi(7)
            };
            let inner: f64 = (1..steps).map(|i| at(i) * if i % 2 == 1 { 4.0 } else { 2.0 }).sum();
            let simpson = (inner + at(steps)) * h / 3.0;
            prop_assert!(near(sine_power_integral(q, theta), simpson, 1e-12));
        }

        #[test]
        fn the_integral_along_the_arc_has_its_closed_forms(theta in 0.0001..2.618_f64) {
            let half = (theta / 2.0).sin();
            prop_assert!(near(sine_power_integral(1.0, theta), 2.0 * half * half, 1e-14));
            let square = (theta - theta.sin() * theta.cos()) / 2.0;
            // For small angles that form itself is a difference.
            let rounding = 1e-15 * theta;
            prop_assert!((sine_power_integral(2.0, theta) - square).abs() <= 1e-14 * square + rounding);
        }

        #[test]
        fn a_tiny_corner_is_a_sharp_one(a_p in 1.0..10.0_f64, kappa in 30.0..120.0_f64) {
            let (tiny, sharp) = (forces(a_p, kappa, 0.005), forces(a_p, kappa, 0.0));
            prop_assert!(near(tiny.main.newton(), sharp.main.newton(), 1e-2));
            let apart = (tiny.passive.newton() - sharp.passive.newton()).abs();
            prop_assert!(apart <= 1e-2 * sharp.main.newton());
        }

        #[test]
        fn a_deeper_cut_takes_more_force(a_p in 0.01..5.0_f64, kappa in 10.0..150.0_f64, r in 0.05..3.0_f64) {
            let (less, more) = (forces(a_p, kappa, r), forces(a_p * 1.01, kappa, r));
            prop_assert!(less.main < more.main);
            prop_assert!(less.feed < more.feed);
        }

        #[test]
        fn the_passive_share_grows_as_the_cut_gets_lighter(
            a_p in 0.002..5.0_f64, kappa in 10.0..150.0_f64, r in 0.05..3.0_f64,
        ) {
            let share = |a_p| {
                let all = forces(a_p, kappa, r);
                all.passive.newton() / all.main.newton()
            };
            // The deeper cut adds edge that points more along the feed; of the same direction only
            // where the straight piece is nearly all of it, and then up to rounding.
            prop_assert!(share(a_p * 0.9) >= share(a_p) - 1e-13);
        }

        #[test]
        fn no_force_normal_to_the_edge_is_lost(a_p in 0.01..5.0_f64, kappa in 10.0..90.0_f64, r in 0.05..3.0_f64) {
            // The parts along and across add up to no more than K_n F_c, and to no less than its
            // length: the edge turns by less than 90 deg.
            let all = forces(a_p, kappa, r);
            let (normal, along, across) =
                (0.5 * all.main.newton(), all.feed.newton(), all.passive.newton());
            prop_assert!(along.hypot(across) <= normal * (1.0 + 1e-12));
            prop_assert!(along + across >= normal * (1.0 - 1e-12));
        }
    }

    #[test]
    fn a_light_cut_passes_smoothly_into_a_deep_one() {
        for kappa in [30.0, 75.0, 90.0, 95.0, 140.0_f64] {
            let join = 0.8 * (1.0 - kappa.to_radians().cos());
            let (light, deep) = (
                forces(join * (1.0 - 1e-9), kappa, 0.8),
                forces(join * (1.0 + 1e-9), kappa, 0.8),
            );
            assert_eq!(light.edge, EdgeInCut::CornerArc);
            assert_eq!(deep.edge, EdgeInCut::CornerArcAndStraightEdge);
            assert!(near(light.main.newton(), deep.main.newton(), 1e-7));
            assert!(near(light.feed.newton(), deep.feed.newton(), 1e-7));
            assert!(near(light.passive.newton(), deep.passive.newton(), 1e-7));
        }
    }

    #[test]
    fn with_an_edge_at_90_deg_the_bar_feels_no_more_than_one_corner_radius() {
        let (one, many) = (forces(0.8, 90.0, 0.8), forces(5.0, 90.0, 0.8));
        assert!(near(many.passive.newton(), one.passive.newton(), 1e-12));
        assert!(many.main.newton() > 3.0 * one.main.newton());
    }

    #[test]
    fn a_long_edge_beyond_90_deg_draws_the_work_in() {
        assert!(forces(5.0, 120.0, 0.2).passive.newton() < 0.0);
    }

    #[test]
    fn a_lighter_cut_pushes_more_across() {
        // F_p -> K_n F_c, kappa_e -> 0: formulas of the light cut, derived.
        let light = forces(0.001, 95.0, 3.0);
        assert!(light.passive.newton() > 0.49 * light.main.newton());
        assert!(effective_edge_angle(&light).degrees() < 2.0);
    }
}
