//! What a measured size says went wrong: which cause explains it best.

use std::fmt;

use crate::physics::bar::Support;
use crate::physics::evidence::{Explanation, likely_size, log_likelihood, shares};
use crate::physics::heat::diameter_growth;
use crate::physics::measured_taper::tailstock_error;
use crate::provenance::{Provenance, Recorded, Sourced, Standing};
use crate::quantity::unit::Units;
use crate::quantity::{
    Diameter, DiameterError, Overhang, Probability, Quantity, SetOver, StandardUncertainty,
    TemperatureRise, ThermalExpansion, WorkLength, round_size,
};
use crate::shop::dial::{Dial, DialReads, Ring};

/// What can make a size another one than the dial says.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
#[non_exhaustive]
pub enum Cause {
    /// Nothing: within what was to be expected.
    AsExpected,
    /// The zero of the dial is off.
    ZeroOff,
    /// The dial counts the radius where the diameter was thought, or the reverse.
    DialCountsOtherwise,
    /// A turn of the dial too few or too many.
    MissedTurn,
    /// Metal left because the slide was not brought in from outside.
    Backlash,
    /// The bar sprang away from the tool.
    Deflection,
    /// The part was warm when it was measured.
    WarmPart,
    /// The edge is worn or set back.
    WornTool,
    /// The tailstock stands off the axis.
    TailstockOff,
    /// Headstock or bed out of line.
    HeadstockOrBed,
}

impl Cause {
    /// True of what leaves another size at another place along the bar.
    pub(crate) fn differs_along(self) -> bool {
        matches!(
            self,
            Self::Deflection | Self::TailstockOff | Self::HeadstockOrBed
        )
    }

    /// True of what can make a part large only.
    pub(crate) fn leaves_metal(self) -> bool {
        matches!(
            self,
            Self::Backlash | Self::Deflection | Self::WarmPart | Self::WornTool
        )
    }
}

/// A cause, how well it fits beside the others, and what it would mean.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct CauseFit {
    /// The cause.
    pub cause: Cause,
    /// Its share of what all causes together explain: one would be certainty.
    pub fit: Probability,
    /// How large it would be, in words, and what to do about it.
    pub text: String,
}

/// What the measurement says.
#[derive(Debug, Clone, PartialEq)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[non_exhaustive]
pub struct Diagnosis {
    /// The mean of the measured sizes.
    pub mean: Diameter,
    /// The mean less the size expected; positive where metal was left.
    pub difference: DiameterError,
    /// The causes, the best fit first.
    pub causes: Vec<CauseFit>,
    /// By how much to move the tailstock, towards the tool where positive, where that fits best.
    #[cfg_attr(feature = "serde", serde(skip_serializing_if = "Option::is_none"))]
    pub tailstock_correction: Option<SetOver>,
}

/// A measured size, and from the chuck outwards where.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SizeAt {
    at: Option<WorkLength>,
    size: Diameter,
}

impl SizeAt {
    /// A size measured anywhere.
    ///
    /// ```
    /// use turnwright::advice::diagnosis::SizeAt;
    /// let one = SizeAt::anywhere("30.06 mm".parse()?);
    /// let inch = SizeAt::new("2 in".parse()?, "1.1885 in".parse()?);
    /// assert!(one.at().is_none() && inch.at().is_some());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn anywhere(size: Diameter) -> Self {
        Self { at: None, size }
    }

    /// A size measured at this distance from the chuck.
    #[must_use]
    pub fn new(at: WorkLength, size: Diameter) -> Self {
        Self { at: Some(at), size }
    }

    /// Where, from the chuck.
    #[must_use]
    pub fn at(self) -> Option<WorkLength> {
        self.at
    }

    /// The size.
    #[must_use]
    pub fn size(self) -> Diameter {
        self.size
    }
}

#[cfg(feature = "serde")]
mod serial {
    use super::*;
    use serde::ser::{Serialize, SerializeStruct, Serializer};

