//! Facing: speeds and times of a tool that moves towards the axis.
//!
//! Symbols: v cutting speed, n spindle speed, n_max its limit, rho radius, f feed.

use std::f64::consts::PI;

use uom::si::f64::Length;

use super::speed;
use crate::error::{Error, ErrorKind};
use crate::quantity::{CuttingSpeed, Diameter, Duration, Feed, SpindleSpeed, ToolHeight};

/// How the spindle runs while the tool moves in.
///
/// # Example
/// ```
/// use turnwright::physics::facing::{time, FacingPace};
/// let pace = FacingPace::SurfaceSpeed {
///     cutting_speed: "150 m/min".parse()?,
///     highest: Some("2000 rpm".parse()?),
/// };
/// let t = time(pace, "120 mm".parse()?, None, "0.2 mm/rev".parse()?)?;
/// assert!((t.seconds() - 23.5147).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum FacingPace {
    /// One spindle speed all the way, as every gearbox does.
    SpindleSpeed(SpindleSpeed),
    /// One cutting speed: the spindle runs faster as the tool moves in, up to its limit.
    SurfaceSpeed {
        /// The cutting speed held.
        cutting_speed: CuttingSpeed,
        /// The highest spindle speed, held from where it is reached.
        highest: Option<SpindleSpeed>,
    },
}

/// The spindle speed while the tool stands at a diameter.
///
/// n = min(v / (pi d), n_max), or the one speed
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Definition of the cutting speed, ISO 3002-1 (from memory).
/// # Example
/// ```
/// use turnwright::physics::facing::{spindle_speed_at, FacingPace};
/// let pace = FacingPace::SurfaceSpeed {
///     cutting_speed: "150 m/min".parse()?,
///     highest: Some("2000 rpm".parse()?),
/// };
/// assert_eq!(spindle_speed_at(pace, "120 mm".parse()?).rpm().round(), 398.0);
/// assert_eq!(spindle_speed_at(pace, "10 mm".parse()?).rpm(), 2000.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn spindle_speed_at(pace: FacingPace, diameter: Diameter) -> SpindleSpeed {
    match pace {
        FacingPace::SpindleSpeed(n) => n,
        FacingPace::SurfaceSpeed {
            cutting_speed,
            highest,
        } => {
            let free = speed::spindle_speed(cutting_speed, diameter);
            highest.map_or(free, |highest| free.min(highest))
        }
    }
}

/// The cutting speed while the tool stands at a diameter.
///
/// v = pi d n
///
/// # Units
/// The types carry them.
/// # Range
/// Any; it is nothing at the axis, whatever the spindle does.
/// # Source
/// Definition, ISO 3002-1 (from memory).
/// # Example
/// ```
/// use turnwright::physics::facing::{cutting_speed_at, FacingPace};
/// let v = cutting_speed_at(FacingPace::SpindleSpeed("500 rpm".parse()?), "10 mm".parse()?);
/// assert!((v.m_per_min() - 15.708).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cutting_speed_at(pace: FacingPace, diameter: Diameter) -> CuttingSpeed {
    speed::cutting_speed(spindle_speed_at(pace, diameter), diameter)
}

/// The diameter below which the limit of the spindle holds, and the cutting speed falls.
///
/// d_c = v / (pi n_max); none for one spindle speed, and none without a limit
///
/// # Units
/// The types carry them.
/// # Range
/// Where it lies outside of the work, the limit holds all the way.
/// # Source
/// Definition of the cutting speed.
/// # Example
/// ```
/// use turnwright::physics::facing::{full_speed_below, FacingPace};
/// let pace = FacingPace::SurfaceSpeed {
///     cutting_speed: "150 m/min".parse()?,
///     highest: Some("2000 rpm".parse()?),
/// };
/// assert!(full_speed_below(pace).is_some_and(|d| (d.mm() - 23.873).abs() < 1e-3));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn full_speed_below(pace: FacingPace) -> Option<Diameter> {
    match pace {
        FacingPace::SurfaceSpeed {
            cutting_speed,
            highest: Some(highest),
        } => Some(diameter_of(cutting_speed, highest)),
        _ => None,
    }
}

