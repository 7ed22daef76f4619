//! A round: one measure over all its parts. The place in hand, the number, what
//! it comes to, and all the others.

use build_journal::fold::Build;
use build_plan::{At, Measure};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::parts::{Choosing, places};
use super::place::Place;
use super::result::result;
use super::shape::drawn_shape;
use super::standing::{Stands, stands};
use super::strip::strip;
use super::walk;
use crate::build::Opened;
use crate::build::measure::asked::Asked;
use crate::build::measure::cold::warmth;
use crate::build::measure::entry::entry;
use crate::build::measure::order::Spot;
use crate::build::measure::tool_choice::InHand;
use crate::build::placing::put_here;
use crate::device::settings::settings;
use crate::kit::aside::worked_out_later;
use crate::kit::judged::{capital, window_words};
use crate::kit::keypad::pad;
use crate::kit::piece::{El, Piece, el, link, note, p, title};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, shape};
use crate::route::{self, Page, Route};

/// A round of a measure; `part` counts its parts from 1.
#[must_use]
pub fn round(measure: &'static Measure, part: Memo<usize>) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let pad = pad();
    let parts = Memo::new(move |_| opened.build.with(|build| walk::parts(build, measure)));
    let at = Memo::new(move |_| parts.with(|parts| parts.get(part.get() - 1).copied()));
    let here = Memo::new(move |_| {
        let at = at.get()?;
        let units = settings.units();
        Some(opened.build.with(|build| stands(build, measure, at, units)))
    });
    Effect::new(move |_| {
        let live = |stands: &Stands| {
            let judged = stands.judged.as_ref()?;
            let mark = stands.mark();
            let words = if mark == Mark::None {
                judged.live_words()
            } else {
                stands.line()
            };
            Some((mark, words))
        };
        pad.show_live(here.with(|stands| stands.as_ref().and_then(live)));
    });
    on_cleanup(move || pad.show_live(None));
    let head = Piece::live(move || match at.get() {
        Some(at) => heading(opened, measure, (part.get(), parts.with(Vec::len)), at),
        None => Piece::all([
            title(&capital(measure.label)).into(),
            p("This engine has no such part.").into(),
        ]),
    });
    let standing = Piece::live(move || here.with(|one| one.as_ref().map(standing).into()));
    // The strip goes over every part, and nobody waits for the others.
    let every = worked_out_later(
        move || {
            opened.build.track();
            let _ = settings.units();
        },
        move || {
            let units = settings.units();
            let of = |build: &Build| {
                let parts = walk::parts(build, measure).into_iter();
                let all = parts.map(|at| (at, stands(build, measure, at, units)));
                all.collect::<Vec<_>>()
            };
            opened.build.with(of)
        },
    );
    let all = Piece::live(move || {
        every.with(|all| {
            let to = |number: usize| address(opened, measure, number).to_string();
            if all.len() < 2 {
                return Piece::none();
            }
            section("All of them").with(strip(all, at.get(), to)).into()
        })
    });
    let whole = Piece::when(
        move || at.with(Option::is_some),
        move || {
            let result = Piece::live(move || {
                let units = settings.units();
                let at = at.get();
                here.with(|stands| {
                    let shown = stands.as_ref().zip(at);
                    shown
                        .map(|(stands, at)| result(opened, stands, (measure, at), units))
                        .into()
                })
            });
            let left = el("div").class("half").with(if measure.can_be_read() {
                measuring(opened, measure, (part, at))
            } else {
                worked_out_from(opened, measure)
            });
            let right = el("div").class("half answer").test("answer").with(result);
            let halves = el("div").class("halves").with(left).with(right);
            let cold = warmth(measure, move || at.get());
            Piece::all([
                limits_line(opened, measure).into(),
                cold,
                halves.into(),
                drawn_shape(opened, measure, move || at.get()),
                put_here(opened, measure, move || at.get()),
            ])
        },
    );
    Piece::all([head, standing, whole, all])
}

/// The address of a part in a round.
fn address(opened: Opened, measure: &Measure, part: usize) -> Route {
    let place = Place::Round(measure.id.to_owned(), part);
    Route::Build(opened.id.to_string(), Page::Measure(place))
}

/// Which part, and the ones beside it.
fn heading(opened: Opened, measure: &'static Measure, (part, of): (usize, usize), at: At) -> Piece {
    let beside = |number: usize, face: String| {
        link("quiet", &address(opened, measure, number), &face)
            .attr("aria-label", &format!("number {number} of {of}"))
    };
    let before = (part > 1).then(|| beside(part - 1, format!("‹ {}", part - 1)));
    let after = (part < of).then(|| beside(part + 1, format!("{} ›", part + 1)));
    let name = title(&capital(&at.to_string())).with(
        el("span")
            .class("title-of")
            .text(&format!(" {} of {of}", part)),
    );
    Piece::all([
        note("hint", &capital(measure.label)).test("measure").into(),
        el("div")
            .class("title-row")
            .with(before)
            .with(name)
            .with(after)
            .into(),
    ])
}

