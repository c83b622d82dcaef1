//! How far a bar of any sections gives way to the tool, on any support.
//!
//! Symbols: E modulus and I second moment of area, x from the chuck (or from the centre at the
//! head), a the station of the tool, F_p the passive force, L the length between the ends.
//! Euler-Bernoulli beams, as in [`super::bar`]: shear, left out, adds a share of about 0.55 (d/L)^2
//! to the deflection of an end-loaded round bar in a chuck.
//!
//! # How
//! All that lies to one side of the tool acts on it like an elastic foundation of three figures: an
//! angular compliance W, an elastic centre at a distance d behind the tool, and the compliance U of
//! that centre; a force F and a moment M at the tool move it by (U + W d^2) F + W d M. Going along
//! the bar, a piece joins by its elastic weight as a mass joins a body (sum of weights, common
//! centre, parallel axes), and a support of compliance s takes off: U s/(s + U), d s/(s + U),
//! W (s + U)/(s + U + W d^2). With such figures of both sides (second side: index 2)
//!
//! delta/F_p = (W U (U_2 + W_2 d_2^2) + W_2 U_2 (U + W d^2)) / ((W + W_2)(U + U_2) + W W_2 (d + d_2)^2)
//!
//! Every term is positive, so nothing cancels: near a support as at the free end the answer is good
//! to the last digits. W is kept as a quotient, for it is zero in a rigid chuck and without limit on
//! a centre. Derived here, from the unit-load integral of any strength of materials text (Roark;
//! Timoshenko, from memory).

use std::ops::Range;

use uom::si::f64::{Force, Length, Ratio};
use uom::si::force::newton;
use uom::si::length::meter;

use super::bar::{Compliance, Springs, Support, Tilt};
use super::maths;
use super::section::{Elastic, Piece, Section};
use super::side::Side;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    Deflection, Diameter, DiameterError, PassiveForce, Stiffness, WorkLength, YoungsModulus,
    round_size,
};
use crate::shop::holding::Steady;

/// A bar of any sections as it is held.
///
/// Made once; then every station of a tool costs the same few operations, without memory.
///
/// ```
/// use turnwright::physics::bar::{Springs, Support};
/// use turnwright::physics::{section::Section, stepped::HeldBar};
/// use turnwright::Deflection;
/// let sections = [
///     Section::cylinder("40 mm".parse()?, "60 mm".parse()?),
///     Section::cylinder("25 mm".parse()?, "50 mm".parse()?),
///     Section::cylinder("12 mm".parse()?, "30 mm".parse()?),
/// ];
/// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::Chuck, &Springs::default(), &[])?;
/// let bent = bar.deflection("100 N".parse()?, "140 mm".parse()?)?;
/// assert!((bent.mm() - 0.011045).abs() < 1e-6);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct HeldBar {
    pub(super) spans: Vec<Span>,
    pub(super) head: Head,
    /// Supports beyond the head, in order along the bar.
    pub(super) props: Vec<Prop>,
    pub(super) length: Length,
    whole: WorkLength,
}

/// What holds the bar where it begins.
#[derive(Debug, Clone, Copy)]
pub(super) enum Head {
    /// Compliance against a force, and against a moment.
    Chuck(Compliance, Tilt),
    /// Compliance against a force.
    Centre(Compliance),
}

/// A support beyond the head.
#[derive(Debug, Clone, Copy)]
pub(super) struct Prop {
    pub(super) at: Length,
    pub(super) give: Compliance,
    pub(super) is_centre: bool,
}

/// A piece of the bar between two neighbouring ends of sections or supports.
#[derive(Debug, Clone, Copy)]
pub(super) struct Span {
    pub(super) start: Length,
    pub(super) end: Length,
    /// The piece it belongs to, and where it begins in it.
    pub(super) piece: Piece,
    pub(super) offset: Length,
    /// All before the span, a support at its start with it.
    before: Side,
    /// All behind the span, a support at its end with it; nothing where the end is free.
    behind: Option<Side>,
}

/// 1/k; what is rigid gives nothing.
pub(super) fn give(stiffness: Option<Stiffness>) -> Compliance {
    stiffness.map_or(Compliance::default(), |k| {
        // 1 kN/mm is 1e6 N/m.
        Length::new::<meter>(1.0) / Force::new::<newton>(k.kn_per_mm() * 1e6)
    })
}

