//! The measures of the main bearings.

use assembly_core::describe::Provenance;
use assembly_core::fit::clearance_rule_of_thumb::{GREATEST_PART, LEAST_PART};

use super::bases::{FIT, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Found, Measure, Over, Spots};
use super::tripwire::{Rule, Tripwire};
use crate::engine::{Feature, When};
use crate::place::{Direction, Station};

const BOTH_SIDES_OF_THE_OIL_HOLE: &[Station] = &[Station::Front, Station::Rear];

/// The outside diameter of a main journal.
pub static MAIN_JOURNAL_DIAMETER: Measure = Measure {
    id: "main-journal-diameter",
    label: "main journal diameter",
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
    too_little: "The bearing runs loose: low oil pressure at idle, knock.",
    too_much: "The bearing runs tight: it drags, wipes and seizes when hot.",
    cautions: &[
        "A two-point micrometer cannot see a journal with three lobes: try a vee block when in doubt.",
        "A crank stood on its end is tied, or it falls.",
    ],
    ..SIZE
};

/// How much a main journal's diameter differs from end to end.
pub static MAIN_JOURNAL_TAPER: Measure = Measure {
    id: "main-journal-taper",
    label: "main journal taper",
    found: Found::Spread {
        of: &MAIN_JOURNAL_DIAMETER,
        over: Over::Stations,
    },
    spots: Spots::each(Per::Main),
    how: [
        "Take the mean of the readings in front of the oil hole, and of those behind it.",
        "The taper is the difference of the two.",
        "It hides in a mean of all readings: look at it by itself.",
    ],
    tripwire: Some(Tripwire::at_most(0.5, "at most half a thou")),
    too_much: "The edge of the shell wears and oil leaks out at one end.",
    ..FIT
};

/// How much a main journal's diameters differ at one station.
pub static MAIN_JOURNAL_OUT_OF_ROUND: Measure = Measure {
    id: "main-journal-out-of-round",
    label: "main journal out of round",
    found: Found::Spread {
        of: &MAIN_JOURNAL_DIAMETER,
        over: Over::Directions,
    },
    spots: Spots::each(Per::Main),
    how: [
        "Compare the readings in different directions at one station.",
        "The largest less the smallest is how far it is out of round.",
        "A worn journal is narrowest where the load comes: turn further than a quarter when in doubt.",
    ],
    tripwire: Some(Tripwire::at_most(0.5, "at most half a thou").from("TM 5-3805-262-34")),
    too_much: "The clearance changes as it turns: the film breaks where it is tightest.",
    ..FIT
};

/// How far the crank is bent, read at its middle main.
pub static CRANK_BOW: Measure = Measure {
    id: "crank-bow",
    label: "crank bow, full needle",
    when: When::with(&[Feature::SeveralMains]),
    spots: Spots::each(Per::Main),
    how: [
        "Lay the end mains in vee blocks, or in the oiled upper shells of the first and last main.",
        "Put an indicator on each journal, clear of the oil hole, and turn the crank once, slowly.",
        "Note the whole way of the needle. Out-of-round is in it: take that away.",
    ],
    tripwire: Some(Tripwire::at_most(
        2.0,
        "at most two thou, the whole way of the needle",
    )),
    too_much: "The crank binds and wipes the middle main.",
    cautions: &["A crank stood on its end is tied, or it falls."],
    ..FIT
};

/// The bore of a main bearing without shells.
pub static MAIN_HOUSING_BORE: Measure = Measure {
    id: "main-housing-bore",
    label: "main housing bore",
    spots: Spots {
        per: Per::Main,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[
            Direction::UpAndDown,
            Direction::SixtyLeft,
            Direction::SixtyRight,
        ],
    },
    how: [
        "Take the shells out, clean the joints, and torque the caps with the final fasteners and lubricant.",
        "Measure upright and 60° to each side, at both ends of the bore.",
        "Keep 10° away from the joint: burrs there say nothing of the bore.",
    ],
    too_little: "The shells are crushed too much and bulge at the joint.",
    too_much: "The shells are not held and spin.",
    cautions: &[
        "With the caps loose the numbers mean nothing.",
        "Studs in place of bolts pull the bore to another shape: measure with what will be fitted.",
        "Never file a cap.",
    ],
    ..SIZE
};

