//! Sizes at 20 deg C, and what is heated.

use turnwright::ffi::{
    tw_density, tw_diameter, tw_expansion, tw_length, tw_length_at_20, tw_length_at_20_column,
    tw_mass, tw_mass_of_bar, tw_mass_of_bar_column, tw_rise,
};
use turnwright::physics::heat;
use turnwright::{
    Density, Diameter, Mass, Quantity, TemperatureRise, ThermalExpansion, WorkLength,
};

kernels! {
    "length_at_20" tw_length_at_20 tw_length_at_20_column
        [measured tw_length mm WorkLength 10.0 2000.0, expansion tw_expansion um_per_mk ThermalExpansion 1.0 30.0, rise tw_rise k TemperatureRise 1.0 200.0]
        [length tw_length mm WorkLength]
        {

let found = heat::length_at_20(measured, expansion, rise);
Some([found.trade()])
        };
    "mass_of_bar" tw_mass_of_bar tw_mass_of_bar_column
        [density tw_density kg_per_m3 Density 1000.0 20000.0, diameter tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [mass tw_mass kg Mass]
        {

let found = heat::mass_of_bar(density, diameter, length);
Some([found.trade()])
        };
}
