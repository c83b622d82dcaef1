//! Plans between two centres: invented shafts, metric and inch, on invented lathes.

use serde_json::{Value, json};
use turnwright::advice::diagnosis::{Cause, SizeAt};
use turnwright::advice::support::{SupportAdvice, SupportWay};
use turnwright::document;
use turnwright::document::plan::Question;
use turnwright::plan::{Sheet, Step, StepKind};
use turnwright::{Diameter, Error, ErrorKind, Material, PassiveForce, Units, WorkLength};

/// An invented layshaft, turned at both ends: 292 mm from face to face.
fn layshaft() -> Value {
    let surface = |diameter: &str, length: &str| json!({ "diameter": diameter, "limits": { "nominal": diameter, "general": "fine" }, "length": length });
    json!({
        "material": "11SMn30",
        "stock": { "diameter": "32 mm", "length": "296 mm" },
        "part": {
            "surfaces": [surface("20 mm", "60 mm"), surface("26 mm", "80 mm")],
            "other_end": [surface("22 mm", "50 mm")],
            "overall_length": "292 mm",
        },
        "holding": "between_centres",
        "tool": { "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" },
        "lathe": {
            "spindle_steps": ["63 rpm", "125 rpm", "250 rpm", "500 rpm", "1000 rpm"],
            "chuck_max_speed": "1500 rpm", "power": "1.5 kW", "feeds": ["0.05 mm/rev", "0.1 mm/rev", "0.2 mm/rev"],
            "between_centres": "500 mm", "swing": "250 mm",
            "cross_slide": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100, "backlash": "0.1 mm" },
            "carriage": { "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 },
        },
    })
}

/// An invented countershaft in inch, turned at one end.
fn countershaft() -> Value {
    json!({
        "material": "11SMn30",
        "stock": { "diameter": "1 1/4 in", "length": "12 in" },
        "part": { "diameter": "1 in", "limits": ["0.996 in", "1 in"], "length": "8 in" },
        "holding": { "kind": "between_centres", "centre_max_speed": "700 rpm" },
        "units": "inch",
        "tool": { "material": "high_speed_steel", "corner_radius": "1/64 in", "cutting_edge_angle": "90 deg" },
        "lathe": {
            "spindle_steps": ["70 rpm", "140 rpm", "280 rpm", "560 rpm", "1120 rpm"],
            "chuck_max_speed": "1500 rpm", "power": "2 hp", "feeds": ["0.002 in/rev", "0.004 in/rev", "0.008 in/rev"],
            "cross_slide": { "reads": "diameter", "division": "0.001 in", "divisions_per_turn": 200, "backlash": "0.004 in" },
            "carriage": { "reads": "travel", "division": "0.005 in", "divisions_per_turn": 200 },
        },
    })
}

fn plan(job: &Value) -> Result<Sheet, Error> {
    Question::from_text(&json!({ "plan": job }).to_string())?.answer()
}

fn of_kind(sheet: &Sheet, kind: StepKind) -> Vec<&Step> {
    sheet.steps.iter().filter(|s| s.kind == kind).collect()
}

fn at(sheet: &Sheet, kind: StepKind) -> usize {
    sheet.steps.iter().position(|s| s.kind == kind).unwrap()
}

fn says(sheet: &Sheet, code: &str) -> bool {
    sheet.cautions.iter().any(|c| c.code() == code)
}

/// What stands between two words.
fn between<'a>(text: &'a str, before: &str, after: &str) -> &'a str {
    let (_, rest) = text
        .split_once(before)
        .unwrap_or_else(|| panic!("no {before:?} in {text}"));
    rest.split_once(after).unwrap().0
}

/// The first number behind some words.
fn number_after(text: &str, words: &str) -> f64 {
    let (_, rest) = text
        .split_once(words)
        .unwrap_or_else(|| panic!("no {words:?} in {text}"));
    let digits = |c: char| c.is_ascii_digit() || c == '.' || c == '-';
    let end = rest.find(|c| !digits(c)).unwrap_or(rest.len());
    rest[..end].parse().unwrap()
}

