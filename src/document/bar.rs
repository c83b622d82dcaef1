//! How far the bar bends, on any support.

use serde::Serialize;

use crate::advice::support::{self, CENTRE_UP_TO, FORCE_SCATTER, FREE_UP_TO, WHIP_SHARE};
use crate::caution::{Caution, Severity};
use crate::error::{Error, ErrorKind};
use crate::physics::bar::Bar;
use crate::physics::loads::{Load, feed_force_moment};
use crate::physics::measured_taper::{
    Measured, stiffness_from_taper, tailstock_correction, tailstock_error,
};
use crate::physics::section::Section;
use crate::physics::spring_back;
use crate::physics::stepped::HeldBar;
use crate::physics::whirl;
use crate::provenance::{Provenance, Sourced, Standing};
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::{
    CriticalSpeed, Deflection, Density, DepthOfCut, DiameterError, Eccentricity, FeedForce,
    ForceScatter, Mass, Overhang, PassiveForce, Quantity, RotationalStiffness, SetOver,
    SpindleSpeed, SpringShare, Stiffness, WorkLength, YoungsModulus,
};
use crate::shop::holding::{Holding, HoldingKind};
use crate::shop::material::Material;

/// A bend of more than this share of the length is no spring of a bar in a lathe.
const BEND_OVER_LENGTH: Sourced<f64> =
    Sourced::new(0.01, "judgement, no source", Standing::Estimate);

/// A bar in its holding, and the force that pushes it away from the tool.
///
/// A stiffness that is left out is rigid.
///
/// ```
/// use turnwright::document::bar::Question;
/// use turnwright::physics::section::Section;
/// use turnwright::{Diameter, Holding, HoldingKind, PassiveForce, WorkLength, YoungsModulus};
/// let sections = vec![Section::cylinder(Diameter::from_mm(20.0)?, WorkLength::from_mm(100.0)?)];
/// let answer = Question::new(
///     YoungsModulus::from_gpa(210.0)?,
///     sections,
///     Holding::new(HoldingKind::Chuck),
///     PassiveForce::from_newton(100.0)?,
/// )
/// .with_at(WorkLength::from_mm(100.0)?)
/// .answer()?;
/// assert!((answer.deflection.map_or(0.0, |d| d.mm()) - 0.0202).abs() < 1e-4);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    youngs_modulus: YoungsModulus,
    sections: Vec<Section>,
    holding: Holding,
    force: PassiveForce,
    at: Option<WorkLength>,
    stations: Vec<WorkLength>,
    density: Option<Density>,
    scatter: Option<ForceScatter>,
    feed_force: Option<FeedForce>,
    loads: Vec<Load>,
    look_at: Vec<WorkLength>,
    measured: Vec<Measured>,
    depth_of_cut: Option<DepthOfCut>,
    depth_before: Option<DepthOfCut>,
    least_depth: Option<DepthOfCut>,
    eccentricity: Option<Eccentricity>,
    set_over: Option<SetOver>,
    end_mass: Option<Mass>,
    spindle_speed: Option<SpindleSpeed>,
    provenance: Provenance,
}

/// The deflection at one station of a tool that stands there.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct Station {
    /// From the jaws.
    pub at: WorkLength,
    /// Of the bar, away from the tool.
    pub deflection: Deflection,
    /// The same for a force as far below and above as bars of one name scatter.
    pub deflection_range: [Deflection; 2],
    /// Twice the deflection.
    pub diameter_error: DiameterError,
}

/// A place, and how far the bar bends there.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct Bent {
    /// From the jaws.
    pub at: WorkLength,
    /// Of the bar.
    pub deflection: Deflection,
}

