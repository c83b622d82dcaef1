//! Standard tapers by name.

use crate::error::{Error, ErrorKind, any_of, nearest};
use crate::provenance::{Sourced, Standing};
use crate::quantity::TaperRatio;

/// A taper that has a name.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub struct NamedTaper {
    name: &'static str,
    ratio: TaperRatio,
}

impl NamedTaper {
    /// Its name, as documents spell it.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// The x of 1:x.
    #[must_use]
    pub const fn ratio(&self) -> TaperRatio {
        self.ratio
    }
}

const fn taper(name: &'static str, ratio: f64) -> NamedTaper {
    NamedTaper {
        name,
        ratio: TaperRatio::computed_trade(ratio),
    }
}

/// Morse tapers: the sockets of tailstocks, spindles and drills.
///
/// # Source
/// ISO 296, from memory; the half angles agree with handbook tables to 0.06 minute of arc.
/// # Example
/// ```
/// let two = turnwright::standards::taper::MORSE.value[2];
/// assert_eq!((two.name(), two.ratio().value()), ("Morse 2", 20.020));
/// ```
pub static MORSE: Sourced<[NamedTaper; 7]> = Sourced::new(
    [
        taper("Morse 0", 19.212),
        taper("Morse 1", 20.047),
        taper("Morse 2", 20.020),
        taper("Morse 3", 19.922),
        taper("Morse 4", 19.254),
        taper("Morse 5", 19.002),
        taper("Morse 6", 19.180),
    ],
    "from memory of ISO 296",
    Standing::FromMemory,
);

/// Tapers whose name is their ratio, or that a standard gives a plain ratio.
///
/// # Source
/// 7:24 ISO 7388; metric 1:20 ISO 296; taper pins 1:50 ISO 2339; pipe threads 1:16 ISO 7-1; all from
/// memory.
/// # Example
/// ```
/// let steep = turnwright::standards::taper::PLAIN.value[0];
/// assert_eq!(steep.ratio().value(), 24.0 / 7.0);
/// ```
pub static PLAIN: Sourced<[NamedTaper; 4]> = Sourced::new(
    [
        taper("7:24", 24.0 / 7.0),
        taper("metric 1:20", 20.0),
        taper("taper pin 1:50", 50.0),
        taper("pipe thread 1:16", 16.0),
    ],
    "from memory of ISO 7388, ISO 296, ISO 2339 and ISO 7-1",
    Standing::FromMemory,
);

/// The taper of a name, with where it comes from.
///
/// # Errors
/// `taper`, when no taper has that name; the nearest is named.
///
/// # Example
/// ```
/// use turnwright::standards::taper::named;
/// assert_eq!(named("Morse 3")?.value.ratio().value(), 19.922);
/// assert!(named("Mores 3").unwrap_err().remedy().contains("Morse 3"));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn named(name: &str) -> Result<Sourced<NamedTaper>, Error> {
    let morse = MORSE.value.iter().map(|t| (t, MORSE.source));
    let plain = PLAIN.value.iter().map(|t| (t, PLAIN.source));
    let names = || MORSE.value.iter().chain(&PLAIN.value).map(NamedTaper::name);
    morse
        .chain(plain)
        .find(|(taper, _)| taper.name == name)
        .map(|(taper, source)| Sourced::new(*taper, source, Standing::FromMemory))
        .ok_or_else(|| {
            Error::new(
                ErrorKind::UnknownName,
                "taper",
                format!("the taper {name:?}"),
                any_of(names()),
                match nearest(name, names()) {
                    Some(near) => format!("did you mean {near:?}?"),
                    None => String::from(
                        "use one of these names, or give ratio, half_angle or diameters",
                    ),
                },
            )
        })
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;

    #[test]
    fn half_angles_are_those_of_the_handbooks() {
        // Handbook tables of Morse tapers, minutes of arc beyond one degree, from memory.
        let minutes = [29.45, 25.7167, 25.8333, 26.2667, 29.25, 30.4333, 29.6];
        for (taper, minutes) in MORSE.value.iter().zip(minutes) {
            let half = (0.5 / taper.ratio().value()).atan().to_degrees() * 60.0;
            assert!((half - 60.0 - minutes).abs() < 0.06, "{}", taper.name());
        }
        // ISO 7388, 8 deg 17 min 50 s, from memory.
        let steep = named("7:24").unwrap().value.ratio().value();
        let half = (0.5 / steep).atan().to_degrees();
        assert!((half - (8.0 + 17.0 / 60.0 + 50.0 / 3600.0)).abs() < 1.0 / 3600.0);
    }
}
