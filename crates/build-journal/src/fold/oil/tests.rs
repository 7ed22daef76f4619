//! The oil of a build from its facts.

use assembly_core::oil::circuit::{At as Point, Known};
use assembly_core::oil::running_in::first_minutes::{Stop, stops};
use build_plan::{At, Direction, Place, Station};

use super::*;
use crate::fact::samples::{Pen, sprayer};
use crate::fact::*;
use crate::fold::fold;
use crate::id::{BuildId, FactId, ToolId};

/// An evening beside the engine, written down.
pub(super) struct Evening {
    pen: Pen,
    pub(super) journal: Journal,
}

pub(super) fn said(typed: &str, unit: &str) -> Said {
    Said {
        typed: typed.to_owned(),
        unit: unit.to_owned(),
    }
}

pub(super) fn system() -> OilSystem {
    OilSystem {
        pump_volume: Some(said("18", "cc")),
        relief: Some(said("55", "psi")),
        grade: Some("10W-30".to_owned()),
        stroke: Some(said("3.5", "in")),
        main_shell: Some(said("0.82", "in")),
        rod_journal: Some(said("2.1", "in")),
        rod_shell: Some(said("0.80", "in")),
        ..OilSystem::default()
    }
}

impl Evening {
    pub(super) fn new() -> Self {
        let mut evening = Self {
            pen: Pen::new(1),
            journal: Journal::new(BuildId::from_random(1)),
        };
        evening.write(sprayer());
        for (number, instrument) in [(1, "outside-micrometer-tenths"), (2, "bore-gauge-tenths")] {
            evening.write(Body::ToolListed(ToolListed {
                tool: ToolId::from_random(number),
                name: instrument.to_owned(),
                instrument: instrument.to_owned(),
                mark: None,
            }));
        }
        evening
    }

    pub(super) fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        let id = fact.id();
        assert!(self.journal.take(fact));
        id
    }

    fn main(&mut self, main: u8, bore: &str, journal: &str) {
        for (measure, typed, tool) in [
            ("main-journal-diameter", journal, 1),
            ("main-bearing-bore", bore, 2),
        ] {
            self.write(Body::Reading(
                Reading {
                    measure: measure.to_owned(),
                    place: Spot::Known(
                        Place::main(main)
                            .station(Station::Front)
                            .direction(Direction::UpAndDown),
                    ),
                    typed: typed.to_owned(),
                    unit: "in".to_owned(),
                    tool: Some(ToolId::from_random(tool)),
                    setting: None,
                    temperature: None,
                    condition: None,
                    keyed: None,
                }
                .into(),
            ));
        }
    }

    pub(super) fn mains(&mut self) {
        for main in 1..=5 {
            self.main(main, "2.4522", "2.4500");
        }
    }

    pub(super) fn tell(&mut self, system: OilSystem) -> FactId {
        self.write(Body::OilSystem(Box::new(system)))
    }

    fn gauge(&mut self, psi: &str, rpm: &str, fahrenheit: Option<&str>) -> FactId {
        self.write(Body::GaugeRead(GaugeRead {
            pressure: said(psi, "psi"),
            speed: Some(said(rpm, "rpm")),
            temperature: fahrenheit.map(|typed| said(typed, "°F")),
            gauge: None,
        }))
    }

    pub(super) fn view(&self) -> OilView {
        OilView::of(&self.journal)
    }
}

fn hot(turns: f64) -> Point {
    Point {
        speed: turns * std::f64::consts::PI / 30.0,
        temperature: 373.15,
    }
}

#[test]
fn the_circuit_is_made_of_the_measured_clearances() {
    let mut evening = Evening::new();
    evening.mains();
    evening.tell(system());
    let inputs = evening.view().inputs;
    assert_eq!(inputs.lacks, []);
    let circuit = inputs.circuit.unwrap();
    let leaks = &circuit.leaks.leaks;
    let main_3 = leaks.iter().find(|leak| leak.name == "main 3").unwrap();
    assert_eq!(main_3.known, Known::Measured);
    let clearance = main_3.clearance.as_ref().unwrap();
    assert!((clearance.value() / 25.4e-6 - 2.2).abs() < 1e-6);
    assert!(clearance.deviation() > 0.0);
    // The journal that was measured is the one that counts.
    let layout = inputs.layout.unwrap();
    assert!((layout.mains.diameter / 0.0254 - 2.45).abs() < 1e-9);
    // Rods, cam, lifters and rockers were not measured, and it says so.
    let rod = leaks.iter().find(|leak| leak.name == "rod 1").unwrap();
    assert_eq!(rod.known, Known::Estimated);
    let words: Vec<&str> = inputs.estimated.iter().map(|one| one.0.as_str()).collect();
    for what in ["all rods", "cam bearings", "lifters", "rockers", "slip"] {
        assert!(words.iter().any(|one| one.contains(what)), "{words:?}");
    }
    assert!(
        !words.iter().any(|one| one.starts_with("main")),
        "{words:?}"
    );
}