impl HeldBar {
    /// A bar of these sections, from the chuck (or the centre at the head) outwards.
    ///
    /// `springs.chuck` is the stiffness of the centre at the head when the bar is held between
    /// centres; a centre at the tail stands at the end of the last section.
    ///
    /// # Errors
    /// `sections`, when there is none or they are longer together than any lathe; `steadies`, when
    /// one stands outside of the bar or two stand at one place.
    ///
    /// # Source
    /// As the module.
    pub fn new(
        youngs_modulus: YoungsModulus,
        sections: &[Section],
        support: Support,
        springs: &Springs,
        steadies: &[Steady],
    ) -> Result<Self, Error> {
        check_length(sections)?;
        let mut pieces: Vec<(Range<Length>, Piece)> = Vec::with_capacity(sections.len());
        // Ends are summed as sizes are, in millimetres, so that a station or a steady at the end of a
        // section stands there to the last digit.
        let (mut sum, mut length) = (0.0, Length::default());
        for section in sections {
            let mut start = length;
            section.pieces(youngs_modulus, |piece| {
                let end = start + piece.length;
                pieces.push((start..end, piece));
                start = end;
            });
            sum = round_size(sum + section.length().mm());
            length = WorkLength::computed_trade(sum).length();
            if let Some((over, _)) = pieces.last_mut() {
                over.end = length;
            }
        }
        let props = props(length, support, springs, steadies)?;
        let head = match support {
            Support::Chuck | Support::ChuckAndCentre => {
                Head::Chuck(give(springs.chuck), super::bar::tilt(springs))
            }
            Support::BetweenCentres => Head::Centre(give(springs.chuck)),
        };
        let first = match head {
            Head::Chuck(give, tilt) => Side::clamped(give, tilt),
            Head::Centre(give) => Side::pinned(give),
        };
        let mut spans = Vec::with_capacity(pieces.len() + props.len());
        for (over, piece) in pieces {
            cut(&piece, over, &props, first, &mut spans);
        }
        let mut bar = Self {
            length,
            whole: WorkLength::computed_trade(sum),
            spans,
            head,
            props,
        };
        bar.look_forwards(first);
        bar.look_backwards();
        Ok(bar)
    }

    fn look_forwards(&mut self, first: Side) {
        let (mut side, mut props) = (first, self.props.iter().peekable());
        for span in &mut self.spans {
            span.before = side;
            side = side.forwards(&span.part(span.start, span.end));
            if let Some(prop) = props.next_if(|prop| prop.at <= span.end) {
                side = side.propped(prop.give);
            }
        }
    }

    fn look_backwards(&mut self) {
        let mut side: Option<Side> = None;
        let mut props = self.props.iter().rev().peekable();
        for span in self.spans.iter_mut().rev() {
            if let Some(prop) = props.next_if(|prop| prop.at >= span.end) {
                side = Some(match side {
                    None => Side::pinned(prop.give),
                    Some(side) => side.propped(prop.give),
                });
            }
            span.behind = side;
            side = side.map(|side| side.backwards(&span.part(span.start, span.end)));
        }
    }

    /// Length from the head to the end of the last section.
    #[must_use]
    pub fn length(&self) -> WorkLength {
        self.whole
    }

    /// The outside diameter at a place; at a shoulder, that of the side towards the chuck.
    ///
    /// # Errors
    /// `at`, when it is beyond the bar.
    ///
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cone("30 mm".parse()?, "20 mm".parse()?, "100 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::Chuck, &Springs::default(), &[])?;
    /// assert!((bar.diameter("50 mm".parse()?)?.mm() - 25.0).abs() < 1e-12);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn diameter(&self, at: WorkLength) -> Result<Diameter, Error> {
        let a = self.inside("at", at)?;
        let span = self
            .span(a)
            .ok_or_else(|| Error::internal("a bar without a section"))?;
        Ok(Diameter::computed(
            span.piece.diameter(span.offset + (a - span.start)),
        ))
    }

