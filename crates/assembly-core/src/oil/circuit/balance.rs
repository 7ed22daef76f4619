//! Where pump and leaks agree: the pressure at the gallery.
//!
//! Flow of a leak is laminar, so all of them together are one straight line of
//! the pressure but for the nozzles. What the pump pushes, less what the relief
//! sends back at the pump's side of the filter, must be what leaks; the pressure
//! at which it does is searched between nothing and more than any pump makes.

use super::gallery::Gallery;
use super::layout::{LeakKind, Leaks};
use super::leak::{centrifugal_head, dragged_out, orifice_flow, pressure_to_reach_axis};
use super::pump::Pump;
use crate::oil::film::load::{Cylinder, MAIN_BY_ROD};
use crate::oil::viscosity::Lubricant;

/// The filter between pump and gallery.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct Filter {
    /// Loss by viscosity and flow, 1/m³.
    pub resistance: f64,
    /// It is gone round when it takes more than this, Pa.
    pub bypass_at: f64,
}

impl Filter {
    /// A clean filter that takes this much, Pa, of a flow (m³/s) of a viscosity.
    #[must_use]
    pub fn taking(loss: f64, flow: f64, viscosity: f64, bypass_at: f64) -> Self {
        Self {
            resistance: loss / (flow * viscosity),
            bypass_at,
        }
    }

    /// What it takes, Pa. Past the bypass's opening a tenth of the rest.
    #[must_use]
    pub fn loss(&self, flow: f64, viscosity: f64) -> f64 {
        let plain = self.resistance * viscosity * flow.max(0.0);
        if plain <= self.bypass_at {
            plain
        } else {
            self.bypass_at + 0.1 * (plain - self.bypass_at)
        }
    }
}

/// What presses on the bearings.
#[derive(Clone, Copy, PartialEq, Debug)]
pub enum BearingLoads {
    /// From the engine's description.
    Cylinder(Cylinder),
    /// Mean loads on a main and on a rod, N, whatever the speed.
    Steady(f64, f64),
}

/// An engine's oil from the pump on.
#[derive(Clone, PartialEq, Debug)]
pub struct Circuit {
    /// What runs in it.
    pub oil: Lubricant,
    /// One standard deviation of its viscosity, as a part.
    pub viscosity_doubt: f64,
    /// Filter.
    pub filter: Filter,
    /// Gallery from filter to the gauge.
    pub gallery: Gallery,
    /// Every leak.
    pub leaks: Leaks,
    /// Loads on the bearings.
    pub loads: BearingLoads,
}

/// Speed and oil temperature: rad/s and kelvin.
#[derive(Clone, Copy, PartialEq, Debug)]
pub struct At {
    /// Of the crank.
    pub speed: f64,
    /// Of the oil.
    pub temperature: f64,
}

/// What a leak takes at one speed and temperature.
#[derive(Clone, Copy, PartialEq, Debug, Default)]
pub(super) struct Taking {
    /// Flow for a pascal, m³/s.
    pub(super) by_pascal: f64,
    /// What the crank adds to the pressure, Pa.
    pub(super) head: f64,
    /// What is dragged out whatever the pressure, m³/s.
    pub(super) dragged: f64,
}

impl Taking {
    /// What the pressure drives through it, m³/s.
    pub(super) fn driven(&self, pressure: f64) -> f64 {
        self.by_pascal * (pressure + self.head)
    }

    /// All that goes through it, m³/s.
    pub(super) fn flow(&self, pressure: f64) -> f64 {
        self.driven(pressure) + self.dragged
    }

    /// By how much its flow changes when its clearance grows by all of itself:
    /// what is driven goes with the cube, what is dragged out with the clearance.
    pub(super) fn by_clearance(&self, pressure: f64) -> f64 {
        3.0 * self.driven(pressure) + self.dragged
    }
}

/// All leaks at one speed and temperature, as what the search needs of them.
#[derive(Clone, PartialEq, Debug)]
pub struct Demand {
    pub(super) viscosity: f64,
    pub(super) density: f64,
    /// What each leak takes.
    pub(super) each: Vec<Taking>,
    slope: f64,
    at_no_pressure: f64,
    nozzles: Vec<(f64, f64)>,
    /// The pressure at the mains below which oil does not reach the rods.
    pub(super) rods_need: f64,
}

impl Demand {
    /// Flow into all leaks at a gallery pressure, m³/s.
    #[must_use]
    pub fn flow(&self, pressure: f64) -> f64 {
        let nozzles: f64 = self
            .nozzles
            .iter()
            .map(|(bore, opens)| orifice_flow(*bore, pressure - opens, self.density))
            .sum();
        self.slope * pressure + self.at_no_pressure + nozzles
    }

    /// Conductance of all leaks together, m³: flow by viscosity over pressure.
    #[must_use]
    pub fn conductance(&self) -> f64 {
        self.slope * self.viscosity
    }
}

