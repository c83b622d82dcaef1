//! At which speed a bar whirls, and how far it throws itself.
//!
//! A round bar that turns at the frequency of its own first bending vibration bows out and whips.
//! The speeds here are of the bar alone: Euler-Bernoulli, no rotary inertia, no gyroscopic effect
//! (small for slender bars), no damping. Nothing here predicts chatter.

use uom::si::angular_velocity::radian_per_second;
use uom::si::f64::{AngularVelocity, Frequency, Length};
use uom::si::frequency::hertz;
use uom::si::length::meter;
use uom::si::mass_density::kilogram_per_cubic_meter;

use super::bar::Bar;
use super::loads::{GRAVITY, Load};
use super::maths;
use super::section::{GAUSS, Piece};
use super::stepped::{HeldBar, Span};
use super::transfer::{March, Scale, State, triangle};
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CriticalSpeed, Deflection, Density, Eccentricity, Mass, SpindleSpeed, WorkLength,
};

/// Steps through which a cone is followed; each is of the fourth order.
const STEPS_OF_A_CONE: u32 = 200;

/// The ends of the steps of a cone, from the start of its piece: the diameter changes by the same
/// factor in each, for a thin end bends as much in a short length as a thick one in a long.
fn steps_of_a_cone(span: &Span) -> impl Iterator<Item = [Length; 2]> {
    let (first, last) = (span.offset, span.offset + (span.end - span.start));
    let (near, far) = (span.piece.diameter(first), span.piece.diameter(last));
    let ratio = maths::number(far / near);
    let place = move |step: u32| {
        let share = f64::from(step) / f64::from(STEPS_OF_A_CONE);
        let grown = (maths::pow(ratio, share) - 1.0) / (ratio - 1.0);
        if step == STEPS_OF_A_CONE {
            last
        } else {
            first + (last - first) * grown
        }
    };
    (0..STEPS_OF_A_CONE).map(move |step| [place(step), place(step + 1)])
}

impl HeldBar {
    /// The first critical speed: the lowest spindle speed at which the bar whirls.
    ///
    /// Uniform: n = lambda^2/(2 pi L^2) sqrt(E I/(rho A)), lambda = 1.8751 in the chuck, 3.9266 with a
    /// centre, pi between centres. Stepped or sprung: the lowest zero of the determinant of the
    /// conditions at all supports.
    ///
    /// # Units
    /// The types carry them.
    /// # Range
    /// Cylinders: exact for the Euler-Bernoulli beam (held to 1e-9 against 50-digit arithmetic and to
    /// 1e-12 against the zeros of the frequency equations); cones are followed in 200 steps of the
    /// fourth order (1e-9, held against a cone cut into cylinders). Two first frequencies that lie
    /// closer than 1 % count as none, and the next is found.
    /// # Errors
    /// Only of its own making, should no zero be found.
    /// # Source
    /// Blevins, Formulas for Natural Frequency and Mode Shape, from memory; transfer matrices, derived.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("25 mm".parse()?, "1 m".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let speed = bar.first_critical_speed("7850 kg/m3".parse()?)?;
    /// assert!((speed.rpm() - 3046.67).abs() < 0.01);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn first_critical_speed(&self, density: Density) -> Result<CriticalSpeed, Error> {
        let whirl = self.whirl(density)?;
        let sum = whirl.sum();
        // Squares of omega over sqrt((E I)_0/(m_0 L^4)), m_0 the mass per length of the first piece.
        let mut low = 0.999 / sum;
        let below = whirl.determinant(low);
        let mut high = low;
        loop {
            low = high;
            high *= 1.01 * 1.01;
            if (whirl.determinant(high) < 0.0) != (below < 0.0) {
                break;
            }
            if high * sum > 1e6 {
                return Err(Error::internal("a bar without a critical speed"));
            }
        }
        for _ in 0..60 {
            let middle = 0.5 * (low + high);
            if (whirl.determinant(middle) < 0.0) == (below < 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        Ok(whirl.speed(0.5 * (low + high)))
    }

    /// A lower bound of the first critical speed, cheaper than the speed itself.
    ///
    /// 1/omega_1^2 < integral of (mass per length times compliance): the sum over all modes.
    ///
    /// # Units
    /// The types carry them.
    /// # Range
    /// A lower bound: 1.3 % low for a uniform bar in a chuck, 4 % between centres; with steadies, whose
    /// modes lie closer, up to 30 %.
    /// # Source
    /// Dunkerley 1894, from memory; derived: the trace of Green's function.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("25 mm".parse()?, "1 m".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let (floor, speed) = (bar.critical_speed_floor("7850 kg/m3".parse()?), bar.first_critical_speed("7850 kg/m3".parse()?)?);
    /// // Between centres the sum of 1/k^4 is pi^4/90, the first of it 1.
    /// assert!((speed.rpm() / floor.rpm() - (std::f64::consts::PI.powi(4) / 90.0).sqrt()).abs() < 1e-9);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn critical_speed_floor(&self, density: Density) -> CriticalSpeed {
        match self.whirl(density) {
            Ok(whirl) => whirl.speed(1.0 / whirl.sum()),
            // A bar without a section cannot be made.
            Err(_) => CriticalSpeed::computed_trade(0.0),
        }
    }

