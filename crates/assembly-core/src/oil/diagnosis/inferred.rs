//! From pressure, speed and oil temperature to the leak that must be there.
//!
//! What the pump pushes at that pressure is what leaks; by viscosity over pressure
//! it is the conductance of all leaks together, which can be held against the one
//! that the measured clearances predict.

use crate::oil::circuit::{At, Circuit, Pump};

/// A reading of the gauge.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Reading {
    /// What the gauge says, Pa.
    pub pressure: f64,
    /// Of the crank, rad/s.
    pub speed: f64,
    /// Of the oil, kelvin; not always read.
    pub temperature: Option<f64>,
}

/// What a reading tells.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum Meaning {
    /// No oil temperature: kept, but it tells nothing, since cold oil hides any leak.
    NoTemperature,
    /// The engine stood still, or a number is none.
    NotRunning,
    /// The relief holds the pressure: it tells of its spring and nothing of the
    /// bearings. By how much the pressure differs from what the relief should hold.
    AtRelief(f64),
    /// The leak that must be there.
    Leak(Inferred),
}

/// A leak found from a reading.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Inferred {
    /// Conductance of all leaks, m³.
    pub conductance: f64,
    /// By the predicted one.
    pub of_predicted: f64,
    /// One standard deviation of that ratio, from clearances and viscosity.
    pub deviation: f64,
    /// The pressure that was predicted, Pa.
    pub predicted_pressure: f64,
    /// By how much all clearances would have to be greater, as a factor: the cube
    /// root of the ratio.
    pub clearances: f64,
}

/// What a reading tells of this engine with this pump.
#[must_use]
pub fn infer(circuit: &Circuit, pump: &Pump, reading: &Reading) -> Meaning {
    let Some(temperature) = reading.temperature else {
        return Meaning::NoTemperature;
    };
    let usable = reading.pressure.is_finite()
        && reading.pressure >= 0.0
        && reading.speed > 1.0
        && reading.speed.is_finite()
        && (220.0..=450.0).contains(&temperature);
    if !usable {
        return Meaning::NotRunning;
    }
    let at = At {
        speed: reading.speed,
        temperature,
    };
    let demand = circuit.demand(at);
    let viscosity = circuit.oil.dynamic(temperature);
    // The pump works against the losses, too, which go with the flow.
    let mut flow = pump.flow(reading.speed, reading.pressure, viscosity);
    let mut at_pump = reading.pressure;
    for _ in 0..8 {
        at_pump = reading.pressure + circuit.losses(&demand, flow.max(0.0));
        flow = pump.flow(reading.speed, at_pump, viscosity);
    }
    let Ok(predicted) = circuit.pressure_and_slopes(pump, at) else {
        return Meaning::NotRunning;
    };
    let holds = pump.relief.opens_at;
    if at_pump > 0.98 * holds {
        return Meaning::AtRelief(at_pump / holds);
    }
    let pressure = reading.pressure.max(1.0);
    let conductance = flow.max(0.0) * viscosity / pressure;
    let expected = demand.flow(pressure) * viscosity / pressure;
    let variance: f64 = circuit
        .leaks
        .leaks
        .iter()
        .zip(circuit.shares_in_order(at, pressure))
        .filter_map(|(leak, part)| {
            let clearance = leak.clearance.as_ref()?;
            Some((3.0 * part * clearance.deviation() / clearance.value()).powi(2))
        })
        .sum();
    let of_predicted = conductance / expected;
    Meaning::Leak(Inferred {
        conductance,
        of_predicted,
        deviation: of_predicted * variance.sqrt().hypot(circuit.viscosity_doubt),
        predicted_pressure: predicted.pressure,
        clearances: libm::cbrt(of_predicted),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::{Origin, Sources};
    use crate::oil::circuit::example::{five_main_circuit, five_main_layout, standard_pump};

    fn engine() -> (Circuit, Pump) {
        let mut sources = Sources::new();
        let layout = five_main_layout(&mut sources);
        (
            five_main_circuit(&layout, &mut sources).unwrap(),
            standard_pump(),
        )
    }

    fn idle(pressure: f64, temperature: Option<f64>) -> Reading {
        Reading {
            pressure,
            speed: 80.0,
            temperature,
        }
    }

    #[test]
    fn the_predicted_pressure_infers_the_predicted_leak() {
        let (circuit, pump) = engine();
        let at = At {
            speed: 80.0,
            temperature: 368.15,
        };
        let cause = Sources::new().fresh("oil", Origin::Stated);
        let pressure = circuit.pressure(&pump, at, cause).unwrap().value();
        let Meaning::Leak(same) = infer(&circuit, &pump, &idle(pressure, Some(368.15))) else {
            panic!("{pressure}");
        };
        assert!((same.of_predicted - 1.0).abs() < 1e-3, "{same:?}");
        assert!(same.deviation > 0.0);
        let Meaning::Leak(half) = infer(&circuit, &pump, &idle(0.5 * pressure, Some(368.15)))
        else {
            panic!("{pressure}");
        };
        assert!(half.of_predicted > 1.8, "{half:?}");
        assert!((half.clearances.powi(3) / half.of_predicted - 1.0).abs() < 1e-12);
    }

    #[test]
    fn what_tells_nothing_says_so() {
        let (circuit, pump) = engine();
        assert_eq!(
            infer(&circuit, &pump, &idle(1e5, None)),
            Meaning::NoTemperature
        );
        assert_eq!(
            infer(&circuit, &pump, &idle(f64::NAN, Some(360.0))),
            Meaning::NotRunning
        );
        let cold = Reading {
            speed: 300.0,
            ..idle(4e5, Some(290.0))
        };
        assert!(matches!(
            infer(&circuit, &pump, &cold),
            Meaning::AtRelief(_)
        ));
    }
}
