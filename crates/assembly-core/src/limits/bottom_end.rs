//! Crankshaft, mains, rods.

use super::Source::{Disputed, Printed};
use super::entry::Entry;

pub(super) static ENTRIES: &[Entry] = &[
    Entry::of("journal-taper", "journal taper")
        .at_most(0.0005)
        .harm("", "edge wear, oil leaks past"),
    Entry::of("journal-out-of-round", "journal out of round")
        .at_most(0.0005)
        .harm("", "edge wear, oil leaks past"),
    Entry::of("crank-bow", "crank run-out at the centre main")
        .at_most(0.002)
        .harm("", "the centre main is wiped"),
    Entry::of("main-line-step", "main line, step between neighbours")
        .at_most(0.0005)
        .harm("", "binding, one shell wears"),
    Entry::of("main-line-step", "main line, step between neighbours")
        .case("aluminium bi-metal shells")
        .at_most(0.002)
        .by(Printed("a trade magazine on bearing tolerances"))
        .harm("", "binding, one shell wears"),
    Entry::of("main-oil-clearance", "main oil clearance")
        .case("for each inch of the journal")
        .per_inch()
        .from(0.000_75, 0.001)
        .harm("drag, wiped or seized when hot", "low idle pressure, knock"),
    Entry::of("main-oil-clearance", "main oil clearance")
        .case("2.5 in journal")
        .from(0.0018, 0.0025)
        .harm("drag, wiped or seized when hot", "low idle pressure, knock"),
    Entry::of("crank-end-play", "crank end play")
        .from(0.004, 0.010)
        .harm(
            "the thrust face burns in minutes",
            "pounding, rods run askew, seal leaks",
        ),
    Entry::of("rod-oil-clearance", "rod oil clearance")
        .case("2.1 in pin")
        .from(0.0015, 0.0024)
        .harm("wiped or seized", "knock, pressure sags with speed"),
    Entry::of(
        "rod-side-clearance",
        "rod side clearance of the pair on a pin",
    )
    .case("steel, two per pin")
    .from(0.006, 0.020)
    .harm("scuffing, heat", "oil flung at the bores, minor alone"),
    Entry::of(
        "rod-side-clearance",
        "rod side clearance of the pair on a pin",
    )
    .case("aluminium, two per pin")
    .from(0.020, 0.030)
    .harm("scuffing, heat", "oil flung at the bores, minor alone"),
    Entry::of("crush", "gap at the joint with one bolt released")
        .from(0.001, 0.003)
        .by(Disputed)
        .harm("the shell spins", "the shell bulges at the joint"),
    Entry::of("rod-bolt-stretch", "rod bolt stretch, car engine")
        .from(0.005, 0.006)
        .harm("the cap opens", "the bolt yields and breaks"),
    Entry::of("rod-bolt-set", "rod bolt, lasting stretch")
        .at_most(0.001)
        .harm("", "the bolt has yielded: scrap"),
    Entry::of("pin-clearance-floating", "floating pin in rod and piston")
        .from(0.0004, 0.001)
        .harm("galls", "knock"),
    Entry::of("pin-in-piston", "floating pin in the piston")
        .from(0.0003, 0.0008)
        .harm("galls, the skirt scuffs", "double knock"),
    Entry::of("pin-in-bush", "floating pin in the rod's bush")
        .from(0.0005, 0.0010)
        .harm("galls", "knock"),
    Entry::of(
        "press-pin-interference",
        "interference of a pressed pin in the rod",
    )
    .from(0.0008, 0.0015)
    .harm(
        "the pin walks into the bore",
        "the rod's eye cracks or bends",
    ),
];
