//! Speeds, rates and times, of facing too.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_chip_thickness, tw_chip_width, tw_cutting_speed, tw_cutting_speed_of,
    tw_cutting_speed_of_column, tw_depth_of_cut, tw_diameter, tw_feed, tw_feed_rate,
    tw_feed_rate_of, tw_feed_rate_of_column, tw_full_speed_below, tw_full_speed_below_column,
    tw_length, tw_mean_diameter, tw_mean_diameter_column, tw_removal_rate, tw_removal_rate_at,
    tw_removal_rate_at_column, tw_removal_rate_of, tw_removal_rate_of_column, tw_slow_below,
    tw_slow_below_column, tw_speed_in_facing, tw_speed_in_facing_column, tw_speed_of_step,
    tw_speed_of_step_column, tw_spindle_speed, tw_status, tw_step_ratio, tw_time, tw_time_of_cut,
    tw_time_of_cut_column,
};
use turnwright::physics::engagement::ChipSection;
use turnwright::physics::facing::{self, FacingPace};
use turnwright::physics::{speed, speed_series};
use turnwright::{
    ChipThickness, ChipWidth, CuttingSpeed, DepthOfCut, Diameter, Duration, Feed, FeedRate,
    Quantity, RemovalRate, SpindleSpeed, WorkLength,
};

use crate::columns::same;
use crate::{check, trial};

kernels! {
    "cutting_speed_of" tw_cutting_speed_of tw_cutting_speed_of_column
        [spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, diameter tw_diameter mm Diameter 5.0 300.0]
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed]
        {

let found = speed::cutting_speed(spindle_speed, diameter);
Some([found.trade()])
        };
    "feed_rate_of" tw_feed_rate_of tw_feed_rate_of_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [feed_rate tw_feed_rate mm_per_min FeedRate]
        {

let found = speed::feed_rate(feed, spindle_speed);
Some([found.trade()])
        };
    "time_of_cut" tw_time_of_cut tw_time_of_cut_column
        [length tw_length mm WorkLength 10.0 2000.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [time tw_time s Duration]
        {

let found = speed::time_of_cut(length, feed, spindle_speed);
Some([found.trade()])
        };
    "removal_rate_of" tw_removal_rate_of tw_removal_rate_of_column
        [diameter tw_diameter mm Diameter 5.0 300.0, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 20.0, feed tw_feed mm_per_rev Feed 0.02 1.0, spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [removal_rate tw_removal_rate cm3_per_min RemovalRate]
        {

let found = speed::removal_rate(diameter, depth_of_cut, feed, spindle_speed).ok()?;
Some([found.trade()])
        };
    "removal_rate_at" tw_removal_rate_at tw_removal_rate_at_column
        [chip_thickness tw_chip_thickness mm ChipThickness 0.02 1.0, chip_width tw_chip_width mm ChipWidth 0.1 5.0, cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0]
        [removal_rate tw_removal_rate cm3_per_min RemovalRate]
        {

let found = speed::removal_rate_at(ChipSection::new(chip_thickness, chip_width), cutting_speed);
Some([found.trade()])
        };
    "mean_diameter" tw_mean_diameter tw_mean_diameter_column
        [diameter tw_diameter mm Diameter 5.0 300.0, depth_of_cut tw_depth_of_cut mm DepthOfCut 0.01 20.0]
        [mean_diameter tw_diameter mm Diameter]
        {

let found = speed::mean_diameter(diameter, depth_of_cut).ok()?;
Some([found.trade()])
        };
    "speed_of_step" tw_speed_of_step tw_speed_of_step_column
        [first tw_spindle_speed rpm SpindleSpeed 20.0 20000.0] (3, 7)
        [spindle_speed tw_spindle_speed rpm SpindleSpeed]
        {
let step = 3;
let place = 7;

let found = speed_series::speed_of_step(first, step, place).ok()?;
Some([found.trade()])
        };
    "speed_in_facing" tw_speed_in_facing tw_speed_in_facing_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, diameter tw_diameter mm Diameter 5.0 300.0]
        [spindle_speed tw_spindle_speed rpm SpindleSpeed, speed_there tw_cutting_speed m_per_min CuttingSpeed]
        {
let found = speed::spindle_speed(cutting_speed, diameter).min(max_spindle_speed);
Some([found.trade(), speed::cutting_speed(found, diameter).trade()])
        };
    "full_speed_below" tw_full_speed_below tw_full_speed_below_column
        [cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0, max_spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0]
        [diameter tw_diameter mm Diameter]
        {
let pace = FacingPace::SpindleSpeed(max_spindle_speed);
let facing::SlowBelow::Diameter(found) = facing::slow_below(pace, cutting_speed) else { return None };
Some([found.trade()])
        };
    "slow_below" tw_slow_below tw_slow_below_column
        [spindle_speed tw_spindle_speed rpm SpindleSpeed 50.0 4000.0, least_cutting_speed tw_cutting_speed m_per_min CuttingSpeed 10.0 400.0]
        [diameter tw_diameter mm Diameter]
        {
let pace = FacingPace::SurfaceSpeed { cutting_speed: least_cutting_speed, highest: Some(spindle_speed) };
Some([facing::full_speed_below(pace)?.trade()])
        };
}

pub fn by_hand() -> Vec<Trial> {
    vec![trial("kernels/step_ratio_is_that_of_rust", &[], step_ratio)]
}

fn step_ratio() -> Result<(), Failed> {
    for step in -1..=8 {
        let mut ratio = 1.0;
        let status = unsafe { tw_step_ratio(step, &mut ratio, null_mut()) };
        let rust = u8::try_from(step)
            .ok()
            .and_then(|step| speed_series::step_ratio(step).ok());
        let holds = match rust {
            Some(rust) => status == tw_status::TW_OK && same(rust, ratio),
            None => status == tw_status::TW_OUT_OF_RANGE && ratio.is_nan(),
        };
        check(holds, || format!("{step}: {status:?} {ratio}"))?;
    }
    Ok(())
}
