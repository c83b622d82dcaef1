//! The header is what the source gives, and compiles alone.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use cbindgen::{
    Builder, Config, DocumentationStyle, EnumConfig, FunctionConfig, ItemType, Language, Style,
};
use libtest_mimic::Trial;
use turnwright::quantity::{Row, rows};
use turnwright::unit::{Kind, Unit, kinds};

use crate::tools::{self, STRICT, Tool, run, write};
use crate::{check, snapshot, trial};

/// The header, from the root of the crate.
pub const FILE: &str = "include/turnwright.h";

/// The sources, in the order in which a newcomer needs them.
const SOURCES: &[&str] = &[
    "status",
    "quantity",
    "scalar",
    "columns",
    "speed",
    "dial",
    "bar",
    "critical_speed",
    "spring",
    "spring_passes",
    "drive",
    "chip",
    "force",
    "edge",
    "measured",
    "tool",
    "grip",
    "feed_for_finish",
    "least_chip",
    "texture",
    "cut_off",
    "filter",
    "heat",
    "centre",
    "life",
    "shape",
    "taper",
    "compound_slide",
    "tailstock",
    "tolerance",
    "limits",
    "instrument",
    "outcome",
    "aim",
    "uncertainty",
    "verdict",
    "from_text",
    "document",
    "plan",
];

pub fn trials() -> Vec<Trial> {
    let mut trials = vec![
        trial("header/is_what_the_source_gives", &[], || {
            snapshot(FILE, &generated())
        }),
        trial("header/holds_every_name_it_speaks_of", &[], spoken_of),
        trial("header/fields_are_named_after_their_unit", &[], || {
            for (row, field) in structs() {
                let unit = row.kind().units()[0].text();
                let expected = match unit {
                    "" => String::from("ratio"),
                    text => text
                        .to_lowercase()
                        .replace('/', "_per_")
                        .replace([' ', '(', ')'], ""),
                };
                check(field == expected, || {
                    format!("tw_{} has the field {field} for {unit}", row.name())
                })?;
            }
            Ok(())
        }),
        trial(
            "header/ignoring_a_status_warns_unless_defined_away",
            &[Tool::Cc],
            || {
                let text = "#include <turnwright.h>\nvoid f(void) { tw_range(1, 0, 0); }\n";
                let source = write("ignored.c", text);
                let compile = |define: &[&str]| {
                    run(tools::Language::C99
                        .compiler()
                        .args(STRICT)
                        .args(define)
                        .arg("-c")
                        .arg(&source)
                        .arg("-o")
                        .arg(tools::scratch("ignored.o")))
                };
                check(compile(&[]).is_err(), || {
                    String::from("an ignored status gives no warning")
                })?;
                compile(&["-DTW_CHECK="]).map(drop)
            },
        ),
    ];
    for language in tools::Language::ALL {
        for compiler in [language.tool(), Tool::Clang] {
            trials.push(trial(
                &format!(
                    "header/compiles_alone_and_twice_as_{language:?}_by_{}",
                    compiler.name()
                ),
                &[compiler],
                move || alone_and_twice(language, compiler),
            ));
        }
    }
    for (language, compiler, exceptions) in [
        (tools::Language::Cxx17, Tool::Cxx, "-fexceptions"),
        (tools::Language::Cxx17, Tool::Cxx, "-fno-exceptions"),
        (tools::Language::Cxx20, Tool::Cxx, "-fexceptions"),
        (tools::Language::Cxx17, Tool::Clang, "-fexceptions"),
        (tools::Language::Cxx20, Tool::Clang, "-fno-exceptions"),
    ] {
        trials.push(trial(
            &format!(
                "header/its_layer_compiles_alone_as_{language:?}_by_{}_{exceptions}",
                compiler.name()
            ),
            &[compiler],
            move || {
                let source = write(
                    "layer.cpp",
                    "#include <turnwright.hpp>\n#include <turnwright.hpp>\n",
                );
                let mut command = language.with(compiler);
                command
                    .args(STRICT)
                    .args(["-Wshadow", "-Wconversion", exceptions]);
                run(command.arg("-fsyntax-only").arg(source)).map(drop)
            },
        ));
    }
    trials
}

