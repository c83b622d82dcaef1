//! How far the work grows as it warms, and how hard it then presses on its centre.

use serde::Serialize;

use crate::advice::heat::{self, WarmWork};
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::heat as kernel;
use crate::physics::strut::{self, Strut};
use crate::provenance::Provenance;
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::unit::Units;
use crate::quantity::{
    AxialForce, AxialStiffness, Diameter, TemperatureRise, ThermalExpansion, ThermalGrowth,
    WorkLength,
};
use crate::shop::material::Material;

/// A diameter or a length that warms.
///
/// ```
/// use turnwright::{document::growth::{Question, Size}, Diameter};
/// let size = Size::Diameter("60 mm".parse()?);
/// let answer = Question::new(size, "20 K".parse()?, "23.4 um/(m K)".parse()?).answer()?;
/// assert!((answer.growth.mm() - 0.028).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    size: Size,
    rise: TemperatureRise,
    expansion: ThermalExpansion,
    held: Option<Held>,
    units: Option<Units>,
    provenance: Provenance,
}

/// What grows.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Size {
    /// A diameter.
    Diameter(Diameter),
    /// A length.
    Length(WorkLength),
}

/// A bar that cannot grow freely: between the chuck and a centre.
#[derive(Debug, Clone, PartialEq)]
struct Held {
    bar: Strut,
    // Of a bar of one diameter.
    diameter: Option<Diameter>,
    stiffness: AxialStiffness,
}

/// Absolute zero as a rise above 20 degC, in K: 0 degC are 273.15 K (the definition of the degree).
const ABSOLUTE_ZERO: f64 = -293.15;

/// The rise of temperature: given, or an upper bound of what a cut makes.
fn rise(
    f: &Fields<'_>,
    material: Option<&Material>,
    provenance: &mut Provenance,
) -> Result<TemperatureRise, Error> {
    let given: Option<TemperatureRise> = f.quantity("rise")?;
    if let Some(cold) = given.filter(|rise| rise.kelvin() < ABSOLUTE_ZERO) {
        return Err(Error::new(
            ErrorKind::OutOfRange,
            f.path("rise"),
            cold.to_string(),
            format!("at least {ABSOLUTE_ZERO} K: nothing is colder"),
            "give how much warmer than 20 degC the work is, not its temperature; colder is negative",
        ));
    }
    let heated = f.item("heated_by", |tree, path| {
        let f = Fields::of(tree, path, "a cut that heats the work")?;
        let (power, time) = (f.need_quantity("cutting_power")?, f.need_quantity("time")?);
        let mass = f.need_quantity("mass")?;
        let share = match f.quantity("heat_share")? {
            Some(share) => share,
            // The upper end: what is reckoned is a bound.
            None => {
                let [_, most] = kernel::HEAT_SHARE.value;
                provenance.record(
                    "share of the power that stays in the work",
                    &most,
                    kernel::HEAT_SHARE.source,
                    kernel::HEAT_SHARE.standing,
                );
                most
            }
        };
        let specific_heat = match (f.quantity("specific_heat")?, material) {
            (Some(given), _) => given,
            (None, Some(material)) => material
                .specific_heat()
                .map(|c| c.open("specific heat", provenance))
                .ok_or_else(|| f.missing("specific_heat", "a specific heat"))?,
            (None, None) => {
                return Err(f.missing("specific_heat", "a specific heat, or a material"));
            }
        };
        f.finish()?;
        kernel::temperature_rise(power, share, time, mass, specific_heat)
            .map_err(|error| error.inside(path))
    })?;
    match (given, heated) {
        (Some(rise), None) | (None, Some(rise)) => Ok(rise),
        (None, None) => Err(f.missing("rise", "how much warmer: rise, or heated_by with a cut")),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("rise"),
            "both rise and heated_by",
            "one of the two",
            "keep the rise where it was measured",
        )),
    }
}

