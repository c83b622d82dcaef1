//! Pictures and pages: to scale, readable, complete, and nothing but themselves.

use std::path::PathBuf;
use std::process::Command;

use proptest::test_runner::TestRunner;
use roxmltree::Document;
use turnwright::document::plan::Question;
use turnwright::plan::{Job, Preferences, Sheet};
use turnwright::{Holding, HoldingKind, Units};

const DEMO: &str = include_str!("../../examples/jobs/metric_radius_dial.toml");
const JOBS: [(&str, &str); 3] = [
    ("metric", DEMO),
    (
        "inch",
        include_str!("../../examples/jobs/inch_diameter_dial.toml"),
    ),
    (
        "both_ends",
        include_str!("../../examples/jobs/both_ends.toml"),
    ),
];

/// Width of a letter over its height: wider than the digits of Helvetica (0.556) and about those of
/// DejaVu Sans (0.636), most other letters of both are narrower. From memory of their metrics.
const LETTER: f64 = 0.62;

fn sheet_of(toml: &str) -> Sheet {
    let job: toml::Table = toml.parse().unwrap();
    let question = serde_json::json!({ "plan": job }).to_string();
    Question::from_text(&question).unwrap().answer().unwrap()
}

/// Random sheets in both units, of one diameter and of several.
fn on_sheets(check: impl Fn(&Job, &Sheet)) {
    let mut planned = 0;
    let mut runner = TestRunner::new(crate::jobs::config(256));
    let jobs = [
        proptest::strategy::Strategy::boxed(super::jobs::job()),
        proptest::strategy::Strategy::boxed(super::parts::job()),
    ];
    for at in 0..240 {
        use proptest::strategy::{Strategy, ValueTree};
        let job = jobs[at % 2].new_tree(&mut runner).unwrap().current();
        let job = match at % 5 {
            4 => job.with_holding(Holding::new(HoldingKind::BetweenCentres)),
            _ => job,
        };
        let units = [Units::Metric, Units::Inch][at / 2 % 2];
        if let Ok(sheet) = job.plan(units) {
            planned += 1;
            check(&job, &sheet);
        }
    }
    assert!(planned > 40, "only {planned} were planned");
}

/// Left, top, right and bottom of every text, by the estimate.
fn texts(picture: &Document<'_>) -> Vec<(String, [f64; 4])> {
    let nodes = picture.descendants().filter(|n| n.has_tag_name("text"));
    nodes
        .map(|node| {
            let text: String = node.text().unwrap().trim().to_owned();
            let figure = |name: &str| node.attribute(name).unwrap().parse::<f64>().unwrap();
            let (x, y, size) = (figure("x"), figure("y"), figure("font-size"));
            let width = LETTER * size * text.chars().count() as f64;
            let left = match node.attribute("text-anchor") {
                Some("end") => x - width,
                _ => x,
            };
            (text, [left, y - 0.75 * size, left + width, y + 0.25 * size])
        })
        .collect()
}

#[test]
fn texts_lie_on_the_paper_and_clear_of_each_other() {
    on_sheets(|_, sheet| {
        let pictures = sheet.pictures().unwrap();
        assert_eq!(pictures.len(), sheet.support.len());
        for picture in &pictures {
            let document = Document::parse(picture).unwrap();
            let view = document.root_element().attribute("viewBox").unwrap();
            let view: Vec<f64> = view.split(' ').map(|n| n.parse().unwrap()).collect();
            let texts = texts(&document);
            for (at, (text, [l, t, r, b])) in texts.iter().enumerate() {
                let inside = *l >= 0.0 && *t >= 0.0 && *r <= view[2] && *b <= view[3];
                assert!(
                    inside,
                    "{text:?} leaves the paper {view:?}: {l} {t} {r} {b}"
                );
                for (other, [l2, t2, r2, b2]) in &texts[at + 1..] {
                    let clear = r <= l2 || r2 <= l || b <= t2 || b2 <= t;
                    assert!(clear, "{text:?} lies on {other:?}");
                }
            }
        }
    });
}

