//! What holds for every step, on a thousand engines.

use std::collections::{BTreeMap, BTreeSet};

use super::order::in_order_of;
use super::*;
use crate::caution::Harm;
use crate::check::{CHECKS, check};
use crate::engine::{
    CamDrive, Casting, Construction, Crankcase, Engine, Ignition, Layout, Liners, MainCaps,
    Numbering, Pins, PumpDrive, RearSeal, Rods, ValveGear,
};
use crate::event::{EVENTS, event};
use crate::measure::{MEASURES, measure};
use crate::proof::Proof;
use crate::supply::{SUPPLIES, supply};
use assembly_core::quantity::Si;
use uom::si::f64::Angle;

/// Draws without a generator: one of some, by a number that is used up.
struct Draw(u64);

impl Draw {
    fn one<T: Copy>(&mut self, of: &[T]) -> T {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1);
        of[usize::try_from(self.0 >> 33).unwrap() % of.len()]
    }
}

fn engine(number: u64) -> Engine {
    let mut draw = Draw(number.wrapping_mul(0x9e37_79b9_7f4a_7c15));
    let layout = draw.one(&[
        Layout::Inline,
        Layout::Vee {
            bank_angle: Angle::from_si(1.0),
        },
        Layout::Flat,
    ]);
    let cylinders = match layout {
        Layout::Inline => draw.one(&[1, 2, 3, 4, 5, 6, 8, 16]),
        Layout::Vee { .. } => draw.one(&[2, 4, 5, 6, 8, 10, 12, 16]),
        _ => draw.one(&[2, 4, 6, 8, 12, 16]),
    };
    let built = Construction {
        valve_gear: draw.one(ValveGear::ALL),
        cam_drive: draw.one(CamDrive::ALL),
        block: draw.one(Casting::ALL),
        heads: draw.one(Casting::ALL),
        liners: draw.one(Liners::ALL),
        rear_seal: draw.one(RearSeal::ALL),
        main_caps: draw.one(MainCaps::ALL),
        rods: draw.one(Rods::ALL),
        pins: draw.one(Pins::ALL),
        pump_drive: draw.one(PumpDrive::ALL),
        ignition: draw.one(Ignition::ALL),
        crankcase: draw.one(&[None, Some(Crankcase::OnePiece), Some(Crankcase::Halves)]),
        numbering: draw.one(Numbering::ALL),
        intake_valves: draw.one(&[1, 2, 3]),
        exhaust_valves: draw.one(&[1, 2]),
    };
    let mains = draw.one(&[None, None, Some(2), Some(3)]);
    let mains = mains.filter(|mains| *mains <= cylinders + 2);
    Engine::new("test bed", cylinders, layout, mains)
        .and_then(|engine| engine.built(built))
        .unwrap()
}

pub(crate) fn engines() -> impl Iterator<Item = Engine> {
    (0..2000).map(engine)
}

/// What a step or an event refers to.
fn exists(proof: &Proof) -> bool {
    match proof {
        Proof::Measure(one) => measure(one.id) == Some(*one),
        Proof::Check(one) => check(one.id) == Some(*one),
        Proof::Step(one) => step(one.id) == Some(*one),
    }
}

#[test]
fn the_engines_of_these_tests_are_of_every_sort() {
    let mut sorts: BTreeMap<&str, BTreeSet<String>> = BTreeMap::new();
    for engine in engines() {
        let built = engine.construction();
        for (field, value) in [
            ("layout", engine.layout().name()),
            ("valve gear", built.valve_gear.id()),
            ("cam drive", built.cam_drive.id()),
            ("liners", built.liners.id()),
            ("seal", built.rear_seal.id()),
            ("caps", built.main_caps.id()),
            ("rods", built.rods.id()),
            ("pins", built.pins.id()),
            ("pump", built.pump_drive.id()),
            ("ignition", built.ignition.id()),
            ("case", engine.crankcase().id()),
        ] {
            sorts.entry(field).or_default().insert(value.to_owned());
        }
    }
    let counts: Vec<usize> = sorts.values().map(BTreeSet::len).collect();
    assert_eq!(
        counts.iter().sum::<usize>(),
        4 + 4 + 2 + 4 + 3 + 5 + 2 + 3 + 3 + 4 + 8
    );
}

