//! A field for words.

use leptos::prelude::event_target_value;

use super::keypad::pad;
use super::piece::{El, el, note};
use crate::device::drafts::Draft;

/// What is wrong with words that are longer than what is kept; `None` when
/// they fit. Counted in characters, without the blanks around them.
#[must_use]
pub fn too_long(text: &str, at_most: usize) -> Option<String> {
    let read = text.trim().chars().count();
    (read > at_most)
        .then(|| format!("{read} characters are too many: at most {at_most} are kept. Shorten it."))
}

/// A labelled field for words, typed with the device's own keyboard. It takes
/// any length and says so when it is too long: the browser's own limit would
/// cut a pasted text off without a word. Whoever writes the words down asks
/// [`too_long`] first.
#[must_use]
pub fn word_field(
    name: &str,
    label: &str,
    hint: &str,
    draft: Draft,
    at_most: usize,
    wrong: impl Fn() -> Option<String> + 'static,
) -> El {
    let pad = pad();
    let message = format!("{name}-says");
    let input = el("input")
        .attr("id", name)
        .attr("data-field", "words")
        .test(&format!("field-{name}"))
        .attr("type", "text")
        .attr("autocomplete", "off")
        .attr("aria-describedby", &message)
        .live_property("value", move || draft.get().into())
        .on("input", move |event| draft.set(event_target_value(&event)))
        .on("focus", move |_| pad.close());
    el("div")
        .class("field")
        .with(el("label").attr("for", name).text(label))
        .with((!hint.is_empty()).then(|| note("hint", hint)))
        .with(input)
        .with(
            el("p")
                .class("field-says wrong")
                .attr("id", &message)
                .attr("aria-live", "polite")
                .test(&format!("says-{name}"))
                .live_text(move || {
                    too_long(&draft.get(), at_most)
                        .or_else(&wrong)
                        .unwrap_or_default()
                }),
        )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_fit_up_to_the_last_character_and_not_one_more() {
        assert_eq!(too_long("  µµµ ", 3), None);
        let said = too_long("µµµµ", 3).unwrap();
        assert!(said.contains("4 characters"), "{said}");
        assert!(said.contains("at most 3"), "{said}");
    }
}
