//! What a pass may do: the limits of roughing and of finishing passes.

use crate::error::{Error, ErrorKind};
use crate::quantity::{CuttingSpeed, Feed, MainForce, PassiveForce, Power, Torque};

/// Depth over feed, from which to which the chip is wanted.
///
/// ```
/// use turnwright::advice::least_time::ChipWindow;
/// let window = ChipWindow::new(4.0, 10.0)?;
/// assert_eq!((window.from(), window.to()), (4.0, 10.0));
/// assert!(ChipWindow::new(10.0, 4.0).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ChipWindow {
    from: f64,
    to: f64,
}

impl ChipWindow {
    /// Depth over feed from `from` to `to`.
    ///
    /// # Errors
    /// `chip_window`, when an end is not finite or below zero, or when they are the wrong way round.
    pub fn new(from: f64, to: f64) -> Result<Self, Error> {
        let kind = if !(from.is_finite() && to.is_finite()) {
            ErrorKind::NotFinite
        } else if from < 0.0 || to <= 0.0 {
            ErrorKind::OutOfRange
        } else if from > to {
            ErrorKind::Contradiction
        } else {
            return Ok(Self { from, to });
        };
        Err(Error::new(
            kind,
            "chip_window",
            format!("depth over feed from {from} to {to}"),
            "two finite numbers, the smaller first: 0 or more, and more than 0",
            "give the least and the largest depth over feed at which the chip is wanted, about 4 and 10",
        ))
    }

    /// The least depth over feed.
    #[must_use]
    pub fn from(self) -> f64 {
        self.from
    }

    /// The largest depth over feed.
    #[must_use]
    pub fn to(self) -> f64 {
        self.to
    }
}

/// What a roughing or a finishing pass may do. Only the cutting speed must have a limit.
///
/// Speed, power and torque are reckoned at the diameter before the pass, where they are largest.
///
/// # Example
/// ```
/// use turnwright::advice::least_time::PassLimits;
/// let metric = PassLimits::new("120 m/min".parse()?)
///     .with_largest_main_force("1800 N".parse()?)
///     .with_power("3 kW".parse()?);
/// let inch = PassLimits::new("400 ft/min".parse()?)
///     .with_largest_main_force("400 lbf".parse()?)
///     .with_power("4 hp".parse()?);
/// assert_ne!(metric, inch);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct PassLimits {
    /// None only where [`PassLimits::without`] looks for the limit that forbids a job.
    pub(super) largest_speed: Option<CuttingSpeed>,
    pub(super) least_speed: Option<CuttingSpeed>,
    pub(super) largest_main_force: Option<MainForce>,
    pub(super) largest_passive_force: Option<PassiveForce>,
    pub(super) passive_forces: Option<Vec<PassiveForce>>,
    pub(super) power: Option<Power>,
    pub(super) torque: Option<Torque>,
    pub(super) torques: Option<Vec<Torque>>,
    pub(super) largest_feed: Option<Feed>,
    pub(super) least_feed: Option<Feed>,
    pub(super) largest_divisions: Option<u32>,
    pub(super) least_divisions: Option<u32>,
    pub(super) chip_window: Option<ChipWindow>,
}

impl PassLimits {
    /// Passes up to a cutting speed, at the diameter before the pass.
    #[must_use]
    pub fn new(largest_speed: CuttingSpeed) -> Self {
        Self {
            largest_speed: Some(largest_speed),
            least_speed: None,
            largest_main_force: None,
            largest_passive_force: None,
            passive_forces: None,
            power: None,
            torque: None,
            torques: None,
            largest_feed: None,
            least_feed: None,
            largest_divisions: None,
            least_divisions: None,
            chip_window: None,
        }
    }

    crate::shop::setters! {
        /// With the least cutting speed, at the diameter before the pass: below it an edge builds up.
        with_least_speed least_speed: CuttingSpeed;
        /// With the largest main force.
        with_largest_main_force largest_main_force: MainForce;
        /// With the largest passive force, whatever the diameter; a pull counts like a push.
        with_largest_passive_force largest_passive_force: PassiveForce;
        /// With the largest passive force for each size that a pass can leave, in the order of
        /// [`LeastTimeAsk::sizes_left`](super::LeastTimeAsk::sizes_left): a thinner bar springs further.
        with_passive_forces passive_forces: Vec<PassiveForce>;
        /// With the power at the spindle.
        with_power power: Power;
        /// With the torque at the spindle, on every step.
        with_torque torque: Torque;
        /// With the torque at the spindle on each step, in the order in which the steps were given.
        with_torques torques: Vec<Torque>;
        /// With the largest feed: the finish wanted allows no more.
        with_largest_feed largest_feed: Feed;
        /// With the least feed.
        with_least_feed least_feed: Feed;
        /// With the most divisions of one pass.
        with_largest_divisions largest_divisions: u32;
        /// With the fewest divisions of one pass: a thinner one rubs.
        with_least_divisions least_divisions: u32;
        /// With depth over feed inside this window.
        with_chip_window chip_window: ChipWindow;
    }

    /// The fewest divisions of a pass.
    pub(super) fn least(&self) -> u32 {
        self.least_divisions.unwrap_or(1)
    }

