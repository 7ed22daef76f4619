//! The clocks: states that do not last, and run on by themselves.

use build_journal::fold::Clock;
use build_plan::proof::Proof;
use leptos::prelude::*;

use super::page::Tonight;
use super::undone::step_link;
use super::words::of_parts;
use crate::build::Opened;
use crate::kit::piece::{El, Piece, el, note};
use crate::kit::section::section;
use crate::kit::when;

/// Nearly over: the last part of the time, of which this is one in so many.
const LAST_OF: i64 = 5;

/// All clocks that run.
#[must_use]
pub fn clocks(tonight: Tonight) -> Piece {
    let any = Memo::new(move |_| tonight.clocks.with(|clocks| !clocks.is_empty()));
    Piece::when(
        move || any.get(),
        move || {
            let list = el("ul").class("clocks").live(move || {
                let clocks = tonight.clocks.get();
                untrack(|| Piece::all(clocks.iter().map(|clock| one(tonight, clock))))
            });
            section("Clocks").with(list).into()
        },
    )
}

fn one(tonight: Tonight, clock: &Clock) -> Piece {
    let step = step_that_proves(tonight.opened, clock);
    let again =
        step.map(|step| step_link(tonight.opened, step, None, "clock-step").text("To the step"));
    el("li")
        .class("card")
        .test(&format!("clock-{}", clock.check.id))
        .with(el("strong").text(&of_parts(clock.check.label, &[clock.at])))
        .with(face(clock.clone(), tonight.now))
        .with(again)
        .into()
}

/// What the clock shows: how long it still lasts, or that it is over.
#[must_use]
pub fn face(clock: Clock, now: ReadSignal<i64>) -> El {
    let shows = Memo::new(move |_| reads(&clock, now.get()));
    note("clock-face", "")
        .test("clock-face")
        .live_attr("data-state", move || {
            shows.with(|(state, _)| Some((*state).to_owned()))
        })
        .live_text(move || shows.with(|(_, words)| words.clone()))
}

/// `running`, `soon` or `over`, and the words.
fn reads(clock: &Clock, now: i64) -> (&'static str, String) {
    if clock.clock_went_back(now) {
        let words = "▲ The clock of this device was put back since this was written down. Nobody can tell how long it still lasts: it does not count any more.";
        return ("over", words.to_owned());
    }
    let since = now.saturating_sub(clock.since);
    let Some(ends) = clock.ends else {
        let words = format!("{}; nobody said how long it lasts", when::ago(since));
        return ("running", words);
    };
    let left = ends.saturating_sub(now);
    if left <= 0 {
        let words = format!(
            "▲ Run out {}. It does not count any more.",
            when::ago(-left)
        );
        return ("over", words);
    }
    let whole = ends.saturating_sub(clock.since);
    let state = if left <= whole / LAST_OF {
        "soon"
    } else {
        "running"
    };
    (state, format!("{} left", when::lasting(left)))
}

/// The step that makes it good again.
fn step_that_proves(opened: Opened, clock: &Clock) -> Option<&'static str> {
    opened.build.with_untracked(|build| {
        let engine = &build.engine.as_ref()?.engine;
        let proof = Proof::Check(clock.check);
        let mut steps = build.plan.steps(engine);
        let found = steps.find(|step| build.plan.proves(step).contains(&proof));
        found.map(|step| step.id)
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use build_journal::{DeviceId, Fact, Stamper};
    use build_plan::At;
    use build_plan::check::SEALANT_OPEN;

    fn clock(ends: Option<i64>) -> Clock {
        let body = build_journal::Body::Note(build_journal::fact::Note {
            text: String::new(),
            place: None,
            step: None,
        });
        let id = Stamper::new().stamp(1, 1);
        Clock {
            check: &SEALANT_OPEN,
            at: At::Engine,
            fact: Fact::new(id, DeviceId::from_random(1), 1, body).id(),
            since: 1_000_000,
            ends,
        }
    }

    #[test]
    fn a_clock_says_what_is_left_that_it_is_nearly_over_and_that_it_is() {
        let minute = 60_000;
        let clock = clock(Some(1_000_000 + 10 * minute));
        let at = |minutes: i64| reads(&clock, 1_000_000 + minutes * minute);
        assert_eq!(at(1), ("running", "9 min 0 s left".to_owned()));
        assert_eq!(at(8).0, "soon");
        assert_eq!(at(10).0, "over");
        assert!(at(13).1.contains("3 minutes ago"), "{}", at(13).1);
    }

    #[test]
    fn a_clock_that_was_put_back_gives_no_time_away() {
        let minute = 60_000;
        let clock = clock(Some(1_000_000 + 10 * minute));
        let (state, words) = reads(&clock, 1_000_000 - 24 * 60 * minute);
        assert_eq!(state, "over");
        assert!(words.contains("put back"), "{words}");
        // Another device may go some minutes behind.
        assert_eq!(reads(&clock, 1_000_000 - 2 * minute).0, "running");
    }

    #[test]
    fn a_clock_without_an_end_never_says_it_is_over() {
        let (state, words) = reads(&clock(None), i64::MAX / 2);
        assert_eq!(state, "running");
        assert!(words.contains("nobody said"), "{words}");
    }
}
