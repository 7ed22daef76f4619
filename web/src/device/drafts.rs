//! What is being typed and is not accepted yet. Every keystroke is kept, so
//! that a reload, a phone call or a flat battery loses nothing.

use leptos::prelude::*;

use super::local;

const PREFIX: &str = "thoubook-draft/";

/// The text of one field, kept as it is typed and back after a reload.
///
/// Where the browser keeps nothing, it lives as long as the page does.
#[derive(Clone, Copy, PartialEq, Eq)]
pub struct Draft {
    key: StoredValue<String>,
    text: RwSignal<String>,
}

impl Draft {
    /// The draft of a field: `name` says which screen, part and field it is.
    #[must_use]
    pub fn of(name: impl AsRef<str>) -> Self {
        Self::or(name, "")
    }

    /// The draft of a field that starts out with a text.
    #[must_use]
    pub fn or(name: impl AsRef<str>, start: &str) -> Self {
        let key = format!("{PREFIX}{}", name.as_ref());
        let text = local::get(&key).unwrap_or_else(|| start.to_owned());
        Self {
            key: StoredValue::new(key),
            text: RwSignal::new(text),
        }
    }

    /// The text, followed.
    #[must_use]
    pub fn get(self) -> String {
        self.text.get()
    }

    /// The text, not followed.
    #[must_use]
    pub fn now(self) -> String {
        self.text.get_untracked()
    }

    /// Takes a new text and keeps it.
    pub fn set(self, text: String) {
        self.key.with_value(|key| {
            // A full or blocked storage is told about where facts are kept;
            // the text itself stays on the screen.
            let _ = local::put(key, &text);
        });
        self.text.set(text);
    }

    /// Forgets the draft: it was accepted, or thrown away on purpose.
    pub fn clear(self) {
        self.key.with_value(|key| local::remove(key));
        self.text.set(String::new());
    }
}

/// Forgets every draft whose name begins so.
pub fn forget(beginning: &str) {
    for key in local::keys(&format!("{PREFIX}{beginning}")) {
        local::remove(&key);
    }
}

#[cfg(all(test, target_arch = "wasm32"))]
mod tests {
    use super::*;
    use wasm_bindgen_test::wasm_bindgen_test;

    #[wasm_bindgen_test]
    fn a_draft_is_back_after_the_page_was_thrown_away() {
        let first = Owner::new();
        first.with(|| Draft::of("test/bore").set("2.448".to_owned()));
        first.cleanup();
        let second = Owner::new();
        second.with(|| {
            let draft = Draft::of("test/bore");
            assert_eq!(draft.now(), "2.448");
            draft.clear();
            assert_eq!(Draft::or("test/bore", "in").now(), "in");
        });
    }

    #[wasm_bindgen_test]
    fn only_the_drafts_asked_for_are_forgotten() {
        let owner = Owner::new();
        owner.with(|| {
            Draft::of("test/a/one").set("1".to_owned());
            Draft::of("test/b/one").set("2".to_owned());
            forget("test/a/");
            assert_eq!(Draft::of("test/a/one").now(), "");
            assert_eq!(Draft::of("test/b/one").now(), "2");
            forget("test/");
        });
    }
}
