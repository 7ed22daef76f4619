//! One main bearing: where to measure next, what was read, and what comes of it.

use build_plan::map::Part;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER, MAIN_OIL_CLEARANCE};
use build_plan::{At, Main, Place};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::asked::Asked;
use super::cold::warmth;
use super::entry::entry;
use super::order::{self, Spot};
use super::places::{Choosing, places};
use super::result::{Shown, result};
use super::standing::Stands;
use super::tool_choice::InHand;
use super::tools::foreseen;
use crate::build::Opened;
use crate::build::book::photo_strip;
use crate::build::map;
use crate::build::placing::put_here;
use crate::build::round::drawn_shape;
use crate::device::settings::settings;
use crate::kit::keypad::pad;
use crate::kit::piece::{El, Piece, el, link, note, p, title};
use crate::kit::section::fold_later;
use crate::kit::toast::toast;
use crate::kit::verdict::{Mark, shape};
use crate::route::{self, Page, Route};

/// One main bearing, counted from the front.
#[must_use]
pub fn bearing_page(number: Memo<u8>) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let pad = pad();
    let main = Memo::new(move |_| {
        let number = number.get();
        opened.build.with(|build| {
            let mut mains = build.mains.iter().map(|bearing| bearing.main);
            mains.find(|main| main.number() == number)
        })
    });
    let shown = Memo::new(move |_| {
        let (main, units) = (main.get()?, settings.units());
        opened.build.with(|build| {
            let bearing = build.mains.iter().find(|bearing| bearing.main == main)?;
            Some(Shown::of(build, bearing, units))
        })
    });
    Effect::new(move |_| {
        pad.show_live(shown.with(|shown| {
            let shown = shown.as_ref().filter(|shown| shown.missing.is_empty())?;
            let stands = &shown.stands;
            stands.judged.as_ref()?;
            Some((stands.mark, stands.line()))
        }));
    });
    on_cleanup(move || pad.show_live(None));
    let head = Piece::live(move || match main.get() {
        Some(main) => untrack(|| heading(opened, main, shown)),
        None => Piece::all([
            title("No such main").into(),
            p(&format!("This engine has no main {}.", number.get())).into(),
        ]),
    });
    let body = Piece::when(
        move || main.with(Option::is_some),
        move || {
            let others = Piece::live(move || on_the_map(opened, number.get()).into());
            let right = el("div")
                .class("half answer")
                .test("answer")
                .with(result(opened, shown))
                .with(others);
            let left = el("div").class("half").with(measuring(opened, number));
            let at = move || Some(At::Main(number.get()));
            let halves = el("div").class("halves").with(left).with(right);
            Piece::all([
                halves.into(),
                drawn_shape(opened, &MAIN_JOURNAL_DIAMETER, at),
                drawn_shape(opened, &MAIN_BEARING_BORE, at),
                put_here(opened, &MAIN_OIL_CLEARANCE, at),
            ])
        },
    );
    let photos = Piece::when(
        move || main.with(Option::is_some),
        move || {
            let strip = move || {
                Piece::live(move || {
                    let place = Place::main(number.get());
                    untrack(|| photo_strip(None, Some(place)))
                })
            };
            fold_later("Photos of this main", strip).into()
        },
    );
    Piece::all([head, body, photos])
}

/// The way to everything else that is measured on this main.
fn on_the_map(opened: Opened, number: u8) -> El {
    let part = map::Place::Part(Part::At(At::Main(number)).id());
    let to = Route::Build(opened.id.to_string(), Page::Map(part));
    el("p")
        .class("no-print")
        .with(link("quiet", &to, &format!("All measures of main {number}")).test("on-the-map"))
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
                    route::go_when_painted(Route::Build(opened.id.to_string(), Page::Main(main)));
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
    let cold = warmth(&MAIN_OIL_CLEARANCE, move || Some(At::Main(number.get())));
    Piece::all([foreseen(), cold, panel, places(choosing)])
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
        // The last reading may look like a slip, too.
        .with(Asked::of(opened).piece())
        .with(next)
        .with(note("hint", "Tap a place below to read it again."))
}

/// Which main, the ones beside it, and how it stands.
fn heading(opened: Opened, main: Main, shown: Memo<Option<Shown>>) -> Piece {
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
    let mark = Memo::new(move |_| shown.with(|shown| mark_of(shown.as_ref())));
    let line = move || {
        shown.with(|shown| {
            let stands = shown.as_ref().map(|shown| &shown.stands);
            stands.map_or_else(String::new, Stands::line)
        })
    };
    let name = title(&format!("Main {}", main.number())).with(
        el("span")
            .class("title-of")
            .text(&format!(" of {}", main.of())),
    );
    let standing = el("p")
        .class("standing")
        .test("standing")
        .live_attr("data-verdict", move || Some(mark.get().name().to_owned()))
        .live(move || shape(mark.get()).into())
        .with(el("span").live_text(line));
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

fn mark_of(shown: Option<&Shown>) -> Mark {
    shown.map_or(Mark::None, |shown| shown.stands.mark)
}
