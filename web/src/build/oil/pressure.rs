//! What the gauge should show, over speed and temperature, with this pump and with
//! others, and what if a bearing were looser.

use assembly_core::oil::circuit::rule::{FOR_A_THOUSAND_TURNS, wanted};
use assembly_core::oil::circuit::{At, Circuit, CircuitError, Point, Pump};
use assembly_core::quantity::{Unit, show};
use build_journal::fold::{OilInputs, OilView};
use leptos::prelude::*;

use super::lacks::{Wanted, estimated, lacks};
use super::page::Oil;
use super::said::{PRESSURE, SPEED, TEMPERATURE};
use super::shares::shares;
use super::what_if::WhatIf;
use crate::device::settings::{UnitClass, settings};
use crate::kit::chart::{Axis, Chart, Look, Spot};
use crate::kit::piece::{El, Piece, el, note, p, title};
use crate::kit::section::section;

/// Speeds that the lines are worked out at, turns a minute: more would not be seen.
const FROM_TURNS: u32 = 500;
const TO_TURNS: u32 = 6000;
const STEP_TURNS: usize = 125;

/// Turns a minute at which the sentence beside the slider and the shares are.
const IDLE: f64 = 700.0;

/// The units that the charts are in.
#[derive(Clone, Copy)]
pub(super) struct Units {
    pub(super) pressure: &'static Unit,
    pub(super) temperature: &'static Unit,
    pub(super) speed: &'static Unit,
}

impl Units {
    pub(super) fn of(class: UnitClass) -> Self {
        let of = |(kind, usual)| class.of(kind, usual);
        Self {
            pressure: of(PRESSURE),
            temperature: of(TEMPERATURE),
            speed: of(SPEED),
        }
    }

    /// Three oil temperatures in round numbers: warm, hot, too hot; kelvin.
    pub(super) fn temperatures(self) -> [f64; 3] {
        let round = if self.temperature.symbol == "°F" {
            [140.0, 200.0, 250.0]
        } else {
            [60.0, 95.0, 120.0]
        };
        round.map(|number| self.temperature.to_si(number))
    }

    /// Speeds from idle to fast, rad/s.
    pub(super) fn speeds(self) -> Vec<f64> {
        (FROM_TURNS..=TO_TURNS)
            .step_by(STEP_TURNS)
            .map(|turns| self.speed.to_si(f64::from(turns)))
            .collect()
    }

    fn at(self, kelvin: f64) -> String {
        show(kelvin, None, self.temperature).to_string()
    }
}

/// The page.
pub(super) fn page(oil: Oil) -> Piece {
    let settings = settings();
    let what_if = WhatIf::of(oil);
    let needed = Piece::live(move || {
        oil.view
            .with(|view| lacks(oil, &view.inputs, Wanted::Pressure).into())
    });
    let charts = Piece::live(move || {
        let units = Units::of(settings.units());
        oil.view.with(|view| {
            let Some(circuit) = what_if.circuit(&view.inputs) else {
                return Piece::none();
            };
            let pump = view.inputs.pump.as_ref();
            let drawn = match pump {
                Some(pump) => pressures(view, &circuit, pump, units),
                None => Ok(flows(&circuit, units)),
            };
            match drawn {
                Ok(drawn) => {
                    let share = shares(view, &circuit, pump, units);
                    Piece::all([drawn, share, estimated(&view.inputs)])
                }
                Err(error) => refused(&error),
            }
        })
    });
    let sentence = Piece::live(move || {
        let units = Units::of(settings.units());
        oil.view
            .with(|view| idle_words(&view.inputs, what_if, units).into())
    });
    let slider = Piece::when(
        move || oil.view.with(|view| view.inputs.circuit.is_some()),
        move || what_if.piece(),
    );
    Piece::all([
        title("Oil pressure").into(),
        needed,
        slider,
        sentence,
        charts,
        note(
            "hint",
            "Hot oil burns. Keep clear of belts and fan while you read a gauge; run an engine only with the doors open. The pressures of the engine's maker win.",
        )
        .into(),
    ])
}

pub(super) fn refused(error: &CircuitError) -> Piece {
    let mut words = error.to_string();
    words.push('.');
    note("notice notice-caution", &words)
        .test("oil-refused")
        .into()
}

/// The pressure at a hot idle, as measured and as supposed.
fn idle_words(inputs: &OilInputs, what_if: WhatIf, units: Units) -> Option<El> {
    let (own, pump) = (inputs.circuit.as_ref()?, inputs.pump.as_ref()?);
    let at = At {
        speed: units.speed.to_si(IDLE),
        temperature: units.temperatures()[1],
    };
    let at_idle = |circuit: &Circuit| -> Option<f64> {
        Some(circuit.pressure_and_slopes(pump, at).ok()?.pressure)
    };
    let supposed = at_idle(&what_if.circuit(inputs)?)?;
    let psi = |pressure: f64| show(pressure, None, units.pressure).to_string();
    let mut words = format!(
        "At {} and {}: {}",
        show(at.speed, None, units.speed),
        units.at(at.temperature),
        psi(supposed)
    );
    if what_if.is_changed() {
        words.push_str(&format!(
            " with {}, {} as it is",
            what_if.words(),
            psi(at_idle(own)?)
        ));
    }
    words.push('.');
    Some(
        p(&words)
            .class("oil-idle")
            .attr("aria-live", "polite")
            .test("oil-idle"),
    )
}

fn line(speeds: &[f64], points: &[Point]) -> Vec<(f64, f64)> {
    let points = points.iter().map(|point| point.pressure);
    speeds.iter().copied().zip(points).collect()
}

fn rule(speeds: &[f64]) -> Vec<(f64, f64)> {
    let wanted = |speed: &f64| (*speed, wanted(*speed, FOR_A_THOUSAND_TURNS));
    speeds.iter().map(wanted).collect()
}

