//! Running clearance: the facts of the trade, and what must hold for any readings.

use proptest::prelude::*;
use uom::si::f64::Length;

use super::*;
use crate::describe::{CalculationError, Given, Gravity, calculation};
use crate::measure::{Estimate, Measured, Origin, SourceId, Sources};
use crate::quantity::Si;

const INCH: f64 = 0.0254;
const THOU: f64 = INCH / 1e3;

fn inches(value: f64) -> Measured<Length> {
    Measured::exact(Length::from_si(value * INCH))
}

fn thou(value: &Measured<Length>) -> f64 {
    value.value().to_si() / THOU
}

fn close(left: f64, right: f64) -> bool {
    (left - right).abs() < 1e-6
}

// Worked by hand (common practice): housing 2.6412, walls 0.0945 twice, so bore
// 2.4522; journal 2.4500; clearance 2.2 thou.
#[test]
fn the_clearance_is_the_bore_less_the_journal() {
    let clearance = from_stations(&[Station {
        bores: vec![inches(2.6412 - 2.0 * 0.0945)],
        journals: vec![inches(2.4500)],
        ..Station::default()
    }])
    .unwrap();
    for value in [&clearance.least, &clearance.mean, &clearance.greatest] {
        assert!(close(thou(value), 2.2));
    }
    assert!(clearance.findings.is_empty());
    assert!(clearance.journal_taper.is_none() && clearance.journal_out_of_round.is_none());
}

#[test]
fn the_tightest_place_is_the_smallest_bore_on_the_largest_journal() {
    let clearance = from_stations(&[
        Station {
            bores: vec![inches(2.4522)],
            journals: vec![inches(2.4500), inches(2.4497)],
            ..Station::default()
        },
        Station {
            bores: vec![inches(2.4526)],
            journals: vec![inches(2.4503), inches(2.4502)],
            ..Station::default()
        },
    ])
    .unwrap();
    assert!(close(thou(&clearance.least), 1.9));
    assert!(close(thou(&clearance.greatest), 2.9));
    assert!(close(thou(&clearance.mean), 2.35));
    assert!(close(thou(&clearance.journal_taper.unwrap()), 0.4));
    assert!(close(thou(&clearance.journal_out_of_round.unwrap()), 0.3));
    assert!(close(thou(&clearance.bore_taper.unwrap()), 0.4));
    // Bore and journal taper the same way, so the clearance does not taper.
    assert!(close(thou(&clearance.taper.unwrap()), 0.0));
}

#[test]
fn readings_toward_the_joint_never_change_the_clearance() {
    let mut station = Station {
        bores: vec![inches(2.4522)],
        journals: vec![inches(2.4500)],
        ..Station::default()
    };
    let without = from_stations(std::slice::from_ref(&station)).unwrap();
    station.bores_near_joint = vec![inches(2.4532), inches(2.4528)];
    let with = from_stations(&[station]).unwrap();
    assert_eq!(without.least, with.least);
    assert_eq!(without.mean, with.mean);
    assert_eq!(without.greatest, with.greatest);
    assert!(close(thou(&with.eccentricity.unwrap()), 0.8));
    assert!(with.findings.is_empty());
}

#[test]
fn a_bearing_pinched_at_its_joint_is_told() {
    let clearance = from_stations(&[Station {
        bores: vec![inches(2.4522)],
        bores_near_joint: vec![inches(2.4512)],
        journals: vec![inches(2.4500)],
    }])
    .unwrap();
    assert_eq!(clearance.findings.len(), 1);
    assert!(
        clearance.findings[0]
            .text
            .contains("narrower toward the joint")
    );
}

#[test]
fn a_journal_bigger_than_its_bore_is_an_answer_with_a_finding() {
    let clearance = from_stations(&[Station {
        bores: vec![inches(2.4500)],
        journals: vec![inches(2.4512)],
        ..Station::default()
    }])
    .unwrap();
    assert!(close(thou(&clearance.mean), -1.2));
    let finding = &clearance.findings[0];
    assert_eq!(finding.gravity, Gravity::Stop);
    assert_eq!(
        finding.text,
        "interference of 0.0012 in (0.030 mm): the journal is bigger than its bore; are the two swapped?"
    );
}

#[test]
fn a_taper_that_hides_in_the_mean_is_told() {
    let station = |journal: f64| Station {
        bores: vec![inches(2.4522)],
        journals: vec![inches(journal)],
        ..Station::default()
    };
    let clearance = from_stations(&[station(2.4496), station(2.4503)]).unwrap();
    assert!(
        clearance.findings[0]
            .text
            .contains("tapers by 0.0007 in (0.018 mm)")
    );
}

