//! What a step proves by looking, feeling or counting: good or not.

use build_journal::Body;
use build_journal::fact::{CheckMade, Outcome, Spot};
use build_journal::fold::{Build, Clock, ResultState, lasting};
use build_plan::check::{Check, Lasts, Seen};
use build_plan::proof::Proof;
use build_plan::{At, Place};
use leptos::prelude::*;

use super::ask::{Ask, Words};
use super::waive::{Waiving, let_pass};
use crate::build::Opened;
use crate::build::tonight::words::{parts as part_words, slug};
use crate::build::tonight::{cause, face};
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p, row};
use crate::kit::section::fold;
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 400;
const LASTS_AT_MOST: usize = 40;

/// What checks are shown with.
#[derive(Clone, Copy)]
pub struct Looking {
    /// The build.
    pub opened: Opened,
    /// The moment, running on.
    pub now: ReadSignal<i64>,
    /// Writes down.
    pub ask: Ask,
}

/// The parts of a proof that have to do with the parts in hand.
#[must_use]
pub fn concerned(build: &Build, proof: Proof, targets: &[At]) -> Vec<At> {
    let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
        return Vec::new();
    };
    let all = proof.per().parts(engine).into_iter();
    all.filter(|at| targets.iter().any(|target| at.concerns(*target, engine)))
        .collect()
}

/// How a check is at some parts.
#[derive(Clone, PartialEq)]
struct Known {
    states: Vec<(At, ResultState)>,
    clock: Option<Clock>,
}

/// A check, with how it stands and the way to say how it came out.
#[must_use]
pub fn one(looking: Looking, check: &'static Check, targets: &[At]) -> El {
    let opened = looking.opened;
    let targets = targets.to_vec();
    let known = Memo::new(move |_| {
        opened.build.with(|build| {
            let proof = Proof::Check(check);
            let parts = concerned(build, proof, &targets);
            let clocks = build.clocks();
            let mut clock = clocks.into_iter();
            Known {
                clock: clock.find(|one| one.check == check && parts.contains(&one.at)),
                states: (parts.iter())
                    .map(|at| (*at, build.result(proof, *at)))
                    .collect(),
            }
        })
    });
    let draft = |name: &str| Draft::of(opened.draft(&format!("check/{}/{name}", check.id)));
    let form = Form {
        looking,
        check,
        known,
        part: draft("part"),
        words: draft("words"),
        lasts: draft("lasts"),
    };
    let state = Piece::live(move || {
        let known = known.get();
        untrack(|| shown(&known, looking.now))
    });
    el("li")
        .class("card")
        .test(&format!("check-{}", check.id))
        .with(el("strong").class("card-title").text(check.label))
        .with(p(&format!("Good is: {}", check.good)))
        .with(state)
        .with(form.piece())
}

fn shown(known: &Known, now: ReadSignal<i64>) -> Piece {
    let clock = known.clock.clone().map(|clock| face(clock, now));
    let groups = by_state(&known.states).into_iter().map(|(state, at)| {
        let words = match part_words(&at) {
            parts if parts.is_empty() || known.states.len() == 1 => state_words(state),
            parts => format!("{}: {parts}", state_words(state)),
        };
        let line = note("check-state", "")
            .test("check-state")
            .attr("data-state", state_name(state));
        match state {
            ResultState::Stale(stale) => Piece::all([
                line.with(el("del").text("good"))
                    .text(&format!(" {words}"))
                    .into(),
                cause(std::slice::from_ref(stale)),
            ]),
            _ => line.text(&words).into(),
        }
    });
    Piece::all(groups.chain([clock.into()]))
}

/// Parts that stand alike, together.
fn by_state(states: &[(At, ResultState)]) -> Vec<(&ResultState, Vec<At>)> {
    let mut groups: Vec<(&ResultState, Vec<At>)> = Vec::new();
    for (at, state) in states {
        let same = |one: &&mut (&ResultState, Vec<At>)| state_words(one.0) == state_words(state);
        match groups.iter_mut().find(same) {
            Some((_, parts)) => parts.push(*at),
            None => groups.push((state, vec![*at])),
        }
    }
    groups
}

/// Where a check stands, in words.
fn state_words(state: &ResultState) -> String {
    match state {
        ResultState::NotYet => "○ not looked at yet".to_owned(),
        ResultState::Stands => "✓ good".to_owned(),
        ResultState::Bad => "✗ not good".to_owned(),
        ResultState::Stale(_) => "▲ no longer counts".to_owned(),
        ResultState::LetPass(reason) => format!("◇ let pass: {reason}"),
    }
}

/// Its name for tests and style sheets.
#[must_use]
pub const fn state_name(state: &ResultState) -> &'static str {
    match state {
        ResultState::NotYet => "not-yet",
        ResultState::Stands => "stands",
        ResultState::Bad => "bad",
        ResultState::Stale(_) => "stale",
        ResultState::LetPass(_) => "let-pass",
    }
}

#[derive(Clone, Copy)]
struct Form {
    looking: Looking,
    check: &'static Check,
    known: Memo<Known>,
    part: Draft,
    words: Draft,
    lasts: Draft,
}

