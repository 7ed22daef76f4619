//! Readings of the gauge: written down, held against the prediction, and what may
//! be behind a strange one.

use assembly_core::oil::diagnosis::{Meaning, Sign, infer, next_check, rank, signs_of};
use assembly_core::quantity::show;
use build_journal::Body;
use build_journal::fact::GaugeRead;
use build_journal::fold::{GaugeNote, OilView};
use leptos::prelude::*;

use super::page::Oil;
use super::pressure::Units;
use super::said::{PRESSURE, SPEED, SaidField, TEMPERATURE, words};
use crate::device::drafts::Draft;
use crate::device::settings::settings;
use crate::kit::piece::{El, Piece, button, el, note, p, row, title};
use crate::kit::section::{section, sentences};
use crate::kit::verdict::{Mark, shape};
use crate::kit::words::{too_long, word_field};

const GAUGE_AT_MOST: usize = 80;

/// The form while it is open.
#[derive(Clone, Copy)]
struct Form {
    oil: Oil,
    pressure: SaidField,
    speed: SaidField,
    temperature: SaidField,
    gauge: Draft,
}

impl Form {
    fn load(oil: Oil) -> Self {
        let draft = |name: &str| Draft::of(oil.opened.draft(&format!("oil/gauge/{name}")));
        Self {
            oil,
            pressure: SaidField::of(draft("pressure"), PRESSURE),
            speed: SaidField::of(draft("speed"), SPEED),
            temperature: SaidField::of(draft("temperature"), TEMPERATURE),
            gauge: draft("which"),
        }
    }

    fn piece(self) -> El {
        let pressure = self.pressure.field("gauge-pressure", "Pressure", true);
        let speed = self.speed.field("gauge-speed", "Engine speed", false);
        let temperature = self
            .temperature
            .field("gauge-temperature", "Oil temperature", false)
            .how("In the pan or at the gallery. Without it the reading is kept and tells nothing.")
            .on_next(move || self.save());
        let which = word_field(
            "gauge-which",
            "Which gauge",
            "Such as: mechanical, at the port behind the intake",
            self.gauge,
            GAUGE_AT_MOST,
            || None,
        );
        let save = button("", "Write it down", "gauge-save", move || self.save());
        section("A reading")
            .with(pressure.piece())
            .with(speed.piece())
            .with(temperature.piece())
            .with(which)
            .with(row([save.into()]))
    }

    fn save(self) {
        let (pressure, speed, temperature) = (
            self.pressure.now(),
            self.speed.now(),
            self.temperature.now(),
        );
        let gauge = self.gauge.now().trim().to_owned();
        let (Ok(Some(pressure)), Ok(speed), Ok(temperature)) = (pressure, speed, temperature)
        else {
            return;
        };
        if too_long(&gauge, GAUGE_AT_MOST).is_some() {
            return;
        }
        let wrote = self.oil.opened.write_down(Body::GaugeRead(GaugeRead {
            pressure,
            speed,
            temperature,
            gauge: (!gauge.is_empty()).then_some(gauge),
        }));
        if wrote.is_some() {
            for field in [self.pressure, self.speed, self.temperature] {
                field.clear();
            }
        }
    }
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let form = Form::load(oil);
    let ticked = RwSignal::new(Vec::<Sign>::new());
    let readings = Piece::live(move || {
        let units = Units::of(settings.units());
        oil.view.with(|view| list(oil, view, units).into())
    });
    let suspects = Piece::live(move || {
        let mut signs = ticked.get();
        oil.view.with(|view| {
            for sign in seen(view) {
                if !signs.contains(&sign) {
                    signs.push(sign);
                }
            }
        });
        ranked(&signs)
    });
    let ticks = Sign::ALL.into_iter().map(|sign| {
        let label = el("label").class("oil-tick").with(
            el("input")
                .attr("type", "checkbox")
                .live_property("checked", move || ticked.get().contains(&sign).into())
                .on("change", move |_| {
                    ticked.update(|all| {
                        if all.contains(&sign) {
                            all.retain(|one| *one != sign);
                        } else {
                            all.push(sign);
                        }
                    });
                }),
        );
        label.with(el("span").text(sign.words())).into()
    });
    Piece::all([
        title("The gauge").into(),
        note("lead", "Pressure, speed and oil temperature, together. A pressure without the oil's temperature is noise.").into(),
        sentences("findings", &CAUTIONS).test("gauge-cautions").into(),
        form.piece().into(),
        readings,
        section("What is it like?")
            .with(el("div").class("oil-ticks").test("oil-signs").all(ticks))
            .with(suspects)
            .into(),
    ])
}

