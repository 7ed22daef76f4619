//! One main bearing: where to measure next, what was read, and what comes of it.

use build_journal::fold::{Build, MainBearing, Standing};
use build_plan::Place;
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::entry::entry;
use super::order::{self, Spot};
use super::places::{Choosing, places};
use super::result::result;
use super::standing::Stands;
use super::tool_choice::InHand;
use super::tools::foreseen;
use crate::build::Opened;
use crate::build::book::photo_strip;
use crate::device::settings::{UnitClass, settings};
use crate::kit::keypad::pad;
use crate::kit::piece::{El, Piece, el, link, note, p, title};
use crate::kit::section::fold;
use crate::kit::toast::toast;
use crate::kit::verdict::shape;
use crate::route::{self, Page, Route};

/// One main bearing, counted from the front.
#[must_use]
pub fn bearing_page(number: Memo<u8>) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let pad = pad();
    let bearing = Memo::new(move |_| {
        let number = number.get();
        opened.build.with(|build| {
            build
                .mains
                .iter()
                .find(|bearing| bearing.main.number() == number)
                .cloned()
        })
    });
    Effect::new(move |_| {
        let live = bearing.get().and_then(|bearing| {
            if !matches!(bearing.standing, Standing::Judged(_)) {
                return None;
            }
            let stands = opened
                .build
                .with(|build| Stands::of(build, &bearing, settings.units()));
            stands.judged.as_ref()?;
            Some((stands.mark, stands.line()))
        });
        pad.show_live(live);
    });
    on_cleanup(move || pad.show_live(None));
    let head = Piece::live(move || match bearing.get() {
        Some(bearing) => opened
            .build
            .with(|build| heading(opened, build, &bearing, settings.units())),
        None => Piece::all([
            title("No such main").into(),
            p(&format!("This engine has no main {}.", number.get())).into(),
        ]),
    });
    let body = Piece::when(
        move || bearing.with(Option::is_some),
        move || {
            let result = Piece::live(move || {
                let bearing = bearing.get();
                opened.build.with(|build| {
                    bearing
                        .map(|bearing| result(build, &bearing, settings.units()))
                        .into()
                })
            });
            let right = el("div").class("half answer").test("answer").with(result);
            let left = el("div").class("half").with(measuring(opened, number));
            el("div").class("halves").with(left).with(right).into()
        },
    );
    let photos = Piece::when(
        move || bearing.with(Option::is_some),
        move || {
            let strip = Piece::live(move || {
                let place = Place::main(number.get());
                untrack(|| photo_strip(None, Some(place)))
            });
            fold("Photos of this main", strip).into()
        },
    );
    Piece::all([head, body, photos])
}

/// The place in hand and all the others.
fn measuring(opened: Opened, number: Memo<u8>) -> Piece {
    let pad = pad();
    // The place that was taken in hand by a tap; else the first open one.
    let chosen = RwSignal::new(None::<Spot>);
    let spot = Memo::new(move |_| {
        let (number, chosen) = (number.get(), chosen.get());
        match chosen {
            Some(spot) if spot.main() == Some(number) => Some(spot),
            _ => opened.build.with_untracked(|build| {
                order::first_open_on(build, number, chosen.map(|spot| spot.measure))
            }),
        }
    });
    let toast = toast();
    let in_hand = InHand::of_mains(opened);
    let go_on = Callback::new(move |from: Spot| {
        let next = opened
            .build
            .with_untracked(|build| order::next_after(build, &from));
        if let Some(next) = next
            && next.measure.id != from.measure.id
        {
            let left = opened
                .build
                .with_untracked(|build| order::left_of(build, from.measure));
            toast.say(turn_words(&from, &next, left));
        }
        match next {
            Some(next) if next.main() == Some(number.get_untracked()) => chosen.set(Some(next)),
            Some(next) => {
                // Chosen stays behind: it says which measure comes first there.
                chosen.set(Some(from));
                if let Some(main) = next.main() {
                    route::go(&Route::Build(opened.id.to_string(), Page::Main(main)));
                }
            }
            None => {
                pad.close();
                // The panel then says that all is done.
                chosen.set(None);
            }
        }
    });
    let choose = Callback::new(move |spot: Spot| {
        chosen.set(Some(spot));
        // The field is there already, or focuses itself when it comes.
        if let Some(field) = document().get_element_by_id("reading") {
            let field: HtmlElement = field.unchecked_into();
            let _ = field.focus();
        }
    });
    let panel = Piece::live(move || {
        let any = Memo::new(move |_| spot.with(Option::is_some));
        if !any.get() {
            return all_measured(opened, number).into();
        }
        untrack(|| {
            let first = spot.get()?;
            let held = Memo::new(move |last: Option<&Spot>| {
                spot.get().or_else(|| last.copied()).unwrap_or(first)
            });
            Some(entry(held, in_hand, go_on))
        })
        .into()
    });
    let choosing = Choosing {
        number,
        spot,
        choose,
    };
    Piece::all([foreseen(), panel, places(choosing)])
}

