//! The JSON Schema of every question, from one page of its fields.
//!
//! Questions are read field by field, so that an error names the field and how to put it right; no
//! derived type stands behind them. The page `questions.txt` says the same fields once more, and a test
//! holds every one of them against the reader, and every field of the reader against the page.

use std::collections::BTreeSet;

use serde_json::{Map, Number, Value, json};

use crate::error::Error;
use crate::quantity::{Row, rows};

const PAGE: &str = include_str!("questions.txt");

/// A part of the page: its name, and its lines.
#[derive(Clone, Copy)]
pub(super) struct Part {
    pub(super) name: &'static str,
    /// What it is, where it has no fields of its own.
    pub(super) is: Option<&'static str>,
    /// What it is in words, for each field too that takes it and has none of its own.
    words: Option<&'static str>,
    lines: &'static str,
}

/// A field of a part.
pub(super) struct Field {
    pub(super) name: &'static str,
    /// What stands in it.
    pub(super) takes: &'static str,
}

impl Part {
    /// Its fields, in the order of the page.
    pub(super) fn fields(&self) -> impl Iterator<Item = Field> {
        self.lines.lines().filter_map(|line| {
            let (line, _) = and_words(line.trim());
            let (name, takes) = line.split_once(": ")?;
            let rule = matches!(name, "one of" | "any of");
            (!rule).then(|| Field {
                name: name.strip_suffix('?').unwrap_or(name),
                takes: Together::of(takes).0,
            })
        })
    }

    /// True where fields that are not named are passed over.
    pub(super) fn others(&self) -> bool {
        self.lines.lines().any(|line| line.trim() == "others")
    }
}

/// The schema of a question as JSON text, after JSON Schema, draft 2020-12.
///
/// It describes the whole document, `{ "version"?, "<question>": { .. } }`; the `description` of the
/// question says what it answers, that of an object what it is, that of a field what the field is, and what
/// is taken where it is left out. Fields that stand together only are so in `dependentRequired` and
/// `dependentSchemas`. What it refuses, the library refuses, but for a null, which the library takes for a
/// field left out; the library refuses more: quantities out of range where they are text, whose description
/// names the range, fields that contradict one another, what a plan needs beyond its reader.
///
/// # Errors
/// When there is no such question.
///
/// # Example
/// ```
/// let schema = turnwright::document::schema("dial")?;
/// assert!(schema.contains(r#""divisions_per_turn""#));
/// assert!(turnwright::document::schema("dail").is_err());
/// # Ok::<(), turnwright::Error>(())
/// ```
pub fn schema(question: &str) -> Result<String, Error> {
    if !super::QUESTIONS.contains(&question) {
        return Err(super::unknown(question));
    }
    let mut used = Used::default();
    let body = match part(&format!("question {question}")) {
        Some(found) => used.of_part(found)?,
        None => return Err(Error::internal("a question without its schema")),
    };
    let mut known = Map::new();
    while let Some(name) = used.names.pop_first() {
        if known.contains_key(&name) {
            continue;
        }
        let schema = match (part(&name), row(&name)) {
            (Some(found), _) => used.of_part(found)?,
            (None, Some(row)) => of_row(row),
            (None, None) => return Err(Error::internal("a name that the page of questions lacks")),
        };
        known.insert(name, schema);
    }
    let mut fields = Map::new();
    let version = json!({ "const": super::VERSION, "description": "version of the documents; left out: this one" });
    fields.insert(String::from("version"), version);
    fields.insert(question.to_owned(), body);
    Ok(json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": format!("the question \"{question}\""),
        "type": "object",
        "properties": fields,
        "required": [question],
        "additionalProperties": false,
        "$defs": known,
    })
    .to_string())
}

/// The part of this name.
pub(super) fn part(name: &str) -> Option<Part> {
    let mut rest = PAGE;
    while !rest.is_empty() {
        let (line, after) = rest.split_once('\n').unwrap_or((rest, ""));
        rest = after;
        if line.is_empty() || line.starts_with(['#', ' ']) {
            continue;
        }
        let (line, words) = and_words(line);
        let (title, is) = match line.split_once(" = ") {
            Some((title, is)) => (title, Some(is)),
            None => (line, None),
        };
        if title == name {
            let end = rest.find("\n\n").unwrap_or(rest.len());
            let lines = match is {
                Some(_) => "",
                None => &rest[..end],
            };
            return Some(Part {
                name: title,
                is,
                words,
                lines,
            });
        }
    }
    None
}

/// A line of the page, and the words for a person behind it.
fn and_words(line: &str) -> (&str, Option<&str>) {
    match line.split_once(" -- ") {
        Some((line, words)) => (line, Some(words)),
        None => (line, None),
    }
}