/// What hurts who reads a gauge beside a running engine.
const CAUTIONS: [&str; 2] = [
    "Hands, hair, sleeves and the gauge's own line clear of belts, fan and exhaust. Hot oil burns: a line that sprays is a reason to switch off.",
    "Run it only with the doors open or the exhaust led outside: carbon monoxide kills without a smell.",
];

/// The signs in the readings themselves.
fn seen(view: &OilView) -> Vec<Sign> {
    let (Some(circuit), Some(pump)) = (&view.inputs.circuit, &view.inputs.pump) else {
        return Vec::new();
    };
    let notes = view.build.oil.gauge.iter();
    let readings: Vec<_> = notes.filter_map(GaugeNote::reading).collect();
    signs_of(circuit, pump, &readings)
}

fn ranked(signs: &[Sign]) -> Piece {
    if signs.is_empty() {
        return p("Tick what you see, and the likely causes stand here.")
            .class("hint")
            .into();
    }
    let suspects = rank(signs);
    let next = next_check(&suspects).map(|suspect| {
        let stop = suspect.cause.stop;
        let words = format!("Next, the cheapest: {}", suspect.cause.check);
        let kind = if stop {
            "notice notice-danger"
        } else {
            "notice notice-note"
        };
        let stop = stop.then(|| el("strong").text("Stop the engine first."));
        el("div")
            .class(kind)
            .test("next-check")
            .with(stop)
            .with(p(&words))
    });
    let all = suspects.iter().take(6).map(|suspect| {
        el("li")
            .class("card")
            .test("suspect")
            .with(el("strong").text(suspect.cause.name))
            .with(p(suspect.cause.looks_like))
            .with(note("hint", suspect.cause.check))
            .into()
    });
    Piece::all([next.into(), el("ul").class("entries").all(all).into()])
}

fn list(oil: Oil, view: &OilView, units: Units) -> Option<El> {
    let notes = &view.build.oil.gauge;
    if notes.is_empty() {
        return None;
    }
    let rows = notes
        .iter()
        .rev()
        .map(|note| one(oil, view, note, units).into());
    Some(section("Read so far").with(el("ul").class("entries").test("gauge-notes").all(rows)))
}

fn one(oil: Oil, view: &OilView, note: &GaugeNote, units: Units) -> El {
    let part =
        |number: Option<&build_journal::fold::Number>| number.map(|number| words(&number.said));
    let said: Vec<String> = [
        part(Some(&note.pressure)),
        part(note.speed.as_ref()),
        part(note.temperature.as_ref()).map(|oil| format!("oil {oil}")),
        note.gauge.clone(),
    ]
    .into_iter()
    .flatten()
    .collect();
    let (mark, meaning) = meaning(view, note, units);
    let fact = note.fact;
    let strike = button("quiet", "Strike out", "strike-gauge", move || {
        let _ = oil.opened.strike(fact, None);
    });
    el("li")
        .class("card")
        .test("gauge-note")
        .attr("data-verdict", mark.name())
        .with(
            el("div")
                .class("oil-line")
                .with(shape(mark))
                .with(el("strong").text(&said.join(", "))),
        )
        .with(p(&meaning))
        .with(row([strike.into()]))
}

/// By how much a leak may differ from the predicted one and still be as expected.
const AS_EXPECTED: std::ops::RangeInclusive<f64> = 0.7..=1.3;

fn meaning(view: &OilView, note: &GaugeNote, units: Units) -> (Mark, String) {
    if let Some(why) = note.tells_nothing() {
        return (Mark::None, format!("Kept. {why}"));
    }
    let (Some(circuit), Some(pump), Some(reading)) =
        (&view.inputs.circuit, &view.inputs.pump, note.reading())
    else {
        let words = "Kept. With pump, oil and sizes it can be held against what it should be.";
        return (Mark::None, words.to_owned());
    };
    match infer(circuit, pump, &reading) {
        Meaning::Leak(inferred) => {
            let predicted = show(inferred.predicted_pressure, None, units.pressure);
            let words = format!(
                "Should be about {predicted}. The oil leaks {:.1} ± {:.1} times as much as the clearances say: as if all of them were {:.2} times as wide.",
                inferred.of_predicted, inferred.deviation, inferred.clearances
            );
            let sure = 2.0 * inferred.deviation;
            let mark = if AS_EXPECTED.contains(&inferred.of_predicted) {
                Mark::Good
            } else if (inferred.of_predicted - 1.0).abs() < sure {
                Mark::Close
            } else {
                Mark::Bad
            };
            (mark, words)
        }
        Meaning::AtRelief(by) => {
            let words = format!(
                "The relief holds it, at {:.0} % of where it should open: it tells of its spring and nothing of the bearings.",
                100.0 * by
            );
            (Mark::None, words)
        }
        Meaning::NoTemperature | Meaning::NotRunning => {
            (Mark::None, "Kept. It tells nothing.".to_owned())
        }
    }
}
