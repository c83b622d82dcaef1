//! Swapped quantities do not compile; each case has a twin that differs in one token and does.

#[test]
fn swapped_quantities_do_not_compile() {
    let cases = trybuild::TestCases::new();
    cases.compile_fail("tests/promises/refused/*.rs");
    cases.pass("tests/promises/accepted/*.rs");
}
