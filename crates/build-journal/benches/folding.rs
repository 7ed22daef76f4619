//! How long a state takes: from scratch, a fact further, and opening a file.
//!
//! Where the system tells it, the time is what the processor spent on it, so
//! that whatever else the machine does stays out of it.

#![allow(missing_docs, clippy::unwrap_used, clippy::expect_used)]

use build_journal::fact::{
    Body, CheckMade, EngineDescribed, EventHappened, LimitsOrigin, LimitsSet, Mark, Outcome,
    Reading, Spot, StepMarked, ToolListed,
};
use build_journal::fold::{Folding, fold};
use build_journal::{BuildId, DeviceId, Fact, Journal, Stamper, ToolId, export, import};
use build_plan::{Engine, MEASURES};
use criterion::{Bencher, Criterion, criterion_group, criterion_main};
use std::hint::black_box;
use std::time::{Duration, Instant};

const START: u64 = 1_750_000_000_000;

/// Time that this thread has spent on a processor.
fn spent() -> Option<Duration> {
    let text = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    let nanoseconds = text.split_whitespace().next()?.parse().ok()?;
    Some(Duration::from_nanos(nanoseconds))
}

/// Times only what is done with what was made ready; dropping comes after.
fn timed<S, T>(bench: &mut Bencher, ready: impl Fn() -> S, act: impl Fn(&mut S) -> T) {
    // The system counts in ticks: many at once, so that they weigh little.
    const AT_ONCE: usize = 20;
    bench.iter_custom(|times| {
        let mut all = Duration::from_nanos(1);
        let mut left = usize::try_from(times).unwrap();
        while left > 0 {
            let some = left.min(AT_ONCE);
            left -= some;
            let mut states: Vec<S> = (0..some).map(|_| ready()).collect();
            let mut made = Vec::with_capacity(some);
            let (clock, before) = (Instant::now(), spent());
            for state in &mut states {
                made.push(black_box(act(state)));
            }
            let spent = spent().zip(before).map(|(after, before)| after - before);
            all += spent.unwrap_or_else(|| clock.elapsed());
        }
        all
    });
}

/// So many facts are taken in between two looks at the clock: the system counts
/// in ticks.
const AT_ONCE: usize = 200;

/// Takes readings in one after the other, the journal's own part with it.
fn one_by_one(times: u64, (journal, state): (&Journal, &Folding), more: &[Fact]) -> Duration {
    let mut all = Duration::from_nanos(1);
    let mut left = usize::try_from(times).unwrap();
    while left > 0 {
        let some = left.min(more.len());
        left -= some;
        let (mut journal, mut state) = (journal.clone(), state.clone());
        let facts: Vec<Fact> = more.iter().take(some).cloned().collect();
        let (clock, before) = (Instant::now(), spent());
        for fact in facts {
            journal.take(fact.clone());
            state.append(&journal, black_box(&fact));
        }
        let spent = spent().zip(before).map(|(after, before)| after - before);
        all += spent.unwrap_or_else(|| clock.elapsed());
        black_box(state);
    }
    all
}

struct Pen {
    stamper: Stamper,
    wall: u64,
}

impl Pen {
    fn fact(&mut self, body: Body) -> Fact {
        self.wall += 30_000;
        let id = self.stamper.stamp(self.wall, self.wall);
        let clock = i64::try_from(self.wall).unwrap();
        Fact::new(id, DeviceId::from_random(1), clock, body)
    }
}

fn reading(measure: &str, place: build_plan::Place, number: usize, tool: ToolId) -> Body {
    Body::Reading(
        Reading {
            measure: measure.to_owned(),
            place: Spot::Known(place),
            typed: format!("2.44{:02}", 80 + number % 7),
            unit: "in".to_owned(),
            tool: Some(tool),
            setting: None,
            temperature: None,
            condition: None,
            keyed: None,
        }
        .into(),
    )
}

