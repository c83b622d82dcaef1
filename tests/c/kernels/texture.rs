//! Roughness, filters, cut-offs, the least chip.

use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_arc_roughness, tw_arc_roughness_column, tw_arc_shape, tw_arc_shape_column,
    tw_chip_thickness, tw_corner_radius, tw_cut_off, tw_cut_off_by_feed, tw_cut_off_by_feed_column,
    tw_cut_off_by_ra, tw_cut_off_by_ra_column, tw_cut_off_by_rz, tw_cut_off_by_rz_column,
    tw_cutting_edge_angle, tw_edge_radius, tw_feed, tw_feed_for_ra_arc, tw_feed_for_ra_arc_column,
    tw_feed_for_rz_arc, tw_feed_for_rz_arc_column, tw_feed_unevenness, tw_least_chip_by_model,
    tw_least_chip_by_model_column, tw_least_minor_angle_for_arc,
    tw_least_minor_angle_for_arc_column, tw_length, tw_minor_cutting_edge_angle, tw_ra, tw_rku,
    tw_roughness_grade, tw_roughness_grade_column, tw_roughness_transmission,
    tw_roughness_transmission_column, tw_rq, tw_rsk, tw_rsm, tw_rt, tw_rz, tw_short_cut_off,
    tw_short_cut_off_for, tw_short_cut_off_for_column, tw_short_wave_transmission,
    tw_short_wave_transmission_column, tw_status, tw_theoretical_shape,
    tw_theoretical_shape_column, tw_transmission, tw_uneven_spread, tw_uneven_spread_column,
};
use turnwright::physics::finish::{self, ToolOutline};
use turnwright::physics::least_chip::{self, LeastChipModel};
use turnwright::physics::{feed_for_finish, gaussian, uneven_feed};
use turnwright::standards::texture;
use turnwright::{
    ChipThickness, CornerRadius, CutOff, CuttingEdgeAngle, EdgeRadius, Feed, FeedUnevenness,
    MinorCuttingEdgeAngle, Quantity, Ra, Rku, Rq, Rsk, Rsm, Rt, Rz, ShortCutOff, Transmission,
    WorkLength,
};

use crate::columns::{input, output, same};
use crate::{check, trial};