#[test]
fn diameters_and_shoulders_are_drawn_to_scale() {
    on_sheets(|job, sheet| {
        let ends = [job.part().surfaces(), job.part().other_end()];
        for (picture, surfaces) in sheet.pictures().unwrap().iter().zip(ends) {
            let document = Document::parse(picture).unwrap();
            let root = document.root_element();
            let figure = |name: &str| root.attribute(name).unwrap().parse::<f64>().unwrap();
            let (along, across) = (figure("data-length-scale"), figure("data-diameter-scale"));
            let (face, axis) = (figure("data-face-x"), figure("data-axis-y"));
            let path = document
                .descendants()
                .find(|n| n.attribute("class") == Some("part"))
                .and_then(|n| n.attribute("d"))
                .unwrap();
            let points: Vec<(f64, f64)> = path[1..]
                .split(" L")
                .map(|pair| {
                    let (x, y) = pair.split_once(' ').unwrap();
                    let (x, y): (f64, f64) = (x.parse().unwrap(), y.parse().unwrap());
                    ((face - x) / along, 2.0 * (axis - y) / across)
                })
                .collect();
            // Coordinates have three decimals of a millimetre of paper.
            let (by_x, by_y) = (0.0006 / along, 0.0012 / across);
            let mut reach = 0.0;
            for surface in surfaces {
                reach += surface.length().mm();
                let middle = surface.limits().middle().mm();
                let there = points
                    .iter()
                    .any(|(z, d)| (z - reach).abs() < by_x && (d - middle).abs() < by_y);
                assert!(there, "no shoulder of {middle} at {reach} in {points:?}");
            }
        }
    });
}

#[test]
fn every_cut_of_the_sheet_has_its_line() {
    for (_, job) in JOBS {
        let sheet = sheet_of(job);
        let pictures = sheet.pictures().unwrap();
        let lines: usize = pictures
            .iter()
            .map(|picture| picture.matches("class=\"cut\"").count())
            .sum();
        assert_eq!(lines, sheet.cuts().count());
    }
}

#[test]
fn a_part_that_is_parted_off_shows_both_sides_of_the_blade_to_scale() {
    let sheet = sheet_of(DEMO);
    let parted = |picture: &str| -> Vec<f64> {
        let document = Document::parse(picture).unwrap();
        let root = document.root_element();
        let figure = |name: &str| root.attribute(name).unwrap().parse::<f64>().unwrap();
        let (along, face) = (figure("data-length-scale"), figure("data-face-x"));
        let sides = document
            .descendants()
            .filter(|n| n.attribute("class") == Some("parting"));
        let x = sides.map(|n| {
            let path = n.attribute("d").unwrap();
            path[1..].split_once(' ').unwrap().0.parse::<f64>().unwrap()
        });
        x.map(|x| (face - x) / along).collect()
    };
    assert!(parted(&sheet.pictures().unwrap()[0]).is_empty());
    let parting = "3 mm".parse().unwrap();
    let preferences = Preferences::default().with_parting(parting);
    let job = sheet.job.with_preferences(preferences);
    let sheet = job.plan(Units::Metric).unwrap();
    let sides = parted(&sheet.pictures().unwrap()[0]);
    let length = job.part().surfaces()[0].length().mm();
    // Coordinates have three decimals of a millimetre of paper, drawn at about their size.
    for (side, at) in [(sides[0], length), (sides[1], length + 3.0)] {
        assert!((side - at).abs() < 0.002, "{side} for {at}");
    }
}

#[test]
fn a_page_escapes_names_and_reaches_for_nothing() {
    let mut job: toml::Table = DEMO.parse().unwrap();
    let mut material = toml::Table::new();
    material.insert(String::from("like"), "11SMn30".into());
    material.insert(String::from("name"), "<b>Steel</b> & \"more\" 'so'".into());
    job.insert(String::from("material"), material.into());
    let question = serde_json::json!({ "plan": job }).to_string();
    let sheet = Question::from_text(&question).unwrap().answer().unwrap();
    let page = sheet.page().unwrap();
    assert!(!page.contains("<b>"), "a name became a tag");
    assert!(page.contains("&lt;b&gt;Steel"), "the name is not there");
    let namespace = "http://www.w3.org/2000/svg";
    let rest = page.replace(namespace, "");
    for outside in ["http", "//", "url(", "src=", "href", "<script", "@import"] {
        assert!(!rest.contains(outside), "{outside}");
    }
}

