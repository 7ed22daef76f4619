//! Moves for lifters, pushrods, lash and the camshaft.

use super::super::change::{Move, Sizes, Step, Who};
use super::super::effect::Sensitivity;
use super::super::trade_size::{TENTH, THOU};
use super::{again, effect, times};
use crate::describe::Provenance;

const DEGREE: f64 = std::f64::consts::PI / 180.0;
const INCH: f64 = 1000.0 * THOU;

const TURNS: &[Step] = &[
    Step {
        size: INCH / 24.0 / 8.0,
        words: "an eighth of a turn down, 24 threads an inch",
    },
    Step {
        size: INCH / 24.0 / 4.0,
        words: "a quarter turn down, 24 threads an inch",
    },
    Step {
        size: INCH / 24.0 / 2.0,
        words: "half a turn down, 24 threads an inch",
    },
    Step {
        size: INCH / 20.0 / 8.0,
        words: "an eighth of a turn down, 20 threads an inch",
    },
    Step {
        size: INCH / 20.0 / 4.0,
        words: "a quarter turn down, 20 threads an inch",
    },
    Step {
        size: INCH / 20.0 / 2.0,
        words: "half a turn down, 20 threads an inch",
    },
    Step {
        size: -INCH / 24.0 / 8.0,
        words: "an eighth of a turn up, 24 threads an inch",
    },
    Step {
        size: -INCH / 24.0 / 4.0,
        words: "a quarter turn up, 24 threads an inch",
    },
    Step {
        size: -INCH / 24.0 / 2.0,
        words: "half a turn up, 24 threads an inch",
    },
    Step {
        size: -INCH / 20.0 / 8.0,
        words: "an eighth of a turn up, 20 threads an inch",
    },
    Step {
        size: -INCH / 20.0 / 4.0,
        words: "a quarter turn up, 20 threads an inch",
    },
    Step {
        size: -INCH / 20.0 / 2.0,
        words: "half a turn up, 20 threads an inch",
    },
];

