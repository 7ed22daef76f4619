//! What is next, what waits, and the longest way to the end.

use build_plan::step::{STEPS, Sitting};
use build_plan::{At, Measure};

use super::stale_tests::{GAUGE, Garage, spot};
use super::*;
use crate::day::Day;
use crate::fact::{
    Body, FastenerGroup, LimitsOrigin, LimitsSet, Mark, OwnMeasure, OwnStep, PartListed, PartMoved,
    PartStage, Reading, Spot, WorkMoved, WorkOrdered, WorkReturned, WorkStage, WorkWanted,
};
use crate::id::{OwnId, PartId, ToolId, WorkId};
use assembly_core::measure::Verdict;

const NOW: i64 = 1_760_000_000_000;

fn ids(states: &[&StepState]) -> Vec<&'static str> {
    states.iter().map(|one| one.step.id).collect()
}

fn waits_for<'a>(outlook: &'a Outlook, step: &str) -> &'a [WaitsFor] {
    let state = outlook.open.iter().find(|one| one.step.id == step);
    &state.unwrap_or_else(|| panic!("{step} is not open")).waits
}

fn work(step: &str) -> Body {
    Body::WorkOrdered(WorkOrdered {
        work: WorkId::from_random(1),
        what: "bore and hone".to_owned(),
        step: Some(step.to_owned()),
        shop: Some("the shop in the next town".to_owned()),
        brought: Some("block, pistons, rings".to_owned()),
        leave_alone: None,
        conditions: Some("plate on, 68 °F".to_owned()),
        price: Some("400".to_owned()),
    })
}

fn work_moved(stage: WorkStage, promised: Option<&str>) -> Body {
    Body::WorkMoved(WorkMoved {
        work: WorkId::from_random(1),
        stage,
        promised: promised.map(str::to_owned),
        words: None,
    })
}

fn pistons(stage: PartStage, promised: Option<&str>) -> [Body; 2] {
    [
        Body::PartListed(PartListed {
            part: PartId::from_random(1),
            name: "pistons, 0.030 over".to_owned(),
            supply: Some("pistons".to_owned()),
            place: None,
            size: Some("0.030".to_owned()),
            quantity: Some("4".to_owned()),
            supplier: None,
            price: None,
            lot: Some("B17".to_owned()),
        }),
        Body::PartMoved(PartMoved {
            part: PartId::from_random(1),
            stage,
            promised: promised.map(str::to_owned),
            words: None,
        }),
    ]
}

/// The teardown and inspection done.
fn inspected() -> Garage {
    let mut garage = Garage::new();
    let engine = garage.build().engine.unwrap().engine;
    for step in build_plan::step::in_order(&engine).unwrap() {
        garage.mark(step.id, None, Mark::Done);
        if step.id == "order-machine-work" {
            break;
        }
    }
    garage
}

#[test]
fn a_new_build_begins_at_the_beginning_and_says_what_the_rest_waits_for() {
    let outlook = Garage::new().build().outlook(NOW);
    assert_eq!(outlook.ready()[0].step.id, "identify-engine");
    assert!(outlook.done.is_empty() && outlook.passed_over.is_empty());
    let first = waits_for(&outlook, "first-fire");
    assert!(matches!(first, [WaitsFor::Step(step)] if step.id == "pre-fire"));
    // Machine work that nobody decided on is not on the list.
    assert!(!outlook.open.iter().any(|one| one.step.id == "line-hone"));
    for one in outlook.open {
        assert!(one.begun || !one.open.is_empty());
    }
}

#[test]
fn done_step_by_step_in_order_the_job_comes_to_its_end() {
    let mut garage = Garage::new();
    let engine = garage.build().engine.unwrap().engine;
    let order = build_plan::step::in_order(&engine).unwrap();
    for (at, step) in order.iter().enumerate() {
        if step.optional {
            continue;
        }
        if at % 12 == 0 {
            let outlook = garage.build().outlook(NOW);
            let ready = ids(&outlook.ready());
            assert!(
                ready.contains(&step.id),
                "{} waits: {:?}",
                step.id,
                waits_for(&outlook, step.id)
            );
        }
        garage.mark(step.id, None, Mark::Done);
    }
    let outlook = garage.build().outlook(NOW);
    assert!(outlook.open.is_empty(), "{:?}", ids(&outlook.ready()));
    assert!(outlook.passed_over.is_empty());
}

