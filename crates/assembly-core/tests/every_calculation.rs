//! Holds for every calculation there is: its description hangs together, and
//! no in-range numbers make it panic or give a number that is none.

#![allow(clippy::unwrap_used, clippy::expect_used, clippy::panic)]

use std::collections::BTreeSet;

use assembly_core::describe::{CALCULATIONS, Calculation, CalculationError, Given, Input, Takes};
use assembly_core::measure::{Estimate, Origin, Sources};
use assembly_core::quantity::unit_of;
use proptest::prelude::*;
use proptest::sample::Index;
use proptest::strategy::ValueTree;

/// The names in curly brackets of a line.
fn names_in(line: &str) -> Vec<&str> {
    line.split('{')
        .skip(1)
        .map(|rest| rest.split_once('}').map_or(rest, |(name, _)| name))
        .collect()
}

#[test]
fn every_description_hangs_together() {
    let mut ids = BTreeSet::new();
    for calculation in CALCULATIONS {
        let id = calculation.id;
        assert!(ids.insert(id), "two calculations are called {id}");
        assert!(!calculation.title.is_empty() && !calculation.purpose.is_empty());
        assert!(!calculation.outputs.is_empty(), "{id} gives nothing");
        assert!(!calculation.workings.is_empty(), "{id} shows no workings");
        let mut names = BTreeSet::new();
        for input in calculation.inputs {
            assert!(names.insert(input.id), "{id}: {} twice", input.id);
            assert!(
                input.sane.0 <= input.sane.1
                    && input.sane.0.is_finite()
                    && input.sane.1.is_finite(),
                "{id}: the range of {} is upside down",
                input.id
            );
            assert!(!input.label.is_empty() && !input.how.is_empty());
        }
        for output in calculation.outputs {
            assert!(names.insert(output.id), "{id}: {} twice", output.id);
        }
        let units = calculation.inputs.iter().map(|one| (one.kind, one.units));
        let outputs = calculation.outputs.iter().map(|one| (one.kind, one.units));
        for (kind, units) in units.chain(outputs) {
            for symbol in [units.inch, units.metric] {
                assert!(
                    unit_of(kind, symbol).is_some(),
                    "{id}: there is no unit {symbol:?} of {kind}"
                );
            }
        }
        for line in calculation.workings {
            for name in names_in(line) {
                assert!(
                    names.contains(name),
                    "{id}: {{{name}}} is neither input nor output"
                );
            }
        }
    }
}

/// How one value of an input is picked.
#[derive(Clone, Debug)]
struct Pick {
    /// Which corner or place of the range.
    place: Index,
    /// Where between the ends.
    between: f64,
    /// How uncertain, as a part of the value.
    doubt: f64,
    /// Whether it shares its error with other values.
    shared: bool,
}

fn pick() -> impl Strategy<Value = Pick> {
    (
        any::<Index>(),
        0.0..=1.0_f64,
        prop_oneof![Just(0.0), Just(1e-12), 0.0..0.5_f64],
        any::<bool>(),
    )
        .prop_map(|(place, between, doubt, shared)| Pick {
            place,
            between,
            doubt,
            shared,
        })
}

/// In-range values, the ends, the least and zero among them.
fn value_of(input: &Input, pick: &Pick) -> f64 {
    let (low, high) = input.sane;
    let inside = low + (high - low) * pick.between;
    if let Takes::OneOf(choices) = input.takes {
        return (pick.between * (choices.len() - 1) as f64).round();
    }
    let small = if low > 0.0 {
        low * (high / low).powf(pick.between)
    } else {
        inside * 1e-6
    };
    let candidates = [
        low,
        high,
        inside,
        small.clamp(low, high),
        0.0_f64.clamp(low, high),
    ];
    // Half of the time somewhere inside, else a corner.
    let at = pick.place.index(candidates.len() * 2);
    candidates.get(at).copied().unwrap_or(inside)
}

