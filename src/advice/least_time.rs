//! Into which passes a surface is divided so that it takes the least time.
//!
//! Every pass takes whole divisions of the dial, one of the lathe's feeds and one of its spindle steps.
//! The answer is the optimum, not an estimate of it: all ways to divide are weighed by dynamic
//! programming, and none is left out by a rule of thumb.
//!
//! | file | what |
//! |---|---|
//! | `limits` | what a roughing or finishing pass may do |
//! | `case` | which feed on which step a pass may take, up to which diameter |
//! | `programme` | the least time from every number of divisions left |
//! | `lane` | the passes on one step |
//! | `impossible` | the limit to blame where there is no plan |

mod case;
mod impossible;
mod lane;
mod limits;
mod programme;

pub use limits::{ChipWindow, PassLimits};

use super::force::ToolLaw;
use crate::error::{Error, ErrorKind};
use crate::quantity::{DepthOfCut, Diameter, Duration, Feed, Quantity, SpindleSpeed, WorkLength};
use crate::shop::tool::Tool;

/// Most divisions of one surface; the whole travel of a cross slide has fewer.
const MOST_DIVISIONS: u32 = 10_000;

/// How a surface is finished.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Finishing {
    /// One finishing pass.
    One,
    /// Two finishing passes, equal in divisions, feed and step: the first shows what the second will do.
    TwoEqual,
}

impl Finishing {
    fn passes(self) -> usize {
        match self {
            Self::One => 1,
            Self::TwoEqual => 2,
        }
    }
}

/// The metal to take off a surface: whole divisions of the dial above the finished diameter.
///
/// ```
/// use turnwright::advice::least_time::Allowance;
/// let metric = Allowance::new("55 mm".parse()?, "0.05 mm".parse()?, 40, "200 mm".parse()?)?;
/// assert_eq!(metric.stock()?.to_string(), "59 mm");
/// let inch = Allowance::new("2 in".parse()?, "0.001 in".parse()?, 125, "6 in".parse()?)?;
/// assert!((inch.stock()?.inch() - 2.25).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Allowance {
    finished: Diameter,
    division: DepthOfCut,
    divisions: u32,
    length: WorkLength,
}

impl Allowance {
    /// `divisions` of `division` each, in depth, above `finished`, along `length` with the run-in and
    /// run-out.
    ///
    /// # Errors
    /// `divisions` outside of 1 to 10000, or so many that the bar would be of no plausible diameter.
    pub fn new(
        finished: Diameter,
        division: DepthOfCut,
        divisions: u32,
        length: WorkLength,
    ) -> Result<Self, Error> {
        let allowance = Self {
            finished,
            division,
            divisions,
            length,
        };
        if !(1..=MOST_DIVISIONS).contains(&divisions) {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "divisions",
                divisions.to_string(),
                format!("whole divisions from 1 to {MOST_DIVISIONS}"),
                "check the division of the dial and the size of the bar",
            ));
        }
        allowance.stock()?;
        Ok(allowance)
    }

    /// The diameter of the bar.
    ///
    /// # Errors
    /// `divisions`, when it would be of no plausible size; never for an allowance that was made.
    pub fn stock(&self) -> Result<Diameter, Error> {
        Diameter::from_trade(self.size(self.divisions)).map_err(|_| {
            Error::new(
                ErrorKind::Contradiction,
                "divisions",
                format!("{} divisions of {}", self.divisions, self.division),
                format!(
                    "a bar of at most {} {}",
                    Diameter::ROW.largest(),
                    Diameter::ROW.kind().units()[0].text()
                ),
                "check the division of the dial and the number of divisions",
            )
        })
    }

    /// The diameter with `left` divisions above the finished one, in mm.
    fn size(&self, left: u32) -> f64 {
        crate::quantity::round_size(self.finished.mm() + 2.0 * f64::from(left) * self.division.mm())
    }
}

/// One pass of the quickest plan.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TimedPass {
    /// Divisions that the dial goes in.
    pub divisions: u32,
    /// Depth of cut.
    pub depth: DepthOfCut,
    /// The diameter after it.
    pub after: Diameter,
    /// Feed.
    pub feed: Feed,
    /// Spindle step.
    pub spindle_speed: SpindleSpeed,
    /// Time of the pass and what is lost with it, without a change of step before it.
    pub time: Duration,
}

/// The division of a surface that takes the least time.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct LeastTime {
    /// The passes, first to last; the finishing passes are the last ones.
    pub passes: Vec<TimedPass>,
    /// All passes and the changes of step between them.
    pub time: Duration,
}

