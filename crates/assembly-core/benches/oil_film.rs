//! How long the film of a bearing takes, balanced with load and heat.

#![allow(missing_docs, clippy::unwrap_used)]

use std::hint::black_box;

use assembly_core::oil::film::{Bearing, Boundary, Care, Duty, Feed, film, film_at, run_bearing};
use assembly_core::oil::viscosity::Lubricant;
use criterion::{Criterion, criterion_group, criterion_main};

fn benches(bench: &mut Criterion) {
    for (proportion, eccentricity) in [(0.38, 0.6), (0.38, 0.95), (1.0, 0.8)] {
        let name = format!("a film at a given eccentricity, L/D {proportion}, {eccentricity}");
        bench.bench_function(&name, |timed| {
            timed
                .iter(|| film(black_box(proportion), eccentricity, Boundary::FedAtWidest).unwrap());
        });
    }
    bench.bench_function("a film at a given load", |timed| {
        timed.iter(|| film_at(black_box(0.38), 0.12).unwrap());
    });
    let oil = Lubricant::of_sheet(70.0, 10.5).unwrap();
    let bearing = Bearing {
        diameter: 0.0533,
        land: 0.0203,
        clearance: 5.6e-5,
        feed: Feed::Hole,
    };
    let duty = Duty {
        load: 8000.0,
        speed: 314.0,
        oil_in: 363.15,
    };
    bench.bench_function("a film at a given load, balanced with its heat", |timed| {
        timed.iter(|| run_bearing(black_box(&bearing), &duty, &oil, Care::Fine).unwrap());
    });
}

criterion_group!(oil_film, benches);
criterion_main!(oil_film);
