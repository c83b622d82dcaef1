//! What a drive gives at every spindle speed: its torque curve.
//!
//! Symbols: P_N power at the spindle, n_b base speed, n_l slowest speed of full torque, T_N torque
//! between the two, n spindle speed.

use std::f64::consts::PI;

use super::drive::{drive_power, torque, torque_at};
use super::maths;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, MainForce, Power, SpindleSpeed, Torque};

/// The torque curve of a drive, in one range of gears, at the spindle.
///
/// T(n) = T_N n / n_l below n_l, T_N = P_N / (2 pi n_b) from n_l to n_b, P_N / (2 pi n) above n_b
///
/// # Units
/// The types carry them.
/// # Range
/// Power at the spindle, losses already off (see `drive::spindle_power`). Without a base speed the
/// power is the same at every speed, as behind a gearbox whose motor always runs at its rated speed.
/// Without a slowest speed of full torque the torque holds down to standstill. Below that speed the
/// fall is taken as a straight line to nothing: judgement, no source; the data of the drive rule.
/// # Source
/// Common property of field-weakened drives, no source.
/// # Example
/// ```
/// use turnwright::physics::torque_curve::TorqueCurve;
/// let direct = TorqueCurve::new("1.5 kW".parse()?).with_base_speed("1400 rpm".parse()?);
/// let back_gear = direct.in_range("2800 rpm".parse()?, "400 rpm".parse()?);
/// assert!((direct.torque("100 rpm".parse()?).newton_meter() - 10.23).abs() < 0.01);
/// assert!((back_gear.torque("100 rpm".parse()?).newton_meter() - 71.62).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct TorqueCurve {
    power: Power,
    base_speed: Option<SpindleSpeed>,
    full_torque_from: Option<SpindleSpeed>,
}

impl TorqueCurve {
    /// A drive of the same power at every speed.
    #[must_use]
    pub const fn new(power_at_spindle: Power) -> Self {
        Self {
            power: power_at_spindle,
            base_speed: None,
            full_torque_from: None,
        }
    }

    /// With the base speed, below which the torque is constant.
    #[must_use]
    pub const fn with_base_speed(mut self, base_speed: SpindleSpeed) -> Self {
        self.base_speed = Some(base_speed);
        self
    }

    /// With the slowest speed at which the drive still gives its full torque.
    ///
    /// # Errors
    /// `full_torque_from`, when it is above the base speed, or there is no base speed.
    pub fn with_full_torque_from(mut self, slowest: SpindleSpeed) -> Result<Self, Error> {
        match self.base_speed {
            Some(base) if slowest <= base => {
                self.full_torque_from = Some(slowest);
                Ok(self)
            }
            base => Err(Error::new(
                ErrorKind::Contradiction,
                "full_torque_from",
                slowest.to_string(),
                match base {
                    Some(base) => format!("a speed not above the base speed of {base}"),
                    None => String::from("a drive with a base speed"),
                },
                "give the base speed first; full torque begins below it",
            )),
        }
    }

    /// The same drive in another range of gears: the speed `here` becomes the speed `there`.
    ///
    /// Speeds go with the gear, the torque against it, the power stays; the gears' own losses are
    /// left out.
    #[must_use]
    pub fn in_range(self, here: SpindleSpeed, there: SpindleSpeed) -> Self {
        let geared = |speed: Option<SpindleSpeed>| {
            speed.map(|speed| base_speed_in_range(speed, here, there))
        };
        Self {
            power: self.power,
            base_speed: geared(self.base_speed),
            full_torque_from: geared(self.full_torque_from),
        }
    }

    /// The base speed, if the drive has one.
    #[must_use]
    pub const fn base_speed(&self) -> Option<SpindleSpeed> {
        self.base_speed
    }

