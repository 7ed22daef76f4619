//! How long the pressure map of an engine takes: 60 speeds, 5 temperatures, 3 pumps.

#![allow(missing_docs, clippy::unwrap_used)]

use std::f64::consts::PI;
use std::hint::black_box;

use assembly_core::measure::Sources;
use assembly_core::oil::circuit::example::{five_main_circuit, five_main_layout, standard_pump};
use assembly_core::oil::circuit::{Leaks, Point, PressureMap};
use criterion::{Criterion, criterion_group, criterion_main};

/// Leaves the map where `oil_against_numpy.py` holds its own against it.
fn leave(map: &PressureMap) {
    let of = |value: fn(&Point) -> f64| {
        let row = |row: &Vec<Point>| {
            let all: Vec<String> = row.iter().map(|point| value(point).to_string()).collect();
            format!("[{}]", all.join(","))
        };
        let pump = |rows: &Vec<Vec<Point>>| {
            let all: Vec<String> = rows.iter().map(row).collect();
            format!("[{}]", all.join(","))
        };
        let all: Vec<String> = map.pumps.iter().map(pump).collect();
        format!("[{}]", all.join(","))
    };
    let text = format!(
        "{{\"pressures\":{},\"bands\":{}}}",
        of(|point| point.pressure),
        of(|point| point.deviation)
    );
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../target/oil_circuit_map.json"
    );
    std::fs::write(path, text).unwrap();
}

fn benches(bench: &mut Criterion) {
    let mut sources = Sources::new();
    let layout = five_main_layout(&mut sources);
    let circuit = five_main_circuit(&layout, &mut sources).unwrap();
    let pumps = standard_pump().three();
    let speeds: Vec<f64> = (1..=60)
        .map(|at| f64::from(at) * 110.0 * PI / 30.0)
        .collect();
    let temperatures = [293.15, 333.15, 363.15, 383.15, 403.15];
    leave(&circuit.map(&pumps, &speeds, &temperatures).unwrap());
    bench.bench_function("the map of 60 speeds, 5 temperatures, 3 pumps", |timed| {
        timed.iter(|| {
            black_box(&circuit)
                .map(&pumps, &speeds, &temperatures)
                .unwrap()
        });
    });
    bench.bench_function(
        "the leaks of an engine with their tables of films",
        |timed| {
            timed.iter(|| Leaks::of(black_box(&layout), &mut Sources::new()));
        },
    );
}

criterion_group!(oil_circuit, benches);
criterion_main!(oil_circuit);
