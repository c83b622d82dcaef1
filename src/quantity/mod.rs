//! The vocabulary: every quantity of the trade as a type of its own.
//!
//! One row of the table at the end of this file is one type: its name, its words, its kind of unit,
//! its range, two examples. The row yields the check at the door, the error text, the
//! property-test strategy and the range that C can ask for.
//!
//! A value is stored in the trade's metric unit (mm, um for roughness, mm/rev, m/min, 1/min, MPa,
//! ...), so that making, reading, text, serde and C return exactly what was put in. It is finite
//! and inside its range from the moment it exists; NaN has no place to stand. Kernels turn it into
//! a `uom` quantity on their first line; the conversions have names (`length`, `from_length`), so
//! that a radius does not slip into a diameter through one.
//!
//! A row's range is what is *plausible* for a real lathe, and it is checked where values come in.
//! What a kernel computes from plausible values is always finite, but may lie outside of it.
//!
//! # What does not compile
//!
//! A radius for a diameter:
//! ```compile_fail,E0308
//! # use turnwright::{physics::speed, CuttingSpeed, Radius};
//! # fn f(v: CuttingSpeed, r: Radius) {
//! speed::spindle_speed(v, r);
//! # }
//! ```
//! its twin that does:
//! ```
//! # use turnwright::{physics::speed, CuttingSpeed, Radius};
//! # fn f(v: CuttingSpeed, r: Radius) {
//! speed::spindle_speed(v, r.diameter());
//! # }
//! ```
//! A spindle speed for a cutting speed:
//! ```compile_fail,E0308
//! # use turnwright::{physics::speed, SpindleSpeed, Diameter};
//! # fn f(n: SpindleSpeed, d: Diameter) {
//! speed::spindle_speed(n, d);
//! # }
//! ```
//! A feed per revolution for a feed rate, a depth for a diameter, a specific force for a modulus, a
//! bare number for a quantity:
//! ```compile_fail,E0308
//! # use turnwright::{Feed, FeedRate};
//! fn rate(f: Feed) -> FeedRate { f }
//! ```
//! ```compile_fail,E0308
//! # use turnwright::{DepthOfCut, Diameter};
//! fn diameter(a: DepthOfCut) -> Diameter { a }
//! ```
//! ```compile_fail,E0308
//! # use turnwright::{SpecificCuttingForce, YoungsModulus};
//! fn modulus(k: SpecificCuttingForce) -> YoungsModulus { k }
//! ```
//! ```compile_fail,E0308
//! # use turnwright::Diameter;
//! fn diameter(d: f64) -> Diameter { d }
//! ```
//! their twin that does:
//! ```
//! # use turnwright::{DepthOfCut, Diameter, Feed, FeedRate, SpecificCuttingForce, YoungsModulus};
//! fn rate(f: FeedRate) -> FeedRate { f }
//! fn depth(a: DepthOfCut) -> DepthOfCut { a }
//! fn modulus(e: YoungsModulus) -> YoungsModulus { e }
//! fn diameter(d: Diameter) -> Diameter { d }
//! ```
//! A unit of another kind:
//! ```compile_fail,E0277
//! use turnwright::{unit::meter_per_minute, Diameter};
//! let d = Diameter::new::<meter_per_minute>(40.0);
//! ```
//! its twin that does:
//! ```
//! use turnwright::{unit::millimeter, Diameter};
//! let d = Diameter::new::<millimeter>(40.0);
//! ```

#[macro_use]
mod kinds;

mod conversions;
pub mod dial;
#[cfg(feature = "serde")]
pub(crate) mod fields;
#[cfg(feature = "serde")]
pub(crate) mod serial;
pub(crate) mod slips;
#[cfg(feature = "proptest")]
mod strategy;
pub(crate) mod text;
pub(crate) mod told;
pub mod unit;

use std::fmt;

use crate::error::{Error, ErrorKind};
use crate::provenance::Recorded;
use unit::{Kind, Units};

/// The row of a quantity: what is written once about its type.
///
/// ```
/// use turnwright::{Diameter, Quantity};
/// let row = Diameter::ROW;
/// assert_eq!((row.name(), row.least(), row.largest()), ("diameter", 0.1, 5000.0));
/// ```
#[derive(Debug)]
pub struct Row {
    name: &'static str,
    what: &'static str,
    kind: &'static Kind,
    least: f64,
    largest: f64,
    zero: bool,
    code: i32,
    examples: [&'static str; 2],
}

impl Row {
    /// The name, as documents and errors use it.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// The quantity in words, with its article.
    #[must_use]
    pub const fn what(&self) -> &'static str {
        self.what
    }

