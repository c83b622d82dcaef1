//! A sheet of paper to draw on: lines, texts and labels that keep clear of each other.
//!
//! Its unit is a millimetre of paper, x to the right and y down.

use svg::node::element::{Path, Rectangle, Text};
use svg::{Document, Node};

/// Width of a letter over its size: a little more than that of the digits of common sans-serif fonts, so
/// that an estimated text is never narrower than the printed one. Judgement, no source.
const LETTER: f64 = 0.62;

/// Heights of letters.
pub(super) const TITLE: f64 = 3.4;
pub(super) const PLAIN: f64 = 2.7;

/// From one line of text to the next.
pub(super) const LINE: f64 = 3.9;

/// Widths of lines: a thick one is twice a thin one and more, ISO 128-2, from memory.
pub(super) const THICK: f64 = 0.5;
pub(super) const THIN: f64 = 0.18;

/// Dashes of lines.
pub(super) const WHOLE: &str = "";
pub(super) const DASHED: &str = "1.6 1";
pub(super) const AXIS: &str = "5 1 0.6 1";

/// An estimate of how wide a text is printed.
pub(super) fn width_of(text: &str, size: f64) -> f64 {
    LETTER * size * text.chars().count() as f64
}

/// A number as it stands in the drawing.
fn short(value: f64) -> String {
    let text = format!("{value:.3}");
    let text = text.trim_end_matches('0').trim_end_matches('.');
    if text == "-0" { "0" } else { text }.to_owned()
}

/// What is drawn.
pub(super) struct Paper {
    pub(super) width: f64,
    nodes: Vec<Box<dyn Node>>,
}

impl Paper {
    pub(super) fn new(width: f64) -> Self {
        Self {
            width,
            nodes: Vec::new(),
        }
    }

    /// A line through these points; `what` names it for whoever reads the drawing again.
    pub(super) fn line(&mut self, what: &str, points: &[(f64, f64)], width: f64, dashes: &str) {
        let mut data = String::new();
        for (at, (x, y)) in points.iter().enumerate() {
            let step = if at == 0 { "M" } else { " L" };
            data.push_str(&format!("{step}{} {}", short(*x), short(*y)));
        }
        let mut path = Path::new()
            .set("class", what)
            .set("d", data)
            .set("fill", "none")
            .set("stroke", "black")
            .set("stroke-linejoin", "round")
            .set("stroke-width", short(width));
        if !dashes.is_empty() {
            path = path.set("stroke-dasharray", dashes);
        }
        self.nodes.push(Box::new(path));
    }

    /// A rectangle hatched at 45 degrees.
    pub(super) fn hatched(&mut self, what: &str, (left, top): (f64, f64), (w, h): (f64, f64)) {
        let (right, bottom) = (left + w, top + h);
        let around = [
            (left, top),
            (right, top),
            (right, bottom),
            (left, bottom),
            (left, top),
        ];
        self.line(what, &around, 2.0 * THIN, WHOLE);
        let mut along = 1.6;
        while along < w + h {
            let from = match along <= h {
                true => (left, top + along),
                false => (left + along - h, bottom),
            };
            let to = match along <= w {
                true => (left + along, top),
                false => (right, top + along - w),
            };
            self.line("hatch", &[from, to], 0.7 * THIN, WHOLE);
            along += 1.6;
        }
    }

    /// A small filled triangle on a line, its tip at the place: a datum.
    pub(super) fn datum(&mut self, (x, y): (f64, f64)) {
        let data = format!("M{} {} l-1 -1.8 h2 z", short(x), short(y));
        self.nodes
            .push(Box::new(Path::new().set("class", "datum").set("d", data)));
    }

    /// A text that begins at x, on white, so that a line behind it does not strike it through.
    pub(super) fn text(&mut self, place: (f64, f64), size: f64, text: &str) {
        self.put(place, size, text, false);
    }

