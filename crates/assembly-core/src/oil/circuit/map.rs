//! The pressure over speed and temperature, with its band, and where the oil goes.

use super::balance::{At, Circuit, Demand, Standing};
use super::error::CircuitError;
use super::layout::{Known, LeakKind};
use super::prepared::Prepared;
use super::pump::Pump;
use super::rule::{HOT_IDLE, PSI};
use crate::measure::{Estimate, SourceId};

/// One point of the map.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Point {
    /// At the gallery, Pa.
    pub pressure: f64,
    /// One standard deviation of it, from clearances and viscosity, Pa.
    pub deviation: f64,
    /// Whether the relief is open.
    pub relief_open: bool,
    /// Whether the filter is gone round.
    pub bypass_open: bool,
    /// Whether the pressure is too low to get oil to the rods of a cross-drilled
    /// crank against its turning.
    pub rods_starve: bool,
}

/// A pressure and what moves it.
#[derive(Clone, PartialEq, Debug)]
pub struct Slopes {
    /// At the gallery, Pa.
    pub pressure: f64,
    /// For each leak, by a metre of its clearance, Pa/m.
    pub by_clearance: Vec<f64>,
    /// By the logarithm of the viscosity, Pa.
    pub by_viscosity: f64,
}

/// One leak's part at a point.
#[derive(Clone, PartialEq, Debug)]
pub struct Share {
    /// Which leak.
    pub name: String,
    /// Its flow, m³/s.
    pub flow: f64,
    /// Of all that leaks.
    pub part: f64,
    /// Measured or estimated.
    pub known: Known,
}

/// Pressures of several pumps over temperatures and speeds.
#[derive(Clone, PartialEq, Debug)]
pub struct PressureMap {
    /// Points of a pump, temperature by temperature, speed by speed.
    pub pumps: Vec<Vec<Vec<Point>>>,
}

/// How the errors of all leaks hang together: by cause, the part by which one
/// standard deviation changes each leak's flow.
struct Doubts {
    by_leak: Vec<Vec<(usize, f64)>>,
    causes: usize,
}

impl Doubts {
    fn of(circuit: &Circuit) -> Self {
        let mut causes: Vec<SourceId> = Vec::new();
        let by_leak = circuit
            .leaks
            .leaks
            .iter()
            .map(|leak| {
                let Some(clearance) = &leak.clearance else {
                    return Vec::new();
                };
                clearance
                    .parts()
                    .iter()
                    .map(|(cause, part)| {
                        let at = causes
                            .iter()
                            .position(|one| one == cause)
                            .unwrap_or_else(|| {
                                causes.push(*cause);
                                causes.len() - 1
                            });
                        (at, part / clearance.value())
                    })
                    .collect()
            })
            .collect();
        Self {
            by_leak,
            causes: causes.len(),
        }
    }

    /// One standard deviation of the whole leak at a pressure, m³/s.
    fn of_leak(&self, demand: &Demand, pressure: f64, room: &mut Vec<f64>) -> f64 {
        room.clear();
        room.resize(self.causes, 0.0);
        for (parts, taking) in self.by_leak.iter().zip(&demand.each) {
            let flow = taking.by_clearance(pressure);
            for (at, part) in parts {
                if let Some(sum) = room.get_mut(*at) {
                    *sum += flow * part;
                }
            }
        }
        room.iter().map(|one| one * one).sum::<f64>().sqrt()
    }
}

/// Where the search for a pump's pressure begins when nothing better is known, Pa.
fn first_guess(pump: &Pump) -> f64 {
    0.5 * pump.relief.opens_at
}

impl Circuit {
    /// Whether pumps and clearances can be worked with.
    ///
    /// # Errors
    /// [`CircuitError`] names what cannot be.
    pub fn check(&self, pumps: &[Pump]) -> Result<(), CircuitError> {
        for leak in &self.leaks.leaks {
            if let Some(clearance) = &leak.clearance
                && (clearance.value().is_nan() || clearance.value() <= 0.0)
            {
                return Err(CircuitError::Clearance {
                    name: leak.name.clone(),
                    thou: clearance.value() / 25.4e-6,
                });
            }
        }
        if pumps.is_empty() {
            return Err(CircuitError::NoPump);
        }
        for pump in pumps {
            let swept = pump.displacement * pump.drive_ratio;
            if swept.is_nan() || swept <= 0.0 {
                return Err(CircuitError::NoPump);
            }
            let opens = pump.relief.opens_at;
            if opens.is_nan() || opens <= HOT_IDLE.0 {
                return Err(CircuitError::ReliefBelowIdle {
                    name: pump.name.clone(),
                    psi: opens / PSI,
                });
            }
        }
        Ok(())
    }

    /// The pressure with its causes of error: the clearances', and what the oil's
    /// viscosity may be off as one more cause.
    ///
    /// # Errors
    /// [`CircuitError`] as of [`Self::check`].
    pub fn pressure(
        &self,
        pump: &Pump,
        at: At,
        viscosity: SourceId,
    ) -> Result<Estimate, CircuitError> {
        let found = self.pressure_and_slopes(pump, at)?;
        let parts: Vec<(&Estimate, f64)> = self
            .leaks
            .leaks
            .iter()
            .zip(&found.by_clearance)
            .filter_map(|(leak, slope)| Some((leak.clearance.as_ref()?, *slope)))
            .collect();
        Ok(Estimate::from_slopes(found.pressure, &parts)
            .with(viscosity, found.by_viscosity * self.viscosity_doubt))
    }

