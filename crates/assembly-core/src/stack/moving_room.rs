//! Room between moving parts: piston and counterweight, rod and camshaft, ring
//! pack and deck, valve and its pocket.

use super::answering::{INCH, estimate, less};
use super::deck_and_quench::{DECK_MEASURED, ROD_LENGTH, STROKE};
use super::formula::{Formula, Stack, Term};
use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance,
};

/// The least room between piston and counterweight. Common practice.
pub const COUNTERWEIGHT_LEAST: f64 = 0.060 * INCH;
/// The least room between rod and camshaft. Common practice.
pub const ROD_TO_CAM_LEAST: f64 = 0.050 * INCH;
/// The least room between a valve's edge and its pocket. Common practice.
pub const VALVE_POCKET_LEAST: f64 = 0.050 * INCH;

static SKIRT: Input = Input::size(
    "pin-to-skirt",
    "pin centre to the lowest part of the piston",
    (0.003, 0.3),
    "Down to whatever comes nearest to the counterweight, skirt or pin boss.",
);
static COUNTERWEIGHT: Input = Input::size(
    "counterweight-radius",
    "radius of the counterweights",
    (0.01, 0.5),
    "From the crank line to the outermost edge that passes under the piston.",
);
static PISTON_ROOM: Output = Output::size("room", "piston to counterweight at the bottom");

/// Room between piston and counterweight.
pub static PISTON_TO_COUNTERWEIGHT: Stack = Stack {
    id: "piston-to-counterweight",
    title: "Piston to counterweight",
    terms: &[
        Term::needed(&ROD_LENGTH),
        Term::needed(&STROKE),
        Term::needed(&SKIRT),
        Term::needed(&COUNTERWEIGHT),
    ],
    result: &PISTON_ROOM,
    formula: Formula::Sum(&[1.0, -0.5, -1.0, -1.0]),
    proof: "Every piston at the bottom, with a blade or clay between it and the counterweights, turned through.",
};

/// Piston to counterweight as a quick check.
pub static PISTON_TO_COUNTERWEIGHT_CHECK: Calculation = Calculation {
    id: "piston-to-counterweight",
    title: "Piston to counterweight",
    purpose: "Whether the pistons clear the counterweights at the bottom of the stroke.",
    inputs: &[ROD_LENGTH, STROKE, SKIRT, COUNTERWEIGHT],
    outputs: &[PISTON_ROOM],
    workings: &[
        "room = rod − stroke / 2 − pin to skirt − counterweight = {rod-length} − {stroke} / 2 − {pin-to-skirt} − {counterweight-radius} = {room}",
    ],
    provenance: Provenance::Derivation(
        "sizes along the bore's axis with the crank pin at the bottom",
    ),
    cautions: &["Stop turning at any touch. Then mock up every cylinder: forgings differ."],
    run: |given| {
        judged(
            &PISTON_TO_COUNTERWEIGHT,
            given,
            COUNTERWEIGHT_LEAST,
            "0.060 in (1.5 mm)",
        )
    },
};

static CENTRES: Input = Input::size(
    "crank-to-cam",
    "crankshaft to camshaft, centre to centre",
    (0.03, 0.6),
    "From the sheet, less what a line hone brought the crankshaft up.",
);
static ROD_SWING: Input = Input::size(
    "rod-swing",
    "greatest reach of the rod's shoulder from the crank line",
    (0.01, 0.5),
    "Half the stroke plus the distance from the pin's centre to the rod bolt or shoulder that reaches farthest.",
);
static LOBE_TIP: Input = Input::size(
    "lobe-tip",
    "reach of the lobe from the cam's centre",
    (0.005, 0.1),
    "Half the base circle's diameter plus the lobe lift.",
);
static ROD_ROOM: Output = Output::size("room", "least room, rod to camshaft");

/// Least room that there can be between rod and camshaft.
pub static ROD_TO_CAM: Stack = Stack {
    id: "rod-to-cam",
    title: "Rod to camshaft, at worst",
    terms: &[
        Term::needed(&CENTRES),
        Term::needed(&ROD_SWING),
        Term::needed(&LOBE_TIP),
    ],
    result: &ROD_ROOM,
    formula: Formula::Sum(&[1.0, -1.0, -1.0]),
    proof: "Rod bolts in, the engine turned through two full turns with the camshaft in time, a wire of the least room between each rod and lobe.",
};

