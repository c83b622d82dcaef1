//! Quantities from text, as a cell or a form has them.

use std::ffi::c_char;

use super::document::{bytes_of, utf8};
use super::status::{tw_error, tw_status};
use super::{call, put};
use crate::error::{Error, ErrorKind, any_of};
use crate::quantity::rows;
use crate::quantity::unit::{Unit, Units};

/// The number in a unit that a text with its own unit says, read as a document reads it: "1 1/2 in"
/// is 38.1 in millimetres. What tw_range says is checked; a plain ratio needs no unit.
///
/// tw_answer to { "quantities": {} } lists quantities and units with their numbers, to fill a menu.
/// text is NUL-ended UTF-8. quantity is a number of enum tw_quantity, unit one of enum tw_unit of the
/// same kind: that of the answer, and of the words where it is an inch unit. detail may be NULL. After
/// a failure value is NaN.
///
/// Source: the definitions of the units: the SI, and the international inch and pound of 1959.
/// Example: tw_value_of_text("1 1/2 in", TW_QUANTITY_DIAMETER, TW_UNIT_LENGTH_MILLIMETER, &value, NULL);
///     value is 38.100.
#[unsafe(no_mangle)]
#[must_use]
pub unsafe extern "C" fn tw_value_of_text(
    text: *const c_char,
    quantity: i32,
    unit: i32,
    value: *mut f64,
    detail: *mut tw_error,
) -> tw_status {
    call(
        detail,
        !value.is_null(),
        || {
            // SAFETY: NULL or NUL-ended (contract of the header).
            let text = unsafe { bytes_of(text, "text")? };
            let text = utf8(text, "text")?;
            Ok(value_of(text, quantity, unit)?)
        },
        // SAFETY: outputs are NULL or may be written (contract of the header).
        |answer| unsafe { put(value, answer) },
    )
}

fn value_of(text: &str, quantity: i32, unit: i32) -> Result<f64, Error> {
    let row = rows().iter().find(|row| row.code() == quantity);
    let row = row.ok_or_else(|| {
        Error::new(
            ErrorKind::UnknownName,
            "quantity",
            quantity.to_string(),
            "a number of enum tw_quantity",
            "pass one of its names",
        )
    })?;
    let units = row.kind().units();
    let known = units.iter().find(|known| known.code() == unit);
    let unit = known.ok_or_else(|| {
        Error::new(
            ErrorKind::WrongUnit,
            "unit",
            format!("unit {unit}"),
            format!(
                "a unit of {}: {}",
                row.kind().what(),
                any_of(units.iter().map(Unit::text))
            ),
            "pass a number of enum tw_unit of that kind",
        )
    })?;
    let value = row
        .value_of_text(text)
        .map_err(|error| match unit.is_inch(row.kind()) {
            true => error.at("text").in_units(Units::Inch),
            false => error.at("text"),
        })?;
    Ok(unit.from_trade(value))
}