#[test]
fn one_micrometer_is_one_cause_of_error_for_all_mains() {
    let mut evening = Evening::new();
    evening.mains();
    evening.tell(system());
    let circuit = evening.view().inputs.circuit.unwrap();
    let of = |name: &str| {
        let leak = circuit.leaks.leaks.iter().find(|one| one.name == name);
        leak.unwrap().clearance.clone().unwrap()
    };
    let (first, second) = (of("main 1"), of("main 2"));
    assert!(first.covariance(&second) > 0.0);
    // And no cause of a main is one of an estimated part.
    assert_eq!(first.covariance(&of("rod 1")), 0.0);
    assert_eq!(first.covariance(&of("lifters")), 0.0);
}

#[test]
fn a_looser_main_takes_the_pressure_away() {
    let psi = |bore: &str| {
        let mut evening = Evening::new();
        for main in 1..=5 {
            evening.main(main, bore, "2.4500");
        }
        evening.tell(system());
        let inputs = evening.view().inputs;
        let (circuit, pump) = (inputs.circuit.unwrap(), inputs.pump.unwrap());
        circuit
            .pressure_and_slopes(&pump, hot(800.0))
            .unwrap()
            .pressure
            / 6894.76
    };
    let (tight, loose) = (psi("2.4520"), psi("2.4540"));
    assert!(tight > 5.0 && loose < 0.9 * tight, "{tight} {loose}");
}

#[test]
fn what_is_missing_is_said_and_what_can_be_shown_is_shown() {
    let evening = Evening::new();
    let nothing = evening.view().inputs;
    assert!(nothing.circuit.is_none());
    for lack in [
        Lack::Oil,
        Lack::MainJournal,
        Lack::MainShell,
        Lack::RodJournal,
        Lack::RodShell,
        Lack::Stroke,
        Lack::Pump,
    ] {
        assert!(nothing.lacks.contains(&lack), "{lack:?}");
    }
    // Without a pump there are still the leaks; without a relief the lines climb.
    let mut evening = Evening::new();
    evening.mains();
    evening.tell(OilSystem {
        pump_volume: None,
        ..system()
    });
    let inputs = evening.view().inputs;
    assert_eq!(inputs.lacks, [Lack::Pump]);
    assert!(inputs.pump.is_none());
    assert!(!inputs.circuit.unwrap().shares(hot(2000.0), 2e5).is_empty());
    evening.tell(OilSystem {
        relief: None,
        ..system()
    });
    assert_eq!(evening.view().inputs.lacks, [Lack::Relief]);
}

#[test]
fn what_no_oil_and_no_engine_has_is_told_by_its_field() {
    let mut evening = Evening::new();
    evening.main(1, "2.4500", "2.4522");
    evening.tell(OilSystem {
        grade: Some("10W-40".to_owned()),
        at_40: Some(said("50", "cSt")),
        at_100: Some(said("9", "cSt")),
        stroke: Some(said("-3", "in")),
        relief: Some(said("soon", "psi")),
        ..system()
    });
    let inputs = evening.view().inputs;
    let said: Vec<String> = inputs.lacks.iter().map(ToString::to_string).collect();
    let has = |words: &str| said.iter().any(|one| one.contains(words));
    assert!(has("thinner than grade 10W-40 allows"), "{said:?}");
    assert!(
        has("The stroke: it has to be more than nothing"),
        "{said:?}"
    );
    assert!(has("The relief:"), "{said:?}");
    assert!(
        has("main 1: a clearance of -2.20 thou cannot run"),
        "{said:?}"
    );
    assert!(inputs.circuit.is_none());
}

#[test]
fn a_gauge_reading_without_temperature_is_kept_and_tells_nothing() {
    let mut evening = Evening::new();
    evening.mains();
    evening.tell(system());
    let blind = evening.gauge("22", "800", None);
    let seeing = evening.gauge("1.2 bar", "800", Some("210"));
    let view = evening.view();
    let notes = &view.build.oil.gauge;
    assert_eq!(notes.len(), 2);
    assert_eq!(notes[0].fact, blind);
    assert!(notes[0].tells_nothing().unwrap().contains("tells nothing"));
    assert_eq!(notes[1].tells_nothing(), None);
    assert!((notes[1].pressure.si().unwrap() - 1.2e5).abs() < 1e-6);
    let leak = view.trends.iter().find(|one| one.of == TrendOf::OilLeak);
    let points = &leak.unwrap().points;
    assert_eq!(points.len(), 1);
    assert_eq!(points[0].0, seeing);
}

