//! Every quantity comes back from its text: exactly in metric, and in inch as near as inch can.

use proptest::prelude::*;
use proptest::test_runner::TestRunner;
use turnwright::{ErrorKind, Quantity, Units};

fn runner() -> TestRunner {
    TestRunner::new(crate::jobs::config(400))
}

fn comes_back<Q>()
where
    Q: Quantity
        + Arbitrary
        + PartialEq
        + std::fmt::Debug
        + serde::Serialize
        + serde::de::DeserializeOwned,
{
    runner()
        .run(&any::<Q>(), |q| {
            let metric = q.text(Units::Metric);
            prop_assert_eq!(metric.parse::<Q>().unwrap(), q, "{}", metric);
            let json = serde_json::to_string(&q).unwrap();
            prop_assert_eq!(serde_json::from_str::<Q>(&json).unwrap(), q, "{}", json);
            let inch = q.text(Units::Inch);
            // The last bit may have no inch number, and at the end of a range that bit is refused.
            if let Ok(back) = inch.parse::<Q>() {
                let off = (back.trade() - q.trade()).abs();
                // Two roundings of a double: a conversion there and one back.
                prop_assert!(
                    off <= 4.0 * f64::EPSILON * q.trade().abs(),
                    "{} {} {}",
                    metric,
                    inch,
                    off
                );
            }
            Ok(())
        })
        .unwrap();
}

fn is_refused<Q: Quantity + std::fmt::Debug>() {
    let row = Q::ROW;
    let refusal = |text: &str| text.parse::<Q>().map(|_| ()).map_err(|e| (e.kind(), e));
    for text in ["NaN", "inf", "-inf"] {
        let unit = row.kind().units()[0].text();
        let (kind, error) = refusal(&format!("{text} {unit}")).unwrap_err();
        assert_eq!(kind, ErrorKind::NotFinite, "{error}");
    }
    for number in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
        let error = Q::from_trade(number).map(|_| ()).unwrap_err();
        assert_eq!(
            (error.kind(), error.field()),
            (ErrorKind::NotFinite, row.name())
        );
    }
    let beyond = [
        row.largest() * 1.0001 + 1e-9,
        row.least() - row.least().abs() * 0.0001 - 1e-9,
    ];
    for number in beyond {
        if row.accepts(number) {
            continue;
        }
        let error = Q::from_trade(number).map(|_| ()).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::OutOfRange, "{error}");
        assert!(
            !error.remedy().is_empty() && !error.given().is_empty() && !error.expected().is_empty()
        );
    }
    if !row.kind().units()[0].text().is_empty() {
        let (kind, error) = refusal("1").unwrap_err();
        assert_eq!(kind, ErrorKind::MissingUnit, "{error}");
        assert!(
            error.expected().contains(row.kind().units()[0].text()),
            "{error}"
        );
    }
    let (kind, error) = refusal("1 furlong").unwrap_err();
    assert_eq!(kind, ErrorKind::WrongUnit, "{error}");
}

macro_rules! check {
    ($t:ident) => {
        comes_back::<turnwright::quantity::$t>();
        is_refused::<turnwright::quantity::$t>();
    };
}

#[test]
fn every_quantity_comes_back_from_its_text_and_refuses_what_it_is_not() {
    turnwright::for_each_quantity!(check);
}

#[test]
fn a_unit_of_another_kind_is_refused_naming_both_kinds() {
    let error = "90 m/min".parse::<turnwright::SpindleSpeed>().unwrap_err();
    assert_eq!(error.kind(), ErrorKind::WrongUnit);
    assert!(
        error.given().contains("cutting speed") && error.expected().contains("spindle speed"),
        "{error}"
    );
    let error = "640 rpm".parse::<turnwright::CuttingSpeed>().unwrap_err();
    assert!(
        error.given().contains("spindle speed") && error.expected().contains("cutting speed"),
        "{error}"
    );
    let error = "100 mm/min".parse::<turnwright::Feed>().unwrap_err();
    assert!(
        error.given().contains("feed rate") && error.expected().contains("per revolution"),
        "{error}"
    );
}

