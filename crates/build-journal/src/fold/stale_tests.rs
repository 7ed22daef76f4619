//! What becomes stale, and only that; the way back.

use std::collections::BTreeSet;

use build_plan::check::{HEAD_BOLTS_TIGHT, ROD_BOLTS_TIGHT};
use build_plan::event::{BORES_HONED, EVENTS, MAIN_SHELLS_SWAPPED};
use build_plan::measure::{BORE, MAIN_OIL_CLEARANCE, PISTON_TO_WALL, RING_END_GAP};
use build_plan::proof::Proof;
use build_plan::{At, Engine, Place};

use super::*;
use crate::fact::samples::{Pen, sprayer};
use crate::fact::{
    Body, CheckMade, EventHappened, Mark, Outcome, Reading, ResultName, Sort, Spot, StepMarked,
    Struck, ToolListed, Waived,
};
use crate::id::{BuildId, FactId, ToolId};
use crate::journal::Journal;

/// A garage: a journal, and a pen that writes in it.
pub(super) struct Garage {
    pub(super) journal: Journal,
    pub(super) pen: Pen,
}

pub(super) fn spot(at: At) -> Option<Spot> {
    Some(Spot::Known(Place::of(at)))
}

pub(super) const MIC: u128 = 0;
pub(super) const GAUGE: u128 = 1;

impl Garage {
    /// The demo engine, a micrometer and a bore gauge.
    pub(super) fn new() -> Self {
        let mut garage = Self {
            journal: Journal::new(BuildId::from_random(7)),
            pen: Pen::new(1),
        };
        garage.write(sprayer());
        for (tool, instrument) in [
            (MIC, "outside-micrometer-tenths"),
            (GAUGE, "bore-gauge-tenths"),
        ] {
            garage.write(Body::ToolListed(ToolListed {
                tool: ToolId::from_random(tool),
                name: instrument.to_owned(),
                instrument: instrument.to_owned(),
                mark: None,
            }));
        }
        garage
    }

    pub(super) fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        self.journal.take(fact.clone());
        fact.id()
    }

    pub(super) fn mark(&mut self, step: &str, at: Option<At>, mark: Mark) -> FactId {
        self.write(Body::StepMarked(StepMarked {
            step: step.to_owned(),
            place: at.and_then(spot),
            mark,
            words: None,
        }))
    }

    pub(super) fn done(&mut self, steps: &[&str]) {
        for step in steps {
            self.mark(step, None, Mark::Done);
        }
    }

    pub(super) fn check(&mut self, check: &str, at: Option<At>, lasts: Option<&str>) -> FactId {
        self.write(Body::CheckMade(CheckMade {
            check: check.to_owned(),
            place: at.and_then(spot),
            outcome: Outcome::Good,
            words: None,
            lasts: lasts.map(str::to_owned),
        }))
    }

    pub(super) fn happen(&mut self, event: &str, at: &[At]) -> FactId {
        self.write(Body::EventHappened(EventHappened {
            event: event.to_owned(),
            places: at.iter().filter_map(|at| spot(*at)).collect(),
            words: None,
        }))
    }

    pub(super) fn read(&mut self, measure: &build_plan::Measure, at: At, tool: u128) -> FactId {
        self.read_some(measure, at, tool, usize::MAX)
    }

    /// Reads the first few places of a part.
    fn read_some(
        &mut self,
        measure: &build_plan::Measure,
        at: At,
        tool: u128,
        places: usize,
    ) -> FactId {
        let mut last = None;
        for place in measure.spots.on(at).into_iter().take(places) {
            last = Some(
                self.write(Body::Reading(
                    Reading {
                        measure: measure.id.to_owned(),
                        place: Spot::Known(place),
                        typed: "2.4500".to_owned(),
                        unit: measure.units.inch.to_owned(),
                        tool: Some(ToolId::from_random(tool)),
                        setting: None,
                        temperature: None,
                        condition: None,
                        keyed: None,
                    }
                    .into(),
                )),
            );
        }
        last.unwrap()
    }

    pub(super) fn build(&self) -> Build {
        fold(&self.journal)
    }

    pub(super) fn stale(&self) -> BTreeSet<(String, At)> {
        names(&self.build().stale())
    }
}

