//! One case: its inputs through the crate's own text door, its expected values with a tolerance.

use std::cell::RefCell;
use std::collections::BTreeSet;

use serde_json::Value;
use turnwright::{ErrorKind, Quantity};

pub struct Case {
    fields: Value,
    looked_at: RefCell<BTreeSet<String>>,
}

/// The cases of a file.
pub fn read(text: &str) -> Result<Vec<Case>, String> {
    let cases: Vec<Value> = serde_json::from_str(text).map_err(|e| e.to_string())?;
    Ok(cases
        .into_iter()
        .map(|fields| Case {
            fields,
            looked_at: RefCell::default(),
        })
        .collect())
}

/// A value with its unit in the trade's metric unit, through the text door.
///
/// Expected values may be finer than any lathe needs (an R_t of 0.04 nm): those are refused at the
/// door, and read here with the door's own units.
fn trade<Q: Quantity>(text: &str) -> Result<f64, String> {
    match text.parse::<Q>() {
        Ok(value) => Ok(value.trade()),
        Err(error) if error.kind() == ErrorKind::OutOfRange => {
            let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
            let unit = Q::ROW.kind().spelled(unit);
            let unit = unit.ok_or_else(|| error.to_string())?;
            let number: f64 = number.parse().map_err(|_| error.to_string())?;
            Ok(unit.to_trade(number, 1.0))
        }
        Err(error) => Err(error.to_string()),
    }
}

