//! Whether a tolerance is within reach of a lathe and an instrument.
//!
//! | field | what |
//! |---|---|
//! | `limits` | the zone |
//! | `dial` or `lathe` | the dial of the cross slide, or a lathe with its `cross_slide` |
//! | `instrument` | `"micrometer"`, `"calliper"`, .. or `{ kind, largest_error? or expanded? and k?, resolution?, repeatability? }` |
//! | `measured_before_last_cut?` | true (default), or false: the zero was only touched |
//! | `taken?` | what is taken off the diameter since it was measured or touched |
//! | `spring?`, `spring_of_measured_cut?`, `spring_along?` | spring of the last cut, of the one measured (default: alike), its difference along the part, on the diameter |
//! | `sections?`, `cut?`, `tool?`, `material?`, `youngs_modulus?`, `holding?` | instead of the springs: the bar and the cut, as in `support` |
//! | `expansion?` | where no material is given, for warmth left in the part |
//! | `price_scrap?`, `price_rework?` | for the aim; left out: the middle of the zone |
//! | `least_good?` | the chance of a good part asked for (default 0.95) |
//! | `of?` | `"shaft"` or `"hole"`; left out: as the class of the limits says, else a shaft |

use serde::ser::{Serialize, SerializeMap, Serializer};

use super::aim::limits_and_feature;
use super::bar::sections;
use super::support::cut;
use crate::advice::reach::{LeastNeeded, Reach, ReachAsk, Remedy, SpringWithCentre};
use crate::advice::size_budget::{Reached, SizeAsk};
use crate::advice::support::{SupportAsk, SupportWay};
use crate::error::{Error, ErrorKind};
use crate::physics::aim::Prices;
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::unit::Units;
use crate::quantity::{DiameterError, Probability, Quantity, ThermalExpansion};
use crate::shop::dial::{Dial, DialReads};
use crate::shop::gauge::Gauge;
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::lathe::Lathe;
use crate::shop::material::Material;
use crate::shop::tool::Tool;
use crate::standards::limits::{Feature, Limits};

const FIELDS: &[&str] = &[
    "limits",
    "dial",
    "lathe",
    "instrument",
    "measured_before_last_cut",
    "taken",
    "spring",
    "spring_of_measured_cut",
    "spring_along",
    "sections",
    "cut",
    "tool",
    "material",
    "youngs_modulus",
    "holding",
    "expansion",
    "price_scrap",
    "price_rework",
    "least_good",
    "of",
];

/// A zone, a dial and an instrument.
///
/// ```
/// use turnwright::{
///     document::within_reach::Question, standards::instrument::Instrument, Dial, DialReads, Diameter, Division,
///     DivisionsPerTurn, Limits,
/// };
/// let cross = Dial::new(DialReads::Diameter, Division::from_inch(0.001)?, DivisionsPerTurn::new(100)?);
/// let zone = Limits::new(Diameter::from_inch(1.187)?, Diameter::from_inch(1.188)?)?;
/// let answer = Question::new(zone, cross, Instrument::Micrometer).answer()?;
/// assert!(answer.reach.within_reach);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    limits: Limits,
    dial: Dial,
    compound: Option<Dial>,
    gauge: Gauge,
    touched: bool,
    taken: Option<DiameterError>,
    spring: Option<DiameterError>,
    spring_of_measured_cut: Option<DiameterError>,
    spring_along: Option<DiameterError>,
    expansion: Option<ThermalExpansion>,
    with_centre: Option<SpringWithCentre>,
    prices: Option<Prices>,
    least_good: Option<Probability>,
    feature: Feature,
    units: Units,
    provenance: Provenance,
}

/// Yes or no, with figures.
#[derive(Debug, Clone)]
#[non_exhaustive]
pub struct Answer {
    /// Yes or no, what dominates, what decides, what would help; in a document its fields stand beside
    /// the others.
    pub reach: Reach,
    /// The same for a person.
    pub text: String,
    /// Where the constants come from.
    pub provenance: Provenance,
}