impl Circuit {
    /// The mean loads on main and rod at each of some speeds.
    #[must_use]
    pub fn loads_over(&self, speeds: &[f64]) -> Vec<(f64, f64)> {
        match &self.loads {
            BearingLoads::Steady(main, rod) => vec![(*main, *rod); speeds.len()],
            BearingLoads::Cylinder(cylinder) => cylinder
                .mean_rod_loads(speeds)
                .into_iter()
                .map(|rod| (MAIN_BY_ROD * rod, rod))
                .collect(),
        }
    }

    /// What the leaks take at a speed and a temperature.
    #[must_use]
    pub fn demand(&self, at: At) -> Demand {
        let loads = self.loads_over(&[at.speed]);
        self.demand_under(at, loads.first().copied().unwrap_or((1.0, 1.0)))
    }

    pub(super) fn demand_under(&self, at: At, (main_load, rod_load): (f64, f64)) -> Demand {
        let viscosity = self.oil.dynamic(at.temperature);
        let in_film = self.oil.in_film(at.temperature);
        let density = self.oil.density().at(at.temperature);
        let mut demand = Demand {
            viscosity,
            density,
            each: Vec::with_capacity(self.leaks.leaks.len()),
            slope: 0.0,
            at_no_pressure: 0.0,
            nozzles: Vec::new(),
            rods_need: 0.0,
        };
        let turns = at.speed / (2.0 * std::f64::consts::PI);
        for leak in &self.leaks.leaks {
            let (bearing, load, table, head) = match &leak.kind {
                LeakKind::Main(bearing) => (bearing, main_load, &self.leaks.tables.0, 0.0),
                LeakKind::Rod(bearing, (from, to)) => {
                    demand.rods_need = pressure_to_reach_axis(density, at.speed, *from);
                    let head = centrifugal_head(density, at.speed, *from, *to);
                    (bearing, rod_load, &self.leaks.tables.1, head)
                }
                LeakKind::Gap(conductance) => {
                    demand.add(Taking {
                        by_pascal: conductance / viscosity,
                        ..Taking::default()
                    });
                    continue;
                }
                LeakKind::Nozzle(bore, opens) => {
                    demand.nozzles.push((*bore, *opens));
                    demand.each.push(Taking::default());
                    continue;
                }
            };
            let land = table.length_over_diameter() * bearing.diameter;
            let lands = (bearing.length / land).round().clamp(1.0, 2.0);
            let area = lands * land * bearing.diameter;
            let stretch = bearing.diameter / bearing.clearance.max(1e-9);
            let place = table.at(in_film * turns * area / load.max(1.0) * stretch * stretch);
            let conductance = bearing.centred() * bearing.gain(&place);
            demand.add(Taking {
                by_pascal: conductance / viscosity,
                head,
                // Two lands give half of it back into their groove.
                dragged: dragged_out(bearing, &place, turns, land),
            });
        }
        demand
    }

    /// By how much the flow of this pump is greater than what the leaks take when
    /// the gallery stands at this pressure and so much more leaks besides.
    pub(super) fn surplus(
        &self,
        pump: &Pump,
        demand: &Demand,
        speed: f64,
        pressure: f64,
        besides: f64,
    ) -> f64 {
        let leaking = (demand.flow(pressure) + besides).max(0.0);
        let at_pump = pressure + self.losses(demand, leaking);
        pump.flow(speed, at_pump, demand.viscosity) - pump.relief.flow(at_pump) - leaking
    }

    /// What filter and gallery take of the pressure, Pa.
    #[must_use]
    pub fn losses(&self, demand: &Demand, flow: f64) -> f64 {
        self.filter.loss(flow, demand.viscosity)
            + self.gallery.loss(flow, demand.viscosity, demand.density)
    }

    /// The gallery pressure of this pump, Pa. Nothing when it cannot keep up.
    pub(super) fn pressure_under(&self, pump: &Pump, demand: &Demand, speed: f64) -> f64 {
        let surplus = |pressure: f64| self.surplus(pump, demand, speed, pressure, 0.0);
        let mut low = (0.0, surplus(0.0));
        if low.1.is_nan() || low.1 <= 0.0 {
            return 0.0;
        }
        // Twice the relief's pressure and more no pump holds.
        let top = 3.0 * pump.relief.opens_at.max(1e5);
        let mut high = (top, surplus(top));
        if high.1 >= 0.0 {
            return top;
        }
        let mut last_side = 0;
        for _ in 0..50 {
            let at = (low.0 * high.1 - high.0 * low.1) / (high.1 - low.1);
            let here = surplus(at);
            if here.abs() < 1e-12 || high.0 - low.0 < 1.0 {
                return at;
            }
            if here > 0.0 {
                low = (at, here);
                if last_side == 1 {
                    high.1 *= 0.5;
                }
                last_side = 1;
            } else {
                high = (at, here);
                if last_side == -1 {
                    low.1 *= 0.5;
                }
                last_side = -1;
            }
        }
        f64::midpoint(low.0, high.0)
    }
}

impl Demand {
    fn add(&mut self, taking: Taking) {
        self.slope += taking.by_pascal;
        self.at_no_pressure += taking.flow(0.0);
        self.each.push(taking);
    }

    /// What the journals drag out of all bearings together, m³/s.
    #[must_use]
    pub fn dragged(&self) -> f64 {
        self.each.iter().map(|one| one.dragged).sum()
    }
}
