//! Counts what a thread allocates.

use std::alloc::{GlobalAlloc, Layout, System};
use std::cell::Cell;

struct Counting;

thread_local! {
    static COUNT: Cell<usize> = const { Cell::new(0) };
}

fn count() {
    // A thread that ends allocates once more after its own values are gone.
    let _ = COUNT.try_with(|count| count.set(count.get() + 1));
}

// SAFETY: hands everything on to the system's allocator.
unsafe impl GlobalAlloc for Counting {
    unsafe fn alloc(&self, layout: Layout) -> *mut u8 {
        count();
        unsafe { System.alloc(layout) }
    }
    unsafe fn dealloc(&self, place: *mut u8, layout: Layout) {
        unsafe { System.dealloc(place, layout) }
    }
    unsafe fn realloc(&self, place: *mut u8, layout: Layout, bytes: usize) -> *mut u8 {
        count();
        unsafe { System.realloc(place, layout, bytes) }
    }
}

#[global_allocator]
static COUNTING: Counting = Counting;

/// How often `work` allocates on this thread.
pub fn of<T>(work: impl FnOnce() -> T) -> (T, usize) {
    let before = COUNT.with(Cell::get);
    let done = work();
    (done, COUNT.with(Cell::get) - before)
}
