//! A budget of uncertainty, and coverage factors.

use std::hint::black_box;

use turnwright::physics::budget::{Budget, Component, coverage_factor};
use turnwright::physics::spread::outcome;
use turnwright::{Feature, Limits};

use crate::tools::{Outcome, near};

/// A budget of ten components with all that is read from it, and the outcome of its spread.
pub fn budgets() -> Outcome<()> {
    const NAMES: [&str; 10] = ["a", "b", "c", "d", "e", "f", "g", "h", "i", "j"];
    const ROUNDS: usize = 2_000;
    let limits = Limits::new("39.961 mm".parse()?, "40 mm".parse()?)?;
    let (confidence, freedom) = ("0.95".parse()?, "9".parse()?);
    let (u, a) = ("0.001 mm".parse()?, "0.004 mm".parse()?);
    let (mut failed, mut good) = (false, 0.0);
    let mut work = || {
        let components = NAMES
            .into_iter()
            .enumerate()
            .map(|(i, name)| {
                if i % 2 == 0 {
                    Component::uniform(name, black_box(a))
                } else {
                    Component::standard(name, black_box(u)).with_degrees_of_freedom(freedom)
                }
            })
            .collect();
        let Ok(budget) = Budget::new(components) else {
            failed = true;
            return;
        };
        let shares: f64 = (0..10).filter_map(|i| budget.share(i)).sum();
        failed |= !near(shares, 1.0);
        black_box((budget.combined(), budget.dominant()));
        black_box(budget.expanded(black_box(confidence)));
        let come_out = outcome(limits, limits.middle(), budget.spread(), Feature::Shaft);
        good = black_box(come_out).good.value();
    };
    let best = (0..ROUNDS).fold(f64::INFINITY, |best, _| {
        let start = std::time::Instant::now();
        for _ in 0..20 {
            work();
        }
        best.min(start.elapsed().as_secs_f64() * 1e9 / 20.0)
    });
    assert!(!failed && good > 0.9);
    println!("budget/ten components     {best:>10.0} ns, goal below 2000");
    let mut factor = 0.0;
    for (nu, p) in [
        ("1.5", "0.95"),
        ("16.75", "0.95"),
        ("16.75", "0.9999"),
        ("1000", "0.9545"),
    ] {
        let (nu, p) = (nu.parse()?, p.parse()?);
        let best = (0..ROUNDS).fold(f64::INFINITY, |best, _| {
            let start = std::time::Instant::now();
            for _ in 0..20 {
                factor += coverage_factor(black_box(Some(nu)), black_box(p)).value();
            }
            best.min(start.elapsed().as_secs_f64() * 1e9 / 20.0)
        });
        println!("budget/coverage_factor {nu} {p} {best:>7.0} ns, goal below 700");
    }
    assert!(factor > 0.0);
    Ok(())
}
