//! The circuit of a build: measured clearances with their errors, what was told of
//! the rest, and what is estimated, said as such.

use assembly_core::measure::Estimate;
use assembly_core::oil::circuit::{
    BearingLoads, BearingRow, Circuit, Entry, Known, Layout, Leaks, Pump, usual,
};
use assembly_core::oil::film::load::{Cylinder, MAIN_BY_ROD};
use assembly_core::oil::viscosity::lubricant::GradeBand;
use assembly_core::oil::viscosity::{Grade, Lubricant};
use assembly_core::quantity::{Kind, read, unit_of};
use build_plan::At;
use build_plan::engine::{Engine, Feature, PumpDrive};
use build_plan::measure::{MAIN_OIL_CLEARANCE, Per, ROD_OIL_CLEARANCE};
use build_plan::proof::Proof;

use super::super::folding::Folding;
use super::super::stale::ResultState;
use super::bearings::Bearings;
use super::cylinder::{CylinderNumber, MeasuredCylinder};
use super::lack::Lack;
use crate::fact::{Groove, OilSystem, Said};

/// What an oil by its sheet may differ from what is in the can and in the engine,
/// as a part: common practice, from memory.
const SHEET_DOUBT: f64 = 0.05;

/// Where the doubt of a grade is taken: at the oil of a hot engine, kelvin.
const HOT: f64 = 368.15;

/// A relief that never opens in an engine, Pa.
const NEVER_OPENS: f64 = 2e6;

/// Wider than any groove or hole is known: parts of a shell's length, common practice.
const GROOVE_BY_LENGTH: f64 = 0.15;
const HOLE_BY_LENGTH: f64 = 0.3;
const ROD_HOLE_BY_LENGTH: f64 = 0.25;

/// Something that is estimated, in words.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Estimated(pub String);

/// What the circuit is made of.
#[derive(Clone, PartialEq, Debug)]
pub struct OilInputs {
    /// The circuit; `None` while something that it needs is missing.
    pub circuit: Option<Circuit>,
    /// The rows of bearings and what hangs on them.
    pub layout: Option<Layout>,
    /// The pump as it is; `None` while its volume is not known.
    pub pump: Option<Pump>,
    /// The oil.
    pub oil: Option<Lubricant>,
    /// What is missing, the most needed first.
    pub lacks: Vec<Lack>,
    /// What is estimated.
    pub estimated: Vec<Estimated>,
    /// Bearings whose clearance no longer counts: "main 3".
    pub stale: Vec<String>,
    /// The load typed for the film of a rod bearing, N.
    pub load: Option<f64>,
    /// One cylinder, for the load that gas and mass make of it; `None` while
    /// something of it is not known.
    pub cylinder: Option<Cylinder>,
    /// What is not known of the cylinder, in words.
    pub cylinder_lacks: Vec<&'static str>,
    /// The numbers of the cylinder that are known, and where each comes from.
    pub cylinder_numbers: Vec<CylinderNumber>,
    /// What of the cylinder was measured, whatever was typed over it.
    pub measured: MeasuredCylinder,
    /// Roughness Rq of journal and shell, m, when both were told.
    pub roughness: Option<(f64, f64)>,
}

/// Reads what was told, field by field.
pub(super) struct Told<'a> {
    pub(super) system: &'a OilSystem,
    lacks: Vec<Lack>,
}