pub(super) static MOVES: &[Move] = &[
    Move {
        id: "other-pushrods",
        title: "Fit pushrods of another length",
        how: "The lifter's plunger goes in by what the pushrod gains.",
        size_is: "pushrod length gained",
        sizes: Sizes::Any {
            least: -150.0 * THOU,
            most: 150.0 * THOU,
            step: 5.0 * THOU,
        },
        scatter: 2.0 * THOU,
        effects: &[
            times("lifter-preload", 1.0),
            times("pushrod-length", 1.0),
            effect("valve-lash", Sensitivity::TimesRockerRatio(-1.0)),
            again("rocker-sweep"),
        ],
        offered_for: &["lifter-preload", "pushrod-length"],
        who: Who::Bench,
        parts: Some("pushrods of that length"),
        cautions: &[
            "Look at the sweep on the valve's tip again.",
            "Makers gauge pushrods in two ways: ask before you order.",
        ],
        provenance: Provenance::Derivation("preload = pushrod − length at no lash"),
    },
    Move {
        id: "pedestal-shims",
        title: "Put shims under the rocker pedestals",
        how: "The pivot comes up while the valve's tip stays, so the lifter is freed by the shim and by the shim over the ratio besides.",
        size_is: "shims added",
        sizes: Sizes::Any {
            least: 5.0 * THOU,
            most: 60.0 * THOU,
            step: 5.0 * THOU,
        },
        scatter: 0.5 * THOU,
        effects: &[
            effect("lifter-preload", Sensitivity::ThroughRockerPivot(-1.0)),
            again("rocker-sweep"),
        ],
        offered_for: &["lifter-preload"],
        who: Who::Bench,
        parts: Some("pedestal shims"),
        cautions: &[
            "Look at the sweep on the valve's tip, and whether oil still comes up through the pedestal.",
        ],
        provenance: Provenance::Derivation(
            "the tip is held, the pivot moves, the lifter's end moves by one and one over the ratio",
        ),
    },
    Move {
        id: "turn-the-rocker-nut",
        title: "Turn the rocker nut",
        how: "For rockers on studs: the nut takes the pivot down by its pitch a turn, and the lifter's end by more than that.",
        size_is: "by which the pivot goes down",
        sizes: Sizes::Steps(TURNS),
        scatter: THOU,
        effects: &[effect(
            "lifter-preload",
            Sensitivity::ThroughRockerPivot(1.0),
        )],
        offered_for: &["lifter-preload"],
        who: Who::Bench,
        parts: None,
        cautions: &[
            "A hydraulic lifter bleeds down while you turn: start again from no lash if you are not sure.",
            "The lock has to grip afterwards.",
        ],
        provenance: Provenance::Derivation(
            "the tip is held, the pivot moves, the lifter's end moves by one and one over the ratio",
        ),
    },
    Move {
        id: "set-the-lash",
        title: "Set the lash",
        how: "Adjuster turned until the blade drags, on the heel of the cam, lock tightened, felt again.",
        size_is: "",
        sizes: Sizes::ToOrder,
        scatter: 0.5 * THOU,
        effects: &[again("valve-lash")],
        offered_for: &["valve-lash"],
        who: Who::Bench,
        parts: None,
        cautions: &[
            "Hot and cold lash differ, most in alloy engines: see which one the sheet means.",
        ],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "bucket-shims",
        title: "Change the shim of the bucket",
        how: "New shim = old shim + lash measured − lash wanted. Look first whether a shim from another bucket is right.",
        size_is: "shim thickness gained",
        sizes: Sizes::Any {
            least: -0.6e-3,
            most: 0.6e-3,
            step: 0.02e-3,
        },
        scatter: 0.01e-3,
        effects: &[times("valve-lash", -1.0)],
        offered_for: &["valve-lash"],
        who: Who::Bench,
        parts: Some("a shim of that thickness"),
        cautions: &["Measure the shim that comes out: the number on it may be worn off or wrong."],
        provenance: Provenance::Derivation("lash = room − shim"),
    },
    Move {
        id: "fit-lifters-to-bores",
        title: "Try the lifter in another bore, or clean both",
        how: "New lifters may be matched to bores. Each has to turn and fall by its own weight.",
        size_is: "",
        sizes: Sizes::NotForetold,
        scatter: 0.0,
        effects: &[again("lifter-in-bore")],
        offered_for: &["lifter-in-bore"],
        who: Who::Bench,
        parts: None,
        cautions: &["A used flat lifter goes back to its own lobe or is thrown away."],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "bush-the-lifter-bores",
        title: "Have the lifter bores bushed",
        how: "Bored, bushed and honed to the lifter, oil holes drilled through again.",
        size_is: "",
        sizes: Sizes::ToOrder,
        scatter: 2.0 * TENTH,
        effects: &[again("lifter-in-bore")],
        offered_for: &["lifter-in-bore"],
        who: Who::MachineShop,
        parts: Some("lifter bushes"),
        cautions: &[
            "A bush without its oil hole starves the whole gallery: check each with a wire.",
        ],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "find-the-tight-cam-bearing",
        title: "Find which cam bearing it is and change it",
        how: "Blue on the journals shows where the bearing touches; drive that one out and in again, oil hole in line.",
        size_is: "",
        sizes: Sizes::NotForetold,
        scatter: 0.0,
        effects: &[again("cam-bearing-clearance")],
        offered_for: &["cam-bearing-clearance"],
        who: Who::Bench,
        parts: Some("a cam bearing"),
        cautions: &["A wire through every oil hole before the camshaft goes in."],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "cam-plate-or-spacer",
        title: "Fit another thrust plate or spacer",
        how: "A thicker plate or a thinner spacer closes the float; a thinner plate or thicker spacer opens it.",
        size_is: "plate thickness gained",
        sizes: Sizes::Any {
            least: -15.0 * THOU,
            most: 15.0 * THOU,
            step: THOU,
        },
        scatter: 3.0 * TENTH,
        effects: &[times("cam-end-float", -1.0)],
        offered_for: &["cam-end-float"],
        who: Who::Bench,
        parts: Some("a plate or spacer of that thickness"),
        cautions: &["Its oil groove faces the camshaft's thrust."],
        provenance: Provenance::Derivation("float = spacer − plate"),
    },
    Move {
        id: "turn-the-cam",
        title: "Advance or retard the camshaft",
        how: "Offset key or bush, another keyway of the wheel, or the slots of an adjustable wheel. Advancing brings the lobe's centre earlier.",
        size_is: "advanced, at the crankshaft",
        sizes: Sizes::Any {
            least: -8.0 * DEGREE,
            most: 8.0 * DEGREE,
            step: DEGREE,
        },
        scatter: 0.5 * DEGREE,
        effects: &[
            times("cam-lobe-centre", -1.0),
            times("cam-lateness", -1.0),
            again("valve-to-piston-intake"),
            again("valve-to-piston-exhaust"),
        ],
        offered_for: &["cam-lobe-centre", "cam-lateness"],
        who: Who::Bench,
        parts: Some("an offset key or bush, or an adjustable wheel"),
        cautions: &[
            "Degrees of the crankshaft, not of the camshaft: one of the camshaft is two of the crankshaft.",
            "Advance takes room from the intake valve, retard from the exhaust valve: measure both again.",
        ],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "other-timing-set",
        title: "Fit a timing set of another size",
        how: "A shorter chain or a gear made for the new distance takes the slack up.",
        size_is: "",
        sizes: Sizes::NotForetold,
        scatter: 0.0,
        effects: &[
            again("timing-chain-slack"),
            again("timing-gear-backlash"),
            again("cam-lobe-centre"),
        ],
        offered_for: &["timing-chain-slack", "timing-gear-backlash"],
        who: Who::Bench,
        parts: Some("a timing set for the line-honed distance"),
        cautions: &["Gears without backlash whine and break: feel it all the way round."],
        provenance: Provenance::CommonPractice,
    },
];
