//! Kernels and doors beside a peer that does the same, in one run: ratios, not times.
//!
//! `cargo bench --bench side_by_side`. Each pair is timed in turns, the best of many rounds counts,
//! and every round asserts its result. The C peer is compiled at the start with `cc -O2` and loaded
//! as the shared library is.

use std::hint::black_box;

use turnwright::advice::diagnosis::SizeAt;
use turnwright::document::{self, plan::Question};
use turnwright::ffi::{tw_arc_height_column, tw_column, tw_out_column, tw_status};
use turnwright::physics::bar::{Bar, Springs, Support, deflection};
use turnwright::physics::budget::{Budget, Component, coverage_factor};
use turnwright::physics::engagement::ChipSection;
use turnwright::physics::finish::{
    ToolOutline, arc_height, arc_height_or_none, theoretical_roughness,
};
use turnwright::physics::force::{ForceLaw, main_force};
use turnwright::physics::heat::diameter_growth;
use turnwright::physics::least_chip::roughness_with_least_chip;
use turnwright::physics::speed::spindle_speed;
use turnwright::physics::spread::outcome;
use turnwright::physics::wear::{LifeLaw, life_at};
use turnwright::plan::StepKind;
use turnwright::unit::kinds;
use turnwright::{
    ChipThickness, ChipWidth, CornerRadius, CuttingSpeed, Deflection, Diameter, Feature, Feed,
    ForceExponent, LifeConstant, LifeExponent, Limits, Overhang, PassiveForce, Quantity, Rt,
    SpecificCuttingForce, ThermalExpansion, ToolLife, WorkLength, YoungsModulus,
};

mod tools;
use tools::{Outcome, allocations, duel, memory, near, report};

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

/// The same with the refusal in words that a caller needs, which keeps a loop from running several
/// rows at once.
#[inline]
fn raw_arc_height_or_words(feed: f64, radius: f64) -> Result<f64, String> {
    #[cold]
    #[inline(never)]
    fn too_coarse(feed: f64, radius: f64) -> String {
        format!("{feed} with {radius}")
    }
    raw_arc_height(feed, radius).ok_or_else(|| too_coarse(feed, radius))
}

/// n in 1/min from m/min and mm, on bare numbers.
#[inline]
fn raw_spindle_speed(cutting_speed: f64, diameter: f64) -> f64 {
    1000.0 * cutting_speed / (std::f64::consts::PI * diameter)
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
                *out = arc_height_or_none(*f, *r).map_or(f64::NAN, Rt::um);
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
    report(
        "physics/arc_height_column",
        "typed",
        "raw f64",
        "ns/row",
        times,
        "1.00",
    );
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
                *out = raw_arc_height_or_words(*f, *r).unwrap_or(f64::NAN);
            }
            assert!(near(black_box(&peer).iter().sum(), expected));
        },
    );
    report(
        "physics/arc_height_column",
        "typed",
        "raw + words",
        "ns/row",
        times,
        "1.00",
    );

    // Cutting speeds of 5 to 40 m/min, diameters of 40 to 160 mm.
    let speeds: Vec<f64> = feeds.iter().map(|f| 100.0 * f).collect();
    let diameters: Vec<f64> = radii.iter().map(|r| 100.0 * r).collect();
    let typed_speeds: Vec<CuttingSpeed> = speeds
        .iter()
        .map(|v| CuttingSpeed::from_m_per_min(*v))
        .collect::<Result<_, _>>()?;
    let typed_diameters: Vec<Diameter> = diameters
        .iter()
        .map(|d| Diameter::from_mm(*d))
        .collect::<Result<_, _>>()?;
    let expected: f64 = speeds
        .iter()
        .zip(&diameters)
        .map(|(v, d)| raw_spindle_speed(*v, *d))
        .sum();
    let times = duel(
        120,
        ROWS,
        || {
            let (speeds, diameters) = (black_box(&typed_speeds), black_box(&typed_diameters));
            for ((v, d), out) in speeds.iter().zip(diameters).zip(&mut ours) {
                *out = spindle_speed(*v, *d).rpm();
            }
            assert!(near(black_box(&ours).iter().sum(), expected));
        },
        || {
            let (speeds, diameters) = (black_box(&speeds), black_box(&diameters));
            for ((v, d), out) in speeds.iter().zip(diameters).zip(&mut peer) {
                *out = raw_spindle_speed(*v, *d);
            }
            assert!(near(black_box(&peer).iter().sum(), expected));
        },
    );
    report(
        "physics/spindle_speed_column",
        "typed",
        "raw f64",
        "ns/row",
        times,
        "1.00",
    );

    let (one_feed, one_radius) = (typed_feeds[7], typed_radii[7]);
    let (raw_feed, raw_radius) = (feeds[7], radii[7]);
    let one = raw_arc_height(raw_feed, raw_radius).ok_or("a coarse feed")? * ROWS as f64;
    let times = duel(
        120,
        ROWS,
        || {
            let mut sum = 0.0;
            for _ in 0..ROWS {
                sum +=
                    arc_height(black_box(one_feed), black_box(one_radius)).map_or(f64::NAN, Rt::um);
            }
            assert!(near(sum, one));
        },
        || {
            let mut sum = 0.0;
            for _ in 0..ROWS {
                sum +=
                    raw_arc_height(black_box(raw_feed), black_box(raw_radius)).unwrap_or(f64::NAN);
            }
            assert!(near(sum, one));
        },
    );
    report(
        "physics/arc_height_scalar",
        "typed",
        "raw f64",
        "ns",
        times,
        "1.15",
    );

    let law = ForceLaw::new(
        SpecificCuttingForce::from_mpa(1780.0)?,
        ForceExponent::from_value(0.17)?,
    );
    let chips: Vec<ChipSection> = feeds
        .iter()
        .zip(&radii)
        .map(|(h, b)| {
            Ok(ChipSection::new(
                ChipThickness::from_mm(*h)?,
                ChipWidth::from_mm(*b)?,
            ))
        })
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
    report(
        "physics/main_force_column",
        "typed",
        "raw f64",
        "ns/row",
        times,
        "1.00",
    );

    more_columns(&feeds, &radii)?;
    columns(&feeds, &radii, &typed_feeds, &typed_radii)
}

