//! A titled part of a screen, and one that opens and closes.

use leptos::prelude::*;

/// A part of a screen with a heading.
#[component]
pub fn Section(
    /// The heading.
    #[prop(into)]
    title: String,
    children: Children,
) -> impl IntoView {
    view! {
        <section class="section">
            <h2>{title}</h2>
            {children()}
        </section>
    }
}

/// A part that stays shut until it is wanted.
#[component]
pub fn Fold(
    /// What is inside, in a few words.
    #[prop(into)]
    title: String,
    /// Open at first.
    #[prop(optional)]
    open: bool,
    children: Children,
) -> impl IntoView {
    view! {
        <details class="fold" open=open>
            <summary>{title}</summary>
            <div class="fold-inside">{children()}</div>
        </details>
    }
}

/// A list of plain sentences.
#[component]
pub fn Sentences(
    /// The sentences.
    #[prop(into)]
    lines: Vec<String>,
    /// A class for the list.
    #[prop(default = "sentences")]
    class: &'static str,
) -> impl IntoView {
    let lines: Vec<_> = lines
        .into_iter()
        .map(|line| view! { <li>{line}</li> })
        .collect();
    view! { <ul class=class>{lines}</ul> }
}