#[test]
fn both_ends_are_faced_and_drilled_before_the_chuck_comes_off() {
    for job in [layshaft(), countershaft()] {
        let sheet = plan(&job).unwrap();
        let zero = at(&sheet, StepKind::ZeroZ);
        let kinds: Vec<StepKind> = sheet.steps[..=zero].iter().map(|s| s.kind).collect();
        use StepKind::{CentreDrill, Clamp, Face, FirstStart, Reclamp, ZeroZ};
        let wanted = [
            Clamp,
            FirstStart,
            Face,
            CentreDrill,
            Clamp,
            Face,
            CentreDrill,
            Reclamp,
            Reclamp,
            Reclamp,
            ZeroZ,
        ];
        assert_eq!(kinds, wanted, "{sheet}");
        let said = |step: usize, words: &[&str]| {
            let text = &sheet.steps[step].text;
            for words in words {
                assert!(text.contains(words), "no {words:?} in {text}");
            }
        };
        said(0, &["standing out", "KEY OUT of the chuck"]);
        said(
            4,
            &[
                "the other end out",
                "without soft sheet",
                "KEY OUT of the chuck",
            ],
        );
        said(
            7,
            &[
                "Chuck off the spindle",
                "wiped clean",
                "driver plate",
                "An indicator",
                "The live centre into the tailstock",
            ],
        );
        said(
            8,
            &[
                "The dog over",
                "bar as it comes",
                "tail of the dog free",
                "oil in its hole",
                "Guard over dog",
                "Turn by hand one whole turn",
                "barrel out as little as can be",
            ],
        );
        said(9, &["tailstock is in line"]);
        said(
            10,
            &["beside the centre", "dog at Z", "towards the headstock"],
        );
        // From the dog on no word speaks of jaws, nor of a key.
        for step in &sheet.steps[8..] {
            let text = format!("{} {}", step.text, step.because.as_deref().unwrap_or(""));
            let held = step.kind == StepKind::TurnRound || step.kind == StepKind::Clear;
            for word in [
                "jaw",
                "KEY",
                "Key",
                "out of the chuck",
                "stand out",
                "standing out",
            ] {
                assert!(held || !text.contains(word), "{word}: {text}");
            }
        }
        let prove = sheet.prove.join(" ");
        assert!(prove.contains("dog") && !prove.contains("jaws"), "{prove}");
        let dials = sheet.dials.join(" ");
        assert!(dials.contains("towards the headstock"), "{dials}");
        let kit = sheet.kit.join("\n");
        for item in [
            "a driving dog (lathe carrier) for",
            "driver plate",
            "a live centre",
            "a centre for the spindle",
            "a dial indicator on a stand",
        ] {
            assert!(kit.contains(item), "no {item} in {kit}");
        }
        assert!(!kit.contains("jaws"), "{kit}");
        for code in ["dog_flies_round", "dog_turns_with_the_work", "locks"] {
            assert!(says(&sheet, code), "{code}");
        }
        let heading = sheet.heading.join(" ");
        assert!(heading.contains("Held between two centres"), "{heading}");
        assert!(heading.contains("manual of the machine"), "{heading}");
    }
}

