//! The circuit as a whole.

use std::f64::consts::PI;

use super::example::{five_main_circuit, five_main_layout, standard_pump};
use super::*;
use crate::measure::{Estimate, Origin, Sources};

const PSI: f64 = 6894.757;
const THOU: f64 = 25.4e-6;

fn engine() -> Circuit {
    let mut sources = Sources::new();
    let layout = five_main_layout(&mut sources);
    five_main_circuit(&layout, &mut sources).unwrap()
}

fn rpm(turns: f64) -> f64 {
    turns * PI / 30.0
}

fn at(turns: f64, celsius: f64) -> At {
    At {
        speed: rpm(turns),
        temperature: celsius + 273.15,
    }
}

fn pressure(circuit: &Circuit, pump: &Pump, at: At) -> f64 {
    let cause = Sources::new().fresh("oil", Origin::Stated);
    circuit.pressure(pump, at, cause).unwrap().value()
}

#[test]
fn what_the_pump_pushes_is_what_leaks() {
    let (circuit, pump) = (engine(), standard_pump());
    for (turns, celsius) in [
        (700.0, 100.0),
        (2500.0, 90.0),
        (6000.0, 110.0),
        (1500.0, 20.0),
    ] {
        let at = at(turns, celsius);
        let got = pressure(&circuit, &pump, at);
        let demand = circuit.demand(at);
        let leaking = demand.flow(got);
        let at_pump = got + circuit.losses(&demand, leaking);
        let pushed = pump.flow(at.speed, at_pump, demand.viscosity) - pump.relief.flow(at_pump);
        assert!((pushed / leaking - 1.0).abs() < 1e-3, "{turns} {celsius}");
        let shares = circuit.shares(at, got);
        let sum: f64 = shares.iter().map(|one| one.flow).sum();
        assert!((sum / leaking - 1.0).abs() < 1e-9);
        assert!((shares.iter().map(|one| one.part).sum::<f64>() - 1.0).abs() < 1e-9);
    }
}

// Common practice: below the relief p goes with n·µ/Σc³; 2.0 to 2.5 thou all
// round makes half the pressure at hot idle.
#[test]
fn looser_all_round_halves_the_idle_pressure() {
    // A relief that never opens, so that nothing but the leaks is seen.
    let pump = Pump {
        slip: 0.0,
        relief: Relief::usual(1e8, 5e-4),
        ..standard_pump()
    };
    let idle = |thou: f64| {
        let mut sources = Sources::new();
        let mut layout = five_main_layout(&mut sources);
        for row in [&mut layout.mains, &mut layout.rods] {
            for one in &mut row.clearances {
                *one = Some(Estimate::exact(thou * THOU));
            }
        }
        (layout.cam_bearings, layout.lifters, layout.rockers) = (0, 0, 0);
        let circuit = five_main_circuit(&layout, &mut sources).unwrap();
        pressure(&circuit, &pump, at(700.0, 100.0))
    };
    let ratio = idle(2.5) / idle(2.0);
    assert!((0.4..0.6).contains(&ratio), "{ratio}");
}

#[test]
fn the_relief_caps_and_the_three_pumps_part_where_they_should() {
    let circuit = engine();
    let pumps = standard_pump().three();
    let speeds: Vec<f64> = (1..=12).map(|step| rpm(500.0 * f64::from(step))).collect();
    let map = circuit.map(&pumps, &speeds, &[293.15, 373.15]).unwrap();
    let [standard, volume, stiff] = [&map.pumps[0], &map.pumps[1], &map.pumps[2]];
    for (one, more) in standard[1].iter().zip(&volume[1]) {
        assert!(more.pressure >= one.pressure);
    }
    // Below the relief a stiffer spring changes nothing, above it raises the cap.
    assert!((standard[1][0].pressure / stiff[1][0].pressure - 1.0).abs() < 1e-9);
    let (cold, cold_stiff) = (standard[0][11], stiff[0][11]);
    assert!(cold.relief_open && cold_stiff.pressure > 1.1 * cold.pressure);
    assert!(cold.pressure < 1.35 * 55.0 * PSI, "{cold:?}");
    // Hot and slow lies below cold and fast, and each knows how sure it is.
    assert!(standard[1][0].pressure < cold.pressure);
    for row in standard {
        for point in row {
            assert!(
                point.deviation > 0.0 && point.deviation < point.pressure,
                "{point:?}"
            );
        }
    }
}

