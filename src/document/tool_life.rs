//! How long an edge lasts, and which cutting speed is worth it.

use serde::Serialize;

use crate::advice::tool_life as advice;
use crate::caution::Caution;
use crate::error::{Error, ErrorKind};
use crate::physics::wear::{self, BestLife, LifeFit, LifeLaw, UsualExponent};
use crate::provenance::{Provenance, Sourced};
use crate::quantity::fields::{Fields, Tree, list};
use crate::quantity::{
    CuttingSpeed, Duration, LifeConstant, LifeExponent, LifeScatter, Price, PricePerHour, Quantity,
    ToolLife,
};

/// What is known of the lives of an edge, and what is wanted.
///
/// ```
/// use turnwright::{document::tool_life::{Known, Question, Wanted}, physics::wear::LifeLaw};
/// let known = Known::Law(LifeLaw::new("60 m/min".parse()?, "0.125".parse()?));
/// let answer = Question::new(known, Wanted::Life("60 min".parse()?)).answer()?;
/// assert!((answer.cutting_speed.m_per_min() - 35.97).abs() < 0.01);
/// # Ok::<(), turnwright::Error>(())
/// ```
#[derive(Debug, Clone)]
pub struct Question {
    known: Known,
    wanted: Wanted,
}

/// What is known of the lives.
#[derive(Debug, Clone, PartialEq)]
#[non_exhaustive]
pub enum Known {
    /// Constant and exponent.
    Law(LifeLaw),
    /// Measured lives at two cutting speeds or more.
    Lives(Vec<(CuttingSpeed, ToolLife)>),
    /// One measured life, and the usual exponent of a tool material.
    OneLife {
        /// The speed at which it was measured.
        cutting_speed: CuttingSpeed,
        /// The life.
        life: ToolLife,
        /// The usual exponent.
        usual: Sourced<UsualExponent>,
    },
}

/// What is wanted.
#[derive(Debug, Clone, Copy, PartialEq)]
#[non_exhaustive]
pub enum Wanted {
    /// The speed for a life.
    Life(ToolLife),
    /// The life at a speed.
    CuttingSpeed(CuttingSpeed),
    /// The speed and life at which a part is cheapest.
    Cheapest {
        /// Machine and operator.
        machine_per_hour: PricePerHour,
        /// One edge.
        edge_price: Price,
        /// To change the edge.
        change_time: Duration,
    },
}

/// A life and its cutting speed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
#[non_exhaustive]
pub struct SpeedAndLife {
    /// The cutting speed.
    pub cutting_speed: CuttingSpeed,
    /// The life there.
    pub life: ToolLife,
}

/// How long the edge lasts.
#[derive(Debug, Clone, Serialize)]
#[non_exhaustive]
pub struct Answer {
    /// The cutting speed: wanted, for the life wanted, or the cheapest.
    pub cutting_speed: CuttingSpeed,
    /// The life there.
    pub life: ToolLife,
    /// Exponent n of v T^n = C.
    pub exponent: LifeExponent,
    /// Constant C: the cutting speed for a life of one minute.
    pub constant: LifeConstant,
    /// How far measured lives scatter about the law, where there are more than two.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub scatter: Option<LifeScatter>,
    /// The lives by the law at the speeds measured.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub by_the_law: Vec<SpeedAndLife>,
    /// At which most parts are made, whatever edges cost.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub fastest: Option<SpeedAndLife>,
    /// What a tenth more speed leaves of the life.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub a_tenth_faster: Option<SpeedAndLife>,
    /// What a tenth less speed makes of the life.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub a_tenth_slower: Option<SpeedAndLife>,
    /// What a person must be told.
    pub cautions: Vec<Caution>,
    /// Where the constants come from.
    #[serde(skip_serializing_if = "Provenance::is_empty")]
    pub provenance: Provenance,
}

