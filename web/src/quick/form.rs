//! The form of one quick check, made from its description.

use assembly_core::describe::{Calculation, CalculationError, Takes, calculation};
use build_plan::Measure;
use build_plan::measure::Found;
use leptos::prelude::*;

use super::answer::answer;
use super::check::{Check, Entry, Outcome};
use super::finds::{is_running_clearance, measure_of};
use super::limits::{Limits, limit_fields};
use super::offered::offered;
use super::tools::tool_picks;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::QuantityField;
use crate::kit::judged::capital;
use crate::kit::keypad::pad;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, link, note, p, title};
use crate::kit::section::{fold, section};
use crate::later::rarer_check_later;
use crate::route::Route;

/// One quick check, by the id of its calculation.
#[must_use]
pub fn quick_check(id: &str) -> Piece {
    match offered(id) {
        Some(calculation) => form(calculation),
        None => rarer_check_later(id.to_owned()),
    }
}

/// One of all the checks there are. They wait in a part of their own.
#[must_use]
pub fn rarer_check(id: &str) -> Piece {
    match calculation(id) {
        Some(calculation) => form(calculation),
        None => Piece::all([
            title("No such check").into(),
            p(&format!("There is no quick check called {id}.")).into(),
            p("")
                .with(link("", &Route::QuickChecks, "All quick checks"))
                .into(),
        ]),
    }
}

/// The other ways to the same result, this one included.
fn ways(measure: Option<&'static Measure>) -> Vec<&'static Calculation> {
    let Some(Found::WorkedOut {
        calculation: own,
        or_read_by,
        ..
    }) = measure.map(|measure| measure.found)
    else {
        return Vec::new();
    };
    std::iter::once(own)
        .chain(or_read_by.iter().copied())
        .filter_map(offered)
        .collect()
}

fn form(calculation: &'static Calculation) -> Piece {
    let settings = settings();
    let check = Check::of(calculation, settings);
    let measure = measure_of(calculation);
    let judged = calculation
        .outputs
        .iter()
        .find(|one| one.id == "least")
        .or_else(|| calculation.outputs.first());
    let family = measure.map_or(calculation.id, |measure| measure.id);
    let limits = judged.map(|output| Limits::of(family, output, is_running_clearance(calculation)));
    let outcome = Memo::new_with_compare(move |_| check.outcome(), |_, _| true);
    let refused = move || match outcome.get() {
        Outcome::Refused(error) => Some(error),
        _ => None,
    };
    let pad = pad();
    on_cleanup(move || pad.show_live(None));
    let (asked, besides): (Vec<Entry>, Vec<Entry>) = check
        .entries
        .get_value()
        .into_iter()
        .partition(|entry| !matches!(entry.input.takes, Takes::Optional | Takes::Any));
    let fields = move |entries: &[Entry]| {
        Piece::all(
            entries
                .iter()
                .map(|entry| entry_fields(*entry, settings, refused)),
        )
    };
    let limits_section = limits.zip(judged).map(|(limits, output)| {
        let unit = move || settings.units().of(output.kind, output.units);
        let size = move || journal_size(&outcome.get());
        section("Limits, from the maker's sheet").with(limit_fields(limits, unit, measure, size))
    });
    let besides = (!besides.is_empty()).then(|| {
        let any = |entry: &Entry| {
            let typed = |rows: &Vec<Draft>| rows.iter().any(|row| !row.now().is_empty());
            entry.rows.with_value(typed)
        };
        let part = fold("Measured besides, if you like", fields(&besides));
        if besides.iter().any(any) {
            part.attr("open", "")
        } else {
            part
        }
    });
    let clear = button("quiet", "Empty all fields", "clear", move || check.clear());
    let left = el("div")
        .class("half")
        .with(section("Measured").with(fields(&asked)))
        .with(limits_section)
        .with(besides)
        .with(fold("Tools", tool_picks(check.tools)))
        .with(p("").with(clear));
    let right = el("div")
        .class("half answer")
        .test("answer")
        .with(answer(check, outcome, limits, judged, measure));
    Piece::all([
        title(calculation.title).into(),
        note("lead", calculation.purpose).into(),
        way_links(&ways(measure), calculation.id).into(),
        el("div").class("halves").with(left).with(right).into(),
    ])
}

/// The size that the trade's rule of thumb goes by: the largest journal typed.
fn journal_size(outcome: &Outcome) -> Option<f64> {
    let Outcome::Worked(worked) = outcome else {
        return None;
    };
    let journals = worked
        .typed
        .iter()
        .filter(|(id, _)| id.starts_with("journal"));
    journals.map(|(_, typed)| typed.si()).reduce(f64::max)
}

fn way_links(ways: &[&'static Calculation], now: &str) -> Option<El> {
    let links = ways.iter().map(|one| {
        let name = one.title.rsplit(", ").next().unwrap_or(one.title);
        let name = if name == one.title {
            "a tool for each"
        } else {
            name
        };
        let link = el("a")
            .attr("href", &Route::QuickCheck(one.id.to_owned()).to_string())
            .test(&format!("way-{}", one.id))
            .text(name);
        let here = one.id == now;
        if here {
            link.attr("aria-current", "page").into()
        } else {
            link.into()
        }
    });
    (ways.len() > 1).then(|| {
        el("nav")
            .class("ways")
            .attr("aria-label", "ways to measure it")
            .all(links)
    })
}

fn entry_fields(
    entry: Entry,
    settings: Settings,
    refused: impl Fn() -> Option<CalculationError> + Copy + 'static,
) -> Piece {
    let input = entry.input;
    let rows = entry.rows.get_value();
    if let Takes::OneOf(choices) = input.takes {
        let Some(draft) = rows.first().copied() else {
            return Piece::none();
        };
        let words = choices
            .iter()
            .map(|one| Word::of(one.id, one.label))
            .collect();
        let label = capital(input.label);
        return pick(
            input.id,
            &label,
            input.how,
            words,
            move || draft.get(),
            move |id| draft.set(id),
        )
        .into();
    }
    let unit = move || settings.units().of(input.kind, input.units);
    let wrong = move || {
        let error = refused()?;
        let missing = matches!(error, CalculationError::Missing { .. });
        (error.field() == Some(input.id) && !missing).then(|| error.to_string())
    };
    let several = rows.len() > 1;
    let field = move |at: usize, draft: Draft| {
        let name = format!("{}-{}", input.id, at + 1);
        let label = capital(input.label);
        if at == 0 {
            return QuantityField::new(name, label, draft, input.kind, unit)
                .how(input.how)
                .wrong(wrong)
                .piece();
        }
        let label = format!("{label}, reading {}", at + 1);
        QuantityField::new(name, label, draft, input.kind, unit).piece()
    };
    let fields = rows.into_iter().enumerate().map(|(at, draft)| {
        Piece::when(
            move || at < entry.shown.get(),
            move || field(at, draft).into(),
        )
    });
    let more = move || {
        button(
            "more",
            "+ reading",
            &format!("more-{}", input.id),
            move || {
                entry.shown.update(|shown| *shown += 1);
            },
        )
        .attr(
            "aria-label",
            &format!("one more reading of the {}", input.label),
        )
        .into()
    };
    el("div")
        .class("readings")
        .all(fields)
        .with(several.then(|| Piece::when(move || entry.may_grow(), more)))
        .into()
}
