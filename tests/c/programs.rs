//! C programs that use the library: the example and the edges; plain, under valgrind, and with the
//! sanitizers.

use std::path::PathBuf;
use std::process::Command;

use libtest_mimic::{Failed, Trial};
use turnwright::advice::diagnosis::SizeAt;
use turnwright::document;
use turnwright::physics::{finish, speed};
use turnwright::plan::StepKind;
use turnwright::{CornerRadius, CuttingSpeed, Diameter, Feed};

use crate::tools::{Language, SANITIZE, Tool, build, printed, root, run, run_of, scratch, write};
use crate::{check, trial};

fn example() -> PathBuf {
    root().join("examples/c/turn.c")
}

fn example_in_cpp() -> PathBuf {
    root().join("examples/cpp/turn.cpp")
}

fn job() -> PathBuf {
    root().join("examples/c/job.json")
}

fn edges() -> PathBuf {
    root().join("tests/c/programs/edges.c")
}

fn plans() -> PathBuf {
    root().join("tests/c/programs/plans.c")
}

fn layer() -> PathBuf {
    root().join("tests/c/programs/layer.cpp")
}

/// Every program with its arguments.
fn all() -> [(PathBuf, Language, Vec<PathBuf>); 6] {
    use Language::{C99, Cxx17};
    [
        (example(), C99, vec![job()]),
        (example(), C99, vec![job(), PathBuf::from("picture")]),
        (example_in_cpp(), Cxx17, vec![job()]),
        (edges(), C99, Vec::new()),
        (plans(), C99, vec![job()]),
        (layer(), Cxx17, vec![job()]),
    ]
}

pub fn trials() -> Vec<Trial> {
    let mut trials: Vec<Trial> = [Language::C99, Language::Cxx17]
        .map(|language| {
            trial(
                &format!("programs/the_example_says_what_rust_says_as_{language:?}"),
                &[language.tool()],
                move || the_example(language),
            )
        })
        .into();
    trials.extend([
        trial(
            "programs/the_example_in_cpp_says_what_rust_says",
            &[Tool::Cxx],
            the_example_in_cpp,
        ),
        trial(
            "programs/the_example_of_the_first_page_runs",
            &[Tool::Cc],
            first_page,
        ),
        trial(
            "programs/the_example_of_the_readme_runs",
            &[Tool::Cc],
            readme,
        ),
        trial("programs/the_edges_hold", &[Tool::Cc], || {
            run(&mut run_of(build(&edges(), Language::C99, &["-g"])?)).map(drop)
        }),
        trial("programs/the_edges_of_plans_hold", &[Tool::Cc], || {
            let program = build(&plans(), Language::C99, &["-g"])?;
            run(run_of(program).arg(job())).map(drop)
        }),
        trial("programs/the_edges_of_the_layer_hold", &[Tool::Cxx], || {
            let program = build(&layer(), Language::Cxx17, &["-g"])?;
            run(run_of(program).arg(job())).map(drop)
        }),
        trial(
            "programs/valgrind_finds_nothing",
            &[Tool::Cc, Tool::Cxx, Tool::Valgrind],
            valgrind,
        ),
        trial(
            "programs/sanitizers_find_nothing",
            &[Tool::Sanitizers, Tool::Cxx],
            sanitizers,
        ),
    ]);
    trials
}

fn the_example(language: Language) -> Result<(), Failed> {
    let program = build(&example(), language, &["-O2"])?;
    let seen = printed(run_of(&program).arg(job()))?;
    says_what_rust_says(&seen, 2)?;
    let refused = Feed::from_mm_per_rev(0.0002).unwrap_err();
    let told = seen.lines().nth(1).unwrap_or_default();
    for part in [
        refused.field(),
        refused.given(),
        refused.expected(),
        refused.remedy(),
    ] {
        check(told.contains(part), || {
            format!("{told}\nRust has {refused}")
        })?;
    }
    let drawn = printed(run_of(program).arg(job()).arg("picture"))?;
    let drawn = drawn.lines().skip(6).collect::<Vec<_>>().join("\n");
    let rust = sheet()?.pictures()?.swap_remove(0);
    check(drawn.trim() == rust.trim(), || drawn.clone())
}

fn sheet() -> Result<turnwright::plan::Sheet, Failed> {
    let question = std::fs::read_to_string(job())?;
    Ok(document::plan::Question::from_text(&question)?.answer()?)
}

