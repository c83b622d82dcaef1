//! Random jobs with a seed: invented lathes, bars and parts, and the same figures as plain numbers for
//! the simulated lathe, which reads nothing else of the job.

use turnwright::plan::{Job, Preferences, Sheet, StepKind, Way};
use turnwright::standards::instrument::Instrument;
use turnwright::{
    CornerRadius, CuttingEdgeAngle, Dial as PlannedDial, DialReads, Diameter, Division,
    DivisionsPerTurn, Feed, Holding, HoldingKind, Lathe, Limits, Material, Part, Position, Power,
    Ring, SpindleSpeed, Stock, Surface, Tool, ToolMaterial, Travel, Units, WorkLength,
};

use super::beam::Held;
use super::dial::{Chance, Dial};

/// A diameter of the part, in mm.
#[derive(Debug, Clone, Copy)]
pub struct Piece {
    pub low: f64,
    pub high: f64,
    pub length: f64,
}

/// What sets one group of jobs apart from another.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Group {
    /// Sizes, dials, feeds and words in inch.
    pub inch: bool,
    /// Parts that are turned round and worked at their other end too.
    pub round: bool,
    /// Divided into cuts for the least time.
    pub least_time: bool,
    /// Between two centres.
    pub between: bool,
    /// Roughed with a tool of its own.
    pub two_tools: bool,
}

/// A job, and its figures as the lathe feels them.
#[derive(Debug, Clone)]
pub struct Trial {
    pub job: Job,
    pub units: Units,
    pub tool: Tool,
    pub material: Material,
    pub preferences: Preferences,
    pub dial: Dial,
    /// Millimetres: what the same dial would move for a mark if it counted the other way.
    pub other_per_mark: f64,
    /// Diameter of the bar in mm.
    pub bar: f64,
    pub pieces: Vec<Piece>,
    /// Those of the other end, from its own face inwards.
    pub other: Vec<Piece>,
    /// From face to face in mm, where both ends are worked.
    pub overall: f64,
    /// What is faced off the first end, in mm.
    pub facing: f64,
    /// Between two centres.
    pub between: bool,
    pub specific_force: f64,
    pub exponent: f64,
    pub modulus: f64,
    /// Per kelvin.
    pub expansion: f64,
    pub edge_angle: f64,
    pub corner: f64,
    /// Edge angle and corner of the tool that roughs, where it is another one.
    pub rough: Option<(f64, f64)>,
    /// Largest error and scatter of the instrument in mm.
    pub gauge: (f64, f64),
}

/// What is faced off the end, in mm.
fn facing(inch: bool) -> f64 {
    if inch { 0.04 * INCH } else { 1.0 }
}

const INCH: f64 = 25.4;

fn planned_dial(
    reads: DialReads,
    division: Division,
    marks: u32,
    like: &Dial,
) -> Option<PlannedDial> {
    let mut dial = PlannedDial::new(reads, division, DivisionsPerTurn::new(marks).ok()?);
    if like.backlash > 0.0 {
        dial = dial.with_backlash(Travel::from_mm(like.backlash).ok()?);
    }
    Some(match like.settable {
        true => dial,
        false => dial.with_ring(Ring::Fixed),
    })
}

impl Trial {
    /// A job that can be planned, and its sheet; none where this one cannot.
    pub fn random(chance: &mut Chance) -> Option<(Self, Sheet)> {
        Self::of(Group::default(), chance)
    }

