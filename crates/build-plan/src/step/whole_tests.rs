//! What holds for the plan as a whole, on two thousand engines.

use std::collections::BTreeSet;

use super::tests::engines;
use super::*;
use crate::caution::DEFER;
use crate::check::CHECKS;
use crate::event::EVENTS;
use crate::measure::{MEASURES, Per};
use crate::proof::Proof;

#[test]
fn engines_come_with_one_to_sixteen_cylinders() {
    let cylinders: BTreeSet<u8> = engines().map(|engine| engine.cylinders()).collect();
    assert!(cylinders.contains(&1) && cylinders.contains(&16) && cylinders.len() >= 8);
}

#[test]
fn whatever_applies_to_an_engine_has_parts_on_it() {
    for engine in engines() {
        let some = |per: Per, id: &str| {
            let parts = per.parts(&engine);
            assert!(!parts.is_empty(), "{id}");
            for part in parts {
                assert!(
                    part.exists_on(&engine) && per.includes(part),
                    "{id}: {part}"
                );
            }
        };
        let applies = |when: crate::engine::When| when.applies_to(&engine);
        for one in MEASURES.iter().filter(|one| applies(one.when)) {
            some(one.spots.per, one.id);
            assert!(!one.places(&engine).is_empty(), "{}", one.id);
            for source in one.sources() {
                assert!(applies(source.when), "{} needs {}", one.id, source.id);
            }
        }
        for one in CHECKS.iter().filter(|one| applies(one.when)) {
            some(one.per, one.id);
        }
        for one in STEPS.iter().filter(|one| applies(one.when)) {
            some(one.per, one.id);
        }
    }
}

#[test]
fn every_event_of_an_engine_makes_something_stale_on_it() {
    for engine in engines() {
        for one in EVENTS.iter().filter(|one| one.when.applies_to(&engine)) {
            let reached = one
                .voids
                .iter()
                .any(|proof| proof.when().applies_to(&engine));
            assert!(reached, "{} on {:?}", one.id, engine.construction());
        }
    }
}

#[test]
fn an_event_at_one_part_reaches_each_of_its_results() {
    for engine in engines().step_by(10) {
        for one in EVENTS.iter().filter(|one| one.when.applies_to(&engine)) {
            let voids = || {
                let all = one.voids.iter();
                all.filter(|proof| proof.when().applies_to(&engine))
            };
            for proof in voids() {
                let parts = proof.per().parts(&engine);
                for at in one.per.parts(&engine) {
                    // What is only measured on valves of the other side.
                    let side = matches!(proof.per(), Per::IntakeValve | Per::ExhaustValve);
                    if side && !proof.per().includes(at) {
                        continue;
                    }
                    assert!(
                        parts.iter().any(|other| other.concerns(at, &engine)),
                        "{} at {at} reaches no {}",
                        one.id,
                        proof.id()
                    );
                }
            }
        }
    }
}

#[test]
fn what_is_hidden_or_undone_can_be_proved_again() {
    for engine in engines() {
        let order = in_order(&engine).unwrap();
        for step in &order {
            for over in step.undoes() {
                assert!(STEPS.contains(over), "{} undoes a stranger", step.id);
            }
        }
        let proofs = MEASURES.iter().map(|one| Proof::Measure(one));
        let proofs = proofs.chain(CHECKS.iter().map(|one| Proof::Check(one)));
        for proof in proofs.filter(|proof| proof.when().applies_to(&engine)) {
            let hidden = order.iter().any(|step| step.hides(proof));
            let proved = order.iter().any(|step| step.proves.contains(&proof));
            assert!(proved || !hidden, "{} is hidden for good", proof.id());
        }
    }
}

#[test]
fn a_step_with_cautions_shows_each_of_them_and_defers_where_somebody_may_be_hurt() {
    for step in STEPS {
        let shown: Vec<&str> = step.warnings().collect();
        for caution in step.cautions {
            assert!(shown.contains(&caution.text), "{}", step.id);
        }
        assert_eq!(shown.contains(&DEFER), step.can_hurt(), "{}", step.id);
        let extra = usize::from(step.can_hurt());
        assert_eq!(shown.len(), step.cautions.len() + extra, "{}", step.id);
    }
}

#[test]
fn nothing_of_the_job_on_the_engine_itself_goes_without_a_caution() {
    // Steps that only write, look or measure need none.
    let harmless = [
        "measure-as-found",
        "decide-sizes",
        "order-machine-work",
        "measure-heads",
        "thrust-and-effort",
        "split-seal-check",
        "ring-grooves",
        "core-plugs",
        "covers-on",
        "look-over",
        "crack-check",
        "close-book",
    ];
    for step in STEPS {
        assert!(
            !step.cautions.is_empty() || harmless.contains(&step.id),
            "{}",
            step.id
        );
    }
}