/// R_t in um and the best feed in mm with a least chip, on bare numbers, with the regime and the refusal
/// in words that a caller needs.
#[inline]
fn raw_rt_with_least_chip(feed: f64, radius: f64, least: f64) -> Result<(f64, f64, bool), String> {
    #[cold]
    #[inline(never)]
    fn sharp(radius: f64) -> String {
        format!("{radius}")
    }
    if radius <= 0.0 {
        return Err(sharp(radius));
    }
    let rt = feed * feed / (8.0 * radius) + 0.5 * least * (1.0 + radius * least / (feed * feed));
    let best = (2.0 * radius * least).sqrt();
    Ok((rt * 1000.0, best, feed >= best))
}

/// The deflection in mm of a bar in a chuck, on bare numbers: GPa, mm, kN/mm, kN m/rad, N.
#[inline]
fn raw_deflection(
    e: f64,
    d: f64,
    overhang: f64,
    [chuck, tilt]: [Option<f64>; 2],
    force: f64,
    at: f64,
) -> Result<f64, String> {
    #[cold]
    #[inline(never)]
    fn beyond(at: f64, overhang: f64) -> String {
        format!("{at} with {overhang}")
    }
    if at > overhang {
        return Err(beyond(at, overhang));
    }
    let ei = e * 1e3 * std::f64::consts::PI / 64.0 * (d * d) * (d * d);
    let moved = chuck.map_or(0.0, |k| 1.0 / (k * 1e3));
    let tilted = tilt.map_or(0.0, |k| 1.0 / (k * 1e6));
    Ok(force * (at * at * (2.0 * at) / (6.0 * ei) + moved + at * at * tilted))
}

