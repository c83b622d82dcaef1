//! The bar along its axis: how it loads the centre as it grows, and when it would buckle.
//!
//! Symbols: E Young's modulus, A cross section, I second moment of area, L length, k_ax stiffness
//! along the axis of what stands at the ends, Delta L growth.

use std::f64::consts::PI;

use uom::si::f64::{Area, Force, Length};
use uom::si::force::newton;
use uom::si::length::meter;

use crate::error::{Error, ErrorKind};
use crate::quantity::{
    AxialForce, AxialStiffness, Diameter, ThermalGrowth, WorkLength, YoungsModulus,
};

/// A bar between what holds its two ends, as it bears along its axis.
///
/// # Example
/// ```
/// use turnwright::physics::strut::{growth_load, Strut};
/// let bar = Strut::new("210 GPa".parse()?, "30 mm".parse()?, "400 mm".parse()?);
/// let load = growth_load(&bar, "0.069 mm".parse()?, Some("20 kN/mm".parse()?));
/// assert_eq!(load.newton().round(), 1309.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Strut {
    youngs_modulus: YoungsModulus,
    // Apart from the others, so that a bar of one piece allocates nothing.
    first: Piece,
    others: Vec<Piece>,
}

/// One piece of a [`Strut`].
#[derive(Debug, Clone, Copy, PartialEq)]
struct Piece {
    diameter: Diameter,
    bore: Option<Diameter>,
    length: WorkLength,
}

impl Piece {
    fn sides(&self) -> (Length, Length) {
        let inner = self.bore.map_or(Length::default(), Diameter::length);
        (self.diameter.length(), inner)
    }

    /// pi (D^2 - d^2) / 4, without the difference of nearly equal squares.
    fn area(&self) -> Area {
        let (outer, inner) = self.sides();
        (outer - inner) * (outer + inner) * (PI / 4.0)
    }

    /// I = A (D^2 + d^2) / 16
    fn bending_resistance(&self, modulus: YoungsModulus) -> uom::si::f64::Torque {
        let (outer, inner) = self.sides();
        let metre = Length::new::<meter>(1.0);
        let per_metre = (outer * outer + inner * inner) / metre / 16.0;
        // E I over a metre, as uom has no name for E I.
        (modulus.pressure() * self.area() * per_metre).into()
    }
}

impl Strut {
    /// A solid round bar of one diameter.
    #[must_use]
    pub fn new(youngs_modulus: YoungsModulus, diameter: Diameter, length: WorkLength) -> Self {
        Self {
            youngs_modulus,
            first: Piece {
                diameter,
                bore: None,
                length,
            },
            others: Vec::new(),
        }
    }

    /// With another piece at the end, for a stepped bar.
    #[must_use]
    pub fn then(mut self, diameter: Diameter, length: WorkLength) -> Self {
        self.others.push(Piece {
            diameter,
            bore: None,
            length,
        });
        self
    }

    /// With another bar at the end, which may have bores of its own; its material counts as this one's.
    #[must_use]
    pub fn then_all_of(mut self, other: Self) -> Self {
        self.others.push(other.first);
        self.others.extend(other.others);
        self
    }

    /// With a bore through all pieces.
    ///
    /// # Errors
    /// `bore`, when it is not smaller than every diameter.
    pub fn with_bore(mut self, bore: Diameter) -> Result<Self, Error> {
        for piece in std::iter::once(&mut self.first).chain(&mut self.others) {
            if bore >= piece.diameter {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    "bore",
                    bore.to_string(),
                    format!("a bore smaller than the diameter of {}", piece.diameter),
                    "give the diameter of the hole, or leave it out for solid stock",
                ));
            }
            piece.bore = Some(bore);
        }
        Ok(self)
    }

    fn pieces(&self) -> impl Iterator<Item = &Piece> {
        std::iter::once(&self.first).chain(&self.others)
    }

    /// The length of all pieces.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        let all = self.pieces().map(|piece| piece.length.length());
        WorkLength::computed(all.fold(Length::default(), |sum, length| sum + length))
    }
}

/// The force with which a growing bar presses on the centre more than before.
///
/// F = Delta L / (sum L/(E A) + 1/k_ax)
///
/// # Units
/// The types carry them.
/// # Range
/// The chuck does not yield along the axis and the bar does not bend; the stiffness is that of
/// centre, quill and tailstock together, and of chuck and headstock where they are soft. Without
/// one nothing yields but the bar: the largest force there can be. A bar that shrinks unloads the
/// centre: negative.
/// # Source
/// Derived: the bar and what stands behind it are springs in a row.
/// # Example
/// See [`Strut`].
#[must_use]
pub fn growth_load(
    strut: &Strut,
    growth: ThermalGrowth,
    stiffness: Option<AxialStiffness>,
) -> AxialForce {
    let e = strut.youngs_modulus.pressure();
    let metre = Length::new::<meter>(1.0);
    // 1 kN/mm is 1e6 N/m.
    let mut give = stiffness.map_or(metre / Force::new::<newton>(f64::INFINITY), |k| {
        metre / Force::new::<newton>(k.kn_per_mm() * 1e6)
    });
    for piece in strut.pieces() {
        give += piece.length.length() / (e * piece.area());
    }
    AxialForce::computed(growth.length() / give)
}

