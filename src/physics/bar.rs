//! How far a bar gives way to the tool.
//!
//! Symbols: E modulus and I second moment of area of the bar, L its length from the chuck, a the
//! station of the tool from the chuck, b = L - a, F_p the passive force. Euler-Bernoulli beams:
//! shear is left out, and adds a share of about 0.55 (d/L)^2 to an end-loaded round bar in a chuck
//! (derived, with the shear coefficient after Cowper 1966, from memory): 6 % at L/d = 3, 2 % at 5.
//! The deflection of the tool itself is not in it either.

use std::ops::{Div, Mul};

use uom::si::f64::{Force, Length, Pressure};
use uom::si::force::newton;
use uom::si::length::meter;

use super::maths;
use super::polynomial::stationary;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Deflection, Diameter, Overhang, PassiveForce, RotationalStiffness, Stiffness, WorkLength,
    YoungsModulus,
};

/// A bar of one diameter, standing out of the jaws.
///
/// ```
/// use turnwright::physics::bar::Bar;
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "100 mm".parse()?);
/// assert_eq!(bar.overhang().mm(), 100.0);
/// let tube = bar.with_bore("12 mm".parse()?)?;
/// assert_eq!(tube.bore().map(|d| d.mm()), Some(12.0));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Bar {
    youngs_modulus: YoungsModulus,
    diameter: Diameter,
    bore: Option<Diameter>,
    overhang: Overhang,
}

impl Bar {
    /// A solid bar.
    #[must_use]
    pub const fn new(
        youngs_modulus: YoungsModulus,
        diameter: Diameter,
        overhang: Overhang,
    ) -> Self {
        Self {
            youngs_modulus,
            diameter,
            bore: None,
            overhang,
        }
    }

    /// The same bar as a tube.
    ///
    /// # Errors
    /// `bore`, when it is not smaller than the diameter.
    pub fn with_bore(mut self, bore: Diameter) -> Result<Self, Error> {
        if bore >= self.diameter {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "bore",
                bore.to_string(),
                format!("less than the diameter {}", self.diameter),
                "check which is the bore and which the outside diameter",
            ));
        }
        self.bore = Some(bore);
        Ok(self)
    }

    /// Young's modulus E.
    #[must_use]
    pub fn youngs_modulus(&self) -> YoungsModulus {
        self.youngs_modulus
    }

    /// Outside diameter.
    #[must_use]
    pub fn diameter(&self) -> Diameter {
        self.diameter
    }

    /// Diameter of the bore, if there is one.
    #[must_use]
    pub fn bore(&self) -> Option<Diameter> {
        self.bore
    }

    /// Length out of the jaws.
    #[must_use]
    pub fn overhang(&self) -> Overhang {
        self.overhang
    }
}

/// How the chuck and the centre give way. What is absent is rigid.
///
/// ```
/// use turnwright::physics::bar::Springs;
/// let springs = Springs::default().with_centre("15 kN/mm".parse()?);
/// assert_eq!(springs.chuck, None);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Default)]
#[non_exhaustive]
pub struct Springs {
    /// Stiffness of the chuck and spindle against a force across, k_c.
    pub chuck: Option<Stiffness>,
    /// Stiffness of the chuck and spindle against tilting, k_th.
    pub chuck_rotational: Option<RotationalStiffness>,
    /// Stiffness of the centre and tailstock, k_t.
    pub centre: Option<Stiffness>,
}

impl Springs {
    /// With that stiffness of the chuck against a force across.
    #[must_use]
    pub const fn with_chuck(mut self, stiffness: Stiffness) -> Self {
        self.chuck = Some(stiffness);
        self
    }

    /// With that stiffness of the chuck against tilting.
    #[must_use]
    pub const fn with_chuck_rotational(mut self, stiffness: RotationalStiffness) -> Self {
        self.chuck_rotational = Some(stiffness);
        self
    }

    /// With that stiffness of the centre.
    #[must_use]
    pub const fn with_centre(mut self, stiffness: Stiffness) -> Self {
        self.centre = Some(stiffness);
        self
    }
}

/// What holds the bar.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Support {
    /// The chuck alone.
    Chuck,
    /// The chuck at one end and a centre at the other.
    ChuckAndCentre,
    /// A centre at each end.
    BetweenCentres,
}

