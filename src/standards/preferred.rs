//! Preferred numbers, and the corner radii that inserts come in.

use crate::provenance::{Sourced, Standing};
use crate::quantity::CornerRadius;

const fn iso_3<const N: usize>(values: [f64; N]) -> Sourced<[f64; N]> {
    Sourced::new(values, "from memory of ISO 3", Standing::FromMemory)
}

/// Five values a decade, each about 1.6 times the one before.
///
/// # Source
/// ISO 3, from memory; each within 1.3 % of 10^(k/5).
/// # Example
/// ```
/// assert_eq!(turnwright::standards::preferred::R5.value, [1.0, 1.6, 2.5, 4.0, 6.3]);
/// ```
pub static R5: Sourced<[f64; 5]> = iso_3([1.0, 1.6, 2.5, 4.0, 6.3]);

/// Ten values a decade, each about 1.26 times the one before.
///
/// # Source
/// ISO 3, from memory; each within 1.3 % of 10^(k/10).
/// # Example
/// ```
/// assert!(turnwright::standards::preferred::R10.value.contains(&3.15));
/// ```
pub static R10: Sourced<[f64; 10]> = iso_3([1.0, 1.25, 1.6, 2.0, 2.5, 3.15, 4.0, 5.0, 6.3, 8.0]);

/// Twenty values a decade, each about 1.12 times the one before: most gearboxes step so, or by
/// every second or third of them.
///
/// # Source
/// ISO 3, from memory; each within 1.3 % of 10^(k/20).
/// # Example
/// ```
/// assert!(turnwright::standards::preferred::R20.value.contains(&7.1));
/// ```
pub static R20: Sourced<[f64; 20]> = iso_3([
    1.0, 1.12, 1.25, 1.4, 1.6, 1.8, 2.0, 2.24, 2.5, 2.8, 3.15, 3.55, 4.0, 4.5, 5.0, 5.6, 6.3, 7.1,
    8.0, 9.0,
]);

/// Forty values a decade, each about 1.06 times the one before.
///
/// # Source
/// ISO 3, from memory; each within 1.3 % of 10^(k/40).
/// # Example
/// ```
/// assert!(turnwright::standards::preferred::R40.value.contains(&1.06));
/// ```
pub static R40: Sourced<[f64; 40]> = iso_3([
    1.0, 1.06, 1.12, 1.18, 1.25, 1.32, 1.4, 1.5, 1.6, 1.7, 1.8, 1.9, 2.0, 2.12, 2.24, 2.36, 2.5,
    2.65, 2.8, 3.0, 3.15, 3.35, 3.55, 3.75, 4.0, 4.25, 4.5, 4.75, 5.0, 5.3, 5.6, 6.0, 6.3, 6.7,
    7.1, 7.5, 8.0, 8.5, 9.0, 9.5,
]);

/// The code of a corner radius in an insert's name, and the radius.
pub type CornerCode = (&'static str, CornerRadius);

const fn mm(radius: f64) -> CornerRadius {
    CornerRadius::computed_trade(radius)
}

const fn inches(parts: f64, of: f64) -> CornerRadius {
    CornerRadius::computed_trade(parts * 254.0 / (of * 10.0))
}

/// Corner radii of metric inserts: the code is the radius in tenths of a millimetre.
///
/// # Source
/// ISO 1832, from memory. Code 00 (sharp, or as stated) has no radius and is not listed.
/// # Example
/// ```
/// use turnwright::standards::preferred::CORNER_RADII;
/// let (code, radius) = CORNER_RADII.value[3];
/// assert_eq!((code, radius.mm()), ("08", 0.8));
/// ```
pub static CORNER_RADII: Sourced<[CornerCode; 8]> = Sourced::new(
    [
        ("01", mm(0.1)),
        ("02", mm(0.2)),
        ("04", mm(0.4)),
        ("08", mm(0.8)),
        ("12", mm(1.2)),
        ("16", mm(1.6)),
        ("24", mm(2.4)),
        ("32", mm(3.2)),
    ],
    "from memory of ISO 1832",
    Standing::FromMemory,
);

/// Corner radii of inch inserts: the code is the radius in 64ths of an inch.
///
/// Code 2 is 0.79375 mm, not 0.8 mm: two sizes.
///
/// # Source
/// ANSI B212.4, from memory. Code 0.5 is 1/128 in.
/// # Example
/// ```
/// use turnwright::standards::preferred::CORNER_RADII_INCH;
/// let (code, radius) = CORNER_RADII_INCH.value[2];
/// assert_eq!((code, radius.mm()), ("2", 0.79375));
/// ```
pub static CORNER_RADII_INCH: Sourced<[CornerCode; 7]> = Sourced::new(
    [
        ("0.5", inches(1.0, 128.0)),
        ("1", inches(1.0, 64.0)),
        ("2", inches(1.0, 32.0)),
        ("3", inches(3.0, 64.0)),
        ("4", inches(1.0, 16.0)),
        ("6", inches(3.0, 32.0)),
        ("8", inches(1.0, 8.0)),
    ],
    "from memory of ANSI B212.4",
    Standing::FromMemory,
);

#[cfg(test)]
mod tests {
    use super::*;

    fn near_the_powers_of_ten(series: &[f64]) {
        for (k, value) in series.iter().enumerate() {
            let exact = 10_f64.powf(k as f64 / series.len() as f64);
            assert!((value / exact - 1.0).abs() < 0.013, "{value}");
        }
    }

    #[test]
    fn every_preferred_number_is_near_its_power_of_ten() {
        // ISO 3, from memory: each within 1.3 % of 10^(k/n).
        near_the_powers_of_ten(&R5.value);
        near_the_powers_of_ten(&R10.value);
        near_the_powers_of_ten(&R20.value);
        near_the_powers_of_ten(&R40.value);
    }

    #[test]
    fn each_series_is_every_second_value_of_the_next() {
        assert!(R5.value.iter().eq(R10.value.iter().step_by(2)));
        assert!(R10.value.iter().eq(R20.value.iter().step_by(2)));
        assert!(R20.value.iter().eq(R40.value.iter().step_by(2)));
    }

    #[test]
    fn the_codes_of_metric_inserts_are_tenths_of_a_millimetre() {
        // ISO 1832, corner radius in tenths of a millimetre, from memory.
        let expected = [0.2, 0.4, 0.8, 1.2, 1.6, 2.4, 3.2];
        let codes = ["02", "04", "08", "12", "16", "24", "32"];
        for ((code, radius), (expected_code, expected)) in CORNER_RADII.value[1..]
            .iter()
            .zip(codes.iter().zip(expected))
        {
            assert_eq!((code, radius.mm()), (expected_code, expected));
        }
    }

    #[test]
    fn the_codes_of_inch_inserts_are_64ths_of_an_inch() {
        // ANSI B212.4, corner radius in 64ths of an inch, from memory.
        let expected = [0.015625, 0.03125, 0.046875, 0.0625, 0.09375];
        for ((_, radius), expected) in CORNER_RADII_INCH.value[1..6].iter().zip(expected) {
            assert!((radius.inch() / expected - 1.0).abs() < 1e-12);
        }
    }
}