/// One typed kernel over many rows beside its formula on bare numbers; the same rows every time.
fn pair<A: Copy, B: Copy>(
    id: &str,
    (left, right): (&[f64], &[f64]),
    make: impl Fn(f64, f64) -> Result<(A, B), turnwright::Error>,
    typed: impl Fn(A, B) -> f64,
    raw: impl Fn(f64, f64) -> f64,
) -> Outcome<()> {
    let inputs: Vec<(A, B)> = left
        .iter()
        .zip(right)
        .map(|(a, b)| make(*a, *b))
        .collect::<Result<_, _>>()?;
    let bare: Vec<(f64, f64)> = left.iter().copied().zip(right.iter().copied()).collect();
    let expected: f64 = bare.iter().map(|(a, b)| raw(*a, *b)).sum();
    let (mut ours, mut peer) = (vec![0.0; bare.len()], vec![0.0; bare.len()]);
    let times = duel(
        40,
        bare.len(),
        || {
            for ((a, b), out) in black_box(&inputs).iter().zip(&mut ours) {
                *out = typed(*a, *b);
            }
            assert!(near(black_box(&ours).iter().sum(), expected));
        },
        || {
            for ((a, b), out) in black_box(&bare).iter().zip(&mut peer) {
                *out = raw(*a, *b);
            }
            assert!(near(black_box(&peer).iter().sum(), expected));
        },
    );
    report(id, "typed", "raw f64", "ns/row", times, "1.00");
    Ok(())
}

fn more_columns(feeds: &[f64], radii: &[f64]) -> Outcome<()> {
    let rise = "5 K".parse()?;
    pair(
        "physics/diameter_growth_column",
        (radii, feeds),
        |d, alpha| {
            Ok((
                Diameter::from_mm(100.0 * d)?,
                ThermalExpansion::from_um_per_m_k(50.0 * alpha)?,
            ))
        },
        |d, alpha| diameter_growth(d, alpha, rise).mm(),
        |d, alpha| 100.0 * d * (50.0 * alpha) * 1e-6 * 5.0,
    )?;
    let least: ChipThickness = "0.005 mm".parse()?;
    pair(
        "physics/rt_with_least_chip_column",
        (feeds, radii),
        |f, r| Ok((Feed::from_mm_per_rev(f)?, CornerRadius::from_mm(r)?)),
        |f, r| roughness_with_least_chip(f, r, least).map_or(f64::NAN, |found| found.rt.um()),
        |f, r| raw_rt_with_least_chip(f, r, 0.005).map_or(f64::NAN, |found| found.0),
    )?;
    let exponent: LifeExponent = "0.25".parse()?;
    pair(
        "physics/life_column",
        (radii, feeds),
        |c, v| {
            Ok((
                LifeConstant::from_m_per_min(100.0 * c)?,
                CuttingSpeed::from_m_per_min(400.0 * v)?,
            ))
        },
        |c, v| life_at(LifeLaw::new(c, exponent), v).map_or(f64::NAN, ToolLife::seconds),
        |c, v| (100.0 * c / (400.0 * v)).powf(black_box(4.0)) * 60.0,
    )?;
    let (e, force): (YoungsModulus, PassiveForce) = ("210 GPa".parse()?, "100 N".parse()?);
    let springs = Springs::default();
    pair(
        "physics/deflection_column",
        (radii, feeds),
        |d, at| {
            let bar = Bar::new(e, Diameter::from_mm(20.0 * d)?, Overhang::from_mm(200.0)?);
            Ok((bar, WorkLength::from_mm(400.0 * at)?))
        },
        |bar, at| {
            deflection(&bar, Support::Chuck, &springs, force, at).map_or(f64::NAN, Deflection::mm)
        },
        |d, at| {
            raw_deflection(210.0, 20.0 * d, 200.0, [None; 2], 100.0, 400.0 * at).unwrap_or(f64::NAN)
        },
    )
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
    report(
        "ffi/arc_height_column",
        "C column",
        "typed",
        "ns/row",
        times,
        "none set",
    );

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
    println!(
        "ffi+physics/allocations in 4 columns of {} rows, bad rows among them: {count}, goal 0",
        feeds.len()
    );
    assert_eq!(count, 0, "a kernel or a column allocates");
    Ok(())
}

/// The same work in C, with the same checks.
const PEER: &str = r#"
#include <turnwright.h>

static tw_status refused(double *out, tw_status status)
{
    *out = NAN;
    return status;
}

static tw_status out_of_range(double *out, double given)
{
    return refused(out, isfinite(given) ? TW_OUT_OF_RANGE : TW_NOT_FINITE);
}

