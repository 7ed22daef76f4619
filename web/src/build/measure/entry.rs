//! Typing the reading of the place in hand.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Typed, Unit};
use build_journal::Body;
use build_journal::fact::{Reading, Spot as Where};
use build_journal::fold::{Beside, ListedTool, Taken};
use build_plan::Measure;
use leptos::prelude::*;
use web_sys::Element;

use super::asked::{Asked, focus_reading};
use super::holding::holding;
use super::order::Spot;
use super::picture::picture;
use super::places::readings_at;
use super::short::{beside, beside_lines, meaning_words, needle_words};
use super::temperature::Warmth;
use super::tool_choice::{InHand, has_tools, kind_of, tool_choice};
use super::zeroing::{setting_words, wants_setting, zeroing};
use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::field::{QuantityField, read_text};
use crate::kit::piece::{El, Piece, button, el, p};
use crate::kit::section::{fold, fold_later, sentences};

/// What the panel asks for.
#[derive(Clone, PartialEq)]
enum Asks {
    /// The tool for a measure.
    Tool(&'static str),
    /// How this tool is set.
    Setting(ListedTool),
    /// The number.
    Reading,
}

/// The place in hand, its tool, and what to do when it is done.
#[derive(Clone, Copy)]
struct Entry {
    opened: Opened,
    spot: Memo<Spot>,
    tool: Memo<Option<ListedTool>>,
    in_hand: InHand,
    /// What stands beside the place, worked out once for all that asks for it.
    near: Memo<Beside>,
    go_on: Callback<Spot>,
    asked: Asked,
    warmth: Warmth,
}

/// The reading of the place in hand: where, with what, and the number. `go_on`
/// goes to the next place after the one it is given.
#[must_use]
pub fn entry(spot: Memo<Spot>, in_hand: InHand, go_on: Callback<Spot>) -> El {
    let opened: Opened = expect_context();
    let measure = Memo::new_with_compare(
        move |_| spot.get().measure,
        |old: Option<&&'static Measure>, new| old.map(|one| one.id) != new.map(|one| one.id),
    );
    let tool = Memo::new(move |_| in_hand.tool(measure.get()));
    let asks = Memo::new(move |_| match tool.get() {
        None if has_tools(measure.get()) => Asks::Tool(measure.get().id),
        // Nothing known here reads it: it is written down all the same.
        None => Asks::Reading,
        Some(tool) if wants_setting(&tool) && tool.settings.is_empty() => Asks::Setting(tool),
        Some(_) => Asks::Reading,
    });
    let near = Memo::new(move |_| {
        let spot = spot.get();
        tool.with(|tool| {
            opened
                .build
                .with(|build| beside(build, &spot, tool.as_ref()))
        })
    });
    let entry = Entry {
        opened,
        spot,
        tool,
        in_hand,
        near,
        go_on,
        asked: Asked::of(opened),
        warmth: Warmth::of(opened),
    };
    let place = el("div")
        .class("entry-place")
        .attr("aria-live", "polite")
        .live(move || picture(&spot.get()).into())
        .with(
            el("p")
                .with(
                    el("span")
                        .class("entry-what")
                        .live_text(move || spot.get().measure.label.to_owned()),
                )
                .with(
                    el("strong")
                        .class("entry-where")
                        .test("entry-place")
                        // Which part it is on stands above.
                        .live_text(move || spot.get().on_its_part()),
                ),
        );
    let panel = el("section")
        .class("entry-panel")
        .test("entry")
        .with(place)
        .live(move || {
            let asks = asks.get();
            untrack(|| match &asks {
                Asks::Tool(_) => tool_choice(measure.get(), in_hand),
                Asks::Setting(tool) => zeroing(tool).into(),
                Asks::Reading => entry.reading(),
            })
        });
    // When what is asked changes, it is asked from the top of the panel.
    let element: Element = panel.element();
    Effect::new(move |last: Option<Asks>| {
        let asks = asks.get();
        if last.is_some_and(|last| last != asks) {
            element.scroll_into_view();
        }
        asks
    });
    panel
}

impl Entry {
    /// What is read is a number of this.
    fn kind(self) -> Kind {
        self.spot.get().measure.kind
    }

    /// Whether the tool's readings are what its needle shows.
    fn reads_needle(self) -> bool {
        self.tool.with(|tool| {
            let setting = tool.as_ref().and_then(|tool| tool.settings.last());
            setting.is_some_and(|setting| setting.set.needle.is_some())
        })
    }

    fn reading(self) -> Piece {
        let settings = settings();
        let draft = Memo::new(move |_| {
            Draft::of(
                self.opened
                    .draft(&format!("reading/{}", self.spot.get().name())),
            )
        });
        let unit = move || {
            let usual = if self.reads_needle() {
                UsualUnits::FEELER
            } else {
                self.spot.get().measure.units
            };
            settings.units().of(untrack(|| self.kind()), usual)
        };
        let label = move || {
            let words = if self.reads_needle() {
                "Needle from zero, clockwise plus"
            } else {
                "Reading"
            };
            words.to_owned()
        };
        let kind = untrack(|| self.kind());
        let field = QuantityField::new("reading", "", draft.get_untracked(), kind, unit)
            .live_draft(move || draft.get())
            .live_label(label)
            .meaning(move |text| self.says(text, unit()))
            .on_next(move || self.accept(draft.get_untracked(), untrack(unit)))
            .next_word("Keep")
            .begin_here();
        let around = Piece::live(move || self.near.with(beside_lines));
        // Two meanings are rare: nothing is drawn anew for the digits of others.
        let meant = Memo::new(move |_| {
            let meant = self.meanings(&draft.get().get(), unit());
            if meant.len() < 2 { Vec::new() } else { meant }
        });
        let either = Piece::live(move || {
            let meant = meant.get();
            untrack(|| self.either(draft.get(), &meant, unit()))
        });
        let here = Piece::live(move || {
            let spot = self.spot.get();
            let readings = self.opened.build.with(|build| readings_at(build, &spot));
            let standing = readings.iter().filter(|taken| taken.struck.is_none());
            let rows: Vec<Piece> = standing.map(|taken| self.reading_row(taken)).collect();
            (!rows.is_empty())
                .then(|| el("ul").class("readings-here").all(rows))
                .into()
        });
        let how = fold_later("How to measure it", move || Piece::live(move || self.how()));
        let tool = Piece::live(move || {
            let tool = self.tool.get();
            untrack(|| tool.map(|tool| self.tool_part(&tool))).into()
        });
        Piece::all([
            field.piece().into(),
            either,
            self.asked.piece(),
            around,
            here,
            tool,
            self.warmth.piece(),
            how.into(),
        ])
    }

