//! Lubricant and wrench: without them a run does not count.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind as Quantity, unit_or_usual};
use build_journal::fold::tightening::{Field, SheetStage, torque_unit};
use leptos::prelude::With as _;

use super::laps::{keep_on_the_list, own_wrenches, wrench_of_each_lap};
use super::{Describing, TEXT_AT_MOST};
use crate::device::settings::settings;
use crate::kit::field::QuantityField;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, note, row};
use crate::kit::section::{section, sentences};
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
        .with(own_wrenches(describing))
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
        .with(mark(
            "wrench-step",
            "From one mark to the next",
            typing.step,
        ))
        .with(row([keep_on_the_list(describing).into()]))
        .with(adapter(describing))
        .with(wrench_of_each_lap(describing))
}

/// A crowfoot or another adapter: three sizes, and what is wrong with them.
fn adapter(describing: Describing) -> Piece {
    let typing = describing.typing;
    let is_on = move || typing.adapter.get() == "on";
    let choice = pick(
        "adapter",
        "Crowfoot or other adapter",
        "One that moves the bolt away from the wrench's drive changes what to set. A straight extension does not; leave out wobble joints.",
        vec![Word::of("off", "none"), Word::of("on", "on the wrench")],
        move || if is_on() { "on" } else { "off" }.to_owned(),
        move |id| {
            typing
                .adapter
                .set(if id == "on" { id } else { String::new() })
        },
    );
    let sizes = Piece::when(is_on, move || {
        let settings = settings();
        let length = move || settings.units().of(Quantity::Length, UsualUnits::SIZE);
        let size = |name, label, draft, how| {
            QuantityField::new(name, label, draft, Quantity::Length, length)
                .how(how)
                .piece()
        };
        let turned = QuantityField::new(
            "adapter-turned",
            "Turned from straight ahead",
            typing.turned,
            Quantity::Angle,
            || unit_or_usual(Quantity::Angle, "°"),
        )
        .how("0 when it lengthens the wrench, 90 square to it, 180 back at the hand. At 90 nothing changes.");
        Piece::all([
            size(
                "adapter-grip",
                "Wrench: grip to drive",
                typing.grip,
                "From the middle of the grip, where the hand pulls, to the middle of the square drive.",
            )
            .into(),
            size(
                "adapter-offset",
                "Adapter: drive to bolt",
                typing.offset,
                "From the middle of the square drive to the middle of the bolt.",
            )
            .into(),
            turned.piece().into(),
            describing.wrong(Field::Adapter),
            settings_of_the_laps(describing),
        ])
    });
    Piece::all([choice.into(), sizes])
}

/// What the wrench is set to in each lap; followed.
fn settings_of_the_laps(describing: Describing) -> Piece {
    Piece::live(move || {
        let lines = describing.sheet.with(|sheet| {
            let adapter = sheet.adapter?;
            let line = |(at, stage): (usize, &SheetStage)| {
                let own = sheet.unit_of(at);
                let adapter = sheet.adapter_of(at).unwrap_or(adapter);
                let (set, unit) = stage.with_an_adapter(own, adapter)?;
                let (wanted, _) = stage.on_the_wrench(own)?;
                let lap = at + 1;
                Some(format!(
                    "Lap {lap}: set {set} {unit} for {wanted} at the bolt."
                ))
            };
            Some(sheet.stages.iter().enumerate().filter_map(line).collect())
        });
        let lines: Vec<String> = lines.unwrap_or_default();
        let shown = (!lines.is_empty()).then(|| sentences("workings", &lines).test("adapter-set"));
        shown.into()
    })
}
