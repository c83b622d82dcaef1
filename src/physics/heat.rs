//! Heat: how far the work grows, and how warm a cut makes it.
//!
//! Symbols: alpha thermal expansion, Delta T rise above 20 degC (the temperature at which sizes
//! hold, ISO 1, from memory), d diameter, L length, P_c cutting power, c specific heat, m mass.

use std::f64::consts::PI;

use uom::si::f64::{Length, TemperatureInterval};
use uom::si::temperature_interval::kelvin;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{
    Density, Diameter, Duration, HeatShare, Mass, Power, SpecificHeat, TemperatureRise,
    ThermalExpansion, ThermalGrowth, WorkLength,
};

/// Share of the cutting power that stays in the work: the least and the largest.
///
/// It falls as the cutting speed rises: the chip then carries more away.
pub const HEAT_SHARE: Sourced<[HeatShare; 2]> = Sourced::new(
    [
        HeatShare::computed_trade(0.05),
        HeatShare::computed_trade(0.20),
    ],
    "from memory of Shaw, Metal Cutting Principles, and of Trent and Wright, Metal Cutting: 5 to 20 %",
    Standing::FromMemory,
);

/// alpha Delta T, the share by which everything grows.
#[inline]
fn strain(expansion: ThermalExpansion, rise: TemperatureRise) -> f64 {
    // 1 um/(m K) is 1e-6 a kelvin; uom has no kind for a share a kelvin.
    expansion.um_per_m_k() * 1e-6 * rise.temperature_interval().get::<kelvin>()
}

#[inline]
fn growth(length: Length, expansion: ThermalExpansion, rise: TemperatureRise) -> ThermalGrowth {
    ThermalGrowth::computed(length * strain(expansion, rise))
}

/// How far a diameter grows by a rise of temperature.
///
/// Delta d = alpha d Delta T
///
/// # Units
/// The types carry them.
/// # Range
/// The same temperature all through; a solid bar and a tube, and its bore, grow alike.
/// # Source
/// Definition of the thermal expansion.
/// # Example
/// ```
/// use turnwright::physics::heat::diameter_growth;
/// let grown = diameter_growth("60 mm".parse()?, "23.4 um/(m K)".parse()?, "20 K".parse()?);
/// assert!((grown.mm() - 0.02808).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn diameter_growth(
    diameter: Diameter,
    expansion: ThermalExpansion,
    rise: TemperatureRise,
) -> ThermalGrowth {
    growth(diameter.length(), expansion, rise)
}

/// How far a length grows by a rise of temperature.
///
/// Delta L = alpha L Delta T
///
/// # Units
/// The types carry them.
/// # Range
/// The same temperature all along, and nothing that holds the ends; see `strut` where something does.
/// # Source
/// Definition of the thermal expansion.
/// # Example
/// ```
/// use turnwright::physics::heat::length_growth;
/// let grown = length_growth("400 mm".parse()?, "11.5 um/(m K)".parse()?, "15 K".parse()?);
/// assert!((grown.mm() - 0.069).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn length_growth(
    length: WorkLength,
    expansion: ThermalExpansion,
    rise: TemperatureRise,
) -> ThermalGrowth {
    growth(length.length(), expansion, rise)
}

/// What a diameter measured warm will be at 20 degC.
///
/// d_20 = d / (1 + alpha Delta T)
///
/// # Units
/// The types carry them.
/// # Range
/// An instrument that is itself at 20 degC; one as warm as the work errs by its own growth.
/// # Source
/// Definition of the thermal expansion; the temperature of reference is that of ISO 1 (from memory).
/// # Example
/// ```
/// use turnwright::physics::heat::diameter_at_20;
/// let cold = diameter_at_20("60.028 mm".parse()?, "23.4 um/(m K)".parse()?, "20 K".parse()?);
/// assert!((cold.mm() - 60.0).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn diameter_at_20(
    measured: Diameter,
    expansion: ThermalExpansion,
    rise: TemperatureRise,
) -> Diameter {
    Diameter::computed(measured.length() / (1.0 + strain(expansion, rise)))
}

/// What a length measured warm will be at 20 degC.
///
/// L_20 = L / (1 + alpha Delta T)
///
/// # Units
/// The types carry them.
/// # Range
/// An instrument that is itself at 20 degC.
/// # Source
/// Definition of the thermal expansion; the temperature of reference is that of ISO 1 (from memory).
/// # Example
/// ```
/// use turnwright::physics::heat::length_at_20;
/// let cold = length_at_20("100.0115 mm".parse()?, "11.5 um/(m K)".parse()?, "10 K".parse()?);
/// assert!((cold.mm() - 100.0).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn length_at_20(
    measured: WorkLength,
    expansion: ThermalExpansion,
    rise: TemperatureRise,
) -> WorkLength {
    WorkLength::computed(measured.length() / (1.0 + strain(expansion, rise)))
}

