//! Speeds, feeds and times.

use std::f64::consts::PI;

use uom::si::f64::{Length, Time};

use super::engagement::ChipSection;
use crate::error::{Error, ErrorKind};
use crate::quantity::{
    CuttingSpeed, DepthOfCut, Diameter, Duration, Feed, FeedRate, HandwheelRate, RemovalRate,
    SpindleSpeed, Travel, WorkLength,
};

/// The spindle speed at which a diameter passes the edge at a cutting speed.
///
/// n = v_c / (pi d)
///
/// # Units
/// Exact in metric and inch alike; the types carry the units.
/// # Range
/// Any; take the diameter before the cut, where the edge is fastest.
/// # Source
/// Definition of the cutting speed, ISO 3002-1 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::speed::spindle_speed, CuttingSpeed, Diameter};
/// let n = spindle_speed(CuttingSpeed::from_m_per_min(90.0)?, Diameter::from_mm(40.0)?);
/// assert_eq!(n.rpm().round(), 716.0);
/// let n = spindle_speed("300 ft/min".parse()?, "1.5 in".parse()?);
/// assert_eq!(n.rpm().round(), 764.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn spindle_speed(cutting_speed: CuttingSpeed, diameter: Diameter) -> SpindleSpeed {
    let (v_c, d) = (cutting_speed.velocity(), diameter.length());
    SpindleSpeed::computed(v_c / (PI * d))
}

/// The cutting speed of a diameter at a spindle speed.
///
/// v_c = pi d n
///
/// # Units
/// The types carry them.
/// # Range
/// Any. At the diameter before the cut it is the speed that wears the edge; at the mean diameter
/// it is the one that power is reckoned with.
/// # Source
/// Definition, ISO 3002-1 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::speed::cutting_speed, Diameter, SpindleSpeed};
/// let v = cutting_speed(SpindleSpeed::from_rpm(500.0)?, Diameter::from_mm(63.0)?);
/// assert_eq!(v.m_per_min().round(), 99.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn cutting_speed(spindle_speed: SpindleSpeed, diameter: Diameter) -> CuttingSpeed {
    let (n, d) = (spindle_speed.frequency(), diameter.length());
    CuttingSpeed::computed(PI * d * n)
}

/// How fast the tool travels along.
///
/// v_f = f n
///
/// # Units
/// The types carry them.
/// # Range
/// Any.
/// # Source
/// Definition, ISO 3002-1 (from memory).
/// # Example
/// ```
/// use turnwright::{physics::speed::feed_rate, Feed, SpindleSpeed};
/// let v_f = feed_rate(Feed::from_mm_per_rev(0.15)?, SpindleSpeed::from_rpm(710.0)?);
/// assert!((v_f.mm_per_min() - 106.5).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn feed_rate(feed: Feed, spindle_speed: SpindleSpeed) -> FeedRate {
    let (f, n) = (feed.length_per_revolution(), spindle_speed.frequency());
    FeedRate::computed(f * n)
}

/// How fast a hand turns the wheel to feed so.
///
/// turns per minute = f n / travel of the slide per turn of the wheel
///
/// # Units
/// The travel is of the slide, never a dial's reading of a diameter.
/// # Range
/// Any travel above zero.
/// # Errors
/// `travel_per_turn`, when it is zero.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::{physics::speed::handwheel_rate, Feed, SpindleSpeed, Travel};
/// let rate = handwheel_rate(
///     Feed::from_mm_per_rev(0.08)?,
///     SpindleSpeed::from_rpm(500.0)?,
///     Travel::from_mm(16.0)?,
/// )?;
/// assert!((rate.turns_per_min() - 2.5).abs() < 1e-12);
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn handwheel_rate(
    feed: Feed,
    spindle_speed: SpindleSpeed,
    travel_per_turn: Travel,
) -> Result<HandwheelRate, Error> {
    let travel = travel_per_turn.length();
    if travel <= Length::default() {
        return Err(Error::new(
            ErrorKind::Contradiction,
            "travel_per_turn",
            travel_per_turn.to_string(),
            "a travel above zero",
            "measure how far the slide moves in one turn of its wheel",
        ));
    }
    let (f, n) = (feed.length_per_revolution(), spindle_speed.frequency());
    Ok(HandwheelRate::computed(f * n / travel))
}

/// How long the tool takes along a length.
///
/// t = l / (f n)
///
/// # Units
/// The types carry them.
/// # Range
/// The length includes the run-in and the run-out.
/// # Source
/// Definition of the feed.
/// # Example
/// ```
/// use turnwright::{physics::speed::time_of_cut, Feed, SpindleSpeed, WorkLength};
/// let t = time_of_cut(
///     WorkLength::from_mm(122.0)?,
///     Feed::from_mm_per_rev(0.2)?,
///     SpindleSpeed::from_rpm(640.0)?,
/// );
/// assert!((t.seconds() - 57.1875).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn time_of_cut(length: WorkLength, feed: Feed, spindle_speed: SpindleSpeed) -> Duration {
    Duration::computed(time_over(length.length(), feed, spindle_speed))
}

/// How long facing takes from the outside to the middle at one spindle speed.
///
/// t = (d/2) / (f n)
///
/// # Units
/// The types carry them.
/// # Range
/// Spindle speed unchanged on the way; the cutting speed falls to zero at the middle.
/// # Source
/// Definition of the feed.
/// # Example
/// ```
/// use turnwright::{physics::speed::facing_time, Diameter, Feed, SpindleSpeed};
/// let t = facing_time(
///     Diameter::from_mm(110.0)?,
///     Feed::from_mm_per_rev(0.1)?,
///     SpindleSpeed::from_rpm(250.0)?,
/// );
/// assert!((t.seconds() - 132.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
#[inline]
pub fn facing_time(diameter: Diameter, feed: Feed, spindle_speed: SpindleSpeed) -> Duration {
    Duration::computed(time_over(diameter.radius().length(), feed, spindle_speed))
}

