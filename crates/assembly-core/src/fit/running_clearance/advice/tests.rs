//! Advice on clearances that are tight, loose, good and too close to call.

use proptest::prelude::*;

use super::*;
use crate::fit::running_clearance::{Station, from_stations};
use crate::measure::Origin;
use crate::quantity::unit;
use crate::tool::INSTRUMENTS;

const THOU: f64 = 0.000_025_4;

fn clearance(least: f64, greatest: f64, feel: f64, zero: f64) -> (RunningClearance, Sources) {
    let mut sources = Sources::new();
    let shared = sources.fresh("micrometer", Origin::SharedZero);
    let bore = |thou: f64, sources: &mut Sources| {
        Measured::exact(Length::from_si(0.06 + thou * THOU))
            .with(
                sources.fresh("bore gauge", Origin::Repeat),
                Length::from_si(feel * THOU),
            )
            .with(shared, Length::from_si(zero * THOU))
    };
    let station = Station {
        bores: vec![bore(least, &mut sources), bore(greatest, &mut sources)],
        journals: vec![Measured::exact(Length::from_si(0.06))],
        ..Station::default()
    };
    (from_stations(&[station]).unwrap(), sources)
}

fn advice(least: f64, greatest: f64, feel: f64, zero: f64) -> Advice {
    let (clearance, sources) = clearance(least, greatest, feel, zero);
    let window = Window::new(Some(1.5 * THOU), Some(3.0 * THOU)).unwrap();
    advise(&clearance, 1, &window, &sources, INSTRUMENTS)
}

fn said(advice: &Advice) -> Vec<String> {
    advice.sentences(unit("thou").unwrap())
}

#[test]
fn a_tight_bearing_is_tight_by_so_much() {
    let advice = advice(0.9, 1.0, 0.2, 0.0);
    assert_eq!(advice.assessment.verdict, Verdict::Bad);
    assert_eq!(said(&advice), ["Tight by 0.6 ± 0.2 thou."]);
}

#[test]
fn a_loose_bearing_is_loose_by_so_much() {
    let advice = advice(3.7, 4.0, 0.2, 0.0);
    assert_eq!(said(&advice), ["Loose by 1.0 ± 0.2 thou."]);
}

#[test]
fn a_bearing_that_is_both_says_both() {
    let advice = advice(1.0, 4.0, 0.2, 0.0);
    assert_eq!(
        said(&advice),
        ["Tight by 0.5 ± 0.2 thou.", "Loose by 1.0 ± 0.2 thou."]
    );
}

#[test]
fn a_good_bearing_says_how_much_is_left() {
    let advice = advice(2.1, 2.3, 0.2, 0.0);
    assert_eq!(
        said(&advice),
        ["Good: 0.6 thou above the low limit, give or take 0.2 thou."]
    );
    assert!(advice.tools.is_empty());
}

#[test]
fn what_more_readings_can_settle_they_are_asked_for() {
    let advice = advice(1.8, 2.0, 0.3, 0.0);
    assert_eq!(
        said(&advice),
        [
            "Too close to call: 0.3 thou above the low limit, give or take 0.3 thou.",
            "The bore gauge makes 100 % of the give-or-take, most of it by its feel.",
            "2 more readings of each place would settle it, if their mean stays where it is.",
        ]
    );
}

#[test]
fn what_more_readings_cannot_settle_another_tool_may() {
    let advice = advice(1.85, 2.0, 0.05, 0.3);
    assert_eq!(advice.more, MoreReadings::WouldNot);
    let said = said(&advice);
    assert_eq!(
        said[1],
        "The micrometer makes 97 % of the give-or-take, most of it by its zero."
    );
    assert!(
        said[2].starts_with("More readings would not settle it. This would: dial bore gauge"),
        "{}",
        said[2]
    );
}

#[test]
fn on_the_very_limit_no_tool_is_promised() {
    let advice = advice(1.5, 2.0, 0.05, 0.3);
    assert!(advice.tools.is_empty());
    assert!(said(&advice)[2].contains("too near the limit"));
}

#[test]
fn an_exact_clearance_has_no_doubt_to_explain() {
    let advice = advice(2.0, 2.0, 0.0, 0.0);
    assert!(advice.blame.is_none());
    assert_eq!(said(&advice), ["Good: 0.5 thou above the low limit."]);
}

proptest! {
    #[test]
    fn advice_on_any_clearance_is_plain_words(
        least in -5.0..8.0_f64,
        more in 0.0..3.0_f64,
        feel in prop_oneof![Just(0.0), 1e-6..5.0_f64],
        zero in prop_oneof![Just(0.0), 1e-6..5.0_f64],
    ) {
        let advice = advice(least, least + more, feel, zero);
        let said = said(&advice);
        prop_assert!(!said.is_empty());
        for sentence in &said {
            prop_assert!(sentence.ends_with('.') && !sentence.contains("no number"), "{}", sentence);
        }
        let settled = advice.assessment.verdict != Verdict::TooCloseToCall;
        prop_assert_eq!(settled, advice.more == MoreReadings::NotNeeded);
        prop_assert!(!settled || advice.tools.is_empty());
    }

    #[test]
    fn more_readings_settle_what_they_promise_and_one_fewer_does_not(
        at in 0.5..4.0_f64,
        feel in 0.05..1.0_f64,
        zero in 0.0..0.3_f64,
        readings in 1_usize..6,
    ) {
        let (clearance, sources) = clearance(at, at, feel, zero);
        let window = Window::new(Some(1.5 * THOU), Some(3.0 * THOU)).unwrap();
        let (least, greatest) = (clearance.least.estimate(), clearance.greatest.estimate());
        let more = how_many_more((least, greatest), readings, &sources, &window, DANGEROUS_SIDE);
        if let MoreReadings::Would(more) = more {
            let verdict = |count: usize| {
                let times = count as f64 / readings as f64;
                let [least, greatest] = [least, greatest].map(|one| one.as_mean_of(times, &sources));
                Assessment::judged((&least, &greatest), &window, DANGEROUS_SIDE, &sources).verdict
            };
            prop_assert_ne!(verdict(readings + more), Verdict::TooCloseToCall);
            prop_assert_eq!(verdict(readings + more - 1), Verdict::TooCloseToCall);
        }
    }
}
