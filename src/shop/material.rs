//! What is cut: a material of the catalogue, or the asker's own.
//!
//! A figure never stands alone: it carries its source and how far to trust it, and hands both to
//! the answer it enters.
//!
//! ```
//! use turnwright::shop::material::{Material, ToolMaterial};
//! use turnwright::{Provenance, Standing};
//! let steel = Material::named("1.1191")?;
//! assert_eq!(steel.key(), "c45");
//! let mut provenance = Provenance::default();
//! let force = steel.specific_force().open("specific force", &mut provenance);
//! assert_eq!(force.mpa(), 2220.0);
//! assert_eq!(provenance.sources()[0].standing, Standing::FromMemory);
//! let band = steel.speed_band(ToolMaterial::HighSpeedSteel).map(|band| band.value.to_string());
//! assert_eq!(band.as_deref(), Some("22 m/min to 35 m/min"));
//! # Ok::<(), turnwright::Error>(())
//! ```

use std::borrow::Cow;
use std::fmt;

use super::catalogue::{CATALOGUE, Line};
use super::designation::{alike, designations, plain};
pub use super::figure::{BuiltUpEdge, Figure, Iso513Group, Prone, SpeedBand, ToolMaterial};
use crate::error::{Error, ErrorKind, any_of, nearest};
use crate::quantity::{
    BrinellHardness, Density, ForceExponent, SpecificCuttingForce, SpecificHeat, ThermalExpansion,
    YoungsModulus,
};

/// The bands of cutting speed by tool material.
#[derive(Debug, Clone, PartialEq, Default)]
struct Speeds {
    high_speed_steel: Option<Figure<SpeedBand>>,
    carbide: Option<Figure<SpeedBand>>,
}

/// A work material.
///
/// # Source
/// Each figure of the catalogue names its own; none was read with its book open. Text books differ
/// by 10 to 25 % in specific forces and by a factor 1.5 in speeds: give your own where you know
/// better.
///
/// # Example
/// A material of the catalogue with one figure put right, and one of the asker's own:
/// ```
/// use turnwright::{shop::material::Material, Standing};
/// let steel = Material::named("AISI 4140")?.with_specific_force("2300 MPa".parse()?);
/// assert_eq!(steel.key(), "42crmo4");
/// assert_eq!(steel.specific_force().standing, Standing::Given);
/// assert_eq!(steel.exponent().standing, Standing::FromMemory);
///
/// let own = Material::own("1900 MPa".parse()?, "0.2".parse()?)
///     .with_youngs_modulus("206 GPa".parse()?);
/// assert!(own.density().is_none());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Material {
    key: Cow<'static, str>,
    names: Cow<'static, str>,
    group: Option<Iso513Group>,
    condition: Cow<'static, str>,
    hardness: Option<Figure<BrinellHardness>>,
    specific_force: Figure<SpecificCuttingForce>,
    exponent: Figure<ForceExponent>,
    youngs_modulus: Option<Figure<YoungsModulus>>,
    density: Option<Figure<Density>>,
    expansion: Option<Figure<ThermalExpansion>>,
    specific_heat: Option<Figure<SpecificHeat>>,
    cutting_speed: Speeds,
    built_up_edge: Option<Figure<BuiltUpEdge>>,
    notes: Cow<'static, str>,
}

/// Every material of the catalogue, in its order.
///
/// ```
/// use turnwright::shop::material;
/// assert_eq!(material::catalogue().len(), 63);
/// assert!(material::catalogue().all(|m| !m.key().is_empty()));
/// ```
pub fn catalogue() -> impl ExactSizeIterator<Item = Material> {
    CATALOGUE.iter().map(Material::of)
}

