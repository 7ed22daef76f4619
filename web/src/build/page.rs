//! Opens a build, and what all its pages have in common.

use std::sync::Arc;

use build_journal::{Body, Build, BuildId, FactId, Journal, fold};
use leptos::prelude::*;

use super::book::Book;
use super::limits::LimitsPage;
use super::mains::{Bearing, Mains};
use super::tools::ToolsPage;
use crate::device::keeping::keeping;
use crate::kit::toast::{Notice, toast};
use crate::route::{Page, Route};

/// The build that is open.
#[derive(Clone, Copy)]
pub struct Opened {
    /// Its id.
    pub id: BuildId,
    /// Its facts.
    pub journal: RwSignal<Journal>,
    /// What follows from them.
    pub build: Memo<Arc<Build>>,
}

impl Opened {
    /// Writes something down. What cannot be written is said, and nothing typed is lost.
    pub fn write_down(self, body: Body) -> Option<FactId> {
        match keeping().write_down(self.id, body) {
            Ok(id) => Some(id),
            Err(error) => {
                toast().say(error.to_string());
                None
            }
        }
    }

    /// The address of one of its pages.
    #[must_use]
    pub fn to(self, page: Page) -> String {
        Route::Build(self.id.to_string(), page).to_string()
    }
}

/// The build that is open.
#[must_use]
pub fn opened() -> Opened {
    expect_context()
}

/// A page of a build.
#[component]
pub fn BuildPage(
    /// Its id, as the address says it.
    id: String,
    /// Which page.
    page: Page,
) -> impl IntoView {
    let keeping = keeping();
    let known = BuildId::parse(&id).ok();
    let journal = Memo::new(move |_| known.and_then(|id| keeping.build(id)));
    view! {
        {move || match (known, journal.get()) {
            (Some(id), Some(journal)) => view! { <Open id journal page=page.clone() /> }.into_any(),
            _ if known.is_some() && !keeping.is_open() => view! { <p class="lead">"Opening the book…"</p> }.into_any(),
            _ => view! {
                <h1>"Not on this device"</h1>
                <p>"This build is not kept here. If it is on another device, export it there and take the file in on the bench."</p>
                <p><a class="button" href=Route::Bench.to_string()>"To the bench"</a></p>
            }
            .into_any(),
        }}
    }
}

#[component]
fn Open(id: BuildId, journal: RwSignal<Journal>, page: Page) -> impl IntoView {
    let build = Memo::new(move |_| Arc::new(journal.with(fold)));
    let opened = Opened { id, journal, build };
    provide_context(opened);
    let name = move || {
        build.with(|build| {
            build
                .engine
                .as_ref()
                .map_or_else(|| "An engine not described".to_owned(), |one| one.engine.name().to_owned())
        })
    };
    let here = page.clone();
    let tab = move |to: Page, words: &'static str| {
        let on = match (&to, &here) {
            (Page::Mains, Page::Main(_)) => true,
            (to, here) => to == here,
        };
        view! { <a href=opened.to(to) aria-current=on.then_some("page")>{words}</a> }
    };
    view! {
        <div class="build-head">
            <p class="build-name" data-test="build-name">{name}</p>
            <KeptMark />
        </div>
        <nav class="ways" aria-label="pages of this build">
            {tab(Page::Mains, "Main bearings")}
            {tab(Page::Limits, "Limits")}
            {tab(Page::Tools, "Tools")}
            {tab(Page::Book, "Book")}
        </nav>
        <Problems />
        {match page {
            Page::Mains => view! { <Mains /> }.into_any(),
            Page::Main(number) => view! { <Bearing number /> }.into_any(),
            Page::Limits => view! { <LimitsPage /> }.into_any(),
            Page::Tools => view! { <ToolsPage /> }.into_any(),
            Page::Book => view! { <Book /> }.into_any(),
        }}
    }
}

/// Whether everything written down is safe.
#[component]
fn KeptMark() -> impl IntoView {
    let keeping = keeping();
    let words = move || {
        let trouble = keeping.trouble();
        match (keeping.on_the_way(), trouble.vault, trouble.shelf) {
            (_, Some(_), Some(_)) => "not kept: only on this screen",
            (_, Some(_), None) => "kept once only",
            (0, None, _) => "kept",
            _ => "keeping…",
        }
    };
    view! {
        <p
            class="kept"
            role="status"
            data-test="acknowledged"
            data-count=move || keeping.acknowledged().to_string()
            class:trouble=move || keeping.trouble().vault.is_some()
        >
            {words}
        </p>
    }
}

/// What is wrong with the storage or the facts, where it cannot be overlooked.
#[component]
fn Problems() -> impl IntoView {
    let keeping = keeping();
    let opened = opened();
    let storage = move || {
        let trouble = keeping.trouble();
        trouble.vault.or(trouble.shelf).map(|error| {
            view! {
                <Notice tone="danger" test="storage-notice">
                    <p>{error.to_string()}</p>
                </Notice>
            }
        })
    };
    let odd = move || {
        let aside = opened.journal.with(|journal| journal.set_aside().count());
        let problems = opened.build.with(|build| build.problems.len() + build.elsewhere.len());
        (aside + problems > 0).then(|| {
            view! {
                <Notice tone="caution" test="odd-notice">
                    <p>
                        "Some of this build cannot be used as it is. Nothing is lost: it stands in the "
                        <a href=opened.to(Page::Book)>"book"</a>
                        "."
                    </p>
                </Notice>
            }
        })
    };
    view! {
        {storage}
        {odd}
    }
}