/// The row of the table of quantities with this name.
fn row(name: &str) -> Option<&'static Row> {
    rows().iter().copied().find(|row| row.name() == name)
}

/// What is referred to and has to stand in the schema as well.
#[derive(Default)]
struct Used {
    names: BTreeSet<String>,
}

impl Used {
    fn of_part(&mut self, part: Part) -> Result<Value, Error> {
        let mut schema = match part.is {
            Some(is) => self.of_words(is)?,
            None => self.of_fields(part)?,
        };
        describe(&mut schema, part.words);
        Ok(schema)
    }

    fn of_fields(&mut self, of: Part) -> Result<Value, Error> {
        let (mut fields, mut required, mut ways) = (Map::new(), Vec::new(), Vec::new());
        let (mut beside, mut beside_one) = (Map::new(), Map::new());
        let mut others = false;
        for line in of.lines.lines().map(str::trim) {
            if line == "others" {
                others = true;
                continue;
            }
            let (line, words) = and_words(line);
            let Some((name, what)) = line.split_once(": ") else {
                return Err(Error::internal(
                    "a line of the page of questions without its colon",
                ));
            };
            match name {
                "one of" => ways.push(json!({ "oneOf": each_required(what) })),
                "any of" => ways.push(json!({ "anyOf": each_required(what) })),
                _ => {
                    let (name, optional) = match name.strip_suffix('?') {
                        Some(name) => (name, true),
                        None => (name, false),
                    };
                    if !optional {
                        required.push(Value::from(name));
                    }
                    let (what, together) = Together::of(what);
                    let mut field = self.of_words(what)?;
                    // Beside a reference both stand: what the field is here, what any such quantity is there.
                    let words = words.or_else(|| part(what)?.words);
                    match (together, words) {
                        (Some(together), Some(words)) => {
                            describe(&mut field, Some(&together.told(words)));
                            together.rules(name, &mut beside, &mut beside_one);
                        }
                        (None, words) => describe(&mut field, words),
                        (Some(_), None) => {
                            return Err(Error::internal("fields that go together, without words"));
                        }
                    }
                    fields.insert(name.to_owned(), field);
                }
            }
        }
        let mut schema = json!({
            "title": of.name.replace('_', " "),
            "type": "object",
            "properties": fields,
            "additionalProperties": others,
        });
        if let Value::Object(entries) = &mut schema {
            if !required.is_empty() {
                entries.insert(String::from("required"), Value::Array(required));
            }
            if !ways.is_empty() {
                entries.insert(String::from("allOf"), Value::Array(ways));
            }
            for (name, rules) in [
                ("dependentRequired", beside),
                ("dependentSchemas", beside_one),
            ] {
                if !rules.is_empty() {
                    entries.insert(String::from(name), Value::Object(rules));
                }
            }
        }
        Ok(schema)
    }

    /// What a field takes, as the page says it.
    fn of_words(&mut self, words: &str) -> Result<Value, Error> {
        let choices: Vec<&str> = words.split(" | ").collect();
        if choices.iter().all(|choice| choice.starts_with('"')) {
            let names: Vec<&str> = choices
                .iter()
                .map(|choice| choice.trim_matches('"'))
                .collect();
            return Ok(json!({ "enum": names }));
        }
        if let [one] = choices.as_slice() {
            return self.of_one(one);
        }
        let choices = choices
            .into_iter()
            .map(|choice| self.of_one(choice))
            .collect::<Result<Vec<_>, _>>()?;
        Ok(json!({ "anyOf": choices }))
    }

    fn of_one(&mut self, word: &str) -> Result<Value, Error> {
        let inside = |left: char, right: char| {
            let inner = word.strip_prefix(left)?;
            inner.strip_suffix(right)
        };
        if let Some(inner) = inside('[', ']') {
            return Ok(json!({ "type": "array", "items": self.of_one(inner)? }));
        }
        if let Some(inner) = inside('<', '>') {
            let item = self.of_one(inner)?;
            return Ok(json!({ "type": "array", "items": item, "minItems": 2, "maxItems": 2 }));
        }
        if let Some(inner) = inside('{', '}') {
            return Ok(json!({ "type": "object", "additionalProperties": self.of_one(inner)? }));
        }
        Ok(match word {
            "count" => json!({ "type": "integer", "minimum": 0, "maximum": u32::MAX }),
            "flag" => json!({ "type": "boolean" }),
            "text" => json!({ "type": "string" }),
            words if words.contains(" to ") => {
                let mut schema = match words.split_once(' ') {
                    Some((name, _)) => self.of_one(name)?,
                    None => return Err(Error::internal("a range of the page without a name")),
                };
                let range = words.rsplit_once(" to ").and_then(|(front, largest)| {
                    let (_, least) = front.rsplit_once(' ')?;
                    let number = |text: &str| serde_json::from_str::<Number>(text).ok();
                    Some((number(least)?, number(largest)?))
                });
                let (Some((least, largest)), Value::Object(entries)) = (range, &mut schema) else {
                    return Err(Error::internal("a range of the page without its bounds"));
                };
                entries.insert(String::from("minimum"), Value::Number(least));
                entries.insert(String::from("maximum"), Value::Number(largest));
                schema
            }
            name => {
                self.names.insert(name.to_owned());
                json!({ "$ref": format!("#/$defs/{name}") })
            }
        })
    }
}