    /// Checks what the types do not: `left` sizes and `steps` spindle steps are there.
    pub(super) fn check(&self, left: usize, steps: usize) -> Result<(), Error> {
        let table = |field: &str, found: Option<usize>, wanted: usize, of: &str| match found {
            Some(found) if found != wanted => Err(Error::new(
                ErrorKind::Contradiction,
                field,
                format!("{found} values"),
                format!("{wanted} values, one for each {of}"),
                "give one value for each, in their order",
            )),
            _ => Ok(()),
        };
        let passive = self.passive_forces.as_ref();
        table(
            "passive_forces",
            passive.map(Vec::len),
            left,
            "size that a pass can leave",
        )?;
        table(
            "torques",
            self.torques.as_ref().map(Vec::len),
            steps,
            "spindle step given",
        )?;
        let forces = passive.into_iter().flatten();
        for force in self.largest_passive_force.iter().chain(forces) {
            if force.newton() < 0.0 {
                return Err(Error::new(
                    ErrorKind::OutOfRange,
                    "largest_passive_force",
                    force.to_string(),
                    "a largest passive force of 0 or more",
                    "give the size of the force; a pull counts like a push",
                ));
            }
        }
        if self.least_divisions == Some(0) || self.largest_divisions == Some(0) {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "divisions",
                "0 divisions",
                "passes of at least one division",
                "leave the limit out, or give one division or more",
            ));
        }
        let crossed = |field: &str, least: String, largest: String| {
            Err(Error::new(
                ErrorKind::Contradiction,
                field,
                least,
                format!("no more than the largest, {largest}"),
                "exchange the two, or widen one of them",
            ))
        };
        match (self.least_divisions, self.largest_divisions) {
            (Some(low), Some(high)) if low > high => {
                return crossed("least_divisions", low.to_string(), high.to_string());
            }
            _ => {}
        }
        match (self.least_feed, self.largest_feed) {
            (Some(low), Some(high)) if low > high => {
                return crossed("least_feed", low.to_string(), high.to_string());
            }
            _ => {}
        }
        match (self.least_speed, self.largest_speed) {
            (Some(low), Some(high)) if low > high => {
                crossed("least_speed", low.to_string(), high.to_string())
            }
            _ => Ok(()),
        }
    }

    /// These limits without one of them.
    pub(super) fn without(mut self, limit: PassLimit) -> Self {
        match limit {
            PassLimit::LargestSpeed => self.largest_speed = None,
            PassLimit::LeastSpeed => self.least_speed = None,
            PassLimit::MainForce => self.largest_main_force = None,
            PassLimit::PassiveForce => {
                self.largest_passive_force = None;
                self.passive_forces = None;
            }
            PassLimit::Power => self.power = None,
            PassLimit::Torque => {
                self.torque = None;
                self.torques = None;
            }
            PassLimit::LargestFeed => self.largest_feed = None,
            PassLimit::LeastFeed => self.least_feed = None,
            PassLimit::LargestDivisions => self.largest_divisions = None,
            PassLimit::LeastDivisions => self.least_divisions = None,
            PassLimit::Chip => self.chip_window = None,
        }
        self
    }
}

/// The limits of a pass by name, in the order in which they are looked at when no plan is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum PassLimit {
    LeastDivisions,
    LargestDivisions,
    LargestFeed,
    LeastFeed,
    Chip,
    LargestSpeed,
    LeastSpeed,
    MainForce,
    PassiveForce,
    Power,
    Torque,
}

impl PassLimit {
    pub(super) const ALL: [Self; 11] = [
        Self::LeastDivisions,
        Self::LargestDivisions,
        Self::LargestFeed,
        Self::LeastFeed,
        Self::Chip,
        Self::LargestSpeed,
        Self::LeastSpeed,
        Self::MainForce,
        Self::PassiveForce,
        Self::Power,
        Self::Torque,
    ];

    /// Its field, in words, and what would put it right.
    pub(super) fn words(self) -> [&'static str; 3] {
        match self {
            Self::LeastDivisions => [
                "least_divisions",
                "the fewest divisions of a pass",
                "start from a larger bar, let a pass be thinner (a sharper edge, a smaller corner radius), or use a \
                 finer dial",
            ],
            Self::LargestDivisions => [
                "largest_divisions",
                "the most divisions of a pass",
                "allow deeper passes",
            ],
            Self::LargestFeed => [
                "largest_feed",
                "the largest feed",
                "use a finer feed of the gearbox, or a tool with a larger corner radius",
            ],
            Self::LeastFeed => [
                "least_feed",
                "the least feed",
                "use a coarser feed of the gearbox, or allow finer ones",
            ],
            Self::Chip => [
                "chip_window",
                "the chip (depth over feed)",
                "widen the window, or use a dial and feeds that meet it",
            ],
            Self::LargestSpeed => [
                "largest_speed",
                "the largest cutting speed",
                "use a slower spindle step, or a tool that stands a higher speed",
            ],
            Self::LeastSpeed => [
                "least_speed",
                "the least cutting speed",
                "use a faster spindle step, or allow slower cuts",
            ],
            Self::MainForce => [
                "largest_main_force",
                "the largest main force",
                "use a finer feed, a finer dial or a sharper tool",
            ],
            Self::PassiveForce => [
                "largest_passive_force",
                "the passive force that the spring of the bar allows",
                "support the bar with a live centre, shorten its overhang, or use a smaller corner radius",
            ],
            Self::Power => [
                "power",
                "the power of the drive",
                "use a finer feed, a slower spindle step or another lathe",
            ],
            Self::Torque => [
                "torque",
                "the torque of the drive",
                "use a finer feed, a lower gear or another lathe",
            ],
        }
    }
}
