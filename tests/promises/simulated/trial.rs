//! Random jobs with a seed: invented lathes, bars and parts, and the same figures as plain numbers for
//! the simulated lathe, which reads nothing else of the job.

use turnwright::plan::{Job, Preferences, Sheet, StepKind};
use turnwright::standards::instrument::Instrument;
use turnwright::{
    CornerRadius, CuttingEdgeAngle, Dial as PlannedDial, DialReads, Diameter, Division,
    DivisionsPerTurn, Feed, Lathe, Limits, Material, Part, Power, Ring, SpindleSpeed, Stock,
    Surface, Tool, ToolMaterial, Travel, Units, WorkLength,
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

/// A job, and its figures as the lathe feels them.
#[derive(Debug, Clone)]
pub struct Trial {
    pub job: Job,
    pub tool: Tool,
    pub material: Material,
    pub preferences: Preferences,
    pub dial: Dial,
    /// Millimetres: what the same dial would move for a mark if it counted the other way.
    pub other_per_mark: f64,
    /// Diameter of the bar in mm.
    pub bar: f64,
    pub pieces: Vec<Piece>,
    pub specific_force: f64,
    pub exponent: f64,
    pub modulus: f64,
    /// Per kelvin.
    pub expansion: f64,
    pub edge_angle: f64,
    pub corner: f64,
    /// Largest error and scatter of the instrument in mm.
    pub gauge: (f64, f64),
}

/// What is faced off the end.
const FACING: f64 = 1.0;

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
        let (division, marks) = chance.one_of(&[
            (0.01, 200),
            (0.02, 100),
            (0.02, 200),
            (0.025, 100),
            (0.05, 80),
            (0.0254, 100),
            (0.0127, 200),
        ]);
        let reads = chance.one_of(&[DialReads::Radius, DialReads::Diameter]);
        let radius = matches!(reads, DialReads::Radius);
        let travel = |radius: bool| if radius { division } else { 0.5 * division };
        let dial = Dial {
            per_mark: travel(radius),
            marks: i64::from(marks),
            backlash: if chance.one_in(0.7) {
                (chance.between(0.03, 0.25) * 1000.0).round() / 1000.0
            } else {
                0.0
            },
            settable: chance.one_in(0.7),
        };
        let materials: Vec<Material> = turnwright::shop::material::catalogue()
            .filter(|m| m.youngs_modulus().is_some() && m.expansion().is_some())
            .collect();
        let material = materials[(chance.share() * materials.len() as f64) as usize].clone();
        let corner = chance.one_of(&[0.2, 0.4, 0.8]);
        let edge_angle = chance.one_of(&[75.0, 90.0, 93.0, 95.0]);
        let (pieces, bar) = part(chance);
        let calliper = pieces.iter().all(|p| p.high - p.low > 0.2) && bar < 100.0;
        let (instrument, gauge) = match calliper {
            true => (Instrument::Calliper, (0.02, 0.005)),
            // From memory of DIN 863-1: 4 um up to 50 mm, 5 um up to 100 mm.
            false if pieces.iter().all(|p| p.high <= 50.0) => {
                (Instrument::Micrometer, (0.004, 0.001))
            }
            false if pieces.iter().all(|p| p.high > 50.0) => {
                (Instrument::Micrometer, (0.005, 0.001))
            }
            false => return None,
        };
        let lathe = lathe(
            chance,
            planned_dial(reads, Division::from_mm(division).ok()?, marks, &dial)?,
        )?;
        let tool = Tool::new(
            CornerRadius::from_mm(corner).ok()?,
            CuttingEdgeAngle::from_degrees(edge_angle).ok()?,
        )
        .with_material(chance.one_of(&[ToolMaterial::HighSpeedSteel, ToolMaterial::Carbide]));
        let surfaces = pieces
            .iter()
            .map(|p| {
                let largest = Diameter::from_mm(p.high).ok()?;
                let limits = Limits::new(Diameter::from_mm(p.low).ok()?, largest).ok()?;
                Surface::new(largest, limits, WorkLength::from_mm(p.length).ok()?).ok()
            })
            .collect::<Option<Vec<_>>>()?;
        let long: f64 = pieces.iter().map(|p| p.length).sum();
        let stock = Stock::new(
            Diameter::from_mm(bar).ok()?,
            WorkLength::from_mm(long + 30.0 + bar).ok()?,
        );
        let preferences = Preferences::default()
            .with_facing(WorkLength::from_mm(FACING).ok()?)
            .with_instrument(instrument);
        let trial = Self {
            specific_force: material.specific_force().value.mpa(),
            exponent: material.exponent().value.value(),
            modulus: 1000.0 * material.youngs_modulus()?.value.gpa(),
            expansion: 1e-6 * material.expansion()?.value.um_per_m_k(),
            job: Job::new(
                lathe,
                tool.clone(),
                material.clone(),
                stock,
                Part::of_surfaces(surfaces).ok()?,
            )
            .with_preferences(preferences.clone()),
            tool,
            material,
            preferences,
            dial,
            other_per_mark: travel(!radius),
            bar,
            pieces,
            edge_angle: edge_angle.to_radians(),
            corner,
            gauge,
        };
        let sheet = trial.job.plan(Units::Metric).ok()?;
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
        let sheet = trial.job.plan(Units::Metric).ok()?;
        Some((trial, sheet))
    }

    /// What holds the bar. The springs of a workshop lathe, as the plan supposes where none are given:
    /// 40 kN/mm and 150 kN m/rad of the chuck, 15 kN/mm of the centre.
    pub fn held(&self, centre: bool) -> Held {
        Held {
            modulus: self.modulus,
            chuck: 40_000.0,
            chuck_rotational: 150e6,
            centre: centre.then_some(15_000.0),
        }
    }
}