    /// The pressure and by how much each thing changes it.
    ///
    /// # Errors
    /// [`CircuitError`] as of [`Self::check`].
    pub fn pressure_and_slopes(&self, pump: &Pump, at: At) -> Result<Slopes, CircuitError> {
        self.check(std::slice::from_ref(pump))?;
        let demand = self.demand(at);
        let pressure = self.pressure_under(pump, &demand, at.speed, first_guess(pump));
        let standing = self.standing(pump, &demand, at.speed, pressure);
        let by_leak = standing.pressure_by_leak(pressure);
        let by_clearance = self
            .leaks
            .leaks
            .iter()
            .zip(&demand.each)
            .map(|(leak, taking)| match &leak.clearance {
                Some(clearance) => by_leak * taking.by_clearance(pressure) / clearance.value(),
                None => 0.0,
            })
            .collect();
        Ok(Slopes {
            pressure,
            by_clearance,
            by_viscosity: standing.pressure_by_thickness(pressure),
        })
    }

    /// The pressures of some pumps over speeds (rad/s) and temperatures (kelvin).
    ///
    /// # Errors
    /// [`CircuitError`] as of [`Self::check`], or for a speed or temperature beyond
    /// an engine's.
    pub fn map(
        &self,
        pumps: &[Pump],
        speeds: &[f64],
        temperatures: &[f64],
    ) -> Result<PressureMap, CircuitError> {
        self.check(pumps)?;
        let within = |what: &'static str, all: &[f64], range: std::ops::RangeInclusive<f64>| {
            all.iter()
                .find(|one| !range.contains(one))
                .map_or(Ok(()), |read| {
                    Err(CircuitError::Beyond { what, read: *read })
                })
        };
        within("a speed", speeds, 1.0..=2500.0)?;
        within("an oil temperature", temperatures, 220.0..=450.0)?;
        let doubts = Doubts::of(self);
        let loads = self.loads_over(speeds);
        let mut room = Vec::new();
        let prepared = Prepared::of(self);
        let mut map = vec![Vec::with_capacity(temperatures.len()); pumps.len()];
        for temperature in temperatures {
            let mut rows = vec![Vec::with_capacity(speeds.len()); pumps.len()];
            // A speed's neighbour is where its search begins.
            let mut guesses: Vec<f64> = pumps.iter().map(first_guess).collect();
            for (speed, load) in speeds.iter().zip(&loads) {
                let at = At {
                    speed: *speed,
                    temperature: *temperature,
                };
                let demand = prepared.demand(at, *load);
                for ((pump, row), guess) in pumps.iter().zip(&mut rows).zip(&mut guesses) {
                    let pressure = self.pressure_under(pump, &demand, *speed, *guess);
                    *guess = pressure;
                    let standing = self.standing(pump, &demand, *speed, pressure);
                    row.push(self.point(pump, &demand, (pressure, &standing), &doubts, &mut room));
                }
            }
            for (pump, row) in map.iter_mut().zip(rows) {
                pump.push(row);
            }
        }
        Ok(PressureMap { pumps: map })
    }

    fn point(
        &self,
        pump: &Pump,
        demand: &Demand,
        (pressure, standing): (f64, &Standing),
        doubts: &Doubts,
        room: &mut Vec<f64>,
    ) -> Point {
        let by_leak = standing.pressure_by_leak(pressure);
        let by_clearance = by_leak * doubts.of_leak(demand, pressure, room);
        let by_oil = standing.pressure_by_thickness(pressure) * self.viscosity_doubt;
        Point {
            pressure,
            deviation: by_clearance.hypot(by_oil),
            relief_open: standing.at_pump > pump.relief.opens_at,
            bypass_open: self.filter.resistance * demand.viscosity * standing.leaking
                > self.filter.bypass_at,
            rods_starve: pressure < demand.rods_need,
        }
    }

    /// Where the oil goes at a gallery pressure: each leak's share, largest first.
    #[must_use]
    pub fn shares(&self, at: At, pressure: f64) -> Vec<Share> {
        let demand = self.demand(at);
        let whole = demand.flow(pressure);
        let parts = self.shares_in_order(at, pressure);
        let mut shares: Vec<Share> = self
            .leaks
            .leaks
            .iter()
            .zip(parts)
            .map(|(leak, part)| Share {
                name: leak.name.clone(),
                flow: part * whole,
                part,
                known: leak.known,
            })
            .collect();
        shares.sort_by(|a, b| b.flow.total_cmp(&a.flow));
        shares
    }

    /// Each leak's part of the whole at a gallery pressure, in the leaks' order.
    #[must_use]
    pub fn shares_in_order(&self, at: At, pressure: f64) -> Vec<f64> {
        let demand = self.demand(at);
        let whole = demand.flow(pressure);
        self.leaks
            .leaks
            .iter()
            .zip(&demand.each)
            .map(|(leak, taking)| {
                let flow = match leak.kind {
                    LeakKind::Nozzle(bore, opens) => {
                        super::leak::orifice_flow(bore, pressure - opens, demand.density)
                    }
                    _ => taking.flow(pressure),
                };
                if whole > 0.0 { flow / whole } else { 0.0 }
            })
            .collect()
    }
}
