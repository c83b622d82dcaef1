//! The quantities of the scalar calls, as C has them: structs of one double.
//!
//! `tw_x` is the quantity whose row is named `x`. Its field is in the trade's unit, in which Rust
//! stores it too, so that nothing is converted on the way.

use super::status::{Failure, Unsaid, tw_status};
use super::{Answer, put};
use crate::error::{Error, ErrorKind};
use crate::quantity::{self, Quantity, rows};

/// Diameter of the work or of a hole.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_diameter {
    /// Millimetres.
    pub mm: f64,
}

/// Radius of the work: half of its diameter.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_radius {
    /// Millimetres.
    pub mm: f64,
}

/// Depth of cut: radial, so that the diameter falls by twice as much.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_depth_of_cut {
    /// Millimetres.
    pub mm: f64,
}

/// Corner radius of the tool; zero is a sharp corner.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_corner_radius {
    /// Millimetres.
    pub mm: f64,
}

/// Feed: length per revolution.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_feed {
    /// Millimetres per revolution.
    pub mm_per_rev: f64,
}

/// Feed rate: length per time.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_feed_rate {
    /// Millimetres per minute.
    pub mm_per_min: f64,
}

/// Cutting speed: of the edge over the work.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_cutting_speed {
    /// Metres per minute.
    pub m_per_min: f64,
}

/// Spindle speed: revolutions per minute.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_spindle_speed {
    /// Revolutions per minute.
    pub rpm: f64,
}

/// Specific cutting force, for a chip of 1 mm by 1 mm.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_specific_force {
    /// Megapascals, that is N/mm2.
    pub mpa: f64,
}

/// Young's modulus of the work.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_youngs_modulus {
    /// Gigapascals.
    pub gpa: f64,
}

/// Main force, along the cutting speed: it loads the spindle.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_main_force {
    /// Newtons.
    pub n: f64,
}

/// Feed force, against the feed.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_feed_force {
    /// Newtons.
    pub n: f64,
}

/// Passive force, across the feed: it bends the bar.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_passive_force {
    /// Newtons.
    pub n: f64,
}

/// Stiffness of a support: force per displacement.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_stiffness {
    /// Kilonewtons per millimetre.
    pub kn_per_mm: f64,
}

/// Stiffness of a holding against tilting: torque per angle.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rotational_stiffness {
    /// Kilonewton metres per radian.
    pub knm_per_rad: f64,
}

/// Cutting edge angle, between the major edge and the feed direction.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_cutting_edge_angle {
    /// Degrees.
    pub deg: f64,
}

/// Minor cutting edge angle, between the minor edge and the feed direction.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_minor_cutting_edge_angle {
    /// Degrees.
    pub deg: f64,
}

/// Arithmetic mean height of the roughness profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_ra {
    /// Micrometres.
    pub um: f64,
}

/// Root mean square height of the roughness profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rq {
    /// Micrometres.
    pub um: f64,
}

/// Maximum height of the roughness profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rz {
    /// Micrometres.
    pub um: f64,
}

/// Total height of the roughness profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rt {
    /// Micrometres.
    pub um: f64,
}

/// Length along the axis.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_length {
    /// Millimetres.
    pub mm: f64,
}

/// Length by which the bar stands out of the jaws.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_overhang {
    /// Millimetres.
    pub mm: f64,
}

/// Displacement of the bar under load, positive away from the tool.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_deflection {
    /// Millimetres.
    pub mm: f64,
}

/// Exponent of the specific cutting force, a plain number.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_exponent {
    /// The plain number.
    pub ratio: f64,
}

/// Force normal to the edge over the main force, a plain number.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_normal_ratio {
    /// The plain number.
    pub ratio: f64,
}

/// Radius r_n to which the cutting edge itself is rounded.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_edge_radius {
    /// Millimetres.
    pub mm: f64,
}

/// Power.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_power {
    /// Kilowatts.
    pub kw: f64,
}

/// Torque.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_torque {
    /// Newton metres.
    pub nm: f64,
}

/// Mass density.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_density {
    /// Kilograms per cubic metre.
    pub kg_per_m3: f64,
}

/// Coefficient of linear thermal expansion.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_expansion {
    /// Micrometres per metre and kelvin.
    pub um_per_mk: f64,
}

/// Specific heat.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_specific_heat {
    /// Joules per kilogram and kelvin.
    pub j_per_kgk: f64,
}

/// Duration of a cut or a step.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_time {
    /// Seconds.
    pub s: f64,
}

