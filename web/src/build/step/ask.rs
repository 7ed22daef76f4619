//! Before something is written down that undoes other results, it is shown what
//! it would undo. A tap that is only the tail of the last one does nothing.

use build_journal::Body;
use build_journal::fold::Preview;
use leptos::prelude::*;

use crate::build::Opened;
use crate::build::tonight::{results, way_back};
use crate::device::chance;
use crate::kit::dialog::dialog;
use crate::kit::piece::{El, Piece, button, note, p, row};
use crate::kit::section::sentences;
use crate::kit::toast::{Toast, toast};

/// A second tap within so long is the same tap: gloves bounce. In milliseconds;
/// ours.
const ONE_TAP: i64 = 700;

/// What is asked about.
#[derive(Clone)]
struct Question {
    lead: String,
    yes: String,
    preview: Preview,
    deed: Deed,
}

/// What is written down, and what comes after.
#[derive(Clone)]
struct Deed {
    bodies: Vec<Body>,
    said: String,
    then: Callback<()>,
}

/// Writes down, after asking where something would be undone.
#[derive(Clone, Copy)]
pub struct Ask {
    opened: Opened,
    toast: Toast,
    question: StoredValue<Option<Question>>,
    open: RwSignal<bool>,
    /// What was written down last, and when.
    last: StoredValue<(String, i64)>,
}

/// What is said around a tap.
pub struct Words<'a> {
    /// What is asked before it is written down.
    pub lead: &'a str,
    /// What the button says that writes it down after all.
    pub yes: &'a str,
    /// What is said once it is written down.
    pub said: &'a str,
}

impl Ask {
    /// Nothing is asked yet.
    #[must_use]
    pub fn new(opened: Opened) -> Self {
        Self {
            opened,
            toast: toast(),
            question: StoredValue::new(None),
            open: RwSignal::new(false),
            last: StoredValue::new((String::new(), 0)),
        }
    }

    /// Writes down at once what undoes nothing; asks about the rest, and about
    /// all of it when `always`. What comes `then` comes only if it was written.
    pub fn write_and(
        self,
        bodies: Vec<Body>,
        always: bool,
        words: &Words,
        then: impl Fn() + Send + Sync + 'static,
    ) {
        if self.is_one_tap(&bodies) {
            return;
        }
        let preview = self.opened.preview(&bodies);
        let deed = Deed {
            bodies,
            said: words.said.to_owned(),
            then: Callback::new(move |()| then()),
        };
        let quiet = preview.stale.is_empty()
            && preview.problems.is_empty()
            && preview.come.is_empty()
            && preview.go.is_empty();
        if quiet && !always {
            self.put_down(&deed);
            return;
        }
        self.question.set_value(Some(Question {
            lead: words.lead.to_owned(),
            yes: words.yes.to_owned(),
            preview,
            deed,
        }));
        self.open.set(true);
    }

    /// Whether this is the tail of the last tap, or nothing at all: something
    /// said of the same step or check in the same moment. What comes of a tap
    /// may put another button under the thumb.
    fn is_one_tap(self, bodies: &[Body]) -> bool {
        let now = chance::now();
        self.last.with_value(|(about, last)| {
            bodies.is_empty()
                || (*about == subject(bodies) && (0..ONE_TAP).contains(&now.saturating_sub(*last)))
        })
    }

    fn put_down(self, deed: &Deed) {
        self.last.set_value((subject(&deed.bodies), chance::now()));
        for body in &deed.bodies {
            // A refusal is told, and what was typed stays.
            if self.opened.write_down(body.clone()).is_none() {
                return;
            }
        }
        deed.then.run(());
        if !deed.said.is_empty() {
            self.toast.say(deed.said.clone());
        }
    }

    /// The question, shown when there is one.
    #[must_use]
    pub fn dialog(self) -> El {
        dialog(
            self.open,
            "Before it is written down",
            "ask-dialog",
            move || {
                self.question
                    .get_value()
                    .map(|question| self.asked(&question))
                    .into()
            },
        )
    }

    fn asked(self, question: &Question) -> Piece {
        let preview = &question.preview;
        let undone = if preview.stale.is_empty() {
            p("Nothing that was proved comes undone by it.")
                .test("undoes-nothing")
                .into()
        } else {
            Piece::all([
                note("undone-lead", "These no longer count then:").into(),
                results(&preview.stale),
                way_back(self.opened, &preview.way_back),
            ])
        };
        let problems =
            (!preview.problems.is_empty()).then(|| sentences("findings", &preview.problems));
        let deed = question.deed.clone();
        let yes = button("", &question.yes, "ask-yes", move || {
            if !self.is_one_tap(&deed.bodies) {
                self.open.set(false);
                self.put_down(&deed);
            }
        });
        let no = button("quiet", "Leave it as it is", "ask-no", move || {
            self.open.set(false)
        });
        Piece::all([
            p(&question.lead).into(),
            undone,
            items("These come into the plan:", "plan-come", &preview.come),
            items("These are not for such an engine:", "plan-go", &preview.go),
            problems.into(),
            row([yes.into(), no.into()]).into(),
        ])
    }
}

/// Steps and measures that come or go; nothing when there are none.
fn items(lead: &str, name: &str, labels: &[&str]) -> Piece {
    if labels.is_empty() {
        return Piece::none();
    }
    Piece::all([
        note("undone-lead", lead).into(),
        sentences("", labels).test(name).into(),
    ])
}

/// What is spoken of: a step or a check.
fn subject(bodies: &[Body]) -> String {
    match bodies.first() {
        Some(Body::StepMarked(said)) => said.step.clone(),
        Some(Body::CheckMade(made)) => made.check.clone(),
        _ => String::new(),
    }
}