tw_status peer_arc_height(tw_feed feed, tw_corner_radius radius, tw_rt *rt, tw_error *detail)
{
    double f = feed.mm_per_rev, r = radius.mm, quarter, below;
    if (detail && (detail->struct_size < 8 || detail->struct_size > 4096)) return TW_BAD_STRUCT_SIZE;
    if (!rt) return TW_NULL_POINTER;
    if (!(f >= 0.001 && f <= 10.0)) return out_of_range(&rt->um, f);
    if (!((r >= 0.005 && r <= 50.0) || r == 0.0)) return out_of_range(&rt->um, r);
    quarter = f * f / 4.0;
    below = r * r - quarter;
    if (below <= 0.0) return refused(&rt->um, TW_CONTRADICTION);
    rt->um = quarter / (r + sqrt(below)) * 1000.0;
    if (detail) detail->status = TW_OK;
    return TW_OK;
}

tw_status peer_spindle_speed_for(tw_cutting_speed speed, tw_diameter diameter, tw_spindle_speed *n,
                                 tw_error *detail)
{
    double v = speed.m_per_min, d = diameter.mm;
    if (detail && (detail->struct_size < 8 || detail->struct_size > 4096)) return TW_BAD_STRUCT_SIZE;
    if (!n) return TW_NULL_POINTER;
    if (!(v >= 0.1 && v <= 10000.0)) return out_of_range(&n->rpm, v);
    if (!(d >= 0.1 && d <= 5000.0)) return out_of_range(&n->rpm, d);
    n->rpm = v * 1000.0 / (3.141592653589793 * d);
    if (detail) detail->status = TW_OK;
    return TW_OK;
}
"#;

#[cfg(unix)]
mod c {
    //! Calls through shared libraries, ours and the peer's, loaded the same way.

    use std::ffi::{CString, c_char, c_int, c_void};
    use std::hint::black_box;
    use std::os::unix::ffi::OsStrExt;
    use std::path::Path;

    use turnwright::ffi::{
        tw_corner_radius, tw_cutting_speed, tw_diameter, tw_error, tw_feed, tw_rt, tw_spindle_speed,
    };

    use super::tools::{compiled, shared_library};
    use super::{Outcome, PEER, duel, near, report};

    unsafe extern "C" {
        fn dlopen(path: *const c_char, flags: c_int) -> *mut c_void;
        fn dlsym(library: *mut c_void, name: *const c_char) -> *mut c_void;
    }

    const RTLD_NOW: c_int = 2;

    type ArcHeight =
        unsafe extern "C" fn(tw_feed, tw_corner_radius, *mut tw_rt, *mut tw_error) -> i32;
    type SpindleSpeed = unsafe extern "C" fn(
        tw_cutting_speed,
        tw_diameter,
        *mut tw_spindle_speed,
        *mut tw_error,
    ) -> i32;

    fn load(library: &Path) -> Outcome<*mut c_void> {
        let path = CString::new(library.as_os_str().as_bytes())?;
        // SAFETY: a NUL-ended path.
        let handle = unsafe { dlopen(path.as_ptr(), RTLD_NOW) };
        if handle.is_null() {
            return Err(format!("{} does not load", library.display()).into());
        }
        Ok(handle)
    }

    fn symbol(library: *mut c_void, name: &str) -> Outcome<*mut c_void> {
        let name = CString::new(name)?;
        // SAFETY: a library that is loaded, and a NUL-ended name.
        let place = unsafe { dlsym(library, name.as_ptr()) };
        if place.is_null() {
            return Err(format!("{name:?} is not in the library").into());
        }
        Ok(place)
    }

