//! The part to be made.

use super::surface::Surface;
use crate::error::{Error, ErrorKind};
use crate::quantity::{Diameter, WorkLength, round_size};
use crate::standards::limits::{LengthLimits, Limits};
use crate::standards::tolerance_class::ToleranceClass;

/// A part: the surfaces that are turned from its first face inwards, and those from its other face.
///
/// From each face the diameters rise, each up to a shoulder. Where the other end is turned too, the
/// part is turned round in the chuck, and its length from face to face is wanted.
///
/// ```
/// use turnwright::{Diameter, Limits, Part, Surface, WorkLength};
/// let limits = Limits::new(Diameter::from_mm(29.967)?, Diameter::from_mm(30.0)?)?;
/// let pin = Part::new(Diameter::from_mm(30.0)?, limits, WorkLength::from_mm(70.0)?)?;
/// assert_eq!(pin.surfaces().len(), 1);
///
/// let seat = |d: &str, l: &str| Surface::of_class(d.parse()?, "h8".parse()?, l.parse()?);
/// let spindle = Part::of_surfaces(vec![seat("20 mm", "25 mm")?, seat("30 mm", "40 mm")?])?
///     .with_other_end(vec![seat("25 mm", "30 mm")?], "120 mm".parse()?)?;
/// assert_eq!(spindle.overall_length(), Some("120 mm".parse()?));
/// assert!(Part::of_surfaces(vec![seat("30 mm", "40 mm")?, seat("20 mm", "25 mm")?]).is_err());
///
/// let inch = Part::of_class("1 1/4 in".parse()?, "h8".parse()?, "2 in".parse()?)?;
/// assert!(inch.surfaces()[0].limits().largest() == "1.25 in".parse()?);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
pub struct Part {
    surfaces: Vec<Surface>,
    /// True where its first end is a list of surfaces, of one perhaps: errors name fields as they were given.
    listed: bool,
    other_end: Vec<Surface>,
    overall_length: Option<WorkLength>,
    overall_limits: Option<LengthLimits>,
}

impl From<Surface> for Part {
    fn from(surface: Surface) -> Self {
        Self {
            surfaces: vec![surface],
            listed: false,
            other_end: Vec::new(),
            overall_length: None,
            overall_limits: None,
        }
    }
}

impl Part {
    /// A part of one nominal diameter within these limits, over this length from the face.
    ///
    /// # Errors
    /// As [`Surface::new`].
    pub fn new(diameter: Diameter, limits: Limits, length: WorkLength) -> Result<Self, Error> {
        Surface::new(diameter, limits, length).map(Self::from)
    }

    /// A part of one nominal diameter within the limits of a class of a shaft, such as h8.
    ///
    /// # Errors
    /// As [`Surface::of_class`].
    pub fn of_class(
        diameter: Diameter,
        class: ToleranceClass,
        length: WorkLength,
    ) -> Result<Self, Error> {
        Surface::of_class(diameter, class, length).map(Self::from)
    }

    /// A part of several surfaces, from the face inwards.
    ///
    /// # Errors
    /// `surfaces`, when there is none, or when a diameter does not rise from the face inwards.
    pub fn of_surfaces(surfaces: Vec<Surface>) -> Result<Self, Error> {
        if surfaces.is_empty() {
            return Err(Error::new(
                ErrorKind::MissingField,
                "surfaces",
                "an empty list",
                "at least one surface",
                "name the surfaces from the face inwards: diameter, limits or class, length",
            ));
        }
        rising(&surfaces, "surfaces")?;
        Ok(Self {
            surfaces,
            listed: true,
            other_end: Vec::new(),
            overall_length: None,
            overall_limits: None,
        })
    }

    /// The field that says `what` of a surface of the first end, or of the other one.
    pub(crate) fn path_of(&self, other_end: bool, index: usize, what: &str) -> String {
        match other_end {
            false if !self.listed => format!("part.{what}"),
            false => format!("part.surfaces[{index}].{what}"),
            true => format!("part.other_end[{index}].{what}"),
        }
    }

