//! What follows from the facts.

use proptest::prelude::*;

use super::deeds::{deeds, facts_of};
use super::*;
use crate::fact::samples::{Pen, fact, foreign_fact_text, limits, reading, sprayer};
use crate::fact::{Body, Fact, Struck, ToolListed};
use crate::id::{BuildId, FactId, ToolId};
use crate::journal::Journal;
use build_plan::measure::{MAIN_BEARING_BORE, MAIN_JOURNAL_DIAMETER};
use build_plan::{At, Direction, Place, Station};

fn journal(facts: impl IntoIterator<Item = Fact>) -> Journal {
    let mut journal = Journal::new(BuildId::from_random(7));
    for fact in facts {
        journal.take(fact);
    }
    journal
}

fn upright(main: u8) -> Place {
    Place::main(main)
        .station(Station::Front)
        .direction(Direction::UpAndDown)
}

fn strike(fact: FactId) -> Body {
    Body::Struck(Struck {
        fact,
        reason: Some("wrong main".to_owned()),
    })
}

fn journals_of_the_first(build: &Build) -> Vec<&Taken> {
    build
        .readings(&MAIN_JOURNAL_DIAMETER, At::Main(1))
        .collect()
}

#[test]
fn readings_come_home_to_their_main() {
    let mut pen = Pen::new(1);
    let facts = [
        pen.write(sprayer()),
        pen.write(reading("main-journal-diameter", upright(3), "2.4483")),
        pen.write(reading("main-bearing-bore", upright(3), "2.4505")),
        pen.write(reading("main-journal-diameter", upright(6), "2.4483")),
        pen.write(reading("flywheel-mood", upright(1), "2")),
    ];
    let build = fold(&journal(facts));
    assert_eq!(build.mains.len(), 5);
    let third = &build.mains[2];
    assert_eq!(third.main.label(), "main 3 of 5");
    let at_third = |measure| -> Vec<&Taken> { build.readings(measure, At::Main(3)).collect() };
    let journals = at_third(&MAIN_JOURNAL_DIAMETER);
    assert_eq!((journals.len(), at_third(&MAIN_BEARING_BORE).len()), (1, 1));
    assert_eq!(journals[0].counting().unwrap().si(), 0.062_186_82);
    assert_eq!(build.elsewhere.len(), 2);
    assert!(matches!(
        build.elsewhere[1].value,
        Err(ReadingProblem::Measure { .. })
    ));
    assert!(build.problems.is_empty());
}

#[test]
fn a_reading_that_cannot_be_read_is_shown_at_its_place_and_stops_nothing() {
    let mut pen = Pen::new(1);
    let build = fold(&journal([
        pen.write(sprayer()),
        pen.write(reading("main-journal-diameter", upright(1), "2.44.83")),
        pen.write(reading("main-journal-diameter", upright(1), "2.4483")),
    ]));
    let readings = journals_of_the_first(&build);
    let problem = readings[0].value.as_ref().unwrap_err();
    assert!(problem.to_string().contains("2.44.83"));
    assert!(readings[1].counting().is_some());
}

#[test]
fn a_struck_reading_stays_on_the_page_and_counts_for_nothing() {
    let mut pen = Pen::new(1);
    let wrong = pen.write(reading("main-journal-diameter", upright(1), "24.483"));
    let struck = pen.write(strike(wrong.id()));
    let facts = vec![pen.write(sprayer()), wrong.clone(), struck.clone()];
    let build = fold(&journal(facts.clone()));
    let taken = journals_of_the_first(&build)[0];
    assert_eq!(taken.counting(), None);
    assert_eq!(
        taken.struck.as_ref().unwrap().reason.as_deref(),
        Some("wrong main")
    );

    // Striking the strike brings it back; striking that strikes it again.
    let back = pen.write(strike(struck.id()));
    let mut facts = facts;
    facts.push(back.clone());
    let build = fold(&journal(facts.clone()));
    assert!(journals_of_the_first(&build)[0].counting().is_some());
    facts.push(pen.write(strike(back.id())));
    let build = fold(&journal(facts));
    assert!(journals_of_the_first(&build)[0].counting().is_none());
}

#[test]
fn a_strike_does_not_reach_forward_nor_strike_itself() {
    let mut pen = Pen::new(1);
    let early = pen.write(sprayer());
    let late = pen.write(sprayer());
    let forward = Fact::new(early.id(), early.device(), 0, strike(late.id()));
    let build = fold(&journal([forward, late.clone()]));
    assert!(build.engine.is_some());
    assert_eq!(build.problems.len(), 1);
    let itself = Fact::new(late.id(), late.device(), 0, strike(late.id()));
    assert!(fold(&journal([itself])).struck.is_empty());
}