    /// Taper and barrel that one cut leaves between two stations, by the spring of the bar alone.
    ///
    /// The taper is the error of the diameter at the far station less that at the near one; the barrel
    /// is how far the diameter bulges (or, negative, is waisted) over the straight line between them.
    ///
    /// # Units
    /// The types carry them. Stations are measured from the chuck.
    /// # Range
    /// As [`HeldBar::deflection`]; the barrel is looked for at 64 places.
    /// # Errors
    /// As [`HeldBar::worst`].
    /// # Source
    /// Derived.
    /// # Example
    /// Between rigid centres there is no taper, but a barrel:
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("20 mm".parse()?, "300 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let (taper, barrel) = bar.taper_and_barrel("100 N".parse()?, "10 mm".parse()?, "290 mm".parse()?)?;
    /// assert!(taper.mm().abs() < 1e-12 && barrel.mm() > 0.05);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn taper_and_barrel(
        &self,
        passive_force: PassiveForce,
        from: WorkLength,
        to: WorkLength,
    ) -> Result<(DiameterError, DiameterError), Error> {
        const PLACES: u32 = 64;
        let (first, last) = self.between(from, to)?;
        let force = passive_force.force();
        let (near, far) = (self.compliance(first), self.compliance(last));
        let mut barrel = Compliance::default();
        for place in 1..PLACES {
            let share = f64::from(place) / f64::from(PLACES);
            let over =
                self.compliance(first + (last - first) * share) - near - (far - near) * share;
            if over.abs() > barrel.abs() {
                barrel = over;
            }
        }
        let error = |give: Compliance| DiameterError::computed(force * give * 2.0);
        Ok((error(far - near), error(barrel)))
    }

    /// How far the bar gives way at the tool.
    ///
    /// # Units
    /// The types carry them. `at` is measured from the chuck.
    /// # Range
    /// Euler-Bernoulli, see the module.
    /// # Errors
    /// `at`, when it is beyond the bar.
    /// # Source
    /// As the module.
    /// # Example
    /// A steady in the middle takes most of it:
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// use turnwright::shop::holding::Steady;
    /// let sections = [Section::cylinder("22 mm".parse()?, "600 mm".parse()?)];
    /// let bar = |steadies: &[Steady]| {
    ///     HeldBar::new("210 GPa".parse()?, &sections, Support::ChuckAndCentre, &Springs::default(), steadies)
    /// };
    /// let at = |bar: HeldBar| bar.deflection("100 N".parse()?, "420 mm".parse()?);
    /// let free = at(bar(&[])?)?;
    /// let steadied = at(bar(&[Steady::rigid("300 mm".parse()?)])?)?;
    /// assert!(free.mm() > 5.0 * steadied.mm());
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn deflection(
        &self,
        passive_force: PassiveForce,
        at: WorkLength,
    ) -> Result<Deflection, Error> {
        let a = self.inside("at", at)?;
        Ok(Deflection::computed(
            passive_force.force() * self.compliance(a),
        ))
    }