#[inline]
fn time_over(length: Length, feed: Feed, spindle_speed: SpindleSpeed) -> Time {
    length / (feed.length_per_revolution() * spindle_speed.frequency())
}

/// The metal removed per time, exactly.
///
/// Q = pi d_m a_p f n, with the mean diameter d_m = d - a_p
///
/// # Units
/// The types carry them.
/// # Range
/// The diameter is the one before the cut.
/// # Errors
/// `depth_of_cut`, when it goes to the middle of the bar or beyond.
/// # Source
/// Derived: the ring pi (d_o^2 - d_i^2)/4 times the feed rate. The short form a_p f v_c overstates
/// it by d/d_m.
/// # Example
/// ```
/// use turnwright::{physics::speed::removal_rate, DepthOfCut, Diameter, Feed, SpindleSpeed};
/// let q = removal_rate(
///     Diameter::from_mm(40.0)?,
///     DepthOfCut::from_mm(2.0)?,
///     Feed::from_mm_per_rev(0.25)?,
///     SpindleSpeed::from_rpm(500.0)?,
/// )?;
/// assert!((q.cm3_per_min() - 29.845).abs() < 1e-3);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[inline]
pub fn removal_rate(
    diameter: Diameter,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    spindle_speed: SpindleSpeed,
) -> Result<RemovalRate, Error> {
    removal_rate_or_none(diameter, depth_of_cut, feed, spindle_speed)
        .ok_or_else(|| too_deep(diameter, depth_of_cut))
}

/// [`removal_rate`] without its words, for loops.
#[inline]
pub(crate) fn removal_rate_or_none(
    diameter: Diameter,
    depth_of_cut: DepthOfCut,
    feed: Feed,
    spindle_speed: SpindleSpeed,
) -> Option<RemovalRate> {
    let d_m = difference(diameter, depth_of_cut).length();
    let (a_p, f, n) = (
        depth_of_cut.length(),
        feed.length_per_revolution(),
        spindle_speed.frequency(),
    );
    RemovalRate::computed_where(leaves_metal(diameter, depth_of_cut), PI * d_m * a_p * f * n)
}

/// How much metal a cut towards or across the axis removes per time, where it stands.
///
/// Q = b h v_c
///
/// # Units
/// The types carry them.
/// # Range
/// Facing and parting, at the diameter to which the cutting speed belongs. Along a bar see
/// [`removal_rate`].
/// # Source
/// Geometry: the section of the chip times the way that passes the edge.
/// # Example
/// ```
/// use turnwright::physics::{engagement::ChipSection, speed::removal_rate_at};
/// let chip = ChipSection::new("0.08 mm".parse()?, "3 mm".parse()?);
/// let q = removal_rate_at(chip, "50 m/min".parse()?);
/// assert!((q.cm3_per_min() - 12.0).abs() < 1e-9);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[must_use]
pub fn removal_rate_at(chip: ChipSection, cutting_speed: CuttingSpeed) -> RemovalRate {
    let (h, b, v_c) = (
        chip.thickness.length(),
        chip.width.length(),
        cutting_speed.velocity(),
    );
    RemovalRate::computed(b * h * v_c)
}

/// The diameter half-way through the depth of a cut.
///
/// d_m = d - a_p
///
/// # Units
/// The types carry them.
/// # Range
/// The diameter is the one before the cut.
/// # Errors
/// `depth_of_cut`, when it goes to the middle of the bar or beyond.
/// # Source
/// Geometry.
/// # Example
/// ```
/// use turnwright::{physics::speed::mean_diameter, DepthOfCut, Diameter};
/// let d_m = mean_diameter(Diameter::from_mm(40.0)?, DepthOfCut::from_mm(2.0)?)?;
/// assert_eq!(d_m.mm(), 38.0);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[inline]
pub fn mean_diameter(diameter: Diameter, depth_of_cut: DepthOfCut) -> Result<Diameter, Error> {
    mean_diameter_or_none(diameter, depth_of_cut).ok_or_else(|| too_deep(diameter, depth_of_cut))
}

/// [`mean_diameter`] without its words, for loops.
#[inline]
pub(crate) fn mean_diameter_or_none(
    diameter: Diameter,
    depth_of_cut: DepthOfCut,
) -> Option<Diameter> {
    leaves_metal(diameter, depth_of_cut).then_some(difference(diameter, depth_of_cut))
}

/// Means something only where metal is left.
#[inline]
fn difference(diameter: Diameter, depth_of_cut: DepthOfCut) -> Diameter {
    Diameter::computed_trade(diameter.mm() - depth_of_cut.mm())
}

/// Whether a cut along the bar stays short of its middle.
#[inline]
fn leaves_metal(diameter: Diameter, depth_of_cut: DepthOfCut) -> bool {
    2.0 * depth_of_cut.mm() < diameter.mm()
}

#[cold]
#[inline(never)]
fn too_deep(diameter: Diameter, depth_of_cut: DepthOfCut) -> Error {
    Error::new(
        ErrorKind::Contradiction,
        "depth_of_cut",
        depth_of_cut.to_string(),
        format!("less than half of the diameter {diameter}"),
        "a depth of cut is radial: the diameter falls by twice the depth",
    )
}