#[test]
fn a_page_has_a_box_or_a_done_for_every_step_and_a_table_for_every_stop() {
    for (_, job) in JOBS {
        let sheet = sheet_of(job);
        let page = sheet.page().unwrap();
        let boxes = page.matches("<tr><td><span class=\"box\">").count();
        assert_eq!(boxes, sheet.steps.len());
        let stops = sheet.steps.iter();
        let stops = stops.filter(|s| s.kind == turnwright::plan::StepKind::Measure);
        assert_eq!(page.matches("class=\"ring\"").count(), stops.count());
        assert_eq!(
            page.matches("as the table has it").count(),
            page.matches("class=\"ring\"").count()
        );
        assert_eq!(page.matches("<!DOCTYPE").count(), 1);
        assert!(
            !page.contains("___"),
            "a line to write on is printed as letters"
        );
    }
}

#[test]
fn a_document_brings_picture_and_page_only_where_asked() {
    let job: toml::Table = DEMO.parse().unwrap();
    let mut question = serde_json::json!({ "plan": job });
    let plain = turnwright::document::answer(&question.to_string()).unwrap();
    let plain: serde_json::Value = serde_json::from_str(&plain).unwrap();
    assert!(plain["plan"].get("pictures").is_none() && plain["plan"].get("page").is_none());
    question["plan"]["with"] = serde_json::json!(["picture", "page"]);
    let rich = turnwright::document::answer(&question.to_string()).unwrap();
    let mut rich: serde_json::Value = serde_json::from_str(&rich).unwrap();
    let sheet = sheet_of(DEMO);
    let fields = rich["plan"].as_object_mut().unwrap();
    let pictures = fields.remove("pictures").unwrap();
    assert_eq!(pictures, serde_json::json!(sheet.pictures().unwrap()));
    assert_eq!(
        fields.remove("page").unwrap(),
        sheet.page().unwrap().as_str()
    );
    assert_eq!(rich, plain, "the rest is as it was");
    question["plan"]["with"] = serde_json::json!(["film"]);
    let error = turnwright::document::answer(&question.to_string()).unwrap_err();
    assert_eq!(error.field(), "with[0]");
}

/// The answer of the document door to a question.
fn ask(question: &serde_json::Value) -> serde_json::Value {
    let answer = turnwright::document::answer(&question.to_string()).unwrap();
    serde_json::from_str(&answer).unwrap()
}

/// The job, its sheet, and a measuring stop of it with what was expected there.
fn first_stop(job: &str, units: &str) -> (serde_json::Value, usize, serde_json::Value) {
    let job: toml::Table = job.parse().unwrap();
    let mut question = serde_json::json!({ "plan": job });
    question["plan"]["units"] = units.into();
    let sheet = ask(&question)["plan"].take();
    let steps = sheet["steps"].as_array().unwrap();
    let stop = steps.iter().position(|s| s["kind"] == "measure").unwrap();
    let expected = steps[stop]["diameter"].clone();
    (sheet, stop, expected)
}

#[test]
fn the_sheet_after_a_measurement_brings_picture_and_page_where_asked() {
    for (name, job) in JOBS {
        for units in ["metric", "inch"] {
            let (sheet, stop, expected) = first_stop(job, units);
            let size: turnwright::Diameter = expected.as_str().unwrap().parse().unwrap();
            // As expected, and an invented 0.02 mm larger.
            for off in [0.0, 0.02] {
                let measured = format!("{} mm", size.mm() + off);
                let mut question = serde_json::json!({ "after_measurement": {
                    "plan": sheet, "step": stop, "measured": measured } });
                let plain = ask(&question);
                let follows = &plain["after_measurement"]["plan"];
                assert!(follows["steps"].is_array(), "{name}: no sheet follows");
                assert!(follows.get("pictures").is_none() && follows.get("page").is_none());
                question["after_measurement"]["with"] = serde_json::json!(["picture", "page"]);
                let mut rich = ask(&question);
                let fields = rich["after_measurement"]["plan"].as_object_mut().unwrap();
                let pictures = fields.remove("pictures").unwrap();
                let page = fields.remove("page").unwrap();
                assert_eq!(rich, plain, "the rest is as it was");
                let pictures = pictures.as_array().unwrap();
                assert_eq!(
                    pictures.len(),
                    follows["support"].as_array().unwrap().len(),
                    "{name}"
                );
                for picture in pictures {
                    Document::parse(picture.as_str().unwrap()).unwrap();
                }
                let page = page.as_str().unwrap();
                let boxes = page.matches("<tr><td><span class=\"box\">").count();
                let done = page.matches("<tr><td>done").count();
                assert!(done > 0 && boxes > 0, "{name}: {done} done, {boxes} to do");
                let steps = follows["steps"].as_array().unwrap().len();
                assert_eq!(boxes + done, steps, "{name}");
                for picture in pictures {
                    assert!(
                        page.contains(picture.as_str().unwrap()),
                        "{name}: the page shows another picture"
                    );
                }
                // The new sheet comes back in as it went out, drawings and all.
                let later = follows["steps"]
                    .as_array()
                    .unwrap()
                    .iter()
                    .rposition(|s| s["kind"] == "measure")
                    .unwrap();
                if later > stop {
                    let again = |with: bool| {
                        let mut plan = follows.clone();
                        if with {
                            plan["pictures"] = pictures.clone().into();
                            plan["page"] = page.into();
                        }
                        let measured = follows["steps"][later]["diameter"].clone();
                        ask(
                            &serde_json::json!({ "after_measurement": { "plan": plan, "step": later, "measured": measured } }),
                        )
                    };
                    assert_eq!(again(true), again(false), "{name}");
                }
            }
        }
    }
}

