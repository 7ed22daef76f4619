//! How readings of one tool share their errors.

use proptest::prelude::*;
use uom::si::f64::Length;

use super::*;
use crate::tool::instrument;

const THOU: f64 = 0.000_025_4;
const INCH: f64 = 0.0254;

fn tool(key: &str, id: &str) -> Tool {
    Tool::new(key, key, instrument(id).unwrap())
}

fn thou(value: &Measured<Length>) -> f64 {
    value.give_or_take().to_si() / THOU
}

#[test]
fn a_reading_names_its_causes() {
    let mut sources = Sources::new();
    let micrometer = tool("micrometer", "outside-micrometer-tenths");
    let today = Setting::on_standard("today");
    let reading: Measured<Length> =
        micrometer.reading(&mut sources, &today, 2.45 * INCH, 0.1 * THOU);
    let causes = reading.estimate().causes(&sources);
    let origin = |wanted: Origin| {
        let found = causes.iter().find(|cause| cause.origin == wanted);
        found.map(|cause| cause.deviation / THOU)
    };
    assert!((origin(Origin::Repeat).unwrap() - 0.2).abs() < 1e-9);
    assert!((origin(Origin::SharedZero).unwrap() - 0.2).abs() < 1e-9);
    assert!((origin(Origin::Rounding).unwrap() - 0.1 / 12_f64.sqrt()).abs() < 1e-9);
    assert_eq!(causes.len(), 3);
    assert!(causes.iter().all(|cause| cause.label == "micrometer"));
}

#[test]
fn two_readings_of_one_setting_share_its_zero_and_a_new_setting_has_a_new_one() {
    let mut sources = Sources::new();
    let micrometer = tool("micrometer", "outside-micrometer-tenths");
    let mut read = |key: &str| -> Measured<Length> {
        micrometer.reading(&mut sources, &Setting::on_standard(key), INCH, 0.0)
    };
    let (first, second, tomorrow) = (read("today"), read("today"), read("tomorrow"));
    assert!((thou(&(&first - &second)) - 0.2 * 2_f64.sqrt()).abs() < 1e-9);
    assert!((thou(&(&first - &tomorrow)) - 0.4).abs() < 1e-9);
}

// The rule of the trade: a bore gauge zeroed on the micrometer that measured the
// journal leaves the micrometer's zero out; one zeroed on another does not.
#[test]
fn a_gauge_zeroed_on_the_journals_micrometer_leaves_its_zero_out() {
    let mut sources = Sources::new();
    let (mine, other) = (
        tool("mine", "outside-micrometer-tenths"),
        tool("other", "outside-micrometer-tenths"),
    );
    let gauge = tool("gauge", "bore-gauge-tenths").with_setting_transfer(0.0);
    let today = Setting::on_standard("today");
    let mut clearance = |zeroed_on: &Tool| {
        let zeroed = Setting {
            key: "zeroed",
            on: SetOn::Tool(zeroed_on, &today),
        };
        let bore: Measured<Length> = gauge.reading(&mut sources, &zeroed, 2.4522 * INCH, 0.0);
        let journal: Measured<Length> = mine.reading(&mut sources, &today, 2.45 * INCH, 0.0);
        thou(&(bore - journal))
    };
    assert!((clearance(&mine) - 0.15_f64.hypot(0.2)).abs() < 1e-9);
    let both_zeros = 0.15_f64.hypot(0.2).hypot(0.2).hypot(0.2);
    assert!((clearance(&other) - both_zeros).abs() < 1e-9);
}

// Common practice: feel of the micrometer and of the gauge, about 0.18 thou.
#[test]
fn a_micrometer_still_locked_at_the_journal_leaves_only_feel_in_the_clearance() {
    let mut sources = Sources::new();
    let micrometer = tool("micrometer", "outside-micrometer-proved");
    let gauge = tool("gauge", "bore-gauge-tenths").with_setting_transfer(0.0);
    let today = Setting::on_standard("today");
    let journal: Measured<Length> =
        micrometer.reading(&mut sources, &today, 2.45 * INCH, 1.0 * THOU);
    let set_at = Tool::still_locked_at(&journal, &sources);
    let zeroed = Setting {
        key: "zeroed",
        on: SetOn::Tool(&micrometer, &today),
    };
    let needle: Measured<Length> = gauge.needle(&mut sources, &zeroed, -2.2 * THOU, 0.0);
    let clearance = &set_at - &needle - &journal;
    assert!((clearance.value().to_si() / THOU - 2.2).abs() < 1e-9);
    // Not even the coarse last digit of the micrometer counts.
    assert!((thou(&clearance) - 0.1_f64.hypot(0.15)).abs() < 1e-9);
}

#[test]
fn an_own_trial_replaces_the_figure_of_common_practice() {
    let mut sources = Sources::new();
    let micrometer = tool("m", "outside-micrometer-tenths")
        .with_repeat(0.1 * THOU, 4.0)
        .with_shared_zero(0.0);
    let reading: Measured<Length> =
        micrometer.reading(&mut sources, &Setting::on_standard("a"), INCH, 0.0);
    assert!((thou(&reading) - 0.1).abs() < 1e-9);
    assert!((reading.estimate().degrees_of_freedom(&sources) - 4.0).abs() < 1e-9);
}

#[test]
fn a_spring_tester_strays_with_the_force() {
    let mut sources = Sources::new();
    let tester = tool("tester", "bench-spring-tester");
    let setting = Setting::on_standard("today");
    let force: Measured<uom::si::f64::Force> = tester.reading(&mut sources, &setting, -1000.0, 0.0);
    assert!((force.give_or_take().to_si() - 40.0).abs() < 1e-9);
}

proptest! {
    #[test]
    fn a_mean_of_many_readings_never_beats_the_shared_zero(
        count in 1_usize..40,
        value in 0.003..0.6_f64,
    ) {
        let mut sources = Sources::new();
        let micrometer = tool("m", "outside-micrometer-tenths");
        let readings: Vec<Measured<Length>> = (0..count)
            .map(|_| micrometer.reading(&mut sources, &Setting::on_standard("a"), value, 1e-6))
            .collect();
        let mean = Measured::mean(&readings).unwrap();
        let zero = micrometer.instrument().shared_zero;
        prop_assert!(mean.give_or_take().to_si() >= zero);
        prop_assert!((mean.estimate().lasting_deviation(&sources) - zero).abs() < 1e-15);
    }
}