impl Support {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chuck => "chuck",
            Self::ChuckAndCentre => "chuck_and_centre",
            Self::BetweenCentres => "between_centres",
        }
    }
}

/// Length over force: how much a support or a bar gives way.
pub(super) type Compliance = <Length as Div<Force>>::Output;
/// Angle over torque, that is 1 / (N m).
pub(super) type Tilt = <Compliance as Div<<Length as Mul<Length>>::Output>>::Output;
type Area = <Length as Mul<Length>>::Output;
/// E I, force times area.
pub(super) type BendingStiffness = <Pressure as Mul<<Area as Mul<Area>>::Output>>::Output;

/// 1/k_th of the chuck; what is rigid gives nothing.
#[inline]
pub(super) fn tilt(springs: &Springs) -> Tilt {
    let metre = Length::new::<meter>(1.0);
    springs.chuck_rotational.map_or(Tilt::default(), |k| {
        metre / (Force::new::<newton>(k.knm_per_rad() * 1e3) * (metre * metre))
    })
}

/// A bar with its springs, as flexibilities.
struct Held {
    length: Length,
    ei: BendingStiffness,
    /// 1/k_c
    u: Compliance,
    /// 1/k_th
    v: Tilt,
    /// 1/k_t
    w: Compliance,
}

impl Held {
    #[inline]
    fn new(bar: &Bar, springs: &Springs) -> Self {
        let e = bar.youngs_modulus.pressure();
        let outer = bar.diameter.length();
        let inner = bar.bore.map_or(Length::default(), Diameter::length);
        // I = pi (D^4 - d^4) / 64, without the difference of nearly equal powers.
        let difference = (outer - inner) * (outer + inner);
        let i = difference * (outer * outer + inner * inner) * (std::f64::consts::PI / 64.0);
        let give = |k: Option<Stiffness>| match k {
            // 1 kN/mm is 1e6 N/m.
            Some(k) => Length::new::<meter>(1.0) / Force::new::<newton>(k.kn_per_mm() * 1e6),
            None => Compliance::default(),
        };
        Self {
            length: bar.overhang.length(),
            ei: e * i,
            u: give(springs.chuck),
            v: tilt(springs),
            w: give(springs.centre),
        }
    }

    /// c(x, a) for x >= a: what a unit force at `a` moves at `x`, the chuck alone holding.
    #[inline]
    fn flexibility(&self, x: Length, a: Length) -> Compliance {
        a * a * (3.0 * x - a) / (6.0 * self.ei) + self.u + x * a * self.v
    }

    /// Deflection over force at the tool, the chuck alone holding.
    #[inline]
    fn chuck(&self, a: Length) -> Compliance {
        self.flexibility(a, a)
    }

    /// The same with a centre at the end.
    ///
    /// c(a, a) - c(L, a)^2 / (c(L, L) + 1/k_t), multiplied out so that every term is positive: near
    /// the centre the difference would leave no digits.
    #[inline]
    fn chuck_and_centre(&self, a: Length) -> Compliance {
        let Self {
            length: l,
            ei,
            u,
            v,
            w,
        } = self;
        let (l, ei, u, v, w) = (*l, *ei, *u, *v, *w);
        let b = l - a;
        let rigid = a * a * a * (4.0 * l - a) / (36.0 * ei * ei);
        let moved = u * (l + 2.0 * a) / (3.0 * ei);
        let tilted = v * (a * a) * l / (3.0 * ei);
        let bar = b * b * (rigid + moved + tilted + u * v);
        (self.chuck(a) * w + bar) / (self.chuck(l) + w)
    }

    /// Deflection over force at the tool between centres: a^2 b^2/(3 E I L) + (b/L)^2/k_A +
    /// (a/L)^2/k_B. The spring of the chuck is that of the centre at the head.
    #[inline]
    fn between_centres(&self, a: Length) -> Compliance {
        let (l, b) = (self.length, self.length - a);
        let (near, far) = (b / l, a / l);
        (a * a) * (b * b) / (3.0 * self.ei * l) + near * near * self.u + far * far * self.w
    }

    #[inline]
    fn at(&self, support: Support, a: Length) -> Compliance {
        match support {
            Support::Chuck => self.chuck(a),
            Support::ChuckAndCentre => self.chuck_and_centre(a),
            Support::BetweenCentres => self.between_centres(a),
        }
    }