impl Told<'_> {
    pub(super) fn read(
        &mut self,
        field: &'static str,
        said: Option<&Said>,
        kind: Kind,
    ) -> Option<f64> {
        let said = said?;
        let reason = match unit_of(kind, &said.unit) {
            None => "its unit is not known here".to_owned(),
            Some(unit) => match read(&said.typed, kind, unit) {
                Ok(typed) if typed.si() > 0.0 => return Some(typed.si()),
                Ok(_) => "it has to be more than nothing".to_owned(),
                Err(error) => error.to_string(),
            },
        };
        self.lacks.push(Lack::Text { field, reason });
        None
    }

    fn length(&mut self, field: &'static str, said: Option<&Said>, lack: Lack) -> Option<f64> {
        let length = self.read(field, said, Kind::Length);
        if length.is_none() {
            self.lacks.push(lack);
        }
        length
    }

    /// The oil, and one standard deviation of its viscosity as a part.
    fn oil(&mut self) -> Option<(Lubricant, f64)> {
        let system = self.system;
        let kind = Kind::KinematicViscosity;
        let at_40 = self.read("viscosity at 40 °C", system.at_40.as_ref(), kind);
        let at_100 = self.read("viscosity at 100 °C", system.at_100.as_ref(), kind);
        let grade = system.grade.as_deref().map(Grade::read);
        let oil = match (at_40, at_100, grade) {
            (Some(at_40), Some(at_100), grade) => {
                let sheet = Lubricant::of_sheet(at_40 * 1e6, at_100 * 1e6);
                // An oil that is not of its grade is told, and not worked with.
                let oil = match grade {
                    Some(Ok(grade)) => sheet.and_then(|oil| oil.with_grade(grade)),
                    Some(Err(error)) => Err(error),
                    None => sheet,
                };
                oil.map(|oil| (oil, SHEET_DOUBT))
            }
            (_, _, Some(grade)) => grade
                .and_then(GradeBand::of)
                .map(|band| (band.likely, band.relative_deviation(HOT))),
            _ => {
                self.lacks.push(Lack::Oil);
                return None;
            }
        };
        oil.map_err(|error| {
            let reason = error.to_string();
            self.lacks.push(Lack::ThatOil { reason });
        })
        .ok()
    }

    fn pump(&mut self, engine: &Engine) -> Option<Pump> {
        let system = self.system;
        let ratio = self.read("turns of the pump", system.pump_ratio.as_ref(), Kind::Ratio);
        let relief = self.read("relief", system.relief.as_ref(), Kind::Pressure);
        let volume = self.read("pump's volume", system.pump_volume.as_ref(), Kind::Volume);
        let Some(volume) = volume else {
            self.lacks.push(Lack::Pump);
            return None;
        };
        if relief.is_none() {
            self.lacks.push(Lack::Relief);
        }
        let by_engine = match engine.construction().pump_drive {
            // Crank, or a chain or gear of its own that usually keeps its pace.
            PumpDrive::Camshaft => 0.5,
            _ => 1.0,
        };
        let (ratio, opens) = (ratio.unwrap_or(by_engine), relief.unwrap_or(NEVER_OPENS));
        Some(usual::pump("standard", volume, ratio, opens))
    }

    /// Takes out what no bearing can run with.
    fn usable(&mut self, what: &str, row: Vec<Option<Estimate>>) -> Vec<Option<Estimate>> {
        let each = row.into_iter().enumerate().map(|(at, one)| {
            let clearance = one?;
            if clearance.value() > 0.0 {
                return Some(clearance);
            }
            self.lacks.push(Lack::Clearance {
                bearing: format!("{what} {}", at + 1),
                thou: format!("{:.2}", clearance.value() / 25.4e-6),
            });
            None
        });
        each.collect()
    }
}

impl OilInputs {
    pub(super) fn of(folding: &Folding) -> Self {
        let nothing = OilSystem::default();
        let known = folding.build.oil.system.as_ref();
        let mut told = Told {
            system: known.map_or(&nothing, |known| &known.told),
            lacks: Vec::new(),
        };
        let system = told.system;
        let mut inputs = Self {
            circuit: None,
            layout: None,
            pump: None,
            oil: None,
            lacks: Vec::new(),
            estimated: Vec::new(),
            stale: stale(folding),
            load: told.read("load", system.load.as_ref(), Kind::Force),
            cylinder: None,
            cylinder_lacks: Vec::new(),
            cylinder_numbers: Vec::new(),
            measured: MeasuredCylinder::of(folding),
            roughness: None,
        };
        let journal = told.read(
            "roughness of the journal",
            system.journal_roughness.as_ref(),
            Kind::Length,
        );
        let shell = told.read(
            "roughness of the shell",
            system.shell_roughness.as_ref(),
            Kind::Length,
        );
        inputs.roughness = journal.zip(shell);
        let known = told.cylinder(&inputs.measured);
        (inputs.cylinder, inputs.cylinder_lacks) = (known.cylinder, known.lacks);
        inputs.cylinder_numbers = known.numbers;
        let oil = told.oil();
        inputs.oil = oil.as_ref().map(|(oil, _)| *oil);
        let Some(engine) = folding.engine() else {
            told.lacks.insert(0, Lack::Engine);
            inputs.lacks = told.lacks;
            return inputs;
        };
        inputs.pump = told.pump(engine);
        let bearings = Bearings::of(folding);
        let mut sources = bearings.sources.clone();
        inputs.layout = layout(&mut told, engine, bearings);
        if let (Some(layout), Some((oil, doubt))) = (&inputs.layout, oil) {
            let bypass = told.read("filter's bypass", system.bypass.as_ref(), Kind::Pressure);
            let circuit = Circuit {
                oil,
                viscosity_doubt: doubt,
                filter: usual::filter(bypass.unwrap_or(usual::BYPASS_AT)),
                gallery: usual::GALLERY,
                leaks: Leaks::of(layout, &mut sources),
                loads: match (inputs.load, inputs.cylinder) {
                    (Some(typed), _) => BearingLoads::Steady(MAIN_BY_ROD * typed, typed),
                    (None, Some(cylinder)) => BearingLoads::Cylinder(cylinder),
                    (None, None) => usual::loads(layout),
                },
            };
            let known = inputs.load.is_some() || inputs.cylinder.is_some();
            inputs.estimated = estimated(&circuit, bypass.is_none(), known);
            inputs.circuit = Some(circuit);
        }
        told.lacks.sort_by_key(|lack| !lack.stops_the_circuit());
        inputs.lacks = told.lacks;
        inputs
    }
}