    /// How to read the place in hand with the tool in hand.
    fn how(self) -> Piece {
        let measure = self.spot.get().measure;
        let lines: Vec<&str> = (measure.how.iter().chain(measure.cautions))
            .copied()
            .collect();
        let task = self.tool.with(|tool| {
            let kind = tool.as_ref().and_then(kind_of);
            let mut tasks = measure.tasks().iter().copied();
            tasks.find(|task| kind.is_none_or(|kind| kind.can(*task)))
        });
        Piece::all([task.and_then(holding).into(), sentences("", &lines).into()])
    }

    /// What the text means, when it is only the last digits of a reading.
    fn meanings(self, text: &str, unit: &'static Unit) -> Vec<Typed> {
        self.near.with(|near| near.meaning(text, unit))
    }

    /// What is said of a text before it is kept, where it is not the whole size.
    fn says(self, text: &str, unit: &'static Unit) -> Option<String> {
        if self.reads_needle() {
            let typed = read_text(text, self.kind(), unit)?.ok()?;
            return self.opened.build.with(|build| {
                self.tool
                    .with(|tool| needle_words(build, tool.as_ref(), &typed))
            });
        }
        meaning_words(&self.meanings(text, unit))
    }

    /// Last digits that two readings end in: a button for each.
    fn either(self, draft: Draft, meant: &[Typed], unit: &'static Unit) -> Piece {
        if meant.is_empty() {
            return Piece::none();
        }
        let buttons = meant.iter().enumerate().map(|(at, one)| {
            let whole = one.text().to_owned();
            let name = format!("meant-{}", at + 1);
            button("", &one.to_string(), &name, move || {
                let keyed = draft.now().trim().to_owned();
                self.keep(draft, whole.clone(), Some(keyed), unit);
                focus_reading();
            })
            .into()
        });
        el("div").class("pair").all(buttons).into()
    }

    /// Writes down what is typed and goes on. With nothing typed, this place
    /// stays open; with something wrong, the field says what.
    fn accept(self, draft: Draft, unit: &'static Unit) {
        let spot = self.spot.get_untracked();
        let text = draft.now().trim().to_owned();
        match untrack(|| self.meanings(&text, unit)).as_slice() {
            [] => {}
            [one] => return self.keep(draft, one.text().to_owned(), Some(text), unit),
            // A button for each stands below the field.
            _ => return,
        }
        match read_text(&text, spot.measure.kind, unit) {
            None => self.go_on.run(spot),
            Some(Err(_)) => {}
            Some(Ok(_)) => self.keep(draft, text, None, unit),
        }
    }

    /// Writes a reading of the place in hand down and goes on.
    fn keep(self, draft: Draft, typed: String, keyed: Option<String>, unit: &'static Unit) {
        let spot = self.spot.get_untracked();
        let tool = self.tool.get_untracked();
        let setting = tool.as_ref().and_then(|tool| tool.settings.last());
        let written = self.opened.write_down(Body::Reading(
            Reading {
                measure: spot.measure.id.to_owned(),
                place: Where::Known(spot.place),
                typed,
                unit: unit.symbol.to_owned(),
                tool: tool.as_ref().map(|tool| tool.tool),
                setting: setting.map(|setting| setting.set.setting),
                temperature: self.warmth.now(),
                condition: None,
                keyed,
            }
            .into(),
        ));
        if let Some(fact) = written {
            draft.clear();
            self.asked.look_at(fact);
            self.go_on.run(spot);
        }
    }

    /// A reading that stands here, to be struck out.
    fn reading_row(self, taken: &Taken) -> Piece {
        let fact = taken.fact;
        let words = match &taken.value {
            Ok(typed) => typed.to_string(),
            Err(error) => format!("{}: {error}", taken.reading.typed),
        };
        let strike = button("quiet", "Strike out", "strike-reading", move || {
            let _ = self.opened.strike(fact, None);
        })
        .attr("aria-label", &format!("strike out {words}"));
        el("li")
            .class("reading-here")
            .with(el("span").text(&words))
            .with(strike)
            .into()
    }

    /// The tool in use, how it is set, and how to take another.
    fn tool_part(self, tool: &ListedTool) -> El {
        let (title, tool) = (format!("With the {}", tool.name), tool.clone());
        fold_later(&title, move || {
            let setting = tool.settings.last().map(|setting| {
                let words = self
                    .opened
                    .build
                    .with_untracked(|build| setting_words(build, setting));
                p(&words)
            });
            let anew = wants_setting(&tool).then(|| fold("Set it anew", zeroing(&tool)));
            let another = tool_choice(self.spot.get_untracked().measure, self.in_hand);
            Piece::all([setting.into(), anew.into(), another])
        })
    }
}
