//! Jobs for the promises about plans: made of the crate's own strategies, so that a downstream crate
//! could do the same.

use proptest::prelude::*;
use proptest::test_runner::{Config, RngSeed};
use turnwright::plan::Job;
use turnwright::shop::material;
use turnwright::{Diameter, Lathe, Limits, Material, Part, Stock, Tool, WorkLength};

/// So many cases, the same in every run: what fails fails again. `PROPTEST_RNG_SEED` takes others.
pub fn config(cases: u32) -> Config {
    let ordinary = Config::default();
    Config {
        cases,
        failure_persistence: None,
        rng_seed: match ordinary.rng_seed {
            RngSeed::Random => RngSeed::Fixed(1),
            asked => asked,
        },
        ..ordinary
    }
}

/// A material that bands of cutting speed are known for.
fn material() -> impl Strategy<Value = Material> {
    let keys: Vec<_> = material::catalogue()
        .filter(|m| m.youngs_modulus().is_some())
        .collect();
    proptest::sample::select(keys)
}

/// Jobs of all kinds; many of them cannot be done, which is for the plan to say.
pub fn job() -> impl Strategy<Value = Job> {
    (
        any::<Lathe>(),
        any::<Tool>(),
        material(),
        (8.0..90.0_f64, 0.6..14.0_f64, 0.012..0.4_f64),
        (10.0..180.0_f64, 10.0..120.0_f64),
    )
        .prop_filter_map(
            "a part smaller than its bar",
            |(lathe, tool, material, (d, metal, zone), (length, grip))| {
                let largest = Diameter::from_mm((d - metal).max(4.0)).ok()?;
                let smallest = Diameter::from_mm(largest.mm() - zone).ok()?;
                let limits = Limits::new(smallest, largest).ok()?;
                let stock = Stock::new(
                    Diameter::from_mm(d).ok()?,
                    WorkLength::from_mm(length + 16.0 + grip).ok()?,
                );
                let part = Part::new(largest, limits, WorkLength::from_mm(length).ok()?).ok()?;
                Some(Job::new(lathe, tool, material, stock, part))
            },
        )
}