#[test]
fn a_sitting_that_must_not_be_split_has_to_fit_as_a_whole() {
    let mut garage = inspected();
    garage.done(&["inspect-incoming"]);
    let outlook = garage.build().outlook(NOW);
    let wash = STEPS.iter().find(|one| one.id == "wash").unwrap();
    assert!(matches!(wash.sitting, Sitting::InOneGo(_)));
    assert!(ids(&outlook.fitting(300)).contains(&"wash"));
    assert!(!ids(&outlook.fitting(299)).contains(&"wash"));
    garage.done(&["wash", "chase-threads", "trial-main-bores"]);
    let outlook = garage.build().outlook(NOW);
    // Between one bearing and the next it may rest: 40 minutes do for one.
    assert!(ids(&outlook.fitting(40)).contains(&"trial-main-bearings"));
    assert!(!ids(&outlook.fitting(39)).contains(&"trial-main-bearings"));
    let mains = outlook
        .open
        .iter()
        .find(|one| one.step.id == "trial-main-bearings");
    assert_eq!(mains.unwrap().minutes, (125, 200));
    // Gaps may be left at any time.
    assert!(ids(&outlook.fitting(10)).contains(&"ring-gaps"));
    assert!(outlook.fitting(5).is_empty());
}

#[test]
fn a_step_waits_for_a_part_on_its_way_and_asks_for_what_is_on_no_list() {
    let mut garage = inspected();
    garage.mark("hone-bores", None, Mark::Planned);
    let asks = |garage: &Garage| {
        let outlook = garage.build().outlook(NOW);
        let hone = outlook
            .open
            .into_iter()
            .find(|one| one.step.id == "hone-bores")
            .unwrap();
        (
            hone.waits,
            hone.have_you_got
                .iter()
                .map(|one| one.id)
                .collect::<Vec<_>>(),
        )
    };
    let (waits, asked) = asks(&garage);
    assert!(waits.is_empty() && asked.contains(&"pistons"), "{waits:?}");
    for body in pistons(PartStage::Ordered, Some("2026-12-04")) {
        garage.write(body);
    }
    let (waits, asked) = asks(&garage);
    assert!(!asked.contains(&"pistons"));
    let day = Day::read("2026-12-04");
    assert!(
        matches!(&waits[..], [WaitsFor::Part { promised, .. }] if *promised == day),
        "{waits:?}"
    );
    for body in pistons(PartStage::Here, None) {
        garage.write(body);
    }
    assert!(asks(&garage).0.is_empty());
    let [_, wrong] = pistons(PartStage::Ordered, Some("in spring"));
    garage.write(wrong);
    assert!(garage.build().problems[0].text.contains("in spring"));
}

#[test]
fn the_longest_way_goes_through_the_shop_and_knows_the_day_it_promised() {
    let mut garage = inspected();
    garage.mark("hone-bores", None, Mark::Planned);
    garage.write(work("hone-bores"));
    garage.write(work_moved(WorkStage::Sent, Some("2025-12-20")));
    let build = garage.build();
    let outlook = build.outlook(NOW);
    assert!(matches!(
        waits_for(&outlook, "hone-bores"),
        [WaitsFor::Shop { .. }]
    ));
    let promised = outlook.promised(&build);
    assert_eq!(promised[0].what, "bore and hone");
    assert_eq!(promised[0].holds_up[0].id, "hone-bores");
    let way = outlook.critical_path(&build, NOW, 120);
    assert!(way.stuck.is_empty());
    let hone = way
        .steps
        .iter()
        .position(|one| one.step.id == "hone-bores")
        .unwrap();
    assert_eq!(
        way.steps[hone].ends,
        Day::read("2025-12-20").unwrap().begins()
    );
    assert!(!way.steps[hone].guessed);
    assert_eq!(way.steps[hone + 1].step.id, "inspect-incoming");
    assert_eq!(
        way.steps.last().unwrap().step.phase,
        build_plan::step::Phase::Running
    );
    for pair in way.steps.windows(2) {
        assert!(pair[1].begins >= pair[0].ends);
    }
    // Back and taken, it holds nothing up any more.
    garage.write(work_moved(WorkStage::Accepted, None));
    garage.mark("hone-bores", None, Mark::Done);
    let build = garage.build();
    let outlook = build.outlook(NOW);
    assert!(outlook.promised(&build).is_empty());
    assert!(ids(&outlook.ready()).contains(&"inspect-incoming"));
}

