//! What standards say: their tables, as data.
//!
//! | file | question |
//! |---|---|
//! | [`centre_hole`] | which centre holes are there, how deep are they, and which do workshops take for which work? |
//! | [`decision`] | what does a measured size prove? |
//! | [`general_tolerance`] | how far may a length be off when the drawing names no limits? |
//! | [`limits`] | is a size within its limits? |
//! | [`instrument`] | how far may a measuring instrument be off? |
//! | [`preferred`] | which sizes and speeds are the usual ones? |
//! | [`taper`] | which tapers have a name, and what is their ratio? |
//! | [`texture`] | which grade is a roughness, and over which length is it measured? |
//!
//! Every value was written down from memory, none with its standard open; each table says so, and
//! says which of its values a formula confirms. What to take for a job is decided elsewhere.

#[cfg(feature = "serde")]
crate::quantity::fields::deserialize_through_tree!(limits::Limits, limits::LengthLimits);

pub mod centre_hole;
pub mod decision;
pub mod general_tolerance;
pub mod instrument;
pub mod limits;
pub mod preferred;
pub mod taper;
pub mod texture;