/// Asks for the passes, feeds and steps that take the least time.
///
/// t = sum over the passes of (l / (f n) + t_lost), and t_change for each change of step between two
///
/// Every pass keeps its limits; speed, power and torque are reckoned at the diameter before it, where
/// they are largest. Of several quickest plans the one with the fewest passes is given; of those, in each
/// pass from the first on, the one with the larger depth, then with the slower step.
///
/// # Units
/// The types carry them; a depth of cut is radial.
/// # Range
/// 1 to 10000 divisions. The time grows with divisions times depths, and times the spindle steps where a
/// change of step costs time; the memory with the divisions (times the steps).
/// # Source
/// Bellman's principle of optimality (dynamic programming), from memory; forces after Kienzle. That of
/// equal plans the one with fewer passes is taken is judgement, no source.
///
/// A plan in the least time goes to the limits it was given: they must leave what the lathe, the holding
/// and the tool really bear. The machine's manual, the rules of the shop and a qualified person come before
/// it.
///
/// # Example
/// An invented bar of 59 mm, to be turned to 55 mm.
/// ```
/// use turnwright::advice::force::tool_law;
/// use turnwright::advice::least_time::{Allowance, Finishing, LeastTimeAsk, PassLimits};
/// use turnwright::{Feed, Material, Provenance, SpindleSpeed, Tool};
/// let tool = Tool::new("0.8 mm".parse()?, "95 deg".parse()?);
/// let law = tool_law(&Material::named("c45")?, &tool, &mut Provenance::default())?;
/// let feeds = [0.05, 0.1, 0.2, 0.3].map(Feed::from_mm_per_rev);
/// let feeds = feeds.into_iter().collect::<Result<Vec<_>, _>>()?;
/// let steps = [160.0, 250.0, 400.0, 630.0].map(SpindleSpeed::from_rpm);
/// let steps = steps.into_iter().collect::<Result<Vec<_>, _>>()?;
/// let metal = Allowance::new("55 mm".parse()?, "0.05 mm".parse()?, 40, "200 mm".parse()?)?;
/// let roughing = PassLimits::new("90 m/min".parse()?).with_power("2 kW".parse()?);
/// let finishing = PassLimits::new("120 m/min".parse()?)
///     .with_largest_feed("0.1 mm/rev".parse()?)
///     .with_least_divisions(4)
///     .with_largest_divisions(10);
/// let plan = LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, roughing)
///     .with_finishing(Finishing::One, finishing)
///     .with_time_per_pass("25 s".parse()?)
///     .with_change_time("40 s".parse()?)
///     .divide()?;
/// assert_eq!(plan.passes.iter().map(|pass| pass.divisions).sum::<u32>(), 40);
/// assert_eq!(plan.passes.last().map(|pass| pass.after.to_string()), Some("55 mm".into()));
/// # Ok::<(), turnwright::Error>(())
/// ```
/// And one in inch, from 2.25 in to 2 in on a dial of 0.001 in:
/// ```
/// use turnwright::advice::force::tool_law;
/// use turnwright::advice::least_time::{Allowance, LeastTimeAsk, PassLimits};
/// use turnwright::{Material, Provenance, Tool};
/// let tool = Tool::new("1/32 in".parse()?, "95 deg".parse()?);
/// let law = tool_law(&Material::named("c45")?, &tool, &mut Provenance::default())?;
/// let feeds = ["0.004 in/rev".parse()?, "0.008 in/rev".parse()?];
/// let steps = ["220 rpm".parse()?, "450 rpm".parse()?];
/// let metal = Allowance::new("2 in".parse()?, "0.001 in".parse()?, 125, "6 in".parse()?)?;
/// let limits = PassLimits::new("300 ft/min".parse()?).with_power("2 hp".parse()?);
/// let plan = LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, limits).divide()?;
/// assert!(plan.passes.iter().all(|pass| feeds.contains(&pass.feed)));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct LeastTimeAsk<'a> {
    metal: Allowance,
    feeds: &'a [Feed],
    steps: &'a [SpindleSpeed],
    law: ToolLaw,
    tool: &'a Tool,
    roughing: PassLimits,
    finishing: Option<(Finishing, PassLimits)>,
    time_per_pass: Option<Duration>,
    change_time: Option<Duration>,
}

impl<'a> LeastTimeAsk<'a> {
    /// The metal, the lathe's feeds and spindle steps in any order, the force of the material under the
    /// tool, and the limits of a roughing pass.
    #[must_use]
    pub fn new(
        metal: Allowance,
        feeds: &'a [Feed],
        steps: &'a [SpindleSpeed],
        law: ToolLaw,
        tool: &'a Tool,
        roughing: PassLimits,
    ) -> Self {
        Self {
            metal,
            feeds,
            steps,
            law,
            tool,
            roughing,
            finishing: None,
            time_per_pass: None,
            change_time: None,
        }
    }

    crate::shop::setters! {
        /// With the time lost with every pass, the last one too: withdrawing, returning, setting the dial.
        with_time_per_pass time_per_pass: Duration;
        /// With the time of a change of spindle step between two passes. The step of the first is set.
        with_change_time change_time: Duration;
    }

    /// With finishing passes at the end, and their limits.
    #[must_use]
    pub fn with_finishing(mut self, finishing: Finishing, limits: PassLimits) -> Self {
        self.finishing = Some((finishing, limits));
        self
    }

