//! All steps, stage by stage, each with where it stands.

use build_journal::Body;
use build_journal::fact::{Mark, StepMarked};
use build_plan::step::{Phase, Step};
use leptos::prelude::*;

use super::state::Stand;
use crate::build::Opened;
use crate::build::tonight::{InALine, step_link};
use crate::kit::dialog::dialog;
use crate::kit::piece::{El, Piece, button, el, note, p, row, title};
use crate::kit::section::fold;

/// What is written beside steps that were done before the book was begun.
const BEFORE_THE_BOOK: &str = "before this book was begun";

/// A step in the list.
#[derive(Clone, PartialEq)]
struct Line {
    step: &'static Step,
    stand: Stand,
}

/// All steps.
#[must_use]
pub fn steps() -> Piece {
    let opened: Opened = expect_context();
    let lines = Memo::new(move |_| {
        opened.build.with(|build| {
            let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
                return Vec::new();
            };
            let steps = build.plan.steps(engine);
            steps
                .map(|step| Line {
                    step,
                    stand: Stand::of_all(build, step, &step.per.parts(engine)),
                })
                .collect::<Vec<Line>>()
        })
    });
    // The stage that is on is open: the first with something left to do.
    let on = lines.with_untracked(|lines| {
        let left = lines
            .iter()
            .find(|line| !line.step.optional && !line.stand.is_settled());
        left.map(|line| line.step.phase)
    });
    let stages = Phase::ALL
        .iter()
        .map(|phase| stage(opened, lines, *phase, on == Some(*phase)));
    let lead =
        "In the order of the job. What the engine, as it is described, has no use for is left out.";
    Piece::all([
        title("All steps").into(),
        note("lead", lead).into(),
        Piece::all(stages),
    ])
}

fn stage(opened: Opened, lines: Memo<Vec<Line>>, phase: Phase, open: bool) -> Piece {
    let own = Memo::new(move |_| {
        lines.with(|lines| {
            let own = lines.iter().filter(|line| line.step.phase == phase);
            own.cloned().collect::<Vec<Line>>()
        })
    });
    if own.with_untracked(Vec::is_empty) {
        return Piece::none();
    }
    let list = el("ul").class("steps").live(move || {
        let own = own.get();
        untrack(|| Piece::all(own.iter().map(|line| one(opened, line))))
    });
    let left = Memo::new(move |_| {
        own.with(|own| {
            let left = own
                .iter()
                .filter(|line| !line.stand.is_settled() && !line.step.optional);
            left.map(|line| line.step).collect::<Vec<_>>()
        })
    });
    let tally = move || {
        own.with(|own| {
            let settled = own.iter().filter(|line| line.stand.is_settled()).count();
            format!("{}: {settled} of {}", phase.label(), own.len())
        })
    };
    let inside = Piece::all([list.into(), before(opened, phase, left)]);
    let fold = fold("", inside).test(&format!("stage-{}", phase.id()));
    let fold = if open { fold.attr("open", "") } else { fold };
    let summary = fold.element::<web_sys::Element>().first_element_child();
    // The heading follows what is done.
    if let Some(summary) = summary {
        Effect::new(move |_| summary.set_text_content(Some(&tally())));
    }
    fold.into()
}

fn one(opened: Opened, line: &Line) -> Piece {
    let optional = if line.step.optional && line.stand == Stand::Open {
        "– only if it is decided on".to_owned()
    } else {
        line.stand.words()
    };
    step_link(opened, line.step.id, None, "step")
        .attr("data-state", line.stand.name())
        .with(el("strong").text(line.step.label))
        .with(el("span").text(&optional))
        .in_a_line()
}

/// Who begins the book in the middle of the job says so for a whole stage.
fn before(opened: Opened, phase: Phase, left: Memo<Vec<&'static Step>>) -> Piece {
    let any = Memo::new(move |_| left.with(|left| !left.is_empty()));
    let open = RwSignal::new(false);
    Piece::when(
        move || any.get(),
        move || {
            let ask = button(
                "quiet",
                "This stage was over before the book…",
                &format!("before-{}", phase.id()),
                move || open.set(true),
            );
            Piece::all([
                row([ask.into()]).into(),
                asked(opened, phase, left, open).into(),
            ])
        },
    )
}

fn asked(opened: Opened, phase: Phase, left: Memo<Vec<&'static Step>>, open: RwSignal<bool>) -> El {
    dialog(
        open,
        "Over before the book was begun?",
        &format!("before-dialog-{}", phase.id()),
        move || {
            let steps = left.get_untracked();
            let words = format!(
                "{} steps of “{}” are then written down as not needed here. Nothing they would prove counts as proved.",
                steps.len(),
                phase.label()
            );
            let yes = button("", "It was over", "before-yes", move || {
                open.set(false);
                for step in &steps {
                    let said = Body::StepMarked(StepMarked {
                        step: step.id.to_owned(),
                        place: None,
                        mark: Mark::NotNeeded,
                        words: Some(BEFORE_THE_BOOK.to_owned()),
                    });
                    if opened.write_down(said).is_none() {
                        return;
                    }
                }
            });
            let no = button("quiet", "No", "before-no", move || open.set(false));
            Piece::all([p(&words).into(), row([yes.into(), no.into()]).into()])
        },
    )
}
