//! The quantities of the scalar calls, as C has them: structs of one double.
//!
//! `tw_x` is the quantity whose row is named `x`. Its field is in the trade's unit, in which Rust
//! stores it too, so that nothing is converted on the way.

use super::status::{Failure, tw_status};
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

macro_rules! both_ways {
    ($($c:ident $field:ident $rust:ident)*) => { $(
        impl $c {
            /// The quantity, checked.
            #[inline]
            pub(super) fn read(self) -> Result<quantity::$rust, Error> {
                quantity::$rust::from_trade(self.$field)
            }

            /// The quantity, checked; an error speaks of the argument `name`.
            #[inline]
            #[allow(dead_code)]
            pub(super) fn named(self, name: &str) -> Result<quantity::$rust, Error> {
                self.read().map_err(|error| error.at(name))
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
}

/// The range of a quantity, in its metric unit, as the calls check it: the least and the largest
/// value. Some quantities, such as a corner radius, also allow 0 below the least.
///
/// quantity is a number of enum tw_quantity. Either output may be NULL, not both. After a failure
/// (TW_UNKNOWN_NAME, TW_NULL_POINTER) the outputs are NaN.
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

tuples! { (A, B) (A, B, C) (A, B, C, D, E) }
