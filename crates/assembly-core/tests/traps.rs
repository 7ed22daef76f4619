//! Mistakes that are easily made about sizes, stack-ups and moves, each with a
//! test that fails when it is made. Figures are worked by hand (common practice).

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use assembly_core::describe::{Answer, CalculationError, Given, Gravity, calculation};
use assembly_core::measure::{Assessment, DangerousSide, Estimate, Verdict, Window};
use assembly_core::moves::shells::{Half, MixError, Pair, instead_of, may_go_together};
use assembly_core::moves::{Circumstances, Sensitivity, move_by_id};
use assembly_core::quantity::{Kind, Si, read, show_high_limit, show_low_limit, unit_of};
use uom::si::f64::{Angle, Length, Volume};

const INCH: f64 = 0.0254;

fn engine() -> Circumstances {
    Circumstances {
        sets: Vec::new(),
        shells: None,
        bore: Some(Length::from_si(4.03 * INCH)),
        gasket_bore: Some(Length::from_si(4.1 * INCH)),
        swept: Some(Volume::from_si(727.4e-6)),
        clearance_volume: Some(Volume::from_si(80e-6)),
        valve_angle: Some(Angle::from_si(20_f64.to_radians())),
        rocker_ratio: Some(1.5),
        spring_rate: Some(52_538.0),
        cam_wheel_radius: Some(Length::from_si(2.0 * INCH)),
    }
}

/// What a move of this size does to a measure, thou or whatever the measure is in.
fn change(id: &str, measure: &str, size: f64) -> Option<f64> {
    let sensitivity = move_by_id(id).unwrap().effect_on(measure)?.sensitivity;
    sensitivity.change(size, &engine())
}

