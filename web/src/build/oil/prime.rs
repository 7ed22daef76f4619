//! Priming: the pressure, a dot for each rocker, and what makes it void.

use assembly_core::describe::{Given, Gravity};
use assembly_core::measure::Estimate;
use assembly_core::oil::running_in::PRIME_TEST;
use build_journal::Body;
use build_journal::fact::{CheckMade, EventHappened, Outcome, PrimeTested, Spot};
use build_journal::fold::{Build, OilView, ResultState};
use build_plan::check::{OIL_AT_ROCKERS, PRIMED};
use build_plan::proof::Proof;
use build_plan::{At, Engine, Place as Where, ValveSide};
use leptos::prelude::*;

use super::clock::{span, ticking};
use super::page::Oil;
use super::said::{PRESSURE, SaidField, TEMPERATURE, words};
use crate::device::drafts::Draft;
use crate::kit::piece::{El, Piece, button, el, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, plate};
use crate::kit::words::{too_long, word_field};

const WORDS_AT_MOST: usize = 200;
const DAY: f64 = 86_400_000.0;

/// The form while it is open.
#[derive(Clone, Copy)]
struct Form {
    oil: Oil,
    pressure: SaidField,
    temperature: SaidField,
    words: Draft,
}

impl Form {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str| Draft::of(oil.opened.draft(&format!("oil/prime/{name}")));
        Self {
            oil,
            pressure: SaidField::of(draft("pressure"), PRESSURE),
            temperature: SaidField::of(draft("temperature"), TEMPERATURE),
            words: draft("words"),
        }
    }

    fn piece(self) -> El {
        let pressure = self
            .pressure
            .field("prime-pressure", "Pressure reached", true)
            .how("At the gallery while the drill or the pot works.");
        let temperature = self
            .temperature
            .field("prime-temperature", "Oil temperature", false)
            .on_next(move || self.save());
        let said = word_field(
            "prime-words",
            "How",
            "Such as: drill, a quarter turn eight times",
            self.words,
            WORDS_AT_MOST,
            || None,
        );
        let save = button("", "Write it down", "prime-save", move || self.save());
        section("Pressure seen")
            .with(pressure.piece())
            .with(temperature.piece())
            .with(said)
            .with(row([save.into()]))
    }

    fn save(self) {
        let (Ok(Some(pressure)), Ok(temperature)) = (self.pressure.now(), self.temperature.now())
        else {
            return;
        };
        let text = self.words.now().trim().to_owned();
        if too_long(&text, WORDS_AT_MOST).is_some() {
            return;
        }
        let seen = words(&pressure);
        // No pressure is a prime test too, and no good one.
        let any = pressure
            .typed
            .chars()
            .any(|sign| ('1'..='9').contains(&sign));
        let wrote = self.oil.opened.write_down(Body::PrimeTested(PrimeTested {
            pressure: Some(pressure),
            temperature,
            words: (!text.is_empty()).then_some(text),
        }));
        if wrote.is_none() {
            return;
        }
        let check = check(
            PRIMED.id,
            None,
            if any { Outcome::Good } else { Outcome::Bad },
            Some(seen),
        );
        let _ = self.oil.opened.write_down(check);
        for field in [self.pressure, self.temperature] {
            field.clear();
        }
        self.words.clear();
    }
}

/// A check made, as a fact.
pub(super) fn check(id: &str, at: Option<At>, outcome: Outcome, words: Option<String>) -> Body {
    Body::CheckMade(CheckMade {
        check: id.to_owned(),
        place: at.map(|at| Spot::Known(Where::of(at))),
        outcome,
        words,
        lasts: None,
    })
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let form = Form::load(oil);
    let time = ticking();
    // A minute is fine enough, and nothing is drawn anew for the seconds.
    let minute = Memo::new(move |_| time.get() / 60_000);
    let verdict = Piece::live(move || {
        let now = minute.get() * 60_000;
        oil.view.with(|view| verdict(view, now).into())
    });
    let engine = Memo::new(move |_| {
        oil.view
            .with(|view| view.build.engine.as_ref().map(|one| one.engine.clone()))
    });
    let dots = Piece::live(move || {
        let engine = engine.get();
        untrack(|| engine.map(|engine| dots(oil, &engine)).into())
    });
    let opened = button(
        "quiet",
        "An oil joint was opened since",
        "prime-opened",
        move || {
            let _ = oil.opened.write_down(Body::EventHappened(EventHappened {
                event: "oil-joint-opened".to_owned(),
                places: Vec::new(),
                words: None,
            }));
        },
    );
    let cautions = PRIME_TEST.cautions;
    Piece::all([
        title("Prime it").into(),
        sentences("", cautions).into(),
        verdict,
        dots,
        form.piece().into(),
        section("What makes it void")
            .with(p("Two weeks, or any oil joint opened: pump, pickup, pan, filter, distributor, cam bearings, a plug. Steps and events of the book make it void by themselves."))
            .with(row([opened.into()]))
            .into(),
    ])
}

/// Rockers in all, and those that had oil and still count.
fn rockers(build: &Build, engine: &Engine) -> (usize, usize) {
    let all = OIL_AT_ROCKERS.per.parts(engine);
    let wet = all.iter().filter(|at| wet(build, **at)).count();
    (all.len(), wet)
}