impl Material {
    /// The material of the catalogue that goes by `text`: its key or one of its designations.
    ///
    /// Capitals, spaces, hyphens and underscores do not matter. A designation that the catalogue
    /// calls only *near* to a material is not taken for it, but the error points there.
    ///
    /// # Errors
    /// `material`, when no material goes by this name, or several do.
    ///
    /// # Example
    /// ```
    /// use turnwright::shop::material::Material;
    /// for name in ["c45", "C45E", "1.1191", "aisi 1045", "AISI-1045"] {
    ///     assert_eq!(Material::named(name)?.key(), "c45");
    /// }
    /// let error = Material::named("C45X").unwrap_err();
    /// assert!(error.remedy().contains("did you mean"));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn named(text: &str) -> Result<Self, Error> {
        if let Some(line) = CATALOGUE.iter().find(|line| alike(line.key, text)) {
            return Ok(Self::of(line));
        }
        let fitting: Vec<&Line> = CATALOGUE
            .iter()
            .filter(|line| designations(line.names).any(|d| !d.near && d.is(text)))
            .collect();
        match fitting.as_slice() {
            [line] => Ok(Self::of(line)),
            [] => Err(unknown(text)),
            several => Err(ambiguous(text, several)),
        }
    }

    /// The materials with `part` in their key or name; all of them for an empty text.
    ///
    /// ```
    /// use turnwright::shop::material::Material;
    /// let keys: Vec<_> = Material::search("gjl").iter().map(|m| m.key().to_owned()).collect();
    /// assert_eq!(keys, ["gjl200", "gjl250"]);
    /// ```
    #[must_use]
    pub fn search(part: &str) -> Vec<Self> {
        let wanted = plain(part);
        CATALOGUE
            .iter()
            .filter(|line| plain(line.key).contains(&wanted) || plain(line.names).contains(&wanted))
            .map(Self::of)
            .collect()
    }

    /// The asker's own material, from the specific force of a chip of 1 mm by 1 mm and its
    /// exponent (Kienzle).
    #[must_use]
    pub const fn own(specific_force: SpecificCuttingForce, exponent: ForceExponent) -> Self {
        Self {
            key: Cow::Borrowed(""),
            names: Cow::Borrowed(""),
            group: None,
            condition: Cow::Borrowed(""),
            hardness: None,
            specific_force: Figure::given(specific_force),
            exponent: Figure::given(exponent),
            youngs_modulus: None,
            density: None,
            expansion: None,
            specific_heat: None,
            cutting_speed: Speeds {
                high_speed_steel: None,
                carbide: None,
            },
            built_up_edge: None,
            notes: Cow::Borrowed(""),
        }
    }

    fn of(line: &Line) -> Self {
        Self {
            key: Cow::Borrowed(line.key),
            names: Cow::Borrowed(line.names),
            group: Some(line.group),
            condition: Cow::Borrowed(line.condition),
            hardness: line.hardness.map(Figure::from),
            specific_force: line.specific_force.into(),
            exponent: line.exponent.into(),
            youngs_modulus: line.youngs_modulus.map(Figure::from),
            density: line.density.map(Figure::from),
            expansion: line.expansion.map(Figure::from),
            specific_heat: line.specific_heat.map(Figure::from),
            cutting_speed: Speeds {
                high_speed_steel: line.high_speed_steel.map(Figure::from),
                carbide: line.carbide.map(Figure::from),
            },
            built_up_edge: Some(line.built_up_edge.into()),
            notes: Cow::Borrowed(line.notes),
        }
    }

    /// The name by which documents call it; empty for the asker's own.
    #[must_use]
    pub fn key(&self) -> &str {
        &self.key
    }

    /// Its designations, as the catalogue lists them; for the asker's own what
    /// [`with_name`](Self::with_name) was told.
    #[must_use]
    pub fn names(&self) -> &str {
        &self.names
    }

    /// Its group after ISO 513.
    #[must_use]
    pub const fn group(&self) -> Option<Iso513Group> {
        self.group
    }

    /// The state of heat or work that the figures hold for.
    #[must_use]
    pub fn condition(&self) -> &str {
        &self.condition
    }

    /// Brinell hardness, typical for the condition.
    #[must_use]
    pub const fn hardness(&self) -> Option<&Figure<BrinellHardness>> {
        self.hardness.as_ref()
    }

    /// Specific cutting force k_c1.1 of a chip of 1 mm by 1 mm.
    #[must_use]
    pub const fn specific_force(&self) -> &Figure<SpecificCuttingForce> {
        &self.specific_force
    }

    /// Exponent m_c of the specific cutting force.
    #[must_use]
    pub const fn exponent(&self) -> &Figure<ForceExponent> {
        &self.exponent
    }

    /// Young's modulus.
    #[must_use]
    pub const fn youngs_modulus(&self) -> Option<&Figure<YoungsModulus>> {
        self.youngs_modulus.as_ref()
    }

    /// Density.
    #[must_use]
    pub const fn density(&self) -> Option<&Figure<Density>> {
        self.density.as_ref()
    }

    /// Coefficient of thermal expansion.
    #[must_use]
    pub const fn expansion(&self) -> Option<&Figure<ThermalExpansion>> {
        self.expansion.as_ref()
    }

    /// Specific heat.
    #[must_use]
    pub const fn specific_heat(&self) -> Option<&Figure<SpecificHeat>> {
        self.specific_heat.as_ref()
    }

    /// The cutting speeds for turning with `tool`, where the tool can turn this material.
    #[must_use]
    pub const fn speed_band(&self, tool: ToolMaterial) -> Option<&Figure<SpeedBand>> {
        match tool {
            ToolMaterial::HighSpeedSteel => self.cutting_speed.high_speed_steel.as_ref(),
            ToolMaterial::Carbide => self.cutting_speed.carbide.as_ref(),
        }
    }

    /// Whether and where a built-up edge forms; absent where nobody said.
    #[must_use]
    pub const fn built_up_edge(&self) -> Option<&Figure<BuiltUpEdge>> {
        self.built_up_edge.as_ref()
    }

    /// What else is known of it: chips, fire, dust.
    #[must_use]
    pub fn notes(&self) -> &str {
        &self.notes
    }

    /// Called so from here on, in sentences; the catalogue does not learn the name.
    #[must_use]
    pub fn with_name(mut self, name: impl Into<Cow<'static, str>>) -> Self {
        self.names = name.into();
        self
    }

    /// With the specific force that the asker gives.
    #[must_use]
    pub fn with_specific_force(mut self, specific_force: SpecificCuttingForce) -> Self {
        self.specific_force = Figure::given(specific_force);
        self
    }

    /// With the exponent that the asker gives.
    #[must_use]
    pub fn with_exponent(mut self, exponent: ForceExponent) -> Self {
        self.exponent = Figure::given(exponent);
        self
    }

    /// With the hardness that the asker gives.
    #[must_use]
    pub fn with_hardness(mut self, hardness: BrinellHardness) -> Self {
        self.hardness = Some(Figure::given(hardness));
        self
    }

    /// With the Young's modulus that the asker gives.
    #[must_use]
    pub fn with_youngs_modulus(mut self, youngs_modulus: YoungsModulus) -> Self {
        self.youngs_modulus = Some(Figure::given(youngs_modulus));
        self
    }

    /// With the density that the asker gives.
    #[must_use]
    pub fn with_density(mut self, density: Density) -> Self {
        self.density = Some(Figure::given(density));
        self
    }

    /// With the thermal expansion that the asker gives.
    #[must_use]
    pub fn with_expansion(mut self, expansion: ThermalExpansion) -> Self {
        self.expansion = Some(Figure::given(expansion));
        self
    }

    /// With the specific heat that the asker gives.
    #[must_use]
    pub fn with_specific_heat(mut self, specific_heat: SpecificHeat) -> Self {
        self.specific_heat = Some(Figure::given(specific_heat));
        self
    }

    /// With the cutting speeds that the asker gives for turning with `tool`.
    #[must_use]
    pub fn with_speed_band(mut self, tool: ToolMaterial, band: SpeedBand) -> Self {
        let place = match tool {
            ToolMaterial::HighSpeedSteel => &mut self.cutting_speed.high_speed_steel,
            ToolMaterial::Carbide => &mut self.cutting_speed.carbide,
        };
        *place = Some(Figure::given(band));
        self
    }

    /// With what the asker says about the built-up edge.
    #[must_use]
    pub fn with_built_up_edge(mut self, built_up_edge: BuiltUpEdge) -> Self {
        self.built_up_edge = Some(Figure::given(built_up_edge));
        self
    }
}

