//! Reading a quantity as people at a bench type it.

use super::number::Number;
use super::scan::{Reading, Scanned, quote, scan};
use super::suggest::{could_become, nearest};
use super::unit::{find, plain};
use super::units::UNITS;
use super::{Kind, ReadError, Typed, Unit, units_of};

/// Reads a quantity of one kind. A lone number is taken in the unit `lone`.
///
/// Understood are decimals with a point or a comma, fractions and mixed numbers
/// (`2 7/16`, `2-7/16"`, `2½`), signs, powers of ten, thousands in groups where
/// that is clear, and each unit by the names people use. How many digits were
/// typed is kept.
///
/// ```
/// use assembly_core::quantity::{read, unit, Kind};
/// let inch = unit("in").unwrap();
/// let thou = read("2.1 thou", Kind::Length, inch).unwrap();
/// assert_eq!(thou.si(), 0.00005334);
/// assert_eq!(thou.resolution(), 0.00000254);
///
/// let wrong = read("5 psi", Kind::Length, inch).unwrap_err();
/// assert_eq!(
///     wrong.to_string(),
///     "“psi” is a pressure, and a length is wanted here, as in 2.4483 in, 62.20 mm or 2 7/16 in"
/// );
/// ```
///
/// # Errors
/// [`ReadError`] has a variant for each mistake a person can make. A text that
/// only needs more typing [is unfinished](ReadError::is_unfinished).
pub fn read(text: &str, kind: Kind, lone: &'static Unit) -> Result<Typed, ReadError> {
    let Scanned { reading, unit } = scan(text, kind)?;
    let unit_was_typed = !unit.is_empty();
    let unit = if unit_was_typed {
        read_unit(&unit, kind)?
    } else if lone.kind == kind {
        lone
    } else {
        return Err(ReadError::OtherKind {
            unit: lone.symbol.to_owned(),
            is: lone.kind,
            kind,
            unfinished: false,
        });
    };
    match reading {
        Reading::Clear(number) => typed(number, unit, unit_was_typed, text),
        Reading::Either(as_decimal, as_thousands) => {
            // Each reading gets a text of its own, which is clear.
            let clear = |number| -> Result<Typed, ReadError> {
                let tidy = typed(number, unit, true, text)?.to_string();
                typed(number, unit, true, &tidy)
            };
            Err(ReadError::Ambiguous {
                read: quote(text),
                readings: Box::new((clear(as_decimal)?, clear(as_thousands)?)),
            })
        }
    }
}

fn typed(
    number: Number,
    unit: &'static Unit,
    unit_was_typed: bool,
    text: &str,
) -> Result<Typed, ReadError> {
    let typed = Typed::new(number, unit, unit_was_typed, text);
    let (si, kind) = (typed.si(), unit.kind);
    if !si.is_finite() || !typed.resolution().is_finite() {
        return Err(ReadError::TooLarge {
            read: quote(text),
            kind,
        });
    }
    let vanishes = |value: f64| value.abs() < f64::MIN_POSITIVE;
    if vanishes(typed.resolution()) || (vanishes(si) && si != 0.0) {
        return Err(ReadError::TooSmall {
            read: quote(text),
            kind,
        });
    }
    if kind == Kind::Temperature && si < 0.0 {
        return Err(ReadError::BelowAbsoluteZero { read: quote(text) });
    }
    if kind == Kind::Count && (si < 0.0 || typed.is_fraction() || si.fract() != 0.0) {
        return Err(ReadError::NotACount { read: quote(text) });
    }
    Ok(typed)
}

/// Words that stand for two units of a kind.
const TWO_MEANINGS: &[(Kind, &str, (&str, &str))] = &[
    (Kind::Length, "mil", ("thou", "mm")),
    (Kind::Length, "mils", ("thou", "mm")),
    (Kind::Temperature, "°", ("°C", "°F")),
    (Kind::Temperature, "deg", ("°C", "°F")),
    (Kind::Temperature, "degs", ("°C", "°F")),
    (Kind::Temperature, "degrees", ("°C", "°F")),
    (Kind::TemperatureDifference, "°", ("°C", "°F")),
    (Kind::TemperatureDifference, "deg", ("°C", "°F")),
    (Kind::TemperatureDifference, "degs", ("°C", "°F")),
    (Kind::TemperatureDifference, "degrees", ("°C", "°F")),
    (Kind::Torque, "lb", ("ft-lb", "in-lb")),
    (Kind::Torque, "lbs", ("ft-lb", "in-lb")),
    (Kind::Torque, "lbf", ("ft-lb", "in-lb")),
    (Kind::Torque, "pounds", ("ft-lb", "in-lb")),
    (Kind::Torque, "kg", ("kgf·m", "kgf·cm")),
    (Kind::Torque, "kgf", ("kgf·m", "kgf·cm")),
];

fn read_unit(text: &str, kind: Kind) -> Result<&'static Unit, ReadError> {
    let name = plain(text);
    if let Some(unit) = find(units_of(kind), &name) {
        return Ok(unit);
    }
    let unfinished = could_become(&name, kind);
    let unit = text.to_owned();
    if let Some((_, _, could_be)) = TWO_MEANINGS
        .iter()
        .find(|(of, word, _)| *of == kind && word.eq_ignore_ascii_case(&name))
    {
        return Err(ReadError::AmbiguousUnit {
            unit,
            could_be: *could_be,
            unfinished,
        });
    }
    if let Some(other) = find(UNITS.iter(), &name).filter(|_| !name.is_empty()) {
        return Err(ReadError::OtherKind {
            unit,
            is: other.kind,
            kind,
            unfinished,
        });
    }
    if let Some((unit, rest)) = unit_and_rest(text, kind) {
        return Err(ReadError::AfterUnit { unit, rest, kind });
    }
    Err(ReadError::UnknownUnit {
        unit,
        kind,
        did_you_mean: nearest(&name, kind),
        unfinished,
    })
}

/// A unit of the kind, then something else.
fn unit_and_rest(text: &str, kind: Kind) -> Option<(String, String)> {
    let mut edges: Vec<usize> = Vec::new();
    for (at, sign) in text.char_indices() {
        // The full tables of letters would weigh more than this whole file.
        let in_word = sign.is_ascii_alphanumeric() || !(sign.is_ascii() || sign == '°');
        if !in_word {
            edges.extend([at, at + sign.len_utf8()]);
        }
    }
    edges.into_iter().rev().find_map(|at| {
        let (front, rest) = text.split_at_checked(at)?;
        let (front, rest) = (front.trim(), rest.trim());
        let name = plain(front);
        let found = !name.is_empty() && !rest.is_empty() && find(units_of(kind), &name).is_some();
        found.then(|| (front.to_owned(), rest.to_owned()))
    })
}