#[test]
fn units_have_numbers_of_their_own() {
    let mut codes: Vec<i32> = turnwright::unit::kinds()
        .iter()
        .flat_map(|k| k.units().iter().map(|u| u.code()))
        .collect();
    let count = codes.len();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), count);
    let mut rows: Vec<i32> = turnwright::quantity::rows()
        .iter()
        .map(|r| r.code())
        .collect();
    let count = rows.len();
    rows.sort_unstable();
    rows.dedup();
    assert_eq!(rows.len(), count);
}

/// The remedy for a text that is no quantity of this type.
fn remedy<Q: Quantity + std::fmt::Debug>(text: &str) -> String {
    let error = text.parse::<Q>().unwrap_err();
    error.remedy().to_owned()
}

#[test]
fn a_slip_of_the_pen_is_told_with_the_text_to_write_instead() {
    use turnwright::quantity::{
        CornerRadius, CuttingEdgeAngle, CuttingSpeed, Diameter, Efficiency, Feed, HalfWidth,
        MainForce, Position, Power, Ra, SpindleSpeed, TaperRatio, Tolerance, Torque,
        UpperDeviation, WorkLength,
    };
    type Told = fn(&str) -> String;
    let diameter: Told = remedy::<Diameter>;
    let length: Told = remedy::<WorkLength>;
    let table: &[(Told, &str, &str)] = &[
        // Signs and words for a diameter and a radius.
        (diameter, "\u{d8}34 mm", "34 mm"),
        (diameter, "\u{d8} 1.5 in", "1.5 in"),
        (diameter, "\u{2300}34 mm", "34 mm"),
        (diameter, "\u{2205} 34 mm", "34 mm"),
        (diameter, "dia 34 mm", "34 mm"),
        (diameter, "Dia. 1 1/2 in", "1 1/2 in"),
        (diameter, "D34 mm", "34 mm"),
        (diameter, "34mm dia", "34mm"),
        (diameter, "34 mm \u{d8}", "34 mm"),
        (diameter, "1.5\" dia.", "1.5 in"),
        (diameter, "R17 mm", "34 mm"),
        (diameter, "R 3/8 in", "3/4 in"),
        (diameter, "17 mm radius", "34 mm"),
        (remedy::<CornerRadius>, "R0.4 mm", "0.4 mm"),
        (remedy::<CornerRadius>, "r 1/64 in", "1/64 in"),
        // Both signs.
        (remedy::<HalfWidth>, "\u{b1}0.1 mm", "0.1 mm"),
        (remedy::<HalfWidth>, "+-0.1 mm", "0.1 mm"),
        (remedy::<HalfWidth>, "+/- 0.004 in", "0.004 in"),
        (remedy::<Tolerance>, "\u{b1}0.1 mm", "0.2 mm"),
        // Fractions in one character.
        (diameter, "\u{bd} in", "1/2 in"),
        (diameter, "1\u{bd} in", "1 1/2 in"),
        (diameter, "1 \u{215c}\"", "1 3/8 in"),
        (diameter, "1 1\u{2044}2 in", "1 1/2 in"),
        (length, "10\u{bc} mm", "10 1/4 mm"),
        (remedy::<Feed>, "1/64 in/rev", "0.015625 in/rev"),
        (remedy::<Power>, "1\u{bd} hp", "1.5 hp"),
        // Powers of ten.
        (remedy::<HalfWidth>, "1.6\u{d7}10^-3 mm", "1.6e-3 mm"),
        (remedy::<HalfWidth>, "1.6 x 10-3 in", "1.6e-3 in"),
        (remedy::<HalfWidth>, "1.6*10\u{207b}\u{b3} mm", "1.6e-3 mm"),
        (remedy::<HalfWidth>, "1.6e\u{2212}3 mm", "1.6e-3 mm"),
        (remedy::<HalfWidth>, "10^-3 in", "1e-3 in"),
        (length, "1.2\u{b7}10\u{b2} mm", "1.2e2 mm"),
        // Commas, points and blanks.
        (diameter, "3,5 mm", "3.5 mm"),
        (diameter, "0,125 in", "0.125 in"),
        (diameter, "\u{d8} 34,5mm", "34.5mm"),
        (length, "1.000,5 mm", "1000.5 mm"),
        (length, "1,000.5 mm", "1000.5 mm"),
        (length, "1 000 mm", "1000 mm"),
        (length, "1\u{2009}000,25 mm", "1000.25 mm"),
        (length, "1'000 mm", "1000 mm"),
        (remedy::<UpperDeviation>, "-0,02 mm", "-0.02 mm"),
        (remedy::<CuttingSpeed>, "1,250.5 ft/min", "1250.5 ft/min"),
        // Signs and letters that only look alike.
        (remedy::<Position>, "\u{2013}5 mm", "-5 mm"),
        (remedy::<Position>, "- 1/4 in", "-1/4 in"),
        (diameter, "1O mm", "10 mm"),
        (diameter, "O.5 in", "0.5 in"),
        (diameter, "34\u{200b} mm", "34 mm"),
        (remedy::<CuttingEdgeAngle>, "95\u{ba}", "95 deg"),
        (diameter, "1.5\u{201d}", "1.5 in"),
        (length, "2\u{2019}", "2 ft"),
        (diameter, "1.5''", "1.5 in"),
        // Two units for one quantity.
        (length, "5' 6\"", "66 in"),
        (length, "1 ft 3 1/2 in", "15 1/2 in"),
        (length, "1\u{2032}3\u{2033}", "15 in"),
        (remedy::<CuttingEdgeAngle>, "93\u{b0}30'", "93.5 deg"),
        // Names, other words for units, stray marks.
        (remedy::<Feed>, "f = 0.2 mm/rev", "0.2 mm/rev"),
        (remedy::<Ra>, "Ra 1.6 um", "1.6 um"),
        (remedy::<Ra>, "63 microinches", "63 uin"),
        (diameter, "34 millimetres", "34 mm"),
        (diameter, "1.5 in.", "1.5 in"),
        (diameter, "34 mm,", "34 mm"),
        (remedy::<CuttingEdgeAngle>, "95 degrees", "95 deg"),
        (remedy::<CuttingSpeed>, "300 sfm", "300 ft/min"),
        (remedy::<Feed>, "0.008 ipr", "0.008 in/rev"),
        (remedy::<SpindleSpeed>, "640 turns/min", "640 rpm"),
        (remedy::<SpindleSpeed>, "640 turns per minute", "640 rpm"),
        (diameter, "34 Millimeters", "34 mm"),
        (remedy::<MainForce>, "270 lb", "270 lbf"),
        (remedy::<Torque>, "20 ft-lb", "20 lbf ft"),
    ];
    for (told, given, text) in table {
        let told = told(given);
        assert!(
            told.starts_with(&format!("write \"{text}\"")),
            "{given}: {told}"
        );
    }
    // Plain numbers are written without quotation marks.
    for (given, number) in [
        ("1:10", "10"),
        ("1 : 20", "20"),
        ("1 in 12", "12"),
        ("1/10", "10"),
    ] {
        let told = remedy::<TaperRatio>(given);
        assert_eq!(told, format!("write {number}, the x of 1:x"), "{given}");
    }
    assert_eq!(remedy::<Efficiency>("75 %"), "write 0.75 for 75 %");
    assert!(remedy::<Efficiency>("0,75").starts_with("write 0.75, "));
    assert!(remedy::<Efficiency>("3/4").starts_with("write 0.75, "));
}

