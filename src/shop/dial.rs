//! The dial of a slide: what it counts, what one mark is worth, where it wraps.

use crate::error::{Error, ErrorKind};
use crate::quantity::dial::{Divisions, DivisionsPerTurn, Reading, Slide};
use crate::quantity::{Diameter, DiameterError, Division, Travel, round_size};

/// What the figures on a dial count.
///
/// The same turn of the same screw takes twice as much off the diameter as a radius dial says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum DialReads {
    /// The change of the work's diameter: twice the travel of the slide.
    Diameter,
    /// The change of the work's radius: the travel of the slide.
    Radius,
    /// The travel of a slide along the bed or of a compound slide.
    Travel,
}

/// Whether the graduated ring of a dial can be turned on its screw.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Ring {
    /// The ring is set to zero wherever one likes.
    Settable,
    /// The marks stand where the maker put them.
    Fixed,
    /// No ring but a digital readout of the slide itself, set to any number: a division is the least step
    /// of its display, in its own reading, and a turn that of the handle, in such steps.
    Readout,
}

/// The dial of a slide.
///
/// # Example
/// ```
/// use turnwright::{Dial, DialReads, Division, DivisionsPerTurn};
/// let cross = Dial::new(DialReads::Radius, Division::from_mm(0.02)?, DivisionsPerTurn::new(100)?);
/// assert_eq!(cross.diameter_per_division().to_string(), "0.04 mm");
/// assert_eq!(cross.travel_per_turn().to_string(), "2 mm");
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
pub struct Dial {
    reads: DialReads,
    division: Division,
    divisions_per_turn: DivisionsPerTurn,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    backlash: Option<Travel>,
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    ring: Option<Ring>,
}

impl Dial {
    /// A dial whose marks say `division` each, in its own reading, `divisions_per_turn` of them.
    #[must_use]
    pub fn new(reads: DialReads, division: Division, divisions_per_turn: DivisionsPerTurn) -> Self {
        Self {
            reads,
            division,
            divisions_per_turn,
            backlash: None,
            ring: None,
        }
    }

    /// With the travel that the screw turns through without moving the slide after a reversal.
    #[must_use]
    pub fn with_backlash(mut self, backlash: Travel) -> Self {
        self.backlash = Some(backlash);
        self
    }

    /// With a ring that can or cannot be set; settable unless said.
    #[must_use]
    pub fn with_ring(mut self, ring: Ring) -> Self {
        self.ring = Some(ring);
        self
    }

    /// The same dial where it counts otherwise than was thought.
    pub(crate) fn with_reads(mut self, reads: DialReads) -> Self {
        self.reads = reads;
        self
    }

    /// A slide set over so that it feeds a tenth of what its dial says: divisions a tenth as large.
    pub(crate) fn finer_by_ten(&self) -> Self {
        Self {
            division: Division::computed_trade(0.1 * self.division.mm()),
            ..self.clone()
        }
    }

    /// What the figures count.
    #[must_use]
    pub fn reads(&self) -> DialReads {
        self.reads
    }

    /// What one mark says, in the dial's own reading.
    #[must_use]
    pub fn division(&self) -> Division {
        self.division
    }

    /// Marks in one turn.
    #[must_use]
    pub fn divisions_per_turn(&self) -> DivisionsPerTurn {
        self.divisions_per_turn
    }

    /// Backlash, as slide travel, if it is known.
    #[must_use]
    pub fn backlash(&self) -> Option<Travel> {
        self.backlash
    }

    /// Whether the ring can be set.
    #[must_use]
    pub fn ring(&self) -> Ring {
        self.ring.unwrap_or(Ring::Settable)
    }

    /// Travel of the slide for one mark, in mm.
    pub(crate) fn travel_per_division(&self) -> f64 {
        match self.reads {
            DialReads::Diameter => self.division.mm() / 2.0,
            DialReads::Radius | DialReads::Travel => self.division.mm(),
        }
    }

    /// Travel of the slide in one turn of its handle.
    #[must_use]
    pub fn travel_per_turn(&self) -> Travel {
        Travel::computed_trade(round_size(
            self.travel_per_division() * f64::from(self.divisions_per_turn.count()),
        ))
    }

    /// By how much one mark changes the diameter, whatever the dial counts.
    ///
    /// # Source
    /// Geometry: twice the travel of a slide square to the axis.
    #[must_use]
    pub fn diameter_per_division(&self) -> DiameterError {
        DiameterError::computed_trade(2.0 * self.travel_per_division())
    }

