//! The schema of every question says what its reader reads: what is accepted is valid, every field of the
//! one is known to the other, and what the schema refuses is refused.

use std::collections::{BTreeSet, HashMap};
use std::sync::OnceLock;

use jsonschema::Validator;
use serde_json::{Map, Value, json};
use turnwright::ErrorKind;
use turnwright::document::{QUESTIONS, answer, schema};

/// A question's schema, and what checks documents by it.
fn of(question: &str) -> &'static (Value, Validator) {
    static ALL: OnceLock<HashMap<&str, (Value, Validator)>> = OnceLock::new();
    let all = ALL.get_or_init(|| {
        let of_one = |question: &&'static str| {
            let schema: Value = serde_json::from_str(&schema(question).unwrap()).unwrap();
            let validator = jsonschema::draft202012::new(&schema).unwrap();
            (*question, (schema, validator))
        };
        QUESTIONS.iter().map(of_one).collect()
    });
    &all[question]
}

/// A document that the library answered is valid by the schema.
pub fn accepts(question: &str, document: &Value) {
    if let Err(trouble) = of(question).1.validate(document) {
        panic!(
            "{question}: {trouble} at {}\n{document}",
            trouble.instance_path()
        );
    }
}

/// Invented questions, which together have every part.
pub fn questions() -> Vec<(&'static str, Value)> {
    let dial = json!({ "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100, "backlash": "0.1 mm", "ring": "settable" });
    let carriage = json!({ "reads": "travel", "division": "0.1 mm", "divisions_per_turn": 200 });
    let tool = json!({ "material": "high_speed_steel", "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" });
    let lathe = json!({
        "spindle_steps": ["125 rpm", "250 rpm", "500 rpm", "1000 rpm"],
        "step_names": ["A1", "A2", "B1", "B2"], "feeds": ["0.1 mm/rev", "0.2 mm/rev"], "feed_names": ["1", "2"],
        "chuck_max_speed": "2000 rpm", "power": "2 kW", "cross_slide": dial, "carriage": carriage,
    });
    let ranges = json!({ "spindle_ranges": {
        "low": { "range": ["50 rpm", "400 rpm"], "constant_torque_below": "100 rpm" }, "high": ["300 rpm", "2400 rpm"] },
        "power": "3 kW", "efficiency": 0.8 });
    let material = json!({ "like": "C45", "name": "a bar", "specific_force": "1800 MPa", "exponent": 0.2,
        "cutting_speeds": { "high_speed_steel": ["20 m/min", "30 m/min"] }, "density": "7850 kg/m3" });
    let springy = json!({ "kind": "chuck_and_centre", "stiffness": "50 kN/mm", "rotational_stiffness": "200 kN m/rad",
        "centre_stiffness": "20 kN/mm", "steadies": [{ "at": "100 mm" }] });
    let sections = json!([{ "diameter": "40 mm", "length": "100 mm", "bore": "10 mm" }, { "diameter": "30 mm", "length": "100 mm", "end_diameter": "25 mm" }]);
    let surface = json!({ "diameter": "30 mm", "class": "h8", "length": "40 mm", "length_limits": ["39.7 mm", "40.3 mm"],
        "finish": { "ra": "3.2 um" }, "chamfer": "1 mm", "undercut": { "width": "2 mm", "depth": "0.3 mm" } });
    let plan = json!({
        "lathe": lathe, "tool": tool, "material": "11SMn30",
        "stock": { "diameter": "36 mm", "length": "140 mm", "skin": "0.2 mm", "run_out": "0.1 mm" },
        "part": { "surfaces": [surface], "overall_length": "100 mm", "overall_limits": ["99.5 mm", "100.5 mm"] },
        "holding": { "kind": "chuck", "stiffness": "60 kN/mm" }, "units": "metric", "with": ["picture"],
        "preferences": { "instrument": { "kind": "micrometer", "expanded": "0.002 mm", "k": 2 }, "way": "readable" },
    });
    let sheet = {
        let text = answer(&json!({ "plan": plan }).to_string()).unwrap();
        let answered: Value = serde_json::from_str(&text).unwrap();
        answered["plan"].clone()
    };
    let stop = sheet["steps"]
        .as_array()
        .unwrap()
        .iter()
        .position(|s| s["kind"] == "measure");
    let expected = sheet["steps"][stop.unwrap()]["diameter"].clone();
    let measured = json!([{ "from_chuck": "20 mm", "diameter": expected }]);
    let one = json!({ "diameter": "30 mm", "limits": { "nominal": "30 mm", "class": "h8" }, "length": "40 mm" });
    let mut plain = plan.clone();
    plain["part"] = one;
    plain["stock"] = json!({ "diameter": "36 mm", "length": "140 mm" });
    let mut two_tools = plain.clone();
    let finish = two_tools.as_object_mut().unwrap().remove("tool").unwrap();
    two_tools["tools"] = json!({ "rough": tool, "finish": finish });
    let mut both_ends = plan.clone();
    both_ends["part"]["other_end"] =
        json!([{ "diameter": "25 mm", "class": "h9", "length": "20 mm" }]);
    both_ends["preferences"] =
        json!({ "price_scrap": 25, "price_rework": 3, "price_stop": 0.5, "batch": 4 });
    let mut all = vec![
        (
            "spindle_speed",
            json!({ "diameter": "40 mm", "lathe": ranges, "material": material, "tool": tool, "holding": springy }),
        ),
        (
            "cutting",
            json!({ "material": "C45", "tool": tool, "diameter": "40 mm", "depth_of_cut": "1 mm", "feed": "0.2 mm/rev", "cutting_speed": "25 m/min", "lathe": lathe }),
        ),
        (
            "specific_force",
            json!({ "tool": tool, "diameter": "40 mm", "depth_of_cut": "1 mm", "feed": "0.2 mm/rev", "spindle_speed": "250 rpm", "motor_power": "1 kW", "idle_power": "0.2 kW", "efficiency": 0.8, "exponent": 0.2 }),
        ),
        (
            "finish",
            json!({ "feed": "0.2 mm/rev", "tool": { "corner_radius": "0.8 mm", "cutting_edge_angle": "95 deg", "minor_cutting_edge_angle": "5 deg" }, "profile": { "seed": 1 } }),
        ),
        ("feed_for_finish", json!({ "ra": "3.2 um", "tool": tool })),
        (
            "bar",
            json!({ "material": "C45", "sections": sections, "holding": springy, "force": "100 N", "loads": [{ "at": "50 mm", "force": "10 N" }], "look_at": ["100 mm"], "measured": [{ "at": "50 mm", "diameter_error": "0.01 mm" }, { "at": "150 mm", "diameter_error": "0.012 mm" }] }),
        ),
        (
            "support",
            json!({ "material": "C45", "tool": tool, "cut": { "depth_of_cut": "0.5 mm", "feed": "0.1 mm/rev" }, "sections": sections, "tolerance": "0.03 mm", "lathe": lathe }),
        ),
        (
            "centre_hole",
            json!({ "diameter": "40 mm", "mass": "3 kg", "cutting_speed": "30 m/min", "lathe": lathe }),
        ),
        ("limits", json!({ "nominal": "40 mm", "class": "h6" })),
        (
            "fit",
            json!({ "nominal": "40 mm", "hole": { "class": "H7" }, "shaft": "g6" }),
        ),
        (
            "within_reach",
            json!({ "limits": ["29.967 mm", "30 mm"], "dial": dial, "instrument": { "kind": "micrometer", "largest_error": "0.004 mm" },
            "material": "C45", "tool": tool, "cut": { "passive_force": "50 N" }, "sections": [{ "diameter": "30 mm", "length": "100 mm" }], "holding": "chuck" }),
        ),
        (
            "measuring_stops",
            json!({ "cuts": [{ "after": "32 mm" }, { "after": "30.4 mm", "spring": "0.01 mm" }, { "after": "29.98 mm" }], "limits": "30 h8 mm", "start": "34 mm",
            "dial": dial, "instrument": "micrometer", "price_scrap": 25, "price_rework": 3, "price_stop": 0.5 }),
        ),
        (
            "dial",
            json!({ "dial": dial, "zero_at": "34 mm", "target": "30 mm", "limits": ["29.967 mm", "30 mm"] }),
        ),
        (
            "facing",
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "25 m/min", "lathe": ranges }),
        ),
        (
            "taper",
            json!({ "large": "30 mm", "small": "20 mm", "ratio": 5, "compound": dial }),
        ),
        (
            "growth",
            json!({ "material": "C45", "heated_by": { "cutting_power": "1 kW", "time": "1 min", "mass": "1 kg" }, "axial_stiffness": "20 kN/mm", "sections": [{ "diameter": "30 mm", "length": "200 mm" }] }),
        ),
        (
            "growth",
            json!({ "material": "C45", "rise": "10 K", "diameter": "30 mm", "length": "200 mm", "bore": "10 mm", "axial_stiffness": "20 kN/mm" }),
        ),
        (
            "tool_life",
            json!({ "lives": [{ "cutting_speed": "30 m/min", "life": "60 min" }, { "cutting_speed": "40 m/min", "life": "20 min" }], "prices": { "machine_per_hour": 50, "edge_price": 5, "change_time": "2 min" } }),
        ),
        (
            "budget",
            json!({ "components": [{ "name": "instrument", "expanded": "0.004 mm", "k": 2 }, { "name": "heat", "standard": "0.003 mm", "distribution": "normal", "sensitivity": 1 }],
            "correlations": [{ "first": "instrument", "second": "heat", "coefficient": 0.1 }], "limits": ["29.967 mm", "30 mm"], "simulate": { "draws": 1000, "seed": 7 } }),
        ),
        (
            "verdict",
            json!({ "measured": "29.98 mm", "limits": ["29.967 mm", "30 mm"], "expanded_uncertainty": "0.004 mm" }),
        ),
        (
            "aim",
            json!({ "limits": ["29.967 mm", "30 mm"], "standard_uncertainty": "0.004 mm", "price_scrap": 25, "price_rework": 3 }),
        ),
        ("plan", plan),
        ("plan", plain),
        (
            "after_measurement",
            json!({ "plan": sheet, "step": stop, "measured": measured }),
        ),
        ("materials", json!({ "like": "C45" })),
        ("quantities", json!({ "like": "feed" })),
    ];
    all.push(("plan", both_ends));
    all.push(("plan", two_tools));
    all.extend(of_fields_that_go_together(&dial, &lathe, &tool));
    all
}

