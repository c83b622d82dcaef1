//! The sheet as a page to print: text of the sheet, boxes to tick, lines to write on, the picture.

use std::fmt::Write;

use super::heading::Figures;
use super::sheet::{Sheet, Step, StepKind};
use super::steps;
use super::turning::{Turning, plain};
use super::words::{RingRow, ring_rows, ring_words};
use crate::caution::{Caution, Severity};
use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::{Feed, Quantity, SpindleSpeed};
use crate::shop::dial::Ring;

/// How the page looks on paper and on a screen: black on white, no text that a copier would lose.
const STYLE: &str = "\
@page { margin: 8mm 10mm; }\
body { font: 7.3pt/1.14 Helvetica, Arial, sans-serif; color: #000; background: #fff; max-width: 190mm; margin: 0 auto; padding: 2mm 0; }\
h1 { font-size: 14pt; margin: 0 0 1mm; border-bottom: 0.6mm solid; }\
h2 { font-size: 8.6pt; margin: 1.2mm 0 0.4mm; border-bottom: 0.2mm solid; break-after: avoid; }\
p { margin: 0 0 0.4mm; }\
ul { margin: 0; padding: 0; list-style: none; }\
ul.kit { columns: 3; column-gap: 6mm; }\
li { margin: 0 0 0.3mm; padding-left: 5mm; text-indent: -5mm; break-inside: avoid; }\
.box { display: inline-block; width: 2.8mm; height: 2.8mm; border: 0.3mm solid; margin-right: 2mm; text-indent: 0; vertical-align: -0.3mm; }\
.write { display: inline-block; width: 21mm; height: 4mm; border-bottom: 0.25mm solid; }\
.danger { border: 0.6mm solid; padding: 1mm 2mm; font-weight: bold; break-inside: avoid; }\
table.steps { border-collapse: collapse; width: 100%; }\
table.steps > tbody > tr { break-inside: avoid; border-bottom: 0.1mm solid; }\
table.steps > tbody > tr > td { vertical-align: top; padding: 0.2mm 1.4mm 0.2mm 0; }\
td.number { text-align: right; font-weight: bold; white-space: nowrap; }\
.figures { font-weight: bold; }\
.why { font-size: 6.6pt; font-style: italic; }\
table.ring { border-collapse: collapse; margin: 0.8mm 0; }\
table.ring th, table.ring td { border: 0.15mm solid; padding: 0.2mm 2mm; text-align: right; font-weight: normal; }\
figure { margin: 1.5mm 0; break-inside: avoid; }\
figure svg { width: 100mm; max-width: 100%; margin: 0 auto; height: auto; display: block; }\
.sources { font-size: 5.2pt; line-height: 1.05; }\
@media print { body { max-width: none; padding: 0; } }";