    /// How far the bar gives way at every station of a moving tool, into a buffer of the caller.
    ///
    /// Stations may come in any order; in rising order the search for their section costs nothing.
    ///
    /// # Units
    /// The types carry them. Stations are measured from the chuck.
    /// # Range
    /// As [`HeldBar::deflection`].
    /// # Errors
    /// `stations`, when one is beyond the bar, or the buffer has another length.
    /// # Source
    /// As the module.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// use turnwright::{Deflection, WorkLength};
    /// let sections = [Section::cylinder("1 in".parse()?, "12 in".parse()?)];
    /// let bar = HeldBar::new("30000 ksi".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let stations = [WorkLength::from_inch(3.0)?, WorkLength::from_inch(9.0)?];
    /// let mut bent = [Deflection::from_mm(0.0)?; 2];
    /// bar.deflections("50 lbf".parse()?, &stations, &mut bent)?;
    /// // A bar between rigid centres is symmetric; the sums of both ways differ in the last digit.
    /// assert!((bent[0].mm() - bent[1].mm()).abs() < 1e-15);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn deflections(
        &self,
        passive_force: PassiveForce,
        stations: &[WorkLength],
        into: &mut [Deflection],
    ) -> Result<(), Error> {
        if stations.len() != into.len() {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "stations",
                format!("{} stations", stations.len()),
                format!("as many as the buffer has places, {}", into.len()),
                "bring a buffer of the same length",
            ));
        }
        if let Some((number, far)) = stations
            .iter()
            .enumerate()
            .find(|(_, at)| **at > self.whole)
        {
            return self
                .inside(&format!("stations[{number}]"), *far)
                .map(|_| ());
        }
        let force = passive_force.force();
        let (mut stations, mut into) = (stations, into);
        while let Some(first) = stations.first() {
            let span = self
                .span(first.length())
                .ok_or_else(|| Error::internal("a bar without a section"))?;
            // All that follow in the same span go through one loop without a branch in it.
            let inside = |at: &WorkLength| at.length() > span.start && at.length() <= span.end;
            let count = stations
                .iter()
                .position(|at| !inside(at))
                .unwrap_or(stations.len())
                .max(1);
            let (these, rest) = stations.split_at(count);
            let (bent, places) = into.split_at_mut(count);
            span.fill(force, these, bent);
            (stations, into) = (rest, places);
        }
        Ok(())
    }

    /// Where between two stations a moving tool bends the bar most, and how far.
    ///
    /// Every span between supports and steps is looked at in 32 places, and the highest of them is
    /// closed in on by thirds of its neighbourhood until nothing changes.
    ///
    /// # Units
    /// The types carry them. Stations are measured from the chuck.
    /// # Range
    /// As [`HeldBar::deflection`].
    /// # Errors
    /// `from` or `to`, when it is beyond the bar; `to`, when it is nearer to the chuck than `from`.
    /// # Source
    /// Derived: inside a span of one diameter the deflection is a polynomial of the sixth degree in
    /// a, which has at most three maxima.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("20 mm".parse()?, "300 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let (at, _) = bar.worst("100 N".parse()?, "1 mm".parse()?, "300 mm".parse()?)?;
    /// assert!((at.mm() - 150.0).abs() < 1e-3);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn worst(
        &self,
        passive_force: PassiveForce,
        from: WorkLength,
        to: WorkLength,
    ) -> Result<(WorkLength, Deflection), Error> {
        let (first, last) = self.between(from, to)?;
        let (mut at, mut most) = (last, self.compliance(last));
        // Held at its head alone a bar gives the more the farther out it is loaded.
        let spans = if self.props.is_empty() {
            &[]
        } else {
            self.spans.as_slice()
        };
        for span in spans {
            let (low, high) = (span.start.max(first), span.end.min(last));
            if low > high {
                continue;
            }
            let (place, give) = span.highest(low, high);
            if give > most {
                (at, most) = (place, give);
            }
        }
        let at = if at == last {
            to
        } else if at == first {
            from
        } else {
            WorkLength::computed(at)
        };
        Ok((at, Deflection::computed(passive_force.force() * most)))
    }

    /// The force with which the centre at the tail holds against the tool; zero without one.
    ///
    /// # Units
    /// The types carry them. `at` is measured from the chuck.
    /// # Range
    /// As [`HeldBar::deflection`].
    /// # Errors
    /// `at`, when it is beyond the bar.
    /// # Source
    /// As the module.
    /// # Example
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// let sections = [Section::cylinder("20 mm".parse()?, "300 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::BetweenCentres, &Springs::default(), &[])?;
    /// let force = bar.centre_force("100 N".parse()?, "75 mm".parse()?)?;
    /// assert!((force.newton() - 25.0).abs() < 1e-9);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn centre_force(
        &self,
        passive_force: PassiveForce,
        at: WorkLength,
    ) -> Result<PassiveForce, Error> {
        let shares = self.shares_beyond(self.inside("at", at)?);
        let share = match (self.props.last(), shares.last()) {
            (Some(prop), Some(share)) if prop.is_centre => *share,
            _ => Ratio::default(),
        };
        Ok(PassiveForce::computed(passive_force.force() * share))
    }

    /// The forces with which the steadies hold against the tool, in their order along the bar.
    ///
    /// # Units
    /// The types carry them. `at` is measured from the chuck.
    /// # Range
    /// As [`HeldBar::bent_by`].
    /// # Errors
    /// `at`, when it is beyond the bar.
    /// # Source
    /// As the module.
    /// # Example
    /// A steady at the place of the tool takes nearly all of the force:
    /// ```
    /// use turnwright::physics::bar::{Springs, Support};
    /// use turnwright::physics::{section::Section, stepped::HeldBar};
    /// use turnwright::shop::holding::Steady;
    /// let sections = [Section::cylinder("22 mm".parse()?, "600 mm".parse()?)];
    /// let steadies = [Steady::rigid("300 mm".parse()?)];
    /// let bar = HeldBar::new("210 GPa".parse()?, &sections, Support::ChuckAndCentre, &Springs::default(), &steadies)?;
    /// let forces = bar.steady_forces("100 N".parse()?, "300 mm".parse()?)?;
    /// assert!((forces[0].newton() - 100.0).abs() < 1e-9);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    pub fn steady_forces(
        &self,
        passive_force: PassiveForce,
        at: WorkLength,
    ) -> Result<Vec<PassiveForce>, Error> {
        let load = super::loads::Load::Force {
            at,
            force: passive_force,
        };
        self.reactions(&[load])
    }

    /// Two stations in their order.
    fn between(&self, from: WorkLength, to: WorkLength) -> Result<(Length, Length), Error> {
        let (first, last) = (self.inside("from", from)?, self.inside("to", to)?);
        if to < from {
            return Err(Error::new(
                ErrorKind::Contradiction,
                "to",
                to.to_string(),
                format!("not nearer to the chuck than {from}"),
                "give the station nearer to the chuck first",
            ));
        }
        Ok((first, last))
    }

    /// The compliance at a place inside of the bar.
    pub(super) fn compliance(&self, a: Length) -> Compliance {
        self.span(a)
            .map_or(Compliance::default(), |span| span.compliance(a))
    }

    /// The span that a place lies in; a place between two lies in the first.
    fn span(&self, a: Length) -> Option<&Span> {
        let number = self.spans.partition_point(|span| span.end < a);
        self.spans.get(number).or(self.spans.last())
    }

    /// The share of a force at a place that each support beyond it takes, in their order.
    fn shares_beyond(&self, a: Length) -> Vec<Ratio> {
        let mut shares = Vec::new();
        let number = self.spans.partition_point(|span| span.end < a);
        let mut spans = self.spans.iter().skip(number);
        let Some(span) = spans.next() else {
            return shares;
        };
        let Some(behind) = span.behind else {
            return shares;
        };
        let here = span.before.forwards(&span.part(span.start, a));
        let there = behind.backwards(&span.part(a, span.end));
        let (mut force, mut moment) = here.handed_over(there);
        // From the tool to the end of its span, then from span to span.
        let mut reach = span.end - a;
        let mut behind = span.next_side(spans.clone().next());
        let mut end = span.end;
        for prop in self.props.iter().filter(|prop| prop.at >= a) {
            while end < prop.at {
                let Some(next) = spans.next() else { break };
                reach += next.end - next.start;
                behind = next.next_side(spans.clone().next());
                end = next.end;
            }
            moment += force * reach;
            reach = Length::default();
            let taken = match behind {
                None => force,
                Some(side) => side.reaction(prop.give, force, moment),
            };
            shares.push(taken);
            force -= taken;
        }
        shares
    }

    pub(super) fn inside(&self, field: &str, at: WorkLength) -> Result<Length, Error> {
        if at > self.whole {
            return Err(Error::new(
                ErrorKind::Contradiction,
                field,
                at.to_string(),
                format!("at most the length of the bar {}", self.whole),
                "stations are measured from the chuck",
            ));
        }
        Ok(at.length())
    }
}

