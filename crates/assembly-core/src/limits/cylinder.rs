//! Bores, pistons, rings, liners, deck.

use super::Source::{Disputed, Printed};
use super::entry::Entry;

const PISTON: &str = "piston to wall, about 4 in bore";
const TIGHT: &str = "scuffs or seizes on the first hot pull";
const LOOSE: &str = "slap, the rings rock";
const BUTTS: &str = "the ends butt, lands break";
const BLOW_BY: &str = "slight blow-by";
const TOP: &str = "top ring gap for each inch of bore";
const SECOND: &str = "second ring gap for each inch of bore";

const fn piston(case: &'static str, low: f64, high: f64) -> Entry {
    Entry::of("piston-to-wall", PISTON)
        .case(case)
        .from(low, high)
        .by(Disputed)
        .harm(TIGHT, LOOSE)
}

const fn ring(id: &'static str, what: &'static str, case: &'static str, factor: f64) -> Entry {
    Entry::of(id, what)
        .case(case)
        .per_inch()
        .at_least(factor)
        .by(Disputed)
        .harm(BUTTS, BLOW_BY)
}

const NA_STREET: &str = "naturally aspirated (NA), street";
const NA_HOT: &str = "naturally aspirated (NA), hot street or mild race";
const NITROUS: &str = "nitrous, moderate";
const NITROUS_HARD: &str = "nitrous, hard or heavy use, race or drag only";
const NA_RACE: &str = "naturally aspirated (NA), drag or oval";
const DIESEL: &str = "diesel, turbo, turbocharged";
const BOOSTED: &str =
    "boosted: turbo, turbocharged, supercharged or blown, street or race, petrol or gasoline";

pub(super) static ENTRIES: &[Entry] = &[
    Entry::of("bore-taper", "taper of a fresh bore")
        .at_most(0.0005)
        .harm("", "rings flutter, oil is used"),
    Entry::of("bore-out-of-round", "out of round of a fresh bore")
        .at_most(0.0005)
        .harm("", "rings flutter, oil is used"),
    Entry::of("bore-taper", "taper of a bore for new rings")
        .case("worn, re-ringed")
        .worn_to(0.004)
        .by(Printed("diesel and car workshop manuals"))
        .harm("", "rings flutter, oil is used"),
    piston("cast", 0.001, 0.002),
    piston("hypereutectic", 0.001, 0.002),
    piston("hypereutectic, second list, tighter", 0.001, 0.0015),
    piston("forged 4032, high silicon", 0.002, 0.0035),
    piston("forged 2618, low silicon, NA", 0.0035, 0.005),
    piston("forged low silicon", 0.0035, 0.006),
    piston("forged, high expansion, street, second list", 0.005, 0.007),
    Entry::of("piston-to-wall", "piston to wall for each inch of bore")
        .case("forged 2618, low silicon, per inch of bore")
        .per_inch()
        .from(0.001, 0.0015)
        .by(Disputed)
        .harm(TIGHT, LOOSE),
    ring("top-ring-gap", TOP, NA_STREET, 0.004),
    ring("top-ring-gap", TOP, NA_HOT, 0.0045),
    ring("top-ring-gap", TOP, NITROUS, 0.0055),
    ring("top-ring-gap", TOP, NITROUS_HARD, 0.007),
    ring("top-ring-gap", TOP, NA_RACE, 0.005),
    ring("top-ring-gap", TOP, DIESEL, 0.0055),
    ring("top-ring-gap", TOP, BOOSTED, 0.006)
        .at_most(0.007)
        .aim_at(0.0065),
    ring("second-ring-gap", SECOND, NA_STREET, 0.0045),
    ring("second-ring-gap", SECOND, NA_HOT, 0.005),
    ring("second-ring-gap", SECOND, NITROUS, 0.006),
    ring("second-ring-gap", SECOND, NITROUS_HARD, 0.007),
    ring("second-ring-gap", SECOND, NA_RACE, 0.006),
    ring("second-ring-gap", SECOND, DIESEL, 0.006),
    ring("second-ring-gap", SECOND, BOOSTED, 0.0065),
    Entry::of("oil-rail-gap", "gap of an oil ring's rail")
        .at_least(0.015)
        .harm(BUTTS, "minor"),
    Entry::of("wrong-ring", "ring gap for each inch of bore")
        .case("beyond this it is a ring for another bore")
        .per_inch()
        .at_most(0.008)
        .by(Printed("a ring maker's fitting hints"))
        .harm("", "the ring is for another bore"),
    Entry::of(
        "ring-side-clearance",
        "ring side clearance, thin modern rings too",
    )
    .from(0.001, 0.003)
    .harm("sticks", "flutters, the land wears"),
    Entry::of("ring-side-clearance", "ring side clearance")
        .case("steel or iron rings of a car engine")
        .from(0.0015, 0.0035)
        .harm("sticks", "flutters, the land wears"),
    Entry::of("ring-back-clearance", "ring below the land")
        .from(0.002, 0.020)
        .harm("the ring is clamped by the bore", "slow to seal"),
    Entry::of("quench", "piston to head with the gasket squeezed")
        .case("steel rods")
        .from(0.035, 0.045)
        .harm("the piston hits the head", "apt to knock"),
    Entry::of("quench", "piston to head with the gasket squeezed")
        .case("aluminium rods")
        .from(0.055, 0.065)
        .harm("the piston hits the head", "apt to knock"),
    Entry::of("quench-least", "piston to head, absolute least")
        .case("steel rods, race, tight")
        .at_least(0.030)
        .harm("the piston hits the head", ""),
    Entry::of("deck-flatness", "block deck, in any six inches")
        .at_most(0.002)
        .harm("", "the gasket leaks"),
    Entry::of("head-flatness", "cylinder head, for each inch of span")
        .case("aluminium head")
        .per_inch()
        .at_most(0.000_75)
        .by(Printed("a car maker's service manual, aluminium heads"))
        .harm("", "the gasket leaks"),
    Entry::of("liner-step", "wet liners, step between neighbours")
        .at_most(0.002)
        .harm("", "the gasket's fire ring is loaded unevenly"),
    Entry::of("liner-interference", "dry liner in its bore")
        .from(0.0005, 0.0025)
        .by(Disputed)
        .harm(
            "the liner fidgets and cracks",
            "the block is stressed or cracks",
        ),
    Entry::of("liner-lower-fit", "wet liner in its lower bore")
        .at_most(0.006)
        .harm(
            "touching is allowed while it stays round",
            "the liner shakes",
        ),
];
