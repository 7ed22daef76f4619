//! How long it takes to work out and judge everything that is measured on a vee
//! eight: some 500 readings, each with its tool's causes of error.

#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used)]

use assembly_core::describe::{Calculation, Given, calculation};
use assembly_core::measure::{Assessment, DangerousSide, Estimate, Sources, Window};
use assembly_core::quantity::Si;
use assembly_core::tool::{SetOn, Setting, Tool, instrument};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use uom::si::f64::Length;

/// One fit with its readings as they were typed: input, tool, sizes.
struct Fit {
    calculation: &'static Calculation,
    readings: Vec<(&'static str, &'static str, Vec<f64>)>,
    choices: Vec<(&'static str, f64)>,
    /// The outputs that are judged: the least and the greatest.
    judged: (&'static str, &'static str),
    window: Window,
}

const MICROMETER: &str = "outside-micrometer-tenths";
const GAUGE: &str = "bore-gauge-tenths";
const FEELER: &str = "feeler-blades";
const DEPTH: &str = "depth-micrometer";

/// Numbers that look thrown but are the same every time.
fn scatter() -> impl FnMut(f64, usize) -> Vec<f64> {
    let mut state = 7_u64;
    move |size, count| {
        (0..count)
            .map(|_| {
                state = state
                    .wrapping_mul(6_364_136_223_846_793_005)
                    .wrapping_add(1_442_695_040_888_963_407);
                size + 8e-6 * ((state >> 33) as f64 / f64::from(1_u32 << 31) - 0.5)
            })
            .collect()
    }
}

fn window(low: f64, high: f64) -> Window {
    Window::new(Some(low), Some(high)).unwrap()
}

fn fit(
    id: &str,
    readings: Vec<(&'static str, &'static str, Vec<f64>)>,
    judged: (&'static str, &'static str),
    window: Window,
) -> Fit {
    Fit {
        calculation: calculation(id).unwrap(),
        readings,
        choices: Vec::new(),
        judged,
        window,
    }
}

/// A bearing: four readings of its housing straight and four slanted, its
/// shells at two stations, its journal at two stations.
fn bearing(thrown: &mut impl FnMut(f64, usize) -> Vec<f64>, journal: f64) -> [Fit; 2] {
    let (housing, bore) = (journal + 0.004, journal + 50e-6);
    [
        fit(
            "housing-bore",
            vec![
                ("vertical", GAUGE, thrown(housing, 2)),
                ("slanted", GAUGE, thrown(housing, 4)),
            ],
            ("least", "greatest"),
            window(housing - 1e-5, housing + 1e-5),
        ),
        fit(
            "running-clearance",
            vec![
                ("bore", GAUGE, thrown(bore, 1)),
                ("bore-2", GAUGE, thrown(bore, 1)),
                ("bore-near-joint", GAUGE, thrown(bore + 8e-6, 4)),
                ("journal", MICROMETER, thrown(journal, 2)),
                ("journal-2", MICROMETER, thrown(journal, 2)),
            ],
            ("least", "greatest"),
            window(38e-6, 66e-6),
        ),
    ]
}

fn cylinder(thrown: &mut impl FnMut(f64, usize) -> Vec<f64>) -> Vec<Fit> {
    let bore = 0.1016;
    let mut shape = fit(
        "bore-shape",
        vec![
            ("thrust", GAUGE, thrown(bore, 3)),
            ("axial", GAUGE, thrown(bore, 3)),
        ],
        ("taper", "taper"),
        Window::new(None, Some(13e-6)).unwrap(),
    );
    shape.choices = vec![("state", 0.0), ("plate", 0.0)];
    let mut skirt = fit(
        "piston-to-wall",
        vec![
            ("bore", GAUGE, thrown(bore, 3)),
            ("piston", MICROMETER, thrown(bore - 45e-6, 1)),
        ],
        ("clearance", "clearance"),
        window(25e-6, 65e-6),
    );
    skirt.choices = vec![("kind", 0.0)];
    let mut fits = vec![shape, skirt];
    for _ in 0..4 {
        let mut gap = fit(
            "ring-gap-rule",
            vec![
                ("bore", GAUGE, thrown(bore, 1)),
                ("measured", FEELER, thrown(0.4e-3, 1)),
            ],
            ("to-file", "to-file"),
            Window::new(None, Some(0.0)).unwrap(),
        );
        gap.choices = vec![("factor", 0.004), ("condition", 0.0)];
        fits.push(gap);
    }
    for _ in 0..2 {
        let mut stem = fit(
            "stem-in-guide",
            vec![
                ("guide", "small-hole-gauge", thrown(0.008_75, 6)),
                ("stem", MICROMETER, thrown(0.008_70, 3)),
            ],
            ("least", "greatest"),
            window(20e-6, 80e-6),
        );
        stem.choices = vec![("valve", 0.0)];
        fits.push(stem);
    }
    fits
}

fn engine() -> Vec<Fit> {
    let mut thrown = scatter();
    let mut fits = Vec::new();
    for _ in 0..5 {
        fits.extend(bearing(&mut thrown, 0.0635));
    }
    for _ in 0..8 {
        fits.extend(bearing(&mut thrown, 0.0533));
        fits.extend(cylinder(&mut thrown));
    }
    for _ in 0..2 {
        fits.push(fit(
            "valve-tip-heights",
            vec![("heights", DEPTH, thrown(0.046, 8))],
            ("spread", "spread"),
            Window::new(None, Some(0.3e-3)).unwrap(),
        ));
    }
    fits
}

/// Works out and judges everything; how many verdicts came out.
fn assessed(fits: &[Fit]) -> usize {
    let mut sources = Sources::new();
    let tools: Vec<Tool> = [MICROMETER, GAUGE, FEELER, DEPTH, "small-hole-gauge"]
        .into_iter()
        .map(|id| Tool::from(instrument(id).unwrap()))
        .collect();
    let micrometer = tools.first().unwrap();
    let today = Setting::on_standard("today");
    let mut verdicts = 0;
    for fit in fits {
        let mut given = Given::new();
        for (input, tool, sizes) in &fit.readings {
            let tool = tools
                .iter()
                .find(|one| one.instrument().id == *tool)
                .unwrap();
            let setting = if tool.instrument().id == GAUGE {
                Setting {
                    key: "zeroed",
                    on: SetOn::Tool(micrometer, &today),
                }
            } else {
                today
            };
            for size in sizes {
                let read = tool.reading::<Length>(&mut sources, &setting, *size, 1e-6);
                debug_assert!(read.value().to_si() > 0.0);
                given.push(input, read.into_estimate());
            }
        }
        for (input, value) in &fit.choices {
            given.push(input, Estimate::exact(*value));
        }
        let answer = fit.calculation.answer(&given).expect(fit.calculation.id);
        let judged = (
            answer.get(fit.judged.0).expect(fit.judged.0),
            answer.get(fit.judged.1).expect(fit.judged.1),
        );
        black_box(Assessment::judged(
            judged,
            &fit.window,
            DangerousSide::TooLittle,
            &sources,
        ));
        verdicts += 1;
    }
    verdicts
}

fn benches(bench: &mut Criterion) {
    let fits = engine();
    let readings: usize = fits
        .iter()
        .flat_map(|fit| &fit.readings)
        .map(|(_, _, sizes)| sizes.len())
        .sum();
    let name = format!("vee eight, {readings} readings, {} fits judged", fits.len());
    bench.bench_function(&name, |timed| timed.iter(|| assessed(black_box(&fits))));
}

criterion_group!(vee_eight, benches);
criterion_main!(vee_eight);
