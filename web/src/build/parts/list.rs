//! The page of the parts list.

use build_journal::fact::{PartListed, PartMoved, PartStage};
use build_journal::fold::ListedPart;
use build_journal::{Body, PartId};
use build_plan::supply::{SUPPLIES, Supply};
use leptos::prelude::*;

use super::card::card;
use super::form::{PartForm, part_form};
use super::place::Place;
use super::totals::Totals;
use super::words::is_late;
use crate::build::Opened;
use crate::device::chance;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::{fold, section};
use crate::route::{Page, Route};

/// The page of the parts.
#[must_use]
pub fn parts_page() -> Piece {
    let opened: Opened = expect_context();
    let parts = Memo::new(move |_| opened.build.with(|build| build.bought.parts.clone()));
    // The part that is being changed.
    let doing = RwSignal::new(None::<PartId>);
    let totals = Memo::new(move |_| parts.with(|parts| Totals::of(parts, chance::today())));
    let order = link(
        "quiet",
        &Route::Build(opened.id.to_string(), Page::Parts(Place::Shop)),
        "Machine-work order",
    )
    .test("to-shop");
    let counted = Piece::live(move || {
        if parts.with(Vec::is_empty) {
            let words =
                "Nothing is on the list yet. Take what the plan asks for below, or add your own.";
            return note("lead", words).test("no-parts").into();
        }
        totals.with(|totals| {
            Piece::all([
                note("lead", &totals.parts_words())
                    .test("parts-total")
                    .into(),
                totals
                    .money_words()
                    .map(|words| p(&words).test("money-total"))
                    .into(),
            ])
        })
    });
    let list = Piece::live(move || parts.with(|parts| untrack(|| groups(opened, doing, parts))));
    let own = part_form(PartForm::new(opened, None, move || {}));
    Piece::all([
        el("div")
            .class("title-row")
            .with(title("Parts"))
            .with(order)
            .into(),
        counted,
        list,
        asked_for(opened, parts),
        fold("Add a part of your own", own).test("add-part").into(),
    ])
}

/// Parts that are waited for come first, the late ones before all others.
fn groups(opened: Opened, doing: RwSignal<Option<PartId>>, parts: &[ListedPart]) -> Piece {
    let today = chance::today();
    let group = |title: &str, belongs: &dyn Fn(&ListedPart) -> bool| -> Piece {
        let mut own: Vec<&ListedPart> = parts.iter().filter(|part| belongs(part)).collect();
        own.sort_by_key(|part| {
            (
                !is_late(part, today),
                part.promised.is_none(),
                part.promised,
            )
        });
        let rows: Vec<Piece> = own
            .into_iter()
            .map(|part| card(opened, doing, part, today))
            .collect();
        (!rows.is_empty())
            .then(|| section(title).with(el("ul").class("entries").all(rows)))
            .into()
    };
    Piece::all([
        group("Waited for", &ListedPart::is_waited_for),
        group("On the shelf", &|part| {
            matches!(part.stage, PartStage::Here | PartStage::Checked)
        }),
        group("Fitted", &|part| part.stage == PartStage::Fitted),
        group("Gone back", &|part| part.stage == PartStage::Returned),
    ])
}

/// What the plan asks for and nobody has put on the list.
fn asked_for(opened: Opened, parts: Memo<Vec<ListedPart>>) -> Piece {
    let missing = Memo::new(move |_| {
        parts.with(|parts| {
            let listed = |supply: &&&Supply| {
                let is = |part: &ListedPart| part.listed.supply.as_deref() == Some(supply.id);
                !parts.iter().any(is)
            };
            SUPPLIES.iter().filter(listed).copied().collect::<Vec<_>>()
        })
    });
    Piece::live(move || {
        let missing = missing.get();
        untrack(|| {
            let rows: Vec<Piece> = missing
                .iter()
                .map(|supply| supply_row(opened, supply).into())
                .collect();
            (!rows.is_empty())
                .then(|| {
                    section("The plan asks for these, too")
                        .with(el("ul").class("entries").all(rows))
                })
                .into()
        })
    })
}

fn supply_row(opened: Opened, supply: &'static Supply) -> El {
    let list = move || put_on_list(opened, supply);
    let want = button(
        "",
        "On the list",
        &format!("want-{}", supply.id),
        move || {
            let _ = list();
        },
    )
    .attr("aria-label", &format!("put {} on the list", supply.label));
    let here = button(
        "quiet",
        "I have it here",
        &format!("have-{}", supply.id),
        move || {
            if let Some(part) = list() {
                let _ = opened.write_down(Body::PartMoved(PartMoved {
                    part,
                    stage: PartStage::Here,
                    promised: None,
                    words: None,
                }));
            }
        },
    )
    .attr("aria-label", &format!("{}: I have it here", supply.label));
    el("li")
        .class("card")
        .with(p("").with(el("strong").text(&capital(supply.label))))
        .with(p(supply.why))
        .with(row([want.into(), here.into()]))
}

fn put_on_list(opened: Opened, supply: &Supply) -> Option<PartId> {
    let part = PartId::from_random(chance::bits());
    opened.write_down(Body::PartListed(PartListed {
        part,
        name: supply.label.to_owned(),
        supply: Some(supply.id.to_owned()),
        place: None,
        size: None,
        quantity: None,
        supplier: None,
        price: None,
        lot: None,
    }))?;
    Some(part)
}
