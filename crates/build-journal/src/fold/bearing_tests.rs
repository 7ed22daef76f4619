//! A main bearing from readings to verdict.

use super::*;
use crate::fact::samples::{Pen, limits, sprayer};
use crate::fact::{Body, Fact, Reading, SetOn, Spot, Struck, ToolListed, ToolSet};
use crate::id::{BuildId, FactId, SettingId, ToolId};
use crate::journal::Journal;
use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::measure::Verdict;
use assembly_core::quantity::Si;
use build_plan::{Direction, Place, Station};

const THOU: f64 = 0.0254e-3;

/// A journal being written, with a micrometer and a bore gauge on the bench.
struct Bench {
    pen: Pen,
    facts: Vec<Fact>,
    micrometer: ToolId,
    gauge: ToolId,
    strip: ToolId,
}

impl Bench {
    fn new() -> Self {
        let mut bench = Self {
            pen: Pen::new(1),
            facts: Vec::new(),
            micrometer: ToolId::from_random(1),
            gauge: ToolId::from_random(2),
            strip: ToolId::from_random(3),
        };
        bench.write(sprayer());
        for (tool, name, instrument) in [
            (
                bench.micrometer,
                "two-inch micrometer",
                "outside-micrometer-tenths",
            ),
            (bench.gauge, "bore gauge", "bore-gauge-tenths"),
            (bench.strip, "strip", "plastic-gauge-strip"),
        ] {
            bench.write(Body::ToolListed(ToolListed {
                tool,
                name: name.to_owned(),
                instrument: instrument.to_owned(),
                mark: None,
            }));
        }
        bench
    }

    fn write(&mut self, body: Body) -> FactId {
        let fact = self.pen.write(body);
        self.facts.push(fact.clone());
        fact.id()
    }

    fn read(&mut self, measure: &str, place: Place, typed: &str, tool: Option<ToolId>) -> FactId {
        self.write(Body::Reading(
            Reading {
                measure: measure.to_owned(),
                place: Spot::Known(place),
                typed: typed.to_owned(),
                unit: "in".to_owned(),
                tool,
                setting: None,
                temperature: None,
                condition: None,
                keyed: None,
            }
            .into(),
        ))
    }

    fn journal(&mut self, main: u8, typed: &str) -> FactId {
        let tool = Some(self.micrometer);
        self.read("main-journal-diameter", upright(main), typed, tool)
    }

    fn bore(&mut self, main: u8, typed: &str) -> FactId {
        let tool = Some(self.gauge);
        self.read("main-bearing-bore", upright(main), typed, tool)
    }

    /// Zeroes the bore gauge in the micrometer, so that its needle is read.
    fn zero_gauge(&mut self, set_at: Option<&str>, locked_at: Option<FactId>) {
        let set = ToolSet {
            tool: self.gauge,
            setting: SettingId::from_random(9),
            set_on: SetOn::Tool(self.micrometer),
            set_at: set_at.map(str::to_owned),
            unit: Some("in".to_owned()),
            locked_at,
            needle: Some(NeedleSense::ClockwiseIsSmaller),
        };
        self.write(Body::ToolSet(set));
    }

    fn limits(&mut self, low: &str, high: &str) -> FactId {
        self.write(Body::LimitsSet(limits(low, high)))
    }

    fn build(&self) -> Build {
        let mut journal = Journal::new(BuildId::from_random(7));
        for fact in &self.facts {
            journal.take(fact.clone());
        }
        fold(&journal)
    }

    fn first(&self) -> MainBearing {
        self.build().mains.swap_remove(0)
    }
}

fn upright(main: u8) -> Place {
    Place::main(main)
        .station(Station::Front)
        .direction(Direction::UpAndDown)
}

fn missing(bearing: &MainBearing) -> Vec<String> {
    match &bearing.standing {
        Standing::Open(missing) => missing.iter().map(ToString::to_string).collect(),
        Standing::Judged(advice) => panic!("judged {:?}", advice.assessment),
    }
}

