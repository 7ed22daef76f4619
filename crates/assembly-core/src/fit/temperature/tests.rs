//! Fits of two metals: the facts of the trade, and what must hold always.

use proptest::prelude::*;

use super::*;
use crate::measure::{Origin, Sources};

const INCH: f64 = 0.0254;
const THOU: f64 = INCH / 1e3;

/// Millionths for a degree Fahrenheit to a part's warmth.
fn metal(millionths_fahrenheit: f64, at_fahrenheit: f64) -> Warmth {
    Warmth {
        expansion: Measured::exact(TemperatureCoefficient::from_si(
            millionths_fahrenheit * 1.8e-6,
        )),
        at: fahrenheit(at_fahrenheit),
    }
}

fn fahrenheit(degrees: f64) -> Measured<ThermodynamicTemperature> {
    Measured::exact(ThermodynamicTemperature::from_si(
        (degrees - 32.0) / 1.8 + 273.15,
    ))
}

fn inches(value: f64) -> Measured<Length> {
    Measured::exact(Length::from_si(value * INCH))
}

fn correction(diameter: f64, inner: &Warmth, outer: &Warmth) -> f64 {
    let corrected = clearance_at_reference(&inches(0.002), &inches(diameter), inner, outer);
    corrected.correction.value().to_si() / THOU
}

const IRON: f64 = 5.9;
const STEEL: f64 = 6.5;

// Handbook coefficients and worked effects from memory; common practice.
#[test]
fn an_aluminium_piston_measured_cold_in_an_iron_bore_reads_too_loose() {
    for piston in [11.5, 12.4] {
        let by = correction(4.0, &metal(piston, 40.0), &metal(IRON, 40.0));
        assert!((-0.75..=-0.59).contains(&by), "{by}");
    }
}

#[test]
fn an_aluminium_housing_measured_cold_over_a_steel_crank_reads_too_tight() {
    let by = correction(2.7, &metal(STEEL, 40.0), &metal(12.5, 40.0));
    assert!((by - 0.45).abs() < 0.06, "{by}");
}

#[test]
fn iron_and_steel_nearly_cancel() {
    let by = correction(2.5, &metal(STEEL, 40.0), &metal(IRON, 40.0));
    assert!((by.abs() - 0.04).abs() < 0.005, "{by}");
}

#[test]
fn a_micrometer_warm_from_the_hand_reads_small() {
    // Ten degrees Fahrenheit on four inches: a quarter of a thou.
    let (part, tool) = (metal(STEEL, 68.0), metal(STEEL, 78.0));
    let size = size_at_reference(&inches(4.0), &part, &tool);
    let by = (size - inches(4.0)).value().to_si() / THOU;
    assert!((by - 0.26).abs() < 0.01, "{by}");
}

#[test]
fn running_hot_an_aluminium_housing_opens_up() {
    let corrected = clearance_at(
        &inches(0.002),
        &inches(2.7),
        (&metal(STEEL, 68.0), &fahrenheit(230.0)),
        (&metal(12.5, 68.0), &fahrenheit(230.0)),
    );
    let opened = corrected.correction.value().to_si() / THOU;
    assert!((opened - 2.7 * 6.0e-3 * 162.0).abs() < 0.02, "{opened}");
}

#[test]
fn a_thermometer_that_both_parts_share_counts_by_the_difference_of_the_metals() {
    let mut sources = Sources::new();
    let doubt = sources.shared("garage", "thermometer", Origin::Temperature);
    let shared = |millionths: f64| {
        let mut warmth = metal(millionths, 68.0);
        warmth.at = warmth
            .at
            .with(doubt, ThermodynamicTemperature::from_si(2.0));
        warmth
    };
    let corrected =
        clearance_at_reference(&inches(0.002), &inches(4.0), &shared(12.0), &shared(5.9));
    let give_or_take = corrected.clearance.give_or_take().to_si() / INCH;
    let wanted = 4.0 * (12.0 - 5.9) * 1.8e-6 * 2.0;
    assert!(
        (give_or_take / wanted - 1.0).abs() < 0.01,
        "{give_or_take} {wanted}"
    );
}

#[test]
fn a_correction_worth_a_quarter_of_the_window_is_told_and_a_smaller_one_is_not() {
    let corrected = clearance_at_reference(
        &inches(0.002),
        &inches(4.0),
        &metal(12.0, 40.0),
        &metal(IRON, 40.0),
    );
    let window = |low: f64, high: f64| Window::new(Some(low * THOU), Some(high * THOU)).unwrap();
    let told = warning(&corrected.correction, &window(1.0, 2.0)).unwrap();
    assert!(told.text.contains("too loose"), "{}", told.text);
    assert!(warning(&corrected.correction, &window(1.0, 4.0)).is_none());
    let open = Window::new(Some(1.0 * THOU), None).unwrap();
    assert!(warning(&corrected.correction, &open).is_none());
}

#[test]
fn the_quick_check_gives_what_the_function_gives() {
    let given = Given::new()
        .with("reading", Estimate::exact(0.1))
        .with("part-expansion", Estimate::exact(22e-6))
        .with("part-at", Estimate::exact(303.15))
        .with("tool-expansion", Estimate::exact(11.5e-6))
        .with("tool-at", Estimate::exact(303.15));
    let answer = SIZE_BY_WARM_TOOL.answer(&given).unwrap();
    let correction = answer.get("correction").unwrap().value();
    assert!(
        (correction + 0.1 * 10.5e-6 * 10.0).abs() < 1e-8,
        "{correction}"
    );
}

proptest! {
    #[test]
    fn there_and_back_is_where_it_was(
        clearance in -1e-4..5e-4_f64,
        diameter in 0.003..0.3_f64,
        inner in 5.0..25.0_f64,
        outer in 5.0..25.0_f64,
        from in 250.0..330.0_f64,
        to in 280.0..480.0_f64,
    ) {
        let warmth = |millionths: f64, at: f64| Warmth {
            expansion: Measured::exact(TemperatureCoefficient::from_si(millionths * 1e-6)),
            at: Measured::exact(ThermodynamicTemperature::from_si(at)),
        };
        let length = |si: f64| Measured::exact(Length::from_si(si));
        let at = |si: f64| Measured::exact(ThermodynamicTemperature::from_si(si));
        let there = clearance_at(
            &length(clearance),
            &length(diameter),
            (&warmth(inner, from), &at(to)),
            (&warmth(outer, from), &at(to)),
        );
        // The inner part is now as big as it grew.
        let grown = diameter * (1.0 + inner * 1e-6 * (to - 293.15)) / (1.0 + inner * 1e-6 * (from - 293.15));
        let back = clearance_at(
            &there.clearance,
            &length(grown),
            (&warmth(inner, to), &at(from)),
            (&warmth(outer, to), &at(from)),
        );
        prop_assert!((back.clearance.value().to_si() - clearance).abs() < 1e-14);
    }

    #[test]
    fn two_parts_of_one_metal_keep_their_clearance_but_for_its_own_growth(
        clearance in 0.0..5e-4_f64, diameter in 0.003..0.3_f64, at in 250.0..330.0_f64,
    ) {
        let warmth = Warmth {
            expansion: Measured::exact(TemperatureCoefficient::from_si(23e-6)),
            at: Measured::exact(ThermodynamicTemperature::from_si(at)),
        };
        let corrected = clearance_at_reference(
            &Measured::exact(Length::from_si(clearance)),
            &Measured::exact(Length::from_si(diameter)),
            &warmth,
            &warmth,
        );
        prop_assert!(corrected.correction.value().to_si().abs() <= clearance * 23e-6 * 50.0 + 1e-15);
    }
}
