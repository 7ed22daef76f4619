//! What has to be known for a film, with a sentence each on how to find it.

use crate::describe::{Input, UsualUnits};
use crate::oil::viscosity::line_check::TEMPERATURE;
use crate::quantity::Kind;

pub(super) const PRESSURE: (Kind, UsualUnits) = (Kind::Pressure, UsualUnits::of("psi", "bar"));
pub(super) const FLOW: (Kind, UsualUnits) = (Kind::Flow, UsualUnits::of("mL/min", "mL/min"));

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
pub(super) static GROOVE: Input = Input::gap(
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
pub(super) static SPEED: Input = Input::of(
    "speed",
    "engine speed",
    (Kind::RotationalSpeed, UsualUnits::of("rpm", "rpm")),
    (5.0, 1600.0),
    "At the crankshaft.",
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