    /// Its kind of unit.
    #[must_use]
    pub const fn kind(&self) -> &'static Kind {
        self.kind
    }

    /// The least plausible value, in the trade's metric unit.
    #[must_use]
    pub const fn least(&self) -> f64 {
        self.least
    }

    /// The largest plausible value, in the trade's metric unit.
    #[must_use]
    pub const fn largest(&self) -> f64 {
        self.largest
    }

    /// Whether zero is allowed beside the range.
    #[must_use]
    pub const fn allows_zero(&self) -> bool {
        self.zero
    }

    /// The number by which the C interface knows this quantity; pinned.
    #[must_use]
    pub const fn code(&self) -> i32 {
        self.code
    }

    /// A value as one would write it.
    #[must_use]
    pub const fn example(&self) -> &'static str {
        self.examples[0]
    }

    /// A value as one would write it in an inch shop.
    #[must_use]
    pub const fn inch_example(&self) -> &'static str {
        self.examples[1]
    }

    /// The value that a text says, in the trade's metric unit, checked against the range.
    #[cfg(feature = "capi")]
    pub(crate) fn value_of_text(&self, text: &str) -> Result<f64, Error> {
        let value = text::read(self, text)?;
        match self.accepts(value) {
            // Adding zero makes of -0 the one zero.
            true => Ok(value + 0.0),
            false => Err(self.refuse(value).told_as(text)),
        }
    }

    /// True for a value in the plausible range, given in the trade's metric unit.
    #[must_use]
    #[inline]
    pub const fn accepts(&self, value: f64) -> bool {
        // Not `&&`: a loop without a branch in it runs several rows at once.
        ((value >= self.least) & (value <= self.largest)) | (self.zero & (value == 0.0))
    }

    /// What to write instead of a plain number that is out of range.
    fn remedy_of_number(&self, value: f64) -> String {
        let (least, largest) = (
            text::plain_number(self.least),
            text::plain_number(self.largest),
        );
        // A share of more than all is mostly one in percent.
        if let Some(share) = self.share_of_percent(value).filter(|_| value >= 2.0) {
            return share;
        }
        if value == 0.0 && self.name.starts_with("price") {
            return String::from("write a small price such as 0.01 for what costs next to nothing");
        }
        format!("write a number from {least} to {largest}, without a unit")
    }

    /// What to write instead of a share in percent.
    fn share_of_percent(&self, value: f64) -> Option<String> {
        let (number, share) = (text::plain_number(value), text::plain_number(value / 100.0));
        let is_share = self.largest <= 1.0 && self.least >= 0.0 && self.accepts(value / 100.0);
        is_share.then(|| format!("write {share} for {number} %"))
    }

    /// A value in the trade's metric unit, in words.
    fn shown(&self, value: f64) -> String {
        let number = text::plain_number(value);
        match self.kind.units()[0].text() {
            "" => number,
            unit => format!("{number} {unit}"),
        }
    }

    /// The range in words: `0.1 mm to 5000 mm`, `0.005 mm to 50 mm, or 0`.
    pub(crate) fn range(&self) -> String {
        let apart = self.zero && self.least > 0.0;
        format!(
            "{} to {}{}",
            self.shown(self.least),
            self.shown(self.largest),
            if apart { ", or 0" } else { "" }
        )
    }

    /// What to do about a value of a unit that is out of range.
    fn remedy_of_value(&self, value: f64) -> &'static str {
        let of = |kind: &'static Kind| std::ptr::eq(self.kind, kind);
        let length = of(&unit::kind_rows::Length) || of(&unit::kind_rows::Feed);
        if value == 0.0 {
            "write a value above zero"
        } else if value < 0.0 && self.least >= 0.0 {
            "check the sign: it is never negative"
        } else if length && value < self.least && self.accepts(value * 1000.0) {
            "check the unit: is the value in metres, or is it another quantity?"
        } else {
            "check the unit: is the value in another one, or is it another quantity?"
        }
    }

    #[cold]
    pub(crate) fn refuse(&self, value: f64) -> Error {
        if !value.is_finite() {
            return Error::new(
                ErrorKind::NotFinite,
                self.name,
                value.to_string(),
                format!("a finite {}", self.kind.name()),
                "give a number; an empty or failed cell often arrives as NaN",
            );
        }
        let remedy = match self.kind.units()[0].text() {
            "" => self.remedy_of_number(value),
            _ => self.remedy_of_value(value).to_owned(),
        };
        Error::new(
            ErrorKind::OutOfRange,
            self.name,
            self.shown_beyond(value),
            format!("{} from {}", self.what, self.range()),
            remedy,
        )
    }

    /// A value that is out of range: so near to its end that both would be told alike, as such.
    fn shown_beyond(&self, value: f64) -> String {
        const HAIR: f64 = 1e-6;
        let near = |end: f64| (value - end).abs() <= HAIR * end.abs();
        if value > self.largest && near(self.largest) {
            format!("a hair more than {}", self.shown(self.largest))
        } else if value < self.least && near(self.least) {
            format!("a hair less than {}", self.shown(self.least))
        } else {
            self.shown(value)
        }
    }
}

mod sealed {
    pub trait Sealed {}
}

/// What every quantity of this crate has; sealed.
///
/// For generic code over quantities: columns, tests, menus. Ordinary code uses the methods of the
/// types themselves.
pub trait Quantity: sealed::Sealed + Copy + fmt::Display + std::str::FromStr<Err = Error> {
    /// What is written about the type.
    const ROW: &'static Row;

    /// From a value in the trade's metric unit.
    ///
    /// # Errors
    /// Outside the range of the row, or not finite.
    #[inline]
    fn from_trade(value: f64) -> Result<Self, Error> {
        Self::accepted(value).ok_or_else(|| Self::ROW.refuse(value))
    }

    /// The same without the words of a refusal: for loops over many rows.
    ///
    /// ```
    /// use turnwright::{Diameter, Quantity};
    /// assert!(Diameter::accepted(40.0).is_some());
    /// assert!(Diameter::accepted(f64::NAN).is_none());
    /// ```
    fn accepted(value: f64) -> Option<Self>;

    /// The value in the trade's metric unit.
    fn trade(self) -> f64;

    /// Text in the unit of `system`: exact in metric, the nearest in inch.
    fn text(self, system: Units) -> String {
        text::Exact {
            kind: Self::ROW.kind,
            value: self.trade(),
            system,
        }
        .to_string()
    }

