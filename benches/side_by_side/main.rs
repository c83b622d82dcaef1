//! Kernels and doors beside a peer that does the same, in one run: ratios, not times.
//!
//! `cargo bench --bench side_by_side`. Each pair is timed in turns, the best of many rounds counts,
//! and every round asserts its result. The C peer is compiled at the start with `cc -O2` and loaded
//! as the shared library is.

mod budgets;
mod calls;
mod column_door;
mod kernels;
mod plans;
mod raw;
#[path = "../tools/mod.rs"]
mod tools;

use tools::Outcome;

fn main() -> Outcome<()> {
    // `cargo test --benches` passes no `--bench`: run all the same, it is short.
    kernels::kernels()?;
    #[cfg(unix)]
    calls::c::calls()?;
    #[cfg(not(unix))]
    println!(
        "ffi: calls through a shared library are timed on unix only ({} bytes of peer)",
        calls::PEER.len()
    );
    plans::documents()?;
    plans::five_steps()?;
    plans::memory_of_plans()?;
    budgets::budgets()
}
