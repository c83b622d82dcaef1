//! What is asked of a plan.

use super::sheet::Way;
use crate::error::Error;
use crate::physics::aim::Prices;
use crate::quantity::{
    BladeWidth, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Diameter, Feed, PriceRework,
    PriceScrap, PriceStop, Probability, WorkLength,
};
use crate::shop::gauge::Gauge;
use crate::shop::holding::Holding;
use crate::shop::lathe::Lathe;
use crate::shop::material::Material;
use crate::shop::part::Part;
use crate::shop::stock::Stock;
use crate::shop::tool::Tool;

/// What tells where the carriage has to stop for a shoulder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum LengthBy {
    /// The dial of the carriage, at every cut.
    #[default]
    Dial,
    /// A stop on the bed, set by the dial once for each surface.
    Stop,
    /// A dial indicator on the bed, set to 0 by the dial once for each surface.
    Indicator,
}

/// What the person at the lathe prefers.
///
/// ```
/// use turnwright::{plan::Preferences, DepthOfCut};
/// let careful = Preferences::default().with_largest_depth(DepthOfCut::from_mm(0.5)?);
/// assert!(careful.largest_depth().is_some());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Default, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Preferences {
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    largest_depth: Option<DepthOfCut>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    depth: Option<DepthOfCut>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    feed: Option<Feed>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    finish_feed: Option<Feed>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    facing: Option<WorkLength>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    way: Option<Way>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "core::ops::Not::not"))]
    compare_ways: bool,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "core::ops::Not::not"))]
    correct_for_spring: bool,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    parting: Option<BladeWidth>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    instrument: Option<Gauge>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    measuring_stops: Option<u32>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    length_by: Option<LengthBy>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    batch: Option<u32>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    least_good: Option<Probability>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    price_scrap: Option<PriceScrap>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    price_rework: Option<PriceRework>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    price_stop: Option<PriceStop>,
}

/// One job: a bar, the part wanted from it, and what is there to make it with.
///
/// # Example
/// An invented job.
/// ```
/// use turnwright::{
///     plan::Job, CornerRadius, CuttingEdgeAngle, Dial, DialReads, Diameter, Division, DivisionsPerTurn, Lathe,
///     Limits, Material, Part, SpindleSpeed, Stock, Tool, ToolMaterial, Units, WorkLength,
/// };
/// let steps = [125.0, 250.0, 500.0, 1000.0].map(SpindleSpeed::from_rpm);
/// let hundred = DivisionsPerTurn::new(100)?;
/// let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?
///     .with_cross_slide(Dial::new(DialReads::Radius, Division::from_mm(0.02)?, hundred))?
///     .with_carriage(Dial::new(DialReads::Travel, Division::from_mm(0.1)?, DivisionsPerTurn::new(200)?))?;
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?)
///     .with_material(ToolMaterial::HighSpeedSteel);
/// let limits = Limits::new(Diameter::from_mm(29.967)?, Diameter::from_mm(30.0)?)?;
/// let job = Job::new(
///     lathe,
///     tool,
///     Material::named("11SMn30")?,
///     Stock::new(Diameter::from_mm(34.0)?, WorkLength::from_mm(120.0)?),
///     Part::new(Diameter::from_mm(30.0)?, limits, WorkLength::from_mm(70.0)?)?,
/// );
/// let sheet = job.plan(Units::Metric)?;
/// assert!(limits.contains(sheet.expected.diameter));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Job {
    pub(super) lathe: Lathe,
    pub(super) tool: Tool,
    /// Boxed, as the preferences are: most jobs have none, and every job is handed on whole.
    pub(super) roughing_tool: Option<Box<Tool>>,
    pub(super) material: Material,
    pub(super) stock: Stock,
    pub(super) part: Part,
    pub(super) holding: Option<Holding>,
    pub(super) cutting_speed: Option<CuttingSpeed>,
    pub(super) zero_at: Option<Diameter>,
    pub(super) preferences: Option<Box<Preferences>>,
}

impl Job {
    /// A job with all that it needs.
    #[must_use]
    pub fn new(lathe: Lathe, tool: Tool, material: Material, stock: Stock, part: Part) -> Self {
        Self {
            lathe,
            tool,
            roughing_tool: None,
            material,
            stock,
            part,
            holding: None,
            cutting_speed: None,
            zero_at: None,
            preferences: None,
        }
    }

    crate::shop::setters! {
        /// With this way of holding, whatever the figures advise.
        with_holding holding: Holding;
        /// With this cutting speed instead of the middle of the material's band.
        with_cutting_speed cutting_speed: CuttingSpeed;
        /// With the cross dial already zeroed on this measured diameter, which the bar has all along the
        /// length to be turned.
        with_zero_at zero_at: Diameter;
    }