/// What hangs on the gallery of an engine.
fn layout(told: &mut Told, engine: &Engine, bearings: Bearings) -> Option<Layout> {
    let system = told.system;
    let main_journal = bearings.main_journal.or_else(|| {
        let said = system.main_journal.as_ref();
        told.length("main journal", said, Lack::MainJournal)
    });
    let main_shell = told.length("main shell", system.main_shell.as_ref(), Lack::MainShell);
    let rod_journal = bearings.rod_journal.or_else(|| {
        let said = system.rod_journal.as_ref();
        told.length("crankpin", said, Lack::RodJournal)
    });
    let rod_shell = told.length("rod shell", system.rod_shell.as_ref(), Lack::RodShell);
    let stroke = told.length("stroke", system.stroke.as_ref(), Lack::Stroke);
    let squirter_bore = told.read(
        "bore of a squirter",
        system.squirter_bore.as_ref(),
        Kind::Length,
    );
    let (mains, rods) = (
        told.usable("main", bearings.mains),
        told.usable("rod", bearings.rods),
    );
    let main_shell = main_shell?;
    let rod_shell = rod_shell?;
    let valves = Per::Valve.parts(engine).len();
    let with = |feature: Feature| if engine.has(feature) { valves } else { 0 };
    let count = |told: Option<u32>, by_engine: usize| {
        // No engine has more, whatever a file says.
        told.map_or(by_engine, |told| told.min(96) as usize)
    };
    Some(Layout {
        mains: BearingRow {
            diameter: main_journal?,
            length: main_shell,
            entry: match system.groove {
                Some(Groove::AllRound) => Entry::FullGroove(GROOVE_BY_LENGTH * main_shell),
                Some(Groove::None) => Entry::Hole(HOLE_BY_LENGTH * main_shell),
                Some(Groove::Upper) | None => Entry::HalfGroove(GROOVE_BY_LENGTH * main_shell),
            },
            clearances: mains,
        },
        rods: BearingRow {
            diameter: rod_journal?,
            length: rod_shell,
            entry: Entry::Hole(ROD_HOLE_BY_LENGTH * rod_shell),
            clearances: rods,
        },
        stroke: stroke?,
        cam_bearings: Per::CamBearing.parts(engine).len(),
        lifters: count(system.lifters, with(Feature::Pushrods)),
        rockers: count(system.rockers, with(Feature::Rockers)),
        squirters: match squirter_bore {
            Some(bore) => (count(system.squirters, 0), bore),
            None => (0, 0.0),
        },
    })
}

/// What of a circuit is estimated, in words.
fn estimated(circuit: &Circuit, bypass: bool, loads_known: bool) -> Vec<Estimated> {
    let mut words: Vec<String> = Vec::new();
    let guessed = |start: &str| -> Vec<&str> {
        let those = circuit.leaks.leaks.iter();
        those
            .filter(|leak| leak.known == Known::Estimated && leak.name.starts_with(start))
            .map(|leak| leak.name.as_str())
            .collect()
    };
    for (start, what) in [("main ", "mains"), ("rod ", "rods")] {
        let all = circuit.leaks.leaks.iter();
        let all = all.filter(|leak| leak.name.starts_with(start)).count();
        let those = guessed(start);
        if those.len() == all {
            words.push(format!(
                "all {what}: a thousandth of the journal's diameter"
            ));
        } else if !those.is_empty() {
            words.push(format!(
                "{}: a thousandth of the journal's diameter",
                those.join(", ")
            ));
        }
    }
    for what in ["cam bearings", "lifters", "rockers"] {
        if !guessed(what).is_empty() {
            words.push(format!("{what}: by their number"));
        }
    }
    words.push("slip of the pump, gallery and filter".to_owned());
    if !loads_known {
        words.push("loads on the bearings".to_owned());
    }
    if bypass {
        words.push("the filter's bypass".to_owned());
    }
    words.into_iter().map(Estimated).collect()
}

/// The bearings whose clearance was measured and no longer counts.
fn stale(folding: &Folding) -> Vec<String> {
    let build = &folding.build;
    let is_stale = |measure, at| {
        matches!(
            build.result(Proof::Measure(measure), at),
            ResultState::Stale(_)
        )
    };
    let mains = build.mains.iter().map(|one| one.main.number());
    let mains = mains
        .filter(|number| is_stale(&MAIN_OIL_CLEARANCE, At::Main(*number)))
        .map(|number| format!("main {number}"));
    let rods = build.rods.iter().map(|one| one.cylinder);
    let rods = rods
        .filter(|cylinder| is_stale(&ROD_OIL_CLEARANCE, At::Rod(*cylinder)))
        .map(|cylinder| format!("rod {cylinder}"));
    mains.chain(rods).collect()
}
