//! What the benches share: times in turns, ratios in words, a counting allocator.

use std::alloc::{GlobalAlloc, Layout, System};
use std::path::{Path, PathBuf};
use std::process::Command;
use std::sync::atomic::{AtomicBool, AtomicIsize, AtomicUsize, Ordering};
use std::time::Instant;

pub type Outcome<T> = Result<T, Box<dyn std::error::Error>>;

/// The system's allocator, counting while somebody wants to know: a count at each allocation would
/// otherwise be timed with the work.
struct Counting;

static WATCHED: AtomicBool = AtomicBool::new(false);
static ALLOCATIONS: AtomicUsize = AtomicUsize::new(0);
static LIVE: AtomicIsize = AtomicIsize::new(0);
static MOST: AtomicIsize = AtomicIsize::new(0);

fn taken(bytes: usize) {
    if WATCHED.load(Ordering::Relaxed) {
        ALLOCATIONS.fetch_add(1, Ordering::Relaxed);
        let bytes = bytes.cast_signed();
        let live = LIVE.fetch_add(bytes, Ordering::Relaxed) + bytes;
        MOST.fetch_max(live, Ordering::Relaxed);
    }
}

fn given_back(bytes: usize) {
    if WATCHED.load(Ordering::Relaxed) {
        LIVE.fetch_sub(bytes.cast_signed(), Ordering::Relaxed);
    }
}

/// Does `work` with the allocator counting from zero.
fn watched<T>(work: impl FnOnce() -> T) -> T {
    ALLOCATIONS.store(0, Ordering::Relaxed);
    LIVE.store(0, Ordering::Relaxed);
    MOST.store(0, Ordering::Relaxed);
    WATCHED.store(true, Ordering::Relaxed);
    let made = work();
    WATCHED.store(false, Ordering::Relaxed);
    made
}

// SAFETY: hands everything on to the system's allocator.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        taken(layout.size());
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        given_back(layout.size());
        unsafe { System.dealloc(place, layout) }
    }
    unsafe fn realloc(&self, place: *mut u8, layout: Layout, bytes: usize) -> *mut u8 {
        given_back(layout.size());
        taken(bytes);
        unsafe { System.realloc(place, layout, bytes) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// How often `work` allocates.
pub fn allocations(work: impl FnOnce()) -> usize {
    watched(work);
    ALLOCATIONS.load(Ordering::Relaxed)
}

/// What `work` makes, the bytes that are still held for it, and the most that were held on the way.
pub fn memory<T>(work: impl FnOnce() -> T) -> (T, usize, usize) {
    let made = watched(work);
    let [held, most] =
        [&LIVE, &MOST].map(|count| count.load(Ordering::Relaxed).max(0).unsigned_abs());
    (made, held, most)
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

/// The shared library that was built with this binary.
pub fn shared_library() -> Outcome<PathBuf> {
    let name = format!(
        "{}turnwright{}",
        std::env::consts::DLL_PREFIX,
        std::env::consts::DLL_SUFFIX
    );
    let found = std::env::current_exe()?
        .ancestors()
        .skip(1)
        .take(3)
        .map(|folder| folder.join(&name))
        .find(|library| library.exists());
    Ok(found.ok_or("the shared library lies nowhere above this binary")?)
}

/// A peer in C, compiled into a shared library.
pub fn compiled(name: &str, source: &str) -> Outcome<PathBuf> {
    let folder = Path::new(env!("CARGO_TARGET_TMPDIR")).join(name);
    std::fs::create_dir_all(&folder)?;
    let (file, library) = (folder.join("peer.c"), folder.join("libpeer.so"));
    std::fs::write(&file, source)?;
    let done = Command::new("cc")
        .args([
            "-O2",
            "-std=c99",
            "-fno-math-errno",
            "-fPIC",
            "-shared",
            "-I",
        ])
        .arg(Path::new(env!("CARGO_MANIFEST_DIR")).join("include"))
        .arg(&file)
        .arg("-o")
        .arg(&library)
        .arg("-lm")
        .status()?;
    if !done.success() {
        return Err("cc does not compile the peer".into());
    }
    Ok(library)
}