impl Form {
    fn piece(self) -> Piece {
        let check = self.check;
        let parts: Vec<At> = self
            .known
            .with_untracked(|known| known.states.iter().map(|(at, _)| *at).collect());
        let which = (parts.len() > 1).then(|| {
            let all = Word::of("", "all of them");
            let each = parts.iter().map(|at| Word::of(slug(*at), at.to_string()));
            pick(
                &format!("part-{}", check.id),
                "Which?",
                "",
                [all].into_iter().chain(each).collect(),
                move || self.part.get(),
                move |id| self.part.set(id),
            )
        });
        let words = word_field(
            &format!("seen-{}", check.id),
            seen_label(check.seen),
            "",
            self.words,
            WORDS_AT_MOST,
            || None,
        );
        let lasts = (check.lasts != Lasts::UntilUndone).then(|| self.lasts_field());
        let good = button("", "Good", &format!("good-{}", check.id), move || {
            self.say(Outcome::Good);
        });
        let bad = button(
            "quiet",
            "Not good",
            &format!("bad-{}", check.id),
            move || {
                self.say(Outcome::Bad);
            },
        );
        let waiving = Waiving {
            opened: self.looking.opened,
            proof: Proof::Check(check),
        };
        let known = self.known;
        let open = move || {
            known.with(|known| {
                let open = known.states.iter().filter(|(_, state)| {
                    !matches!(state, ResultState::Stands | ResultState::LetPass(_))
                });
                open.map(|(at, _)| *at).collect::<Vec<At>>()
            })
        };
        let word = if parts.len() > 1 {
            "Which of them, and what was seen"
        } else {
            "What was seen"
        };
        let more = fold(word, Piece::all([which.into(), words.into()]));
        Piece::all([
            lasts.into(),
            more.test(&format!("more-{}", check.id)).into(),
            row([good.into(), bad.into(), let_pass(waiving, open)]).into(),
        ])
    }

    fn lasts_field(self) -> El {
        let check = self.check;
        let hint = match check.lasts {
            Lasts::Days(days) => format!(
                "Usually {days} days: common practice. Leave it empty if so, or type such as “2 days” or “6 h”."
            ),
            Lasts::AsSaid(what) => {
                format!("In {what}. Type it with its unit, such as “10 min” or “30 days”.")
            }
            Lasts::UntilUndone => String::new(),
        };
        word_field(
            &format!("lasts-{}", check.id),
            "How long does it stay good?",
            &hint,
            self.lasts,
            LASTS_AT_MOST,
            move || self.lasts_wrong(),
        )
    }

    fn lasts_wrong(self) -> Option<String> {
        let typed = self.lasts.get();
        let typed = typed.trim();
        // What can't be read would be passed over for the usual time.
        let bare = Check {
            lasts: Lasts::AsSaid(match self.check.lasts {
                Lasts::AsSaid(what) => what,
                _ => "days",
            }),
            ..*self.check
        };
        (!typed.is_empty() && lasting(&bare, Some(typed)).is_none()).then(|| {
            format!("“{typed}” is no time: type a whole number and min, h, days or weeks.")
        })
    }

    fn say(self, outcome: Outcome) {
        let words = self.words.now().trim().to_owned();
        let lasts = self.lasts.now().trim().to_owned();
        if too_long(&words, WORDS_AT_MOST).is_some()
            || too_long(&lasts, LASTS_AT_MOST).is_some()
            || untrack(|| self.lasts_wrong()).is_some()
        {
            return;
        }
        let all: Vec<At> = self
            .known
            .with_untracked(|known| known.states.iter().map(|(at, _)| *at).collect());
        let chosen = self.part.now();
        let meant: Vec<At> = match all.iter().find(|at| slug(**at) == chosen) {
            Some(at) => vec![*at],
            None => all.clone(),
        };
        let everywhere = self.looking.opened.build.with_untracked(|build| {
            let engine = build.engine.as_ref().map(|one| &one.engine);
            engine.is_some_and(|engine| self.check.per.parts(engine) == meant)
        });
        let given = |text: &str| Some(text.to_owned()).filter(|text| !text.is_empty());
        let one = |place: Option<At>| {
            Body::CheckMade(CheckMade {
                check: self.check.id.to_owned(),
                place: place.map(|at| Spot::Known(Place::of(at))),
                outcome,
                words: given(&words),
                lasts: given(&lasts).filter(|_| outcome == Outcome::Good),
            })
        };
        let bodies: Vec<Body> = if everywhere {
            vec![one(None)]
        } else {
            meant.iter().map(|at| one(Some(*at))).collect()
        };
        let said = Words {
            lead: "",
            yes: "Write it down",
            said: match outcome {
                Outcome::Good => "Good. Written down.",
                Outcome::Bad => "Not good. Written down.",
            },
        };
        self.looking.ask.write_and(bodies, false, &said, move || {
            self.words.clear();
            self.lasts.clear();
        });
    }
}

const fn seen_label(seen: Seen) -> &'static str {
    match seen {
        Seen::Photo => "What was seen? A photo shows it best",
        Seen::Feel => "How did it feel?",
        Seen::Count => "How many were counted?",
        Seen::Words => "What was seen?",
    }
}