#[test]
fn no_step_waits_for_itself_on_any_engine() {
    for engine in engines() {
        let order = in_order(&engine).unwrap();
        for (at, one) in order.iter().enumerate() {
            for need in one.needs_on(&engine) {
                assert!(
                    order[..at].contains(&need.step),
                    "{} before {}",
                    one.id,
                    need.step.id
                );
            }
        }
    }
}

#[test]
fn every_step_can_be_reached_on_every_engine() {
    for engine in engines() {
        let hard = in_order_of(&engine, Strength::Hard).unwrap();
        let applies = STEPS.iter().filter(|one| one.when.applies_to(&engine));
        assert_eq!(hard.len(), applies.count());
        for last in [
            "first-fire",
            "close-book",
            "prime",
            "head-bolts",
            "decide-sizes",
        ] {
            assert!(hard.iter().any(|one| one.id == last), "{last}");
        }
    }
}

#[test]
fn each_engine_gets_the_steps_of_its_own_build() {
    for engine in engines() {
        let order = in_order(&engine).unwrap();
        let has = |id: &str| order.iter().any(|one| one.id == id);
        assert_ne!(has("cam-in"), has("overhead-cams"));
        assert_ne!(has("crank-in"), has("case-closed"));
        assert_ne!(has("rear-seal"), has("split-seal-check"));
        assert_eq!(
            has("liners-in"),
            engine.has(crate::engine::Feature::WetLiners)
        );
        assert_eq!(
            has("press-pins"),
            engine.construction().pins == Pins::Pressed
        );
        assert_eq!(has("pan-on"), engine.crankcase() == Crankcase::OnePiece);
    }
}

#[test]
fn every_id_is_its_own_and_leads_back() {
    for one in STEPS {
        assert_eq!(step(one.id), Some(*one));
    }
    for one in EVENTS {
        assert_eq!(event(one.id), Some(*one));
    }
    for one in CHECKS {
        assert_eq!(check(one.id), Some(*one));
    }
    for one in SUPPLIES {
        assert_eq!(supply(one.id), Some(*one));
    }
    // A result is named by sort and id, but one id never means two things.
    let ids: Vec<&str> = MEASURES
        .iter()
        .map(|one| one.id)
        .chain(CHECKS.iter().map(|one| one.id))
        .chain(EVENTS.iter().map(|one| one.id))
        .collect();
    assert_eq!(ids.iter().collect::<BTreeSet<_>>().len(), ids.len());
}

#[test]
fn nothing_refers_to_what_is_not_listed() {
    for one in STEPS {
        assert!(one.proves.iter().all(exists), "{}", one.id);
        assert!(
            one.causes
                .iter()
                .all(|other| event(other.id) == Some(*other))
        );
        assert!(
            one.needs
                .iter()
                .all(|need| step(need.step.id) == Some(need.step))
        );
        assert!(
            one.in_hand
                .iter()
                .all(|other| supply(other.id) == Some(*other))
        );
    }
    for one in EVENTS {
        assert!(one.voids.iter().all(exists), "{}", one.id);
        assert!(
            !one.voids.is_empty() && one.why.ends_with('.'),
            "{}",
            one.id
        );
    }
    for one in SUPPLIES {
        assert!(
            STEPS.iter().any(|step| step.in_hand.contains(one)),
            "{}",
            one.id
        );
    }
}

