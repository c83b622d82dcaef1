//! The picture of a clamping: bar and part, cuts and shoulders, and how far the bar springs.

use super::dog::Driven;
use super::outline::{CutLine, Outline};
use super::paper::{AXIS, DASHED, LINE, Label, PLAIN, Paper, THICK, THIN, TITLE, WHOLE};
use super::sheet::Sheet;
use super::steps;
use super::turning::plain;
use crate::error::Error;
use crate::provenance::Provenance;
use crate::quantity::unit::Units;
use crate::quantity::{Position, WorkLength, round_size};

/// The width of a picture: what A4 and Letter both leave between margins of 10 mm.
const WIDTH: f64 = 190.0;

/// Where the free end is led to at most, and where the numbers of the cuts begin.
const FACE_AT_MOST: f64 = 122.0;
const COLUMN: f64 = 143.0;

/// Jaws and chuck, on paper.
const JAW: (f64, f64) = (14.0, 7.0);
const CHUCK: (f64, f64) = (8.0, 9.0);

/// How far before the end of the bar the driver plate is, on paper.
const PLATE_AT: f64 = 10.0;

/// No bar is drawn higher than this, nor lower: a thin one has its diameters drawn larger.
const HIGHEST: f64 = 66.0;
const LOWEST: f64 = 24.0;

/// Cuts with a line of text of their own; where there are more, roughing cuts share one.
const OWN_LINES: usize = 14;

/// Tangent of 30 degrees, half the angle of a centre.
const HALF_CENTRE: f64 = 0.577_350_269_189_625_8;

impl Sheet {
    /// Pictures of the sheet, one for each clamping: the bar in its jaws, the stock and what it becomes,
    /// every cut with its number, shoulders, datums, and the line that the tool never passes; below them,
    /// to the same length, how far the bar springs in the last cut of each surface.
    ///
    /// Each is an SVG of 190 mm width, black on white, in the units of the sheet, computed from the job
    /// and the measurements that the sheet carries.
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
    /// let sheet = turnwright::document::plan::Question::from_text(job)?.answer()?;
    /// let pictures = sheet.pictures()?;
    /// assert_eq!(pictures.len(), 1);
    /// assert!(pictures[0].starts_with("<svg") && pictures[0].contains("never past Z -72.00"));
    /// # }
    /// # Ok(())
    /// # }
    /// ```
    pub fn pictures(&self) -> Result<Vec<String>, Error> {
        let figures = steps::figures_after(
            &self.job,
            self.units(),
            &self.measured,
            &mut Provenance::default(),
            &mut Vec::new(),
        )?;
        let many = figures.clampings.len();
        (0..many)
            .map(|at| {
                let outline = Outline::of(&figures, at)?;
                let title = match many {
                    1 => String::from("The clamping"),
                    _ => format!("Clamping {} of {many}", at + 1),
                };
                Ok(Drawing::of(&outline, self.units()).draw(&title))
            })
            .collect()
    }
}

/// One clamping on its way to the paper.
pub(super) struct Drawing<'a> {
    pub(super) seen: &'a Outline<'a>,
    pub(super) units: Units,
    pub(super) paper: Paper,
    /// Paper over work, along and across.
    along: f64,
    across: f64,
    /// Where the finished face and the axis are.
    face: f64,
    axis: f64,
}

impl<'a> Drawing<'a> {
    fn of(seen: &'a Outline<'a>, units: Units) -> Self {
        let largest = seen.largest();
        let length = seen.jaws + seen.run_in.max(seen.clamp.facing.mm());
        let room = FACE_AT_MOST - (JAW.0 + CHUCK.0 + 4.0);
        let along = (room / length).min(HIGHEST / largest);
        Self {
            seen,
            units,
            paper: Paper::new(WIDTH),
            along,
            across: along.max(LOWEST / largest),
            face: FACE_AT_MOST - along * seen.run_in.max(seen.clamp.facing.mm()),
            axis: 0.0,
        }
    }

    pub(super) fn x(&self, depth: f64) -> f64 {
        self.face - self.along * depth
    }

    fn y(&self, diameter: f64) -> f64 {
        self.axis - 0.5 * self.across * diameter
    }

