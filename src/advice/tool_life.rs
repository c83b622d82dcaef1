//! What must be said of a reckoned tool life.

use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::physics::wear::{self, LifeLaw, UsualExponent};
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::{CuttingSpeed, ToolLife};
use crate::shop::figure::{SpeedBand, ToolMaterial};

/// How far beyond the speeds measured a law of lives is trusted.
pub const TRUSTED_BEYOND: Sourced<f64> = Sourced::new(
    1.25,
    "judgement, no source: a quarter beyond the speeds at which lives were measured",
    Standing::Estimate,
);

/// How long an edge of high-speed steel lasts at the middle of its material's band of speeds.
pub const LIFE_IN_BAND_OF_HIGH_SPEED_STEEL: Sourced<ToolLife> = Sourced::new(
    ToolLife::computed_trade(3600.0),
    "common practice, no source: tables for high-speed steel are made for about 60 min",
    Standing::CommonPractice,
);

/// How long an edge of carbide lasts at the middle of its material's band of speeds.
pub const LIFE_IN_BAND_OF_CARBIDE: Sourced<ToolLife> = Sourced::new(
    ToolLife::computed_trade(900.0),
    "common practice, no source: tables for indexable carbide are made for about 15 min",
    Standing::CommonPractice,
);

/// How long an edge lasts in cut at a speed in or above its material's band; below the band it is
/// taken to last as long as at its low end: an edge builds up there rather than lasting longer.
///
/// # Errors
/// `cutting_speed`, so far above the band that no life is plausible.
/// # Source
/// Taylor's law through the life at the middle of the band, with the usual exponent.
/// # Example
/// ```
/// use turnwright::{advice::tool_life::life_in_band, Material, Provenance, ToolMaterial};
/// let steel = Material::named("C45")?;
/// let band = steel.speed_band(ToolMaterial::HighSpeedSteel).unwrap().value;
/// let life = |speed| life_in_band(ToolMaterial::HighSpeedSteel, &band, speed, &mut Provenance::default());
/// assert!((life(band.middle())?.minutes() - 60.0).abs() < 1e-6);
/// assert!(life(band.high())? < life(band.low())?);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn life_in_band(
    tool: ToolMaterial,
    band: &SpeedBand,
    cutting_speed: CuttingSpeed,
    provenance: &mut Provenance,
) -> Result<ToolLife, Error> {
    let (life, usual) = match tool {
        ToolMaterial::HighSpeedSteel => {
            (&LIFE_IN_BAND_OF_HIGH_SPEED_STEEL, &wear::HIGH_SPEED_STEEL)
        }
        ToolMaterial::Carbide => (&LIFE_IN_BAND_OF_CARBIDE, &wear::CARBIDE),
    };
    let life = provenance.open("life of an edge at the middle of the band", life);
    let exponent = usual.value.usual;
    provenance.record(
        "usual exponent of tool life",
        &exponent,
        usual.source,
        usual.standing,
    );
    let law = LifeLaw::through(band.middle(), life, exponent)?;
    wear::life_at(law, cutting_speed.max(band.low()))
}

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
