//! General tolerances of lengths: ISO 2768-1 (from memory).

use turnwright::standards::general_tolerance::{GeneralClass, linear};
use turnwright::{Tolerance, WorkLength};

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    let length: WorkLength = case.get("length")?;
    for class in [
        GeneralClass::Fine,
        GeneralClass::Medium,
        GeneralClass::Coarse,
        GeneralClass::VeryCoarse,
    ] {
        match linear(length, class) {
            Ok(found) if case.asks(class.name()) => {
                case.expect_trade::<Tolerance>(class.name(), found.value.mm())?;
            }
            Ok(found) => return Err(format!("{class}: {} where none is", found.value)),
            Err(error) if case.asks(class.name()) => return Err(error.to_string()),
            // The standard has no value there either.
            Err(_) => {}
        }
    }
    Ok(())
}
