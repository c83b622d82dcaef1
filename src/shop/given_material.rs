//! A material in a document: a key, a designation, or an object of the asker's own figures.

use super::figure::{Figure, SpeedBand, ToolMaterial};
use super::material::Material;
use crate::error::{Error, ErrorKind};
use crate::quantity::fields::{Fields, Tree, list, quantity};
use crate::quantity::{CuttingSpeed, ForceExponent, SpecificCuttingForce};
use serde::ser::{Serialize, SerializeMap, Serializer};
use std::collections::BTreeMap;

/// The tool materials that a band of cutting speeds is given for.
const BANDS: [ToolMaterial; 2] = [ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide];

impl Material {
    pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
        if let Tree::Text(text) = tree {
            return Self::named(text).map_err(|error| error.at(path));
        }
        let f = Fields::of(tree, path, "a material, or its name,")?;
        let like = f
            .text("like")?
            .map(|key| Self::named(key).map_err(|error| error.at(&f.path("like"))))
            .transpose()?;
        let force = f.quantity::<SpecificCuttingForce>("specific_force")?;
        let exponent = f.quantity::<ForceExponent>("exponent")?;
        let mut material = match like {
            Some(like) => {
                let like = force.map_or(like.clone(), |force| like.with_specific_force(force));
                exponent.map_or(like.clone(), |exponent| like.with_exponent(exponent))
            }
            None => Self::own(
                force.ok_or_else(|| {
                    f.missing(
                        "specific_force",
                        "the specific cutting force for a chip of 1 mm by 1 mm",
                    )
                })?,
                exponent.ok_or_else(|| {
                    f.missing(
                        "exponent",
                        "the exponent of the specific cutting force, such as 0.2",
                    )
                })?,
            ),
        };
        if let Some(name) = f.name("name")? {
            material = material.with_name(name.to_owned());
        }
        macro_rules! figures {
            ($($name:literal $with:ident)*) => { $(
                if let Some(value) = f.quantity($name)? {
                    material = material.$with(value);
                }
            )* };
        }
        figures! {
            "hardness_hb" with_hardness
            "youngs_modulus" with_youngs_modulus
            "density" with_density
            "expansion" with_expansion
            "specific_heat" with_specific_heat
        }
        if let Some(bands) = f.item("cutting_speeds", |tree, path| {
            let bands = Fields::of(tree, path, "cutting speeds by tool material")?;
            let found = BANDS.map(|tool| bands.item(tool.name(), band).map(|band| (tool, band)));
            bands.finish()?;
            found.into_iter().collect::<Result<Vec<_>, Error>>()
        })? {
            for (tool, band) in bands {
                if let Some(band) = band {
                    material = material.with_speed_band(tool, band);
                }
            }
        }
        f.finish()?;
        Ok(material)
    }
}

fn band(tree: &Tree, path: &str) -> Result<SpeedBand, Error> {
    match list(tree, path, quantity::<CuttingSpeed>)?.as_slice() {
        [low, high] => SpeedBand::new(*low, *high).map_err(|error| error.at(path)),
        other => Err(Error::new(
            ErrorKind::Unreadable,
            path,
            format!("{} speeds", other.len()),
            "two cutting speeds, the lowest and the highest",
            "write [\"25 m/min\", \"40 m/min\"]",
        )),
    }
}

/// A material is written as a question names it: by its key, or as the object that reads back the
/// same.
impl Serialize for Material {
    fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
        let like = Self::named(self.key()).ok();
        if like.as_ref() == Some(self) {
            return self.key().serialize(s);
        }
        let mut out = s.serialize_map(None)?;
        let base = like.as_ref();
        if base.is_some() {
            out.serialize_entry("like", self.key())?;
        }
        if !self.names().is_empty() && base.map(Self::names) != Some(self.names()) {
            out.serialize_entry("name", self.names())?;
        }
        macro_rules! own {
            ($($name:literal $mine:expr, $base:expr;)*) => { $(
                if let Some(value) = own($mine, $base) {
                    out.serialize_entry($name, value)?;
                }
            )* };
        }
        own! {
            "specific_force" Some(self.specific_force()), base.map(Self::specific_force);
            "exponent" Some(self.exponent()), base.map(Self::exponent);
            "hardness_hb" self.hardness(), base.and_then(Self::hardness);
            "youngs_modulus" self.youngs_modulus(), base.and_then(Self::youngs_modulus);
            "density" self.density(), base.and_then(Self::density);
            "expansion" self.expansion(), base.and_then(Self::expansion);
            "specific_heat" self.specific_heat(), base.and_then(Self::specific_heat);
        }
        let bands: BTreeMap<_, _> = BANDS
            .iter()
            .filter_map(|tool| {
                let band = own(
                    self.speed_band(*tool),
                    base.and_then(|base| base.speed_band(*tool)),
                )?;
                Some((tool.name(), [band.low(), band.high()]))
            })
            .collect();
        if !bands.is_empty() {
            out.serialize_entry("cutting_speeds", &bands)?;
        }
        out.end()
    }
}

/// The value of a figure that is not the one it started from.
fn own<'a, T: PartialEq>(mine: Option<&'a Figure<T>>, base: Option<&Figure<T>>) -> Option<&'a T> {
    mine.filter(|mine| Some(*mine) != base)
        .map(|figure| &figure.value)
}
