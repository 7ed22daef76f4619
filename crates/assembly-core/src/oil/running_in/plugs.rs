//! Plugs: where they belong, what a missing one does, and how to see it in time.

use crate::describe::{
    Answer, Calculation, CalculationError, Given, Gravity, Input, Output, Provenance, UsualUnits,
};
use crate::measure::Estimate;
use crate::oil::circuit::leak::orifice_flow;
use crate::quantity::Kind;

/// A kind of plug to be counted out and in.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct Plug {
    /// Stable name.
    pub id: &'static str,
    /// Where it sits.
    pub place: &'static str,
    /// What happens without it.
    pub missing: &'static str,
    /// How it goes in.
    pub how: &'static str,
    /// Whether it can still be reached when the engine is together.
    pub reachable: bool,
}

/// The plugs that most engines have. Common practice: count them out at teardown,
/// with a photo each, and count the same number in.
pub static PLUGS: [Plug; 9] = [
    Plug {
        id: "gallery-front",
        place: "front ends of the main and lifter galleries, behind the timing cover",
        missing: "oil pours into the cover; little or no pressure at idle",
        how: "thread sealant, not so deep that it covers a cross hole",
        reachable: false,
    },
    Plug {
        id: "gallery-rear",
        place: "rear ends of the galleries, behind the flexplate or flywheel",
        missing: "oil out at the bell housing, low everywhere",
        how: "thread sealant; flush, so that the plate clears it",
        reachable: false,
    },
    Plug {
        id: "gallery-hidden",
        place: "inside: lifter valley, behind the distributor, under a main cap",
        missing: "low everywhere by the same ratio from the first prime on, nothing to be seen outside",
        how: "count against the map before the cam and the caps go in",
        reachable: false,
    },
    Plug {
        id: "filter-passage",
        place: "between the pump's passage and the filter's, where the block has one",
        missing: "unfiltered oil, good pressure",
        how: "driven to the depth on the sheet",
        reachable: false,
    },
    Plug {
        id: "pressure-port",
        place: "side ports for gauge and sender",
        missing: "oil outside at once",
        how: "thread sealant",
        reachable: true,
    },
    Plug {
        id: "crank",
        place: "ends of the crank's drillings",
        missing: "a rod starves, pressure low",
        how: "staked or threaded, checked with air after balancing",
        reachable: false,
    },
    Plug {
        id: "cam-rear",
        place: "rear cam bore",
        missing: "oil at the bell housing",
        how: "sealer on its rim, square, not against the cam",
        reachable: false,
    },
    Plug {
        id: "core",
        place: "water jackets of block and heads",
        missing: "coolant outside or into the bell housing",
        how: "sealer on the rim, driven to the chamfer",
        reachable: true,
    },
    Plug {
        id: "rocker-shaft",
        place: "ends of rocker shafts",
        missing: "the far rockers stay dry",
        how: "driven and staked",
        reachable: true,
    },
];

static OUT: Input = Input::of(
    "counted-out",
    "plugs counted out",
    (Kind::Count, UsualUnits::NONE),
    (0.0, 100.0),
    "At teardown, with a photo of each.",
);
static IN: Input = Input::of(
    "counted-in",
    "plugs counted in",
    (Kind::Count, UsualUnits::NONE),
    (0.0, 100.0),
    "As each goes in.",
);
static HOLE: Input = Input::size(
    "hole",
    "bore of a gallery's end",
    (0.001, 0.04),
    "Its drilled bore, to see what one missing plug would let through.",
);
static PRESSURE: Input = Input::of(
    "pressure",
    "oil pressure",
    (Kind::Pressure, UsualUnits::of("psi", "bar")),
    (1e3, 1.5e6),
    "Idle pressure you would like to see.",
);

/// A plug left out.
pub static MISSING_PLUG: Calculation = Calculation {
    id: "missing-plug",
    title: "Plugs counted",
    purpose: "Whether all plugs are back, and what one missing would let through.",
    inputs: &[OUT, IN, HOLE, PRESSURE],
    outputs: &[
        Output::of("missing", "plugs missing", (Kind::Count, UsualUnits::NONE)),
        Output::of(
            "flow",
            "flow through one open end",
            (Kind::Flow, UsualUnits::of("L/min", "L/min")),
        ),
    ],
    workings: &[
        "missing = {counted-out} − {counted-in} = {missing}",
        "flow = 0.62 × area of {hole} × √(2 × {pressure} / density) = {flow}: more than most pumps push at idle",
    ],
    provenance: Provenance::Handbook(
        "flow of a sharp-edged hole, discharge coefficient 0.62; counting is common practice",
    ),
    cautions: &[
        "Count before the cam, the caps and the covers go in: half of the plugs cannot be seen afterwards.",
    ],
    run,
};

/// Density of warm oil, kg/m³.
const WARM_OIL: f64 = 830.0;

fn run(given: &Given) -> Result<Answer, CalculationError> {
    let missing = given.one(&OUT)? - given.one(&IN)?;
    let flow =
        Estimate::of_function(
            &[given.one(&HOLE)?, given.one(&PRESSURE)?],
            |values| match values {
                [hole, pressure] => orifice_flow(*hole, *pressure, WARM_OIL),
                _ => f64::NAN,
            },
        );
    let answer = Answer::new();
    let answer = if missing.value() > 0.0 {
        answer.finding(
            Gravity::Stop,
            "A plug that came out has not gone back: find its hole before anything covers it.",
        )
    } else if missing.value() < 0.0 {
        answer.finding(
            Gravity::Caution,
            "More went in than came out: one may block a passage, or it was not counted out.",
        )
    } else {
        answer
    };
    Ok(answer.with("missing", missing).with("flow", flow))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::fit::readings::testing::{given, says, value, worked};

    fn counted(out: f64, back: f64) -> Given {
        given(
            1.0,
            &[
                ("counted-out", &[out]),
                ("counted-in", &[back]),
                ("hole", &[0.011]),
                ("pressure", &[1.4e5]),
            ],
        )
    }

    #[test]
    fn one_open_gallery_end_takes_all_a_pump_gives_at_idle() {
        let answer = worked(&MISSING_PLUG, &counted(9.0, 8.0));
        assert_eq!(value(&answer, "missing", 1.0), 1.0);
        // 0.62 × 95 mm² × √(2 × 1.4e5 / 830): about 65 L/min; a pump gives some 6.
        assert!((value(&answer, "flow", 1e-3 / 60.0) - 65.0).abs() < 1.5);
        assert!(says(&answer, "has not gone back"));
        assert!(says(
            &worked(&MISSING_PLUG, &counted(8.0, 9.0)),
            "More went in"
        ));
        assert!(
            worked(&MISSING_PLUG, &counted(8.0, 8.0))
                .findings()
                .is_empty()
        );
    }

    #[test]
    fn every_plug_says_what_it_does() {
        for (at, plug) in PLUGS.iter().enumerate() {
            assert!(!plug.missing.is_empty() && !plug.how.is_empty());
            assert!(PLUGS[at + 1..].iter().all(|other| other.id != plug.id));
        }
        assert!(PLUGS.iter().any(|plug| !plug.reachable));
    }
}
