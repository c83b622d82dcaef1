//! Swapped quantities do not compile; each case has a twin that differs in one token and does.

/// The compiler whose words stand in `refused/*.stderr`; another one says the same in other words.
const WORDS_OF: &str = "rustc 1.95.";

#[test]
fn swapped_quantities_do_not_compile() {
    let rustc = std::env::var_os("RUSTC").unwrap_or_else(|| "rustc".into());
    let version = std::process::Command::new(rustc)
        .arg("--version")
        .output()
        .unwrap();
    let version = String::from_utf8_lossy(&version.stdout).into_owned();
    let cases = trybuild::TestCases::new();
    if version.starts_with(WORDS_OF) {
        cases.compile_fail("tests/promises/refused/*.rs");
    } else {
        assert!(
            std::env::var_os("CI").is_none(),
            "{version} is not {WORDS_OF}x: record its words anew"
        );
        eprintln!(
            "{version}: words are recorded for {WORDS_OF}x; the doc tests hold that swaps do not compile"
        );
    }
    cases.pass("tests/promises/accepted/*.rs");
}