pub(super) fn names(stale: &[Stale]) -> BTreeSet<(String, At)> {
    stale
        .iter()
        .map(|one| (one.proof.id().to_owned(), one.at))
        .collect()
}

/// Everything that can be proved on the demo engine, proved.
pub(super) fn all_proved() -> Garage {
    let mut garage = Garage::new();
    let engine = garage.build().engine.unwrap().engine;
    let plan = Plan::default();
    for measure in plan.measures(&engine) {
        if measure.can_be_read() && measure.id != MAIN_OIL_CLEARANCE.id {
            for at in measure.spots.per.parts(&engine) {
                let all = measure.spots.number_on_each() > 1 && at == At::Cylinder(2);
                garage.read_some(measure, at, MIC, if all { usize::MAX } else { 1 });
            }
        }
    }
    for check in plan.checks(&engine) {
        garage.check(check.id, None, None);
    }
    garage
}

/// What an event at a part makes stale, told from the plan alone: what it
/// names, and what follows from that.
fn told_by_the_plan(
    event: &build_plan::event::Event,
    at: At,
    engine: &Engine,
    read: &BTreeSet<(String, At)>,
    worked_out: &BTreeSet<(String, At)>,
) -> BTreeSet<(String, At)> {
    let mut told = BTreeSet::new();
    for proof in event.voids {
        for part in proof.per().parts(engine) {
            let known = (proof.id().to_owned(), part);
            if part.concerns(at, engine) && read.contains(&known) {
                told.insert(known);
            }
        }
    }
    loop {
        let before = told.len();
        for measure in build_plan::MEASURES {
            for part in measure.spots.per.parts(engine) {
                let known = (measure.id.to_owned(), part);
                let follows = measure.sources().iter().any(|source| {
                    told.iter()
                        .any(|(id, other)| id == source.id && other.concerns(part, engine))
                });
                if follows && worked_out.contains(&known) && !read.contains(&known) {
                    told.insert(known);
                }
            }
        }
        if told.len() == before {
            return told;
        }
    }
}

#[test]
fn every_event_at_every_part_makes_exactly_the_right_results_stale() {
    let garage = all_proved();
    let build = garage.build();
    assert!(build.stale().is_empty());
    let engine = &build.engine.as_ref().unwrap().engine;
    let read: BTreeSet<(String, At)> = (build.latest.keys())
        .map(|(id, at)| ((*id).to_owned(), *at))
        .chain((build.record.made.keys()).map(|(id, at)| ((*id).to_owned(), *at)))
        .collect();
    let worked_out: BTreeSet<(String, At)> = (build.plan.measures(engine))
        .flat_map(|one| {
            one.spots
                .per
                .parts(engine)
                .into_iter()
                .map(move |at| (one, at))
        })
        .filter(|(one, at)| build.has_value(one, *at))
        .map(|(one, at)| (one.id.to_owned(), at))
        .collect();
    assert!(worked_out.len() > 100);
    for event in EVENTS.iter().filter(|one| one.when.applies_to(engine)) {
        let parts = event.per.parts(engine);
        let last = parts.len() - 1;
        for at in [parts[last / 2]] {
            let mut after = Garage {
                journal: garage.journal.clone(),
                pen: Pen::new(1),
            };
            for fact in garage.journal.facts() {
                after.pen.observe(fact);
            }
            after.happen(event.id, &[at]);
            let told = told_by_the_plan(event, at, engine, &read, &worked_out);
            assert_eq!(after.stale(), told, "{} at {at}", event.id);
            assert!(
                !told.is_empty()
                    || event.id == "cam-bearings-fitted"
                    || event.id == "intake-swapped",
                "{}",
                event.id
            );
        }
    }
}

