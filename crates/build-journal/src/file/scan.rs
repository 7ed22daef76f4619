//! Walks through a file once, keeping what was whole when it breaks off.

use std::fmt;

use serde::de::{DeserializeSeed, Deserializer, IgnoredAny, MapAccess, SeqAccess, Visitor};
use serde_json::value::RawValue;

/// What was met on the way through a file.
#[derive(Default)]
pub(super) struct Scanned<'a> {
    pub(super) format: Option<&'a str>,
    pub(super) version: Option<&'a str>,
    pub(super) build: Option<&'a str>,
    pub(super) facts: Option<Vec<&'a str>>,
    pub(super) set_aside: Option<Vec<&'a str>>,
}

/// Reads a file into what is handed in, so that it outlives an error.
pub(super) struct Walk<'s, 'a>(pub(super) &'s mut Scanned<'a>);

impl<'a> DeserializeSeed<'a> for Walk<'_, 'a> {
    type Value = ();

    fn deserialize<D: Deserializer<'a>>(self, from: D) -> Result<(), D::Error> {
        from.deserialize_map(self)
    }
}

impl<'a> Visitor<'a> for Walk<'_, 'a> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("an exported build")
    }

    fn visit_map<M: MapAccess<'a>>(self, mut map: M) -> Result<(), M::Error> {
        while let Some(name) = map.next_key::<String>()? {
            match name.as_str() {
                "format" => self.0.format = Some(map.next_value::<&RawValue>()?.get()),
                "version" => self.0.version = Some(map.next_value::<&RawValue>()?.get()),
                "build" => self.0.build = Some(map.next_value::<&RawValue>()?.get()),
                "facts" => map.next_value_seed(List(self.0.facts.get_or_insert_default()))?,
                "set_aside" => {
                    map.next_value_seed(List(self.0.set_aside.get_or_insert_default()))?;
                }
                _ => {
                    map.next_value::<IgnoredAny>()?;
                }
            }
        }
        Ok(())
    }
}

struct List<'s, 'a>(&'s mut Vec<&'a str>);

impl<'a> DeserializeSeed<'a> for List<'_, 'a> {
    type Value = ();

    fn deserialize<D: Deserializer<'a>>(self, from: D) -> Result<(), D::Error> {
        from.deserialize_seq(self)
    }
}

impl<'a> Visitor<'a> for List<'_, 'a> {
    type Value = ();

    fn expecting(&self, f: &mut fmt::Formatter) -> fmt::Result {
        f.write_str("a list")
    }

    fn visit_seq<S: SeqAccess<'a>>(self, mut items: S) -> Result<(), S::Error> {
        while let Some(item) = items.next_element::<&RawValue>()? {
            self.0.push(item.get());
        }
        Ok(())
    }
}
