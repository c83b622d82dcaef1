//! What must be said of a specific force that was measured.

use crate::caution::{Caution, Severity};
use crate::provenance::{Provenance, Sourced, Standing};

/// Below this share of the motor's power a cut is measured badly.
pub const LEAST_SHARE: Sourced<f64> = Sourced::new(
    0.3,
    "judgement, no source: the difference of two nearly equal readings, and losses that change with the load",
    Standing::Estimate,
);

/// A ratio to the table, either way, beyond which something else than the bar is looked at first.
pub const FAR_FROM_THE_TABLE: Sourced<f64> = Sourced::new(
    1.5,
    "judgement, no source: bars of one name differ by 20 to 30 %, from memory",
    Standing::Estimate,
);

/// What must be said of a cut that takes this share of the motor's power; no share where the idle
/// power is not known.
///
/// # Example
/// ```
/// use turnwright::{advice::measured_force::share, Provenance};
/// let told = |of| share(of, &mut Provenance::default()).map(|caution| caution.code());
/// assert_eq!(told(Some(0.6)), None);
/// assert_eq!(told(Some(0.1)), Some("small_share"));
/// assert_eq!(told(None), Some("idle_power_unknown"));
/// ```
#[must_use]
pub fn share(share: Option<f64>, provenance: &mut Provenance) -> Option<Caution> {
    let Some(share) = share else {
        return Some(Caution::new(
            Severity::Warning,
            "idle_power_unknown",
            "The power that the lathe takes without a cut is still in the figure, so that it is too large: measure it at \
             the same spindle speed and give idle_power.",
        ));
    };
    let least = provenance.open("least share of the motor's power", &LEAST_SHARE);
    (share < least).then(|| {
        Caution::new(
            Severity::Warning,
            "small_share",
            format!(
                "The cut takes {:.0} % of the motor's power: the figure is uncertain. Take a heavier cut, as far as \
                 holding and drive allow.",
                100.0 * share
            ),
        )
    })
}

/// What must be said of a main force so many times that of the table.
///
/// # Example
/// ```
/// use turnwright::{advice::measured_force::against_the_table, Provenance};
/// let told = |ratio| against_the_table(ratio, &mut Provenance::default()).is_some();
/// assert!(!told(1.2) && told(2.0) && told(0.5));
/// ```
#[must_use]
pub fn against_the_table(ratio: f64, provenance: &mut Provenance) -> Option<Caution> {
    let far = provenance.open("ratio to the table that is far", &FAR_FROM_THE_TABLE);
    (ratio > far || ratio < 1.0 / far).then(|| {
        Caution::new(
            Severity::Warning,
            "far_from_the_table",
            format!(
                "{ratio:.2} times the table's figure is more than bars of one name differ: look at the reading, idle \
                 power, efficiency, the material and the edge of the tool first."
            ),
        )
    })
}