/// Orthogonal rake gamma_o; negative leans forward.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rake_angle {
    /// Degrees.
    pub deg: f64,
}

/// Travel of a slide.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_travel {
    /// Millimetres.
    pub mm: f64,
}

/// What one mark of a dial says, in the dial's own reading.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_division {
    /// Millimetres.
    pub mm: f64,
}

/// What a dial shows: the figure engraved at a mark.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_shows {
    /// Millimetres.
    pub mm: f64,
}

/// Position along the axis: zero on the finished face, negative towards the headstock.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_z {
    /// Millimetres.
    pub mm: f64,
}

/// Difference of two diameters, such as true minus wanted.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_diameter_error {
    /// Millimetres.
    pub mm: f64,
}

/// Width of a tolerance zone.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_tolerance {
    /// Millimetres.
    pub mm: f64,
}

/// Uncertainty or largest error of an instrument.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_instrument_uncertainty {
    /// Millimetres.
    pub mm: f64,
}

/// Nominal thickness of cut h, and the least chip thickness.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_chip_thickness {
    /// Millimetres.
    pub mm: f64,
}

/// Nominal width of cut b.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_chip_width {
    /// Millimetres.
    pub mm: f64,
}

/// Rate of metal removal.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_removal_rate {
    /// Cubic centimetres per minute.
    pub cm3_per_min: f64,
}

/// Rate at which a hand turns a wheel.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_handwheel {
    /// Turns per minute.
    pub turns_per_min: f64,
}

/// Efficiency of the drive, from motor to spindle.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_efficiency {
    /// The plain number.
    pub ratio: f64,
}

/// Overhang over diameter, L/d.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_length_over_diameter {
    /// The plain number.
    pub ratio: f64,
}

/// Brinell hardness, HB.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_hardness_hb {
    /// The plain number.
    pub ratio: f64,
}

/// Rise of temperature above 20 degC, or between two moments; negative while cooling.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rise {
    /// Kelvins.
    pub k: f64,
}

/// Growth of a length or a diameter by heat; negative when it shrinks.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_growth {
    /// Millimetres.
    pub mm: f64,
}

/// Ratio of a taper, the x of 1:x: length over the difference of the diameters.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_taper_ratio {
    /// The plain number.
    pub ratio: f64,
}

/// Half of the angle of a taper, between its side and its axis.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_half_angle {
    /// Degrees.
    pub deg: f64,
}

/// Whole angle of a taper, between its two sides.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_included_angle {
    /// Degrees.
    pub deg: f64,
}

/// Angle of the compound slide to the axis of the lathe.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_compound_angle {
    /// Degrees.
    pub deg: f64,
}

/// How far the tailstock stands off the axis of the lathe, towards the operator.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_set_over {
    /// Millimetres.
    pub mm: f64,
}

/// Life of a cutting edge: time in cut until it is worn out.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_life {
    /// Seconds.
    pub s: f64,
}

/// Exponent n of the tool life, v T^n = C (Taylor).
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_life_exponent {
    /// The plain number.
    pub ratio: f64,
}

/// Constant C of the tool life, v T^n = C (Taylor): the cutting speed for a life of one minute.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_life_constant {
    /// Metres per minute.
    pub m_per_min: f64,
}

/// Force along the axis, positive where the centre is pressed into the work.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_axial_force {
    /// Newtons.
    pub n: f64,
}

/// Stiffness along the axis of what stands at the end of the bar.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_axial_stiffness {
    /// Kilonewtons per millimetre.
    pub kn_per_mm: f64,
}

/// Height of the tool's tip above the axis of the lathe; negative below it.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_tool_height {
    /// Millimetres.
    pub mm: f64,
}

/// First critical speed of the bar: the spindle speed at which it whirls.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_first_critical_speed {
    /// Revolutions per minute.
    pub rpm: f64,
}

/// Unevenness of a feed: standard deviation over mean of the feeds of the single turns.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_feed_unevenness {
    /// The plain number.
    pub ratio: f64,
}

/// Width of the blade of a grooving or parting tool.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_width {
    /// Millimetres.
    pub mm: f64,
}

/// Factor by which a circumstance changes a force.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_force_factor {
    /// The plain number.
    pub ratio: f64,
}

/// Share by which a force scatters, either way.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_force_scatter {
    /// The plain number.
    pub ratio: f64,
}

/// Skewness Rsk of the roughness profile; positive where narrow peaks stand up.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rsk {
    /// The plain number.
    pub ratio: f64,
}

/// Kurtosis Rku of the roughness profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rku {
    /// The plain number.
    pub ratio: f64,
}

