//! The buttons of a step: begin, done, take apart, not needed.

use build_journal::fact::{Mark, StepMarked};
use build_journal::{Body, FactId};
use build_plan::At;
use leptos::prelude::*;

use super::ask::{Ask, Words};
use super::state::{InHand, Stand};
use crate::build::Opened;
use crate::build::tonight::words::of_parts;
use crate::build::tonight::{cause, results};
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::words::{too_long, word_field};

/// Letters of what is added to a mark.
const WORDS_AT_MOST: usize = 400;

/// What the buttons go by.
#[derive(Clone, PartialEq)]
struct Seen {
    stand: Stand,
    open: Vec<At>,
    settled: Vec<At>,
    /// The last thing that was said of the part in hand.
    last: Option<FactId>,
}

/// Where the step stands, and what can be said of it now.
#[must_use]
pub fn doing(opened: Opened, in_hand: InHand, ask: Ask) -> El {
    let looked_at = in_hand.clone();
    let seen = Memo::new(move |_| {
        opened.build.with(|build| {
            let (open, settled) = looked_at.open_and_settled(build);
            let targets = looked_at.targets();
            let marked = |at: &At| build.record.marked(looked_at.step, *at);
            Seen {
                stand: Stand::of_all(build, looked_at.step, &targets),
                last: targets.iter().filter_map(marked).map(|one| one.fact).max(),
                open,
                settled,
            }
        })
    });
    let added = Draft::of(opened.draft(&format!("step/{}/words", in_hand.step.id)));
    let field = word_field(
        "step-words",
        "Anything to add?",
        "It goes down with the next tap below.",
        added,
        WORDS_AT_MOST,
        || None,
    );
    let buttons = Buttons {
        opened,
        in_hand: StoredValue::new(in_hand),
        ask,
        added,
    };
    el("section")
        .class("entry-panel")
        .test("doing")
        .live(move || seen.with(|seen| untrack(|| standing(seen))))
        .with(field)
        .live(move || seen.with(|seen| untrack(|| buttons.row(seen))))
}

fn standing(seen: &Seen) -> Piece {
    let words = el("p")
        .class("step-state")
        .test("step-state")
        .attr("data-state", seen.stand.name())
        .text(&seen.stand.words());
    let some = (!seen.open.is_empty() && !seen.settled.is_empty())
        .then(|| note("", &of_parts("Left", &seen.open)));
    let why = match &seen.stand {
        Stand::Undone(stale) => {
            let all = std::slice::from_ref(&**stale);
            Some(Piece::all([cause(all), results(all)]))
        }
        _ => None,
    };
    Piece::all([words.into(), some.into(), why.into()])
}

#[derive(Clone, Copy)]
struct Buttons {
    opened: Opened,
    in_hand: StoredValue<InHand>,
    ask: Ask,
    added: Draft,
}

impl Buttons {
    fn row(self, seen: &Seen) -> Piece {
        let optional = self.in_hand.with_value(|in_hand| in_hand.step.optional);
        let mut buttons: Vec<Piece> = Vec::new();
        let open = &seen.open;
        if !open.is_empty() {
            if optional && seen.stand == Stand::Open {
                buttons.push(self.one("It is decided on", "planned", Mark::Planned, open));
            }
            let all = open.len() > 1;
            buttons.push(self.one(
                if all { "All done" } else { "Done" },
                "done",
                Mark::Done,
                open,
            ));
            if seen.stand != Stand::Begun {
                buttons.push(self.quiet("Begin", "begin", Mark::Begun, open));
            }
            if matches!(seen.stand, Stand::Open | Stand::Planned) {
                buttons.push(self.quiet("Not needed", "not-needed", Mark::NotNeeded, open));
            }
        }
        if open.is_empty() || !seen.settled.is_empty() {
            buttons.extend(self.over_again(seen));
        }
        if let Some(last) = seen.last {
            let opened = self.opened;
            let strike = button(
                "quiet",
                "That was a slip: strike it out",
                "strike-mark",
                move || {
                    let _ = opened.strike(last, None);
                },
            );
            buttons.push(strike.into());
        }
        row(buttons).into()
    }

    fn one(self, words: &str, test: &str, mark: Mark, at: &[At]) -> Piece {
        self.button("", words, test, mark, at)
    }

    fn quiet(self, words: &str, test: &str, mark: Mark, at: &[At]) -> Piece {
        self.button("quiet", words, test, mark, at)
    }

    fn button(self, kind: &str, words: &str, test: &str, mark: Mark, at: &[At]) -> Piece {
        let at = at.to_vec();
        let said = match mark {
            Mark::Done => "Done. Written down.",
            Mark::Begun => "Begun. Written down.",
            _ => "Written down.",
        };
        button(kind, words, &format!("mark-{test}"), move || {
            self.say(
                mark,
                &at,
                false,
                &Words {
                    lead: "What this does to the engine touches what was proved before.",
                    yes: "It was done",
                    said,
                },
            );
        })
        .into()
    }

    /// What is done can be done again or taken apart; both are asked about.
    fn over_again(self, seen: &Seen) -> Vec<Piece> {
        let (done, apart) = (seen.settled.clone(), seen.settled.clone());
        let needed = seen.settled.clone();
        if seen.stand == Stand::NotNeeded {
            let again = button(
                "quiet",
                "It is needed after all",
                "mark-needed",
                move || {
                    self.say(
                        Mark::Begun,
                        &needed,
                        false,
                        &Words {
                            lead: "",
                            yes: "Begin",
                            said: "Begun. Written down.",
                        },
                    );
                },
            );
            return vec![again.into()];
        }
        let again = button("quiet", "Do it again…", "mark-again", move || {
            self.say(Mark::Done, &done, true, &Words {
                lead: "It is done already. If it was done once more, what lies over it came off.",
                yes: "It was done again",
                said: "Done again. Written down.",
            });
        });
        let apart = button("quiet", "Take apart…", "mark-apart", move || {
            self.say(
                Mark::Apart,
                &apart,
                true,
                &Words {
                    lead: "What lies over it comes off with it.",
                    yes: "It was taken apart",
                    said: "Taken apart. Written down.",
                },
            );
        });
        vec![again.into(), apart.into()]
    }

    fn say(self, mark: Mark, at: &[At], always: bool, words: &Words) {
        let added = self.added.now().trim().to_owned();
        if too_long(&added, WORDS_AT_MOST).is_some() {
            return;
        }
        let added = Some(added).filter(|words| !words.is_empty());
        let bodies = self
            .in_hand
            .with_value(|in_hand| in_hand.say(mark, at, added));
        self.ask
            .write_and(bodies, always, words, move || self.added.clear());
    }
}

/// Whether a body says something of this step.
#[must_use]
pub fn is_of(body: &Body, step: &str) -> bool {
    matches!(body, Body::StepMarked(StepMarked { step: of, .. }) if of == step)
}
