//! What milling, a thinner gasket or valve work does to the valves' room over
//! the piston, and to the intake ports of a vee engine.

use num_dual::Dual64;

use super::answering::{estimate, less};
use super::formula::{Formula, Number, Smooth, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Choice, Given, Gravity, Input, Output, Provenance,
    UsualUnits,
};
use crate::quantity::Kind;

/// The least room of an intake valve with steel rods. Common practice.
pub const INTAKE_LEAST: f64 = 0.080 * 0.0254;
/// The least room of an exhaust valve with steel rods. Common practice.
pub const EXHAUST_LEAST: f64 = 0.100 * 0.0254;
/// What alloy rods need more. Common practice.
pub const ALLOY_RODS_ADD: f64 = 0.030 * 0.0254;

const ANGLE: (Kind, UsualUnits) = (Kind::Angle, UsualUnits::of("°", "°"));
const CUT: (f64, f64) = (0.0, 0.005);
const RIGHT_ANGLE: f64 = std::f64::consts::FRAC_PI_2;

static ROOM_BEFORE: Input = Input::gap(
    "room-before",
    "valve to piston before",
    (0.0, 0.02),
    "The least of all crank positions, as it was measured with the parts of before.",
);
static VALVE_ANGLE: Input = Input::of(
    "valve-angle",
    "valve's angle to the bore",
    ANGLE,
    (0.0, RIGHT_ANGLE * 0.95),
    "From the head's sheet, or between stem and head face with a protractor, taken from 90°.",
);
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
static VALVE_SUNK: Input = Input::gap(
    "valve-sunk",
    "valve sunk by",
    (0.0, 0.004),
    "How far seat and face work let it into the head.",
)
.optional();
static VALVE: Input = Input::one_of(
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
    "The exhaust valve is chased by the piston and needs more.",
);
static RODS: Input = Input::one_of(
    "rods",
    "rods",
    &[
        Choice {
            id: "steel",
            label: "steel",
        },
        Choice {
            id: "alloy",
            label: "aluminium alloy",
        },
    ],
    "A magnet holds on steel. Alloy rods stretch more.",
);
static ROOM: Output = Output::gap("room", "valve to piston now");

/// Valve to piston after changes.
pub static VALVE_ROOM: Stack = Stack {
    id: "valve-to-piston-after",
    title: "Valve to piston after changes",
    terms: &[
        Term::needed(&ROOM_BEFORE),
        Term::needed(&VALVE_ANGLE),
        Term::if_fitted(&DECK_CUT),
        Term::if_fitted(&HEAD_CUT),
        Term::if_fitted(&GASKET_THINNER),
        Term::if_fitted(&VALVE_SUNK),
    ],
    result: &ROOM,
    formula: Formula::Smooth(Smooth {
        value: valve_room::<f64>,
        with_slope: valve_room::<Dual64>,
    }),
    proof: "Light springs, an indicator on the retainer, the valve pushed to touch every two to five degrees around the top; or clay, sliced.",
};

fn valve_room<N: Number>(terms: &[N]) -> N {
    let &[before, angle, deck, head, gasket, sunk] = terms else {
        return N::from(f64::NAN);
    };
    before + (sunk - deck - head - gasket) * angle.cos()
}

/// Valve to piston after changes, as a quick check.
pub static VALVE_ROOM_CHECK: Calculation = Calculation {
    id: "valve-to-piston-after",
    title: "Valve to piston after milling or valve work",
    purpose: "What is left between valve and piston when deck, head, gasket or seat were changed.",
    inputs: &[
        ROOM_BEFORE,
        VALVE_ANGLE,
        DECK_CUT,
        HEAD_CUT,
        GASKET_THINNER,
        VALVE_SUNK,
        VALVE,
        RODS,
    ],
    outputs: &[ROOM, Output::gap("change", "change")],
    workings: &[
        "now = before + (sunk − deck − head − gasket) × cos angle = {room-before} + ({valve-sunk} − {deck-cut} − {head-cut} − {gasket-thinner}) × cos {valve-angle} = {room}",
    ],
    provenance: Provenance::CommonPractice,
    cautions: &[
        "This is arithmetic to plan with. Measure again before the engine is turned with its real springs: a touch bends valves.",
        "Another camshaft, its timing or another rocker ratio changes it too, and not by this rule.",
    ],
    run: run_valve_room,
};

fn run_valve_room(given: &Given) -> Result<Answer, CalculationError> {
    let room = estimate(&VALVE_ROOM, given)?;
    let change = &room - given.one(&ROOM_BEFORE)?;
    let exhaust = given.choice(&VALVE)?.id == "exhaust";
    let alloy = given.choice(&RODS)?.id == "alloy";
    let least = if exhaust { EXHAUST_LEAST } else { INTAKE_LEAST }
        + if alloy { ALLOY_RODS_ADD } else { 0.0 };
    let answer = if room.value() <= 0.0 {
        Answer::new().finding(Gravity::Stop, "Valve and piston would meet.")
    } else if less(room.value(), least) {
        Answer::new().finding(
            Gravity::Stop,
            format!(
                "Less than the common {:.3} in ({:.1} mm). Deeper pockets, a thicker gasket or less advance; the makers' sheets win.",
                least / 0.0254,
                least * 1e3
            ),
        )
    } else {
        Answer::new()
    };
    Ok(answer.with(ROOM.id, room).with("change", change))
}

