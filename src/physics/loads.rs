//! How a bar bends under several loads at once: forces and moments at any places, and its own weight.
//!
//! Each load bends the bar everywhere, not only where it acts. Symbols as in [`super::stepped`].

use uom::si::acceleration::meter_per_second_squared;
use uom::si::f64::{Acceleration, Length};

use super::maths;
use super::section::{GAUSS, Piece};
use super::stepped::{HeldBar, Span};
use super::transfer::{March, Scale, State, unknowns};
use crate::error::Error;
use crate::quantity::{
    BendingMoment, Deflection, Density, Diameter, FeedForce, Mass, PassiveForce, WorkLength,
};

/// Standard gravity g_n = 9.80665 m/s^2, exact by definition (NIST SP 811, from memory).
pub(super) const GRAVITY: f64 = 9.806_65;

/// What a centre carries across: a force of the cut, and half the weight of a bar that lies on two of
/// them.
///
/// R = |F_p| + m g_n / 2
///
/// # Units
/// The types carry them.
/// # Range
/// As if both acted in one direction; across one another they carry less. The weight of a bar that is
/// heavier at the far end lies less on this one.
/// # Source
/// Statics; standard gravity g_n, exact by definition (NIST SP 811, from memory).
/// # Example
/// ```
/// use turnwright::physics::loads::load_on_centre;
/// let r = load_on_centre("100 N".parse()?, "20 kg".parse()?);
/// assert!((r.newton() - 198.0665).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn load_on_centre(force: PassiveForce, mass: Mass) -> PassiveForce {
    let gravity = Acceleration::new::<meter_per_second_squared>(GRAVITY);
    PassiveForce::computed(force.force().abs() + mass.mass() * gravity / 2.0)
}

/// What acts on a bar. All in one plane: own weight bends downwards, a passive force away from the
/// tool; ask for them apart where the two planes differ.
///
/// ```
/// use turnwright::physics::loads::Load;
/// let load = Load::Force { at: "80 mm".parse()?, force: "100 N".parse()? };
/// assert_ne!(load, Load::OwnWeight { density: "7850 kg/m3".parse()? });
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Load {
    /// A force across the bar.
    Force {
        /// Where, from the chuck.
        at: WorkLength,
        /// How much, positive away from the tool.
        force: PassiveForce,
    },
    /// A moment that bends the bar, positive where it turns the free end away from the tool.
    Moment {
        /// Where, from the chuck.
        at: WorkLength,
        /// How much.
        moment: BendingMoment,
    },
    /// The weight of the bar itself, in standard gravity.
    OwnWeight {
        /// Density of the bar.
        density: Density,
    },
}

/// The moment with which the feed force bends the bar: it acts at the surface, not on the axis.
///
/// C = -F_f d/2
///
/// Text books drop it. It is negative when the tool cuts towards the chuck: it turns the free end
/// towards the tool, and takes away some of what the passive force does. With the chuck alone and
/// the tool at the end its deflection is to that of the passive force as (3/2) (F_f/F_p) (d/2)/L: a
/// quarter where both forces are equal and L = 3 d.
///
/// # Units
/// The types carry them.
/// # Range
/// For a tool that cuts towards the chuck; away from it the sign changes.
/// # Source
/// Statics; derived.
/// # Example
/// ```
/// use turnwright::physics::loads::feed_force_moment;
/// let moment = feed_force_moment("200 N".parse()?, "40 mm".parse()?);
/// assert!((moment.newton_meter() + 4.0).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn feed_force_moment(feed_force: FeedForce, diameter: Diameter) -> BendingMoment {
    let turned = feed_force.force() * (diameter.length() / 2.0);
    BendingMoment::computed(-uom::si::f64::Torque::from(turned))
}