fn wet(build: &Build, at: At) -> bool {
    matches!(
        build.result(Proof::Check(&OIL_AT_ROCKERS), at),
        ResultState::Stands | ResultState::LetPass(_)
    )
}

/// What forbids to start, and what is good, as the prime stands now.
pub(super) fn findings(build: &Build, now: i64) -> Vec<(Gravity, String)> {
    let Some(engine) = build.engine.as_ref().map(|one| &one.engine) else {
        return Vec::new();
    };
    let mut said: Vec<(Gravity, String)> = Vec::new();
    let state = build.result(Proof::Check(&PRIMED), At::Engine);
    let (all, wet) = rockers(build, engine);
    match &state {
        ResultState::NotYet => said.push((Gravity::Stop, "Not primed yet.".to_owned())),
        ResultState::Bad => said.push((
            Gravity::Stop,
            "No pressure: do not start. Drill turns free: drive, rotation, pickup, relief. Drill pulls hard: the gauge or its line.".to_owned(),
        )),
        ResultState::Stale(stale) => {
            let chain = stale.chain.join(" ");
            said.push((Gravity::Stop, format!("Prime again. {chain}")));
        }
        ResultState::LetPass(reason) => {
            said.push((Gravity::Caution, format!("Let pass as it is: {reason}")));
        }
        ResultState::Stands => {}
    }
    if let (ResultState::Stands, Some(made)) = (&state, build.record.made(&PRIMED, At::Engine)) {
        let days = ((now - made.clock) as f64 / DAY).max(0.0);
        let pressure = build
            .oil
            .primes
            .last()
            .and_then(|one| one.pressure.as_ref()?.si());
        let given = Given::new()
            .with("pressure", Estimate::exact(pressure.unwrap_or(0.0)))
            .with("rockers", Estimate::exact(all.max(1) as f64))
            .with("wet", Estimate::exact(wet as f64))
            .with("days", Estimate::exact(days.min(5000.0)))
            .with("opened", Estimate::exact(0.0));
        match PRIME_TEST.answer(&given) {
            Ok(answer) => said.extend(
                answer
                    .findings()
                    .iter()
                    .map(|one| (one.gravity, one.text.clone())),
            ),
            Err(error) => said.push((Gravity::Caution, error.to_string())),
        }
    }
    said
}

fn verdict(view: &OilView, now: i64) -> Option<El> {
    let build = &view.build;
    let engine = build.engine.as_ref().map(|one| &one.engine)?;
    let (all, wet) = rockers(build, engine);
    let findings = findings(build, now);
    let stops = findings
        .iter()
        .any(|(gravity, _)| *gravity == Gravity::Stop);
    let mut details: Vec<String> = findings.into_iter().map(|(_, text)| text).collect();
    details.push(format!("{wet} of {all} rockers had oil."));
    let clock = build
        .clocks()
        .into_iter()
        .find(|one| one.check.id == PRIMED.id);
    if let Some(ends) = clock.and_then(|clock| clock.ends) {
        details.push(if ends > now {
            format!("It holds {} more.", span(ends - now))
        } else {
            format!("It ran out {} ago.", span(now - ends))
        });
    }
    let (mark, word) = if stops {
        (Mark::Bad, "Do not start")
    } else {
        (Mark::Good, "Primed")
    };
    Some(plate(mark, word, &details).test("prime-verdict"))
}

/// A dot for each rocker: a press says that oil came, one more that it did not.
fn dots(oil: Oil, engine: &Engine) -> El {
    let mut rows: Vec<Piece> = Vec::new();
    for cylinder in 1..=engine.cylinders() {
        let mine = OIL_AT_ROCKERS
            .per
            .parts(engine)
            .into_iter()
            .filter(|at| matches!(at, At::Valve { cylinder: of, .. } if *of == cylinder));
        let each = mine.map(|at| dot(oil, at).into());
        let row = el("li")
            .class("oil-dots-row")
            .with(el("strong").text(&cylinder.to_string()))
            .all(each);
        rows.push(row.into());
    }
    section("Oil at every rocker")
            .with(note("hint", "By cylinder. Press when oil comes out of it; press again when it was a mistake. Turn the crank a quarter, eight times."))
            .with(el("ul").class("oil-dots").test("prime-dots").all(rows))
}

fn dot(oil: Oil, at: At) -> El {
    let is_wet = move || oil.view.with(|view| wet(&view.build, at));
    let (side, name) = match at {
        At::Valve {
            cylinder,
            side,
            number,
        } => {
            let letter = if side == ValveSide::Intake {
                "in"
            } else {
                "ex"
            };
            (letter, format!("{cylinder}-{}-{number}", side.id()))
        }
        _ => ("", at.to_string()),
    };
    el("button")
        .attr("type", "button")
        .class("oil-dot")
        .live_class("oil-dot-wet", is_wet)
        .live_flag("aria-pressed", is_wet)
        .attr("aria-label", &format!("oil at {at}"))
        .test(&format!("dot-{name}"))
        .with(
            el("span")
                .attr("aria-hidden", "true")
                .live_text(move || if is_wet() { "●" } else { "○" }.to_owned()),
        )
        .with(el("span").attr("aria-hidden", "true").text(side))
        .click(move || {
            let outcome = if untrack(is_wet) {
                Outcome::Bad
            } else {
                Outcome::Good
            };
            let _ = oil
                .opened
                .write_down(check(OIL_AT_ROCKERS.id, Some(at), outcome, None));
        })
}