/// Invented questions with fields that stand together only, by each way that there is.
fn of_fields_that_go_together(
    dial: &Value,
    lathe: &Value,
    tool: &Value,
) -> Vec<(&'static str, Value)> {
    let deviations =
        json!({ "nominal": "30 mm", "upper_deviation": "0 mm", "lower_deviation": "-0.033 mm" });
    let bar = json!([{ "diameter": "30 mm", "length": "100 mm" }]);
    vec![
        ("limits", deviations.clone()),
        (
            "dial",
            json!({ "dial": dial, "zero_at": "34 mm", "target": "30 mm", "limits": deviations }),
        ),
        (
            "spindle_speed",
            json!({ "diameter": "40 mm", "lathe": lathe, "cutting_speed": "25 m/min", "depth_of_cut": "1 mm", "feed": "0.2 mm/rev", "tool": tool, "material": "C45", "overhang": "80 mm" }),
        ),
        (
            "spindle_speed",
            json!({ "diameter": "40 mm", "lathe": lathe, "cutting_speed": "25 m/min", "overhang": "80 mm", "youngs_modulus": "210 GPa", "density": "7850 kg/m3" }),
        ),
        (
            "cutting",
            json!({ "material": "C45", "diameter": "40 mm", "width": "3 mm", "feed": "0.06 mm/rev", "cutting_speed": "25 m/min", "operation": "parting" }),
        ),
        (
            "finish",
            json!({ "feed": "0.2 mm/rev", "tool": tool, "material": "C45", "cutting_speed": "25 m/min" }),
        ),
        (
            "feed_for_finish",
            json!({ "rz": "25 um", "tool": tool, "spindle_speed": "200 rpm", "travel_per_turn": "5 mm" }),
        ),
        (
            "bar",
            json!({ "youngs_modulus": "210 GPa", "density": "7850 kg/m3", "sections": bar, "holding": "chuck", "force": "100 N", "depth_of_cut": "0.5 mm", "depth_before": "1 mm", "least_depth": "0.02 mm", "eccentricity": "0.05 mm", "spindle_speed": "500 rpm", "end_mass": "1 kg" }),
        ),
        (
            "bar",
            json!({ "material": "C45", "sections": bar, "holding": "chuck", "force": "100 N", "eccentricity": "0.05 mm", "spindle_speed": "500 rpm", "end_mass": "1 kg" }),
        ),
        (
            "within_reach",
            json!({ "limits": ["29.967 mm", "30 mm"], "dial": dial, "instrument": "micrometer",
            "youngs_modulus": "210 GPa", "cut": { "passive_force": "50 N" }, "sections": bar, "spring_of_measured_cut": "0.01 mm" }),
        ),
        (
            "within_reach",
            json!({ "limits": ["29.967 mm", "30 mm"], "dial": dial, "instrument": "micrometer",
            "spring": "0.004 mm", "spring_along": "0.002 mm", "spring_of_measured_cut": "0.01 mm", "price_scrap": 25, "price_rework": 3 }),
        ),
        (
            "facing",
            json!({ "diameter": "80 mm", "feed": "0.1 mm/rev", "cutting_speed": "25 m/min", "max_spindle_speed": "2000 rpm" }),
        ),
        (
            "taper",
            json!({ "large": "30 mm", "small": "20 mm", "ratio": 5, "tool_height": "0.1 mm" }),
        ),
        (
            "taper",
            json!({ "large": "30 mm", "length": "50 mm", "ratio": 5, "tool_height": "0.1 mm" }),
        ),
        (
            "taper",
            json!({ "small": "20 mm", "length": "50 mm", "ratio": 5, "tool_height": "0.1 mm" }),
        ),
        (
            "growth",
            json!({ "expansion": "11.5 um/(m K)", "rise": "10 K", "axial_stiffness": "20 kN/mm", "youngs_modulus": "210 GPa", "sections": bar }),
        ),
        (
            "tool_life",
            json!({ "constant": "70 m/min", "exponent": 0.125, "life": "60 min" }),
        ),
        (
            "tool_life",
            json!({ "lives": [{ "cutting_speed": "30 m/min", "life": "60 min" }], "exponent": 0.125, "life": "30 min" }),
        ),
        (
            "tool_life",
            json!({ "lives": [{ "cutting_speed": "30 m/min", "life": "60 min" }], "tool_material": "high_speed_steel", "life": "30 min" }),
        ),
        (
            "budget",
            json!({ "components": [{ "name": "instrument", "standard": "0.004 mm" }], "limits": ["29.967 mm", "30 mm"],
            "aim": "29.985 mm", "price_scrap": 25, "price_rework": 3 }),
        ),
    ]
}

