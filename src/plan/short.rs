//! The sheet in short form, for who has done such a job before.

use super::sheet::{Sheet, Step, StepKind, minutes, paragraph};
use super::turning::read_as;
use super::words::{NO_POWER_FEED, SPRING_PASS, STOP_WORDS};
use crate::caution::Severity;
use crate::quantity::Quantity;

impl Sheet {
    /// The sheet in short form: the cuts one line each, of the other steps what is to be done, in at most
    /// 100 columns, the dangers above them; no reasons, no figures behind them, no sources.
    ///
    /// # Example
    /// ```
    /// # use turnwright::{plan::Job, CornerRadius, CuttingEdgeAngle, Dial, DialReads, Diameter, Division,
    /// #     DivisionsPerTurn, Lathe, Material, Part, SpindleSpeed, Stock, Tool, ToolMaterial, Units};
    /// # let hundred = DivisionsPerTurn::new(100)?;
    /// # let lathe = Lathe::with_steps(vec!["250 rpm".parse()?, "500 rpm".parse()?])?
    /// #     .with_cross_slide(Dial::new(DialReads::Radius, Division::from_mm(0.02)?, hundred))?
    /// #     .with_carriage(Dial::new(DialReads::Travel, Division::from_mm(0.1)?, hundred))?;
    /// # let tool = Tool::new("0.4 mm".parse()?, "90 deg".parse()?).with_material(ToolMaterial::HighSpeedSteel);
    /// # let part = Part::of_class("30 mm".parse()?, "h8".parse()?, "70 mm".parse()?)?;
    /// # let job = Job::new(lathe, tool, Material::named("11SMn30")?, Stock::new("34 mm".parse()?, "140 mm".parse()?), part);
    /// // An invented job, made out of sight.
    /// let sheet = job.plan(Units::Metric)?;
    /// assert!(sheet.short().len() < sheet.to_string().len() / 2);
    /// # Ok::<(), turnwright::Error>(())
    /// ```
    #[must_use]
    pub fn short(&self) -> String {
        let mut text = String::new();
        for caution in &self.cautions {
            if caution.severity() == Severity::Danger {
                line(&mut text, "! ", first_sentence(caution.text()));
            }
        }
        let done = self.steps.iter().filter(|step| step.done).count();
        for (at, step) in self.steps.iter().enumerate().skip(done) {
            line(&mut text, &format!("{:>2}  ", at + 1), &self.brief(step));
        }
        line(
            &mut text,
            "",
            &format!("Cutting {}.", minutes(self.expected.time)),
        );
        text
    }

    fn brief(&self, step: &Step) -> String {
        let u = self.units();
        match step.kind {
            kind if kind.is_cut() => {
                let mut parts = vec![match step.kind {
                    StepKind::FinishCut => String::from("Finish"),
                    _ => String::from("Cut"),
                }];
                parts.extend(
                    step.reading.as_ref().map(|reading| {
                        format!("to {}", read_as(reading, step.tenths.unwrap_or(0)))
                    }),
                );
                parts.extend(step.z.map(|z| format!("to Z {}", z.people(u))));
                parts.extend(step.spindle_speed.map(|n| n.people(u).to_string()));
                parts.extend(step.feed.map(|f| f.people(u).to_string()));
                if step.text.contains(NO_POWER_FEED) {
                    parts.push(String::from("by hand"));
                }
                if step.text.contains(SPRING_PASS) {
                    parts.push(String::from("twice at that mark"));
                }
                parts.push(format!("expect {}", step.diameter.people(u)));
                parts.join(", ")
            }
            // How to stop is among the dangers above.
            StepKind::Measure | StepKind::Inspect => {
                let (_, then) = step.text.split_once(STOP_WORDS).unwrap_or(("", &step.text));
                format!("STOP.{then}")
            }
            _ => step.text.clone(),
        }
    }
}

/// Up to the first full stop that ends a sentence.
fn first_sentence(text: &str) -> &str {
    match text.find(". ") {
        Some(at) => &text[..=at],
        None => text,
    }
}

/// Into a text, which takes whatever is written.
fn line(text: &mut String, lead: &str, what: &str) {
    let _ = paragraph(text, lead, what);
}