// Whatever the search begins with, and on both sides of relief and bypass, the
// pressure is where pump and leaks agree; and its slopes are those of differences.
#[test]
fn every_guess_finds_the_same_pressure_and_the_slopes_are_differences() {
    let mut sources = Sources::new();
    let mut layout = five_main_layout(&mut sources);
    layout.squirters = (8, 0.0012);
    let circuit = five_main_circuit(&layout, &mut sources).unwrap();
    for pump in standard_pump().three() {
        for (turns, celsius) in [
            (300.0, 120.0),
            (700.0, 100.0),
            (2200.0, 100.0),
            (6500.0, 20.0),
            (6500.0, 130.0),
        ] {
            let at = at(turns, celsius);
            let demand = circuit.demand(at);
            let found: Vec<f64> = [0.0, 1e4, 2e5, 9e5, 1e9]
                .iter()
                .map(|guess| circuit.pressure_under(&pump, &demand, at.speed, *guess))
                .collect();
            let first = circuit.standing(&pump, &demand, at.speed, found[0]);
            assert!(
                first.surplus.abs() < 1e-9 * first.leaking.max(1e-6),
                "{first:?}"
            );
            for one in &found {
                assert!(
                    (one - found[0]).abs() < 0.01,
                    "{turns} {celsius}: {found:?}"
                );
            }
            let step = 1.0;
            let surplus =
                |pressure: f64| circuit.standing(&pump, &demand, at.speed, pressure).surplus;
            let by_pressure = (surplus(found[0] + step) - surplus(found[0] - step)) / (2.0 * step);
            assert!(
                (first.by_pressure / by_pressure - 1.0).abs() < 1e-3,
                "{turns} {celsius}: {} {by_pressure}",
                first.by_pressure
            );
        }
    }
}

// By how much the pressure falls when a clearance grows, by doing it.
#[test]
fn the_slope_by_clearance_is_what_a_looser_bearing_does() {
    let (circuit, pump) = (engine(), standard_pump());
    for turns in [700.0, 5000.0] {
        let at = at(turns, 100.0);
        let slopes = circuit.pressure_and_slopes(&pump, at).unwrap();
        let main_3 = circuit
            .leaks
            .leaks
            .iter()
            .position(|leak| leak.name == "main 3")
            .unwrap();
        let by = 0.01 * THOU;
        let changed = |by: f64| {
            let looser = Circuit {
                leaks: circuit.leaks.clone().with_looser("main 3", by),
                ..circuit.clone()
            };
            pressure(&looser, &pump, at)
        };
        let slope = (changed(by) - changed(-by)) / (2.0 * by);
        // The film's own change of place is left out of the slope: a few parts in a
        // hundred.
        assert!(
            (slopes.by_clearance[main_3] / slope - 1.0).abs() < 0.25,
            "{turns}: {} {slope}",
            slopes.by_clearance[main_3]
        );
    }
}

#[test]
fn a_pump_that_cannot_keep_up_makes_no_pressure() {
    let circuit = engine();
    let weak = Pump {
        displacement: 1e-9,
        ..standard_pump()
    };
    assert_eq!(pressure(&circuit, &weak, at(1000.0, 100.0)), 0.0);
}

#[test]
fn the_map_and_the_single_pressure_have_one_error() {
    let (circuit, pump) = (engine(), standard_pump());
    let at = at(1500.0, 95.0);
    let map = circuit
        .map(std::slice::from_ref(&pump), &[at.speed], &[at.temperature])
        .unwrap();
    let point = map.pumps[0][0][0];
    // The oil's cause must be none of the clearances': take it out of a fresh list.
    let mut sources = Sources::new();
    let layout = five_main_layout(&mut sources);
    let circuit_of = five_main_circuit(&layout, &mut sources).unwrap();
    let oil = sources.fresh("oil", Origin::Stated);
    let single = circuit_of.pressure(&pump, at, oil).unwrap();
    assert!((single.value() / point.pressure - 1.0).abs() < 1e-9);
    assert!((single.deviation() / point.deviation - 1.0).abs() < 1e-6);
}

#[test]
fn a_main_a_thou_looser_takes_the_most_and_costs_pressure() {
    let (circuit, pump) = (engine(), standard_pump());
    let at = at(800.0, 100.0);
    let before = pressure(&circuit, &pump, at);
    let looser = Circuit {
        leaks: circuit.leaks.clone().with_looser("main 3", THOU),
        ..circuit
    };
    let after = pressure(&looser, &pump, at);
    assert!(after < 0.97 * before, "{before} {after}");
    assert_eq!(looser.shares(at, after)[0].name, "main 3");
}

