//! What stands in the workshop: the things a question names.
//!
//! | file | what |
//! |---|---|
//! | [`material`] | what is cut: its forces, stiffness, growth and cutting speeds, each with source and standing |
//! | [`lathe`] | spindle, drive, slides and feeds |
//! | [`dial`] | the dial of a slide |
//! | [`gauge`] | the measuring instrument |
//! | [`holding`] | chuck and centre |
//! | [`tool`] | the tool's corner and edges |
//! | [`stock`] | the bar |
//! | [`part`], [`surface`] | the part to be made, and each of its diameters |
//!
//! The figures of the catalogue lie in `materials.csv`, one line a material, and are read by the
//! compiler: a line that cannot be read, or holds a figure outside the range of its quantity, is a
//! compile error.

mod catalogue;
mod designation;
pub mod dial;
mod families;
pub(crate) mod figure;
pub mod gauge;
#[cfg(feature = "serde")]
mod given_material;
pub mod holding;
pub mod lathe;
pub mod material;
pub mod part;
mod setters;
pub mod stock;
#[cfg(feature = "proptest")]
mod strategy;
pub mod surface;
pub mod tool;

#[cfg(feature = "serde")]
crate::quantity::fields::deserialize_through_tree!(
    dial::Dial,
    gauge::Gauge,
    holding::Holding,
    lathe::Lathe,
    material::Material,
    part::Part,
    stock::Stock,
    surface::Surface,
    surface::Undercut,
    surface::WantedFinish,
    tool::Tool,
);

pub(crate) use setters::{setters, setters_and_readers};
