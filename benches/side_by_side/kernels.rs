//! Typed kernels over many rows beside their formulas on bare numbers.

use std::hint::black_box;

use turnwright::physics::bar::{Bar, Springs, Support, deflection};
use turnwright::physics::engagement::ChipSection;
use turnwright::physics::finish::{arc_height, arc_height_or_none};
use turnwright::physics::force::{ForceLaw, main_force};
use turnwright::physics::heat::diameter_growth;
use turnwright::physics::least_chip::roughness_with_least_chip;
use turnwright::physics::speed::spindle_speed;
use turnwright::physics::wear::{LifeLaw, life_at};
use turnwright::{
    ChipThickness, ChipWidth, CornerRadius, CuttingSpeed, Deflection, Diameter, Feed,
    ForceExponent, LifeConstant, LifeExponent, Overhang, PassiveForce, Rt, SpecificCuttingForce,
    ThermalExpansion, ToolLife, WorkLength, YoungsModulus,
};

use crate::column_door::columns;
use crate::raw::{
    raw_arc_height, raw_arc_height_or_words, raw_deflection, raw_main_force,
    raw_rt_with_least_chip, raw_spindle_speed,
};
use crate::tools::{Outcome, duel, near, report};

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

pub fn kernels() -> Outcome<()> {
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