#[test]
fn every_question_has_a_schema_that_accepts_what_is_answered() {
    let all = questions();
    let asked: BTreeSet<&str> = all.iter().map(|(question, _)| *question).collect();
    assert_eq!(asked.len(), QUESTIONS.len());
    for (question, fields) in all {
        let document = json!({ question: fields });
        answer(&document.to_string()).unwrap_or_else(|error| panic!("{question}: {error}"));
        accepts(question, &document);
    }
    assert_eq!(schema("dail").unwrap_err().kind(), ErrorKind::UnknownName);
}

/// The schemas that hold for an object: itself, what it refers to, and each of its choices.
fn objects<'a>(root: &'a Value, schema: &'a Value) -> Vec<&'a Value> {
    if let Some(to) = schema["$ref"].as_str() {
        return objects(root, root.pointer(&to[1..]).unwrap());
    }
    if let Some(choices) = schema["anyOf"].as_array() {
        return choices
            .iter()
            .flat_map(|choice| objects(root, choice))
            .collect();
    }
    let fields = schema["properties"].is_object();
    fields.then_some(schema).into_iter().collect()
}

/// Calls `visit` for every object of a document whose fields the schema knows, with its place and those fields.
fn walk(
    root: &Value,
    schema: &Value,
    at: &Value,
    path: &str,
    visit: &mut impl FnMut(&str, &Map<String, Value>),
) {
    walk_schemas(root, schema, at, path, &mut |path, schema| {
        visit(path, schema["properties"].as_object().unwrap());
    });
}