impl HeldBar {
    /// How far the bar gives way at some places, under some loads that all act at once.
    ///
    /// # Units
    /// The types carry them. Places are measured from the chuck.
    /// # Range
    /// Euler-Bernoulli. Relative to the largest deflection the answer is good to 12 digits or more for
    /// bars of up to four supports; [`HeldBar::deflection`] keeps all digits for one force and its
    /// own place.
    /// # Errors
    /// `loads` or `places`, when one is beyond the bar.
    /// # Source
    /// Transfer matrices, see the private module; checked against beam elements.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{loads::Load, section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("20 mm".parse()?, "120 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::Chuck, &Springs::default(), &[])?;
    /// let loads = [Load::Force { at: "80 mm".parse()?, force: "100 N".parse()? }];
    /// // The free end goes farther than the place of the load.
    /// let bent = bar.bent_by(&loads, &["80 mm".parse()?, "120 mm".parse()?])?;
    /// assert!((bent[1].mm() - 0.018108).abs() < 1e-6 && bent[0] < bent[1]);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn bent_by(&self, loads: &[Load], places: &[WorkLength]) -> Result<Vec<Deflection>, Error> {
        let scale = Scale::of(self)?;
        let mut cuts = self.cuts(loads)?;
        for (number, place) in places.iter().enumerate() {
            cuts.push(self.inside(&format!("places[{number}]"), *place)?);
        }
        let walk = Walk::new(scale, cuts, loads);
        let found = self.unknowns(&walk)?;
        self.second_walk(&walk, &found, places)
    }

    /// The forces with which the steadies hold against some loads, in their order along the bar.
    pub(super) fn reactions(&self, loads: &[Load]) -> Result<Vec<PassiveForce>, Error> {
        let scale = Scale::of(self)?;
        let walk = Walk::new(scale, self.cuts(loads)?, loads);
        let unit = scale.ei / (scale.length * scale.length);
        // A reaction pushes back, and counts as positive when it does.
        let found = self.unknowns(&walk)?;
        Ok(found
            .iter()
            .skip(2)
            .map(|reaction| PassiveForce::computed(-*reaction * unit))
            .collect())
    }

    fn cuts(&self, loads: &[Load]) -> Result<Vec<Length>, Error> {
        let mut cuts = Vec::with_capacity(loads.len());
        for (number, load) in loads.iter().enumerate() {
            if let Load::Force { at, .. } | Load::Moment { at, .. } = load {
                cuts.push(self.inside(&format!("loads[{number}].at"), *at)?);
            }
        }
        Ok(cuts)
    }

    /// The two figures that the head leaves open, and the reactions of the steadies.
    fn unknowns(&self, walk: &Walk<'_>) -> Result<Vec<f64>, Error> {
        let mut march = March::begin(self, walk.scale);
        for span in &self.spans {
            walk.along(span, |step| {
                march.through(|state| step.homogeneous(state));
                if let Some(column) = march.columns.last_mut() {
                    *column = step.loaded(*column);
                }
            });
            march.meet(span);
        }
        unknowns(march.end()).ok_or_else(|| Error::internal("a bar that nothing holds"))
    }

    /// The same way again with the state itself, now that the head and the reactions are known.
    fn second_walk(
        &self,
        walk: &Walk<'_>,
        found: &[f64],
        places: &[WorkLength],
    ) -> Result<Vec<Deflection>, Error> {
        let first = March::begin(self, walk.scale);
        let mut state: State = [0.0; 4];
        for (column, factor) in first.columns.iter().zip(found).take(2) {
            for (sum, value) in state.iter_mut().zip(column) {
                *sum += factor * value;
            }
        }
        let mut reactions = found.iter().skip(2);
        let mut props = self.props.iter().filter(|prop| !prop.is_centre).peekable();
        let mut seen: Vec<(Length, f64)> = Vec::with_capacity(walk.cuts.len());
        for span in &self.spans {
            walk.along(span, |step| {
                state = step.loaded(step.homogeneous(state));
                seen.push((step.end, state[0]));
            });
            while props.next_if(|prop| prop.at <= span.end).is_some() {
                state[3] += reactions.next().copied().unwrap_or_default();
            }
        }
        places
            .iter()
            .map(|place| {
                let at = place.length();
                let number = seen.partition_point(|(end, _)| *end < at);
                seen.get(number)
                    .or(seen.last())
                    .map(|(_, y)| Deflection::computed(walk.scale.length * *y))
                    .ok_or_else(|| Error::internal("a bar without a section"))
            })
            .collect()
    }
}

/// Cuts the spans at all loads and places.
struct Walk<'a> {
    scale: Scale,
    cuts: Vec<Length>,
    loads: &'a [Load],
}

/// One stretch of the walk: what it does to a state.
struct Stretch<'a> {
    walk: &'a Walk<'a>,
    piece: &'a Piece,
    /// From the start of the piece.
    from: Length,
    to: Length,
    /// From the head.
    end: Length,
}

