//! After the first fire: the log, oil and filter, compression, leak-down, and what
//! changes over time.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::Kind;
use build_journal::Body;
use build_journal::fact::{OilDoing, OilNoted, Said};
use build_journal::fold::{MeterOf, OilNote, OilView};
use build_plan::measure::VALVE_LASH;
use leptos::prelude::*;

use super::cylinders::cylinder_forms;
use super::page::Oil;
use super::place::Place;
use super::row_table::table;
use super::said::{SaidField, words};
use super::trend::trends;
use super::used::used;
use crate::build::round;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, link, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::words::{too_long, word_field};
use crate::route::{Page, Route};

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
        note("lead", "After 20 to 30 minutes: drain it warm, cut the filter, look. Fine grey paste is normal; glitter, flakes or slivers are not. Hot oil burns: engine off, gloves on. A filter that was cut has sharp edges, and a rag with oil can catch fire.").into(),
        trends,
        log,
        Noting::load(oil).section().into(),
        Piece::live(move || oil.view.with(|view| lash(oil, view).into())),
        cylinder_forms(oil),
    ])
}

/// Lash after the run-in, where it is set at all: measured on its own screens, with
/// its alarm on the change above.
fn lash(oil: Oil, view: &OilView) -> Option<El> {
    let engine = &view.build.engine.as_ref()?.engine;
    if !VALVE_LASH.when.applies_to(engine) {
        return None;
    }
    let to = Route::Build(
        oil.opened.id.to_string(),
        Page::Measure(round::Place::Round(VALVE_LASH.id.to_owned(), 1)),
    );
    Some(
        section("Valve lash")
            .test("oil-lash")
            .with(note("lead", "Engine off, key out, plugs or their leads off: it is turned by hand. Set it again cold after the run-in, and write down what it was before you set it: a lash that has opened by five thou since the first setting is a lobe that wears. One that keeps closing is a seat that sinks."))
            .with(row([link("", &to, "Measure the lash").test("to-lash").into()])),
    )
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
    meter: SaidField,
    meter_of: Draft,
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
            meter: SaidField::of(draft("meter", ""), (Kind::Ratio, UsualUnits::NONE)),
            meter_of: draft("meter-of", MeterOf::Kilometres.symbol()),
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
        let meter = self
            .meter
            .field("oil-meter", "Odometer or hour meter", false)
            .how("At the mark, both times on level ground: what it uses is worked out from one filling to the next.");
        let meter_of = pick(
            "oil-meter-of",
            "It counts",
            "",
            MeterOf::ALL
                .map(|of| Word::of(of.symbol(), of.symbol()))
                .to_vec(),
            move || self.meter_of.get(),
            move |id| self.meter_of.set(id),
        );
        let settings = settings();
        let used = Piece::live(move || {
            let class = settings.units();
            self.oil
                .view
                .with(|view| used(&view.build.oil, class).into())
        });
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
            .with(meter.piece())
            .with(meter_of)
            .with(said)
            .with(row([save.into()]))
            .with(used)
            .with(so_far)
    }

    fn save(self) {
        let text = self.words.now().trim().to_owned();
        let (Ok(amount), Ok(meter)) = (self.amount.now(), self.meter.now()) else {
            return;
        };
        let Some(what) = OilDoing::from_id(&self.what.now()) else {
            return;
        };
        let unit = self.meter_of.now();
        let meter = meter.map(|said| Said { unit, ..said });
        if too_long(&text, WORDS_AT_MOST).is_some() {
            return;
        }
        let wrote = self.oil.opened.write_down(Body::OilNoted(OilNoted {
            what,
            amount,
            meter,
            kind: None,
            words: (!text.is_empty()).then_some(text),
        }));
        if wrote.is_some() {
            self.amount.clear();
            self.meter.clear();
            self.words.clear();
        }
    }
}

fn note_words(note: &OilNote) -> String {
    let amount = note.amount.as_ref().map(|amount| words(&amount.said));
    let meter = note
        .meter
        .map(|meter| format!("at {} {}", meter.value, meter.of.symbol()));
    let parts = [amount, meter, note.kind.clone(), note.words.clone()];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    if parts.is_empty() {
        doing_words(note.what).to_owned()
    } else {
        format!("{}: {}", doing_words(note.what), parts.join(", "))
    }
}
