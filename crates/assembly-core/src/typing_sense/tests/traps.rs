//! The slips of the trade, each in the situation it happens in.

use super::*;

fn first(text: &str, expected: &Expectation) -> Question {
    let asked = questions(&typed(text), expected);
    asked
        .into_iter()
        .next()
        .unwrap_or_else(|| panic!("{text} raises no question"))
}

#[track_caller]
fn asks(text: &str, expected: &Expectation, slip: Slip, likely: &str) {
    let question = first(text, expected);
    assert_eq!(question.slip, slip, "{question}");
    assert_eq!(question.likely.to_string(), likely);
    assert!(
        question.weight >= 0.5 && question.weight <= 1.0,
        "{}",
        question.weight
    );
    // The offered text reads as the offered value, and raises no question again.
    let again = typed(question.likely.text());
    assert_eq!(again, question.likely);
    assert!(questions(&again, expected).is_empty(), "{again}");
}

#[test]
fn one_turn_of_an_inch_thimble() {
    asks("2.4733", &journal(), Slip::ThimbleTurn, "2.4483 in");
    let standard = Expectation {
        sizes: Sizes::Standard,
        ..journal()
    };
    asks("2.4233", &standard, Slip::ThimbleTurn, "2.4483 in");
    // Where a journal 0.030 in under comes near as well, both are asked.
    let asked = questions(&typed("2.4233"), &journal());
    assert!(asked.iter().any(|one| one.slip == Slip::ThimbleTurn));
    assert!(
        asked
            .iter()
            .any(|one| matches!(one.slip, Slip::OtherSize { .. }))
    );
    let from_neighbours = Expectation {
        nominal: None,
        neighbours: [2.4481, 2.4484, 2.4482].map(inches).to_vec(),
        ..journal()
    };
    asks("2.4733", &from_neighbours, Slip::ThimbleTurn, "2.4483 in");
    asks("2.473", &from_neighbours, Slip::ThimbleTurn, "2.448 in");
}

#[test]
fn one_turn_of_a_metric_thimble() {
    let metric = Expectation {
        sizes: Sizes::Standard,
        scale: Scale::METRIC_THIMBLE,
        ..journal()
    };
    asks("62.73 mm", &metric, Slip::ThimbleTurn, "62.23 mm");
    asks("61.732 mm", &metric, Slip::ThimbleTurn, "62.232 mm");
}

#[test]
fn half_a_millimetre_is_a_turn_or_an_undersize_and_both_are_asked() {
    let metric = Expectation {
        sizes: Sizes::MetricUndersizes,
        scale: Scale::METRIC_THIMBLE,
        ..journal()
    };
    let asked = questions(&typed("61.73 mm"), &metric);
    let slips: Vec<Slip> = asked.iter().map(|one| one.slip).collect();
    assert!(
        slips.contains(&Slip::OtherSize { step: -0.000_5 }),
        "{asked:?}"
    );
    let sum: f64 = asked.iter().map(|one| one.weight).sum();
    assert!(sum > 0.9 && sum <= 1.0 + 1e-12);
    // The other journals at the standard size speak for the thimble.
    let others = Expectation {
        neighbours: [2.4499, 2.4501, 2.4500, 2.4498].map(inches).to_vec(),
        ..metric
    };
    assert_eq!(first("61.73 mm", &others).slip, Slip::ThimbleTurn);
}

#[test]
fn a_tenth_of_an_inch_on_a_dial() {
    let caliper = Expectation {
        nominal: Some(inches(1.56)),
        part_spread: inches(0.005),
        reading_spread: inches(0.001),
        scale: Scale::INCH_DIAL,
        ..Expectation::default()
    };
    asks("1.662", &caliper, Slip::DialTurn, "1.562 in");
    asks("1.462", &caliper, Slip::DialTurn, "1.562 in");
}

#[test]
fn a_frame_of_the_wrong_inch() {
    asks("1.4483", &journal(), Slip::Frame, "2.4483 in");
}

#[test]
fn inches_and_millimetres_mixed() {
    let question = first("62.20", &journal());
    assert_eq!(question.likely.to_string(), "62.20 mm");
    asks(
        "62.20",
        &journal(),
        Slip::OtherUnit {
            meant: unit("mm").unwrap(),
        },
        "62.20 mm",
    );
    asks(
        "2.4483 mm",
        &journal(),
        Slip::OtherUnit {
            meant: unit("in").unwrap(),
        },
        "2.4483 in",
    );
}

