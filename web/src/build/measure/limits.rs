//! The limits of the oil clearance: typed, with where they came from.

use assembly_core::measure::{Window, WindowError};
use assembly_core::quantity::Unit;
use build_journal::Body;
use build_journal::fact::{LimitsOrigin, LimitsSet, SizedPart};
use build_journal::fold::{Build, Limits};
use build_plan::Measure;
use build_plan::measure::{MAIN_OIL_CLEARANCE, ROD_OIL_CLEARANCE};
use leptos::prelude::*;

use super::sizes::{listed_sizes, measure_of_sizes};
use super::tools::foreseen;
use crate::build::Opened;
use crate::build::round::all_limits;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, UnitClass, settings};
use crate::kit::judged::window_words;
use crate::kit::limit::{Limit, LimitField};
use crate::kit::pick::{Word, pick};
use crate::kit::piece::{El, Piece, button, el, note, p, row, title};
use crate::kit::section::section;
use crate::kit::toast::{Toast, toast};
use crate::kit::words::{too_long, word_field};

const NOTE_AT_MOST: usize = 200;
/// What limits are, said once on top.
pub const LEAD: &str = "The limits that count are those you type from your own sheet. Without any, nothing is called good.";
const CONFLICT: &str = "These were set without knowing of each other. Strike one out, or set new ones: those take the place of all.";

/// The page of the limits of the main oil clearance.
#[must_use]
pub fn limits_page() -> Piece {
    Piece::all([
        title("Limits of the main oil clearance").into(),
        note("lead", LEAD).into(),
        foreseen(),
        limits_of(&MAIN_OIL_CLEARANCE),
        all_limits().into(),
    ])
}

/// The limits of any measure: those in force, and a form to set them.
#[must_use]
pub fn limits_of(measure: &'static Measure) -> Piece {
    let opened: Opened = expect_context();
    let settings = settings();
    let in_force = Memo::new(move |_| {
        opened.build.with(|build| {
            let own = |one: &&Limits| one.set.measure == measure.id;
            build.limits.iter().filter(own).cloned().collect::<Vec<_>>()
        })
    });
    let shown = Piece::live(move || {
        let limits = in_force.get();
        if limits.is_empty() {
            return p("None yet.").test("limits-none").into();
        }
        let conflict = (limits.len() > 1)
            .then(|| note("notice notice-caution", CONFLICT).test("limits-conflict"));
        let rows = limits
            .iter()
            .map(|limits| in_force_row(opened, (measure, settings.units()), limits));
        Piece::all([conflict.into(), el("ul").class("entries").all(rows).into()])
    });
    Piece::all([
        section("In force").with(shown).into(),
        Setting::load(measure, opened, settings, in_force)
            .section()
            .into(),
        SizedPart::of_measure(measure).map_or_else(Piece::none, |part| {
            listed_sizes(part, measure_of_sizes(measure))
        }),
    ])
}

/// Where limits come from, in words.
#[must_use]
pub const fn origin_words(origin: LimitsOrigin) -> &'static str {
    match origin {
        LimitsOrigin::Sheet => "the maker's sheet",
        LimitsOrigin::PartSheet => "the sheet of the part",
        LimitsOrigin::OwnChoice => "own choice",
    }
}

/// Asks where limits or sizes come from.
#[must_use]
pub fn origin_pick(name: &str, origin: Draft) -> El {
    let origins = vec![
        Word::of("sheet", "the maker's sheet"),
        Word::of("part-sheet", "the sheet of the part"),
        Word::of("own-choice", "my own choice"),
    ];
    pick(
        name,
        "Where do they come from?",
        "",
        origins,
        move || origin.get(),
        move |id| origin.set(id),
    )
}

/// What was picked there.
#[must_use]
pub fn origin_from(id: &str) -> LimitsOrigin {
    match id {
        "part-sheet" => LimitsOrigin::PartSheet,
        "own-choice" => LimitsOrigin::OwnChoice,
        _ => LimitsOrigin::Sheet,
    }
}

