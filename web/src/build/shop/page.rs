//! The page of the machine-work order.

use build_journal::fact::WorkOrdered;
use build_journal::{Body, WorkId};
use build_plan::step::{By, STEPS, Step};
use leptos::prelude::*;

use super::ordering::{OrderForm, order_form};
use super::work::work_card;
use crate::bench::name_of;
use crate::build::Opened;
use crate::build::parts::Place;
use crate::device::chance;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::{fold, section};
use crate::route::{Page, Route};

/// What is being done to one piece of work.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub enum Doing {
    /// Nothing.
    Nothing,
    /// The words of the order are being changed.
    Changing(WorkId),
    /// A number is being asked for.
    Wanting(WorkId),
    /// The shop's numbers are being typed.
    Receiving(WorkId),
    /// Its stage is being put right, or its day.
    Moving(WorkId),
}

const LEAD: &str = "“Bore it oversize” is no order. Say what came in, the numbers you want, what they are measured to, what has to be left alone, and which numbers you want back.";

/// The page of the machine work.
#[must_use]
pub fn shop_page() -> Piece {
    let opened: Opened = expect_context();
    let doing = RwSignal::new(Doing::Nothing);
    let works = Memo::new(move |_| {
        opened.build.with(|build| {
            let works = build.bought.work.iter();
            works.map(|work| work.ordered.work).collect::<Vec<_>>()
        })
    });
    let print = Piece::when(
        move || !works.with(Vec::is_empty),
        || {
            button("", "Print the order", "print-order", || {
                // A browser that can't print does nothing.
                let _ = window().print();
            })
            .into()
        },
    );
    let back = link(
        "quiet",
        &Route::Build(opened.id.to_string(), Page::Parts(Place::List)),
        "Parts",
    );
    let cards = Piece::live(move || {
        let works = works.get();
        untrack(|| {
            if works.is_empty() {
                return note("lead", "No work is ordered yet.")
                    .test("no-work")
                    .into();
            }
            Piece::all(works.into_iter().map(|work| work_card(opened, doing, work)))
        })
    });
    let own = order_form(OrderForm::new(opened, None, move || {}));
    Piece::all([
        el("div")
            .class("title-row")
            .with(title("Machine-work order"))
            .with(el("div").class("row no-print").with(print).with(back))
            .into(),
        print_head(opened).into(),
        note("lead no-print", LEAD).into(),
        cards,
        el("div")
            .class("section no-print")
            .with(from_the_plan(opened))
            .with(fold("Other work", own).test("add-work"))
            .into(),
        signatures().into(),
    ])
}

/// What stands at the top of the sheet.
fn print_head(opened: Opened) -> El {
    let about = move || {
        opened.build.with(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            let engine =
                engine.map(|one| format!(", {}, {} cylinders", one.layout(), one.cylinders()));
            format!("{}{}", name_of(build), engine.unwrap_or_default())
        })
    };
    el("div")
        .class("only-print")
        .with(p("").with(el("strong").live_text(about)))
        .with(p(&format!("Printed on {}", chance::today())))
}

/// What stands at its foot, to be filled in at the counter.
fn signatures() -> El {
    let line = |words: &str| p(words).class("sign-line").into();
    el("div").class("only-print signatures").all([
        line("Taken in on, by"),
        line("Promised for"),
        line("Price"),
        line("Handed back on, by"),
    ])
}

/// The work that the plan knows and nobody has ordered.
fn from_the_plan(opened: Opened) -> Piece {
    let open = Memo::new(move |_| {
        opened.build.with(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            let ordered = |step: &Step| {
                let is = |work: &build_journal::fold::ShopWork| {
                    work.ordered.step.as_deref() == Some(step.id)
                };
                build.bought.work.iter().any(is)
            };
            STEPS
                .iter()
                .filter(|step| step.by == By::Shop && !ordered(step))
                .filter(|step| engine.is_none_or(|engine| step.when.applies_to(engine)))
                .map(|step| (step.id, step.label))
                .collect::<Vec<_>>()
        })
    });
    Piece::live(move || {
        let open = open.get();
        untrack(|| {
            let buttons: Vec<Piece> = open
                .into_iter()
                .map(|(id, label)| {
                    button("quiet", label, &format!("order-{id}"), move || {
                        let _ = opened.write_down(Body::WorkOrdered(order_of(id, label)));
                    })
                    .into()
                })
                .collect();
            (!buttons.is_empty())
                .then(|| section("Put on the order").with(row(buttons)))
                .into()
        })
    })
}

fn order_of(step: &str, label: &str) -> WorkOrdered {
    WorkOrdered {
        work: WorkId::from_random(chance::bits()),
        what: label.to_owned(),
        step: Some(step.to_owned()),
        shop: None,
        brought: None,
        leave_alone: None,
        conditions: None,
        price: None,
    }
}
