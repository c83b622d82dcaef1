//! What a figure of a material is: its value, where it comes from, how far to trust it; and the
//! figures that are no plain quantity.
//!
//! Public through [`material`](super::material).

use std::borrow::Cow;
use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::{Provenance, Recorded, Sourced, Standing};
use crate::quantity::CuttingSpeed;

/// A figure of a material, with where it comes from.
///
/// Like [`Sourced`], but the source may also be a text that the asker brought.
///
/// ```
/// use turnwright::shop::material::Figure;
/// use turnwright::Standing;
/// let figure = Figure::given(210);
/// assert_eq!((figure.value, figure.standing), (210, Standing::Given));
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Figure<T> {
    /// The figure.
    pub value: T,
    /// Where it comes from, in words.
    pub source: Cow<'static, str>,
    /// How far to trust it.
    pub standing: Standing,
}

impl<T> Figure<T> {
    /// A figure that the asker gave.
    #[must_use]
    pub const fn given(value: T) -> Self {
        Self {
            value,
            source: Cow::Borrowed("given by the asker"),
            standing: Standing::Given,
        }
    }
}

impl<T: Copy + Recorded> Figure<T> {
    /// Records that this figure is used as `what`, and hands out its value.
    pub fn open(&self, what: impl Into<Cow<'static, str>>, provenance: &mut Provenance) -> T {
        provenance.record(what, &self.value, self.source.clone(), self.standing);
        self.value
    }
}

impl<T> From<Sourced<T>> for Figure<T> {
    fn from(constant: Sourced<T>) -> Self {
        Self {
            value: constant.value,
            source: Cow::Borrowed(constant.source),
            standing: constant.standing,
        }
    }
}

/// What the cutting edge is made of.
///
/// ```
/// use turnwright::shop::material::ToolMaterial;
/// assert_eq!(ToolMaterial::HighSpeedSteel.name(), "high_speed_steel");
/// assert_eq!(ToolMaterial::Carbide.to_string(), "carbide");
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize, serde::Deserialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum ToolMaterial {
    /// High-speed steel: a ground bit.
    HighSpeedSteel,
    /// Cemented carbide: brazed or an indexable insert.
    Carbide,
}

impl ToolMaterial {
    /// The name as documents spell it.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::HighSpeedSteel => "high_speed_steel",
            Self::Carbide => "carbide",
        }
    }
}

impl fmt::Display for ToolMaterial {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.pad(self.name())
    }
}

/// Group of a work material by its use (ISO 513).
///
/// ```
/// use turnwright::shop::material::{Iso513Group, Material};
/// assert_eq!(Material::named("EN-GJL-250")?.group(), Some(Iso513Group::K));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub enum Iso513Group {
    /// Steel, and stainless steel other than austenitic.
    P,
    /// Austenitic and duplex stainless steel.
    M,
    /// Cast iron.
    K,
    /// Non-ferrous metals and plastics.
    N,
    /// Titanium and heat-resisting alloys.
    S,
    /// Hardened steel.
    H,
}

impl Iso513Group {
    /// The letter of the group.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::P => "P",
            Self::M => "M",
            Self::K => "K",
            Self::N => "N",
            Self::S => "S",
            Self::H => "H",
        }
    }
}

/// Cutting speeds from low to high.
///
/// ```
/// use turnwright::{shop::material::SpeedBand, CuttingSpeed};
/// let band = SpeedBand::new(
///     CuttingSpeed::from_m_per_min(22.0)?,
///     CuttingSpeed::from_m_per_min(35.0)?,
/// )?;
/// assert_eq!(band.middle().m_per_min(), 28.5);
/// assert!(band.holds(CuttingSpeed::from_m_per_min(22.0)?));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct SpeedBand {
    low: CuttingSpeed,
    high: CuttingSpeed,
}

impl SpeedBand {
    /// From its two ends.
    ///
    /// # Errors
    /// `cutting_speed`, when the low end is above the high one.
    pub fn new(low: CuttingSpeed, high: CuttingSpeed) -> Result<Self, Error> {
        if low > high {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "cutting_speed",
                format!("{low} to {high}"),
                "a band of speeds from low to high",
                "swap the two ends",
            ));
        }
        Ok(Self { low, high })
    }

    /// A band whose ends are known to stand in order.
    pub(super) const fn known(low: CuttingSpeed, high: CuttingSpeed) -> Self {
        Self { low, high }
    }

    /// The lowest speed.
    #[must_use]
    pub const fn low(self) -> CuttingSpeed {
        self.low
    }

    /// The highest speed.
    #[must_use]
    pub const fn high(self) -> CuttingSpeed {
        self.high
    }

    /// Half-way between the ends.
    #[must_use]
    pub fn middle(self) -> CuttingSpeed {
        CuttingSpeed::computed_trade((self.low.m_per_min() + self.high.m_per_min()) / 2.0)
    }

    /// Whether `speed` lies in the band; both ends belong to it.
    #[must_use]
    pub fn holds(self, speed: CuttingSpeed) -> bool {
        self.low <= speed && speed <= self.high
    }
}

impl Recorded for SpeedBand {}

impl fmt::Display for SpeedBand {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} to {}", self.low, self.high)
    }
}

/// Whether work material welds itself to the edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Prone {
    /// Likely inside the band.
    Yes,
    /// Possible inside the band, and slight.
    Weak,
    /// Not to be expected.
    No,
}

impl Prone {
    /// The name as documents spell it.
    ///
    /// ```
    /// assert_eq!(turnwright::shop::material::Prone::Weak.name(), "weak");
    /// ```
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Yes => "yes",
            Self::Weak => "weak",
            Self::No => "no",
        }
    }
}

/// The built-up edge: whether it forms, and between which speeds (uncoated tool, no special
/// coolant).
///
/// ```
/// use turnwright::shop::material::{Material, Prone};
/// let steel = Material::named("c45")?;
/// let edge = steel.built_up_edge().map(|figure| figure.value);
/// assert_eq!(edge.map(|edge| edge.prone()), Some(Prone::Yes));
/// assert_eq!(edge.map(|edge| edge.to_string()).as_deref(), Some("yes, 10 m/min to 50 m/min"));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct BuiltUpEdge {
    pub(super) prone: Prone,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub(super) band: Option<SpeedBand>,
}

impl BuiltUpEdge {
    /// From whether it forms, and where that is known between which speeds.
    #[must_use]
    pub const fn new(prone: Prone, band: Option<SpeedBand>) -> Self {
        Self { prone, band }
    }

    /// Whether it forms.
    #[must_use]
    pub const fn prone(self) -> Prone {
        self.prone
    }

    /// The speeds between which it is likely.
    #[must_use]
    pub const fn band(self) -> Option<SpeedBand> {
        self.band
    }
}

impl Recorded for BuiltUpEdge {}

impl fmt::Display for BuiltUpEdge {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.prone.name())?;
        match self.band {
            Some(band) => write!(f, ", {band}"),
            None => Ok(()),
        }
    }
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn a_band_upside_down_is_refused() {
        let speed = |v| CuttingSpeed::from_m_per_min(v).unwrap();
        let error = SpeedBand::new(speed(35.0), speed(22.0)).unwrap_err();
        assert_eq!(error.kind(), ErrorKind::Contradiction);
    }
}