const RULE: &str = "ten psi for each thousand turns: common practice, no limit";

fn speed_axis(units: Units, speeds: &[f64]) -> Axis {
    Axis {
        label: "engine speed",
        unit: units.speed,
        from: 0.0,
        to: speeds.last().copied().unwrap_or(1.0),
    }
}

/// Readings of the gauge that tell something.
pub(super) fn spots(view: &OilView, units: Units) -> Vec<Spot> {
    let notes = view.build.oil.gauge.iter();
    notes
        .filter_map(|note| {
            let reading = note.reading()?;
            let temperature = reading.temperature?;
            Some(Spot {
                x: reading.speed,
                y: reading.pressure,
                name: format!("read, oil at {}", units.at(temperature)),
            })
        })
        .collect()
}

/// This pump over temperatures, and three pumps at the hot one.
fn pressures(
    view: &OilView,
    circuit: &Circuit,
    pump: &Pump,
    units: Units,
) -> Result<Piece, CircuitError> {
    let speeds = units.speeds();
    let temperatures = units.temperatures();
    let own = circuit.map(std::slice::from_ref(pump), &speeds, &temperatures)?;
    let three = pump.three();
    let side_by_side = circuit.map(&three, &speeds, &temperatures[1..2])?;
    let spots = spots(view, units);
    let tops = own
        .pumps
        .iter()
        .chain(&side_by_side.pumps)
        .flatten()
        .flatten();
    let tops: Vec<f64> = tops.map(|point| point.pressure).collect();
    let tops = tops.into_iter().chain(spots.iter().map(|spot| spot.y));
    let up = Axis::up_to("oil pressure", units.pressure, tops, 2e5);
    let across = speed_axis(units, &speeds);

    let mut chart = Chart::of(
        "oil-chart",
        "Oil pressure over engine speed at three oil temperatures, with the readings of the gauge.",
        across,
        up,
    );
    let looks = [Look::Dashed, Look::Whole, Look::Dotted];
    let rows = own.pumps.first().into_iter().flatten();
    for ((row, kelvin), look) in rows.zip(temperatures).zip(looks) {
        chart = chart.line(
            format!("oil at {}", units.at(kelvin)),
            look,
            line(&speeds, row),
        );
        if look == Look::Whole {
            chart = chart.give_or_take(row.iter().map(|point| point.deviation).collect());
            // More than the relief lets through no tighter engine shows.
            let top = row.iter().map(|point| point.pressure).fold(0.0, f64::max);
            chart = chart.at_most(top);
        }
    }
    chart = chart.line(RULE, Look::Rule, rule(&speeds));
    chart.spots = spots;
    chart.spots_are = "what the gauge said";

    let mut pumps = Chart::of(
        "oil-pumps",
        format!(
            "Oil pressure over engine speed with a standard, a high-volume and a stiff-relief pump, oil at {}.",
            units.at(temperatures[1])
        ),
        across,
        up,
    );
    for ((pump, rows), look) in
        three
            .iter()
            .zip(&side_by_side.pumps)
            .zip([Look::Whole, Look::Dashed, Look::Dotted])
    {
        let row = rows.first().map_or(&[][..], Vec::as_slice);
        pumps = pumps.line(pump.name.as_str(), look, line(&speeds, row));
    }
    let pumps = pumps.line(RULE, Look::Rule, rule(&speeds));
    let side = format!("Which pump, oil at {}", units.at(temperatures[1]));
    let charts = el("div")
        .class("charts")
        .with(section("With your pump").with(chart.piece()))
        .with(section(&side).with(pumps.piece()).with(p(
            "High volume: seven parts in forty more, by taller gears. It helps below the relief and nowhere else. Stiff relief: opens at a quarter more, and helps only above where the standard one opens.",
        ).class("hint")));
    let starve = own
        .pumps
        .iter()
        .flatten()
        .flatten()
        .any(|point| point.rods_starve);
    let starve = starve.then(|| {
        note(
            "notice notice-caution",
            "At the fast end the pressure may be too low to push oil to the rods against the turning of a crank drilled through its middle.",
        )
    });
    Ok(Piece::all([charts.into(), starve.into()]))
}

/// Without a pump: the flow that ten psi for each thousand turns would take.
fn flows(circuit: &Circuit, units: Units) -> Piece {
    let speeds = units.speeds();
    let unit = assembly_core::quantity::unit_or_usual(assembly_core::quantity::Kind::Flow, "L/min");
    let [warm, hot, hottest] = units.temperatures();
    let flow = |kelvin: f64| -> Vec<(f64, f64)> {
        let at = |speed: &f64| {
            let demand = circuit.demand(At {
                speed: *speed,
                temperature: kelvin,
            });
            (*speed, demand.flow(wanted(*speed, FOR_A_THOUSAND_TURNS)))
        };
        speeds.iter().map(at).collect()
    };
    let lines = [
        (warm, Look::Dashed),
        (hot, Look::Whole),
        (hottest, Look::Dotted),
    ]
    .map(|(kelvin, look)| (kelvin, look, flow(kelvin)));
    let tops = lines
        .iter()
        .flat_map(|(_, _, line)| line.iter().map(|(_, flow)| *flow));
    let up = Axis::up_to("oil flow", unit, tops, 1e-5);
    let mut chart = Chart::of(
        "oil-flow",
        "The flow that the leaks take at ten psi for each thousand turns, over engine speed.",
        speed_axis(units, &speeds),
        up,
    );
    for (kelvin, look, line) in lines {
        chart = chart.line(format!("oil at {}", units.at(kelvin)), look, line);
    }
    section("Flow that ten psi for each thousand turns would take")
        .with(chart.piece())
        .into()
}