    /// The sizes that a pass can leave, the finished one first: the order of
    /// [`PassLimits::with_passive_forces`].
    ///
    /// ```
    /// use turnwright::advice::force::tool_law;
    /// use turnwright::advice::least_time::{Allowance, LeastTimeAsk, PassLimits};
    /// use turnwright::{Material, Provenance, Tool};
    /// let tool = Tool::new("0.4 mm".parse()?, "95 deg".parse()?);
    /// let law = tool_law(&Material::named("c45")?, &tool, &mut Provenance::default())?;
    /// let (feeds, steps) = (["0.1 mm/rev".parse()?], ["250 rpm".parse()?]);
    /// let metal = Allowance::new("20 mm".parse()?, "0.05 mm".parse()?, 3, "80 mm".parse()?)?;
    /// let ask = LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, PassLimits::new("60 m/min".parse()?));
    /// let sizes: Vec<_> = ask.sizes_left().iter().map(|d| d.mm()).collect();
    /// assert_eq!(sizes, [20.0, 20.1, 20.2]);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn sizes_left(&self) -> Vec<Diameter> {
        (0..self.metal.divisions)
            .map(|left| Diameter::computed_trade(self.metal.size(left)))
            .collect()
    }

    /// The division that takes the least time.
    ///
    /// # Errors
    /// `feeds` or `steps`, when none is given or one stands twice; a limit of `roughing` or `finishing`
    /// that contradicts another, or a table of the wrong length; and `Impossible`, with the limit to blame
    /// and the remedy, when no division keeps all limits.
    pub fn divide(&self) -> Result<LeastTime, Error> {
        self.check()?;
        let Some((case, solution)) = self.solve() else {
            return Err(impossible::impossible(self));
        };
        let mut left = self.metal.divisions as usize;
        let passes = solution.cuts.iter().map(|cut| {
            left -= cut.divisions;
            TimedPass {
                divisions: cut.divisions as u32,
                depth: case.depths[cut.divisions],
                after: case.sizes[left],
                feed: case.feeds[cut.pair.feed as usize],
                spindle_speed: case.steps[cut.pair.step as usize].0,
                time: Duration::computed_trade(cut.pair.time),
            }
        });
        Ok(LeastTime {
            passes: passes.collect(),
            time: Duration::computed_trade(solution.seconds),
        })
    }

    /// The quickest plan of a checked question.
    fn solve(&self) -> Option<(case::Case<'_>, programme::Solution)> {
        let all = self.metal.divisions as usize;
        let deepest = |limits: &PassLimits| {
            limits
                .largest_divisions
                .map_or(all, |most| all.min(most as usize))
        };
        let finishing = self.finishing.as_ref();
        let depths =
            deepest(&self.roughing).max(finishing.map_or(0, |(_, limits)| deepest(limits)));
        let case = case::Case::new(self, depths);
        let rough = case::Rules::new(&case, &self.roughing);
        let finish = finishing.map(|(kind, limits)| (*kind, case::Rules::new(&case, limits)));
        let seconds = |time: Option<Duration>| time.map_or(0.0, Duration::seconds);
        let solution = programme::solve(
            &case,
            &rough,
            finish.as_ref().map(|(kind, rules)| (*kind, rules)),
            seconds(self.time_per_pass),
            seconds(self.change_time),
        )?;
        Some((case, solution))
    }

    fn check(&self) -> Result<(), Error> {
        list("feeds", self.feeds, "the feeds of the gearbox")?;
        list("steps", self.steps, "the spindle steps of the lathe")?;
        let left = self.metal.divisions as usize;
        self.roughing
            .check(left, self.steps.len())
            .map_err(|error| error.inside("roughing"))?;
        let Some((kind, limits)) = &self.finishing else {
            return Ok(());
        };
        limits
            .check(left, self.steps.len())
            .map_err(|error| error.inside("finishing"))?;
        if left < kind.passes() {
            return Err(Error::new(
                ErrorKind::Impossible,
                "divisions",
                format!("{left} division for {} finishing passes", kind.passes()),
                "a division or more for each finishing pass",
                "start from a larger bar, use a finer dial, or finish in one pass",
            ));
        }
        Ok(())
    }
}

/// Checks that something is listed, and nothing twice.
fn list<T: Quantity + Ord>(field: &str, values: &[T], what: &str) -> Result<(), Error> {
    let mut sorted = values.to_vec();
    sorted.sort_unstable();
    if values.is_empty() {
        return Err(Error::new(
            ErrorKind::MissingField,
            field,
            "an empty list",
            format!("{what}, at least one"),
            "list those on the plate of the lathe",
        ));
    }
    match sorted.windows(2).find(|pair| pair[0] == pair[1]) {
        Some(pair) => Err(Error::new(
            ErrorKind::Contradiction,
            field,
            format!("{} twice", pair[0]),
            format!("{what}, each once"),
            "leave one of the two out",
        )),
        None => Ok(()),
    }
}
