//! Random jobs as people of each system of units write them.

use serde_json::{Value, json};

use crate::simulated_lathe::dial::Chance;

/// Lengths of one job, all metric or all inch; what is given in mm is rounded as people of each would.
pub struct Made<'a> {
    pub chance: &'a mut Chance,
    pub inch: bool,
}

impl Made<'_> {
    fn size(&self, mm: f64) -> String {
        match self.inch {
            true => format!("{:.4} in", mm / 25.4),
            false => format!("{mm:.3} mm"),
        }
    }

    fn between(&mut self, low: f64, high: f64) -> f64 {
        self.chance.between(low, high)
    }

    fn maybe(
        &mut self,
        share: f64,
        field: &str,
        of: &mut Value,
        value: impl Fn(&mut Self) -> Value,
    ) {
        if self.chance.one_in(share) {
            of[field] = value(self);
        }
    }

    /// A spindle that is set without steps, in one range or two, with or without a speed below which its
    /// torque grows no more.
    fn without_steps(&mut self, lathe: &mut Value, steps: &[String]) {
        let (slow, middle, fast) = (&steps[0], &steps[steps.len() / 2], &steps[steps.len() - 1]);
        if self.chance.one_in(0.5) {
            lathe["spindle_range"] = json!([slow, fast]);
            self.maybe(0.5, "constant_torque_below", lathe, |_| json!(middle));
        } else {
            let between = &steps[steps.len() / 3];
            lathe["spindle_ranges"] = json!({
                "back gear": { "range": [slow, middle], "constant_torque_below": between },
                "direct": { "range": [between, fast], "constant_torque_below": middle },
            });
        }
    }

    fn lathe(&mut self) -> Value {
        let inch = self.inch;
        let mut lathe = json!({});
        let (ratio, slowest) = (self.between(1.25, 1.8), self.between(30.0, 90.0));
        let steps: Vec<String> = (0..self.chance.one_of(&[6, 9, 12]))
            .map(|step| format!("{:.0} rpm", slowest * ratio.powi(step)))
            .collect();
        if self.chance.one_in(0.8) {
            lathe["spindle_steps"] = json!(steps);
        } else {
            self.without_steps(&mut lathe, &steps);
        }
        if self.chance.one_in(0.85) {
            let base = self.chance.one_of(&[0.04, 0.05, 0.063]);
            lathe["feeds"] = (0..8)
                .map(|at| base * 1.26_f64.powi(at))
                .map(|feed| match inch {
                    true => json!(format!("{:.4} in/rev", feed / 25.4)),
                    false => json!(format!("{feed:.3} mm/rev")),
                })
                .collect();
        }
        let marks = self.chance.one_of(&[80, 100, 125, 200, 250]);
        let division = match inch {
            true => self.chance.one_of(&["0.001 in", "0.0005 in", "0.002 in"]),
            false => self
                .chance
                .one_of(&["0.01 mm", "0.02 mm", "0.025 mm", "0.05 mm"]),
        };
        lathe["cross_slide"] = json!({
            "reads": self.chance.one_of(&["radius", "diameter"]), "division": division, "divisions_per_turn": marks,
            "ring": self.chance.one_of(&["settable", "settable", "settable", "settable", "settable", "fixed", "readout"]),
        });
        if lathe["cross_slide"]["ring"] == "readout" {
            lathe["cross_slide"]["division"] = json!(if inch { "0.0005 in" } else { "0.005 mm" });
        }
        lathe["carriage"] = json!({
            "reads": "travel", "division": if inch { "0.005 in" } else { self.chance.one_of(&["0.1 mm", "0.05 mm", "0.2 mm"]) },
            "divisions_per_turn": self.chance.one_of(&[100, 160, 200]),
        });
        self.maybe(0.7, "backlash", &mut lathe["cross_slide"], |m| {
            let mm = m.between(0.02, 0.25);
            json!(m.size(mm))
        });
        self.maybe(0.7, "chuck_max_speed", &mut lathe, |m| {
            json!(format!("{:.0} rpm", m.between(900.0, 3000.0)))
        });
        self.maybe(0.8, "power", &mut lathe, |m| {
            json!(format!("{:.2} kW", m.between(0.4, 5.0)))
        });
        self.maybe(0.2, "efficiency", &mut lathe, |m| {
            json!(format!("{:.2}", m.between(0.6, 0.95)))
        });
        self.maybe(0.3, "max_spindle_speed", &mut lathe, |m| {
            json!(format!("{:.0} rpm", m.between(800.0, 2500.0)))
        });
        lathe
    }

    /// Surfaces that rise from the face inwards, below `most`.
    fn end(&mut self, most: f64, count: usize) -> Option<(Vec<Value>, f64)> {
        let (mut diameter, mut long) = (most, 0.0);
        let mut surfaces = Vec::new();
        for _ in 0..count {
            diameter -= self.between(1.2, 8.0);
            if diameter < 8.0 {
                return None;
            }
            let zone = self.chance.one_of(&[0.03, 0.05, 0.1, 0.2, 0.4]);
            let length = self.between(8.0, 0.9 * diameter + 12.0);
            long += length;
            let mut surface = json!({
                "diameter": self.size(diameter), "length": self.size(length),
                "limits": [self.size(diameter - zone), self.size(diameter)],
            });
            self.maybe(0.2, "chamfer", &mut surface, |m| json!(m.size(0.5)));
            if count > 1 {
                self.maybe(
                    0.15,
                    "undercut",
                    &mut surface,
                    |m| json!({ "width": m.size(2.0), "depth": m.size(0.3) }),
                );
            }
            self.maybe(0.1, "small_diameter", &mut surface, |m| {
                json!(m.size(diameter - 1.0))
            });
            self.maybe(
                0.3,
                "finish",
                &mut surface,
                |m| json!({ "ra": m.chance.one_of(&["1.6 um", "3.2 um", "6.3 um"]) }),
            );
            surfaces.push(surface);
        }
        surfaces.reverse();
        Some((surfaces, long))
    }

    /// A depth of cut of so many marks of a dial.
    fn whole_marks(&mut self, dial: &Value) -> Value {
        let division = dial["division"].as_str().unwrap();
        let (number, unit) = division.split_once(' ').unwrap();
        let depth = match dial["reads"] == "diameter" {
            true => 0.5 * number.parse::<f64>().unwrap(),
            false => number.parse().unwrap(),
        };
        let marks = self.chance.one_of(&[10.0, 12.0, 20.0, 25.0, 40.0]);
        json!(format!("{:.6} {unit}", marks * depth))
    }

    fn preferences(&mut self) -> Value {
        let mut p = json!({});
        self.maybe(0.15, "way", &mut p, |_| json!("least_time"));
        self.maybe(0.2, "compare_ways", &mut p, |_| json!(true));
        self.maybe(0.2, "correct_for_spring", &mut p, |_| json!(true));
        self.maybe(0.1, "measuring_stops", &mut p, |m| {
            json!(m.chance.one_of(&[0, 1, 2]))
        });
        self.maybe(0.1, "batch", &mut p, |m| {
            json!(m.chance.one_of(&[2, 10, 50]))
        });
        self.maybe(0.1, "largest_depth", &mut p, |m| json!(m.size(1.0)));
        self.maybe(0.2, "length_by", &mut p, |m| {
            json!(m.chance.one_of(&["dial", "stop", "indicator"]))
        });
        self.maybe(0.1, "parting", &mut p, |m| json!(m.size(3.0)));
        p
    }

    pub fn job(&mut self) -> Option<Value> {
        let bar = self.between(14.0, 80.0);
        let (skin, run_out) = match self.chance.one_in(0.2) {
            true => (self.between(0.05, 0.4), self.between(0.0, 0.3)),
            false => (0.0, 0.0),
        };
        let most = bar - run_out - 2.0 * skin;
        let count = self.chance.one_of(&[1, 1, 1, 2, 3, 4]);
        let (surfaces, mut long) = self.end(most, count)?;
        let mut part = json!({ "surfaces": surfaces });
        if self.chance.one_in(0.2) {
            let count = self.chance.one_of(&[0, 1, 2]);
            let (other, more) = self.end(most, count)?;
            long += more + self.between(1.0, 20.0);
            part["other_end"] = json!(other);
            part["overall_length"] = json!(self.size(long));
        }
        let stock_length = long + 18.0 + 0.7 * bar + self.between(0.0, 20.0);
        let mut stock = json!({ "diameter": self.size(bar), "length": self.size(stock_length) });
        if skin > 0.0 {
            stock["skin"] = json!(self.size(skin));
            stock["run_out"] = json!(self.size(run_out));
        }
        let corner = self.chance.one_of(&[0.2, 0.4, 0.8]);
        let mut tool = json!({
            "material": self.chance.one_of(&["high_speed_steel", "high_speed_steel", "carbide"]),
            "corner_radius": self.size(corner),
            "cutting_edge_angle": format!("{:.0} deg", self.chance.one_of(&[60.0, 75.0, 90.0, 93.0])),
        });
        self.maybe(0.5, "minor_cutting_edge_angle", &mut tool, |_| {
            json!("15 deg")
        });
        let material = self.chance.one_of(&[
            "11SMn30",
            "C45",
            "S235JR",
            "EN-GJL-250",
            "AW-6082",
            "CuZn39Pb3",
            "X5CrNi18-10",
        ]);
        let mut job = json!({ "lathe": self.lathe(), "tool": tool, "material": material, "stock": stock, "part": part,
            "preferences": self.preferences() });
        if self.chance.one_in(0.15) {
            let finish = job.as_object_mut().unwrap().remove("tool").unwrap();
            let mut rough = finish.clone();
            let corner = self.chance.one_of(&[0.4, 0.8, 1.2]);
            rough["corner_radius"] = json!(self.size(corner));
            rough["material"] = json!(self.chance.one_of(&["high_speed_steel", "carbide"]));
            rough["cutting_edge_angle"] = json!(format!(
                "{:.0} deg",
                self.chance.one_of(&[75.0, 90.0, 95.0])
            ));
            job["tools"] = json!({ "rough": rough, "finish": finish });
            // They are refused with the least time.
            job["preferences"]["way"] = json!("readable");
        }
        if job["preferences"]["way"] != "least_time" && self.chance.one_in(0.1) {
            job["preferences"]["depth"] = self.whole_marks(&job["lathe"]["cross_slide"]);
        }
        self.maybe(0.15, "holding", &mut job, |m| {
            json!(
                m.chance
                    .one_of(&["chuck", "chuck_and_centre", "between_centres"])
            )
        });
        if skin == 0.0 && run_out == 0.0 {
            self.maybe(0.1, "zero_at", &mut job, |m| json!(m.size(bar)));
        }
        Some(job)
    }
}
