//! The first fire, for a propped phone: pressure, temperature and time as large as
//! they go, the stop list always in sight, and minutes by speed.

use std::rc::Rc;

use assembly_core::describe::UsualUnits;
use assembly_core::oil::running_in::first_minutes::{GOOD_COLD, LEAST};
use assembly_core::oil::running_in::schedule::Schedule;
use assembly_core::quantity::{Kind, show};
use build_journal::fact::{CheckMade, Outcome, RunningBegun, RunningEnded, RunningRow, SpeedBand};
use build_journal::fold::{Build, RowNote, RunStretch, valve_gear};
use build_journal::{Body, FactId};
use build_plan::At;
use build_plan::check::FIRED;
use leptos::prelude::*;
use leptos::task::spawn_local;
use send_wrapper::SendWrapper;

use super::before::CAUTIONS;
use super::clock::{minutes, ticking};
use super::in_sight::{alarms, large, round, stop_list};
use super::page::Oil;
use super::pressure::Units;
use super::row_table::table;
use super::said::{PRESSURE, SPEED, SaidField, TEMPERATURE};
use crate::device::chance::now;
use crate::device::drafts::Draft;
use crate::device::senses::Awake;
use crate::device::settings::{Settings, settings};
use crate::kit::heard::on_page;
use crate::kit::piece::{El, Piece, button, el, note, p, row, title};
use crate::kit::section::{fold, section, sentences};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const MINUTE: i64 = 60_000;

/// The screen while it stands.
#[derive(Clone, Copy)]
pub(super) struct Run {
    oil: Oil,
    pub(super) settings: Settings,
    pub(super) time: ReadSignal<i64>,
    /// The stretch that began on this page, by the browser's even clock.
    began: StoredValue<Option<(FactId, f64)>>,
    pressure: SaidField,
    speed: SaidField,
    coolant: SaidField,
    hot_oil: SaidField,
    words: Draft,
}

/// Milliseconds by a clock that nobody puts forward.
fn even_clock() -> Option<f64> {
    Some(window().performance()?.now())
}

