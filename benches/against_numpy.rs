//! Whole arrays beside numpy and scipy, on the same data in the same run: ratios, not times.
//!
//! `cargo bench --bench against_numpy`. `$PYTHON` names a Python with both; without one only our
//! side is timed. The results are compared in every run.

use std::ffi::OsString;
use std::hint::black_box;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use turnwright::advice::force::tool_law;
use turnwright::advice::least_time::{Allowance, Finishing, LeastTimeAsk, PassLimits};
use turnwright::physics::bar::{Springs, Support};
use turnwright::physics::budget::{Budget, Component};
use turnwright::physics::finish::ToolOutline;
use turnwright::physics::gaussian::{Ends, mean_line};
use turnwright::physics::monte_carlo::simulate;
use turnwright::physics::profile::{Profile, TurnedProfile};
use turnwright::physics::section::Section;
use turnwright::physics::stepped::HeldBar;
use turnwright::{
    CutOff, Deflection, Diameter, Feed, HalfWidth, Material, PassiveForce, Provenance,
    SpindleSpeed, StandardUncertainty, Tool, WorkLength,
};

#[allow(dead_code)]
mod tools;
use tools::{Outcome, allocations, compiled, report, shared_library};

/// All stations of a moving tool on a stepped bar, beside the force method with prefix sums.
fn bar_stations() -> Outcome<()> {
    const STATIONS: usize = 100_000;
    const ROUNDS: usize = 40;
    // Ten steps of 40 mm, thick in the middle.
    let diameters: Vec<f64> = (0..10)
        .map(|i| 20.0 + 2.0 * f64::from(i.min(9 - i)))
        .collect();
    let sections: Vec<Section> = diameters
        .iter()
        .map(|d| {
            Ok(Section::cylinder(
                Diameter::from_mm(*d)?,
                WorkLength::from_mm(40.0)?,
            ))
        })
        .collect::<Result<_, turnwright::Error>>()?;
    let springs = Springs::default()
        .with_chuck("40 kN/mm".parse()?)
        .with_chuck_rotational("150 kN m/rad".parse()?)
        .with_centre("15 kN/mm".parse()?);
    let step = 400.0 / STATIONS as f64;
    // The first of them lie nearer to the chuck than any plausible length.
    let first = 3;
    let stations: Vec<WorkLength> = (first..=STATIONS)
        .map(|i| WorkLength::from_mm((step * i as f64).min(400.0)))
        .collect::<Result<_, _>>()?;
    let force = PassiveForce::from_newton(100.0)?;
    let mut bent = vec![Deflection::from_mm(0.0)?; stations.len()];
    let mut best = f64::INFINITY;
    for _ in 0..ROUNDS {
        let start = Instant::now();
        let bar = HeldBar::new(
            "210 GPa".parse()?,
            &sections,
            Support::ChuckAndCentre,
            &springs,
            &[],
        )?;
        bar.deflections(force, black_box(&stations), &mut bent)?;
        best = best.min(start.elapsed().as_secs_f64() * 1e9 / STATIONS as f64);
    }
    let bar = HeldBar::new(
        "210 GPa".parse()?,
        &sections,
        Support::ChuckAndCentre,
        &springs,
        &[],
    )?;
    let mut failed = false;
    let allocated = allocations(|| failed = bar.deflections(force, &stations, &mut bent).is_err());
    assert!(!failed && allocated == 0, "{allocated} allocations");
    println!("bar/stations/allocations in the loop {allocated:>3}, goal 0");
    // 1/(E I) of every cell between two stations, in 1/(N mm2).
    let soft: Vec<f64> = (0..STATIONS)
        .map(|cell| {
            let d = diameters[cell * 10 / STATIONS];
            64.0 / (std::f64::consts::PI * d.powi(4) * 210e3)
        })
        .collect();
    let Some((theirs, time)) = peer("bar", &soft, &[step, ROUNDS as f64])? else {
        println!("bar/stations/ours         {best:>10.2} ns/station");
        return Ok(());
    };
    let largest = bent.iter().map(|b| b.mm()).fold(0.0, f64::max);
    let differences = bent
        .iter()
        .zip(theirs.iter().skip(first - 1))
        .map(|(a, b)| (a.mm() - 100.0 * b).abs());
    let worst = differences.fold(0.0, f64::max);
    // The peer subtracts sums that are far greater than what is left of them.
    assert!(worst <= 1e-9 * largest, "{worst:e} of {largest:e}");
    let times = [best, time * 1e6 / STATIONS as f64];
    report(
        "bar/stations",
        "ours",
        "numpy",
        "ns/station",
        times,
        "1/6, that is 0.17",
    );
    Ok(())
}

