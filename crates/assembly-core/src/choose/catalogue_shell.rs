//! Which shell wall to order for each journal on its own, both halves alike.

use std::cmp::Reverse;

use uom::si::f64::Length;

use super::costs::{ChoiceError, PICOMETRE, whole};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::measure::{Estimate, Measured};
use crate::quantity::Si;

/// The wall for one journal, and the clearance it gives.
#[derive(Clone, PartialEq, Debug)]
pub struct Ordered {
    /// The place of the wall in the list, counted from 0.
    pub wall: usize,
    /// Housing less two walls less journal.
    pub clearance: Measured<Length>,
}

/// The wall out of a list that brings a journal nearest to its target. Of two
/// that miss by the same, the thinner: a bearing is better loose than tight.
///
/// ```
/// use assembly_core::choose::catalogue_shell::wall_for;
/// use assembly_core::measure::Measured;
/// use uom::si::{f64::Length, length::millimeter};
///
/// let mm = |size| Length::new::<millimeter>(size);
/// let walls = [mm(1.980), mm(1.983)].map(Measured::exact);
/// let (housing, journal) = (Measured::exact(mm(56.0)), Measured::exact(mm(51.994)));
/// let ordered = wall_for(&housing, &journal, &walls, mm(0.040)).unwrap();
/// assert_eq!(ordered.wall, 1);
/// ```
///
/// # Errors
/// [`ChoiceError::Nothing`] when the list is empty.
pub fn wall_for(
    housing: &Measured<Length>,
    journal: &Measured<Length>,
    walls: &[Measured<Length>],
    target: Length,
) -> Result<Ordered, ChoiceError> {
    walls
        .iter()
        .enumerate()
        .map(|(wall, thickness)| Ordered {
            wall,
            clearance: housing.clone() - journal.clone() - thickness.clone() * 2.0,
        })
        .min_by_key(|one| {
            // In whole steps, so that rounding decides no tie.
            let clearance = one.clearance.value().to_si();
            let miss = whole(clearance - target.to_si(), PICOMETRE);
            (miss.map(i64::abs), Reverse(whole(clearance, PICOMETRE)))
        })
        .ok_or(ChoiceError::Nothing)
}

static HOUSINGS: Input = Input::size(
    "housings",
    "housing bores",
    (0.01, 0.6),
    "Caps torqued, no shells, up and down; in the order of the journals.",
)
.one_or_more();
static JOURNALS: Input = Input::size(
    "journals",
    "journals",
    (0.01, 0.6),
    "The largest reading of each, in the same order.",
)
.one_or_more();
static WALLS: Input = Input::size(
    "walls",
    "shell walls to be had",
    (0.000_5, 0.02),
    "At the crown, from the catalogue or measured with a ball anvil.",
)
.one_or_more();
static TARGET: Input = Input::gap(
    "target",
    "wanted clearance",
    (0.0, 0.001),
    "The middle of the maker's window.",
);

/// Shells to order.
pub static SHELLS_TO_ORDER: Calculation = Calculation {
    id: "shells-to-order",
    title: "Which shell to order",
    purpose: "The shell wall out of a maker's range that brings each journal nearest to the wanted clearance.",
    inputs: &[HOUSINGS, JOURNALS, WALLS, TARGET],
    outputs: &[
        Output::gap("least", "least clearance"),
        Output::gap("greatest", "greatest clearance"),
        Output::gap("worst-miss", "worst miss of the wanted clearance"),
    ],
    workings: &[
        "for each journal the wall with the least |housing − 2 × wall − journal − {target}|",
        "clearances from {least} to {greatest}, worst miss {worst-miss}",
    ],
    provenance: Provenance::Derivation("housing less two walls less journal"),
    cautions: &[
        "Wall arithmetic is for ordering. Measure the bore with the shells in and the cap torqued before you trust it: lots differ.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let housings = given.measured::<Length>(HOUSINGS.id);
    let journals = given.measured::<Length>(JOURNALS.id);
    let walls = given.measured::<Length>(WALLS.id);
    let target = given.one(&TARGET)?;
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
    let mut clearances = Vec::new();
    let mut answer = Answer::new();
    for ((housing, journal), place) in housings.iter().zip(&journals).zip(1..) {
        let ordered = wall_for(housing, journal, &walls, Length::from_si(target.value()))
            .map_err(|error| CalculationError::not_possible(&WALLS, error.to_string()))?;
        let clearance = ordered.clearance.estimate().clone();
        let wall = walls
            .get(ordered.wall)
            .map_or(0.0, |wall| wall.value().to_si());
        let gravity = if clearance.value() <= 0.0 {
            Gravity::Stop
        } else {
            Gravity::Note
        };
        answer = answer.finding(
            gravity,
            format!(
                "Journal {place}: wall {}, clearance {}",
                length_text(wall),
                length_text(clearance.value())
            ),
        );
        clearances.push(clearance);
    }
    let misses: Vec<Estimate> = clearances
        .iter()
        .map(|one| one.apart_from(target))
        .collect();
    Ok(answer
        .with_optional("least", Estimate::least(&clearances).cloned())
        .with_optional("greatest", Estimate::greatest(&clearances).cloned())
        .with_optional("worst-miss", Estimate::greatest(&misses).cloned()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(housings: &[f64], journals: &[f64], walls: &[f64]) -> Given {
        let mut given = Given::new().with("target", Estimate::exact(40e-6));
        for (id, values) in [
            ("housings", housings),
            ("journals", journals),
            ("walls", walls),
        ] {
            for value in values {
                given.push(id, Estimate::exact(value * 1e-3));
            }
        }
        given
    }

    #[test]
    fn each_journal_gets_the_wall_nearest_to_its_own_need() {
        let given = given(&[56.0, 56.006], &[51.994, 51.988], &[1.980, 1.983, 1.989]);
        let answer = SHELLS_TO_ORDER.answer(&given).unwrap();
        assert!(answer.get("worst-miss").unwrap().value() < 1e-12);
        assert!(
            answer.findings()[1].text.contains("(1.989 mm)"),
            "{:?}",
            answer.findings()
        );
    }

    #[test]
    fn a_tie_falls_to_the_loose_side() {
        let given = given(&[56.0], &[51.994], &[1.981, 1.985]);
        let answer = SHELLS_TO_ORDER.answer(&given).unwrap();
        assert!((answer.get("least").unwrap().value() - 44e-6).abs() < 1e-12);
    }

    #[test]
    fn a_journal_without_a_housing_is_told() {
        let given = given(&[56.0], &[51.994, 51.9], &[1.98]);
        assert_eq!(
            SHELLS_TO_ORDER.answer(&given).unwrap_err().field(),
            Some("journals")
        );
    }
}
