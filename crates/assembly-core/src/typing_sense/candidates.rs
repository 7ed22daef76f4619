//! What may have been meant, for each slip that can have happened.

use super::slip::{Circumstance, Slip};
use super::{Expectation, Scale};
use crate::quantity::{Typed, Unit, read, unit_of};

/// Something that may have been meant.
pub(super) struct Candidate {
    pub(super) slip: Slip,
    pub(super) meant: Typed,
    /// How likely this slip makes what was typed out of what was meant.
    pub(super) chance: f64,
    /// The step of the last digit that would have been typed, SI units.
    pub(super) step: f64,
}

/// Units whose figures are taken for each other.
const MIXED_UP: &[(&str, &[&str])] = &[
    ("in", &["mm", "thou"]),
    ("mm", &["in", "hundredths", "µm", "thou"]),
    ("thou", &["tenths", "in", "mm", "hundredths"]),
    ("tenths", &["thou", "µm"]),
    ("µm", &["mm", "tenths", "hundredths"]),
    ("hundredths", &["mm", "µm", "thou"]),
    ("°F", &["°C"]),
    ("°C", &["°F"]),
    ("ft-lb", &["N·m", "in-lb"]),
    ("N·m", &["ft-lb", "kgf·m"]),
    ("in-lb", &["ft-lb"]),
    ("kgf·m", &["N·m"]),
    ("psi", &["bar", "kPa"]),
    ("bar", &["psi", "kPa"]),
    ("kPa", &["psi", "bar"]),
];

/// Everything that may have been meant by what was typed.
pub(super) fn candidates(typed: &Typed, expected: &Expectation) -> Vec<Candidate> {
    let mut all = Vec::new();
    match expected.scale {
        Scale::Thimble { turn, frame } => {
            shifted(typed, Slip::ThimbleTurn, turn, &mut all);
            shifted(typed, Slip::Frame, frame, &mut all);
        }
        Scale::Dial { turn } => shifted(typed, Slip::DialTurn, turn, &mut all),
        Scale::Needle => sign(typed, &mut all),
        Scale::Plain => {}
    }
    other_units(typed, &mut all);
    if !typed.is_fraction() && !typed.number().contains('e') {
        decimal_place(typed, &mut all);
        swapped_digits(typed, &mut all);
        dropped_digit(typed, &mut all);
        doubled_digit(typed, &mut all);
    }
    other_sizes(typed, expected, &mut all);
    all
}

fn reread(number: &str, unit: &'static Unit) -> Option<Typed> {
    let apart = if unit.symbol.is_empty() { "" } else { " " };
    let text = format!("{number}{apart}{}", unit.symbol);
    read(&text, unit.kind, unit).ok()
}

fn shifted(typed: &Typed, slip: Slip, by: f64, all: &mut Vec<Candidate>) {
    let unit = typed.unit();
    let decimals = typed
        .number()
        .split_once('.')
        .map_or(0, |(_, part)| part.len());
    for by in [by, -by] {
        let number = unit.from_si(typed.si() + by);
        // Enough decimals to hold the turn itself.
        let turn = unit.step_from_si(by);
        let whole = |decimals: &usize| {
            let steps = turn * libm::pow(10.0, *decimals as f64);
            (steps - steps.round()).abs() < 1e-6
        };
        let decimals = (decimals..decimals + 3).find(whole).unwrap_or(decimals + 1);
        if let Some(meant) = reread(&format!("{number:.decimals$}"), unit) {
            all.push(Candidate {
                slip,
                meant,
                chance: slip.chance(Circumstance::Usual) / 2.0,
                step: typed.resolution(),
            });
        }
    }
}

fn sign(typed: &Typed, all: &mut Vec<Candidate>) {
    let number = typed.number();
    let turned = number
        .strip_prefix('−')
        .map_or_else(|| format!("−{number}"), str::to_owned);
    if let Some(meant) = reread(&turned, typed.unit()).filter(|meant| meant != typed) {
        all.push(Candidate {
            slip: Slip::Sign,
            meant,
            chance: Slip::Sign.chance(Circumstance::Usual),
            step: typed.resolution(),
        });
    }
}

/// The symbols of the units that figures in this one are taken for.
fn mixed_up_with(unit: &Unit) -> &'static [&'static str] {
    MIXED_UP
        .iter()
        .find(|(symbol, _)| *symbol == unit.symbol)
        .map_or(&[], |(_, others)| *others)
}

