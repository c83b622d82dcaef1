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
