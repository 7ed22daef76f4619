//! How an answer was worked out, with the numbers put in.

use assembly_core::describe::{Answer, Calculation};
use assembly_core::quantity::{Typed, Unit};

use super::number;

/// The lines of a calculation's workings with the numbers put in. A line about
/// something that was not worked out is left away.
#[must_use]
pub fn lines(
    calculation: &Calculation,
    answer: &Answer,
    typed: &[(&'static str, Typed)],
    unit_of: impl Fn(&str) -> Option<&'static Unit>,
) -> Vec<String> {
    let value = |id: &str| -> Option<String> {
        if calculation.input(id).is_some() {
            let texts: Vec<String> = typed
                .iter()
                .filter(|(known, _)| *known == id)
                .map(|(_, one)| one.to_string())
                .collect();
            return Some(texts.join(", "));
        }
        let estimate = answer.get(id)?;
        Some(number::text(estimate, unit_of(id)?))
    };
    calculation
        .workings
        .iter()
        .filter_map(|line| put_in(line, &value))
        .collect()
}

/// A line with each `{id}` replaced; `None` when one has no value.
fn put_in(line: &str, value: &impl Fn(&str) -> Option<String>) -> Option<String> {
    let mut text = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once('{') {
        let (id, behind) = after.split_once('}')?;
        text.push_str(before);
        text.push_str(&value(id)?);
        rest = behind;
    }
    text.push_str(rest);
    Some(text)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_are_put_in_and_lines_without_their_numbers_left_away() {
        let value = |id: &str| (id == "a").then(|| "2.1 thou".to_owned());
        assert_eq!(
            put_in("least = {a}", &value).as_deref(),
            Some("least = 2.1 thou")
        );
        assert_eq!(put_in("both {a} and {b}", &value), None);
        assert_eq!(
            put_in("nothing to put in", &value).as_deref(),
            Some("nothing to put in")
        );
    }
}
