//! Tool life: how long an edge lasts at a cutting speed, and which speed is worth it.
//!
//! Symbols: v cutting speed, T life (time in cut), n exponent, C constant, t_c time to change the
//! edge, C_t price of an edge, C_m price of machine and operator per time.

use uom::si::f64::Time;
use uom::si::time::{minute, second};

use super::maths;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::text::trimmed;
use crate::quantity::{
    CuttingSpeed, Duration, LifeConstant, LifeExponent, LifeScatter, Price, PricePerHour, Quantity,
    ToolLife,
};

/// A usual exponent of tool life, and the range in which text books give it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct UsualExponent {
    /// The usual value.
    pub usual: LifeExponent,
    /// The least given.
    pub least: LifeExponent,
    /// The largest given.
    pub largest: LifeExponent,
}

const fn usual(
    usual: f64,
    least: f64,
    largest: f64,
    source: &'static str,
) -> Sourced<UsualExponent> {
    Sourced::new(
        UsualExponent {
            usual: LifeExponent::computed_trade(usual),
            least: LifeExponent::computed_trade(least),
            largest: LifeExponent::computed_trade(largest),
        },
        source,
        Standing::FromMemory,
    )
}

/// Exponent of tool life for high-speed steel.
pub const HIGH_SPEED_STEEL: Sourced<UsualExponent> = usual(
    0.125,
    0.08,
    0.17,
    "from memory of Taylor, On the art of cutting metals, Trans. ASME 28 (1907), and of text books; unverified page",
);

/// Exponent of tool life for cemented carbide.
pub const CARBIDE: Sourced<UsualExponent> =
    usual(0.25, 0.2, 0.4, "from memory of text books; unverified page");

/// Exponent of tool life for ceramics.
pub const CERAMIC: Sourced<UsualExponent> =
    usual(0.5, 0.4, 0.7, "from memory of text books; unverified page");

/// The law of tool life of one tool in one material at one feed and depth: v T^n = C.
///
/// # Units
/// C is the cutting speed at which the edge lasts one minute.
/// # Range
/// Between about half and double the speeds at which lives were measured; a built-up edge at low
/// speed breaks the law. A change of feed, depth, coolant or criterion of wear is another law.
/// # Source
/// Taylor, On the art of cutting metals, Trans. ASME 28 (1907), from memory.
/// # Example
/// ```
/// use turnwright::physics::wear::{life_at, LifeLaw};
/// let law = LifeLaw::new("300 m/min".parse()?, "0.25".parse()?);
/// assert_eq!((life_at(law, "180 m/min".parse()?)?.minutes() * 1e3).round(), 7716.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct LifeLaw {
    constant: LifeConstant,
    exponent: LifeExponent,
}

impl LifeLaw {
    /// A law of a known constant and exponent.
    #[must_use]
    pub const fn new(constant: LifeConstant, exponent: LifeExponent) -> Self {
        Self { constant, exponent }
    }

    /// The law of a known exponent that passes through one measured life.
    ///
    /// # Errors
    /// `constant`, when the life lies so far from a minute that no constant is plausible.
    pub fn through(
        cutting_speed: CuttingSpeed,
        life: ToolLife,
        exponent: LifeExponent,
    ) -> Result<Self, Error> {
        let v = cutting_speed.velocity();
        let constant = v * maths::pow(minutes(life.time()), exponent.value());
        Ok(Self {
            constant: LifeConstant::from_velocity(constant)
                .map_err(|error| error.at("constant"))?,
            exponent,
        })
    }

    /// C, the cutting speed for a life of one minute.
    #[must_use]
    pub const fn constant(self) -> LifeConstant {
        self.constant
    }

    /// n.
    #[must_use]
    pub const fn exponent(self) -> LifeExponent {
        self.exponent
    }
}

fn minutes(time: Time) -> f64 {
    time.get::<minute>()
}

