//! What was written down of the oil and of running, in the order it happened.

use assembly_core::oil::running_in::first_minutes::Note;
use assembly_core::quantity::Kind;
use build_plan::{At, Place};

use super::super::problem::Problem;
use super::number::{Number, si};
use super::plugs::PlugCounts;
use super::running::RunStretch;
use super::used::Meter;
use crate::fact::{
    Body, BoreState, Fact, OilDoing, OilNoted, OilSystem, RunningEnded, RunningRow, Said,
    Spot as Where,
};
use crate::id::FactId;

/// The oil system as it was last told.
#[derive(Clone, PartialEq, Debug)]
pub struct KnownSystem {
    /// The fact.
    pub fact: FactId,
    /// As it was told.
    pub told: OilSystem,
}

/// What the gauge said.
#[derive(Clone, PartialEq, Debug)]
pub struct GaugeNote {
    /// The fact: a reading of the gauge, or a row of numbers while it ran.
    pub fact: FactId,
    /// Pressure.
    pub pressure: Number,
    /// Of the engine.
    pub speed: Option<Number>,
    /// Of the oil.
    pub temperature: Option<Number>,
    /// Which gauge.
    pub gauge: Option<String>,
}

impl GaugeNote {
    /// As a reading that something may follow from; `None` without a speed, or when
    /// a number cannot be read.
    #[must_use]
    pub fn reading(&self) -> Option<assembly_core::oil::diagnosis::Reading> {
        Some(assembly_core::oil::diagnosis::Reading {
            pressure: self.pressure.si()?,
            speed: si(self.speed.as_ref())?,
            temperature: si(self.temperature.as_ref()),
        })
    }

    /// Why it tells nothing of the bearings; `None` when it may.
    #[must_use]
    pub fn tells_nothing(&self) -> Option<&'static str> {
        if self.pressure.si().is_none() {
            Some("The pressure can't be read.")
        } else if si(self.temperature.as_ref()).is_none() {
            Some("Without the oil's temperature it tells nothing: cold oil hides any leak.")
        } else if si(self.speed.as_ref()).is_none() {
            Some("Without the engine's speed it tells nothing.")
        } else {
            None
        }
    }
}

/// A prime test.
#[derive(Clone, PartialEq, Debug)]
pub struct PrimeNote {
    /// The fact.
    pub fact: FactId,
    /// The device's clock then, in milliseconds since 1970.
    pub clock: i64,
    /// Pressure reached.
    pub pressure: Option<Number>,
    /// Of the oil.
    pub temperature: Option<Number>,
    /// What was added.
    pub words: Option<String>,
}

/// A row of numbers while it ran.
#[derive(Clone, PartialEq, Debug)]
pub struct RowNote {
    /// The fact.
    pub fact: FactId,
    /// The device's clock then, in milliseconds since 1970.
    pub clock: i64,
    /// Seconds since it fired.
    pub seconds: Option<u32>,
    /// Of the engine.
    pub speed: Option<Number>,
    /// Of the oil.
    pub pressure: Option<Number>,
    /// Of the oil.
    pub oil: Option<Number>,
    /// Of the coolant.
    pub coolant: Option<Number>,
    /// What was added.
    pub words: Option<String>,
}

impl RowNote {
    /// As a row that may say stop.
    #[must_use]
    pub fn note(&self) -> Note {
        Note {
            seconds: self.seconds.map_or(f64::INFINITY, f64::from),
            pressure: si(self.pressure.as_ref()),
            speed: si(self.speed.as_ref()),
            coolant: si(self.coolant.as_ref()),
            oil: si(self.oil.as_ref()),
        }
    }
}

/// Oil in or out, or a filter.
#[derive(Clone, PartialEq, Debug)]
pub struct OilNote {
    /// The fact.
    pub fact: FactId,
    /// The device's clock then, in milliseconds since 1970.
    pub clock: i64,
    /// What was done.
    pub what: OilDoing,
    /// How much.
    pub amount: Option<Number>,
    /// What the meter showed.
    pub meter: Option<Meter>,
    /// The grade, or the filter.
    pub kind: Option<String>,
    /// What was seen.
    pub words: Option<String>,
}

/// The compression of a cylinder.
#[derive(Clone, PartialEq, Debug)]
pub struct CompressionNote {
    /// The fact.
    pub fact: FactId,
    /// The cylinder.
    pub cylinder: u8,
    /// What the gauge held.
    pub pressure: Number,
    /// With or without oil.
    pub state: BoreState,
}

/// The leak-down of a cylinder.
#[derive(Clone, PartialEq, Debug)]
pub struct LeakDownNote {
    /// The fact.
    pub fact: FactId,
    /// The cylinder.
    pub cylinder: u8,
    /// Pressure before the orifice.
    pub supply: Number,
    /// Pressure in the cylinder.
    pub held: Number,
    /// Diameter of the tester's orifice.
    pub orifice: Option<Number>,
    /// Where it hissed.
    pub heard: Option<String>,
}

impl LeakDownNote {
    /// What is let go, as a part of the supply; `None` when a number cannot be
    /// read, or more is held than comes in.
    #[must_use]
    pub fn leak(&self) -> Option<f64> {
        let (supply, held) = (self.supply.si()?, self.held.si()?);
        (supply > 0.0 && (0.0..=supply).contains(&held)).then(|| 1.0 - held / supply)
    }
}

