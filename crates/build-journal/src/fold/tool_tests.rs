//! Tools tried out, and tools of one name.

use super::written::{Written, book};
use super::*;
use crate::fact::samples::{Pen, limits, sprayer};
use crate::fact::{Body, Struck, ToolListed, ToolTried};
use crate::id::{FactId, ToolId};
use assembly_core::measure::Verdict;
use build_plan::{Direction, Place, Station};

const MICROMETER: u128 = 1;
const GAUGE: u128 = 2;
const OTHER: u128 = 3;

book! {
    /// A main that is good, and the tools it was measured with.
    Bench
}

impl Bench {
    /// A main that is good: 2.2 thou within 1.5 to 3.
    fn new() -> Self {
        let mut bench = Self(Written::of(sprayer(), &[]));
        bench.list(MICROMETER, "micrometer", "outside-micrometer-proved", None);
        bench.list(GAUGE, "two-point gauge", "bore-gauge-tenths", None);
        bench.write(Body::LimitsSet(limits("1.5", "3.0")));
        bench.read("main-journal-diameter", "2.4500", MICROMETER);
        bench.read("main-bearing-bore", "2.4522", GAUGE);
        bench
    }

    fn read(&mut self, measure: &str, typed: &str, tool: u128) {
        let place = Place::main(1)
            .station(Station::Front)
            .direction(Direction::UpAndDown);
        self.reads((measure, place), (typed, "in"), (tool, None), None);
    }

    fn try_out(&mut self, readings: &[&str], unit: &str) -> FactId {
        self.write(Body::ToolTried(ToolTried {
            tool: ToolId::from_random(MICROMETER),
            readings: readings.iter().map(|one| (*one).to_owned()).collect(),
            unit: unit.to_owned(),
            words: None,
        }))
    }

    fn verdict(&self) -> Option<Verdict> {
        self.folding.build().mains[0].standing.verdict()
    }

    fn give_or_take(&self) -> f64 {
        let least = &self.folding.build().mains[0].clearance().unwrap().least;
        least.estimate().deviation()
    }

    fn problems(&self) -> Vec<&str> {
        let problems = self.folding.build().problems.iter();
        problems.map(|one| one.text.as_str()).collect()
    }

    fn names(&self) -> Vec<&str> {
        let tools = self.folding.build().tools.iter();
        tools.map(|tool| tool.name.as_str()).collect()
    }
}

const WILD: [&str; 5] = ["2.4500", "2.4512", "2.4489", "2.4506", "2.4493"];

#[test]
fn a_verdict_rests_on_the_newest_trial_of_its_tool_and_comes_back_when_it_is_struck() {
    let mut bench = Bench::new();
    assert_eq!(bench.verdict(), Some(Verdict::Good));
    let common = bench.give_or_take();
    let trial = bench.try_out(&WILD, "in");
    assert_eq!(bench.verdict(), Some(Verdict::TooCloseToCall));
    let build = bench.folding.build();
    let micrometer = build.tools.iter().find(|tool| tool.trials.len() == 1);
    let (counts, shows) = micrometer.unwrap().tried().unwrap();
    assert_eq!(counts.fact, trial);
    // Differences from the mean 0, 12, −11, 6, −7 tenths: √(350 ÷ 4) = 9.35 tenths.
    assert!((shows.repeat - 9.354e-4 * 0.0254).abs() < 1e-8);
    assert_eq!(shows.degrees_of_freedom, 4.0);

    let steady = ["2.4500", "2.4501", "2.4500", "2.4500", "2.4501"];
    let second = bench.try_out(&steady, "in");
    assert_eq!(bench.verdict(), Some(Verdict::Good));
    bench.write(Body::Struck(Struck {
        fact: second,
        reason: None,
    }));
    assert_eq!(bench.verdict(), Some(Verdict::TooCloseToCall));
    bench.write(Body::Struck(Struck {
        fact: trial,
        reason: None,
    }));
    assert_eq!(bench.verdict(), Some(Verdict::Good));
    assert!((bench.give_or_take() - common).abs() < 1e-15);
}

#[test]
fn readings_all_alike_leave_what_the_last_digit_hides() {
    let mut bench = Bench::new();
    bench.try_out(&["2.450"; 5], "in");
    let alike = bench.give_or_take();
    // A thou read to the last digit hides 0.29 of a thou, and the tool's zero is
    // still in doubt.
    assert!(alike > 0.000_29 * 0.0254, "{alike}");
    assert!(bench.problems().is_empty());
}