    /// With another tool for roughing: that of the job then makes the finishing cuts only.
    ///
    /// All diameters of a clamping are roughed first and measured; then the tool is changed once, and zeroed anew by
    /// touching each roughed diameter before it is finished.
    ///
    /// An invented job, its corners in inch.
    /// ```
    /// # use turnwright::{plan::Job, CuttingEdgeAngle, Tool, ToolMaterial};
    /// # fn rough_apart(job: Job) -> Result<Job, turnwright::Error> {
    /// let rougher = Tool::new("1/32 in".parse()?, CuttingEdgeAngle::from_degrees(90.0)?)
    ///     .with_material(ToolMaterial::Carbide);
    /// let job = job.with_roughing_tool(rougher);
    /// assert!(job.roughing_tool().is_some());
    /// # Ok(job)
    /// # }
    /// ```
    #[must_use]
    pub fn with_roughing_tool(mut self, tool: Tool) -> Self {
        self.roughing_tool = Some(Box::new(tool));
        self
    }

    /// With preferences.
    #[must_use]
    pub fn with_preferences(mut self, preferences: Preferences) -> Self {
        self.preferences = Some(Box::new(preferences));
        self
    }

    /// The bar.
    #[must_use]
    pub fn stock(&self) -> &Stock {
        &self.stock
    }

    /// The part.
    #[must_use]
    pub fn part(&self) -> &Part {
        &self.part
    }

    /// The lathe.
    #[must_use]
    pub fn lathe(&self) -> &Lathe {
        &self.lathe
    }

    /// The tool that turns, or that only finishes where another one roughs.
    #[must_use]
    pub fn tool(&self) -> &Tool {
        &self.tool
    }

    /// The tool that roughs, where it is another one.
    #[must_use]
    pub fn roughing_tool(&self) -> Option<&Tool> {
        self.roughing_tool.as_deref()
    }

    /// The tool that roughs, whichever it is.
    pub(super) fn rougher(&self) -> &Tool {
        self.roughing_tool().unwrap_or(&self.tool)
    }

    /// True where the tool is changed between roughing and finishing.
    pub(super) fn changes_tools(&self) -> bool {
        self.roughing_tool.is_some()
    }

    /// The fields of the tool that roughs and of the one that finishes.
    pub(super) fn tool_paths(&self) -> [&'static str; 2] {
        match self.changes_tools() {
            true => ["tools.rough", "tools.finish"],
            false => ["tool"; 2],
        }
    }

    /// An error about a tool, told of the one at `path`.
    pub(super) fn names_the_tool(&self, error: Error, path: &str) -> Error {
        match error.field().strip_prefix("tool") {
            Some(rest) if self.changes_tools() && (rest.is_empty() || rest.starts_with('.')) => {
                let field = format!("{path}{rest}");
                error.at(&field)
            }
            _ => error,
        }
    }

    /// The smallest cutting edge angle of its tools: below a right angle an edge runs ahead of its tip.
    pub(super) fn least_edge_angle(&self) -> CuttingEdgeAngle {
        let (one, other) = (
            self.tool.cutting_edge_angle(),
            self.rougher().cutting_edge_angle(),
        );
        if other < one { other } else { one }
    }

    /// What is turned.
    #[must_use]
    pub fn material(&self) -> &Material {
        &self.material
    }

    pub(super) fn corrects_for_spring(&self) -> bool {
        self.preferences
            .as_ref()
            .is_some_and(|preferences| preferences.corrects_for_spring())
    }

    pub(super) fn preference<T: Copy>(
        &self,
        pick: impl Fn(&Preferences) -> Option<T>,
    ) -> Option<T> {
        self.preferences.as_deref().and_then(pick)
    }
}

impl Preferences {
    crate::shop::setters! {
        /// No cut deeper than this.
        with_largest_depth largest_depth: DepthOfCut;
        /// Every roughing cut of this depth, a whole number of marks of the cross dial; the first cut, which is
        /// measured, takes what is over.
        with_depth depth: DepthOfCut;
        /// This feed for roughing.
        with_feed feed: Feed;
        /// This feed for the last two cuts.
        with_finish_feed finish_feed: Feed;
        /// So much to take off the face.
        with_facing facing: WorkLength;
        /// With this way of dividing the metal; without, the readable one.
        with_way way: Way;
        /// With room before the jaws for a parting tool of this width, which parts it off at the end, or, of a bar
        /// that is long enough, before the part is turned round.
        with_parting parting: BladeWidth;
        /// With this number of measuring stops, whatever they are worth.
        with_measuring_stops measuring_stops: u32;
        /// With this to tell where the carriage has to stop; without, its dial.
        with_length_by length_by: LengthBy;
        /// With so many parts made one after the other: the sheet says which of them to measure.
        with_batch batch: u32;
        /// With this least chance of a good part: a mark that gives less is not used.
        with_least_good least_good: Probability;
    }