/// Gives a schema its words for a person, where there are some.
fn describe(schema: &mut Value, words: Option<&str>) {
    if let (Some(words), Value::Object(entries)) = (words, schema) {
        entries.insert(String::from("description"), Value::from(words));
    }
}

/// The fields that must be there beside a field.
struct Together<'a> {
    /// All of these, of each of them one.
    names: Vec<Vec<&'a str>>,
    /// True where the words of the field do not say it.
    untold: bool,
}

impl<'a> Together<'a> {
    /// What a field takes, and what must be there beside it, if anything.
    fn of(what: &'a str) -> (&'a str, Option<Self>) {
        for (word, untold) in [(" with ", true), (" needs ", false)] {
            if let Some((what, names)) = what.split_once(word) {
                let names = names.split(", ").map(|one| one.split(" | ").collect());
                let names = names.collect();
                return (what, Some(Self { names, untold }));
            }
        }
        (what, None)
    }

    /// The words of the field, and what goes with it, before what is taken where the field is left out.
    fn told(&self, words: &str) -> String {
        if !self.untold {
            return words.to_owned();
        }
        let one = |names: &Vec<&str>| names.join(" or ");
        let names = match self.names.split_last() {
            Some((last, [])) => format!("{} goes with it", one(last)),
            Some((last, front)) => {
                let front: Vec<String> = front.iter().map(one).collect();
                format!("{} and {} go with it", front.join(", "), one(last))
            }
            None => return words.to_owned(),
        };
        match words.split_once("; left out: ") {
            Some((words, left_out)) => format!("{words}; {names}; left out: {left_out}"),
            None => format!("{words}; {names}"),
        }
    }

    /// The same as rules: where one field alone will do, in `required`, else in `schemas`.
    fn rules(
        &self,
        field: &str,
        required: &mut Map<String, Value>,
        schemas: &mut Map<String, Value>,
    ) {
        let (alone, choices): (Vec<_>, Vec<_>) = self.names.iter().partition(|one| one.len() == 1);
        if !alone.is_empty() {
            let names: Vec<&str> = alone.into_iter().flatten().copied().collect();
            required.insert(field.to_owned(), json!(names));
        }
        if !choices.is_empty() {
            let each = |names: &&Vec<&str>| {
                let ways = names.iter().map(|name| json!({ "required": [name] }));
                json!({ "anyOf": ways.collect::<Vec<_>>() })
            };
            let all: Vec<Value> = choices.iter().map(each).collect();
            schemas.insert(field.to_owned(), json!({ "allOf": all }));
        }
    }
}

/// For each of some fields, or of some that go together, that it is there.
fn each_required(names: &str) -> Vec<Value> {
    let ways = names.split(", ").map(|way| way.split(" + "));
    ways.map(|names| json!({ "required": names.collect::<Vec<_>>() }))
        .collect()
}

/// A quantity: text with one of its units; where it has none, a number too.
fn of_row(row: &Row) -> Value {
    let units: Vec<&str> = row.kind().units().iter().map(|unit| unit.text()).collect();
    let plain = units.iter().all(|unit| unit.is_empty());
    let words = format!("{} from {}", row.what(), row.range());
    let words = match plain {
        true => format!("{words}, a plain number"),
        false => format!("{words}, text with its unit: {}", units.join(", ")),
    };
    let mut schema = json!({
        "description": words,
        "type": if plain { json!(["number", "string"]) } else { json!("string") },
        // Every quantity has a digit; what else it may look like, its reader tells.
        "pattern": "[0-9]",
        "examples": [row.example(), row.inch_example()],
    });
    // A zero beside the range has no place between two bounds; no plain number has one.
    if plain
        && !row.allows_zero()
        && let Value::Object(entries) = &mut schema
    {
        entries.insert(String::from("minimum"), json!(row.least()));
        entries.insert(String::from("maximum"), json!(row.largest()));
    }
    schema
}
