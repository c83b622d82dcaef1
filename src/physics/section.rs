//! A section of a bar, cylinder or cone, solid or bored, and how it bends.
//!
//! What a piece of a bar does to the piece beside it follows from three figures of its *elastic
//! weight* dx/(E I): how much there is, where its centre lies, and its second moment about that
//! centre. All three are sums of positive terms here, so that no digit is lost however short or
//! slender the piece is.

use std::f64::consts::PI;
use std::ops::Div;

use uom::si::f64::{Length, Pressure};
use uom::si::length::meter;

use super::bar::{BendingStiffness, Compliance, Tilt};
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, WorkLength, YoungsModulus};

/// A section of a bar: a cylinder, or a cone, solid or with a bore.
///
/// ```
/// use turnwright::physics::section::Section;
/// let shoulder = Section::cylinder("30 mm".parse()?, "40 mm".parse()?);
/// let taper = Section::cone("30 mm".parse()?, "20 mm".parse()?, "60 mm".parse()?);
/// let tube = shoulder.with_bore("1/2 in".parse()?)?;
/// assert!(shoulder.with_bore("30 mm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Section {
    diameter: Diameter,
    end_diameter: Diameter,
    bore: Option<Diameter>,
    length: WorkLength,
}

impl Section {
    /// A solid cylinder.
    #[must_use]
    pub const fn cylinder(diameter: Diameter, length: WorkLength) -> Self {
        Self::cone(diameter, diameter, length)
    }

    /// A solid cone; `diameter` is at its end towards the chuck.
    #[must_use]
    pub const fn cone(diameter: Diameter, end_diameter: Diameter, length: WorkLength) -> Self {
        Self {
            diameter,
            end_diameter,
            bore: None,
            length,
        }
    }

    /// The same section with a straight bore all along.
    ///
    /// # Errors
    /// `bore`, when it is not smaller than the section.
    pub fn with_bore(mut self, bore: Diameter) -> Result<Self, Error> {
        let thinnest = self.diameter.min(self.end_diameter);
        if bore >= thinnest {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "bore",
                bore.to_string(),
                format!("less than the diameter {thinnest}"),
                "check which is the bore and which the outside diameter",
            ));
        }
        self.bore = Some(bore);
        Ok(self)
    }

    /// Diameter at the end towards the chuck.
    #[must_use]
    pub fn diameter(&self) -> Diameter {
        self.diameter
    }

    /// Diameter at the end away from the chuck.
    #[must_use]
    pub fn end_diameter(&self) -> Diameter {
        self.end_diameter
    }

    /// Diameter of the bore, if there is one.
    #[must_use]
    pub fn bore(&self) -> Option<Diameter> {
        self.bore
    }

    /// Length along the axis.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.length
    }

    /// The section as pieces whose elastic weight has a form without loss of digits.
    pub(super) fn pieces(&self, modulus: YoungsModulus, mut each: impl FnMut(Piece)) {
        let e = modulus.pressure();
        let (near, far) = (self.diameter.length(), self.end_diameter.length());
        let bore = self.bore.map_or(Length::default(), Diameter::length);
        let length = self.length.length();
        if self.diameter == self.end_diameter {
            each(Piece {
                length,
                near,
                far,
                bore,
                shape: Shape::Cylinder(
                    Length::new::<meter>(1.0)
                        / (e * second_moment(near, bore))
                        / Length::new::<meter>(1.0),
                ),
            });
            return;
        }
        if self.bore.is_none() {
            each(Piece {
                length,
                near,
                far,
                bore,
                shape: Shape::Cone(e),
            });
            return;
        }
        // The quadrature of a bored cone keeps all digits while the wall changes at most by a
        // factor of two from end to end: thicker walls in steps of that factor, then the rest.
        let (thin, thick) = if near < far { (near, far) } else { (far, near) };
        let mut walls = vec![thin - bore];
        while walls.last().is_some_and(|w| *w * 2.0 < thick - bore) {
            let next = walls.last().map_or(thin - bore, |w| *w * 2.0);
            walls.push(next);
        }
        walls.push(thick - bore);
        let mut ends: Vec<Length> = walls.into_iter().map(|wall| bore + wall).collect();
        if near > far {
            ends.reverse();
        }
        for pair in ends.windows(2) {
            if let [from, to] = pair {
                let share = (*to - *from) / (far - near);
                each(Piece {
                    length: length * share,
                    near: *from,
                    far: *to,
                    bore,
                    shape: Shape::BoredCone(e),
                });
            }
        }
    }
}