impl Span {
    /// The elastic weight between two places of the span.
    #[inline]
    fn part(&self, from: Length, to: Length) -> Elastic {
        let shift = self.offset - self.start;
        self.piece.elastic(from + shift, to + shift)
    }

    #[inline]
    fn compliance(&self, a: Length) -> Compliance {
        let part = self.part(self.start, a);
        let here = self
            .before
            .joined(part.weight, part.from_far, part.from_near, part.own);
        match self.behind {
            None => here.alone(),
            Some(behind) => {
                let part = self.part(a, self.end);
                here.between(behind.joined(part.weight, part.from_near, part.from_far, part.own))
            }
        }
    }

    /// The deflections at stations that all lie in this span.
    fn fill(&self, force: Force, stations: &[WorkLength], into: &mut [Deflection]) {
        match (self.piece.softness(), self.behind) {
            (Some(soft), None) => {
                let before = self.before;
                for (at, bent) in stations.iter().zip(into) {
                    let here = before.with_cylinder(soft, at.length() - self.start);
                    *bent = Deflection::computed(force * here.alone());
                }
            }
            (Some(soft), Some(behind)) => {
                let before = self.before;
                for (at, bent) in stations.iter().zip(into) {
                    let a = at.length();
                    let here = before.with_cylinder(soft, a - self.start);
                    let there = behind.with_cylinder(soft, self.end - a);
                    *bent = Deflection::computed(force * here.between(there));
                }
            }
            (None, _) => {
                for (at, bent) in stations.iter().zip(into) {
                    *bent = Deflection::computed(force * self.compliance(at.length()));
                }
            }
        }
    }

    /// All behind the end of this span, without a support that stands there.
    fn next_side(&self, next: Option<&Self>) -> Option<Side> {
        next.and_then(|next| {
            next.behind
                .map(|side| side.backwards(&next.part(next.start, next.end)))
        })
    }

