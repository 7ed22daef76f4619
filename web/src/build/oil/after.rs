//! After the first fire: the log, oil and filter, compression, leak-down, and what
//! changes over time.

use assembly_core::describe::{Finding, Given};
use assembly_core::measure::Estimate;
use assembly_core::oil::running_in::COMPRESSION_SPREAD;
use assembly_core::quantity::{Kind, Unit, show, unit_or_usual};
use build_journal::Body;
use build_journal::fact::{BoreState, CompressionRead, LeakDownRead, OilDoing, OilNoted, Spot};
use build_journal::fold::{Build, OilView, TrendLine, TrendOf};
use build_plan::{At, Place as Where};
use leptos::prelude::*;

use assembly_core::describe::UsualUnits;

use super::page::Oil;
use super::place::Place;
use super::pressure::Units;
use super::run::table;
use super::said::{PRESSURE, SaidField, words};
use crate::device::drafts::Draft;
use crate::device::settings::{UnitClass, settings};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, link, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, shape};
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
        Pumping::load(oil).section().into(),
        Leaking::load(oil).section().into(),
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

fn note_words(note: &build_journal::fold::OilNote) -> String {
    let amount = note.amount.as_ref().map(|amount| words(&amount.said));
    let parts = [amount, note.kind.clone(), note.words.clone()];
    let parts: Vec<String> = parts.into_iter().flatten().collect();
    if parts.is_empty() {
        doing_words(note.what).to_owned()
    } else {
        format!("{}: {}", doing_words(note.what), parts.join(", "))
    }
}

/// Compression, cylinder by cylinder.
#[derive(Clone, Copy)]
struct Pumping {
    oil: Oil,
    cylinder: RwSignal<u8>,
    state: RwSignal<BoreState>,
    pressure: SaidField,
}

fn cylinders(oil: Oil) -> u8 {
    oil.view.with_untracked(|view| {
        let engine = view.build.engine.as_ref();
        engine.map_or(0, |described| described.engine.cylinders())
    })
}

fn cylinder_pick(oil: Oil, name: &str, cylinder: RwSignal<u8>) -> El {
    let all = (1..=cylinders(oil)).map(|number| Word::of(number.to_string(), number.to_string()));
    pick(
        name,
        "Cylinder",
        "",
        all.collect(),
        move || cylinder.get().to_string(),
        move |id| cylinder.set(id.parse().unwrap_or(1)),
    )
}

/// The next cylinder, and after the last the first.
fn next_cylinder(oil: Oil, cylinder: RwSignal<u8>) {
    let all = cylinders(oil).max(1);
    cylinder.update(|number| *number = if *number >= all { 1 } else { *number + 1 });
}

fn at(cylinder: u8) -> Spot {
    Spot::Known(Where::of(At::Cylinder(cylinder)))
}

impl Pumping {
    fn load(oil: Oil) -> Self {
        let draft = Draft::of(oil.opened.draft("oil/compression"));
        Self {
            oil,
            cylinder: RwSignal::new(1),
            state: RwSignal::new(BoreState::Dry),
            pressure: SaidField::of(draft, PRESSURE),
        }
    }

    fn section(self) -> El {
        let state = pick(
            "compression-state",
            "Piston",
            "",
            vec![
                Word::of("dry", "as it is"),
                Word::of("wet", "with a spoon of oil"),
            ],
            move || self.state.get().id().to_owned(),
            move |id| {
                self.state
                    .set(BoreState::from_id(&id).unwrap_or(BoreState::Dry))
            },
        );
        let pressure = self
            .pressure
            .field("compression", "Compression", true)
            .next_word("Write")
            .on_next(move || self.save());
        let save = button(
            "",
            "Write it, next cylinder",
            "compression-save",
            move || {
                self.save();
            },
        );
        let now = Piece::live(move || self.oil.view.with(|view| spread(&view.build).into()));
        section("Compression")
            .with(sentences("", COMPRESSION_SPREAD.cautions))
            .with(cylinder_pick(
                self.oil,
                "compression-cylinder",
                self.cylinder,
            ))
            .with(state)
            .with(pressure.piece())
            .with(row([save.into()]))
            .with(now)
    }

    fn save(self) {
        let Ok(Some(pressure)) = self.pressure.now() else {
            return;
        };
        let wrote = self
            .oil
            .opened
            .write_down(Body::CompressionRead(CompressionRead {
                place: at(self.cylinder.get_untracked()),
                pressure,
                state: self.state.get_untracked(),
            }));
        if wrote.is_some() {
            self.pressure.clear();
            next_cylinder(self.oil, self.cylinder);
        }
    }
}

/// The latest of all cylinders held against each other.
fn spread(build: &Build) -> Option<El> {
    let all = build.engine.as_ref()?.engine.cylinders();
    let latest = |cylinder: u8, state: BoreState| {
        let notes = build.oil.compression.iter().rev();
        let mut own = notes.filter(|one| one.cylinder == cylinder && one.state == state);
        own.find_map(|one| one.pressure.si())
    };
    let dry: Vec<f64> = (1..=all)
        .filter_map(|cylinder| latest(cylinder, BoreState::Dry))
        .collect();
    let wet: Vec<f64> = (1..=all)
        .filter_map(|cylinder| latest(cylinder, BoreState::Wet))
        .collect();
    if dry.len() < usize::from(all) {
        let words = format!("{} of {all} cylinders read.", dry.len());
        return Some(p(&words).test("compression-spread"));
    }
    let mut given = Given::new();
    for pressure in dry {
        given.push("dry", Estimate::exact(pressure));
    }
    if wet.len() == usize::from(all) {
        for pressure in wet {
            given.push("wet", Estimate::exact(pressure));
        }
    }
    let answer = match COMPRESSION_SPREAD.answer(&given) {
        Ok(answer) => answer,
        Err(error) => return Some(note("wrong", &error.to_string())),
    };
    let part = answer.get("lowest-by-highest")?.value();
    let head = format!("The lowest has {:.0} % of the highest.", 100.0 * part);
    let found: Vec<&str> = answer.findings().iter().map(text).collect();
    Some(
        el("div")
            .test("compression-spread")
            .with(p(&head))
            .with(sentences("findings", &found)),
    )
}

