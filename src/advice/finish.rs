//! What makes a real finish rougher than the shape of the tool, and when to say so.

use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::least_chip::{
    LARGEST_EDGE_IN_PROPORTION, LeastChipRegime, LeastChipRoughness, roughness_with_least_chip,
};
use crate::physics::{engagement, least_chip};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{ChipThickness, CornerRadius, CuttingSpeed, Feed, Quantity};
use crate::shop::material::{Material, Prone};
use crate::shop::tool::Tool;

/// How many times rougher than theory a built-up edge leaves the surface.
pub const ROUGHER_BY_BUILT_UP_EDGE: Sourced<&str> = Sourced::new(
    "2 to 5 times",
    "common practice, no source",
    Standing::CommonPractice,
);

/// A caution where a built-up edge is likely at this speed.
///
/// # Example
/// ```
/// use turnwright::{advice::finish::built_up_edge, Material, Provenance, Units};
/// let steel = Material::named("c45")?;
/// let slow = built_up_edge(&steel, "25 m/min".parse()?, Units::Metric, &mut Provenance::default());
/// assert_eq!(slow.map(|caution| caution.code()), Some("built_up_edge"));
/// assert!(built_up_edge(&steel, "120 m/min".parse()?, Units::Metric, &mut Provenance::default()).is_none());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn built_up_edge(
    material: &Material,
    cutting_speed: CuttingSpeed,
    units: Units,
    provenance: &mut Provenance,
) -> Option<Caution> {
    let figure = material.built_up_edge()?;
    provenance.record(
        "built-up edge of the material",
        &figure.value,
        figure.source.clone(),
        figure.standing,
    );
    let band = figure.value.band()?;
    if figure.value.prone() == Prone::No
        || cutting_speed < band.low()
        || cutting_speed > band.high()
    {
        return None;
    }
    let times = provenance.open(
        "roughness with a built-up edge over theory",
        &ROUGHER_BY_BUILT_UP_EDGE,
    );
    let likely = match figure.value.prone() {
        Prone::Weak => "A weak built-up edge is possible",
        _ => "A built-up edge is likely",
    };
    Some(Caution::new(
        Severity::Warning,
        "built_up_edge",
        format!(
            "{likely} between {} and {}: expect a surface {times} as rough as theory. Cut faster than that, or very \
             slowly, or with a cutting fluid and a sharp, polished edge.",
            band.low().people(units),
            band.high().people(units)
        ),
    ))
}

/// The least chip thickness that is known: as given, or from the edge radius of the tool by common
/// practice, with a caution where the edge is too large for the proportion.
///
/// # Example
/// ```
/// use turnwright::{advice::finish::known_least_chip, CornerRadius, CuttingEdgeAngle, Provenance, Tool, Units};
/// let tool = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?);
/// let mut cautions = Vec::new();
/// assert_eq!(known_least_chip(&tool, None, Units::Metric, &mut cautions, &mut Provenance::default()), None);
/// let blunt = tool.with_edge_radius("0.04 mm".parse()?);
/// let least = known_least_chip(&blunt, None, Units::Metric, &mut cautions, &mut Provenance::default());
/// assert_eq!(least, Some("12 um".parse()?));
/// assert_eq!(cautions.len(), 1);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn known_least_chip(
    tool: &Tool,
    given: Option<ChipThickness>,
    units: Units,
    cautions: &mut Vec<Caution>,
    provenance: &mut Provenance,
) -> Option<ChipThickness> {
    if let Some(given) = given {
        provenance.record(
            "least chip thickness",
            &given,
            "given by the asker",
            Standing::Given,
        );
        return Some(given);
    }
    let edge = tool.edge_radius()?;
    provenance.open(
        "least chip thickness over edge radius",
        &engagement::LEAST_CHIP_OVER_EDGE_RADIUS,
    );
    if edge > LARGEST_EDGE_IN_PROPORTION.value {
        let most = provenance.open(
            "largest edge radius with a least chip in proportion",
            &LARGEST_EDGE_IN_PROPORTION,
        );
        cautions.push(Caution::new(
            Severity::Note,
            "large_edge_radius",
            format!(
                "With an edge radius above {} the least chip thickness is overstated: such edges turn finer than this. \
                 Give least_chip_thickness where it was measured.",
                most.people(units)
            ),
        ));
    }
    Some(least_chip::least_chip(
        edge,
        least_chip::LeastChipModel::Practice,
    ))
}

/// The finish with a least chip, and a caution where the feed is below its best.
///
/// # Errors
/// `corner_radius`, when it is zero.
///
/// # Example
/// ```
/// use turnwright::{advice::finish::with_least_chip, Units};
/// let (finish, caution) = with_least_chip("0.03 mm/rev".parse()?, "0.8 mm".parse()?, "5 um".parse()?, Units::Metric)?;
/// assert_eq!(caution.map(|caution| caution.code()), Some("below_best_feed"));
/// assert!(finish.best_feed > "0.03 mm/rev".parse()?);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn with_least_chip(
    feed: Feed,
    corner_radius: CornerRadius,
    least: ChipThickness,
    units: Units,
) -> Result<(LeastChipRoughness, Option<Caution>), Error> {
    let finish = roughness_with_least_chip(feed, corner_radius, least)?;
    let caution = (finish.regime == LeastChipRegime::BelowBestFeed).then(|| {
        Caution::new(
            Severity::Warning,
            "below_best_feed",
            format!(
                "Below a feed of {} a finer feed makes the finish worse, not better: the edge rubs. The height with \
                 a least chip is outside its formula's range here; take about that feed, or a sharper edge.",
                finish.best_feed.people(units)
            ),
        )
    });
    Ok((finish, caution))
}
