//! A material in a document: a key, a designation, or an object of the asker's own figures.

use super::material::{Figure, Material, SpeedBand, ToolMaterial};
use crate::error::{Error, ErrorKind};
use crate::quantity::fields::{Fields, Tree, list, quantity};
use crate::quantity::{CuttingSpeed, ForceExponent, SpecificCuttingForce};
use serde::ser::{Serialize, SerializeMap, Serializer};

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
        if let Some(name) = f.text("name")? {
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

/// Writes a material as a question would name it: by its key, or as the object that reads back the
/// same.
pub(crate) fn as_asked<S: Serializer>(material: &Material, s: S) -> Result<S::Ok, S::Error> {
    let like = Material::named(material.key()).ok();
    if like.as_ref() == Some(material) {
        return material.key().serialize(s);
    }
    let mut out = s.serialize_map(None)?;
    let base = like.as_ref();
    if base.is_some() {
        out.serialize_entry("like", material.key())?;
    }
    if !material.names().is_empty() && base.map(Material::names) != Some(material.names()) {
        out.serialize_entry("name", material.names())?;
    }
    fn own<'a, T: PartialEq>(
        mine: Option<&'a Figure<T>>,
        base: Option<&Figure<T>>,
    ) -> Option<&'a T> {
        mine.filter(|mine| Some(*mine) != base)
            .map(|figure| &figure.value)
    }
    macro_rules! entries {
        ($($name:literal $get:ident)*) => { $(
            if let Some(value) = own(material.$get(), base.and_then(Material::$get)) {
                out.serialize_entry($name, value)?;
            }
        )* };
    }
    if let Some(value) = own(
        Some(material.specific_force()),
        base.map(Material::specific_force),
    ) {
        out.serialize_entry("specific_force", value)?;
    }
    if let Some(value) = own(Some(material.exponent()), base.map(Material::exponent)) {
        out.serialize_entry("exponent", value)?;
    }
    entries! {
        "hardness_hb" hardness "youngs_modulus" youngs_modulus "density" density "expansion" expansion
        "specific_heat" specific_heat
    }
    let bands: Vec<_> = BANDS
        .iter()
        .filter_map(|tool| {
            let band = own(
                material.speed_band(*tool),
                base.and_then(|base| base.speed_band(*tool)),
            )?;
            Some((tool.name(), [band.low(), band.high()]))
        })
        .collect();
    if !bands.is_empty() {
        out.serialize_entry(
            "cutting_speeds",
            &bands
                .into_iter()
                .collect::<std::collections::BTreeMap<_, _>>(),
        )?;
    }
    out.end()
}