impl Serialize for Answer {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let reach = &self.reach;
        let mut map = s.serialize_map(None)?;
        map.serialize_entry("dominant", &reach.dominant)?;
        map.serialize_entry("within_reach", &reach.within_reach)?;
        map.serialize_entry("good", &reach.outcome.good)?;
        map.serialize_entry("rework", &reach.outcome.rework)?;
        map.serialize_entry("scrap", &reach.outcome.scrap)?;
        map.serialize_entry("aim", &reach.aim)?;
        map.serialize_entry("least_good", &reach.least_good)?;
        map.serialize_entry("combined", &reach.combined)?;
        map.serialize_entry("expanded", &reach.expanded)?;
        map.serialize_entry("shares", &reach.shares)?;
        if let Some(proved) = &reach.proved_good {
            map.serialize_entry("accept_from", &proved.smallest())?;
            map.serialize_entry("accept_to", &proved.largest())?;
        }
        map.serialize_entry("deciding", &reach.deciding)?;
        map.serialize_entry("remedies", &reach.remedies)?;
        if let Some(together) = &reach.together {
            map.serialize_entry("together", together)?;
        }
        map.serialize_entry("least", &reach.least)?;
        map.serialize_entry("text", &self.text)?;
        map.serialize_entry("cautions", &reach.cautions)?;
        map.serialize_entry("provenance", &self.provenance)?;
        map.end()
    }
}

impl Question {
    /// A zone, the dial of a cross slide and an instrument; measured before the last cut, no spring.
    #[must_use]
    pub fn new(limits: Limits, dial: Dial, gauge: impl Into<Gauge>) -> Self {
        Self {
            limits,
            dial,
            compound: None,
            gauge: gauge.into(),
            touched: false,
            taken: None,
            spring: None,
            spring_of_measured_cut: None,
            spring_along: None,
            expansion: None,
            with_centre: None,
            prices: None,
            least_good: None,
            feature: Feature::Shaft,
            units: Units::Metric,
            provenance: Provenance::default(),
        }
    }

    crate::shop::setters! {
        /// With what is taken off the diameter since it was measured or touched.
        with_taken taken: DiameterError;
        /// With the spring of the last cut, on the diameter.
        with_spring spring: DiameterError;
        /// With the spring of the cut that was measured, where it is not that of the last.
        with_spring_of_measured_cut spring_of_measured_cut: DiameterError;
        /// With the difference of the spring along the part, on the diameter.
        with_spring_along spring_along: DiameterError;
        /// With the dial of the compound slide.
        with_compound compound: Dial;
        /// With the expansion of the material.
        with_expansion expansion: ThermalExpansion;
        /// With what a live centre would make of the spring.
        with_centre with_centre: SpringWithCentre;
        /// With prices of scrap and rework.
        with_prices prices: Prices;
        /// With this least chance of a good part.
        with_least_good least_good: Probability;
    }

    /// With a zero that was only touched, and nothing measured since.
    #[must_use]
    pub fn touched_only(mut self) -> Self {
        self.touched = true;
        self
    }