    impl Serialize for SizeAt {
        fn serialize<S: Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
            let Some(at) = self.at else {
                return self.size.serialize(s);
            };
            let mut fields = s.serialize_struct("SizeAt", 2)?;
            fields.serialize_field("from_chuck", &at)?;
            fields.serialize_field("diameter", &self.size)?;
            fields.end()
        }
    }

    #[cfg(feature = "json")]
    use crate::error::Error;
    #[cfg(feature = "json")]
    use crate::quantity::fields::{Fields, Tree};

    #[cfg(feature = "json")]
    impl SizeAt {
        /// One size, or a list of sizes, each plain or with its place.
        pub(crate) fn read_all(tree: &Tree, path: &str) -> Result<Vec<Self>, Error> {
            match tree {
                Tree::List(_) => crate::quantity::fields::list(tree, path, Self::read),
                one => Ok(vec![Self::read(one, path)?]),
            }
        }

        fn read(tree: &Tree, path: &str) -> Result<Self, Error> {
            if !matches!(tree, Tree::Group(_)) {
                return crate::quantity::fields::quantity(tree, path).map(Self::anywhere);
            }
            let f = Fields::of(tree, path, "a measured size")?;
            let one = Self {
                at: f.quantity("from_chuck")?,
                size: f.need_quantity("diameter")?,
            };
            f.finish()?;
            Ok(one)
        }
    }
}

/// How often each cause is behind a size that is off, in parts: what is common is looked for first.
const ODDS: Sourced<Odds> = Sourced::new(
    Odds([
        (Cause::AsExpected, 20.0),
        (Cause::ZeroOff, 3.0),
        (Cause::DialCountsOtherwise, 2.0),
        (Cause::MissedTurn, 2.0),
        (Cause::Backlash, 1.0),
        (Cause::Deflection, 2.0),
        (Cause::WarmPart, 1.0),
        (Cause::WornTool, 1.0),
        (Cause::TailstockOff, 2.0),
        (Cause::HeadstockOrBed, 0.5),
    ]),
    "judgement, no source",
    Standing::Estimate,
);

#[derive(Debug, Clone, Copy)]
struct Odds([(Cause, f64); 10]);

impl Recorded for Odds {}

impl Odds {
    fn of(&self, cause: Cause) -> f64 {
        let of = self.0.iter().find(|(named, _)| *named == cause);
        of.map_or(1.0, |(_, odds)| *odds)
    }
}

impl fmt::Display for Odds {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("as expected 20, zero 3, dial, turn, spring and tailstock 2 each, others 1, headstock 0.5")
    }
}

/// How far a zero is off that was knocked or touched badly, as a standard deviation on the diameter.
const ZERO_SCATTER: Sourced<StandardUncertainty> = Sourced::new(
    StandardUncertainty::computed_trade(0.15),
    "judgement, no source",
    Standing::Estimate,
);

/// Backlash of a cross slide where it is not known, slide travel in mm.
const USUAL_BACKLASH: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.1),
    "common practice, no source: 0.05 to 0.2 mm of travel",
    Standing::CommonPractice,
);

/// How warm a part is that was measured straight after a cut.
const WARM: Sourced<TemperatureRise> = Sourced::new(
    TemperatureRise::computed_trade(10.0),
    "judgement, no source",
    Standing::Estimate,
);

/// What an edge that wears leaves on the diameter.
const WEAR: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.02),
    "judgement, no source: a flank worn by about 0.1 mm at a clearance of 6 deg sets the edge back by 0.01 mm",
    Standing::Estimate,
);

/// How far a tailstock stands off that nobody aligned, as a standard deviation.
const TAILSTOCK_SCATTER: Sourced<SetOver> = Sourced::new(
    SetOver::computed_trade(0.05),
    "judgement, no source",
    Standing::Estimate,
);

/// Taper of a headstock or bed out of line, on the diameter over 100 mm, as a standard deviation.
const HEADSTOCK_SCATTER: Sourced<DiameterError> = Sourced::new(
    DiameterError::computed_trade(0.03),
    "common practice, no source: lathes are tested to about 0.02 mm over 300 mm",
    Standing::CommonPractice,
);

/// Scatter of a spring over what is reckoned, as a standard deviation: force and chuck together.
const SPRING_SCATTER: Sourced<f64> = Sourced::new(0.5, "judgement, no source", Standing::Estimate);

