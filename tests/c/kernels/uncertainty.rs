//! Spreads, uncertainties and what is accepted.

use turnwright::ffi::{
    tw_acceptance, tw_acceptance_column, tw_capability, tw_capability_index, tw_capability_of,
    tw_capability_of_column, tw_coverage_factor, tw_diameter, tw_expanded_uncertainty,
    tw_expanded_uncertainty_column, tw_half_width, tw_instrument_uncertainty,
    tw_largest_standard_uncertainty, tw_largest_standard_uncertainty_column,
    tw_outcome_with_uniform, tw_outcome_with_uniform_column, tw_price_rework, tw_price_scrap,
    tw_probability, tw_resolution, tw_standard_uncertainty, tw_standard_uncertainty_of,
    tw_standard_uncertainty_of_column, tw_standard_uncertainty_of_resolution,
    tw_standard_uncertainty_of_resolution_column,
};
use turnwright::physics::aim::{self, Prices};
use turnwright::physics::budget::{self, Component};
use turnwright::physics::spread::{self, SizeSpread};
use turnwright::standards::decision;
use turnwright::standards::limits::{Feature, Limits};
use turnwright::{
    Capability, CapabilityIndex, CoverageFactor, Diameter, HalfWidth, PriceRework, PriceScrap,
    Probability, Quantity, Resolution, SizeUncertainty, StandardUncertainty,
};

kernels! {
    "capability_of" tw_capability_of tw_capability_of_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, mean tw_diameter mm Diameter 5.0 300.0, standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05]
        [capability tw_capability ratio Capability, capability_index tw_capability_index ratio CapabilityIndex]
        {
let limits = Limits::new(smallest, largest).ok()?;
let found = spread::capability(limits, mean, standard_uncertainty);
Some([found.cp.trade(), found.cpk.trade()])
        };
    "expanded_uncertainty" tw_expanded_uncertainty tw_expanded_uncertainty_column
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05, coverage_factor tw_coverage_factor ratio CoverageFactor 1.0 3.0]
        [expanded tw_instrument_uncertainty mm SizeUncertainty]
        {

let found = budget::expanded(standard_uncertainty, coverage_factor);
Some([found.trade()])
        };
    "standard_uncertainty_of" tw_standard_uncertainty_of tw_standard_uncertainty_of_column
        [half_width tw_half_width mm HalfWidth 0.001 0.05] (2)
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {
Some([Component::triangular("a", half_width).standard_uncertainty().trade()])
        };
    "standard_uncertainty_of_resolution" tw_standard_uncertainty_of_resolution tw_standard_uncertainty_of_resolution_column
        [resolution tw_resolution mm Resolution 0.001 0.1]
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {

let found = Component::resolution("resolution", resolution).standard_uncertainty();
Some([found.trade()])
        };
    "largest_standard_uncertainty" tw_largest_standard_uncertainty tw_largest_standard_uncertainty_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, price_scrap tw_price_scrap ratio PriceScrap 1.0 100.0, price_rework tw_price_rework ratio PriceRework 1.0 100.0]
        [standard_uncertainty tw_standard_uncertainty mm StandardUncertainty]
        {
let limits = Limits::new(smallest, largest).ok()?;
let spread = SizeSpread::normal(StandardUncertainty::from_trade(1.0).unwrap());
let prices = Prices::new(price_scrap, price_rework);
Some([aim::largest_standard_uncertainty(limits, spread, prices)?.trade()])
        };
    "acceptance" tw_acceptance tw_acceptance_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, guard_band tw_instrument_uncertainty mm SizeUncertainty 0.001 0.5]
        [smallest_accepted tw_diameter mm Diameter, largest_accepted tw_diameter mm Diameter]
        {
let limits = Limits::new(smallest, largest).ok()?;
let found = decision::acceptance(limits, guard_band)?;
Some([found.smallest().trade(), found.largest().trade()])
        };
    "outcome_with_uniform" tw_outcome_with_uniform tw_outcome_with_uniform_column
        [smallest tw_diameter mm Diameter 18.0 20.5, largest tw_diameter mm Diameter 19.0 21.0, mean tw_diameter mm Diameter 18.5 21.0, standard_uncertainty tw_standard_uncertainty mm StandardUncertainty 0.001 0.05, half_width tw_half_width mm HalfWidth 0.001 0.05] (1)
        [good tw_probability ratio Probability, rework tw_probability ratio Probability, scrap tw_probability ratio Probability]
        {
let feature = Feature::Shaft;
let limits = Limits::new(smallest, largest).ok()?;
let spread = SizeSpread::normal_and_uniform(standard_uncertainty, half_width);
let found = spread::outcome(limits, mean, spread, feature);
Some([found.good.trade(), found.rework.trade(), found.scrap.trade()])
        };
}