#[test]
fn minutes_of_running_in_add_up_across_interruptions() {
    let mut evening = Evening::new();
    let first = evening.write(Body::RunningBegun(RunningBegun {
        band: SpeedBand::Within,
    }));
    evening.write(Body::RunningEnded(RunningEnded {
        begun: first,
        seconds: 480,
    }));
    let idle = evening.write(Body::RunningBegun(RunningBegun {
        band: SpeedBand::Below,
    }));
    evening.write(Body::RunningEnded(RunningEnded {
        begun: idle,
        seconds: 90,
    }));
    // The phone went flat: what its last row shows counts. Rows are a minute apart.
    evening.write(Body::RunningBegun(RunningBegun {
        band: SpeedBand::Within,
    }));
    evening.write(Body::RunningRow(RunningRow::default()));
    evening.write(Body::RunningRow(RunningRow::default()));
    let build = fold(&evening.journal);
    let gear = valve_gear(&build.engine.as_ref().unwrap().engine);
    let progress = build.oil.progress(&gear.schedule());
    assert!((progress.in_band - 10.0).abs() < 0.05, "{progress:?}");
    assert!((progress.below - 1.5).abs() < 1e-9);
    assert!((progress.to_go - 10.0).abs() < 0.05);
    assert!(build.oil.open_stretch().is_some());
    // A word that ends what never began is told.
    evening.write(Body::RunningEnded(RunningEnded {
        begun: idle,
        seconds: 100,
    }));
    assert!(fold(&evening.journal).problems.is_empty());
    let never = evening.gauge("10", "700", None);
    evening.write(Body::RunningEnded(RunningEnded {
        begun: never,
        seconds: 5,
    }));
    assert_eq!(fold(&evening.journal).problems.len(), 1);
}

#[test]
fn a_row_of_numbers_says_stop_and_is_a_gauge_reading_too() {
    let mut evening = Evening::new();
    evening.write(Body::RunningRow(RunningRow {
        seconds: Some(8),
        pressure: Some(said("6", "psi")),
        coolant: Some(said("235", "°F")),
        ..RunningRow::default()
    }));
    let book = fold(&evening.journal).oil;
    let notes: Vec<_> = book.rows.iter().map(RowNote::note).collect();
    assert_eq!(stops(&notes), [Stop::NoPressure, Stop::Boiling]);
    assert_eq!(book.gauge.len(), 1);
}

#[test]
fn trends_alarm_on_the_change_and_not_on_the_level() {
    let mut evening = Evening::new();
    let cylinder = |number| Spot::Known(Place::of(At::Cylinder(number)));
    let mut read = |number, psi: &str, state| {
        evening.write(Body::CompressionRead(CompressionRead {
            place: cylinder(number),
            pressure: said(psi, "psi"),
            state,
        }))
    };
    // The first is low and stays so; the second was good and falls; oil lifts it.
    for (first, second) in [("110", "150"), ("112", "158"), ("111", "138")] {
        read(1, first, BoreState::Dry);
        read(2, second, BoreState::Dry);
    }
    read(2, "156", BoreState::Wet);
    for (held, valve) in [("92", "0.020"), ("86", "0.0255")] {
        evening.write(Body::LeakDownRead(LeakDownRead {
            place: cylinder(3),
            supply: said("100", "psi"),
            held: said(held, "psi"),
            orifice: None,
            heard: None,
        }));
        evening.write(Body::Reading(
            Reading {
                measure: "valve-lash".to_owned(),
                place: Spot::Known(Place::of(
                    build_plan::measure::Per::Valve
                        .parts(&fold(&evening.journal).engine.unwrap().engine)[0],
                )),
                typed: valve.to_owned(),
                unit: "in".to_owned(),
                tool: None,
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ));
    }
    let view = evening.view();
    let alarm = |of: TrendOf| {
        let line = view.trends.iter().find(|one| one.of == of).unwrap();
        line.alarm().is_some()
    };
    assert!(!alarm(TrendOf::Compression(1)));
    assert!(alarm(TrendOf::Compression(2)));
    assert!(alarm(TrendOf::LeakDown(3)));
    let lash = (view.trends.iter()).find(|one| matches!(one.of, TrendOf::Lash(_)));
    assert!(lash.unwrap().alarm().is_some());
    assert_eq!(view.build.oil.compression.len(), 7);
}

#[test]
fn what_is_struck_out_no_longer_counts() {
    let mut evening = Evening::new();
    evening.tell(system());
    let second = evening.tell(OilSystem {
        grade: Some("20W-50".to_owned()),
        ..system()
    });
    let gauge = evening.gauge("40", "2000", Some("200"));
    for fact in [second, gauge] {
        evening.write(Body::Struck(Struck { fact, reason: None }));
    }
    let book = fold(&evening.journal).oil;
    assert_eq!(book.system.unwrap().told.grade.as_deref(), Some("10W-30"));
    assert!(book.gauge.is_empty());
}