#[test]
fn a_slip_of_the_decimal_point_is_told() {
    let clearance = from_stations(&[Station {
        bores: vec![inches(2.552)],
        journals: vec![inches(2.450)],
        ..Station::default()
    }])
    .unwrap();
    assert!(clearance.findings[0].text.contains("typed wrongly"));
}

struct Chain {
    sources: Sources,
    zero: SourceId,
}

impl Chain {
    fn new() -> Self {
        let mut sources = Sources::new();
        let zero = sources.shared("mic", "micrometer", Origin::SharedZero);
        Self { sources, zero }
    }

    /// A reading of the micrometer, which shares its zero with its other readings.
    fn micrometer(&mut self, value: f64) -> Measured<Length> {
        let feel = self.sources.fresh("micrometer", Origin::Repeat);
        inches(value)
            .with(self.zero, Length::from_si(0.3 * THOU))
            .with(feel, Length::from_si(0.1 * THOU))
    }

    fn needle(&mut self, value: f64) -> Measured<Length> {
        let feel = self.sources.fresh("bore gauge", Origin::Repeat);
        inches(value).with(feel, Length::from_si(0.15 * THOU))
    }

    /// The locked micrometer as a setting: its zero and nothing else.
    fn setting(&self, value: f64) -> Measured<Length> {
        inches(value).with(self.zero, Length::from_si(0.3 * THOU))
    }
}

// Worked by hand (common practice): a micrometer's feel of 0.1 thou and a bore
// gauge's of 0.15 make 0.18; the micrometer's zero error is not in it.
#[test]
fn the_micrometers_zero_cancels_when_the_gauge_was_zeroed_on_it() {
    let mut chain = Chain::new();
    let set_at = chain.setting(2.4500);
    let (needle, journal) = (chain.needle(-0.0021), chain.micrometer(2.4501));
    let clearance = from_needle(
        &set_at,
        NeedleSense::ClockwiseIsSmaller,
        &[needle],
        &[journal],
    )
    .unwrap();
    assert!(close(thou(&clearance.least), 2.0));
    let give_or_take = clearance.least.give_or_take().to_si() / THOU;
    assert!((give_or_take - 0.18).abs() < 0.005, "{give_or_take}");
    let zero = chain.zero;
    assert!(
        clearance
            .least
            .estimate()
            .parts()
            .iter()
            .all(|(id, _)| *id != zero)
    );
}

#[test]
fn the_sense_of_the_needle_decides_between_tight_and_loose() {
    let set_at = inches(2.4500);
    let clearance = |sense| {
        let needle = [inches(-0.0020)];
        let clearance = from_needle(&set_at, sense, &needle, &[inches(2.4500)]).unwrap();
        thou(&clearance.mean)
    };
    assert!(close(clearance(NeedleSense::ClockwiseIsSmaller), 2.0));
    assert!(close(clearance(NeedleSense::ClockwiseIsLarger), -2.0));
}

#[test]
fn a_strips_widest_spot_is_the_least_clearance_and_its_ends_give_the_taper() {
    let clearance = from_strip(&[StripReading {
        widest: inches(0.0015),
        ends: Some((inches(0.0015), inches(0.0025))),
    }])
    .unwrap();
    assert!(close(thou(&clearance.least), 1.5));
    assert!(close(thou(&clearance.greatest), 2.5));
    assert!(close(thou(&clearance.mean), 2.0));
    assert!(close(thou(&clearance.taper.unwrap()), 1.0));
}

#[test]
fn an_end_tighter_than_the_widest_spot_is_told() {
    let clearance = from_strip(&[StripReading {
        widest: inches(0.0020),
        ends: Some((inches(0.0015), inches(0.0025))),
    }])
    .unwrap();
    assert!(close(thou(&clearance.least), 1.5));
    assert!(
        clearance.findings[0]
            .text
            .contains("read the widest spot again")
    );
}

#[test]
fn what_is_missing_is_named() {
    let none = Station::default();
    let journal_only = Station {
        journals: vec![inches(2.45)],
        ..Station::default()
    };
    let bore_only = Station {
        bores: vec![inches(2.45)],
        ..Station::default()
    };
    let broken = Station {
        bores: vec![inches(f64::NAN)],
        journals: vec![inches(2.45)],
        ..Station::default()
    };
    assert_eq!(from_stations(&[]), Err(ClearanceError::NoBore));
    assert_eq!(from_stations(&[none]), Err(ClearanceError::NoBore));
    assert_eq!(from_stations(&[journal_only]), Err(ClearanceError::NoBore));
    assert_eq!(from_stations(&[bore_only]), Err(ClearanceError::NoJournal));
    assert_eq!(from_stations(&[broken]), Err(ClearanceError::NotFinite));
    assert_eq!(from_strip(&[]), Err(ClearanceError::NoStrip));
}

