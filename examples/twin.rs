//! The twin of the embeddings: answers in plain Rust what they ask through the C interface, so that
//! their checks compare with Rust and no expected value is typed by hand.
//!
//! `cargo run --release --example twin` reads questions, one JSON object a line, such as
//! `{ "ask": "spindle_speed", "of": ["28 m/min", "1.5 in"], "in": "rpm" }`, and prints one line each:
//! the answers by name, in that unit (left out: the trade's metric unit), or the error by its parts.
//! `-- tables` prints the quantities and units. `-- cuts ROWS FILE` writes the estimate of the
//! invented cuts of `examples/spark` as doubles: power in kW, then time in s, row after row.

use std::error::Error as Trouble;
use std::io::{BufRead, BufWriter, Write};

use serde_json::{Map, Value, json};
use turnwright::advice::mark;
use turnwright::ffi::tw_status;
use turnwright::physics::bar::{self, Bar, Springs, Support};
use turnwright::physics::facing::{self, FacingPace};
use turnwright::physics::finish::{self, ToolOutline};
use turnwright::physics::force::{ForceLaw, cutting_forces};
use turnwright::physics::{drive, heat, speed};
use turnwright::quantity::rows;
use turnwright::{
    CornerRadius, CuttingEdgeAngle, CuttingSpeed, DepthOfCut, Dial, DialReads, Diameter,
    DivisionsPerTurn, Error, Feed, ForceExponent, NormalRatio, Quantity, SpecificCuttingForce,
    ToleranceClass, Units, unit,
};

fn main() -> Result<(), Box<dyn Trouble>> {
    let mut out = BufWriter::new(std::io::stdout().lock());
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let words: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match words.as_slice() {
        [] => {
            for line in std::io::stdin().lock().lines() {
                writeln!(out, "{}", reply(&line?)?)?;
            }
        }
        ["tables"] => writeln!(out, "{}", tables())?,
        ["cuts", rows, file] => {
            let mut file = BufWriter::new(std::fs::File::create(file)?);
            for row in 0..rows.parse::<u64>()? {
                for number in estimate(row).unwrap_or([f64::NAN; 2]) {
                    file.write_all(&number.to_le_bytes())?;
                }
            }
            file.flush()?;
        }
        _ => return Err("usage: twin [tables | cuts ROWS FILE]".into()),
    }
    out.flush()?;
    Ok(())
}

/// One line of answer to one line of question.
fn reply(line: &str) -> Result<Value, Box<dyn Trouble>> {
    let question: Value = serde_json::from_str(line)?;
    let ask = question["ask"].as_str().ok_or("a question without ask")?;
    let of: Vec<&str> = question["of"]
        .as_array()
        .ok_or("a question without of")?
        .iter()
        .map(|text| text.as_str().ok_or("an argument that is no text"))
        .collect::<Result<_, _>>()?;
    match answers(ask, &of) {
        Some(Ok(found)) => Ok(Value::Object(in_unit(found, question["in"].as_str())?)),
        Some(Err(error)) => {
            let error = in_its_units(error, &of);
            Ok(json!({
                "status": tw_status::from(error.kind()) as i32,
                "field": error.field(),
                "given": error.given(),
                "expected": error.expected(),
                "remedy": error.remedy(),
            }))
        }
        None => Err(format!("no twin of {ask} with {of:?}").into()),
    }
}

/// The error in inch where the argument at fault is: a column call tells it in the units of its column.
fn in_its_units(error: Error, of: &[&str]) -> Error {
    let Some(row) = rows().iter().find(|row| row.name() == error.field()) else {
        return error;
    };
    let kind = row.kind();
    let bad = of.iter().filter_map(|text| {
        let (number, unit) = text.split_once(' ')?;
        let (number, unit) = (number.parse().ok()?, kind.spelled(unit)?);
        (!row.accepts(unit.to_trade(number, 1.0))).then_some(unit)
    });
    let inch = kind.unit(Units::Inch);
    let told_apart = inch != kind.unit(Units::Metric);
    match bad.into_iter().next() {
        Some(unit) if told_apart && unit == inch => error.in_units(Units::Inch),
        _ => error,
    }
}

/// A figure by its name, in the trade's metric unit, with the name of its kind of unit.
type Figure = (&'static str, f64, &'static str);

