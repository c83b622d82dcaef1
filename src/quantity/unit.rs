//! Every unit of the trade, once: its text, the spellings understood, its exact factor.
//!
//! A unit belongs to a [`Kind`]; the first unit of a kind is the trade's metric unit, in which the
//! quantities of that kind are stored. A value in another unit is `value * up / down` of it. Up and
//! down are whole or exact decimals, so that `5/8 in` becomes 15.875 mm and nothing near it.
//!
//! Factors: NIST SP 811, appendix B (inch, pound and standard gravity exact by definition), from
//! memory; the rest follows from the definitions.

/// One unit: its text and its factor to the trade's metric unit of its kind.
///
/// ```
/// use turnwright::unit;
/// let inch = unit::find("length", "in").unwrap();
/// assert_eq!(inch.text(), "in");
/// assert_eq!(inch.to_trade(1.0, 1.0), 25.4);
/// ```
#[derive(Debug, PartialEq)]
pub struct Unit {
    text: &'static str,
    spellings: &'static [&'static str],
    up: f64,
    down: f64,
    code: i32,
    marker: &'static str,
}

impl Unit {
    /// The text that is printed for this unit.
    #[must_use]
    pub const fn text(&self) -> &'static str {
        self.text
    }

    /// True of a unit that who works in inch would use for its kind; not of one that both use.
    #[cfg(feature = "capi")]
    pub(crate) fn is_inch(&self, kind: &Kind) -> bool {
        const PARTS: [&str; 8] = ["in", "ft", "thou", "lbf", "psi", "ksi", "hp", "lb"];
        let of_inch = kind.unit(Units::Inch);
        let told_apart = !std::ptr::eq(of_inch, kind.unit(Units::Metric));
        told_apart
            && (self.code == of_inch.code
                || self
                    .text
                    .split(|c: char| !c.is_ascii_alphabetic())
                    .any(|part| PARTS.contains(&part)))
    }

    /// The number by which the C interface knows this unit; pinned.
    #[must_use]
    pub const fn code(&self) -> i32 {
        self.code
    }

    /// The name of this unit as a Rust type and in the C makers (`millimeter`).
    #[must_use]
    pub const fn marker(&self) -> &'static str {
        self.marker
    }

    /// The exact factor to the trade's unit as a quotient: (up, down).
    #[must_use]
    pub const fn factor(&self) -> (f64, f64) {
        (self.up, self.down)
    }

    /// `numerator / denominator` of this unit, in the trade's metric unit.
    ///
    /// The one conversion of the crate: text, constructors, columns and the C makers use it, so
    /// that they agree to the last digit.
    #[must_use]
    #[inline]
    pub const fn to_trade(&self, numerator: f64, denominator: f64) -> f64 {
        numerator * self.up / (denominator * self.down)
    }

    /// A value in the trade's metric unit, in this unit.
    #[must_use]
    #[inline]
    pub const fn from_trade(&self, value: f64) -> f64 {
        value * self.down / self.up
    }
}

/// A kind of unit: what it measures, and its units, the trade's metric one first.
#[derive(Debug, PartialEq)]
pub struct Kind {
    name: &'static str,
    what: &'static str,
    units: &'static [Unit],
    inch: usize,
    metric_places: usize,
    inch_places: usize,
}

impl Kind {
    /// The name of this kind (`length`, `cutting speed`).
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// The kind in words (`a length`).
    #[must_use]
    pub const fn what(&self) -> &'static str {
        self.what
    }

    /// Its units; the first is the trade's metric unit.
    #[must_use]
    pub const fn units(&self) -> &'static [Unit] {
        self.units
    }

    /// The unit a person of that system reads.
    #[must_use]
    pub const fn unit(&self, system: Units) -> &'static Unit {
        match system {
            Units::Metric => &self.units[0],
            Units::Inch => &self.units[self.inch],
        }
    }

    /// Decimal places that a person can use in that system.
    pub(crate) const fn places(&self, system: Units) -> usize {
        match system {
            Units::Metric => self.metric_places,
            Units::Inch => self.inch_places,
        }
    }

    /// The unit of this kind spelled so, if there is one.
    #[must_use]
    pub fn spelled(&self, spelling: &str) -> Option<&'static Unit> {
        self.units
            .iter()
            .find(|unit| unit.text == spelling || unit.spellings.contains(&spelling))
    }

    /// `mm, in or um`.
    pub(crate) fn unit_names(&self) -> String {
        crate::error::any_of(self.units.iter().map(|unit| unit.text))
    }
}

