//! The forces of a cut, with every constant that enters them on record.

use crate::error::Error;
use crate::physics::force::{ArcIntegrals, CuttingForces, ForceLaw, NORMAL_RATIO, cutting_forces};
use crate::physics::force_factors::{
    CutKind, REFERENCE_RAKE, REFERENCE_RAKE_CAST_IRON, corrected, corrected_ratio, cut_kind_factor,
    normal_wear_factor, rake_factor, scattered, wear_factor,
};
use crate::physics::parting::parting_forces;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{
    BladeWidth, DepthOfCut, Feed, FeedForce, ForceFactor, ForceScatter, MainForce, NormalRatio,
    PassiveForce,
};
use crate::shop::material::{Iso513Group, Material};
use crate::shop::tool::Tool;

/// Scatter of the specific force from bar to bar, either way.
pub const SCATTER: Sourced<ForceScatter> = Sourced::new(
    ForceScatter::computed_trade(super::support::FORCE_SCATTER.value),
    super::support::FORCE_SCATTER.source,
    super::support::FORCE_SCATTER.standing,
);

/// The law of the specific force of a material.
///
/// # Example
/// ```
/// use turnwright::{advice::force::law, Material, Provenance};
/// let mut provenance = Provenance::default();
/// assert_eq!(law(&Material::named("c45")?, &mut provenance).exponent.value(), 0.14);
/// assert_eq!(provenance.sources().len(), 2);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn law(material: &Material, provenance: &mut Provenance) -> ForceLaw {
    ForceLaw::new(
        material
            .specific_force()
            .open("specific cutting force", provenance),
        material
            .exponent()
            .open("exponent of the specific cutting force", provenance),
    )
}

/// The law of a material under one tool, and the share of the force that is normal to the edge.
///
/// Corrected for the rake and the wear of the tool, where it tells of them; without them the table's
/// figures as they stand.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct ToolLaw {
    /// The law of the main force.
    pub law: ForceLaw,
    /// The force normal to the edge over the main force.
    pub normal_ratio: NormalRatio,
}

/// The law of a material under one tool.
///
/// The rake counts from the one that tables hold for: 2 deg for cast iron (group K of ISO 513), 6 deg
/// for all else, a material of the asker's own included.
///
/// # Errors
/// `tool.rake_angle`, where the correction is not known.
///
/// # Example
/// ```
/// use turnwright::{advice::force::tool_law, CornerRadius, CuttingEdgeAngle, Material, Provenance, Tool};
/// let tool = Tool::new(CornerRadius::from_mm(0.8)?, CuttingEdgeAngle::from_degrees(95.0)?)
///     .with_rake_angle("-4 deg".parse()?);
/// let steep = tool_law(&Material::named("c45")?, &tool, &mut Provenance::default())?;
/// assert!((steep.law.specific_force.mpa() - 1.15 * 2220.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn tool_law(
    material: &Material,
    tool: &Tool,
    provenance: &mut Provenance,
) -> Result<ToolLaw, Error> {
    let normal_ratio = provenance.open("normal force over main force", &NORMAL_RATIO);
    let mut found = ToolLaw {
        law: law(material, provenance),
        normal_ratio,
    };
    if let Some(rake) = tool.rake_angle() {
        let (reference, what) = match material.group() {
            Some(Iso513Group::K) => (
                REFERENCE_RAKE_CAST_IRON,
                "rake that the specific force holds for (cast iron)",
            ),
            _ => (
                REFERENCE_RAKE,
                "rake that the specific force holds for (all but cast iron)",
            ),
        };
        let reference = provenance.open(what, &reference);
        let factor = rake_factor(rake, reference).map_err(|error| error.inside("tool"))?;
        provenance.record(
            "factor of the forces for rake",
            &factor,
            "1 - 0.015 for each degree beyond that rake; from memory of German machining text books, unverified \
             page; some have 0.010",
            Standing::FromMemory,
        );
        found.law = corrected(found.law, factor);
    }
    if let Some(edge) = tool.edge() {
        let main = provenance.open("factor of the main force for wear", &wear_factor(edge));
        let normal = provenance.open(
            "factor of the feed and passive force for wear",
            &normal_wear_factor(edge),
        );
        found.law = corrected(found.law, main);
        found.normal_ratio = corrected_ratio(found.normal_ratio, main, normal);
    }
    Ok(found)
}

