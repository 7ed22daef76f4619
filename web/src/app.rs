//! The frame around every screen: the header, notices, the keypad, and which
//! screen is shown.

use leptos::prelude::*;

use crate::bench::Bench;
use crate::device::settings::{Settings, Theme, UnitClass, settings};
use crate::device::update::Update;
use crate::kit::keypad::{Keypad, Pad};
use crate::kit::toast::{Notice, Toast, ToastPlace};
use crate::quick::{QuickCheck, QuickChecks};
use crate::route::{self, Route};

/// The whole app.
#[component]
pub fn App() -> impl IntoView {
    provide_context(Settings::load());
    provide_context(Pad::new());
    provide_context(Toast::new());
    let update = Update::follow();
    let route = route::follow();
    view! {
        <div class="app">
            <Header route />
            <UpdateNotice update />
            <main class="screen" tabindex="-1">{move || screen(&route.get())}</main>
            <Keypad />
            <ToastPlace />
        </div>
    }
}

fn screen(route: &Route) -> AnyView {
    match route {
        Route::Bench => view! { <Bench /> }.into_any(),
        Route::QuickChecks => view! { <QuickChecks /> }.into_any(),
        Route::QuickCheck(id) => view! { <QuickCheck id=id.clone() /> }.into_any(),
        _ => view! { <Nowhere /> }.into_any(),
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