/// The same with the schema of each object.
fn walk_schemas(
    root: &Value,
    schema: &Value,
    at: &Value,
    path: &str,
    visit: &mut impl FnMut(&str, &Value),
) {
    match at {
        Value::Object(fields) => {
            for known in objects(root, schema) {
                visit(path, known);
                for (name, value) in fields {
                    if let Some(inner) = known["properties"].get(name) {
                        walk_schemas(root, inner, value, &format!("{path}/{name}"), visit);
                    }
                }
            }
            let of_any_name = &schema["additionalProperties"];
            if of_any_name.is_object() {
                for (name, value) in fields {
                    walk_schemas(root, of_any_name, value, &format!("{path}/{name}"), visit);
                }
            }
        }
        Value::Array(items) => {
            let choices: Vec<&Value> = match schema["anyOf"].as_array() {
                Some(choices) => choices.iter().collect(),
                None => vec![schema],
            };
            for choice in choices {
                let choice = match choice["$ref"].as_str() {
                    Some(to) => root.pointer(&to[1..]).unwrap(),
                    None => choice,
                };
                for (index, item) in items.iter().enumerate().take(2) {
                    if choice["items"].is_object() {
                        walk_schemas(
                            root,
                            &choice["items"],
                            item,
                            &format!("{path}/{index}"),
                            visit,
                        );
                    }
                }
            }
        }
        _ => {}
    }
}

/// The document with another value at a place.
fn with(document: &Value, path: &str, name: &str, value: Value) -> Value {
    let mut document = document.clone();
    let object = document.pointer_mut(path).unwrap().as_object_mut().unwrap();
    object.insert(name.to_owned(), value);
    document
}

#[test]
fn every_field_of_a_schema_is_known_to_its_reader_and_every_field_of_a_reader_to_its_schema() {
    // By the fields of a part: those that some reader knew. What goes with one way of giving a part, such
    // as names of steps, is unknown beside another way.
    let mut proved: HashMap<BTreeSet<String>, BTreeSet<String>> = HashMap::new();
    for (question, fields) in questions() {
        let document = json!({ question: fields });
        let root = &of(question).0;
        let body = &root["properties"][question];
        let mut levels: Vec<(String, BTreeSet<String>)> = Vec::new();
        walk(
            root,
            body,
            &fields,
            &format!("/{question}"),
            &mut |path, known| {
                levels.push((path.to_owned(), known.keys().cloned().collect()));
            },
        );
        assert!(!levels.is_empty(), "{question}");
        for (path, known) in levels {
            let proved = proved.entry(known.clone()).or_default();
            for name in &known {
                // Nothing takes an empty list in a list: who knows the field refuses it as another thing.
                let odd = with(&document, &path, name, json!([[]]));
                let Err(error) = answer(&odd.to_string()) else {
                    panic!("{question}{path}: {name} takes anything");
                };
                if error.kind() != ErrorKind::UnknownField {
                    proved.insert(name.clone());
                }
                assert!(
                    !of(question).1.is_valid(&odd),
                    "{question}{path}/{name}: {odd}"
                );
            }
            // Of a sheet only some fields are read, and strangers are passed over.
            let stranger = with(&document, &path, "zzzz", json!(1));
            let Err(error) = answer(&stranger.to_string()) else {
                assert!(
                    question == "after_measurement" && path.ends_with("/plan"),
                    "{path}"
                );
                continue;
            };
            assert!(!of(question).1.is_valid(&stranger), "{question}{path}");
            assert_eq!(
                error.kind(),
                ErrorKind::UnknownField,
                "{question}{path}: {error}"
            );
            let told = error.expected().strip_prefix("one of the fields ").unwrap();
            let unknown: Vec<&str> = told
                .split(", ")
                .flat_map(|names| names.split(" or "))
                .filter(|name| !known.contains(*name))
                .filter(|name| {
                    // What a later version will take is known by name, and refused.
                    let asked = with(&document, &path, name, json!("1 mm"));
                    let refused = answer(&asked.to_string()).map_err(|e| e.kind());
                    refused != Err(ErrorKind::NotOffered)
                })
                .collect();
            assert!(
                unknown.is_empty(),
                "{question}{path}: {unknown:?} are missing in the schema"
            );
        }
    }
    assert!(proved.len() > 40, "{}", proved.len());
    for (known, proved) in proved {
        let only: Vec<_> = known.difference(&proved).collect();
        assert!(
            only.is_empty(),
            "{only:?} of {known:?} are in the schema only"
        );
    }
}

#[test]
fn what_a_schema_needs_the_reader_needs() {
    let mut struck = 0;
    for (question, fields) in questions() {
        let document = json!({ question: fields });
        let mut places = Vec::new();
        let root = &of(question).0;
        walk(
            root,
            &root["properties"][question],
            &fields,
            &format!("/{question}"),
            &mut |path, known| {
                places.extend(known.keys().map(|name| (path.to_owned(), name.clone())));
            },
        );
        for (path, name) in places {
            let mut less = document.clone();
            let object = less.pointer_mut(&path).unwrap().as_object_mut().unwrap();
            if object.remove(&name).is_none() || of(question).1.is_valid(&less) {
                continue;
            }
            struck += 1;
            assert!(
                answer(&less.to_string()).is_err(),
                "{question}{path}: the schema needs {name}, the reader does not"
            );
        }
    }
    assert!(struck > 80, "{struck}");
}