    fn z_words(&self, depth: f64) -> String {
        format!(
            "Z {}",
            plain(Position::computed_trade(round_size(-depth)), self.units)
        )
    }

    fn length_words(&self, mm: f64) -> String {
        plain(WorkLength::computed_trade(round_size(mm)), self.units).to_string()
    }

    fn draw(mut self, title: &str) -> String {
        let (seen, u) = (self.seen, self.units);
        let unit = match u {
            Units::Metric => "mm",
            Units::Inch => "in",
        };
        let held = match (&seen.clamp.driven, &seen.clamp.centre) {
            (Some(_), _) => format!(
                "between two centres, {} {unit} from face to face",
                self.length_words(seen.jaws)
            ),
            (None, centre) => format!(
                "{}, {} {unit} standing out before {} are faced off",
                match centre {
                    Some(_) => "chuck and live centre",
                    None => "chuck alone",
                },
                self.length_words(seen.clamp.overhang.mm()),
                self.length_words(seen.clamp.facing.mm()),
            ),
        };
        let title = format!("{title}: {held}");
        let below = self.paper.lines(5.0, TITLE, &title);
        let units = match u {
            Units::Metric => "mm",
            Units::Inch => "inch",
        };
        let times = self.across / self.along;
        let mut scale = format!(
            "Sizes in {units}. Lengths are drawn {:.2} times as large as they are",
            self.along
        );
        match times > 1.005 {
            true => scale.push_str(&format!(
                ", diameters {:.2} times: the bar is thinner than it looks.",
                self.across
            )),
            false => scale.push_str(", diameters too."),
        }
        let below = self.paper.lines(below + 4.5, PLAIN, &scale);

        let above = self.above();
        let column = self.column();
        let rows = above.len() as f64 * LINE;
        let half = 0.5 * self.across * seen.largest();
        let held = 0.5 * self.across * seen.gripped.mm() + CHUCK.1;
        let head = half.max(held) + 3.0;
        let lowest = column.last().map_or(0.0, |(d, _)| 0.5 * self.across * d);
        let column_needs = lowest + column.len() as f64 * LINE + LINE;
        self.axis = below + 3.0 + (head + rows).max(column_needs);

        self.bar_and_part();
        let left = match &seen.clamp.driven {
            Some(driven) => self.dog_and_centre(driven),
            None => self.jaws_and_chuck(),
        };
        let right = self.live_centre();
        let axis = [(left - 2.0, self.axis), (right, self.axis)];
        self.paper.line("axis", &axis, THIN, AXIS);
        self.cut_lines();
        self.numbers(column);
        let top = self.axis - head;
        // The places were not known before the axis was.
        let above = above
            .into_iter()
            .map(|(depth, d, text)| Label::new((self.x(depth), self.y(d)), text))
            .collect();
        self.paper.labels(above, top, -LINE);
        let under = self.under();
        let bottom = self.axis + half.max(held) + 5.0;
        let bottom = self.paper.labels(under, bottom, LINE);
        let end = self.strip(bottom + 7.0);
        let figures = [
            ("data-length-scale", self.along),
            ("data-diameter-scale", self.across),
            ("data-face-x", self.face),
            ("data-axis-y", self.axis),
        ];
        self.paper.finish(end + 3.0, &title, &figures)
    }

    /// The dashed bar, the thick part, and the edges that are seen on it.
    fn bar_and_part(&mut self) {
        let seen = self.seen;
        let mut bar: Vec<_> = seen
            .bar
            .iter()
            .map(|(z, d)| (self.x(*z), self.y(*d)))
            .collect();
        bar.reverse();
        let axis = self.axis;
        bar.extend(bar.clone().iter().rev().map(|(x, y)| (*x, 2.0 * axis - y)));
        self.paper.line("bar", &bar, THIN, DASHED);
        for (at, (z, d)) in seen.part.iter().enumerate() {
            let here = |other: Option<&(f64, f64)>| match other {
                Some((z_of, d_of)) if (z_of - z).abs() < 1e-9 => *d_of,
                _ => *d,
            };
            let before = at.checked_sub(1).and_then(|before| seen.part.get(before));
            let most = here(before).max(here(seen.part.get(at + 1)));
            if *z > 1e-9 && *z < seen.jaws {
                let edge = [(self.x(*z), self.y(most)), (self.x(*z), self.y(-most))];
                self.paper.line("edge", &edge, 0.7 * THICK, WHOLE);
            }
        }
        let mut part: Vec<_> = seen
            .part
            .iter()
            .map(|(z, d)| (self.x(*z), self.y(*d)))
            .collect();
        part.reverse();
        part.extend(part.clone().iter().rev().map(|(x, y)| (*x, 2.0 * axis - y)));
        // Between two centres it ends there, in a chuck it goes on.
        if seen.clamp.driven.is_some() {
            part.extend(part.first().copied());
        }
        self.paper.line("part", &part, THICK, WHOLE);
    }