impl Run {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str| Draft::of(oil.opened.draft(&format!("oil/run/{name}")));
        Self {
            oil,
            settings: settings(),
            time: ticking(),
            began: StoredValue::new(None),
            pressure: SaidField::of(draft("pressure"), PRESSURE),
            speed: SaidField::of(draft("speed"), SPEED),
            coolant: SaidField::of(draft("coolant"), TEMPERATURE),
            hot_oil: SaidField::of(draft("oil"), TEMPERATURE),
            words: draft("words"),
        }
    }

    fn build<T>(self, of: impl FnOnce(&Build) -> T) -> T {
        self.oil.view.with(|view| of(&view.build))
    }

    fn schedule(self) -> Option<Schedule> {
        self.build(|build| {
            let engine = build.engine.as_ref()?;
            Some(valve_gear(&engine.engine).schedule())
        })
    }

    pub(super) fn running(self) -> Option<RunStretch> {
        self.build(|build| build.oil.open_stretch().cloned())
    }

    /// How long a stretch has been going on, milliseconds.
    fn lasted(self, stretch: &RunStretch, now: i64) -> i64 {
        let here = self.began.get_value();
        let even = here.filter(|(begun, _)| *begun == stretch.begun);
        match (even, even_clock()) {
            (Some((_, since)), Some(clock)) => (clock - since).max(0.0) as i64,
            _ => (now - stretch.clock).max(0),
        }
    }

    fn begin(self, band: SpeedBand) {
        let since = even_clock();
        let wrote = self
            .oil
            .opened
            .write_down(Body::RunningBegun(RunningBegun { band }));
        self.began.set_value(wrote.zip(since));
    }

    /// Ends the stretch that goes on, if one does.
    fn end(self) {
        let Some(stretch) = untrack(|| self.running()) else {
            return;
        };
        let seconds = self.lasted(&stretch, now()) / 1000;
        let _ = self.oil.opened.write_down(Body::RunningEnded(RunningEnded {
            begun: stretch.begun,
            seconds: u32::try_from(seconds).unwrap_or(u32::MAX),
        }));
    }

    fn change(self, band: SpeedBand) {
        if untrack(|| self.running()).is_some_and(|one| one.band == band) {
            return;
        }
        self.end();
        self.begin(band);
    }

    fn fire(self) {
        let _ = self.oil.opened.write_down(Body::CheckMade(CheckMade {
            check: FIRED.id.to_owned(),
            place: None,
            outcome: Outcome::Good,
            words: None,
            lasts: None,
        }));
        self.begin(SpeedBand::Within);
    }

    /// When it last fired: the fact, and the clock then.
    pub(super) fn fired(self) -> Option<(FactId, i64)> {
        self.build(|build| {
            let made = build.record.made(&FIRED, At::Engine)?;
            Some((made.fact, made.clock))
        })
    }

    /// The rows since it last fired.
    pub(super) fn rows(self) -> Vec<RowNote> {
        let fired = self.fired().map(|(fact, _)| fact);
        self.build(|build| {
            let rows = build.oil.rows.iter();
            rows.filter(|row| fired.is_none_or(|fired| row.fact > fired))
                .cloned()
                .collect()
        })
    }

    fn write_row(self) {
        let (Ok(pressure), Ok(speed), Ok(coolant), Ok(oil)) = (
            self.pressure.now(),
            self.speed.now(),
            self.coolant.now(),
            self.hot_oil.now(),
        ) else {
            return;
        };
        let text = self.words.now().trim().to_owned();
        let nothing = pressure.is_none() && speed.is_none() && coolant.is_none() && oil.is_none();
        if too_long(&text, WORDS_AT_MOST).is_some() || nothing && text.is_empty() {
            return;
        }
        let fired = untrack(|| self.fired());
        let seconds = fired.map(|(_, clock)| (now() - clock).max(0) / 1000);
        let wrote = self.oil.opened.write_down(Body::RunningRow(RunningRow {
            seconds: seconds.and_then(|seconds| u32::try_from(seconds).ok()),
            speed,
            pressure,
            oil,
            coolant,
            words: (!text.is_empty()).then_some(text),
        }));
        if wrote.is_some() {
            for field in [self.pressure, self.speed, self.coolant, self.hot_oil] {
                field.clear();
            }
            self.words.clear();
        }
    }
}

/// Keeps the screen lit for as long as this one stands, also after a call.
fn stay_awake() {
    let awake = Rc::new(Awake::default());
    let ask = {
        let awake = Rc::clone(&awake);
        move || {
            let awake = Rc::clone(&awake);
            spawn_local(async move { awake.ask().await });
        }
    };
    ask();
    on_page("visibilitychange", move |_| {
        if !document().hidden() {
            ask();
        }
    });
    let held = SendWrapper::new(awake);
    on_cleanup(move || drop(held));
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    stay_awake();
    let run = Run::load(oil);
    Piece::all([
        title("First fire").into(),
        stop_list(run).into(),
        Piece::live(move || alarms(run).into()),
        large(run).into(),
        Piece::live(move || bands(run)),
        Piece::live(move || minutes_line(run).into()),
        log(run).into(),
        Piece::live(move || rows(run).into()),
        fold("Before you touch it", sentences("", &CAUTIONS)).into(),
    ])
}

