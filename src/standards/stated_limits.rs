//! Limits with the way in which they were stated: as sizes, by deviations, by a class.

use super::general_tolerance::{GeneralClass, PlusMinus, linear};
use super::limit_deviations::LimitDeviations;
use super::limits::Limits;
use super::tolerance_class::ToleranceClass;
use crate::error::Error;
use crate::provenance::{Provenance, Sourced};
use crate::quantity::{Diameter, HalfWidth, Quantity, WorkLength};

/// Where limits come from.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "json"), allow(dead_code))]
pub(crate) enum Origin {
    /// The asker's own figures.
    Given,
    Class(ToleranceClass, Sourced<LimitDeviations>),
    General(GeneralClass, Sourced<PlusMinus>),
}

/// Limits, and how they were stated.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(not(feature = "json"), allow(dead_code))]
pub(crate) struct Stated {
    pub(crate) limits: Limits,
    /// Not there where limits were stated as two sizes.
    pub(crate) nominal: Option<Diameter>,
    pub(crate) origin: Origin,
}

impl Stated {
    pub(crate) fn of_class(nominal: Diameter, class: ToleranceClass) -> Result<Self, Error> {
        let deviations = class.deviations(nominal)?;
        Ok(Self {
            limits: Limits::from_deviations(nominal, deviations.value)?,
            nominal: Some(nominal),
            origin: Origin::Class(class, deviations),
        })
    }

    pub(crate) fn of_deviations(
        nominal: Diameter,
        deviations: LimitDeviations,
    ) -> Result<Self, Error> {
        Ok(Self {
            limits: Limits::from_deviations(nominal, deviations)?,
            nominal: Some(nominal),
            origin: Origin::Given,
        })
    }

    pub(crate) fn symmetric(nominal: Diameter, half: HalfWidth) -> Result<Self, Error> {
        Ok(Self {
            limits: Limits::symmetric(nominal, half)?,
            nominal: Some(nominal),
            origin: Origin::Given,
        })
    }

    #[cfg_attr(not(feature = "serde"), allow(dead_code))]
    pub(crate) fn general(nominal: Diameter, class: GeneralClass) -> Result<Self, Error> {
        let length = WorkLength::from_trade(nominal.mm()).map_err(|error| error.at("nominal"))?;
        let off = linear(length, class).map_err(|error| error.at("nominal"))?;
        let half = HalfWidth::computed_trade(off.value.mm());
        Ok(Self {
            limits: Limits::symmetric(nominal, half)?,
            nominal: Some(nominal),
            origin: Origin::General(class, off),
        })
    }

    #[cfg_attr(not(feature = "json"), allow(dead_code))]
    pub(crate) fn of_sizes(limits: Limits) -> Self {
        Self {
            limits,
            nominal: None,
            origin: Origin::Given,
        }
    }

    #[cfg_attr(not(feature = "serde"), allow(dead_code))]
    pub(crate) fn class(&self) -> Option<ToleranceClass> {
        match self.origin {
            Origin::Class(class, _) => Some(class),
            Origin::Given | Origin::General(..) => None,
        }
    }

