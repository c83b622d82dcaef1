//! Which parts of a batch to measure: as the edge wears, sizes drift, and a stop costs time.

use crate::error::{Error, ErrorKind};
use crate::physics::aim::{self, Prices};
use crate::physics::spread::SizeSpread;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    Diameter, DiameterError, Duration, Price, PriceRework, PriceStop, Quantity, ToolLife,
    round_size,
};
use crate::standards::limits::{Feature, Limits};

/// By how much an edge is set back on the diameter when its life is over.
pub const SET_BACK: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.063),
    "flank worn by 0.3 mm (ISO 3685, from memory) at a clearance of 6 deg (judgement): 2 x 0.3 mm x tan 6 deg",
    Standing::FromMemory,
);

/// Most parts of a batch.
const MOST: u32 = 10_000;

/// By how much sizes drift from part to part.
///
/// d = s t/T: s the set-back at the end of the life, t the time in cut of a part, T the life.
///
/// # Units
/// On the diameter, positive: parts grow.
/// # Range
/// The even wear between the first rounding of an edge and its end; an edge that builds up or chips
/// drifts otherwise.
/// # Source
/// Geometry of the flank and proportion (derived).
/// # Example
/// ```
/// use turnwright::{advice::batch::drift_per_part, Provenance};
/// // A minute and a half in cut of a life of an hour.
/// let drift = drift_per_part("1.5 min".parse()?, "60 min".parse()?, &mut Provenance::default());
/// assert!((drift.mm() - 0.001575).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn drift_per_part(
    in_cut: Duration,
    life: ToolLife,
    provenance: &mut Provenance,
) -> DiameterError {
    let set_back = provenance.open("set-back of an edge at the end of its life", &SET_BACK);
    DiameterError::computed_trade(set_back.mm() * in_cut.minutes() / life.minutes())
}

/// Which parts to measure, and what that costs.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct BatchChoice {
    /// How many parts there are.
    pub parts: u32,
    /// Every how many parts one is measured; more than there are where none needs to be after the first.
    pub every: u32,
    /// Which parts are measured, from 1: the first two, and then every so many.
    pub measured: Vec<u32>,
    /// By how much sizes drift from part to part.
    pub drift_per_part: DiameterError,
    /// By how much they drift from one measured part to the next.
    pub drift_between: DiameterError,
    /// What the batch costs by stops, lost parts and other cuts, on average.
    pub expected_price: Price,
    /// The same with every part measured.
    pub all_measured: Price,
    /// The same with the first two measured and no other.
    pub none_measured: Price,
}

/// Asks which parts of a batch to measure.
///
/// E(m) = sum over the parts of c(x + j d) + c_stop n, with j the parts since the last measured one,
/// d the drift from part to part, c the expected price of a size aimed at x, n the stops. After a
/// measured part the ring is set anew, so that the next one comes to its aim. A part that is too large
/// is cut once more only where it is measured: one that is not costs as much as a lost one, for it is
/// found when its zero is gone.
///
/// The first part is measured to set the dial by; the second proves that the zero came back with a
/// fresh bar in the jaws.
///
/// # Units
/// Prices all in one currency, or all in minutes of work.
/// # Source
/// Expected price of a decision (derived); every interval is looked at.
/// # Example
/// An invented batch.
/// ```
/// use turnwright::{advice::batch::BatchAsk, physics::{aim::Prices, spread::SizeSpread}, Limits};
/// let zone = Limits::new("29.967 mm".parse()?, "30 mm".parse()?)?;
/// let spread = SizeSpread::normal("0.005 mm".parse()?);
/// let prices = Prices::new("30".parse()?, "2".parse()?);
/// let ask = |drift: &str| Ok::<_, turnwright::Error>(
///     BatchAsk::new(40, zone, "29.985 mm".parse()?, spread, drift.parse()?, prices, "1".parse()?).choose()?);
/// let (slow, fast) = (ask("0.2 um")?, ask("2 um")?);
/// assert!(slow.every > fast.every && fast.every > 1);
/// assert!(fast.expected_price <= fast.all_measured && fast.expected_price <= fast.none_measured);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct BatchAsk {
    parts: u32,
    limits: Limits,
    aim: Diameter,
    spread: SizeSpread,
    drift: DiameterError,
    prices: Prices,
    stop: PriceStop,
    every_part_is_a_first: bool,
}

impl BatchAsk {
    /// So many parts aimed at a size of a zone, how a part scatters that is not measured before its last
    /// cut, the drift from part to part, and what scrap, rework and a stop cost.
    #[must_use]
    pub fn new(
        parts: u32,
        limits: Limits,
        aim: Diameter,
        spread: SizeSpread,
        drift: DiameterError,
        prices: Prices,
        stop: PriceStop,
    ) -> Self {
        Self {
            parts,
            limits,
            aim,
            spread,
            drift,
            prices,
            stop,
            every_part_is_a_first: false,
        }
    }

    /// Where the zero is lost from part to part, by a change of tool or of its edge: each is then touched
    /// and measured as the first is.
    #[must_use]
    pub fn with_every_part_a_first(mut self) -> Self {
        self.every_part_is_a_first = true;
        self
    }

