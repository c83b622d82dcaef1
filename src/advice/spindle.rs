//! Which spindle step.

use std::fmt;

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::{drive, speed};
use crate::quantity::text::fixed;
use crate::quantity::{CriticalSpeed, CuttingSpeed, Diameter, MainForce, SpindleSpeed};
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::{EFFICIENCY, Lathe, SpeedRange, Spindle};

/// A step short of the ideal by less than this share of it counts as the ideal.
const SAME: f64 = 1e-6;

/// What kept the spindle from running faster.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum GovernedBy {
    /// The cutting speed wanted: no limit stood in the way.
    CuttingSpeed,
    /// The speed marked on the chuck.
    Chuck,
    /// The highest speed of the machine, or its fastest step.
    Machine,
    /// The live centre.
    Centre,
    /// The power of the drive for the cut given.
    Power,
    /// The torque of the drive for the cut given: a faster range of gears has too little.
    Torque,
    /// The bar, which would whip.
    Whip,
    /// The slowest speed of the machine: it is above the ideal.
    SlowestStep,
}

impl GovernedBy {
    fn words(self) -> &'static str {
        match self {
            Self::CuttingSpeed => "the cutting speed",
            Self::Chuck => "the chuck",
            Self::Machine => "the machine",
            Self::Centre => "the live centre",
            Self::Power => "the power of the drive",
            Self::Torque => "the torque of the drive",
            Self::Whip => "the whip of the bar",
            Self::SlowestStep => "the slowest step",
        }
    }
}

impl fmt::Display for GovernedBy {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.words())
    }
}

/// The next step below or above the one chosen, and its price.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Neighbour {
    /// Its spindle speed.
    pub spindle_speed: SpindleSpeed,
    /// The cutting speed it would give.
    pub cutting_speed: CuttingSpeed,
    /// What it would cost, or why it is out of reach.
    pub because: String,
}

/// The spindle speed chosen.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct SpindleChoice {
    /// What the cutting speed alone would ask for.
    pub ideal: SpindleSpeed,
    /// What to set.
    pub spindle_speed: SpindleSpeed,
    /// What the levers say for it, if that is known.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub lever: Option<String>,
    /// The range of a continuous drive to set it in, where ranges have names.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub range: Option<String>,
    /// The cutting speed it gives at the diameter.
    pub cutting_speed: CuttingSpeed,
    /// What kept it from being faster.
    pub governed_by: GovernedBy,
    /// The next step below.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub neighbour_below: Option<Neighbour>,
    /// The next step above.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub neighbour_above: Option<Neighbour>,
    /// What a person must be told.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    pub cautions: Vec<Caution>,
}

impl fmt::Display for SpindleChoice {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{:.0} rpm ({:.1} m/min) of an ideal {:.0} rpm, governed by {}",
            self.spindle_speed.rpm(),
            self.cutting_speed.m_per_min(),
            self.ideal.rpm(),
            self.governed_by
        )
    }
}

/// What is known when a spindle step is asked for.
///
/// # Example
/// ```
/// use turnwright::{advice::spindle::SpindleAsk, CuttingSpeed, Diameter, Lathe, SpindleSpeed};
/// let steps = [40.0, 63.0, 100.0, 160.0, 250.0].map(SpindleSpeed::from_rpm);
/// let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?;
/// let choice = SpindleAsk::new(&lathe, Diameter::from_mm(52.0)?, CuttingSpeed::from_m_per_min(25.0)?)
///     .choose()?;
/// assert_eq!(choice.spindle_speed.rpm(), 100.0);
/// assert_eq!(choice.neighbour_above.map(|n| n.spindle_speed.rpm()), Some(160.0));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct SpindleAsk<'a> {
    lathe: &'a Lathe,
    diameter: Diameter,
    cutting_speed: CuttingSpeed,
    fastest: Option<CuttingSpeed>,
    holding: Option<&'a Holding>,
    cut: Option<(MainForce, Diameter)>,
    whip: Option<CriticalSpeed>,
}

impl<'a> SpindleAsk<'a> {
    /// A lathe, the diameter before the cut and the cutting speed wanted there.
    #[must_use]
    pub fn new(lathe: &'a Lathe, diameter: Diameter, cutting_speed: CuttingSpeed) -> Self {
        Self {
            lathe,
            diameter,
            cutting_speed,
            fastest: None,
            holding: None,
            cut: None,
            whip: None,
        }
    }

    /// With the top of the band of cutting speeds: the slowest step may go up to it.
    #[must_use]
    pub fn with_fastest(mut self, fastest: CuttingSpeed) -> Self {
        self.fastest = Some(fastest);
        self
    }

    /// With the way of holding, whose centre may have a highest speed.
    #[must_use]
    pub fn with_holding(mut self, holding: &'a Holding) -> Self {
        self.holding = Some(holding);
        self
    }

