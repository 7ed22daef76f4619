//! How long a stack of eight parts takes to be drawn 100,000 times.

#![allow(missing_docs, clippy::unwrap_used)]

use assembly_core::describe::{Input, Output};
use assembly_core::measure::{Estimate, Origin, Sources};
use assembly_core::stack::{Formula, Stack, StackUp, Term, TermValue};
use criterion::{Criterion, criterion_group, criterion_main};
use std::hint::black_box;

const fn part(id: &'static str) -> Input {
    Input::size(id, id, (0.0, 1.0), "measured")
}

static PARTS: [Input; 8] = [
    part("a"),
    part("b"),
    part("c"),
    part("d"),
    part("e"),
    part("f"),
    part("g"),
    part("h"),
];
static RESULT: Output = Output::size("result", "result");
static EIGHT: Stack = Stack {
    id: "eight",
    title: "eight parts",
    terms: &[
        Term::needed(&PARTS[0]),
        Term::needed(&PARTS[1]),
        Term::needed(&PARTS[2]),
        Term::needed(&PARTS[3]),
        Term::needed(&PARTS[4]),
        Term::needed(&PARTS[5]),
        Term::needed(&PARTS[6]),
        Term::needed(&PARTS[7]),
    ],
    result: &RESULT,
    formula: Formula::Sum(&[1.0, -0.5, -1.0, -1.0, 1.0, 1.0, -1.0, 1.0]),
    proof: "none",
};

fn eight_parts(measured: bool) -> StackUp {
    let mut sources = Sources::new();
    let mut stack_up = StackUp::new(&EIGHT);
    for part in &PARTS {
        let cause = sources.fresh("feel", Origin::Repeat);
        let value = if measured {
            TermValue::measured(Estimate::exact(0.1).with(cause, 1e-5))
        } else {
            TermValue::within(0.1, 2e-5)
        };
        stack_up = stack_up.with(part.id, value).unwrap();
    }
    stack_up
}

fn benches(bench: &mut Criterion) {
    for (name, measured) in [("measured", true), ("within limits", false)] {
        let stack_up = eight_parts(measured);
        bench.bench_function(&format!("100,000 draws of eight parts, {name}"), |timed| {
            timed.iter(|| {
                let drawn = black_box(&stack_up).monte_carlo(100_000, 1).unwrap();
                drawn.limits(0.95)
            });
        });
    }
}

criterion_group!(stack_up, benches);
criterion_main!(stack_up);
