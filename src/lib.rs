//! Turning on a manual lathe: typed quantities, physics, advice and the whole operation sheet.
//!
//! Someone turns a bar on a manual lathe: clamps it, faces it, picks a spindle speed, touches off,
//! zeroes the dials, takes several cuts, measures before the last one, turns to a length against a
//! shoulder. turnwright computes that job. Every quantity is a type, so that a radius cannot pass for
//! a diameter, nor rpm for m/min, nor a bare number for either; every answer says which limit
//! governed it and where its constants come from.
//!
//! ```
//! use turnwright::{advice::spindle::SpindleAsk, Lathe, SpindleSpeed};
//! # fn main() -> Result<(), turnwright::Error> {
//! let steps = [90.0, 180.0, 355.0, 710.0].map(SpindleSpeed::from_rpm);
//! let lathe = Lathe::with_steps(steps.into_iter().collect::<Result<Vec<_>, _>>()?)?;
//! let choice = SpindleAsk::new(&lathe, "40 mm".parse()?, "30 m/min".parse()?).choose()?;
//! assert_eq!(choice.to_string(), "180 rpm (22.6 m/min) of an ideal 239 rpm, governed by the cutting speed");
//! # Ok(())
//! # }
//! ```
//!
//! # I want ...
//! | ... to know | look at |
//! |---|---|
//! | which spindle step to set | [`advice::spindle`] |
//! | the finish that a feed leaves, or the feed for a finish | [`physics::finish`], [`physics::feed_for_finish`] |
//! | the force, power and torque of a cut | [`physics::force`], [`physics::drive`] |
//! | how far the bar bends | [`physics::bar`] |
//! | whether the drive stalls | [`physics::torque_curve`] |
//! | how far warm work grows, how hard it presses on its centre | [`physics::heat`], [`physics::strut`], [`physics::centre`] |
//! | how long an edge lasts, which cutting speed pays | [`physics::wear`] |
//! | how long a face takes | [`physics::facing`] |
//! | how slide, tailstock or attachment are set for a taper | [`physics::taper`], [`standards::taper`] |
//! | what a tool off centre height does | [`physics::tool_height`] |
//! | how hard the jaws must grip | [`physics::grip`] |
//! | whether the tailstock with a live centre is needed | [`advice::support`] |
//! | which centre hole, how deep | [`advice::centre_hole`] |
//! | the limits of h7 or H7, what a hole and a shaft leave between them | [`standards::tolerance_class`], [`standards::fit`] |
//! | which size to aim at, how likely a part is good | [`physics::aim`], [`physics::spread`] |
//! | how uncertain a size is, after the GUM | [`physics::budget`]; of a turned size [`advice::size_budget`] |
//! | whether a tolerance is within reach, and what would bring it there | [`advice::reach`] |
//! | after which cuts to measure | [`advice::stops`] |
//! | what a measured size proves | [`standards::decision`] |
//! | what a dial reads for a size | [`advice::mark`], [`shop::dial`] |
//! | the sheet as a picture, or as a page to print and tick | `Sheet::pictures`, `Sheet::page` (feature `picture`) |
//! | a whole operation sheet | [`Job`], `document::plan` for its fields as text |
//! | to ask from another language | `document::answer`, `include/turnwright.h` |
//! | random lathes, tools and sizes for property tests | feature `proptest`: `any::<turnwright::Lathe>()` |
//!
//! # The rooms
//! Each uses the rooms before it, never one after it.
//!
//! | room | what |
//! |---|---|
//! | [`error`] | which field, what value, what was expected, how to put it right |
//! | [`caution`] | what a person must be told |
//! | [`provenance`] | where a constant comes from and how far to trust it |
//! | [`quantity`] | the vocabulary: typed quantities, units, text, whole divisions of a dial |
//! | [`standards`] | what standards say: limits, texture grades, centre holes, instruments |
//! | [`shop`] | what stands in the workshop: material, lathe, dial, holding, tool, stock, part |
//! | [`physics`] | what nature answers: speed, force, finish, bar |
//! | [`advice`] | decisions with reasons: step, feed, depth, support, mark |
//! | [`plan`] | the operation sheet: passes, readings, measuring stops |
//! | `document` | questions and answers as JSON text (feature `json`) |
//! | `ffi` | the C doors (feature `capi`; see `include/turnwright.h`) |
//!
//! # Features
//! `json` (default) brings the document door and implies `serde`; `serde` brings the traits on every
//! quantity and shop item; `picture` draws a sheet as SVG and writes it as a page of HTML; `capi` brings the C doors; `proptest` brings strategies for property tests.
#![doc = include_str!("questions.md")]

