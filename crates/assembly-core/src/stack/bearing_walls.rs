//! Bearing clearance as a stack: housing less both walls less journal, with
//! the errors of all four.

use super::answering::estimate;
use super::formula::{Formula, Stack, Term};
use crate::describe::{Answer, Calculation, Gravity, Input, Output, Provenance};

const WALL: (f64, f64) = (0.0005, 0.03);

static HOUSING: Input = Input::size(
    "housing",
    "housing bore, up and down",
    (0.005, 0.6),
    "Caps torqued, no shells, across the joint's right angle.",
);
static UPPER: Input = Input::size(
    "upper-wall",
    "wall of the upper half",
    WALL,
    "At the crown, with a ball anvil: flat anvils bridge the curve and read thick.",
);
static LOWER: Input = Input::size(
    "lower-wall",
    "wall of the lower half",
    WALL,
    "At the crown, with a ball anvil.",
);
static JOURNAL: Input = Input::size(
    "journal",
    "journal diameter",
    (0.004, 0.6),
    "At two stations and two directions; the largest counts for the least clearance.",
);
static WANTED: Input = Input::gap(
    "wanted-clearance",
    "clearance you want",
    (0.0, 0.002),
    "From the maker's sheet, to see which walls or which journal gives it.",
)
.optional();
static CLEARANCE: Output = Output::gap("clearance", "oil clearance");

/// Bearing clearance from housing, walls and journal.
pub static BEARING_WALLS: Stack = Stack {
    id: "bearing-walls",
    title: "Oil clearance from housing, walls and journal",
    terms: &[
        Term::needed(&HOUSING),
        Term::needed(&UPPER),
        Term::needed(&LOWER),
        Term::needed(&JOURNAL),
    ],
    result: &CLEARANCE,
    formula: Formula::Sum(&[1.0, -1.0, -1.0, -1.0]),
    proof: "The bore measured with the shells in and torqued, and a strip of plastic gauge as a second opinion.",
};

/// Bearing clearance from walls as a quick check.
pub static BEARING_WALLS_CHECK: Calculation = Calculation {
    id: "clearance-from-walls",
    title: "Oil clearance from housing, walls and journal",
    purpose: "What clearance a pair of shells will give before they are fitted.",
    inputs: &[HOUSING, UPPER, LOWER, JOURNAL, WANTED],
    outputs: &[
        CLEARANCE,
        Output::size(
            "upper-for-clearance",
            "upper wall for the clearance you want",
        ),
        Output::size(
            "journal-for-clearance",
            "journal for the clearance you want",
        ),
    ],
    workings: &[
        "clearance = housing − upper wall − lower wall − journal = {housing} − {upper-wall} − {lower-wall} − {journal} = {clearance}",
    ],
    provenance: Provenance::Derivation("sizes across the bearing"),
    cautions: &[
        "The bore measured with the shells in and torqued beats this arithmetic: crush pulls the shells into shape.",
        "A set one thou under is half a thou on each wall.",
        "Never hone the housing or file a cap for clearance.",
    ],
    run: |given| {
        let clearance = estimate(&BEARING_WALLS, given)?;
        let answer = if clearance.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "No room for oil: this crankshaft would not turn.",
            )
        } else {
            Answer::new()
        };
        answer
            .with(CLEARANCE.id, clearance)
            .with_solved(
                "upper-for-clearance",
                &BEARING_WALLS,
                given,
                &UPPER,
                &WANTED,
            )?
            .with_solved(
                "journal-for-clearance",
                &BEARING_WALLS,
                given,
                &JOURNAL,
                &WANTED,
            )
    },
};

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::describe::Given;
    use crate::measure::{Estimate, Origin, Sources};

    fn bearing(upper: f64, lower: f64, journal: f64) -> Given {
        Given::new()
            .with("housing", Estimate::exact(2.6412 * INCH))
            .with("upper-wall", Estimate::exact(upper * INCH))
            .with("lower-wall", Estimate::exact(lower * INCH))
            .with("journal", Estimate::exact(journal * INCH))
    }

    fn clearance(given: &Given) -> f64 {
        BEARING_WALLS_CHECK
            .answer(given)
            .unwrap()
            .get("clearance")
            .unwrap()
            .value()
            / INCH
    }

    // Worked by hand (common practice): 2.6412 less two walls of 0.0945 less
    // 2.4500 is 0.0022; one half of a one-thou set gives 0.0017, both 0.0012;
    // two tenths polished off the journal open it by two tenths.
    #[test]
    fn the_worked_bearing_comes_out() {
        for (upper, lower, journal, expected) in [
            (0.0945, 0.0945, 2.4500, 0.0022),
            (0.0945, 0.0950, 2.4500, 0.0017),
            (0.0950, 0.0950, 2.4500, 0.0012),
            (0.0945, 0.0945, 2.4498, 0.0024),
        ] {
            assert!((clearance(&bearing(upper, lower, journal)) - expected).abs() < 1e-9);
        }
    }

    // Two walls carry their error twice: √(σH² + 2σt² + σJ²).
    #[test]
    fn the_errors_of_all_four_parts_count() {
        let mut sources = Sources::new();
        let mut part = |size: f64, off: f64| {
            Estimate::exact(size * INCH).with(sources.fresh("feel", Origin::Repeat), off * INCH)
        };
        let given = Given::new()
            .with("housing", part(2.6412, 0.00015))
            .with("upper-wall", part(0.0945, 0.0001))
            .with("lower-wall", part(0.0945, 0.0001))
            .with("journal", part(2.4500, 0.0001));
        let answer = BEARING_WALLS_CHECK.answer(&given).unwrap();
        let deviation = answer.get("clearance").unwrap().deviation() / INCH;
        let expected = (0.00015_f64.powi(2) + 3.0 * 0.0001_f64.powi(2)).sqrt();
        assert!((deviation - expected).abs() < 1e-12);
    }

    #[test]
    fn the_journal_for_a_clearance_is_solved() {
        let given = bearing(0.0945, 0.0945, 2.4500)
            .with("wanted-clearance", Estimate::exact(0.0025 * INCH));
        let answer = BEARING_WALLS_CHECK.answer(&given).unwrap();
        let journal = answer.get("journal-for-clearance").unwrap().value();
        assert!((journal / INCH - 2.4497).abs() < 1e-9);
    }
}
