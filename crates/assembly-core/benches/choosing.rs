//! How long the choosing takes: half-shells of seven mains, eight pistons.

#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used)]

use assembly_core::choose::parts_to_places::{Places, match_parts};
use assembly_core::choose::shells::{BenchHalf, Main, OddHalf, Position, choose_shells};
use assembly_core::measure::Measured;
use assembly_core::moves::shells::Half;
use assembly_core::quantity::Si;
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use uom::si::f64::Length;

fn metres(size: f64) -> Measured<Length> {
    Measured::exact(Length::from_si(size))
}

/// Numbers that look thrown but are the same every time.
fn scatter(seed: u64) -> impl FnMut(f64) -> f64 {
    let mut state = seed;
    move |width| {
        state = state
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        width * ((state >> 33) as f64 / f64::from(1_u32 << 31) - 0.5)
    }
}

fn seven_mains(seed: u64) -> Vec<Main> {
    let mut thrown = scatter(seed);
    (0..7)
        .map(|_| Main {
            housing: metres(0.066_67 + thrown(20e-6)),
            journal: metres(0.062_6 + thrown(20e-6)),
            target: Length::from_si(55e-6),
        })
        .collect()
}

/// Standard halves and halves one step under, each a little off its size; with
/// a scatter of nothing they are of few kinds.
fn bench_of(halves: usize, seed: u64, lots: f64) -> Vec<BenchHalf> {
    let mut thrown = scatter(seed);
    (0..halves)
        .map(|place| {
            let steps = i32::from(place % 4 >= 2);
            BenchHalf {
                half: Half::of_steps(steps),
                wall: metres(0.002 + 12.7e-6 * f64::from(steps) + thrown(lots)),
                position: if place % 2 == 0 {
                    Position::Upper
                } else {
                    Position::Lower
                },
            }
        })
        .collect()
}

fn choosing(criterion: &mut Criterion) {
    let mut group = criterion.benchmark_group("half-shells of seven mains");
    for (name, halves, lots) in [
        ("28 halves, all different", 28, 6e-6),
        ("28 halves of four kinds", 28, 0.0),
        ("14 halves, all different", 14, 6e-6),
    ] {
        let cases: Vec<_> = (0..8)
            .map(|seed| (seven_mains(seed), bench_of(halves, seed + 100, lots)))
            .collect();
        let mut turn = cases.iter().cycle();
        group.bench_function(name, |bencher| {
            bencher.iter(|| {
                let (mains, bench) = turn.next().unwrap();
                choose_shells(black_box(mains), black_box(bench), OddHalf::OneSide)
            });
        });
    }
    group.finish();

    let mut thrown = scatter(7);
    let bores: Vec<_> = (0..8).map(|_| metres(0.1016 + thrown(20e-6))).collect();
    let pistons: Vec<_> = (0..8).map(|_| metres(0.101_55 + thrown(20e-6))).collect();
    criterion.bench_function("eight pistons to eight bores", |bencher| {
        bencher.iter(|| {
            let target = Length::from_si(50e-6);
            match_parts(
                black_box(&bores),
                black_box(&pistons),
                Places::Holes,
                target,
            )
        });
    });
}

criterion_group!(benches, choosing);
criterion_main!(benches);
