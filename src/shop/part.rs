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
    /// The class that the limits follow from, if it was given; documents write it in their place.
    class: Option<ToleranceClass>,
    limits: Limits,
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
            class: None,
            limits,
            length,
            length_limits: None,
            finish: None,
        })
    }

    /// A part of this nominal diameter within the limits of a tolerance class, over this length.
    ///
    /// # Errors
    /// `class`, of a hole: what is turned here is a shaft; `diameter`, where the standard has no such
    /// class.
    ///
    /// ```
    /// use turnwright::Part;
    /// let pin = Part::of_class("30 mm".parse()?, "h8".parse()?, "70 mm".parse()?)?;
    /// assert_eq!(pin.limits().smallest().mm(), 29.967);
    /// assert!(Part::of_class("30 mm".parse()?, "H8".parse()?, "70 mm".parse()?).is_err());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn of_class(
        diameter: Diameter,
        class: ToleranceClass,
        length: WorkLength,
    ) -> Result<Self, Error> {
        if class.feature() == Feature::Hole {
            let meant = class
                .mirrored()
                .map_or_else(String::new, |meant| format!(": did you mean \"{meant}\"?"));
            return Err(Error::new(
                ErrorKind::Contradiction,
                "class",
                format!("the class {class} of a hole"),
                "a class of a shaft: an outside diameter is turned",
                format!("small letters are shafts, capitals holes{meant}"),
            ));
        }
        let limits = class
            .limits(diameter)
            .map_err(|error| error.at("diameter"))?;
        Ok(Self {
            class: Some(class),
            ..Self::new(diameter, limits.value, length)?
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

    /// The tolerance class that the limits follow from, if it was given.
    #[must_use]
    pub fn class(&self) -> Option<ToleranceClass> {
        self.class
    }

    /// Limits of the diameter.
    #[must_use]
    pub fn limits(&self) -> Limits {
        self.limits
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
    use serde::ser::{Serialize, SerializeMap, Serializer};

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
            let length = f.need_quantity("length")?;
            let class = f.text("class")?;
            let limits = f.item("limits", Limits::read)?;
            let part = match (class, limits) {
                (None, Some(limits)) => Self::new(diameter, limits, length),
                (Some(text), None) => text
                    .parse::<ToleranceClass>()
                    .and_then(|class| Self::of_class(diameter, class, length)),
                (None, None) => {
                    return Err(f.missing(
                        "limits",
                        "the smallest and the largest diameter, or a class such as \"h8\"",
                    ));
                }
                (Some(_), Some(_)) => {
                    return Err(Error::new(
                        ErrorKind::Contradiction,
                        f.path("class"),
                        "both class and limits",
                        "one of the two",
                        "keep what stands on the drawing",
                    ));
                }
            };
            let mut part = part.map_err(|error| error.inside(path))?;
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
            let mut map = s.serialize_map(None)?;
            map.serialize_entry("diameter", &self.diameter)?;
            match &self.class {
                Some(class) => map.serialize_entry("class", class)?,
                None => map.serialize_entry("limits", &self.limits)?,
            }
            map.serialize_entry("length", &self.length)?;
            if let Some(limits) = &self.length_limits {
                map.serialize_entry("length_limits", limits)?;
            }
            if let Some(finish) = &self.finish {
                map.serialize_entry("finish", finish)?;
            }
            map.end()
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
