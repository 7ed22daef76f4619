//! One question of a table: what is asked and from which inputs.

use serde_json::{Map, Value as Json};

use super::units;

/// A row without what is expected of it.
#[derive(Clone, Debug)]
pub struct Row {
    /// What is asked for within the topic.
    pub quantity: String,
    /// The inputs; units are in the key names.
    pub inputs: Map<String, Json>,
    /// The unit that the answer is wanted in.
    pub unit: String,
}

/// What came out, in the unit that the row asks for.
#[derive(Clone, PartialEq, Debug)]
pub enum Value {
    /// A number.
    Number(f64),
    /// A word: a class, a grade.
    Text(String),
    /// A list of numbers.
    List(Vec<f64>),
}

impl Row {
    /// The number under exactly this key.
    pub fn number(&self, key: &str) -> Option<f64> {
        self.inputs.get(key)?.as_f64()
    }

    /// The text under exactly this key.
    pub fn text(&self, key: &str) -> Option<&str> {
        self.inputs.get(key)?.as_str()
    }

    /// The list of numbers under exactly this key.
    pub fn list(&self, key: &str) -> Option<Vec<f64>> {
        self.inputs
            .get(key)?
            .as_array()?
            .iter()
            .map(Json::as_f64)
            .collect()
    }

    /// The input of this name in whatever unit its key says, in SI units:
    /// `si("journal")` reads `journal_in` as well as `journal_mm`.
    pub fn si(&self, name: &str) -> Option<f64> {
        self.inputs.iter().find_map(|(key, value)| {
            let unit = key.strip_prefix(name)?.strip_prefix('_')?;
            units::to_si(value.as_f64()?, unit)
        })
    }

    /// The list of this name in whatever unit its key says, in SI units.
    pub fn si_list(&self, name: &str) -> Option<Vec<f64>> {
        self.inputs.iter().find_map(|(key, value)| {
            let unit = key.strip_prefix(name)?.strip_prefix('_')?;
            value
                .as_array()?
                .iter()
                .map(|one| units::to_si(one.as_f64()?, unit))
                .collect()
        })
    }

    /// An answer in SI units, as a value in the unit that the row asks for.
    pub fn value_of(&self, si: f64) -> Option<Value> {
        units::from_si(si, &self.unit).map(Value::Number)
    }
}
