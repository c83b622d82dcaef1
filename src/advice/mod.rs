//! Decisions, each with its reason and with what else was looked at.
//!
//! | file | question |
//! |---|---|
//! | [`spindle`] | which spindle step, which limit governed, what would the neighbours give? |
//! | [`feed`] | which feed for roughing and for the last cuts? |
//! | [`finish`] | what makes a real finish rougher than theory? |
//! | [`force`] | the forces of a cut, corrected for the tool, their constants on record |
//! | [`mark`] | which mark of a dial for a size? |
//! | [`depth`] | the largest depth that every limit allows, the least that is planned |
//! | [`least_time`] | into which passes, feeds and steps, in the least time? |
//! | [`support`] | chuck alone, a live centre, between centres, a steady? |
//! | [`centre_hole`] | which centre hole, how deep, how fast? |
//! | [`chip`] | does a roughing chip break? |
//! | [`parting`] | what must be seen to before a part is parted off? |
//! | [`overhang`] | how far may a tool stand out? |
//! | [`taper`] | what must be said of each way to turn a taper? |
//! | [`heat`], [`tool_life`] | what must be said of warm work, and of a reckoned life? |
//! | [`size_budget`] | what does a turned size rest on, which cause dominates? |
//! | [`reach`] | is a tolerance within reach, and what would bring it there? |
//! | [`stops`] | after which cuts to measure, how many stops are worth it? |
//! | [`diagnosis`] | what does a measured size say went wrong? |
//! | [`fluid`] | which cutting fluid? |
//! | [`hazard`] | what can this material do to a person, what can the lathe not take? |
//! | [`grip`], [`measured_force`] | what must be said beside a reckoned grip, a measured force? |
//!
//! Nothing of nature is computed here: that is physics; here is judgement, and every rule of
//! judgement is a constant with its source or the words `judgement, no source`.

pub mod batch;
pub mod centre_hole;
pub mod chip;
pub mod depth;
pub mod diagnosis;
pub mod feed;
pub mod finish;
pub mod fluid;
pub mod force;
pub mod grip;
pub mod hazard;
pub mod heat;
pub mod least_time;
pub mod mark;
pub mod measured_force;
pub mod overhang;
pub mod parting;
pub mod reach;
pub mod size_budget;
pub mod spindle;
pub mod stops;
pub mod support;
pub mod taper;
pub mod tool_life;
