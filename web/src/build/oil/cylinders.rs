//! Compression and leak-down, cylinder by cylinder.

use assembly_core::describe::{Finding, Given};
use assembly_core::measure::Estimate;
use assembly_core::oil::running_in::{COMPRESSION_SPREAD, LEAK_DOWN};
use build_journal::Body;
use build_journal::fact::{BoreState, CompressionRead, LeakDownRead, Spot};
use build_journal::fold::Build;
use build_plan::{At, Place as Where};
use leptos::prelude::*;

use super::page::Oil;
use super::said::{PRESSURE, SaidField};
use crate::device::drafts::Draft;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p, row};
use crate::kit::section::{section, sentences};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;

/// Both forms.
pub(super) fn cylinder_forms(oil: Oil) -> Piece {
    Piece::all([
        Pumping::load(oil).section().into(),
        Leaking::load(oil).section().into(),
    ])
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
            .with(sentences("", LEAK_DOWN.cautions))
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