#[test]
fn every_measure_and_check_of_an_engine_is_proved_by_one_of_its_steps() {
    for engine in engines() {
        let steps: Vec<_> = STEPS
            .iter()
            .filter(|one| one.when.applies_to(&engine))
            .collect();
        let proved = |proof: Proof| steps.iter().any(|one| one.proves.contains(&proof));
        for one in MEASURES.iter().filter(|one| one.when.applies_to(&engine)) {
            assert!(
                proved(Proof::Measure(one)),
                "{} on {:?}",
                one.id,
                engine.construction()
            );
        }
        for one in CHECKS.iter().filter(|one| one.when.applies_to(&engine)) {
            assert!(proved(Proof::Check(one)), "{}", one.id);
        }
    }
}

#[test]
fn every_step_proves_something_and_says_how_long_it_takes() {
    for one in STEPS {
        let changes = !one.causes.is_empty();
        assert!(
            !one.proves.is_empty() || changes,
            "{} proves nothing",
            one.id
        );
        assert!(one.minutes.0 <= one.minutes.1, "{}", one.id);
        assert_eq!(one.minutes.1 > 0, one.phase != Phase::Shop, "{}", one.id);
        assert!(one.label.len() <= 110, "{}", one.id);
    }
}

#[test]
fn every_step_that_can_hurt_somebody_says_so() {
    for id in [
        "running-baseline",
        "drain",
        "engine-out",
        "heads-off",
        "crank-out",
        "case-split",
        "plugs-removed",
        "heads-stripped",
        "rough-clean",
        "measure-crank",
        "wash",
        "chase-threads",
        "spring-heights",
        "crank-in",
        "case-closed",
        "pistons-on-rods",
        "heads-on",
        "flywheel-on",
        "install",
        "fluids",
        "pre-fire",
        "first-fire",
        "run-in-first",
        "after-run-in",
        "seat-rings",
        "baseline",
        "first-service",
    ] {
        assert!(step(id).unwrap().can_hurt(), "{id}");
    }
    for one in STEPS {
        for caution in one.cautions {
            assert!(caution.text.ends_with('.'), "{}: {}", one.id, caution.text);
            assert!(caution.text.len() <= 150, "{}: {}", one.id, caution.text);
            assert!(matches!(caution.harm, Harm::Person | Harm::Engine));
        }
    }
    assert!(crate::caution::DEFER.contains("licence"));
}

#[test]
fn every_event_reaches_what_it_says_on_some_engine() {
    for one in EVENTS {
        assert!(
            engines().any(|engine| {
                one.when.applies_to(&engine)
                    && one
                        .voids
                        .iter()
                        .any(|proof| proof.when().applies_to(&engine))
            }),
            "{}",
            one.id
        );
    }
}

#[test]
fn whatever_follows_from_a_stale_measure_is_named_by_the_same_event_or_follows_by_itself() {
    // What is worked out from a measure becomes stale with it, without being
    // named; an event that names only the result and none of its sources would
    // leave the sources standing. Quench goes with gasket or crank as well.
    for one in EVENTS {
        for proof in one.voids {
            if let Proof::Measure(derived) = proof
                && matches!(derived.found, crate::measure::Found::Spread { .. })
            {
                let sources = derived.sources();
                assert!(
                    sources
                        .iter()
                        .any(|source| one.voids.contains(&Proof::Measure(source))),
                    "{}: {}",
                    one.id,
                    derived.id
                );
            }
        }
    }
}

#[test]
fn the_moves_of_the_calculations_name_measures_that_exist() {
    // Not measures of ours: what a move is made for besides.
    let others = ["feel"];
    for one in assembly_core::moves::MOVES.iter().copied().flatten() {
        for effect in one.effects {
            let id = effect.measure;
            assert!(
                measure(id).is_some() || check(id).is_some() || others.contains(&id),
                "{}: {id}",
                one.id
            );
        }
    }
}

#[test]
fn the_calculations_that_measures_name_exist() {
    for one in MEASURES {
        if let crate::measure::Found::WorkedOut {
            calculation,
            or_read_by,
            ..
        } = one.found
        {
            for id in std::iter::once(&calculation).chain(or_read_by) {
                assert!(
                    assembly_core::describe::calculation(id).is_some(),
                    "{}: {id}",
                    one.id
                );
            }
        }
    }
}
