//! The builder's wrenches, and a wrench for each lap.

use assembly_core::fastener::wrench::Place;
use assembly_core::tightening::credit::NoCredit;

use super::facts::{Bench, head};
use super::{Field, Sheet, choices};
use crate::fact::{Adapter, Body, FastenerGroup, StageWrench, Struck, Way, Wrench, WrenchListed};
use crate::id::ToolId;

fn wrench(name: &str, low: &str, high: &str, unit: &str) -> Wrench {
    Wrench {
        name: Some(name.to_owned()),
        low: low.to_owned(),
        high: high.to_owned(),
        unit: unit.to_owned(),
        step: None,
        grip: None,
    }
}

/// To 10, 60 and 90 foot-pounds, the first with a wrench of its own.
fn changed(others: &[(u32, Wrench)]) -> FastenerGroup {
    let mut group = head();
    group.stages = ["10", "60", "90"].map(str::to_owned).to_vec();
    group.sheet.stage_wrenches = others
        .iter()
        .map(|(stage, wrench)| StageWrench {
            stage: *stage,
            wrench: wrench.clone(),
        })
        .collect();
    group
}

fn small() -> Wrench {
    wrench("the small one", "40", "250", "in-lb")
}

#[test]
fn a_lap_goes_by_its_own_wrench_and_its_unit_and_the_change_is_told() {
    // 10 is below the 20 to 150 of the long one.
    assert!(!Sheet::of(&changed(&[])).wrong.is_empty());
    let mut bench = Bench::with(changed(&[(1, small())]));
    let run = bench.run();
    let numbers: Vec<String> = (0..3)
        .map(|lap| {
            let (number, unit) = run.number(lap).unwrap();
            format!("{number} {unit}")
        })
        .collect();
    // 10 ft-lb are 120 in-lb: twelve inches to a foot.
    assert_eq!(numbers, ["120 in-lb", "60 ft-lb", "90 ft-lb"]);
    assert_eq!(run.wrench(0).unwrap().typed, small());
    let taken_up: Vec<Option<&str>> = (0..3)
        .map(|lap| run.takes_up(lap)?.typed.name.as_deref())
        .collect();
    assert_eq!(taken_up, [None, Some("the long one"), None]);
    bench.go_on(18);
    assert!(bench.run().counts(), "{:?}", bench.run().against);
    // Once more after heat is the last lap, with the long one.
    bench.begin(Way::Again);
    let again = bench.run();
    assert_eq!(again.number(0).unwrap().0, "90");
    bench.go_on(6);
    assert!(bench.run().counts(), "{:?}", bench.run().against);
    bench.begin(Way::Loosen);
    assert!(bench.run().wrench(0).is_none() && bench.run().takes_up(1).is_none());
}

#[test]
fn once_more_goes_by_the_wrench_of_the_last_lap() {
    let huge = wrench("the bar", "50", "500", "ft-lb");
    let mut bench = Bench::with(changed(&[(1, small()), (3, huge)]));
    bench.go_on(18);
    // 90 of 500 is 18 %, below a fifth.
    let low = NoCredit::WrenchOutsideItsBand {
        lap: 2,
        place: Place::TooLow,
    };
    assert_eq!(bench.run().against, [low]);
    bench.begin(Way::Again);
    bench.go_on(6);
    let low = NoCredit::WrenchOutsideItsBand {
        lap: 0,
        place: Place::TooLow,
    };
    assert_eq!(bench.run().against, [low]);
}

