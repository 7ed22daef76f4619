//! The wall of a half-shell at its crown.

use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    Takes, length_text,
};
use crate::fit::readings::{mean_of, span};

const WALLS: (f64, f64) = (0.000_5, 0.02);

static CROWN: Input = Input::size(
    "crown",
    "wall at the crown",
    WALLS,
    "Square to the joint, at three places along: ball against the inside of the shell.",
)
.taking(Takes::OneOrMore);
static STANDARD: Input = Input::size(
    "standard",
    "standard wall from the catalogue",
    WALLS,
    "For this crank and its grind; leave it out when you have none.",
)
.optional();
static ANVIL: Input = Input::one_of(
    "anvil",
    "micrometer's anvil",
    &[
        Choice {
            id: "ball",
            label: "ball",
        },
        Choice {
            id: "flat",
            label: "flat",
        },
    ],
    "A flat anvil bridges the hollow of the shell and reads too thick.",
);

/// How much one size of a set makes each wall thicker.
const HALF_A_THOU: f64 = 0.0005 * 0.0254;

/// Wall of a shell.
pub static SHELL_WALL: Calculation = Calculation {
    id: "shell-wall",
    title: "Shell wall",
    purpose: "How thick a half-shell is, and which size it is by its wall.",
    inputs: &[CROWN, STANDARD, ANVIL],
    outputs: &[
        Output::size("wall", "wall"),
        Output::gap("spread", "spread along the shell"),
        Output::gap("over-standard", "thicker than standard"),
        Output::gap("set-undersize", "a set of two such halves is under by"),
    ],
    workings: &[
        "wall = mean at the crown = {wall}; spread {spread}",
        "thicker than standard = {wall} − {standard} = {over-standard}",
        "two such halves close the clearance by twice that: {set-undersize}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "Shells thin toward the joint by design: measure at the crown only. Two boxes of one size can differ by 0.0002 to 0.0003 in.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let wall = mean_of(given, &CROWN)?;
    let over = given.optional(STANDARD.id).map(|standard| &wall - standard);
    let set = over.as_ref().map(|over| over * 2.0);
    let mut answer = Answer::new();
    if given.choice(&ANVIL)?.id == "flat" {
        answer = answer.finding(
            Gravity::Caution,
            "A flat anvil reads a shell too thick: use a ball, or a ball-ended pin in the jaws and take its size off.",
        );
    }
    if let (Some(over), Some(set)) = (&over, &set) {
        let steps = (over.value() / HALF_A_THOU).round();
        let off = (over.value() - steps * HALF_A_THOU).abs();
        // Within the scatter of a lot it is of that size; a step lies 5 tenths on.
        if steps.abs() <= 4.0 && off <= 0.6 * HALF_A_THOU / 2.0 {
            answer = answer.finding(
                Gravity::Note,
                match steps as i32 {
                    0 => "By its wall it is a standard half.".to_owned(),
                    1.. => format!(
                        "By its wall it is half of a set {steps} thou under: each wall {} thicker.",
                        length_text(steps * HALF_A_THOU)
                    ),
                    _ => format!(
                        "By its wall it is half of a set with {} thou extra clearance.",
                        -steps
                    ),
                },
            );
        }
        if set.value().abs() > 0.004 * 0.0254 {
            answer = answer.finding(
                Gravity::Caution,
                "So much off standard is a shell for a ground crank: compare with the wall of that undersize.",
            );
        }
    }
    Ok(answer
        .with("spread", span(given.several(CROWN.id)))
        .with("wall", wall)
        .with_optional("over-standard", over)
        .with_optional("set-undersize", set))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{INCH, THOU, says, value, worked};
    use crate::measure::Estimate;

    fn shell(walls: &[f64], standard: f64, anvil: f64) -> Answer {
        let mut given = Given::new()
            .with("anvil", Estimate::exact(anvil))
            .with("standard", Estimate::exact(standard * INCH));
        for wall in walls {
            given.push("crown", Estimate::exact(wall * INCH));
        }
        worked(&SHELL_WALL, &given)
    }

    // The trap: "one thou under" is said of the set, each half has half of it.
    #[test]
    fn a_half_of_a_thou_under_set_is_half_a_thou_thicker() {
        let answer = shell(&[0.0950, 0.0950, 0.0950], 0.0945, 0.0);
        assert_eq!(value(&answer, "over-standard", THOU), 0.5);
        assert_eq!(value(&answer, "set-undersize", THOU), 1.0);
        assert!(says(&answer, "half of a set 1 thou under"));
        assert!(says(&shell(&[0.0945], 0.0945, 0.0), "standard half"));
        assert!(says(
            &shell(&[0.0940], 0.0945, 0.0),
            "1 thou extra clearance"
        ));
    }

    #[test]
    fn a_flat_anvil_is_named_as_the_trap_it_is() {
        assert!(says(&shell(&[0.0945], 0.0945, 1.0), "too thick"));
    }

    #[test]
    fn a_wall_between_sizes_is_not_called_one() {
        let answer = shell(&[0.094_75], 0.0945, 0.0);
        assert!(!says(&answer, "By its wall"));
        assert!(says(&shell(&[0.0995], 0.0945, 0.0), "ground crank"));
    }
}