impl fmt::Display for Material {
    /// Its names and condition: `C45E (1.1191), AISI 1045; normalised`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match (self.names.is_empty(), self.condition.is_empty()) {
            (true, _) => f.write_str("the asker's own material"),
            (false, true) => f.write_str(&self.names),
            (false, false) => write!(f, "{}; {}", self.names, self.condition),
        }
    }
}

#[cfg(feature = "proptest")]
impl proptest::arbitrary::Arbitrary for Material {
    type Parameters = ();
    type Strategy = proptest::strategy::BoxedStrategy<Self>;

    /// Any material of the catalogue, as it stands or with its forces given; or an asker's own.
    fn arbitrary_with((): ()) -> Self::Strategy {
        use proptest::prelude::*;
        let listed = (0..CATALOGUE.len()).prop_map(|i| Self::of(&CATALOGUE[i]));
        let forces = any::<(SpecificCuttingForce, ForceExponent)>();
        prop_oneof![
            2 => listed.clone(),
            1 => (listed, forces.clone())
                .prop_map(|(m, (k, e))| m.with_specific_force(k).with_exponent(e)),
            1 => (forces, any::<(YoungsModulus, Density)>())
                .prop_map(|((k, e), (y, d))| Self::own(k, e).with_youngs_modulus(y).with_density(d)),
        ]
        .boxed()
    }
}