    /// For a shaft or a hole.
    #[must_use]
    pub fn with_feature(mut self, feature: Feature) -> Self {
        self.feature = feature;
        self
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields_of(body, FIELDS)?;
        let (limits, feature) = limits_and_feature(&f)?;
        let (dial, compound) = cross_and_compound(&f)?;
        let gauge = f.need_item("instrument", "what it is measured with", Gauge::read)?;
        let mut question = Self::new(limits, dial, gauge);
        (question.units, question.compound) = (units, compound);
        question.touched = f.flag("measured_before_last_cut")? == Some(false);
        question.taken = f.quantity("taken")?;
        question.spring = f.quantity("spring")?;
        question.spring_of_measured_cut = f.quantity("spring_of_measured_cut")?;
        question.spring_along = f.quantity("spring_along")?;
        question.least_good = f.quantity("least_good")?;
        question.feature = feature;
        question.prices = match (f.quantity("price_scrap")?, f.quantity("price_rework")?) {
            (Some(scrap), Some(rework)) => Some(Prices::new(scrap, rework)),
            (None, None) => None,
            (Some(_), None) => return Err(f.missing("price_rework", "the price of another cut")),
            (None, Some(_)) => return Err(f.missing("price_scrap", "the price of a lost part")),
        };
        let material = f.item("material", Material::read)?;
        question.expansion = match (f.quantity("expansion")?, &material) {
            (Some(given), _) => Some(given),
            (None, Some(material)) => material
                .expansion()
                .map(|alpha| alpha.open("thermal expansion", &mut question.provenance)),
            (None, None) => None,
        };
        question.read_bar(&f, material.as_ref())?;
        for (name, given) in [
            (
                "spring_of_measured_cut",
                question.spring_of_measured_cut.is_some(),
            ),
            ("spring_along", question.spring_along.is_some()),
        ] {
            if given && question.spring.is_none() {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path(name),
                    format!("{name} without spring"),
                    "the spring of the last cut beside it",
                    "add \"spring\", the spring of the last cut on the diameter",
                ));
            }
        }
        if question.touched && question.spring_of_measured_cut.is_some() {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("spring_of_measured_cut"),
                "the spring of a measured cut where nothing is measured",
                "measured_before_last_cut: true, or no such field",
                "strike one of the two",
            ));
        }
        f.finish()?;
        Ok(question)
    }

    /// Springs from a bar and a cut.
    fn read_bar(&mut self, f: &Fields<'_>, material: Option<&Material>) -> Result<(), Error> {
        if !f.has("sections") {
            for name in ["cut", "tool", "holding", "youngs_modulus"] {
                if f.has(name) {
                    return Err(f.missing(
                        "sections",
                        "the sections of the bar, for the spring of this cut",
                    ));
                }
            }
            return Ok(());
        }
        if self.spring.is_some() {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("spring"),
                "both spring and sections",
                "one of the two",
                "give the spring that was measured, or the bar and the cut it follows from",
            ));
        }
        if self.spring_along.is_some() {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("spring_along"),
                "both spring_along and sections",
                "one of the two",
                "strike spring_along: it follows from the bar and the cut",
            ));
        }
        let provenance = &mut self.provenance;
        let modulus = super::bar::modulus(f, material, provenance)?;
        let tool = f.item("tool", Tool::read)?;
        let cut = f.need_item(
            "cut",
            "the last cut: { depth_of_cut, feed } with a tool, or { passive_force }",
            |tree, path| cut(tree, path, material, tool.as_ref(), provenance),
        )?;
        let bar = sections(f)?;
        let holding = f
            .item("holding", Holding::read)?
            .unwrap_or_else(|| Holding::new(HoldingKind::Chuck));
        let now = match holding.kind() {
            _ if !holding.steadies().is_empty() => SupportWay::Steady,
            HoldingKind::Chuck => SupportWay::Chuck,
            HoldingKind::ChuckAndCentre => SupportWay::ChuckAndCentre,
            HoldingKind::BetweenCentres => SupportWay::BetweenCentres,
        };
        let ways = [now, SupportWay::ChuckAndCentre];
        let choice = SupportAsk::new(modulus, &bar, &holding, cut.force, self.limits.tolerance())
            .with_ways(if now == SupportWay::Chuck {
                &ways
            } else {
                &ways[..1]
            })
            .choose(provenance)?;
        let of = |way: SupportWay| {
            let option = choice.options.iter().find(|option| option.holding == way);
            option.map(|option| option.diameter_error)
        };
        // A bar springs least beside its jaws, where it hardly springs at all: the whole of the largest
        // spring may lie between two places along it.
        (self.spring, self.spring_along) = (of(now), of(now));
        if now == SupportWay::Chuck {
            self.with_centre = of(SupportWay::ChuckAndCentre).map(|spring| SpringWithCentre {
                spring,
                along: spring,
            });
        }
        Ok(())
    }

    fn check(&self) -> Result<(), Error> {
        for (name, given, what) in [
            ("taken", self.taken, "what is taken off the diameter"),
            ("spring", self.spring, "the spring of the last cut"),
            (
                "spring_of_measured_cut",
                self.spring_of_measured_cut,
                "the spring of the measured cut",
            ),
            (
                "spring_along",
                self.spring_along,
                "the difference of the spring along the part",
            ),
        ] {
            if let Some(below) = given.filter(|given| given.trade() < 0.0) {
                return Err(Error::new(
                    ErrorKind::OutOfRange,
                    name,
                    below.to_string(),
                    format!("{what}, 0 or more"),
                    "write it without a sign: a bar springs away from the tool, and a cut takes metal off",
                ));
            }
        }
        if let (Some(spring), Some(along)) = (self.spring, self.spring_along)
            && along > spring
        {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "spring_along",
                along.to_string(),
                format!(
                    "at most the spring of the last cut, {spring}: no place springs by less than nothing"
                ),
                "give the spring where it is largest, and how much less it is where it is smallest",
            ));
        }
        if let Some(taken) = self.taken
            && taken.trade() > self.limits.largest().trade()
        {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "taken",
                taken.to_string(),
                format!("less than the part itself, {}", self.limits.largest()),
                "give what is taken off the diameter since it was last measured or touched; measure again nearer to size",
            ));
        }
        Ok(())
    }

    /// Whether it is within reach.
    ///
    /// # Errors
    /// `limits`, beyond the sizes for which the error of the instrument is known; a spring or `taken`
    /// below 0, `spring_along` larger than the spring, `taken` larger than the part.
    pub fn answer(&self) -> Result<Answer, Error> {
        self.check()?;
        let mut provenance = self.provenance.clone();
        let zero = DiameterError::computed_trade(0.0);
        let taken = self.taken.unwrap_or(zero);
        let reached = if self.touched {
            Reached::FromTouch { taken }
        } else {
            Reached::FromMeasured {
                taken,
                spring: self.spring_of_measured_cut.or(self.spring).or(Some(zero)),
            }
        };
        let mut size = SizeAsk::new(self.limits.middle(), &self.dial, self.gauge, reached);
        if let Some(spring) = self.spring {
            size = size.with_spring(spring);
        }
        if let Some(along) = self.spring_along {
            size = size.with_spring_along(along);
        }
        if let Some(expansion) = self.expansion {
            size = size.with_expansion(expansion);
        }
        let mut ask = ReachAsk::new(self.limits, &size)
            .with_feature(self.feature)
            .with_units(self.units);
        if let Some(prices) = self.prices {
            ask = ask.with_prices(prices);
        }
        if let Some(least) = self.least_good {
            ask = ask.with_least_good(least);
        }
        if let Some(centre) = self.with_centre {
            ask = ask.with_centre(centre);
        }
        if let Some(compound) = &self.compound {
            ask = ask.with_compound(compound);
        }
        let reach = ask
            .answer(&mut provenance)
            .map_err(|error| match error.field() {
                "diameter" => error.at("limits"),
                _ => error,
            })?;
        Ok(Answer {
            text: words(&reach, self.units),
            reach,
            provenance,
        })
    }
}