#[test]
fn a_part_with_two_ends_is_turned_end_for_end_on_one_axis() {
    let sheet = plan(&layshaft()).unwrap();
    assert_eq!(sheet.support.len(), 2);
    assert!(!says(&sheet, "two_axes"), "{sheet}");
    let turned = of_kind(&sheet, StepKind::TurnRound);
    let [turned] = turned.as_slice() else {
        panic!("{sheet}");
    };
    for words in [
        "the dog over its finished 20.00 mm, 20.00 mm of it",
        "soft sheet",
        "under the screw",
        "Between the same two centres",
        "292.00 mm from face to face",
    ] {
        assert!(turned.text.contains(words), "{words}: {}", turned.text);
    }
    let because = turned.because.as_deref().unwrap();
    assert!(because.contains("on one axis"), "{because}");
    // Nothing is faced or drilled once the first end is finished.
    let place = at(&sheet, StepKind::TurnRound);
    for kind in [StepKind::Face, StepKind::CentreDrill] {
        assert!(!sheet.steps[place..].iter().any(|s| s.kind == kind));
    }
    // The other end is faced to the length, from a bar of 296 mm that gave 1 mm to the first face.
    let faces = of_kind(&sheet, StepKind::Face);
    assert!(
        faces[1]
            .text
            .contains("L - 292.00 mm, about 3.00 mm in all, in 3 cuts"),
        "{}",
        faces[1].text
    );
    let told = &of_kind(&sheet, StepKind::Reclamp)[0].text;
    // From memory of ISO 2768-1, class medium, 120 to 400 mm: 0.5 mm.
    assert!(told.contains("good from 291.50 mm to 292.50 mm"), "{told}");
    // Both holes are in finished ends.
    for drill in of_kind(&sheet, StepKind::CentreDrill) {
        assert!(
            drill.text.contains("stays in the finished end"),
            "{}",
            drill.text
        );
    }
    let last = &sheet.steps.last().unwrap().text;
    assert!(!last.contains("sawn") && last.contains("dog off"), "{last}");
    // The same part in jaws is on two axes.
    let mut job = layshaft();
    job["holding"] = json!("chuck_and_centre");
    assert!(says(&plan(&job).unwrap(), "two_axes"));
}

#[test]
fn what_stays_under_the_dog_of_one_end_is_sawn_off_afterwards() {
    let sheet = plan(&countershaft()).unwrap();
    let last = &sheet.steps.last().unwrap().text;
    // 12 in less two faces of 0.04 in and the shoulder at 8 in.
    assert!(last.contains("3.920 in with the centre hole"), "{last}");
    assert!(last.contains("sawn off in the vice"), "{last}");
    let drills = of_kind(&sheet, StepKind::CentreDrill);
    assert!(drills[0].text.contains("stays in the finished end"));
    assert!(drills[1].text.contains("goes with what is sawn off"));
    let dog = &of_kind(&sheet, StepKind::Reclamp)[1].text;
    assert!(dog.contains("0.800 in of the bar as it comes"), "{dog}");
    assert!(dog.contains("11.920 in from face to face"), "{dog}");
    let kit = sheet.kit.join("\n");
    assert!(kit.contains("a hacksaw, a vice and a flat file"), "{kit}");
    // Neither unit stands in a sheet of the other.
    let text = sheet.to_string();
    let steps = between(&text, "towards the headstock", "After a break");
    assert!(
        !steps.contains(" mm;") && !steps.contains(" mm of"),
        "{steps}"
    );
    let metric = plan(&layshaft()).unwrap().to_string();
    assert!(!metric.contains(" in from face"), "{metric}");
    // A sheet of a part that is faced to its length says another end.
    let mut whole = layshaft();
    whole["part"]["other_end"] = json!([]);
    let sheet = plan(&whole).unwrap();
    let last = &sheet.steps.last().unwrap().text;
    assert!(
        last.contains("Break the edge") && !last.contains("sawn"),
        "{last}"
    );
    assert_eq!(sheet.support.len(), 1);
}

#[test]
fn the_short_form_keeps_the_dog_and_the_centres() {
    for job in [layshaft(), countershaft()] {
        let short = plan(&job).unwrap().short();
        let short = short.split_whitespace().collect::<Vec<_>>().join(" ");
        for words in [
            "! Dog, tail and screw fly round",
            "The dog over the end that was faced last",
            "Prove that the tailstock is in line",
            "dog at Z",
        ] {
            assert!(short.contains(words), "no {words:?} in {short}");
        }
    }
}

#[test]
fn nothing_is_parted_off_between_centres() {
    let mut job = layshaft();
    job["preferences"] = json!({ "parting": "3 mm" });
    let error = plan(&job).unwrap_err();
    assert_eq!(error.field(), "preferences.parting", "{error}");
    assert_eq!(error.kind(), ErrorKind::Contradiction);
    assert!(error.remedy().contains("saw"), "{error}");
    assert!(error.remedy().contains("chuck_and_centre"), "{error}");
    // Named so, it is parted, or there is nothing to part, but it is no contradiction.
    job["holding"] = json!("chuck_and_centre");
    assert!(plan(&job).is_ok());
}

