//! Parts that change places, tools that fail, states that run out; what is told
//! before it is written down.

use build_plan::At;
use build_plan::check::{PRIMED, SEALANT_OPEN};
use build_plan::event::{HEAD_GASKET_SWAPPED, MAIN_SHELLS_SWAPPED, PISTONS_MOVED};
use build_plan::measure::{BORE, MAIN_BEARING_BORE};
use build_plan::proof::Proof;

use super::stale_tests::{GAUGE, Garage, MIC, all_proved, names, spot};
use super::*;
use crate::fact::{Body, EventHappened, Fact, Outcome, SetOn, Struck, ToolChecked, ToolSet};
use crate::id::{SettingId, ToolId};

#[test]
fn parts_that_changed_places_are_stale_at_both_and_nowhere_else() {
    let mut garage = all_proved();
    garage.happen(PISTONS_MOVED.id, &[At::Cylinder(2), At::Cylinder(3)]);
    let stale = garage.stale();
    let at = |cylinder| {
        (
            build_plan::measure::PISTON_DIAMETER.id.to_owned(),
            At::Cylinder(cylinder),
        )
    };
    assert!(stale.contains(&at(2)) && stale.contains(&at(3)));
    assert!(
        stale
            .iter()
            .all(|(_, at)| matches!(at.cylinder(), Some(2 | 3))),
        "{stale:?}"
    );
    assert!(!stale.contains(&("bore".to_owned(), At::Cylinder(2))));
}

#[test]
fn a_failed_zero_puts_everything_since_the_last_good_one_in_doubt() {
    let mut garage = Garage::new();
    let mic = ToolId::from_random(MIC);
    let journal = &build_plan::measure::MAIN_JOURNAL_DIAMETER;
    let seen = |garage: &mut Garage, outcome| {
        garage.write(Body::ToolChecked(ToolChecked {
            tool: mic,
            outcome,
            words: None,
        }))
    };
    garage.read(journal, At::Main(1), MIC);
    seen(&mut garage, Outcome::Good);
    garage.read(journal, At::Main(2), MIC);
    // The gauge is zeroed in the micrometer: it has its error, too.
    garage.write(Body::ToolSet(ToolSet {
        tool: ToolId::from_random(GAUGE),
        setting: SettingId::from_random(1),
        set_on: SetOn::Tool(mic),
        set_at: Some("2.4500".to_owned()),
        unit: Some("in".to_owned()),
        locked_at: None,
        needle: None,
    }));
    garage.read(&BORE, At::Cylinder(1), GAUGE);
    assert!(garage.stale().is_empty());
    seen(&mut garage, Outcome::Bad);
    garage.read(journal, At::Main(3), MIC);
    garage.read(&BORE, At::Cylinder(2), GAUGE);
    let stale = garage.stale();
    let has = |id: &str, at| stale.contains(&(id.to_owned(), at));
    assert!(has(journal.id, At::Main(2)) && has("bore", At::Cylinder(1)));
    assert!(
        has("main-journal-taper", At::Main(2)),
        "what goes by it as well: {stale:?}"
    );
    assert!(!has(journal.id, At::Main(1)) && !has(journal.id, At::Main(3)));
    // It is still set on what the micrometer read wrongly.
    assert!(has("bore", At::Cylinder(2)));
    let all = garage.build().stale();
    assert!(all[0].chain[0].contains("did not read right afterwards"));
    garage.read(journal, At::Main(2), MIC);
    assert!(
        !garage
            .stale()
            .contains(&(journal.id.to_owned(), At::Main(2)))
    );
}

#[test]
fn what_would_become_stale_is_told_before_and_is_what_then_does() {
    let mut garage = all_proved();
    let fact = garage.pen.write(Body::EventHappened(EventHappened {
        event: HEAD_GASKET_SWAPPED.id.to_owned(),
        places: Vec::new(),
        words: None,
    }));
    let before = garage.journal.clone();
    let told = preview(&garage.journal, &fact);
    assert_eq!(garage.journal, before);
    assert!(!told.stale.is_empty() && told.again.is_empty() && !told.way_back.jobs.is_empty());
    garage.journal.take(fact);
    assert_eq!(names(&told.stale), garage.stale());
    let wrong = garage.pen.write(Body::EventHappened(EventHappened {
        event: "struck-by-lightning".to_owned(),
        places: Vec::new(),
        words: None,
    }));
    let told = preview(&garage.journal, &wrong);
    assert!(told.stale.is_empty() && told.problems[0].contains("struck-by-lightning"));
}