#[test]
fn what_is_wrong_with_a_laps_wrench_is_told_before_the_first_tap() {
    let upside = wrench("odd", "250", "40", "in-lb");
    let coarse = Wrench {
        step: Some("0".to_owned()),
        ..small()
    };
    for (group, word) in [
        (changed(&[(1, upside)]), "stage 1: The lowest mark"),
        (changed(&[(1, coarse)]), "not above nothing"),
        (changed(&[(1, small()), (7, small())]), "there are 3 stages"),
        (changed(&[(1, small()), (0, small())]), "for stage 0"),
        (
            changed(&[(1, small()), (2, small())]),
            "lap 2 is off the scale",
        ),
    ] {
        let sheet = Sheet::of(&group);
        let said: Vec<String> = sheet
            .wrong_with(Field::Wrench)
            .map(str::to_lowercase)
            .collect();
        let word = word.to_lowercase();
        assert!(
            said.iter().any(|one| one.contains(&word)),
            "{word}: {said:?}"
        );
        assert!(sheet.plan().is_none());
    }
}

#[test]
fn an_adapter_goes_by_the_length_of_the_wrench_it_is_on() {
    let on_it = Adapter {
        wrench_length: "20 in".to_owned(),
        length: "4".to_owned(),
        turned: "0".to_owned(),
    };
    let mut group = changed(&[(1, small())]);
    group.sheet.adapter = Some(on_it.clone());
    let sheet = Sheet::of(&group);
    let said: Vec<&str> = sheet.wrong_with(Field::Wrench).collect();
    assert!(said[0].contains("the wrench's length as well"), "{said:?}");
    group.sheet.stage_wrenches[0].wrench.grip = Some("10 in".to_owned());
    let bench = Bench::with(group);
    let set = |lap: usize| bench.run().number(lap).unwrap().0.parse::<f64>().unwrap();
    // 120 × 10 ÷ 14 = 85.7 in-lb; 60 × 20 ÷ 24 = 50 ft-lb.
    assert!((set(0) - 85.7).abs() < 0.5 && (set(1) - 50.0).abs() < 0.06);
}

#[test]
fn the_builders_own_wrenches_are_held_against_each_lap() {
    let mut bench = Bench::without_a_run(changed(&[(1, small())]));
    let list = |tool: u128, wrench: &Wrench| {
        Body::WrenchListed(WrenchListed {
            tool: ToolId::from_random(tool),
            wrench: wrench.clone(),
        })
    };
    let bar = wrench("the bar", "50", "500", "ft-lb");
    bench.write(list(5, &bar));
    // Listed with more said of it: it is not another one than the group's.
    let finer = Wrench {
        step: Some("2".to_owned()),
        ..small()
    };
    bench.write(list(6, &finer));
    let wrong = bench.write(list(7, &wrench("a slip", "1", "2", "N·m")));
    bench.write(Body::Struck(Struck {
        fact: wrong,
        reason: None,
    }));
    let all = bench.all();
    let offered = all.wrenches();
    let names: Vec<&str> = offered
        .iter()
        .filter_map(|one| one.typed.name.as_deref())
        .collect();
    assert_eq!(names, ["the bar", "the small one", "the long one"]);
    assert_eq!(offered[1].typed.step.as_deref(), Some("2"));
    assert_eq!(offered[1].tool, Some(ToolId::from_random(6)));
    let group = &all.groups[0];
    let found = choices(&group.sheet, None, &offered);
    let best: Vec<Option<usize>> = found.iter().map(|one| one.best).collect();
    assert_eq!(best, [Some(1), Some(2), Some(2)]);
    let place = |lap: usize, at: usize| found[lap].lies[at].as_ref().unwrap().place;
    assert_eq!(place(0, 0), Place::OffTheScale);
    assert_eq!(place(2, 0), Place::TooLow);
    // 120 of 250 in-lb, 40 marks of 2 above the lowest.
    let lies = found[0].lies[1].as_ref().unwrap();
    assert!((lies.share - 0.48).abs() < 1e-9 && lies.off_mark.unwrap() < 1e-9);
    // Described anew it takes its own place.
    bench.write(list(5, &wrench("the bar", "5", "18", "ft-lb")));
    let all = bench.all();
    assert_eq!(
        choices(&all.groups[0].sheet, None, &all.wrenches())[0].best,
        Some(0)
    );
}
