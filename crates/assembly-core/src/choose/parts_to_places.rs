//! Which piston goes into which bore, which rod onto which pin: least worst
//! miss of the wanted clearance, then least spread.

use uom::si::f64::Length;

use super::bottleneck::nearest_then_closest;
use super::costs::{ChoiceError, Costs, PICOMETRE, whole};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, length_text,
};
use crate::measure::{Estimate, Measured};
use crate::quantity::Si;

/// Which part of a pair stays where it is.
#[derive(Clone, Copy, PartialEq, Eq, Hash, Debug)]
pub enum Places {
    /// The hole: a bore that a piston is chosen for.
    Holes,
    /// The shaft: a pin that a rod is chosen for.
    Shafts,
}

/// Which part goes where, and what clearance comes of it.
#[derive(Clone, PartialEq, Debug)]
pub struct Matching {
    /// The part of each place, counted from 0.
    pub parts: Vec<usize>,
    /// The clearance in each place.
    pub clearances: Vec<Measured<Length>>,
    /// The place that misses the target by most, counted from 0.
    pub worst_place: usize,
}

/// Matches parts to places. There may be more parts than places.
///
/// ```
/// use assembly_core::choose::parts_to_places::{Places, match_parts};
/// use assembly_core::measure::Measured;
/// use uom::si::{f64::Length, length::millimeter};
///
/// let mm = |size| Measured::exact(Length::new::<millimeter>(size));
/// let bores = [mm(92.020), mm(92.010)];
/// let pistons = [mm(91.950), mm(91.960)];
/// let target = Length::new::<millimeter>(0.060);
/// let matched = match_parts(&bores, &pistons, Places::Holes, target).unwrap();
/// assert_eq!(matched.parts, [1, 0]);
/// ```
///
/// # Errors
/// [`ChoiceError`] when there are fewer parts than places, or more than can be
/// looked through at once.
pub fn match_parts(
    places: &[Measured<Length>],
    parts: &[Measured<Length>],
    which: Places,
    target: Length,
) -> Result<Matching, ChoiceError> {
    let clearance = |place: &Measured<Length>, part: &Measured<Length>| match which {
        Places::Holes => place.clone() - part.clone(),
        Places::Shafts => part.clone() - place.clone(),
    };
    let rows: Vec<Vec<f64>> = places
        .iter()
        .map(|place| {
            parts
                .iter()
                .map(|part| clearance(place, part).value().to_si())
                .collect()
        })
        .collect();
    let costs = Costs::new(&rows, PICOMETRE)?;
    let not_a_number = ChoiceError::NotANumber { place: 1, part: 1 };
    let wanted = whole(target.to_si(), PICOMETRE).ok_or(not_a_number)?;
    let assignment = nearest_then_closest(&costs, wanted).ok_or(ChoiceError::Nothing)?;
    let clearances: Vec<Measured<Length>> = places
        .iter()
        .zip(&assignment.parts)
        .filter_map(|(place, part)| Some(clearance(place, parts.get(*part)?)))
        .collect();
    let miss = |one: &Measured<Length>| (one.value().to_si() - target.to_si()).abs();
    let worst_place = clearances
        .iter()
        .enumerate()
        .max_by(|(_, a), (_, b)| miss(a).total_cmp(&miss(b)))
        .map_or(0, |(place, _)| place);
    Ok(Matching {
        parts: assignment.parts,
        clearances,
        worst_place,
    })
}

const SIZES: (f64, f64) = (0.005, 0.5);
const CLEARANCES: (f64, f64) = (0.0, 0.001);

static BORES: Input = Input::size(
    "bores",
    "bores, in the order of the cylinders",
    SIZES,
    "For each cylinder, where the skirt's gauge point runs, across the crank; the least of the readings.",
)
.one_or_more();
static PISTONS: Input = Input::size(
    "pistons",
    "pistons",
    SIZES,
    "At the maker's gauge height, at right angles to the pin.",
)
.one_or_more();
static PINS: Input = Input::size(
    "pins",
    "crank pins, in the order of the cylinders",
    SIZES,
    "The mean of the readings of each pin.",
)
.one_or_more();
static RODS: Input = Input::size(
    "rods",
    "rod bearing bores",
    SIZES,
    "With its shells in and the bolts at final tension, at right angles to the joint.",
)
.one_or_more();
static TARGET: Input = Input::gap(
    "target",
    "wanted clearance",
    CLEARANCES,
    "The middle of the maker's window.",
);

const OUTPUTS: &[Output] = &[
    Output::gap("worst-miss", "worst miss of the wanted clearance"),
    Output::gap("least", "least clearance"),
    Output::gap("greatest", "greatest clearance"),
    Output::gap("spread", "spread of the clearances"),
];
const WORKINGS: &[&str] = &[
    "every way of placing the parts is weighed: first the worst miss of {target} is made as small as it can be, then the spread",
    "worst miss {worst-miss}; clearances from {least} to {greatest}, spread {spread}",
];
const PROVENANCE: Provenance = Provenance::Derivation("bottleneck assignment, exact");