impl Question {
    /// What is known, and what is wanted.
    #[must_use]
    pub fn new(known: Known, wanted: Wanted) -> Self {
        Self { known, wanted }
    }

    pub(super) fn read(body: &Tree) -> Result<Self, Error> {
        let f = super::fields(body)?;
        let question = Self {
            known: known(&f)?,
            wanted: wanted(&f)?,
        };
        f.finish()?;
        Ok(question)
    }

    /// Life and speed.
    ///
    /// # Errors
    /// `lives`, when they give no law; `exponent`, when no speed is the cheapest; `cutting_speed`, when it
    /// lies where no life is plausible.
    pub fn answer(&self) -> Result<Answer, Error> {
        let mut provenance = Provenance::default();
        let (law, fit) = self.law(&mut provenance)?;
        let best = match self.wanted {
            Wanted::Life(life) => SpeedAndLife {
                cutting_speed: wear::speed_for(law, life),
                life,
            },
            Wanted::CuttingSpeed(cutting_speed) => at(law, cutting_speed)?,
            Wanted::Cheapest {
                machine_per_hour,
                edge_price,
                change_time,
            } => wear::cheapest_life(law, change_time, edge_price, machine_per_hour)?.into(),
        };
        let changed = |share: f64| {
            let speed = CuttingSpeed::from_trade(best.cutting_speed.m_per_min() * share).ok()?;
            at(law, speed).ok()
        };
        let measured = match &self.known {
            Known::Lives(lives) => lives.iter().map(|(speed, _)| *speed).collect(),
            Known::OneLife { cutting_speed, .. } => vec![*cutting_speed],
            Known::Law(_) => Vec::new(),
        };
        let usual = match &self.known {
            Known::OneLife { usual, .. } => Some(&usual.value),
            _ => None,
        };
        let cautions = advice::cautions(best.cutting_speed, &measured, usual, &mut provenance);
        Ok(Answer {
            cutting_speed: best.cutting_speed,
            life: best.life,
            exponent: law.exponent(),
            constant: law.constant(),
            scatter: fit
                .as_ref()
                .filter(|fit| fit.lives.len() > 2)
                .map(|fit| fit.scatter),
            by_the_law: fit.map_or_else(Vec::new, |fit| {
                let lives = measured.iter().zip(fit.lives);
                lives
                    .map(|(cutting_speed, life)| SpeedAndLife {
                        cutting_speed: *cutting_speed,
                        life,
                    })
                    .collect()
            }),
            fastest: match self.wanted {
                // Edges that change in no time have no fastest life: faster is always better.
                Wanted::Cheapest { change_time, .. } => {
                    wear::fastest_life(law, change_time).ok().map(Into::into)
                }
                _ => None,
            },
            a_tenth_faster: changed(1.1),
            a_tenth_slower: changed(0.9),
            cautions,
            provenance,
        })
    }

    fn law(&self, provenance: &mut Provenance) -> Result<(LifeLaw, Option<LifeFit>), Error> {
        match &self.known {
            Known::Law(law) => Ok((*law, None)),
            Known::Lives(lives) => {
                let fit = wear::fit_lives(lives)?;
                Ok((fit.law, Some(fit)))
            }
            Known::OneLife {
                cutting_speed,
                life,
                usual,
            } => {
                provenance.record(
                    "exponent of the tool life",
                    &usual.value.usual,
                    usual.source,
                    usual.standing,
                );
                let law = LifeLaw::through(*cutting_speed, *life, usual.value.usual)?;
                Ok((law, None))
            }
        }
    }
}

impl From<BestLife> for SpeedAndLife {
    fn from(best: BestLife) -> Self {
        Self {
            cutting_speed: best.cutting_speed,
            life: best.life,
        }
    }
}

fn at(law: LifeLaw, cutting_speed: CuttingSpeed) -> Result<SpeedAndLife, Error> {
    Ok(SpeedAndLife {
        cutting_speed,
        life: wear::life_at(law, cutting_speed)?,
    })
}

