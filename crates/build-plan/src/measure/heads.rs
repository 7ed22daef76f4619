//! The measures of valves, guides, seats and springs.

use super::bases::{FIT, FORCE, GAP, SIZE, TIGHT_IS_DANGEROUS};
use super::per::Per;
use super::shape::{Found, Measure, Spots};
use super::tripwire::Tripwire;
use crate::engine::{Feature, When};
use crate::place::{Direction, Station};

/// The room for an intake valve's stem in its guide.
pub static STEM_GUIDE_INTAKE: Measure = Measure {
    id: "stem-guide-intake",
    label: "stem to guide, intake",
    spots: Spots {
        per: Per::IntakeValve,
        stations: &[Station::Top, Station::Middle, Station::Bottom],
        directions: &[Direction::Axial, Direction::Across],
    },
    how: [
        "Small-hole gauge in the guide at three depths, two directions; micrometer on the stem.",
        "Guide less stem; the widest end counts for wear.",
        "Rocking the valve reads about twice the clearance.",
    ],
    tripwire: Some(Tripwire::thou(0.8, 2.0, "0.8 to 2 thou; 4 is worn out")),
    too_little: "The valve sticks when hot.",
    too_much: "Oil is used and the seat wears.",
    ..TIGHT_IS_DANGEROUS
};

/// The room for an exhaust valve's stem in its guide.
pub static STEM_GUIDE_EXHAUST: Measure = Measure {
    id: "stem-guide-exhaust",
    label: "stem to guide, exhaust",
    spots: Spots {
        per: Per::ExhaustValve,
        stations: &[Station::Top, Station::Middle, Station::Bottom],
        directions: &[Direction::Axial, Direction::Across],
    },
    how: [
        "Small-hole gauge in the guide at three depths, two directions; micrometer on the stem.",
        "Guide less stem; the widest end counts for wear.",
        "Rocking the valve reads about twice the clearance.",
    ],
    tripwire: Some(Tripwire::thou(2.0, 3.5, "2 to 3.5 thou; 6 is worn out")),
    too_little: "The valve sticks when hot.",
    too_much: "The valve runs hot and burns its seat.",
    ..TIGHT_IS_DANGEROUS
};

/// How wide the contact of valve and seat is.
pub static SEAT_WIDTH: Measure = Measure {
    id: "seat-width",
    label: "valve seat width",
    spots: Spots::each(Per::Valve),
    how: [
        "Blue on the seat, valve pressed on and turned a little.",
        "Measure how wide the mark is on the valve.",
        "It lies in the middle of the valve's face.",
    ],
    too_little: "The valve runs hot: little seat to carry the heat.",
    too_much: "The seat holds dirt and leaks.",
    ..SIZE
};

/// How far a seat is out of true to its guide.
pub static SEAT_RUN_OUT: Measure = Measure {
    id: "seat-run-out",
    label: "valve seat run-out",
    spots: Spots::each(Per::Valve),
    how: [
        "A pilot in the guide, an indicator on it, its finger on the seat.",
        "One slow turn; note the whole way of the needle.",
        "The seat follows the guide: guides first.",
    ],
    tripwire: Some(Tripwire::at_most(2.0, "at most two thou")),
    too_much: "The valve leaks, or bends a little each time it closes.",
    ..FIT
};

/// How high a valve's tip stands.
pub static TIP_HEIGHT: Measure = Measure {
    id: "tip-height",
    label: "valve tip height",
    spots: Spots::each(Per::Valve),
    how: [
        "Valve held shut, from the spring seat or the head's face to the tip.",
        "All from the same face.",
        "Compare all with each other: the spread counts.",
    ],
    too_little: "Less preload than its neighbours.",
    too_much: "More preload than its neighbours; the lifter may hold the valve open.",
    ..SIZE
};

/// A spring's height with the valve shut.
pub static INSTALLED_HEIGHT: Measure = Measure {
    id: "installed-height",
    label: "spring installed height",
    spots: Spots::each(Per::Valve),
    how: [
        "Valve held shut, retainer and locks in, with the cups, shims and seals that will be there.",
        "Height micrometer from the spring's seat to the underside of the retainer.",
        "Each valve: grinding and seats make them differ.",
    ],
    too_little: "High load, and the spring may bind.",
    too_much: "Weak on the seat: the valve floats.",
    cautions: &["Locks fly: eye guard on, nobody in line."],
    ..SIZE
};

/// A spring's load with the valve shut.
pub static SPRING_SEAT_LOAD: Measure = Measure {
    id: "spring-seat-load",
    label: "spring load on the seat",
    spots: Spots::each(Per::Valve),
    how: [
        "The spring in a tester, pressed to its installed height.",
        "Read the load; press once or twice before, to settle it.",
        "The card of the camshaft says what it should be.",
    ],
    too_little: "The valve floats.",
    too_much: "Lobes and lifters wear in their first minutes.",
    cautions: &["A compressed spring that slips hits hard: guard on, face away."],
    ..FORCE
};