/// How long an edge lasts at a cutting speed.
///
/// T = (C/v)^(1/n)
///
/// # Units
/// The types carry them.
/// # Range
/// See [`LifeLaw`].
/// # Errors
/// `cutting_speed`, when the life lies beyond anything plausible (0.1 s to some months in cut).
/// # Source
/// Taylor 1907, from memory.
/// # Example
/// See [`LifeLaw`].
#[inline]
pub fn life_at(law: LifeLaw, cutting_speed: CuttingSpeed) -> Result<ToolLife, Error> {
    let (v, c) = (cutting_speed.velocity(), law.constant.velocity());
    let life = maths::pow(maths::number(c / v), 1.0 / law.exponent.value());
    ToolLife::from_time(Time::new::<minute>(life))
        .map_err(|_| life_out_of_sight(law, cutting_speed))
}

#[cold]
#[inline(never)]
fn life_out_of_sight(law: LifeLaw, cutting_speed: CuttingSpeed) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "cutting_speed",
        cutting_speed.to_string(),
        format!(
            "a speed nearer to the {:.0} m/min at which the edge lasts a minute",
            law.constant.m_per_min()
        ),
        "the law holds near the speeds at which lives were measured; give a speed there",
    )
}

/// The cutting speed at which an edge lasts so long.
///
/// v = C / T^n
///
/// # Units
/// The types carry them.
/// # Range
/// See [`LifeLaw`].
/// # Source
/// Taylor 1907, from memory.
/// # Example
/// ```
/// use turnwright::physics::wear::{speed_for, LifeLaw};
/// let law = LifeLaw::new("60 m/min".parse()?, "0.125".parse()?);
/// let v = speed_for(law, "60 min".parse()?);
/// assert!((v.m_per_min() - 35.965).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn speed_for(law: LifeLaw, life: ToolLife) -> CuttingSpeed {
    let (c, t) = (law.constant.velocity(), minutes(life.time()));
    CuttingSpeed::computed(c / maths::pow(t, law.exponent.value()))
}

/// What becomes of a life when the cutting speed is changed.
///
/// T' = T (v/v')^(1/n)
///
/// # Units
/// The types carry them.
/// # Range
/// See [`LifeLaw`].
/// # Errors
/// `cutting_speed`, when the new life lies beyond anything plausible.
/// # Source
/// Taylor 1907, from memory.
/// # Example
/// Ten per cent more speed leave less than half of the life of a high-speed steel tool.
/// ```
/// use turnwright::physics::wear::life_after_change;
/// let life = life_after_change(
///     "60 min".parse()?, "0.125".parse()?, "30 m/min".parse()?, "33 m/min".parse()?,
/// )?;
/// assert_eq!(life.minutes().round(), 28.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn life_after_change(
    life: ToolLife,
    exponent: LifeExponent,
    from: CuttingSpeed,
    to: CuttingSpeed,
) -> Result<ToolLife, Error> {
    let ratio = maths::number(from.velocity() / to.velocity());
    let changed = life.time() * maths::pow(ratio, 1.0 / exponent.value());
    ToolLife::from_time(changed).map_err(|_| {
        Error::new(
            ErrorKind::Impossible,
            "cutting_speed",
            to.to_string(),
            format!("a speed nearer to the {from} at which the life was known"),
            "the law holds near the speed at which the life was measured; give a speed there",
        )
    })
}

/// A law found from measured lives.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub struct LifeFit {
    /// The law.
    pub law: LifeLaw,
    /// How far the lives scatter about it: standard deviation of ln T, two degrees of freedom
    /// spent; zero of two lives, which say nothing of scatter.
    pub scatter: LifeScatter,
    /// The life by the law at each of the speeds.
    pub lives: Vec<ToolLife>,
}

