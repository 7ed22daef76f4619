//! Where the numbers of the cylinder come from, in words.

use assembly_core::describe::UsualUnits;
use assembly_core::quantity::{Kind, show};
use build_journal::fold::{CylinderNumber, NumberFrom, OilInputs};

use crate::device::settings::UnitClass;
use crate::kit::piece::El;
use crate::kit::section::{fold, sentences};

/// A number with its unit.
fn number(one: &CylinderNumber, class: UnitClass) -> String {
    let unit = match one.kind {
        Kind::Mass => class.of(Kind::Mass, UsualUnits::of("g", "g")),
        Kind::Length => class.of(Kind::Length, UsualUnits::of("in", "mm")),
        kind => class.of(kind, UsualUnits::NONE),
    };
    show(one.value, None, unit).to_string()
}

fn from(from: NumberFrom) -> String {
    match from {
        NumberFrom::Typed => "as you typed it".to_owned(),
        NumberFrom::Measured { readings, parts } => {
            let readings = if readings == 1 {
                "one reading".to_owned()
            } else {
                format!("the mean of {readings} readings")
            };
            if parts == 1 {
                format!("measured: {readings} at one of them")
            } else {
                format!("measured: {readings} over {parts} of them")
            }
        }
    }
}

/// All numbers that gas and mass are worked out from, and where each comes from.
pub(super) fn numbers(inputs: &OilInputs, class: UnitClass) -> Option<El> {
    if inputs.cylinder_numbers.is_empty() {
        return None;
    }
    let lines: Vec<String> = (inputs.cylinder_numbers.iter())
        .map(|one| format!("{}: {}, {}", one.what, number(one, class), from(one.from)))
        .collect();
    Some(
        fold("Worked out from", sentences("workings", &lines))
            .attr("open", "")
            .test("film-numbers"),
    )
}

/// What is taken when a field stays empty, in a sentence; none when nothing was
/// measured.
pub(super) fn left_empty(one: Option<&CylinderNumber>, class: UnitClass) -> Option<String> {
    let one = one?;
    Some(format!(
        "Left empty, it is {}, {}.",
        number(one, class),
        from(one.from)
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_number_says_where_it_comes_from() {
        assert_eq!(from(NumberFrom::Typed), "as you typed it");
        let measured = |readings, parts| from(NumberFrom::Measured { readings, parts });
        assert_eq!(measured(1, 1), "measured: one reading at one of them");
        assert_eq!(
            measured(24, 4),
            "measured: the mean of 24 readings over 4 of them"
        );
    }
}