    /// The same, ending at x where `ends` is true.
    fn put(&mut self, (x, y): (f64, f64), size: f64, text: &str, ends: bool) {
        // Common letters are narrower than the estimate: more white would wipe out lines beside the text.
        let width = 0.85 * width_of(text, size);
        let left = if ends { x - width } else { x };
        self.nodes.push(Box::new(
            Rectangle::new()
                .set("class", "ground")
                .set("x", short(left - 0.4))
                .set("y", short(y - 0.85 * size))
                .set("width", short(width + 0.8))
                .set("height", short(1.1 * size))
                .set("fill", "white"),
        ));
        let mut node = Text::new(text)
            .set("x", short(x))
            .set("y", short(y))
            .set("font-size", short(size))
            .set("font-family", "Helvetica, Arial, sans-serif");
        if ends {
            node = node.set("text-anchor", "end");
        }
        if size == TITLE {
            node = node.set("font-weight", "bold");
        }
        self.nodes.push(Box::new(node));
    }

    /// Labels in rows of their own, each led to its place from `y`, upwards (`step` below zero) or downwards.
    ///
    /// The leftmost takes the nearest row and each reaches to the left of its place, so that no leader
    /// crosses a text but where the paper's edge pushed it back. Returns the y of the last row.
    pub(super) fn labels(&mut self, mut labels: Vec<Label>, y: f64, step: f64) -> f64 {
        labels.sort_by(|a, b| a.place.0.total_cmp(&b.place.0));
        let mut at = y;
        let mut texts = Vec::with_capacity(labels.len());
        for label in labels {
            let (x, from) = label.place;
            let end = if step < 0.0 { at + 0.9 } else { at - PLAIN };
            self.line("leader", &[(x, from), (x, end)], THIN, WHOLE);
            let width = width_of(&label.text, PLAIN);
            // Where the paper ends before the text, the text begins at the edge.
            let ends = x + 0.8 - width >= 1.0;
            let anchor = if ends { x + 0.8 } else { 1.0 };
            texts.push(((anchor, at), label.text, ends));
            at += step;
        }
        // After all leaders, so that the white of a text lies over those that pass behind it.
        for (place, text, ends) in texts {
            self.put(place, PLAIN, &text, ends);
        }
        at - step
    }

    /// Lines of text, wrapped to the width of the paper; returns the y of the last.
    pub(super) fn lines(&mut self, mut y: f64, size: f64, text: &str) -> f64 {
        let most = self.width - 2.0;
        let mut line = String::new();
        for word in text.split_whitespace() {
            if !line.is_empty() && width_of(&format!("{line} {word}"), size) > most {
                self.text((1.0, y), size, &line);
                y += LINE;
                line.clear();
            }
            if !line.is_empty() {
                line.push(' ');
            }
            line.push_str(word);
        }
        self.text((1.0, y), size, &line);
        y
    }

    /// The drawing, so high, with figures by which it can be measured.
    pub(super) fn finish(self, height: f64, name: &str, figures: &[(&str, f64)]) -> String {
        let mut document = Document::new()
            .set(
                "viewBox",
                format!("0 0 {} {}", short(self.width), short(height)),
            )
            .set("width", format!("{}mm", short(self.width)))
            .set("height", format!("{}mm", short(height)))
            .set("role", "img");
        for (name, value) in figures {
            document = document.set(*name, format!("{value:.9}"));
        }
        document = document.add(svg::node::element::Title::new(name)).add(
            Rectangle::new()
                .set("width", "100%")
                .set("height", "100%")
                .set("fill", "white"),
        );
        for node in self.nodes {
            document = document.add(node);
        }
        document.to_string()
    }
}

/// A text and the place it speaks of.
pub(super) struct Label {
    pub(super) place: (f64, f64),
    pub(super) text: String,
}

impl Label {
    pub(super) fn new(place: (f64, f64), text: impl Into<String>) -> Self {
        Self {
            place,
            text: text.into(),
        }
    }
}
