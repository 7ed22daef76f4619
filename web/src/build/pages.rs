//! The frame around the pages of a build.

use build_journal::{BuildId, Journal};
use build_plan::Measure;
use leptos::prelude::*;

use super::Opened;
use super::book::book;
use super::map::{self, engine_map};
use super::measure::{bearing_page, limits_page, mains, tools_page};
use super::merge::merge_page;
use super::oil::{self, oil_page};
use super::parts::{self, parts_page};
use super::placing::placing_page;
use super::round;
use super::shop::shop_page;
use super::tighten::{self, tighten};
use super::tonight::{self, plan_pages};
use crate::bench::says_sample;
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
#[derive(Clone, PartialEq, Eq)]
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
    Map,
    Measures,
    Round(String),
    RoundLimits(String),
    Placing(String),
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
            Page::Map(_) => Self::Map,
            Page::Measure(round::Place::List) => Self::Measures,
            Page::Measure(round::Place::Round(measure, _)) => Self::Round(measure),
            Page::Measure(round::Place::Limits(measure)) => Self::RoundLimits(measure),
            Page::Measure(round::Place::Choice(choice)) => Self::Placing(choice),
            Page::Book => Self::Book,
        }
    }
}

impl Shown {
    /// The page whose tab it stands behind.
    fn tab(self) -> Self {
        match self {
            Self::Shop => Self::Parts,
            Self::Merge => Self::Book,
            other => match other.card() {
                Some(_) => Self::Map,
                None => other,
            },
        }
    }

    /// The page whose tab among the pages of measuring it stands behind, when
    /// it is one of those.
    fn card(&self) -> Option<Self> {
        match self {
            Self::Mains | Self::Bearing => Some(Self::Mains),
            Self::Measures | Self::Round(_) | Self::Placing(_) => Some(Self::Measures),
            Self::Limits | Self::RoundLimits(_) => Some(Self::Limits),
            Self::Tools => Some(Self::Tools),
            Self::Map => Some(Self::Map),
            _ => None,
        }
    }

    /// Whether it is a page on which readings are typed, with the keypad open.
    const fn needs_the_room(&self) -> bool {
        matches!(self, Self::Bearing | Self::Round(_))
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
    let on_the_map = Memo::new(move |last: Option<&map::Place>| match page.get() {
        Page::Map(place) => place,
        _ => last.cloned().unwrap_or(map::Place::Whole),
    });
    let part = Memo::new(move |last: Option<&usize>| match page.get() {
        Page::Measure(round::Place::Round(_, part)) => part,
        _ => last.copied().unwrap_or(1),
    });
    let tabs = tabs(id, shown);
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
            Shown::Map => engine_map(on_the_map),
            Shown::Measures => round::list(),
            Shown::Round(id) => of_measure(&id, |measure| round::round(measure, part)),
            Shown::RoundLimits(id) => of_measure(&id, round::round_limits),
            Shown::Placing(id) => placing(&id),
            Shown::Book => book(),
        })
    });
    Piece::all([
        tabs,
        says_sample(id).into(),
        newer,
        page,
        kept(keeping).into(),
    ])
}

/// The tabs of a build, and a second row of them where things are measured.
fn tabs(id: BuildId, shown: Memo<Shown>) -> Piece {
    let tab = move |to: Page, word: &str, here: fn(Shown) -> Shown| {
        let own = Shown::from(to.clone());
        let here = move || here(shown.get()) == own;
        el("a")
            .attr("href", &Route::Build(id.to_string(), to).to_string())
            .live_attr("aria-current", move || here().then(|| "page".to_owned()))
            .test(&format!("tab-{}", word.to_lowercase()))
            .text(word)
            .into()
    };
    let all = [
        (Page::Plan(tonight::Place::Tonight), "Tonight"),
        (Page::Map(map::Place::Whole), "Measure"),
        (Page::Tighten(tighten::Place::Groups), "Tighten"),
        (Page::Oil(oil::Place::Pressure), "Oil"),
        (Page::Parts(parts::Place::List), "Parts"),
        (Page::Book, "Book"),
    ];
    let row = el("nav")
        .class("tabs")
        .attr("aria-label", "this build")
        .all(all.map(|(to, word)| tab(to, word, Shown::tab)));
    let cards = move || {
        let all = [
            (Page::Map(map::Place::Whole), "Map"),
            (Page::Measure(round::Place::List), "All"),
            (Page::Mains, "Mains"),
            (Page::Limits, "Limits"),
            (Page::Tools, "Tools"),
        ];
        el("nav")
            .class("tabs cards")
            .attr("aria-label", "measuring")
            .all(all.map(|(to, word)| tab(to, word, |shown| shown.card().unwrap_or(shown))))
            .into()
    };
    let measuring = move || shown.with(|shown| shown.card().is_some() && !shown.needs_the_room());
    Piece::all([row.into(), Piece::when(measuring, cards)])
}

/// The page of a measure, or word that there is none of that name.
fn of_measure(id: &str, show: impl FnOnce(&'static Measure) -> Piece) -> Piece {
    let opened: Opened = expect_context();
    let found = opened.build.with_untracked(|build| build.plan.measure(id));
    found.map_or_else(
        || {
            Piece::all([
                title("No such measure").into(),
                p("This version knows no measure of that name.").into(),
            ])
        },
        show,
    )
}

/// The page of a choice, or word that there is none of that name.
fn placing(id: &str) -> Piece {
    build_plan::choice::choice(id).map_or_else(
        || {
            Piece::all([
                title("No such choice").into(),
                p("This version knows no choice of that name.").into(),
            ])
        },
        placing_page,
    )
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