    /// Rounded as a person reads it at the machine (3 decimals of a millimetre, 4 of an inch), to be
    /// printed.
    fn people(self, system: Units) -> impl fmt::Display {
        text::People {
            kind: Self::ROW.kind,
            value: self.trade(),
            system,
        }
    }
}

macro_rules! quantities {
    ($(
        $(#[$doc:meta])*
        $t:ident = $code:literal $name:literal $what:literal $kind:ident $least:literal to $largest:literal $(or $zero:literal)? [$example:literal $inch_example:literal]
    )*) => { $(
        $(#[$doc])*
        ///
        /// # Range
        #[doc = concat!("Plausible, and checked where a value comes in: ", $least, " to ", $largest, " in the trade's metric unit", $(", or ", $zero,)? ".")]
        ///
        /// # Example
        /// ```
        #[doc = concat!("use turnwright::", stringify!($t), ";")]
        #[doc = concat!("let metric: ", stringify!($t), " = \"", $example, "\".parse()?;")]
        #[doc = concat!("assert_eq!(metric.to_string(), \"", $example, "\");")]
        #[doc = concat!("let inch: ", stringify!($t), " = \"", $inch_example, "\".parse()?;")]
        #[doc = concat!("assert!(\"1 candela\".parse::<", stringify!($t), ">().is_err());")]
        /// # Ok::<(), turnwright::Error>(())
        /// ```
        #[derive(Clone, Copy, PartialEq, PartialOrd)]
        pub struct $t(f64);

        impl sealed::Sealed for $t {}

        impl Quantity for $t {
            const ROW: &'static Row = &Row {
                name: $name,
                what: $what,
                kind: &unit::kind_rows::$kind,
                least: $least,
                largest: $largest,
                zero: quantities!(@zero $($zero)?),
                code: $code,
                examples: [$example, $inch_example],
            };

            #[inline]
            fn accepted(value: f64) -> Option<Self> {
                // Adding zero makes of -0 the one zero, so that equal values are equal texts.
                let row = Self::ROW;
                let value = if row.accepts(0.0) { value + 0.0 } else { value };
                row.accepts(value).then_some(Self(value))
            }

            #[inline]
            fn trade(self) -> f64 {
                self.0
            }
        }

        impl $t {
            /// From a value in `unit`.
            ///
            /// # Errors
            /// Outside the range of the type, or not finite.
            #[inline]
            pub fn new<U: unit::UnitOf<unit::kind::$kind>>(value: f64) -> Result<Self, Error> {
                Self::from_trade(U::UNIT.to_trade(value, 1.0))
            }

            /// The value in `unit`.
            #[must_use]
            #[inline]
            pub fn get<U: unit::UnitOf<unit::kind::$kind>>(self) -> f64 {
                U::UNIT.from_trade(self.0)
            }

            /// A constant of this crate, or a kernel's result, in the trade's unit.
            #[inline]
            #[allow(dead_code)]
            pub(crate) const fn computed_trade(value: f64) -> Self {
                debug_assert!(value.is_finite());
                Self(value + 0.0)
            }
        }

        impl Recorded for $t {
            fn figure(&self) -> Option<(i32, f64)> {
                Some((Self::ROW.code, self.0))
            }
        }

        kind_methods! { $kind $t }

        impl Eq for $t {}

        #[allow(clippy::derive_ord_xor_partial_ord)]
        impl Ord for $t {
            fn cmp(&self, other: &Self) -> std::cmp::Ordering {
                self.0.total_cmp(&other.0)
            }
        }

        impl std::str::FromStr for $t {
            type Err = Error;
            fn from_str(text: &str) -> Result<Self, Error> {
                let value = text::read(Self::ROW, text)?;
                Self::from_trade(value).map_err(|error| error.told_as(text))
            }
        }

        impl fmt::Display for $t {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                if f.width().is_some() || f.precision().is_some() {
                    return f.pad(&self.text(Units::Metric));
                }
                text::Exact {
                    kind: Self::ROW.kind,
                    value: self.trade(),
                    system: Units::Metric,
                }
                .fmt(f)
            }
        }

        impl fmt::Debug for $t {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                write!(f, "{}({self})", stringify!($t))
            }
        }

        #[cfg(feature = "serde")]
        impl serde::Serialize for $t {
            fn serialize<S: serde::Serializer>(&self, s: S) -> Result<S::Ok, S::Error> {
                serial::write(*self, s)
            }
        }

        #[cfg(feature = "serde")]
        impl<'de> serde::Deserialize<'de> for $t {
            fn deserialize<D: serde::Deserializer<'de>>(d: D) -> Result<Self, D::Error> {
                serial::read(d)
            }
        }

        #[cfg(feature = "proptest")]
        impl proptest::arbitrary::Arbitrary for $t {
            type Parameters = ();
            type Strategy = proptest::strategy::BoxedStrategy<Self>;
            fn arbitrary_with((): ()) -> Self::Strategy {
                strategy::whole_range::<Self>()
            }
        }
    )*

        /// The rows of all quantities, in the order of this page.
        ///
        /// ```
        /// let names: Vec<_> = turnwright::quantity::rows().iter().map(|row| row.name()).collect();
        /// assert!(names.contains(&"diameter") && names.contains(&"radius"));
        /// ```
        #[must_use]
        pub fn rows() -> &'static [&'static Row] {
            &[ $( <$t as Quantity>::ROW ),* ]
        }

        /// Calls `$m!` with the name of every quantity: for tests that go through all of them.
        #[doc(hidden)]
        #[macro_export]
        macro_rules! for_each_quantity {
            ($m:ident) => { $( $m! { $t } )* };
        }
    };
    (@zero) => { false };
    (@zero $zero:literal) => { true };
}

