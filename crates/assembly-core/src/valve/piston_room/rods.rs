//! Which valve and which rods, and what common practice wants of them.

use crate::describe::{Answer, CalculationError, Choice, Given, Gravity, Input, length_text};
use crate::limits::about;
use crate::measure::Estimate;

/// Which valve.
pub(super) static VALVE: Input = Input::one_of(
    "valve",
    "valve",
    &[
        Choice {
            id: "intake",
            label: "intake",
        },
        Choice {
            id: "exhaust",
            label: "exhaust",
        },
    ],
    "An intake valve comes nearest after the top, an exhaust valve before it.",
);

/// Which rods.
pub(super) static RODS: Input = Input::one_of(
    "rods",
    "rods",
    &[
        Choice {
            id: "steel",
            label: "steel",
        },
        Choice {
            id: "alloy",
            label: "aluminium",
        },
    ],
    "Aluminium rods grow and stretch more.",
);

/// An answer with the least room judged against the card.
pub(super) fn judged(
    answer: Answer,
    given: &Given,
    least: &Estimate,
) -> Result<Answer, CalculationError> {
    if least.value() <= 0.0 {
        return Ok(answer.finding(
            Gravity::Stop,
            "The valve meets the piston: do not turn the crank through here with these parts.",
        ));
    }
    let line = match given.choice(&VALVE)?.id {
        "intake" => "valve-to-piston-intake",
        _ => "valve-to-piston-exhaust",
    };
    if given.choice(&RODS)?.id == "steel" {
        return Ok(answer.remarked(least, about(line, "steel rods")));
    }
    let inches = |id: &str, case: &str| about(id, case).and_then(|entry| entry.low);
    let wanted = inches(line, "steel rods")
        .zip(inches("valve-to-piston-alloy-adds", ""))
        .map(|(steel, more)| (steel + more) * 0.0254);
    Ok(match wanted {
        Some(wanted) if least.value() < wanted => answer.finding(
            Gravity::Caution,
            format!(
                "Less than the {} that is common practice with aluminium rods. The maker's sheet decides.",
                length_text(wanted)
            ),
        ),
        _ => answer,
    })
}