/// Mean width RSm of the profile elements.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_rsm {
    /// Millimetres.
    pub mm: f64,
}

/// Long-wave cut-off lambda_c of the profile filter, the sampling length.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_cut_off {
    /// Millimetres.
    pub mm: f64,
}

/// Short-wave cut-off lambda_s of the profile filter.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_short_cut_off {
    /// Millimetres.
    pub mm: f64,
}

/// Moment that bends the bar.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_bending_moment {
    /// Newton metres.
    pub nm: f64,
}

/// Distance of the centre of mass from the axis of turning.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_eccentricity {
    /// Millimetres.
    pub mm: f64,
}

/// Specific cutting force k_c at the thickness of one chip (Kienzle).
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_specific_force_at_chip {
    /// Megapascals, that is N/mm2.
    pub mpa: f64,
}

/// Price, in the asker's currency.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_price {
    /// The plain number.
    pub ratio: f64,
}

/// Price of one hour of machine and operator, in the asker's currency.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_price_per_hour {
    /// The plain number.
    pub ratio: f64,
}

/// Mass.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_mass {
    /// Kilograms.
    pub kg: f64,
}

/// Share of the cutting power that stays in the work as heat.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_heat_share {
    /// The plain number.
    pub ratio: f64,
}

/// Cross section of the uncut chip A_D.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_chip_area {
    /// Square millimetres.
    pub mm2: f64,
}

/// Length of the cutting edge that is in the cut.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_edge_length {
    /// Millimetres.
    pub mm: f64,
}

/// Share of a set depth that a springing bar leaves standing.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_spring_share {
    /// The plain number.
    pub ratio: f64,
}

/// Mean pressure of a centre on its seat.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_mean_pressure {
    /// Megapascals.
    pub mpa: f64,
}

/// Coefficient of friction.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_friction {
    /// The plain number.
    pub ratio: f64,
}

/// Force with which all jaws together press on the work.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_grip_force {
    /// Newtons.
    pub n: f64,
}

/// Width or height of the shank of a tool.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_shank_size {
    /// Millimetres.
    pub mm: f64,
}

/// Scatter of tool lives: standard deviation of their natural logarithms.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_life_scatter {
    /// The plain number.
    pub ratio: f64,
}

/// Angle of the compound slide to the cross slide.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_compound_angle_from_cross_slide {
    /// Degrees.
    pub deg: f64,
}

/// Displacement of the bar along the cutting speed: the main force presses it down.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_tangential_deflection {
    /// Millimetres.
    pub mm: f64,
}

/// Angle of friction beta between chip and rake face: its tangent is the coefficient of friction.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_friction_angle {
    /// Degrees.
    pub deg: f64,
}

/// Distance between neighbouring points of a profile.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_spacing {
    /// Millimetres.
    pub mm: f64,
}

/// Share of a wave that a filter lets through.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_transmission {
    /// The plain number.
    pub ratio: f64,
}

/// Upper limit deviation (ISO 286-1: es of a shaft, ES of a hole): largest size less nominal size.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_upper_deviation {
    /// Millimetres.
    pub mm: f64,
}

/// Lower limit deviation (ISO 286-1: ei of a shaft, EI of a hole): smallest size less nominal size.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_lower_deviation {
    /// Millimetres.
    pub mm: f64,
}

/// Clearance between a hole and a shaft: hole less shaft; negative, an interference.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_clearance {
    /// Millimetres.
    pub mm: f64,
}

/// Standard uncertainty of a size (JCGM 100: u): a standard deviation, not an expanded uncertainty.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_standard_uncertainty {
    /// Millimetres.
    pub mm: f64,
}

/// Probability, from 0 to 1.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_probability {
    /// The plain number.
    pub ratio: f64,
}

/// Level of confidence of an interval (JCGM 100: p).
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_confidence {
    /// The plain number.
    pub ratio: f64,
}

/// Coverage factor (JCGM 100: k): expanded over standard uncertainty.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_coverage_factor {
    /// The plain number.
    pub ratio: f64,
}

/// Degrees of freedom of a standard uncertainty (JCGM 100: nu); whole only where it is counted.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_degrees_of_freedom {
    /// The plain number.
    pub ratio: f64,
}

/// Sensitivity coefficient (JCGM 100: c): change of the size over change of the component.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_sensitivity {
    /// The plain number.
    pub ratio: f64,
}

/// Correlation coefficient of two components (JCGM 100: r).
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_correlation {
    /// The plain number.
    pub ratio: f64,
}