fn given_of(calculation: &Calculation, picks: &[Pick]) -> Given {
    let mut sources = Sources::new();
    let mut given = Given::new();
    let mut picks = picks.iter().cycle();
    for input in calculation.inputs {
        let shape = picks.next().unwrap();
        let count = match input.takes {
            Takes::One | Takes::OneOf(_) => 1,
            Takes::Optional => shape.place.index(2),
            Takes::OneOrMore => 1 + shape.place.index(5),
            Takes::Any => shape.place.index(6),
        };
        for _ in 0..count {
            let pick = picks.next().unwrap();
            let value = value_of(input, pick);
            let cause = if pick.shared {
                sources.shared("tool", "the tool", Origin::SharedZero)
            } else {
                sources.fresh("feel", Origin::Repeat)
            };
            let exact = matches!(input.takes, Takes::OneOf(_));
            let doubt = if exact { 0.0 } else { value.abs() * pick.doubt };
            given.push(input.id, Estimate::exact(value).with(cause, doubt));
        }
    }
    given
}

fn holds(calculation: &Calculation, given: &Given) {
    match calculation.answer(given) {
        Ok(answer) => {
            for (id, value) in answer.values() {
                assert!(
                    calculation.output(id).is_some(),
                    "{}: {id} is not described",
                    calculation.id
                );
                assert!(
                    value.value().is_finite() && value.deviation().is_finite(),
                    "{}: {id} is no number",
                    calculation.id
                );
            }
            for finding in answer.findings() {
                assert!(!finding.text.contains("NaN") && !finding.text.contains("inf "));
            }
        }
        Err(CalculationError::NoNumber { output }) => {
            panic!(
                "{}: {output} came out as no number of {given:?}",
                calculation.id
            )
        }
        Err(error) => assert!(
            error
                .field()
                .is_some_and(|field| calculation.input(field).is_some()),
            "{}: {error} names no input",
            calculation.id
        ),
    }
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 300, ..ProptestConfig::default() })]

    #[test]
    fn no_numbers_in_range_break_a_calculation(picks in prop::collection::vec(pick(), 97)) {
        for calculation in CALCULATIONS {
            holds(calculation, &given_of(calculation, &picks));
        }
    }
}

/// A calculation that refused everything would pass the test above.
#[test]
fn every_calculation_answers_some_numbers_in_its_ranges() {
    let mut runner = proptest::test_runner::TestRunner::deterministic();
    let strategy = prop::collection::vec(pick(), 97);
    for calculation in CALCULATIONS {
        let answered = (0..2000).any(|_| {
            let picks = strategy.new_tree(&mut runner).unwrap().current();
            calculation.answer(&given_of(calculation, &picks)).is_ok()
        });
        assert!(answered, "{} answered nothing at all", calculation.id);
    }
}

/// Every needed input but this one, somewhere in the middle of its range.
fn given_without(calculation: &Calculation, left_out: &Input) -> Given {
    let mut given = Given::new();
    for input in calculation.inputs {
        let value = match input.takes {
            _ if input.id == left_out.id => continue,
            Takes::Optional | Takes::Any => continue,
            Takes::OneOf(_) => 0.0,
            Takes::One | Takes::OneOrMore => f64::midpoint(input.sane.0, input.sane.1),
        };
        given.push(input.id, Estimate::exact(value));
    }
    given
}

#[test]
fn a_missing_or_senseless_value_is_told_with_its_field() {
    for calculation in CALCULATIONS {
        for input in calculation.inputs {
            let beyond = input.sane.1.abs() * 10.0 + 1e9;
            for read in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY, beyond] {
                let given = given_without(calculation, input).with(input.id, Estimate::exact(read));
                let error = calculation.answer(&given).expect_err(calculation.id);
                assert_eq!(error.field(), Some(input.id), "{}: {error}", calculation.id);
            }
            if !matches!(input.takes, Takes::Optional | Takes::Any) {
                let error = calculation
                    .answer(&given_without(calculation, input))
                    .expect_err(calculation.id);
                assert_eq!(error.field(), Some(input.id), "{}: {error}", calculation.id);
                assert!(matches!(error, CalculationError::Missing { .. }));
            }
        }
    }
}