/// The header compiles alone, and twice in one file, with every warning that the compiler has and that is
/// not against the language it is written in.
fn alone_and_twice(language: tools::Language, compiler: Tool) -> Result<(), libtest_mimic::Failed> {
    let twice = write(
        "twice.c",
        "#include <turnwright.h>\n#include <turnwright.h>\n",
    );
    let mut command = language.with(compiler);
    command.args(STRICT).args(["-Wshadow", "-Wconversion"]);
    if compiler == Tool::Clang {
        command.args(["-Weverything", "-Wno-padded"]);
        // The header is C first: these ask for C++ in it, for an older C, or for a newer one.
        command.args([
            "-Wno-c++98-compat-pedantic",
            "-Wno-c++98-compat",
            "-Wno-old-style-cast",
            "-Wno-declaration-after-statement",
            "-Wno-unknown-warning-option",
            "-Wno-unsafe-buffer-usage",
            "-Wno-zero-as-null-pointer-constant",
            "-Wno-unused-macros",
            "-Wno-documentation",
            "-Wno-documentation-unknown-command",
        ]);
    }
    run(command.arg("-fsyntax-only").arg(twice)).map(drop)
}

/// The header as the source gives it.
pub fn generated() -> String {
    let page = include_str!("first_page.txt").trim_end().to_owned();
    let config = Config {
        language: Language::C,
        cpp_compat: true,
        style: Style::Both,
        header: Some(page),
        include_guard: Some(String::from("TURNWRIGHT_H")),
        no_includes: true,
        sys_includes: ["math.h", "stddef.h", "stdint.h", "string.h"]
            .map(String::from)
            .to_vec(),
        after_includes: Some(versions()),
        trailer: Some(trailer()),
        usize_is_size_t: true,
        documentation_style: DocumentationStyle::C99,
        line_length: 100,
        tab_width: 4,
        export: cbindgen::ExportConfig {
            // Arguments are int32_t: no signature leads to an enum.
            include: enums()
                .into_iter()
                .chain(
                    structs()
                        .iter()
                        .map(|(row, _)| format!("tw_{}", row.name())),
                )
                .collect(),
            item_types: vec![
                ItemType::Enums,
                ItemType::Structs,
                ItemType::OpaqueItems,
                ItemType::Typedefs,
                ItemType::Functions,
            ],
            ..Default::default()
        },
        function: FunctionConfig {
            must_use: Some(String::from("TW_CHECK")),
            ..Default::default()
        },
        enumeration: EnumConfig::default(),
        ..Config::default()
    };
    let folder = tools::root().join("src").join("ffi");
    let builder = SOURCES
        .iter()
        .fold(Builder::new().with_config(config), |builder, name| {
            builder.with_src(folder.join(format!("{name}.rs")))
        });
    let mut out = Vec::new();
    builder.generate().unwrap().write(&mut out);
    String::from_utf8(out).unwrap()
}

/// Names of ours in some words.
fn names(words: &str) -> impl Iterator<Item = &str> {
    words
        .split(|c: char| !c.is_ascii_alphanumeric() && c != '_')
        .filter(|word| word.len() > 3 && (word.starts_with("tw_") || word.starts_with("TW_")))
        // `tw_plan_...` and the like stand for several.
        .filter(|word| !word.ends_with('_'))
}