#[test]
fn unmeasured_leaks_are_there_and_marked() {
    let mut sources = Sources::new();
    let mut layout = five_main_layout(&mut sources);
    layout.mains.clearances[2] = None;
    layout.squirters = (4, 0.0015);
    let circuit = five_main_circuit(&layout, &mut sources).unwrap();
    let shares = circuit.shares(at(3000.0, 100.0), 3e5);
    let known = |name: &str| shares.iter().find(|one| one.name == name).unwrap();
    assert_eq!(known("main 3").known, Known::Estimated);
    assert_eq!(known("main 2").known, Known::Measured);
    assert_eq!(known("lifters").known, Known::Estimated);
    assert!(known("squirter 1").flow > 0.0);
    // Under its opening a squirter is shut.
    let shut = circuit.shares(at(800.0, 100.0), 1e5);
    assert!(
        shut.iter()
            .filter(|one| one.name.starts_with("squirter"))
            .all(|one| one.flow == 0.0)
    );
}

#[test]
fn what_cannot_be_is_named() {
    let (circuit, pump) = (engine(), standard_pump());
    assert_eq!(circuit.check(&[]), Err(CircuitError::NoPump));
    let none = Pump {
        displacement: 0.0,
        ..pump.clone()
    };
    assert_eq!(circuit.check(&[none]), Err(CircuitError::NoPump));
    let weak = Pump {
        relief: Relief::usual(5.0 * PSI, 5e-4),
        ..pump.clone()
    };
    assert!(matches!(
        circuit.check(&[weak]),
        Err(CircuitError::ReliefBelowIdle { .. })
    ));
    let zero = Circuit {
        leaks: circuit.leaks.clone().with_looser("rod 4", -1.0),
        ..circuit.clone()
    };
    let error = zero.check(std::slice::from_ref(&pump)).unwrap_err();
    assert!(error.to_string().starts_with("rod 4"));
    assert!(
        circuit
            .map(std::slice::from_ref(&pump), &[f64::NAN], &[373.15])
            .is_err()
    );
    assert!(circuit.map(&[pump], &[100.0], &[2000.0]).is_err());
}

// The figure is that of the film, which is checked against Raimondi and Boyd; here
// that it is taken along: once for each turn, whatever the pressure.
#[test]
fn a_turning_journal_drags_oil_out_whatever_the_pressure() {
    let circuit = engine();
    let demand_at = |turns: f64| circuit.demand(at(turns, 100.0));
    let (slow, fast) = (demand_at(1000.0), demand_at(4000.0));
    assert!(slow.dragged() > 0.0 && fast.dragged() > 3.0 * slow.dragged());
    // Without any pressure it is all that leaves, but for what the crank pushes.
    let heads: f64 = slow.each.iter().map(|one| one.by_pascal * one.head).sum();
    assert!((slow.flow(0.0) - heads - slow.dragged()).abs() < 1e-15);
    // It takes some of the pump's oil, and not most of it.
    let pump = standard_pump();
    for (turns, demand) in [(1000.0, &slow), (4000.0, &fast)] {
        let pushed = pump.flow(rpm(turns), 0.0, demand.viscosity);
        let part = demand.dragged() / pushed;
        assert!((0.005..0.30).contains(&part), "{turns}: {part}");
    }
    // Every bearing drags, nothing else does.
    let dragging = slow.each.iter().filter(|one| one.dragged > 0.0).count();
    let bearings = circuit.leaks.leaks.iter();
    let bearings = bearings.filter(|one| matches!(one.kind, LeakKind::Main(_) | LeakKind::Rod(..)));
    assert_eq!(dragging, bearings.count());
}

#[test]
fn what_is_dragged_out_is_the_films_own_side_flow() {
    use super::leak::{Entry, LeakingBearing, dragged_out};
    let bearing = LeakingBearing {
        diameter: 0.06,
        length: 0.021,
        clearance: 60e-6,
        entry: Entry::HalfGroove(0.004),
    };
    // q·R·c·N·L: 3 × 30 mm × 30 µm × 50 a second × 21 mm.
    let place = super::eccentricity::Place::at(0.6, 0.9).dragging(3.0);
    let flow = dragged_out(&bearing, &place, 50.0, 0.021);
    assert!(
        (flow - 3.0 * 0.03 * 30e-6 * 50.0 * 0.021).abs() < 1e-15,
        "{flow}"
    );
}