static NEARER: Input = Input::gap(
    "nearer",
    "heads nearer to the crankshaft by",
    (-0.004, 0.012),
    "Off the deck, off the head and thinner gasket, all together, along the bores.",
);
static BANK_ANGLE: Input = Input::of(
    "bank-angle",
    "angle between the banks",
    ANGLE,
    (0.1, 2.0 * RIGHT_ANGLE),
    "From the sheet: 90° or 60° for most.",
);
static DOWN: Output = Output::gap("down", "ports lower by");
static INWARD: Output = Output::gap("inward", "ports nearer to the middle by");

/// How far the ports of a vee come down.
pub static PORTS_DOWN: Stack = Stack {
    id: "intake-ports-down",
    title: "Intake ports down",
    terms: &[Term::needed(&NEARER), Term::needed(&BANK_ANGLE)],
    result: &DOWN,
    formula: Formula::Smooth(Smooth {
        value: down::<f64>,
        with_slope: down::<Dual64>,
    }),
    proof: PORT_PROOF,
};

/// How far the ports of a vee come inwards.
pub static PORTS_INWARD: Stack = Stack {
    id: "intake-ports-inward",
    title: "Intake ports inward",
    terms: &[Term::needed(&NEARER), Term::needed(&BANK_ANGLE)],
    result: &INWARD,
    formula: Formula::Smooth(Smooth {
        value: inward::<f64>,
        with_slope: inward::<Dual64>,
    }),
    proof: PORT_PROOF,
};

const PORT_PROOF: &str = "The intake laid on dry with its real gaskets, bolts started by hand, and the print of the ports seen on the gaskets.";

fn down<N: Number>(terms: &[N]) -> N {
    let &[nearer, bank] = terms else {
        return N::from(f64::NAN);
    };
    nearer * (bank * 0.5).cos()
}

fn inward<N: Number>(terms: &[N]) -> N {
    let &[nearer, bank] = terms else {
        return N::from(f64::NAN);
    };
    nearer * (bank * 0.5).sin()
}

/// Intake of a vee after milling, as a quick check.
pub static INTAKE_AFTER: Calculation = Calculation {
    id: "intake-after-milling",
    title: "Vee engine: intake fit after milling",
    purpose: "How far the intake ports come down and inward when both heads come nearer to the crankshaft.",
    inputs: &[NEARER, BANK_ANGLE],
    outputs: &[DOWN, INWARD],
    workings: &[
        "down = {nearer} × cos({bank-angle} / 2) = {down}",
        "inward = {nearer} × sin({bank-angle} / 2) = {inward}",
    ],
    provenance: Provenance::Derivation(
        "each head moves along its bores, half of the bank angle from upright",
    ),
    cautions: &[
        "How much to mill off the intake follows from the angle of its own faces. No ratio holds for every engine: lay it on and look.",
        "The distributor and the end seals come down with the intake: check gear float and pump drive float again.",
    ],
    run: |given| {
        Ok(Answer::new()
            .with(DOWN.id, estimate(&PORTS_DOWN, given)?)
            .with(INWARD.id, estimate(&PORTS_INWARD, given)?))
    },
};

#[cfg(test)]
mod tests {
    use super::super::answering::INCH;
    use super::*;
    use crate::measure::Estimate;

    fn valve(id: &'static str, by: f64, valve: f64, rods: f64) -> Answer {
        let given = Given::new()
            .with("room-before", Estimate::exact(0.100 * INCH))
            .with("valve-angle", Estimate::exact(20_f64.to_radians()))
            .with(id, Estimate::exact(by * INCH))
            .with("valve", Estimate::exact(valve))
            .with("rods", Estimate::exact(rods));
        VALVE_ROOM_CHECK.answer(&given).unwrap()
    }

    #[test]
    fn milling_takes_room_and_a_sunk_valve_gives_it() {
        let change = |id| valve(id, 0.010, 0.0, 0.0).get("change").unwrap().value() / INCH;
        let part = 0.010 * 20_f64.to_radians().cos();
        for id in ["deck-cut", "head-cut", "gasket-thinner"] {
            assert!((change(id) + part).abs() < 1e-12, "{id}");
        }
        assert!((change("valve-sunk") - part).abs() < 1e-12);
    }

    #[test]
    fn exhaust_valves_and_alloy_rods_need_more() {
        assert!(valve("deck-cut", 0.010, 0.0, 0.0).findings().is_empty());
        for (kind, rods, least) in [(1.0, 0.0, "0.100 in"), (0.0, 1.0, "0.110 in")] {
            let answer = valve("deck-cut", 0.010, kind, rods);
            assert_eq!(answer.findings()[0].gravity, Gravity::Stop);
            assert!(answer.findings()[0].text.contains(least));
        }
    }

    #[test]
    fn ports_of_a_right_angled_vee_come_down_as_far_as_inward() {
        let given = Given::new()
            .with("nearer", Estimate::exact(0.020 * INCH))
            .with("bank-angle", Estimate::exact(90_f64.to_radians()));
        let answer = INTAKE_AFTER.answer(&given).unwrap();
        let inch = |id: &str| answer.get(id).unwrap().value() / INCH;
        assert!((inch("down") - 0.014_142).abs() < 1e-6);
        assert!((inch("inward") - 0.014_142).abs() < 1e-6);
    }
}