/// The given text as an error shows it, no longer than a line.
fn shown(text: &str) -> String {
    let mut short: String = text.chars().take(60).collect();
    if short.len() < text.len() {
        short.push_str("...");
    }
    format!("{short:?}")
}

const EXPECTED: &str = "the key or a designation of one material of the catalogue";
const OR_OWN: &str = "or give specific_force and exponent of your own material";

#[cold]
fn ambiguous(text: &str, fitting: &[&Line]) -> Error {
    let names: Vec<String> = fitting
        .iter()
        .map(|line| format!("{} ({})", line.key, line.condition))
        .collect();
    Error::new(
        ErrorKind::UnknownName,
        "material",
        shown(text),
        EXPECTED,
        format!(
            "it fits several: say which is meant by its key, {}",
            any_of(names.iter().map(String::as_str))
        ),
    )
}

#[cold]
fn unknown(text: &str) -> Error {
    let suggestions = suggestions(text);
    let remedy = if suggestions.is_empty() {
        format!("look it up in the list of materials, {OR_OWN}")
    } else {
        format!(
            "did you mean {}? {OR_OWN}",
            any_of(suggestions.iter().map(String::as_str))
        )
    };
    Error::new(
        ErrorKind::UnknownName,
        "material",
        shown(text),
        EXPECTED,
        remedy,
    )
}

/// What could have been meant: materials that are near to the one named, else names with `text` in
/// them, else a slip of the pen.
fn suggestions(text: &str) -> Vec<String> {
    const MOST: usize = 4;
    let wanted = plain(text);
    if wanted.len() < 2 {
        return Vec::new();
    }
    let family = super::families::usual(text);
    if !family.is_empty() {
        return family.iter().map(|key| (*key).to_owned()).collect();
    }
    let all = || {
        CATALOGUE
            .iter()
            .flat_map(|line| designations(line.names).map(move |name| (line, name)))
    };
    let near = all()
        .filter(|(_, name)| name.near && name.is(text))
        .map(|(line, _)| line.key.to_owned());
    let holding = CATALOGUE
        .iter()
        .filter(|line| plain(line.key).contains(&wanted) || plain(line.names).contains(&wanted))
        .map(|line| line.key.to_owned());
    let mut found: Vec<String> = near.take(MOST).collect();
    if found.is_empty() {
        found = holding.take(MOST).collect();
    }
    if found.is_empty() {
        let keys = CATALOGUE
            .iter()
            .map(|line| (plain(line.key), line.key.to_owned()));
        let names = all()
            .filter(|(_, name)| !name.near)
            .map(|(_, name)| (plain(&name.shown()), name.shown()));
        let known: Vec<(String, String)> = keys.chain(names).collect();
        let alike = known.iter().map(|(plain, _)| plain.as_str());
        let slip = nearest(
            &wanted,
            alike.filter(|plain| !is_another_grade(plain, &wanted)),
        );
        found.extend(
            known
                .iter()
                .find(|(plain, _)| Some(plain.as_str()) == slip)
                .map(|(_, shown)| shown.clone()),
        );
    }
    found.dedup();
    found
}

