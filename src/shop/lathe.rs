//! The lathe: its spindle, drive, slides and feeds, and the limits of each.

use super::dial::{Dial, DialReads};
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{Diameter, Duration, Efficiency, Feed, Power, SpindleSpeed, WorkLength};

/// Efficiency from motor to spindle where none is given.
pub const EFFICIENCY: Sourced<Efficiency> = Sourced::new(
    Efficiency::computed_trade(0.75),
    "common practice, no source: belt and gear lathes 0.7 to 0.85",
    Standing::CommonPractice,
);

/// What a change of spindle step costs where nothing is given.
pub const CHANGE_TIME: Sourced<Duration> = Sourced::new(
    Duration::computed_trade(30.0),
    "judgement, no source",
    Standing::Estimate,
);

/// A named range of a continuous drive, such as a gear.
#[derive(Debug, Clone, PartialEq)]
pub struct SpeedRange {
    name: String,
    low: SpindleSpeed,
    high: SpindleSpeed,
    constant_torque_below: Option<SpindleSpeed>,
}

impl SpeedRange {
    /// A range of speeds; `name` is what its lever says, empty where there is one range only.
    ///
    /// # Errors
    /// `spindle_range`, when low is not below high.
    pub fn new(
        name: impl Into<String>,
        low: SpindleSpeed,
        high: SpindleSpeed,
    ) -> Result<Self, Error> {
        if low < high {
            return Ok(Self {
                name: name.into(),
                low,
                high,
                constant_torque_below: None,
            });
        }
        Err(Error::new(
            ErrorKind::Contradiction,
            "spindle_range",
            format!("{low} to {high}"),
            "a low speed below the high speed",
            "give the slower one first",
        ))
    }

    /// With the base speed of this range, where its plate or the manual gives one.
    #[must_use]
    pub fn with_constant_torque_below(mut self, base_speed: SpindleSpeed) -> Self {
        self.constant_torque_below = Some(base_speed);
        self
    }

    /// The base speed given for this range.
    #[must_use]
    pub fn constant_torque_below(&self) -> Option<SpindleSpeed> {
        self.constant_torque_below
    }

    /// What the lever says.
    #[must_use]
    pub fn name(&self) -> &str {
        &self.name
    }

    /// The slowest speed.
    #[must_use]
    pub fn low(&self) -> SpindleSpeed {
        self.low
    }

    /// The fastest speed.
    #[must_use]
    pub fn high(&self) -> SpindleSpeed {
        self.high
    }
}

/// Which speeds the spindle can run.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Spindle {
    /// A stepped gearbox or belts: these speeds and no others, slowest first.
    Steps(Vec<SpindleSpeed>),
    /// A continuous drive: any speed within one of these ranges.
    Ranges(Vec<SpeedRange>),
}

/// The lathe.
///
/// All is optional but the spindle, where a question does not need it.
///
/// # Example
/// ```
/// use turnwright::{Lathe, SpindleSpeed};
/// let steps = [90.0, 180.0, 355.0, 710.0].map(SpindleSpeed::from_rpm);
/// let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?
///     .with_chuck_max_speed(SpindleSpeed::from_rpm(500.0)?);
/// assert_eq!(lathe.speed_cap().map(|cap| cap.to_string()), Some("500 rpm".into()));
/// assert!(Lathe::with_steps(vec![]).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Lathe {
    spindle: Spindle,
    step_names: Vec<String>,
    max_spindle_speed: Option<SpindleSpeed>,
    chuck_max_speed: Option<SpindleSpeed>,
    power: Option<Power>,
    efficiency: Option<Efficiency>,
    constant_torque_below: Option<SpindleSpeed>,
    cross_slide: Option<Dial>,
    carriage: Option<Dial>,
    compound: Option<Dial>,
    feeds: Vec<Feed>,
    feed_names: Vec<String>,
    change_time: Option<Duration>,
    swing: Option<Diameter>,
    between_centres: Option<WorkLength>,
}