/// Capability of a process (Cp): width of the zone over six standard deviations.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_capability {
    /// The plain number.
    pub ratio: f64,
}

/// Capability of a process with its mean where it is (Cpk): distance of the mean to the nearer limit over three standard deviations.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_capability_index {
    /// The plain number.
    pub ratio: f64,
}

/// Half the width of a distribution that has ends (JCGM 100: a).
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_half_width {
    /// Millimetres.
    pub mm: f64,
}

/// Smallest step that an instrument shows: the whole width of what one reading stands for.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_resolution {
    /// Millimetres.
    pub mm: f64,
}

/// Price of a lost part, in the asker's currency.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_price_scrap {
    /// The plain number.
    pub ratio: f64,
}

/// Price of another cut on a part that came out with metal left, in the asker's currency.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_price_rework {
    /// The plain number.
    pub ratio: f64,
}

/// Price of one measuring stop, in the asker's currency.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_price_stop {
    /// The plain number.
    pub ratio: f64,
}

/// Run-out of a bar or part: the whole travel of an indicator over one turn, twice the eccentricity.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_run_out {
    /// Millimetres.
    pub mm: f64,
}

/// Thickness of the skin of a hot-rolled, forged or cast bar, which the first cut must go under.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_skin_thickness {
    /// Millimetres.
    pub mm: f64,
}

/// Leg of a chamfer of 45 degrees, along the axis and across it alike.
#[repr(C)]
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct tw_chamfer_leg {
    /// Millimetres.
    pub mm: f64,
}

macro_rules! both_ways {
    ($($c:ident $field:ident $rust:ident)*) => { $(
        impl $c {
            /// The quantity, checked.
            #[inline]
            #[allow(dead_code)]
            pub(super) fn read(self) -> Result<quantity::$rust, Unsaid> {
                self.named("")
            }

            /// The quantity, checked; an error speaks of the argument `name`.
            #[inline]
            #[allow(dead_code)]
            pub(super) fn named(self, name: &'static str) -> Result<quantity::$rust, Unsaid> {
                quantity::$rust::accepted(self.$field)
                    .ok_or(Unsaid::range::<quantity::$rust>(self.$field, name))
            }
        }

        impl From<quantity::$rust> for $c {
            #[inline]
            fn from(quantity: quantity::$rust) -> Self {
                Self { $field: quantity.trade() }
            }
        }

        impl Answer for $c {
            const FAILED: Self = Self { $field: f64::NAN };
        }
    )* };
}

