//! Mistakes that are easily made about readings and verdicts, each with a test
//! that fails when it is made. Figures are worked by hand (common practice).

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use assembly_core::describe::{Answer, CalculationError, Given, Gravity, calculation};
use assembly_core::measure::{
    Assessment, DangerousSide, Estimate, Origin, Sources, Verdict, Window, could_say_good,
};
use assembly_core::moves::NEVER;

const INCH: f64 = 0.0254;
const THOU: f64 = INCH / 1e3;
const DEGREE: f64 = std::f64::consts::PI / 180.0;

fn answer(id: &str, values: &[(&'static str, f64)]) -> Result<Answer, CalculationError> {
    let mut given = Given::new();
    for (field, value) in values {
        given.push(field, Estimate::exact(*value));
    }
    calculation(id).unwrap().answer(&given)
}

fn value(answer: &Answer, id: &str) -> f64 {
    answer.get(id).unwrap().value()
}

fn stops(answer: &Answer) -> bool {
    answer
        .findings()
        .iter()
        .any(|one| one.gravity == Gravity::Stop)
}

#[test]
fn a_bearing_is_never_averaged_over_its_directions() {
    let shell = |near_joint: f64| {
        let values = [
            ("bore", 2.4522 * INCH),
            ("bore-near-joint", near_joint * INCH),
            ("journal", 2.4500 * INCH),
        ];
        answer("running-clearance", &values).unwrap()
    };
    for output in ["least", "mean", "greatest"] {
        let (near, wide) = (value(&shell(2.4525), output), value(&shell(2.4535), output));
        assert!(
            (near - 0.0022 * INCH).abs() < 1e-12 && near == wide,
            "{output}"
        );
    }
}

#[test]
fn three_lobes_are_not_called_round_because_two_anvils_see_none() {
    let mut lobed = vec![("vee-swing", 2.4 * THOU)];
    for end in ["front", "rear"] {
        lobed.extend([(end, 2.1 * INCH), (end, 2.1 * INCH)]);
    }
    let said = answer("journal-shape", &lobed).unwrap();
    assert!(value(&said, "out-of-round").abs() < 1e-12);
    assert!(
        said.findings()
            .iter()
            .any(|one| one.gravity == Gravity::Caution)
    );
}

#[test]
fn a_bore_or_a_gap_counts_only_as_it_was_honed() {
    let gap = [
        ("bore", 4.03 * INCH),
        ("factor", 0.0045),
        ("measured", 0.0185 * INCH),
        ("condition", 1.0),
    ];
    assert!(stops(&answer("ring-gap-rule", &gap).unwrap()));
    let mut bore = vec![("state", 0.0), ("plate", 1.0)];
    for direction in ["thrust", "axial"] {
        bore.extend([(direction, 4.0 * INCH); 3]);
    }
    assert!(stops(&answer("bore-shape", &bore).unwrap()));
}

#[test]
fn a_number_inside_its_window_is_not_good_by_that_alone() {
    let window = Window::new(Some(1.5 * THOU), Some(3.0 * THOU)).unwrap();
    let read = |thou: f64, deviation: f64| {
        let cause = Sources::new().fresh("feel", Origin::Repeat);
        let value = Estimate::exact(thou * THOU).with(cause, deviation * THOU);
        Assessment::of(&value, &window, DangerousSide::TooLittle).verdict
    };
    assert_eq!(read(1.6, 0.18), Verdict::TooCloseToCall);
    assert_eq!(read(2.2, 0.18), Verdict::Good);
    // And tenths are not demanded of a caliper: it is known before that it can't tell.
    assert!(!could_say_good(
        1.0 * THOU,
        &window,
        DangerousSide::TooLittle
    ));
}

#[test]
fn degrees_before_the_top_and_after_the_bottom_have_their_signs() {
    // 2° before the top and 38° after the bottom: the centre lies 108° after the top.
    let lobe = [("opening", 2.0 * DEGREE), ("closing", 38.0 * DEGREE)];
    let said = answer("lobe-centre", &lobe).unwrap();
    assert!((value(&said, "centre") / DEGREE - 108.0).abs() < 1e-9);
    let after_top = [("opening", -2.0 * DEGREE), ("closing", 38.0 * DEGREE)];
    let said = answer("lobe-centre", &after_top).unwrap();
    assert!((value(&said, "centre") / DEGREE - 110.0).abs() < 1e-9);
}

#[test]
fn side_clearance_is_of_the_pair_on_a_shared_pin() {
    let pin = |rods: &[f64]| {
        let mut values = vec![("pin-width", 2.010 * INCH), ("rods", 0.0)];
        values.extend(rods.iter().map(|rod| ("rod-widths", rod * INCH)));
        value(&answer("rod-side-clearance", &values).unwrap(), "clearance")
    };
    assert!((pin(&[0.997, 0.999]) - 0.014 * INCH).abs() < 1e-12);
    assert!((pin(&[1.999]) - 0.011 * INCH).abs() < 1e-12);
}

#[test]
fn the_cap_of_a_split_rod_and_a_housing_are_never_cut_for_clearance() {
    for id in [
        "cut-a-split-rod-cap",
        "file-the-cap",
        "hone-the-housing-for-clearance",
    ] {
        assert!(
            NEVER.iter().any(|one| one.id == id),
            "{id} is not forbidden"
        );
    }
}