#[test]
fn a_steady_is_refused_by_its_own_name() {
    let mut job = layshaft();
    job["holding"] = json!({ "kind": "between_centres", "steadies": [{ "at": "150 mm" }] });
    let error = plan(&job).unwrap_err();
    assert_eq!(error.field(), "holding.steadies", "{error}");
    assert_eq!(error.kind(), ErrorKind::NotOffered);
    assert!(!error.to_string().contains("between centres"), "{error}");
}

#[test]
fn the_carriage_never_comes_to_the_dog() {
    let mut job = layshaft();
    let sheet = plan(&job).unwrap();
    // A dog of 20 mm at the end of 292 mm; turned end for end it is as far from the other face.
    let mut dogs = Vec::new();
    for step in &sheet.steps {
        if step.kind == StepKind::ZeroZ {
            dogs.push(-number_after(&step.text, "dog at Z "));
            let never = -number_after(&step.text, "Never past Z ");
            // A holder of 10 mm to the left of the tip and 5 mm of room: judgement, no source.
            assert!(never + 15.0 <= dogs[dogs.len() - 1], "{}", step.text);
        }
        if let (Some(z), Some(dog)) = (step.z, dogs.last()) {
            assert!(-z.mm() + 15.0 <= *dog, "{}", step.text);
        }
    }
    assert_eq!(dogs, [272.0, 272.0]);
    // A chamfer of the finished end is no place for a dog.
    job["part"]["surfaces"][0]["chamfer"] = json!("1 mm");
    let sheet = plan(&job).unwrap();
    let zeros = of_kind(&sheet, StepKind::ZeroZ);
    assert_eq!(number_after(&zeros[1].text, "dog at Z "), -271.0);
    let turned = &of_kind(&sheet, StepKind::TurnRound)[0].text;
    assert!(turned.contains("1.00 mm of the part behind it"), "{turned}");
}

#[test]
fn a_bar_too_short_for_its_dog_is_refused_with_the_figures() {
    let mut job = countershaft();
    job["stock"]["length"] = json!("9 in");
    let error = plan(&job).unwrap_err();
    assert_eq!(error.field(), "part.length", "{error}");
    assert!(error.expected().contains("under the dog"), "{error}");
    let needed = number_after(error.expected(), "a bar of at least ");
    // 8 in, 10 mm of holder, 2 mm of overrun, 5 mm before the dog, 0.8 in of dog, two faces of 0.04 in; in inch.
    let by_hand = 8.0 + 17.0 / 25.4 + 0.8 + 0.08;
    assert!(
        (needed - by_hand).abs() < 0.006,
        "{needed} for {by_hand}: {error}"
    );
    job["stock"]["length"] = json!(format!("{:.3} in", by_hand + 0.001));
    plan(&job).unwrap();
    job["stock"]["length"] = json!(format!("{:.3} in", by_hand - 0.001));
    assert!(plan(&job).is_err());
    // Both ends: 20 mm wide is the dog, and no cone and no short collar takes it.
    let first = |of: Value| {
        let mut job = layshaft();
        job["part"]["surfaces"] = of;
        plan(&job)
    };
    let limits = json!({ "nominal": "20 mm", "general": "fine" });
    let error =
        first(json!([{ "diameter": "20 mm", "limits": limits, "length": "18 mm" }])).unwrap_err();
    assert_eq!(error.field(), "part.other_end", "{error}");
    assert!(
        error.given().contains("18.0 mm of the diameter of 20 mm"),
        "{error}"
    );
    assert!(error.expected().contains("at least 20.0 mm"), "{error}");
    let cone = json!([{ "diameter": "20 mm", "small_diameter": "16 mm", "limits": limits, "length": "60 mm" }]);
    let error = first(cone).unwrap_err();
    assert!(error.given().contains("no cylinder"), "{error}");
    // Behind a short neck the next cylinder takes it, where its tail still reaches the driver plate.
    let wide = json!({ "nominal": "26 mm", "general": "fine" });
    let behind = |neck: &str| {
        first(json!([
            { "diameter": "20 mm", "limits": limits, "length": neck },
            { "diameter": "26 mm", "limits": wide, "length": "80 mm" },
        ]))
    };
    let sheet = behind("15 mm").unwrap();
    let turned = &of_kind(&sheet, StepKind::TurnRound)[0].text;
    assert!(turned.contains("over its finished 26.00 mm"), "{turned}");
    assert!(
        turned.contains("15.00 mm of the part behind it"),
        "{turned}"
    );
    // The end under the first dog has to be long enough too.
    let mut job = layshaft();
    job["part"]["overall_length"] = json!("175 mm");
    job["part"]["other_end"][0]["length"] = json!("30 mm");
    job["stock"]["length"] = json!("178 mm");
    let error = plan(&job).unwrap_err();
    assert_eq!(error.field(), "part.overall_length", "{error}");
    assert!(error.given().contains("35.0 mm"), "{error}");
    assert!(error.expected().contains("177.0 mm"), "{error}");
}

