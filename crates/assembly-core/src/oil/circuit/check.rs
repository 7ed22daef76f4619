//! The oil pressure that an engine's clearances allow, as a quick check.

use super::balance::{At, Circuit};
use super::error::CircuitError;
use super::layout::{BearingRow, Known, Layout, Leaks};
use super::leak::Entry;
use super::pump::Pump;
use super::rule::{FOR_A_THOUSAND_TURNS, HOT_IDLE, PSI, wanted};
use super::usual;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};
use crate::measure::{Estimate, Sources};
use crate::oil::inputs::{
    CAM_BEARINGS, DISPLACEMENT, DRIVE, FLOW, GROOVE, LIFTERS, MAIN_JOURNAL, MAIN_LENGTH, MAINS,
    PRESSURE, RELIEF, ROD_JOURNAL, ROD_LENGTH, RODS, SHARE, SPEED, STROKE,
};
use crate::oil::viscosity::Lubricant;
use crate::oil::viscosity::line_check::{AT, AT_40, AT_100};

/// Oil pressure from clearances.
pub static OIL_PRESSURE: Calculation = Calculation {
    id: "oil-pressure",
    title: "Oil pressure from clearances",
    purpose: "What the gauge should show with these clearances, and which pump they need.",
    inputs: &[
        MAINS,
        MAIN_JOURNAL,
        MAIN_LENGTH,
        GROOVE,
        RODS,
        ROD_JOURNAL,
        ROD_LENGTH,
        STROKE,
        CAM_BEARINGS,
        LIFTERS,
        AT_40,
        AT_100,
        AT,
        SPEED,
        DISPLACEMENT,
        DRIVE,
        RELIEF,
    ],
    outputs: &[
        Output::of("pressure", "pressure with this pump", PRESSURE),
        Output::of("high-volume", "with a high-volume pump", PRESSURE),
        Output::of("stiff-relief", "with a stiffer relief", PRESSURE),
        Output::of("wanted", "ten psi for each thousand turns", PRESSURE),
        Output::of(
            "flow-wanted",
            "flow that the leaks take at that pressure",
            FLOW,
        ),
        Output::of("main-share", "share of the mains", SHARE),
        Output::of("rod-share", "share of the rods", SHARE),
        Output::of("other-share", "share of the rest, estimated", SHARE),
    ],
    workings: &[
        "each bearing leaks pressure × clearance³ / viscosity, more the farther its journal runs off the middle; the crank pumps to the rods",
        "pump = volume × turns − slip; where both agree, or where the relief opens: {pressure}",
        "with more volume {high-volume}, with a stiffer relief {stiff-relief}; common practice wants {wanted}, for which the leaks take {flow-wanted}",
        "of the leak: mains {main-share}, rods {rod-share}, the rest {other-share}",
    ],
    provenance: Provenance::Handbook(
        "laminar slit flow (Blackburn, Reethof and Shearer, Fluid Power Control, 1960), feed of a hole after F. A. Martin (from memory), eccentricity by Reynolds' equation; pump slip, filter and bearing loads as is common practice",
    ),
    cautions: &[
        "What was not measured is estimated: cam bearings, lifters, pump slip, filter. Compare with your own gauge at a known oil temperature.",
        "Hot oil burns. Keep clear of belts and fan while you read a gauge, and run an engine only with the doors open.",
        "The pressures of the engine's maker win.",
    ],
    run,
};