#[test]
fn a_measurement_is_asked_for_nothing_else_beside_its_sheet() {
    let (sheet, stop, measured) = first_stop(DEMO, "metric");
    for (with, field) in [
        (serde_json::json!(["picture", "film"]), "with[1]"),
        (serde_json::json!("page"), "with"),
        (serde_json::json!([1]), "with[0]"),
    ] {
        let question = serde_json::json!({ "after_measurement": {
            "plan": sheet, "step": stop, "measured": measured, "with": with } });
        let error = turnwright::document::answer(&question.to_string()).unwrap_err();
        assert_eq!(error.field(), field, "{error}");
        assert!(!error.remedy().is_empty());
    }
}

/// What a person reads of a page or a picture: its text without tags and styles, up to the sources of the
/// constants, which are quoted as they were remembered.
fn read_by_a_person(markup: &str) -> String {
    let without_style = match (markup.find("<style"), markup.find("</style>")) {
        (Some(from), Some(to)) => format!("{}{}", &markup[..from], &markup[to..]),
        _ => markup.to_owned(),
    };
    let mut text = String::new();
    let mut inside = false;
    for letter in without_style.chars() {
        match letter {
            '<' => inside = true,
            '>' => {
                inside = false;
                text.push(' ');
            }
            _ if !inside => text.push(letter),
            _ => {}
        }
    }
    match text.find("Where the constants come from") {
        Some(sources) => text[..sources].to_owned(),
        None => text,
    }
}

/// The first length in this unit, and what stands before it.
fn length_in(text: &str, unit: &str) -> Option<String> {
    let words: Vec<&str> = text
        .split(|c: char| c.is_whitespace() || ",;:()".contains(c))
        .filter(|word| !word.is_empty())
        .collect();
    // A centre drill is named by its pilot in mm everywhere.
    let mut lengths = words.windows(4).filter(|of| {
        of[1] != "pilot"
            && of[2].parse::<f64>().is_ok()
            && of[3].trim_end_matches(['.', '/']) == unit
    });
    lengths.next().map(|of| of.join(" "))
}

#[test]
fn an_inch_page_speaks_of_inches_and_a_metric_one_of_millimetres() {
    for (name, job) in JOBS {
        for (units, own, other) in [("inch", "in", "mm"), ("metric", "mm", "in")] {
            let job: toml::Table = job.parse().unwrap();
            let mut question = serde_json::json!({ "plan": job });
            question["plan"]["units"] = units.into();
            question["plan"]["with"] = serde_json::json!(["picture", "page"]);
            let sheet = ask(&question)["plan"].take();
            assert_eq!(sheet["units"], units);
            let page = read_by_a_person(sheet["page"].as_str().unwrap());
            // An edge is broken by eye, which both may read in both units.
            let page = page.replace("half a millimetre (0.02 in)", "half a millimetre");
            // A note of the catalogue is quoted as it stands there.
            let page = page.replace("(about 20 % less at h = 0.2 mm)", "");
            assert!(length_in(&page, own).is_some(), "{name}: no {own}");
            assert_eq!(length_in(&page, other), None, "{name} in {units}");
            // A dial and a size of the sheet stand on the page in its units.
            let steps = sheet["steps"].as_array().unwrap();
            let last = steps.iter().rfind(|s| s["kind"] == "finish_cut").unwrap();
            let size: turnwright::Diameter = last["diameter"].as_str().unwrap().parse().unwrap();
            let units = if units == "inch" {
                Units::Inch
            } else {
                Units::Metric
            };
            let size = turnwright::Quantity::people(size, units);
            assert!(
                page.contains(&size.to_string()),
                "{name}: {size} is not on the page"
            );
            for picture in sheet["pictures"].as_array().unwrap() {
                let picture = read_by_a_person(picture.as_str().unwrap());
                assert_eq!(length_in(&picture, other), None, "{name} in {units:?}");
            }
        }
    }
}