    /// The place of the largest compliance between two places of the span.
    fn highest(&self, low: Length, high: Length) -> (Length, Compliance) {
        const PLACES: u32 = 32;
        let mut beside = (high - low) / f64::from(PLACES);
        let mut best = (high, self.compliance(high));
        let mut look_at = |at: Length| {
            let found = self.compliance(at);
            if found > best.1 {
                best = (at, found);
            }
            best.0
        };
        let mut top = high;
        for i in 0..PLACES {
            top = look_at(low + (high - low) * (f64::from(i) / f64::from(PLACES)));
        }
        // The top of the parabola through the best place and one on either side, ever closer: the last
        // one is off by less than the top is flat.
        for _ in 0..4 {
            let middle = top.max(low + beside).min(high - beside);
            let sides = [middle - beside, middle, middle + beside];
            let [before, here, after] = sides.map(|at| self.compliance(at));
            let aside = 0.5 * (before - after) / (before + after - 2.0 * here);
            top = look_at((middle + beside * aside).max(low).min(high));
            beside /= 16.0;
        }
        best
    }
}

/// Cuts a piece at the supports that stand on it.
fn cut(piece: &Piece, over: Range<Length>, props: &[Prop], side: Side, spans: &mut Vec<Span>) {
    let Range { start, end } = over;
    let mut from = start;
    let inner = props
        .iter()
        .map(|prop| prop.at)
        .filter(|at| *at > start && *at < end);
    for to in inner.chain([end]) {
        spans.push(Span {
            start: from,
            end: to,
            piece: *piece,
            offset: from - start,
            before: side,
            behind: None,
        });
        from = to;
    }
}

fn check_length(sections: &[Section]) -> Result<(), Error> {
    if sections.is_empty() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "sections",
            "no section",
            "the sections of the bar that stands out of the jaws",
            "give at least one diameter with its length",
        ));
    }
    let length: f64 = sections.iter().map(|section| section.length().mm()).sum();
    WorkLength::from_mm(length)
        .map(|_| ())
        .map_err(|error| error.at("sections"))
}

/// The supports beyond the head, in order.
fn props(
    length: Length,
    support: Support,
    springs: &Springs,
    steadies: &[Steady],
) -> Result<Vec<Prop>, Error> {
    let centres = usize::from(support != Support::Chuck);
    let mut props = Vec::with_capacity(steadies.len() + centres);
    for (number, steady) in steadies.iter().enumerate() {
        let at = steady.at().length();
        let beyond = match support {
            Support::Chuck => at > length,
            Support::ChuckAndCentre | Support::BetweenCentres => at >= length,
        };
        if beyond {
            return Err(Error::new(
                ErrorKind::Contradiction,
                format!("steadies[{number}].at"),
                steady.at().to_string(),
                format!("on the bar, which ends at {}", WorkLength::computed(length)),
                "places are measured from the chuck",
            ));
        }
        props.push(Prop {
            at,
            give: give(steady.stiffness()),
            is_centre: false,
        });
    }
    props.sort_by(|a, b| maths::number(a.at / length).total_cmp(&maths::number(b.at / length)));
    if let Some([one, _]) = props
        .windows(2)
        .find(|pair| pair[0].at == pair[1].at)
        .map(|pair| [pair[0], pair[1]])
    {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "steadies",
            format!("two steadies at {}", WorkLength::computed(one.at)),
            "steadies at different places",
            "leave one of them out",
        ));
    }
    if support != Support::Chuck {
        props.push(Prop {
            at: length,
            give: give(springs.centre),
            is_centre: true,
        });
    }
    Ok(props)
}

#[cfg(test)]
#[allow(clippy::unwrap_used)]
mod tests {
    use super::*;
    use crate::physics::bar::{self, Bar};
    use crate::quantity::{Diameter, Overhang};
    use proptest::prelude::*;

    fn mm(length: f64) -> WorkLength {
        WorkLength::from_mm(length).unwrap()
    }

    fn cylinder(diameter: f64, length: f64) -> Section {
        Section::cylinder(Diameter::from_mm(diameter).unwrap(), mm(length))
    }

    fn held(
        sections: &[Section],
        support: Support,
        springs: &Springs,
        steadies: &[Steady],
    ) -> HeldBar {
        let e = YoungsModulus::from_gpa(210.0).unwrap();
        HeldBar::new(e, sections, support, springs, steadies).unwrap()
    }

    const SUPPORTS: [Support; 3] = [
        Support::Chuck,
        Support::ChuckAndCentre,
        Support::BetweenCentres,
    ];

