//! Moves for valves, seats, guides and springs.

use super::super::change::{Move, Sizes, Step, Who};
use super::super::effect::Sensitivity;
use super::super::trade_size::{TENTH, THOU};
use super::{again, effect, times};
use crate::describe::Provenance;

const SHIMS: &[Step] = &[
    Step {
        size: 15.0 * THOU,
        words: "one shim of 0.015 in (0.4 mm)",
    },
    Step {
        size: 30.0 * THOU,
        words: "one shim of 0.030 in (0.8 mm)",
    },
    Step {
        size: 45.0 * THOU,
        words: "shims of 0.030 and 0.015 in (1.1 mm together)",
    },
    Step {
        size: 60.0 * THOU,
        words: "one shim of 0.060 in (1.5 mm)",
    },
];

const LOCKS: &[Step] = &[
    Step {
        size: 50.0 * THOU,
        words: "offset keepers, retainer 0.050 in (1.3 mm) higher",
    },
    Step {
        size: -50.0 * THOU,
        words: "offset keepers, retainer 0.050 in (1.3 mm) lower",
    },
];

pub(super) static MOVES: &[Move] = &[
    Move {
        id: "spring-shims",
        title: "Put a shim under the spring",
        how: "The spring stands shorter by the shim and presses harder by its rate times the shim. The retainer does not move.",
        size_is: "shims added",
        sizes: Sizes::Steps(SHIMS),
        scatter: 2.0 * TENTH,
        effects: &[
            times("installed-height", -1.0),
            effect("spring-seat-load", Sensitivity::TimesSpringRate(1.0)),
            effect("spring-open-load", Sensitivity::TimesSpringRate(1.0)),
            times("coil-bind-margin", -1.0),
        ],
        offered_for: &["installed-height", "spring-seat-load", "spring-open-load"],
        who: Who::Bench,
        parts: Some("spring shims"),
        cautions: &[
            "At most 0.060 in (1.5 mm) of flat shims together.",
            "Look at the room before the coils bind again.",
        ],
        provenance: Provenance::Derivation("installed height = seat to retainer − shims"),
    },
    Move {
        id: "offset-keepers",
        title: "Fit offset keepers",
        how: "They hold the retainer higher or lower on the stem.",
        size_is: "by which the retainer stands higher",
        sizes: Sizes::Steps(LOCKS),
        scatter: THOU,
        effects: &[
            times("installed-height", 1.0),
            effect("spring-seat-load", Sensitivity::TimesSpringRate(-1.0)),
            effect("spring-open-load", Sensitivity::TimesSpringRate(-1.0)),
            times("coil-bind-margin", 1.0),
            times("retainer-to-seal", 1.0),
        ],
        offered_for: &[
            "installed-height",
            "spring-seat-load",
            "coil-bind-margin",
            "retainer-to-seal",
        ],
        who: Who::Bench,
        parts: Some("keepers of that offset"),
        cautions: &["A higher retainer may touch the rocker: check its room."],
        provenance: Provenance::Derivation("the keeper's groove sets where the retainer stands"),
    },
    Move {
        id: "cut-the-spring-seat",
        title: "Have the spring seats cut deeper",
        how: "The spring stands taller by the cut.",
        size_is: "cut off the spring seat",
        sizes: Sizes::Any {
            least: 5.0 * THOU,
            most: 60.0 * THOU,
            step: 5.0 * THOU,
        },
        scatter: THOU,
        effects: &[
            times("installed-height", 1.0),
            effect("spring-seat-load", Sensitivity::TimesSpringRate(-1.0)),
            effect("spring-open-load", Sensitivity::TimesSpringRate(-1.0)),
            times("coil-bind-margin", 1.0),
        ],
        offered_for: &["installed-height", "coil-bind-margin"],
        who: Who::MachineShop,
        parts: None,
        cautions: &["Water lies below the seat: ask how thick the head is there."],
        provenance: Provenance::Derivation("installed height = seat to retainer − shims"),
    },
    Move {
        id: "other-springs",
        title: "Fit other springs",
        how: "One that stands right at this height and has its room at full lift, from its maker's table.",
        size_is: "",
        sizes: Sizes::NotForetold,
        scatter: 0.0,
        effects: &[
            again("coil-bind-margin"),
            again("spring-seat-load"),
            again("spring-open-load"),
            again("installed-height"),
        ],
        offered_for: &[
            "coil-bind-margin",
            "spring-seat-load",
            "spring-open-load",
            "installed-height",
        ],
        who: Who::Bench,
        parts: Some("springs to suit camshaft and height"),
        cautions: &[
            "See which loads the camshaft's maker allows, above all for the run-in of a flat tappet cam.",
        ],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "cut-the-guide-top",
        title: "Have the guide's top cut",
        how: "The seal sits lower by the cut.",
        size_is: "cut off the guide's top",
        sizes: Sizes::Any {
            least: 10.0 * THOU,
            most: 150.0 * THOU,
            step: 5.0 * THOU,
        },
        scatter: 2.0 * THOU,
        effects: &[times("retainer-to-seal", 1.0)],
        offered_for: &["retainer-to-seal"],
        who: Who::MachineShop,
        parts: None,
        cautions: &["The guide has to stay long enough to hold the stem upright and the seal."],
        provenance: Provenance::Derivation("room = retainer − seal − lift"),
    },
    Move {
        id: "guides-to-size",
        title: "Have the guides lined or changed",
        how: "A liner or a new guide, honed to the stem; or valves with an oversize stem.",
        size_is: "",
        sizes: Sizes::ToOrder,
        scatter: 2.0 * TENTH,
        effects: &[
            again("stem-guide-intake"),
            again("stem-guide-exhaust"),
            again("seat-run-out"),
            again("seat-width"),
        ],
        offered_for: &["stem-guide-intake", "stem-guide-exhaust"],
        who: Who::MachineShop,
        parts: Some("guides, liners or oversize valves"),
        cautions: &["The seat follows the guide: it is cut again afterwards."],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "cut-the-seat",
        title: "Have the seat cut",
        how: "Seat and face are made true. The valve sinks into the head and its tip comes up.",
        size_is: "by which the valve sinks",
        sizes: Sizes::ToOrder,
        scatter: THOU,
        effects: &[
            again("seat-run-out"),
            again("seat-width"),
            again("seat-leak"),
            times("tip-height", 1.0),
            times("installed-height", 1.0),
            times("coil-bind-margin", 1.0),
            effect("spring-seat-load", Sensitivity::TimesSpringRate(-1.0)),
            effect("lifter-preload", Sensitivity::OverRockerRatio(1.0)),
            times("valve-lash", -1.0),
            effect(
                "valve-to-piston-intake",
                Sensitivity::TimesCosineOfValveAngle(1.0),
            ),
            effect(
                "valve-to-piston-exhaust",
                Sensitivity::TimesCosineOfValveAngle(1.0),
            ),
            again("chamber-volume"),
        ],
        offered_for: &["seat-run-out", "seat-width", "seat-leak"],
        who: Who::MachineShop,
        parts: None,
        cautions: &["After the guides. Then springs, tips and lash are set again."],
        provenance: Provenance::CommonPractice,
    },
    Move {
        id: "grind-the-tip",
        title: "Have the valve's tip ground",
        how: "It brings a tip that stands too high down again, square to the stem.",
        size_is: "ground off the tip",
        sizes: Sizes::Any {
            least: THOU,
            most: 20.0 * THOU,
            step: THOU,
        },
        scatter: 0.5 * THOU,
        effects: &[
            times("tip-height", -1.0),
            effect("lifter-preload", Sensitivity::OverRockerRatio(-1.0)),
            times("valve-lash", 1.0),
        ],
        offered_for: &["tip-height", "lifter-preload", "valve-lash"],
        who: Who::MachineShop,
        parts: None,
        cautions: &[
            "Only through the hard layer's allowance, and not so far that the rocker meets the retainer.",
        ],
        provenance: Provenance::Derivation(
            "the rocker turns about its pivot: what the tip loses is passed on over the ratio",
        ),
    },
];