impl ToolLaw {
    /// The three forces of a cut with that tool.
    #[must_use]
    pub fn forces(&self, tool: &Tool, depth: DepthOfCut, feed: Feed) -> CuttingForces {
        cutting_forces(
            self.law,
            depth,
            feed,
            tool.cutting_edge_angle(),
            tool.corner_radius(),
            self.normal_ratio,
        )
    }
}

/// The law of a material under one tool, made ready for many cuts with it.
#[derive(Debug, Clone)]
pub(crate) struct ManyCuts {
    pub(crate) law: ToolLaw,
    arcs: ArcIntegrals,
}

impl ManyCuts {
    pub(crate) fn new(law: ToolLaw, tool: &Tool) -> Self {
        let (kappa, radius) = (tool.cutting_edge_angle(), tool.corner_radius());
        Self {
            arcs: ArcIntegrals::new(law.law, kappa, radius, law.normal_ratio),
            law,
        }
    }

    /// As [`ToolLaw::forces`].
    pub(crate) fn forces(&self, depth: DepthOfCut, feed: Feed) -> CuttingForces {
        self.arcs.forces(depth, feed)
    }
}

impl ToolLaw {
    /// The three forces of a grooving or parting blade.
    #[must_use]
    pub fn parting_forces(
        &self,
        width: BladeWidth,
        feed: Feed,
        provenance: &mut Provenance,
    ) -> CuttingForces {
        let shape = provenance.open(
            "factor of the main force for grooving and parting",
            &cut_kind_factor(CutKind::GroovingAndParting),
        );
        parting_forces(self.law, width, feed, shape, self.normal_ratio)
    }
}

/// The three forces of a cut, corrected for the rake and the wear of the tool where it tells of them.
///
/// # Errors
/// `tool.rake_angle`, where the correction is not known.
///
/// # Example
/// ```
/// use turnwright::{advice::force::forces, CornerRadius, CuttingEdgeAngle, DepthOfCut, Feed, Material, Provenance, Tool};
/// let tool = Tool::new(CornerRadius::from_mm(0.8)?, CuttingEdgeAngle::from_degrees(95.0)?);
/// let found = forces(
///     &Material::named("c45")?,
///     &tool,
///     DepthOfCut::from_mm(0.2)?,
///     Feed::from_mm_per_rev(0.1)?,
///     &mut Provenance::default(),
/// )?;
/// assert_eq!(found.main.newton().round(), 69.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn forces(
    material: &Material,
    tool: &Tool,
    depth: DepthOfCut,
    feed: Feed,
    provenance: &mut Provenance,
) -> Result<CuttingForces, Error> {
    Ok(tool_law(material, tool, provenance)?.forces(tool, depth, feed))
}

/// Least and most of each of the three forces, by the scatter from bar to bar.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct ForceRanges {
    /// Main force, least and most.
    pub main_force: [MainForce; 2],
    /// Feed force, least and most.
    pub feed_force: [FeedForce; 2],
    /// Passive force, least and most.
    pub passive_force: [PassiveForce; 2],
}

