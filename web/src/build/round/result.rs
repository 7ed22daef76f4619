//! The result at a part: the number held against its limits, what is missing,
//! what would settle it, and how it was worked out.

use build_plan::{At, Measure};
use leptos::prelude::*;

use super::standing::Stands;
use crate::build::Opened;
use crate::build::measure::result::left_out;
use crate::device::settings::UnitClass;
use crate::kit::judged::{dominates, findings, verdict, what_to_do, window_words};
use crate::kit::piece::{Piece, el, note, p};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::Mark;

/// The whole result at a part.
#[must_use]
pub fn result(
    opened: Opened,
    stands: &Stands,
    (measure, at): (&'static Measure, At),
    units: UnitClass,
) -> Piece {
    let settling = settling(opened, measure, at);
    let workings = workings(opened, (measure, at), stands, units);
    let unit = units.of(measure.kind, measure.units);
    let stale = (!stands.stale.is_empty()).then(|| {
        section("It no longer counts")
            .test("stale")
            .with(sentences("", &stands.stale))
    });
    let missing = (!stands.missing.is_empty())
        .then(|| section("Missing for a verdict").with(sentences("missing", &stands.missing)));
    let rule = measure.tripwire.as_ref().map(|wire| {
        let here = stands.common_practice.map_or_else(String::new, |window| {
            format!(", here {}", window_words(&window, unit))
        });
        el("p")
            .class("tripwire")
            .test("tripwire")
            .with(el("strong").text("Common practice, not a limit"))
            .text(&format!(
                ": {}{here}. The maker's sheet decides.",
                wire.words
            ))
    });
    let whole = stands.judged.as_ref().map(|judged| {
        let sure = stands.missing.is_empty() && stands.stale.is_empty();
        let was = format!("{}, {}", judged.value_words(), judged.verdict_words());
        let number = if !stands.stale.is_empty() {
            p("")
                .class("reading")
                .test("reading")
                .with(el("del").text(&was))
                .into()
        } else if sure || judged.mark() == Mark::Bad {
            Piece::all([verdict(judged), left_out(&stands.left_out)])
        } else {
            note("reading", &judged.value_words())
                .test("reading")
                .into()
        };
        Piece::all([
            number,
            (settling.filter(|_| sure))
                .map(|words| p(&words).test("settling"))
                .into(),
            findings(&judged.findings),
            dominates(&judged.least, &judged.sources),
            if sure {
                what_to_do(judged)
            } else {
                Piece::none()
            },
        ])
    });
    Piece::all([
        stale.into(),
        whole.into(),
        missing.into(),
        workings,
        rule.into(),
    ])
}

/// How many more readings would settle it, or which tool; of the clearances of
/// bearings the verdict says so itself.
fn settling(opened: Opened, measure: &'static Measure, at: At) -> Option<String> {
    opened.build.with(|build| {
        let settling = build.settling(build.fit(measure, at)?)?;
        Some(settling.sentence())
    })
}

/// How it was worked out, made only when somebody asks.
fn workings(
    opened: Opened,
    (measure, at): (&'static Measure, At),
    stands: &Stands,
    units: UnitClass,
) -> Piece {
    let Some(judged) = &stands.judged else {
        return Piece::none();
    };
    let unit = units.of(measure.kind, measure.units);
    let (least, greatest) = (judged.least.clone(), judged.greatest.clone());
    let open = RwSignal::new(false);
    let lines = Piece::when(
        move || open.get(),
        move || {
            let lines = opened
                .build
                .with_untracked(|build| build.workings(measure, at, (&least, &greatest), unit));
            sentences("workings", &lines).into()
        },
    );
    el("details")
        .class("fold")
        .test("workings")
        .on("toggle", move |_| open.set(true))
        .with(el("summary").text("How it was worked out"))
        .with(el("div").class("fold-inside").with(lines))
        .into()
}