fn scratch(file: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join("pictures");
    std::fs::create_dir_all(&folder).unwrap();
    folder.join(file)
}

/// True where the tools are here; where CI asks for them they must be.
fn tools_are_here() -> bool {
    let here = |tool: &str, flag: &str| Command::new(tool).arg(flag).output().is_ok();
    let all = here("chromium", "--version") && here("pdfinfo", "-v") && here("pdftoppm", "-v");
    let in_ci = std::env::var("CI").is_ok_and(|ci| ci == "true");
    assert!(all || !in_ci, "chromium, pdfinfo or pdftoppm is not here");
    if !all {
        eprintln!("ignored: chromium, pdfinfo or pdftoppm is not here");
    }
    all
}

fn printed(name: &str, page: &str) -> PathBuf {
    let (html, pdf) = (
        scratch(&format!("{name}.html")),
        scratch(&format!("{name}.pdf")),
    );
    std::fs::write(&html, page).unwrap();
    let done = Command::new("chromium")
        .args([
            "--headless",
            "--no-sandbox",
            "--disable-gpu",
            "--no-pdf-header-footer",
        ])
        .arg(format!("--print-to-pdf={}", pdf.display()))
        .arg(format!("file://{}", html.display()))
        .output()
        .unwrap();
    assert!(
        done.status.success(),
        "{}",
        String::from_utf8_lossy(&done.stderr)
    );
    pdf
}

fn pages(pdf: &PathBuf) -> usize {
    let info = Command::new("pdfinfo").arg(pdf).output().unwrap();
    let info = String::from_utf8_lossy(&info.stdout).into_owned();
    let line = info
        .lines()
        .find(|line| line.starts_with("Pages:"))
        .unwrap();
    line["Pages:".len()..].trim().parse().unwrap()
}

#[test]
fn the_demo_prints_on_two_pages_of_a4_or_letter() {
    if !tools_are_here() {
        return;
    }
    let inch = DEMO.replacen("material = ", "units = \"inch\"\nmaterial = ", 1);
    assert_ne!(inch, DEMO);
    for (units, demo) in [("metric", DEMO), ("inch", inch.as_str())] {
        let page = sheet_of(demo).page().unwrap();
        for size in ["A4", "Letter"] {
            let sized = page.replacen("@page {", &format!("@page {{ size: {size};"), 1);
            assert!(
                pages(&printed(&format!("demo_{units}_{size}"), &sized)) <= 2,
                "{units} on {size}"
            );
        }
    }
}

#[test]
fn a_browser_shows_every_picture_whole() {
    if !tools_are_here() {
        return;
    }
    for (name, job) in JOBS {
        for (at, picture) in sheet_of(job).pictures().unwrap().iter().enumerate() {
            let page = format!(
                "<style>@page {{ size: 200mm 300mm; margin: 0 }} body {{ margin: 0 }}</style>{picture}"
            );
            let pdf = printed(&format!("{name}_{at}"), &page);
            assert_eq!(pages(&pdf), 1);
            let grey = Command::new("pdftoppm")
                .args(["-gray", "-r", "100"])
                .arg(&pdf)
                .output()
                .unwrap()
                .stdout;
            // P5, width, height, 255, then the bytes.
            let head: Vec<&[u8]> = grey
                .splitn(4, |b| b.is_ascii_whitespace())
                .take(3)
                .collect();
            let number =
                |at: usize| -> usize { String::from_utf8_lossy(head[at]).parse().unwrap() };
            let (width, height) = (number(1), number(2));
            let pixels = &grey[grey.len() - width * height..];
            let dark = |from: usize, to: usize| {
                pixels
                    .chunks(width)
                    .flat_map(|row| &row[from..to])
                    .filter(|grey| **grey < 128)
                    .count()
            };
            assert!(dark(0, width) > 2000, "{name} is blank");
            // The picture ends at 190 mm of 200: what is dark in its last millimetre was cut off.
            assert_eq!(dark(width * 189 / 200, width), 0, "{name} is cut off");
        }
    }
}
