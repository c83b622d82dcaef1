//! The makers and readers of the header agree with Rust to the last bit.

use std::fmt::Write as _;

use libtest_mimic::{Failed, Trial};

use crate::tools::{Language, Tool, build, printed, run_of, write};
use crate::{check, header, trial};

/// Values that round in every way: grids of a dial, powers, and a few with all bits set.
const VALUES: [f64; 8] = [
    1.0,
    0.001,
    1.375,
    0.1 + 0.2,
    7.0 / 3.0,
    1e-7,
    123_456.789,
    -2.75,
];

pub fn trials() -> Vec<Trial> {
    [Language::C99, Language::Cxx11]
        .map(|language| {
            trial(
                &format!("makers/agree_bit_for_bit_as_{language:?}"),
                &[language.tool()],
                move || agree(language),
            )
        })
        .into_iter()
        .chain([trial(
            "makers/version_macros_are_those_of_the_manifest",
            &[Tool::Cc],
            versions,
        )])
        .collect()
}

fn agree(language: Language) -> Result<(), Failed> {
    let mut body = String::new();
    let mut expected = String::new();
    for (row, field) in header::structs() {
        let name = row.name();
        for unit in row.kind().units() {
            let marker = unit.marker();
            for value in VALUES {
                let _ = writeln!(body, "    show(tw_{name}_{marker}({value:?}).{field});");
                let _ = writeln!(expected, "{:016x}", unit.to_trade(value, 1.0).to_bits());
                let _ = writeln!(
                    body,
                    "    quantity_{name}.{field} = {value:?}; show(tw_{name}_as_{marker}(quantity_{name}));"
                );
                let _ = writeln!(expected, "{:016x}", unit.from_trade(value).to_bits());
            }
            if (row.kind().name(), marker) == ("length", "inch") {
                for (numerator, denominator) in [(5.0, 8.0), (1.0, 3.0), (63.0, 64.0)] {
                    let _ = writeln!(
                        body,
                        "    show(tw_{name}_inch_fraction({numerator:?}, {denominator:?}).{field});"
                    );
                    let made = unit.to_trade(numerator, denominator);
                    let _ = writeln!(expected, "{:016x}", made.to_bits());
                }
            }
        }
    }
    let mut declared = String::new();
    for (row, _) in header::structs() {
        let _ = writeln!(declared, "    tw_{0} quantity_{0};", row.name());
    }
    let program = format!(
        "#include <turnwright.h>
#include <inttypes.h>
#include <stdio.h>

static void show(double value)
{{
    uint64_t bits;
    memcpy(&bits, &value, sizeof bits);
    printf(\"%016\" PRIx64 \"\\n\", bits);
}}

int main(void)
{{
{declared}{body}    return 0;
}}
"
    );
    let source = write("makers.c", &program);
    let seen = printed(&mut run_of(build(&source, language, &["-O1"])?))?;
    let first = seen
        .lines()
        .zip(expected.lines())
        .zip(body.lines())
        .find(|((seen, expected), _)| seen != expected);
    check(seen == expected, || {
        format!("first difference (C, Rust), call: {first:?}")
    })
}

fn versions() -> Result<(), Failed> {
    let [major, minor, patch] = [
        env!("CARGO_PKG_VERSION_MAJOR"),
        env!("CARGO_PKG_VERSION_MINOR"),
        env!("CARGO_PKG_VERSION_PATCH"),
    ];
    let program = format!(
        "#include <turnwright.h>
#include <stdio.h>

#if TW_VERSION_MAJOR != {major} || TW_VERSION_MINOR != {minor} || TW_VERSION_PATCH != {patch}
#error the parts differ
#endif
#if !TW_VERSION_AT_LEAST({major}, {minor}, {patch}) || !TW_VERSION_AT_LEAST(0, 0, 0)
#error it is at least itself
#endif
#if TW_VERSION_AT_LEAST({major}, {minor}, {patch} + 1) || TW_VERSION_AT_LEAST({major}, {minor} + 1, 0) || TW_VERSION_AT_LEAST({major} + 1, 0, 0)
#error it is not more than itself
#endif

int main(void)
{{
    printf(\"%s %s\\n\", TW_VERSION, tw_version());
    return 0;
}}
"
    );
    let source = write("versions.c", &program);
    let seen = printed(&mut run_of(build(&source, Language::C99, &[])?))?;
    let version = env!("CARGO_PKG_VERSION");
    check(seen == format!("{version} {version}\n"), || {
        format!("header and library say {seen}, the manifest {version}")
    })
}