fn the_example_in_cpp() -> Result<(), Failed> {
    let program = build(&example_in_cpp(), Language::Cxx17, &["-O2"])?;
    let seen = printed(run_of(program).arg(job()))?;
    says_what_rust_says(&seen, 3)?;
    let sheet = sheet()?;
    let question = r#"{ "finish": { "feed": "0.2 mm",
            "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg" } } }"#;
    let refused = document::answer(question).unwrap_err();
    let told = format!(
        "refused: {}: {} given; expected {}; {}\n",
        refused.field(),
        refused.given(),
        refused.expected(),
        refused.remedy()
    );
    check(seen.contains(&told), || format!("{seen}\nRust has {told}"))?;
    let stop = sheet.steps.iter().position(|s| s.kind == StepKind::Measure);
    let stop = stop.ok_or("no stop")?;
    let measured = Diameter::from_mm(sheet.steps[stop].diameter.mm() + 0.02)?;
    let next = sheet.after(stop, &[SizeAt::anywhere(measured)], None)?.plan;
    let next = next.ok_or("no plan")?;
    check(seen.trim_end().ends_with(&next.steps[stop].text), || {
        format!("{seen}\nRust has {}", next.steps[stop].text)
    })
}

/// The spindle speed in the first line, the height of the ridges in another, and the first step.
fn says_what_rust_says(seen: &str, line: usize) -> Result<(), Failed> {
    let speed = speed::spindle_speed(
        CuttingSpeed::from_m_per_min(28.0)?,
        Diameter::from_inch(1.5)?,
    );
    let height = finish::arc_height(Feed::from_mm_per_rev(0.2)?, CornerRadius::from_mm(0.8)?)?;
    let figure = |line: usize| -> Option<f64> {
        let words = seen.lines().nth(line)?;
        words
            .split_whitespace()
            .rev()
            .find_map(|word| word.parse().ok())
    };
    check(figure(0) == Some(speed.rpm()), || {
        format!("{seen}\nRust has {speed}")
    })?;
    check(figure(line) == Some(height.um()), || {
        format!("{seen}\nRust has {height}")
    })?;
    // The same by columns, and the row that is bad.
    check(
        seen.contains(&format!(
            "row 2: 0.2 mm/rev leaves ridges of {} um",
            height.um()
        )),
        || seen.to_owned(),
    )?;
    check(
        seen.contains("row 1: a number outside the range of its quantity\n"),
        || seen.to_owned(),
    )?;
    let first = &sheet()?.steps[0].text;
    check(seen.contains(&format!("\n1. {first}\n")), || {
        format!("{seen}\nRust has {first}")
    })
}

/// The lines of the first page that stand further in than its prose.
fn first_page() -> Result<(), Failed> {
    let (mut before, mut body) = (String::from("#include <stdio.h>\n"), String::new());
    for line in include_str!("first_page.txt").lines() {
        match line.strip_prefix(" *     ") {
            Some(code) if code.starts_with('#') => before += &format!("{code}\n"),
            Some(code) => body += &format!("{code}\n"),
            None => {}
        }
    }
    let program =
        format!("{before}int main(void)\n{{\n{body}return speed.rpm > 234 ? 0 : 1;\n}}\n");
    check(program.contains("tw_spindle_speed_for"), || program.clone())?;
    let program = build(&write("first_page.c", &program), Language::C99, &[])?;
    run(&mut run_of(program)).map(drop)
}

/// The C block of README.
fn readme() -> Result<(), Failed> {
    let readme = std::fs::read_to_string(root().join("README.md"))?;
    let code = readme
        .split_once("```c\n")
        .and_then(|(_, rest)| rest.split_once("```"))
        .map(|(code, _)| code)
        .unwrap_or_default();
    let program = build(&write("readme.c", code), Language::C99, &[])?;
    let seen = printed(&mut run_of(program))?;
    check(
        seen.starts_with("239 rpm\n") && seen.contains("11SMn30"),
        || seen.clone(),
    )
}

fn valgrind() -> Result<(), Failed> {
    for (source, language, arguments) in all() {
        let program = build(&source, language, &["-g"])?;
        run(run_of("valgrind")
            .args([
                "--quiet",
                "--leak-check=full",
                "--errors-for-leak-kinds=definite,indirect,possible",
                "--error-exitcode=99",
            ])
            .arg(program)
            .args(arguments))?;
    }
    Ok(())
}

fn sanitizers() -> Result<(), Failed> {
    // That they are on at all: one must be caught.
    let bad = write(
        "bad.c",
        "#include <stdlib.h>\nint main(int n, char **v) { char *p = (char *)malloc(1); (void)v; p[n] = 1; free(p); return 0; }\n",
    );
    let program = scratch("bad");
    run(Command::new("cc")
        .args(SANITIZE)
        .arg(bad)
        .arg("-o")
        .arg(&program))?;
    check(run(&mut run_of(program)).is_err(), || {
        String::from("the sanitizers let a write beyond the end pass")
    })?;
    for (source, language, arguments) in all() {
        let program = build(&source, language, &SANITIZE)?;
        run(run_of(program).args(arguments))?;
    }
    Ok(())
}
