//! Filtered profiles and their parameters, as numpy and scipy have them (`make_profile_data.py`).

use serde_json::Value;
use turnwright::physics::gaussian::{Ends, roughness_profile, without_short_waves};
use turnwright::physics::profile::Profile;
use turnwright::physics::texture::texture_parameters;
use turnwright::{CutOff, Error, PointSpacing, ShortCutOff};

pub struct Stored(Value);

pub fn stored() -> Result<Vec<Stored>, String> {
    let list: Vec<Value> =
        serde_json::from_str(include_str!("profile_data.json")).map_err(|e| e.to_string())?;
    Ok(list.into_iter().map(Stored).collect())
}

impl Stored {
    pub fn name(&self) -> &str {
        self.0["name"].as_str().unwrap_or_default()
    }

    fn number(&self, field: &str) -> Result<f64, String> {
        self.0[field].as_f64().ok_or_else(|| format!("no {field}"))
    }

    /// The heights, made again from the formulas of the script.
    fn heights(&self) -> Result<Vec<f64>, String> {
        let feeds: Option<Vec<f64>> = self.0["feeds"]
            .as_array()
            .and_then(|feeds| feeds.iter().map(Value::as_f64).collect());
        let feeds = feeds.ok_or("no feeds")?;
        let (corner, spacing) = (self.number("corner_radius")?, self.number("spacing")?);
        let (noise, mut seed) = (self.number("noise")?, self.number("seed")? as u64);
        let (mut left, mut right, mut turn) = (0.0, feeds[0], 0);
        let heights = (0..self.number("points")? as u32).map(|i| {
            let x = f64::from(i) * spacing;
            while right <= x {
                turn += 1;
                left = right;
                right += feeds[turn % feeds.len()];
            }
            let u = f64::min(x - left, right - x);
            let z = 1e3 * (corner - (corner * corner - u * u).sqrt());
            if noise == 0.0 {
                return z;
            }
            let mut sum = 0;
            for _ in 0..4 {
                seed = seed * 48_271 % 2_147_483_647;
                sum += seed;
            }
            z + noise * (sum as f64 / 2_147_483_647.0 - 2.0)
        });
        Ok(heights.collect())
    }

    pub fn answer(&self) -> Result<(), String> {
        let said = |e: Error| e.to_string();
        let heights = self.heights()?;
        let mm = self.number("spacing")?;
        let spacing = PointSpacing::from_mm(mm).map_err(said)?;
        let cut_off = CutOff::from_mm(self.number("cut_off")?).map_err(said)?;
        let ends = if self.0["periodic"] == Value::Bool(true) {
            Ends::Periodic
        } else {
            Ends::Open
        };
        let mut primary = heights.clone();
        if let Some(short) = self.0["short_cut_off"].as_f64() {
            without_short_waves(
                &Profile::from_um(spacing, &heights).map_err(said)?,
                ShortCutOff::from_mm(short).map_err(said)?,
                ends,
                &mut primary,
            )
            .map_err(said)?;
        }
        let mut roughness = heights;
        roughness_profile(
            &Profile::from_um(spacing, &primary).map_err(said)?,
            cut_off,
            ends,
            &mut roughness,
        )
        .map_err(said)?;
        let half = match ends {
            Ends::Open => (cut_off.mm() / mm / 2.0).round() as usize,
            _ => 0,
        };
        let inner = &roughness[half..roughness.len() - half];
        let found = texture_parameters(&Profile::from_um(spacing, inner).map_err(said)?, cut_off)
            .map_err(said)?;
        let expect = &self.0["expect"];
        let fields = [
            ("ra", found.ra.um()),
            ("rq", found.rq.um()),
            ("rz", found.rz.um()),
            ("rt", found.rt.um()),
            ("rsk", found.rsk.map_or(f64::NAN, |rsk| rsk.value())),
            ("rku", found.rku.map_or(f64::NAN, |rku| rku.value())),
            ("rsm", found.rsm.map_or(f64::NAN, |rsm| rsm.mm())),
            ("sampling_lengths", f64::from(found.sampling_lengths)),
        ];
        let known = expect.as_object().map_or(0, serde_json::Map::len);
        if known != fields.len() {
            return Err(format!("{known} expected values for {}", fields.len()));
        }
        for (field, got) in fields {
            let wanted = expect[field]
                .as_f64()
                .ok_or_else(|| format!("no {field}"))?;
            // The mean lines agree to 1e-9 of the largest height; parameters are a few times smaller
            // than it, the skewness a difference of larger sums.
            let tolerance = 1e-8 * wanted.abs().max(1.0);
            if (got - wanted).abs() > tolerance || got.is_nan() {
                return Err(format!("{field}: expected {wanted}, got {got}"));
            }
        }
        Ok(())
    }
}
