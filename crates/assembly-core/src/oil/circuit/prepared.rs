//! What of the leaks stays the same over speed and temperature, worked out once for
//! a whole map: powers and roots of the sizes alone.

use std::f64::consts::PI;

use super::balance::{At, Circuit, Demand, Taking};
use super::eccentricity::FilmTable;
use super::layout::LeakKind;
use super::leak::{LeakingBearing, centrifugal_head, dragged_out, pressure_to_reach_axis};

/// One leak, ready to be asked.
enum Ready<'a> {
    /// A bearing with its film.
    Bearing {
        bearing: &'a LeakingBearing,
        table: &'a FilmTable,
        /// The way out through a crank: from and to this radius; none of a main.
        out: Option<(f64, f64)>,
        /// Its conductance with the journal in the middle.
        centred: f64,
        /// Length of the film that carries.
        land: f64,
        /// The logarithm of what of Sommerfeld's number the sizes alone make.
        of_sizes: f64,
    },
    /// A gap of this conductance.
    Gap(f64),
    /// A nozzle: bore, and the pressure it opens at.
    Nozzle(f64, f64),
}

/// All leaks of a circuit.
pub(super) struct Prepared<'a> {
    circuit: &'a Circuit,
    leaks: Vec<Ready<'a>>,
}

impl<'a> Prepared<'a> {
    pub(super) fn of(circuit: &'a Circuit) -> Self {
        let bearing = |bearing: &'a LeakingBearing, table: &'a FilmTable, out| {
            let land = table.length_over_diameter() * bearing.diameter;
            let lands = (bearing.length / land).round().clamp(1.0, 2.0);
            let area = lands * land * bearing.diameter;
            let stretch = bearing.diameter / bearing.clearance.max(1e-9);
            Ready::Bearing {
                bearing,
                table,
                out,
                centred: bearing.centred(),
                land,
                of_sizes: libm::log(area * stretch * stretch),
            }
        };
        let tables = &circuit.leaks.tables;
        let leaks = circuit.leaks.leaks.iter().map(|leak| match &leak.kind {
            LeakKind::Main(main) => bearing(main, &tables.0, None),
            LeakKind::Rod(rod, way) => bearing(rod, &tables.1, Some(*way)),
            LeakKind::Gap(conductance) => Ready::Gap(*conductance),
            LeakKind::Nozzle(bore, opens) => Ready::Nozzle(*bore, *opens),
        });
        Self {
            circuit,
            leaks: leaks.collect(),
        }
    }

    /// What the leaks take at a speed and a temperature, under loads on a main and
    /// on a rod.
    pub(super) fn demand(&self, at: At, (main_load, rod_load): (f64, f64)) -> Demand {
        let oil = &self.circuit.oil;
        let density = oil.density().at(at.temperature);
        let mut demand = Demand::nothing(oil.dynamic(at.temperature), density, self.leaks.len());
        let turns = at.speed / (2.0 * PI);
        // µ·N by the load: the part of Sommerfeld's number that a row shares.
        let shared = oil.in_film(at.temperature) * turns;
        let by_main = libm::log((shared / main_load.max(1.0)).max(1e-300));
        let by_rod = libm::log((shared / rod_load.max(1.0)).max(1e-300));
        let thin = 1.0 / demand.viscosity;
        for leak in &self.leaks {
            match leak {
                Ready::Gap(conductance) => demand.add(Taking {
                    by_pascal: conductance * thin,
                    ..Taking::default()
                }),
                Ready::Nozzle(bore, opens) => demand.add_nozzle(*bore, *opens),
                Ready::Bearing {
                    bearing,
                    table,
                    out,
                    centred,
                    land,
                    of_sizes,
                } => {
                    let by_load = if out.is_some() { by_rod } else { by_main };
                    let place = table.at_logarithm(by_load + of_sizes);
                    let head = out.map_or(0.0, |(from, to)| {
                        demand.rods_need = pressure_to_reach_axis(density, at.speed, from);
                        centrifugal_head(density, at.speed, from, to)
                    });
                    demand.add(Taking {
                        by_pascal: centred * bearing.gain(&place) * thin,
                        head,
                        // Two lands give half of it back into their groove.
                        dragged: dragged_out(bearing, &place, turns, *land),
                    });
                }
            }
        }
        demand
    }
}
