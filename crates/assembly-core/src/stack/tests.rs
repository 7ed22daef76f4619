//! What holds for every stack, and the four ways of working one out.

use std::collections::BTreeSet;

use proptest::prelude::*;

use super::*;
use crate::describe::{CalculationError, Given};
use crate::measure::{Estimate, Origin, Shape, Sources, Window};

/// Four parts of one, two, two and four units.
fn parts(deviation: impl Fn(usize) -> TermValue) -> StackUp {
    let mut stack_up = StackUp::new(&QUENCH);
    for (place, term) in QUENCH.terms.iter().enumerate() {
        stack_up = stack_up.with(term.input.id, deviation(place)).unwrap();
    }
    stack_up
}

/// Sizes of a real engine, in the order of the terms, metres.
const SIZES: [f64; 5] = [0.229_235, 0.088_392, 0.144_78, 0.039_624, 0.001_016];

#[test]
fn every_stack_hangs_together() {
    let mut ids = BTreeSet::new();
    for stack in STACKS {
        assert!(ids.insert(stack.id), "{} twice", stack.id);
        assert!(!stack.title.is_empty() && !stack.proof.is_empty());
        assert!(
            !stack.terms.is_empty() && stack.terms.len() <= 12,
            "{}",
            stack.id
        );
        let terms: BTreeSet<&str> = stack.terms.iter().map(|term| term.input.id).collect();
        assert_eq!(terms.len(), stack.terms.len(), "{}", stack.id);
        if let Formula::Sum(times) = stack.formula {
            assert_eq!(times.len(), stack.terms.len(), "{}", stack.id);
            assert!(times.iter().all(|times| *times != 0.0), "{}", stack.id);
        }
        assert_eq!(super::stack(stack.id).unwrap().id, stack.id);
    }
}

#[test]
fn worst_case_adds_and_root_sum_square_does_not() {
    let off = [1e-4, 2e-4, 2e-4, 3e-4, 1e-4];
    let stack_up = parts(|place| TermValue::within(SIZES[place], off[place]));
    let value = stack_up.value().unwrap();
    let worst = stack_up.worst_case().unwrap();
    // The stroke counts half.
    assert!((worst.greatest - value - 8e-4).abs() < 1e-12);
    assert!((value - worst.least - 8e-4).abs() < 1e-12);
    let likely = stack_up.root_sum_square().unwrap();
    let root = (1.0_f64 + 1.0 + 4.0 + 9.0 + 1.0).sqrt() * 1e-4;
    assert!((likely.greatest - value - root).abs() < 1e-12);
}

#[test]
fn what_was_measured_counts_twice_its_give_or_take() {
    let mut sources = Sources::new();
    let ids: Vec<_> = (0..5)
        .map(|_| sources.fresh("feel", Origin::Repeat))
        .collect();
    let stack_up =
        parts(|place| TermValue::measured(Estimate::exact(SIZES[place]).with(ids[place], 1e-5)));
    let one = stack_up.estimate().unwrap().deviation();
    assert!((one - (4.25_f64).sqrt() * 1e-5).abs() < 1e-12);
    let likely = stack_up.root_sum_square().unwrap();
    assert!((likely.greatest - likely.least - 4.0 * one).abs() < 1e-12);
    let worst = stack_up.worst_case().unwrap();
    assert!((worst.greatest - worst.least - 4.0 * 4.5e-5).abs() < 1e-12);
}

#[test]
fn an_error_that_two_parts_share_cancels_in_the_draws_too() {
    let zero = Sources::new().shared("depth gauge", "its zero", Origin::SharedZero);
    let stack_up = StackUp::new(&PICKUP_TO_PAN)
        .with(
            "pan-depth",
            TermValue::measured(Estimate::exact(0.19).with(zero, 1e-3)),
        )
        .unwrap()
        .with(
            "pickup-depth",
            TermValue::measured(Estimate::exact(0.18).with(zero, 1e-3)),
        )
        .unwrap();
    let drawn = stack_up.monte_carlo(2000, 1).unwrap();
    assert!(drawn.deviation() < 1e-12);
    assert!((drawn.mean() - 0.01).abs() < 1e-12);
}