/// Rod to camshaft as a quick check.
pub static ROD_TO_CAM_CHECK: Calculation = Calculation {
    id: "rod-to-cam",
    title: "Rod to camshaft, at worst",
    purpose: "Whether a rod could ever touch the camshaft, if lobe and rod pointed at each other.",
    inputs: &[CENTRES, ROD_SWING, LOBE_TIP],
    outputs: &[ROD_ROOM],
    workings: &["room = centres − rod − lobe = {crank-to-cam} − {rod-swing} − {lobe-tip} = {room}"],
    provenance: Provenance::Derivation(
        "both at their farthest reach on the line between the two centres, which is never exceeded",
    ),
    cautions: &[
        "Timing moves it: after every change of the camshaft's timing turn the engine through again.",
    ],
    run: |given| {
        let room = estimate(&ROD_TO_CAM, given)?;
        let answer = if less(room.value(), ROD_TO_CAM_LEAST) {
            Answer::new().finding(
                Gravity::Caution,
                "At worst there is less than 0.050 in (1.3 mm). Rod and lobe may never point at each other at once: only turning the engine through with a wire tells.",
            )
        } else {
            Answer::new().finding(Gravity::Note, "They cannot touch, whatever the timing.")
        };
        Ok(answer.with(ROD_ROOM.id, room))
    },
};

static TOP_LAND: Input = Input::size(
    "top-land",
    "top ring below the crown's edge",
    (0.0005, 0.06),
    "From the edge of the crown to the upper side of the top ring groove.",
);
static RING_DEPTH: Output = Output::size("ring-depth", "top ring below the deck");

/// Depth of the top ring below the deck at the top.
pub static RING_TO_DECK: Stack = Stack {
    id: "ring-to-deck",
    title: "Top ring to deck",
    terms: &[Term::needed(&DECK_MEASURED), Term::needed(&TOP_LAND)],
    result: &RING_DEPTH,
    formula: Formula::Sum(&[1.0, 1.0]),
    proof: "The piston at the top with its ring on, and a depth gauge beside it.",
};

/// Top ring to deck as a quick check.
pub static RING_TO_DECK_CHECK: Calculation = Calculation {
    id: "ring-to-deck",
    title: "Top ring to deck",
    purpose: "Whether the top ring stays in the bore at the top of the stroke.",
    inputs: &[DECK_MEASURED, TOP_LAND],
    outputs: &[RING_DEPTH],
    workings: &[
        "top ring below deck = deck clearance + top land = {deck-clearance} + {top-land} = {ring-depth}",
    ],
    provenance: Provenance::Derivation("sizes along the bore's axis"),
    cautions: &[
        "A bore chamfered at the deck is no bore to the ring: take the chamfer off this figure.",
    ],
    run: |given| {
        let depth = estimate(&RING_TO_DECK, given)?;
        let answer = if depth.value() <= 0.0 {
            Answer::new().finding(
                Gravity::Stop,
                "The top ring leaves the bore: it springs out and breaks.",
            )
        } else {
            Answer::new()
        };
        Ok(answer.with(RING_DEPTH.id, depth))
    },
};

static POCKET: Input = Input::size(
    "pocket-diameter",
    "diameter of the valve pocket",
    (0.01, 0.2),
    "Across the pocket in the piston's crown.",
);
static VALVE: Input = Input::size(
    "valve-diameter",
    "diameter of the valve's head",
    (0.008, 0.2),
    "Across the head of the valve.",
);
static OFFSET: Input = Input::gap(
    "pocket-offset",
    "pocket off the valve's centre",
    (0.0, 0.02),
    "How far the clay print sits off the middle of the pocket; nothing when it is centred.",
)
.optional();
static POCKET_ROOM: Output = Output::size("room", "valve to the side of its pocket");

/// Room around a valve in its pocket.
pub static VALVE_POCKET: Stack = Stack {
    id: "valve-pocket",
    title: "Valve to the side of its pocket",
    terms: &[
        Term::needed(&POCKET),
        Term::needed(&VALVE),
        Term::if_fitted(&OFFSET),
    ],
    result: &POCKET_ROOM,
    formula: Formula::Sum(&[0.5, -0.5, -1.0]),
    proof: "Clay on the crown, both valves through their nearest points, sliced with a razor.",
};