#[test]
fn a_primed_engine_is_primed_for_two_weeks_unless_the_pan_comes_off() {
    let mut garage = Garage::new();
    let primed = garage.check(PRIMED.id, None, None);
    garage.check(SEALANT_OPEN.id, None, Some("10 min"));
    let since = garage.journal.get(primed).unwrap().clock();
    let build = garage.build();
    let clocks = build.clocks();
    let days = |days: i64| since + days * 24 * 3_600_000;
    assert_eq!(clocks[0].check.id, SEALANT_OPEN.id);
    assert_eq!(clocks[1].ends, Some(days(14)));
    assert!(!clocks[1].has_run_out(days(14) - 1) && clocks[1].has_run_out(days(14)));
    garage.happen("pump-or-pan-swapped", &[]);
    assert!(garage.stale().contains(&(PRIMED.id.to_owned(), At::Engine)));
    assert_eq!(garage.build().clocks().len(), 1);
}

#[test]
fn a_check_of_the_whole_engine_is_not_good_because_one_part_of_it_is() {
    let mut garage = Garage::new();
    garage.check(PRIMED.id, Some(At::Cylinder(1)), None);
    let build = garage.build();
    assert_eq!(
        build.result(Proof::Check(&PRIMED), At::Engine),
        ResultState::NotYet
    );
    assert!(build.problems[0].text.contains("does not count"));
}

#[test]
fn an_event_that_is_struck_out_never_happened() {
    let mut garage = all_proved();
    let before = garage.build();
    let event = garage.happen("cam-swapped", &[]);
    assert!(!garage.stale().is_empty());
    garage.write(Body::Struck(Struck {
        fact: event,
        reason: Some("it was another engine".to_owned()),
    }));
    let after = garage.build();
    assert!(after.stale().is_empty());
    assert_eq!(after.record, before.record);
}

#[test]
fn a_reading_counts_until_something_makes_it_stale_and_again_when_that_is_struck() {
    let mut garage = Garage::new();
    garage.read(&MAIN_BEARING_BORE, At::Main(3), GAUGE);
    garage.read(&MAIN_BEARING_BORE, At::Main(4), GAUGE);
    let swapped = garage.happen(MAIN_SHELLS_SWAPPED.id, &[At::Main(3)]);
    let counting = |garage: &Garage| -> Vec<u8> {
        let build = fold(&garage.journal);
        let of = |number: &u8| build.readings(&MAIN_BEARING_BORE, At::Main(*number));
        (1..=build.mains.len() as u8)
            .filter(|number| of(number).next().is_some())
            .filter(|number| of(number).all(|taken| build.still_counts(taken)))
            .collect()
    };
    assert_eq!(counting(&garage), [4]);
    garage.write(Body::Struck(Struck {
        fact: swapped,
        reason: None,
    }));
    assert_eq!(counting(&garage), [3, 4]);
}

#[test]
fn several_facts_are_looked_ahead_at_as_one() {
    let mut garage = Garage::new();
    for main in [2, 3] {
        garage.read(&MAIN_BEARING_BORE, At::Main(main), GAUGE);
    }
    let facts: Vec<Fact> = [2, 3]
        .map(|main| {
            garage.pen.write(Body::EventHappened(EventHappened {
                event: MAIN_SHELLS_SWAPPED.id.to_owned(),
                places: spot(At::Main(main)).into_iter().collect(),
                words: None,
            }))
        })
        .to_vec();
    let parts = |preview: Preview| -> Vec<At> {
        let bores = preview.stale.into_iter();
        bores
            .filter(|one| one.proof == Proof::Measure(&MAIN_BEARING_BORE))
            .map(|one| one.at)
            .collect()
    };
    assert_eq!(
        parts(preview_all(&garage.journal, &facts)),
        [At::Main(2), At::Main(3)]
    );
    assert_eq!(parts(preview(&garage.journal, &facts[1])), [At::Main(3)]);
    assert!(fold(&garage.journal).stale().is_empty());
}

#[test]
fn another_description_tells_which_steps_and_measures_come_and_go() {
    let garage = Garage::new();
    let fact = garage.journal.facts().find_map(|fact| match fact.body() {
        Body::EngineDescribed(made) => Some((fact.clone(), made.clone())),
        _ => None,
    });
    let (fact, mut made) = fact.unwrap();
    let id = crate::Stamper::new().stamp(1_900_000_000_000, 1);
    let looked = |made: &crate::fact::EngineDescribed| {
        let body = Body::EngineDescribed(made.clone());
        preview(&garage.journal, &Fact::new(id, fact.device(), 1, body))
    };
    let same = looked(&made);
    assert!(same.come.is_empty() && same.go.is_empty());
    made.built.retain(|(field, _)| *field != "liners");
    made.built.push(("liners", "wet-top-flange".to_owned()));
    let wet = looked(&made);
    let stand_out = build_plan::measure::LINER_STAND_OUT.label;
    assert!(wet.come.contains(&stand_out), "{:?}", wet.come);
    assert!(!wet.go.contains(&stand_out));
}