    pub fn calls() -> Outcome<()> {
        const TIMES: usize = 100_000;
        let (ours, peer) = (
            load(&shared_library()?)?,
            load(&compiled("side_by_side", PEER)?)?,
        );
        // SAFETY: functions of these types, by the header.
        let arc = unsafe {
            [
                std::mem::transmute::<*mut c_void, ArcHeight>(symbol(ours, "tw_arc_height")?),
                std::mem::transmute::<*mut c_void, ArcHeight>(symbol(peer, "peer_arc_height")?),
            ]
        };
        // SAFETY: as above.
        let speed = unsafe {
            [
                std::mem::transmute::<*mut c_void, SpindleSpeed>(symbol(
                    ours,
                    "tw_spindle_speed_for",
                )?),
                std::mem::transmute::<*mut c_void, SpindleSpeed>(symbol(
                    peer,
                    "peer_spindle_speed_for",
                )?),
            ]
        };
        let arc_calls = |call: ArcHeight| {
            let mut rt = tw_rt { um: 0.0 };
            for _ in 0..TIMES {
                let (feed, radius) = black_box((0.2, 0.8));
                // SAFETY: the output lives as long as the call.
                let status = unsafe {
                    call(
                        tw_feed { mm_per_rev: feed },
                        tw_corner_radius { mm: radius },
                        &mut rt,
                        std::ptr::null_mut(),
                    )
                };
                assert!(status == 0 && near(rt.um, 6.274_606_680_621_9));
            }
        };
        let speed_calls = |call: SpindleSpeed| {
            let mut n = tw_spindle_speed { rpm: 0.0 };
            for _ in 0..TIMES {
                let (v, d) = black_box((28.0, 38.0));
                // SAFETY: as above.
                let status = unsafe {
                    call(
                        tw_cutting_speed { m_per_min: v },
                        tw_diameter { mm: d },
                        &mut n,
                        std::ptr::null_mut(),
                    )
                };
                assert!(status == 0 && near(n.rpm, 28e3 / (std::f64::consts::PI * 38.0)));
            }
        };
        let times = duel(150, TIMES, || arc_calls(arc[0]), || arc_calls(arc[1]));
        report(
            "ffi/tw_arc_height",
            "shared",
            "C function",
            "ns/call",
            times,
            "1.1",
        );
        let times = duel(
            150,
            TIMES,
            || speed_calls(speed[0]),
            || speed_calls(speed[1]),
        );
        report(
            "ffi/tw_spindle_speed_for",
            "shared",
            "C function",
            "ns/call",
            times,
            "1.1",
        );
        Ok(())
    }
}

fn documents() -> Outcome<()> {
    const TIMES: usize = 20;
    let fields: toml::Table = include_str!("../examples/jobs/metric_radius_dial.toml").parse()?;
    let text = serde_json::json!({ "plan": fields }).to_string();
    let question = Question::from_text(&text)?;
    let sheet = question.answer()?;
    let (printed, answer) = (sheet.to_string(), document::answer(&text)?);
    let tree = serde_json::to_value(&sheet)?;
    let asked: serde_json::Value = serde_json::from_str(&text)?;
    let tree_text = tree.to_string();

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
                assert!(
                    black_box(&question)
                        .answer()
                        .is_ok_and(|found| found == sheet)
                );
            }
        },
    );
    let [door, alone] = duel(
        60,
        TIMES,
        || {
            for _ in 0..TIMES {
                assert!(document::answer(black_box(&text)).is_ok_and(|found| found == answer));
            }
        },
        || {
            for _ in 0..TIMES {
                let read = serde_json::from_str::<serde_json::Value>(black_box(&text));
                assert!(read.is_ok_and(|read| read == asked));
                let written = serde_json::to_string(black_box(&tree));
                assert!(written.is_ok_and(|written| written == tree_text));
            }
        },
    );
    let us = 1e-3;
    println!(
        "plan/sheet/from job text to printed text {:>9.1} us    goal 100 us",
        whole * us
    );
    println!(
        "plan/sheet/the plan alone                {:>9.1} us",
        plan * us
    );
    println!(
        "document/plan/door                       {:>9.1} us",
        door * us
    );
    println!(
        "document/plan/serde_json alone           {:>9.1} us    (door - plan) / serde_json {:.2}, goal 1.5",
        alone * us,
        (door - plan) / alone
    );
    Ok(())
}