fn turns(run: Run, speed: f64) -> String {
    let unit = run
        .settings
        .units()
        .of(Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm"));
    show(speed, None, unit).number
}

/// What to press while it runs, and while it does not.
fn bands(run: Run) -> Piece {
    let Some(schedule) = run.schedule() else {
        return note("lead", "The engine is not described yet.").into();
    };
    let (low, high) = (turns(run, schedule.band.0), turns(run, schedule.band.1));
    let Some(stretch) = run.running() else {
        let first = format!("It fired: to {low}–{high}");
        let units = Units::of(run.settings.units());
        let good = round(GOOD_COLD, units.pressure);
        let least = round(LEAST.0, units.pressure);
        let idle = schedule
            .never_idle
            .then(|| p("Straight to the band, never idling: slow lobes are wiped lobes."));
        let crank = format!(
            "Crank ten seconds at most. The needle has to move while cranking, {good} has to be there within five seconds of firing; under {least}: off."
        );
        return Piece::all([
            p(&crank).into(),
            idle.into(),
            row([button("", &first, "run-fired", move || run.fire()).into()]).into(),
        ]);
    };
    let band = |band: SpeedBand, words: String| -> Piece {
        let pressed = stretch.band == band;
        el("button")
            .attr("type", "button")
            .class(if pressed { "button" } else { "button quiet" })
            .attr("aria-pressed", if pressed { "true" } else { "false" })
            .test(&format!("run-{}", band.id()))
            .text(&words)
            .click(move || run.change(band))
            .into()
    };
    let off = button("danger", "It is off", "run-off", move || run.end());
    el("div")
        .class("run-bands")
        .all([
            band(SpeedBand::Below, format!("under {low}")),
            band(SpeedBand::Within, format!("{low}–{high}")),
            band(SpeedBand::Above, format!("over {high}")),
            off.into(),
        ])
        .into()
}

/// Minutes by speed, with those that are running now.
fn minutes_line(run: Run) -> Option<El> {
    let schedule = run.schedule()?;
    let open = run.running();
    let time = run.time.get();
    let done = run.build(|build| build.oil.progress(&schedule));
    let now = open.as_ref().map(|stretch| {
        // What its rows have shown is in the sum already.
        let counted = i64::from(stretch.seconds) * 1000;
        (stretch.band, (run.lasted(stretch, time) - counted).max(0))
    });
    let milliseconds = |band: SpeedBand, minutes: f64| {
        let more = now
            .filter(|(of, _)| *of == band)
            .map_or(0, |(_, more)| more);
        (minutes * MINUTE as f64) as i64 + more
    };
    let within = milliseconds(SpeedBand::Within, done.in_band);
    let to_go = (schedule.minutes * MINUTE as f64) as i64 - within;
    let (low, high) = (turns(run, schedule.band.0), turns(run, schedule.band.1));
    let mut words = format!(
        "{} of {} in {low}–{high}; {} below, {} above.",
        minutes(within),
        minutes((schedule.minutes * MINUTE as f64) as i64),
        minutes(milliseconds(SpeedBand::Below, done.below)),
        minutes(milliseconds(SpeedBand::Above, done.above)),
    );
    words.push_str(if to_go > 0 {
        " Minutes add up across stops."
    } else {
        " The run-in is done: let it idle down, off, look for leaks."
    });
    let due = open.map(|stretch| {
        let rows = run.rows();
        let since = rows
            .last()
            .map_or(stretch.clock, |row| row.clock.max(stretch.clock));
        let due = since + (schedule.log_every * MINUTE as f64) as i64 - time;
        if due > 0 {
            format!("Next row in {}.", minutes(due))
        } else {
            "A row of numbers is due.".to_owned()
        }
    });
    Some(
        el("div")
            .class("run-minutes")
            .with(
                p(&words)
                    .test("run-minutes")
                    .attr("data-to-go", &to_go.max(0).to_string()),
            )
            .with(due.map(|due| p(&due).test("run-due"))),
    )
}

/// A row of numbers, typed with one hand: Next goes on, the last one writes it down.
fn log(run: Run) -> El {
    let pressure = run.pressure.field("run-pressure", "Oil pressure", false);
    let speed = run.speed.field("run-speed", "Engine speed", false);
    let coolant = run.coolant.field("run-coolant", "Coolant", false);
    let oil = run
        .hot_oil
        .field("run-oil", "Oil", false)
        .next_word("Write")
        .on_next(move || run.write_row());
    let said = word_field(
        "run-words",
        "Noise, leak, smell",
        "",
        run.words,
        WORDS_AT_MOST,
        || None,
    );
    let write = button("", "Write the row down", "run-row", move || run.write_row());
    section("A row of numbers")
        .with(
            el("div")
                .class("run-fields")
                .with(pressure.piece())
                .with(speed.piece())
                .with(coolant.piece())
                .with(oil.piece()),
        )
        .with(said)
        .with(row([write.into()]))
}

fn rows(run: Run) -> Option<El> {
    let all = run.rows();
    if all.is_empty() {
        return None;
    }
    Some(section("Since it fired").with(table(run.oil, &all)))
}
