//! The force of a cut by slices of its edge, and the share of its power that a drive gives: without the
//! formulas of the crate.

use serde_json::Value;

/// The law of Kienzle summed over slices of the edge, in N: nothing of the crate's own integrals.
///
/// Kienzle 1952, from memory: k_c1.1 h^(1 - m_c) for each millimetre of edge at chip thickness h in mm. The
/// share is what is asked for of the force on a slice that stands at this angle to the axis.
pub fn along_the_edge(
    asked: &Value,
    finishing: bool,
    (depth, feed): (f64, f64),
    share: fn(f64) -> f64,
) -> f64 {
    const SLICES: u32 = 400;
    let material: turnwright::Material = serde_json::from_value(asked["material"].clone()).unwrap();
    let (k, exponent) = (
        material.specific_force().value.mpa(),
        material.exponent().value.value(),
    );
    let tool = match (asked["tools"].is_object(), finishing) {
        (false, _) => &asked["tool"],
        (true, true) => &asked["tools"]["finish"],
        (true, false) => &asked["tools"]["rough"],
    };
    let of = |field: &str| tool[field].as_str().unwrap();
    let corner: turnwright::CornerRadius = of("corner_radius").parse().unwrap();
    let angle: turnwright::CuttingEdgeAngle = of("cutting_edge_angle").parse().unwrap();
    let (corner, angle) = (corner.mm(), angle.degrees().to_radians());
    let on_arc = corner * (1.0 - angle.cos());
    let end = if depth < on_arc {
        (1.0 - depth / corner).acos()
    } else {
        angle
    };
    let slice = end / f64::from(SLICES);
    let arc: f64 = (0..SLICES)
        .map(|at| (f64::from(at) + 0.5) * slice)
        .map(|turned| share(turned) * corner * slice * (feed * turned.sin()).powf(1.0 - exponent))
        .sum();
    let straight = (depth - on_arc).max(0.0) / angle.sin();
    k * (arc + share(angle) * straight * (feed * angle.sin()).powf(1.0 - exponent))
}

/// Efficiency of a drive for which none is given: common practice, no source, 0.7 to 0.85.
const EFFICIENCY: f64 = 0.75;

pub fn efficiency(asked: &Value) -> f64 {
    match asked["lathe"]["efficiency"].as_str() {
        Some(given) => given.parse().unwrap(),
        None => EFFICIENCY,
    }
}

/// The share of its power that a drive gives at a speed: below its base speed the torque grows no more, and
/// P = M omega. Of two ranges the one that gives more.
pub fn at_this_speed(asked: &Value, n: f64) -> f64 {
    let rpm = |value: &Value| -> f64 {
        let text = value.as_str().unwrap();
        text.trim_end_matches(" rpm").parse().unwrap()
    };
    let lathe = &asked["lathe"];
    let share = |base: &Value| match base {
        Value::Null => 1.0,
        base => (n / rpm(base)).min(1.0),
    };
    match lathe["spindle_ranges"].as_object() {
        Some(ranges) => ranges
            .values()
            .filter(|of| rpm(&of["range"][0]) <= n && n <= rpm(&of["range"][1]))
            .map(|of| share(&of["constant_torque_below"]))
            .fold(0.0, f64::max),
        None => share(&lathe["constant_torque_below"]),
    }
}
