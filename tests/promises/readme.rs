//! README shows the sheet that the example prints.

use turnwright::document::plan::Question;

const START: &str = "```text\n";
const END: &str = "```\n<!-- end of sheet -->";

#[test]
fn readme_shows_the_sheet_of_the_demo() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/README.md");
    let readme = std::fs::read_to_string(path).unwrap();
    let job: toml::Table = include_str!("../../examples/jobs/metric_radius_dial.toml")
        .parse()
        .unwrap();
    let question = serde_json::json!({ "plan": job }).to_string();
    let sheet = Question::from_text(&question)
        .unwrap()
        .answer()
        .unwrap()
        .to_string();
    let sheet = sheet
        .split("\nWhere the constants come from")
        .next()
        .unwrap();
    let (before, rest) = readme.split_once(START).unwrap();
    let (shown, after) = rest.split_once(END).unwrap();
    if std::env::var_os("TW_BLESS").is_some() {
        let written = format!("{before}{START}{}\n{END}{after}", sheet.trim());
        std::fs::write(path, written).unwrap();
        return;
    }
    assert_eq!(
        shown.trim(),
        sheet.trim(),
        "README shows another sheet: TW_BLESS=1 cargo test --test promises readme"
    );
}
