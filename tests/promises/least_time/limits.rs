//! A limit holds to its last bit, and the one that forbids a plan is named; so is bad input.

use turnwright::advice::least_time::{Allowance, ChipWindow, LeastTime, LeastTimeAsk, PassLimits};
use turnwright::physics::{drive, speed};
use turnwright::{
    CuttingSpeed, DepthOfCut, Error, ErrorKind, MainForce, PassiveForce, Power, Tool, Torque,
};

use super::invented::invented;
use super::{Bounds, Job, law_of};

/// One pass of all divisions on one feed and step, under one limit.
fn one_pass(limits: impl Fn(PassLimits) -> PassLimits) -> Result<LeastTime, Error> {
    let tool = Tool::new("0.8 mm".parse()?, "75 deg".parse()?);
    let law = law_of(2100.0, 0.26, &tool);
    let metal = Allowance::new("50 mm".parse()?, "0.1 mm".parse()?, 7, "100 mm".parse()?)?;
    let (feeds, steps) = (
        ["0.3 mm/rev".parse()?, "0.2 mm/rev".parse()?],
        ["300 rpm".parse()?],
    );
    let limits =
        limits(PassLimits::new("200 m/min".parse()?).with_least_feed("0.2 mm/rev".parse()?));
    let limits = limits
        .with_least_divisions(7)
        .with_largest_feed("0.2 mm/rev".parse()?);
    LeastTimeAsk::new(metal, &feeds, &steps, law, &tool, limits).divide()
}

#[test]
fn a_limit_holds_to_its_last_bit() {
    let tool = Tool::new("0.8 mm".parse().unwrap(), "75 deg".parse().unwrap());
    let forces = law_of(2100.0, 0.26, &tool).forces(
        &tool,
        DepthOfCut::from_mm(0.7).unwrap(),
        "0.2 mm/rev".parse().unwrap(),
    );
    let (n, d) = ("300 rpm".parse().unwrap(), "51.4 mm".parse().unwrap());
    let v = speed::cutting_speed(n, d);
    let kw = drive::cutting_power(forces.main, v).kw();
    let nm = drive::torque(forces.main, d).newton_meter();
    let passive = forces.passive.newton();
    type Limit = Box<dyn Fn(PassLimits, f64) -> PassLimits>;
    let limits: [(f64, Limit); 5] = [
        (
            forces.main.newton(),
            Box::new(|l, x| l.with_largest_main_force(MainForce::from_newton(x).unwrap())),
        ),
        (
            passive,
            Box::new(|l, x| l.with_largest_passive_force(PassiveForce::from_newton(x).unwrap())),
        ),
        (
            passive,
            Box::new(|l, x| l.with_passive_forces(vec![PassiveForce::from_newton(x).unwrap(); 7])),
        ),
        (
            kw,
            Box::new(|l, x| l.with_power(Power::from_kw(x).unwrap())),
        ),
        (
            nm,
            Box::new(|l, x| l.with_torques(vec![Torque::from_newton_meter(x).unwrap()])),
        ),
    ];
    for (number, (value, limit)) in limits.iter().enumerate() {
        assert!(one_pass(|l| limit(l, *value)).is_ok(), "{number}");
        let error = one_pass(|l| limit(l, value.next_down())).unwrap_err();
        assert!(error.is_impossible(), "{number}: {error}");
    }
    let fastest = |v: f64| one_pass(|_| PassLimits::new(CuttingSpeed::from_m_per_min(v).unwrap()));
    assert!(fastest(v.m_per_min()).is_ok());
    assert!(fastest(v.m_per_min().next_down()).is_err());
}