/// The fields that a schema wants beside a field: all of these, of each of them one.
fn beside(schema: &Value, field: &str) -> Vec<Vec<String>> {
    let names = |list: &Value| -> Vec<String> {
        let list = list.as_array().into_iter().flatten();
        list.map(|name| name.as_str().unwrap().to_owned()).collect()
    };
    let alone = names(&schema["dependentRequired"][field]);
    let mut all: Vec<Vec<String>> = alone.into_iter().map(|name| vec![name]).collect();
    let choices = schema["dependentSchemas"][field]["allOf"].as_array();
    all.extend(choices.into_iter().flatten().map(|choice| {
        let ways = choice["anyOf"].as_array().unwrap().iter();
        ways.flat_map(|way| names(&way["required"])).collect()
    }));
    all
}

/// Every field beside which the schema wants others, by the title of its object.
fn wanting_others(root: &Value, body: &Value) -> Vec<(String, String, Vec<Vec<String>>)> {
    let mut found = Vec::new();
    let parts = root["$defs"].as_object().into_iter().flatten();
    for schema in parts.map(|(_, part)| part).chain([body]) {
        let Some(title) = schema["title"].as_str() else {
            continue;
        };
        for field in schema["properties"].as_object().into_iter().flatten() {
            let others = beside(schema, field.0);
            if !others.is_empty() {
                found.push((title.to_owned(), field.0.clone(), others));
            }
        }
    }
    found
}

/// The document without some fields of the object at a place.
fn without(document: &Value, path: &str, names: &[&String]) -> Value {
    let mut document = document.clone();
    let object = document.pointer_mut(path).unwrap().as_object_mut().unwrap();
    for name in names {
        object.remove(*name);
    }
    document
}

/// What a reader refuses by what stands in another field, which no rule about their names can say.
fn is_of_values(question: &str, error: &turnwright::Error) -> bool {
    match question {
        // A length and a diameter are two questions, but on a bar whose end is held.
        "growth" => error.given() == "both diameter and length without axial_stiffness",
        // Two lives give the exponent themselves, one does not.
        "tool_life" => error.field() == "lives",
        _ => false,
    }
}

#[test]
fn fields_that_go_together_are_refused_apart_by_schema_and_reader_alike() {
    let mut proved = BTreeSet::new();
    for (question, fields) in questions() {
        let document = json!({ question: fields });
        let (root, validator) = of(question);
        let mut rules = Vec::new();
        walk_schemas(
            root,
            &root["properties"][question],
            &fields,
            &format!("/{question}"),
            &mut |path, schema| {
                let object = document.pointer(path).unwrap().as_object().unwrap();
                for field in object.keys() {
                    let others = beside(schema, field);
                    if !others.is_empty() {
                        let title = schema["title"].as_str().unwrap().to_owned();
                        rules.push((path.to_owned(), title, field.clone(), others));
                    }
                }
            },
        );
        for (path, title, field, others) in rules {
            let object = document.pointer(&path).unwrap().as_object().unwrap();
            let mut group: Vec<&String> = others.iter().flatten().chain([&field]).collect();
            group.retain(|name| object.contains_key(*name));
            group.sort_unstable();
            group.dedup();
            for some in 1..1_u32 << group.len() {
                let gone = |at: usize| some >> at & 1 == 1;
                let struck: Vec<&String> = (0..group.len())
                    .filter(|at| gone(*at))
                    .map(|at| group[at])
                    .collect();
                let less = without(&document, &path, &struck);
                let valid = validator.is_valid(&less);
                match answer(&less.to_string()) {
                    Ok(_) => assert!(valid, "{title}: answered without {struck:?}: {less}"),
                    Err(error) => assert!(
                        !valid || is_of_values(question, &error),
                        "{title} without {struck:?} is valid, but {error}: {less}"
                    ),
                }
                let wanted = |one: &&Vec<String>| {
                    one.iter()
                        .all(|name| struck.contains(&name) || !object.contains_key(name))
                };
                if !struck.contains(&&field)
                    && let Some(one) = others.iter().find(wanted)
                {
                    assert!(!valid, "{title}: {field} without {one:?}");
                    for name in one.iter().filter(|name| struck.contains(name)) {
                        proved.insert((title.clone(), field.clone(), name.clone()));
                    }
                }
            }
        }
    }
    let mut unproved = BTreeSet::new();
    for question in QUESTIONS {
        let root = &of(question).0;
        for (title, field, others) in wanting_others(root, &root["properties"][question]) {
            for name in others.into_iter().flatten() {
                let rule = (title.clone(), field.clone(), name);
                if !proved.contains(&rule) {
                    unproved.insert(rule);
                }
            }
        }
    }
    assert!(unproved.is_empty(), "{unproved:#?}");
    assert!(proved.len() > 60, "{}", proved.len());
}

#[test]
fn words_say_which_fields_go_together() {
    let words = |question: &str, field: &str| {
        let body = &of(question).0["properties"][question]["properties"];
        body[field]["description"].as_str().unwrap().to_owned()
    };
    assert_eq!(
        words("limits", "upper_deviation"),
        "largest size less nominal size; lower_deviation goes with it"
    );
    assert_eq!(
        words("spindle_speed", "density"),
        "of the bar, for whip; overhang goes with it; left out: that of the material"
    );
    assert!(
        words("spindle_speed", "feed").ends_with("; depth_of_cut, tool and material go with it")
    );
    assert!(words("bar", "end_mass").ends_with("; density or material goes with it"));
    // Where the words say so already, nothing is put to them.
    assert_eq!(
        words("specific_force", "efficiency"),
        "from motor to spindle, beside motor_power"
    );
}