    /// With what both ways of dividing the metal would cost.
    #[must_use]
    pub fn with_both_ways_compared(mut self) -> Self {
        self.compare_ways = true;
        self
    }

    /// With readings corrected for the spring to expect: the bar springs away in the last cuts, and the
    /// dial is taken to read the size that comes out, not the place of the tip.
    #[must_use]
    pub fn with_correction_for_spring(mut self) -> Self {
        self.correct_for_spring = true;
        self
    }

    /// Whether readings are corrected for the spring to expect.
    #[must_use]
    pub fn corrects_for_spring(&self) -> bool {
        self.correct_for_spring
    }

    /// The way of dividing the metal, if it is given.
    #[must_use]
    pub fn way(&self) -> Option<Way> {
        self.way
    }

    /// Whether both ways are compared.
    #[must_use]
    pub fn compares_ways(&self) -> bool {
        self.compare_ways
    }

    /// Measured with this instrument.
    #[must_use]
    pub fn with_instrument(mut self, instrument: impl Into<Gauge>) -> Self {
        self.instrument = Some(instrument.into());
        self
    }

    /// With what a lost part, another cut and a measuring stop cost, all in one currency; without, they
    /// are reckoned in minutes of work.
    #[must_use]
    pub fn with_prices(mut self, prices: Prices, stop: PriceStop) -> Self {
        self.price_scrap = Some(prices.scrap());
        self.price_rework = Some(prices.rework());
        self.price_stop = Some(stop);
        self
    }

    /// The prices, if they are given.
    #[must_use]
    pub fn prices(&self) -> Option<(Prices, PriceStop)> {
        let prices = Prices::new(self.price_scrap?, self.price_rework?);
        Some((prices, self.price_stop?))
    }

    /// The number of measuring stops, if it is fixed.
    #[must_use]
    pub fn measuring_stops(&self) -> Option<u32> {
        self.measuring_stops
    }

    /// What tells where the carriage has to stop, if it is given.
    #[must_use]
    pub fn length_by(&self) -> Option<LengthBy> {
        self.length_by
    }

    /// How many parts are made one after the other, if it is given.
    #[must_use]
    pub fn batch(&self) -> Option<u32> {
        self.batch
    }

    /// The least chance of a good part, if it is given.
    #[must_use]
    pub fn least_good(&self) -> Option<Probability> {
        self.least_good
    }

    /// No cut deeper than this.
    #[must_use]
    pub fn largest_depth(&self) -> Option<DepthOfCut> {
        self.largest_depth
    }

    /// The depth of every roughing cut, if it is fixed.
    #[must_use]
    pub fn depth(&self) -> Option<DepthOfCut> {
        self.depth
    }

    /// The feed for roughing.
    #[must_use]
    pub fn feed(&self) -> Option<Feed> {
        self.feed
    }

    /// The feed of the last two cuts.
    #[must_use]
    pub fn finish_feed(&self) -> Option<Feed> {
        self.finish_feed
    }

    /// How much to take off the face.
    #[must_use]
    pub fn facing(&self) -> Option<WorkLength> {
        self.facing
    }

    /// The width of the parting tool, if the part is to be parted off.
    #[must_use]
    pub fn parting(&self) -> Option<BladeWidth> {
        self.parting
    }

    /// The measuring instrument.
    #[must_use]
    pub fn instrument(&self) -> Option<Gauge> {
        self.instrument
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::error::ErrorKind;
    use crate::quantity::fields::{Fields, Tree};
    use serde::ser::{Serialize, SerializeStruct, Serializer};

    /// The tools of a job with one for roughing and one for finishing.
    #[derive(serde::Serialize)]
    struct Tools<'a> {
        rough: &'a Tool,
        finish: &'a Tool,
    }

    /// The tool that roughs and the one that finishes.
    fn two_tools(tree: &Tree, path: &str) -> Result<(Tool, Tool), Error> {
        let f = Fields::of(tree, path, "two tools")?;
        let tools = (
            f.need_item("rough", "the tool for roughing", Tool::read)?,
            f.need_item("finish", "the tool for finishing", Tool::read)?,
        );
        f.finish()?;
        Ok(tools)
    }

