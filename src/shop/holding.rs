//! How the bar is held, and how stiff that is.

use crate::provenance::{Sourced, Standing};
use crate::quantity::{RotationalStiffness, SpindleSpeed, Stiffness, WorkLength};

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

/// Radial stiffness of a steady, where none is given.
pub const STEADY_STIFFNESS: Sourced<Stiffness> = Sourced::new(
    Stiffness::computed_trade(20.0),
    "estimate, no source: between a live centre and a chuck; measure your own",
    Standing::Estimate,
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
    /// On a centre at each end, driven by a dog.
    BetweenCentres,
}

impl HoldingKind {
    /// The name in documents.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Chuck => "chuck",
            Self::ChuckAndCentre => "chuck_and_centre",
            Self::BetweenCentres => "between_centres",
        }
    }

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Chuck => "chuck alone",
            Self::ChuckAndCentre => "chuck and live centre",
            Self::BetweenCentres => "between centres",
        }
    }
}

/// A steady rest: a support between the ends.
///
/// ```
/// use turnwright::shop::holding::Steady;
/// let steady = Steady::rigid("300 mm".parse()?).with_stiffness("25 N/um".parse()?);
/// assert_eq!(steady.at().mm(), 300.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Steady {
    at: WorkLength,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    stiffness: Option<Stiffness>,
}

impl Steady {
    /// A steady that does not give way, at a place measured from the chuck.
    #[must_use]
    pub const fn rigid(at: WorkLength) -> Self {
        Self {
            at,
            stiffness: None,
        }
    }

    /// The same steady with its stiffness.
    #[must_use]
    pub const fn with_stiffness(mut self, stiffness: Stiffness) -> Self {
        self.stiffness = Some(stiffness);
        self
    }

    /// Where it stands, from the chuck.
    #[must_use]
    pub fn at(&self) -> WorkLength {
        self.at
    }

    /// Its stiffness, if it gives way.
    #[must_use]
    pub fn stiffness(&self) -> Option<Stiffness> {
        self.stiffness
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
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Vec::is_empty"))]
    steadies: Vec<Steady>,
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
            steadies: Vec::new(),
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

    /// With steadies between the ends.
    #[must_use]
    pub fn with_steadies(mut self, steadies: Vec<Steady>) -> Self {
        self.steadies = steadies;
        self
    }

    /// The steadies between the ends.
    #[must_use]
    pub fn steadies(&self) -> &[Steady] {
        &self.steadies
    }

    crate::shop::setters_and_readers! {
        /// Radial stiffness of spindle and chuck, at the jaws; of the centre at the head, where the bar
        /// is held between centres.
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
    use crate::quantity::fields::{Fields, Tree, choice, list};

    fn kind(tree: &Tree, path: &str) -> Result<HoldingKind, Error> {
        let kinds = [
            HoldingKind::Chuck,
            HoldingKind::ChuckAndCentre,
            HoldingKind::BetweenCentres,
        ];
        choice(tree, path, &kinds.map(|kind| (kind.name(), kind)))
    }

    fn steady(tree: &Tree, path: &str) -> Result<Steady, Error> {
        let f = Fields::of(tree, path, "a steady")?;
        let steady = Steady {
            at: f.need_quantity("at")?,
            stiffness: f.quantity("stiffness")?,
        };
        f.finish()?;
        Ok(steady)
    }

    impl Holding {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if let Tree::Text(_) = tree {
                return Ok(Self::new(kind(tree, path)?));
            }
            let f = Fields::of(tree, path, "a holding, or its name,")?;
            let holding = Self {
                kind: f.need_item(
                    "kind",
                    "\"chuck\", \"chuck_and_centre\" or \"between_centres\"",
                    kind,
                )?,
                stiffness: f.quantity("stiffness")?,
                rotational_stiffness: f.quantity("rotational_stiffness")?,
                centre_stiffness: f.quantity("centre_stiffness")?,
                centre_max_speed: f.quantity("centre_max_speed")?,
                steadies: f
                    .item("steadies", |tree, path| list(tree, path, steady))?
                    .unwrap_or_default(),
            };
            f.finish()?;
            Ok(holding)
        }
    }
}