    /// The dog on the bar, its tail in the driver plate, and the centre in the spindle; where that begins on the paper.
    fn dog_and_centre(&mut self, driven: &Driven) -> f64 {
        let seen = self.seen;
        let (end, middle) = (self.x(seen.jaws), self.axis);
        let plate = end - PLATE_AT;
        let nose = plate - CHUCK.0;
        let (top, bottom) = (self.y(seen.gripped.mm()), self.y(-seen.gripped.mm()));
        let (right, left) = (self.x(driven.to_dog), self.x(driven.to_dog + seen.grip));
        // The side with the screw and the tail is the higher one.
        let dog = (right - left, JAW.1);
        self.paper.hatched("dog", (left, top - JAW.1), dog);
        self.paper
            .hatched("dog", (left, bottom), (right - left, 0.4 * JAW.1));
        let tail = [
            (left, top - 0.5 * JAW.1),
            (plate - 0.5 * CHUCK.0, top - 0.5 * JAW.1),
        ];
        self.paper.line("tail", &tail, 2.0 * THICK, WHOLE);
        let half = middle - top + CHUCK.1;
        let body = [
            (nose, middle - half),
            (plate, middle - half),
            (plate, middle + half),
            (nose, middle + half),
            (nose, middle - half),
        ];
        self.paper.line("plate", &body, 2.0 * THIN, WHOLE);
        let hole = driven.hole.countersink.mm();
        let widest = (self.across * hole).max(4.0);
        let tip = self.x(seen.jaws - 0.5 * hole / HALF_CENTRE);
        // As it is drawn a cone of 60 degrees may be longer than there is room for.
        let cone = (end - 0.5 * (widest - self.across * hole) / HALF_CENTRE).max(plate + 1.0);
        let centre = [
            (plate, middle - 0.5 * widest),
            (cone, middle - 0.5 * widest),
            (tip, middle),
            (cone, middle + 0.5 * widest),
            (plate, middle + 0.5 * widest),
        ];
        self.paper.line("centre", &centre, 2.0 * THIN, WHOLE);
        nose
    }

    /// Jaws, chuck and what lies in them; where that begins on the paper.
    fn jaws_and_chuck(&mut self) -> f64 {
        let seen = self.seen;
        let jaws = self.x(seen.jaws);
        let d = seen.gripped.mm();
        let (top, bottom) = (self.y(d), self.y(-d));
        let grip = (self.along * seen.grip).min(JAW.0 + CHUCK.0);
        let left = jaws - JAW.0;
        self.paper.hatched("jaw", (left, top - JAW.1), JAW);
        self.paper.hatched("jaw", (left, bottom), JAW);
        let chuck = left - CHUCK.0;
        for (from, to) in [(top - CHUCK.1, top), (bottom, bottom + CHUCK.1)] {
            let body = [
                (chuck, from),
                (left, from),
                (left, to),
                (chuck, to),
                (chuck, from),
            ];
            self.paper.line("chuck", &body, 2.0 * THIN, WHOLE);
        }
        let end = jaws - grip;
        for y in [top, bottom] {
            self.paper
                .line("gripped", &[(jaws, y), (end, y)], THIN, DASHED);
        }
        let middle = self.axis;
        let broken = [
            (end, top - 1.0),
            (end, middle - 1.5),
            (end - 1.2, middle - 0.5),
            (end + 1.2, middle + 0.5),
            (end, middle + 1.5),
            (end, bottom + 1.0),
        ];
        match self.along * seen.grip > grip {
            true => self.paper.line("broken", &broken, THIN, WHOLE),
            false => self
                .paper
                .line("gripped", &[(end, top), (end, bottom)], THIN, DASHED),
        }
        chuck
    }