    /// With the main force of the cut and the mean diameter at which it acts, for power and torque.
    #[must_use]
    pub fn with_cut(mut self, force: MainForce, mean_diameter: Diameter) -> Self {
        self.cut = Some((force, mean_diameter));
        self
    }

    /// With the speed up to which the bar is safe from whip.
    #[must_use]
    pub fn with_whip(mut self, safe_up_to: CriticalSpeed) -> Self {
        self.whip = Some(safe_up_to);
        self
    }

    /// The caps on the spindle speed, each with what sets it.
    fn caps(&self) -> Result<Vec<(GovernedBy, SpindleSpeed)>, Error> {
        let mut caps = Vec::with_capacity(5);
        if let Some(cap) = self.lathe.chuck_max_speed() {
            caps.push((GovernedBy::Chuck, cap));
        }
        if let Some(cap) = self.lathe.max_spindle_speed() {
            caps.push((GovernedBy::Machine, cap));
        }
        if let Some(holding) = self.holding
            && holding.kind() != HoldingKind::Chuck
            && let Some(cap) = holding.centre_max_speed()
        {
            caps.push((GovernedBy::Centre, cap));
        }
        if let Some(safe) = self.whip {
            caps.push((GovernedBy::Whip, SpindleSpeed::computed_trade(safe.rpm())));
        }
        if let (Some((force, mean)), Some(motor)) = (self.cut, self.lathe.power()) {
            let efficiency = self.lathe.efficiency().unwrap_or(EFFICIENCY.value);
            let available = drive::spindle_power(motor, efficiency);
            if force.newton() > 0.0 {
                let fastest = available.power() / force.force();
                let cap = speed::spindle_speed(CuttingSpeed::computed(fastest), mean);
                caps.push((GovernedBy::Power, cap));
            }
        }
        Ok(caps)
    }

    /// Refuses a cut that asks for more torque than the drive gives: on a gearbox behind a motor of
    /// variable speed a slower speed gives no more.
    fn torque_suffices(&self, base_speed: Option<SpindleSpeed>) -> Result<(), Error> {
        if let (Some((force, mean)), Some(motor), Some(base)) =
            (self.cut, self.lathe.power(), base_speed)
        {
            let efficiency = self.lathe.efficiency().unwrap_or(EFFICIENCY.value);
            let (asked, given) = (
                drive::torque(force, mean),
                drive::torque_at(drive::spindle_power(motor, efficiency), base),
            );
            if asked > given {
                return Err(Error::new(
                    ErrorKind::Impossible,
                    "depth_of_cut",
                    format!(
                        "a cut that asks for a torque of {:.1} N m",
                        asked.newton_meter()
                    ),
                    format!(
                        "at most the {:.1} N m that the drive gives",
                        given.newton_meter()
                    ),
                    "take less depth or feed: on this drive a slower speed gives no more torque",
                ));
            }
        }
        Ok(())
    }