#[test]
fn every_question_and_every_part_has_words_for_a_person() {
    let page = include_str!("../../src/document/mod.rs");
    let mut told = BTreeSet::new();
    for question in QUESTIONS {
        let root = &of(question).0;
        // One sentence of a question, in the table of the documents and in its schema.
        let row = format!("//! | [`{question}`] | ");
        let said = page
            .lines()
            .find_map(|line| line.strip_prefix(&row))
            .unwrap();
        let body = &root["properties"][question];
        assert_eq!(
            body["description"].as_str(),
            said.strip_suffix(" |"),
            "{question}"
        );
        for (part, schema) in root["$defs"].as_object().into_iter().flatten() {
            let words = schema["description"].as_str().unwrap_or_default();
            assert!(
                words.len() > 8 && words.len() <= LONGEST_WORDS,
                "{part}: {words}"
            );
            told.insert(part);
        }
    }
    assert!(told.len() > 100, "{}", told.len());
}

/// Fields whose want a schema of names does not see: a plan needs more than its reader, a part that
/// stands in several questions needs in one of them what it does not in another, and so do other values.
const NEEDED_BY_VALUES: [&str; 9] = [
    "lathe.carriage",
    "lathe.cross_slide",
    "lathe.power",
    "question support.tool",
    "question tool life.exponent",
    "question tool life.tool_material",
    "stated limits.nominal",
    "tool.material",
    "tool.minor_cutting_edge_angle",
];

#[test]
fn what_the_reader_needs_beside_other_fields_the_schema_needs() {
    let mut only_the_reader = BTreeSet::new();
    let mut struck = 0;
    for (question, fields) in questions() {
        let document = json!({ question: fields });
        let (root, validator) = of(question);
        let mut places = Vec::new();
        let body = &root["properties"][question];
        let top = format!("/{question}");
        walk_schemas(root, body, &fields, &top, &mut |path, schema| {
            let object = document.pointer(path).unwrap().as_object().unwrap();
            let title = schema["title"].as_str().unwrap().to_owned();
            let names = object.keys().cloned();
            places.extend(names.map(|name| (path.to_owned(), title.clone(), name)));
        });
        for (path, title, name) in places {
            let less = without(&document, &path, &[&name]);
            if let Err(error) = answer(&less.to_string()) {
                struck += 1;
                let field = format!("{title}.{name}");
                if validator.is_valid(&less) {
                    assert!(
                        NEEDED_BY_VALUES.contains(&field.as_str()),
                        "{field}: {error}"
                    );
                    only_the_reader.insert(field);
                }
            }
        }
    }
    // None of them is told for nothing.
    assert_eq!(only_the_reader.len(), NEEDED_BY_VALUES.len());
    assert!(struck > 400, "{struck}");
}

/// The longest words of a field that a list of fields still shows on one line or two: judgement, no source.
const LONGEST_WORDS: usize = 140;