    fn whirl(
        &self,
        density: Density,
    ) -> Result<Whirl<'_, impl Fn(&Piece, Length) -> LinearDensity>, Error> {
        Ok(Whirl {
            bar: self,
            scale: Scale::of(self)?,
            mass: move |piece: &Piece, x: Length| {
                let outer = piece.diameter(x);
                density.mass_density()
                    * (std::f64::consts::FRAC_PI_4 * (outer - piece.bore) * (outer + piece.bore))
            },
        })
    }

    /// An upper bound of the first critical speed: that of the bar bowed as by its own weight.
    ///
    /// omega^2 = g sum(w y)/sum(w y^2) (Rayleigh), w the weight and y the sag of each part.
    ///
    /// # Units
    /// The types carry them.
    /// # Range
    /// An upper bound, 0.4 % high for a uniform bar in a chuck, 0.07 % between centres (exact cases:
    /// lambda^2 = sqrt(162/13) against 3.5160, and against pi^2). With a steady, where the bar sags
    /// the same way on both its sides, it is far too high.
    /// # Errors
    /// None of its own for a held bar.
    /// # Source
    /// Rayleigh's quotient with the static shape, any text on vibration, from memory.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("20 mm".parse()?, "150 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::Chuck, &Springs::default(), &[])?;
    /// let (bound, speed) = (bar.critical_speed_bound("7850 kg/m3".parse()?)?, bar.first_critical_speed("7850 kg/m3".parse()?)?);
    /// assert!(bound > speed && bound.rpm() < 1.005 * speed.rpm());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn critical_speed_bound(&self, density: Density) -> Result<CriticalSpeed, Error> {
        let mut places = Vec::with_capacity(GAUSS.len() * self.spans.len());
        let mut weights = Vec::with_capacity(places.capacity());
        for span in &self.spans {
            let h = span.end - span.start;
            for (node, share) in GAUSS {
                let x = h * node;
                let outer = span.piece.diameter(x + span.offset);
                places.push(WorkLength::computed(span.start + x));
                weights.push(h * share * (outer - span.piece.bore) * (outer + span.piece.bore));
            }
        }
        let sag = self.bent_by(&[Load::OwnWeight { density }], &places)?;
        let metre = Length::new::<meter>(1.0);
        let (mut first, mut second) = (0.0, 0.0);
        for (sag, weight) in sag.iter().zip(&weights) {
            let y = maths::number(sag.length() / metre);
            let weight = maths::number(*weight / (metre * metre * metre));
            first += weight * y;
            second += weight * y * y;
        }
        let square = GRAVITY * first / second;
        Ok(CriticalSpeed::computed(turns(maths::sqrt(square))))
    }
}

/// The first critical speed of a uniform bar in a rigid chuck with a mass at its free end.
///
/// f = 1/(2 pi) sqrt(3 E I/(L^3 (M + 33 m/140))), m the mass of the bar
///
/// # Units
/// The types carry them.
/// # Range
/// Rayleigh's quotient with the shape of an end load: an upper bound, 1.5 % high without an end
/// mass and nearer with one. The mass is taken as a point at the end.
/// # Source
/// Blevins, Formulas for Natural Frequency and Mode Shape, from memory; derived.
/// # Example
/// ```
/// use turnwright::physics::{bar::Bar, whirl::critical_speed_with_end_mass};
/// let bar = Bar::new("210 GPa".parse()?, "20 mm".parse()?, "200 mm".parse()?);
/// let speed = critical_speed_with_end_mass(&bar, "7850 kg/m3".parse()?, "2 kg".parse()?);
/// assert!((speed.rpm() - 5162.46).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn critical_speed_with_end_mass(bar: &Bar, density: Density, end_mass: Mass) -> CriticalSpeed {
    let l = bar.overhang().length();
    let outer = bar.diameter().length();
    let inner = bar
        .bore()
        .map_or(Length::default(), crate::quantity::Diameter::length);
    let area = std::f64::consts::FRAC_PI_4 * (outer - inner) * (outer + inner);
    let ei = bar.youngs_modulus().pressure() * super::section::second_moment(outer, inner);
    let mass = end_mass.mass() + density.mass_density() * area * l * (33.0 / 140.0);
    let stiffness = 3.0 * ei / (l * l * l);
    let square = stiffness / mass;
    let per_second = Frequency::new::<hertz>(1.0);
    CriticalSpeed::computed(turns(maths::sqrt(maths::number(
        square / (per_second * per_second),
    ))))
}