/// The diameter below which a least cutting speed is not reached.
///
/// d = v_least / (pi n), with the one speed or the limit of the spindle
///
/// # Units
/// The types carry them.
/// # Range
/// None where the cutting speed is held above the least one all the way in. A held cutting speed
/// below the least is too slow at every diameter: `slow_everywhere`.
/// # Source
/// Definition of the cutting speed.
/// # Example
/// ```
/// use turnwright::physics::facing::{slow_below, FacingPace, SlowBelow};
/// let slow = slow_below(FacingPace::SpindleSpeed("500 rpm".parse()?), "20 m/min".parse()?);
/// assert!(matches!(slow, SlowBelow::Diameter(d) if (d.mm() - 12.732).abs() < 1e-3));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn slow_below(pace: FacingPace, least: CuttingSpeed) -> SlowBelow {
    match pace {
        FacingPace::SpindleSpeed(n) => SlowBelow::Diameter(diameter_of(least, n)),
        FacingPace::SurfaceSpeed { cutting_speed, .. } if cutting_speed < least => {
            SlowBelow::Everywhere
        }
        FacingPace::SurfaceSpeed {
            highest: Some(highest),
            ..
        } => SlowBelow::Diameter(diameter_of(least, highest)),
        FacingPace::SurfaceSpeed { .. } => SlowBelow::Nowhere,
    }
}

/// Where a least cutting speed is not reached.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum SlowBelow {
    /// Below this diameter.
    Diameter(Diameter),
    /// At every diameter.
    Everywhere,
    /// At none.
    Nowhere,
}

fn diameter_of(cutting_speed: CuttingSpeed, spindle_speed: SpindleSpeed) -> Diameter {
    Diameter::computed(cutting_speed.velocity() / (PI * spindle_speed.frequency()))
}

/// How long facing takes from the outside to a bore, or to the middle.
///
/// t = (rho_1 - rho_2)/(f n) at one spindle speed, pi (rho_1^2 - rho_2^2)/(f v) at one cutting
/// speed, each over its part of the way
///
/// # Units
/// The types carry them.
/// # Range
/// Without run-in; a spindle that takes up speed without delay.
/// # Errors
/// `bore`, when it is not smaller than the outside.
/// # Source
/// Derived: the radius falls by f n per time.
/// # Example
/// See [`FacingPace`].
pub fn time(
    pace: FacingPace,
    outside: Diameter,
    bore: Option<Diameter>,
    feed: Feed,
) -> Result<Duration, Error> {
    if let Some(bore) = bore
        && bore >= outside
    {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "bore",
            bore.to_string(),
            format!("less than the outside of {outside}"),
            "the tool moves from the outside in; leave the bore out for a solid bar",
        ));
    }
    let (rho_1, f) = (outside.radius().length(), feed.length_per_revolution());
    let rho_2 = bore.map_or(Length::default(), |bore| bore.radius().length());
    let at_one_speed =
        |from: Length, to: Length, n: SpindleSpeed| (from - to) / (f * n.frequency());
    Ok(Duration::computed(match pace {
        FacingPace::SpindleSpeed(n) => at_one_speed(rho_1, rho_2, n),
        FacingPace::SurfaceSpeed {
            cutting_speed,
            highest,
        } => {
            let v = cutting_speed.velocity();
            let held = |from: Length, to: Length| (from - to) * (from + to) * PI / (f * v);
            match (highest, full_speed_below(pace)) {
                (Some(highest), Some(below)) => {
                    // Where the limit begins, kept within the way: outside of it, it holds all along or not at all.
                    let rho_c = below.radius().length().min(rho_1).max(rho_2);
                    held(rho_1, rho_c) + at_one_speed(rho_c, rho_2, highest)
                }
                _ => held(rho_1, rho_2),
            }
        }
    }))
}