    prop_compose! {
        fn any_springs()(
            chuck in proptest::option::of(1.0..200.0_f64),
            tilt in proptest::option::of(1.0..1000.0_f64),
            centre in proptest::option::of(1.0..100.0_f64),
        ) -> Springs {
            Springs {
                chuck: chuck.map(|k| Stiffness::from_kn_per_mm(k).unwrap()),
                chuck_rotational: tilt
                    .map(|k| crate::quantity::RotationalStiffness::from_knm_per_rad(k).unwrap()),
                centre: centre.map(|k| Stiffness::from_kn_per_mm(k).unwrap()),
            }
        }
    }

    prop_compose! {
        fn any_sections()(rows in proptest::collection::vec((5.0..60.0_f64, 5.0..60.0_f64, 5.0..150.0_f64, any::<bool>()), 1..6)) -> Vec<Section> {
            rows.into_iter()
                .map(|(near, far, length, cone)| {
                    let diameter = |d: f64| Diameter::from_mm((d * 100.0).round() / 100.0).unwrap();
                    let length = mm((length * 100.0).round() / 100.0);
                    if cone {
                        Section::cone(diameter(near), diameter(far), length)
                    } else {
                        Section::cylinder(diameter(near), length)
                    }
                })
                .collect()
        }
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// However a uniform bar is cut into sections, it is the bar of the closed forms.
        #[test]
        fn a_uniform_bar_follows_its_closed_form(
            d in 5.0..80.0_f64, parts in proptest::collection::vec(1..300_i32, 1..5), springs in any_springs(),
            share in 0.01..1.0_f64,
        ) {
            let sections: Vec<Section> = parts.iter().map(|l| cylinder(d, f64::from(*l))).collect();
            let length = f64::from(parts.iter().sum::<i32>());
            let at = mm((length * share).max(0.01));
            let force = PassiveForce::from_newton(100.0).unwrap();
            let bar = Bar::new(
                YoungsModulus::from_gpa(210.0).unwrap(),
                Diameter::from_mm(d).unwrap(),
                Overhang::from_mm(length).unwrap(),
            );
            for support in SUPPORTS {
                let stepped = held(&sections, support, &springs, &[]);
                let found = stepped.deflection(force, at).unwrap().mm();
                let closed_at = bar::deflection(&bar, support, &springs, force, at).unwrap().mm();
                let (place, most) = stepped.worst(force, mm(0.01), mm(length)).unwrap();
                let (_, closed) = bar::worst_station(&bar, &springs, support, force, mm(0.01), mm(length)).unwrap();
                prop_assert!((most.mm() - closed.mm()).abs() <= 1e-12 * closed.mm(), "{support:?} {place}");
                // Sums of positive terms, a few roundings of each; but the distance to the centre is a
                // difference of two lengths, and has their rounding.
                let rounding = 2e-14 * closed_at + 1e-14 * most.mm();
                prop_assert!((found - closed_at).abs() <= rounding, "{support:?} {found} {closed_at}");
                if support == Support::ChuckAndCentre {
                    let found = stepped.centre_force(force, at).unwrap().newton();
                    let closed = bar::centre_force(&bar, &springs, force, at).unwrap().newton();
                    prop_assert!((found - closed).abs() <= 1e-11 * closed, "{found} {closed}");
                }
            }
        }

        /// The two ways, by elastic centres and by states carried along the bar, are independent.
        #[test]
        fn both_ways_give_the_same_deflection_and_the_same_forces(
            sections in any_sections(), springs in any_springs(), share in 0.05..1.0_f64,
            steady in proptest::option::of((0.1..0.9_f64, proptest::option::of(5.0..100.0_f64))),
        ) {
            let length = sections.iter().map(|s| s.length().mm()).sum::<f64>();
            let at = mm(((length * share) * 100.0).round() / 100.0);
            let steadies: Vec<Steady> = steady
                .into_iter()
                .map(|(share, k)| {
                    let rigid = Steady::rigid(mm(((length * share) * 100.0).round() / 100.0));
                    k.map_or(rigid, |k| rigid.with_stiffness(Stiffness::from_kn_per_mm(k).unwrap()))
                })
                .collect();
            let force = PassiveForce::from_newton(100.0).unwrap();
            for support in SUPPORTS {
                let bar = held(&sections, support, &springs, &steadies);
                let at = at.min(bar.length());
                let one = bar.deflection(force, at).unwrap().mm();
                let load = crate::physics::loads::Load::Force { at, force };
                let other = bar.bent_by(&[load], &[at]).unwrap()[0].mm();
                let (_, most) = bar.worst(force, mm(0.01), bar.length()).unwrap();
                prop_assert!((one - other).abs() <= 1e-10 * most.mm(), "{support:?} {one} {other}");
                prop_assert!(one >= 0.0 && one <= most.mm() * (1.0 + 1e-12));
            }
        }

        #[test]
        fn a_support_more_never_makes_it_worse(
            sections in any_sections(), springs in any_springs(), share in 0.05..1.0_f64, place in 0.1..0.9_f64,
        ) {
            let length = sections.iter().map(|s| s.length().mm()).sum::<f64>();
            let force = PassiveForce::from_newton(100.0).unwrap();
            let steady = Steady::rigid(mm(((length * place) * 100.0).round() / 100.0));
            for support in SUPPORTS {
                let free = held(&sections, support, &springs, &[]);
                let steadied = held(&sections, support, &springs, &[steady]);
                let at = mm((length * share).max(0.01)).min(free.length());
                let (a, b) = (free.deflection(force, at).unwrap(), steadied.deflection(force, at).unwrap());
                prop_assert!(b.mm() <= a.mm() * (1.0 + 1e-12));
                // And the critical speed rises.
                let density = crate::quantity::Density::from_kg_per_m3(7850.0).unwrap();
                let (slow, fast) = (
                    free.first_critical_speed(density).unwrap().rpm(),
                    steadied.first_critical_speed(density).unwrap().rpm(),
                );
                prop_assert!(fast >= slow * (1.0 - 1e-6), "{support:?} {slow} {fast}");
            }
        }

        #[test]
        fn rayleigh_is_an_upper_bound(sections in any_sections(), springs in any_springs()) {
            let density = crate::quantity::Density::from_kg_per_m3(7850.0).unwrap();
            for support in SUPPORTS {
                let bar = held(&sections, support, &springs, &[]);
                let (exact, bound) = (
                    bar.first_critical_speed(density).unwrap().rpm(),
                    bar.critical_speed_bound(density).unwrap().rpm(),
                );
                prop_assert!(bound >= exact * (1.0 - 1e-7), "{support:?} {exact} {bound}");
            }
        }
    }