    /// The same of a group.
    pub fn of(group: Group, chance: &mut Chance) -> Option<(Self, Sheet)> {
        let inch = group.inch;
        let dials: &[(f64, u32)] = match inch {
            false => &[
                (0.01, 200),
                (0.02, 100),
                (0.02, 200),
                (0.025, 100),
                (0.05, 80),
                (0.0254, 100),
                (0.0127, 200),
            ],
            true => &[
                (0.0005 * INCH, 200),
                (0.0005 * INCH, 250),
                (0.001 * INCH, 100),
                (0.001 * INCH, 125),
                (0.001 * INCH, 200),
                (0.002 * INCH, 100),
            ],
        };
        let (division, marks) = chance.one_of(dials);
        let reads = chance.one_of(&[DialReads::Radius, DialReads::Diameter]);
        let radius = matches!(reads, DialReads::Radius);
        let travel = |radius: bool| if radius { division } else { 0.5 * division };
        let dial = Dial {
            per_mark: travel(radius),
            marks: i64::from(marks),
            backlash: if chance.one_in(0.7) {
                fine(inch, chance.between(0.03, 0.25))
            } else {
                0.0
            },
            settable: chance.one_in(0.7),
        };
        let materials: Vec<Material> = turnwright::shop::material::catalogue()
            .filter(|m| m.youngs_modulus().is_some() && m.expansion().is_some())
            .collect();
        let material = materials[(chance.share() * materials.len() as f64) as usize].clone();
        let corner = match inch {
            false => chance.one_of(&[0.2, 0.4, 0.8]),
            true => chance.one_of(&[INCH / 128.0, INCH / 64.0, INCH / 32.0]),
        };
        let edge_angle = chance.one_of(&[75.0, 90.0, 93.0, 95.0]);
        let (pieces, mut bar) = part(inch, chance);
        let mut other = Vec::new();
        if group.round {
            let (found, least) = part(inch, chance);
            (other, bar) = (found, bar.max(least));
        }
        let all = || pieces.iter().chain(&other);
        let calliper = all().all(|p| p.high - p.low > 0.2) && bar < 100.0;
        let (instrument, gauge) = match calliper {
            true => (Instrument::Calliper, (0.02, 0.005)),
            // From memory of DIN 863-1: 4 um up to 50 mm, 5 um up to 100 mm.
            false if all().all(|p| p.high <= 50.0) => (Instrument::Micrometer, (0.004, 0.001)),
            false if all().all(|p| p.high > 50.0) => (Instrument::Micrometer, (0.005, 0.001)),
            false => return None,
        };
        let lathe = lathe(
            inch,
            chance,
            planned_dial(reads, Division::from_mm(division).ok()?, marks, &dial)?,
        )?;
        let tool = Tool::new(
            CornerRadius::from_mm(corner).ok()?,
            CuttingEdgeAngle::from_degrees(edge_angle).ok()?,
        )
        .with_material(chance.one_of(&[ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide]));
        let long: f64 = all().map(|p| p.length).sum();
        let mut part = Part::of_surfaces(surfaces(&pieces)?).ok()?;
        let facing = facing(inch);
        let (mut overall, mut stock) = (0.0, long + 30.0 + bar);
        if group.round {
            overall = long + rounded(chance.between(0.0, 15.0), length_grain(inch));
            stock = overall + facing + rounded(chance.between(1.0, 4.0), length_grain(inch));
            let face_to_face = WorkLength::from_mm(overall).ok()?;
            part = part.with_other_end(surfaces(&other)?, face_to_face).ok()?;
        }
        let stock = Stock::new(
            Diameter::from_mm(bar).ok()?,
            WorkLength::from_mm(stock).ok()?,
        );
        let mut preferences = Preferences::default()
            .with_facing(WorkLength::from_mm(facing).ok()?)
            .with_instrument(instrument);
        if group.least_time {
            preferences = preferences.with_way(Way::LeastTime);
        }
        let mut trial = Self {
            specific_force: material.specific_force().value.mpa(),
            exponent: material.exponent().value.value(),
            modulus: 1000.0 * material.youngs_modulus()?.value.gpa(),
            expansion: 1e-6 * material.expansion()?.value.um_per_m_k(),
            job: match group.between {
                true => Job::new(lathe, tool.clone(), material.clone(), stock, part)
                    .with_holding(Holding::new(HoldingKind::BetweenCentres)),
                false => Job::new(lathe, tool.clone(), material.clone(), stock, part),
            }
            .with_preferences(preferences.clone()),
            units: if inch { Units::Inch } else { Units::Metric },
            tool,
            material,
            preferences,
            dial,
            other_per_mark: travel(!radius),
            bar,
            pieces,
            other,
            overall,
            facing,
            between: group.between,
            edge_angle: edge_angle.to_radians(),
            corner,
            rough: None,
            gauge,
        };
        if group.two_tools {
            let angle = chance.one_of(&[75.0, 90.0, 95.0]);
            let corner = match inch {
                false => chance.one_of(&[0.4, 0.8, 1.2]),
                true => chance.one_of(&[INCH / 64.0, INCH / 32.0]),
            };
            let tool = Tool::new(
                CornerRadius::from_mm(corner).ok()?,
                CuttingEdgeAngle::from_degrees(angle).ok()?,
            )
            .with_material(chance.one_of(&[ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide]));
            trial.job = trial.job.with_roughing_tool(tool);
            trial.rough = Some((angle.to_radians(), corner));
        }
        let sheet = trial.job.plan(trial.units).ok()?;
        Some((trial, sheet))
    }