/// What a springing bar leaves, pass by pass; for a force in proportion to the depth.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct Passes {
    /// The share of the set depth that the first pass leaves standing.
    pub spring_share: SpringShare,
    /// What the first pass takes.
    pub true_depth: DepthOfCut,
    /// What it leaves standing.
    pub left: Deflection,
    /// What equal cuts, one after the other, leave in the end.
    pub left_by_equal_cuts: Deflection,
    /// How many passes at the same reading still cut, where the least depth is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub spring_passes: Option<u32>,
    /// What they leave.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub left_after_spring_passes: Option<Deflection>,
    /// What this cut takes after the deeper one before it: more than was dialled.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub true_depth_after_heavy: Option<DepthOfCut>,
}

/// The stiffness of a chuck, as a measured taper tells it. What is absent came out rigid.
#[derive(Debug, Clone, Copy, Serialize)]
#[non_exhaustive]
pub struct FromTaper {
    /// Against a force across.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stiffness: Option<Stiffness>,
    /// Against tilting.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rotational_stiffness: Option<RotationalStiffness>,
}

/// How far the bar bends.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// At the place asked for.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection: Option<Deflection>,
    /// The same for a force as far below and above as bars of one name scatter.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection_range: Option<[Deflection; 2]>,
    /// At each station asked for, the tool standing there.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub stations: Vec<Station>,
    /// Where it bends most, wherever the tool stands.
    pub worst: Station,
    /// Error of the diameter at the far end less that beside the jaws.
    pub taper: DiameterError,
    /// How far the diameter bulges over the straight line between the two ends.
    pub barrel: DiameterError,
    /// With which force the centre at the tail holds, the tool at `at` or at the worst place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub centre_force: Option<PassiveForce>,
    /// With which forces the steadies hold, in their order.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub steady_forces: Vec<PassiveForce>,
    /// What the feed force adds by its moment, the tool cutting towards the chuck at the same place.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub deflection_by_feed_force: Option<Deflection>,
    /// Under the loads given and the force together, at the places to look at.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub bent: Vec<Bent>,
    /// The speed at which the bar whips.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub first_critical_speed: Option<CriticalSpeed>,
    /// Up to where it is safe to run against whip.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub safe_from_whip_up_to: Option<CriticalSpeed>,
    /// How far the bar throws itself out at the spindle speed given.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub whip: Option<Deflection>,
    /// Where the bar sags most under its own weight.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub sag: Option<Bent>,
    /// What the spring leaves, pass by pass.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub passes: Option<Passes>,
    /// How stiff the chuck is by the taper measured.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub chuck: Option<FromTaper>,
    /// Error of the diameter by the tailstock alone, at `at` or at the far end.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tailstock_error: Option<DiameterError>,
    /// How far to move the tailstock, towards the tool where positive.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub tailstock_correction: Option<SetOver>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// A bar of these sections from the chuck outwards, its holding and the force.
    #[must_use]
    pub fn new(
        youngs_modulus: YoungsModulus,
        sections: Vec<Section>,
        holding: Holding,
        force: PassiveForce,
    ) -> Self {
        Self {
            youngs_modulus,
            sections,
            holding,
            force,
            at: None,
            stations: Vec::new(),
            density: None,
            scatter: None,
            feed_force: None,
            loads: Vec::new(),
            look_at: Vec::new(),
            measured: Vec::new(),
            depth_of_cut: None,
            depth_before: None,
            least_depth: None,
            eccentricity: None,
            set_over: None,
            end_mass: None,
            spindle_speed: None,
            provenance: Provenance::default(),
        }
    }

    crate::shop::setters! {
        /// With a place to look at, from the jaws.
        with_at at: WorkLength;
        /// With the density, for the critical speed and the sag.
        with_density density: Density;
        /// With the scatter of the force; without, that of the specific force from bar to bar.
        with_scatter scatter: ForceScatter;
        /// With the feed force, for its moment.
        with_feed_force feed_force: FeedForce;
        /// With the depth set on the dial whose force this is, for what the spring leaves.
        with_depth_of_cut depth_of_cut: DepthOfCut;
        /// With the deeper cut before it.
        with_depth_before depth_before: DepthOfCut;
        /// With the least depth that the edge can cut, for the number of spring passes.
        with_least_depth least_depth: DepthOfCut;
        /// With the distance of the centre of mass from the axis, for the whip.
        with_eccentricity eccentricity: Eccentricity;
        /// With how far the tailstock stands off the axis, towards the tool, for the error it makes.
        with_set_over set_over: SetOver;
        /// With a mass at the free end of a cylinder in the chuck, for the critical speed.
        with_end_mass end_mass: Mass;
        /// With the spindle speed, for the whip.
        with_spindle_speed spindle_speed: SpindleSpeed;
    }

    /// With stations to look at, from the jaws.
    #[must_use]
    pub fn with_stations(mut self, stations: Vec<WorkLength>) -> Self {
        self.stations = stations;
        self
    }

    /// With more loads, and the places at which to look at all of them together.
    #[must_use]
    pub fn with_loads(mut self, loads: Vec<Load>, look_at: Vec<WorkLength>) -> Self {
        (self.loads, self.look_at) = (loads, look_at);
        self
    }

    /// With errors of the diameter that were measured after a cut with this force.
    #[must_use]
    pub fn with_measured(mut self, measured: Vec<Measured>) -> Self {
        self.measured = measured;
        self
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let mut provenance = Provenance::default();
        let material = f.item("material", Material::read)?;
        let youngs_modulus = modulus(&f, material.as_ref(), &mut provenance)?;
        let density = f.quantity("density")?;
        let question = Self {
            youngs_modulus,
            sections: sections(&f)?,
            holding: f.need_item(
                "holding",
                "the holding: \"chuck\", \"chuck_and_centre\" or \"between_centres\"",
                Holding::read,
            )?,
            force: f.need_quantity("force")?,
            at: f.quantity("at")?,
            stations: f.quantities("stations")?.unwrap_or_default(),
            density: density_of(density, material.as_ref(), &mut provenance),
            scatter: f.quantity("scatter")?,
            feed_force: f.quantity("feed_force")?,
            loads: f
                .item("loads", |tree, path| list(tree, path, load))?
                .unwrap_or_default(),
            look_at: f.quantities("look_at")?.unwrap_or_default(),
            measured: f
                .item("measured", |tree, path| list(tree, path, measured))?
                .unwrap_or_default(),
            depth_of_cut: f.quantity("depth_of_cut")?,
            depth_before: f.quantity("depth_before")?,
            least_depth: f.quantity("least_depth")?,
            eccentricity: f.quantity("eccentricity")?,
            set_over: f.quantity("set_over")?,
            end_mass: f.quantity("end_mass")?,
            spindle_speed: f.quantity("spindle_speed")?,
            provenance,
        };
        f.finish()?;
        Ok(question)
    }

    /// The deflections.
    ///
    /// # Errors
    /// `at`, `stations`, `loads`, `look_at` or `measured`, when a place lies beyond the bar;
    /// `holding.steadies`, when a steady stands off it; `spindle_speed`, when the bar would whip
    /// without limit; `depth_of_cut`, when another depth is given without it.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = self.provenance.clone();
        let bar = HeldBar::new(
            self.youngs_modulus,
            &self.sections,
            support::support_of(self.holding.kind()),
            &support::as_given(&self.holding),
            self.holding.steadies(),
        )
        .map_err(|error| match error.field().starts_with("steadies") {
            true => error.inside("holding"),
            false => error,
        })?;
        let scatter = match self.scatter {
            Some(scatter) => scatter.value(),
            None => provenance.open("scatter of the specific force", &FORCE_SCATTER),
        };
        let station = |at, deflection: Deflection| Station {
            at,
            deflection,
            deflection_range: range(deflection, scatter),
            diameter_error: deflection.diameter_error(),
        };
        let stations = self
            .stations
            .iter()
            .enumerate()
            .map(|(number, at)| {
                bar.deflection(self.force, *at)
                    .map(|bent| station(*at, bent))
                    .map_err(|error| error.at(&format!("stations[{number}]")))
            })
            .collect::<Result<Vec<_>, Error>>()?;
        let end = bar.length();
        // Beside the jaws a bar of no length does not bend: the whole bar but for a millionth.
        let first = WorkLength::computed_trade(end.mm() * 1e-6);
        let size = support::size_of(self.force);
        let (worst_at, _) = bar.worst(size, first, end)?;
        let worst = station(worst_at, bar.deflection(self.force, worst_at)?);
        let (taper, barrel) = bar.taper_and_barrel(self.force, first, end)?;
        let deflection = self
            .at
            .map(|at| bar.deflection(self.force, at))
            .transpose()?;
        let tool_at = self.at.unwrap_or(worst_at);
        let here = deflection.unwrap_or(worst.deflection);
        let mut cautions = self.about_the_bend(&bar, worst.deflection, &mut provenance);
        let whirl = self.whirl(&bar, &mut provenance, &mut cautions)?;
        cautions.push(Caution::new(
            Severity::Note,
            "spring_is_an_estimate",
            format!(
                "The bar alone, without tool and shear. The ranges are for a force {:.0} % smaller and greater: that of bars of \
                     one name scatters so.",
                100.0 * scatter
            ),
        ));
        Ok(Answer {
            deflection,
            deflection_range: deflection.map(|bent| range(bent, scatter)),
            stations,
            worst,
            taper,
            barrel,
            centre_force: match self.holding.kind() {
                HoldingKind::Chuck => None,
                _ => Some(bar.centre_force(self.force, tool_at)?),
            },
            steady_forces: match self.holding.steadies() {
                [] => Vec::new(),
                _ => bar.steady_forces(self.force, tool_at)?,
            },
            deflection_by_feed_force: self
                .feed_force
                .map(|force| {
                    let moment = feed_force_moment(force, bar.diameter(tool_at)?);
                    let load = Load::Moment {
                        at: tool_at,
                        moment,
                    };
                    first_of(bar.bent_by(&[load], &[tool_at])?)
                })
                .transpose()?,
            bent: self.bent(&bar)?,
            first_critical_speed: whirl.critical,
            safe_from_whip_up_to: whirl.safe,
            whip: whirl.whip,
            sag: self.sag(&bar)?,
            passes: self.passes(here)?,
            chuck: self.chuck()?,
            tailstock_error: self
                .set_over
                .map(|off| {
                    let length = Overhang::computed_trade(end.mm());
                    let support = support::support_of(self.holding.kind());
                    tailstock_error(support, off, self.at.unwrap_or(end), length)
                })
                .transpose()?,
            tailstock_correction: self.tailstock(end)?,
            cautions,
            provenance,
        })
    }

    /// What the figures cannot say: a bend that is no spring any more, supports taken as rigid.
    fn about_the_bend(
        &self,
        bar: &HeldBar,
        worst: Deflection,
        provenance: &mut Provenance,
    ) -> Vec<Caution> {
        let mut told = Vec::new();
        let length = bar.length().mm();
        let thinnest = self
            .sections
            .iter()
            .map(|s| s.diameter().min(s.end_diameter()).mm())
            .fold(f64::INFINITY, f64::min);
        let most = provenance.open(
            "largest bend over length that is a spring",
            &BEND_OVER_LENGTH,
        );
        if worst.mm().abs() > most * length {
            told.push(Caution::new(
                Severity::Danger,
                "bends_for_good",
                format!(
                    "The bar bends by {:.1} % of its length: that is no spring any more. It bends for good, climbs onto the tool \
                     or is thrown. Do not cut so: less force, less overhang, or a support.",
                    100.0 * worst.mm().abs() / length
                ),
            ));
        }
        let (free, centred) = (FREE_UP_TO, CENTRE_UP_TO);
        let rule = match self.holding.kind() {
            HoldingKind::Chuck => free,
            _ => centred,
        };
        if self.holding.steadies().is_empty() && length / thinnest > rule.value {
            let ratio = provenance.open("overhang over diameter by the rule of the trade", &rule);
            told.push(Caution::new(
                Severity::Warning,
                "slender",
                format!(
                    "The bar stands out {:.0} times its least diameter; the trade holds it so up to about {ratio:.0}: beyond, it \
                     sets a centre or a steady.",
                    length / thinnest
                ),
            ));
        }
        let holding = &self.holding;
        let between = holding.kind() == HoldingKind::BetweenCentres;
        if holding.stiffness().is_none()
            || (holding.rotational_stiffness().is_none() && !between)
            || (holding.centre_stiffness().is_none() && holding.kind() != HoldingKind::Chuck)
        {
            told.push(Caution::new(
                Severity::Warning,
                "taken_as_rigid",
                "What holds the bar is taken as rigid where its stiffness is not given. A real chuck or centre gives way too: a \
                 short bar then moves several times as far, and whips earlier. Give the stiffnesses.",
            ));
        }
        told
    }

    /// All loads and the force at `at` together.
    fn bent(&self, bar: &HeldBar) -> Result<Vec<Bent>, Error> {
        if self.look_at.is_empty() {
            return Ok(Vec::new());
        }
        let mut loads = self.loads.clone();
        if let Some(at) = self.at {
            let force = self.force;
            loads.push(Load::Force { at, force });
        }
        let bent = bar.bent_by(&loads, &self.look_at).map_err(|error| {
            let field = error.field().replace("places", "look_at");
            error.at(&field)
        })?;
        Ok(self
            .look_at
            .iter()
            .zip(bent)
            .map(|(at, deflection)| Bent {
                at: *at,
                deflection,
            })
            .collect())
    }

    /// The largest sag under own weight, at one of 64 places.
    fn sag(&self, bar: &HeldBar) -> Result<Option<Bent>, Error> {
        let Some(density) = self.density else {
            return Ok(None);
        };
        let places: Vec<WorkLength> = (1..=64)
            .map(|place| WorkLength::computed_trade(bar.length().mm() * f64::from(place) / 64.0))
            .map(|place| place.min(bar.length()))
            .collect();
        let sag = bar.bent_by(&[Load::OwnWeight { density }], &places)?;
        Ok(places
            .into_iter()
            .zip(sag)
            .max_by(|a, b| a.1.mm().abs().total_cmp(&b.1.mm().abs()))
            .map(|(at, deflection)| Bent { at, deflection }))
    }

    fn whirl(
        &self,
        bar: &HeldBar,
        provenance: &mut Provenance,
        cautions: &mut Vec<Caution>,
    ) -> Result<Whirl, Error> {
        let Some(density) = self.density else {
            if self.eccentricity.is_some() || self.end_mass.is_some() {
                return Err(missing("density", "the density, for the whip"));
            }
            return Ok(Whirl::default());
        };
        let critical = match self.end_mass {
            Some(mass) => self.with_mass_at_the_end(density, mass)?,
            None => bar.first_critical_speed(density)?,
        };
        let share = provenance.open("share of the critical speed", &WHIP_SHARE);
        let safe = support::safe_from_whip(critical, share);
        if let Some(speed) = self.spindle_speed.filter(|n| n.rpm() > safe.rpm()) {
            cautions.push(Caution::new(
                Severity::Danger,
                "whip",
                format!(
                    "At {speed} the bar is near its critical speed or above it: it can bow out and whip. Run slower, let less \
                     stand out, or support it; nothing out of the spindle's rear without a guarded tube."
                ),
            ));
        }
        let whip = match (self.eccentricity, self.spindle_speed) {
            (Some(off), Some(speed)) => Some(whirl::whip(off, speed, critical)?),
            (Some(_), None) => {
                return Err(missing("spindle_speed", "the spindle speed, for the whip"));
            }
            (None, _) => None,
        };
        Ok(Whirl {
            critical: Some(critical),
            safe: Some(safe),
            whip,
        })
    }

    /// The critical speed with a mass at the end: of one cylinder in a rigid chuck.
    fn with_mass_at_the_end(&self, density: Density, mass: Mass) -> Result<CriticalSpeed, Error> {
        let rigid = self.holding.stiffness().is_none()
            && self.holding.rotational_stiffness().is_none()
            && self.holding.steadies().is_empty();
        let [section] = self.sections.as_slice() else {
            return Err(only_a_cylinder());
        };
        if self.holding.kind() != HoldingKind::Chuck
            || !rigid
            || section.diameter() != section.end_diameter()
        {
            return Err(only_a_cylinder());
        }
        let overhang = Overhang::from_trade(section.length().mm())
            .map_err(|error| error.at("sections[0].length"))?;
        let bar = Bar::new(self.youngs_modulus, section.diameter(), overhang);
        let bar = match section.bore() {
            Some(bore) => bar.with_bore(bore)?,
            None => bar,
        };
        Ok(whirl::critical_speed_with_end_mass(&bar, density, mass))
    }

    fn passes(&self, deflection: Deflection) -> Result<Option<Passes>, Error> {
        let Some(set) = self.depth_of_cut else {
            if self.depth_before.is_some() || self.least_depth.is_some() {
                return Err(missing(
                    "depth_of_cut",
                    "the depth that was set on the dial",
                ));
            }
            return Ok(None);
        };
        let share =
            spring_back::spring_share(set, deflection).map_err(|error| error.at("force"))?;
        let left = spring_back::left_after_passes(set, share, 1);
        let spring = self
            .least_depth
            .map(|least| spring_back::spring_passes(set, share, least));
        let true_depth = |left| spring_back::light_after_heavy(left, set, share);
        Ok(Some(Passes {
            spring_share: share,
            true_depth: true_depth(Deflection::computed_trade(0.0)),
            left,
            left_by_equal_cuts: spring_back::left_in_the_end(set, share)?,
            spring_passes: spring.map(|(passes, _)| passes),
            left_after_spring_passes: spring.map(|(_, left)| left),
            true_depth_after_heavy: self
                .depth_before
                .map(|before| true_depth(spring_back::left_after_passes(before, share, 1))),
        }))
    }

    /// The stiffness by a measured taper, with the chuck alone.
    fn chuck(&self) -> Result<Option<FromTaper>, Error> {
        if self.measured.is_empty() || self.holding.kind() != HoldingKind::Chuck {
            return Ok(None);
        }
        let springs = stiffness_from_taper(
            self.youngs_modulus,
            &self.sections,
            self.force,
            &self.measured,
        )?;
        Ok(Some(FromTaper {
            stiffness: springs.chuck,
            rotational_stiffness: springs.chuck_rotational,
        }))
    }

    /// The tailstock by a measured taper, between centres.
    fn tailstock(&self, length: WorkLength) -> Result<Option<SetOver>, Error> {
        if self.measured.is_empty() || self.holding.kind() == HoldingKind::Chuck {
            return Ok(None);
        }
        let near = self.measured.iter().min_by_key(|one| one.at);
        let far = self.measured.iter().max_by_key(|one| one.at);
        match (near, far) {
            (Some(near), Some(far)) => tailstock_correction(*near, *far, length)
                .map(Some)
                .map_err(|error| error.at("measured")),
            _ => Ok(None),
        }
    }
}