#[test]
fn a_bearing_in_the_middle_of_its_limits_is_good() {
    let mut bench = Bench::new();
    let at = bench.journal(1, "2.4500");
    bench.zero_gauge(None, Some(at));
    bench.bore(1, "-0.0022");
    bench.limits("1.5", "3.0");
    let bearing = bench.first();
    let clearance = bearing.clearance().unwrap();
    assert!((clearance.least.value().to_si() - 2.2 * THOU).abs() < 1e-9);
    assert_eq!(bearing.standing.verdict(), Some(Verdict::Good));
    assert!(bearing.findings.is_empty());
    let practice = bearing.common_practice.unwrap();
    assert!((practice.high().unwrap() - 2.45 * THOU).abs() < 1e-9);
}

#[test]
fn a_tight_bearing_is_bad_and_says_by_how_much() {
    let mut bench = Bench::new();
    let at = bench.journal(1, "2.4500");
    bench.zero_gauge(None, Some(at));
    bench.bore(1, "-0.0009");
    bench.limits("1.5", "3.0");
    let bearing = bench.first();
    assert_eq!(bearing.standing.verdict(), Some(Verdict::Bad));
    let Standing::Judged(advice) = &bearing.standing else {
        panic!()
    };
    let tight = advice.tight_by.as_ref().unwrap().value().to_si();
    assert!((tight - 0.6 * THOU).abs() < 1e-9);
    let said = advice.sentences(assembly_core::quantity::unit("thou").unwrap());
    assert!(said[0].starts_with("Tight by 0.6"), "{said:?}");
}

#[test]
fn the_micrometers_zero_cancels_when_the_gauge_was_zeroed_in_it() {
    let doubt = |bench: &Bench| {
        let bearing = bench.first();
        bearing.clearance().unwrap().least.give_or_take().to_si()
    };
    let mut locked = Bench::new();
    let at = locked.journal(1, "2.4500");
    locked.zero_gauge(None, Some(at));
    locked.bore(1, "-0.0022");

    let mut typed = Bench::new();
    typed.journal(1, "2.4500");
    typed.zero_gauge(Some("2.4500"), None);
    typed.bore(1, "-0.0022");

    let mut apart = Bench::new();
    apart.journal(1, "2.4500");
    apart.bore(1, "2.4522");
    assert!(doubt(&locked) <= doubt(&typed));
    assert!(doubt(&typed) < doubt(&apart));
    // What is left is the micrometer's feel, the gauge's feel and setting: common practice.
    assert!(
        (0.15..0.35).contains(&(doubt(&locked) / THOU)),
        "{}",
        doubt(&locked) / THOU
    );
    for bench in [&locked, &typed, &apart] {
        let least = bench.first().clearance().unwrap().least.value().to_si();
        assert!((least - 2.2 * THOU).abs() < 1e-9);
    }
}

#[test]
fn a_gauge_zeroed_at_one_journal_measures_the_other_bearings_too() {
    let mut bench = Bench::new();
    let at = bench.journal(1, "2.4500");
    bench.zero_gauge(None, Some(at));
    bench.bore(2, "-0.0020");
    bench.journal(2, "2.4501");
    let second = bench.build().mains.swap_remove(1);
    let least = second.clearance().unwrap().least.value().to_si();
    assert!((least - 1.9 * THOU).abs() < 1e-9);
}

#[test]
fn what_is_missing_is_named_and_never_passes() {
    let mut bench = Bench::new();
    assert_eq!(missing(&bench.first())[0], "Not measured yet.");
    bench.limits("1.5", "3.0");
    assert_eq!(missing(&bench.first()), ["Not measured yet."]);
    bench.journal(1, "2.4500");
    assert!(missing(&bench.first())[0].starts_with("The bore is not measured"));
    let joint = Place::main(1).direction(Direction::JointLeft);
    let gauge = Some(bench.gauge);
    bench.read("main-bearing-bore", joint, "2.4530", gauge);
    assert!(missing(&bench.first())[0].starts_with("The bore is not measured"));
    bench.bore(1, "2.4522");
    assert_eq!(bench.first().standing.verdict(), Some(Verdict::Good));
}

#[test]
fn without_limits_there_is_a_clearance_but_no_verdict() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4500");
    bench.bore(1, "2.4522");
    let bearing = bench.first();
    assert!(bearing.clearance().is_some());
    assert!(missing(&bearing)[0].starts_with("No limits are set"));
    // Limits that were typed and cannot be used are no limits.
    bench.limits("3.0", "1.5");
    assert!(missing(&bench.first())[0].contains("swap the two"));
}

