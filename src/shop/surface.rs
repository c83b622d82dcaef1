//! One diameter of a part, up to its shoulder.

use crate::error::{Error, ErrorKind};
use crate::quantity::{
    BladeWidth, ChamferLeg, DepthOfCut, Diameter, Ra, Rz, WorkLength, round_size,
};
use crate::standards::limits::{Feature, LengthLimits, Limits};
use crate::standards::tolerance_class::ToleranceClass;

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

/// A groove at a shoulder, so that a mating part lies against the shoulder or a grinding wheel runs
/// out.
///
/// ```
/// use turnwright::shop::surface::Undercut;
/// let groove = Undercut::new("3 mm".parse()?, "0.3 mm".parse()?);
/// assert_eq!(groove.depth().mm(), 0.3);
/// let inch = Undercut::new("1/8 in".parse()?, "0.012 in".parse()?);
/// assert!(inch.width() > groove.width());
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Undercut {
    width: BladeWidth,
    depth: DepthOfCut,
}

impl Undercut {
    /// A groove of this width, as wide as its tool, and this depth below the finished diameter.
    #[must_use]
    pub fn new(width: BladeWidth, depth: DepthOfCut) -> Self {
        Self { width, depth }
    }

    /// Its width, and that of its tool.
    #[must_use]
    pub fn width(&self) -> BladeWidth {
        self.width
    }

    /// Its depth below the finished diameter, radial.
    #[must_use]
    pub fn depth(&self) -> DepthOfCut {
        self.depth
    }
}

/// One diameter of a part, up to a shoulder.
///
/// ```
/// use turnwright::{Diameter, Limits, Surface, WorkLength};
/// let limits = Limits::new(Diameter::from_mm(29.967)?, Diameter::from_mm(30.0)?)?;
/// let seat = Surface::new(Diameter::from_mm(30.0)?, limits, WorkLength::from_mm(70.0)?)?;
/// assert_eq!(seat.limits().tolerance().to_string(), "0.033 mm");
/// let inch = Surface::new("1.1875 in".parse()?, Limits::new("1.187 in".parse()?, "1.188 in".parse()?)?, "2 1/2 in".parse()?)?
///     .with_chamfer("1/32 in".parse()?);
/// assert_eq!(inch.chamfer(), Some("1/32 in".parse()?));
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Surface {
    diameter: Diameter,
    limits: Limits,
    /// Where the limits were asked for by a class.
    class: Option<ToleranceClass>,
    length: WorkLength,
    length_limits: Option<LengthLimits>,
    finish: Option<WantedFinish>,
    small_diameter: Option<Diameter>,
    chamfer: Option<ChamferLeg>,
    undercut: Option<Undercut>,
}