#[test]
fn honing_one_bore_is_told_with_its_chain_and_costs_one_piston() {
    let mut garage = Garage::new();
    for cylinder in 1..=4 {
        garage.read(&BORE, At::Cylinder(cylinder), GAUGE);
        garage.read(
            &build_plan::measure::PISTON_DIAMETER,
            At::Cylinder(cylinder),
            MIC,
        );
        for ring in build_plan::Ring::ALL {
            garage.read(
                &RING_END_GAP,
                At::Ring {
                    cylinder,
                    ring: *ring,
                },
                MIC,
            );
        }
    }
    garage.done(&["ring-gaps", "crank-in", "pistons-on-rods", "pistons-in"]);
    garage.happen(BORES_HONED.id, &[At::Cylinder(3)]);
    let build = garage.build();
    let stale = build.stale();
    let clearance = stale
        .iter()
        .find(|one| one.proof == Proof::Measure(&PISTON_TO_WALL))
        .unwrap();
    assert_eq!(clearance.at, At::Cylinder(3));
    assert!(clearance.chain[0].starts_with("Bore honed or bored, cylinder 3. The bore is larger"));
    assert_eq!(
        clearance.chain[1],
        "Piston to wall clearance goes by cylinder bore, cylinder 3."
    );
    assert!(
        stale.iter().all(|one| one.at.cylinder() == Some(3)),
        "{stale:#?}"
    );
    let way = build.way_back(&stale);
    assert!(way.no_way.is_empty());
    let jobs: Vec<(&str, &[At], bool)> = way
        .jobs
        .iter()
        .map(|job| (job.step.id, job.parts.as_slice(), job.in_the_way))
        .collect();
    let third: &[At] = &[At::Cylinder(3)];
    assert!(jobs.contains(&("ring-gaps", third, false)), "{jobs:?}");
    assert!(jobs.contains(&("pistons-on-rods", third, true)), "{jobs:?}");
    assert!(jobs.contains(&("pistons-in", third, true)), "{jobs:?}");
    assert!(!jobs.iter().any(|(id, ..)| *id == "crank-in"), "{jobs:?}");
    let sum: u32 = way.jobs.iter().map(|job| job.minutes.1).sum();
    assert_eq!(way.minutes.1, sum);
}

