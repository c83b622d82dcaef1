//! What the library promises, a module a promise.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

mod after;
mod bad_input;
mod bars;
mod between_centres;
mod centre_holes;
mod cuts;
mod digits;
mod documents;
mod every_plan;
mod hazards;
mod how_sure;
mod inch;
mod jobs;
mod least_time;
mod limits;
mod parts;
mod picture;
mod plan;
mod readme;
mod refused;
mod rooms;
mod schemas;
mod simulated_lathe;
mod text;
mod two_tools;
mod uncertainty;
mod walks;
mod ways;
