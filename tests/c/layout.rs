//! Sizes and offsets: C and Rust agree, and they are those of the snapshot.

use std::fmt::Write as _;
use std::mem::{offset_of, size_of};

use libtest_mimic::Trial;
use turnwright::ffi::{
    tw_column, tw_error, tw_expected, tw_out_column, tw_slide, tw_status, tw_step, tw_step_kind,
    tw_surface,
};

use crate::tools::{Language, Tool, build, printed, run_of, write};
use crate::{check, header, snapshot, trial};

macro_rules! layout {
    ($($name:ident { $($field:ident)* })*) => {
        vec![ $(
            (stringify!($name), None, size_of::<$name>()),
            $( (stringify!($name), Some(stringify!($field)), offset_of!($name, $field)), )*
        )* ]
    };
}

pub fn trials() -> Vec<Trial> {
    vec![trial(
        "layout/is_the_same_in_c_and_as_committed",
        &[Tool::Cc],
        || {
            let mut expected = String::new();
            let mut body = String::new();
            for (name, field, bytes) in layout! {
                tw_error {
                    struct_size status row field given expected remedy field_length given_length
                    expected_length remedy_length rows_bad row_status reserved
                }
                tw_column { data stride_bytes count quantity unit }
                tw_out_column { data stride_bytes count quantity unit }
                tw_step {
                    struct_size kind surface other_end done slide divisions turns mark tenths shows
                    diameter z spindle_speed feed depth_of_cut time text because ring_to
                }
                tw_expected {
                    struct_size surfaces diameter smallest largest uncertainty good rework scrap time
                }
                tw_surface {
                    struct_size surface other_end diameter smallest largest uncertainty good rework
                    scrap ra rz
                }
                tw_status { }
                tw_step_kind { }
                tw_slide { }
            } {
                let (label, value) = match field {
                    None => (format!("sizeof {name}"), format!("sizeof({name})")),
                    Some(field) => (
                        format!("offsetof {name} {field}"),
                        format!("offsetof({name}, {field})"),
                    ),
                };
                let _ = writeln!(expected, "{label} {bytes}");
                let _ = writeln!(body, "    printf(\"{label} %d\\n\", (int){value});");
            }
            for (row, field) in header::structs() {
                let name = row.name();
                let _ = writeln!(expected, "sizeof tw_{name} 8, {field}");
                let _ = writeln!(
                    body,
                    "    printf(\"sizeof tw_{name} %d, {field}\\n\", (int)(sizeof(tw_{name}) + offsetof(tw_{name}, {field})));"
                );
            }
            let program = format!(
                "#include <turnwright.h>\n#include <stdio.h>\n\nint main(void)\n{{\n{body}    return 0;\n}}\n"
            );
            let source = write("layout.c", &program);
            let seen = printed(&mut run_of(build(&source, Language::C99, &[])?))?;
            check(seen == expected, || {
                format!("C has\n{seen}\nRust has\n{expected}")
            })?;
            // What the committed file holds; elsewhere the two sides agree, and that is all.
            if cfg!(target_pointer_width = "64") {
                snapshot("tests/c/layout-64.txt", &expected)?;
            }
            Ok(())
        },
    )]
}