    /// The parts to measure.
    ///
    /// # Errors
    /// `batch`, for fewer than 2 parts or more than 10 000.
    pub fn choose(&self) -> Result<BatchChoice, Error> {
        let n = self.parts;
        if !(2..=MOST).contains(&n) {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "batch",
                n.to_string(),
                format!("a whole number from 2 to {MOST}"),
                "give how many parts are made one after the other; leave it out for a single one",
            ));
        }
        // The price of a part so many after a measured one, where it is measured itself and where not.
        let lost = self.prices.scrap();
        let unseen = Prices::new(lost, PriceRework::computed_trade(lost.trade()));
        let after: Vec<[f64; 2]> = (0..n)
            .map(|j| {
                let size = self.aim.mm() + f64::from(j) * self.drift.mm();
                let size = Diameter::computed_trade(size);
                let (limits, spread) = (self.limits, self.spread);
                [self.prices, unseen].map(|prices| {
                    aim::expected_price(limits, size, spread, prices, Feature::Shaft).trade()
                })
            })
            .collect();
        let price = |every: u32| {
            let mut stops = measured(n, every).peekable();
            let mut sum = 0.0;
            for part in 1..=n {
                let [seen, unseen] = after[since(part, every) as usize];
                sum += match stops.next_if_eq(&part) {
                    Some(_) => seen + self.stop.trade(),
                    None => unseen,
                };
            }
            sum
        };
        let (mut every, mut least) = (1, price(1));
        let rarest = match self.every_part_is_a_first {
            true => 1,
            false => n,
        };
        for candidate in 2..=rarest {
            let found = price(candidate);
            if found < least {
                (every, least) = (candidate, found);
            }
        }
        let longest = (1..=n).map(|part| since(part, every)).max().unwrap_or(0);
        let drifted = round_size(f64::from(longest) * self.drift.mm());
        Ok(BatchChoice {
            parts: n,
            every,
            measured: measured(n, every).collect(),
            drift_per_part: self.drift,
            drift_between: DiameterError::computed_trade(drifted),
            expected_price: Price::computed_trade(least),
            all_measured: Price::computed_trade(price(1)),
            none_measured: Price::computed_trade(price(n)),
        })
    }
}

/// The parts that are measured: the first, and from the second on every so many.
fn measured(parts: u32, every: u32) -> impl Iterator<Item = u32> {
    std::iter::once(1).chain((2..=parts).step_by(every as usize))
}

/// How many parts before this one the ring was set; a part measured on the way is itself still as the
/// drift had it.
fn since(part: u32, every: u32) -> u32 {
    match part {
        1 | 2 => part - 1,
        _ => (part - 3) % every + 1,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn the_drift_is_counted_from_the_part_measured_last() {
        // Every third from the second: 1, 2, 5, 8; the ring is set after each.
        assert_eq!(measured(9, 3).collect::<Vec<_>>(), [1, 2, 5, 8]);
        let ages: Vec<u32> = (1..=9).map(|part| since(part, 3)).collect();
        assert_eq!(ages, [0, 1, 1, 2, 3, 1, 2, 3, 1]);
    }

    proptest! {
        #[test]
        fn no_interval_is_cheaper(parts in 2_u32..60, drift in 0.0_f64..0.004, scrap in 1.0_f64..60.0, stop in 0.05_f64..3.0) {
            let limits = Limits::new(Diameter::from_mm(29.967).unwrap(), Diameter::from_mm(30.0).unwrap()).unwrap();
            let spread = SizeSpread::normal("0.005 mm".parse().unwrap());
            let prices = Prices::new(format!("{scrap}").parse().unwrap(), "2".parse().unwrap());
            let aim = Diameter::from_mm(29.985).unwrap();
            let choice = BatchAsk::new(parts, limits, aim, spread, DiameterError::from_mm(drift).unwrap(), prices,
                format!("{stop}").parse().unwrap()).choose().unwrap();
            // Walked part by part, the ring set after each measured one.
            let walked = |every: u32| {
                let (mut price, mut off, mut next) = (0.0, 0.0, 2);
                for part in 1..=parts {
                    let size = Diameter::from_mm(aim.mm() + off).unwrap();
                    let seen = part == 1 || part == next;
                    // One too large that nobody measures is as bad as a lost one.
                    let oversize = if seen { "2".parse().unwrap() } else { format!("{scrap}").parse().unwrap() };
                    let prices = Prices::new(prices.scrap(), oversize);
                    price += aim::expected_price(limits, size, spread, prices, Feature::Shaft).value();
                    off += drift;
                    if seen {
                        price += stop;
                        off = drift;
                        if part == next { next += every; }
                    }
                }
                price
            };
            let found = choice.expected_price.value();
            // Two sums of at most sixty prices in another order.
            prop_assert!((found - walked(choice.every)).abs() < 1e-9 * found);
            for every in 1..=parts {
                prop_assert!(found <= walked(every) * (1.0 + 1e-9));
            }
        }
    }
}
