//! Letting a result pass as it is, with a reason.

use build_journal::Body;
use build_journal::fact::{ResultName, Spot, Waived};
use build_plan::proof::Proof;
use build_plan::{At, Place};
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::tonight::words::of_parts;
use crate::device::drafts::Draft;
use crate::kit::dialog::dialog;
use crate::kit::piece::{Piece, button, p, row};
use crate::kit::words::{too_long, word_field};

const REASON_AT_MOST: usize = 300;

/// What is let pass.
#[derive(Clone, Copy)]
pub struct Waiving {
    /// The build.
    pub opened: Opened,
    /// The result.
    pub proof: Proof,
}

/// A button that asks for the reason and lets a result pass at the parts where
/// it does not stand. There is none while it stands at all of them.
#[must_use]
pub fn let_pass(
    waiving: Waiving,
    open_parts: impl Fn() -> Vec<At> + Copy + Send + Sync + 'static,
) -> Piece {
    let any = Memo::new(move |_| !open_parts().is_empty());
    Piece::when(
        move || any.get(),
        move || {
            let open = RwSignal::new(false);
            let id = waiving.proof.id();
            let ask = button(
                "quiet",
                "Let it pass…",
                &format!("let-pass-{id}"),
                move || {
                    open.set(true);
                },
            );
            let asked = dialog(
                open,
                "Let it pass?",
                &format!("let-pass-dialog-{id}"),
                move || untrack(|| inside(waiving, &open_parts(), open)),
            );
            Piece::all([ask.into(), asked.into()])
        },
    )
}

fn inside(waiving: Waiving, parts: &[At], open: RwSignal<bool>) -> Piece {
    let Waiving { opened, proof } = waiving;
    let reason = Draft::of(opened.draft(&format!("let-pass/{}", proof.id())));
    let tried = RwSignal::new(false);
    let wrong = move || {
        (tried.get() && reason.get().trim().is_empty())
            .then(|| "Say why: it stays in the book.".to_owned())
    };
    let at = parts.to_vec();
    let write = button("", "Let it pass", "let-pass-yes", move || {
        tried.set(true);
        let why = reason.now().trim().to_owned();
        if why.is_empty() || too_long(&why, REASON_AT_MOST).is_some() {
            return;
        }
        for body in bodies(waiving, &at, &why) {
            if opened.write_down(body).is_none() {
                return;
            }
        }
        reason.clear();
        open.set(false);
    });
    let away = button("quiet", "No", "let-pass-no", move || open.set(false));
    let lead = format!(
        "{}: it counts from now on without being proved, until something changes. The reason stands beside it wherever it is shown.",
        of_parts(proof.label(), parts)
    );
    let field = word_field("let-pass-why", "Why?", "", reason, REASON_AT_MOST, wrong);
    Piece::all([
        p(&lead).into(),
        field.into(),
        row([write.into(), away.into()]).into(),
    ])
}

fn bodies(waiving: Waiving, parts: &[At], why: &str) -> Vec<Body> {
    let Waiving { opened, proof } = waiving;
    let sort = build_journal::fold::ResultAt::of(proof, At::Engine).sort;
    let one = |place: Option<At>| {
        Body::Waived(Waived {
            result: ResultName {
                sort,
                id: proof.id().to_owned(),
            },
            place: place.map(|at| Spot::Known(Place::of(at))),
            reason: why.to_owned(),
        })
    };
    let all = opened.build.with_untracked(|build| {
        let engine = build.engine.as_ref().map(|one| &one.engine);
        engine.is_some_and(|engine| proof.per().parts(engine) == parts)
    });
    if all {
        vec![one(None)]
    } else {
        parts.iter().map(|at| one(Some(*at))).collect()
    }
}
