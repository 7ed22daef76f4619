//! One piece of work on the order.

use build_journal::WorkId;
use build_journal::fold::ShopWork;
use leptos::prelude::*;

use super::ordering::{OrderForm, order_form};
use super::page::Doing;
use super::received::receiving;
use super::rows::{back, find, rows};
use super::stage::{moving_work, stage_line};
use super::table::table;
use super::wanted::wanting;
use crate::build::Opened;
use crate::device::settings::settings;
use crate::kit::piece::{El, Piece, button, el, note, p, row};

/// A piece of work. It stays as it is while its numbers come in, so that a
/// number that is being typed is not taken from under the finger.
#[must_use]
pub fn work_card(opened: Opened, doing: RwSignal<Doing>, id: WorkId) -> Piece {
    let settings = settings();
    let work = Memo::new(move |_| opened.build.with(|build| find(build, id).cloned()));
    let lines = Memo::new(move |_| {
        let class = settings.units();
        opened.build.with(|build| rows(build, id, class))
    });
    let about = Piece::live(move || work.with(|work| work.as_ref().map(words).into()));
    let numbers = Piece::live(move || {
        lines.with(|lines| {
            if lines.is_empty() {
                let none =
                    "No number is asked for yet: a shop can only hit a number that it was given.";
                return note("wrong no-print", none).test("no-wanted").into();
            }
            untrack(|| table(lines).into())
        })
    });
    let unasked = Piece::live(move || {
        work.with(|work| {
            work.as_ref()
                .filter(|work| !work.unasked.is_empty())
                .map(unasked_numbers)
                .into()
        })
    });
    let done = move || doing.set(Doing::Nothing);
    let form = Piece::live(move || {
        let doing = doing.get();
        untrack(|| {
            let Some(now) = work.get() else {
                return Piece::none();
            };
            match doing {
                Doing::Changing(one) if one == id => {
                    order_form(OrderForm::new(opened, Some(&now.ordered), done)).into()
                }
                Doing::Wanting(one) if one == id => wanting(opened, &now, done).into(),
                Doing::Receiving(one) if one == id => receiving(opened, id, lines, done).into(),
                Doing::Moving(one) if one == id => moving_work(opened, &now, done).into(),
                _ => Piece::none(),
            }
        })
    });
    let toggle = move |to: Doing| {
        doing.update(|now| *now = if *now == to { Doing::Nothing } else { to });
    };
    let receive = Piece::when(
        move || !lines.with(Vec::is_empty),
        move || {
            button("", "Type what came back", "receive", move || {
                toggle(Doing::Receiving(id));
            })
            .into()
        },
    );
    let stage = Piece::live(move || {
        work.with(|work| {
            work.as_ref()
                .map(|work| untrack(|| stage_line(opened, doing, work)))
                .into()
        })
    });
    let act = |words: &str, test: &str, to: Doing| {
        button("quiet", words, test, move || toggle(to)).into()
    };
    el("section")
        .class("card work")
        .test("work")
        .attr("data-work", &id.to_string())
        .with(about)
        .with(stage)
        .with(numbers)
        .with(unasked)
        .with(
            row([
                receive,
                act("Ask for a number", "want-number", Doing::Wanting(id)),
                act("Words…", "change-work", Doing::Changing(id)),
                act("Stage…", "move-work", Doing::Moving(id)),
            ])
            .class("row no-print"),
        )
        .with(el("div").class("no-print").with(form))
        .into()
}

/// What is asked for, in the words of the order.
fn words(work: &ShopWork) -> El {
    let ordered = &work.ordered;
    let lines = [
        ("Done by", &ordered.shop),
        ("Came in with it", &ordered.brought),
        ("Leave alone", &ordered.leave_alone),
        ("The numbers hold with", &ordered.conditions),
        ("Price", &ordered.price),
    ];
    let said = lines.into_iter().filter_map(|(label, text)| {
        let text = text.as_ref()?;
        let line = p("")
            .with(el("strong").text(&format!("{label}: ")))
            .text(text);
        Some(line.into())
    });
    el("div")
        .class("work-words")
        .with(el("h2").text(&ordered.what))
        .all(said)
}

/// Numbers that came back and were not asked for.
fn unasked_numbers(work: &ShopWork) -> El {
    let lines = work.unasked.iter().map(|one| {
        let back = back(one);
        let place = one.place().map(|place| format!(", {place}"));
        let words = format!(
            "{}: {}{}",
            back.words,
            one.as_written.measure.replace('-', " "),
            place.unwrap_or_default()
        );
        el("li").text(&words).into()
    });
    el("div")
        .with(note(
            "hint",
            "The shop also gave these numbers, which nobody asked for:",
        ))
        .with(el("ul").class("sentences").all(lines))
}
