//! Camshaft, lifters, valves, springs.

use super::Source::{Disputed, Printed};
use super::entry::Entry;

pub(super) static ENTRIES: &[Entry] = &[
    Entry::of("cam-bearing-clearance", "cam bearing clearance")
        .from(0.001, 0.003)
        .harm("tight cam, seizes", "pressure lost before the mains"),
    Entry::of("cam-run-out", "camshaft run-out")
        .at_most(0.002)
        .harm("", "binds, timing scatters"),
    Entry::of("cam-lobe-wear", "wear of a cam lobe")
        .at_most(0.005)
        .harm("", "the lobe is going"),
    Entry::of("lifter-bore-clearance", "lifter in its bore")
        .from(0.0012, 0.0025)
        .harm("does not spin, the lobe is wiped", "tick, pressure leaks"),
    Entry::of("timing-gear-backlash", "timing gear backlash")
        .from(0.002, 0.005)
        .by(Printed("a shop manual of 1935"))
        .harm("whine, breaks", "rattle, timing scatters"),
    Entry::of("valve-to-piston-intake", "intake valve to piston")
        .case("steel rods")
        .at_least(0.080)
        .harm("bent valve", ""),
    Entry::of("valve-to-piston-exhaust", "exhaust valve to piston")
        .case("steel rods")
        .at_least(0.100)
        .harm("bent valve", ""),
    Entry::of("valve-to-piston-radial", "valve to the edge of its pocket")
        .case("steel rods")
        .at_least(0.050)
        .harm("bent valve", ""),
    Entry::of("valve-to-piston-alloy-adds", "more for aluminium rods")
        .at_least(0.030)
        .harm("bent valve", ""),
    Entry::of("stem-guide-intake", "intake stem in its guide")
        .case("11/32 in stem (0.3437)")
        .from(0.001, 0.0025)
        .harm("sticks hot", "oil is used, the seat wears"),
    Entry::of("stem-guide-exhaust", "exhaust stem in its guide")
        .case("11/32 in stem (0.3437)")
        .from(0.0015, 0.003)
        .harm("sticks hot", "runs hot, burns its seat"),
    Entry::of("stem-guide-intake", "intake stem in its guide")
        .case("a maker's guide limits")
        .from(0.0008, 0.002)
        .worn_to(0.004)
        .by(Printed("a maker's guide limits"))
        .harm("sticks hot", "oil is used, the seat wears"),
    Entry::of("stem-guide-exhaust", "exhaust stem in its guide")
        .case("a maker's guide limits")
        .from(0.002, 0.0035)
        .worn_to(0.006)
        .by(Printed("a maker's guide limits"))
        .harm("sticks hot", "runs hot, burns its seat"),
    Entry::of("seat-width-intake", "intake seat width")
        .from(0.060, 0.080)
        .harm("hammers in", "does not cut through deposits"),
    Entry::of("seat-width-exhaust", "exhaust seat width")
        .aim_at(0.080)
        .harm("the valve runs hot", "does not cut through deposits"),
    Entry::of("seat-run-out", "seat run-out to the guide")
        .at_most(0.002)
        .harm("", "leaks"),
    Entry::of("valve-margin", "margin of the valve head")
        .at_least(0.030)
        .harm("the edge burns", ""),
    Entry::of("valve-tip-spread", "spread of the valve tips' height")
        .at_most(0.015)
        .harm("", "preload differs from valve to valve"),
    Entry::of(
        "installed-height",
        "spring height away from its sheet, either way",
    )
    .at_most(0.020)
    .harm("", "short binds, tall floats"),
    Entry::of(
        "coil-bind-margin",
        "room before the coils bind, at full lift",
    )
    .case("conventional spring")
    .from(0.050, 0.060)
    .harm("the coils bind and break the train", "the spring surges"),
    Entry::of("retainer-to-seal", "retainer to guide seal at full lift")
        .at_least(0.050)
        .harm("the seal is crushed", ""),
    Entry::of("lifter-preload", "preload of a hydraulic lifter")
        .case("standard")
        .from(0.020, 0.060)
        .harm("noisy, the lock is pounded", "the valve is held open"),
    Entry::of("lifter-preload", "preload of a hydraulic lifter")
        .case("short travel")
        .from(0.002, 0.010)
        .harm("noisy, the lock is pounded", "the valve is held open"),
    Entry::of("spring-shims", "flat shims under a spring, together")
        .at_most(0.060)
        .harm("", "the stack springs and the seat is lost"),
    Entry::of("coil-bind-surplus", "room before the coils bind, at most")
        .at_most(0.150)
        .by(Disputed)
        .harm("", "the spring surges"),
];