/// Asks what a measured size says.
///
/// Each cause has a shape along the bar (the same everywhere; the spring of the bar; a straight
/// line) and a usual size; how likely the measured differences are under each, its size integrated
/// out, times how common it is, gives its share.
///
/// # Units
/// The types carry them; places are measured from the chuck.
/// # Source
/// Bayes' rule; the sizes and odds of the causes are judgement.
/// # Example
/// Two invented measurements, one metric and one inch.
/// ```
/// use turnwright::advice::diagnosis::{Cause, DiagnosisAsk, SizeAt};
/// use turnwright::{Dial, DialReads, Diameter, Division, DivisionsPerTurn, Provenance, Units};
/// let dial = Dial::new(DialReads::Diameter, Division::from_mm(0.02)?, DivisionsPerTurn::new(200)?);
/// let sizes = ["30.66 mm", "30.66 mm", "30.65 mm"].map(str::parse::<Diameter>);
/// let sizes = sizes.into_iter().map(|size| size.map(SizeAt::anywhere)).collect::<Result<Vec<_>, _>>()?;
/// let found = DiagnosisAsk::new("30.6 mm".parse()?, "34 mm".parse()?, &sizes, &dial, "0.012 mm".parse()?, "0.002 mm".parse()?)
///     .answer(Units::Metric, &mut Provenance::default());
/// assert_eq!(found.causes[0].cause, Cause::ZeroOff);
///
/// let dial = Dial::new(DialReads::Radius, Division::from_inch(0.001)?, DivisionsPerTurn::new(100)?);
/// let half = [SizeAt::anywhere("1.275 in".parse()?)];
/// let found = DiagnosisAsk::new("1.175 in".parse()?, "1.375 in".parse()?, &half, &dial, "0.0005 in".parse()?, "0.0001 in".parse()?)
///     .answer(Units::Inch, &mut Provenance::default());
/// assert_eq!(found.causes[0].cause, Cause::DialCountsOtherwise);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct DiagnosisAsk<'a> {
    expected: Diameter,
    zeroed_on: Diameter,
    measured: &'a [SizeAt],
    dial: &'a Dial,
    sure: StandardUncertainty,
    measuring: StandardUncertainty,
    expansion: Option<ThermalExpansion>,
    spring: Option<(DiameterError, &'a [f64])>,
    spring_expected: DiameterError,
    held: Option<(Support, Overhang)>,
    dial_is_proved: bool,
    missed: &'a [Diameter],
    with_care: bool,
}

/// True of a shape that is not the same everywhere.
fn vary(shape: &[f64]) -> bool {
    shape.windows(2).any(|two| two[0] != two[1])
}

/// What a dial counts really that took half or twice as much off as it was thought to.
///
/// One thought to count the diameter that takes twice as much off counts the radius; one thought to count the
/// radius, and half as much, the diameter. The other way round no dial does it.
pub(crate) fn reads_instead(dial: &Dial, off: DiameterError) -> Option<DialReads> {
    match (dial.reads(), off.mm() < 0.0) {
        (DialReads::Diameter, true) => Some(DialReads::Radius),
        (DialReads::Radius, false) => Some(DialReads::Diameter),
        _ => None,
    }
}

/// A cause with what it would do.
struct Candidate {
    cause: Cause,
    /// Its part of the odds of its cause.
    part: f64,
    explanation: Explanation,
}

impl<'a> DiagnosisAsk<'a> {
    /// The size expected, the diameter on which the dial was zeroed, the sizes measured, the dial, how
    /// sure the expected size was, and how sure a measured one is.
    #[must_use]
    pub fn new(
        expected: Diameter,
        zeroed_on: Diameter,
        measured: &'a [SizeAt],
        dial: &'a Dial,
        sure: StandardUncertainty,
        measuring: StandardUncertainty,
    ) -> Self {
        Self {
            expected,
            zeroed_on,
            measured,
            dial,
            sure,
            measuring,
            expansion: None,
            spring: None,
            spring_expected: DiameterError::computed_trade(0.0),
            held: None,
            dial_is_proved: false,
            missed: &[],
            with_care: false,
        }
    }

    crate::shop::setters! {
        /// With the expansion of the material, for a warm part.
        with_expansion expansion: ThermalExpansion;
    }

    /// With the largest spring of the last cut on the diameter, and its shares where the sizes were
    /// measured, in their order; a list of another length is left out.
    #[must_use]
    pub fn with_spring(mut self, most: DiameterError, shares: &'a [f64]) -> Self {
        self.spring = (shares.len() == self.measured.len()).then_some((most, shares));
        self
    }

    /// With this spring already in the size expected.
    #[must_use]
    pub fn with_spring_expected(mut self, spring: DiameterError) -> Self {
        self.spring_expected = spring;
        self
    }