fn text(finding: &Finding) -> &str {
    &finding.text
}

/// Leak-down, cylinder by cylinder.
#[derive(Clone, Copy)]
struct Leaking {
    oil: Oil,
    cylinder: RwSignal<u8>,
    supply: SaidField,
    held: SaidField,
    heard: Draft,
}

impl Leaking {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str, start: &str| {
            Draft::or(oil.opened.draft(&format!("oil/leak-down/{name}")), start)
        };
        Self {
            oil,
            cylinder: RwSignal::new(1),
            supply: SaidField::of(draft("supply", ""), PRESSURE),
            held: SaidField::of(draft("held", ""), PRESSURE),
            heard: draft("heard", ""),
        }
    }

    fn section(self) -> El {
        let supply = self
            .supply
            .field("leak-supply", "First gauge: supply", true);
        let held = self
            .held
            .field("leak-held", "Second gauge: cylinder", true)
            .next_word("Write")
            .on_next(move || self.save());
        let heard = word_field(
            "leak-heard",
            "Where it hisses",
            "Intake, exhaust, filler, radiator, neighbour",
            self.heard,
            WORDS_AT_MOST,
            || None,
        );
        let save = button("", "Write it, next cylinder", "leak-save", move || {
            self.save()
        });
        section("Leak-down")
            .with(sentences(
                "",
                assembly_core::oil::running_in::LEAK_DOWN.cautions,
            ))
            .with(cylinder_pick(self.oil, "leak-cylinder", self.cylinder))
            .with(supply.piece())
            .with(held.piece())
            .with(heard)
            .with(row([save.into()]))
    }

    fn save(self) {
        let heard = self.heard.now().trim().to_owned();
        let (Ok(Some(supply)), Ok(Some(held))) = (self.supply.now(), self.held.now()) else {
            return;
        };
        if too_long(&heard, WORDS_AT_MOST).is_some() {
            return;
        }
        let wrote = self.oil.opened.write_down(Body::LeakDownRead(LeakDownRead {
            place: at(self.cylinder.get_untracked()),
            supply,
            held,
            heard: (!heard.is_empty()).then_some(heard),
        }));
        if wrote.is_some() {
            // The supply stays: it is the same for the next cylinder.
            self.held.clear();
            self.heard.clear();
            next_cylinder(self.oil, self.cylinder);
        }
    }
}

/// What changes over time, alarms first.
fn trends(view: &OilView, class: UnitClass) -> Option<El> {
    let mut lines: Vec<&TrendLine> = view.trends.iter().collect();
    if lines.is_empty() {
        return None;
    }
    lines.sort_by_key(|line| line.alarm().is_none());
    let (several, once): (Vec<_>, Vec<_>) =
        lines.into_iter().partition(|line| line.trend.is_some());
    let rows = several.into_iter().map(|line| trend(line, class).into());
    let once: Vec<String> = once
        .into_iter()
        .map(|line| {
            let (name, unit) = named(line, class);
            format!("{name}: {}", values(line, unit))
        })
        .collect();
    let once = (!once.is_empty()).then(|| {
        let words = "Read once so far, with nothing to compare it with:";
        Piece::all([note("hint", words).into(), sentences("", &once).into()])
    });
    Some(
        section("What changes")
            .with(note("hint", "An alarm comes of a change, not of a level: gauges differ, your own stays the same."))
            .with(el("ul").class("entries").test("trends").all(rows))
            .with(once),
    )
}

/// What a trend is of, and its unit.
fn named(line: &TrendLine, class: UnitClass) -> (String, &'static Unit) {
    let units = Units::of(class);
    let per_cent = unit_or_usual(Kind::Ratio, "%");
    match line.of {
        TrendOf::Compression(cylinder) => {
            (format!("Compression, cylinder {cylinder}"), units.pressure)
        }
        TrendOf::LeakDown(cylinder) => (format!("Leak-down, cylinder {cylinder}"), per_cent),
        TrendOf::Lash(at) => (format!("Lash, {at}"), class.clearance()),
        TrendOf::OilLeak => ("Oil leak, by the predicted one".to_owned(), per_cent),
    }
}

/// All its readings, the first one first.
fn values(line: &TrendLine, unit: &'static Unit) -> String {
    let values: Vec<String> = line
        .points
        .iter()
        .map(|(_, value)| show(*value, None, unit).number)
        .collect();
    format!("{} {}", values.join(" → "), unit.symbol)
}

fn trend(line: &TrendLine, class: UnitClass) -> El {
    let (name, unit) = named(line, class);
    let (mark, said) = match (line.alarm(), &line.trend) {
        (Some(words), _) => (Mark::Bad, words),
        (None, Some(_)) => (Mark::Good, "No alarm."),
        (None, None) => (Mark::None, "One reading: nothing to compare with yet."),
    };
    el("li")
        .class("card")
        .test("trend")
        .attr("data-verdict", mark.name())
        .with(
            el("div")
                .class("oil-line")
                .with(shape(mark))
                .with(el("strong").text(&name)),
        )
        .with(p(&values(line, unit)))
        .with(p(said))
}
