//! Which cutting fluid for a material and a tool.

use crate::provenance::{Provenance, Sourced, Standing};
use crate::shop::figure::ToolMaterial;
use crate::shop::material::Material;

/// What the trade does with a group of materials under a tool of high-speed steel, and under carbide.
struct Practice {
    /// How the keys of the group begin.
    keys: &'static [&'static str],
    high_speed_steel: &'static str,
    carbide: &'static str,
}

const STEEL: &str = "cutting oil or emulsion, steadily";
const STEEL_CARBIDE: &str = "dry, or a flood that never breaks off: drops on a hot edge crack it";

/// The first row whose key fits holds; what fits none is a steel.
const PRACTICE: &[Practice] = &[
    Practice {
        keys: &["gjl", "gjs"],
        high_speed_steel: "dry: wet dust is a grinding paste; keep the dust off the bed and out of the lungs",
        carbide: "dry: wet dust is a grinding paste; keep the dust off the bed and out of the lungs",
    },
    Practice {
        keys: &["az"],
        high_speed_steel: "dry, or mineral oil; never water nor emulsion: burning magnesium splits it",
        carbide: "dry, or mineral oil; never water nor emulsion: burning magnesium splits it",
    },
    Practice {
        keys: &["aw", "ac"],
        high_speed_steel: "emulsion or a thin oil, against the built-up edge",
        carbide: "emulsion or a thin oil, against the built-up edge",
    },
    Practice {
        keys: &["cuzn39pb3", "cusn7zn4pb7"],
        high_speed_steel: "dry",
        carbide: "dry",
    },
    Practice {
        keys: &["cu"],
        high_speed_steel: "emulsion or a thin oil",
        carbide: "emulsion or a thin oil",
    },
    Practice {
        keys: &["ti_", "n0"],
        high_speed_steel: "plenty of emulsion, never dry",
        carbide: "plenty of emulsion, never dry",
    },
    Practice {
        keys: &["x5crni", "x8crni", "x2crni"],
        high_speed_steel: "plenty of emulsion or cutting oil; keep the tool cutting, it hardens where it is rubbed",
        carbide: "plenty of emulsion; keep the tool cutting, it hardens where it is rubbed",
    },
    Practice {
        keys: &["pmma", "pc"],
        high_speed_steel: "dry, or air; no oil and no spirit: it cracks under them",
        carbide: "dry, or air; no oil and no spirit: it cracks under them",
    },
    Practice {
        keys: &["pom", "pa6", "peek", "ptfe", "pe_", "pvc"],
        high_speed_steel: "dry, or air",
        carbide: "dry, or air",
    },
    Practice {
        keys: &[""],
        high_speed_steel: STEEL,
        carbide: STEEL_CARBIDE,
    },
];

/// The cutting fluid that the trade uses for a material of the catalogue under a tool; none for a
/// material of the asker's own that is like none of the catalogue.
///
/// # Source
/// Common practice, no source: the plate of the machine and the maker of the tool go before it.
///
/// # Example
/// ```
/// use turnwright::{advice::fluid, Material, Provenance, ToolMaterial};
/// let mut provenance = Provenance::default();
/// let brass = fluid::of(&Material::named("CuZn39Pb3")?, Some(ToolMaterial::HighSpeedSteel), &mut provenance);
/// assert_eq!(brass, Some("dry"));
/// let magnesium = fluid::of(&Material::named("AZ31")?, None, &mut provenance);
/// assert!(magnesium.is_some_and(|words| words.contains("never water")));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn of(
    material: &Material,
    tool: Option<ToolMaterial>,
    provenance: &mut Provenance,
) -> Option<&'static str> {
    let key = material.key();
    if key.is_empty() {
        return None;
    }
    let row = PRACTICE
        .iter()
        .find(|row| row.keys.iter().any(|start| key.starts_with(start)))?;
    let words = match tool {
        Some(ToolMaterial::Carbide) => row.carbide,
        _ => row.high_speed_steel,
    };
    Some(provenance.open(
        "cutting fluid",
        &Sourced::new(
            words,
            "common practice, no source",
            Standing::CommonPractice,
        ),
    ))
}