/// All of it.
#[derive(Clone, PartialEq, Debug, Default)]
pub struct OilBook {
    /// The system, as last told.
    pub system: Option<KnownSystem>,
    /// What the gauge said.
    pub gauge: Vec<GaugeNote>,
    /// Prime tests.
    pub primes: Vec<PrimeNote>,
    /// Stretches of running.
    pub stretches: Vec<RunStretch>,
    /// Rows of numbers.
    pub rows: Vec<RowNote>,
    /// Oil and filters.
    pub notes: Vec<OilNote>,
    /// Compression.
    pub compression: Vec<CompressionNote>,
    /// Leak-down.
    pub leak_downs: Vec<LeakDownNote>,
    /// Plugs as they were counted, the latest count of each sort.
    pub plugs: PlugCounts,
}

/// Reads what one fact says, and keeps what is wrong with it.
struct Reader<'a> {
    fact: FactId,
    problems: &'a mut Vec<Problem>,
}

impl Reader<'_> {
    fn number(&mut self, what: &str, said: &Said, kind: Kind) -> Number {
        let (number, problem) = Number::of(said, kind);
        if let Some(problem) = problem {
            self.problem(format!("The {what}: {problem}."));
        }
        number
    }

    fn maybe(&mut self, what: &str, said: Option<&Said>, kind: Kind) -> Option<Number> {
        said.map(|said| self.number(what, said, kind))
    }

    fn cylinder(&mut self, place: &Where) -> Option<u8> {
        match place.place() {
            Some(Place {
                at: At::Cylinder(cylinder),
                ..
            }) => Some(cylinder),
            _ => {
                self.problem("It belongs to a cylinder, and the place is none.".to_owned());
                None
            }
        }
    }

    fn problem(&mut self, text: String) {
        self.problems.push(Problem::new(self.fact, text));
    }
}

impl OilBook {
    /// Takes in a fact that stands. Others than of the oil change nothing.
    pub(in super::super) fn take(&mut self, fact: &Fact, problems: &mut Vec<Problem>) {
        let mut read = Reader {
            fact: fact.id(),
            problems,
        };
        let (id, clock) = (fact.id(), fact.clock());
        match fact.body() {
            Body::OilSystem(told) => {
                self.system = Some(KnownSystem {
                    fact: id,
                    told: (**told).clone(),
                });
            }
            Body::GaugeRead(made) => self.gauge.push(GaugeNote {
                fact: id,
                pressure: read.number("pressure", &made.pressure, Kind::Pressure),
                speed: read.maybe("speed", made.speed.as_ref(), Kind::RotationalSpeed),
                temperature: read.maybe(
                    "oil temperature",
                    made.temperature.as_ref(),
                    Kind::Temperature,
                ),
                gauge: made.gauge.clone(),
            }),
            Body::PrimeTested(made) => self.primes.push(PrimeNote {
                fact: id,
                clock,
                pressure: read.maybe("pressure", made.pressure.as_ref(), Kind::Pressure),
                temperature: read.maybe(
                    "oil temperature",
                    made.temperature.as_ref(),
                    Kind::Temperature,
                ),
                words: made.words.clone(),
            }),
            Body::RunningBegun(made) => self.begin(fact, made.band),
            Body::RunningEnded(made) => self.ended(*made, &mut read),
            Body::RunningRow(made) => self.row(fact, made, &mut read),
            Body::OilNoted(made) => self.notes.push(noted(fact, made, &mut read)),
            Body::CompressionRead(made) => {
                let pressure = read.number("compression", &made.pressure, Kind::Pressure);
                if let Some(cylinder) = read.cylinder(&made.place) {
                    self.compression.push(CompressionNote {
                        fact: id,
                        cylinder,
                        pressure,
                        state: made.state,
                    });
                }
            }
            Body::LeakDownRead(made) => {
                let supply = read.number("supply", &made.supply, Kind::Pressure);
                let held = read.number("pressure held", &made.held, Kind::Pressure);
                let orifice = read.maybe("orifice", made.orifice.as_ref(), Kind::Length);
                if let Some(cylinder) = read.cylinder(&made.place) {
                    self.leak_downs.push(LeakDownNote {
                        fact: id,
                        cylinder,
                        supply,
                        held,
                        orifice,
                        heard: made.heard.clone(),
                    });
                }
            }
            Body::PlugsCounted(made) => self.plugs.take(made),
            _ => {}
        }
    }

    fn ended(&mut self, made: RunningEnded, read: &mut Reader) {
        if !self.end(made.begun, made.seconds) {
            read.problem("It stopped running, and never began.".to_owned());
        }
    }

    fn row(&mut self, fact: &Fact, made: &RunningRow, read: &mut Reader) {
        let row = RowNote {
            fact: fact.id(),
            clock: fact.clock(),
            seconds: made.seconds,
            speed: read.maybe("speed", made.speed.as_ref(), Kind::RotationalSpeed),
            pressure: read.maybe("pressure", made.pressure.as_ref(), Kind::Pressure),
            oil: read.maybe("oil temperature", made.oil.as_ref(), Kind::Temperature),
            coolant: read.maybe("coolant", made.coolant.as_ref(), Kind::Temperature),
            words: made.words.clone(),
        };
        self.still_running(fact);
        if let Some(pressure) = &row.pressure {
            self.gauge.push(GaugeNote {
                fact: fact.id(),
                pressure: pressure.clone(),
                speed: row.speed.clone(),
                temperature: row.oil.clone(),
                gauge: None,
            });
        }
        self.rows.push(row);
    }
}

fn noted(fact: &Fact, made: &OilNoted, read: &mut Reader) -> OilNote {
    OilNote {
        fact: fact.id(),
        clock: fact.clock(),
        what: made.what,
        amount: read.maybe("amount", made.amount.as_ref(), Kind::Volume),
        meter: made.meter.as_ref().and_then(|said| {
            Meter::of(said)
                .map_err(|problem| read.problem(format!("The meter: {problem}.")))
                .ok()
        }),
        kind: made.kind.clone(),
        words: made.words.clone(),
    }
}