#[test]
fn every_field_has_words_for_a_person() {
    let mut told = BTreeSet::new();
    let mut wrong = Vec::new();
    for question in QUESTIONS {
        let root = &of(question).0;
        let body = root["properties"][question].clone();
        let parts = root["$defs"].as_object().into_iter().flatten();
        let parts = parts.map(|(name, part)| (name.as_str(), part));
        for (part, schema) in parts.chain([(*question, &body)]) {
            for (field, schema) in schema["properties"].as_object().into_iter().flatten() {
                match schema["description"].as_str() {
                    // What a quantity says of itself does not say what it is here.
                    Some(words) if words.len() > 3 && words.len() <= LONGEST_WORDS => {
                        told.insert(format!("{part}.{field}"));
                    }
                    other => wrong.push(format!("{part}.{field}: {other:?}")),
                }
            }
        }
        assert!(root["properties"]["version"]["description"].is_string());
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(told.len() > 300, "{}", told.len());
    // Words beside a reference are those of the field, and words of a part those of every field of it.
    let dial = &of("dial").0["properties"]["dial"];
    assert!(dial["properties"]["zero_at"]["$ref"].is_string());
    let units = |question: &str| {
        let body = &of(question).0["properties"][question];
        body["properties"]["units"]["description"].clone()
    };
    assert_eq!(units("dial"), units("taper"));
}

#[test]
fn a_question_without_what_its_answer_rests_on_is_refused_by_its_schema_too() {
    let tool = json!({ "corner_radius": "0.4 mm", "cutting_edge_angle": "90 deg" });
    let cone = json!({ "large": "30 mm", "small": "25 mm", "length": "50 mm" });
    let mut twice = cone.clone();
    twice["ratio"] = json!(10);
    let bad = [
        ("taper", json!({})),
        ("taper", json!({ "large": "30 mm", "small": "25 mm" })),
        ("taper", json!({ "ratio": 20, "half_angle": "2 deg" })),
        ("taper", twice),
        ("growth", json!({ "rise": "5 K", "diameter": "30 mm" })),
        ("growth", json!({ "rise": "5 K", "material": "C45" })),
        (
            "tool_life",
            json!({ "constant": "70 m/min", "life": "60 min" }),
        ),
        (
            "facing",
            json!({ "diameter": "40 mm", "feed": "0.1 mm/rev", "cutting_speed": "25 m/min" }),
        ),
        (
            "cutting",
            json!({ "material": "C45", "diameter": "40 mm", "depth_of_cut": "1 mm", "feed": "0.2 mm/rev", "cutting_speed": "25 m/min" }),
        ),
        (
            "cutting",
            json!({ "material": { "specific_force": "1800 MPa" }, "tool": tool, "diameter": "40 mm", "depth_of_cut": "1 mm", "feed": "0.2 mm/rev", "cutting_speed": "25 m/min" }),
        ),
        (
            "limits",
            json!({ "nominal": "40 mm", "upper_deviation": "0.02 mm" }),
        ),
        (
            "within_reach",
            json!({ "limits": ["29.967 mm", "30 mm"], "instrument": "micrometer", "spring_along": "0.002 mm",
            "dial": { "reads": "radius", "division": "0.02 mm", "divisions_per_turn": 100 },
            "youngs_modulus": "210 GPa", "cut": { "passive_force": "50 N" }, "sections": [{ "diameter": "30 mm", "length": "100 mm" }] }),
        ),
        (
            "budget",
            json!({ "components": [{ "name": "instrument", "expanded": "0.004 mm" }] }),
        ),
    ];
    for (question, fields) in bad {
        let document = json!({ question: fields });
        assert!(!of(question).1.is_valid(&document), "{document}");
        assert!(answer(&document.to_string()).is_err(), "{document}");
    }
    for fields in [cone, json!({ "ratio": 20, "large": "30 mm" })] {
        let document = json!({ "taper": fields });
        accepts("taper", &document);
        answer(&document.to_string()).unwrap();
    }
}

/// What a schema says a number must lie between, wherever it is one.
fn bounds(root: &Value, schema: &Value) -> Vec<(Value, Value)> {
    if let Some(choices) = schema["anyOf"].as_array() {
        return choices.iter().flat_map(|one| bounds(root, one)).collect();
    }
    let (least, largest) = (&schema["minimum"], &schema["maximum"]);
    if least.is_number() && largest.is_number() {
        return vec![(least.clone(), largest.clone())];
    }
    if let Some(to) = schema["$ref"].as_str() {
        return bounds(root, root.pointer(&to[1..]).unwrap());
    }
    let types = schema["type"].as_array().into_iter().flatten();
    let numeric = |name: &Value| *name == "integer" || *name == "number";
    let is_number = types.chain([&schema["type"]]).any(numeric);
    assert!(!is_number, "a number without its bounds: {schema}");
    Vec::new()
}

/// A number between two: whole where they are.
fn between(least: &Value, largest: &Value) -> Value {
    match (least.as_i64(), largest.as_i64()) {
        (Some(least), Some(_)) => json!(least + 1),
        _ => json!((least.as_f64().unwrap() + largest.as_f64().unwrap()) / 2.0),
    }
}

/// The next number beyond: whole where the bound is, else the next double.
fn beyond(bound: &Value, up: bool) -> Value {
    match bound.as_i64() {
        Some(whole) => json!(if up { whole + 1 } else { whole - 1 }),
        None => {
            let bound = bound.as_f64().unwrap();
            json!(if up {
                bound.next_up()
            } else {
                bound.next_down()
            })
        }
    }
}

/// The path of a field as errors write it, by its place in the question: `/tool/feeds/0` is `tool.feeds[0]`.
fn as_errors_write(place: &str) -> String {
    let parts = place.trim_start_matches('/').split('/');
    parts.fold(String::new(), |path, part| match part.parse::<usize>() {
        Ok(index) => format!("{path}[{index}]"),
        Err(_) if path.is_empty() => part.to_owned(),
        Err(_) => format!("{path}.{part}"),
    })
}

#[test]
fn every_bound_of_a_schema_is_the_one_that_the_reader_keeps() {
    // By field and bound: whether some place showed that the reader refuses what lies beyond for its size.
    let mut kept: HashMap<(String, String), bool> = HashMap::new();
    let mut wrong = BTreeSet::new();
    for (question, fields) in questions() {
        let document = json!({ question: fields });
        let (root, validator) = of(question);
        let top = format!("/{question}");
        let mut places = Vec::new();
        let body = &root["properties"][question];
        walk(root, body, &fields, &top, &mut |path, known| {
            for (name, schema) in known {
                for bounds in bounds(root, schema) {
                    places.push((path.to_owned(), name.clone(), bounds));
                }
            }
        });
        for (path, name, (least, largest)) in places {
            let at = as_errors_write(&format!("{}/{name}", &path[top.len()..]));
            let inside = with(&document, &path, &name, between(&least, &largest));
            for (bound, up) in [(least, false), (largest, true)] {
                let told = kept.entry((name.clone(), bound.to_string())).or_default();
                // A field that wants another beside it is refused here for want of that one.
                if !validator.is_valid(&inside) {
                    continue;
                }
                let held = with(&document, &path, &name, bound.clone());
                assert!(validator.is_valid(&held), "{question} {at}: {bound}");
                let error = answer(&held.to_string()).err();
                // A job has as many stops at most as it has cuts, and a sheet its steps, which no schema can know.
                let of_the_job = matches!(name.as_str(), "measuring_stops" | "step") && up;
                if let Some(error) = error.filter(|error| error.field() == at && !of_the_job)
                    && error.kind() == ErrorKind::OutOfRange
                {
                    wrong.insert(format!("{question}: {bound} is in the schema, but {error}"));
                }
                let odd = with(&document, &path, &name, beyond(&bound, up));
                assert!(!validator.is_valid(&odd), "{question} {at}: {odd}");
                match answer(&odd.to_string()) {
                    Ok(_) => {
                        wrong.insert(format!("{question} {at}: more than {bound} is taken"));
                    }
                    Err(error) => {
                        *told |= error.field() == at && error.kind() == ErrorKind::OutOfRange;
                    }
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
    assert!(kept.len() > 40, "{}", kept.len());
    let unproved: Vec<_> = kept.iter().filter(|(_, told)| !**told).collect();
    assert!(unproved.is_empty(), "{unproved:?}");
}

/// The bounds that the words of a quantity name, and whether zero is allowed beside them.
fn bounds_in_words(words: &str) -> (&str, &str, bool) {
    let (range, _) = words.split_once(", text with its unit").unwrap();
    let (range, zero) = match range.strip_suffix(", or 0") {
        Some(range) => (range, true),
        None => (range, false),
    };
    let (front, largest) = range.rsplit_once(" to ").unwrap();
    (front.rsplit_once(" from ").unwrap().1, largest, zero)
}

#[test]
fn the_range_in_the_words_of_a_quantity_is_the_one_that_its_reader_keeps() {
    let mut said: HashMap<String, String> = HashMap::new();
    for question in QUESTIONS {
        let root = &of(question).0;
        for (name, schema) in root["$defs"].as_object().into_iter().flatten() {
            if schema["type"] == "string" && schema["examples"].is_array() {
                let words = schema["description"].as_str().unwrap();
                said.insert(name.clone(), words.to_owned());
            }
        }
    }
    let mut held = 0;
    macro_rules! holds {
        ($t:ident) => {
            if let Some(words) = said.get(<turnwright::$t as turnwright::Quantity>::ROW.name()) {
                let (least, largest, zero) = bounds_in_words(words);
                for (bound, up) in [(least, false), (largest, true)] {
                    let taken: turnwright::$t = bound.parse().unwrap();
                    let (_, unit) = bound.split_once(' ').unwrap();
                    let next = turnwright::Quantity::trade(taken);
                    let next = if up { next.next_up() } else { next.next_down() };
                    let refused = format!("{next:e} {unit}").parse::<turnwright::$t>();
                    assert_eq!(
                        refused.unwrap_err().kind(),
                        ErrorKind::OutOfRange,
                        "{words}"
                    );
                }
                let (_, unit) = least.split_once(' ').unwrap();
                let none = format!("0 {unit}").parse::<turnwright::$t>();
                let inside =
                    turnwright::Quantity::trade(least.parse::<turnwright::$t>().unwrap()) <= 0.0;
                assert_eq!(none.is_ok(), zero || inside, "{words}");
                held += 1;
            }
        };
    }
    turnwright::for_each_quantity!(holds);
    assert_eq!(held, said.len());
    assert!(held > 40, "{held}");
    let (least, largest, zero) = bounds_in_words(&said["diameter"]);
    assert_eq!((least, largest, zero), ("0.1 mm", "5000 mm", false));
}

/// Every place of a document where an object has a field, as the errors write it, with the renamed document.
fn misspelt(document: &Value) -> Vec<(String, Value)> {
    fn inside(place: &Value, path: &str, found: &mut Vec<(String, String)>) {
        match place {
            Value::Object(fields) => {
                for (name, below) in fields {
                    found.push((path.to_owned(), name.clone()));
                    inside(below, &format!("{path}/{name}"), found);
                }
            }
            Value::Array(items) => {
                for (at, item) in items.iter().enumerate() {
                    inside(item, &format!("{path}/{at}"), found);
                }
            }
            _ => {}
        }
    }
    let (question, body) = document.as_object().unwrap().iter().next().unwrap();
    let mut places = Vec::new();
    inside(body, &format!("/{question}"), &mut places);
    places
        .into_iter()
        .map(|(parent, name)| {
            let mut renamed = document.clone();
            let fields = renamed
                .pointer_mut(&parent)
                .unwrap()
                .as_object_mut()
                .unwrap();
            let value = fields.remove(&name).unwrap();
            fields.insert(format!("{name}x"), value);
            (format!("{parent}/{name}x"), renamed)
        })
        .collect()
}

#[test]
fn a_misspelt_field_is_told_as_one_and_not_as_another_that_is_missing() {
    let mut tried = 0;
    for (question, example) in questions() {
        for (path, document) in misspelt(&json!({ question: example })) {
            // Names of one's own, and what a sheet holds beside its job, are nobody's to spell.
            if path.contains("_ranges/") || question == "after_measurement" {
                continue;
            }
            let error = turnwright::document::answer(&document.to_string()).unwrap_err();
            let place = as_errors_write(path.strip_prefix(&format!("/{question}")).unwrap());
            assert_eq!(error.field(), place, "{error}");
            let name = path.rsplit('/').next().unwrap();
            let meant = name.strip_suffix('x').unwrap();
            if meant.len() > 3 {
                assert!(
                    error.remedy().contains(&format!("did you mean {meant:?}?")),
                    "{error}"
                );
            }
            tried += 1;
        }
    }
    assert!(tried > 300, "{tried}");
}

#[test]
fn a_sheet_handed_back_with_a_slip_does_not_lose_its_measurement() {
    let asked = questions()
        .into_iter()
        .find(|(name, _)| *name == "after_measurement")
        .unwrap()
        .1;
    for (from, to, meant) in [("job", "joob", "job"), ("measured", "mesured", "measured")] {
        let mut asked = asked.clone();
        let sheet = asked["plan"].as_object_mut().unwrap();
        let value = sheet.remove(from).unwrap_or_else(|| json!([]));
        sheet.insert(to.to_owned(), value);
        let question = json!({ "after_measurement": asked }).to_string();
        let error = turnwright::document::answer(&question).unwrap_err();
        assert_eq!(error.field(), format!("plan.{to}"), "{error}");
        assert!(error.remedy().contains(meant), "{error}");
    }
    let mut beside = asked.clone();
    beside["plan"]["preferences"] = json!({ "batch": 4 });
    let question = json!({ "after_measurement": beside }).to_string();
    let error = turnwright::document::answer(&question).unwrap_err();
    assert_eq!(error.field(), "plan.preferences", "{error}");
    assert!(error.remedy().contains("move it into \"job\""), "{error}");
}
