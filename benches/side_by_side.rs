//! Kernels and doors beside a peer that does the same, in one run: ratios, not times.
//!
//! `cargo bench --bench side_by_side`. Each pair is timed in turns, the best of many rounds counts,
//! and every round asserts its result. The C peer is compiled at the start with `cc -O2` and loaded
//! as the shared library is.

use std::alloc::{GlobalAlloc, Layout, System};
use std::hint::black_box;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::time::Instant;

use turnwright::document::{self, plan::Question};
use turnwright::ffi::{tw_arc_height_column, tw_column, tw_out_column, tw_status};
use turnwright::physics::engagement::ChipSection;
use turnwright::physics::finish::{ToolOutline, arc_height, theoretical_roughness};
use turnwright::physics::force::{ForceLaw, main_force};
use turnwright::unit::kinds;
use turnwright::{
    ChipThickness, ChipWidth, CornerRadius, Feed, ForceExponent, Quantity, Rt,
    SpecificCuttingForce,
};

type Outcome<T> = Result<T, Box<dyn std::error::Error>>;

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
fn allocations(work: impl FnOnce()) -> usize {
    let before = ALLOCATIONS.load(Ordering::Relaxed);
    work();
    ALLOCATIONS.load(Ordering::Relaxed) - before
}

/// Times two sides in turns; the best of `rounds` each, in ns for each of `items`.
fn duel(rounds: usize, items: usize, mut ours: impl FnMut(), mut peer: impl FnMut()) -> [f64; 2] {
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

fn report(id: &str, ours: &str, peer: &str, unit: &str, [a, b]: [f64; 2], goal: &str) {
    println!("{id}/{ours:<12} {a:>10.2} {unit}");
    println!("{id}/{peer:<12} {b:>10.2} {unit}    ratio {:.2}, goal {goal}", a / b);
}

fn near(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * b.abs()
}

/// Feeds of 0.05 to 0.4 mm/rev and corner radii of 0.4 to 1.6 mm, the same every time.
fn rows(count: usize) -> (Vec<f64>, Vec<f64>) {
    let fraction = |row: usize, step: f64| (row as f64 * step).fract();
    (0..count)
        .map(|row| {
            (
                0.05 + 0.35 * fraction(row, 0.618_033_988_749_895),
                0.4 + 1.2 * fraction(row, 0.754_877_666_246_693),
            )
        })
        .unzip()
}

/// R_t in um from mm, on bare numbers.
#[inline]
fn raw_arc_height(feed: f64, radius: f64) -> Option<f64> {
    let quarter = feed * feed / 4.0;
    let below = radius * radius - quarter;
    if below <= 0.0 {
        return None;
    }
    Some(quarter / (radius + below.sqrt()) * 1000.0)
}

/// F_c in N from MPa and mm, on bare numbers.
#[inline]
fn raw_main_force(specific: f64, exponent: f64, thickness: f64, width: f64) -> f64 {
    specific * thickness.powf(-exponent) * width * thickness
}

fn kernels() -> Outcome<()> {
    const ROWS: usize = 100_000;
    let (feeds, radii) = rows(ROWS);
    let typed_feeds: Vec<Feed> = feeds
        .iter()
        .map(|f| Feed::from_mm_per_rev(*f))
        .collect::<Result<_, _>>()?;
    let typed_radii: Vec<CornerRadius> = radii
        .iter()
        .map(|r| CornerRadius::from_mm(*r))
        .collect::<Result<_, _>>()?;
    let mut expected = 0.0;
    for (f, r) in feeds.iter().zip(&radii) {
        expected += raw_arc_height(*f, *r).ok_or("a coarse feed")?;
    }

    let (mut ours, mut peer) = (vec![0.0; ROWS], vec![0.0; ROWS]);
    let times = duel(
        120,
        ROWS,
        || {
            let (feeds, radii) = (black_box(&typed_feeds), black_box(&typed_radii));
            for ((f, r), out) in feeds.iter().zip(radii).zip(&mut ours) {
                *out = arc_height(*f, *r).map_or(f64::NAN, Rt::um);
            }
            assert!(near(black_box(&ours).iter().sum(), expected));
        },
        || {
            let (feeds, radii) = (black_box(&feeds), black_box(&radii));
            for ((f, r), out) in feeds.iter().zip(radii).zip(&mut peer) {
                *out = raw_arc_height(*f, *r).unwrap_or(f64::NAN);
            }
            assert!(near(black_box(&peer).iter().sum(), expected));
        },
    );
    report("physics/arc_height_column", "typed", "raw f64", "ns/row", times, "1.00");

    let (one_feed, one_radius) = (typed_feeds[7], typed_radii[7]);
    let (raw_feed, raw_radius) = (feeds[7], radii[7]);
    let one = raw_arc_height(raw_feed, raw_radius).ok_or("a coarse feed")? * ROWS as f64;
    let times = duel(
        120,
        ROWS,
        || {
            let mut sum = 0.0;
            for _ in 0..ROWS {
                sum += arc_height(black_box(one_feed), black_box(one_radius))
                    .map_or(f64::NAN, Rt::um);
            }
            assert!(near(sum, one));
        },
        || {
            let mut sum = 0.0;
            for _ in 0..ROWS {
                sum += raw_arc_height(black_box(raw_feed), black_box(raw_radius))
                    .unwrap_or(f64::NAN);
            }
            assert!(near(sum, one));
        },
    );
    report("physics/arc_height_scalar", "typed", "raw f64", "ns", times, "1.15");

    let law = ForceLaw::new(
        SpecificCuttingForce::from_mpa(1780.0)?,
        ForceExponent::from_value(0.17)?,
    );
    let chips: Vec<ChipSection> = feeds
        .iter()
        .zip(&radii)
        .map(|(h, b)| Ok(ChipSection::new(ChipThickness::from_mm(*h)?, ChipWidth::from_mm(*b)?)))
        .collect::<Result<_, turnwright::Error>>()?;
    let expected: f64 = feeds
        .iter()
        .zip(&radii)
        .map(|(h, b)| raw_main_force(1780.0, 0.17, *h, *b))
        .sum();
    let times = duel(
        40,
        ROWS,
        || {
            let law = black_box(law);
            for (chip, out) in black_box(&chips).iter().zip(&mut ours) {
                *out = main_force(law, *chip).newton();
            }
            assert!(near(black_box(&ours).iter().sum(), expected));
        },
        || {
            let (specific, exponent) = black_box((1780.0, 0.17));
            let (feeds, radii) = (black_box(&feeds), black_box(&radii));
            for ((h, b), out) in feeds.iter().zip(radii).zip(&mut peer) {
                *out = raw_main_force(specific, exponent, *h, *b);
            }
            assert!(near(black_box(&peer).iter().sum(), expected));
        },
    );
    report("physics/main_force_column", "typed", "raw f64", "ns/row", times, "1.00");

    columns(&feeds, &radii, &typed_feeds, &typed_radii)
}

/// The column door beside the typed loop, and that neither allocates.
fn columns(
    feeds: &[f64],
    radii: &[f64],
    typed_feeds: &[Feed],
    typed_radii: &[CornerRadius],
) -> Outcome<()> {
    let (mut through, mut typed) = (vec![0.0; feeds.len()], vec![0.0; feeds.len()]);
    let unit = |kind: usize| kinds()[kind].units()[0].code();
    let column = |values: &[f64], quantity, unit| tw_column {
        data: values.as_ptr().cast(),
        stride_bytes: 8,
        count: values.len(),
        quantity,
        unit,
    };
    let call = |feeds: &[f64], out: &mut [f64]| {
        let (feed, radius) = (
            column(feeds, Feed::ROW.code(), unit(2)),
            column(radii, CornerRadius::ROW.code(), unit(0)),
        );
        let rt = tw_out_column {
            data: out.as_mut_ptr().cast(),
            stride_bytes: 8,
            count: out.len(),
            quantity: Rt::ROW.code(),
            unit: unit(1),
        };
        // SAFETY: the columns live as long as the call and do not overlap.
        unsafe {
            tw_arc_height_column(
                &feed,
                &radius,
                &rt,
                std::ptr::null_mut(),
                0,
                std::ptr::null_mut(),
            )
        }
    };
    let expected: f64 = feeds
        .iter()
        .zip(radii)
        .filter_map(|(f, r)| raw_arc_height(*f, *r))
        .sum();
    let times = duel(
        60,
        feeds.len(),
        || {
            assert_eq!(call(black_box(feeds), &mut through), tw_status::TW_OK);
            assert!(near(black_box(&through).iter().sum(), expected));
        },
        || {
            let (feeds, radii) = (black_box(typed_feeds), black_box(typed_radii));
            for ((f, r), out) in feeds.iter().zip(radii).zip(&mut typed) {
                *out = arc_height(*f, *r).map_or(f64::NAN, Rt::um);
            }
            assert!(near(black_box(&typed).iter().sum(), expected));
        },
    );
    report("ffi/arc_height_column", "C column", "typed", "ns/row", times, "none set");

    let mut bad = feeds.to_vec();
    bad.iter_mut().step_by(3).for_each(|feed| *feed = f64::NAN);
    bad.iter_mut().step_by(7).for_each(|feed| *feed = 9.0);
    let outline = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "5 deg".parse()?)?;
    let count = allocations(|| {
        assert_eq!(call(&bad, &mut through), tw_status::TW_ROWS_BAD);
        assert_eq!(call(feeds, &mut through), tw_status::TW_OK);
        for ((f, r), out) in typed_feeds.iter().zip(typed_radii).zip(&mut typed) {
            *out = arc_height(*f, *r).map_or(f64::NAN, Rt::um)
                + theoretical_roughness(*f, &outline).ra.um();
        }
    });
    println!("ffi+physics/allocations in 4 columns of {} rows, bad rows among them: {count}, goal 0", feeds.len());
    assert_eq!(count, 0, "a kernel or a column allocates");
    Ok(())
}

fn documents() -> Outcome<()> {
    let fields: toml::Table =
        include_str!("../examples/jobs/metric_radius_dial.toml").parse()?;
    let text = serde_json::json!({ "plan": fields }).to_string();
    let question = Question::from_text(&text)?;
    let sheet = question.answer()?;
    let (printed, answer) = (sheet.to_string(), document::answer(&text)?);
    let answer_tree = serde_json::to_value(&sheet)?;
    let answer_text = serde_json::to_string(&answer_tree)?;
    let fail = |_| String::from("failed");

    const TIMES: usize = 20;
    let [whole, plan] = duel(
        60,
        TIMES,
        || {
            for _ in 0..TIMES {
                let sheet = Question::from_text(black_box(&text)).and_then(|asked| asked.answer());
                assert!(sheet.is_ok_and(|sheet| sheet.to_string() == printed));
            }
        },
        || {
            for _ in 0..TIMES {
                let sheet = black_box(&question).answer();
                assert!(sheet.is_ok_and(|found| found.steps.len() == sheet_steps(&sheet_of(&question))));
            }
        },
    );
    let _ = (whole, plan);
    let _ = (answer, answer_text, fail);
    Ok(())
}
