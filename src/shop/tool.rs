//! The tool: its material, its corner and its edges.

use std::fmt;

use super::figure::ToolMaterial;
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, DepthOfCut, EdgeRadius, MinorCuttingEdgeAngle, RakeAngle,
};

/// How far the cutting edge is worn.
///
/// ```
/// use turnwright::shop::tool::EdgeState;
/// assert_eq!(EdgeState::WornOut.name(), "worn_out");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum EdgeState {
    /// Freshly ground, or a new insert.
    Sharp,
    /// Some way through its life, as most edges are.
    Ordinary,
    /// Due for a change.
    WornOut,
}

impl EdgeState {
    /// All of them, sharpest first.
    pub const ALL: [Self; 3] = [Self::Sharp, Self::Ordinary, Self::WornOut];

    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Sharp => "sharp",
            Self::Ordinary => "ordinary",
            Self::WornOut => "worn_out",
        }
    }
}

impl fmt::Display for EdgeState {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// A turning tool, in the terms of ISO 3002-1.
///
/// # Example
/// ```
/// use turnwright::{CornerRadius, CuttingEdgeAngle, Tool, ToolMaterial};
/// let knife = Tool::new(CornerRadius::from_mm(0.4)?, CuttingEdgeAngle::from_degrees(90.0)?)
///     .with_material(ToolMaterial::HighSpeedSteel);
/// assert_eq!(knife.corner_radius().mm(), 0.4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Tool {
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    material: Option<ToolMaterial>,
    corner_radius: CornerRadius,
    cutting_edge_angle: CuttingEdgeAngle,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    minor_cutting_edge_angle: Option<MinorCuttingEdgeAngle>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    rake_angle: Option<RakeAngle>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    edge_radius: Option<EdgeRadius>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    least_depth: Option<DepthOfCut>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    edge: Option<EdgeState>,
}

impl Tool {
    /// A tool with this corner radius r_eps and this cutting edge angle kappa_r.
    #[must_use]
    pub fn new(corner_radius: CornerRadius, cutting_edge_angle: CuttingEdgeAngle) -> Self {
        Self {
            material: None,
            corner_radius,
            cutting_edge_angle,
            minor_cutting_edge_angle: None,
            rake_angle: None,
            edge_radius: None,
            least_depth: None,
            edge: None,
        }
    }

    /// Corner radius r_eps.
    #[must_use]
    pub fn corner_radius(&self) -> CornerRadius {
        self.corner_radius
    }

    /// Cutting edge angle kappa_r.
    #[must_use]
    pub fn cutting_edge_angle(&self) -> CuttingEdgeAngle {
        self.cutting_edge_angle
    }

    crate::shop::setters_and_readers! {
        /// What the tool is made of.
        with_material material: ToolMaterial;
        /// Minor cutting edge angle kappa_r'.
        with_minor_cutting_edge_angle minor_cutting_edge_angle: MinorCuttingEdgeAngle;
        /// Orthogonal rake gamma_o.
        with_rake_angle rake_angle: RakeAngle;
        /// Radius r_n of the rounded cutting edge.
        with_edge_radius edge_radius: EdgeRadius;
        /// The least depth at which this tool still cuts, where the shop knows it.
        with_least_depth least_depth: DepthOfCut;
        /// How far the edge is worn; forces take one that is not told of as sharp.
        with_edge edge: EdgeState;
    }
}

#[cfg(feature = "serde")]
impl Tool {
    pub(crate) fn read(
        tree: &crate::quantity::fields::Tree,
        path: &str,
    ) -> Result<Self, crate::error::Error> {
        let f = crate::quantity::fields::Fields::of(tree, path, "a tool")?;
        let tool = Self {
            material: f.choice(
                "material",
                &[ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide]
                    .map(|material| (material.name(), material)),
            )?,
            corner_radius: f.need_quantity("corner_radius")?,
            cutting_edge_angle: f.need_quantity("cutting_edge_angle")?,
            minor_cutting_edge_angle: f.quantity("minor_cutting_edge_angle")?,
            rake_angle: f.quantity("rake_angle")?,
            edge_radius: f.quantity("edge_radius")?,
            least_depth: f.quantity("least_depth")?,
            edge: f.choice("edge", &EdgeState::ALL.map(|edge| (edge.name(), edge)))?,
        };
        f.finish()?;
        Ok(tool)
    }
}