    /// The same job for a person who has found that the dial counts the other way, from a measured size.
    pub fn anew(&self, measured: Diameter) -> Option<(Self, Sheet)> {
        let dial = self.job.lathe().cross_slide()?;
        let reads = match dial.reads() {
            DialReads::Radius => DialReads::Diameter,
            _ => DialReads::Radius,
        };
        let marks = dial.divisions_per_turn().count();
        let cross = planned_dial(reads, dial.division(), marks, &self.dial)?;
        let mut trial = self.clone();
        trial.dial.per_mark = self.other_per_mark;
        trial.other_per_mark = self.dial.per_mark;
        trial.job = Job::new(
            self.job.lathe().clone().with_cross_slide(cross).ok()?,
            self.tool.clone(),
            self.material.clone(),
            self.job.stock().clone(),
            self.job.part().clone(),
        )
        .with_preferences(self.preferences.clone())
        .with_zero_at(measured);
        if self.between {
            let between = Holding::new(HoldingKind::BetweenCentres);
            trial.job = trial.job.with_holding(between);
        }
        let sheet = trial.job.plan(trial.units).ok()?;
        Some((trial, sheet))
    }

    /// What holds the bar. The springs of a workshop lathe, as the plan supposes where none are given:
    /// 40 kN/mm and 150 kN m/rad of the chuck, 15 kN/mm of the centre.
    pub fn held(&self, centre: bool) -> Held {
        Held {
            modulus: self.modulus,
            chuck: 40_000.0,
            // No centre holds against tilting.
            chuck_rotational: if self.between { 0.0 } else { 150e6 },
            centre: centre.then_some(15_000.0),
        }
    }
}

fn surfaces(pieces: &[Piece]) -> Option<Vec<Surface>> {
    let surface = |p: &Piece| {
        let largest = Diameter::from_mm(p.high).ok()?;
        let limits = Limits::new(Diameter::from_mm(p.low).ok()?, largest).ok()?;
        Surface::new(largest, limits, WorkLength::from_mm(p.length).ok()?).ok()
    };
    pieces.iter().map(surface).collect()
}

fn rounded(mm: f64, grain: f64) -> f64 {
    (mm / grain).round() * grain
}

/// Thousandths of a millimetre, tenths of a thousandth of an inch.
fn fine(inch: bool, mm: f64) -> f64 {
    match inch {
        false => (mm * 1000.0).round() / 1000.0,
        true => rounded(mm, 1e-4 * INCH),
    }
}

/// Lengths are whole millimetres or sixteenths of an inch.
fn length_grain(inch: bool) -> f64 {
    if inch { INCH / 16.0 } else { 1.0 }
}

/// Diameters that rise from the face inwards, and a bar that is thicker.
fn part(inch: bool, chance: &mut Chance) -> (Vec<Piece>, f64) {
    let count = chance.one_of(&[1, 1, 1, 2, 2, 3]);
    let mut high = chance.between(9.0, 60.0);
    let mut pieces = Vec::with_capacity(count);
    for _ in 0..count {
        let zone = 0.03 * 10.0_f64.powf(chance.between(0.0, 1.0));
        pieces.push(Piece {
            low: fine(inch, high) - fine(inch, zone),
            high: fine(inch, high),
            length: rounded(chance.between(8.0, 45.0), length_grain(inch)),
        });
        high += chance.between(1.5, 8.0);
    }
    let bar = pieces[count - 1].high + chance.between(1.5, 8.0);
    let bars = if inch { INCH / 32.0 } else { 0.5 };
    (pieces, (bar / bars).ceil() * bars)
}

