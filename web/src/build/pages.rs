//! The frame around the pages of a build.

use build_journal::{BuildId, Journal};
use leptos::prelude::*;

use super::Opened;
use super::book::Book;
use super::measure::{Bearing, LimitsPage, Mains, ToolsPage};
use crate::device::keeping::keeping;
use crate::kit::toast::toast;
use crate::route::{Page, Route};

/// A build's pages, or word of why there are none.
#[component]
pub fn BuildPages(
    /// The id in the address.
    #[prop(into)]
    id: Signal<String>,
    /// The page in the address.
    #[prop(into)]
    page: Signal<Page>,
) -> impl IntoView {
    let keeping = keeping();
    let build = Memo::new(move |_| BuildId::parse(&id.get()).ok());
    let found = Memo::new(move |_| keeping.build(build.get()?));
    move || {
        match (build.get(), found.get()) {
        (Some(id), Some(journal)) => view! { <Pages id journal page /> }.into_any(),
        _ if !keeping.is_open() => view! { <p class="lead">"Opening the book…"</p> }.into_any(),
        _ => view! {
            <h1>"Not on this device"</h1>
            <p>"This build is not on this device. If it was exported elsewhere, bring the file in on the bench."</p>
            <p><a class="button" href=Route::Bench.to_string()>"To the bench"</a></p>
        }
        .into_any(),
    }
    }
}

/// Which page is shown; one bearing after another is the same page.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shown {
    Mains,
    Bearing,
    Limits,
    Tools,
    Book,
}

#[component]
fn Pages(id: BuildId, journal: RwSignal<Journal>, page: Signal<Page>) -> impl IntoView {
    let keeping = keeping();
    let opened = Opened::of(id, journal, keeping, toast());
    provide_context(opened);
    let shown = Memo::new(move |_| match page.get() {
        Page::Mains => Shown::Mains,
        Page::Main(_) => Shown::Bearing,
        Page::Limits => Shown::Limits,
        Page::Tools => Shown::Tools,
        Page::Book => Shown::Book,
    });
    let number = Memo::new(move |last: Option<&u8>| match page.get() {
        Page::Main(number) => number,
        _ => last.copied().unwrap_or(1),
    });
    let tab = move |to: Page, word: &'static str| {
        let this = match to {
            Page::Mains | Page::Main(_) => Shown::Mains,
            Page::Limits => Shown::Limits,
            Page::Tools => Shown::Tools,
            Page::Book => Shown::Book,
        };
        let here = move || (shown.get() == this).then_some("page");
        let href = Route::Build(id.to_string(), to).to_string();
        view! { <a href=href aria-current=here data-test=format!("tab-{}", word.to_lowercase())>{word}</a> }
    };
    let later = move || journal.with(Journal::later_format);
    view! {
        <nav class="tabs" aria-label="this build">
            {tab(Page::Mains, "Mains")} {tab(Page::Limits, "Limits")} {tab(Page::Tools, "Tools")}
            {tab(Page::Book, "Book")}
        </nav>
        {move || later().map(|_| view! {
            <p class="notice notice-caution" data-test="newer-format">
                "A newer version of Thoubook has written in this build. It can be read and exported here; to write in it, use the newer version."
            </p>
        })}
        {move || match shown.get() {
            Shown::Mains => view! { <Mains /> }.into_any(),
            Shown::Bearing => view! { <Bearing number /> }.into_any(),
            Shown::Limits => view! { <LimitsPage /> }.into_any(),
            Shown::Tools => view! { <ToolsPage /> }.into_any(),
            Shown::Book => view! { <Book /> }.into_any(),
        }}
        <p
            class="kept"
            data-test="acknowledged"
            data-count=move || keeping.acknowledged().to_string()
            data-on-the-way=move || keeping.on_the_way().to_string()
        >
            {move || if keeping.on_the_way() > 0 {
                "Being kept…"
            } else if keeping.trouble().vault.is_some() {
                "Not all of it is safe: see the notice above."
            } else {
                "✓ All that is written here is kept on this device."
            }}
        </p>
    }
}