fn figure<Q: Quantity>(quantity: Q) -> Figure {
    (Q::ROW.name(), quantity.trade(), Q::ROW.kind().name())
}

fn named<Q: Quantity>(name: &'static str, quantity: Q) -> Figure {
    (name, quantity.trade(), Q::ROW.kind().name())
}

fn in_unit(found: Vec<Figure>, spelling: Option<&str>) -> Result<Map<String, Value>, String> {
    let convert = |(name, value, kind): Figure| {
        let value = match spelling {
            None => value,
            Some(spelling) => unit::find(kind, spelling)
                .ok_or_else(|| format!("{name} has no unit {spelling}"))?
                .from_trade(value),
        };
        Ok((String::from(name), json!(value)))
    };
    found.into_iter().map(convert).collect()
}

/// The answer of a kernel; none where no kernel of that name takes such arguments.
fn answers(ask: &str, of: &[&str]) -> Option<Result<Vec<Figure>, Error>> {
    Some(match (ask, of) {
        ("spindle_speed", [v, d]) => spindle_speed(v, d),
        ("roughness", [f, r, major, minor]) => roughness(f, r, major, minor),
        ("cutting_forces", [k, m, a, f, angle, r, ratio]) => forces([k, m, a, f, angle, r, ratio]),
        ("cutting_power", [force, v]) => power(force, v),
        ("cutting_torque", [force, d]) => torque(force, d),
        ("facing_time", [d, bore, f, n]) => facing_time(d, bore, f, n),
        ("deflection", [e, d, l, support, chuck, tilt, centre, force, at]) => {
            let all = [
                Support::Chuck,
                Support::ChuckAndCentre,
                Support::BetweenCentres,
            ];
            let support = all.into_iter().find(|one| one.name() == *support)?;
            deflection([e, d, l, chuck, tilt, centre, force, at], support)
        }
        ("limits_of_class", [nominal, class]) => limits(nominal, class),
        ("diameter_at_20", [measured, expansion, rise]) => at_20(measured, expansion, rise),
        ("dial_mark", [reads, division, per_turn, zero_at, target]) => {
            let reads = match *reads {
                "radius" => DialReads::Radius,
                "diameter" => DialReads::Diameter,
                _ => return None,
            };
            dial_mark(reads, division, per_turn.parse().ok()?, zero_at, target)
        }
        _ => return None,
    })
}

fn spindle_speed(v: &str, d: &str) -> Result<Vec<Figure>, Error> {
    Ok(vec![figure(speed::spindle_speed(v.parse()?, d.parse()?))])
}

fn roughness(f: &str, r: &str, major: &str, minor: &str) -> Result<Vec<Figure>, Error> {
    let feed = f.parse()?;
    let outline = ToolOutline::new(r.parse()?, major.parse()?, minor.parse()?)?;
    let found = finish::theoretical_roughness(feed, &outline);
    Ok(vec![
        figure(found.rt),
        figure(found.rz),
        figure(found.ra),
        figure(found.rq),
    ])
}

fn forces([k, m, a, f, angle, r, ratio]: [&str; 7]) -> Result<Vec<Figure>, Error> {
    let law = ForceLaw::new(k.parse()?, m.parse()?);
    let (a, f, angle) = (a.parse()?, f.parse()?, angle.parse()?);
    let found = cutting_forces(law, a, f, angle, r.parse()?, ratio.parse()?);
    Ok(vec![
        figure(found.main),
        figure(found.feed),
        figure(found.passive),
    ])
}

fn power(force: &str, v: &str) -> Result<Vec<Figure>, Error> {
    Ok(vec![figure(drive::cutting_power(
        force.parse()?,
        v.parse()?,
    ))])
}

fn torque(force: &str, d: &str) -> Result<Vec<Figure>, Error> {
    Ok(vec![figure(drive::torque(force.parse()?, d.parse()?))])
}

fn facing_time(d: &str, bore: &str, f: &str, n: &str) -> Result<Vec<Figure>, Error> {
    let (outside, bore, feed) = (d.parse()?, bore.parse()?, f.parse()?);
    let pace = FacingPace::SpindleSpeed(n.parse()?);
    Ok(vec![figure(facing::time(pace, outside, Some(bore), feed)?)])
}

