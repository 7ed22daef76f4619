//! One of some words, as big buttons beside each other.

use super::piece::{El, el, note};

/// One word to pick.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Word {
    /// Stable name.
    pub id: String,
    /// What is read on it.
    pub label: String,
}

impl Word {
    /// A word.
    #[must_use]
    pub fn of(id: impl Into<String>, label: impl Into<String>) -> Self {
        Self {
            id: id.into(),
            label: label.into(),
        }
    }
}

/// A choice among a few words. The name is the group's, once on a screen.
#[must_use]
pub fn pick(
    name: &str,
    label: &str,
    hint: &str,
    words: Vec<Word>,
    picked: impl Fn() -> String + Clone + 'static,
    on_pick: impl Fn(String) + Clone + 'static,
) -> El {
    let words = words.into_iter().map(|word| {
        let (picked, on_pick) = (picked.clone(), on_pick.clone());
        let (own, id) = (word.id.clone(), word.id.clone());
        let input = el("input")
            .attr("type", "radio")
            .attr("name", name)
            .attr("value", &word.id)
            .test(&format!("{name}-{}", word.id))
            .live_property("checked", move || (picked() == own).into())
            .on("change", move |_| on_pick(id.clone()));
        let label = el("label")
            .class("pick-word")
            .with(input)
            .with(el("span").text(&word.label));
        label.into()
    });
    let hint = (!hint.is_empty()).then(|| note("hint", hint));
    el("fieldset")
        .class("pick")
        .with(el("legend").text(label))
        .with(hint)
        .with(el("div").class("pick-words").all(words))
}
