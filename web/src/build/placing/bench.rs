//! The parts that lie on the bench, and one more of them.

use assembly_core::moves::shells::MadeSize;
use assembly_core::quantity::{Kind, Unit, read};
use build_journal::fact::{BenchSide, PartOnBench, Spot};
use build_journal::fold::OnBench;
use build_journal::{Body, PartId};
use build_plan::choice::{Choice, ChosenBy};
use build_plan::{At, Place};
use leptos::prelude::*;
use wasm_bindgen::JsCast;
use web_sys::HtmlElement;

use super::words::{side, steps};
use crate::build::Opened;
use crate::build::measure::tool_choice::{InHand, tool_choice};
use crate::device::chance;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::QuantityField;
use crate::kit::judged::capital;
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, row};
use crate::kit::section::{fold, fold_later};
use crate::kit::select::select;
use crate::kit::words::{too_long, word_field};

const NAME_AT_MOST: usize = 20;
const MAKE_AT_MOST: usize = 60;

/// The parts on the bench, each to be struck off.
pub fn bench(opened: Opened, choice: &'static Choice) -> Piece {
    Piece::live(move || {
        opened.build.with(|build| {
            let made = build.shell_sizes(choice);
            let all: Vec<Piece> = (build.places.on_bench(choice))
                .map(|part| one(opened, part, &made).into())
                .collect();
            if all.is_empty() {
                let words = match choice.by {
                    ChosenBy::Shells { .. } => "No half-shell is written down yet.",
                    ChosenBy::Shims => {
                        "No shim is written down yet. Begin with those that are in: measure each as it comes out, since the figure on it wears off."
                    }
                    _ => "Nothing beside what was measured at its place. A spare can be written down here.",
                };
                return note("hint", words).test("bench-empty").into();
            }
            el("ul").class("entries").test("bench").all(all).into()
        })
    })
}

fn one(opened: Opened, part: &OnBench, made: &[MadeSize]) -> El {
    let listed = &part.listed;
    let mut said: Vec<String> = Vec::new();
    match &part.size {
        Ok(typed) => said.push(typed.to_string()),
        Err(problem) => said.push(format!("{}: {problem}", listed.size)),
    }
    said.extend(listed.side.map(|one| side(one).to_owned()));
    said.extend(listed.steps.map(|mark| steps(mark, made)));
    said.extend(listed.make.clone());
    if let Some(place) = listed.place.as_ref().and_then(Spot::place) {
        said.push(format!("came out of {place}"));
    }
    if listed.tool.is_none() {
        said.push("not measured, by the box".to_owned());
    }
    let fact = part.fact;
    let strike = button("quiet", "Strike off", "strike-bench", move || {
        let _ = opened.strike(fact, None);
    })
    .attr("aria-label", &format!("strike “{}” off", listed.name));
    el("li")
        .class("bench-row")
        .test("bench-part")
        .with(
            el("p")
                .with(el("strong").text(&listed.name))
                .text(&format!(": {}", said.join(", "))),
        )
        .with(strike)
}

/// Puts the focus on the tool in hand, when nothing has it.
fn focus_the_tool() {
    let lost = document()
        .active_element()
        .is_none_or(|element| element.tag_name() == "BODY");
    let line = document().query_selector("[data-test=bench-tool] > summary");
    if let (true, Ok(Some(line))) = (lost, line) {
        let line: HtmlElement = line.unchecked_into();
        let _ = line.focus();
    }
}

/// A part that is being written down.
#[derive(Clone, Copy)]
struct Form {
    opened: Opened,
    settings: Settings,
    choice: &'static Choice,
    name: Draft,
    size: Draft,
    known: Draft,
    side: Draft,
    steps: Draft,
    make: Draft,
    place: Draft,
    in_hand: InHand,
    tried: RwSignal<bool>,
}

