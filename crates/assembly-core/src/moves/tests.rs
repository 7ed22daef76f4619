//! Tests of the moves as a whole: the ranking, and that the data hold together.

use std::collections::BTreeSet;

use proptest::prelude::*;
use uom::si::f64::Length;

use super::list::MOVES;
use super::shells::{Half, Pair};
use super::*;
use crate::measure::{DangerousSide, Estimate, Measured, Origin, Sources, Verdict, Window};
use crate::quantity::Si;

const INCH: f64 = 0.0254;

fn inch(size: f64) -> Length {
    Length::from_si(size * INCH)
}

fn read(size: f64, give_or_take: f64) -> Measured<Length> {
    let feel = Sources::new().fresh("feel", Origin::Repeat);
    Measured::exact(inch(size)).with(feel, inch(give_or_take))
}

fn window(low: f64, high: f64) -> Window {
    Window::new(Some(low * INCH), Some(high * INCH)).unwrap()
}

fn mains(now: &Measured<Length>, window: &Window) -> Vec<Ranked> {
    for_measure("main-oil-clearance", now, window, DangerousSide::TooLittle)
}

fn landing_of(ranked: &[Ranked], words: &str) -> f64 {
    let found = ranked.iter().find(|one| one.words == words).unwrap();
    found.landing.unwrap().least / INCH
}

// Worked by hand (common practice): at 0.0022 one half of a one-thou set gives
// 0.0017 and both give 0.0012.
#[test]
fn half_a_set_of_shells_moves_half_a_thou() {
    let ranked = mains(&read(0.0022, 0.00018), &window(0.0009, 0.0018));
    assert!((landing_of(&ranked, "one half-shell one thou under") - 0.0017).abs() < 1e-9);
    assert!((landing_of(&ranked, "both half-shells one thou under") - 0.0012).abs() < 1e-9);
}

// Worked by hand (common practice): two tenths off the journal open the clearance by two tenths.
#[test]
fn polishing_opens_what_it_takes_off() {
    let polish = move_by_id("polish-main-journals").unwrap();
    let effect = polish.effect_on("main-oil-clearance").unwrap();
    let change = effect
        .sensitivity
        .change(0.0002 * INCH, &Circumstances::default())
        .unwrap();
    assert!((change - 0.0002 * INCH).abs() < 1e-12);
}

#[test]
fn a_tight_main_is_never_answered_with_thicker_shells() {
    let ranked = mains(&read(0.0012, 0.00018), &window(0.0017, 0.0027));
    assert!(!ranked.is_empty());
    for one in &ranked {
        assert!(!one.words.contains("under"), "{}", one.words);
        if let Some(landing) = one.landing {
            assert!(landing.least > 0.0012 * INCH);
        }
    }
    assert_eq!(ranked[0].words, "both half-shells one thou extra clearance");
}

#[test]
fn the_surest_comes_first_and_the_bench_before_the_shop() {
    let ranked = mains(&read(0.0030, 0.00018), &window(0.0015, 0.0027));
    let first = &ranked[0];
    assert_eq!(first.what.id, "other-main-shells");
    assert_eq!(first.landing.unwrap().assessment.verdict, Verdict::Good);
    let ranks: Vec<f64> = ranked
        .iter()
        .filter_map(|one| one.landing)
        .filter(|landing| landing.assessment.verdict == Verdict::Good)
        .map(|landing| landing.assessment.inside)
        .collect();
    assert!(
        ranks
            .windows(2)
            .all(|two| two[0].min(0.95) >= two[1].min(0.95) - 0.02)
    );
    let grind = ranked
        .iter()
        .position(|one| one.what.id == "grind-main-journals");
    assert!(grind.unwrap() > 0);
}

#[test]
fn a_good_result_needs_no_move_and_a_doubtful_one_is_measured_again_first() {
    assert!(mains(&read(0.0020, 0.0001), &window(0.0015, 0.0025)).is_empty());
    let doubtful = mains(&read(0.0016, 0.0003), &window(0.0015, 0.0025));
    assert_eq!(doubtful[0].what.id, "measure-main-clearance-again");
    let plainly_bad = mains(&read(0.0040, 0.0001), &window(0.0015, 0.0025));
    assert!(
        plainly_bad
            .iter()
            .all(|one| one.what.sizes != Sizes::MeasureAgain)
    );
}

#[test]
fn shells_fitted_already_are_counted() {
    let known = Circumstances {
        shells: Some(Pair::of(Half::of_steps(1), Half::standard())),
        ..Circumstances::default()
    };
    let now = read(0.0010, 0.0001);
    let ranked = for_extent(
        "main-oil-clearance",
        &now,
        &now,
        &window(0.0012, 0.0020),
        DangerousSide::TooLittle,
        &known,
    );
    assert!((landing_of(&ranked, "both half-shells standard") - 0.0015).abs() < 1e-9);
}