#[test]
fn many_draws_agree_with_the_first_order_for_a_sum() {
    let mut sources = Sources::new();
    let ids: Vec<_> = (0..5)
        .map(|_| sources.fresh("feel", Origin::Repeat))
        .collect();
    let stack_up =
        parts(|place| TermValue::measured(Estimate::exact(SIZES[place]).with(ids[place], 2e-5)));
    let expected = stack_up.estimate().unwrap();
    let drawn = stack_up.monte_carlo(200_000, 7).unwrap();
    let deviation = expected.deviation();
    // The deviation of a deviation from n draws is 1/√(2n) of it.
    assert!((drawn.deviation() / deviation - 1.0).abs() < 5.0 / 400_000_f64.sqrt());
    assert!((drawn.mean() - expected.value()).abs() < 5.0 * deviation / 200_000_f64.sqrt());
    // 95 % of a normal lies within 1.96 deviations.
    let (low, high) = drawn.limits(0.95);
    assert!(((high - low) / deviation - 3.92).abs() < 0.04);
    let window = Window::new(
        Some(expected.value() - deviation),
        Some(expected.value() + deviation),
    );
    assert!((drawn.share_inside(&window.unwrap()) - 0.6827).abs() < 0.005);
}

#[test]
fn parts_within_limits_are_drawn_between_them() {
    let even = parts(|place| TermValue::within(SIZES[place], if place == 4 { 1e-4 } else { 0.0 }));
    let value = even.value().unwrap();
    let drawn = even.monte_carlo(100_000, 3).unwrap();
    // An even spread has its half-width over √3 as deviation.
    assert!((drawn.deviation() * 3.0_f64.sqrt() / 1e-4 - 1.0).abs() < 0.01);
    let (low, high) = drawn.limits(1.0);
    assert!(low >= value - 1e-4 && high <= value + 1e-4);

    for shape in [Shape::Triangular, Shape::ArcSine] {
        let shaped = parts(|place| {
            TermValue::exact(SIZES[place]).give_or_take(if place == 4 { 1e-4 } else { 0.0 }, shape)
        });
        let drawn = shaped.monte_carlo(100_000, 3).unwrap();
        assert!((drawn.deviation() / shape.deviation(1e-4) - 1.0).abs() < 0.01);
    }
}

#[test]
fn one_seed_gives_one_result() {
    let stack_up = parts(|place| TermValue::within(SIZES[place], 1e-4));
    let one = stack_up.monte_carlo(1000, 42).unwrap();
    assert_eq!(one, stack_up.monte_carlo(1000, 42).unwrap());
    assert_ne!(one, stack_up.monte_carlo(1000, 43).unwrap());
    assert_eq!(stack_up.monte_carlo(0, 1).unwrap().without_result(), 0);
}

#[test]
fn a_missing_or_unknown_part_is_named() {
    let error = StackUp::new(&QUENCH).value().unwrap_err();
    assert_eq!(error.field(), Some("block-height"));
    let error = StackUp::new(&QUENCH)
        .with("flywheel", TermValue::exact(0.1))
        .unwrap_err();
    assert!(error.to_string().contains("stroke"), "{error}");
    let error = StackUp::new(&QUENCH)
        .with("stroke", TermValue::exact(3.48))
        .unwrap_err();
    assert!(matches!(error, CalculationError::OutOfRange { .. }));
}

#[test]
fn a_result_out_of_reach_is_told_with_the_range() {
    let stack_up = parts(|place| TermValue::exact(SIZES[place]));
    let error = stack_up
        .solve_between("gasket-compressed", 0.005, (0.0005, 0.0015))
        .unwrap_err();
    let text = error.to_string();
    assert!(
        text.starts_with("no head gasket, compressed between 0.5 mm"),
        "{text}"
    );
    assert!(matches!(error, SolveError::OutOfReach { wanted, .. } if wanted == 0.005));
    assert!(matches!(
        stack_up.solve("flywheel", 0.001),
        Err(SolveError::Given(CalculationError::NoSuchTerm { .. }))
    ));
}

#[test]
fn a_part_that_is_solved_for_carries_the_errors_of_the_others() {
    let mut sources = Sources::new();
    let ids: Vec<_> = (0..5)
        .map(|_| sources.fresh("feel", Origin::Repeat))
        .collect();
    let stack_up =
        parts(|place| TermValue::measured(Estimate::exact(SIZES[place]).with(ids[place], 1e-5)));
    let stroke = stack_up.solve("stroke", 0.001).unwrap();
    // One in the sum is two of the stroke, since it counts half.
    assert!((stroke.deviation() - 2.0 * 2e-5).abs() < 1e-12);
}

/// A value in a term's range, its ends among them.
fn place_in(range: (f64, f64), between: f64) -> f64 {
    let (low, high) = range;
    if between < 0.1 {
        low
    } else if between > 0.9 {
        high
    } else {
        low + (high - low) * (between - 0.1) / 0.8
    }
}