    /// The centre in the finished face, where there is one; where that ends on the paper.
    fn live_centre(&mut self) -> f64 {
        let (seen, middle) = (self.seen, self.axis);
        let (d, facing) = (seen.gripped.mm(), seen.clamp.facing.mm());
        let mut axis_end = self.x(-seen.run_in.max(facing)) + 3.0;
        if let Some(hole) = &seen.clamp.centre {
            // It is seen as it stands in the finished face.
            let end_of_part = seen.part.first().map_or(d, |(_, d)| *d);
            let body = (0.9 * end_of_part).max(hole.countersink.mm());
            let tip = 0.5 * hole.countersink.mm() / HALF_CENTRE;
            let out = 0.5 * (body - hole.countersink.mm()) / HALF_CENTRE;
            let back = (COLUMN - 6.0)
                .min(self.x(-out) + 6.0)
                .max(self.x(0.0) + 4.0);
            // Where the cone would be longer than there is room for, it is cut off.
            let out = out.min((back - 1.0 - self.face) / self.along);
            let body = hole.countersink.mm() + 2.0 * out * HALF_CENTRE;
            let shoulder = self.x(-out);
            let centre = [
                (back, self.y(body)),
                (shoulder, self.y(body)),
                (self.x(tip), middle),
                (shoulder, self.y(-body)),
                (back, self.y(-body)),
            ];
            self.paper.line("centre", &centre, 2.0 * THIN, WHOLE);
            axis_end = back + 1.5;
        }
        axis_end
    }

    /// A thin line for every cut, and the datums.
    fn cut_lines(&mut self) {
        let seen = self.seen;
        let start = self.x(-seen.run_in);
        for cut in &seen.cuts {
            let y = self.y(cut.diameter.mm());
            self.paper
                .line("cut", &[(self.x(cut.depth), y), (start, y)], THIN, WHOLE);
        }
        for zero in &seen.zeros {
            let y = self.y(zero.mm());
            self.paper
                .line("zero", &[(start - 4.0, y), (start, y)], THIN, WHOLE);
            self.paper.datum((start - 2.0, y));
        }
        // Where the blade goes in that parts the part off.
        if let Some((near, far)) = seen.parting {
            let d = seen.gripped.mm();
            for depth in [near, far] {
                let side = [(self.x(depth), self.y(d)), (self.x(depth), self.axis)];
                self.paper.line("parting", &side, 2.0 * THIN, AXIS);
            }
        }
        let (never, top) = (self.x(seen.clamp.never_past), self.y(seen.largest()));
        let far = 2.0 * self.axis - top;
        self.paper.line(
            "never",
            &[(never, top - 2.0), (never, far + 2.0)],
            2.0 * THIN,
            DASHED,
        );
    }

    /// The numbers of the cuts with what they leave, the largest first; dial zeros among them.
    fn column(&self) -> Vec<(f64, String)> {
        let (seen, u) = (self.seen, self.units);
        let mut rows: Vec<(f64, String)> = seen
            .zeros
            .iter()
            .map(|zero| (zero.mm(), format!("X 0: {}", plain(*zero, u))))
            .collect();
        let together = seen.cuts.len() > OWN_LINES;
        let mut cuts = seen.cuts.as_slice();
        while let [first, rest @ ..] = cuts {
            let more = rest
                .iter()
                .take_while(|cut| together && first.roughing && same_run(first, cut))
                .count();
            match more.checked_sub(1).and_then(|last| rest.get(last)) {
                Some(last) => rows.push((
                    last.diameter.mm(),
                    format!(
                        "{}-{}: {} to {}",
                        first.number,
                        last.number,
                        plain(first.diameter, u),
                        plain(last.diameter, u)
                    ),
                )),
                None => rows.push((
                    first.diameter.mm(),
                    format!("{}: {}", first.number, plain(first.diameter, u)),
                )),
            }
            cuts = rest.get(more..).unwrap_or_default();
        }
        rows.sort_by(|a, b| b.0.total_cmp(&a.0));
        rows
    }