fn circuit(given: &Given) -> Result<Circuit, CalculationError> {
    let value = |input: &'static Input| given.one(input).map(Estimate::value);
    let groove = match given.choice(&GROOVE)?.id {
        "all-round" => Entry::FullGroove(0.15 * value(&MAIN_LENGTH)?),
        "none" => Entry::Hole(0.3 * value(&MAIN_LENGTH)?),
        _ => Entry::HalfGroove(0.15 * value(&MAIN_LENGTH)?),
    };
    let row = |input: &'static Input| given.several(input.id).iter().cloned().map(Some).collect();
    let whole = |input: &'static Input| -> Result<usize, CalculationError> {
        // Of a count that is no whole number the whole part.
        Ok((0..64)
            .take_while(|at| f64::from(*at) + 1.0 <= value(input).unwrap_or(0.0))
            .count())
    };
    let layout = Layout {
        mains: BearingRow {
            diameter: value(&MAIN_JOURNAL)?,
            length: value(&MAIN_LENGTH)?,
            entry: groove,
            clearances: row(&MAINS),
        },
        rods: BearingRow {
            diameter: value(&ROD_JOURNAL)?,
            length: value(&ROD_LENGTH)?,
            entry: Entry::Hole(0.25 * value(&ROD_LENGTH)?),
            clearances: row(&RODS),
        },
        stroke: value(&STROKE)?,
        cam_bearings: whole(&CAM_BEARINGS)?,
        lifters: whole(&LIFTERS)?,
        rockers: whole(&LIFTERS)?,
        squirters: (0, 0.0),
    };
    let oil = Lubricant::of_sheet(value(&AT_40)? * 1e6, value(&AT_100)? * 1e6)
        .map_err(|error| CalculationError::not_possible(&AT_100, error.to_string()))?;
    Ok(Circuit {
        oil,
        viscosity_doubt: 0.0,
        filter: usual::filter(usual::BYPASS_AT),
        gallery: usual::GALLERY,
        loads: usual::loads(&layout),
        leaks: Leaks::of(&layout, &mut Sources::new()),
    })
}

fn pump(given: &Given, volume: f64) -> Result<Pump, CalculationError> {
    let drive_ratio = match given.choice(&DRIVE)?.id {
        "crank" => 1.0,
        _ => 0.5,
    };
    let opens_at = given.one(&RELIEF)?.value();
    Ok(usual::pump("this pump", volume, drive_ratio, opens_at))
}

fn told(error: CircuitError) -> CalculationError {
    let field = match &error {
        CircuitError::Clearance { .. } => &MAINS,
        CircuitError::NoPump => &DISPLACEMENT,
        CircuitError::ReliefBelowIdle { .. } => &RELIEF,
        CircuitError::Beyond { .. } => &SPEED,
    };
    CalculationError::not_possible(field, error.to_string())
}

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let circuit = circuit(given)?;
    let (speed, temperature) = (given.one(&SPEED)?, given.one(&AT)?);
    let at = At {
        speed: speed.value(),
        temperature: temperature.value(),
    };
    let wanted_there = wanted(at.speed, FOR_A_THOUSAND_TURNS);
    let demand = circuit.demand(at);
    let mut answer = Answer::new()
        .with("wanted", Estimate::exact(wanted_there))
        .with("flow-wanted", Estimate::exact(demand.flow(wanted_there)));
    // Needed fields are asked for even when there is no pump to use them.
    let drive = pump(
        given,
        given
            .optional(DISPLACEMENT.id)
            .map_or(1e-5, Estimate::value),
    )?;
    let mut shown_at = wanted_there;
    if given.optional(DISPLACEMENT.id).is_some() {
        let [this, volume, stiff] = drive.three();
        for (id, pump) in [
            ("pressure", &this),
            ("high-volume", &volume),
            ("stiff-relief", &stiff),
        ] {
            let pressure = with_causes(&circuit, pump, at, temperature).map_err(told)?;
            if id == "pressure" {
                shown_at = pressure.value();
                answer = remarks(answer, &pressure, pump, at);
            }
            answer = answer.with(id, pressure);
        }
    } else {
        answer = answer.finding(Gravity::Caution, CircuitError::NoPump.to_string());
    }
    let shares = circuit.shares(at, shown_at.max(1.0));
    let part = |named: &str| -> f64 {
        let those = shares.iter().filter(|one| one.name.starts_with(named));
        those.map(|one| one.part).sum()
    };
    let (mains, rods) = (part("main "), part("rod "));
    Ok(answer
        .with("main-share", Estimate::exact(mains))
        .with("rod-share", Estimate::exact(rods))
        .with(
            "other-share",
            Estimate::exact((1.0 - mains - rods).max(0.0)),
        ))
}

/// The pressure with the causes of the measured clearances and of the temperature.
fn with_causes(
    circuit: &Circuit,
    pump: &Pump,
    at: At,
    temperature: &Estimate,
) -> Result<Estimate, CircuitError> {
    let found = circuit.pressure_and_slopes(pump, at)?;
    let measured = circuit
        .leaks
        .leaks
        .iter()
        .zip(&found.by_clearance)
        .filter(|(leak, _)| leak.known == Known::Measured);
    let mut parts: Vec<(&Estimate, f64)> = measured
        .filter_map(|(leak, slope)| Some((leak.clearance.as_ref()?, *slope)))
        .collect();
    let thins = libm::log(
        circuit.oil.dynamic(at.temperature + 0.5) / circuit.oil.dynamic(at.temperature - 0.5),
    );
    parts.push((temperature, found.by_viscosity * thins));
    Ok(Estimate::from_slopes(found.pressure, &parts))
}