#[test]
fn a_result_that_is_proved_again_counts_and_goes_by_the_new_readings_only() {
    let mut garage = Garage::new();
    let main = At::Main(2);
    garage.read(&build_plan::measure::MAIN_JOURNAL_DIAMETER, main, MIC);
    garage.read(&build_plan::measure::MAIN_BEARING_BORE, main, GAUGE);
    let clearance = || Proof::Measure(&MAIN_OIL_CLEARANCE);
    assert_eq!(
        garage.build().result(clearance(), main),
        ResultState::Stands
    );
    garage.happen(MAIN_SHELLS_SWAPPED.id, &[main]);
    let ResultState::Stale(stale) = garage.build().result(clearance(), main) else {
        panic!()
    };
    assert!(stale.chain[0].contains("two boxes of one size may differ"));
    // Half of the bore measured again: the old half no longer works on it.
    for place in build_plan::measure::MAIN_BEARING_BORE.spots.on(main) {
        garage.write(Body::Reading(
            Reading {
                measure: "main-bearing-bore".to_owned(),
                place: Spot::Known(place),
                typed: "2.4530".to_owned(),
                unit: "in".to_owned(),
                tool: Some(ToolId::from_random(GAUGE)),
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ));
    }
    let build = garage.build();
    assert_eq!(build.result(clearance(), main), ResultState::Stands);
    let bearing = &build.mains[1];
    let clearance = bearing.clearance().unwrap();
    let thou = |value: f64| (value / 25.4e-6).round();
    assert_eq!(
        (
            thou(clearance.least.value().value),
            thou(clearance.greatest.value().value)
        ),
        (3.0, 3.0)
    );
}

#[test]
fn a_waiver_lets_a_stale_result_pass_until_something_happens_again() {
    let mut garage = Garage::new();
    garage.read(&BORE, At::Cylinder(1), GAUGE);
    let waive = |garage: &mut Garage| {
        garage.write(Body::Waived(Waived {
            result: ResultName {
                sort: Sort::Measure,
                id: "bore".to_owned(),
            },
            place: spot(At::Cylinder(1)),
            reason: "half a thou, and there were four to spare".to_owned(),
        }))
    };
    garage.happen(BORES_HONED.id, &[]);
    assert!(
        garage
            .stale()
            .contains(&("bore".to_owned(), At::Cylinder(1)))
    );
    let waiver = waive(&mut garage);
    let bore = || {
        garage
            .build()
            .result(Proof::Measure(&BORE), At::Cylinder(1))
    };
    assert!(matches!(bore(), ResultState::LetPass(reason) if reason.starts_with("half a thou")));
    assert!(garage.stale().is_empty());
    // Struck out, it is stale as before.
    garage.write(Body::Struck(Struck {
        fact: waiver,
        reason: None,
    }));
    assert_eq!(garage.stale().len(), 3, "bore, taper, out-of-round");
    waive(&mut garage);
    garage.happen(BORES_HONED.id, &[At::Cylinder(1)]);
    assert!(
        garage
            .stale()
            .contains(&("bore".to_owned(), At::Cylinder(1)))
    );
}

#[test]
fn heads_done_again_undo_what_lies_over_them_and_not_the_crank() {
    let mut garage = Garage::new();
    garage.done(&[
        "crank-in",
        "pistons-in",
        "rod-bolts",
        "heads-on",
        "head-bolts",
        "valve-gear-in",
    ]);
    garage.check("main-caps-tight", None, None);
    garage.check(ROD_BOLTS_TIGHT.id, None, None);
    garage.check(HEAD_BOLTS_TIGHT.id, None, None);
    garage.mark("heads-on", None, Mark::Done);
    let stale = garage.stale();
    let ids: BTreeSet<&str> = stale.iter().map(|(id, _)| id.as_str()).collect();
    assert_eq!(
        ids,
        BTreeSet::from(["head-bolts", "head-bolts-tight", "valve-gear-in"])
    );
    let all = garage.build().stale();
    let tight = all
        .iter()
        .find(|one| one.proof.id() == "head-bolts-tight")
        .unwrap();
    assert!(
        tight.chain[0].contains("was done again"),
        "{:?}",
        tight.chain
    );
    assert!(
        tight.chain[1].contains("came apart with it"),
        "{:?}",
        tight.chain
    );
    // Tightened and done in turn, all stands again.
    garage.check(HEAD_BOLTS_TIGHT.id, None, None);
    garage.done(&["head-bolts", "valve-gear-in"]);
    assert!(garage.stale().is_empty());
}

#[test]
fn a_crank_that_comes_out_takes_pistons_and_heads_along() {
    let mut garage = Garage::new();
    garage.done(&[
        "cam-in",
        "crank-in",
        "pistons-on-rods",
        "pistons-in",
        "rod-bolts",
        "head-gaskets",
        "heads-on",
        "head-bolts",
        "pan-on",
    ]);
    garage.mark("crank-in", None, Mark::Apart);
    let ids: BTreeSet<String> = garage.stale().into_iter().map(|(id, _)| id).collect();
    for id in [
        "pistons-in",
        "rod-bolts",
        "heads-on",
        "head-bolts",
        "pan-on",
    ] {
        assert!(ids.contains(id), "{id}: {ids:?}");
    }
    assert!(!ids.contains("cam-in") && !ids.contains("pistons-on-rods"));
}