    /// The power that the drive gives at a spindle speed.
    #[must_use]
    pub fn power(&self, spindle_speed: SpindleSpeed) -> Power {
        let power = match self.base_speed {
            Some(base) => drive_power(self.power, base, spindle_speed),
            None => self.power,
        };
        match self.full_torque_from {
            Some(slowest) if spindle_speed < slowest => {
                let share = spindle_speed.frequency() / slowest.frequency();
                Power::computed(power.power() * maths::number(share))
            }
            _ => power,
        }
    }

    /// The torque that the drive gives at a spindle speed.
    #[must_use]
    pub fn torque(&self, spindle_speed: SpindleSpeed) -> Torque {
        torque_at(self.power(spindle_speed), spindle_speed)
    }

    /// The largest torque that the drive gives at any speed; none without a base speed, where it
    /// rises without end as the speed falls.
    #[must_use]
    pub fn largest_torque(&self) -> Option<Torque> {
        self.base_speed.map(|base| torque_at(self.power, base))
    }

    /// Whether the drive stalls under a cut at a spindle speed.
    ///
    /// A cut that asks for exactly what the drive gives still runs.
    #[must_use]
    pub fn stalls(
        &self,
        main_force: MainForce,
        mean_diameter: Diameter,
        spindle_speed: SpindleSpeed,
    ) -> bool {
        torque(main_force, mean_diameter) > self.torque(spindle_speed)
    }

    /// The speeds at which the drive turns a cut without stalling.
    ///
    /// n_low = n_l T / T_N, n_high = P_N / (2 pi T), with T = F_c d_m / 2
    ///
    /// # Errors
    /// `main_force`, when the cut asks for more torque than the drive gives at any speed.
    ///
    /// # Example
    /// ```
    /// use turnwright::physics::torque_curve::TorqueCurve;
    /// let drive = TorqueCurve::new("1.5 kW".parse()?)
    ///     .with_base_speed("1400 rpm".parse()?)
    ///     .with_full_torque_from("140 rpm".parse()?)?;
    /// let runs = drive.speeds_that_run("400 N".parse()?, "30 mm".parse()?)?;
    /// assert_eq!(runs.lowest.map(|n| n.rpm().round()), Some(82.0));
    /// assert_eq!(runs.highest.map(|n| n.rpm().round()), Some(2387.0));
    /// assert!(drive.speeds_that_run("400 N".parse()?, "60 mm".parse()?).is_err());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn speeds_that_run(
        &self,
        main_force: MainForce,
        mean_diameter: Diameter,
    ) -> Result<SpeedsThatRun, Error> {
        let asked = torque(main_force, mean_diameter);
        if let Some(given) = self.largest_torque()
            && asked > given
        {
            return Err(too_much_torque(asked, given));
        }
        let asked = asked.torque();
        if asked.get::<uom::si::torque::newton_meter>() == 0.0 {
            return Ok(SpeedsThatRun {
                lowest: None,
                highest: None,
            });
        }
        let highest: uom::si::f64::Frequency = self.power.power() / (2.0 * PI * asked);
        let lowest = match (self.full_torque_from, self.largest_torque()) {
            (Some(slowest), Some(given)) => Some(SpindleSpeed::computed(
                slowest.frequency() * maths::number(asked / given.torque()),
            )),
            _ => None,
        };
        Ok(SpeedsThatRun {
            lowest,
            highest: Some(SpindleSpeed::computed(highest)),
        })
    }
}

/// The spindle speeds at which a drive turns a cut.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct SpeedsThatRun {
    /// Below it the drive stalls; none where the torque holds down to standstill.
    pub lowest: Option<SpindleSpeed>,
    /// Above it the drive stalls; none for a cut that takes no force.
    pub highest: Option<SpindleSpeed>,
}