/// The form of one part more.
pub fn bench_form(opened: Opened, choice: &'static Choice, places: &[At]) -> Piece {
    let draft = |name: &str, start: &str| {
        Draft::or(opened.draft(&format!("bench/{}/{name}", choice.id)), start)
    };
    let form = Form {
        opened,
        settings: settings(),
        choice,
        name: draft("name", ""),
        size: draft("size", ""),
        known: draft("known", "measured"),
        side: draft("side", "upper"),
        steps: draft("steps", "0"),
        make: draft("make", ""),
        place: draft("place", ""),
        in_hand: InHand::of(opened, [choice.read_like]),
        tried: RwSignal::new(false),
    };
    let inside = form.fields(places);
    match choice.by {
        ChosenBy::Shells { .. } | ChosenBy::Shims => inside.into(),
        _ => fold("Write down a spare", inside).into(),
    }
}

impl Form {
    fn unit(self) -> &'static Unit {
        let measure = self.choice.read_like;
        self.settings.units().of(measure.kind, measure.units)
    }

    fn fields(self, places: &[At]) -> El {
        let part = self.choice.part.0;
        let name = word_field(
            "bench-name",
            "What is marked on it",
            "A letter or a number, in felt pen on its edge.",
            self.name,
            NAME_AT_MOST,
            move || self.wrong_name(),
        );
        let size = QuantityField::new(
            "bench-size",
            capital(self.choice.size),
            self.size,
            Kind::Length,
            move || self.unit(),
        )
        .wrong(move || {
            let empty = self.tried.get() && self.size.get().trim().is_empty();
            empty.then(|| format!("Type the {}.", self.choice.size))
        });
        let known = pick(
            "bench-known",
            "Where is this number from?",
            "",
            vec![
                Word::of("measured", "measured"),
                Word::of("box", "the box or the sheet"),
            ],
            move || self.known.get(),
            move |id| self.known.set(id),
        );
        let tool = Piece::when(move || self.known.get() != "box", move || self.tool());
        let says = el("p")
            .class("field-says wrong")
            .attr("aria-live", "polite")
            .test("says-bench-tool")
            .live_text(move || {
                let without = self.tried.get()
                    && self.known.get() != "box"
                    && self.in_hand.tool(self.choice.read_like).is_none();
                if without {
                    "Say what it was measured with, or that the number is the box's.".to_owned()
                } else {
                    String::new()
                }
            });
        let write = button(
            "",
            &format!("Put the {part} on the bench"),
            "bench-write",
            move || {
                self.write();
            },
        );
        el("div")
            .class("inset")
            .with(el("div").class("pair").with(name).with(size.piece()))
            .with(self.of_a_shell())
            .with(self.of_a_shim(places))
            .with(known)
            .with(tool)
            .with(says)
            .with(row([write.into()]))
    }

    /// The tool in hand, with all others folded away; all of them while there is none.
    fn tool(self) -> Piece {
        let measure = self.choice.read_like;
        let named = Memo::new(move |_| self.in_hand.tool(measure).map(|tool| tool.name));
        // The word that was picked is folded away with the others: whoever goes by
        // keys goes on from the line that it became.
        Effect::new(move |last: Option<Option<String>>| {
            let name = named.get();
            if last.is_some_and(|last| last != name) {
                request_animation_frame(focus_the_tool);
            }
            name
        });
        Piece::live(move || {
            let all = move || tool_choice(measure, self.in_hand);
            match named.get() {
                Some(name) => fold_later(&format!("Measured with the {name}"), all)
                    .test("bench-tool")
                    .into(),
                None => untrack(all),
            }
        })
    }

    fn of_a_shell(self) -> Piece {
        let ChosenBy::Shells { .. } = self.choice.by else {
            return Piece::none();
        };
        let sides = BenchSide::ALL
            .iter()
            .map(|one| Word::of(one.id(), side(*one)))
            .collect();
        let side = pick(
            "bench-side",
            "Where does it fit?",
            "A half with the oil hole or the groove goes above on most engines.",
            sides,
            move || self.side.get(),
            move |id| self.side.set(id),
        );
        let made =
            Memo::new(move |_| (self.opened.build).with(|build| build.shell_sizes(self.choice)));
        let mark = Piece::live(move || {
            let made = made.get();
            let marks: Vec<i32> = if made.is_empty() {
                vec![-1, 0, 1, 2]
            } else {
                made.iter().map(|one| one.steps).collect()
            };
            let marks = marks.into_iter();
            select(
                "bench-steps",
                "Its size mark",
                marks.map(|one| Word::of(one.to_string(), steps(one, &made))),
                move || self.steps.get(),
                move |id| self.steps.set(id),
            )
            .into()
        });
        let make = word_field(
            "bench-make",
            "Make and material, as on the box",
            "Never pair two makes.",
            self.make,
            MAKE_AT_MOST,
            || None,
        );
        Piece::all([
            side.into(),
            el("div").class("pair").with(mark).with(make).into(),
        ])
    }

    fn of_a_shim(self, places: &[At]) -> Piece {
        if self.choice.by != ChosenBy::Shims {
            return Piece::none();
        }
        let loose = std::iter::once(Word::of("", "loose, in none"));
        let all = (1..).zip(places).map(|(number, at): (usize, &At)| {
            Word::of(number.to_string(), capital(&at.to_string()))
        });
        let words: Vec<Word> = loose.chain(all).collect();
        select(
            "bench-place",
            "Which valve it came out of",
            words,
            move || self.place.get(),
            move |id| self.place.set(id),
        )
        .into()
    }

    fn wrong_name(self) -> Option<String> {
        let name = self.name.get();
        let name = name.trim();
        if name.is_empty() {
            return self.tried.get().then(|| {
                "Say what is marked on it: two alike can't be told apart later.".to_owned()
            });
        }
        self.opened.build.with(|build| {
            let same = |part: &OnBench| part.listed.name == name;
            build
                .places
                .on_bench(self.choice)
                .any(same)
                .then(|| format!("“{name}” is on the bench already: mark this one otherwise."))
        })
    }

    fn write(self) {
        self.tried.set(true);
        let (name, make) = (self.name.now(), self.make.now());
        let (name, make, size) = (name.trim(), make.trim(), self.size.now());
        let unit = untrack(|| self.unit());
        let can_be_read = read(&size, Kind::Length, unit).is_ok_and(|typed| typed.si() > 0.0);
        let box_says = self.known.now() == "box";
        let tool = untrack(|| self.in_hand.tool(self.choice.read_like));
        if untrack(|| self.wrong_name()).is_some()
            || too_long(name, NAME_AT_MOST).is_some()
            || too_long(make, MAKE_AT_MOST).is_some()
            || !can_be_read
            || (!box_says && tool.is_none())
        {
            return;
        }
        let shells = matches!(self.choice.by, ChosenBy::Shells { .. });
        let place = self.place.now().parse::<usize>().ok().and_then(|number| {
            self.opened.build.with_untracked(|build| {
                let places = self.choice.places(&build.engine.as_ref()?.engine);
                places.get(number.checked_sub(1)?).copied()
            })
        });
        let wrote = self.opened.write_down(Body::PartOnBench(PartOnBench {
            part: PartId::from_random(chance::bits()),
            choice: self.choice.id.to_owned(),
            name: name.to_owned(),
            size: size.trim().to_owned(),
            unit: unit.symbol.to_owned(),
            tool: tool.filter(|_| !box_says).map(|tool| tool.tool),
            setting: None,
            side: BenchSide::from_id(&self.side.now()).filter(|_| shells),
            steps: self.steps.now().parse().ok().filter(|_| shells),
            make: Some(make.to_owned()).filter(|make| shells && !make.is_empty()),
            place: place.map(|at| Spot::Known(Place::of(at))),
        }));
        if wrote.is_some() {
            // What the next one most likely shares with it stays.
            for draft in [self.name, self.size] {
                draft.clear();
            }
            self.place.set(String::new());
            self.tried.set(false);
        }
    }
}
