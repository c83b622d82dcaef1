//! What must be said beside every reckoned grip.

use crate::caution::{Caution, Severity};
use crate::quantity::SpindleSpeed;

/// The caution that stands beside every figure of a chuck's grip or highest speed.
///
/// # Example
/// ```
/// use turnwright::advice::grip::manual_rules;
/// assert_eq!(manual_rules().code(), "chuck_manual_rules");
/// ```
#[must_use]
pub fn manual_rules() -> Caution {
    Caution::new(
        Severity::Danger,
        "chuck_manual_rules",
        "Reckoned grip is no promise. The manual of the chuck and the speed marked on it rule; a chuck without a marked \
         speed, with worn jaws or with jaws that stand out of the body is not run fast at all. Stand out of the plane \
         of the chuck, guard closed. Where you have not been shown how, ask someone qualified.",
    )
}

/// The lower of a reckoned highest speed and the one marked on the chuck.
///
/// # Example
/// ```
/// use turnwright::advice::grip::highest_allowed;
/// let n = highest_allowed("4100 rpm".parse()?, "2500 rpm".parse()?);
/// assert_eq!(n.rpm(), 2500.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn highest_allowed(reckoned: SpindleSpeed, marked: SpindleSpeed) -> SpindleSpeed {
    reckoned.min(marked)
}