    /// The column, each row led to its line; the lowest stands at its line, the others above it.
    fn numbers(&mut self, rows: Vec<(f64, String)>) {
        let start = self.x(-self.seen.run_in);
        let mut y = f64::INFINITY;
        for (diameter, text) in rows.iter().rev() {
            let line = self.y(*diameter);
            y = (y - LINE).min(line);
            let elbow = [(start, line), (COLUMN - 4.0, y), (COLUMN - 1.0, y)];
            self.paper.line("leader", &elbow, 0.7 * THIN, WHOLE);
            self.paper.text((COLUMN, y + 0.35 * PLAIN), PLAIN, text);
        }
        if !self.seen.cuts.is_empty() {
            let head = (COLUMN, y - LINE + 0.35 * PLAIN);
            self.paper.text(head, PLAIN, "Cut: size it leaves");
        }
    }

    /// Depth, diameter to lead from, and text of what stands above the bar.
    fn above(&self) -> Vec<(f64, f64, String)> {
        let seen = self.seen;
        let largest = seen.largest();
        let (into, into_at) = seen.clamp.never_into();
        let mut above = vec![
            (
                0.0,
                seen.bar.first().map_or(largest, |(_, d)| *d),
                String::from("Z 0: finished face"),
            ),
            (
                seen.clamp.never_past,
                largest,
                // The blade that parts off goes in beyond it.
                format!(
                    "{} past {}",
                    match seen.parting {
                        Some(_) => "turning never",
                        None => "never",
                    },
                    self.z_words(seen.clamp.never_past)
                ),
            ),
            (
                into_at,
                seen.gripped.mm(),
                format!("{into} {}", self.z_words(into_at)),
            ),
        ];
        if let Some((near, _)) = seen.parting {
            let words = format!("part off {}", self.z_words(near));
            above.push((near, seen.gripped.mm(), words));
        }
        for (surface, _, reach) in &seen.surfaces {
            let d = surface.limits().middle().mm();
            above.push((*reach, d, format!("shoulder {}", self.z_words(*reach))));
        }
        above
    }

    /// What stands under it: the surfaces with their limits, the grip.
    fn under(&self) -> Vec<Label> {
        let (seen, u) = (self.seen, self.units);
        let mut under = Vec::with_capacity(seen.surfaces.len() + 2);
        for (surface, outer, reach) in &seen.surfaces {
            let limits = surface.limits();
            let mut text = format!(
                "dia {}: {} to {}, {} long",
                plain(surface.diameter(), u),
                plain(limits.smallest(), u),
                plain(limits.largest(), u),
                plain(surface.length(), u),
            );
            if let Some(small) = surface.small_diameter() {
                text.push_str(&format!(", cone to {}", plain(small, u)));
            }
            if let Some(leg) = surface.chamfer() {
                text.push_str(&format!(", chamfer {} x 45 deg", plain(leg, u)));
            }
            if let Some(groove) = surface.undercut() {
                text.push_str(&format!(
                    ", undercut {} wide, {} deep",
                    plain(groove.width(), u),
                    plain(groove.depth(), u)
                ));
            }
            let middle = 0.5 * (outer + reach);
            let at = match surface.small_diameter() {
                Some(small) => 0.5 * (small.mm() + limits.middle().mm()),
                None => limits.middle().mm(),
            };
            under.push(Label::new((self.x(middle), self.y(-at)), text));
        }
        let below = self.y(-seen.gripped.mm());
        let (at, held) = match &seen.clamp.driven {
            Some(driven) => (
                (self.x(driven.to_dog + 0.5 * seen.grip), below + 0.4 * JAW.1),
                "dog over",
            ),
            None => {
                let grip = (self.along * seen.grip).min(JAW.0 + CHUCK.0);
                ((self.x(seen.jaws) - 0.4 * grip, below + JAW.1), "gripped")
            }
        };
        under.push(Label::new(
            at,
            format!(
                "{held} {} on dia {}",
                self.length_words(seen.grip),
                plain(seen.gripped, u)
            ),
        ));
        under
    }
}

/// Roughing cuts of one surface, one after another.
fn same_run(first: &CutLine, cut: &CutLine) -> bool {
    cut.roughing && (cut.depth - first.depth).abs() < 1e-9
}