/// Valve in its pocket as a quick check.
pub static VALVE_POCKET_CHECK: Calculation = Calculation {
    id: "valve-pocket",
    title: "Valve to the side of its pocket",
    purpose: "Whether the valve's edge clears the side of its pocket in the crown.",
    inputs: &[POCKET, VALVE, OFFSET],
    outputs: &[POCKET_ROOM],
    workings: &[
        "room = (pocket − valve) / 2 − offset = ({pocket-diameter} − {valve-diameter}) / 2 − {pocket-offset} = {room}",
    ],
    provenance: Provenance::Derivation("circles beside each other"),
    cautions: &["How deep the pocket is counts as well: the valve needs room above and beside."],
    run: |given| {
        judged(
            &VALVE_POCKET,
            given,
            VALVE_POCKET_LEAST,
            "0.050 in (1.3 mm)",
        )
    },
};

fn judged(
    stack: &'static Stack,
    given: &Given,
    least: f64,
    common: &str,
) -> Result<Answer, CalculationError> {
    let room = estimate(stack, given)?;
    let answer = if room.value() <= 0.0 {
        Answer::new().finding(Gravity::Stop, "They would touch.")
    } else if less(room.value(), least) {
        Answer::new().finding(Gravity::Caution, format!("Less than the common {common}."))
    } else {
        Answer::new()
    };
    Ok(answer.with(stack.result.id, room))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Estimate;

    fn room(calculation: &Calculation, sizes: &[(&'static str, f64)]) -> (f64, Option<Gravity>) {
        let mut given = Given::new();
        for (id, size) in sizes {
            given.push(id, Estimate::exact(size * INCH));
        }
        let answer = calculation.answer(&given).unwrap();
        let (_, value) = answer.values().first().unwrap();
        (
            value.value() / INCH,
            answer.findings().first().map(|one| one.gravity),
        )
    }

    #[test]
    fn a_long_stroke_brings_the_counterweight_up() {
        let (left, gravity) = room(
            &PISTON_TO_COUNTERWEIGHT_CHECK,
            &[
                ("rod-length", 5.700),
                ("stroke", 3.480),
                ("pin-to-skirt", 0.900),
                ("counterweight-radius", 3.000),
            ],
        );
        assert!((left - 0.060).abs() < 1e-9);
        assert_eq!(gravity, None);
        let (left, gravity) = room(
            &PISTON_TO_COUNTERWEIGHT_CHECK,
            &[
                ("rod-length", 5.700),
                ("stroke", 3.750),
                ("pin-to-skirt", 0.900),
                ("counterweight-radius", 3.000),
            ],
        );
        assert!((left + 0.075).abs() < 1e-9);
        assert_eq!(gravity, Some(Gravity::Stop));
    }

    #[test]
    fn rod_and_cam_are_only_cleared_when_they_never_could_meet() {
        let sizes = |swing: f64| {
            [
                ("crank-to-cam", 4.500),
                ("rod-swing", swing),
                ("lobe-tip", 1.000),
            ]
        };
        assert_eq!(
            room(&ROD_TO_CAM_CHECK, &sizes(3.400)).1,
            Some(Gravity::Note)
        );
        assert_eq!(
            room(&ROD_TO_CAM_CHECK, &sizes(3.600)).1,
            Some(Gravity::Caution)
        );
    }

    #[test]
    fn a_piston_out_of_the_block_lifts_its_ring() {
        let (depth, gravity) = room(
            &RING_TO_DECK_CHECK,
            &[("deck-clearance", -0.010), ("top-land", 0.200)],
        );
        assert!((depth - 0.190).abs() < 1e-9);
        assert_eq!(gravity, None);
    }

    #[test]
    fn an_offset_pocket_takes_its_room_on_one_side() {
        let (left, gravity) = room(
            &VALVE_POCKET_CHECK,
            &[
                ("pocket-diameter", 2.140),
                ("valve-diameter", 2.020),
                ("pocket-offset", 0.020),
            ],
        );
        assert!((left - 0.040).abs() < 1e-9);
        assert_eq!(gravity, Some(Gravity::Caution));
    }
}