/// What is known of whip.
#[derive(Default)]
struct Whirl {
    critical: Option<CriticalSpeed>,
    safe: Option<CriticalSpeed>,
    whip: Option<Deflection>,
}

/// A deflection with a force as far below and above.
fn range(deflection: Deflection, scatter: f64) -> [Deflection; 2] {
    [-1.0, 1.0].map(|side| Deflection::computed_trade(deflection.mm() * (1.0 + side * scatter)))
}

fn first_of(bent: Vec<Deflection>) -> Result<Deflection, Error> {
    bent.into_iter()
        .next()
        .ok_or_else(|| Error::internal("a place without a deflection"))
}

fn missing(field: &str, what: &str) -> Error {
    Error::new(
        ErrorKind::MissingField,
        field,
        "nothing",
        what,
        format!("add \"{field}\""),
    )
}

fn only_a_cylinder() -> Error {
    Error::not_offered(
        "end_mass",
        "a mass at the end of any other bar",
        "give one cylinder in the chuck alone, without stiffnesses; else give the mass as a short thick section at the end",
    )
}

fn load(tree: &Tree, path: &str) -> Result<Load, Error> {
    let f = Fields::of(tree, path, "a load")?;
    let at = f.need_quantity("at")?;
    let load = match (f.quantity("force")?, f.quantity("moment")?) {
        (Some(force), None) => Load::Force { at, force },
        (None, Some(moment)) => Load::Moment { at, moment },
        (None, None) => return Err(f.missing("force", "a force, or a moment")),
        (Some(_), Some(_)) => {
            return Err(Error::new(
                ErrorKind::Contradiction,
                f.path("moment"),
                "both force and moment",
                "one of the two",
                "write two loads at the same place",
            ));
        }
    };
    f.finish()?;
    Ok(load)
}