kernels! {
    "roughness_transmission" tw_roughness_transmission tw_roughness_transmission_column
        [wavelength tw_rsm mm Rsm 0.01 2.0, cut_off tw_cut_off mm CutOff 0.08 8.0]
        [transmission tw_transmission ratio Transmission]
        {

let found = gaussian::roughness_transmission(wavelength, cut_off);
Some([found.trade()])
        };
    "short_wave_transmission" tw_short_wave_transmission tw_short_wave_transmission_column
        [wavelength tw_rsm mm Rsm 0.01 2.0, short_cut_off tw_short_cut_off mm ShortCutOff 0.0025 0.025]
        [transmission tw_transmission ratio Transmission]
        {

let found = gaussian::short_wave_transmission(wavelength, short_cut_off);
Some([found.trade()])
        };
    "arc_roughness" tw_arc_roughness tw_arc_roughness_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [rt tw_rt um Rt, rz tw_rz um Rz, ra tw_ra um Ra, rq tw_rq um Rq]
        {

let found = finish::arc_roughness(feed, corner_radius).ok()?;
Some([found.rt.trade(), found.rz.trade(), found.ra.trade(), found.rq.trade()])
        };
    "least_minor_angle_for_arc" tw_least_minor_angle_for_arc tw_least_minor_angle_for_arc_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle]
        {

let found = finish::least_minor_angle_for_arc(feed, corner_radius).ok()?;
Some([found.trade()])
        };
    "theoretical_shape" tw_theoretical_shape tw_theoretical_shape_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0, cutting_edge_angle tw_cutting_edge_angle deg CuttingEdgeAngle 20.0 140.0, minor_cutting_edge_angle tw_minor_cutting_edge_angle deg MinorCuttingEdgeAngle 2.0 80.0]
        [rsk tw_rsk ratio Rsk, rku tw_rku ratio Rku]
        {
let outline = ToolOutline::new(corner_radius, cutting_edge_angle, minor_cutting_edge_angle).ok()?;
let found = finish::theoretical_shape(feed, &outline);
Some([found.rsk.trade(), found.rku.trade()])
        };
    "arc_shape" tw_arc_shape tw_arc_shape_column
        [feed tw_feed mm_per_rev Feed 0.02 1.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [rsk tw_rsk ratio Rsk, rku tw_rku ratio Rku]
        {

let found = finish::arc_shape(feed, corner_radius).ok()?;
Some([found.rsk.trade(), found.rku.trade()])
        };
    "feed_for_rz_arc" tw_feed_for_rz_arc tw_feed_for_rz_arc_column
        [rz tw_rz um Rz 0.05 150.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [feed tw_feed mm_per_rev Feed]
        {

let found = feed_for_finish::feed_for_rz_arc(rz, corner_radius).ok()?;
Some([found.trade()])
        };
    "feed_for_ra_arc" tw_feed_for_ra_arc tw_feed_for_ra_arc_column
        [ra tw_ra um Ra 0.01 60.0, corner_radius tw_corner_radius mm CornerRadius 0.1 2.0]
        [feed tw_feed mm_per_rev Feed]
        {

let found = feed_for_finish::feed_for_ra_arc(ra, corner_radius).ok()?;
Some([found.trade()])
        };
    "uneven_spread" tw_uneven_spread tw_uneven_spread_column
        [feed tw_feed mm_per_rev Feed 0.02 0.5, feed_unevenness tw_feed_unevenness ratio FeedUnevenness 0.01 0.3, corner_radius tw_corner_radius mm CornerRadius 0.2 3.0, evaluation_length tw_length mm WorkLength 1.0 50.0]
        [ra tw_ra um Ra, ra_5 tw_ra um Ra, ra_50 tw_ra um Ra, ra_95 tw_ra um Ra, rt_5 tw_rt um Rt, rt_50 tw_rt um Rt, rt_95 tw_rt um Rt]
        {

let found = uneven_feed::uneven_spread(feed, feed_unevenness, corner_radius, evaluation_length).ok()?;
Some([found.ra.trade(), found.ra_5.trade(), found.ra_50.trade(), found.ra_95.trade(), found.rt_5.trade(), found.rt_50.trade(), found.rt_95.trade()])
        };
    "cut_off_by_feed" tw_cut_off_by_feed tw_cut_off_by_feed_column
        [feed tw_feed mm_per_rev Feed 0.008 6.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_feed(feed).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "cut_off_by_ra" tw_cut_off_by_ra tw_cut_off_by_ra_column
        [ra tw_ra um Ra 0.004 90.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_ra(ra).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "cut_off_by_rz" tw_cut_off_by_rz tw_cut_off_by_rz_column
        [rz tw_rz um Rz 0.02 240.0]
        [cut_off tw_cut_off mm CutOff, evaluation_length tw_length mm WorkLength]
        {

let found = texture::cut_off_by_rz(rz).ok()?;
Some([found.value.long_wave().trade(), found.value.evaluation_length.trade()])
        };
    "least_chip_by_model" tw_least_chip_by_model tw_least_chip_by_model_column
        [edge_radius tw_edge_radius mm EdgeRadius 0.001 0.05] (2)
        [chip_thickness tw_chip_thickness mm ChipThickness]
        {
let model = LeastChipModel::Stagnation;

let found = least_chip::least_chip(edge_radius, model);
Some([found.trade()])
        };
    "roughness_grade" tw_roughness_grade tw_roughness_grade_column
        [ra tw_ra um Ra 0.01 60.0]
        [largest_ra tw_ra um Ra] <grade>
        {
let found = texture::Grade::of(ra)?;
let number = 1 + texture::Grade::all().position(|grade| grade == found)?;
Some([found.ra().trade(), number as f64])
        };
}

pub fn by_hand() -> Vec<Trial> {
    vec![trial("kernels/short_cut_off_for", &[], short_cut_offs)]
}

fn short_cut_offs() -> Result<(), Failed> {
    let cut_offs = [0.08, 0.25, 0.8, 2.5, 8.0, 0.81, f64::NAN, 0.0];
    let mut found = [0.0; 8];
    let mut statuses = [-1; 8];
    let status = unsafe {
        tw_short_cut_off_for_column(
            &input::<CutOff>(&cut_offs, &CutOff::ROW.kind().units()[0]),
            &output::<ShortCutOff>(&mut found),
            statuses.as_mut_ptr(),
            4,
            null_mut(),
        )
    };
    check(status == tw_status::TW_ROWS_BAD, || format!("{status:?}"))?;
    for (row, mm) in cut_offs.into_iter().enumerate() {
        let mut alone = tw_short_cut_off { mm: 0.0 };
        let status = unsafe { tw_short_cut_off_for(tw_cut_off { mm }, &mut alone, null_mut()) };
        let rust = CutOff::from_trade(mm)
            .ok()
            .and_then(|mm| texture::short_cut_off(mm).ok());
        let expected = rust.map_or(f64::NAN, |found| found.value.mm());
        let holds = statuses[row] == status as i32
            && (row < 5) == (status == tw_status::TW_OK)
            && same(alone.mm, expected)
            && same(found[row], expected);
        check(holds, || {
            format!("{mm}: {status:?} {} {expected}", alone.mm)
        })?;
    }
    Ok(())
}