    /// The diameter at a mark of a cross slide whose dial is zero at `zero_at`.
    ///
    /// d = zero_at - divisions x diameter per division, rounded to 1e-9 mm
    ///
    /// # Errors
    /// `divisions`, when no metal would be left.
    ///
    /// # Example
    /// ```
    /// use turnwright::{Dial, DialReads, Diameter, Division, Divisions, DivisionsPerTurn};
    /// let cross = Dial::new(DialReads::Diameter, Division::from_inch(0.002)?, DivisionsPerTurn::new(100)?);
    /// let d = cross.diameter_at(Diameter::from_inch(1.375)?, Divisions::new(93)?)?;
    /// assert_eq!(d.inch(), 1.189);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn diameter_at(&self, zero_at: Diameter, divisions: Divisions) -> Result<Diameter, Error> {
        use crate::quantity::Quantity;
        let d = zero_at.mm() - divisions.count() as f64 * self.diameter_per_division().mm();
        Diameter::from_trade(round_size(d)).map_err(|_| {
            Error::new(
                ErrorKind::Contradiction,
                "divisions",
                divisions.to_string(),
                match round_size(d) > 0.0 {
                    true => format!(
                        "so few that at least {} mm of diameter are left of a bar of {zero_at}",
                        Diameter::ROW.least()
                    ),
                    false => format!("fewer than reach the middle of a bar of {zero_at}"),
                },
                "check what the dial counts, its division and the turns",
            )
        })
    }

    /// How many divisions, as a fraction, lead from `zero_at` to `target`; whole when within
    /// 1e-9 mm of a mark.
    pub(crate) fn divisions_between(&self, zero_at: Diameter, target: Diameter) -> f64 {
        let per_division = self.diameter_per_division().mm();
        let fraction = (zero_at.mm() - target.mm()) / per_division;
        let whole = fraction.round();
        if round_size((fraction - whole).abs() * per_division) == 0.0 {
            whole
        } else {
            fraction
        }
    }

    /// The travel of `divisions` marks along the slide, in mm to 1e-9 mm.
    pub(crate) fn travel_at(&self, divisions: Divisions) -> f64 {
        round_size(divisions.count() as f64 * self.travel_per_division())
    }

    /// How many divisions, as a fraction, a travel is; whole when within 1e-9 mm of a mark.
    pub(crate) fn divisions_of_travel(&self, mm: f64) -> f64 {
        let fraction = mm / self.travel_per_division();
        let whole = fraction.round();
        if round_size((fraction - whole).abs() * self.travel_per_division()) == 0.0 {
            whole
        } else {
            fraction
        }
    }

    /// What this dial reads at `divisions` from its zero.
    #[must_use]
    pub fn reading(&self, slide: Slide, divisions: Divisions) -> Reading {
        let reading = Reading::at(slide, divisions, self.divisions_per_turn, self.division);
        match self.ring() {
            Ring::Readout => reading.shown_in_full(self.division),
            Ring::Settable | Ring::Fixed => reading,
        }
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use crate::quantity::fields::{Fields, Tree};

    impl Dial {
        pub(crate) fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            let f = Fields::of(tree, path, "a dial")?;
            let reads = f
                .choice(
                    "reads",
                    &[
                        ("diameter", DialReads::Diameter),
                        ("radius", DialReads::Radius),
                        ("travel", DialReads::Travel),
                    ],
                )?
                .ok_or_else(|| {
                    f.missing(
                        "reads",
                        "what the dial counts: \"diameter\", \"radius\" or \"travel\"",
                    )
                })?;
            let division = f.need_quantity("division")?;
            let (marks, remedy) = (DivisionsPerTurn::RANGE, DivisionsPerTurn::REMEDY);
            let per_turn = f.count_in("divisions_per_turn", marks, remedy)?;
            let per_turn = per_turn.ok_or_else(|| {
                f.missing("divisions_per_turn", "how many marks stand round the dial")
            })?;
            let dial = Self {
                reads,
                division,
                divisions_per_turn: DivisionsPerTurn::new(per_turn)
                    .map_err(|error| error.at(&f.path("divisions_per_turn")))?,
                backlash: f.quantity("backlash")?,
                ring: f.choice(
                    "ring",
                    &[
                        ("settable", Ring::Settable),
                        ("fixed", Ring::Fixed),
                        ("readout", Ring::Readout),
                    ],
                )?,
            };
            f.finish()?;
            Ok(dial)
        }
    }
}
