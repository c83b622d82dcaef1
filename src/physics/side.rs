//! All that lies to one side of a place on a bar, as three figures; see [`super::stepped`] for the
//! formulas.

use std::ops::Mul;

use uom::si::f64::{Force, Length, Ratio};
use uom::si::force::newton;
use uom::si::length::meter;
use uom::si::ratio::ratio;

use super::bar::{Compliance, Tilt};
use super::section::{Elastic, Softness};

/// All that lies to one side of a place, as that place feels it.
#[derive(Debug, Clone, Copy)]
pub(super) struct Side {
    /// W = p / q
    p: Tilt,
    q: Ratio,
    /// Distance of the elastic centre, away from the place.
    d: Length,
    /// U
    u: Compliance,
}

impl Side {
    /// Held by something that gives way to a force alone: a centre, a steady at the end.
    pub(super) fn pinned(give: Compliance) -> Self {
        Self {
            p: Length::new::<meter>(1.0)
                / Force::new::<newton>(1.0)
                / (Length::new::<meter>(1.0) * Length::new::<meter>(1.0)),
            q: Ratio::default(),
            d: Length::default(),
            u: give,
        }
    }

    pub(super) fn clamped(give: Compliance, tilt: Tilt) -> Self {
        Self {
            p: tilt,
            q: Ratio::new::<ratio>(1.0),
            d: Length::default(),
            u: give,
        }
    }

    /// The same with a piece more between it and the place: `near` is the distance of the piece's
    /// elastic centre from the place, `far` from the side.
    #[inline]
    pub(super) fn through(self, weight: Tilt, near: Length, far: Length, own: Compliance) -> Self {
        let share = weight * self.q;
        let p = self.p + share;
        let between = self.d + far;
        let h = near + far;
        Self {
            p,
            q: self.q,
            d: (self.p * (self.d + h) + share * near) / p,
            u: self.u + own + weight * self.p / p * (between * between),
        }
    }

    #[inline]
    pub(super) fn forwards(self, part: &Elastic) -> Self {
        self.through(part.weight, part.from_far, part.from_near, part.own)
    }

    #[inline]
    pub(super) fn backwards(self, part: &Elastic) -> Self {
        self.through(part.weight, part.from_near, part.from_far, part.own)
    }

    /// The same with a cylinder of that length more; `soft` is its 1/(E I).
    #[inline]
    pub(super) fn with_cylinder(self, soft: Softness, h: Length) -> Joined {
        let (weight, half) = (h * soft, h * 0.5);
        self.joined(weight, half, half, weight * (h * h) * (1.0 / 12.0))
    }

    /// The same with a support of that compliance at the place.
    pub(super) fn propped(self, give: Compliance) -> Self {
        let sum = give + self.u;
        let share = give / sum;
        Self {
            p: self.p,
            q: self.q + self.p * (self.d * self.d) / sum,
            d: self.d * share,
            u: self.u * share,
        }
    }

    /// The same with a piece more, as products that need no quotient yet.
    #[inline]
    pub(super) fn joined(self, weight: Tilt, near: Length, far: Length, own: Compliance) -> Joined {
        let share = weight * self.q;
        let p = self.p + share;
        let between = self.d + far;
        Joined {
            p,
            q: self.q,
            pd: self.p * (between + near) + share * near,
            pu: p * (self.u + own) + weight * self.p * (between * between),
        }
    }

    /// The share of a unit force, and the moment, that the other side takes.
    pub(super) fn handed_over(self, other: Self) -> (Ratio, Length) {
        let here = self.q * self.u + self.p * (self.d * self.d);
        let there = other.q * other.u + other.p * (other.d * other.d);
        let arm = self.d + other.d;
        let below = (self.p * other.q + other.p * self.q) * (self.u + other.u)
            + self.p * other.p * (arm * arm);
        let force =
            other.p * here + other.q * self.p * self.u + self.p * other.p * (self.d * other.d);
        let moment = self.p * self.d * there + other.p * other.d * here;
        (force / below, moment / below)
    }

    /// The reaction of a support of that compliance at the place, under a unit of force and a
    /// moment that come from the other side.
    pub(super) fn reaction(self, give: Compliance, force: Ratio, moment: Length) -> Ratio {
        let arm = self.p * self.d;
        (self.q * self.u * force + arm * (self.d * force + moment))
            / (self.q * (self.u + give) + arm * self.d)
    }
}

/// A side with its figures multiplied by p: W = p/q, d = (p d)/p, U = (p U)/p.
#[derive(Clone, Copy)]
pub(super) struct Joined {
    p: Tilt,
    q: Ratio,
    pd: <Tilt as Mul<Length>>::Output,
    pu: <Tilt as Mul<Compliance>>::Output,
}

impl Joined {
    /// What a unit force at the place moves it, nothing being on the other side.
    #[inline]
    pub(super) fn alone(self) -> Compliance {
        (self.q * self.pu + self.pd * self.pd) / (self.p * self.q)
    }

    /// What a unit force moves the place between two sides: the formula of the module, above and below
    /// multiplied by p q p_2 q_2, so that one quotient is left.
    #[inline]
    pub(super) fn between(self, other: Self) -> Compliance {
        let here = self.q * self.pu + self.pd * self.pd;
        let there = other.q * other.pu + other.pd * other.pd;
        let arm = other.p * self.pd + self.p * other.pd;
        let above = self.pu * there * self.p + other.pu * here * other.p;
        let below = (self.p * other.q + other.p * self.q) * (other.p * self.pu + self.p * other.pu)
            + arm * arm;
        above / below
    }
}
