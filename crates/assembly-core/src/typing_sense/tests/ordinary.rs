//! Ordinary readings raise no question, and no text does harm.

use proptest::prelude::*;

use super::*;

#[test]
fn an_ordinary_reading_is_left_alone() {
    let repeated = Expectation {
        repeats: vec![inches(2.4483)],
        ..journal()
    };
    let beside = Expectation {
        neighbours: [2.4481, 2.4484, 2.4482, 2.4479].map(inches).to_vec(),
        ..journal()
    };
    let before = Expectation {
        previous: Some(inches(2.4483)),
        ..journal()
    };
    for (text, expected) in [
        ("2.4500", journal()),
        ("2.4483", journal()),
        ("2.4470", journal()),
        // Well worn: unusual, but no slip gives it.
        ("2.4455", journal()),
        ("62.19 mm", journal()),
        ("2.4483", repeated.clone()),
        ("2.4480", repeated.clone()),
        ("2.4486", repeated),
        ("2.4475", beside.clone()),
        ("2.4490", beside),
        ("2.4479", before.clone()),
        ("2.4483", before),
    ] {
        let asked = questions(&typed(text), &expected);
        assert!(asked.is_empty(), "{text}: {}", asked[0]);
    }
}

#[test]
fn undersize_neighbours_make_an_undersize_reading_ordinary() {
    let ground = Expectation {
        neighbours: [2.4401, 2.4399].map(inches).to_vec(),
        ..journal()
    };
    assert!(questions(&typed("2.4398"), &ground).is_empty());
}

#[test]
fn one_slip_among_the_neighbours_does_not_cast_doubt_on_the_rest() {
    let one_off = Expectation {
        neighbours: [2.4482, 2.4733, 2.4481].map(inches).to_vec(),
        ..journal()
    };
    assert!(questions(&typed("2.4484"), &one_off).is_empty());
}

#[test]
fn where_nothing_is_known_nothing_is_asked() {
    for scale in [
        Scale::Plain,
        Scale::Needle,
        Scale::INCH_THIMBLE,
        Scale::METRIC_DIAL,
    ] {
        let nothing = Expectation {
            scale,
            sizes: Sizes::InchUndersizes,
            ..Expectation::default()
        };
        for text in ["2.4483", "-3 tenths", "0", "2 7/16", "1e-9", "62.20"] {
            assert!(questions(&typed(text), &nothing).is_empty());
        }
    }
}

#[test]
fn a_strange_reading_that_no_slip_explains_is_not_explained_away() {
    for text in ["2.3117", "2.6049", "2.3999"] {
        let asked = questions(&typed(text), &journal());
        assert!(asked.is_empty(), "{text}: {}", asked[0]);
    }
}

/// A plain generator of the same numbers every time (splitmix64), as a normal deviate.
fn normals(seed: u64) -> impl FnMut() -> f64 {
    let mut state = seed;
    let mut uniform = move || {
        state = state.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut mixed = state;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((mixed ^ (mixed >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    };
    move || (0..12).map(|_| uniform()).sum::<f64>() - 6.0
}

/// Reads five honest journals each, one after the other, with what was read before as knowledge.
#[test]
fn honest_readings_are_questioned_less_than_once_in_two_hundred() {
    let mut normal = normals(20);
    let (mut asked, mut read) = (0, 0);
    for _ in 0..400 {
        let mut expected = journal();
        let shaft = 2.45 + 0.0015 * normal();
        for _ in 0..5 {
            let place = shaft + 0.0005 * normal();
            for _ in 0..2 {
                let reading = format!("{:.4}", place + 0.0001 * normal());
                let reading = typed(&reading);
                asked += usize::from(!questions(&reading, &expected).is_empty());
                read += 1;
                expected.repeats.push(reading.si());
            }
            expected.neighbours.append(&mut expected.repeats);
        }
    }
    assert!(asked * 200 < read, "{asked} of {read}");
}

/// The same journals, each second reading with a thimble turn too many.
#[test]
fn nearly_every_missed_turn_is_found() {
    let mut normal = normals(21);
    let (mut found, mut read) = (0, 0);
    for _ in 0..400 {
        let place = 2.45 + 0.0015 * normal();
        let reading = typed(&format!("{:.4}", place + 0.025 + 0.0001 * normal()));
        let asked = questions(&reading, &journal());
        read += 1;
        found += usize::from(asked.iter().any(|one| {
            one.slip == Slip::ThimbleTurn
                && (one.likely.si() - inches(place)).abs() < inches(0.0005)
        }));
    }
    assert!(found * 100 >= read * 95, "{found} of {read}");
}

proptest! {
    #[test]
    fn any_reading_against_any_knowledge_gives_sound_weights(
        text in "-?[0-9]{0,3}\\.?[0-9]{1,6}( (mm|thou|tenths|µm|m))?",
        nominal in prop::option::of(-1e3..1e3_f64),
        known in prop::collection::vec(-1.0..1.0_f64, 0..6),
        again in prop::collection::vec(prop::num::f64::ANY, 0..3),
        spread in prop_oneof![Just(0.0), 1e-9..1e2_f64],
        scale in prop_oneof![
            Just(Scale::Plain),
            Just(Scale::Needle),
            Just(Scale::INCH_THIMBLE),
            Just(Scale::METRIC_DIAL)
        ],
    ) {
        let expected = Expectation {
            nominal,
            part_spread: spread,
            place_spread: spread / 3.0,
            neighbours: known,
            repeats: again,
            reading_spread: spread / 10.0,
            sizes: Sizes::MetricOversizes,
            scale,
            ..Expectation::default()
        };
        let asked = questions(&typed(&text), &expected);
        prop_assert!(asked.len() <= 3);
        let sum: f64 = asked.iter().map(|one| one.weight).sum();
        prop_assert!(sum <= 1.0 + 1e-9, "{}", sum);
        for question in &asked {
            prop_assert!(question.weight.is_finite() && question.weight > 0.0);
            prop_assert!(question.likely.si().is_finite());
            prop_assert!(question.to_string().len() > 20);
        }
        prop_assert!(asked.windows(2).all(|pair| pair[0].weight >= pair[1].weight));
    }
}

// A sheet may list sizes of its own: those are asked about, and what is common
// elsewhere is not.
#[test]
fn sizes_that_the_sheet_lists_take_the_place_of_the_common_ones() {
    let listed = |sizes: &[f64]| Expectation {
        sizes: Sizes::Listed(sizes.iter().map(|size| inches(*size)).collect()),
        ..journal()
    };
    let sizes = |reading: &str, sizes: &[f64]| -> Vec<Slip> {
        let asked = questions(&typed(reading), &listed(sizes));
        asked.iter().map(|one| one.slip).collect()
    };
    let other = |size: f64| Slip::OtherSize { step: inches(size) };
    // 2.4500 less 0.016 and a wear of one tenth.
    assert_eq!(sizes("2.4339", &[-0.016, -0.032])[0], other(-0.016));
    assert!(!sizes("2.4399", &[-0.016, -0.032]).contains(&other(-0.010)));
    assert!(!sizes("2.4399", &[]).contains(&other(-0.010)));
    let asked = questions(&typed("2.4339"), &listed(&[-0.016]));
    assert!(
        asked[0].to_string().contains("0.016 in undersize"),
        "{}",
        asked[0]
    );
}
