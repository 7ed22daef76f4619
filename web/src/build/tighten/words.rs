//! Tightening in the words of the bench.

use build_journal::fact::Way;
use build_journal::fold::tightening::{Group, Run, State};
use build_plan::At;

use crate::kit::verdict::Mark;

/// A group at a part: "head, bank 2".
#[must_use]
pub fn name(group: &Group, at: At) -> String {
    match at {
        At::Engine => group.made.label.clone(),
        _ => format!("{}, {at}", group.made.label),
    }
}

/// The mark of a state.
#[must_use]
pub const fn mark(state: State) -> Mark {
    match state {
        State::Tight => Mark::Good,
        State::ToBeSaid | State::On => Mark::Close,
        State::NoCredit | State::GivenUp => Mark::Bad,
        State::NotYet | State::Loose => Mark::None,
    }
}

/// How a group stands, in a line.
#[must_use]
pub fn state(group: &Group, at: At) -> String {
    let run = group.part(at).and_then(|part| part.runs.last());
    match (group.state(at), run) {
        (State::On, Some(run)) => where_it_is(run),
        (State::ToBeSaid, Some(run)) => format!("Interrupted: {}", where_it_is(run)),
        (State::Tight, _) => "Tight, and it counts".to_owned(),
        (State::NoCredit, Some(run)) => {
            let why = run
                .against
                .first()
                .map(ToString::to_string)
                .unwrap_or_default();
            format!("Through, but it does not count: {why}")
        }
        (State::GivenUp, _) => "Given up half-way: neither tight nor loose".to_owned(),
        (State::Loose, _) => "Loose".to_owned(),
        _ if !group.sheet.wrong.is_empty() => {
            let first = group
                .sheet
                .wrong
                .first()
                .map_or("", |one| one.text.as_str());
            format!("The sheet is not whole: {first}")
        }
        _ => "Not tightened yet".to_owned(),
    }
}

/// "lap 2 of 4, bolt 8 is next, 9 of 34 done".
#[must_use]
pub fn where_it_is(run: &Run) -> String {
    match run.next() {
        Some(next) => format!(
            "lap {} of {}, bolt {} is next, {} of {} done",
            next.lap + 1,
            run.laps(),
            next.bolt + 1,
            next.done_in_lap,
            run.bolts()
        ),
        None => format!("all {} pulls are ticked", run.plan.ticks()),
    }
}

/// Which way a run goes.
#[must_use]
pub const fn way(way: Way) -> &'static str {
    match way {
        Way::Tighten => "Tightened",
        Way::Loosen => "Loosened",
        Way::Again => "Tightened once more",
    }
}

/// A number and its unit as they are spoken.
#[must_use]
pub fn spoken(number: &str, unit: &str) -> String {
    let unit = match unit {
        "ft-lb" => "foot pounds",
        "in-lb" => "inch pounds",
        "N·m" => "newton metres",
        "kgf·m" => "kilogram metres",
        "daN·m" => "deka newton metres",
        "°" => "degrees",
        "in" => "inches",
        "mm" => "millimetres",
        "thou" => "thousandths",
        other => other,
    };
    format!("{number} {unit}")
}