/// Pistons to bores.
pub static MATCH_PISTONS_TO_BORES: Calculation = Calculation {
    id: "match-pistons-to-bores",
    title: "Which piston in which bore",
    purpose: "Places the pistons so that every cylinder comes as near to the wanted clearance as can be.",
    inputs: &[BORES, PISTONS, TARGET],
    outputs: OUTPUTS,
    workings: WORKINGS,
    provenance: PROVENANCE,
    cautions: &[
        "Pistons already balanced or weighed to their rods move with them. Mark each piston for its cylinder at once.",
    ],
    run: |given| run(given, &BORES, &PISTONS, Places::Holes, ("Bore", "piston")),
};

/// Rods to pins.
pub static MATCH_RODS_TO_PINS: Calculation = Calculation {
    id: "match-rods-to-pins",
    title: "Which rod on which pin",
    purpose: "Places the rods so that every pin comes as near to the wanted clearance as can be.",
    inputs: &[PINS, RODS, TARGET],
    outputs: OUTPUTS,
    workings: WORKINGS,
    provenance: PROVENANCE,
    cautions: &[
        "Used rods have worn to their own pins and pistons: keep those together. Mind which way round a rod goes.",
    ],
    run: |given| run(given, &PINS, &RODS, Places::Shafts, ("Pin", "rod")),
};

fn run(
    given: &Given,
    places_input: &'static Input,
    parts_input: &'static Input,
    which: Places,
    (place_word, part_word): (&str, &str),
) -> Result<Answer, CalculationError> {
    let places = given.measured::<Length>(places_input.id);
    let parts = given.measured::<Length>(parts_input.id);
    let target = given.one(&TARGET)?;
    let matched = match_parts(&places, &parts, which, Length::from_si(target.value()))
        .map_err(|error| CalculationError::not_possible(parts_input, error.to_string()))?;
    let estimates: Vec<Estimate> = matched
        .clearances
        .iter()
        .map(|one| one.estimate().clone())
        .collect();
    let (least, greatest) = (Estimate::least(&estimates), Estimate::greatest(&estimates));
    let mut answer = Answer::new()
        .with_optional(
            "worst-miss",
            estimates
                .get(matched.worst_place)
                .map(|clearance| clearance.apart_from(target)),
        )
        .with_optional("spread", least.zip(greatest).map(|(low, high)| high - low))
        .with_optional("least", least.cloned())
        .with_optional("greatest", greatest.cloned());
    for ((place, part), clearance) in (1..).zip(&matched.parts).zip(&estimates) {
        let gravity = if clearance.value() <= 0.0 {
            Gravity::Stop
        } else {
            Gravity::Note
        };
        answer = answer.finding(
            gravity,
            format!(
                "{place_word} {place} takes {part_word} {}: {}",
                part + 1,
                length_text(clearance.value())
            ),
        );
    }
    Ok(answer)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn given(ids: [&'static str; 2], sizes: [&[f64]; 2], target: f64) -> Given {
        let mut given = Given::new().with("target", Estimate::exact(target * 1e-3));
        for (id, values) in ids.into_iter().zip(sizes) {
            for value in values {
                given.push(id, Estimate::exact(value * 1e-3));
            }
        }
        given
    }

    // Taking the nearest piston for bore 1 first would leave bore 2 with 0.030.
    #[test]
    fn the_whole_set_counts_and_not_the_first_bore() {
        let bores = [92.020, 92.000];
        let pistons = [91.960, 91.970];
        let given = given(["bores", "pistons"], [&bores, &pistons], 0.050);
        let answer = MATCH_PISTONS_TO_BORES.answer(&given).unwrap();
        let value = |id: &str| answer.get(id).unwrap().value();
        assert!((value("worst-miss") - 10e-6).abs() < 1e-12);
        assert!((value("spread") - 10e-6).abs() < 1e-12);
        assert!(
            answer.findings()[0]
                .text
                .starts_with("Bore 1 takes piston 2")
        );
    }

    #[test]
    fn rods_are_the_holes_when_pins_are_the_places() {
        let pins = [48.000, 47.990];
        let rods = [48.030, 48.040];
        let given = given(["pins", "rods"], [&pins, &rods], 0.040);
        let answer = MATCH_RODS_TO_PINS.answer(&given).unwrap();
        assert!(answer.get("worst-miss").unwrap().value() < 1e-12);
        assert!(answer.findings()[0].text.starts_with("Pin 1 takes rod 2"));
    }

    #[test]
    fn a_piston_larger_than_its_bore_stops_the_builder() {
        let given = given(["bores", "pistons"], [&[92.0], &[92.001]], 0.05);
        let answer = MATCH_PISTONS_TO_BORES.answer(&given).unwrap();
        assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
    }

    #[test]
    fn too_few_pistons_are_told() {
        let given = given(["bores", "pistons"], [&[92.0, 92.0], &[91.9]], 0.05);
        let error = MATCH_PISTONS_TO_BORES.answer(&given).unwrap_err();
        assert_eq!(error.field(), Some("pistons"));
    }
}
