//! What standards say: their tables, as data.
//!
//! | file | question |
//! |---|---|
//! | [`centre_hole`] | which centre holes are there, how deep are they, and which do workshops take for which work? |
//! | [`decision`] | what does a measured size prove? |
//! | [`fit`] | what do a hole and a shaft leave between them? |
//! | [`general_tolerance`] | how far may a length be off when the drawing names no limits? |
//! | [`limits`], [`limit_deviations`] | is a size within its limits, how far do they lie from the nominal size? |
//! | [`tolerance_class`], [`tolerance_grade`] | which limits does a class such as h7 stand for, how wide is a grade? |
//! | [`instrument`] | how far may a measuring instrument be off? |
//! | [`preferred`] | which sizes and speeds are the usual ones? |
//! | [`taper`] | which tapers have a name, and what is their ratio? |
//! | [`texture`] | which grade is a roughness, and over which length is it measured? |
//!
//! Every value was written down from memory, none with its standard open; each table says so, and
//! says which of its values a formula confirms. What to take for a job is decided elsewhere.

#[cfg(feature = "serde")]
crate::quantity::fields::deserialize_through_tree!(
    limits::Limits,
    limits::LengthLimits,
    tolerance_class::ToleranceClass,
);

pub mod centre_hole;
pub mod decision;
pub mod fit;
mod fundamental_deviation;
pub mod general_tolerance;
mod hole_deviation;
pub mod instrument;
pub mod limit_deviations;
pub mod limits;
mod limits_text;
pub mod preferred;
pub(crate) mod stated_limits;
pub mod taper;
pub mod texture;
pub mod tolerance_class;
pub mod tolerance_grade;
