//! The measuring instrument in the hand: its class, and what is known better than the class.

use crate::error::Error;
use crate::provenance::{Provenance, Recorded, Sourced, Standing};
use crate::quantity::{CoverageFactor, Diameter, Resolution, SizeUncertainty, StandardUncertainty};
use crate::standards::instrument::{Instrument, largest_error};

/// A measuring instrument.
///
/// # Example
/// ```
/// use turnwright::{standards::instrument::Instrument, Gauge};
/// let mine = Gauge::new(Instrument::Micrometer).with_repeatability("0.0015 mm".parse()?);
/// assert_eq!(mine.instrument(), Instrument::Micrometer);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Gauge {
    instrument: Instrument,
    largest_error: Option<SizeUncertainty>,
    certificate: Option<(SizeUncertainty, CoverageFactor)>,
    resolution: Option<Resolution>,
    repeatability: Option<StandardUncertainty>,
}

/// How far an instrument may be off: the ends of what is possible, or what a certificate says.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum InstrumentError {
    /// Off by up to this much either way, anything between being alike.
    Within(SizeUncertainty),
    /// An expanded uncertainty and its coverage factor.
    Certified(SizeUncertainty, CoverageFactor),
}

impl From<Instrument> for Gauge {
    fn from(instrument: Instrument) -> Self {
        Self::new(instrument)
    }
}

impl Gauge {
    /// An instrument of this class, sound, with nothing more known of it.
    #[must_use]
    pub const fn new(instrument: Instrument) -> Self {
        Self {
            instrument,
            largest_error: None,
            certificate: None,
            resolution: None,
            repeatability: None,
        }
    }

    /// With this largest error instead of that of its class.
    #[must_use]
    pub fn with_largest_error(mut self, error: SizeUncertainty) -> Self {
        (self.largest_error, self.certificate) = (Some(error), None);
        self
    }

    /// With what its certificate says: an expanded uncertainty and its coverage factor.
    #[must_use]
    pub fn with_certificate(mut self, expanded: SizeUncertainty, k: CoverageFactor) -> Self {
        (self.largest_error, self.certificate) = (None, Some((expanded, k)));
        self
    }

    /// With the smallest step that it shows, where that is not in its largest error already.
    #[must_use]
    pub fn with_resolution(mut self, resolution: Resolution) -> Self {
        self.resolution = Some(resolution);
        self
    }

    /// With this scatter of its readings in the hand that uses it.
    #[must_use]
    pub fn with_repeatability(mut self, repeatability: StandardUncertainty) -> Self {
        self.repeatability = Some(repeatability);
        self
    }

    /// Its class.
    #[must_use]
    pub fn instrument(&self) -> Instrument {
        self.instrument
    }

    /// The smallest step that it shows, if given.
    #[must_use]
    pub fn resolution(&self) -> Option<Resolution> {
        self.resolution
    }

    /// How far it may be off at a size: as given, else the largest error of its class.
    ///
    /// # Errors
    /// `diameter`, beyond the table of its class.
    pub fn error_at(
        &self,
        size: Diameter,
        provenance: &mut Provenance,
    ) -> Result<InstrumentError, Error> {
        if let Some((expanded, k)) = self.certificate {
            given(
                provenance,
                "expanded uncertainty of the instrument",
                &expanded,
            );
            return Ok(InstrumentError::Certified(expanded, k));
        }
        if let Some(error) = self.largest_error {
            given(provenance, "largest error of the instrument", &error);
            return Ok(InstrumentError::Within(error));
        }
        let error = largest_error(self.instrument, size)?;
        Ok(InstrumentError::Within(
            provenance.open("largest error of the instrument", &error),
        ))
    }

    /// The scatter of its readings: as given, else what is usual with its class.
    pub fn scatter(&self, provenance: &mut Provenance) -> StandardUncertainty {
        let usual = self.instrument.repeatability();
        let repeatability = match self.repeatability {
            Some(own) => Sourced::new(own, "given by the asker", Standing::Given),
            None => usual,
        };
        provenance.open("repeatability of measuring by hand", &repeatability)
    }
}

fn given(provenance: &mut Provenance, what: &'static str, value: &dyn Recorded) {
    provenance.record(what, value, "given by the asker", Standing::Given);
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::error::ErrorKind;
    use crate::quantity::fields::{Fields, Tree};
    use serde::ser::{Serialize, SerializeMap, Serializer};

    fn names() -> [(&'static str, Instrument); 6] {
        Instrument::ALL.map(|instrument| (instrument.name(), instrument))
    }

    impl Gauge {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if let Tree::Text(_) = tree {
                // A name alone is the kind of an instrument of which nothing more is known.
                let group = Tree::Group(vec![("kind".into(), tree.clone())]);
                let f = Fields::of(&group, path, "an instrument")?;
                let kind = f.choice("kind", &names()).map_err(|error| error.at(path))?;
                return kind
                    .map(Self::new)
                    .ok_or_else(|| f.missing("kind", "which instrument"));
            }
            let f = Fields::of(tree, path, "an instrument")?;
            let instrument = f
                .choice("kind", &names())?
                .ok_or_else(|| f.missing("kind", "which instrument"))?;
            let mut gauge = Self::new(instrument);
            let (error, expanded) = (f.quantity("largest_error")?, f.quantity("expanded")?);
            let k = f.quantity("k")?;
            match (error, expanded, k) {
                (None, None, None) => {}
                (Some(error), None, None) => gauge = gauge.with_largest_error(error),
                (None, Some(expanded), Some(k)) => gauge = gauge.with_certificate(expanded, k),
                (None, Some(_), None) => {
                    return Err(f.missing("k", "the coverage factor of the certificate, often 2"));
                }
                _ => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path("largest_error"),
                        "largest_error beside expanded or k",
                        "either largest_error, or expanded with k",
                        "keep what the certificate says: { \"expanded\": \"0.002 mm\", \"k\": 2 }",
                    ));
                }
            }
            gauge.resolution = f.quantity("resolution")?;
            gauge.repeatability = f.quantity("repeatability")?;
            f.finish()?;
            Ok(gauge)
        }
    }

    impl Serialize for Gauge {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            if *self == Self::new(self.instrument) {
                return s.serialize_str(self.instrument.name());
            }
            let mut map = s.serialize_map(None)?;
            map.serialize_entry("kind", self.instrument.name())?;
            if let Some(error) = &self.largest_error {
                map.serialize_entry("largest_error", error)?;
            }
            if let Some((expanded, k)) = &self.certificate {
                map.serialize_entry("expanded", expanded)?;
                map.serialize_entry("k", k)?;
            }
            if let Some(resolution) = &self.resolution {
                map.serialize_entry("resolution", resolution)?;
            }
            if let Some(repeatability) = &self.repeatability {
                map.serialize_entry("repeatability", repeatability)?;
            }
            map.end()
        }
    }
}