fn answer(id: &str, values: &[(&'static str, f64)]) -> Result<Answer, CalculationError> {
    let mut given = Given::new();
    for (field, value) in values {
        given.push(field, Estimate::exact(*value));
    }
    calculation(id).unwrap().answer(&given)
}

fn si(text: &str) -> f64 {
    let inch = unit_of(Kind::Length, "in").unwrap();
    read(text, Kind::Length, inch).unwrap().si()
}

#[test]
fn an_undersize_is_said_of_a_set_and_half_of_it_is_half() {
    let half = instead_of(&Pair::standard())
        .into_iter()
        .find(|pair| pair.words == "one half-shell one thou under")
        .unwrap();
    assert!((half.wall_gain - 0.0005 * INCH).abs() < 1e-12);
}

#[test]
fn milling_the_head_leaves_the_quench_and_cutting_the_deck_does_not() {
    let mill = move_by_id("mill-the-head").unwrap();
    assert!(mill.effect_on("quench").is_none());
    assert!(mill.effect_on("deck-clearance").is_none());
    assert!(!mill.offered_for.contains(&"quench"));
    assert!(mill.effect_on("valve-to-piston-intake").is_some());
    let cut = change("cut-the-deck", "quench", 0.010 * INCH).unwrap();
    assert!((cut + 0.010 * INCH).abs() < 1e-12);
    // A gasket changes the quench and not where the piston stands.
    let gasket = move_by_id("other-head-gasket").unwrap();
    assert!(gasket.effect_on("deck-clearance").is_none());
    assert!(gasket.effect_on("quench").is_some());
}

#[test]
fn a_free_gasket_is_no_compressed_gasket() {
    let free_only = [
        ("deck-clearance", 0.005 * INCH),
        ("gasket-free", 0.048 * INCH),
        ("rods", 0.0),
    ];
    let error = answer("quench", &free_only).unwrap_err();
    assert!(matches!(
        error,
        CalculationError::Missing {
            field: "gasket-compressed",
            ..
        }
    ));
}

#[test]
fn limits_are_rounded_into_the_window_and_a_reading_is_compared_unrounded() {
    let inch = unit_of(Kind::Length, "in").unwrap();
    let (low, high) = (si("0.025 mm"), si("0.050 mm"));
    // 0.025 mm is 0.00098 in, 0.050 mm is 0.00197 in.
    let shown_low = si(&show_low_limit(low, inch).number);
    let shown_high = si(&show_high_limit(high, inch).number);
    assert!(shown_low >= low && shown_high <= high);
    let window = Window::new(Some(low), Some(high)).unwrap();
    let verdict = |text: &str| {
        Assessment::of(
            &Estimate::exact(si(text)),
            &window,
            DangerousSide::TooLittle,
        )
        .verdict
    };
    // Whatever is inside the shown limits is inside the real ones.
    assert_eq!(verdict(&show_low_limit(low, inch).number), Verdict::Good);
    assert_eq!(verdict(&show_high_limit(high, inch).number), Verdict::Good);
    // A thou is more than 0.025 mm, and two thou are more than 0.050 mm.
    assert_eq!(verdict("0.0010"), Verdict::Good);
    assert_eq!(verdict("0.0020"), Verdict::Bad);
}

#[test]
fn a_quarter_millimetre_undersize_is_not_ten_thou() {
    let half = |text: &str| Half {
        grind: Length::from_si(si(text)),
        ..Half::standard()
    };
    assert!(matches!(
        may_go_together(&half("0.25 mm"), &half("0.010 in")),
        Err(MixError::OtherGrind { .. })
    ));
    assert!(may_go_together(&half("0.254 mm"), &half("0.010 in")).is_ok());
}

#[test]
fn a_sunk_valve_and_a_ground_tip_do_opposite_things() {
    let size = 0.015 * INCH;
    for (measure, sunk) in [
        ("tip-height", 1.0),
        ("lifter-preload", 1.0 / 1.5),
        ("valve-lash", -1.0),
    ] {
        let by_seat = change("cut-the-seat", measure, size).unwrap();
        let by_tip = change("grind-the-tip", measure, size).unwrap();
        assert!((by_seat - sunk * size).abs() < 1e-12, "{measure}");
        assert!((by_seat + by_tip).abs() < 1e-12, "{measure}");
    }
    // The spring only notices the valve.
    assert!(
        move_by_id("grind-the-tip")
            .unwrap()
            .effect_on("installed-height")
            .is_none()
    );
}

#[test]
fn a_piston_out_of_the_block_counts_negative() {
    let quench = |deck: f64| {
        let values = [
            ("deck-clearance", deck * INCH),
            ("gasket-compressed", 0.040 * INCH),
            ("rods", 0.0),
        ];
        answer("quench", &values)
            .unwrap()
            .get("quench")
            .unwrap()
            .value()
            / INCH
    };
    assert!((quench(0.005) - 0.045).abs() < 1e-9);
    assert!((quench(-0.005) - 0.035).abs() < 1e-9);
}

#[test]
fn cutting_the_deck_makes_an_overhead_cam_late_not_early() {
    let late = change("cut-the-deck", "cam-lateness", 0.020 * INCH).unwrap();
    assert!((late.to_degrees() - 1.146).abs() < 1e-3);
    let thicker = change("other-head-gasket", "cam-lateness", 0.020 * INCH).unwrap();
    assert!((thicker + late).abs() < 1e-12);
    // Advancing the cam is what answers it.
    let advanced = change("turn-the-cam", "cam-lateness", late).unwrap();
    assert!((advanced + late).abs() < 1e-12);
}

#[test]
fn a_liner_is_judged_with_its_neighbours() {
    let liner = [
        ("flange", 0.2800 * INCH),
        ("shims", 0.004 * INCH),
        ("counterbore", 0.2795 * INCH),
    ];
    let alone = answer("liner-stand-out-from-parts", &liner).unwrap();
    assert!(
        alone
            .findings()
            .iter()
            .any(|one| one.gravity == Gravity::Caution)
    );
    let mut beside = liner.to_vec();
    beside.push(("neighbour", 0.0070 * INCH));
    let stepped = answer("liner-stand-out-from-parts", &beside).unwrap();
    assert!(
        stepped
            .findings()
            .iter()
            .any(|one| one.gravity == Gravity::Stop)
    );
}

#[test]
fn what_one_change_does_elsewhere_has_the_signs_of_the_trade() {
    let x = 0.010 * INCH;
    let cosine = 20_f64.to_radians().cos();
    for (id, measure, factor) in [
        ("cut-the-deck", "deck-clearance", -1.0),
        ("cut-the-deck", "valve-to-piston-intake", -cosine),
        ("cut-the-deck", "lifter-preload", 1.0),
        ("cut-the-deck", "pushrod-length", -1.0),
        ("other-head-gasket", "lifter-preload", -1.0),
        ("mill-the-head", "valve-to-piston-exhaust", -cosine),
        ("mill-the-head", "lifter-preload", 1.0),
        ("cut-the-seat", "installed-height", 1.0),
        ("cut-the-seat", "coil-bind-margin", 1.0),
        ("cut-the-seat", "valve-to-piston-intake", cosine),
        ("resize-the-big-ends", "deck-clearance", 0.5),
        ("align-hone-the-mains", "deck-clearance", -1.0),
        ("hone-the-bore", "ring-end-gap", std::f64::consts::PI),
        ("spring-shims", "installed-height", -1.0),
        ("liner-shims", "liner-stand-out", 1.0),
        ("move-the-pickup", "pickup-to-pan", 1.0),
    ] {
        let by = change(id, measure, x).unwrap();
        assert!((by - factor * x).abs() < 1e-12, "{id} {measure}: {by}");
    }
    // The ratio rises when the deck is cut, and sinking a valve eases its spring.
    assert!(change("cut-the-deck", "compression-ratio", x).unwrap() > 0.0);
    assert!(change("cut-the-seat", "spring-seat-load", x).unwrap() < 0.0);
    // 300 lbf/in and a shim of 0.030 in: 9 lbf.
    let load = change("spring-shims", "spring-seat-load", 0.030 * INCH).unwrap();
    assert!((load / 4.448_221_615 - 9.0).abs() < 1e-3);
}

#[test]
fn honing_a_thou_opens_a_ring_gap_by_three() {
    let gap = change("hone-the-bore", "ring-end-gap", 0.001 * INCH).unwrap();
    assert!((gap / INCH - 0.0031).abs() < 0.000_05);
}

#[test]
fn a_rocker_nut_goes_farther_than_its_pitch() {
    let nut = move_by_id("turn-the-rocker-nut").unwrap();
    let effect = nut.effect_on("lifter-preload").unwrap().sensitivity;
    assert_eq!(effect, Sensitivity::ThroughRockerPivot(1.0));
    let turn = effect.change(INCH / 24.0, &engine()).unwrap();
    assert!((turn / INCH - 0.0694).abs() < 1e-4);
}