    /// The polynomial in a/L that is proportional to `between_centres`, from the constant up.
    fn polynomial_between(&self) -> [f64; 7] {
        let l = self.length;
        let end = l * l * l / (3.0 * self.ei);
        let (u, w) = (maths::number(self.u / end), maths::number(self.w / end));
        // s^2 (1 - s)^2 + u (1 - s)^2 + w s^2
        [u, -2.0 * u, 1.0 + u + w, -2.0, 1.0, 0.0, 0.0]
    }

    /// The polynomial in a/L that is proportional to `chuck_and_centre`, from the constant up.
    fn polynomial(&self) -> [f64; 7] {
        let l = self.length;
        // Flexibilities over that of the bar's end, L^3 / (3 E I).
        let end = l * l * l / (3.0 * self.ei);
        let u = maths::number(self.u / end);
        let v = maths::number(self.v * (l * l) / end);
        let w = maths::number(self.w / end);
        // (s^3 + u + v s^2) w
        let centre = [u * w, 0.0, v * w, w, 0.0, 0.0, 0.0];
        // s^3 (4 - s)/4 + u (1 + 2 s) + v s^2 + u v, times (1 - s)^2
        let bar = [u + u * v, 2.0 * u, v, 1.0, -0.25];
        let mut sum = centre;
        for (power, factor) in bar.iter().enumerate() {
            for (more, square) in [1.0, -2.0, 1.0].iter().enumerate() {
                if let Some(coefficient) = sum.get_mut(power + more) {
                    *coefficient += factor * square;
                }
            }
        }
        sum
    }
}

/// How far the bar gives way at the tool, the chuck alone holding.
///
/// delta = F_p (a^3 / (3 E I) + 1/k_c + a^2/k_th)
///
/// # Units
/// The types carry them. `at` is measured from the chuck.
/// # Range
/// Euler-Bernoulli: shear, left out, adds a share of about 0.55 (d/L)^2.
/// # Errors
/// `at`, when it is beyond the overhang.
/// # Source
/// Any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// # Example
/// ```
/// use turnwright::physics::bar::{deflection_chuck, Bar, Springs};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "100 mm".parse()?);
/// let bent =
///     deflection_chuck(&bar, &Springs::default(), "100 N".parse()?, "100 mm".parse()?)?;
/// assert!((bent.mm() - 0.02021).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn deflection_chuck(
    bar: &Bar,
    springs: &Springs,
    passive_force: PassiveForce,
    at: WorkLength,
) -> Result<Deflection, Error> {
    deflection(bar, Support::Chuck, springs, passive_force, at)
}

/// How far the bar gives way at the tool, held by the chuck and a centre.
///
/// Rigid: delta = F_p a^3 b^2 (4 L - a) / (12 E I L^3); with springs
/// delta = F_p (c(a, a) - c(L, a)^2 / (c(L, L) + 1/k_t)),
/// c(x, a) = a^2 (3 x - a) / (6 E I) + 1/k_c + x a / k_th for x >= a.
///
/// # Units
/// The types carry them. `at` is measured from the chuck.
/// # Range
/// The centre stands at the end of the overhang. Euler-Bernoulli: shear, left out, adds a share of
/// about 0.55 (d/L)^2 or more.
/// # Errors
/// `at`, when it is beyond the overhang.
/// # Source
/// Any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// # Example
/// ```
/// use turnwright::physics::bar::{deflection_chuck_and_centre, Bar, Springs};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "300 mm".parse()?);
/// let bent = deflection_chuck_and_centre(
///     &bar,
///     &Springs::default(),
///     "100 N".parse()?,
///     "150 mm".parse()?,
/// )?;
/// assert!((bent.mm() - 0.01492).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn deflection_chuck_and_centre(
    bar: &Bar,
    springs: &Springs,
    passive_force: PassiveForce,
    at: WorkLength,
) -> Result<Deflection, Error> {
    deflection(bar, Support::ChuckAndCentre, springs, passive_force, at)
}