/// The Gaussian filter of a million points beside scipy's FFT, on the same data in the same run.
fn gaussian_filter() -> Outcome<()> {
    const POINTS: usize = 1_000_000;
    const WIDTH: f64 = 1600.0;
    const ROUNDS: usize = 20;
    let mut heights = vec![0.0; POINTS];
    let tool = ToolOutline::new("0.8 mm".parse()?, "95 deg".parse()?, "10 deg".parse()?)?;
    let spacing = "0.0005 mm".parse()?;
    TurnedProfile::new("0.2 mm/rev".parse()?, tool)
        .with_feed_unevenness("0.1".parse()?)
        .with_noise("0.2 um".parse()?)
        .with_seed(1)
        .write_um(spacing, &mut heights)?;
    let cut_off: CutOff = "0.8 mm".parse()?;
    assert_eq!(cut_off.mm() / 0.0005, WIDTH);
    let mut line = vec![0.0; POINTS];
    let mut best = f64::INFINITY;
    for _ in 0..ROUNDS {
        let start = Instant::now();
        let profile = Profile::from_um(spacing, black_box(&heights))?;
        mean_line(&profile, cut_off, Ends::Periodic, &mut line)?;
        best = best.min(start.elapsed().as_secs_f64() * 1e3);
    }
    let Some((theirs, time)) = peer("gaussian", &heights, &[WIDTH, ROUNDS as f64])? else {
        println!("profile/gaussian/ours     {best:>10.2} ms");
        return Ok(());
    };
    let peak = heights.iter().fold(0.0, |peak, z| f64::max(peak, z.abs()));
    let worst = line
        .iter()
        .zip(&theirs)
        .fold(0.0, |worst, (a, b)| f64::max(worst, (a - b).abs()));
    assert!(theirs.len() == POINTS && worst <= 1e-9 * peak, "{worst:e}");
    report(
        "profile/gaussian",
        "ours",
        "scipy",
        "ms",
        [best, time],
        "below 1",
    );
    Ok(())
}

/// A budget of ten components drawn a million times beside numpy's generator, which draws and sums the
/// same laws; ours finds the interval besides.
fn draws() -> Outcome<()> {
    const DRAWS: u32 = 1_000_000;
    const ROUNDS: usize = 7;
    // Five normal and five uniform ones, in mm; of uniform ones the negative half width.
    let sizes = [
        0.003, -0.004, 0.002, -0.01, 0.001, -0.006, 0.0015, -0.002, 0.0007, -0.001,
    ];
    let components = sizes
        .iter()
        .enumerate()
        .map(|(i, size)| {
            Ok(if *size > 0.0 {
                Component::standard(i.to_string(), StandardUncertainty::from_mm(*size)?)
            } else {
                Component::uniform(i.to_string(), HalfWidth::from_mm(-size)?)
            })
        })
        .collect::<Result<_, turnwright::Error>>()?;
    let budget = Budget::new(components)?;
    let confidence = "0.95".parse()?;
    let mut best = f64::INFINITY;
    for seed in 0..ROUNDS as u64 {
        let start = Instant::now();
        let drawn = simulate(black_box(&budget), None, DRAWS, seed, confidence)?;
        best = best.min(start.elapsed().as_secs_f64() * 1e3);
        let off = drawn.standard_deviation.mm() - budget.combined().mm();
        assert!(off.abs() < 5.0 * drawn.standard_deviation_error.mm());
    }
    let Some((theirs, time)) = peer("draws", &sizes, &[f64::from(DRAWS), ROUNDS as f64])? else {
        println!("budget/draws/ours         {best:>10.2} ms");
        return Ok(());
    };
    assert!((theirs[1] / budget.combined().mm() - 1.0).abs() < 0.005);
    report(
        "budget/draws",
        "ours",
        "numpy",
        "ms",
        [best, time],
        "below 1",
    );
    Ok(())
}

