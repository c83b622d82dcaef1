//! The parameters of a surface texture: Ra, Rq, Rz, Rt, Rsk, Rku and RSm of a profile.

use super::profile::Profile;
use crate::error::{Error, ErrorKind};
use crate::provenance::{Sourced, Standing};
use crate::quantity::{CutOff, Quantity, Ra, Rku, Rq, Rsk, Rsm, Rt, Rz};

/// Peaks and valleys lower than this share of Rz do not count for RSm.
pub const LEAST_HEIGHT_OF_ELEMENT: Sourced<f64> = Sourced::new(
    0.1,
    "from memory of ISO 4287:1997 and ISO 21920-2:2021, unverified page",
    Standing::FromMemory,
);

/// Peaks and valleys narrower than this share of the sampling length do not count for RSm.
pub const LEAST_WIDTH_OF_ELEMENT: Sourced<f64> = Sourced::new(
    0.01,
    "from memory of ISO 4287:1997 and ISO 21920-2:2021, unverified page",
    Standing::FromMemory,
);

/// The parameters of a roughness profile.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct TextureParameters {
    /// Arithmetic mean height.
    pub ra: Ra,
    /// Root mean square height.
    pub rq: Rq,
    /// Maximum height: the mean over the sampling lengths of highest peak and deepest valley.
    pub rz: Rz,
    /// Total height: highest peak and deepest valley of the whole evaluation length.
    pub rt: Rt,
    /// Skewness; absent for a flat profile.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rsk: Option<Rsk>,
    /// Kurtosis; absent for a flat profile.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rku: Option<Rku>,
    /// Mean width of the elements; absent where there is not a whole one.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub rsm: Option<Rsm>,
    /// The number of sampling lengths that were evaluated.
    pub sampling_lengths: u32,
}

/// The parameters of a roughness profile over as many whole sampling lengths as fit into it.
///
/// Ra = mean |z|, Rq^2 = mean z^2, Rsk = mean z^3 / Rq^3, Rku = mean z^4 / Rq^4, z from the mean line;
/// Rz = mean over the sampling lengths of (highest peak + deepest valley), Rt the same over all of them
///
/// RSm: the profile between two crossings of the mean line is a peak or a valley, if it is as high as a
/// tenth of Rz and as wide as a hundredth of the sampling length; else it belongs to its neighbours.
/// An element goes from the beginning of one peak to that of the next.
///
/// # Units
/// Heights of the profile in micrometres.
/// # Range
/// A roughness profile: zero is its mean line, see
/// [`roughness_profile`](super::gaussian::roughness_profile). The sampling length is the cut-off;
/// what is left over at the end is not looked at. Rz counts its peaks from zero, so that a length that
/// lies all below has its depth alone.
/// # Errors
/// `cut_off`, when it is longer than the profile or not four of its spacings.
/// # Source
/// ISO 4287:1997, ISO 21920-2:2021 (from memory). Ra, Rq, Rsk and Rku over the evaluation length, as in
/// the latter.
/// # Example
/// ```
/// use turnwright::physics::{profile::Profile, texture::texture_parameters};
/// let saw: Vec<f64> = (0..4000).map(|i| f64::from(i % 200) / 100.0 - 0.995).collect();
/// let found = texture_parameters(&Profile::from_um("0.001 mm".parse()?, &saw)?, "0.8 mm".parse()?)?;
/// assert!((found.ra.um() - 0.5).abs() < 1e-9);
/// assert_eq!(found.rsm.map(|rsm| (rsm.mm() * 1e6).round()), Some(200_000.0));
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn texture_parameters(
    profile: &Profile<'_>,
    cut_off: CutOff,
) -> Result<TextureParameters, Error> {
    let heights = profile.heights_um();
    let sampling = cut_off.mm() / profile.spacing().mm();
    // A length that is whole but for its last digit is whole.
    let lengths = (heights.len() as f64 / sampling * (1.0 + 1e-12)).floor();
    if lengths < 1.0 || sampling < 4.0 {
        return Err(Error::new(
            ErrorKind::Contradiction,
            CutOff::ROW.name(),
            cut_off.to_string(),
            format!(
                "a sampling length of four points or more within the {} points of the profile, {} apart",
                heights.len(),
                profile.spacing()
            ),
            "measure a longer profile or more points, or take another cut-off",
        ));
    }
    let end = |length: f64| ((length * sampling).round() as usize).min(heights.len());
    let evaluated = &heights[..end(lengths)];
    let count = evaluated.len() as f64;
    let height = |part: &[f64]| {
        let high = part.iter().fold(0.0, |high, z| f64::max(high, *z));
        high - part.iter().fold(0.0, |low, z| f64::min(low, *z))
    };
    let whole = lengths as u32;
    let rz = (0..whole)
        .map(|at| height(&heights[end(f64::from(at))..end(f64::from(at + 1))]))
        .sum::<f64>()
        / lengths;
    let (mut first, mut second, mut third, mut fourth) = (0.0, 0.0, 0.0, 0.0);
    for z in evaluated {
        let square = z * z;
        first += z.abs();
        second += square;
        third += square * z;
        fourth += square * square;
    }
    let square = second / count;
    let formed = square > 0.0;
    let spacing = profile.spacing().mm();
    let least_width = LEAST_WIDTH_OF_ELEMENT.value * sampling;
    let rsm = mean_width(evaluated, LEAST_HEIGHT_OF_ELEMENT.value * rz, least_width);
    Ok(TextureParameters {
        ra: Ra::computed_trade(first / count),
        rq: Rq::computed_trade(square.sqrt()),
        rz: Rz::computed_trade(rz),
        rt: Rt::computed_trade(height(evaluated)),
        rsk: formed.then(|| Rsk::computed_trade(third / count / (square * square.sqrt()))),
        rku: formed.then(|| Rku::computed_trade(fourth / count / (square * square))),
        rsm: rsm.map(|points| Rsm::computed_trade(points * spacing)),
        sampling_lengths: whole,
    })
}