/// How far the bar gives way at the tool.
///
/// [`deflection_chuck`] or [`deflection_chuck_and_centre`], as the support says.
///
/// # Units
/// The types carry them. `at` is measured from the chuck.
/// # Range
/// As of those two.
/// # Errors
/// `at`, when it is beyond the overhang.
/// # Source
/// Any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// # Example
/// A centre holds the end far better than the chuck alone does:
/// ```
/// use turnwright::physics::bar::{deflection, Bar, Springs, Support};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "200 mm".parse()?);
/// let springs = Springs::default().with_centre("15 kN/mm".parse()?);
/// let at = |support| deflection(&bar, support, &springs, "80 N".parse()?, "200 mm".parse()?);
/// assert!(at(Support::Chuck)?.mm() > 20.0 * at(Support::ChuckAndCentre)?.mm());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[inline]
pub fn deflection(
    bar: &Bar,
    support: Support,
    springs: &Springs,
    passive_force: PassiveForce,
    at: WorkLength,
) -> Result<Deflection, Error> {
    let (held, f_p) = (Held::new(bar, springs), passive_force.force());
    let a = inside(bar, "at", at)?;
    Ok(Deflection::computed(f_p * held.at(support, a)))
}

/// The force with which the centre holds against the tool.
///
/// Rigid: R = F_p a^2 (3 L - a) / (2 L^3); with springs R = F_p c(L, a) / (c(L, L) + 1/k_t)
///
/// # Units
/// The types carry them. `at` is measured from the chuck.
/// # Range
/// As [`deflection_chuck_and_centre`].
/// # Errors
/// `at`, when it is beyond the overhang.
/// # Source
/// Any strength of materials text (Roark; Timoshenko), from memory; derived again.
/// # Example
/// ```
/// use turnwright::physics::bar::{centre_force, Bar, Springs};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "300 mm".parse()?);
/// let force = centre_force(&bar, &Springs::default(), "100 N".parse()?, "150 mm".parse()?)?;
/// assert!((force.newton() - 31.25).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn centre_force(
    bar: &Bar,
    springs: &Springs,
    passive_force: PassiveForce,
    at: WorkLength,
) -> Result<PassiveForce, Error> {
    let (held, f_p) = (Held::new(bar, springs), passive_force.force());
    let a = inside(bar, "at", at)?;
    let share = held.flexibility(held.length, a) / (held.chuck(held.length) + held.w);
    Ok(PassiveForce::computed(f_p * share))
}

/// Where between two stations a moving tool bends the bar most, and how far.
///
/// Chuck alone: at the far station. Chuck and centre: where the derivative of the deflection is
/// zero (rigid: a = (2 - sqrt 2) L), or at one of the two stations, whichever bends most; with
/// springs there can be more than one such place, and all are looked at.
///
/// # Units
/// The types carry them. Stations are measured from the chuck.
/// # Range
/// As [`deflection_chuck_and_centre`].
/// # Errors
/// `from` or `to`, when it is beyond the overhang; `to`, when it is nearer to the chuck than `from`.
/// # Source
/// Derived: the deflection is a polynomial of the sixth degree in a, and all zeros of its derivative
/// are found between those of the next one.
/// # Example
/// ```
/// use turnwright::physics::bar::{worst_station, Bar, Springs, Support};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "300 mm".parse()?);
/// let (at, bent) = worst_station(
///     &bar,
///     &Springs::default(),
///     Support::ChuckAndCentre,
///     "100 N".parse()?,
///     "10 mm".parse()?,
///     "290 mm".parse()?,
/// )?;
/// assert!((at.mm() - 175.736).abs() < 1e-3);
/// assert!((bent.mm() - 0.01606).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn worst_station(
    bar: &Bar,
    springs: &Springs,
    support: Support,
    passive_force: PassiveForce,
    from: WorkLength,
    to: WorkLength,
) -> Result<(WorkLength, Deflection), Error> {
    let (held, f_p) = (Held::new(bar, springs), passive_force.force());
    let (first, last) = (inside(bar, "from", from)?, inside(bar, "to", to)?);
    if to < from {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "to",
            to.to_string(),
            format!("not nearer to the chuck than {from}"),
            "give the station nearer to the chuck first",
        ));
    }
    let (mut worst, mut station) = (held.at(support, last), to);
    let mut look_at = |a: Length, place: WorkLength| {
        let give = held.at(support, a);
        if give > worst {
            (worst, station) = (give, place);
        }
    };
    look_at(first, from);
    let polynomial = match support {
        Support::Chuck => None,
        Support::ChuckAndCentre => Some(held.polynomial()),
        Support::BetweenCentres => Some(held.polynomial_between()),
    };
    if let Some(polynomial) = polynomial {
        let share = |a: Length| maths::number(a / held.length);
        for s in stationary(polynomial, share(first), share(last)) {
            let a = held.length * s;
            look_at(a, WorkLength::computed(a));
        }
    }
    Ok((station, Deflection::computed(f_p * worst)))
}