#[test]
fn the_lathe_has_to_take_the_bar_and_the_dog() {
    let refused = |field: &str, value: &str| {
        let mut job = layshaft();
        job["lathe"][field] = json!(value);
        plan(&job).unwrap_err()
    };
    let error = refused("between_centres", "291 mm");
    assert_eq!(error.field(), "holding", "{error}");
    assert!(
        error.given().contains("292 mm between the centres"),
        "{error}"
    );
    // Judgement, no source: a dog stands out by 25 mm on either side of the bar of 32 mm.
    let error = refused("swing", "81 mm");
    assert_eq!(error.field(), "holding", "{error}");
    assert!(error.given().contains("swings 82 mm"), "{error}");
    let mut job = layshaft();
    (job["lathe"]["between_centres"], job["lathe"]["swing"]) = (json!("292 mm"), json!("82 mm"));
    plan(&job).unwrap();
}

#[test]
fn the_live_centre_caps_the_speed() {
    let turned = |cap: Value| {
        let mut job = countershaft();
        job["holding"] = cap;
        plan(&job).unwrap()
    };
    let fastest = |sheet: &Sheet| {
        let n = sheet.cuts().filter_map(|s| s.spindle_speed);
        n.map(|n| n.rpm()).fold(0.0, f64::max)
    };
    let free = turned(json!("between_centres"));
    assert!(says(&free, "centre_speed_unknown"));
    assert!(fastest(&free) > 140.0, "{free}");
    let capped = turned(json!({ "kind": "between_centres", "centre_max_speed": "150 rpm" }));
    assert!(!says(&capped, "centre_speed_unknown"));
    assert_eq!(fastest(&capped), 140.0);
}

/// How far a bar on two knife edges gives under a load of 1 N at a place, in mm: the integral of m m / E I, where
/// m is the moment of that load; two diameters, `d1` from the head to `step`, `d2` from there to the tail.
fn simply_supported(e: f64, [d1, d2]: [f64; 2], step: f64, length: f64, a: f64) -> f64 {
    let ei = |d: f64| e * std::f64::consts::PI * d.powi(4) / 64.0;
    let b = length - a;
    // The moment rises as b x / L to the load, and falls as a (L - x) / L behind it.
    let rising = |x: f64| (b / length).powi(2) * x.powi(3) / 3.0;
    let falling = |x: f64| -(a / length).powi(2) * (length - x).powi(3) / 3.0;
    let over = |from: f64, to: f64| {
        rising(to.min(a)) - rising(from.min(a)) + falling(to.max(a)) - falling(from.max(a))
    };
    over(0.0, step) / ei(d1) + over(step, length) / ei(d2)
}

