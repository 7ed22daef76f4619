//! The measures of crankpins and rods.

use assembly_core::describe::Provenance;
use assembly_core::fit::clearance_rule_of_thumb::{GREATEST_PART, LEAST_PART};

use super::bases::{FIT, GAP, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Found, Measure, Over, Spots};
use super::tripwire::{Rule, Tripwire};
use crate::place::{Direction, Station};

const BOTH_SIDES_OF_THE_OIL_HOLE: &[Station] = &[Station::Front, Station::Rear];

/// The outside diameter of a crankpin.
pub static ROD_JOURNAL_DIAMETER: Measure = Measure {
    id: "rod-journal-diameter",
    label: "rod journal diameter",
    spots: Spots {
        per: Per::Crankpin,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[Direction::UpAndDown, Direction::Across],
    },
    how: [
        "Wipe the journal and let crank and micrometer lie together until they are equally warm.",
        "Measure on each side of the oil hole, clear of the hole and of the fillets.",
        "At each, in line with the throw and a quarter turn round from that.",
    ],
    too_little: "The bearing runs loose: knock, and oil pressure that sags as the engine turns faster.",
    too_much: "The bearing runs tight: it wipes and seizes.",
    ..SIZE
};

/// How much a crankpin's diameter differs from end to end.
pub static ROD_JOURNAL_TAPER: Measure = Measure {
    id: "rod-journal-taper",
    label: "rod journal taper",
    found: Found::Spread {
        of: &ROD_JOURNAL_DIAMETER,
        over: Over::Stations,
    },
    spots: Spots::each(Per::Crankpin),
    how: [
        "Take the mean of the readings in front of the oil hole, and of those behind it.",
        "The taper is the difference of the two.",
        "It hides in a mean of all readings: look at it by itself.",
    ],
    tripwire: Some(Tripwire::at_most(0.5, "at most half a thou")),
    too_much: "The edge of the shell wears, and the rod is pushed to one side.",
    ..FIT
};

/// How much a crankpin's diameters differ at one station.
pub static ROD_JOURNAL_OUT_OF_ROUND: Measure = Measure {
    id: "rod-journal-out-of-round",
    label: "rod journal out of round",
    found: Found::Spread {
        of: &ROD_JOURNAL_DIAMETER,
        over: Over::Directions,
    },
    spots: Spots::each(Per::Crankpin),
    how: [
        "Compare the readings in different directions at one station.",
        "The largest less the smallest is how far it is out of round.",
        "A crankpin wears on the side towards the main journals.",
    ],
    tripwire: Some(Tripwire::at_most(0.5, "at most half a thou").from("TM 5-3805-262-34")),
    too_much: "The film breaks where it is tightest; the rod knocks where it is loose.",
    ..FIT
};

/// The big end's bore without shells.
pub static BIG_END_BORE: Measure = Measure {
    id: "big-end-bore",
    label: "big end bore",
    spots: Spots {
        per: Per::Rod,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[
            Direction::UpAndDown,
            Direction::SixtyLeft,
            Direction::SixtyRight,
        ],
    },
    how: [
        "Shells out, joint clean, bolts at their final stretch or torque with the final lubricant.",
        "Measure in line with the rod and 60° to each side, at both ends of the bore.",
        "Hold the rod by its cap's sides in soft jaws, never across the bore.",
    ],
    too_little: "The shells are crushed too much and bulge at the joint.",
    too_much: "The shells are not held and spin.",
    cautions: &[
        "New bolts change the bore: measure it again with them.",
        "Use an old set of stretch bolts for trial fits.",
    ],
    ..SIZE
};

/// How far the big end's bore is from round.
pub static BIG_END_OUT_OF_ROUND: Measure = Measure {
    id: "big-end-out-of-round",
    label: "big end out of round",
    found: Found::Spread {
        of: &BIG_END_BORE,
        over: Over::Directions,
    },
    spots: Spots::each(Per::Rod),
    how: [
        "Compare the readings of the big end's bore in different directions at one end.",
        "The largest less the smallest is how far it is out of round.",
        "A rod that ran hot is stretched in line with its shank.",
    ],
    too_much: "The shell takes on the shape: it is tight where the bore is narrow.",
    ..FIT
};

/// The inside diameter of a rod bearing, shells in and bolts tight.
pub static ROD_BEARING_BORE: Measure = Measure {
    id: "rod-bearing-bore",
    label: "rod bearing bore",
    spots: Spots {
        per: Per::Rod,
        stations: BOTH_SIDES_OF_THE_OIL_HOLE,
        directions: &[
            Direction::UpAndDown,
            Direction::JointLeft,
            Direction::JointRight,
        ],
    },
    how: [
        "Clean shells on dry seats, bolts at their final stretch or torque.",
        "Rock the bore gauge to its smallest reading in line with the rod, at both ends.",
        "Then 25° above the joint on both sides: larger there on purpose, so never averaged in.",
    ],
    too_little: "The bearing runs tight: it wipes and seizes.",
    too_much: "The bearing runs loose: knock, and oil pressure that sags as the engine turns faster.",
    cautions: &[
        "Chamfered shells on a shared crankpin: the chamfer goes to the fillet.",
        "Use an old set of stretch bolts for trial fits.",
    ],
    ..SIZE
};