#[test]
fn a_step_waits_for_a_result_that_is_no_longer_true_and_for_priming_that_has_run_out() {
    let mut garage = inspected();
    garage.done(&[
        "inspect-incoming",
        "wash",
        "ring-gaps",
        "ring-grooves",
        "final-clean",
        "press-pins",
    ]);
    garage.read(&build_plan::measure::BORE, At::Cylinder(1), GAUGE);
    let gap = &build_plan::measure::RING_END_GAP;
    garage.read(
        gap,
        At::Ring {
            cylinder: 3,
            ring: build_plan::Ring::Top,
        },
        0,
    );
    garage.happen("bores-honed", &[At::Cylinder(3)]);
    let outlook = garage.build().outlook(NOW);
    let waits = waits_for(&outlook, "pistons-on-rods");
    assert!(
        matches!(waits, [WaitsFor::Stale(stale)] if stale.proof.id() == gap.id),
        "{waits:?}"
    );
    let primed = garage.check("primed", None, None);
    let at = garage.journal.get(primed).unwrap().clock();
    garage.done(&["prime"]);
    let fire = |now: i64| {
        let outlook = garage.build().outlook(now);
        let run_out = |waits: &WaitsFor| matches!(waits, WaitsFor::RunOut(_));
        waits_for(&outlook, "pre-fire").iter().any(run_out)
    };
    let day = 24 * 3_600_000;
    assert!(!fire(at + 13 * day) && fire(at + 14 * day));
}

#[test]
fn steps_that_nobody_ticked_are_named_once_later_ones_are_done() {
    let mut garage = Garage::new();
    garage.done(&["crank-in"]);
    let outlook = garage.build().outlook(NOW);
    let passed: Vec<&str> = outlook.passed_over.iter().map(|one| one.id).collect();
    assert!(passed.contains(&"wash") && passed.contains(&"trial-main-bearings"));
    assert!(passed.contains(&"core-plugs") && !passed.contains(&"gallery-plugs"));
    // What is forgotten and matters still blocks: plugs before the prime.
    garage.done(&["pump-in", "pan-on", "head-bolts"]);
    let outlook = garage.build().outlook(NOW);
    assert!(
        waits_for(&outlook, "prime")
            .iter()
            .any(|one| matches!(one, WaitsFor::Step(step) if step.id == "gallery-plugs"))
    );
}

fn own(number: u128) -> (OwnId, String) {
    let own = OwnId::from_random(number);
    (own, format!("own:{own}"))
}