impl Case {
    fn text<'a>(&'a self, field: &str) -> &'a str {
        self.fields
            .get(field)
            .and_then(Value::as_str)
            .unwrap_or_default()
    }

    pub fn id(&self) -> &str {
        self.text("id")
    }

    pub fn topic(&self) -> &str {
        self.text("topic")
    }

    pub fn kind(&self) -> &str {
        self.text("kind")
    }

    pub fn source(&self) -> &str {
        self.text("source")
    }

    fn look_at(&self, part: &str, field: &str) -> Option<&Value> {
        let value = self.fields.get(part)?.get(field)?;
        self.looked_at
            .borrow_mut()
            .insert(format!("{part}.{field}"));
        Some(value)
    }

    /// Whether there is such an input.
    pub fn has(&self, field: &str) -> bool {
        self.fields["inputs"].get(field).is_some()
    }

    /// Whether such a value is expected.
    pub fn asks(&self, field: &str) -> bool {
        self.fields["expect"].get(field).is_some()
    }

    /// An input as it stands.
    pub fn raw(&self, field: &str) -> Result<&Value, String> {
        self.look_at("inputs", field)
            .ok_or_else(|| format!("no input {field}"))
    }

    /// An input that is text.
    pub fn word(&self, field: &str) -> Result<&str, String> {
        self.raw(field)?
            .as_str()
            .ok_or_else(|| format!("input {field} is not text"))
    }

    /// An input that is a list of texts.
    pub fn words(&self, field: &str) -> Result<Vec<&str>, String> {
        let list = self.raw(field)?.as_array();
        list.and_then(|list| list.iter().map(Value::as_str).collect())
            .ok_or_else(|| format!("input {field} is not a list of texts"))
    }

    /// An input that is a whole number.
    pub fn count(&self, field: &str) -> Result<i64, String> {
        self.raw(field)?
            .as_i64()
            .ok_or_else(|| format!("input {field} is not a whole number"))
    }

    /// An input as a list of quantities.
    pub fn get_list<Q: Quantity>(&self, field: &str) -> Result<Vec<Q>, String> {
        let texts = self.words(field)?.into_iter();
        texts
            .map(|text| text.parse::<Q>().map_err(|e| e.to_string()))
            .collect()
    }

    /// An input as a quantity.
    pub fn get<Q: Quantity>(&self, field: &str) -> Result<Q, String> {
        self.word(field)?.parse::<Q>().map_err(|e| e.to_string())
    }

    /// An input as a quantity, if it is there.
    pub fn maybe<Q: Quantity>(&self, field: &str) -> Result<Option<Q>, String> {
        self.has(field).then(|| self.get(field)).transpose()
    }

    /// An input converted by the text door, though no lathe has such a value.
    pub fn converted<Q: Quantity>(&self, field: &str) -> Result<f64, String> {
        trade::<Q>(self.word(field)?)
    }

    /// An expected word.
    pub fn expect_word(&self, field: &str, got: &str) -> Result<(), String> {
        match self.look_at("expect", field) {
            None => Ok(()),
            Some(value) if value.as_str() == Some(got) => Ok(()),
            Some(value) => Err(format!("{field}: expected {value}, got {got:?}")),
        }
    }

    /// An expected whole number, exactly, where the case asks for it.
    pub fn expect_count(&self, field: &str, got: i64) -> Result<(), String> {
        match self.look_at("expect", field) {
            None => Ok(()),
            Some(value) if value.as_i64() == Some(got) => Ok(()),
            Some(value) => Err(format!("{field}: expected {value}, got {got}")),
        }
    }

    /// An expected yes or no, where the case asks for it.
    pub fn expect_flag(&self, field: &str, got: bool) -> Result<(), String> {
        match self.look_at("expect", field) {
            None => Ok(()),
            Some(value) if value.as_bool() == Some(got) => Ok(()),
            Some(value) => Err(format!("{field}: expected {value}, got {got}")),
        }
    }

    /// An upper end of a rule of the trade: only the direction is compared.
    pub fn expect_at_most<Q: Quantity>(&self, field: &str, got: Q) -> Result<(), String> {
        let Some(most) = self.look_at("expect", field).and_then(Value::as_str) else {
            return Err(format!("{field}: no upper end is expected"));
        };
        if got.trade() <= trade::<Q>(most)? {
            Ok(())
        } else {
            Err(format!("{field}: expected at most {most}, got {got}"))
        }
    }

    /// An expected quantity, where the case asks for it.
    pub fn expect<Q: Quantity>(&self, field: &str, got: Q) -> Result<(), String> {
        self.expect_trade::<Q>(field, got.trade())
    }

    /// The same, of a value in the trade's metric unit of `Q`.
    pub fn expect_trade<Q: Quantity>(&self, field: &str, got: f64) -> Result<(), String> {
        match self.look_at("expect", field).map(Value::as_str) {
            None => Ok(()),
            Some(None) => Err(format!("{field}: what is expected is not text")),
            Some(Some(text)) => self.near::<Q>(field, text, got),
        }
    }

    /// An expected list of quantities.
    pub fn expect_list<Q: Quantity>(&self, field: &str, got: &[Q]) -> Result<(), String> {
        let Some(wanted) = self.look_at("expect", field).and_then(Value::as_array) else {
            return Err(format!("{field}: no list is expected"));
        };
        if wanted.len() != got.len() {
            return Err(format!(
                "{field}: {} values for {}",
                got.len(),
                wanted.len()
            ));
        }
        for (text, got) in wanted.iter().zip(got) {
            self.near::<Q>(field, text.as_str().unwrap_or_default(), got.trade())?;
        }
        Ok(())
    }

    /// An expected plain number, where the case asks for it.
    pub fn expect_number(&self, field: &str, got: f64) -> Result<(), String> {
        match self.look_at("expect", field) {
            None => Ok(()),
            Some(value) => self.near_number(field, value, got),
        }
    }

    /// An expected value in a unit that no quantity of the crate has.
    pub fn expect_in(&self, field: &str, unit: &str, got: f64) -> Result<(), String> {
        match self.look_at("expect", field).map(Value::as_str) {
            None => Ok(()),
            Some(text) => {
                let number = text
                    .and_then(|text| text.strip_suffix(unit))
                    .ok_or_else(|| format!("{field}: what is expected is not in {unit}"))?;
                self.near_number(field, &Value::from(number.trim()), got)
            }
        }
    }

    /// An expected plain number, to compare by a rule of one's own.
    pub fn number(&self, field: &str) -> Result<f64, String> {
        self.look_at("expect", field)
            .and_then(Value::as_str)
            .and_then(|text| text.parse().ok())
            .ok_or_else(|| format!("{field}: no number is expected"))
    }

    /// An input that counts something, as text.
    pub fn whole(&self, field: &str) -> Result<u32, String> {
        self.word(field)?
            .parse()
            .map_err(|_| format!("{field}: not a whole number"))
    }

    /// An expected list of plain numbers.
    pub fn expect_numbers(&self, field: &str, got: &[f64]) -> Result<(), String> {
        let Some(wanted) = self.look_at("expect", field).and_then(Value::as_array) else {
            return Err(format!("{field}: no list is expected"));
        };
        if wanted.len() != got.len() {
            return Err(format!(
                "{field}: {} values for {}",
                got.len(),
                wanted.len()
            ));
        }
        for (value, got) in wanted.iter().zip(got) {
            self.near_number(field, value, *got)?;
        }
        Ok(())
    }

    fn near_number(&self, field: &str, value: &Value, got: f64) -> Result<(), String> {
        let wanted: f64 = value
            .as_str()
            .and_then(|text| text.parse().ok())
            .ok_or_else(|| format!("{field}: {value} is not a number as text"))?;
        let tolerance = self.relative()? * wanted.abs();
        if (got - wanted).abs() <= tolerance {
            Ok(())
        } else {
            Err(off(field, wanted, got, tolerance, ""))
        }
    }

    fn relative(&self) -> Result<f64, String> {
        self.fields["tol_rel"]
            .as_f64()
            .ok_or_else(|| String::from("no tol_rel"))
    }

    fn near<Q: Quantity>(&self, field: &str, text: &str, got: f64) -> Result<(), String> {
        let wanted = trade::<Q>(text)?;
        // One for all expected values, or one each by name.
        let absolute = &self.fields["tol_abs"];
        let tolerance = match absolute.as_str().or_else(|| absolute[field].as_str()) {
            Some(text) => trade::<Q>(text)?,
            None => self.relative()? * wanted.abs(),
        };
        if (got - wanted).abs() <= tolerance {
            Ok(())
        } else {
            let unit = Q::ROW.kind().units()[0].text();
            Err(off(field, wanted, got, tolerance, unit))
        }
    }

    /// Every input used and every expected value compared, or the case is not answered.
    pub fn nothing_left(&self) -> Result<(), String> {
        let looked_at = self.looked_at.borrow();
        let mut left = Vec::new();
        for part in ["inputs", "expect"] {
            for field in self.fields[part].as_object().into_iter().flatten() {
                let name = format!("{part}.{}", field.0);
                if !looked_at.contains(&name) {
                    left.push(name);
                }
            }
        }
        if left.is_empty() {
            Ok(())
        } else {
            Err(format!("no module answers {}", left.join(", ")))
        }
    }
}

fn off(field: &str, wanted: f64, got: f64, tolerance: f64, unit: &str) -> String {
    format!(
        "{field}: expected {wanted} {unit} within {tolerance:e}, got {got}, off by {:e}",
        got - wanted
    )
}