/// The dial of the cross slide: given itself, or with its lathe.
pub(super) fn cross_dial(f: &Fields<'_>) -> Result<Dial, Error> {
    Ok(cross_and_compound(f)?.0)
}

/// The same, with the dial of the compound slide where the lathe has one.
fn cross_and_compound(f: &Fields<'_>) -> Result<(Dial, Option<Dial>), Error> {
    let mut compound = None;
    let (path, dial) = match (f.item("dial", Dial::read)?, f.item("lathe", Lathe::read)?) {
        (Some(dial), None) => (f.path("dial"), dial),
        (None, Some(lathe)) => match lathe.cross_slide() {
            Some(dial) => {
                compound = lathe.compound().cloned();
                (f.path("lathe.cross_slide"), dial.clone())
            }
            None => return Err(f.missing("lathe.cross_slide", "the dial of the cross slide")),
        },
        (None, None) => {
            return Err(f.missing("dial", "the dial of the cross slide, or a lathe with one"));
        }
        (Some(_), Some(_)) => {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("dial"),
                "both dial and lathe",
                "one of the two",
                "keep the lathe, with its cross_slide",
            ));
        }
    };
    if dial.reads() == DialReads::Travel {
        return Err(Error::new(
            ErrorKind::Contradiction,
            format!("{path}.reads"),
            "a dial that reads travel",
            "\"diameter\" or \"radius\"",
            "name what the dial of the cross slide counts",
        ));
    }
    Ok((dial, compound))
}