#[test]
fn an_own_measure_is_read_judged_and_made_stale_like_any_other() {
    let mut garage = Garage::new();
    let (own, name) = own(1);
    garage.write(Body::OwnMeasure(OwnMeasure {
        own,
        label: "squirter to piston".to_owned(),
        unit: "in".to_owned(),
        per: Some("cylinder".to_owned()),
        danger: Some(crate::fact::Danger::TooLittle),
        how: Some("clay, piston at the bottom".to_owned()),
        stale_with: vec!["pistons-moved".to_owned(), "bore".to_owned()],
    }));
    garage.write(Body::LimitsSet(LimitsSet {
        measure: name.clone(),
        place: None,
        low: Some("0.060".to_owned()),
        high: None,
        unit: "in".to_owned(),
        origin: LimitsOrigin::OwnChoice,
        origin_note: "to be safe".to_owned(),
        replaces: Vec::new(),
    }));
    for cylinder in 1..=2 {
        garage.write(Body::Reading(
            Reading {
                measure: name.clone(),
                place: spot(At::Cylinder(cylinder)).unwrap(),
                typed: "0.090".to_owned(),
                unit: "in".to_owned(),
                tool: Some(ToolId::from_random(0)),
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ));
    }
    let build = garage.build();
    assert!(build.problems.is_empty() && build.elsewhere.is_empty());
    let measure: &Measure = build.plan.measure(&name).unwrap();
    let fit = build.fit(measure, At::Cylinder(1)).unwrap();
    assert_eq!(fit.standing.verdict(), Some(Verdict::Good));
    assert_eq!(measure.label, "squirter to piston");
    garage.happen("pistons-moved", &[At::Cylinder(2)]);
    let stale = garage.build().stale();
    assert_eq!(
        (stale[0].proof.id(), stale[0].at),
        (name.as_str(), At::Cylinder(2))
    );
    // Through a measure of the plan, with the chain.
    garage.happen("bores-honed", &[At::Cylinder(1)]);
    let stale = garage.build().stale();
    let first = stale.iter().find(|one| one.at == At::Cylinder(1)).unwrap();
    assert_eq!(
        first.chain.last().unwrap(),
        "Squirter to piston goes by cylinder bore, cylinder 1."
    );
    // Defined anew with another name it is still the same one.
    garage.write(Body::OwnMeasure(OwnMeasure {
        own,
        label: "squirter".to_owned(),
        unit: "parsec".to_owned(),
        per: None,
        danger: None,
        how: None,
        stale_with: Vec::new(),
    }));
    let build = garage.build();
    assert!(build.problems[0].text.contains("parsec"));
    assert_eq!(
        build.plan.measure(&name).unwrap().label,
        "squirter to piston"
    );
}

#[test]
fn an_own_step_waits_and_is_waited_for_and_may_not_go_in_circles() {
    let mut garage = Garage::new();
    let (id, name) = own(2);
    let step = |after: &str, before: &str| {
        Body::OwnStep(OwnStep {
            own: id,
            label: "paint the block".to_owned(),
            per: None,
            after: vec![after.to_owned()],
            before: vec![before.to_owned()],
            proves: Vec::new(),
            minutes: Some(45),
            in_one_go: Some("The second coat goes on wet.".to_owned()),
            caution: Some("Fumes: doors open.".to_owned()),
            stale_with: Vec::new(),
        })
    };
    garage.write(step("wash", "crank-in"));
    let outlook = garage.build().outlook(NOW);
    assert!(matches!(waits_for(&outlook, &name), [WaitsFor::Step(step)] if step.id == "wash"));
    let on_paint = |waits: &WaitsFor| matches!(waits, WaitsFor::Step(step) if step.id == name);
    assert!(waits_for(&outlook, "crank-in").iter().any(on_paint));
    let paint = garage.build().plan.step(&name).unwrap();
    assert!(paint.can_hurt() && paint.minutes == (45, 45));
    garage.write(step("crank-in", "wash"));
    let build = garage.build();
    let way = build.outlook(NOW).critical_path(&build, NOW, 60);
    assert!(way.stuck.iter().any(|one| one.id == name));
}

#[test]
fn a_group_of_fasteners_is_a_check_that_becomes_stale() {
    let mut garage = Garage::new();
    let (id, name) = own(3);
    garage.write(Body::FastenerGroup(FastenerGroup {
        own: id,
        label: "squirter bolts".to_owned(),
        per: Some("cylinder".to_owned()),
        bolts: 1,
        size: Some("M6 × 12".to_owned()),
        lubricant: Some("dry, thread locker".to_owned()),
        stages: vec!["9 N·m".to_owned()],
        source: Some("page 12".to_owned()),
        stale_with: vec!["pistons-moved".to_owned()],
        sheet: Box::default(),
    }));
    garage.check(&name, None, None);
    assert_eq!(garage.build().plan.fasteners().count(), 1);
    garage.happen("pistons-moved", &[At::Cylinder(4)]);
    let stale = garage.build().stale();
    assert_eq!(
        (stale[0].proof.id(), stale[0].at),
        (name.as_str(), At::Cylinder(4))
    );
    assert!(garage.build().problems.is_empty());
}

#[test]
fn wanted_and_received_stand_side_by_side_with_what_was_measured_at_home() {
    let mut garage = Garage::new();
    garage.write(work("hone-bores"));
    let wanted = |place: Option<At>, low: &str, high: &str| {
        Body::WorkWanted(WorkWanted {
            work: WorkId::from_random(1),
            measure: "bore".to_owned(),
            place: place.and_then(spot),
            low: Some(low.to_owned()),
            high: Some(high.to_owned()),
            unit: "in".to_owned(),
        })
    };
    garage.write(wanted(None, "2.4495", "2.4505"));
    garage.write(wanted(Some(At::Cylinder(4)), "2.4595", "2.4605"));
    let back = |place: At, typed: &str| {
        Body::WorkReturned(WorkReturned {
            work: WorkId::from_random(1),
            measure: "bore".to_owned(),
            place: Spot::Known(build_plan::Place::of(place)),
            typed: typed.to_owned(),
            unit: "in".to_owned(),
        })
    };
    garage.write(back(At::Cylinder(1), "2.4500"));
    garage.write(back(At::Cylinder(2), "2.4510"));
    garage.write(back(At::Cylinder(4), "2.4600"));
    garage.write(back(At::Cylinder(3), "about right"));
    garage.read(&build_plan::measure::BORE, At::Cylinder(1), GAUGE);
    let build = garage.build();
    let order = &build.bought.work[0];
    let within: Vec<Option<bool>> = order.lines[0]
        .returned
        .iter()
        .map(|one| one.within)
        .collect();
    assert_eq!(within, [Some(true), Some(false), None]);
    assert_eq!(order.lines[1].returned[0].within, Some(true));
    let side = build.side_by_side(order);
    // Each cylinder once: three by the line for all, the fourth by its own.
    assert_eq!(side.len(), 4);
    assert_eq!(side[0].at, At::Cylinder(1));
    let own = side[0].own.as_ref().unwrap();
    assert!(matches!(
        own.verdict,
        Verdict::Good | Verdict::TooCloseToCall
    ));
    assert!(side[1].own.is_none() && side[1].returned.len() == 1);
    // The shop's 2.4500 agrees with the gauge; elsewhere nothing was measured.
    assert_eq!((side[0].apart, side[1].apart), (Some(false), None));
    garage.write(back(At::Cylinder(1), "2.4600"));
    garage.write(Body::WorkWanted(WorkWanted {
        work: WorkId::from_random(1),
        measure: "bore-taper".to_owned(),
        place: None,
        low: None,
        high: Some("0.0100".to_owned()),
        unit: "in".to_owned(),
    }));
    garage.read(&build_plan::measure::BORE, At::Cylinder(1), GAUGE);
    let build = garage.build();
    let side = build.side_by_side(&build.bought.work[0]);
    assert_eq!(side[0].apart, Some(true), "ten thousandths off");
    // A taper is worked out from the readings of the bore.
    let taper = side.iter().find(|row| row.measure.id == "bore-taper");
    assert_eq!(taper.unwrap().own.as_ref().unwrap().verdict, Verdict::Good);
    garage.write(Body::WorkReturned(WorkReturned {
        work: WorkId::from_random(9),
        measure: "bore".to_owned(),
        place: Spot::Known(build_plan::Place::of(At::Cylinder(1))),
        typed: "1".to_owned(),
        unit: "in".to_owned(),
    }));
    assert!(garage.build().problems[0].text.contains("not on the order"));
}