#[test]
fn the_quick_checks_give_what_the_functions_give() {
    let exact = |value: f64| Estimate::exact(value * INCH);
    let two_tools = Given::new()
        .with("bore", exact(2.4522))
        .with("journal", exact(2.4500))
        .with("bore-2", exact(2.4524))
        .with("journal-2", exact(2.4501));
    let same_micrometer = Given::new()
        .with("set-at", exact(2.4500))
        .with("needle-sense", Estimate::exact(0.0))
        .with("needle", exact(-0.0022))
        .with("journal", exact(2.4500));
    let strip = Given::new().with("widest", exact(0.0022));
    for (id, given, taper) in [
        ("running-clearance", two_tools, Some(0.1)),
        ("running-clearance-same-micrometer", same_micrometer, None),
        ("running-clearance-strip", strip, None),
    ] {
        let answer = calculation(id).unwrap().answer(&given).unwrap();
        let thou = |name: &str| answer.get(name).map(|value| value.value() / THOU);
        assert!(close(
            thou("least").unwrap(),
            if taper.is_some() { 2.1 } else { 2.2 }
        ));
        assert_eq!(thou("taper").is_some(), taper.is_some());
        if let (Some(got), Some(wanted)) = (thou("taper"), taper) {
            assert!(close(got, wanted));
        }
    }
}

#[test]
fn one_end_of_a_strip_alone_is_named_as_what_is_missing() {
    let given = Given::new()
        .with("widest", Estimate::exact(5e-5))
        .with("front", Estimate::exact(5e-5));
    let error = RUNNING_CLEARANCE_STRIP.answer(&given).unwrap_err();
    assert!(matches!(
        error,
        CalculationError::NotPossible { field: "rear", .. }
    ));
}

fn any_station() -> impl Strategy<Value = Station> {
    let reading = |count| {
        prop::collection::vec(
            (0.003..0.6_f64).prop_map(|si| Measured::exact(Length::from_si(si))),
            count,
        )
    };
    (reading(1..5), reading(0..4), reading(1..5)).prop_map(|(bores, bores_near_joint, journals)| {
        Station {
            bores,
            bores_near_joint,
            journals,
        }
    })
}

proptest! {
    #[test]
    fn the_mean_lies_between_the_least_and_the_greatest(stations in prop::collection::vec(any_station(), 1..4)) {
        let clearance = from_stations(&stations).unwrap();
        let [least, mean, greatest] = [&clearance.least, &clearance.mean, &clearance.greatest]
            .map(|value| value.value().to_si());
        prop_assert!(least <= mean + 1e-15 && mean <= greatest + 1e-15);
        for shape in [clearance.taper, clearance.journal_taper, clearance.journal_out_of_round]
            .into_iter()
            .flatten()
        {
            prop_assert!(shape.value().to_si() >= 0.0);
        }
    }

    #[test]
    fn bore_and_journal_bigger_by_the_same_leave_the_clearance(
        stations in prop::collection::vec(any_station(), 1..4),
        shift in -0.001..0.1_f64,
    ) {
        let shifted = |readings: &[Measured<Length>]| -> Vec<Measured<Length>> {
            let by = Measured::exact(Length::from_si(shift));
            readings.iter().map(|reading| reading + &by).collect()
        };
        let moved: Vec<Station> = stations
            .iter()
            .map(|station| Station {
                bores: shifted(&station.bores),
                bores_near_joint: shifted(&station.bores_near_joint),
                journals: shifted(&station.journals),
            })
            .collect();
        let (before, after) = (from_stations(&stations).unwrap(), from_stations(&moved).unwrap());
        for (left, right) in [
            (before.least, after.least),
            (before.mean, after.mean),
            (before.greatest, after.greatest),
        ] {
            prop_assert!((left.value().to_si() - right.value().to_si()).abs() < 1e-14);
        }
    }

    #[test]
    fn an_error_that_every_reading_shares_cancels(
        stations in prop::collection::vec(any_station(), 1..4),
        zero in 1e-9..1e-4_f64,
    ) {
        let source = Sources::new().fresh("micrometer", Origin::SharedZero);
        let doubtful = |readings: &[Measured<Length>]| -> Vec<Measured<Length>> {
            readings.iter().map(|one| one.clone().with(source, Length::from_si(zero))).collect()
        };
        let stations: Vec<Station> = stations
            .iter()
            .map(|station| Station {
                bores: doubtful(&station.bores),
                bores_near_joint: doubtful(&station.bores_near_joint),
                journals: doubtful(&station.journals),
            })
            .collect();
        let clearance = from_stations(&stations).unwrap();
        for value in [clearance.least, clearance.mean, clearance.greatest] {
            prop_assert!(value.give_or_take().to_si() < zero * 1e-12);
        }
    }
}
