//! Turning on a manual lathe.
pub mod caution;
pub mod error;
pub mod physics;
pub mod provenance;
pub mod quantity;
pub use caution::*;
pub use error::*;
pub use provenance::*;
pub use quantity::dial::*;
pub use quantity::unit;
pub use quantity::unit::Units;
pub use quantity::*;
pub use uom;
