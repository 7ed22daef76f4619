//! Oil pump, pickup, drives, damper, flywheel.

use super::Source::{Disputed, Printed};
use super::entry::Entry;

pub(super) static ENTRIES: &[Entry] = &[
    Entry::of("pump-end-clearance", "oil pump, gears to cover")
        .from(0.0015, 0.003)
        .harm("the gears seize or score", "weak at idle, slow to prime"),
    Entry::of("pump-side-clearance", "oil pump, gear to body")
        .from(0.002, 0.005)
        .by(Printed("a maker's pump check"))
        .harm("scores", "weak pressure"),
    Entry::of("pump-tip-clearance", "oil pump, rotor tip")
        .at_most(0.007)
        .harm("", "weak pressure"),
    Entry::of("pump-cover-wear", "oil pump cover, worn hollow")
        .at_most(0.001)
        .by(Printed("a maker's pump check"))
        .harm("", "weak pressure"),
    Entry::of("pickup-to-pan", "pickup to pan floor")
        .from(0.250, 0.500)
        .aim_at(0.5)
        .harm("starves at speed", "draws air under braking"),
    Entry::of("pump-drive-float", "float of the pump's drive rod")
        .from(0.030, 0.060)
        .by(Disputed)
        .harm(
            "the pump is driven down, the gear wears",
            "the tang slips out",
        ),
    Entry::of("distributor-float", "float of the distributor's gear")
        .case("gear with packing under its housing")
        .from(0.003, 0.007)
        .by(Printed("an owner's workshop manual"))
        .harm("gear and thrust face burn", "the spark scatters"),
    Entry::of("hub-interference", "damper hub on the crank")
        .from(0.0007, 0.0015)
        .harm(
            "the hub frets, its bolt breaks",
            "galls or cracks as it is pulled on",
        ),
    Entry::of("flexplate-run-out", "flexplate run-out")
        .at_most(0.020)
        .harm("", "cracks, the starter grinds"),
    Entry::of("flywheel-run-out", "flywheel run-out")
        .at_most(0.005)
        .harm("", "the clutch shudders"),
    Entry::of("bellhousing-run-out", "bellhousing bore run-out")
        .at_most(0.010)
        .harm("", "the pilot bearing and the gearbox wear"),
];
