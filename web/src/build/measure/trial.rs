//! A tool tried out: one thing read five times, how far the readings lie apart,
//! and where the number for its scatter comes from.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, Typed, Unit, show, unit_of, units_of};
use assembly_core::tool::{Instrument, SelfTest, Spread, USUAL_READINGS};
use build_journal::fact::ToolTried;
use build_journal::fold::{ListedTool, ToolTrial, is_wild, scatter_of};
use build_journal::{Body, ToolId};
use leptos::prelude::*;

use crate::build::Opened;
use crate::device::drafts::Draft;
use crate::device::settings::{Settings, settings};
use crate::kit::field::{QuantityField, read_text};
use crate::kit::piece::{El, Piece, button, drawn, el, p, row};
use crate::kit::section::{fold, sentences};
use crate::kit::when;
use crate::kit::words::{too_long, word_field};

const HOW: [&str; 3] = [
    "One place of one part or standard, five times.",
    "Take the tool off and set it anew each time, and do not look at the last number.",
    "It finds the feel, not the zero: a tool that is off is off alike every time.",
];
const WORDS_AT_MOST: usize = 100;
/// A trial of more readings is not typed by hand.
const READINGS_AT_MOST: usize = 30;
const BETWEEN: char = '\n';

/// What is known of a tool's scatter, its trials, and the way to try it out.
#[must_use]
pub fn trial(opened: Opened, tool: &ListedTool) -> Piece {
    let Some(kind) = tool.kind() else {
        return Piece::none();
    };
    let word = if tool.trials.is_empty() {
        "Try it out: five readings"
    } else {
        "Try it out again: five readings"
    };
    Piece::all([
        source(opened, tool, kind).into(),
        trials(opened, tool, kind),
        fold(word, Trying::of(opened, tool.tool, kind).piece())
            .test("try-out")
            .into(),
    ])
}

/// The scatter that readings of this tool count with, and where it comes from.
fn source(opened: Opened, tool: &ListedTool, kind: &'static Instrument) -> El {
    let settings = settings();
    let (mark, words) = match tool.tried() {
        Some((trial, shows)) => (
            "own",
            format!(
                "{}, {}",
                spread_words(shows.repeat, kind, settings),
                whose(opened, trial)
            ),
        ),
        None => {
            let common = match kind.repeat {
                Spread::Always(deviation) => spread_words(deviation, kind, settings),
                Spread::OfReading(part) => format!("{:.1} % of it", part * 100.0),
            };
            ("catalogue", format!("{common}, common for its kind"))
        }
    };
    p(&format!("One reading scatters by {words}."))
        .test("scatter")
        .attr("data-from", mark)
}

/// "your five readings of 30 Nov 2026 (the setting rod)".
fn whose(opened: Opened, trial: &ToolTrial) -> String {
    let day = opened
        .journal
        .with_untracked(|journal| journal.get(trial.fact).map(|fact| when::day(fact.clock())));
    let of = trial.tried.words.as_deref();
    let of = of.map(|words| format!(" ({words})"));
    let count = match trial.tried.readings.len() {
        5 => "five".to_owned(),
        count => count.to_string(),
    };
    format!(
        "from your {count} readings of {}{}",
        day.unwrap_or_default(),
        of.unwrap_or_default()
    )
}

/// All trials, the newest first: whose number counts, or why it does not.
fn trials(opened: Opened, tool: &ListedTool, kind: &'static Instrument) -> Piece {
    let settings = settings();
    let in_force = tool.tried().map(|(trial, _)| trial.fact);
    let rows = tool.trials.iter().rev().map(|trial| {
        let fact = trial.fact;
        let says = match trial.shows(Some(kind)) {
            Ok(shows) => {
                let words = spread_words(shows.repeat, kind, settings);
                let counts = if in_force == Some(fact) {
                    "counts"
                } else {
                    "a newer one counts"
                };
                format!("{words}, {}: {counts}.", whose(opened, trial))
            }
            Err(why) => format!("Does not count: {why}."),
        };
        let strike = button("quiet", "Strike out", "strike-trial", move || {
            let _ = opened.strike(fact, None);
        })
        .attr("aria-label", &format!("strike out the trial: {says}"));
        el("li")
            .class("reading-here")
            .test("trial")
            .with(el("span").text(&says))
            .with(strike)
            .into()
    });
    let rows: Vec<Piece> = rows.collect();
    (!rows.is_empty())
        .then(|| el("ul").class("readings-here").all(rows))
        .into()
}

