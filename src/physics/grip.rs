//! Gripping: the force that the jaws need, and what is left of it at speed.
//!
//! Shaped after VDI 3106, from memory. The manual of the chuck and the speed marked on it rule,
//! whatever comes out here.
//!
//! Symbols: F_c main force, F_f feed force, d_c diameter of the cut, d_g diameter gripped, mu
//! friction, S factor of safety, F_0 grip at rest, m mass of a jaw, r radius of its centre of mass.

use std::f64::consts::PI;

use uom::si::f64::Force;

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    Diameter, FeedForce, ForceFactor, Friction, GripForce, MainForce, Mass, Quantity, Radius,
    SpindleSpeed,
};

const VDI_3106: &str = "common practice shaped after VDI 3106, from memory";

const fn range<T>(least: T, largest: T) -> Sourced<[T; 2]> {
    Sourced::new([least, largest], VDI_3106, Standing::FromMemory)
}

/// Friction of smooth jaws on turned metal: the least and the largest.
pub const SMOOTH_JAWS: Sourced<[Friction; 2]> = range(
    Friction::computed_trade(0.10),
    Friction::computed_trade(0.15),
);

/// Friction of serrated jaws: the least and the largest.
pub const SERRATED_JAWS: Sourced<[Friction; 2]> = range(
    Friction::computed_trade(0.20),
    Friction::computed_trade(0.25),
);

/// Factor of safety of the grip: the least and the largest usual; a long overhang wants more.
pub const SAFETY: Sourced<[ForceFactor; 2]> = range(
    ForceFactor::computed_trade(2.0),
    ForceFactor::computed_trade(2.5),
);

/// Largest share of the grip at rest that speed may take away: two thirds.
pub const LARGEST_LOSS: Sourced<f64> = Sourced::new(2.0 / 3.0, VDI_3106, Standing::FromMemory);

/// The grip force that holds the work against a cut.
///
/// F >= S sqrt((F_c d_c/d_g)^2 + F_f^2) / mu
///
/// # Units
/// The force of all jaws together, at the speed of the cut.
/// # Range
/// Short work, gripped on the outside; a long overhang tilts the work out of the jaws and wants more.
/// # Errors
/// `friction`, when there is none, or so little that no chuck grips so hard.
/// # Source
/// Common practice shaped after VDI 3106, from memory.
/// # Example
/// ```
/// use turnwright::physics::grip::grip_needed;
/// let grip = grip_needed(
///     "1500 N".parse()?, "0 N".parse()?, "60 mm".parse()?, "50 mm".parse()?, "0.15".parse()?, "2".parse()?,
/// )?;
/// assert_eq!(grip.newton().round(), 24000.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn grip_needed(
    main_force: MainForce,
    feed_force: FeedForce,
    cut_at: Diameter,
    gripped_at: Diameter,
    friction: Friction,
    safety: ForceFactor,
) -> Result<GripForce, Error> {
    let turn = main_force.force() * maths::number(cut_at.length() / gripped_at.length());
    let all = turn.hypot(feed_force.force());
    GripForce::from_force(safety.value() * all / friction.value()).map_err(|_| {
        Error::new(
            ErrorKind::Impossible,
            "friction",
            friction.to_string(),
            format!(
                "friction that holds this cut with at most {} N",
                GripForce::ROW.largest()
            ),
            "jaws with more friction, a lighter cut, or a drive by other means than the jaws",
        )
    })
}

/// The jaws of a chuck, as they fly outwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jaws {
    count: u8,
    mass: Mass,
    radius: Radius,
}

impl Jaws {
    /// So many jaws, each of a mass (with its base) whose centre stands at a radius.
    ///
    /// # Errors
    /// `jaws`, when there are none.
    pub fn new(count: u8, mass: Mass, radius: Radius) -> Result<Self, Error> {
        if count == 0 {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "jaws",
                "0",
                "one jaw at least",
                "count the jaws of the chuck",
            ));
        }
        Ok(Self {
            count,
            mass,
            radius,
        })
    }

    /// The sum of m r omega^2.
    fn flight(&self, spindle_speed: SpindleSpeed) -> Force {
        let omega = 2.0 * PI * spindle_speed.frequency();
        self.mass.mass() * self.radius.length() * omega * omega * f64::from(self.count)
    }
}