/// The law of tool life that fits measured lives best.
///
/// Straight line of ln T over ln v by least squares: slope -1/n, and C where T is one minute.
///
/// # Units
/// The types carry them.
/// # Range
/// Two lives or more, of at least two speeds, all to the same criterion of wear. The speeds count
/// as exact, the lives scatter.
/// # Errors
/// `lives`, when there are fewer than two or all at one speed; when life does not fall as the speed
/// rises; when the law so found is not plausible.
/// # Source
/// Taylor 1907 (from memory) in logarithms; least squares.
/// # Example
/// ```
/// use turnwright::physics::wear::fit_lives;
/// let fit = fit_lives(&[
///     ("40 m/min".parse()?, "20 min".parse()?),
///     ("30 m/min".parse()?, "120 min".parse()?),
/// ])?;
/// assert!((fit.law.exponent().value() - 0.16056).abs() < 1e-5);
/// assert!((fit.law.constant().m_per_min() - 64.707).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn fit_lives(lives: &[(CuttingSpeed, ToolLife)]) -> Result<LifeFit, Error> {
    let refuse = |given: String, expected: &str, remedy: &str| {
        Error::new(ErrorKind::Contradiction, "lives", given, expected, remedy)
    };
    let one_speed = lives
        .iter()
        .all(|(speed, _)| lives.first().is_some_and(|(first, _)| first == speed));
    if lives.len() < 2 || one_speed {
        return Err(refuse(
            match lives {
                [] => String::from("no lives"),
                [(speed, _), ..] => format!("{} lives, all at {speed}", lives.len()),
            },
            "lives at two cutting speeds at least",
            "measure a second life at another speed, about a fifth faster or slower",
        ));
    }
    let points: Vec<(f64, f64)> = lives
        .iter()
        .map(|(speed, life)| {
            (
                maths::ln(speed.m_per_min()),
                maths::ln(minutes(life.time())),
            )
        })
        .collect();
    let count = points.len() as f64;
    let mean = |part: fn(&(f64, f64)) -> f64| points.iter().map(part).sum::<f64>() / count;
    let (x_0, y_0) = (mean(|p| p.0), mean(|p| p.1));
    let (mut s_xx, mut s_xy) = (0.0, 0.0);
    for (x, y) in &points {
        s_xx += (x - x_0) * (x - x_0);
        s_xy += (x - x_0) * (y - y_0);
    }
    let slope = s_xy / s_xx;
    if slope.is_nan() || slope >= 0.0 {
        return Err(refuse(
            String::from("lives that do not fall as the cutting speed rises"),
            "shorter lives at higher cutting speeds",
            "at low speed a built-up edge can turn this round: measure at higher speeds, to the same wear",
        ));
    }
    let exponent = LifeExponent::from_value(-1.0 / slope)
        .map_err(|error| implausible(error, "an exponent"))?;
    let constant = LifeConstant::from_m_per_min(maths::exp(x_0 + y_0 * exponent.value()))
        .map_err(|error| implausible(error, "a constant"))?;
    let law = LifeLaw::new(constant, exponent);
    let left: f64 = points
        .iter()
        .map(|(x, y)| y - y_0 - slope * (x - x_0))
        .map(|miss| miss * miss)
        .sum();
    let scatter = if points.len() > 2 {
        (left / (count - 2.0)).sqrt()
    } else {
        0.0
    };
    Ok(LifeFit {
        law,
        scatter: LifeScatter::computed_trade(scatter),
        lives: lives
            .iter()
            .map(|(speed, _)| life_at(law, *speed))
            .collect::<Result<_, _>>()?,
    })
}

#[cold]
fn implausible(error: Error, what: &str) -> Error {
    Error::new(
        ErrorKind::Impossible,
        "lives",
        format!("lives that give {what} of {}", error.given()),
        error.expected().to_owned(),
        "the speeds may lie too near to one another for the scatter of the lives: measure further apart",
    )
}

/// A life to aim at, and the cutting speed that gives it.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct BestLife {
    /// How long the edge is to last.
    pub life: ToolLife,
    /// The cutting speed for it.
    pub cutting_speed: CuttingSpeed,
}

/// The life at which a part is cheapest.
///
/// T_c = (1/n - 1)(t_c + C_t/C_m)
///
/// # Units
/// Both prices in one currency.
/// # Range
/// The time in cut falls as the speed rises; the time to load the work and the price of the stock
/// do not depend on the speed and drop out.
/// # Errors
/// `exponent`, when it is one or more: then the fastest speed is always the cheapest. `change_time`,
/// when change and edge cost nothing, or so much that no life is plausible.
/// # Source
/// Derivative of the cost of a part with Taylor's law, set to nothing; text books (from memory).
/// # Example
/// ```
/// use turnwright::physics::wear::{cheapest_life, LifeLaw};
/// let law = LifeLaw::new("300 m/min".parse()?, "0.25".parse()?);
/// // An edge of 3 at 60 an hour costs as much as three minutes of the machine.
/// let best = cheapest_life(law, "1 min".parse()?, "3".parse()?, "60".parse()?)?;
/// assert_eq!(best.life.minutes().round(), 12.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn cheapest_life(
    law: LifeLaw,
    change_time: Duration,
    edge_price: Price,
    machine_per_hour: PricePerHour,
) -> Result<BestLife, Error> {
    let edge = Time::new::<uom::si::time::hour>(edge_price.value() / machine_per_hour.value());
    best(law, change_time.time() + edge)
}