quantities! {
    /// Diameter of the work or of a hole.
    Diameter = 1 "diameter" "a diameter" Length 0.1 to 5000.0 ["40 mm" "1 1/2 in"]
    /// Radius of the work: half of its [`Diameter`].
    Radius = 2 "radius" "a radius" Length 0.05 to 2500.0 ["20 mm" "3/4 in"]
    /// Depth of cut a_p (ISO 3002-3, back engagement): radial when turning along the axis, so that
    /// the diameter falls by twice as much.
    DepthOfCut = 3 "depth_of_cut" "a depth of cut" Length 0.001 to 100.0 ["0.5 mm" "0.02 in"]
    /// Corner radius r_eps of the tool (ISO 3002-1). Zero is a sharp corner.
    CornerRadius = 4 "corner_radius" "a corner radius" Length 0.005 to 50.0 or 0.0 ["0.8 mm" "1/32 in"]
    /// Radius r_n to which the cutting edge itself is rounded (ISO 3002-1).
    EdgeRadius = 5 "edge_radius" "a radius of the rounded cutting edge" Length 0.0001 to 0.5 ["0.02 mm" "0.0008 in"]
    /// Feed f: length per revolution (ISO 3002-3).
    Feed = 6 "feed" "a feed per revolution" Feed 0.001 to 10.0 ["0.2 mm/rev" "0.008 in/rev"]
    /// Feed rate v_f: length per time (ISO 3002-1, feed speed).
    FeedRate = 7 "feed_rate" "a feed rate" FeedRate 0.0001 to 100000.0 ["100 mm/min" "4 in/min"]
    /// Cutting speed v_c: of the edge over the work (ISO 3002-1).
    CuttingSpeed = 8 "cutting_speed" "a cutting speed" CuttingSpeed 0.1 to 10000.0 ["90 m/min" "300 ft/min"]
    /// Spindle speed n: revolutions per time (ISO 3002-3, rotational frequency).
    SpindleSpeed = 9 "spindle_speed" "a spindle speed" SpindleSpeed 0.1 to 100000.0 ["640 rpm" "640 1/min"]
    /// Specific cutting force k_c1.1: for a chip of 1 mm by 1 mm (Kienzle).
    SpecificCuttingForce = 10 "specific_force" "a specific cutting force" Stress 10.0 to 20000.0 ["1900 MPa" "275000 psi"]
    /// Young's modulus E of the work.
    YoungsModulus = 11 "youngs_modulus" "a Young's modulus" Modulus 0.1 to 1500.0 ["210 GPa" "30000 ksi"]
    /// Main force F_c, along the cutting speed (ISO 3002-4, cutting force).
    MainForce = 12 "main_force" "a main force" Force 0.0 to 1000000.0 ["1200 N" "270 lbf"]
    /// Feed force F_f, against the feed (ISO 3002-4).
    FeedForce = 13 "feed_force" "a feed force" Force 0.0 to 1000000.0 ["400 N" "90 lbf"]
    /// Passive force F_p, across the feed (ISO 3002-4, back force): it bends the bar.
    /// Negative where a long edge beyond 90 deg pulls the work in.
    PassiveForce = 14 "passive_force" "a passive force" Force -1000000.0 to 1000000.0 ["150 N" "34 lbf"]
    /// Power.
    Power = 15 "power" "a power" Power 0.0 to 1000.0 ["1.5 kW" "2 hp"]
    /// Torque.
    Torque = 16 "torque" "a torque" Torque 0.0 to 1000000.0 ["28.8 N m" "20 lbf ft"]
    /// Stiffness of a support: force per displacement.
    Stiffness = 17 "stiffness" "a stiffness" Stiffness 0.001 to 100000.0 ["40 kN/mm" "100000 lbf/in"]
    /// Stiffness of a holding against tilting: torque per angle.
    RotationalStiffness = 18 "rotational_stiffness" "a rotational stiffness" RotationalStiffness 0.001 to 100000.0 ["150 kN m/rad" "1000000 lbf in/rad"]
    /// Mass density.
    Density = 19 "density" "a density" Density 100.0 to 25000.0 ["7850 kg/m3" "0.284 lb/in3"]
    /// Coefficient of linear thermal expansion.
    ThermalExpansion = 20 "expansion" "a thermal expansion" Expansion 0.1 to 500.0 ["11.5 um/(m K)" "11.5e-6 1/K"]
    /// Specific heat.
    SpecificHeat = 21 "specific_heat" "a specific heat" SpecificHeat 50.0 to 10000.0 ["470 J/(kg K)" "0.47 kJ/(kg K)"]
    /// Duration of a cut or a step.
    Duration = 22 "time" "a time" Time 0.0 to 10000000.0 ["90 s" "1.5 min"]
    /// Tool cutting edge angle kappa_r, between the major edge and the feed direction (ISO 3002-1).
    CuttingEdgeAngle = 23 "cutting_edge_angle" "a cutting edge angle" Angle 1.0 to 150.0 ["95 deg" "1.5 rad"]
    /// Minor cutting edge angle kappa_r' (ISO 3002-1).
    MinorCuttingEdgeAngle = 24 "minor_cutting_edge_angle" "a minor cutting edge angle" Angle 0.1 to 150.0 ["10 deg" "0.2 rad"]
    /// Orthogonal rake gamma_o (ISO 3002-1); negative leans forward.
    RakeAngle = 25 "rake_angle" "a rake angle" Angle -45.0 to 60.0 ["6 deg" "0.1 rad"]
    /// Arithmetic mean height Ra of the roughness profile (ISO 21920-2).
    Ra = 26 "ra" "a roughness Ra" Roughness 0.001 to 1000.0 ["1.6 um" "63 uin"]
    /// Root mean square height Rq of the roughness profile (ISO 21920-2).
    Rq = 27 "rq" "a roughness Rq" Roughness 0.001 to 1000.0 ["1.9 um" "75 uin"]
    /// Maximum height Rz of the roughness profile, a mean over sampling lengths (ISO 21920-2).
    Rz = 28 "rz" "a roughness Rz" Roughness 0.001 to 5000.0 ["6.3 um" "250 uin"]
    /// Total height Rt of the roughness profile over the evaluation length (ISO 21920-2).
    Rt = 29 "rt" "a roughness Rt" Roughness 0.001 to 5000.0 ["6.3 um" "250 uin"]
    /// Length along the axis: of stock, of a part, of a section.
    WorkLength = 30 "length" "a length along the axis" Length 0.01 to 20000.0 ["120 mm" "4 3/4 in"]
    /// Length by which the bar stands out of the jaws.
    Overhang = 31 "overhang" "an overhang" Length 0.5 to 20000.0 ["85 mm" "3 1/4 in"]
    /// Travel of a slide.
    Travel = 32 "travel" "a slide travel" Length 0.0 to 10000.0 ["5 mm" "0.2 in"]
    /// What one mark of a dial says, in the dial's own reading.
    Division = 33 "division" "a dial division" Length 0.0001 to 10.0 ["0.02 mm" "0.001 in"]
    /// What a dial shows: the figure engraved at a mark.
    Engraved = 34 "shows" "what a dial shows" Length -100000.0 to 100000.0 ["1.8 mm" "0.075 in"]
    /// Position along the axis: zero on the finished face, negative towards the headstock.
    Position = 35 "z" "a position along the axis" Length -20000.0 to 20000.0 ["-70 mm" "-2 3/4 in"]
    /// Displacement of the bar under load, positive away from the tool.
    Deflection = 36 "deflection" "a deflection" Length -1000.0 to 1000.0 ["0.02 mm" "0.001 in"]
    /// Difference of two diameters, such as true minus wanted.
    DiameterError = 37 "diameter_error" "a difference of diameters" Length -1000.0 to 1000.0 ["0.04 mm" "0.002 in"]
    /// Width of a tolerance zone.
    Tolerance = 38 "tolerance" "the width of a tolerance zone" Length 0.0001 to 100.0 ["0.033 mm" "0.001 in"]
    /// Uncertainty or largest error of an instrument.
    SizeUncertainty = 39 "instrument_uncertainty" "an uncertainty of size" Length 0.00001 to 10.0 ["0.004 mm" "0.0002 in"]
    /// Nominal thickness of cut h (ISO 3002-3), and the least chip thickness.
    ChipThickness = 40 "chip_thickness" "a thickness of cut" Length 0.0001 to 10.0 ["0.2 mm" "0.008 in"]
    /// Nominal width of cut b (ISO 3002-3).
    ChipWidth = 41 "chip_width" "a width of cut" Length 0.001 to 500.0 ["2 mm" "0.08 in"]
    /// Rate of metal removal.
    RemovalRate = 42 "removal_rate" "a removal rate" RemovalRate 0.0 to 1000000.0 ["30 cm3/min" "2 in3/min"]
    /// Rate at which a hand turns a wheel.
    HandwheelRate = 43 "handwheel" "a handwheel rate" HandwheelRate 0.0 to 10000.0 ["2.5 turns/min" "2 turns/min"]
    /// Exponent m_c of the specific cutting force (Kienzle).
    ForceExponent = 44 "exponent" "an exponent of the specific cutting force" Number 0.0 to 0.9 ["0.17" "0.25"]
    /// Efficiency of the drive, from motor to spindle.
    Efficiency = 45 "efficiency" "an efficiency" Number 0.05 to 1.0 ["0.75" "0.8"]
    /// Force normal to the edge over the main force, K_n.
    NormalRatio = 46 "normal_ratio" "a ratio of normal to main force" Number 0.05 to 3.0 ["0.5" "0.6"]
    /// Overhang over diameter, L/d.
    Slenderness = 47 "length_over_diameter" "an overhang over diameter" Number 0.0001 to 100000.0 ["2.5" "4"]
    /// Brinell hardness, HB.
    BrinellHardness = 48 "hardness_hb" "a Brinell hardness" Number 1.0 to 1000.0 ["190" "210"]
    /// Rise of temperature above 20 degC, or between two moments; negative while cooling.
    TemperatureRise = 49 "rise" "a rise of temperature" TemperatureRise -500.0 to 2000.0 ["5 K" "9 F"]
    /// Growth of a length or a diameter by heat; negative when it shrinks.
    ThermalGrowth = 50 "growth" "a growth by heat" Length -100.0 to 100.0 ["0.012 mm" "0.0005 in"]
    /// Ratio of a taper, the x of 1:x: length over the difference of the diameters.
    TaperRatio = 51 "taper_ratio" "a ratio of a taper, the x of 1:x" Number 0.01 to 100000.0 ["20" "24"]
    /// Half of the angle of a taper, between its side and its axis.
    HalfAngle = 52 "half_angle" "half the angle of a taper" Angle 0.0001 to 89.0 ["2.5 deg" "0.04 rad"]
    /// Whole angle of a taper, between its two sides.
    IncludedAngle = 53 "included_angle" "the included angle of a taper" Angle 0.0002 to 178.0 ["5 deg" "0.08 rad"]
    /// Angle of the compound slide to the axis of the lathe.
    CompoundAngle = 54 "compound_angle" "an angle of the compound slide to the axis" Angle 0.0001 to 90.0 ["5.7 deg" "0.1 rad"]
    /// How far the tailstock stands off the axis of the lathe, towards the operator.
    SetOver = 55 "set_over" "a set-over of the tailstock" Length -500.0 to 500.0 ["3.75 mm" "0.15 in"]
    /// Life of a cutting edge: time in cut until it is worn out.
    ToolLife = 56 "life" "a tool life" Time 0.1 to 10000000.0 ["900 s" "60 min"]
    /// Exponent n of the tool life, v T^n = C (Taylor).
    LifeExponent = 57 "life_exponent" "an exponent of the tool life" Number 0.01 to 2.0 ["0.125" "0.25"]
    /// Constant C of the tool life, v T^n = C (Taylor): the cutting speed for a life of one minute.
    LifeConstant = 58 "life_constant" "a constant of the tool life" CuttingSpeed 0.1 to 1000000.0 ["70 m/min" "230 ft/min"]
    /// Force along the axis, positive where the centre is pressed into the work.
    AxialForce = 59 "axial_force" "a force along the axis" Force -10000000.0 to 10000000.0 ["800 N" "180 lbf"]
    /// Stiffness along the axis of what stands at the end of the bar.
    AxialStiffness = 60 "axial_stiffness" "a stiffness along the axis" Stiffness 0.001 to 100000.0 ["20 kN/mm" "100000 lbf/in"]
    /// Height of the tool's tip above the axis of the lathe; negative below it.
    ToolHeight = 61 "tool_height" "a height of the tool above the axis" Length -100.0 to 100.0 ["-0.2 mm" "0.01 in"]
    /// First critical speed of the bar: the spindle speed at which it whirls.
    CriticalSpeed = 62 "first_critical_speed" "a critical speed" SpindleSpeed 0.1 to 1000000000.0 ["2400 rpm" "2400 1/min"]
    /// Unevenness of a feed: standard deviation over mean of the feeds of the single turns.
    FeedUnevenness = 63 "feed_unevenness" "an unevenness of the feed" Number 0.0 to 1.0 ["0.2" "0.3"]
    /// Width of the blade of a grooving or parting tool.
    BladeWidth = 64 "width" "a width of a blade" Length 0.05 to 100.0 ["3 mm" "1/8 in"]
    /// Factor by which a circumstance changes a force.
    ForceFactor = 65 "force_factor" "a factor of the force" Number 0.05 to 20.0 ["1.09" "1.3"]
    /// Share by which a force scatters, either way.
    ForceScatter = 66 "force_scatter" "a scatter of the force" Number 0.0 to 0.95 ["0.3" "0.25"]
    /// Skewness Rsk of the roughness profile (ISO 21920-2); positive where narrow peaks stand up.
    Rsk = 67 "rsk" "a skewness Rsk" Number -1000.0 to 1000.0 ["0.64" "-0.5"]
    /// Kurtosis Rku of the roughness profile (ISO 21920-2).
    Rku = 68 "rku" "a kurtosis Rku" Number 1.0 to 1000000.0 ["2.14" "3"]
    /// Mean width RSm of the profile elements (ISO 21920-2).
    Rsm = 69 "rsm" "a mean width RSm" Length 0.0001 to 1000.0 ["0.2 mm" "0.008 in"]
    /// Long-wave cut-off lambda_c of the profile filter (ISO 21920-3), the sampling length.
    CutOff = 70 "cut_off" "a cut-off" Length 0.001 to 100.0 ["0.8 mm" "0.03 in"]
    /// Short-wave cut-off lambda_s of the profile filter (ISO 21920-3).
    ShortCutOff = 71 "short_cut_off" "a short-wave cut-off" Length 0.0001 to 1.0 ["0.0025 mm" "0.0001 in"]
    /// Moment that bends the bar.
    BendingMoment = 72 "bending_moment" "a bending moment" Torque -1000000.0 to 1000000.0 ["4 N m" "3 lbf ft"]
    /// Distance of the centre of mass from the axis of turning.
    Eccentricity = 73 "eccentricity" "an eccentricity" Length 0.0 to 100.0 ["0.1 mm" "0.004 in"]
    /// Specific cutting force k_c at the thickness of one chip (Kienzle).
    SpecificForceAtChip = 74 "specific_force_at_chip" "a specific cutting force at one thickness of cut" Stress 10.0 to 1000000.0 ["2300 MPa" "0.8 hp/(in3/min)"]
    /// Price, in the asker's currency.
    Price = 75 "price" "a price" Number 0.0 to 1000000000.0 ["12.5" "40"]
    /// Price of one hour of machine and operator, in the asker's currency.
    PricePerHour = 76 "price_per_hour" "a price per hour" Number 0.001 to 1000000000.0 ["60" "80"]
    /// Mass.
    Mass = 77 "mass" "a mass" Mass 0.00001 to 1000000.0 ["3.4 kg" "7.5 lb"]
    /// Share of the cutting power that stays in the work as heat.
    HeatShare = 78 "heat_share" "a share of the heat" Number 0.0 to 1.0 ["0.1" "0.2"]
    /// Cross section of the uncut chip A_D (ISO 3002-3).
    ChipArea = 79 "chip_area" "a cross section of the cut" Area 0.000000001 to 10000.0 ["0.4 mm2" "0.0006 in2"]
    /// Length of the cutting edge that is in the cut.
    EdgeLength = 80 "edge_length" "a length of the edge in cut" Length 0.000001 to 1000.0 ["2.5 mm" "0.1 in"]
    /// Share of a set depth that a springing bar leaves standing.
    SpringShare = 81 "spring_share" "a share that the spring leaves" Number 0.0 to 1.0 ["0.05" "0.1"]
    /// Angle of friction beta between chip and rake face: its tangent is the coefficient of friction.
    FrictionAngle = 82 "friction_angle" "an angle of friction" Angle 0.0 to 89.0 ["30 deg" "0.5 rad"]
    /// Distance between neighbouring points of a profile.
    PointSpacing = 83 "spacing" "a spacing of the points of a profile" Length 0.000001 to 1.0 ["0.0005 mm" "0.00002 in"]
    /// Share of a wave that a filter lets through.
    Transmission = 84 "transmission" "a transmission of a filter" Number 0.0 to 1.0 ["0.5" "0.0625"]
    /// Mean pressure of a centre on its seat.
    MeanPressure = 90 "mean_pressure" "a mean pressure" Stress 0.0 to 100000.0 ["8 MPa" "1200 psi"]
    /// Coefficient of friction.
    Friction = 91 "friction" "a coefficient of friction" Number 0.0 to 2.0 ["0.15" "0.2"]
    /// Force with which all jaws together press on the work.
    GripForce = 92 "grip_force" "a grip force of all jaws together" Force 0.0 to 10000000.0 ["24000 N" "5000 lbf"]
    /// Width or height of the shank of a tool.
    ShankSize = 93 "shank_size" "a width or height of a shank" Length 0.5 to 500.0 ["16 mm" "5/8 in"]
    /// Scatter of tool lives: standard deviation of their natural logarithms.
    LifeScatter = 94 "life_scatter" "a scatter of tool lives" Number 0.0 to 100.0 ["0.2" "0.35"]
    /// Angle of the compound slide to the cross slide.
    CrossSlideAngle = 95 "compound_angle_from_cross_slide" "an angle of the compound slide to the cross slide" Angle 0.0 to 90.0 ["84.3 deg" "1.4 rad"]
    /// Displacement of the bar along the cutting speed: the main force presses it down.
    TangentialDeflection = 96 "tangential_deflection" "a deflection along the cutting speed" Length -1000.0 to 1000.0 ["0.06 mm" "0.002 in"]
    /// Upper limit deviation (ISO 286-1: es of a shaft, ES of a hole): largest size less nominal size.
    UpperDeviation = 85 "upper_deviation" "an upper limit deviation" Length -10.0 to 10.0 ["-0.025 mm" "0.001 in"]
    /// Lower limit deviation (ISO 286-1: ei of a shaft, EI of a hole): smallest size less nominal size.
    LowerDeviation = 86 "lower_deviation" "a lower limit deviation" Length -10.0 to 10.0 ["-0.041 mm" "0.0004 in"]
    /// Clearance between a hole and a shaft: hole less shaft; negative, an interference.
    Clearance = 87 "clearance" "a clearance" Length -20.0 to 20.0 ["0.025 mm" "-0.001 in"]
    /// Standard uncertainty of a size (JCGM 100: u): a standard deviation, not an expanded uncertainty.
    StandardUncertainty = 88 "standard_uncertainty" "a standard uncertainty of size" Length 0.000000001 to 10.0 ["0.0023 mm" "0.0001 in"]
    /// Probability, from 0 to 1.
    Probability = 89 "probability" "a probability" Number 0.0 to 1.0 ["0.95" "0.5"]
    /// Level of confidence of an interval (JCGM 100: p).
    Confidence = 97 "confidence" "a level of confidence" Number 0.5 to 0.999999999 ["0.95" "0.9"]
    /// Coverage factor (JCGM 100: k): expanded over standard uncertainty.
    CoverageFactor = 98 "coverage_factor" "a coverage factor" Number 0.5 to 1000000.0 ["2" "1.96"]
    /// Degrees of freedom of a standard uncertainty (JCGM 100: nu); whole only where it is counted.
    DegreesOfFreedom = 99 "degrees_of_freedom" "a number of degrees of freedom" Number 1.0 to 1000000000000.0 ["9" "16.7"]
    /// Sensitivity coefficient (JCGM 100: c): change of the size over change of the component.
    Sensitivity = 100 "sensitivity" "a sensitivity coefficient" Number -1000000.0 to 1000000.0 ["2" "1"]
    /// Correlation coefficient of two components (JCGM 100: r).
    Correlation = 101 "correlation" "a correlation coefficient" Number -1.0 to 1.0 ["0.6" "1"]
    /// Capability of a process (Cp): width of the zone over six standard deviations.
    Capability = 102 "capability" "a capability" Number 0.0 to 1000000000000.0 ["1.33" "1"]
    /// Capability of a process with its mean where it is (Cpk): distance of the mean to the nearer limit over three standard deviations.
    CapabilityIndex = 103 "capability_index" "a capability index" Number -1000000000000.0 to 1000000000000.0 ["1" "1.33"]
    /// Half the width of a distribution that has ends (JCGM 100: a).
    HalfWidth = 104 "half_width" "half the width of a distribution" Length 0.000000001 to 10.0 ["0.004 mm" "0.0002 in"]
    /// Smallest step that an instrument shows: the whole width of what one reading stands for.
    Resolution = 105 "resolution" "a resolution" Length 0.00000001 to 10.0 ["0.01 mm" "0.001 in"]
    /// Price of a lost part, in the asker's currency.
    PriceScrap = 106 "price_scrap" "a price of scrap" Number 0.000000001 to 1000000000.0 ["20" "12.5"]
    /// Price of another cut on a part that came out with metal left, in the asker's currency.
    PriceRework = 107 "price_rework" "a price of rework" Number 0.000000001 to 1000000000.0 ["2" "1"]
    /// Price of one measuring stop, in the asker's currency.
    PriceStop = 108 "price_stop" "a price of a measuring stop" Number 0.000000001 to 1000000000.0 ["0.5" "1"]
    /// Run-out of a bar or part: the whole travel of an indicator over one turn, twice the eccentricity.
    RunOut = 109 "run_out" "a run-out" Length 0.000000001 to 100.0 or 0.0 ["0.3 mm" "0.01 in"]
    /// Thickness of the skin of a hot-rolled, forged or cast bar, which the first cut must go under.
    SkinThickness = 110 "skin_thickness" "a thickness of the skin" Length 0.000000001 to 100.0 or 0.0 ["0.5 mm" "0.02 in"]
    /// Leg of a chamfer of 45 degrees, along the axis and across it alike.
    ChamferLeg = 111 "chamfer_leg" "a leg of a chamfer" Length 0.000000001 to 1000.0 ["1 mm" "1/32 in"]
}

