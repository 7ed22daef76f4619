//! The named fields of a JSON object, read one by one.
//!
//! Only the fields that are asked for are read. The rest is skipped without
//! building anything, however deep it goes.

use std::collections::BTreeMap;

use serde_json::Value;
use serde_json::value::RawValue;

use super::unreadable::Unreadable;
use crate::id::FactId;

/// The fields of one JSON object.
pub(super) struct Fields<'a>(BTreeMap<String, &'a RawValue>);

impl<'a> Fields<'a> {
    pub(super) fn read(json: &'a str) -> Result<Self, Unreadable> {
        serde_json::from_str(json).map(Self).map_err(|error| {
            if error.is_data() {
                Unreadable::NoFields
            } else {
                Unreadable::NotJson {
                    reason: error.to_string(),
                }
            }
        })
    }

    /// The JSON in a field; none when it is absent or null.
    pub(super) fn json(&self, field: &str) -> Option<&'a str> {
        let json = self.0.get(field)?.get();
        (json != "null").then_some(json)
    }

    /// Whether no field has another name than these.
    pub(super) fn only(&self, names: &[&str]) -> bool {
        self.0.keys().all(|name| names.contains(&name.as_str()))
    }

    fn wrong(&self, field: &'static str, wanted: &'static str) -> Unreadable {
        match self.json(field) {
            None => Unreadable::Missing { field, wanted },
            Some(json) => Unreadable::Wrong {
                field,
                wanted,
                read: start_of(json),
            },
        }
    }

    fn value(&self, field: &str) -> Option<Value> {
        serde_json::from_str(self.json(field)?).ok()
    }

    /// Text that has to be there.
    pub(super) fn text(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<String, Unreadable> {
        match self.value(field) {
            Some(Value::String(text)) => Ok(text),
            _ => Err(self.wrong(field, wanted)),
        }
    }

    /// Text that may be there.
    pub(super) fn optional_text(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Option<String>, Unreadable> {
        match self.json(field) {
            None => Ok(None),
            Some(_) => self.text(field, wanted).map(Some),
        }
    }

    /// An id that has to be there.
    pub(super) fn id<T, E>(
        &self,
        field: &'static str,
        wanted: &'static str,
        parse: fn(&str) -> Result<T, E>,
    ) -> Result<T, Unreadable> {
        let text = self.text(field, wanted)?;
        parse(&text).map_err(|_| self.wrong(field, wanted))
    }

    /// An id that may be there.
    pub(super) fn optional_id<T, E>(
        &self,
        field: &'static str,
        wanted: &'static str,
        parse: fn(&str) -> Result<T, E>,
    ) -> Result<Option<T>, Unreadable> {
        match self.json(field) {
            None => Ok(None),
            Some(_) => self.id(field, wanted, parse).map(Some),
        }
    }

    /// One of some words that has to be there.
    pub(super) fn word<T>(
        &self,
        field: &'static str,
        wanted: &'static str,
        from_id: fn(&str) -> Option<T>,
    ) -> Result<T, Unreadable> {
        let text = self.text(field, wanted)?;
        from_id(&text).ok_or_else(|| self.wrong(field, wanted))
    }

    /// One of some words that may be there.
    pub(super) fn optional_word<T>(
        &self,
        field: &'static str,
        wanted: &'static str,
        from_id: fn(&str) -> Option<T>,
    ) -> Result<Option<T>, Unreadable> {
        match self.json(field) {
            None => Ok(None),
            Some(_) => self.word(field, wanted, from_id).map(Some),
        }
    }

    /// A whole number that has to be there.
    pub(super) fn whole(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<i64, Unreadable> {
        self.value(field)
            .and_then(|value| value.as_i64())
            .ok_or_else(|| self.wrong(field, wanted))
    }

    /// A count that may be there.
    pub(super) fn optional_count(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Option<u32>, Unreadable> {
        match self.json(field) {
            None => Ok(None),
            Some(_) => self.count(field, wanted).map(Some),
        }
    }

    /// A count that has to be there.
    pub(super) fn count(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<u32, Unreadable> {
        u32::try_from(self.whole(field, wanted)?).map_err(|_| self.wrong(field, wanted))
    }

    /// Counts, none when the field is absent.
    pub(super) fn counts(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Vec<u32>, Unreadable> {
        let Some(json) = self.json(field) else {
            return Ok(Vec::new());
        };
        serde_json::from_str(json).map_err(|_| self.wrong(field, wanted))
    }

    /// Pairs of whole numbers, none when the field is absent.
    pub(super) fn pairs(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Vec<[i32; 2]>, Unreadable> {
        let Some(json) = self.json(field) else {
            return Ok(Vec::new());
        };
        serde_json::from_str(json).map_err(|_| self.wrong(field, wanted))
    }

    /// Texts, none when the field is absent.
    pub(super) fn texts(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Vec<String>, Unreadable> {
        let Some(_) = self.json(field) else {
            return Ok(Vec::new());
        };
        let Some(Value::Array(all)) = self.value(field) else {
            return Err(self.wrong(field, wanted));
        };
        all.iter()
            .map(|one| one.as_str().map(str::to_owned))
            .collect::<Option<Vec<_>>>()
            .ok_or_else(|| self.wrong(field, wanted))
    }

    /// The JSON of each item of a list, none when the field is absent.
    pub(super) fn items(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Vec<&'a RawValue>, Unreadable> {
        match self.json(field) {
            None => Ok(Vec::new()),
            Some(json) => serde_json::from_str(json).map_err(|_| self.wrong(field, wanted)),
        }
    }

    /// Ids of facts, none when the field is absent.
    pub(super) fn facts(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Vec<FactId>, Unreadable> {
        let Some(_) = self.json(field) else {
            return Ok(Vec::new());
        };
        let Some(Value::Array(all)) = self.value(field) else {
            return Err(self.wrong(field, wanted));
        };
        all.iter()
            .map(|one| one.as_str().and_then(|text| FactId::parse(text).ok()))
            .collect::<Option<Vec<_>>>()
            .ok_or_else(|| self.wrong(field, wanted))
    }
}

fn start_of(json: &str) -> String {
    const SHOWN: usize = 60;
    let mut letters = json.chars();
    let mut start: String = letters.by_ref().take(SHOWN).collect();
    if letters.next().is_some() {
        start.push('…');
    }
    start
}