/// A base speed in another range of gears: the speed `here` becomes the speed `there`.
///
/// n_b' = n_b there / here
///
/// # Units
/// The types carry them.
/// # Range
/// Any two speeds of the same motor speed, such as the tops of the two ranges.
/// # Source
/// Definition of the ratio of a gear.
/// # Example
/// ```
/// use turnwright::physics::torque_curve::base_speed_in_range;
/// let base = base_speed_in_range("1000 rpm".parse()?, "2000 rpm".parse()?, "400 rpm".parse()?);
/// assert!((base.rpm() - 200.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn base_speed_in_range(
    base_speed: SpindleSpeed,
    here: SpindleSpeed,
    there: SpindleSpeed,
) -> SpindleSpeed {
    let (n_b, here, there) = (base_speed.frequency(), here.frequency(), there.frequency());
    SpindleSpeed::computed(n_b * maths::number(there / here))
}

#[cold]
fn too_much_torque(asked: Torque, given: Torque) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "main_force",
        format!(
            "a cut that asks for a torque of {:.1} N m",
            asked.newton_meter()
        ),
        format!(
            "at most the {:.1} N m that the drive gives",
            given.newton_meter()
        ),
        "take less depth or feed, or a lower range of gears: a slower motor gives no more torque",
    )
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

    fn drive() -> TorqueCurve {
        TorqueCurve::new(read("1.5 kW"))
            .with_base_speed(read("1400 rpm"))
            .with_full_torque_from(read("100 rpm"))
            .unwrap()
    }

    #[test]
    fn a_range_shifts_speeds_and_scales_torque() {
        let low = drive().in_range(read("2800 rpm"), read("700 rpm"));
        assert_eq!(low.base_speed().map(SpindleSpeed::rpm), Some(350.0));
        for n in [10.0, 60.0, 300.0, 700.0] {
            let (slow, fast) = (
                SpindleSpeed::from_rpm(n).unwrap(),
                SpindleSpeed::from_rpm(4.0 * n).unwrap(),
            );
            assert!(near(
                low.torque(slow).newton_meter(),
                4.0 * drive().torque(fast).newton_meter(),
                1e-13
            ));
            assert!(near(low.power(slow).kw(), drive().power(fast).kw(), 1e-13));
        }
    }

    #[test]
    fn a_drive_without_a_base_speed_has_no_largest_torque() {
        let constant = TorqueCurve::new(read("1.5 kW"));
        assert_eq!(constant.largest_torque(), None);
        let runs = constant
            .speeds_that_run(read("9000 N"), read("200 mm"))
            .unwrap();
        assert_eq!(runs.lowest, None);
        assert!(constant.with_full_torque_from(read("10 rpm")).is_err());
    }

    #[test]
    fn a_cut_without_force_runs_at_every_speed() {
        let runs = drive().speeds_that_run(read("0 N"), read("20 mm")).unwrap();
        assert_eq!((runs.lowest, runs.highest), (None, None));
    }

    proptest! {
        #[test]
        fn a_cut_runs_between_its_two_speeds_and_stalls_outside(
            force in 20.0..1000.0_f64, d in 5.0..100.0_f64, over in 1.001..1.5_f64,
        ) {
            let force = MainForce::from_newton(force).unwrap();
            let d = Diameter::from_mm(d).unwrap();
            let drive = drive();
            match drive.speeds_that_run(force, d) {
                Err(error) => {
                    prop_assert_eq!(error.field(), "main_force");
                    for n in [20.0, 100.0, 1400.0, 3000.0] {
                        prop_assert!(drive.stalls(force, d, SpindleSpeed::from_rpm(n).unwrap()));
                    }
                }
                Ok(SpeedsThatRun { lowest: Some(low), highest: Some(high) }) => {
                    let at = |n: f64| SpindleSpeed::computed_trade(n);
                    prop_assert!(low <= high);
                    prop_assert!(drive.stalls(force, d, at(low.rpm() / over)));
                    prop_assert!(drive.stalls(force, d, at(high.rpm() * over)));
                    // A hair inside, as at the ends the two torques are the same number rounded.
                    prop_assert!(!drive.stalls(force, d, at(low.rpm() * (1.0 + 1e-9))));
                    prop_assert!(!drive.stalls(force, d, at(high.rpm() * (1.0 - 1e-9))));
                }
                Ok(other) => prop_assert!(false, "{:?}", other),
            }
        }
    }
}
