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
        self.losses_and_slope(demand, flow).pressure
    }

    /// What filter and gallery take, and by how much that changes.
    fn losses_and_slope(&self, demand: &Demand, flow: f64) -> Losses {
        let (filter, filter_slope) = self.filter.loss_and_slope(flow, demand.viscosity);
        let (gallery, gallery_slope) =
            self.gallery
                .loss_and_slope(flow, demand.viscosity, demand.density);
        Losses {
            pressure: filter + gallery,
            by_flow: filter_slope + gallery_slope,
            // Through the filter thickness counts like flow. In the gallery flow
            // counts by a power, and thickness by what is left of two.
            by_thickness: filter_slope * flow + 2.0 * gallery - gallery_slope * flow,
        }
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
        let losses = self.losses_and_slope(demand, leaking);
        let at_pump = pressure + losses.pressure;
        // What goes back at the pump for each pascal there.
        let back = pump.slip / demand.viscosity
            + if at_pump > pump.relief.opens_at {
                pump.relief.passes
            } else {
                0.0
            };
        let by_leak = -1.0 - back * losses.by_flow;
        let slipping = pump.slip * at_pump / demand.viscosity;
        Standing {
            surplus: pump.flow(speed, at_pump, demand.viscosity)
                - pump.relief.flow(at_pump)
                - leaking,
            by_pressure: more_leaking * by_leak - back,
            by_leak,
            by_thickness: slipping
                - by_leak * demand.leaking_by_thickness(pressure)
                - back * losses.by_thickness,
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

/// What is lost between pump and gallery.
struct Losses {
    /// Pa.
    pressure: f64,
    /// By how much more for more flow, Pa·s/m³.
    by_flow: f64,
    /// And at the same flow when the oil is thicker by all of itself, Pa.
    by_thickness: f64,
}

/// How pump and leaks stand to each other at a pressure.
#[derive(Clone, Copy, PartialEq, Debug)]
pub(super) struct Standing {
    /// By how much more the pump gives than the leaks take, m³/s.
    pub(super) surplus: f64,
    /// By how much that changes for a pascal more in the gallery.
    pub(super) by_pressure: f64,
    /// And for a unit of leak more.
    pub(super) by_leak: f64,
    /// And when the oil is thicker by all of itself, as far as that goes in a line:
    /// less slips and leaks, and filter and gallery take more.
    by_thickness: f64,
    /// What leaks, m³/s.
    pub(super) leaking: f64,
    /// The pressure at the pump, Pa.
    pub(super) at_pump: f64,
}

impl Standing {
    /// Where pump and leaks agree at this pressure: by how much it changes for a unit
    /// of leak more, Pa·s/m³. Nothing where there is no pressure.
    pub(super) fn pressure_by_leak(&self, pressure: f64) -> f64 {
        self.pressure_by(self.by_leak, pressure)
    }

    /// And when the oil is thicker by all of itself, Pa.
    pub(super) fn pressure_by_thickness(&self, pressure: f64) -> f64 {
        self.pressure_by(self.by_thickness, pressure)
    }

    fn pressure_by(&self, surplus: f64, pressure: f64) -> f64 {
        if pressure > 0.0 && self.by_pressure < 0.0 {
            -surplus / self.by_pressure
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

    /// The part of the flow that shrinks as the oil thickens, m³/s. What is dragged
    /// out is as much of a thick oil as of a thin one, and what a nozzle sprays too.
    fn leaking_by_thickness(&self, pressure: f64) -> f64 {
        self.slope * pressure + self.at_no_pressure - self.dragged
    }

    /// What the journals drag out of all bearings together, m³/s.
    #[must_use]
    pub const fn dragged(&self) -> f64 {
        self.dragged
    }
}

#[cfg(test)]
mod tests {
    use std::f64::consts::PI;

    use super::*;
    use crate::measure::Sources;
    use crate::oil::circuit::example::{five_main_circuit, five_main_layout, standard_pump};

    impl Demand {
        /// The same with an oil that is thicker by a part of itself, each journal
        /// where it was.
        fn thicker(&self, by: f64) -> Self {
            let times = 1.0 + by;
            Self {
                viscosity: self.viscosity * times,
                slope: self.slope / times,
                at_no_pressure: (self.at_no_pressure - self.dragged) / times + self.dragged,
                ..self.clone()
            }
        }
    }

    #[test]
    fn what_a_thicker_oil_does_is_the_difference_of_two_below_the_relief_and_above() {
        let mut sources = Sources::new();
        let layout = five_main_layout(&mut sources);
        let circuit = five_main_circuit(&layout, &mut sources).unwrap();
        let pump = standard_pump();
        let mut open = Vec::new();
        for (turns, celsius) in [
            (700.0, 110.0),
            (1500.0, 90.0),
            (4000.0, 90.0),
            (6000.0, 100.0),
            (6000.0, 40.0),
        ] {
            let at = At {
                speed: turns * PI / 30.0,
                temperature: celsius + 273.15,
            };
            let demand = circuit.demand(at);
            let solved = |demand: &Demand| {
                let pressure = circuit.pressure_under(&pump, demand, at.speed, 2e5);
                let standing = circuit.standing(&pump, demand, at.speed, pressure);
                // One step more than the search's own accuracy asks for.
                pressure - standing.surplus / standing.by_pressure
            };
            let by = 1e-3;
            let difference =
                (solved(&demand.thicker(by)) - solved(&demand.thicker(-by))) / (2.0 * by);
            let pressure = solved(&demand);
            let standing = circuit.standing(&pump, &demand, at.speed, pressure);
            let slope = standing.pressure_by_thickness(pressure);
            open.push(standing.at_pump > pump.relief.opens_at);
            assert!(
                (slope - difference).abs() < 1e-3 * pressure,
                "{turns} {celsius}: {slope} {difference} of {pressure}"
            );
        }
        assert!(open.contains(&true) && open.contains(&false));
    }
}
