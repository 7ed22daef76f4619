//! After the first fire: the log, oil and filter, compression, leak-down, and what
//! changes over time.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::Kind;
use build_journal::Body;
use build_journal::fact::{OilDoing, OilNoted};
use build_journal::fold::OilNote;
use leptos::prelude::*;

use super::cylinders::cylinder_forms;
use super::page::Oil;
use super::place::Place;
use super::row_table::table;
use super::said::{SaidField, words};
use super::trend::trends;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, link, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const VOLUME: (Kind, UsualUnits) = (Kind::Volume, UsualUnits::of("US qt", "L"));

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let trends = Piece::live(move || {
        let class = settings.units();
        oil.view.with(|view| trends(view, class).into())
    });
    let log = Piece::live(move || {
        oil.view.with(|view| {
            let rows = &view.build.oil.rows;
            let none = rows.is_empty().then(|| p("No rows yet."));
            let shown = (!rows.is_empty()).then(|| table(oil, rows));
            let chart = link("quiet", &oil.route(Place::Pressure), "Over the prediction");
            section("The log")
                .with(none)
                .with(shown)
                .with(row([chart.into()]))
                .into()
        })
    });
    Piece::all([
        title("Afterwards").into(),
        note("lead", "After 20 to 30 minutes: drain it warm, cut the filter, look. Fine grey paste is normal; glitter, flakes or slivers are not. Hot oil burns.").into(),
        trends,
        log,
        Noting::load(oil).section().into(),
        cylinder_forms(oil),
    ])
}

const fn doing_words(what: OilDoing) -> &'static str {
    match what {
        OilDoing::Filled => "filled",
        OilDoing::Added => "added",
        OilDoing::Drained => "drained",
        OilDoing::FilterChanged => "filter changed",
        OilDoing::FilterCut => "filter cut open",
    }
}

/// Oil and filter.
#[derive(Clone, Copy)]
struct Noting {
    oil: Oil,
    what: Draft,
    amount: SaidField,
    words: Draft,
}

impl Noting {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str, start: &str| {
            Draft::or(oil.opened.draft(&format!("oil/noted/{name}")), start)
        };
        Self {
            oil,
            what: draft("what", OilDoing::Drained.id()),
            amount: SaidField::of(draft("amount", ""), VOLUME),
            words: draft("words", ""),
        }
    }

    fn section(self) -> El {
        let doings = OilDoing::ALL
            .iter()
            .map(|one| Word::of(one.id(), doing_words(*one)));
        let what = pick(
            "oil-doing",
            "What was done",
            "",
            doings.collect(),
            move || self.what.get(),
            move |id| self.what.set(id),
        );
        let amount = self.amount.field("oil-amount", "How much", false);
        let said = word_field(
            "oil-words",
            "Grade, filter, what was seen",
            "",
            self.words,
            WORDS_AT_MOST,
            || None,
        );
        let save = button("", "Write it down", "oil-note-save", move || self.save());
        let so_far = Piece::live(move || {
            self.oil.view.with(|view| {
                let lines: Vec<String> =
                    view.build.oil.notes.iter().rev().map(note_words).collect();
                sentences("", &lines).test("oil-notes").into()
            })
        });
        section("Oil and filter")
            .with(what)
            .with(amount.piece())
            .with(said)
            .with(row([save.into()]))
            .with(so_far)
    }

    fn save(self) {
        let text = self.words.now().trim().to_owned();
        let (Ok(amount), Some(what)) = (self.amount.now(), OilDoing::from_id(&self.what.now()))
        else {
            return;
        };
        if too_long(&text, WORDS_AT_MOST).is_some() {
            return;
        }
        let wrote = self.oil.opened.write_down(Body::OilNoted(OilNoted {
            what,
            amount,
            kind: None,
            words: (!text.is_empty()).then_some(text),
        }));
        if wrote.is_some() {
            self.amount.clear();
            self.words.clear();
        }
    }
}

fn note_words(note: &OilNote) -> String {
    let amount = note.amount.as_ref().map(|amount| words(&amount.said));
    let parts = [amount, note.kind.clone(), note.words.clone()];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    if parts.is_empty() {
        doing_words(note.what).to_owned()
    } else {
        format!("{}: {}", doing_words(note.what), parts.join(", "))
    }
}