/// How far the main bores are out of line.
pub static MAIN_LINE: Measure = Measure {
    id: "main-line",
    label: "main bores out of line",
    when: When::with(&[Feature::SeveralMains]),
    spots: Spots::each(Per::Main),
    how: [
        "Lay a bar that is known to be straight into the bores, caps off.",
        "Try with a feeler blade under the bar at each main.",
        "The bar has to lie on all of them; a blade that goes under says how far one is low.",
    ],
    tripwire: Some(Tripwire::at_most(
        0.5,
        "neighbours at most half a thou apart",
    )),
    too_much: "The crank binds, and shells wear on one side.",
    ..FIT
};

/// The inside diameter of a main bearing, shells in and caps torqued.
pub static MAIN_BEARING_BORE: Measure = Measure {
    id: "main-bearing-bore",
    label: "main bearing bore",
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
    too_little: "The bearing runs tight: it drags, wipes and seizes when hot.",
    too_much: "The bearing runs loose: low oil pressure at idle, knock.",
    cautions: &[
        "With the caps loose the numbers mean nothing.",
        "On most bore gauges a needle moving clockwise means a smaller bore: try yours first.",
        "Every torquing counts on stretch bolts: use an old set for trial fits.",
        "Never file a cap or its shell, and never open the housing to gain clearance.",
    ],
    ..SIZE
};

/// The room for oil in a main bearing, on the diameter.
pub static MAIN_OIL_CLEARANCE: Measure = Measure {
    id: "main-oil-clearance",
    label: "main oil clearance",
    found: Found::WorkedOut {
        calculation: "running-clearance",
        from: &[&MAIN_BEARING_BORE, &MAIN_JOURNAL_DIAMETER],
        or_read_by: &[
            "running-clearance-same-micrometer",
            "running-clearance-strip",
        ],
    },
    spots: Spots::each(Per::Main),
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
    ..TIGHT_IS_DANGEROUS
};

/// The thickness of a main's shell at its crown.
pub static MAIN_SHELL_WALL: Measure = Measure {
    id: "main-shell-wall",
    label: "main shell wall at the crown",
    spots: Spots::at(Per::Main, &[Station::Front, Station::Middle, Station::Rear]),
    how: [
        "A micrometer with a ball on its anvil, in the shell's hollow side.",
        "At the crown, a quarter turn from the joint, at three places along the shell.",
        "Flat anvils bridge the hollow and read thick.",
    ],
    too_little: "More clearance than the size stamped on its back says.",
    too_much: "Less clearance than the size stamped on its back says.",
    cautions: &["Two boxes of one size can differ by two or three tenths."],
    ..SIZE
};

/// How hard the housing holds its shells, as a gap at the joint.
pub static MAIN_CRUSH: Measure = Measure {
    id: "main-crush",
    label: "main shell crush, gap at the joint",
    spots: Spots::each(Per::Main),
    how: [
        "Shells in, both bolts of the cap at torque.",
        "Let one bolt right off and try the gap at that joint with feeler blades.",
        "Or find the housing bore inside its window with shells of the right size: then it is right.",
    ],
    too_little: "The shells are not held and spin.",
    too_much: "The shells bulge at the joint.",
    cautions: &["Never file a cap to gain crush."],
    ..FIT
};

/// How far the crank moves from end to end.
pub static CRANK_END_PLAY: Measure = Measure {
    id: "crank-end-play",
    label: "crank end play",
    how: [
        "Thrust halves aligned by prying the crank fore and aft at snug, then torqued.",
        "An indicator on the nose, in line with the crank: pry rearward, zero, pry forward, read.",
        "Three times; once more when converter or clutch is on.",
    ],
    tripwire: Some(
        Tripwire::thou(2.0, 8.0, "2 to 8 thou; 15 is worn out").from("TM 9-2815-256-24"),
    ),
    too_little: "No film on the thrust: it burns within minutes.",
    too_much: "The crank pounds, rods skew, the seal leaks.",
    cautions: &["The thrust is never set with a hammer on a cap alone."],
    ..TIGHT_IS_DANGEROUS
};

/// How hard the crank is to turn.
pub static TURNING_EFFORT: Measure = Measure {
    id: "turning-effort",
    label: "turning effort",
    kind: assembly_core::quantity::Kind::Torque,
    units: assembly_core::describe::UsualUnits::of("ft-lb", "N·m"),
    how: [
        "A beam wrench on the crank's nose, turning slowly and steadily.",
        "Read while it turns, not as it breaks loose.",
        "Look at the jump when a cap or a piston went on, and at lumps within a turn, more than at the number.",
    ],
    too_much: "Something binds: find it before the next part goes on.",
    cautions: &["Stop at any hang. Never force it past."],
    ..SIZE
};