/// How far it grows.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The rise of temperature reckoned with: as given, or by the heat of a cut, without any loss.
    pub rise: TemperatureRise,
    /// Of the length where a length is given, else of the diameter.
    pub growth: ThermalGrowth,
    /// Of the bar's diameter, where length and diameter are given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub diameter_growth: Option<ThermalGrowth>,
    /// The diameter at 20 degC, if the one given was measured at this rise above it.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub size_at_20: Option<Diameter>,
    /// The length at 20 degC, likewise.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_at_20: Option<WorkLength>,
    /// Force by which the bar presses harder on the centre; negative when it shrinks.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub added_axial_force: Option<AxialForce>,
    /// Axial force at which the bar would buckle.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub buckling_force: Option<AxialForce>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A size, how much warmer than 20 degC it is, and how its material expands.
    #[must_use]
    pub fn new(size: Size, rise: TemperatureRise, expansion: ThermalExpansion) -> Self {
        Self {
            size,
            rise,
            expansion,
            held: None,
            units: None,
            provenance: Provenance::default(),
        }
    }

    /// With words in these units.
    #[must_use]
    pub fn with_units(mut self, units: Units) -> Self {
        self.units = Some(units);
        self
    }

    /// Held between the chuck and what stands behind a centre: what grows is then the length of this bar.
    ///
    /// ```
    /// use turnwright::{document::growth::Question, physics::strut::Strut};
    /// let bar = Strut::new("210 GPa".parse()?, "30 mm".parse()?, "400 mm".parse()?);
    /// let answer = Question::of_bar(bar, "15 K".parse()?, "11.5 um/(m K)".parse()?, "20 kN/mm".parse()?).answer()?;
    /// assert_eq!(answer.added_axial_force.map(|f| f.newton().round()), Some(1309.0));
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn of_bar(
        bar: Strut,
        rise: TemperatureRise,
        expansion: ThermalExpansion,
        stiffness: AxialStiffness,
    ) -> Self {
        let mut question = Self::new(Size::Length(bar.length()), rise, expansion);
        question.held = Some(Held {
            bar,
            diameter: None,
            stiffness,
        });
        question
    }

    pub(super) fn read(body: &Tree, units: Units) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let mut provenance = Provenance::default();
        let material = f.item("material", Material::read)?;
        let expansion = expansion(&f, material.as_ref(), &mut provenance)?;
        let rise = rise(&f, material.as_ref(), &mut provenance)?;
        let mut question = if f.has("axial_stiffness") {
            Self::read_held(&f, material.as_ref(), (rise, expansion), &mut provenance)?
        } else {
            for name in ["youngs_modulus", "bore", "sections"] {
                if f.has(name) {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path(name),
                        format!("{name} without axial_stiffness"),
                        "axial_stiffness beside it, for the force on the centre",
                        "add the stiffness along the axis of centre and tailstock, or strike the field",
                    ));
                }
            }
            let size = match (f.quantity("length")?, f.quantity("diameter")?) {
                (Some(length), None) => Size::Length(length),
                (None, Some(diameter)) => Size::Diameter(diameter),
                (None, None) => return Err(f.missing("diameter", "what grows: diameter or length")),
                (Some(_), Some(_)) => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path("diameter"),
                        "both diameter and length without axial_stiffness",
                        "one of the two, or axial_stiffness for the force on the centre",
                        "ask for diameter and length one after the other",
                    ));
                }
            };
            Self::new(size, rise, expansion)
        };
        question.units = Some(units);
        question.provenance = provenance;
        f.finish()?;
        Ok(question)
    }

    /// A bar on its centre: diameter and length, or sections.
    fn read_held(
        f: &Fields<'_>,
        material: Option<&Material>,
        (rise, expansion): (TemperatureRise, ThermalExpansion),
        provenance: &mut Provenance,
    ) -> Result<Self, Error> {
        let stiffness = f.need_quantity("axial_stiffness")?;
        let modulus = match (f.quantity("youngs_modulus")?, material) {
            (Some(given), _) => given,
            (None, Some(material)) => material
                .youngs_modulus()
                .map(|e| e.open("Young's modulus", provenance))
                .ok_or_else(|| f.missing("youngs_modulus", "a Young's modulus"))?,
            (None, None) => {
                return Err(f.missing(
                    "youngs_modulus",
                    "a Young's modulus, or a material, for the force on the centre",
                ));
            }
        };
        let piece = |f: &Fields<'_>| {
            let bar = Strut::new(
                modulus,
                f.need_quantity("diameter")?,
                f.need_quantity("length")?,
            );
            match f.quantity("bore")? {
                None => Ok(bar),
                Some(bore) => bar
                    .with_bore(bore)
                    .map_err(|error| error.at(&f.path("bore"))),
            }
        };
        let sections = f.item("sections", |tree, path| {
            list(tree, path, |tree, path| {
                let f = Fields::of(tree, path, "a section")?;
                let bar = piece(&f)?;
                f.finish()?;
                Ok(bar)
            })
        })?;
        let Some(sections) = sections else {
            let mut question = Self::of_bar(piece(f)?, rise, expansion, stiffness);
            if let Some(held) = &mut question.held {
                held.diameter = f.quantity("diameter")?;
            }
            return Ok(question);
        };
        let bar = sections.into_iter().reduce(Strut::then_all_of);
        let bar = bar.ok_or_else(|| {
            Error::new(
                ErrorKind::Contradiction,
                f.path("sections"),
                "no section",
                "the sections of the bar between chuck and centre",
                "write [{ \"diameter\": \"20 mm\", \"length\": \"100 mm\" }]",
            )
        })?;
        Ok(Self::of_bar(bar, rise, expansion, stiffness))
    }

    /// How far it grows.
    ///
    /// # Errors
    /// None of its own.
    pub fn answer(&self) -> Result<Answer, Error> {
        let (rise, alpha) = (self.rise, self.expansion);
        let mut provenance = self.provenance.clone();
        let growth = match self.size {
            Size::Diameter(d) => kernel::diameter_growth(d, alpha, rise),
            Size::Length(l) => kernel::length_growth(l, alpha, rise),
        };
        let held = self.held.as_ref();
        let added = held.map(|held| strut::growth_load(&held.bar, growth, Some(held.stiffness)));
        let buckling = held.map(|held| strut::buckling_load(&held.bar));
        let cautions = heat::cautions(
            rise,
            match (self.size, added, buckling) {
                (_, Some(added), Some(buckling)) => WarmWork::OnCentre { added, buckling },
                (Size::Length(_), ..) => WarmWork::Length,
                (Size::Diameter(_), ..) => WarmWork::Diameter,
            },
            self.units.unwrap_or_default(),
            &mut provenance,
        );
        let diameter = match self.size {
            Size::Diameter(d) => Some(d),
            Size::Length(_) => held.and_then(|held| held.diameter),
        };
        Ok(Answer {
            rise,
            growth,
            diameter_growth: held
                .and_then(|held| held.diameter)
                .map(|d| kernel::diameter_growth(d, alpha, rise)),
            size_at_20: diameter.map(|d| kernel::diameter_at_20(d, alpha, rise)),
            length_at_20: match self.size {
                Size::Diameter(_) => None,
                Size::Length(l) => Some(kernel::length_at_20(l, alpha, rise)),
            },
            added_axial_force: added,
            buckling_force: buckling,
            cautions,
            provenance,
        })
    }
}

fn expansion(
    f: &Fields<'_>,
    material: Option<&Material>,
    provenance: &mut Provenance,
) -> Result<ThermalExpansion, Error> {
    match (f.quantity("expansion")?, material) {
        (Some(given), None) => Ok(given),
        (None, Some(material)) => material
            .expansion()
            .map(|alpha| alpha.open("thermal expansion", provenance))
            .ok_or_else(|| {
                Error::new(
                    ErrorKind::MissingField,
                    f.path("expansion"),
                    "a material without a thermal expansion",
                    "a thermal expansion",
                    "add \"expansion\" to the material",
                )
            }),
        (None, None) => Err(f.missing("expansion", "a thermal expansion, or a material")),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("expansion"),
            "both expansion and material",
            "one of the two",
            "to correct a material's expansion write { \"like\": \"<key>\", \"expansion\": .. }",
        )),
    }
}