/// The diameter of the pip that a tool off centre height leaves in the middle of a face.
///
/// d = 2 |e|; none at centre height
///
/// # Units
/// The types carry them.
/// # Range
/// Below the axis the pip stands as a stub; above, the flank rubs it and the edge may chip.
/// # Source
/// Geometry: the tip passes the axis at that distance.
/// # Example
/// ```
/// use turnwright::physics::facing::pip_diameter;
/// assert_eq!(pip_diameter("-0.3 mm".parse()?).map(|d| d.mm()), Some(0.6));
/// assert_eq!(pip_diameter("0 mm".parse()?), None);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn pip_diameter(tool_height: ToolHeight) -> Option<Diameter> {
    let e = tool_height.length().abs();
    (e > Length::default()).then(|| Diameter::computed(2.0 * e))
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

    fn held(v: f64, n: Option<f64>) -> FacingPace {
        FacingPace::SurfaceSpeed {
            cutting_speed: CuttingSpeed::from_m_per_min(v).unwrap(),
            highest: n.map(|n| SpindleSpeed::from_rpm(n).unwrap()),
        }
    }

    proptest! {
        #[test]
        fn a_limit_that_holds_all_the_way_makes_it_one_spindle_speed(
            d in 10.0..300.0_f64, bore in 0.05..0.9_f64, n in 20.0..500.0_f64, over in 1.0..3.0_f64,
        ) {
            let (outside, inside) = (Diameter::from_mm(d).unwrap(), Diameter::from_mm(d * bore).unwrap());
            let n_max = SpindleSpeed::from_rpm(n).unwrap();
            let v = speed::cutting_speed(n_max, outside).m_per_min() * over * (1.0 + 1e-12);
            let feed = read("0.1 mm/rev");
            for bore in [None, Some(inside)] {
                let clamped = time(held(v, Some(n)), outside, bore, feed).unwrap();
                let fixed = time(FacingPace::SpindleSpeed(n_max), outside, bore, feed).unwrap();
                prop_assert!(near(clamped.seconds(), fixed.seconds(), 1e-13));
            }
        }

        #[test]
        fn a_way_in_two_parts_takes_the_time_of_both(
            d in 20.0..300.0_f64, mid in 0.1..0.9_f64, v in 10.0..300.0_f64, n in 50.0..3000.0_f64,
        ) {
            let (outside, middle) = (Diameter::from_mm(d).unwrap(), Diameter::from_mm(d * mid).unwrap());
            let feed = read("0.15 mm/rev");
            for pace in [held(v, Some(n)), held(v, None), FacingPace::SpindleSpeed(SpindleSpeed::from_rpm(n).unwrap())] {
                let of = |from, to| time(pace, from, to, feed).unwrap().seconds();
                prop_assert!(near(of(outside, Some(middle)) + of(middle, None), of(outside, None), 1e-12));
            }
        }

        #[test]
        fn the_time_is_the_sum_of_thin_rings(
            d in 20.0..300.0_f64, v in 10.0..300.0_f64, n in 50.0..3000.0_f64,
        ) {
            const RINGS: u32 = 20_000;
            let (pace, feed): (_, Feed) = (held(v, Some(n)), read("0.2 mm/rev"));
            let ring = d / 2.0 / f64::from(RINGS);
            let sum: f64 = (0..RINGS)
                .map(|k| 2.0 * ring * (f64::from(k) + 0.5))
                .map(|at| spindle_speed_at(pace, Diameter::computed_trade(at)).rpm())
                .map(|n| ring / (feed.mm_per_rev() * n) * 60.0)
                .sum();
            let exact = time(pace, Diameter::from_mm(d).unwrap(), None, feed).unwrap().seconds();
            // The ring with the bend in it is off by up to its own width squared.
            prop_assert!(near(sum, exact, 1e-6), "{} {}", sum, exact);
        }
    }

    #[test]
    fn a_bore_as_wide_as_the_work_is_refused() {
        let pace = FacingPace::SpindleSpeed(read("500 rpm"));
        let error = time(pace, read("40 mm"), Some(read("40 mm")), read("0.1 mm/rev")).unwrap_err();
        assert_eq!(error.field(), "bore");
    }

    #[test]
    fn a_least_speed_is_met_everywhere_or_nowhere_without_a_limit() {
        assert_eq!(
            slow_below(held(100.0, None), read("20 m/min")),
            SlowBelow::Nowhere
        );
        assert_eq!(
            slow_below(held(10.0, None), read("20 m/min")),
            SlowBelow::Everywhere
        );
        let SlowBelow::Diameter(d) = slow_below(held(100.0, Some(1000.0)), read("20 m/min")) else {
            panic!("a limit gives a diameter");
        };
        let there = cutting_speed_at(held(100.0, Some(1000.0)), d);
        assert!(near(there.m_per_min(), 20.0, 1e-13));
    }
}