/// The mean distance, in points, from the beginning of a peak to that of the next.
fn mean_width(heights: &[f64], least_height: f64, least_width: f64) -> Option<f64> {
    let mut up = None;
    let (mut first, mut last, mut peaks) = (None, 0.0, 0_u32);
    let mut start = 0.0;
    let mut extreme = 0.0_f64;
    let mut part = |start: f64, end: f64, extreme: f64| {
        if extreme.abs() < least_height || extreme == 0.0 || end - start < least_width {
            return;
        }
        let is_up = extreme > 0.0;
        // A peak after a valley begins an element. What the profile begins with is not whole.
        if is_up && up == Some(false) {
            first.get_or_insert(start);
            last = start;
            peaks += 1;
        }
        up = Some(is_up);
    };
    for (at, pair) in heights.windows(2).enumerate() {
        extreme = if pair[0].abs() > extreme.abs() {
            pair[0]
        } else {
            extreme
        };
        if (pair[0] < 0.0) != (pair[1] < 0.0) {
            let crossing = at as f64 + pair[0] / (pair[0] - pair[1]);
            part(start, crossing, extreme);
            start = crossing;
            extreme = 0.0;
        }
    }
    if let Some(z) = heights.last() {
        extreme = if z.abs() > extreme.abs() { *z } else { extreme };
    }
    part(start, heights.len() as f64, extreme);
    (peaks > 1).then(|| (last - first.unwrap_or(last)) / f64::from(peaks - 1))
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::quantity::PointSpacing;
    use std::f64::consts::{PI, SQRT_2, TAU};

    fn parameters(heights: &[f64]) -> TextureParameters {
        let spacing = PointSpacing::from_mm(0.001).unwrap();
        let profile = Profile::from_um(spacing, heights).unwrap();
        texture_parameters(&profile, CutOff::from_mm(0.8).unwrap()).unwrap()
    }

    fn wave(amplitude: f64, points: f64) -> Vec<f64> {
        (0..4000)
            .map(|i| amplitude * f64::sin(TAU * (f64::from(i) + 0.5) / points))
            .collect()
    }

    #[test]
    fn a_sine_has_its_parameters() {
        // Ra = 2 A/pi, Rq = A/sqrt 2, Rsk = 0, Rku = 3/2, derived; 200 points a wave.
        let found = parameters(&wave(3.0, 200.0));
        assert!((found.ra.um() / (6.0 / PI) - 1.0).abs() < 1e-4);
        assert!((found.rq.um() / (3.0 / SQRT_2) - 1.0).abs() < 1e-12);
        assert!(found.rsk.unwrap().value().abs() < 1e-12);
        assert!((found.rku.unwrap().value() - 1.5).abs() < 1e-12);
        assert!(
            (found.rz.um() - 6.0).abs() < 1e-3 && found.rt >= Rt::computed_trade(found.rz.um())
        );
        assert!((found.rsm.unwrap().mm() - 0.2).abs() < 1e-9);
        assert_eq!(found.sampling_lengths, 5);
    }

    #[test]
    fn small_and_narrow_elements_do_not_count() {
        // A ripple of 5 % of Rz crosses the mean line many times, and is no element.
        let ripple: Vec<f64> = wave(3.0, 400.0)
            .iter()
            .zip(wave(0.25, 17.0))
            .map(|(a, b)| a + b)
            .collect();
        let found = parameters(&ripple).rsm.unwrap();
        assert!((found.mm() - 0.4).abs() < 0.01, "{found}");
        // Spikes of three points, narrower than 1 % of 800.
        let mut spiked = wave(3.0, 400.0);
        for at in [100, 500, 1300] {
            spiked[at..at + 3].fill(-3.0);
        }
        let found = parameters(&spiked).rsm.unwrap();
        assert!((found.mm() - 0.4).abs() < 1e-9, "{found}");
    }

    #[test]
    fn a_flat_profile_has_no_shape() {
        let found = parameters(&[0.0; 1000]);
        assert_eq!((found.rsk, found.rku, found.rsm), (None, None, None));
        assert_eq!(found.rt.um(), 0.0);
    }

    #[test]
    fn upside_down_the_skewness_turns() {
        let saw: Vec<f64> = (0..4000)
            .map(|i| f64::from((i % 100) * (i % 100)) / 5e3 - 0.65)
            .collect();
        let turned: Vec<f64> = saw.iter().map(|z| -z).collect();
        let (a, b) = (parameters(&saw), parameters(&turned));
        assert_eq!((a.ra, a.rq, a.rz, a.rt), (b.ra, b.rq, b.rz, b.rt));
        assert_eq!(a.rsk.unwrap().value(), -b.rsk.unwrap().value());
    }

    #[test]
    fn too_short_a_profile_is_refused() {
        let spacing = PointSpacing::from_mm(0.001).unwrap();
        let heights = [0.0; 799];
        let profile = Profile::from_um(spacing, &heights).unwrap();
        let refused = texture_parameters(&profile, CutOff::from_mm(0.8).unwrap());
        assert_eq!(refused.unwrap_err().field(), "cut_off");
    }
}