#[test]
fn the_limit_to_blame_is_named() {
    let blamed = |change: &dyn Fn(&mut Job)| {
        let mut job = invented(40);
        change(&mut job);
        let error = job.solve().unwrap_err();
        assert!(error.is_impossible() && !error.remedy().is_empty());
        error.field().to_owned()
    };
    assert_eq!(
        blamed(&|job| job.divisions = 1),
        "finishing.least_divisions"
    );
    assert_eq!(
        blamed(&|job| job.rough.main = Some(1.0)),
        "roughing.largest_main_force"
    );
    assert_eq!(blamed(&|job| job.rough.power = Some(0.0)), "roughing.power");
    assert_eq!(
        blamed(&|job| job.rough.torque = Some(0.01)),
        "roughing.torque"
    );
    assert_eq!(
        blamed(&|job| job.finish.as_mut().unwrap().1.speed = 1.0),
        "finishing.largest_speed"
    );
    assert_eq!(
        blamed(&|job| job.finish.as_mut().unwrap().1.feeds.1 = Some(0.01)),
        "finishing.largest_feed"
    );
    assert_eq!(
        blamed(&|job| job.rough.chip = Some((1e4, 1e5))),
        "roughing.chip_window"
    );
    // Two limits that only together forbid it: neither alone is enough to blame.
    let mut job = invented(40);
    job.rough.main = Some(1.0);
    job.rough.chip = Some((1e4, 1e5));
    job.finish.as_mut().unwrap().1.divisions.1 = Some(20);
    let error = job.solve().unwrap_err();
    assert!(error.expected().contains("together with"), "{error}");
}

#[test]
fn bad_input_is_refused_by_its_field() {
    let metal = |divisions| {
        Allowance::new(
            "55 mm".parse().unwrap(),
            "0.05 mm".parse().unwrap(),
            divisions,
            "200 mm".parse().unwrap(),
        )
    };
    assert_eq!(metal(0).unwrap_err().kind(), ErrorKind::OutOfRange);
    assert_eq!(metal(10_001).unwrap_err().field(), "divisions");
    let huge = Allowance::new(
        "4900 mm".parse().unwrap(),
        "1 mm".parse().unwrap(),
        51,
        "200 mm".parse().unwrap(),
    );
    assert_eq!(huge.unwrap_err().field(), "divisions");

    let refused = |change: &dyn Fn(&mut Job)| {
        let mut job = invented(20);
        change(&mut job);
        let error = job.solve().unwrap_err();
        assert!(!error.is_impossible(), "{error}");
        error.field().to_owned()
    };
    assert_eq!(refused(&|job| job.feeds.clear()), "feeds");
    assert_eq!(refused(&|job| job.steps.push(16.0)), "steps");
    assert_eq!(
        refused(&|job| job.rough.divisions = (Some(9), Some(3))),
        "roughing.least_divisions"
    );
    assert_eq!(
        refused(&|job| job.rough.least_speed = Some(121.0)),
        "roughing.least_speed"
    );
    let finish = |job: &mut Job, change: &dyn Fn(&mut Bounds)| {
        change(&mut job.finish.as_mut().unwrap().1);
    };
    assert_eq!(
        refused(&|job| finish(job, &|b| b.feeds.0 = Some(1.0))),
        "finishing.least_feed"
    );
    assert_eq!(
        refused(&|job| finish(job, &|b| b.passive = Some(-1.0))),
        "finishing.largest_passive_force"
    );
    assert_eq!(
        refused(&|job| finish(job, &|b| b.divisions = (Some(0), None))),
        "finishing.divisions"
    );
    let error = one_pass(|l| l.with_torques(Vec::new())).unwrap_err();
    assert_eq!(error.field(), "roughing.torques");
    let error = one_pass(|l| l.with_passive_forces(Vec::new())).unwrap_err();
    assert_eq!(error.field(), "roughing.passive_forces");
    for (from, to) in [
        (f64::NAN, 1.0),
        (1.0, f64::INFINITY),
        (-1.0, 1.0),
        (3.0, 2.0),
    ] {
        assert_eq!(
            ChipWindow::new(from, to).unwrap_err().field(),
            "chip_window"
        );
    }
}