    /// With how the bar is held, for a tailstock or a headstock out of line.
    #[must_use]
    pub fn with_holding(mut self, support: Support, overhang: Overhang) -> Self {
        self.held = Some((support, overhang));
        self
    }

    /// With a dial that was seen before to take off what it says: it does not begin to count otherwise.
    #[must_use]
    pub fn with_proved_dial(mut self) -> Self {
        self.dial_is_proved = true;
        self
    }

    /// With the sizes that would be left had the last cut, the last two cuts, and so on, taken nothing:
    /// a handle a turn short, or a slide short by its backlash, leaves no more metal than there was.
    #[must_use]
    pub fn with_missed(mut self, missed: &'a [Diameter]) -> Self {
        self.missed = missed;
        self
    }

    /// With a cut that was come in to with care, its turns counted: neither backlash nor a turn too few is
    /// looked for.
    #[must_use]
    pub fn with_care(mut self) -> Self {
        self.with_care = true;
        self
    }

    /// The causes, the best fit first.
    #[must_use]
    pub fn answer(&self, units: Units, provenance: &mut Provenance) -> Diagnosis {
        let off: Vec<DiameterError> = self
            .measured
            .iter()
            .map(|m| DiameterError::computed_trade(round_size(m.size.mm() - self.expected.mm())))
            .collect();
        let n = off.len().max(1) as f64;
        let mean = off.iter().map(|d| d.mm()).sum::<f64>() / n;
        let odds = provenance.open("odds of the causes", &ODDS);
        let candidates = self.candidates(&odds, provenance);
        let weights: Vec<(f64, f64)> = candidates
            .iter()
            .map(|c| {
                let odds = c.part * odds.of(c.cause);
                (odds, log_likelihood(&off, &c.explanation, self.measuring))
            })
            .collect();
        let shares = shares(&weights);
        let mut causes: Vec<CauseFit> = Vec::new();
        let mut best: Vec<f64> = Vec::new();
        for (candidate, share) in candidates.iter().zip(&shares) {
            let fit = *share;
            let size = likely_size(&off, &candidate.explanation, self.measuring);
            let text = self.words(candidate.cause, size, units);
            match causes.iter().position(|c| c.cause == candidate.cause) {
                Some(at) => {
                    let sum = causes[at].fit.trade() + fit;
                    causes[at].fit = Probability::computed_trade(sum);
                    if fit > best[at] {
                        (best[at], causes[at].text) = (fit, text);
                    }
                }
                None => {
                    causes.push(CauseFit {
                        cause: candidate.cause,
                        fit: Probability::computed_trade(fit),
                        text,
                    });
                    best.push(fit);
                }
            }
        }
        causes.sort_by(|a, b| b.fit.trade().total_cmp(&a.fit.trade()));
        let tailstock_correction = causes
            .first()
            .filter(|c| c.cause == Cause::TailstockOff)
            .and_then(|_| {
                let of = candidates.iter().find(|c| c.cause == Cause::TailstockOff)?;
                let size = likely_size(&off, &of.explanation, self.measuring);
                // The error at the tail is -2 s: what makes the tail large is put right towards the tool.
                Some(SetOver::computed_trade(round_size(0.5 * size.mm())))
            });
        Diagnosis {
            mean: Diameter::computed_trade(round_size(self.expected.mm() + mean)),
            difference: DiameterError::computed_trade(round_size(mean)),
            causes,
            tailstock_correction,
        }
    }