impl<'a> Walk<'a> {
    fn new(scale: Scale, mut cuts: Vec<Length>, loads: &'a [Load]) -> Self {
        let order = |at: &Length| maths::number(*at / scale.length);
        cuts.sort_by(|a, b| order(a).total_cmp(&order(b)));
        Self { scale, cuts, loads }
    }

    fn along(&self, span: &Span, mut step: impl FnMut(&Stretch<'_>)) {
        let mut from = span.start;
        let inner = self
            .cuts
            .iter()
            .copied()
            .filter(|cut| *cut > span.start && *cut < span.end);
        for to in inner.chain([span.end]) {
            if to <= from {
                continue;
            }
            let shift = span.offset - span.start;
            step(&Stretch {
                walk: self,
                piece: &span.piece,
                from: from + shift,
                to: to + shift,
                end: to,
            });
            from = to;
        }
    }

    /// True where a load acts at the end of a stretch; the end of the bar takes what lies on it.
    fn acts(&self, at: WorkLength, end: Length) -> bool {
        at.length() == end
    }
}

impl Stretch<'_> {
    /// Over h: y + theta h + M J_0 + V J_1, theta + M W + V K_1, M + V h, V, with W the elastic
    /// weight, J_0 and K_1 its first moments about the far and the near end, J_1 the mixed one.
    fn homogeneous(&self, state: State) -> State {
        let (l, ei) = (self.walk.scale.length, self.walk.scale.ei);
        let part = self.piece.elastic(self.from, self.to);
        let h = maths::number((self.to - self.from) / l);
        let weight = maths::number(part.weight * (ei / l));
        let far = maths::number(part.from_far / l);
        let near = maths::number(part.from_near / l);
        let own = maths::number(part.own / (l * l * l / ei));
        let [y, slope, moment, shear] = state;
        [
            y + slope * h + moment * weight * far + shear * (weight * near * far - own),
            slope + moment * weight + shear * weight * near,
            moment + shear * h,
            shear,
        ]
    }

    /// Adds what the loads on this stretch and at its end do.
    fn loaded(&self, state: State) -> State {
        let (l, ei) = (self.walk.scale.length, self.walk.scale.ei);
        let mut state = state;
        for load in self.walk.loads {
            match load {
                Load::OwnWeight { density } => self.weigh(*density, &mut state),
                Load::Force { at, force } if self.walk.acts(*at, self.end) => {
                    state[3] += maths::number(force.force() * (l * l) / ei);
                }
                Load::Moment { at, moment } if self.walk.acts(*at, self.end) => {
                    state[2] -= maths::number(moment.torque() * l / ei);
                }
                Load::Force { .. } | Load::Moment { .. } => {}
            }
        }
        state
    }

    /// Own weight q = rho g A along a diameter D_0 + s x: its moment after xi is
    /// rho g pi/4 ((D_0^2 - d^2) xi^2/2 + D_0 s xi^3/3 + s^2 xi^4/12), integrated over the elastic
    /// weight by the rule of 16 points (exact on a cylinder).
    fn weigh(&self, density: Density, state: &mut State) {
        let (l, ei) = (self.walk.scale.length, self.walk.scale.ei);
        let gravity = Acceleration::new::<meter_per_second_squared>(GRAVITY);
        let per_area = density.mass_density() * gravity * std::f64::consts::FRAC_PI_4;
        let h = self.to - self.from;
        let (near, far) = (self.piece.diameter(self.from), self.piece.diameter(self.to));
        let (slope, bore) = ((far - near) / h, self.piece.bore);
        let level = (near - bore) * (near + bore);
        let moment = |x: Length| {
            per_area
                * (x * x)
                * (level / 2.0 + near * slope * x / 3.0 + slope * slope * (x * x) / 12.0)
        };
        let shear = per_area * h * (level + near * slope * h + slope * slope * (h * h) / 3.0);
        for (node, share) in GAUSS {
            let x = h * node;
            let bend = moment(x) / self.piece.stiffness(self.from + x) * (h * share);
            state[0] += maths::number(bend * (h - x) / l);
            state[1] += maths::number(bend);
        }
        state[2] += maths::number(moment(h) * l / ei);
        state[3] += maths::number(shear * (l * l) / ei);
    }
}