#[test]
fn a_journal_that_is_wider_than_the_window_is_not_promised() {
    // Least 0.0010, greatest 0.0030: no shell brings both ends inside 0.0015 to 0.0025.
    let ranked = for_extent(
        "main-oil-clearance",
        &read(0.0010, 0.0001),
        &read(0.0030, 0.0001),
        &window(0.0015, 0.0025),
        DangerousSide::TooLittle,
        &Circumstances::default(),
    );
    for one in ranked.iter().filter(|one| one.what.sizes == Sizes::Shells) {
        assert_ne!(one.landing.unwrap().assessment.verdict, Verdict::Good);
    }
    // Grinding makes the journal round again.
    assert_eq!(ranked[0].what.id, "grind-main-journals");
}

#[test]
fn a_ring_gap_is_filed_to_the_middle_and_never_filed_smaller() {
    let ranked = |gap: f64| {
        for_measure(
            "ring-end-gap",
            &read(gap, 0.0003),
            &window(0.016, 0.020),
            DangerousSide::TooLittle,
        )
    };
    let tight = ranked(0.012);
    assert_eq!(tight[0].what.id, "file-the-ring");
    let filed = tight[0].landing.unwrap();
    assert!((filed.size.unwrap() / INCH - 0.006).abs() < 0.0006);
    assert!(
        ranked(0.025)
            .iter()
            .all(|one| one.what.id != "file-the-ring")
    );
}

#[test]
fn quench_is_closed_by_deck_gasket_or_piston_and_not_by_the_head() {
    let ranked = for_measure(
        "quench",
        &read(0.065, 0.001),
        &window(0.035, 0.045),
        DangerousSide::TooLittle,
    );
    let ids: Vec<&str> = ranked.iter().map(|one| one.what.id).collect();
    assert!(!ids.contains(&"mill-the-head"));
    for (id, size) in [("cut-the-deck", 0.025), ("other-head-gasket", -0.025)] {
        let found = ranked.iter().find(|one| one.what.id == id).unwrap();
        let landing = found.landing.unwrap();
        assert!((landing.size.unwrap() / INCH - size).abs() < 0.0011, "{id}");
        assert_eq!(landing.assessment.verdict, Verdict::Good);
    }
    // The deck takes the preload up with it, and says so without knowing the engine.
    let deck = ranked.iter().find(|one| one.what.id == "cut-the-deck");
    let preload = deck
        .unwrap()
        .also
        .iter()
        .find(|one| one.measure == "lifter-preload");
    assert!(preload.unwrap().change.unwrap() > 0.0);
    let valve = deck
        .unwrap()
        .also
        .iter()
        .find(|one| one.measure == "valve-to-piston-intake");
    assert_eq!(valve.unwrap().change, None);
    assert!(valve.unwrap().words.contains("cosine"));
}

#[test]
fn what_needs_the_engine_is_told_without_a_figure_until_it_is_known() {
    let now: Measured<uom::si::f64::Ratio> = Measured::exact(Si::from_si(9.5));
    let window = Window::new(Some(9.8), Some(10.2)).unwrap();
    let ask = |known: &Circumstances| {
        for_extent(
            "compression-ratio",
            &now,
            &now,
            &window,
            DangerousSide::TooMuch,
            known,
        )
    };
    let deck = |ranked: &[Ranked]| {
        let found = ranked.iter().find(|one| one.what.id == "cut-the-deck");
        found.unwrap().landing
    };
    assert!(deck(&ask(&Circumstances::default())).is_none());
    let known = Circumstances {
        bore: Some(inch(4.03)),
        swept: Some(Si::from_si(727.4e-6)),
        clearance_volume: Some(Si::from_si(727.4e-6 / 8.5)),
        ..Circumstances::default()
    };
    let landing = deck(&ask(&known)).unwrap();
    assert!(landing.size.unwrap() > 0.0);
    assert!(landing.least > 9.8 && landing.least < 10.2);
}

#[test]
fn a_part_made_to_order_comes_back_inside_an_open_window_too() {
    for (low, high) in [(Some(0.001), None), (None, Some(0.0005))] {
        let window = Window::new(low.map(|one| one * INCH), high.map(|one| one * INCH)).unwrap();
        let now = read(low.map_or(0.002, |low| low / 2.0), 0.0001);
        let measure = if low.is_some() {
            "piston-to-wall"
        } else {
            "main-journal-taper"
        };
        let ranked = for_measure(measure, &now, &window, DangerousSide::Neither);
        let ordered = ranked.iter().find(|one| one.what.sizes == Sizes::ToOrder);
        let landing = ordered.unwrap().landing.unwrap();
        assert!(window.holds(landing.least));
        assert_eq!(landing.assessment.verdict, Verdict::Good);
    }
}

fn all_moves() -> impl Iterator<Item = &'static Move> {
    MOVES.iter().copied().flatten()
}