/// Diameters that rise from the face inwards, and a bar that is thicker.
fn part(chance: &mut Chance) -> (Vec<Piece>, f64) {
    let count = chance.one_of(&[1, 1, 1, 2, 2, 3]);
    let thousandths = |mm: f64| (mm * 1000.0).round() / 1000.0;
    let mut high = chance.between(9.0, 60.0);
    let mut pieces = Vec::with_capacity(count);
    for _ in 0..count {
        let zone = 0.03 * 10.0_f64.powf(chance.between(0.0, 1.0));
        pieces.push(Piece {
            low: thousandths(high) - thousandths(zone),
            high: thousandths(high),
            length: chance.between(8.0, 45.0).round(),
        });
        high += chance.between(1.5, 8.0);
    }
    let bar = pieces[count - 1].high + chance.between(1.5, 8.0);
    (pieces, (bar * 2.0).ceil() / 2.0)
}

fn lathe(chance: &mut Chance, cross: PlannedDial) -> Option<Lathe> {
    let speeds: Result<Vec<_>, _> = [
        63.0, 125.0, 250.0, 355.0, 500.0, 710.0, 1000.0, 1400.0, 2000.0,
    ]
    .map(SpindleSpeed::from_rpm)
    .into_iter()
    .collect();
    let feeds: Result<Vec<_>, _> = [0.05, 0.063, 0.08, 0.1, 0.125, 0.16, 0.2, 0.25, 0.315]
        .map(Feed::from_mm_per_rev)
        .into_iter()
        .collect();
    let carriage = PlannedDial::new(
        DialReads::Travel,
        Division::from_mm(0.1).ok()?,
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

/// How far the bar stands out of the jaws when its face is turned, in mm, and whether a centre holds
/// its end: as the words of the sheet have it.
pub fn set_up(sheet: &Sheet) -> (f64, bool) {
    let out = |kind: StepKind| {
        let steps = sheet.steps.iter().filter(|s| s.kind == kind);
        steps
            .filter_map(|s| s.text.split("let ").nth(1))
            .find_map(|rest| {
                let (length, _) = rest.split_once(" mm stand out")?;
                length.parse::<f64>().ok()
            })
    };
    let centre = sheet.steps.iter().any(|s| s.kind == StepKind::Reclamp);
    match out(StepKind::Reclamp) {
        Some(length) => (length, centre),
        None => (out(StepKind::Clamp).unwrap() - FACING, centre),
    }
}