/// I = pi (D^4 - d^4) / 64, without the difference of nearly equal powers.
pub(super) fn second_moment(
    outer: Length,
    inner: Length,
) -> <<Length as std::ops::Mul<Length>>::Output as std::ops::Mul<
    <Length as std::ops::Mul<Length>>::Output,
>>::Output {
    let difference = (outer - inner) * (outer + inner);
    difference * (outer * outer + inner * inner) * (PI / 64.0)
}

/// A piece of a bar over which the diameter is constant or falls in a straight line.
#[derive(Debug, Clone, Copy)]
pub(super) struct Piece {
    pub(super) length: Length,
    /// Diameter at the end towards the chuck.
    pub(super) near: Length,
    /// Diameter at the other end.
    pub(super) far: Length,
    pub(super) bore: Length,
    shape: Shape,
}

/// 1/(E I)
pub(super) type Softness = <Tilt as Div<Length>>::Output;

#[derive(Debug, Clone, Copy)]
enum Shape {
    /// 1/(E I)
    Cylinder(Softness),
    /// E
    Cone(Pressure),
    /// E
    BoredCone(Pressure),
}

/// The elastic weight of a part of a piece.
#[derive(Debug, Clone, Copy)]
pub(super) struct Elastic {
    /// Integral of dx/(E I).
    pub(super) weight: Tilt,
    /// Distance of its centre from the end towards the chuck.
    pub(super) from_near: Length,
    /// Distance of its centre from the other end.
    pub(super) from_far: Length,
    /// Integral of (x - centre)^2 dx/(E I).
    pub(super) own: Compliance,
}

impl Piece {
    /// The diameter at a place, measured from the end towards the chuck.
    pub(super) fn diameter(&self, x: Length) -> Length {
        match self.shape {
            Shape::Cylinder(_) => self.near,
            _ => self.near + (self.far - self.near) * (x / self.length),
        }
    }

    /// 1/(E I), where it is the same all along.
    pub(super) fn softness(&self) -> Option<Softness> {
        match self.shape {
            Shape::Cylinder(soft) => Some(soft),
            _ => None,
        }
    }

    /// E I at a place.
    pub(super) fn stiffness(&self, x: Length) -> BendingStiffness {
        match self.shape {
            Shape::Cylinder(soft) => Length::new::<meter>(1.0) / Length::new::<meter>(1.0) / soft,
            Shape::Cone(e) | Shape::BoredCone(e) => e * second_moment(self.diameter(x), self.bore),
        }
    }

    /// The elastic weight from one place to another, both measured from the end towards the chuck.
    ///
    /// Cone, with D_0 and D the diameters at the two places and S = D_0^2 + D_0 D + D^2:
    /// weight h S/(3 D_0^3 D^3), centre h D_0 (D + 2 D_0)/(2 S) from the first place, second moment
    /// about it h^3/(4 D_0 D S), all times 64/(pi E): derived, by integrals of (x - x_0)^k/D^4.
    #[inline]
    pub(super) fn elastic(&self, from: Length, to: Length) -> Elastic {
        let h = to - from;
        match self.shape {
            Shape::Cylinder(soft) => {
                let weight = h * soft;
                Elastic {
                    weight,
                    from_near: h * 0.5,
                    from_far: h * 0.5,
                    own: weight * (h * h) * (1.0 / 12.0),
                }
            }
            Shape::Cone(e) => {
                let (near, far) = (self.diameter(from), self.diameter(to));
                let (nn, nf, ff) = (near * near, near * far, far * far);
                let sum = nn + nf + ff;
                let scale = 64.0 / PI;
                Elastic {
                    weight: h * sum / (e * (nf * nf * nf)) * (scale / 3.0),
                    from_near: h * (near * (far + 2.0 * near)) / (2.0 * sum),
                    from_far: h * (far * (near + 2.0 * far)) / (2.0 * sum),
                    own: h * h * h / (e * (nf * sum)) * (scale / 4.0),
                }
            }
            Shape::BoredCone(_) => self.quadrature(from, h),
        }
    }

    fn quadrature(&self, from: Length, h: Length) -> Elastic {
        if h <= Length::default() {
            // Nothing has no centre.
            return Elastic {
                weight: Tilt::default(),
                from_near: Length::default(),
                from_far: Length::default(),
                own: Compliance::default(),
            };
        }
        let mut weight = Tilt::default();
        let mut first = h * Tilt::default();
        for (node, share) in GAUSS {
            let w = h * share / self.stiffness(from + h * node);
            weight += w;
            first += w * (h * node);
        }
        let centre = first / weight;
        let mut own = Compliance::default();
        for (node, share) in GAUSS {
            let w = h * share / self.stiffness(from + h * node);
            let off = h * node - centre;
            own += w * (off * off);
        }
        Elastic {
            weight,
            from_near: centre,
            from_far: h - centre,
            own,
        }
    }
}