/// Between which forces a bar of this name lies.
///
/// # Example
/// ```
/// use turnwright::{advice::force::{forces, ranges}, Material, Provenance, Tool};
/// let tool = Tool::new("0.8 mm".parse()?, "95 deg".parse()?);
/// let mut provenance = Provenance::default();
/// let steel = Material::named("c45")?;
/// let found = forces(&steel, &tool, "0.2 mm".parse()?, "0.1 mm/rev".parse()?, &mut provenance)?;
/// let [least, most] = ranges(&found, &mut provenance).main_force;
/// assert!(least < found.main && found.main < most);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn ranges(forces: &CuttingForces, provenance: &mut Provenance) -> ForceRanges {
    let factors = scattered(provenance.open("scatter of the specific force", &SCATTER));
    let times = |newton: f64| {
        let mut ends = factors.map(|factor: ForceFactor| newton * factor.value());
        // A passive force below zero has its least value at the larger factor.
        ends.sort_by(f64::total_cmp);
        ends
    };
    ForceRanges {
        main_force: times(forces.main.newton()).map(MainForce::computed_trade),
        feed_force: times(forces.feed.newton()).map(FeedForce::computed_trade),
        passive_force: times(forces.passive.newton()).map(PassiveForce::computed_trade),
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::shop::tool::EdgeState;

    fn tool() -> Tool {
        Tool::new("0.8 mm".parse().unwrap(), "95 deg".parse().unwrap())
    }

    fn of(material: &str, tool: &Tool) -> (CuttingForces, Provenance) {
        let mut provenance = Provenance::default();
        let found = forces(
            &Material::named(material).unwrap(),
            tool,
            "0.5 mm".parse().unwrap(),
            "0.2 mm/rev".parse().unwrap(),
            &mut provenance,
        );
        (found.unwrap(), provenance)
    }

    #[test]
    fn at_the_reference_rake_and_with_a_sharp_edge_nothing_changes() {
        let plain = of("c45", &tool()).0;
        let told = tool()
            .with_rake_angle("6 deg".parse().unwrap())
            .with_edge(EdgeState::Sharp);
        assert_eq!(of("c45", &told).0, plain);
        // Cast iron has its reference at 2 deg.
        let flat = tool().with_rake_angle("2 deg".parse().unwrap());
        assert_eq!(of("gjl250", &flat).0, of("gjl250", &tool()).0);
    }

    #[test]
    fn rake_changes_all_three_forces_and_stands_in_the_provenance() {
        let (plain, _) = of("c45", &tool());
        let negative = tool().with_rake_angle("-6 deg".parse().unwrap());
        let (steep, provenance) = of("c45", &negative);
        // 1 + 0.015 * 12: from memory of German machining text books, unverified page.
        for (more, less) in [
            (steep.main.newton(), plain.main.newton()),
            (steep.feed.newton(), plain.feed.newton()),
            (steep.passive.newton(), plain.passive.newton()),
        ] {
            assert!((more / less - 1.18).abs() < 1e-12);
        }
        let lines: Vec<_> = provenance.sources().iter().map(|s| &*s.what).collect();
        assert!(lines.contains(&"factor of the forces for rake"));
        assert!(lines.contains(&"rake that the specific force holds for (all but cast iron)"));
    }

    #[test]
    fn wear_grows_feed_and_passive_force_more_than_the_main_force() {
        let (plain, _) = of("c45", &tool());
        let (worn, provenance) = of("c45", &tool().with_edge(EdgeState::WornOut));
        // 1.5: from memory of German machining text books, unverified page; 2: up to double.
        assert!((worn.main.newton() / plain.main.newton() - 1.5).abs() < 1e-12);
        assert!((worn.feed.newton() / plain.feed.newton() - 2.0).abs() < 1e-12);
        assert!((worn.passive.newton() / plain.passive.newton() - 2.0).abs() < 1e-12);
        let factors = provenance.sources().iter();
        assert_eq!(factors.filter(|s| s.what.contains("for wear")).count(), 2);
    }

    #[test]
    fn a_rake_beyond_what_is_known_is_refused() {
        let error = tool_law(
            &Material::named("c45").unwrap(),
            &tool().with_rake_angle("30 deg".parse().unwrap()),
            &mut Provenance::default(),
        );
        assert_eq!(error.unwrap_err().field(), "tool.rake_angle");
    }

    #[test]
    fn a_pulling_passive_force_has_its_range_the_right_way_round() {
        let mut forces = of("c45", &tool()).0;
        forces.passive = PassiveForce::from_newton(-100.0).unwrap();
        let [least, most] = ranges(&forces, &mut Provenance::default()).passive_force;
        assert_eq!((least.newton(), most.newton()), (-130.0, -70.0));
    }
}
