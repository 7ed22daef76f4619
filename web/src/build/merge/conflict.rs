//! Two things that cannot both be right, side by side, each with the one tap
//! that lets it stand.

use build_journal::fact::{LimitsSet, ReadingsStand};
use build_journal::fold::{Conflict, Limits, Taken};
use build_journal::{Body, DeviceId, FactId};
use build_plan::{Measure, Place};
use leptos::prelude::*;

use super::came_in::device_words;
use super::words::of_words;
use crate::build::Opened;
use crate::build::book::time;
use crate::device::keeping::Keeping;
use crate::kit::judged::capital;
use crate::kit::piece::{El, Piece, button, el, note, p, row};
use crate::kit::section::section;

const WHY: &str = "Settled by hand: two devices read it differently.";

/// A conflict.
#[must_use]
pub fn conflict(opened: Opened, keeping: Keeping, conflict: &Conflict) -> Piece {
    let facts = conflict.facts();
    match conflict {
        Conflict::Limits { limits } => of_limits(opened, keeping, limits, &facts).into(),
        Conflict::Readings {
            measure,
            place,
            readings,
        } => of_readings(opened, keeping, (measure, *place), readings, &facts).into(),
        Conflict::Marks { .. }
        | Conflict::Checks { .. }
        | Conflict::Engines { .. }
        | Conflict::Placings { .. } => of_words(opened, keeping, conflict).into(),
    }
}

/// When a fact was written, and on which device.
pub(super) fn written(opened: Opened, keeping: Keeping, fact: FactId, device: DeviceId) -> El {
    let when = opened
        .journal
        .with_untracked(|journal| journal.get(fact).map(time));
    note(
        "hint",
        &format!(
            "On {}, {}",
            device_words(device, keeping),
            when.unwrap_or_default()
        ),
    )
}

fn of_limits(opened: Opened, keeping: Keeping, limits: &[Limits], facts: &[FactId]) -> El {
    let name = limits.first().map_or_else(String::new, |one| {
        let measure = opened
            .build
            .with_untracked(|build| build.plan.measure(&one.set.measure));
        let label = measure.map_or(one.set.measure.as_str(), |measure| measure.label);
        match one.place() {
            Some(place) => format!("Two sets of limits: {label}, {place}"),
            None => format!("Two sets of limits: {label}"),
        }
    });
    let cards = limits.iter().map(|one| {
        let typed = match (&one.low, &one.high) {
            (Some(low), Some(high)) => format!("{low} to {high}"),
            (Some(low), None) => format!("at least {low}"),
            (None, Some(high)) => format!("at most {high}"),
            (None, None) => "nothing that can be read".to_owned(),
        };
        let set = LimitsSet {
            replaces: facts.to_vec(),
            ..one.set.clone()
        };
        let hold = button("", "These hold", "these-hold", move || {
            let _ = opened.write_down(Body::LimitsSet(set.clone()));
        })
        .attr("aria-label", &format!("these hold: {typed}"));
        el("li")
            .class("card")
            .with(note("limits-typed", &typed))
            .with(p(&format!(
                "{}: {}",
                capital(&one.set.origin.id().replace('-', " ")),
                one.set.origin_note
            )))
            .with(written(opened, keeping, one.fact, one.device))
            .with(row([hold.into()]))
            .into()
    });
    section(&name)
        .test("conflict-limits")
        .with(p("Until you choose, nothing is judged by them."))
        .with(el("ul").class("side-by-side").all(cards))
}

fn of_readings(
    opened: Opened,
    keeping: Keeping,
    (measure, place): (&Measure, Place),
    readings: &[(DeviceId, Taken)],
    facts: &[FactId],
) -> El {
    let cards = readings.iter().map(|(device, taken)| {
        let words = taken
            .counting()
            .map_or_else(|| taken.reading.typed.clone(), ToString::to_string);
        let tool = taken.reading.tool.and_then(|id| {
            opened.build.with_untracked(|build| {
                let tool = build.tools.iter().find(|tool| tool.tool == id)?;
                Some(p(&format!("With the {}", tool.name)))
            })
        });
        let own = taken.fact;
        let others: Vec<FactId> = facts.iter().copied().filter(|fact| *fact != own).collect();
        let keep = button("", "Keep this one", "keep-this", move || {
            for other in &others {
                let _ = opened.strike(*other, Some(WHY.to_owned()));
            }
        })
        .attr("aria-label", &format!("keep this one: {words}"));
        el("li")
            .class("card")
            .with(note("limits-typed", &words))
            .with(tool)
            .with(written(opened, keeping, own, *device))
            .with(row([keep.into()]))
            .into()
    });
    let (all, how_many) = match facts.len() {
        2 => ("Both stand", "both stand"),
        _ => ("All stand", "all stand"),
    };
    let stand = Body::ReadingsStand(ReadingsStand {
        readings: facts.to_vec(),
        words: None,
    });
    let name = format!("{}, {place}", capital(measure.label));
    let stand = button("quiet", all, "all-stand", move || {
        let _ = opened.write_down(stand.clone());
    })
    .attr("aria-label", &format!("{how_many}: {name}"));
    section(&name)
        .test("conflict-readings")
        .with(p("They are further apart than their tools explain. Until you choose, they are averaged. If you can't tell, measure once more."))
        .with(el("ul").class("side-by-side").all(cards))
        .with(row([stand.into()]))
        .with(note("hint", "If none is a slip, they stay averaged, and this is not asked again."))
}
