//! The oil, the first hour and what comes after it, as facts.
//!
//! Every number is kept as it was typed, with the unit that a lone one is in.

mod kinds;

pub(super) use kinds::{read, write};

use super::body::Spot;
use crate::id::FactId;

/// A quantity as it was typed.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct Said {
    /// What was typed: "18", "55 psi".
    pub typed: String,
    /// The symbol of the unit that a lone number is in.
    pub unit: String,
}

/// The oil system as the builder knows it. The latest counts, as a whole.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct OilSystem {
    /// Volume that the pump sweeps in a turn.
    pub pump_volume: Option<Said>,
    /// Turns of the pump by a turn of the crank; by the engine's pump drive when
    /// not said.
    pub pump_ratio: Option<Said>,
    /// Pressure at which the relief valve opens.
    pub relief: Option<Said>,
    /// Pressure over the filter at which it is gone round.
    pub bypass: Option<Said>,
    /// The grade on the can: "10W-30".
    pub grade: Option<String>,
    /// Viscosity at 40 °C, from the oil's sheet.
    pub at_40: Option<Said>,
    /// Viscosity at 100 °C, from the oil's sheet.
    pub at_100: Option<Said>,
    /// Stroke of the crank.
    pub stroke: Option<Said>,
    /// Diameter of the main journals, where it was not measured.
    pub main_journal: Option<Said>,
    /// Length of a main shell across its running face.
    pub main_shell: Option<Said>,
    /// Diameter of the crankpins, where it was not measured.
    pub rod_journal: Option<Said>,
    /// Length of a rod shell across its running face.
    pub rod_shell: Option<Said>,
    /// How oil gets into the main shells.
    pub groove: Option<Groove>,
    /// How many lifters are fed with oil; by the engine when not said.
    pub lifters: Option<u32>,
    /// How many rockers are fed with oil; by the engine when not said.
    pub rockers: Option<u32>,
    /// How many nozzles squirt oil under the pistons.
    pub squirters: Option<u32>,
    /// Bore of such a nozzle.
    pub squirter_bore: Option<Said>,
    /// Load on a rod bearing, for its film; estimated when not said.
    pub load: Option<Said>,
    /// Bore of the cylinders, for the load that gas and mass put on the bearings.
    pub bore: Option<Said>,
    /// Rod between its centres.
    pub rod_length: Option<Said>,
    /// Mass of piston, rings, pin and the rod's small end.
    pub up_and_down: Option<Said>,
    /// Mass of the rod's big end with its shells.
    pub round: Option<Said>,
    /// Compression ratio.
    pub compression_ratio: Option<Said>,
    /// Highest gas pressure; estimated when not said.
    pub peak_gas: Option<Said>,
    /// Roughness Rq of the journals.
    pub journal_roughness: Option<Said>,
    /// Roughness Rq of the shells.
    pub shell_roughness: Option<Said>,
}

/// The oil pressure gauge was read.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct GaugeRead {
    /// What it said.
    pub pressure: Said,
    /// Of the engine.
    pub speed: Option<Said>,
    /// Of the oil. Without it the pressure tells nothing, and is kept.
    pub temperature: Option<Said>,
    /// Which gauge: "mechanical, at the port behind the intake".
    pub gauge: Option<String>,
}

/// Oil was pushed through the engine before it ran by itself. Which rockers got
/// oil are checks at the valves.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PrimeTested {
    /// Pressure reached.
    pub pressure: Option<Said>,
    /// Of the oil.
    pub temperature: Option<Said>,
    /// What with, and what else was seen.
    pub words: Option<String>,
}

/// The engine began to run at a speed.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct RunningBegun {
    /// Which speeds.
    pub band: SpeedBand,
}

/// It stopped running at it.
#[derive(Clone, Copy, PartialEq, Eq, Debug)]
pub struct RunningEnded {
    /// The fact that it began.
    pub begun: FactId,
    /// How long it was, seconds, by a clock that runs even.
    pub seconds: u32,
}

/// A row of numbers while it ran.
#[derive(Clone, PartialEq, Eq, Debug, Default)]
pub struct RunningRow {
    /// Seconds since it fired.
    pub seconds: Option<u32>,
    /// Of the engine.
    pub speed: Option<Said>,
    /// Of the oil.
    pub pressure: Option<Said>,
    /// Of the oil.
    pub oil: Option<Said>,
    /// Of the coolant.
    pub coolant: Option<Said>,
    /// What was heard, smelt or seen.
    pub words: Option<String>,
}

/// Oil went in or out, or a filter was seen to.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct OilNoted {
    /// What was done.
    pub what: OilDoing,
    /// How much.
    pub amount: Option<Said>,
    /// What the meter showed then: its unit is `km`, `mi` or `h`.
    pub meter: Option<Said>,
    /// The grade, or the filter.
    pub kind: Option<String>,
    /// What was seen: paste, glitter.
    pub words: Option<String>,
}

/// The compression of a cylinder was read.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct CompressionRead {
    /// The cylinder.
    pub place: Spot,
    /// What the gauge held.
    pub pressure: Said,
    /// With or without oil on the piston.
    pub state: BoreState,
}

/// The leak-down of a cylinder was read.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct LeakDownRead {
    /// The cylinder.
    pub place: Spot,
    /// Pressure before the orifice.
    pub supply: Said,
    /// Pressure in the cylinder.
    pub held: Said,
    /// Diameter of the tester's orifice. Testers with other ones do not compare.
    pub orifice: Option<Said>,
    /// Where it hissed.
    pub heard: Option<String>,
}

/// Plugs of one sort were counted.
#[derive(Clone, PartialEq, Eq, Debug)]
pub struct PlugsCounted {
    /// Which: an id of [`PLUGS`](assembly_core::oil::running_in::plugs::PLUGS).
    pub plugs: String,
    /// How many came out.
    pub out: Option<u32>,
    /// How many have gone back in.
    pub back: Option<u32>,
    /// What the builder adds.
    pub words: Option<String>,
}

super::words::words! {
    /// How oil gets into the main shells.
    Groove {
        /// A groove in the upper shells.
        Upper = "upper";
        /// A groove all round.
        AllRound = "all-round";
        /// A hole and no groove.
        None = "none";
    }
}

super::words::words! {
    /// The speeds of a run-in: its band, and what lies below and above it.
    SpeedBand {
        /// Below the band.
        Below = "below";
        /// In the band.
        Within = "within";
        /// Above the band.
        Above = "above";
    }
}

super::words::words! {
    /// What was done with oil or filter.
    OilDoing {
        /// Filled from empty.
        Filled = "filled";
        /// Added up to the mark.
        Added = "added";
        /// Drained.
        Drained = "drained";
        /// The filter was changed.
        FilterChanged = "filter-changed";
        /// The old filter was cut open.
        FilterCut = "filter-cut";
    }
}

super::words::words! {
    /// Whether oil was put on the piston before its compression was read.
    BoreState {
        /// As it is.
        Dry = "dry";
        /// With a spoonful of oil.
        Wet = "wet";
    }
}
