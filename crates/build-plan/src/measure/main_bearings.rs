//! The measures of the main bearings.

use assembly_core::describe::{Provenance, UsualUnits};
use assembly_core::fit::clearance_rule_of_thumb::{GREATEST_PART, LEAST_PART};
use assembly_core::measure::DangerousSide;
use assembly_core::quantity::Kind;

use super::shape::{Found, Measure, Per, Spots};
use super::tripwire::{Rule, Tripwire};
use crate::place::{Direction, Station};

const SIZE: UsualUnits = UsualUnits {
    inch: "in",
    metric: "mm",
};

const FIT: UsualUnits = UsualUnits {
    inch: "thou",
    metric: "µm",
};

const BOTH_SIDES_OF_THE_OIL_HOLE: &[Station] = &[Station::Front, Station::Rear];

/// The outside diameter of a main journal.
pub static MAIN_JOURNAL_DIAMETER: Measure = Measure {
    id: "main-journal-diameter",
    label: "main journal diameter",
    kind: Kind::Length,
    units: SIZE,
    found: Found::Read,
    dangerous: DangerousSide::Neither,
    spots: Spots {
        per: Per::Main,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[Direction::UpAndDown, Direction::Across],
    },
    how: [
        "Wipe the journal and let crank and micrometer lie together until they are equally warm.",
        "Measure on each side of the oil hole, clear of the hole and of the fillets.",
        "At each, measure twice: up and down, and a quarter turn round from that.",
    ],
    tripwire: None,
    too_little: "The bearing runs loose: low oil pressure at idle, knock.",
    too_much: "The bearing runs tight: it drags, wipes and seizes when hot.",
    cautions: &[
        "A two-point micrometer cannot see a journal with three lobes: try a vee block when in doubt.",
        "A crank stood on its end is tied, or it falls.",
    ],
};

/// The inside diameter of a main bearing, shells in and caps torqued.
pub static MAIN_BEARING_BORE: Measure = Measure {
    id: "main-bearing-bore",
    label: "main bearing bore",
    kind: Kind::Length,
    units: SIZE,
    found: Found::Read,
    dangerous: DangerousSide::Neither,
    spots: Spots {
        per: Per::Main,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[
            Direction::UpAndDown,
            Direction::JointLeft,
            Direction::JointRight,
        ],
    },
    how: [
        "Fit clean shells on dry seats and torque the caps with the final fasteners and lubricant.",
        "Rock the bore gauge to its smallest reading, square to the joint, each side of the oil hole.",
        "Then 25° above the joint on both sides: larger there on purpose, so never averaged in.",
    ],
    tripwire: None,
    too_little: "The bearing runs tight: it drags, wipes and seizes when hot.",
    too_much: "The bearing runs loose: low oil pressure at idle, knock.",
    cautions: &[
        "With the caps loose the numbers mean nothing.",
        "On most bore gauges a needle moving clockwise means a smaller bore: try yours first.",
        "Every torquing counts on stretch bolts: use an old set for trial fits.",
        "Never file a cap or its shell, and never open the housing to gain clearance.",
    ],
};

/// The room for oil in a main bearing, on the diameter.
pub static MAIN_OIL_CLEARANCE: Measure = Measure {
    id: "main-oil-clearance",
    label: "main oil clearance",
    kind: Kind::Length,
    units: FIT,
    found: Found::WorkedOut {
        calculation: "running-clearance",
        from: &[&MAIN_BEARING_BORE, &MAIN_JOURNAL_DIAMETER],
        or_read_by: &[
            "running-clearance-same-micrometer",
            "running-clearance-strip",
        ],
    },
    dangerous: DangerousSide::TooLittle,
    spots: Spots {
        per: Per::Main,
        stations: &[],
        directions: &[],
    },
    how: [
        "Bore less journal: the least is the smallest upright bore less the largest journal.",
        "Best: zero the bore gauge in the micrometer that still holds the journal's size, and read the needle.",
        "Or a plastic gauge strip along the dry journal, full torque, no turning, read at its widest.",
    ],
    tripwire: Some(Tripwire {
        rule: Rule::PartOf {
            size: &MAIN_JOURNAL_DIAMETER,
            low: LEAST_PART,
            high: GREATEST_PART,
        },
        provenance: Provenance::CommonPractice,
        words: "0.00075 to 0.001 in for each inch of journal",
    }),
    too_little: "It drags, wipes and seizes when hot.",
    too_much: "Low oil pressure at idle, knock.",
    cautions: &[
        "The maker's sheet for this engine and these shells comes before any rule of thumb.",
        "Backs of the shells and their seats are clean and dry, or the clearance is not what it will be.",
        "A strip bears the crank's weight: invert the block or hold the crank up. Not across the oil hole.",
    ],
};