/// A spread in the small unit of its kind.
fn spread_words(si: f64, kind: &Instrument, settings: Settings) -> String {
    let unit = if kind.kind == Kind::Length {
        settings.units().of(Kind::Length, UsualUnits::GAP)
    } else {
        usual(kind.kind, settings)
    };
    show(si, Some(si), unit).give_or_take.map_or_else(
        || "nothing".to_owned(),
        |give| format!("{give} {}", unit.symbol),
    )
}

/// The unit that readings of this kind are usually said in.
fn usual(kind: Kind, settings: Settings) -> &'static Unit {
    let usual = match kind {
        Kind::Length => UsualUnits::SIZE,
        Kind::Force => UsualUnits::FORCE,
        Kind::Torque => UsualUnits::TORQUE,
        Kind::Temperature => UsualUnits::TEMPERATURE,
        Kind::Pressure => UsualUnits::of("psi", "bar"),
        _ => {
            let first = units_of(kind).map(|unit| unit.symbol).next();
            let first = first.unwrap_or_default();
            UsualUnits::of(first, first)
        }
    };
    settings.units().of(kind, usual)
}

/// A trial that is being typed.
#[derive(Clone, Copy)]
struct Trying {
    opened: Opened,
    tool: ToolId,
    kind: &'static Instrument,
    settings: Settings,
    /// The readings so far, as typed.
    readings: Draft,
    /// The unit of all of them: that of the first.
    unit: Draft,
    reading: Draft,
    words: Draft,
}

impl Trying {
    fn of(opened: Opened, tool: ToolId, kind: &'static Instrument) -> Self {
        let draft = |name: &str| Draft::of(opened.draft(&format!("trial/{tool}/{name}")));
        Self {
            opened,
            tool,
            kind,
            settings: settings(),
            readings: draft("readings"),
            unit: draft("unit"),
            reading: draft("reading"),
            words: draft("words"),
        }
    }

    fn texts(text: &str) -> Vec<String> {
        let texts = text.split(BETWEEN).filter(|one| !one.is_empty());
        texts.map(str::to_owned).collect()
    }

