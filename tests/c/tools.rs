//! Compilers and other tools: where they are, and how they are run.

use std::path::{Path, PathBuf};
use std::process::{Command, Output};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};

use libtest_mimic::Failed;

/// A tool that a trial needs.
#[derive(Clone, Copy, PartialEq)]
pub enum Tool {
    Cc,
    Cxx,
    Valgrind,
    Nm,
    Sanitizers,
    Clang,
}

impl Tool {
    pub fn name(self) -> &'static str {
        match self {
            Tool::Cc => "cc",
            Tool::Cxx => "c++",
            Tool::Valgrind => "valgrind",
            Tool::Nm => "nm",
            Tool::Sanitizers => "cc -fsanitize=address,undefined",
            Tool::Clang => "clang",
        }
    }

    pub fn is_here(self) -> bool {
        match self {
            Tool::Sanitizers => {
                Tool::Cc.is_here() && {
                    let main = write("probe.c", "int main(void) { return 0; }\n");
                    let program = scratch("probe");
                    run(Command::new("cc")
                        .args(SANITIZE)
                        .arg(main)
                        .arg("-o")
                        .arg(&program))
                    .is_ok()
                        && run(&mut Command::new(program)).is_ok()
                }
            }
            tool => Command::new(tool.name())
                .arg("--version")
                .output()
                .is_ok_and(|output| output.status.success()),
        }
    }
}

/// What turns the sanitizers on.
pub const SANITIZE: [&str; 4] = [
    "-g",
    "-fsanitize=address,undefined",
    "-fno-sanitize-recover=all",
    "-fno-omit-frame-pointer",
];

/// All warnings, as errors.
pub const STRICT: [&str; 4] = ["-Wall", "-Wextra", "-Wpedantic", "-Werror"];

/// The language of a program.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Language {
    C99,
    C11,
    Cxx11,
    Cxx17,
    Cxx20,
}

impl Language {
    pub const ALL: [Language; 5] = [
        Language::C99,
        Language::C11,
        Language::Cxx11,
        Language::Cxx17,
        Language::Cxx20,
    ];

    pub fn tool(self) -> Tool {
        match self {
            Language::C99 | Language::C11 => Tool::Cc,
            Language::Cxx11 | Language::Cxx17 | Language::Cxx20 => Tool::Cxx,
        }
    }

    /// A compiler for it, with the header found.
    pub fn compiler(self) -> Command {
        self.with(self.tool())
    }

    /// This compiler for it, with the header found.
    pub fn with(self, compiler: Tool) -> Command {
        let mut command = Command::new(compiler.name());
        command.args(match self {
            Language::C99 => ["-std=c99", "-xc"],
            Language::C11 => ["-std=c11", "-xc"],
            Language::Cxx11 => ["-std=c++11", "-xc++"],
            Language::Cxx17 => ["-std=c++17", "-xc++"],
            Language::Cxx20 => ["-std=c++20", "-xc++"],
        });
        command.arg("-I").arg(root().join("include"));
        command
    }
}

/// The root of the crate.
pub fn root() -> &'static Path {
    Path::new(env!("CARGO_MANIFEST_DIR"))
}

/// The folder for what this run leaves behind.
pub fn folder() -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR"))
        .join("c")
        .join(std::process::id().to_string())
}

/// A path of its own in that folder.
pub fn scratch(name: &str) -> PathBuf {
    static NEXT: AtomicUsize = AtomicUsize::new(0);
    let number = NEXT.fetch_add(1, Ordering::Relaxed);
    std::fs::create_dir_all(folder()).unwrap();
    folder().join(format!("{number}-{name}"))
}

/// A scratch file with that text.
pub fn write(name: &str, text: &str) -> PathBuf {
    let path = scratch(name);
    std::fs::write(&path, text).unwrap();
    path
}

/// Runs a command; what it says when it fails.
pub fn run(command: &mut Command) -> Result<Output, Failed> {
    let output = command
        .output()
        .map_err(|trouble| Failed::from(format!("{command:?}: {trouble}")))?;
    if output.status.success() {
        return Ok(output);
    }
    Err(Failed::from(format!(
        "{command:?}: {}\n{}{}",
        output.status,
        String::from_utf8_lossy(&output.stdout),
        String::from_utf8_lossy(&output.stderr)
    )))
}

/// What a command prints.
pub fn printed(command: &mut Command) -> Result<String, Failed> {
    Ok(String::from_utf8_lossy(&run(command)?.stdout).into_owned())
}

/// The folder with the shared library that was built with this binary, and the library itself.
///
/// A build without the C doors writes to the same place; what lies there is then not ours, and one
/// with them is built apart.
pub fn library() -> (PathBuf, PathBuf) {
    static FOUND: OnceLock<(PathBuf, PathBuf)> = OnceLock::new();
    FOUND.get_or_init(find_library).clone()
}

fn find_library() -> (PathBuf, PathBuf) {
    let name = format!(
        "{}turnwright{}",
        std::env::consts::DLL_PREFIX,
        std::env::consts::DLL_SUFFIX
    );
    let binary = std::env::current_exe().unwrap();
    let beside = binary
        .ancestors()
        .skip(1)
        .take(3)
        .map(|folder| (folder.to_owned(), folder.join(&name)))
        .find(|(_, library)| has_the_doors(library));
    beside.unwrap_or_else(|| {
        let target = Path::new(env!("CARGO_TARGET_TMPDIR")).join("with-capi");
        let mut build = Command::new(env!("CARGO"));
        build
            .current_dir(root())
            .args([
                "build",
                "--offline",
                "--lib",
                "--features",
                "capi",
                "--target-dir",
            ])
            .arg(&target);
        run(&mut build).unwrap_or_else(|_| panic!("{build:?} failed"));
        let folder = target.join("debug");
        let library = folder.join(&name);
        assert!(
            has_the_doors(&library),
            "{} has no C doors",
            library.display()
        );
        (folder, library)
    })
}

fn has_the_doors(library: &Path) -> bool {
    std::fs::read(library)
        .is_ok_and(|bytes| bytes.windows(10).any(|window| window == b"tw_version"))
}

/// A program that was built here, to be run with the library it was linked with: cargo's own search
/// path would lead to another build's.
pub fn run_of(path: impl AsRef<std::ffi::OsStr>) -> Command {
    let mut command = Command::new(path);
    command
        .env_remove("LD_LIBRARY_PATH")
        .env_remove("DYLD_LIBRARY_PATH");
    command
}

/// Compiles and links a program with the shared library, found at run time where it lies.
pub fn build(source: &Path, language: Language, more: &[&str]) -> Result<PathBuf, Failed> {
    let (folder, _) = library();
    let program = scratch("program");
    let mut rpath = std::ffi::OsString::from("-Wl,-rpath,");
    rpath.push(&folder);
    run(language
        .compiler()
        .args(STRICT)
        .args(more)
        .arg(source)
        .arg("-o")
        .arg(&program)
        .arg("-L")
        .arg(&folder)
        .args(["-lturnwright", "-lm"])
        .arg(rpath))?;
    Ok(program)
}