#[test]
fn no_move_is_one_of_those_that_must_never_be_made() {
    let forbidden: BTreeSet<&str> = NEVER.iter().map(|one| one.id).collect();
    for one in all_moves() {
        assert!(!forbidden.contains(one.id), "{}", one.id);
        let text = format!("{} {}", one.title, one.how).to_lowercase();
        for phrase in [
            "file the cap",
            "hone the housing to gain",
            "behind the shell",
        ] {
            assert!(!text.contains(phrase), "{}: {phrase}", one.id);
        }
    }
    // Nothing offered for an oil clearance touches cap or housing.
    for clearance in ["main-oil-clearance", "rod-oil-clearance"] {
        for one in moves_for(clearance) {
            assert!(one.effects.iter().all(|effect| {
                !["main-housing-bore", "big-end-bore"].contains(&effect.measure)
            }));
        }
        let never: Vec<&str> = never(clearance).map(|one| one.id).collect();
        assert!(never.contains(&"file-the-cap"));
        assert!(never.contains(&"hone-the-housing-for-clearance"));
    }
}

#[test]
fn every_move_is_whole() {
    let mut ids = BTreeSet::new();
    for one in all_moves() {
        assert!(ids.insert(one.id), "{} twice", one.id);
        assert!(!one.title.is_empty() && !one.how.is_empty() && !one.cautions.is_empty());
        assert!(!one.offered_for.is_empty(), "{}", one.id);
        let measures: BTreeSet<&str> = one.effects.iter().map(|effect| effect.measure).collect();
        assert_eq!(measures.len(), one.effects.len(), "{}", one.id);
        for measure in one.offered_for {
            assert!(measures.contains(measure), "{}: {measure}", one.id);
        }
        for measure in &measures {
            assert!(
                measure
                    .chars()
                    .all(|letter| letter.is_ascii_lowercase() || letter == '-'),
                "{measure}"
            );
        }
        assert!(one.scatter.is_finite() && one.scatter >= 0.0);
        match one.sizes {
            Sizes::Any { least, most, step } => {
                assert!(least < most && step > 0.0, "{}", one.id);
                assert!((most - least) / step <= 2000.0, "{}", one.id);
                assert!(!one.size_is.is_empty(), "{}", one.id);
            }
            Sizes::Steps(steps) => assert!(!steps.is_empty() && !one.size_is.is_empty()),
            _ => {}
        }
    }
}

fn every_measure() -> Vec<&'static str> {
    let mut all: Vec<&str> = all_moves()
        .flat_map(|one| one.offered_for.iter().copied())
        .collect();
    all.sort_unstable();
    all.dedup();
    all
}

fn maybe<T: std::fmt::Debug>(
    inside: impl Strategy<Value = T> + 'static,
) -> impl Strategy<Value = Option<T>> {
    proptest::option::of(inside)
}

proptest! {
    #[test]
    fn whatever_is_read_and_known_no_landing_is_without_number(
        value in prop_oneof![-1e-3..1e-3, -1e3..1e3, Just(0.0), Just(1e300), Just(f64::NAN)],
        spread in prop_oneof![Just(0.0), 0.0..1e-3, Just(1e300)],
        low in maybe(-1.0..1.0_f64),
        width in 1e-9..1.0_f64,
        numbers in proptest::collection::vec(
            prop_oneof![Just(0.0), -10.0..10.0_f64, Just(1e-300), Just(1e300)], 8),
    ) {
        let feel = Sources::new().fresh("feel", Origin::Repeat);
        let now: Measured<Length> =
            Measured::from_estimate(Estimate::exact(value).with(feel, spread));
        let window = Window::new(low, Some(low.unwrap_or(0.0) + width)).unwrap();
        let known = Circumstances {
            shells: None,
            sets: Vec::new(),
            bore: Some(Si::from_si(numbers[0])),
            gasket_bore: Some(Si::from_si(numbers[1])),
            swept: Some(Si::from_si(numbers[2])),
            clearance_volume: Some(Si::from_si(numbers[3])),
            valve_angle: Some(Si::from_si(numbers[4])),
            rocker_ratio: Some(numbers[5]),
            spring_rate: Some(numbers[6]),
            cam_wheel_radius: Some(Si::from_si(numbers[7])),
        };
        for measure in every_measure() {
            for one in for_extent(measure, &now, &now, &window, DangerousSide::TooLittle, &known) {
                if let Some(landing) = one.landing {
                    prop_assert!(landing.least.is_finite() && landing.greatest.is_finite());
                    prop_assert!(landing.give_or_take.is_finite());
                    prop_assert!((0.0..=1.0).contains(&landing.assessment.inside));
                }
                for effect in one.also {
                    prop_assert!(effect.change.is_none_or(f64::is_finite));
                }
            }
        }
    }
}
