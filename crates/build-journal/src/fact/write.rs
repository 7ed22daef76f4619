//! Writes JSON objects field by field, in the order a person would read them.

use std::fmt::{Display, Write as _};

use crate::id::FactId;

/// A JSON object in the making.
pub(crate) struct Line(String);

impl Line {
    /// An object with nothing in it yet.
    pub(crate) fn new() -> Self {
        Self("{".to_owned())
    }

    fn name(&mut self, name: &str) {
        if self.0.len() > 1 {
            self.0.push(',');
        }
        push_string(&mut self.0, name);
        self.0.push(':');
    }

    /// The same with a field that holds text.
    pub(crate) fn text(mut self, name: &str, text: &str) -> Self {
        self.name(name);
        push_string(&mut self.0, text);
        self
    }

    /// The same with a field that holds text, if there is any.
    pub(crate) fn optional_text(self, name: &str, text: Option<&str>) -> Self {
        match text {
            Some(text) => self.text(name, text),
            None => self,
        }
    }

    /// The same with a field that holds an id.
    pub(crate) fn id(self, name: &str, id: impl Display) -> Self {
        self.text(name, &id.to_string())
    }

    /// The same with a field that holds an id, if there is one.
    pub(crate) fn optional_id(self, name: &str, id: Option<impl Display>) -> Self {
        match id {
            Some(id) => self.id(name, id),
            None => self,
        }
    }

    /// The same with a field that holds a whole number.
    pub(crate) fn whole(mut self, name: &str, number: i64) -> Self {
        self.name(name);
        // Writing to a string cannot fail.
        let _ = write!(self.0, "{number}");
        self
    }

    /// The same with a field that holds a count, if there is one.
    pub(crate) fn optional_count(self, name: &str, count: Option<u32>) -> Self {
        match count {
            Some(count) => self.whole(name, i64::from(count)),
            None => self,
        }
    }

    /// The same with a field that holds a list of counts, if there are any.
    pub(crate) fn counts(self, name: &str, counts: &[u32]) -> Self {
        if counts.is_empty() {
            return self;
        }
        let all: Vec<String> = counts.iter().map(u32::to_string).collect();
        self.json(name, &format!("[{}]", all.join(",")))
    }

    /// The same with a field that holds a list of pairs, if there are any.
    pub(crate) fn pairs(self, name: &str, pairs: &[[i32; 2]]) -> Self {
        if pairs.is_empty() {
            return self;
        }
        let all: Vec<String> = pairs.iter().map(|[x, y]| format!("[{x},{y}]")).collect();
        self.json(name, &format!("[{}]", all.join(",")))
    }

    /// The same with a field that holds a list of texts, if there are any.
    pub(crate) fn texts(mut self, name: &str, texts: &[String]) -> Self {
        if texts.is_empty() {
            return self;
        }
        self.name(name);
        let mut before = '[';
        for text in texts {
            self.0.push(before);
            push_string(&mut self.0, text);
            before = ',';
        }
        self.0.push(']');
        self
    }

    /// The same with a field that holds a list of these JSON texts, if there are
    /// any.
    pub(crate) fn items(self, name: &str, items: &[String]) -> Self {
        if items.is_empty() {
            return self;
        }
        self.json(name, &format!("[{}]", items.join(",")))
    }

    /// The same with a field that holds a list of ids of facts.
    pub(crate) fn facts(mut self, name: &str, facts: &[FactId]) -> Self {
        self.name(name);
        self.0.push('[');
        for (at, fact) in facts.iter().enumerate() {
            // Writing to a string cannot fail.
            let _ = write!(self.0, "{}\"{fact}\"", if at > 0 { "," } else { "" });
        }
        self.0.push(']');
        self
    }

    /// The same with a field that holds this JSON.
    pub(crate) fn json(mut self, name: &str, json: &str) -> Self {
        self.name(name);
        self.0.push_str(json);
        self
    }

    /// The whole object.
    pub(crate) fn end(mut self) -> String {
        self.0.push('}');
        self.0
    }
}

/// Appends a JSON string (RFC 8259, 7). Letters of all languages stay as they are.
pub(crate) fn push_string(out: &mut String, text: &str) {
    out.push('"');
    for letter in text.chars() {
        match letter {
            '"' => out.push_str("\\\""),
            '\\' => out.push_str("\\\\"),
            '\n' => out.push_str("\\n"),
            '\r' => out.push_str("\\r"),
            '\t' => out.push_str("\\t"),
            control if control < ' ' => {
                let _ = write!(out, "\\u{:04x}", u32::from(control));
            }
            letter => out.push(letter),
        }
    }
    out.push('"');
}