/// The axial force at which the bar between chuck and centre would buckle, if it were hinged at
/// both ends: a lower bound.
///
/// F = pi^2 E I / L^2
///
/// # Units
/// The types carry them.
/// # Range
/// Both ends hinged, as between centres; a bar that the chuck holds bears about twice as much.
/// A stepped bar is taken with its weakest piece over the whole length. Slender bars only: a stout
/// one yields before.
/// # Source
/// Euler's column; any strength of materials text (from memory).
/// # Example
/// ```
/// use turnwright::physics::strut::{buckling_load, Strut};
/// let bar = Strut::new("210 GPa".parse()?, "30 mm".parse()?, "400 mm".parse()?);
/// assert_eq!((buckling_load(&bar).newton() / 1e3).round(), 515.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn buckling_load(strut: &Strut) -> AxialForce {
    let (length, metre) = (strut.length().length(), Length::new::<meter>(1.0));
    let weakest = strut
        .pieces()
        .map(|piece| piece.bending_resistance(strut.youngs_modulus))
        .reduce(|a, b| if b < a { b } else { a })
        .unwrap_or_default();
    let force: Force = weakest * metre * (PI * PI) / (length * length);
    AxialForce::computed(force)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    fn near(a: f64, b: f64, relative: f64) -> bool {
        (a - b).abs() <= relative * b.abs()
    }

    proptest! {
        #[test]
        fn a_bar_in_two_pieces_of_one_diameter_is_one_bar(
            d in 2.0..200.0_f64, a in 10.0..500.0_f64, b in 10.0..500.0_f64, k in 0.1..1000.0_f64,
        ) {
            let d = Diameter::from_mm(d).unwrap();
            let length = |mm: f64| WorkLength::from_mm(mm).unwrap();
            let k = Some(AxialStiffness::from_kn_per_mm(k).unwrap());
            let whole = Strut::new(read("210 GPa"), d, length(a + b));
            let parts = Strut::new(read("210 GPa"), d, length(a)).then(d, length(b));
            let grown = read("0.05 mm");
            prop_assert!(near(growth_load(&whole, grown, k).newton(), growth_load(&parts, grown, k).newton(), 1e-13));
            prop_assert!(near(buckling_load(&whole).newton(), buckling_load(&parts).newton(), 1e-13));
        }

        #[test]
        fn a_softer_centre_is_loaded_less_and_never_more_than_by_a_rigid_one(
            d in 5.0..100.0_f64, k in 0.1..1000.0_f64,
        ) {
            let bar = Strut::new(read("206 GPa"), Diameter::from_mm(d).unwrap(), read("300 mm"));
            let load = |k: Option<f64>| {
                let k = k.map(|k| AxialStiffness::from_kn_per_mm(k).unwrap());
                growth_load(&bar, read("0.04 mm"), k).newton()
            };
            prop_assert!(load(Some(k)) < load(Some(2.0 * k)));
            prop_assert!(load(Some(2.0 * k)) < load(None));
        }
    }

    #[test]
    fn a_bar_with_bores_of_its_own_is_the_sum_of_its_pieces() {
        let piece = |d: &str, bore: &str| {
            let solid = Strut::new(read("210 GPa"), read(d), read("100 mm"));
            solid.with_bore(read(bore)).unwrap()
        };
        let (a, b) = (piece("30 mm", "10 mm"), piece("40 mm", "20 mm"));
        let give = |bar: &Strut| 1.0 / growth_load(bar, read("0.01 mm"), None).newton();
        let both = a.clone().then_all_of(b.clone());
        assert!(near(give(&both), give(&a) + give(&b), 1e-13));
        assert_eq!(both.length().mm(), 200.0);
    }

    #[test]
    fn a_rigid_seat_holds_all_of_the_growth_as_stress() {
        // F = E A alpha Delta T when nothing gives way: 210 GPa * 0.06 mm / 400 mm on 706.858 mm2.
        let bar = Strut::new(read("210 GPa"), read("30 mm"), read("400 mm"));
        let load = growth_load(&bar, read("0.06 mm"), None).newton();
        assert!(near(load, 210e3 * 0.06 / 400.0 * 225.0 * PI, 1e-13));
    }

    #[test]
    fn a_bore_weakens_and_one_as_wide_as_the_bar_is_refused() {
        let solid = Strut::new(read("210 GPa"), read("30 mm"), read("400 mm"));
        let tube = solid.clone().with_bore(read("20 mm")).unwrap();
        // I of the tube over I of the solid: 1 - (2/3)^4.
        let share = buckling_load(&tube).newton() / buckling_load(&solid).newton();
        assert!(near(share, 1.0 - 16.0 / 81.0, 1e-13));
        assert_eq!(solid.with_bore(read("30 mm")).unwrap_err().field(), "bore");
    }
}