#[test]
fn tenths_typed_as_thou() {
    let clearance = Expectation {
        neighbours: [0.0021, 0.0023, 0.0022].map(inches).to_vec(),
        place_spread: inches(0.0003),
        reading_spread: inches(0.0002),
        ..Expectation::default()
    };
    asks(
        "21 thou",
        &clearance,
        Slip::OtherUnit {
            meant: unit("tenths").unwrap(),
        },
        "21 tenths",
    );
    asks(
        "2.1",
        &clearance,
        Slip::OtherUnit {
            meant: unit("thou").unwrap(),
        },
        "2.1 thou",
    );
    asks(
        "2.2 tenths",
        &clearance,
        Slip::OtherUnit {
            meant: unit("thou").unwrap(),
        },
        "2.2 thou",
    );
    asks("0.021", &clearance, Slip::DroppedDigit, "0.0021 in");
}

#[test]
fn digits_swapped_dropped_or_doubled() {
    let repeated = Expectation {
        repeats: vec![inches(2.4483), inches(2.4482)],
        ..journal()
    };
    asks("2.4438", &repeated, Slip::SwappedDigits, "2.4483 in");
    asks("2.4843", &repeated, Slip::SwappedDigits, "2.4483 in");
    asks("2.483", &repeated, Slip::DroppedDigit, "2.4483 in");
    asks("2.44483", &repeated, Slip::DoubledDigit, "2.4483 in");
    let round = Expectation {
        repeats: vec![inches(2.100)],
        reading_spread: inches(0.0005),
        ..Expectation::default()
    };
    asks("2.010", &round, Slip::SwappedDigits, "2.100 in");
}

#[test]
fn the_needle_read_with_the_wrong_sign() {
    let gauge = Expectation {
        neighbours: [0.0021, 0.0023, 0.0022].map(inches).to_vec(),
        place_spread: inches(0.0003),
        reading_spread: inches(0.0002),
        scale: Scale::Needle,
        ..Expectation::default()
    };
    asks("-2.1 thou", &gauge, Slip::Sign, "2.1 thou");
    asks("-21 tenths", &gauge, Slip::Sign, "21 tenths");
}

#[test]
fn a_part_of_another_size() {
    let question = first("2.4400", &journal());
    assert_eq!(question.slip, Slip::OtherSize { step: -0.000_254 });
    assert_eq!(
        question.to_string(),
        "2.4400 in would be right for a part 0.010 in undersize: has it been repaired to that size?"
    );
    let metric = Expectation {
        sizes: Sizes::MetricUndersizes,
        scale: Scale::METRIC_THIMBLE,
        ..journal()
    };
    let question = first("61.98 mm", &metric);
    assert_eq!(question.slip, Slip::OtherSize { step: -0.000_25 });
    assert!(
        question.to_string().contains("0.25 mm undersize"),
        "{question}"
    );
    let bore = Expectation {
        nominal: Some(inches(4.03)),
        sizes: Sizes::InchOversizes,
        ..journal()
    };
    assert_eq!(
        first("4.0602", &bore).slip,
        Slip::OtherSize { step: 0.000_762 }
    );
}

#[test]
fn other_quantities_have_their_units_mixed_up_too() {
    let newton_metre = unit("N·m").unwrap();
    let torque = Expectation {
        nominal: Some(unit("ft-lb").unwrap().to_si(65.0)),
        part_spread: newton_metre.to_si(1.0),
        reading_spread: newton_metre.to_si(0.5),
        ..Expectation::default()
    };
    let typed = read("65", Kind::Torque, newton_metre).unwrap();
    let asked = questions(&typed, &torque);
    assert_eq!(asked[0].likely.to_string(), "65 ft-lb");
}

#[test]
fn each_tool_of_the_bench_has_the_scale_its_slips_come_from() {
    let thou = unit("thou").unwrap();
    let scale = |id| Scale::of(crate::tool::instrument(id).unwrap(), thou);
    for (id, expected) in [
        ("outside-micrometer-proved", Scale::INCH_THIMBLE),
        ("telescoping-gauge-novice", Scale::INCH_THIMBLE),
        ("depth-micrometer", Scale::INCH_THIMBLE),
        ("caliper-inside", Scale::INCH_DIAL),
        ("bore-gauge-tenths", Scale::Needle),
        ("dial-indicator", Scale::Needle),
        ("stretch-gauge", Scale::Needle),
        ("feeler-blades", Scale::Plain),
        ("burette", Scale::Plain),
    ] {
        assert_eq!(scale(id), expected, "{id}");
    }
}