#[test]
fn limits_that_disagree_give_no_verdict_and_agreeing_ones_do() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4500");
    bench.bore(1, "2.4522");
    bench.limits("1.5", "3.0");
    let mut tablet = Pen::new(2);
    bench
        .facts
        .push(tablet.write(Body::LimitsSet(limits("1.50", "3.0"))));
    assert!(bench.first().standing.verdict().is_some());
    bench
        .facts
        .push(tablet.write(Body::LimitsSet(limits("1.0", "2.0"))));
    assert!(missing(&bench.first())[0].contains("do not agree"));
}

#[test]
fn a_reading_without_a_known_tool_gives_no_verdict() {
    let mut bench = Bench::new();
    bench.limits("1.5", "3.0");
    bench.journal(1, "2.4500");
    bench.read("main-bearing-bore", upright(1), "2.4522", None);
    assert!(missing(&bench.first())[0].contains("not said with which tool"));
    let lost = Some(ToolId::from_random(77));
    let fact = bench.read("main-bearing-bore", upright(1), "2.4522", lost);
    assert!(
        missing(&bench.first())
            .iter()
            .any(|said| said.contains("not known here"))
    );
    // Struck out, they no longer stand in the way.
    for fact in [fact, bench.facts[bench.facts.len() - 2].id()] {
        bench.write(Body::Struck(Struck { fact, reason: None }));
    }
    bench.bore(1, "2.4522");
    assert!(bench.first().standing.verdict().is_some());
}

#[test]
fn a_needle_without_the_size_it_was_zeroed_at_gives_no_number() {
    let mut bench = Bench::new();
    bench.limits("1.5", "3.0");
    bench.journal(1, "2.4500");
    bench.zero_gauge(None, None);
    bench.bore(1, "-0.0022");
    let bearing = bench.first();
    assert!(bearing.clearance().is_none());
    assert!(missing(&bearing)[0].contains("at which size"));
}

#[test]
fn a_strip_alone_is_judged_as_a_strip() {
    let mut bench = Bench::new();
    bench.limits("1.0", "4.0");
    let strip = Some(bench.strip);
    bench.read("main-oil-clearance", Place::main(1), "0.0025", strip);
    let bearing = bench.first();
    assert!(bearing.by_size.is_none());
    assert!(bearing.standing.verdict().is_some());
    let doubt = bearing.clearance().unwrap().least.give_or_take().to_si();
    assert!(doubt > 0.3 * THOU, "{}", doubt / THOU);
}

#[test]
fn bore_and_journal_rule_and_a_strip_far_off_is_pointed_out() {
    let mut bench = Bench::new();
    bench.limits("1.0", "3.0");
    let at = bench.journal(1, "2.4500");
    bench.zero_gauge(None, Some(at));
    bench.bore(1, "-0.0020");
    let strip = Some(bench.strip);
    bench.read("main-oil-clearance", Place::main(1), "0.0020", strip);
    assert!(bench.first().findings.is_empty());
    bench.read(
        "main-oil-clearance",
        Place::main(1).station(Station::Rear),
        "0.0045",
        strip,
    );
    let tighter = bench.read("main-oil-clearance", Place::main(1), "0.0001", strip);
    let bearing = bench.first();
    assert!((bearing.clearance().unwrap().least.value().to_si() - 2.0 * THOU).abs() < 1e-9);
    assert!(
        bearing
            .findings
            .iter()
            .any(|one| one.text.contains("differ by")),
        "{:?}",
        bearing.findings
    );
    bench.write(Body::Struck(Struck {
        fact: tighter,
        reason: None,
    }));
    assert!(
        !bench
            .first()
            .findings
            .iter()
            .any(|one| one.text.contains("differ by"))
    );
}

#[test]
fn repeats_of_a_place_are_averaged_and_make_it_surer() {
    let mut bench = Bench::new();
    let at = bench.journal(1, "2.4500");
    bench.zero_gauge(None, Some(at));
    bench.bore(1, "-0.0022");
    let once = bench
        .first()
        .clearance()
        .unwrap()
        .least
        .give_or_take()
        .to_si();
    for typed in ["-0.0021", "-0.0023"] {
        bench.bore(1, typed);
        bench.journal(1, "2.4500");
    }
    let bearing = bench.first();
    let clearance = bearing.clearance().unwrap();
    assert!((clearance.least.value().to_si() - 2.2 * THOU).abs() < 1e-9);
    assert_eq!(clearance.bore_out_of_round, None);
    assert!(clearance.least.give_or_take().to_si() < once);
}

