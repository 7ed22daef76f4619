//! An overhead camshaft that comes nearer to the crankshaft runs late: chain or
//! belt gets slack on the driven side, the tensioner takes it up on the other,
//! and the wheel stands turned back.

use num_dual::Dual64;

use super::answering::estimate;
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::quantity::Kind;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
const CUT: (f64, f64) = (0.0, 0.005);

static DECK_CUT: Input = Input::gap(
    "deck-cut",
    "taken off the deck",
    CUT,
    "What the shop milled off the block.",
)
.optional();
static HEAD_CUT: Input = Input::gap(
    "head-cut",
    "milled off the head",
    CUT,
    "What the shop milled off the head's face.",
)
.optional();
static GASKET_THINNER: Input = Input::gap(
    "gasket-thinner",
    "head gasket thinner by",
    (-0.004, 0.004),
    "Compressed thickness of the old gasket less that of the new one; below nothing when the new one is thicker.",
)
.optional();
static WHEEL: Input = Input::size(
    "cam-wheel",
    "pitch diameter of the cam wheel",
    (0.03, 0.4),
    "Tooth count times chain or belt pitch over π, or across the rollers of the chain laid on.",
);
static TENSIONER: Input = Input::one_of(
    "tensioner",
    "tensioner",
    &[
        Choice {
            id: "slack-side",
            label: "on the slack side",
        },
        Choice {
            id: "none",
            label: "none, or on the pulling side",
        },
    ],
    "The slack side is the one on which chain or belt runs from the crankshaft up to the camshaft.",
);

static CAM: Output = Output::of("late-at-cam", "late, at the camshaft", ANGLE);
static CRANK: Output = Output::of("late", "late, at the crankshaft", ANGLE);

/// Lateness of an overhead camshaft at the crankshaft.
pub static CAM_LATENESS: Stack = Stack {
    id: "cam-lateness",
    title: "Overhead camshaft late after milling",
    terms: &[
        Term::if_fitted(&DECK_CUT),
        Term::if_fitted(&HEAD_CUT),
        Term::if_fitted(&GASKET_THINNER),
        Term::needed(&WHEEL),
    ],
    result: &CRANK,
    formula: Formula::Smooth(Smooth {
        value: lateness::<f64>,
        with_slope: lateness::<Dual64>,
    }),
    proof: "A degree wheel and the lobe's centre by equal lifts on both flanks, approached in the running direction.",
};

/// Positive is late. The wheel turns back by the shortening over its radius,
/// and the crankshaft turns twice as far as the camshaft.
fn lateness<N: Number>(terms: &[N]) -> N {
    let &[deck, head, gasket, wheel] = terms else {
        return N::from(f64::NAN);
    };
    (deck + head + gasket) / (wheel * 0.5) * 2.0
}

/// Camshaft lateness as a quick check.
pub static CAM_LATENESS_CHECK: Calculation = Calculation {
    id: "cam-lateness",
    title: "Overhead camshaft late after milling",
    purpose: "How many degrees the camshaft is late after the deck or head was cut or a thinner gasket fitted.",
    inputs: &[DECK_CUT, HEAD_CUT, GASKET_THINNER, WHEEL, TENSIONER],
    outputs: &[CRANK, CAM],
    workings: &[
        "nearer by deck {deck-cut} + head {head-cut} + gasket {gasket-thinner}",
        "late at the camshaft = nearer by / (wheel / 2) = {late-at-cam}",
        "late at the crankshaft = twice that = {late}",
    ],
    provenance: Provenance::Derivation(
        "the chain's pulling side stays taut and is shorter by the cut, so the wheel turns back by the cut over its pitch radius",
    ),
    cautions: &[
        "Measure with a degree wheel before closing: this is the geometry of a straight pulling side.",
        "Late valves come nearer to the pistons on the exhaust side: check the clearance of both.",
    ],
    run,
};

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let late = estimate(&CAM_LATENESS, given)?;
    let answer = Answer::new().with(CAM.id, &late * 0.5).with(CRANK.id, late);
    Ok(if given.choice(&TENSIONER)?.id == "none" {
        answer.finding(
            Gravity::Caution,
            "Without a tensioner on the slack side the slack stays in the chain or belt: it may jump. See what the maker allows.",
        )
    } else {
        answer
    })
}

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn late(id: &'static str, by: f64) -> f64 {
        let given = Given::new()
            .with(id, Estimate::exact(by * INCH))
            .with("cam-wheel", Estimate::exact(4.0 * INCH))
            .with("tensioner", Estimate::exact(0.0));
        let answer = CAM_LATENESS_CHECK.answer(&given).unwrap();
        let cam = answer.get("late-at-cam").unwrap().value();
        let crank = answer.get("late").unwrap().value();
        assert!((crank - 2.0 * cam).abs() < 1e-15);
        crank.to_degrees()
    }

    // Worked by hand (common practice): 2 in pitch radius, 0.020 nearer: 0.57°
    // at the camshaft, 1.15° late at the crankshaft.
    #[test]
    fn cutting_the_deck_makes_an_overhead_cam_late() {
        assert!((late("deck-cut", 0.020) - 1.146).abs() < 1e-3);
        assert!((late("head-cut", 0.020) - 1.146).abs() < 1e-3);
        // A thicker gasket brings it forward.
        assert!((late("gasket-thinner", -0.020) + 1.146).abs() < 1e-3);
    }
}