#[test]
fn the_latest_description_that_can_be_used_counts() {
    let mut pen = Pen::new(1);
    let described = |cylinders, layout: &str| {
        let Body::EngineDescribed(engine) = sprayer() else {
            panic!()
        };
        Body::EngineDescribed(crate::fact::EngineDescribed {
            cylinders,
            layout: layout.to_owned(),
            mains: None,
            ..engine
        })
    };
    let build = fold(&journal([
        pen.write(described(4, "inline")),
        pen.write(described(6, "inline")),
        pen.write(described(6, "heap")),
        pen.write(described(0, "inline")),
        pen.write(described(8, "vee")),
    ]));
    assert_eq!(build.engine.unwrap().engine.cylinders(), 6);
    let said: Vec<&str> = build.problems.iter().map(|one| one.text.as_str()).collect();
    assert_eq!(said.len(), 3);
    assert!(
        said[0].contains("“heap”") && said[2].contains("90°"),
        "{said:?}"
    );
}

#[test]
fn a_word_for_the_build_that_is_not_known_is_told_and_the_usual_taken() {
    let mut pen = Pen::new(1);
    let Body::EngineDescribed(engine) = sprayer() else {
        panic!()
    };
    let described = Body::EngineDescribed(crate::fact::EngineDescribed {
        built: vec![
            ("valve_gear", "sleeve-valves".to_owned()),
            ("liners", "wet-top-flange".to_owned()),
            ("intake_valves", "0".to_owned()),
        ],
        ..engine
    });
    let build = fold(&journal([pen.write(described.clone())]));
    assert!(build.engine.is_none(), "no cylinder has no intake valve");
    let Body::EngineDescribed(mut engine) = described else {
        panic!()
    };
    engine.built.pop();
    let build = fold(&journal([pen.write(Body::EngineDescribed(engine))]));
    assert!(build.problems[0].text.contains("sleeve-valves"));
    let engine = build.engine.unwrap().engine;
    assert_eq!(engine.construction().liners.id(), "wet-top-flange");
}

#[test]
fn limits_of_one_device_follow_each_other() {
    let mut pen = Pen::new(1);
    let first = pen.write(Body::LimitsSet(limits("1.5", "2.5")));
    let second = pen.write(Body::LimitsSet(limits("1.8", "2.5")));
    let build = fold(&journal([pen.write(sprayer()), first, second.clone()]));
    assert_eq!(build.limits.len(), 1);
    assert_eq!(build.limits[0].fact, second.id());
    assert_eq!(build.mains[4].limits.len(), 1);
    // The later ones struck out, the earlier ones hold again.
    let build = fold(&journal([
        pen.write(Body::LimitsSet(limits("1.5", "2.5"))),
        second.clone(),
        pen.write(strike(second.id())),
    ]));
    assert_eq!(build.limits[0].set.low.as_deref(), Some("1.5"));
}

#[test]
fn limits_set_apart_on_two_devices_are_a_conflict_until_one_replaces_the_other() {
    let (mut here, mut there) = (Pen::new(1), Pen::new(2));
    let ours = here.write(Body::LimitsSet(limits("1.5", "2.5")));
    let theirs = there.write(Body::LimitsSet(limits("1.0", "3.0")));
    let both = fold(&journal([ours.clone(), theirs.clone()]));
    assert_eq!(both.limits.len(), 2);
    here.observe(&theirs);
    let mut decided = limits("1.5", "2.5");
    decided.replaces = vec![theirs.id()];
    let decided = here.write(Body::LimitsSet(decided));
    let build = fold(&journal([ours, theirs, decided.clone()]));
    assert_eq!(build.limits.len(), 1);
    assert_eq!(build.limits[0].fact, decided.id());
}

#[test]
fn limits_for_one_main_come_before_those_for_all() {
    let mut pen = Pen::new(1);
    let mut rear = limits("2.0", "3.3");
    rear.place = Some(crate::fact::Spot::Known(Place::main(5)));
    let build = fold(&journal([
        pen.write(sprayer()),
        pen.write(Body::LimitsSet(limits("1.5", "2.5"))),
        pen.write(Body::LimitsSet(rear)),
    ]));
    assert_eq!(build.limits.len(), 2);
    assert_eq!(build.mains[0].limits[0].set.high.as_deref(), Some("2.5"));
    assert_eq!(build.mains[4].limits[0].set.high.as_deref(), Some("3.3"));
}

