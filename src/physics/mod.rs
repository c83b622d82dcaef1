//! What nature answers: pure functions of typed quantities, without a decision in them.
//!
//! | file | question |
//! |---|---|
//! | [`speed`] | how fast does the edge pass the work, how long does a cut take? |

//!
//! A function says which standard or book it follows and where it holds, and returns its regime
//! instead of hiding it. Powers, roots of other than two, and trigonometry go through one private
//! module, so that a faster or portable form replaces them in one place.

pub mod speed;