/// How far the bar throws itself out of the axis when its mass lies off it.
///
/// e r^2/(1 - r^2), r = n/n_cr
///
/// # Units
/// The types carry them.
/// # Range
/// Below the critical speed, without damping.
/// # Errors
/// `spindle_speed`, at the critical speed and above: there the bar whips without limit.
/// # Source
/// The rotor of Jeffcott (Laval), any text on vibration, from memory; derived.
/// # Example
/// ```
/// use turnwright::physics::whirl::whip;
/// let thrown = whip("0.05 mm".parse()?, "900 rpm".parse()?, "1500 rpm".parse()?)?;
/// assert!((thrown.mm() - 0.028125).abs() < 1e-12);
/// assert!(whip("0.05 mm".parse()?, "1500 rpm".parse()?, "1500 rpm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn whip(
    eccentricity: Eccentricity,
    spindle_speed: SpindleSpeed,
    critical: CriticalSpeed,
) -> Result<Deflection, Error> {
    let r = maths::number(spindle_speed.frequency() / critical.frequency());
    if r >= 1.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "spindle_speed",
            spindle_speed.to_string(),
            format!("below the critical speed {critical}"),
            "run slower, let less stand out, or support the bar",
        ));
    }
    let square = r * r;
    Ok(Deflection::computed(
        eccentricity.length() * (square / ((1.0 - r) * (1.0 + r))),
    ))
}

/// Turns per time of an angular velocity in radians per second.
fn turns(omega: f64) -> Frequency {
    let omega = AngularVelocity::new::<radian_per_second>(omega);
    Frequency::new::<hertz>(omega.get::<radian_per_second>() / (2.0 * std::f64::consts::PI))
}

/// A bar that vibrates, in plain numbers of its scale.
struct Whirl<'a, F> {
    bar: &'a HeldBar,
    scale: Scale,
    /// Mass per length of a piece at a place of it.
    mass: F,
}

type LinearDensity = <uom::si::f64::MassDensity as std::ops::Mul<uom::si::f64::Area>>::Output;

impl<F: Fn(&Piece, Length) -> LinearDensity> Whirl<'_, F> {
    /// Mass per length over that of the first piece.
    fn mass_per_length(&self, piece: &Piece, x: Length) -> f64 {
        let first = self.bar.spans.first().map_or_else(
            || (self.mass)(piece, x),
            |span| (self.mass)(&span.piece, Length::default()),
        );
        maths::number((self.mass)(piece, x) / first)
    }

    /// The sum over all modes of 1/omega^2: the integral of mass times compliance. The first mode is
    /// not below the root of its inverse.
    fn sum(&self) -> f64 {
        let l = self.scale.length;
        let mut sum = 0.0;
        for span in &self.bar.spans {
            let h = span.end - span.start;
            for (node, share) in GAUSS {
                let along = h * node;
                let mass = self.mass_per_length(&span.piece, span.offset + along);
                let give = self
                    .scale
                    .compliance(self.bar.compliance(span.start + along));
                sum += mass * give * maths::number(h / l) * share;
            }
        }
        sum
    }

    /// The determinant of all conditions at a square of the circular frequency, in units of
    /// (E I)_0/(m_0 L^4).
    fn determinant(&self, square: f64) -> f64 {
        let mut march = March::begin(self.bar, self.scale);
        let l = self.scale.length;
        for span in &self.bar.spans {
            let piece = &span.piece;
            let h = span.end - span.start;
            if piece.softness().is_some() {
                let ei = maths::number(piece.stiffness(span.offset) / self.scale.ei);
                let mass = self.mass_per_length(piece, span.offset);
                let map = Krylov::new(maths::number(h / l), square * mass / ei, ei);
                march.through(|state| map.through(state));
            } else {
                for [start, end] in steps_of_a_cone(span) {
                    let at = |x: Length| {
                        let ei = maths::number(piece.stiffness(x) / self.scale.ei);
                        (1.0 / ei, square * self.mass_per_length(piece, x))
                    };
                    let ends = [at(start), at((start + end) / 2.0), at(end)];
                    let length = maths::number((end - start) / l);
                    march.through(|state| runge_kutta(state, length, ends));
                }
            }
            march.meet(span);
        }
        let mut rows = march.end();
        triangle(&mut rows)
    }

    fn speed(&self, square: f64) -> CriticalSpeed {
        let l = self.scale.length;
        let first = self.bar.spans.first().map_or_else(
            || uom::si::f64::MassDensity::new::<kilogram_per_cubic_meter>(1.0) * (l * l),
            |span| (self.mass)(&span.piece, Length::default()),
        );
        let unit = self.scale.ei / (first * (l * l) * (l * l));
        let per_second = Frequency::new::<hertz>(1.0);
        let unit = maths::number(unit / (per_second * per_second));
        CriticalSpeed::computed(turns(maths::sqrt(square * unit)))
    }
}