/// Comments and the words of errors send nobody to a name that the header has not.
fn spoken_of() -> Result<(), libtest_mimic::Failed> {
    let header = generated();
    let (comments, code): (Vec<&str>, Vec<&str>) = header
        .lines()
        .partition(|line| line.trim_start().starts_with("//"));
    let known: BTreeSet<&str> = code.iter().flat_map(|line| names(line)).collect();
    let folder = tools::root().join("src").join("ffi");
    let mut sources = String::new();
    for file in std::fs::read_dir(folder)? {
        sources.push_str(&std::fs::read_to_string(file?.path())?);
    }
    let quoted = sources
        .lines()
        .filter(|line| !line.trim_start().starts_with("//"))
        .flat_map(|line| line.split('"').skip(1).step_by(2));
    let spoken = comments.into_iter().chain(quoted).flat_map(names);
    let unknown: BTreeSet<&str> = spoken.filter(|name| !known.contains(name)).collect();
    crate::check(unknown.is_empty(), || {
        format!("the header has none of {unknown:?}")
    })
}

/// The enums of the source.
fn enums() -> Vec<String> {
    let folder = tools::root().join("src").join("ffi");
    let source = SOURCES.iter().map(|name| {
        let path = folder.join(format!("{name}.rs"));
        std::fs::read_to_string(path).unwrap()
    });
    let lines: Vec<String> = source
        .flat_map(|text| text.lines().map(str::to_owned).collect::<Vec<_>>())
        .collect();
    let names = lines.iter().filter_map(|line| {
        let name = line.strip_prefix("pub enum ")?;
        Some(name.trim_end_matches([' ', '{']).to_owned())
    });
    names.collect()
}

/// The version macros and the attribute of what returns a status.
fn versions() -> String {
    let version = env!("CARGO_PKG_VERSION");
    let [major, minor, patch] = [
        env!("CARGO_PKG_VERSION_MAJOR"),
        env!("CARGO_PKG_VERSION_MINOR"),
        env!("CARGO_PKG_VERSION_PATCH"),
    ];
    format!(
        "
/* The version of this header. */
#define TW_VERSION \"{version}\"
#define TW_VERSION_MAJOR {major}
#define TW_VERSION_MINOR {minor}
#define TW_VERSION_PATCH {patch}
#define TW_VERSION_AT_LEAST(major, minor, patch)                               \\
    (TW_VERSION_MAJOR > (major) ||                                             \\
     (TW_VERSION_MAJOR == (major) &&                                           \\
      (TW_VERSION_MINOR > (minor) ||                                           \\
       (TW_VERSION_MINOR == (minor) && TW_VERSION_PATCH >= (patch)))))

/* Warns when a result is ignored. Define it as nothing to have no such warning. */
#ifndef TW_CHECK
#if defined(__GNUC__) || defined(__clang__)
#define TW_CHECK __attribute__((warn_unused_result))
#else
#define TW_CHECK
#endif
#endif"
    )
}

/// The quantities that have a struct: their row, and the struct's field.
pub fn structs() -> Vec<(&'static Row, String)> {
    let source = std::fs::read_to_string(tools::root().join("src/ffi/quantity.rs")).unwrap();
    let mut found = Vec::new();
    let mut name = None;
    for line in source.lines() {
        if let Some(rest) = line.strip_prefix("pub struct tw_") {
            name = rest.strip_suffix(" {");
        } else if let (Some(of), Some(field)) = (
            name,
            line.trim()
                .strip_prefix("pub ")
                .and_then(|rest| rest.strip_suffix(": f64,")),
        ) {
            let row = rows().iter().find(|row| row.name() == of);
            found.push((
                *row.unwrap_or_else(|| panic!("tw_{of}: no quantity has that name")),
                field.to_owned(),
            ));
            name = None;
        }
    }
    assert!(found.len() > 20, "structs of quantities were not found");
    found
}

/// The name of a unit in C.
pub fn unit_name(kind: &Kind, unit: &Unit) -> String {
    let kind = match kind.name() {
        "feed per revolution" => String::from("FEED"),
        other => other.to_uppercase().replace(' ', "_"),
    };
    format!("TW_UNIT_{kind}_{}", unit.marker().to_uppercase())
}