impl Surface {
    /// This nominal diameter within these limits, over this length up to its shoulder.
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
            small_diameter: None,
            chamfer: None,
            undercut: None,
        })
    }

    /// This nominal diameter within the limits of a class of a shaft, such as h8.
    ///
    /// # Errors
    /// `class`, when it is a hole's; `diameter`, when the class has no limits for it.
    ///
    /// ```
    /// use turnwright::Surface;
    /// let seat = Surface::of_class("30 mm".parse()?, "h8".parse()?, "70 mm".parse()?)?;
    /// assert_eq!(seat.limits().smallest(), "29.967 mm".parse()?);
    /// assert!(Surface::of_class("30 mm".parse()?, "H8".parse()?, "70 mm".parse()?).is_err());
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
            small_diameter: None,
            chamfer: None,
            undercut: None,
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

    /// With a cone: it narrows from its diameter at the shoulder to this one at its free end.
    ///
    /// # Errors
    /// `small_diameter`, when it is not smaller than the diameter.
    ///
    /// ```
    /// use turnwright::Surface;
    /// let cone = Surface::of_class("30 mm".parse()?, "h9".parse()?, "50 mm".parse()?)?.with_taper_to("25 mm".parse()?)?;
    /// assert!(cone.clone().with_taper_to("31 mm".parse()?).is_err());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn with_taper_to(mut self, small: Diameter) -> Result<Self, Error> {
        if round_size(small.mm()) >= round_size(self.limits.smallest().mm()) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "small_diameter",
                small.to_string(),
                format!("less than the {} at the shoulder", self.limits.smallest()),
                "a cone narrows towards its free end; turn the part round for the other way",
            ));
        }
        self.small_diameter = Some(small);
        Ok(self)
    }

    crate::shop::setters_and_readers! {
        /// The wanted roughness.
        with_finish finish: WantedFinish;
        /// The chamfer of 45 degrees at its free edge.
        with_chamfer chamfer: ChamferLeg;
        /// The groove at its shoulder.
        with_undercut undercut: Undercut;
    }

    /// The diameter at its free end, where it is a cone.
    #[must_use]
    pub fn small_diameter(&self) -> Option<Diameter> {
        self.small_diameter
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

    /// Length up to its shoulder.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.length
    }

    /// Limits of the length, if given.
    #[must_use]
    pub fn length_limits(&self) -> Option<LengthLimits> {
        self.length_limits
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Fields, Tree};
    use crate::standards::stated_limits::Stated;
    use serde::ser::{Serialize, SerializeStruct, Serializer};

    impl Undercut {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "an undercut")?;
            let undercut = Self::new(f.need_quantity("width")?, f.need_quantity("depth")?);
            f.finish()?;
            Ok(undercut)
        }
    }

    impl Surface {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "a surface")?;
            let surface = Self::take(&f, path)?;
            f.finish()?;
            Ok(surface)
        }

        /// Takes the fields of a surface, which may stand among others.
        pub(crate) fn take(f: &Fields<'_>, path: &str) -> Result<Self, Error> {
            let diameter = f.need_quantity("diameter")?;
            let class = f.item("class", ToleranceClass::read)?;
            let mut surface = match (class, f.has("limits")) {
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
                            // Limits that name no nominal size are those of this diameter.
                            let names_one = match tree {
                                Tree::Group(fields) => {
                                    fields.iter().any(|(name, _)| name == "nominal")
                                }
                                _ => true,
                            };
                            let nominal = (!names_one).then_some(diameter);
                            let stated = Stated::read_with(tree, path, nominal)?;
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
                surface = surface
                    .with_length_limits(limits)
                    .map_err(|error| error.inside(path))?;
            }
            surface.finish = f.item("finish", WantedFinish::read)?;
            if let Some(small) = f.quantity("small_diameter")? {
                surface = surface
                    .with_taper_to(small)
                    .map_err(|error| error.inside(path))?;
            }
            surface.chamfer = f.quantity("chamfer")?;
            surface.undercut = f.item("undercut", Undercut::read)?;
            Ok(surface)
        }
    }

    impl Surface {
        /// How many fields it is written in.
        pub(crate) fn fields(&self) -> usize {
            let optional = [
                self.length_limits.is_some(),
                self.finish.is_some(),
                self.small_diameter.is_some(),
                self.chamfer.is_some(),
                self.undercut.is_some(),
            ];
            3 + optional.iter().filter(|given| **given).count()
        }

        /// Writes its fields, which may stand among others.
        pub(crate) fn write<S: SerializeStruct>(&self, s: &mut S) -> Result<(), S::Error> {
            s.serialize_field("diameter", &self.diameter)?;
            // As it was asked for, so that a job reads back as itself.
            match &self.class {
                Some(class) => s.serialize_field("class", class)?,
                None => s.serialize_field("limits", &self.limits)?,
            }
            s.serialize_field("length", &self.length)?;
            if let Some(limits) = &self.length_limits {
                s.serialize_field("length_limits", limits)?;
            }
            if let Some(finish) = &self.finish {
                s.serialize_field("finish", finish)?;
            }
            if let Some(small) = &self.small_diameter {
                s.serialize_field("small_diameter", small)?;
            }
            if let Some(chamfer) = &self.chamfer {
                s.serialize_field("chamfer", chamfer)?;
            }
            if let Some(undercut) = &self.undercut {
                s.serialize_field("undercut", undercut)?;
            }
            Ok(())
        }
    }

    impl Serialize for Surface {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let mut surface = s.serialize_struct("Surface", self.fields())?;
            self.write(&mut surface)?;
            surface.end()
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
