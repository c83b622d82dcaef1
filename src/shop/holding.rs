//! How the bar is held, and how stiff that is.

use crate::provenance::{Sourced, Standing};
use crate::quantity::{RotationalStiffness, SpindleSpeed, Stiffness};

const WORKSHOP_LATHE: &str =
    "common practice, no source: order of magnitude for a workshop lathe; measure your own";

/// Radial stiffness of spindle and chuck at the jaws, where none is given (range 20 to 60 kN/mm).
pub const CHUCK_STIFFNESS: Sourced<Stiffness> = Sourced::new(
    Stiffness::computed_trade(40.0),
    WORKSHOP_LATHE,
    Standing::CommonPractice,
);

/// Stiffness of the chuck against tilting, where none is given (range 50 to 300 kN m/rad).
pub const CHUCK_ROTATIONAL_STIFFNESS: Sourced<RotationalStiffness> = Sourced::new(
    RotationalStiffness::computed_trade(150.0),
    WORKSHOP_LATHE,
    Standing::CommonPractice,
);

/// Radial stiffness of tailstock and live centre, where none is given (range 10 to 25 kN/mm).
pub const CENTRE_STIFFNESS: Sourced<Stiffness> = Sourced::new(
    Stiffness::computed_trade(15.0),
    WORKSHOP_LATHE,
    Standing::CommonPractice,
);

/// The ways of holding that this library knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum HoldingKind {
    /// In the chuck, the other end free.
    Chuck,
    /// In the chuck, the other end on a live centre.
    ChuckAndCentre,
}

impl HoldingKind {
    /// The name in documents.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chuck => "chuck",
            Self::ChuckAndCentre => "chuck_and_centre",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Chuck => "chuck alone",
            Self::ChuckAndCentre => "chuck and live centre",
        }
    }
}

/// A way of holding with its stiffnesses, as far as they are known.
///
/// ```
/// use turnwright::{Holding, HoldingKind, Stiffness};
/// let held = Holding::new(HoldingKind::Chuck).with_stiffness(Stiffness::from_kn_per_mm(40.0)?);
/// assert_eq!(held.kind(), HoldingKind::Chuck);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Holding {
    kind: HoldingKind,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    stiffness: Option<Stiffness>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    rotational_stiffness: Option<RotationalStiffness>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    centre_stiffness: Option<Stiffness>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    centre_max_speed: Option<SpindleSpeed>,
}

impl Holding {
    /// A way of holding; stiffnesses are not known yet.
    #[must_use]
    pub fn new(kind: HoldingKind) -> Self {
        Self {
            kind,
            stiffness: None,
            rotational_stiffness: None,
            centre_stiffness: None,
            centre_max_speed: None,
        }
    }

    /// Which way.
    #[must_use]
    pub fn kind(&self) -> HoldingKind {
        self.kind
    }

    /// The same stiffnesses for another way of holding.
    #[must_use]
    pub(crate) fn of_kind(&self, kind: HoldingKind) -> Self {
        Self {
            kind,
            ..self.clone()
        }
    }

    crate::shop::setters_and_readers! {
        /// Radial stiffness of spindle and chuck, at the jaws.
        with_stiffness stiffness: Stiffness;
        /// Stiffness of the chuck against tilting.
        with_rotational_stiffness rotational_stiffness: RotationalStiffness;
        /// Radial stiffness of tailstock and centre.
        with_centre_stiffness centre_stiffness: Stiffness;
        /// The highest speed of the live centre.
        with_centre_max_speed centre_max_speed: SpindleSpeed;
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::error::Error;
    use crate::quantity::fields::{Fields, Tree, choice};

    fn kind(tree: &Tree, path: &str) -> Result<HoldingKind, Error> {
        #[derive(Clone, Copy)]
        enum Named {
            Offered(HoldingKind),
            BetweenCentres,
        }
        match choice(
            tree,
            path,
            &[
                ("chuck", Named::Offered(HoldingKind::Chuck)),
                (
                    "chuck_and_centre",
                    Named::Offered(HoldingKind::ChuckAndCentre),
                ),
                ("between_centres", Named::BetweenCentres),
            ],
        )? {
            Named::Offered(kind) => Ok(kind),
            Named::BetweenCentres => Err(Error::not_offered(
                path,
                "\"between_centres\"",
                "use \"chuck\" or \"chuck_and_centre\"",
            )),
        }
    }

    impl Holding {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if let Tree::Text(_) = tree {
                return Ok(Self::new(kind(tree, path)?));
            }
            let f = Fields::of(tree, path, "a holding, or its name,")?;
            let holding = Self {
                kind: f.need_item("kind", "\"chuck\" or \"chuck_and_centre\"", kind)?,
                stiffness: f.quantity("stiffness")?,
                rotational_stiffness: f.quantity("rotational_stiffness")?,
                centre_stiffness: f.quantity("centre_stiffness")?,
                centre_max_speed: f.quantity("centre_max_speed")?,
            };
            f.later(
                "steadies",
                "a steady",
                "this version knows the chuck alone and the chuck with a centre",
            )?;
            f.finish()?;
            Ok(holding)
        }
    }
}