/// Enums of numbers, makers and readers.
fn trailer() -> String {
    let mut out = String::from(
        "#ifndef TURNWRIGHT_H_INLINE
#define TURNWRIGHT_H_INLINE

/*
 * The quantities by number, for columns and tw_range; each with the range in which it is accepted.
 */
enum tw_quantity {
",
    );
    for row in rows() {
        let _ = writeln!(
            out,
            "    /* {}; {}{} to {}{} */\n    TW_QUANTITY_{} = {},",
            row.what(),
            if row.allows_zero() && row.least() > 0.0 {
                "0, or "
            } else {
                ""
            },
            row.least(),
            row.largest(),
            match row.kind().units()[0].text() {
                "" => String::new(),
                text => format!(" {text}"),
            },
            row.name().to_uppercase(),
            row.code()
        );
    }
    close_enum(&mut out);
    out.push_str(
        "\n/*\n * The units by number, for columns: kind, then unit.\n */\nenum tw_unit {\n",
    );
    for kind in kinds() {
        for unit in kind.units() {
            let _ = writeln!(out, "    {} = {},", unit_name(kind, unit), unit.code());
        }
    }
    close_enum(&mut out);
    out.push_str(
        "
/*
 * Makes a tw_error ready, once, before its first use.
 */
static inline void tw_error_init(tw_error *detail)
{
    memset(detail, 0, sizeof *detail);
    detail->struct_size = sizeof *detail;
}

/*
 * Makes a tw_step, a tw_expected or a tw_surface ready, once, before its first use.
 */
static inline void tw_step_init(tw_step *step)
{
    memset(step, 0, sizeof *step);
    step->struct_size = sizeof *step;
}

static inline void tw_expected_init(tw_expected *expected)
{
    memset(expected, 0, sizeof *expected);
    expected->struct_size = sizeof *expected;
}

static inline void tw_surface_init(tw_surface *surface)
{
    memset(surface, 0, sizeof *surface);
    surface->struct_size = sizeof *surface;
}

/*
 * Springs that do not give way.
 */
static inline tw_stiffness tw_stiffness_rigid(void)
{
    tw_stiffness made;
    made.kn_per_mm = HUGE_VAL;
    return made;
}

static inline tw_rotational_stiffness tw_rotational_stiffness_rigid(void)
{
    tw_rotational_stiffness made;
    made.knm_per_rad = HUGE_VAL;
    return made;
}

/*
 * Makers and readers, one of each for every unit of a quantity. They check nothing: the calls do.
 * The factors are exact, multiplied before they divide.
 */
",
    );
    for (row, field) in structs() {
        for unit in row.kind().units() {
            makers(&mut out, row, &field, unit);
        }
    }
    out.push_str("\n#endif /* TURNWRIGHT_H_INLINE */");
    out
}

/// C99 and C++11 allow the comma after the last one; older readers of headers do not.
fn close_enum(out: &mut String) {
    out.truncate(out.trim_end().len() - 1);
    out.push_str("\n};\n");
}

fn makers(out: &mut String, row: &Row, field: &str, unit: &Unit) {
    let (name, marker, (up, down)) = (row.name(), unit.marker(), unit.factor());
    let _ = write!(
        out,
        "
static inline tw_{name} tw_{name}_{marker}(double value)
{{
    tw_{name} made;
    made.{field} = value * {up:?} / (1.0 * {down:?});
    return made;
}}

static inline double tw_{name}_as_{marker}(tw_{name} quantity)
{{
    return quantity.{field} * {down:?} / {up:?};
}}
"
    );
    if (row.kind().name(), marker) == ("length", "inch") {
        let _ = write!(
            out,
            "
static inline tw_{name} tw_{name}_inch_fraction(double numerator, double denominator)
{{
    tw_{name} made;
    made.{field} = numerator * {up:?} / (denominator * {down:?});
    return made;
}}
"
        );
    }
}