/// The system of units in which a person reads an answer.
///
/// Documents are exact in metric; inch is a view of them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
#[cfg_attr(feature = "serde", derive(serde::Serialize))]
#[cfg_attr(feature = "serde", serde(rename_all = "snake_case"))]
pub enum Units {
    /// Millimetres and metres.
    #[default]
    Metric,
    /// Inches and feet.
    Inch,
}

/// A unit that can stand for a quantity of kind `K`: the bound of `Diameter::new::<millimeter>`.
pub trait UnitOf<K> {
    /// The unit's row.
    const UNIT: &'static Unit;
}

/// Looks up a unit by the name of its kind and any of its spellings.
///
/// ```
/// assert!(turnwright::unit::find("cutting speed", "ft/min").is_some());
/// assert!(turnwright::unit::find("cutting speed", "rpm").is_none());
/// ```
#[must_use]
pub fn find(kind: &str, spelling: &str) -> Option<&'static Unit> {
    kinds().iter().find(|k| k.name == kind)?.spelled(spelling)
}

macro_rules! kinds {
    ($(
        $(#[$doc:meta])*
        $kind:ident = $number:literal $name:literal $what:literal inch $inch:literal places $mp:literal $ip:literal {
            $( $marker:ident $text:literal $([$($spelling:literal),*])? = $up:literal / $down:expr; )*
        }
    )*) => {
        /// The kinds of unit, as types.
        pub mod kind {
            $( $(#[$doc])* #[derive(Debug, Clone, Copy)] pub struct $kind; )*
        }

        kinds! { @statics $( $kind = $number $name $what inch $inch places $mp $ip {
            $( $marker $text $([$($spelling),*])? = $up / $down; )*
        } )* }

        /// All kinds of unit, in the order of their numbers.
        ///
        /// ```
        /// let length = &turnwright::unit::kinds()[0];
        /// assert_eq!((length.name(), length.units()[0].text()), ("length", "mm"));
        /// ```
        #[must_use]
        pub fn kinds() -> &'static [&'static Kind] {
            static KINDS: &[&Kind] = &[ $( &kind_rows::$kind ),* ];
            KINDS
        }
    };
    (@statics $( $kind:ident = $number:literal $name:literal $what:literal inch $inch:literal places $mp:literal $ip:literal {
        $( $marker:ident $text:literal $([$($spelling:literal),*])? = $up:literal / $down:expr; )*
    } )*) => {
        /// The rows behind the kinds.
        #[allow(non_upper_case_globals, non_camel_case_types, clippy::upper_case_acronyms)]
        pub(crate) mod kind_rows {
            use super::{Kind, Unit};
            $(
                enum $kind { $( $marker ),* }
                pub(crate) static $kind: Kind = Kind {
                    name: $name,
                    what: $what,
                    units: &[ $( Unit {
                        text: $text,
                        spellings: &[ $($($spelling),*)? ],
                        up: $up,
                        down: $down,
                        code: $number * 100 + $kind::$marker as i32,
                        marker: stringify!($marker),
                    } ),* ],
                    inch: $inch,
                    metric_places: $mp,
                    inch_places: $ip,
                };
                $(
                    impl super::UnitOf<super::kind::$kind> for super::$marker {
                        const UNIT: &'static Unit = &$kind.units[$kind::$marker as usize];
                    }
                )*
            )*
        }
    };
}

macro_rules! markers {
    ($($marker:ident $what:literal)*) => { $(
        #[doc = concat!("The unit ", $what, ", for `new` and `get` of a quantity.")]
        #[allow(non_camel_case_types)]
        #[derive(Debug, Clone, Copy)]
        pub struct $marker;
    )* };
}

markers! {
    millimeter "mm" micrometer "um" centimeter "cm" meter "m" nanometer "nm"
    inch "in" foot "ft" thousandth_inch "thou" microinch "uin"
    millimeter_per_revolution "mm/rev" inch_per_revolution "in/rev"
    millimeter_per_minute "mm/min" inch_per_minute "in/min"
    meter_per_minute "m/min" meter_per_second "m/s" foot_per_minute "ft/min"
    revolution_per_minute "rpm" revolution_per_second "rev/s" turn_per_minute "turns/min"
    megapascal "MPa" newton_per_square_millimeter "N/mm2" gigapascal "GPa"
    pound_per_square_inch "psi" kilopound_per_square_inch "ksi"
    newton "N" kilonewton "kN" pound_force "lbf"
    watt "W" kilowatt "kW" horsepower "hp"
    newton_meter "N m" kilonewton_meter "kN m" pound_force_foot "lbf ft" pound_force_inch "lbf in"
    kilonewton_per_millimeter "kN/mm" newton_per_micrometer "N/um" newton_per_millimeter "N/mm"
    pound_force_per_inch "lbf/in"
    kilonewton_meter_per_radian "kN m/rad" newton_meter_per_radian "N m/rad"
    pound_force_inch_per_radian "lbf in/rad"
    kilogram_per_cubic_meter "kg/m3" gram_per_cubic_centimeter "g/cm3" pound_per_cubic_inch "lb/in3"
    micrometer_per_meter_kelvin "um/(m K)" per_kelvin "1/K" per_fahrenheit "1/F"
    joule_per_kilogram_kelvin "J/(kg K)" kilojoule_per_kilogram_kelvin "kJ/(kg K)"
    second "s" minute "min" hour "h"
    degree "deg" radian "rad"
    cubic_centimeter_per_minute "cm3/min" cubic_millimeter_per_minute "mm3/min"
    cubic_inch_per_minute "in3/min"
    one "a plain number"
    kelvin "K" fahrenheit_step "F"
    kilogram "kg" gram "g" pound "lb"
    square_millimeter "mm2" square_inch "in2"
    horsepower_minute_per_cubic_inch "hp/(in3/min)"
}

kinds! {
    /// Lengths; stored in mm.
    Length = 1 "length" "a length" inch 4 places 3 4 {
        millimeter "mm" ["MM"] = 1.0 / 1.0;
        micrometer "um" = 1.0 / 1000.0;
        centimeter "cm" = 10.0 / 1.0;
        meter "m" = 1000.0 / 1.0;
        inch "in" ["inch", "inches", "IN", "\"", "\u{2033}"] = 254.0 / 10.0;
        foot "ft" ["'", "\u{2032}"] = 3048.0 / 10.0;
        thousandth_inch "thou" ["mil"] = 254.0 / 10000.0;
    }
    /// Roughness heights; stored in um.
    Roughness = 2 "roughness" "a roughness" inch 1 places 2 1 {
        micrometer "um" = 1.0 / 1.0;
        microinch "uin" = 254.0 / 10000.0;
        nanometer "nm" = 1.0 / 1000.0;
    }
    /// Feeds per revolution; stored in mm/rev.
    Feed = 3 "feed per revolution" "a feed per revolution" inch 1 places 3 4 {
        millimeter_per_revolution "mm/rev" ["mm/r"] = 1.0 / 1.0;
        inch_per_revolution "in/rev" ["in/r"] = 254.0 / 10.0;
    }
    /// Feed rates; stored in mm/min.
    FeedRate = 4 "feed rate" "a feed rate" inch 1 places 1 2 {
        millimeter_per_minute "mm/min" = 1.0 / 1.0;
        inch_per_minute "in/min" = 254.0 / 10.0;
    }
    /// Cutting speeds; stored in m/min.
    CuttingSpeed = 5 "cutting speed" "a cutting speed" inch 2 places 1 0 {
        meter_per_minute "m/min" = 1.0 / 1.0;
        meter_per_second "m/s" = 60.0 / 1.0;
        foot_per_minute "ft/min" = 3048.0 / 10000.0;
    }
    /// Spindle speeds; stored in revolutions per minute.
    SpindleSpeed = 6 "spindle speed" "a spindle speed" inch 0 places 0 0 {
        revolution_per_minute "rpm" ["RPM", "1/min", "rev/min", "r/min", "min-1"] = 1.0 / 1.0;
        revolution_per_second "rev/s" ["1/s"] = 60.0 / 1.0;
    }
    /// Stresses; stored in MPa, that is N/mm2.
    Stress = 7 "stress" "a stress" inch 3 places 0 0 {
        megapascal "MPa" = 1.0 / 1.0;
        newton_per_square_millimeter "N/mm2" = 1.0 / 1.0;
        gigapascal "GPa" = 1000.0 / 1.0;
        pound_per_square_inch "psi" = 6894.757293168361 / 1000000.0;
        kilopound_per_square_inch "ksi" = 6894.757293168361 / 1000.0;
        horsepower_minute_per_cubic_inch "hp/(in3/min)" ["hp min/in3"] = 44741.99229493621 / 16.387064;
    }
    /// Elastic moduli; stored in GPa.
    Modulus = 8 "elastic modulus" "an elastic modulus" inch 4 places 0 0 {
        gigapascal "GPa" = 1.0 / 1.0;
        megapascal "MPa" = 1.0 / 1000.0;
        newton_per_square_millimeter "N/mm2" = 1.0 / 1000.0;
        pound_per_square_inch "psi" = 6894.757293168361 / 1000000000.0;
        kilopound_per_square_inch "ksi" = 6894.757293168361 / 1000000.0;
    }
    /// Forces; stored in N.
    Force = 9 "force" "a force" inch 2 places 0 0 {
        newton "N" = 1.0 / 1.0;
        kilonewton "kN" = 1000.0 / 1.0;
        pound_force "lbf" = 4.4482216152605 / 1.0;
    }
    /// Powers; stored in kW.
    Power = 10 "power" "a power" inch 2 places 2 2 {
        kilowatt "kW" = 1.0 / 1.0;
        watt "W" = 1.0 / 1000.0;
        horsepower "hp" = 745.6998715822702 / 1000.0;
    }
    /// Torques; stored in N m.
    Torque = 11 "torque" "a torque" inch 2 places 1 1 {
        newton_meter "N m" ["N.m", "Nm"] = 1.0 / 1.0;
        kilonewton_meter "kN m" ["kN.m", "kNm"] = 1000.0 / 1.0;
        pound_force_foot "lbf ft" ["lbf.ft"] = 1.3558179483314004 / 1.0;
        pound_force_inch "lbf in" ["lbf.in"] = 1.3558179483314004 / 12.0;
    }
    /// Stiffnesses; stored in kN/mm.
    Stiffness = 12 "stiffness" "a stiffness" inch 3 places 1 0 {
        kilonewton_per_millimeter "kN/mm" = 1.0 / 1.0;
        newton_per_micrometer "N/um" = 1.0 / 1.0;
        newton_per_millimeter "N/mm" = 1.0 / 1000.0;
        pound_force_per_inch "lbf/in" = 4.4482216152605 / 25400.0;
    }
    /// Rotational stiffnesses; stored in kN m/rad.
    RotationalStiffness = 13 "rotational stiffness" "a rotational stiffness" inch 2 places 0 0 {
        kilonewton_meter_per_radian "kN m/rad" ["kN.m/rad", "kNm/rad"] = 1.0 / 1.0;
        newton_meter_per_radian "N m/rad" ["N.m/rad", "Nm/rad"] = 1.0 / 1000.0;
        pound_force_inch_per_radian "lbf in/rad" ["lbf.in/rad"] = 1.3558179483314004 / 12000.0;
    }
    /// Densities; stored in kg/m3.
    Density = 14 "density" "a density" inch 2 places 0 3 {
        kilogram_per_cubic_meter "kg/m3" = 1.0 / 1.0;
        gram_per_cubic_centimeter "g/cm3" = 1000.0 / 1.0;
        pound_per_cubic_inch "lb/in3" = 0.45359237 / 0.000016387064;
    }
    /// Coefficients of thermal expansion; stored in um/(m K).
    Expansion = 15 "thermal expansion" "a thermal expansion" inch 2 places 1 7 {
        micrometer_per_meter_kelvin "um/(m K)" ["um/(m.K)", "um/m/K"] = 1.0 / 1.0;
        per_kelvin "1/K" = 1000000.0 / 1.0;
        per_fahrenheit "1/F" ["1/degF"] = 1800000.0 / 1.0;
    }
    /// Specific heats; stored in J/(kg K).
    SpecificHeat = 16 "specific heat" "a specific heat" inch 0 places 0 0 {
        joule_per_kilogram_kelvin "J/(kg K)" ["J/(kg.K)"] = 1.0 / 1.0;
        kilojoule_per_kilogram_kelvin "kJ/(kg K)" ["kJ/(kg.K)"] = 1000.0 / 1.0;
    }
    /// Times; stored in s.
    Time = 17 "time" "a time" inch 0 places 0 0 {
        second "s" = 1.0 / 1.0;
        minute "min" = 60.0 / 1.0;
        hour "h" = 3600.0 / 1.0;
    }
    /// Angles; stored in degrees.
    Angle = 18 "angle" "an angle" inch 0 places 1 1 {
        degree "deg" ["°"] = 1.0 / 1.0;
        radian "rad" = 180.0 / std::f64::consts::PI;
    }
    /// Rates of metal removal; stored in cm3/min.
    RemovalRate = 19 "removal rate" "a removal rate" inch 2 places 1 2 {
        cubic_centimeter_per_minute "cm3/min" = 1.0 / 1.0;
        cubic_millimeter_per_minute "mm3/min" = 1.0 / 1000.0;
        cubic_inch_per_minute "in3/min" = 16.387064 / 1.0;
    }
    /// Rates of turning a handwheel; stored in turns a minute.
    HandwheelRate = 20 "handwheel rate" "a handwheel rate" inch 0 places 1 1 {
        turn_per_minute "turns/min" ["turn/min"] = 1.0 / 1.0;
    }
    /// Plain numbers: ratios and exponents.
    Number = 21 "plain number" "a plain number" inch 0 places 2 2 {
        one "" = 1.0 / 1.0;
    }
    /// Rises of temperature; stored in K. They are differences: 5 K are 9 steps of Fahrenheit.
    TemperatureRise = 22 "rise of temperature" "a rise of temperature" inch 1 places 1 1 {
        kelvin "K" = 1.0 / 1.0;
        fahrenheit_step "F" ["degF"] = 5.0 / 9.0;
    }
    /// Masses; stored in kg.
    Mass = 23 "mass" "a mass" inch 2 places 2 2 {
        kilogram "kg" = 1.0 / 1.0;
        gram "g" = 1.0 / 1000.0;
        pound "lb" = 0.45359237 / 1.0;
    }
    /// Areas; stored in mm2.
    Area = 24 "area" "an area" inch 1 places 3 5 {
        square_millimeter "mm2" ["mm^2"] = 1.0 / 1.0;
        square_inch "in2" ["in^2"] = 64516.0 / 100.0;
    }
}
