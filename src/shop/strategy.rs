//! Property-test strategies: items that could stand in a real workshop.

use proptest::arbitrary::Arbitrary;
use proptest::prelude::*;
use proptest::sample::select;

use super::dial::{Dial, DialReads, Ring};
use super::figure::ToolMaterial;
use super::holding::{Holding, HoldingKind};
use super::lathe::Lathe;
use super::part::Part;
use super::stock::Stock;
use super::surface::{Surface, WantedFinish};
use super::tool::Tool;
use crate::error::Error;
use crate::quantity::dial::DivisionsPerTurn;
use crate::quantity::{
    CornerRadius, CuttingEdgeAngle, Diameter, Division, Feed, MinorCuttingEdgeAngle, Power, Ra,
    SpindleSpeed, Travel, WorkLength,
};
use crate::standards::limits::Limits;

macro_rules! arbitrary {
    ($($(#[$doc:meta])* $item:ty => $strategy:expr;)*) => { $(
        $(#[$doc])*
        impl Arbitrary for $item {
            type Parameters = ();
            type Strategy = BoxedStrategy<Self>;
            fn arbitrary_with((): ()) -> Self::Strategy {
                $strategy.boxed()
            }
        }
    )* };
}

arbitrary! {
    /// A dial of a cross slide, metric or inch, of radius or diameter.
    Dial => cross_dial();
    /// A lathe with dials, feeds and power.
    Lathe => lathe();
    /// A turning tool.
    Tool => tool();
    /// A bar.
    Stock => (8.0..120.0_f64, 60.0..500.0_f64)
        .prop_filter_map("plausible", |(d, l)| Some(Stock::new(Diameter::from_mm(d).ok()?, WorkLength::from_mm(l).ok()?)));
    /// A part of one diameter and one length.
    Part => (5.0..100.0_f64, 0.01..0.3_f64, 5.0..200.0_f64, prop::option::of(0.4..6.3_f64))
        .prop_filter_map("plausible", |(d, zone, l, ra)| part(d, zone, l, ra).ok());
    /// A way of holding, its stiffnesses unknown.
    Holding => select(vec![HoldingKind::Chuck, HoldingKind::ChuckAndCentre]).prop_map(Holding::new);
}

fn part(d: f64, zone: f64, length: f64, ra: Option<f64>) -> Result<Part, Error> {
    let limits = Limits::new(Diameter::from_mm(d - zone)?, Diameter::from_mm(d)?)?;
    let surface = Surface::new(Diameter::from_mm(d)?, limits, WorkLength::from_mm(length)?)?;
    Ok(Part::from(match ra {
        Some(ra) => surface.with_finish(WantedFinish::Ra(Ra::from_um(ra)?)),
        None => surface,
    }))
}

fn cross_dial() -> impl Strategy<Value = Dial> {
    let divisions = vec![
        (Division::from_mm(0.01), 200),
        (Division::from_mm(0.02), 100),
        (Division::from_mm(0.025), 100),
        (Division::from_mm(0.05), 80),
        (Division::from_inch(0.001), 100),
        (Division::from_inch(0.002), 125),
        (Division::from_inch(0.0005), 200),
    ];
    (
        select(divisions),
        select(vec![DialReads::Radius, DialReads::Diameter]),
        any::<bool>(),
        any::<bool>(),
    )
        .prop_filter_map("plausible", |((division, n), reads, backlash, fixed)| {
            let mut dial = Dial::new(reads, division.ok()?, DivisionsPerTurn::new(n).ok()?);
            if backlash {
                dial = dial.with_backlash(Travel::from_mm(0.15).ok()?);
            }
            Some(if fixed {
                dial.with_ring(Ring::Fixed)
            } else {
                dial
            })
        })
}

fn lathe() -> impl Strategy<Value = Lathe> {
    let steps = vec![
        vec![
            45.0, 63.0, 90.0, 125.0, 180.0, 250.0, 355.0, 500.0, 710.0, 1000.0, 1400.0, 2000.0,
        ],
        vec![63.0, 125.0, 250.0, 500.0, 1000.0, 2000.0],
        vec![70.0, 115.0, 190.0, 310.0, 500.0, 820.0, 1350.0],
    ];
    let feeds = vec![
        vec![],
        vec![
            0.04, 0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315, 0.4,
        ],
    ];
    let caps = prop::option::of(800.0..2500.0_f64);
    (
        select(steps),
        select(feeds),
        0.3..5.0_f64,
        cross_dial(),
        any::<bool>(),
        caps,
    )
        .prop_filter_map("plausible", |(steps, feeds, power, cross, inch, cap)| {
            let speeds: Result<Vec<_>, _> = steps.into_iter().map(SpindleSpeed::from_rpm).collect();
            let carriage = if inch {
                Division::from_inch(0.005)
            } else {
                Division::from_mm(0.1)
            };
            let carriage = Dial::new(
                DialReads::Travel,
                carriage.ok()?,
                DivisionsPerTurn::new(160).ok()?,
            );
            let mut lathe = Lathe::with_steps(speeds.ok()?)
                .ok()?
                .with_cross_slide(cross)
                .ok()?
                .with_carriage(carriage)
                .ok()?
                .with_power(Power::from_kw(power).ok()?);
            if !feeds.is_empty() {
                let feeds: Result<Vec<_>, _> =
                    feeds.into_iter().map(Feed::from_mm_per_rev).collect();
                lathe = lathe.with_feeds(feeds.ok()?).ok()?;
            }
            if let Some(cap) = cap {
                lathe = lathe.with_chuck_max_speed(SpindleSpeed::from_rpm(cap.round()).ok()?);
            }
            Some(lathe)
        })
}

fn tool() -> impl Strategy<Value = Tool> {
    let corners = select(vec![0.2, 0.396_875, 0.4, 0.793_75, 0.8, 1.2]);
    let angles = select(vec![75.0, 90.0, 93.0, 95.0]);
    let materials = select(vec![ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide]);
    (
        corners,
        angles,
        materials,
        prop::option::of(select(vec![5.0, 10.0, 32.0])),
    )
        .prop_filter_map("plausible", |(corner, angle, material, minor)| {
            let tool = Tool::new(
                CornerRadius::from_mm(corner).ok()?,
                CuttingEdgeAngle::from_degrees(angle).ok()?,
            )
            .with_material(material);
            Some(match minor {
                Some(minor) => tool.with_minor_cutting_edge_angle(
                    MinorCuttingEdgeAngle::from_degrees(minor).ok()?,
                ),
                None => tool,
            })
        })
}
