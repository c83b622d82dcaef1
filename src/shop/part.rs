//! The stock and the part to be made from it.

use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, Ra, Rz, WorkLength};
use crate::standards::limits::{Feature, LengthLimits, Limits};
use crate::standards::tolerance_class::ToleranceClass;

/// The bar before turning.
///
/// ```
/// use turnwright::{Diameter, Stock, WorkLength};
/// let bar = Stock::new(Diameter::from_mm(34.0)?, WorkLength::from_mm(120.0)?);
/// assert_eq!(bar.length().mm(), 120.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Stock {
    diameter: Diameter,
    length: WorkLength,
}

impl Stock {
    /// A round bar of this diameter and length.
    #[must_use]
    pub fn new(diameter: Diameter, length: WorkLength) -> Self {
        Self { diameter, length }
    }

    /// Its diameter.
    #[must_use]
    pub fn diameter(&self) -> Diameter {
        self.diameter
    }

    /// Its length.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.length
    }
}

/// A wanted roughness; the parameter is part of it, so that Rz cannot pass for Ra.
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum WantedFinish {
    /// Arithmetic mean height.
    Ra(Ra),
    /// Maximum height.
    Rz(Rz),
}

/// A part of one diameter up to a shoulder.
///
/// ```
/// use turnwright::{Diameter, Limits, Part, WorkLength};
/// let limits = Limits::new(Diameter::from_mm(29.967)?, Diameter::from_mm(30.0)?)?;
/// let pin = Part::new(Diameter::from_mm(30.0)?, limits, WorkLength::from_mm(70.0)?)?;
/// assert_eq!(pin.limits().tolerance().to_string(), "0.033 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    diameter: Diameter,
    limits: Limits,
    /// Where the limits were asked for by a class.
    class: Option<ToleranceClass>,
    length: WorkLength,
    length_limits: Option<LengthLimits>,
    finish: Option<WantedFinish>,
}

