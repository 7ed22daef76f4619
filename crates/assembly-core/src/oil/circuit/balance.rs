//! Where pump and leaks agree: the pressure at the gallery.
//!
//! Flow of a leak is laminar, so all of them together are one straight line of
//! the pressure but for the nozzles. What the pump pushes, less what the relief
//! sends back at the pump's side of the filter, must be what leaks; the pressure
//! at which it does is searched between nothing and more than any pump makes.

use super::gallery::Gallery;
use super::layout::Leaks;
use super::leak::orifice_flow;
use super::prepared::Prepared;
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
        self.loss_and_slope(flow, viscosity).0
    }

    /// The same, and by how much more for more flow, Pa·s/m³.
    pub(super) fn loss_and_slope(&self, flow: f64, viscosity: f64) -> (f64, f64) {
        let by_flow = self.resistance * viscosity;
        let plain = by_flow * flow.max(0.0);
        if plain <= self.bypass_at {
            (plain, by_flow)
        } else {
            let past = 0.1 * (plain - self.bypass_at);
            (self.bypass_at + past, 0.1 * by_flow)
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
    dragged: f64,
    nozzles: Vec<(f64, f64)>,
    /// The pressure at the mains below which oil does not reach the rods.
    pub(super) rods_need: f64,
}

impl Demand {
    /// Flow into all leaks at a gallery pressure, m³/s.
    #[must_use]
    pub fn flow(&self, pressure: f64) -> f64 {
        self.flow_and_slope(pressure).0
    }

    /// The same, and by how much more for a pascal more.
    pub(super) fn flow_and_slope(&self, pressure: f64) -> (f64, f64) {
        let mut flow = self.slope * pressure + self.at_no_pressure;
        let mut slope = self.slope;
        for (bore, opens) in &self.nozzles {
            let over = pressure - opens;
            if over > 0.0 {
                let one = orifice_flow(*bore, over, self.density);
                flow += one;
                // It goes with the root of the pressure.
                slope += 0.5 * one / over;
            }
        }
        (flow, slope)
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
        Prepared::of(self).demand(at, loads.first().copied().unwrap_or((1.0, 1.0)))
    }

    /// What filter and gallery take of the pressure, Pa.
    #[must_use]
    pub fn losses(&self, demand: &Demand, flow: f64) -> f64 {
        self.losses_and_slope(demand, flow).0
    }

    /// What filter and gallery take, and by how much more for more flow, Pa·s/m³.
    fn losses_and_slope(&self, demand: &Demand, flow: f64) -> (f64, f64) {
        let filter = self.filter.loss_and_slope(flow, demand.viscosity);
        let gallery = self
            .gallery
            .loss_and_slope(flow, demand.viscosity, demand.density);
        (filter.0 + gallery.0, filter.1 + gallery.1)
    }

    /// How pump and leaks stand to each other at a gallery pressure.
    pub(super) fn standing(
        &self,
        pump: &Pump,
        demand: &Demand,
        speed: f64,
        pressure: f64,
    ) -> Standing {
        let (leaking, more_leaking) = demand.flow_and_slope(pressure);
        let leaking = leaking.max(0.0);
        let (losses, more_losses) = self.losses_and_slope(demand, leaking);
        let at_pump = pressure + losses;
        // What goes back at the pump for each pascal there.
        let back = pump.slip / demand.viscosity
            + if at_pump > pump.relief.opens_at {
                pump.relief.passes
            } else {
                0.0
            };
        let by_leak = -1.0 - back * more_losses;
        Standing {
            surplus: pump.flow(speed, at_pump, demand.viscosity)
                - pump.relief.flow(at_pump)
                - leaking,
            by_pressure: more_leaking * by_leak - back,
            by_leak,
            leaking,
            at_pump,
        }
    }

    /// The gallery pressure of this pump, Pa, searched from a guess. Nothing when it
    /// cannot keep up.
    ///
    /// The surplus falls with the pressure everywhere, so that Newton's steps are
    /// kept between a pressure that is too low and one that is too high. A speed's
    /// neighbour is the best guess there is: two or three steps.
    pub(super) fn pressure_under(
        &self,
        pump: &Pump,
        demand: &Demand,
        speed: f64,
        guess: f64,
    ) -> f64 {
        // Twice the relief's pressure and more no pump holds.
        let top = 3.0 * pump.relief.opens_at.max(1e5);
        let (mut low, mut high) = (0.0, top);
        let mut at = guess.clamp(1.0, top);
        for _ in 0..80 {
            let here = self.standing(pump, demand, speed, at);
            if here.surplus > 0.0 {
                low = at;
            } else {
                high = at;
            }
            let newton = at - here.surplus / here.by_pressure;
            let next = if newton > low && newton < high {
                newton
            } else {
                f64::midpoint(low, high)
            };
            let near = (next - at).abs() < NEAR || high - low < NEAR;
            at = next;
            if near {
                break;
            }
        }
        // At an end of the search the end itself is the answer, when it is one.
        let surplus = |pressure: f64| self.standing(pump, demand, speed, pressure).surplus;
        if at < 2.0 && (surplus(0.0).is_nan() || surplus(0.0) <= 0.0) {
            return 0.0;
        }
        if at > top - 2.0 && surplus(top) >= 0.0 {
            return top;
        }
        at
    }
}

/// A step of the search that is shorter ends it, Pa. The next step would be shorter
/// by as much again: Newton's steps square what is left.
const NEAR: f64 = 0.1;

/// How pump and leaks stand to each other at a pressure.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Standing {
    /// By how much more the pump gives than the leaks take, m³/s.
    pub(super) surplus: f64,
    /// By how much that changes for a pascal more in the gallery.
    pub(super) by_pressure: f64,
    /// And for a unit of leak more.
    pub(super) by_leak: f64,
    /// What leaks, m³/s.
    pub(super) leaking: f64,
    /// The pressure at the pump, Pa.
    pub(super) at_pump: f64,
}

impl Standing {
    /// Where pump and leaks agree at this pressure: by how much it changes for a unit
    /// of leak more, Pa·s/m³. Nothing where there is no pressure.
    pub(super) fn pressure_by_leak(&self, pressure: f64) -> f64 {
        if pressure > 0.0 && self.by_pressure < 0.0 {
            -self.by_leak / self.by_pressure
        } else {
            0.0
        }
    }
}

impl Demand {
    /// No leaks yet, with room for some.
    pub(super) fn nothing(viscosity: f64, density: f64, leaks: usize) -> Self {
        Self {
            viscosity,
            density,
            each: Vec::with_capacity(leaks),
            slope: 0.0,
            at_no_pressure: 0.0,
            dragged: 0.0,
            nozzles: Vec::new(),
            rods_need: 0.0,
        }
    }

    pub(super) fn add(&mut self, taking: Taking) {
        self.slope += taking.by_pascal;
        self.at_no_pressure += taking.flow(0.0);
        self.dragged += taking.dragged;
        self.each.push(taking);
    }

    /// One more nozzle: its bore, and the pressure it opens at.
    pub(super) fn add_nozzle(&mut self, bore: f64, opens: f64) {
        self.nozzles.push((bore, opens));
        self.each.push(Taking::default());
    }

    /// What the journals drag out of all bearings together, m³/s.
    #[must_use]
    pub const fn dragged(&self) -> f64 {
        self.dragged
    }
}
