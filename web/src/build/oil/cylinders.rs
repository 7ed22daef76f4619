//! Compression and leak-down, cylinder by cylinder.

use assembly_core::describe::{Finding, Given, UsualUnits};
use assembly_core::measure::Estimate;
use assembly_core::oil::running_in::leak_down::{leak_hole, orifice_for};
use assembly_core::oil::running_in::{COMPRESSION_SPREAD, LEAK_DOWN};
use assembly_core::quantity::{Kind, read, show, unit_of};
use build_journal::Body;
use build_journal::fact::{BoreState, CompressionRead, LeakDownRead, Said, Spot};
use build_journal::fold::{Build, Number};
use build_plan::measure::COMPRESSION_PRESSURE;
use build_plan::{At, Place as Where};
use leptos::prelude::*;

use super::page::Oil;
use super::said::{PRESSURE, SaidField};
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, UnitClass, settings};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p, row};
use crate::kit::section::{section, sentences};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const ORIFICE: (Kind, UsualUnits) = (Kind::Length, UsualUnits::of("in", "mm"));

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
    // Dry it is a measure of the plan, wherever it was written down.
    let dry = |cylinder: u8| {
        let mut read = build
            .readings(&COMPRESSION_PRESSURE, At::Cylinder(cylinder))
            .rev();
        read.find_map(|taken| Some(taken.counting()?.si()))
    };
    let wet = |cylinder: u8| {
        let notes = build.oil.compression.iter().rev();
        let mut own = notes.filter(|one| one.cylinder == cylinder && one.state == BoreState::Wet);
        own.find_map(|one| one.pressure.si())
    };
    let dry: Vec<f64> = (1..=all).filter_map(dry).collect();
    let wet: Vec<f64> = (1..=all).filter_map(wet).collect();
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
    settings: Settings,
    cylinder: RwSignal<u8>,
    supply: SaidField,
    held: SaidField,
    orifice: SaidField,
    heard: Draft,
}

impl Leaking {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str, start: &str| {
            Draft::or(oil.opened.draft(&format!("oil/leak-down/{name}")), start)
        };
        Self {
            oil,
            settings: settings(),
            cylinder: RwSignal::new(1),
            supply: SaidField::of(draft("supply", ""), PRESSURE),
            held: SaidField::of(draft("held", ""), PRESSURE),
            orifice: SaidField::of(draft("orifice", ""), ORIFICE),
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
        let orifice = self
            .orifice
            .field("leak-orifice", "Orifice of your tester", false)
            .how("From its maker, or a drill that just goes in. Only readings through one orifice compare.");
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
            .with(orifice.piece())
            .with(heard)
            .with(row([save.into()]))
            .with(Piece::live(move || {
                self.oil.view.with(|view| {
                    let class = self.settings.units();
                    leaks(&view.build, class).into()
                })
            }))
    }

    fn save(self) {
        let heard = self.heard.now().trim().to_owned();
        let (Ok(Some(supply)), Ok(Some(held)), Ok(orifice)) =
            (self.supply.now(), self.held.now(), self.orifice.now())
        else {
            return;
        };
        if too_long(&heard, WORDS_AT_MOST).is_some() {
            return;
        }
        let wrote = self.oil.opened.write_down(Body::LeakDownRead(LeakDownRead {
            place: at(self.cylinder.get_untracked()),
            supply,
            held,
            orifice,
            heard: (!heard.is_empty()).then_some(heard),
        }));
        if wrote.is_some() {
            // Supply and orifice stay: they are the same for the next cylinder.
            self.held.clear();
            self.heard.clear();
            next_cylinder(self.oil, self.cylinder);
        }
    }
}

/// The latest leak of each cylinder, as a part of the supply and, where bore and
/// orifice are known, as the hole that would leak as much.
fn leaks(build: &Build, class: UnitClass) -> Option<El> {
    let all = build.engine.as_ref()?.engine.cylinders();
    let system = build.oil.system.as_ref();
    let bore = system.and_then(|known| known.told.bore.as_ref());
    let bore = bore.and_then(|said| read_said(said, Kind::Length));
    let gap = class.of(Kind::Length, UsualUnits::GAP);
    let lines = (1..=all).filter_map(|cylinder| {
        let mut notes = build.oil.leak_downs.iter().rev();
        let note = notes.find(|one| one.cylinder == cylinder)?;
        let Some(leak) = note.leak() else {
            return Some(format!(
                "Cylinder {cylinder}: more is held than comes in. The gauges are swapped, or one is off."
            ));
        };
        let mut words = format!("Cylinder {cylinder}: {:.0} %", 100.0 * leak);
        let orifice = note.orifice.as_ref().and_then(Number::si);
        let sizes = orifice.or_else(|| bore.map(orifice_for));
        if let (Some(orifice), Some(supply), Some(held)) =
            (sizes, note.supply.si(), note.held.si())
        {
            let hole = leak_hole(supply, held, orifice);
            words.push_str(&format!(", as through a hole of {}", show(hole, None, gap)));
        }
        let heard = note.heard.as_deref();
        heard.into_iter().for_each(|heard| words.push_str(&format!("; {heard}")));
        Some(words)
    });
    let lines: Vec<String> = lines.collect();
    (!lines.is_empty()).then(|| sentences("", &lines).test("leak-downs"))
}

fn read_said(said: &Said, kind: Kind) -> Option<f64> {
    let unit = unit_of(kind, &said.unit)?;
    Some(read(&said.typed, kind, unit).ok()?.si())
}