/// Nodes and weights of the Gauss-Legendre rule of 16 points on 0 to 1.
///
/// Source: Abramowitz and Stegun, Handbook of Mathematical Functions, table 25.4, from memory;
/// computed again from the zeros of the Legendre polynomial (a test below holds them against it).
pub(super) const GAUSS: [(f64, f64); 16] = [
    (0.005299532504175033, 0.013576229705877048),
    (0.02771248846338371, 0.031126761969323947),
    (0.06718439880608412, 0.04757925584124639),
    (0.12229779582249849, 0.06231448562776694),
    (0.19106187779867811, 0.07479799440828837),
    (0.2709916111713863, 0.08457825969750127),
    (0.35919822461037054, 0.09130170752246179),
    (0.4524937450811813, 0.09472530522753425),
    (0.5475062549188188, 0.09472530522753425),
    (0.6408017753896295, 0.09130170752246179),
    (0.7290083888286137, 0.08457825969750127),
    (0.8089381222013219, 0.07479799440828837),
    (0.8777022041775016, 0.06231448562776694),
    (0.9328156011939158, 0.04757925584124639),
    (0.9722875115366163, 0.031126761969323947),
    (0.994700467495825, 0.013576229705877048),
];

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::maths;
    use proptest::prelude::*;
    use uom::si::length::millimeter;

    fn mm(value: f64) -> Length {
        Length::new::<millimeter>(value)
    }

    #[test]
    fn the_rule_of_16_points_integrates_powers_up_to_31() {
        // Exact for polynomials of degree 2 n - 1: 1/(k + 1), derived.
        for power in 0..32_u32 {
            let sum: f64 = GAUSS
                .iter()
                .map(|(x, w)| w * x.powi(i32::try_from(power).unwrap()))
                .sum();
            // 16 products of rounding 1e-16 each.
            assert!((sum * f64::from(power + 1) - 1.0).abs() < 3e-15, "{power}");
        }
    }

    fn pieces(section: Section) -> Vec<Piece> {
        let mut pieces = Vec::new();
        section.pieces(YoungsModulus::from_gpa(210.0).unwrap(), |piece| {
            pieces.push(piece);
        });
        pieces
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// The closed form of a cone, and the quadrature that a bored cone uses.
        #[test]
        fn a_cone_in_closed_form_is_its_integral(
            near in 5.0..100.0_f64, ratio in 0.5..2.0_f64, length in 1.0..500.0_f64,
            ends in (0.0..1.0_f64, 0.0..1.0_f64),
        ) {
            let section = Section::cone(
                Diameter::from_mm(near).unwrap(),
                Diameter::from_mm(near * ratio).unwrap(),
                WorkLength::from_mm(length).unwrap(),
            );
            let [piece] = pieces(section)[..] else { panic!("one piece") };
            let from = mm(length) * f64::min(ends.0, ends.1);
            let to = mm(length) * f64::max(ends.0, ends.1) + mm(0.001);
            let (closed, summed) = (piece.elastic(from, to), piece.quadrature(from, to - from));
            let near = |a: f64, b: f64| (a - b).abs() <= 1e-12 * b.abs();
            prop_assert!(near(closed.weight.value, summed.weight.value));
            prop_assert!(near(closed.from_near.value, summed.from_near.value));
            prop_assert!(near(closed.own.value, summed.own.value));
            let whole = maths::number((closed.from_near + closed.from_far) / (to - from));
            prop_assert!(near(whole, 1.0));
        }

        #[test]
        fn a_bored_cone_is_cut_into_pieces_that_add_up(
            near in 20.0..100.0_f64, far in 20.0..100.0_f64, bore in 0.1..19.999_f64,
        ) {
            let section = Section::cone(
                Diameter::from_mm(near).unwrap(),
                Diameter::from_mm(far).unwrap(),
                WorkLength::from_mm(100.0).unwrap(),
            )
            .with_bore(Diameter::from_mm(bore).unwrap())
            .unwrap();
            let pieces = pieces(section);
            let sum: f64 = pieces.iter().map(|p| p.length.get::<meter>()).sum();
            prop_assert!((sum - 0.1).abs() < 1e-12);
            prop_assert!(pieces.len() < 20);
            for piece in &pieces {
                let walls = (piece.near - bore_of(piece), piece.far - bore_of(piece));
                let ratio = maths::number(walls.0 / walls.1);
                prop_assert!((0.499..2.001).contains(&ratio), "{ratio}");
            }
        }
    }

    fn bore_of(piece: &Piece) -> Length {
        piece.bore
    }
}