/// An invented surface divided into passes in the least time, beside the same programme in numpy.
fn least_time(divisions: u32, goal: &str) -> Outcome<()> {
    const ROUNDS: usize = 7;
    let feeds: Vec<f64> = (0..30)
        .map(|i| 0.04 * 20_f64.powf(f64::from(i) / 29.0))
        .collect();
    let steps: Vec<f64> = (0..18)
        .map(|j| 16.0 * 125_f64.powf(f64::from(j) / 17.0))
        .collect();
    let numbers = [&[feeds.len() as f64], feeds.as_slice(), &steps].concat();
    let feeds: Vec<Feed> = feeds
        .into_iter()
        .map(Feed::from_mm_per_rev)
        .collect::<Result<_, _>>()?;
    let steps: Vec<SpindleSpeed> = steps
        .into_iter()
        .map(SpindleSpeed::from_rpm)
        .collect::<Result<_, _>>()?;
    let steel = Material::named("c45")?
        .with_specific_force("2100 MPa".parse()?)
        .with_exponent("0.26".parse()?);
    let tool = Tool::new("0 mm".parse()?, "90 deg".parse()?);
    let law = tool_law(&steel, &tool, &mut Provenance::default())?;
    let power = "3 kW".parse()?;
    let rough = PassLimits::new("120 m/min".parse()?)
        .with_largest_main_force("1800 N".parse()?)
        .with_power(power)
        .with_largest_divisions(100);
    // Rt of 8 um from a corner of 0.8 mm: f = 2 sqrt(2 r Rt - Rt^2).
    let smooth = 2.0 * (2.0 * 0.8 * 0.008_f64 - 0.008 * 0.008).sqrt();
    let finish = PassLimits::new("168 m/min".parse()?)
        .with_largest_main_force("350 N".parse()?)
        .with_power(power)
        .with_largest_feed(Feed::from_mm_per_rev(smooth)?)
        .with_least_divisions(2)
        .with_largest_divisions(100);
    let metal = Allowance::new(
        "55 mm".parse()?,
        "0.05 mm".parse()?,
        divisions,
        "200 mm".parse()?,
    )?;
    let ask = |change: &str| -> Outcome<_> {
        Ok(
            LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, rough.clone())
                .with_finishing(Finishing::One, finish.clone())
                .with_time_per_pass("25 s".parse()?)
                .with_change_time(change.parse()?),
        )
    };
    let time = |ask: &LeastTimeAsk<'_>, rounds: usize| -> Outcome<(f64, f64)> {
        let (mut best, mut seconds) = (f64::INFINITY, 0.0);
        for _ in 0..rounds {
            let start = Instant::now();
            seconds = black_box(ask).divide()?.time.seconds();
            best = best.min(start.elapsed().as_secs_f64() * 1e3);
        }
        Ok((best, seconds))
    };
    let (best, seconds) = time(&ask("0 s")?, 200)?;
    let (with_changes, _) = time(&ask("30 s")?, 20)?;
    let id = format!("least_time/{divisions}");
    println!("{id}/changes of step cost time {with_changes:>10.4} ms");
    let arguments = [f64::from(divisions), ROUNDS as f64];
    let Some((theirs, time)) = peer("least_time", &numbers, &arguments)? else {
        println!("{id}/ours {best:>10.4} ms");
        return Ok(());
    };
    // Sums of the same passes in another order.
    assert!(
        (theirs[0] / seconds - 1.0).abs() < 1e-9,
        "{theirs:?} {seconds}"
    );
    println!("{id}/ours         {best:>10.4} ms");
    println!(
        "{id}/numpy        {time:>10.4} ms    ratio 1/{:.0}, goal {goal}",
        time / best
    );
    Ok(())
}