impl Sheet {
    /// The sheet as one page of HTML that needs nothing beside itself: to print on A4 or Letter, to tick
    /// each step, and to write measured sizes on.
    ///
    /// # Errors
    /// As [`Job::plan`](super::Job::plan).
    ///
    /// # Example
    /// ```
    /// # fn main() -> Result<(), turnwright::Error> {
    /// # #[cfg(feature = "json")] {
    /// # let job = r#"{ "plan": { "material": "11SMn30", "stock": { "diameter": "34 mm", "length": "140 mm" },
    /// #   "part": { "diameter": "30 mm", "class": "h8", "length": "70 mm" },
    /// #   "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" },
    /// #   "lathe": { "spindle_steps": ["250 rpm", "500 rpm"], "feeds": ["0.1 mm/rev", "0.2 mm/rev"],
    /// #     "cross_slide": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100 },
    /// #     "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 } } } }"#;
    /// // An invented job, its text left out here.
    /// let page = turnwright::document::plan::Question::from_text(job)?.answer()?.page()?;
    /// assert!(page.starts_with("<!DOCTYPE html>") && page.contains("KEY OUT of the chuck"));
    /// # }
    /// # Ok(())
    /// # }
    /// ```
    pub fn page(&self) -> Result<String, Error> {
        let figures = steps::figures_after(
            &self.job,
            self.units(),
            &self.measured,
            &mut Provenance::default(),
            &mut Vec::new(),
        )?;
        let mut page = String::with_capacity(48_000);
        page.push_str("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
        page.push_str("<meta name=\"viewport\" content=\"width=device-width\">\n");
        page.push_str("<title>Operation sheet</title>\n<style>");
        page.push_str(STYLE);
        page.push_str("</style>\n</head>\n<body>\n<h1>Operation sheet</h1>\n");
        for line in &self.heading {
            paragraph(&mut page, "", line);
        }
        heading(&mut page, "Lay ready");
        page.push_str("<ul class=\"kit\">\n");
        for item in &self.kit {
            line(&mut page, &format!("{BOX}{}", escaped(item)));
        }
        page.push_str("</ul>\n");
        self.levers(&mut page);
        heading(&mut page, "Dials of this lathe");
        for line in &self.dials {
            paragraph(&mut page, "", line);
        }
        heading(&mut page, "Support");
        for line in self.support_lines() {
            paragraph(&mut page, "", &line);
        }
        for picture in self.pictures()? {
            page.push_str("<figure>\n");
            page.push_str(&picture);
            page.push_str("\n</figure>\n");
        }
        self.before_the_start(&mut page);
        heading(&mut page, "Steps");
        page.push_str("<table class=\"steps\"><tbody>\n");
        for (at, step) in self.steps.iter().enumerate() {
            self.step(&mut page, &figures, at, step)?;
        }
        page.push_str("</tbody></table>\n");
        heading(&mut page, "Expect");
        for line in self.expect_lines() {
            paragraph(&mut page, "", &line);
        }
        for line in &self.expected.how_sure {
            paragraph(&mut page, "", line);
        }
        if let Some(batch) = &self.batch {
            heading(&mut page, "Batch");
            for line in &batch.text {
                paragraph(&mut page, "", line);
            }
        }
        let notes =
            self.said(|severity| severity != Severity::Danger && severity != Severity::Warning);
        if !notes.is_empty() {
            heading(&mut page, "Mind");
            for note in notes {
                paragraph(&mut page, "", note.text());
            }
        }
        heading(&mut page, "Where the constants come from");
        page.push_str("<p class=\"sources\">");
        let mut line = String::new();
        for (at, source) in self.provenance.sources().iter().enumerate() {
            if at > 0 {
                page.push_str(" &middot; ");
            }
            line.clear();
            self.write_source(&mut line, source);
            page.push_str(&escaped(&line));
        }
        page.push_str("</p>\n</body>\n</html>\n");
        Ok(page)
    }

    fn said(&self, which: impl Fn(Severity) -> bool) -> Vec<&Caution> {
        self.cautions
            .iter()
            .filter(|caution| which(caution.severity()))
            .collect()
    }

    /// Dangers, then warnings: both are read before the first step.
    fn before_the_start(&self, page: &mut String) {
        let dangers = self.said(|severity| severity == Severity::Danger);
        let warnings = self.said(|severity| severity == Severity::Warning);
        if dangers.is_empty() && warnings.is_empty() {
            return;
        }
        heading(page, "Before the spindle turns");
        if !dangers.is_empty() {
            page.push_str("<div class=\"danger\">\n");
            for caution in dangers {
                paragraph(page, "", caution.text());
            }
            page.push_str("</div>\n");
        }
        for caution in warnings {
            paragraph(page, "", caution.text());
        }
    }

    /// The spindle steps and feeds of the sheet by the names of their levers, where they have names.
    fn levers(&self, page: &mut String) {
        let (lathe, u) = (&self.job.lathe, self.units());
        let mut speeds: Vec<SpindleSpeed> = Vec::new();
        let mut feeds: Vec<Feed> = Vec::new();
        for step in &self.steps {
            speeds.extend(step.spindle_speed.filter(|speed| !speeds.contains(speed)));
            feeds.extend(step.feed.filter(|feed| !feeds.contains(feed)));
        }
        let spindle = speeds
            .iter()
            .filter_map(|speed| Some(format!("{}: {}", speed.people(u), lathe.step_name(*speed)?)));
        let feed = feeds
            .iter()
            .filter_map(|feed| Some(format!("{}: {}", feed.people(u), lathe.feed_name(*feed)?)));
        let named: Vec<String> = spindle.chain(feed).collect();
        if !named.is_empty() {
            heading(page, "Levers");
            paragraph(page, "", &named.join("; "));
        }
    }

    fn step(
        &self,
        page: &mut String,
        figures: &Figures<'_>,
        at: usize,
        step: &Step,
    ) -> Result<(), Error> {
        let mark = if step.done { "done" } else { BOX };
        let _ = write!(
            page,
            "<tr><td>{mark}</td><td class=\"number\">{}</td><td>",
            at + 1
        );
        let table = table_of(figures, step)?;
        let text = match &table {
            // The sheet's text has the table in one line.
            Some(rows) => {
                let inline = format!(": {}", ring_words(rows, self.units()));
                step.text.replacen(&inline, ", as the table has it", 1)
            }
            None => step.text.clone(),
        };
        for line in text.lines() {
            let _ = writeln!(page, "<p>{}</p>", with_lines_to_write(&escaped(line)));
        }
        if let Some(rows) = &table {
            self.ring_table(page, rows);
        }
        let mut what = String::new();
        // A text takes whatever is written.
        let _ = self.figures(step, &mut what);
        if !what.is_empty() {
            paragraph(page, "figures", &what);
        }
        if let Some(why) = &step.because {
            paragraph(page, "why", why);
        }
        page.push_str("</td></tr>\n");
        Ok(())
    }

    fn ring_table(&self, page: &mut String, rows: &[RingRow]) {
        let sizes: Vec<String> = rows
            .iter()
            .map(|r| plain(r.size, self.units()).to_string())
            .collect();
        let marks: Vec<String> = rows.iter().map(|r| r.ring.to_string()).collect();
        let farther: Vec<String> = rows
            .iter()
            .filter_map(|r| r.farther)
            .map(|marks| marks.to_string())
            .collect();
        page.push_str("<table class=\"ring\">\n");
        for (name, cells) in [
            ("measured", sizes),
            ("ring to mark", marks),
            ("then farther by, marks", farther),
        ] {
            if cells.is_empty() {
                continue;
            }
            let _ = write!(page, "<tr><th>{name}</th>");
            for cell in cells {
                let _ = write!(page, "<td>{}</td>", escaped(&cell));
            }
            page.push_str("</tr>\n");
        }
        page.push_str("</table>\n");
    }
}

/// The ring's settings beside a measuring stop, where the sheet gives them.
fn table_of(figures: &Figures<'_>, step: &Step) -> Result<Option<Vec<RingRow>>, Error> {
    if step.kind != StepKind::Measure || figures.common.cross.ring() != Ring::Settable {
        return Ok(None);
    }
    let (Some(surface), Some(reading)) = (step.surface, step.reading) else {
        return Ok(None);
    };
    let mark = reading.divisions().count();
    let of_surface = |turning: &&Turning<'_>| turning.place.at == surface;
    let Some(turning) = figures.turnings.iter().flatten().find(of_surface) else {
        return Ok(None);
    };
    let Some(cut) = turning.cuts.iter().position(|cut| cut.mark == mark) else {
        return Ok(None);
    };
    let rows = ring_rows(turning, &figures.common, cut)?;
    Ok((!rows.is_empty()).then_some(rows))
}

const BOX: &str = "<span class=\"box\"></span>";

fn heading(page: &mut String, text: &str) {
    let _ = writeln!(page, "<h2>{}</h2>", escaped(text));
}

fn paragraph(page: &mut String, class: &str, text: &str) {
    let text = escaped(text);
    let _ = match class {
        "" => writeln!(page, "<p>{text}</p>"),
        class => writeln!(page, "<p class=\"{class}\">{text}</p>"),
    };
}

fn line(page: &mut String, inside: &str) {
    let _ = writeln!(page, "<li>{inside}</li>");
}

/// Text as it stands in HTML.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 8);
    for c in text.chars() {
        match c {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&#39;"),
            other => out.push(other),
        }
    }
    out
}

/// A row of underscores is a line to write on.
fn with_lines_to_write(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    let mut blank = 0;
    for c in text.chars().chain([' ']) {
        if c == '_' {
            blank += 1;
            continue;
        }
        match blank {
            0 => {}
            few @ 1..4 => out.push_str(&"_".repeat(few)),
            _ => out.push_str("<span class=\"write\"></span>"),
        }
        blank = 0;
        out.push(c);
    }
    out.truncate(out.trim_end().len());
    out
}