fn standing(stands: &Stands) -> El {
    let mark = stands.mark();
    let words = stands.line();
    el("p")
        .class("standing")
        .test("standing")
        .attr("data-verdict", mark.name())
        .with(shape(mark))
        .with(el("span").text(&words))
}

/// The place in hand and all others of the part.
fn measuring(
    opened: Opened,
    measure: &'static Measure,
    (part, at): (Memo<usize>, Memo<Option<At>>),
) -> Piece {
    let pad = pad();
    let in_hand = InHand::of(opened, [measure]);
    // The place that was taken in hand by a tap; else the first open one.
    let chosen = RwSignal::new(None::<Spot>);
    let spot = Memo::new(move |_| {
        let (at, chosen) = (at.get()?, chosen.get());
        match chosen {
            Some(spot) if spot.place.at == at => Some(spot),
            _ => {
                let open = |build: &_| walk::first_open_on(build, measure, at);
                opened.build.with_untracked(open)
            }
        }
    });
    let go_on = Callback::new(move |from: Spot| {
        let next = opened
            .build
            .with_untracked(|build| walk::next_after(build, &from));
        match next {
            Some(next) if Some(next.place.at) == at.get_untracked() => chosen.set(Some(next)),
            Some(next) => {
                chosen.set(Some(from));
                let number = opened.build.with_untracked(|build| {
                    let parts = walk::parts(build, measure);
                    parts.iter().position(|part| *part == next.place.at)
                });
                if let Some(number) = number {
                    route::go_when_painted(address(opened, measure, number + 1));
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
    let any = Memo::new(move |_| spot.with(Option::is_some));
    let panel = Piece::live(move || {
        if !any.get() {
            return part_is_done(opened, measure, part).into();
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
        measure,
        at,
        spot,
        choose,
    };
    Piece::all([panel, places(choosing)])
}

/// Said in place of the panel when nothing on this part is left to read.
fn part_is_done(opened: Opened, measure: &'static Measure, part: Memo<usize>) -> El {
    let next = Piece::live(move || {
        let next = opened.build.with(|build| {
            let parts = walk::parts(build, measure);
            let mut order = (0..parts.len()).map(|step| (part.get() + step) % parts.len());
            order.find(|number| {
                parts
                    .get(*number)
                    .is_some_and(|at| walk::first_open_on(build, measure, *at).is_some())
            })
        });
        let (said, to, word) = match next {
            Some(number) => (
                "The round goes on.",
                address(opened, measure, number + 1),
                "Go on",
            ),
            None => (
                "That was the last: the round is done.",
                Route::Build(opened.id.to_string(), Page::Measure(Place::List)),
                "To all measures",
            ),
        };
        let go = link("", &to, word).test("what-next");
        Piece::all([p(said).into(), el("div").class("row").with(go).into()])
    });
    el("section")
        .class("entry-panel")
        .attr("role", "status")
        .test("all-measured")
        .with(note(
            "entry-where",
            "Done: every place of this part is measured.",
        ))
        // The last reading may look like a slip, too.
        .with(Asked::of(opened).piece())
        .with(next)
        .with(note("hint", "Tap a place below to read it again."))
}

/// What the measure is worked out from, each a link to its round.
fn worked_out_from(opened: Opened, measure: &'static Measure) -> Piece {
    let links = measure.sources().into_iter().map(|source| {
        let to = address(opened, source, 1).to_string();
        let left = opened
            .build
            .with_untracked(|build| walk::left(build, source));
        let words = match left {
            0 => "all measured".to_owned(),
            left => format!("{left} still to measure"),
        };
        let link = el("a")
            .class("entry")
            .attr("href", &to)
            .test(&format!("from-{}", source.id))
            .with(el("strong").text(&capital(source.label)))
            .with(el("span").text(&words));
        el("li").with(link).into()
    });
    section("Worked out from")
        .with(el("ul").class("entries").all(links))
        .with(sentences("", &measure.how))
        .into()
}

fn limits_line(opened: Opened, measure: &'static Measure) -> El {
    let settings = settings();
    let to = Page::Measure(Place::Limits(measure.id.to_owned()));
    el("a")
        .class("line")
        .attr("href", &Route::Build(opened.id.to_string(), to).to_string())
        .test("limits-line")
        .live_text(move || {
            let unit = settings.units().of(measure.kind, measure.units);
            opened.build.with(|build| {
                let mut own = build
                    .limits
                    .iter()
                    .filter(|one| one.set.measure == measure.id);
                match (own.next(), own.next()) {
                    (None, _) => "No limits yet: type them from the maker's sheet".to_owned(),
                    (Some(one), None) if let Ok(window) = &one.window => {
                        format!("Limits: {}", window_words(window, unit))
                    }
                    _ => "The limits can't be used as they are: look at them".to_owned(),
                }
            })
        })
}