    impl Serialize for Job {
        fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
            let optional = [
                self.holding.is_some(),
                self.cutting_speed.is_some(),
                self.zero_at.is_some(),
                self.preferences.is_some(),
            ];
            let given = optional.iter().filter(|given| **given).count();
            let mut job = serializer.serialize_struct("Job", 5 + given)?;
            job.serialize_field("lathe", &self.lathe)?;
            match self.roughing_tool() {
                None => job.serialize_field("tool", &self.tool)?,
                Some(rough) => job.serialize_field(
                    "tools",
                    &Tools {
                        rough,
                        finish: &self.tool,
                    },
                )?,
            }
            job.serialize_field("material", &self.material)?;
            job.serialize_field("stock", &self.stock)?;
            job.serialize_field("part", &self.part)?;
            if let Some(holding) = &self.holding {
                job.serialize_field("holding", holding)?;
            }
            if let Some(speed) = &self.cutting_speed {
                job.serialize_field("cutting_speed", speed)?;
            }
            if let Some(zero) = &self.zero_at {
                job.serialize_field("zero_at", zero)?;
            }
            if let Some(preferences) = &self.preferences {
                job.serialize_field("preferences", preferences)?;
            }
            job.end()
        }
    }

    impl Job {
        /// The names of its fields.
        #[cfg(feature = "json")]
        pub(crate) const FIELDS: [&'static str; 10] = [
            "lathe",
            "tool",
            "tools",
            "material",
            "stock",
            "part",
            "holding",
            "cutting_speed",
            "zero_at",
            "preferences",
        ];

        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "a job")?;
            let lathe = f.need_item("lathe", "the lathe", Lathe::read)?;
            let (tool, roughing_tool) = match f.item("tools", two_tools)? {
                Some(_) if f.tree("tool").is_some() => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path("tools"),
                        "\"tools\" beside \"tool\"",
                        "one of the two",
                        "\"tool\" roughs and finishes, \"tools\" has one for each: leave out the other field",
                    ));
                }
                Some((rough, finish)) => (finish, Some(Box::new(rough))),
                None => (
                    f.need_item(
                        "tool",
                        "the tool, or \"tools\" with one to rough and one to finish",
                        Tool::read,
                    )?,
                    None,
                ),
            };
            let job = Self {
                lathe,
                tool,
                roughing_tool,
                material: f.need_item(
                    "material",
                    "a material: its key, a designation, or an object",
                    Material::read,
                )?,
                stock: f.need_item("stock", "the stock: diameter and length", Stock::read)?,
                part: f.need_item("part", "the part: diameter, limits and length", Part::read)?,
                holding: f.item("holding", Holding::read)?,
                cutting_speed: f.quantity("cutting_speed")?,
                zero_at: f.quantity("zero_at")?,
                preferences: f.item("preferences", Preferences::read)?.map(Box::new),
            };
            // For the text of the sheet: the door itself reads them.
            f.choice("units", &[("metric", ()), ("inch", ())])?;
            if path.is_empty() {
                // So it does what is to come with the sheet, which is no matter of the job in a sheet.
                let _ = f.tree("with");
            }
            f.finish()?;
            Ok(job)
        }
    }

    impl Preferences {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "preferences")?;
            let preferences = Self {
                largest_depth: f.quantity("largest_depth")?,
                depth: f.quantity("depth")?,
                feed: f.quantity("feed")?,
                finish_feed: f.quantity("finish_feed")?,
                facing: f.quantity("facing")?,
                parting: f.quantity("parting")?,
                way: f.choice(
                    "way",
                    &[("readable", Way::Readable), ("least_time", Way::LeastTime)],
                )?,
                compare_ways: f.flag("compare_ways")?.unwrap_or(false),
                correct_for_spring: f.flag("correct_for_spring")?.unwrap_or(false),
                instrument: f.item("instrument", Gauge::read)?,
                measuring_stops: f.count("measuring_stops")?,
                length_by: f.choice(
                    "length_by",
                    &[
                        ("dial", LengthBy::Dial),
                        ("stop", LengthBy::Stop),
                        ("indicator", LengthBy::Indicator),
                    ],
                )?,
                batch: f.count("batch")?,
                least_good: f.quantity("least_good")?,
                price_scrap: f.quantity("price_scrap")?,
                price_rework: f.quantity("price_rework")?,
                price_stop: f.quantity("price_stop")?,
            };
            let prices = [
                ("price_scrap", preferences.price_scrap.is_some()),
                ("price_rework", preferences.price_rework.is_some()),
                ("price_stop", preferences.price_stop.is_some()),
            ];
            if let Some((missing, _)) = prices.iter().find(|(_, given)| !given)
                && prices.iter().any(|(_, given)| *given)
            {
                return Err(f.missing(
                    missing,
                    "all three prices, price_scrap, price_rework and price_stop, in one currency",
                ));
            }
            f.finish()?;
            Ok(preferences)
        }
    }
}
