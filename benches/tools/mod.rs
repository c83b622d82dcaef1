//! What the benches share: times in turns, ratios in words, a counting allocator.

use std::alloc::{GlobalAlloc, Layout, System};
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Instant;

pub type Outcome<T> = Result<T, Box<dyn std::error::Error>>;

/// The system's allocator, counting.
struct Counting;

static ALLOCATIONS: AtomicUsize = AtomicUsize::new(0);

// SAFETY: hands everything on to the system's allocator.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        ALLOCATIONS.fetch_add(1, Ordering::Relaxed);
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        unsafe { System.dealloc(place, layout) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// How often `work` allocates.
pub fn allocations(work: impl FnOnce()) -> usize {
    let before = ALLOCATIONS.load(Ordering::Relaxed);
    work();
    ALLOCATIONS.load(Ordering::Relaxed) - before
}

/// Times two sides in turns; the best of `rounds` each, in ns for each of `items`.
pub fn duel(
    rounds: usize,
    items: usize,
    mut ours: impl FnMut(),
    mut peer: impl FnMut(),
) -> [f64; 2] {
    let mut best = [f64::INFINITY; 2];
    for round in 0..rounds {
        let mut time = |side: usize| {
            let start = Instant::now();
            if side == 0 {
                ours();
            } else {
                peer();
            }
            let spent = start.elapsed().as_secs_f64() * 1e9 / items as f64;
            best[side] = best[side].min(spent);
        };
        // Whoever comes first warms the caches: take turns.
        time(round % 2);
        time(1 - round % 2);
    }
    best
}

pub fn report(id: &str, ours: &str, peer: &str, unit: &str, [a, b]: [f64; 2], goal: &str) {
    println!("{id}/{ours:<12} {a:>10.2} {unit}");
    println!(
        "{id}/{peer:<12} {b:>10.2} {unit}    ratio {:.2}, goal {goal}",
        a / b
    );
}

pub fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs()
}
