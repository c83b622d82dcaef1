//! A simulated profile, evaluated as a roughness instrument does it.

use serde::Serialize;

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::finish::ToolOutline;
use crate::physics::gaussian::{Ends, roughness_profile, without_short_waves};
use crate::physics::profile::{self, TurnedProfile};
use crate::physics::texture::{TextureParameters, texture_parameters};
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree};
use crate::quantity::{Feed, FeedUnevenness, PointSpacing, Rq, ShortCutOff};
use crate::standards::texture::{CutOff, short_cut_off};

/// Points of a profile where nobody says how many: some six in the short-wave cut-off.
const POINTS: u32 = 12_000;
/// The fewest: with fewer a groove is a handful of points.
const FEWEST: u32 = 1_000;
/// The most, so that a question does not ask for all the memory of a machine.
const MOST: u32 = 1_000_000;

/// What profile is asked for.
///
/// ```
/// use turnwright::document::simulated::ProfileAsked;
/// let asked = ProfileAsked::new(7).with_noise("0.05 um".parse()?).with_points(8000);
/// assert_eq!(asked.seed(), 7);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct ProfileAsked {
    seed: u32,
    noise: Option<Rq>,
    points: u32,
}

/// The parameters of the profile, and how it was measured.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct Profile {
    /// The parameters over the evaluation length.
    pub parameters: TextureParameters,
    /// The number of points, half a cut-off more than the evaluation length at each end.
    pub points: u32,
    /// Their distance.
    pub spacing: PointSpacing,
    /// The short-wave cut-off, where the points are close enough for it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub short_cut_off: Option<ShortCutOff>,
}

impl ProfileAsked {
    /// A profile from this seed.
    #[must_use]
    pub fn new(seed: u32) -> Self {
        Self {
            seed,
            noise: None,
            points: POINTS,
        }
    }

    /// With noise of this root mean square height.
    #[must_use]
    pub fn with_noise(mut self, noise: Rq) -> Self {
        self.noise = Some(noise);
        self
    }

    /// With another number of points than 12000.
    #[must_use]
    pub fn with_points(mut self, points: u32) -> Self {
        self.points = points;
        self
    }

    /// The seed.
    #[must_use]
    pub fn seed(&self) -> u32 {
        self.seed
    }

    pub(super) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
        let f = Fields::of(tree, path, "a profile")?;
        let seed = f.count("seed")?.ok_or_else(|| {
            f.missing(
                "seed",
                "a whole number: the same one gives the same profile",
            )
        })?;
        let asked = Self {
            seed,
            noise: f.quantity("noise")?,
            points: f.count("points")?.unwrap_or(POINTS),
        };
        f.finish()?;
        Ok(asked)
    }

    pub(super) fn answer(
        &self,
        feed: Feed,
        outline: Option<ToolOutline>,
        unevenness: Option<FeedUnevenness>,
        measured: CutOff,
        cautions: &mut Vec<Caution>,
        provenance: &mut Provenance,
    ) -> Result<Profile, Error> {
        let Some(outline) = outline else {
            return Err(Error::new(
                ErrorKind::MissingField,
                "tool.minor_cutting_edge_angle",
                "nothing",
                "both edges of the tool, for a profile",
                "add the field \"minor_cutting_edge_angle\"",
            ));
        };
        if !(FEWEST..=MOST).contains(&self.points) {
            return Err(Error::new(
                ErrorKind::OutOfRange,
                "profile.points",
                self.points.to_string(),
                format!("{FEWEST} to {MOST} points"),
                "12000 points show a turned profile well; leave the field out for them",
            ));
        }
        let long = measured.long_wave();
        let length = measured.evaluation_length.mm() + long.mm();
        let spacing = PointSpacing::from_mm(length / f64::from(self.points))?;
        let mut surface = TurnedProfile::new(feed, outline).with_seed(u64::from(self.seed));
        if let Some(unevenness) = unevenness {
            surface = surface.with_feed_unevenness(unevenness);
        }
        if let Some(noise) = self.noise {
            surface = surface.with_noise(noise);
        }
        let mut heights = vec![0.0; self.points as usize];
        let mut filtered = heights.clone();
        surface.write_um(spacing, &mut heights)?;
        let short = short_cut_off(long)?;
        let fine = without_short_waves(
            &profile::Profile::from_um(spacing, &heights)?,
            short.value,
            Ends::Open,
            &mut filtered,
        )
        .is_ok();
        if fine {
            provenance.open("short-wave cut-off", &short);
            std::mem::swap(&mut heights, &mut filtered);
        } else {
            cautions.push(Caution::new(
                Severity::Note,
                "points_too_far_apart",
                format!(
                    "The points of the profile are {spacing} apart, too far for the short-wave cut-off {}: none is applied.",
                    short.value
                ),
            ));
        }
        roughness_profile(
            &profile::Profile::from_um(spacing, &heights)?,
            long,
            Ends::Open,
            &mut filtered,
        )?;
        // Half a cut-off at each end is under the influence of the end.
        let half = (long.mm() / spacing.mm() / 2.0).round() as usize;
        let whole = filtered.len();
        let inner = filtered
            .get(half..whole.saturating_sub(half))
            .unwrap_or(&[]);
        Ok(Profile {
            parameters: texture_parameters(&profile::Profile::from_um(spacing, inner)?, long)?,
            points: self.points,
            spacing,
            short_cut_off: fine.then_some(short.value),
        })
    }
}
