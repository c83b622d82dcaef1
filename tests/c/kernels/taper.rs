//! Tapers, the compound slide and the set-over.

use turnwright::ffi::{
    tw_compound_angle, tw_compound_angle_from_cross_slide, tw_diameter, tw_diameter_error,
    tw_from_axis, tw_from_axis_column, tw_from_cross_slide, tw_from_cross_slide_column,
    tw_half_angle, tw_included_angle, tw_length, tw_set_over, tw_taper_change_over,
    tw_taper_change_over_column, tw_taper_large_for, tw_taper_large_for_column,
    tw_taper_length_between, tw_taper_length_between_column, tw_taper_of_half_angle,
    tw_taper_of_half_angle_column, tw_taper_of_included_angle, tw_taper_of_included_angle_column,
    tw_taper_of_ratio, tw_taper_of_ratio_column, tw_taper_of_set_over, tw_taper_of_set_over_column,
    tw_taper_ratio, tw_taper_slide_travel, tw_taper_slide_travel_column, tw_taper_small_for,
    tw_taper_small_for_column, tw_travel, tw_usual_set_over, tw_usual_set_over_column,
};
use turnwright::physics::taper::{self, Taper};
use turnwright::{
    CompoundAngle, CrossSlideAngle, Diameter, DiameterError, HalfAngle, IncludedAngle, Quantity,
    SetOver, TaperRatio, Travel, WorkLength,
};

kernels! {
    "taper_of_ratio" tw_taper_of_ratio tw_taper_of_ratio_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0]
        [half_angle tw_half_angle deg HalfAngle, included_angle tw_included_angle deg IncludedAngle]
        {

let found = Taper::of_ratio(taper_ratio);
Some([found.half_angle().trade(), found.included_angle().trade()])
        };
    "taper_of_half_angle" tw_taper_of_half_angle tw_taper_of_half_angle_column
        [half_angle tw_half_angle deg HalfAngle 0.05 60.0]
        [taper_ratio tw_taper_ratio ratio TaperRatio, included_angle tw_included_angle deg IncludedAngle]
        {

let found = Taper::of_half_angle(half_angle);
Some([found.ratio().trade(), found.included_angle().trade()])
        };
    "taper_of_included_angle" tw_taper_of_included_angle tw_taper_of_included_angle_column
        [included_angle tw_included_angle deg IncludedAngle 0.1 120.0]
        [taper_ratio tw_taper_ratio ratio TaperRatio, half_angle tw_half_angle deg HalfAngle]
        {

let found = Taper::of_included_angle(included_angle);
Some([found.ratio().trade(), found.half_angle().trade()])
        };
    "taper_change_over" tw_taper_change_over tw_taper_change_over_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length tw_length mm WorkLength 10.0 2000.0]
        [change tw_diameter_error mm DiameterError]
        {

let found = Taper::of_ratio(taper_ratio).change_over(length);
Some([found.trade()])
        };
    "taper_small_for" tw_taper_small_for tw_taper_small_for_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, large tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [small tw_diameter mm Diameter]
        {

let found = Taper::of_ratio(taper_ratio).small_for(large, length).ok()?;
Some([found.trade()])
        };
    "taper_large_for" tw_taper_large_for tw_taper_large_for_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, small tw_diameter mm Diameter 5.0 300.0, length tw_length mm WorkLength 10.0 2000.0]
        [large tw_diameter mm Diameter]
        {

let found = Taper::of_ratio(taper_ratio).large_for(small, length);
Some([found.trade()])
        };
    "taper_length_between" tw_taper_length_between tw_taper_length_between_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, large tw_diameter mm Diameter 5.0 300.0, small tw_diameter mm Diameter 5.0 300.0]
        [length tw_length mm WorkLength]
        {

let found = Taper::of_ratio(taper_ratio).length_between(large, small).ok()?;
Some([found.trade()])
        };
    "taper_slide_travel" tw_taper_slide_travel tw_taper_slide_travel_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length tw_length mm WorkLength 10.0 2000.0]
        [travel tw_travel mm Travel]
        {

let found = Taper::of_ratio(taper_ratio).slide_travel(length);
Some([found.trade()])
        };
    "from_cross_slide" tw_from_cross_slide tw_from_cross_slide_column
        [compound_angle tw_compound_angle deg CompoundAngle 0.1 80.0]
        [compound_angle_from_cross_slide tw_compound_angle_from_cross_slide deg CrossSlideAngle]
        {

let found = taper::from_cross_slide(compound_angle);
Some([found.trade()])
        };
    "from_axis" tw_from_axis tw_from_axis_column
        [compound_angle_from_cross_slide tw_compound_angle_from_cross_slide deg CrossSlideAngle 1.0 89.9]
        [compound_angle tw_compound_angle deg CompoundAngle]
        {

let found = taper::from_axis(compound_angle_from_cross_slide).ok()?;
Some([found.trade()])
        };
    "usual_set_over" tw_usual_set_over tw_usual_set_over_column
        [taper_ratio tw_taper_ratio ratio TaperRatio 1.0 200.0, length_between_centres tw_length mm WorkLength 10.0 2000.0]
        [set_over tw_set_over mm SetOver]
        {

let found = taper::usual_set_over(Taper::of_ratio(taper_ratio), length_between_centres);
Some([found.trade()])
        };
    "taper_of_set_over" tw_taper_of_set_over tw_taper_of_set_over_column
        [set_over tw_set_over mm SetOver 0.01 50.0, length_between_centres tw_length mm WorkLength 10.0 2000.0]
        [half_angle tw_half_angle deg HalfAngle, taper_ratio tw_taper_ratio ratio TaperRatio]
        {

let found = taper::taper_of_set_over(set_over, length_between_centres).ok()?;
Some([found.half_angle().trade(), found.ratio().trade()])
        };
}