fn deflection(
    [e, d, l, chuck, tilt, centre, force, at]: [&str; 8],
    support: Support,
) -> Result<Vec<Figure>, Error> {
    let bar = Bar::new(e.parse()?, d.parse()?, l.parse()?);
    let mut springs = Springs::default();
    if chuck != "rigid" {
        springs = springs.with_chuck(chuck.parse()?);
    }
    if tilt != "rigid" {
        springs = springs.with_chuck_rotational(tilt.parse()?);
    }
    if centre != "rigid" {
        springs = springs.with_centre(centre.parse()?);
    }
    let found = bar::deflection(&bar, support, &springs, force.parse()?, at.parse()?)?;
    Ok(vec![figure(found)])
}

fn limits(nominal: &str, class: &str) -> Result<Vec<Figure>, Error> {
    let limits = class.parse::<ToleranceClass>()?.limits(nominal.parse()?)?;
    let limits = limits.value;
    Ok(vec![
        named("smallest", limits.smallest()),
        named("largest", limits.largest()),
    ])
}

fn at_20(measured: &str, expansion: &str, rise: &str) -> Result<Vec<Figure>, Error> {
    let (measured, expansion, rise) = (measured.parse()?, expansion.parse()?, rise.parse()?);
    Ok(vec![figure(heat::diameter_at_20(
        measured, expansion, rise,
    ))])
}

fn dial_mark(
    reads: DialReads,
    division: &str,
    per_turn: u32,
    zero_at: &str,
    target: &str,
) -> Result<Vec<Figure>, Error> {
    let dial = Dial::new(reads, division.parse()?, DivisionsPerTurn::new(per_turn)?);
    let reading = mark::choose(&dial, zero_at.parse()?, target.parse()?, None)?
        .mark
        .reading;
    let plain = |name, count: f64| (name, count, "plain number");
    Ok(vec![
        plain("turns", reading.turns() as f64),
        plain("mark", f64::from(reading.mark())),
    ])
}

/// The quantities and the units, as an embedding that keeps its own list of them needs them.
fn tables() -> Value {
    let quantity = |row: &&turnwright::quantity::Row| {
        let facts = json!({ "number": row.code(), "kind": row.kind().name() });
        (row.name().to_owned(), facts)
    };
    let units = |kind: &&'static unit::Kind| {
        let units = kind.units().iter();
        let units: Map<String, Value> = units
            .map(|unit| (unit.text().to_owned(), json!(unit.code())))
            .collect();
        (kind.name().to_owned(), Value::Object(units))
    };
    json!({
        "quantities": turnwright::quantity::rows().iter().map(quantity).collect::<Map<_, _>>(),
        "units": unit::kinds().iter().map(units).collect::<Map<_, _>>(),
    })
}

/// Power at the outside and time of an invented facing cut, the same as in `examples/spark`: one
/// cut in a thousand has a feed that no lathe has, so that bad rows are among them.
fn estimate(row: u64) -> Result<[f64; 2], Error> {
    // Whole numbers below 2^53 are doubles without loss; each figure is one division of them.
    let step = |times: u64, modulo: u64| (row * times % modulo) as f64;
    let v = CuttingSpeed::from_m_per_min(60.0 + step(7919, 1400) / 10.0)?;
    let outside = Diameter::from_mm(60.0 + step(104_729, 900) / 10.0)?;
    let bore = Diameter::from_mm(20.0 + step(1299, 300) / 10.0)?;
    let feed = Feed::from_mm_per_rev(match row % 1000 {
        999 => 0.0,
        _ => 0.05 + step(31, 250) / 1000.0,
    })?;
    let depth = DepthOfCut::from_mm(0.2 + step(17, 180) / 100.0)?;
    let law = ForceLaw::new(
        SpecificCuttingForce::from_mpa(1900.0)?,
        ForceExponent::from_value(0.2)?,
    );
    let n = speed::spindle_speed(v, outside);
    let time = facing::time(FacingPace::SpindleSpeed(n), outside, Some(bore), feed)?;
    let forces = cutting_forces(
        law,
        depth,
        feed,
        CuttingEdgeAngle::from_degrees(75.0)?,
        CornerRadius::from_mm(0.8)?,
        NormalRatio::from_value(0.5)?,
    );
    let power = drive::cutting_power(forces.main, v);
    Ok([power.kw(), time.seconds()])
}
