//! The forces of a cut, with every constant that enters them on record.

use crate::error::Error;
use crate::physics::force::{CuttingForces, ForceLaw, NORMAL_RATIO, cutting_forces};
use crate::provenance::Provenance;
use crate::quantity::{DepthOfCut, Feed};
use crate::shop::material::Material;
use crate::shop::tool::Tool;

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

/// The three forces of a cut.
///
/// # Errors
/// `tool.rake_angle`, when it is given: this version does not correct the force for it.
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
    if tool.rake_angle().is_some() {
        return Err(Error::not_offered(
            "tool.rake_angle",
            "a correction of the force for rake",
            "leave the field out: the table's specific force holds for an ordinary rake",
        ));
    }
    let ratio = provenance.open("normal force over main force", &NORMAL_RATIO);
    let (angle, corner) = (tool.cutting_edge_angle(), tool.corner_radius());
    Ok(cutting_forces(
        law(material, provenance),
        depth,
        feed,
        angle,
        corner,
        ratio,
    ))
}