fn remarks(mut answer: Answer, pressure: &Estimate, pump: &Pump, at: At) -> Answer {
    let reads = pressure.value();
    if reads > 0.98 * pump.relief.opens_at {
        answer = answer.finding(
            Gravity::Note,
            "The relief is open here: this pressure says nothing of the bearings, and a bigger pump would only push more oil round it.",
        );
    } else if reads < HOT_IDLE.0 {
        answer = answer.finding(
            Gravity::Stop,
            format!(
                "{:.0} psi is under what a hot idle should have ({:.0} to {:.0}): too loose, too thin an oil, or too small a pump.",
                reads / PSI,
                HOT_IDLE.0 / PSI,
                HOT_IDLE.1 / PSI
            ),
        );
    } else if reads < wanted(at.speed, FOR_A_THOUSAND_TURNS) {
        answer = answer.finding(
            Gravity::Caution,
            "Under ten psi for each thousand turns. A high-volume pump helps below the relief; a stiffer relief does not.",
        );
    }
    answer
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{THOU, refused, says, value, worked};

    fn engine(clearance: f64, turns: f64) -> Given {
        let mut given = Given::new();
        for _ in 0..5 {
            given.push("mains", Estimate::exact(clearance * THOU));
        }
        for _ in 0..8 {
            given.push("rods", Estimate::exact(clearance * THOU));
        }
        for (id, number) in [
            ("main-journal", 0.0622),
            ("main-length", 0.0208),
            ("groove", 0.0),
            ("rod-journal", 0.0533),
            ("rod-length", 0.0203),
            ("stroke", 0.0889),
            ("cam-bearings", 5.0),
            ("lifters", 16.0),
            ("at-40", 70e-6),
            ("at-100", 10.5e-6),
            ("temperature", 373.15),
            ("speed", turns * std::f64::consts::PI / 30.0),
            ("drive", 0.0),
            ("relief", 55.0 * PSI),
        ] {
            given.push(id, Estimate::exact(number));
        }
        given
    }

    fn with_pump(given: Given) -> Given {
        given.with("pump-volume", Estimate::exact(18e-6))
    }

    #[test]
    fn tight_and_loose_engines_at_hot_idle() {
        let tight = worked(&OIL_PRESSURE, &with_pump(engine(2.0, 700.0)));
        let loose = worked(&OIL_PRESSURE, &with_pump(engine(4.0, 700.0)));
        let psi = |answer: &Answer| value(answer, "pressure", PSI);
        assert!(
            psi(&tight) > 15.0 && psi(&loose) < 0.6 * psi(&tight),
            "{} {}",
            psi(&tight),
            psi(&loose)
        );
        assert!(value(&loose, "high-volume", PSI) > psi(&loose));
        assert!((value(&loose, "stiff-relief", PSI) - psi(&loose)).abs() < 1e-6);
        let fast = worked(&OIL_PRESSURE, &with_pump(engine(2.0, 6000.0)));
        assert!(says(&fast, "relief is open"));
    }

    #[test]
    fn without_a_pump_the_leaks_are_still_shown() {
        let answer = worked(&OIL_PRESSURE, &engine(2.0, 2000.0));
        assert!(answer.get("pressure").is_none());
        assert!(answer.get("flow-wanted").unwrap().value() > 0.0);
        assert!(says(&answer, "volume a turn is needed"));
        let sum = ["main-share", "rod-share", "other-share"]
            .map(|id| value(&answer, id, 1.0))
            .iter()
            .sum::<f64>();
        assert!((sum - 1.0).abs() < 1e-5);
    }

    #[test]
    fn a_relief_that_opens_before_idle_is_told() {
        let mut weak = Given::new();
        for input in OIL_PRESSURE.inputs {
            for one in with_pump(engine(2.0, 700.0)).several(input.id) {
                let number = if input.id == "relief" {
                    3e4
                } else {
                    one.value()
                };
                weak.push(input.id, Estimate::exact(number));
            }
        }
        assert_eq!(refused(&OIL_PRESSURE, &weak), Some("relief"));
    }
}
