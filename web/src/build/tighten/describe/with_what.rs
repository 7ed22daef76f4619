//! Lubricant and wrench: without them a run does not count.

use assembly_core::quantity::Kind as Quantity;
use build_journal::fold::tightening::{Field, torque_unit};

use super::{Describing, TEXT_AT_MOST};
use crate::kit::field::QuantityField;
use crate::kit::piece::{El, note};
use crate::kit::section::section;
use crate::kit::words::word_field;

/// The fifth step.
pub fn with_what(describing: Describing) -> El {
    let typing = describing.typing;
    let words =
        |name, label, hint, draft| word_field(name, label, hint, draft, TEXT_AT_MOST, || None);
    let unit = move || torque_unit(&typing.unit.get());
    let mark =
        |name, label, draft| QuantityField::new(name, label, draft, Quantity::Torque, unit).piece();
    let lead = "The same torque pulls a third harder oiled than dry: thread and head are written down both. Dry is an answer, too.";
    section("5 · Lubricant and wrench")
        .with(note("lead", lead))
        .with(words(
            "lubricant",
            "On the threads",
            "Such as engine oil, moly, sealer, dry.",
            typing.lubricant,
        ))
        .with(words(
            "under-head",
            "Under the heads or nuts",
            "",
            typing.under_head,
        ))
        .with(words(
            "wrench",
            "Which wrench",
            "Such as the long click wrench.",
            typing.wrench,
        ))
        .with(
            crate::kit::piece::el("div")
                .class("pair")
                .with(mark("wrench-low", "Lowest mark of its scale", typing.low))
                .with(mark(
                    "wrench-high",
                    "Highest mark of its scale",
                    typing.high,
                )),
        )
        .with(describing.wrong(Field::Wrench))
}