#[test]
fn the_bar_bends_as_a_beam_on_two_supports() {
    // Formula from memory of Roark, table of beams: F a^2 b^2 / 3 E I L under a load on a beam that is simply supported.
    let (e, d, length, a) = (210_000.0, 25.0_f64, 300.0_f64, 110.0_f64);
    let ei = e * std::f64::consts::PI * d.powi(4) / 64.0;
    let roark = (a * (length - a)).powi(2) / (3.0 * ei * length);
    let found = simply_supported(e, [d, d], 170.0, length, a);
    assert!((found / roark - 1.0).abs() < 1e-12, "{found} {roark}");

    for (job, [length, reach, stock, middle]) in [
        (
            countershaft(),
            [11.92, 8.0, 1.25, 0.998].map(|inch| 25.4 * inch),
        ),
        (
            {
                let mut job = layshaft();
                job["part"] = json!({ "diameter": "28 mm", "limits": ["27.9 mm", "28 mm"], "length": "150 mm" });
                job
            },
            [294.0, 150.0, 32.0, 27.95],
        ),
    ] {
        let sheet = plan(&job).unwrap();
        let [support] = sheet.support.as_slice() else {
            panic!("{sheet}");
        };
        let option = support.option(SupportWay::BetweenCentres).unwrap();
        assert_eq!(support.options.len(), 1, "{support:?}");
        // The last cuts go half of the corner radius deep: common practice, no source.
        let corner: turnwright::CornerRadius = job["tool"]["corner_radius"]
            .as_str()
            .unwrap()
            .parse()
            .unwrap();
        let feed = sheet.cuts().last().unwrap().feed.unwrap();
        let cut = json!({ "cutting": {
            "material": job["material"], "tool": job["tool"], "diameter": "28 mm", "cutting_speed": "30 m/min",
            "depth_of_cut": format!("{} mm", 0.5 * corner.mm()), "feed": format!("{} mm/rev", feed.mm_per_rev()) } });
        let answer: Value =
            serde_json::from_str(&document::answer(&cut.to_string()).unwrap()).unwrap();
        let force: PassiveForce = answer["cutting"]["passive_force"]
            .as_str()
            .unwrap()
            .parse()
            .unwrap();
        let modulus = Material::named("11SMn30")
            .unwrap()
            .youngs_modulus()
            .unwrap()
            .value;
        let (a, e) = (option.at.mm(), 1000.0 * modulus.gpa());
        assert!(a >= length - reach - 1e-6 && a <= length, "{a}");
        // The centres give as well, each by its share of the load: 40 kN/mm at the head and 15 kN/mm at the tail,
        // common practice, no source.
        let (head, tail) = ((length - a) / length, a / length);
        let give = simply_supported(e, [stock, middle], length - reach, length, a)
            + head * head / 40_000.0
            + tail * tail / 15_000.0;
        let by_hand = 2.0 * force.newton() * give;
        let told = option.diameter_error.mm();
        assert!((told / by_hand - 1.0).abs() < 1e-6, "{told} for {by_hand}");
    }
}

#[test]
fn a_bar_that_springs_too_far_is_told_of() {
    let mut job = layshaft();
    job["stock"] = json!({ "diameter": "14 mm", "length": "296 mm" });
    job["part"] =
        json!({ "diameter": "12 mm", "limits": ["11.96 mm", "12 mm"], "length": "230 mm" });
    let sheet = plan(&job).unwrap();
    assert!(says(&sheet, "support_not_enough"), "{sheet}");
    assert_eq!(sheet.support[0].advice, SupportAdvice::NoneEnough);
    let thumb = sheet
        .cautions
        .iter()
        .find(|c| c.code() == "rule_of_thumb_asks_for_a_steady");
    assert!(
        thumb
            .unwrap()
            .text()
            .contains("as long between its centres"),
        "{sheet}"
    );
    job["stock"]["diameter"] = json!("32 mm");
    job["part"] =
        json!({ "diameter": "30 mm", "limits": ["29.96 mm", "30 mm"], "length": "230 mm" });
    assert!(!says(&plan(&job).unwrap(), "support_not_enough"));
}

