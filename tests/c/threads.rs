//! Many threads at once get the answers that one gets.

use std::ffi::{CStr, CString};
use std::ptr::null_mut;

use libtest_mimic::{Failed, Trial};
use turnwright::ffi::{
    tw_answer, tw_arc_height, tw_arc_height_column, tw_corner_radius, tw_cutting_edge_angle,
    tw_cutting_forces, tw_cutting_speed, tw_deflection, tw_deflection_at, tw_depth_of_cut,
    tw_diameter, tw_error, tw_exponent, tw_feed, tw_feed_force, tw_length, tw_main_force,
    tw_minor_cutting_edge_angle, tw_normal_ratio, tw_overhang, tw_passive_force,
    tw_plan_step_count, tw_plan_text, tw_ra, tw_range, tw_rotational_stiffness, tw_rt,
    tw_specific_force, tw_spindle_speed, tw_spindle_speed_for, tw_status_text, tw_stiffness,
    tw_text_free, tw_theoretical_roughness, tw_version, tw_youngs_modulus,
};
use turnwright::unit;
use turnwright::{CornerRadius, Feed, Rt};

use crate::columns::{input, output};
use crate::plans::{Open, text};
use crate::{check, trial};

pub fn trials() -> Vec<Trial> {
    vec![trial(
        "threads/thirty_two_of_them_get_the_same_answers",
        &[],
        || {
            let expected = everything();
            let seen: Vec<Vec<String>> = std::thread::scope(|scope| {
                let threads: Vec<_> = (0..32)
                    .map(|_| scope.spawn(|| (0..20).flat_map(|_| everything()).collect()))
                    .collect();
                threads
                    .into_iter()
                    .map(|thread| thread.join().unwrap())
                    .collect()
            });
            for answers in seen {
                for chunk in answers.chunks(expected.len()) {
                    check(chunk == expected, || format!("{chunk:?}\n{expected:?}"))?;
                }
            }
            Ok::<(), Failed>(())
        },
    )]
}

/// Every call once, as text.
fn everything() -> Vec<String> {
    let mut seen = Vec::new();
    let mut detail: tw_error = unsafe { std::mem::zeroed() };
    detail.struct_size = size_of::<tw_error>() as u32;
    let feed = tw_feed { mm_per_rev: 0.2 };
    let corner = tw_corner_radius { mm: 0.8 };
    let angle = tw_cutting_edge_angle { deg: 95.0 };
    let passive = tw_passive_force { n: 100.0 };
    let rigid = tw_stiffness {
        kn_per_mm: f64::INFINITY,
    };
    unsafe {
        let mut n = tw_spindle_speed { rpm: 0.0 };
        let status = tw_spindle_speed_for(
            tw_cutting_speed { m_per_min: 28.0 },
            tw_diameter { mm: 38.0 },
            &mut n,
            &mut detail,
        );
        seen.push(format!("{status:?} {n:?}"));

        let (mut f_c, mut f_f, mut f_p) = (
            tw_main_force { n: 0.0 },
            tw_feed_force { n: 0.0 },
            tw_passive_force { n: 0.0 },
        );
        let status = tw_cutting_forces(
            tw_specific_force { mpa: 1900.0 },
            tw_exponent { ratio: 0.2 },
            tw_depth_of_cut { mm: 1.0 },
            feed,
            angle,
            corner,
            tw_normal_ratio { ratio: 0.5 },
            &mut f_c,
            &mut f_f,
            &mut f_p,
            &mut detail,
        );
        seen.push(format!("{status:?} {f_c:?} {f_f:?} {f_p:?}"));

        let (mut regime, mut ra) = (0, tw_ra { um: 0.0 });
        let status = tw_theoretical_roughness(
            feed,
            corner,
            angle,
            tw_minor_cutting_edge_angle { deg: 5.0 },
            &mut regime,
            null_mut(),
            null_mut(),
            &mut ra,
            null_mut(),
            &mut detail,
        );
        seen.push(format!("{status:?} {regime} {ra:?}"));

        let mut rt = tw_rt { um: 0.0 };
        let status = tw_arc_height(
            tw_feed {
                mm_per_rev: f64::NAN,
            },
            corner,
            &mut rt,
            &mut detail,
        );
        let field = CStr::from_ptr(detail.field.as_ptr());
        seen.push(format!("{status:?} {} {field:?}", rt.um.is_nan()));

        let mut bent = tw_deflection { mm: 0.0 };
        let status = tw_deflection_at(
            tw_youngs_modulus { gpa: 206.0 },
            tw_diameter { mm: 20.0 },
            tw_overhang { mm: 120.0 },
            1,
            rigid,
            tw_rotational_stiffness { knm_per_rad: 40.0 },
            rigid,
            passive,
            tw_length { mm: 110.0 },
            &mut bent,
            &mut detail,
        );
        seen.push(format!("{status:?} {bent:?}"));

        let (mut least, mut largest) = (0.0, 0.0);
        let status = tw_range(1, &mut least, &mut largest);
        seen.push(format!("{status:?} {least} {largest}"));

        let feeds = [0.1, 0.2, -1.0];
        let mut heights = [0.0; 3];
        let status = tw_arc_height_column(
            &input::<Feed>(&feeds, &unit::kinds()[2].units()[0]),
            &input::<CornerRadius>(&[0.8], &unit::kinds()[0].units()[0]),
            &output::<Rt>(&mut heights),
            null_mut(),
            0,
            &mut detail,
        );
        seen.push(format!("{status:?} {heights:?} {}", detail.row));

        let question = CString::new(include_str!("../../examples/c/job.json")).unwrap();
        let mut answer = null_mut();
        let status = tw_answer(question.as_ptr(), &mut answer, &mut detail);
        seen.push(format!("{status:?} {:?}", CStr::from_ptr(answer)));
        tw_text_free(answer);

        let question = question.to_str().unwrap();
        let plan = Open::of(question).unwrap();
        let words = text(|out| tw_plan_text(plan.0, out, null_mut())).unwrap();
        seen.push(format!("{} {words}", tw_plan_step_count(plan.0)));

        seen.push(format!(
            "{:?} {:?}",
            CStr::from_ptr(tw_version()),
            CStr::from_ptr(tw_status_text(status as i32))
        ));
    }
    seen
}
