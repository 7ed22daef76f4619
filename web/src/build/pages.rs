//! The frame around the pages of a build.

use build_journal::{BuildId, Journal};
use leptos::prelude::*;

use super::Opened;
use super::book::book;
use super::measure::{bearing_page, limits_page, mains, tools_page};
use super::merge::merge_page;
use super::oil::{self, oil_page};
use super::parts::{self, parts_page};
use super::shop::shop_page;
use super::tighten::{self, tighten};
use super::tonight::{self, plan_pages};
use crate::device::keeping::{Keeping, keeping};
use crate::kit::piece::{El, Piece, el, link, note, p, title};
use crate::kit::toast::toast;
use crate::route::{Page, Route};

/// A build's pages, or word of why there are none.
#[must_use]
pub fn build_pages(id: &str, page: Memo<Page>) -> Piece {
    let keeping = keeping();
    let id = BuildId::parse(id).ok();
    let found = Memo::new(move |_| keeping.build(id?));
    Piece::live(move || {
        match (id, found.get()) {
        (Some(id), Some(journal)) => untrack(|| pages(id, journal, page)),
        _ if !keeping.is_open() => note("lead", "Opening the book…").into(),
        _ => Piece::all([
            title("Not on this device").into(),
            p("This build is not on this device. If it was exported elsewhere, bring the file in on the bench.").into(),
            p("").with(link("", &Route::Bench, "To the bench")).into(),
        ]),
    }
    })
}

/// Which page is shown; one bearing after another is the same page.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Shown {
    Plan,
    Mains,
    Bearing,
    Limits,
    Tools,
    Parts,
    Shop,
    Merge,
    Tighten,
    Oil,
    Book,
}

impl From<Page> for Shown {
    fn from(page: Page) -> Self {
        match page {
            Page::Plan(_) => Self::Plan,
            Page::Mains => Self::Mains,
            Page::Main(_) => Self::Bearing,
            Page::Limits => Self::Limits,
            Page::Tools => Self::Tools,
            Page::Parts(parts::Place::List) => Self::Parts,
            Page::Parts(parts::Place::Shop) => Self::Shop,
            Page::Merge => Self::Merge,
            Page::Tighten(_) => Self::Tighten,
            Page::Oil(_) => Self::Oil,
            Page::Book => Self::Book,
        }
    }
}

impl Shown {
    /// The page whose tab it stands behind.
    const fn tab(self) -> Self {
        match self {
            Self::Bearing => Self::Mains,
            Self::Shop => Self::Parts,
            Self::Merge => Self::Book,
            other => other,
        }
    }
}

fn pages(id: BuildId, journal: RwSignal<Journal>, page: Memo<Page>) -> Piece {
    let keeping = keeping();
    provide_context(Opened::of(id, journal, keeping, toast()));
    let shown = Memo::new(move |_| Shown::from(page.get()));
    let number = Memo::new(move |last: Option<&u8>| match page.get() {
        Page::Main(number) => number,
        _ => last.copied().unwrap_or(1),
    });
    let bolts = Memo::new(move |last: Option<&tighten::Place>| match page.get() {
        Page::Tighten(place) => place,
        _ => last.cloned().unwrap_or(tighten::Place::Groups),
    });
    let planned = Memo::new(move |last: Option<&tonight::Place>| match page.get() {
        Page::Plan(place) => place,
        _ => last.cloned().unwrap_or(tonight::Place::Tonight),
    });
    let oil_place = Memo::new(move |last: Option<&oil::Place>| match page.get() {
        Page::Oil(place) => place,
        _ => last.copied().unwrap_or(oil::Place::Pressure),
    });
    let tab = |to: Page, word: &str| {
        let own = Shown::from(to.clone());
        let here = move || shown.get().tab() == own;
        el("a")
            .attr("href", &Route::Build(id.to_string(), to).to_string())
            .live_attr("aria-current", move || here().then(|| "page".to_owned()))
            .test(&format!("tab-{}", word.to_lowercase()))
            .text(word)
            .into()
    };
    let tabs = el("nav")
        .class("tabs")
        .attr("aria-label", "this build")
        .all([
            tab(Page::Plan(tonight::Place::Tonight), "Tonight"),
            tab(Page::Mains, "Mains"),
            tab(Page::Limits, "Limits"),
            tab(Page::Tools, "Tools"),
            tab(Page::Parts(parts::Place::List), "Parts"),
            tab(Page::Tighten(tighten::Place::Groups), "Tighten"),
            tab(Page::Oil(oil::Place::Pressure), "Oil"),
            tab(Page::Book, "Book"),
        ]);
    let newer = Piece::when(
        move || journal.with(|journal| journal.later_format().is_some()),
        || {
            let words = "A newer version of Thoubook has written in this build. It can be read and exported here; to write in it, use the newer version.";
            note("notice notice-caution", words)
                .test("newer-format")
                .into()
        },
    );
    let page = Piece::live(move || {
        let shown = shown.get();
        untrack(|| match shown {
            Shown::Plan => plan_pages(planned),
            Shown::Mains => mains(),
            Shown::Bearing => bearing_page(number),
            Shown::Limits => limits_page(),
            Shown::Tools => tools_page(),
            Shown::Parts => parts_page(),
            Shown::Shop => shop_page(),
            Shown::Merge => merge_page(),
            Shown::Tighten => tighten(bolts),
            Shown::Oil => oil_page(oil_place),
            Shown::Book => book(),
        })
    });
    Piece::all([tabs.into(), newer, page, kept(keeping).into()])
}

/// Whether all that was written is safe.
fn kept(keeping: Keeping) -> El {
    el("p")
        .class("kept")
        .test("acknowledged")
        .live_attr("data-count", move || {
            Some(keeping.acknowledged().to_string())
        })
        .live_attr("data-on-the-way", move || {
            Some(keeping.on_the_way().to_string())
        })
        .live_text(move || {
            let words = if keeping.on_the_way() > 0 {
                "Being kept…"
            } else if keeping.trouble().vault.is_some() {
                "Not all of it is safe: see the notice above."
            } else {
                "✓ All that is written here is kept on this device."
            };
            words.to_owned()
        })
}