#[test]
fn a_slip_that_may_mean_two_things_is_told_without_a_text_that_is_guessed() {
    use turnwright::quantity::{
        CornerRadius, Diameter, HalfAngle, Ra, SpindleSpeed, TaperRatio, UpperDeviation, WorkLength,
    };
    let thousands = remedy::<WorkLength>("1,400 mm");
    assert!(
        thousands.contains("\"1400 mm\"") && thousands.contains("\"1.400 mm\""),
        "{thousands}"
    );
    let both = remedy::<UpperDeviation>("\u{b1}0.1 mm");
    assert!(
        both.contains("\"-0.1 mm\"") && both.contains("plus_minus"),
        "{both}"
    );
    assert!(remedy::<WorkLength>("\u{d8}34 mm").contains("not a diameter"));
    assert!(remedy::<CornerRadius>("\u{d8}0.8 mm").contains("not a diameter"));
    assert!(remedy::<WorkLength>("R17 mm").contains("not a radius"));
    assert!(remedy::<Ra>("Rz 6.3 um").contains("not Rz"));
    assert!(remedy::<Diameter>("\u{b1}0.1 mm").contains("without the two signs"));
    for given in ["30 \u{b1}0.1 mm", "30 mm h7", "30 h7 mm", "30 mm +0.1 -0.2"] {
        let told = remedy::<Diameter>(given);
        assert!(
            told.starts_with("write the size alone, \"30 mm\""),
            "{given}: {told}"
        );
    }
    let told = remedy::<Diameter>("1 1/4 +/-0.001 in");
    assert!(
        told.starts_with("write the size alone, \"1 1/4 in\""),
        "{told}"
    );
    assert!(remedy::<TaperRatio>("7:24").contains("24 divided by 7"));
    assert!(remedy::<TaperRatio>("10:1").contains("the length over the change"));
    // What reads, but is no such quantity, is told so.
    let small = remedy::<Diameter>("1.6\u{d7}10^-3 mm");
    assert!(
        small.starts_with("\"1.6e-3 mm\" would be read, but"),
        "{small}"
    );
    // Two sizes are no thousands, a remedy is not out of range, another kind stays another kind.
    for given in [
        "34 120 mm",
        "O mm",
        "10 mm\u{b2}",
        "1.6x103 mm",
        "34 mm x 120 mm",
        "0x22 mm",
    ] {
        let told = remedy::<Diameter>(given);
        assert!(!told.starts_with("write \""), "{given}: {told}");
    }
    assert!(remedy::<Diameter>("10 mm\u{b2}").contains("not an area"));
    assert!(!remedy::<SpindleSpeed>("640 min^2").starts_with("write \""));
    assert!(!remedy::<HalfAngle>("95o").starts_with("write \""));
}

