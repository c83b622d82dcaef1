//! The inch view of an answer: every quantity in it rewritten to the nearest inch text, and the value of
//! every constant on record told in inch.
//!
//! Quantities arrive as newtypes of one name, recorded values as those of another; everything else passes
//! through unchanged.

use serde::Serialize;
use serde::ser::{
    SerializeMap, SerializeSeq, SerializeStruct, SerializeStructVariant, SerializeTuple,
    SerializeTupleStruct, SerializeTupleVariant, Serializer,
};

use crate::provenance::{RECORDED, RECORDED_AS};
use crate::quantity::serial::NEWTYPE;
use crate::quantity::text::inch_view;
use crate::quantity::told::{value_in, words_in};
use crate::quantity::unit::Units;

/// A value, shown in inch.
pub(super) struct Inch<'a, T: ?Sized>(pub(super) &'a T);

impl<T: Serialize + ?Sized> Serialize for Inch<'_, T> {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(View(s))
    }
}

struct View<S>(S);

macro_rules! pass {
    ($($name:ident: $t:ty;)*) => { $(
        fn $name(self, value: $t) -> Result<S::Ok, S::Error> {
            self.0.$name(value)
        }
    )* };
}

impl<S: Serializer> Serializer for View<S> {
    type Ok = S::Ok;
    type Error = S::Error;
    type SerializeSeq = View<S::SerializeSeq>;
    type SerializeTuple = View<S::SerializeTuple>;
    type SerializeTupleStruct = View<S::SerializeTupleStruct>;
    type SerializeTupleVariant = View<S::SerializeTupleVariant>;
    type SerializeMap = View<S::SerializeMap>;
    type SerializeStruct = View<S::SerializeStruct>;
    type SerializeStructVariant = View<S::SerializeStructVariant>;

    pass! {
        serialize_bool: bool; serialize_i8: i8; serialize_i16: i16; serialize_i32: i32; serialize_i64: i64;
        serialize_u8: u8; serialize_u16: u16; serialize_u32: u32; serialize_u64: u64; serialize_f32: f32;
        serialize_f64: f64; serialize_char: char; serialize_str: &str; serialize_bytes: &[u8];
        serialize_unit_struct: &'static str;
    }

    fn serialize_none(self) -> Result<S::Ok, S::Error> {
        self.0.serialize_none()
    }

    fn serialize_some<T: Serialize + ?Sized>(self, value: &T) -> Result<S::Ok, S::Error> {
        self.0.serialize_some(&Inch(value))
    }

    fn serialize_unit(self) -> Result<S::Ok, S::Error> {
        self.0.serialize_unit()
    }

    fn serialize_unit_variant(
        self,
        name: &'static str,
        at: u32,
        variant: &'static str,
    ) -> Result<S::Ok, S::Error> {
        self.0.serialize_unit_variant(name, at, variant)
    }

    fn serialize_newtype_struct<T: Serialize + ?Sized>(
        self,
        name: &'static str,
        value: &T,
    ) -> Result<S::Ok, S::Error> {
        let view: fn(&str) -> String = match name {
            NEWTYPE => inch_view,
            RECORDED => |text| value_in(text, Units::Inch),
            RECORDED_AS => |text| words_in(text, Units::Inch),
            _ => return self.0.serialize_newtype_struct(name, &Inch(value)),
        };
        let metric = serde_json::to_value(value).map_err(serde::ser::Error::custom)?;
        match metric.as_str() {
            Some(text) => self.0.serialize_str(&view(text)),
            None => self.0.serialize_newtype_struct(name, value),
        }
    }

    fn serialize_newtype_variant<T: Serialize + ?Sized>(
        self,
        name: &'static str,
        at: u32,
        variant: &'static str,
        value: &T,
    ) -> Result<S::Ok, S::Error> {
        self.0
            .serialize_newtype_variant(name, at, variant, &Inch(value))
    }

    fn serialize_seq(self, len: Option<usize>) -> Result<Self::SerializeSeq, S::Error> {
        self.0.serialize_seq(len).map(View)
    }

    fn serialize_tuple(self, len: usize) -> Result<Self::SerializeTuple, S::Error> {
        self.0.serialize_tuple(len).map(View)
    }

    fn serialize_tuple_struct(
        self,
        name: &'static str,
        len: usize,
    ) -> Result<Self::SerializeTupleStruct, S::Error> {
        self.0.serialize_tuple_struct(name, len).map(View)
    }

    fn serialize_tuple_variant(
        self,
        name: &'static str,
        at: u32,
        variant: &'static str,
        len: usize,
    ) -> Result<Self::SerializeTupleVariant, S::Error> {
        self.0
            .serialize_tuple_variant(name, at, variant, len)
            .map(View)
    }

    fn serialize_map(self, len: Option<usize>) -> Result<Self::SerializeMap, S::Error> {
        self.0.serialize_map(len).map(View)
    }

    fn serialize_struct(
        self,
        name: &'static str,
        len: usize,
    ) -> Result<Self::SerializeStruct, S::Error> {
        self.0.serialize_struct(name, len).map(View)
    }

    fn serialize_struct_variant(
        self,
        name: &'static str,
        at: u32,
        variant: &'static str,
        len: usize,
    ) -> Result<Self::SerializeStructVariant, S::Error> {
        self.0
            .serialize_struct_variant(name, at, variant, len)
            .map(View)
    }
}

macro_rules! compound {
    ($($t:ident: $($name:ident($($key:ident)?))+;)*) => { $(
        impl<C: $t> $t for View<C> {
            type Ok = C::Ok;
            type Error = C::Error;

            $(compound! { @method $name $($key)? })+

            fn end(self) -> Result<C::Ok, C::Error> {
                self.0.end()
            }
        }
    )* };
    (@method $name:ident) => {
        fn $name<T: Serialize + ?Sized>(&mut self, value: &T) -> Result<(), C::Error> {
            self.0.$name(&Inch(value))
        }
    };
    (@method $name:ident key) => {
        fn $name<T: Serialize + ?Sized>(&mut self, key: &'static str, value: &T) -> Result<(), C::Error> {
            self.0.$name(key, &Inch(value))
        }
    };
}

compound! {
    SerializeSeq: serialize_element();
    SerializeTuple: serialize_element();
    SerializeTupleStruct: serialize_field();
    SerializeTupleVariant: serialize_field();
    SerializeStruct: serialize_field(key);
    SerializeStructVariant: serialize_field(key);
    SerializeMap: serialize_key() serialize_value();
}
