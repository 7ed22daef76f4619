//! Questions about readings that look like a slip. They stand until they are
//! answered and are in nobody's way: the round goes on beside them.

use assembly_core::typing_sense::{Question, Slip};
use build_journal::fact::{Reading, Struck};
use build_journal::{Body, FactId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, p};

/// More questions than this at once are a wall: the oldest go.
const STAND: usize = 4;

/// The readings that are asked about, kept over a reload.
#[derive(Clone, Copy)]
pub struct Asked {
    opened: Opened,
    standing: Draft,
}

impl Asked {
    /// What stands in this build.
    #[must_use]
    pub fn of(opened: Opened) -> Self {
        let standing = Draft::of(opened.draft("asked"));
        Self { opened, standing }
    }

    /// Looks at a reading that was just written down.
    pub fn look_at(self, fact: FactId) {
        let asks = self
            .opened
            .build
            .with_untracked(|build| !build.questions_of(fact).is_empty());
        if asks {
            let mut all = facts(&self.standing.now());
            all.push(fact);
            let from = all.len().saturating_sub(STAND);
            self.keep(all.split_off(from));
        }
    }

    fn keep(self, all: Vec<FactId>) {
        let words: Vec<String> = all.iter().map(ToString::to_string).collect();
        if words.is_empty() {
            self.standing.clear();
        } else {
            self.standing.set(words.join(" "));
        }
    }

    fn answered(self, fact: FactId) {
        let mut all = facts(&self.standing.now());
        all.retain(|one| *one != fact);
        self.keep(all);
        // The thumb goes on typing where it was.
        focus_reading();
    }

    /// The likely value in place of the other: what was wrong is struck out, and
    /// a reading of its own says what was meant.
    fn take(self, fact: FactId, question: &Question) {
        let reading = self.opened.build.with_untracked(|build| {
            let taken = build.reading(fact)?;
            Some(Reading {
                typed: question.likely.text().to_owned(),
                keyed: None,
                ..Reading::clone(&taken.reading)
            })
        });
        let Some(reading) = reading else {
            return;
        };
        if self
            .opened
            .write_down(Body::Reading(reading.into()))
            .is_none()
        {
            return;
        }
        let reason = Some(format!("a slip: {} was meant", question.likely));
        let _ = self
            .opened
            .write_down(Body::Struck(Struck { fact, reason }));
        self.answered(fact);
    }

    /// The part is of another size: it gets limits of its own, the sheet's moved by
    /// the step.
    fn take_size(self, fact: FactId) {
        let limits = self
            .opened
            .build
            .with_untracked(|build| build.limits_when_repaired(fact));
        if let Some(limits) = limits
            && self.opened.write_down(Body::LimitsSet(limits)).is_none()
        {
            return;
        }
        self.answered(fact);
    }

    /// The questions, the latest first.
    #[must_use]
    pub fn piece(self) -> Piece {
        Piece::live(move || {
            let mut all = facts(&self.standing.get());
            all.reverse();
            let cards = all
                .into_iter()
                .filter_map(|fact| Some(self.card(fact)?.into()));
            let cards: Vec<Piece> = cards.collect();
            Piece::all(cards)
        })
    }

    fn card(self, fact: FactId) -> Option<El> {
        let (place, question) = self.opened.build.with(|build| {
            let place = build.reading(fact)?.place?;
            Some((place, build.questions_of(fact).into_iter().next()?))
        })?;
        let words = format!("{place}: {question}");
        let keep = format!("Keep {}", question.typed);
        let take = (!matches!(question.slip, Slip::OtherSize { .. })).then(|| {
            let question = question.clone();
            button(
                "",
                &format!("Take {}", question.likely),
                "take-likely",
                move || self.take(fact, &question),
            )
        });
        let repaired = matches!(question.slip, Slip::OtherSize { .. }).then(|| {
            button("", "Yes, repaired to that", "take-size", move || {
                self.take_size(fact);
            })
        });
        let mine = button("quiet", &keep, "keep-mine", move || self.answered(fact));
        let answers = el("div").class("pair").with(take).with(repaired).with(mine);
        Some(
            el("div")
                .class("notice notice-caution asked")
                .attr("role", "status")
                .test("asked")
                // The answers stay in sight above the keypad of a phone.
                .with(answers)
                .with(p(&words)),
        )
    }
}

/// Puts the thumb back to the field of the reading.
pub fn focus_reading() {
    use wasm_bindgen::JsCast;
    if let Some(field) = document().get_element_by_id("reading") {
        let field: web_sys::HtmlElement = field.unchecked_into();
        let _ = field.focus();
    }
}

fn facts(text: &str) -> Vec<FactId> {
    let ids = text.split_whitespace();
    ids.filter_map(|id| FactId::parse(id).ok()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_fact_is_left_out() {
        let id = "019ced8e-d5a7-7000-b2a8-8585a273fdcc";
        let found = facts(&format!("{id} nothing 12"));
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].to_string(), id);
    }
}