    /// The ranges of a continuous drive that have the torque for the cut.
    fn strong_enough<'r>(&self, ranges: &'r [SpeedRange]) -> Result<Vec<&'r SpeedRange>, Error> {
        let suffices = |range: &SpeedRange| self.torque_suffices(self.lathe.base_speed_in(range));
        let strong: Vec<_> = ranges
            .iter()
            .filter(|range| suffices(range).is_ok())
            .collect();
        if strong.is_empty()
            && let Some(strongest) = ranges
                .iter()
                .min_by_key(|range| self.lathe.base_speed_in(range).unwrap_or(range.high()))
        {
            suffices(strongest)?;
        }
        Ok(strong)
    }

    /// The highest step that neither the cutting speed nor any limit forbids.
    ///
    /// # Errors
    /// When a limit, or the top of the band of cutting speeds, forbids even the slowest step.
    pub fn choose(&self) -> Result<SpindleChoice, Error> {
        let ideal = speed::spindle_speed(self.cutting_speed, self.diameter);
        let caps = self.caps()?;
        let (mut governed_by, mut most) = (GovernedBy::CuttingSpeed, ideal);
        for (who, cap) in &caps {
            if cap.rpm() < most.rpm() * (1.0 - SAME) {
                (governed_by, most) = (*who, *cap);
            }
        }
        let allowed = |n: SpindleSpeed| n.rpm() <= most.rpm() * (1.0 + SAME);
        let found = match self.lathe.spindle() {
            Spindle::Steps(steps) => {
                self.torque_suffices(self.lathe.constant_torque_below())?;
                let at = steps.iter().rposition(|step| allowed(*step));
                match at {
                    Some(at) if at + 1 == steps.len() && !allowed_above(steps[at], most) => Found {
                        speed: steps[at],
                        range: None,
                        fastest: true,
                    },
                    Some(at) => Found {
                        speed: steps[at],
                        range: None,
                        fastest: false,
                    },
                    None => self.slowest(steps[0], None, ideal, &caps)?,
                }
            }
            Spindle::Ranges(ranges) => {
                let strong = self.strong_enough(ranges)?;
                // The range that would be faster is there, but stalls under this cut.
                let faster_stalls = |than: SpindleSpeed| {
                    ranges
                        .iter()
                        .any(|range| range.high() > than && allowed(range.low()))
                };
                let best = strong
                    .iter()
                    .filter(|range| allowed(range.low()))
                    .map(|range| (range.high().min(most), range))
                    // The fastest; of ranges that hold it, the one with the lowest top has the most torque.
                    .max_by(|a, b| a.0.cmp(&b.0).then(b.1.high().cmp(&a.1.high())));
                match best {
                    Some((speed, range)) => {
                        let fastest = speed < most;
                        if fastest && faster_stalls(speed) {
                            governed_by = GovernedBy::Torque;
                        }
                        Found {
                            speed,
                            range: Some(range.name().to_owned()),
                            fastest: fastest && governed_by != GovernedBy::Torque,
                        }
                    }
                    None => {
                        let Some(slowest) = strong.iter().min_by_key(|range| range.low()) else {
                            return Err(Error::internal("a drive without a range"));
                        };
                        self.slowest(slowest.low(), Some(slowest.name().to_owned()), ideal, &caps)?
                    }
                }
            }
        };
        let slower_than_all = found.speed.rpm() > ideal.rpm() * (1.0 + SAME);
        if slower_than_all {
            governed_by = GovernedBy::SlowestStep;
        } else if found.fastest {
            governed_by = GovernedBy::Machine;
        }
        let mut cautions = Vec::new();
        if slower_than_all {
            cautions.push(Caution::new(
                Severity::Warning,
                "slowest_step_above_ideal",
                "Even the slowest speed is above the cutting speed wanted: the edge will wear faster; look at it often.",
            ));
        }
        if governed_by == GovernedBy::Whip {
            cautions.push(Caution::new(
                Severity::Warning,
                "whip",
                "The bar stands out so far that whip sets the speed: let less stand out, or set a centre or a steady; guard \
                 closed, and nothing out of the spindle's rear without a guarded tube.",
            ));
        }
        let (below, above) = self.neighbours(found.speed, ideal, &caps);
        Ok(SpindleChoice {
            ideal,
            spindle_speed: found.speed,
            lever: self.lathe.step_name(found.speed).map(str::to_owned),
            range: found.range.filter(|name| !name.is_empty()),
            cutting_speed: speed::cutting_speed(found.speed, self.diameter),
            governed_by,
            neighbour_below: below,
            neighbour_above: above,
            cautions,
        })
    }

    /// The slowest speed, where it is above the ideal: given up to the top of the band, refused above
    /// it and above any limit.
    fn slowest(
        &self,
        slowest: SpindleSpeed,
        range: Option<String>,
        ideal: SpindleSpeed,
        caps: &[(GovernedBy, SpindleSpeed)],
    ) -> Result<Found, Error> {
        if let Some((who, cap)) = caps.iter().find(|(_, cap)| *cap < slowest) {
            return Err(Error::new(
                ErrorKind::Impossible,
                "lathe.spindle_steps",
                format!("a slowest speed of {slowest}"),
                format!(
                    "a speed not above the {:.0} rpm that {who} allows",
                    cap.rpm()
                ),
                match who {
                    GovernedBy::Power => "take less depth or feed",
                    _ => {
                        "another chuck or centre, or another lathe: this limit is not to be passed"
                    }
                },
            ));
        }
        let reached = speed::cutting_speed(slowest, self.diameter);
        let top = self.fastest.unwrap_or(self.cutting_speed);
        if reached.m_per_min() > top.m_per_min() * (1.0 + SAME) {
            return Err(Error::new(
                ErrorKind::Impossible,
                "lathe.spindle_steps",
                format!(
                    "a slowest speed of {slowest}, which cuts at {:.1} m/min",
                    reached.m_per_min()
                ),
                format!(
                    "at most {:.1} m/min, that is {:.1} rpm at {}",
                    top.m_per_min(),
                    ideal.rpm(),
                    self.diameter
                ),
                "another tool material, another lathe, or give a higher cutting speed if the tool bears it",
            ));
        }
        Ok(Found {
            speed: slowest,
            range,
            fastest: false,
        })
    }

    fn neighbours(
        &self,
        chosen: SpindleSpeed,
        ideal: SpindleSpeed,
        caps: &[(GovernedBy, SpindleSpeed)],
    ) -> (Option<Neighbour>, Option<Neighbour>) {
        let Spindle::Steps(steps) = self.lathe.spindle() else {
            return (None, None);
        };
        let below = steps.iter().rev().find(|step| **step < chosen);
        let above = steps.iter().find(|step| **step > chosen);
        let neighbour = |step: &SpindleSpeed| {
            let because = if *step < chosen {
                format!(
                    "the same cut takes {} % longer",
                    fixed(100.0 * (chosen.rpm() / step.rpm() - 1.0), 0)
                )
            } else if let Some((who, cap)) = caps
                .iter()
                .filter(|(_, cap)| cap < step)
                .min_by_key(|(_, cap)| *cap)
            {
                format!("not allowed: {who} stops at {} rpm", fixed(cap.rpm(), 0))
            } else if self
                .fastest
                .is_some_and(|top| speed::cutting_speed(*step, self.diameter) > top)
            {
                format!(
                    "{} % over the cutting speed wanted, beyond the band of this material and tool: the edge would not last",
                    fixed(100.0 * (step.rpm() / ideal.rpm() - 1.0), 1)
                )
            } else {
                format!(
                    "{} % over the cutting speed wanted, for {} % less time: the edge wears faster",
                    fixed(100.0 * (step.rpm() / ideal.rpm() - 1.0), 1),
                    fixed(100.0 * (1.0 - chosen.rpm() / step.rpm()), 0)
                )
            };
            Neighbour {
                spindle_speed: *step,
                cutting_speed: speed::cutting_speed(*step, self.diameter),
                because,
            }
        };
        (below.map(neighbour), above.map(neighbour))
    }
}