/// A window in the units of the builder's choice, with the others behind it.
#[must_use]
pub fn in_both_units(window: &Window, measure: &Measure, units: UnitClass) -> String {
    let [own, other] = [units, units.other()].map(|units| units.of(measure.kind, measure.units));
    if own.symbol == other.symbol {
        return window_words(window, own);
    }
    format!(
        "{} ({})",
        window_words(window, own),
        window_words(window, other)
    )
}

fn in_force_row(
    opened: Opened,
    (measure, units): (&'static Measure, UnitClass),
    limits: &Limits,
) -> Piece {
    let fact = limits.fact;
    let typed = match (&limits.low, &limits.high) {
        (Some(low), Some(high)) => format!("{low} to {high}"),
        (Some(low), None) => format!("at least {low}"),
        (None, Some(high)) => format!("at most {high}"),
        (None, None) => "nothing that can be read".to_owned(),
    };
    let from = format!(
        "From {}: {}",
        origin_words(limits.set.origin),
        limits.set.origin_note
    );
    let typed_in = limits
        .low
        .as_ref()
        .or(limits.high.as_ref())
        .map(|typed| typed.unit().symbol);
    let converted = limits.window.as_ref().ok().and_then(|window| {
        let both = [units, units.other()].map(|units| units.of(measure.kind, measure.units));
        let words: Vec<String> = both
            .iter()
            .filter(|unit| Some(unit.symbol) != typed_in)
            .map(|unit| window_words(window, unit))
            .collect();
        (!words.is_empty()).then(|| p(&format!("that is {}", words.join(", or "))))
    });
    let problem = limits
        .window
        .as_ref()
        .err()
        .map(|problem| note("wrong", &problem.to_string()));
    let strike = button("quiet", "Strike out", "strike-limits", move || {
        let _ = opened.strike(fact, None);
    });
    el("li")
        .class("card")
        .test("limits")
        .with(note("limits-typed", &typed))
        .with(converted)
        .with(p(&from))
        .with(problem)
        .with(row([strike.into()]))
        .into()
}

/// Limits that are being typed.
#[derive(Clone, Copy)]
struct Setting {
    measure: &'static Measure,
    opened: Opened,
    settings: Settings,
    toast: Toast,
    in_force: Memo<Vec<Limits>>,
    low: LimitField,
    high: LimitField,
    origin: Draft,
    note: Draft,
    tried: RwSignal<bool>,
}

impl Setting {
    fn load(
        measure: &'static Measure,
        opened: Opened,
        settings: Settings,
        in_force: Memo<Vec<Limits>>,
    ) -> Self {
        let draft = |name: &str, start: &str| {
            let name = opened.draft(&format!("limits/{}/{name}", measure.id));
            Draft::or(name, start)
        };
        // What no running clearance can be is asked about; other measures may be
        // of any size.
        let is_running = [MAIN_OIL_CLEARANCE.id, ROD_OIL_CLEARANCE.id].contains(&measure.id);
        let side = |name: &str| {
            let draft = draft(name, "");
            if is_running {
                LimitField::of(draft)
            } else {
                LimitField::of_anything(draft)
            }
        };
        Self {
            measure,
            opened,
            settings,
            toast: toast(),
            in_force,
            low: side("low"),
            high: side("high"),
            origin: draft("origin", "sheet"),
            note: draft("note", ""),
            tried: RwSignal::new(false),
        }
    }

    fn unit(self) -> &'static Unit {
        self.settings
            .units()
            .of(self.measure.kind, self.measure.units)
    }

    /// The window of what is typed; `Err(None)` while a text cannot be read or is
    /// asked about.
    fn window(self) -> Result<Window, Option<WindowError>> {
        let side = |limit: LimitField| match limit.get(self.measure.kind, self.unit()) {
            Limit::None => Ok(None),
            Limit::Typed(typed) => Ok(Some(typed.si())),
            Limit::NotYet => Err(None),
        };
        let (low, high) = (side(self.low)?, side(self.high)?);
        Window::new(low, high).map_err(Some)
    }

    fn wrong(self) -> Option<String> {
        match self.window() {
            Err(Some(WindowError::NoLimit)) if !self.tried.get() => None,
            Err(Some(error)) => Some(error.to_string()),
            _ => None,
        }
    }

    fn note_wrong(self) -> Option<String> {
        (self.tried.get() && self.note.get().trim().is_empty())
            .then(|| "Say which sheet and page, or why this choice.".to_owned())
    }

    fn section(self) -> El {
        let unit = move || self.unit();
        let low = self
            .low
            .piece("limits-low", "At least", self.measure.kind, unit, || None);
        let wrong = move || self.wrong();
        let high = self
            .high
            .piece("limits-high", "At most", self.measure.kind, unit, wrong);
        let pair = el("div").class("pair").with(low).with(high);
        let origin = origin_pick("limits-origin", self.origin);
        let which = word_field(
            "limits-note",
            "Which sheet and page, or why",
            "",
            self.note,
            NOTE_AT_MOST,
            move || self.note_wrong(),
        );
        let save = button("", "Set these limits", "limits-save", move || self.save());
        section("Set limits")
            .with(pair)
            .with(self.tripwire())
            .with(origin)
            .with(which)
            .with(row([save.into()]))
    }

    /// The trade's rule of thumb, for what it is.
    fn tripwire(self) -> Option<El> {
        let words = self.measure.tripwire?.words;
        let here = move || {
            let practice = self
                .opened
                .build
                .with(|build| common_practice(build, self.measure));
            let here =
                practice.map(|window| format!(", here {}", window_words(&window, self.unit())));
            format!(
                "{}. It is there to catch slips; the maker's sheet decides.",
                here.unwrap_or_default()
            )
        };
        let paragraph = el("p")
            .class("tripwire")
            .test("tripwire")
            .with(el("strong").text("Common practice, not a limit"))
            .text(": ")
            .text(words)
            .live_text(here);
        Some(paragraph)
    }

    fn save(self) {
        self.tried.set(true);
        self.low.insist();
        self.high.insist();
        let said = self.note.now().trim().to_owned();
        if untrack(|| self.window()).is_err()
            || said.is_empty()
            || too_long(&said, NOTE_AT_MOST).is_some()
        {
            return;
        }
        let typed =
            |draft: Draft| Some(draft.now().trim().to_owned()).filter(|text| !text.is_empty());
        let wrote = self.opened.write_down(Body::LimitsSet(LimitsSet {
            measure: self.measure.id.to_owned(),
            place: None,
            low: typed(self.low.draft),
            high: typed(self.high.draft),
            unit: untrack(|| self.unit()).symbol.to_owned(),
            origin: origin_from(&self.origin.now()),
            origin_note: said,
            replaces: self
                .in_force
                .get_untracked()
                .iter()
                .map(|limits| limits.fact)
                .collect(),
        }));
        if wrote.is_some() {
            for draft in [self.low.draft, self.high.draft, self.note] {
                draft.clear();
            }
            self.tried.set(false);
            self.toast.say("The limits are set.");
        }
    }
}

/// What common practice would expect of a measure, once its size is known.
fn common_practice(build: &Build, measure: &Measure) -> Option<Window> {
    if measure.id == MAIN_OIL_CLEARANCE.id {
        return build.mains.iter().find_map(|one| one.common_practice);
    }
    if measure.id == ROD_OIL_CLEARANCE.id {
        return build.rods.iter().find_map(|one| one.fit.common_practice);
    }
    let mut fits = build.fits().filter(|fit| fit.measure.id == measure.id);
    fits.find_map(|fit| fit.common_practice)
}