    /// Tells of the table, where the limits come from one.
    #[cfg_attr(not(feature = "json"), allow(dead_code))]
    pub(crate) fn record(&self, provenance: &mut Provenance) {
        let of = self
            .nominal
            .map_or_else(String::new, |d| format!(" of {d}"));
        match &self.origin {
            Origin::Given => {}
            Origin::Class(class, found) => {
                provenance.open(format!("limit deviations{of} {class}"), found);
            }
            Origin::General(class, found) => {
                provenance.open(format!("general tolerance{of}, class {class}"), found);
            }
        }
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::error::ErrorKind;
    use crate::quantity::fields::{Fields, Tree, list, quantity};
    use crate::standards::limits_text;

    const CLASSES: &[(&str, GeneralClass)] = &[
        ("fine", GeneralClass::Fine),
        ("medium", GeneralClass::Medium),
        ("coarse", GeneralClass::Coarse),
        ("very_coarse", GeneralClass::VeryCoarse),
    ];

    impl Stated {
        /// Limits in any writing: two sizes, text, or an object.
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            Self::read_with(tree, path, None)
        }

        /// The same, of a nominal size that stands outside of them.
        pub(crate) fn read_with(
            tree: &Tree,
            path: &str,
            nominal: Option<Diameter>,
        ) -> Result<Self, Error> {
            match tree {
                Tree::Text(text) => limits_text::read(text).map_err(|error| error.at(path)),
                Tree::Group(_) => {
                    let f = Fields::of(tree, path, "limits")?;
                    let stated = Self::take(&f, nominal)?;
                    f.finish()?;
                    Ok(stated)
                }
                Tree::List(_) => match list(tree, path, quantity::<Diameter>)?.as_slice() {
                    [smallest, largest] => Limits::new(*smallest, *largest)
                        .map(Self::of_sizes)
                        .map_err(|error| error.at(path)),
                    other => Err(unreadable(path, &format!("{} sizes", other.len()))),
                },
                Tree::Nothing | Tree::Flag(_) | Tree::Number(_) => {
                    Err(unreadable(path, "neither sizes, text nor an object"))
                }
            }
        }

        /// Limits from the fields of an object: a nominal size, and one way to say how far off.
        pub(crate) fn take(f: &Fields<'_>, nominal: Option<Diameter>) -> Result<Self, Error> {
            let here = |error: Error| {
                let field = error.field().to_owned();
                error.at(&f.path(&field))
            };
            let own: Option<Diameter> = f.quantity("nominal")?;
            if let (Some(own), Some(outer)) = (own, nominal)
                && own != outer
            {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path("nominal"),
                    format!("{own} beside a nominal size of {outer}"),
                    "one nominal size",
                    "strike one of the two",
                ));
            }
            let class = f.item("class", ToleranceClass::read)?;
            let (upper, lower) = (
                f.quantity("upper_deviation")?,
                f.quantity("lower_deviation")?,
            );
            let half: Option<HalfWidth> = f.quantity("plus_minus")?;
            let general = f.choice("general", CLASSES)?;
            let nominal = match own.or(nominal) {
                Some(nominal) => nominal,
                None => f.need_quantity("nominal")?,
            };
            let ways: Vec<&str> = [
                ("class", class.is_some()),
                ("deviations", upper.is_some() || lower.is_some()),
                ("plus_minus", half.is_some()),
                ("general", general.is_some()),
            ]
            .into_iter()
            .filter(|(_, given)| *given)
            .map(|(name, _)| name)
            .collect();
            if let [first, second, ..] = ways.as_slice() {
                let field = if *second == "deviations" {
                    if upper.is_some() {
                        "upper_deviation"
                    } else {
                        "lower_deviation"
                    }
                } else {
                    second
                };
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    f.path(field),
                    format!("both {first} and {second}"),
                    "one of the two",
                    "keep the one that stands on the drawing",
                ));
            }
            match (class, upper, lower, half, general) {
                (Some(class), ..) => Self::of_class(nominal, class),
                (_, Some(upper), Some(lower), ..) => LimitDeviations::new(upper, lower)
                    .and_then(|deviations| Self::of_deviations(nominal, deviations)),
                (_, Some(_), None, ..) => {
                    return Err(f.missing("lower_deviation", "the lower deviation too, also where it is 0"));
                }
                (_, None, Some(_), ..) => {
                    return Err(f.missing("upper_deviation", "the upper deviation too, also where it is 0"));
                }
                (_, _, _, Some(half), _) => Self::symmetric(nominal, half),
                (_, _, _, _, Some(general)) => Self::general(nominal, general),
                (None, None, None, None, None) => {
                    return Err(f.missing(
                        "class",
                        "a class such as \"h7\"; or upper_deviation and lower_deviation, plus_minus, or general",
                    ));
                }
            }
            .map_err(here)
        }
    }

    fn unreadable(path: &str, given: &str) -> Error {
        Error::new(
            ErrorKind::Unreadable,
            path,
            given,
            "two sizes, the smallest and the largest; or a size with its deviations or its class",
            "write [\"29.967 mm\", \"30 mm\"], \"30 +0 -0.033 mm\" or { \"nominal\": \"30 mm\", \"class\": \"h8\" }",
        )
    }
}
