//! What a material can do to a person, and which work the lathe cannot take.

use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::quantity::Diameter;
use crate::shop::lathe::Lathe;
use crate::shop::material::Material;

/// What the catalogue knows of a material beside its figures: fire, dust, chips; a danger where it can
/// burn or poison.
///
/// # Example
/// ```
/// use turnwright::{advice::hazard::of_material, Material, Severity};
/// let magnesium = of_material(&Material::named("AZ31")?, "AZ31");
/// assert_eq!(magnesium.map(|caution| caution.severity()), Some(Severity::Danger));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn of_material(material: &Material, name: &str) -> Option<Caution> {
    let notes = material.notes();
    if notes.is_empty() {
        return None;
    }
    let lower = notes.to_lowercase();
    let severe = ["fire", "burn", "toxic", "explo"]
        .iter()
        .any(|word| lower.contains(word));
    let severity = if severe {
        Severity::Danger
    } else {
        Severity::Note
    };
    Some(Caution::new(
        severity,
        "material",
        format!("{name}: {notes}"),
    ))
}

/// The first designation of a material, or what it is called where it has none.
pub(crate) fn short_name(material: &Material) -> &str {
    let first = material.names().split([',', '(']).next();
    match first.unwrap_or_default().trim() {
        "" => "a material of the asker's own",
        name => name,
    }
}

/// The caution of [`of_material`] where it is a danger: for answers that are not about the material.
#[cfg(feature = "json")]
pub(crate) fn danger_of(material: &Material) -> Option<Caution> {
    of_material(material, short_name(material))
        .filter(|caution| caution.severity() == Severity::Danger)
}

/// Refuses work that does not swing over the bed.
///
/// # Errors
/// `diameter`, when it is greater than the swing of the lathe.
///
/// # Example
/// ```
/// use turnwright::{advice::hazard::swings, Lathe};
/// let lathe = Lathe::with_steps(vec!["50 rpm".parse()?, "200 rpm".parse()?])?.with_swing("180 mm".parse()?);
/// assert!(swings(&lathe, "200 mm".parse()?).is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn swings(lathe: &Lathe, diameter: Diameter) -> Result<(), Error> {
    match lathe.swing() {
        Some(swing) if diameter > swing => Err(Error::new(
            ErrorKind::Impossible,
            "diameter",
            diameter.to_string(),
            format!("at most the swing of the lathe, {swing}"),
            "it would strike the bed: take a larger lathe, or check whether a radius was meant",
        )),
        _ => Ok(()),
    }
}