/// A spring's load at full lift.
pub static SPRING_OPEN_LOAD: Measure = Measure {
    id: "spring-open-load",
    label: "spring load at full lift",
    spots: Spots::each(Per::Valve),
    how: [
        "The spring in a tester, pressed to its installed height less the valve's lift.",
        "Read the load.",
        "The card of the camshaft says what it should be, and what is too much for running in.",
    ],
    too_little: "The valve floats.",
    too_much: "A flat camshaft is wiped in its first half hour.",
    cautions: &["A compressed spring that slips hits hard: guard on, face away."],
    ..FORCE
};

/// The room left between a spring's coils at full lift.
pub static COIL_BIND_MARGIN: Measure = Measure {
    id: "coil-bind-margin",
    label: "room before the coils bind",
    found: Found::WorkedOut {
        calculation: "valve-spring",
        from: &[&INSTALLED_HEIGHT],
        or_read_by: &["valve-spring"],
    },
    spots: Spots::each(Per::Valve),
    how: [
        "Installed height less valve lift less the spring's solid height.",
        "Or roll a wire of that size between the coils at full lift.",
        "Inner and outer spring both.",
    ],
    tripwire: Some(Tripwire::at_least(60.0, "at least 60 thou")),
    too_little: "The coils bind and break the valve gear.",
    too_much: "The spring surges.",
    ..GAP
};

/// The room between retainer and seal at full lift.
pub static RETAINER_TO_SEAL: Measure = Measure {
    id: "retainer-to-seal",
    label: "retainer to seal at full lift",
    found: Found::WorkedOut {
        calculation: "valve-spring",
        from: &[&INSTALLED_HEIGHT],
        or_read_by: &["valve-spring"],
    },
    spots: Spots::each(Per::Valve),
    how: [
        "Distance from retainer to seal with the valve shut, less the valve's lift.",
        "Without the spring, by a rule or a height gauge.",
        "Each valve: guides are not all cut alike.",
    ],
    tripwire: Some(Tripwire::at_least(60.0, "at least 60 thou")),
    too_little: "The seal is crushed.",
    ..GAP
};

/// How long the pushrods have to be.
pub static PUSHROD_LENGTH: Measure = Measure {
    id: "pushrod-length",
    label: "pushrod length",
    when: When::with(&[Feature::Pushrods]),
    spots: Spots::each(Per::Bank),
    how: [
        "Checking pushrod on a solid or pegged lifter, at the base circle, all gaskets in.",
        "Length at no clearance, and preload added or lash taken off.",
        "At least one intake and one exhaust of each bank.",
    ],
    too_little: "Too little preload: noise.",
    too_much: "The valve is held open.",
    ..SIZE
};

/// How far a hydraulic lifter's plunger is pressed in.
pub static LIFTER_PRELOAD: Measure = Measure {
    id: "lifter-preload",
    label: "lifter preload",
    when: When::with(&[Feature::Hydraulic]),
    found: Found::WorkedOut {
        calculation: "lifter-preload-after",
        from: &[&PUSHROD_LENGTH, &TIP_HEIGHT],
        or_read_by: &["rocker-turns"],
    },
    spots: Spots::each(Per::Valve),
    how: [
        "Lifter on the base circle.",
        "From no clearance: by how far the plunger goes in, or by turns of the adjuster.",
        "A turn of the adjuster moves the plunger by more than its thread's pitch.",
    ],
    tripwire: Some(Tripwire::thou(20.0, 60.0, "20 to 60 thou")),
    too_little: "Noisy, and the lock is pounded.",
    too_much: "The valve is held open.",
    ..SIZE
};

/// The clearance in the valve gear.
pub static VALVE_LASH: Measure = Measure {
    id: "valve-lash",
    label: "valve lash",
    when: When::with(&[Feature::SetLash]),
    spots: Spots::each(Per::Valve),
    how: [
        "Valve shut, lifter on the base circle; cold or hot as the card says.",
        "Feeler blade between rocker and valve, or cam and bucket, with a light drag.",
        "Write down whether it was cold: hot and cold differ by the castings' metal.",
    ],
    too_little: "The valve is held open when hot, and burns.",
    too_much: "Noise; on one valve that keeps opening up, its lobe is going.",
    ..GAP
};

/// How wide and where the rocker wipes over the valve's tip.
pub static ROCKER_SWEEP: Measure = Measure {
    id: "rocker-sweep",
    label: "rocker's mark on the valve tip",
    when: When::with(&[Feature::Pushrods]),
    spots: Spots::each(Per::Valve),
    how: [
        "Marker on the tip, a few turns by hand with a checking spring.",
        "Measure how wide the mark is.",
        "It lies in the middle, and the rocker stands square at half lift.",
    ],
    too_much: "The guide is pushed sideways and wears.",
    ..SIZE
};

/// The least room around a rocker.
pub static ROCKER_ROOM: Measure = Measure {
    id: "rocker-room",
    label: "room around rocker, stud and pushrod",
    when: When::with(&[Feature::Pushrods]),
    spots: Spots::each(Per::Valve),
    how: [
        "Through a full turn: rocker slot to stud, rocker to retainer, pushrod in its hole.",
        "A wire of known thickness has to pass everywhere.",
        "The least counts.",
    ],
    tripwire: Some(Tripwire::at_least(40.0, "at least 40 thou")),
    too_little: "It touches and breaks.",
    ..GAP
};
