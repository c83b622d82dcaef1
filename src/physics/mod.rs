//! What nature answers: pure functions of typed quantities, without a decision in them.
//!
//! | file | question |
//! |---|---|
//! | [`speed`] | how fast does the edge pass the work, how long does a cut take? |
//! | [`engagement`] | how thick and wide is the chip, how light may a cut be? |
//! | [`force`] | what force, torque and power does a cut take, what can the drive give? |
//! | [`finish`] | how rough does the tool leave the surface, which feed leaves it so? |
//! | [`bar`] | how far does the bar give way to the tool, and where most? |
//!
//! A function says which standard or book it follows and where it holds, and returns its regime
//! instead of hiding it. Powers, roots of other than two, and trigonometry go through one private
//! module, so that a faster or portable form replaces them in one place.

pub mod bar;
pub mod engagement;
pub mod finish;
pub mod force;
mod maths;
pub mod speed;