/// True when a faster step than `fastest` could have been used, had the machine one.
fn allowed_above(fastest: SpindleSpeed, most: SpindleSpeed) -> bool {
    most.rpm() <= fastest.rpm() * (1.0 + SAME)
}

struct Found {
    speed: SpindleSpeed,
    range: Option<String>,
    /// The machine has nothing faster, though it would be allowed.
    fastest: bool,
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    fn read<T: std::str::FromStr<Err = Error>>(text: &str) -> T {
        text.parse().unwrap()
    }

    /// Two ranges of one motor, 1.5 kW at the spindle, base speeds 1000 and 250 rpm: 14.3 and 57.3 N m.
    fn geared() -> Lathe {
        let range = |name: &str, low: &str, high: &str| {
            SpeedRange::new(name, read(low), read(high)).unwrap()
        };
        Lathe::with_ranges(vec![
            range("low", "40 rpm", "500 rpm"),
            range("high", "160 rpm", "2000 rpm"),
        ])
        .unwrap()
        .with_power(read("1.5 kW"))
        .with_efficiency(read("1"))
        .with_constant_torque_below(read("1000 rpm"))
    }

    fn choose(lathe: &Lathe, force: &str, diameter: &str) -> Result<SpindleChoice, Error> {
        SpindleAsk::new(lathe, read(diameter), read("100 m/min"))
            .with_cut(read(force), read(diameter))
            .choose()
    }

    #[test]
    fn a_heavy_cut_goes_to_the_range_that_has_the_torque() {
        // 400 N on 40 mm: 8 N m, which the high range gives; 796 rpm wanted.
        let light = choose(&geared(), "400 N", "40 mm").unwrap();
        assert_eq!(light.range.as_deref(), Some("high"));
        assert_eq!(light.governed_by, GovernedBy::CuttingSpeed);
        // 850 N on 40 mm: 17 N m, too much for the high range; 842 rpm by power, but the low range ends before.
        let heavy = choose(&geared(), "850 N", "40 mm").unwrap();
        assert_eq!(heavy.range.as_deref(), Some("low"));
        assert_eq!(heavy.spindle_speed.rpm(), 500.0);
        assert_eq!(heavy.governed_by, GovernedBy::Torque);
        // 3000 N on 40 mm: 60 N m, more than even the low range gives.
        let stalls = choose(&geared(), "3000 N", "40 mm").unwrap_err();
        assert_eq!(stalls.field(), "depth_of_cut");
        assert!(stalls.expected().contains("57.3"), "{stalls}");
    }

    #[test]
    fn a_base_speed_of_its_own_goes_before_the_one_that_is_reckoned() {
        let range = SpeedRange::new("low", read("40 rpm"), read("500 rpm")).unwrap();
        let weak = Lathe::with_ranges(vec![
            range.with_constant_torque_below(read("450 rpm")),
            SpeedRange::new("high", read("160 rpm"), read("2000 rpm")).unwrap(),
        ])
        .unwrap()
        .with_power(read("1.5 kW"))
        .with_efficiency(read("1"))
        .with_constant_torque_below(read("1000 rpm"));
        // 1700 N on 40 mm: 34 N m; 31.8 N m at a base of 450 rpm, 57.3 N m at the reckoned 250 rpm.
        assert!(choose(&weak, "1700 N", "40 mm").is_err());
        assert!(choose(&geared(), "1700 N", "40 mm").is_ok());
    }
}