    /// The unit of a lone number: it stays what it was for the first reading.
    fn unit(self) -> &'static Unit {
        unit_of(self.kind.kind, &self.unit.get())
            .unwrap_or_else(|| usual(self.kind.kind, self.settings))
    }

    /// The readings so far, followed.
    fn typed(self) -> Vec<Typed> {
        let unit = self.unit();
        let texts = Self::texts(&self.readings.get());
        let read = |text: &String| read_text(text, self.kind.kind, unit)?.ok();
        texts.iter().filter_map(read).collect()
    }

    fn add(self) {
        let unit = untrack(|| self.unit());
        let text = self.reading.now().trim().to_owned();
        let mut all = Self::texts(&self.readings.now());
        let fits = matches!(read_text(&text, self.kind.kind, unit), Some(Ok(_)));
        if !fits || all.len() >= READINGS_AT_MOST {
            return;
        }
        all.push(text);
        self.unit.set(unit.symbol.to_owned());
        self.set(&all);
        self.reading.clear();
    }

    fn set(self, all: &[String]) {
        if all.is_empty() {
            self.readings.clear();
            self.unit.clear();
        } else {
            self.readings.set(all.join(&BETWEEN.to_string()));
        }
    }

    fn take_back(self) {
        let mut all = Self::texts(&self.readings.now());
        all.pop();
        self.set(&all);
    }

    fn keep(self) {
        let words = self.words.now().trim().to_owned();
        if too_long(&words, WORDS_AT_MOST).is_some() {
            return;
        }
        let tried = ToolTried {
            tool: self.tool,
            readings: Self::texts(&self.readings.now()),
            unit: untrack(|| self.unit()).symbol.to_owned(),
            words: Some(words).filter(|words| !words.is_empty()),
        };
        // Cleared first: the row is made anew by what is written down.
        let was = (self.readings.now(), self.unit.now());
        self.set(&[]);
        if self.opened.write_down(Body::ToolTried(tried)).is_some() {
            self.words.clear();
        } else {
            self.readings.set(was.0);
            self.unit.set(was.1);
        }
    }

    fn piece(self) -> El {
        let id = self.tool;
        let field = QuantityField::new(
            format!("trial-{id}"),
            "Reading",
            self.reading,
            self.kind.kind,
            move || self.unit(),
        )
        .on_next(move || self.add())
        .next_word("Keep");
        let enough = Memo::new(move |_| self.typed().len() >= USUAL_READINGS);
        let any = Memo::new(move |_| !self.readings.get().is_empty());
        let back = button("quiet", "Take the last one back", "trial-back", move || {
            self.take_back();
        })
        .live_attr("disabled", move || (!any.get()).then(String::new));
        let keep = button("", "Keep the trial", "trial-keep", move || self.keep())
            .live_attr("disabled", move || (!enough.get()).then(String::new));
        let words = word_field(
            &format!("trial-words-{id}"),
            "What you read, such as the setting ring",
            "",
            self.words,
            WORDS_AT_MOST,
            || None,
        );
        el("div")
            .class("inset")
            .with(sentences("", &HOW))
            .with(field.piece())
            .with(Piece::live(move || self.so_far(&self.typed())))
            .with(words)
            .with(row([keep.into(), back.into()]))
    }

    /// The readings so far, drawn, and what they show.
    fn so_far(self, typed: &[Typed]) -> Piece {
        let texts: Vec<String> = typed.iter().map(ToString::to_string).collect();
        let list = (!texts.is_empty()).then(|| p(&texts.join(" · ")).test("trial-readings"));
        let says = match scatter_of(self.kind, typed) {
            Err(why) => vec![format!(
                "{}.",
                crate::kit::judged::capital(&why.to_string())
            )],
            Ok(shows) => self.says(&shows),
        };
        Piece::all([
            list.into(),
            drawing(typed).into(),
            el("div")
                .attr("role", "status")
                .test("trial-says")
                .with(sentences("", &says))
                .into(),
        ])
    }

    fn says(self, shows: &SelfTest) -> Vec<String> {
        let own = spread_words(shows.repeat, self.kind, self.settings);
        let mut says = vec![format!(
            "One reading scatters by {own} in your hand. It takes the place of the common figure."
        )];
        if shows.hidden_by_last_digit {
            says.push(
                "The readings are alike to the last digit. That is no perfect tool: as much as the last digit hides still counts."
                    .to_owned(),
            );
        }
        if is_wild(self.kind, shows) {
            says.push(
                "That is many times what is common for this kind. Is one of the readings a slip? Take it back, or try the tool out once more."
                    .to_owned(),
            );
        }
        says
    }
}

const WIDTH: f64 = 200.0;
const HEIGHT: f64 = 16.0;
const DOT: f64 = 4.0;

/// Each reading as a stroke between the smallest and the largest.
fn drawing(typed: &[Typed]) -> Option<El> {
    let all: Vec<f64> = typed.iter().map(Typed::si).collect();
    let from = all.iter().copied().reduce(f64::min)?;
    let to = all.iter().copied().reduce(f64::max)?;
    if all.len() < 2 || to <= from {
        return None;
    }
    let strokes = all.iter().map(|one| {
        let x = (one - from) / (to - from) * (WIDTH - DOT);
        drawn("rect")
            .class("strip-body")
            .attr("x", &format!("{x:.1}"))
            .attr("y", "1")
            .attr("width", &DOT.to_string())
            .attr("height", "14")
            .into()
    });
    Some(
        drawn("svg")
            .class("strip-bar")
            .attr("viewBox", &format!("0 0 {WIDTH} {HEIGHT}"))
            .attr("preserveAspectRatio", "none")
            .attr("aria-hidden", "true")
            .all(strokes),
    )
}
