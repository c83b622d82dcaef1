//! Swapped quantities do not compile in C; each has a twin of one other token that does.

use libtest_mimic::Trial;

use crate::tools::{Language, STRICT, run, write};
use crate::{check, trial};

/// Name; a line of code with `{}` where the token stands; the token that is refused; its twin.
const CASES: [(&str, &str, &str, &str); 9] = [
    (
        "a_radius_for_a_diameter",
        "tw_status f(tw_cutting_speed v, {} d, tw_spindle_speed *n) { return tw_spindle_speed_for(v, d, n, 0); }",
        "tw_radius",
        "tw_diameter",
    ),
    (
        "a_depth_of_cut_for_a_diameter",
        "tw_status f(tw_cutting_speed v, {} d, tw_spindle_speed *n) { return tw_spindle_speed_for(v, d, n, 0); }",
        "tw_depth_of_cut",
        "tw_diameter",
    ),
    (
        "a_spindle_speed_for_a_cutting_speed",
        "tw_status f({} v, tw_diameter d, tw_spindle_speed *n) { return tw_spindle_speed_for(v, d, n, 0); }",
        "tw_spindle_speed",
        "tw_cutting_speed",
    ),
    (
        "a_bare_number_for_a_diameter",
        "tw_status f(tw_cutting_speed v, {} d, tw_spindle_speed *n) { return tw_spindle_speed_for(v, d, n, 0); }",
        "double",
        "tw_diameter",
    ),
    (
        "a_feed_for_a_feed_rate",
        "tw_feed_rate f({} x) { return x; }",
        "tw_feed",
        "tw_feed_rate",
    ),
    (
        "a_feed_rate_for_a_feed",
        "tw_status f({} x, tw_corner_radius r, tw_rt *rt) { return tw_arc_height(x, r, rt, 0); }",
        "tw_feed_rate",
        "tw_feed",
    ),
    (
        "a_specific_force_for_a_modulus",
        "tw_youngs_modulus f({} e) { return e; }",
        "tw_specific_force",
        "tw_youngs_modulus",
    ),
    (
        "a_radius_of_the_work_for_that_of_the_tool",
        "tw_status f(tw_feed x, {} r, tw_rt *rt) { return tw_arc_height(x, r, rt, 0); }",
        "tw_radius",
        "tw_corner_radius",
    ),
    (
        "an_rz_where_an_rt_is_written",
        "tw_status f(tw_feed x, tw_corner_radius r, {} *rt) { return tw_arc_height(x, r, rt, 0); }",
        "tw_rz",
        "tw_rt",
    ),
];

pub fn trials() -> Vec<Trial> {
    let mut trials = Vec::new();
    for language in [Language::C99, Language::Cxx11] {
        for (name, line, wrong, right) in CASES {
            trials.push(trial(
                &format!("swapped/{name}_is_refused_as_{language:?}"),
                &[language.tool()],
                move || {
                    let compile = |token: &str| {
                        let text = format!(
                            "#include <turnwright.h>\n{}\n",
                            line.replacen("{}", token, 1)
                        );
                        run(language
                            .compiler()
                            .args(STRICT)
                            .arg("-fsyntax-only")
                            .arg(write("swapped.c", &text)))
                    };
                    compile(right)?;
                    check(compile(wrong).is_err(), || {
                        format!("{wrong} passed for {right}: {line}")
                    })
                },
            ));
        }
    }
    trials
}