    fn candidates(&self, odds: &Odds, provenance: &mut Provenance) -> Vec<Candidate> {
        let n = self.measured.len();
        let sure = self.sure.mm();
        let taken = self.zeroed_on.mm() - self.expected.mm();
        let per_turn = self.per_turn();
        let mut found: Vec<Candidate> = Vec::new();
        let mut add =
            |cause, part, shape: Vec<f64>, usual: f64, scatter: f64, beside: Option<f64>| {
                found.push(Candidate {
                    cause,
                    part,
                    explanation: Explanation {
                        shape,
                        usual: DiameterError::computed_trade(usual),
                        scatter: StandardUncertainty::computed_trade(scatter),
                        level: beside.map(StandardUncertainty::computed_trade),
                    },
                });
            };
        let level = || vec![1.0; n];
        // Whatever the cause, the size scatters as it always does.
        let with = |scatter: f64| scatter.hypot(sure);
        add(Cause::AsExpected, 1.0, level(), 0.0, sure, None);
        let zero = provenance.open("scatter of a zero that was knocked", &ZERO_SCATTER);
        add(Cause::ZeroOff, 1.0, level(), 0.0, with(zero.mm()), None);
        // What differs from place to place says nothing of the zero: that is right, or off as well, as often as
        // without it.
        let (on, off) = (odds.of(Cause::AsExpected), odds.of(Cause::ZeroOff));
        let beside = [(on / (on + off), sure), (off / (on + off), with(zero.mm()))];
        if taken > 0.0 && !self.dial_is_proved {
            // What was read wrongly is read exactly: twice as much was taken, or half.
            add(Cause::DialCountsOtherwise, 0.5, level(), -taken, sure, None);
            add(
                Cause::DialCountsOtherwise,
                0.5,
                level(),
                0.5 * taken,
                sure,
                None,
            );
        }
        let lefts: Vec<f64> = self
            .missed
            .iter()
            .map(|size| size.mm() - self.expected.mm())
            .collect();
        let readout = self.dial.ring() == Ring::Readout;
        // A readout counts no turns, and its scale stands on the slide.
        let turns: &[(f64, f64)] = match readout {
            true => &[],
            false => &[(1.0, 0.35), (2.0, 0.15)],
        };
        for &(turns, part) in turns {
            add(
                Cause::MissedTurn,
                part,
                level(),
                -turns * per_turn,
                sure,
                None,
            );
            if self.with_care {
                continue;
            }
            // So many turns short, as far as there was metal: which cuts took nothing is not known.
            let of = if self.missed.is_empty() {
                &[f64::INFINITY]
            } else {
                lefts.as_slice()
            };
            for left in of {
                let part = part / of.len() as f64;
                add(
                    Cause::MissedTurn,
                    part,
                    level(),
                    left.min(turns * per_turn),
                    sure,
                    None,
                );
            }
        }
        if !self.with_care && !readout {
            let backlash = match self.dial.backlash() {
                Some(backlash) => backlash.mm(),
                None => provenance
                    .open("backlash of a cross slide", &USUAL_BACKLASH)
                    .mm(),
            };
            // Anything from nothing to the whole backlash, twice on the diameter, and no more than there
            // was: its mean and deviation.
            let metal = lefts.first().map_or(f64::INFINITY, |left| left.max(0.0));
            let most = (2.0 * backlash).min(metal);
            let uniform = most / 12.0_f64.sqrt();
            add(
                Cause::Backlash,
                1.0,
                level(),
                0.5 * most,
                with(uniform),
                None,
            );
        }
        if let Some((most, shares)) = self.spring {
            let usual = most.mm();
            let scatter =
                provenance.open("scatter of a spring over what is reckoned", &SPRING_SCATTER);
            let (usual, scatter) = (usual - self.spring_expected.mm(), scatter * usual);
            if vary(shares) {
                for (part, beside) in beside {
                    add(
                        Cause::Deflection,
                        part,
                        shares.to_vec(),
                        usual,
                        scatter,
                        Some(beside),
                    );
                }
            } else {
                add(
                    Cause::Deflection,
                    1.0,
                    shares.to_vec(),
                    usual,
                    with(scatter),
                    None,
                );
            }
        }
        if let Some(expansion) = self.expansion {
            let rise = provenance.open("warmth of a part measured straight after a cut", &WARM);
            let grown = diameter_growth(self.expected, expansion, rise);
            add(
                Cause::WarmPart,
                1.0,
                level(),
                grown.mm(),
                with(0.5 * grown.mm()),
                None,
            );
        }
        let wear = provenance.open("what a worn edge leaves on the diameter", &WEAR);
        add(
            Cause::WornTool,
            1.0,
            level(),
            wear.mm(),
            with(0.5 * wear.mm()),
            None,
        );
        let places: Option<Vec<WorkLength>> = self.measured.iter().map(|m| m.at).collect();
        if let (Some((support, overhang)), Some(places)) = (self.held, places)
            && places.windows(2).any(|two| two[0] != two[1])
        {
            let (cause, shape, scatter) = if support == Support::Chuck {
                let scatter = provenance.open("taper of a lathe out of line", &HEADSTOCK_SCATTER);
                let shape: Vec<f64> = places.iter().map(|at| at.mm() / 100.0).collect();
                (Cause::HeadstockOrBed, shape, scatter.mm())
            } else {
                let off =
                    provenance.open("set-over of a tailstock nobody aligned", &TAILSTOCK_SCATTER);
                let shape: Vec<f64> = places
                    .iter()
                    .map(|at| {
                        // In parts of the error at the tail.
                        let at_tail = -2.0 * off.mm();
                        tailstock_error(support, off, *at, overhang)
                            .map_or(0.0, |error| error.mm() / at_tail)
                    })
                    .collect();
                (Cause::TailstockOff, shape, 2.0 * off.mm())
            };
            for (part, beside) in beside {
                add(cause, part, shape.clone(), 0.0, scatter, Some(beside));
            }
        }
        found
    }

