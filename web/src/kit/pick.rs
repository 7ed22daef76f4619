//! One of some words, as big buttons beside each other.

use leptos::prelude::*;

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

/// A choice among a few words.
#[component]
pub fn Pick(
    /// The group's name, once on a screen.
    #[prop(into)]
    name: String,
    /// The question.
    #[prop(into)]
    label: String,
    /// What there is to pick.
    words: Vec<Word>,
    /// The id of the word picked.
    #[prop(into)]
    picked: Signal<String>,
    /// Called with the id of the word that was picked.
    on_pick: Callback<String>,
    /// Something to know before picking.
    #[prop(optional, into)]
    hint: Option<String>,
) -> impl IntoView {
    let group = name.clone();
    let buttons: Vec<_> = words
        .into_iter()
        .map(|word| {
            let (id, own) = (word.id.clone(), word.id.clone());
            let test = format!("{group}-{id}");
            view! {
                <label class="pick-word">
                    <input
                        type="radio"
                        name=group.clone()
                        value=id.clone()
                        data-test=test
                        prop:checked=move || picked.with(|picked| *picked == own)
                        on:change=move |_| on_pick.run(id.clone())
                    />
                    <span>{word.label}</span>
                </label>
            }
        })
        .collect();
    view! {
        <fieldset class="pick">
            <legend>{label}</legend>
            {hint.map(|hint| view! { <p class="hint">{hint}</p> })}
            <div class="pick-words">{buttons}</div>
        </fieldset>
    }
}
