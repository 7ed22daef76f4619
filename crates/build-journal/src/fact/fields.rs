//! The named fields of a JSON object, read one by one.
//!
//! Only the fields that are asked for are read. The rest is skipped without
//! building anything, however deep it goes.

use std::borrow::Cow;
use std::fmt;

use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde_json::Value;
use serde_json::value::RawValue;

use super::unreadable::Unreadable;
use crate::id::FactId;

/// The fields of one JSON object, in the order they stand there. They are few,
/// so that looking through them is as quick as any order.
pub(super) struct Fields<'a>(Vec<(Cow<'a, str>, &'a RawValue)>);

impl<'a> Deserialize<'a> for Fields<'a> {
    fn deserialize<D: Deserializer<'a>>(from: D) -> Result<Self, D::Error> {
        struct All;

        impl<'a> Visitor<'a> for All {
            type Value = Fields<'a>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("named fields")
            }

            fn visit_map<M: MapAccess<'a>>(self, mut map: M) -> Result<Self::Value, M::Error> {
                let mut all = Vec::with_capacity(12);
                while let Some((Name(name), json)) = map.next_entry()? {
                    all.push((name, json));
                }
                Ok(Fields(all))
            }
        }

        from.deserialize_map(All)
    }
}

/// A field's name, taken from the text where it stands there as it is.
struct Name<'a>(Cow<'a, str>);

impl<'a> Deserialize<'a> for Name<'a> {
    fn deserialize<D: Deserializer<'a>>(from: D) -> Result<Self, D::Error> {
        struct One;

        impl<'a> Visitor<'a> for One {
            type Value = Name<'a>;

            fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
                f.write_str("a name")
            }

            fn visit_borrowed_str<E>(self, name: &'a str) -> Result<Self::Value, E> {
                Ok(Name(Cow::Borrowed(name)))
            }

            fn visit_str<E>(self, name: &str) -> Result<Self::Value, E> {
                Ok(Name(Cow::Owned(name.to_owned())))
            }
        }

        from.deserialize_str(One)
    }
}

impl<'a> Fields<'a> {
    pub(super) fn read(json: &'a str) -> Result<Self, Unreadable> {
        serde_json::from_str(json).map_err(|error| {
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
        // Of two fields with one name the last one counts.
        let (_, json) = self.0.iter().rev().find(|(name, _)| name == field)?;
        let json = json.get();
        (json != "null").then_some(json)
    }

    /// Whether no field has another name than these.
    pub(super) fn only(&self, names: &[&str]) -> bool {
        self.0.iter().all(|(name, _)| names.contains(&&**name))
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

    /// The text in a field. What has no escapes is not copied.
    fn string(&self, field: &str) -> Option<Cow<'a, str>> {
        let json = self.json(field)?;
        let plain = json.strip_prefix('"').and_then(|it| it.strip_suffix('"'));
        match plain {
            Some(plain) if !plain.contains('\\') => Some(Cow::Borrowed(plain)),
            _ => serde_json::from_str(json).ok().map(Cow::Owned),
        }
    }

    /// Text that has to be there.
    pub(super) fn text(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<String, Unreadable> {
        self.string(field)
            .map(Cow::into_owned)
            .ok_or_else(|| self.wrong(field, wanted))
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
        self.string(field)
            .and_then(|text| parse(&text).ok())
            .ok_or_else(|| self.wrong(field, wanted))
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
        self.string(field)
            .and_then(|text| from_id(&text))
            .ok_or_else(|| self.wrong(field, wanted))
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
        self.json(field)
            .and_then(|json| serde_json::from_str(json).ok())
            .ok_or_else(|| self.wrong(field, wanted))
    }

    /// Yes or no; no when the field is absent.
    pub(super) fn flag(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<bool, Unreadable> {
        match self.json(field) {
            None | Some("false") => Ok(false),
            Some("true") => Ok(true),
            Some(_) => Err(self.wrong(field, wanted)),
        }
    }

    /// A small whole number that may be there.
    pub(super) fn optional_small(
        &self,
        field: &'static str,
        wanted: &'static str,
    ) -> Result<Option<i32>, Unreadable> {
        match self.json(field) {
            None => Ok(None),
            Some(_) => i32::try_from(self.whole(field, wanted)?)
                .map(Some)
                .map_err(|_| self.wrong(field, wanted)),
        }
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