fn known(f: &Fields<'_>) -> Result<Known, Error> {
    let lives = f.item("lives", |tree, path| {
        list(tree, path, |tree, path| {
            let f = Fields::of(tree, path, "a life")?;
            let pair = (f.need_quantity("cutting_speed")?, f.need_quantity("life")?);
            f.finish()?;
            Ok(pair)
        })
    })?;
    let constant = f.quantity::<LifeConstant>("constant")?;
    let exponent = f.quantity::<LifeExponent>("exponent")?;
    let usual = f.choice(
        "tool_material",
        &[
            ("high_speed_steel", wear::HIGH_SPEED_STEEL),
            ("carbide", wear::CARBIDE),
            ("ceramic", wear::CERAMIC),
        ],
    )?;
    match (lives, constant, exponent, usual) {
        (None, Some(constant), Some(exponent), None) => {
            Ok(Known::Law(LifeLaw::new(constant, exponent)))
        }
        (Some(lives), None, None, None) => Ok(Known::Lives(lives)),
        (Some(lives), None, None, Some(usual)) => match lives.as_slice() {
            [(cutting_speed, life)] => Ok(Known::OneLife {
                cutting_speed: *cutting_speed,
                life: *life,
                usual,
            }),
            other => Err(Error::new(
                ErrorKind::Contradiction,
                f.path("tool_material"),
                format!("a tool material beside {} lives", other.len()),
                "one life with a tool material, or more lives without",
                "two lives give the exponent themselves: strike tool_material",
            )),
        },
        (Some(lives), None, Some(exponent), None) => match lives.as_slice() {
            [(cutting_speed, life)] => Ok(Known::Law(LifeLaw::through(
                *cutting_speed,
                *life,
                exponent,
            )?)),
            other => Err(Error::new(
                ErrorKind::Contradiction,
                f.path("exponent"),
                format!("an exponent beside {} lives", other.len()),
                "one life with an exponent, or more lives without",
                "two lives give the exponent themselves: strike exponent",
            )),
        },
        (None, None, None, _) => Err(f.missing(
            "lives",
            "measured lives [{ cutting_speed, life }], or constant and exponent",
        )),
        (None, Some(_), None, None) => {
            Err(f.missing("exponent", "the exponent beside the constant"))
        }
        (None, None, Some(_), None) => {
            Err(f.missing("constant", "the constant beside the exponent, or one life"))
        }
        _ => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("constant"),
            "the law of the lives in more than one way",
            "lives; or one life with exponent or tool_material; or constant and exponent",
            "keep one of them",
        )),
    }
}

fn wanted(f: &Fields<'_>) -> Result<Wanted, Error> {
    let life = f.quantity::<ToolLife>("life")?;
    let speed = f.quantity::<CuttingSpeed>("cutting_speed")?;
    let prices = f.item("prices", |tree, path| {
        let f = Fields::of(tree, path, "prices")?;
        let cheapest = Wanted::Cheapest {
            machine_per_hour: f.need_quantity("machine_per_hour")?,
            edge_price: f.need_quantity("edge_price")?,
            change_time: f.need_quantity("change_time")?,
        };
        f.finish()?;
        Ok(cheapest)
    })?;
    match (life, speed, prices) {
        (Some(life), None, None) => Ok(Wanted::Life(life)),
        (None, Some(speed), None) => Ok(Wanted::CuttingSpeed(speed)),
        (None, None, Some(cheapest)) => Ok(cheapest),
        (None, None, None) => Err(f.missing(
            "life",
            "what is wanted: life, cutting_speed, or prices { machine_per_hour, edge_price, change_time }",
        )),
        _ => Err(Error::new(
            ErrorKind::Contradiction,
            f.path("life"),
            "more than one of life, cutting_speed and prices",
            "one of them",
            "keep what is wanted; the others follow",
        )),
    }
}