#[test]
fn a_trial_of_a_tool_tried_a_thousand_times_is_surer_than_one_of_five() {
    let mut bench = Bench::new();
    let close = ["2.4500", "2.4504", "2.4496", "2.4503", "2.4497"];
    bench.try_out(&close, "in");
    let few = bench.folding.build().mains[0].clone();
    let many: Vec<&str> = close.iter().copied().cycle().take(1000).collect();
    bench.try_out(&many, "in");
    let surer = bench.folding.build().mains[0].clone();
    let degrees = |main: &MainBearing| {
        let least = main.clearance().unwrap().least.clone();
        least.estimate().degrees_of_freedom(&main.sources)
    };
    assert!(degrees(&few) < 40.0 && degrees(&surer) > 900.0);
}

#[test]
fn too_few_readings_say_how_many_more_and_change_nothing() {
    let mut bench = Bench::new();
    let common = bench.give_or_take();
    bench.try_out(&WILD[..4], "in");
    assert!((bench.give_or_take() - common).abs() < 1e-15);
    assert_eq!(
        bench.problems(),
        [
            "A trial of the micrometer does not count: 4 readings say too little: take one more of the same place."
        ]
    );
    assert_eq!(still_wanted(0), "take 5 readings of the same place");
    assert!(still_wanted(1).ends_with("take 4 more of the same place"));
    assert!(still_wanted(2).ends_with("take 3 more of the same place"));
}

#[test]
fn a_trial_that_cannot_be_read_says_which_reading_and_leaves_the_one_before_in_force() {
    let mut bench = Bench::new();
    bench.try_out(&WILD, "in");
    bench.try_out(&["2.45", "2.45", "abc", "2.45", "2.45"], "in");
    bench.try_out(&WILD, "psi");
    bench.try_out(&WILD, "furlong");
    assert_eq!(bench.verdict(), Some(Verdict::TooCloseToCall));
    let problems = bench.problems();
    assert!(problems[0].contains("reading 3"), "{problems:?}");
    assert!(problems[1].contains("“psi”"), "{problems:?}");
    assert!(problems[2].contains("“furlong”"), "{problems:?}");
}

#[test]
fn a_trial_of_a_tool_that_is_not_there_is_named() {
    let mut bench = Bench::new();
    bench.write(Body::ToolTried(ToolTried {
        tool: ToolId::from_random(99),
        readings: WILD.map(str::to_owned).to_vec(),
        unit: "in".to_owned(),
        words: None,
    }));
    assert_eq!(
        bench.problems(),
        ["A tool was tried out that is not on the list."]
    );
    bench.list(MICROMETER, "micrometer", "a-thing-of-tomorrow", None);
    bench.try_out(&WILD, "in");
    let problems = bench.problems();
    assert!(problems[1].contains("does not know"), "{problems:?}");
}

#[test]
fn two_tools_of_one_name_are_told_apart_whatever_order_they_came_in() {
    let mut bench = Bench::new();
    bench.list(OTHER, " Micrometer", "outside-micrometer-proved", None);
    let names = bench.names();
    assert_eq!(names[0], "micrometer, number 1");
    assert_eq!(names[2], " Micrometer, number 2");
    // The mark tells them apart by itself.
    bench.list(
        OTHER,
        "micrometer",
        "outside-micrometer-proved",
        Some("2 to 3 in"),
    );
    assert_eq!(
        bench.names(),
        ["micrometer", "two-point gauge", "micrometer (2 to 3 in)"]
    );
    // So does the kind.
    bench.list(OTHER, "micrometer", "bore-gauge-tenths", None);
    let names = bench.names();
    assert!(names[0].starts_with("micrometer, outside micrometer"));
    assert!(names[2].starts_with("micrometer, dial bore gauge"));
    // Another device listed one of its own weeks later: the days differ.
    let mut late = Pen::new(2);
    late.wait_days(30);
    let fact = late.write(Body::ToolListed(ToolListed {
        tool: ToolId::from_random(77),
        name: "two-point gauge".to_owned(),
        instrument: "bore-gauge-tenths".to_owned(),
        mark: None,
    }));
    bench.journal.take(fact);
    let names: Vec<String> = fold(&bench.journal)
        .tools
        .into_iter()
        .map(|tool| tool.name)
        .collect();
    assert!(
        names.contains(&"two-point gauge, listed 2025-06-15".to_owned()),
        "{names:?}"
    );
    let all: std::collections::BTreeSet<&String> = names.iter().collect();
    assert_eq!(all.len(), names.len(), "{names:?}");
}

#[test]
fn a_name_is_one_name_whatever_its_capitals_and_blanks() {
    assert!(is_one_name(" Bore  gauge", "bore gauge "));
    assert!(!is_one_name("bore gauge", "bore gauge 2"));
}