/// The main force of every row in C, with the power function of C's library.
const FORCE: &str = r#"
#include <math.h>
#include <stddef.h>

void peer_straight_edge_force(double specific, double exponent, const double *depth, const double *feed,
                              const double *angle, double *force, size_t count)
{
    size_t i;
    for (i = 0; i < count; i++) {
        double s = sin(angle[i] * (3.141592653589793 / 180.0));
        double h = feed[i] * s, b = depth[i] / s;
        force[i] = specific * pow(h, -exponent) * b * h;
    }
}
"#;

/// Column calls of the shared library beside numpy and C, all of them in one process; `columns.py`
/// times and compares them.
fn column_calls() -> Outcome<()> {
    /// What `columns.py` ends with where there is no numpy.
    const NO_NUMPY: i32 = 3;
    let (library, force) = (shared_library()?, compiled("against_numpy", FORCE)?);
    let run = Command::new(python())
        .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/benches/columns.py"))
        .arg(library)
        .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/include/turnwright.h"))
        .arg(force)
        .status();
    match run {
        Ok(status) if status.success() => Ok(()),
        Ok(status) if status.code() != Some(NO_NUMPY) => {
            Err("a column call differs from its peer".into())
        }
        _ => {
            println!("columns: peer skipped: no python3 with numpy ($PYTHON names another)");
            Ok(())
        }
    }
}

fn python() -> OsString {
    std::env::var_os("PYTHON").unwrap_or_else(|| "python3".into())
}

/// What numpy makes of some numbers, and its best time in ms; nothing where it is not there.
fn peer(task: &str, numbers: &[f64], arguments: &[f64]) -> Outcome<Option<(Vec<f64>, f64)>> {
    let folder = std::env::temp_dir().join(format!("turnwright-{task}-{}", std::process::id()));
    std::fs::create_dir_all(&folder)?;
    let answer = run(&folder, task, numbers, arguments);
    std::fs::remove_dir_all(&folder)?;
    if answer.is_err() {
        println!("{task}: peer skipped: no python3 with numpy and scipy ($PYTHON names another)");
    }
    Ok(answer.ok())
}

fn run(folder: &Path, task: &str, numbers: &[f64], arguments: &[f64]) -> Outcome<(Vec<f64>, f64)> {
    let (input, output) = (folder.join("in"), folder.join("out"));
    let bytes: Vec<u8> = numbers.iter().flat_map(|z| z.to_ne_bytes()).collect();
    std::fs::write(&input, bytes)?;
    let run = Command::new(python())
        .arg(concat!(env!("CARGO_MANIFEST_DIR"), "/benches/peers.py"))
        .arg(task)
        .args([&input, &output])
        .args(arguments.iter().map(f64::to_string))
        .output()?;
    if !run.status.success() {
        return Err("no numpy".into());
    }
    let time = String::from_utf8(run.stdout)?.trim().parse()?;
    let read = std::fs::read(&output)?;
    let line = read
        .chunks_exact(8)
        .map(|bytes| bytes.try_into().map(f64::from_ne_bytes))
        .collect::<Result<_, _>>()?;
    Ok((line, time))
}

fn main() -> Outcome<()> {
    // `cargo test --benches` passes no `--bench`: run all the same, it is short.
    #[cfg(unix)]
    column_calls()?;
    bar_stations()?;
    gaussian_filter()?;
    draws()?;
    least_time(100, "1/500")?;
    least_time(200, "1/500")?;
    least_time(1000, "none: growth")
}