fn measured(tree: &Tree, path: &str) -> Result<Measured, Error> {
    let f = Fields::of(tree, path, "a measurement")?;
    let one = Measured::new(f.need_quantity("at")?, f.need_quantity("diameter_error")?);
    f.finish()?;
    Ok(one)
}

/// Young's modulus, given or of a material.
pub(super) fn modulus(
    f: &Fields<'_>,
    material: Option<&Material>,
    provenance: &mut Provenance,
) -> Result<YoungsModulus, Error> {
    match (f.quantity("youngs_modulus")?, material) {
        (Some(given), None) => Ok(given),
        (None, Some(material)) => material
            .youngs_modulus()
            .map(|e| e.open("Young's modulus", provenance))
            .ok_or_else(|| {
                Error::new(
                    ErrorKind::MissingField,
                    f.path("youngs_modulus"),
                    "a material without a Young's modulus",
                    "a Young's modulus",
                    "add \"youngs_modulus\" to the material",
                )
            }),
        (None, None) => Err(f.missing("youngs_modulus", "a Young's modulus, or a material")),
        (Some(_), Some(_)) => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("youngs_modulus"),
            "both youngs_modulus and material",
            "one of the two",
            "to correct a material's modulus write { \"like\": \"<key>\", \"youngs_modulus\": .. }",
        )),
    }
}

/// The density, given or of a material.
pub(super) fn density_of(
    given: Option<Density>,
    material: Option<&Material>,
    provenance: &mut Provenance,
) -> Option<Density> {
    given.or_else(|| {
        material
            .and_then(Material::density)
            .map(|density| density.open("density", provenance))
    })
}

/// The sections of the bar, from the chuck outwards.
pub(super) fn sections(f: &Fields<'_>) -> Result<Vec<Section>, Error> {
    f.need_item(
        "sections",
        "the sections of the bar: [{ diameter, length }]",
        |tree, path| list(tree, path, section),
    )
}

fn section(tree: &Tree, path: &str) -> Result<Section, Error> {
    let f = Fields::of(tree, path, "a section")?;
    let (diameter, length) = (f.need_quantity("diameter")?, f.need_quantity("length")?);
    let section = match f.quantity("end_diameter")? {
        Some(end) => Section::cone(diameter, end, length),
        None => Section::cylinder(diameter, length),
    };
    let section = match f.quantity("bore")? {
        Some(bore) => section
            .with_bore(bore)
            .map_err(|error| error.at(&f.path("bore")))?,
        None => section,
    };
    f.finish()?;
    Ok(section)
}