fn lathe(inch: bool, chance: &mut Chance, cross: PlannedDial) -> Option<Lathe> {
    let speeds: Result<Vec<_>, _> = [
        63.0, 125.0, 250.0, 355.0, 500.0, 710.0, 1000.0, 1400.0, 2000.0,
    ]
    .map(SpindleSpeed::from_rpm)
    .into_iter()
    .collect();
    let feeds = match inch {
        false => [0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315],
        true => [2.0, 2.5, 3.0, 4.0, 5.0, 6.0, 8.0, 10.0, 12.0].map(|thou| 0.001 * thou * INCH),
    };
    let feeds: Result<Vec<_>, _> = feeds.map(Feed::from_mm_per_rev).into_iter().collect();
    let carriage = PlannedDial::new(
        DialReads::Travel,
        Division::from_mm(if inch { 0.005 * INCH } else { 0.1 }).ok()?,
        DivisionsPerTurn::new(200).ok()?,
    );
    Lathe::with_steps(speeds.ok()?)
        .ok()?
        .with_feeds(feeds.ok()?)
        .ok()?
        .with_cross_slide(cross)
        .ok()?
        .with_carriage(carriage)
        .ok()
        .map(|lathe| lathe.with_power(Power::from_kw(chance.between(0.7, 4.0)).unwrap()))
}

/// A length as printed: what stands between two words, in mm.
pub fn printed(text: &str, before: &str, after: &str) -> Option<f64> {
    let (_, rest) = text.split_once(before)?;
    let (length, _) = rest.split_once(after)?;
    Some(length.parse::<Position>().ok()?.mm())
}

/// How far the bar stands out of the jaws when its face is turned, in mm, and whether a centre holds
/// its end: as the words of the sheet have it, of the first clamping or of the one after the part was
/// turned round.
pub fn set_up(trial: &Trial, sheet: &Sheet, round: bool) -> (f64, bool) {
    let turned = sheet
        .steps
        .iter()
        .position(|s| s.kind == StepKind::TurnRound)
        .unwrap_or(sheet.steps.len());
    let steps = match round {
        false => &sheet.steps[..turned],
        true => &sheet.steps[turned..],
    };
    let text = |kind: StepKind| {
        steps
            .iter()
            .find(|s| s.kind == kind)
            .map(|s| s.text.as_str())
    };
    if trial.between {
        let from = |text: &str| printed(text, "the centres, ", " from face to face");
        let again = |text: &str| printed(text, "not touched, ", " from face to face");
        let length = steps
            .iter()
            .find_map(|s| from(&s.text).or_else(|| again(&s.text)));
        let dog = printed(text(StepKind::ZeroZ).unwrap(), "dog at Z ", ")").unwrap();
        for step in steps.iter().filter(|s| s.depth_of_cut.is_some()) {
            assert!(-step.z.unwrap().mm() < -dog - 5.0, "{}", step.text);
        }
        return (length.unwrap(), true);
    }
    let centre = text(StepKind::Reclamp).is_some();
    let out = match round {
        true => {
            let out = printed(
                text(StepKind::TurnRound).unwrap(),
                "aluminium), ",
                " standing out",
            );
            let face = printed(text(StepKind::Face).unwrap(), ", about ", " in all");
            out.unwrap() - face.unwrap()
        }
        false if centre => printed(text(StepKind::Reclamp).unwrap(), "let ", " stand out").unwrap(),
        false => {
            printed(text(StepKind::Clamp).unwrap(), "let ", " stand out").unwrap() - trial.facing
        }
    };
    let jaws = printed(text(StepKind::ZeroZ).unwrap(), "jaws at Z ", ")").unwrap();
    // Each is printed to a hundredth of a millimetre or a thousandth of an inch.
    assert!(
        (out + jaws).abs() < 0.06,
        "{out} mm stand out, the jaws at {jaws} mm:\n{sheet}"
    );
    (out, centre)
}