#[test]
fn a_straight_taper_moves_the_tailstock_by_all_of_it() {
    for (mut job, units) in [(layshaft(), Units::Metric), (countershaft(), Units::Inch)] {
        job["preferences"] = json!({ "instrument": "micrometer" });
        let sheet = plan(&job).unwrap();
        let stop = sheet
            .steps
            .iter()
            .position(|s| s.kind == StepKind::Measure && s.text.contains("at three places"))
            .unwrap();
        let expected = sheet.steps[stop].diameter.mm();
        let surface = sheet.steps[stop].surface.unwrap();
        let surfaces = sheet.job.part().surfaces();
        let ends: Vec<f64> = (0..=surfaces.len())
            .map(|at| surfaces[..at].iter().map(|s| s.length().mm()).sum())
            .collect();
        let length: f64 = match units {
            Units::Metric => 292.0,
            Units::Inch => 11.92 * 25.4,
        };
        // Near the shoulder and near the outer end, from the headstock.
        let near = length - ends[surface.index() + 1] + 5.0;
        let far = length - ends[surface.index()] - 5.0;
        let taper = 0.06;
        let sized = |at: f64, size: f64| {
            SizeAt::new(
                WorkLength::from_mm(at).unwrap(),
                Diameter::from_mm(size).unwrap(),
            )
        };
        let found = sheet
            .after(
                stop,
                &[
                    sized(near, expected),
                    sized(0.5 * (near + far), expected + 0.5 * taper),
                    sized(far, expected + taper),
                ],
                None,
            )
            .unwrap();
        assert_eq!(found.causes[0].cause, Cause::TailstockOff, "{found:?}");
        // Between centres the tip leaves a straight line: 2 s over the whole length, derived by hand; a hundredth of a
        // millimetre is what a hand sets.
        let by_hand = 0.5 * taper * length / (far - near);
        let moved = found.tailstock_correction.unwrap().mm();
        assert!(
            (moved - by_hand).abs() < 0.1 * by_hand,
            "{moved} for {by_hand}"
        );
        assert!(
            found.causes[0].text.contains("towards the tool"),
            "{found:?}"
        );
        // No place lies beyond the other face.
        let beyond = [sized(length + 1.0, expected), sized(near, expected)];
        let error = sheet.after(stop, &beyond, None).unwrap_err();
        assert_eq!(error.field(), "measured[0].from_chuck", "{error}");
        assert!(!error.to_string().contains("jaws"), "{error}");
        // The same on the sheet by hand.
        let rule = &of_kind(&sheet, StepKind::Reclamp)[2].text;
        let told = between(rule, "by D x ", " / (2 A)");
        let told: WorkLength = told.parse().unwrap();
        assert!((told.mm() - length).abs() < 0.02, "{rule}");
        // As expected, the sheet goes on as a sheet between centres.
        let same = sheet.after(stop, &[SizeAt::anywhere(sheet.steps[stop].diameter)], None);
        let plan = same.unwrap().plan.unwrap();
        let dog = |step: &Step| step.text.contains("The dog over the end");
        assert!(plan.steps.iter().any(dog), "{plan}");
    }
}

#[test]
fn a_batch_is_drilled_before_the_chuck_comes_off() {
    let mut job = layshaft();
    job["preferences"] = json!({ "batch": 20 });
    let sheet = plan(&job).unwrap();
    let words = sheet.batch.unwrap().text.join(" ");
    assert!(!words.contains("jaws"), "{words}");
    assert!(words.contains("centres"), "{words}");
}

#[test]
fn centres_and_dog_are_drawn_in_place_of_jaws() {
    for job in [layshaft(), countershaft()] {
        let sheet = plan(&job).unwrap();
        for picture in sheet.pictures().unwrap() {
            let count = |class: &str| picture.matches(&format!("class=\"{class}\"")).count();
            assert_eq!(count("centre"), 2, "{picture}");
            assert!(count("dog") >= 2 && count("plate") == 1, "{picture}");
            assert_eq!(count("jaw") + count("chuck"), 0, "{picture}");
            assert!(picture.contains("between two centres") && picture.contains("dog Z"));
        }
    }
}