/// The life at which most parts are made.
///
/// T_p = (1/n - 1) t_c
///
/// # Units
/// The types carry them.
/// # Range
/// As for [`cheapest_life`], with edges that cost nothing.
/// # Errors
/// As for [`cheapest_life`].
/// # Source
/// Derivative of the time of a part with Taylor's law, set to nothing; text books (from memory).
/// # Example
/// ```
/// use turnwright::physics::wear::{fastest_life, LifeLaw};
/// let law = LifeLaw::new("60 m/min".parse()?, "0.125".parse()?);
/// let best = fastest_life(law, "2.5 min".parse()?)?;
/// assert_eq!(best.life.minutes(), 17.5);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn fastest_life(law: LifeLaw, change_time: Duration) -> Result<BestLife, Error> {
    best(law, change_time.time())
}

fn best(law: LifeLaw, lost: Time) -> Result<BestLife, Error> {
    let n = law.exponent.value();
    if n >= 1.0 {
        return Err(Error::new(
            ErrorKind::Impossible,
            "exponent",
            // Often worked out from two lives, with all its digits.
            trimmed(law.exponent.value(), 6).to_string(),
            "an exponent below 1",
            "with such an exponent the fastest speed is always the best: what limits it is power, heat or the machine",
        ));
    }
    let life = (1.0 / n - 1.0) * lost;
    let life = ToolLife::from_time(life).map_err(|_| {
        Error::new(
            ErrorKind::Impossible,
            "change_time",
            format!(
                "an edge that costs {:.3} s of the machine's time",
                lost.get::<second>()
            ),
            format!(
                "a best life from {} s to {} s",
                ToolLife::ROW.least(),
                ToolLife::ROW.largest()
            ),
            "give the time to change the edge and the price of an edge as they are",
        )
    })?;
    Ok(BestLife {
        life,
        cutting_speed: speed_for(law, life),
    })
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

    fn law(c: f64, n: f64) -> LifeLaw {
        LifeLaw::new(
            LifeConstant::from_m_per_min(c).unwrap(),
            LifeExponent::from_value(n).unwrap(),
        )
    }

    /// The least of `cost` between two ends, by the golden section.
    fn least(cost: impl Fn(f64) -> f64, mut low: f64, mut high: f64) -> f64 {
        let golden = (5.0_f64.sqrt() - 1.0) / 2.0;
        while high - low > 1e-9 * high {
            let (a, b) = (high - golden * (high - low), low + golden * (high - low));
            if cost(a) < cost(b) {
                high = b;
            } else {
                low = a;
            }
        }
        (low + high) / 2.0
    }

    proptest! {
        #[test]
        fn the_speed_for_a_life_gives_that_life(
            c in 20.0..1000.0_f64, n in 0.08..0.9_f64, t in 1.0..600.0_f64,
        ) {
            let life = ToolLife::from_minutes(t).unwrap();
            let law = law(c, n);
            let back = life_at(law, speed_for(law, life)).unwrap();
            // The power 1/n magnifies the rounding of the speed.
            prop_assert!(near(back.minutes(), t, 1e-13 / n));
        }

        #[test]
        fn the_cheapest_life_is_where_the_cost_is_least(
            c in 30.0..600.0_f64, n in 0.1..0.7_f64, change in 0.5..10.0_f64,
            edge in 0.0..20.0_f64, hour in 10.0..120.0_f64,
        ) {
            let law = law(c, n);
            let change_time = Duration::from_minutes(change).unwrap();
            let best = cheapest_life(
                law, change_time, Price::from_value(edge).unwrap(), PricePerHour::from_value(hour).unwrap(),
            ).unwrap();
            // Cost of cutting a length that takes 1/v: machine in cut, machine at each change, edges.
            let cost = |v: f64| {
                let (a_minute, in_cut) = (hour / 60.0, 1.0 / v);
                let edges = in_cut / (c / v).powf(1.0 / n);
                a_minute * in_cut + edges * (a_minute * change + edge)
            };
            let v = best.cutting_speed.m_per_min();
            let found = least(cost, v / 5.0, v * 5.0);
            // A least value is found no nearer than the root of the rounding of the cost.
            prop_assert!(near(found, v, 1e-6), "{} {}", found, v);
            let fastest = fastest_life(law, change_time).unwrap();
            prop_assert!(fastest.life <= best.life && fastest.cutting_speed >= best.cutting_speed);
        }

        #[test]
        fn lives_that_follow_a_law_give_it_back(
            c in 30.0..600.0_f64, n in 0.1..0.7_f64, v in 0.3..0.6_f64,
        ) {
            let law = law(c, n);
            let lives: Vec<_> = [1.0, 1.15, 1.3, 1.5]
                .iter()
                .map(|k| {
                    let speed = CuttingSpeed::from_m_per_min(c * v * k).unwrap();
                    (speed, life_at(law, speed).unwrap())
                })
                .collect();
            let fit = fit_lives(&lives).unwrap();
            // Differences of logarithms lose some digits.
            prop_assert!(near(fit.law.exponent().value(), n, 1e-11));
            prop_assert!(near(fit.law.constant().m_per_min(), c, 1e-10));
            prop_assert!(fit.scatter.value() < 1e-11);
        }

        #[test]
        fn a_change_of_speed_and_back_leaves_the_life(
            t in 1.0..200.0_f64, n in 0.1..0.9_f64, k in 0.8..1.25_f64,
        ) {
            let (life, n) = (ToolLife::from_minutes(t).unwrap(), LifeExponent::from_value(n).unwrap());
            let (a, b) = (read("50 m/min"), CuttingSpeed::from_m_per_min(50.0 * k).unwrap());
            let there = life_after_change(life, n, a, b).unwrap();
            let back = life_after_change(there, n, b, a).unwrap();
            prop_assert!(near(back.minutes(), t, 1e-13 / n.value()));
            let law = LifeLaw::through(a, life, n).unwrap();
            prop_assert!(near(life_at(law, b).unwrap().minutes(), there.minutes(), 1e-12 / n.value()));
        }
    }

    #[test]
    fn scattered_lives_say_how_far() {
        // Two lives at one speed, a factor of two apart: ln T is off by ln(2)/2 to either side.
        let fit = fit_lives(&[
            (read("100 m/min"), read("20 min")),
            (read("100 m/min"), read("40 min")),
            (read("150 m/min"), read("5 min")),
            (read("150 m/min"), read("10 min")),
        ])
        .unwrap();
        let off = 2.0_f64.ln() / 2.0;
        assert!(near(
            fit.scatter.value(),
            (4.0 * off * off / 2.0).sqrt(),
            1e-12
        ));
        assert_eq!(fit.lives.len(), 4);
    }

    #[test]
    fn lives_that_give_no_law_are_refused() {
        let refused = |lives: &[(&str, &str)]| {
            let lives: Vec<_> = lives.iter().map(|(v, t)| (read(v), read(t))).collect();
            let error = fit_lives(&lives).unwrap_err();
            assert_eq!(error.field(), "lives", "{error}");
            error
        };
        refused(&[]);
        refused(&[("40 m/min", "20 min")]);
        refused(&[("40 m/min", "20 min"), ("40 m/min", "30 min")]);
        let rising = refused(&[("40 m/min", "20 min"), ("50 m/min", "30 min")]);
        assert!(rising.remedy().contains("built-up edge"));
        refused(&[("40 m/min", "20 min"), ("50 m/min", "20 min")]);
        refused(&[("40 m/min", "20 min"), ("40.0001 m/min", "10 min")]);
    }

    #[test]
    fn no_best_life_is_made_up() {
        let none = fastest_life(law(300.0, 1.0), read("1 min")).unwrap_err();
        assert_eq!(none.field(), "exponent");
        let free = fastest_life(law(300.0, 0.25), read("0 min")).unwrap_err();
        assert_eq!(free.field(), "change_time");
        let far = life_at(law(1e6, 0.01), read("0.1 m/min")).unwrap_err();
        assert_eq!(far.field(), "cutting_speed");
    }
}