#[test]
fn a_blank_of_any_width_and_a_true_minus_sign_are_read() {
    use turnwright::quantity::{Diameter, Position, Torque};
    for blank in ["\u{a0}", "\u{2009}", "\u{202f}", "\u{2007}"] {
        let length = format!("34{blank}mm").parse::<Diameter>();
        assert_eq!(length, Diameter::from_mm(34.0));
        let mixed = format!("1{blank}1/2{blank}in").parse::<Diameter>();
        assert_eq!(mixed, Diameter::from_mm(38.1));
        let torque = format!("28.8{blank}N{blank}m").parse::<Torque>();
        assert_eq!(torque, "28.8 N m".parse());
    }
    assert_eq!("\u{2212}5 mm".parse::<Position>(), Position::from_mm(-5.0));
    assert_eq!(
        "\u{2212}1/4 in".parse::<Position>(),
        Position::from_inch(-0.25)
    );
}

/// What a remedy says to write, where it is one text.
fn text_to_write(remedy: &str) -> Option<&str> {
    let (text, _) = remedy.strip_prefix("write \"")?.split_once('"')?;
    Some(text)
}

proptest! {
    #![proptest_config(crate::jobs::config(2000))]
    #[test]
    fn no_remedy_is_refused_in_its_turn(
        text in "[-+.,0-9\u{b1}\u{d8}\u{bd}\u{d7}x^eRdOo '\u{2019}\u{b0}\u{ba}/:%=]{0,9} ?(mm|in|deg|min|ft 3 in|\u{b0}3'|%|)\\.?"
    ) {
        use turnwright::quantity::{CuttingEdgeAngle, Diameter, Duration, Efficiency, HalfWidth, TaperRatio};
        macro_rules! holds {
            ($($t:ident)*) => { $(
                if let Err(error) = text.parse::<$t>()
                    && let Some(told) = text_to_write(error.remedy())
                {
                    prop_assert!(told.parse::<$t>().is_ok(), "{}: {}", text, error);
                }
            )* };
        }
        holds! { CuttingEdgeAngle Diameter Duration Efficiency HalfWidth TaperRatio }
    }
}
