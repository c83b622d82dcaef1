//! A simulated lathe works from the sheets cut by cut: what it counts is what the sheets promised.

#[path = "simulated/beam.rs"]
mod beam;