#[inline]
fn inside(bar: &Bar, field: &'static str, at: WorkLength) -> Result<Length, Error> {
    if at.mm() > bar.overhang.mm() {
        return Err(beyond(bar, field, at));
    }
    Ok(at.length())
}

#[cold]
#[inline(never)]
fn beyond(bar: &Bar, field: &'static str, at: WorkLength) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        field,
        at.to_string(),
        format!("at most the overhang {}", bar.overhang),
        "stations are measured from the chuck",
    )
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    fn steel(diameter: f64, overhang: f64) -> Bar {
        Bar::new(
            YoungsModulus::from_gpa(210.0).unwrap(),
            Diameter::from_mm(diameter).unwrap(),
            Overhang::from_mm(overhang).unwrap(),
        )
    }

    fn mm(length: f64) -> WorkLength {
        WorkLength::from_mm(length).unwrap()
    }

    prop_compose! {
        fn any_springs()(
            chuck: Option<Stiffness>,
            chuck_rotational: Option<RotationalStiffness>,
            centre: Option<Stiffness>,
        ) -> Springs {
            Springs { chuck, chuck_rotational, centre }
        }
    }

    prop_compose! {
        /// A bar and a station on it.
        fn any_bar()(e: YoungsModulus, d: Diameter, l in 1.0..5000.0_f64, share in 0.001..=1.0_f64)
            -> (Bar, WorkLength) {
            (Bar::new(e, d, Overhang::from_mm(l).unwrap()), mm((l * share).max(0.01)))
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn a_centre_never_makes_it_worse(
            (bar, at) in any_bar(), springs in any_springs(), force: PassiveForce,
        ) {
            let alone = deflection_chuck(&bar, &springs, force, at).unwrap();
            let with = deflection_chuck_and_centre(&bar, &springs, force, at).unwrap();
            prop_assert!(with.mm().abs() <= alone.mm().abs() * (1.0 + 1e-12));
            prop_assert!(with.mm() * force.newton() >= 0.0);
        }

        #[test]
        fn the_form_without_differences_is_the_form_with_them(
            (bar, at) in any_bar(), springs in any_springs(),
        ) {
            let held = Held::new(&bar, &springs);
            let (a, l) = (at.length(), held.length);
            let c_al = held.flexibility(l, a);
            let taken = c_al * (c_al / (held.chuck(l) + held.w)).value;
            let difference = (held.chuck(a) - taken).value;
            // The difference is good to the last digits of its larger term only.
            let rounding = 1e-13 * held.chuck(a).value;
            prop_assert!((held.chuck_and_centre(a).value - difference).abs() <= rounding);
        }

        #[test]
        fn a_force_at_the_centre_moves_it_by_its_spring(
            (bar, _) in any_bar(), springs in any_springs(), k: Stiffness, force: PassiveForce,
        ) {
            let springs = springs.with_centre(k);
            let end = mm(bar.overhang().mm());
            let bent = deflection_chuck_and_centre(&bar, &springs, force, end).unwrap();
            let centre = centre_force(&bar, &springs, force, end).unwrap();
            prop_assert!(near(bent.mm() * k.kn_per_mm() * 1e3, centre.newton(), 1e-11));
        }

        #[test]
        fn no_station_is_worse_than_the_worst(
            (bar, _) in any_bar(), springs in any_springs(), ends in (0.001..1.0, 0.001..1.0_f64),
        ) {
            let l = bar.overhang().mm();
            let from = mm((l * f64::min(ends.0, ends.1)).max(0.01));
            let to = mm((l * f64::max(ends.0, ends.1)).max(0.01));
            let force = PassiveForce::from_newton(100.0).unwrap();
            for support in [Support::Chuck, Support::ChuckAndCentre] {
                let (at, most) = worst_station(&bar, &springs, support, force, from, to).unwrap();
                prop_assert!(at.mm() >= from.mm() * (1.0 - 1e-12) && at.mm() <= to.mm() * (1.0 + 1e-12));
                for i in 0..=200 {
                    let share = f64::from(i) / 200.0;
                    let a = mm(from.mm() + share * (to.mm() - from.mm()));
                    // The last step may pass the far station by a digit.
                    let a = a.min(to);
                    let bent = deflection(&bar, support, &springs, force, a).unwrap();
                    prop_assert!(bent.mm() <= most.mm() * (1.0 + 1e-12));
                }
            }
        }
    }

    #[test]
    fn a_rigid_bar_follows_the_table() {
        // Roark; Timoshenko (from memory): F a^3/(3EI); F a^3 b^2 (4L - a)/(12 E I L^3);
        // prop force F a^2 (3L - a)/(2 L^3).
        let (bar, rigid) = (steel(20.0, 300.0), Springs::default());
        let force = PassiveForce::from_newton(100.0).unwrap();
        let ei = 210e3 * std::f64::consts::PI * 20_f64.powi(4) / 64.0;
        for a in [0.01, 12.0, 150.0, 299.0, 300.0] {
            let b = 300.0 - a;
            let cubes = 300_f64.powi(3);
            let alone = deflection_chuck(&bar, &rigid, force, mm(a)).unwrap();
            assert!(near(alone.mm(), 100.0 * a.powi(3) / (3.0 * ei), 1e-13));
            let with = deflection_chuck_and_centre(&bar, &rigid, force, mm(a)).unwrap();
            let table = 100.0 * a.powi(3) * b * b * (1200.0 - a) / (12.0 * ei * cubes);
            assert!(near(with.mm(), table, 1e-12), "{a}: {with} {table}");
            let centre = centre_force(&bar, &rigid, force, mm(a)).unwrap();
            let table = 100.0 * a * a * (900.0 - a) / (2.0 * cubes);
            assert!(near(centre.newton(), table, 1e-13));
        }
    }

    #[test]
    fn the_worst_station_of_a_rigid_bar_is_at_0_586_of_its_length() {
        // (2 - sqrt 2) L, derived.
        let (at, _) = worst_station(
            &steel(20.0, 300.0),
            &Springs::default(),
            Support::ChuckAndCentre,
            PassiveForce::from_newton(100.0).unwrap(),
            mm(0.01),
            mm(300.0),
        )
        .unwrap();
        assert!(near(at.mm(), (2.0 - 2.0_f64.sqrt()) * 300.0, 1e-9));
    }

    #[test]
    fn a_soft_centre_makes_its_own_end_the_worst() {
        let springs = Springs::default().with_centre(Stiffness::from_kn_per_mm(0.5).unwrap());
        let bar = steel(40.0, 300.0);
        let force = PassiveForce::from_newton(100.0).unwrap();
        let end = mm(300.0);
        let worst =
            worst_station(&bar, &springs, Support::ChuckAndCentre, force, mm(1.0), end).unwrap();
        assert_eq!(worst.0, end);
    }

    #[test]
    fn a_tube_bends_more_than_the_solid_bar_by_what_is_missing() {
        let solid = steel(30.0, 150.0);
        let tube = solid.with_bore(Diameter::from_mm(20.0).unwrap()).unwrap();
        let bent = |bar: &Bar| {
            let force = PassiveForce::from_newton(200.0).unwrap();
            deflection_chuck(bar, &Springs::default(), force, mm(150.0)).unwrap()
        };
        // I falls by 1 - (20/30)^4, derived.
        let share = 1.0 - (20.0_f64 / 30.0).powi(4);
        assert!(near(bent(&solid).mm(), bent(&tube).mm() * share, 1e-13));
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        let bar = steel(20.0, 100.0);
        let (rigid, f) = (Springs::default(), PassiveForce::from_newton(1.0).unwrap());
        let far = mm(100.1);
        let field = |e: Error| e.field().to_owned();
        let thick = Diameter::from_mm(20.0).unwrap();
        assert_eq!(bar.with_bore(thick).map_err(field), Err("bore".into()));
        for support in [Support::Chuck, Support::ChuckAndCentre] {
            let at = deflection(&bar, support, &rigid, f, far).map_err(field);
            assert_eq!(at, Err("at".into()));
            let worst = |from, to| worst_station(&bar, &rigid, support, f, from, to).map_err(field);
            assert_eq!(worst(mm(1.0), far), Err("to".into()));
            assert_eq!(worst(far, mm(1.0)), Err("from".into()));
            assert_eq!(worst(mm(50.0), mm(1.0)), Err("to".into()));
        }
        assert_eq!(
            centre_force(&bar, &rigid, f, far).map_err(field),
            Err("at".into())
        );
    }
}