pub mod error;

pub mod caution;

pub mod provenance;

pub mod quantity;

pub mod standards;

pub mod shop;

pub mod physics;

pub mod advice;

pub mod plan;

#[cfg(feature = "json")]
pub mod document;

#[cfg(feature = "capi")]
pub mod ffi;

pub use uom;

pub use caution::{Caution, Severity};
pub use error::{Error, ErrorKind};
pub use plan::Job;
pub use provenance::{Provenance, Source, Sourced, Standing};
pub use quantity::dial::{Divisions, DivisionsPerTurn, Reading, Slide};
pub use quantity::unit::{self, Units};
pub use quantity::{
    AxialForce, AxialStiffness, BendingMoment, BladeWidth, BrinellHardness, Capability,
    CapabilityIndex, ChamferLeg, ChipArea, ChipThickness, ChipWidth, Clearance, CompoundAngle,
    Confidence, CornerRadius, Correlation, CoverageFactor, CriticalSpeed, CrossSlideAngle, CutOff,
    CuttingEdgeAngle, CuttingSpeed, Deflection, DegreesOfFreedom, Density, DepthOfCut, Diameter,
    DiameterError, Division, Duration, Eccentricity, EdgeLength, EdgeRadius, Efficiency, Engraved,
    Feed, FeedForce, FeedRate, FeedUnevenness, ForceExponent, ForceFactor, ForceScatter, Friction,
    FrictionAngle, GripForce, HalfAngle, HalfWidth, HandwheelRate, HeatShare, IncludedAngle,
    LifeConstant, LifeExponent, LifeScatter, LowerDeviation, MainForce, Mass, MeanPressure,
    MinorCuttingEdgeAngle, NormalRatio, Overhang, PassiveForce, PointSpacing, Position, Power,
    Price, PricePerHour, PriceRework, PriceScrap, PriceStop, Probability, Quantity, Ra, Radius,
    RakeAngle, RemovalRate, Resolution, Rku, RotationalStiffness, Rq, Rsk, Rsm, Rt, RunOut, Rz,
    Sensitivity, SetOver, ShankSize, ShortCutOff, SizeUncertainty, SkinThickness, Slenderness,
    SpecificCuttingForce, SpecificForceAtChip, SpecificHeat, SpindleSpeed, SpringShare,
    StandardUncertainty, Stiffness, TangentialDeflection, TaperRatio, TemperatureRise,
    ThermalExpansion, ThermalGrowth, Tolerance, ToolHeight, ToolLife, Torque, Transmission, Travel,
    UpperDeviation, WorkLength, YoungsModulus,
};
pub use shop::dial::{Dial, DialReads, Ring};
pub use shop::gauge::Gauge;
pub use shop::holding::{Holding, HoldingKind};
pub use shop::lathe::{Lathe, SpeedRange, Spindle};
pub use shop::material::{Material, ToolMaterial};
pub use shop::part::Part;
pub use shop::stock::Stock;
pub use shop::surface::{Surface, Undercut, WantedFinish};
pub use shop::tool::{EdgeState, Tool};
pub use standards::limit_deviations::LimitDeviations;
pub use standards::limits::{Feature, LengthLimits, Limits};
pub use standards::tolerance_class::ToleranceClass;

/// The examples of the README, as tests.
#[cfg(all(doctest, feature = "json"))]
#[doc = include_str!("../README.md")]
struct Readme;