    fn dial_words(&self, size: DiameterError) -> String {
        let taken = if size.mm() < 0.0 {
            "twice as much"
        } else {
            "half as much"
        };
        let (thought, other) = match self.dial.reads() {
            DialReads::Diameter => ("diameter", "radius"),
            _ => ("radius", "diameter"),
        };
        let (dial, read, one) = match self.dial.ring() {
            Ring::Readout => ("readout", "its numbers", "step of it"),
            _ => ("dial", "the marks", "mark"),
        };
        match reads_instead(self.dial, size) {
            Some(_) => format!(
                "{taken} was taken off: the {dial} counts the {other} where the {thought} was thought; prove it with an \
                 indicator before anything more is cut"
            ),
            None => format!(
                "{taken} was taken off, as if {read} had been read as those of a {dial} that counts the {other}, which does \
                 not make it one; prove with an indicator what one {one} takes, and see again to which {one} it came, before \
                 anything more is cut"
            ),
        }
    }

    fn words(&self, cause: Cause, size: DiameterError, units: Units) -> String {
        let signed = DiameterError::computed_trade(round_size((size.mm() * 1e4).round() / 1e4));
        let by = DiameterError::computed_trade(signed.mm().abs()).people(units);
        match cause {
            Cause::AsExpected => String::from("within what was to be expected: go on"),
            Cause::ZeroOff => format!(
                "the zero is off by {} on the diameter: every size is off alike; what is read from here on is moved by it",
                signed.people(units)
            ),
            Cause::DialCountsOtherwise => self.dial_words(size),
            Cause::MissedTurn if size.mm() > 0.0 && size.mm() < 0.99 * self.per_turn() => format!(
                "a cut took nothing, {by} of metal left: the dial stood a turn short, or at another mark; count the turns \
                 again from where the tool touches"
            ),
            Cause::MissedTurn => format!(
                "{} of the dial {}: the size is off by {by}; count the turns again from where the tool touches",
                if size.mm().abs() > 1.5 * self.per_turn() {
                    "two turns"
                } else {
                    "one turn"
                },
                if size.mm() > 0.0 {
                    "too few"
                } else {
                    "too many"
                },
            ),
            Cause::Backlash => format!(
                "{by} of metal left, within the backlash: the mark was not come in to from outside; back off by more than the \
                 backlash, come in again, and repeat the cut"
            ),
            Cause::Deflection => format!(
                "the bar springs away by {by} on the diameter where it gives most: cut again at the same mark, lighter, or \
                 bring up a centre"
            ),
            Cause::WarmPart => format!(
                "a warm part measures {by} large: let it cool to 20 degC and measure again before anything is cut"
            ),
            Cause::WornTool => format!(
                "the edge is worn or set back, {by} of metal left: look at it with a glass, hone or change it, and touch off anew"
            ),
            Cause::TailstockOff => format!(
                "straight taper, {by} {} at the tail: the tailstock stands off the axis; move it by half of that {} the tool, \
                 and prove it by a fresh light cut",
                if size.mm() > 0.0 { "large" } else { "small" },
                if size.mm() > 0.0 {
                    "towards"
                } else {
                    "away from"
                },
            ),
            Cause::HeadstockOrBed => format!(
                "straight taper of {} over 100 mm with the chuck alone: headstock or bed out of line, not the bar; have the \
                 lathe levelled and its headstock checked",
                signed.people(units)
            ),
        }
    }

