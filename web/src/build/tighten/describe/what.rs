//! What the group is: its name, what it holds, the kind of bolt.

use assembly_core::quantity::{Kind as Quantity, unit_or_usual};
use assembly_core::tightening::group::Holds;
use assembly_core::tightening::kind::Kind;
use assembly_core::tightening::retorque::Between;
use build_journal::fold::tightening::Field;
use leptos::prelude::*;

use super::{Describing, NAME_AT_MOST, TEXT_AT_MOST};
use crate::device::settings::settings;
use crate::kit::field::QuantityField;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece};
use crate::kit::section::{fold, section};
use crate::kit::words::word_field;

/// Parts that a group can be at, one by one.
const PER: [(&str, &str); 5] = [
    ("engine", "once on the engine"),
    ("bank", "one on each bank"),
    ("main", "one on each main"),
    ("rod", "one on each rod"),
    ("cylinder", "one on each cylinder"),
];

/// The first step.
pub fn what(describing: Describing) -> El {
    let typing = describing.typing;
    let name = word_field(
        "label",
        "What you call it",
        "Such as head bolts.",
        typing.label,
        NAME_AT_MOST,
        move || describing.name_wrong(),
    );
    let holds = pick(
        "holds",
        "What it holds",
        "",
        Holds::ALL
            .map(|one| Word::of(one.id(), one.label()))
            .to_vec(),
        move || typing.holds.get(),
        move |id| typing.holds.set(id),
    );
    let per = pick(
        "per",
        "How often there is such a group",
        "",
        PER.map(|(id, label)| Word::of(id, label)).to_vec(),
        move || typing.per.get(),
        move |id| typing.per.set(id),
    );
    let kind = pick(
        "kind",
        "Kind of fastener",
        "By the sheet. What an interruption means, and how often a bolt may be used, hang on it.",
        Kind::ALL
            .map(|one| Word::of(one.id(), one.label()))
            .to_vec(),
        move || typing.kind.get(),
        move |id| typing.kind.set(id),
    );
    let between = pick(
        "between",
        "What lies between the parts",
        "",
        Between::ALL
            .map(|one| Word::of(one.id(), one.label()))
            .to_vec(),
        move || describing.sheet.with(|sheet| sheet.between.id().to_owned()),
        move |id| typing.between.set(id),
    );
    section("1 · What it is")
        .with(name)
        .with(holds)
        .with(kind)
        .with(describing.wrong(Field::Fastener))
        .with(between)
        .with(per)
        .with(Piece::when(
            move || typing.kind.get() == Kind::StretchMeasured.id(),
            move || stretch(describing).into(),
        ))
        .with(fold("Thread, length, uses, page", details(describing)))
}

fn stretch(describing: Describing) -> El {
    let typing = describing.typing;
    let inch = || unit_or_usual(Quantity::Length, "in");
    let field = |name, label, draft, how| {
        QuantityField::new(name, label, draft, Quantity::Length, inch)
            .how(how)
            .piece()
    };
    section("The stretch, by the bolt's own sheet")
        .with(field(
            "stretch-low",
            "At least",
            typing.stretch_low,
            "How much longer it has to be when tight.",
        ))
        .with(field(
            "stretch-high",
            "At most",
            typing.stretch_high,
            "Longer than this is scrap.",
        ))
        .with(field(
            "set-at-most",
            "Lasting at most",
            typing.set_at_most,
            "How much longer it may be for good, loose again. Longer is scrap.",
        ))
        .with(describing.wrong(Field::Stretch))
}

fn details(describing: Describing) -> Piece {
    let typing = describing.typing;
    let words =
        |name, label, hint, draft| word_field(name, label, hint, draft, TEXT_AT_MOST, || None);
    let settings = settings();
    let unit = move || {
        settings
            .units()
            .of(Quantity::Length, assembly_core::describe::UsualUnits::SIZE)
    };
    let count = || unit_or_usual(Quantity::Count, "");
    let length = QuantityField::new(
        "bolt-length",
        "Length under the head",
        typing.length,
        Quantity::Length,
        unit,
    );
    let uses = QuantityField::new(
        "uses",
        "Uses the sheet allows",
        typing.uses,
        Quantity::Count,
        count,
    )
    .how("Empty: a stretch bolt once, others as often as they are sound.");
    Piece::all([
        words(
            "thread",
            "Thread",
            "Such as 7/16-14 or M10x1.25.",
            typing.thread,
        )
        .into(),
        length.piece().into(),
        uses.piece().into(),
        words("source", "Which sheet and page", "", typing.source).into(),
    ])
}
