//! What must be said of a reckoned tool life.

use crate::caution::{Caution, Severity};
use crate::physics::wear::UsualExponent;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::CuttingSpeed;

/// How far beyond the speeds measured a law of lives is trusted.
pub const TRUSTED_BEYOND: Sourced<f64> = Sourced::new(
    1.25,
    "judgement, no source: a quarter beyond the speeds at which lives were measured",
    Standing::Estimate,
);

/// The cautions of a speed that follows from a law of tool life: `measured` are the speeds at which
/// lives were measured, `usual` the exponent where a usual one was taken.
///
/// # Example
/// ```
/// use turnwright::{advice::tool_life::cautions, Provenance};
/// let measured = ["40 m/min".parse()?, "60 m/min".parse()?];
/// let all = cautions("90 m/min".parse()?, &measured, None, &mut Provenance::default());
/// assert!(all.iter().any(|caution| caution.code() == "beyond_measured"));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn cautions(
    cutting_speed: CuttingSpeed,
    measured: &[CuttingSpeed],
    usual: Option<&UsualExponent>,
    provenance: &mut Provenance,
) -> Vec<Caution> {
    let mut cautions = Vec::new();
    if let Some(usual) = usual {
        cautions.push(Caution::new(
            Severity::Warning,
            "usual_exponent",
            format!(
                "The exponent is a usual one; books give {} to {} for this tool material. Measure a second life at another \
                 speed.",
                usual.least, usual.largest
            ),
        ));
    }
    if let (Some(slowest), Some(fastest)) = (measured.iter().min(), measured.iter().max()) {
        let beyond = provenance.open("trust beyond the speeds measured", &TRUSTED_BEYOND);
        let v = cutting_speed.m_per_min();
        if v > fastest.m_per_min() * beyond || v * beyond < slowest.m_per_min() {
            cautions.push(Caution::new(
                Severity::Warning,
                "beyond_measured",
                "This speed lies well beyond those at which lives were measured: the law may not hold there. A life of its \
                 own has to prove it.",
            ));
        }
        if measured.len() == 2 {
            cautions.push(Caution::new(
                Severity::Note,
                "two_lives",
                "Two lives say nothing of their scatter; lives of one speed differ by half and more.",
            ));
        }
    }
    cautions.push(Caution::new(
        Severity::Note,
        "not_a_spindle_speed",
        "A cutting speed that pays is no leave to run it: chuck, work, machine and power have their own limits.",
    ));
    cautions
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_speed_well_beyond_the_measured_ones_is_warned_of() {
        let of = |v: f64| {
            let speed = |v| CuttingSpeed::from_m_per_min(v).unwrap();
            cautions(
                speed(v),
                &[speed(40.0), speed(60.0)],
                None,
                &mut Provenance::default(),
            )
            .iter()
            .any(|caution| caution.code() == "beyond_measured")
        };
        assert!(of(30.0) && of(80.0));
        assert!(!of(33.0) && !of(74.0));
    }
}