    fn per_turn(&self) -> f64 {
        self.dial.diameter_per_division().mm() * f64::from(self.dial.divisions_per_turn().count())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::dial::DivisionsPerTurn;
    use crate::quantity::{Division, Travel};

    fn dial() -> Dial {
        Dial::new(
            DialReads::Radius,
            Division::from_mm(0.02).unwrap(),
            DivisionsPerTurn::new(100).unwrap(),
        )
        .with_backlash(Travel::from_mm(0.1).unwrap())
    }

    /// Sizes at places from the chuck, both in mm.
    fn placed(sizes: &[(f64, f64)]) -> Vec<SizeAt> {
        let at = |(at, size): &(f64, f64)| {
            SizeAt::new(
                WorkLength::from_mm(*at).unwrap(),
                Diameter::from_mm(*size).unwrap(),
            )
        };
        sizes.iter().map(at).collect()
    }

    /// What is told first, of sizes at places from the chuck, where 30.4 mm was expected from 34 mm.
    fn first(sizes: &[(f64, f64)], support: Support) -> Diagnosis {
        let measured = placed(sizes);
        let cubed: Vec<f64> = sizes.iter().map(|(at, _)| (at / 150.0).powi(3)).collect();
        DiagnosisAsk::new(
            Diameter::from_mm(30.4).unwrap(),
            Diameter::from_mm(34.0).unwrap(),
            &measured,
            &dial(),
            StandardUncertainty::from_mm(0.006).unwrap(),
            StandardUncertainty::from_mm(0.002).unwrap(),
        )
        .with_spring(DiameterError::from_mm(0.03).unwrap(), &cubed)
        .with_expansion(ThermalExpansion::from_um_per_m_k(11.7).unwrap())
        .with_holding(support, Overhang::from_mm(150.0).unwrap())
        .answer(Units::Metric, &mut Provenance::default())
    }

    #[test]
    fn each_cause_is_told_by_its_own_mark() {
        let level = |size: f64| [(50.0, size), (90.0, size), (140.0, size)];
        let cases = [
            (Cause::AsExpected, level(30.405)),
            (Cause::ZeroOff, level(30.13)),
            // 3.6 mm were to be taken: half of it left 32.2, twice as much 26.8.
            (Cause::DialCountsOtherwise, level(32.203)),
            (Cause::DialCountsOtherwise, level(26.798)),
            // A turn takes 4 mm.
            (Cause::MissedTurn, level(34.404)),
            (Cause::MissedTurn, level(26.397)),
            // The spring of the chuck alone rises with the cube of the distance here.
            (
                Cause::Deflection,
                [(50.0, 30.401), (90.0, 30.407), (140.0, 30.425)],
            ),
            (
                Cause::HeadstockOrBed,
                [(50.0, 30.425), (90.0, 30.445), (140.0, 30.47)],
            ),
        ];
        for (cause, sizes) in cases {
            let found = first(&sizes, Support::Chuck);
            assert_eq!(found.causes[0].cause, cause, "{sizes:?} {found:?}");
        }
    }

    #[test]
    fn a_dial_that_counts_otherwise_is_told_the_right_way_round() {
        // 4 mm on the diameter were to be taken from 34. A mark of a dial of radius takes twice its figure off
        // the diameter, one of a dial of diameter its figure: common sense, no source.
        let told = |reads: DialReads, found: f64| {
            let dial = Dial::new(
                reads,
                Division::from_mm(0.02).unwrap(),
                DivisionsPerTurn::new(400).unwrap(),
            );
            let measured = [SizeAt::anywhere(Diameter::from_mm(found).unwrap())];
            let sure = StandardUncertainty::from_mm(0.005).unwrap();
            let ask = DiagnosisAsk::new(
                Diameter::from_mm(30.0).unwrap(),
                Diameter::from_mm(34.0).unwrap(),
                &measured,
                &dial,
                sure,
                sure,
            );
            let first = ask
                .answer(Units::Metric, &mut Provenance::default())
                .causes
                .remove(0);
            assert_eq!(first.cause, Cause::DialCountsOtherwise);
            first.text
        };
        let (half, twice) = (32.0, 26.0);
        assert!(
            told(DialReads::Radius, half)
                .contains("counts the diameter where the radius was thought")
        );
        assert!(
            told(DialReads::Diameter, twice)
                .contains("counts the radius where the diameter was thought")
        );
        for (reads, found, other) in [
            (DialReads::Radius, twice, "diameter"),
            (DialReads::Diameter, half, "radius"),
        ] {
            let text = told(reads, found);
            assert!(
                text.contains(&format!("those of a dial that counts the {other}"))
                    && !text.contains("was thought"),
                "{text}"
            );
        }
    }

    #[test]
    fn a_straight_taper_between_centres_is_the_tailstock() {
        // 0.036 mm on the diameter over 140 mm, 210 mm between the centres: move it by 0.027 mm
        // towards the tool; derived by hand, the same as the correction of a measured taper.
        let sizes = [(30.0, 30.4), (170.0, 30.436)];
        let measured = sizes.map(|(at, size)| {
            SizeAt::new(
                WorkLength::from_mm(at).unwrap(),
                Diameter::from_mm(size).unwrap(),
            )
        });
        let found = DiagnosisAsk::new(
            Diameter::from_mm(30.392).unwrap(),
            Diameter::from_mm(34.0).unwrap(),
            &measured,
            &dial(),
            StandardUncertainty::from_mm(0.004).unwrap(),
            StandardUncertainty::from_mm(0.001).unwrap(),
        )
        .with_holding(Support::BetweenCentres, Overhang::from_mm(210.0).unwrap())
        .answer(Units::Metric, &mut Provenance::default());
        assert_eq!(found.causes[0].cause, Cause::TailstockOff, "{found:?}");
        let correction = found.tailstock_correction.unwrap();
        // The prior and the level part pull a little; a hundredth of a millimetre is what a hand can set.
        assert!((correction.mm() - 0.027).abs() < 0.004, "{correction}");
    }

    /// What is told of a bar of 12 mm on a live centre, 158 mm out of the jaws, where 12.243 mm was expected.
    fn slender(sizes: &[(f64, f64)]) -> Diagnosis {
        let measured = placed(sizes);
        DiagnosisAsk::new(
            Diameter::from_mm(12.243).unwrap(),
            Diameter::from_mm(13.743).unwrap(),
            &measured,
            &dial(),
            StandardUncertainty::from_mm(0.008).unwrap(),
            StandardUncertainty::from_mm(0.0025).unwrap(),
        )
        .with_holding(Support::ChuckAndCentre, Overhang::from_mm(158.0).unwrap())
        .answer(Units::Metric, &mut Provenance::default())
    }

    #[test]
    fn the_correction_of_the_tailstock_follows_from_the_differences_alone() {
        // The tip leaves s x^2 (3 - x) at x = a/L of a bar that a rigid chuck holds (derived in `tailstock_error`).
        // Least squares through the three sizes less their mean, by hand: x^2 (3 - x) is 0.0460, 0.7132 and 1.8480,
        // less its mean -0.8231, -0.1559, 0.9790; sum of squares 1.6602; times -0.03, 0, 0.03 mm: 0.05406 mm;
        // s = 0.0326 mm. What is usual of a tailstock pulls by less than a hundredth of it.
        let sizes = [(20.0, 12.213), (85.0, 12.243), (150.0, 12.273)];
        for level in [-0.05, 0.0, 0.03, 0.2] {
            let found = slender(&sizes.map(|(at, size)| (at, size + level)));
            assert_eq!(found.causes[0].cause, Cause::TailstockOff, "{found:?}");
            let correction = found.tailstock_correction.unwrap().mm();
            assert!(
                (correction - 0.0326).abs() < 0.0004,
                "{level}: {correction}"
            );
        }
        // A hair less than a straight line is no other cause.
        let bent = slender(&[(20.0, 12.21), (85.0, 12.235), (150.0, 12.26)]);
        assert_eq!(bent.causes[0].cause, Cause::TailstockOff, "{bent:?}");
        let correction = bent.tailstock_correction.unwrap().mm();
        assert!(
            (correction - 0.0326 * 25.0 / 30.0).abs() < 0.0004,
            "{correction}"
        );
    }

    #[test]
    fn two_sizes_at_one_place_are_no_taper() {
        let found = slender(&[(85.0, 12.303), (85.0, 12.303)]);
        let taper = |c: &CauseFit| c.cause == Cause::TailstockOff;
        assert!(!found.causes.iter().any(taper), "{found:?}");
        assert!(found.tailstock_correction.is_none());
    }

    #[test]
    fn shares_sum_to_one() {
        let found = first(&[(50.0, 30.5), (140.0, 30.52)], Support::Chuck);
        let sum: f64 = found.causes.iter().map(|c| c.fit.value()).sum();
        assert!((sum - 1.0).abs() < 1e-12, "{sum}");
        assert!(
            found
                .causes
                .windows(2)
                .all(|pair| pair[0].fit >= pair[1].fit)
        );
    }
}