/// A vee eight with so many facts: each length that can be read, over and over,
/// with steps, checks and a few events between.
fn journal(facts: usize) -> (Journal, Pen) {
    let mut pen = Pen {
        stamper: Stamper::new(),
        wall: START,
    };
    let described = EngineDescribed {
        name: "vee eight".to_owned(),
        cylinders: 8,
        layout: "vee".to_owned(),
        bank_angle: Some("90°".to_owned()),
        mains: None,
        built: Vec::new(),
    };
    let engine: Engine = described.engine().unwrap();
    let mut journal = Journal::new(BuildId::from_random(1));
    journal.take(pen.fact(Body::EngineDescribed(described)));
    let mic = ToolId::from_random(1);
    journal.take(pen.fact(Body::ToolListed(ToolListed {
        tool: mic,
        name: "micrometer".to_owned(),
        instrument: "outside-micrometer-tenths".to_owned(),
        mark: None,
    })));
    journal.take(pen.fact(Body::LimitsSet(LimitsSet {
        measure: "main-oil-clearance".to_owned(),
        place: None,
        low: Some("1.5".to_owned()),
        high: Some("2.5".to_owned()),
        unit: "thou".to_owned(),
        origin: LimitsOrigin::Sheet,
        origin_note: "page 41".to_owned(),
        replaces: Vec::new(),
    })));
    let places: Vec<_> = MEASURES
        .iter()
        .filter(|one| one.can_be_read() && one.units.inch == "in")
        .flat_map(|one| {
            one.places(&engine)
                .into_iter()
                .map(move |place| (one.id, place))
        })
        .collect();
    let steps: Vec<&str> = build_plan::step::STEPS.iter().map(|one| one.id).collect();
    let mut number = 0;
    while journal.len() < facts {
        number += 1;
        let body = match number % 500 {
            100 => Body::StepMarked(StepMarked {
                step: (*steps.get(number / 500 % steps.len()).unwrap()).to_owned(),
                place: None,
                mark: Mark::Done,
                words: None,
            }),
            200 => Body::CheckMade(CheckMade {
                check: "clean".to_owned(),
                place: None,
                outcome: Outcome::Good,
                words: None,
                lasts: None,
            }),
            300 => Body::EventHappened(EventHappened {
                event: "main-shells-swapped".to_owned(),
                places: vec![Spot::Known(build_plan::Place::main(3))],
                words: None,
            }),
            _ => {
                let (measure, place) = *places.get(number % places.len()).unwrap();
                reading(measure, place, number, mic)
            }
        };
        journal.take(pen.fact(body));
    }
    (journal, pen)
}

fn folding(criterion: &mut Criterion) {
    let (ten, mut pen) = journal(10_000);
    criterion.bench_function("10,000 facts from scratch", |bench| {
        timed(bench, || (), |()| fold(black_box(&ten)));
    });
    let state = Folding::of(&ten);
    // Each place that can be read once more, as a round goes on. What is taken in
    // by starting over is no append, and has its time above.
    let more: Vec<Fact> = (ten.facts().rev())
        .filter_map(|fact| match fact.body() {
            Body::Reading(reading) => Some(Body::Reading(reading.clone())),
            _ => None,
        })
        .take(AT_ONCE)
        .map(|body| pen.fact(body))
        .collect();
    criterion.bench_function("a reading more at 10,000 facts", |bench| {
        bench.iter_custom(|times| one_by_one(times, (&ten, &state), &more));
    });
    // The dearest: a bearing is worked out from all places of bore and journal, and
    // what would settle it besides.
    let place = build_plan::Place::main(2)
        .station(build_plan::Station::Front)
        .direction(build_plan::Direction::UpAndDown);
    let journals: Vec<Fact> = (0..20)
        .map(|number| {
            let tool = ToolId::from_random(1);
            pen.fact(reading("main-journal-diameter", place, number, tool))
        })
        .collect();
    criterion.bench_function("a main journal once more at 10,000 facts", |bench| {
        bench.iter_custom(|times| one_by_one(times, (&ten, &state), &journals));
    });
    let build = fold(&ten);
    criterion.bench_function("what is stale at 10,000 facts", |bench| {
        timed(bench, || (), |()| black_box(&build).stale());
    });
    criterion.bench_function("what is next at 10,000 facts", |bench| {
        timed(
            bench,
            || (),
            |()| black_box(&build).outlook(1_760_000_000_000),
        );
    });
}

fn opening(criterion: &mut Criterion) {
    let (twenty, _) = journal(20_000);
    let file = export(&twenty);
    let mut group = criterion.benchmark_group("20,000 facts");
    group.sample_size(20);
    group.bench_function("import", |bench| {
        timed(bench, || (), |()| import(black_box(file.as_bytes())));
    });
    group.bench_function("import and fold", |bench| {
        let both = || fold(&import(black_box(file.as_bytes())).unwrap().journal);
        timed(bench, || (), |()| both());
    });
    group.bench_function("export", |bench| {
        timed(bench, || (), |()| export(black_box(&twenty)));
    });
    group.finish();
}

criterion_group!(benches, folding, opening);
criterion_main!(benches);