/// The room for oil in a rod bearing, on the diameter.
pub static ROD_OIL_CLEARANCE: Measure = Measure {
    id: "rod-oil-clearance",
    label: "rod oil clearance",
    found: Found::WorkedOut {
        calculation: "running-clearance",
        from: &[&ROD_BEARING_BORE, &ROD_JOURNAL_DIAMETER],
        or_read_by: &[
            "running-clearance-same-micrometer",
            "running-clearance-strip",
        ],
    },
    spots: Spots::each(Per::Rod),
    how: [
        "Bore less journal: the least is the smallest bore in line with the rod less the largest journal.",
        "Best: zero the bore gauge in the micrometer that still holds the journal's size, and read the needle.",
        "Or a plastic gauge strip along the dry journal, full torque, no turning, read at its widest.",
    ],
    tripwire: Some(Tripwire {
        rule: Rule::PartOf {
            size: &ROD_JOURNAL_DIAMETER,
            low: LEAST_PART,
            high: GREATEST_PART,
        },
        provenance: Provenance::CommonPractice,
        words: "0.00075 to 0.001 in for each inch of journal",
    }),
    too_little: "It wipes and seizes.",
    too_much: "Knock, and oil pressure that sags as the engine turns faster.",
    cautions: &[
        "The maker's sheet for this engine and these shells comes before any rule of thumb.",
        "Side clearance proves nothing about this fit.",
    ],
    ..TIGHT_IS_DANGEROUS
};

/// How hard a rod holds its shells, as a gap at the joint.
pub static ROD_CRUSH: Measure = Measure {
    id: "rod-crush",
    label: "rod shell crush, gap at the joint",
    spots: Spots::each(Per::Rod),
    how: [
        "Shells in, both bolts tight.",
        "Let one bolt right off and try the gap at that joint with feeler blades.",
        "Or find the big end's bore inside its window with shells of the right size: then it is right.",
    ],
    too_little: "The shells are not held and spin.",
    too_much: "The shells bulge at the joint.",
    cautions: &["Never file a cap to gain crush."],
    ..FIT
};

/// How far the rods of a crankpin can move along it.
pub static ROD_SIDE_CLEARANCE: Measure = Measure {
    id: "rod-side-clearance",
    label: "rod side clearance",
    spots: Spots::each(Per::Crankpin),
    how: [
        "Bolts tight, rods pushed apart.",
        "Feeler blades between the two rods of a shared crankpin, or between rod and cheek.",
        "It is one number for a pair that shares a crankpin.",
    ],
    tripwire: Some(Tripwire::thou(6.0, 20.0, "6 to 20 thou for a pair")),
    too_little: "The sides scuff and heat.",
    too_much: "More oil is flung onto the bores; minor by itself.",
    cautions: &["It is never proof of the bearing's fit."],
    ..GAP
};

/// A rod's length between centres.
pub static ROD_LENGTH: Measure = Measure {
    id: "rod-length",
    label: "rod length, centre to centre",
    spots: Spots::each(Per::Rod),
    how: [
        "On a fixture with a pin in each eye, or from a shop's report.",
        "Without one: compare how far the pistons come up in all cylinders with the same parts.",
        "Half the bores and the distance between their near edges add up to it.",
    ],
    too_little: "The piston stays further down: more quench, less compression.",
    too_much: "The piston comes up further: it may touch the head.",
    ..SIZE
};

/// How far a rod's eyes are out of parallel.
pub static ROD_BEND: Measure = Measure {
    id: "rod-bend",
    label: "rod bend, over six inches",
    spots: Spots::each(Per::Rod),
    how: [
        "On a fixture: a pin in each eye, lying on parallels.",
        "Indicator on both ends of the small end's pin, six inches apart.",
        "The difference is the bend.",
    ],
    tripwire: Some(Tripwire::at_most(1.0, "at most a thou over six inches")),
    too_much: "The skirt wears at its corners.",
    ..FIT
};

/// How far a rod is twisted.
pub static ROD_TWIST: Measure = Measure {
    id: "rod-twist",
    label: "rod twist, over six inches",
    spots: Spots::each(Per::Rod),
    how: [
        "On a fixture: the rod lying flat, a pin in each eye.",
        "Indicator on both ends of the small end's pin, six inches apart.",
        "The difference is the twist.",
    ],
    tripwire: Some(
        Tripwire::at_most(2.0, "at most two thou over six inches").from("TM 10-3930-671-24"),
    ),
    too_much: "The skirt wears at its corners.",
    ..FIT
};

/// The thickness of a rod's shell at its crown.
pub static ROD_SHELL_WALL: Measure = Measure {
    id: "rod-shell-wall",
    label: "rod shell wall at the crown",
    spots: Spots::at(Per::Rod, &[Station::Front, Station::Middle, Station::Rear]),
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

/// How long a rod bolt is when it is not tightened.
pub static ROD_BOLT_FREE_LENGTH: Measure = Measure {
    id: "rod-bolt-free-length",
    label: "rod bolt free length",
    spots: Spots::each(Per::Rod),
    how: [
        "Bolt right off, ends clean.",
        "Stretch gauge, or a micrometer with points, in the dimples of both ends.",
        "Write down both bolts of a rod; the number decides next time whether it may be used again.",
    ],
    too_much: "The bolt has stretched for good: scrap it by its sheet's limit.",
    ..SIZE
};

/// How far a rod bolt was stretched by tightening.
pub static ROD_BOLT_STRETCH: Measure = Measure {
    id: "rod-bolt-stretch",
    label: "rod bolt stretch",
    spots: Spots::each(Per::Rod),
    how: [
        "Zero the stretch gauge on each bolt before it is tightened.",
        "Tighten in small steps and read after each.",
        "The bolt's own sheet says how much; too far means a new bolt.",
    ],
    too_little: "The cap opens under load.",
    too_much: "The bolt has yielded, and breaks.",
    cautions: &[
        "A pair that is short: let both off and start again. Do not crank the low one past.",
    ],
    ..FIT
};