both_ways! {
    tw_diameter mm Diameter
    tw_radius mm Radius
    tw_depth_of_cut mm DepthOfCut
    tw_corner_radius mm CornerRadius
    tw_feed mm_per_rev Feed
    tw_feed_rate mm_per_min FeedRate
    tw_cutting_speed m_per_min CuttingSpeed
    tw_spindle_speed rpm SpindleSpeed
    tw_specific_force mpa SpecificCuttingForce
    tw_youngs_modulus gpa YoungsModulus
    tw_main_force n MainForce
    tw_feed_force n FeedForce
    tw_passive_force n PassiveForce
    tw_stiffness kn_per_mm Stiffness
    tw_rotational_stiffness knm_per_rad RotationalStiffness
    tw_cutting_edge_angle deg CuttingEdgeAngle
    tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle
    tw_ra um Ra
    tw_rq um Rq
    tw_rz um Rz
    tw_rt um Rt
    tw_length mm WorkLength
    tw_overhang mm Overhang
    tw_deflection mm Deflection
    tw_exponent ratio ForceExponent
    tw_normal_ratio ratio NormalRatio
    tw_friction_angle deg FrictionAngle
    tw_spacing mm PointSpacing
    tw_transmission ratio Transmission
    tw_tangential_deflection mm TangentialDeflection
    tw_edge_radius mm EdgeRadius
    tw_power kw Power
    tw_torque nm Torque
    tw_density kg_per_m3 Density
    tw_expansion um_per_mk ThermalExpansion
    tw_specific_heat j_per_kgk SpecificHeat
    tw_time s Duration
    tw_rake_angle deg RakeAngle
    tw_travel mm Travel
    tw_division mm Division
    tw_shows mm Engraved
    tw_z mm Position
    tw_diameter_error mm DiameterError
    tw_tolerance mm Tolerance
    tw_instrument_uncertainty mm SizeUncertainty
    tw_chip_thickness mm ChipThickness
    tw_chip_width mm ChipWidth
    tw_removal_rate cm3_per_min RemovalRate
    tw_handwheel turns_per_min HandwheelRate
    tw_efficiency ratio Efficiency
    tw_length_over_diameter ratio Slenderness
    tw_hardness_hb ratio BrinellHardness
    tw_rise k TemperatureRise
    tw_growth mm ThermalGrowth
    tw_taper_ratio ratio TaperRatio
    tw_half_angle deg HalfAngle
    tw_included_angle deg IncludedAngle
    tw_compound_angle deg CompoundAngle
    tw_set_over mm SetOver
    tw_life s ToolLife
    tw_life_exponent ratio LifeExponent
    tw_life_constant m_per_min LifeConstant
    tw_axial_force n AxialForce
    tw_axial_stiffness kn_per_mm AxialStiffness
    tw_tool_height mm ToolHeight
    tw_first_critical_speed rpm CriticalSpeed
    tw_feed_unevenness ratio FeedUnevenness
    tw_width mm BladeWidth
    tw_force_factor ratio ForceFactor
    tw_force_scatter ratio ForceScatter
    tw_rsk ratio Rsk
    tw_rku ratio Rku
    tw_rsm mm Rsm
    tw_cut_off mm CutOff
    tw_short_cut_off mm ShortCutOff
    tw_bending_moment nm BendingMoment
    tw_eccentricity mm Eccentricity
    tw_specific_force_at_chip mpa SpecificForceAtChip
    tw_price ratio Price
    tw_price_per_hour ratio PricePerHour
    tw_mass kg Mass
    tw_heat_share ratio HeatShare
    tw_chip_area mm2 ChipArea
    tw_edge_length mm EdgeLength
    tw_spring_share ratio SpringShare
    tw_mean_pressure mpa MeanPressure
    tw_friction ratio Friction
    tw_grip_force n GripForce
    tw_shank_size mm ShankSize
    tw_life_scatter ratio LifeScatter
    tw_compound_angle_from_cross_slide deg CrossSlideAngle
    tw_upper_deviation mm UpperDeviation
    tw_lower_deviation mm LowerDeviation
    tw_clearance mm Clearance
    tw_standard_uncertainty mm StandardUncertainty
    tw_probability ratio Probability
    tw_confidence ratio Confidence
    tw_coverage_factor ratio CoverageFactor
    tw_degrees_of_freedom ratio DegreesOfFreedom
    tw_sensitivity ratio Sensitivity
    tw_correlation ratio Correlation
    tw_capability ratio Capability
    tw_capability_index ratio CapabilityIndex
    tw_half_width mm HalfWidth
    tw_resolution mm Resolution
    tw_price_scrap ratio PriceScrap
    tw_price_rework ratio PriceRework
    tw_price_stop ratio PriceStop
    tw_run_out mm RunOut
    tw_skin_thickness mm SkinThickness
    tw_chamfer_leg mm ChamferLeg
}

/// The range of a quantity, in its metric unit, as the calls check it: the least and the largest
/// value. Some quantities, such as a corner radius, also allow 0 below the least.
///
/// quantity is a number of enum tw_quantity. Either output may be NULL, not both. After a failure
/// (TW_UNKNOWN_NAME, TW_NULL_POINTER) the outputs are NaN.
///
/// Example: tw_range(TW_QUANTITY_CUTTING_SPEED, &least, &largest); least is 0.1000 and
///     largest is 10000.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_range(quantity: i32, least: *mut f64, largest: *mut f64) -> tw_status {
    super::call(
        std::ptr::null_mut(),
        !(least.is_null() && largest.is_null()),
        || match rows().iter().find(|row| row.code() == quantity) {
            Some(row) => Ok((row.least(), row.largest())),
            None => Err(Failure::from(Error::new(
                ErrorKind::UnknownName,
                "quantity",
                quantity.to_string(),
                "a number of enum tw_quantity",
                "pass one of its names",
            ))),
        },
        |(low, high)| {
            // SAFETY: outputs are NULL or may be written (contract of the header).
            unsafe {
                put(least, low);
                put(largest, high);
            }
        },
    )
}

impl Answer for f64 {
    const FAILED: Self = f64::NAN;
}

impl Answer for i32 {
    const FAILED: Self = 0;
}

macro_rules! tuples {
    ($(($($t:ident),+))*) => { $(
        impl<$($t: Answer),+> Answer for ($($t,)+) {
            const FAILED: Self = ($($t::FAILED,)+);
        }
    )* };
}

tuples! { (A, B) (A, B, C) (A, B, C, D) (A, B, C, D, E) (A, B, C, D, E, F) (A, B, C, D, E, F, G) }