/// What is said when the work turns from one measure to the next.
fn turn_words(from: &Spot, next: &Spot, left: usize) -> String {
    let what = from.measure.label;
    let done = match left {
        0 => format!("Done: every {what} is measured."),
        1 => format!("One {what} is left out; it comes round again."),
        more => format!("{more} places of the {what} are left out; they come round again."),
    };
    format!("{done} Next: {}.", next.measure.label)
}

/// Said in place of the panel when nothing on this main is left to measure:
/// that it is done, and what comes next.
fn all_measured(opened: Opened, number: Memo<u8>) -> El {
    let page = move |page: Page| Route::Build(opened.id.to_string(), page);
    let next = Piece::live(move || {
        opened.build.with(|build| {
            let here = number.get();
            let open = order::first_open(build).and_then(|spot| Some((spot, spot.main()?)));
            let has_limits = build
                .mains
                .iter()
                .any(|bearing| bearing.main.number() == here && !bearing.limits.is_empty());
            let (said, to, word) = match open {
                Some((spot, main)) => (
                    format!("Next: {} of main {main}.", spot.measure.label),
                    Page::Main(main),
                    "Go on",
                ),
                None if !has_limits => (
                    "So is every other main. Next: the limits, from the maker's sheet.".to_owned(),
                    Page::Limits,
                    "To the limits",
                ),
                None => (
                    "So is every other main. Next: how each of them stands.".to_owned(),
                    Page::Mains,
                    "To all mains",
                ),
            };
            let go = link("", &page(to), word).test("what-next");
            Piece::all([p(&said).into(), el("div").class("row").with(go).into()])
        })
    });
    el("section")
        .class("entry-panel")
        .attr("role", "status")
        .test("all-measured")
        .with(
            el("p").class("entry-where").live_text(move || {
                format!("Done: every place on main {} is measured.", number.get())
            }),
        )
        .with(next)
        .with(note("hint", "Tap a place below to read it again."))
}

/// Which main, the ones beside it, and how it stands.
fn heading(opened: Opened, build: &Build, bearing: &MainBearing, units: UnitClass) -> Piece {
    let main = bearing.main;
    let beside = |number: u8, face: String| {
        let to = Route::Build(opened.id.to_string(), Page::Main(number));
        link("quiet", &to, &face).attr("aria-label", &format!("main {number}"))
    };
    let before = (!main.is_front()).then(|| {
        let number = main.number() - 1;
        beside(number, format!("‹ {number}"))
    });
    let after = (!main.is_rear()).then(|| {
        let number = main.number() + 1;
        beside(number, format!("{number} ›"))
    });
    let stands = Stands::of(build, bearing, units);
    let (mark, words) = (stands.mark, stands.line());
    let name = title(&format!("Main {}", main.number())).with(
        el("span")
            .class("title-of")
            .text(&format!(" of {}", main.of())),
    );
    let standing = el("p")
        .class("standing")
        .test("standing")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(el("span").text(&words));
    Piece::all([
        el("div")
            .class("title-row")
            .with(before)
            .with(name)
            .with(after)
            .into(),
        standing.into(),
    ])
}