/// True of names with as many figures that are other ones: S355 is no slip for S235.
fn is_another_grade(one: &str, other: &str) -> bool {
    let figures = |name: &str| {
        name.chars()
            .filter(char::is_ascii_digit)
            .collect::<String>()
    };
    let (one, other) = (figures(one), figures(other));
    one.len() == other.len() && one != other
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::provenance::Standing;

    fn key(text: &str) -> String {
        Material::named(text).unwrap().key().to_owned()
    }

    #[test]
    fn every_key_names_its_material() {
        for material in catalogue() {
            assert_eq!(Material::named(material.key()).unwrap(), material);
            assert_eq!(
                key(&material.key().to_uppercase().replace('_', "-")),
                material.key()
            );
        }
    }

    #[test]
    fn no_two_keys_read_alike() {
        let mut keys: Vec<String> = CATALOGUE.iter().map(|line| plain(line.key)).collect();
        keys.sort();
        keys.dedup();
        assert_eq!(keys.len(), CATALOGUE.len());
    }

    #[test]
    fn every_designation_names_its_material_or_says_which_share_it() {
        for line in &CATALOGUE {
            for name in designations(line.names).filter(|name| !name.near) {
                match Material::named(&name.shown()) {
                    Ok(found) if found.key() != line.key => {
                        // A key comes before a designation: 100Cr6 is the key of the soft one.
                        assert!(alike(found.key(), &name.shown()), "{}", name.shown());
                    }
                    Ok(_) => {}
                    Err(error) => {
                        assert!(error.remedy().contains("it fits several"), "{error}");
                        assert!(error.remedy().contains(line.key), "{error}");
                    }
                }
            }
        }
    }

    #[test]
    fn a_designation_names_its_material() {
        for (text, expected) in [
            ("C45E", "c45"),
            ("1.1191", "c45"),
            ("aisi 1045", "c45"),
            ("S235JR", "s235"),
            ("1.0038", "s235"),
            ("AISI 1018 hot rolled", "s235"),
            ("AISI 1015", "c15"),
            ("AISI 1215", "11smn30"),
            ("St 50-2", "e295"),
            ("EN AW-6082", "aw6082"),
            ("en_aw 6082-T6", "aw6082"),
            ("AlSi1MgMn", "aw6082"),
            ("UNS C27400", "cuzn37"),
            ("GS-45", "ge240"),
            ("acrylic", "pmma"),
            ("17-4 PH", "x5crnicunb16_4"),
        ] {
            assert_eq!(key(text), expected, "{text}");
        }
    }

    #[test]
    fn a_name_that_fits_several_is_refused_naming_them() {
        for (text, first, second) in [
            ("AISI 1018", "s235", "c15"),
            (
                "1.3505",
                "100cr6 (spheroidised)",
                "100cr6_h (hardened, 60 HRC)",
            ),
        ] {
            let error = Material::named(text).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::UnknownName);
            assert!(error.remedy().contains(first), "{error}");
            assert!(error.remedy().contains(second), "{error}");
        }
    }

    #[test]
    fn another_grade_is_no_slip() {
        for text in ["S355", "S355JR"] {
            let error = Material::named(text).unwrap_err();
            assert!(!error.remedy().contains("did you mean"), "{error}");
        }
    }

    #[test]
    fn an_unknown_name_is_refused_naming_the_nearest() {
        for (text, nearest) in [
            ("C45X", "c45"),
            ("11smn3", "11smn30"),
            ("42CrM04", "42crmo4"),
            ("4140", "42crmo4"),
            ("ASTM A36", "s235"),
            ("AISI 4340", "34crnimo6"),
            ("AISI L6", "55nicrmov7"),
        ] {
            let error = Material::named(text).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::UnknownName);
            assert_eq!(error.field(), "material");
            assert!(
                error.remedy().contains(&format!("did you mean {nearest}")),
                "{error}"
            );
        }
    }

    #[test]
    fn what_is_no_name_is_refused_without_a_guess() {
        let long = "x".repeat(100_000);
        for text in ["", " ", "-", "cast", "unfilled", "unobtainium", &long] {
            let error = Material::named(text).unwrap_err();
            assert_eq!(error.kind(), ErrorKind::UnknownName);
            assert!(error.given().len() < 80);
            assert!(error.remedy().contains("specific_force"), "{error}");
        }
    }

    #[test]
    fn a_search_finds_parts_of_keys_and_names() {
        assert_eq!(Material::search("").len(), CATALOGUE.len());
        assert_eq!(Material::search("AISI 304")[0].key(), "x5crni18_10");
        assert!(Material::search("unobtainium").is_empty());
    }

    #[test]
    fn what_the_asker_gives_stands_as_given() {
        let band = SpeedBand::new("20 m/min".parse().unwrap(), "30 m/min".parse().unwrap());
        let tool = ToolMaterial::HighSpeedSteel;
        let material = Material::named("c45")
            .unwrap()
            .with_exponent("0.2".parse().unwrap())
            .with_speed_band(tool, band.clone().unwrap());
        assert_eq!(material.exponent().standing, Standing::Given);
        assert_eq!(material.speed_band(tool).unwrap().value, band.unwrap());
        assert_eq!(material.specific_force().standing, Standing::FromMemory);
    }

    #[cfg(feature = "json")]
    #[test]
    fn a_material_is_written_as_a_question_names_it() {
        let steel = Material::named("C45E").unwrap();
        assert_eq!(serde_json::to_value(&steel).unwrap(), "c45");
        let own = steel.with_specific_force("1500 MPa".parse().unwrap());
        let json = serde_json::to_value(&own).unwrap();
        assert_eq!(
            json,
            serde_json::json!({ "like": "c45", "specific_force": "1500 MPa" })
        );
        assert_eq!(serde_json::from_value::<Material>(json).unwrap(), own);
    }
}