fn words(reach: &Reach, u: Units) -> String {
    let least = hundredths(100.0 * reach.least_good.trade());
    let places = least.split_once('.').map_or(1, |(_, after)| after.len());
    // A chance that falls short is not rounded up to the one asked for.
    let chance = |good: Probability| {
        let scale = 10_f64.powi(places as i32);
        format!(
            "{:.places$}",
            (scale * 100.0 * good.trade()).floor() / scale
        )
    };
    let most = reach.shares.first().map_or(0.0, |share| share.share);
    let mut text = format!(
        "Most of it comes from {} ({:.0} %). {}: a good part in {} of 100, {least} asked for, aiming at {}; the size \
         is sure to +/- {} (about 95 %).",
        reach.dominant,
        100.0 * most,
        if reach.within_reach {
            "Within reach"
        } else {
            "Out of reach"
        },
        chance(reach.outcome.good),
        reach.aim.people(u),
        reach.expanded.people(u),
    );
    match reach.proved_good {
        Some(zone) => text.push_str(&format!(
            " This instrument proves sizes from {} to {} good.",
            zone.smallest().people(u),
            zone.largest().people(u)
        )),
        None => text.push_str(" This instrument can prove no size of this zone good."),
    }
    for tried in &reach.remedies {
        text.push_str(&format!(
            "\nWith {}: {} of 100, {}.",
            tried.remedy,
            chance(tried.good),
            if tried.enough {
                "enough"
            } else {
                "not enough alone"
            }
        ));
    }
    if let Some(together) = &reach.together {
        let remedies: Vec<String> = together.remedies.iter().map(Remedy::to_string).collect();
        text.push_str(&format!(
            "\nTogether, with {}: {} of 100, {}.",
            remedies.join("; and with "),
            chance(together.good),
            if together.enough {
                "enough"
            } else {
                "and still not enough"
            }
        ));
    }
    if let Some(deciding) = reach.deciding.first() {
        text.push_str(&format!(
            "\nWere {} known perfectly, the answer would be yes.",
            deciding.cause
        ));
    }
    let would_do: Vec<&LeastNeeded> = reach
        .least
        .iter()
        .filter(|least| least.times.is_some())
        .collect();
    for least in &would_do {
        text.push_str(&format!(
            "\nThe least that would do, all else as it is: {}.",
            least.text
        ));
    }
    if would_do.is_empty() {
        let none: Vec<&str> = reach
            .least
            .iter()
            .map(|least| least.text.as_str())
            .collect();
        if !none.is_empty() {
            text.push_str(&format!("\nAll else as it is, {}.", none.join(", ")));
        }
    }
    text
}

/// A share in hundredths, to four places, without zeros at its end.
fn hundredths(share: f64) -> String {
    let text = format!("{share:.4}");
    let text = text.trim_end_matches('0');
    text.trim_end_matches('.').to_owned()
}