/// A shaft of five diameters, from job to printed text, with the price of the other way, and after a
/// measurement.
fn five_steps() -> Outcome<()> {
    const TIMES: usize = 10;
    let seat = |d: u32, length: u32| serde_json::json!({ "diameter": format!("{d} mm"), "class": "h9", "length": format!("{length} mm") });
    // An invented shaft on the invented lathe of the other plan.
    let mut fields: toml::Table =
        include_str!("../examples/jobs/metric_radius_dial.toml").parse()?;
    fields.remove("part");
    let mut job = serde_json::to_value(&fields)?;
    job["stock"] = serde_json::json!({ "diameter": "40 mm", "length": "160 mm" });
    job["part"] = serde_json::json!({
        "surfaces": [seat(20, 15), seat(24, 15), seat(28, 20), seat(32, 15), seat(36, 20)]
    });
    let mut compared = job.clone();
    compared["preferences"] = serde_json::json!({ "compare_ways": true });
    let ask = |job: &serde_json::Value| {
        Question::from_text(&serde_json::json!({ "plan": job }).to_string())
    };
    let text = serde_json::json!({ "plan": job }).to_string();
    let (plain, both) = (ask(&job)?, ask(&compared)?);
    let sheet = plain.answer()?;
    let printed = sheet.to_string();
    let [whole, alone] = duel(
        40,
        TIMES,
        || {
            for _ in 0..TIMES {
                let sheet = Question::from_text(black_box(&text)).and_then(|asked| asked.answer());
                assert!(sheet.is_ok_and(|sheet| sheet.to_string() == printed));
            }
        },
        || {
            for _ in 0..TIMES {
                assert!(black_box(&plain).answer().is_ok_and(|found| found == sheet));
            }
        },
    );
    let stop = sheet
        .steps
        .iter()
        .position(|step| step.kind == StepKind::Measure);
    let stop = stop.ok_or("a sheet without a measuring stop")?;
    let size = Diameter::from_mm(sheet.steps[stop].diameter.mm() + 0.04)?;
    let [other_way, after] = duel(
        20,
        TIMES,
        || {
            for _ in 0..TIMES {
                assert!(black_box(&both).answer().is_ok());
            }
        },
        || {
            for _ in 0..TIMES {
                assert!(
                    sheet
                        .after(black_box(stop), &[SizeAt::anywhere(size)], None)
                        .is_ok()
                );
            }
        },
    );
    let us = 1e-3;
    for (what, ns, goal) in [
        ("from job text to printed text", whole, "100 us"),
        ("the plan alone", alone, ""),
        ("with the price of the other way", other_way, "1000 us"),
        ("after a measurement", after, "200 us"),
    ] {
        println!(
            "plan/five diameters/{what:<32} {:>9.1} us    goal {goal}",
            ns * us
        );
    }
    Ok(())
}

/// The memory of a plan grows with its steps: each surface more takes as much as the one before.
fn memory_of_plans() -> Outcome<()> {
    // Invented shafts on the invented lathe of the other plans, 2 mm from shoulder to shoulder.
    let mut fields: toml::Table =
        include_str!("../examples/jobs/metric_radius_dial.toml").parse()?;
    fields.remove("part");
    let mut job = serde_json::to_value(&fields)?;
    job["stock"] = serde_json::json!({ "diameter": "40 mm", "length": "160 mm" });
    let mut found = Vec::new();
    for count in [1, 2, 4, 8_u32] {
        let seat = |at: u32| serde_json::json!({ "diameter": format!("{} mm", 40 - 2 * (count - at)), "class": "h9", "length": "8 mm" });
        job["part"] = serde_json::json!({ "surfaces": (0..count).map(seat).collect::<Vec<_>>() });
        let asked = Question::from_text(&serde_json::json!({ "plan": job }).to_string())?;
        let (sheet, held, most) = memory(|| asked.answer());
        let steps = sheet?.steps.len();
        println!(
            "plan/memory/{count} surfaces, {steps:>3} steps {held:>9} bytes held, {most} while planning"
        );
        found.push([steps, held, most].map(|of| of as f64));
    }
    let more = |from: usize, to: usize, what: usize| {
        (found[to][what] - found[from][what]) / (found[to][0] - found[from][0])
    };
    for (what, name) in [(1, "held"), (2, "while planning")] {
        let (first, last) = (more(0, 1, what), more(2, 3, what));
        println!(
            "plan/memory/{name:<15} {first:>6.0} bytes for each step of the second surface, {last:.0} of the fifth to eighth"
        );
        // A vector that doubles its room holds up to twice what lies in it.
        assert!(last < 2.0 * first, "{name}: {found:?}");
    }
    Ok(())
}

/// A budget of ten components with all that is read from it, and the outcome of its spread.
fn budgets() -> Outcome<()> {
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

fn main() -> Outcome<()> {
    // `cargo test --benches` passes no `--bench`: run all the same, it is short.
    kernels()?;
    #[cfg(unix)]
    c::calls()?;
    #[cfg(not(unix))]
    println!(
        "ffi: calls through a shared library are timed on unix only ({} bytes of peer)",
        PEER.len()
    );
    documents()?;
    five_steps()?;
    memory_of_plans()?;
    budgets()
}