    /// With surfaces at the other end, from its face inwards, and the length from face to face. An
    /// empty list faces the other end only.
    ///
    /// # Errors
    /// `other_end`, when a diameter does not rise from its face inwards; `overall_length`, when the
    /// surfaces of both ends are longer together.
    pub fn with_other_end(
        mut self,
        surfaces: Vec<Surface>,
        overall_length: WorkLength,
    ) -> Result<Self, Error> {
        rising(&surfaces, "other_end")?;
        let needed = length_of(&self.surfaces) + length_of(&surfaces);
        if round_size(needed) > round_size(overall_length.mm()) {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "overall_length",
                overall_length.to_string(),
                format!(
                    "at least the {} of the surfaces of both ends",
                    WorkLength::computed_trade(round_size(needed))
                ),
                "check the lengths: each surface's is its own, from shoulder to shoulder",
            ));
        }
        self.other_end = surfaces;
        self.overall_length = Some(overall_length);
        Ok(self)
    }

    /// With limits of the length from face to face; without, those of the general tolerances, class
    /// medium.
    ///
    /// # Errors
    /// `overall_limits`, when no such length was given or it does not lie within them.
    pub fn with_overall_limits(mut self, limits: LengthLimits) -> Result<Self, Error> {
        match self.overall_length {
            Some(length) if limits.contains(length) => {}
            Some(length) => {
                return Err(Error::new(
                    ErrorKind::Contradiction,
                    "overall_limits",
                    format!("{} to {}", limits.shortest(), limits.longest()),
                    format!("limits that hold the length {length}"),
                    "give the shortest and the longest length allowed",
                ));
            }
            None => {
                return Err(Error::new(
                    ErrorKind::MissingField,
                    "overall_length",
                    "limits without their length",
                    "the length from face to face",
                    "add \"overall_length\"",
                ));
            }
        }
        self.overall_limits = Some(limits);
        Ok(self)
    }

    /// The surfaces turned from the first face, from the face inwards; never empty.
    #[must_use]
    pub fn surfaces(&self) -> &[Surface] {
        &self.surfaces
    }

    /// The surfaces turned from the other face, from that face inwards.
    #[must_use]
    pub fn other_end(&self) -> &[Surface] {
        &self.other_end
    }

    /// The length from face to face, where the other end is worked too.
    #[must_use]
    pub fn overall_length(&self) -> Option<WorkLength> {
        self.overall_length
    }

    /// The limits of the length from face to face, if given.
    #[must_use]
    pub fn overall_limits(&self) -> Option<LengthLimits> {
        self.overall_limits
    }
}

fn length_of(surfaces: &[Surface]) -> f64 {
    surfaces.iter().map(|surface| surface.length().mm()).sum()
}

/// Each surface must end at a shoulder: the next one larger, even where both lie at their worst.
fn rising(surfaces: &[Surface], list: &str) -> Result<(), Error> {
    for (at, pair) in surfaces.windows(2).enumerate() {
        let outer = pair[0].limits().largest();
        let named = pair[1].diameter();
        let inner = match pair[1].small_diameter() {
            Some(small) => small,
            None => pair[1].limits().smallest(),
        };
        let steps = match pair[1].small_diameter() {
            Some(_) => round_size(inner.mm()) >= round_size(outer.mm()),
            None => round_size(inner.mm()) > round_size(outer.mm()),
        };
        if !steps {
            return Err(Error::new(
                ErrorKind::Contradiction,
                format!("{list}[{}].diameter", at + 1),
                match inner == named {
                    true => named.to_string(),
                    false => format!("{named}, at its smallest {inner}"),
                },
                format!(
                    "more than the {outer} of the surface before it, so that a shoulder stands between"
                ),
                "name the surfaces from the face inwards, the smallest first; what narrows again belongs to other_end",
            ));
        }
    }
    Ok(())
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Fields, Tree, list};
    use serde::ser::{Serialize, SerializeStruct, Serializer};

    impl Part {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "the part")?;
            let mut part = if f.has("surfaces") {
                let surfaces = f.need_item("surfaces", "the surfaces", |tree, path| {
                    list(tree, path, Surface::read)
                })?;
                Self::of_surfaces(surfaces).map_err(|error| error.inside(path))?
            } else {
                Self::from(Surface::take(&f, path)?)
            };
            let other_end = f.item("other_end", |tree, path| list(tree, path, Surface::read))?;
            // Asked for first, so that it is not taken for a slip of the length that it goes with.
            let limits = f.item("overall_limits", LengthLimits::read)?;
            let overall = f.quantity("overall_length")?;
            match (other_end, overall) {
                (other_end, Some(overall)) => {
                    part = part
                        .with_other_end(other_end.unwrap_or_default(), overall)
                        .map_err(|error| error.inside(path))?;
                }
                (Some(_), None) => {
                    return Err(f.missing("overall_length", "the length from face to face"));
                }
                (None, None) => {}
            }
            if let Some(limits) = limits {
                part = part
                    .with_overall_limits(limits)
                    .map_err(|error| error.inside(path))?;
            }
            f.finish()?;
            Ok(part)
        }
    }

    impl Serialize for Part {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let alone = match self.surfaces.as_slice() {
                [surface] if !self.listed => Some(surface),
                _ => None,
            };
            let fields = alone.map_or(1, Surface::fields)
                + usize::from(!self.other_end.is_empty())
                + usize::from(self.overall_length.is_some())
                + usize::from(self.overall_limits.is_some());
            let mut part = s.serialize_struct("Part", fields)?;
            match alone {
                Some(surface) => surface.write(&mut part)?,
                None => part.serialize_field("surfaces", &self.surfaces)?,
            }
            if !self.other_end.is_empty() {
                part.serialize_field("other_end", &self.other_end)?;
            }
            if let Some(overall) = &self.overall_length {
                part.serialize_field("overall_length", overall)?;
            }
            if let Some(limits) = &self.overall_limits {
                part.serialize_field("overall_limits", limits)?;
            }
            part.end()
        }
    }
}