impl Part {
    /// A part of this nominal diameter within these limits, over this length from the face.
    ///
    /// # Errors
    /// `limits`, when they lie farther from the nominal diameter than any tolerance zone does: one of
    /// the two is a slip.
    pub fn new(diameter: Diameter, limits: Limits, length: WorkLength) -> Result<Self, Error> {
        // The farthest zones of ISO 286 (a, zc) lie about this far from their nominal size.
        let farthest = 0.3 + 0.012 * diameter.mm();
        let away = |limit: Diameter| (limit.mm() - diameter.mm()).abs() > farthest;
        if away(limits.smallest()) && away(limits.largest()) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "limits",
                format!(
                    "{} to {} for a diameter of {diameter}",
                    limits.smallest(),
                    limits.largest()
                ),
                format!("limits within {farthest:.2} mm of the nominal diameter"),
                "limits are sizes, not deviations: for 30 -0.033 write 29.967 and 30",
            ));
        }
        Ok(Self {
            diameter,
            limits,
            class: None,
            length,
            length_limits: None,
            finish: None,
        })
    }

    /// A part of this nominal diameter within the limits of a class of a shaft, such as h8.
    ///
    /// # Errors
    /// `class`, when it is a hole's; `diameter`, when the class has no limits for it.
    ///
    /// ```
    /// use turnwright::Part;
    /// let pin = Part::of_class("30 mm".parse()?, "h8".parse()?, "70 mm".parse()?)?;
    /// assert_eq!(pin.limits().smallest(), "29.967 mm".parse()?);
    /// assert!(Part::of_class("30 mm".parse()?, "H8".parse()?, "70 mm".parse()?).is_err());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn of_class(
        diameter: Diameter,
        class: ToleranceClass,
        length: WorkLength,
    ) -> Result<Self, Error> {
        let class = class.of_feature(Feature::Shaft)?;
        let limits = class
            .limits(diameter)
            .map_err(|error| error.at("diameter"))?
            .value;
        Ok(Self {
            diameter,
            limits,
            class: Some(class),
            length,
            length_limits: None,
            finish: None,
        })
    }

    /// With limits of the length; without, those of the general tolerances, class medium.
    ///
    /// # Errors
    /// `length_limits`, when the length does not lie within them.
    pub fn with_length_limits(mut self, limits: LengthLimits) -> Result<Self, Error> {
        if !limits.contains(self.length) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "length_limits",
                format!("{} to {}", limits.shortest(), limits.longest()),
                format!("limits that hold the length {}", self.length),
                "give the shortest and the longest length allowed",
            ));
        }
        self.length_limits = Some(limits);
        Ok(self)
    }

    /// With a wanted roughness.
    #[must_use]
    pub fn with_finish(mut self, finish: WantedFinish) -> Self {
        self.finish = Some(finish);
        self
    }

    /// Nominal diameter.
    #[must_use]
    pub fn diameter(&self) -> Diameter {
        self.diameter
    }

    /// Limits of the diameter.
    #[must_use]
    pub fn limits(&self) -> Limits {
        self.limits
    }

    /// The class by which the limits were asked for, if any.
    #[must_use]
    pub fn class(&self) -> Option<ToleranceClass> {
        self.class
    }

    /// Length from the face to the shoulder.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.length
    }

    /// Limits of the length, if given.
    #[must_use]
    pub fn length_limits(&self) -> Option<LengthLimits> {
        self.length_limits
    }

    /// Wanted roughness, if any.
    #[must_use]
    pub fn finish(&self) -> Option<WantedFinish> {
        self.finish
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Fields, Tree};
    use serde::ser::{Serialize, SerializeStruct, Serializer};

    impl Stock {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "the stock")?;
            let stock = Self {
                diameter: f.need_quantity("diameter")?,
                length: f.need_quantity("length")?,
            };
            for later in ["skin", "run_out"] {
                f.later(
                    later,
                    "the skin or the run-out of the stock",
                    "this version plans from a bar that has been skimmed: turn the skin off, measure, and give that diameter",
                )?;
            }
            f.finish()?;
            Ok(stock)
        }
    }

    impl Part {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "the part")?;
            f.later(
                "surfaces",
                "a part of several surfaces",
                "this version plans one diameter and one length: plan each diameter as a job of its own",
            )?;
            let diameter = f.need_quantity("diameter")?;
            let class = f.item("class", ToleranceClass::read)?;
            let mut part = match (class, f.has("limits")) {
                (Some(_), true) => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path("class"),
                        "both class and limits",
                        "one of the two",
                        "keep the one that stands on the drawing",
                    ));
                }
                (Some(class), false) => {
                    let _ = f.tree("limits");
                    Self::of_class(diameter, class, f.need_quantity("length")?)
                }
                (None, _) => {
                    let limits = f.need_item(
                        "limits",
                        "the smallest and the largest diameter, or class such as \"h8\"",
                        |tree, path| {
                            let stated = Limits::read_sourced(tree, path)?;
                            // The plan turns outside diameters: a hole's class is a slip.
                            let class = stated.class().map(|c| c.of_feature(Feature::Shaft));
                            class.transpose().map_err(|error| error.at(path))?;
                            Ok(stated.limits)
                        },
                    )?;
                    Self::new(diameter, limits, f.need_quantity("length")?)
                }
            }
            .map_err(|error| error.inside(path))?;
            if let Some(limits) = f.item("length_limits", LengthLimits::read)? {
                part = part
                    .with_length_limits(limits)
                    .map_err(|error| error.inside(path))?;
            }
            part.finish = f.item("finish", WantedFinish::read)?;
            f.finish()?;
            Ok(part)
        }
    }

    impl Serialize for Part {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let optional =
                usize::from(self.length_limits.is_some()) + usize::from(self.finish.is_some());
            let mut part = s.serialize_struct("Part", 3 + optional)?;
            part.serialize_field("diameter", &self.diameter)?;
            // As it was asked for, so that a job reads back as itself.
            match &self.class {
                Some(class) => part.serialize_field("class", class)?,
                None => part.serialize_field("limits", &self.limits)?,
            }
            part.serialize_field("length", &self.length)?;
            if let Some(limits) = &self.length_limits {
                part.serialize_field("length_limits", limits)?;
            }
            if let Some(finish) = &self.finish {
                part.serialize_field("finish", finish)?;
            }
            part.end()
        }
    }

    impl WantedFinish {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if let Tree::Text(_) | Tree::Number(_) = tree {
                return Err(Error::new(
                    ErrorKind::Unreadable,
                    path,
                    "a roughness that does not say which",
                    "{ \"ra\": .. } or { \"rz\": .. }",
                    "name the parameter: { \"ra\": \"1.6 um\" }; Rz of a turned surface is four to seven times its Ra",
                ));
            }
            let f = Fields::of(tree, path, "a wanted finish")?;
            let (ra, rz) = (f.quantity("ra")?, f.quantity("rz")?);
            let finish = match (ra, rz) {
                (Some(ra), None) => Self::Ra(ra),
                (None, Some(rz)) => Self::Rz(rz),
                (Some(_), Some(_)) => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        path,
                        "both ra and rz",
                        "one of the two",
                        "keep the one that stands on the drawing",
                    ));
                }
                (None, None) => return Err(f.missing("ra", "a roughness: ra or rz")),
            };
            f.finish()?;
            Ok(finish)
        }
    }
}
