//! How long the pressure map of an engine takes: 60 speeds, 5 temperatures, 3 pumps.

#![allow(missing_docs, clippy::unwrap_used)]

use std::f64::consts::PI;
use std::hint::black_box;

use assembly_core::measure::Sources;
use assembly_core::oil::circuit::Leaks;
use assembly_core::oil::circuit::example::{five_main_circuit, five_main_layout, standard_pump};
use criterion::{Criterion, criterion_group, criterion_main};

fn benches(bench: &mut Criterion) {
    let mut sources = Sources::new();
    let layout = five_main_layout(&mut sources);
    let circuit = five_main_circuit(&layout, &mut sources).unwrap();
    let pumps = standard_pump().three();
    let speeds: Vec<f64> = (1..=60)
        .map(|at| f64::from(at) * 110.0 * PI / 30.0)
        .collect();
    let temperatures = [293.15, 333.15, 363.15, 383.15, 403.15];
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
