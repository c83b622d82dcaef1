//! Units: NIST SP 811, appendix B (from memory), and what follows from the definitions.

use turnwright::*;

use crate::case::Case;

pub fn answer(case: &Case) -> Result<(), String> {
    for (field, convert) in FIELDS {
        if case.has(field) {
            return convert(case, field);
        }
    }
    Err(String::from("no quantity for this unit"))
}

type Convert = fn(&Case, &str) -> Result<(), String>;

const FIELDS: [(&str, Convert); 12] = [
    ("length", both::<WorkLength>),
    ("roughness", both::<Ra>),
    ("force", both::<MainForce>),
    ("stress", both::<SpecificCuttingForce>),
    ("power", both::<Power>),
    ("cutting_speed", both::<CuttingSpeed>),
    ("feed", both::<Feed>),
    ("torque", both::<Torque>),
    ("stiffness", both::<Stiffness>),
    ("density", both::<Density>),
    ("removal_rate", both::<RemovalRate>),
    ("unit_power", unit_power),
];

/// The same value in two units.
fn both<Q: Quantity>(case: &Case, field: &str) -> Result<(), String> {
    case.expect_trade::<Q>(field, case.converted::<Q>(field)?)
}

/// Unit power is a specific force.
fn unit_power(case: &Case, field: &str) -> Result<(), String> {
    let k_c = case.converted::<SpecificForceAtChip>(field)?;
    case.expect_trade::<SpecificForceAtChip>("specific_force", k_c)
}