fn filled(stack: &'static Stack, places: &[f64], off: &[f64]) -> StackUp {
    let mut sources = Sources::new();
    let mut given = Given::new();
    for ((term, place), off) in stack.terms.iter().zip(places).zip(off) {
        let value = place_in(term.input.sane, *place);
        let cause = sources.fresh("feel", Origin::Repeat);
        given.push(
            term.input.id,
            Estimate::exact(value).with(cause, off * value.abs()),
        );
    }
    StackUp::from_given(stack, &given).unwrap()
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 48, ..ProptestConfig::default() })]

    #[test]
    fn no_values_in_range_make_a_stack_panic_or_give_no_number(
        places in proptest::collection::vec(0.0..1.0_f64, 12),
        off in proptest::collection::vec(prop_oneof![Just(0.0), 0.0..0.5_f64], 12),
        wanted in prop_oneof![-1.0..1.0_f64, -1e6..1e6_f64, Just(0.0)],
    ) {
        for stack in STACKS {
            let stack_up = filled(stack, &places, &off);
            // A formula may have no number for these values, and says so.
            if let Ok(estimate) = stack_up.estimate() {
                prop_assert!(estimate.value().is_finite() && estimate.deviation().is_finite());
            }
            if let Ok(worst) = stack_up.worst_case() {
                prop_assert!(worst.least.is_finite() && worst.greatest.is_finite());
                prop_assert!(worst.least <= worst.greatest);
            }
            if let Ok(likely) = stack_up.root_sum_square() {
                prop_assert!(likely.least.is_finite() && likely.greatest.is_finite());
            }
            if let Ok(drawn) = stack_up.monte_carlo(20, 5) {
                prop_assert!(drawn.mean().is_finite() && drawn.deviation().is_finite());
                let (low, high) = drawn.limits(0.95);
                prop_assert!(low <= high);
            }
            for term in stack.terms {
                if let Ok(solved) = stack_up.solve(term.input.id, wanted) {
                    prop_assert!(solved.value().is_finite() && solved.deviation().is_finite());
                }
            }
        }
    }

    /// Whatever the stack gives, each of its terms can be found back from it.
    #[test]
    fn a_term_that_is_solved_for_gives_the_result_again(
        places in proptest::collection::vec(0.1..0.9_f64, 12),
    ) {
        for stack in STACKS {
            let stack_up = filled(stack, &places, &[0.0; 12]);
            let Ok(result) = stack_up.value() else { continue };
            for (term, place) in stack.terms.iter().zip(&places) {
                let was = place_in(term.input.sane, *place);
                let solved = match stack_up.solve(term.input.id, result) {
                    Ok(solved) => solved,
                    Err(error) => {
                        prop_assert!(
                            matches!(error, SolveError::DoesNotMatter { .. }),
                            "{} {}: {error}", stack.id, term.input.id
                        );
                        continue;
                    }
                };
                let again = stack_up
                    .clone()
                    .with(term.input.id, TermValue::measured(solved))
                    .unwrap()
                    .value()
                    .unwrap();
                prop_assert!(
                    (again - result).abs() <= 1e-9 * result.abs().max(1e-6),
                    "{} {}: {was} {again} {result}", stack.id, term.input.id
                );
            }
        }
    }

    /// The slopes that come with the formulas are their derivatives.
    #[test]
    fn slopes_agree_with_difference_quotients(
        places in proptest::collection::vec(0.3..0.7_f64, 12),
    ) {
        for stack in STACKS {
            let terms: Vec<f64> = stack
                .terms
                .iter()
                .zip(&places)
                .map(|(term, place)| place_in(term.input.sane, *place))
                .collect();
            if !stack.value_at(&terms).is_finite() {
                continue;
            }
            for (place, term) in stack.terms.iter().enumerate() {
                let step = (term.input.sane.1 - term.input.sane.0) * 1e-6;
                let at = |by: f64| {
                    let mut terms = terms.clone();
                    terms[place] += by;
                    stack.value_at(&terms)
                };
                let quotient = (at(step) - at(-step)) / (2.0 * step);
                let slope = stack.slope_at(&terms, place);
                let scale = quotient.abs().max(stack.value_at(&terms).abs()).max(1.0);
                prop_assert!(
                    !quotient.is_finite() || (slope - quotient).abs() <= 1e-3 * scale,
                    "{} {}: {slope} {quotient}", stack.id, term.input.id
                );
            }
        }
    }
}