/// What a vibrating cylinder does to a state: E I y'''' = m omega^2 y.
struct Krylov {
    c: [f64; 4],
    /// m omega^2/(E I)
    fourth: f64,
    ei: f64,
}

impl Krylov {
    /// c_0 = (cosh x + cos x)/2, c_1 = (sinh x + sin x)/(2 b), c_2 = (cosh x - cos x)/(2 b^2),
    /// c_3 = (sinh x - sin x)/(2 b^3), x = b h, b^4 = m omega^2/(E I).
    fn new(h: f64, fourth: f64, ei: f64) -> Self {
        let b = maths::sqrt(maths::sqrt(fourth));
        let x = b * h;
        let c = if x < 0.3 {
            // The differences would leave no digits; the next terms are below 1e-15.
            let (q, hh) = (x * x * x * x, h * h);
            [
                1.0 + q / 24.0 * (1.0 + q / 1680.0),
                h * (1.0 + q / 120.0 * (1.0 + q / 3024.0)),
                hh * (0.5 + q / 720.0 * (1.0 + q / 5040.0)),
                hh * h * (1.0 / 6.0 + q / 5040.0 * (1.0 + q / 7920.0)),
            ]
        } else {
            let up = maths::exp(x);
            let (sinh, cosh) = (0.5 * (up - 1.0 / up), 0.5 * (up + 1.0 / up));
            let (sin, cos) = (maths::sin(x), maths::cos(x));
            [
                0.5 * (cosh + cos),
                0.5 * (sinh + sin) / b,
                0.5 * (cosh - cos) / (b * b),
                0.5 * (sinh - sin) / (b * b * b),
            ]
        };
        Self { c, fourth, ei }
    }

    fn through(&self, state: State) -> State {
        let [c0, c1, c2, c3] = self.c;
        let (b4, ei) = (self.fourth, self.ei);
        let [y, slope, moment, shear] = state;
        let (m, v) = (moment / ei, shear / ei);
        [
            c0 * y + c1 * slope + c2 * m + c3 * v,
            b4 * c3 * y + c0 * slope + c1 * m + c2 * v,
            ei * (b4 * (c2 * y + c3 * slope) + c0 * m + c1 * v),
            ei * (b4 * (c1 * y + c2 * slope + c3 * m) + c0 * v),
        ]
    }
}

/// One step of the fourth order along a vibrating cone; `ends` are 1/(E I) and m omega^2 at its
/// start, middle and end.
fn runge_kutta(state: State, h: f64, ends: [(f64, f64); 3]) -> State {
    let rate = |s: State, (soft, mass): (f64, f64)| [s[1], s[2] * soft, s[3], mass * s[0]];
    let moved =
        |s: State, r: State, by: f64| -> State { std::array::from_fn(|i| s[i] + by * r[i]) };
    let [start, middle, end] = ends;
    let k1 = rate(state, start);
    let k2 = rate(moved(state, k1, h / 2.0), middle);
    let k3 = rate(moved(state, k2, h / 2.0), middle);
    let k4 = rate(moved(state, k3, h), end);
    std::array::from_fn(|i| state[i] + h / 6.0 * (k1[i] + 2.0 * (k2[i] + k3[i]) + k4[i]))
}