/// A size in millimetres to 1e-9 mm: sizes compare after this rounding, so that the last bits of
/// a sum of divisions do not decide whether a mark lies on a limit.
#[must_use]
pub(crate) fn round_size(mm: f64) -> f64 {
    (mm * 1e9).round() / 1e9
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn text_is_understood_in_every_spelling_of_the_trade() {
        for (text, mm) in [
            ("40 mm", 40.0),
            ("40mm", 40.0),
            (" 40  mm ", 40.0),
            ("1 1/2 in", 38.1),
            ("1-1/2in", 38.1),
            ("5/8 in", 15.875),
            ("1.5\"", 38.1),
            ("4e1 mm", 40.0),
            ("+40 mm", 40.0),
            ("400 thou", 10.16),
        ] {
            assert_eq!(text.parse::<Diameter>().map(Diameter::mm), Ok(mm), "{text}");
        }
        for text in ["60 kN/mm", "60 kN / mm", "60000 N/mm"] {
            assert_eq!(
                text.parse::<Stiffness>().map(Stiffness::kn_per_mm),
                Ok(60.0),
                "{text}"
            );
        }
        for text in [
            "40 kN m/rad",
            "40 kN*m/rad",
            "40 kN\u{b7}m/rad",
            "40 kNm/rad",
        ] {
            assert_eq!(
                text.parse::<RotationalStiffness>()
                    .map(RotationalStiffness::knm_per_rad),
                Ok(40.0),
                "{text}"
            );
        }
        assert_eq!(
            "180 1/min".parse::<SpindleSpeed>().map(SpindleSpeed::rpm),
            Ok(180.0)
        );
        assert_eq!(
            "7850 kg/m^3".parse::<Density>().map(Density::kg_per_m3),
            Ok(7850.0)
        );
        assert_eq!("1.6 \u{b5}m".parse::<Ra>().map(Ra::um), Ok(1.6));
        assert_eq!("1.6 \u{3bc}m".parse::<Ra>().map(Ra::um), Ok(1.6));
        assert_eq!("63 uin".parse::<Ra>().map(Ra::um), Ok(1.6002));
    }

    #[test]
    fn bad_text_is_refused_with_a_remedy() {
        for (text, kind, remedy) in [
            ("40", ErrorKind::MissingUnit, "40 mm"),
            ("0,2 mm", ErrorKind::Unreadable, "0.2"),
            ("NaN mm", ErrorKind::NotFinite, "number"),
            ("inf mm", ErrorKind::NotFinite, "number"),
            ("-inf mm", ErrorKind::NotFinite, "number"),
            ("40 rpm", ErrorKind::WrongUnit, "spindle speed"),
            ("40 mn", ErrorKind::WrongUnit, "mm"),
            ("", ErrorKind::Unreadable, "number"),
            ("mm", ErrorKind::Unreadable, "number"),
            ("1/0 in", ErrorKind::Unreadable, "fraction"),
            ("0.04 mm", ErrorKind::OutOfRange, "metres"),
            ("-40 mm", ErrorKind::OutOfRange, "sign"),
            ("1e999 mm", ErrorKind::Unreadable, "number"),
        ] {
            let error = text.parse::<Diameter>().unwrap_err();
            assert_eq!(error.kind(), kind, "{text}: {error}");
            assert!(error.remedy().contains(remedy), "{text}: {error}");
        }
        assert_eq!(
            "5/8 rpm".parse::<SpindleSpeed>().unwrap_err().kind(),
            ErrorKind::Unreadable
        );
        assert_eq!(
            "1 m m".parse::<Diameter>().unwrap_err().kind(),
            ErrorKind::WrongUnit
        );
    }

    #[test]
    fn minus_zero_is_zero() {
        assert_eq!(
            Position::from_mm(-0.0).map(|z| z.to_string()),
            Ok(String::from("0 mm"))
        );
    }

    #[test]
    fn an_inch_grid_prints_as_typed() {
        for thousandths in 100..20_000 {
            let typed = f64::from(thousandths) / 1000.0;
            let d = Diameter::from_inch(typed).unwrap();
            assert_eq!(d.text(Units::Inch), format!("{typed} in"));
        }
    }

    #[test]
    fn people_read_no_minus_zero() {
        assert_eq!(
            Deflection::from_mm(-0.00001)
                .unwrap()
                .people(Units::Metric)
                .to_string(),
            "0.00 mm"
        );
    }
}