#[test]
fn a_slip_among_repeats_is_asked_about() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4500");
    bench.journal(1, "2.4750");
    let bearing = bench.first();
    let text = &bearing.findings[0].text;
    assert!(
        text.contains("main 1, front of the oil hole, up and down"),
        "{text}"
    );
}

#[test]
fn taper_and_out_of_round_come_from_stations_and_directions() {
    let mut bench = Bench::new();
    let micrometer = Some(bench.micrometer);
    for (station, direction, typed) in [
        (Station::Front, Direction::UpAndDown, "2.4500"),
        (Station::Front, Direction::Across, "2.4502"),
        (Station::Rear, Direction::UpAndDown, "2.4494"),
        (Station::Rear, Direction::Across, "2.4494"),
    ] {
        let place = Place::main(1).station(station).direction(direction);
        bench.read("main-journal-diameter", place, typed, micrometer);
    }
    bench.bore(1, "2.4522");
    let bearing = bench.first();
    let clearance = bearing.clearance().unwrap();
    let thou = |value: &Option<assembly_core::measure::Measured<uom::si::f64::Length>>| {
        value.as_ref().unwrap().value().to_si() / THOU
    };
    assert!((thou(&clearance.journal_taper) - 0.7).abs() < 1e-6);
    assert!((thou(&clearance.journal_out_of_round) - 0.2).abs() < 1e-6);
    assert!((clearance.least.value().to_si() / THOU - 2.0).abs() < 1e-6);
    assert!(
        bearing
            .findings
            .iter()
            .any(|one| one.text.contains("tapers"))
    );
}

#[test]
fn a_bore_along_the_joint_counts_for_nothing_and_says_so() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4500");
    let gauge = Some(bench.gauge);
    let across = Place::main(1)
        .station(Station::Front)
        .direction(Direction::Across);
    bench.read("main-bearing-bore", across, "2.4560", gauge);
    let bearing = bench.first();
    assert!(bearing.clearance().is_none());
    assert!(bearing.findings[0].text.contains("along the joint"));
}

#[test]
fn a_journal_bigger_than_its_bore_is_called_interference() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4522");
    bench.bore(1, "2.4500");
    bench.limits("1.5", "3.0");
    let bearing = bench.first();
    assert!(bearing.findings[0].text.contains("interference"));
    assert_eq!(bearing.standing.verdict(), Some(Verdict::Bad));
}

#[test]
fn tools_set_on_each_other_in_a_ring_do_not_hang() {
    let mut bench = Bench::new();
    for (tool, on) in [
        (bench.micrometer, bench.gauge),
        (bench.gauge, bench.micrometer),
    ] {
        for _ in 0..20 {
            let set = ToolSet {
                tool,
                setting: SettingId::from_random(9),
                set_on: SetOn::Tool(on),
                set_at: None,
                unit: None,
                locked_at: None,
                needle: None,
            };
            bench.write(Body::ToolSet(set));
        }
    }
    bench.journal(1, "2.4500");
    bench.bore(1, "2.4522");
    assert!(bench.first().clearance().is_some());
}

#[test]
fn a_needle_zeroed_at_its_own_reading_does_not_hang() {
    let mut bench = Bench::new();
    bench.journal(1, "2.4500");
    let setting = SettingId::from_random(9);
    let own = bench.write(Body::Reading(
        Reading {
            measure: "main-bearing-bore".to_owned(),
            place: Spot::Known(upright(1)),
            typed: "-0.0022".to_owned(),
            unit: "in".to_owned(),
            tool: Some(bench.gauge),
            setting: Some(setting),
            temperature: None,
            condition: None,
            keyed: None,
        }
        .into(),
    ));
    bench.zero_gauge(None, Some(own));
    let bearing = bench.first();
    assert!(bearing.clearance().is_none());
    assert!(missing(&bearing)[0].contains("at which size"));
}