impl Lathe {
    /// A lathe with a stepped gearbox.
    ///
    /// # Errors
    /// `spindle_steps`, when there is none, or one stands twice.
    pub fn with_steps(mut steps: Vec<SpindleSpeed>) -> Result<Self, Error> {
        steps.sort();
        if steps.is_empty() || steps.windows(2).any(|pair| pair[0] == pair[1]) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "spindle_steps",
                if steps.is_empty() {
                    "an empty gearbox".to_owned()
                } else {
                    "a step twice".to_owned()
                },
                "at least one spindle speed, each once",
                "list the speeds on the plate of the headstock",
            ));
        }
        Ok(Self::of(Spindle::Steps(steps)))
    }

    /// A lathe with a continuous drive of one or several ranges.
    ///
    /// # Errors
    /// `spindle_ranges`, when there is none.
    pub fn with_ranges(ranges: Vec<SpeedRange>) -> Result<Self, Error> {
        if ranges.is_empty() {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "spindle_ranges",
                "no range",
                "at least one range of speeds",
                "give the slowest and the fastest speed of each range",
            ));
        }
        Ok(Self::of(Spindle::Ranges(ranges)))
    }

    fn of(spindle: Spindle) -> Self {
        Self {
            spindle,
            step_names: Vec::new(),
            max_spindle_speed: None,
            chuck_max_speed: None,
            power: None,
            efficiency: None,
            constant_torque_below: None,
            cross_slide: None,
            carriage: None,
            compound: None,
            feeds: Vec::new(),
            feed_names: Vec::new(),
            change_time: None,
            swing: None,
            between_centres: None,
        }
    }

    crate::shop::setters! {
        /// The highest speed that the machine may run.
        with_max_spindle_speed max_spindle_speed: SpindleSpeed;
        /// The speed marked on the chuck.
        with_chuck_max_speed chuck_max_speed: SpindleSpeed;
        /// Rated power of the motor.
        with_power power: Power;
        /// Efficiency from motor to spindle.
        with_efficiency efficiency: Efficiency;
        /// The spindle speed below which the drive gives no more torque, only less power; of several
        /// ranges, in the one with the highest top.
        with_constant_torque_below constant_torque_below: SpindleSpeed;
        /// Dial of the compound slide.
        with_compound compound: Dial;
        /// What a change of spindle step costs, standstill and all.
        with_change_time change_time: Duration;
        /// Largest diameter that clears the bed.
        with_swing swing: Diameter;
        /// Largest length that fits between headstock and tailstock.
        with_between_centres between_centres: WorkLength;
    }

    /// The highest speed that the machine may run.
    #[must_use]
    pub fn max_spindle_speed(&self) -> Option<SpindleSpeed> {
        self.max_spindle_speed
    }

    /// The speed marked on the chuck.
    #[must_use]
    pub fn chuck_max_speed(&self) -> Option<SpindleSpeed> {
        self.chuck_max_speed
    }

    /// Rated power of the motor.
    #[must_use]
    pub fn power(&self) -> Option<Power> {
        self.power
    }

    /// Efficiency from motor to spindle.
    #[must_use]
    pub fn efficiency(&self) -> Option<Efficiency> {
        self.efficiency
    }

    /// The spindle speed below which the drive gives no more torque, only less power; of several
    /// ranges, in the one with the highest top.
    #[must_use]
    pub fn constant_torque_below(&self) -> Option<SpindleSpeed> {
        self.constant_torque_below
    }

    /// The range that a speed is set in: of those that hold it the one with the lowest top, which has
    /// the most torque. None for a stepped gearbox, and for a speed outside of every range.
    #[must_use]
    pub fn range_of(&self, spindle_speed: SpindleSpeed) -> Option<&SpeedRange> {
        match &self.spindle {
            Spindle::Steps(_) => None,
            Spindle::Ranges(ranges) => ranges
                .iter()
                .filter(|range| range.low <= spindle_speed && spindle_speed <= range.high)
                .min_by_key(|range| range.high),
        }
    }

    /// The base speed of one range.
    ///
    /// The range's own where one is given. Else that of the lathe, which is taken to be the one of the
    /// range with the highest top, moved by the ratio of the tops: one motor, whose top speed gives the
    /// top of every range.
    ///
    /// # Example
    /// ```
    /// use turnwright::{Lathe, SpeedRange};
    /// let low = SpeedRange::new("low", "40 rpm".parse()?, "500 rpm".parse()?)?;
    /// let high = SpeedRange::new("high", "160 rpm".parse()?, "2000 rpm".parse()?)?;
    /// let lathe = Lathe::with_ranges(vec![low.clone(), high])?.with_constant_torque_below("1000 rpm".parse()?);
    /// assert_eq!(lathe.base_speed_in(&low).map(|n| n.rpm()), Some(250.0));
    /// assert_eq!(lathe.base_speed_at("100 rpm".parse()?).map(|n| n.rpm()), Some(250.0));
    /// assert_eq!(lathe.base_speed_at("900 rpm".parse()?).map(|n| n.rpm()), Some(1000.0));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn base_speed_in(&self, range: &SpeedRange) -> Option<SpindleSpeed> {
        let Spindle::Ranges(ranges) = &self.spindle else {
            return self.constant_torque_below;
        };
        range.constant_torque_below.or_else(|| {
            let base = self.constant_torque_below?;
            let top = ranges.iter().map(|range| range.high).max()?;
            Some(SpindleSpeed::computed_trade(
                base.rpm() * (range.high.rpm() / top.rpm()),
            ))
        })
    }

    /// The base speed that holds at a spindle speed: that of the range it is set in.
    #[must_use]
    pub fn base_speed_at(&self, spindle_speed: SpindleSpeed) -> Option<SpindleSpeed> {
        match self.range_of(spindle_speed) {
            Some(range) => self.base_speed_in(range),
            None => self.constant_torque_below,
        }
    }

    /// Dial of the compound slide.
    #[must_use]
    pub fn compound(&self) -> Option<&Dial> {
        self.compound.as_ref()
    }

    /// What a change of spindle step costs, standstill and all.
    #[must_use]
    pub fn change_time(&self) -> Option<Duration> {
        self.change_time
    }

    /// Largest diameter that clears the bed.
    #[must_use]
    pub fn swing(&self) -> Option<Diameter> {
        self.swing
    }

    /// Largest length that fits between headstock and tailstock.
    #[must_use]
    pub fn between_centres(&self) -> Option<WorkLength> {
        self.between_centres
    }

    /// With power feeds, in any order; without, the tool is fed by hand.
    ///
    /// # Errors
    /// `feeds`, when one stands twice or the list is empty.
    pub fn with_feeds(mut self, mut feeds: Vec<Feed>) -> Result<Self, Error> {
        feeds.sort();
        if feeds.is_empty() || feeds.windows(2).any(|pair| pair[0] == pair[1]) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "feeds",
                if feeds.is_empty() {
                    "an empty list"
                } else {
                    "a feed twice"
                },
                "each power feed once; no list at all where the tool is fed by hand",
                "list the feeds on the plate of the feed box, or leave the field out",
            ));
        }
        self.feeds = feeds;
        Ok(self)
    }

    /// Which speeds the spindle can run.
    #[must_use]
    pub fn spindle(&self) -> &Spindle {
        &self.spindle
    }

    /// Power feeds, finest first; empty where the tool is fed by hand.
    #[must_use]
    pub fn feeds(&self) -> &[Feed] {
        &self.feeds
    }

    /// What the levers say for a spindle step, if that is known.
    #[must_use]
    pub fn step_name(&self, speed: SpindleSpeed) -> Option<&str> {
        let Spindle::Steps(steps) = &self.spindle else {
            return None;
        };
        let at = steps.iter().position(|step| *step == speed)?;
        self.step_names.get(at).map(String::as_str)
    }

    /// What the levers say for a feed, if that is known.
    #[must_use]
    pub fn feed_name(&self, feed: Feed) -> Option<&str> {
        let at = self.feeds.iter().position(|listed| *listed == feed)?;
        self.feed_names.get(at).map(String::as_str)
    }

    /// The lower of the machine's and the chuck's highest speed, if either is known.
    #[must_use]
    pub fn speed_cap(&self) -> Option<SpindleSpeed> {
        [self.max_spindle_speed, self.chuck_max_speed]
            .into_iter()
            .flatten()
            .min()
    }

    /// The slowest speed that can be set.
    pub(crate) fn slowest(&self) -> Option<SpindleSpeed> {
        match &self.spindle {
            Spindle::Steps(steps) => steps.iter().min().copied(),
            Spindle::Ranges(ranges) => ranges.iter().map(SpeedRange::low).min(),
        }
    }

    /// With the dial of the cross slide.
    ///
    /// # Errors
    /// `cross_slide.reads`, when the dial counts neither radius nor diameter.
    pub fn with_cross_slide(mut self, dial: Dial) -> Result<Self, Error> {
        if dial.reads() == DialReads::Travel {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "cross_slide.reads",
                "\"travel\"",
                "\"radius\" or \"diameter\"",
                "prove the dial: cut, measure, move in by a known reading, cut, measure: the diameter falls by the \
                 reading (diameter) or by twice the reading (radius)",
            ));
        }
        self.cross_slide = Some(dial);
        Ok(self)
    }

    /// With the dial of the carriage.
    ///
    /// # Errors
    /// `carriage.reads`, when the dial counts anything but travel.
    pub fn with_carriage(mut self, dial: Dial) -> Result<Self, Error> {
        if dial.reads() != DialReads::Travel {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "carriage.reads",
                "a dial that counts the work's diameter or radius",
                "\"travel\"",
                "the carriage moves along the bed: its dial counts travel",
            ));
        }
        self.carriage = Some(dial);
        Ok(self)
    }

    /// Dial of the cross slide.
    #[must_use]
    pub fn cross_slide(&self) -> Option<&Dial> {
        self.cross_slide.as_ref()
    }

    /// Dial of the carriage.
    #[must_use]
    pub fn carriage(&self) -> Option<&Dial> {
        self.carriage.as_ref()
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{self, Fields, Tree, list, printable, quantity};
    use serde::ser::{Serialize, SerializeMap, Serializer};

    impl Lathe {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "a lathe")?;
            let mut lathe = spindle(&f)?;
            lathe.max_spindle_speed = f.quantity("max_spindle_speed")?;
            lathe.chuck_max_speed = f.quantity("chuck_max_speed")?;
            lathe.power = f.quantity("power")?;
            lathe.efficiency = f.quantity("efficiency")?;
            lathe.constant_torque_below = f.quantity("constant_torque_below")?;
            if let Some(dial) = f.item("cross_slide", Dial::read)? {
                lathe = lathe
                    .with_cross_slide(dial)
                    .map_err(|error| error.inside(path))?;
            }
            if let Some(dial) = f.item("carriage", Dial::read)? {
                lathe = lathe
                    .with_carriage(dial)
                    .map_err(|error| error.inside(path))?;
            }
            lathe.compound = f.item("compound", Dial::read)?;
            lathe.change_time = f.quantity("change_time")?;
            lathe.swing = f.quantity("swing")?;
            lathe.between_centres = f.quantity("between_centres")?;
            if let Some(feeds) = f.quantities::<Feed>("feeds")? {
                let names = names(&f, "feed_names", feeds.len())?;
                lathe.feed_names = in_order(&feeds, names);
                lathe = lathe
                    .with_feeds(feeds)
                    .map_err(|error| error.inside(path))?;
            } else if f.has("feed_names") {
                return Err(f.missing("feeds", "the feeds that the names belong to"));
            }
            f.finish()?;
            Ok(lathe)
        }
    }

    fn spindle(f: &Fields<'_>) -> Result<Lathe, Error> {
        let steps = f.quantities::<SpindleSpeed>("spindle_steps")?;
        let range = f.item("spindle_range", |tree, path| speed_range(tree, path, ""))?;
        let ranges = f.item("spindle_ranges", |tree, path| match tree {
            Tree::Group(entries) => entries
                .iter()
                .map(|(name, tree)| {
                    printable(name, path)?;
                    speed_range(tree, &format!("{path}.{name}"), name)
                })
                .collect::<Result<Vec<_>, _>>(),
            _ => Err(Error::new(
                ErrorKind::Unreadable,
                path,
                "something else",
                "an object of named ranges",
                "write { \"low gear\": [\"50 rpm\", \"400 rpm\"], ... }",
            )),
        })?;
        let given = usize::from(steps.is_some())
            + usize::from(range.is_some())
            + usize::from(ranges.is_some());
        if given > 1 {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("spindle_steps"),
                format!("{given} descriptions of the spindle"),
                "one of spindle_steps, spindle_range or spindle_ranges",
                "keep the one that fits the machine",
            ));
        }
        if steps.is_none() && f.item("step_names", |_, _| Ok(()))?.is_some() {
            return Err(Error::new(
                ErrorKind::MissingField,
                f.path("spindle_steps"),
                "step_names without the steps that they name",
                "spindle_steps, one for each name",
                "add \"spindle_steps\", or leave \"step_names\" out: ranges have their names in spindle_ranges",
            ));
        }
        match (steps, range, ranges) {
            (Some(steps), _, _) => {
                let mut lathe = Lathe::with_steps(steps.clone())
                    .map_err(|error| error.at(&f.path("spindle_steps")))?;
                lathe.step_names = in_order(&steps, names(f, "step_names", steps.len())?);
                Ok(lathe)
            }
            (_, Some(range), _) => Lathe::with_ranges(vec![range]),
            (_, _, Some(ranges)) => {
                Lathe::with_ranges(ranges).map_err(|error| error.at(&f.path("spindle_ranges")))
            }
            _ => Err(f.missing(
                "spindle_steps",
                "the speeds of the spindle: spindle_steps, spindle_range or spindle_ranges",
            )),
        }
    }

    fn speed_range(tree: &Tree, path: &str, name: &str) -> Result<SpeedRange, Error> {
        if let Tree::Group(_) = tree {
            let f = Fields::of(tree, path, "a range of speeds")?;
            let mut range = f.need_item(
                "range",
                "the slowest and the fastest speed",
                |tree, path| speed_range(tree, path, name),
            )?;
            range.constant_torque_below = f.quantity("constant_torque_below")?;
            f.finish()?;
            return Ok(range);
        }
        match list(tree, path, quantity::<SpindleSpeed>)?.as_slice() {
            [low, high] => SpeedRange::new(name, *low, *high).map_err(|error| error.at(path)),
            other => Err(Error::new(
                ErrorKind::Unreadable,
                path,
                format!("{} speeds", other.len()),
                "two speeds, the slowest and the fastest",
                "write [\"50 rpm\", \"2000 rpm\"], or { \"range\": [..], \"constant_torque_below\": .. }",
            )),
        }
    }

    fn names(f: &Fields<'_>, name: &'static str, wanted: usize) -> Result<Vec<String>, Error> {
        let names = f.item(name, |tree, path| {
            list(tree, path, |tree, path| {
                fields::name(tree, path).map(str::to_owned)
            })
        })?;
        let twice = |names: &[String]| {
            let found = (1..names.len()).find(|at| names[..*at].contains(&names[*at]))?;
            Some((found, names[found].clone()))
        };
        match names {
            None => Ok(Vec::new()),
            Some(names) if let Some((at, same)) = twice(&names) => Err(Error::new(
                ErrorKind::Contradiction,
                format!("{}[{at}]", f.path(name)),
                format!("{same:?} a second time"),
                "a name of its own for each value",
                "write what stands on the machine for each, gear and lever",
            )),
            Some(names) if names.len() == wanted => Ok(names),
            Some(names) => Err(Error::new(
                ErrorKind::Contradiction,
                f.path(name),
                format!("{} names", names.len()),
                format!("{wanted} names, one for each value"),
                "give one name for each, in the same order",
            )),
        }
    }

    /// The names in the order that their values will have once sorted.
    fn in_order<T: Ord>(values: &[T], names: Vec<String>) -> Vec<String> {
        let mut pairs: Vec<_> = values.iter().zip(names).collect();
        pairs.sort_by(|a, b| a.0.cmp(b.0));
        pairs.into_iter().map(|(_, name)| name).collect()
    }

    impl Serialize for Lathe {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let mut out = s.serialize_map(None)?;
            match &self.spindle {
                Spindle::Steps(steps) => out.serialize_entry("spindle_steps", steps)?,
                Spindle::Ranges(ranges) => match ranges.as_slice() {
                    [one] if one.name.is_empty() => out.serialize_entry("spindle_range", one)?,
                    ranges => out.serialize_entry("spindle_ranges", &Named(ranges))?,
                },
            }
            macro_rules! given {
                ($($name:ident)*) => { $(
                    if let Some(value) = &self.$name {
                        out.serialize_entry(stringify!($name), value)?;
                    }
                )* };
            }
            given! { max_spindle_speed chuck_max_speed power efficiency constant_torque_below cross_slide carriage compound }
            if !self.feeds.is_empty() {
                out.serialize_entry("feeds", &self.feeds)?;
            }
            if !self.step_names.is_empty() {
                out.serialize_entry("step_names", &self.step_names)?;
            }
            if !self.feed_names.is_empty() {
                out.serialize_entry("feed_names", &self.feed_names)?;
            }
            given! { change_time swing between_centres }
            out.end()
        }
    }

    struct Named<'a>(&'a [SpeedRange]);

    impl Serialize for Named<'_> {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let mut map = s.serialize_map(Some(self.0.len()))?;
            for range in self.0 {
                map.serialize_entry(&range.name, range)?;
            }
            map.end()
        }
    }

    /// As it was written: two speeds, or an object where the range has a base speed of its own.
    impl Serialize for SpeedRange {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let ends = [self.low, self.high];
            let Some(base) = self.constant_torque_below else {
                return ends.serialize(s);
            };
            let mut map = s.serialize_map(Some(2))?;
            map.serialize_entry("range", &ends)?;
            map.serialize_entry("constant_torque_below", &base)?;
            map.end()
        }
    }
}
