//! A field for a day of the calendar.

use build_journal::Day;
use leptos::prelude::event_target_value;

use super::keypad::pad;
use super::piece::{El, el};
use crate::device::drafts::Draft;

/// The day that is typed: nothing, a day, or something that is none.
///
/// # Errors
/// A sentence, when the text is no day.
pub fn read_day(text: &str) -> Result<Option<Day>, String> {
    let text = text.trim();
    if text.is_empty() {
        return Ok(None);
    }
    Day::read(text).map(Some).ok_or_else(|| {
        "That is no day of the calendar. Write it as year-month-day, as in 2026-12-04.".to_owned()
    })
}

/// A labelled field for a day, with the browser's own calendar where it has one.
#[must_use]
pub fn day_field(name: &str, label: &str, draft: Draft) -> El {
    let pad = pad();
    let message = format!("{name}-says");
    let input = el("input")
        .attr("id", name)
        .attr("data-field", "day")
        .test(&format!("field-{name}"))
        .attr("type", "date")
        .attr("placeholder", "2026-12-04")
        .attr("aria-describedby", &message)
        .live_property("value", move || draft.get().into())
        .on("input", move |event| draft.set(event_target_value(&event)))
        .on("focus", move |_| pad.close());
    let says = el("p")
        .class("field-says wrong")
        .attr("id", &message)
        .attr("aria-live", "polite")
        .test(&format!("says-{name}"))
        .live_text(move || read_day(&draft.get()).err().unwrap_or_default());
    el("div")
        .class("field")
        .with(el("label").attr("for", name).text(label))
        .with(input)
        .with(says)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_read_and_anything_else_says_how_to_write_one() {
        assert_eq!(read_day("  "), Ok(None));
        assert_eq!(read_day("2026-12-04"), Ok(Day::read("2026-12-04")));
        let said = read_day("4.12.").unwrap_err();
        assert!(said.contains("2026-12-04"), "{said}");
        assert!(read_day("2026-02-30").is_err());
    }
}