/// The mass of a solid round bar.
///
/// m = rho pi d^2 L / 4
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::physics::heat::mass_of_bar;
/// let m = mass_of_bar("7850 kg/m3".parse()?, "40 mm".parse()?, "100 mm".parse()?);
/// assert!((m.kg() - 0.98646).abs() < 1e-5);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn mass_of_bar(density: Density, diameter: Diameter, length: WorkLength) -> Mass {
    let (rho, d, l) = (density.mass_density(), diameter.length(), length.length());
    Mass::computed(rho * (d * d * l * (PI / 4.0)))
}

/// How much warmer a cut makes the work, without any loss: an upper bound.
///
/// Delta T = share P_c t / (m c)
///
/// # Units
/// The types carry them.
/// # Range
/// Heat spread all through the work and none lost to air, coolant or chuck: the truth lies below.
/// The share is 5 to 20 % ([`HEAT_SHARE`]).
/// # Errors
/// `mass`, when so little mass takes so much heat that no rise of temperature is plausible.
/// # Source
/// Definition of the specific heat; the share from memory of the text books.
/// # Example
/// ```
/// use turnwright::physics::heat::temperature_rise;
/// let rise = temperature_rise(
///     "1.2 kW".parse()?, "0.1".parse()?, "60 s".parse()?, "0.986 kg".parse()?, "470 J/(kg K)".parse()?,
/// )?;
/// assert_eq!(rise.kelvin().round(), 16.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn temperature_rise(
    power: Power,
    share: HeatShare,
    time: Duration,
    mass: Mass,
    specific_heat: SpecificHeat,
) -> Result<TemperatureRise, Error> {
    use uom::si::specific_heat_capacity::joule_per_kilogram_kelvin;
    let (p, t, m) = (power.power(), time.time(), mass.mass());
    let c = uom::si::f64::SpecificHeatCapacity::new::<joule_per_kilogram_kelvin>(
        specific_heat.j_per_kg_k(),
    );
    let rise: TemperatureInterval = p * share.value() * t / (m * c);
    TemperatureRise::from_temperature_interval(rise).map_err(|_| {
        Error::new(
            ErrorKind::Impossible,
            "mass",
            mass.to_string(),
            format!(
                "a mass that a heat of {:.0} J does not melt",
                p.get::<uom::si::power::watt>() * share.value() * time.seconds()
            ),
            "check mass, time and power: without any loss no work takes that much heat",
        )
    })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_size_taken_to_20_degrees_grows_back_to_what_was_measured(
            d in any::<Diameter>(), alpha in any::<ThermalExpansion>(), rise in -100.0..300.0_f64,
        ) {
            let rise = TemperatureRise::from_kelvin(rise).unwrap();
            let cold = diameter_at_20(d, alpha, rise);
            let back = cold.mm() + diameter_growth(cold, alpha, rise).mm();
            // One division, one product and one sum of doubles.
            prop_assert!((back - d.mm()).abs() <= 4.0 * f64::EPSILON * d.mm());
            let l = WorkLength::from_mm(d.mm()).unwrap();
            prop_assert_eq!(length_at_20(l, alpha, rise).mm(), cold.mm());
            prop_assert_eq!(length_growth(l, alpha, rise), diameter_growth(d, alpha, rise));
        }

        #[test]
        fn growth_is_linear_and_changes_sign_with_the_rise(d in 1.0..500.0_f64, rise in 0.1..200.0_f64) {
            let alpha: ThermalExpansion = "11.5 um/(m K)".parse().unwrap();
            let d = Diameter::from_mm(d).unwrap();
            let of = |k: f64| diameter_growth(d, alpha, TemperatureRise::from_kelvin(k).unwrap()).mm();
            prop_assert_eq!(of(-rise), -of(rise));
            prop_assert!((of(2.0 * rise) - 2.0 * of(rise)).abs() < 1e-15);
        }
    }

    #[test]
    fn heat_that_no_mass_takes_is_refused() {
        let error = temperature_rise(
            "100 kW".parse().unwrap(),
            "0.2".parse().unwrap(),
            "10 h".parse().unwrap(),
            "0.01 kg".parse().unwrap(),
            "470 J/(kg K)".parse().unwrap(),
        )
        .unwrap_err();
        assert_eq!(
            (error.field(), error.kind()),
            ("mass", ErrorKind::Impossible)
        );
    }
}