/// The grip that is left at a spindle speed, gripped on the outside.
///
/// F = F_0 - sum m r omega^2
///
/// # Units
/// The force of all jaws together.
/// # Range
/// A chuck without balance weights against centrifugal force; jaws and body do not yield, which is
/// on the safe side. Gripped from inside the grip grows instead.
/// # Errors
/// `spindle_speed`, when nothing of the grip is left.
/// # Source
/// Common practice shaped after VDI 3106, from memory; centrifugal force.
/// # Example
/// ```
/// use turnwright::physics::grip::{grip_at_speed, Jaws};
/// let jaws = Jaws::new(3, "0.6 kg".parse()?, "60 mm".parse()?)?;
/// let left = grip_at_speed("30000 N".parse()?, &jaws, "1200 rpm".parse()?)?;
/// assert_eq!(left.newton().round(), 28295.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn grip_at_speed(
    at_rest: GripForce,
    jaws: &Jaws,
    spindle_speed: SpindleSpeed,
) -> Result<GripForce, Error> {
    let left = at_rest.force() - jaws.flight(spindle_speed);
    if left <= Force::default() {
        return Err(Error::new(
            ErrorKind::Impossible,
            "spindle_speed",
            spindle_speed.to_string(),
            format!("a speed at which the jaws still grip with some of their {at_rest}"),
            "the jaws would let go of the work: run slower, and never above the speed marked on the chuck",
        ));
    }
    Ok(GripForce::computed(left))
}

/// The spindle speed at which the jaws lose the largest share of their grip that is allowed.
///
/// n = sqrt((2/3) F_0 / sum m r) / (2 pi)
///
/// # Units
/// The types carry them.
/// # Range
/// As [`grip_at_speed`]. The speed marked on the chuck holds where it is lower; where no speed is
/// marked, ask the maker, not this formula.
/// # Source
/// Common practice shaped after VDI 3106, from memory.
/// # Example
/// ```
/// use turnwright::physics::grip::{highest_speed, Jaws};
/// let jaws = Jaws::new(3, "0.6 kg".parse()?, "60 mm".parse()?)?;
/// assert_eq!(highest_speed("30000 N".parse()?, &jaws).rpm().round(), 4109.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn highest_speed(at_rest: GripForce, jaws: &Jaws) -> SpindleSpeed {
    use uom::si::frequency::hertz;
    let once = SpindleSpeed::computed(uom::si::f64::Frequency::new::<hertz>(1.0));
    // The flight goes with the square of the speed.
    let turns = maths::number(LARGEST_LOSS.value * at_rest.force() / jaws.flight(once)).sqrt();
    SpindleSpeed::computed(once.frequency() * turns)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    proptest! {
        #[test]
        fn at_the_highest_speed_a_third_of_the_grip_is_left(
            f in 1000.0..100_000.0_f64, m in 0.1..10.0_f64, r in 10.0..300.0_f64, count in 2_u8..=6,
        ) {
            let at_rest = GripForce::from_newton(f).unwrap();
            let jaws = Jaws::new(count, Mass::from_kg(m).unwrap(), Radius::from_mm(r).unwrap()).unwrap();
            let left = grip_at_speed(at_rest, &jaws, highest_speed(at_rest, &jaws)).unwrap();
            prop_assert!((left.newton() / f - 1.0 / 3.0).abs() < 1e-13);
        }
    }

    #[test]
    fn feed_and_main_force_add_as_the_sides_of_a_right_angle() {
        let of = |main: &str, feed: &str| {
            grip_needed(
                read(main),
                read(feed),
                read("50 mm"),
                read("50 mm"),
                read("0.2"),
                read("1"),
            )
            .unwrap()
            .newton()
        };
        assert!((of("300 N", "400 N") - 2500.0).abs() < 1e-9);
        assert_eq!(of("300 N", "0 N"), 1500.0);
    }

    #[test]
    fn no_friction_no_jaws_and_no_grip_are_refused() {
        let none = grip_needed(
            read("300 N"),
            read("0 N"),
            read("50 mm"),
            read("50 mm"),
            read("0"),
            read("2"),
        );
        assert_eq!(none.unwrap_err().field(), "friction");
        assert_eq!(
            Jaws::new(0, read("1 kg"), read("50 mm"))
                .unwrap_err()
                .field(),
            "jaws"
        );
        let jaws = Jaws::new(3, read("2 kg"), read("100 mm")).unwrap();
        let gone = grip_at_speed(read("3000 N"), &jaws, read("2000 rpm")).unwrap_err();
        assert_eq!(
            (gone.field(), gone.kind()),
            ("spindle_speed", ErrorKind::Impossible)
        );
    }
}
