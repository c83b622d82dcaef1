//! Quantities in serde: text with units; plain ratios as numbers.

use super::{Quantity, unit::kind_rows};
use serde::de::{self, Visitor};
use std::{fmt, marker::PhantomData};

/// The name under which a quantity is written as a newtype, so that a document can show it in
/// another system of units.
pub(crate) const NEWTYPE: &str = "turnwright::Quantity";

pub(super) fn write<Q: Quantity, S: serde::Serializer>(q: Q, s: S) -> Result<S::Ok, S::Error> {
    let written = Written {
        row: Q::ROW,
        value: q.trade(),
    };
    serde::Serialize::serialize(&written, s)
}

/// A value of a quantity, in its trade unit.
pub(crate) struct Written {
    pub(crate) row: &'static super::Row,
    pub(crate) value: f64,
}

impl serde::Serialize for Written {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        if std::ptr::eq(self.row.kind(), &kind_rows::Number) {
            s.serialize_f64(self.value)
        } else {
            s.serialize_newtype_struct(NEWTYPE, &Text(self))
        }
    }
}

struct Text<'a>(&'a Written);

impl serde::Serialize for Text<'_> {
    fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let exact = super::text::Exact {
            kind: self.0.row.kind(),
            value: self.0.value,
            system: super::Units::Metric,
        };
        match exact.short(&mut [0; super::text::ROOM]) {
            Some(short) => s.serialize_str(short),
            None => s.collect_str(&exact),
        }
    }
}

pub(super) fn read<'de, Q: Quantity, D: serde::Deserializer<'de>>(d: D) -> Result<Q, D::Error> {
    d.deserialize_any(Read(PhantomData))
}

struct Read<Q>(PhantomData<Q>);

impl<'de, Q: Quantity> Visitor<'de> for Read<Q> {
    type Value = Q;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} such as \"{}\"", Q::ROW.what(), Q::ROW.example())
    }

    fn visit_str<E: de::Error>(self, text: &str) -> Result<Q, E> {
        text.parse().map_err(E::custom)
    }

    fn visit_f64<E: de::Error>(self, value: f64) -> Result<Q, E> {
        if std::ptr::eq(Q::ROW.kind(), &kind_rows::Number) {
            Q::from_trade(value).map_err(E::custom)
        } else {
            value.to_string().parse().map_err(E::custom)
        }
    }

    fn visit_i64<E: de::Error>(self, value: i64) -> Result<Q, E> {
        self.visit_f64(value as f64)
    }

    fn visit_u64<E: de::Error>(self, value: u64) -> Result<Q, E> {
        self.visit_f64(value as f64)
    }

    fn visit_newtype_struct<D: serde::Deserializer<'de>>(self, d: D) -> Result<Q, D::Error> {
        d.deserialize_any(self)
    }
}
