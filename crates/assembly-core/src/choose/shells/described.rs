//! The choice of shells by its description, for a bench whose shells are known
//! by their walls.

use uom::si::f64::Length;

use super::bench::{BenchHalf, Main, OddHalf, Position};
use super::choice::choose_shells;
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, Takes,
    length_text,
};
use crate::measure::{Estimate, Measured};
use crate::moves::shells::Half;
use crate::quantity::Si;

const SIZES: (f64, f64) = (0.01, 0.6);
const WALLS: (f64, f64) = (0.000_5, 0.02);

static HOUSINGS: Input = Input::size(
    "housings",
    "housing bores",
    SIZES,
    "Caps torqued, no shells, up and down; in the order of the journals.",
)
.taking(Takes::OneOrMore);
static JOURNALS: Input = Input::size(
    "journals",
    "journals",
    SIZES,
    "The largest reading of each, in the same order.",
)
.taking(Takes::OneOrMore);
static UPPERS: Input = Input::size(
    "uppers",
    "walls of the upper halves on the bench",
    WALLS,
    "At the crown with a ball anvil; the halves with the oil hole.",
)
.taking(Takes::OneOrMore);
static LOWERS: Input = Input::size(
    "lowers",
    "walls of the lower halves on the bench",
    WALLS,
    "At the crown with a ball anvil.",
)
.taking(Takes::OneOrMore);
static STANDARD: Input = Input::size(
    "standard-wall",
    "wall of a standard half for this crank",
    WALLS,
    "From the catalogue, for the size that the journals are ground to.",
);
static STEP: Input = Input::gap(
    "wall-step",
    "how much thicker the next size is",
    (1e-6, 1e-4),
    "Half of what a set is called: half a thou for a set one thou under. Leave it out for that.",
)
.optional();
static TARGET: Input = Input::gap(
    "target",
    "wanted clearance",
    (0.0, 0.001),
    "The middle of the maker's window.",
);

/// Half a thou.
const USUAL_STEP: f64 = 0.0005 * 0.0254;

/// Which half-shell goes where.
pub static WHICH_SHELL_WHERE: Calculation = Calculation {
    id: "which-shell-where",
    title: "Which half-shell where",
    purpose: "Places the half-shells on the bench so that every bearing comes as near to the wanted clearance as can be.",
    inputs: &[HOUSINGS, JOURNALS, UPPERS, LOWERS, STANDARD, STEP, TARGET],
    outputs: &[
        Output::gap("worst-miss", "worst miss of the wanted clearance"),
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
        Output::gap("spread", "spread of the clearances"),
    ],
    workings: &[
        "clearance = housing − upper wall − lower wall − journal",
        "every way that keeps the mixing rule is weighed: first the worst miss of {target}, then the spread",
        "worst miss {worst-miss}; clearances from {least} to {greatest}, spread {spread}",
    ],
    provenance: Provenance::Derivation("exact search; the mixing rule is common practice"),
    cautions: &[
        "Mix only halves of one make and material, at most one step apart, all odd halves on the same side, and write down which went where.",
        "Check the oil hole of every upper half, then measure each bearing again with its shells in and the cap torqued.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let target = given.one(&TARGET)?;
    let (housings, journals) = (
        given.measured::<Length>(HOUSINGS.id),
        given.measured::<Length>(JOURNALS.id),
    );
    if housings.len() != journals.len() {
        return Err(CalculationError::not_possible(
            &JOURNALS,
            format!(
                "there are {} housings and {} journals: each journal needs its own housing",
                housings.len(),
                journals.len()
            ),
        ));
    }
    let mains: Vec<Main> = housings
        .into_iter()
        .zip(journals)
        .map(|(housing, journal)| Main {
            housing,
            journal,
            target: Length::from_si(target.value()),
        })
        .collect();
    let uppers = given.measured::<Length>(UPPERS.id);
    let first_lower = uppers.len();
    let standard = given.one(&STANDARD)?.value();
    let step = given.optional(STEP.id).map_or(USUAL_STEP, Estimate::value);
    let half = |position: Position, wall: Measured<Length>| BenchHalf {
        // In the range of the inputs a wall is at most some 20 000 steps off.
        half: Half::of_steps(((wall.value().to_si() - standard) / step).round() as i32),
        wall,
        position,
    };
    let bench: Vec<BenchHalf> = uppers
        .into_iter()
        .map(|wall| half(Position::Upper, wall))
        .chain(
            given
                .measured::<Length>(LOWERS.id)
                .into_iter()
                .map(|wall| half(Position::Lower, wall)),
        )
        .collect();
    let choice = choose_shells(&mains, &bench, OddHalf::OneSide)
        .map_err(|error| CalculationError::not_possible(&UPPERS, error.to_string()))?;
    let clearances: Vec<Estimate> = choice
        .placings
        .iter()
        .map(|placing| placing.clearance.estimate().clone())
        .collect();
    let misses: Vec<Estimate> = clearances
        .iter()
        .map(|one| one.apart_from(target))
        .collect();
    let (least, greatest) = (
        Estimate::least(&clearances),
        Estimate::greatest(&clearances),
    );
    let mut answer = Answer::new()
        .with_optional("worst-miss", Estimate::greatest(&misses).cloned())
        .with_optional("spread", least.zip(greatest).map(|(low, high)| high - low))
        .with_optional("least", least.cloned())
        .with_optional("greatest", greatest.cloned());
    for (placing, journal) in choice.placings.iter().zip(1..) {
        let clearance = placing.clearance.value().to_si();
        let gravity = if clearance > 0.0 {
            Gravity::Note
        } else {
            Gravity::Stop
        };
        answer = answer.finding(
            gravity,
            format!(
                "Journal {journal}: upper {}, lower {}, clearance {}",
                placing.upper + 1,
                placing.lower + 1 - first_lower,
                length_text(clearance)
            ),
        );
    }
    Ok(answer)
}