/// The same figures in each of those units, likeliest first.
pub(super) fn in_other_units(typed: &Typed) -> impl Iterator<Item = Typed> {
    let units = mixed_up_with(typed.unit())
        .iter()
        .filter_map(|symbol| unit_of(typed.unit().kind, symbol));
    units.filter_map(|unit| reread(&typed.number(), unit))
}

fn other_units(typed: &Typed, all: &mut Vec<Candidate>) {
    let others = mixed_up_with(typed.unit());
    let circumstance = if typed.unit_was_typed() {
        Circumstance::Spelt
    } else {
        Circumstance::Usual
    };
    for meant in in_other_units(typed) {
        let slip = Slip::OtherUnit {
            meant: meant.unit(),
        };
        all.push(Candidate {
            slip,
            chance: slip.chance(circumstance) / others.len() as f64,
            step: meant.resolution(),
            meant,
        });
    }
}

/// Adds what a changed run of digits reads as. `ways` is the number of places
/// where the slip could have happened.
fn changed(typed: &Typed, number: &str, slip: Slip, ways: usize, all: &mut Vec<Candidate>) {
    let Some(meant) = reread(number, typed.unit()).filter(|meant| meant.si() != typed.si()) else {
        return;
    };
    let chance = slip.chance(Circumstance::Usual) / ways.max(1) as f64;
    all.push(Candidate {
        slip,
        step: meant.resolution(),
        meant,
        chance,
    });
}

fn decimal_place(typed: &Typed, all: &mut Vec<Candidate>) {
    let number = typed.number();
    let (sign, size) = match number.strip_prefix('−') {
        Some(size) => ("−", size),
        None => ("", number.as_str()),
    };
    let (whole, part) = size.split_once('.').unwrap_or((size, ""));
    let (first, rest) = part.split_at_checked(1).unwrap_or(("0", ""));
    let point = if rest.is_empty() { "" } else { "." };
    let tenfold = format!("{sign}{whole}{first}{point}{rest}");
    let (front, last) = whole
        .split_at_checked(whole.len().saturating_sub(1))
        .unwrap_or(("", whole));
    let tenth = format!("{sign}{front}.{last}{part}");
    for moved in [tenfold, tenth] {
        changed(typed, &moved, Slip::DecimalPlace, 2, all);
    }
}

/// The digits' places in a text.
fn digit_places(number: &[char]) -> Vec<usize> {
    (0..number.len())
        .filter(|at| number.get(*at).is_some_and(char::is_ascii_digit))
        .collect()
}

fn swapped_digits(typed: &Typed, all: &mut Vec<Candidate>) {
    let number: Vec<char> = typed.number().chars().collect();
    let places = digit_places(&number);
    for pair in places.windows(2) {
        if let [left, right] = *pair {
            let mut swapped = number.clone();
            swapped.swap(left, right);
            let text: String = swapped.into_iter().collect();
            changed(typed, &text, Slip::SwappedDigits, places.len() - 1, all);
        }
    }
}

fn dropped_digit(typed: &Typed, all: &mut Vec<Candidate>) {
    let number: Vec<char> = typed.number().chars().collect();
    let places = digit_places(&number);
    let Some(first) = places.first().copied() else {
        return;
    };
    for at in first..=number.len() {
        for digit in '0'..='9' {
            // The same digit before or behind its like is one text, not two.
            if at > first && number.get(at - 1) == Some(&digit) {
                continue;
            }
            let mut whole = number.clone();
            whole.insert(at, digit);
            let text: String = whole.into_iter().collect();
            changed(typed, &text, Slip::DroppedDigit, places.len() + 1, all);
        }
    }
}

fn doubled_digit(typed: &Typed, all: &mut Vec<Candidate>) {
    let number: Vec<char> = typed.number().chars().collect();
    let places = digit_places(&number);
    for at in &places {
        let twin = at.checked_sub(1).and_then(|before| number.get(before));
        if number.get(*at) == twin {
            let mut single = number.clone();
            single.remove(*at);
            let text: String = single.into_iter().collect();
            changed(typed, &text, Slip::DoubledDigit, places.len() - 1, all);
        }
    }
}

fn other_sizes(typed: &Typed, expected: &Expectation, all: &mut Vec<Candidate>) {
    let steps = expected.sizes.steps();
    let circumstance = if expected.neighbours.is_empty() && expected.previous.is_none() {
        Circumstance::Usual
    } else {
        Circumstance::Spelt
    };
    for step in steps {
        let slip = Slip::OtherSize { step: *step };
        all.push(Candidate {
            slip,
            meant: typed.clone(),
            chance: slip.chance(circumstance) / steps.len() as f64,
            step: typed.resolution(),
        });
    }
}