#[test]
fn limits_that_make_no_window_say_why() {
    let mut pen = Pen::new(1);
    let build = fold(&journal([pen.write(Body::LimitsSet(limits("2.5", "1.5")))]));
    assert!(build.problems[0].text.contains("swap the two"));
    let build = fold(&journal(
        [pen.write(Body::LimitsSet(limits("1.5 psi", "")))],
    ));
    assert!(build.problems[0].text.contains("psi"));
    let build = fold(&journal([pen.write(Body::LimitsSet(limits("1.5", "")))]));
    assert!(build.problems.is_empty());
    assert_eq!(build.limits[0].window.as_ref().unwrap().high(), None);
}

#[test]
fn a_tool_listed_again_keeps_its_settings() {
    let mut pen = Pen::new(1);
    let tool = ToolId::from_random(1);
    let listed = |name: &str| {
        Body::ToolListed(ToolListed {
            tool,
            name: name.to_owned(),
            instrument: "bore-gauge-tenths".to_owned(),
            mark: None,
        })
    };
    let set = Body::ToolSet(crate::fact::ToolSet {
        tool,
        setting: crate::id::SettingId::from_random(1),
        set_on: crate::fact::SetOn::Standard,
        set_at: Some("2.4483".to_owned()),
        unit: Some("in".to_owned()),
        locked_at: None,
        needle: None,
    });
    let build = fold(&journal([
        pen.write(listed("bore gauge")),
        pen.write(set.clone()),
        pen.write(listed("bore gauge, borrowed")),
    ]));
    assert_eq!(build.tools.len(), 1);
    assert_eq!(build.tools[0].name, "bore gauge, borrowed");
    assert_eq!(build.tools[0].settings.len(), 1);
    let alone = fold(&journal([pen.write(set)]));
    assert!(alone.problems[0].text.contains("not on the list"));
}

fn any_facts() -> impl Strategy<Value = Vec<String>> {
    let text = prop_oneof![
        6 => fact().prop_map(|fact: Fact| fact.text().to_owned()),
        1 => foreign_fact_text(),
    ];
    let engine = Pen::new(9).write(sprayer()).text().to_owned();
    prop::collection::vec(text, 0..40).prop_map(move |mut texts| {
        texts.push(engine.clone());
        texts
    })
}

fn folded<'a>(texts: impl Iterator<Item = &'a String>) -> Build {
    let mut journal = Journal::new(BuildId::from_random(7));
    for text in texts {
        journal.take_text(text);
    }
    fold(&journal)
}

proptest! {
    #[test]
    fn any_facts_fold_and_their_order_does_not_matter(texts in any_facts()) {
        let build = folded(texts.iter());
        prop_assert_eq!(&build, &folded(texts.iter().rev()));
        prop_assert_eq!(build.mains.len(), 5);
    }

    #[test]
    fn every_reading_is_shown_somewhere(texts in any_facts()) {
        let mut journal = Journal::new(BuildId::from_random(7));
        for text in &texts {
            journal.take_text(text);
        }
        let build = fold(&journal);
        let shown: Vec<FactId> = build.readings.spots().flat_map(|spot| build.readings.at(spot))
            .chain(&build.elsewhere).map(|taken| taken.fact).collect();
        for fact in journal.facts() {
            if matches!(fact.body(), Body::Reading(_)) {
                prop_assert!(shown.contains(&fact.id()));
            }
        }
    }

    #[test]
    fn fact_by_fact_and_from_scratch_agree(deeds in deeds()) {
        let mut journal = Journal::new(BuildId::from_random(7));
        let mut folding = Folding::of(&journal);
        for fact in facts_of(&deeds) {
            journal.take(fact.clone());
            folding.append(&journal, &fact);
            prop_assert_eq!(folding.build(), &fold(&journal));
        }
    }

    #[test]
    fn facts_that_come_late_are_taken_in_as_well(texts in any_facts()) {
        let mut journal = Journal::new(BuildId::from_random(7));
        let mut folding = Folding::of(&journal);
        for text in &texts {
            let fact = Fact::read(text).unwrap();
            if journal.get(fact.id()).is_none() {
                journal.take(fact.clone());
                folding.append(&journal, &fact);
            }
        }
        prop_assert_eq!(folding.build(), &fold(&journal));
    }
}
