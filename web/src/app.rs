//! The frame around every screen: the header, notices, the keypad, and which
//! screen is shown.

use leptos::html::Main;
use leptos::prelude::*;

use crate::bench::{Bench, NewBuild};
use crate::build::BuildPages;
use crate::device::exports::Exports;
use crate::device::keeping::{Keeping, keeping};
use crate::device::settings::{Settings, Theme, UnitClass, settings};
use crate::device::update::Update;
use crate::kit::keypad::{Keypad, Pad};
use crate::kit::toast::{Notice, Toast, ToastPlace};
use crate::quick::{QuickCheck, QuickChecks};
use crate::route::{self, Page, Route};

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    provide_context(Settings::load());
    provide_context(Pad::new());
    provide_context(Toast::new());
    provide_context(Exports::load());
    provide_context(Keeping::open());
    let update = Update::follow();
    let route = route::follow();
    view! {
        <div class="app">
            <Header route />
            <UpdateNotice update />
            <StorageNotice />
            <Screens route />
            <Keypad />
            <ToastPlace />
        </div>
    }
}

/// The screens. All pages of a build are one screen, so that what is worked out
/// from its facts stands while one goes from page to page.
#[component]
fn Screens(route: ReadSignal<Route>) -> impl IntoView {
    let screen = Memo::new(move |_| match route.get() {
        Route::Build(id, _) => Route::Build(id, Page::Mains),
        other => other,
    });
    let page = Memo::new(move |last: Option<&Page>| match route.get() {
        Route::Build(_, page) => page,
        _ => last.cloned().unwrap_or(Page::Mains),
    });
    let main: NodeRef<Main> = NodeRef::new();
    // A new address starts at the top of its page, for the eye and the ear. One
    // bearing after another is the same page: the field stays in hand.
    Effect::new(move |last: Option<Route>| {
        let now = match route.get() {
            Route::Build(id, Page::Main(_)) => Route::Build(id, Page::Main(0)),
            other => other,
        };
        if last.is_some_and(|last| last != now)
            && let Some(main) = main.get_untracked()
        {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            let _ = main.focus();
        }
        now
    });
    view! {
        <main class="screen" tabindex="-1" node_ref=main>
            {move || match screen.get() {
                Route::Bench => view! { <Bench /> }.into_any(),
                Route::NewBuild => view! { <NewBuild /> }.into_any(),
                Route::QuickChecks => view! { <QuickChecks /> }.into_any(),
                Route::QuickCheck(id) => view! { <QuickCheck id /> }.into_any(),
                Route::Build(id, _) => view! { <BuildPages id page /> }.into_any(),
                Route::Nowhere(_) => view! { <Nowhere /> }.into_any(),
            }}
        </main>
    }
}

#[component]
fn Nowhere() -> impl IntoView {
    view! {
        <h1>"Nothing is here"</h1>
        <p>"This address leads to no page of the book. Your builds are where they were."</p>
        <p><a class="button" href="#/">"To the bench"</a></p>
    }
}

#[component]
fn Header(route: ReadSignal<Route>) -> impl IntoView {
    let up = move || match route.get() {
        Route::Bench => None,
        Route::QuickCheck(_) => Some((Route::QuickChecks, "Quick checks")),
        _ => Some((Route::Bench, "Bench")),
    };
    view! {
        <header class="header">
            <nav class="header-row" aria-label="the book">
                {move || match up() {
                    None => view! { <span class="wordmark">"Thoubook"</span> }.into_any(),
                    Some((to, word)) => view! {
                        <a class="up" href=to.to_string() data-test="up">
                            <span aria-hidden="true">"‹ "</span>{word}
                        </a>
                    }.into_any(),
                }}
                <span class="header-space"></span>
                <UnitSwitch />
                <ThemeSwitch />
            </nav>
        </header>
    }
}

#[component]
fn UnitSwitch() -> impl IntoView {
    let settings = settings();
    let other = move || match settings.units() {
        UnitClass::Inch => UnitClass::Metric,
        UnitClass::Metric => UnitClass::Inch,
    };
    view! {
        <button
            type="button"
            class="switch"
            data-test="units"
            aria-label=move || match settings.units() {
                UnitClass::Inch => "lone numbers are inches; switch to millimetres",
                UnitClass::Metric => "lone numbers are millimetres; switch to inches",
            }
            on:click=move |_| settings.choose_units(other())
        >
            <span class:on=move || settings.units() == UnitClass::Inch>"in"</span>
            <span class:on=move || settings.units() == UnitClass::Metric>"mm"</span>
        </button>
    }
}

#[component]
fn ThemeSwitch() -> impl IntoView {
    let settings = settings();
    let (next, face, name) = (
        move || match settings.theme() {
            Theme::Device => Theme::Light,
            Theme::Light => Theme::Dark,
            Theme::Dark => Theme::Device,
        },
        move || match settings.theme() {
            Theme::Device => "◐",
            Theme::Light => "☀",
            Theme::Dark => "☾",
        },
        move || match settings.theme() {
            Theme::Device => "light or dark as the device says; switch to light",
            Theme::Light => "light, for the sun; switch to dark",
            Theme::Dark => "dark, for the gloom; switch to as the device says",
        },
    );
    view! {
        <button
            type="button"
            class="switch"
            data-test="theme"
            aria-label=name
            on:click=move |_| settings.choose_theme(next())
        >
            <span>{face}</span>
        </button>
    }
}

#[component]
fn UpdateNotice(update: Update) -> impl IntoView {
    view! {
        <Show when=move || update.is_ready()>
            <Notice tone="note" test="update-notice">
                <p>"A newer version of Thoubook is ready. It takes over when you say so; everything written down stays."</p>
                <div class="row">
                    <button type="button" class="button" data-test="update-now" on:click=move |_| update.now()>
                        "Use it now"
                    </button>
                    <button type="button" class="button quiet" on:click=move |_| update.later()>
                        "Not now"
                    </button>
                </div>
            </Notice>
        </Show>
    }
}

/// Says loudly when the browser does not keep what is written.
#[component]
fn StorageNotice() -> impl IntoView {
    let keeping = keeping();
    move || {
        let trouble = keeping.trouble();
        match (trouble.shelf, trouble.vault) {
            (None, None) => None,
            (Some(shelf), Some(_)) => Some((
                "danger",
                format!("Nothing you write is kept on this device. {shelf} It is on this screen and in the export, and nowhere else."),
            )),
            (None, Some(vault)) => Some((
                "danger",
                format!("What you write may be lost if the browser crashes. {vault} Export before you stop."),
            )),
            (Some(shelf), None) => Some((
                "caution",
                format!("One of the two copies of the book can't be written. {shelf} The other copy has everything."),
            )),
        }
        .map(|(tone, words)| view! {
            <Notice tone test="storage-notice">
                <p>{words}</p>
            </Notice>
        })
    }
}
