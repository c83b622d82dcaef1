//! The doors of each kind of quantity: by which names its values are made and read (`from_mm`, `mm`)
//! and pass to `uom` and back (`length`, `from_length`).

macro_rules! kind_methods {
    (Length $t:ident) => {
        kind_methods! { @make $t from_mm mm millimeter "millimetres", from_inch inch inch "inches" }
        kind_methods! { @uom $t from_length length uom::si::f64::Length, uom::si::length::meter, 1e-3, 1e3 }
    };
    (Roughness $t:ident) => {
        kind_methods! { @make $t from_um um micrometer "micrometres", from_microinch microinch microinch "microinches" }
        kind_methods! { @uom $t from_length length uom::si::f64::Length, uom::si::length::meter, 1e-6, 1e6 }
    };
    (Feed $t:ident) => {
        kind_methods! { @make $t from_mm_per_rev mm_per_rev millimeter_per_revolution "millimetres per revolution", from_inch_per_rev inch_per_rev inch_per_revolution "inches per revolution" }
        kind_methods! { @uom $t from_length_per_revolution length_per_revolution uom::si::f64::Length, uom::si::length::meter, 1e-3, 1e3 }
    };
    (FeedRate $t:ident) => {
        kind_methods! { @make $t from_mm_per_min mm_per_min millimeter_per_minute "millimetres per minute", from_inch_per_min inch_per_min inch_per_minute "inches per minute" }
        kind_methods! { @uom $t from_velocity velocity uom::si::f64::Velocity, uom::si::velocity::meter_per_second, 1.0 / 60000.0, 60000.0 }
    };
    (CuttingSpeed $t:ident) => {
        kind_methods! { @make $t from_m_per_min m_per_min meter_per_minute "metres per minute", from_ft_per_min ft_per_min foot_per_minute "feet per minute" }
        kind_methods! { @uom $t from_velocity velocity uom::si::f64::Velocity, uom::si::velocity::meter_per_second, 1.0 / 60.0, 60.0 }
    };
    (SpindleSpeed $t:ident) => {
        kind_methods! { @make $t from_rpm rpm revolution_per_minute "revolutions per minute" }
        kind_methods! { @uom $t from_frequency frequency uom::si::f64::Frequency, uom::si::frequency::hertz, 1.0 / 60.0, 60.0 }
    };
    (HandwheelRate $t:ident) => {
        kind_methods! { @make $t from_turns_per_min turns_per_min turn_per_minute "turns per minute" }
        kind_methods! { @uom $t from_frequency frequency uom::si::f64::Frequency, uom::si::frequency::hertz, 1.0 / 60.0, 60.0 }
    };
    (Stress $t:ident) => {
        kind_methods! { @make $t from_mpa mpa megapascal "megapascals (N/mm2)", from_psi psi pound_per_square_inch "pounds per square inch" }
        kind_methods! { @uom $t from_pressure pressure uom::si::f64::Pressure, uom::si::pressure::pascal, 1e6, 1e-6 }
    };
    (Modulus $t:ident) => {
        kind_methods! { @make $t from_gpa gpa gigapascal "gigapascals", from_ksi ksi kilopound_per_square_inch "thousands of pounds per square inch" }
        kind_methods! { @uom $t from_pressure pressure uom::si::f64::Pressure, uom::si::pressure::pascal, 1e9, 1e-9 }
    };
    (Force $t:ident) => {
        kind_methods! { @make $t from_newton newton newton "newtons", from_lbf lbf pound_force "pounds force" }
        kind_methods! { @uom $t from_force force uom::si::f64::Force, uom::si::force::newton, 1.0, 1.0 }
    };
    (Power $t:ident) => {
        kind_methods! { @make $t from_kw kw kilowatt "kilowatts", from_hp hp horsepower "horsepower (550 ft lbf/s)" }
        kind_methods! { @uom $t from_power power uom::si::f64::Power, uom::si::power::watt, 1e3, 1e-3 }
    };
    (Torque $t:ident) => {
        kind_methods! { @make $t from_newton_meter newton_meter newton_meter "newton metres", from_lbf_ft lbf_ft pound_force_foot "pound-force feet" }
        kind_methods! { @uom $t from_torque torque uom::si::f64::Torque, uom::si::torque::newton_meter, 1.0, 1.0 }
    };
    (Stiffness $t:ident) => {
        kind_methods! { @make $t from_kn_per_mm kn_per_mm kilonewton_per_millimeter "kilonewtons per millimetre", from_lbf_per_inch lbf_per_inch pound_force_per_inch "pounds force per inch" }
    };
    (RotationalStiffness $t:ident) => {
        kind_methods! { @make $t from_knm_per_rad knm_per_rad kilonewton_meter_per_radian "kilonewton metres per radian", from_lbf_inch_per_rad lbf_inch_per_rad pound_force_inch_per_radian "pound-force inches per radian" }
    };
    (Density $t:ident) => {
        kind_methods! { @make $t from_kg_per_m3 kg_per_m3 kilogram_per_cubic_meter "kilograms per cubic metre", from_lb_per_in3 lb_per_in3 pound_per_cubic_inch "pounds per cubic inch" }
        kind_methods! { @uom $t from_mass_density mass_density uom::si::f64::MassDensity, uom::si::mass_density::kilogram_per_cubic_meter, 1.0, 1.0 }
    };
    (Expansion $t:ident) => {
        kind_methods! { @make $t from_um_per_m_k um_per_m_k micrometer_per_meter_kelvin "micrometres per metre and kelvin" }
    };
    (SpecificHeat $t:ident) => {
        kind_methods! { @make $t from_j_per_kg_k j_per_kg_k joule_per_kilogram_kelvin "joules per kilogram and kelvin" }
    };
    (Time $t:ident) => {
        kind_methods! { @make $t from_seconds seconds second "seconds", from_minutes minutes minute "minutes" }
        kind_methods! { @uom $t from_time time uom::si::f64::Time, uom::si::time::second, 1.0, 1.0 }
    };
    (Angle $t:ident) => {
        kind_methods! { @make $t from_degrees degrees degree "degrees" }
        kind_methods! { @uom $t from_angle angle uom::si::f64::Angle, uom::si::angle::radian, std::f64::consts::PI / 180.0, 180.0 / std::f64::consts::PI }
    };
    (RemovalRate $t:ident) => {
        kind_methods! { @make $t from_cm3_per_min cm3_per_min cubic_centimeter_per_minute "cubic centimetres per minute", from_in3_per_min in3_per_min cubic_inch_per_minute "cubic inches per minute" }
        kind_methods! { @uom $t from_volume_rate volume_rate uom::si::f64::VolumeRate, uom::si::volume_rate::cubic_meter_per_second, 1e-6 / 60.0, 6e7 }
    };
    (TemperatureRise $t:ident) => {
        kind_methods! { @make $t from_kelvin kelvin kelvin "kelvins", from_fahrenheit_steps fahrenheit_steps fahrenheit_step "steps of Fahrenheit" }
        kind_methods! { @uom $t from_temperature_interval temperature_interval uom::si::f64::TemperatureInterval, uom::si::temperature_interval::kelvin, 1.0, 1.0 }
    };
    (Mass $t:ident) => {
        kind_methods! { @make $t from_kg kg kilogram "kilograms", from_lb lb pound "pounds" }
        kind_methods! { @uom $t from_mass mass uom::si::f64::Mass, uom::si::mass::kilogram, 1.0, 1.0 }
    };
    (Area $t:ident) => {
        kind_methods! { @make $t from_mm2 mm2 square_millimeter "square millimetres", from_in2 in2 square_inch "square inches" }
        kind_methods! { @uom $t from_area area uom::si::f64::Area, uom::si::area::square_meter, 1e-6, 1e6 }
    };
    (Number $t:ident) => {
        kind_methods! { @make $t from_value value one "a plain number" }
    };
    (@make $t:ident $($from:ident $get:ident $unit:ident $words:literal),+) => {
        impl $t { $(
            #[doc = concat!("From ", $words, ".\n\n# Errors\nOutside the range of the type, or not finite.")]
            #[inline]
            pub fn $from(value: f64) -> Result<Self, Error> {
                Self::new::<unit::$unit>(value)
            }

            #[doc = concat!("In ", $words, ".")]
            #[must_use]
            #[inline]
            pub fn $get(self) -> f64 {
                self.get::<unit::$unit>()
            }
        )+ }
    };
    (@uom $t:ident $from:ident $to:ident $quantity:path, $base:path, $to_base:expr, $from_base:expr) => {
        impl $t {
            #[doc = concat!("As a `uom` quantity, by name only.")]
            #[must_use]
            #[inline]
            pub fn $to(self) -> $quantity {
                // Factors to and from uom's base unit, not its divisions: beside a short kernel a
                // conversion costs as much as the formula.
                <$quantity>::new::<$base>(self.0 * ($to_base))
            }

            #[doc = concat!("From a `uom` quantity, by name only.\n\n# Errors\nOutside the range of the type, or not finite.")]
            pub fn $from(quantity: $quantity) -> Result<Self, Error> {
                Self::from_trade(quantity.get::<$base>() * ($from_base))
            }

            /// What a kernel computed, kept only where its formula holds.
            ///
            /// Computed for every row and then dropped: a loop without a branch in it runs several
            /// rows at once. What is dropped may be anything, NaN too.
            #[inline]
            #[allow(dead_code)]
            pub(crate) fn computed_where(holds: bool, quantity: $quantity) -> Option<Self> {
                let computed = Self(quantity.get::<$base>() * ($from_base) + 0.0);
                debug_assert!(!holds || computed.0.is_finite());
                holds.then_some(computed)
            }

            /// What a kernel computed from checked values: finite, but not held to what is plausible.
            #[inline]
            #[allow(dead_code)]
            pub(crate) fn computed(quantity: $quantity) -> Self {
                Self::computed_trade(quantity.get::<$base>() * ($from_base))
            }
        }
    };
}
