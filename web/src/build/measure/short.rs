//! Readings typed in short: what stands beside the place in hand, what the last
//! digits mean by it, and what a needle off its zero says of the size.

use assembly_core::fit::running_clearance::NeedleSense;
use assembly_core::quantity::{Typed, off_zero};
use build_journal::fold::{Beside, Build, ListedTool};

use super::order::Spot;
use super::zeroing::zero_of;
use crate::kit::piece::{El, Piece, el};

/// As many places around are named beside the field.
const NAMED: usize = 3;

/// What stands beside a spot when it is read with this tool as it is set now.
#[must_use]
pub fn beside(build: &Build, spot: &Spot, tool: Option<&ListedTool>) -> Beside {
    let setting = tool.and_then(|tool| tool.settings.last());
    let set = (
        tool.map(|tool| tool.tool),
        setting.map(|setting| setting.set.setting),
    );
    build.beside(spot.measure, spot.place, set)
}

/// The last reading here, those around it and the limits, in a line each.
#[must_use]
pub fn beside_lines(beside: &Beside) -> Piece {
    let line = |what: &str, number: String| -> Piece {
        el("span")
            .class("beside-one")
            .with(el("span").class("beside-what").text(&format!("{what} ")))
            .with(el("strong").text(&number))
            .into()
    };
    let mut lines = Vec::new();
    match (beside.here.last(), &beside.was) {
        (Some(last), _) => lines.push(line("last here", last.to_string())),
        (None, Some(was)) => lines.push(line("was here", was.to_string())),
        (None, None) => {}
    }
    for (place, typed) in beside.others.iter().rev().take(NAMED) {
        lines.push(line(&place.to_string(), typed.to_string()));
    }
    if !beside.limits.is_empty() {
        let words: Vec<String> = beside.limits.iter().map(Typed::to_string).collect();
        lines.push(line("limits", words.join(" to ")));
    }
    if lines.is_empty() {
        return Piece::none();
    }
    let all: El = el("p").class("beside").test("beside").all(lines);
    all.into()
}

/// The number that last digits stand for, or the two that they may.
#[must_use]
pub fn meaning_words(meant: &[Typed]) -> Option<String> {
    match meant {
        [] => None,
        [one] => Some(format!("means {one}")),
        more => {
            let words: Vec<String> = more.iter().map(Typed::to_string).collect();
            Some(format!("{}? Tap the right one.", words.join(" or ")))
        }
    }
}

/// What a needle's reading says of the size, when the setting says where its
/// zero is.
#[must_use]
pub fn needle_words(build: &Build, tool: Option<&ListedTool>, needle: &Typed) -> Option<String> {
    let set = &tool?.settings.last()?.set;
    let larger = set.needle? == NeedleSense::ClockwiseIsLarger;
    let zero = zero_of(build, set)?;
    Some(format!(
        "{needle} off {zero}: {}",
        off_zero(&zero, needle, larger)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;
    use assembly_core::quantity::{Kind, read, unit};

    #[test]
    fn one_meaning_is_said_and_two_are_asked_about() {
        let of = |text| read(text, Kind::Length, unit("in").unwrap()).unwrap();
        assert_eq!(meaning_words(&[]), None);
        assert_eq!(meaning_words(&[of("2.4491")]).unwrap(), "means 2.4491 in");
        assert_eq!(
            meaning_words(&[of("2.4433"), of("2.4533")]).unwrap(),
            "2.4433 in or 2.4533 in? Tap the right one."
        );
    }
}
