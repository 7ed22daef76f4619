//! The stages: torques, angles, stretches, a field for each.

use assembly_core::fastener::stages::Stage;
use assembly_core::quantity::{Kind as Quantity, Unit, show, unit_or_usual};
use assembly_core::tightening::group::usual_stages;
use build_journal::fact::Origin;
use build_journal::fold::tightening::{Field, torque_unit};
use leptos::prelude::*;

use super::Describing;
use crate::build::tighten::typing::STAGES_AT_MOST;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, note, row};
use crate::kit::section::section;
use crate::kit::toast::toast;

/// Units that a torque wrench has on it.
const UNITS: [&str; 5] = ["ft-lb", "N·m", "in-lb", "kgf·m", "daN·m"];

/// The fourth step.
pub fn stages(describing: Describing) -> El {
    let typing = describing.typing;
    let unit = pick(
        "unit",
        "The unit on the wrench",
        "A foot-pound is twelve inch-pounds: look at the scale itself.",
        UNITS.map(|unit| Word::of(unit, unit)).to_vec(),
        move || typing.unit.get(),
        move |id| typing.unit.set(id),
    );
    let kinds = Memo::new(move |_| typing.stage_kinds.get());
    let fields = Piece::live(move || {
        let kinds = kinds.get();
        Piece::all(
            kinds
                .chars()
                .enumerate()
                .map(|(at, kind)| field(describing, at, kind).into()),
        )
    });
    let add = |kind: char, word: &str, test: &str| {
        button("quiet", word, test, move || {
            let mut kinds = typing.stage_kinds.now();
            if kinds.chars().count() < STAGES_AT_MOST {
                kinds.push(kind);
                typing.stage_kinds.set(kinds);
            }
        })
        .into()
    };
    let less = button("quiet", "Take the last away", "stage-less", move || {
        let mut kinds = typing.stage_kinds.now();
        if kinds.chars().count() > 1 {
            kinds.pop();
            if let Some(draft) = typing.stages.get(kinds.chars().count()) {
                draft.clear();
            }
            if let Some(draft) = typing.stage_wrenches.get(kinds.chars().count()) {
                draft.clear();
            }
            typing.stage_kinds.set(kinds);
        }
    });
    let from = pick(
        "stages-from",
        "Where the stages come from",
        "",
        vec![
            Word::of(Origin::Printed.id(), "from the sheet"),
            Word::of(Origin::CommonPractice.id(), "common practice"),
        ],
        move || typing.stages_from.get(),
        move |id| typing.stages_from.set(id),
    );
    let lead = "Each stage is a lap over all bolts. Two angles are two laps: 60° and then 30° is not one of 90°.";
    section("4 · The stages")
        .with(note("lead", lead))
        .with(unit)
        .with(fields)
        .with(row([
            add('t', "+ torque", "stage-torque"),
            add('a', "+ angle", "stage-angle"),
            add('s', "+ stretch", "stage-stretch"),
            less.into(),
        ]))
        .with(propose(describing))
        .with(from)
        .with(describing.wrong(Field::Stages))
}

fn field(describing: Describing, at: usize, kind: char) -> Option<El> {
    let typing = describing.typing;
    let draft = *typing.stages.get(at)?;
    let number = at + 1;
    let (quantity, word) = match kind {
        'a' => (Quantity::Angle, "angle"),
        's' => (Quantity::Length, "stretch"),
        _ => (Quantity::Torque, "torque"),
    };
    let unit = move || match quantity {
        Quantity::Torque => torque_unit(&typing.unit.get()),
        Quantity::Angle => unit_or_usual(Quantity::Angle, "°"),
        _ => unit_or_usual(Quantity::Length, "in"),
    };
    let field = QuantityField::new(
        format!("stage-{number}"),
        format!("Stage {number}: {word}"),
        draft,
        quantity,
        unit,
    );
    Some(field.piece())
}

/// Stages from the last torque alone, for who has no list and asks.
fn propose(describing: Describing) -> El {
    let typing = describing.typing;
    let toast = toast();
    let hint = "Has the sheet the final torque only? Type it as stage 1, then ask: three equal steps, and a last lap for the bolts that their neighbours relaxed. Common practice, not a sheet.";
    let act = move || {
        let unit = torque_unit(&typing.unit.now());
        let last = untrack(|| last_torque(describing, unit));
        let Some(last) = last else {
            toast.say("Type the final torque first.");
            return;
        };
        let steps = usual_stages(last);
        typing.stage_kinds.set("t".repeat(steps.len()));
        for (draft, step) in typing.stages.iter().zip(steps) {
            if let Stage::Torque(torque) = step {
                draft.set(show(torque, None, unit).number);
            }
        }
        typing
            .stages_from
            .set(Origin::CommonPractice.id().to_owned());
    };
    section("No list of stages?")
        .with(note("hint", hint))
        .with(row([button(
            "quiet",
            "Propose stages",
            "stages-propose",
            act,
        )
        .into()]))
}

/// The greatest torque that is typed.
fn last_torque(describing: Describing, unit: &'static Unit) -> Option<f64> {
    let typing = describing.typing;
    let kinds = typing.stage_kinds.get();
    let torques = kinds
        .chars()
        .zip(typing.stages)
        .filter(|(kind, _)| *kind == 't');
    torques
        .filter_map(|(_, draft)| read_text(&draft.get(), Quantity::Torque, unit)?.ok())
        .map(|typed| typed.si())
        .max_by(f64::total_cmp)
}