    #[test]
    fn what_has_no_answer_names_its_field() {
        let bar = held(
            &[cylinder(20.0, 100.0)],
            Support::Chuck,
            &Springs::default(),
            &[],
        );
        let f = PassiveForce::from_newton(1.0).unwrap();
        let field = |e: Error| e.field().to_owned();
        let far = mm(100.1);
        assert_eq!(bar.deflection(f, far).map_err(field), Err("at".into()));
        assert_eq!(bar.worst(f, mm(1.0), far).map_err(field), Err("to".into()));
        assert_eq!(
            bar.worst(f, mm(50.0), mm(1.0)).map_err(field),
            Err("to".into())
        );
        let mut bent = [Deflection::from_mm(0.0).unwrap(); 2];
        let stations = [mm(1.0), far];
        assert_eq!(
            bar.deflections(f, &stations, &mut bent).map_err(field),
            Err("stations[1]".into())
        );
        assert_eq!(
            bar.deflections(f, &stations[..1], &mut bent).map_err(field),
            Err("stations".into())
        );
        let e = YoungsModulus::from_gpa(210.0).unwrap();
        let rigid = Springs::default();
        let made = |sections: &[Section], support, steadies: &[Steady]| {
            HeldBar::new(e, sections, support, &rigid, steadies)
                .map(drop)
                .map_err(field)
        };
        let one = [cylinder(20.0, 100.0)];
        assert_eq!(made(&[], Support::Chuck, &[]), Err("sections".into()));
        assert_eq!(
            made(
                &[cylinder(20.0, 15000.0), cylinder(20.0, 15000.0)],
                Support::Chuck,
                &[]
            ),
            Err("sections".into())
        );
        assert_eq!(
            made(&one, Support::Chuck, &[Steady::rigid(far)]),
            Err("steadies[0].at".into())
        );
        assert_eq!(
            made(&one, Support::ChuckAndCentre, &[Steady::rigid(mm(100.0))]),
            Err("steadies[0].at".into())
        );
        let twice = [Steady::rigid(mm(50.0)), Steady::rigid(mm(50.0))];
        assert_eq!(made(&one, Support::Chuck, &twice), Err("steadies".into()));
    }
}
