//! What has to be known of oil, film and circuit, with a sentence each on how to
//! find it, and the units it is usually in.

use super::viscosity::line_check::TEMPERATURE;
use crate::describe::{Choice, Input, Takes, UsualUnits};
use crate::quantity::Kind;

pub(super) const PRESSURE: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("psi", "bar"));
pub(super) const FLOW: (Kind, UsualUnits) = (Kind::Flow, UsualUnits::of("L/min", "L/min"));
pub(super) const SMALL_FLOW: (Kind, UsualUnits) = (Kind::Flow, UsualUnits::of("mL/min", "mL/min"));
pub(super) const SHARE: (Kind, UsualUnits) = (Kind::Ratio, UsualUnits::SHARE);
pub(super) const TURNING: (Kind, UsualUnits) =
    (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm"));
pub(super) const COUNT: (Kind, UsualUnits) = (Kind::Count, UsualUnits::NONE);
pub(super) const CLEARANCES: (f64, f64) = (5e-6, 0.0005);
pub(super) const JOURNALS: (f64, f64) = (0.015, 0.2);
pub(super) const SHELLS: (f64, f64) = (0.008, 0.15);

pub(super) static MAINS: Input = Input::gap(
    "mains",
    "clearance of each main",
    CLEARANCES,
    "One for each main, on the diameter, as measured.",
)
.taking(Takes::OneOrMore);
pub(super) static RODS: Input = Input::gap(
    "rods",
    "clearance of each rod",
    CLEARANCES,
    "One for each rod, on the diameter, as measured.",
)
.taking(Takes::OneOrMore);
pub(super) static MAIN_JOURNAL: Input =
    Input::size("main-journal", "main journal", JOURNALS, "Its diameter.");
pub(super) static MAIN_LENGTH: Input = Input::size(
    "main-length",
    "length of a main shell",
    SHELLS,
    "Across its running face; the mean when one is longer.",
);
pub(super) static ROD_JOURNAL: Input =
    Input::size("rod-journal", "crank pin", JOURNALS, "Its diameter.");
pub(super) static ROD_LENGTH: Input = Input::size(
    "rod-length",
    "length of a rod shell",
    SHELLS,
    "Across its running face.",
);
pub(super) static STROKE: Input = Input::size(
    "stroke",
    "stroke",
    (0.02, 0.4),
    "The crank throws oil outward to the rods by it.",
);
pub(super) static GROOVE: Input = Input::one_of(
    "groove",
    "groove of the main shells",
    &[
        Choice {
            id: "upper",
            label: "upper half",
        },
        Choice {
            id: "all-round",
            label: "all round",
        },
        Choice {
            id: "none",
            label: "none, a hole",
        },
    ],
    "Look at both shells.",
);
pub(super) static DISPLACEMENT: Input = Input::of(
    "pump-volume",
    "volume of the pump a turn",
    (Kind::Volume, UsualUnits::of("cc", "cc")),
    (1e-6, 3e-4),
    "From its maker, or by π/4 × (tip circle² − root circle²) × width of its gears.",
)
.optional();
pub(super) static DRIVE: Input = Input::one_of(
    "drive",
    "pump turns",
    &[
        Choice {
            id: "cam",
            label: "with the cam, half as fast",
        },
        Choice {
            id: "crank",
            label: "with the crank",
        },
    ],
    "What it is driven by.",
);
pub(super) static RELIEF: Input = Input::of(
    "relief",
    "relief opens at",
    PRESSURE,
    (1e4, 2e6),
    "From the maker's sheet, or by spring and plunger.",
);
pub(super) static SPEED: Input = Input::of(
    "speed",
    "engine speed",
    TURNING,
    (5.0, 1600.0),
    "At the crankshaft.",
);
pub(super) static LIFTERS: Input = Input::of(
    "lifters",
    "lifters that are fed with oil",
    COUNT,
    (0.0, 64.0),
    "0 with an overhead cam and plain buckets.",
);
pub(super) static CAM_BEARINGS: Input = Input::of(
    "cam-bearings",
    "cam bearings",
    COUNT,
    (0.0, 40.0),
    "All camshafts together.",
);
pub(super) static DIAMETER: Input = Input::size(
    "journal",
    "journal diameter",
    (0.01, 0.3),
    "Micrometer across the journal.",
);
pub(super) static LENGTH: Input = Input::size(
    "length",
    "length of the shell",
    (0.004, 0.3),
    "Across the shell's running face.",
);
pub(super) static GROOVE_WIDTH: Input = Input::gap(
    "groove",
    "width of a groove all round",
    (0.0, 0.03),
    "Only if a groove goes all round; leave it out for a plain shell with a hole.",
)
.optional();
pub(super) static CLEARANCE: Input = Input::gap(
    "clearance",
    "oil clearance",
    (1e-6, 0.0008),
    "On the diameter: bore of the clamped shells less journal.",
);
pub(super) static LOAD: Input = Input::of(
    "load",
    "load on the bearing",
    (Kind::Force, UsualUnits::FORCE),
    (10.0, 500_000.0),
    "Mean load over a turn, or the peak for the worst moment; the engine's description can work it out.",
);
pub(super) static OIL_IN: Input = Input::of(
    "oil-in",
    "temperature of the oil that comes in",
    TEMPERATURE,
    (250.0, 440.0),
    "At the gallery, or in the sump when there is no cooler.",
);
pub(super) static SUPPLY: Input = Input::of(
    "supply",
    "oil pressure",
    PRESSURE,
    (1e4, 2e6),
    "At the gallery; needed for a groove all round.",
)
.optional();
pub(super) static ROUGH_JOURNAL: Input = Input::of(
    "journal-roughness",
    "roughness Rq of the journal",
    (Kind::Length, UsualUnits::of("µin", "µm")),
    (0.0, 5e-6),
    "From the shop; a polished journal has about 0.1 to 0.3 µm.",
)
.optional();
pub(super) static ROUGH_SHELL: Input = Input::of(
    "shell-roughness",
    "roughness Rq of the shell",
    (Kind::Length, UsualUnits::of("µin", "µm")),
    (0.0, 5e-6),
    "From the shell's maker; about 0.3 to 0.6 µm.",
)
.optional();
