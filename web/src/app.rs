//! The frame around every screen: the header, notices, the keypad, and which
//! screen is shown.

use leptos::prelude::*;
use web_sys::HtmlElement;

use crate::bench::bench;
use crate::build::round::Place;
use crate::device::exports::Exports;
use crate::device::keeping::{Keeping, keeping};
use crate::device::settings::{Settings, Theme, UnitClass, settings};
use crate::device::update::Update;
use crate::kit::keypad::{Pad, keypad};
use crate::kit::piece::{El, Piece, button, el, link, p, row, title};
use crate::kit::toast::{Toast, notice, toast_place};
use crate::later::{build_pages_later, new_build_later, trade_words_later};
use crate::quick::{quick_check, quick_checks};
use crate::route::{self, Page, Route};

/// The whole app.
#[must_use]
pub fn app() -> Piece {
    provide_context(Settings::load());
    provide_context(Pad::new());
    provide_context(Toast::new());
    provide_context(Exports::load());
    provide_context(Keeping::open());
    let update = Update::follow();
    let route = route::follow();
    el("div")
        .class("app")
        .with(header(route))
        .with(update_notice(update))
        .with(storage_notice())
        .with(screens(route))
        .with(keypad())
        .with(toast_place())
        .into()
}

/// The screens. All pages of a build are one screen, so that what is worked out
/// from its facts stands while one goes from page to page.
fn screens(route: ReadSignal<Route>) -> El {
    let screen = Memo::new(move |_| match route.get() {
        Route::Build(id, _) => Route::Build(id, Page::Mains),
        other => other,
    });
    let page = Memo::new(move |last: Option<&Page>| match route.get() {
        Route::Build(_, page) => page,
        _ => last.cloned().unwrap_or(Page::Mains),
    });
    let main = el("main")
        .class("screen")
        .attr("tabindex", "-1")
        .live(move || {
            let screen = screen.get();
            untrack(|| match screen {
                Route::Bench => bench(),
                Route::NewBuild => new_build_later(),
                Route::QuickChecks => quick_checks(),
                Route::QuickCheck(id) => quick_check(&id),
                Route::Words => trade_words_later(),
                Route::Build(id, _) => build_pages_later(id, page),
                Route::Nowhere(_) => nowhere(),
            })
        });
    // A new address starts at the top of its page, for the eye and the ear. One
    // bearing after another is the same page: the field stays in hand.
    let element: HtmlElement = main.element();
    Effect::new(move |last: Option<Route>| {
        let now = match route.get() {
            Route::Build(id, Page::Main(_)) => Route::Build(id, Page::Main(0)),
            Route::Build(id, Page::Measure(Place::Round(measure, _))) => {
                Route::Build(id, Page::Measure(Place::Round(measure, 0)))
            }
            other => other,
        };
        if last.is_some_and(|last| last != now) {
            window().scroll_to_with_x_and_y(0.0, 0.0);
            let _ = element.focus();
        }
        now
    });
    main
}

fn nowhere() -> Piece {
    Piece::all([
        title("Nothing is here").into(),
        p("This address leads to no page of the book. Your builds are where they were.").into(),
        p("").with(link("", &Route::Bench, "To the bench")).into(),
    ])
}

fn header(route: ReadSignal<Route>) -> El {
    let up = move || {
        let (to, word) = match route.get() {
            Route::Bench => return el("span").class("wordmark").text("Thoubook").into(),
            Route::QuickCheck(_) => (Route::QuickChecks, "Checks"),
            _ => (Route::Bench, "Bench"),
        };
        el("a")
            .class("up")
            .attr("href", &to.to_string())
            .test("up")
            .with(el("span").attr("aria-hidden", "true").text("‹"))
            .text(word)
            .into()
    };
    let bar = el("nav")
        .class("header-row")
        .attr("aria-label", "the book")
        .live(up)
        .with(el("span").class("header-space"))
        .with(words_link())
        .with(unit_switch())
        .with(theme_switch());
    el("header").class("header").with(bar)
}

/// The way to the words of the trade, from everywhere.
fn words_link() -> El {
    el("a")
        .class("switch")
        .attr("href", &Route::Words.to_string())
        .attr("aria-label", "words of the trade")
        .test("words-link")
        .text("A–Z")
}

fn switch(test: &str, act: impl FnMut() + 'static) -> El {
    el("button")
        .attr("type", "button")
        .class("switch")
        .test(test)
        .click(act)
}

fn unit_switch() -> El {
    let settings = settings();
    let word = move |class: UnitClass, word: &str| {
        el("span")
            .live_class("on", move || settings.units() == class)
            .text(word)
    };
    switch("units", move || {
        settings.choose_units(match untrack(|| settings.units()) {
            UnitClass::Inch => UnitClass::Metric,
            UnitClass::Metric => UnitClass::Inch,
        });
    })
    .live_attr("aria-label", move || {
        let words = match settings.units() {
            UnitClass::Inch => "lone numbers are inches; switch to millimetres",
            UnitClass::Metric => "lone numbers are millimetres; switch to inches",
        };
        Some(words.to_owned())
    })
    .with(word(UnitClass::Inch, "in"))
    .with(word(UnitClass::Metric, "mm"))
}

fn theme_switch() -> El {
    let settings = settings();
    switch("theme", move || {
        settings.choose_theme(match untrack(|| settings.theme()) {
            Theme::Device => Theme::Light,
            Theme::Light => Theme::Dark,
            Theme::Dark => Theme::Device,
        });
    })
    .live_attr("aria-label", move || {
        let words = match settings.theme() {
            Theme::Device => "light or dark as the device says; switch to light",
            Theme::Light => "light, for the sun; switch to dark",
            Theme::Dark => "dark, for the gloom; switch to as the device says",
        };
        Some(words.to_owned())
    })
    .live_text(move || {
        let face = match settings.theme() {
            Theme::Device => "◐",
            Theme::Light => "☀",
            Theme::Dark => "☾",
        };
        face.to_owned()
    })
}

fn update_notice(update: Update) -> Piece {
    Piece::when(
        move || update.is_ready(),
        move || {
            let choices = row([
                button("", "Use it now", "update-now", move || update.now()).into(),
                button("quiet", "Not now", "update-later", move || update.later()).into(),
            ]);
            notice("note", "update-notice")
                .with(p("A newer version of Thoubook is ready. It takes over when you say so; everything written down stays."))
                .with(choices)
                .into()
        },
    )
}

/// Says loudly when the browser does not keep what is written.
fn storage_notice() -> Piece {
    let keeping = keeping();
    Piece::live(move || {
        let trouble = keeping.trouble();
        let (tone, words) = match (trouble.shelf, trouble.vault) {
            (None, None) => return Piece::none(),
            (Some(shelf), Some(_)) => (
                "danger",
                format!(
                    "Nothing you write is kept on this device. {shelf} It is on this screen and in the export, and nowhere else."
                ),
            ),
            (None, Some(vault)) => (
                "danger",
                format!(
                    "What you write may be lost if the browser crashes. {vault} Export before you stop."
                ),
            ),
            (Some(shelf), None) => (
                "caution",
                format!(
                    "One of the two copies of the book can't be written. {shelf} The other copy has everything."
                ),
            ),
        };
        notice(tone, "storage-notice").with(p(&words)).into()
    })
}
